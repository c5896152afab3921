/* response/drive_forced.c: by how much does the torque in a drive swing, and what swings it? */
#include "response/drive_forced.h"

#include <math.h>

static const double two_pi = 6.28318530717958647693;

typedef struct shaker {
    const ts_forced_question *ask;
    const ts_train           *train;
    const ts_motion          *motion;
    ts_forced_tree            tree;
    ts_drive_forced          *out;
    uint32_t                  condition;

    /* Those that wait, to be computed abreast. */
    ts_torsion_shake shakes[TS_SHAKES_ABREAST];
    ts_shake_source  sources[TS_SHAKES_ABREAST];
    size_t           waiting;
} shaker;

double ts_twist_damper(const ts_drive_twist *twist, size_t spring, double mesh, double shaft)
{
    const ts_twist_spring *s    = &twist->model.springs[spring];
    const double           in   = s->g_a * s->g_a / twist->model.bodies[s->a].J;
    const double           out  = s->g_b * s->g_b / twist->model.bodies[s->b].J;
    const double           zeta = twist->joints[spring].link == TS_LINK_MESH ? mesh : shaft;

    return 2.0 * zeta * sqrt(s->k / (in + out));
}

/* ---- what each spring carries -----------------------------------------------------------------
 */

static double carried(const shaker *it, size_t spring)
{
    const ts_twist_joint *joint = &it->ask->twist->joints[spring];
    const ts_twist_part  *outer = &it->ask->twist->parts[joint->to];
    const ts_power       *power = it->ask->power;
    const size_t          c     = it->condition;

    switch (joint->link) {
    case TS_LINK_MESH:
        return fabs(power->mesh[c * it->train->mesh_count + joint->mesh].T[1]);
    case TS_LINK_SHAFT:
        return fabs(power->T[c * it->train->shaft_count + outer->shaft]);
    case TS_LINK_PAD:
        break;
    }
    for (uint32_t p = 0; p < it->train->pad_count; p++)
        if (it->train->pads[p].accessory == outer->accessory)
            return fabs(power->pad[c * it->train->pad_count + p].T);
    return (double)NAN;
}

/* ---- what shakes it ---------------------------------------------------------------------------
 */

/* The natural frequency that it meets nearest; SIZE_MAX: none is near. */
static size_t mode_met(const ts_twist_modes *modes, double omega)
{
    size_t met = SIZE_MAX;
    double off = TS_NEAR_A_MODE;

    for (size_t i = modes->rigid; i < modes->count; i++) {
        const double here = fabs(omega / modes->omega[i] - 1.0);
        if (here < off) {
            off = here;
            met = i;
        }
    }
    return met;
}

static void note_near(ts_torque_near *near, double T, const ts_shake_source *source, size_t mode,
                      double omega)
{
    near->swing += T * T;
    if (!(T > near->most))
        return;
    near->most             = T;
    near->source           = *source;
    near->source.frequency = omega / two_pi;
    near->mode             = mode;
}

/* What the shake of one lane came to. */
static void take_in(shaker *it, size_t lane, bool computed)
{
    const ts_twist_model   *model  = &it->ask->twist->model;
    const ts_torsion_shake *by     = &it->shakes[lane];
    const ts_shake_source  *source = &it->sources[lane];
    ts_torque_swing        *swing  = &it->out->swings[(size_t)it->condition * model->spring_count];
    const size_t            mode   = mode_met(&it->ask->twist->modes, by->omega);

    for (size_t i = 0; i < model->spring_count; i++) {
        const double T =
            computed ? it->tree.forces[i].at[lane] * model->springs[i].g_b : (double)NAN;
        const double rate = by->omega / two_pi * T;
        /* Squares until all have shaken it. */
        swing[i].swing += T * T;
        swing[i].sum += T;
        swing[i].rate += rate * rate;
        if (T > swing[i].most) {
            swing[i].most             = T;
            swing[i].source           = *source;
            swing[i].source.frequency = by->omega / two_pi;
        }
        if (mode != SIZE_MAX)
            note_near(&swing[i].near, T, source, mode, by->omega);
    }
}

static void shake_all(shaker *it)
{
    bool computed[TS_SHAKES_ABREAST];

    if (it->waiting > 0)
        ts_forced_tree_shake_abreast(&it->tree, it->shakes, it->waiting, computed);
    for (size_t lane = 0; lane < it->waiting; lane++)
        take_in(it, lane, computed[lane]);
    it->waiting = 0;
}

