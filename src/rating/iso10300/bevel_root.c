/* rating/iso10300/bevel_root.c: where do bevel teeth break, and how strained are they there? */
#include "rating/iso10300/bevel_root.h"

#include "element/involute.h"
#include "rating/iso10300/bevel_source.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* ---- the critical section -------------------------------------------------------------------- */

#define FORM ISO_10300_3 "6.4.1"

#define E_TEXT(I, M)                                                                               \
    "(pi/4 - x_sm" I ")*m_mn - h_a0*tan(alpha_n) - (rho_a0" I "*(1 - sin(alpha_n)) - s_pr" I       \
    ")/cos(alpha_n)"
#define G_TEXT(I, M)     "(rho_a0" I " - h_a0)/m_mn + x_hm" I
#define H_TEXT(I, M)     "2/z_vn" I "*(pi/2 - E_F" I "/m_mn) - pi/3"
#define THETA_TEXT(I, M) "2*G_F" I "/z_vn" I "*tan(theta_" I ") - H_F" I " - theta_" I
#define ARM_TEXT(I)      "(G_F" I "/cos(theta_" I ") - rho_a0" I "/m_mn)"
#define CHORD_TEXT(I, M) "m_mn*(z_vn" I "*sin(pi/3 - theta_" I ") + sqrt(3)*" ARM_TEXT(I) ")"
#define FILLET_TEXT(I, M)                                                                          \
    "rho_a0" I " + m_mn*2*G_F" I "^2/(cos(theta_" I ")*(z_vn" I "*cos(theta_" I ")^2 - 2*G_F" I "))"
#define ALPHA_AN_TEXT(I, M) "acos(d_vbn" I "/d_van" I ")"
#define GAMMA_A_TEXT(I, M)                                                                         \
    "(pi/2 + 2*(x_hm" I "*tan(alpha_n) + x_sm" I "))/z_vn" I " + inv(alpha_n) - inv(alpha_an" I ")"
#define ALPHA_FAN_TEXT(I, M) "alpha_an" I " - gamma_a" I
#define LEVER_TEXT(I, M)                                                                           \
    "m_mn/2*((cos(gamma_a" I ") - sin(gamma_a" I ")*tan(alpha_Fan" I "))*d_van" I "/m_mn - z_vn" I \
    "*cos(pi/3 - theta_" I ") - " ARM_TEXT(I) ")"
#define Y_FA_TEXT(I, M) "6*h_Fa" I "*cos(alpha_Fan" I ")*m_mn/(s_Fn" I "^2*cos(alpha_n))"
#define L_A_TEXT(I, M)  "s_Fn" I "/h_Fa" I
#define Q_S_TEXT(I, M)  "s_Fn" I "/(2*rho_F" I ")"
#define Y_SA_TEXT(I, M) "(1.2 + 0.13*L_a" I ")*q_s" I "^(1/(1.21 + 2.3/L_a" I "))"

BEVEL_FORMULAS(E_F, "centre of the cutter's edge from its centre line", "m", E_TEXT, FORM);
BEVEL_FORMULAS(G_F, "auxiliary value", "1", G_TEXT, FORM);
BEVEL_FORMULAS(H_F, "auxiliary value", "1", H_TEXT, FORM);
BEVEL_FORMULAS(theta_, "angle of the tangent at 30 degrees", "rad", THETA_TEXT, FORM);
BEVEL_FORMULAS(s_Fn, "root chord", "m", CHORD_TEXT, FORM);
BEVEL_FORMULAS(rho_F, "fillet radius", "m", FILLET_TEXT, FORM);
BEVEL_FORMULAS(alpha_an, "normal pressure angle at the tip", "rad", ALPHA_AN_TEXT, FORM);
BEVEL_FORMULAS(gamma_a, "half tooth angle at the tip", "rad", GAMMA_A_TEXT, FORM);
BEVEL_FORMULAS(alpha_Fan, "load direction at the tip", "rad", ALPHA_FAN_TEXT, FORM);
BEVEL_FORMULAS(h_Fa, "lever of a load at the tip", "m", LEVER_TEXT, FORM);
BEVEL_FORMULAS(Y_Fa, "tooth form factor", "1", Y_FA_TEXT, FORM);
BEVEL_FORMULAS(L_a, "chord over lever", "1", L_A_TEXT, ISO_10300_3 "6.4.2");
BEVEL_FORMULAS(q_s, "notch parameter", "1", Q_S_TEXT, ISO_10300_3 "6.4.2");
BEVEL_FORMULAS(Y_Sa, "stress correction factor", "1", Y_SA_TEXT, ISO_10300_3 "6.4.2");

