/* support/hand_train.c: how is a drive put together without a file? */
#include "support/hand_train.h"

#include <assert.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

static ts_node fresh(hand_train *h)
{
    return ++h->last_node;
}

static ts_measure given(hand_train *h, double value)
{
    return (ts_measure){value, fresh(h), TS_GIVEN};
}

static ts_measure absent(void)
{
    return (ts_measure){(double)NAN, 0, TS_ABSENT};
}

static ts_pick picked(hand_train *h, int value)
{
    return (ts_pick){value, fresh(h), TS_GIVEN};
}

static ts_tally counted(hand_train *h, int64_t value)
{
    return (ts_tally){value, fresh(h), TS_GIVEN};
}

void hand_open(hand_train *h, size_t conditions)
{
    static const char *const names[HAND_CONDITIONS] = {"one",  "two", "three", "four",
                                                       "five", "six", "seven", "eight"};

    assert(conditions <= HAND_CONDITIONS);
    memset(h, 0, sizeof *h);
    h->last_node = 1;
    h->drive     = (ts_drive){
            .conditions      = h->conditions,
            .condition_count = conditions,
            .spools          = h->spools,
            .accessories     = h->accessories,
            .drive           = h->drives,
            .sight           = {TS_FROM_BEHIND, 0, TS_GIVEN},
    };
    h->train =
        (ts_train){.shafts = h->shafts, .gears = h->gears, .meshes = h->meshes, .pads = h->pads};
    for (size_t c = 0; c < conditions; c++)
        h->conditions[c] =
            (ts_condition){.name = names[c], .node = fresh(h), .speed = h->speeds[c]};
}

static uint32_t add_shaft(hand_train *h, ts_shaft_kind kind, const char *name, ts_node node)
{
    const uint32_t s = h->train.shaft_count++;

    assert(s < HAND_SHAFTS);
    h->shafts[s] = (ts_shaft){
        .kind = kind,
        .node = node,
        .name = name,
        .mesh = TS_NOWHERE,
        .pad  = {TS_NOWHERE, TS_NOWHERE},
    };
    return s;
}

static uint32_t add_gear(hand_train *h, const ts_gear *gear)
{
    assert(h->train.gear_count < HAND_GEARS);
    h->gears[h->train.gear_count] = *gear;
    return h->train.gear_count++;
}

static void add_mesh(hand_train *h, const ts_mesh *mesh)
{
    h->shafts[mesh->driven_shaft].mesh = h->train.mesh_count;
    h->meshes[h->train.mesh_count++]   = *mesh;
}

uint32_t hand_spool(hand_train *h, const char *name, ts_turn turns, double speed)
{
    const uint32_t spool = (uint32_t)h->drive.spool_count++;

    assert(spool < HAND_SPOOLS);
    h->spools[spool] = (ts_spool){.name = name, .node = fresh(h), .turns = picked(h, (int)turns)};
    for (size_t c = 0; c < h->drive.condition_count; c++)
        h->speeds[c][spool] = given(h, speed);
    const uint32_t s = add_shaft(h, TS_SHAFT_SPOOL, name, h->spools[spool].node);

    h->shafts[s].spool = spool;
    h->shafts[s].drive = TS_NOWHERE;
    return s;
}

void hand_set_speed(hand_train *h, uint32_t spool_shaft, size_t condition, double speed)
{
    h->speeds[condition][h->shafts[spool_shaft].spool].value = speed;
}

static void bevel_mesh(hand_train *h, uint32_t driver, uint32_t driven, const hand_bevels *spec)
{
    ts_bevel_gears *b = &h->bevels[h->bevel_count++];

    *b = (ts_bevel_gears){
        .node           = fresh(h),
        .teeth          = {counted(h, spec->teeth[0]), counted(h, spec->teeth[1])},
        .module         = given(h, 0.0024),
        .pressure_angle = given(h, pi / 9.0),
        .spiral         = given(h, spec->spiral),
        .hand           = picked(h, (int)spec->hand),
        .face           = given(h, 0.016),
        .shaft_angle    = given(h, spec->shaft_angle > 0.0 ? spec->shaft_angle : pi / 2.0),
        .side           = picked(h, (int)spec->side),
        .loss           = given(h, spec->loss),
    };
    const int hand = spec->hand == TS_RIGHT_HAND ? 1 : -1;
    uint32_t  gear[2];

    for (int g = 0; g < 2; g++)
        gear[g] = add_gear(h, &(ts_gear){
                                  .role    = TS_GEAR_BEVEL,
                                  .shaft   = g == 0 ? driver : driven,
                                  .node    = b->node,
                                  .teeth   = b->teeth[g],
                                  .m_n     = b->module,
                                  .alpha_n = b->pressure_angle,
                                  .beta    = b->spiral,
                                  .hand    = spec->spiral > 0.0 ? (g == 0 ? hand : -hand) : 0,
                                  .face    = b->face,
                              });
    add_mesh(h, &(ts_mesh){TS_MESH_BEVEL, gear[0], gear[1], driver, driven, b->node, b->loss, b});
}

