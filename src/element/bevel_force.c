/* element/bevel_force.c: how does a bevel mesh push its gears along and across their axes? */
#include "element/bevel_force.h"

#include <math.h>

#define ISO_23509 "ISO 23509:2016 (formula from memory; derived from the flank normal)"

static const ts_formula F_a_concave_formula = {
    .symbol  = "F_a",
    .meaning = "axial force, away from the apex, concave flank loaded",
    .unit    = "N",
    .text    = "F_mt/cos(beta_m)*(tan(alpha_n)*sin(delta) + sin(beta_m)*cos(delta))",
    .source  = ISO_23509,
};
static const ts_formula F_r_concave_formula = {
    .symbol  = "F_r",
    .meaning = "radial force, towards the axis, concave flank loaded",
    .unit    = "N",
    .text    = "F_mt/cos(beta_m)*(tan(alpha_n)*cos(delta) - sin(beta_m)*sin(delta))",
    .source  = ISO_23509,
};
static const ts_formula F_a_convex_formula = {
    .symbol  = "F_a",
    .meaning = "axial force, away from the apex, convex flank loaded",
    .unit    = "N",
    .text    = "F_mt/cos(beta_m)*(tan(alpha_n)*sin(delta) - sin(beta_m)*cos(delta))",
    .source  = ISO_23509,
};
static const ts_formula F_r_convex_formula = {
    .symbol  = "F_r",
    .meaning = "radial force, towards the axis, convex flank loaded",
    .unit    = "N",
    .text    = "F_mt/cos(beta_m)*(tan(alpha_n)*cos(delta) + sin(beta_m)*sin(delta))",
    .source  = ISO_23509,
};

ts_bevel_force ts_bevel_forces(double F_mt, double alpha_n, double beta_m, double delta,
                               bool concave_flank_loaded, ts_workings *workings)
{
    const double along = F_mt / cos(beta_m), press = tan(alpha_n), slide = sin(beta_m);

    if (concave_flank_loaded)
        return (ts_bevel_force){
            .F_a = TS_STEP(workings, F_a_concave_formula,
                           along * (press * sin(delta) + slide * cos(delta)), F_mt, beta_m, alpha_n,
                           delta),
            .F_r = TS_STEP(workings, F_r_concave_formula,
                           along * (press * cos(delta) - slide * sin(delta)), F_mt, beta_m, alpha_n,
                           delta),
        };
    return (ts_bevel_force){
        .F_a =
            TS_STEP(workings, F_a_convex_formula, along * (press * sin(delta) - slide * cos(delta)),
                    F_mt, beta_m, alpha_n, delta),
        .F_r =
            TS_STEP(workings, F_r_convex_formula, along * (press * cos(delta) + slide * sin(delta)),
                    F_mt, beta_m, alpha_n, delta),
    };
}

bool ts_bevel_concave_loaded(int hand, int turns, bool drives)
{
    if (hand == 0)
        return false;
    const bool leads_into_concave = (hand > 0) == (turns > 0);
    return leads_into_concave == drives;
}
