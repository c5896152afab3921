/* model/byte_guard.h: are these bytes a text file at all? */
#ifndef TS_MODEL_BYTE_GUARD_H
#define TS_MODEL_BYTE_GUARD_H

#include "base/diagnostic.h"
#include "base/text.h"

/* Bytes before the first control character (C0, DEL, or C1 as UTF-8) that is neither a tab nor an
 * end of line, LF or CR LF; text.length when there is none. */
size_t ts_text_sound_length(ts_text text);

/* Diagnoses size, encoding, a byte order mark and control characters.  True when none was found. */
bool ts_guard_bytes(ts_text bytes, ts_diagnostics *list);

#endif
