/* element/tooth_curve.c: which curves does a rack cut on a tooth? */
#include "element/tooth_curve.h"

#include "element/involute.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* The rack's tooth beside the gear tooth: at the datum line its flank is a quarter pitch from the
 * middle of the gear tooth, and the tip round touches flank and tip line. */
ts_tooth_curve ts_tooth_curve_of(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear)
{
    const ts_basic_rack *rack    = &gear->in.rack;
    const double         m_n     = frame->m_n;
    const double         rho     = rack->rho_fPs * m_n;
    const double         depth   = rack->h_fPs * m_n - rho;
    const double         alpha_n = frame->alpha_n;

    return (ts_tooth_curve){
        .r         = gear->d / 2.0,
        .r_b       = gear->d_b / 2.0,
        .psi_b     = gear->s_t / gear->d + ts_inv(frame->alpha_t),
        .xi_c      = pi * m_n / 4.0 + depth * tan(alpha_n) + rho / cos(alpha_n),
        .y_c       = gear->d / 2.0 + gear->in.x * m_n - depth,
        .rho       = rho,
        .cos_beta  = cos(frame->beta),
        .theta_end = pi / 2.0 - alpha_n,
    };
}

static ts_outline_point polar(double radius, double angle)
{
    return (ts_outline_point){radius * sin(angle), radius * cos(angle)};
}

ts_outline_point ts_involute_point(const ts_tooth_curve *curve, double t)
{
    const double psi = curve->psi_b - (t - atan(t));

    return polar(curve->r_b * sqrt(1.0 + t * t), psi);
}

/* A point of the rack cuts when its normal passes through the pitch point (0, r).  The rack has
 * then moved by `travel`, and the gear has turned by travel/r. */
ts_outline_point ts_trochoid_point(const ts_tooth_curve *curve, double theta)
{
    const double x      = (curve->xi_c - curve->rho * sin(theta)) / curve->cos_beta;
    const double y      = curve->y_c - curve->rho * cos(theta);
    const double reach  = (y - curve->r) * tan(theta) * curve->cos_beta;
    const double travel = reach - x;

    return polar(hypot(reach, y), atan2(reach, y) - travel / curve->r);
}

/* Half tooth angle of the trochoid less that of the involute at the same radius. */
static double angle_past_involute(const ts_tooth_curve *curve, double theta)
{
    const ts_outline_point point  = ts_trochoid_point(curve, theta);
    const double           radius = hypot(point.x, point.y);
    const double           ratio  = fmin(curve->r_b / radius, 1.0);
    const double           alpha  = acos(ratio);

    return atan2(point.x, point.y) - (curve->psi_b - ts_inv(alpha));
}

static double radius_at(const ts_tooth_curve *curve, double theta)
{
    const ts_outline_point point = ts_trochoid_point(curve, theta);

    return hypot(point.x, point.y);
}

/* theta at which the trochoid reaches the base circle: its radius grows with theta. */
static double theta_on_base(const ts_tooth_curve *curve)
{
    double low = 0.0, high = curve->theta_end;

    if (radius_at(curve, low) >= curve->r_b)
        return low;
    for (int round = 0; round < 80; round++) {
        const double middle = 0.5 * (low + high);

        if (radius_at(curve, middle) < curve->r_b)
            low = middle;
        else
            high = middle;
    }
    return high;
}

/* Without undercut the flank of the rack ends on the involute (reach = -length of the path from the
 * pitch point); with undercut that point lies past the foot of the base tangent, and the trochoid
 * has crossed the involute before it got there. */
double ts_trochoid_end(const ts_tooth_curve *curve)
{
    const double foot  = curve->r * curve->r - curve->r_b * curve->r_b; /* squared */
    const double y     = curve->y_c - curve->rho * cos(curve->theta_end);
    const double reach = (y - curve->r) * tan(curve->theta_end) * curve->cos_beta;
    const double past  = hypot(reach, y - curve->r);

    if (reach >= 0.0 || past * past <= foot)
        return curve->theta_end;

    double low = theta_on_base(curve), high = curve->theta_end;
    if (angle_past_involute(curve, low) >= 0.0)
        return low; /* the trochoid starts inside the base circle and never cuts the involute */
    for (int round = 0; round < 80; round++) {
        const double middle = 0.5 * (low + high);

        if (angle_past_involute(curve, middle) < 0.0)
            low = middle;
        else
            high = middle;
    }
    return 0.5 * (low + high);
}
