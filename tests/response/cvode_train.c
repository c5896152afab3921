/* response/cvode_train.c: an elastic train followed by SUNDIALS CVODE with its root finding. */
#include "response/cvode_train.h"

#include "response/cvode_library.h"
#include "response/elastic_parts.h"

#include <math.h>
#include <string.h>

enum { ROOTS_A_BOND = 3 };

#define ANGLE_LEAST  1e-13
#define SPEED_LEAST  1e-11
#define CLUTCH_ANGLE 1e-12
#define CLUTCH_SPEED 1e-9

typedef struct runner {
    const ts_elastic_train *train;
    ts_moving               moving;
    ts_train_run           *run;
    double                 *y, *weights;
    int                    *found;
    bool                    any_break;
    ts_cvode                solver;
} runner;

static double torque_of(const runner *r, uint32_t i, const double *y)
{
    double rate;

    return r->train->bonds[i].g_b * r->train->bonds[i].k * ts_bond_press(&r->moving, i, y, &rate);
}

/* ---- what CVODE asks --------------------------------------------------------------------------
 */

static int slope(double t, N_Vector state, N_Vector rates, void *context)
{
    const runner           *r     = context;
    const ts_elastic_train *train = r->train;
    const uint32_t          n     = train->body_count;
    const double           *y     = N_VGetArrayPointer(state);
    double                 *dy = N_VGetArrayPointer(rates), *dv = &dy[n];

    for (uint32_t i = 0; i < n; i++) {
        dy[i] = y[n + i];
        dv[i] = train->bodies[i].torque + train->bodies[i].slope * y[n + i];
    }
    for (size_t i = 0; i < train->pulse_count; i++) {
        const ts_torque_pulse *p = &train->pulses[i];
        dv[p->body] += (t < p->rise ? t / p->rise : 1.0) * p->A * exp(-p->decay * t) * cos(p->omega * t + p->phase);
    }
    for (uint32_t i = 0; i < train->bond_count; i++) {
        const double F = ts_bond_force(&r->moving, i, y);
        dv[train->bonds[i].a] -= train->bonds[i].g_a * F;
        dv[train->bonds[i].b] += train->bonds[i].g_b * F;
    }
    if (r->moving.stop == TS_STOP_SLIPS)
        dv[train->stops] -= r->moving.sense * r->moving.friction * t;
    if (r->moving.stop == TS_STOP_STANDS)
        dv[train->stops] = 0.0;
    for (uint32_t i = 0; i < n; i++)
        dv[i] /= train->bodies[i].J;
    return 0;
}

/* What vanishes when a bond touches, parts and breaks; 1 where nothing can. */
static void bond_roots(const runner *r, uint32_t i, const double *y, double *g)
{
    const ts_bond      *bond  = &r->train->bonds[i];
    const ts_bond_state state = r->moving.state[i];

    g[0] = g[1] = g[2] = 1.0;
    if (state == TS_BOND_BROKEN)
        return;
    if (isfinite(bond->breaks))
        g[2] = bond->breaks - fabs(torque_of(r, i, y));
    if (bond->kind == TS_BOND_MESH) {
        g[0] = ts_bond_stretch(&r->moving, i, y);
        g[1] = g[0] + bond->gap;
    } else if (bond->kind == TS_BOND_CLUTCH) {
        g[0] = state == TS_BOND_TRAILING
                   ? ts_bond_stretch(&r->moving, i, y) - r->moving.offset[i] - CLUTCH_ANGLE
                   : ts_bond_speed(&r->moving, i, y) + CLUTCH_SPEED;
    }
}

