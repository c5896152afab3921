/* element/undercut_reach.c: does undercut take away flank that contact needs? */
#include "element/undercut_reach.h"

#include "element/tooth_curve.h"

#include <math.h>

#define CROSSING                                                                                   \
    "derived: where the trochoid of the rack's tip round crosses the involute, by search"
static const ts_formula room_formulas[2] = {
    {"clear_u1", "path of contact from the end of the undercut of gear 1 to the first contact", "m",
     "rho_A1 - rho_u1", "derived: contact needs the involute"},
    {"clear_u2", "path of contact from the last contact to the end of the undercut of gear 2", "m",
     "rho_T - rho_E1 - rho_u2", "derived: contact needs the involute"},
};

/* Base tangent, m, up to where the involute is left whole. */
static double crossing_of(const ts_cylindrical_pair *pair, int gear)
{
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  one;

    ts_cylindrical_pair_gear(pair, gear == 0 ? TS_GEAR_1 : TS_GEAR_2, &frame, &one);
    if (one.in.z < 0 || !(one.rho_Ff < 0.0))
        return NAN;
    const ts_tooth_curve   curve = ts_tooth_curve_of(&frame, &one);
    const ts_outline_point end   = ts_trochoid_point(&curve, ts_trochoid_end(&curve));
    const double           left  = end.x * end.x + end.y * end.y - curve.r_b * curve.r_b;

    return sqrt(fmax(0.0, left));
}

double ts_undercut_room(const ts_cylindrical_pair *pair, int gear, ts_workings *workings)
{
    const double rho_u  = crossing_of(pair, gear);
    const double rho_A1 = pair->rho_A1, rho_T = pair->rho_T, rho_E1 = pair->rho_E1;

    if (isnan(rho_u))
        return NAN;
    ts_workings_row(workings, gear == 0 ? "rho_u1" : "rho_u2", rho_u, "m", CROSSING);
    if (gear == 0) {
        const double rho_u1 = rho_u;
        return TS_STEP(workings, room_formulas[0], rho_A1 - rho_u1, rho_A1, rho_u1);
    }
    const double rho_u2 = rho_u;
    return TS_STEP(workings, room_formulas[1], rho_T - rho_E1 - rho_u2, rho_T, rho_E1, rho_u2);
}

double ts_undercut_tip_of_mate(const ts_cylindrical_pair *pair, int gear)
{
    const double d_b = gear == 0 ? pair->d_b2 : pair->d_b1;

    return copysign(2.0 * hypot(d_b / 2.0, pair->rho_T - crossing_of(pair, gear)), d_b);
}
