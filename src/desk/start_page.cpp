#include "desk/start_page.h"

#include <fmt/format.h>
#include <stdlib.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <system_error>
#include <utility>

#include "output/write.h"

namespace furnish::desk {
namespace {
namespace fs = std::filesystem;

/// A page that goes on by itself, and says where to if it does not. An address has no letter that
/// HTML would take for its own.
std::string page(const std::string& address) {
  return fmt::format(
      "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>furnish</title>"
      "<meta name=\"referrer\" content=\"no-referrer\">"
      "<meta http-equiv=\"refresh\" content=\"0;url={0}\"><a href=\"{0}\">furnish</a></html>\n",
      address);
}
}  // namespace

StartPage::StartPage(std::string path, std::string folder, const Disk& disk)
    : path_(std::move(path)), folder_(std::move(folder)), disk_(&disk) {}

StartPage::StartPage(StartPage&& other) noexcept
    : path_(std::exchange(other.path_, {})),
      folder_(std::exchange(other.folder_, {})),
      disk_(other.disk_) {}

StartPage::~StartPage() {
  if (!path_.empty()) disk_->unlink(path_.c_str());
  if (!folder_.empty()) ::rmdir(folder_.c_str());
}

std::optional<StartPage> StartPage::write(const std::string& address, DiagnosticSink& sink,
                                          const Disk& disk) {
  std::error_code fault;
  const char* const runtime = std::getenv("XDG_RUNTIME_DIR");
  std::string into, made;
  if (runtime != nullptr && *runtime == '/' && fs::is_directory(runtime, fault)) {
    into = runtime;
  } else {
    made = (fs::temp_directory_path(fault) / "furnish-desk-XXXXXX").string();
    if (fault || ::mkdtemp(made.data()) == nullptr) {
      sink.error("cannot-write", {}, "there is no folder for the desk's start page");
      return std::nullopt;
    }
    into = made;
  }
  // Two desks may be open at once.
  StartPage out(fmt::format("{}/furnish-desk-{}.html", into, ::getpid()), made, disk);
  if (!write_private(out.path_, page(address), sink, disk)) return std::nullopt;
  return out;
}
}  // namespace furnish::desk
