/* draw/dxf_wall.c: with which shapes does a DXF file show a casing? */
#include "draw/dxf_wall.h"

#include <math.h>

static ts_point seen(ts_outline_point at)
{
    return (ts_point){at.x, at.y};
}

ts_status ts_dxf_wall(ts_dxf *dxf, ts_dxf_layer layer, const ts_wall_disc *discs, size_t count,
                      ts_arena *arena)
{
    ts_wall_line    wall;
    const ts_status status = ts_wall_trace(discs, count, arena, &wall);
    for (size_t i = 0; status == TS_OK && i < wall.count; i++) {
        const ts_wall_piece *one = &wall.pieces[i];
        if (!(one->r > 0.0))
            ts_dxf_line(dxf, layer, seen(one->a), seen(one->b));
        else if (one->to - one->from > 2.0 * M_PI - 1e-12)
            ts_dxf_circle(dxf, layer, seen(one->at), one->r);
        else
            ts_dxf_arc(dxf, layer, seen(one->at), one->r, one->from,
                       one->to > 2.0 * M_PI ? one->to - 2.0 * M_PI : one->to);
    }
    return status;
}
