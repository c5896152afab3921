/* draw/width_chart.c: how do the widths, what sets them and what no width saves share the sheet? */
#include "draw/width_chart.h"

#include "draw/chart_key.h"
#include "draw/lettering.h"
#include "draw/mesh_choice.h"
#include "draw/sheet.h"
#include "draw/symbol.h"
#include "search/tooth_width_says.h"

#include <math.h>

/* px */
static const double label_wide = 250.0, number_wide = 170.0, reason_wide = 390.0, head = 52.0,
                    title = 54.0, row_least = 30.0, row_most = 44.0, note = 17.0;

typedef struct chart {
    ts_scene      *scene;
    ts_width_strip strip;
    double         row;
    double         edge; /* px, left of all          */
    size_t         notes;
} chart;

/* ---- words ----------------------------------------------------------------------------------- */

static const char key_words[] =
    "Full outline: the width that was chosen; dashed outline: the width of the file. Wall: the "
    "greatest common width that `face to diameter` allows in any of its meshes, where it lies on "
    "the "
    "scale. What sets a width is what does not hold when that gear alone is a step narrower; "
    "least width: `face to module`. Mass is of the gears as discs of their reference circles, with "
    "rim and web where the file has them.";

static void write_title(const chart *it)
{
    ts_scene            *scene = it->scene;
    const ts_width_plan *plan  = scene->subject->widths;
    const ts_lettering   lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                  .bold   = true,
                                  .colour = TS_COLOUR_INK,
                                  .width  = scene->field.w - 24.0};
    const ts_lettering   small = {
          .size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK2, .width = scene->field.w - 24.0};
    const ts_point at   = {scene->field.x + 12.0, scene->field.y + 24.0};
    ts_buffer     *line = ts_canvas_line(&scene->canvas);
    if (!plan) {
        ts_write(&scene->canvas, at, "Face widths as they are; none were sought.", &lead);
        return;
    }
    ts_buffer_add(line, plan->fits ? "How wide must the teeth be?  Gears of "
                                   : "How wide must the teeth be?  No width saves all: gears of ");
    ts_add_shown(line, scene, plan->mass_before, TS_KIND_MASS);
    ts_buffer_add(line, " become ");
    ts_add_shown(line, scene, plan->mass_after, TS_KIND_MASS);
    if (plan->mass_after < plan->mass_before) {
        ts_buffer_add(line, ": ");
        ts_add_shown(line, scene, plan->mass_before - plan->mass_after, TS_KIND_MASS);
        ts_buffer_add(line, " less");
    }
    ts_write(&scene->canvas, at, ts_scene_kept(scene), &lead);
    line = ts_canvas_line(&scene->canvas);
    ts_buffer_add(line, "Safeties kept over all conditions: S_H ");
    ts_add_number(line, scene->subject->teeth->S_Hmin, 2);
    ts_buffer_add(line, ", S_F ");
    ts_add_number(line, scene->subject->teeth->S_Fmin, 2);
    ts_buffer_add(line, "; in steps of ");
    ts_width_add(line, &it->strip, scene->subject->width_step);
    ts_buffer_print(line, " %s", ts_scene_unit(scene, TS_KIND_LENGTH));
    ts_write(&scene->canvas, (ts_point){at.x, at.y + 18.0}, ts_scene_kept(scene), &small);
}

static void write_heads(const chart *it)
{
    ts_scene          *scene = it->scene;
    const ts_lettering bold  = {
         .size = TS_LOOK_TYPE_PX_SMALL, .bold = true, .colour = TS_COLOUR_INK};
    ts_lettering right = bold;
    right.anchor       = TS_ANCHOR_RIGHT;
    const double y     = it->strip.area.y - 28.0;
    const double x     = it->strip.area.x + it->strip.area.w;
    ts_write(&scene->canvas, (ts_point){it->edge, y}, "gear", &bold);
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_buffer_print(line, "before \xE2\x86\x92 after, %s", ts_scene_unit(scene, TS_KIND_LENGTH));
    ts_write(&scene->canvas, (ts_point){x + number_wide - 16.0, y}, ts_scene_kept(scene), &right);
    ts_write(&scene->canvas, (ts_point){x + number_wide, y}, "set by", &bold);
}

