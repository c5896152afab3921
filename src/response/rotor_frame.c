/* response/rotor_frame.c: which nodes and matrices has a rotor? */
#include "response/rotor.h"

#include "element/shaft_beam.h"

#include <math.h>

#define SAME_PLACE 1e-7 /* m; nearer places are one node */

static const double pi = 3.14159265358979323846;

const char *ts_rotor_fault_says(ts_rotor_fault fault)
{
    static const char *const says[] = {
        [TS_ROTOR_FINE]        = "nothing is wrong",
        [TS_ROTOR_BAD_SECTION] = "sections must follow without a gap; d_o > d_i, E, G, rho > 0",
        [TS_ROTOR_BAD_NUMBER]  = "a stiffness, mass or inertia is no number, or below 0",
        [TS_ROTOR_OUTSIDE]     = "a disc, a bearing or a joint stands beyond the end of the shaft",
        [TS_ROTOR_TOO_MANY]    = "there are more places on the shaft than there is room for",
        [TS_ROTOR_LOOSE]       = "its bearings do not hold it: it could tilt or fall freely",
    };
    return says[fault];
}

/* ---- is it sound? -----------------------------------------------------------------------------
 */

static bool sections_are_fine(const ts_rotor *rotor)
{
    if (rotor->section_count < 1 || !(rotor->E > 0.0 && rotor->G > 0.0 && rotor->rho > 0.0) ||
        !isfinite(rotor->E + rotor->G + rotor->rho) || !(rotor->kappa >= 0.0))
        return false;
    for (int i = 0; i < rotor->section_count; i++) {
        const ts_rotor_section *s = &rotor->sections[i];

        if (!(s->x_2 > s->x_1 && s->d_i >= 0.0 && s->d_o > s->d_i && s->d_m >= s->d_i) ||
            !isfinite(s->x_1 + s->x_2 + s->d_o + s->d_m))
            return false;
        if (i > 0 && fabs(s->x_1 - rotor->sections[i - 1].x_2) > SAME_PLACE)
            return false;
    }
    return true;
}

static bool numbers_are_fine(const ts_rotor *rotor)
{
    for (int i = 0; i < rotor->disc_count; i++) {
        const ts_rotor_disc *d = &rotor->discs[i];
        if (!(d->m >= 0.0 && d->I_p >= 0.0 && d->I_d >= 0.0) || !isfinite(d->m + d->I_p + d->I_d))
            return false;
    }
    for (int i = 0; i < rotor->bearing_count; i++) {
        const ts_rotor_bearing *b = &rotor->bearings[i];
        if (!(b->k_r > 0.0 && b->k_t >= 0.0 && b->c_r >= 0.0 && b->loss >= 0.0) ||
            !isfinite(b->k_r + b->k_t + b->c_r + b->loss))
            return false;
    }
    for (int i = 0; i < rotor->joint_count; i++)
        if (!(rotor->joints[i].k_t >= 0.0) || !isfinite(rotor->joints[i].k_t))
            return false;
    return true;
}

/* ---- nodes ------------------------------------------------------------------------------------
 */

static bool add_node(ts_rotor_frame *frame, double x)
{
    int at = 0;

    while (at < frame->nodes && frame->x[at] < x - SAME_PLACE)
        at++;
    if (at < frame->nodes && fabs(frame->x[at] - x) <= SAME_PLACE)
        return true;
    if (frame->nodes == TS_ROTOR_NODES_MOST)
        return false;
    for (int i = frame->nodes; i > at; i--)
        frame->x[i] = frame->x[i - 1];
    frame->x[at] = x;
    frame->nodes++;
    return true;
}

int ts_rotor_node(const ts_rotor_frame *frame, double x)
{
    for (int i = 0; i < frame->nodes; i++)
        if (fabs(frame->x[i] - x) <= SAME_PLACE)
            return i;
    return -1;
}

static bool is_on(const ts_rotor *rotor, double x)
{
    return x >= rotor->sections[0].x_1 - SAME_PLACE &&
           x <= rotor->sections[rotor->section_count - 1].x_2 + SAME_PLACE;
}

static ts_rotor_fault add_places(const ts_rotor *rotor, ts_rotor_frame *frame)
{
    bool on = true, room = add_node(frame, rotor->sections[0].x_1);

    for (int i = 0; i < rotor->section_count; i++)
        room = room && add_node(frame, rotor->sections[i].x_2);
    for (int i = 0; i < rotor->disc_count; i++) {
        on   = on && is_on(rotor, rotor->discs[i].x);
        room = room && on && add_node(frame, rotor->discs[i].x);
    }
    for (int i = 0; i < rotor->bearing_count; i++) {
        on   = on && is_on(rotor, rotor->bearings[i].x);
        room = room && on && add_node(frame, rotor->bearings[i].x);
    }
    for (int i = 0; i < rotor->joint_count; i++) {
        const double x = rotor->joints[i].x;
        on             = on && is_on(rotor, x) && x > rotor->sections[0].x_1 + SAME_PLACE &&
             x < rotor->sections[rotor->section_count - 1].x_2 - SAME_PLACE;
        room = room && on && add_node(frame, x);
    }
    return !on ? TS_ROTOR_OUTSIDE : room ? TS_ROTOR_FINE : TS_ROTOR_TOO_MANY;
}

