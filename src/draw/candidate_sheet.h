/* draw/candidate_sheet.h: which arrangements are there, side by side? */
#ifndef TS_DRAW_CANDIDATE_SHEET_H
#define TS_DRAW_CANDIDATE_SHEET_H

#include "draw/candidates.h"
#include "draw/scene.h"
#include "search/arrange_verify.h"

ts_status ts_draw_candidates(ts_scene *scene);

/* One shaft of a candidate, where it stands seen from behind. */
typedef struct ts_stood {
    const ts_arranged_shaft *shaft;
    size_t                   box;
    int                      side;  /* 0 clockwise, 1 anticlockwise, 2 the input        */
    uint32_t                 place; /* from the input outwards, from 1                  */
    uint32_t                 order; /* among shafts with pads of its branch, from 1     */
    double                   x, y;  /* m from the engine axis, y upwards, from behind   */
    double                   pitch, step_pitch; /* m, radius; 0: no second gear           */
    int                      sense;             /* +1 anticlockwise seen from behind    */
    bool                     differs;           /* from where the reference has its pads */
} ts_stood;

enum { TS_STOOD_MOST = TS_ARRANGE_BOXES * TS_ARRANGE_ROW };

/* The shafts of a candidate, box by box from the clockwise end to the anticlockwise end; how many.
 * `differs` is false of all. */
size_t ts_stand_candidate(const ts_scene *scene, const ts_candidate *one, ts_stood *out);

/* Draws what less wrap costs. */
double ts_front_chart_height(const ts_candidates *all);
void   ts_draw_front_chart(ts_scene *scene, ts_area area);

#endif
