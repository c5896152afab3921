/* element/bevel_virtual.c: which cylindrical gears stand for a bevel pair? */
#include "element/bevel_virtual.h"

#include "base/assert.h"
#include "element/bevel_step.h"
#include "element/involute.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define ANNEX_A "ISO 10300-1:2014, annex A (formula from memory)"

/* ---- one gear -------------------------------------------------------------------------------- */

#define D_V_TEXT(I, M)   "d_m" I "/cos(delta_" I ")"
#define D_VA_TEXT(I, M)  "d_v" I " + 2*h_am" I
#define D_VB_TEXT(I, M)  "d_v" I "*cos(alpha_vet)"
#define Z_VN_TEXT(I, M)  "z_v" I "/(cos(beta_vb)^2*cos(beta_m))"
#define D_VN_TEXT(I, M)  "m_mn*z_vn" I
#define D_VAN_TEXT(I, M) "d_vn" I " + 2*h_am" I
#define D_VBN_TEXT(I, M) "d_vn" I "*cos(alpha_n)"
#define S_VAN_TEXT(I, M)                                                                           \
    "d_van" I "*((pi/2 + 2*(x_hm" I "*tan(alpha_n) + x_sm" I "))/z_vn" I " + inv(alpha_n) - inv("  \
    "acos(d_vbn" I "/d_van" I ")))"

static const ts_formula d_v_formulas[2] =
    TS_BEVEL_BOTH("d_v", "virtual pitch diameter", "m", D_V_TEXT, ANNEX_A);
static const ts_formula d_va_formulas[2] =
    TS_BEVEL_BOTH("d_va", "virtual tip diameter", "m", D_VA_TEXT, ANNEX_A);
static const ts_formula d_vb_formulas[2] =
    TS_BEVEL_BOTH("d_vb", "virtual base diameter", "m", D_VB_TEXT, ANNEX_A);
static const ts_formula z_vn_formulas[2] =
    TS_BEVEL_BOTH("z_vn", "virtual teeth in the normal section", "1", Z_VN_TEXT, ANNEX_A);
static const ts_formula d_vn_formulas[2] =
    TS_BEVEL_BOTH("d_vn", "virtual pitch diameter, normal section", "m", D_VN_TEXT, ANNEX_A);
static const ts_formula d_van_formulas[2] =
    TS_BEVEL_BOTH("d_van", "virtual tip diameter, normal section", "m", D_VAN_TEXT, ANNEX_A);
static const ts_formula d_vbn_formulas[2] =
    TS_BEVEL_BOTH("d_vbn", "virtual base diameter, normal section", "m", D_VBN_TEXT, ANNEX_A);
static const ts_formula s_van_formulas[2] =
    TS_BEVEL_BOTH("s_van", "normal tooth thickness at the tip", "m", S_VAN_TEXT,
                  "derived: involute tooth of the virtual gear in the normal section");

static void solve_transverse(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth, int gear,
                             ts_bevel_virtual *v, ts_workings *workings)
{
    const double d_m   = gear == 0 ? pair->d_m1 : pair->d_m2;
    const double delta = gear == 0 ? pair->delta_1 : pair->delta_2;
    const double h_am = teeth->h_am[gear], alpha_vet = v->alpha_vet;

    const double d_v = TS_BEVEL_STEP(workings, d_v_formulas, d_m / cos(delta),
                                     TS_BEVEL_SELF("d_m", d_m), TS_BEVEL_SELF("delta_", delta));

    v->z_v[gear]  = gear == 0 ? pair->z_v1 : pair->z_v2;
    v->d_v[gear]  = d_v;
    v->d_va[gear] = TS_BEVEL_STEP(workings, d_va_formulas, d_v + 2.0 * h_am,
                                  TS_BEVEL_SELF("d_v", d_v), TS_BEVEL_SELF("h_am", h_am));
    v->d_vb[gear] = TS_BEVEL_STEP(workings, d_vb_formulas, d_v * cos(alpha_vet),
                                  TS_BEVEL_SELF("d_v", d_v), TS_BEVEL_PAIR(alpha_vet));
}

