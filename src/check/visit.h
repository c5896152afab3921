/* check/visit.h: the short questions that most rules ask of the train. */
#ifndef TS_CHECK_VISIT_H
#define TS_CHECK_VISIT_H

#include "check/rule.h"

#include <stdbool.h>
#include <stdint.h>

/* What is bolted to a pad; NULL for a cover, a hand-turning pad and an open one. */
static inline const ts_accessory *ts_accessory_at(const ts_check *check, const ts_pad *pad)
{
    return pad->accessory >= 0 ? &check->drive->accessories[pad->accessory] : NULL;
}

/* Of a pad that is known to carry one. */
static inline const ts_accessory *ts_accessory_on(const ts_check *check, const ts_pad *pad)
{
    return &check->drive->accessories[pad->accessory];
}

/* rad/s; NaN when the speed of its spool is not known. */
static inline double ts_shaft_speed(const ts_check *check, uint32_t shaft, uint32_t condition)
{
    return check->motion->speed[condition * check->train->shaft_count + shaft];
}

static inline double ts_spool_speed(const ts_check *check, uint32_t spool, uint32_t condition)
{
    const ts_measure speed = check->drive->conditions[condition].speed[spool];
    return ts_measure_known(speed) ? speed.value : (double)NAN;
}

static inline const ts_pad_load *ts_load_at(const ts_check *check, uint32_t pad, uint32_t condition)
{
    return &check->power->pad[condition * check->train->pad_count + pad];
}

static inline const ts_mesh_load *ts_load_of(const ts_check *check, uint32_t mesh,
                                             uint32_t condition)
{
    return &check->power->mesh[condition * check->train->mesh_count + mesh];
}

static inline uint32_t ts_driver_of(const ts_train *train, uint32_t shaft)
{
    return train->meshes[train->shafts[shaft].mesh].driver_shaft;
}

/* Is the shaft driven by the bevels of its box? */
static inline bool ts_is_box_input(const ts_train *train, uint32_t shaft)
{
    return train->shafts[shaft].kind == TS_SHAFT_BOX &&
           train->meshes[train->shafts[shaft].mesh].kind == TS_MESH_BEVEL;
}

/* Is it a bevel pair whose teeth, not only whose cones, are known? */
static inline bool ts_has_bevel_teeth(const ts_check *check, uint32_t mesh)
{
    return check->train->meshes[mesh].kind == TS_MESH_BEVEL && check->motion->meshes[mesh].solved &&
           check->motion->meshes[mesh].teeth_fault == NULL;
}

static inline bool ts_spool_is_cranked(const ts_spool *spool)
{
    return spool->cranked.value == TS_YES;
}

/* Is it there to turn the engine, or does it drive its pad in some condition?  A starter-generator
 * is for the aircraft and starts all the same. */
bool ts_accessory_starts(const ts_check *check, const ts_accessory *accessory);

/* Does the accessory drive its pad in this condition? */
static inline bool ts_accessory_drives(const ts_accessory *accessory, uint32_t condition)
{
    return ts_measure_known(accessory->drives[condition]) && accessory->drives[condition].value > 0;
}

/* Asks `judge` about every oil pump pack that is computed, and says so where there is none. */
void ts_visit_packs(ts_check *check, void (*judge)(ts_check *check, const ts_pack *pack));

/* The box input of the tree in which a box shaft stands, or TS_NOWHERE. */
uint32_t ts_box_of(const ts_train *train, uint32_t shaft);

/* How many cylindrical meshes lie between a box shaft and its box input. */
uint32_t ts_meshes_to_input(const ts_train *train, uint32_t shaft);

/* "hp box input (52 teeth) with fuel pump (61 teeth)" */
const char *ts_mesh_name(ts_check *check, uint32_t mesh);

/* The gear's shaft, and which of its gears it is: "idler 3", "idler 3 (step)". */
const char *ts_gear_name(ts_check *check, uint32_t gear);

/* "front" or "rear" */
const char *ts_face_name(ts_face_side face);

#endif
