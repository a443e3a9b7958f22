#include "spec/toml_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <optional>

#include "base/quantity.h"
#include "base/text.h"
#include "spec/word_tables.h"

namespace furnish::toml_text {
namespace {
bool bare(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '_';
}

/// The fewest decimals with which `reads_back` holds; `most` if none does.
template <typename ReadsBack>
std::string decimal(double value, int most, ReadsBack reads_back) {
  for (int decimals = 0; decimals < most; ++decimals) {
    std::string text = fmt::format("{:.{}f}", value, decimals);
    if (reads_back(text)) return text;
  }
  return fmt::format("{:.{}f}", value, most);
}

/// Whole thousandths with the point where it belongs.
std::string millimetres(Length length) {
  const std::int64_t whole = length.um() / 1000, part = length.um() % 1000;
  if (part == 0) return fmt::format("{}", whole);
  std::string text = fmt::format("{}.{:03}", whole, part);
  while (text.ends_with('0')) text.pop_back();
  return text;
}

template <typename T>
bool reads_as(Parsed<T> (*parse)(std::string_view), const std::string& text, const T& value) {
  const Parsed<T> parsed = parse(text);
  return parsed && *parsed.value == value;
}
/// "1/2", "1 1/4": sixteenths of an inch, if the reader makes the same length of them; where the
/// micrometre is cut in half it may not.
std::optional<std::string> inches(Length length) {
  constexpr std::int64_t steps = 16;
  const std::int64_t n = (length.um() * steps + 12700) / 25400, whole = n / steps, part = n % steps;
  std::string text = whole == 0 && part != 0 ? "" : fmt::format("{}", whole);
  if (part != 0) {
    const std::int64_t divisor = std::gcd(part, steps);
    text += fmt::format("{}{}/{}", whole == 0 ? "" : " ", part / divisor, steps / divisor);
  }
  if (n == 0 || !reads_as<Length>(parse_length, text + " in", length)) return std::nullopt;
  return text;
}
}  // namespace

std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (c == '\n') {
      out += "\\n";
    } else if (c == '\t') {
      out += "\\t";
    } else if (code < 0x20 || code == 0x7F) {
      out += fmt::format("\\u{:04X}", code);
    } else {
      out += c;
    }
  }
  return out + '"';
}

std::string key(std::string_view name) {
  return !name.empty() && std::ranges::all_of(name, bare) ? std::string(name) : quoted(name);
}

std::string list(const std::vector<std::string>& words) {
  std::vector<std::string> items;
  for (const std::string& word : words) items.push_back(quoted(word));
  return "[" + joined(items, ", ") + "]";
}

std::string table(const std::vector<std::pair<std::string, std::string>>& rows, Form form) {
  const bool plain = form == Form::plain;
  std::vector<std::string> items;
  for (const auto& [name, value] : rows) items.push_back(name + (plain ? " = " : "=") + value);
  return plain ? "{ " + joined(items, ", ") + " }" : "{" + joined(items, ",") + "}";
}

std::string quantity(Length length, Form form) {
  const std::string mm = millimetres(length);
  const auto in = inches(length);
  if (form == Form::short_form) {
    const bool shorter = in && in->size() < mm.size();
    return quoted(shorter ? *in + "in" : mm + "mm");
  }
  return quoted(in && length.um() % 1000 != 0 ? *in + " in" : mm + " mm");
}

std::string quantity(Mass mass) {
  const auto reads_back = [&](const std::string& text) {
    return reads_as<Mass>(parse_mass, text, mass);
  };
  for (int decimals = 0; decimals <= 3; ++decimals) {
    if (std::string kg = fmt::format("{:.{}f} kg", mass.in_kg(), decimals); reads_back(kg)) {
      return quoted(kg);
    }
  }
  const auto ounces = static_cast<std::int64_t>(mass.in_pounds() * 16 + 0.5);
  std::string pounds = fmt::format("{} lb", ounces / 16);
  if (ounces % 16 != 0) pounds += fmt::format(" {} oz", ounces % 16);
  if (reads_back(pounds)) return quoted(pounds);
  if (std::string tenths = fmt::format("{:.1f} lb", mass.in_pounds()); reads_back(tenths)) {
    return quoted(tenths);
  }
  return quoted(
      decimal(mass.in_kg(), 9, [&](const std::string& kg) { return reads_back(kg + " kg"); }) +
      " kg");
}

