/* model/tree_read.h: bytes to a tree of nodes, by libfyaml's event parser. */
#ifndef TS_MODEL_TREE_READ_H
#define TS_MODEL_TREE_READ_H

#include "base/arena.h"
#include "base/diagnostic.h"
#include "model/source.h"
#include "towershaft/status.h"

/* Guards the bytes (model/file_guard.h), parses them, and fills `source`.  Diagnoses what the guard
 * finds, syntax, duplicate and merge keys, keys within lists, and depth.  TS_NOT_UNDERSTOOD when
 * the tree is incomplete; after a duplicate or merge key it is complete, and TS_OK is returned. */
ts_status ts_read_tree(ts_text bytes, const char *name, ts_arena *arena, ts_diagnostics *list,
                       ts_source *source);

#endif
