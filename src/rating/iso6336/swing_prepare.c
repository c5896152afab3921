/* rating/iso6336/swing_prepare.c: how stiff and how heavy is the mesh, and how exact? */
#include "rating/iso6336/gear_step.h"
#include "rating/iso6336/mesh_stiffness.h"
#include "rating/iso6336/prepare_parts.h"
#include "rating/iso6336/reduced_mass.h"
#include "rating/iso6336/running_in.h"

#include <math.h>
#include <stddef.h>

static const ts_formula C_R_formula = {
    .symbol  = "C_R",
    .meaning = "gear blank factor of the pair",
    .unit    = "1",
    .text    = "(C_R1 + C_R2)/2",
    .source  = ISO_6336_1 "9.3.1" RECALLED,
};

static void prepare_stiffness(ts_iso6336_prepared *p, ts_workings *workings)
{
    const ts_cylindrical_pair *pair = &p->pair;
    const double               m_n = pair->in.m_n, b[2] = {pair->in.b_1, pair->in.b_2};

    for (int gear = 0; gear < 2; gear++) {
        const ts_iso6336_gear *g = &p->mesh.gear[gear];

        p->gear[gear].C_R = 1.0;
        if (g->s_R > 0.0 && g->b_s > 0.0)
            p->gear[gear].C_R = ts_blank_factor(g->b_s, b[gear], g->s_R, m_n, gear, workings);
        else
            ts_workings_assumed(workings, gear == 0 ? "C_R1" : "C_R2", 1.0, "1",
                                "a blank without a web is as stiff as a disc");
    }
    const ts_tooth_flexibility_input teeth = {
        .z_n1   = p->gear[0].form.z_n,
        .z_n2   = p->gear[1].form.z_n,
        .x_1    = pair->x_1,
        .x_2    = pair->x_2,
        .pinion = ts_iso6336_pinion(pair),
    };
    const double                    C_R1 = p->gear[0].C_R, C_R2 = p->gear[1].C_R;
    const ts_single_stiffness_input single = {
        .qp   = ts_tooth_flexibility(&teeth, workings),
        .C_R  = TS_STEP(workings, C_R_formula, (C_R1 + C_R2) / 2.0, C_R1, C_R2),
        .C_B  = ts_rack_factor(pair->in.rack.h_fPs, pair->in.alpha_n, workings),
        .beta = pair->in.beta,
        .E_1  = p->mesh.gear[0].E,
        .E_2  = p->mesh.gear[1].E,
    };
    p->cp_100 = ts_single_stiffness(&single, workings);
}

#define RIM_BORE_TEXT(I)    "d_f" I " - 2*s_R" I
#define RIM_OUTSIDE_TEXT(I) "2*s_R" I " - d_f" I
#define B_SB_TEXT(I)        "b_s" I "/b_" I
static const ts_formula d_i_formulas[2] = TS_OF_BOTH_GEARS(
    "d_i", "diameter where the rim ends", "m", RIM_BORE_TEXT, "derived: rim below the roots");
static const ts_formula d_i_internal_formulas[2] = TS_OF_BOTH_GEARS(
    "d_i", "outer diameter of the rim", "m", RIM_OUTSIDE_TEXT, "derived: rim behind the roots");
static const ts_formula b_sb_formulas[2] = TS_OF_BOTH_GEARS(
    "b_sb", "web thickness over face width", "1", B_SB_TEXT, "derived: per unit face width");

static double inertia_of(const ts_iso6336_prepared *p, int gear, ts_workings *workings)
{
    const ts_iso6336_gear *g   = &p->mesh.gear[gear];
    const double           d_f = gear == 0 ? p->pair.d_f1 : p->pair.d_f2, s_R = g->s_R;
    const double           b = gear == 0 ? p->pair.in.b_1 : p->pair.in.b_2, b_s = g->b_s;
    ts_gear_blank          blank = {
                 .d_a   = gear == 0 ? p->pair.d_a1 : p->pair.d_a2,
                 .d_f   = d_f,
                 .d_web = g->d_web,
                 .rho   = g->rho,
    };

    if (s_R > 0.0 && d_f > 0.0)
        blank.d_i = TS_GEAR_STEP(workings, d_i_formulas, d_f - 2.0 * s_R, TS_OWN("d_f", d_f),
                                 TS_OWN("s_R", s_R));
    else if (s_R > 0.0)
        blank.d_i = TS_GEAR_STEP(workings, d_i_internal_formulas, 2.0 * s_R - d_f,
                                 TS_OWN("s_R", s_R), TS_OWN("d_f", d_f));
    if (!(blank.d_i > 0.0)) { /* a rim as thick as the gear is a disc */
        blank.d_i = 0.0;
        ts_workings_assumed(workings, gear == 0 ? "d_i1" : "d_i2", 0.0, "m", "the gear is solid");
    }
    if (blank.d_i > 0.0 && b_s > 0.0 && d_f > 0.0)
        blank.b_s_per_width =
            TS_GEAR_STEP(workings, b_sb_formulas, b_s / b, TS_OWN("b_s", b_s), TS_OWN("b_", b));
    return ts_blank_inertia(&blank, gear, workings);
}

