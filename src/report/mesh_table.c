/* What does every mesh carry where it carries most, and on which flank? */
#include "report/check_page.h"

#include <math.h>

static const struct {
    const char *head;
    ts_kind     kind; /* TS_KIND_NUMBER: no unit in the head */
    int         width;
} columns[] = {
    {"mesh", TS_KIND_NUMBER, 40}, {"teeth", TS_KIND_NUMBER, 10},
    {"a_w", TS_KIND_LENGTH, 10},  {"eps_alpha", TS_KIND_NUMBER, 10},
    {"v", TS_KIND_VELOCITY, 9},   {"F_t", TS_KIND_FORCE, 9},
    {"  at", TS_KIND_NUMBER, 14}, {"back F_t", TS_KIND_FORCE, 13},
    {"  at", TS_KIND_NUMBER, 14},
};
#define COLUMNS (sizeof columns / sizeof columns[0])

typedef struct peak {
    double  F_t;
    int32_t condition;
} peak;

/* The largest tangential force with power flowing one way. */
static peak largest(const ts_answer *answer, uint32_t mesh, ts_flow flow)
{
    peak found = {0.0, -1};
    for (size_t c = 0; c < answer->drive->condition_count; c++) {
        const ts_mesh_load *load = &answer->power->mesh[c * answer->train->mesh_count + mesh];
        if (load->flow == flow && load->F_t > found.F_t)
            found = (peak){load->F_t, (int32_t)c};
    }
    return found;
}

static double fastest(const ts_answer *answer, uint32_t mesh)
{
    double v = 0.0;
    for (size_t c = 0; c < answer->drive->condition_count; c++)
        v = fmax(v, answer->motion->velocity[c * answer->train->mesh_count + mesh]);
    return v;
}

static void cell(ts_page *page, ts_buffer *text, int column)
{
    ts_page_right(page, (ts_text){text->bytes != NULL ? text->bytes : "", text->length},
                  columns[column].width);
    page->out->failed = page->out->failed || text->failed;
    ts_buffer_clear(text);
}

static void peak_cells(const ts_answer *answer, ts_page *page, peak top, int column)
{
    if (top.condition < 0) {
        ts_page_right(page, TS_TEXT("\xC2\xB7"), columns[column].width);
        ts_page_right(page, TS_TEXT(""), columns[column + 1].width);
        return;
    }
    ts_page_value(page, top.F_t, TS_KIND_FORCE, 4, columns[column].width);
    ts_buffer_add(page->out, "  ");
    ts_page_left(page, ts_text_of(ts_answer_condition(answer, top.condition)),
                 columns[column + 1].width - 2);
}

static void row(const ts_answer *answer, ts_page *page, uint32_t m, ts_buffer *text)
{
    const ts_train       *train = answer->train;
    const ts_mesh        *mesh  = &train->meshes[m];
    const ts_mesh_motion *turn  = &answer->motion->meshes[m];
    ts_buffer_print(text, "%s > %s", train->shafts[mesh->driver_shaft].name,
                    train->shafts[mesh->driven_shaft].name);
    ts_page_left(page, (ts_text){text->bytes != NULL ? text->bytes : "", text->length},
                 columns[0].width);
    ts_buffer_clear(text);
    ts_buffer_integer(text, train->gears[mesh->driver].teeth.value);
    ts_buffer_add(text, "/");
    ts_buffer_integer(text, train->gears[mesh->driven].teeth.value);
    cell(page, text, 1);
    const bool plane = mesh->kind == TS_MESH_CYLINDRICAL;
    if (plane && turn->solved) {
        ts_page_value(page, turn->a_w, TS_KIND_LENGTH, 6, columns[2].width);
        ts_page_value(page, turn->pair.eps_alpha, TS_KIND_NUMBER, 4, columns[3].width);
    } else {
        ts_page_right(page, plane ? TS_TEXT("?") : TS_TEXT("bevel"), columns[2].width);
        ts_page_right(page, plane ? TS_TEXT("?") : TS_TEXT("\xC2\xB7"), columns[3].width);
    }
    ts_page_value(page, fastest(answer, m), TS_KIND_VELOCITY, 3, columns[4].width);
    peak_cells(answer, page, largest(answer, m, TS_FLOW_OUTWARD), 5);
    peak_cells(answer, page, largest(answer, m, TS_FLOW_INWARD), 7);
    ts_page_line_end(page);
}

/* Symbols with the unit in which the column stands: "a_w mm", "F_t lbf". */
static void heads(ts_page *page, ts_buffer *text)
{
    ts_page_tone(page, TS_TONE_FAINT);
    for (size_t i = 0; i < COLUMNS; i++) {
        ts_buffer_add(text, columns[i].head);
        if (columns[i].kind != TS_KIND_NUMBER)
            ts_buffer_print(text, " %s", ts_kind_shown(columns[i].kind, page->units)->name);
        const ts_text head = {text->bytes != NULL ? text->bytes : "", text->length};
        if (i == 0 || columns[i].head[0] == ' ')
            ts_page_left(page, head, columns[i].width);
        else
            ts_page_right(page, head, columns[i].width);
        ts_buffer_clear(text);
    }
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
}

void ts_mesh_table(const ts_answer *answer, ts_page *page)
{
    ts_page_heading(page,
                    "Meshes (first the gear nearer to the spool; back: power flows towards it, "
                    "on the other flanks)");
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    heads(page, &text);
    for (uint32_t m = 0; m < answer->train->mesh_count; m++)
        row(answer, page, m, &text);
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}
