/* rating/drive_opinion.h: what does a second standard say of the teeth of a drive, and why is that
 * another number?
 *
 * ANSI/AGMA 2101-D04 with the geometry factors of AGMA 908-B89, of every cylindrical mesh, in every
 * condition by itself.  Loads, cycles, materials and accuracies are those that ISO 6336 was given
 * (rating/drive_teeth.h), which decides; the second opinion shows how far a standard can be
 * trusted.
 *
 * Bevels    AGMA 2003 rates them beside ISO 10300 (rating/drive_bevels.h) where its geometry
 * factors are given; their gap is here too, about the tooth number of the driver. Gap       Where
 * ISO 6336 sees the least safety of all conditions against pitting, and where against breakage,
 * both standards are set side by side.  S of the second over S of the first is the product of the
 * ratios of like factors, so the largest of them is named. Workings  About the face width of the
 * driven gear, whose address ends in `face`; those of ISO 6336 are about its teeth.
 */
#ifndef TS_RATING_DRIVE_OPINION_H
#define TS_RATING_DRIVE_OPINION_H

#include "rating/drive_teeth.h"
#include "rating/opinion_gap.h"

typedef struct ts_mesh_opinion {
    ts_node         subject; /* of the workings                                                 */
    const char     *missing; /* NULL, or what the standard lacks: "the face width of both gears" */
    ts_least_safety S_H[2], S_F[2]; /* of all conditions, each by itself                         */
    /* What sets the mesh: the least S/S_min of these, less 1. */
    double          reserve;
    int             gear;
    ts_rated_stress stress;
    int32_t         condition;
    ts_opinion_gap  contact, bending;
} ts_mesh_opinion;

typedef struct ts_opinion {
    const ts_teeth     *teeth;
    ts_agma2101_pair   *prepared; /* [mesh]                                                      */
    ts_mesh_opinion    *mesh;     /* [mesh]; bevels: contact and bending alone                   */
    ts_agma2101_rating *cases;    /* [condition * mesh_count + mesh]; read with ts_opinion_stands */
} ts_opinion;

/* Memory for one drive; the teeth need only be prepared. */
ts_status ts_opinion_prepare(const ts_drive *drive, const ts_teeth *teeth, ts_arena *arena,
                             ts_opinion *out);

/* Rates everything behind solved teeth.  Allocates nothing. */
void ts_opinion_solve(const ts_drive *drive, ts_opinion *opinion, ts_workings *workings);

/* Was this mesh rated by the second standard in this condition? */
bool ts_opinion_stands(const ts_opinion *opinion, uint32_t mesh, uint32_t condition);

#endif
