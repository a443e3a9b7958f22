#include <fmt/format.h>

#include <catch2/catch.hpp>

#include <filesystem>
#include <map>

#include "base/files.h"
#include "share.h"
#include "spec/edit_check.h"
#include "spec/edit_tricky.h"
#include "spec/file_kinds.h"
#include "spec/seeded.h"

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

struct File {
  std::string name, text;
  const TableInfo* kind;
};

const TableInfo* kind_of(const std::string& name) {
  for (const FileKind& kind : file_kinds()) {
    if (name.find(std::string(kind.name)) != std::string::npos) return kind.table;
  }
  return nullptr;
}

/// Samples, shipped styles and languages, faulty files that are TOML, tricky ones.
std::vector<File> all_files() {
  std::vector<File> out;
  const DiskFiles disk;
  for (const char* folder : {"samples", "styles", "tests/spec/faults"}) {
    for (const auto& entry :
         fs::recursive_directory_iterator(fs::path(FURNISH_SOURCE_DIR) / folder)) {
      if (entry.path().extension() != ".toml") continue;
      const std::string path = entry.path().string();
      const auto content = disk.read(path);
      if (!content.bytes || !EditedText(*content.bytes).good()) continue;
      out.push_back({path.substr(std::string_view(FURNISH_SOURCE_DIR).size() + 1), *content.bytes,
                     kind_of(path.substr(std::string_view(FURNISH_SOURCE_DIR).size()))});
    }
  }
  std::ranges::sort(out, {}, &File::name);
  for (const auto& [name, text] : tricky_files()) {
    INFO(name << ": " << EditedText(text).fault());
    REQUIRE(EditedText(text).good());
    out.push_back({name, text, file_kinds().front().table});
  }
  return out;
}

void gather_paths(const EditValue& value, EditPath& at, std::vector<EditPath>& out) {
  if (!at.empty()) out.push_back(at);
  if (const EditTable* const table = value.table()) {
    for (const auto& [key, one] : *table) {
      at.emplace_back(key);
      gather_paths(one, at, out);
      at.pop_back();
    }
  }
  const EditList* const list = value.list();
  for (std::size_t n = 0; list != nullptr && n < list->size(); ++n) {
    at.emplace_back(n);
    gather_paths((*list)[n], at, out);
    at.pop_back();
  }
}

class Maker {
 public:
  explicit Maker(std::uint64_t seed) : random_(seed) {}
  std::size_t below(std::size_t n) { return random_.below(n); }

  Edit edit(const EditedText& file, const TableInfo* kind) {
    std::vector<EditPath> all;
    EditPath at;
    gather_paths(file.tree(), at, all);
    Edit out{Edit::Op::set, all.empty() ? EditPath{} : all[below(all.size())], value(2)};
    const std::size_t what = all.empty() ? 3 : below(6);
    if (what == 1) out.op = Edit::Op::remove;
    if (what == 2) {
      out.op = Edit::Op::append;
      for (std::size_t n = below(20); n > 0 && find(file.tree(), out.path)->list() == nullptr;
           --n) {
        out.path = all[below(all.size())];
      }
    }
    if (what > 2) {
      while (!out.path.empty() && below(3) == 0) out.path.pop_back();
      for (std::size_t n = 1 + below(2); n > 0; --n) out.path.emplace_back(key(kind));
      if (what == 5) out.op = Edit::Op::append;
    }
    return out;
  }

 private:
  std::string key(const TableInfo* kind) {
    static const std::vector<std::string> odd{"new",    "a b",        "x.y",  "Größe", "",
                                              "犬",     "\"quoted\"", "1",    "zz",    "left hock",
                                              "# none", "ears",       "alert"};
    if (kind == nullptr || below(3) == 0) return odd[below(odd.size())];
    const KeyInfo* one = kind->keys[below(kind->keys.size())];
    while (one->table != nullptr && !one->table->keys.empty() && below(2) == 0) {
      one = one->table->keys[below(one->table->keys.size())];
    }
    return std::string(one->name);
  }

