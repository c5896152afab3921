/* draw/float_section.c: what lies where along the spool in each way to bear its movement? */
#include "draw/dimension.h"
#include "draw/float_shape.h"
#include "draw/float_view.h"
#include "draw/lettering.h"
#include "draw/value_table.h"

#include <math.h>

#define HUB  1.3  /* outside of the hub of a spline over its pitch diameter, as it is weighed */
#define TUBE 0.92 /* outside of the rotor behind that hub, over its outside                   */

/* px over and under the drawing */
static const double head = 42.0, foot = 44.0;

/* An axis on the sheet: from the apex towards its gear. */
typedef struct frame {
    ts_point apex;
    double   ux, uy, px;
} frame;

/* m, around the apex */
typedef struct extents {
    double ahead, behind, up, down; /* ahead: towards gear 1 */
} extents;

typedef struct section {
    const ts_float_section *from;
    const ts_float_option  *option;
    const double           *s; /* m, travel of the spool */
    ts_float_parts          parts;
    frame                   spool, radial, rotor;
    ts_area                 picture;
    double                  px, body;
} section;

typedef enum mover { STANDS, MOVES } mover;

/* ---- layout ---------------------------------------------------------------------------------- */

static extents extents_of(const section *it)
{
    const ts_float_parts *p = &it->parts;
    extents               e = {.ahead  = p->t_end,
                               .behind = 0.56 * p->blank.d_ae[1],
                               .up     = p->t_radial,
                               .down   = 0.5 * p->blank.d_ae[0]};

    switch (it->from->scheme) {
    case TS_FLOAT_FIXED_BEVEL:
        e.ahead = p->t_back[0] + 0.9 * p->pair.R_e;
        break;
    case TS_FLOAT_SPLINED_STUB:
        e.ahead = p->t_spline + 2.0 * p->L_e + 0.012;
        break;
    case TS_FLOAT_WIDE_SPUR:
        e.ahead = p->t_spline + 1.6 * p->b_idler + 0.01;
        e.down  = 1.5 * p->d_s + 0.006;
        break;
    }
    return e;
}

static void place(section *it)
{
    const extents e    = extents_of(it);
    const double  wide = e.ahead + e.behind, high = e.up + e.down;
    const ts_area area = it->from->area;

    it->picture = (ts_area){area.x + 1.0, area.y + head, area.w - 2.0, area.h - head - foot};
    it->px      = fmin(it->picture.w / wide, it->picture.h / high);
    const double left =
        0.5 * (it->picture.w - wide * it->px) + it->px * (it->body > 0.0 ? e.behind : e.ahead);
    const double   top   = 0.5 * (it->picture.h - high * it->px) + it->px * e.up;
    const ts_point apex  = {it->picture.x + left, it->picture.y + top};
    const double   Sigma = it->parts.pair.in.Sigma;

    it->spool  = (frame){apex, it->body, 0.0, it->px};
    it->radial = (frame){apex, it->body * cos(Sigma), -sin(Sigma), it->px};
    it->rotor  = it->spool;
    if (it->from->scheme == TS_FLOAT_WIDE_SPUR)
        it->rotor.apex.y += it->px * it->parts.d_s;
}

/* ---- pieces ---------------------------------------------------------------------------------- */

static ts_point at(const frame *f, double t, double r)
{
    return (ts_point){f->apex.x + f->px * (t * f->ux - r * f->uy),
                      f->apex.y + f->px * (t * f->uy + r * f->ux)};
}

static ts_canvas *canvas_of(const section *it)
{
    return &it->from->scene->canvas;
}

/* One half, moved along the sheet. */
static void path_half(const section *it, const frame *f, const ts_float_ring *ring, int side,
                      double dx)
{
    ts_point points[TS_FLOAT_RING_MOST];

    for (int i = 0; i < TS_FLOAT_RING_MOST; i++) {
        points[i] = i < ring->count ? at(f, ring->t[i], side * ring->r[i]) : (ts_point){0.0, 0.0};
        points[i].x += dx;
    }
    ts_path_polygon(canvas_of(it), points, (size_t)ring->count);
}

