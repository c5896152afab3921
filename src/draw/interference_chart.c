/* draw/interference_chart.c: which excitation meets which natural frequency of torsion, and for how
 * long?
 *
 * Both axes go by powers of ten: what excites so many times a turn is then a straight line, all
 * with one slope.  Natural frequencies lie level.  A condition is a line as wide as its share of
 * time; a ring stands where an excitation is within a tenth of a natural frequency then, as large
 * as that share.
 */
#include "draw/interference_chart.h"

#include "draw/chart_words.h"
#include "draw/lettering.h"
#include "draw/sheet.h"
#include "draw/tick.h"
#include "rating/drive_teeth.h"

#include <math.h>

/* px */
static const double title = 64.0, left_wide = 96.0, right_wide = 290.0, foot = 92.0,
                    least_high = 620.0, widest = 14.0, name_high = 15.0;

static const double two_pi = 6.28318530717958647693, rpm = 9.54929658551372015;

#define NEAR 0.10 /* common practice, no source */

enum { NAMES_MOST = 40 };

typedef struct chart {
    ts_scene             *scene;
    const ts_drive_twist *twist;
    uint32_t              root; /* shaft of the spool */
    ts_area               area;
    double                low, high, slow, fast; /* of the spool, rad/s; Hz */
    double                time;                  /* s, of all conditions of its state */
} chart;

static const ts_drive_twist *tree_of(const ts_scene *scene)
{
    for (size_t i = 0; i < scene->subject->twist_count; i++) {
        const ts_drive_twist *twist = &scene->subject->twists[i];
        if (twist->missing == NULL && twist->fault == TS_TWIST_FINE &&
            twist->modes.count > twist->modes.rigid)
            return twist;
    }
    return NULL;
}

static bool is_here(const chart *it, uint32_t c)
{
    return !it->twist->clutch ||
           ts_drive_is_cranked(it->scene->power, it->twist->drive, c) == it->twist->cranked;
}

static double seconds(const chart *it, uint32_t c)
{
    const double t = ts_condition_seconds(&it->scene->drive->conditions[c]);

    return t > 0.0 ? t : 0.0;
}

static double turning(const chart *it, uint32_t c)
{
    return fabs(ts_scene_speed_in(it->scene, it->root, c));
}

/* ---- room -------------------------------------------------------------------------------------
 */

static void measure(chart *it)
{
    const ts_twist_modes *modes = &it->twist->modes;

    it->low  = INFINITY;
    it->high = 0.0;
    for (uint32_t c = 0; c < it->scene->drive->condition_count; c++) {
        const double w = turning(it, c);
        if (!is_here(it, c) || !(w > 0.0))
            continue;
        it->low  = fmin(it->low, w);
        it->high = fmax(it->high, w);
        it->time += seconds(it, c);
    }
    it->low /= 1.3;
    it->high *= 1.12;
    it->slow = modes->omega[modes->rigid] / two_pi / 1.6;
    it->fast = modes->omega[modes->count - 1] / two_pi * 1.25;
}

static double x_of(const chart *it, double w)
{
    return it->area.x + it->area.w * log(w / it->low) / log(it->high / it->low);
}

static double y_of(const chart *it, double f)
{
    return it->area.y + it->area.h * (1.0 - log(f / it->slow) / log(it->fast / it->slow));
}

/* ---- axes -------------------------------------------------------------------------------------
 */

static void ticks(const chart *it, bool across)
{
    static const double steps[] = {1.0, 1.5, 2.0, 3.0, 5.0, 7.0};
    ts_canvas          *canvas  = &it->scene->canvas;
    const double from = across ? it->low * rpm : it->slow, to = across ? it->high * rpm : it->fast;
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                              .anchor = across ? TS_ANCHOR_MIDDLE : TS_ANCHOR_RIGHT,
                              .colour = TS_COLOUR_INK2};

    for (int decade = ts_decade_of(from); decade <= ts_decade_of(to); decade++)
        for (int i = 0; i < 6; i++) {
            const double v = pow(10.0, decade) * steps[i];
            if (v < from || v > to)
                continue;
            const double x = across ? x_of(it, v / rpm) : it->area.x;
            const double y = across ? it->area.y + it->area.h : y_of(it, v);
            ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
            ts_draw_line(canvas, (ts_point){x, y},
                         across ? (ts_point){x, it->area.y}
                                : (ts_point){it->area.x + it->area.w, y});
            ts_add_number(ts_canvas_line(canvas), v, v < 10.0 ? 1 : 0);
            ts_write(canvas, across ? (ts_point){x, y + 16.0} : (ts_point){x - 8.0, y + 4.0},
                     ts_scene_kept(it->scene), &how);
        }
}

