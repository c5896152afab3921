/* draw/pad_faces.h: the faces of the boxes that bear pads, each as who faces it sees it. */
#ifndef TS_DRAW_PAD_FACES_H
#define TS_DRAW_PAD_FACES_H

#include "draw/scene.h"

/* Both faces side by side, and a table of every pad: its place, its spline, what stands on it. */
ts_status ts_draw_pads(ts_scene *scene);

/* m, of the major circle of the spline of what stands on a pad; NaN where its number tells none. */
double ts_pad_spline_radius(const ts_scene *scene, uint32_t pad);
/* Is the shaft of this pad placed, so that the pad can be shown? */
bool ts_pad_shown(const ts_scene *scene, uint32_t pad);

#endif
