/* search/neck_diameter.c: which diameters, in steps, balance the chances of designed necks? */
#include "search/neck_diameter.h"

#include "rating/line_capacity.h"

#include <math.h>

#define WALK_MOST 20000 /* steps from the balance of a neck in proportion */

typedef struct sizing {
    const ts_neck_rig *rig;
    ts_neck_plan      *plan;
    ts_neck           *necks; /* [item] of the necks, with the diameters that are tried */
    double             step;
    double             P_most; /* of `neck chance`; NaN: not known                     */
} sizing;

/* Whole nanometres, so that 9.45 mm is the double that 9.45 mm reads as. */
static double diameter(const sizing *s, long steps)
{
    return round((double)steps * s->step * 1e9) / 1e9;
}

/* ---- one trial ------------------------------------------------------------------------------- */

static void put_diameter(const sizing *s, const ts_guard *guard, double d)
{
    s->necks[guard->neck].diameter.value = d;
    ts_necks_solve(s->rig->drive, s->rig->necks, NULL);
}

/* False when it cannot be rated there. */
static bool rate(const sizing *s, const ts_guard *guard, double d, ts_neck_at *out)
{
    ts_neck_life life;

    put_diameter(s, guard, d);
    ts_neck_life_of(s->rig->select, guard, &life, NULL);
    s->plan->trials++;
    *out = (ts_neck_at){d, s->rig->necks->items[guard->neck].band, life.chance};
    return life.missing == NULL;
}

/* Thinner than its bore, or no thinner than the shaft beside it, is no neck. */
static bool may_be(const sizing *s, const ts_guard *guard, double d)
{
    const ts_neck *neck = &s->necks[guard->neck];

    return d - neck->tolerance.value > neck->bore.value &&
           !(ts_measure_known(neck->shank) && d >= neck->shank.value);
}

static double worse(const ts_neck_at *at)
{
    return fmax(at->chance.early, at->chance.late);
}

/* ---- one neck -------------------------------------------------------------------------------- */

typedef enum found { FOUND_NOTHING, FOUND_END, FOUND_BOTH } found;

/* The step of least and the step of greatest diameter with the balance between them, both[0] at
 * least as likely to break too early.  FOUND_END: the shaft beside it, its bore, or what is known
 * of its notch, ends before; then both[0] is the last step towards the balance. */
static found bracket(const sizing *s, const ts_guard *guard, double from, ts_neck_at both[2])
{
    long n    = lround(from / s->step);
    bool seen = false, early = false;

    for (int i = 0; i < WALK_MOST && n > 0; i++) {
        ts_neck_at now;
        if (!may_be(s, guard, diameter(s, n)) || !rate(s, guard, diameter(s, n), &now))
            break;
        const bool is_early = now.chance.early >= now.chance.late;
        if (seen && is_early != early) {
            both[1] = is_early ? both[0] : now;
            both[0] = is_early ? now : both[0];
            return FOUND_BOTH;
        }
        both[0] = now;
        early   = is_early;
        seen    = true;
        n += early ? 1 : -1;
    }
    return seen ? FOUND_END : FOUND_NOTHING;
}

static bool keeps_load(const ts_neck_choice *choice, const ts_neck_at *at)
{
    return isnan(choice->T_least) || at->band.low >= choice->T_least;
}

static bool keeps_way(const ts_neck_choice *choice, const ts_neck_at *at)
{
    return isnan(choice->T_most) || at->band.high <= choice->T_most;
}

/* From the balance towards what keeps the hard rule that it breaks; false: it then breaks the
 * other. */
static bool yield_to_rules(const sizing *s, const ts_guard *guard, ts_neck_choice *choice)
{
    const bool thicker = !keeps_load(choice, &choice->after);
    ts_neck_at at      = choice->after;
    long       n       = lround(at.d / s->step);

    choice->need = thicker ? TS_NECK_BY_LOAD : TS_NECK_BY_WAY;
    for (int i = 0; i < WALK_MOST; i++) {
        if (keeps_load(choice, &at) && keeps_way(choice, &at)) {
            choice->after = at;
            return true;
        }
        if (!(thicker ? keeps_way(choice, &at) : keeps_load(choice, &at)))
            return false;
        n += thicker ? 1 : -1;
        if (n < 1 || !may_be(s, guard, diameter(s, n)) || !rate(s, guard, diameter(s, n), &at))
            return false;
    }
    return false;
}