static void shake(shaker *it, const ts_torsion_shake *by, const ts_shake_source *source)
{
    const double size = by->spring != TS_HELD ? by->e : by->T;

    if (!(size > 0.0) || !(by->omega > 0.0))
        return;
    it->shakes[it->waiting]    = *by;
    it->sources[it->waiting++] = *source;
    if (it->waiting == TS_SHAKES_ABREAST)
        shake_all(it);
}

static double turning(const shaker *it, uint32_t shaft)
{
    return fabs(it->motion->speed[(size_t)it->condition * it->train->shaft_count + shaft]);
}

static void shake_by_mesh(shaker *it, uint32_t spring, uint32_t mesh)
{
    const ts_mesh *record = &it->train->meshes[mesh];
    const double   teeth =
        two_pi * it->motion->frequency[(size_t)it->condition * it->train->mesh_count + mesh];
    ts_torsion_shake by = {.spring = spring, .body = TS_HELD};

    for (int order = 1; order <= 2; order++) {
        const ts_shake_source source = {TS_SHAKER_TEETH, mesh, 0, -1, order, 0.0};
        by.omega                     = order * teeth;
        by.e = it->ask->e_teeth[mesh] * (order == 1 ? 1.0 : TS_SECOND_HARMONIC);
        shake(it, &by, &source);
    }
    for (int side = 0; side < 2; side++) {
        const ts_shake_source source = {TS_SHAKER_TURN, mesh, side, -1, 1, 0.0};
        by.omega = turning(it, side == 0 ? record->driver_shaft : record->driven_shaft);
        by.e     = it->ask->e_turn[2 * mesh + (uint32_t)side];
        shake(it, &by, &source);
    }
}

static void shake_by_accessory(shaker *it, uint32_t spring, int32_t accessory)
{
    const ts_accessory *record = &it->ask->drive->accessories[accessory];
    const bool          told   = ts_measure_known(record->ripple);
    const int           order =
        record->ripple_order.standing == TS_ABSENT ? 1 : (int)record->ripple_order.value;
    const ts_twist_joint  *joint  = &it->ask->twist->joints[spring];
    const ts_shake_source  source = {TS_SHAKER_ACCESSORY, TS_NOWHERE, 0, accessory, order, 0.0};
    const ts_torsion_shake by     = {
            .omega  = order * turning(it, it->ask->twist->parts[joint->to].shaft),
            .spring = TS_HELD,
            .body   = joint->to,
            .T      = (told ? record->ripple.value : TS_RIPPLE_ASSUMED) * carried(it, spring)};

    shake(it, &by, &source);
}

static void shake_in(shaker *it)
{
    const ts_drive_twist *twist = it->ask->twist;
    const size_t          n     = twist->model.spring_count;
    ts_torque_swing      *swing = &it->out->swings[(size_t)it->condition * n];

    for (size_t i = 0; i < n; i++)
        swing[i] = (ts_torque_swing){
            .mean   = carried(it, i),
            .source = {.mesh = TS_NOWHERE, .accessory = -1},
            .near   = {.source = {.mesh = TS_NOWHERE, .accessory = -1}, .mode = SIZE_MAX}};
    for (uint32_t i = 0; i < n; i++) {
        if (twist->joints[i].link == TS_LINK_MESH)
            shake_by_mesh(it, i, twist->joints[i].mesh);
        if (twist->joints[i].link == TS_LINK_PAD)
            shake_by_accessory(it, i, twist->parts[twist->joints[i].to].accessory);
    }
    shake_all(it);
    for (size_t i = 0; i < n; i++) {
        swing[i].swing      = sqrt(swing[i].swing);
        swing[i].near.swing = sqrt(swing[i].near.swing);
        swing[i].rate       = swing[i].swing > 0.0 ? sqrt(swing[i].rate) / swing[i].swing : 0.0;
    }
}

/* ---- the whole --------------------------------------------------------------------------------
 */

