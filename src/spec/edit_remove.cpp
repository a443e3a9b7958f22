#include <algorithm>

#include "spec/edit_splice.h"

namespace furnish {
namespace {
struct Lines {
  std::size_t first, last;
};

std::vector<Lines> lines_of(const ParsedText& parsed, const Site& site) {
  std::vector<Lines> out;
  for (const std::size_t b : site.blocks) {
    const TextLayout::Block& block = parsed.layout.blocks[b];
    const std::size_t header = parsed.line_of(block.at.begin), lead = parsed.lead(header);
    // What stands at the top is about the file.
    out.push_back({lead == 0 ? header : lead, parsed.last_line(block)});
  }
  for (const Site::Statement& one : site.statements) {
    const TextLayout::Pair& pair = parsed.layout.blocks[one.block].pairs[one.pair];
    out.push_back({parsed.first_line(pair), parsed.last_line(pair)});
  }
  std::ranges::sort(out, {}, &Lines::first);
  return out;
}

/// Behind the commas, spaces and line ends from `at`; `stop` is as far as it goes.
std::size_t past_blanks(const std::string& text, std::size_t at, std::string_view blanks,
                        std::size_t stop) {
  while (at < stop && blanks.find(text[at]) != std::string_view::npos) ++at;
  return at;
}

/// The comma behind an item, before `stop`; none inside of remarks.
std::optional<std::size_t> comma_behind(const std::string& text, std::size_t at, std::size_t stop) {
  for (bool remark = false; at < stop; ++at) {
    if (text[at] == '\n') remark = false;
    if (text[at] == '#') remark = true;
    if (text[at] == ',' && !remark) return at;
  }
  return std::nullopt;
}

bool has_remark_or_line(const std::string& text, std::size_t from, std::size_t to) {
  return std::string_view(text).substr(from, to - from).find_first_of("#\n") !=
         std::string_view::npos;
}

Splice remove_item(const ParsedText& parsed, const TextLayout::Value& list, std::size_t n) {
  const std::string& text = parsed.text;
  const auto [begin, end] = list.items[n].at;
  const bool last = n + 1 == list.items.size();
  const std::size_t next = last ? list.at.end - 1 : list.items[n + 1].at.begin;
  const auto comma = comma_behind(text, end, next);
  const std::size_t first_line = parsed.line_of(begin), last_line = parsed.line_of(end - 1);
  const std::size_t line_begin = parsed.starts[first_line];
  const std::size_t line_end = parsed.line_end(last_line);
  const bool begins_line = past_blanks(text, line_begin, " \t", begin) == begin;
  const std::size_t after = past_blanks(text, end, " \t,", line_end);
  const bool ends_line =
      after < line_end && (text[after] == '#' || text[after] == '\r' || text[after] == '\n');
  if (begins_line && ends_line && (!comma || *comma < line_end)) {
    // Alone on its lines. The comma of the one before may stay: TOML allows it at the end.
    return {line_begin, line_end - line_begin, {}};
  }
  if (comma) {
    const std::string between = text.substr(end, *comma - end);
    if (between.find('#') != std::string::npos) {  // a remark before its comma stays
      return {begin, *comma + 1 - begin, between};
    }
    const std::size_t to = past_blanks(text, *comma + 1, " \t", next);
    return {begin, to - begin, {}};
  }
  if (n > 0) {
    const std::size_t before = list.items[n - 1].at.end;
    if (!has_remark_or_line(text, before, begin)) return {before, end - before, {}};
  }
  const std::size_t to = past_blanks(text, end, " \t", next);
  return {begin, to - begin, {}};
}

Splice remove_pair(const ParsedText&, const TextLayout::Value& braces, std::size_t n) {
  const auto& pairs = braces.pairs;
  if (pairs.size() == 1) return {braces.at.begin, braces.at.end - braces.at.begin, "{}"};
  const std::size_t begin = pairs[n].begin(), end = pairs[n].end();
  if (n + 1 < pairs.size()) return {begin, pairs[n + 1].begin() - begin, {}};
  const std::size_t before = pairs[n - 1].end();
  return {before, end - before, {}};
}
}  // namespace

Splice remove_lines(const ParsedText& parsed, const Site& site) {
  // One splice over all of them: what lies between is kept.
  const std::vector<Lines> gone = lines_of(parsed, site);
  const std::size_t first = gone.front().first;
  std::size_t last = first;
  for (const Lines& one : gone) last = std::max(last, one.last);
  std::string kept;
  for (std::size_t n = first; n <= last; ++n) {
    const bool stays = std::ranges::none_of(
        gone, [&](const Lines& one) { return n >= one.first && n <= one.last; });
    if (stays) kept += parsed.text.substr(parsed.starts[n], parsed.line_end(n) - parsed.starts[n]);
  }
  // Not two empty lines where there was one on each side.
  std::size_t at = parsed.starts[first], end = parsed.line_end(last);
  const bool blank_above = first == 0 || parsed.blank(first - 1);
  const bool more = last + 1 < parsed.starts.size();
  if (kept.empty() && blank_above && more && parsed.blank(last + 1))
    end = parsed.line_end(last + 1);
  if (kept.empty() && !more) {
    for (std::size_t n = first; n > 0 && parsed.blank(n - 1); --n) at = parsed.starts[n - 1];
  }
  return {at, end - at, kept};
}

Splice remove_part(const ParsedText& parsed, const TextLayout::Value& from, std::size_t part) {
  return from.kind == TextLayout::Value::Kind::list ? remove_item(parsed, from, part)
                                                    : remove_pair(parsed, from, part);
}

Splice insert_item(const ParsedText& parsed, const TextLayout::Value& list, std::size_t before,
                   const std::string& item) {
  const std::string& text = parsed.text;
  const auto& items = list.items;
  const std::size_t close = list.at.end - 1;
  if (items.empty()) {
    const bool remark = has_remark_or_line(text, list.at.begin, close);
    if (remark) return {close, 0, item};
    return {list.at.begin, list.at.end - list.at.begin, "[" + item + "]"};
  }
  const auto begins_line = [&](std::size_t byte) {
    return past_blanks(text, parsed.starts[parsed.line_of(byte)], " \t", byte) == byte;
  };
  if (before == 0) {
    const std::size_t at = items.front().at.begin;
    if (!begins_line(at)) return {at, 0, item + ", "};
    const std::size_t line = parsed.line_of(at);
    return {at, 0, item + "," + parsed.newline(line) + std::string(parsed.indent(line))};
  }
  const TextLayout::Value& near = items[before - 1];
  const bool last = before == items.size();
  const std::size_t end = near.at.end, next = last ? close : items[before].at.begin;
  const auto comma = comma_behind(text, end, next);
  const std::size_t line = parsed.line_of(end - 1), line_end = parsed.line_end(line);
  if (text.find('\n', end) >= next) {
    if (!comma) return {end, 0, ", " + item};
    return {*comma + 1, 0, " " + item + ","};
  }
  if (comma && *comma >= line_end) return {end, 0, ", " + item};  // commas begin the lines
  // A line of its own; the remark behind the one before stays there.
  std::string indent(parsed.indent(parsed.line_of(near.at.begin)));
  if (!begins_line(near.at.begin)) {
    if (!last && begins_line(next)) {
      indent = parsed.indent(parsed.line_of(next));
    } else {
      indent += "  ";
    }
  }
  const std::string rest =
      text.substr(comma ? *comma + 1 : end, line_end - (comma ? *comma + 1 : end));
  const std::string to_comma = comma ? text.substr(end, *comma - end) : "";
  return {end, line_end - end,
          to_comma + "," + rest + indent + item + (comma ? "," : "") + parsed.newline(line)};
}
}  // namespace furnish
