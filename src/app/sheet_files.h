#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/options.h"
#include "app/sheet_maker.h"
#include "app/workshop.h"
#include "output/disk.h"

namespace furnish {

/// A finished sheet with the pet it belongs to.
struct Done {
  PetPath pet;
  std::string title;
  Made made;
};

/// Sets the sheets of a run that stand on one side as most of them are arranged, each of them that
/// this costs less than one growth step: a wall of cards looks like one set.
void arrange_alike(std::vector<Done>&, Workshop&);

/// The file of a side, from 2, beside that of the first: "marlow-card-2.png".
std::string side_path(const std::string& first, std::size_t side);
/// Takes away what an earlier run wrote of more sides than there are now; what furnish did not
/// write stays, with a warning.
void remove_sides_after(const std::string& first, std::size_t sides, DiagnosticSink&, const Disk&);
}  // namespace furnish
