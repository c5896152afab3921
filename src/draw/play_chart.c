/* draw/play_chart.c: what play is left between teeth while a drive grows hot?
 *
 * Above the temperatures of oil, casing and gears against time, below the least play of every mesh,
 * both cut where one condition follows another.
 */
#include "draw/play_chart.h"

#include "draw/lettering.h"
#include "draw/sheet.h"
#include "draw/trace_panel.h"

#include <math.h>
#include <stdio.h>

enum { TEMPERATURES = 4, MESHES_MOST = 64 };

/* px */
static const double title = 64.0, left_wide = 96.0, right_wide = 210.0, between = 76.0, foot = 70.0,
                    least_high = 620.0;

typedef struct chart {
    ts_scene             *scene;
    const ts_warm_course *course; /* NULL: nothing was followed */
    ts_trace_panel        warm, play;
    double               *minutes;
    ts_trace_line         temperatures[TEMPERATURES];
    ts_trace_line         plays[MESHES_MOST];
    size_t                play_count;
    char                  warm_says[64], play_says[96];
} chart;

/* ---- lines ------------------------------------------------------------------------------------
 */

static double *room(const chart *it)
{
    return TS_TAKE(it->scene->arena, double, it->course->moment_count);
}

static ts_trace_line line_of(const chart *it, const double *y)
{
    return (ts_trace_line){.t      = it->minutes,
                           .y      = y,
                           .count  = it->course->moment_count,
                           .stride = 1,
                           .factor = 1.0,
                           .pen    = TS_PEN_3,
                           .colour = TS_COLOUR_INK};
}

static double temperature_at(const ts_warm_moment *at, int which)
{
    switch (which) {
    case 0:
        return at->oil;
    case 1:
        return at->casing;
    case 2:
        return at->least;
    default:
        return at->most;
    }
}

static bool lay_temperatures(chart *it)
{
    static const struct {
        const char *name;
        ts_dash     dash;
        ts_pen      pen;
    } lines[TEMPERATURES] = {{"oil", TS_DASH_CHAIN, TS_PEN_3},
                             {"casing", TS_DASH_NONE, TS_PEN_4},
                             {"coolest gears", TS_DASH_HIDDEN, TS_PEN_3},
                             {"warmest gears", TS_DASH_NONE, TS_PEN_3}};

    for (int k = 0; k < TEMPERATURES; k++) {
        double *y = room(it);
        if (y == NULL)
            return false;
        for (size_t i = 0; i < it->course->moment_count; i++)
            y[i] = ts_scene_in_unit(it->scene, temperature_at(&it->course->moments[i], k),
                                    TS_KIND_TEMPERATURE);
        it->temperatures[k]      = line_of(it, y);
        it->temperatures[k].dash = lines[k].dash;
        it->temperatures[k].pen  = lines[k].pen;
        it->temperatures[k].name = lines[k].name;
        ts_trace_widen(&it->warm, &it->temperatures[k]);
    }
    return true;
}

static bool lay_plays(chart *it)
{
    static const ts_dash dashes[] = {TS_DASH_NONE, TS_DASH_HIDDEN, TS_DASH_CHAIN, TS_DASH_PHANTOM};
    const ts_train      *train    = it->scene->train;

    for (size_t p = 0; p < it->course->play_count && it->play_count < MESHES_MOST; p++) {
        const ts_warm_play *play = &it->course->plays[p];
        double             *y    = room(it);
        if (y == NULL)
            return false;
        if (play->missing != NULL)
            continue;
        for (size_t i = 0; i < it->course->moment_count; i++)
            y[i] = ts_scene_in_unit(it->scene, play->low[i], TS_KIND_LENGTH);
        ts_trace_line *line = &it->plays[it->play_count];
        *line               = line_of(it, y);
        line->dash          = dashes[it->play_count % 4];
        line->name          = train->shafts[train->meshes[play->mesh].driven_shaft].name;
        ts_trace_widen(&it->play, line);
        it->play_count++;
    }
    return true;
}

/* ---- words ------------------------------------------------------------------------------------
 */

/* The mesh that keeps least, and when. */
static void write_least(const chart *it, ts_buffer *line)
{
    const ts_warm_play *tightest = NULL;

    for (size_t p = 0; p < it->course->play_count; p++) {
        const ts_warm_play *play = &it->course->plays[p];
        if (play->missing == NULL &&
            (tightest == NULL || !(play->low[play->least] >= tightest->low[tightest->least])))
            tightest = play;
    }
    if (tightest == NULL) {
        ts_buffer_add(line, "No gears here have told allowances.");
        return;
    }
    const ts_train *train = it->scene->train;
    ts_buffer_print(
        line, "Least to %s: ", train->shafts[train->meshes[tightest->mesh].driven_shaft].name);
    ts_add_number(line, ts_scene_in_unit(it->scene, tightest->low[tightest->least], TS_KIND_LENGTH),
                  it->scene->options->units == TS_UNITS_US ? 4 : 3);
    ts_buffer_print(line, " %s after ", ts_scene_unit(it->scene, TS_KIND_LENGTH));
    ts_add_number(line, it->course->moments[tightest->least].t / 60.0, 1);
    ts_buffer_add(line, " min");
}

