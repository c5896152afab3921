/* draw/dxf_strip.c: the arcs of the boxes laid flat in true size, one box below the other: gears
 * with their face widths, bodies on both faces, axes. */
#include "draw/dxf_view.h"
#include "draw/unrolled.h"

#include <math.h>

typedef struct strip_view {
    const ts_strip *strip;
    ts_dxf         *dxf;
    double          top; /* m, of the front face on the drawing */
} strip_view;

/* s along the arc to the right from where the drawing begins, z rearward from the front face
 * downwards. */
static ts_point seen(const strip_view *v, double s, double z)
{
    return (ts_point){s - v->strip->left, v->top - z};
}

static void box(const strip_view *v, ts_dxf_layer layer, double left, double right, double front,
                double rear)
{
    ts_dxf_area(v->dxf, layer, seen(v, left, rear), seen(v, right, front));
}

static void wall(const strip_view *v)
{
    const double thick = TS_LOOK_FIGURE_BOX_WALL_MM * 1e-3;
    double       left = INFINITY, right = -(double)INFINITY;
    for (size_t i = 0; i < v->strip->shaft_count; i++) {
        const ts_strip_shaft *one = &v->strip->shafts[i];
        left                      = fmin(left, one->s - one->r_gear - thick);
        right                     = fmax(right, one->s + one->r_gear + thick);
    }
    box(v, TS_DXF_BOX, left, right, 0.0, v->strip->depth);
}

/* Without a known face width there is no shape of a true size, so there is none. */
static void gear(const strip_view *v, const ts_strip_gear *one)
{
    const double s = v->strip->shafts[one->shaft].s, z = v->strip->plane_z[one->plane];
    if (!isfinite(one->face))
        return;
    const double front = z - 0.5 * one->face, rear = z + 0.5 * one->face;
    box(v, TS_DXF_TIP, s - one->r_tip, s + one->r_tip, front, rear);
    for (int side = -1; side <= 1; side += 2)
        ts_dxf_line(v->dxf, TS_DXF_PITCH, seen(v, s + side * one->r, front - 1.5e-3),
                    seen(v, s + side * one->r, rear + 1.5e-3));
}

static void body(const strip_view *v, const ts_strip_shaft *one, int side)
{
    const double r = one->r_body[side], length = one->length[side];
    const double from = side == TS_FRONT ? -length : v->strip->depth;
    if (r > 0.0 && length > 0.0)
        box(v, side == TS_FRONT ? TS_DXF_BODY_FRONT : TS_DXF_BODY_REAR, one->s - r, one->s + r,
            from, from + length);
}

static void shaft(const strip_view *v, const ts_strip_shaft *one)
{
    body(v, one, TS_FRONT);
    body(v, one, TS_REAR);
    ts_dxf_line(v->dxf, TS_DXF_AXIS, seen(v, one->s, -one->length[TS_FRONT] - 5e-3),
                seen(v, one->s, v->strip->depth + one->length[TS_REAR] + 5e-3));
}

static void words(const strip_view *v, const ts_strip_shaft *one, double letters)
{
    const ts_train *train = v->strip->scene->train;
    ts_buffer      *line  = ts_canvas_line(&v->strip->scene->canvas);
    ts_buffer_print(line, "%u", train->shafts[one->shaft].number);
    ts_dxf_text(v->dxf, TS_DXF_WORDS, seen(v, one->s, 0.5 * v->strip->depth), letters,
                TS_DXF_MIDDLE, line->bytes);
    for (int side = 0; side < 2; side++) {
        const ts_pad *pad = ts_strip_pad(v->strip, one, side);
        if (pad == NULL)
            continue;
        const double z = side == TS_FRONT
                             ? -one->length[side] - 5e-3 - letters
                             : v->strip->depth + one->length[side] + 5e-3 + 2.0 * letters;
        ts_dxf_text(v->dxf, TS_DXF_WORDS, seen(v, one->s, z), letters, TS_DXF_MIDDLE, pad->name);
    }
}

static void box_of(const strip_view *v)
{
    wall(v);
    for (size_t i = 0; i < v->strip->gear_count; i++)
        gear(v, &v->strip->gears[i]);
    for (size_t i = 0; i < v->strip->shaft_count; i++)
        shaft(v, &v->strip->shafts[i]);
}

ts_status ts_dxf_strips(ts_scene *scene, ts_dxf *dxf)
{
    const size_t boxes  = scene->drive->drive_count;
    ts_strip    *strips = TS_TAKE(scene->arena, ts_strip, boxes);
    strip_view  *views  = TS_TAKE(scene->arena, strip_view, boxes);
    double       top    = 0.0;
    if (strips == NULL || views == NULL)
        return TS_NO_MEMORY;
    for (uint32_t d = 0; d < boxes; d++) {
        const ts_status status = ts_strip_gather(scene, d, &strips[d]);
        if (status != TS_OK)
            return status;
        views[d] = (strip_view){&strips[d], dxf, top - strips[d].ahead};
        if (strips[d].shaft_count > 0) {
            box_of(&views[d]);
            top = dxf->low - 0.1;
        }
    }
    const double letters = ts_dxf_letters(dxf);
    for (size_t d = 0; d < boxes; d++)
        for (size_t i = 0; i < strips[d].shaft_count; i++)
            words(&views[d], &strips[d].shafts[i], letters);
    return TS_OK;
}
