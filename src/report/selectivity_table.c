/* Does the right neck break first, and what would a swapped one do? */
#include "report/check_page.h"
#include "report/report_chapter.h"

#include <math.h>

enum { PAD, LEGIT, BAND, WALL, BELOW, ABOVE, FIRST, COLUMNS };

#define GAP 2

static const char *const heads[COLUMNS] = {
    [PAD]   = "pad",
    [LEGIT] = "must pass",
    [BAND]  = "neck breaks",
    [WALL]  = "way bears",
    [BELOW] = "neck/load",
    [ABOVE] = "way/neck",
    [FIRST] = "what gives way first",
};

typedef struct table {
    const ts_answer *answer;
    ts_page         *page;
    ts_buffer        text; /* of one cell */
    int              width[COLUMNS];
} table;

static const ts_drive_neck *neck_of(const table *t, const ts_guard *guard)
{
    return guard->neck == TS_NOWHERE ? NULL : &t->answer->select->necks->items[guard->neck];
}

static const char *name_of(const table *t, const ts_guard *guard)
{
    return guard->pad != TS_NOWHERE ? t->answer->train->pads[guard->pad].name
                                    : t->answer->train->shafts[guard->shaft].name;
}

static void torque(table *t, double T)
{
    ts_page_value_text(t->page, &t->text, T, TS_KIND_TORQUE, 4);
}

static void quotient(table *t, double over, double under)
{
    if (isfinite(over) && isfinite(under) && under > 0.0)
        ts_buffer_fixed(&t->text, over / under, 2);
    else
        ts_buffer_add(&t->text, isnan(over) || isnan(under) ? "?" : "\xC2\xB7");
}

static void first(table *t, const ts_guard *guard)
{
    static const char *const says[] = {
        [TS_PART_ROOT] = "teeth",  [TS_PART_FLANK] = "flanks",    [TS_PART_SPLINE] = "spline",
        [TS_PART_SHAFT] = "shaft", [TS_PART_BEARING] = "bearing", [TS_PART_NECK] = "neck",
    };
    if (guard->once.part == TS_NOWHERE)
        return;
    const ts_part_capacity *part  = &t->answer->select->parts.items[guard->once.part];
    const bool              bevel = ts_part_is_bevel(t->answer->train, part);

    ts_buffer_print(&t->text, "%s%s of %s", bevel ? "bevel " : "", says[part->kind], part->what);
}

static void put_cell(table *t, const ts_guard *guard, int column)
{
    const ts_drive_neck *neck = neck_of(t, guard);

    switch (column) {
    case PAD:
        ts_buffer_add(&t->text, name_of(t, guard));
        break;
    case LEGIT:
        torque(t, guard->legit.T);
        break;
    case BAND:
        if (neck == NULL) {
            ts_buffer_add(&t->text, "no neck");
            break;
        }
        torque(t, neck->band.low);
        ts_buffer_add(&t->text, "..");
        torque(t, neck->band.high);
        break;
    case WALL:
        if (isfinite(guard->once.T))
            torque(t, guard->once.T);
        else
            ts_buffer_add(&t->text, "?");
        break;
    case BELOW:
        if (neck != NULL)
            quotient(t, neck->band.low, guard->legit.T);
        break;
    case ABOVE:
        if (neck != NULL)
            quotient(t, guard->once.T, neck->band.high);
        break;
    default:
        first(t, guard);
    }
}

