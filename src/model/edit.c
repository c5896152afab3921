/* model/edit.c: does an edit leave a file that can be read, and what does it look like? */
#include "model/edit.h"

#include "model/edit_plan.h"
#include "model/reader.h"
#include "model/tree_read.h"

typedef struct edit {
    ts_text         bytes;
    const char     *name;
    ts_text         address;
    ts_text         value; /* .at NULL: removal */
    ts_arena       *arena;
    ts_diagnostics *list;
    uint32_t        place; /* 0: no move */
} edit;

/* ---- messages ------------------------------------------------------------------------------- */

static ts_status say(const edit *e, const ts_source *source, ts_node node,
                     const ts_diagnostic *what, const char *prefix)
{
    const ts_node_place *place  = &source->nodes[node];
    ts_diagnostic        placed = *what;
    ts_buffer            says;
    ts_buffer_open(&says, ts_arena_allocator(e->arena));
    ts_buffer_print(&says, "%s%s", prefix, what->says);
    placed.line       = node != 0 ? place->line : 1;
    placed.column     = node != 0 ? place->column : 1;
    placed.columns    = 1;
    placed.says       = says.bytes;
    const bool failed = says.failed;
    if (!failed)
        ts_diagnose(e->list, &placed);
    ts_buffer_close(&says);
    return failed ? TS_NO_MEMORY : TS_NOT_UNDERSTOOD;
}

/* ---- the plan ------------------------------------------------------------------------------- */

static size_t depth_of(const ts_source *source, ts_node node)
{
    size_t depth = 0;
    for (ts_node at = node; at != 0 && source->nodes[at].parent != 0; at = source->nodes[at].parent)
        depth++;
    return depth;
}

/* The words of an address behind the first `depth` of them. */
static ts_text words_after(ts_text address, size_t depth)
{
    size_t from = 0;
    for (size_t i = 0; i < address.length && depth > 0; i++) {
        if (address.at[i] == '/') {
            depth--;
            from = i + 1;
        }
    }
    return depth > 0 ? (ts_text){address.at + address.length, 0}
                     : (ts_text){address.at + from, address.length - from};
}

static bool is_one_line(ts_text value)
{
    for (size_t i = 0; i < value.length; i++) {
        const unsigned char byte = (unsigned char)value.at[i];
        if (byte < 0x20 || byte == 0x7F)
            return false;
    }
    return ts_text_utf8_length(value) == value.length;
}

static bool is_result(ts_text address)
{
    for (size_t i = 0; i < address.length; i++) {
        if (address.at[i] == ':' || address.at[i] == '@')
            return true;
    }
    return false;
}

static bool make_plan(const edit *e, ts_edit_plan *plan)
{
    ts_node       deepest;
    const ts_node node = ts_source_find(plan->source, e->address, &deepest);
    plan->at           = deepest;
    if (is_result(e->address))
        return ts_plan_refuse(plan, "not-a-value", "this is the address of a result",
                              "the address of a value of the file, without : and @");
    if (deepest == 0 || e->address.length == 0)
        return ts_plan_refuse(plan, "no-such-place", "there is nothing at this address",
                              "an address such as drive/hp/box/clockwise/2/teeth");
    if (e->value.at == NULL && node == 0)
        return ts_plan_refuse(plan, "no-such-place",
                              "there is nothing at this address to remove or move",
                              "the address of a key of the file");
    if (e->place != 0)
        return ts_plan_move(plan, node, e->place);
    if (e->value.at == NULL)
        return ts_plan_removal(plan, node);
    if (!is_one_line(e->value) || e->value.length == 0)
        return ts_plan_refuse(plan, "not-one-line", "the new value is not one line of text",
                              "one line of UTF-8 text");
    if (node != 0)
        return ts_plan_replacement(plan, node, e->value);
    return ts_plan_addition(plan, deepest, words_after(e->address, depth_of(plan->source, deepest)),
                            e->value);
}

/* ---- the proof ------------------------------------------------------------------------------ */

/* A list of its own, so that what is wrong before the edit is not said. */
static ts_status read_quietly(const edit *e, ts_text bytes, ts_diagnostics **list)
{
    ts_source source;
    ts_model  model;
    *list = ts_diagnostics_open(e->arena, e->name, bytes);
    if (*list == NULL)
        return TS_NO_MEMORY;
    const ts_file_places places = {e->name, e->arena, *list, &source};
    return ts_read_file(bytes, TS_WANT_EITHER, &places, &model);
}