/* Both halves of a body of revolution; what moves also at both ends of its travel. */
static void draw_ring(const section *it, const frame *f, ts_float_ring ring, mover moves,
                      ts_colour fill)
{
    for (int side = -1; side <= 1; side += 2) {
        path_half(it, f, &ring, side, 0.0);
        ts_fill_and_stroke(canvas_of(it), fill, it->from->large ? TS_PEN_2 : TS_PEN_1,
                           TS_COLOUR_INK);
    }
    for (int end = 0; moves == MOVES && end < 2; end++)
        for (int side = -1; side <= 1; side += 2) {
            path_half(it, f, &ring, side, it->px * it->s[end]);
            ts_use_pen(canvas_of(it), TS_PEN_1, TS_COLOUR_POWER);
            ts_stroke(canvas_of(it));
        }
}

static ts_colour fill_of(mover moves)
{
    return moves == MOVES ? TS_COLOUR_SELECT_BG : TS_COLOUR_CASING;
}

static void draw_tube(const section *it, const frame *f, const double t[2], const double d[2],
                      mover moves)
{
    draw_ring(it, f, ts_float_tube(t[0], t[1], d[0], d[1]), moves, fill_of(moves));
}

static void draw_axis(const section *it, const frame *f, double t_1, double t_2)
{
    ts_use_pen(canvas_of(it), TS_PEN_1, TS_COLOUR_INK3);
    ts_use_dash(canvas_of(it), TS_DASH_CHAIN);
    ts_draw_line(canvas_of(it), at(f, t_1, 0.0), at(f, t_2, 0.0));
    ts_use_dash(canvas_of(it), TS_DASH_NONE);
}

static void draw_gear(const section *it, const frame *f, int gear, mover moves)
{
    draw_ring(it, f, it->parts.body[gear], moves, fill_of(moves));
    draw_ring(it, f, it->parts.teeth[gear], moves, TS_COLOUR_PAPER);
}

/* Two rings with what rolls between them; the seat in the casing outside. */
static void draw_bearing(const section *it, const frame *f, const ts_line_bearing *b, double t)
{
    ts_canvas   *canvas = canvas_of(it);
    const double d = b->bearing.d, D = b->bearing.D, h = 0.5 * b->width;
    const double r_m = 0.25 * (d + D), r_w = 0.3 * 0.5 * (D - d);
    const int    rows = b->bearing.rows > 1 ? 2 : 1;

    if (!b->there || !(D > d))
        return;
    draw_ring(it, f, ts_float_tube(t - h, t + h, D, D + 5e-3), STANDS, TS_COLOUR_HAIR);
    draw_ring(it, f, ts_float_tube(t - h, t + h, d, D), STANDS, TS_COLOUR_PAPER);
    for (int side = -1; side <= 1; side += 2)
        for (int row = 0; row < rows; row++) {
            const double t_r = rows == 1 ? t : t + (row == 0 ? -0.5 : 0.5) * h;
            if (b->locates) {
                ts_path_circle(canvas, at(f, t_r, side * r_m), r_w * it->px);
            } else {
                const ts_float_ring roll =
                    ts_float_tube(t_r - r_w, t_r + r_w, 2.0 * (r_m - r_w), 2.0 * (r_m + r_w));
                path_half(it, f, &roll, side, 0.0);
            }
            ts_fill_and_stroke(canvas, TS_COLOUR_HAIR, TS_PEN_1, TS_COLOUR_INK);
        }
}

/* The shaft of a line with its bearings; `gear` is the one of the pair that it bears. */
static void draw_line_of(const section *it, const frame *f, const ts_line *line, int gear)
{
    const ts_float_parts *p = &it->parts;

    for (int i = 0; line != NULL && i < line->section_count; i++) {
        const ts_beam_section *s    = &line->sections[i];
        const double           t[2] = {ts_float_along(p, line, gear, s->x_1),
                                       ts_float_along(p, line, gear, s->x_2)};
        draw_tube(it, f, t, (double[2]){s->d_i, s->d_o}, STANDS);
    }
    for (int k = 0; line != NULL && k < line->bearing_count; k++)
        draw_bearing(it, f, &line->bearings[k], ts_float_along(p, line, gear, line->bearings[k].x));
}

