/* element/bevel_teeth.c: which heights, angles, diameters and thicknesses do bevel teeth have? */
#include "element/bevel_teeth.h"

#include "element/bevel_step.h"

#include <math.h>
#include <stdbool.h>
#include <stddef.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

#define ISO_23509 "ISO 23509:2016, clause 7 (formula from memory)"

/* ---- the mean section ------------------------------------------------------------------------ */

static const ts_formula R_i_formula = {
    .symbol  = "R_i",
    .meaning = "inner cone distance",
    .unit    = "m",
    .text    = "R_e - b",
    .source  = ISO_23509,
};
static const ts_formula h_mw_formula = {
    .symbol  = "h_mw",
    .meaning = "mean working depth",
    .unit    = "m",
    .text    = "2*m_mn*k_hap",
    .source  = ISO_23509,
};
static const ts_formula c_formula = {
    .symbol  = "c",
    .meaning = "clearance in the mean section",
    .unit    = "m",
    .text    = "m_mn*(k_hfp - k_hap)",
    .source  = ISO_23509,
};
static const ts_formula h_m_formula = {
    .symbol  = "h_m",
    .meaning = "mean whole depth",
    .unit    = "m",
    .text    = "m_mn*(k_hap + k_hfp)",
    .source  = ISO_23509,
};
static const ts_formula x_hm2_formula = {
    .symbol  = "x_hm2",
    .meaning = "profile shift of gear 2",
    .unit    = "1",
    .text    = "-x_hm1",
    .source  = ISO_23509,
};
static const ts_formula x_sm_formulas[2] = {
    {"x_sm1", "thickness modification of gear 1 with backlash", "1",
     "x_smn - j_mn/(4*m_mn*cos(alpha_n))", ISO_23509},
    {"x_sm2", "thickness modification of gear 2 with backlash", "1",
     "-x_smn - j_mn/(4*m_mn*cos(alpha_n))", ISO_23509},
};

#define H_AM_TEXT(I, M) "m_mn*(k_hap + x_hm" I ")"
#define H_FM_TEXT(I, M) "m_mn*(k_hfp - x_hm" I ")"
#define S_MN_TEXT(I, M) "m_mn*(pi/2 + 2*(x_sm" I " + x_hm" I "*tan(alpha_n)))"
#define S_MT_TEXT(I, M) "s_mn" I "/cos(beta_m)"
/* The chord and its arc on the virtual gear in the normal section, of diameter d_m/cos(delta) over
 * 1 - sin(beta_m)^2 cos(alpha_n)^2. */
#define D_MN_TEXT(I, M)  "d_m" I "/((1 - sin(beta_m)^2*cos(alpha_n)^2)*cos(delta_" I "))"
#define S_MNC_TEXT(I, M) "d_mn" I "*sin(s_mn" I "/d_mn" I ")"
#define H_AMC_TEXT(I, M) "h_am" I " + d_mn" I "/2*(1 - cos(s_mn" I "/d_mn" I "))"

static const ts_formula h_am_formulas[2] =
    TS_BEVEL_BOTH("h_am", "mean addendum", "m", H_AM_TEXT, ISO_23509);
static const ts_formula h_fm_formulas[2] =
    TS_BEVEL_BOTH("h_fm", "mean dedendum", "m", H_FM_TEXT, ISO_23509);
static const ts_formula s_mn_formulas[2] =
    TS_BEVEL_BOTH("s_mn", "mean normal circular tooth thickness", "m", S_MN_TEXT, ISO_23509);
static const ts_formula s_mt_formulas[2] =
    TS_BEVEL_BOTH("s_mt", "mean transverse circular tooth thickness", "m", S_MT_TEXT, ISO_23509);
static const ts_formula d_mn_formulas[2] =
    TS_BEVEL_BOTH("d_mn", "mean normal diameter", "m", D_MN_TEXT, ISO_23509);
static const ts_formula s_mnc_formulas[2] =
    TS_BEVEL_BOTH("s_mnc", "mean normal chordal tooth thickness", "m", S_MNC_TEXT, ISO_23509);
