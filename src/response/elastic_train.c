/* response/elastic_train.c: when does something in an elastic train touch, part, break or stop?
 */
#include "response/elastic_series.h"
#include "response/series_root.h"

#include <math.h>
#include <string.h>

enum { STEPS_MOST = 2000000, STEPS_TRIED = 10000, EVENTS_MOST = 100000, KEPT_FOR_BREAKS = 64 };

#define CLUTCH_ANGLE 1e-12         /* rad                                        */
#define CLUTCH_SPEED 1e-9          /* rad/s                                      */
#define TORN         (1.0 + 1e-10) /* of its friction tears loose what stands, so that it moves */

const char *ts_run_fault_says(ts_run_fault fault)
{
    static const char *const says[] = {
        [TS_RUN_FINE]       = "nothing is wrong",
        [TS_RUN_BAD_NUMBER] = "an inertia, stiffness, damping, play or torque is out of its range",
        [TS_RUN_NOT_FINITE] = "the equations gave no finite number",
        [TS_RUN_STUCK]      = "the steps are too small, and too many, to reach the end",
        [TS_RUN_TOO_LIVELY] = "flanks met more than 100000 times",
        [TS_RUN_UNBALANCED] = "the energies do not add up to 1e-6",
        [TS_RUN_NO_MEMORY]  = "there is no memory",
    };
    return says[fault];
}

/* What happens first within a step. */
typedef struct coming {
    double        theta;
    uint32_t      bond;  /* TS_NO_BODY: what stops */
    ts_bond_state state; /* that it comes into     */
} coming;

typedef struct runner {
    const ts_elastic_train *train;
    ts_moving               moving;
    ts_train_run           *run;
    ts_train_series         series;
    double                 *y, *between;
    double                  energies[TS_STATE_ENERGIES];
    double                  strain_0, kinetic_0, imbalance;
    double                  sample_at;
    bool                    any_break;
    size_t                  events; /* all of them */
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

/* What stands is held whatever pulls, so what stops is not pulsed. */
static bool is_pulse(const ts_torque_pulse *p, const ts_elastic_train *train)
{
    return p->body < train->body_count && p->body != train->stops && isfinite(p->A) &&
           p->decay >= 0.0 && isfinite(p->decay) && p->omega >= 0.0 && isfinite(p->omega) &&
           isfinite(p->phase) && p->rise >= 0.0 && isfinite(p->rise);
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
    for (run->at = 0; run->at < train->pulse_count; run->at++)
        if (!is_pulse(&train->pulses[run->at], train))
            return false;
    if (!(train->until > 0.0) || !isfinite(train->until) || !(train->tolerance > 0.0) ||
        !(train->ramp >= 0.0) ||
        (train->stops != TS_NO_BODY && train->stops >= train->body_count) || train->body_count == 0)
        return false;
    run->fault = TS_RUN_FINE;
    return true;
}

/* ---- opening ----------------------------------------------------------------------------------
 */

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

    r->y             = TS_TAKE(arena, double, 2 * n);
    r->between       = TS_TAKE(arena, double, 2 * n);
    r->moving.state  = TS_TAKE(arena, ts_bond_state, m + 1);
    r->moving.offset = TS_TAKE(arena, double, m + 1);
    r->run->events   = TS_TAKE(arena, ts_train_event, TS_EVENTS_KEPT);
    r->run->peaks    = TS_TAKE(arena, ts_bond_peak, m + 1);
    r->run->q        = TS_TAKE(arena, double, n);
    r->run->v        = TS_TAKE(arena, double, n);
    return r->y != NULL && r->between != NULL && r->moving.state != NULL &&
           r->moving.offset != NULL && r->run->events != NULL && r->run->peaks != NULL &&
           r->run->q != NULL && r->run->v != NULL && take_trace(r->train, arena, &r->run->trace);
}

/* ---- peaks and samples ------------------------------------------------------------------------
 */

/* What strains it; what damps is in its joints and in the oil. */
static double torque_of(const runner *r, uint32_t bond, const double *y)
{
    const ts_bond *b = &r->train->bonds[bond];
    double         rate;

    return b->g_b * b->k * ts_bond_press(&r->moving, bond, y, &rate);
}

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

