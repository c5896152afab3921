/* draw/draw.c: which figure, in which condition, to which sink? */
#include "draw/candidate_sheet.h"
#include "draw/dxf_view.h"
#include "draw/face_view.h"
#include "draw/figure.h"
#include "draw/float_view.h"
#include "draw/heat_view.h"
#include "draw/interference_chart.h"
#include "draw/margin_chart.h"
#include "draw/mass_chart.h"
#include "draw/mode_chart.h"
#include "draw/neck_chart.h"
#include "draw/pad_faces.h"
#include "draw/plain_view.h"
#include "draw/play_chart.h"
#include "draw/recorded.h"
#include "draw/root_view.h"
#include "draw/sampling_chart.h"
#include "draw/scene.h"
#include "draw/seizure_chart.h"
#include "draw/selectivity_chart.h"
#include "draw/speed_chart.h"
#include "draw/start_chart.h"
#include "draw/stop_view.h"
#include "draw/swing_view.h"
#include "draw/teeth_view.h"
#include "draw/unrolled.h"
#include "draw/whirl_chart.h"
#include "draw/width_chart.h"

#include <math.h>

int32_t ts_draw_condition(const ts_drawing_subject *subject)
{
    const size_t spools = subject->drive->spool_count;
    int32_t      best   = 0;
    double       most   = -1.0;
    for (size_t c = 0; c < subject->drive->condition_count; c++) {
        double sum = 0.0;
        for (size_t s = 0; s < spools; s++)
            sum += fabs(subject->power->spool[c * spools + s].P);
        if (sum > most) {
            most = sum;
            best = (int32_t)c;
        }
    }
    return best;
}

static bool in_range(const ts_drawing_subject *subject, const ts_draw_options *options)
{
    const bool width =
        !(options->width > 0.0) || (options->width >= 900.0 && options->width <= 8000.0);
    const bool scale = !(options->scale > 0.0) || (options->scale >= 0.1 && options->scale <= 8.0);
    const bool known = (int)options->figure >= 0 && options->figure < TS_FIGURE_COUNT;
    const bool found = (options->figure == TS_FIGURE_CANDIDATES && subject->candidates != NULL) ||
                       (options->figure == TS_FIGURE_SAMPLES && subject->samples != NULL) ||
                       options->figure == TS_FIGURE_PLAIN;
    return width && scale && (known || found) && (int)options->ground >= 0 &&
           options->ground < TS_GROUND_COUNT &&
           options->condition < (int32_t)subject->drive->condition_count &&
           subject->drive->condition_count > 0;
}

static ts_status draw_behind(ts_scene *scene)
{
    return ts_draw_face_view(scene, false, false);
}

static ts_status draw_front(ts_scene *scene)
{
    return ts_draw_face_view(scene, true, false);
}

static ts_status draw_power(ts_scene *scene)
{
    return ts_draw_face_view(scene, false, true);
}

/* How each figure is drawn. */
static ts_status (*const drawers[])(ts_scene *scene) = {
    [TS_FIGURE_BEHIND]       = draw_behind,
    [TS_FIGURE_FRONT]        = draw_front,
    [TS_FIGURE_POWER]        = draw_power,
    [TS_FIGURE_PLAIN]        = ts_draw_plain,
    [TS_FIGURE_PADS]         = ts_draw_pads,
    [TS_FIGURE_UNROLLED]     = ts_draw_unrolled,
    [TS_FIGURE_SPEEDS]       = ts_draw_speed_chart,
    [TS_FIGURE_TEETH]        = ts_draw_teeth,
    [TS_FIGURE_ROOT]         = ts_draw_root,
    [TS_FIGURE_MARGINS]      = ts_draw_margins,
    [TS_FIGURE_MASS]         = ts_draw_mass,
    [TS_FIGURE_SELECTIVITY]  = ts_draw_selectivity,
    [TS_FIGURE_WIDTHS]       = ts_draw_widths,
    [TS_FIGURE_NECKS]        = ts_draw_necks,
    [TS_FIGURE_MODES]        = ts_draw_modes,
    [TS_FIGURE_INTERFERENCE] = ts_draw_interference,
    [TS_FIGURE_CAMPBELL]     = ts_draw_campbell,
    [TS_FIGURE_REACH]        = ts_draw_reach,
    [TS_FIGURE_START]        = ts_draw_start,
    [TS_FIGURE_SEIZURE]      = ts_draw_seizure,
    [TS_FIGURE_JOLT]         = ts_draw_seizure,
    [TS_FIGURE_SWING]        = ts_draw_swing,
    [TS_FIGURE_FLOAT]        = ts_draw_float,
    [TS_FIGURE_HEAT]         = ts_draw_heat,
    [TS_FIGURE_PLAY]         = ts_draw_play,
    [TS_FIGURE_STOPS]        = ts_draw_stops,
    [TS_FIGURE_CANDIDATES]   = ts_draw_candidates,
    [TS_FIGURE_SAMPLES]      = ts_draw_samples,
};