/* The text of one cell, or of the head for NULL; good until the next. */
static ts_text cell(table *t, const ts_guard *guard, int column)
{
    ts_buffer_clear(&t->text);
    if (guard == NULL)
        ts_buffer_add(&t->text, heads[column]);
    else
        put_cell(t, guard, column);
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

static void lay_out(table *t)
{
    for (int column = 0; column < COLUMNS; column++) {
        size_t widest = ts_text_columns(cell(t, NULL, column));
        for (uint32_t i = 0; i < t->answer->select->count; i++) {
            const size_t width = ts_text_columns(cell(t, &t->answer->select->guards[i], column));
            widest             = width > widest ? width : widest;
        }
        t->width[column] = (int)widest;
    }
}

/* Words stand on the left; the last column is cut where the page ends. */
static void row(table *t, const ts_guard *guard)
{
    int used = 0;
    for (int column = 0; column < COLUMNS; column++) {
        const ts_text text  = cell(t, guard, column);
        const int     room  = t->page->columns - used - (column > PAD ? GAP : 0);
        const int     width = t->width[column] < room ? t->width[column] : room;

        if (width <= 0)
            break;
        ts_buffer_fill(t->page->out, ' ', column > PAD ? GAP : 0);
        if (column == PAD || column == FIRST)
            ts_page_left(t->page, text, width);
        else
            ts_page_right(t->page, text, width);
        used += width + (column > PAD ? GAP : 0);
    }
    ts_page_line_end(t->page);
}

/* ---- swapped necks ----------------------------------------------------------------------------
 */

/* Is something wrong with the neck of `other` in the place of that of `guard`? */
static bool is_harmful(const ts_swap *swap)
{
    return swap->verdict != TS_SWAP_HOLDS && swap->verdict != TS_SWAP_NOT_KNOWN && swap->fits;
}

static bool is_pair(const ts_guard *guard, const ts_guard *other)
{
    return guard != other && guard->neck != TS_NOWHERE && other->neck != TS_NOWHERE &&
           guard->pad != TS_NOWHERE && other->pad != TS_NOWHERE;
}

/* What a swap would do, appended to t->text. */
static void say_swap(table *t, const ts_guard *guard, const ts_swap *of)
{
    const ts_swap swap = *of;
    if (swap.verdict == TS_SWAP_EARLY) {
        ts_buffer_add(&t->text, "may break at ");
        torque(t, swap.band.low);
        ts_buffer_add(&t->text, " under ");
        torque(t, guard->legit.T);
    } else if (swap.verdict == TS_SWAP_LATE) {
        ts_buffer_add(&t->text, "may hold until ");
        torque(t, swap.band.high);
        ts_buffer_add(&t->text, ", and at ");
        torque(t, guard->once.T);
        ts_buffer_add(&t->text, " the ");
        first(t, guard);
        ts_buffer_add(&t->text, " give way");
    } else {
        ts_buffer_add(&t->text, "nearer than the factor asks");
    }
}

/* One line a pair, only of those in which something is wrong. */
static bool swap_line(table *t, const ts_guard *guard, const ts_guard *other)
{
    const ts_swap swap = ts_select_swapped(t->answer->select, guard, other);
    if (!is_harmful(&swap))
        return false;
    ts_buffer_clear(&t->text);
    ts_buffer_print(&t->text, "that of %s in %s: ", name_of(t, other), name_of(t, guard));
    say_swap(t, guard, &swap);
    if (!t->text.failed)
        ts_page_wrap(t->page, t->text.bytes, 4, 0);
    return true;
}

static void swaps(table *t)
{
    const ts_select *select = t->answer->select;
    size_t           told = 0, pairs = 0;

    ts_page_heading(t->page, "Swapped necks: what would break (pairs whose splines are not told to "
                             "differ)");
    for (uint32_t i = 0; i < select->count; i++)
        for (uint32_t k = 0; k < select->count; k++) {
            const ts_guard *guard = &select->guards[i], *other = &select->guards[k];

            if (!is_pair(guard, other))
                continue;
            pairs++;
            told += swap_line(t, guard, other) ? 1 : 0;
        }
    ts_buffer_clear(&t->text);
    ts_buffer_print(&t->text, "%zu of %zu pairs would do harm.", told, pairs);
    if (!t->text.failed)
        ts_page_wrap(t->page, t->text.bytes, 2, 0);
}

static void caption(table *t)
{
    ts_buffer_print(&t->text,
                    "Selectivity, %s at the pad: each neck between what it must pass and what the "
                    "way to the spool bears once, each end a factor of ",
                    ts_kind_shown(TS_KIND_TORQUE, t->page->units)->name);
    ts_page_short(&t->text, t->answer->select->f, 4);
    ts_buffer_add(&t->text, " apart");
}

void ts_selectivity_table(const ts_answer *answer, ts_page *page)
{
    table t = {.answer = answer, .page = page};

    if (answer->select == NULL || answer->select->count == 0)
        return;
    ts_buffer_open(&t.text, page->out->allocator);
    caption(&t);
    if (!t.text.failed)
        ts_page_heading(page, t.text.bytes);
    lay_out(&t);
    ts_page_tone(page, TS_TONE_FAINT);
    row(&t, NULL);
    ts_page_tone(page, TS_TONE_PLAIN);
    for (uint32_t i = 0; i < answer->select->count; i++)
        row(&t, &answer->select->guards[i]);
    ts_page_wrap(page,
                 "Way bears: the least at which anything on it yields (flanks, shafts), is dented "
                 "(bearings) or breaks (teeth, splines); `effects` tells what parts, which bears "
                 "more, and `seize` each part by itself.",
                 2, 0);
    if (page->all)
        swaps(&t);
    page->out->failed = page->out->failed || t.text.failed;
    ts_buffer_close(&t.text);
}

/* ---- the same in a report -------------------------------------------------------------------- */

static size_t swap_cells(table *t, ts_chapter *chapter, const ts_guard *guard,
                         const ts_guard *other)
{
    const ts_swap swap = ts_select_swapped(t->answer->select, guard, other);
    if (!is_harmful(&swap))
        return 0;
    ts_chapter_word(chapter, name_of(t, other));
    ts_chapter_word(chapter, name_of(t, guard));
    ts_buffer_clear(&t->text);
    say_swap(t, guard, &swap);
    ts_manuscript_cell(chapter->manuscript, (ts_text){t->text.bytes, t->text.length});
    return 1;
}

static void swapped(table *t, ts_chapter *chapter)
{
    static const ts_column columns[] = {
        {"neck of", false}, {"in the place of that of", false}, {"what it would do", false}};
    const ts_select *select = t->answer->select;
    size_t           told = 0, pairs = 0;
    ts_manuscript_table(chapter->manuscript,
                        "Swapped necks: what would break, of pairs whose splines are not told to "
                        "differ",
                        columns, 3);
    for (uint32_t i = 0; i < select->count; i++)
        for (uint32_t k = 0; k < select->count; k++)
            if (is_pair(&select->guards[i], &select->guards[k])) {
                pairs++;
                told += swap_cells(t, chapter, &select->guards[i], &select->guards[k]);
            }
    ts_buffer_print(&chapter->cell, "%zu of %zu pairs would do harm.", told, pairs);
    if (!chapter->cell.failed)
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

void ts_selectivity_cells(ts_chapter *chapter)
{
    table     t = {.answer = chapter->answer, .page = &chapter->page};
    ts_column columns[COLUMNS];
    ts_buffer_open(&t.text, chapter->cell.allocator);
    caption(&t);
    for (int column = 0; column < COLUMNS; column++)
        columns[column] = (ts_column){heads[column], column != PAD && column != FIRST};
    if (!t.text.failed)
        ts_manuscript_table(chapter->manuscript, t.text.bytes, columns, COLUMNS);
    for (uint32_t i = 0; i < t.answer->select->count; i++)
        for (int column = 0; column < COLUMNS; column++)
            ts_manuscript_cell(chapter->manuscript, cell(&t, &t.answer->select->guards[i], column));
    swapped(&t, chapter);
    chapter->manuscript->failed = chapter->manuscript->failed || t.text.failed;
    ts_buffer_close(&t.text);
}
