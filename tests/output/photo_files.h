#pragma once

#include <string>

#include "base/diagnostic.h"
#include "output/tool.h"
#include "page/photograph.h"

namespace furnish::test {

/// Photos made by ImageMagick, in a folder of their own.
class PhotoFiles {
 public:
  /// A picture without any symmetry, of soft colours and fine grain, as `convert` writes it to
  /// `name`; `options` go before the file's name.
  std::string make(const std::string& name, int width, int height,
                   const std::string& options = {}) const;
  std::string path(const std::string& name) const { return folder_.path(name); }
  /// Writes the bytes to a file and gives its path.
  std::string keep(const std::string& name, const std::string& bytes) const {
    return folder_.file(name, bytes);
  }

 private:
  TemporaryFolder folder_;
};

/// Opens a file that must be usable; any warning fails the test.
PhotographPtr opened(const std::string& path);
/// The one warning that a file's bytes give, as "code: message".
std::string refused(const std::string& bytes);

/// How far two pictures' pixels are apart on the average, 0 to 1, as ImageMagick's `compare` says;
/// 1 if they differ in size.
double distance(const std::string& path, const std::string& other);
}  // namespace furnish::test
