/* effect/outcome.c: what goes on, what stops, after some parts have failed? */
#include "effect/effect_parts.h"

#include <math.h>
#include <string.h>

ts_status ts_outcome_take(const ts_train *train, ts_arena *arena, ts_outcome *out)
{
    *out = (ts_outcome){.shafts = TS_TAKE(arena, ts_part_goes, (size_t)train->shaft_count + 1),
                        .pads   = TS_TAKE(arena, ts_part_goes, (size_t)train->pad_count + 1)};
    return out->shafts == NULL || out->pads == NULL ? TS_NO_MEMORY : TS_OK;
}

/* What is being worked out. */
typedef struct scene {
    const ts_effects *effects;
    const ts_train   *train;
    const ts_failure *failures;
    size_t            count;
    ts_outcome       *out;
} scene;

static bool has(const scene *s, ts_failure_mode mode, uint32_t at)
{
    for (size_t i = 0; i < s->count; i++)
        if (s->failures[i].mode == mode && s->failures[i].at == at)
            return true;
    return false;
}

/* ---- what the failures themselves do --------------------------------------------------------- */

static void stop(ts_part_goes *part, ts_goes goes, uint32_t broken)
{
    if (goes > part->goes)
        *part = (ts_part_goes){goes, broken};
}

static void fail_shaft(const scene *s, uint32_t i)
{
    const ts_failure *failure = &s->failures[i];

    switch (failure->mode) {
    case TS_FAILS_TEETH:
        stop(&s->out->shafts[s->train->meshes[failure->at].driven_shaft], TS_STOPS, i);
        s->out->chips = true;
        break;
    case TS_FAILS_JET:
        stop(&s->out->shafts[s->train->meshes[failure->at].driven_shaft], TS_IN_DOUBT, i);
        s->out->chips = true;
        break;
    case TS_FAILS_BEARING:
    case TS_FAILS_SHAFT_JAM:
        s->out->chips = true;
        if (failure->mode == TS_FAILS_BEARING)
            stop(&s->out->shafts[failure->at], TS_STOPS, i);
        break;
    case TS_FAILS_SHEAR:
    case TS_FAILS_TUBE_SPLINE:
    case TS_FAILS_TUBE_NECK:
        stop(&s->out->shafts[failure->at], TS_STOPS, i);
        break;
    default:
        break;
    }
}

static void fail_pad(const scene *s, uint32_t i)
{
    const ts_failure *failure = &s->failures[i];
    const ts_pad     *pad     = &s->train->pads[failure->at];

    switch (failure->mode) {
    case TS_FAILS_SEIZURE:
    case TS_FAILS_NECK:
    case TS_FAILS_SPLINE:
    case TS_FAILS_DISCONNECT:
    case TS_FAILS_CLUTCH_SLIPS:
        stop(&s->out->pads[failure->at], TS_STOPS, i);
        break;
    case TS_FAILS_LEAK:
        s->out->oil_lost = true;
        break;
    case TS_FAILS_COVER: /* a place for hand turning seals itself */
        s->out->oil_lost = s->out->oil_lost || pad->use == TS_PAD_COVER;
        break;
    default:
        break;
    }
}

/* ---- the tree -------------------------------------------------------------------------------- */

static void pass_on(const scene *s)
{
    for (uint32_t k = 0; k < s->train->shaft_count; k++) {
        const uint32_t m = s->train->shafts[k].mesh;
        if (m == TS_NOWHERE)
            continue;
        const ts_part_goes driver = s->out->shafts[s->train->meshes[m].driver_shaft];
        stop(&s->out->shafts[k], driver.goes, driver.broken);
    }
}

static void pass_to_pads(const scene *s)
{
    for (uint32_t p = 0; p < s->train->pad_count; p++) {
        const ts_part_goes shaft = s->out->shafts[s->train->pads[p].shaft];
        stop(&s->out->pads[p], shaft.goes, shaft.broken);
    }
}

/* ---- jams ------------------------------------------------------------------------------------ */

static void break_for(const scene *s, uint32_t cause, uint32_t pad, const ts_held *held)
{
    const ts_suspect who    = ts_suspect_of(s->effects, held);
    const uint32_t   number = TS_FAILURES_AT_ONCE + s->out->breakage_count;

    s->out->breakages[s->out->breakage_count++] =
        (ts_breakage){.cause  = cause,
                      .pad    = who.kind == TS_SUSPECT_PAD ? pad : TS_NOWHERE,
                      .part   = who.part,
                      .shaft  = who.shaft,
                      .meant  = who.sure && who.kind != TS_SUSPECT_PART,
                      .T      = who.high,
                      .T_next = who.next};
    if (who.sure && who.kind == TS_SUSPECT_PAD)
        return;
    if (who.shaft != TS_NOWHERE)
        stop(&s->out->shafts[who.shaft], TS_STOPS, number);
    if (pad == TS_NOWHERE)
        stop(&s->out->shafts[held->shaft], TS_STOPS, number);
    pass_on(s);
    if (who.sure && who.kind == TS_SUSPECT_TUBE)
        return;
    s->out->chips = true;
    for (uint32_t k = 0; k < s->train->shaft_count; k++)
        if (s->train->shafts[k].kind != TS_SHAFT_SPOOL &&
            s->train->shafts[k].drive == s->train->shafts[held->shaft].drive)
            stop(&s->out->shafts[k], TS_IN_DOUBT, number);
}

/* Is there a spool that still turns it? */
static bool is_driven(const scene *s, uint32_t k)
{
    return s->out->shafts[k].goes != TS_STOPS;
}

