/* rating/iso6336/root_form.c: how does the rack shape the root, and how does the load bend it? */
#include "rating/iso6336/root_form.h"

#include "element/involute.h"
#include "rating/iso6336/gear_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define CLAUSE_6 ISO_6336_3 "6.2" RECALLED
#define FORMULA(name, symbol, meaning, unit, text)                                                 \
    static const ts_formula name##_formulas[2] =                                                   \
        TS_OF_BOTH_GEARS(symbol, meaning, unit, text, CLAUSE_6)

/* ---- the virtual spur gear ------------------------------------------------------------------- */

#define Z_N_TEXT(I)  "z_" I "/(cos(beta_b)^2*cos(beta))"
#define D_N_TEXT(I)  "m_n*z_n" I
#define D_BN_TEXT(I) "d_n" I "*cos(alpha_n)"
#define D_AN_TEXT(I) "d_n" I " + d_a" I " - d_" I
#define SENSE(I)     "z_" I "/abs(z_" I ")"
#define D_EN_TEXT(I)                                                                               \
    SENSE(I)                                                                                       \
    "*2*sqrt((sqrt(d_an" I "^2/4 - d_bn" I                                                         \
    "^2/4) - " SENSE(I) "*p_bn*(eps_alphan - 1))^2 + d_bn" I "^2/4)"
#define D_TIP_TEXT(I)    "d_an" I
#define ALPHA_EN_TEXT(I) "acos(d_bn" I "/d_en" I ")"
#define GAMMA_E_TEXT(I)                                                                            \
    "(pi/2 + 2*x_E" I "*tan(alpha_n))/z_n" I " + inv(alpha_n) - inv(alpha_en" I ")"
#define ALPHA_FEN_TEXT(I) "alpha_en" I " - gamma_e" I

FORMULA(z_n, "z_n", "virtual number of teeth", "1", Z_N_TEXT);
FORMULA(d_n, "d_n", "reference diameter of the virtual gear", "m", D_N_TEXT);
FORMULA(d_bn, "d_bn", "base diameter of the virtual gear", "m", D_BN_TEXT);
FORMULA(d_an, "d_an", "tip diameter of the virtual gear", "m", D_AN_TEXT);
FORMULA(d_en, "d_en", "diameter of the outer point of single contact of the virtual gear", "m",
        D_EN_TEXT);
FORMULA(d_tip, "d_en", "diameter at which the load acts, the tip of the virtual gear", "m",
        D_TIP_TEXT);
FORMULA(alpha_en, "alpha_en", "profile angle where the load acts", "rad", ALPHA_EN_TEXT);
FORMULA(gamma_e, "gamma_e", "half angle of tooth thickness where the load acts", "rad",
        GAMMA_E_TEXT);
FORMULA(alpha_Fen, "alpha_Fen", "angle of the load to the chord", "rad", ALPHA_FEN_TEXT);

static const ts_formula eps_alphan_formula = {
    .symbol  = "eps_alphan",
    .meaning = "transverse contact ratio of the virtual pair",
    .unit    = "1",
    .text    = "eps_alpha/cos(beta_b)^2",
    .source  = CLAUSE_6,
};
static const ts_formula p_bn_formula = {
    .symbol  = "p_bn",
    .meaning = "normal base pitch",
    .unit    = "m",
    .text    = "pi*m_n*cos(alpha_n)",
    .source  = CLAUSE_6,
};

/* The load point counts along the path of contact from the tip, inwards; the path of an internal
 * gear runs the other way. */
