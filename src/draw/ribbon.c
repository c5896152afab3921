/* draw/ribbon.c: how does power run through the train?  One band a mesh, one a pad. */
#include "draw/ribbon.h"

#include "draw/lettering.h"

#include <math.h>

/* ---- what there is to draw --------------------------------------------------------------- */

static double largest_power(const ts_face *face)
{
    const ts_train *train = face->scene->train;
    double          most  = 0.0;
    for (size_t i = 0; i < (size_t)face->scene->motion->condition_count * train->mesh_count; i++)
        for (int side = 0; side < 2; side++)
            if (isfinite(face->scene->power->mesh[i].P[side]))
                most = fmax(most, fabs(face->scene->power->mesh[i].P[side]));
    return most;
}

static double mean_radius(const ts_face *face)
{
    double   sum   = 0.0;
    uint32_t count = 0;
    for (uint32_t s = 0; s < face->scene->train->shaft_count; s++)
        if (face->shafts[s].shown) {
            sum += face->shafts[s].r_main;
            count++;
        }
    return count ? sum / count : 0.0;
}

/* The width of the look times 1, 2 or 5 and a power of ten, so that the widest band of all
 * conditions stays below its greatest width and near the radius of the gears: bands of two
 * conditions can be compared. */
static double px_a_watt(const ts_face *face)
{
    const double token = TS_LOOK_RIBBON_PX_PER_KW * 1e-3, most = largest_power(face);
    if (!(most > 0.0))
        return token;
    const double widest = fmin(TS_LOOK_RIBBON_MOST_PX, fmax(12.0, 1.1 * mean_radius(face)));
    const double share  = widest / (most * token);
    const double decade = pow(10.0, floor(log10(share)));
    const double rest   = share / decade;
    return token * decade * (rest >= 5.0 ? 5.0 : rest >= 2.0 ? 2.0 : 1.0);
}

static double width_of(const ts_ribbons *ribbons, const ts_ribbon *one)
{
    return fmax(TS_LOOK_RIBBON_LEAST_PX, fabs(one->power) * ribbons->px);
}

static void add(ts_ribbons *out, const ts_ribbon *one)
{
    const bool sound = isfinite(one->a.x) && isfinite(one->a.y) && isfinite(one->b.x) &&
                       isfinite(one->b.y) && isfinite(one->power);
    if (sound && fabs(one->power) >= 40.0 && ts_distance(one->a, one->b) > 2.0)
        out->items[out->count++] = *one;
}

/* From the bevel on the spool, or from the driver's axis, to the axis of the driven shaft. */
static void lay_mesh(const ts_face *face, ts_ribbons *out, uint32_t m)
{
    const ts_train        *train = face->scene->train;
    const ts_mesh         *mesh  = &train->meshes[m];
    const ts_mesh_load    *load  = ts_scene_mesh_load(face->scene, m);
    const ts_shaft_motion *a     = &face->scene->motion->shafts[mesh->driver_shaft];
    const ts_shaft_motion *b     = &face->scene->motion->shafts[mesh->driven_shaft];
    if (!b->placed || train->shafts[mesh->driver_shaft].kind == TS_SHAFT_TOWER)
        return; /* a tower shaft is one band, from the spool to the box */
    ts_ribbon one = {.b = ts_face_point(face, b->x, b->y), .power = load->P[0], .of = m};
    if (train->shafts[mesh->driver_shaft].kind == TS_SHAFT_SPOOL) {
        const double r = face->scene->motion->meshes[m].solved
                             ? face->scene->motion->meshes[m].r_1 * face->px
                             : 0.0;
        one.a =
            ts_polar(face->engine, r, atan2(one.b.y - face->engine.y, one.b.x - face->engine.x));
    } else {
        one.a = ts_face_point(face, a->x, a->y);
    }
    add(out, &one);
}

static void lay_pad(const ts_face *face, ts_ribbons *out, uint32_t p)
{
    const ts_train      *train = face->scene->train;
    const ts_pad        *pad   = &train->pads[p];
    const ts_face_shaft *shaft = &face->shafts[pad->shaft];
    if (!shaft->shown)
        return;
    const bool both = train->shafts[pad->shaft].pad[0] != TS_NOWHERE &&
                      train->shafts[pad->shaft].pad[1] != TS_NOWHERE;
    const double    lean = both ? (pad->face == TS_REAR ? 0.5 : -0.5) : 0.0;
    const double    away = atan2(shaft->at.y - face->engine.y, shaft->at.x - face->engine.x) + lean;
    const double    edge = fmax(shaft->r_gear, shaft->r_body[pad->face]) + 4.0;
    const ts_ribbon one  = {.a      = shaft->at,
                            .b      = ts_polar(shaft->at, edge, away),
                            .power  = ts_scene_pad_load(face->scene, p)->P,
                            .headed = true,
                            .of     = train->mesh_count + p};
    add(out, &one);
}

