#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <string_view>

#include "base/diagnostic.h"
#include "output/disk.h"

namespace furnish {
class TemporaryFile;

/// What may give way to a new file of the same name: a sheet that furnish wrote and nobody changed
/// since (see seal.h), or anything, where the person asked for it; or the person's own file, which
/// they changed by this program: a regular file, and no link.
enum class Replaces : std::uint8_t { own, anything, edited };

/// Writes the whole of `bytes`, or leaves what was there. "-" is the standard output. A new or
/// regular file is written beside its place and moved there once it is safely on the disk; an
/// existing file keeps its permissions. Never through a symbolic link: one is an error
/// ("not-ours"), as is a file that may not give way; where anything may, the link itself does. A
/// device or a pipe is written to directly. False iff an error was reported, in words for a person;
/// then no half-written and no temporary file is left (a device or pipe may have taken a part).
/// A file that is there but may not outlive a power cut is a warning ("unconfirmed").
bool write_whole(const std::string& path, std::string_view bytes, Replaces, DiagnosticSink& sink,
                 const Disk& disk = system_disk());
/// Takes the next bytes of a file; false if they could not be taken, and no more need come.
using TakeBytes = std::function<bool(std::string_view)>;
/// The same of what is made while it is written, so that no more than a stretch of it is held, but
/// for a device or a pipe, which get it whole: `make` hands the bytes on, and is false iff it
/// reported an error, after which there is no file.
bool write_whole(const std::string& path, const std::function<bool(const TakeBytes&)>& make,
                 Replaces, DiagnosticSink& sink, const Disk& disk = system_disk());
/// A file that is to be written as write_whole() does, in two steps, so that the disk may be waited
/// for in one thread while another goes on.
class FileToWrite {
 public:
  FileToWrite(std::string path, std::string bytes);
  FileToWrite(FileToWrite&&) noexcept;
  FileToWrite& operator=(FileToWrite&&) = delete;
  ~FileToWrite();
  const std::string& path() const { return path_; }

  /// Puts the bytes safely on the disk, without a name, unless that was done already. What cannot
  /// be done so, as in a folder that is not there yet, is left to write().
  void prepare(const Disk&);
  /// write_whole(). One of several leaves its name to confirm_names().
  bool write(Replaces, DiagnosticSink&, const Disk&, bool one_of_several);
  /// file_mark() of what was written; empty if that is not known.
  const std::string& mark() const { return mark_; }

 private:
  std::string path_, bytes_, mark_;
  std::unique_ptr<TemporaryFile> prepared_;
};
/// Waits until the names of files that were written into a folder would survive a power cut; a
/// warning ("unconfirmed") if that cannot be said.
void confirm_names(const std::string& folder, DiagnosticSink&, const Disk&);
/// What tells a file that was written from whatever else comes to stand there, or is made of it;
/// empty where there is no file.
std::string file_mark(const std::string& path, const Disk&);
/// Whether a path is a file or will be one; false for the standard output, a device or a pipe,
/// beside which nothing lies.
bool is_a_file(const std::string& path, const Disk& disk = system_disk());
/// The same for a path where nothing may be yet: whatever is there, a link too, is left as it is
/// and is an error ("exists"), also if it comes to be there meanwhile. "-" is the standard output.
bool write_new(const std::string& path, std::string_view bytes, DiagnosticSink& sink,
               const Disk& disk = system_disk());
/// A file that is to be made where nothing is.
struct NewFile {
  std::string path, bytes;
};
/// write_new() of many files of one folder, in much less time: the content of 128 is made safe by
/// one call, before the first of them gets its name. After a fault of the disk no more are begun;
/// where something is there already, the others still are. `go_on` is asked before each 128. How
/// many were written.
std::size_t write_many_new(std::span<const NewFile>, DiagnosticSink& sink, const Disk& disk,
                           const std::function<bool()>& go_on);
/// A file that nobody but its owner may read, whatever is there of that name.
bool write_private(const std::string& path, std::string_view bytes, DiagnosticSink& sink,
                   const Disk& disk = system_disk());
}  // namespace furnish
