/* draw/dxf_wall.h: the outline of discs joined by their common tangents, as lines and arcs. */
#ifndef TS_DRAW_DXF_WALL_H
#define TS_DRAW_DXF_WALL_H

#include "base/arena.h"
#include "draw/dxf.h"

typedef struct ts_wall_disc {
    ts_point at;
    double   r;
    size_t   joined; /* to that disc; its own index: to none */
} ts_wall_disc;

/* TS_NO_MEMORY or TS_OK. */
ts_status ts_dxf_wall(ts_dxf *dxf, ts_dxf_layer layer, const ts_wall_disc *discs, size_t count,
                      ts_arena *arena);

#endif
