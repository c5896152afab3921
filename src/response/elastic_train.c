/* response/elastic_train.c: when does something in an elastic train touch, part, break or stop?
 */
#include "response/cvode_library.h"
#include "response/elastic_parts.h"

#include <math.h>
#include <string.h>

enum { ROOTS_A_BOND = 3, STEPS_MOST = 2000000, EVENTS_MOST = 100000, KEPT_FOR_BREAKS = 64 };

#define ANGLE_LEAST  1e-13 /* rad, absolute tolerance            */
#define ENERGY_LEAST 1e-10 /* J, absolute tolerance of energies  */
/* A clutch is seen to lock and to let go this far beyond, so that it may begin on its very edge. */
#define CLUTCH_ANGLE 1e-12 /* rad                                        */
#define CLUTCH_SPEED 1e-9  /* rad/s                                      */

const char *ts_run_fault_says(ts_run_fault fault)
{
    static const char *const says[] = {
        [TS_RUN_FINE]       = "nothing is wrong",
        [TS_RUN_BAD_NUMBER] = "an inertia, stiffness, damping, play or torque is out of its range",
        [TS_RUN_NOT_FINITE] = "the equations gave no finite number",
        [TS_RUN_STUCK]      = "the steps became too small or too many",
        [TS_RUN_TOO_LIVELY] = "flanks met more than 100000 times",
        [TS_RUN_UNBALANCED] = "the energies do not add up to 1e-6",
        [TS_RUN_NO_MEMORY]  = "there is no memory",
    };
    return says[fault];
}

typedef struct runner {
    const ts_elastic_train *train;
    ts_moving               moving;
    ts_train_run           *run;
    size_t                  size; /* of the state */
    double                 *y, *between, *weights;
    double                 *T, *rate; /* [bond] at the last step */
    int                    *found;
    double                  last; /* s, time of the last step */
    double                  strain_0, imbalance;
    double                  sample_at;
    bool                    any_break;
    size_t                  events; /* all of them */
    ts_cvode                solver;
    N_Vector                inside; /* state between two steps */
} runner;

/* ---- is it sound? -----------------------------------------------------------------------------
 */

static bool is_body(const ts_turning_body *b)
{
    return b->J > 0.0 && isfinite(b->J) && b->speed >= 0.0 && isfinite(b->speed) &&
           isfinite(b->torque) && b->slope <= 0.0 && isfinite(b->slope) && isfinite(b->q) &&
           isfinite(b->v);
}

static bool is_bond(const ts_bond *b, uint32_t bodies)
{
    return b->k > 0.0 && isfinite(b->k) && b->c >= 0.0 && isfinite(b->c) && b->gap >= 0.0 &&
           isfinite(b->gap) && b->breaks > 0.0 && b->a < bodies && b->b < bodies &&
           isfinite(b->g_a) && isfinite(b->g_b) && b->g_b > 0.0;
}

static bool is_sound(const ts_elastic_train *train, ts_train_run *run)
{
    run->fault = TS_RUN_BAD_NUMBER;
    for (run->at = 0; run->at < train->body_count; run->at++)
        if (!is_body(&train->bodies[run->at]))
            return false;
    for (run->at = 0; run->at < train->bond_count; run->at++)
        if (!is_bond(&train->bonds[run->at], train->body_count))
            return false;
    if (!(train->until > 0.0) || !isfinite(train->until) || !(train->tolerance > 0.0) ||
        !(train->ramp >= 0.0) ||
        (train->stops != TS_NO_BODY && train->stops >= train->body_count) || train->body_count == 0)
        return false;
    run->fault = TS_RUN_FINE;
    return true;
}

/* ---- what CVODE asks --------------------------------------------------------------------------
 */

static int slope(double t, N_Vector y, N_Vector dy, void *context)
{
    runner *r = context;

    r->run->evaluations++;
    return ts_moving_slope(&r->moving, t, N_VGetArrayPointer(y), N_VGetArrayPointer(dy)) ? 0 : -1;
}

