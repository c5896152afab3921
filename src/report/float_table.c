/* How do the three ways to bear the movement of a spool compare, and where does each stop? */
#include "report/check_page.h"
#include "report/report_chapter.h"

#include <math.h>

#define GAP 2

enum {
    PLAY,
    CHANGE,
    SHIFT,
    FACE,
    RATIO,
    SLIDE,
    ENGAGED,
    PUSH,
    ACROSS,
    MASS,
    PARTS,
    MESHES,
    RADIAL,
    WORKS,
    FIRST,
    SECOND,
    APART,
    ROWS
};

static const struct {
    const char *head;
    ts_kind     kind; /* TS_KIND_NUMBER: no unit in the head */
} heads[ROWS] = {
    [PLAY]    = {"backlash left", TS_KIND_LENGTH},
    [CHANGE]  = {"... by the axial travel alone", TS_KIND_NUMBER},
    [SHIFT]   = {"teeth along the face", TS_KIND_LENGTH},
    [FACE]    = {"least common face", TS_KIND_LENGTH},
    [RATIO]   = {"least contact ratio", TS_KIND_NUMBER},
    [SLIDE]   = {"slide left", TS_KIND_LENGTH},
    [ENGAGED] = {"least engaged", TS_KIND_LENGTH},
    [PUSH]    = {"push on the bearing", TS_KIND_FORCE},
    [ACROSS]  = {"across, on its bearings", TS_KIND_FORCE},
    [MASS]    = {"more mass", TS_KIND_MASS},
    [PARTS]   = {"more parts", TS_KIND_NUMBER},
    [MESHES]  = {"more meshes of the start", TS_KIND_NUMBER},
    [RADIAL]  = {"radial travel borne", TS_KIND_LENGTH},
    [WORKS]   = {"works from .. to", TS_KIND_LENGTH},
    [FIRST]   = {"  forward, then", TS_KIND_NUMBER},
    [SECOND]  = {"  rearward, then", TS_KIND_NUMBER},
    [APART]   = {"interrupted beyond", TS_KIND_LENGTH},
};

typedef struct table {
    const ts_answer *answer;
    ts_page         *page;
    ts_buffer        text;
    int              width[TS_FLOAT_SCHEMES + 1];
} table;

static void length(table *t, double si)
{
    if (isfinite(si))
        ts_page_value_text(t->page, &t->text, si, TS_KIND_LENGTH, 3);
    else
        ts_buffer_add(&t->text, "\xC2\xB7");
}

static void span(table *t, double a, double b)
{
    length(t, a);
    ts_buffer_add(&t->text, "..");
    length(t, b);
}

static void put_word(table *t, const ts_float_option *o, int end)
{
    static const char *const says[TS_FLOAT_CAUSES] = {
        [TS_FLOAT_BINDS] = "binds",         [TS_FLOAT_TIPS] = "tips touch",
        [TS_FLOAT_HANDS] = "one pair left", [TS_FLOAT_EDGE] = "edge contact",
        [TS_FLOAT_BOTTOMS] = "bottoms",     [TS_FLOAT_NARROW] = "too narrow",
    };
    ts_buffer_add(&t->text, says[o->cause[end]]);
}

