/* model/train.c: which shafts, gears, meshes and pads does a drive have, one after another? */
#include "model/train.h"

#include "base/assert.h"
#include "model/train_name.h"

typedef struct builder {
    const ts_drive *drive;
    ts_train       *train;
    uint32_t       *main_gear; /* of each box shaft; its steps stand behind it */
    uint32_t        tapped;    /* index into drive->drive                       */
    ts_diagnostics *list;
    bool            sound;
} builder;

static void complain(builder *b, const char *code, const char *says)
{
    ts_diagnose(b->list, &(ts_diagnostic){.code = code, .says = says});
    b->sound = false;
}

/* ---- how many ------------------------------------------------------------------------------- */

static void count_pad(const ts_pad_end *pad, ts_train *out)
{
    out->pad_count += pad->use != TS_PAD_NONE ? 1 : 0;
}

/* Every box shaft is driven by one mesh.  Depth is bounded by that of the file. */
static void count_shafts(const ts_box_shaft *shafts, size_t count, ts_train *out)
{
    for (size_t i = 0; i < count; i++) {
        out->shaft_count++;
        out->mesh_count++;
        out->gear_count += 1 + (uint32_t)shafts[i].step_count;
        count_pad(&shafts[i].front, out);
        count_pad(&shafts[i].rear, out);
        count_shafts(shafts[i].branch, shafts[i].branch_count, out);
    }
}

static ts_train count_all(const ts_drive *drive)
{
    ts_train out = {.shaft_count = (uint32_t)drive->spool_count};
    for (size_t d = 0; d < drive->drive_count; d++) {
        const ts_box *box = &drive->drive[d].box;
        out.shaft_count += 1; /* the tower shaft */
        out.mesh_count += 1;
        out.gear_count += 4; /* two bevel pairs */
        count_shafts(&box->input, 1, &out);
        count_shafts(box->clockwise, box->clockwise_count, &out);
        count_shafts(box->anticlockwise, box->anticlockwise_count, &out);
    }
    return out;
}

/* ---- gears and meshes ----------------------------------------------------------------------- */

static int hand_of(ts_pick hand, bool straight, bool second)
{
    if (straight || hand.standing == TS_ABSENT || hand.standing == TS_UNKNOWN)
        return 0;
    const int first = hand.value == TS_RIGHT_HAND ? 1 : -1;
    return second ? -first : first;
}

static uint32_t add_gear(builder *b, const ts_gear *gear)
{
    b->train->gears[b->train->gear_count] = *gear;
    return b->train->gear_count++;
}

static uint32_t add_bevel(builder *b, const ts_bevel_gears *bevels, bool second, uint32_t shaft)
{
    return add_gear(b,
                    &(ts_gear){.role    = TS_GEAR_BEVEL,
                               .shaft   = shaft,
                               .node    = bevels->node,
                               .teeth   = bevels->teeth[second ? 1 : 0],
                               .m_n     = bevels->module,
                               .alpha_n = bevels->pressure_angle,
                               .beta    = bevels->spiral,
                               .hand = hand_of(bevels->hand, bevels->spiral.value <= 0.0, second),
                               .face = bevels->face,
                               .material = bevels->material,
                               .x        = {0.0, bevels->node, TS_ABSENT}});
}

static uint32_t add_mesh(builder *b, const ts_mesh *mesh)
{
    ts_mesh whole                          = *mesh;
    whole.driver_shaft                     = b->train->gears[mesh->driver].shaft;
    whole.driven_shaft                     = b->train->gears[mesh->driven].shaft;
    b->train->meshes[b->train->mesh_count] = whole;
    return b->train->mesh_count++;
}

/* The bevels between two shafts; returns their mesh. */
static uint32_t add_bevel_mesh(builder *b, const ts_bevel_gears *bevels, uint32_t from, uint32_t to)
{
    const uint32_t driver = add_bevel(b, bevels, false, from);
    const uint32_t driven = add_bevel(b, bevels, true, to);
    return add_mesh(b, &(ts_mesh){.kind   = TS_MESH_BEVEL,
                                  .driver = driver,
                                  .driven = driven,
                                  .node   = bevels->node,
                                  .loss   = bevels->loss,
                                  .bevels = bevels});
}

static const ts_tooth_system *system_of(const builder *b)
{
    return &b->drive->drive[b->tapped].box.gears;
}

static ts_measure own_or(ts_measure own, ts_measure shared)
{
    return own.standing == TS_ABSENT ? shared : own;
}

static ts_pick own_or_shared(ts_pick own, ts_pick shared)
{
    return own.standing == TS_ABSENT ? shared : own;
}

