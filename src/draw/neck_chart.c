/* draw/neck_chart.c: how do the chances of too early and too late change with the diameter? */
#include "draw/neck_chart.h"

#include "draw/chart_key.h"
#include "draw/lettering.h"
#include "draw/sheet.h"
#include "draw/tick.h"
#include "rating/neck_life.h"

#include <math.h>

enum { POINTS = 240, PANELS_MOST = 12 };

/* px */
static const double title = 58.0, panel_least = 250.0, panel_most = 560.0, left_wide = 96.0,
                    right_wide = 300.0, panel_head = 20.0, panel_foot = 54.0;

static const char key_words[] =
    "Falling: the chance that the neck breaks in its whole life under what it must pass, at once "
    "or "
    "by fatigue; dashed: by fatigue alone. Rising: the chance that it still holds when something "
    "between it and its spool gives way. Where they cross, the diameter balances them. Hatched: "
    "more than `neck chance` allows. Scale logarithmic; bore in proportion to the diameter. "
    "Chances "
    "far below 1e-9 tell no more than which is the smaller: nobody tested so far from the mean.";

typedef struct panel {
    const ts_drive_neck *neck;
    ts_neck_life        *life;
    double               balance;       /* m; NaN: nowhere */
    double               d_low, d_high; /* m */
    double               floor;         /* the least chance shown, a power of ten */
    ts_area              area;          /* of the axes */
} panel;

typedef struct chart {
    ts_scene *scene;
    panel     panels[PANELS_MOST];
    size_t    count;
} chart;

/* ---- what is there --------------------------------------------------------------------------- */

static double worse_at(const panel *p, double d)
{
    const ts_neck_chance chance = ts_neck_chance_of(&p->life->make, &p->life->duty, d, NULL);
    return fmax(chance.early, chance.late);
}

/* A quarter beyond the diameter and the balance to either side; a hundredth below the crossing. */
static void set_axes(panel *p)
{
    const double d    = p->life->make.d_0;
    const double near = isnan(p->balance) ? d : p->balance;
    const double low  = fmin(worse_at(p, near), worse_at(p, d));
    p->d_low          = fmin(d, near) * 0.8;
    p->d_high         = fmax(d, near) * 1.2;
    p->floor          = pow(10.0, fmax(-80.0, fmin(-6.0, floor(log10(fmax(low, 1e-80))) - 2.0)));
}

static ts_status gather(chart *it)
{
    const ts_select *select = it->scene->subject->select;

    for (uint32_t g = 0; select != NULL && g < select->count; g++) {
        const ts_guard *guard = &select->guards[g];
        if (guard->neck == TS_NOWHERE || it->count == PANELS_MOST)
            continue;
        panel *p = &it->panels[it->count];
        *p       = (panel){.neck = &select->necks->items[guard->neck],
                           .life = TS_TAKE(it->scene->arena, ts_neck_life, 1)};
        if (p->life == NULL)
            return TS_NO_MEMORY;
        ts_neck_life_of(select, guard, p->life, NULL);
        if (!p->neck->designed || p->life->missing != NULL)
            continue;
        p->balance = ts_neck_life_balance(p->life);
        set_axes(p);
        it->count++;
    }
    return TS_OK;
}

/* ---- places ---------------------------------------------------------------------------------- */

static double x_of(const panel *p, double d)
{
    return p->area.x + p->area.w * (d - p->d_low) / (p->d_high - p->d_low);
}

static double y_of(const panel *p, double chance)
{
    const double share = log(fmax(chance, 1e-250)) / log(p->floor); /* 0: certain */
    return p->area.y + p->area.h * share;
}

/* ---- axes ------------------------------------------------------------------------------------ */

static void draw_chances(const chart *it, const panel *p)
{
    ts_canvas         *canvas = &it->scene->canvas;
    const ts_lettering tick   = {
          .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK2};
    const int decades = (int)lround(-log10(p->floor));
    const int step    = decades > 40 ? 10 : decades > 16 ? 4 : decades > 8 ? 2 : 1;

    for (int n = 0; n <= decades; n += step) {
        const double y = y_of(p, pow(10.0, -n));
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
        ts_draw_line(canvas, (ts_point){p->area.x, y}, (ts_point){p->area.x + p->area.w, y});
        if (n == 0)
            ts_buffer_add(ts_canvas_line(canvas), "1");
        else
            ts_buffer_print(ts_canvas_line(canvas), "1e\xE2\x88\x92%d", n);
        ts_write(canvas, (ts_point){p->area.x - 6.0, y + 3.5}, ts_scene_kept(it->scene), &tick);
    }
}