/* What strains it; what damps is in its joints and in the oil. */
static double torque_of(const runner *r, uint32_t bond, const double *y)
{
    const ts_bond *b = &r->train->bonds[bond];
    double         rate;

    return b->g_b * b->k * ts_bond_press(&r->moving, bond, y, &rate);
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
    const runner *r = context;
    const double *y = N_VGetArrayPointer(state);
    const size_t  n = (size_t)ROOTS_A_BOND * r->train->bond_count;

    for (uint32_t i = 0; i < r->train->bond_count; i++)
        bond_roots(r, i, y, &g[(size_t)ROOTS_A_BOND * i]);
    g[n] = 1.0;
    if (r->moving.stop == TS_STOP_SLIPS)
        g[n] = r->moving.sense * (r->train->bodies[r->train->stops].speed +
                                  y[r->train->body_count + r->train->stops]);
    else if (r->moving.stop == TS_STOP_STANDS && r->train->ramp > 0.0)
        g[n] = ts_stop_friction(&r->moving, t) - fabs(ts_stop_torque(&r->moving, y));
    return 0;
}

/* ---- opening and closing ----------------------------------------------------------------------
 */

static void set_tolerances(runner *r)
{
    const uint32_t n = r->train->body_count;

    for (uint32_t i = 0; i < n; i++) {
        const ts_turning_body *body = &r->train->bodies[i];
        r->weights[i]               = ANGLE_LEAST;
        r->weights[n + i]           = ENERGY_LEAST / (body->J * (body->speed + 1.0));
    }
    for (size_t i = 0; i < TS_STATE_ENERGIES; i++)
        r->weights[2 * (size_t)n + i] = ENERGY_LEAST;
}

static bool open_cvode(runner *r)
{
    const ts_cvode_question question = {.size      = r->size,
                                        .y         = r->y,
                                        .weights   = r->weights,
                                        .tolerance = r->train->tolerance,
                                        .until     = r->train->until,
                                        .root_count =
                                            (int)(ROOTS_A_BOND * r->train->bond_count + 1),
                                        .slope   = slope,
                                        .roots   = roots,
                                        .context = r};

    if (!ts_cvode_open(&r->solver, &question))
        return false;
    r->inside = N_VMake_Serial((sunindextype)r->size, r->between, r->solver.context);
    return r->inside != NULL;
}

static void close_cvode(runner *r)
{
    if (r->inside != NULL)
        N_VDestroy(r->inside);
    ts_cvode_close(&r->solver);
}

static bool take_trace(const ts_elastic_train *train, ts_arena *arena, ts_train_trace *trace)
{
    const size_t most = train->samples;

    if (most == 0)
        return true;
    trace->t = TS_TAKE(arena, double, most);
    trace->T = TS_TAKE(arena, double, most * train->bond_count);
    trace->w = TS_TAKE(arena, double, most * train->body_count);
    return trace->t != NULL && trace->T != NULL && trace->w != NULL;
}

static bool take_room(runner *r, ts_arena *arena)
{
    const size_t n = r->train->body_count, m = r->train->bond_count;

    r->size          = 2 * n + TS_STATE_ENERGIES;
    r->y             = TS_TAKE(arena, double, r->size);
    r->between       = TS_TAKE(arena, double, r->size);
    r->weights       = TS_TAKE(arena, double, r->size);
    r->T             = TS_TAKE(arena, double, m + 1);
    r->rate          = TS_TAKE(arena, double, m + 1);
    r->found         = TS_TAKE(arena, int, ROOTS_A_BOND *m + 1);
    r->moving.state  = TS_TAKE(arena, ts_bond_state, m + 1);
    r->moving.offset = TS_TAKE(arena, double, m + 1);
    r->run->events   = TS_TAKE(arena, ts_train_event, TS_EVENTS_KEPT);
    r->run->peaks    = TS_TAKE(arena, ts_bond_peak, m + 1);
    r->run->q        = TS_TAKE(arena, double, n);
    r->run->v        = TS_TAKE(arena, double, n);
    return r->y != NULL && r->between != NULL && r->weights != NULL && r->T != NULL &&
           r->rate != NULL && r->found != NULL && r->moving.state != NULL &&
           r->moving.offset != NULL && r->run->events != NULL && r->run->peaks != NULL &&
           r->run->q != NULL && r->run->v != NULL && take_trace(r->train, arena, &r->run->trace);
}

/* ---- peaks and samples ------------------------------------------------------------------------
 */

