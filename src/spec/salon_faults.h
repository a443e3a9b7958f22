#pragma once

#include "model/salon.h"
#include "spec/context.h"
#include "spec/document.h"

namespace furnish {

/// After all of a salon's file was read: what has faults is marked as unread and left out, so that
/// nothing else of the salon is lost. A key or a table that nobody knows counts as what it was
/// meant for, by its name or by where such a key stands; a table that may be anything, as every
/// part that the file does not have.
void leave_out_faulty(Salon&, const Document&, const ReadContext&);
}  // namespace furnish
