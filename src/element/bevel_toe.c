/* element/bevel_toe.c: how thick are bevel teeth at their inner end? */
#include "element/bevel_toe.h"

#include "element/bevel_step.h"
#include "element/involute.h"

#include <math.h>
#include <stdbool.h>

static const double pi = 3.14159265358979323846;

#define SECTION "derived: the virtual gear of ISO 10300-1, annex A, at the inner cone distance"
#define TAPERED "derived: teeth and slots in one proportion along the face"
#define SLOTTED "derived: the slot as wide as in the mean section, which is what that taper means"

static const ts_formula beta_toe_formula = {
    .symbol  = "beta_toe",
    .meaning = "spiral angle with which the toe is computed: the inner one",
    .unit    = "rad",
    .text    = "1*beta_i",
    .source  = SECTION,
};
static const ts_formula m_ni_formula = {
    .symbol  = "m_ni",
    .meaning = "normal module at the inner end",
    .unit    = "m",
    .text    = "m_et*R_i/R_e*cos(beta_toe)",
    .source  = SECTION,
};

#define TAPERED_TEXT(I, M) "s_mn" I "*m_ni/m_mn"
#define SLOTTED_TEXT(I, M) "s_mn" I " - pi*(m_mn - m_ni)"
#define Z_TEXT(I, M)       "z_v" I "/((1 - (sin(beta_toe)*cos(alpha_n))^2)*cos(beta_toe))"
#define TIP_TEXT(I, M)     "m_ni*z_vni" I " + 2*h_ai" I
#define S_AI_TEXT(I, M)                                                                            \
    "d_vai" I "*(s_ni" I "/(m_ni*z_vni" I ") + inv(alpha_n) - inv(acos(m_ni*z_vni" I               \
    "*cos(alpha_n)/d_vai" I ")))"

static const ts_formula tapered_formulas[2] = TS_BEVEL_BOTH(
    "s_ni", "normal thickness at the pitch cone, inner end", "m", TAPERED_TEXT, TAPERED);
static const ts_formula slotted_formulas[2] = TS_BEVEL_BOTH(
    "s_ni", "normal thickness at the pitch cone, inner end", "m", SLOTTED_TEXT, SLOTTED);
static const ts_formula z_formulas[2] =
    TS_BEVEL_BOTH("z_vni", "virtual teeth in the normal section, inner end", "1", Z_TEXT, SECTION);
static const ts_formula tip_formulas[2] =
    TS_BEVEL_BOTH("d_vai", "virtual tip diameter, inner end", "m", TIP_TEXT, SECTION);
static const ts_formula s_ai_formulas[2] =
    TS_BEVEL_BOTH("s_ai", "normal thickness at the tip, inner end", "m", S_AI_TEXT, SECTION);

static double spiral_of(const ts_bevel_pair *pair, const ts_bevel_spiral *spiral,
                        ts_workings *workings)
{
    if (isnan(spiral->beta_i)) {
        ts_workings_assumed(workings, "beta_toe", pair->in.beta_m, "rad",
                            "the spiral angle of the mean section, since the cutter is not given");
        return pair->in.beta_m;
    }
    const double beta_i = spiral->beta_i;
    return TS_STEP(workings, beta_toe_formula, beta_i, beta_i);
}

static double thickness_of(const ts_bevel_teeth *teeth, double m_ni, int gear,
                           ts_workings *workings)
{
    const bool slotted =
        teeth->in.taper == TS_BEVEL_TAPER_SLOT || teeth->in.taper == TS_BEVEL_TAPER_TILTED;
    const double s_mn = teeth->s_mn[gear], m_mn = teeth->m_mn;

    if (slotted)
        return TS_BEVEL_STEP(workings, slotted_formulas, s_mn - pi * (m_mn - m_ni),
                             TS_BEVEL_SELF("s_mn", s_mn), TS_BEVEL_PAIR(m_mn), TS_BEVEL_PAIR(m_ni));
    return TS_BEVEL_STEP(workings, tapered_formulas, s_mn * m_ni / m_mn,
                         TS_BEVEL_SELF("s_mn", s_mn), TS_BEVEL_PAIR(m_ni), TS_BEVEL_PAIR(m_mn));
}

static void solve_gear(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth, double beta_toe,
                       int gear, ts_bevel_toe *toe, ts_workings *workings)
{
    const double z_v = gear == 0 ? pair->z_v1 : pair->z_v2, alpha_n = pair->in.alpha_n;
    const double h_ai = teeth->h_ai[gear], m_ni = toe->m_ni;
    const double base = sin(beta_toe) * cos(alpha_n);
    const double s_ni = thickness_of(teeth, m_ni, gear, workings);

    const double z_vni =
        TS_BEVEL_STEP(workings, z_formulas, z_v / ((1.0 - base * base) * cos(beta_toe)),
                      TS_BEVEL_SELF("z_v", z_v), TS_BEVEL_PAIR(beta_toe), TS_BEVEL_PAIR(alpha_n));
    const double d_vai =
        TS_BEVEL_STEP(workings, tip_formulas, m_ni * z_vni + 2.0 * h_ai, TS_BEVEL_PAIR(m_ni),
                      TS_BEVEL_SELF("z_vni", z_vni), TS_BEVEL_SELF("h_ai", h_ai));
    const double at_tip = acos(m_ni * z_vni * cos(alpha_n) / d_vai);

    toe->s_ni[gear] = s_ni;
    toe->s_ai[gear] = TS_BEVEL_STEP(
        workings, s_ai_formulas, d_vai * (s_ni / (m_ni * z_vni) + ts_inv(alpha_n) - ts_inv(at_tip)),
        TS_BEVEL_SELF("d_vai", d_vai), TS_BEVEL_SELF("s_ni", s_ni), TS_BEVEL_PAIR(m_ni),
        TS_BEVEL_SELF("z_vni", z_vni), TS_BEVEL_PAIR(alpha_n));
}

void ts_bevel_toe_solve(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth,
                        const ts_bevel_spiral *spiral, ts_bevel_toe *toe, ts_workings *workings)
{
    const double m_et = pair->in.m_et, R_i = teeth->R_i, R_e = pair->R_e;
    const double beta_toe = spiral_of(pair, spiral, workings);

    toe->m_ni =
        TS_STEP(workings, m_ni_formula, m_et * R_i / R_e * cos(beta_toe), m_et, R_i, R_e, beta_toe);
    solve_gear(pair, teeth, beta_toe, 0, toe, workings);
    solve_gear(pair, teeth, beta_toe, 1, toe, workings);
}
