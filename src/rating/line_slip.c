/* rating/line_slip.c: do the elements of a bearing follow the shaft when it changes its speed? */
#include "rating/drive_lines_parts.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* Speeding up is asked for at 3600 only. */
#define SLOW_DOWN  (5000.0 * pi / 30.0) /* rad/s2  at the box input, SAE 841605 */
#define TRACTION   0.03 /*      of oil between element and race; common practice        */
#define CAGE_SHARE 1.15 /*      elements and cage over the elements; common practice    */

#define INERTIA "derived: what orbits with (1 - gamma)/2 of the speed and spins has that energy"

static const ts_formula m_ball_formula = {"m_set", "mass of the balls", "kg", "rho*i*Z*pi/6*D_w^3",
                                          "derived: balls of steel"};
static const ts_formula m_roller_formula = {"m_set", "mass of the rollers", "kg",
                                            "rho*i*Z*pi/4*D_w^2*L_we", "derived: cylinders"};
static const ts_formula J_set_formula    = {
       "J_set", "inertia of elements and cage, as the inner ring feels it", "kg.m2",
       "cage*m_set*D_pw^2/4*((1 - gamma)/2)^2 + f_spin*m_set*D_w^2*(D_pw/D_w*(1 - gamma^2)/2)^2",
       INERTIA};
static const ts_formula F_follow_formula = {
    "F_follow", "load whose traction lets the elements follow the shaft", "N",
    "J_set*a_shaft/(mu*(D_pw - D_w)/2)", "derived: torque of the traction at the inner race"};

static double inertia_of_elements(const ts_line_bearing *b, ts_workings *w)
{
    const bool   roller = b->bearing.form == TS_BEARING_CYLINDRICAL_ROLLER;
    const double D_w = b->bearing.inside.D_w, D_pw = b->bearing.inside.D_pw, rho = 7830.0;
    const double Z = b->bearing.inside.Z, i = b->bearing.rows, L_we = b->bearing.inside.L_we;
    const double gamma = b->ability.gamma, cage = CAGE_SHARE, f_spin = roller ? 0.125 : 0.1;
    const double m_set =
        roller
            ? TS_STEP(w, m_roller_formula, rho * i * Z * pi / 4.0 * D_w * D_w * L_we, rho, i, Z,
                      D_w, L_we)
            : TS_STEP(w, m_ball_formula, rho * i * Z * pi / 6.0 * D_w * D_w * D_w, rho, i, Z, D_w);
    const double orbit = (1.0 - gamma) / 2.0, spin = D_pw / D_w * (1.0 - gamma * gamma) / 2.0;

    ts_workings_assumed(w, "cage", cage, "1",
                        "elements and cage over the elements; common "
                        "practice, no source");
    ts_workings_row(w, "f_spin", f_spin, "1", "inertia of a ball, of a roller, over m D_w^2");
    return TS_STEP(w, J_set_formula,
                   cage * m_set * D_pw * D_pw / 4.0 * (orbit * orbit) +
                       f_spin * m_set * D_w * D_w * (spin * spin),
                   cage, m_set, D_pw, gamma, f_spin, D_w);
}

/* rad/s2 of the shaft when the box input slows down as fast as it may. */
static double hardest_change(const ts_lines_case *c, const ts_line *line)
{
    const ts_shaft_motion *shaft = &c->lines->motion->shafts[line->shaft];

    for (uint32_t s = 0; s < c->train->shaft_count; s++) {
        const ts_shaft *input = &c->train->shafts[s];
        if (input->kind == TS_SHAFT_BOX && input->spool == c->train->shafts[line->shaft].spool &&
            c->train->meshes[input->mesh].kind == TS_MESH_BEVEL)
            return SLOW_DOWN * ts_rational_value(shaft->ratio) /
                   ts_rational_value(c->lines->motion->shafts[s].ratio);
    }
    return SLOW_DOWN;
}

double ts_line_load_to_follow(const ts_lines_case *c, const ts_line *line, const ts_line_bearing *b,
                              ts_workings *w)
{
    const double D_w = b->bearing.inside.D_w, D_pw = b->bearing.inside.D_pw, mu = TRACTION;
    const double a_shaft = hardest_change(c, line), rho = 7830.0;

    ts_workings_row(w, "rho", rho, "kg/m3",
                    "steel of rolling bearings; data/metal.tsv rounds to it");
    ts_workings_assumed(w, "mu", mu, "1",
                        "traction of oil between element and race; common practice, no source");
    ts_workings_assumed(w, "a_shaft", a_shaft, "rad/s2",
                        "5000 rpm each second at the box input, SAE 841605, times the ratio");
    const double J_set = inertia_of_elements(b, w);
    return TS_STEP(w, F_follow_formula, J_set * a_shaft / (mu * (D_pw - D_w) / 2.0), J_set, a_shaft,
                   mu, D_pw, D_w);
}

void ts_line_judge_slip(const ts_lines_case *c, uint32_t number, int k)
{
    const ts_line   *line = &c->lines->lines[number];
    ts_line_bearing *b    = &c->lines->lines[number].bearings[k];
    const double     due  = ts_line_load_to_follow(c, line, b, NULL);

    b->F_follow      = due;
    b->slip_start    = INFINITY;
    b->slip_start_at = -1;
    for (uint32_t i = 0; i < c->drive->condition_count; i++) {
        const ts_line_case *one = ts_line_case_at(c, number, i);
        if (!(fabs(one->omega) > 0.0) || !(one->duty[k].P / due < b->slip_start))
            continue;
        b->slip_start    = one->duty[k].P / due;
        b->slip_start_at = (int32_t)i;
    }
}