/* ---- rows ------------------------------------------------------------------------------------ */

static void write_gear(const chart *it, const ts_width_row *row, ts_area area)
{
    ts_scene          *scene = it->scene;
    const ts_lettering bold  = {.bold = true, .colour = TS_COLOUR_INK, .width = label_wide - 16.0};
    const ts_lettering small = {
        .size = TS_LOOK_TYPE_PX_TICK, .colour = TS_COLOUR_INK2, .width = label_wide - 16.0};
    const ts_gear *gear = &scene->train->gears[row->gear];
    const double   y    = area.y + 0.5 * area.h;
    ts_add_gear_name(ts_canvas_line(&scene->canvas), scene, row->gear);
    ts_write(&scene->canvas, (ts_point){it->edge, y - 2.0}, ts_scene_kept(scene), &bold);
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_buffer_print(line, "shaft %u, %d teeth, module ", scene->train->shafts[gear->shaft].number,
                    (int)gear->teeth.value);
    ts_add_shown(line, scene, gear->m_n.value, TS_KIND_LENGTH);
    ts_write(&scene->canvas, (ts_point){it->edge, y + 11.0}, ts_scene_kept(scene), &small);
}

static void write_widths(const chart *it, const ts_width_row *row, ts_area area)
{
    ts_scene          *scene = it->scene;
    const double       x     = it->strip.area.x + it->strip.area.w + number_wide - 16.0;
    const ts_lettering how   = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                .anchor = TS_ANCHOR_RIGHT,
                                .colour = TS_COLOUR_INK,
                                .width  = number_wide - 24.0};
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    ts_width_add(line, &it->strip, row->before);
    if (row->sized) {
        ts_buffer_add(line, " \xE2\x86\x92 ");
        ts_width_add(line, &it->strip, row->after);
    }
    if (row->sized && row->after < row->before * (1.0 - 1e-9)) {
        ts_buffer_add(line, "  (\xE2\x88\x92");
        ts_add_number(line, 100.0 * (1.0 - row->after / row->before), 0);
        ts_buffer_add(line, " %)");
    } else if (row->sized && row->after > row->before * (1.0 + 1e-9)) {
        ts_buffer_add(line, "  (+");
        ts_add_number(line, 100.0 * (row->after / row->before - 1.0), 0);
        ts_buffer_add(line, " %)");
    }
    ts_write(&scene->canvas, (ts_point){x, area.y + 0.5 * area.h + 4.0}, ts_scene_kept(scene),
             &how);
}

static void write_reason(const chart *it, const ts_width_row *row, ts_area area)
{
    ts_scene          *scene = it->scene;
    const double       x     = it->strip.area.x + it->strip.area.w + number_wide;
    const ts_lettering how   = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                .colour = TS_COLOUR_INK,
                                .width  = reason_wide - 12.0,
                                .lines  = 2};
    if (!row->sized)
        return;
    const ts_width_scene all = {scene->drive, scene->train, scene->power};
    ts_width_says(ts_canvas_line(&scene->canvas), &all, row->sized);
    const char   *text = ts_scene_kept(scene);
    const ts_area one  = ts_text_area(&scene->canvas, (ts_point){x, 0.0}, text, &how);
    const bool    two  = one.h > 1.6 * TS_LOOK_TYPE_PX_SMALL;
    ts_write(&scene->canvas, (ts_point){x, area.y + 0.5 * area.h + (two ? -3.0 : 4.0)}, text, &how);
}

static void draw_rows(const chart *it)
{
    ts_canvas   *canvas = &it->scene->canvas;
    const double right  = it->scene->field.x + it->scene->field.w - 12.0;
    const double foot   = it->strip.area.y + it->row * (double)it->strip.count;
    write_heads(it);
    ts_width_draw_scale(&it->strip, foot);
    for (size_t i = 0; i <= it->strip.count; i++) {
        const double y = it->strip.area.y + it->row * (double)i;
        ts_use_pen(canvas, i == 0 ? TS_PEN_3 : TS_PEN_1, i == 0 ? TS_COLOUR_INK : TS_COLOUR_HAIR);
        ts_draw_line(canvas, (ts_point){it->edge, y}, (ts_point){right, y});
    }
    for (size_t i = 0; i < it->strip.count; i++) {
        const ts_width_row *row = &it->strip.rows[i];
        const ts_area area = {it->edge, it->strip.area.y + it->row * (double)i, right - it->edge,
                              it->row};
        ts_width_draw_gear(&it->strip, row, area);
        write_gear(it, row, area);
        write_widths(it, row, area);
        write_reason(it, row, area);
    }
}

