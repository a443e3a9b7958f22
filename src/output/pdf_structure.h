#pragma once

#include <qpdf/QPDF.hh>

#include <span>
#include <string>
#include <vector>

#include "page/frame.h"

namespace furnish {

/// What the structure of a document says in words, each list in the order of the structure tree.
struct StructureTexts {
  std::vector<std::string> figures;             ///< what stands for each figure
  std::vector<std::string> forms;               ///< what is to be written; may be empty
  std::vector<std::string> languages;           ///< of each paragraph; empty: the document's
  std::vector<std::vector<std::string>> links;  ///< where they lead, for each page
};
StructureTexts structure_texts(std::span<const Frame> pages);

/// Adds to the structure tree what cairo has no attribute for: Alt of figures, Scope of table
/// heads, Role and Desc of blanks to fill in, ID of notes (ISO 14289-1, 7.3, 7.5, 7.18.4 and 7.9),
/// Lang of paragraphs in another language than the document's (7.2). The tree is as cairo made it
/// of the same pages.
void complete_structure(QPDF&, const StructureTexts&);
}  // namespace furnish
