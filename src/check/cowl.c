/* check/cowl.c: which point of the cowl's inside is nearest to an axis? */
#include "check/cowl.h"

#include <math.h>
#include <stdbool.h>

#define TURN 6.283185307179586
/* Newton halves its error many times over in each step; the line is nearly a circle. */
#define STEPS_MOST 40

typedef struct stretch {
    double begin, span; /* rad: clock of its first point, and the angle to its second, signed */
    double r, slope;    /* m, and m/rad                                                       */
} stretch;

/* The angle as a number from -pi to pi. */
static double short_way(double angle)
{
    return angle - TURN * floor(angle / TURN + 0.5);
}

static stretch stretch_at(const ts_engine *engine, size_t index)
{
    const ts_cowl_point *first = &engine->cowl[index], *second = first + 1;
    const double         span = short_way(second->clock.value - first->clock.value);
    return (stretch){
        .begin = first->clock.value,
        .span  = span,
        .r     = first->radius.value,
        .slope = fabs(span) > 0.0 ? (second->radius.value - first->radius.value) / span : 0.0,
    };
}

/* How far along the stretch a clock angle lies, and whether it lies on it at all. */
static bool lies_on(const stretch *part, double clock, double *along)
{
    *along = short_way(clock - part->begin);
    /* A stretch of nearly half a turn may end where the short way changes sides. */
    if (*along * part->span < 0.0 && fabs(*along) > 0.25 * TURN)
        *along += part->span > 0.0 ? TURN : -TURN;
    return part->span >= 0.0 ? *along >= 0.0 && *along <= part->span
                             : *along <= 0.0 && *along >= part->span;
}

static double distance_at(const stretch *part, double along, double D, double phi)
{
    const double r = part->r + part->slope * along, angle = part->begin + along - phi;
    return sqrt(D * D + r * r - 2.0 * D * r * cos(angle));
}

static double clamp(const stretch *part, double along)
{
    const double least = part->span < 0.0 ? part->span : 0.0;
    const double most  = part->span < 0.0 ? 0.0 : part->span;
    return along < least ? least : along > most ? most : along;
}

/* The least distance to one stretch: half the derivative of its square is brought to 0 by Newton's
 * method, damped so that the distance never grows. */
static double nearest_on(const stretch *part, double D, double phi, double *where)
{
    double along = clamp(part, short_way(phi - part->begin));
    double least = distance_at(part, along, D, phi);
    for (int step = 0; step < STEPS_MOST; step++) {
        const double r = part->r + part->slope * along, angle = part->begin + along - phi;
        const double c = cos(angle), s = sin(angle), k = part->slope;
        const double first  = r * k - D * k * c + D * r * s;
        const double second = k * k + 2.0 * D * k * s + D * r * c;
        double       move   = second > 0.0 ? -first / second : (first > 0.0 ? -0.1 : 0.1);
        double       next   = clamp(part, along + move);
        while (distance_at(part, next, D, phi) > least && fabs(move) > 1e-15) {
            move *= 0.5;
            next = clamp(part, along + move);
        }
        const double there = distance_at(part, next, D, phi);
        if (!(there < least))
            break;
        least = there;
        along = next;
    }
    *where = along;
    return least;
}

ts_cowl_place ts_cowl_nearest(const ts_engine *engine, double R, double phi)
{
    ts_cowl_place found = {0};
    double        least = INFINITY;
    for (size_t i = 0; i + 1 < engine->cowl_count; i++) {
        const stretch part = stretch_at(engine, i);
        const double  end  = part.r + part.slope * part.span;
        const double  low  = part.r < end ? part.r : end;
        double        along, there;
        if (lies_on(&part, phi, &along)) {
            found.reached = true;
            found.outside = R > part.r + part.slope * along;
        }
        /* No point of the stretch is nearer than the difference of the radii. */
        if (low - R >= least)
            continue;
        const double distance = nearest_on(&part, R, phi, &there);
        if (distance < least) {
            least        = distance;
            found.clock  = part.begin + there;
            found.radius = part.r + part.slope * there;
        }
    }
    return found;
}
