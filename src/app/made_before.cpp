#include "app/made_before.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "app/sheet_files.h"
#include "app/sheet_maker.h"
#include "app/this_machine.h"
#include "base/text.h"
#include "output/write.h"
#include "spec/catalogue_reader.h"
#include "spec/day_reader.h"

namespace furnish {
namespace {
constexpr std::size_t largest_record = std::size_t{256} << 20;

std::string pets_of(const std::string& root) {
  return path_in(root, "pets");
}

bool sides_apart(const Options& options) {
  return options.format == Format::png || options.format == Format::svg;
}

/// A folder's TOML files, each with its mark, which is part of the sum. `most`: as many bytes of
/// one are read at most.
void add_folder(const std::string& folder, Input::Kind kind, std::size_t most, const Files& files,
                Sum& sum, std::map<std::string, std::string>& marks) {
  marks[folder] = mark_now(Input::Kind::names, folder, files);
  sum.add_word(marks[folder]);
  for (const std::string& name : files.list(folder).names) {
    const std::string path = path_in(folder, name);
    marks[path] = mark_now(kind, path, files, most);
    sum.add_word(marks[path]);
  }
}

void add_options(const Options& options, Sum& sum) {
  sum.add_word(fmt::format(
      "{} {} {} {} {} {} {} {} {} {} {}", static_cast<int>(options.standard), options.dpi,
      options.copies_per_sheet, options.visit ? to_iso(*options.visit) : "", options.visit_number,
      options.sources, static_cast<int>(options.spec_for),
      options.units ? static_cast<int>(*options.units) : -1, options.pets.empty(), options.booked,
      static_cast<int>(options.sheet->kind.reader)));
  for (const std::string* const word :
       {&options.salon, &options.data, &options.paper, &options.language}) {
    sum.add_word(*word);
  }
}

/// Words that stand between quotes, as keys of pets do; more than those, where quotes are nested.
template <typename Take>
void words_in_quotes(std::string_view text, Take take) {
  while (!text.empty()) {
    const auto end = text.find_first_of("\"'");
    take(trimmed(text.substr(0, end)));  // as it is read
    if (end == text.npos) return;
    text.remove_prefix(end + 1);
  }
}

/// A day as it is read without anything being said of it; else empty.
std::optional<Day> good_day(const std::string& path, const Files& files) {
  SourceSet sources;
  DiagnosticSink said;
  auto day = read_day({files, sources, said}, path);
  return said.all().empty() ? day : std::nullopt;
}

/// Whether a good day books a pet that the salon does not have. Sheets of that day tell it, and the
/// pet that may be meant knows less of its next visit.
bool books_a_stranger(const Day& day, const std::vector<std::string>& pets) {
  return std::ranges::any_of(day.bookings, [&](const Booking& one) {
    return std::ranges::find(pets, one.pet.value + ".toml") == pets.end();
  });
}
}  // namespace

std::string SalonInputs::days_about(const std::string& pet) const {
  Sum sum;
  // A name with quotes in it would be cut.
  const bool all = pet.find_first_of("\"'\\") != pet.npos;
  const auto naming = named.find(pet);
  for (std::size_t i = 0; i < days.size(); ++i) {
    const bool names_it = naming != named.end() && std::ranges::binary_search(naming->second, i);
    if (all || names_it || days[i].about_all) sum.add_word(days[i].path + days[i].mark);
  }
  return sum.text();
}

SalonInputs salon_inputs(const Options& options, Date today, const std::string& root,
                         const std::string& data, const Files& files, MadeRecord& record) {
  SalonInputs out;
  Sum sum;
  sum.add_word(mark_of_this_machine());
  sum.add_word(root);
  sum.add_word(data);
  sum.add_word(mark_of_files_in(path_in(data, "fonts")));
  add_options(options, sum);
  const std::string salon = path_in(root, "salon.toml");
  out.marks[salon] = mark_now(Input::Kind::contents, salon, files);
  sum.add_word(out.marks[salon]);
  for (const std::string& styles : {path_in(data, "styles"), path_in(root, "styles")}) {
    add_folder(styles, Input::Kind::contents, Files::largest, files, sum, out.marks);
  }
  // The shipped catalogues are large, and told by their times as photos and fonts are.
  add_folder(path_in(data, "styles/words"), Input::Kind::photo, 0, files, sum, out.marks);
  add_folder(path_in(root, "styles/words"), Input::Kind::contents, largest_catalogue, files, sum,
             out.marks);
  out.shared = sum.text();

  const std::string folder = path_in(root, "days"), todays = to_iso(today) + ".toml";
  const FolderContent days = files.list(folder);
  const std::string pets_folder = pets_of(root);
  if (!days.fault.empty()) out.shared += "?";  // nothing is remembered of such a run
  out.marks[folder] = "days";
  out.marks[pets_folder] = mark_now(Input::Kind::names, pets_folder, files);
  for (const std::string& name : days.names) {
    const std::string path = path_in(folder, name);
    SalonInputs::DayFile day{path, mark_now(Input::Kind::contents, path, files), false};
    out.marks[path] = day.mark;
    const bool of_today = name == todays;
    std::optional<bool> good = record.day_was_good(path, day.mark);
    const auto read = of_today || !good ? good_day(path, files) : std::nullopt;
    if (!good) {
      good = read.has_value();
      record.put_day(path, day.mark, *good);
    }
    const std::string text = files.read(path).bytes.value_or("");
    day.about_all = !*good || text.find('\\') != text.npos;
    if (of_today && (!read || books_a_stranger(*read, files.list(pets_folder).names))) {
      day.about_all = true;
      day.mark += out.marks[pets_folder];
    }
    words_in_quotes(text, [&](std::string_view word) {
      auto& found = out.named[std::string(word)];
      if (found.empty() || found.back() != out.days.size()) found.push_back(out.days.size());
    });
    out.days.push_back(std::move(day));
  }
  return out;
}

MadeBefore::MadeBefore(const Options& options, Date today, const std::string& data,
                       const Files& files, const Disk& disk, std::span<const PetPath> pets)
    : options_(options), day_(to_iso(today)), files_(files), disk_(disk) {
  if (!options.output.empty() || options.together || data.empty()) return;
  for (const PetPath& pet : pets) {
    if (pet.root.empty() || salons_.contains(pet.root)) continue;
    FileContent content;
    if (!options.fresh) content = files.read_up_to(record_path(pet.root), largest_record);
    auto salon = std::make_unique<Salon>(std::move(content.bytes).value_or(""));
    salon->inputs = salon_inputs(options, today, pet.root, data, files, salon->record);
    salons_.emplace(pet.root, std::move(salon));
  }
}

std::string MadeBefore::record_path(const std::string& root) const {
  return path_in(path_in(root, "sheets"), ".made");
}

std::string MadeBefore::what() const {
  return fmt::format("{} {}", options_.sheet->kind.name, static_cast<int>(options_.format));
}

bool MadeBefore::knows(const PetPath& pet) const {
  const auto salon = salons_.find(pet.root);
  if (salon == salons_.end()) return false;
  const auto made = salon->second->record.find(pet.file, what());
  return made && made->day == day_;
}

std::optional<MadeSheet> MadeBefore::unchanged(const PetPath& pet) const {
  const auto salon = salons_.find(pet.root);
  if (salon == salons_.end()) return std::nullopt;
  const auto& [record, inputs] = *salon->second;
  auto made = record.find(pet.file, what());
  if (!made || made->day != day_ || made->shared != inputs.shared ||
      made->days != inputs.days_about(pet.key())) {
    return std::nullopt;
  }
  const auto same = [&](const Input& input) {
    const auto known = inputs.marks.find(input.path);
    return input.mark ==
           (known != inputs.marks.end() ? known->second : mark_now(input.kind, input.path, files_));
  };
  const auto there = [&](const MadeSheet::File& file) {
    return !file.mark.empty() && file_mark(file.path, disk_) == file.mark;
  };
  if (!std::ranges::all_of(made->inputs, same) || !std::ranges::all_of(made->files, there)) {
    return std::nullopt;
  }
  // Of a sheet that had more sides, the run would take the last ones away.
  if (sides_apart(options_) && !made->files.empty()) {
    struct stat status {};
    const auto sides = static_cast<std::size_t>(std::ranges::count_if(
        made->files, [](const auto& file) { return !file.path.ends_with(".ics"); }));
    const std::string more = side_path(made->files.front().path, sides + 1);
    if (disk_.lstat(more.c_str(), &status) == 0) return std::nullopt;
  }
  return made;
}

std::optional<std::vector<Input>> MadeBefore::inputs(const PetPath& pet, InputFiles& files) const {
  const auto salon = salons_.find(pet.root);
  const std::map<std::string, std::string> none;
  const auto& marks = salon == salons_.end() ? none : salon->second->inputs.marks;
  InputFiles::Noted noted = files.take(marks);
  if (!noted.sure || salon == salons_.end()) return std::nullopt;
  std::vector<Input> out;
  for (Input& input : noted.inputs) {
    const auto known = marks.find(input.path);
    if (known == marks.end()) {
      out.push_back(std::move(input));
    } else if (input.kind == Input::Kind::contents && known->second != input.mark) {
      return std::nullopt;  // it changed after the run began
    }
  }
  return out;
}

void MadeBefore::remember(const PetPath& pet, std::vector<Input> inputs,
                          std::vector<MadeSheet::File> files, std::vector<SaidBefore> said) {
  const auto salon = salons_.find(pet.root);
  if (salon == salons_.end() || !sure_) return;
  salon->second->record.put({pet.file, what(), day_, salon->second->inputs.shared,
                             salon->second->inputs.days_about(pet.key()), std::move(inputs),
                             std::move(files), std::move(said)});
}

void MadeBefore::write() const {
  if (!sure_) return;
  for (const auto& [root, salon] : salons_) {
    if (!salon->record.changed()) continue;
    // A pet that came or went meanwhile may be one that the day books.
    const std::string pets = pets_of(root);
    if (mark_now(Input::Kind::names, pets, files_) != salon->inputs.marks.at(pets)) continue;
    // Without it only time is lost, and that is nothing to tell.
    DiagnosticSink unheard;
    const std::string path = record_path(root);
    const FileContent there = files_.read_up_to(path, largest_record);
    // Else one that a bad disk spoilt would stay, and no run would ever be short again.
    const bool spoilt = there.bytes && !there.through_link && MadeRecord::begins(*there.bytes);
    write_whole(path, salon->record.text(day_), spoilt ? Replaces::anything : Replaces::own,
                unheard, disk_);
  }
}
}  // namespace furnish