static const ts_formula h_amc_formulas[2] =
    TS_BEVEL_BOTH("h_amc", "mean chordal addendum", "m", H_AMC_TEXT,
                  "derived: height of the arc over its chord on the mean normal diameter");

static void solve_heights(const ts_bevel_pair *pair, ts_bevel_teeth *t, ts_workings *workings)
{
    const double k_hap = t->in.profile.k_hap, k_hfp = t->in.profile.k_hfp;
    const double x_hm1 = t->in.profile.x_hm1, m_mn = pair->m_mn, R_e = pair->R_e, b = pair->in.b;

    t->m_mn    = m_mn;
    t->R_i     = TS_STEP(workings, R_i_formula, R_e - b, R_e, b);
    t->h_mw    = TS_STEP(workings, h_mw_formula, 2.0 * m_mn * k_hap, m_mn, k_hap);
    t->c       = TS_STEP(workings, c_formula, m_mn * (k_hfp - k_hap), m_mn, k_hfp, k_hap);
    t->h_m     = TS_STEP(workings, h_m_formula, m_mn * (k_hap + k_hfp), m_mn, k_hap, k_hfp);
    t->x_hm[0] = x_hm1;
    t->x_hm[1] = TS_STEP(workings, x_hm2_formula, -x_hm1, x_hm1);
    for (int gear = 0; gear < 2; gear++) {
        const double x_hm = t->x_hm[gear];

        t->h_am[gear] =
            TS_BEVEL_STEP(workings, h_am_formulas, m_mn * (k_hap + x_hm), TS_BEVEL_PAIR(m_mn),
                          TS_BEVEL_PAIR(k_hap), TS_BEVEL_SELF("x_hm", x_hm));
        t->h_fm[gear] =
            TS_BEVEL_STEP(workings, h_fm_formulas, m_mn * (k_hfp - x_hm), TS_BEVEL_PAIR(m_mn),
                          TS_BEVEL_PAIR(k_hfp), TS_BEVEL_SELF("x_hm", x_hm));
    }
}

static void solve_thickness(const ts_bevel_pair *pair, ts_bevel_teeth *t, ts_workings *workings)
{
    const double m_mn = pair->m_mn, alpha_n = pair->in.alpha_n, beta_m = pair->in.beta_m;
    const double x_smn = t->in.profile.x_smn, j_mn = t->in.j_mn;
    const double slope = tan(alpha_n), thinned = j_mn / (4.0 * m_mn * cos(alpha_n));
    const double base = sin(beta_m) * cos(alpha_n);

    t->x_sm[0] = TS_STEP(workings, x_sm_formulas[0], x_smn - thinned, x_smn, j_mn, m_mn, alpha_n);
    t->x_sm[1] = TS_STEP(workings, x_sm_formulas[1], -x_smn - thinned, x_smn, j_mn, m_mn, alpha_n);
    for (int gear = 0; gear < 2; gear++) {
        const double x_hm = t->x_hm[gear], x_sm = t->x_sm[gear], h_am = t->h_am[gear];
        const double d_m   = gear == 0 ? pair->d_m1 : pair->d_m2;
        const double delta = gear == 0 ? pair->delta_1 : pair->delta_2;

        const double s_mn =
            TS_BEVEL_STEP(workings, s_mn_formulas, m_mn * (pi / 2.0 + 2.0 * (x_sm + x_hm * slope)),
                          TS_BEVEL_PAIR(m_mn), TS_BEVEL_SELF("x_sm", x_sm),
                          TS_BEVEL_SELF("x_hm", x_hm), TS_BEVEL_PAIR(alpha_n));
        const double d_mn =
            TS_BEVEL_STEP(workings, d_mn_formulas, d_m / ((1.0 - base * base) * cos(delta)),
                          TS_BEVEL_SELF("d_m", d_m), TS_BEVEL_PAIR(beta_m), TS_BEVEL_PAIR(alpha_n),
                          TS_BEVEL_SELF("delta_", delta));
        t->s_mn[gear]  = s_mn;
        t->s_mt[gear]  = TS_BEVEL_STEP(workings, s_mt_formulas, s_mn / cos(beta_m),
                                       TS_BEVEL_SELF("s_mn", s_mn), TS_BEVEL_PAIR(beta_m));
        t->s_mnc[gear] = TS_BEVEL_STEP(workings, s_mnc_formulas, d_mn * sin(s_mn / d_mn),
                                       TS_BEVEL_SELF("d_mn", d_mn), TS_BEVEL_SELF("s_mn", s_mn));
        t->h_amc[gear] = TS_BEVEL_STEP(
            workings, h_amc_formulas, h_am + d_mn / 2.0 * (1.0 - cos(s_mn / d_mn)),
            TS_BEVEL_SELF("h_am", h_am), TS_BEVEL_SELF("d_mn", d_mn), TS_BEVEL_SELF("s_mn", s_mn));
    }
}

