#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>

#include "app/generated.h"
#include "model/audience.h"
#include "spec/keys.h"

namespace furnish::test {

/// What stands behind a key, and what stands there in a twin's file that has nothing for staff.
/// Empty: nothing.
struct Value {
  std::string all, twin;
};

/// A file made of its table of keys: every key that takes words has a word of its own, numbered
/// from `first`, STAFF…X or OPEN…X by whom it is for; with its twin. Without dice every key is
/// there. A key that comes to a table is in it from that day on.
class TableFile {
 public:
  TableFile(const TableInfo& file, int first, Dice* dice = nullptr);

  const std::string& text() const { return text_; }
  const std::string& twin() const { return twin_; }
  const std::set<std::string>& staff() const { return staff_; }
  const std::set<std::string>& everyone() const { return everyone_; }
  /// The words of a key.
  std::set<std::string> of(const KeyInfo& key) const;

 private:
  bool left_out() { return dice_ != nullptr && dice_->one_in(3); }
  std::string marker(const KeyInfo&, Audience);
  Value value(const KeyInfo&, Audience);
  Value other(const TableInfo&, Audience outer);
  Value braces(const TableInfo&, Audience outer);
  void put(std::string_view name, const Value&);
  void line(const KeyInfo&, Audience);
  void lines(const TableInfo&, Audience outer);
  void head(const std::string& words, Audience);
  void section(const KeyInfo&);
  void repeated(const KeyInfo&);

  std::string text_, twin_;
  std::set<std::string> staff_, everyone_;
  std::map<const KeyInfo*, std::set<std::string>> by_key_;
  int next_;
  Dice* dice_;
};
}  // namespace furnish::test