/* ---- the three schemes ----------------------------------------------------------------------- */

static double far_end(const section *it)
{
    return 2.0 * it->picture.w / it->px;
}

static void draw_fixed(const section *it)
{
    const ts_float_parts *p    = &it->parts;
    const double          end  = far_end(it);
    const double          d[2] = {2.0 * p->r_rotor[0], 2.0 * p->r_rotor[1]};
    ts_float_ring         body = p->body[0];

    for (int i = body.count - 2; i < body.count; i++)
        body.r[i] = p->r_rotor[1];
    draw_tube(it, &it->spool, (double[2]){-end, end}, d, MOVES);
    draw_ring(it, &it->spool, body, MOVES, fill_of(MOVES));
    draw_ring(it, &it->spool, p->teeth[0], MOVES, TS_COLOUR_PAPER);
}

static void draw_stub(const section *it)
{
    const ts_float_parts *p      = &it->parts;
    const double          inside = p->stub != NULL ? p->stub->d_bore : 0.5 * p->D;
    const double          t = p->t_spline, deep = fmax(fabs(it->s[0]), fabs(it->s[1])) + 2e-3;
    const double          hub = HUB * p->D, m = 0.06 * p->D;

    draw_line_of(it, &it->spool, p->stub, 0);
    draw_gear(it, &it->spool, 0, STANDS);
    if (t + p->L_e > p->t_end)
        draw_tube(it, &it->spool, (double[2]){p->t_end, t + p->L_e}, (double[2]){inside, p->D},
                  STANDS);
    draw_ring(it, &it->spool, ts_float_tube(t, t + p->L_e, p->D - m, p->D + m), STANDS,
              TS_COLOUR_PAPER);
    draw_tube(it, &it->spool, (double[2]){t, t + p->L_e + deep}, (double[2]){p->D + m, hub}, MOVES);
    draw_tube(it, &it->spool, (double[2]){t + p->L_e + deep, far_end(it)},
              (double[2]){0.8 * p->D, TUBE * hub}, MOVES);
}

static void draw_spur(const section *it)
{
    const ts_float_parts  *p      = &it->parts;
    const ts_float_option *o      = it->option;
    const double           middle = it->body * 0.5 * (o->slide[0] + o->slide[1]);
    const double           t = p->t_spline, c = t + 0.5 * p->b_idler, m = p->pair.m_mn;
    const double           t_1 = c - middle - 0.5 * p->b_s, t_2 = t_1 + p->b_s;
    const double           inside = p->stub != NULL ? p->stub->d_bore : 0.5 * p->D;
    const double           root   = p->d_s - 2.5 * m;

    draw_line_of(it, &it->spool, p->stub, 0);
    draw_gear(it, &it->spool, 0, STANDS);
    if (t + p->b_idler > p->t_end)
        draw_tube(it, &it->spool, (double[2]){p->t_end, t + p->b_idler}, (double[2]){inside, p->D},
                  STANDS);
    draw_tube(it, &it->spool, (double[2]){t, t + p->b_idler}, (double[2]){p->D, root}, STANDS);
    draw_ring(it, &it->spool, ts_float_tube(t, t + p->b_idler, root, p->d_s + 2.0 * m), STANDS,
              TS_COLOUR_PAPER);
    draw_tube(it, &it->rotor, (double[2]){t_1 - 0.3 * p->b_s, far_end(it)},
              (double[2]){0.35 * p->d_s, 0.5 * p->d_s}, MOVES);
    draw_tube(it, &it->rotor, (double[2]){t_1, t_2}, (double[2]){0.5 * p->d_s, root}, MOVES);
    draw_ring(it, &it->rotor, ts_float_tube(t_1, t_2, root, p->d_s + 2.0 * m), MOVES,
              TS_COLOUR_PAPER);
}

