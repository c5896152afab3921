/* rating/selectivity.c: how much torque at a pad does everything between it and its spool
 * bear?
 */
#include "rating/selectivity_parts.h"

#include <math.h>

#define WALK_MOST 512 /* parts of one way that are walked one by one */

/* ---- memory ---------------------------------------------------------------------------------- */

static bool take_scratch(const ts_train *train, size_t parts, size_t guards, ts_arena *arena,
                         ts_select_scratch *s)
{
    const size_t all = (size_t)train->shaft_count + 1;

    s->ratio     = TS_TAKE(arena, double, all);
    s->keep      = TS_TAKE(arena, double, all);
    s->first     = TS_TAKE(arena, uint32_t, all);
    s->next      = TS_TAKE(arena, uint32_t, parts);
    s->least     = TS_TAKE(arena, double, all);
    s->least_at  = TS_TAKE(arena, uint32_t, all);
    s->steady    = TS_TAKE(arena, double, all);
    s->steady_at = TS_TAKE(arena, uint32_t, all);
    s->rest      = TS_TAKE(arena, double, all);
    s->rest_at   = TS_TAKE(arena, uint32_t, all);
    s->input     = TS_TAKE(arena, uint32_t, all);
    s->own       = TS_TAKE(arena, uint32_t, (size_t)train->pad_count + 1);
    s->lasting   = TS_TAKE(arena, double, parts);
    s->walls     = TS_TAKE(arena, ts_wall, guards);
    return s->ratio != NULL && s->keep != NULL && s->first != NULL && s->next != NULL &&
           s->least != NULL && s->least_at != NULL && s->steady != NULL && s->steady_at != NULL &&
           s->rest != NULL && s->rest_at != NULL && s->input != NULL && s->own != NULL &&
           s->lasting != NULL && s->walls != NULL;
}

static void list_guards(const ts_train *train, const ts_necks *necks, ts_select *out)
{
    for (uint32_t p = 0; p < train->pad_count; p++) {
        const bool used = train->pads[p].accessory >= 0;

        out->of_pad[p] = used ? out->count : TS_NOWHERE;
        if (used)
            out->guards[out->count++] =
                (ts_guard){.pad = p, .shaft = train->pads[p].shaft, .neck = necks->of_pad[p]};
    }
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const bool used = necks->of_shaft[s] != TS_NOWHERE;

        out->of_shaft[s] = used ? out->count : TS_NOWHERE;
        if (used)
            out->guards[out->count++] =
                (ts_guard){.pad = TS_NOWHERE, .shaft = s, .neck = necks->of_shaft[s]};
    }
}

ts_status ts_select_prepare(const ts_drive *drive, const ts_teeth *teeth, const ts_necks *necks,
                            size_t more, ts_arena *arena, ts_select *out)
{
    const ts_train *train  = teeth->motion->train;
    const size_t    guards = (size_t)train->pad_count + drive->drive_count + 1;
    const size_t    parts  = 2 * (size_t)train->mesh_count + drive->drive_count + more + 1;

    *out             = (ts_select){.drive = drive, .teeth = teeth, .necks = necks};
    out->scratch     = TS_TAKE(arena, ts_select_scratch, 1);
    out->parts.items = TS_TAKE(arena, ts_part_capacity, parts);
    out->parts.room  = parts;
    out->teeth_once  = TS_TAKE(arena, ts_tooth_capacity, (size_t)train->mesh_count + 1);
    out->guards      = TS_TAKE(arena, ts_guard, guards);
    out->of_pad      = TS_TAKE(arena, uint32_t, (size_t)train->pad_count + 1);
    out->of_shaft    = TS_TAKE(arena, uint32_t, (size_t)train->shaft_count + 1);
    if (out->scratch == NULL || out->parts.items == NULL || out->teeth_once == NULL ||
        out->guards == NULL || out->of_pad == NULL || out->of_shaft == NULL ||
        !take_scratch(train, parts, guards, arena, out->scratch))
        return TS_NO_MEMORY;
    list_guards(train, necks, out);
    return TS_OK;
}

