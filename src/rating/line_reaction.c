/* rating/line_reaction.c: what do the bearings of a line carry, and which one holds it along? */
#include "rating/drive_lines_parts.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

double ts_line_tube_mass(const ts_line *line)
{
    const ts_beam_section *s = &line->sections[0];

    return line->rho * pi / 4.0 * (s->d_o * s->d_o - s->d_i * s->d_i) * (s->x_2 - s->x_1);
}

/* Half of the tube's mass hangs in its middle. */
static void react_tube(const ts_line *line, ts_line_case *one)
{
    one->reaction[0].F[0] = one->reaction[0].F[2] = 0.0;
    one->reaction[0].F[1]                         = one->reaction[0].F_r =
        ts_line_tube_mass(line) / 2.0 * TS_LINE_UNBALANCE * fabs(one->omega);
}

/* Two bearings that do not hold against tilting are a matter of balance alone. */
void ts_line_react(const ts_line *line, ts_line_case *one)
{
    double axial = 0.0;

    if (line->kind == TS_LINE_TUBE) {
        if (line->bearing_count > 0)
            react_tube(line, one);
        return;
    }
    for (int k = 0; k < 2; k++)
        for (int plane = 0; plane < 2; plane++) {
            const double other = line->bearings[1 - k].x, span = line->bearings[k].x - other;
            double       moment = 0.0, couple = 0.0; /* x towards the plane */

            for (int g = 0; g < line->gear_count; g++) {
                moment += one->load[g].F[1 + plane] * (line->gears[g].x - other);
                couple += plane == 0 ? one->load[g].M[2] : -one->load[g].M[1];
            }
            one->reaction[k].F[1 + plane] = -(moment + couple) / span;
        }
    for (int g = 0; g < line->gear_count; g++)
        axial += one->load[g].F[0];
    for (int k = 0; k < 2; k++) {
        one->reaction[k].F[0] = line->bearings[k].locates ? -axial : 0.0;
        one->reaction[k].F_r  = hypot(one->reaction[k].F[1], one->reaction[k].F[2]);
    }
}

/* ---- which one locates ----------------------------------------------------------------------- */

bool ts_line_has_axial(const ts_lines_case *c, const ts_line *line)
{
    for (int g = 0; g < line->gear_count; g++) {
        const ts_gear *gear = &c->train->gears[line->gears[g].gear];
        if (gear->role == TS_GEAR_BEVEL || gear->beta.value > 0.0)
            return true;
    }
    return false;
}

/* A cylindrical roller bearing lets its rings slide past each other. */
static bool may_locate(const ts_line_bearing *b)
{
    return b->there && !(b->seat->form.standing == TS_GIVEN &&
                         b->seat->form.value == TS_SEAT_CYLINDRICAL_ROLLER);
}

/* What the file says of either bearing stands; -1: it says nothing.  What it says of both must not
 * contradict. */
static int told_locating(ts_line *line)
{
    int told = -1;

    line->quarrel = NULL;
    for (int k = 0; k < line->bearing_count; k++) {
        const ts_pick locates = line->bearings[k].seat->locates;
        if (locates.standing != TS_GIVEN)
            continue;
        const int means = locates.value == TS_YES ? k : 1 - k;
        if (told >= 0 && means != told)
            line->quarrel = locates.value == TS_YES
                                ? "both its bearings are told to hold it along its axis"
                                : "neither of its bearings may hold it along its axis";
        told = means;
    }
    return told;
}

void ts_line_choose_locating(const ts_lines_case *c, ts_line *line)
{
    const int told  = told_locating(line);
    int       first = ts_line_has_axial(c, line) ? 1 : 0; /* away from the bevel gear */

    line->slides = false;
    for (int k = 0; k < line->bearing_count; k++)
        line->bearings[k].locates = false;
    if (told >= 0)
        first = told;
    else if (line->bearing_count == 2 && !may_locate(&line->bearings[first]))
        first = 1 - first;
    if (first < line->bearing_count && line->bearings[first].there) {
        line->bearings[first].locates = true;
        line->slides = line->kind != TS_LINE_TUBE && !may_locate(&line->bearings[first]);
    }
}