/* Steps of 1, 2 or 5 that leave room for their numbers. */
static double step_of(double span, double width)
{
    const double least = span * 56.0 / width, ten = pow(10.0, floor(log10(least)));
    return least <= ten         ? ten
           : least <= 2.0 * ten ? 2.0 * ten
           : least <= 5.0 * ten ? 5.0 * ten
                                : 10.0 * ten;
}

static void draw_diameters(const chart *it, const panel *p)
{
    ts_scene          *scene  = it->scene;
    ts_canvas         *canvas = &scene->canvas;
    const double       unit   = ts_scene_in_unit(scene, 1.0, TS_KIND_LENGTH);
    const double       step   = step_of((p->d_high - p->d_low) * unit, p->area.w);
    const ts_ticks     ticks  = ts_ticks_within(p->d_low * unit, p->d_high * unit, step);
    const int          digits = step >= 1.0 ? 0 : step >= 0.1 ? 1 : step >= 0.01 ? 2 : 3;
    const double       bottom = p->area.y + p->area.h;
    const ts_lettering tick   = {
          .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK2};
    const ts_lettering right = {
        .size = TS_LOOK_TYPE_PX_SMALL, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK};

    for (int i = 0; i < ticks.count; i++) {
        const double d = ts_tick_at(ticks, i), x = x_of(p, d / unit);
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
        ts_draw_line(canvas, (ts_point){x, p->area.y}, (ts_point){x, bottom});
        ts_add_number(ts_canvas_line(canvas), d, digits);
        ts_write(canvas, (ts_point){x, bottom + 14.0}, ts_scene_kept(scene), &tick);
    }
    ts_buffer_print(ts_canvas_line(canvas), "diameter, %s", ts_scene_unit(scene, TS_KIND_LENGTH));
    ts_write(canvas, (ts_point){p->area.x + p->area.w, bottom + 30.0}, ts_scene_kept(scene),
             &right);
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_RULE);
    ts_path_area(canvas, p->area);
    ts_stroke(canvas);
}

/* What is more than the file allows. */
static void draw_limit(const chart *it, const panel *p)
{
    ts_canvas       *canvas = &it->scene->canvas;
    const ts_measure limit  = it->scene->drive->limits.neck_chance;

    if (!ts_measure_known(limit) || !(limit.value < 1.0))
        return;
    const double y = y_of(p, limit.value);
    ts_path_area(canvas, (ts_area){p->area.x, p->area.y, p->area.w, y - p->area.y});
    ts_hatch(canvas, TS_COLOUR_RULE);
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK2);
    ts_draw_line(canvas, (ts_point){p->area.x, y}, (ts_point){p->area.x + p->area.w, y});
}

/* ---- curves ---------------------------------------------------------------------------------- */

typedef enum curve { EARLY, FATIGUE, LATE } curve;

static double chance_at(const panel *p, curve which, double d)
{
    const ts_neck_chance chance = ts_neck_chance_of(&p->life->make, &p->life->duty, d, NULL);

    if (isnan(chance.early)) /* a steady torque alone breaks so thin a neck */
        return which == LATE ? 0.0 : 1.0;
    return which == EARLY ? chance.early : which == FATIGUE ? chance.fatigue_early : chance.late;
}

static void draw_curve(const chart *it, const panel *p, curve which)
{
    static const ts_colour colours[] = {
        [EARLY] = TS_COLOUR_POWER, [FATIGUE] = TS_COLOUR_POWER, [LATE] = TS_COLOUR_INK};
    ts_canvas *canvas = &it->scene->canvas;

    ts_clip_area(canvas, p->area);
    ts_use_pen(canvas, which == FATIGUE ? TS_PEN_2 : TS_PEN_4, colours[which]);
    if (which == FATIGUE)
        ts_use_dash(canvas, TS_DASH_HIDDEN);
    for (int i = 0; i <= POINTS; i++) {
        const double   d  = p->d_low + (p->d_high - p->d_low) * i / POINTS;
        const ts_point at = {x_of(p, d), y_of(p, chance_at(p, which, d))};
        if (i == 0)
            ts_move_to(canvas, at);
        else
            ts_line_to(canvas, at);
    }
    ts_stroke(canvas);
    ts_clip_end(canvas);
}