ts_status ts_ribbons_lay(const ts_face *face, ts_ribbons *out)
{
    const ts_train *train = face->scene->train;
    *out                  = (ts_ribbons){.px = px_a_watt(face)};
    out->items = TS_TAKE(face->scene->arena, ts_ribbon, train->mesh_count + train->pad_count);
    if (!out->items)
        return TS_NO_MEMORY;
    for (uint32_t m = 0; m < train->mesh_count; m++)
        lay_mesh(face, out, m);
    for (uint32_t p = 0; p < train->pad_count; p++)
        lay_pad(face, out, p);
    return TS_OK;
}

void ts_ribbons_avoid(const ts_ribbons *ribbons, ts_obstacles *obstacles)
{
    for (size_t i = 0; i < ribbons->count; i++) {
        const ts_ribbon *one  = &ribbons->items[i];
        const double     half = 0.5 * width_of(ribbons, one) + 2.0;
        const double     turn = atan2(one->b.y - one->a.y, one->b.x - one->a.x) + 0.5 * M_PI;
        const ts_point   tip  = ts_polar(one->b, one->headed ? 14.0 : 0.0, turn - 0.5 * M_PI);
        for (int side = -1; side <= 1; side++)
            ts_avoid_line(obstacles, ts_polar(one->a, side * half, turn),
                          ts_polar(tip, side * half, turn), 60.0);
    }
}

/* ---- drawing ----------------------------------------------------------------------------- */

static void stroke_band(ts_canvas *canvas, const ts_ribbon *one, double width, ts_colour colour)
{
    ts_use_pen(canvas, TS_PEN_1, colour);
    cairo_set_line_width(canvas->cr, width);
    ts_draw_line(canvas, one->a, one->b);
}

/* Stripes across a band say that its power flows towards the engine. */
static void stripe(ts_canvas *canvas, const ts_ribbon *one, double width)
{
    static const double dash[2] = {1.6, TS_LOOK_RIBBON_STRIPE_PITCH_PX - 1.6};
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_PAPER);
    cairo_set_line_width(canvas->cr, width);
    cairo_set_dash(canvas->cr, dash, 2, 0.0);
    ts_draw_line(canvas, one->a, one->b);
}

static void draw_chevron(ts_canvas *canvas, ts_point at, double aim, double width, ts_colour colour)
{
    if (width < 6.0) { /* no room inside: a small head on the line */
        const double head = 8.0 + 1.2 * width;
        ts_draw_head(canvas, ts_polar(at, 0.5 * head, aim), aim, head, colour);
        return;
    }
    const double   h   = fmax(3.2, fmin(9.0, 0.34 * width));
    const ts_point tip = ts_polar(at, 0.5 * h, aim), back = ts_polar(at, -0.5 * h, aim);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_PAPER);
    cairo_set_line_width(canvas->cr, width < 12.0 ? 1.6 : 2.0);
    ts_move_to(canvas, ts_polar(back, h, aim + 0.5 * M_PI));
    ts_line_to(canvas, tip);
    ts_line_to(canvas, ts_polar(back, -h, aim + 0.5 * M_PI));
    ts_stroke(canvas);
}

static void draw_chevrons(ts_canvas *canvas, const ts_ribbon *one, double width, ts_colour colour)
{
    const double length = ts_distance(one->a, one->b);
    const double along  = atan2(one->b.y - one->a.y, one->b.x - one->a.x);
    const double aim    = one->power < 0.0 ? along + M_PI : along;
    const double pitch  = TS_LOOK_RIBBON_CHEVRON_PITCH_PX;
    const double first  = TS_LOOK_FIGURE_NUMBER_RADIUS + 8.0;
    for (int i = 0; first + i * pitch < length - 5.0; i++)
        draw_chevron(canvas, ts_polar(one->a, first + i * pitch, along), aim, width, colour);
}

/* A pad that takes gets a head that points out of the drive, one that drives a head into it. */
static void draw_pad_head(ts_canvas *canvas, const ts_ribbon *one, double width, ts_colour colour)
{
    const double   along = atan2(one->b.y - one->a.y, one->b.x - one->a.x);
    const double   half = fmax(6.0, 0.72 * width), deep = fmax(8.0, 0.8 * width);
    const bool     out     = one->power > 0.0;
    const ts_point base    = ts_polar(one->b, out ? 0.0 : deep, along);
    const ts_point tip     = ts_polar(one->b, out ? deep : 0.0, along);
    const ts_point head[3] = {tip, ts_polar(base, half, along + 0.5 * M_PI),
                              ts_polar(base, -half, along + 0.5 * M_PI)};
    ts_path_polygon(canvas, head, 3);
    ts_fill_and_stroke(canvas, colour, TS_PEN_2, TS_COLOUR_PAPER);
}

static ts_colour colour_of(const ts_ribbon *one)
{
    return one->power < 0.0 ? TS_COLOUR_BACK : TS_COLOUR_POWER;
}

