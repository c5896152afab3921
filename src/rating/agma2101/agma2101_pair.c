/* rating/agma2101/agma2101_pair.c: what of a rating is settled before any load is known? */
#include "rating/agma2101/agma2101.h"

#include "rating/agma2101/agma_size.h"
#include "rating/agma2101/agma_step.h"
#include "rating/agma2101/agma_strength.h"
#include "rating/agma2101/agma_stress.h"

#include <math.h>
#include <stddef.h>

static const double pi = 3.14159265358979323846;

ts_agma2101_input ts_agma2101_input_of(const ts_cylindrical_pair *geometry)
{
    const ts_agma2101_gear gear = {
        .tool     = {.h_a0 = NAN, .rho_a0 = NAN, .delta_a0 = NAN},
        .delta_sn = NAN,
        .sigma_HP = NAN,
        .sigma_FP = NAN,
        .line     = TS_AGMA_LINE_CASE_CARBURISED,
        .hardness = NAN,
        .hard     = true,
        .R_a      = NAN,
        .t_R      = NAN,
        .E        = NAN,
        .nu       = NAN,
        .K_s      = NAN,
        .Y_J      = NAN,
    };

    return (ts_agma2101_input){
        .geometry   = geometry,
        .gear       = {gear, gear},
        .load_point = TS_AGMA_LOAD_HIGHEST_SINGLE,
        .scale      = TS_AGMA_ACCURACY_A_V,
        .accuracy   = NAN,
        .K_H        = NAN,
        .mounting   = {.alignment = ts_agma_alignment_of(TS_AGMA_BOX_EXTRA_PRECISION)},
        .Z_R        = NAN,
        .Z_I        = NAN,
        .R          = NAN,
        .critical   = true,
    };
}

static void remark(ts_agma2101_pair *pair, ts_agma_remark which, bool holds)
{
    if (holds)
        pair->remarks |= TS_AGMA_REMARKED(which);
}

static void lacks(ts_agma2101_pair *pair, const char *what)
{
    if (pair->missing == NULL)
        pair->missing = what;
}

static double or_assumed(double given, double otherwise, const char *symbol, const char *why,
                         ts_workings *workings)
{
    if (!isnan(given))
        return given;
    ts_workings_assumed(workings, symbol, otherwise, "1", why);
    return otherwise;
}

/* ---- scope ----------------------------------------------------------------------------------- */

static void judge_geometry(const ts_agma2101_input *in, ts_agma2101_pair *pair)
{
    const ts_cylindrical_pair *g      = in->geometry;
    const double               m_n    = g->in.m_n;
    const double               thin_1 = isnan(in->gear[0].delta_sn) ? 0.0 : in->gear[0].delta_sn;
    const double               thin_2 = isnan(in->gear[1].delta_sn) ? 0.0 : in->gear[1].delta_sn;
    const double               play   = g->j_bn + (thin_1 + thin_2) * m_n * cos(g->in.alpha_n);

    remark(pair, TS_AGMA_REMARK_CONTACT_RATIO, g->eps_alpha >= 2.0);
    remark(pair, TS_AGMA_REMARK_HELIX, g->in.beta > 50.0 * pi / 180.0);
    remark(pair, TS_AGMA_REMARK_INTERFERENCE, g->clear_Ff1 < 0.0 || g->clear_Ff2 < 0.0);
    remark(pair, TS_AGMA_REMARK_POINTED, !(g->s_an1 > 0.0 && g->s_an2 > 0.0));
    remark(pair, TS_AGMA_REMARK_NO_CLEARANCE, g->c_1 <= 0.0 || g->c_2 <= 0.0);
    /* A mesh that just closes comes out as a rounding error on either side of 0. */
    remark(pair, TS_AGMA_REMARK_NO_BACKLASH, play < -1e-9 * m_n);
}

static bool can_run(const ts_cylindrical_pair *g, ts_agma2101_pair *pair)
{
    if (!(g->eps_alpha >= 1.0))
        lacks(pair, "the transverse contact ratio is below 1: the teeth do not hand over");
    else if (!(g->in.b_1 > 0.0 && g->in.b_2 > 0.0))
        lacks(pair, "the face width of both gears");
    return pair->missing == NULL;
}

/* ---- bending --------------------------------------------------------------------------------- */

#define RHO_W_TEXT_1 "rho_D1/m_n"
#define RHO_W_TEXT_2 "(rho_T - rho_B1)/m_n"
#define H_A_TEXT(I)  "(d_a" I " - d_" I ")/(2*m_n)"
#define H_T_TEXT(I)  "(d_a" I " - d_f" I ")/2"
#define HIGHEST      "base tangent up to the highest point of single contact, in modules"