std::string quantity(Volume volume) {
  for (int decimals = 0; decimals <= 6; ++decimals) {
    std::string ml = fmt::format("{:.{}f} ml", volume.in_ml(), decimals);
    if (reads_as<Volume>(parse_volume, ml, volume)) return quoted(ml);
    std::string oz = fmt::format("{:.{}f} fl oz", volume.in_us_fl_oz(), decimals);
    if (reads_as<Volume>(parse_volume, oz, volume)) return quoted(oz);
  }
  return quoted(fmt::format("{:.6f} ml", volume.in_ml()));
}

std::string quantity(std::chrono::seconds time) {
  const auto s = time.count();
  return quoted(s % 60 == 0 ? fmt::format("{} min", s / 60) : fmt::format("{} s", s));
}

std::string quantity(const CalendarSpan& span) {
  const auto counted = [](auto count, std::string_view unit) {
    return fmt::format("{} {}{}", count, unit, count == 1 ? "" : "s");
  };
  const auto n = span.days.count();
  const std::string days = n != 0 && n % 7 == 0 ? counted(n / 7, "week") : counted(n, "day");
  if (span.months == 0) return quoted(days);
  const std::string months =
      span.months % 12 == 0 ? counted(span.months / 12, "year") : counted(span.months, "month");
  return quoted(n == 0 ? months : months + " " + days);
}

std::string quantity(const Dilution& dilution) {
  const auto reads_back = [&](const std::string& text) {
    return reads_as<Dilution>(parse_dilution, text, dilution);
  };
  if (reads_back("neat")) return quoted("neat");
  for (int decimals = 0; decimals <= 9; ++decimals) {
    const std::string water = fmt::format("{:.{}f}:1", dilution.total - 1, decimals);
    if (reads_back(water)) return quoted(water);
    const std::string in_all = fmt::format("1 in {:.{}f}", dilution.total, decimals);
    if (reads_back(in_all)) return quoted(in_all);
  }
  return quoted(fmt::format("1 in {}", dilution.total));
}

std::string blade(const Blade& blade, Form form) {
  std::string name(blade.name);
  const bool plain = form == Form::plain;
  for (const auto& [sign, spelt] :
       {std::pair("½", plain ? " 1/2" : ".5"), std::pair("¾", plain ? " 3/4" : ".75")}) {
    if (const std::size_t at = name.find(sign); at != std::string::npos) {
      name.replace(at, std::string_view(sign).size(), spelt);
    }
  }
  return quoted(name);
}

std::string place(Place place, Form form) {
  const RegionInfo& row = info(place.region);
  std::string one(row.paired ? row.one : row.key);
  std::ranges::replace(one, ' ', '-');
  if (place.side != Side::both) return std::string(to_text(place.side)) + "-" + one;
  return form == Form::short_form && one.size() < row.key.size() ? one : std::string(row.key);
}

std::string free_text(const FreeText& text, Audience usual, Form form) {
  if (text.language.empty() && text.others.empty() && text.audience == usual) {
    return quoted(text.value);
  }
  std::vector<std::pair<std::string, std::string>> fields{
      {text.language.empty() ? "text" : key(text.language), quoted(text.value)}};
  for (const FreeText::In& one : text.others)
    fields.emplace_back(key(one.language), quoted(one.text));
  if (text.audience != usual) {
    fields.emplace_back("for", quoted(words::word(words::audience, text.audience)));
  }
  return table(fields, form);
}

std::string Section::text() const {
  if (rows_.empty()) return {};
  std::size_t widest = 0;
  for (const auto& [name, value] : rows_) widest = std::max(widest, code_points(name));
  std::string out = header_.empty() ? "" : header_ + "\n";
  for (const auto& [name, value] : rows_) {
    out += name + std::string(widest - code_points(name), ' ') + " = " + value + "\n";
  }
  return out;
}

std::string joined_sections(const std::vector<std::string>& sections) {
  std::string out;
  for (const std::string& section : sections) {
    if (section.empty()) continue;
    if (!out.empty()) out += "\n";
    out += section;
  }
  return out;
}
}  // namespace furnish::toml_text
