/* model/reader.h: text to model, with every error of the file in one run. */
#ifndef TS_MODEL_READER_H
#define TS_MODEL_READER_H

#include "base/arena.h"
#include "base/diagnostic.h"
#include "model/drive.h"
#include "model/rate_file.h"
#include "model/source.h"
#include "towershaft/status.h"
#include "towershaft/study.h"

/* Reads `bytes` (which must outlive the arena's use) as a drive file.  TS_NOT_UNDERSTOOD when any
 * diagnostic was made; the model is then not to be used.  Each diagnostic has a line and a column.
 *
 * Limits: 4 MiB, depth 32, 200 000 nodes, 10 000 box shafts, 20 000 entries inside one outermost
 * pair of brackets (libfyaml keeps all of their tokens at once); well-formed UTF-8; one document;
 * no NUL, anchors, aliases, tags, merge keys, block scalars, duplicate keys or conflict markers.
 * Within them a file takes less than 64 MB. */
ts_status ts_read_drive(ts_text bytes, const char *name, ts_arena *arena, ts_diagnostics *list,
                        ts_source *source, ts_drive *drive);

/* What is read into, and what is said of it. */
typedef struct ts_file_places {
    const char     *name; /* path as given */
    ts_arena       *arena;
    ts_diagnostics *list;
    ts_source      *source;
} ts_file_places;

typedef struct ts_model {
    bool         is_rate; /* then `rate` was read, else `drive` */
    ts_drive     drive;
    ts_rate_file rate;
} ts_model;

/* As ts_read_drive, for files of the wanted kinds.  A rate file has the key `towershaft rate` at
 * its top. */
ts_status ts_read_file(ts_text bytes, ts_file_wanted wanted, const ts_file_places *places,
                       ts_model *model);

/* As ts_read_file; quicker where the text differs in one value from one that was read without an
 * error, of which `near` is the tree.  NULL: there is none. */
ts_status ts_read_file_near(ts_text bytes, const ts_source *near, ts_file_wanted wanted,
                            const ts_file_places *places, ts_model *model);

/* As ts_read_file, of a source whose nodes stand already (model/tree_read.h): those of a text that
 * was read before, with other values in some of them. */
ts_status ts_read_nodes(ts_file_wanted wanted, const ts_file_places *places, ts_model *model);

#endif
