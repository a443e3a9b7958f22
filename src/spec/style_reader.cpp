#include "spec/style_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "spec/style_format.h"
#include "spec/trim_reader.h"
#include "trade/place_synonyms.h"

namespace furnish {
namespace {
std::optional<Region> read_region(const TomlNode& node, DiagnosticSink& sink) {
  const auto word = as_text(node, "lines", sink);
  if (!word) return std::nullopt;
  auto place = parse_place(*word);
  if (!place) place = parse_synonym(*word);
  if (place && place->side == Side::both) return place->region;
  std::vector<std::string_view> keys;
  for (const RegionInfo& row : regions()) keys.push_back(row.key);
  report_unknown("unknown-region", node.span, "region", *word, keys, sink);
  return std::nullopt;
}

std::optional<Seam> read_seam(const TomlNode& node, DiagnosticSink& sink) {
  const auto* const pair = std::get_if<TomlList>(&node.value);
  if (pair == nullptr || pair->size() != 2) {
    report_type(node, "lines", "two neighbouring regions such as [\"cheeks\", \"neck\"]", sink);
    return std::nullopt;
  }
  const auto a = read_region(pair->front(), sink), b = read_region(pair->back(), sink);
  if (!a || !b) return std::nullopt;
  if (!adjacent(*a, *b)) {
    sink.error("no-seam", node.span,
               fmt::format("the {} and the {} do not touch, so there is no line between them",
                           name(*a), name(*b)));
    return std::nullopt;
  }
  return *a < *b ? Seam{*a, *b} : Seam{*b, *a};
}

void read_identity(Fields& fields, StyleFile& out) {
  Style& style = out.style;
  if (auto name = fields.text(keys::style::name)) {
    style.name = name->value;
    style.span = name->span;
  }
  out.extends = fields.text(keys::style::extends);
  for (const auto& coat : fields.choices(keys::style::coats)) {
    style.coats.push_back(coat.value);
  }
  style.looks = fields.words(keys::style::looks);
  if (const auto span = fields.quantity(keys::style::grown_out)) {
    style.grown_out = span->value;
  }
  for (const TomlNode& item : fields.items(keys::style::lines)) {
    if (const auto seam = read_seam(item, fields.sink())) style.lines.push_back(*seam);
  }
  fields.finish();
}
}  // namespace

StyleFile read_style_file(const ReadContext& context, const std::string& path) {
  StyleFile out;
  out.style.key = stem(path);
  const auto [number, document] =
      read_file(context, path, "a style needs [style] with a name, and [trim]");
  out.file = number;
  if (!document) return out;
  Fields file(*document, keys::style_file::file, context.sink);
  if (auto table = file.table(keys::style_file::style)) read_identity(*table, out);
  if (auto table = file.table(keys::style_file::trim))
    out.style.trim = read_trim_rules(*table, Why::no);
  if (auto table = file.table(keys::style_file::finish)) out.style.finish = read_finish(*table);
  file.finish();
  out.good = no_errors_in(out.file, context.sink);
  return out;
}

void extend(Style& style, const Style& lower) {
  if (style.coats.empty()) style.coats = lower.coats;
  if (style.looks.empty()) style.looks = lower.looks;
  if (!style.grown_out) style.grown_out = lower.grown_out;
  for (const Seam& line : lower.lines) {
    if (std::ranges::find(style.lines, line) == style.lines.end()) style.lines.push_back(line);
  }
  style.lineage = {lower.key};
  style.lineage.insert(style.lineage.end(), lower.lineage.begin(), lower.lineage.end());
  style.trim = overlay(lower.trim, style.trim);
  style.finish = overlay(lower.finish, style.finish);
}
}  // namespace furnish
