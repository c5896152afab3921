/* response/drive_start.c: how is the engine of a drive started? */
#include "response/drive_start.h"

#include <math.h>

#define TOLERANCE 1e-10

typedef struct layout {
    const ts_start_question *ask;
    const ts_train          *train;
    const ts_motion         *motion;
    ts_arena                *arena;
    ts_drive_start          *out;
    ts_start_shaft          *shafts;
    ts_start_pad            *pads;
    ts_start_spool          *spools;
    bool                     no_memory;
} layout;

static void lack(layout *it, const char *missing, const char *part)
{
    if (it->out->missing != NULL)
        return;
    it->out->missing = missing;
    it->out->lacks   = part;
}

/* ---- curves -----------------------------------------------------------------------------------
 */

/* Room for `most` points, of which none is there yet. */
static ts_torque_curve open_curve(layout *it, size_t most, double **w, double **T)
{
    *w            = TS_TAKE(it->arena, double, most + 1);
    *T            = TS_TAKE(it->arena, double, most + 1);
    it->no_memory = it->no_memory || *w == NULL || *T == NULL;
    return (ts_torque_curve){*w, *T, 0};
}

static ts_torque_curve curve_of(layout *it, const ts_torque_point *points, size_t count)
{
    double         *w, *T;
    ts_torque_curve curve = open_curve(it, count, &w, &T);

    for (size_t i = 0; !it->no_memory && i < count; i++)
        if (isfinite(points[i].speed.value) && isfinite(points[i].torque.value)) {
            w[curve.count]   = points[i].speed.value;
            T[curve.count++] = points[i].torque.value;
        }
    return curve;
}

/* Kept in the order of speeds; of two at one speed the first stays. */
static void put_point(ts_torque_curve *curve, double *w, double *T, double w_new, double T_new)
{
    size_t i = curve->count;

    for (size_t k = 0; k < curve->count; k++)
        if (fabs(w[k] - w_new) <= 1e-9 * w_new)
            return;
    while (i > 0 && w[i - 1] > w_new) {
        w[i] = w[i - 1];
        T[i] = T[i - 1];
        i--;
    }
    w[i] = w_new;
    T[i] = T_new;
    curve->count++;
}

static double spool_speed(const layout *it, size_t condition, uint32_t spool)
{
    return it->ask->drive->conditions[condition].speed[spool].value;
}

/* What a starter drives with, by condition. */
static ts_torque_curve drive_curve(layout *it, const ts_accessory *one, uint32_t shaft)
{
    double         *w, *T;
    const size_t    n = it->ask->drive->condition_count;
    ts_torque_curve curve;

    if (one->curve_count > 0)
        return curve_of(it, one->curve, one->curve_count);
    curve = open_curve(it, n, &w, &T);
    for (size_t c = 0; !it->no_memory && c < n; c++)
        if (ts_measure_known(one->drives[c]))
            put_point(&curve, w, T, it->motion->speed[c * it->train->shaft_count + shaft],
                      one->drives[c].value);
    return curve;
}

/* What an accessory takes, by condition up to idle, and where it goes on to. */
static ts_torque_curve load_curve(layout *it, uint32_t pad)
{
    const ts_power *power = it->ask->mass->power;
    const uint32_t  shaft = it->train->pads[pad].shaft;
    const uint32_t  spool = it->train->shafts[shaft].spool;
    const double    idle  = it->spools[spool].idle * (1.0 + 1e-9);
    double         *w, *T;
    ts_torque_curve curve = open_curve(it, it->motion->condition_count + 1, &w, &T);

    for (uint32_t c = 0; !it->no_memory && c < it->motion->condition_count; c++) {
        const ts_pad_load *load = &power->pad[(size_t)c * it->train->pad_count + pad];
        const double       n    = spool_speed(it, c, spool);
        if (n > 0.0 && (n <= idle || c == it->ask->beyond) && load->T >= 0.0 &&
            (load->standing == TS_GIVEN || load->standing == TS_ASSUMED) &&
            load->clutch_state == TS_CLUTCH_STATE_NONE)
            put_point(&curve, w, T, it->motion->speed[(size_t)c * it->train->shaft_count + shaft],
                      load->T);
    }
    if (curve.count > 0)
        put_point(&curve, w, T, 0.0, T[0]);
    return curve;
}

