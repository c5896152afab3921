/* model/tree_shift.h: the tree of a text from that of another which differs in one plain value.
 *
 * Most edits put one number in place of another.  Then nothing of the file changes but that value
 * and the places behind it, and the bytes need not be parsed anew.
 */
#ifndef TS_MODEL_TREE_SHIFT_H
#define TS_MODEL_TREE_SHIFT_H

#include "model/reader.h"

/* Fills places->source with the tree that ts_read_tree makes of `bytes` (which must outlive it),
 * from `before`, a tree as it was read from a text without an error.
 *
 * TS_NOT_UNDERSTOOD, and nothing said: the texts differ in more than one plain scalar, or in one
 * with other bytes than letters, digits, points and single blanks between them; then the bytes are
 * to be read by themselves.  TS_NO_MEMORY as anywhere. */
ts_status ts_shift_tree(const ts_source *before, ts_text bytes, const ts_file_places *places);

#endif