static void write_title(const chart *it)
{
    ts_scene              *scene = it->scene;
    const ts_drawn_warmth *warm  = scene->subject->warm;
    ts_buffer             *line  = ts_canvas_line(&scene->canvas);
    const ts_lettering     lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                    .bold   = true,
                                    .colour = TS_COLOUR_INK,
                                    .width  = scene->field.w - 24.0};

    ts_buffer_add(line, "What play is left as it grows hot?  ");
    if (it->course != NULL)
        write_least(it, line);
    else if (warm == NULL)
        ts_buffer_add(line, "It was not followed.");
    else if (warm->course->fault != NULL)
        ts_buffer_print(line, "It could not be computed: %s.", warm->course->fault);
    else
        ts_buffer_print(line, "The file does not tell %s%s%s.", warm->course->missing,
                        warm->course->lacks != NULL ? " of " : "",
                        warm->course->lacks != NULL ? warm->course->lacks : "");
    ts_write(&scene->canvas, (ts_point){scene->field.x + 12.0, scene->field.y + 24.0},
             ts_scene_kept(scene), &lead);
}

static void write_foot(const chart *it)
{
    ts_scene          *scene = it->scene;
    const ts_lettering small = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                .colour = TS_COLOUR_INK2,
                                .width  = scene->field.w - 24.0,
                                .lines  = 2};

    ts_write(&scene->canvas,
             (ts_point){scene->field.x + 12.0, scene->field.y + scene->field.h - 28.0},
             "Lines of play bear the name of the driven shaft: the least that allowances leave "
             "normal to the flanks, over films of gears from 200 to 1000 W/(m2 K).  Bevels move "
             "with the spool and are left out.",
             &small);
}

/* Where one condition follows another, with its name. */
static void draw_legs(const chart *it)
{
    ts_canvas             *canvas = &it->scene->canvas;
    const ts_drawn_warmth *warm   = it->scene->subject->warm;
    const double           foot_y = it->play.area.y + it->play.area.h;

    for (size_t l = 0; l < warm->leg_count; l++) {
        const double x = ts_trace_x(&it->warm, it->course->moments[l * warm->samples].t / 60.0);
        const double end =
            ts_trace_x(&it->warm, it->course->moments[(l + 1) * warm->samples].t / 60.0);
        const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                  .halo   = true,
                                  .anchor = TS_ANCHOR_LEFT,
                                  .colour = TS_COLOUR_INK,
                                  .width  = end - x - 8.0,
                                  .lines  = 1};
        if (l > 0) {
            ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK2);
            ts_use_dash(canvas, TS_DASH_PHANTOM);
            ts_draw_line(canvas, (ts_point){x, it->warm.area.y},
                         (ts_point){x, it->play.area.y - 26.0});
            ts_draw_line(canvas, (ts_point){x, it->play.area.y}, (ts_point){x, foot_y});
        }
        if (end - x > 60.0)
            ts_write(canvas, (ts_point){x + 5.0, it->play.area.y - 34.0},
                     it->scene->drive->conditions[warm->legs[l].condition].name, &how);
    }
}

/* ---- the sheet --------------------------------------------------------------------------------
 */

static bool lay_panels(chart *it)
{
    const ts_area field = it->scene->field;
    const double  high  = field.h - title - between - foot;

    it->minutes = room(it);
    if (it->minutes == NULL)
        return false;
    for (size_t i = 0; i < it->course->moment_count; i++)
        it->minutes[i] = it->course->moments[i].t / 60.0;
    snprintf(it->warm_says, sizeof it->warm_says, "temperature, %s",
             ts_scene_unit(it->scene, TS_KIND_TEMPERATURE));
    snprintf(it->play_says, sizeof it->play_says, "least play, %s",
             ts_scene_unit(it->scene, TS_KIND_LENGTH));
    it->warm = (ts_trace_panel){.area  = {field.x + left_wide, field.y + title,
                                          field.w - left_wide - right_wide, 0.5 * high},
                                .until = it->minutes[it->course->moment_count - 1],
                                .says  = it->warm_says,
                                .unit  = "min"};
    it->play = it->warm;
    it->play.area.y += 0.5 * high + between;
    it->play.says  = it->play_says;
    it->play.times = true;
    return true;
}

static bool draw_traces(chart *it)
{
    if (!lay_panels(it) || !lay_temperatures(it) || !lay_plays(it))
        return false;
    ts_trace_frame(it->scene, &it->warm);
    ts_trace_frame(it->scene, &it->play);
    ts_note_area(&it->scene->canvas.places, TS_PLACE_ROW, 0, it->warm.area);
    ts_note_area(&it->scene->canvas.places, TS_PLACE_ROW, 1, it->play.area);
    draw_legs(it);
    for (size_t i = 0; i < TEMPERATURES; i++)
        ts_trace_draw(it->scene, &it->warm, &it->temperatures[i]);
    for (size_t i = 0; i < it->play_count; i++)
        ts_trace_draw(it->scene, &it->play, &it->plays[i]);
    ts_trace_names(it->scene, &it->warm, it->temperatures, TEMPERATURES);
    ts_trace_names(it->scene, &it->play, it->plays, it->play_count);
    return true;
}

ts_status ts_draw_play(ts_scene *scene)
{
    const ts_drawn_warmth *warm   = scene->subject->warm;
    chart                  it     = {.scene = scene};
    const double           height = ts_sheet_height(scene, least_high);

    if (warm != NULL && warm->course->missing == NULL && warm->course->fault == NULL)
        it.course = warm->course;
    ts_sheet_divide(scene, height);
    const ts_status status =
        ts_canvas_sheet(&scene->canvas, height,
                        scene->subject->title ? scene->subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    if (it.course != NULL && !draw_traces(&it))
        return TS_NO_MEMORY;
    write_title(&it);
    write_foot(&it);
    ts_sheet_draw(scene, "Play", "from a cold soak");
    return TS_OK;
}