/* Teeth cut without generation are those of a rack: all of the above for endless teeth. */
#define DERIVED_RACK              "derived: straight flanks, as the generated form for endless teeth"
#define CHORD_RACK_TEXT(I, M)     "pi*m_mn - 2*E_F" I " - sqrt(3)*rho_a0" I
#define FILLET_RACK_TEXT(I, M)    "1*rho_a0" I
#define ALPHA_FAN_RACK_TEXT(I, M) "1*alpha_n"
#define LEVER_RACK_TEXT(I, M)                                                                      \
    "h_am" I " + h_a0 - x_hm" I "*m_mn - rho_a0" I "/2 - (s_mn" I "/2 - h_am" I                    \
    "*tan(alpha_n))*tan(alpha_n)"
static const ts_formula chord_rack_formulas[2] =
    TS_BEVEL_BOTH("s_Fn", "root chord", "m", CHORD_RACK_TEXT, DERIVED_RACK);
static const ts_formula fillet_rack_formulas[2] =
    TS_BEVEL_BOTH("rho_F", "fillet radius", "m", FILLET_RACK_TEXT, DERIVED_RACK);
static const ts_formula alpha_Fan_rack_formulas[2] = TS_BEVEL_BOTH(
    "alpha_Fan", "load direction at the tip", "rad", ALPHA_FAN_RACK_TEXT, DERIVED_RACK);
static const ts_formula lever_rack_formulas[2] =
    TS_BEVEL_BOTH("h_Fa", "lever of a load at the tip", "m", LEVER_RACK_TEXT, DERIVED_RACK);

/* 2G/z tan(theta) - H - theta, by Newton's rule from 30 degrees; the function falls steadily while
 * G is negative, which it is for every cutter whose edge lies deeper than its shift. */
static double find_theta(double G, double H, double z_vn)
{
    double theta = pi / 6.0;

    for (int round = 0; round < 40; round++) {
        const double slope = tan(theta), cosine = cos(theta);
        const double off  = 2.0 * G / z_vn * slope - H - theta;
        const double step = off / (2.0 * G / z_vn / (cosine * cosine) - 1.0);

        theta -= step;
        if (!(theta > -pi / 2.0 && theta < pi / 2.0))
            return NAN;
        if (fabs(step) <= 1e-15)
            break;
    }
    return theta;
}

static void note_theta(const ts_bevel_root *root, double z_vn, int gear, ts_workings *workings)
{
    const double   G = root->G, H = root->H, theta = root->theta;
    const double   residual = 2.0 * G / z_vn * tan(theta) - H - theta;
    const ts_input inputs[] = {TS_BEVEL_SELF("G_F", G), TS_BEVEL_SELF("z_vn", z_vn),
                               TS_BEVEL_SELF("theta_", theta), TS_BEVEL_SELF("H_F", H)};

    ts_search_note(workings, &theta__formulas[gear], theta, residual, inputs, 4);
}

