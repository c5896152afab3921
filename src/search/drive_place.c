/* search/drive_place.c: what would it take to put an accessory somewhere? */
#include "search/drive_place.h"

#include <string.h>

static uint32_t boxes_of(const ts_drive *drive, const ts_drive_problem *made,
                         const ts_drive_place *place)
{
    uint32_t boxes = 0;
    for (size_t b = 0; b < made->problem.box_count; b++)
        if (place->spool < 0 || drive->drive[made->tapped[b]].spool == place->spool)
            boxes |= 1u << b;
    return boxes;
}

static uint32_t faces_of(const ts_drive_place *place)
{
    return place->face == TS_CHOOSE_FRONT  ? TS_FACE_FRONT
           : place->face == TS_CHOOSE_REAR ? TS_FACE_REAR
                                           : TS_FACE_FRONT | TS_FACE_REAR;
}

static ts_arrange_side side_of(const ts_drive_place *place)
{
    return place->side == TS_CHOOSE_CLOCKWISE       ? TS_SIDE_LEFT
           : place->side == TS_CHOOSE_ANTICLOCKWISE ? TS_SIDE_RIGHT
                                                    : TS_SIDE_ANY;
}

uint32_t ts_drive_place_bars(const ts_drive *drive, const ts_drive_problem *made,
                             const ts_drive_place *place)
{
    const ts_arrange_accessory *a    = &made->problem.accessories[place->accessory];
    const int                   use  = drive->accessories[place->accessory].purpose.value;
    const ts_arrange_side       side = side_of(place);
    uint32_t                    bars = 0;
    if (place->spool >= 0 && (a->boxes & boxes_of(drive, made, place)) == 0)
        bars |= (use == TS_FOR_ENGINE || use == TS_FOR_START) &&
                        drive->spools[place->spool].cranked.value != TS_YES
                    ? TS_BAR_START
                    : TS_BAR_BOX;
    if ((a->faces & faces_of(place)) == 0)
        bars |= TS_BAR_FACE;
    if (a->side != TS_SIDE_ANY && (place->input || (side != TS_SIDE_ANY && side != a->side)))
        bars |= TS_BAR_SIDE;
    return bars;
}

bool ts_drive_place_force(const ts_drive_problem *made, const ts_drive_place *place,
                          ts_arena *arena, ts_arrange_problem *out)
{
    const size_t          count = made->problem.accessory_count;
    ts_arrange_accessory *all   = TS_TAKE(arena, ts_arrange_accessory, count);
    if (all == NULL)
        return false;
    memcpy(all, made->problem.accessories, count * sizeof *all);
    ts_arrange_accessory *a = &all[place->accessory];
    if (place->spool >= 0) {
        a->boxes = 0;
        for (size_t b = 0; b < made->problem.box_count; b++)
            if (made->spool_of[b] == place->spool)
                a->boxes |= 1u << b;
    }
    if (place->face != TS_CHOOSE_EITHER_FACE)
        a->faces = faces_of(place);
    if (place->side != TS_CHOOSE_EITHER_SIDE)
        a->side = side_of(place);
    if (place->input) {
        a->input = true;
        a->side  = TS_SIDE_ANY;
    }
    if (place->with >= 0) {
        a->with |= 1u << place->with;
        all[place->with].with |= 1u << place->accessory;
    }
    *out             = made->problem;
    out->accessories = all;
    return true;
}

static bool shaft_is(const ts_drive_place *place, const ts_arranged_shaft *s)
{
    const bool front = s->front == place->accessory, rear = s->rear == place->accessory;
    if (!front && !rear)
        return false;
    if ((place->face == TS_CHOOSE_FRONT && !front) || (place->face == TS_CHOOSE_REAR && !rear))
        return false;
    return place->with < 0 || (front ? s->rear : s->front) == place->with;
}

bool ts_drive_place_is(const ts_drive_problem *made, const ts_drive_place *place,
                       const ts_arrangement *a)
{
    for (size_t b = 0; b < made->problem.box_count; b++) {
        const ts_arranged_box *box = &a->boxes[b];
        if (!box->present || (place->spool >= 0 && made->spool_of[b] != place->spool))
            continue;
        if (side_of(place) == TS_SIDE_ANY && shaft_is(place, &box->input))
            return true;
        for (int side = 0; side < 2; side++)
            for (uint32_t i = 0; i < box->branches[side].count; i++)
                if (!place->input && shaft_is(place, &box->branches[side].shafts[i]) &&
                    side_of(place) != (side == 0 ? TS_SIDE_RIGHT : TS_SIDE_LEFT))
                    return true;
    }
    return false;
}

bool ts_drive_place_owns(const ts_drive_place *place, const ts_demand *demand)
{
    if (demand->index != (uint32_t)place->accessory)
        return false;
    return (demand->kind == TS_DEMAND_BOXES && place->spool >= 0) ||
           (demand->kind == TS_DEMAND_FACES && place->face != TS_CHOOSE_EITHER_FACE) ||
           (demand->kind == TS_DEMAND_SIDE && place->side != TS_CHOOSE_EITHER_SIDE);
}