static void put_cell(table *t, const ts_float_option *o, int row)
{
    switch (row) {
    case PLAY:
        span(t, o->j[0], o->j[1]);
        break;
    case CHANGE:
        span(t, o->dj[0], o->dj[1]);
        break;
    case SHIFT:
        span(t, o->shift[0], o->shift[1]);
        break;
    case FACE:
        length(t, o->b_left);
        break;
    case RATIO:
        ts_page_value_text(t->page, &t->text, o->eps, TS_KIND_NUMBER, 3);
        break;
    case SLIDE:
        length(t, o->left);
        break;
    case ENGAGED:
        length(t, o->engaged);
        break;
    case PUSH:
        ts_page_value_text(t->page, &t->text, o->F_a, TS_KIND_FORCE, 4);
        break;
    case ACROSS:
        ts_page_value_text(t->page, &t->text, o->F_r, TS_KIND_FORCE, 4);
        break;
    case MASS:
        ts_page_value_text(t->page, &t->text, o->m, TS_KIND_MASS, 3);
        break;
    case PARTS:
        ts_buffer_print(&t->text, "%d", o->parts);
        break;
    case MESHES:
        ts_buffer_print(&t->text, "%d", o->meshes);
        break;
    case RADIAL:
        length(t, o->r_stop);
        break;
    case WORKS:
        span(t, o->stop[0], o->stop[1]);
        break;
    case APART:
        span(t, o->apart[0], o->apart[1]);
        break;
    default:
        put_word(t, o, row == FIRST ? 0 : 1);
    }
}

