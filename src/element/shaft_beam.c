/* element/shaft_beam.c: how does a stepped shaft bend, twist and lie on its bearings? */
#include "element/shaft_beam.h"

#include <math.h>
#include <stddef.h>

/* The bent line in one plane. */
typedef struct line {
    double v, theta, M, Q;
} line;

/* Along a stretch of equal section nothing but Q and M goes on, in closed form.  d(v)/dx = theta -
 * Q/GA: shear lets the line lag behind the turning sections. */
static line carried(line at, double L, double EI, double GA)
{
    return (line){
        .v     = at.v + at.theta * L + (at.M / 2.0 + at.Q * L / 6.0) * L * L / EI - at.Q * L / GA,
        .theta = at.theta + (at.M + at.Q * L / 2.0) * L / EI,
        .M     = at.M + at.Q * L,
        .Q     = at.Q,
    };
}

/* A cause: what the line starts with, or a force or couple at a station. */
typedef struct cause {
    int    station; /* -1: the start of the line */
    double v, theta, force, couple;
} cause;

static line begun(const cause *c)
{
    return c->station < 0 ? (line){c->v, c->theta, 0.0, 0.0} : (line){0.0, 0.0, 0.0, 0.0};
}

/* A force lifts Q, a couple lowers M (balance of a short piece of shaft). */
static line struck(line at, const cause *c, int station)
{
    if (c->station == station) {
        at.Q += c->force;
        at.M -= c->couple;
    }
    return at;
}

/* ---- small dense equations ------------------------------------------------------------------- */

#define UNKNOWNS_MOST (2 + 2 * TS_BEAM_SUPPORTS_MOST)

typedef struct equations {
    int    n;
    double a[UNKNOWNS_MOST][UNKNOWNS_MOST];
    double b[UNKNOWNS_MOST][2]; /* both planes */
} equations;

static void swap_rows(equations *e, int i, int k)
{
    for (int j = 0; j < e->n; j++) {
        const double kept = e->a[i][j];

        e->a[i][j] = e->a[k][j];
        e->a[k][j] = kept;
    }
    for (int j = 0; j < 2; j++) {
        const double kept = e->b[i][j];

        e->b[i][j] = e->b[k][j];
        e->b[k][j] = kept;
    }
}

/* Each row by its largest entry, so that rows of unlike units compare in the choice of pivots. */
static bool balance_rows(equations *e)
{
    for (int i = 0; i < e->n; i++) {
        double most = 0.0;

        for (int j = 0; j < e->n; j++)
            most = fmax(most, fabs(e->a[i][j]));
        if (!(most > 0.0))
            return false;
        for (int j = 0; j < e->n; j++)
            e->a[i][j] /= most;
        e->b[i][0] /= most;
        e->b[i][1] /= most;
    }
    return true;
}

static void take_off(equations *e, int row, int pivot)
{
    const double share = e->a[row][pivot] / e->a[pivot][pivot];

    for (int j = pivot; j < e->n; j++)
        e->a[row][j] -= share * e->a[pivot][j];
    e->b[row][0] -= share * e->b[pivot][0];
    e->b[row][1] -= share * e->b[pivot][1];
}

/* Leaves the solution in b.  False when the equations do not decide it. */
static bool solved(equations *e)
{
    if (!balance_rows(e))
        return false;
    for (int i = 0; i < e->n; i++) {
        int best = i;

        for (int k = i + 1; k < e->n; k++)
            if (fabs(e->a[k][i]) > fabs(e->a[best][i]))
                best = k;
        if (!(fabs(e->a[best][i]) > 0.0))
            return false;
        swap_rows(e, i, best);
        for (int k = i + 1; k < e->n; k++)
            take_off(e, k, i);
    }
    for (int i = e->n - 1; i >= 0; i--)
        for (int plane = 0; plane < 2; plane++) {
            double rest = e->b[i][plane];

            for (int j = i + 1; j < e->n; j++)
                rest -= e->a[i][j] * e->b[j][plane];
            e->b[i][plane] = rest / e->a[i][i];
        }
    return true;
}

/* ---- the unknowns: start of the line, reactions, couples of supports that hold
 * -------------------
 */

typedef struct unknowns {
    int    count;
    cause  causes[UNKNOWNS_MOST];
    double scale_v, scale_F; /* lengths of the line and forces of like size */
} unknowns;

