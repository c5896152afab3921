/* rating/iso10300/bevel_strength.c: which factors stand between a test gear and these bevels? */
#include "rating/iso10300/bevel_strength.h"

#include "rating/iso10300/bevel_source.h"

#include <math.h>
#include <stddef.h>

/* ---- the flank ------------------------------------------------------------------------------- */

/* The constants are straight between 850 and 1200 N/mm2 and level outside. */
#define LIMITED "min(1200e6, max(850e6, sigma_Hlim))"

BEVEL_FORMULA(sigma_Hlim, "allowable stress number of the softer flank", "Pa",
              "min(sigma_Hlim1, sigma_Hlim2)", ISO_10300_2 "8.2");
BEVEL_FORMULA(C_ZL, "constant of the lubricant factor", "1",
              "0.83 + 0.08*(" LIMITED " - 850e6)/350e6", ISO_10300_2 "8.2");
BEVEL_FORMULA(Z_L, "lubricant factor", "1", "C_ZL + 4*(1 - C_ZL)/(1.2 + 134e-6/nu_40)^2",
              ISO_10300_2 "8.2");
BEVEL_FORMULA(C_Zv, "constant of the speed factor", "1", "0.85 + 0.08*(" LIMITED " - 850e6)/350e6",
              ISO_10300_2 "8.2");
BEVEL_FORMULA(Z_v, "speed factor", "1", "C_Zv + 2*(1 - C_Zv)/sqrt(0.8 + 32/v_mt)",
              ISO_10300_2 "8.2");
BEVEL_FORMULA(R_z10, "mean roughness, related to a radius of 10 mm", "m",
              "(R_z1 + R_z2)/2*(0.01/rho_rel)^(1/3)", ISO_10300_2 "8.2");
BEVEL_FORMULA(C_ZR, "exponent of the roughness factor", "1", "0.12 + (1000e6 - " LIMITED ")/5000e6",
              ISO_10300_2 "8.2");
BEVEL_FORMULA(Z_R, "roughness factor", "1", "(3e-6/R_z10)^C_ZR", ISO_10300_2 "8.2");

double ts_bevel_soft_limit(double sigma_Hlim1, double sigma_Hlim2, ts_workings *workings)
{
    return TS_STEP(workings, sigma_Hlim_formula, fmin(sigma_Hlim1, sigma_Hlim2), sigma_Hlim1,
                   sigma_Hlim2);
}

static double limited(double sigma_Hlim)
{
    return fmin(1200e6, fmax(850e6, sigma_Hlim));
}

double ts_bevel_lubricant(double sigma_Hlim, double nu_40, ts_workings *workings)
{
    const double C_ZL = TS_STEP(workings, C_ZL_formula,
                                0.83 + 0.08 * (limited(sigma_Hlim) - 850e6) / 350e6, sigma_Hlim);
    const double thin = 1.2 + 134e-6 / nu_40;

    return TS_STEP(workings, Z_L_formula, C_ZL + 4.0 * (1.0 - C_ZL) / (thin * thin), C_ZL, nu_40);
}

double ts_bevel_speed_constant(double sigma_Hlim, ts_workings *workings)
{
    return TS_STEP(workings, C_Zv_formula, 0.85 + 0.08 * (limited(sigma_Hlim) - 850e6) / 350e6,
                   sigma_Hlim);
}

double ts_bevel_film_speed(double C_Zv, double v_mt, ts_workings *workings)
{
    if (!(v_mt > 0.0)) {
        ts_workings_row(workings, "Z_v", C_Zv, "1", "limit of the speed factor at standstill");
        return C_Zv;
    }
    return TS_STEP(workings, Z_v_formula, C_Zv + 2.0 * (1.0 - C_Zv) / sqrt(0.8 + 32.0 / v_mt), C_Zv,
                   v_mt);
}

double ts_bevel_smoothness(double sigma_Hlim, const double R_z[2], double rho_rel,
                           ts_workings *workings)
{
    const double R_z1 = R_z[0], R_z2 = R_z[1];
    const double R_z10 = TS_STEP(workings, R_z10_formula,
                                 (R_z1 + R_z2) / 2.0 * cbrt(0.01 / rho_rel), R_z1, R_z2, rho_rel);
    const double C_ZR =
        TS_STEP(workings, C_ZR_formula, 0.12 + (1000e6 - limited(sigma_Hlim)) / 5000e6, sigma_Hlim);

    return TS_STEP(workings, Z_R_formula, pow(3e-6 / R_z10, C_ZR), R_z10, C_ZR);
}

#define FLANK_TEXT(I, M) "sigma_Hlim" I "*Z_NT" I "*Z_X*Z_L*Z_v*Z_R*Z_W" I "*Z_Hyp"
BEVEL_FORMULAS(sigma_HP, "permissible contact stress", "Pa", FLANK_TEXT, ISO_10300_2 "6.2");