/* ---- words and measures ---------------------------------------------------------------------- */

static void measure(const section *it, double t_1, double t_2, double y)
{
    const double       a = at(&it->spool, t_1, 0.0).x, b = at(&it->spool, t_2, 0.0).x;
    const ts_dimension one = {.a      = a,
                              .b      = b,
                              .y      = y,
                              .away   = 1.0,
                              .text   = ts_value_length(it->from->scene, fabs(t_2 - t_1)),
                              .beside = true};

    ts_use_pen(canvas_of(it), TS_PEN_1, TS_COLOUR_INK);
    for (int end = 0; end < 2; end++)
        ts_draw_line(canvas_of(it), (ts_point){end == 0 ? a : b, y - 12.0},
                     (ts_point){end == 0 ? a : b, y + 3.0});
    ts_draw_dimension(it->from->scene, &one);
}

static void draw_measures(const section *it)
{
    const ts_float_parts *p = &it->parts;
    const double          y = at(&it->spool, 0.0, 0.0).y;

    if (it->from->scheme == TS_FLOAT_SPLINED_STUB)
        measure(it, p->t_spline, p->t_spline + p->L_e, y + 0.5 * HUB * p->D * it->px + 24.0);
    else if (it->from->scheme == TS_FLOAT_WIDE_SPUR)
        measure(it, p->t_spline, p->t_spline + p->b_idler,
                y - (0.5 * p->d_s + p->pair.m_mn) * it->px - 16.0);
}

static void write_at(const section *it, ts_point where, ts_anchor anchor, const char *words)
{
    const ts_lettering how = {
        .size = TS_LOOK_TYPE_PX_SMALL, .halo = true, .anchor = anchor, .colour = TS_COLOUR_INK};

    ts_write(canvas_of(it), where, words, &how);
}

/* Beside the radial shaft, on the side of bevel 1, where nothing else stands. */
static double beside_radial(const section *it)
{
    const ts_line *line = it->parts.inner;
    double         r    = 0.5 * it->parts.blank.d_fi[1];

    for (int k = 0; line != NULL && k < line->bearing_count; k++)
        r = fmax(r, 0.5 * line->bearings[k].bearing.D + 3e-3);
    return r * it->px + 8.0;
}

static void write_names(const section *it)
{
    ts_scene             *scene = it->from->scene;
    const ts_float_parts *p     = &it->parts;
    const bool            right = it->body > 0.0;
    const ts_point        low = at(&it->spool, p->blank.t_xo[0], it->body * 0.5 * p->blank.d_ae[0]);
    const ts_point        top = at(&it->radial, 0.9 * p->t_radial, 0.0);

    ts_buffer_print(ts_canvas_line(canvas_of(it)), "bevel 1, %d teeth", p->pair.in.z_1);
    write_at(it, (ts_point){low.x - it->body * 8.0, low.y + 14.0},
             right ? TS_ANCHOR_RIGHT : TS_ANCHOR_LEFT, ts_scene_kept(scene));
    if (it->from->scheme == TS_FLOAT_WIDE_SPUR)
        return; /* its measure stands there */
    ts_buffer_print(ts_canvas_line(canvas_of(it)), "bevel 2, %d teeth", p->pair.in.z_2);
    write_at(it, (ts_point){top.x + it->body * beside_radial(it), top.y},
             right ? TS_ANCHOR_LEFT : TS_ANCHOR_RIGHT, ts_scene_kept(scene));
}

