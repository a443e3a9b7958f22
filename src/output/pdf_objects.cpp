#include "output/pdf_objects.h"

#include <fmt/format.h>
#include <libdeflate.h>
#include <zlib.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <limits>
#include <memory>
#include <new>
#include <utility>

#include "base/fnv.h"
#include "output/seal.h"

namespace furnish {
namespace {
/// The second of two sums begins elsewhere than the first.
constexpr std::uint64_t other_basis = 0x9E3779B97F4A7C15U;
/// An object stream is closed at so many objects or bytes: what shows one object unpacks them all.
constexpr std::size_t most_objects = 1600, most_bytes = 256 * 1024;
constexpr std::size_t place_bytes = 7;
/// Of an object's number and its place in an object stream, as text of one length.
constexpr std::size_t entry_bytes = 14;

/// An object stream's entries as differences, each to the one before it, which are much the same
/// (PNG's filter "Sub", whose pixels they are); then its objects, in rows of the same length, as
/// they are.
std::string entries_in_rows(std::string_view entries, std::string_view objects) {
  std::string out(1, '\1');
  for (std::size_t i = 0; i < entries.size(); ++i) {
    out += static_cast<char>(entries[i] - (i < entry_bytes ? 0 : entries[i - entry_bytes]));
  }
  for (std::size_t at = 0; at < objects.size(); at += entries.size()) {
    out += '\0';
    out += objects.substr(at, entries.size());
  }
  // In a row that ends early some readers see what the row before had there.
  const std::size_t over = objects.size() % entries.size();
  if (over > 0) out.append(entries.size() - over, ' ');
  return out;
}

void append_big_endian(std::string& out, std::uint64_t number, int bytes) {
  for (int at = bytes - 1; at >= 0; --at) out += static_cast<char>(number >> (8 * at) & 0xFF);
}
/// What deflate makes of bytes that come one after another.
struct Deflate {
  Deflate() {
    if (::deflateInit(&stream, Z_BEST_COMPRESSION) != Z_OK) throw std::bad_alloc();
  }
  Deflate(const Deflate&) = delete;
  Deflate& operator=(const Deflate&) = delete;
  ~Deflate() { ::deflateEnd(&stream); }
  void add(std::string_view data, int flush) {
    std::array<Bytef, 16384> some{};
    // zlib does not write there.
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(data.data()));
    stream.avail_in = static_cast<uInt>(data.size());
    do {
      stream.next_out = some.data();
      stream.avail_out = static_cast<uInt>(some.size());
      ::deflate(&stream, flush);
      bytes.append(reinterpret_cast<const char*>(some.data()), some.size() - stream.avail_out);
    } while (stream.avail_out == 0);
  }
  ::z_stream stream{};
  std::string bytes;
};
}  // namespace

std::string deflated(std::string_view data, int effort) {
  const std::unique_ptr<libdeflate_compressor, decltype(&libdeflate_free_compressor)> packer(
      libdeflate_alloc_compressor(effort), &libdeflate_free_compressor);
  if (!packer) throw std::bad_alloc();
  std::string out(libdeflate_zlib_compress_bound(packer.get(), data.size()), '\0');
  out.resize(
      libdeflate_zlib_compress(packer.get(), data.data(), data.size(), out.data(), out.size()));
  return out;
}

PdfObjects::PdfObjects(Take take, Manner manner)
    : take_(std::move(take)), manner_(manner), first_(fnv_basis), second_(other_basis) {
  places_.push_back({});  // object 0 is nobody's
}

void PdfObjects::begin() {
  // Four bytes above 127 say that the file is no text (ISO 32000-1, 7.5.2).
  if (size_ == 0) put(fmt::format("%PDF-{}\n%\xBF\xF7\xA2\xFE\n", manner_.version));
}

int PdfObjects::reserve() {
  places_.push_back({});
  return static_cast<int>(places_.size() - 1);
}

void PdfObjects::put(std::string_view bytes) {
  for (const char c : bytes) {
    first_ = fnv(first_, c);
    second_ = fnv(second_, c);
  }
  sum_ = seal_sum(sum_, bytes);
  size_ += bytes.size();
  good_ = good_ && take_(bytes);
}

