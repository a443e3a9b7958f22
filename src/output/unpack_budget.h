#pragma once

#include <cstddef>

namespace furnish {

/// Gives libqpdf the filters that UnpackBudget counts by. It has one table of them for the whole
/// process: whoever works with libqpdf calls this first, so that no thread changes it under
/// another.
void have_counted_filters();

/// While it lives, what libqpdf's filters unpack for this thread may come to so many bytes, counted
/// behind each filter of a chain: a filter that leaves little of what the one before it unpacked
/// hides no work. Past that every filter throws std::length_error, which libqpdf may turn into a
/// warning, so ask spent(). Without one there is no bound. One at a time in a thread.
///
/// For this the filters that unpack to more than they are given are our own (Flate, with PNG's
/// predictors, and RunLength; ISO 32000-1, 7.4.4 and 7.4.5). LZW, which no sheet has, is none that
/// can be unpacked.
class UnpackBudget {
 public:
  explicit UnpackBudget(std::size_t bytes);
  ~UnpackBudget();
  UnpackBudget(const UnpackBudget&) = delete;
  UnpackBudget& operator=(const UnpackBudget&) = delete;
  bool spent() const;
};
}  // namespace furnish