ts_status ts_draw_figure(ts_scene *scene)
{
    const size_t figure = (size_t)scene->options->figure;
    if (figure >= sizeof drawers / sizeof drawers[0] || drawers[figure] == NULL)
        return TS_NOT_UNDERSTOOD;
    return drawers[figure](scene);
}

ts_scene ts_scene_of(const ts_drawing_subject *subject, const ts_draw_options *options,
                     ts_arena *arena)
{
    const int32_t condition =
        options->condition >= 0 ? options->condition : ts_draw_condition(subject);
    return (ts_scene){
        .subject   = subject,
        .options   = options,
        .drive     = subject->drive,
        .train     = subject->train,
        .motion    = subject->motion,
        .power     = subject->power,
        .arena     = arena,
        .condition = (uint32_t)condition,
        .units     = options->units,
    };
}

bool ts_figure_has_size(ts_figure figure)
{
    return figure == TS_FIGURE_BEHIND || figure == TS_FIGURE_FRONT || figure == TS_FIGURE_PADS ||
           figure == TS_FIGURE_UNROLLED || figure == TS_FIGURE_FLOAT;
}

/* A DXF has no sheet: the canvas only keeps what its words are put together in. */
static ts_status draw_true_size(ts_scene *scene)
{
    ts_status status = ts_canvas_open(&scene->canvas, scene->options, scene->arena);
    if (status == TS_OK)
        status = ts_draw_dxf(scene, &scene->canvas.bytes);
    return status == TS_OK && ts_arena_failed(scene->arena) ? TS_NO_MEMORY : status;
}

/* The figure on the canvas of the scene, finished; the canvas is open whatever comes back. */
static ts_status draw_whole(ts_scene *scene)
{
    ts_status status = ts_canvas_open(&scene->canvas, scene->options, scene->arena);
    if (status == TS_OK)
        status = ts_draw_figure(scene);
    const char *title = scene->subject->title ? scene->subject->title : scene->drive->title.text;
    if (status == TS_OK)
        status = ts_canvas_finish(&scene->canvas, title);
    if (status == TS_OK && ts_arena_failed(scene->arena))
        status = TS_NO_MEMORY;
    return status;
}

ts_status ts_draw(const ts_drawing_subject *subject, const ts_draw_options *options,
                  const ts_sink *sink)
{
    if (!in_range(subject, options))
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(options->allocator);
    if (!arena)
        return TS_NO_MEMORY;
    ts_scene  scene = ts_scene_of(subject, options, arena);
    ts_status status =
        options->format == TS_PICTURE_DXF ? draw_true_size(&scene) : draw_whole(&scene);
    if (status == TS_OK)
        status = ts_buffer_send(&scene.canvas.bytes, sink);
    ts_canvas_close(&scene.canvas);
    ts_arena_close(arena);
    return status;
}

ts_status ts_draw_recorded(const ts_drawing_subject *subject, const ts_draw_options *options,
                           cairo_surface_t **surface, double *width, double *height)
{
    ts_draw_options strokes = *options;
    strokes.format          = TS_PICTURE_STROKES;
    *surface                = NULL;
    if (!in_range(subject, &strokes))
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(strokes.allocator);
    if (!arena)
        return TS_NO_MEMORY;
    ts_scene        scene  = ts_scene_of(subject, &strokes, arena);
    const ts_status status = draw_whole(&scene);
    if (status == TS_OK) {
        *surface = cairo_surface_reference(scene.canvas.surface);
        *width   = scene.canvas.width;
        *height  = scene.canvas.height;
    }
    ts_canvas_close(&scene.canvas);
    ts_arena_close(arena);
    return status;
}
