#include "output/write.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <deque>
#include <filesystem>
#include <memory>
#include <optional>
#include <system_error>

#include "output/own_files.h"
#include "output/temporary_file.h"
#include "output/write_stream.h"

namespace furnish {
namespace {
/// What a file has come to that was to be written.
struct Written {
  Errno fault = 0;
  /// It is there, but the device has not said that its name would survive a power cut.
  Errno unconfirmed = 0;
};

/// So that the new name, too, survives a power cut. A folder that may not be read cannot be synced.
Errno sync_folder(const Disk& disk, const std::filesystem::path& folder) {
  const Descriptor opened(disk, disk.open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0));
  return opened.open() ? sync(disk, opened.get()) : 0;
}

std::filesystem::path folder_of(const std::filesystem::path& target) {
  return target.has_parent_path() ? target.parent_path() : std::filesystem::path(".");
}

/// Whether the name, too, is made safe at once.
enum class Names : std::uint8_t { safe, later };

/// `filled`: the new file, if its bytes are on the disk already.
Written replace_whole(const Disk& disk, const std::filesystem::path& target,
                      const struct stat* existing, std::string_view bytes,
                      TemporaryFile* filled = nullptr, Names names = Names::safe) {
  // Renaming needs no right to the old file; its owner wrote-protected it for a reason.
  if (existing != nullptr && disk.faccessat(target.c_str(), W_OK) != 0) return {errno};
  std::optional<TemporaryFile> fresh;
  Errno fault = 0;
  if (filled == nullptr) {
    filled = &fresh.emplace(disk, folder_of(target), existing);
    fault = filled->fill(bytes);
  } else {
    fault = filled->fault();
    if (fault == 0 && existing != nullptr) fault = filled->take_permissions(*existing);
  }
  if (fault == 0) fault = filled->replace(target);
  if (fault != 0) return {fault};
  return {0, names == Names::safe ? sync_folder(disk, folder_of(target)) : 0};
}

/// For file systems without links, as of memory cards.
Errno create_exclusively(const Disk& disk, const std::filesystem::path& target,
                         std::string_view bytes) {
  Descriptor file(disk, disk.open(target.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
  if (!file.open()) return errno;
  Errno fault = write_all(disk, file.get(), bytes);
  if (fault == 0) fault = sync(disk, file.get());
  const Errno at_close = file.close();
  if (fault == 0) fault = at_close;
  if (fault != 0) disk.unlink(target.c_str());
  return fault;
}

Written create_whole(const Disk& disk, const std::filesystem::path& target,
                     std::string_view bytes) {
  struct stat status {};
  if (disk.lstat(target.c_str(), &status) == 0) return {EEXIST};
  TemporaryFile file(disk, folder_of(target), nullptr);
  Errno fault = file.fill(bytes);
  if (fault == 0) {
    fault = file.become(target);
    if (fault == EPERM || fault == ENOTSUP || fault == EINVAL)
      fault = create_exclusively(disk, target, bytes);
  }
  if (fault != 0) return {fault};
  return {0, sync_folder(disk, folder_of(target))};
}

/// Why a path may not be written to; empty: it may.
std::string_view kept_for_its_owner(const std::string& path, const struct stat& there,
                                    Replaces replaces) {
  if (replaces == Replaces::edited) {
    return S_ISREG(there.st_mode) ? "" : "is a link or no file, and is never written through";
  }
  if (S_ISLNK(there.st_mode)) return "is a link, and a sheet is never written through one";
  if (S_ISREG(there.st_mode) && !is_own_file(path)) {
    return "is there already, and is no sheet that furnish wrote and nobody changed";
  }
  return {};
}

Written write_to_path(const Disk& disk, const std::string& path, std::string_view bytes,
                      TemporaryFile* filled, Names names) {
  if (takes_a_stream(disk, path)) return {write_directly(disk, path, bytes)};
  struct stat status {};
  if (disk.lstat(path.c_str(), &status) != 0) {
    return errno == ENOENT ? replace_whole(disk, path, nullptr, bytes, filled, names)
                           : Written{errno};
  }
  if (S_ISDIR(status.st_mode)) return {EISDIR};
  // Moving a file onto a link replaces the link, not what it names.
  return replace_whole(disk, path, S_ISREG(status.st_mode) ? &status : nullptr, bytes, filled,
                       names);
}

bool to_standard_output(const std::string& path) {
  return path == "-" || path == "/dev/stdout";
}

bool report(const std::string& path, Written written, DiagnosticSink& sink) {
  if (written.unconfirmed != 0) {
    sink.warning("unconfirmed", {},
                 fmt::format("'{}' is written, but the disk has not said that it would keep it "
                             "through a power cut: {}",
                             path, std::system_category().message(written.unconfirmed)));
  }
  if (written.fault == 0) return true;
  sink.error("cannot-write", {},
             fmt::format("cannot write {}: {}",
                         to_standard_output(path) ? "to the standard output" : "'" + path + "'",
                         written.fault == EISDIR  ? "it is a folder"
                         : written.fault == ENXIO ? "nobody reads from it"
                                                  : std::system_category().message(written.fault)));
  return false;
}

/// The same of what may not be there yet.
bool report_new(const std::string& path, Written written, DiagnosticSink& sink) {
  if (written.fault != EEXIST) return report(path, written, sink);
  std::error_code ignored;
  const bool folder = std::filesystem::is_directory(path, ignored);
  sink.error("exists", {},
             fmt::format("'{}' is there already{}", path,
                         folder ? ", and is a folder" : "; it is left as it is"))
      .hint = folder ? "name the file too" : "choose another name";
  return false;
}

/// Fills all, makes them safe at once and names them. False after a fault of the disk.
bool write_some_new(std::span<const NewFile> files, DiagnosticSink& sink, const Disk& disk,
                    std::size_t& written) {
  std::deque<TemporaryFile> filled;
  Errno fault = 0;
  for (const NewFile& one : files) {
    fault = filled.emplace_back(disk, folder_of(one.path), nullptr).write(one.bytes);
    if (fault == 0) continue;
    filled.pop_back();
    break;
  }
  if (filled.empty()) return report(files.front().path, {fault}, sink);
  if (const Errno unsafe = filled.front().sync_all(); unsafe != 0) {
    return report(files.front().path, {unsafe}, sink);
  }
  for (std::size_t i = 0; i < filled.size(); ++i) {
    const std::filesystem::path target = files[i].path;
    Errno named = filled[i].become(target);
    if (named == EPERM || named == ENOTSUP || named == EINVAL) {
      named = create_exclusively(disk, target, files[i].bytes);
    }
    written += report_new(files[i].path, {named}, sink);
    if (named != 0 && named != EEXIST) return false;
  }
  return fault == 0 || report(files[filled.size()].path, {fault}, sink);
}

/// False, with an error, where what lies there may not give way.
bool may_replace(const std::string& path, Replaces replaces, DiagnosticSink& sink,
                 const Disk& disk) {
  struct stat there {};
  const bool asks =
      replaces == Replaces::edited || (replaces == Replaces::own && !takes_a_stream(disk, path));
  if (!asks || disk.lstat(path.c_str(), &there) != 0) return true;
  const std::string_view why = kept_for_its_owner(path, there, replaces);
  if (why.empty()) return true;
  auto& fault = sink.error("not-ours", {}, fmt::format("'{}' {}; it is left as it is", path, why));
  if (replaces == Replaces::own)
    fault.hint = "choose another name, or --force if it may be replaced";
  return false;
}

/// What is made on its way to an open file. Empty where making it failed, which was reported.
std::optional<Errno> made_into(const std::function<bool(const TakeBytes&)>& make,
                               const std::function<Errno(std::string_view)>& write) {
  Errno fault = 0;
  const bool made = make([&](std::string_view bytes) {
    if (fault == 0) fault = write(bytes);
    return fault == 0;
  });
  if (fault == 0 && !made) return std::nullopt;
  return fault;
}

/// To the standard output, a device or a pipe: what they took cannot be taken back, so that they
/// get nothing until all is made.
std::optional<Errno> make_directly(const Disk& disk, const std::string& path,
                                   const std::function<bool(const TakeBytes&)>& make) {
  std::string all;
  const auto keep = [&](std::string_view bytes) {
    all += bytes;
    return Errno{0};
  };
  if (const auto fault = made_into(make, keep); !fault) return std::nullopt;
  return to_standard_output(path) ? write_to_standard_output(disk, all)
                                  : write_directly(disk, path, all);
}

/// Gives a file that took long to make its name: what came to stand there meanwhile may be a
/// person's. False after an error.
bool put_in_place(TemporaryFile& made, const std::string& path, const std::string& mark_before,
                  bool was_there, Replaces replaces, DiagnosticSink& sink, const Disk& disk) {
  if (!was_there) {
    const Errno named = made.become(path);
    const bool no_links = named == EPERM || named == ENOTSUP || named == EINVAL;
    if (named != EEXIST && !no_links) return report(path, {named}, sink);
  }
  const bool same = !mark_before.empty() && file_mark(path, disk) == mark_before;
  if (!same && !may_replace(path, replaces, sink, disk)) return false;
  return report(path, {made.replace(path)}, sink);
}

bool write_whole(const std::string& path, std::string_view bytes, Replaces replaces,
                 DiagnosticSink& sink, const Disk& disk, TemporaryFile* filled, Names names) {
  if (to_standard_output(path)) return report(path, {write_to_standard_output(disk, bytes)}, sink);
  if (!may_replace(path, replaces, sink, disk)) return false;
  const bool written = report(path, write_to_path(disk, path, bytes, filled, names), sink);
  // Into a folder of a person's nobody else looks for what a killed run left.
  if (written && replaces == Replaces::edited) clear_unfinished(disk, folder_of(path).string());
  return written;
}
}  // namespace

bool write_whole(const std::string& path, std::string_view bytes, Replaces replaces,
                 DiagnosticSink& sink, const Disk& disk) {
  return write_whole(path, bytes, replaces, sink, disk, nullptr, Names::safe);
}

bool write_whole(const std::string& path, const std::function<bool(const TakeBytes&)>& make,
                 Replaces replaces, DiagnosticSink& sink, const Disk& disk) {
  if (to_standard_output(path) || takes_a_stream(disk, path)) {
    const auto fault = make_directly(disk, path, make);
    return fault && report(path, {*fault}, sink);
  }
  const std::string mark = file_mark(path, disk);
  if (!may_replace(path, replaces, sink, disk)) return false;
  struct stat there {};
  const bool exists = disk.lstat(path.c_str(), &there) == 0;
  if (exists && S_ISDIR(there.st_mode)) return report(path, {EISDIR}, sink);
  const bool file = exists && S_ISREG(there.st_mode);
  if (file && disk.faccessat(path.c_str(), W_OK) != 0) return report(path, {errno}, sink);
  TemporaryFile temporary(disk, folder_of(path), file ? &there : nullptr);
  auto fault = made_into(make, [&](std::string_view bytes) { return temporary.write(bytes); });
  if (!fault) return false;
  if (*fault == 0) fault = temporary.make_safe();
  if (*fault != 0) return report(path, {*fault}, sink);
  if (!put_in_place(temporary, path, mark, exists, replaces, sink, disk)) return false;
  return report(path, {0, sync_folder(disk, folder_of(path))}, sink);
}

FileToWrite::FileToWrite(std::string path, std::string bytes)
    : path_(std::move(path)), bytes_(std::move(bytes)) {}
FileToWrite::FileToWrite(FileToWrite&&) noexcept = default;
FileToWrite::~FileToWrite() = default;

void FileToWrite::prepare(const Disk& disk) {
  if (prepared_ || to_standard_output(path_) || takes_a_stream(disk, path_)) return;
  struct stat there {};
  const bool is_there = disk.lstat(path_.c_str(), &there) == 0;
  if (is_there && !S_ISREG(there.st_mode)) return;
  auto file = std::make_unique<TemporaryFile>(disk, folder_of(path_), is_there ? &there : nullptr);
  if (file->fill(bytes_) != ENOENT) prepared_ = std::move(file);
}

bool FileToWrite::write(Replaces replaces, DiagnosticSink& sink, const Disk& disk,
                        bool one_of_several) {
  const bool written = write_whole(path_, bytes_, replaces, sink, disk, prepared_.get(),
                                   one_of_several ? Names::later : Names::safe);
  mark_ = written && prepared_ ? prepared_->mark() : std::string();
  prepared_.reset();
  return written;
}

std::string file_mark(const std::string& path, const Disk& disk) {
  struct stat status {};
  return disk.lstat(path.c_str(), &status) == 0 && S_ISREG(status.st_mode) ? mark_of(status)
                                                                           : std::string();
}

void confirm_names(const std::string& folder, DiagnosticSink& sink, const Disk& disk) {
  const std::filesystem::path at = folder.empty() ? "." : folder;
  if (const Errno fault = sync_folder(disk, at); fault != 0) report(at.string(), {0, fault}, sink);
}

bool is_a_file(const std::string& path, const Disk& disk) {
  return !to_standard_output(path) && !takes_a_stream(disk, path);
}

bool write_new(const std::string& path, std::string_view bytes, DiagnosticSink& sink,
               const Disk& disk) {
  if (to_standard_output(path)) return write_whole(path, bytes, Replaces::own, sink, disk);
  return report_new(path, create_whole(disk, path, bytes), sink);
}

std::size_t write_many_new(std::span<const NewFile> files, DiagnosticSink& sink, const Disk& disk,
                           const std::function<bool()>& go_on) {
  constexpr std::size_t at_once = 128;  // each is an open file
  std::size_t written = 0;
  bool good = true;
  for (std::size_t i = 0; good && i < files.size() && go_on(); i += at_once) {
    const auto some = files.subspan(i, std::min(at_once, files.size() - i));
    good = write_some_new(some, sink, disk, written);
  }
  if (written == 0) return written;
  const Errno fault = sync_folder(disk, folder_of(files.front().path));
  if (fault != 0) report(folder_of(files.front().path).string(), {0, fault}, sink);
  return written;
}

bool write_private(const std::string& path, std::string_view bytes, DiagnosticSink& sink,
                   const Disk& disk) {
  struct stat owners {};
  owners.st_mode = S_IRUSR | S_IWUSR;
  TemporaryFile file(disk, folder_of(path), &owners);
  Errno fault = file.fill(bytes);
  if (fault == 0) fault = file.replace(path);
  return report(path, {fault}, sink);
}
}  // namespace furnish
