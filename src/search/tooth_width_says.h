/* search/tooth_width_says.h: what sets a width, in words? */
#ifndef TS_SEARCH_TOOTH_WIDTH_SAYS_H
#define TS_SEARCH_TOOTH_WIDTH_SAYS_H

#include "search/tooth_width.h"

/* The sized drive, as far as the words need it. */
typedef struct ts_width_scene {
    const ts_drive *drive;
    const ts_train *train;
    const ts_power *power;
} ts_width_scene;

/* Appends "crank, other flank: pitting of the pinion, with starter", "least width, with idler 2",
 * "greatest width, with idler 2" or "kept". */
void ts_width_says(ts_buffer *out, const ts_width_scene *scene, const ts_gear_width *width);

#endif
