/* model/file_guard.h: may these bytes be shown to the YAML parser at all?
 *
 * The parser keeps every token of an outermost bracketed value until it closes, so what it costs is
 * bounded here, before it runs.  One pass, no memory, linear in the length.
 */
#ifndef TS_MODEL_FILE_GUARD_H
#define TS_MODEL_FILE_GUARD_H

#include "base/diagnostic.h"
#include "base/text.h"

#define TS_FILE_BYTES_MOST   ((size_t)4 << 20)
#define TS_FILE_DEPTH_MOST   32
#define TS_FILE_NODES_MOST   200000
#define TS_FILE_BRACKET_MOST 20000 /* entries inside one outermost pair of brackets */

/* Diagnoses size, encoding, control characters, conflict markers, directives, a second document,
 * tabs that indent, anchors, aliases, tags, block scalars, complex keys, depth of brackets and
 * number of nodes.  True when none was found; then *nodes is how many nodes a sound file has. */
bool ts_guard_file(ts_text bytes, ts_diagnostics *list, size_t *nodes);

#endif