double ts_bevel_flank_permitted(const ts_bevel_flank_strength *s, int gear, ts_workings *workings)
{
    const double sigma_Hlim = s->sigma_Hlim, Z_NT = s->Z_NT, Z_X = s->Z_X, Z_L = s->Z_L;
    const double Z_v = s->Z_v, Z_R = s->Z_R, Z_W = s->Z_W, Z_Hyp = s->Z_Hyp;

    return TS_BEVEL_STEP(workings, sigma_HP_formulas,
                         sigma_Hlim * Z_NT * Z_X * Z_L * Z_v * Z_R * Z_W * Z_Hyp,
                         TS_BEVEL_SELF("sigma_Hlim", sigma_Hlim), TS_BEVEL_SELF("Z_NT", Z_NT),
                         TS_BEVEL_PAIR(Z_X), TS_BEVEL_PAIR(Z_L), TS_BEVEL_PAIR(Z_v),
                         TS_BEVEL_PAIR(Z_R), TS_BEVEL_SELF("Z_W", Z_W), TS_BEVEL_PAIR(Z_Hyp));
}

/* ---- the notch ------------------------------------------------------------------------------- */

typedef struct slip_row {
    double yield, rho; /* Pa, m */
} slip_row;

static const slip_row quenched[] = {
    {500e6, 0.0281e-3}, {600e6, 0.0194e-3}, {800e6, 0.0064e-3}, {1000e6, 0.0014e-3}};
static const slip_row normalised[] = {{300e6, 0.0833e-3}, {400e6, 0.0445e-3}};

/* Straight lines between the rows, level outside; NaN for a yield that is not above 0. */
static double slip_at(const slip_row *rows, size_t count, double yield)
{
    size_t upper = 1;

    if (!(yield > 0.0))
        return NAN;
    while (upper + 1 < count && yield > rows[upper].yield)
        upper++;
    const slip_row low = rows[upper - 1], high = rows[upper];
    const double   part = (yield - low.yield) / (high.yield - low.yield);
    return low.rho + fmin(1.0, fmax(0.0, part)) * (high.rho - low.rho);
}

static double slip_of(ts_gear_class class, double yield)
{
    switch (class) {
    case TS_GEAR_CASE_HARDENED:
    case TS_GEAR_INDUCTION_HARDENED:
        return 0.0030e-3;
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
    case TS_GEAR_NITROCARBURISED:
        return 0.1005e-3;
    case TS_GEAR_THROUGH_HARDENED:
        return slip_at(quenched, sizeof quenched / sizeof quenched[0], yield);
    case TS_GEAR_NORMALISED:
        return slip_at(normalised, sizeof normalised / sizeof normalised[0], yield);
    case TS_GEAR_CLASS_COUNT:
        break;
    }
    return NAN;
}

double ts_bevel_slip_layer(ts_gear_class class, double yield, int gear, ts_workings *workings)
{
    const double rho_p = slip_of(class, yield);

    if (!isnan(rho_p))
        ts_workings_row(workings, gear == 0 ? "rho_p1" : "rho_p2", rho_p, "m",
                        ISO_10300_3 "6.5, table of rho' (from memory)");
    return rho_p;
}

/* chi* of the gear is (1 + 2 q_s)/5 per mm, that of the test gear with q_sT = 2.5 is 1.2. */
#define NOTCH_TEXT(I, M)                                                                           \
    "(1 + sqrt(1e3*rho_p" I "*(1 + 2*q_s" I ")/5))/(1 + sqrt(1e3*rho_p" I "*1.2))"
BEVEL_FORMULAS(Y_deltarelT, "relative notch sensitivity factor", "1", NOTCH_TEXT,
               ISO_10300_3 "6.5");

double ts_bevel_notch(double rho_p, double q_s, int gear, ts_workings *workings)
{
    const double own = sqrt(1e3 * rho_p * (1.0 + 2.0 * q_s) / 5.0), test = sqrt(1e3 * rho_p * 1.2);

    return TS_BEVEL_STEP(workings, Y_deltarelT_formulas, (1.0 + own) / (1.0 + test),
                         TS_BEVEL_SELF("rho_p", rho_p), TS_BEVEL_SELF("q_s", q_s));
}

/* ---- surface and size ------------------------------------------------------------------------ */

#define HARD_TEXT(I, M)    "1.674 - 0.529*(1e6*min(40e-6, R_zF" I ") + 1)^0.1"
#define NITRIDE_TEXT(I, M) "4.299 - 3.259*(1e6*min(40e-6, R_zF" I ") + 1)^0.005"
#define SOFT_TEXT(I, M)    "5.306 - 4.203*(1e6*min(40e-6, R_zF" I ") + 1)^0.01"
#define SURFACE(name, text)                                                                        \
    static const ts_formula name##_formulas[2] = TS_BEVEL_BOTH(                                    \
        "Y_RrelT", "relative surface factor", "1", text, ISO_10300_3 "6.5" BEVEL_RECALLED)
