#include "app/inputs.h"

#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>
#include <ctime>
#include <filesystem>
#include <system_error>
#include <utility>

#include "app/salon_folder.h"
#include "output/photo.h"

namespace furnish {
namespace {
std::string mark_of(const FileContent& content) {
  Sum sum;
  sum.add_word(content.through_link ? "link" : "");
  sum.add_word(content.bytes ? "" : content.fault);
  if (content.bytes) sum.add(*content.bytes);
  return sum.text();
}

std::string mark_of(const FolderContent& content) {
  Sum sum;
  sum.add_word(content.fault);
  for (const std::string& name : content.names) sum.add_word(name);
  return sum.text();
}

std::string mark_of_presence(bool there) {
  return there ? "there" : "absent";
}

/// What was written less than so long ago may be written again without another time: file systems
/// count in steps, of two seconds at most.
constexpr std::time_t settled_after = 3;

bool is_young(const std::string& path) {
  struct stat status {};
  return ::stat(path.c_str(), &status) == 0 &&
         std::time(nullptr) - std::max(status.st_ctim.tv_sec, status.st_mtim.tv_sec) <
             settled_after;
}

std::string mark_of_photo(const std::string& path) {
  struct stat status {};
  Sum sum;
  std::error_code fault;
  sum.add_word(std::filesystem::weakly_canonical(std::filesystem::absolute(path), fault).string());
  if (::stat(path.c_str(), &status) != 0) return sum.text();
  sum.add_word(fmt::format("{}.{}.{}.{}.{}.{}.{}", status.st_ino, status.st_mode, status.st_size,
                           status.st_mtim.tv_sec, status.st_mtim.tv_nsec, status.st_ctim.tv_sec,
                           status.st_ctim.tv_nsec));
  return sum.text();
}

/// Of a folder's names and the marks of their files, in order.
class SumOfAll {
 public:
  explicit SumOfAll(const std::string& names) { sum_.add_word(names); }
  void add(const std::string& file) { sum_.add_word(file); }
  std::string text() const { return sum_.text(); }

 private:
  Sum sum_;
};
}  // namespace

void Sum::add(std::string_view bytes) {
  value_ = fnv(value_, bytes);
}

void Sum::add_word(std::string_view bytes) {
  add(fmt::format("{}:", bytes.size()));
  add(bytes);
}

std::string Sum::text() const {
  return fmt::format("{:016x}", value_);
}

std::string mark_now(Input::Kind kind, const std::string& path, const Files& files,
                     std::size_t most) {
  switch (kind) {
    case Input::Kind::contents:
      return mark_of(files.read_up_to(path, most));
    case Input::Kind::presence:
      return mark_of_presence(files.exists(path));
    case Input::Kind::names:
      return mark_of(files.list(path));
    case Input::Kind::all: {
      const FolderContent folder = files.list(path);
      SumOfAll sum(mark_of(folder));
      for (const std::string& name : folder.names)
        sum.add(mark_of(files.read(path_in(path, name))));
      return sum.text();
    }
    case Input::Kind::young:
      return mark_of_photo(path) + mark_of(files.read_up_to(path, most_photo_bytes));
    case Input::Kind::photo:
      break;
  }
  return mark_of_photo(path);
}

void InputFiles::note(Input input) const {
  const auto [known, is_new] = noted_.try_emplace(input.path, input);
  if (is_new) return;
  Input& before = known->second;
  const bool more = before.kind == Input::Kind::photo && input.kind == Input::Kind::young &&
                    input.mark.starts_with(before.mark);
  if (before.kind == Input::Kind::presence || more) {
    before = std::move(input);
  } else if (before.kind == input.kind && before.mark != input.mark) {
    sure_ = false;
  } else if (before.kind != input.kind && input.kind != Input::Kind::presence) {
    sure_ = false;  // one name, a folder and a file
  }
}

FileContent InputFiles::read_up_to(const std::string& path, std::size_t most) const {
  if (most == largest) {
    FileContent content = files_.read_up_to(path, most);
    note({Input::Kind::contents, path, mark_of(content)});
    return content;
  }
  const bool young = is_young(path);
  std::string mark = mark_of_photo(path);
  FileContent content = files_.read_up_to(path, most);
  if (young) mark += mark_of(content);
  note({young ? Input::Kind::young : Input::Kind::photo, path, std::move(mark)});
  return content;
}

bool InputFiles::exists(const std::string& path) const {
  const bool there = files_.exists(path);
  note({Input::Kind::presence, path, mark_of_presence(there)});
  return there;
}

std::string InputFiles::place(const std::string& path) const {
  note({Input::Kind::photo, path, mark_of_photo(path)});
  return files_.place(path);
}

FolderContent InputFiles::list(const std::string& folder) const {
  FolderContent content = files_.list(folder);
  note({Input::Kind::names, folder, mark_of(content)});
  names_[folder] = content.names;
  return content;
}

InputFiles::Noted InputFiles::take(const std::map<std::string, std::string>& apart) {
  Noted out{{}, std::exchange(sure_, true)};
  // A folder of which all was read, as of a pet's visits, is one input.
  for (const auto& [folder, names] : std::exchange(names_, {})) {
    Input& listed = noted_[folder];
    SumOfAll sum(listed.mark);
    const auto read = [&](const std::string& name) {
      const auto file = noted_.find(path_in(folder, name));
      return file != noted_.end() && file->second.kind == Input::Kind::contents;
    };
    if (names.empty() || apart.contains(folder) || !std::ranges::all_of(names, read)) continue;
    for (const std::string& name : names) {
      const auto file = noted_.find(path_in(folder, name));
      sum.add(file->second.mark);
      noted_.erase(file);
    }
    listed = {Input::Kind::all, folder, sum.text()};
  }
  for (auto& [path, input] : std::exchange(noted_, {})) out.inputs.push_back(std::move(input));
  return out;
}
}  // namespace furnish
