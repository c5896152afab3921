/* draw/float_view.h: the take-offs in section, with the travel of their spools to scale, and the
 * three ways to bear it side by side. */
#ifndef TS_DRAW_FLOAT_VIEW_H
#define TS_DRAW_FLOAT_VIEW_H

#include "draw/scene.h"
#include "rating/drive_float.h"

ts_status ts_draw_float(ts_scene *scene);

/* ---- between the parts of the figure ---- */

/* One scheme in section: what stands is tinted as the casing, what the spool moves as selected. */
typedef struct ts_float_section {
    ts_scene             *scene;
    const ts_floats      *floats;
    const ts_drive_float *item;
    ts_float_scheme       scheme;
    ts_area               area;
    bool                  large; /* drawn with stronger pens than those for comparison */
} ts_float_section;

void ts_float_draw_section(const ts_float_section *section);

/* Where each scheme stops, over the travel: one ruler for the three. */
double ts_float_ruler_height(void);
void   ts_float_draw_ruler(ts_scene *scene, const ts_drive_float *item, ts_area area);

/* "-0.2..0.7 mm", as it lives in the arena of the scene. */
const char *ts_float_span_words(ts_scene *scene, double from, double to);

#endif
