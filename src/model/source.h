/* model/source.h: the file behind the model: bytes, nodes, places, addresses.
 *
 * Every key, value and list item that the reader met is a node.  A node knows its parent, its key
 * or position, and the byte range of its value, so that an address finds a place, a place an
 * address, and `set` replaces exactly the bytes of one value.
 */
#ifndef TS_MODEL_SOURCE_H
#define TS_MODEL_SOURCE_H

#include "base/arena.h"
#include "base/buffer.h"
#include "base/diagnostic.h"
#include "base/text.h"
#include "model/value.h"

typedef enum ts_node_form { TS_NODE_SCALAR, TS_NODE_MAPPING, TS_NODE_SEQUENCE } ts_node_form;

typedef struct ts_node_place {
    ts_node      parent; /* 0 for the root, which is node 1 */
    ts_node_form form;
    ts_text      key;                  /* decoded key; empty for a list item */
    uint32_t     position;             /* list items: from 1; else 0 */
    uint32_t     line, column;         /* of the value's first byte, from 1 */
    uint32_t     key_line, key_column; /* of the key; the value's when it has none */
    size_t       start, end;           /* bytes of the value */
    ts_text      scalar;               /* decoded scalar */
    ts_node      source; /* long form {value, source, date, confidence}: those nodes, else 0 */
    ts_node      date;
    ts_node      confidence;
    ts_node      first;              /* of a mapping or sequence: its first child, or 0 */
    ts_node      next;               /* the next child of the same parent, or 0 */
    size_t       key_start, key_end; /* bytes of the key; both 0 when it has none */
    bool         flow;               /* a mapping or sequence in brackets */
    char         quote;              /* of a scalar: ' or " or 0 */
    bool         spoiled;            /* a message was made of it; it is read as absent */
} ts_node_place;

typedef struct ts_source {
    const char    *name; /* path as given */
    ts_text        bytes;
    ts_node_place *nodes; /* [1 .. node_count]; nodes[0] stands for "nowhere" */
    uint32_t       node_count;
    uint32_t       made_count, made_room; /* nodes behind those of the file: ts_source_make */
} ts_source;

/* "drive/hp/box/clockwise/2" for a node; "" for 0 or the root. */
void ts_source_address(const ts_source *source, ts_node node, ts_buffer *out);
/* The node of an address, or 0; then *deepest (unless NULL) is the last node that exists on the
 * way. */
ts_node ts_source_find(const ts_source *source, ts_text address, ts_node *deepest);

/* The scalar that stands for a node: itself, or `value` of the long form; 0 for anything else. */
ts_node ts_source_value(const ts_source *source, ts_node node);
/* The child of a mapping with that key, or 0. */
ts_node ts_source_child(const ts_source *source, ts_node mapping, ts_text key);

/* Parts of which a file says nothing have addresses too, as if a mapping without a byte stood at
 * the end of the record that they belong to.  Room for `count` of them: */
ts_status ts_source_make_room(ts_source *source, uint32_t count, ts_arena *arena);
/* The child `key` (static text) of a mapping: that of the file, or one that is made; 0 without
 * room, or when the parent is no mapping. */
ts_node ts_source_make(ts_source *source, ts_node parent, const char *key);

#endif