static const ts_formula rho_W_formulas[2] = {
    {"rho_W1", HIGHEST " of gear 1", "1", RHO_W_TEXT_1, AGMA_908 "5" RECALLED},
    {"rho_W2", HIGHEST " of gear 2", "1", RHO_W_TEXT_2, AGMA_908 "5" RECALLED},
};
static const ts_formula h_a_formulas[2] =
    TS_OF_BOTH_GEARS("h_a", "addendum, in modules", "1", H_A_TEXT, AGMA_908 "3" RECALLED);
static const ts_formula h_t_formulas[2] =
    TS_OF_BOTH_GEARS("h_t", "whole depth of a tooth", "m", H_T_TEXT, AGMA_2101 "5" RECALLED);

static ts_agma_tool tool_of(const ts_agma2101_input *in, int gear, ts_workings *workings)
{
    const char *why = "no tool is given: that of the pair's basic rack, without protuberance";

    if (!isnan(in->gear[gear].tool.h_a0))
        return in->gear[gear].tool;
    const ts_agma_tool tool = ts_agma_tool_of_rack(&in->geometry->in.rack);
    ts_workings_assumed(workings, gear == 0 ? "h_a01" : "h_a02", tool.h_a0, "1", why);
    ts_workings_assumed(workings, gear == 0 ? "rho_a01" : "rho_a02", tool.rho_a0, "1", why);
    ts_workings_assumed(workings, gear == 0 ? "delta_a01" : "delta_a02", tool.delta_a0, "1", why);
    return tool;
}

/* The gears' own point of view: what is the highest point of single contact of one is the lowest of
 * the other.  NaN: the load acts at the tip. */
static double single_contact(const ts_agma2101_input *in, const ts_agma_mesh *mesh, int gear,
                             ts_workings *workings)
{
    const ts_cylindrical_pair *g      = in->geometry;
    const double               rho_D1 = g->rho_D1, rho_B1 = g->rho_B1, rho_T = g->rho_T;
    const double               m_n = g->in.m_n;

    if (mesh->overlap != TS_AGMA_SPUR || in->load_point == TS_AGMA_LOAD_TIP || g->eps_alpha >= 2.0)
        return NAN;
    if (gear == 0)
        return TS_STEP(workings, rho_W_formulas[0], rho_D1 / m_n, rho_D1, m_n);
    return TS_STEP(workings, rho_W_formulas[1], (rho_T - rho_B1) / m_n, rho_T, rho_B1, m_n);
}

static ts_agma_root_input root_input_of(const ts_agma2101_input *in, const ts_agma_mesh *mesh,
                                        int gear, ts_workings *workings)
{
    const ts_cylindrical_pair *g   = in->geometry;
    const double               d   = gear == 0 ? g->d_1 : g->d_2;
    const double               d_a = gear == 0 ? g->d_a1 : g->d_a2, m_n = g->in.m_n;

    return (ts_agma_root_input){
        .z        = gear == 0 ? g->in.z_1 : g->in.z_2,
        .x        = gear == 0 ? g->x_1 : g->x_2,
        .delta_sn = or_assumed(in->gear[gear].delta_sn, 0.0, gear == 0 ? "delta_sn1" : "delta_sn2",
                               "no thinning for backlash is given", workings),
        .h_a     = TS_GEAR_STEP(workings, h_a_formulas, (d_a - d) / (2.0 * m_n), TS_OWN("d_a", d_a),
                                TS_OWN("d_", d), TS_ALL(m_n)),
        .alpha_n = g->in.alpha_n,
        .beta    = g->in.beta,
        .tool    = tool_of(in, gear, workings),
        .rho_W   = single_contact(in, mesh, gear, workings),
        .gear    = gear,
    };
}

static void prepare_root(const ts_agma2101_input *in, const ts_agma_notch *notch, int gear,
                         ts_agma2101_pair *pair, ts_workings *workings)
{
    ts_agma2101_tooth *tooth = &pair->tooth[gear];

    tooth->root    = (ts_agma_root){.s_F = NAN, .h_F = NAN};
    tooth->bending = (ts_agma_bending){NAN, NAN, NAN};
    tooth->Y_J     = in->gear[gear].Y_J;
    if (!isnan(tooth->Y_J))
        return;
    if (gear == 1 && in->geometry->in.z_2 < 0) {
        remark(pair, TS_AGMA_REMARK_INTERNAL_J, true);
        lacks(pair, "Y_J of the internal gear, which AGMA 908 does not compute");
        return;
    }
    const ts_agma_root_input root_in = root_input_of(in, &pair->mesh, gear, workings);
    if (ts_agma_root_solve(&root_in, &tooth->root, workings))
        tooth->bending = ts_agma_bending_of(&tooth->root, &pair->mesh, notch, gear, workings);
    tooth->Y_J = tooth->bending.Y_J;
    remark(pair, TS_AGMA_REMARK_ABOVE_FILLET, tooth->root.above_fillet);
    remark(pair, TS_AGMA_REMARK_NO_SECTION, isnan(tooth->Y_J));
    if (isnan(tooth->Y_J))
        lacks(pair, "Y_J: a root has no critical section");
}