static void note_peak(runner *r, uint32_t i, double t, double T)
{
    ts_bond_peak *peak = &r->run->peaks[i];

    if (!r->any_break && fabs(T) > fabs(peak->before)) {
        peak->before   = T;
        peak->t_before = t;
    } else if (r->any_break && fabs(T) > fabs(peak->after)) {
        peak->after   = T;
        peak->t_after = t;
    }
}

/* Where the torque turned within the step from `last` to t: from the rates at both ends, then read
 * from CVODE's own interpolation. */
static void note_between(runner *r, uint32_t i, double t, double rate)
{
    const double at   = r->last + (t - r->last) * r->rate[i] / (r->rate[i] - rate);
    const double most = r->any_break ? r->run->peaks[i].after : r->run->peaks[i].before;
    const double gain = (t - r->last) * fmax(fabs(rate), fabs(r->rate[i]));

    if (fmax(fabs(r->T[i]), fabs(torque_of(r, i, r->y))) + gain < fabs(most) ||
        CVodeGetDky(r->solver.cvode, at, 0, r->inside) != CV_SUCCESS)
        return;
    note_peak(r, i, at, torque_of(r, i, r->between));
}

static void note_step(runner *r, double t, bool fresh)
{
    for (uint32_t i = 0; i < r->train->bond_count; i++) {
        const double T    = torque_of(r, i, r->y);
        const double rate = ts_bond_torque_rate(&r->moving, i, r->y);
        if (!fresh && t > r->last && rate * r->rate[i] < 0.0)
            note_between(r, i, t, rate);
        note_peak(r, i, t, T);
        r->T[i]    = T;
        r->rate[i] = rate;
    }
    r->last = t;
}

/* Close together at first, for a neck may break in microseconds. */
static void note_sample(runner *r, double t, bool always)
{
    ts_train_trace *trace = &r->run->trace;
    const double    even  = 2.0 * r->train->until / (double)r->train->samples;

    if (trace->count >= r->train->samples || (!always && t < r->sample_at))
        return;
    trace->t[trace->count] = t;
    for (uint32_t i = 0; i < r->train->bond_count; i++)
        trace->T[trace->count * r->train->bond_count + i] = torque_of(r, i, r->y);
    for (uint32_t i = 0; i < r->train->body_count; i++)
        trace->w[trace->count * r->train->body_count + i] =
            r->train->bodies[i].speed + r->y[r->train->body_count + i];
    trace->count++;
    r->sample_at = t + fmin(fmax(0.02 * t, 1e-7), even);
}

/* ---- energies ---------------------------------------------------------------------------------
 */

static void balance(runner *r)
{
    ts_energy_account *e   = &r->run->energy;
    const double      *sum = &r->y[2 * (size_t)r->train->body_count];
    const double       U   = ts_moving_strain(&r->moving, r->y);

    e->kinetic = ts_moving_kinetic(&r->moving, r->y);
    e->strain  = U - r->strain_0;
    e->damped  = sum[TS_STATE_DAMPED];
    e->work    = sum[TS_STATE_WORK];
    e->scale   = fmax(e->scale, U + e->damped + sum[TS_STATE_STOPPED] + e->broken);
    r->imbalance =
        fmax(r->imbalance, fabs(e->kinetic + e->strain + e->damped + sum[TS_STATE_STOPPED] +
                                e->stopped + e->broken - e->work));
    e->balance = e->scale > 0.0 ? r->imbalance / e->scale : 0.0;
}

/* ---- events -----------------------------------------------------------------------------------
 */

static void keep_event(runner *r, double t, ts_happening what, uint32_t bond, double T)
{
    ts_train_run  *run  = r->run;
    const bool     soft = what <= TS_HAPPENS_PART;
    const size_t   room = soft ? TS_EVENTS_KEPT - KEPT_FOR_BREAKS : TS_EVENTS_KEPT;
    const uint32_t body = bond == TS_NO_BODY ? r->train->stops : r->train->bonds[bond].a;

    r->events++;
    run->touches += what <= TS_HAPPENS_TOUCH_TRAILING ? 1 : 0;
    if (run->event_count < room)
        run->events[run->event_count++] = (ts_train_event){t, what, bond, T, r->y[body]};
}

