/* draw/pair_pose.c: how do two gears stand when their loaded flanks touch?
 *
 * derived: both flanks are involutes of circles that roll off one line, the line of action, so the
 * flank of gear 1 passes through the point of that line where its radius of curvature is rho_1, and
 * that of gear 2 where its own is rho_T - rho_1.  Each tooth's middle then follows from half its
 * angle of thickness at that radius. */
#include "draw/pair_pose.h"

#include "element/involute.h"

#include <math.h>

static bool all_finite(const ts_cylindrical_pair *pair)
{
    const double needed[] = {pair->a_w,    pair->alpha_wt, pair->rho_T,  pair->rho_A1, pair->rho_B1,
                             pair->rho_C1, pair->rho_D1,   pair->rho_E1, pair->d_b1,   pair->d_b2,
                             pair->d_w1,   pair->d_w2,     pair->p_bt,   pair->s_t1,   pair->s_t2};
    for (size_t i = 0; i < sizeof needed / sizeof *needed; i++)
        if (!isfinite(needed[i]))
            return false;
    return pair->in.z_1 > 0 && pair->in.z_2 > 0 && pair->d_b1 > 0.0 && pair->d_b2 > 0.0;
}

ts_outline_point ts_pair_action_point(const ts_pair_pose *pose, double rho_1)
{
    const double along = rho_1 - pose->pair.rho_C1, alpha = pose->pair.alpha_wt;
    return (ts_outline_point){pose->lean * along * cos(alpha), along * sin(alpha)};
}

/* Half the tooth angle where the flank has the radius of curvature rho. */
static double half_angle(const ts_tooth_curve *curve, double rho)
{
    const double t = rho / curve->r_b;
    return curve->psi_b - (t - atan(t));
}

/* Direction of a point from an axis, ccw from +y. */
static double direction(ts_outline_point axis, ts_outline_point point)
{
    return atan2(axis.x - point.x, point.y - axis.y);
}

static void turn_teeth(ts_pair_pose *pose)
{
    const ts_outline_point touch  = ts_pair_action_point(pose, pose->rho_1);
    const double           rho[2] = {pose->rho_1, pose->pair.rho_T - pose->rho_1};
    for (int g = 0; g < 2; g++)
        pose->middle[g] =
            direction(pose->axis[g], touch) - pose->side[g] * half_angle(&pose->curve[g], rho[g]);
}

bool ts_pair_pose_of(const ts_cylindrical_pair *pair, ts_pair_drive drive, ts_pair_pose *pose)
{
    *pose = (ts_pair_pose){.pair = *pair};
    if (!all_finite(pair))
        return false;
    const int push = drive.backward ? -1 : 1; /* is it gear 1 that pushes? */
    for (int g = 0; g < 2; g++) {
        ts_cylindrical_pair_gear(pair, g == 0 ? TS_GEAR_1 : TS_GEAR_2, &pose->frame,
                                 &pose->gear[g]);
        pose->curve[g] = ts_tooth_curve_of(&pose->frame, &pose->gear[g]);
    }
    pose->axis[0] = (ts_outline_point){0.0, -0.5 * pair->d_w1};
    pose->axis[1] = (ts_outline_point){0.0, 0.5 * pair->d_w2};
    pose->turn[0] = drive.turn_1;
    pose->turn[1] = -drive.turn_1;
    /* A gear that pushes does so with the flank that runs ahead; one that is pushed is touched on
     * the flank that runs behind. */
    pose->side[0] = drive.turn_1 * push;
    pose->side[1] = pose->turn[1] * -push;
    /* The top of gear 1 moves left when it turns ccw; the driving flank pushes that way, and gear 2
     * away from gear 1. */
    pose->lean  = -pose->side[0];
    pose->rho_1 = pair->rho_D1 <= pair->rho_E1 ? pair->rho_D1 : pair->rho_C1;
    turn_teeth(pose);
    return true;
}

ts_outline_point ts_pair_flank_point(const ts_pair_pose *pose, int gear, int tooth, double rho)
{
    const ts_tooth_curve *curve = &pose->curve[gear];
    const double          r     = hypot(curve->r_b, rho);
    const double          angle = pose->middle[gear] +
                         2.0 * M_PI * tooth / (gear == 0 ? pose->pair.in.z_1 : pose->pair.in.z_2) +
                         pose->side[gear] * half_angle(curve, rho);
    return (ts_outline_point){pose->axis[gear].x - r * sin(angle),
                              pose->axis[gear].y + r * cos(angle)};
}

void ts_pair_active_flank(const ts_pair_pose *pose, int gear, double rho[2])
{
    const ts_cylindrical_pair *pair = &pose->pair;
    rho[0]                          = gear == 0 ? pair->rho_A1 : pair->rho_T - pair->rho_E1;
    rho[1]                          = gear == 0 ? pair->rho_E1 : pair->rho_T - pair->rho_A1;
    rho[0]                          = fmax(rho[0], 0.0); /* nothing touches past the base circle */
}

bool ts_pair_single_flank(const ts_pair_pose *pose, int gear, double rho[2])
{
    const ts_cylindrical_pair *pair = &pose->pair;
    if (!(pair->rho_D1 > pair->rho_B1))
        return false;
    double active[2];
    ts_pair_active_flank(pose, gear, active);
    rho[0] = fmax(active[0], gear == 0 ? pair->rho_B1 : pair->rho_T - pair->rho_D1);
    rho[1] = fmin(active[1], gear == 0 ? pair->rho_D1 : pair->rho_T - pair->rho_B1);
    return rho[1] > rho[0];
}