/* ---- parts that stand here --------------------------------------------------------------------
 */

static void gather_teeth(ts_select *select, uint32_t m, ts_workings *workings)
{
    static const ts_part_kind kinds[2] = {
        [TS_RATED_CONTACT] = TS_PART_FLANK, [TS_RATED_BENDING] = TS_PART_ROOT};
    static const char *const names[2] = {
        [TS_RATED_CONTACT] = "T_flank", [TS_RATED_BENDING] = "T_root"};
    const ts_train    *train = select->teeth->motion->train;
    const ts_mesh     *mesh  = &train->meshes[m];
    ts_tooth_capacity *once  = &select->teeth_once[m];

    *once = ts_tooth_capacity_of(select->teeth, m, workings);
    for (int s = TS_RATED_CONTACT; s <= TS_RATED_BENDING; s++) {
        const uint32_t         whose = once->gear[s] == 0 ? mesh->driver_shaft : mesh->driven_shaft;
        const ts_part_capacity part  = {.kind    = kinds[s],
                                        .shaft   = TS_NOWHERE,
                                        .mesh    = m,
                                        .T       = once->T[s],
                                        .node    = select->teeth->strength[m].subject,
                                        .symbol  = names[s],
                                        .what    = train->shafts[whose].name,
                                        .missing = once->missing};
        (void)ts_part_capacity_add(&select->parts, &part);
    }
}

/* A neck further in must not break for what a pad does. */
static void gather_neck(ts_select *select, const ts_drive_neck *neck)
{
    const ts_part_capacity part = {.kind    = TS_PART_NECK,
                                   .shaft   = neck->shaft,
                                   .mesh    = TS_NOWHERE,
                                   .T       = neck->band.low,
                                   .node    = neck->neck->node,
                                   .symbol  = "T_break_least",
                                   .what    = neck->name,
                                   .missing = neck->missing};
    (void)ts_part_capacity_add(&select->parts, &part);
}

void ts_select_gather(ts_select *select, ts_workings *workings)
{
    select->parts.count = 0;
    for (uint32_t m = 0; m < select->teeth->motion->train->mesh_count; m++)
        gather_teeth(select, m, workings);
    for (uint32_t n = 0; n < select->necks->count; n++)
        if (select->necks->items[n].pad == TS_NOWHERE)
            gather_neck(select, &select->necks->items[n]);
}

/* ---- the train --------------------------------------------------------------------------------
 */

static bool is_box_input(const ts_train *train, uint32_t s)
{
    return train->shafts[s].kind == TS_SHAFT_BOX &&
           train->meshes[train->shafts[s].mesh].kind == TS_MESH_BEVEL;
}

static void follow_train(ts_select *select)
{
    ts_select_scratch *scratch = select->scratch;
    const ts_train    *train   = select->teeth->motion->train;

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const uint32_t mesh = train->shafts[s].mesh;

        scratch->ratio[s] = ts_rational_value(select->teeth->motion->shafts[s].ratio);
        scratch->keep[s]  = 1.0;
        scratch->input[s] = s;
        if (mesh == TS_NOWHERE)
            continue;
        const uint32_t driver = train->meshes[mesh].driver_shaft;
        const double   loss =
            ts_measure_known(train->meshes[mesh].loss) ? train->meshes[mesh].loss.value : 0.0;

        scratch->keep[s] = scratch->keep[driver] * (1.0 - loss);
        if (is_box_input(train, s))
            scratch->input[driver] = s;
        else if (train->shafts[s].kind == TS_SHAFT_BOX)
            scratch->input[s] = scratch->input[driver];
    }
}

