/* response/rigid_start.c: when does a train that is cranked light, let its starter go, come to idle
 * or hang?
 */
#include "response/rigid_start.h"

#include "response/cvode_library.h"
#include "response/rigid_parts.h"

#include <math.h>
#include <string.h>

enum { STEPS_MOST = 200000, FIXED_ROOTS = 4 };
enum { ROOT_LIGHT_OFF, ROOT_CUT_OUT, ROOT_IDLE, ROOT_HANG };

const char *ts_start_fault_says(ts_start_fault fault)
{
    static const char *const says[] = {
        [TS_START_FINE] = "nothing is wrong",
        [TS_START_BAD_NUMBER] =
            "an inertia, a ratio, a torque curve or a speed is out of its range",
        [TS_START_NOT_FINITE] = "the equations gave no finite number",
        [TS_START_STUCK]      = "the steps became too small or too many",
        [TS_START_UNBALANCED] = "the energies do not add up to 1e-6",
        [TS_START_NO_MEMORY]  = "there is no memory",
    };
    return says[fault];
}

typedef struct starter_run {
    const ts_rigid_start *start;
    ts_cranking           c;
    ts_start_run         *run;
    size_t                size;  /* of the state */
    double                until; /* s, when it is given up */
    bool                 *with;  /* [spool] has come to its further speed */
    double               *y, *dy, *weights;
    int                  *found;
    double                kinetic_0, imbalance, sample_at;
    bool                  over;
    ts_cvode              solver;
} starter_run;

double ts_start_time_of(const ts_start_run *run, ts_start_happening what)
{
    for (size_t i = 0; i < run->event_count; i++)
        if (run->events[i].what == what)
            return run->events[i].t;
    return (double)NAN;
}

/* ---- what CVODE asks --------------------------------------------------------------------------
 */

static int slope(double t, N_Vector y, N_Vector dy, void *context)
{
    starter_run *r = context;

    (void)t;
    r->run->evaluations++;
    return ts_cranking_slope(&r->c, N_VGetArrayPointer(y), N_VGetArrayPointer(dy)) ? 0 : -1;
}

static uint32_t spool_of(const starter_run *r, uint32_t pad)
{
    return r->start->shafts[r->start->pads[pad].shaft].spool;
}

/* rad/s by which the shaft of a pad runs ahead of the starter's rotor. */
static double ahead(const starter_run *r, uint32_t pad, const double *y)
{
    const ts_start_shaft *shaft = &r->start->shafts[r->start->pads[pad].shaft];

    return shaft->ratio * y[shaft->spool] - y[r->start->spool_count + pad];
}

/* rad/s by which another spool is more than 1 % below its further speed, negative; 1: it is there.
 */
static double lags(const starter_run *r, uint32_t spool, const double *y)
{
    return r->with[spool] ? 1.0 : y[spool] - 0.99 * r->start->spools[spool].beyond;
}

/* What vanishes at an event; 1 where there can be none. */
static void roots_of(starter_run *r, const double *y, double *g)
{
    const ts_rigid_start *start = r->start;
    const double          w     = y[r->c.cranked];

    g[ROOT_LIGHT_OFF] = r->c.lit ? 1.0 : w - start->light_off;
    g[ROOT_CUT_OUT]   = r->c.cut ? 1.0 : w - start->cut_out;
    g[ROOT_IDLE]      = r->c.phase == TS_PHASE_STARTS  ? w - start->spools[r->c.cranked].idle
                        : r->c.phase == TS_PHASE_GAINS ? w - start->beyond
                                                       : 1.0;
    g[ROOT_HANG] = r->c.phase == TS_PHASE_STARTS ? r->c.alpha[r->c.cranked] - start->least : 1.0;
    for (uint32_t p = 0; p < start->pad_count; p++)
        g[FIXED_ROOTS + p] = !ts_start_has_clutch(&start->pads[p]) ? 1.0
                             : r->c.engaged[p]                     ? r->c.pad[p]
                                                                   : ahead(r, p, y);
    for (uint32_t k = 0; k < start->spool_count; k++)
        g[FIXED_ROOTS + start->pad_count + k] = k == r->c.cranked               ? 1.0
                                                : r->c.stands[k]                ? r->c.moves[k]
                                                : r->c.phase == TS_PHASE_STARTS ? y[k]
                                                                                : lags(r, k, y);
}