  EditValue value(std::size_t depth) {
    switch (below(depth > 0 ? 10 : 7)) {
      case 0:
        return {std::int64_t{12} - static_cast<std::int64_t>(below(100))};
      case 1:
        return {below(4) == 0 ? 1e300 : static_cast<double>(below(1000)) / 8.0};
      case 2:
        return {below(2) == 0};
      case 3:
        return {EditDate{"2026-11-24"}};
      case 4:
        return {EditTime{below(2) == 0 ? "09:30:00" : "9:30"}};
      case 7: {
        EditTable out;
        for (std::size_t n = below(4); n > 0; --n) {
          out.push_back({"k" + std::to_string(n), value(depth - 1)});
        }
        return {out};
      }
      case 8:
      case 9: {
        EditList out;
        for (std::size_t n = below(4); n > 0; --n) out.push_back(value(depth - 1));
        return {out};
      }
      default:
        static const std::vector<std::string> texts{"word",
                                                    "",
                                                    "# no remark",
                                                    "it's \"so\"",
                                                    "two\nlines\n",
                                                    "back\\slash",
                                                    "Zoë 🐶",
                                                    "a = 1",
                                                    "]",
                                                    "\"\"\"",
                                                    "'''",
                                                    "\t",
                                                    "25 mm",
                                                    std::string("\0x", 2)};
        return {texts[below(texts.size())]};
    }
  }

  Seeded random_;
};

/// Without the path.
std::string reason_of(const std::string& fault) {
  for (const char* const reason : {"is no table", "is no list", "there is no place for",
                                   "are sections", "control character", "cannot be written here"}) {
    if (fault.find(reason) != std::string::npos) return reason;
  }
  return fault;
}

const char* name_of(Edit::Op op) {
  return op == Edit::Op::set ? "set" : op == Edit::Op::remove ? "remove" : "append";
}
}  // namespace

TEST_CASE("whatever is edited, only what was asked is changed", "[edit][random]") {
  const std::vector<File> files = all_files();
  CHECK(files.size() > 100);
  Maker make(26);
  const std::size_t count = long_run() ? 100'000 : 2'000;
  std::map<std::string, std::size_t> made, refused;
  std::size_t failed = 0;
  for (std::size_t n = 0; n < count && failed < 5;) {
    const File& one = files[make.below(files.size())];
    if (one.text.size() > 20'000 && make.below(20) > 0) continue;
    EditedText file(one.text, make.below(4) == 0 ? nullptr : one.kind);
    for (std::size_t step = 0; step < 12 && n < count; ++step) {
      Edit edit = make.edit(file, one.kind);
      const EditedText before = file;
      const bool there = file.good() && find(file.tree(), edit.path) != nullptr;
      const std::string what = std::string(name_of(edit.op)) + (there ? " what is there" : " new");
      INFO(one.name << ": " << what << " " << to_text(edit.path) << " "
                    << toml_text::value(edit.value) << "\n"
                    << before.text() << "\n=====\n"
                    << file.text());
      if (!file.apply(edit)) {
        ++refused[what + ": " + reason_of(file.fault())];
        if (file.text() == before.text()) continue;
        FAIL_CHECK("refused, but changed");
        ++failed;
        break;
      }
      ++made[what];
      ++n;
      edit.path = before.as_written(edit.path);
      const std::string wrong = wrong_with(before, file, edit);
      if (wrong.empty()) continue;
      FAIL_CHECK(wrong << "\n" << file.text());
      ++failed;
      break;
    }
  }
  std::string told;
  for (const auto& [what, times] : made) told += fmt::format("made {}: {}\n", what, times);
  for (const auto& [what, times] : refused) told += fmt::format("refused {}: {}\n", what, times);
  if (long_run()) WARN(told);
  INFO(told);
  for (const char* what : {"set what is there", "set new", "remove what is there",
                           "append what is there", "append new"}) {
    CHECK(made[what] > count / 40);
    CHECK(refused[std::string(what) + ": cannot be written here"] == 0);
  }
}
}  // namespace furnish::test