/* Long stretches are cut into equal pieces, as long as there is room. */
static ts_rotor_fault cut(const ts_rotor *rotor, ts_rotor_frame *frame)
{
    const double length  = frame->x[frame->nodes - 1] - frame->x[0];
    const double longest = rotor->longest > 0.0 ? rotor->longest : length / 40.0;
    double       place[TS_ROTOR_NODES_MOST];
    const int    places = frame->nodes;

    for (int i = 0; i < places; i++)
        place[i] = frame->x[i];
    for (int i = 0; i + 1 < places; i++) {
        const double L      = place[i + 1] - place[i];
        const double pieces = ceil(L / longest - 1e-9);
        if (pieces > TS_ROTOR_NODES_MOST)
            return TS_ROTOR_TOO_MANY;
        for (int k = 1; k < (int)pieces; k++)
            if (!add_node(frame, place[i] + L * k / pieces))
                return TS_ROTOR_TOO_MANY;
    }
    return TS_ROTOR_FINE;
}

static int joint_at(const ts_rotor *rotor, double x)
{
    for (int i = 0; i < rotor->joint_count; i++)
        if (fabs(rotor->joints[i].x - x) <= SAME_PLACE)
            return i;
    return -1;
}

static ts_rotor_fault number_nodes(const ts_rotor *rotor, ts_rotor_frame *frame)
{
    int joints = 0;

    frame->dofs = 0;
    for (int i = 0; i < frame->nodes; i++) {
        const bool hinged = joint_at(rotor, frame->x[i]) >= 0;
        joints += hinged;
        if (joints > TS_ROTOR_JOINTS_MOST)
            return TS_ROTOR_TOO_MANY;
        frame->v[i] = frame->dofs;
        frame->dofs += hinged ? 3 : 2;
    }
    return TS_ROTOR_FINE;
}

/* ---- matrices ---------------------------------------------------------------------------------
 */

typedef double band[TS_ROTOR_BAND];

static void add(band *A, int i, int j, double value)
{
    if (i >= j)
        A[i][i - j] += value;
    else
        A[j][j - i] += value;
}

/* The ten entries of a symmetric 4 x 4 matrix, row by row of its upper half. */
static void add_element(band *A, const int dof[4], const double entry[10], double factor)
{
    int next = 0;

    for (int i = 0; i < 4; i++)
        for (int j = i; j < 4; j++)
            add(A, dof[i], dof[j], factor * entry[next++]);
}

typedef struct piece {
    double L, EI, GA;    /* GA INFINITY: no shear   */
    double mass, rotary; /* kg/m, kg.m: rho A, rho I */
} piece;

static void add_piece(ts_rotor_frame *frame, const int dof[4], const piece *p)
{
    const double L = p->L, l = L * L, f = 12.0 * p->EI / (p->GA * l), g = 1.0 + f;
    const double a = 156.0 + f * (294.0 + f * 140.0), b = (22.0 + f * (38.5 + f * 17.5)) * L;
    const double c = 54.0 + f * (126.0 + f * 70.0), d = (13.0 + f * (31.5 + f * 17.5)) * L;
    const double e = (4.0 + f * (7.0 + f * 3.5)) * l, h = (3.0 + f * (7.0 + f * 3.5)) * l;
    const double r = (3.0 - 15.0 * f) * L, s = (4.0 + f * (5.0 + 10.0 * f)) * l;
    const double t          = (-1.0 + f * (-5.0 + 5.0 * f)) * l;
    const double stiff[10]  = {12.0,     6.0 * L,       -12.0, 6.0 * L,  (4.0 + f) * l,
                               -6.0 * L, (2.0 - f) * l, 12.0,  -6.0 * L, (4.0 + f) * l};
    const double heavy[10]  = {a, b, c, -d, e, d, -h, a, -b, e};
    const double turned[10] = {36.0, r, -36.0, r, s, -r, t, 36.0, -r, s};

    add_element(frame->K, dof, stiff, p->EI / (g * L * l));
    add_element(frame->M, dof, heavy, p->mass * L / (420.0 * g * g));
    add_element(frame->M, dof, turned, p->rotary / (30.0 * L * g * g));
    add_element(frame->G, dof, turned, 2.0 * p->rotary / (30.0 * L * g * g));
}

