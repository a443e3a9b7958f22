#include "sheet/register.h"

#include <unicode/alphaindex.h>
#include <unicode/coll.h>
#include <unicode/locid.h>

#include <vector>

#include "base/text.h"

namespace furnish {
namespace {
icu::UnicodeString utf16(const std::string& text) {
  return icu::UnicodeString::fromUTF8({text.data(), static_cast<std::int32_t>(text.size())});
}
}  // namespace

struct NameRegister::Names {
  std::unique_ptr<icu::Collator> order;
  std::unique_ptr<icu::AlphabeticIndex::ImmutableIndex> letters;
};

NameRegister::NameRegister(const std::string& language) : names_(std::make_unique<Names>()) {
  UErrorCode code = U_ZERO_ERROR;
  icu::Locale locale = icu::Locale::forLanguageTag(language, code);
  if (U_FAILURE(code)) locale = icu::Locale::getEnglish();
  code = U_ZERO_ERROR;
  names_->order.reset(icu::Collator::createInstance(locale, code));
  icu::AlphabeticIndex index(locale, code);
  // Past its usual number of labels it leaves some out, the language's own among them.
  constexpr std::int32_t all_labels = 1000;
  index.setMaxLabelCount(all_labels, code);
  // Names in another script than the page's have letters too.
  for (const char* const other : {"en", "el", "ru", "ar", "he", "ja", "ko", "zh"}) {
    index.addLabels(icu::Locale(other), code);
  }
  names_->letters.reset(index.buildImmutableIndex(code));
}

NameRegister::~NameRegister() = default;

std::string NameRegister::sort_key(const std::string& name) const {
  if (!names_->order) return name;
  const icu::UnicodeString text = utf16(name);
  std::vector<std::uint8_t> key(
      static_cast<std::size_t>(names_->order->getSortKey(text, nullptr, 0)));
  names_->order->getSortKey(text, key.data(), static_cast<std::int32_t>(key.size()));
  return {key.begin(), key.end()};
}

std::string NameRegister::letter(const std::string& name) const {
  const std::string none = "#";
  if (!names_->letters) return none;
  UErrorCode code = U_ZERO_ERROR;
  const auto* const bucket =
      names_->letters->getBucket(names_->letters->getBucketIndex(utf16(name), code));
  if (U_FAILURE(code) || bucket == nullptr || bucket->getLabelType() != U_ALPHAINDEX_NORMAL) {
    return none;
  }
  std::string out;
  bucket->getLabel().toUTF8String(out);
  return out;
}

std::string by_last_word(const std::string& name) {
  const std::string all(trimmed(name));
  const std::size_t space = all.rfind(' ');
  return space == std::string::npos ? all : all.substr(space + 1) + " " + all.substr(0, space);
}
}  // namespace furnish
