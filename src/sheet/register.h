#pragma once

#include <memory>
#include <string>

namespace furnish {

/// The letters under which a language looks names up, and the order of names, both by ICU (CLDR):
/// "Álex" is under A in Spanish, "Ñandú" under Ñ; other scripts have letters of their own.
class NameRegister {
 public:
  /// `language` is BCP 47.
  explicit NameRegister(const std::string& language);
  ~NameRegister();
  NameRegister(const NameRegister&) = delete;
  NameRegister& operator=(const NameRegister&) = delete;

  /// What can be compared byte by byte.
  std::string sort_key(const std::string& name) const;
  /// "M"; of what begins with no letter "#".
  std::string letter(const std::string& name) const;

 private:
  struct Names;
  std::unique_ptr<Names> names_;
};

/// "Adeyemi R." of "R. Adeyemi", by which a person is looked up: the last word, then the others.
std::string by_last_word(const std::string& name);
}  // namespace furnish
