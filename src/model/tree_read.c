/* model/tree_read.c: what tree of keys, values and items do the bytes spell? */
#include "model/tree_read.h"

#include "model/byte_guard.h"
#include "model/duplicate_key.h"
#include "model/file_guard.h"
#include "model/scalar_decode.h"
#include "model/split_number.h"
#include "model/syntax_fault.h"

#include <libfyaml.h>
#include <string.h>

/* A mapping or sequence that is still open. */
typedef struct frame {
    ts_node  node;
    ts_node  last;    /* its latest child                    */
    bool     has_key; /* a key was met, and its value is due */
    ts_text  key;
    size_t   key_start, key_end;
    uint32_t key_line, key_column;
    uint32_t count;
} frame;

typedef struct tree {
    ts_source        *source;
    ts_arena         *arena;
    ts_diagnostics   *list;
    struct fy_parser *parser;
    uint32_t          room;
    frame             stack[TS_FILE_DEPTH_MOST + 1];
    int               depth; /* open frames */
    size_t            at;    /* where line and column stand */
    uint32_t          line, column;
    bool              stop; /* no sense in going on */
    bool              no_memory;
    bool              met_document;
} tree;

/* ---- places --------------------------------------------------------------------------------- */

/* Moves the line and column on to byte `at`; events come in the order of the file. */
static void move_to(tree *t, size_t at)
{
    const char *bytes = t->source->bytes.at;
    for (; t->at < at; t->at++) {
        if (bytes[t->at] == '\n') {
            t->line++;
            t->column = 1;
        } else if ((bytes[t->at] & 0xC0) != 0x80) {
            t->column++;
        }
    }
}

static void complain(tree *t, const ts_diagnostic *what)
{
    ts_diagnostic placed = *what;
    if (placed.line == 0) {
        placed.line   = t->line;
        placed.column = t->column;
    }
    ts_diagnose(t->list, &placed);
}

/* ---- nodes ---------------------------------------------------------------------------------- */

static bool make_room(tree *t)
{
    ts_source *source = t->source;
    if (source->node_count + 1 < t->room)
        return true;
    const uint32_t room  = t->room * 2;
    ts_node_place *nodes = TS_TAKE(t->arena, ts_node_place, room);
    if (nodes == NULL) {
        t->no_memory = true;
        return false;
    }
    memcpy(nodes, source->nodes, t->room * sizeof *nodes);
    source->nodes = nodes;
    t->room       = room;
    return true;
}

/* Hangs a new node under the innermost open mapping or sequence; 0 without memory. */
static ts_node add_node(tree *t, ts_node_form form, size_t start, size_t end)
{
    if (!make_room(t))
        return 0;
    ts_source     *source = t->source;
    const ts_node  node   = ++source->node_count;
    ts_node_place *place  = &source->nodes[node];
    move_to(t, start);
    *place = (ts_node_place){.form       = form,
                             .start      = start,
                             .end        = end,
                             .line       = t->line,
                             .column     = t->column,
                             .key_line   = t->line,
                             .key_column = t->column};
    if (t->depth == 0)
        return node;
    frame *top    = &t->stack[t->depth - 1];
    place->parent = top->node;
    if (top->has_key) {
        place->key        = top->key;
        place->key_start  = top->key_start;
        place->key_end    = top->key_end;
        place->key_line   = top->key_line;
        place->key_column = top->key_column;
        top->has_key      = false;
    } else {
        place->position = ++top->count;
    }
    if (top->last == 0)
        source->nodes[top->node].first = node;
    else
        source->nodes[top->last].next = node;
    top->last = node;
    return node;
}

static bool is_key_due(const tree *t)
{
    if (t->depth == 0)
        return false;
    const frame *top = &t->stack[t->depth - 1];
    return t->source->nodes[top->node].form == TS_NODE_MAPPING && !top->has_key;
}

/* ---- scalars -------------------------------------------------------------------------------- */

typedef struct scalar {
    ts_text text;
    size_t  start, end; /* with quotes */
    char    quote;
} scalar;

/* Text between quotes, or plain, that stands in the file exactly as it reads. */
static bool reads_as_written(ts_text raw, char quote)
{
    for (size_t i = 0; i < raw.length; i++) {
        const char byte = raw.at[i];
        if (byte == '\n' || (quote != 0 && (byte == '\\' || byte == quote)))
            return false;
    }
    return true;
}

/* Escapes can spell what the bytes of the file may not hold, and a blank line in quotes an end of
 * line. */
static void refuse_control(tree *t, const scalar *found)
{
    const bool line_end = memchr(found->text.at, '\n', found->text.length) != NULL;
    if (ts_text_sound_length(found->text) == found->text.length && !line_end)
        return;
    move_to(t, found->start);
    complain(t, &(ts_diagnostic){.code = "control-character",
                                 .says = "this text holds a control character or an end of line",
                                 .expected = "a text that fits on one line when it is read"});
}

