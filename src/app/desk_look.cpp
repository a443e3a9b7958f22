#include "app/desk_look.h"

#include <nlohmann/json.hpp>
#include <tuple>

#include "app/booked_day.h"
#include "app/day.h"
#include "app/desk_rest.h"
#include "app/desk_salon.h"
#include "app/visit_name.h"
#include "base/text.h"
#include "desk/edits_json.h"
#include "sheet/caution_words.h"
#include "sheet/own_words.h"
#include "spec/edit_fix.h"

namespace furnish {
namespace {
using Json = nlohmann::ordered_json;

class Looker {
 public:
  Looker(DeskShop& kept, LooksBefore& before, const desk::LookOrder& order, const std::string& path)
      : kept_(kept),
        before_(before),
        order_(order),
        path_(path),
        text_(desk::text_to_edit(order.file.kind, order.text)) {
    out_ = {{"faults", Json::array()},   {"read", "nothing"},      {"alerts", Json::array()},
            {"cautions", Json::array()}, {"pages", Json::array()}, {"figure", nullptr}};
  }

  Json pet_or_visit(const PetPath& pet) {
    Workshop& shop = kept_.shop();
    const std::string usual_language = kept_.options().language;
    kept_.over().lay(path_, order_.text);
    if (order_.file.kind == "visit") choose_visit();
    const SheetMaker* const sheet = desk_sheet(order_.sheet);
    if (sheet != nullptr) kept_.options().sheet = sheet;
    auto one = shop.work_out(pet, shop.today(), said_);
    if (one) {
      out_["read"] = "whole";
      if (!order_.language.empty()) kept_.options().language = order_.language;
      report(day_warnings_about(*one, {shop.context().files, shop.sources(), said_}), said_);
      // Where a visit has faults its own page is not made; that of the pet is.
      const bool whole =
          one->all_visits || sheet == nullptr || sheet->kind.about == AboutVisit::never;
      if (sheet != nullptr && whole) add_pages(shop.sheet(*one, said_));
    }
    kept_.options().language = usual_language;
    tell(shop);
    if (!one) one = rest(shop, pet);
    if (one) add_plan(shop, *one);
    return std::move(out_);
  }

  /// What more than one pet is read with is not kept: a shop of its own reads it.
  Json shared() {
    kept_.shop();
    kept_.over().lay(path_, order_.text);
    if (order_.file.kind == "day") kept_.options().on = parse_date(order_.file.id);
    const auto apart = kept_.apart();
    Workshop& shop = *apart;
    SalonFolder& folder = shop.folder(kept_.root());
    if (order_.file.kind == "style") folder.styles().find(order_.file.id, {});
    if (order_.file.kind == "day") {
      bool complete = true;
      DayCases cases;
      const auto sheet = folder.good() ? day_sheet(shop, folder, complete, &cases) : std::nullopt;
      if (sheet) out_["expected"] = Json::object();
      for (const auto& [pet, one] : cases.cases) {
        if (one.plan.duration) out_["expected"][pet] = one.plan.duration->expected.count();
      }
      if (sheet && order_.sheet == "day") add_pages(*sheet);
    }
    tell(shop);
    return std::move(out_);
  }

 private:
  /// Of a pet with faults, what could be read.
  std::optional<Case> rest(Workshop& shop, const PetPath& pet) {
    const FileContent file =
        path_ == pet.file ? FileContent{order_.text, {}} : kept_.files().read(pet.file);
    auto one =
        file.bytes ? rest_of(kept_.over(), shop, pet, *file.bytes, shop.today()) : std::nullopt;
    if (one) out_["read"] = "rest";
    return one;
  }

  void choose_visit() {
    const std::string date = order_.file.id.substr(order_.file.id.find('/') + 1);
    std::tie(kept_.options().visit, kept_.options().visit_number) = parse_visit(date);
  }

  void add_pages(const Sheet& sheet) {
    for (const Frame& side : sides(sheet.page)) {
      auto svg = before_.sides.svg(side, sheet.info, said_);
      if (svg) out_["pages"].push_back(*std::move(svg));
    }
  }
  void add_pages(const std::optional<Made>& made) {
    if (made) add_pages(made->sheet);
  }

