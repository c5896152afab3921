/* draw/root_view.h: the critical sections of both roots of one mesh. */
#ifndef TS_DRAW_ROOT_VIEW_H
#define TS_DRAW_ROOT_VIEW_H

#include "draw/root_section.h"
#include "draw/scene.h"

ts_status ts_draw_root(ts_scene *scene);

/* ---- between the parts of the figure ---- */

typedef struct ts_root_panel {
    ts_scene       *scene;
    uint32_t        gear;  /* of the train                                             */
    int             index; /* 0 or 1 in the pair                                       */
    bool            found; /* there is a section                                       */
    ts_root_section section;
    ts_area         area; /* of the drawing                                          */
    double          px;   /* px a metre                                              */
    double          base; /* m, the height that stands on the lower edge of the area */
} ts_root_panel;

ts_point ts_root_point(const ts_root_panel *panel, ts_outline_point point);
/* Outline, load, tangents, chord, arm and fillet radius. */
void ts_root_draw_section(const ts_root_panel *panel);

#endif
