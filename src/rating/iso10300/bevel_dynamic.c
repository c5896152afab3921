/* rating/iso10300/bevel_dynamic.c: what does a bevel mesh add to the load at this speed? */
#include "rating/iso10300/bevel_dynamic.h"

#include "rating/iso10300/bevel_source.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* ---- constants of the overlap ---------------------------------------------------------------- */

#define TABLE ISO_10300_1 "7.6, table of c_v"

BEVEL_FORMULA(c_v12, "share of deviations", "1", "0.32 + 0.57/(eps_vgamma - 0.3)", TABLE);
BEVEL_FORMULA(c_v3, "share of changing stiffness", "1", "0.096/(eps_vgamma - 1.56)", TABLE);
BEVEL_FORMULA(c_v4, "share of changing stiffness at resonance", "1",
              "(0.57 - 0.05*eps_vgamma)/(eps_vgamma - 1.44)", TABLE);
BEVEL_FORMULA(c_v56, "share of deviations above resonance", "1", "0.47 + 0.12/(eps_vgamma - 1.74)",
              TABLE);
BEVEL_FORMULA(c_v7, "constant part above resonance", "1", "0.125*sin(pi*(eps_vgamma - 2)) + 0.875",
              TABLE);

static double row(ts_workings *workings, const char *symbol, double value)
{
    ts_workings_row(workings, symbol, value, "1", TABLE BEVEL_RECALLED);
    return value;
}

ts_bevel_dynamic_constants ts_bevel_dynamic_constants_of(double eps_vgamma, ts_workings *workings)
{
    ts_bevel_dynamic_constants c = {NAN, NAN, NAN, NAN, NAN};

    if (!(eps_vgamma > 1.0))
        return c;
    if (eps_vgamma > 2.0) {
        c.c_v12 = TS_STEP(workings, c_v12_formula, 0.32 + 0.57 / (eps_vgamma - 0.3), eps_vgamma);
        c.c_v3  = TS_STEP(workings, c_v3_formula, 0.096 / (eps_vgamma - 1.56), eps_vgamma);
        c.c_v4  = TS_STEP(workings, c_v4_formula, (0.57 - 0.05 * eps_vgamma) / (eps_vgamma - 1.44),
                          eps_vgamma);
        c.c_v56 = TS_STEP(workings, c_v56_formula, 0.47 + 0.12 / (eps_vgamma - 1.74), eps_vgamma);
    } else {
        c.c_v12 = row(workings, "c_v12", 0.66);
        c.c_v3  = row(workings, "c_v3", 0.23);
        c.c_v4  = row(workings, "c_v4", 0.90);
        c.c_v56 = row(workings, "c_v56", 0.94);
    }
    if (eps_vgamma <= 1.5)
        c.c_v7 = row(workings, "c_v7", 0.75);
    else if (eps_vgamma <= 2.5)
        c.c_v7 = TS_STEP(workings, c_v7_formula, 0.125 * sin(pi * (eps_vgamma - 2.0)) + 0.875,
                         eps_vgamma);
    else
        c.c_v7 = row(workings, "c_v7", 1.0);
    return c;
}

/* ---- stiffness, mass, running in ------------------------------------------------------------- */

BEVEL_FORMULA(C_F, "share of the stiffness at this load", "1", "min(1, F_mt*K_A/b_veff/1e5)",
              ISO_10300_1 "9");
BEVEL_FORMULA(m_red, "reduced mass of both gears per unit face width", "kg/m",
              "1/(1/ms_1 + 1/ms_2)", ISO_10300_1 "7.5");

#define MASS_TEXT(I, M) "pi/8*rho_" I "*d_m" I "^2/cos(alpha_n)^2"
BEVEL_FORMULAS(ms_, "mass per unit face width at the line of action, a disc", "kg/m", MASS_TEXT,
               ISO_10300_1 "7.5");

double ts_bevel_stiffness_share(double F_mt, double K_A, double b_veff, ts_workings *workings)
{
    return TS_STEP(workings, C_F_formula, fmin(1.0, F_mt * K_A / b_veff / 1e5), F_mt, K_A, b_veff);
}

double ts_bevel_mass(double rho, double d_m, double alpha_n, int gear, ts_workings *workings)
{
    const double at = d_m / cos(alpha_n);

    return TS_BEVEL_STEP(workings, ms__formulas, pi / 8.0 * rho * (at * at),
                         TS_BEVEL_SELF("rho_", rho), TS_BEVEL_SELF("d_m", d_m),
                         TS_BEVEL_PAIR(alpha_n));
}

double ts_bevel_reduced_mass(double ms_1, double ms_2, ts_workings *workings)
{
    return TS_STEP(workings, m_red_formula, 1.0 / (1.0 / ms_1 + 1.0 / ms_2), ms_1, ms_2);
}

/* The limits are those of the speeds up to 5, up to 10 and above 10 m/s. */
#define HARD_TEXT(I, M)   "min(0.075*f_pt" I ", 3e-6)"
#define SLOW_TEXT(I, M)   "160e6/sigma_Hlim" I "*f_pt" I
#define MIDDLE_TEXT(I, M) "min(160e6/sigma_Hlim" I "*f_pt" I ", 12800/sigma_Hlim" I ")"
#define FAST_TEXT(I, M)   "min(160e6/sigma_Hlim" I "*f_pt" I ", 6400/sigma_Hlim" I ")"
#define RUNNING_IN(name, text)                                                                     \
    static const ts_formula name##_formulas[2] =                                                   \
        TS_BEVEL_BOTH("y_p", "running-in allowance", "m", text, ISO_10300_1 "9.5" BEVEL_RECALLED)
