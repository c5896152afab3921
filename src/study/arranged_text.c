/* Which bytes of a drive file does an arrangement replace, and by what? */
#include "study/arranged_text.h"

#include "model/edit.h"
#include "model/scalar_write.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* A text that is edited one value after another. */
typedef struct editor {
    const ts_study         *study;
    const ts_drive_problem *problem;
    const ts_arrangement   *found;
    ts_arena               *arena;
    ts_diagnostics         *list;
    ts_text                 bytes;
    ts_status               status;
    uint32_t                module; /* of the box at hand */
} editor;

/* ---- one value ------------------------------------------------------------------------------- */

static void take(editor *e, ts_buffer *out, ts_status status)
{
    if (status == TS_OK) {
        e->bytes = (ts_text){ts_arena_copy(e->arena, out->bytes, out->length), out->length};
        if (out->failed || e->bytes.at == NULL)
            status = TS_NO_MEMORY;
    }
    e->status = status;
    ts_buffer_close(out);
}

static void set(editor *e, const char *address, ts_text value)
{
    ts_buffer out;
    if (e->status != TS_OK)
        return;
    ts_buffer_open(&out, e->study->allocator);
    take(
        e, &out,
        ts_edit_set(e->bytes, e->study->name, ts_text_of(address), value, e->arena, e->list, &out));
}

static void unset(editor *e, const char *address)
{
    ts_buffer out;
    if (e->status != TS_OK)
        return;
    ts_buffer_open(&out, e->study->allocator);
    take(e, &out,
         ts_edit_unset(e->bytes, e->study->name, ts_text_of(address), e->arena, e->list, &out));
}

/* Is there such a value in the file as it was read? */
static bool stands(const editor *e, const char *address)
{
    return ts_source_find(&e->study->source, ts_text_of(address), NULL) != 0;
}

static const char *join(editor *e, const char *a, const char *b)
{
    const size_t length = strlen(a) + strlen(b) + 1;
    char        *both   = TS_TAKE(e->arena, char, length);
    if (both == NULL) {
        e->status = TS_NO_MEMORY;
        return "";
    }
    (void)snprintf(both, length, "%s%s", a, b);
    return both;
}

/* ---- values ---------------------------------------------------------------------------------- */

static void add_name(ts_buffer *out, const char *name)
{
    const ts_text text = ts_text_of(name);
    ts_scalar_write(out, text, ts_scalar_needs_quotes(text, true) ? '\'' : 0);
}

static void add_pad(const editor *e, ts_buffer *out, const char *key, int8_t accessory)
{
    if (accessory < 0)
        return;
    ts_buffer_print(out, ", %s: ", key);
    add_name(out, e->problem->problem.accessories[accessory].name);
}

/* Whole nanometres, so that 9 steps of 1 mm are 9 mm and not a hair more. */
static void add_length(ts_buffer *out, double width)
{
    ts_quantity_print(out, round(width * 1e9) / 1e9, ts_unit_named(TS_TEXT("mm"), TS_KIND_LENGTH));
}

/* The module of a second gear is written when it is not that of the box. */
static void add_step(const editor *e, ts_buffer *out, const ts_arranged_shaft *shaft)
{
    if (shaft->z_step == 0)
        return;
    ts_buffer_print(out, ", step: {teeth: %u, face: ", (unsigned)shaft->z_step);
    add_length(out, shaft->step_width);
    if (shaft->step_module != e->module) {
        ts_buffer_add(out, ", module: ");
        add_length(out, e->problem->m_n[shaft->step_module]);
    }
    ts_buffer_add(out, "}");
}

static void add_shaft(const editor *e, ts_buffer *out, const ts_arranged_shaft *shaft)
{
    ts_buffer_print(out, "{teeth: %u, face: ", (unsigned)shaft->z);
    add_length(out, shaft->width);
    add_pad(e, out, "front", shaft->front);
    add_pad(e, out, "rear", shaft->rear);
    add_step(e, out, shaft);
    ts_buffer_add(out, "}");
}

/* ---- taking away ----------------------------------------------------------------------------- */

static void clear_pad(editor *e, const char *at, const ts_pad_end *pad)
{
    if (pad->use == TS_PAD_ACCESSORY && pad->standing == TS_GIVEN)
        unset(e, at);
}

/* All pads of all boxes first, for no accessory may stand twice in between. */
static void clear_box(editor *e, const char *box, const ts_box *record)
{
    static const char *const lists[] = {"/clockwise", "/anticlockwise", "/input/branch",
                                        "/input/step"};
    for (size_t i = 0; i < sizeof lists / sizeof lists[0]; i++) {
        const char *address = join(e, box, lists[i]);
        if (stands(e, address))
            unset(e, address);
    }
    clear_pad(e, join(e, box, "/input/front"), &record->input.front);
    clear_pad(e, join(e, box, "/input/rear"), &record->input.rear);
}

