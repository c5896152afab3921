/* rating/line_trial.c: which bearings may a seat have, and how does a line fare with others? */
#include "rating/drive_lines_parts.h"

#include <math.h>

static const ts_bearing_form forms[TS_MAKES] = {
    [TS_MAKE_DEEP_GROOVE]  = TS_BEARING_DEEP_GROOVE,
    [TS_MAKE_ANGULAR]      = TS_BEARING_ANGULAR_CONTACT,
    [TS_MAKE_ANGULAR_PAIR] = TS_BEARING_ANGULAR_CONTACT,
    [TS_MAKE_ROLLER]       = TS_BEARING_CYLINDRICAL_ROLLER,
};

static bool may_have(const ts_line_bearing *b, bool axial, bool balls, ts_line_make make)
{
    if (!balls)
        return ts_line_fits_form(b, axial, make);
    return b->seat->form.standing != TS_GIVEN && !b->locates && axial &&
           make == TS_MAKE_DEEP_GROOVE && b->seat->rows.standing != TS_GIVEN;
}

static bool has_told_sections(const ts_lines *lines, const ts_line *line)
{
    const ts_box_shaft *record = lines->motion->train->shafts[line->shaft].record;

    return line->kind == TS_LINE_BOX && record != NULL && record->section_count > 0;
}

/* From the thinnest journal to the widest; of the seat alone where the outline is told. */
static void bore_range(const ts_lines *lines, const ts_line *line, const ts_line_bearing *b,
                       double range[2])
{
    const ts_measure told = b->seat->bore;

    range[0] = line->d_journal;
    range[1] = line->kind == TS_LINE_TUBE ? (double)INFINITY : line->d_most;
    if (!ts_measure_known(told))
        return;
    range[0] = fmin(range[0], told.value);
    if (has_told_sections(lines, line))
        range[0] = range[1] = told.value;
}

const char *ts_lines_fixed_seat(const ts_line_bearing *b)
{
    if (!b->there)
        return "the file says that there is none";
    if (ts_line_is_own(b->seat) || ts_measure_known(b->seat->width))
        return "the file tells its numbers";
    return NULL;
}

int ts_lines_list_picks(const ts_drive *drive, const ts_lines *lines, uint32_t number, int k,
                        bool balls, ts_line_pick picks[TS_LINE_PICKS_MOST])
{
    const ts_lines_case    c       = {drive, lines->motion->train, NULL, NULL};
    const ts_line         *line    = &lines->lines[number];
    const ts_line_bearing *b       = &line->bearings[k];
    ts_lines_catalog      *catalog = lines->catalog;
    const bool             axial   = ts_line_has_axial(&c, line);
    double                 range[2];
    int                    count = 0, bores = 0;

    bore_range(lines, line, b, range);
    for (size_t i = 0; i < catalog->bore_count && bores < TS_LINE_BORES_MOST; i++) {
        if (catalog->bores[i] < range[0] - 1e-6 || catalog->bores[i] > range[1] + 1e-6)
            continue;
        bores++;
        for (int s = 0; s < TS_LINE_SERIES; s++) {
            const size_t size = catalog->at[i * TS_LINE_SERIES + (size_t)s];

            for (int make = 0; make < TS_MAKES && size < catalog->size_count; make++) {
                if (!may_have(b, axial, balls, (ts_line_make)make))
                    continue;
                const ts_line_generic *one = ts_lines_generic(catalog, size, (ts_line_make)make);
                if (one->sound && count < TS_LINE_PICKS_MOST)
                    picks[count++] = (ts_line_pick){forms[make], one->bearing.rows, s,
                                                    catalog->sizes[size], one->bearing.inside};
            }
        }
    }
    return count;
}

void ts_line_put_pick(ts_bearing_seat *seat, const ts_line_pick *pick)
{
    seat->form   = (ts_pick){(int)pick->form, seat->node, TS_GIVEN};
    seat->series = (ts_pick){pick->series, seat->node, TS_GIVEN};
    seat->bore   = (ts_measure){pick->size.d, seat->node, TS_GIVEN};
    if (pick->form == TS_BEARING_ANGULAR_CONTACT)
        seat->rows = (ts_tally){pick->rows, seat->node, TS_GIVEN};
}

void ts_lines_try_bearings(const ts_drive *drive, ts_lines *lines, uint32_t line)
{
    const ts_lines_case c = {drive, lines->motion->train, lines, NULL};

    (void)ts_line_settle(&c, line);
}
