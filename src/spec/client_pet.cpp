#include "spec/client_pet.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.h"
#include "spec/client_texts.h"
#include "spec/client_words.h"
#include "spec/language.h"
#include "spec/pet_format.h"
#include "spec/toml_text.h"
#include "spec/values.h"

namespace furnish {
namespace {
using toml_text::quoted;

std::string joined_to(std::string before, std::string_view text, std::string_view between) {
  if (!before.empty()) before += between;
  return before += text;
}

class Maker {
 public:
  Maker(const ClientLine& line, DiagnosticSink& said) : line_(line), said_(said) {}

  /// A pet of the name that a value has, or its part `index` of so many.
  ClientPet pet(const ClientValue& name, int number, std::size_t index, std::size_t of) {
    ClientPet out;
    out.span = name.span;
    pet_ = &out;
    of_ = of;
    const auto names = of == 1 ? std::vector{on_one_line(name.text)} : named_parts(name.text);
    if (const auto text = words({names.at(index), name.span}, "the name")) {
      out.name = *text;
      add(keys::identity::name, quoted(*text));
    }
    for (const ClientValue& value : line_.values) {
      const ClientFact fact = value.column->fact;
      if (fact == ClientFact::name) continue;
      if (of_the_pet(fact)) {
        if (value.column->pet == number) about_the_pet(value, index);
      } else {
        about_all(value);
      }
    }
    finish();
    return out;
  }

 private:
  struct Text {
    std::string text;
    SourceSpan span;
  };

  static bool of_the_pet(ClientFact fact) {
    return fact >= ClientFact::name && fact <= ClientFact::weight;
  }

  void add(const KeyInfo& key, std::string value) { pet_->facts[&key] = std::move(value); }

  std::optional<std::string> words(const Text& from, std::string_view what) {
    return as_text({from.text, from.span}, what, said_);
  }

  void remark(const ClientValue& value) {
    const std::string_view header = value.column->header;
    pet_->remarks += fmt::format("# {}{}{}\n", visible(on_one_line(header)),
                                 header.empty() ? "" : ": ", visible(on_one_line(value.text)));
  }

  /// What is not said by one of few words stays where a person finds it.
  void unknown(const ClientValue& value, std::string_view what, std::string hint) {
    remark(value);
    said_
        .warning("kept-as-comment", value.span,
                 fmt::format("{} \"{}\" is none that is known, and is kept as a comment", what,
                             on_one_line(value.text)))
        .hint = std::move(hint);
  }

  static bool may_be_of_all(ClientFact fact) {
    return fact == ClientFact::breed || fact == ClientFact::coat || fact == ClientFact::born;
  }

  /// True if it has one comma, between two digits.
  static bool one_number(std::string_view text) {
    const auto digit = [&](std::size_t i) {
      return i < text.size() && text[i] >= '0' && text[i] <= '9';
    };
    const std::size_t comma = text.find(',');
    return comma != std::string_view::npos && comma > 0 && digit(comma - 1) && digit(comma + 1) &&
           text.find(',', comma + 1) == std::string_view::npos &&
           text.find_first_of("&/;+\n") == std::string_view::npos;
  }

  /// For each pet one; the slashes of a date part nothing.
  std::vector<std::string> parts_of_value(const ClientValue& value) const {
    const std::string whole = on_one_line(value.text);
    const bool day = value.column->fact == ClientFact::born &&
                     loose_date(whole, value.order, line_.today).has_value();
    // "12,5" is one weight with a decimal comma, and not two.
    const bool decimal = value.column->fact == ClientFact::weight && one_number(whole);
    return day || decimal ? std::vector{whole} : named_parts(value.text);
  }