static unknowns unknowns_of(const ts_beam *beam, const ts_beam_frame *frame)
{
    const double L    = frame->x[frame->count - 1] - frame->x[0];
    double       most = 0.0;
    unknowns     u;

    for (int i = 0; i + 1 < frame->count; i++)
        most = fmax(most, frame->EI[i]);
    u.scale_F   = most / (L * L); /* bends the shaft by about its length */
    u.scale_v   = L;
    u.count     = 2;
    u.causes[0] = (cause){.station = -1, .v = L};
    u.causes[1] = (cause){.station = -1, .theta = 1.0};
    for (int i = 0; i < beam->support_count; i++) {
        u.causes[u.count++] = (cause){.station = frame->support_at[i], .force = u.scale_F};
        if (beam->supports[i].k_t > 0.0)
            u.causes[u.count++] = (cause){.station = frame->support_at[i], .couple = u.scale_F * L};
    }
    return u;
}

/* Writes what a cause does at every support, and at the free right end, into one column. */
static void follow(const ts_beam *beam, const ts_beam_frame *frame, const cause *c,
                   double column[UNKNOWNS_MOST])
{
    line at  = begun(c);
    int  row = 0;

    for (int i = 0; i < frame->count; i++) {
        for (int s = 0; s < beam->support_count; s++) {
            if (frame->support_at[s] != i)
                continue;
            row = 0;
            for (int k = 0; k < s; k++)
                row += beam->supports[k].k_t > 0.0 ? 2 : 1;
            column[row] = at.v;
            if (beam->supports[s].k_t > 0.0)
                column[row + 1] = at.theta;
        }
        at = struck(at, c, i);
        if (i + 1 < frame->count)
            at = carried(at, frame->x[i + 1] - frame->x[i], frame->EI[i], frame->GA[i]);
    }
    row = 0;
    for (int k = 0; k < beam->support_count; k++)
        row += beam->supports[k].k_t > 0.0 ? 2 : 1;
    column[row]     = at.M;
    column[row + 1] = at.Q;
}

/* An elastic support gives way by its own load: v + F/k_r = 0, theta + M/k_t = 0. */
static void give_way(const ts_beam *beam, const unknowns *u, equations *e)
{
    int at = 0;

    for (int s = 0; s < beam->support_count; s++) {
        e->a[at][at + 2] += u->causes[at + 2].force / beam->supports[s].k_r;
        at++;
        if (beam->supports[s].k_t > 0.0) {
            e->a[at][at + 2] += u->causes[at + 2].couple / beam->supports[s].k_t;
            at++;
        }
    }
}

typedef struct load_case {
    const ts_beam       *beam;
    const ts_beam_frame *frame;
    const ts_beam_load  *loads;
    int                  count;
    int                  at[TS_BEAM_LOADS_MOST]; /* station of each load */
} load_case;

static cause cause_of(const load_case *c, int load, int plane)
{
    const ts_beam_load *l = &c->loads[load];

    /* M_y turns z towards x: against the slope d(v_z)/dx. */
    return (cause){
        .station = c->at[load],
        .force   = plane == 0 ? l->F_y : l->F_z,
        .couple  = plane == 0 ? l->M_z : -l->M_y,
    };
}

static bool set_up(const load_case *c, const unknowns *u, equations *e)
{
    double column[UNKNOWNS_MOST] = {0.0};

    *e = (equations){.n = u->count};
    for (int j = 0; j < u->count; j++) {
        follow(c->beam, c->frame, &u->causes[j], column);
        for (int i = 0; i < e->n; i++)
            e->a[i][j] = column[i];
    }
    give_way(c->beam, u, e);
    for (int load = 0; load < c->count; load++)
        for (int plane = 0; plane < 2; plane++) {
            const cause outer = cause_of(c, load, plane);

            follow(c->beam, c->frame, &outer, column);
            for (int i = 0; i < e->n; i++)
                e->b[i][plane] -= column[i];
        }
    return solved(e);
}

/* ---- the line itself ------------------------------------------------------------------------- */

static line line_of(const ts_beam_state *s, int plane)
{
    return plane == 0 ? (line){s->v_y, s->theta_y, s->M_y, s->Q_y}
                      : (line){s->v_z, s->theta_z, s->M_z, s->Q_z};
}

static void put_line(ts_beam_state *s, int plane, line at)
{
    if (plane == 0) {
        s->v_y     = at.v;
        s->theta_y = at.theta;
        s->M_y     = at.M;
        s->Q_y     = at.Q;
    } else {
        s->v_z     = at.v;
        s->theta_z = at.theta;
        s->M_z     = at.M;
        s->Q_z     = at.Q;
    }
}