static void draw_mark(const chart *it, const panel *p, double d, const char *says, bool dashed)
{
    ts_canvas         *canvas = &it->scene->canvas;
    const double       x      = x_of(p, d);
    const ts_lettering word   = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .anchor = TS_ANCHOR_MIDDLE,
                                 .colour = TS_COLOUR_INK,
                                 .halo   = true};

    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    if (dashed)
        ts_use_dash(canvas, TS_DASH_HIDDEN);
    ts_draw_line(canvas, (ts_point){x, p->area.y}, (ts_point){x, p->area.y + p->area.h});
    if (worse_at(p, d) >= p->floor)
        ts_draw_dot(canvas, (ts_point){x, y_of(p, worse_at(p, d))}, 4.0, TS_COLOUR_INK);
    ts_write(canvas, (ts_point){x, p->area.y - 6.0}, says, &word);
}

/* ---- words ----------------------------------------------------------------------------------- */

static void add_chance(ts_buffer *line, const char *says, double chance)
{
    ts_buffer_add(line, says);
    ts_buffer_significant(line, chance, 2);
}

static double write_line(const chart *it, ts_point at, bool bold)
{
    const ts_lettering how  = {.size   = bold ? TS_LOOK_TYPE_PX_BODY : TS_LOOK_TYPE_PX_SMALL,
                               .bold   = bold,
                               .colour = bold ? TS_COLOUR_INK : TS_COLOUR_INK2,
                               .width  = right_wide - 28.0,
                               .lines  = 2};
    const ts_area      area = ts_write(&it->scene->canvas, at, ts_scene_kept(it->scene), &how);
    return at.y + area.h + 5.0;
}

static void write_numbers(const chart *it, const panel *p)
{
    ts_scene             *scene  = it->scene;
    ts_canvas            *canvas = &scene->canvas;
    const ts_neck_chance *chance = &p->life->chance;
    ts_point              at     = {p->area.x + p->area.w + 16.0, p->area.y + 12.0};
    ts_buffer            *line   = ts_canvas_line(canvas);

    ts_add_clean(line, p->neck->name);
    at.y = write_line(it, at, true);
    line = ts_canvas_line(canvas);
    ts_buffer_add(line, "breaks at ");
    ts_add_shown(line, scene, p->neck->band.low, TS_KIND_TORQUE);
    ts_buffer_add(line, " to ");
    ts_add_shown(line, scene, p->neck->band.high, TS_KIND_TORQUE);
    at.y = write_line(it, at, false);
    line = ts_canvas_line(canvas);
    ts_buffer_add(line, "must pass ");
    ts_add_shown(line, scene, p->life->duty.T_legit, TS_KIND_TORQUE);
    ts_buffer_add(line, "; its way bears ");
    ts_add_shown(line, scene, p->life->duty.T_capacity, TS_KIND_TORQUE);
    at.y = write_line(it, at, false);
    line = ts_canvas_line(canvas);
    add_chance(line, "too early ", chance->early);
    add_chance(line, " (at once ", chance->static_early);
    add_chance(line, ", by fatigue ", chance->fatigue_early);
    ts_buffer_add(line, ")");
    at.y = write_line(it, at, false);
    add_chance(ts_canvas_line(canvas), "too late ", chance->late);
    (void)write_line(it, at, false);
}

static void draw_panel(const chart *it, const panel *p)
{
    ts_scene *scene = it->scene;

    draw_chances(it, p);
    draw_diameters(it, p);
    draw_limit(it, p);
    draw_curve(it, p, FATIGUE);
    draw_curve(it, p, EARLY);
    draw_curve(it, p, LATE);
    const double d = p->life->make.d_0;
    /* Two marks that would write into each other keep one word. */
    const bool apart = !isnan(p->balance) && fabs(x_of(p, p->balance) - x_of(p, d)) > 150.0;
    if (!isnan(p->balance)) {
        ts_buffer *line = ts_canvas_line(&scene->canvas);
        ts_buffer_add(line, apart ? "balance " : "");
        if (apart)
            ts_add_shown(line, scene, p->balance, TS_KIND_LENGTH);
        draw_mark(it, p, p->balance, ts_scene_kept(scene), true);
    }
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_buffer_add(line, "the file's ");
    ts_add_shown(line, scene, d, TS_KIND_LENGTH);
    if (!isnan(p->balance) && !apart) {
        ts_buffer_add(line, ", balance ");
        ts_add_shown(line, scene, p->balance, TS_KIND_LENGTH);
    }
    draw_mark(it, p, d, ts_scene_kept(scene), false);
    write_numbers(it, p);
}