SURFACE(hard, HARD_TEXT);
SURFACE(nitride, NITRIDE_TEXT);
SURFACE(soft, SOFT_TEXT);

typedef struct surface_rule {
    const ts_formula *formulas;
    double            smooth; /* below 1 um; the standard leaves a small step there */
    double            most, slope, exponent;
} surface_rule;

static const surface_rule on_hard    = {hard_formulas, 1.120, 1.674, 0.529, 0.1};
static const surface_rule on_nitride = {nitride_formulas, 1.025, 4.299, 3.259, 0.005};
static const surface_rule on_soft    = {soft_formulas, 1.070, 5.306, 4.203, 0.01};

static const surface_rule *surface_of(ts_gear_class class)
{
    switch (class) {
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
    case TS_GEAR_NITROCARBURISED:
        return &on_nitride;
    case TS_GEAR_NORMALISED:
        return &on_soft;
    case TS_GEAR_CASE_HARDENED:
    case TS_GEAR_INDUCTION_HARDENED:
    case TS_GEAR_THROUGH_HARDENED:
    case TS_GEAR_CLASS_COUNT:
        break;
    }
    return &on_hard;
}

double ts_bevel_root_surface(ts_gear_class class, double R_zF, int gear, ts_workings *workings)
{
    const surface_rule *rule = surface_of(class);

    if (R_zF < 1e-6) {
        ts_workings_row(workings, gear == 0 ? "Y_RrelT1" : "Y_RrelT2", rule->smooth, "1",
                        ISO_10300_3 "6.5, below 1 um" BEVEL_RECALLED);
        return rule->smooth;
    }
    const double rough = 1e6 * fmin(40e-6, R_zF) + 1.0;
    return TS_BEVEL_STEP(workings, rule->formulas,
                         rule->most - rule->slope * pow(rough, rule->exponent),
                         TS_BEVEL_SELF("R_zF", R_zF));
}

#define SIZE_SOFT_TEXT(I, M) "max(0.85, min(1, 1.03 - 6*m_mn))"
#define SIZE_HARD_TEXT(I, M) "max(0.8, min(1, 1.05 - 10*m_mn))"
#define SIZE(name, text)                                                                           \
    static const ts_formula name##_formulas[2] =                                                   \
        TS_BEVEL_BOTH("Y_X", "size factor (bending)", "1", text, ISO_10300_3 "6.5" BEVEL_RECALLED)
SIZE(size_soft, SIZE_SOFT_TEXT);
SIZE(size_hard, SIZE_HARD_TEXT);

double ts_bevel_root_size(ts_gear_class class, double m_mn, int gear, ts_workings *workings)
{
    if (ts_gear_class_surface_hardened(class))
        return TS_BEVEL_STEP(workings, size_hard_formulas, fmax(0.8, fmin(1.0, 1.05 - 10.0 * m_mn)),
                             TS_BEVEL_PAIR(m_mn));
    return TS_BEVEL_STEP(workings, size_soft_formulas, fmax(0.85, fmin(1.0, 1.03 - 6.0 * m_mn)),
                         TS_BEVEL_PAIR(m_mn));
}

/* Y_ST = 2 is that of the test gear. */
#define ROOT_TEXT(I, M) "sigma_Flim" I "*2*Y_NT" I "*Y_deltarelT" I "*Y_RrelT" I "*Y_X" I "*Y_M" I
BEVEL_FORMULAS(sigma_FP, "permissible tooth root stress", "Pa", ROOT_TEXT, ISO_10300_3 "6.2");

double ts_bevel_root_permitted(const ts_bevel_root_strength *s, int gear, ts_workings *workings)
{
    const double sigma_Flim = s->sigma_Flim, Y_NT = s->Y_NT, Y_deltarelT = s->Y_deltarelT;
    const double Y_RrelT = s->Y_RrelT, Y_X = s->Y_X, Y_M = s->Y_M;

    return TS_BEVEL_STEP(workings, sigma_FP_formulas,
                         sigma_Flim * TS_BEVEL_Y_ST * Y_NT * Y_deltarelT * Y_RrelT * Y_X * Y_M,
                         TS_BEVEL_SELF("sigma_Flim", sigma_Flim), TS_BEVEL_SELF("Y_NT", Y_NT),
                         TS_BEVEL_SELF("Y_deltarelT", Y_deltarelT),
                         TS_BEVEL_SELF("Y_RrelT", Y_RrelT), TS_BEVEL_SELF("Y_X", Y_X),
                         TS_BEVEL_SELF("Y_M", Y_M));
}
