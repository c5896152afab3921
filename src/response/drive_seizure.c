/* response/drive_seizure.c: what happens in a drive when an accessory seizes, or is jolted?
 */
#include "response/drive_seizure.h"

#include <math.h>

static const double two_pi = 6.28318530717958647693;

#define TOLERANCE 1e-10

typedef struct layout {
    const ts_seizure_question *ask;
    ts_turning_body           *bodies;
    ts_bond                   *bonds;
    double                    *force; /* [bond] along it, in the steady state */
    size_t                     plays_assumed;
} layout;

uint32_t ts_seizure_body(const ts_drive_twist *twist, int32_t accessory)
{
    for (uint32_t i = 0; i < twist->model.body_count; i++)
        if (accessory >= 0 && twist->parts[i].accessory == accessory)
            return i;
    return TS_NO_BODY;
}

/* ---- play -------------------------------------------------------------------------------------
 */

/* Normal play; NaN: the file does not tell it. */
static double play_told(const layout *it, uint32_t m)
{
    const ts_motion      *motion = it->ask->power->motion;
    const ts_mesh        *mesh   = &motion->train->meshes[m];
    const ts_spool_drive *drive  = &it->ask->drive->drive[it->ask->twist->drive];

    if (mesh->kind == TS_MESH_CYLINDRICAL)
        return (motion->meshes[m].backlash.j_bn[TS_BACKLASH_MIN] +
                motion->meshes[m].backlash.j_bn[TS_BACKLASH_MAX]) /
               2.0;
    return mesh->bevels == &drive->take_off.bevels && ts_measure_known(drive->take_off.backlash)
               ? drive->take_off.backlash.value
               : (double)NAN;
}

/* Along the transverse line of action. */
static double play_of(layout *it, uint32_t m)
{
    const ts_mesh_motion *mesh   = &it->ask->power->motion->meshes[m];
    const ts_train       *train  = it->ask->power->motion->train;
    const double          normal = play_told(it, m);

    /* Along the transverse line of action; sin beta_b = sin beta cos alpha_n, ISO 21771. */
    const double cos_b = cos(asin(sin(mesh->beta_w) * cos(mesh->alpha_wn)));
    if (normal >= 0.0)
        return normal / cos_b;
    it->plays_assumed++;
    return it->ask->drive->seizure.play.value * train->gears[train->meshes[m].driver].m_n.value /
           cos_b;
}

/* ---- the steady state -------------------------------------------------------------------------
 */

static double pad_torque(const layout *it, int32_t accessory)
{
    const ts_train *train = it->ask->power->motion->train;

    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory == accessory)
            return it->ask->power->pad[(size_t)it->ask->condition * train->pad_count + p].T;
    return 0.0;
}

/* A mesh carries what enters it; what is lost brakes the gear that power leaves by. */
static double steady_force(const layout *it, size_t joint)
{
    const ts_power        *power  = it->ask->power;
    const ts_train        *train  = power->motion->train;
    const ts_twist_joint  *one    = &it->ask->twist->joints[joint];
    const ts_twist_spring *spring = &it->ask->twist->model.springs[joint];
    const size_t           c      = it->ask->condition;

    if (one->link == TS_LINK_PAD)
        return pad_torque(it, it->ask->twist->parts[one->to].accessory);
    if (one->link == TS_LINK_SHAFT)
        return power->T[c * train->shaft_count + it->ask->twist->parts[one->to].shaft];
    const ts_mesh_load *load = &power->mesh[c * train->mesh_count + one->mesh];
    return load->flow == TS_FLOW_INWARD ? load->T[1] / spring->g_b : load->T[0] / spring->g_a;
}