/* ---- putting in ------------------------------------------------------------------------------ */

static void set_input(editor *e, const char *box, const ts_arranged_shaft *input)
{
    ts_buffer out;
    ts_buffer_open(&out, e->study->allocator);
    ts_buffer_print(&out, "%u", (unsigned)input->z);
    set(e, join(e, box, "/input/teeth"), (ts_text){out.bytes, out.length});
    ts_buffer_clear(&out);
    add_length(&out, input->width);
    set(e, join(e, box, "/input/face"), (ts_text){out.bytes, out.length});
    const int8_t on[2] = {input->front, input->rear};
    for (int face = 0; face < 2; face++) {
        if (on[face] < 0)
            continue;
        ts_buffer_clear(&out);
        add_name(&out, e->problem->problem.accessories[on[face]].name);
        set(e, join(e, box, face == 0 ? "/input/front" : "/input/rear"),
            (ts_text){out.bytes, out.length});
    }
    if (out.failed)
        e->status = TS_NO_MEMORY;
    ts_buffer_close(&out);
}

/* A length when it is another one. */
static void set_length(editor *e, const char *address, ts_measure has, double now)
{
    ts_buffer out;
    if (ts_measure_known(has) && !(has.value < now) && !(has.value > now))
        return;
    ts_buffer_open(&out, e->study->allocator);
    add_length(&out, now);
    set(e, address, (ts_text){out.bytes, out.length});
    ts_buffer_close(&out);
}

static void set_bevels(editor *e, const char *at, const ts_bevel_gears *has,
                       const ts_bevel_choice *now)
{
    ts_buffer out;
    if (now == NULL)
        return;
    if (has->teeth[0].value != now->teeth[0].value || has->teeth[1].value != now->teeth[1].value) {
        ts_buffer_open(&out, e->study->allocator);
        ts_buffer_print(&out, "[%u, %u]", (unsigned)now->teeth[0].value,
                        (unsigned)now->teeth[1].value);
        set(e, join(e, at, "/teeth"), (ts_text){out.bytes, out.length});
        ts_buffer_close(&out);
    }
    if (ts_measure_known(now->module))
        set_length(e, join(e, at, "/module"), has->module, now->module.value);
    if (ts_measure_known(now->face))
        set_length(e, join(e, at, "/face"), has->face, now->face.value);
}

/* Bevels and radial shaft when they are other ones. */
static void set_take_off(editor *e, const char *spool, const ts_spool_drive *record, size_t index,
                         uint32_t take_off)
{
    const ts_take_off_list *list = &e->problem->take_offs[index];
    if (take_off >= list->count)
        return;
    const ts_drive_take_off *now = &list->items[take_off];
    set_bevels(e, join(e, spool, "/take-off/bevels"), &record->take_off.bevels, now->spool);
    set_bevels(e, join(e, spool, "/box/bevels"), &record->box.bevels, now->box);
    if (now->tower == NULL)
        return;
    set_length(e, join(e, spool, "/tower shaft/outside"), record->tower_shaft.outside,
               now->tower->outside.value);
    if (ts_measure_known(now->tower->bore))
        set_length(e, join(e, spool, "/tower shaft/bore"), record->tower_shaft.bore,
                   now->tower->bore.value);
}

/* Where a text stands in another, or NULL. */
static const char *find(ts_text in, const char *what, size_t length)
{
    for (size_t i = 0; i + length <= in.length; i++)
        if (memcmp(in.at + i, what, length) == 0)
            return in.at + i;
    return NULL;
}

/* Blanks before the first sign of the line; SIZE_MAX when something stands before `at`. */
static size_t indent_of(ts_text bytes, const char *at)
{
    size_t count = 0;
    while (at > bytes.at && at[-1] == ' ') {
        at--;
        count++;
    }
    return at == bytes.at || at[-1] == '\n' ? count : SIZE_MAX;
}

/* Where a key of a mapping in brackets may begin a line of its own: below the other keys. */
static size_t indent_in_brackets(ts_text bytes, size_t at)
{
    size_t start = at, indent = 0;
    int    open = 0;
    while (start > 0 && bytes.at[start - 1] != '\n')
        start--;
    while (start + indent < at && bytes.at[start + indent] == ' ')
        indent++;
    for (size_t i = start; i < at; i++)
        open += (bytes.at[i] == '{') - (bytes.at[i] == '}');
    return open > 0 ? indent + 2 : indent;
}

/* In a box that is written in brackets the key gets a line of its own, and each item behind the
 * first one below it. */
