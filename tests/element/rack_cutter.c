/* element/rack_cutter.c: does the rolling rack touch a point of the gear, miss it or cut it away?
 */
#include "element/rack_cutter.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

rack_cutter rack_cutter_of(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear)
{
    return (rack_cutter){
        .r      = gear->d / 2.0,
        .datum  = gear->d / 2.0 + gear->in.x * frame->m_n,
        .module = frame->m_n,
        .alpha  = frame->alpha_n,
        .depth  = gear->in.rack.h_fPs * frame->m_n,
        .rho    = gear->in.rack.rho_fPs * frame->m_n,
    };
}

/* Distance to the tool's tooth, whose middle stands at `middle`.  The tooth is a trapezium that is
 * open upwards, shrunk by rho and then rounded by rho. */
static double distance(const rack_cutter *c, double x, double y, double middle)
{
    const double tip   = c->datum - c->depth + c->rho;
    const double width = pi * c->module / 4.0 - (c->depth - c->rho) * tan(c->alpha) -
                         c->rho / cos(c->alpha); /* half, at the centres of the rounds */
    const double side = fabs(x - middle) - width, up = y - tip;
    const double along  = side * sin(c->alpha) + up * cos(c->alpha);
    const double across = side * cos(c->alpha) - up * sin(c->alpha);

    if (side <= 0.0 && up <= 0.0)
        return -up - c->rho;
    if (along <= 0.0)
        return hypot(side, up) - c->rho;
    if (across >= 0.0)
        return across - c->rho;
    return fmax(across, -up) - c->rho; /* inside the trapezium: how deep does not matter */
}

/* The gear has turned clockwise by `roll`, and the rack has moved right by r*roll. */
static double distance_at(const rack_cutter *c, ts_outline_point p, double roll)
{
    const double x      = p.x * cos(roll) + p.y * sin(roll);
    const double y      = p.y * cos(roll) - p.x * sin(roll);
    const double middle = c->r * roll + pi * c->module / 2.0;

    return distance(c, x, y, middle);
}

/* Golden section around the best of many rolls. */
double rack_cutter_clearance(const rack_cutter *c, ts_outline_point point)
{
    const int    rolls = 2000;
    const double reach = 2.0, step = 2.0 * reach / rolls, golden = 0.6180339887498949;
    double       best = 0.0, least = (double)INFINITY;

    for (int i = 0; i <= rolls; i++) {
        const double roll = -reach + i * step, now = distance_at(c, point, roll);

        if (now < least) {
            least = now;
            best  = roll;
        }
    }
    double low = best - step, high = best + step;
    for (int i = 0; i < 60; i++) {
        const double a = high - golden * (high - low), b = low + golden * (high - low);

        if (distance_at(c, point, a) < distance_at(c, point, b))
            high = b;
        else
            low = a;
    }
    return distance_at(c, point, 0.5 * (low + high));
}
