/* towershaft/mass.h: what a solved drive weighs, part by part, and what holds it.
 *
 * Units     SI: kg, m, kg.m2, N.
 * Frame     x to the right and y up seen from behind, from the engine axis; z rearward of the
 * datum. Bands     least and most are what the part would weigh with the extremes of what is
 * assumed of its shape; sums of bands are guaranteed. Missing   NaN, and `missing` says what the
 * file lacks; sums leave such parts out. Owner     Texts live as long as the study's answer.
 */
#ifndef TOWERSHAFT_MASS_H
#define TOWERSHAFT_MASS_H

#include "towershaft/study.h"

typedef struct ts_weight {
    double value, least, most;
} ts_weight;

typedef struct ts_mass_view {
    ts_weight drive;   /* kg, without accessories                             */
    ts_weight total;   /* kg, with them                                       */
    double    x, y, z; /* m, centre of mass of the total; NaN: not known      */
    size_t    missing; /* parts without a mass                                */
} ts_mass_view;

/* All NaN for a study that is not solved. */
TS_API ts_mass_view ts_study_mass(const ts_study *study);

typedef struct ts_part_view {
    const char *kind;  /* "gear", "bevel", "shaft", "bearings", "tube", "casing", "accessory"  */
    const char *name;  /* of its shaft, accessory or spool                                      */
    const char *spool; /* at the root of its tree                                               */
    ts_weight   m;     /* kg                                                                     */
    ts_weight   J;     /* kg.m2 about its own axis; 0: does not turn                             */
    double x, y, z;    /* m, centre of mass                                                      */
    const char *missing; /* NULL, or what the mass lacks: a noun */
} ts_part_view;

TS_API size_t       ts_study_part_count(const ts_study *study);
TS_API ts_part_view ts_study_part(const ts_study *study, size_t index); /* index < count */

typedef struct ts_inertia_view {
    const char *spool;
    ts_weight running; /* kg.m2 of all that it drives, seen from the spool                        */
    ts_weight cranked; /* the same with what its overrunning clutches let go when it runs         */
    double    own;     /* kg.m2 of the spool itself; NaN: not known                               */
} ts_inertia_view;

TS_API size_t          ts_study_inertia_count(const ts_study *study); /* spools */
TS_API ts_inertia_view ts_study_inertia(const ts_study *study, size_t index);

typedef struct ts_mount_view {
    const char *spool; /* whose box                                                              */
    bool   assumed;    /* the file names no mounts                                               */
    double x, y, z;    /* m                                                                       */
    double rest;       /* N, under the weight of the box with its accessories                    */
    double most;       /* N, under the load factors of the file, one by one ...                  */
    const char *shaken; /* ... in this direction: "down"                                          */
    const char *missing; /* NULL, or why there are no loads */
} ts_mount_view;

TS_API size_t        ts_study_mount_count(const ts_study *study); /* three a box */
TS_API ts_mount_view ts_study_mount(const ts_study *study, size_t index);

#endif
