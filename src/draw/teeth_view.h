/* draw/teeth_view.h: one cylindrical mesh, tooth in space, with everything that touches. */
#ifndef TS_DRAW_TEETH_VIEW_H
#define TS_DRAW_TEETH_VIEW_H

#include "draw/pair_pose.h"
#include "draw/scene.h"

ts_status ts_draw_teeth(ts_scene *scene);

/* ---- between the parts of the figure ---- */

typedef struct ts_teeth_view {
    ts_scene             *scene;
    uint32_t              mesh;
    const ts_mesh_load   *load; /* of the condition shown */
    const ts_mesh_motion *motion;
    ts_pair_pose          pose;
    bool                  posed;    /* there is something to be drawn         */
    const char           *fault;    /* why not all is drawn; NULL: all is     */
    ts_tooth_shape        shape[2]; /* count 0: its circles alone             */
    ts_area               picture;  /* the drawing, without labels beside it  */
    ts_area               column;   /* of tables                              */
    ts_point              pitch;    /* the pitch point on the sheet           */
    double                px;       /* px a metre                             */
} ts_teeth_view;

ts_point ts_teeth_point(const ts_teeth_view *view, ts_outline_point point);
/* Is gear 2 driving gear 1 in the condition shown? */
bool ts_teeth_backward(const ts_teeth_view *view);

/* m: the diameter at which the involute of gear 0 or 1 really ends at its root, undercut or not,
 * and what is left of it along the path below the contact; negative: contact is missing there.  NaN
 * where no outline is known. */
double ts_teeth_root_form(const ts_teeth_view *view, int gear);
double ts_teeth_involute_left(const ts_teeth_view *view, int gear);

/* Outlines, working parts of the flanks, circles with their names. */
void ts_teeth_draw_gears(const ts_teeth_view *view);
void ts_teeth_draw_circles(const ts_teeth_view *view);
/* Line of action, path of contact, A to E. */
void ts_teeth_draw_path(const ts_teeth_view *view);
/* Tables and, below them, the sliding along the path. */
void   ts_teeth_draw_tables(const ts_teeth_view *view);
double ts_teeth_tables_height(void);
void   ts_teeth_draw_sliding(const ts_teeth_view *view, ts_area area);

#endif
