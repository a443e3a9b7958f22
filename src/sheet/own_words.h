#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "model/free_text.h"
#include "page/paragraph.h"
#include "sheet/sheet.h"

namespace furnish {

// What a person wrote, for one reader: in the page's language if it was given in that or in its
// parent, else as the catalogue has it, else as it stands. On an owner's page what is in another
// language stands apart, under words that say which, and is told as a warning. Names are left
// alone.

/// Whether two tags are of one language, whatever their regions.
bool same_language(std::string_view, std::string_view);

struct OwnWords {
  std::string text;
  /// BCP 47, if the text is to stand apart by stand_apart(), as it was written; empty: it reads on.
  std::string language{};
};
OwnWords own_words(const FreeText&, const SheetVoice&);

/// What the salon's people wrote that is no name, for staff: as own_words() has it, and what is in
/// another language than the page reads on, aloud in its own.
std::string salons_words(const std::string&, const SheetVoice&);
std::string salons_words(const FreeText&, const SheetVoice&);

/// A name that a person gave to a thing: the same, and nobody is warned of a name.
OwnWords own_name(const std::string&, const SheetVoice&);

/// How a part ends: as the trade calls it, else as a person wrote it.
OwnWords finish_words(const FinishLine&, const SheetVoice&);

/// A line of what a person wrote; in another language the text stands under the line.
struct OwnLine {
  std::string text;
  ApartText apart{};
};
/// "Nails: clipped and ground."; apart, under "Nails (in English):". Without a head, only the
/// words, or "In English:" over them.
OwnLine own_line(const std::string& head, const FreeText&, const SheetVoice&);
OwnLine own_line(const std::string& head, const OwnWords&, const SheetVoice&);

/// What says of words that stand apart which language they are in: "In English:", and after a head
/// "Nails (in English):".
std::string lead_in(const std::string& head, const std::string& language, const SheetVoice&);
/// Whole sentences that stand apart, in one piece: on a page of the other direction they keep their
/// order.
ApartText stand_apart(const std::vector<std::string>& sentences, const std::string& language,
                      const SheetVoice&);

/// The texts of one page that are in another language than it; each is told once.
class OtherLanguages {
 public:
  void add(const FreeText&, const std::string& language);
  /// A warning for each, with how to write it in the page's language.
  void report(const std::string& page_language, Audience reader, DiagnosticSink&) const;

 private:
  struct Found {
    FreeText text;
    std::string language;
  };
  std::vector<Found> found_;
};
}  // namespace furnish
