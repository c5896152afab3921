/* draw/width_strip.c: how does one gear look before and after, and on what scale? */
#include "draw/lettering.h"
#include "draw/width_chart.h"

#include <math.h>

static const double bar_height = 16.0;

/* ---- what there is --------------------------------------------------------------------------- */

static double most_of(const ts_scene *scene, uint32_t gear)
{
    const ts_width_plan *plan = scene->subject->widths;
    double               most = (double)NAN;

    for (uint32_t m = 0; plan && m < scene->train->mesh_count; m++)
        if ((scene->train->meshes[m].driver == gear || scene->train->meshes[m].driven == gear) &&
            plan->meshes[m].state != TS_MESH_NOT_SIZED)
            most = fmax(most, plan->meshes[m].most); /* passes NaN over */
    return most;
}

static const ts_gear_width *sized_of(const ts_scene *scene, uint32_t gear)
{
    const ts_width_plan *plan = scene->subject->widths;

    for (size_t i = 0; plan && i < plan->gear_count; i++)
        if (plan->gears[i].gear == gear)
            return &plan->gears[i];
    return NULL;
}

/* Enough that no width is rounded, up to 0.001 mm. */
static int decimals_of(const ts_width_strip *strip)
{
    for (int d = 1; d < 4; d++) {
        bool exact = true;
        for (size_t i = 0; i < strip->count && exact; i++) {
            const double scaled =
                ts_scene_in_unit(strip->scene, strip->rows[i].after, TS_KIND_LENGTH) * pow(10.0, d);
            exact = isnan(scaled) || fabs(scaled - round(scaled)) < 1e-6;
        }
        if (exact)
            return d;
    }
    return strip->scene->units == TS_UNITS_US ? 4 : 3;
}

ts_status ts_width_gather(ts_scene *scene, ts_width_strip *out)
{
    *out      = (ts_width_strip){.scene = scene};
    out->rows = TS_TAKE(scene->arena, ts_width_row, scene->train->gear_count);
    if (!out->rows)
        return TS_NO_MEMORY;
    for (uint32_t g = 0; g < scene->train->gear_count; g++) {
        const ts_gear *gear = &scene->train->gears[g];
        if (gear->role == TS_GEAR_BEVEL)
            continue;
        const ts_gear_width *sized = sized_of(scene, g);
        const double         face  = ts_measure_known(gear->face) ? gear->face.value : (double)NAN;
        const ts_width_row   row   = {g, sized, sized ? sized->before : face,
                                  sized ? sized->after : face, most_of(scene, g)};
        out->longest               = fmax(out->longest, fmax(row.before, row.after));
        out->rows[out->count++]    = row;
    }
    out->longest  = out->longest > 0.0 ? 1.06 * out->longest : 0.01;
    out->decimals = decimals_of(out);
    return TS_OK;
}

void ts_width_add(ts_buffer *out, const ts_width_strip *strip, double si)
{
    if (isnan(si))
        ts_buffer_add(out, "?");
    else
        ts_add_number(out, ts_scene_in_unit(strip->scene, si, TS_KIND_LENGTH), strip->decimals);
}

/* ---- scale ----------------------------------------------------------------------------------- */

static double x_of(const ts_width_strip *strip, double b)
{
    return strip->area.x + strip->area.w * b / strip->longest;
}

/* 1, 2 or 5 times a power of ten, of the unit shown: at least 64 px apart. */
static double tick_of(double longest, double wide)
{
    const double least = 64.0 * longest / wide;
    const double ten   = pow(10.0, floor(log10(least)));

    for (int i = 0; i < 3; i++) {
        static const double steps[] = {1.0, 2.0, 5.0};
        if (steps[i] * ten >= least * (1.0 - 1e-9))
            return steps[i] * ten;
    }
    return 10.0 * ten;
}

void ts_width_draw_scale(const ts_width_strip *strip, double foot)
{
    ts_scene          *scene   = strip->scene;
    ts_canvas         *canvas  = &scene->canvas;
    const double       unit    = ts_scene_in_unit(scene, 1.0, TS_KIND_LENGTH);
    const double       longest = strip->longest * unit;
    const double       tick    = tick_of(longest, strip->area.w);
    const ts_lettering how     = {
            .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK2};

    for (int i = 0; i * tick <= longest * (1.0 + 1e-9); i++) {
        const double x = x_of(strip, i * tick / unit);
        ts_use_pen(canvas, i == 0 ? TS_PEN_2 : TS_PEN_1, i == 0 ? TS_COLOUR_INK : TS_COLOUR_HAIR);
        ts_draw_line(canvas, (ts_point){x, strip->area.y - 5.0}, (ts_point){x, foot});
        ts_buffer *line = ts_canvas_line(canvas);
        ts_add_number(line, i * tick, tick < 0.0995 ? 2 : tick < 0.995 ? 1 : 0);
        if (i == 0)
            ts_buffer_print(line, " %s", ts_scene_unit(scene, TS_KIND_LENGTH));
        ts_write(canvas, (ts_point){x, strip->area.y - 10.0}, ts_scene_kept(scene), &how);
    }
}

/* ---- one gear -------------------------------------------------------------------------------- */

static void draw_before(const ts_width_strip *strip, double before, ts_area bar)
{
    ts_canvas *canvas = &strip->scene->canvas;

    ts_path_area(canvas, (ts_area){bar.x, bar.y - 3.0, x_of(strip, before) - bar.x, bar.h + 6.0});
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK2);
    ts_use_dash(canvas, TS_DASH_HIDDEN);
    ts_stroke(canvas);
}

static void draw_after(const ts_width_strip *strip, double after, ts_area bar)
{
    ts_canvas   *canvas = &strip->scene->canvas;
    const double end    = x_of(strip, after);

    ts_path_area(canvas, (ts_area){bar.x, bar.y, end - bar.x, bar.h});
    ts_fill_and_stroke(canvas, TS_COLOUR_SELECT_BG, TS_PEN_2, TS_COLOUR_INK);
    ts_use_pen(canvas, TS_PEN_4, TS_COLOUR_INK);
    ts_draw_line(canvas, (ts_point){end, bar.y - 1.0}, (ts_point){end, bar.y + bar.h + 1.0});
}

/* The wall that `face to diameter` is, where it stands on the scale. */
static void draw_most(const ts_width_strip *strip, double most, ts_area bar)
{
    if (!(most <= strip->longest))
        return;
    const double   x         = x_of(strip, most);
    const ts_point points[2] = {{x, bar.y - 5.0}, {x, bar.y + bar.h + 5.0}};
    ts_draw_wall(&strip->scene->canvas, points, 2, false);
}

void ts_width_draw_gear(const ts_width_strip *strip, const ts_width_row *row, ts_area area)
{
    const ts_area bar = {strip->area.x, area.y + 0.5 * (area.h - bar_height), 0.0, bar_height};

    if (!isnan(row->after))
        draw_after(strip, row->after, bar);
    if (!isnan(row->before) && row->sized)
        draw_before(strip, row->before, bar);
    draw_most(strip, row->most, bar);
    ts_note_area(&strip->scene->canvas.places, TS_PLACE_CELL, row->gear, area);
}