/* The main gear of a box shaft and its steps; all of them have the same hand. */
static void add_gears(builder *b, const ts_box_shaft *record, uint32_t shaft, int hand)
{
    const ts_tooth_system *system = system_of(b);
    ts_gear                gear   = {.role     = TS_GEAR_MAIN,
                                     .shaft    = shaft,
                                     .node     = record->node,
                                     .teeth    = record->teeth,
                                     .m_n      = own_or(record->module, system->module),
                                     .alpha_n  = system->pressure_angle,
                                     .beta     = system->helix_angle,
                                     .hand     = hand,
                                     .face     = record->face,
                                     .x        = record->shift,
                                     .material = own_or_shared(record->material, system->material),
                                     .rim      = record->rim,
                                     .web      = record->web,
                                     .system   = system};
    b->main_gear[shaft]           = add_gear(b, &gear);
    gear.role                     = TS_GEAR_STEP;
    for (size_t s = 0; s < record->step_count; s++) {
        const ts_step_gear *step = &record->steps[s];
        gear.step                = (uint32_t)s + 1;
        gear.node                = step->node;
        gear.teeth               = step->teeth;
        gear.m_n                 = own_or(step->module, system->module);
        gear.face                = step->face;
        gear.x                   = step->shift;
        gear.material            = own_or_shared(step->material, system->material);
        gear.rim                 = step->rim;
        gear.web                 = step->web;
        (void)add_gear(b, &gear);
    }
}

/* The gear of `driver` that drives a shaft with this `from`. */
static uint32_t driving_gear(builder *b, uint32_t driver, ts_pick from)
{
    const size_t steps = b->train->shafts[driver].record->step_count;
    size_t       which = steps;
    if (from.standing == TS_GIVEN)
        which = (size_t)from.value;
    if (which > steps) {
        complain(b, "missing-step", "a shaft is driven by a step that its driver does not have");
        which = 0;
    }
    return b->main_gear[driver] + (uint32_t)which;
}

/* ---- pads ----------------------------------------------------------------------------------- */

static const char *pad_name(const ts_drive *drive, const ts_pad_end *pad)
{
    switch (pad->use) {
    case TS_PAD_ACCESSORY:
        return drive->accessories[pad->accessory].name;
    case TS_PAD_COVER:
        return "cover";
    case TS_PAD_HAND:
        return "hand turning";
    default:
        return "open";
    }
}

static void add_pad(builder *b, uint32_t shaft, ts_face_side face, const ts_pad_end *end)
{
    if (end->use == TS_PAD_NONE)
        return;
    const uint32_t pad                = b->train->pad_count++;
    b->train->shafts[shaft].pad[face] = pad;
    b->train->pads[pad]               = (ts_pad){.shaft     = shaft,
                                                 .face      = face,
                                                 .use       = end->use,
                                                 .accessory = end->accessory,
                                                 .node      = end->node,
                                                 .name      = pad_name(b->drive, end)};
}

/* In the order of the numbers of their shafts. */
static bool add_pads(builder *b, ts_arena *arena)
{
    const uint32_t count     = b->train->shaft_count;
    uint32_t      *by_number = TS_TAKE(arena, uint32_t, (size_t)count + 1);
    if (by_number == NULL)
        return false;
    for (uint32_t s = 0; s < count; s++)
        by_number[b->train->shafts[s].number] = s;
    for (uint32_t n = 1; n <= count; n++) {
        const uint32_t s = by_number[n];
        if (b->train->shafts[s].number != n)
            break;
        add_pad(b, s, TS_FRONT, &b->train->shafts[s].record->front);
        add_pad(b, s, TS_REAR, &b->train->shafts[s].record->rear);
    }
    return true;
}

static bool look_for_pads_used_twice(builder *b, ts_arena *arena)
{
    bool *met = TS_TAKE(arena, bool, b->drive->accessory_count);
    if (met == NULL)
        return false;
    for (uint32_t p = 0; p < b->train->pad_count; p++) {
        const int32_t accessory = b->train->pads[p].accessory;
        if (accessory < 0)
            continue;
        if (met[accessory])
            complain(b, "pad-used-twice", "an accessory sits on two pads");
        met[accessory] = true;
    }
    return true;
}

/* ---- shafts --------------------------------------------------------------------------------- */

static uint32_t add_shaft(builder *b, const ts_shaft *shaft)
{
    b->train->shafts[b->train->shaft_count] = *shaft;
    return b->train->shaft_count++;
}

static ts_shaft new_shaft(const builder *b, ts_shaft_kind kind, ts_node node)
{
    return (ts_shaft){.kind  = kind,
                      .node  = node,
                      .spool = (uint32_t)b->drive->drive[b->tapped].spool,
                      .drive = b->tapped,
                      .mesh  = TS_NOWHERE,
                      .pad   = {TS_NOWHERE, TS_NOWHERE}};
}

/* A shaft of a box that another one drives. */
static uint32_t add_driven(builder *b, const ts_box_shaft *record, uint32_t driver, ts_way way,
                           bool side)
{
    ts_shaft shaft = new_shaft(b, TS_SHAFT_BOX, record->node);
    shaft.way      = way;
    shaft.side     = side;
    shaft.record   = record;

    const uint32_t gear = driving_gear(b, driver, record->from);
    const uint32_t s    = add_shaft(b, &shaft);
    add_gears(b, record, s, -b->train->gears[gear].hand);
    b->train->shafts[s].mesh = add_mesh(b, &(ts_mesh){.kind   = TS_MESH_CYLINDRICAL,
                                                      .driver = gear,
                                                      .driven = b->main_gear[s],
                                                      .node   = record->node,
                                                      .loss   = system_of(b)->loss});
    return s;
}

