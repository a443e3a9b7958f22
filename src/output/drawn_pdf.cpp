#include "output/drawn_pdf.h"

#include <fmt/format.h>
#include <zlib.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <stdexcept>

#include "output/pdf_objects.h"
#include "page/prepared_text.h"

namespace furnish {
namespace {
/// Of libdeflate's: as small as zlib's default, in less time.
constexpr int usual_effort = 6;

[[noreturn]] void not_drawn() {
  throw std::runtime_error("it is not as cairo writes it");
}

bool is_space(char c) {
  return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\0' || c == '\f';
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool ends_word(char c) {
  return is_space(c) || std::string_view("()<>[]/%").find(c) != std::string_view::npos;
}

/// Goes through the values of PDF (ISO 32000-1, 7.2 and 7.3).
class Values {
 public:
  explicit Values(std::string_view text, std::size_t at = 0) : text_(text), at_(at) {}

  std::size_t at() const { return at_; }
  /// At the end, 0.
  char next() {
    while (at_ < text_.size()) {
      if (text_[at_] == '%') {
        while (at_ < text_.size() && text_[at_] != '\n' && text_[at_] != '\r') ++at_;
      } else if (is_space(text_[at_])) {
        ++at_;
      } else {
        return text_[at_];
      }
    }
    return 0;
  }
  bool takes(std::string_view word) {
    next();
    if (!text_.substr(at_).starts_with(word)) return false;
    at_ += word.size();
    return true;
  }
  /// A reference counts as one.
  std::string_view value() {
    const char c = next();
    const std::size_t begin = at_;
    if (c == 0) not_drawn();
    pass(c);
    if (is_digit(c)) pass_reference();
    return text_.substr(begin, at_ - begin);
  }
  int number() {
    next();
    int out = 0;
    const auto [end, fault] = std::from_chars(text_.data() + at_, text_.data() + text_.size(), out);
    if (fault != std::errc()) not_drawn();
    at_ = static_cast<std::size_t>(end - text_.data());
    return out;
  }

 private:
  void pass(char c) {
    if (c == '(') return pass_string();
    if (c == '[') return pass_all("]");
    if (c == '<' && text_.substr(at_, 2) == "<<") return pass_all(">>");
    if (c == '<') {
      at_ = std::min(text_.find('>', at_), text_.size() - 1) + 1;
      return;
    }
    const std::size_t begin = at_++;  // of a name, its slash
    while (at_ < text_.size() && !ends_word(text_[at_])) ++at_;
    if (c != '/' && (ends_word(c) || at_ == begin)) not_drawn();
  }
  void pass_all(std::string_view end) {
    at_ += end.size();  // as long as what it ends
    while (!takes(end)) value();
  }
  /// Brackets come in pairs unless a backslash stands before them.
  void pass_string() {
    for (int open = 0; at_ < text_.size(); ++at_) {
      const char c = text_[at_];
      if (c == '\\') ++at_;
      if (c == '(') ++open;
      if (c == ')' && --open == 0) break;
    }
    at_ = std::min(at_ + 1, text_.size());
  }
  void pass_reference() {
    constexpr std::string_view rest = " 0 R";
    if (text_.substr(at_, rest.size()) == rest) at_ += rest.size();
  }

  std::string_view text_;
  std::size_t at_;
};

std::string unpacked(std::string_view packed) {
  ::z_stream stream{};
  if (::inflateInit(&stream) != Z_OK) throw std::bad_alloc();
  // zlib does not write there.
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(packed.data()));
  stream.avail_in = static_cast<uInt>(packed.size());
  std::string out;
  std::array<char, 65536> some{};
  int status = Z_OK;
  while (status == Z_OK) {
    stream.next_out = reinterpret_cast<Bytef*>(some.data());
    stream.avail_out = static_cast<uInt>(some.size());
    status = ::inflate(&stream, Z_NO_FLUSH);
    out.append(some.data(), some.size() - stream.avail_out);
  }
  ::inflateEnd(&stream);
  if (status != Z_STREAM_END) not_drawn();
  return out;
}

/// A value whose references have the numbers that `number_of` gives for theirs.
template <typename NumberOf>
void append_renumbered(std::string& out, std::string_view value, NumberOf number_of) {
  if (const int one = referred_to(value); one != 0) {
    out += reference(number_of(one));
  } else if (value.starts_with("<<")) {
    Values values(value, 2);
    out += "<<";
    while (!values.takes(">>")) {
      const std::string_view item = values.value();
      if (!item.starts_with('/') && !ends_word(item.front()) && !ends_word(out.back())) out += ' ';
      append_renumbered(out, item, number_of);
    }
    out += ">>";
  } else if (value.starts_with('[')) {
    Values values(value, 1);
    out += '[';
    while (!values.takes("]")) {
      const std::string_view item = values.value();
      if (!ends_word(item.front()) && !ends_word(out.back())) out += ' ';
      append_renumbered(out, item, number_of);
    }
    out += ']';
  } else {
    out += value;
  }
}
}  // namespace

PdfDict::PdfDict(std::string_view text) {
  Values values(text);
  if (!values.takes("<<")) not_drawn();
  while (!values.takes(">>")) {
    const std::string_view key = values.value();
    if (!key.starts_with('/')) not_drawn();
    entries_.emplace_back(key, values.value());
  }
}

std::string_view PdfDict::operator[](std::string_view key) const {
  const auto found = std::ranges::find(entries_, key, &Entry::first);
  return found == entries_.end() ? std::string_view() : std::string_view(found->second);
}

void PdfDict::set(std::string_view key, std::string value) {
  const auto found = std::ranges::find(entries_, key, &Entry::first);
  if (found != entries_.end()) {
    found->second = std::move(value);
  } else {
    entries_.emplace_back(key, std::move(value));
  }
}

void PdfDict::remove(std::string_view key) {
  std::erase_if(entries_, [&](const Entry& one) { return one.first == key; });
}

std::string PdfDict::text() const {
  std::string out = "<<";
  for (const auto& [key, value] : entries_) {
    out += key;
    if (!ends_word(value.front())) out += ' ';
    out += value;
  }
  return out + ">>";
}

std::string reference(int object) {
  return fmt::format("{} 0 R", object);
}

int referred_to(std::string_view value) {
  if (value.empty() || !is_digit(value.front()) || !value.ends_with(" 0 R")) return 0;
  return Values(value).number();
}

std::vector<std::string_view> items_of(std::string_view value) {
  if (!value.starts_with('[')) return {value};
  std::vector<std::string_view> out;
  Values values(value, 1);
  while (!values.takes("]")) out.push_back(values.value());
  return out;
}

std::string pdf_text(std::string_view utf8) {
  const bool plain = std::ranges::all_of(utf8, [](char c) { return c >= 0x20 && c < 0x7F; });
  std::string out = plain ? "(" : "<FEFF";
  if (plain) {
    for (const char c : utf8) {
      if (c == '(' || c == ')' || c == '\\') out += '\\';
      out += c;
    }
    return out + ")";
  }
  for (const char32_t c : as_utf32(utf8)) {
    if (c < 0x10000) {
      out += fmt::format("{:04X}", static_cast<unsigned>(c));
    } else {  // a pair of surrogates
      const auto rest = static_cast<unsigned>(c - 0x10000);
      out += fmt::format("{:04X}{:04X}", 0xD800 + (rest >> 10), 0xDC00 + (rest & 0x3FF));
    }
  }
  return out + ">";
}

DrawnPdf::DrawnPdf(std::string_view bytes) : bytes_(bytes) {
  const std::size_t start = bytes.rfind("startxref");
  if (start == bytes.npos) not_drawn();
  Values values(bytes, start);
  values.takes("startxref");
  values = Values(bytes, static_cast<std::size_t>(values.number()));
  if (!values.takes("xref") || values.number() != 0) not_drawn();
  const int count = values.number();
  std::vector<std::size_t> places;
  for (int i = 0; i < count; ++i) {
    places.push_back(static_cast<std::size_t>(values.number()));
    values.number();  // how often its number was used
    if (!values.takes(i == 0 ? "f" : "n")) not_drawn();
  }
  if (!values.takes("trailer")) not_drawn();
  const PdfDict trailer(bytes.substr(values.at()));
  root_ = referred_to(trailer["/Root"]);
  info_ = referred_to(trailer["/Info"]);
  objects_.resize(places.size());
  // Streams say how long they are by objects that stand behind them.
  for (std::size_t i = places.size(); i-- > 1;) read(static_cast<int>(i), places[i]);
  for (Object& one : objects_) {
    if (one.kind != Object::Kind::stream) continue;
    const std::string_view says = one.dict["/Length"];
    const int length = referred_to(says);
    const std::string_view number = length != 0 ? object(length).value : says;
    one.value = one.value.substr(0, static_cast<std::size_t>(Values(number).number()));
    one.dict.remove("/Length");
  }
}

void DrawnPdf::read(int number, std::size_t at) {
  Values values(bytes_, at);
  if (values.number() != number || values.number() != 0 || !values.takes("obj")) not_drawn();
  Object& one = object(number);
  one.value = values.value();
  if (!one.value.starts_with("<<")) return;
  one.kind = Object::Kind::dictionary;
  one.dict = PdfDict(one.value);
  if (!values.takes("stream\n")) return;
  one.kind = Object::Kind::stream;
  one.value = bytes_.substr(values.at());
}

DrawnPdf::Object& DrawnPdf::object(int number) {
  if (number <= 0 || number >= static_cast<int>(objects_.size())) not_drawn();
  return objects_[static_cast<std::size_t>(number)];
}

bool DrawnPdf::holds_dictionary(int number) const {
  return number > 0 && number < static_cast<int>(objects_.size()) &&
         objects_[static_cast<std::size_t>(number)].kind != Object::Kind::other;
}

PdfDict& DrawnPdf::at(int number) {
  if (!holds_dictionary(number)) not_drawn();
  return object(number).dict;
}

std::vector<int> DrawnPdf::pages() {
  std::vector<int> out;
  for (const std::string_view kid : items_of(at(referred_to(root()["/Pages"]))["/Kids"])) {
    out.push_back(referred_to(kid));
  }
  return out;
}

std::string DrawnPdf::data(int stream) {
  const Object& one = object(stream);
  if (one.changed) return one.own;
  if (one.kind != Object::Kind::stream || one.dict["/Filter"] != "/FlateDecode") not_drawn();
  return unpacked(one.value);
}

void DrawnPdf::set_data(int stream, std::string data) {
  Object& one = object(stream);
  one.own = std::move(data);
  one.changed = true;
  one.dict.remove("/Filter");
}

int DrawnPdf::add(PdfDict dict) {
  objects_.push_back({Object::Kind::dictionary, std::move(dict), {}, {}});
  return static_cast<int>(objects_.size()) - 1;
}

int DrawnPdf::add_stream(PdfDict dict, std::string data, bool pack) {
  objects_.push_back({Object::Kind::stream, std::move(dict), {}, std::move(data), true, pack});
  return static_cast<int>(objects_.size()) - 1;
}

std::string DrawnPdf::written(std::string_view version, bool with_info) {
  std::string bytes;
  bytes.reserve(bytes_.size());
  PdfObjects out(
      [&](std::string_view some) {
        bytes += some;
        return true;
      },
      {.version = version, .sealed = false, .effort = usual_effort});
  std::vector<int> numbers(objects_.size()), waiting;
  const auto number_of = [&](int object) {
    int& number = numbers.at(static_cast<std::size_t>(object));
    if (number == 0) {
      number = out.reserve();
      waiting.push_back(object);
    }
    return number;
  };
  const int root = number_of(root_), info = with_info ? number_of(info_) : 0;
  for (std::size_t i = 0; i < waiting.size(); ++i) {
    const Object& one = object(waiting[i]);
    const int number = number_of(waiting[i]);
    std::string text;
    append_renumbered(text,
                      one.kind == Object::Kind::other ? std::string(one.value) : one.dict.text(),
                      number_of);
    if (one.kind != Object::Kind::stream) {
      out.add(number, text);
      continue;
    }
    const std::string_view entries = std::string_view(text).substr(2, text.size() - 4);
    if (one.changed && one.pack) {
      out.add_packed(number, entries, one.own);
    } else {
      out.add_stream(number, entries, one.changed ? one.own : one.value);
    }
  }
  if (!out.finish(root, info)) throw std::runtime_error("not all of it was written");
  return bytes;
}
}  // namespace furnish
