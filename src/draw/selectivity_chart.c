/* draw/selectivity_chart.c: does the right neck break first, and for how long may a pad pull how
 * much? */
#include "draw/selectivity_chart.h"

#include "draw/lettering.h"
#include "draw/sheet.h"
#include "rating/selectivity.h"

#include <math.h>

enum { TIMES = 13 };

/* px */
static const double label_wide = 220.0, first_wide = 236.0, foot = 46.0, head = 66.0,
                    row_least = 46.0, row_most = 100.0, row_gap = 10.0;
/* s, the ends of the duration axis: one turn or so, and a life */
static const double t_least = 0.1, t_most = 1e8;

typedef struct chart {
    ts_scene        *scene;
    const ts_select *select;
    ts_area          area;        /* of the rows, without the labels beside them */
    double           least, most; /* N.m at the ends of the torque axis, at the reference */
    double           row;
} chart;

static double x_of(const chart *it, double T)
{
    const double share = log(T / it->least) / log(it->most / it->least);
    return it->area.x + it->area.w * fmin(1.0, fmax(0.0, share));
}

static double y_of(const chart *it, size_t row, double seconds)
{
    const double share = log(seconds / t_least) / log(t_most / t_least);
    return it->area.y + it->row * (double)row + 0.5 * row_gap +
           (it->row - row_gap) * fmin(1.0, fmax(0.0, share));
}

static double time_at(int i)
{
    return t_least * pow(t_most / t_least, (double)i / (TIMES - 1));
}

/* ---- what is there --------------------------------------------------------------------------- */

static const char *name_of(const chart *it, const ts_guard *guard)
{
    return guard->pad != TS_NOWHERE ? it->scene->train->pads[guard->pad].name
                                    : it->scene->train->shafts[guard->shaft].name;
}

static double torque_in(const chart *it, const ts_guard *guard, size_t c)
{
    const ts_power *power = it->scene->power;
    const ts_train *train = it->scene->train;

    return fabs(guard->pad != TS_NOWHERE ? power->pad[c * train->pad_count + guard->pad].T
                                         : power->T[c * train->shaft_count + guard->shaft]);
}

/* The highest torque that is legitimate for at least so long. */
static double must_pass(const chart *it, const ts_guard *guard, double seconds)
{
    double most = guard->t_over >= seconds && guard->T_over > 0.0 ? guard->T_over : 0.0;

    for (size_t c = 0; c < it->scene->drive->condition_count; c++)
        if (ts_condition_seconds(&it->scene->drive->conditions[c]) >= seconds)
            most = fmax(most, torque_in(it, guard, c));
    return most;
}

static const ts_drive_neck *neck_of(const chart *it, const ts_guard *guard)
{
    return guard->neck == TS_NOWHERE ? NULL : &it->select->necks->items[guard->neck];
}

/* From a third of the smallest peak to twice the highest wall, at the reference. */
static void set_axis(chart *it)
{
    it->least = INFINITY;
    it->most  = 0.0;
    for (uint32_t i = 0; i < it->select->count; i++) {
        const ts_guard *guard = &it->select->guards[i];

        if (guard->legit.T > 0.0)
            it->least = fmin(it->least, 0.3 * guard->legit.T * guard->refer);
        if (isfinite(guard->once.T))
            it->most = fmax(it->most, 2.0 * guard->once.T * guard->refer);
    }
    if (!(it->least < it->most))
        it->least = 1.0, it->most = 10.0;
}

/* ---- drawing --------------------------------------------------------------------------------- */