static void strike_all(const load_case *c, const unknowns *u, const equations *e, int i,
                       ts_beam_state *s)
{
    for (int plane = 0; plane < 2; plane++) {
        line at = line_of(s, plane);

        for (int j = 2; j < u->count; j++) {
            cause reaction = u->causes[j];

            reaction.force *= e->b[j][plane];
            reaction.couple *= e->b[j][plane];
            at = struck(at, &reaction, i);
        }
        for (int load = 0; load < c->count; load++) {
            const cause outer = cause_of(c, load, plane);

            at = struck(at, &outer, i);
        }
        put_line(s, plane, at);
    }
    for (int load = 0; load < c->count; load++)
        if (c->at[load] == i) {
            s->T -= c->loads[load].T;
            s->N -= c->loads[load].F_x;
        }
}

static ts_beam_state carried_state(ts_beam_state s, const ts_beam_frame *frame, int i)
{
    const double L = frame->x[i + 1] - frame->x[i];

    for (int plane = 0; plane < 2; plane++)
        put_line(&s, plane, carried(line_of(&s, plane), L, frame->EI[i], frame->GA[i]));
    s.phi += s.T * L / frame->GJ[i];
    return s;
}

static void draw_line(const load_case *c, const unknowns *u, const equations *e,
                      ts_beam_result *result)
{
    ts_beam_state s = {
        .v_y     = u->scale_v * e->b[0][0],
        .theta_y = e->b[1][0],
        .v_z     = u->scale_v * e->b[0][1],
        .theta_z = e->b[1][1],
    };

    result->count = c->frame->count;
    for (int i = 0; i < c->frame->count; i++) {
        result->x[i]    = c->frame->x[i];
        result->left[i] = s;
        strike_all(c, u, e, i, &s);
        for (int k = 0; k < c->beam->support_count; k++)
            if (c->frame->support_at[k] == i)
                s.N -= result->reaction[k].F_x;
        result->right[i] = s;
        if (i + 1 < c->frame->count)
            s = carried_state(s, c->frame, i);
    }
}

static void react(const load_case *c, const unknowns *u, const equations *e, ts_beam_result *result)
{
    double axial = 0.0, torque = 0.0;
    int    j       = 2;
    bool   located = false;

    for (int load = 0; load < c->count; load++) {
        axial += c->loads[load].F_x;
        torque += c->loads[load].T;
    }
    for (int k = 0; k < c->beam->support_count; k++) {
        const ts_beam_support *support = &c->beam->supports[k];
        ts_beam_reaction      *r       = &result->reaction[k];

        r->F_y = u->causes[j].force * e->b[j][0];
        r->F_z = u->causes[j].force * e->b[j][1];
        r->F_r = hypot(r->F_y, r->F_z);
        r->F_x = support->locates ? -axial : 0.0;
        r->M_y = r->M_z = 0.0;
        located         = located || support->locates;
        j++;
        if (support->k_t > 0.0) {
            r->M_z = u->causes[j].couple * e->b[j][0];
            r->M_y = -u->causes[j].couple * e->b[j][1];
            j++;
        }
    }
    result->torque_rest = torque;
    result->axial_rest  = located ? 0.0 : axial;
}

static ts_beam_fault place_loads(load_case *c)
{
    if (c->count > TS_BEAM_LOADS_MOST)
        return TS_BEAM_TOO_MANY;
    for (int i = 0; i < c->count; i++) {
        const ts_beam_load *l = &c->loads[i];

        if (!isfinite(l->F_x + l->F_y + l->F_z + l->T + l->M_y + l->M_z))
            return TS_BEAM_BAD_NUMBER;
        c->at[i] = ts_beam_station(c->frame, l->x);
        if (c->at[i] < 0)
            return TS_BEAM_OUTSIDE;
    }
    return TS_BEAM_FINE;
}

ts_beam_fault ts_beam_solve(const ts_beam *beam, const ts_beam_frame *frame,
                            const ts_beam_load *loads, int load_count, ts_beam_result *result)
{
    load_case           c     = {.beam = beam, .frame = frame, .loads = loads, .count = load_count};
    const ts_beam_fault fault = place_loads(&c);
    const unknowns      u     = unknowns_of(beam, frame);
    equations           e;

    if (fault != TS_BEAM_FINE)
        return fault;
    if (!set_up(&c, &u, &e))
        return TS_BEAM_TOO_FEW;
    react(&c, &u, &e, result);
    draw_line(&c, &u, &e, result);
    return TS_BEAM_FINE;
}