static void place_load(const ts_root_form_input *in, ts_root_form *form, ts_workings *workings)
{
    const int    gear = in->gear;
    const double z = in->z, m_n = in->m_n, alpha_n = in->alpha_n, beta_b = in->beta_b;
    const double d_an = form->d_an, d_bn = form->d_bn;

    if (in->load == TS_ROOT_LOAD_TIP) {
        form->d_en = TS_GEAR_STEP(workings, d_tip_formulas, d_an, TS_OWN("d_an", d_an));
        return;
    }
    const double eps_alpha = in->eps_alpha, cos_b = cos(beta_b), sense = z / fabs(z);
    const double eps_alphan =
        TS_STEP(workings, eps_alphan_formula, eps_alpha / (cos_b * cos_b), eps_alpha, beta_b);
    const double p_bn   = TS_STEP(workings, p_bn_formula, pi * m_n * cos(alpha_n), m_n, alpha_n);
    const double at_tip = sqrt((d_an * d_an - d_bn * d_bn) / 4.0);
    const double along  = at_tip - sense * p_bn * (eps_alphan - 1.0);

    form->eps_alphan = eps_alphan;
    form->p_bn       = p_bn;
    form->d_en       = NAN;
    if (along >= 0.0) /* else the load would act past the base circle; false for NaN */
        form->d_en = TS_GEAR_STEP(workings, d_en_formulas,
                                  sense * 2.0 * sqrt(along * along + d_bn * d_bn / 4.0),
                                  TS_OWN("z_", z), TS_OWN("d_an", d_an), TS_OWN("d_bn", d_bn),
                                  TS_ALL(p_bn), TS_ALL(eps_alphan));
}

static bool solve_virtual_gear(const ts_root_form_input *in, ts_root_form *form,
                               ts_workings *workings)
{
    const int    gear = in->gear;
    const double z = in->z, x = in->x, d = in->d, d_a = in->d_a, m_n = in->m_n;
    const double alpha_n = in->alpha_n, beta = in->beta, beta_b = in->beta_b, cos_b = cos(beta_b);

    const double z_n = TS_GEAR_STEP(workings, z_n_formulas, z / (cos_b * cos_b * cos(beta)),
                                    TS_OWN("z_", z), TS_ALL(beta_b), TS_ALL(beta));
    const double d_n =
        TS_GEAR_STEP(workings, d_n_formulas, m_n * z_n, TS_ALL(m_n), TS_OWN("z_n", z_n));
    form->z_n  = z_n;
    form->d_n  = d_n;
    form->d_bn = TS_GEAR_STEP(workings, d_bn_formulas, d_n * cos(alpha_n), TS_OWN("d_n", d_n),
                              TS_ALL(alpha_n));
    form->d_an = TS_GEAR_STEP(workings, d_an_formulas, d_n + d_a - d, TS_OWN("d_n", d_n),
                              TS_OWN("d_a", d_a), TS_OWN("d_", d));
    place_load(in, form, workings);

    const double d_en = form->d_en, d_bn = form->d_bn;
    if (!(d_en / d_bn >= 1.0))
        return false;
    const double alpha_en = TS_GEAR_STEP(workings, alpha_en_formulas, acos(d_bn / d_en),
                                         TS_OWN("d_bn", d_bn), TS_OWN("d_en", d_en));
    const double gamma_e  = TS_GEAR_STEP(
         workings, gamma_e_formulas,
         (pi / 2.0 + 2.0 * x * tan(alpha_n)) / z_n + ts_inv(alpha_n) - ts_inv(alpha_en),
         TS_OWN("x_E", x), TS_ALL(alpha_n), TS_OWN("z_n", z_n), TS_OWN("alpha_en", alpha_en));
    form->alpha_en  = alpha_en;
    form->gamma_e   = gamma_e;
    form->alpha_Fen = TS_GEAR_STEP(workings, alpha_Fen_formulas, alpha_en - gamma_e,
                                   TS_OWN("alpha_en", alpha_en), TS_OWN("gamma_e", gamma_e));
    return true;
}

/* ---- the critical section -------------------------------------------------------------------- */

#define RHO_TEXT(I)        "rho_fPs"
#define RHO_CUTTER_TEXT(I) "rho_fPs + (x_0" I " + h_fPs - rho_fPs)^1.95/(3.156*1.036^z_0" I ")"
#define E_F_TEXT(I)                                                                                \
    "pi/4 - h_fPs*tan(alpha_n) + s_pr" I "/(m_n*cos(alpha_n)) - (1 - sin(alpha_n))*rho_fPv" I      \
    "/cos(alpha_n)"