static void list_by_shaft(ts_select *select)
{
    ts_select_scratch *scratch = select->scratch;
    const ts_train    *train   = select->teeth->motion->train;

    for (uint32_t s = 0; s < train->shaft_count; s++)
        scratch->first[s] = TS_NOWHERE;
    for (uint32_t p = 0; p < train->pad_count; p++)
        scratch->own[p] = TS_NOWHERE;
    for (size_t i = select->parts.count; i-- > 0;) {
        const ts_part_capacity *part = &select->parts.items[i];
        uint32_t               *first =
            part->of_pad ? &scratch->own[part->pad] : &scratch->first[ts_part_shaft(train, part)];

        scratch->next[i] = *first;
        *first           = (uint32_t)i;
    }
}

/* ---- walls ------------------------------------------------------------------------------------
 */

/* The least that the parts of every shaft bear; what is not known stands in nobody's way. */
static void find_least(ts_select *select, const double *bears)
{
    ts_select_scratch *scratch = select->scratch;

    for (uint32_t s = 0; s < select->teeth->motion->train->shaft_count; s++) {
        scratch->least[s]    = INFINITY;
        scratch->least_at[s] = TS_NOWHERE;
        for (uint32_t i = scratch->first[s]; i != TS_NOWHERE; i = scratch->next[i]) {
            const double T = bears != NULL ? bears[i] : select->parts.items[i].T;

            if (T < scratch->least[s]) {
                scratch->least[s]    = T;
                scratch->least_at[s] = i;
            }
        }
    }
}

/* One way from the spools outwards: at each shaft the smaller of what its own parts leave and what
 * comes from further in.  `taken` is what passes each shaft; NULL: nothing. */
static void descend(const ts_select *select, const double *taken, double *wall, uint32_t *at)
{
    const ts_select_scratch *scratch = select->scratch;
    const ts_train          *train   = select->teeth->motion->train;

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const uint32_t mesh = train->shafts[s].mesh;

        wall[s] = scratch->least[s] - (taken != NULL && isfinite(taken[s]) ? taken[s] : 0.0);
        at[s]   = scratch->least_at[s];
        if (mesh == TS_NOWHERE)
            continue;
        const uint32_t d = train->meshes[mesh].driver_shaft;
        const double   g =
            scratch->ratio[s] / scratch->ratio[d] * scratch->keep[d] / scratch->keep[s];

        if (wall[d] / g < wall[s]) {
            wall[s] = wall[d] / g;
            at[s]   = at[d];
        }
    }
}

static void take_wall(ts_wall *wall, double T, uint32_t at)
{
    if (T < wall->T) {
        wall->T    = T;
        wall->part = at;
    }
}

/* The walls of all guards, for what the parts bear. */
static void build_walls(ts_select *select, const double *bears, ts_wall *walls)
{
    const ts_power    *power   = select->teeth->power;
    const ts_train    *train   = power->motion->train;
    ts_select_scratch *scratch = select->scratch;

    find_least(select, bears);
    descend(select, NULL, scratch->steady, scratch->steady_at);
    for (uint32_t i = 0; i < select->count; i++) {
        const uint32_t s = select->guards[i].shaft;
        walls[i]         = (ts_wall){INFINITY, TS_NOWHERE, (double)NAN, 0.0, TS_EVERY_CONDITION};
        take_wall(&walls[i], scratch->steady[s], scratch->steady_at[s]);
    }
    for (size_t c = 0; c < select->drive->condition_count; c++) {
        const double *T = &power->T[c * train->shaft_count];

        descend(select, T, scratch->rest, scratch->rest_at);
        for (uint32_t i = 0; i < select->count; i++) {
            const ts_guard *guard = &select->guards[i];
            const double    own   = guard->pad == TS_NOWHERE
                                        ? T[guard->shaft]
                                        : power->pad[c * train->pad_count + guard->pad].T;

            take_wall(&walls[i], scratch->rest[guard->shaft] + own, scratch->rest_at[guard->shaft]);
        }
    }
}