uint32_t hand_tower(hand_train *h, uint32_t spool_shaft, const hand_bevels *bevels, double clock)
{
    const uint32_t drive = (uint32_t)h->drive.drive_count++;

    h->drives[drive] = (ts_spool_drive){
        .node        = fresh(h),
        .spool       = (int32_t)h->shafts[spool_shaft].spool,
        .tower_shaft = {.node = fresh(h), .clock = given(h, clock), .length = given(h, 0.33)},
    };
    h->shafts[spool_shaft].drive = drive;
    const uint32_t s = add_shaft(h, TS_SHAFT_TOWER, "tower", h->drives[drive].tower_shaft.node);

    h->shafts[s].spool = h->shafts[spool_shaft].spool;
    h->shafts[s].drive = drive;
    bevel_mesh(h, spool_shaft, s, bevels);
    return s;
}

static void add_main_gear(hand_train *h, uint32_t s, int teeth, int hand)
{
    const ts_tooth_system *system = &h->drives[h->shafts[s].drive].box.gears;
    ts_box_shaft          *record = &h->records[s];

    record->teeth     = counted(h, teeth);
    record->face      = given(h, 0.02);
    record->shift     = given(h, 0.0);
    h->main_gear[s]   = add_gear(h, &(ts_gear){
                                        .role    = TS_GEAR_MAIN,
                                        .shaft   = s,
                                        .node    = h->shafts[s].node,
                                        .teeth   = record->teeth,
                                        .m_n     = system->module,
                                        .alpha_n = system->pressure_angle,
                                        .beta    = system->helix_angle,
                                        .hand    = system->helix_angle.value > 0.0 ? hand : 0,
                                        .face    = record->face,
                                        .x       = record->shift,
                                        .system  = system,
                                  });
    h->drives_with[s] = h->main_gear[s];
}

static uint32_t add_box_shaft(hand_train *h, uint32_t driver, const char *name)
{
    const ts_node  node = fresh(h);
    const uint32_t s    = add_shaft(h, TS_SHAFT_BOX, name, node);

    h->shafts[s].spool  = h->shafts[driver].spool;
    h->shafts[s].drive  = h->shafts[driver].drive;
    h->shafts[s].record = &h->records[s];
    h->records[s]       = (ts_box_shaft){.node = node, .toward = absent()};
    return s;
}

uint32_t hand_input(hand_train *h, uint32_t tower, const hand_bevels *bevels, double radius,
                    int teeth)
{
    ts_spool_drive *drive = &h->drives[h->shafts[tower].drive];

    drive->box = (ts_box){
        .node  = fresh(h),
        .arc   = {.radius = given(h, radius), .clock = drive->tower_shaft.clock},
        .gears = {.module         = given(h, 0.002),
                  .pressure_angle = given(h, 25.0 * pi / 180.0),
                  .helix_angle    = given(h, 0.0),
                  .addendum       = given(h, 1.0),
                  .dedendum       = given(h, 1.25),
                  .root_radius    = given(h, 0.25),
                  .loss           = given(h, 0.005)},
    };
    const uint32_t s = add_box_shaft(h, tower, "box input");

    bevel_mesh(h, tower, s, bevels);
    add_main_gear(h, s, teeth, 1);
    return s;
}

void hand_box_teeth(hand_train *h, uint32_t input, const hand_teeth *teeth)
{
    ts_tooth_system *system = &h->drives[h->shafts[input].drive].box.gears;
    ts_gear         *gear   = &h->gears[h->main_gear[input]];

    system->module.value         = teeth->module;
    system->pressure_angle.value = teeth->pressure_angle;
    system->helix_angle.value    = teeth->helix_angle;
    system->loss.value           = teeth->loss;
    gear->m_n                    = system->module;
    gear->alpha_n                = system->pressure_angle;
    gear->beta                   = system->helix_angle;
    gear->hand                   = teeth->helix_angle > 0.0 ? teeth->input_hand : 0;
}

