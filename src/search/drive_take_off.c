/* search/drive_take_off.c: how fast does a box turn with other bevels, and what do these weigh? */
#include "search/drive_take_off.h"

#include "mass/mass.h"

#include <math.h>
#include <string.h>

typedef struct rig {
    ts_drive       own; /* with that one box, whose input shaft carries nothing */
    ts_spool_drive taken;
    ts_train       train;
    ts_motion      motion;
    ts_power       power;
    ts_mass        mass;
    ts_arena      *arena; /* of one trial */
} rig;

/* ---- one trial ------------------------------------------------------------------------------- */

static void put_bevels(ts_bevel_gears *bevels, const ts_bevel_choice *choice)
{
    if (choice == NULL)
        return;
    bevels->teeth[0] = choice->teeth[0];
    bevels->teeth[1] = choice->teeth[1];
    if (ts_measure_known(choice->module))
        bevels->module = choice->module;
    if (ts_measure_known(choice->face))
        bevels->face = choice->face;
}

static void put_tower(ts_tower_shaft *tower, const ts_tower_choice *choice)
{
    if (choice == NULL)
        return;
    tower->outside = choice->outside;
    if (ts_measure_known(choice->bore))
        tower->bore = choice->bore;
}

static void reduce(rig *r, const ts_drive *drive, size_t tapped, const ts_drive_take_off *one)
{
    static const ts_pad_end no_pad = {.use = TS_PAD_NONE, .accessory = -1};
    ts_box                 *box    = &r->taken.box;

    r->own               = *drive;
    r->taken             = drive->drive[tapped];
    r->own.drive         = &r->taken;
    r->own.drive_count   = 1;
    box->clockwise_count = box->anticlockwise_count = 0;
    box->input.branch_count = box->input.step_count = 0;
    box->input.front = box->input.rear = no_pad;
    put_bevels(&r->taken.take_off.bevels, one->spool);
    put_bevels(&box->bevels, one->box);
    put_tower(&r->taken.tower_shaft, one->tower);
}

static ts_status build(rig *r)
{
    ts_diagnostics *list = ts_diagnostics_open(r->arena, "", (ts_text){"", 0});
    ts_status       status =
        list != NULL ? ts_train_build(&r->own, r->arena, list, &r->train) : TS_NO_MEMORY;

    if (status == TS_OK)
        status = ts_motion_prepare(&r->own, &r->train, r->arena, &r->motion);
    if (status == TS_OK)
        status = ts_power_prepare(&r->own, &r->motion, r->arena, &r->power);
    if (status == TS_OK)
        status = ts_mass_prepare(&r->own, &r->power, r->arena, &r->mass);
    if (status == TS_OK)
        status = ts_motion_solve(&r->own, &r->motion, list, NULL);
    if (status == TS_OK)
        status = ts_power_solve(&r->own, &r->power, NULL);
    if (status == TS_OK)
        ts_mass_solve(&r->own, &r->mass, NULL);
    return status;
}

/* Why these bevels cannot be, or what the mass of a part lacks; NULL: all is well. */
static const char *weigh(const rig *r, double *mass, bool *lacks)
{
    *mass  = 0.0;
    *lacks = false;
    if (r->taken.tower_shaft.bore.value >= r->taken.tower_shaft.outside.value)
        return "the bore of the radial shaft is as wide as its outside";
    for (uint32_t m = 0; m < r->train.mesh_count; m++)
        if (r->motion.meshes[m].fault != NULL)
            return r->motion.meshes[m].fault;
    for (size_t i = 0; i < r->mass.part_count; i++) {
        const ts_mass_part *part = &r->mass.parts[i];
        if (part->kind != TS_MASS_BEVEL && part->kind != TS_MASS_TOWER)
            continue;
        *lacks = part->missing != NULL;
        if (*lacks)
            return part->missing;
        *mass += part->m.value;
    }
    return NULL;
}

