/* rating/line_settle.c: in which layout does a line carry the very bearings that it was laid out
 * for?
 *
 * The width of a bearing moves what stands beside it, and with it the loads by which the bearing is
 * chosen.  So layout and choice take turns: first with widths of reference, then with those of what
 * was chosen, until a choice leaves the layout as it is.  A line whose file tells these bearings is
 * laid out in the same way, and gets the same numbers.
 *
 * Two layouts may each ask for the bearing of the other.  From round FREE on, therefore, no bearing
 * is traded for a lighter one: every further round makes one heavier at least, and there are only
 * so many.
 */
#include "rating/drive_lines_parts.h"

#include <math.h>

#define FREE 2
/* Far more than ever were met; the bearings of a table are not. */
#define ROUNDS_MOST 64

static bool is_known(const ts_line *line, const ts_line_bearing *b)
{
    return b->there && b->fault == NULL && line->missing == NULL && b->width > 0.0;
}

/* Takes what was chosen as what the next layout is for; true: it is that of this layout. */
static bool agree(ts_line *line)
{
    bool same = true;

    for (int k = 0; k < line->bearing_count; k++) {
        ts_line_bearing *b = &line->bearings[k];

        if (!is_known(line, b))
            continue;
        same          = same && fabs(b->width - b->laid_width) < 1e-9;
        b->laid_width = b->width;
        if (line->rounds >= FREE)
            b->least_bulk = b->bulk;
    }
    return same;
}

bool ts_line_settle(const ts_lines_case *c, uint32_t number)
{
    ts_line *line = &c->lines->lines[number];

    line->rounds  = 0;
    line->settled = false;
    for (int k = 0; k < line->bearing_count; k++)
        line->bearings[k].laid_width = line->bearings[k].least_bulk = 0.0;
    while (!line->settled && line->rounds < ROUNDS_MOST) {
        if (!ts_line_place(c, number))
            return false;
        ts_line_bear(c, number);
        line->rounds++;
        line->settled = agree(line);
    }
    ts_line_rate(c, number);
    if (!line->settled)
        line->fault = "its bearings and its layout do not agree with each other";
    return true;
}
