#include "output/unpack_budget.h"

#include <qpdf/Pl_Flate.hh>
#include <qpdf/Pl_RunLength.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFStreamFilter.hh>

#include <cstdint>
#include <cstdlib>
#include <limits>
#include <memory>
#include <mutex>
#include <stdexcept>
#include <vector>

namespace furnish {
namespace {
constexpr std::int64_t no_bound = std::numeric_limits<std::int64_t>::max();
/// Bytes that may still be unpacked for this thread; negative when more was.
thread_local std::int64_t may_flow = no_bound;

/// Counts what flows through it.
class Counted final : public Pipeline {
 public:
  explicit Counted(Pipeline* to) : Pipeline("counted", to) {}
  using Pipeline::write;
  void write(const unsigned char* data, std::size_t size) override {
    if (may_flow != no_bound) {
      const bool fits = may_flow >= 0 && size <= static_cast<std::uint64_t>(may_flow);
      may_flow = fits ? may_flow - static_cast<std::int64_t>(size) : -1;
      if (!fits) throw std::length_error("unpacks to too much");
    }
    getNext()->write(data, size);
  }
  void finish() override { getNext()->finish(); }
};

/// How bytes of a row are foretold by those before them.
struct Rows {
  std::size_t bytes = 0;  ///< of a row; 0: nothing is foretold
  std::size_t step = 1;   ///< from a byte to the same one of the pixel before
};

/// Undoes PNG's filters (PNG 1.2, section 6): each row begins with the number of its own.
class Unfiltered final : public Pipeline {
 public:
  Unfiltered(Pipeline* to, Rows rows)
      : Pipeline("rows", to), rows_(rows), above_(rows.bytes), row_(rows.bytes) {}
  using Pipeline::write;
  void write(const unsigned char* data, std::size_t size) override {
    for (std::size_t i = 0; i < size; ++i) {
      if (!begun_) {
        filter_ = data[i];
        begun_ = true;
      } else {
        row_[filled_++] = data[i];
      }
      if (filled_ == rows_.bytes) pass_on();
    }
  }
  void finish() override {
    if (filled_ > 0) pass_on();
    getNext()->finish();
  }

 private:
  static int paeth(int left, int up, int corner) {
    const int guess = left + up - corner;
    const int by_left = std::abs(guess - left), by_up = std::abs(guess - up),
              by_corner = std::abs(guess - corner);
    if (by_left <= by_up && by_left <= by_corner) return left;
    return by_up <= by_corner ? up : corner;
  }

  void pass_on() {
    for (std::size_t i = 0; i < filled_; ++i) {
      const int left = i < rows_.step ? 0 : row_[i - rows_.step],
                corner = i < rows_.step ? 0 : above_[i - rows_.step], up = above_[i];
      int foretold = 0;
      if (filter_ == 1) foretold = left;
      if (filter_ == 2) foretold = up;
      if (filter_ == 3) foretold = (left + up) / 2;
      if (filter_ == 4) foretold = paeth(left, up, corner);
      row_[i] = static_cast<unsigned char>(row_[i] + foretold);
    }
    getNext()->write(row_.data(), filled_);
    above_.swap(row_);
    filled_ = 0;
    begun_ = false;
  }

  Rows rows_;
  std::vector<unsigned char> above_, row_;
  std::size_t filled_ = 0;
  unsigned char filter_ = 0;
  bool begun_ = false;
};

class CountedFlate final : public QPDFStreamFilter {
 public:
  bool setDecodeParms(QPDFObjectHandle given) override {
    if (given.isNull()) return true;
    if (!given.isDictionary()) return false;
    const auto number = [&](const char* key, long long usual) {
      QPDFObjectHandle value = given.getKey(key);
      return value.isInteger() ? value.getIntValue() : usual;
    };
    const long long predictor = number("/Predictor", 1);
    if (predictor == 1) return true;
    const long long colours = number("/Colors", 1), bits = number("/BitsPerComponent", 8),
                    columns = number("/Columns", 1);
    constexpr long long most_colours = 32, most_bits = 16, most_columns = 1 << 20;
    if (predictor < 10 || predictor > 15 || colours < 1 || colours > most_colours || bits < 1 ||
        bits > most_bits || columns < 1 || columns > most_columns) {
      return false;
    }
    rows_ = {static_cast<std::size_t>((colours * bits * columns + 7) / 8),
             static_cast<std::size_t>((colours * bits + 7) / 8)};
    return true;
  }

  Pipeline* getDecodePipeline(Pipeline* next) override {
    if (rows_.bytes > 0) {
      unfiltered_ = std::make_unique<Unfiltered>(next, rows_);
      next = unfiltered_.get();
    }
    counted_ = std::make_unique<Counted>(next);
    flate_ = std::make_unique<Pl_Flate>("flate", counted_.get(), Pl_Flate::a_inflate);
    return flate_.get();
  }

 private:
  Rows rows_;
  std::unique_ptr<Pipeline> unfiltered_, counted_, flate_;
};

class CountedRuns final : public QPDFStreamFilter {
 public:
  Pipeline* getDecodePipeline(Pipeline* next) override {
    counted_ = std::make_unique<Counted>(next);
    runs_ = std::make_unique<Pl_RunLength>("runs", counted_.get(), Pl_RunLength::a_decode);
    return runs_.get();
  }

 private:
  std::unique_ptr<Pipeline> counted_, runs_;
};

class Refused final : public QPDFStreamFilter {
 public:
  bool setDecodeParms(QPDFObjectHandle) override { return false; }
  Pipeline* getDecodePipeline(Pipeline*) override { return nullptr; }
};

template <typename Filter>
void take_over(const char* name) {
  QPDF::registerStreamFilter(name, [] { return std::make_shared<Filter>(); });
}

}  // namespace

void have_counted_filters() {
  static std::once_flag once;
  std::call_once(once, [] {
    take_over<CountedFlate>("/FlateDecode");
    take_over<CountedRuns>("/RunLengthDecode");
    take_over<Refused>("/LZWDecode");
  });
}

UnpackBudget::UnpackBudget(std::size_t bytes) {
  have_counted_filters();
  may_flow = static_cast<std::int64_t>(bytes);
}
UnpackBudget::~UnpackBudget() {
  may_flow = no_bound;
}
bool UnpackBudget::spent() const {
  return may_flow < 0;
}
}  // namespace furnish
