/* model/reader.h: text to model, with every error of the file in one run. */
#ifndef TS_MODEL_READER_H
#define TS_MODEL_READER_H

#include "base/arena.h"
#include "base/diagnostic.h"
#include "model/drive.h"
#include "model/source.h"
#include "towershaft/status.h"

/* Reads `bytes` (which must outlive the arena's use) as a drive file.  TS_NOT_UNDERSTOOD when any
 * diagnostic was made; the model is then not to be used.  Each diagnostic has a line and a column.
 *
 * Limits: 4 MiB, depth 32, 200 000 nodes, 10 000 box shafts, 20 000 entries inside one outermost
 * pair of brackets (libfyaml keeps all of their tokens at once); well-formed UTF-8; one document;
 * no NUL, anchors, aliases, tags, merge keys, block scalars, duplicate keys or conflict markers.
 * Within them a file takes less than 64 MB. */
ts_status ts_read_drive(ts_text bytes, const char *name, ts_arena *arena, ts_diagnostics *list,
                        ts_source *source, ts_drive *drive);

#endif
