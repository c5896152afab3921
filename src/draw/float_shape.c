/* draw/float_shape.c: which bodies of revolution make up a take-off? */
#include "draw/float_shape.h"

#include <math.h>

/* What no file says, for the eye alone. */
#define RIM    2.2  /* of a bevel gear behind its roots, in outer modules  */
#define ROTOR  0.62 /* outside of the rotor over the inner roots of bevel 1 */
#define HOLLOW 0.78 /* inside of it                                         */
#define CLEAR  2e-3 /* m  between the rotor and the end of the radial shaft */
#define BESIDE 3e-3 /* m  from a bearing to the spline behind it            */
#define STUBBY 0.5  /* shaft over the inner roots where no line is computed */

ts_float_ring ts_float_tube(double t_1, double t_2, double d_i, double d_o)
{
    return (ts_float_ring){
        .t = {t_1, t_2, t_2, t_1}, .r = {0.5 * d_i, 0.5 * d_i, 0.5 * d_o, 0.5 * d_o}, .count = 4};
}

double ts_float_along(const ts_float_parts *parts, const ts_line *line, int gear, double x)
{
    const double delta = gear == 0 ? parts->pair.delta_1 : parts->pair.delta_2;
    const double sign  = line->kind == TS_LINE_STUB ? -1.0 : 1.0;

    return sign * (x - line->gears[0].x) + parts->pair.R_m * cos(delta);
}

static const ts_line *line_of(const ts_lines *lines, ts_line_kind kind, uint32_t shaft)
{
    for (uint32_t l = 0; lines != NULL && l < lines->count; l++) {
        const ts_line *line = &lines->lines[l];
        if (line->kind == kind && line->shaft == shaft && line->fault == NULL &&
            line->missing == NULL && line->gear_count > 0 && line->section_count > 0)
            return line;
    }
    return NULL;
}

/* Teeth between tip and root cone; the rim behind them, down to the shaft. */
static void shape_gear(ts_float_parts *p, const ts_bevel_teeth *teeth, int gear, double r_shaft)
{
    const ts_bevel_blank *b     = &p->blank;
    const double          delta = gear == 0 ? p->pair.delta_1 : p->pair.delta_2;
    const double          t_fo  = p->pair.R_e * cos(delta) + teeth->h_fe[gear] * sin(delta);
    const double          t_fi  = teeth->R_i * cos(delta) + teeth->h_fi[gear] * sin(delta);
    const double          rim   = RIM * p->pair.in.m_et;
    const double          r_fo = 0.5 * b->d_fe[gear], r_fi = 0.5 * b->d_fi[gear];
    const double r_b = fmax(r_shaft, r_fo - rim * cos(delta)), t_b = t_fo + rim * sin(delta);

    p->teeth[gear]  = (ts_float_ring){.t = {b->t_xi[gear], b->t_xo[gear], t_fo, t_fi},
                                      .r = {0.5 * b->d_ai[gear], 0.5 * b->d_ae[gear], r_fo, r_fi},
                                      .count = 4};
    p->t_back[gear] = t_b + 0.5 * rim;
    p->body[gear] =
        (ts_float_ring){.t     = {t_fi, t_fo, t_b, p->t_back[gear], p->t_back[gear], t_fi},
                        .r     = {r_fi, r_fo, r_b, fmax(r_shaft, 0.75 * r_b), r_shaft, r_shaft},
                        .count = 6};
}

static double shaft_radius(const ts_line *line, double r_fi)
{
    return fmin(line != NULL ? 0.5 * line->d_seat : STUBBY * r_fi, 0.85 * r_fi);
}

/* Behind the last bearing of the line on the side of the back of bevel 1. */
static void place_spline(ts_float_parts *p)
{
    p->t_spline = p->t_back[0] + BESIDE;
    p->t_end    = p->t_spline;
    for (int k = 0; p->stub != NULL && k < p->stub->bearing_count; k++) {
        const ts_line_bearing *b = &p->stub->bearings[k];
        const double           t = ts_float_along(p, p->stub, 0, b->x) + 0.5 * b->width;
        if (b->there)
            p->t_spline = fmax(p->t_spline, t + BESIDE);
    }
    for (int i = 0; p->stub != NULL && i < p->stub->section_count; i++) {
        const ts_beam_section *s = &p->stub->sections[i];
        p->t_end                 = fmax(p->t_end, fmax(ts_float_along(p, p->stub, 0, s->x_1),
                                                       ts_float_along(p, p->stub, 0, s->x_2)));
    }
}

/* Half of the travel goes either way of the teeth that stand still, as the comparison has it. */
static void place_sliders(ts_float_parts *p, const ts_drive_float *item)
{
    const ts_float_option *stub = &item->options[TS_FLOAT_SPLINED_STUB];
    const ts_float_option *spur = &item->options[TS_FLOAT_WIDE_SPUR];

    p->D       = p->stub != NULL ? p->stub->d_journal : 0.5 * p->pair.d_m1;
    p->L_e     = stub->engaged + fmax(fmax(0.0, -item->s[0]), fmax(0.0, item->s[1]));
    p->d_s     = p->pair.d_e1;
    p->b_s     = spur->engaged + fmax(0.0, -2.0 * spur->left);
    p->b_idler = p->b_s + spur->slide[1] - spur->slide[0];
}

void ts_float_parts_of(const ts_floats *floats, const ts_drive_float *item, ts_float_parts *p)
{
    const ts_motion      *motion = floats->power->motion;
    const ts_mesh_motion *turn   = &motion->meshes[item->mesh];
    const ts_mesh        *mesh   = &motion->train->meshes[item->mesh];

    *p       = (ts_float_parts){.pair = turn->bevel};
    p->inner = line_of(floats->lines, TS_LINE_INNER, mesh->driven_shaft);
    p->stub  = line_of(floats->lines, TS_LINE_STUB, mesh->driver_shaft);
    if (p->stub == NULL)
        p->stub = p->inner;
    ts_bevel_blank_solve(&turn->bevel, &turn->teeth, &p->blank, NULL);
    for (int gear = 0; gear < 2; gear++)
        shape_gear(p, &turn->teeth, gear,
                   shaft_radius(gear == 0 ? p->stub : p->inner, 0.5 * p->blank.d_fi[gear]));
    double below = 0.9 * p->blank.t_xi[1];
    p->t_radial  = p->t_back[1] + p->pair.in.b;
    for (int i = 0; p->inner != NULL && i < p->inner->section_count; i++)
        below = fmin(below, ts_float_along(p, p->inner, 1, p->inner->sections[i].x_1) - CLEAR);
    p->r_rotor[1] = fmin(ROTOR * 0.5 * p->blank.d_fi[0], fmax(below, CLEAR));
    p->r_rotor[0] = HOLLOW * p->r_rotor[1];
    for (int i = 0; p->inner != NULL && i < p->inner->section_count; i++)
        p->t_radial = fmax(p->t_radial, ts_float_along(p, p->inner, 1, p->inner->sections[i].x_2));
    place_spline(p);
    place_sliders(p, item);
}
