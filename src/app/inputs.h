#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/files.h"
#include "base/fnv.h"

namespace furnish {

/// A sum of bytes that tells contents apart (see base/fnv.h): who may write the record may write
/// the sheets.
class Sum {
 public:
  void add(std::string_view bytes);
  /// With its end, so that "ab", "c" is not "a", "bc".
  void add_word(std::string_view bytes);
  std::string text() const;  ///< 16 hexadecimal digits

 private:
  std::uint64_t value_ = fnv_basis;
};

/// What a sheet was made from, and what tells whether it is the same still.
struct Input {
  enum class Kind : char {
    contents = 'c',  ///< a file's bytes, or why they cannot be had
    presence = 'e',  ///< whether there is something
    names = 'l',     ///< the names of a folder's TOML files
    all = 'a',       ///< those, and the contents of each
    photo = 'p',     ///< where a file lies, its number, size and times: it is large
    young = 'y'      ///< of a photo, its bytes too: it may change again without another time
  };
  Kind kind = Kind::contents;
  std::string path;
  std::string mark;
};
/// The mark as it is now; of a file's contents as who reads at most so many bytes of it has them.
std::string mark_now(Input::Kind, const std::string& path, const Files&,
                     std::size_t most = Files::largest);

/// Passes everything on to other files, and notes with its mark what was asked for since it was
/// asked last. For one thread.
class InputFiles final : public Files {
 public:
  explicit InputFiles(const Files& files) : files_(files) {}
  FileContent read_up_to(const std::string& path, std::size_t most) const override;
  bool exists(const std::string& path) const override;
  std::string place(const std::string& path) const override;
  FolderContent list(const std::string& folder) const override;

  struct Noted {
    std::vector<Input> inputs;
    /// False: a file changed meanwhile.
    bool sure = true;
  };
  /// `apart`: paths whose inputs are not put together with those of their folder.
  Noted take(const std::map<std::string, std::string>& apart);

 private:
  void note(Input) const;

  const Files& files_;
  mutable std::map<std::string, Input> noted_;                     ///< by path
  mutable std::map<std::string, std::vector<std::string>> names_;  ///< of folders
  mutable bool sure_ = true;
};
}  // namespace furnish