static void hold_shaft(const scene *s, uint32_t i)
{
    const uint32_t k    = s->failures[i].at;
    const ts_held  held = {k, TS_NOWHERE, has(s, TS_FAILS_TUBE_HOLDS, ts_effect_tube(s->train, k))};

    if (is_driven(s, k))
        break_for(s, i, TS_NOWHERE, &held);
}

/* An overrunning clutch lets a starter go that has seized, unless it is stuck in. */
static void hold_pad(const scene *s, uint32_t i)
{
    const uint32_t p   = s->failures[i].at;
    const ts_pad  *pad = &s->train->pads[p];
    const bool     off =
        has(s, TS_FAILS_NECK, p) || has(s, TS_FAILS_SPLINE, p) || has(s, TS_FAILS_DISCONNECT, p) ||
        has(s, TS_FAILS_CLUTCH_SLIPS, p) ||
        (ts_effect_has_clutch(s->effects->drive, pad) && !has(s, TS_FAILS_CLUTCH_IN, p));
    const bool    holds = has(s, TS_FAILS_NECK_HOLDS, p);
    const ts_held held  = {pad->shaft, holds ? TS_NOWHERE : s->effects->select->necks->of_pad[p],
                           has(s, TS_FAILS_TUBE_HOLDS, ts_effect_tube(s->train, pad->shaft))};

    if (!off && is_driven(s, pad->shaft))
        break_for(s, i, p, &held);
}

/* The nearest to the spool first; what has stopped for it jams nothing further out. */
static void hold_all(const scene *s)
{
    for (uint32_t k = 0; k < s->train->shaft_count; k++)
        for (uint32_t i = 0; i < s->count; i++) {
            const ts_failure *failure = &s->failures[i];
            if (failure->mode == TS_FAILS_SHAFT_JAM && failure->at == k)
                hold_shaft(s, i);
            else if (failure->mode == TS_FAILS_SEIZURE && s->train->pads[failure->at].shaft == k)
                hold_pad(s, i);
        }
}

/* ---- the start ------------------------------------------------------------------------------- */

static bool engine_runs(const scene *s)
{
    for (uint32_t p = 0; p < s->train->pad_count; p++) {
        const int32_t a = s->train->pads[p].accessory;
        if (a >= 0 && s->effects->drive->accessories[a].purpose.value == TS_FOR_ENGINE &&
            s->out->pads[p].goes != TS_GOES_ON)
            return false;
    }
    return true;
}

static bool starter_reaches(const scene *s)
{
    for (uint32_t p = 0; p < s->train->pad_count; p++)
        if (ts_effect_is_starter(s->effects->drive, &s->train->pads[p]) &&
            s->out->pads[p].goes == TS_GOES_ON)
            return true;
    return false;
}

static void look_at_clutches(const scene *s)
{
    for (size_t i = 0; i < s->count; i++) {
        const uint32_t p = s->failures[i].at;
        if (s->failures[i].mode != TS_FAILS_CLUTCH_IN || s->out->pads[p].goes == TS_STOPS)
            continue;
        s->out->stuck_in  = true;
        s->out->stuck_pad = p;
    }
}

void ts_outcome_solve(const ts_effects *effects, const ts_failure *failures, size_t count,
                      ts_outcome *out)
{
    const scene s = {effects, effects->motion->train, failures, count, out};

    out->breakage_count = 0;
    out->stuck_in = out->oil_lost = out->chips = false;
    out->stuck_pad                             = TS_NOWHERE;
    for (uint32_t k = 0; k < s.train->shaft_count; k++)
        out->shafts[k] = (ts_part_goes){TS_GOES_ON, TS_NOWHERE};
    for (uint32_t p = 0; p < s.train->pad_count; p++)
        out->pads[p] = (ts_part_goes){TS_GOES_ON, TS_NOWHERE};
    for (uint32_t i = 0; i < count; i++) {
        fail_shaft(&s, i);
        fail_pad(&s, i);
    }
    pass_on(&s);
    hold_all(&s);
    pass_to_pads(&s);
    look_at_clutches(&s);
    out->start_possible = engine_runs(&s) && starter_reaches(&s);
}

/* ---- effects --------------------------------------------------------------------------------- */

static ts_goes sure_if(bool happens)
{
    return happens ? TS_STOPS : TS_GOES_ON;
}

/* The worst of all that the engine needs; the best of all that serve the aircraft alike. */
static ts_goes of_pads(const ts_effects *effects, const ts_effect *effect,
                       const ts_outcome *outcome)
{
    const ts_train *train  = effects->motion->train;
    const bool      engine = effect->kind == TS_EFFECT_ENGINE;
    ts_goes         found  = engine ? TS_GOES_ON : TS_STOPS;

    for (uint32_t p = 0; p < train->pad_count; p++) {
        const int32_t a    = train->pads[p].accessory;
        const ts_goes goes = outcome->pads[p].goes;
        if (a < 0)
            continue;
        const ts_accessory *one = &effects->drive->accessories[a];
        if (engine && one->purpose.value == TS_FOR_ENGINE && goes > found)
            found = goes;
        if (!engine && one->purpose.value == TS_FOR_AIRCRAFT && goes < found &&
            strcmp(ts_effect_service(one), effect->service) == 0)
            found = goes;
    }
    return found;
}

ts_goes ts_effect_of(const ts_effects *effects, const ts_effect *effect, const ts_outcome *outcome)
{
    switch (effect->kind) {
    case TS_EFFECT_START:
        return sure_if(!outcome->start_possible);
    case TS_EFFECT_OIL:
        return sure_if(outcome->oil_lost);
    case TS_EFFECT_STARTER:
        return sure_if(outcome->stuck_in);
    default:
        return of_pads(effects, effect, outcome);
    }
}