static bool solve_generated(const ts_bevel_root_input *in, int gear, ts_bevel_root *root,
                            ts_workings *workings)
{
    const double m_mn = in->m_mn, z_vn = in->z_vn, rho_a0 = in->rho_a0, h_a0 = in->h_a0;
    const double x_hm = in->x_hm, x_sm = in->x_sm, alpha_n = in->alpha_n, E = root->E;
    const double d_van = in->d_van, d_vbn = in->d_vbn;

    const double G = TS_BEVEL_STEP(workings, G_F_formulas, (rho_a0 - h_a0) / m_mn + x_hm,
                                   TS_BEVEL_SELF("rho_a0", rho_a0), TS_BEVEL_PAIR(h_a0),
                                   TS_BEVEL_PAIR(m_mn), TS_BEVEL_SELF("x_hm", x_hm));
    const double H =
        TS_BEVEL_STEP(workings, H_F_formulas, 2.0 / z_vn * (pi / 2.0 - E / m_mn) - pi / 3.0,
                      TS_BEVEL_SELF("z_vn", z_vn), TS_BEVEL_SELF("E_F", E), TS_BEVEL_PAIR(m_mn));

    root->G     = G;
    root->H     = H;
    root->theta = find_theta(G, H, z_vn);
    if (isnan(root->theta) || !(d_van > d_vbn))
        return false;
    note_theta(root, z_vn, gear, workings);

    const double   theta = root->theta, cosine = cos(theta), arm = G / cosine - rho_a0 / m_mn;
    const double   bend     = z_vn * (cosine * cosine) - 2.0 * G;
    const ts_input theta_in = TS_BEVEL_SELF("theta_", theta), z_in = TS_BEVEL_SELF("z_vn", z_vn);
    const ts_input G_in = TS_BEVEL_SELF("G_F", G), rho_in = TS_BEVEL_SELF("rho_a0", rho_a0);
    const ts_input m_in = TS_BEVEL_PAIR(m_mn);

    root->s_Fn = TS_BEVEL_STEP(workings, s_Fn_formulas,
                               m_mn * (z_vn * sin(pi / 3.0 - theta) + sqrt(3.0) * arm), m_in, z_in,
                               theta_in, G_in, rho_in);
    root->rho_F =
        TS_BEVEL_STEP(workings, rho_F_formulas, rho_a0 + m_mn * 2.0 * (G * G) / (cosine * bend),
                      rho_in, m_in, G_in, theta_in, z_in);
    const double alpha_an =
        TS_BEVEL_STEP(workings, alpha_an_formulas, acos(d_vbn / d_van),
                      TS_BEVEL_SELF("d_vbn", d_vbn), TS_BEVEL_SELF("d_van", d_van));
    const double gamma_a = TS_BEVEL_STEP(
        workings, gamma_a_formulas,
        (pi / 2.0 + 2.0 * (x_hm * tan(alpha_n) + x_sm)) / z_vn + ts_inv(alpha_n) - ts_inv(alpha_an),
        TS_BEVEL_SELF("x_hm", x_hm), TS_BEVEL_PAIR(alpha_n), TS_BEVEL_SELF("x_sm", x_sm), z_in,
        TS_BEVEL_SELF("alpha_an", alpha_an));
    const double alpha_Fan =
        TS_BEVEL_STEP(workings, alpha_Fan_formulas, alpha_an - gamma_a,
                      TS_BEVEL_SELF("alpha_an", alpha_an), TS_BEVEL_SELF("gamma_a", gamma_a));
    const double tip = (cos(gamma_a) - sin(gamma_a) * tan(alpha_Fan)) * d_van / m_mn;

    root->alpha_an  = alpha_an;
    root->gamma_a   = gamma_a;
    root->alpha_Fan = alpha_Fan;
    root->h_Fa      = TS_BEVEL_STEP(
             workings, h_Fa_formulas, m_mn / 2.0 * (tip - z_vn * cos(pi / 3.0 - theta) - arm), m_in,
             TS_BEVEL_SELF("gamma_a", gamma_a), TS_BEVEL_SELF("alpha_Fan", alpha_Fan),
             TS_BEVEL_SELF("d_van", d_van), z_in, theta_in, G_in, rho_in);
    return bend > 0.0;
}

static bool solve_formed(const ts_bevel_root_input *in, int gear, ts_bevel_root *root,
                         ts_workings *workings)
{
    const double m_mn = in->m_mn, rho_a0 = in->rho_a0, h_a0 = in->h_a0, alpha_n = in->alpha_n;
    const double x_hm = in->x_hm, h_am = in->h_am, s_mn = in->s_mn, E = root->E;
    const double slope = tan(alpha_n), half_tip = s_mn / 2.0 - h_am * slope;

    root->s_Fn = TS_BEVEL_STEP(workings, chord_rack_formulas,
                               pi * m_mn - 2.0 * E - sqrt(3.0) * rho_a0, TS_BEVEL_PAIR(m_mn),
                               TS_BEVEL_SELF("E_F", E), TS_BEVEL_SELF("rho_a0", rho_a0));
    root->rho_F =
        TS_BEVEL_STEP(workings, fillet_rack_formulas, rho_a0, TS_BEVEL_SELF("rho_a0", rho_a0));
    root->alpha_Fan =
        TS_BEVEL_STEP(workings, alpha_Fan_rack_formulas, alpha_n, TS_BEVEL_PAIR(alpha_n));
    root->h_Fa = TS_BEVEL_STEP(
        workings, lever_rack_formulas, h_am + h_a0 - x_hm * m_mn - rho_a0 / 2.0 - half_tip * slope,
        TS_BEVEL_SELF("h_am", h_am), TS_BEVEL_PAIR(h_a0), TS_BEVEL_SELF("x_hm", x_hm),
        TS_BEVEL_PAIR(m_mn), TS_BEVEL_SELF("rho_a0", rho_a0), TS_BEVEL_SELF("s_mn", s_mn),
        TS_BEVEL_PAIR(alpha_n));
    return half_tip > 0.0;
}