/* The diameter nearest to the balance, moved to where it keeps the hard rules. */
static void settle(const sizing *s, const ts_guard *guard, const ts_neck_at *nearest, bool balanced,
                   ts_neck_choice *choice)
{
    choice->after = *nearest;
    choice->need  = balanced ? TS_NECK_BALANCED : TS_NECK_BY_SHAPE;
    if (!keeps_load(choice, nearest) || !keeps_way(choice, nearest))
        if (!yield_to_rules(s, guard, choice))
            choice->need = TS_NECK_NONE;
    if (worse(&choice->after) > s->P_most)
        choice->need = TS_NECK_NONE;
}

static void choose(const sizing *s, const ts_guard *guard, ts_neck_choice *choice)
{
    ts_neck_life life;
    ts_neck_at   both[2];

    ts_neck_life_of(s->rig->select, guard, &life, NULL);
    choice->why = life.missing;
    if (life.missing != NULL)
        return;
    choice->balance = ts_neck_life_balance(&life);
    choice->T_least = s->rig->select->f * guard->legit.T;
    choice->T_most  = guard->once.T / s->rig->select->f;
    (void)rate(s, guard, life.make.d_0, &choice->before);
    s->plan->sized++;
    choice->after = choice->before;
    choice->need  = TS_NECK_NONE;
    /* The balance of a neck in proportion is near; where it cannot be, from where it is. */
    found both_ends = FOUND_NOTHING;
    if (!isnan(choice->balance))
        both_ends = bracket(s, guard, choice->balance, both);
    if (both_ends == FOUND_NOTHING)
        both_ends = bracket(s, guard, choice->before.d, both);
    if (both_ends == FOUND_BOTH && worse(&both[1]) < worse(&both[0]))
        both[0] = both[1];
    if (both_ends != FOUND_NOTHING)
        settle(s, guard, &both[0], both_ends == FOUND_BOTH, choice);
    put_diameter(s, guard, choice->after.d);
}

/* ---- all ------------------------------------------------------------------------------------- */

static void solve_walls(const sizing *s)
{
    ts_select_gather(s->rig->select, NULL);
    ts_lines_capacities(s->rig->lines, &s->rig->select->parts, NULL);
    ts_splines_capacities(s->rig->drive, s->rig->splines, &s->rig->select->parts, NULL);
    ts_select_solve(s->rig->select, NULL);
}

static void choose_all(const sizing *s, bool in_towers)
{
    for (size_t i = 0; i < s->plan->count; i++) {
        const ts_guard *guard = &s->rig->select->guards[s->plan->choices[i].guard];

        if ((guard->pad == TS_NOWHERE) == in_towers)
            choose(s, guard, &s->plan->choices[i]);
    }
    solve_walls(s);
}

static void begin(const sizing *s)
{
    for (uint32_t i = 0; i < s->rig->necks->count; i++) {
        s->necks[i]                  = *s->rig->necks->items[i].neck;
        s->rig->necks->items[i].neck = &s->necks[i];
    }
    for (uint32_t g = 0; g < s->rig->select->count; g++)
        if (s->rig->select->guards[g].neck != TS_NOWHERE)
            s->plan->choices[s->plan->count++] = (ts_neck_choice){
                .guard = g, .T_least = (double)NAN, .T_most = (double)NAN, .balance = (double)NAN};
}

ts_status ts_find_neck_diameters(const ts_neck_rig *rig, double step, ts_arena *arena,
                                 ts_neck_plan *plan)
{
    const ts_measure limit = rig->drive->limits.neck_chance;
    const sizing     s     = {.rig    = rig,
                              .plan   = plan,
                              .necks  = TS_TAKE(arena, ts_neck, (size_t)rig->necks->count + 1),
                              .step   = step,
                              .P_most = ts_measure_known(limit) ? limit.value : (double)NAN};

    *plan =
        (ts_neck_plan){.choices = TS_TAKE(arena, ts_neck_choice, (size_t)rig->select->count + 1)};
    if (s.necks == NULL || plan->choices == NULL)
        return TS_NO_MEMORY;
    begin(&s);
    choose_all(&s, true);
    choose_all(&s, false);
    plan->fits = true;
    for (size_t i = 0; i < plan->count; i++)
        plan->fits = plan->fits && plan->choices[i].need != TS_NECK_NONE;
    return TS_OK;
}
