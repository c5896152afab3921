/* support/same_tree.h: in what do two trees of one text differ? */
#ifndef TS_SUPPORT_SAME_TREE_H
#define TS_SUPPORT_SAME_TREE_H

#include "model/source.h"

#include <string.h>

/* Equal texts, and both in the file at the same place, or both elsewhere. */
static inline bool same_tree_text(ts_text file, ts_text a, ts_text b)
{
    const uintptr_t from = (uintptr_t)file.at, at = (uintptr_t)b.at;

    if (a.length != b.length || (a.at == NULL) != (b.at == NULL))
        return false;
    if (a.length > 0 && memcmp(a.at, b.at, a.length) != 0)
        return false;
    return at < from || at > from + file.length || a.at == b.at;
}

static inline const char *same_node(ts_text file, const ts_node_place *a, const ts_node_place *b)
{
    if (!same_tree_text(file, a->key, b->key))
        return "key";
    if (!same_tree_text(file, a->scalar, b->scalar))
        return "scalar";
    if (a->parent != b->parent || a->first != b->first || a->next != b->next)
        return "kin";
    if (a->form != b->form || a->position != b->position)
        return "form, position";
    if (a->line != b->line || a->column != b->column)
        return "line, column";
    if (a->key_line != b->key_line || a->key_column != b->key_column)
        return "line, column of the key";
    if (a->start != b->start || a->end != b->end)
        return "bytes";
    if (a->key_start != b->key_start || a->key_end != b->key_end)
        return "bytes of the key";
    if (a->source != b->source || a->date != b->date || a->confidence != b->confidence)
        return "long form";
    return a->flow != b->flow || a->quote != b->quote || a->spoiled != b->spoiled ? "signs" : NULL;
}

/* The first member in which a node differs; NULL: none does. */
static inline const char *same_tree(const ts_source *a, const ts_source *b)
{
    if (strcmp(a->name, b->name) != 0 || a->bytes.at != b->bytes.at ||
        a->bytes.length != b->bytes.length)
        return "file";
    if (a->node_count != b->node_count || a->made_count != b->made_count)
        return "count";
    for (ts_node i = 1; i <= b->node_count; i++) {
        const char *differs = same_node(b->bytes, &a->nodes[i], &b->nodes[i]);
        if (differs != NULL)
            return differs;
    }
    return NULL;
}

#endif
