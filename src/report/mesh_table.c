/* What does every mesh carry where it carries most, and on which flank? */
#include "report/check_page.h"
#include "report/report_chapter.h"

#include <math.h>

enum { MESH, TEETH, A_W, EPS_ALPHA, J_BN, V, F_T, AT, BACK_F_T, BACK_AT, COLUMNS };

#define GAP      2 /* blanks between columns                                       */
#define INDENT   4 /* of the numbers of a mesh whose name has a line of its own    */
#define AT_LEAST 5 /* columns that a condition keeps on a narrow page              */

static const struct {
    const char *head;
    ts_kind     kind; /* TS_KIND_NUMBER: no unit in the head */
    bool        word; /* stands at the left of its column    */
} columns[COLUMNS] = {
    [MESH]      = {"mesh", TS_KIND_NUMBER, true},
    [TEETH]     = {"teeth", TS_KIND_NUMBER, false},
    [A_W]       = {"a_w", TS_KIND_LENGTH, false},
    [EPS_ALPHA] = {"eps_alpha", TS_KIND_NUMBER, false},
    [J_BN]      = {"j_bn", TS_KIND_LENGTH, false},
    [V]         = {"v", TS_KIND_VELOCITY, false},
    [F_T]       = {"F_t", TS_KIND_FORCE, false},
    [AT]        = {"at", TS_KIND_NUMBER, true},
    [BACK_F_T]  = {"back F_t", TS_KIND_FORCE, false},
    [BACK_AT]   = {"at", TS_KIND_NUMBER, true},
};

typedef struct table {
    const ts_answer *answer;
    ts_page         *page;
    ts_buffer        text; /* of one cell */
    int              width[COLUMNS];
    bool             two_lines; /* a mesh: its name, and below it the numbers */
    bool             no_play;   /* the page is too narrow for the backlash too */
} table;

typedef struct peak {
    double  F_t;
    int32_t condition;
} peak;

/* ---- numbers -------------------------------------------------------------------------------- */

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

/* ---- cells ---------------------------------------------------------------------------------- */

static void name_or_teeth(table *t, const ts_mesh *mesh, int column)
{
    const ts_train *train = t->answer->train;
    if (column == MESH) {
        ts_buffer_print(&t->text, "%s > %s", train->shafts[mesh->driver_shaft].name,
                        train->shafts[mesh->driven_shaft].name);
        return;
    }
    ts_buffer_integer(&t->text, train->gears[mesh->driver].teeth.value);
    ts_buffer_add(&t->text, "/");
    ts_buffer_integer(&t->text, train->gears[mesh->driven].teeth.value);
}

static void geometry(table *t, uint32_t m, int column)
{
    const ts_mesh_motion *turn = &t->answer->motion->meshes[m];
    if (t->answer->train->meshes[m].kind != TS_MESH_CYLINDRICAL)
        ts_buffer_add(&t->text, column == A_W ? "bevel" : "\xC2\xB7");
    else if (!turn->solved)
        ts_buffer_add(&t->text, "?");
    else if (column == A_W)
        ts_page_value_text(t->page, &t->text, turn->a_w, TS_KIND_LENGTH, 6);
    else
        ts_page_value_text(t->page, &t->text, turn->pair.eps_alpha, TS_KIND_NUMBER, 4);
}

/* Least to greatest: at any temperature that the file tells, else as built. */
static void backlash(table *t, uint32_t m)
{
    const ts_mesh_motion *turn  = &t->answer->motion->meshes[m];
    const double         *j_bn  = turn->backlash.j_bn;
    const int             least = isnan(j_bn[TS_BACKLASH_LOW]) ? TS_BACKLASH_MIN : TS_BACKLASH_LOW;
    if (t->answer->train->meshes[m].kind != TS_MESH_CYLINDRICAL) {
        ts_buffer_add(&t->text, "\xC2\xB7");
        return;
    }
    if (isnan(j_bn[least])) {
        ts_buffer_add(&t->text, "?");
        return;
    }
    ts_page_value_text(t->page, &t->text, j_bn[least], TS_KIND_LENGTH, 2);
    ts_buffer_add(&t->text, "..");
    ts_page_value_text(t->page, &t->text, j_bn[least + 1], TS_KIND_LENGTH, 2);
}

static void force(table *t, uint32_t m, int column)
{
    const bool back = column == BACK_F_T || column == BACK_AT;
    const peak top  = largest(t->answer, m, back ? TS_FLOW_INWARD : TS_FLOW_OUTWARD);
    const bool at   = column == AT || column == BACK_AT;
    if (top.condition < 0)
        ts_buffer_add(&t->text, at ? "" : "\xC2\xB7");
    else if (at)
        ts_buffer_add(&t->text, ts_answer_condition(t->answer, top.condition));
    else
        ts_page_value_text(t->page, &t->text, top.F_t, TS_KIND_FORCE, 4);
}