/* ---- how the depth changes along the face ---------------------------------------------------- */

#define STANDARD_SUM "(atan(h_fm1/R_m) + atan(h_fm2/R_m))"
#define SLOT_SUM     "pi/2*m_et/(R_e*tan(alpha_n)*cos(beta_m))"
#define SLOT_CURVED  SLOT_SUM "*(1 - R_m*sin(beta_m)/r_c0)"
#define SUM(name, what, expression)                                                                \
    static const ts_formula name##_formula = {.symbol  = "Sigma_theta_f",                          \
                                              .meaning = "sum of the dedendum angles, " what,      \
                                              .unit    = "rad",                                    \
                                              .text    = (expression),                             \
                                              .source  = ISO_23509}
SUM(standard_sum, "standard depth", STANDARD_SUM);
SUM(slot_sum, "constant slot width, no spiral", SLOT_SUM);
SUM(slot_curved, "constant slot width", SLOT_CURVED);
SUM(tilted_sum, "modified slot width, no spiral", "min(" SLOT_SUM ", 1.3*" STANDARD_SUM ")");
SUM(tilted_curved, "modified slot width", "min(" SLOT_CURVED ", 1.3*" STANDARD_SUM ")");

static double standard_sum(const ts_bevel_pair *pair, const ts_bevel_teeth *t)
{
    return atan(t->h_fm[0] / pair->R_m) + atan(t->h_fm[1] / pair->R_m);
}

static double slot_sum(const ts_bevel_pair *pair, const ts_bevel_teeth *t, bool tilted,
                       ts_workings *workings)
{
    const double m_et = pair->in.m_et, R_e = pair->R_e, R_m = pair->R_m;
    const double alpha_n = pair->in.alpha_n, beta_m = pair->in.beta_m, r_c0 = t->in.r_c0;
    const double h_fm1 = t->h_fm[0], h_fm2 = t->h_fm[1];
    const bool   curved = beta_m > 0.0; /* without a spiral the cutter radius drops out */

    const double plain = pi / 2.0 * m_et / (R_e * tan(alpha_n) * cos(beta_m));
    const double slot  = curved ? plain * (1.0 - R_m * sin(beta_m) / r_c0) : plain;
    const double least = fmin(slot, 1.3 * standard_sum(pair, t));

    if (tilted && curved)
        return TS_STEP(workings, tilted_curved_formula, least, m_et, R_e, alpha_n, beta_m, R_m,
                       r_c0, h_fm1, h_fm2);
    if (tilted)
        return TS_STEP(workings, tilted_sum_formula, least, m_et, R_e, alpha_n, beta_m, R_m, h_fm1,
                       h_fm2);
    if (curved)
        return TS_STEP(workings, slot_curved_formula, slot, m_et, R_e, alpha_n, beta_m, R_m, r_c0);
    return TS_STEP(workings, slot_sum_formula, slot, m_et, R_e, alpha_n, beta_m);
}

