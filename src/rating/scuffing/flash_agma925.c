/* rating/scuffing/flash_agma925.c: what does AGMA 925 say about the same flanks? */
#include "rating/scuffing/flash_agma925.h"

#include <math.h>

#define AGMA_925(what) "AGMA 925-A03, " what " (from memory)"

static const ts_formula C_R_formula = {
    .symbol  = "C_Ravg",
    .meaning = "surface roughness constant",
    .unit    = "1",
    .text    = "min(3, 1.13/max(1.13/3, 1.13 - 1e6*Ra))",
    .source  = AGMA_925("mean coefficient of friction"),
};
static const ts_formula mu_m_formula = {
    .symbol  = "mu_A",
    .meaning = "mean coefficient of friction by AGMA 925",
    .unit    = "1",
    .text    = "0.06*C_Ravg",
    .source  = AGMA_925("mean coefficient of friction"),
};
static const ts_formula theta_fl_formula = {
    .symbol  = "theta_flA",
    .meaning = "greatest flash temperature by AGMA 925",
    .unit    = TS_UNIT_DIFFERENCE,
    .text    = "0.8*mu_A*w_y*abs(v_g1 - v_g2)/((B_M1*sqrt(v_g1) + B_M2*sqrt(v_g2))*sqrt(b_H))",
    .source  = AGMA_925("flash temperature"),
};
static const ts_formula theta_M_formula = {
    .symbol  = "theta_MA",
    .meaning = "bulk temperature by AGMA 925",
    .unit    = "K",
    .text    = "273.15 + k_sump*(theta_oil - 273.15) + 0.56*theta_flA",
    .source  = AGMA_925("tooth temperature"),
};
static const ts_formula theta_B_formula = {
    .symbol  = "theta_BA",
    .meaning = "greatest contact temperature by AGMA 925",
    .unit    = "K",
    .text    = "theta_MA + theta_flA",
    .source  = AGMA_925("contact temperature"),
};
static const ts_formula y_formula = {
    .symbol  = "y_risk",
    .meaning = "how many standard deviations of 15 % the contact is above the scuffing temperature",
    .unit    = "1",
    .text    = "(theta_BA - theta_S)/(0.15*(theta_S - 273.15))",
    .source  = AGMA_925("risk of scuffing"),
};
static const ts_formula plain_limit_formula = {
    .symbol  = "theta_S",
    .meaning = "mean scuffing temperature, mineral oil without additive",
    .unit    = "K",
    .text    = "273.15 + 63 + 33*ln(1e6*nu_40)",
    .source  = AGMA_925("mean scuffing temperature"),
};
static const ts_formula antiscuff_limit_formula = {
    .symbol  = "theta_S",
    .meaning = "mean scuffing temperature, mineral oil with additive",
    .unit    = "K",
    .text    = "273.15 + 118 + 33*ln(1e6*nu_40)",
    .source  = AGMA_925("mean scuffing temperature"),
};

typedef struct oil_row {
    const char *name;
    double      celsius;
} oil_row;

/* AGMA 925-A03, table of mean scuffing temperatures for aerospace (from memory). */
static const oil_row oils[TS_AEROSPACE_COUNT] = {
    [TS_AEROSPACE_MIL_6081]  = {"MIL-PRF-6081, grade 1005", 129.0},
    [TS_AEROSPACE_MIL_7808]  = {"MIL-PRF-7808", 205.0},
    [TS_AEROSPACE_MIL_23699] = {"MIL-PRF-23699", 220.0},
    [TS_AEROSPACE_DERD_2487] = {"DERD 2487", 225.0},
    [TS_AEROSPACE_DERD_2497] = {"DERD 2497", 240.0},
    [TS_AEROSPACE_DOD_85734] = {"DOD-PRF-85734", 260.0},
    [TS_AEROSPACE_PAO_32]    = {"polyalphaolefin, ISO VG 32", 280.0},
    [TS_AEROSPACE_DEXRON_2]  = {"automatic transmission fluid type II", 290.0},
};

double ts_aerospace_limit(ts_aerospace_oil oil)
{
    return 273.15 + oils[oil].celsius;
}

const char *ts_aerospace_name(ts_aerospace_oil oil)
{
    return oils[oil].name;
}

double ts_mineral_limit(double nu_40, bool antiscuff, ts_workings *workings)
{
    if (antiscuff)
        return TS_STEP(workings, antiscuff_limit_formula, 273.15 + 118.0 + 33.0 * log(1e6 * nu_40),
                       nu_40);
    return TS_STEP(workings, plain_limit_formula, 273.15 + 63.0 + 33.0 * log(1e6 * nu_40), nu_40);
}

