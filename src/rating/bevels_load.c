/* rating/bevels_load.c: do the bevels bear a condition, on the flank that it loads? */
#include "rating/drive_teeth_parts.h"

#include <math.h>

/* ---- what one tooth bears for how long ------------------------------------------------------- */

#define NODE(symbol, I, what, permitted, at, factor)                                               \
    {                                                                                              \
        symbol I, what, "Pa", permitted I "*" at "/" factor I,                                     \
            "derived: the permitted stress with the life factor of that node"                      \
    }
#define NODES(Q, Z, I)                                                                             \
    {                                                                                              \
        NODE("sigma_" Q "Gstat", I, "what a tooth bears at most", "sigma_" Q "P", "at_stat", Z),   \
            NODE("sigma_" Q "Gmid", I, "what it bears at the middle node", "sigma_" Q "P",         \
                 "at_mid", Z),                                                                     \
            NODE("sigma_" Q "Gref", I, "what it bears at the knee", "sigma_" Q "P", "at_ref", Z)   \
    }
/* [stress][gear][node] */
static const ts_formula node_formulas[2][2][3] = {
    {NODES("H", "Z_NT", "1"), NODES("H", "Z_NT", "2")},
    {NODES("F", "Y_NT", "1"), NODES("F", "Y_NT", "2")},
};
enum { STAT, MID, REF };

typedef struct permitted {
    ts_rated_stress stress;
    int             gear;
    double          sigma, factor; /* sigma_HP and Z_NT, or sigma_FP and Y_NT */
} permitted;

static double node(const permitted *of, int which, double at, ts_workings *workings)
{
    static const char *const names[3]    = {"at_stat", "at_mid", "at_ref"};
    static const char *const bears[2][2] = {{"sigma_HP1", "sigma_HP2"}, {"sigma_FP1", "sigma_FP2"}};
    static const char *const factors[2][2] = {{"Z_NT1", "Z_NT2"}, {"Y_NT1", "Y_NT2"}};
    const int                s             = of->stress == TS_RATED_CONTACT ? 0 : 1;
    const ts_input           inputs[]      = {
                       {bears[s][of->gear], of->sigma}, {names[which], at}, {factors[s][of->gear], of->factor}};

    ts_workings_row(workings, names[which], at, "1",
                    s == 0 ? "ISO 10300-2:2014, 8.4, table of Z_NT (from memory)"
                           : "ISO 10300-3:2014, 8, table of Y_NT (from memory)");
    return ts_step_list(workings, &node_formulas[s][of->gear][which], of->sigma * at / of->factor,
                        inputs, 3);
}

/* The life factors of ISO 10300 as the curve on which damage is added up. */
static ts_life_curve curve_of(const ts_bevel_life *life, const permitted *of, ts_workings *workings)
{
    const bool    middle = life->count == 4;
    const int     ref    = life->count - 2;
    ts_life_curve curve  = {.N_stat = life->N[0],
                            .N_mid  = middle ? life->N[1] : 0.0,
                            .N_ref  = life->N[ref],
                            .upper  = middle ? -life->fall[0] : 0.0,
                            .lower  = -life->fall[ref - 1],
                            .fall   = -life->fall[ref]};

    curve.sigma_stat = node(of, STAT, life->at[0], workings);
    if (middle)
        curve.sigma_mid = node(of, MID, life->at[1], workings);
    curve.sigma_ref = node(of, REF, life->at[ref], workings);
    return curve;
}

/* ---- what both standards know of a case ------------------------------------------------------ */

static ts_iso6336_gear_rating common_gear(const ts_bevels_mesh *mesh, const ts_bevels_case *one,
                                          int g, ts_workings *workings)
{
    static const ts_iso6336_gear_rating nothing = {
        .Z_W = NAN, .sigma_HG = NAN, .Y_Mstat = NAN, .sigma_FG = NAN};
    const ts_iso10300_gear_rating   *from   = &one->rating.gear[g];
    const ts_iso10300_gear_prepared *before = &mesh->prepared.gear[g];
    const permitted                  touch  = {TS_RATED_CONTACT, g, from->sigma_HP, from->Z_NT};
    const permitted                  bend   = {TS_RATED_BENDING, g, from->sigma_FP, from->Y_NT};
    ts_iso6336_gear_rating           out    = nothing;

    out.sigma_H  = one->rating.sigma_H;
    out.Z_NT     = from->Z_NT;
    out.sigma_HP = from->sigma_HP;
    out.S_H      = from->S_H;
    out.Y_M      = one->load.Y_M[g];
    out.Y_NT     = from->Y_NT;
    out.sigma_F0 = from->sigma_F0;
    out.sigma_F  = from->sigma_F;
    out.sigma_FP = from->sigma_FP;
    out.S_F      = from->S_F;
    out.contact  = curve_of(&before->life_H, &touch, workings);
    out.bending  = curve_of(&before->life_F, &bend, workings);
    return out;
}