static double area(double d_o, double d_i)
{
    return pi / 4.0 * (d_o * d_o - d_i * d_i);
}

static double second_moment(double d_o, double d_i)
{
    return pi / 64.0 * (d_o * d_o * d_o * d_o - d_i * d_i * d_i * d_i);
}

static piece piece_of(const ts_rotor *rotor, const ts_rotor_section *s, double L)
{
    const double nu = rotor->E / (2.0 * rotor->G) - 1.0;
    const double kappa =
        rotor->kappa > 0.0 ? rotor->kappa : ts_shear_coefficient(s->d_o, s->d_i, nu);

    return (piece){
        .L      = L,
        .EI     = rotor->E * second_moment(s->d_o, s->d_i),
        .GA     = rotor->shearless ? (double)INFINITY : rotor->G * area(s->d_o, s->d_i) * kappa,
        .mass   = rotor->rho * area(s->d_m, s->d_i),
        .rotary = rotor->slopeless ? 0.0 : rotor->rho * second_moment(s->d_m, s->d_i),
    };
}

static void fill(const ts_rotor *rotor, ts_rotor_frame *frame)
{
    int section = 0;

    for (int i = 0; i + 1 < frame->nodes; i++) {
        const double middle = (frame->x[i] + frame->x[i + 1]) / 2.0;
        const int    right  = joint_at(rotor, frame->x[i]) >= 0 ? 2 : 1;
        const int dof[4] = {frame->v[i], frame->v[i] + right, frame->v[i + 1], frame->v[i + 1] + 1};

        while (section + 1 < rotor->section_count && middle > rotor->sections[section].x_2)
            section++;
        const piece p = piece_of(rotor, &rotor->sections[section], frame->x[i + 1] - frame->x[i]);
        add_piece(frame, dof, &p);
        frame->mass += p.mass * p.L;
    }
    for (int i = 0; i < rotor->disc_count; i++) {
        const int at = frame->v[ts_rotor_node(frame, rotor->discs[i].x)];
        add(frame->M, at, at, rotor->discs[i].m);
        add(frame->M, at + 1, at + 1, rotor->discs[i].I_d);
        add(frame->G, at + 1, at + 1, rotor->discs[i].I_p);
        frame->mass += rotor->discs[i].m;
    }
    for (int i = 0; i < rotor->bearing_count; i++) {
        const int at = frame->v[ts_rotor_node(frame, rotor->bearings[i].x)];
        add(frame->K, at, at, rotor->bearings[i].k_r);
        add(frame->K, at + 1, at + 1, rotor->bearings[i].k_t);
    }
    for (int i = 0; i < rotor->joint_count; i++) {
        const int at = frame->v[ts_rotor_node(frame, rotor->joints[i].x)];
        add(frame->K, at + 1, at + 1, rotor->joints[i].k_t);
        add(frame->K, at + 2, at + 2, rotor->joints[i].k_t);
        add(frame->K, at + 2, at + 1, -rotor->joints[i].k_t);
    }
}

/* Is K positive?  Its pivots tell; one that cancels to a hair of the diagonal is none. */
static bool is_held(const ts_rotor_frame *frame)
{
    double L[TS_ROTOR_DOF_MOST][TS_ROTOR_BAND], D[TS_ROTOR_DOF_MOST];

    for (int i = 0; i < frame->dofs; i++) {
        const int first = i - (TS_ROTOR_BAND - 1) > 0 ? i - (TS_ROTOR_BAND - 1) : 0;
        for (int j = first; j <= i; j++) {
            double sum = frame->K[i][i - j];
            for (int k = first; k < j; k++)
                if (j - k < TS_ROTOR_BAND)
                    sum -= L[i][i - k] * D[k] * L[j][j - k];
            if (j < i)
                L[i][i - j] = sum / D[j];
            else
                D[i] = sum;
        }
        if (!(D[i] > 1e-11 * frame->K[i][0]))
            return false;
    }
    return true;
}

ts_rotor_fault ts_rotor_prepare(const ts_rotor *rotor, ts_rotor_frame *frame)
{
    if (!sections_are_fine(rotor))
        return TS_ROTOR_BAD_SECTION;
    if (!numbers_are_fine(rotor))
        return TS_ROTOR_BAD_NUMBER;
    *frame               = (ts_rotor_frame){0};
    ts_rotor_fault fault = add_places(rotor, frame);
    if (fault == TS_ROTOR_FINE)
        fault = cut(rotor, frame);
    if (fault == TS_ROTOR_FINE)
        fault = number_nodes(rotor, frame);
    if (fault != TS_ROTOR_FINE)
        return fault;
    fill(rotor, frame);
    return is_held(frame) ? TS_ROTOR_FINE : TS_ROTOR_LOOSE;
}
