#include "output/photo_files.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "output/photo.h"

namespace furnish::test {

std::string PhotoFiles::make(const std::string& name, int width, int height,
                             const std::string& options) const {
  const std::string file = path(name);
  // Clouds at an eighth of the size, and a tile of a camera's noise: a sixth of the time.
  const auto made = run(fmt::format(
      "convert -seed 7 -size 256x256 xc:gray50 -attenuate 0.15 +noise gaussian -write mpr:noise "
      "+delete -size {2}x{3} plasma:sienna-khaki \\( -size {2}x{3} gradient:black-white \\) "
      "-compose softlight -composite -sample {0}x{1}! \\( -size {4}x{5} xc:navy \\) "
      "-gravity northwest -compose over -composite \\( -size {0}x{1} tile:mpr:noise \\) "
      "-compose hardlight -composite -depth 8 {6} '{7}'",
      width, height, (width + 7) / 8, (height + 7) / 8, width / 5, height / 3, options, file));
  INFO(made.err);
  REQUIRE(made.status == 0);
  return file;
}

PhotographPtr opened(const std::string& path) {
  DiagnosticSink sink;
  auto photo = open_photograph("photos/a.jpg", bytes_of(path), {}, sink);
  for (const Diagnostic& said : sink.all()) FAIL(said.message);
  REQUIRE(photo);
  return std::make_shared<const Photograph>(std::move(*photo));
}

std::string refused(const std::string& bytes) {
  DiagnosticSink sink;
  CHECK_FALSE(open_photograph("photos/a.jpg", bytes, {}, sink));
  REQUIRE(sink.all().size() == 1);
  const Diagnostic& said = sink.all().front();
  CHECK(said.severity == Severity::warning);
  CHECK_FALSE(said.hint.empty());
  return said.code + ": " + said.message;
}

double distance(const std::string& path, const std::string& other) {
  const auto sizes =
      words_of(run("identify -format '%wx%h\\n' '" + path + "' '" + other + "'").out);
  if (sizes.size() != 2 || sizes[0] != sizes[1]) return 1;
  // "1234.5 (0.018837)"; its status is 1 if the two are not alike, 2 if it cannot say.
  const auto said = run("compare -metric MAE '" + path + "' '" + other + "' null:");
  const auto share = matches(said.err, R"(\(([-0-9.e]+)\))");
  if (said.status == 2 || share.empty()) return 1;
  return std::stod(share.front());
}
}  // namespace furnish::test