static void draw_torque_axis(const chart *it)
{
    ts_scene          *scene  = it->scene;
    ts_canvas         *canvas = &scene->canvas;
    const double       unit   = ts_scene_in_unit(scene, 1.0, TS_KIND_TORQUE);
    const double       bottom = it->area.y + it->area.h;
    const ts_lettering tick   = {
          .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK2};

    for (int decade = (int)floor(log10(it->least * unit)); decade < 12; decade++)
        for (int step = 1; step < 10; step++) {
            const double T = step * pow(10.0, decade) / unit;
            if (T < it->least || T > it->most)
                continue;
            const double x = x_of(it, T);
            ts_use_pen(canvas, step == 1 ? TS_PEN_2 : TS_PEN_1, TS_COLOUR_HAIR);
            ts_draw_line(canvas, (ts_point){x, it->area.y}, (ts_point){x, bottom});
            if (step != 1 && step != 2 && step != 5)
                continue;
            ts_add_number(ts_canvas_line(canvas), T * unit, decade < 0 ? (decade < -1 ? 2 : 1) : 0);
            ts_write(canvas, (ts_point){x, it->area.y - 6.0}, ts_scene_kept(scene), &tick);
        }
    const ts_lettering right = {
        .size = TS_LOOK_TYPE_PX_SMALL, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK};
    ts_buffer_print(ts_canvas_line(canvas), "%s at the box input, logarithmic",
                    ts_scene_unit(scene, TS_KIND_TORQUE));
    ts_write(canvas, (ts_point){it->area.x + it->area.w, it->area.y - 22.0}, ts_scene_kept(scene),
             &right);
}

/* Three durations a row, as hairs; their names stand at the first row alone. */
static void draw_times(const chart *it, size_t row)
{
    static const struct {
        double      t;
        const char *says;
    } marks[]                 = {{1.0, "1 s"}, {3600.0, "1 h"}, {3.6e6, "1000 h"}};
    ts_canvas         *canvas = &it->scene->canvas;
    const ts_lettering small  = {
         .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK3};

    for (size_t i = 0; i < 3; i++) {
        const double y = y_of(it, row, marks[i].t);
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
        ts_draw_line(canvas, (ts_point){it->area.x, y}, (ts_point){it->area.x + it->area.w, y});
        ts_write(canvas, (ts_point){it->area.x - 6.0, y + 3.5}, marks[i].says, &small);
    }
}

/* What it must pass: less for longer, closed by a bar on the right. */
static void draw_loads(const chart *it, const ts_guard *guard, size_t row)
{
    ts_canvas *canvas = &it->scene->canvas;
    double     before = 0.0, x_before = it->area.x;

    for (int i = 0; i < TIMES - 1; i++) {
        const double T   = must_pass(it, guard, time_at(i)) * guard->refer;
        const double top = y_of(it, row, time_at(i)), low = y_of(it, row, time_at(i + 1));
        const double x = T > 0.0 ? x_of(it, T) : it->area.x;

        if (T > 0.0) {
            ts_path_area(canvas, (ts_area){it->area.x, top, x - it->area.x, low - top});
            ts_fill_veiled(canvas, TS_COLOUR_POWER, 0.3);
            ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_POWER);
            ts_draw_line(canvas, (ts_point){x, top}, (ts_point){x, low});
        }
        if (before > 0.0 && x != x_before) {
            ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_POWER);
            ts_draw_line(canvas, (ts_point){x_before, top}, (ts_point){x, top});
        }
        before   = T;
        x_before = x;
    }
}

/* What the way bears: a wall that leans in as it must be borne longer. */
static void draw_wall(const chart *it, const ts_guard *guard, size_t row)
{
    ts_canvas *canvas = &it->scene->canvas;
    ts_point   points[TIMES + 2];
    const bool start = guard->pad != TS_NOWHERE && guard->start.T > guard->run.T;
    double     right = it->area.x + it->area.w;
    size_t     count = 0;

    for (int i = 0; i < TIMES; i++) {
        const double  t    = time_at(i);
        const ts_wall wall = i == 0 ? guard->once : ts_select_wall_for(it->select, guard, t, start);

        if (isfinite(wall.T) && wall.T > 0.0)
            points[count++] = (ts_point){x_of(it, wall.T * guard->refer), y_of(it, row, t)};
    }
    if (count < 2)
        return;
    ts_point shape[TIMES + 2];
    for (size_t i = 0; i < count; i++)
        shape[i] = points[i];
    shape[count]     = (ts_point){right, points[count - 1].y};
    shape[count + 1] = (ts_point){right, points[0].y};
    ts_path_polygon(canvas, shape, count + 2);
    ts_hatch(canvas, TS_COLOUR_RULE);
    ts_use_pen(canvas, TS_PEN_4, TS_COLOUR_INK);
    ts_move_to(canvas, points[0]);
    for (size_t i = 1; i < count; i++)
        ts_line_to(canvas, points[i]);
    ts_stroke(canvas);
}