/* ---- what no width saves --------------------------------------------------------------------- */

static bool is_noted(const ts_scene *scene, uint32_t m)
{
    return scene->subject->widths && scene->train->meshes[m].kind == TS_MESH_CYLINDRICAL &&
           (scene->subject->widths->meshes[m].state == TS_MESH_TOO_WEAK ||
            scene->subject->widths->meshes[m].state == TS_MESH_NOT_SIZED);
}

static size_t count_notes(const ts_scene *scene)
{
    size_t count = 0;
    for (uint32_t m = 0; m < scene->train->mesh_count; m++)
        count += is_noted(scene, m);
    return count;
}

static void add_note(ts_buffer *line, const chart *it, const ts_mesh_width *mesh, uint32_t m)
{
    ts_buffer_add(line, "mesh ");
    ts_add_mesh_name(line, it->scene, m);
    if (mesh->state == TS_MESH_TOO_WEAK) {
        ts_buffer_add(line, ": not even ");
        ts_width_add(line, &it->strip, mesh->most);
        ts_buffer_print(line, " %s, all that `face to diameter` allows, is enough: reserve ",
                        ts_scene_unit(it->scene, TS_KIND_LENGTH));
        ts_add_number(line, 100.0 * it->scene->subject->teeth->strength[m].reserve, 0);
        ts_buffer_add(line, " %");
    } else if (mesh->missing) {
        ts_buffer_print(line, ": not sized, %s is missing", mesh->missing);
    } else {
        ts_buffer_print(line, ": not sized, %s", mesh->fault ? mesh->fault : "");
    }
}

static void write_notes(const chart *it)
{
    ts_scene          *scene = it->scene;
    const ts_lettering how   = {
          .size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK, .width = scene->field.w - 60.0};
    double y = it->strip.area.y + it->row * (double)it->strip.count + 8.0;
    for (uint32_t m = 0; m < scene->train->mesh_count; m++) {
        if (!is_noted(scene, m))
            continue;
        const ts_mesh_width *mesh = &scene->subject->widths->meshes[m];
        ts_draw_symbol(&scene->canvas,
                       mesh->state == TS_MESH_TOO_WEAK ? TS_SYMBOL_REFUSE : TS_SYMBOL_NOTCOMP,
                       (ts_point){it->edge, y}, 12.0);
        add_note(ts_canvas_line(&scene->canvas), it, mesh, m);
        ts_write(&scene->canvas, (ts_point){it->edge + 20.0, y + 10.0}, ts_scene_kept(scene), &how);
        y += note;
    }
}

ts_status ts_draw_widths(ts_scene *scene)
{
    chart     it     = {.scene = scene};
    ts_status status = ts_width_gather(scene, &it.strip);
    if (status != TS_OK)
        return status;
    it.notes           = count_notes(scene);
    const double key   = ts_chart_key_height(scene, key_words);
    const double fixed = title + head + (double)it.notes * note + 16.0 + key;
    const double rows  = (double)it.strip.count;
    const double high  = ts_sheet_height(scene, fixed + row_least * rows);
    ts_sheet_divide(scene, high);
    it.row  = fmax(row_least, fmin(row_most, (scene->field.h - fixed) / fmax(1.0, rows)));
    it.edge = scene->field.x + 12.0;
    it.strip.area =
        (ts_area){it.edge + label_wide, scene->field.y + title + head,
                  scene->field.w - 24.0 - label_wide - number_wide - reason_wide, it.row * rows};
    status =
        ts_canvas_sheet(&scene->canvas, high,
                        scene->subject->title ? scene->subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    write_title(&it);
    draw_rows(&it);
    write_notes(&it);
    ts_chart_key_write(scene, key_words, key);
    ts_sheet_draw(scene, "Widths", "face widths before and after sizing");
    return TS_OK;
}