static void solve_normal(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth, int gear,
                         ts_bevel_virtual *v, ts_workings *workings)
{
    const double m_mn = pair->m_mn, alpha_n = pair->in.alpha_n, beta_m = pair->in.beta_m;
    const double z_v = v->z_v[gear], beta_vb = v->beta_vb, h_am = teeth->h_am[gear];
    const double x_hm = teeth->x_hm[gear], x_sm = teeth->x_sm[gear];
    const double cosine = cos(beta_vb);

    const double z_vn =
        TS_BEVEL_STEP(workings, z_vn_formulas, z_v / (cosine * cosine * cos(beta_m)),
                      TS_BEVEL_SELF("z_v", z_v), TS_BEVEL_PAIR(beta_vb), TS_BEVEL_PAIR(beta_m));
    const double d_vn  = TS_BEVEL_STEP(workings, d_vn_formulas, m_mn * z_vn, TS_BEVEL_PAIR(m_mn),
                                       TS_BEVEL_SELF("z_vn", z_vn));
    const double d_van = TS_BEVEL_STEP(workings, d_van_formulas, d_vn + 2.0 * h_am,
                                       TS_BEVEL_SELF("d_vn", d_vn), TS_BEVEL_SELF("h_am", h_am));
    const double d_vbn = TS_BEVEL_STEP(workings, d_vbn_formulas, d_vn * cos(alpha_n),
                                       TS_BEVEL_SELF("d_vn", d_vn), TS_BEVEL_PAIR(alpha_n));
    const double arc   = (pi / 2.0 + 2.0 * (x_hm * tan(alpha_n) + x_sm)) / z_vn;

    v->z_vn[gear]  = z_vn;
    v->d_vn[gear]  = d_vn;
    v->d_van[gear] = d_van;
    v->d_vbn[gear] = d_vbn;
    v->s_van[gear] = TS_BEVEL_STEP(
        workings, s_van_formulas, d_van * (arc + ts_inv(alpha_n) - ts_inv(acos(d_vbn / d_van))),
        TS_BEVEL_SELF("d_van", d_van), TS_BEVEL_SELF("x_hm", x_hm), TS_BEVEL_PAIR(alpha_n),
        TS_BEVEL_SELF("x_sm", x_sm), TS_BEVEL_SELF("z_vn", z_vn), TS_BEVEL_SELF("d_vbn", d_vbn));
}

/* ---- the pair -------------------------------------------------------------------------------- */

#define PAIR(name, what, in_unit, expression, from)                                                \
    static const ts_formula name##_formula = {.symbol  = #name,                                    \
                                              .meaning = (what),                                   \
                                              .unit    = (in_unit),                                \
                                              .text    = (expression),                             \
                                              .source  = (from)}

PAIR(alpha_vet, "virtual transverse pressure angle", "rad", "atan(tan(alpha_n)/cos(beta_m))",
     ANNEX_A);
PAIR(beta_vb, "virtual base helix angle", "rad", "asin(sin(beta_m)*cos(alpha_n))", ANNEX_A);
PAIR(u_v, "ratio of virtual teeth", "1", "z_v2/z_v1", ANNEX_A);
PAIR(a_v, "virtual centre distance", "m", "(d_v1 + d_v2)/2", ANNEX_A);
PAIR(p_vet, "virtual transverse base pitch", "m", "pi*m_mn*cos(alpha_vet)/cos(beta_m)", ANNEX_A);
PAIR(b_v, "virtual face width", "m", "b", ANNEX_A);
PAIR(b_veff, "effective face width", "m", "b_veff_share*b_v", ANNEX_A);
PAIR(g_valpha, "path of contact", "m",
     "(sqrt(d_va1^2 - d_vb1^2) + sqrt(d_va2^2 - d_vb2^2))/2 - a_v*sin(alpha_vet)", ANNEX_A);
PAIR(eps_valpha, "virtual transverse contact ratio", "1", "g_valpha/p_vet", ANNEX_A);
PAIR(eps_vbeta, "virtual face contact ratio", "1", "b_veff*sin(beta_m)/(pi*m_mn)", ANNEX_A);
PAIR(eps_vgamma, "modified contact ratio", "1", "sqrt(eps_valpha^2 + eps_vbeta^2)", ANNEX_A);
PAIR(eps_valphan, "virtual transverse contact ratio, normal section", "1",
     "eps_valpha/cos(beta_vb)^2", ANNEX_A);