/* Torques at both ends of the step and wherever one turns between two of Gauss's points. */
static void note_bond(runner *r, double t, uint32_t i, double press)
{
    const ts_train_series *it   = &r->series;
    const double          *c    = &it->s[i];
    const double           by   = r->train->bonds[i].g_b * r->train->bonds[i].k;
    const double           most = r->any_break ? r->run->peaks[i].after : r->run->peaks[i].before;
    double                 rate = c[it->s_stride], theta = 0.0;

    if (by * (fabs(c[0] + press) + it->reach[i]) <= fabs(most))
        return;
    note_peak(r, i, t, by * (c[0] + press));
    for (size_t p = 0; p <= TS_GAUSS; p++) {
        const double next = p < TS_GAUSS ? ts_series_point(p) : 1.0;
        double       slope;
        const double s = ts_series_at(c, TS_SERIES_ORDER, it->s_stride, next, &slope);
        if (slope * rate < 0.0) {
            const double turn = ts_series_turn(c, TS_SERIES_ORDER, it->s_stride, theta, next);
            note_peak(r, i, t + turn * it->h,
                      by * (ts_series_at(c, TS_SERIES_ORDER, it->s_stride, turn, NULL) + press));
        }
        if (p == TS_GAUSS)
            note_peak(r, i, t + it->h, by * (s + press));
        rate  = slope;
        theta = next;
    }
}

static void keep_sample(runner *r, double t, const double *y)
{
    ts_train_trace *trace = &r->run->trace;

    if (trace->count >= r->train->samples)
        return;
    trace->t[trace->count] = t;
    for (uint32_t i = 0; i < r->train->bond_count; i++)
        trace->T[trace->count * r->train->bond_count + i] = torque_of(r, i, y);
    for (uint32_t i = 0; i < r->train->body_count; i++)
        trace->w[trace->count * r->train->body_count + i] =
            r->train->bodies[i].speed + y[r->train->body_count + i];
    trace->count++;
}

/* Close together at first, for a neck may break in microseconds: by a share of the time that has
 * passed, later evenly; an eighth of them is left for what breaks, and one for the end. */
static void note_samples(runner *r, double t)
{
    const double most = (double)r->train->samples, until = r->train->until;
    const double share = 2.0 * log(1e5) / most, even = 2.0 * until / most;

    while (r->sample_at < t + r->series.h && r->run->trace.count + 1 < r->train->samples) {
        ts_series_inside(&r->series, &r->moving, (r->sample_at - t) / r->series.h, r->between);
        keep_sample(r, r->sample_at, r->between);
        r->sample_at += fmin(fmax(share * r->sample_at, 1e-6 * until), even);
    }
}

/* ---- energies ---------------------------------------------------------------------------------
 */