  /// What was said of this text, and what stands against any: errors of the salon's other files.
  void tell(Workshop& shop) {
    const FaultsJson faults(shop.sources(), path_, text_);
    faults.add(said_.all(), out_["faults"]);
    std::vector<Diagnostic> shared;
    for (const Diagnostic& one : shop.sink().all()) {
      if (one.severity == Severity::error || faults.here(one.span)) shared.push_back(one);
    }
    faults.add(shared, out_["faults"]);
  }

  void add_plan(Workshop& shop, const Case& one) {
    FontSet* const fonts = shop.fonts();
    const auto voice =
        fonts ? shop.voices().voice(*fonts, *one.folder, one.pet, Audience::staff) : std::nullopt;
    if (!voice) return;
    if (order_.figure) out_["figure"] = before_.figure.json(one, *voice);
    const FaultsJson places(shop.sources(), path_, text_);
    out_["name"] = one.pet.name.value;
    out_["owner"] = one.pet.owner.name;
    const auto own = [&](const FreeText& text) { return own_words(text, *voice).text; };
    for (const Alert& alert : one.pet.alerts) {
      out_["alerts"].push_back(
          {{"signal", to_text(alert.level)}, {"text", own(alert.text)}, {"do", own(alert.action)}});
    }
    for (const Caution& caution : one.plan.cautions) {
      const auto sentence = [&](const CautionText& text) {
        return text.key.empty() ? std::string() : capitalised(caution_text(text, *voice));
      };
      Json row{{"rule", rule(caution.rule).key},
               {"signal", to_text(caution.signal)},
               {"text", sentence(caution.what)},
               {"do", sentence(caution.instead)},
               {"places", Json::array()},
               {"path", places.path(caution.span)},
               {"accepted", caution.accepted.has_value()},
               {"can_accept", !caution.accepted.has_value()}};
      for (const Place place : caution.places) row["places"].push_back(to_text(place));
      if (caution.accepted) row["reason"] = caution.accepted->reason;
      out_["cautions"].push_back(std::move(row));
    }
  }

  DeskShop& kept_;
  LooksBefore& before_;
  const desk::LookOrder& order_;
  const std::string& path_;
  const EditedText text_;
  DiagnosticSink said_;
  Json out_;
};
}  // namespace

FaultsJson::FaultsJson(const SourceSet& sources, std::string path, EditedText text)
    : sources_(sources), path_(std::move(path)), text_(std::move(text)) {}

bool FaultsJson::here(const SourceSpan& span) const {
  return span.file != SourceSpan::no_file && sources_.at(span.file).path() == path_;
}

Json FaultsJson::path(const SourceSpan& span) const {
  if (!here(span) || !text_.good() || span.begin.line == 0) return nullptr;
  const EditPath found = text_.path_at(span.begin);
  return found.empty() ? Json() : desk::path_json(found);
}

void FaultsJson::add(std::span<const Diagnostic> said, Json& faults) const {
  for (const Diagnostic& one : in_reading_order(said)) {
    Json fault{{"level", one.severity == Severity::error ? "error" : "warning"},
               {"code", one.code},
               {"message", one.message},
               {"hint", one.hint},
               {"notes", Json::array()},
               {"path", path(one.span)}};
    for (const auto& [span, text] : one.notes) fault["notes"].push_back(text);
    if (here(one.span)) {
      fault["line"] = one.span.begin.line;
      fault["column"] = one.span.begin.column;
      fault["end_line"] = one.span.end.line;
      fault["end_column"] = one.span.end.column;
      const std::vector<Edit> choices = text_.good() ? fixes(text_, one) : std::vector<Edit>();
      // Where there are several, which it should be is for a person to say.
      for (const Edit& fix : choices) fault["choices"].push_back({desk::edit_json(fix)});
      if (choices.size() == 1) fault["fix"] = {desk::edit_json(choices.front())};
    } else if (one.span.file != SourceSpan::no_file) {
      fault["file"] = sources_.at(one.span.file).path();
    }
    faults.push_back(std::move(fault));
  }
}

Json desk_look(DeskShop& kept, LooksBefore& before, const desk::LookOrder& order,
               const std::string& path, const PetPath& pet) {
  Looker looker(kept, before, order, path);
  const bool of_a_pet = order.file.kind == "pet" || order.file.kind == "visit";
  return of_a_pet ? looker.pet_or_visit(pet) : looker.shared();
}
}  // namespace furnish
