/* element/tooth_outline.c: what does a tooth look like in the plane of rotation? */
#include "element/tooth_outline.h"

#include "element/involute.h"
#include "element/tooth_curve.h"

#include <math.h>

static const double pi = 3.14159265358979323846;
enum { HALVINGS = 16 }; /* of one curve at most, however small the chord error is */

/* A run without room only counts, so that the second run takes exactly what it needs. */
typedef struct trace {
    const ts_tooth_curve *curve;
    double                chord_error;
    ts_outline_point     *points;
    size_t                count;
    bool                  crosses_middle;
} trace;

typedef ts_outline_point (*curve_point)(const ts_tooth_curve *curve, double parameter);

static void add(trace *to, ts_outline_point point)
{
    if (to->points != NULL)
        to->points[to->count] = point;
    if (point.x < -1e-9) /* less is rounding in the middle of the tooth */
        to->crosses_middle = true;
    to->count++;
}

static double distance_from_chord(ts_outline_point point, ts_outline_point from,
                                  ts_outline_point to)
{
    const double dx = to.x - from.x, dy = to.y - from.y, length = hypot(dx, dy);

    if (length <= 0.0)
        return hypot(point.x - from.x, point.y - from.y);
    return fabs(dx * (point.y - from.y) - dy * (point.x - from.x)) / length;
}

/* Adds points after `from` up to and with `to`, halving until the chord is near enough. */
static void follow(trace *line, curve_point at, double from, double to, int depth)
{
    const ts_outline_point a = at(line->curve, from), b = at(line->curve, to);
    double                 worst = 0.0;

    for (int part = 1; part <= 3; part++) {
        const ts_outline_point between = at(line->curve, from + (to - from) * part / 4.0);

        worst = fmax(worst, distance_from_chord(between, a, b));
    }
    if (worst <= 0.9 * line->chord_error || depth == 0) {
        add(line, b);
        return;
    }
    const double middle = 0.5 * (from + to);
    follow(line, at, from, middle, depth - 1);
    follow(line, at, middle, to, depth - 1);
}

/* Adds points after angle `from` down to `to` (measured from +y) on a circle about the axis. */
static void follow_circle(trace *line, double radius, double from, double to)
{
    const double widest = 2.0 * acos(fmax(1.0 - line->chord_error / radius, 0.0));
    const int    pieces = (int)fmin(fmax(ceil((from - to) / widest), 1.0), 1 << HALVINGS);

    for (int piece = 1; piece <= pieces; piece++) {
        const double angle = piece < pieces ? from + (to - from) * piece / pieces : to;

        add(line, (ts_outline_point){radius * sin(angle), radius * cos(angle)});
    }
}

typedef struct limits {
    double theta_end;     /* end of the trochoid              */
    double t_form, t_tip; /* ends of the involute             */
    double psi_tip;       /* rad, half tooth angle at the tip */
} limits;

static void run(trace *line, const limits *ends, ts_tooth_shape *shape)
{
    const ts_tooth_curve  *curve  = line->curve;
    const ts_outline_point foot   = ts_trochoid_point(curve, 0.0);
    const double           middle = pi / shape->z, start = atan2(foot.x, foot.y);

    line->count = 0;
    if (middle - start > 1e-9) {
        add(line, (ts_outline_point){shape->r_root * sin(middle), shape->r_root * cos(middle)});
        follow_circle(line, shape->r_root, middle, start);
    } else {
        add(line, foot);
    }
    shape->fillet = line->count - 1;
    follow(line, ts_trochoid_point, 0.0, ends->theta_end, HALVINGS);
    shape->flank = line->count - 1;
    follow(line, ts_involute_point, ends->t_form, ends->t_tip, HALVINGS);
    shape->tip = line->count - 1;
    if (shape->pointed) {
        if (line->points != NULL)
            line->points[shape->tip] = (ts_outline_point){0.0, shape->r_tip};
    } else {
        follow_circle(line, shape->r_tip, ends->psi_tip, 0.0);
    }
    shape->count = line->count;
}

