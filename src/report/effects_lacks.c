/* In which ways can a part not fail, and why?  So no cell of the matrix is left without a word. */
#include "report/effects_report.h"

#include "report/check_page.h"

#include <string.h>

static uint32_t count_of(const ts_effects *effects, ts_failing of)
{
    const ts_train *train = effects->motion->train;

    return of == TS_FAILING_MESH    ? train->mesh_count
           : of == TS_FAILING_SHAFT ? train->shaft_count
                                    : train->pad_count;
}

static const char *because(const ts_effects *effects, int mode, uint32_t at)
{
    const ts_failure one = {(ts_failure_mode)mode, at};

    return ts_failure_lacking(effects->drive, effects->motion->train, effects->select->necks, one);
}

static bool is_for(const ts_effects *effects, int mode, uint32_t at, const char *reason)
{
    const char *here = because(effects, mode, at);

    return here != NULL && strcmp(here, reason) == 0;
}

/* For how many modes of its kind does a part hear this reason? */
static int modes_for(const ts_effects *effects, ts_failing of, uint32_t at, const char *reason)
{
    int count = 0;

    for (int mode = 0; mode < TS_FAILURE_MODES; mode++)
        count += ts_failing_of((ts_failure_mode)mode) == of && is_for(effects, mode, at, reason);
    return count;
}

/* One reason, with all the parts and modes that it is for: the same modes of each of the parts. */
typedef struct lack {
    ts_failing  of;
    uint32_t    first; /* part */
    const char *reason;
} lack;

static void add_modes(const ts_effects *effects, const lack *one, ts_buffer *out)
{
    int count = 0;

    for (int mode = 0; mode < TS_FAILURE_MODES; mode++)
        if (ts_failing_of((ts_failure_mode)mode) == one->of &&
            is_for(effects, mode, one->first, one->reason))
            ts_buffer_print(out, "%s%s", count++ > 0 ? ", " : "",
                            ts_failure_name((ts_failure_mode)mode));
}

static void add_parts(const ts_effects *effects, const lack *one, ts_buffer *out)
{
    for (uint32_t at = one->first; at < count_of(effects, one->of); at++) {
        if (modes_for(effects, one->of, at, one->reason) == 0)
            continue;
        ts_buffer_add(out, at > one->first ? "; " : "");
        ts_effects_part(effects, one->of, at, out);
    }
}

/* Was the reason told of a part before this one, or for a mode before this one? */
static bool is_told(const ts_effects *effects, int mode, const lack *one)
{
    for (uint32_t at = 0; at < one->first; at++)
        if (modes_for(effects, one->of, at, one->reason) > 0)
            return true;
    for (int before = 0; before < mode; before++)
        if (ts_failing_of((ts_failure_mode)before) == one->of &&
            is_for(effects, before, one->first, one->reason))
            return true;
    return false;
}

static void each(const ts_effects *effects, void (*tell)(const ts_effects *, const lack *, void *),
                 void             *context)
{
    for (int mode = 0; mode < TS_FAILURE_MODES; mode++) {
        const ts_failing of = ts_failing_of((ts_failure_mode)mode);
        for (uint32_t at = 0; at < count_of(effects, of); at++) {
            const lack one = {of, at, because(effects, mode, at)};
            if (one.reason != NULL && !is_told(effects, mode, &one))
                tell(effects, &one, context);
        }
    }
}

static void tell_page(const ts_effects *effects, const lack *one, void *context)
{
    ts_page  *page = context;
    ts_buffer text;

    ts_buffer_open(&text, page->out->allocator);
    add_modes(effects, one, &text);
    ts_buffer_print(&text, ": %s: ", one->reason);
    add_parts(effects, one, &text);
    ts_buffer_add(page->out, "  ");
    ts_page_wrap_made(page, &text, 4, 2);
}

void ts_effects_lacks_page(const ts_effects *effects, ts_page *page)
{
    ts_page_heading(page,
                    "Ways in which a part cannot fail, and why (teeth and jets are of meshes; "
                    "shearing, bearings and jamming of shafts; the rest of pads)");
    each(effects, tell_page, page);
}

static void tell_cells(const ts_effects *effects, const lack *one, void *context)
{
    ts_chapter *chapter = context;

    add_modes(effects, one, &chapter->cell);
    ts_chapter_cell(chapter);
    ts_chapter_word(chapter, one->reason);
    add_parts(effects, one, &chapter->cell);
    ts_chapter_cell(chapter);
}

void ts_effects_lacks_cells(const ts_effects *effects, ts_chapter *chapter)
{
    static const ts_column columns[] = {{"failure", false}, {"because", false}, {"of", false}};

    ts_manuscript_table(chapter->manuscript, "Ways in which a part cannot fail, and why", columns,
                        sizeof columns / sizeof columns[0]);
    each(effects, tell_cells, chapter);
}

void ts_effects_lacks_card(const ts_effects *effects, ts_failing of, uint32_t at,
                           ts_chapter *chapter)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Ways in which it cannot fail");
    ts_manuscript_table(chapter->manuscript, "", ts_effects_card_columns, 2);
    for (int mode = 0; mode < TS_FAILURE_MODES; mode++) {
        if (ts_failing_of((ts_failure_mode)mode) != of || because(effects, mode, at) == NULL)
            continue;
        ts_chapter_word(chapter, ts_failure_name((ts_failure_mode)mode));
        ts_chapter_word(chapter, because(effects, mode, at));
    }
    ts_manuscript_text(
        chapter->manuscript, TS_BLOCK_PLAIN,
        of == TS_FAILING_MESH    ? "seized, sheared, bearings: of the shafts that it joins"
        : of == TS_FAILING_SHAFT ? "teeth, jets: of its meshes; leaks, clutches: of its pads"
                                 : "teeth, jets, bearings: of the shaft it stands on");
}

void ts_effects_lacks_json(ts_json *json, const ts_effects *effects, const ts_answer *answer)
{
    ts_json_key(json, "lacks");
    ts_json_array(json);
    for (int mode = 0; mode < TS_FAILURE_MODES; mode++) {
        const ts_failing of = ts_failing_of((ts_failure_mode)mode);
        for (uint32_t at = 0; at < count_of(effects, of); at++) {
            if (because(effects, mode, at) == NULL)
                continue;
            ts_buffer text;
            ts_buffer_open(&text, answer->allocator);
            ts_effects_part(effects, of, at, &text);
            ts_json_object(json);
            ts_json_string_at(json, "mode", ts_failure_name((ts_failure_mode)mode));
            ts_json_string_at(json, "part", text.failed ? "" : text.bytes);
            json->out->failed = json->out->failed || text.failed;
            ts_json_string_at(json, "because", because(effects, mode, at));
            ts_json_end(json, '}');
            ts_buffer_close(&text);
        }
    }
    ts_json_end(json, ']');
}
