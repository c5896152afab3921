/* model/edit_plan.h: which bytes of a file give way to which others? */
#ifndef TS_MODEL_EDIT_PLAN_H
#define TS_MODEL_EDIT_PLAN_H

#include "base/buffer.h"
#include "model/source.h"

/* bytes[from, to) become `text`. */
typedef struct ts_edit_plan {
    const ts_source *source;
    size_t           from, to;
    ts_buffer        text;
    ts_node          at; /* the node that messages point to */
    /* Set when there is no such edit: */
    const char *code;
    const char *says;
    const char *expected;
    const char *nearest;
} ts_edit_plan;

/* The value at `node` becomes `value`. */
bool ts_plan_replacement(ts_edit_plan *plan, ts_node node, ts_text value);
/* What stands at `node` goes. */
bool ts_plan_removal(ts_edit_plan *plan, ts_node node);
/* Below `deepest`, `words` are added: a key or position, or a key and the first key in it. */
bool ts_plan_addition(ts_edit_plan *plan, ts_node deepest, ts_text words, ts_text value);

/* The item at `item` takes the place `to`, from 1, of its list; those between move up. */
bool ts_plan_move(ts_edit_plan *plan, ts_node item, uint32_t to);

/* All of them return this after setting the reason. */
bool ts_plan_refuse(ts_edit_plan *plan, const char *code, const char *says, const char *expected);

/* Does the node stand in brackets of a parent? */
bool ts_node_in_brackets(const ts_source *source, ts_node node);
/* Is the value given as it is to be written: in quotes or brackets? */
bool ts_value_is_written(ts_text value);

/* Where lines begin and end: the first byte of the line of `at`; the byte of its line end, or the
 * length of the file; and that byte after a CR before it. */
size_t ts_line_start(ts_text bytes, size_t at);
size_t ts_line_end(ts_text bytes, size_t at);
/* "\r\n" when the file's first line ends so, else "\n". */
const char *ts_line_ending(ts_text bytes);
/* Where the entry of a node begins: its key, its dash, or in brackets the item itself. */
size_t ts_entry_start(const ts_source *source, ts_node node);

#endif
