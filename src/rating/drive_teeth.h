/* rating/drive_teeth.h: are the teeth of every mesh of a drive strong enough, in every condition,
 * on both flanks, and in all conditions together?
 *
 * Flanks    The flow of power says which flank works (power/power.h).  What a start loads on one
 *           flank does not wear the other, but it turns the bending of the roots round: R.
 * Gears     A gear of several meshes is worn by all of them: the two meshes of an idler work on
 *           different flanks of it, those of a box input on the same one.
 * Cycles    Speed times hours, or times events and how long each lasts; a load that is met at all
 *           is met once.
 * Methods   ISO 6336 by the edition of the file; bevels by ISO 10300 (rating/drive_bevels.h).  A
 *           further standard stands beside it as a file of its own with a result of its own.
 * Workings  About the tooth number of the driven gear, whose address ends in `teeth`, so that the
 *           standard's F_t, v and T_1 do not hide those of power/; the mesh borrows the results.
 */
#ifndef TS_RATING_DRIVE_TEETH_H
#define TS_RATING_DRIVE_TEETH_H

#include "power/power.h"
#include "rating/drive_bevels.h"
#include "rating/drive_lines.h"
#include "rating/iso6336/spectrum_life.h"

/* One mesh in one condition; gear 1 is the driver of the mesh, whichever way power flows. */
typedef struct ts_mesh_case {
    bool              loaded;  /* does any torque pass?  Else nothing below is computed          */
    double            w;       /* N/m  F_t/b at the reference circle                             */
    const char       *missing; /* NULL, or what the rating lacks: "its speed"                    */
    const char       *fault;   /* NULL, or why it is impossible, a sentence without a full stop  */
    ts_iso6336_load   load;
    ts_iso6336_rating rating; /* bevels: what every standard knows of it, taken over from theirs: N,
                                 range, K_v, and of each gear stresses, life factors, safeties and
                                 curves; the rest is NaN                                         */
} ts_mesh_case;

/* One flank of one gear: pitting of the flank, or breakage of its tooth by it. */
typedef struct ts_flank_life {
    double S;           /* safety of all conditions together; INFINITY: not loaded; NaN: a rating
                           is missing                                                            */
    double   share;     /* of the wear, 0 to 1, done by ...                                      */
    uint32_t mesh;      /* ... this mesh                                                         */
    int32_t  condition; /* ... in this condition                                                 */
} ts_flank_life;

typedef struct ts_mesh_strength {
    ts_node     subject; /* of the workings                                                 */
    const char *missing; /* NULL, or what the file lacks for any rating of it: a noun */
    const char *fault;   /* NULL, or why the standard cannot rate it: a sentence */
    double      S_H[2], S_F[2]; /* of all conditions together, the worse flank                   */
    uint32_t    worn_by[2][2];  /* [gear][ts_rated_stress] the mesh that wears that flank most   */
    /* What sets the mesh, of the places that it wears more than any other mesh does. */
    double          reserve; /* the least S/S_min of these, less 1; INFINITY: never loaded      */
    int             gear;    /* which sets it: 0 the driver, 1 the driven gear                  */
    ts_flank        flank;
    ts_rated_stress stress;
    ts_flank_life   life;
    double          times; /* how often the whole life is borne there at the least safety        */
} ts_mesh_strength;

typedef struct ts_least_safety {
    double  S;         /* INFINITY: never loaded; NaN: not known   */
    int32_t condition; /* in which                                 */
} ts_least_safety;

typedef struct ts_teeth_scratch ts_teeth_scratch; /* made by ts_teeth_prepare */

typedef struct ts_teeth {
    const ts_motion     *motion;
    const ts_power      *power;
    const ts_lines      *lines;          /* solved before the teeth; NULL: shafts are stiff */
    double               S_Hmin, S_Fmin; /* NaN: not known                  */
    uint32_t             condition_count;
    ts_iso6336_prepared *prepared; /* [mesh]; cylindrical ones        */
    ts_bevels            bevels;   /* the others                      */
    ts_mesh_strength    *strength; /* [mesh]                          */
    ts_mesh_case        *cases;    /* [condition * mesh_count + mesh] */
    ts_flank_life       *lives;    /* [ts_flank_life_of]              */
    ts_teeth_scratch    *scratch;
} ts_teeth;

/* flank: TS_FLANK_LEADING or TS_FLANK_TRAILING. */
static inline uint32_t ts_flank_life_of(uint32_t gear, ts_flank flank, ts_rated_stress stress)
{
    return gear * 4 + (flank == TS_FLANK_LEADING ? 0u : 2u) +
           (stress == TS_RATED_CONTACT ? 0u : 1u);
}

/* Memory for one drive. */
ts_status ts_teeth_prepare(const ts_drive *drive, const ts_power *power, ts_arena *arena,
                           ts_teeth *out);

/* Rates everything behind a solved power.  Allocates nothing. */
void ts_teeth_solve(const ts_drive *drive, ts_teeth *teeth, ts_workings *workings);

/* s that the drive spends in a condition, in its whole life; NaN: the file does not say. */
double ts_condition_seconds(const ts_condition *condition);

/* What wears or breaks: "pitting", "bending". */
const char *ts_rated_stress_says(ts_rated_stress stress);
/* "pinion" or "wheel"; gears of equal size are "driver" and "driven gear".  side: 0 or 1. */
const char *ts_mesh_side_says(const ts_train *train, uint32_t mesh, int side);

#endif