  void about_the_pet(const ClientValue& value, std::size_t index) {
    Text text{on_one_line(value.text), value.span};
    const std::vector<std::string> parts = parts_of_value(value);
    // Littermates, or two of one kind; but no two weigh what one of them does.
    const bool for_all = parts.size() == 1 && may_be_of_all(value.column->fact);
    if (of_ > 1 && !for_all) {
      if (parts.size() != of_) {
        said_
            .error("whose", value.span,
                   fmt::format("this line has {} pets, and of this {}: whose is it?", of_,
                               parts.size()))
            .hint = "give each pet a line of its own; if it is one name, say --whole-names";
        return;
      }
      text.text = parts[index];
    }
    const ClientFact fact = value.column->fact;
    const std::string_view what = info(fact).meaning;
    switch (fact) {
      case ClientFact::breed:
        return plain_words(keys::identity::breed, text, what);
      case ClientFact::colour:
        return plain_words(keys::identity::colour, text, what);
      case ClientFact::sex:
        return plain_words(keys::identity::sex, text, what);
      case ClientFact::coat:
        if (const auto coat = parse_coat(lower_ascii(text.text))) {
          return add(keys::identity::coat, quoted(key(*coat)));
        }
        return unknown(value, "the coat", fmt::format("one of {}", fmt::join(coat_words(), ", ")));
      case ClientFact::born:
        return date(keys::identity::born, value, text, what);
      default:
        return weight(value, text);
    }
  }

  void plain_words(const KeyInfo& key, const Text& text, std::string_view what) {
    if (const auto found = words(text, what)) add(key, quoted(*found));
  }

  void date(const KeyInfo& key, const ClientValue& value, const Text& text, std::string_view what) {
    const auto found = loose_date(text.text, value.order, line_.today);
    if (found && bounds::day.holds(*found)) return add(key, to_iso(*found));
    auto& fault = said_.error(
        "no-date", value.span,
        fmt::format("{}: \"{}\" is no day that has been{}", what, text.text,
                    value.order == DateOrder::month_first ? ", month first as the others"
                    : value.order == DateOrder::day_first ? ", day first as the others"
                                                          : ""));
    const bool number = digits_of(text.text) == text.text && text.text.size() == 5;
    fault.hint = number ? "it may be a spreadsheet's number of a day: show the column as dates "
                          "there, and export it again"
                        : "write it as 2026-11-24, or leave the column out: --columns comment=N";
  }

  void weight(const ClientValue& value, const Text& text) {
    const std::string& own = value.column->unit;
    const std::string written =
        weight_text(text.text, own.empty() ? line_.weight_unit : std::string_view(own));
    if (as_quantity({written, text.span}, info(ClientFact::weight).meaning, bounds::weight,
                    said_)) {
      add(keys::identity::weight, quoted(written));
    }
  }

  void about_all(const ClientValue& value) {
    if (value.open) return remark(value);
    const Text text{on_one_line(value.text), value.span};
    const std::string_view what = info(value.column->fact).meaning;
    switch (value.column->fact) {
      case ClientFact::owner:
        return keep(owner_, text, what, " ");
      case ClientFact::first_name:
        return keep(first_, text, what, " ");
      case ClientFact::last_name:
        return keep(last_, text, what, " ");
      case ClientFact::family_name:
        return keep(family_, text, what, " ");
      case ClientFact::phone:
        return keep(phone_, text, what, ", ");
      case ClientFact::email:
        return keep(email_, text, what, ", ");
      case ClientFact::vet:
        return keep(vet_, text, what, ", ");
      case ClientFact::vet_phone:
        return keep(vet_phone_, text, what, ", ");
      case ClientFact::address:
        return lines(address_, value, {"\r\n", "\n"}, what);
      case ClientFact::collects:
        return lines(collects_, value, {"\n", ";"}, what);
      case ClientFact::language:
        return language(value);
      case ClientFact::alert:
        return alert("warning", value, {});
      case ClientFact::note:
        return alert("notice", value, {});
      case ClientFact::allergies:
        return alert("warning", value, listed_parts(value.text));
      case ClientFact::health:
        return health(text);
      case ClientFact::every:
        if (as_quantity({text.text, text.span}, what, bounds::visit_every, said_)) {
          add(keys::pet_trim::visit_every, quoted(text.text));
        }
        return;
      case ClientFact::rabies:
        return date(keys::vaccination::one, value, text, what);
      case ClientFact::comment:
        return remark(value);
      default:
        return;
    }
  }

  void keep(std::string& into, const Text& text, std::string_view what, std::string_view between) {
    if (const auto found = words(text, what)) into = joined_to(into, *found, between);
  }

  void lines(std::vector<std::string>& into, const ClientValue& value,
             std::array<std::string_view, 2> at, std::string_view what) {
    for (const std::string& part : parts_of(value.text, at)) {
      if (const auto found = words({part, value.span}, what)) into.push_back(*found);
    }
  }

