#include <catch2/catch.hpp>

#include <filesystem>

#include "app/program.h"
#include "output/pdf_rules.h"
#include "sheet/desk.h"

namespace furnish::test {
namespace {
namespace fs = std::filesystem;
}

TEST_CASE("an installed program finds its own fonts and styles, and nothing of its source",
          "[install]") {
  const TemporaryFolder folder;
  const std::string prefix = folder.path("usr");
  const auto installed =
      run("cmake --install " + test::quoted(FURNISH_BUILD_DIR) + " --prefix " + prefix);
  INFO(installed.err);
  REQUIRE(installed.status == 0);
  // A style that only the installed folder has: found there, or not at all.
  const fs::path styles = fs::path(prefix) / "share/furnish/styles";
  REQUIRE(fs::is_directory(styles));
  fs::copy_file(styles / "smooth-tidy.toml", styles / "only-installed.toml");
  put(folder, "rex.toml", "[pet]\nname = \"Rex\"\n[trim]\nstyle = \"only-installed\"\n");

  const auto card = [&](const std::string& root) {
    return run("cd / && env -i " + root + "/bin/furnish card " + folder.path("rex.toml") +
               " --on 2026-11-24 -o -");
  };
  const auto first = card(prefix);
  INFO(first.err);
  CHECK(first.status == 0);
  CHECK(first.err == "");
  CHECK(PdfFile(first.out).pages().size() == 1);

  // The whole tree may be moved, and reached by a link.
  const std::string moved = folder.path("opt");
  fs::rename(prefix, moved);
  CHECK(card(moved).out == first.out);
  fs::create_symlink(moved + "/bin/furnish", folder.path("linked"));
  const auto linked = run("cd / && env -i " + folder.path("linked") + " card " +
                          folder.path("rex.toml") + " --on 2026-11-24 -o -");
  CHECK(linked.out == first.out);

  // What is installed is the program, its data and the licences beside it.
  for (const char* path :
       {"bin/furnish", "share/furnish/fonts/OFL.txt", "share/furnish/fonts/SourceSans3-Regular.ttf",
        "share/furnish/styles/natural-tidy.toml", "share/furnish/schemas/pet.json",
        "share/doc/furnish/LICENSE", "share/man/man1/furnish.1",
        "share/bash-completion/completions/furnish", "share/zsh/vendor-completions/_furnish",
        "share/fish/vendor_completions.d/furnish.fish"}) {
    INFO(path);
    CHECK(fs::exists(fs::path(moved) / path));
  }
}
}  // namespace furnish::test
