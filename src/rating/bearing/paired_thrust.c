/* rating/bearing/paired_thrust.c: which axial load does a radial load call up in the bearing
 * opposite? */
#include "rating/bearing/paired_thrust.h"

#include "base/table_line.h"

#include <math.h>

#define RULE "bearing makers' catalogues, single angular contact bearings in pairs (read)"

static const double degree = 3.14159265358979323846 / 180.0;

/* Whichever bearing the shaft is pressed into carries the other's thrust and the outer force. */
static const ts_formula own_A_formula = {
    .symbol  = "F_aA",
    .meaning = "axial load of bearing A",
    .unit    = "N",
    .text    = "R_a*F_rA",
    .source  = RULE,
};
static const ts_formula pushed_B_formula = {
    .symbol  = "F_aB",
    .meaning = "axial load of bearing B",
    .unit    = "N",
    .text    = "F_aA + K_a",
    .source  = RULE,
};
static const ts_formula own_B_formula = {
    .symbol  = "F_aB",
    .meaning = "axial load of bearing B",
    .unit    = "N",
    .text    = "R_a*F_rB",
    .source  = RULE,
};
static const ts_formula pushed_A_formula = {
    .symbol  = "F_aA",
    .meaning = "axial load of bearing A",
    .unit    = "N",
    .text    = "F_aB - K_a",
    .source  = RULE,
};

double ts_thrust_ratio(double alpha, ts_workings *workings)
{
    static const double angles[] = {20, 25, 30, 40};
    static const double ratios[] = {0.50, 0.57, 0.66, 0.88};
    const double        at       = alpha / degree;

    if (!(at >= 20.0 - 1e-9 && at <= 40.0 + 1e-9))
        return NAN;
    const double R_a = ts_table_between(angles, ratios, 4, at);

    ts_workings_row(workings, "R_a", R_a, "1", RULE);
    return R_a;
}

ts_paired_thrust ts_paired_thrust_of(double R_a, double F_rA, double F_rB, double K_a,
                                     ts_workings *workings)
{
    if (!(R_a >= 0.0 && F_rA >= 0.0 && F_rB >= 0.0) || isnan(K_a))
        return (ts_paired_thrust){NAN, NAN};
    if (K_a >= R_a * (F_rB - F_rA)) {
        const double F_aA = TS_STEP(workings, own_A_formula, R_a * F_rA, R_a, F_rA);

        return (ts_paired_thrust){
            .F_aA = F_aA,
            .F_aB = TS_STEP(workings, pushed_B_formula, F_aA + K_a, F_aA, K_a),
        };
    }
    const double F_aB = TS_STEP(workings, own_B_formula, R_a * F_rB, R_a, F_rB);

    return (ts_paired_thrust){
        .F_aA = TS_STEP(workings, pushed_A_formula, F_aB - K_a, F_aB, K_a),
        .F_aB = F_aB,
    };
}
