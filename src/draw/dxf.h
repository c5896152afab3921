/* draw/dxf.h: lines, circles and words as a DXF file of release 2000 (AC1015), in true size.
 *
 * What stands where is in metres as seen, x to the right and y upwards; the file has them in the
 * unit of its header variable $INSUNITS.  Every shape lies on a layer that says what it is, and has
 * the layer's colour, line type and width.  Numbers are written in the shortest form that reads
 * back to the same double, so nothing is lost on the way.  A writer that failed takes every further
 * call and does nothing.
 */
#ifndef TS_DRAW_DXF_H
#define TS_DRAW_DXF_H

#include "base/buffer.h"
#include "draw/dxf_group.h"
#include "draw/places.h"
#include "quantity/quantity.h"

/* Where a text stands beside its point. */
typedef enum ts_dxf_anchor { TS_DXF_LEFT, TS_DXF_MIDDLE, TS_DXF_RIGHT } ts_dxf_anchor;

typedef struct ts_dxf {
    ts_buffer  shapes; /* the entities so far */
    ts_units   units;
    uint32_t   handle;                 /* of the next one */
    double     left, right, low, high; /* m, of all shapes; words left out */
    ts_buffer *out;
} ts_dxf;

void ts_dxf_begin(ts_dxf *dxf, ts_units units, ts_buffer *out);
void ts_dxf_line(ts_dxf *dxf, ts_dxf_layer layer, ts_point a, ts_point b);
void ts_dxf_circle(ts_dxf *dxf, ts_dxf_layer layer, ts_point at, double radius);
/* Counter-clockwise from `from` to `to`, rad from the x axis. */
void ts_dxf_arc(ts_dxf *dxf, ts_dxf_layer layer, ts_point at, double radius, double from,
                double to);
void ts_dxf_path(ts_dxf *dxf, ts_dxf_layer layer, const ts_point *points, size_t count,
                 bool closed);
void ts_dxf_area(ts_dxf *dxf, ts_dxf_layer layer, ts_point low, ts_point high);
/* One line of letters `height` m high; whatever the text holds stays one harmless line. */
void ts_dxf_text(ts_dxf *dxf, ts_dxf_layer layer, ts_point at, double height, ts_dxf_anchor anchor,
                 const char *text);
/* Height of letters, m, that suits what was drawn so far. */
double ts_dxf_letters(const ts_dxf *dxf);
/* Writes the whole file to `out`, and closes. */
void ts_dxf_finish(ts_dxf *dxf);

#endif