/* ---- what hangs on one gear ------------------------------------------------------------------ */

static void prepare_rim(const ts_agma2101_input *in, int gear, ts_agma2101_pair *pair,
                        ts_workings *workings)
{
    const ts_cylindrical_pair *g   = in->geometry;
    const double               t_R = in->gear[gear].t_R;
    const double d_a = gear == 0 ? g->d_a1 : g->d_a2, d_f = gear == 0 ? g->d_f1 : g->d_f2;

    if (isnan(t_R)) {
        pair->tooth[gear].K_B = or_assumed(NAN, 1.0, gear == 0 ? "K_B1" : "K_B2",
                                           "no rim thickness is given: a solid gear", workings);
        return;
    }
    const double h_t = TS_GEAR_STEP(workings, h_t_formulas, (d_a - d_f) / 2.0, TS_OWN("d_a", d_a),
                                    TS_OWN("d_f", d_f));
    pair->tooth[gear].K_B = ts_agma_rim_factor(t_R, fabs(h_t), gear, workings);
    remark(pair, TS_AGMA_REMARK_THIN_RIM, t_R < TS_AGMA_RIM_LEAST * fabs(h_t));
    if (isnan(pair->tooth[gear].K_B))
        lacks(pair, "K_B: a rim needs a thickness above 0");
}

static void prepare_strength(const ts_agma2101_input *in, int gear, ts_agma2101_pair *pair,
                             ts_workings *workings)
{
    const ts_agma2101_gear *given = &in->gear[gear];
    ts_agma2101_tooth      *tooth = &pair->tooth[gear];

    tooth->sigma_HP = given->sigma_HP;
    tooth->sigma_FP = given->sigma_FP;
    tooth->life     = ts_agma_life_of(given->line, given->hardness, in->critical, gear, workings);
    tooth->K_s      = or_assumed(
             given->K_s, 1.0, gear == 0 ? "K_s1" : "K_s2",
             "the standard's own 1, unless a size effect is known; " AGMA_2101 "20" RECALLED, workings);
    if (isnan(given->sigma_HP))
        lacks(pair, gear == 0 ? "sigma_HP of gear 1" : "sigma_HP of gear 2");
    if (isnan(given->sigma_FP))
        lacks(pair, gear == 0 ? "sigma_FP of gear 1" : "sigma_FP of gear 2");
}

/* ---- what hangs on both ---------------------------------------------------------------------- */

#define Z_W_NAME_TEXT(I) "Z_W"
static const ts_formula Z_W_formulas[2] =
    TS_OF_BOTH_GEARS("Z_W", "hardness ratio factor", "1", Z_W_NAME_TEXT, AGMA_2101 "14" RECALLED);

static double hardness_ratio(const ts_agma2101_input *in, ts_agma2101_pair *pair,
                             ts_workings *workings)
{
    const int               p      = pair->mesh.pinion;
    const ts_agma2101_gear *pinion = &in->gear[p], *wheel = &in->gear[1 - p];
    const ts_agma_hardness  hardness = {
         .H_B1        = pinion->hardness,
         .H_B2        = wheel->hardness,
         .m_G         = pair->mesh.m_G,
         .pinion_hard = pinion->hard,
         .wheel_hard  = wheel->hard,
         .R_a         = pinion->R_a,
    };
    const double Z_W = ts_agma_hardness_factor(&hardness, workings);

    if (isnan(Z_W))
        return or_assumed(NAN, 1.0, "Z_W", "hardness or roughness is not given: no bonus",
                          workings);
    remark(pair, TS_AGMA_REMARK_RATIO, Z_W > 1.0 && pair->mesh.m_G > 20.0);
    remark(pair, TS_AGMA_REMARK_WHEEL_HARDNESS,
           !wheel->hard && (wheel->hardness < 180.0 || wheel->hardness > 400.0));
    return Z_W;
}

static void prepare_hardness(const ts_agma2101_input *in, ts_agma2101_pair *pair,
                             ts_workings *workings)
{
    const int    p    = pair->mesh.pinion;
    const double Z_W  = hardness_ratio(in, pair, workings);
    const int    gear = 1 - p;

    pair->tooth[gear].Z_W = TS_GEAR_STEP(workings, Z_W_formulas, Z_W, TS_ALL(Z_W));
    pair->tooth[p].Z_W    = 1.0;
    ts_workings_row(workings, p == 0 ? "Z_W1" : "Z_W2", 1.0, "1",
                    "the factor is of the wheel alone, " AGMA_2101 "14" RECALLED);
}

