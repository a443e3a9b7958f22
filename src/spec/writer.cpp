#include "spec/writer.h"

#include <algorithm>

#include "base/text.h"
#include "spec/product_writer.h"
#include "spec/short_trim.h"
#include "spec/toml_text.h"
#include "spec/trim_writer.h"
#include "spec/word_tables.h"

namespace furnish {
namespace {
using toml_text::quantity;
using toml_text::quoted;
using toml_text::Section;
using Rows = std::vector<std::pair<std::string, std::string>>;

std::string identity(const Pet& pet) {
  Section out("[pet]");
  out.add("name", quoted(pet.name.value));
  out.words("breed", pet.breed);
  if (pet.coat) out.add("coat", quoted(key(*pet.coat)));
  out.words("colour", pet.colour);
  out.words("sex", pet.sex);
  const auto about = [&](const char* key, const std::optional<Birth>& day) {
    if (!day) return;
    const std::string text = to_iso(*day);
    out.add(key, day->known == BirthKnown::month ? quoted(text) : text);
  };
  about("born", pet.born);
  if (pet.weight) out.add("weight", quantity(pet.weight->value));
  if (pet.weighed) out.add("weighed", to_iso(pet.weighed->value));
  out.words("photo", pet.photo);
  about("since", pet.since);
  return out.text();
}

std::string owner(const Owner& from) {
  Section out("[owner]");
  out.words("name", from.name);
  out.words("phone", from.phone);
  out.words("email", from.email);
  out.words("address", from.address);
  out.words("language", from.language);
  out.words("collects", from.collects);
  std::vector<std::string> vet;
  if (!from.vet.name.empty()) vet.push_back("name = " + quoted(from.vet.name));
  if (!from.vet.phone.empty()) vet.push_back("phone = " + quoted(from.vet.phone));
  if (!vet.empty()) out.add("vet", "{ " + joined(vet, ", ") + " }");
  return out.text();
}

/// Places as words; a run that is just what a group stands for is the group, so that a list that
/// was read never grows over the reader's bound.
std::vector<std::string> place_list(const std::vector<Located<Place>>& places) {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < places.size();) {
    const auto begins = [&](const GroupInfo& group) {
      const std::size_t n = group.members.size();
      if (places.size() - i < n) return false;
      for (std::size_t k = 0; k < n; ++k) {
        if (places[i + k].value != Place{group.members[k], Side::both}) return false;
      }
      return true;
    };
    const auto group = std::ranges::find_if(groups(), begins);
    if (group == groups().end()) {
      out.push_back(toml_text::place(places[i++].value));
    } else {
      out.emplace_back(group->key);
      i += group->members.size();
    }
  }
  return out;
}

std::string alert(const Alert& from) {
  Section out("[[alert]]");
  out.add("level", quoted(to_text(from.level)));
  out.own_words("text", from.text);
  out.own_words("do", from.action);
  out.words("avoid", place_list(from.avoid));
  std::vector<std::string> allergens;
  for (const Located<std::string>& one : from.allergens) allergens.push_back(one.value);
  out.words("allergens", allergens);
  if (from.audience != Audience::staff) {
    out.add("for", quoted(words::word(words::audience, from.audience)));
  }
  return out.text();
}

std::string handling(const Handling& from) {
  Section out("[handling]");
  out.words("hold", from.hold);
  out.words("lift", from.lift);
  out.words("dryer", from.dryer);
  out.words("stop", from.stop);
  if (from.rest_every) out.add("rest_every", quantity(std::chrono::seconds(*from.rest_every)));
  out.words("comes_with", from.comes_with);
  return out.text();
}

std::string health(const Pet& pet) {
  Section out("[health]");
  std::vector<std::string> conditions;
  for (const Located<Condition>& one : pet.conditions) conditions.emplace_back(to_text(one.value));
  out.words("conditions", conditions);
  out.words("notes", pet.health_notes);
  return out.text();
}

std::string build(const Build& from) {
  Section out("[build]");
  const auto add = [&](std::string_view name, const auto& table, const auto& value) {
    if (value) out.add(name, quoted(words::word(table, *value)));
  };
  add("nose", words::sizes, from.nose);
  add("legs", words::sizes, from.legs);
  add("body", words::sizes, from.body);
  add("ears", words::ears, from.ears);
  add("tail", words::tails, from.tail);
  add("bone", words::bones, from.bone);
  return out.text();
}

std::string vaccinations(const std::vector<Vaccination>& from) {
  Section out("[vaccinations]");
  for (const Vaccination& one : from) {
    const std::string on = to_iso(one.given.value);
    out.add(one.name, one.booster ? toml_text::table({{"on", on}, {"booster", "true"}}) : on);
  }
  return out.text();
}

std::string bath(const Bath& from) {
  Section out("[bath]");
  if (from.none) out.add("none", "true");
  if (from.before) out.words("before", from.before->value);
  if (from.shampoo) out.add("shampoo", product_value(*from.shampoo, ProductKind::shampoo));
  if (from.conditioner)
    out.add("conditioner", product_value(*from.conditioner, ProductKind::conditioner));
  std::string others;
  for (const ProductUse& other : from.others) {
    others += (others.empty() ? "" : ", ") + product_value(other, ProductKind::other);
  }
  if (!others.empty()) out.add("others", "[" + others + "]");
  if (from.dry) out.words("dry", from.dry->value);
  if (from.when) {
    out.words("when", from.when->value == BathWhen::first ? "first" : "after clipping");
  }
  return out.text();
}

std::string trim(const Pet& pet) {
  Section out("[trim]");
  if (pet.style) out.words("style", pet.style->key);
  if (pet.visit_every) out.add("visit_every", quantity(pet.visit_every->value));
  write_trim(pet.own_trim, out);
  return out.text();
}

std::string finish(const Finish& from) {
  Section out("[finish]");
  for (const FinishLine& line : resolve_finish({}, from)) out.own_words(key(line.part), line.words);
  return out.text();
}

std::string home(const HomeAdvice& from) {
  Section out("[home]");
  if (from.bath_every) out.add("bath_every", quantity(CalendarSpan(from.bath_every->value)));
  if (from.product) out.add("product", product_value(*from.product, ProductKind::shampoo));
  if (from.bottle) out.add("bottle", quantity(*from.bottle));
  std::vector<std::string> notes;
  for (const FreeText& one : from.notes) notes.push_back(toml_text::free_text(one));
  if (!notes.empty()) out.add("notes", "[" + joined(notes, ", ") + "]");
  return out.text();
}

std::string preferences(const Preferences& from) {
  Section out("[preferences]");
  out.words("likes", from.likes);
  out.words("dislikes", from.dislikes);
  Rows keep;
  for (const KeepUnder& one : from.keep_under) {
    keep.emplace_back(toml_text::place(one.place), quantity(one.length));
  }
  if (!keep.empty()) out.add("keep_under", toml_text::table(keep));
  return out.text();
}

std::string acceptance(const Acceptance& from) {
  Section out("[[accept]]");
  out.add("rule", quoted(rule(from.rule.value).key));
  out.words("reason", from.reason);
  out.add("signed", to_iso(from.signed_on));
  return out.text();
}
}  // namespace

std::string pet_toml(const Pet& pet) {
  std::vector<std::string> sections{identity(pet), owner(pet.owner)};
  for (const Alert& one : pet.alerts) sections.push_back(alert(one));
  for (std::string& section :
       std::vector{handling(pet.handling), health(pet), build(pet.build),
                   vaccinations(pet.vaccinations), bath(pet.bath), trim(pet),
                   finish(pet.own_finish), home(pet.home), preferences(pet.preferences)}) {
    sections.push_back(std::move(section));
  }
  for (const Acceptance& one : pet.accepted) sections.push_back(acceptance(one));
  return toml_text::joined_sections(sections);
}

std::string trim_toml(const Pet& pet) {
  std::string out = "[pet]\nname=" + quoted(pet.name.value) + "\n";
  if (pet.coat) out += "coat=" + quoted(key(*pet.coat)) + "\n";
  if (!pet.trim.empty()) out += "[trim]\n" + short_trim(pet.trim);
  if (!pet.finish.empty()) out += "[finish]\n";
  for (const FinishLine& line : pet.finish) {
    out += std::string(key(line.part)) + "=" +
           toml_text::free_text(line.words, Audience::everyone, toml_text::Form::short_form) + "\n";
  }
  return out;
}
}  // namespace furnish