static double friction(const ts_scuffing_prepared *p, ts_workings *workings)
{
    const double Ra = (p->mesh.gear[0].Ra + p->mesh.gear[1].Ra) / 2.0;

    const double C_Ravg =
        TS_STEP(workings, C_R_formula, fmin(3.0, 1.13 / fmax(1.13 / 3.0, 1.13 - 1e6 * Ra)), Ra);
    return TS_STEP(workings, mu_m_formula, 0.06 * C_Ravg, C_Ravg);
}

/* The share is that of the rating, so that only what the methods say differently differs.  The
 * factor 0.8/sqrt(b_H) is 0.8 sqrt(2) over the root that `heat` has. */
static int hottest(const ts_scuffing_prepared *p, const ts_scuffing *rating, double rub,
                   double *theta)
{
    int hot = 0;

    *theta = 0.0;
    for (int i = 0; i < TS_FLANK_POINTS; i++) {
        const double root = sqrt(rating->flash.X_Gamma[i] * rating->w_n);
        const double here = rub * p->flash.heat[i] * root * sqrt(root);

        if (here > *theta) {
            *theta = here;
            hot    = i;
        }
    }
    return hot;
}

static double note_flash(const ts_scuffing_prepared *p, const ts_scuffing_load *load,
                         const ts_scuffing *rating, const ts_agma925 *out, ts_workings *workings)
{
    const double pi   = 3.14159265358979323846;
    const double mu_A = out->mu_m, B_M1 = p->flash.B_M1, B_M2 = p->flash.B_M2;
    const double w_y  = rating->flash.X_Gamma[out->hot] * rating->w_n;
    const double v_g1 = load->omega_1 * p->flash.path.rho_1[out->hot];
    const double v_g2 = load->omega_1 * p->flash.path.rho_2[out->hot] / p->flash.path.u;
    const double b_H  = sqrt(8.0 * w_y * p->flash.path.rho_n[out->hot] / (pi * p->flash.E_r));

    ts_workings_row(workings, "w_y", w_y, "N/m", "load at the hottest point by AGMA 925");
    ts_workings_row(workings, "v_g1", v_g1, "m/s", "surface speed of gear 1 there");
    ts_workings_row(workings, "v_g2", v_g2, "m/s", "surface speed of gear 2 there");
    ts_workings_row(workings, "b_H", b_H, "m", "half width of the band of contact there");
    return TS_STEP(workings, theta_fl_formula, out->theta_flmax, mu_A, w_y, v_g1, v_g2, B_M1, B_M2,
                   b_H);
}

void ts_agma925_rate(const ts_scuffing_prepared *prepared, const ts_scuffing_load *load,
                     const ts_scuffing *rating, double theta_S, double k_sump, ts_agma925 *out,
                     ts_workings *workings)
{
    const double theta_oil = load->theta_oil;

    if (rating->missing != NULL || !(theta_S > 273.15 && theta_S < 5000.0) || !(k_sump > 0.0)) {
        *out = (ts_agma925){NAN, NAN, NAN, NAN, NAN, NAN, 0};
        return;
    }
    out->theta_S = theta_S;
    out->mu_m    = friction(prepared, workings);
    if (!(rating->flash.theta_flmax > 0.0)) {
        *out = (ts_agma925){out->mu_m, 0.0, rating->theta_M, rating->theta_M, theta_S, 0.0, 0};
        return;
    }
    out->hot = hottest(prepared, rating, 0.8 * sqrt(2.0) * out->mu_m * sqrt(load->omega_1),
                       &out->theta_flmax);
    const double theta_flA = note_flash(prepared, load, rating, out, workings);
    const double theta_MA  = TS_STEP(workings, theta_M_formula,
                                     273.15 + k_sump * (theta_oil - 273.15) + 0.56 * theta_flA,
                                     k_sump, theta_oil, theta_flA);
    const double theta_BA =
        TS_STEP(workings, theta_B_formula, theta_MA + theta_flA, theta_MA, theta_flA);
    const double y_risk = TS_STEP(
        workings, y_formula, (theta_BA - theta_S) / (0.15 * (theta_S - 273.15)), theta_BA, theta_S);
    out->theta_M    = theta_MA;
    out->theta_Bmax = theta_BA;
    out->risk       = 0.5 * erfc(-y_risk / sqrt(2.0));
    ts_workings_row(workings, "risk", out->risk, "1",
                    "share of a normal distribution below y_risk: " AGMA_925("risk of scuffing"));
}