static void take_speeds(const rig *r, double *speed)
{
    uint32_t input = 0;
    while (input < r->train.shaft_count && r->train.shafts[input].record != &r->taken.box.input)
        input++;
    for (size_t c = 0; c < r->own.condition_count && input < r->train.shaft_count; c++)
        speed[c] = r->motion.speed[c * r->train.shaft_count + input];
}

/* `out` gets a fault, in `arena`, where it cannot be. */
static bool try_one(const ts_drive *drive, size_t tapped, ts_arena *arena, ts_drive_take_off *one,
                    ts_take_off_list *out)
{
    ts_arena   *own    = ts_arena_open(ts_arena_allocator(arena));
    rig        *r      = own != NULL ? TS_TAKE(own, rig, 1) : NULL;
    ts_status   status = TS_NO_MEMORY;
    const char *fault  = "its ratio is out of range";

    if (r != NULL) {
        r->arena = own;
        reduce(r, drive, tapped, one);
        status = build(r);
    }
    if (status == TS_OK) {
        fault = weigh(r, &one->mass, &out->lacks);
        take_speeds(r, one->speed);
    }
    if (status != TS_NO_MEMORY && fault != NULL) {
        out->fault = ts_arena_copy(arena, fault, strlen(fault));
        status     = out->fault != NULL ? TS_OK : TS_NO_MEMORY;
    }
    ts_arena_close(own);
    return status != TS_NO_MEMORY;
}

/* ---- all of them ----------------------------------------------------------------------------- */

static ts_node node_of(const ts_drive_take_off *one, ts_node otherwise)
{
    if (one->spool != NULL)
        return one->spool->node;
    if (one->box != NULL)
        return one->box->node;
    return one->tower != NULL ? one->tower->node : otherwise;
}

static size_t at_least_one(size_t count)
{
    return count > 0 ? count : 1;
}

static ts_drive_take_off combination(const ts_box_freedom *f, size_t index)
{
    const size_t towers = at_least_one(f->tower_count), boxes = at_least_one(f->box_bevel_count);
    const size_t t = index % towers, b = index / towers % boxes, s = index / towers / boxes;

    return (ts_drive_take_off){.spool = f->spool_bevel_count > 0 ? &f->spool_bevels[s] : NULL,
                               .box   = f->box_bevel_count > 0 ? &f->box_bevels[b] : NULL,
                               .tower = f->tower_count > 0 ? &f->towers[t] : NULL};
}

bool ts_drive_may_take_off(const ts_box_freedom *f)
{
    return f != NULL && f->spool_bevel_count + f->box_bevel_count + f->tower_count > 0;
}

bool ts_drive_take_offs(const ts_drive *drive, size_t tapped, const ts_box_freedom *freedom,
                        ts_arena *arena, ts_take_off_list *out)
{
    const ts_box_freedom *f = freedom;
    const size_t all = at_least_one(f->spool_bevel_count) * at_least_one(f->box_bevel_count) *
                       at_least_one(f->tower_count);
    const size_t      count = all <= TS_TAKE_OFFS_MOST ? all : 0;
    ts_drive_take_off stands;

    *out = (ts_take_off_list){.items = TS_TAKE(arena, ts_drive_take_off, count + 1), .at = f->node};
    stands = (ts_drive_take_off){.speed = TS_TAKE(arena, double, drive->condition_count)};
    if (out->items == NULL || stands.speed == NULL)
        return false;
    if (!try_one(drive, tapped, arena, &stands, out))
        return false;
    for (size_t i = 0; i < count && out->fault == NULL; i++) {
        ts_drive_take_off *one = &out->items[out->count++];
        *one                   = combination(f, i);
        one->speed             = TS_TAKE(arena, double, drive->condition_count);
        out->at                = node_of(one, f->node);
        if (one->speed == NULL || !try_one(drive, tapped, arena, one, out))
            return false;
        one->more = one->mass - stands.mass;
    }
    return true;
}