static void balance(runner *r)
{
    ts_energy_account *e   = &r->run->energy;
    const double      *sum = r->energies;
    const double       U   = ts_moving_strain(&r->moving, r->y);

    e->kinetic = ts_moving_kinetic(&r->moving, r->y) - r->kinetic_0;
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

static void take_event(runner *r, double t, const coming *next)
{
    if (next->bond == TS_NO_BODY) {
        take_stop(r, t);
    } else if (next->state == TS_BOND_BROKEN) {
        if (r->train->samples > 0)
            keep_sample(r, t, r->y);
        break_bond(r, t, next->bond);
        r->any_break = true;
    } else {
        enter(r, t, next->bond, next->state);
    }
}

/* ---- what comes first -------------------------------------------------------------------------
 */

static void meet(coming *first, double theta, uint32_t bond, ts_bond_state state)
{
    if (theta < first->theta)
        *first = (coming){theta, bond, state};
}

/* Where sense s + shift falls through 0. */
static void meet_stretch(const runner *r, coming *first, uint32_t i, double sense, double shift,
                         ts_bond_state state)
{
    const ts_train_series *it = &r->series;

    if (sense * it->s[i] + shift <= it->reach[i])
        meet(first, ts_series_fall(&it->s[i], TS_SERIES_ORDER, it->s_stride, sense, shift), i,
             state);
}

static void meet_mesh(const runner *r, coming *first, uint32_t i)
{
    const double gap = r->train->bonds[i].gap;

    switch (r->moving.state[i]) {
    case TS_BOND_LEADING:
        /* Without play both flanks are one. */
        meet_stretch(r, first, i, 1.0, 0.0, gap > 0.0 ? TS_BOND_APART : TS_BOND_TRAILING);
        break;
    case TS_BOND_APART:
        meet_stretch(r, first, i, -1.0, 0.0, TS_BOND_LEADING);
        meet_stretch(r, first, i, 1.0, gap, TS_BOND_TRAILING);
        break;
    case TS_BOND_TRAILING:
        meet_stretch(r, first, i, -1.0, -gap, gap > 0.0 ? TS_BOND_APART : TS_BOND_LEADING);
        break;
    case TS_BOND_BROKEN:
        break;
    }
}

/* Series of how fast a series grows over the step. */
static void slope_of(const double *c, size_t stride, double *slope)
{
    for (size_t k = 0; k < TS_SERIES_ORDER; k++)
        slope[k] = (double)(k + 1) * c[(k + 1) * stride];
}

static void meet_clutch(const runner *r, coming *first, uint32_t i)
{
    double slope[TS_SERIES_ORDER];

    if (r->moving.state[i] == TS_BOND_TRAILING) {
        meet_stretch(r, first, i, -1.0, r->moving.offset[i] + CLUTCH_ANGLE, TS_BOND_APART);
        return;
    }
    slope_of(&r->series.s[i], r->series.s_stride, slope);
    meet(first, ts_series_fall(slope, TS_SERIES_ORDER - 1, 1, 1.0, CLUTCH_SPEED * r->series.h), i,
         TS_BOND_TRAILING);
}

/* Torque of the bonds on what stands, less what its friction bears in that sense. */
static void meet_slipping(const runner *r, coming *first, double sense, double t)
{
    const ts_train_series *it                 = &r->series;
    const ts_turning_body *body               = &r->train->bodies[r->train->stops];
    double                 c[TS_SERIES_ORDER] = {0.0};

    for (size_t j = 0; j < it->touching_count; j++) {
        const uint32_t i = it->touching[j];
        const ts_bond *b = &r->train->bonds[i];
        const double g = b->b == r->train->stops ? b->g_b : b->a == r->train->stops ? -b->g_a : 0.0;
        for (size_t k = 0; g != 0.0 && k < TS_SERIES_ORDER; k++)
            c[k] += g * (b->k * (it->s[k * it->s_stride + i] + (k == 0 ? it->press[j] : 0.0)) +
                         b->c * (double)(k + 1) * it->s[(k + 1) * it->s_stride + i] / it->h);
    }
    c[0] += body->torque - body->slope * body->speed;
    for (size_t k = 0; k < TS_SERIES_ORDER; k++)
        c[k] *= -sense;
    c[0] += TORN * ts_stop_friction(&r->moving, t);
    c[1] += TORN * r->moving.friction * it->h;
    meet(first, ts_series_fall(c, TS_SERIES_ORDER - 1, 1, 1.0, 0.0), TS_NO_BODY, TS_BOND_APART);
}

static void meet_stop(const runner *r, coming *first, double t)
{
    double slope[TS_SERIES_ORDER];

    if (r->moving.stop == TS_STOP_SLIPS) {
        slope_of(&r->series.q[r->train->stops], r->series.q_stride, slope);
        meet(
            first,
            ts_series_fall(slope, TS_SERIES_ORDER - 1, 1, r->moving.sense,
                           r->moving.sense * r->train->bodies[r->train->stops].speed * r->series.h),
            TS_NO_BODY, TS_BOND_APART);
    } else if (r->moving.stop == TS_STOP_STANDS && r->train->ramp > 0.0) {
        meet_slipping(r, first, 1.0, t);
        meet_slipping(r, first, -1.0, t);
    }
}

static coming find_first(const runner *r, double t)
{
    const ts_train_series *it    = &r->series;
    coming                 first = {TS_NO_FALL, TS_NO_BODY, TS_BOND_APART};

    for (uint32_t i = 0; i < it->bonds; i++) {
        if (r->train->bonds[i].kind == TS_BOND_MESH)
            meet_mesh(r, &first, i);
        else if (r->train->bonds[i].kind == TS_BOND_CLUTCH && r->moving.state[i] != TS_BOND_BROKEN)
            meet_clutch(r, &first, i);
    }
    for (size_t j = 0; j < it->touching_count; j++) {
        const ts_bond *b      = &r->train->bonds[it->touching[j]];
        const double   strain = b->breaks / (b->g_b * b->k);
        if (!isfinite(strain))
            continue;
        meet_stretch(r, &first, it->touching[j], -1.0, strain - it->press[j], TS_BOND_BROKEN);
        meet_stretch(r, &first, it->touching[j], 1.0, strain + it->press[j], TS_BOND_BROKEN);
    }
    meet_stop(r, &first, t);
    return first;
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
            r->moving.state[i] =
                s < 0.0 || (s == 0.0 && ts_bond_speed(&r->moving, i, r->y) < -CLUTCH_SPEED)
                    ? TS_BOND_TRAILING
                    : TS_BOND_APART;
        const double T   = torque_of(r, i, r->y);
        r->run->peaks[i] = (ts_bond_peak){.start = T, .before = T};
    }
    r->strain_0          = ts_moving_strain(&r->moving, r->y);
    r->kinetic_0         = ts_moving_kinetic(&r->moving, r->y);
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

/* Goes to the end of the step, or to where something happens within it. */
static void advance(runner *r, const coming *next)
{
    ts_train_run *run  = r->run;
    const double  left = r->train->until - run->t;

    if (next->theta <= 0.0)
        return;
    const bool whole = next->theta >= 1.0 && r->series.h >= left;
    if (next->theta < 1.0)
        ts_series_shrink(&r->series, next->theta);
    if (!(r->series.h > 0.0))
        return;
    ts_series_energies(&r->series, &r->moving, run->t, r->energies);
    for (size_t j = 0; j < r->series.touching_count; j++)
        note_bond(r, run->t, r->series.touching[j], r->series.press[j]);
    note_samples(r, run->t);
    ts_series_inside(&r->series, &r->moving, 1.0, r->y);
    run->t = whole ? r->train->until : run->t + r->series.h;
}

/* At the pace of its first steps it would need ten times as many as it may have; one that rattles
 * at first only does not. */
static bool is_hopeless(const runner *r)
{
    return r->run->steps > STEPS_MOST ||
           (r->run->steps == STEPS_TRIED &&
            r->run->t / r->train->until < (double)STEPS_TRIED / STEPS_MOST / 10.0);
}

/* The body that its bonds let swing, or settle, fastest. */
static uint32_t fastest_body(const ts_elastic_train *train)
{
    double   most = 0.0;
    uint32_t at   = 0;

    for (uint32_t i = 0; i < 2 * train->bond_count; i++) {
        const ts_bond *bond = &train->bonds[i / 2];
        const uint32_t body = i % 2 == 0 ? bond->a : bond->b;
        const double   g    = i % 2 == 0 ? bond->g_a : bond->g_b;
        const double   J    = train->bodies[body].J / (g * g);
        const double   rate = fmax(sqrt(bond->k / J), bond->c / J);
        if (rate > most) {
            most = rate;
            at   = body;
        }
    }
    return at;
}

static void follow(runner *r)
{
    ts_train_run *run = r->run;

    while (run->t < r->train->until && run->fault == TS_RUN_FINE) {
        if (!ts_series_expand(&r->series, &r->moving, run->t, r->y)) {
            run->fault = TS_RUN_NOT_FINITE;
            run->at    = r->moving.bad;
            return;
        }
        const coming next = find_first(r, run->t);
        advance(r, &next);
        balance(r);
        if (next.theta < TS_NO_FALL)
            take_event(r, run->t, &next);
        run->steps++;
        if (is_hopeless(r) || !isfinite(run->energy.balance)) {
            run->fault = TS_RUN_STUCK;
            run->at    = fastest_body(r->train);
        }
        if (r->events > EVENTS_MOST)
            run->fault = TS_RUN_TOO_LIVELY;
    }
    if (r->train->samples > 0)
        keep_sample(r, run->t, r->y);
}

static void end(runner *r)
{
    const uint32_t n = r->train->body_count;

    memcpy(r->run->q, r->y, n * sizeof *r->y);
    memcpy(r->run->v, &r->y[n], n * sizeof *r->y);
    r->run->energy.stopped += r->energies[TS_STATE_STOPPED];
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
    if (!ts_series_open(&r.series, train, arena))
        return;
    run->fault = TS_RUN_FINE;
    begin(&r);
    follow(&r);
    end(&r);
}
