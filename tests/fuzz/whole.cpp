#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <span>
#include <vector>

#include "app/options.h"
#include "app/sheet_maker.h"
#include "app/workshop.h"
#include "base/paper.h"
#include "fuzz/salon_files.h"
#include "fuzz/targets.h"
#include "output/pdf.h"

namespace furnish::fuzz {
namespace {
namespace fs = std::filesystem;

constexpr std::array languages{"en", "es", "fr", "de", "pt", "vi", "ar"};
const std::array<const SheetMaker*, 5> makers{&sheets::card, &sheets::style, &sheets::note,
                                              &sheets::owner_note, &sheets::care};

/// The shipped styles and words, read once.
const Texts& shipped() {
  static const Texts all = [] {
    Texts out;
    const fs::path from = fs::path(FURNISH_SOURCE_DIR) / "styles";
    for (const auto& entry : fs::recursive_directory_iterator(from)) {
      if (!entry.is_regular_file()) continue;
      std::ifstream file(entry.path(), std::ios::binary);
      out["shipped/" + fs::relative(entry.path(), from).string()] =
          std::string(std::istreambuf_iterator<char>(file), {});
    }
    return out;
  }();
  return all;
}

/// What a program has that runs for long: fonts, and words and type of each language.
class House {
 public:
  House() : library_(read_.context, "shipped", ""), fonts_(opened()) {
    for (const char* const one : languages) {
      const auto chain = library_.chain(one);
      hold(chain.has_value(), "the shipped words are good");
      voices_.push_back(std::unique_ptr<Voice>(new Voice{Words::open(*chain, read_.sink),
                                                         ReaderLocale(one, Units::metric),
                                                         TextShaper(*fonts_, read_.sink, one)}));
    }
  }

  SheetVoice voice(std::size_t language, const Salon& salon, DiagnosticSink& sink) {
    Voice& one = *voices_.at(language);
    one.shaper.forget();
    one.shaper.report_to(sink);
    SheetVoice out{*one.words, one.locale, one.shaper, salon.language};
    const auto of_salon = std::ranges::find(languages, salon.language);
    if (of_salon != languages.end()) {
      out.salon_words =
          voices_.at(static_cast<std::size_t>(of_salon - languages.begin()))->words.get();
    }
    return out;
  }

 private:
  struct Voice {
    std::unique_ptr<Words> words;
    ReaderLocale locale;
    TextShaper shaper;
  };
  std::unique_ptr<FontSet> opened() {
    auto fonts = FontSet::open(FURNISH_SOURCE_DIR "/fonts", read_.sink);
    hold(fonts != nullptr, "the fonts are there");
    return fonts;
  }
  Reading read_{{}, shipped()};
  CatalogueLibrary library_;
  std::unique_ptr<FontSet> fonts_;
  std::vector<std::unique_ptr<Voice>> voices_;
};

/// "pet\n---\nvisit\n---\nsalon\n---\nstyle", as many as there are.
Texts files_in(std::string_view bytes) {
  constexpr std::string_view between = "\n---\n";
  constexpr std::array names{"pets/rex.toml", "visits/rex/2026-11-20.toml", "salon.toml",
                             "styles/own.toml"};
  Texts out;
  for (const char* const name : names) {
    const std::size_t end = std::min(bytes.find(between), bytes.size());
    if (end > 0) out[name] = bytes.substr(0, end);
    bytes.remove_prefix(std::min(end + between.size(), bytes.size()));
  }
  return out;
}

/// As the program does with a pet in a folder.
std::optional<Case> worked_out(SalonFolder& folder, DiagnosticSink& sink) {
  const Date today = make_date(2026, 11, 24).value();
  if (!folder.good()) return std::nullopt;
  auto pet = folder.pet("pets/rex.toml", sink);
  if (!pet) return std::nullopt;
  bool complete = true, all_bookings = true;
  std::vector<Visit> visits = folder.visits(*pet, complete, sink);
  const auto bookings = folder.bookings(*pet, today, all_bookings);
  Plan plan = make_plan(folder.salon(), *pet, visits, bookings, today, sink);
  return Case{&folder,         std::move(*pet), std::move(visits), complete,
              std::move(plan), today,           bookings,          all_bookings};
}
}  // namespace

void whole(std::string_view bytes) {
  static House house;
  static const std::vector<Paper> sizes = [] {
    std::vector<Paper> out;
    for (const char* const name : {"A6", "A4"}) out.push_back(parse_paper(name).value());
    return out;
  }();
  if (bytes.size() < 2) return;
  const auto how = static_cast<unsigned char>(bytes[0]);
  const auto on = static_cast<unsigned char>(bytes[1]);
  const SheetMaker& maker = *makers.at(how % makers.size());
  Reading reading(files_in(bytes.substr(2)), shipped());
  SalonFolder folder(reading.context, ".", "shipped");
  const auto one = worked_out(folder, reading.sink);
  hold(one || reading.sink.has_errors(), "a pet, or a fault");
  if (one) {
    Options options;
    options.sheet = &maker;
    const std::size_t size = on % (sizes.size() + 1);
    const Paper paper = size == 0 ? one->salon().paper.*maker.kind.paper : sizes.at(size - 1);
    DiagnosticSink said;
    const std::size_t language = how / makers.size() % languages.size();
    const auto made = maker.make(*one, {maker.kind,
                                        options,
                                        paper,
                                        house.voice(language, one->salon(), said),
                                        {reading.files, reading.sources, said}});
    hold(made || said.has_errors(), "a sheet, or a fault");
    if (made && on / 4 % 4 == 0) {
      std::vector<Frame> pages{made->sheet.page.frame};
      pages.insert(pages.end(), made->sheet.page.more.begin(), made->sheet.page.more.end());
      const auto pdf = to_pdf(pages, made->sheet.info, {{}, made->files}, said);
      hold(pdf.has_value(), "what was composed can be printed");
    }
    for (const Diagnostic& fault : said.all()) reading.sink.add(fault);
  }
  reading.tell();
}
}  // namespace furnish::fuzz