static int roots(double t, N_Vector y, double *g, void *context)
{
    starter_run *r = context;

    (void)t;
    if (!ts_cranking_solve(&r->c, N_VGetArrayPointer(y)))
        return -1;
    roots_of(r, N_VGetArrayPointer(y), g);
    return 0;
}

/* ---- room -------------------------------------------------------------------------------------
 */

static bool take_trace(const ts_rigid_start *start, ts_arena *arena, ts_start_trace *trace)
{
    const size_t n = start->samples;

    if (n == 0)
        return true;
    trace->t     = TS_TAKE(arena, double, n);
    trace->w     = TS_TAKE(arena, double, n * start->spool_count);
    trace->alpha = TS_TAKE(arena, double, n);
    trace->gas   = TS_TAKE(arena, double, n);
    trace->T     = TS_TAKE(arena, double, n * start->shaft_count);
    trace->pad   = TS_TAKE(arena, double, n * start->pad_count + 1);
    return trace->t != NULL && trace->w != NULL && trace->alpha != NULL && trace->gas != NULL &&
           trace->T != NULL && trace->pad != NULL;
}

static bool take_cranking(ts_cranking *c, const ts_rigid_start *start, ts_arena *arena)
{
    const size_t n = start->shaft_count + 1, p = start->pad_count + 1, k = start->spool_count + 1;

    c->engaged = TS_TAKE(arena, bool, p);
    c->pad     = TS_TAKE(arena, double, p);
    c->drive   = TS_TAKE(arena, double, p);
    c->stands  = TS_TAKE(arena, bool, k);
    c->drag    = TS_TAKE(arena, double, k);
    c->alpha   = TS_TAKE(arena, double, k);
    c->gas     = TS_TAKE(arena, double, k);
    c->moves   = TS_TAKE(arena, double, k);
    c->fixed   = TS_TAKE(arena, double, n);
    c->mass    = TS_TAKE(arena, double, n);
    c->T       = TS_TAKE(arena, double, n);
    c->slope   = TS_TAKE(arena, double, n);
    return c->engaged != NULL && c->pad != NULL && c->drive != NULL && c->stands != NULL &&
           c->drag != NULL && c->alpha != NULL && c->gas != NULL && c->moves != NULL &&
           c->fixed != NULL && c->mass != NULL && c->T != NULL && c->slope != NULL;
}

static bool take_room(starter_run *r, ts_arena *arena)
{
    const ts_rigid_start *start = r->start;

    r->size        = (size_t)start->spool_count + start->pad_count + TS_START_ENERGIES;
    r->y           = TS_TAKE(arena, double, r->size);
    r->dy          = TS_TAKE(arena, double, r->size);
    r->weights     = TS_TAKE(arena, double, r->size);
    r->found       = TS_TAKE(arena, int, r->size + FIXED_ROOTS);
    r->with        = TS_TAKE(arena, bool, start->spool_count + 1);
    r->run->w      = TS_TAKE(arena, double, start->spool_count + 1);
    r->run->events = TS_TAKE(arena, ts_start_event, TS_START_EVENTS);
    r->run->shafts = TS_TAKE(arena, ts_start_peak, start->shaft_count + 1);
    r->run->pads   = TS_TAKE(arena, ts_start_peak, start->pad_count + 1);
    return r->y != NULL && r->dy != NULL && r->weights != NULL && r->found != NULL &&
           r->with != NULL && r->run->w != NULL && r->run->events != NULL &&
           r->run->shafts != NULL && r->run->pads != NULL && take_cranking(&r->c, start, arena) &&
           take_trace(start, arena, &r->run->trace);
}

/* ---- what is kept of a step -------------------------------------------------------------------
 */

static void keep_peak(ts_start_peak *peak, double T, double t, double w)
{
    if (fabs(T) > fabs(peak->T))
        *peak = (ts_start_peak){T, t, w};
}

static void note_peaks(starter_run *r, double t)
{
    const ts_rigid_start *start = r->start;

    for (uint32_t s = 0; s < start->shaft_count; s++)
        keep_peak(&r->run->shafts[s], r->c.T[s], t, r->y[start->shafts[s].spool]);
    for (uint32_t p = 0; p < start->pad_count; p++)
        keep_peak(&r->run->pads[p], r->c.pad[p], t, r->y[spool_of(r, p)]);
}