static void write_title(const chart *it)
{
    ts_scene          *scene = it->scene;
    const ts_lettering lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                .bold   = true,
                                .colour = TS_COLOUR_INK,
                                .width  = scene->field.w - 24.0};

    ts_write(&scene->canvas, (ts_point){scene->field.x + 12.0, scene->field.y + 24.0},
             it->count > 0
                 ? "How thick should the necks be?"
                 : "No chances of necks can be drawn: none has a `diameter` with known chances.",
             &lead);
}

/* Where no chance can be drawn: what every pad has instead. */
static void write_reason(const chart *it, const ts_guard *guard, double y)
{
    ts_scene            *scene  = it->scene;
    const ts_select     *select = scene->subject->select;
    const ts_lettering   words  = {.colour = TS_COLOUR_INK, .width = scene->field.w - 24.0};
    const ts_drive_neck *neck =
        guard->neck == TS_NOWHERE ? NULL : &select->necks->items[guard->neck];
    ts_neck_life life;
    ts_buffer   *line = ts_canvas_line(&scene->canvas);

    ts_buffer_print(line, "%s: ",
                    guard->pad != TS_NOWHERE ? scene->train->pads[guard->pad].name
                                             : scene->train->shafts[guard->shaft].name);
    if (neck == NULL) {
        ts_buffer_add(line, "no neck");
    } else if (!neck->designed) {
        ts_buffer_add(line, "a band that the file states, ");
        ts_add_shown(line, scene, neck->band.low, TS_KIND_TORQUE);
        ts_buffer_add(line, " to ");
        ts_add_shown(line, scene, neck->band.high, TS_KIND_TORQUE);
        ts_buffer_add(line, "; with a `diameter` it would be designed, and have chances");
    } else {
        ts_neck_life_of(select, guard, &life, NULL);
        ts_buffer_print(line, "designed, and its chances are not computable for want of %s",
                        life.missing != NULL ? life.missing : "its band");
    }
    ts_write(&scene->canvas, (ts_point){scene->field.x + 12.0, y}, ts_scene_kept(scene), &words);
}

static void write_reasons(const chart *it)
{
    const ts_select *select = it->scene->subject->select;
    const double     top    = it->scene->field.y + title;

    for (uint32_t g = 0; select != NULL && g < select->count; g++)
        write_reason(it, &select->guards[g], top + 20.0 * g);
}

ts_status ts_draw_necks(ts_scene *scene)
{
    chart     it     = {.scene = scene};
    ts_status status = gather(&it);

    if (status != TS_OK)
        return status;
    const double rows  = (double)(it.count > 0 ? it.count : 1);
    const double key   = ts_chart_key_height(scene, key_words);
    const double fixed = title + key + 16.0, beside = panel_head + panel_foot;
    const double high = ts_sheet_height(scene, fixed + rows * (panel_least + beside));
    ts_sheet_divide(scene, high);
    const double tall = fmin(panel_most, (scene->field.h - fixed) / rows - beside);
    status =
        ts_canvas_sheet(&scene->canvas, high,
                        scene->subject->title ? scene->subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    write_title(&it);
    if (it.count == 0)
        write_reasons(&it);
    for (size_t i = 0; i < it.count; i++) {
        it.panels[i].area =
            (ts_area){scene->field.x + left_wide,
                      scene->field.y + title + panel_head + (double)i * (tall + beside),
                      scene->field.w - left_wide - right_wide, tall};
        draw_panel(&it, &it.panels[i]);
        ts_note_area(&scene->canvas.places, TS_PLACE_ROW, (uint32_t)i, it.panels[i].area);
    }
    ts_chart_key_write(scene, key_words, key);
    ts_sheet_draw(scene, "Necks", "early and late chances");
    return TS_OK;
}
