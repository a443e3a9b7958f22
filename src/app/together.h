#pragma once

#include <cstddef>
#include <span>

#include "app/console.h"
#include "app/options.h"
#include "app/sheet_work.h"
#include "app/stop_request.h"
#include "app/workshop.h"

namespace furnish {

/// How a run ended whose sheets go into one file.
struct TogetherEnd {
  bool stopped = false;  ///< it was asked to, and nothing is written
  bool written = true;   ///< false iff there were sheets to write and an error was reported
  std::size_t none = 0, faulty = 0;
};

/// Writes the sheets of some pets as one PDF, while they are made in threads: it takes the memory
/// of some dozen sheets, however many there are, and the bytes are the same for any number of
/// threads. What lies beside the sheets is written after it.
TogetherEnd write_together(const Options&, Workshop&, Console&, Benches&, StopRequest&,
                           std::span<const PetPath>);
}  // namespace furnish