static void note_sample(starter_run *r, double t, bool always)
{
    const ts_rigid_start *start = r->start;
    ts_start_trace       *trace = &r->run->trace;
    const size_t          i     = trace->count;

    if (i >= start->samples || (!always && t < r->sample_at))
        return;
    trace->t[i]     = t;
    trace->alpha[i] = r->c.alpha[r->c.cranked];
    trace->gas[i]   = r->c.gas[r->c.cranked];
    memcpy(&trace->w[i * start->spool_count], r->y, start->spool_count * sizeof *r->y);
    memcpy(&trace->T[i * start->shaft_count], r->c.T, start->shaft_count * sizeof *r->y);
    if (start->pad_count > 0)
        memcpy(&trace->pad[i * start->pad_count], r->c.pad, start->pad_count * sizeof *r->y);
    trace->count++;
    r->sample_at = t + (start->beyond > 0.0 ? 4.0 : 2.0) * start->until / (double)start->samples;
}

static void balance(starter_run *r)
{
    ts_start_energy *e   = &r->run->energy;
    const double    *sum = &r->y[r->start->spool_count + r->start->pad_count];

    e->kinetic   = ts_cranking_kinetic(&r->c, r->y) - r->kinetic_0;
    e->starters  = sum[TS_START_BY_STARTERS];
    e->gases     = sum[TS_START_BY_GASES];
    e->pads      = sum[TS_START_IN_PADS];
    e->oil       = sum[TS_START_IN_OIL];
    e->meshes    = sum[TS_START_IN_MESHES];
    e->scale     = fmax(e->scale, fmax(e->starters + fmax(e->gases, 0.0), e->kinetic));
    r->imbalance = fmax(r->imbalance,
                        fabs(e->starters + e->gases - e->pads - e->oil - e->meshes - e->kinetic));
    e->balance   = e->scale > 0.0 ? r->imbalance / e->scale : 0.0;
}

/* Torques and accelerations at y as it is now; what CVODE left belongs to a trial of its own. */
static bool settle(starter_run *r)
{
    if (ts_cranking_solve(&r->c, r->y))
        return true;
    r->run->fault = TS_START_NOT_FINITE;
    return false;
}

static bool note(starter_run *r, double t, bool always)
{
    if (!settle(r))
        return false;
    note_peaks(r, t);
    note_sample(r, t, always);
    balance(r);
    return true;
}

/* ---- events -----------------------------------------------------------------------------------
 */

static void keep(starter_run *r, ts_start_happening what, uint32_t of)
{
    if (r->run->event_count < TS_START_EVENTS)
        r->run->events[r->run->event_count++] =
            (ts_start_event){r->run->t, what, of, r->y[r->c.cranked]};
}

static void finish(starter_run *r, ts_start_outcome outcome)
{
    r->run->outcome = outcome;
    r->over         = true;
}

/* A clutch that would have to pull lets go; it holds again when its rotor has caught up. */
static bool turn_clutches(starter_run *r)
{
    for (uint32_t p = 0; p < r->start->pad_count; p++)
        if (ts_start_has_clutch(&r->start->pads[p]) && r->c.engaged[p] && r->c.pad[p] > 0.0) {
            r->c.engaged[p] = false;
            keep(r, TS_STARTS_LET_GO, p);
            if (!settle(r))
                return false;
        }
    return true;
}

static void take_pads(starter_run *r)
{
    for (uint32_t p = 0; p < r->start->pad_count; p++) {
        const int found = r->found[FIXED_ROOTS + p];
        if (!ts_start_has_clutch(&r->start->pads[p]) || found == 0)
            continue;
        if (r->c.engaged[p] && found > 0) {
            r->c.engaged[p] = false;
            keep(r, TS_STARTS_LET_GO, p);
        } else if (!r->c.engaged[p] && found < 0) {
            r->c.engaged[p] = true;
            r->y[r->start->spool_count + p] += ahead(r, p, r->y);
            keep(r, TS_STARTS_ENGAGE, p);
        }
    }
}

