#include "output/write.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <filesystem>
#include <thread>
#include <vector>

#include "output/seal.h"
#include "output/tool.h"

using namespace furnish;
using namespace furnish::test;

namespace {
std::string message(const DiagnosticSink& sink) {
  return sink.all().empty() ? "" : sink.all().front().message;
}

std::size_t entries(const TemporaryFolder& folder) {
  const std::filesystem::directory_iterator all(folder.path("")), end;
  return static_cast<std::size_t>(std::distance(all, end));
}

/// Another file stands in for the standard output.
class StandardOutput {
 public:
  explicit StandardOutput(int fd) : kept_(::dup(STDOUT_FILENO)) { ::dup2(fd, STDOUT_FILENO); }
  ~StandardOutput() {
    ::dup2(kept_, STDOUT_FILENO);
    ::close(kept_);
  }
  StandardOutput(const StandardOutput&) = delete;
  StandardOutput& operator=(const StandardOutput&) = delete;

 private:
  int kept_;
};

/// The superuser may write anywhere, so such tests run as nobody.
class Nobody {
 public:
  Nobody() {
    if (was_ == 0) REQUIRE(::seteuid(65534) == 0);
  }
  ~Nobody() {
    if (was_ == 0 && ::seteuid(0) != 0) std::abort();
  }
  Nobody(const Nobody&) = delete;
  Nobody& operator=(const Nobody&) = delete;

 private:
  uid_t was_ = ::geteuid();
};

/// A disk with room for `bytes`: past them, writing a file fails.
class SmallDisk {
 public:
  explicit SmallDisk(rlim_t bytes) : signal_(::signal(SIGXFSZ, SIG_IGN)) {
    ::getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit small{bytes, before_.rlim_max};
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &small) == 0);
  }
  ~SmallDisk() {
    ::setrlimit(RLIMIT_FSIZE, &before_);
    ::signal(SIGXFSZ, signal_);
  }
  SmallDisk(const SmallDisk&) = delete;
  SmallDisk& operator=(const SmallDisk&) = delete;

 private:
  void (*signal_)(int);
  rlimit before_{};
};
}  // namespace

TEST_CASE("A file is written whole, over an old one too") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  const std::string path = folder.path("card.pdf"), large(3'000'000, 'x');
  CHECK(write_whole(path, large, Replaces::anything, sink));
  CHECK(bytes_of(path) == large);
  CHECK(write_whole(path, "new", Replaces::anything, sink));
  CHECK(bytes_of(path) == "new");
  CHECK(write_whole(path, "", Replaces::anything, sink));
  CHECK(bytes_of(path).empty());
  CHECK(entries(folder) == 1);
  CHECK(sink.all().empty());
}

TEST_CASE("A file without a folder in its name is written here") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  const auto here = std::filesystem::current_path();
  std::filesystem::current_path(folder.path(""));
  CHECK(write_whole("card.pdf", "bytes", Replaces::anything, sink));
  std::filesystem::current_path(here);
  CHECK(bytes_of(folder.path("card.pdf")) == "bytes");
}

TEST_CASE("Permissions: as the old file's, else as the user's mask says") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  const auto mode = [&](const std::string& path) {
    struct stat status {};
    REQUIRE(::stat(path.c_str(), &status) == 0);
    return status.st_mode & 07777;
  };
  const std::string old = folder.file("old", "1");
  REQUIRE(::chmod(old.c_str(), 0640) == 0);
  CHECK(write_whole(old, "2", Replaces::anything, sink));
  CHECK(mode(old) == 0640);
  const mode_t mask = ::umask(027);
  CHECK(write_whole(folder.path("new"), "2", Replaces::anything, sink));
  ::umask(mask);
  CHECK(mode(folder.path("new")) == 0640);
}

TEST_CASE("Nothing is written through a symbolic link") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  const std::string real = folder.file("real", sealed("old", SealedAs::text));
  const std::string link = folder.path("link"), old = bytes_of(real);
  const bool dangling = GENERATE(false, true);
  std::filesystem::create_symlink(dangling ? "nowhere" : "real", link);
  CHECK_FALSE(write_whole(link, "new", Replaces::own, sink));
  CHECK(message(sink) == "'" + link +
                             "' is a link, and a sheet is never written through one; it is left as "
                             "it is");
  CHECK(std::filesystem::is_symlink(link));
  CHECK(write_whole(link, "new", Replaces::anything, sink));
  CHECK_FALSE(std::filesystem::is_symlink(link));
  CHECK(bytes_of(link) == "new");
  CHECK(bytes_of(real) == old);
  CHECK(entries(folder) == 2);
}

