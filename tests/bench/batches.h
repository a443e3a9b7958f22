#pragma once

#include <string>
#include <vector>

namespace furnish::bench {

// `folder`: where they may write; what they make is gone when they end.

/// Cards of many pets: one thread against two, few pets against 1,000, and all of them again when
/// nothing changed.
void batches(const std::string& folder);
/// The same of 10,000; of 100,000.
void scale(const std::string& folder);
void hundred_thousand(const std::string& folder);
/// A morning's cards, with their files safe on the disk; `bare`: the bare program.
void to_disk(const std::vector<std::string>& bare, int runs, const std::string& folder);
/// Cards in one file, against as many files.
void together(const std::string& folder);
/// All there is of 1,000 pets, in one file.
void book(const std::string& folder);
/// From a saved file to its card, with `furnish watch`.
void watching(const std::string& folder, int times);
}  // namespace furnish::bench