static void take_spools(starter_run *r)
{
    for (uint32_t k = 0; k < r->start->spool_count; k++) {
        const int found = r->found[FIXED_ROOTS + r->start->pad_count + k];
        if (k == r->c.cranked || found == 0)
            continue;
        if (r->c.stands[k] && found > 0) {
            r->c.stands[k] = false;
            keep(r, TS_STARTS_FOLLOW, k);
        } else if (!r->c.stands[k] && r->c.phase != TS_PHASE_STARTS) {
            r->with[k] = true;
            keep(r, TS_STARTS_WITH, k);
        } else if (!r->c.stands[k] && found < 0) {
            r->c.stands[k] = true;
            r->y[k]        = 0.0;
            keep(r, TS_STARTS_STAND, k);
        }
    }
}

/* The control takes over at idle, and holds what it has come to. */
static bool change_phase(starter_run *r, ts_start_phase phase)
{
    r->c.phase = phase;
    if (phase == TS_PHASE_GAINS) {
        r->until = r->run->t + r->start->until;
        for (uint32_t k = 0; k < r->start->spool_count; k++)
            r->with[k] = k != r->c.cranked && !r->c.stands[k] && lags(r, k, r->y) >= 0.0;
    }
    return settle(r) && CVodeSetStopTime(r->solver.cvode, r->until) == CV_SUCCESS;
}

/* Have all that turn come to their further speeds? */
static bool are_there(const starter_run *r)
{
    for (uint32_t k = 0; k < r->start->spool_count; k++)
        if (k != r->c.cranked && !r->with[k] &&
            !(r->c.stands[k] && !(r->start->spools[k].air > 0.0)))
            return false;
    return r->c.phase == TS_PHASE_HOLDS;
}

static bool reach_speed(starter_run *r)
{
    const bool idles = r->c.phase == TS_PHASE_STARTS;

    keep(r, idles ? TS_STARTS_IDLE : TS_STARTS_BEYOND, r->c.cranked);
    if (idles && !(r->start->beyond > 0.0)) {
        finish(r, TS_START_IDLE);
        return true;
    }
    return change_phase(r, idles ? TS_PHASE_GAINS : TS_PHASE_HOLDS);
}

static bool take_events(starter_run *r)
{
    if (CVodeGetRootInfo(r->solver.cvode, r->found) != CV_SUCCESS) {
        r->run->fault = TS_START_STUCK;
        return false;
    }
    if (r->found[ROOT_LIGHT_OFF] > 0 && !r->c.lit) {
        r->c.lit = true;
        keep(r, TS_STARTS_LIGHT_OFF, r->c.cranked);
    }
    if (r->found[ROOT_CUT_OUT] > 0 && !r->c.cut) {
        r->c.cut = true;
        keep(r, TS_STARTS_CUT_OUT, r->c.cranked);
    }
    take_pads(r);
    take_spools(r);
    if (!settle(r) || !turn_clutches(r))
        return false;
    if (r->found[ROOT_IDLE] > 0) {
        if (!reach_speed(r))
            return false;
    } else if (r->c.phase == TS_PHASE_STARTS &&
               (r->c.alpha[r->c.cranked] <= r->start->least || r->found[ROOT_HANG] < 0)) {
        keep(r, TS_STARTS_HANG, r->c.cranked);
        finish(r, r->c.lit ? TS_START_HUNG : TS_START_NO_LIGHT);
    }
    if (are_there(r))
        finish(r, TS_START_BEYOND);
    return CVodeReInit(r->solver.cvode, r->run->t, r->solver.state) == CV_SUCCESS;
}

/* ---- the run ----------------------------------------------------------------------------------
 */

/* At rest; another spool's own air is what lets it turn at its idle when the cranked one does. */
static bool begin(starter_run *r)
{
    const ts_rigid_start *start = r->start;

    for (size_t i = 0; i < r->size; i++)
        r->y[i] = 0.0;
    for (uint32_t p = 0; p < start->pad_count; p++)
        r->c.engaged[p] = start->pads[p].starter;
    for (uint32_t k = 0; k < start->spool_count; k++) {
        const ts_start_spool *one = &start->spools[k];
        r->c.stands[k]            = k != r->c.cranked;
        r->c.alpha[k]             = 0.0;
        if (k != r->c.cranked)
            r->c.drag[k] = fmax(0.0, one->air - ts_cranking_resists(&r->c, k, one->idle, r->y));
    }
    if (!settle(r) || !turn_clutches(r))
        return false;
    for (uint32_t k = 0; k < start->spool_count; k++)
        if (k != r->c.cranked && start->spools[k].air > 0.0 && r->c.moves[k] >= 0.0) {
            r->c.stands[k] = false; /* nothing keeps it at rest */
            keep(r, TS_STARTS_FOLLOW, k);
        }
    r->kinetic_0 = ts_cranking_kinetic(&r->c, r->y);
    if (!(r->c.alpha[r->c.cranked] > 0.0))
        finish(r, TS_START_NO_TURN);
    else if (r->c.alpha[r->c.cranked] <= start->least)
        finish(r, TS_START_NO_LIGHT);
    return true;
}