static void prepare_mass(ts_iso6336_prepared *p, ts_workings *workings)
{
    for (int gear = 0; gear < 2; gear++) {
        const ts_iso6336_gear    *g   = &p->mesh.gear[gear];
        ts_iso6336_gear_prepared *out = &p->gear[gear];
        const double              d_b = gear == 0 ? p->pair.d_b1 : p->pair.d_b2;

        out->Js = g->Js;
        out->ms = INFINITY;
        if (d_b < 0.0 && !(g->s_R > 0.0) && !(g->Js > 0.0)) {
            p->remarks |= TS_REMARK(TS_REMARK_RING_HELD);
            ts_workings_assumed(workings, "ms_2", out->ms, "kg/m",
                                "the internal gear is held fast");
            continue;
        }
        if (!(g->Js > 0.0))
            out->Js = inertia_of(p, gear, workings);
        out->ms = ts_relative_mass(out->Js, d_b, gear, workings);
    }
    p->m_red = ts_reduced_mass(p->gear[0].ms, p->gear[1].ms, workings);
}

static const ts_formula f_pb_formula = {
    .symbol  = "f_pb",
    .meaning = "base pitch deviation, the larger of both gears",
    .unit    = "m",
    .text    = "max(f_pt1, f_pt2)*cos(alpha_t)",
    .source  = ISO_6336_1 "6.5.4" RECALLED,
};
static const ts_formula f_falpha_formula = {
    .symbol  = "f_falpha",
    .meaning = "profile form deviation, the larger of both gears",
    .unit    = "m",
    .text    = "max(f_falpha1, f_falpha2)",
    .source  = ISO_6336_1 "6.5.4" RECALLED,
};
static const ts_formula C_a_formula = {
    .symbol  = "C_a",
    .meaning = "tip relief, the smaller of both gears",
    .unit    = "m",
    .text    = "min(C_a1, C_a2)",
    .source  = ISO_6336_1 "6.5.4; the smaller one is common practice" RECALLED,
};
static const ts_formula C_a_worn_formula = {
    .symbol  = "C_a",
    .meaning = "tip relief by running in",
    .unit    = "m",
    .text    = "C_ay",
    .source  = ISO_6336_1 "6.5.4" RECALLED,
};
static const ts_formula C_a_one_formula = {
    .symbol  = "C_a",
    .meaning = "tip relief of one gear and running in of the other, the smaller",
    .unit    = "m",
    .text    = "min(C_a1 + C_a2, C_ay)",
    .source  = ISO_6336_1 "6.5.4; the smaller one is common practice" RECALLED,
};

static double relief_of(ts_iso6336_prepared *p, ts_workings *workings)
{
    const ts_iso6336_gear    *first = &p->mesh.gear[0], *second = &p->mesh.gear[1];
    const double              C_a1 = first->C_a, C_a2 = second->C_a;
    const ts_running_in_flank flank[2] = {{first->class, first->sigma_Hlim},
                                          {second->class, second->sigma_Hlim}};

    if (first->accuracy >= 6 || second->accuracy >= 6) {
        if (C_a1 > 0.0 || C_a2 > 0.0)
            p->remarks |= TS_REMARK(TS_REMARK_RELIEF_UNUSED);
        return NAN;
    }
    if (fabs(C_a1 - C_a2) > 0.1 * fmax(C_a1, C_a2))
        p->remarks |= TS_REMARK(TS_REMARK_RELIEF_UNEVEN);
    if (C_a1 > 0.0 && C_a2 > 0.0)
        return TS_STEP(workings, C_a_formula, fmin(C_a1, C_a2), C_a1, C_a2);
    const double C_ay = ts_running_in_relief(flank, workings);
    if (C_a1 > 0.0 || C_a2 > 0.0)
        return TS_STEP(workings, C_a_one_formula, fmin(C_a1 + C_a2, C_ay), C_a1, C_a2, C_ay);
    return TS_STEP(workings, C_a_worn_formula, C_ay, C_ay);
}

static void prepare_deviations(ts_iso6336_prepared *p, ts_workings *workings)
{
    const ts_iso6336_gear *first = &p->mesh.gear[0], *second = &p->mesh.gear[1];
    const double           f_pt1 = first->f_pt, f_pt2 = second->f_pt, alpha_t = p->pair.alpha_t;
    const double           f_falpha1 = first->f_falpha, f_falpha2 = second->f_falpha;

    p->f_pb =
        TS_STEP(workings, f_pb_formula, fmax(f_pt1, f_pt2) * cos(alpha_t), f_pt1, f_pt2, alpha_t);
    p->f_falpha =
        TS_STEP(workings, f_falpha_formula, fmax(f_falpha1, f_falpha2), f_falpha1, f_falpha2);
    p->C_a = relief_of(p, workings);
    p->C_v = ts_dynamic_constants_of(p->pair.eps_gamma, workings);
}

void ts_iso6336_prepare_swing(ts_iso6336_prepared *p, ts_workings *workings)
{
    prepare_stiffness(p, workings);
    prepare_mass(p, workings);
    prepare_deviations(p, workings);
}
