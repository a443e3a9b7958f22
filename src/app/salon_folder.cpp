#include "app/salon_folder.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <utility>

#include "base/text.h"
#include "spec/document.h"

namespace furnish {
namespace fs = std::filesystem;

std::string path_in(const std::string& folder, const std::string& name) {
  return folder.empty() || folder == "." ? name : (fs::path(folder) / name).string();
}

SalonFolder::SalonFolder(const ReadContext& context, std::string root,
                         const std::string& shipped_styles)
    : context_(context),
      root_(std::move(root)),
      salon_(default_salon()),
      styles_(context, shipped_styles, root_.empty() ? "" : path_in(root_, "styles")),
      words_(context, shipped_styles, root_.empty() ? "" : path_in(root_, "styles")) {
  const std::string path = path_in(root_, "salon.toml");
  if (root_.empty() || !context_.files.exists(path)) return;
  has_salon_ = true;
  auto read = read_salon(context_, path);
  good_ = read.has_value();
  if (read) salon_ = std::move(*read);
}

std::optional<Pet> SalonFolder::pet(const std::string& path, DiagnosticSink& sink) {
  return read_pet(reporting_to(sink), path, has_salon_ ? &salon_ : nullptr, styles_);
}

std::vector<std::string> SalonFolder::visit_files(const Pet& pet, bool& complete,
                                                  DiagnosticSink& sink) const {
  std::vector<std::string> files;
  if (root_.empty()) return files;
  const std::string folder = path_in(path_in(root_, "visits"), pet.key);
  bool read = true;
  for (const std::string& name : list_folder(reporting_to(sink), folder, read)) {
    files.push_back(path_in(folder, name));
  }
  complete = complete && read;
  return files;
}

std::optional<Visit> SalonFolder::visit(const std::string& path, const Pet& pet,
                                        DiagnosticSink& sink) {
  return read_visit(reporting_to(sink), path, has_salon_ ? &salon_ : nullptr, &pet);
}

std::vector<Visit> SalonFolder::visits(const Pet& pet, bool& complete, DiagnosticSink& sink) {
  std::vector<Visit> visits;
  complete = true;
  for (const std::string& file : visit_files(pet, complete, sink)) {
    if (auto one = visit(file, pet, sink)) {
      visits.push_back(std::move(*one));
    } else {
      complete = false;
    }
  }
  std::ranges::stable_sort(visits, {},
                           [](const Visit& one) { return std::pair(one.date.value, one.number); });
  return visits;
}

const std::vector<std::string>* SalonFolder::day_files() {
  if (!std::exchange(days_listed_, true)) {
    day_files_ = list_folder(context_, path_in(root_, "days"), days_good_);
  }
  return days_good_ ? &day_files_ : nullptr;
}

const Day* SalonFolder::day(const std::string& name) {
  const auto [place, is_new] = days_.try_emplace(name);
  if (!is_new) return place->second ? &*place->second : nullptr;
  // Each part of a run reads it, and a person is told once.
  DiagnosticSink said;
  const std::string path = path_in(path_in(root_, "days"), name);
  place->second = read_day({context_.files, context_.sources, said, context_.passing}, path);
  for (Diagnostic one : said.all()) {
    one.once =
        fmt::format("{} {}:{}:{}", one.code, path, one.span.begin.line, one.span.begin.column);
    context_.sink.add(std::move(one));
  }
  return place->second ? &*place->second : nullptr;
}

const Day* SalonFolder::day(Date date) {
  if (root_.empty() || day_files() == nullptr) return nullptr;
  const std::string name = to_iso(date) + ".toml";
  const bool booked = std::ranges::find(day_files_, name) != day_files_.end();
  return booked ? day(name) : nullptr;
}

std::optional<Booking> SalonFolder::booking(const Pet& pet, Date date) {
  const Day* const booked = day(date);
  if (booked == nullptr) return std::nullopt;
  const auto found = std::ranges::find(booked->bookings, pet.key,
                                       [](const Booking& one) { return one.pet.value; });
  return found == booked->bookings.end() ? std::nullopt : std::optional(*found);
}

PetBookings SalonFolder::bookings(const Pet& pet, Date from, bool& complete) {
  PetBookings out;
  complete = true;
  if (root_.empty()) return out;
  if (day_files() == nullptr) {
    complete = false;
    out.unread = {from};
    return out;
  }
  for (const std::string& name : day_files_) {
    // Past days are not even read. What is not named by a day is for `check` to find.
    const auto date = parse_date(fs::path(name).stem().string());
    if (!date || *date < from) continue;
    const Day* const read = day(name);
    complete = complete && read != nullptr && read->unread.empty();
    const bool all = read != nullptr && std::ranges::none_of(read->unread, [&](const auto& one) {
                       return one.pet.empty() || one.pet == pet.key;
                     });
    if (!all) out.unread.push_back(*date);
    if (read == nullptr) continue;
    for (const Booking& one : read->bookings) {
      if (one.pet.value == pet.key) out.known.push_back(one);
    }
  }
  std::ranges::sort(out.unread);
  return out;
}

std::vector<PetPath> all_pets(const ReadContext& context, const std::string& salon_root,
                              bool& complete) {
  std::vector<PetPath> out;
  const std::string folder = path_in(salon_root, "pets");
  bool read = true;
  for (const std::string& name : list_folder(context, folder, read)) {
    out.push_back({path_in(folder, name), salon_root});
  }
  complete = complete && read;
  return out;
}

std::string PetPath::key() const {
  return std::filesystem::path(file).stem().string();
}

std::optional<PetPath> find_pet(const Files& files, const std::string& argument,
                                const std::string& salon_root, DiagnosticSink& sink) {
  if (argument.find('/') != std::string::npos || argument.ends_with(".toml")) {
    if (!salon_root.empty()) return PetPath{argument, salon_root};
    const fs::path folder = fs::path(argument).parent_path();
    if (folder.filename() != "pets") return PetPath{argument, ""};
    const std::string root = folder.parent_path().string();
    return PetPath{argument, root.empty() ? "." : root};
  }
  const std::string root = salon_root.empty() ? "." : salon_root;
  const std::string path = path_in(path_in(root, "pets"), argument + ".toml");
  if (files.exists(path)) return PetPath{path, root};
  auto& fault =
      sink.error("no-pet", {}, fmt::format("no pet '{}': there is no {}", argument, path));
  std::vector<std::string> names;
  for (const std::string& file : files.toml_files(path_in(root, "pets"))) {
    names.push_back(fs::path(file).stem());
  }
  const std::vector<std::string_view> views(names.begin(), names.end());
  if (const auto near = nearest(argument, views)) {
    fault.hint = fmt::format("did you mean '{}'?", *near);
  } else if (names.empty()) {
    fault.hint = "name a pet's file, or the salon's folder with --salon";
  }
  return std::nullopt;
}
}  // namespace furnish