static void break_bond(runner *r, double t, uint32_t i)
{
    double       rate;
    const double press = ts_bond_press(&r->moving, i, r->y, &rate);

    r->run->energy.broken += r->train->bonds[i].k * press * press / 2.0;
    keep_event(r, t, TS_HAPPENS_BREAK, i, torque_of(r, i, r->y));
    r->moving.state[i]      = TS_BOND_BROKEN;
    r->run->peaks[i].broken = true;
}

static void enter(runner *r, double t, uint32_t i, ts_bond_state state)
{
    static const ts_happening happens[] = {TS_HAPPENS_TOUCH_TRAILING, TS_HAPPENS_PART,
                                           TS_HAPPENS_TOUCH_LEADING};

    if (r->moving.state[i] == state)
        return;
    r->moving.state[i] = state;
    if (r->train->bonds[i].kind == TS_BOND_CLUTCH && state == TS_BOND_TRAILING)
        r->moving.offset[i] = ts_bond_stretch(&r->moving, i, r->y);
    keep_event(r, t, happens[state + 1], i, torque_of(r, i, r->y));
}

/* Directions, not signs, tell what happened: on a root the sign of what vanishes is chance. */
static bool take_bond(runner *r, double t, uint32_t i, const int *found)
{
    const ts_bond *bond = &r->train->bonds[i];

    if (r->moving.state[i] == TS_BOND_BROKEN)
        return false;
    if (found[2] < 0 && isfinite(bond->breaks)) {
        break_bond(r, t, i);
        return true;
    }
    /* Without play both of its roots are one. */
    if (bond->kind == TS_BOND_MESH && (found[0] != 0 || found[1] != 0))
        enter(r, t, i,
              found[0] > 0   ? TS_BOND_LEADING
              : found[1] < 0 ? TS_BOND_TRAILING
                             : TS_BOND_APART);
    if (bond->kind == TS_BOND_CLUTCH && found[0] != 0)
        enter(r, t, i,
              r->moving.state[i] == TS_BOND_TRAILING && found[0] > 0 ? TS_BOND_APART
                                                                     : TS_BOND_TRAILING);
    return false;
}

static void take_stop(runner *r, double t)
{
    const uint32_t body = r->train->stops;
    ts_moving     *m    = &r->moving;

    if (m->stop == TS_STOP_SLIPS) {
        r->y[r->train->body_count + body] = -r->train->bodies[body].speed;
        const double T                    = ts_stop_torque(m, r->y);
        if (fabs(T) > ts_stop_friction(m, t)) { /* it is turned round before it can stand */
            m->sense = copysign(1.0, T);
            keep_event(r, t, TS_HAPPENS_SLIP, TS_NO_BODY, T);
            return;
        }
        m->stop = TS_STOP_STANDS;
        keep_event(r, t, TS_HAPPENS_STAND, TS_NO_BODY, T);
    } else if (m->stop == TS_STOP_STANDS) {
        m->sense = copysign(1.0, ts_stop_torque(m, r->y));
        m->stop  = TS_STOP_SLIPS;
        keep_event(r, t, TS_HAPPENS_SLIP, TS_NO_BODY, ts_stop_friction(m, t));
    }
}

static bool take_events(runner *r, double t)
{
    const size_t bonds  = r->train->bond_count;
    bool         breaks = false;

    if (CVodeGetRootInfo(r->solver.cvode, r->found) != CV_SUCCESS)
        return false;
    for (uint32_t i = 0; i < bonds; i++)
        breaks = take_bond(r, t, i, &r->found[(size_t)ROOTS_A_BOND * i]) || breaks;
    if (r->found[ROOTS_A_BOND * bonds] != 0)
        take_stop(r, t);
    if (breaks && !r->any_break)
        r->any_break = true;
    note_sample(r, t, true);
    return CVodeReInit(r->solver.cvode, t, r->solver.state) == CV_SUCCESS;
}

/* ---- the run ----------------------------------------------------------------------------------
 */

/* What bears less than its steady torque is no more when the run begins. */
static void break_overloaded(runner *r)
{
    for (uint32_t i = 0; i < r->train->bond_count; i++)
        if (fabs(torque_of(r, i, r->y)) >= r->train->bonds[i].breaks) {
            break_bond(r, 0.0, i);
            r->any_break = true;
        }
}

