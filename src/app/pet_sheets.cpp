#include <fmt/format.h>

#include "app/photos.h"
#include "app/sheet_maker.h"
#include "model/for_everyone.h"
#include "sheet/card.h"
#include "sheet/style_sheet.h"
#include "spec/writer.h"

// The sheets that are made of a pet as it stands on the day: its card, and its style sheet.

namespace furnish {
namespace {
std::optional<Made> made(std::optional<Sheet> sheet, const Case& one, const SheetOrder& order) {
  if (!sheet) return std::nullopt;
  const bool whole = order.options.spec_for == Audience::staff;
  return Made{*std::move(sheet),
              fmt::format("{}-{}", one.pet.key, order.kind.name),
              {pet_file(whole ? one.pet : for_everyone(one.pet))}};
}

std::optional<Made> card(const Case& one, const SheetOrder& order) {
  SheetInput input = sheet_input(one, order.kind, order.paper);
  input.arrangement = order.arrangement;
  input.portrait = PhotoFolder(one.folder->root(), one.salon(), order.context).portrait(one.pet);
  return made(make_card({input, order.voice}, order.context.sink), one, order);
}

std::optional<Made> style(const Case& one, const SheetOrder& order) {
  SheetInput input = sheet_input(one, order.kind, order.paper);
  input.arrangement = order.arrangement;
  if (order.options.sources) {
    input.source = [&](const SourceSpan& span) {
      return fmt::format("{}:{}", order.context.sources.at(span.file).path(), span.begin.line);
    };
  }
  input.trim_code = trim_toml(for_everyone(one.pet));
  input.portrait = PhotoFolder(one.folder->root(), one.salon(), order.context).portrait(one.pet);
  return made(make_style_sheet({input, order.voice}, order.context.sink), one, order);
}
}  // namespace

const SheetMaker sheets::card{kinds::card, furnish::card};
const SheetMaker sheets::style{kinds::style, furnish::style};

Attachment pet_file(const Pet& pet) {
  return {pet.key + ".toml", pet_toml(pet), "application/toml",
          "The pet's file, from which this sheet was made"};
}

SheetInput sheet_input(const Case& one, const SheetKind& kind, const Paper& paper) {
  SheetInput input{kind, one.salon(), one.pet, one.plan, one.booking(), one.today, paper};
  input.all_visits = one.all_visits;
  input.told = one.visits;
  for (const Visit& visit : one.visits) {
    if (visit.date.value <= one.today && visit.work == Work::done) input.visits.push_back(&visit);
  }
  if (!input.visits.empty()) input.latest = input.visits.back();
  return input;
}
}  // namespace furnish