static double sum_of_angles(const ts_bevel_pair *pair, const ts_bevel_teeth *t,
                            ts_workings *workings)
{
    const double R_m = pair->R_m, h_fm1 = t->h_fm[0], h_fm2 = t->h_fm[1];

    switch (t->in.taper) {
    case TS_BEVEL_TAPER_UNIFORM:
        ts_workings_row(workings, "Sigma_theta_f", 0.0, "rad", "uniform depth, " ISO_23509);
        return 0.0;
    case TS_BEVEL_TAPER_SLOT:
        return slot_sum(pair, t, false, workings);
    case TS_BEVEL_TAPER_TILTED:
        return slot_sum(pair, t, true, workings);
    case TS_BEVEL_TAPER_STANDARD:
        break;
    }
    return TS_STEP(workings, standard_sum_formula, standard_sum(pair, t), h_fm1, h_fm2, R_m);
}

#define THETA_FS_TEXT(I, M) "atan(h_fm" I "/R_m)"
#define THETA_AS_TEXT(I, M) "atan(h_fm" M "/R_m)"
#define THETA_F_TEXT(I, M)  "Sigma_theta_f*h_am" M "/h_mw"
#define THETA_A_TEXT(I, M)  "Sigma_theta_f*h_am" I "/h_mw"
#define DELTA_A_TEXT(I, M)  "delta_" I " + theta_a" I
#define DELTA_F_TEXT(I, M)  "delta_" I " - theta_f" I
#define THETA_A             "addendum angle, tips parallel to the mating roots"

static const ts_formula theta_fS_formulas[2] = TS_BEVEL_BOTH(
    "theta_f", "dedendum angle, root line to the apex", "rad", THETA_FS_TEXT, ISO_23509);
static const ts_formula theta_aS_formulas[2] =
    TS_BEVEL_BOTH("theta_a", THETA_A, "rad", THETA_AS_TEXT, ISO_23509);
static const ts_formula theta_f_formulas[2] =
    TS_BEVEL_BOTH("theta_f", "dedendum angle, share of the sum", "rad", THETA_F_TEXT, ISO_23509);
static const ts_formula theta_a_formulas[2] =
    TS_BEVEL_BOTH("theta_a", THETA_A ", share of the sum", "rad", THETA_A_TEXT, ISO_23509);
static const ts_formula delta_a_formulas[2] =
    TS_BEVEL_BOTH("delta_a", "face angle", "rad", DELTA_A_TEXT, ISO_23509);
static const ts_formula delta_f_formulas[2] =
    TS_BEVEL_BOTH("delta_f", "root angle", "rad", DELTA_F_TEXT, ISO_23509);

static void split_angles(const ts_bevel_pair *pair, ts_bevel_teeth *t, int gear,
                         ts_workings *workings)
{
    const double R_m = pair->R_m, h_fm = t->h_fm[gear], h_fm_mate = t->h_fm[1 - gear];
    const double h_am = t->h_am[gear], h_am_mate = t->h_am[1 - gear];
    const double Sigma_theta_f = t->Sigma_theta_f, h_mw = t->h_mw;

    if (t->in.taper == TS_BEVEL_TAPER_STANDARD) {
        t->theta_f[gear] = TS_BEVEL_STEP(workings, theta_fS_formulas, atan(h_fm / R_m),
                                         TS_BEVEL_SELF("h_fm", h_fm), TS_BEVEL_PAIR(R_m));
        t->theta_a[gear] = TS_BEVEL_STEP(workings, theta_aS_formulas, atan(h_fm_mate / R_m),
                                         TS_BEVEL_MATE("h_fm", h_fm_mate), TS_BEVEL_PAIR(R_m));
        return;
    }
    t->theta_f[gear] = TS_BEVEL_STEP(workings, theta_f_formulas, Sigma_theta_f * h_am_mate / h_mw,
                                     TS_BEVEL_PAIR(Sigma_theta_f), TS_BEVEL_MATE("h_am", h_am_mate),
                                     TS_BEVEL_PAIR(h_mw));
    t->theta_a[gear] = TS_BEVEL_STEP(workings, theta_a_formulas, Sigma_theta_f * h_am / h_mw,
                                     TS_BEVEL_PAIR(Sigma_theta_f), TS_BEVEL_SELF("h_am", h_am),
                                     TS_BEVEL_PAIR(h_mw));
}