static void begin(runner *r)
{
    const ts_elastic_train *train = r->train;
    const uint32_t          n     = train->body_count;

    for (uint32_t i = 0; i < n; i++) {
        r->y[i]     = train->bodies[i].q;
        r->y[n + i] = train->bodies[i].v;
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
        const double T   = torque_of(r, i, r->y);
        r->run->peaks[i] = (ts_bond_peak){.start = T, .before = T};
    }
    r->strain_0          = ts_moving_strain(&r->moving, r->y);
    r->run->energy.scale = r->strain_0;
    break_overloaded(r);
    if (train->stops == TS_NO_BODY)
        return;
    const ts_turning_body *body = &train->bodies[train->stops];
    r->moving.stop              = train->ramp > 0.0 ? TS_STOP_SLIPS : TS_STOP_STANDS;
    r->moving.sense             = 1.0;
    if (train->ramp > 0.0) {
        r->moving.friction = 2.0 * body->J * body->speed / (train->ramp * train->ramp);
        return;
    }
    const double w         = body->speed + r->y[n + train->stops];
    r->y[n + train->stops] = -body->speed;
    r->run->energy.stopped = body->J * w * w / 2.0;
}

static void follow(runner *r)
{
    ts_train_run *run   = r->run;
    bool          fresh = true;

    while (run->t < r->train->until) {
        double    t    = run->t;
        const int code = CVode(r->solver.cvode, r->train->until, r->solver.state, &t, CV_ONE_STEP);
        if (code < 0) {
            run->fault = r->moving.bad != TS_NO_BODY ? TS_RUN_NOT_FINITE : TS_RUN_STUCK;
            run->at    = r->moving.bad;
            return;
        }
        run->t = t;
        note_step(r, t, fresh);
        balance(r);
        note_sample(r, t, t >= r->train->until);
        fresh = code == CV_ROOT_RETURN;
        if (fresh && !take_events(r, t))
            run->fault = TS_RUN_STUCK;
        if (fresh && run->fault == TS_RUN_FINE)
            note_step(r, t, true);
        if (++run->steps > STEPS_MOST)
            run->fault = TS_RUN_STUCK;
        if (r->events > EVENTS_MOST)
            run->fault = TS_RUN_TOO_LIVELY;
        if (run->fault != TS_RUN_FINE)
            return;
    }
}

static void end(runner *r)
{
    const uint32_t n = r->train->body_count;

    memcpy(r->run->q, r->y, n * sizeof *r->y);
    memcpy(r->run->v, &r->y[n], n * sizeof *r->y);
    r->run->energy.stopped += r->y[2 * (size_t)n + TS_STATE_STOPPED];
    r->run->stands   = r->moving.stop == TS_STOP_STANDS;
    r->run->happened = r->events;
    for (uint32_t i = 0; i < r->train->bond_count; i++)
        r->run->peaks[i].free =
            r->train->bonds[i].kind == TS_BOND_CLUTCH && r->moving.state[i] == TS_BOND_APART;
    if (r->run->fault == TS_RUN_FINE && !(r->run->energy.balance <= TS_BALANCE_LEAST))
        r->run->fault = TS_RUN_UNBALANCED;
}

void ts_elastic_train_run(const ts_elastic_train *train, ts_arena *arena, ts_train_run *run)
{
    runner r = {.train  = train,
                .run    = run,
                .moving = {.train = train, .stop = TS_STOP_NONE, .bad = TS_NO_BODY}};

    *run = (ts_train_run){.fault = TS_RUN_FINE, .at = TS_NO_BODY};
    if (!take_room(&r, arena)) {
        run->fault = TS_RUN_NO_MEMORY;
        return;
    }
    if (!is_sound(train, run))
        return;
    run->at    = TS_NO_BODY;
    run->fault = TS_RUN_NO_MEMORY;
    begin(&r);
    set_tolerances(&r);
    if (open_cvode(&r)) {
        run->fault = TS_RUN_FINE;
        note_sample(&r, 0.0, true);
        note_step(&r, 0.0, true);
        follow(&r);
        end(&r);
    }
    close_cvode(&r);
}