static bool open_shaker(shaker *it, ts_arena *arena, double *c)
{
    const ts_drive_twist *twist = it->ask->twist;
    const size_t n = twist->model.spring_count, conditions = it->ask->drive->condition_count;

    it->out->here   = TS_TAKE(arena, bool, conditions);
    it->out->swings = TS_TAKE(arena, ts_torque_swing, conditions * n + 1);
    if (it->out->here == NULL || it->out->swings == NULL)
        return false;
    for (size_t i = 0; i < n; i++) {
        const int32_t who = twist->parts[twist->joints[i].to].accessory;
        c[i] = ts_twist_damper(twist, i, it->out->mesh_damping, it->out->shaft_damping);
        if (twist->joints[i].link == TS_LINK_PAD && who >= 0)
            it->out->ripples_assumed += !ts_measure_known(it->ask->drive->accessories[who].ripple);
    }
    it->out->fault = ts_forced_tree_make(&twist->model, c, arena, &it->tree);
    return it->out->fault != TS_TWIST_NO_MEMORY;
}

ts_status ts_drive_force(const ts_forced_question *question, ts_arena *arena, ts_drive_forced *out)
{
    const ts_motion *motion = question->power->motion;
    shaker           it = {.ask = question, .train = motion->train, .motion = motion, .out = out};
    double          *c  = TS_TAKE(arena, double, question->twist->model.spring_count + 1);

    *out = (ts_drive_forced){.twist           = question->twist,
                             .condition_count = (uint32_t)question->drive->condition_count,
                             .mesh_damping    = question->drive->seizure.mesh_damping.value,
                             .shaft_damping   = question->drive->seizure.shaft_damping.value,
                             .fault           = question->twist->fault};
    if (question->twist->missing != NULL || out->fault != TS_TWIST_FINE)
        return TS_OK;
    if (c == NULL || !open_shaker(&it, arena, c))
        return TS_NO_MEMORY;
    for (uint32_t i = 0; out->fault == TS_TWIST_FINE && i < out->condition_count; i++) {
        out->here[i] = !question->twist->clutch ||
                       ts_drive_is_cranked(question->power, question->twist->drive, i) ==
                           question->twist->cranked;
        it.condition = i;
        if (out->here[i])
            shake_in(&it);
    }
    return TS_OK;
}

/* ---- where somebody wants to know it ----------------------------------------------------------
 */

static bool is_computed(const ts_drive_forced *forced, uint32_t condition)
{
    return forced->here != NULL && forced->fault == TS_TWIST_FINE && forced->here[condition];
}

typedef bool (*joint_test)(const ts_drive_twist *twist, const ts_twist_joint *joint, uint32_t what);

static bool is_mesh(const ts_drive_twist *twist, const ts_twist_joint *joint, uint32_t mesh)
{
    (void)twist;
    return joint->link == TS_LINK_MESH && joint->mesh == mesh;
}

static bool is_tube(const ts_drive_twist *twist, const ts_twist_joint *joint, uint32_t shaft)
{
    return joint->link == TS_LINK_SHAFT && twist->parts[joint->to].shaft == shaft;
}

static bool is_pad(const ts_drive_twist *twist, const ts_twist_joint *joint, uint32_t accessory)
{
    return joint->link == TS_LINK_PAD && twist->parts[joint->to].accessory == (int32_t)accessory;
}

static const ts_torque_swing *find(const ts_drive_forced *forced, size_t count, uint32_t condition,
                                   joint_test test, uint32_t what)
{
    for (size_t k = 0; k < count; k++)
        for (size_t i = 0;
             is_computed(&forced[k], condition) && i < forced[k].twist->model.spring_count; i++)
            if (test(forced[k].twist, &forced[k].twist->joints[i], what))
                return ts_forced_spring(&forced[k], condition, i);
    return NULL;
}

const ts_torque_swing *ts_forced_at_mesh(const ts_drive_forced *forced, size_t count,
                                         uint32_t condition, uint32_t mesh)
{
    return find(forced, count, condition, is_mesh, mesh);
}

const ts_torque_swing *ts_forced_at_tube(const ts_drive_forced *forced, size_t count,
                                         uint32_t condition, uint32_t shaft)
{
    return find(forced, count, condition, is_tube, shaft);
}

const ts_torque_swing *ts_forced_at_accessory(const ts_drive_forced *forced, size_t count,
                                              uint32_t condition, int32_t accessory)
{
    return find(forced, count, condition, is_pad, (uint32_t)accessory);
}