uint32_t hand_shaft(hand_train *h, uint32_t driver, int teeth, ts_way way)
{
    const uint32_t s    = add_box_shaft(h, driver, "shaft");
    const uint32_t with = h->drives_with[driver];

    h->shafts[s].way = way;
    add_main_gear(h, s, teeth, -h->gears[with].hand);
    add_mesh(h, &(ts_mesh){TS_MESH_CYLINDRICAL, with, h->main_gear[s], driver, s, h->shafts[s].node,
                           h->drives[h->shafts[s].drive].box.gears.loss, NULL});
    return s;
}

void hand_shaft_toward(hand_train *h, uint32_t shaft, double toward)
{
    h->records[shaft].toward = given(h, toward);
}

void hand_step(hand_train *h, uint32_t shaft, int teeth, double module)
{
    ts_gear gear = h->gears[h->main_gear[shaft]];

    gear.role             = TS_GEAR_STEP;
    gear.step             = 1;
    gear.node             = fresh(h);
    gear.teeth            = counted(h, teeth);
    gear.m_n              = given(h, module);
    h->drives_with[shaft] = add_gear(h, &gear);
}

void hand_shift(hand_train *h, uint32_t shaft, double x)
{
    h->records[shaft].shift.value         = x;
    h->gears[h->main_gear[shaft]].x.value = x;
}

static uint32_t add_pad(hand_train *h, uint32_t shaft, ts_face_side face, ts_pad_use use)
{
    const uint32_t p = h->train.pad_count++;

    h->pads[p] = (ts_pad){
        .shaft = shaft, .face = face, .use = use, .accessory = -1, .node = fresh(h), .name = "pad"};
    h->shafts[shaft].pad[face] = p;
    return p;
}

uint32_t hand_accessory(hand_train *h, uint32_t shaft, ts_face_side face)
{
    const uint32_t p = add_pad(h, shaft, face, TS_PAD_ACCESSORY);
    const size_t   a = h->drive.accessory_count++;

    snprintf(h->names[a], sizeof h->names[a], "accessory %zu", a + 1);
    for (size_t c = 0; c < h->drive.condition_count; c++)
        h->power[a][c] = h->driving[a][c] = absent();
    h->accessories[a] = (ts_accessory){
        .name   = h->names[a],
        .node   = fresh(h),
        .turns  = {TS_EITHER, 0, TS_ABSENT},
        .power  = h->power[a],
        .drives = h->driving[a],
        .clutch = picked(h, TS_CLUTCH_NONE),
    };
    h->pads[p].accessory = (int32_t)a;
    h->pads[p].name      = h->names[a];
    return p;
}

void hand_cover(hand_train *h, uint32_t shaft, ts_face_side face)
{
    add_pad(h, shaft, face, TS_PAD_COVER);
}

void hand_absorbs(hand_train *h, uint32_t pad, size_t condition, double power)
{
    h->power[h->pads[pad].accessory][condition] = given(h, power);
}

void hand_drives(hand_train *h, uint32_t pad, size_t condition, double torque)
{
    h->driving[h->pads[pad].accessory][condition] = given(h, torque);
}

void hand_clutch(hand_train *h, uint32_t pad)
{
    h->accessories[h->pads[pad].accessory].clutch.value = TS_CLUTCH_OVERRUNNING;
}

uint32_t hand_usual(hand_train *h, size_t conditions)
{
    const hand_bevels take_off = {.teeth  = {43, 46},
                                  .spiral = 35.0 * pi / 180.0,
                                  .hand   = TS_LEFT_HAND,
                                  .side   = TS_REAR,
                                  .loss   = 0.01};
    const hand_bevels box      = {.teeth  = {37, 41},
                                  .spiral = 35.0 * pi / 180.0,
                                  .hand   = TS_RIGHT_HAND,
                                  .side   = TS_REAR,
                                  .loss   = 0.01};

    hand_open(h, conditions);
    const uint32_t spool = hand_spool(h, "hp spool", TS_CCW, 2000.0);
    const uint32_t tower = hand_tower(h, spool, &take_off, pi);

    return hand_input(h, tower, &box, 0.33, 52);
}
