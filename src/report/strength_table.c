/* How safe are the teeth of every mesh over the whole life, and what sets that?  By the first
 * standard, and by the second. */
#include "report/check_page.h"
#include "report/report_chapter.h"

#include "rating/iso6336/edition.h"

#include <math.h>

enum { MESH, S_H1, S_H2, S_F1, S_F2, MARGIN, SET_BY, COLUMNS };

#define GAP    2 /* blanks between columns                                        */
#define INDENT 4 /* of what stands below the name of its mesh                     */

static const char second_opinion[] = "Second opinion (ANSI/AGMA 2101-D04), the worst condition by "
                                     "itself; it warns, and ISO 6336 decides";

static const char shared[] = "* of a gear that its other mesh wears more: it counts for the margin "
                             "there, and not here";

static const char *const heads[COLUMNS] = {
    [MESH] = "mesh", [S_H1] = "S_H1",     [S_H2] = "S_H2",     [S_F1] = "S_F1",
    [S_F2] = "S_F2", [MARGIN] = "margin", [SET_BY] = "set by",
};

/* What a standard says of one mesh. */
typedef struct told {
    double          S[4];       /* S_H1, S_H2, S_F1, S_F2                              */
    uint32_t        worn_by[4]; /* the mesh that wears that gear most, which it is shared with */
    double          reserve;
    ts_rated_stress stress;
    int             gear;
    uint32_t        mesh; /* of the load that sets it, in ... */
    int32_t         condition;
} told;

typedef struct table {
    const ts_answer *answer;
    ts_page         *page;
    told (*of)(const ts_answer *answer, uint32_t m);
    bool      bevels; /* are they told too? */
    ts_buffer text;   /* of one cell */
    int       width[COLUMNS];
    int       lines; /* of a mesh: 1; 2: its name, and the numbers; 3: and what sets them */
} table;

/* ---- standards ------------------------------------------------------------------------------- */

static told by_iso(const ts_answer *answer, uint32_t m)
{
    const ts_mesh_strength *s = &answer->teeth->strength[m];
    return (told){.S         = {s->S_H[0], s->S_H[1], s->S_F[0], s->S_F[1]},
                  .worn_by   = {s->worn_by[0][TS_RATED_CONTACT], s->worn_by[1][TS_RATED_CONTACT],
                                s->worn_by[0][TS_RATED_BENDING], s->worn_by[1][TS_RATED_BENDING]},
                  .reserve   = s->reserve,
                  .stress    = s->stress,
                  .gear      = s->gear,
                  .mesh      = s->life.mesh,
                  .condition = s->life.condition};
}

static told by_agma(const ts_answer *answer, uint32_t m)
{
    const ts_mesh_opinion *o = &answer->opinion->mesh[m];
    return (told){.S         = {o->S_H[0].S, o->S_H[1].S, o->S_F[0].S, o->S_F[1].S},
                  .worn_by   = {m, m, m, m},
                  .reserve   = o->reserve,
                  .stress    = o->stress,
                  .gear      = o->gear,
                  .mesh      = m,
                  .condition = o->condition};
}

/* ---- cells ---------------------------------------------------------------------------------- */

/* A gear between two meshes has one safety in both of their rows; the margin is that of the mesh
 * which wears it more. */
static bool elsewhere(const told *it, uint32_t m, int column)
{
    return isfinite(it->S[column - S_H1]) && it->worn_by[column - S_H1] != m;
}

static void safety(table *t, uint32_t m, int column)
{
    const told   it = t->of(t->answer, m);
    const double S  = it.S[column - S_H1];

    if (isinf(S))
        ts_buffer_add(&t->text, "\xC2\xB7");
    else
        ts_page_value_text(t->page, &t->text, S, TS_KIND_NUMBER, 3);
    if (elsewhere(&it, m, column))
        ts_buffer_add(&t->text, "*");
}

static void margin(table *t, double reserve)
{
    if (!isfinite(reserve)) {
        ts_buffer_add(&t->text, isnan(reserve) ? "?" : "\xC2\xB7");
        return;
    }
    ts_buffer_add(&t->text, reserve < 0.0 ? "" : "+");
    ts_buffer_fixed(&t->text, 100.0 * reserve, 1);
    ts_buffer_add(&t->text, " %");
}

/* "crank, other flank: bending of the pinion" */
static void set_by(table *t, uint32_t m)
{
    const told it = t->of(t->answer, m);
    if (!isfinite(it.reserve))
        return;
    const size_t        at   = (size_t)it.condition * t->answer->train->mesh_count + it.mesh;
    const ts_mesh_load *load = &t->answer->power->mesh[at];
    ts_buffer_print(&t->text, "%s%s: %s of the %s", ts_answer_condition(t->answer, it.condition),
                    load->flow == TS_FLOW_INWARD ? ", other flank" : "",
                    ts_rated_stress_says(it.stress),
                    ts_mesh_side_says(t->answer->train, m, it.gear));
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
    } else if (column == MARGIN) {
        margin(t, t->of(t->answer, m).reserve);
    } else if (column == SET_BY) {
        set_by(t, m);
    } else {
        safety(t, m, column);
    }
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

static bool is_told(const table *t, uint32_t m)
{
    return t->bevels || t->answer->train->meshes[m].kind == TS_MESH_CYLINDRICAL;
}

/* ---- layout --------------------------------------------------------------------------------- */

