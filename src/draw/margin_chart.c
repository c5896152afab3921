/* draw/margin_chart.c: how do rules and conditions share the sheet? */
#include "draw/margin_chart.h"

#include "draw/chart_key.h"
#include "draw/lettering.h"
#include "draw/mesh_choice.h"
#include "draw/sheet.h"
#include "draw/target.h"

#include <math.h>

/* px */
static const double label_wide = 250.0, cell_least = 92.0, row_least = 34.0, row_most = 46.0,
                    head = 74.0, title = 34.0;

typedef struct chart {
    ts_scene      *scene;
    ts_margin_rows rows;
    size_t         columns; /* conditions in one band                              */
    size_t         bands;   /* one under the other when not all fit side by side */
    ts_area        area;
    double         cell, row;
} chart;

static ts_area cell_area(const chart *it, size_t band, size_t row, size_t column)
{
    const double high = head + it->row * (double)it->rows.count;
    return (ts_area){it->area.x + label_wide + it->cell * (double)column,
                     it->area.y + high * (double)band + head + it->row * (double)row, it->cell,
                     it->row};
}

/* ---- words ------------------------------------------------------------------------------- */

static const char key_words[] =
    "Every cell has the same scale from \xE2\x88\x92"
    "20 to +60 %, 0 at its upright; a longer bar is "
    "broken, its number tells. Reserve: capacity / demand \xE2\x88\x92 1; bold: the least of its "
    "row; "
    "hatched: below 0. Dashed square: not computable. Dot: the rule asks nothing here. Tick: it "
    "holds and demands nothing that a reserve could be of. Where a rule judges several things, a "
    "cell shows the worst of them.";

static void write_title(const chart *it)
{
    ts_scene          *scene = it->scene;
    const ts_lettering lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                .bold   = true,
                                .colour = TS_COLOUR_INK,
                                .width  = scene->field.w - 24.0};
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    if (it->rows.count == 0)
        ts_buffer_add(line, "No rule was judged in single conditions.");
    else
        ts_buffer_print(line, "Which condition governs?  %zu %s of reserves", it->rows.count,
                        it->rows.count == 1 ? "row" : "rows");
    if (it->rows.steady > 0)
        ts_buffer_print(line, "; %zu %s on no condition %s left out", it->rows.steady,
                        it->rows.steady == 1 ? "rule that depends" : "rules that depend",
                        it->rows.steady == 1 ? "is" : "are");
    ts_write(&scene->canvas, (ts_point){scene->field.x + 12.0, scene->field.y + 24.0},
             ts_scene_kept(scene), &lead);
}

/* "mesh 4-3: hydraulic pump 1": a shaft and the mesh that drives it have one node. */
static bool add_mesh(ts_buffer *line, const ts_scene *scene, ts_node node)
{
    for (uint32_t m = 0; m < scene->train->mesh_count; m++) {
        const ts_mesh *mesh = &scene->train->meshes[m];
        if (mesh->node != node)
            continue;
        ts_buffer_add(line, "mesh ");
        ts_add_mesh_name(line, scene, m);
        if (mesh->kind == TS_MESH_CYLINDRICAL) {
            ts_buffer_add(line, ": ");
            ts_add_gear_name(line, scene, mesh->driven);
        }
        return true;
    }
    return false;
}

/* What the row is about: "fuel pump", or "of 9, least: fuel pump". */
static const char *object_words(const chart *it, const ts_margin_row *row)
{
    ts_scene     *scene = it->scene;
    ts_buffer    *line  = ts_canvas_line(&scene->canvas);
    const ts_node least = row->least >= 0 ? row->cells[row->least].node : 0;
    ts_node       one   = row->node;
    for (size_t c = 0; one == 0 && row->objects == 1 && c < scene->drive->condition_count; c++)
        one = row->cells[c].node;
    if (one == 0)
        ts_buffer_print(line, least != 0 ? "of %zu, least: " : "of %zu, no numbers", row->objects);
    if (!row->teeth || !add_mesh(line, scene, one))
        ts_add_node_name(line, scene, one != 0 ? one : least);
    return ts_scene_kept(scene);
}