#define G_F_TEXT(I)           "rho_fPv" I " - h_fPs + x_E" I
#define H_F_TEXT(I)           "2/z_n" I "*(pi/2 - E_F" I ") - pi/3"
#define H_F_INTERNAL_TEXT(I)  "2/z_n" I "*(pi/2 - E_F" I ") - pi/6"
#define THETA_TEXT(I)         "2*G_F" I "/z_n" I "*tan(theta_" I ") - H_F" I " - theta_" I
#define ARM(I)                "G_F" I "/cos(theta_" I ") - rho_fPv" I
#define S_FN_TEXT(I)          "m_n*(z_n" I "*sin(pi/3 - theta_" I ") + sqrt(3)*(" ARM(I) "))"
#define S_FN_INTERNAL_TEXT(I) "m_n*(z_n" I "*sin(pi/6 - theta_" I ") + " ARM(I) ")"
#define RHO_F_TEXT(I)                                                                              \
    "m_n*(rho_fPv" I " + 2*G_F" I "^2/(cos(theta_" I ")*(z_n" I "*cos(theta_" I ")^2 - 2*G_F" I    \
    ")))"
#define LEVER(I)     "(cos(gamma_e" I ") - sin(gamma_e" I ")*tan(alpha_Fen" I "))*d_en" I "/m_n"
#define H_FE_TEXT(I) "m_n/2*(" LEVER(I) " - z_n" I "*cos(pi/3 - theta_" I ") - (" ARM(I) "))"
#define H_FE_INTERNAL_TEXT(I)                                                                      \
    "m_n/2*(" LEVER(I) " - z_n" I "*cos(pi/6 - theta_" I ") - sqrt(3)*(" ARM(I) "))"
#define Y_F_TEXT(I) "6*h_Fe" I "/m_n*cos(alpha_Fen" I ")/((s_Fn" I "/m_n)^2*cos(alpha_n))"

FORMULA(rho_fPv, "rho_fPv", "fillet radius of the rack, in modules", "1", RHO_TEXT);
FORMULA(rho_cutter, "rho_fPv", "fillet radius of the equivalent rack, in modules", "1",
        RHO_CUTTER_TEXT);
FORMULA(E_F, "E_F", "auxiliary value E, in modules", "1", E_F_TEXT);
FORMULA(G_F, "G_F", "auxiliary value G, in modules", "1", G_F_TEXT);
FORMULA(H_F, "H_F", "auxiliary value H", "1", H_F_TEXT);
FORMULA(H_F_internal, "H_F", "auxiliary value H", "1", H_F_INTERNAL_TEXT);
FORMULA(theta, "theta_", "where the tangent touches, on the tool's tip round", "rad", THETA_TEXT);
FORMULA(s_Fn, "s_Fn", "root chord of the critical section", "m", S_FN_TEXT);
FORMULA(s_Fn_internal, "s_Fn", "root chord of the critical section", "m", S_FN_INTERNAL_TEXT);
FORMULA(rho_F, "rho_F", "fillet radius of the critical section", "m", RHO_F_TEXT);
FORMULA(h_Fe, "h_Fe", "bending moment arm", "m", H_FE_TEXT);
FORMULA(h_Fe_internal, "h_Fe", "bending moment arm", "m", H_FE_INTERNAL_TEXT);
FORMULA(Y_F, "Y_F0", "form factor of the whole load on one tooth", "1", Y_F_TEXT);

static double fillet_of_tool(const ts_root_form_input *in, ts_workings *workings)
{
    const int    gear    = in->gear;
    const double rho_fPs = in->rack.rho_fPs, h_fPs = in->rack.h_fPs, z_0 = in->z_0, x_0 = in->x_0;

    if (in->z > 0.0 || !(z_0 > 0.0))
        return TS_GEAR_STEP(workings, rho_fPv_formulas, rho_fPs, TS_ALL(rho_fPs));
    return TS_GEAR_STEP(workings, rho_cutter_formulas,
                        rho_fPs + pow(x_0 + h_fPs - rho_fPs, 1.95) / (3.156 * pow(1.036, z_0)),
                        TS_ALL(rho_fPs), TS_OWN("x_0", x_0), TS_ALL(h_fPs), TS_OWN("z_0", z_0));
}