static void spread_in_brackets(editor *e, const char *key, const ts_buffer *line,
                               const ts_arranged_branch *b, const char *at)
{
    const size_t at_key = (size_t)(at - e->bytes.at);
    const size_t indent = indent_in_brackets(e->bytes, at_key);
    size_t       before = at_key;
    ts_buffer    out;
    while (before > 0 && e->bytes.at[before - 1] == ' ')
        before--;
    before -= before > 0 && e->bytes.at[before - 1] == '\n' ? 1 : 0;
    ts_buffer_open(&out, e->study->allocator);
    ts_buffer_text(&out, (ts_text){e->bytes.at, before});
    ts_buffer_add(&out, "\n");
    ts_buffer_fill(&out, ' ', indent);
    ts_buffer_print(&out, "%s: [", key);
    for (uint32_t i = 0; i < b->count; i++) {
        if (i > 0) {
            ts_buffer_add(&out, ",\n");
            ts_buffer_fill(&out, ' ', indent + strlen(key) + 3);
        }
        add_shaft(e, &out, &b->shafts[i]);
    }
    ts_buffer_add(&out, "]");
    ts_buffer_text(&out, (ts_text){at + line->length, e->bytes.length - at_key - line->length});
    take(e, &out, TS_OK);
}

/* `key: [{...}, {...}]` on one line becomes a line for each item. */
static void spread(editor *e, const char *key, const ts_buffer *line, const ts_arranged_branch *b)
{
    ts_buffer   out;
    const char *at = e->status == TS_OK ? find(e->bytes, line->bytes, line->length) : NULL;
    if (at == NULL)
        return;
    if (indent_of(e->bytes, at) == SIZE_MAX) {
        spread_in_brackets(e, key, line, b, at);
        return;
    }
    const size_t indent = indent_of(e->bytes, at) + 2;
    const size_t before = (size_t)(at - e->bytes.at);
    ts_buffer_open(&out, e->study->allocator);
    ts_buffer_text(&out, (ts_text){e->bytes.at, before});
    ts_buffer_print(&out, "%s:", key);
    for (uint32_t i = 0; i < b->count; i++) {
        ts_buffer_add(&out, "\n");
        ts_buffer_fill(&out, ' ', indent);
        ts_buffer_add(&out, "- ");
        add_shaft(e, &out, &b->shafts[i]);
    }
    ts_buffer_text(&out, (ts_text){at + line->length, e->bytes.length - before - line->length});
    take(e, &out, TS_OK);
}

static void set_branch(editor *e, const char *box, const char *key, const ts_arranged_branch *b)
{
    ts_buffer line;
    if (b->count == 0)
        return;
    ts_buffer_open(&line, e->study->allocator);
    ts_buffer_print(&line, "%s: [", key);
    for (uint32_t i = 0; i < b->count; i++) {
        ts_buffer_add(&line, i > 0 ? ", " : "");
        add_shaft(e, &line, &b->shafts[i]);
    }
    ts_buffer_add(&line, "]");
    const size_t skip = strlen(key) + 2;
    if (line.failed)
        e->status = TS_NO_MEMORY;
    else
        set(e, join(e, join(e, box, "/"), key), (ts_text){line.bytes + skip, line.length - skip});
    spread(e, key, &line, b);
    ts_buffer_close(&line);
}

static void set_box(editor *e, const char *spool, const ts_spool_drive *record, size_t index)
{
    const ts_arranged_box *found = &e->found->boxes[index];
    const ts_arrange_box  *frame = &e->problem->problem.boxes[index];
    const char            *box   = join(e, spool, "/box");
    if (!found->present)
        return;
    e->module = frame->choices[found->choice].module;
    set_take_off(e, spool, record, index, frame->choices[found->choice].take_off);
    set_length(e, join(e, box, "/gears/module"), record->box.gears.module,
               e->problem->m_n[e->module]);
    set_input(e, box, &found->input);
    set_branch(e, box, "clockwise", &found->branches[0]);
    set_branch(e, box, "anticlockwise", &found->branches[1]);
}

/* ---- the file -------------------------------------------------------------------------------- */

static const char *spool_address(editor *e, size_t index)
{
    const ts_drive *drive = &e->study->drive;
    const int32_t   spool = drive->drive[e->problem->tapped[index]].spool;
    return join(e, "drive/", drive->spools[spool].name);
}

ts_status ts_arranged_text(const ts_study *study, const ts_drive_problem *problem,
                           const ts_arrangement *found, ts_arena *arena, ts_diagnostics *list,
                           ts_text *bytes)
{
    editor       e     = {.study   = study,
                          .problem = problem,
                          .found   = found,
                          .arena   = arena,
                          .list    = list,
                          .bytes   = study->bytes};
    const size_t count = problem->problem.box_count;
    for (size_t b = 0; b < count; b++)
        clear_box(&e, join(&e, spool_address(&e, b), "/box"),
                  &study->drive.drive[problem->tapped[b]].box);
    for (size_t b = 0; b < count; b++)
        set_box(&e, spool_address(&e, b), &study->drive.drive[problem->tapped[b]], b);
    *bytes = e.bytes;
    return e.status;
}