static void lay_bond(layout *it, size_t i)
{
    const ts_drive_twist  *twist  = it->ask->twist;
    const ts_twist_spring *spring = &twist->model.springs[i];
    const ts_twist_joint  *joint  = &twist->joints[i];
    const int32_t          who    = twist->parts[spring->b].accessory;
    const double           J_a = twist->model.bodies[spring->a].J, g_a = spring->g_a;
    const double           J_b = twist->model.bodies[spring->b].J, g_b = spring->g_b;
    const double           mass = 1.0 / (g_a * g_a / J_a + g_b * g_b / J_b);
    const bool             mesh = joint->link == TS_LINK_MESH;
    const ts_seizure_wish *wish = &it->ask->drive->seizure;

    it->bonds[i] = (ts_bond){.kind   = mesh ? TS_BOND_MESH : TS_BOND_SHAFT,
                             .a      = spring->a,
                             .b      = spring->b,
                             .g_a    = g_a,
                             .g_b    = g_b,
                             .k      = spring->k,
                             .gap    = mesh ? play_of(it, joint->mesh) : 0.0,
                             .breaks = it->ask->breaks[i]};
    it->bonds[i].c =
        2.0 * (mesh ? wish->mesh_damping : wish->shaft_damping).value * sqrt(spring->k * mass);
    if (joint->link == TS_LINK_PAD && who >= 0 &&
        it->ask->drive->accessories[who].clutch.value == TS_CLUTCH_OVERRUNNING &&
        ts_pick_known(it->ask->drive->accessories[who].clutch))
        it->bonds[i].kind = TS_BOND_CLUTCH;
    it->force[i] = steady_force(it, i);
    if (it->bonds[i].kind == TS_BOND_CLUTCH)
        it->force[i] = fmin(it->force[i], 0.0); /* its drag stays in the clutch */
    it->bodies[spring->a].torque += g_a * it->force[i];
    it->bodies[spring->b].torque -= g_b * it->force[i];
}

/* Angles from the spool outwards, so that every bond carries its steady force. */
static void lay_angles(layout *it, bool *placed)
{
    const size_t n     = it->ask->twist->model.spring_count;
    bool         moved = true;

    placed[0] = true;
    while (moved) {
        moved = false;
        for (size_t i = 0; i < n; i++) {
            const ts_bond *bond = &it->bonds[i];
            const double   F    = it->force[i];
            if (!placed[bond->a] || placed[bond->b])
                continue;
            const double s        = F < 0.0 ? F / bond->k - bond->gap : F / bond->k;
            it->bodies[bond->b].q = (bond->g_a * it->bodies[bond->a].q - s) / bond->g_b;
            placed[bond->b]       = true;
            moved                 = true;
        }
    }
}

static void lay_bodies(layout *it)
{
    const ts_motion      *motion = it->ask->power->motion;
    const ts_drive_twist *twist  = it->ask->twist;

    for (size_t i = 0; i < twist->model.body_count; i++)
        it->bodies[i] = (ts_turning_body){
            .J     = twist->model.bodies[i].J,
            .speed = motion->speed[(size_t)it->ask->condition * motion->train->shaft_count +
                                   twist->parts[i].shaft]};
    for (size_t i = 0; i < twist->model.spring_count; i++)
        lay_bond(it, i);
    for (size_t i = 0; i < twist->model.body_count; i++)
        if (it->bodies[i].torque < 0.0 && it->bodies[i].speed > 0.0)
            it->bodies[i].slope = it->bodies[i].torque / it->bodies[i].speed;
}

/* ---- what came of it --------------------------------------------------------------------------
 */

static void find_turning(const layout *it, ts_seizure *out)
{
    const size_t n     = it->ask->twist->model.spring_count;
    bool         moved = true;

    out->turns[0] = true;
    while (moved) {
        moved = false;
        for (size_t i = 0; i < n; i++) {
            const ts_bond *bond = &it->bonds[i];
            if (out->run.peaks[i].broken || out->run.peaks[i].free ||
                out->turns[bond->a] == out->turns[bond->b])
                continue;
            out->turns[bond->a] = out->turns[bond->b] = true;
            moved                                     = true;
        }
    }
    out->held = out->turns[out->body] && out->run.stands;
}