/* A chain of shafts, each driven by the one before it, with their side branches. */
static void add_chain(builder *b, const ts_box_shaft *records, size_t count, uint32_t driver,
                      ts_way way, bool side)
{
    for (size_t i = 0; i < count; i++) {
        driver = add_driven(b, &records[i], driver, way, side);
        add_chain(b, records[i].branch, records[i].branch_count, driver, way, true);
    }
}

static void add_box(builder *b, uint32_t tower)
{
    const ts_box *box = &b->drive->drive[b->tapped].box;
    /* The file's clockwise is the other way when it is seen from the front. */
    const bool   mirrored = b->drive->sight.value == TS_FROM_FRONT;
    const ts_way one      = mirrored ? TS_WAY_ANTICLOCKWISE : TS_WAY_CLOCKWISE;
    const ts_way other    = mirrored ? TS_WAY_CLOCKWISE : TS_WAY_ANTICLOCKWISE;

    ts_shaft shaft = new_shaft(b, TS_SHAFT_BOX, box->input.node);
    shaft.record   = &box->input;

    const uint32_t input         = add_shaft(b, &shaft);
    b->train->shafts[input].mesh = add_bevel_mesh(b, &box->bevels, tower, input);
    const bool spur              = box->gears.helix_angle.value <= 0.0;
    add_gears(b, &box->input, input, hand_of(box->gears.hand, spur, false));

    add_chain(b, box->clockwise, box->clockwise_count, input, one, false);
    add_chain(b, box->anticlockwise, box->anticlockwise_count, input, other, false);
    add_chain(b, box->input.branch, box->input.branch_count, input, one, true);
}

static void add_spools(builder *b)
{
    for (size_t s = 0; s < b->drive->spool_count; s++) {
        ts_shaft shaft = {.kind  = TS_SHAFT_SPOOL,
                          .node  = b->drive->spools[s].node,
                          .spool = (uint32_t)s,
                          .drive = TS_NOWHERE,
                          .mesh  = TS_NOWHERE,
                          .pad   = {TS_NOWHERE, TS_NOWHERE}};
        for (size_t d = 0; d < b->drive->drive_count; d++) {
            if (b->drive->drive[d].spool == (int32_t)s)
                shaft.drive = (uint32_t)d;
        }
        (void)add_shaft(b, &shaft);
    }
}

static void add_drive(builder *b)
{
    const ts_spool_drive *tapped = &b->drive->drive[b->tapped];
    if (tapped->spool < 0 || (size_t)tapped->spool >= b->drive->spool_count) {
        complain(b, "unknown-spool", "a spool is tapped but not described");
        return;
    }
    const ts_shaft shaft = new_shaft(b, TS_SHAFT_TOWER, tapped->tower_shaft.node);
    const uint32_t tower = add_shaft(b, &shaft);
    b->train->shafts[tower].mesh =
        add_bevel_mesh(b, &tapped->take_off.bevels, (uint32_t)tapped->spool, tower);
    add_box(b, tower);
}

/* ---- the train ------------------------------------------------------------------------------ */

static bool make_room(builder *b, const ts_train *counts, ts_arena *arena)
{
    b->train->shafts = TS_TAKE(arena, ts_shaft, counts->shaft_count);
    b->train->gears  = TS_TAKE(arena, ts_gear, counts->gear_count);
    b->train->meshes = TS_TAKE(arena, ts_mesh, counts->mesh_count);
    b->train->pads   = TS_TAKE(arena, ts_pad, counts->pad_count);
    b->main_gear     = TS_TAKE(arena, uint32_t, counts->shaft_count);
    return b->train->shafts != NULL && b->train->gears != NULL && b->train->meshes != NULL &&
           b->train->pads != NULL && b->main_gear != NULL;
}

ts_status ts_train_build(const ts_drive *drive, ts_arena *arena, ts_diagnostics *list,
                         ts_train *out)
{
    const ts_train counts = count_all(drive);
    builder        b      = {.drive = drive, .train = out, .list = list, .sound = true};
    *out                  = (ts_train){0};
    if (!make_room(&b, &counts, arena))
        return TS_NO_MEMORY;
    add_spools(&b);
    for (size_t d = 0; d < drive->drive_count; d++) {
        b.tapped = (uint32_t)d;
        add_drive(&b);
    }
    ts_train_number(out);
    if (!add_pads(&b, arena) || !look_for_pads_used_twice(&b, arena) ||
        !ts_train_name(drive, out, arena))
        return TS_NO_MEMORY;
    TS_ASSERT(!b.sound || out->shaft_count == counts.shaft_count);
    TS_ASSERT(!b.sound || out->gear_count == counts.gear_count);
    TS_ASSERT(!b.sound || out->mesh_count == counts.mesh_count);
    TS_ASSERT(!b.sound || out->pad_count == counts.pad_count);
    return b.sound ? TS_OK : TS_NOT_UNDERSTOOD;
}
