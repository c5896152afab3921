/* draw/strip_body.c: what hangs on both faces, how near to each other, and at which clock? */
#include "draw/dimension.h"
#include "draw/lettering.h"
#include "draw/unrolled.h"

#include <math.h>

/* ---- bodies ------------------------------------------------------------------------------ */

const ts_pad *ts_strip_pad(const ts_strip *strip, const ts_strip_shaft *one, int side)
{
    const uint32_t p = strip->scene->train->shafts[one->shaft].pad[side];
    return p == TS_NOWHERE ? NULL : &strip->scene->train->pads[p];
}

ts_area ts_strip_body(const ts_strip *strip, const ts_strip_shaft *one, int side)
{
    const double   r = one->r_body[side], length = one->length[side];
    const ts_point a = ts_strip_point(strip, one->s - r, side == TS_FRONT ? -length : strip->depth);
    if (!(r > 0.0) || !(length > 0.0))
        return (ts_area){a.x, a.y, 0.0, 0.0};
    return (ts_area){a.x, a.y, 2.0 * r * strip->px, length * strip->px};
}

/* The centre of mass: a circle with two quarters filled. */
static void draw_centre_of_mass(ts_canvas *canvas, ts_point at)
{
    const double r = 5.0;
    for (int quarter = 0; quarter < 2; quarter++) {
        ts_move_to(canvas, at);
        cairo_arc(canvas->cr, at.x, at.y, r, M_PI * quarter, M_PI * (quarter + 0.5));
        cairo_close_path(canvas->cr);
        ts_fill(canvas, TS_COLOUR_INK);
    }
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    ts_path_circle(canvas, at, r);
    ts_stroke(canvas);
    ts_note_area(&canvas->places, TS_PLACE_SYMBOL, 0,
                 (ts_area){at.x - r, at.y - r, 2.0 * r, 2.0 * r});
}

static void draw_body(const ts_strip *strip, const ts_strip_shaft *one, int side)
{
    ts_canvas    *canvas = &strip->scene->canvas;
    const ts_pad *pad    = ts_strip_pad(strip, one, side);
    const ts_area area   = ts_strip_body(strip, one, side);
    if (pad == NULL || !(area.w > 0.0))
        return;
    const ts_accessory *what = &strip->scene->drive->accessories[pad->accessory];
    ts_path_area(canvas, area);
    ts_use_colour(canvas, TS_COLOUR_PAPER, TS_LOOK_FIGURE_BODY_VEIL);
    cairo_fill_preserve(canvas->cr);
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    ts_stroke(canvas);
    if (!ts_measure_known(what->overhang))
        return;
    const double out = what->overhang.value;
    draw_centre_of_mass(
        canvas, ts_strip_point(strip, one->s, side == TS_FRONT ? -out : strip->depth + out));
}

void ts_strip_draw_bodies(const ts_strip *strip)
{
    for (size_t i = 0; i < strip->shaft_count; i++) {
        const ts_strip_shaft *one = &strip->shafts[i];
        for (int side = 0; side < 2; side++)
            if (ts_strip_pad(strip, one, side) && ts_strip_body(strip, one, side).w > 0.0)
                draw_body(strip, one, side);
    }
}

/* ---- gaps -------------------------------------------------------------------------------- */

static void hatch_overlap(const ts_strip *strip, ts_area a, ts_area b)
{
    const double left = fmax(a.x, b.x), right = fmin(a.x + a.w, b.x + b.w);
    const double top = fmax(a.y, b.y), low = fmin(a.y + a.h, b.y + b.h);
    if (right <= left || low <= top)
        return;
    ts_path_area(&strip->scene->canvas, (ts_area){left, top, right - left, low - top});
    ts_hatch(&strip->scene->canvas, TS_COLOUR_INK);
}

/* The true gap, dimensioned between the two drawn edges near the face; bold below what is wanted.
 */
static void draw_gap(const ts_strip *strip, size_t i, size_t j, int side)
{
    ts_scene     *scene = strip->scene;
    const ts_area a     = ts_strip_body(strip, &strip->shafts[i], side);
    const ts_area b     = ts_strip_body(strip, &strip->shafts[j], side);
    const double  gap =
        ts_strip_gap(strip, i, strip->shafts[i].r_body[side], j, strip->shafts[j].r_body[side]);
    const double wanted = scene->drive->limits.body_gap.value;
    const bool   narrow = ts_measure_known(scene->drive->limits.body_gap) && gap < wanted;
    const double y      = side == TS_FRONT ? strip->origin.y - 20.0
                                           : strip->origin.y + strip->depth * strip->px + 34.0;
    if (gap < 0.0)
        hatch_overlap(strip, a, b);
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_add_value(line, scene, gap, TS_KIND_LENGTH);
    if (narrow) {
        ts_buffer_add(line, " < ");
        ts_add_value(line, scene, wanted, TS_KIND_LENGTH);
    }
    ts_draw_dimension(scene, &(ts_dimension){.a      = a.x + a.w,
                                             .b      = b.x,
                                             .y      = y,
                                             .away   = side == TS_FRONT ? -1.0 : 1.0,
                                             .bold   = narrow,
                                             .beside = true,
                                             .text   = line->bytes ? line->bytes : ""});
}