static void solve_angles(const ts_bevel_pair *pair, ts_bevel_teeth *t, ts_workings *workings)
{
    t->Sigma_theta_f = sum_of_angles(pair, t, workings);
    for (int gear = 0; gear < 2; gear++) {
        const double delta = gear == 0 ? pair->delta_1 : pair->delta_2;

        split_angles(pair, t, gear, workings);
        const double theta_a = t->theta_a[gear], theta_f = t->theta_f[gear];
        t->delta_a[gear] =
            TS_BEVEL_STEP(workings, delta_a_formulas, delta + theta_a,
                          TS_BEVEL_SELF("delta_", delta), TS_BEVEL_SELF("theta_a", theta_a));
        t->delta_f[gear] =
            TS_BEVEL_STEP(workings, delta_f_formulas, delta - theta_f,
                          TS_BEVEL_SELF("delta_", delta), TS_BEVEL_SELF("theta_f", theta_f));
    }
}

/* ---- the ends -------------------------------------------------------------------------------- */

#define H_AE_TEXT(I, M) "h_am" I " + b/2*tan(theta_a" I ")"
#define H_FE_TEXT(I, M) "h_fm" I " + b/2*tan(theta_f" I ")"
#define H_AI_TEXT(I, M) "h_am" I " - b/2*tan(theta_a" I ")"
#define H_FI_TEXT(I, M) "h_fm" I " - b/2*tan(theta_f" I ")"

static const ts_formula h_ae_formulas[2] =
    TS_BEVEL_BOTH("h_ae", "outer addendum", "m", H_AE_TEXT, ISO_23509);
static const ts_formula h_fe_formulas[2] =
    TS_BEVEL_BOTH("h_fe", "outer dedendum", "m", H_FE_TEXT, ISO_23509);
static const ts_formula h_ai_formulas[2] =
    TS_BEVEL_BOTH("h_ai", "inner addendum", "m", H_AI_TEXT, ISO_23509);
static const ts_formula h_fi_formulas[2] =
    TS_BEVEL_BOTH("h_fi", "inner dedendum", "m", H_FI_TEXT, ISO_23509);

static void solve_end_heights(const ts_bevel_pair *pair, ts_bevel_teeth *t, ts_workings *workings)
{
    const double b = pair->in.b;

    for (int gear = 0; gear < 2; gear++) {
        const double h_am = t->h_am[gear], h_fm = t->h_fm[gear];
        const double theta_a = t->theta_a[gear], theta_f = t->theta_f[gear];
        const double rise_a = b / 2.0 * tan(theta_a), rise_f = b / 2.0 * tan(theta_f);

        t->h_ae[gear] =
            TS_BEVEL_STEP(workings, h_ae_formulas, h_am + rise_a, TS_BEVEL_SELF("h_am", h_am),
                          TS_BEVEL_PAIR(b), TS_BEVEL_SELF("theta_a", theta_a));
        t->h_fe[gear] =
            TS_BEVEL_STEP(workings, h_fe_formulas, h_fm + rise_f, TS_BEVEL_SELF("h_fm", h_fm),
                          TS_BEVEL_PAIR(b), TS_BEVEL_SELF("theta_f", theta_f));
        t->h_ai[gear] =
            TS_BEVEL_STEP(workings, h_ai_formulas, h_am - rise_a, TS_BEVEL_SELF("h_am", h_am),
                          TS_BEVEL_PAIR(b), TS_BEVEL_SELF("theta_a", theta_a));
        t->h_fi[gear] =
            TS_BEVEL_STEP(workings, h_fi_formulas, h_fm - rise_f, TS_BEVEL_SELF("h_fm", h_fm),
                          TS_BEVEL_PAIR(b), TS_BEVEL_SELF("theta_f", theta_f));
    }
}

/* ---- the whole ------------------------------------------------------------------------------- */