static ts_text cell(table *t, const ts_drive_float *item, int row, int scheme)
{
    const ts_float_option *option = &item->options[scheme];
    ts_buffer_clear(&t->text);
    if (row == ROWS)
        ts_buffer_print(&t->text, "%s%s%s", ts_float_scheme_name((ts_float_scheme)scheme),
                        option->chosen ? " =" : "", option->made ? " *" : "");
    else
        put_cell(t, option, row);
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

/* "least engaged, mm": what a row tells, in the unit in which it stands. */
static ts_text head(table *t, int row)
{
    ts_buffer_clear(&t->text);
    ts_buffer_add(&t->text, heads[row].head);
    if (heads[row].kind != TS_KIND_NUMBER)
        ts_buffer_print(&t->text, ", %s", ts_kind_shown(heads[row].kind, t->page->units)->name);
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

static void lay_out(table *t, const ts_drive_float *item)
{
    t->width[TS_FLOAT_SCHEMES] = 0;
    for (int row = 0; row < ROWS; row++) {
        const int width = (int)ts_text_columns(head(t, row));
        t->width[TS_FLOAT_SCHEMES] =
            width > t->width[TS_FLOAT_SCHEMES] ? width : t->width[TS_FLOAT_SCHEMES];
    }
    for (int i = 0; i < TS_FLOAT_SCHEMES; i++) {
        t->width[i] = 0;
        for (int row = 0; row <= ROWS; row++) {
            const int width = (int)ts_text_columns(cell(t, item, row, i));
            t->width[i]     = width > t->width[i] ? width : t->width[i];
        }
    }
}

/* Cells that no longer fit go below the others. */
static void put_row(table *t, const ts_drive_float *item, int row)
{
    int used = t->width[TS_FLOAT_SCHEMES] + GAP;
    ts_buffer_fill(t->page->out, ' ', GAP);
    ts_page_left(t->page, row < ROWS ? head(t, row) : ts_text_of(""), t->width[TS_FLOAT_SCHEMES]);
    for (int i = 0; i < TS_FLOAT_SCHEMES; i++) {
        if (used + GAP + t->width[i] > t->page->columns) {
            ts_page_line_end(t->page);
            ts_buffer_fill(t->page->out, ' ', 4);
            used = 4;
        }
        ts_buffer_fill(t->page->out, ' ', GAP);
        ts_page_right(t->page, cell(t, item, row, i), t->width[i]);
        used += GAP + t->width[i];
    }
    ts_page_line_end(t->page);
}

static void say_head(const table *t, const ts_drive_float *item, ts_buffer *says)
{
    const ts_spool *spool = &t->answer->drive->spools[t->answer->drive->drive[item->drive].spool];
    const char     *unit  = ts_kind_shown(TS_KIND_LENGTH, t->page->units)->name;
    ts_buffer_print(says, "%s spool", spool->name);
    if (item->missing != NULL) {
        ts_buffer_print(says, ": not computable, %s is not known", item->missing);
    } else {
        ts_buffer_add(says, ": axial travel ");
        ts_page_value_text(t->page, says, item->s[0], TS_KIND_LENGTH, 3);
        ts_buffer_add(says, "..");
        ts_page_value_text(t->page, says, item->s[1], TS_KIND_LENGTH, 3);
        ts_buffer_print(says, " %s, radial \xC2\xB1", unit);
        ts_page_value_text(t->page, says, item->r, TS_KIND_LENGTH, 3);
        ts_buffer_print(says, " %s", unit);
    }
}

static void put_head(table *t, const ts_drive_float *item)
{
    ts_buffer says;
    ts_buffer_open(&says, t->answer->allocator);
    say_head(t, item, &says);
    ts_page_wrap_made(t->page, &says, 2, 0);
}

static void one(table *t, const ts_drive_float *item)
{
    put_head(t, item);
    if (item->missing != NULL)
        return;
    lay_out(t, item);
    ts_page_tone(t->page, TS_TONE_FAINT);
    put_row(t, item, ROWS);
    ts_page_tone(t->page, TS_TONE_PLAIN);
    for (int row = 0; row < ROWS; row++)
        put_row(t, item, row);
}

void ts_float_table(const ts_answer *answer, ts_page *page)
{
    table t = {.answer = answer, .page = page};
    if (answer->floats == NULL || answer->floats->count == 0)
        return;
    ts_page_heading(page,
                    "Float of the take-offs: bounds over all travel, building and temperatures "
                    "(=: chosen; *: sizes made up for it; travel counts from the cold build, + "
                    "rearward)");
    ts_buffer_open(&t.text, answer->allocator);
    for (uint32_t d = 0; d < answer->floats->count; d++)
        one(&t, &answer->floats->items[d]);
    page->out->failed = page->out->failed || t.text.failed;
    ts_buffer_close(&t.text);
}

/* ---- the same in a report -------------------------------------------------------------------- */

static void one_cells(table *t, ts_chapter *chapter, const ts_drive_float *item)
{
    ts_column columns[TS_FLOAT_SCHEMES + 1] = {{"", false}};
    say_head(t, item, &chapter->cell);
    for (int i = 0; i < TS_FLOAT_SCHEMES && item->missing == NULL; i++) {
        const ts_text head = cell(t, item, ROWS, i);
        columns[i + 1] =
            (ts_column){ts_arena_copy(chapter->manuscript->arena, head.at, head.length), true};
        chapter->manuscript->failed = chapter->manuscript->failed || columns[i + 1].head == NULL;
    }
    if (!chapter->cell.failed && !chapter->manuscript->failed && item->missing != NULL)
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
    else if (!chapter->cell.failed && !chapter->manuscript->failed)
        ts_manuscript_table(chapter->manuscript, chapter->cell.bytes, columns,
                            TS_FLOAT_SCHEMES + 1);
    ts_buffer_clear(&chapter->cell);
    for (int row = 0; row < ROWS && item->missing == NULL; row++) {
        ts_manuscript_cell(chapter->manuscript, head(t, row));
        for (int i = 0; i < TS_FLOAT_SCHEMES; i++)
            ts_manuscript_cell(chapter->manuscript, cell(t, item, row, i));
    }
}

void ts_float_cells(ts_chapter *chapter)
{
    table t = {.answer = chapter->answer, .page = &chapter->page};
    ts_buffer_open(&t.text, chapter->answer->allocator);
    ts_manuscript_text(chapter->manuscript, TS_BLOCK_FAINT,
                       "Bounds over all travel, building and temperatures (=: chosen; *: sizes "
                       "made up for it); travel counts from the cold build, + rearward.");
    for (uint32_t d = 0; d < chapter->answer->floats->count; d++)
        one_cells(&t, chapter, &chapter->answer->floats->items[d]);
    chapter->manuscript->failed = chapter->manuscript->failed || t.text.failed;
    ts_buffer_close(&t.text);
}
