/* rating/line_bend.c: how does a line bend under its loads? */
#include "rating/drive_lines_parts.h"

#include <math.h>

/* ---- unit loads ------------------------------------------------------------------------------ */

static int list_places(const ts_line *line, double places[3 * TS_LINE_GEARS_MOST])
{
    int count = 0;

    for (int g = 0; g < line->gear_count; g++)
        for (int part = -1; part <= 1; part++)
            places[count++] = line->gears[g].x + part * line->gears[g].width / 2.0;
    return count;
}

/* The unit force acts in the plane x-y, the couple in x-z, where M_y turns the other way. */
static void read_answer(const ts_line *line, const ts_beam_frame *frame, const ts_beam_result *r,
                        bool couple, ts_line_answer *out)
{
    for (int g = 0; g < line->gear_count; g++) {
        const double         x = line->gears[g].x, half = line->gears[g].width / 2.0;
        const ts_beam_state *middle = &r->left[ts_beam_station(frame, x)];
        const ts_beam_state *front  = &r->left[ts_beam_station(frame, x - half)];
        const ts_beam_state *rear   = &r->left[ts_beam_station(frame, x + half)];

        out->v[g]      = couple ? middle->v_z : middle->v_y;
        out->theta[g]  = couple ? middle->theta_z : middle->theta_y;
        out->end[g][0] = couple ? front->v_z : front->v_y;
        out->end[g][1] = couple ? rear->v_z : rear->v_y;
        out->dv[g]     = out->end[g][1] - out->end[g][0];
    }
}

/* From end to end of the face. */
static double twisting_of(const ts_beam_frame *frame, const ts_line_gear *gear)
{
    const int first = ts_beam_station(frame, gear->x - gear->width / 2.0);
    const int last  = ts_beam_station(frame, gear->x + gear->width / 2.0);
    double    sum   = 0.0;

    for (int i = first; i < last; i++)
        sum += (frame->x[i + 1] - frame->x[i]) / frame->GJ[i];
    return 1.0 / sum;
}

static ts_beam_fault unit_answers(ts_line *line, ts_line_bent *out)
{
    ts_beam_support supports[TS_LINE_BEARINGS_MOST];
    double          places[3 * TS_LINE_GEARS_MOST];
    ts_beam_frame   frame;
    ts_beam_result  result;
    ts_beam         beam = {.sections      = line->sections,
                            .supports      = supports,
                            .places        = places,
                            .section_count = line->section_count,
                            .place_count   = list_places(line, places),
                            .E             = line->E,
                            .G             = line->G,
                            .shear         = true};

    for (int k = 0; k < line->bearing_count; k++)
        if (line->bearings[k].there)
            supports[beam.support_count++] =
                (ts_beam_support){.x = line->bearings[k].x, .k_r = line->bearings[k].k_r};
    ts_beam_fault fault = ts_beam_prepare(&beam, &frame);
    for (int g = 0; g < line->gear_count && fault == TS_BEAM_FINE; g++) {
        const ts_beam_load load = {.x = line->gears[g].x, .F_y = 1.0, .M_y = -1.0};

        line->gears[g].k_twist = twisting_of(&frame, &line->gears[g]);
        fault                  = ts_beam_solve(&beam, &frame, &load, 1, &result);
        if (fault != TS_BEAM_FINE)
            break;
        read_answer(line, &frame, &result, false, &out->force[g]);
        read_answer(line, &frame, &result, true, &out->couple[g]);
    }
    return fault;
}

/* ---- conditions ------------------------------------------------------------------------------ */

/* In plane 0 (x-y) the couple is M_z; in plane 1 (x-z) it is -M_y. */
static void add_up(const ts_line *line, const ts_line_bent *b, ts_line_case *one, int plane)
{
    for (int at = 0; at < line->gear_count; at++) {
        ts_line_gear_state *state = &one->state[at];

        state->v[plane] = state->theta[plane] = state->dv[plane] = 0.0;
        state->end[0][plane] = state->end[1][plane] = 0.0;
        for (int g = 0; g < line->gear_count; g++) {
            const double F = one->load[g].F[1 + plane];
            const double M = plane == 0 ? one->load[g].M[2] : -one->load[g].M[1];

            state->v[plane] += F * b->force[g].v[at] + M * b->couple[g].v[at];
            state->theta[plane] += F * b->force[g].theta[at] + M * b->couple[g].theta[at];
            state->dv[plane] += F * b->force[g].dv[at] + M * b->couple[g].dv[at];
            for (int e = 0; e < 2; e++)
                state->end[e][plane] += F * b->force[g].end[at][e] + M * b->couple[g].end[at][e];
        }
    }
}

void ts_line_bend(const ts_lines_case *c, uint32_t number)
{
    ts_line     *line = &c->lines->lines[number];
    ts_line_bent b;

    if (line->kind == TS_LINE_TUBE)
        return;
    const ts_beam_fault fault = unit_answers(line, &b);
    if (fault != TS_BEAM_FINE) {
        line->fault = ts_beam_fault_says(fault);
        return;
    }
    for (uint32_t k = 0; k < c->drive->condition_count; k++) {
        ts_line_case *one = ts_line_case_at(c, number, k);
        if (!one->known)
            continue;
        add_up(line, &b, one, 0);
        add_up(line, &b, one, 1);
    }
    if (c->workings != NULL)
        ts_line_note_bent(c, number, &b);
}
