/* rating/iso6336/dynamic_factor.c: what does the mesh add to the load at this speed? */
#include "rating/iso6336/dynamic_factor.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* ---- constants of the overlap ---------------------------------------------------------------- */

#define TABLE ISO_6336_1 "6.5.4, table of C_v" RECALLED
#define CONSTANT(name, share, expression)                                                          \
    static const ts_formula name##_formula = {                                                     \
        .symbol = #name, .meaning = (share), .unit = "1", .text = (expression), .source = TABLE}

CONSTANT(C_v2, "share of profile deviations", "0.57/(eps_gamma - 0.3)");
CONSTANT(C_v3, "share of changing stiffness", "0.096/(eps_gamma - 1.56)");
CONSTANT(C_v4, "share of changing stiffness at resonance",
         "(0.57 - 0.05*eps_gamma)/(eps_gamma - 1.44)");
CONSTANT(C_v6, "share of profile deviations above resonance", "0.12/(eps_gamma - 1.74)");
CONSTANT(C_v7, "constant part above resonance", "0.125*sin(pi*(eps_gamma - 2)) + 0.875");

static double row(ts_workings *workings, const char *symbol, double value)
{
    ts_workings_row(workings, symbol, value, "1", TABLE);
    return value;
}

static void short_overlap(ts_dynamic_constants *C, ts_workings *workings)
{
    C->C_v2 = row(workings, "C_v2", 0.34);
    C->C_v3 = row(workings, "C_v3", 0.23);
    C->C_v4 = row(workings, "C_v4", 0.90);
    C->C_v6 = row(workings, "C_v6", 0.47);
}

static void long_overlap(ts_dynamic_constants *C, double eps_gamma, ts_workings *workings)
{
    C->C_v2 = TS_STEP(workings, C_v2_formula, 0.57 / (eps_gamma - 0.3), eps_gamma);
    C->C_v3 = TS_STEP(workings, C_v3_formula, 0.096 / (eps_gamma - 1.56), eps_gamma);
    C->C_v4 =
        TS_STEP(workings, C_v4_formula, (0.57 - 0.05 * eps_gamma) / (eps_gamma - 1.44), eps_gamma);
    C->C_v6 = TS_STEP(workings, C_v6_formula, 0.12 / (eps_gamma - 1.74), eps_gamma);
}

ts_dynamic_constants ts_dynamic_constants_of(double eps_gamma, ts_workings *workings)
{
    ts_dynamic_constants C;

    if (!(eps_gamma > 1.0))
        return (ts_dynamic_constants){NAN, NAN, NAN, NAN, NAN, NAN, NAN};
    C.C_v1 = row(workings, "C_v1", 0.32);
    C.C_v5 = row(workings, "C_v5", 0.47);
    if (eps_gamma > 2.0)
        long_overlap(&C, eps_gamma, workings);
    else
        short_overlap(&C, workings);
    if (eps_gamma <= 1.5)
        C.C_v7 = row(workings, "C_v7", 0.75);
    else if (eps_gamma <= 2.5)
        C.C_v7 =
            TS_STEP(workings, C_v7_formula, 0.125 * sin(pi * (eps_gamma - 2.0)) + 0.875, eps_gamma);
    else
        C.C_v7 = row(workings, "C_v7", 1.0);
    return C;
}

/* ---- deviations ------------------------------------------------------------------------------ */

static const ts_formula B_p_formula = {
    .symbol  = "B_p",
    .meaning = "base pitch deviation over the deflection under load",
    .unit    = "1",
    .text    = "cp*f_pbeff/w_t",
    .source  = ISO_6336_1 "6.5.4" RECALLED,
};
static const ts_formula B_f_formula = {
    .symbol  = "B_f",
    .meaning = "profile deviation over the deflection under load",
    .unit    = "1",
    .text    = "cp*f_falphaeff/w_t",
    .source  = ISO_6336_1 "6.5.4" RECALLED,
};
static const ts_formula B_k_formula = {
    .symbol  = "B_k",
    .meaning = "what tip relief leaves of the deflection under load",
    .unit    = "1",
    .text    = "abs(1 - cp*C_a/w_t)",
    .source  = ISO_6336_1 "6.5.4" RECALLED,
};

ts_dynamic_parameters ts_dynamic_parameters_of(const ts_dynamic_parameters_input *in,
                                               ts_workings                       *workings)
{
    const double          cp = in->cp, w_t = in->w_t, C_a = in->C_a;
    const double          f_pbeff = in->f_pbeff, f_falphaeff = in->f_falphaeff;
    ts_dynamic_parameters B;

    B.B_p = TS_STEP(workings, B_p_formula, cp * f_pbeff / w_t, cp, f_pbeff, w_t);
    B.B_f = TS_STEP(workings, B_f_formula, cp * f_falphaeff / w_t, cp, f_falphaeff, w_t);
    if (isnan(C_a)) {
        B.B_k = 1.0;
        ts_workings_assumed(workings, "B_k", B.B_k, "1",
                            "tip relief counts for accuracy grades 0 to 5 only, " ISO_6336_1
                            "6.5.4" RECALLED);
    } else {
        B.B_k = TS_STEP(workings, B_k_formula, fabs(1.0 - cp * C_a / w_t), cp, C_a, w_t);
    }
    return B;
}

/* ---- ranges of speed ------------------------------------------------------------------------- */

static const ts_formula N_S_formula = {
    .symbol  = "N_S",
    .meaning = "resonance ratio at which main resonance begins",
    .unit    = "1",
    .text    = "0.5 + 0.35*sqrt(min(1, w_t/1e5))",
    .source  = ISO_6336_1 "6.5.2" RECALLED,
};
static const ts_formula N_formula = {
    .symbol  = "N",
    .meaning = "resonance ratio",
    .unit    = "1",
    .text    = "omega_1/n_E1",
    .source  = ISO_6336_1 "6.5.3" RECALLED,
};

