/* draw/dxf.c: how does a shape become a record of a DXF file?
 *
 * Group codes and records as in the published DXF reference for release 2000 (from memory).
 * A group is two lines: its code, its value.
 */
#include "draw/dxf.h"

#include "draw/dxf_frame.h"
#include "draw/dxf_group.h"
#include "draw/lettering.h"

#include <math.h>

/* ---- pieces of a record ------------------------------------------------------------------- */

static double shown(const ts_dxf *dxf, double metres)
{
    return metres * (dxf->units == TS_UNITS_US ? 1.0 / 0.0254 : 1000.0);
}

static void number(ts_buffer *out, int code, double value)
{
    ts_buffer_print(out, "%s%d\n", code < 10 ? "  " : code < 100 ? " " : "", code);
    ts_buffer_number(out, value);
    ts_buffer_add(out, "\n");
}

static void length(ts_dxf *dxf, int code, double metres)
{
    number(&dxf->shapes, code, shown(dxf, metres));
}

static void place(ts_dxf *dxf, int code, ts_point at)
{
    length(dxf, code, at.x);
    length(dxf, code + 10, at.y);
    ts_buffer_print(&dxf->shapes, " %d\n0\n", code + 20);
}

static void begin(ts_dxf *dxf, const char *kind, const char *class, ts_dxf_layer layer)
{
    ts_buffer *out = &dxf->shapes;
    ts_buffer_print(out, "  0\n%s\n", kind);
    ts_dxf_handle(out, 5, dxf->handle++);
    ts_dxf_handle(out, 330, TS_DXF_MODEL_SPACE);
    ts_buffer_print(out, "100\nAcDbEntity\n  8\n%s\n100\n%s\n", ts_dxf_layer_name(layer), class);
}

static bool is_finite(ts_point at)
{
    return isfinite(at.x) && isfinite(at.y);
}

static void hold(ts_dxf *dxf, double x, double y)
{
    dxf->left  = fmin(dxf->left, x);
    dxf->right = fmax(dxf->right, x);
    dxf->low   = fmin(dxf->low, y);
    dxf->high  = fmax(dxf->high, y);
}

/* ---- shapes ------------------------------------------------------------------------------- */

void ts_dxf_begin(ts_dxf *dxf, ts_units units, ts_buffer *out)
{
    *dxf = (ts_dxf){.units  = units,
                    .handle = TS_DXF_FIRST_SHAPE,
                    .left   = INFINITY,
                    .right  = -(double)INFINITY,
                    .low    = INFINITY,
                    .high   = -(double)INFINITY,
                    .out    = out};
    ts_buffer_open(&dxf->shapes, out->allocator);
}

void ts_dxf_line(ts_dxf *dxf, ts_dxf_layer layer, ts_point a, ts_point b)
{
    if (!is_finite(a) || !is_finite(b))
        return;
    begin(dxf, "LINE", "AcDbLine", layer);
    place(dxf, 10, a);
    place(dxf, 11, b);
    hold(dxf, a.x, a.y);
    hold(dxf, b.x, b.y);
}

void ts_dxf_circle(ts_dxf *dxf, ts_dxf_layer layer, ts_point at, double radius)
{
    if (!is_finite(at) || !isfinite(radius) || !(radius > 0.0))
        return;
    begin(dxf, "CIRCLE", "AcDbCircle", layer);
    place(dxf, 10, at);
    length(dxf, 40, radius);
    hold(dxf, at.x - radius, at.y - radius);
    hold(dxf, at.x + radius, at.y + radius);
}

/* An arc reaches its ends, and the quarters of its circle that lie between them. */
static void hold_arc(ts_dxf *dxf, ts_point at, double radius, double from, double to)
{
    const double span = to - from - 2.0 * M_PI * floor((to - from) / (2.0 * M_PI));
    hold(dxf, at.x + radius * cos(from), at.y + radius * sin(from));
    hold(dxf, at.x + radius * cos(from + span), at.y + radius * sin(from + span));
    for (int i = 0; i < 4; i++) {
        const double quarter = (ceil(from / M_PI_2) + i) * M_PI_2;
        if (quarter < from + span)
            hold(dxf, at.x + radius * cos(quarter), at.y + radius * sin(quarter));
    }
}