  void language(const ClientValue& value) {
    if (const std::string_view tag = language_named(value.text); !tag.empty()) {
      return add(keys::owner::language, quoted(tag));
    }
    if (plain_language(value.text)) {
      return add(keys::owner::language, quoted(value.text));
    }
    unknown(value, "the language", "a tag such as en, es or pt-BR");
  }

  void alert(std::string_view level, const ClientValue& value,
             const std::vector<std::string>& allergens) {
    // "yes", or "oats", says nothing without what it is about.
    constexpr std::size_t alone = 6;
    std::string text = on_one_line(value.text);
    const std::string& header = value.column->header;
    if (!header.empty() && (!allergens.empty() || code_points(text) < alone)) {
      text = fmt::format("{}: {}", on_one_line(header), text);
    }
    for (const std::string& piece : in_pieces(text)) {
      const auto found = words({piece, value.span}, info(value.column->fact).meaning);
      if (!found) continue;
      toml_text::Section out("[[alert]]");
      out.add("level", quoted(level));
      out.add("text", quoted(*found));
      if (allergens.size() <= bounds::list_length) out.words("allergens", allergens);
      alerts_.push_back(out.text());
    }
  }

  void health(const Text& text) {
    std::vector<std::string> conditions;
    for (const std::string& part : listed_parts(text.text)) {
      if (!parse_condition(lower_ascii(part))) {
        return keep(health_, text, info(ClientFact::health).meaning, "; ");
      }
      conditions.push_back(lower_ascii(part));
    }
    add(keys::health::conditions, toml_text::list(conditions));
  }

  void finish() {
    std::string name = owner_;
    for (const std::string* const part : {&family_, &first_, &last_}) {
      if (!part->empty()) name = joined_to(name, *part, " ");
    }
    const auto known = [&](const KeyInfo& key, const std::string& text) {
      if (!text.empty()) add(key, quoted(text));
    };
    known(keys::owner::name, name);
    known(keys::owner::phone, phone_);
    known(keys::owner::email, email_);
    known(keys::health::notes, health_);
    if (!address_.empty()) add(keys::owner::address, toml_text::list(address_));
    if (!collects_.empty()) add(keys::owner::collects, toml_text::list(collects_));
    std::vector<std::pair<std::string, std::string>> vet;
    if (!vet_.empty()) vet.emplace_back("name", quoted(vet_));
    if (!vet_phone_.empty()) vet.emplace_back("phone", quoted(vet_phone_));
    if (!vet.empty()) add(keys::owner::vet, toml_text::table(vet));
    if (!alerts_.empty()) add(keys::pet_file::alert, toml_text::joined_sections(alerts_));
    pet_->owner = name;
    pet_->phone = phone_;
    pet_->mark = hash_of(fmt::format("{}\n{}\n{}\n{}", plain_letters(pet_->name),
                                     plain_letters(name), digits_of(phone_), lower_ascii(email_)));
  }

  const ClientLine& line_;
  DiagnosticSink& said_;
  ClientPet* pet_ = nullptr;
  std::size_t of_ = 1;
  std::string owner_, first_, last_, family_, phone_, email_, vet_, vet_phone_, health_;
  std::vector<std::string> address_, collects_, alerts_;
};
}  // namespace

std::vector<ClientPet> client_pets(const ClientLine& line, bool whole_names, DiagnosticSink& said) {
  std::vector<ClientPet> out;
  for (const ClientValue& value : line.values) {
    if (value.column->fact != ClientFact::name) continue;
    const std::vector<std::string> names =
        whole_names ? std::vector{on_one_line(value.text)} : named_parts(value.text);
    if (names.size() > 1) {
      said.warning("several-pets", value.span,
                   fmt::format("taken for {} pets: {}", names.size(), joined(names, ", ")))
          .hint = "if it is one name, say --whole-names";
    }
    for (std::size_t i = 0; i < names.size(); ++i) {
      // Of several pets only the first is told what is wrong with the values they share.
      DiagnosticSink again;
      out.push_back(Maker(line, out.empty() || names.size() == 1 ? said : again)
                        .pet(value, value.column->pet, i, names.size()));
      if (again.has_errors() && !said.has_errors()) said.take(again);
    }
  }
  return out;
}
}  // namespace furnish
