#pragma once

#include <cstdint>
#include <deque>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace furnish {
/// Of libdeflate's; two more save a thousandth, in twice the time.
inline constexpr int most_effort = 10;

/// A PDF that is written from its first byte to its last while its objects come, so that a long one
/// takes no more memory than what is kept of each object's place. Small objects are gathered into
/// object streams (ISO 32000-1, 7.5.7); nothing is written before there is one; it ends with a
/// cross-reference stream, and with furnish's seal unless it is to get one later.
class PdfObjects {
 public:
  /// Takes the file's next bytes; false if it could not.
  using Take = std::function<bool(std::string_view)>;
  struct Manner {
    std::string_view version = "1.7";
    bool sealed = true;
    int effort = most_effort;  ///< of deflate
  };
  PdfObjects(Take, Manner);

  /// A number for an object that is to be written, once, before the end.
  int reserve();
  /// An object as PDF writes it, without "obj" and "endobj".
  void add(int number, std::string_view object);
  /// `dictionary` is all of it but /Length and the brackets; `data` as its filters left it.
  void add_stream(int number, std::string_view dictionary, std::string_view data);
  /// The same of data that no filter has seen yet.
  void add_packed(int number, std::string_view dictionary, std::string_view data);
  /// Without an information dictionary if its number is 0. False if some bytes were not taken, an
  /// object was not written, or the file would be larger than its places can say (4 GiB).
  bool finish(int root, int info);

 private:
  /// Where an object is: in the file, or at an index of an object stream.
  struct Place {
    std::uint32_t at = 0;
    std::uint16_t index = 0;
    std::uint8_t kind =
        0;  ///< as in a cross-reference stream: 0 not written, 1 in the file, 2 in a stream
  };
  void begin();
  void put(std::string_view bytes);
  void pack();
  Place here();
  std::string cross_references() const;

  Take take_;
  Manner manner_;
  bool good_ = true;
  std::uint64_t size_ = 0;
  std::uint32_t sum_ = 0;         ///< CRC-32, for the seal
  std::uint64_t first_, second_;  ///< of what was written, for the file's ID
  std::deque<Place> places_;
  std::string waiting_, numbers_;
  std::vector<int> gathered_;  ///< what waits
};

/// As deflate packs it, with an effort that libdeflate knows (0 to 12).
std::string deflated(std::string_view, int effort = most_effort);
}  // namespace furnish