RUNNING_IN(hard, HARD_TEXT);
RUNNING_IN(slow, SLOW_TEXT);
RUNNING_IN(middle, MIDDLE_TEXT);
RUNNING_IN(fast, FAST_TEXT);

double ts_bevel_running_in(ts_gear_class class, double sigma_Hlim, double f_pt, double v_mt,
                           int gear, ts_workings *workings)
{
    const double whole = 160e6 / sigma_Hlim * f_pt;

    if (ts_gear_class_surface_hardened(class))
        return TS_BEVEL_STEP(workings, hard_formulas, fmin(0.075 * f_pt, 3e-6),
                             TS_BEVEL_SELF("f_pt", f_pt));
    if (v_mt <= 5.0)
        return TS_BEVEL_STEP(workings, slow_formulas, whole,
                             TS_BEVEL_SELF("sigma_Hlim", sigma_Hlim), TS_BEVEL_SELF("f_pt", f_pt));
    if (v_mt <= 10.0)
        return TS_BEVEL_STEP(workings, middle_formulas, fmin(whole, 12800.0 / sigma_Hlim),
                             TS_BEVEL_SELF("sigma_Hlim", sigma_Hlim), TS_BEVEL_SELF("f_pt", f_pt));
    return TS_BEVEL_STEP(workings, fast_formulas, fmin(whole, 6400.0 / sigma_Hlim),
                         TS_BEVEL_SELF("sigma_Hlim", sigma_Hlim), TS_BEVEL_SELF("f_pt", f_pt));
}

/* ---- ranges of speed ------------------------------------------------------------------------- */

ts_bevel_speed ts_bevel_speed_of(double N)
{
    if (N <= 0.75)
        return TS_BEVEL_SPEED_SUBCRITICAL;
    if (N <= 1.25)
        return TS_BEVEL_SPEED_RESONANCE;
    return N < 1.5 ? TS_BEVEL_SPEED_INTERMEDIATE : TS_BEVEL_SPEED_SUPERCRITICAL;
}

const char *ts_bevel_speed_says(ts_bevel_speed range)
{
    static const char *const says[] = {
        [TS_BEVEL_SPEED_SUBCRITICAL]   = "below resonance",
        [TS_BEVEL_SPEED_RESONANCE]     = "in resonance",
        [TS_BEVEL_SPEED_INTERMEDIATE]  = "between resonance and free running",
        [TS_BEVEL_SPEED_SUPERCRITICAL] = "above resonance",
    };

    return says[range];
}

#define K_V(name, what, expression, where)                                                         \
    static const ts_formula name##_formula = {.symbol  = "K_v",                                    \
                                              .meaning = "dynamic factor, " what,                  \
                                              .unit    = "1",                                      \
                                              .text    = (expression),                             \
                                              .source  = ISO_10300_1 where BEVEL_RECALLED}
#define RESONANCE_TEXT "B_p*c_v12 + c_v4 + 1"
#define ABOVE_TEXT     "B_p*c_v56 + c_v7"
K_V(subcritical, "below resonance", "N*(B_p*c_v12 + c_v3) + 1", "7.6.2");
K_V(resonance, "in resonance", RESONANCE_TEXT, "7.6.3");
K_V(supercritical, "above resonance", ABOVE_TEXT, "7.6.4");
K_V(intermediate, "between resonance and free running",
    ABOVE_TEXT " + (" RESONANCE_TEXT " - (" ABOVE_TEXT "))*(1.5 - N)/0.25", "7.6.5");

double ts_bevel_dynamic_factor(double N, const ts_bevel_dynamic_constants *c, double B,
                               ts_workings *workings)
{
    const double c_v12 = c->c_v12, c_v3 = c->c_v3, c_v4 = c->c_v4, c_v56 = c->c_v56;
    const double c_v7 = c->c_v7, B_p = B;
    const double at_resonance = B_p * c_v12 + c_v4 + 1.0, above = B_p * c_v56 + c_v7;

    switch (ts_bevel_speed_of(N)) {
    case TS_BEVEL_SPEED_SUBCRITICAL:
        return TS_STEP(workings, subcritical_formula, N * (B_p * c_v12 + c_v3) + 1.0, N, B_p, c_v12,
                       c_v3);
    case TS_BEVEL_SPEED_RESONANCE:
        return TS_STEP(workings, resonance_formula, at_resonance, B_p, c_v12, c_v4);
    case TS_BEVEL_SPEED_INTERMEDIATE:
        return TS_STEP(workings, intermediate_formula,
                       above + (at_resonance - above) * (1.5 - N) / 0.25, B_p, c_v12, c_v4, c_v56,
                       c_v7, N);
    case TS_BEVEL_SPEED_SUPERCRITICAL:
        break;
    }
    /* A NaN compares with nothing and would end here: it must not become a factor. */
    return isnan(N) ? (double)NAN
                    : TS_STEP(workings, supercritical_formula, above, B_p, c_v56, c_v7);
}