static ts_agma_dynamic dynamic_of(const ts_agma2101_input *in, ts_workings *workings)
{
    switch (in->scale) {
    case TS_AGMA_ACCURACY_A_V:
        return ts_agma_dynamic_D04(in->accuracy, workings);
    case TS_AGMA_ACCURACY_Q_V:
        return ts_agma_dynamic_C95(in->accuracy, workings);
    case TS_AGMA_ACCURACY_K_V:
        break;
    }
    return ts_agma_dynamic_known(in->accuracy);
}

static void prepare_dynamic(const ts_agma2101_input *in, ts_agma2101_pair *pair,
                            ts_workings *workings)
{
    pair->dynamic    = dynamic_of(in, workings);
    const bool curve = !isnan(pair->dynamic.B);

    remark(pair, TS_AGMA_REMARK_VERY_ACCURATE,
           in->scale != TS_AGMA_ACCURACY_K_V && !curve && !isnan(pair->dynamic.K_v));
    remark(pair, TS_AGMA_REMARK_COARSE, pair->dynamic.outside);
    if (!curve && isnan(pair->dynamic.K_v))
        lacks(pair, "an accuracy (A_v or Q_v), or K_v");
    if (curve && !(pair->dynamic.C > 0.0))
        lacks(pair, "K_v: far coarser than any curve of the standard");
}

static void prepare_face_load(const ts_agma2101_input *in, ts_agma2101_pair *pair,
                              ts_workings *workings)
{
    const double b = pair->mesh.b, d_w = pair->mesh.d_w;

    pair->face = (ts_agma_face_load){NAN, NAN, NAN, NAN, NAN, NAN};
    pair->K_H  = in->K_H;
    if (!isnan(in->K_H))
        return;
    pair->face = ts_agma_face_load_of(b, d_w, &in->mounting, workings);
    pair->K_H  = pair->face.K_H;
    remark(pair, TS_AGMA_REMARK_FACE_DIAMETER, b > 2.0 * d_w);
    remark(pair, TS_AGMA_REMARK_FACE, b > 40.0 * 0.0254);
    remark(pair, TS_AGMA_REMARK_OVERHUNG, in->overhung);
}

static void prepare_common(const ts_agma2101_input *in, ts_agma2101_pair *pair,
                           ts_workings *workings)
{
    const ts_agma2101_gear *g = in->gear;

    pair->m_t = in->geometry->m_t;
    pair->Z_I = isnan(in->Z_I) ? pair->mesh.Z_I : in->Z_I;
    if (isnan(pair->Z_I))
        lacks(pair, "Z_I: the path of contact reaches past a base circle");
    pair->Z_E = ts_agma_elastic_coefficient(g[0].E, g[0].nu, g[1].E, g[1].nu, workings);
    if (isnan(pair->Z_E))
        lacks(pair, "Z_E: modulus and Poisson's ratio of both gears");
    pair->Z_R = or_assumed(in->Z_R, 1.0, "Z_R",
                           "1 for flanks of usual finish, " AGMA_2101 "13" RECALLED, workings);
    pair->R   = or_assumed(in->R, 0.99, "R",
                           "the allowable stress numbers hold for 1 failure in 100, " AGMA_2101
                           "18" RECALLED,
                           workings);
    pair->Y_Z = ts_agma_reliability_factor(pair->R, workings);
    remark(pair, TS_AGMA_REMARK_RELIABILITY, isnan(pair->Y_Z));
    if (isnan(pair->Y_Z))
        lacks(pair, "Y_Z: a reliability from 0.5 to 0.9999");
}

bool ts_agma2101_pair_prepare(const ts_agma2101_input *in, ts_agma2101_pair *pair,
                              ts_workings *workings)
{
    const ts_cylindrical_pair *g = in->geometry;

    *pair = (ts_agma2101_pair){.K_H = NAN, .Z_I = NAN};
    if (!can_run(g, pair))
        return false;
    judge_geometry(in, pair);
    ts_agma_mesh_solve(g, &pair->mesh, workings);
    remark(pair, TS_AGMA_REMARK_LOW_OVERLAP, pair->mesh.overlap == TS_AGMA_LOW_OVERLAP);
    const ts_agma_notch notch = ts_agma_notch_of(g->in.alpha_n, workings);
    for (int gear = 0; gear < 2; gear++) {
        prepare_root(in, &notch, gear, pair, workings);
        prepare_rim(in, gear, pair, workings);
        prepare_strength(in, gear, pair, workings);
    }
    prepare_hardness(in, pair, workings);
    prepare_dynamic(in, pair, workings);
    prepare_face_load(in, pair, workings);
    prepare_common(in, pair, workings);
    return true;
}