static int roots(double t, N_Vector state, double *g, void *context)
{
    const runner  *r    = context;
    const double  *y    = N_VGetArrayPointer(state);
    const size_t   n    = (size_t)ROOTS_A_BOND * r->train->bond_count;
    const uint32_t stop = r->train->stops;

    for (uint32_t i = 0; i < r->train->bond_count; i++)
        bond_roots(r, i, y, &g[(size_t)ROOTS_A_BOND * i]);
    g[n] = 1.0;
    if (r->moving.stop == TS_STOP_SLIPS)
        g[n] = r->moving.sense * (r->train->bodies[stop].speed + y[r->train->body_count + stop]);
    else if (r->moving.stop == TS_STOP_STANDS && r->train->ramp > 0.0)
        g[n] = r->moving.friction * t - fabs(ts_stop_torque(&r->moving, y));
    return 0;
}

/* ---- events -----------------------------------------------------------------------------------
 */

static void keep(runner *r, ts_happening what, uint32_t bond, double T)
{
    if (r->run->event_count < TS_EVENTS_KEPT)
        r->run->events[r->run->event_count++] = (ts_train_event){r->run->t, what, bond, T, 0.0};
    r->run->happened++;
}

static void enter(runner *r, uint32_t i, ts_bond_state state)
{
    if (r->moving.state[i] == state)
        return;
    r->moving.state[i] = state;
    if (r->train->bonds[i].kind == TS_BOND_CLUTCH && state == TS_BOND_TRAILING)
        r->moving.offset[i] = ts_bond_stretch(&r->moving, i, r->y);
    keep(r,
         state == TS_BOND_LEADING    ? TS_HAPPENS_TOUCH_LEADING
         : state == TS_BOND_TRAILING ? TS_HAPPENS_TOUCH_TRAILING
                                     : TS_HAPPENS_PART,
         i, torque_of(r, i, r->y));
}

/* Directions, not signs, tell what happened: on a root the sign of what vanishes is chance. */
static void take_bond(runner *r, uint32_t i, const int *found)
{
    const ts_bond *bond = &r->train->bonds[i];

    if (r->moving.state[i] == TS_BOND_BROKEN)
        return;
    if (found[2] < 0 && isfinite(bond->breaks)) {
        keep(r, TS_HAPPENS_BREAK, i, torque_of(r, i, r->y));
        r->moving.state[i]      = TS_BOND_BROKEN;
        r->run->peaks[i].broken = true;
        r->any_break            = true;
        return;
    }
    if (bond->kind == TS_BOND_MESH && (found[0] != 0 || found[1] != 0))
        enter(r, i,
              found[0] > 0   ? TS_BOND_LEADING
              : found[1] < 0 ? TS_BOND_TRAILING
                             : TS_BOND_APART);
    if (bond->kind == TS_BOND_CLUTCH && found[0] != 0)
        enter(r, i,
              r->moving.state[i] == TS_BOND_TRAILING && found[0] > 0 ? TS_BOND_APART
                                                                     : TS_BOND_TRAILING);
}

static void take_stop(runner *r)
{
    const uint32_t body = r->train->stops;
    ts_moving     *m    = &r->moving;

    if (m->stop == TS_STOP_SLIPS)
        r->y[r->train->body_count + body] = -r->train->bodies[body].speed;
    const double T = ts_stop_torque(m, r->y);
    if (m->stop == TS_STOP_SLIPS && fabs(T) <= m->friction * r->run->t) {
        m->stop = TS_STOP_STANDS;
        keep(r, TS_HAPPENS_STAND, TS_NO_BODY, T);
        return;
    }
    m->stop  = TS_STOP_SLIPS;
    m->sense = copysign(1.0, T);
    keep(r, TS_HAPPENS_SLIP, TS_NO_BODY, T);
}

/* ---- the run ----------------------------------------------------------------------------------
 */