/* ---- what there is ----------------------------------------------------------------------------
 */

static void draw_modes(const chart *it)
{
    ts_canvas            *canvas = &it->scene->canvas;
    const ts_twist_modes *modes  = &it->twist->modes;

    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    for (size_t i = modes->rigid; i < modes->count; i++) {
        const double y = y_of(it, modes->omega[i] / two_pi);
        ts_draw_line(canvas, (ts_point){it->area.x, y}, (ts_point){it->area.x + it->area.w, y});
    }
}

typedef enum excitation { ONCE_A_TURN, TWICE_A_TURN, ONCE_A_TOOTH } excitation;

/* So many times a turn of the spool; cut where it leaves the field. */
static void draw_order(const chart *it, double order, excitation kind)
{
    static const ts_dash dashes[] = {[ONCE_A_TURN]  = TS_DASH_HIDDEN,
                                     [TWICE_A_TURN] = TS_DASH_CHAIN,
                                     [ONCE_A_TOOTH] = TS_DASH_NONE};
    ts_canvas           *canvas   = &it->scene->canvas;
    const double         from     = fmax(it->low, it->slow * two_pi / order);
    const double         to       = fmin(it->high, it->fast * two_pi / order);

    if (!(to > from))
        return;
    ts_use_pen(canvas, kind == ONCE_A_TOOTH ? TS_PEN_2 : TS_PEN_1, TS_COLOUR_INK2);
    ts_use_dash(canvas, dashes[kind]);
    ts_draw_line(canvas, (ts_point){x_of(it, from), y_of(it, order * from / two_pi)},
                 (ts_point){x_of(it, to), y_of(it, order * to / two_pi)});
    ts_use_dash(canvas, TS_DASH_NONE);
}

typedef struct label {
    double      y;
    const char *text;
} label;

typedef struct labels {
    label  items[NAMES_MOST];
    size_t count;
} labels;

/* At the right edge, where the line leaves it. */
static void name_order(const chart *it, labels *names, double order, const char *text)
{
    const double f = order * it->high / two_pi;

    if (f < it->slow || f > it->fast || names->count == NAMES_MOST)
        return;
    size_t k = names->count++;
    for (; k > 0 && names->items[k - 1].y > y_of(it, f); k--)
        names->items[k] = names->items[k - 1];
    names->items[k] = (label){y_of(it, f), text};
}

static void write_names(const chart *it, const labels *names)
{
    const ts_lettering how = {
        .size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK2, .width = right_wide - 22.0};
    double last = it->area.y - 100.0;

    for (size_t i = 0; i < names->count; i++) {
        const double y = fmax(names->items[i].y + 4.0, last + name_high);
        ts_write(&it->scene->canvas, (ts_point){it->area.x + it->area.w + 10.0, y},
                 names->items[i].text, &how);
        last = y;
    }
}

static const char *order_word(const chart *it, const char *what, uint32_t shaft)
{
    ts_buffer_print(ts_canvas_line(&it->scene->canvas), "%s %s", what,
                    it->scene->train->shafts[shaft].name);
    return ts_scene_kept(it->scene);
}

/* Rings where an excitation of that order is near a mode, in every condition. */
static void draw_meetings(const chart *it, double order)
{
    ts_canvas            *canvas = &it->scene->canvas;
    const ts_twist_modes *modes  = &it->twist->modes;

    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    for (uint32_t c = 0; c < it->scene->drive->condition_count; c++) {
        const double f = order * turning(it, c) / two_pi;
        if (!is_here(it, c) || !(f > 0.0) || f > it->fast)
            continue;
        for (size_t i = modes->rigid; i < modes->count; i++) {
            const double mode  = modes->omega[i] / two_pi;
            const double share = it->time > 0.0 ? seconds(it, c) / it->time : 0.0;
            if (fabs(f / mode - 1.0) >= NEAR)
                continue;
            ts_path_circle(canvas, (ts_point){x_of(it, turning(it, c)), y_of(it, mode)},
                           3.0 + 9.0 * sqrt(share));
            ts_stroke(canvas);
        }
    }
}