/* The parts of one way, one by one. */
static ts_wall wall_by_walk(const ts_select *select, const ts_guard *guard)
{
    uint32_t     parts[WALK_MOST];
    const size_t count = ts_select_upstream(select, guard, parts, WALK_MOST);
    ts_wall      least = {INFINITY, TS_NOWHERE, (double)NAN, 0.0, TS_EVERY_CONDITION};

    for (size_t i = 0; i < count; i++) {
        const ts_wall wall = ts_select_wall_of(select, guard, parts[i]);
        if (wall.T < least.T)
            least = wall;
    }
    return least;
}

/* Is the part that one way through the train found none in the way of this guard? */
static bool is_passed(const ts_select *select, const ts_guard *guard, const ts_wall *found)
{
    const ts_part_capacity *part =
        found->part == TS_NOWHERE ? NULL : &select->parts.items[found->part];

    return part != NULL &&
           ts_select_passes(guard, part, ts_part_shaft(select->teeth->motion->train, part), false);
}

/* The lesser of a wall and what stands on the pad itself. */
static ts_wall with_own(const ts_select *select, const ts_guard *guard, ts_wall wall)
{
    uint32_t own = guard->pad == TS_NOWHERE ? TS_NOWHERE : select->scratch->own[guard->pad];

    for (; own != TS_NOWHERE; own = select->scratch->next[own])
        if (select->parts.items[own].T < wall.T)
            wall = ts_select_wall_of(select, guard, own);
    return wall;
}

static ts_wall whole(const ts_select *select, const ts_guard *guard, const ts_wall *found)
{
    if (guard->pad == TS_NOWHERE || is_passed(select, guard, found))
        return wall_by_walk(select, guard);
    return with_own(select, guard,
                    found->part == TS_NOWHERE ? *found
                                              : ts_select_wall_of(select, guard, found->part));
}

/* ---- for a while ------------------------------------------------------------------------------
 */

/* rad/s of a shaft, in all conditions or in those alone in which the guard drives. */
static double fastest(const ts_select *select, uint32_t shaft, const ts_guard *starter)
{
    const ts_power  *power  = select->teeth->power;
    const ts_motion *motion = power->motion;
    double           most   = 0.0;

    for (size_t c = 0; c < motion->condition_count; c++) {
        if (starter != NULL && !(power->pad[c * motion->train->pad_count + starter->pad].T < 0.0))
            continue;
        most = fmax(most, motion->speed[c * motion->train->shaft_count + shaft]);
    }
    return most;
}

/* What a part bears for a while: only teeth tire in so short a time. */
static void bear_for(const ts_select *select, uint32_t m, double seconds, const ts_guard *starter,
                     double T[2])
{
    const uint32_t driven = select->teeth->motion->train->meshes[m].driven_shaft;

    ts_tooth_capacity_for(select->teeth, m, &select->teeth_once[m], seconds,
                          fastest(select, driven, starter), T);
}

/* One part with what it bears then; a start flows inwards, and what others take lightens it. */
static ts_wall wall_then(const ts_select *select, const ts_guard *guard, uint32_t i, bool start,
                         const double T[2])
{
    const ts_part_capacity *part = &select->parts.items[i];
    ts_wall                 wall = ts_select_wall_of(select, guard, i);
    double                  left = part->T;

    if (part->kind == TS_PART_FLANK || part->kind == TS_PART_ROOT)
        left = part->kind == TS_PART_ROOT ? T[TS_RATED_BENDING] : T[TS_RATED_CONTACT];
    if (start)
        wall = (ts_wall){0.0, i, wall.g, 0.0, TS_EVERY_CONDITION};
    wall.T = (left - wall.L) / wall.g;
    return wall;
}

