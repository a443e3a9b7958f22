#include "app/hand_over.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace furnish {

HandedOver handed_over(Workshop& shop, std::uint32_t from) {
  HandedOver out{from, shop.sources().handed_over(from), {}};
  std::ranges::copy(shop.sink().all(), std::back_inserter(out.said));
  shop.sink().forget();
  return out;
}

bool HandOver::take(std::size_t shop, HandedOver given) {
  auto& numbers = numbers_[shop];
  // Those of the pet before are gone.
  std::erase_if(numbers, [&](const auto& one) { return run_.sources().passing(one.second); });
  for (std::size_t i = 0; i < given.texts.size(); ++i) {
    SourceSet::Text& one = given.texts[i];
    const auto own = given.from + static_cast<std::uint32_t>(i);
    const auto known = one.passing ? shared_.end() : shared_.find(one.path);
    if (known != shared_.end()) {
      numbers[own] = known->second;
      continue;
    }
    const std::string path = one.path;
    numbers[own] = run_.sources().add(std::move(one.path), std::move(one.text), one.passing);
    if (!one.passing) shared_[path] = numbers[own];
  }
  bool of_all = false;
  for (Diagnostic& one : given.said) {
    renumber(shop, one);
    // Each shop has read the salon's files for itself, and found the same.
    const bool again = one.once.empty() && !said_.insert(to_text(one, run_.sources())).second;
    of_all = of_all || one.once.empty();
    if (!again) run_.sink().add(std::move(one));
  }
  return of_all;
}

void HandOver::take(std::size_t shop, DiagnosticSink& said) {
  for (Diagnostic one : said.all()) {
    renumber(shop, one);
    run_.sink().add(std::move(one));
  }
}

void HandOver::renumber(std::size_t shop, Diagnostic& said) {
  const auto& numbers = numbers_[shop];
  const auto change = [&](SourceSpan& span) {
    const auto known = numbers.find(span.file);
    if (known != numbers.end()) span.file = known->second;
  };
  change(said.span);
  for (auto& [span, text] : said.notes) change(span);
}
}  // namespace furnish
