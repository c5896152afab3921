/* model/edit.h: one value of a file replaced, added or removed; every other byte stays. */
#ifndef TS_MODEL_EDIT_H
#define TS_MODEL_EDIT_H

#include "base/arena.h"
#include "base/buffer.h"
#include "base/diagnostic.h"
#include "base/text.h"
#include "model/source.h"
#include "towershaft/status.h"

/* Puts `value` at `address` and appends the whole new file to `out`.
 *
 * address  of a value that stands in the file (of its `value` in long form); or of a key, of a list
 *          item behind the last, or of both a record and its first key, that do not
 * value    what the value is to read as; quotes are written where it needs them.  A value in quotes
 *          or, for records and lists, in brackets is written as it is given.
 *
 * What replaces a value keeps its quotes; what is added is written in the manner of its neighbours,
 * behind the last of them.  The line ends of the file are kept.
 *
 * Returns TS_NOT_UNDERSTOOD, and messages at the place of the value, when the file cannot be
 * parsed, when there is no such place, or when the new file would have errors that the old one has
 * not; `out` is then as it was. */
ts_status ts_edit_set(ts_text bytes, const char *name, ts_text address, ts_text value,
                      ts_arena *arena, ts_diagnostics *list, ts_buffer *out);

/* The same without the key or item at `address`; a comment on its own lines goes with it.  The only
 * key of a record cannot be removed by itself. */
ts_status ts_edit_unset(ts_text bytes, const char *name, ts_text address, ts_arena *arena,
                        ts_diagnostics *list, ts_buffer *out);

/* The list item at `address` takes the place `place`, from 1, of its list; those between move up
 * and every comment stays where it is. */
ts_status ts_edit_move(ts_text bytes, const char *name, ts_text address, uint32_t place,
                       ts_arena *arena, ts_diagnostics *list, ts_buffer *out);

/* The bytes with one edit, by the tree of them that was read already.  It is not proven that they
 * can be read: who uses them reads them.  `value` with .at NULL removes, a `place` above 0 moves.
 * Returns TS_NOT_UNDERSTOOD without a message where there is no such edit. */
ts_status ts_edit_propose(const ts_source *source, ts_text address, ts_text value, uint32_t place,
                          ts_arena *arena, ts_buffer *out);

#endif