static ts_outline_fault find_limits(const ts_cylindrical_gear *gear, const ts_tooth_curve *curve,
                                    limits *ends, ts_tooth_shape *shape)
{
    const double           alpha_point = ts_inv_inverse(curve->psi_b);
    const double           r_point     = curve->r_b / cos(alpha_point);
    const ts_outline_point last        = ts_trochoid_point(curve, ts_trochoid_end(curve));

    if (isnan(alpha_point) || last.x <= 0.0)
        return TS_OUTLINE_CUT_THROUGH;
    shape->pointed  = r_point <= gear->d_a / 2.0;
    shape->r_tip    = shape->pointed ? r_point : gear->d_a / 2.0;
    shape->r_root   = gear->d_f / 2.0;
    shape->r_form   = hypot(last.x, last.y);
    shape->undercut = gear->rho_Ff < 0.0;
    if (!(shape->r_form < shape->r_tip))
        return TS_OUTLINE_NO_FLANK;

    ends->theta_end = ts_trochoid_end(curve);
    ends->t_form = sqrt(fmax(shape->r_form * shape->r_form / (curve->r_b * curve->r_b) - 1.0, 0.0));
    ends->t_tip  = sqrt(shape->r_tip * shape->r_tip / (curve->r_b * curve->r_b) - 1.0);
    ends->psi_tip = curve->psi_b - (ends->t_tip - atan(ends->t_tip));
    return TS_OUTLINE_FINE;
}

ts_outline_fault ts_tooth_outline(const ts_cylindrical_frame *frame,
                                  const ts_cylindrical_gear *gear, double chord_error,
                                  ts_arena *arena, ts_tooth_shape *shape)
{
    const ts_tooth_curve curve = ts_tooth_curve_of(frame, gear);
    trace                line  = {.curve = &curve, .chord_error = chord_error};
    limits               ends;

    *shape = (ts_tooth_shape){.z = gear->in.z};
    if (gear->in.z < 0)
        return TS_OUTLINE_INTERNAL;
    if (!(chord_error >= 1e-9 && chord_error <= frame->m_n / 2.0))
        return TS_OUTLINE_OUT_OF_RANGE;
    if (!(gear->d_f > 0.0))
        return TS_OUTLINE_CUT_THROUGH;

    const ts_outline_fault fault = find_limits(gear, &curve, &ends, shape);
    if (fault != TS_OUTLINE_FINE)
        return fault;
    run(&line, &ends, shape);
    if (line.crosses_middle)
        return TS_OUTLINE_CUT_THROUGH;
    line.points = TS_TAKE(arena, ts_outline_point, line.count);
    if (line.points == NULL)
        return TS_OUTLINE_NO_MEMORY;
    run(&line, &ends, shape);
    shape->points = line.points;
    return TS_OUTLINE_FINE;
}

const char *ts_outline_fault_says(ts_outline_fault fault)
{
    switch (fault) {
    case TS_OUTLINE_FINE:
        return "the outline is in order";
    case TS_OUTLINE_INTERNAL:
        return "an internal gear is not cut by a rack, so its outline is not known";
    case TS_OUTLINE_CUT_THROUGH:
        return "the tool cuts through the foot of the tooth";
    case TS_OUTLINE_NO_FLANK:
        return "the tip circle lies below the end of the involute";
    case TS_OUTLINE_OUT_OF_RANGE:
        return "the chord error is not between 1 nm and half a module";
    case TS_OUTLINE_NO_MEMORY:
        return "there is no memory for the outline";
    }
    return "";
}

/* Each tooth has its right half backwards from the middle and then its left half; the first point
 * of the half, in the middle of the space, belongs to two teeth and is listed once. */
size_t ts_gear_outline_size(const ts_tooth_shape *shape)
{
    return (size_t)shape->z * (2 * shape->count - 2);
}

ts_outline_point ts_gear_outline_at(const ts_tooth_shape *shape, size_t index, double phase,
                                    ts_outline_point axis)
{
    const size_t     a_tooth = 2 * shape->count - 2, half = shape->count - 1;
    const size_t     tooth = index / a_tooth, place = index % a_tooth;
    const bool       right = place <= half;
    ts_outline_point point = shape->points[right ? place : 2 * half - place];

    if (!right)
        point.x = -point.x;
    const double angle = phase + 2.0 * pi * (double)tooth / shape->z;
    return (ts_outline_point){
        .x = axis.x + point.x * cos(angle) - point.y * sin(angle),
        .y = axis.y + point.x * sin(angle) + point.y * cos(angle),
    };
}