PdfObjects::Place PdfObjects::here() {
  if (size_ > std::numeric_limits<std::uint32_t>::max()) good_ = false;
  return {static_cast<std::uint32_t>(size_), 0, 1};
}

void PdfObjects::add(int number, std::string_view object) {
  places_[static_cast<std::size_t>(number)] = {0, static_cast<std::uint16_t>(gathered_.size()), 2};
  numbers_ += fmt::format("{:6} {:6} ", number, waiting_.size());
  waiting_ += object;
  waiting_ += '\n';
  gathered_.push_back(number);
  if (gathered_.size() == most_objects || waiting_.size() > most_bytes) pack();
}

void PdfObjects::pack() {
  if (gathered_.empty()) return;
  const int number = reserve();
  // Until now nobody knew in which stream they would be.
  for (const int one : gathered_) {
    places_[static_cast<std::size_t>(one)].at = static_cast<std::uint32_t>(number);
  }
  // A place of more digits takes more room: then as they are.
  const bool even = numbers_.size() == gathered_.size() * entry_bytes;
  const std::string parameters =
      even ? fmt::format("/DecodeParms<</Predictor 11/Colors {}/Columns {}>>", entry_bytes,
                         gathered_.size())
           : std::string();
  add_packed(
      number,
      fmt::format("/Type/ObjStm/N {}/First {}{}", gathered_.size(), numbers_.size(), parameters),
      even ? entries_in_rows(numbers_, waiting_) : numbers_ + waiting_);
  waiting_.clear();
  numbers_.clear();
  gathered_.clear();
}

void PdfObjects::add_stream(int number, std::string_view dictionary, std::string_view data) {
  begin();
  places_[static_cast<std::size_t>(number)] = here();
  put(fmt::format("{} 0 obj\n<<{}/Length {}>>stream\n", number, dictionary, data.size()));
  put(data);
  put("\nendstream\nendobj\n");
}

void PdfObjects::add_packed(int number, std::string_view dictionary, std::string_view data) {
  add_stream(number, fmt::format("{}/Filter/FlateDecode", dictionary),
             deflated(data, manner_.effort));
}

/// Each row as its difference to the one above (PNG's filter "Up"), which packs well. Packed as it
/// comes: of a thousand pets there are half a million.
std::string PdfObjects::cross_references() const {
  Deflate packed;
  std::string rows, above(place_bytes, '\0');
  for (const Place& place : places_) {
    std::string row;
    append_big_endian(row, place.kind, 1);
    append_big_endian(row, place.at, 4);
    append_big_endian(row, place.index, 2);
    rows += '\2';
    for (std::size_t i = 0; i < place_bytes; ++i) rows += static_cast<char>(row[i] - above[i]);
    above = std::move(row);
    if (rows.size() < most_bytes) continue;
    packed.add(rows, Z_NO_FLUSH);
    rows.clear();
  }
  packed.add(rows, Z_FINISH);
  return std::move(packed.bytes);
}

bool PdfObjects::finish(int root, int info) {
  pack();
  const bool all_written = std::ranges::none_of(std::next(places_.begin()), places_.end(),
                                                [](const Place& one) { return one.kind == 0; });
  const int number = reserve();
  const std::string id = fmt::format("{:016x}{:016x}", first_, second_);
  begin();
  const std::uint64_t start = size_;
  places_.back() = here();
  places_.front().index = std::numeric_limits<std::uint16_t>::max();
  add_stream(
      number,
      fmt::format("/Type/XRef/Filter/FlateDecode/W[1 4 2]"
                  "/DecodeParms<</Predictor 12/Columns {}>>/Size {}/Root {} 0 R{}/ID[<{}><{}>]",
                  place_bytes, places_.size(), root,
                  info == 0 ? "" : fmt::format("/Info {} 0 R", info), id, id),
      cross_references());
  const std::string end = fmt::format("startxref\n{}\n%%EOF\n", start);
  put(manner_.sealed ? seal_before(sum_, end) : end);
  return good_ && all_written;
}
}  // namespace furnish
