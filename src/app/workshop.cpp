#include "app/workshop.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <ctime>

#include "app/data_folder.h"
#include "app/photos.h"
#include "base/text.h"
#include "model/for_everyone.h"
#include "sheet/card.h"
#include "sheet/style_sheet.h"
#include "spec/writer.h"

namespace furnish {
namespace {
/// Today where the computer stands; --on is there so that a run can be repeated.
Date local_today() {
  const std::time_t now = std::time(nullptr);
  std::tm parts{};
  ::localtime_r(&now, &parts);
  return make_date(parts.tm_year + 1900, static_cast<unsigned>(parts.tm_mon + 1),
                   static_cast<unsigned>(parts.tm_mday))
      .value_or(Date{});
}
}  // namespace

Workshop::Workshop(const Options& options, const Files& files)
    : options_(options),
      files_(files),
      context_{files, sources_, sink_},
      today_(options.on ? *options.on : local_today()),
      data_(find_data_folder(options.data)),
      voices_(options, sink_) {}

std::vector<PetPath> Workshop::pets(bool& complete) {
  std::vector<PetPath> found;
  if (options_.pets.empty()) {
    const std::string root = options_.salon.empty() ? "." : options_.salon;
    found = all_pets(files_, root);
    if (found.empty()) {
      sink_.error("no-pet", {}, fmt::format("there are no pets in {}", path_in(root, "pets")))
          .hint = "name a pet's file, or the salon's folder with --salon";
      complete = false;
    }
    return found;
  }
  for (const std::string& argument : options_.pets) {
    if (auto pet = find_pet(files_, argument, options_.salon, sink_)) {
      found.push_back(std::move(*pet));
    } else {
      complete = false;
    }
  }
  return found;
}

SalonFolder& Workshop::folder(const std::string& root) {
  auto& made = folders_[root];
  if (!made) made = std::make_unique<SalonFolder>(context_, root, path_in(data_, "styles"));
  return *made;
}

FontSet* Workshop::fonts() {
  if (!fonts_asked_) {
    fonts_asked_ = true;
    if (data_.empty()) {
      sink_.error("fonts-missing", {}, "the program's fonts/ and styles/ are not where it looks")
          .hint = "name their folder with --data";
    } else {
      fonts_ = FontSet::open(path_in(data_, "fonts"), sink_);
    }
    if (fonts_) shaper_ = std::make_unique<TextShaper>(*fonts_, sink_);
  }
  return fonts_.get();
}

std::optional<Workshop::Case> Workshop::open(const PetPath& path, DiagnosticSink& sink) {
  SalonFolder& salon = folder(path.root);
  if (!salon.good()) return std::nullopt;
  auto pet = salon.pet(path.file, sink);
  if (!pet) return std::nullopt;
  bool complete = true;
  std::vector<Visit> visits = salon.visits(*pet, complete, sink);
  Plan plan = make_plan(salon.salon(), *pet, visits, salon.bookings(*pet, today_), today_, sink);
  return Case{&salon, std::move(*pet), std::move(visits), complete, std::move(plan)};
}

std::optional<Paper> Workshop::paper(const Salon& salon, DiagnosticSink& sink) const {
  const bool card = options_.command == Command::card;
  const std::string& usual = card ? salon.paper.card : salon.paper.sheet;
  const std::string& wanted = options_.paper.empty() ? usual : options_.paper;
  const auto found = parse_paper(wanted);
  if (found) return found;
  SourceSpan at;
  if (options_.paper.empty()) at = card ? salon.paper.card_span : salon.paper.sheet_span;
  auto& fault = sink.error("no-paper", at, fmt::format("there is no paper '{}'", wanted));
  std::vector<std::string> names;
  for (const std::string_view name : paper_names()) names.emplace_back(name);
  fault.hint = "one of " + listed(names, " or ");
  return std::nullopt;
}

std::optional<Workshop::Made> Workshop::sheet(const Case& one, DiagnosticSink& sink) {
  if (fonts() == nullptr) return std::nullopt;
  const Salon& salon = one.folder->salon();
  const auto on = paper(salon, sink);
  if (!on) return std::nullopt;
  const bool owners = options_.command == Command::care ||
                      (options_.command == Command::note && options_.for_owner);
  const Voices::Voice* const speaker =
      voices_.voice(*one.folder, one.pet, owners ? Voices::Reader::owner : Voices::Reader::salon);
  if (speaker == nullptr) return std::nullopt;
  const SheetVoice sheet_voice{*speaker->words, speaker->locale, *shaper_};
  fonts_->set_language(speaker->language);
  shaper_->report_to(sink);
  shaper_->forget();
  if (options_.command == Command::note) return note(one, *on, sheet_voice, sink);
  if (options_.command == Command::care) return care(one, *on, sheet_voice, sink);
  SheetInput input{salon, one.pet, one.plan, one.folder->booking(one.pet, today_), today_, *on};
  for (const Visit& visit : one.visits) {
    if (visit.date.value <= today_) input.latest = &visit;
  }
  if (options_.sources) {
    input.source = [&](const SourceSpan& span) {
      return fmt::format("{}:{}", sources_.at(span.file).path(), span.begin.line);
    };
  }
  const bool style = options_.command == Command::style;
  const Pet everyones = for_everyone(one.pet);
  if (style) {
    input.trim_code = trim_toml(everyones);
    input.portrait =
        PhotoFolder(one.folder->root(), salon, {files_, sources_, sink}).portrait(one.pet);
  }
  auto made =
      style ? make_style_sheet(input, sheet_voice, sink) : make_card(input, sheet_voice, sink);
  if (!made) return std::nullopt;
  return Made{*std::move(made),
              one.pet.key + (style ? "-style" : "-card"),
              {pet_file(options_.staff_spec ? one.pet : everyones)},
              {}};
}
}  // namespace furnish