static void begin(runner *r)
{
    const ts_elastic_train *train = r->train;
    const uint32_t          n     = train->body_count;

    for (uint32_t i = 0; i < n; i++) {
        r->y[i]           = train->bodies[i].q;
        r->y[n + i]       = train->bodies[i].v;
        r->weights[i]     = ANGLE_LEAST;
        r->weights[n + i] = SPEED_LEAST;
    }
    for (uint32_t i = 0; i < train->bond_count; i++) {
        const ts_bond *bond = &train->bonds[i];
        const double   s    = ts_bond_stretch(&r->moving, i, r->y);
        r->moving.state[i]  = TS_BOND_LEADING;
        if (bond->kind == TS_BOND_MESH)
            r->moving.state[i] = s >= 0.0          ? TS_BOND_LEADING
                                 : s <= -bond->gap ? TS_BOND_TRAILING
                                                   : TS_BOND_APART;
        if (bond->kind == TS_BOND_CLUTCH)
            r->moving.state[i] = s < 0.0 ? TS_BOND_TRAILING : TS_BOND_APART;
    }
    if (train->stops == TS_NO_BODY)
        return;
    const ts_turning_body *body = &train->bodies[train->stops];
    r->moving.stop              = train->ramp > 0.0 ? TS_STOP_SLIPS : TS_STOP_STANDS;
    r->moving.sense             = 1.0;
    if (train->ramp > 0.0)
        r->moving.friction = 2.0 * body->J * body->speed / (train->ramp * train->ramp);
    else
        r->y[n + train->stops] = -body->speed;
}

static void note(runner *r)
{
    for (uint32_t i = 0; i < r->train->bond_count; i++) {
        const double T    = torque_of(r, i, r->y);
        double      *peak = r->any_break ? &r->run->peaks[i].after : &r->run->peaks[i].before;
        if (fabs(T) > fabs(*peak))
            *peak = T;
    }
}

static bool step(runner *r)
{
    const size_t bonds = r->train->bond_count;
    const int    code =
        CVode(r->solver.cvode, r->train->until, r->solver.state, &r->run->t, CV_ONE_STEP);

    note(r);
    r->run->steps++;
    if (code != CV_ROOT_RETURN)
        return code >= 0;
    if (CVodeGetRootInfo(r->solver.cvode, r->found) != CV_SUCCESS)
        return false;
    for (uint32_t i = 0; i < bonds; i++)
        take_bond(r, i, &r->found[(size_t)ROOTS_A_BOND * i]);
    if (r->found[ROOTS_A_BOND * bonds] != 0)
        take_stop(r);
    return CVodeReInit(r->solver.cvode, r->run->t, r->solver.state) == CV_SUCCESS;
}

void cvode_train_run(const ts_elastic_train *train, double tolerance, ts_arena *arena,
                     ts_train_run *run)
{
    const size_t n = train->body_count, m = train->bond_count;
    runner       r = {.train = train, .run = run};

    *run            = (ts_train_run){.fault  = TS_RUN_STUCK,
                                     .at     = TS_NO_BODY,
                                     .events = TS_TAKE(arena, ts_train_event, TS_EVENTS_KEPT),
                                     .peaks  = TS_TAKE(arena, ts_bond_peak, m + 1),
                                     .q      = TS_TAKE(arena, double, n),
                                     .v      = TS_TAKE(arena, double, n)};
    r.moving.train  = train;
    r.moving.state  = TS_TAKE(arena, ts_bond_state, m + 1);
    r.moving.offset = TS_TAKE(arena, double, m + 1);
    r.y             = TS_TAKE(arena, double, 2 * n);
    r.weights       = TS_TAKE(arena, double, 2 * n);
    r.found         = TS_TAKE(arena, int, ROOTS_A_BOND *m + 1);
    begin(&r);
    const ts_cvode_question question = {.size       = 2 * n,
                                        .y          = r.y,
                                        .weights    = r.weights,
                                        .tolerance  = tolerance,
                                        .until      = train->until,
                                        .root_count = (int)(ROOTS_A_BOND * m + 1),
                                        .slope      = slope,
                                        .roots      = roots,
                                        .context    = &r};
    bool                    fine     = ts_cvode_open(&r.solver, &question);
    while (fine && run->t < train->until)
        fine = step(&r);
    ts_cvode_close(&r.solver);
    run->fault = fine ? TS_RUN_FINE : TS_RUN_STUCK;
    memcpy(run->q, r.y, n * sizeof *r.y);
    memcpy(run->v, &r.y[n], n * sizeof *r.y);
}
