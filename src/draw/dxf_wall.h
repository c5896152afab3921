/* draw/dxf_wall.h: the outline of a casing (solid/wall.h) in a DXF file. */
#ifndef TS_DRAW_DXF_WALL_H
#define TS_DRAW_DXF_WALL_H

#include "draw/dxf.h"
#include "solid/wall.h"

/* TS_NO_MEMORY or TS_OK. */
ts_status ts_dxf_wall(ts_dxf *dxf, ts_dxf_layer layer, const ts_wall_disc *discs, size_t count,
                      ts_arena *arena);

#endif
