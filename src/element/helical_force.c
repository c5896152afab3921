/* element/helical_force.c: how does a spur or helical mesh push its gears apart and along? */
#include "element/helical_force.h"

#include <math.h>

#define ISO_21771 "ISO 21771:2007 (formula from memory)"
#define STATICS                                                                                    \
    "derived: the normal force on the flank split along the axis, the radius and the tangent"

static const ts_formula F_r_formula = {
    .symbol  = "F_r",
    .meaning = "radial force",
    .unit    = "N",
    .text    = "F_t*tan(alpha_wn)/cos(beta_w)",
    .source  = STATICS,
};
static const ts_formula F_a_formula = {
    .symbol  = "F_a",
    .meaning = "axial force",
    .unit    = "N",
    .text    = "F_t*tan(beta_w)",
    .source  = STATICS,
};
static const ts_formula F_n_formula = {
    .symbol  = "F_n",
    .meaning = "normal force on the flank",
    .unit    = "N",
    .text    = "F_t/(cos(alpha_wn)*cos(beta_w))",
    .source  = STATICS,
};
static const ts_formula beta_w_formula = {
    .symbol  = "beta_w",
    .meaning = "helix angle at the working pitch circle",
    .unit    = "rad",
    .text    = "atan(tan(beta_b)/cos(alpha_wt))",
    .source  = ISO_21771,
};
static const ts_formula alpha_wn_formula = {
    .symbol  = "alpha_wn",
    .meaning = "normal pressure angle at the working pitch circle",
    .unit    = "rad",
    .text    = "asin(sin(alpha_wt)*cos(beta_b))",
    .source  = ISO_21771,
};

ts_helical_force ts_helical_forces(double F_t, double alpha_wn, double beta_w,
                                   ts_workings *workings)
{
    return (ts_helical_force){
        .F_r = TS_STEP(workings, F_r_formula, F_t * tan(alpha_wn) / cos(beta_w), F_t, alpha_wn,
                       beta_w),
        .F_a = TS_STEP(workings, F_a_formula, F_t * tan(beta_w), F_t, beta_w),
        .F_n = TS_STEP(workings, F_n_formula, F_t / (cos(alpha_wn) * cos(beta_w)), F_t, alpha_wn,
                       beta_w),
    };
}

double ts_working_helix_angle(double beta_b, double alpha_wt, ts_workings *workings)
{
    return TS_STEP(workings, beta_w_formula, atan(tan(beta_b) / cos(alpha_wt)), beta_b, alpha_wt);
}

double ts_working_normal_angle(double beta_b, double alpha_wt, ts_workings *workings)
{
    return TS_STEP(workings, alpha_wn_formula, asin(sin(alpha_wt) * cos(beta_b)), alpha_wt, beta_b);
}

int ts_helical_thrust_sense(int hand, int turns, bool drives)
{
    const int driver_sense = (hand > 0) - (hand < 0);

    return driver_sense * (turns > 0 ? 1 : -1) * (drives ? 1 : -1);
}
