/* draw/unrolled.c: how do the boxes, laid flat, share the sheet? */
#include "draw/unrolled.h"

#include "draw/lettering.h"
#include "draw/sheet.h"
#include "draw/tooth_table.h"

#include <math.h>

/* px about a strip: heading; clearance over the bodies; scale, dimensions and clearance below. */
static const double head = 66.0, above = 14.0, below = 106.0, aside = 40.0;

static double strip_width(const ts_strip *strip)
{
    return strip->right - strip->left;
}

static double strip_height(const ts_strip *strip)
{
    return strip->ahead + strip->depth + strip->behind;
}

/* The scale at which all strips fit side by side, or one under the other. */
static double scale_of(const ts_strip *strips, size_t count, ts_area room, bool in_a_row)
{
    double wide = 0.0, high = 0.0;
    for (size_t i = 0; i < count; i++) {
        const double w = strip_width(&strips[i]), h = strip_height(&strips[i]);
        wide = in_a_row ? wide + w : fmax(wide, w);
        high = in_a_row ? fmax(high, h) : high + h;
    }
    const double across = in_a_row ? (double)count : 1.0, down = in_a_row ? 1.0 : (double)count;
    return fmin((room.w - across * 2.0 * aside) / wide,
                (room.h - down * (head + above + below)) / high);
}

static void arrange(ts_strip *strips, size_t count, ts_area room)
{
    const double row      = scale_of(strips, count, room, true),
                 one      = scale_of(strips, count, room, false);
    const bool   in_a_row = row >= one;
    const double px       = in_a_row ? row : one;
    double       used     = 0.0;
    for (size_t i = 0; i < count; i++)
        used += in_a_row ? strip_width(&strips[i]) * px + 2.0 * aside
                         : strip_height(&strips[i]) * px + head + above + below;
    const double spare = ((in_a_row ? room.w : room.h) - used) / (double)count;
    double       at    = in_a_row ? room.x : room.y;
    for (size_t i = 0; i < count; i++) {
        ts_strip    *strip = &strips[i];
        const double w     = strip_width(strip) * px + 2.0 * aside;
        const double h     = strip_height(strip) * px + head + above + below;
        strip->px          = px;
        strip->area        = in_a_row ? (ts_area){at, room.y, w + spare, room.h}
                                      : (ts_area){room.x, at, room.w, h + spare};
        strip->origin      = (ts_point){
                 strip->area.x + 0.5 * strip->area.w - 0.5 * (strip->left + strip->right) * px,
                 strip->area.y + 0.5 * (strip->area.h - h) + head + above + strip->ahead * px};
        at += (in_a_row ? w : h) + spare;
    }
}

/* ---- words over a strip ------------------------------------------------------------------ */

/* The three least gaps between tip circles of one plane that do not mesh. */
enum { GAPS = 3 };

typedef struct tip_gap {
    uint32_t a, b; /* shaft numbers */
    double   gap;  /* m             */
} tip_gap;

static bool mesh_between(const ts_train *train, uint32_t a, uint32_t b)
{
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if ((train->meshes[m].driver == a && train->meshes[m].driven == b) ||
            (train->meshes[m].driver == b && train->meshes[m].driven == a))
            return true;
    return false;
}

static void keep_least(tip_gap *least, size_t *count, tip_gap one)
{
    if (*count == GAPS && one.gap >= least[GAPS - 1].gap)
        return;
    size_t i = *count < GAPS ? (*count)++ : GAPS - 1;
    for (; i > 0 && least[i - 1].gap > one.gap; i--)
        least[i] = least[i - 1];
    least[i] = one;
}

static size_t find_tip_gaps(const ts_strip *strip, tip_gap *least)
{
    const ts_train *train = strip->scene->train;
    size_t          count = 0;
    for (size_t i = 0; i < strip->gear_count; i++)
        for (size_t j = i + 1; j < strip->gear_count; j++) {
            const ts_strip_gear *a = &strip->gears[i], *b = &strip->gears[j];
            if (a->plane != b->plane || a->shaft == b->shaft ||
                mesh_between(train, a->gear, b->gear))
                continue;
            const tip_gap one = {train->shafts[strip->shafts[a->shaft].shaft].number,
                                 train->shafts[strip->shafts[b->shaft].shaft].number,
                                 ts_strip_gap(strip, a->shaft, a->r_tip, b->shaft, b->r_tip)};
            if (isfinite(one.gap))
                keep_least(least, &count, one);
        }
    return count;
}

static void add_tip_gaps(const ts_strip *strip, ts_buffer *line)
{
    tip_gap      least[GAPS];
    const size_t count = find_tip_gaps(strip, least);
    for (size_t i = 0; i < count; i++) {
        ts_buffer_add(line, i ? ", " : "; least gaps of tips between gears that do not mesh: ");
        ts_buffer_print(line, "%u\xE2\x80\x93%u ", least[i].a, least[i].b);
        ts_add_shown(line, strip->scene, least[i].gap, TS_KIND_LENGTH);
    }
}