static void solve_factors(const ts_bevel_root_input *in, int gear, ts_bevel_root *root,
                          ts_workings *workings)
{
    const double m_mn = in->m_mn, alpha_n = in->alpha_n, alpha_Fan = root->alpha_Fan;
    const double h_Fa = root->h_Fa, s_Fn = root->s_Fn, rho_F = root->rho_F;

    root->Y_Fa = TS_BEVEL_STEP(
        workings, Y_Fa_formulas, 6.0 * h_Fa * cos(alpha_Fan) * m_mn / (s_Fn * s_Fn * cos(alpha_n)),
        TS_BEVEL_SELF("h_Fa", h_Fa), TS_BEVEL_SELF("alpha_Fan", alpha_Fan), TS_BEVEL_PAIR(m_mn),
        TS_BEVEL_SELF("s_Fn", s_Fn), TS_BEVEL_PAIR(alpha_n));
    const double L_a = TS_BEVEL_STEP(workings, L_a_formulas, s_Fn / h_Fa,
                                     TS_BEVEL_SELF("s_Fn", s_Fn), TS_BEVEL_SELF("h_Fa", h_Fa));
    const double q_s = TS_BEVEL_STEP(workings, q_s_formulas, s_Fn / (2.0 * rho_F),
                                     TS_BEVEL_SELF("s_Fn", s_Fn), TS_BEVEL_SELF("rho_F", rho_F));

    root->L_a  = L_a;
    root->q_s  = q_s;
    root->Y_Sa = TS_BEVEL_STEP(workings, Y_Sa_formulas,
                               (1.2 + 0.13 * L_a) * pow(q_s, 1.0 / (1.21 + 2.3 / L_a)),
                               TS_BEVEL_SELF("L_a", L_a), TS_BEVEL_SELF("q_s", q_s));
}

static const ts_bevel_root nothing = {NAN, NAN, NAN, NAN, NAN, NAN, NAN,
                                      NAN, NAN, NAN, NAN, NAN, NAN, NAN};

bool ts_bevel_root_solve(const ts_bevel_root_input *in, int gear, ts_bevel_root *root,
                         ts_workings *workings)
{
    const double m_mn = in->m_mn, alpha_n = in->alpha_n, h_a0 = in->h_a0, rho_a0 = in->rho_a0;
    const double x_sm = in->x_sm, s_pr = in->s_pr;

    *root = nothing;
    if (!(in->z_vn > 0.0 && m_mn > 0.0 && rho_a0 >= 0.0 && h_a0 > 0.0))
        return false;
    root->E = TS_BEVEL_STEP(workings, E_F_formulas,
                            (pi / 4.0 - x_sm) * m_mn - h_a0 * tan(alpha_n) -
                                (rho_a0 * (1.0 - sin(alpha_n)) - s_pr) / cos(alpha_n),
                            TS_BEVEL_SELF("x_sm", x_sm), TS_BEVEL_PAIR(m_mn), TS_BEVEL_PAIR(h_a0),
                            TS_BEVEL_PAIR(alpha_n), TS_BEVEL_SELF("rho_a0", rho_a0),
                            TS_BEVEL_SELF("s_pr", s_pr));
    if (!(root->E >= 0.0) ||
        !(in->formed ? solve_formed(in, gear, root, workings)
                     : solve_generated(in, gear, root, workings)) ||
        !(root->s_Fn > 0.0 && root->h_Fa > 0.0 && root->rho_F > 0.0)) {
        *root = nothing;
        return false;
    }
    solve_factors(in, gear, root, workings);
    return true;
}
