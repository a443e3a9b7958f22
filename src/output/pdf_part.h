#pragma once

#include <qpdf/QPDF.hh>

#include <deque>
#include <functional>
#include <map>
#include <string>
#include <utility>

#include "output/pdf_objects.h"

namespace furnish {

/// Copies objects of one PDF into another that is being written, each once and under a new number.
class PdfPart {
 public:
  using Handle = QPDFObjectHandle;
  /// What belongs to a document as a whole, and so is another in the whole of many parts.
  struct Whole {
    std::string ids;  ///< stands before every ID of an element; sorts as the parts do
    int parents = 0;  ///< the first key in the tree of parents
  };
  /// Of the name of a place that a link leads to: the place itself, as an array.
  using Places = std::function<std::string(const std::string&)>;
  PdfPart(PdfObjects& out, Whole whole) : out_(out), whole_(std::move(whole)) {}

  /// From now on a reference to this object is one to that number; it is not copied.
  void stands_for(Handle object, int number) { numbers_[object.getObjGen()] = number; }
  /// `elements`: the same place by an element of the structure.
  void set_places(Places places, Places elements = {}) {
    places_ = std::move(places);
    elements_ = std::move(elements);
  }
  /// Its number in the new file, where it will be once copy_waiting() was called.
  int number_of(Handle);
  /// The object is copied to a number that was reserved.
  void copy_as(Handle object, int number);
  /// Copies all that was asked for and not yet copied, and what that needs.
  void copy_waiting();
  /// A value as the new file writes it; what is indirect is a reference.
  std::string value(Handle);
  /// Entries of a dictionary, without its brackets.
  std::string entries(Handle dictionary);

 private:
  struct Waiting {
    Handle object;
    int number;
  };
  std::string entry(const std::string& key, Handle value, bool of_element);
  void copy(const Waiting&);

  PdfObjects& out_;
  Whole whole_;
  Places places_, elements_;
  std::map<QPDFObjGen, int> numbers_;
  std::deque<Waiting> waiting_;
};
}  // namespace furnish
