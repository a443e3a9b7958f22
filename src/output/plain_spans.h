#pragma once

class QPDF;

namespace furnish {
/// Takes out of a PDF's structure what says nothing: spans of a paragraph's text without attributes
/// of their own, which cairo needs wherever other parts of the paragraph have some. Their text
/// becomes the paragraph's.
void fold_plain_spans(QPDF&);
}  // namespace furnish
