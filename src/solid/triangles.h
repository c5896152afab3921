/* solid/triangles.h: the surface of a part as triangles, for whoever shows it.
 *
 * Units     m, in the frame of the part: x along `right`, y along `up`, z along `axis`.
 * Sense     Seen from outside the corners of a triangle run counter-clockwise; a corner has the
 *           outward normal of its surface.  Of a casing only the outside is there.
 */
#ifndef TS_SOLID_TRIANGLES_H
#define TS_SOLID_TRIANGLES_H

#include "base/buffer.h"
#include "solid/bodies.h"

typedef struct ts_triangles {
    ts_buffer places;  /* 3 binary32 a corner, little end first */
    ts_buffer normals; /* the same                              */
    ts_buffer indices; /* 1 uint32 each, 3 a triangle           */
    uint32_t  corners, index_count;
    float     low[3], high[3]; /* of the places, as they are written */
} ts_triangles;

void ts_triangles_open(ts_triangles *out, const ts_allocator *allocator);
void ts_triangles_close(ts_triangles *out);
/* Round surfaces keep to `chord_error` (m).  TS_OK or TS_NO_MEMORY. */
ts_status ts_triangles_of(const ts_part *part, double chord_error, ts_arena *arena,
                          ts_triangles *out);

/* ---- between its files ---- */
typedef struct ts_corner {
    double x, y, z, nx, ny, nz;
} ts_corner;
uint32_t ts_add_corner(ts_triangles *out, ts_corner corner); /* the number of it */
void     ts_add_triangle(ts_triangles *out, uint32_t a, uint32_t b, uint32_t c);
/* a, b on one slice, c, d on the next, both counter-clockwise seen against z. */
void ts_add_quad(ts_triangles *out, uint32_t a, uint32_t b, uint32_t c, uint32_t d);

/* Cuts a plane region into triangles: `loops` closed outlines end to end, `sizes` points each.
 * Calls nothing; `out` gets three numbers a triangle, counter-clockwise, of the points in the order
 * in which they stand.  Returns how many triangles; SIZE_MAX without memory. */
size_t ts_cut_region(const ts_outline_point *points, const size_t *sizes, size_t loops,
                     ts_arena *arena, uint32_t **out);

#endif
