#pragma once

#include <string>
#include <vector>

namespace furnish::bench {

/// A process for each kind of sheet, with the bare program in turn; all as multiples of it.
/// `folder`: where it may write.
void cold_sheets(const std::vector<std::string>& bare, int runs, const std::string& folder);
/// Each kind of sheet in one workshop again and again, file to PDF, as shares of the bare program.
void warm_sheets(const std::vector<std::string>& bare, int runs);
/// A page like a card's by the typesetters that are installed, beside furnish's and the bare one.
void rivals(const std::vector<std::string>& card, const std::vector<std::string>& bare, int runs,
            const std::string& folder);
}  // namespace furnish::bench
