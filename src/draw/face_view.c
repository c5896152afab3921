/* draw/face_view.c: in which order is a face view put together? */
#include "draw/face_view.h"

#include "draw/face.h"
#include "draw/face_label.h"
#include "draw/face_note.h"
#include "draw/rail.h"
#include "draw/ribbon.h"
#include "draw/sheet.h"
#include "draw/tag.h"

/* From top to bottom: picture with the column of findings beside it, routing band, rail. */
static void divide_field(ts_face *face, const ts_rail *rail)
{
    const ts_area field = face->scene->field;
    const double  high  = ts_rail_height(rail);
    face->rail          = (ts_area){field.x, field.y + field.h - high, field.w, high};
    face->picture       = (ts_area){field.x, field.y, field.w,
                                    field.h - high - (rail->rows == 1 ? TS_LOOK_SHEET_ROUTING : 0.0)};
    const bool findings = face->scene->subject->findings && face->scene->subject->finding_count > 0;
    if (!findings && !face->ribbons)
        return;
    face->column = face->picture;
    face->column.x += face->picture.w - TS_LOOK_SHEET_COLUMN;
    face->column.w = TS_LOOK_SHEET_COLUMN;
    face->picture.w -= TS_LOOK_SHEET_COLUMN;
}

static void draw_machine(const ts_face *face, const ts_rail *rail, const ts_ribbons *ribbons)
{
    ts_canvas *canvas = &face->scene->canvas;
    ts_rail_draw_machine(face, rail);
    ts_face_draw_bodies(face);
    ts_face_draw_senses(face);
    if (face->ribbons)
        ts_ribbons_draw(face, ribbons);
    ts_face_draw_numbers(face);
    ts_clip_end(canvas);
}

static void draw_words(const ts_face *face, const ts_ribbons *ribbons)
{
    ts_obstacles obstacles = {.arena  = face->scene->arena,
                              .within = ts_area_inset(face->picture, 4.0)};
    ts_face_collect(face, &obstacles);
    ts_avoid_places(&obstacles, &face->scene->canvas.places);
    if (face->ribbons)
        ts_ribbons_avoid(ribbons, &obstacles);
    ts_face_draw_note(face, &obstacles, ribbons);
    if (face->ribbons)
        ts_ribbons_label(face, ribbons, &obstacles);
    ts_face_draw_labels(face, &obstacles);
    if (!face->ribbons)
        ts_face_draw_tags(face, &obstacles);
}

ts_status ts_draw_face_view(ts_scene *scene, bool front, bool ribbons)
{
    ts_rail   rail;
    ts_face   face   = {.scene = scene, .front = front, .ribbons = ribbons};
    ts_status status = ts_rail_measure(
        scene, scene->canvas.width - 2.0 * (TS_LOOK_SHEET_MARGIN + TS_LOOK_SHEET_BORDER), front,
        &rail);
    if (status != TS_OK)
        return status;
    const double height = ts_sheet_height(scene, ts_rail_height(&rail) + 560.0);
    ts_sheet_divide(scene, height);
    divide_field(&face, &rail);
    ts_ribbons bands = {0};
    status           = ts_face_lay_out(&face);
    if (status == TS_OK && ribbons)
        status = ts_ribbons_lay(&face, &bands);
    if (status == TS_OK)
        status = ts_canvas_sheet(&scene->canvas, height,
                                 scene->subject->title ? scene->subject->title
                                                       : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    ts_rail_lead(&face, &rail);
    draw_machine(&face, &rail, &bands);
    draw_words(&face, &bands);
    if (face.ribbons)
        ts_face_draw_balance(&face);
    else if (face.column.w > 0.0)
        ts_face_draw_findings(&face);
    ts_rail_draw(&face, &rail);
    ts_sheet_draw(scene,
                  ribbons ? "Power, seen from behind"
                  : front ? "Seen from the front"
                          : "Seen from behind",
                  front ? "looking rearward" : "looking forward");
    return TS_OK;
}
