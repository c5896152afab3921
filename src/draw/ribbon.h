/* draw/ribbon.h: power as bands through the meshes: as wide as it is large, pointing as it flows.
 */
#ifndef TS_DRAW_RIBBON_H
#define TS_DRAW_RIBBON_H

#include "draw/face.h"
#include "draw/obstacles.h"

/* One band from `a` to `b`, outwards from the engine; `power` (W) negative: it flows back from b
 * to a, towards the engine. */
typedef struct ts_ribbon {
    ts_point a, b;
    double   power;
    bool     headed; /* ends at a pad: with an arrow head        */
    uint32_t of;     /* mesh, or mesh_count + pad                */
} ts_ribbon;

typedef struct ts_ribbons {
    ts_ribbon *items;
    size_t     count;
    double     px; /* px a watt, the same in every condition of a drive */
} ts_ribbons;

/* Bands of the condition shown; those too small to be drawn are left out. */
ts_status ts_ribbons_lay(const ts_face *face, ts_ribbons *out);
void      ts_ribbons_avoid(const ts_ribbons *ribbons, ts_obstacles *obstacles);
void      ts_ribbons_draw(const ts_face *face, const ts_ribbons *ribbons);
/* What each tower shaft carries and each pad takes or gives, in words at the bands. */
void ts_ribbons_label(const ts_face *face, const ts_ribbons *ribbons, ts_obstacles *obstacles);
/* Is any band drawn wider than its power, because it could not be seen otherwise?  And in words,
 * good until the next line of the canvas: "below 2.7 kW not to scale". */
bool        ts_ribbons_any_thin(const ts_ribbons *ribbons);
const char *ts_ribbons_thin_says(const ts_face *face, const ts_ribbons *ribbons);
/* A piece of ribbon of a round power as the scale; returns its height. */
double ts_ribbons_draw_scale(const ts_face *face, const ts_ribbons *ribbons, ts_point at);

/* The balance of every spool and the share of every pad, in the column beside the picture. */
void ts_face_draw_balance(const ts_face *face);

#endif
