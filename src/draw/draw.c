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
#include "draw/recorded.h"
#include "draw/root_view.h"
#include "draw/sampling_chart.h"
#include "draw/scene.h"
#include "draw/seizure_chart.h"
#include "draw/selectivity_chart.h"
#include "draw/speed_chart.h"
#include "draw/start_chart.h"
#include "draw/stop_view.h"
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

ts_status ts_draw_figure(ts_scene *scene)
{
    switch (scene->options->figure) {
    case TS_FIGURE_BEHIND:
        return ts_draw_face_view(scene, false, false);
    case TS_FIGURE_FRONT:
        return ts_draw_face_view(scene, true, false);
    case TS_FIGURE_POWER:
        return ts_draw_face_view(scene, false, true);
    case TS_FIGURE_PLAIN:
        return ts_draw_plain(scene);
    case TS_FIGURE_PADS:
        return ts_draw_pads(scene);
    case TS_FIGURE_UNROLLED:
        return ts_draw_unrolled(scene);
    case TS_FIGURE_SPEEDS:
        return ts_draw_speed_chart(scene);
    case TS_FIGURE_TEETH:
        return ts_draw_teeth(scene);
    case TS_FIGURE_ROOT:
        return ts_draw_root(scene);
    case TS_FIGURE_MARGINS:
        return ts_draw_margins(scene);
    case TS_FIGURE_MASS:
        return ts_draw_mass(scene);
    case TS_FIGURE_SELECTIVITY:
        return ts_draw_selectivity(scene);
    case TS_FIGURE_WIDTHS:
        return ts_draw_widths(scene);
    case TS_FIGURE_NECKS:
        return ts_draw_necks(scene);
    case TS_FIGURE_MODES:
        return ts_draw_modes(scene);
    case TS_FIGURE_INTERFERENCE:
        return ts_draw_interference(scene);
    case TS_FIGURE_CAMPBELL:
        return ts_draw_campbell(scene);
    case TS_FIGURE_REACH:
        return ts_draw_reach(scene);
    case TS_FIGURE_START:
        return ts_draw_start(scene);
    case TS_FIGURE_SEIZURE:
        return ts_draw_seizure(scene);
    case TS_FIGURE_FLOAT:
        return ts_draw_float(scene);
    case TS_FIGURE_HEAT:
        return ts_draw_heat(scene);
    case TS_FIGURE_STOPS:
        return ts_draw_stops(scene);
    case TS_FIGURE_CANDIDATES:
        return ts_draw_candidates(scene);
    case TS_FIGURE_SAMPLES:
        return ts_draw_samples(scene);
    case TS_FIGURE_COUNT:
        break;
    }
    return TS_NOT_UNDERSTOOD;
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
