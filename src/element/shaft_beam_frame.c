/* element/shaft_beam_frame.c: which stations has a shaft, and how stiff is it between them? */
#include "element/shaft_beam.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

const char *ts_beam_fault_says(ts_beam_fault fault)
{
    static const char *const says[] = {
        [TS_BEAM_FINE]        = "fine",
        [TS_BEAM_BAD_SECTION] = "sections must follow without a gap; d_o > d_i, E, G > 0",
        [TS_BEAM_TOO_FEW]     = "a shaft needs two supports, or one that holds it against tilting",
        [TS_BEAM_OUTSIDE]     = "a support, a load or a place lies outside of the shaft",
        [TS_BEAM_TWO_LOCATE]  = "only one support may carry the axial load",
        [TS_BEAM_TOO_MANY]    = "there are more supports, loads or steps than there is room for",
        [TS_BEAM_BAD_NUMBER]  = "a stiffness must be above 0 and a load must be a number",
    };

    return says[fault];
}

double ts_shear_coefficient(double d_o, double d_i, double nu)
{
    const double m = d_i / d_o, ring = (1.0 + m * m) * (1.0 + m * m);

    return 6.0 * (1.0 + nu) * ring / ((7.0 + 6.0 * nu) * ring + (20.0 + 12.0 * nu) * m * m);
}

static bool sections_are_fine(const ts_beam *beam)
{
    if (beam->section_count < 1 || !(beam->E > 0.0 && beam->G > 0.0 && beam->E < 1e15))
        return false;
    for (int i = 0; i < beam->section_count; i++) {
        const ts_beam_section *s = &beam->sections[i];

        if (!(s->x_2 > s->x_1 && s->d_i >= 0.0 && s->d_o > s->d_i && fabs(s->x_1) < 1e3 &&
              fabs(s->x_2) < 1e3 && s->d_o < 1e3))
            return false;
        if (i > 0 && fabs(s->x_1 - beam->sections[i - 1].x_2) > 1e-9)
            return false;
    }
    return true;
}

static ts_beam_fault judge_supports(const ts_beam *beam)
{
    int holding = 0, locating = 0;

    if (beam->support_count > TS_BEAM_SUPPORTS_MOST)
        return TS_BEAM_TOO_MANY;
    for (int i = 0; i < beam->support_count; i++) {
        const ts_beam_support *s = &beam->supports[i];

        if (!(s->k_r > 0.0 && s->k_t >= 0.0) || isnan(s->x))
            return TS_BEAM_BAD_NUMBER;
        holding += s->k_t > 0.0 ? 2 : 1;
        locating += s->locates ? 1 : 0;
        for (int k = 0; k < i; k++)
            if (fabs(s->x - beam->supports[k].x) < 1e-9)
                return TS_BEAM_BAD_NUMBER;
    }
    if (locating > 1)
        return TS_BEAM_TWO_LOCATE;
    return holding >= 2 ? TS_BEAM_FINE : TS_BEAM_TOO_FEW;
}

#define SAME_PLACE 1e-9 /* m */

/* Puts x among the stations, in order.  False without room. */
static bool add_station(ts_beam_frame *frame, double x)
{
    int at = 0;

    while (at < frame->count && frame->x[at] < x - SAME_PLACE)
        at++;
    if (at < frame->count && fabs(frame->x[at] - x) <= SAME_PLACE)
        return true;
    if (frame->count == TS_BEAM_STATIONS_MOST)
        return false;
    for (int i = frame->count; i > at; i--)
        frame->x[i] = frame->x[i - 1];
    frame->x[at] = x;
    frame->count++;
    return true;
}

int ts_beam_station(const ts_beam_frame *frame, double x)
{
    for (int i = 0; i < frame->count; i++)
        if (fabs(frame->x[i] - x) <= SAME_PLACE)
            return i;
    return -1;
}

static ts_beam_fault add_stations(const ts_beam *beam, ts_beam_frame *frame)
{
    const double from = beam->sections[0].x_1, to = beam->sections[beam->section_count - 1].x_2;
    bool         room = add_station(frame, from);

    for (int i = 0; i < beam->section_count; i++)
        room = room && add_station(frame, beam->sections[i].x_2);
    for (int i = 0; i < beam->support_count + beam->place_count; i++) {
        const double x =
            i < beam->support_count ? beam->supports[i].x : beam->places[i - beam->support_count];

        if (!(x >= from - SAME_PLACE && x <= to + SAME_PLACE))
            return TS_BEAM_OUTSIDE;
        room = room && add_station(frame, x);
    }
    return room ? TS_BEAM_FINE : TS_BEAM_TOO_MANY;
}

static void stiffen(const ts_beam *beam, ts_beam_frame *frame)
{
    const double nu      = beam->E / (2.0 * beam->G) - 1.0;
    int          section = 0;

    for (int i = 0; i + 1 < frame->count; i++) {
        const double middle = (frame->x[i] + frame->x[i + 1]) / 2.0;

        while (section + 1 < beam->section_count && middle > beam->sections[section].x_2)
            section++;
        const double d_o = beam->sections[section].d_o, d_i = beam->sections[section].d_i;
        const double o_4 = d_o * d_o * d_o * d_o, i_4 = d_i * d_i * d_i * d_i;
        const double area = pi / 4.0 * (d_o * d_o - d_i * d_i);

        frame->d_o[i] = d_o;
        frame->d_i[i] = d_i;
        frame->EI[i]  = beam->E * pi / 64.0 * (o_4 - i_4);
        frame->GJ[i]  = beam->G * pi / 32.0 * (o_4 - i_4);
        frame->GA[i]  = INFINITY;
        if (beam->shear)
            frame->GA[i] = beam->G * area * ts_shear_coefficient(d_o, d_i, nu);
    }
}

ts_beam_fault ts_beam_prepare(const ts_beam *beam, ts_beam_frame *frame)
{
    if (!sections_are_fine(beam))
        return TS_BEAM_BAD_SECTION;
    ts_beam_fault fault = judge_supports(beam);
    if (fault != TS_BEAM_FINE)
        return fault;
    frame->count = 0;
    fault        = add_stations(beam, frame);
    if (fault != TS_BEAM_FINE)
        return fault;
    stiffen(beam, frame);
    for (int i = 0; i < beam->support_count; i++)
        frame->support_at[i] = ts_beam_station(frame, beam->supports[i].x);
    return TS_BEAM_FINE;
}