double ts_resonance_start(double w_t, ts_workings *workings)
{
    return TS_STEP(workings, N_S_formula, 0.5 + 0.35 * sqrt(fmin(1.0, w_t / 1e5)), w_t);
}

double ts_resonance_ratio(double omega_1, double n_E1, ts_workings *workings)
{
    return TS_STEP(workings, N_formula, omega_1 / n_E1, omega_1, n_E1);
}

#define N_RESONANCE_END 1.15
#define N_SUPERCRITICAL 1.5

ts_speed_range ts_speed_range_of(double N, double N_S)
{
    if (N <= N_S)
        return TS_SPEED_SUBCRITICAL;
    if (N <= N_RESONANCE_END)
        return TS_SPEED_RESONANCE;
    return N < N_SUPERCRITICAL ? TS_SPEED_INTERMEDIATE : TS_SPEED_SUPERCRITICAL;
}

const char *ts_speed_range_says(ts_speed_range range)
{
    static const char *const says[] = {
        [TS_SPEED_SUBCRITICAL]   = "below resonance",
        [TS_SPEED_RESONANCE]     = "in resonance",
        [TS_SPEED_INTERMEDIATE]  = "between resonance and free running",
        [TS_SPEED_SUPERCRITICAL] = "above resonance",
    };

    return says[range];
}

#define K_V(name, what, expression, where)                                                         \
    static const ts_formula name##_formula = {.symbol  = "K_v",                                    \
                                              .meaning = "internal dynamic factor, " what,         \
                                              .unit    = "1",                                      \
                                              .text    = (expression),                             \
                                              .source  = ISO_6336_1 where RECALLED}

#define RESONANCE_TEXT     "C_v1*B_p + C_v2*B_f + C_v4*B_k + 1"
#define SUPERCRITICAL_TEXT "C_v5*B_p + C_v6*B_f + C_v7"
K_V(subcritical, "below resonance", "N*(C_v1*B_p + C_v2*B_f + C_v3*B_k) + 1", "6.5.4");
K_V(resonance, "in resonance", RESONANCE_TEXT, "6.5.5");
K_V(supercritical, "above resonance", SUPERCRITICAL_TEXT, "6.5.6");
K_V(intermediate, "between resonance and free running",
    SUPERCRITICAL_TEXT " + (" RESONANCE_TEXT " - (" SUPERCRITICAL_TEXT "))*(1.5 - N)/0.35",
    "6.5.7");

double ts_dynamic_subcritical(double N, const ts_dynamic_constants *C,
                              const ts_dynamic_parameters *B, ts_workings *workings)
{
    const double C_v1 = C->C_v1, C_v2 = C->C_v2, C_v3 = C->C_v3;
    const double B_p = B->B_p, B_f = B->B_f, B_k = B->B_k;

    return TS_STEP(workings, subcritical_formula, N * (C_v1 * B_p + C_v2 * B_f + C_v3 * B_k) + 1.0,
                   N, C_v1, C_v2, C_v3, B_p, B_f, B_k);
}

double ts_dynamic_resonance(const ts_dynamic_constants *C, const ts_dynamic_parameters *B,
                            ts_workings *workings)
{
    const double C_v1 = C->C_v1, C_v2 = C->C_v2, C_v4 = C->C_v4;
    const double B_p = B->B_p, B_f = B->B_f, B_k = B->B_k;

    return TS_STEP(workings, resonance_formula, C_v1 * B_p + C_v2 * B_f + C_v4 * B_k + 1.0, C_v1,
                   C_v2, C_v4, B_p, B_f, B_k);
}

double ts_dynamic_supercritical(const ts_dynamic_constants *C, const ts_dynamic_parameters *B,
                                ts_workings *workings)
{
    const double C_v5 = C->C_v5, C_v6 = C->C_v6, C_v7 = C->C_v7;
    const double B_p = B->B_p, B_f = B->B_f;

    return TS_STEP(workings, supercritical_formula, C_v5 * B_p + C_v6 * B_f + C_v7, C_v5, C_v6,
                   C_v7, B_p, B_f);
}

static double between(double N, const ts_dynamic_constants *C, const ts_dynamic_parameters *B,
                      ts_workings *workings)
{
    const double low  = ts_dynamic_resonance(C, B, NULL),
                 high = ts_dynamic_supercritical(C, B, NULL);
    const double C_v1 = C->C_v1, C_v2 = C->C_v2, C_v4 = C->C_v4, C_v5 = C->C_v5;
    const double C_v6 = C->C_v6, C_v7 = C->C_v7, B_p = B->B_p, B_f = B->B_f, B_k = B->B_k;

    return TS_STEP(workings, intermediate_formula, high + (low - high) * (1.5 - N) / 0.35, N, C_v1,
                   C_v2, C_v4, C_v5, C_v6, C_v7, B_p, B_f, B_k);
}

double ts_dynamic_factor(double N, double N_S, const ts_dynamic_constants *C,
                         const ts_dynamic_parameters *B, ts_workings *workings)
{
    switch (ts_speed_range_of(N, N_S)) {
    case TS_SPEED_SUBCRITICAL:
        return ts_dynamic_subcritical(N, C, B, workings);
    case TS_SPEED_RESONANCE:
        return ts_dynamic_resonance(C, B, workings);
    case TS_SPEED_INTERMEDIATE:
        return between(N, C, B, workings);
    case TS_SPEED_SUPERCRITICAL:
        /* A NaN compares with nothing and would end here: it must not become a factor. */
        return isnan(N) ? (double)NAN : ts_dynamic_supercritical(C, B, workings);
    }
    return NAN;
}
