/* pump/sump_level.h: where does the oil of a sump lie when the engine is not level?
 *
 * Sump      A box in the axes of the engine: length rearward, width about its middle, height.
 * Attitude  What the oil feels: pitch nose up, roll right side down; speeding up counts as nose up.
 * Surface   A plane across the pull; the oil below it is what lies in the sump when level.
 */
#ifndef TS_PUMP_SUMP_LEVEL_H
#define TS_PUMP_SUMP_LEVEL_H

typedef struct ts_sump_box {
    double length, width, height; /* m */
    double depth;                 /* m, of the oil when level: 0 to height */
} ts_sump_box;

typedef struct ts_pull {
    double rearward, rightward, upward; /* of length 1; level: 0, 0, -1 */
} ts_pull;

ts_pull ts_pull_of(double pitch, double roll);

/* Share of the box that lies within t of its corner which the pull leads to, counted along it. */
double ts_sump_share(const ts_sump_box *box, const ts_pull *pull, double t);

/* Where the surface lies, counted like t above. */
double ts_sump_surface(const ts_sump_box *box, const ts_pull *pull);

typedef struct ts_sump_place {
    double rearward, rightward, above; /* m, from the front wall, the middle and the floor */
} ts_sump_place;

/* m of oil over a place, along the pull; negative: the place is dry. */
double ts_sump_cover(const ts_sump_box *box, const ts_pull *pull, double surface,
                     const ts_sump_place *place);

#endif
