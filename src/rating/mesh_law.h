/* rating/mesh_law.h: how wide must two gears of a box be, for any loads?  A table for searches.
 *
 * A search asks for the width of one mesh many thousand times, each time with other loads.  The
 * stresses of a spur pair follow from the load per unit of face width, w = F_t/b, so what every
 * condition wears off each tooth is tabulated over w once, by the same rating that `check` uses,
 * with its speed and its cycles; a width is then found by adding up what the table says.
 *
 * Places     Of each gear: pitting; bending on one flank only; bending where the other flank is
 *            loaded as highly (the greatest that R can do).  Conditions that load the same flank
 *            add up, after Palmgren and Miner.
 * Between    Points are joined by straight lines on two logarithmic scales; next to a jump (the end
 *            of endurance, static strength) the higher point holds.
 * Monotone   More load is never told to wear less, even where the dynamic factor falls: the table
 *            holds the most of all smaller loads.
 * Left out   The width itself enters through the tolerance of the helix and the overlap of helical
 *            teeth: both are those of a face of 8 modules.  What two meshes wear off one flank of a
 *            gear is not added.  An answer is therefore rated anew before anybody is shown it.
 */
#ifndef TS_RATING_MESH_LAW_H
#define TS_RATING_MESH_LAW_H

#include "rating/drive_teeth.h"

/* Two gears in a box of a drive, which may be given other teeth again and again. */
typedef struct ts_mesh_rig ts_mesh_rig;

/* tapped: index into drive->drive.  TS_NOT_UNDERSTOOD when the box as it stands cannot turn. */
ts_status ts_mesh_rig_open(const ts_drive *drive, size_t tapped, ts_arena *arena,
                           const ts_allocator *allocator, ts_mesh_rig **out);
/* Gives back what does not go with the arena.  NULL is allowed. */
void ts_mesh_rig_close(ts_mesh_rig *rig);

/* One pair: gear 1 is the inner one. */
typedef struct ts_law_pair {
    int           z_1, z_2;
    double        m_n;     /* m */
    const double *omega_1; /* rad/s per condition, >= 0 */
} ts_law_pair;

typedef struct ts_mesh_law {
    const char *fault; /* NULL, or why these gears will not do: a sentence without a full stop */
    float      *ln_damage; /* see ts_mesh_law_size; +-INFINITY: at once, never */
    double     *w_most;    /* N/m, [condition * TS_LAW_PLACES + place]: above it, that condition by
                              itself wears the place out */
} ts_mesh_law;

enum { TS_LAW_PLACES = 6 };

/* Numbers that ln_damage has room for. */
size_t ts_mesh_law_size(size_t condition_count);

/* Fills in the table.  A pair that cannot be rated, whose contact ratio is below the limit of the
 * file, or whose teeth are undercut has a fault. */
ts_status ts_mesh_law_make(ts_mesh_rig *rig, const ts_law_pair *pair, ts_mesh_law *law);

#define TS_LAW_CONDITIONS_MOST 64

/* What is asked of a table. */
typedef struct ts_law_load {
    size_t        condition_count;
    const double *force;       /* N, signed: the sign tells the flank */
    bool          reversed[2]; /* is the other flank of that gear loaded too? */
} ts_law_load;

/* m/N: no narrower face bears a newton in that condition, whatever the others add. */
double ts_mesh_law_per_newton(const ts_mesh_law *law, size_t condition, const bool reversed[2]);

/* m: no narrower face bears the load, as each of its conditions by itself says; infinite without a
 * law. */
double ts_mesh_law_least(const ts_mesh_law *law, const ts_law_load *load);

/* Is a common face of b (m) wide enough? */
bool ts_mesh_law_bears(const ts_mesh_law *law, const ts_law_load *load, double b);

#endif
