#include "app/new_files.h"

#include <fmt/format.h>

#include <filesystem>
#include <system_error>

#include "app/import.h"
#include "base/text.h"
#include "output/make_folder.h"
#include "output/write.h"
#include "spec/bounds.h"
#include "spec/day_format.h"
#include "spec/file_template.h"
#include "spec/pet_format.h"
#include "spec/salon_format.h"
#include "spec/schema.h"
#include "spec/style_format.h"
#include "spec/toml_text.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

/// Writes what a file of a kind begins with. Empty iff an error was reported.
std::optional<std::string> write(const std::string& salon, const std::string& folder,
                                 const std::string& kind, const std::string& name,
                                 const KnownFacts& facts, Workshop& shop) {
  const std::string into = folder.empty() ? salon : path_in(salon, folder);
  if (!make_folder(into, shop.sink(), shop.disk())) return std::nullopt;
  const std::string schema = schema_from(salon, kind, folder.empty() ? 0 : 1, shop);
  if (schema.empty()) return std::nullopt;
  const std::string path = path_in(into, name);
  const std::string text = file_template(*find_file_kind(kind), facts, schema);
  if (!write_new(path, text, shop.sink(), shop.disk())) return std::nullopt;
  return path;
}

class NewFiles {
 public:
  NewFiles(const Options& options, Workshop& shop, Console& console)
      : options_(options), shop_(shop), console_(console) {}

  bool run() {
    if (options_.kind == "salon") return salon(options_.pets.front());
    if (!in_a_salon(options_.root(), shop_)) return false;
    if (!options_.from.empty()) return new_pets_from_list(options_, shop_, console_);
    if (options_.kind == "day") return day();
    bool all = true;
    for (const std::string& name : options_.pets) all = named(name) && all;
    return all;
  }

 private:
  bool salon(const std::string& folder) {
    // "." and ".." are the folder that they lead to.
    const std::string name =
        (fs::absolute(folder) / "").lexically_normal().parent_path().filename();
    if (!make_folder(path_in(folder, "pets"), shop_.sink(), shop_.disk())) return false;
    for (const FileKind& kind : file_kinds()) {
      if (kind.name != "products") schema_from(folder, kind.name, 0, shop_);
    }
    return told(write(folder, "", "salon", "salon.toml",
                      {{&keys::salon::name, toml_text::quoted(capitalised(name))}}, shop_));
  }

  bool named(const std::string& name) {
    return told(new_file(options_.root(), options_.kind, name, shop_));
  }

  bool day() {
    return named(options_.pets.empty() ? to_iso(shop_.today()) : options_.pets.front());
  }

  bool told(const std::optional<std::string>& path) {
    console_.show_reports();
    if (path) console_.say(*path);
    return path.has_value();
  }

  const Options& options_;
  Workshop& shop_;
  Console& console_;
};
}  // namespace

bool in_a_salon(const std::string& root, Workshop& shop) {
  const Files& files = shop.context().files;
  std::error_code ignored;
  if (files.exists(path_in(root, "salon.toml")) ||
      fs::is_directory(path_in(root, "pets"), ignored)) {
    return true;
  }
  shop.sink().error("no-salon", {}, fmt::format("{} is not a salon's folder", root)).hint =
      "name one, or start one: furnish new salon FOLDER";
  return false;
}

std::string without_ending(std::string name) {
  constexpr std::string_view ending = ".toml";
  while (name.ends_with(ending)) name.resize(name.size() - ending.size());
  return name;
}

std::string file_name(std::string_view name) {
  constexpr std::size_t longest = 40;  // code points, so that no system's bound is met
  std::string out;
  for (const char c : without_ending(lower_ascii(trimmed(name)))) {
    if (c == '/' || c == '\\' || static_cast<unsigned char>(c) < 0x20) continue;
    if (c == '.' && out.empty()) continue;
    out += c == ' ' ? '-' : c;
  }
  out.resize(byte_of_code_point(out, longest));
  // What steers a terminal or a page is no part of a name.
  return blank(out) || visible(out) != out ? std::string() : out;
}

std::string schema_from(const std::string& root, std::string_view kind, std::size_t below,
                        Workshop& shop) {
  const std::string name = fmt::format("{}.json", kind), folder = path_in(root, "schemas");
  const std::string path = path_in(folder, name);
  std::error_code ignored;
  if (!fs::exists(fs::symlink_status(path, ignored))) {
    if (!make_folder(folder, shop.sink(), shop.disk())) return {};
    DiagnosticSink said;
    const bool written = write_new(path, schema(*find_file_kind(kind)), said, shop.disk());
    // Another may have put it there meanwhile.
    if (!written && said.all().back().code != "exists") {
      shop.sink().take(said);
      return {};
    }
  }
  std::string out = below == 0 ? "./" : "";
  for (std::size_t i = 0; i < below; ++i) out += "../";
  return out + "schemas/" + name;
}

std::optional<std::string> new_file(const std::string& root, const std::string& kind,
                                    const std::string& name, Workshop& shop) {
  if (kind == "day") {
    const auto date = parse_date(name);
    if (!date || !bounds::day.holds(*date)) {
      shop.sink().error("no-day", {}, fmt::format("\"{}\" is no day", name)).hint =
          date ? fmt::format("days are from {} to {}", to_iso(bounds::day.low),
                             to_iso(bounds::day.high))
               : "write it as 2026-11-24";
      return std::nullopt;
    }
    return write(root, "days", kind, name + ".toml", {{&keys::day_file::date, name}}, shop);
  }
  const std::string file = file_name(name);
  if (file.empty() || visible(name) != name) {
    shop.sink().error("no-name", {}, fmt::format("\"{}\" gives no name of a file", name));
    return std::nullopt;
  }
  const bool pet = kind == "pet";
  const KeyInfo* const key = pet ? &keys::identity::name : &keys::style::name;
  return write(root, pet ? "pets" : "styles", kind, file + ".toml",
               {{key, toml_text::quoted(trimmed(without_ending(std::string(trimmed(name)))))}},
               shop);
}

Exit new_files(const Options& options, Workshop& shop, Console& console) {
  const bool done = NewFiles(options, shop, console).run();
  console.show_reports();
  return done ? Exit::ok : Exit::faults;
}
}  // namespace furnish
