#pragma once

#include <deque>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace furnish {

/// A dictionary of a PDF, its values as PDF writes them: "(a text)", "12 0 R", "[0 1]".
class PdfDict {
 public:
  PdfDict() = default;
  /// Of "<<...>>". Throws std::runtime_error if it is none.
  explicit PdfDict(std::string_view text);
  /// Empty if it has none.
  std::string_view operator[](std::string_view key) const;
  bool has(std::string_view key) const { return !(*this)[key].empty(); }
  /// `key` is a name that lives as long as the dictionary, such as "/Lang".
  void set(std::string_view key, std::string value);
  void remove(std::string_view key);
  std::string text() const;
  using Entry = std::pair<std::string_view, std::string>;
  const std::vector<Entry>& entries() const { return entries_; }

 private:
  std::vector<Entry> entries_;
};

/// "12 0 R"
std::string reference(int object);
/// The number of the object that a value refers to; 0 if it is no reference.
int referred_to(std::string_view value);
/// Items of an array, in order; of what is none, itself.
std::vector<std::string_view> items_of(std::string_view value);
/// A text as PDF writes it, in the very bytes that cairo gives it.
std::string pdf_text(std::string_view utf8);

/// A PDF as cairo writes it, to be completed and written anew. It reads no other file: its objects
/// come one after another, none of them in a stream, and streams are packed by deflate or are
/// photos. Throws std::runtime_error where it finds something else.
class DrawnPdf {
 public:
  /// `bytes` live as long as this.
  explicit DrawnPdf(std::string_view bytes);

  PdfDict& root() { return at(root_); }
  PdfDict& info() { return at(info_); }
  std::vector<int> pages();
  /// The dictionary of an object, or of its stream.
  PdfDict& at(int object);
  bool holds_dictionary(int object) const;

  /// Of a stream, unpacked.
  std::string data(int stream);
  void set_data(int stream, std::string data);
  int add(PdfDict);
  /// Not to be packed are bytes that programs look for as they are.
  int add_stream(PdfDict, std::string data, bool pack = true);

  /// What the root refers to, and the information dictionary unless the file is to go without.
  std::string written(std::string_view version, bool with_info);

 private:
  struct Object {
    enum class Kind : unsigned char { other, dictionary, stream } kind = Kind::other;
    PdfDict dict;
    std::string_view value;  ///< of another kind, or the stream's bytes
    std::string own;         ///< the stream's bytes instead, not packed
    bool changed = false, pack = true;
  };
  Object& object(int number);
  void read(int number, std::size_t at);

  std::string_view bytes_;
  std::deque<Object> objects_;  ///< by their numbers
  int root_ = 0, info_ = 0;
};
}  // namespace furnish
