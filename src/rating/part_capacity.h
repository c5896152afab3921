/* rating/part_capacity.h: which torque does each part between a spool and a pad bear once, as when
 * an accessory seizes?
 *
 * Whoever rates a kind of part (teeth, splines, shafts, bearings) adds what it knows to one list;
 * what protects them (rating/selectivity.h) reads it and knows no kind of part.
 *
 * Torque    Of the shaft that the part sits on, or at the driven gear of the mesh that it is; the
 *           larger side where losses make a difference is the reader's business.
 * Safety    None: the torque at which the part yields or breaks when it is met once.  NaN, with
 *           `missing`, where it could not be computed.
 */
#ifndef TS_RATING_PART_CAPACITY_H
#define TS_RATING_PART_CAPACITY_H

#include "model/train.h"

#include <stdbool.h>
#include <stddef.h>

typedef enum ts_part_kind {
    TS_PART_ROOT,    /* a tooth breaks                      */
    TS_PART_FLANK,   /* a flank yields                      */
    TS_PART_SPLINE,  /* a spline shears or is crushed       */
    TS_PART_SHAFT,   /* a shaft yields                      */
    TS_PART_BEARING, /* a bearing is dented                 */
    TS_PART_NECK     /* a neck that is meant to break later */
} ts_part_kind;

/* "tooth root", "flank", ... */
static inline const char *ts_part_kind_word(ts_part_kind kind)
{
    static const char *const words[] = {"tooth root", "flank",   "spline",
                                        "shaft",      "bearing", "neck"};
    return words[kind];
}

typedef struct ts_part_capacity {
    ts_part_kind kind;
    uint32_t     shaft;  /* whose torque loads it; TS_NOWHERE: that of a mesh                  */
    uint32_t     mesh;   /* ... this one, or its torque loads the part; TS_NOWHERE: on a shaft */
    bool         of_pad; /* on a shaft: T is a torque of `pad` alone                         */
    uint32_t     pad;
    double       T;       /* N.m, > 0, borne once                                             */
    ts_node      node;    /* what the workings of T are about                                 */
    const char  *symbol;  /* ... and its name there; NULL: none                               */
    const char  *what;    /* to whom it belongs: the name of a shaft; lives as long as the train  */
    const char  *missing; /* NULL, or what was not known: a noun                              */
} ts_part_capacity;

typedef struct ts_part_capacities {
    ts_part_capacity *items;
    size_t            count, room;
} ts_part_capacities;

/* False when the list is full: its room is made when the drive is prepared. */
static inline bool ts_part_capacity_add(ts_part_capacities *list, const ts_part_capacity *part)
{
    if (list->count == list->room)
        return false;
    list->items[list->count++] = *part;
    return true;
}

/* The shaft on which the part sits, or which it drives as a mesh. */
static inline uint32_t ts_part_shaft(const ts_train *train, const ts_part_capacity *part)
{
    return part->mesh == TS_NOWHERE ? part->shaft : train->meshes[part->mesh].driven_shaft;
}

/* Teeth of bevel gears?  A shaft or bearing counts by the mesh that takes torque from it. */
static inline bool ts_part_is_bevel(const ts_train *train, const ts_part_capacity *part)
{
    return (part->kind == TS_PART_ROOT || part->kind == TS_PART_FLANK) &&
           train->meshes[part->mesh].kind == TS_MESH_BEVEL;
}

#endif