TEST_CASE("Only what furnish wrote and nobody changed gives way") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  const std::string sheet = sealed("a sheet", SealedAs::text);
  const std::string path = folder.path("rex-card.pdf");
  SECTION("a sheet") {
    CHECK(write_whole(path, sheet, Replaces::own, sink));
    CHECK(write_whole(path, "another", Replaces::own, sink));
    CHECK(bytes_of(path) == "another");
  }
  SECTION("what a person wrote, or wrote on") {
    const std::string theirs = GENERATE_COPY(std::string("[pet]\nname = \"Rex\"\n"), std::string(),
                                             sheet + "a remark\n", "a remark\n" + sheet);
    folder.file("rex-card.pdf", theirs);
    CHECK_FALSE(write_whole(path, sheet, Replaces::own, sink));
    CHECK(message(sink).find("is no sheet that furnish wrote") != std::string::npos);
    CHECK(bytes_of(path) == theirs);
    CHECK(write_whole(path, sheet, Replaces::anything, sink));
    CHECK(bytes_of(path) == sheet);
  }
  CHECK(entries(folder) == 1);
}

TEST_CASE("What a person saves while a long file is made stays") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  const std::string book = sealed("a book", SealedAs::text), path = folder.path("book.pdf");
  if (GENERATE(false, true)) folder.file("book.pdf", book);
  std::string meanwhile = "my own notes";
  const auto make = [&](const TakeBytes& take) {
    folder.file("book.pdf", meanwhile);
    return take("the new ") && take("book");
  };
  CHECK_FALSE(write_whole(path, make, Replaces::own, sink));
  CHECK(message(sink).find("is left as it is") != std::string::npos);
  CHECK(bytes_of(path) == meanwhile);
  CHECK(write_whole(path, make, Replaces::anything, sink));
  CHECK(bytes_of(path) == "the new book");
  std::filesystem::remove(path);
  meanwhile = book;  // an older one gives way
  CHECK(write_whole(path, make, Replaces::own, sink));
  CHECK(bytes_of(path) == "the new book");
  CHECK(entries(folder) == 1);
}

TEST_CASE("Beside devices and pipes nothing lies") {
  const TemporaryFolder folder;
  CHECK_FALSE(is_a_file("-"));
  CHECK_FALSE(is_a_file("/dev/null"));
  CHECK(is_a_file(folder.file("card.pdf", "")));
  CHECK(is_a_file(folder.path("not yet.pdf")));
}

TEST_CASE("What cannot be written is told, and nothing is left") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  SECTION("a folder") {
    CHECK_FALSE(write_whole(folder.path(""), "x", Replaces::anything, sink));
    CHECK(message(sink).ends_with("it is a folder"));
  }
  SECTION("a missing folder") {
    CHECK_FALSE(write_whole(folder.path("no/card.pdf"), "x", Replaces::anything, sink));
    CHECK(message(sink) ==
          "cannot write '" + folder.path("no/card.pdf") + "': No such file or directory");
  }
  SECTION("a file for a folder") {
    folder.file("file", "");
    CHECK_FALSE(write_whole(folder.path("file/card.pdf"), "x", Replaces::anything, sink));
    CHECK(message(sink).ends_with("Not a directory"));
    CHECK(entries(folder) == 1);
  }
  SECTION("an empty name") {
    CHECK_FALSE(write_whole("", "x", Replaces::anything, sink));
  }
  SECTION("a name that is too long") {
    CHECK_FALSE(write_whole(folder.path(std::string(300, 'n')), "x", Replaces::anything, sink));
    CHECK(message(sink).ends_with("File name too long"));
  }
  SECTION("a device that is full") {
    CHECK_FALSE(write_whole("/dev/full", "x", Replaces::anything, sink));
    CHECK(message(sink) == "cannot write '/dev/full': No space left on device");
  }
  CHECK(sink.error_count() == 1);
  if (!std::filesystem::exists(folder.path("file"))) CHECK(entries(folder) == 0);
}

