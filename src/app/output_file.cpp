#include "app/output_file.h"

#include <fmt/format.h>

#include <filesystem>
#include <string_view>
#include <system_error>

#include "app/salon_folder.h"
#include "app/sheet_files.h"
#include "output/png.h"
#include "output/seal.h"
#include "output/svg.h"
#include "output/write.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

std::string_view ending(Format format) {
  switch (format) {
    case Format::pdf:
      return "pdf";
    case Format::png:
      return "png";
    case Format::svg:
      return "svg";
    case Format::text:
      break;
  }
  return "txt";
}

SealedAs sealed_as(Format format) {
  switch (format) {
    case Format::pdf:
      return SealedAs::pdf;
    case Format::png:
      return SealedAs::png;
    case Format::svg:
      return SealedAs::svg;
    case Format::text:
      break;
  }
  return SealedAs::text;
}
}  // namespace

bool is_folder(const std::string& path) {
  std::error_code ignored;
  return path.ends_with('/') || fs::is_directory(path, ignored);
}

std::optional<std::string> SheetWriter::place(const std::string& name, const std::string& root) {
  const std::string file = fmt::format("{}.{}", name, ending(options_.format));
  if (!options_.output.empty() && !is_folder(options_.output)) return options_.output;
  const std::string folder =
      options_.output.empty() ? path_in(root, root.empty() ? "" : "sheets") : options_.output;
  // Once a run: each time would read the folder again.
  if (!folder.empty() && folder != made_) {
    if (!make_folder(folder, shop_.sink(), shop_.disk())) return std::nullopt;
    made_ = folder;
  }
  return path_in(folder, file);
}

std::optional<std::string> SheetWriter::encoded(const std::vector<Frame>& frames,
                                                const DocumentInfo& info, const PdfExtras& extras) {
  std::optional<std::string> bytes;
  // What was kept of earlier pages may lack its text too.
  if (const FontSet* const fonts = shop_.fonts(); fonts == nullptr || fonts->broken()) {
    shop_.sink().error("font-unreadable", {},
                       fmt::format("{} is not written: without a font it "
                                   "would lack texts",
                                   info.title));
    return bytes;
  }
  switch (options_.format) {
    case Format::pdf:
      bytes = to_pdf(frames, info, extras, shop_.sink());
      break;
    case Format::png:
      bytes = to_png(frames.front(), info, options_.dpi, shop_.sink());
      break;
    case Format::svg:
      bytes = to_svg(frames.front(), info, shop_.sink());
      break;
    case Format::text:
      bytes.emplace();
      for (const Frame& frame : frames) *bytes += to_text(frame);
      break;
  }
  if (bytes) *bytes = sealed(*std::move(bytes), sealed_as(options_.format));
  return bytes;
}

bool SheetWriter::write_file(const std::string& path, const std::string& bytes) {
  const bool written = write_whole(path, bytes, options_.force ? Replaces::anything : Replaces::own,
                                   shop_.sink(), shop_.disk());
  console_.show_reports();
  if (written) console_.say_written(path);
  return written;
}

bool SheetWriter::write_others(const Sides& all, const std::string& first) {
  if (!is_a_file(first, shop_.disk())) {
    shop_.sink()
        .warning(
            "one-side", {},
            fmt::format("{} has {} sides; this is the first of them", all.name, all.frames.size()))
        .hint = "name a file or a folder for all of them, or make a PDF";
    console_.show_reports();
    return true;
  }
  for (std::size_t i = 1; i < all.frames.size(); ++i) {
    const auto bytes = encoded({all.frames[i]}, all.info, {});
    if (!bytes || !write_file(side_path(first, i + 1), *bytes)) {
      console_.show_reports();
      return false;
    }
  }
  return true;
}

std::optional<std::string> SheetWriter::write(const Sides& all, const std::string& root) {
  const auto bytes = encoded(all.frames, all.info, all.extras);
  const auto path = bytes ? place(all.name, root) : std::nullopt;
  const bool written = path && write_file(*path, *bytes);
  console_.show_reports();
  if (!written) return std::nullopt;
  const bool one_a_file = options_.format == Format::png || options_.format == Format::svg;
  if (one_a_file && all.frames.size() > 1 && !write_others(all, *path)) return std::nullopt;
  if (one_a_file && is_a_file(*path, shop_.disk())) {
    remove_sides_after(*path, all.frames.size(), shop_.sink(), shop_.disk());
    console_.show_reports();
  }
  return path;
}
}  // namespace furnish