static bool read_scalar(tree *t, struct fy_token *token, const struct fy_mark *from,
                        const struct fy_mark *to, scalar *out)
{
    const char  *bytes = t->source->bytes.at;
    const size_t start = from->input_pos, end = to->input_pos;
    switch (fy_token_scalar_style(token)) {
    case FYSS_SINGLE_QUOTED:
        out->quote = '\'';
        break;
    case FYSS_DOUBLE_QUOTED:
        out->quote = '"';
        break;
    default:
        out->quote = 0;
        break;
    }
    /* The marks of a quoted scalar stand inside of its quotes. */
    out->start = out->quote != 0 ? start - 1 : start;
    out->end   = out->quote != 0 ? end + 1 : end;
    out->text  = (ts_text){bytes + start, end - start};
    if (reads_as_written(out->text, out->quote))
        return true;
    if (!ts_scalar_decode(out->text, out->quote, t->arena, &out->text)) {
        t->no_memory = true;
        return false;
    }
    refuse_control(t, out);
    return true;
}

/* A key that a mapping waits for. */
static void take_key(tree *t, const scalar *key)
{
    frame *top = &t->stack[t->depth - 1];
    move_to(t, key->start);
    if (ts_text_is(key->text, "<<") && key->quote == 0)
        complain(t, &(ts_diagnostic){.code     = "merge-key",
                                     .columns  = 2,
                                     .says     = "a merge key stands here",
                                     .expected = "every value written out where it stands"});
    top->has_key    = true;
    top->key        = key->text;
    top->key_start  = key->start;
    top->key_end    = key->end;
    top->key_line   = t->line;
    top->key_column = t->column;
}

/* A key or item without a value: its place is behind the colon, or where the walk stands. */
static void take_nothing(tree *t)
{
    if (is_key_due(t)) {
        complain(t, &(ts_diagnostic){.code     = "missing-key-name",
                                     .says     = "a colon stands here without a key before it",
                                     .expected = "a key and a colon, such as teeth: 61"});
        t->stop = true;
        return;
    }
    const ts_text bytes = t->source->bytes;
    size_t        at    = t->at;
    if (t->depth > 0 && t->stack[t->depth - 1].has_key) {
        at = t->stack[t->depth - 1].key_end;
        while (at < bytes.length && (bytes.at[at] == ' ' || bytes.at[at] == '\t'))
            at++;
        if (at < bytes.length && bytes.at[at] == ':')
            at++;
    }
    (void)add_node(t, TS_NODE_SCALAR, at, at);
}

static void take_scalar(tree *t, struct fy_token *token, const struct fy_mark *from,
                        const struct fy_mark *to)
{
    if (token == NULL || from == NULL || to == NULL) {
        take_nothing(t);
        return;
    }
    scalar found;
    if (!read_scalar(t, token, from, to, &found))
        return;
    if (is_key_due(t)) {
        take_key(t, &found);
        return;
    }
    const ts_node node = add_node(t, TS_NODE_SCALAR, found.start, found.end);
    if (node == 0)
        return;
    t->source->nodes[node].scalar = found.text;
    t->source->nodes[node].quote  = found.quote;
}

/* ---- mappings and sequences ----------------------------------------------------------------- */

static void refuse_key_form(tree *t)
{
    complain(t, &(ts_diagnostic){.code     = "key-form",
                                 .says     = "a key is a record or a list here",
                                 .expected = "a word as the key"});
    t->stop = true;
}

static bool is_in_brackets(const tree *t)
{
    return t->depth > 0 && t->source->nodes[t->stack[t->depth - 1].node].flow;
}

static void open_container(tree *t, ts_node_form form, const struct fy_mark *from,
                           const struct fy_mark *to)
{
    const size_t start = from != NULL ? from->input_pos : t->at;
    const size_t end   = to != NULL ? to->input_pos : start;
    const bool   flow  = end > start;
    move_to(t, start);
    if (is_key_due(t)) {
        refuse_key_form(t);
        return;
    }
    if (!flow && is_in_brackets(t)) { /* [a: b]: a mapping without braces of its own */
        complain(t, &(ts_diagnostic){.code     = "key-in-list",
                                     .says     = "a key stands among the items of a list",
                                     .expected = "braces around a record, such as {teeth: 61}"});
        t->stop = true;
        return;
    }
    if (t->depth > TS_FILE_DEPTH_MOST) {
        complain(t, &(ts_diagnostic){.code     = "too-deep",
                                     .says     = "the file is nested more than 32 deep here",
                                     .expected = "at most 32 levels"});
        t->stop = true;
        return;
    }
    const ts_node node = add_node(t, form, start, end);
    if (node == 0)
        return;
    t->source->nodes[node].flow = flow;
    t->stack[t->depth++]        = (frame){.node = node};
}

static void close_container(tree *t, const struct fy_mark *to)
{
    const frame   *top   = &t->stack[--t->depth];
    ts_node_place *place = &t->source->nodes[top->node];
    if (place->flow && to != NULL)
        place->end = to->input_pos;
    else if (top->last != 0)
        place->end = t->source->nodes[top->last].end;
    if (place->form != TS_NODE_MAPPING)
        return;
    if (!ts_diagnose_duplicates(t->source, top->node, t->arena, t->list))
        t->no_memory = true;
}

