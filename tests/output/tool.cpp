#include "output/tool.h"

#include <stdlib.h>
#include <sys/wait.h>

#include <array>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <sstream>

namespace furnish::test {
TemporaryFolder::TemporaryFolder() {
  std::string form = std::filesystem::temp_directory_path() / "furnish-test-XXXXXX";
  REQUIRE(::mkdtemp(form.data()) != nullptr);
  folder_ = form;
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

std::string TemporaryFolder::path(std::string_view name) const {
  return std::filesystem::path(folder_) / name;
}

std::string TemporaryFolder::file(std::string_view name, std::string_view bytes) const {
  std::ofstream(path(name), std::ios::binary) << bytes;
  return path(name);
}

std::string bytes_of(const std::string& path) {
  // Not by iterators of single bytes: a page as pixels has 35 million of them.
  const std::ifstream file(path, std::ios::binary);
  std::ostringstream out;
  out << file.rdbuf();
  return out.str();
}

std::vector<std::string> matches(const std::string& text, const std::string& pattern) {
  const std::regex form(pattern);
  std::vector<std::string> list;
  for (std::sregex_iterator it(text.begin(), text.end(), form), end; it != end; ++it) {
    list.push_back((*it)[1]);
  }
  return list;
}

std::vector<std::string> words_of(const std::string& text) {
  // The no-break space is one to people, too.
  std::istringstream in(std::regex_replace(text, std::regex("\xC2\xA0"), " "));
  return {std::istream_iterator<std::string>(in), {}};
}

ToolOutput run(const std::string& command) {
  struct Package {
    std::string_view program, package;
  };
  static constexpr std::array packages{Package{"qpdf", "qpdf"},
                                       Package{"mutool", "mupdf-tools"},
                                       Package{"xmllint", "libxml2-utils"},
                                       Package{"pdf", "poppler-utils"},
                                       Package{"convert", "imagemagick"},
                                       Package{"compare", "imagemagick"},
                                       Package{"identify", "imagemagick"},
                                       Package{"exiftool", "libimage-exiftool-perl"},
                                       Package{"LC_ALL=C ncal", "ncal"}};
  const TemporaryFolder folder;
  const std::string out = folder.path("out"), err = folder.path("err");
  const int raw = std::system(("( " + command + " ) >" + out + " 2>" + err).c_str());
  const ToolOutput result{WIFEXITED(raw) ? WEXITSTATUS(raw) : -1, bytes_of(out), bytes_of(err)};
  if (result.status == 127) {
    for (const auto& [program, package] : packages) {
      if (command.starts_with(program)) FAIL("'" << command << "' needs the package " << package);
    }
    FAIL("cannot run '" << command << "'");
  }
  // Poppler reads on where it can, with status 0: what it calls an error then, as of a stream whose
  // last row is short, is a fault of the page.
  if (command.starts_with("pdf") && result.err.find("Syntax Error") != std::string::npos) {
    FAIL_CHECK(command << " complains: " << result.err);
  }
  return result;
}
}  // namespace furnish::test