static void write_heading(const ts_strip *strip)
{
    ts_scene          *scene = strip->scene;
    const ts_lettering lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                .bold   = true,
                                .colour = TS_COLOUR_INK,
                                .width  = strip->area.w - 24.0};
    const ts_lettering small = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                .colour = TS_COLOUR_INK2,
                                .width  = strip->area.w - 24.0,
                                .lines  = 2};
    ts_point           at    = {strip->area.x + 12.0, strip->area.y + 24.0};
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    ts_buffer_print(line, "%s box", scene->drive->spools[strip->drive->spool].name);
    ts_write(&scene->canvas, at, line->bytes ? line->bytes : "", &lead);
    line = ts_canvas_line(&scene->canvas);
    ts_buffer_print(line, "%zu shafts; arc radius ", strip->shaft_count + strip->unplaced);
    ts_add_shown(line, scene, strip->R, TS_KIND_LENGTH);
    ts_buffer_add(line, strip->depth_known ? "; depth " : "; depth not known, drawn as ");
    ts_add_shown(line, scene, strip->depth, TS_KIND_LENGTH);
    if (strip->shaft_count > 1) {
        ts_buffer_add(line, "; axes over ");
        ts_buffer_fixed(line,
                        (strip->shafts[strip->shaft_count - 1].s - strip->shafts[0].s) / strip->R *
                            180.0 / M_PI,
                        1);
        ts_buffer_add(line, "\xC2\xB0");
    }
    add_tip_gaps(strip, line);
    if (strip->unplaced)
        ts_buffer_print(line, "; %zu shafts have no known place", strip->unplaced);
    at.y += 17.0;
    ts_write(&scene->canvas, at, line->bytes ? line->bytes : "", &small);
}

static ts_lettering convention_letters(const ts_scene *scene)
{
    return (ts_lettering){.size   = TS_LOOK_TYPE_PX_SMALL,
                          .colour = TS_COLOUR_INK2,
                          .width  = scene->canvas.width -
                                   2.0 * (TS_LOOK_SHEET_MARGIN + TS_LOOK_SHEET_BORDER) - 24.0,
                          .lines = 4};
}

static const char *convention_words(ts_scene *scene)
{
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_buffer_print(
        line,
        "Seen from outside, looking to the engine axis, front up; the arc is laid flat at its own "
        "radius; %s. Gaps and centre distances are the true ones of the face plane, face widths "
        "are to scale. The box outline and the order of gear planes (steps to the rear) are for "
        "orientation only.",
        ts_scene_dial_says(scene));
    return line->bytes ? line->bytes : "";
}

static double convention_height(ts_scene *scene)
{
    const ts_lettering how = convention_letters(scene);
    return ts_text_area(&scene->canvas, (ts_point){0, 0}, convention_words(scene), &how).h + 8.0;
}

static void write_convention(ts_scene *scene, double top)
{
    const ts_lettering how = convention_letters(scene);
    ts_write(&scene->canvas, (ts_point){scene->field.x + 12.0, top + TS_LOOK_TYPE_PX_SMALL + 2.0},
             convention_words(scene), &how);
}

static void say_scale(ts_scene *scene, double px)
{
    const double ratio = 1e3 * scene->canvas.mm / px;
    ts_buffer   *line  = ts_canvas_line(&scene->canvas);
    ts_buffer_add(line, "1 : ");
    ts_buffer_fixed(line, ratio, ratio < 9.95 ? 2 : 1);
    ts_buffer_add(line, " on A3");
    scene->scale = line->bytes ? ts_arena_copy(scene->arena, line->bytes, line->length) : NULL;
}

static void draw_strip(const ts_strip *strip)
{
    write_heading(strip);
    ts_strip_draw_box(strip);
    ts_strip_draw_bodies(strip);
    ts_strip_write_pads(strip);
    ts_strip_draw_gaps(strip);
    ts_strip_draw_scale(strip);
}

ts_status ts_draw_unrolled(ts_scene *scene)
{
    const size_t most   = scene->drive->drive_count;
    ts_strip    *strips = TS_TAKE(scene->arena, ts_strip, most);
    size_t       count  = 0;
    if (!strips)
        return TS_NO_MEMORY;
    for (uint32_t d = 0; d < most; d++) {
        if (ts_strip_gather(scene, d, &strips[count]) != TS_OK)
            return TS_NO_MEMORY;
        if (strips[count].shaft_count > 0)
            count++;
    }
    ts_tooth_table table;
    const double width = scene->canvas.width - 2.0 * (TS_LOOK_SHEET_MARGIN + TS_LOOK_SHEET_BORDER);
    if (ts_tooth_table_measure(scene, width, &table) != TS_OK)
        return TS_NO_MEMORY;
    const double words  = convention_height(scene);
    const double height = ts_sheet_height(scene, table.height + words + 458.0);
    ts_sheet_divide(scene, height);
    ts_area room = scene->field, teeth = scene->field;
    teeth.y += teeth.h - table.height;
    teeth.h = table.height;
    room.h -= words + table.height;
    if (count > 0) {
        arrange(strips, count, room);
        say_scale(scene, strips[0].px);
    }
    const ts_status status =
        ts_canvas_sheet(&scene->canvas, height,
                        scene->subject->title ? scene->subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    for (size_t i = 0; i < count; i++)
        draw_strip(&strips[i]);
    write_convention(scene, teeth.y - words);
    ts_tooth_table_draw(scene, &table, teeth);
    ts_sheet_draw(scene, "Unrolled", "seen from outside, front up");
    return TS_OK;
}