TEST_CASE("A disk that runs full keeps the old file") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  const std::string path = folder.file("card.pdf", "old");
  {
    const SmallDisk disk(4096);
    CHECK_FALSE(write_whole(path, std::string(100'000, 'x'), Replaces::anything, sink));
    CHECK_FALSE(
        write_whole(folder.path("new.pdf"), std::string(100'000, 'x'), Replaces::anything, sink));
  }
  CHECK(message(sink).ends_with("File too large"));
  CHECK(bytes_of(path) == "old");
  CHECK(entries(folder) == 1);
}

TEST_CASE("What may not be written stays as it was") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  const std::string path = folder.file("card.pdf", "old");
  SECTION("a file that is only for reading, in a folder where anyone may write") {
    REQUIRE(::chmod(path.c_str(), 0444) == 0);
    REQUIRE(::chmod(folder.path("").c_str(), 0777) == 0);
    const Nobody nobody;
    CHECK_FALSE(write_whole(path, "new", Replaces::anything, sink));
  }
  SECTION("a folder that is only for reading") {
    REQUIRE(::chmod(folder.path("").c_str(), 0555) == 0);
    const Nobody nobody;
    CHECK_FALSE(write_whole(folder.path("new.pdf"), "new", Replaces::anything, sink));
  }
  REQUIRE(::chmod(folder.path("").c_str(), 0755) == 0);
  CHECK(message(sink).ends_with("Permission denied"));
  CHECK(bytes_of(path) == "old");
  CHECK(entries(folder) == 1);
}

TEST_CASE("Devices and pipes are written to directly") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  CHECK(write_whole("/dev/null", "x", Replaces::anything, sink));
  const std::string pipe = folder.path("pipe"), large(200'000, 'p');
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  std::string read;
  std::thread reader([&] { read = bytes_of(pipe); });
  CHECK(write_whole(pipe, large, Replaces::anything, sink));
  reader.join();
  CHECK(read == large);
  CHECK(std::filesystem::is_fifo(pipe));
  CHECK(sink.all().empty());
}

TEST_CASE("The standard output takes all, or the fault is told") {
  DiagnosticSink sink;
  std::array<int, 2> pipe{};
  REQUIRE(::pipe(pipe.data()) == 0);
  SECTION("a reader that reads") {
    const std::string large(300'000, 's');
    std::string read;
    std::thread reader([&] {
      std::array<char, 4096> part{};
      for (::ssize_t n = 0; (n = ::read(pipe[0], part.data(), part.size())) > 0;) {
        read.append(part.data(), static_cast<std::size_t>(n));
      }
    });
    bool written = false;
    {
      const StandardOutput output(pipe[1]);
      ::close(pipe[1]);
      written = write_whole("-", large, Replaces::anything, sink);
    }
    reader.join();
    ::close(pipe[0]);
    CHECK(written);
    CHECK(read == large);
  }
  SECTION("a reader that has gone") {
    ::close(pipe[0]);
    bool written = true;
    {
      const StandardOutput output(pipe[1]);
      written = write_whole("-", "x", Replaces::anything, sink);
    }
    ::close(pipe[1]);
    CHECK_FALSE(written);
    CHECK(message(sink) == "cannot write to the standard output: Broken pipe");
  }
  SECTION("a full device") {
    const int full = ::open("/dev/full", O_WRONLY);
    bool written = true;
    {
      const StandardOutput output(full);
      written = write_whole("-", "x", Replaces::anything, sink);
    }
    ::close(full);
    ::close(pipe[0]);
    ::close(pipe[1]);
    CHECK_FALSE(written);
    CHECK(message(sink).ends_with("No space left on device"));
  }
}

TEST_CASE("A new file is written whole where nothing is, and nothing else is touched") {
  const TemporaryFolder folder;
  DiagnosticSink sink;
  const std::string path = folder.path("new");
  CHECK(write_new(path, "first", sink));
  CHECK_FALSE(write_new(path, "second", sink));
  CHECK(message(sink) == "'" + path + "' is there already; it is left as it is");
  CHECK(bytes_of(path) == "first");
  std::filesystem::create_symlink("nowhere", folder.path("link"));
  CHECK_FALSE(write_new(folder.path("link"), "x", sink));
  CHECK_FALSE(write_new(folder.path(""), "x", sink));
  CHECK_FALSE(write_new(folder.path("none/new"), "x", sink));
  CHECK(entries(folder) == 2);
}

TEST_CASE("Of several writers of one new file just one succeeds") {
  const TemporaryFolder folder;
  const std::string path = folder.path("new");
  std::array<bool, 8> made{};
  {
    std::vector<std::jthread> writers;
    for (std::size_t i = 0; i < made.size(); ++i) {
      writers.emplace_back([&, i] {
        DiagnosticSink sink;
        made[i] = write_new(path, std::to_string(i), sink);
      });
    }
  }
  REQUIRE(std::ranges::count(made, true) == 1);
  const auto winner = std::ranges::find(made, true) - made.begin();
  CHECK(bytes_of(path) == std::to_string(winner));
  CHECK(entries(folder) == 1);
}

TEST_CASE("many new files are written whole, and none over another") {
  const TemporaryFolder folder;
  std::vector<NewFile> files;
  for (int i = 0; i < 300; ++i) {
    files.push_back({folder.path("file" + std::to_string(i)), std::string(100, 'x')});
  }
  folder.file("file200", "a person's");
  DiagnosticSink sink;
  int asked = 0;
  const auto go_on = [&] { return ++asked < 10; };
  CHECK(write_many_new(files, sink, system_disk(), go_on) == 299);
  CHECK(asked == 3);
  CHECK(message(sink) == "'" + files[200].path + "' is there already; it is left as it is");
  CHECK(sink.error_count() == 1);
  CHECK(bytes_of(files[200].path) == "a person's");
  CHECK(bytes_of(files[299].path) == files[299].bytes);
  CHECK(entries(folder) == 300);
}

TEST_CASE("who stops between many files finds whole ones, and the rest not begun") {
  const TemporaryFolder folder;
  std::vector<NewFile> files;
  for (int i = 0; i < 300; ++i) files.push_back({folder.path("file" + std::to_string(i)), "x"});
  DiagnosticSink sink;
  int asked = 0;
  const std::size_t written =
      write_many_new(files, sink, system_disk(), [&] { return asked++ == 0; });
  CHECK(written > 0);
  CHECK(written < files.size());
  CHECK(entries(folder) == written);
  CHECK_FALSE(sink.has_errors());
}