static ts_bevel_teeth_fault judge_input(const ts_bevel_pair *pair, const ts_bevel_teeth_input *in)
{
    const ts_bevel_profile *p     = &in->profile;
    const bool              known = p->k_hap > 0.0 && p->k_hap <= 10.0 && p->k_hfp > p->k_hap &&
                       p->k_hfp <= 10.0 && fabs(p->x_hm1) < p->k_hap && fabs(p->x_smn) < 1.0 &&
                       in->j_mn >= 0.0 && in->j_mn <= 1e3 && !(in->r_c0 <= 0.0);
    const bool slot = in->taper == TS_BEVEL_TAPER_SLOT || in->taper == TS_BEVEL_TAPER_TILTED;

    if (!(pair->in.b > 0.0) || !(pair->m_mn > 0.0) || !known)
        return TS_BEVEL_TEETH_OUT_OF_RANGE;
    if (slot && pair->in.beta_m > 0.0 && isnan(in->r_c0))
        return TS_BEVEL_TEETH_NO_CUTTER;
    return TS_BEVEL_TEETH_FINE;
}

static ts_bevel_teeth_fault judge_teeth(const ts_bevel_teeth *t)
{
    for (int gear = 0; gear < 2; gear++) {
        if (!(t->h_ai[gear] > 0.0 && t->h_ae[gear] > 0.0 && t->h_fi[gear] > 0.0 &&
              t->h_fe[gear] > 0.0))
            return TS_BEVEL_TEETH_NO_DEPTH;
        if (!(t->delta_f[gear] > 0.0))
            return TS_BEVEL_TEETH_NO_ROOT_CONE;
        if (!(t->s_mn[gear] > 0.0 && t->s_mn[gear] < pi * t->m_mn))
            return TS_BEVEL_TEETH_NO_THICKNESS;
    }
    return TS_BEVEL_TEETH_FINE;
}

/* Every result behind `in` is a double, so that "not computed" can be written over all of them. */
static void forget(const ts_bevel_teeth_input *in, ts_bevel_teeth *teeth)
{
    const double   nothing = NAN;
    unsigned char *bytes   = (unsigned char *)teeth;

    for (size_t at = offsetof(ts_bevel_teeth, R_i); at < sizeof *teeth; at += sizeof nothing)
        memcpy(bytes + at, &nothing, sizeof nothing);
    teeth->in = *in;
}

ts_bevel_teeth_fault ts_bevel_teeth_solve(const ts_bevel_pair *pair, const ts_bevel_teeth_input *in,
                                          ts_bevel_teeth *teeth, ts_workings *workings)
{
    ts_bevel_teeth_fault fault = judge_input(pair, in);

    forget(in, teeth);
    if (fault != TS_BEVEL_TEETH_FINE)
        return fault;
    solve_heights(pair, teeth, workings);
    solve_angles(pair, teeth, workings);
    solve_end_heights(pair, teeth, workings);
    solve_thickness(pair, teeth, workings);
    fault = judge_teeth(teeth);
    if (fault != TS_BEVEL_TEETH_FINE)
        forget(in, teeth);
    return fault;
}

const char *ts_bevel_teeth_fault_says(ts_bevel_teeth_fault fault)
{
    switch (fault) {
    case TS_BEVEL_TEETH_FINE:
        return "the teeth are in order";
    case TS_BEVEL_TEETH_OUT_OF_RANGE:
        return "depth factors, profile shift, thickness, backlash or face width are out of range";
    case TS_BEVEL_TEETH_NO_CUTTER:
        return "this taper of spiral teeth needs the cutter radius r_c0";
    case TS_BEVEL_TEETH_NO_DEPTH:
        return "the taper leaves no tooth at one end of the face";
    case TS_BEVEL_TEETH_NO_ROOT_CONE:
        return "the teeth are so deep that the root cone has no angle left";
    case TS_BEVEL_TEETH_NO_THICKNESS:
        return "tooth or slot has no thickness left at the pitch cone";
    }
    return "";
}
