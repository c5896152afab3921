/* draw/sheet.c: what stands round every figure?  Frame and zones as in ISO 5457, a title block as
 * in ISO 7200 (both from memory), so that a place and a revision have a name on paper. */
#include "draw/sheet.h"

#include "draw/lettering.h"

#include <math.h>
#include <string.h>

static const double edge = TS_LOOK_SHEET_MARGIN + TS_LOOK_SHEET_BORDER;

/* The caution is never cut: on a narrow sheet it takes more lines. */
static ts_lettering caution_letters(const ts_scene *scene)
{
    return (ts_lettering){.size   = TS_LOOK_TYPE_PX_TICK,
                          .colour = TS_COLOUR_INK2,
                          .width  = scene->canvas.width - 2.0 * edge - 16.0,
                          .lines  = 6};
}

static double caution_height(ts_scene *scene)
{
    if (!scene->options->caution)
        return 0.0;
    const ts_lettering how = caution_letters(scene);
    return ts_text_area(&scene->canvas, (ts_point){0, 0}, scene->options->caution, &how).h +
           TS_LOOK_SHEET_CAUTION - TS_LOOK_TYPE_PX_TICK * TS_LOOK_TYPE_LINE_HEIGHT_TIGHT;
}

static double foot_height(ts_scene *scene)
{
    return TS_LOOK_SHEET_TITLE + caution_height(scene);
}

double ts_sheet_height(ts_scene *scene, double wanted)
{
    const double least = scene->canvas.width / TS_LOOK_SHEET_RATIO;
    return ceil(fmax(least, wanted + 2.0 * edge + foot_height(scene)));
}

void ts_sheet_divide(ts_scene *scene, double height)
{
    scene->frame = (ts_area){edge, edge, scene->canvas.width - 2.0 * edge, height - 2.0 * edge};
    scene->field = scene->frame;
    scene->field.h -= foot_height(scene);
}

static int column_of(const ts_scene *scene, double x)
{
    const double share = (x - scene->frame.x) / scene->frame.w * TS_LOOK_SHEET_ZONE_COLUMNS;
    return (int)fmin(fmax(share, 0.0), TS_LOOK_SHEET_ZONE_COLUMNS - 1.0);
}

static int row_of(const ts_scene *scene, double y)
{
    const double share = (y - scene->frame.y) / scene->frame.h * TS_LOOK_SHEET_ZONE_ROWS;
    return (int)fmin(fmax(share, 0.0), TS_LOOK_SHEET_ZONE_ROWS - 1.0);
}

ts_zone ts_sheet_zone(const ts_scene *scene, ts_point at)
{
    return (ts_zone){{(char)('A' + row_of(scene, at.y)), (char)('1' + column_of(scene, at.x)), 0}};
}

/* ---- frame ------------------------------------------------------------------------------- */

static void zone_mark(ts_scene *scene, ts_point at, char mark)
{
    const ts_lettering how = {
        .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK3};
    const char text[2] = {mark, 0};
    ts_write(&scene->canvas, (ts_point){at.x, at.y + 0.36 * how.size}, text, &how);
}

/* Ticks and names along the two long sides (across) or the two short ones. */
static void draw_zones(ts_scene *scene, bool across)
{
    const ts_area f     = scene->frame;
    const double  b     = TS_LOOK_SHEET_BORDER;
    const int     count = (int)(across ? TS_LOOK_SHEET_ZONE_COLUMNS : TS_LOOK_SHEET_ZONE_ROWS);
    const double  step  = (across ? f.w : f.h) / count;
    for (int side = 0; side < 2; side++) {
        const double line = across ? (side ? f.y + f.h : f.y - b) : (side ? f.x + f.w : f.x - b);
        for (int i = 0; i < count; i++) {
            const double at  = (across ? f.x : f.y) + step * i;
            const char   key = (char)((across ? '1' : 'A') + i);
            ts_use_pen(&scene->canvas, TS_PEN_1, TS_COLOUR_RULE);
            if (i > 0 && across)
                ts_draw_line(&scene->canvas, (ts_point){at, line}, (ts_point){at, line + b});
            if (i > 0 && !across)
                ts_draw_line(&scene->canvas, (ts_point){line, at}, (ts_point){line + b, at});
            zone_mark(scene,
                      across ? (ts_point){at + 0.5 * step, line + 0.5 * b}
                             : (ts_point){line + 0.5 * b, at + 0.5 * step},
                      key);
        }
    }
}

static void draw_frame(ts_scene *scene)
{
    ts_canvas *canvas = &scene->canvas;
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_path_area(canvas, ts_area_inset(scene->frame, -TS_LOOK_SHEET_BORDER));
    ts_stroke(canvas);
    draw_zones(scene, true);
    draw_zones(scene, false);
    ts_use_pen(canvas, TS_PEN_4, TS_COLOUR_INK);
    ts_path_area(canvas, scene->frame);
    ts_stroke(canvas);
}

/* ---- title block ------------------------------------------------------------------------- */

typedef struct cell {
    const char *caption;
    double      share; /* of the width */
} cell;