/* ---- shafts -----------------------------------------------------------------------------------
 */

static void lay_shafts(layout *it)
{
    for (uint32_t s = 0; s < it->train->shaft_count; s++) {
        const ts_shaft *shaft = &it->train->shafts[s];
        const bool      root  = shaft->kind == TS_SHAFT_SPOOL;
        it->shafts[s]         = (ts_start_shaft){
                    .spool    = shaft->spool,
                    .driver   = root ? TS_NO_DRIVER : it->train->meshes[shaft->mesh].driver_shaft,
                    .ratio    = ts_rational_value(it->motion->shafts[s].ratio),
                    .loss     = root ? 0.0 : it->train->meshes[shaft->mesh].loss.value,
                    .oil_slow = it->ask->oil_slow[s],
                    .oil_fast = it->ask->oil_fast[s]};
        if (it->ask->drag != NULL)
            it->shafts[s].drag = it->ask->drag[s];
        if (!root && !isfinite(it->shafts[s].loss))
            lack(it, "the loss of the mesh that drives it", shaft->name);
    }
}

static void add_inertias(layout *it)
{
    const ts_mass *mass = it->ask->mass;

    for (size_t i = 0; i < mass->part_count; i++) {
        const ts_mass_part *part = &mass->parts[i];
        if (part->shaft == TS_NOWHERE || part->J_name == NULL || part->kind == TS_MASS_ACCESSORY)
            continue;
        if (part->J_missing != NULL)
            lack(it, part->J_missing, part->name);
        else
            it->shafts[part->shaft].J += part->J.value;
    }
    for (uint32_t s = 0; s < it->train->shaft_count; s++) {
        if (it->train->shafts[s].kind != TS_SHAFT_SPOOL)
            continue;
        const ts_spool *spool = &it->ask->drive->spools[it->train->shafts[s].spool];
        if (ts_measure_known(spool->inertia))
            it->shafts[s].J += spool->inertia.value;
        else if (spool->cranked.value == TS_YES || it->spools[it->train->shafts[s].spool].air > 0.0)
            lack(it, "the inertia", spool->name);
        else
            it->shafts[s].J += 1.0; /* it stands, whatever it is */
    }
}

/* ---- pads -------------------------------------------------------------------------------------
 */

static bool drives(const layout *it, const ts_accessory *one)
{
    for (size_t c = 0; c < it->ask->drive->condition_count; c++)
        if (ts_measure_known(one->drives[c]))
            return true;
    return one->curve_count > 0;
}

static void lay_pad(layout *it, uint32_t pad)
{
    const ts_accessory *one = &it->ask->drive->accessories[it->train->pads[pad].accessory];
    const uint32_t      at  = it->out->start.pad_count++;
    ts_start_pad       *to  = &it->pads[at];
    const bool free = ts_pick_known(one->clutch) && one->clutch.value == TS_CLUTCH_OVERRUNNING;

    it->out->pad_of[at] = pad;
    *to         = (ts_start_pad){.shaft = it->train->pads[pad].shaft, .starter = drives(it, one)};
    to->coupled = to->starter && !free;
    if (to->starter)
        to->drive = drive_curve(it, one, to->shaft);
    if (!to->starter || to->coupled)
        to->load = load_curve(it, pad);
    if (!to->starter && to->load.count == 0)
        it->out->loads_left++;
    if (ts_measure_known(one->inertia))
        to->J = one->inertia.value;
    else if (to->starter && free)
        lack(it, "the inertia", one->name);
    else
        it->out->rotors_left++;
}