/* Newton's rule on theta - (2G/z) tan(theta) + H, which is nearly straight; 4 rounds are usual. */
static double find_theta(double G_F, double H_F, double z_n, double start)
{
    const double slope = 2.0 * G_F / z_n;
    double       theta = start;

    for (int round = 0; round < 30; round++) {
        const double t    = tan(theta);
        const double step = (theta - slope * t + H_F) / (1.0 - slope * (1.0 + t * t));

        theta -= step;
        if (!(fabs(step) > 4e-16))
            break;
    }
    return fabs(theta - slope * tan(theta) + H_F) < 1e-12 ? theta : (double)NAN;
}

static void note_theta(ts_workings *workings, int gear, const ts_root_form *form)
{
#ifndef TS_CHECKED
    if (workings == NULL)
        return;
#endif
    const double   z_n = form->z_n, G_F = form->G_F, H_F = form->H_F, theta = form->theta;
    const ts_input inputs[] = {TS_OWN("G_F", G_F), TS_OWN("z_n", z_n), TS_OWN("theta_", theta),
                               TS_OWN("H_F", H_F)};

    ts_search_note(workings, &theta_formulas[gear], theta,
                   2.0 * G_F / z_n * tan(theta) - H_F - theta, inputs, 4);
}

static bool solve_tangent(const ts_root_form_input *in, ts_root_form *form, ts_workings *workings)
{
    const int    gear = in->gear;
    const double m_n = in->m_n, alpha_n = in->alpha_n, x = in->x, h_fPs = in->rack.h_fPs;
    const double s_pr = in->s_pr, z_n = form->z_n;
    const bool   external = in->z > 0.0;
    const double rho_fPv  = fillet_of_tool(in, workings);
    const double flank    = (1.0 - sin(alpha_n)) * rho_fPv / cos(alpha_n);

    const double E_F = TS_GEAR_STEP(
        workings, E_F_formulas,
        pi / 4.0 - h_fPs * tan(alpha_n) + s_pr / (m_n * cos(alpha_n)) - flank, TS_ALL(h_fPs),
        TS_ALL(alpha_n), TS_OWN("s_pr", s_pr), TS_ALL(m_n), TS_OWN("rho_fPv", rho_fPv));
    const double G_F  = TS_GEAR_STEP(workings, G_F_formulas, rho_fPv - h_fPs + x,
                                     TS_OWN("rho_fPv", rho_fPv), TS_ALL(h_fPs), TS_OWN("x_E", x));
    const double turn = 2.0 / z_n * (pi / 2.0 - E_F);
    const double H_F  = external ? TS_GEAR_STEP(workings, H_F_formulas, turn - pi / 3.0,
                                                TS_OWN("z_n", z_n), TS_OWN("E_F", E_F))
                                 : TS_GEAR_STEP(workings, H_F_internal_formulas, turn - pi / 6.0,
                                                TS_OWN("z_n", z_n), TS_OWN("E_F", E_F));

    form->rho_fPv = rho_fPv;
    form->E_F     = E_F;
    form->G_F     = G_F;
    form->H_F     = H_F;
    form->theta   = find_theta(G_F, H_F, z_n, external ? pi / 6.0 : pi / 12.0);
    if (isnan(form->theta))
        return false;
    note_theta(workings, gear, form);
    form->on_fillet = form->theta >= 0.0 && form->theta <= pi / 2.0 - alpha_n;
    return true;
}

