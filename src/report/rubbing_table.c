/* How hot do the flanks of every mesh rub, and how thin is the oil film between them? */
#include "report/check_page.h"
#include "report/report_chapter.h"

#include <math.h>

enum { MESH, S_B, AT_B, S_INT, AT_INT, FILM, AT_FILM, COLUMNS };

#define GAP    2 /* blanks between columns                    */
#define INDENT 4 /* of what stands below the name of its mesh */

static const char *const heads[COLUMNS] = {
    [MESH] = "mesh", [S_B] = "S_B",   [AT_B] = "at",    [S_INT] = "S_intS",
    [AT_INT] = "at", [FILM] = "film", [AT_FILM] = "at",
};

typedef struct table {
    const ts_answer *answer;
    ts_page         *page;
    ts_buffer        text; /* of one cell */
    int              width[COLUMNS];
    bool             two_lines; /* the name of a mesh stands above its numbers */
} table;

static const ts_least_safety *least_of(const table *t, uint32_t m, int column)
{
    const ts_mesh_rubbing *mesh = &t->answer->rubbing->mesh[m];

    if (column == S_B || column == AT_B)
        return &mesh->S_B;
    if (column == S_INT || column == AT_INT)
        return &mesh->S_intS;
    return &mesh->lambda_GFmin;
}

/* The text of one cell, or of the head for `m` out of range; good until the next. */
static ts_text cell(table *t, uint32_t m, int column)
{
    const ts_train *train = t->answer->train;

    ts_buffer_clear(&t->text);
    if (m >= train->mesh_count) {
        ts_buffer_add(&t->text, heads[column]);
    } else if (column == MESH) {
        ts_buffer_print(&t->text, "%s > %s", train->shafts[train->meshes[m].driver_shaft].name,
                        train->shafts[train->meshes[m].driven_shaft].name);
    } else {
        const ts_least_safety *it   = least_of(t, m, column);
        const bool             film = column == FILM || column == AT_FILM;
        const bool             none = film && train->meshes[m].kind == TS_MESH_BEVEL;

        if (column == AT_B || column == AT_INT || column == AT_FILM)
            ts_buffer_add(&t->text, !none && it->condition >= 0
                                        ? ts_answer_condition(t->answer, it->condition)
                                        : "");
        else if (none || isinf(it->S))
            ts_buffer_add(&t->text, "\xC2\xB7");
        else
            ts_page_value_text(t->page, &t->text, it->S, TS_KIND_NUMBER, 3);
    }
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

static void lay_out(table *t)
{
    int all = 0;
    for (int column = 0; column < COLUMNS; column++) {
        size_t widest = ts_text_columns(cell(t, UINT32_MAX, column));
        for (uint32_t m = 0; m < t->answer->train->mesh_count; m++) {
            const size_t width = ts_text_columns(cell(t, m, column));
            widest             = width > widest ? width : widest;
        }
        t->width[column] = (int)widest;
        all += (int)widest + (column > MESH ? GAP : 0);
    }
    t->two_lines = all > t->page->columns;
}

static void row(table *t, uint32_t m)
{
    for (int column = 0; column < COLUMNS; column++) {
        const ts_text text = cell(t, m, column);

        if (t->text.failed)
            return;
        if (t->two_lines && column == MESH) {
            ts_page_spread(t->page, text, INDENT, 0);
            ts_page_line_end(t->page);
            continue;
        }
        ts_buffer_fill(t->page->out, ' ',
                       column == MESH ? 0 : (size_t)(t->two_lines && column == S_B ? INDENT : GAP));
        if (column == S_B || column == S_INT || column == FILM)
            ts_page_right(t->page, text, t->width[column]);
        else
            ts_page_left(t->page, text, t->width[column]);
    }
    ts_page_line_end(t->page);
}

static const char says[] = "Flanks that rub, the worst condition by itself: scuffing by flash and "
                           "integral temperature (ISO/TS 6336-20, -21), least film over roughness "
                           "(-22, an indication); each method estimates the heat of the teeth";

static bool is_there(const ts_answer *answer)
{
    return answer->rubbing != NULL && answer->rubbing->oil.missing == NULL &&
           answer->rubbing->filmed && answer->train->mesh_count > 0;
}

void ts_rubbing_table(const ts_answer *answer, ts_page *page)
{
    table t = {.answer = answer, .page = page};

    if (!is_there(answer))
        return;
    ts_buffer_open(&t.text, page->out->allocator);
    ts_page_heading(page, says);
    lay_out(&t);
    ts_page_tone(page, TS_TONE_FAINT);
    row(&t, UINT32_MAX);
    ts_page_tone(page, TS_TONE_PLAIN);
    for (uint32_t m = 0; m < answer->train->mesh_count; m++)
        row(&t, m);
    page->out->failed = page->out->failed || t.text.failed;
    ts_buffer_close(&t.text);
}

void ts_rubbing_cells(ts_chapter *chapter)
{
    table     t = {.answer = chapter->answer, .page = &chapter->page};
    ts_column columns[COLUMNS];
    if (!is_there(t.answer)) {
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN,
                          "Scuffing and films are not told: the file does not say enough of its "
                          "oil.");
        return;
    }
    for (int column = 0; column < COLUMNS; column++)
        columns[column] =
            (ts_column){heads[column], column == S_B || column == S_INT || column == FILM};
    ts_buffer_open(&t.text, chapter->cell.allocator);
    ts_manuscript_table(chapter->manuscript, says, columns, COLUMNS);
    for (uint32_t m = 0; m < t.answer->train->mesh_count; m++)
        for (int column = 0; column < COLUMNS; column++)
            ts_manuscript_cell(chapter->manuscript, cell(&t, m, column));
    chapter->manuscript->failed = chapter->manuscript->failed || t.text.failed;
    ts_buffer_close(&t.text);
}