enum { CELL_TITLE, CELL_VIEW, CELL_CONDITION, CELL_VERDICT, CELL_SCALE, CELL_MADE, CELLS };
static const cell cells[CELLS] = {
    {"drive, revision", 0.21}, {"view", 0.14},         {"condition shown", 0.16},
    {"verdict", 0.26},         {"scale, units", 0.10}, {"drawn from", 0.13},
};

static ts_area cell_area(const ts_scene *scene, int index)
{
    const double top  = scene->field.y + scene->field.h;
    ts_area      area = {scene->frame.x, top, 0.0, TS_LOOK_SHEET_TITLE};
    for (int i = 0; i < index; i++)
        area.x += cells[i].share * scene->frame.w;
    area.w = cells[index].share * scene->frame.w;
    return area;
}

/* One line of a cell: row 1 is the leading one, row 2 stands under it. */
static void cell_line(ts_scene *scene, int index, int row, const char *text)
{
    const ts_area      area = cell_area(scene, index);
    const ts_lettering how  = {.size   = row == 1 ? TS_LOOK_TYPE_PX_LEAD : TS_LOOK_TYPE_PX_SMALL,
                               .bold   = row == 1,
                               .colour = row == 1 ? TS_COLOUR_INK : TS_COLOUR_INK2,
                               .width  = area.w - 16.0};
    ts_write(&scene->canvas, (ts_point){area.x + 8.0, area.y + (row == 1 ? 34.0 : 51.0)}, text,
             &how);
}

static const char *or_word(const char *text, ts_word word)
{
    return text ? text : word.text ? word.text : "";
}

static void fill_title(ts_scene *scene)
{
    const ts_drawing_subject *subject = scene->subject;
    cell_line(scene, CELL_TITLE, 1, or_word(subject->title, scene->drive->title));
    ts_buffer  *line     = ts_canvas_line(&scene->canvas);
    const char *revision = or_word(subject->revision, scene->drive->revision);
    if (*revision)
        ts_buffer_print(line, "revision %s", revision);
    if (subject->file) {
        /* Its name without the folders, which no line has room for. */
        const char *slash = strrchr(subject->file, '/');
        ts_buffer_print(line, "%s%s", *revision ? ", " : "", slash ? slash + 1 : subject->file);
    }
    if (line->length)
        cell_line(scene, CELL_TITLE, 2, line->bytes);
}

/* Figures that show no condition, or all of them. */
static bool fill_no_condition(ts_scene *scene)
{
    static const struct {
        ts_figure   figure;
        const char *first, *second;
    } figures[] = {{TS_FIGURE_UNROLLED, "none", "geometry as built"},
                   {TS_FIGURE_PADS, "none", "speeds are the greatest"},
                   {TS_FIGURE_ROOT, "none", "geometry of the teeth"},
                   {TS_FIGURE_SPEEDS, "all conditions", "each at its spool speeds"},
                   {TS_FIGURE_MARGINS, "all conditions", "one a column"},
                   {TS_FIGURE_WIDTHS, "all conditions", "added up, both flanks"},
                   {TS_FIGURE_MASS, "none", "parts by their shapes"},
                   {TS_FIGURE_SELECTIVITY, "none", "torque logarithmic"},
                   {TS_FIGURE_MODES, "none", "natural, without damping"},
                   {TS_FIGURE_INTERFERENCE, "all conditions", "one an upright line"},
                   {TS_FIGURE_SWING, "none", "natural, without damping"},
                   {TS_FIGURE_PLAY, "one after another", "from a cold soak"},
                   {TS_FIGURE_START, "from rest to idle", "rigid meshes"},
                   {TS_FIGURE_CANDIDATES, "all conditions", "searched and judged"},
                   {TS_FIGURE_SAMPLES, "all conditions", "varied and judged"}};
    for (size_t i = 0; i < sizeof figures / sizeof *figures; i++)
        if (figures[i].figure == scene->options->figure) {
            cell_line(scene, CELL_CONDITION, 1, figures[i].first);
            cell_line(scene, CELL_CONDITION, 2, figures[i].second);
            return true;
        }
    return false;
}

static void fill_condition(ts_scene *scene)
{
    if (scene->options->figure == TS_FIGURE_START && scene->subject->start_to != NULL) {
        ts_buffer_print(ts_canvas_line(&scene->canvas), "from rest to %s",
                        scene->subject->start_to);
        cell_line(scene, CELL_CONDITION, 1, ts_scene_kept(scene));
        cell_line(scene, CELL_CONDITION, 2, "rigid meshes");
        return;
    }
    if (fill_no_condition(scene))
        return;
    cell_line(scene, CELL_CONDITION, 1, scene->drive->conditions[scene->condition].name);
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    for (uint32_t s = 0; s < scene->train->shaft_count; s++) {
        const ts_shaft *shaft = &scene->train->shafts[s];
        if (shaft->kind != TS_SHAFT_SPOOL)
            continue;
        ts_buffer_print(line, "%s%s ", line->length ? ", " : "",
                        scene->drive->spools[shaft->spool].name);
        ts_add_shown(line, scene, ts_scene_speed(scene, s), TS_KIND_ROTATIONAL_SPEED);
    }
    if (line->length)
        cell_line(scene, CELL_CONDITION, 2, line->bytes);
}