ts_wall ts_select_wall_for(const ts_select *select, const ts_guard *guard, double seconds,
                           bool start)
{
    const ts_train *train = select->teeth->motion->train;
    ts_wall         least = {INFINITY, TS_NOWHERE, (double)NAN, 0.0, TS_EVERY_CONDITION};

    for (uint32_t s = guard->shaft; train->shafts[s].mesh != TS_NOWHERE;
         s          = train->meshes[train->shafts[s].mesh].driver_shaft) {
        double T[2];

        bear_for(select, train->shafts[s].mesh, seconds,
                 start && guard->pad != TS_NOWHERE ? guard : NULL, T);
        for (uint32_t i = select->scratch->first[s]; i != TS_NOWHERE;
             i          = select->scratch->next[i]) {
            const ts_wall wall = wall_then(select, guard, i, start, T);

            if (!ts_select_passes(guard, &select->parts.items[i], s, start) && wall.T < least.T)
                least = wall;
        }
    }
    return with_own(select, guard, least);
}

/* Overloads of the same duration share one way through the train. */
static void last_overload(ts_select *select, double seconds, ts_wall *walls)
{
    ts_select_scratch *scratch = select->scratch;
    const ts_train    *train   = select->teeth->motion->train;

    for (size_t i = 0; i < select->parts.count; i++)
        scratch->lasting[i] = select->parts.items[i].T;
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        double T[2];

        bear_for(select, m, seconds, NULL, T);
        for (int s = TS_RATED_CONTACT; s <= TS_RATED_BENDING; s++)
            scratch->lasting[2 * m + (uint32_t)s] = T[s];
    }
    build_walls(select, scratch->lasting, walls);
}

static ts_wall lasting_of(const ts_select *select, const ts_guard *guard, const ts_wall *found)
{
    if (found->part == TS_NOWHERE)
        return with_own(select, guard, *found);
    if (is_passed(select, guard, found))
        return ts_select_wall_for(select, guard, guard->t_over, false);
    ts_wall wall = ts_select_wall_of(select, guard, found->part);
    wall.T       = (select->scratch->lasting[found->part] - wall.L) / wall.g;
    return with_own(select, guard, wall);
}

static void bear_overloads(ts_select *select)
{
    double   times[TS_OVERLOAD_TIMES];
    uint32_t count = 0;

    for (uint32_t i = 0; i < select->count; i++) {
        const double t    = select->guards[i].t_over;
        uint32_t     seen = 0;

        if (!(t > 0.0))
            continue;
        if (select->guards[i].at_start) {
            select->guards[i].lasting = ts_select_wall_for(select, &select->guards[i], t, true);
            continue;
        }
        while (seen < count && times[seen] != t)
            seen++;
        if (seen == count && count < TS_OVERLOAD_TIMES)
            times[count++] = t;
    }
    for (uint32_t k = 0; k < count; k++) {
        last_overload(select, times[k], select->scratch->walls);
        for (uint32_t i = 0; i < select->count; i++)
            if (select->guards[i].t_over == times[k] && !select->guards[i].at_start)
                select->guards[i].lasting =
                    lasting_of(select, &select->guards[i], &select->scratch->walls[i]);
    }
}

/* ---- the whole drive --------------------------------------------------------------------------
 */

void ts_select_solve(ts_select *select, ts_workings *workings)
{
    const ts_measure factor = select->drive->limits.neck_factor;

    select->f = ts_measure_known(factor) ? factor.value : (double)NAN;
    follow_train(select);
    list_by_shaft(select);
    ts_select_fill_guards(select);
    build_walls(select, NULL, select->scratch->walls);
    for (uint32_t i = 0; i < select->count; i++) {
        ts_guard *guard = &select->guards[i];

        guard->once    = whole(select, guard, &select->scratch->walls[i]);
        guard->lasting = (ts_wall){INFINITY, TS_NOWHERE, (double)NAN, 0.0, TS_EVERY_CONDITION};
        ts_select_note(select, guard, workings);
        ts_select_note_tower(select, guard, workings);
    }
    bear_overloads(select);
}