/* A file with errors may be edited as long as they become fewer. */
static ts_status prove(const edit *e, const ts_edit_plan *plan, ts_text edited)
{
    ts_diagnostics *now, *before;
    ts_status       status = read_quietly(e, edited, &now);
    if (status != TS_NOT_UNDERSTOOD)
        return status;
    status = read_quietly(e, e->bytes, &before);
    if (status == TS_NO_MEMORY)
        return status;
    if (ts_diagnostics_count(now) < ts_diagnostics_count(before))
        return TS_OK;
    status = TS_NOT_UNDERSTOOD;
    for (size_t i = 0; i < ts_diagnostics_kept(now) && status == TS_NOT_UNDERSTOOD; i++)
        status = say(e, plan->source, plan->at, ts_diagnostics_at(now, i), "refused, for then ");
    return status;
}

static ts_status put_together(ts_text bytes, const ts_edit_plan *plan, ts_buffer *edited)
{
    ts_buffer_bytes(edited, bytes.at, plan->from);
    if (plan->text.length > 0)
        ts_buffer_bytes(edited, plan->text.bytes, plan->text.length);
    ts_buffer_bytes(edited, bytes.at + plan->to, bytes.length - plan->to);
    return edited->failed || plan->text.failed ? TS_NO_MEMORY : TS_OK;
}

static ts_status apply(const edit *e, const ts_edit_plan *plan, ts_buffer *out)
{
    ts_buffer edited;
    ts_buffer_open(&edited, ts_arena_allocator(e->arena));
    ts_status status = put_together(e->bytes, plan, &edited);
    if (status == TS_OK)
        status = prove(e, plan, (ts_text){edited.bytes, edited.length});
    if (status == TS_OK) {
        ts_buffer_bytes(out, edited.bytes, edited.length);
        status = out->failed ? TS_NO_MEMORY : TS_OK;
    }
    ts_buffer_close(&edited);
    return status;
}

static ts_status run(const edit *e, ts_buffer *out)
{
    ts_source       source;
    ts_diagnostics *quiet = ts_diagnostics_open(e->arena, e->name, e->bytes);
    if (quiet == NULL)
        return TS_NO_MEMORY;
    ts_status status = ts_read_tree(e->bytes, e->name, e->arena, quiet, &source);
    if (status == TS_NOT_UNDERSTOOD) {
        for (size_t i = 0; i < ts_diagnostics_kept(quiet); i++)
            ts_diagnose(e->list, ts_diagnostics_at(quiet, i));
    }
    if (ts_arena_failed(e->arena))
        return TS_NO_MEMORY;
    if (status != TS_OK)
        return status;
    ts_edit_plan plan = {.source = &source};
    ts_buffer_open(&plan.text, ts_arena_allocator(e->arena));
    if (make_plan(e, &plan)) {
        status = apply(e, &plan, out);
    } else {
        status = say(e, &source, plan.at,
                     &(ts_diagnostic){.code     = plan.code,
                                      .says     = plan.says,
                                      .expected = plan.expected,
                                      .nearest  = plan.nearest},
                     "");
    }
    ts_buffer_close(&plan.text);
    return status;
}

ts_status ts_edit_set(ts_text bytes, const char *name, ts_text address, ts_text value,
                      ts_arena *arena, ts_diagnostics *list, ts_buffer *out)
{
    if (value.at == NULL)
        value.at = "";
    return run(&(edit){bytes, name, address, value, arena, list, 0}, out);
}

ts_status ts_edit_unset(ts_text bytes, const char *name, ts_text address, ts_arena *arena,
                        ts_diagnostics *list, ts_buffer *out)
{
    return run(&(edit){bytes, name, address, {NULL, 0}, arena, list, 0}, out);
}

ts_status ts_edit_move(ts_text bytes, const char *name, ts_text address, uint32_t place,
                       ts_arena *arena, ts_diagnostics *list, ts_buffer *out)
{
    return run(&(edit){bytes, name, address, {NULL, 0}, arena, list, place}, out);
}

ts_status ts_edit_propose(const ts_source *source, ts_text address, ts_text value, uint32_t place,
                          ts_arena *arena, ts_buffer *out)
{
    const edit   e    = {source->bytes, source->name, address, value, arena, NULL, place};
    ts_edit_plan plan = {.source = source};
    ts_buffer_open(&plan.text, ts_arena_allocator(arena));
    ts_status status =
        make_plan(&e, &plan) ? put_together(source->bytes, &plan, out) : TS_NOT_UNDERSTOOD;
    if (plan.text.failed || ts_arena_failed(arena))
        status = TS_NO_MEMORY;
    ts_buffer_close(&plan.text);
    return status;
}
