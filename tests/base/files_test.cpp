#include "base/files.h"

#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

#include "base/recording_files.h"

using namespace furnish;
using furnish::test::RecordingFiles;
namespace fs = std::filesystem;

namespace {
/// A folder that is gone at the end of the test.
class Folder {
 public:
  Folder() : path_(fs::temp_directory_path() / ("furnish_files_" + std::to_string(::getpid()))) {
    fs::create_directories(path_);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  std::string operator/(const std::string& name) const { return path_ / name; }
  void write(const std::string& name, const std::string& bytes) const {
    std::ofstream(*this / name, std::ios::binary) << bytes;
  }

 private:
  fs::path path_;
};
}  // namespace

TEST_CASE("a file as it is, byte by byte") {
  const Folder folder;
  const std::string bytes("a\0b\r\n\xFF", 6);
  folder.write("a.toml", bytes);
  CHECK(DiskFiles().read(folder / "a.toml").bytes == bytes);
  CHECK(DiskFiles().exists(folder / "a.toml"));
  folder.write("empty.toml", "");
  CHECK(DiskFiles().read(folder / "empty.toml").bytes == "");
}

TEST_CASE("what is not a file of a reasonable size is refused, and says why") {
  const Folder folder;
  const DiskFiles disk;
  CHECK_FALSE(disk.read(folder / "absent").bytes);
  CHECK_FALSE(disk.read(folder / "absent").fault.empty());
  CHECK_FALSE(disk.exists(folder / "absent"));
  CHECK(disk.read(folder / "").fault == "is a folder, not a file");
  folder.write("full", std::string(Files::largest, 'x'));
  CHECK(disk.read(folder / "full").bytes->size() == Files::largest);
  folder.write("over", std::string(Files::largest + 1, 'x'));
  CHECK(disk.read(folder / "over").fault.find("65537 bytes") != std::string::npos);
  REQUIRE(::mkfifo((folder / "pipe").c_str(), 0600) == 0);
  CHECK(disk.read(folder / "pipe").fault == "is not a regular file");
  CHECK(disk.read("/dev/zero").fault == "is not a regular file");
}

TEST_CASE("the TOML files of a folder, sorted, without hidden ones") {
  const Folder folder;
  for (const char* const name : {"b.toml", "a.toml", ".hidden.toml", "c.txt", ".toml"}) {
    folder.write(name, "");
  }
  const std::vector<std::string> expected{"a.toml", "b.toml"};
  CHECK(DiskFiles().toml_files(folder / "") == expected);
  CHECK(DiskFiles().toml_files(folder / "absent").empty());
}

TEST_CASE("absent and unreadable are two things") {
  const Folder folder;
  const DiskFiles disk;
  fs::create_symlink("loop.toml", folder / "loop.toml");  // leads nowhere but is there
  folder.write("file", "");
  CHECK(disk.exists(folder / "loop.toml"));
  CHECK_FALSE(disk.read(folder / "loop.toml").bytes);
  CHECK_FALSE(disk.list(folder / "loop.toml").fault.empty());
  CHECK_FALSE(disk.exists(folder / "absent"));
  CHECK_FALSE(disk.exists(folder / "file/below"));
  CHECK(disk.list(folder / "absent").fault.empty());
  CHECK(disk.list(folder / "file").fault.empty());
}

TEST_CASE("files in memory do as the disk does") {
  const MemoryFiles files({{"pets/b.toml", "b"},
                           {"pets/a.toml", "a"},
                           {"pets/old/c.toml", "c"},
                           {"salon.toml", std::string(Files::largest + 1, 'x')}});
  CHECK(files.read("pets/a.toml").bytes == "a");
  CHECK_FALSE(files.read("pets/x.toml").bytes);
  CHECK_FALSE(files.read("salon.toml").bytes);
  CHECK(files.exists("pets/b.toml"));
  CHECK(files.toml_files("pets") == std::vector<std::string>{"a.toml", "b.toml"});
}

TEST_CASE("a file may be read up to another size than that of one written by hand") {
  const Folder folder;
  folder.write("photo", std::string(Files::largest + 1, 'x'));
  CHECK(DiskFiles().read_up_to(folder / "photo", Files::largest + 1).bytes);
  CHECK(DiskFiles().read_up_to(folder / "photo", 9).fault.find("at most 9") != std::string::npos);
  const MemoryFiles files({{"photo", std::string(Files::largest + 1, 'x')}});
  CHECK(files.read_up_to("photo", Files::largest + 1).bytes);
  CHECK_FALSE(files.read_up_to("photo", 9).bytes);
}

TEST_CASE("what was asked for is known afterwards, absent files and folders too") {
  const MemoryFiles held({{"salon.toml", "s"}, {"pets/a.toml", "a"}, {"pets/b.toml", "b"}});
  const RecordingFiles files(held);
  CHECK(files.asked().empty());
  CHECK(files.exists("salon.toml"));
  CHECK(files.exists("pets/b.toml"));
  CHECK(files.read("salon.toml").bytes == "s");
  CHECK(files.exists("salon.toml"));  // takes nothing back
  CHECK_FALSE(files.exists("days/2026-11-24.toml"));
  CHECK_FALSE(files.read_up_to("photos/a.jpg", 100).bytes);
  CHECK(files.toml_files("pets") == held.toml_files("pets"));
  CHECK(files.toml_files("visits/a").empty());
  using enum RecordingFiles::Found;
  const std::map<std::string, RecordingFiles::Found> expected{
      {"days/2026-11-24.toml", absent}, {"pets", listed},         {"pets/b.toml", seen},
      {"photos/a.jpg", absent},         {"salon.toml", contents}, {"visits/a", listed}};
  CHECK(files.asked() == expected);
}
