/* model/tree_shift.c: where does every key and value stand after one value gave way to another? */
#include "model/tree_shift.h"

#include "model/file_guard.h"
#include "model/split_number.h"

#include <stdint.h>
#include <string.h>

typedef struct shift {
    const ts_source *before;
    ts_text          bytes; /* of the new text                          */
    ts_arena        *arena; /* of its tree                              */
    ts_node          node;  /* the value that changed                   */
    size_t           end;   /* of that value, in the old text           */
    uint32_t         line;  /* in which it stands                       */
    ptrdiff_t        by;    /* bytes that it grew; they are columns too */
    bool             no_memory;
} shift;

/* ---- which value ------------------------------------------------------------------------------
 */

static bool is_word_byte(char byte)
{
    return (byte >= '0' && byte <= '9') || (byte >= 'a' && byte <= 'z') ||
           (byte >= 'A' && byte <= 'Z');
}

/* A text that YAML reads as it stands, wherever a plain scalar may stand. */
static bool is_harmless(ts_text text)
{
    if (text.length == 0 || !is_word_byte(text.at[0]) || !is_word_byte(text.at[text.length - 1]))
        return false;
    for (size_t i = 0; i < text.length; i++) {
        const bool blank = text.at[i] == ' ' && text.at[i - 1] != ' ';
        if (!is_word_byte(text.at[i]) && text.at[i] != '.' && !blank)
            return false;
    }
    return true;
}

/* The plain scalar that holds the bytes [from, to), ends included; 0: there is none. */
static ts_node scalar_around(const ts_source *source, size_t from, size_t to)
{
    for (ts_node i = 1; i <= source->node_count; i++) {
        const ts_node_place *place = &source->nodes[i];
        if (place->form == TS_NODE_SCALAR && place->quote == 0 && place->start < place->end &&
            place->start <= from && to <= place->end)
            return i;
    }
    return 0;
}

static bool find_change(shift *s)
{
    const ts_text old = s->before->bytes, now = s->bytes;
    const size_t  least = old.length < now.length ? old.length : now.length;
    size_t        head = 0, tail = 0;

    while (head < least && old.at[head] == now.at[head])
        head++;
    while (tail < least - head && old.at[old.length - 1 - tail] == now.at[now.length - 1 - tail])
        tail++;
    s->node = scalar_around(s->before, head, old.length - tail);
    if (s->node == 0 || s->before->made_count > 0 || now.length > TS_FILE_BYTES_MOST)
        return false;
    const ts_node_place *place = &s->before->nodes[s->node];
    s->end                     = place->end;
    s->line                    = place->line;
    s->by                      = (ptrdiff_t)now.length - (ptrdiff_t)old.length;
    const size_t length        = (size_t)((ptrdiff_t)(place->end - place->start) + s->by);
    return is_harmless((ts_text){old.at + place->start, place->end - place->start}) &&
           is_harmless((ts_text){now.at + place->start, length});
}

/* ---- where everything stands ------------------------------------------------------------------
 */

static size_t place_of(const shift *s, size_t at)
{
    return at >= s->end ? (size_t)((ptrdiff_t)at + s->by) : at;
}

static uint32_t column_of(const shift *s, size_t at, uint32_t line, uint32_t column)
{
    return at >= s->end && line == s->line ? (uint32_t)((ptrdiff_t)column + s->by) : column;
}

/* A text of the old tree: bytes of the file, or decoded into memory that goes with that tree. */
static ts_text text_of(shift *s, ts_text text)
{
    const ts_text   old = s->before->bytes;
    const uintptr_t at = (uintptr_t)text.at, from = (uintptr_t)old.at;

    if (text.at == NULL)
        return text;
    if (at >= from && at <= from + old.length)
        return (ts_text){s->bytes.at + place_of(s, (size_t)(at - from)), text.length};
    const char *copy = ts_arena_copy(s->arena, text.at, text.length);
    s->no_memory     = s->no_memory || copy == NULL;
    return (ts_text){copy, text.length};
}

/* What reading values leaves in a node is not the tree's. */
static ts_node_place move_node(shift *s, const ts_node_place *old)
{
    ts_node_place now = *old;

    now.start      = place_of(s, old->start);
    now.end        = place_of(s, old->end);
    now.column     = column_of(s, old->start, old->line, old->column);
    now.key_start  = place_of(s, old->key_start);
    now.key_end    = place_of(s, old->key_end);
    now.key_column = old->key_end > 0 ? column_of(s, old->key_start, old->key_line, old->key_column)
                                      : now.column;
    now.key        = text_of(s, old->key);
    now.scalar     = old->form == TS_NODE_SCALAR ? text_of(s, old->scalar) : (ts_text){NULL, 0};
    now.source = now.date = now.confidence = 0;
    now.spoiled                            = false;
    return now;
}

/* Numbers that a comma cuts in two are told by who reads the text itself. */
static ts_status refuse_split(const shift *s, const char *name, ts_source *source)
{
    ts_diagnostics *quiet = ts_diagnostics_open(s->arena, name, s->bytes);

    if (quiet == NULL || !ts_diagnose_split_numbers(source, s->arena, quiet))
        return TS_NO_MEMORY;
    return ts_diagnostics_count(quiet) > 0 ? TS_NOT_UNDERSTOOD : TS_OK;
}

ts_status ts_shift_tree(const ts_source *before, ts_text bytes, const ts_file_places *places)
{
    ts_source *out = places->source;
    shift      s   = {.before = before, .bytes = bytes, .arena = places->arena};

    if (!find_change(&s))
        return TS_NOT_UNDERSTOOD;
    *out       = (ts_source){.name = places->name, .bytes = bytes};
    out->nodes = TS_TAKE(s.arena, ts_node_place, (size_t)before->node_count + 1);
    if (out->nodes == NULL)
        return TS_NO_MEMORY;
    out->node_count = before->node_count;
    for (ts_node i = 1; i <= before->node_count; i++)
        out->nodes[i] = move_node(&s, &before->nodes[i]);
    ts_node_place *changed = &out->nodes[s.node];
    changed->scalar        = (ts_text){bytes.at + changed->start, changed->end - changed->start};
    return s.no_memory ? TS_NO_MEMORY : refuse_split(&s, places->name, out);
}