/* The text of one cell; good until the next. */
static ts_text cell(table *t, uint32_t m, int column)
{
    ts_buffer_clear(&t->text);
    if (column == MESH || column == TEETH)
        name_or_teeth(t, &t->answer->train->meshes[m], column);
    else if (column == A_W || column == EPS_ALPHA)
        geometry(t, m, column);
    else if (column == J_BN)
        backlash(t, m);
    else if (column == V)
        ts_page_value_text(t->page, &t->text, fastest(t->answer, m), TS_KIND_VELOCITY, 3);
    else
        force(t, m, column);
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

/* A symbol with the unit in which its column stands: "a_w mm", "F_t lbf". */
static ts_text head(table *t, int column)
{
    ts_buffer_clear(&t->text);
    ts_buffer_add(&t->text, columns[column].head);
    if (columns[column].kind != TS_KIND_NUMBER)
        ts_buffer_print(&t->text, " %s", ts_kind_shown(columns[column].kind, t->page->units)->name);
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

/* ---- layout --------------------------------------------------------------------------------- */

static void measure(table *t, int column)
{
    size_t widest = ts_text_columns(head(t, column));
    for (uint32_t m = 0; m < t->answer->train->mesh_count; m++) {
        const size_t width = ts_text_columns(cell(t, m, column));
        widest             = width > widest ? width : widest;
    }
    t->width[column] = (int)widest;
}

static bool is_shown(const table *t, int column)
{
    return column != J_BN || !t->no_play;
}

static int columns_of_numbers(const table *t)
{
    int numbers = 0;
    for (int column = MESH + 1; column < COLUMNS; column++)
        numbers += is_shown(t, column) ? GAP + t->width[column] : 0;
    return numbers;
}

/* What the numbers need beyond the page, with both conditions cut as far as may be. */
static int beyond(const table *t)
{
    int cut = 0;
    for (int i = 0; i < 2; i++) {
        const int room = t->width[i == 0 ? AT : BACK_AT] - AT_LEAST;
        cut += room > 0 ? room : 0;
    }
    return INDENT - GAP + columns_of_numbers(t) - cut - t->page->columns;
}

/* Names keep their line; where that is too long for the page, the numbers take a second one, and
 * on the narrowest pages the backlash goes and the conditions are cut. */
static void lay_out(table *t)
{
    for (int column = 0; column < COLUMNS; column++)
        measure(t, column);
    t->two_lines    = t->width[MESH] + columns_of_numbers(t) > t->page->columns;
    t->no_play      = t->two_lines && beyond(t) > 0;
    const int ats[] = {AT, BACK_AT};
    int       over  = t->two_lines ? INDENT - GAP + columns_of_numbers(t) - t->page->columns : 0;
    for (int i = 0; i < 2; i++) {
        const int room = t->width[ats[i]] - AT_LEAST;
        const int cut  = over <= 0 || room <= 0 ? 0 : (over < room ? over : room);
        t->width[ats[i]] -= cut;
        over -= cut;
    }
}

static void put(table *t, ts_text text, int column)
{
    const bool first = column == MESH || (t->two_lines && column == TEETH);
    ts_buffer_fill(t->page->out, ' ', first ? 0 : GAP);
    if (columns[column].word)
        ts_page_left(t->page, text, t->width[column]);
    else
        ts_page_right(t->page, text, t->width[column]);
}

/* One mesh, or the heads for `m` out of range. */
static void row(table *t, uint32_t m)
{
    const bool heads = m >= t->answer->train->mesh_count;
    for (int column = 0; column < COLUMNS; column++) {
        const ts_text text = heads ? head(t, column) : cell(t, m, column);
        if (column == MESH && t->two_lines) {
            if (!t->text.failed)
                ts_page_wrap(t->page, text.at, INDENT, 0);
            ts_buffer_fill(t->page->out, ' ', INDENT);
        } else if (is_shown(t, column)) {
            put(t, text, column);
        }
    }
    ts_page_line_end(t->page);
}

void ts_mesh_table(const ts_answer *answer, ts_page *page)
{
    ts_page_heading(page,
                    "Meshes (first the gear nearer to the spool; j_bn: least to greatest; back: "
                    "power flows towards it, on the other flanks)");
    table t = {.answer = answer, .page = page};
    ts_buffer_open(&t.text, page->out->allocator);
    lay_out(&t);
    ts_page_tone(page, TS_TONE_FAINT);
    row(&t, UINT32_MAX);
    ts_page_tone(page, TS_TONE_PLAIN);
    for (uint32_t m = 0; m < answer->train->mesh_count; m++)
        row(&t, m);
    page->out->failed = page->out->failed || t.text.failed;
    ts_buffer_close(&t.text);
}

void ts_mesh_cells(ts_chapter *chapter)
{
    table     t = {.answer = chapter->answer, .page = &chapter->page};
    ts_column heads[COLUMNS];
    ts_buffer_open(&t.text, chapter->cell.allocator);
    for (int column = 0; column < COLUMNS; column++) {
        const ts_text text = head(&t, column);
        heads[column] = (ts_column){ts_arena_copy(chapter->manuscript->arena, text.at, text.length),
                                    !columns[column].word};
    }
    ts_manuscript_table(chapter->manuscript,
                        "First the gear nearer to the spool; j_bn: from the least to the greatest; "
                        "back: power flows towards the spool, on the other flanks",
                        heads, COLUMNS);
    for (uint32_t m = 0; m < t.answer->train->mesh_count; m++)
        for (int column = 0; column < COLUMNS; column++)
            ts_manuscript_cell(chapter->manuscript, cell(&t, m, column));
    chapter->manuscript->failed = chapter->manuscript->failed || t.text.failed;
    ts_buffer_close(&t.text);
}