static void set_tolerances(starter_run *r)
{
    const ts_rigid_start *start = r->start;
    const double          w     = start->spools[r->c.cranked].idle;
    double                J     = 0.0;

    for (uint32_t s = 0; s < start->shaft_count; s++)
        if (start->shafts[s].spool == r->c.cranked)
            J += start->shafts[s].J * start->shafts[s].ratio * start->shafts[s].ratio;
    for (uint32_t k = 0; k < start->spool_count; k++)
        r->weights[k] = 1e-3 * start->tolerance * start->spools[k].idle;
    for (uint32_t p = 0; p < start->pad_count; p++)
        r->weights[start->spool_count + p] = 1e-3 * start->tolerance * w;
    for (size_t i = 0; i < TS_START_ENERGIES; i++)
        r->weights[start->spool_count + start->pad_count + i] = start->tolerance * J * w * w / 2.0;
}

static void follow(starter_run *r)
{
    ts_start_run *run = r->run;

    while (!r->over && run->t < r->until) {
        double    t    = run->t;
        const int code = CVode(r->solver.cvode, r->until, r->solver.state, &t, CV_ONE_STEP);
        if (code < 0) {
            run->fault = code == CV_RHSFUNC_FAIL || code == CV_RTFUNC_FAIL ? TS_START_NOT_FINITE
                                                                           : TS_START_STUCK;
            return;
        }
        run->t = t;
        if (!note(r, t, code == CV_ROOT_RETURN))
            return;
        if (code == CV_ROOT_RETURN && (!take_events(r) || !note(r, t, true)))
            return;
        if (++run->steps > STEPS_MOST) {
            run->fault = TS_START_STUCK;
            return;
        }
    }
    if (!r->over)
        finish(r, r->c.lit ? TS_START_TIME_UP : TS_START_NO_LIGHT);
    (void)note(r, run->t, true);
}

static void end(starter_run *r)
{
    ts_start_run *run = r->run;

    memcpy(run->w, r->y, r->start->spool_count * sizeof *r->y);
    run->alpha = r->c.alpha[r->c.cranked];
    run->lit   = r->c.lit;
    if (run->fault == TS_START_FINE && !(run->energy.balance <= TS_START_BALANCE_MOST))
        run->fault = TS_START_UNBALANCED;
    if (run->fault != TS_START_FINE)
        run->outcome = TS_START_FAULT;
}

static bool open(starter_run *r)
{
    const ts_cvode_question question = {
        .size       = r->size,
        .y          = r->y,
        .weights    = r->weights,
        .tolerance  = r->start->tolerance,
        .until      = r->start->until,
        .root_count = (int)(FIXED_ROOTS + r->start->pad_count + r->start->spool_count),
        .slope      = slope,
        .roots      = roots,
        .context    = r};

    return ts_cvode_open(&r->solver, &question);
}

void ts_rigid_start_run(const ts_rigid_start *start, ts_arena *arena, ts_start_run *run)
{
    starter_run r = {.start = start, .run = run, .c = {.start = start}, .until = start->until};

    *run = (ts_start_run){.outcome = TS_START_FAULT, .fault = TS_START_BAD_NUMBER};
    if (!ts_rigid_start_is_sound(start, &r.c.cranked, &run->at))
        return;
    run->at    = 0;
    run->fault = TS_START_NO_MEMORY;
    if (!take_room(&r, arena))
        return;
    run->fault = TS_START_FINE;
    if (begin(&r) && note(&r, 0.0, true) && !r.over) {
        set_tolerances(&r);
        if (open(&r))
            follow(&r);
        else
            run->fault = TS_START_NO_MEMORY;
        ts_cvode_close(&r.solver);
    }
    end(&r);
}
