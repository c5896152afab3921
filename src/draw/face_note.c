/* draw/face_note.c: from where is the drive seen, and how large is it? */
#include "draw/face_note.h"

#include "draw/lettering.h"

#include <math.h>

/* The length of the bar: 1, 2 or 5 times a power of ten of the unit, near 90 px. */
static double bar_length(const ts_face *face, double *shown)
{
    const double unit   = ts_scene_in_unit(face->scene, 1.0, TS_KIND_LENGTH);
    const double wanted = 90.0 / face->px * unit;
    const double decade = pow(10.0, floor(log10(wanted)));
    const double share  = wanted / decade;
    *shown              = decade * (share >= 5.0 ? 5.0 : share >= 2.0 ? 2.0 : 1.0);
    return *shown / unit * face->px;
}

static void draw_bar(const ts_face *face, ts_point at)
{
    ts_canvas   *canvas = &face->scene->canvas;
    double       shown  = 0.0;
    const double length = bar_length(face, &shown);
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    ts_draw_line(canvas, at, (ts_point){at.x + length, at.y});
    ts_draw_line(canvas, (ts_point){at.x, at.y - 4.0}, (ts_point){at.x, at.y + 4.0});
    ts_draw_line(canvas, (ts_point){at.x + length, at.y - 4.0},
                 (ts_point){at.x + length, at.y + 4.0});
    ts_buffer *line = ts_canvas_line(canvas);
    ts_add_number(line, shown, shown < 1.0 ? 1 : 0);
    ts_buffer_print(line, " %s", ts_scene_unit(face->scene, TS_KIND_LENGTH));
    const ts_lettering how = {.size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK};
    ts_write(canvas, (ts_point){at.x + length + 8.0, at.y + 4.0}, line->bytes ? line->bytes : "",
             &how);
}

static bool any_body(const ts_face *face, ts_face_side side)
{
    for (uint32_t s = 0; s < face->scene->train->shaft_count; s++)
        if (face->shafts[s].shown && face->shafts[s].r_body[side] > 0.0)
            return true;
    return false;
}

enum { NOTE_LINES = 4 };

/* What the note says under its head, and how wide it is set. */
typedef struct note {
    const char  *lines[NOTE_LINES];
    ts_lettering how;
    ts_point     size; /* px, of all of it with the bars */
} note;

static note note_of(const ts_face *face, const ts_ribbons *ribbons, double width)
{
    const bool far  = any_body(face, face->front ? TS_REAR : TS_FRONT);
    const bool dial = ts_measure_known(face->scene->drive->engine.casing);
    const bool thin = face->ribbons && ts_ribbons_any_thin(ribbons);
    note       one  = {
               .lines = {face->front ? "looking rearward" : "looking forward",
                  far ? "near bodies solid, far ones dashed" : "all bodies on this side",
                         "box outline: for orientation only",
                  dial ? ts_scene_dial_says(face->scene) : NULL},
               .how  = {.size   = TS_LOOK_TYPE_PX_SMALL,
                        .colour = TS_COLOUR_INK2,
                        .halo   = true,
                        .width  = width - 14.0,
                        .lines  = 2},
               .size = {width, (face->ribbons ? 105.0 : 51.0) + (thin ? 15.0 : 0.0)},
    };
    for (int i = 0; i < NOTE_LINES && one.lines[i]; i++)
        one.size.y +=
            1.0 + ts_text_area(&face->scene->canvas, (ts_point){0, 0}, one.lines[i], &one.how).h;
    return one;
}

static void write_note(const ts_face *face, const note *what, const ts_ribbons *ribbons,
                       ts_point corner)
{
    ts_canvas         *canvas = &face->scene->canvas;
    const ts_lettering lead   = {
          .size = TS_LOOK_TYPE_PX_LEAD, .bold = true, .halo = true, .colour = TS_COLOUR_INK};
    ts_point at = {corner.x + 6.0, corner.y + 18.0};
    ts_write(canvas, at, face->front ? "Seen from the front" : "Seen from behind", &lead);
    at.y += 5.0;
    for (int i = 0; i < NOTE_LINES && what->lines[i]; i++) {
        const ts_area first = ts_text_area(canvas, (ts_point){0, 0}, what->lines[i], &what->how);
        ts_write(canvas, (ts_point){at.x, at.y - first.y}, what->lines[i], &what->how);
        at.y += first.h + 1.0;
    }
    at.y += 18.0;
    draw_bar(face, at);
    if (!face->ribbons)
        return;
    at.y += 16.0;
    at.y += ts_ribbons_draw_scale(face, ribbons, at) + 18.0;
    if (ts_ribbons_any_thin(ribbons)) {
        ts_write(canvas, at, ts_ribbons_thin_says(face, ribbons), &what->how);
        at.y += 15.0;
    }
    ts_write(canvas, at, "striped: towards the engine", &what->how);
}

/* Wide and low or narrow and high, whichever covers less. */
void ts_face_draw_note(const ts_face *face, ts_obstacles *obstacles, const ts_ribbons *ribbons)
{
    static const double widths[] = {252.0, 226.0, 200.0};
    const ts_point      corner   = {face->picture.x, face->picture.y};
    note                best     = {.size = {0.0, 0.0}};
    ts_area             place    = {0.0, 0.0, 0.0, 0.0};
    double              least    = INFINITY;
    for (size_t i = 0; i < sizeof widths / sizeof widths[0]; i++) {
        const note    one  = note_of(face, ribbons, widths[i]);
        const ts_area area = ts_place_anywhere(obstacles, corner, one.size);
        const double  cost = ts_obstacle_cost(obstacles, area);
        if (cost >= least)
            continue;
        best  = one;
        place = area;
        least = cost;
    }
    write_note(face, &best, ribbons, (ts_point){place.x, place.y});
    ts_avoid_area(obstacles, place, 1000.0);
}
