/* draw/scene.h: what one drawing is about, at hand for every part of it. */
#ifndef TS_DRAW_SCENE_H
#define TS_DRAW_SCENE_H

#include "draw/canvas.h"
#include "draw/figure.h"

typedef struct ts_scene {
    const ts_drawing_subject *subject;
    const ts_draw_options    *options;
    const ts_drive           *drive;
    const ts_train           *train;
    const ts_motion          *motion;
    const ts_power           *power;
    ts_arena                 *arena;
    ts_canvas                 canvas;
    uint32_t                  condition;
    ts_units                  units;
    ts_area                   frame; /* inside of the frame of the sheet                */
    ts_area                   field; /* what the figure may fill: frame less title block */
    const char               *scale; /* "1 : 2.6", set by a figure that has a scale     */
} ts_scene;

/* A scene without a canvas: ts_canvas_open(&scene.canvas, ...) is the next step. */
ts_scene ts_scene_of(const ts_drawing_subject *subject, const ts_draw_options *options,
                     ts_arena *arena);
/* Lays out and draws the figure of the options; the canvas must be open.  What stands where is then
 * in scene->canvas.places. */
ts_status ts_draw_figure(ts_scene *scene);

/* rad/s of a shaft in the condition shown, or in another one; NaN when not known. */
double ts_scene_speed(const ts_scene *scene, uint32_t shaft);
double ts_scene_speed_in(const ts_scene *scene, uint32_t shaft, uint32_t condition);

const ts_pad_load   *ts_scene_pad_load(const ts_scene *scene, uint32_t pad);
const ts_mesh_load  *ts_scene_mesh_load(const ts_scene *scene, uint32_t mesh);
const ts_spool_load *ts_scene_spool_load(const ts_scene *scene, uint32_t spool);

/* A copy of the text in canvas.line that lives as long as the arena; "" without memory. */
const char *ts_scene_kept(ts_scene *scene);

/* Numbers for people, appended: "24 300", "-0.2", with groups of three from five digits on and a
 * true minus; "not known" for NaN. */
void ts_add_number(ts_buffer *out, double value, int decimals);
/* As many decimals as that kind of quantity deserves, with and without its unit. */
void ts_add_shown(ts_buffer *out, const ts_scene *scene, double si, ts_kind kind);
void ts_add_value(ts_buffer *out, const ts_scene *scene, double si, ts_kind kind);
/* "rpm", "kW", ...: the unit in which the scene shows that kind. */
const char *ts_scene_unit(const ts_scene *scene, ts_kind kind);
double      ts_scene_in_unit(const ts_scene *scene, double si, ts_kind kind);

/* A clock angle (rad from behind) as the file has it: from 12:00 clockwise in the file's sight, so
 * that a dial reads what the file and the findings say, from whichever side it is looked at. */
double ts_scene_dial(const ts_scene *scene, double clock);
/* "clock as in the file: seen from the front" */
const char *ts_scene_dial_says(const ts_scene *scene);

/* "cw", "ccw" or "?" of a sense of +1 (ccw) or -1 as it is seen. */
const char *ts_sense_word(int sense);

#endif