void ts_strip_draw_gaps(const ts_strip *strip)
{
    for (int side = 0; side < 2; side++) {
        size_t last = SIZE_MAX;
        for (size_t i = 0; i < strip->shaft_count; i++) {
            if (!(ts_strip_body(strip, &strip->shafts[i], side).w > 0.0))
                continue;
            if (last != SIZE_MAX)
                draw_gap(strip, last, i, side);
            last = i;
        }
    }
}

/* ---- the clock and the centre distances -------------------------------------------------- */

static void draw_clock(const ts_strip *strip, double y)
{
    ts_canvas         *canvas = &strip->scene->canvas;
    const double       half   = M_PI / 12.0; /* half an hour */
    const ts_lettering how    = {
           .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK2};
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    ts_draw_line(canvas, (ts_point){ts_strip_point(strip, strip->left, 0.0).x, y},
                 (ts_point){ts_strip_point(strip, strip->right, 0.0).x, y});
    const int first = (int)ceil(strip->left / strip->R / half);
    const int last  = (int)floor(strip->right / strip->R / half);
    for (int k = first; k <= last; k++) {
        const double x          = ts_strip_point(strip, strip->R * half * k, 0.0).x;
        const double dial       = ts_scene_dial(strip->scene, half * k);
        const int    half_hours = (((int)lround(dial / half) % 24) + 24) % 24;
        const int    hour       = half_hours / 2;
        const bool   whole      = half_hours % 2 == 0;
        ts_use_pen(canvas, whole ? TS_PEN_2 : TS_PEN_1, TS_COLOUR_INK);
        ts_draw_line(canvas, (ts_point){x, y}, (ts_point){x, y + (whole ? 7.0 : 4.0)});
        if (half * strip->R * strip->px < 30.0 && !whole)
            continue;
        ts_buffer *line = ts_canvas_line(canvas);
        ts_buffer_print(line, "%d:%s", hour == 0 ? 12 : hour, whole ? "00" : "30");
        ts_write(canvas, (ts_point){x, y + 19.0}, line->bytes ? line->bytes : "", &how);
    }
}

static size_t strip_shaft_of(const ts_strip *strip, uint32_t shaft)
{
    size_t i = 0;
    while (i < strip->shaft_count && strip->shafts[i].shaft != shaft)
        i++;
    return i;
}

static void draw_centres(const ts_strip *strip, double y)
{
    ts_scene *scene = strip->scene;
    for (size_t i = 0; i < strip->shaft_count; i++) {
        const uint32_t m = scene->train->shafts[strip->shafts[i].shaft].mesh;
        if (m == TS_NOWHERE || scene->train->meshes[m].kind != TS_MESH_CYLINDRICAL)
            continue;
        const size_t j = strip_shaft_of(strip, scene->train->meshes[m].driver_shaft);
        if (j == strip->shaft_count || (j + 1 != i && i + 1 != j))
            continue;
        ts_buffer *line = ts_canvas_line(&scene->canvas);
        ts_add_value(line, scene, scene->motion->meshes[m].a_w, TS_KIND_LENGTH);
        ts_draw_dimension(scene,
                          &(ts_dimension){.a    = ts_strip_point(strip, strip->shafts[j].s, 0.0).x,
                                          .b    = ts_strip_point(strip, strip->shafts[i].s, 0.0).x,
                                          .y    = y,
                                          .away = -1.0,
                                          .text = line->bytes ? line->bytes : ""});
    }
}

void ts_strip_draw_scale(const ts_strip *strip)
{
    const double foot   = ts_strip_point(strip, 0.0, strip->depth + strip->behind).y + 40.0;
    ts_canvas   *canvas = &strip->scene->canvas;
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
    for (size_t i = 0; i < strip->shaft_count; i++) {
        const ts_strip_shaft *one = &strip->shafts[i];
        const ts_point top = ts_strip_point(strip, one->s, strip->depth + one->length[TS_REAR]);
        ts_draw_line(canvas, (ts_point){top.x, top.y + 12.0}, (ts_point){top.x, foot + 3.0});
    }
    draw_centres(strip, foot);
    draw_clock(strip, foot + 20.0);
}