static void begin_document(tree *t)
{
    if (t->met_document) {
        complain(t, &(ts_diagnostic){.code     = "second-document",
                                     .says     = "a second document begins here",
                                     .expected = "one document a file"});
        t->stop = true;
    }
    t->met_document = true;
}

static void take_event(tree *t, struct fy_event *event)
{
    const struct fy_mark *from = fy_event_start_mark(event);
    const struct fy_mark *to   = fy_event_end_mark(event);
    switch (event->type) {
    case FYET_DOCUMENT_START:
        begin_document(t);
        break;
    case FYET_SCALAR:
        take_scalar(t, event->scalar.value, from, to);
        break;
    case FYET_MAPPING_START:
        open_container(t, TS_NODE_MAPPING, from, to);
        break;
    case FYET_SEQUENCE_START:
        open_container(t, TS_NODE_SEQUENCE, from, to);
        break;
    case FYET_MAPPING_END:
    case FYET_SEQUENCE_END:
        close_container(t, to);
        break;
    case FYET_ALIAS:
        complain(t, &(ts_diagnostic){.code     = "yaml-mark",
                                     .says     = "an alias stands here",
                                     .expected = "every value written out where it stands"});
        t->stop = true;
        break;
    default:
        break;
    }
}

/* ---- the parser ----------------------------------------------------------------------------- */

static void say_nothing(struct fy_diag *diag, void *user, const char *text, size_t length)
{
    (void)diag;
    (void)user;
    (void)text;
    (void)length;
}

static ts_open_bracket innermost_bracket(const tree *t)
{
    for (int i = t->depth; i-- > 0;) {
        const ts_node_place *place = &t->source->nodes[t->stack[i].node];
        if (place->flow)
            return (ts_open_bracket){place->line, place->column, place->form == TS_NODE_MAPPING};
    }
    return (ts_open_bracket){0, 0, false};
}

static void diagnose_stream(tree *t, struct fy_diag *diag)
{
    void                 *previous = NULL;
    struct fy_diag_error *error    = fy_diag_errors_iterate(diag, &previous);
    const bool            placed   = error != NULL && error->line > 0 && error->column > 0;
    ts_diagnose_syntax(t->list, error != NULL ? error->msg : NULL, innermost_bracket(t),
                       placed ? (uint32_t)error->line : t->line,
                       placed ? (uint32_t)error->column : t->column);
}

static void run_parser(tree *t, struct fy_diag *diag)
{
    const ts_text bytes = t->source->bytes;
    if (fy_parser_set_string(t->parser, bytes.at, bytes.length) != 0) {
        t->no_memory = true;
        return;
    }
    while (!t->stop && !t->no_memory) {
        struct fy_event *event = fy_parser_parse(t->parser);
        if (event == NULL)
            break;
        const bool last = event->type == FYET_STREAM_END;
        take_event(t, event);
        fy_parser_event_free(t->parser, event);
        if (last)
            return;
    }
    if (t->stop || t->no_memory)
        return;
    diagnose_stream(t, diag);
    t->stop = true;
}

static void parse(tree *t)
{
    struct fy_diag_cfg how  = {.output_fn = say_nothing, .level = FYET_ERROR, .module_mask = ~0u};
    struct fy_diag    *diag = fy_diag_create(&how);
    if (diag == NULL) {
        t->no_memory = true;
        return;
    }
    fy_diag_set_collect_errors(diag, true);
    const struct fy_parse_cfg setup = {
        .flags = FYPCF_QUIET | FYPCF_DEFAULT_VERSION_1_2 | FYPCF_JSON_NONE, .diag = diag};
    t->parser = fy_parser_create(&setup);
    if (t->parser != NULL) {
        run_parser(t, diag);
        fy_parser_destroy(t->parser);
    } else {
        t->no_memory = true;
    }
    fy_diag_destroy(diag);
}

ts_status ts_read_tree(ts_text bytes, const char *name, ts_arena *arena, ts_diagnostics *list,
                       ts_source *source)
{
    size_t nodes         = 0;
    *source              = (ts_source){.name = name, .bytes = bytes};
    const bool     sound = ts_guard_file(bytes, list, &nodes);
    const uint32_t room  = sound ? (uint32_t)nodes + 2 : 1;
    source->nodes        = TS_TAKE(arena, ts_node_place, room);
    if (source->nodes == NULL)
        return TS_NO_MEMORY;
    if (!sound)
        return TS_NOT_UNDERSTOOD;
    tree t = {.source = source, .arena = arena, .list = list, .room = room, .line = 1, .column = 1};
    parse(&t);
    if (!t.stop && !t.no_memory)
        t.no_memory = !ts_diagnose_split_numbers(source, arena, list);
    if (t.no_memory || ts_arena_failed(arena))
        return TS_NO_MEMORY;
    return t.stop ? TS_NOT_UNDERSTOOD : TS_OK;
}