static void lay_out(table *t)
{
    int all = 0;
    for (int column = 0; column < COLUMNS; column++) {
        size_t widest = ts_text_columns(cell(t, UINT32_MAX, column));
        for (uint32_t m = 0; m < t->answer->train->mesh_count; m++) {
            const size_t width = is_told(t, m) ? ts_text_columns(cell(t, m, column)) : 0;
            widest             = width > widest ? width : widest;
        }
        t->width[column] = (int)widest;
        all += (int)widest + (column > MESH ? GAP : 0);
    }
    const int below = INDENT - GAP + all - t->width[MESH];
    t->lines        = all <= t->page->columns ? 1 : below <= t->page->columns ? 2 : 3;
}

static void put(table *t, ts_text text, int column)
{
    ts_buffer *out   = t->page->out;
    const bool first = column == MESH || (t->lines > 1 && column == S_H1);
    if (t->text.failed)
        return;
    if ((t->lines > 1 && column == MESH) || (t->lines > 2 && column == SET_BY)) {
        if (column == SET_BY)
            ts_page_line_end(t->page);
        ts_buffer_fill(out, ' ', column == MESH ? 0 : INDENT);
        ts_page_spread(t->page, text, column == MESH ? INDENT : INDENT + GAP,
                       column == MESH ? 0 : INDENT);
        if (column == MESH)
            ts_page_line_end(t->page);
        return;
    }
    ts_buffer_fill(out, ' ', first ? (t->lines > 1 ? INDENT : 0) : GAP);
    if (column == MESH || column == SET_BY)
        ts_page_left(t->page, text, t->width[column]);
    else
        ts_page_right(t->page, text, t->width[column]);
}

static void row(table *t, uint32_t m)
{
    for (int column = 0; column < COLUMNS; column++)
        put(t, cell(t, m, column), column);
    ts_page_line_end(t->page);
}

static bool has_bevels(const table *t)
{
    for (uint32_t m = 0; m < t->answer->train->mesh_count; m++)
        if (t->answer->train->meshes[m].kind == TS_MESH_BEVEL)
            return true;
    return false;
}

/* "Tooth strength (ISO 6336:2019), ..." into t->text. */
static void caption_iso(table *t)
{
    const ts_iso6336_year year = t->answer->drive->method.teeth.value == TS_TEETH_ISO_2006
                                     ? TS_ISO6336_2006
                                     : TS_ISO6336_2019;
    ts_buffer_clear(&t->text);
    ts_buffer_print(&t->text,
                    "Tooth strength (%s%s), all conditions of the life together; least S_H ",
                    ts_iso6336_edition_of(year)->name, has_bevels(t) ? ", bevels ISO 10300" : "");
    ts_page_short(&t->text, t->answer->teeth->S_Hmin, 4);
    ts_buffer_add(&t->text, ", S_F ");
    ts_page_short(&t->text, t->answer->teeth->S_Fmin, 4);
}

static bool has_shared(const table *t)
{
    for (uint32_t m = 0; m < t->answer->train->mesh_count; m++) {
        const told it = t->of(t->answer, m);
        for (int column = S_H1; column <= S_F2 && is_told(t, m); column++)
            if (elsewhere(&it, m, column))
                return true;
    }
    return false;
}

static void rows(table *t)
{
    lay_out(t);
    ts_page_tone(t->page, TS_TONE_FAINT);
    row(t, UINT32_MAX);
    ts_page_tone(t->page, TS_TONE_PLAIN);
    for (uint32_t m = 0; m < t->answer->train->mesh_count; m++)
        if (is_told(t, m))
            row(t, m);
    if (has_shared(t)) {
        ts_page_spread(t->page, ts_text_of(shared), 0, GAP);
        ts_page_line_end(t->page);
    }
}

void ts_strength_table(const ts_answer *answer, ts_page *page)
{
    table t = {.answer = answer, .page = page};
    if (answer->teeth == NULL)
        return;
    ts_buffer_open(&t.text, page->out->allocator);
    caption_iso(&t);
    if (!t.text.failed)
        ts_page_heading(page, t.text.bytes);
    t.of     = by_iso;
    t.bevels = true;
    rows(&t);
    if (answer->opinion != NULL) {
        ts_page_heading(page, second_opinion);
        t.of     = by_agma;
        t.bevels = false;
        rows(&t);
    }
    page->out->failed = page->out->failed || t.text.failed;
    ts_buffer_close(&t.text);
}

/* ---- the same in a report -------------------------------------------------------------------- */

static void cells(table *t, ts_chapter *chapter, const char *caption)
{
    ts_column columns[COLUMNS];
    for (int column = 0; column < COLUMNS; column++)
        columns[column] = (ts_column){heads[column], column != MESH && column != SET_BY};
    ts_manuscript_table(chapter->manuscript, caption, columns, COLUMNS);
    for (uint32_t m = 0; m < t->answer->train->mesh_count; m++)
        for (int column = 0; column < COLUMNS && is_told(t, m); column++)
            ts_manuscript_cell(chapter->manuscript, cell(t, m, column));
    if (has_shared(t))
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_FAINT, shared);
}

void ts_strength_cells(ts_chapter *chapter)
{
    table t = {.answer = chapter->answer, .page = &chapter->page, .of = by_iso, .bevels = true};
    ts_buffer_open(&t.text, chapter->cell.allocator);
    caption_iso(&t);
    const char *caption =
        ts_arena_copy(chapter->manuscript->arena, t.text.bytes, t.text.failed ? 0 : t.text.length);
    cells(&t, chapter, caption);
    if (t.answer->opinion != NULL) {
        t.of     = by_agma;
        t.bevels = false;
        cells(&t, chapter, second_opinion);
    }
    chapter->manuscript->failed = chapter->manuscript->failed || t.text.failed;
    ts_buffer_close(&t.text);
}