static void write_label(const chart *it, const ts_margin_row *row, ts_area area)
{
    ts_canvas         *canvas = &it->scene->canvas;
    const ts_lettering bold   = {.bold = true, .colour = TS_COLOUR_INK, .width = label_wide - 20.0};
    const ts_lettering small  = {
         .size = TS_LOOK_TYPE_PX_TICK, .colour = TS_COLOUR_INK2, .width = label_wide - 20.0};
    const double x = area.x - label_wide + 10.0, y = area.y + 0.5 * area.h;
    ts_write(canvas, (ts_point){x, y - 2.0}, row->title, &bold);
    ts_write(canvas, (ts_point){x, y + 11.0}, object_words(it, row), &small);
}

/* "14 900 / 5050": the speeds of all spools, in their order. */
static void write_speeds(const chart *it, uint32_t condition, ts_point at)
{
    ts_scene          *scene = it->scene;
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    const ts_lettering how   = {.size   = TS_LOOK_TYPE_PX_TICK,
                                .anchor = TS_ANCHOR_MIDDLE,
                                .colour = TS_COLOUR_INK2,
                                .width  = it->cell - 6.0};
    for (uint32_t s = 0; s < scene->train->shaft_count; s++) {
        if (scene->train->shafts[s].kind != TS_SHAFT_SPOOL)
            continue;
        if (line->length > 0)
            ts_buffer_add(line, " / ");
        ts_add_value(line, scene, ts_scene_speed_in(scene, s, condition), TS_KIND_ROTATIONAL_SPEED);
    }
    ts_write(&scene->canvas, at, ts_scene_kept(scene), &how);
}

/* "hp spool / lp spool, rpm", before the speeds. */
static void write_spools(const chart *it, ts_area first)
{
    ts_scene          *scene = it->scene;
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    const ts_lettering how   = {
          .size = TS_LOOK_TYPE_PX_TICK, .colour = TS_COLOUR_INK2, .width = label_wide - 20.0};
    for (uint32_t s = 0; s < scene->train->shaft_count; s++)
        if (scene->train->shafts[s].kind == TS_SHAFT_SPOOL)
            ts_buffer_print(line, "%s%s", line->length > 0 ? " / " : "",
                            scene->train->shafts[s].name);
    ts_buffer_print(line, ", %s", ts_scene_unit(scene, TS_KIND_ROTATIONAL_SPEED));
    ts_write(&scene->canvas, (ts_point){first.x - label_wide + 10.0, first.y - 31.0},
             ts_scene_kept(scene), &how);
}

/* Name of the condition, speeds of the spools, and the scale of the cells below. */
static void write_condition(const chart *it, uint32_t condition, ts_area first)
{
    ts_scene          *scene  = it->scene;
    ts_canvas         *canvas = &scene->canvas;
    const double       x      = first.x + 0.5 * first.w;
    const ts_lettering bold   = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .bold   = true,
                                 .anchor = TS_ANCHOR_MIDDLE,
                                 .colour = TS_COLOUR_INK,
                                 .width  = first.w - 8.0,
                                 .lines  = 2};
    const ts_lettering tick   = {
          .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK3};
    ts_write(canvas, (ts_point){x, first.y - 58.0}, scene->drive->conditions[condition].name,
             &bold);
    write_speeds(it, condition, (ts_point){x, first.y - 31.0});
    static const struct {
        double      margin;
        const char *text;
    } marks[] = {{-0.2, NULL}, {0.0, "0"}, {0.2, NULL}, {0.4, NULL}, {0.6, "60 %"}};
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_draw_line(canvas, (ts_point){ts_margin_x(first, TS_MARGIN_LEAST), first.y - 4.0},
                 (ts_point){ts_margin_x(first, TS_MARGIN_MOST), first.y - 4.0});
    for (size_t i = 0; i < sizeof marks / sizeof *marks; i++) {
        const double at = ts_margin_x(first, marks[i].margin);
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
        ts_draw_line(canvas, (ts_point){at, first.y - (marks[i].text ? 9.0 : 7.0)},
                     (ts_point){at, first.y - 4.0});
        if (marks[i].text)
            ts_write(canvas, (ts_point){at, first.y - 13.0}, marks[i].text, &tick);
    }
}