/* How far apart both are.  A gap that is narrower than the number has it on the outside, away from
 * the neck: over the load, or beyond the wall. */
static void write_factor(const chart *it, double left, double right, double y, double factor,
                         bool load)
{
    ts_canvas   *canvas = &it->scene->canvas;
    ts_lettering how    = {.size   = TS_LOOK_TYPE_PX_SMALL,
                           .anchor = TS_ANCHOR_MIDDLE,
                           .colour = TS_COLOUR_INK,
                           .halo   = true};
    double       x      = 0.5 * (left + right);

    if (!isfinite(factor))
        return;
    if (right - left < 34.0) {
        how.anchor = load ? TS_ANCHOR_RIGHT : TS_ANCHOR_LEFT;
        x          = load ? fmin(left, right) - 4.0 : fmax(left, right) + 4.0;
    }
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
    if (right > left)
        ts_draw_line(canvas, (ts_point){left, y}, (ts_point){right, y});
    ts_buffer *line = ts_canvas_line(canvas);
    ts_buffer_add(line, "\xC3\x97");
    ts_add_number(line, factor, 2);
    ts_write(canvas, (ts_point){x, y - 3.0}, ts_scene_kept(it->scene), &how);
}

/* The band, hatched where the wall stands inside of it or before it. */
static void draw_neck(const chart *it, const ts_guard *guard, const ts_drive_neck *neck, size_t row)
{
    ts_canvas   *canvas = &it->scene->canvas;
    const double top = y_of(it, row, t_least), low = y_of(it, row, t_most);
    const double a    = x_of(it, neck->band.low * guard->refer);
    const double b    = x_of(it, neck->band.high * guard->refer);
    const double wall = isfinite(guard->once.T) ? x_of(it, guard->once.T * guard->refer) : b;
    const double load = guard->legit.T > 0.0 ? x_of(it, guard->legit.T * guard->refer) : a;
    const double y    = y_of(it, row, 1.0);

    ts_path_area(canvas, (ts_area){a, top, b - a, low - top});
    ts_fill_and_stroke(canvas, TS_COLOUR_PAPER, TS_PEN_3, TS_COLOUR_INK);
    if (wall < b) {
        const double from = fmax(a, wall);
        ts_path_area(canvas, (ts_area){from, top, b - from, low - top});
        ts_hatch(canvas, TS_COLOUR_ST_REFUSE);
    }
    if (load > a) {
        const double to = fmin(b, load);
        ts_path_area(canvas, (ts_area){a, top, to - a, low - top});
        ts_hatch(canvas, TS_COLOUR_ST_REFUSE);
    }
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_use_dash(canvas, TS_DASH_HIDDEN);
    const double middle = x_of(it, sqrt(neck->band.low * neck->band.high) * guard->refer);
    ts_draw_line(canvas, (ts_point){middle, top}, (ts_point){middle, low});
    if (guard->legit.T > 0.0)
        write_factor(it, load, a, y, neck->band.low / guard->legit.T, true);
    write_factor(it, b, wall, y, guard->once.T / neck->band.high, false);
}