static void draw_band(const ts_face *face, const ts_ribbons *ribbons, const ts_ribbon *one)
{
    ts_canvas      *canvas = &face->scene->canvas;
    const double    width  = width_of(ribbons, one);
    const ts_colour colour = colour_of(one);
    stroke_band(canvas, one, width, colour);
    if (one->power < 0.0 && width > 3.0)
        stripe(canvas, one, width);
    draw_chevrons(canvas, one, width, colour);
    if (one->headed)
        draw_pad_head(canvas, one, width, colour);
    const bool back = one->power < 0.0;
    ts_note_line(&canvas->places, TS_PLACE_RIBBON, one->of, back ? one->b : one->a,
                 back ? one->a : one->b);
}

/* Bands end round under the number circles, so that turns have no notches. */
static void draw_joint(const ts_face *face, const ts_ribbons *ribbons, uint32_t s)
{
    double    most   = 0.0;
    ts_colour colour = TS_COLOUR_POWER;
    for (size_t i = 0; i < ribbons->count; i++) {
        const ts_ribbon *one   = &ribbons->items[i];
        const double     width = width_of(ribbons, one);
        const bool       here  = ts_distance(one->a, face->shafts[s].at) < 0.5 ||
                          (!one->headed && ts_distance(one->b, face->shafts[s].at) < 0.5);
        if (here && width > most) {
            most   = width;
            colour = colour_of(one);
        }
    }
    if (most > 2.0 * face->shafts[s].r_number)
        ts_draw_dot(&face->scene->canvas, face->shafts[s].at, 0.5 * most, colour);
}

void ts_ribbons_draw(const ts_face *face, const ts_ribbons *ribbons)
{
    ts_canvas *canvas = &face->scene->canvas;
    for (size_t i = 0; i < ribbons->count; i++)
        stroke_band(canvas, &ribbons->items[i],
                    width_of(ribbons, &ribbons->items[i]) + 2.0 * TS_LOOK_RIBBON_HALO_PX,
                    TS_COLOUR_PAPER);
    for (uint32_t s = 0; s < face->scene->train->shaft_count; s++)
        if (face->shafts[s].shown)
            draw_joint(face, ribbons, s);
    for (size_t i = 0; i < ribbons->count; i++)
        draw_band(face, ribbons, &ribbons->items[i]);
}

bool ts_ribbons_any_thin(const ts_ribbons *ribbons)
{
    for (size_t i = 0; i < ribbons->count; i++)
        if (fabs(ribbons->items[i].power) * ribbons->px < TS_LOOK_RIBBON_LEAST_PX)
            return true;
    return false;
}

const char *ts_ribbons_thin_says(const ts_face *face, const ts_ribbons *ribbons)
{
    ts_buffer *line = ts_canvas_line(&face->scene->canvas);
    ts_buffer_add(line, "below ");
    ts_add_shown(line, face->scene, TS_LOOK_RIBBON_LEAST_PX / ribbons->px, TS_KIND_POWER);
    ts_buffer_add(line, " not to scale");
    return line->bytes ? line->bytes : "";
}

double ts_ribbons_draw_scale(const ts_face *face, const ts_ribbons *ribbons, ts_point at)
{
    ts_canvas      *canvas = &face->scene->canvas;
    const double    unit   = ts_scene_in_unit(face->scene, 1.0, TS_KIND_POWER);
    const double    wanted = 12.0 / ribbons->px * unit, decade = pow(10.0, floor(log10(wanted)));
    const double    share = wanted / decade;
    const double    shown = decade * (share >= 5.0 ? 5.0 : share >= 2.0 ? 2.0 : 1.0);
    const double    high  = shown / unit * ribbons->px;
    const ts_ribbon one   = {.a     = {at.x, at.y + 0.5 * high},
                             .b     = {at.x + 60.0, at.y + 0.5 * high},
                             .power = shown / unit};
    stroke_band(canvas, &one, high, TS_COLOUR_POWER);
    draw_chevrons(canvas, &one, high, TS_COLOUR_POWER);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    const double x = at.x + 66.0;
    ts_draw_line(canvas, (ts_point){x - 3.0, at.y}, (ts_point){x + 3.0, at.y});
    ts_draw_line(canvas, (ts_point){x - 3.0, at.y + high}, (ts_point){x + 3.0, at.y + high});
    ts_draw_line(canvas, (ts_point){x, at.y}, (ts_point){x, at.y + high});
    ts_buffer *line = ts_canvas_line(canvas);
    ts_add_number(line, shown, shown < 1.0 ? 1 : 0);
    ts_buffer_print(line, " %s", ts_scene_unit(face->scene, TS_KIND_POWER));
    const ts_lettering how = {.size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK};
    ts_write(canvas, (ts_point){x + 8.0, at.y + 0.5 * high + 4.0}, line->bytes ? line->bytes : "",
             &how);
    return high;
}