/* ---- the grid ---------------------------------------------------------------------------- */

static void draw_lines(const chart *it, size_t band)
{
    ts_canvas    *canvas = &it->scene->canvas;
    const ts_area first  = cell_area(it, band, 0, 0);
    const double  right  = it->area.x + it->area.w;
    const double  foot   = first.y + it->row * (double)it->rows.count;
    for (size_t row = 0; row <= it->rows.count; row++) {
        const double y = first.y + it->row * (double)row;
        ts_use_pen(canvas, row == 0 ? TS_PEN_3 : TS_PEN_1,
                   row == 0 ? TS_COLOUR_INK : TS_COLOUR_HAIR);
        ts_draw_line(canvas, (ts_point){it->area.x, y}, (ts_point){right, y});
    }
    for (size_t c = 0; c < it->columns; c++) {
        const double x = first.x + it->cell * (double)c;
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
        ts_draw_line(canvas, (ts_point){x, first.y - 40.0}, (ts_point){x, foot});
    }
}

static void draw_band(const chart *it, size_t band)
{
    const size_t all   = it->scene->drive->condition_count;
    const size_t begin = band * it->columns;
    draw_lines(it, band);
    write_spools(it, cell_area(it, band, 0, 0));
    for (size_t c = begin; c < all && c < begin + it->columns; c++) {
        write_condition(it, (uint32_t)c, cell_area(it, band, 0, c - begin));
        for (size_t row = 0; row < it->rows.count; row++) {
            const ts_margin_row *one  = &it->rows.items[row];
            const ts_area        area = cell_area(it, band, row, c - begin);
            ts_margin_draw_cell(it->scene, &one->cells[c], one->least == (int32_t)c, area);
            ts_note_area(&it->scene->canvas.places, TS_PLACE_CELL, (uint32_t)c, area);
        }
    }
    for (size_t row = 0; row < it->rows.count; row++)
        write_label(it, &it->rows.items[row], cell_area(it, band, row, 0));
}

/* As many conditions side by side as keep their least width; the bands share them evenly. */
static void divide(chart *it, double width)
{
    const size_t all  = it->scene->drive->condition_count;
    const size_t most = (size_t)fmax(1.0, floor((width - label_wide) / cell_least));
    it->bands         = (all + most - 1) / most;
    it->columns       = (all + it->bands - 1) / it->bands;
    it->cell          = (width - label_wide) / (double)it->columns;
}

static double height_of(const chart *it, double row)
{
    return title + (double)it->bands * (head + row * (double)it->rows.count);
}

ts_status ts_draw_margins(ts_scene *scene)
{
    chart     it     = {.scene = scene};
    ts_status status = ts_margin_gather(scene, &it.rows);
    if (status != TS_OK)
        return status;
    const double edge = TS_LOOK_SHEET_MARGIN + TS_LOOK_SHEET_BORDER;
    const double key  = ts_chart_key_height(scene, key_words);
    divide(&it, scene->canvas.width - 2.0 * edge);
    const double height = ts_sheet_height(scene, height_of(&it, row_least) + key + 8.0);
    ts_sheet_divide(scene, height);
    it.area = scene->field;
    it.area.y += title;
    it.row = row_most;
    while (it.row > row_least && height_of(&it, it.row) + key + 8.0 > scene->field.h)
        it.row -= 1.0;
    status =
        ts_canvas_sheet(&scene->canvas, height,
                        scene->subject->title ? scene->subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    write_title(&it);
    for (size_t band = 0; band < it.bands && it.rows.count > 0; band++)
        draw_band(&it, band);
    ts_chart_key_write(scene, key_words, key);
    ts_sheet_draw(scene, "Margins", "reserves by rule and condition");
    return TS_OK;
}
