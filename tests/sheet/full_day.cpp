#include "sheet/full_day.h"

#include <fmt/format.h>

#include <array>

#include "base/text.h"

namespace furnish::test {
namespace {
constexpr std::array names{
    "Marlow",  "Juniper", "Pip",     "Otter", "Agnes",  "Clementine", "Figaro", "Komugi",
    "Moth",    "Sol",     "Bjarne",  "Dot",   "Gao",    "Pickle",     "Qamar",  "Tuesday",
    "Biscuit", "Clover",  "Duster",  "Ember", "Fennel", "Ginger",     "Hazel",  "Iris",
    "Jasper",  "Kestrel", "Lark",    "Maple", "Nettle", "Olive",      "Pepper", "Quill",
    "Rowan",   "Sorrel",  "Thistle", "Umber", "Violet", "Willow",     "Yarrow", "Zephyr"};
constexpr std::array groomer_names{"Ines", "Bo", "Noor", "Teo", "Ada", "Sam", "Kit", "Lou"};
constexpr std::array alerts{"Snaps when a rear foot is held.", "Bites if lifted by the beard.",
                            "Fears the dryer.", "Sore left hip.", "Lavender gives her hives."};
constexpr std::array levels{"warning", "caution", "warning", "danger"};
struct Kind {
  const char *breed, *colour, *coat, *style;
};
constexpr std::array<Kind, 5> kinds{{{"spitz cross", "orange sable", "double", "natural-tidy"},
                                     {"water-dog cross", "brown", "curly", "curly-mid"},
                                     {"toy terrier", "blue and tan", "silky", "silky-short"},
                                     {"rough terrier", "grizzle", "wire", "wire-jacket"},
                                     {"lap dog cross", "white", "drop", "drop-short"}}};
constexpr std::array products{"oat", "mild", "bright", "wire"};

template <typename List>
const auto& of(const List& list, int i) {
  return list[static_cast<std::size_t>(i) % std::size(list)];
}

std::string name_of(int i) {
  const auto count = static_cast<int>(names.size());
  return of(names, i) + (i < count ? std::string() : std::to_string(i / count + 1));
}

std::string pet(int i) {
  const Kind& kind = of(kinds, i);
  std::string out = fmt::format(
      "[pet]\nname = \"{}\"\nbreed = \"{}\"\ncolour = \"{}\"\ncoat = \"{}\"\nsex = \"female\"\n"
      "born = 2020-03-0{}\nweight = \"{} kg\"\n[owner]\nname = \"R. {}\"\nphone = \"555 "
      "01{:02}\"\n",
      name_of(i), kind.breed, kind.colour, kind.coat, 1 + i % 9, 3 + i % 20, of(names, i + 3),
      i % 100);
  if (i % 3 != 2) {
    out += fmt::format("[[alert]]\nlevel = \"{}\"\ntext = \"{}\"\n", of(levels, i), of(alerts, i));
  }
  out += fmt::format("[vaccinations]\nrabies = 2025-05-02\ndistemper = 202{}-05-02\n",
                     i % 6 == 0 ? 2 : 5);
  out += fmt::format("[bath]\nshampoo = \"{}\"\nconditioner = \"nourish\"\n", of(products, i));
  out += fmt::format("[trim]\nstyle = \"{}\"\nvisit_every = \"8 weeks\"\n", kind.style);
  if (i % 2 == 1) out += "tail = { shears = \"straight\", leave = \"60 mm\" }\n";
  return out;
}

std::string visit(int i) {
  std::string out = fmt::format("date = 2026-09-29\nminutes = {}\n", 50 + 5 * (i % 13));
  if (i % 10 == 1) out += "told = \"see the vet\"\n";
  if (i % 10 < 2) {
    out +=
        "[[finding]]\nregion = \"belly\"\nside = \"left\"\nwhat = \"lump, pea-sized\"\n"
        "advised = \"vet this week\"\nfor = \"everyone\"\n";
  }
  return out;
}

constexpr const char* salon = R"([salon]
name = "Full House"
language = "en-GB"
units = "metric"
[kit]
bottle = "500 ml"
[products.oat]
name = "oat shampoo"
kind = "shampoo"
dilution = "10:1"
[products.mild]
name = "mild shampoo"
kind = "shampoo"
dilution = "1 in 16"
[products.bright]
name = "brightening shampoo"
kind = "shampoo"
dilution = "12:1"
[products.wire]
name = "texture shampoo"
kind = "shampoo"
dilution = "10:1"
[products.nourish]
name = "soft conditioner"
kind = "conditioner"
dilution = "8:1"
[vaccinations]
rabies = { valid = "3 years", required = true }
distemper = { valid = "3 years", required = true }
)";
}  // namespace

std::map<std::string, std::string> full_day(int bookings, int groomers) {
  std::map<std::string, std::string> out{{"salon.toml", salon}};
  std::string day = "date = 2026-11-24\n";
  const int each = (bookings + groomers - 1) / groomers, apart = 10 * 60 / each;
  for (int i = 0; i < bookings; ++i) {
    const std::string key = lower_ascii(name_of(i));
    out["pets/" + key + ".toml"] = pet(i);
    out["visits/" + key + "/2026-09-29.toml"] = visit(i);
    const int at = 8 * 60 + i / groomers * apart, collect = at + 105;
    day += fmt::format(
        "[[booking]]\nat = {:02}:{:02}:00\ncollect = {:02}:{:02}:00\npet = \"{}\"\n"
        "groomer = \"{}\"\n",
        at / 60, at % 60, collect / 60, collect % 60, key, of(groomer_names, i % groomers));
    if (i % 5 == 0) day += "note = \"small room\"\n";
  }
  out["days/2026-11-24.toml"] = day;
  return out;
}
}  // namespace furnish::test