static void lay_pads(layout *it)
{
    bool any = false;

    for (uint32_t p = 0; p < it->train->pad_count; p++)
        if (it->train->pads[p].accessory >= 0) {
            lay_pad(it, p);
            const ts_start_pad *last = &it->pads[it->out->start.pad_count - 1];
            any = any || (last->starter && it->train->shafts[last->shaft].spool == it->out->spool);
        }
    if (!any)
        lack(it, "a starter that turns the cranked spool", NULL);
}

/* ---- spools -----------------------------------------------------------------------------------
 */

/* The condition in which the start is done. */
static size_t idle_condition(const layout *it)
{
    const double idle  = it->ask->drive->start.idle.value;
    size_t       best  = 0;
    double       least = (double)INFINITY;

    for (size_t c = 0; c < it->ask->drive->condition_count; c++) {
        const double off = fabs(spool_speed(it, c, it->out->spool) - idle);
        if (off < least) {
            least = off;
            best  = c;
        }
    }
    return best;
}

/* rad/s of a spool in the condition to which the start goes on; 0: it ends at idle. */
static double beyond_speed(const layout *it, uint32_t spool)
{
    return it->ask->beyond == TS_NOWHERE ? 0.0 : spool_speed(it, it->ask->beyond, spool);
}

static void lay_spools(layout *it)
{
    const ts_drive *drive = it->ask->drive;
    const size_t    idle  = idle_condition(it);

    for (uint32_t k = 0; k < drive->spool_count; k++) {
        const ts_spool *spool = &drive->spools[k];
        ts_start_spool *to    = &it->spools[k];
        const double    w     = spool_speed(it, idle, k);
        if (k == it->out->spool) {
            *to = (ts_start_spool){.cranked = true,
                                   .unlit   = curve_of(it, spool->unlit, spool->unlit_count),
                                   .lit     = curve_of(it, spool->lit, spool->lit_count),
                                   .idle    = drive->start.idle.value,
                                   .beyond  = beyond_speed(it, k)};
            if (to->unlit.count == 0)
                lack(it, "the unlit drag", spool->name);
            if (to->lit.count == 0)
                lack(it, "the lit torque", spool->name);
            continue;
        }
        *to = (ts_start_spool){.idle = w > 0.0 ? w : 1.0, .beyond = beyond_speed(it, k)};
        if (w > 0.0 && ts_measure_known(spool->air))
            to->air = spool->air.value;
        if (to->air > 0.0 && it->ask->beyond != TS_NOWHERE && !(to->beyond > 0.0))
            lack(it, "a speed in the condition to which it goes on", spool->name);
    }
}

/* The spool's own bearings: at idle and 100 degC the torque that is told. */
static void lay_own_oil(layout *it)
{
    const ts_spool *spool = &it->ask->drive->spools[it->out->spool];

    it->out->oil_left = !ts_measure_known(spool->oil_drag);
    if (it->out->oil_left)
        return;
    if (!isfinite(it->ask->nu_ratio)) {
        lack(it, "the viscosity of the oil", NULL);
        return;
    }
    for (uint32_t s = 0; s < it->train->shaft_count; s++)
        if (it->train->shafts[s].kind == TS_SHAFT_SPOOL &&
            it->train->shafts[s].spool == it->out->spool)
            it->shafts[s].oil_fast +=
                spool->oil_drag.value *
                pow(it->ask->nu_ratio / it->ask->drive->start.idle.value, 2.0 / 3.0);
}

/* ---- the whole --------------------------------------------------------------------------------
 */

static bool take_room(layout *it)
{
    it->shafts      = TS_TAKE(it->arena, ts_start_shaft, it->train->shaft_count + 1);
    it->pads        = TS_TAKE(it->arena, ts_start_pad, it->train->pad_count + 1);
    it->spools      = TS_TAKE(it->arena, ts_start_spool, it->ask->drive->spool_count + 1);
    it->out->pad_of = TS_TAKE(it->arena, uint32_t, it->train->pad_count + 1);
    return it->shafts != NULL && it->pads != NULL && it->spools != NULL && it->out->pad_of != NULL;
}