/* What a seizure brings: its share of what the nearest part bears, laid against the wall. */
static void draw_peak(const chart *it, const ts_guard *guard, size_t row)
{
    const ts_seizure_peak *peak   = it->scene->subject->peaks;
    ts_canvas             *canvas = &it->scene->canvas;

    if (peak == NULL || !(peak[row].share > 0.0) || !isfinite(guard->once.T))
        return;
    const bool         beyond = peak[row].share >= 1.0;
    const double       x      = x_of(it, peak[row].share * guard->once.T * guard->refer);
    const double       y = y_of(it, row, 1.0), r = 6.0;
    const ts_point     diamond[4] = {{x, y - r}, {x + r, y}, {x, y + r}, {x - r, y}};
    const ts_lettering how        = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                     .bold   = true,
                                     .anchor = TS_ANCHOR_MIDDLE,
                                     .halo   = true,
                                     .colour = beyond ? TS_COLOUR_ST_REFUSE : TS_COLOUR_INK};
    ts_path_polygon(canvas, diamond, 4);
    ts_fill_and_stroke(canvas, beyond ? TS_COLOUR_ST_REFUSE : TS_COLOUR_INK, TS_PEN_1,
                       TS_COLOUR_PAPER);
    ts_add_number(ts_canvas_line(canvas), 100.0 * peak[row].share, 0);
    ts_buffer_add(&canvas->line, " %");
    ts_write(canvas, (ts_point){x, y + r + 12.0}, ts_scene_kept(it->scene), &how);
}

static void write_first(const chart *it, const ts_guard *guard, size_t row)
{
    static const char *const says[] = {
        [TS_PART_ROOT] = "teeth",  [TS_PART_FLANK] = "flanks",    [TS_PART_SPLINE] = "spline",
        [TS_PART_SHAFT] = "shaft", [TS_PART_BEARING] = "bearing", [TS_PART_NECK] = "neck",
    };
    ts_canvas *canvas = &it->scene->canvas;

    if (guard->once.part == TS_NOWHERE)
        return;
    const ts_part_capacity *part = &it->select->parts.items[guard->once.part];
    const double            y    = it->area.y + it->row * ((double)row + 0.5);
    const ts_lettering      word = {
             .size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK, .width = first_wide - 16.0};
    ts_buffer *line  = ts_canvas_line(canvas);
    const bool bevel = ts_part_is_bevel(it->scene->train, part);
    ts_buffer_print(line, "%s%s, %s", bevel ? "bevel " : "", says[part->kind], part->what);
    ts_write(canvas, (ts_point){it->area.x + it->area.w + 8.0, y - 4.0}, ts_scene_kept(it->scene),
             &word);
    line = ts_canvas_line(canvas);
    ts_add_number(line, ts_scene_in_unit(it->scene, guard->once.T, TS_KIND_TORQUE), 0);
    ts_buffer_print(line, " %s at the pad", ts_scene_unit(it->scene, TS_KIND_TORQUE));
    ts_write(canvas, (ts_point){it->area.x + it->area.w + 8.0, y + 11.0}, ts_scene_kept(it->scene),
             &word);
}

static void write_label(const chart *it, const ts_guard *guard, size_t row)
{
    ts_scene            *scene = it->scene;
    const ts_drive_neck *neck  = neck_of(it, guard);
    const double         x     = it->area.x - label_wide + 8.0;
    const double         y     = it->area.y + it->row * (double)row + 0.5 * it->row;
    const ts_lettering   bold = {.bold = true, .colour = TS_COLOUR_INK, .width = label_wide - 72.0};
    const ts_lettering   small = {.size   = TS_LOOK_TYPE_PX_TICK,
                                  .colour = TS_COLOUR_INK2,
                                  .width  = label_wide - 72.0,
                                  .lines  = 2};

    ts_write(&scene->canvas, (ts_point){x, y - 4.0}, name_of(it, guard), &bold);
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    if (neck == NULL) {
        ts_buffer_add(line, "no neck");
    } else {
        const double unit = ts_scene_in_unit(scene, 1.0, TS_KIND_TORQUE);
        ts_add_number(line, neck->band.low * unit, 0);
        ts_buffer_add(line, " to ");
        ts_add_number(line, neck->band.high * unit, 0);
        ts_buffer_print(line, " %s at the pad", ts_scene_unit(scene, TS_KIND_TORQUE));
    }
    ts_write(&scene->canvas, (ts_point){x, y + 11.0}, ts_scene_kept(scene), &small);
}

