#include <string>

#include "fuzz/salon_files.h"
#include "fuzz/targets.h"
#include "spec/reader.h"
#include "spec/style_library.h"
#include "spec/visit_writer.h"

namespace furnish::fuzz {
void others(std::string_view bytes) {
  if (bytes.empty()) return;
  const char kind = bytes.front();
  std::string text(bytes.substr(1));
  if (kind == 's') {
    Reading reading({{"styles/fuzzed.toml", std::move(text)}});
    StyleLibrary styles(reading.context, "shipped", "styles");
    const bool good = styles.find("fuzzed", {}) != nullptr;
    hold(good != reading.sink.has_errors(), "a style, or a fault");
    reading.tell();
    return;
  }
  Reading reading;
  bool good = false;
  if (kind == 'd') {
    const auto day = read_day_text(reading.context, "days/2026-11-24.toml", std::move(text));
    good = day && day->unread.empty();
  } else if (kind == 'o') {
    const auto salon = read_salon_text(reading.context, "salon.toml", std::move(text));
    good = salon && salon->whole;
  } else {
    const auto visit = read_visit_text(reading.context, "visits/rex/2026-11-24.toml",
                                       std::move(text), nullptr, nullptr);
    good = visit.has_value();
    if (visit) {
      const std::string written = visit_toml(*visit);
      Reading again;
      const auto back =
          read_visit_text(again.context, "visits/rex/2026-11-24.toml", written, nullptr, nullptr);
      hold(back.has_value(), "what was written of a visit is read again");
      hold(visit_toml(*back) == written, "and means the same");
    }
  }
  hold(good != reading.sink.has_errors(), "a file, or a fault");
  reading.tell();
}
}  // namespace furnish::fuzz