static void find_first(const layout *it, ts_seizure *out)
{
    const ts_train_run *run = &out->run;

    out->first     = -1;
    out->pad_angle = out->twist = (double)NAN;
    for (size_t i = 0; i < run->event_count && out->first < 0; i++)
        if (run->events[i].what == TS_HAPPENS_BREAK)
            out->first = (int32_t)i;
    if (out->first < 0)
        return;
    /* The shaft of the pad keeps nearly its speed until then; what it loses is part of the twist.
     */
    out->pad_angle = it->bodies[out->body].speed * run->events[out->first].t;
    for (size_t i = 0; i < it->ask->twist->model.spring_count; i++)
        if (it->bonds[i].b == out->body)
            out->twist = fabs(run->peaks[i].before - run->peaks[i].start) / it->bonds[i].k;
}

/* ---- the whole --------------------------------------------------------------------------------
 */

/* What gives the spool that acceleration while all turns as one. */
static double slamming_torque(const ts_seizure_question *ask)
{
    double J = 0.0;

    for (size_t i = 0; i < ask->twist->model.body_count; i++) {
        const double ratio = ask->twist->parts[i].ratio;
        J += ask->twist->model.bodies[i].J * ratio * ratio;
    }
    return J * ask->alpha;
}

static void lay_jolt(const layout *it, ts_seizure *out)
{
    const ts_seizure_question *ask = it->ask;

    out->body       = ask->accessory >= 0 ? ts_seizure_body(ask->twist, ask->accessory) : 0;
    out->pulse      = ask->pulse;
    out->pulse.body = out->body;
    if (ask->alpha != 0.0)
        out->pulse.A = slamming_torque(ask);
    it->bodies[out->body].v = ask->slip;
}

/* Some turns of the slowest mode, and until the pulse has gone. */
static double how_long(const ts_seizure_question *ask)
{
    const ts_twist_modes *modes = &ask->twist->modes;
    const double          turns = TS_SEIZE_PERIODS * two_pi / modes->omega[modes->rigid];
    const double decays         = ask->pulse.decay > 0.0 ? TS_SEIZE_DECAYS / ask->pulse.decay : 0.0;

    return fmax(turns, decays) + ask->ramp;
}

ts_status ts_drive_seize(const ts_seizure_question *question, ts_arena *arena, ts_seizure *out)
{
    const ts_twist_model *model  = &question->twist->model;
    layout                it     = {.ask    = question,
                                    .bodies = TS_TAKE(arena, ts_turning_body, model->body_count),
                                    .bonds  = TS_TAKE(arena, ts_bond, model->spring_count + 1),
                                    .force  = TS_TAKE(arena, double, model->spring_count + 1)};
    bool                 *placed = TS_TAKE(arena, bool, model->body_count);
    ts_torque_pulse      *pulse  = TS_TAKE(arena, ts_torque_pulse, 1);

    *out = (ts_seizure){.turns = TS_TAKE(arena, bool, model->body_count)};
    if (it.bodies == NULL || it.bonds == NULL || it.force == NULL || placed == NULL ||
        pulse == NULL || out->turns == NULL)
        return TS_NO_MEMORY;
    lay_bodies(&it);
    lay_angles(&it, placed);
    lay_jolt(&it, out);
    *pulse             = out->pulse;
    out->plays_assumed = it.plays_assumed;
    out->until         = how_long(question);
    out->train         = (ts_elastic_train){.bodies      = it.bodies,
                                            .body_count  = (uint32_t)model->body_count,
                                            .bonds       = it.bonds,
                                            .bond_count  = (uint32_t)model->spring_count,
                                            .pulses      = pulse,
                                            .pulse_count = pulse->A != 0.0 ? 1 : 0,
                                            .stops       = question->stops ? out->body : TS_NO_BODY,
                                            .ramp        = question->ramp,
                                            .until       = out->until,
                                            .tolerance   = TOLERANCE,
                                            .samples     = question->samples};
    ts_elastic_train_run(&out->train, arena, &out->run);
    if (out->run.fault == TS_RUN_NO_MEMORY)
        return TS_NO_MEMORY;
    find_turning(&it, out);
    find_first(&it, out);
    return TS_OK;
}