static void draw_row(const chart *it, size_t row)
{
    ts_canvas           *canvas = &it->scene->canvas;
    const ts_guard      *guard  = &it->select->guards[row];
    const ts_drive_neck *neck   = neck_of(it, guard);
    const double         bottom = it->area.y + it->row * ((double)row + 1.0);

    draw_times(it, row);
    draw_wall(it, guard, row);
    draw_loads(it, guard, row);
    if (neck != NULL && neck->missing == NULL)
        draw_neck(it, guard, neck, row);
    draw_peak(it, guard, row);
    write_first(it, guard, row);
    write_label(it, guard, row);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_draw_line(canvas, (ts_point){it->area.x - label_wide, bottom},
                 (ts_point){it->area.x + it->area.w + first_wide, bottom});
    ts_note_area(&canvas->places, TS_PLACE_ROW, (uint32_t)row,
                 (ts_area){it->area.x, bottom - it->row, it->area.w, it->row});
}

static void write_words(const chart *it)
{
    ts_scene          *scene = it->scene;
    const ts_lettering lead  = {
         .size = TS_LOOK_TYPE_PX_LEAD, .bold = true, .colour = TS_COLOUR_INK, .width = it->area.w};
    const ts_lettering small = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                .colour = TS_COLOUR_INK2,
                                .width  = it->area.w + label_wide + first_wide - 24.0,
                                .lines  = 2};
    const double       x     = it->area.x - label_wide + 8.0;

    ts_write(&scene->canvas, (ts_point){x, it->area.y - head + 22.0},
             "Does the right neck break first?", &lead);
    ts_write(
        &scene->canvas, (ts_point){x, it->area.y + it->area.h + 18.0},
        "Tinted: torque that the pad must pass, for at least as long as the scale in its row "
        "says. Open box: the neck breaks somewhere in it, at once. Hatched behind a strong "
        "line: something on the way to the spool gives way, while all others take their share; "
        "the line leans in where teeth tire. Close hatching in a box: the window is shut.",
        &small);
    if (scene->subject->peaks != NULL)
        ts_write(&scene->canvas, (ts_point){x, it->area.y + it->area.h + 48.0},
                 "Diamond: the accessory seizes at once, its neck as strong as it may be; the "
                 "largest share of what any part bears once, of all conditions, laid against the "
                 "wall.  Shafts that wind up and play are in it, which the wall leaves out.",
                 &small);
}

ts_status ts_draw_selectivity(ts_scene *scene)
{
    chart        it    = {.scene = scene, .select = scene->subject->select};
    const size_t rows  = it.select != NULL ? it.select->count : 0;
    const double below = foot + (scene->subject->peaks != NULL ? 32.0 : 0.0);
    const char  *title = scene->subject->title ? scene->subject->title : scene->drive->title.text;
    const double height =
        ts_sheet_height(scene, head + below + row_least * (double)(rows > 0 ? rows : 1));

    ts_sheet_divide(scene, height);
    it.row = rows > 0 ? fmin(row_most, (scene->field.h - head - below) / (double)rows) : row_least;
    const ts_status status = ts_canvas_sheet(&scene->canvas, height, title);
    if (status != TS_OK)
        return status;
    it.area = (ts_area){scene->field.x + label_wide, scene->field.y + head,
                        scene->field.w - label_wide - first_wide, it.row * (double)rows};
    if (rows > 0) {
        set_axis(&it);
        draw_torque_axis(&it);
        for (size_t row = 0; row < rows; row++)
            draw_row(&it, row);
    }
    write_words(&it);
    ts_sheet_draw(scene, "Selectivity", "which neck breaks first");
    return TS_OK;
}