static void solve_section(const ts_root_form_input *in, ts_root_form *form, ts_workings *workings)
{
    const int    gear = in->gear;
    const double m_n = in->m_n, alpha_n = in->alpha_n, z_n = form->z_n, theta = form->theta;
    const double G_F = form->G_F, rho_fPv = form->rho_fPv, d_en = form->d_en;
    const double gamma_e = form->gamma_e, alpha_Fen = form->alpha_Fen;
    const double c = cos(theta), arm = G_F / c - rho_fPv, root3 = sqrt(3.0);
    const double lever = (cos(gamma_e) - sin(gamma_e) * tan(alpha_Fen)) * d_en / m_n;
    double       s_Fn, h_Fe;

    if (in->z > 0.0) {
        s_Fn =
            TS_GEAR_STEP(workings, s_Fn_formulas, m_n * (z_n * sin(pi / 3.0 - theta) + root3 * arm),
                         TS_ALL(m_n), TS_OWN("z_n", z_n), TS_OWN("theta_", theta),
                         TS_OWN("G_F", G_F), TS_OWN("rho_fPv", rho_fPv));
        h_Fe = TS_GEAR_STEP(workings, h_Fe_formulas,
                            m_n / 2.0 * (lever - z_n * cos(pi / 3.0 - theta) - arm), TS_ALL(m_n),
                            TS_OWN("gamma_e", gamma_e), TS_OWN("alpha_Fen", alpha_Fen),
                            TS_OWN("d_en", d_en), TS_OWN("z_n", z_n), TS_OWN("theta_", theta),
                            TS_OWN("G_F", G_F), TS_OWN("rho_fPv", rho_fPv));
    } else {
        s_Fn =
            TS_GEAR_STEP(workings, s_Fn_internal_formulas,
                         m_n * (z_n * sin(pi / 6.0 - theta) + arm), TS_ALL(m_n), TS_OWN("z_n", z_n),
                         TS_OWN("theta_", theta), TS_OWN("G_F", G_F), TS_OWN("rho_fPv", rho_fPv));
        h_Fe = TS_GEAR_STEP(workings, h_Fe_internal_formulas,
                            m_n / 2.0 * (lever - z_n * cos(pi / 6.0 - theta) - root3 * arm),
                            TS_ALL(m_n), TS_OWN("gamma_e", gamma_e), TS_OWN("alpha_Fen", alpha_Fen),
                            TS_OWN("d_en", d_en), TS_OWN("z_n", z_n), TS_OWN("theta_", theta),
                            TS_OWN("G_F", G_F), TS_OWN("rho_fPv", rho_fPv));
    }
    form->s_Fn = s_Fn;
    form->h_Fe = h_Fe;
    form->rho_F =
        TS_GEAR_STEP(workings, rho_F_formulas,
                     m_n * (rho_fPv + 2.0 * (G_F * G_F) / (c * (z_n * (c * c) - 2.0 * G_F))),
                     TS_ALL(m_n), TS_OWN("rho_fPv", rho_fPv), TS_OWN("G_F", G_F),
                     TS_OWN("theta_", theta), TS_OWN("z_n", z_n));
    const double chord = s_Fn / m_n;
    form->Y_F          = TS_GEAR_STEP(workings, Y_F_formulas,
                                      6.0 * h_Fe / m_n * cos(alpha_Fen) / (chord * chord * cos(alpha_n)),
                                      TS_OWN("h_Fe", h_Fe), TS_ALL(m_n), TS_OWN("alpha_Fen", alpha_Fen),
                                      TS_OWN("s_Fn", s_Fn), TS_ALL(alpha_n));
}

bool ts_root_form_solve(const ts_root_form_input *in, ts_root_form *form, ts_workings *workings)
{
    *form = (ts_root_form){.eps_alphan = NAN, .p_bn = NAN};
    if (!solve_virtual_gear(in, form, workings) || !solve_tangent(in, form, workings)) {
        form->s_Fn = form->h_Fe = form->rho_F = form->Y_F = NAN;
        return false;
    }
    solve_section(in, form, workings);
    return form->s_Fn > 0.0 && form->h_Fe > 0.0 && form->rho_F > 0.0;
}