static void draw_conditions(const chart *it)
{
    ts_canvas         *canvas = &it->scene->canvas;
    const ts_lettering how    = {
           .size = TS_LOOK_TYPE_PX_SMALL, .upright = true, .halo = true, .colour = TS_COLOUR_INK};

    for (uint32_t c = 0; c < it->scene->drive->condition_count; c++) {
        const double w = turning(it, c);
        if (!is_here(it, c) || !(w > 0.0))
            continue;
        const double share = it->time > 0.0 ? seconds(it, c) / it->time : 0.0;
        const double wide = fmax(1.0, widest * sqrt(share)), x = x_of(it, w);
        ts_path_area(canvas, (ts_area){x - wide / 2.0, it->area.y, wide, it->area.h});
        ts_fill(canvas, TS_COLOUR_HAIR);
        int level = 0; /* above the names of earlier ones that stand as near */
        for (uint32_t k = 0; k < c; k++)
            level +=
                is_here(it, k) && turning(it, k) > 0.0 && fabs(x_of(it, turning(it, k)) - x) < 17.0;
        ts_write(canvas, (ts_point){x + 4.0, it->area.y + it->area.h - 8.0 - 110.0 * level},
                 it->scene->drive->conditions[c].name, &how);
    }
}

static void draw_orders(const chart *it)
{
    const ts_train *train = it->scene->train;
    labels          names = {.count = 0};

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const double order = fabs(ts_rational_value(it->scene->motion->shafts[s].ratio));
        if (train->shafts[s].drive != it->twist->drive || train->shafts[s].kind == TS_SHAFT_SPOOL)
            continue;
        draw_order(it, order, ONCE_A_TURN);
        draw_meetings(it, order);
        draw_order(it, 2.0 * order, TWICE_A_TURN);
        draw_meetings(it, 2.0 * order);
        name_order(it, &names, order, order_word(it, "1 x", s));
    }
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh *mesh = &train->meshes[m];
        const double   order =
            (double)train->gears[mesh->driven].teeth.value *
            fabs(ts_rational_value(it->scene->motion->shafts[mesh->driven_shaft].ratio));
        if (train->shafts[mesh->driven_shaft].drive != it->twist->drive)
            continue;
        draw_order(it, order, ONCE_A_TOOTH);
        draw_meetings(it, order);
        name_order(it, &names, order, order_word(it, "teeth to", mesh->driven_shaft));
    }
    write_names(it, &names);
}

static void write_words(const chart *it)
{
    ts_scene          *scene = it->scene;
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    const ts_lettering axis  = {
         .size = TS_LOOK_TYPE_PX_SMALL, .bold = true, .colour = TS_COLOUR_INK};

    if (it->twist == NULL)
        ts_buffer_add(line, "No torsional modes could be computed.");
    else
        ts_buffer_print(line, "What meets the natural frequencies of the %s drive?  %s",
                        scene->drive->spools[scene->drive->drive[it->twist->drive].spool].name,
                        it->twist->cranked ? "Its starter engaged" : "Running");
    ts_chart_title(scene);
    ts_chart_foot(
        scene, 44.0, 3,
        "Level lines: natural frequencies.  Slanted: what excites, dashed once a turn of a shaft, "
        "chained twice a turn (unnamed, at double the frequency), "
        "whole once a tooth of a mesh.  Upright: conditions, as wide as their share of the time.  "
        "Rings: within 10 % of a natural frequency, as large as that share.");
    if (it->twist != NULL)
        ts_write(&scene->canvas, (ts_point){it->area.x, it->area.y - 10.0},
                 "Hz, over the speed of the spool in rpm", &axis);
}

ts_status ts_draw_interference(ts_scene *scene)
{
    chart           it     = {.scene = scene, .twist = tree_of(scene), .root = TS_NOWHERE};
    const ts_status status = ts_chart_begin(scene, least_high);
    if (status != TS_OK)
        return status;
    it.area = (ts_area){scene->field.x + left_wide, scene->field.y + title,
                        scene->field.w - left_wide - right_wide, scene->field.h - title - foot};
    for (uint32_t s = 0; it.twist != NULL && s < scene->train->shaft_count; s++)
        if (scene->train->shafts[s].kind == TS_SHAFT_SPOOL &&
            scene->train->shafts[s].spool == (uint32_t)scene->drive->drive[it.twist->drive].spool)
            it.root = s;
    if (it.root == TS_NOWHERE)
        it.twist = NULL;
    if (it.twist != NULL)
        measure(&it);
    if (it.twist != NULL && it.high > it.low) {
        ticks(&it, true);
        ticks(&it, false);
        draw_conditions(&it);
        draw_modes(&it);
        draw_orders(&it);
        ts_note_area(&scene->canvas.places, TS_PLACE_ROW, 0, it.area);
    }
    write_words(&it);
    ts_sheet_draw(scene, "Torsion", "what meets which mode");
    return TS_OK;
}
