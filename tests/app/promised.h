#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sheet/desk.h"

namespace furnish::test {

/// Values of a pet's own files that its card promises to show, as they are written there, in the
/// order in which the card reads: the name, how the dog looks, alerts by gravity, the visit, how to
/// handle, trim, bath, drying, finish, what is not wanted, who collects. `brief`: of the finish
/// only what the style does not have.
std::vector<std::string> promised(const Kennel&, bool brief = false);
/// Those of trim, bath and finish.
std::vector<std::string> promised_work(const Kennel&, bool brief = false);

/// The first of `values` that `text` does not say after the one before it; empty if all are there
/// in order. White space and marks of direction, which readers of PDF files put in, do not count,
/// and a text may begin in upper case.
std::string first_missing(std::string_view text, const std::vector<std::string>& values);
/// The same wherever they stand: for sheets that go on over another side.
std::string first_lost(const std::string& text, const std::vector<std::string>& values);
}  // namespace furnish::test
