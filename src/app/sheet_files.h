#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "app/options.h"
#include "app/sheet_maker.h"
#include "app/workshop.h"
#include "output/attachments.h"
#include "output/disk.h"
#include "page/frame.h"

namespace furnish {

/// A finished sheet with the pet it belongs to.
struct Done {
  PetPath pet;
  std::string title;
  Made made;
};

/// How most of those look that stand on one side; of equals the one that comes first.
std::string usual_look(std::span<const Done* const>);
/// Sets a sheet that stands on one side as most of its set are arranged, if this costs less than
/// one growth step: a wall of cards looks like one set.
void arrange_alike(Done&, const std::string& usual, Workshop&);

/// How many sides the one with the most has.
std::size_t most_sides(std::span<const std::vector<Frame>> sheets);
/// Each sheet begins on paper of its own, also if only some have another side.
std::vector<Frame> in_order(const std::vector<std::vector<Frame>>& sheets);
/// What travels inside the PDF of several sheets.
std::vector<Attachment> carried_by(const std::vector<Done>&);

/// The file of a side, from 2, beside that of the first: "marlow-card-2.png".
std::string side_path(const std::string& first, std::size_t side);
/// Takes away what an earlier run wrote of more sides than there are now; what furnish did not
/// write, and what has not `of` in its first bytes, stays, with a warning.
void remove_sides_after(const std::string& first, std::size_t sides, std::string_view of,
                        DiagnosticSink&, const Disk&);
}  // namespace furnish
