#pragma once

#include <qpdf/QPDF.hh>

#include <cstdint>
#include <map>
#include <memory>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace furnish::test {

/// A PDF read by libqpdf, and its bytes.
class PdfFile {
 public:
  explicit PdfFile(std::string bytes);
  const std::string& bytes() const { return bytes_; }
  QPDF& pdf() const { return *pdf_; }
  QPDFObjectHandle root() const { return pdf_->getRoot(); }
  QPDFObjectHandle info() const { return pdf_->getTrailer().getKey("/Info"); }
  /// Empty if there is none.
  std::string xmp() const;
  std::vector<QPDFObjectHandle> pages() const;
  /// Elements of the structure tree, each before what it holds.
  std::vector<QPDFObjectHandle> elements() const;
  /// The numbers of marked content on a page in which something is shown: an element may name some
  /// that is empty.
  const std::set<int>& shown_on(QPDFObjectHandle page) const;

 private:
  mutable std::map<QPDFObjGen, std::set<int>> shown_;
  std::string bytes_;
  std::unique_ptr<QPDF> pdf_;
};

/// Of an array; none if it is something else.
std::vector<QPDFObjectHandle> items_of(QPDFObjectHandle array);
/// "/Figure" of an element; its elements below, in order.
std::string type_of(QPDFObjectHandle element);
std::vector<QPDFObjectHandle> elements_below(QPDFObjectHandle element);

/// Which files a rule is for: those of PDF 1.7, which claim PDF/UA-1 (ISO 14289-1) and PDF/A-3A
/// (ISO 19005-3), those of PDF 2.0, which claim PDF/UA-2 (ISO 14289-2), WTPDF 1.0 and PDF/A-4 (ISO
/// 19005-4), or both.
enum class RuleOf : std::uint8_t { both, one, two };

/// One thing that those standards or PDF itself (ISO 32000) ask for.
struct PdfRule {
  std::string_view name;
  std::string_view source;
  bool cairo_keeps_it;  ///< true of a file as cairo 1.16 writes it
  std::vector<std::string> (*faults)(const PdfFile&);
  RuleOf of = RuleOf::both;
};
std::vector<PdfRule> pdf_rules(RuleOf);

/// "rule: what is wrong" for each fault; empty if all rules hold for files of its version.
std::vector<std::string> pdf_faults(const std::string& bytes);
}  // namespace furnish::test