PAIR(rho_rel, "relative radius of curvature across the line of contact", "m",
     "d_v1*d_v2*sin(alpha_vet)/(2*(d_v1 + d_v2)*cos(beta_vb))",
     "derived: pitch point of the virtual gears; as ISO 10300-2:2014, 6.2 without offset");

static void solve_ratios(const ts_bevel_pair *pair, double share, ts_bevel_virtual *v,
                         ts_workings *workings)
{
    const double m_mn = pair->m_mn, beta_m = pair->in.beta_m, b = pair->in.b;
    const double alpha_vet = v->alpha_vet, beta_vb = v->beta_vb, cosine = cos(beta_vb);
    const double d_va1 = v->d_va[0], d_va2 = v->d_va[1], d_vb1 = v->d_vb[0], d_vb2 = v->d_vb[1];
    const double reach_1 = sqrt(d_va1 * d_va1 - d_vb1 * d_vb1);
    const double reach_2 = sqrt(d_va2 * d_va2 - d_vb2 * d_vb2), a_v = v->a_v;
    const double b_veff_share = share;

    const double p_vet  = TS_STEP(workings, p_vet_formula, pi * m_mn * cos(alpha_vet) / cos(beta_m),
                                  m_mn, alpha_vet, beta_m);
    const double b_v    = TS_STEP(workings, b_v_formula, b, b);
    const double b_veff = TS_STEP(workings, b_veff_formula, share * b_v, b_veff_share, b_v);
    const double g_valpha =
        TS_STEP(workings, g_valpha_formula, (reach_1 + reach_2) / 2.0 - a_v * sin(alpha_vet), d_va1,
                d_vb1, d_va2, d_vb2, a_v, alpha_vet);
    const double eps_valpha =
        TS_STEP(workings, eps_valpha_formula, g_valpha / p_vet, g_valpha, p_vet);
    const double eps_vbeta = TS_STEP(workings, eps_vbeta_formula,
                                     b_veff * sin(beta_m) / (pi * m_mn), b_veff, beta_m, m_mn);

    v->p_vet      = p_vet;
    v->b_v        = b_v;
    v->b_veff     = b_veff;
    v->g_valpha   = g_valpha;
    v->eps_valpha = eps_valpha;
    v->eps_vbeta  = eps_vbeta;
    v->eps_vgamma =
        TS_STEP(workings, eps_vgamma_formula, sqrt(eps_valpha * eps_valpha + eps_vbeta * eps_vbeta),
                eps_valpha, eps_vbeta);
    v->eps_valphan =
        TS_STEP(workings, eps_valphan_formula, eps_valpha / (cosine * cosine), eps_valpha, beta_vb);
}

void ts_bevel_virtual_solve(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth, double share,
                            ts_bevel_virtual *v, ts_workings *workings)
{
    const double alpha_n = pair->in.alpha_n, beta_m = pair->in.beta_m;
    TS_ASSERT(share > 0.0 && share <= 1.0);

    const double alpha_vet =
        TS_STEP(workings, alpha_vet_formula, atan(tan(alpha_n) / cos(beta_m)), alpha_n, beta_m);
    const double beta_vb =
        TS_STEP(workings, beta_vb_formula, asin(sin(beta_m) * cos(alpha_n)), beta_m, alpha_n);

    v->alpha_vet = alpha_vet;
    v->beta_vb   = beta_vb;
    for (int gear = 0; gear < 2; gear++) {
        solve_transverse(pair, teeth, gear, v, workings);
        solve_normal(pair, teeth, gear, v, workings);
    }
    const double z_v1 = v->z_v[0], z_v2 = v->z_v[1], d_v1 = v->d_v[0], d_v2 = v->d_v[1];

    v->u_v     = TS_STEP(workings, u_v_formula, z_v2 / z_v1, z_v2, z_v1);
    v->a_v     = TS_STEP(workings, a_v_formula, (d_v1 + d_v2) / 2.0, d_v1, d_v2);
    v->rho_rel = TS_STEP(workings, rho_rel_formula,
                         d_v1 * d_v2 * sin(alpha_vet) / (2.0 * (d_v1 + d_v2) * cos(beta_vb)), d_v1,
                         d_v2, alpha_vet, beta_vb);
    solve_ratios(pair, share, v, workings);
}
