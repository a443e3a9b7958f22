#pragma once

#include <nlohmann/json_fwd.hpp>
#include <span>
#include <string>

#include "app/desk_figure.h"
#include "app/desk_shop.h"
#include "app/desk_sides.h"
#include "desk/salon.h"
#include "spec/edit.h"

namespace furnish {

/// What was drawn for the looks before, and is shown again as it is where nothing of it changed.
struct LooksBefore {
  DeskFigure figure;
  DrawnSides sides;
};

/// What comes of a text that lies over a file: see desk::Salon::look(). `path`: the file's;
/// `pet`: whose file or visit it is, if it is either.
nlohmann::ordered_json desk_look(DeskShop&, LooksBefore&, const desk::LookOrder&,
                                 const std::string& path, const PetPath& pet);

/// Diagnostics as a page takes them. Those in the file at hand have their place and path in it, all
/// others say which file they are in.
class FaultsJson {
 public:
  using Json = nlohmann::ordered_json;
  /// Keeps the reference. `path` and `text`: of the file at hand.
  FaultsJson(const SourceSet&, std::string path, EditedText text);
  void add(std::span<const Diagnostic>, Json& faults) const;
  /// Where something stands in the file at hand: its path; null elsewhere.
  Json path(const SourceSpan&) const;
  bool here(const SourceSpan&) const;

 private:
  const SourceSet& sources_;
  std::string path_;
  EditedText text_;
};
}  // namespace furnish