static void say_verdict(const ts_drawing_subject *subject, ts_buffer *line)
{
    size_t refuse = 0, warn = 0, unknown = 0;
    for (size_t i = 0; i < subject->finding_count; i++) {
        const ts_finding *finding = &subject->findings[i];
        unknown += finding->state == TS_NOT_COMPUTABLE;
        refuse += finding->state == TS_OPEN && finding->level == TS_REFUSE;
        warn += finding->state == TS_OPEN && finding->level == TS_WARN;
    }
    if (!subject->findings)
        ts_buffer_add(line, "not judged here");
    else
        ts_buffer_print(line, "%zu refused, %zu warned, %zu not computable", refuse, warn, unknown);
}

static void fill_verdict(ts_scene *scene)
{
    const ts_area area = cell_area(scene, CELL_VERDICT);
    ts_buffer    *line = ts_canvas_line(&scene->canvas);
    if (scene->subject->verdict)
        ts_buffer_add(line, scene->subject->verdict);
    else
        say_verdict(scene->subject, line);
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_BODY,
                              .bold   = true,
                              .colour = TS_COLOUR_INK,
                              .width  = area.w - 16.0,
                              .lines  = 2};
    ts_write(&scene->canvas, (ts_point){area.x + 8.0, area.y + 33.0},
             line->bytes ? line->bytes : "", &how);
}

static void fill_made(ts_scene *scene)
{
    const ts_drawing_subject *subject = scene->subject;
    ts_buffer                *line    = ts_canvas_line(&scene->canvas);
    ts_buffer_print(line, "towershaft %s", subject->version ? subject->version : "");
    cell_line(scene, CELL_MADE, 1, line->bytes ? line->bytes : "");
    if (!subject->hash)
        return;
    line = ts_canvas_line(&scene->canvas);
    ts_buffer_print(line, "SHA-256 %.*s\xE2\x80\xA6", 12, subject->hash);
    cell_line(scene, CELL_MADE, 2, line->bytes ? line->bytes : "");
}

static void fill_scale(ts_scene *scene)
{
    cell_line(scene, CELL_SCALE, 1, scene->scale ? scene->scale : "no scale");
    cell_line(scene, CELL_SCALE, 2,
              scene->units == TS_UNITS_US ? "in, rpm, hp, lbf.in" : "mm, rpm, kW, N.m");
}

/* The caption of the last cell says so when another face stands in for the wanted one. */
static const char *caption_of(ts_scene *scene, int index)
{
    const char *family = index == CELL_MADE ? ts_letters_family(&scene->canvas) : NULL;
    if (!family || strcmp(family, TS_LOOK_TYPE_FAMILY_TEXT) == 0)
        return cells[index].caption;
    char *kept = ts_arena_copy(scene->arena, family, strlen(family));
    if (!kept)
        return "";
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_buffer_print(line, "set in %s, not " TS_LOOK_TYPE_FAMILY_TEXT, kept);
    return line->bytes ? line->bytes : "";
}

static void draw_cells(ts_scene *scene)
{
    ts_canvas *canvas = &scene->canvas;
    for (int i = 0; i < CELLS; i++) {
        const ts_area      area = cell_area(scene, i);
        const ts_lettering how  = {
             .size = TS_LOOK_TYPE_PX_TICK, .colour = TS_COLOUR_INK3, .width = area.w - 16.0};
        ts_write(canvas, (ts_point){area.x + 8.0, area.y + 15.0}, caption_of(scene, i), &how);
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
        if (i > 0)
            ts_draw_line(canvas, (ts_point){area.x, area.y}, (ts_point){area.x, area.y + area.h});
    }
    const double top = scene->field.y + scene->field.h;
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    ts_draw_line(canvas, (ts_point){scene->frame.x, top},
                 (ts_point){scene->frame.x + scene->frame.w, top});
}

static void draw_caution(ts_scene *scene)
{
    const ts_lettering how = caution_letters(scene);
    const double       top = scene->field.y + scene->field.h + TS_LOOK_SHEET_TITLE;
    ts_use_pen(&scene->canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_draw_line(&scene->canvas, (ts_point){scene->frame.x, top},
                 (ts_point){scene->frame.x + scene->frame.w, top});
    ts_write(&scene->canvas, (ts_point){scene->frame.x + 8.0, top + 13.0}, scene->options->caution,
             &how);
}

void ts_sheet_draw(ts_scene *scene, const char *view, const char *sight)
{
    draw_cells(scene);
    fill_title(scene);
    cell_line(scene, CELL_VIEW, 1, view);
    cell_line(scene, CELL_VIEW, 2, sight);
    fill_condition(scene);
    fill_verdict(scene);
    fill_scale(scene);
    fill_made(scene);
    if (scene->options->caution)
        draw_caution(scene);
    draw_frame(scene);
}
