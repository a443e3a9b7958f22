#include "app/output_file.h"

#include <fmt/format.h>

#include <filesystem>
#include <string_view>
#include <system_error>
#include <utility>

#include "app/salon_folder.h"
#include "app/sheet_files.h"
#include "base/text.h"
#include "output/make_folder.h"
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
std::optional<std::string> encoded(std::span<const Frame> frames, const Sides& all,
                                   const Options& options, DiagnosticSink& sink) {
  std::optional<std::string> bytes;
  switch (options.format) {
    case Format::pdf:
      bytes = to_pdf(frames, all.info, all.extras, sink);
      break;
    case Format::png:
      bytes = to_png(frames.front(), all.info, options.dpi, sink);
      break;
    case Format::svg:
      bytes = to_svg(frames.front(), all.info, sink);
      break;
    case Format::text:
      bytes.emplace();
      for (const Frame& frame : frames) *bytes += to_text(frame);
      break;
  }
  if (bytes) *bytes = sealed(*std::move(bytes), sealed_as(options.format));
  return bytes;
}

bool one_side_a_file(Format format) {
  return format == Format::png || format == Format::svg;
}
}  // namespace

bool may_be_written(const Options& options, DiagnosticSink& sink) {
  if (!lower_ascii(options.output).ends_with(".toml")) return true;
  sink.error("usage", {}, toml_is_a_persons);
  return false;
}

bool is_folder(const std::string& path) {
  std::error_code ignored;
  return path.ends_with('/') || fs::is_directory(path, ignored);
}

SheetPlace::SheetPlace(const Options& options)
    : options_(options), one_file_(!options.output.empty() && !is_folder(options.output)) {}

std::string SheetPlace::folder(const std::string& root) const {
  if (one_file_) return {};
  if (!options_.output.empty()) return options_.output;
  return path_in(root, root.empty() ? "" : "sheets");
}

std::string SheetPlace::path(const std::string& name, const std::string& root) const {
  if (one_file_) return options_.output;
  return path_in(folder(root), fmt::format("{}.{}", name, ending(options_.format)));
}

bool no_text_lacks(Workshop& shop, const DocumentInfo& info, DiagnosticSink& sink) {
  const FontSet* const fonts = shop.fonts();
  if (fonts != nullptr && !fonts->broken()) return true;
  sink.error("font-unreadable", {},
             fmt::format("{} is not written: without a font it would lack texts", info.title));
  return false;
}

std::optional<SheetFiles> files_of(const Sides& all, std::span<const SideFile> beside,
                                   const Options& options, const std::string& path,
                                   DiagnosticSink& sink) {
  auto first = encoded(all.frames, all, options, sink);
  if (!first) return std::nullopt;
  SheetFiles out;
  out.name = all.name;
  out.count = all.frames.size();
  if (options.format == Format::png) out.title = png_title(all.info);
  if (options.format == Format::svg) out.title = svg_title(all.info);
  out.sides.emplace_back(path, *std::move(first));
  for (std::size_t i = 1; one_side_a_file(options.format) && out.whole && i < out.count; ++i) {
    auto side = encoded(std::span(all.frames).subspan(i, 1), all, options, sink);
    out.whole = side.has_value();
    if (side) out.sides.emplace_back(side_path(path, i + 1), *std::move(side));
  }
  const fs::path stem = fs::path(path).replace_extension();
  for (const SideFile& file : beside) {
    out.beside.emplace_back(stem.string() + "." + file.ending,
                            sealed(file.bytes, SealedAs::calendar));
  }
  return out;
}

bool SheetWriter::have_folder(const std::string& root) {
  const std::string folder = place_.folder(root);
  // Once a run: each time would read the folder again.
  if (folder.empty() || folder == made_) return true;
  if (!make_folder(folder, shop_.sink(), shop_.disk())) return false;
  made_ = folder;
  return true;
}

bool SheetWriter::write_file(FileToWrite& file, bool one_of_several) {
  if (!may_be_written(options_, shop_.sink())) {
    console_.show_reports();
    return false;
  }
  file.prepare(shop_.disk());
  const bool written = file.write(options_.force ? Replaces::anything : Replaces::own, shop_.sink(),
                                  shop_.disk(), one_of_several);
  console_.show_reports();
  if (written) console_.say_written(file.path());
  if (written && one_of_several) unconfirmed_.insert(fs::path(file.path()).parent_path().string());
  return written;
}

bool SheetWriter::write_others(SheetFiles& all, bool one_of_several) {
  if (!is_a_file(all.sides.front().path(), shop_.disk())) {
    shop_.sink()
        .warning("one-side", {},
                 fmt::format("{} has {} sides; this is the first of them", all.name, all.count))
        .hint = "name a file or a folder for all of them, or make a PDF";
    console_.show_reports();
    return true;
  }
  for (FileToWrite& side : std::span(all.sides).subspan(1)) {
    if (!write_file(side, one_of_several)) return false;
  }
  return all.whole;
}

std::optional<std::string> SheetWriter::write(const Sides& all, const std::string& root) {
  if (!no_text_lacks(shop_, all.info, shop_.sink())) {
    console_.show_reports();
    return std::nullopt;
  }
  auto files = files_of(all, {}, options_, place_.path(all.name, root), shop_.sink());
  if (!files) {
    console_.show_reports();
    return std::nullopt;
  }
  auto written = write(*files, root);
  if (!written || !written->beside) return std::nullopt;
  return std::move(written->path);
}

std::optional<std::string> SheetWriter::write(const Sheet& sheet, std::string name,
                                              const std::string& root) {
  const std::vector<Frame> frames = sides(sheet.page);
  PdfExtras extras{{}, {}, options_.standard};
  if (frames.size() > 1) extras.outline.push_back({sheet.info.title, 0, 0});
  return write({frames, sheet.info, extras, std::move(name)}, root);
}

std::optional<SheetWriter::Wrote> SheetWriter::write(SheetFiles& all, const std::string& root,
                                                     bool one_of_several) {
  const std::string path = all.sides.front().path();
  const bool written = have_folder(root) && write_file(all.sides.front(), one_of_several);
  console_.show_reports();
  if (!written) return std::nullopt;
  const bool one_a_file = one_side_a_file(options_.format);
  if (one_a_file && all.count > 1 && !write_others(all, one_of_several)) return std::nullopt;
  Wrote out{path};
  if (!is_a_file(path, shop_.disk())) return out;
  if (one_a_file) {
    // Under a name of the person's own the next one may be another sheet's.
    remove_sides_after(path, all.count, place_.named_by_person() ? all.title : std::string(),
                       shop_.sink(), shop_.disk());
    console_.show_reports();
  }
  for (FileToWrite& file : all.beside) {
    out.beside = write_file(file, one_of_several) && out.beside;
  }
  return out;
}

void SheetWriter::confirm() {
  for (const std::string& folder : std::exchange(unconfirmed_, {})) {
    confirm_names(folder, shop_.sink(), shop_.disk());
  }
  console_.show_reports();
}
}  // namespace furnish