/* In the order of ts_bevel_speed, whose bounds are its own standard's. */
static ts_speed_range range_of(ts_bevel_speed speed)
{
    static const ts_speed_range ranges[] = {TS_SPEED_SUBCRITICAL, TS_SPEED_RESONANCE,
                                            TS_SPEED_INTERMEDIATE, TS_SPEED_SUPERCRITICAL};

    return ranges[speed];
}

static void take_over(const ts_bevels_mesh *mesh, const ts_bevels_case *from, ts_mesh_case *out,
                      ts_workings *workings)
{
    const ts_iso10300_rating *r  = &from->rating;
    ts_iso6336_rating        *to = &out->rating;

    to->F_t = to->v = to->w_t = to->cp = to->c_gamma_alpha = to->c_gamma_beta = to->N_S = NAN;
    to->y_alpha = to->y_f = to->f_pbeff = to->F_mb = to->F_betax = to->y_beta = to->F_betay = NAN;
    to->q_alpha = to->Z_v = NAN;
    to->n_E1              = r->n_E1;
    to->N                 = r->N;
    to->range             = range_of(r->range);
    to->K_v               = r->K_v;
    to->K_Hbeta           = r->K_Hbeta;
    to->K_Fbeta           = r->K_Fbeta;
    to->K_Halpha          = r->K_Halpha;
    to->K_Falpha          = r->K_Falpha;
    to->sigma_H0          = r->sigma_H0;
    to->gear[0]           = common_gear(mesh, from, 0, workings);
    to->gear[1]           = common_gear(mesh, from, 1, workings);
}

/* ---- one case -------------------------------------------------------------------------------- */

static void mean_stresses(const ts_teeth_case *c, uint32_t m, uint32_t condition,
                          ts_iso10300_load *load)
{
    const ts_bevels_mesh *mesh = ts_bevels_of(c, m);
    ts_mesh_case         *one  = ts_teeth_at(c, m, condition);

    for (int g = 0; g < 2; g++) {
        one->load.R[g] = ts_teeth_stress_ratio(c, m, condition, g);
        load->Y_M[g]   = ts_mean_stress_factor(one->load.R[g], mesh->mean[g].M, g, c->workings);
    }
}

void ts_bevels_rate(const ts_teeth_case *c, uint32_t m, uint32_t condition)
{
    const ts_bevels_mesh *mesh = ts_bevels_of(c, m);
    ts_mesh_case         *one  = ts_teeth_at(c, m, condition);
    ts_bevels_case       *out  = ts_bevels_at(c, m, condition);
    const ts_subject      own  = ts_teeth_subject(c, m, (int32_t)condition);

    ts_workings_about(c->workings, own.object, own.condition);
    out->load = (ts_iso10300_load){.T_1     = one->load.T_1,
                                   .omega_1 = one->load.omega_1,
                                   .K_A     = mesh->K_A,
                                   .N_L     = {one->load.N_L[0], one->load.N_L[1]},
                                   .S_Hmin  = c->teeth->S_Hmin,
                                   .S_Fmin  = c->teeth->S_Fmin};
    mean_stresses(c, m, condition, &out->load);
    if (!ts_iso10300_rate(&mesh->prepared, &out->load, &out->rating, c->workings)) {
        one->fault = out->rating.missing;
        return;
    }
    ts_workings_borrow(c->workings, "sigma_H1", out->rating.sigma_H, own, "sigma_H");
    ts_workings_borrow(c->workings, "sigma_H2", out->rating.sigma_H, own, "sigma_H");
    take_over(mesh, out, one, c->workings);
    if (mesh->second_asked && mesh->second_missing == NULL)
        ts_bevels_rate_second(c, m, condition);
    if (c->workings != NULL)
        ts_teeth_lend(c, m, condition);
}