/* What the travel does there, in one line. */
static const char *effect_words(const section *it)
{
    ts_scene              *scene = it->from->scene;
    const ts_float_option *o     = it->option;
    const char            *unit  = ts_scene_unit(scene, TS_KIND_LENGTH);
    const char            *span  = ts_float_span_words(scene, o->slide[0], o->slide[1]);
    const char            *first = "", *second = "";

    switch (it->from->scheme) {
    case TS_FLOAT_FIXED_BEVEL:
        first  = ts_value_length(scene, fabs(o->dj[0]));
        second = ts_value_length(scene, o->dj[1]);
        ts_buffer_print(ts_canvas_line(&scene->canvas),
                        "the travel takes %s and adds %s %s of backlash", first, second, unit);
        break;
    case TS_FLOAT_SPLINED_STUB:
        first = ts_value_length(scene, o->engaged);
        ts_buffer_print(ts_canvas_line(&scene->canvas), "at least %s %s engaged; slides %s", first,
                        unit, span);
        break;
    case TS_FLOAT_WIDE_SPUR:
        first = ts_value_length(scene, o->engaged);
        ts_buffer_print(ts_canvas_line(&scene->canvas), "at least %s %s of common face; slides %s",
                        first, unit, span);
        break;
    }
    return ts_scene_kept(scene);
}

static void write_effect(const section *it)
{
    const ts_area      area = it->from->area;
    const ts_lettering how  = {
         .size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK, .width = area.w - 12.0};

    ts_write(canvas_of(it), (ts_point){area.x + 6.0, area.y + area.h - 9.0}, effect_words(it),
             &how);
}

static void write_head(const section *it)
{
    ts_scene              *scene = it->from->scene;
    const ts_float_option *o     = it->option;
    const ts_area          area  = it->from->area;
    const ts_lettering lead  = {.bold = o->chosen, .colour = TS_COLOUR_INK, .width = area.w - 12.0};
    const ts_lettering small = {
        .size = TS_LOOK_TYPE_PX_TICK, .colour = TS_COLOUR_INK2, .width = area.w - 12.0};

    ts_buffer_print(ts_canvas_line(canvas_of(it)), "%s%s", ts_float_scheme_name(it->from->scheme),
                    o->chosen ? ", chosen" : "");
    ts_write(canvas_of(it), (ts_point){area.x + 6.0, area.y + 16.0}, ts_scene_kept(scene), &lead);
    ts_buffer *line = ts_canvas_line(canvas_of(it));
    ts_add_number(line, it->px / (1e3 * scene->canvas.mm), 2);
    ts_buffer_print(line, " : 1 on A3%s",
                    !o->made    ? ""
                    : o->chosen ? "; part of it made up"
                                : "; sizes made up");
    ts_write(canvas_of(it), (ts_point){area.x + 6.0, area.y + 30.0}, ts_scene_kept(scene), &small);
}

void ts_float_draw_section(const ts_float_section *from)
{
    section it = {.from = from, .option = &from->item->options[from->scheme], .s = from->item->s};
    const ts_spool_drive *drive = &from->scene->drive->drive[from->item->drive];

    ts_float_parts_of(from->floats, from->item, &it.parts);
    it.body = drive->take_off.bevels.side.value == TS_REAR ? 1.0 : -1.0;
    place(&it);
    ts_clip_area(canvas_of(&it),
                 (ts_area){from->area.x, it.picture.y - 4.0, from->area.w, it.picture.h + 18.0});
    draw_line_of(&it, &it.radial, it.parts.inner, 1);
    draw_gear(&it, &it.radial, 1, STANDS);
    if (from->scheme == TS_FLOAT_FIXED_BEVEL)
        draw_fixed(&it);
    else if (from->scheme == TS_FLOAT_SPLINED_STUB)
        draw_stub(&it);
    else
        draw_spur(&it);
    draw_axis(&it, &it.spool, -far_end(&it), far_end(&it));
    draw_axis(&it, &it.radial, 0.0, far_end(&it));
    if (from->scheme == TS_FLOAT_WIDE_SPUR)
        draw_axis(&it, &it.rotor, -far_end(&it), far_end(&it));
    ts_clip_end(canvas_of(&it));
    write_head(&it);
    write_names(&it);
    draw_measures(&it);
    write_effect(&it);
    ts_use_pen(canvas_of(&it), TS_PEN_1, from->large ? TS_COLOUR_INK : TS_COLOUR_RULE);
    ts_path_area(canvas_of(&it), from->area);
    ts_stroke(canvas_of(&it));
}