static void find_cranked(layout *it)
{
    const ts_drive *drive = it->ask->drive;
    uint32_t        many  = 0;

    for (uint32_t k = 0; k < drive->spool_count; k++)
        if (drive->spools[k].cranked.value == TS_YES) {
            it->out->spool = many == 0 ? k : it->out->spool;
            many++;
        }
    if (many != 1)
        lack(it, "one spool that is cranked", NULL);
}

static void find_limits(layout *it)
{
    const ts_start *start = &it->ask->drive->start;

    if (!ts_measure_known(start->light_off))
        lack(it, "the light-off speed", NULL);
    if (!ts_measure_known(start->idle))
        lack(it, "the idle speed", NULL);
    if (!ts_measure_known(start->cut_out))
        lack(it, "the cut-out speed", NULL);
    if (!(start->light_off.value > 0.0 && start->light_off.value < start->idle.value))
        lack(it, "a light-off speed below the idle speed", NULL);
    if (!(start->cut_out.value > 0.0))
        lack(it, "a cut-out speed above 0", NULL);
    if (!isfinite(it->ask->ambient + start->tables.value + start->pressure.value +
                  start->hung.value + start->gives_up.value))
        lack(it, "a temperature, pressure or time of the start", NULL);
    if (it->ask->beyond != TS_NOWHERE) {
        if (!(beyond_speed(it, it->out->spool) > start->idle.value))
            lack(it, "a condition faster than idle to which the start goes on", NULL);
        if (!ts_measure_known(start->gains_in))
            lack(it, "the time from idle to the condition to which it goes on", NULL);
    }
    for (uint32_t s = 0; s < it->train->shaft_count; s++)
        if (!isfinite(it->ask->oil_slow[s] + it->ask->oil_fast[s]))
            lack(it, "the oil of the bearings", it->train->shafts[s].name);
}

static void lay_start(layout *it)
{
    const ts_start *start = &it->ask->drive->start;

    it->out->start.shafts      = it->shafts;
    it->out->start.shaft_count = it->train->shaft_count;
    it->out->start.pads        = it->pads;
    it->out->start.spools      = it->spools;
    it->out->start.spool_count = (uint32_t)it->ask->drive->spool_count;
    it->out->start.theta       = it->ask->ambient / start->tables.value;
    it->out->start.delta       = start->pressure.value;
    it->out->start.light_off   = start->light_off.value;
    it->out->start.cut_out     = start->cut_out.value;
    it->out->start.least       = start->hung.value;
    it->out->start.until       = start->gives_up.value;
    it->out->start.beyond      = beyond_speed(it, it->out->spool);
    it->out->start.rate      = (it->out->start.beyond - start->idle.value) / start->gains_in.value;
    it->out->start.tolerance = TOLERANCE;
    it->out->start.samples   = it->ask->samples;
}

ts_status ts_drive_start_run(const ts_start_question *question, ts_arena *arena,
                             ts_drive_start *out)
{
    const ts_motion *motion = question->mass->power->motion;
    layout           it     = {
                      .ask = question, .train = motion->train, .motion = motion, .arena = arena, .out = out};

    *out = (ts_drive_start){.missing = NULL};
    if (!take_room(&it))
        return TS_NO_MEMORY;
    find_cranked(&it);
    find_limits(&it);
    lay_spools(&it);
    lay_shafts(&it);
    add_inertias(&it);
    lay_pads(&it);
    lay_own_oil(&it);
    lay_start(&it);
    if (it.no_memory)
        return TS_NO_MEMORY;
    if (out->missing != NULL)
        return TS_OK;
    ts_rigid_start_run(&out->start, arena, &out->run);
    return out->run.fault == TS_START_NO_MEMORY ? TS_NO_MEMORY : TS_OK;
}
