#pragma once

#include "output/pdf_standard.h"
#include "output/pdf_structure.h"

namespace furnish {

/// "1.7" or "2.0": the version of PDF that a standard is written in.
const char* version_of(PdfStandard);

/// Makes of a finished file of PDF 1.7 one of PDF 2.0, as PDF/UA-2 and PDF/A-4 want it: elements
/// are of the namespace of PDF 2.0 (ISO 32000-2, 14.7.4; ISO 14289-2, 8.2.4), notes are FENotes
/// (8.2.5.14), a list whose items have labels says of which kind they are (8.2.5.25), blanks say in
/// words what is drawn there (8.5.1), links and the outline lead to elements (8.8), and nothing is
/// said in an information dictionary (ISO 19005-4, 6.1.3).
void make_two(DrawnPdf&, const KnownElements&);
}  // namespace furnish
