/* element/bevel_shift.c: what happens to two bevels when one of them moves off its place? */
#include "element/bevel_shift.h"

#include <math.h>

ts_bevel_seat ts_bevel_seat_of(const ts_bevel_virtual *v)
{
    return (ts_bevel_seat){.r_a1  = v->d_va[0] / 2.0,
                           .r_a2  = v->d_va[1] / 2.0,
                           .r_b1  = v->d_vb[0] / 2.0,
                           .r_b2  = v->d_vb[1] / 2.0,
                           .a_v   = v->a_v,
                           .p_vet = v->p_vet};
}

double ts_bevel_closing(double s, double r, double delta_1)
{
    return s * sin(delta_1) + r * cos(delta_1);
}

double ts_bevel_along(double s, double r, double delta_1)
{
    return s * cos(delta_1) + r * sin(delta_1);
}

double ts_bevel_play_taken(double c, double alpha_n)
{
    return 2.0 * c * sin(alpha_n);
}

double ts_bevel_closing_of_play(double j, double alpha_n)
{
    return j / (2.0 * sin(alpha_n));
}

/* Both tangents from the base circles to the tips: path of contact and that between the bases. */
static double reach(const ts_bevel_seat *s)
{
    return sqrt(s->r_a1 * s->r_a1 - s->r_b1 * s->r_b1) +
           sqrt(s->r_a2 * s->r_a2 - s->r_b2 * s->r_b2);
}

double ts_bevel_moved_ratio(const ts_bevel_seat *seat, double c)
{
    const double a = seat->a_v - c, r_b = seat->r_b1 + seat->r_b2;

    if (a >= seat->r_a1 + seat->r_a2)
        return 0.0;
    return fmax(0.0, (reach(seat) - sqrt(a * a - r_b * r_b)) / seat->p_vet);
}

double ts_bevel_closing_of_one_pair(const ts_bevel_seat *seat)
{
    return seat->a_v - hypot(seat->r_b1 + seat->r_b2, reach(seat) - seat->p_vet);
}

double ts_bevel_closing_apart(const ts_bevel_seat *seat)
{
    const double tips  = seat->r_a1 + seat->r_a2;
    const double lines = hypot(seat->r_b1 + seat->r_b2, reach(seat));

    return seat->a_v - fmin(tips, lines);
}