void ts_dxf_arc(ts_dxf *dxf, ts_dxf_layer layer, ts_point at, double radius, double from, double to)
{
    if (!is_finite(at) || !isfinite(radius + from + to) || !(radius > 0.0))
        return;
    begin(dxf, "ARC", "AcDbCircle", layer);
    place(dxf, 10, at);
    length(dxf, 40, radius);
    ts_buffer_add(&dxf->shapes, "100\nAcDbArc\n");
    number(&dxf->shapes, 50, from * 180.0 / M_PI);
    number(&dxf->shapes, 51, to * 180.0 / M_PI);
    hold_arc(dxf, at, radius, from, to);
}

void ts_dxf_path(ts_dxf *dxf, ts_dxf_layer layer, const ts_point *points, size_t count, bool closed)
{
    for (size_t i = 0; i < count; i++)
        if (!is_finite(points[i]))
            return;
    if (count < 2)
        return;
    begin(dxf, "LWPOLYLINE", "AcDbPolyline", layer);
    ts_buffer_print(&dxf->shapes, " 90\n%zu\n 70\n%d\n", count, closed ? 1 : 0);
    for (size_t i = 0; i < count; i++) {
        length(dxf, 10, points[i].x);
        length(dxf, 20, points[i].y);
        hold(dxf, points[i].x, points[i].y);
    }
}

void ts_dxf_area(ts_dxf *dxf, ts_dxf_layer layer, ts_point low, ts_point high)
{
    const ts_point corners[4] = {low, {high.x, low.y}, high, {low.x, high.y}};
    ts_dxf_path(dxf, layer, corners, 4, true);
}

/* ---- words -------------------------------------------------------------------------------- */

/* A reader gives meaning to "%%", "^" and "\U+"; none of them reaches it from a name.  What is not
 * ASCII is written by its number, for the code page of the reader may be any. */
static void add_text(ts_buffer *out, const char *text)
{
    ts_buffer clean;
    ts_buffer_open(&clean, out->allocator);
    ts_add_clean(&clean, text);
    const ts_text whole = {clean.bytes != NULL ? clean.bytes : "", clean.length};
    for (size_t at = 0; at < whole.length;) {
        uint32_t     code  = 0;
        const size_t taken = ts_text_code_point(whole, at, &code);
        const bool   plain =
            taken == 1 && code >= 0x20 && code < 0x7F && code != '%' && code != '^' && code != '\\';
        if (plain) {
            ts_buffer_bytes(out, whole.at + at, 1);
        } else if (code > 0xFFFF) {
            ts_buffer_add(out, "?");
        } else {
            ts_buffer_add(out, "\\U+");
            ts_dxf_hex(out, code, 4);
        }
        at += taken > 0 ? taken : 1;
    }
    out->failed = out->failed || clean.failed;
    ts_buffer_close(&clean);
}

void ts_dxf_text(ts_dxf *dxf, ts_dxf_layer layer, ts_point at, double height, ts_dxf_anchor anchor,
                 const char *text)
{
    if (!is_finite(at) || text == NULL || *text == '\0')
        return;
    begin(dxf, "TEXT", "AcDbText", layer);
    place(dxf, 10, at);
    length(dxf, 40, height);
    ts_buffer_add(&dxf->shapes, "  1\n");
    add_text(&dxf->shapes, text);
    ts_buffer_print(&dxf->shapes, "\n  7\nSTANDARD\n 72\n%d\n", (int)anchor);
    place(dxf, 11, at);
    ts_buffer_add(&dxf->shapes, "100\nAcDbText\n");
}

double ts_dxf_letters(const ts_dxf *dxf)
{
    const double size = fmax(dxf->right - dxf->left, dxf->high - dxf->low);
    return isfinite(size) ? fmax(2.5e-3, size / 250.0) : 2.5e-3;
}

void ts_dxf_finish(ts_dxf *dxf)
{
    const bool any = dxf->left <= dxf->right;
    ts_dxf_head(dxf, any ? shown(dxf, dxf->left) : 0.0, any ? shown(dxf, dxf->low) : 0.0,
                any ? shown(dxf, dxf->right) : 0.0, any ? shown(dxf, dxf->high) : 0.0);
    ts_buffer_add(dxf->out, "  0\nSECTION\n  2\nENTITIES\n");
    if (dxf->shapes.length > 0)
        ts_buffer_bytes(dxf->out, dxf->shapes.bytes, dxf->shapes.length);
    ts_buffer_add(dxf->out, "  0\nENDSEC\n");
    ts_dxf_foot(dxf->out);
    dxf->out->failed = dxf->out->failed || dxf->shapes.failed;
    ts_buffer_close(&dxf->shapes);
}
