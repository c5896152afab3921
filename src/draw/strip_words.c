/* draw/strip_words.c: what stands on every pad of a box laid flat, in words that all fit somewhere?
 */
#include "draw/lettering.h"
#include "draw/obstacles.h"
#include "draw/unrolled.h"

#include <math.h>

/* ---- the words of a body ------------------------------------------------------------------ */

enum { LINES_MOST = 3 };

/* Up to three lines: name, "r 72 x 190", "9.4 kg". */
typedef struct body_words {
    const char  *text[LINES_MOST];
    ts_lettering how[LINES_MOST];
    double       high[LINES_MOST]; /* px */
    size_t       count;
    ts_point     size; /* px, of all of them */
} body_words;

static void add_words(const ts_strip *strip, body_words *words, double width)
{
    const ts_buffer *line = &strip->scene->canvas.line;
    const size_t     i    = words->count++;
    words->text[i] =
        line->bytes ? ts_arena_copy(strip->scene->arena, line->bytes, line->length) : NULL;
    if (!words->text[i])
        words->text[i] = "";
    words->how[i] = (ts_lettering){.size   = i ? TS_LOOK_TYPE_PX_TICK : TS_LOOK_TYPE_PX_BODY,
                                   .bold   = i == 0,
                                   .halo   = true,
                                   .anchor = TS_ANCHOR_MIDDLE,
                                   .colour = i ? TS_COLOUR_INK2 : TS_COLOUR_INK,
                                   .width  = width,
                                   .lines  = i ? 2 : 3};
    const ts_area area =
        ts_text_area(&strip->scene->canvas, (ts_point){0, 0}, words->text[i], &words->how[i]);
    words->high[i] = area.h;
    words->size.x  = fmax(words->size.x, area.w);
    words->size.y += area.h;
}

static body_words words_of(const ts_strip *strip, const ts_strip_shaft *one, int side, double width)
{
    ts_scene           *scene = strip->scene;
    const ts_pad       *pad   = ts_strip_pad(strip, one, side);
    const ts_accessory *what  = &scene->drive->accessories[pad->accessory];
    ts_buffer          *line  = ts_canvas_line(&scene->canvas);
    body_words          words = {.count = 0};
    ts_buffer_add(line, pad->name);
    add_words(strip, &words, width);
    line = ts_canvas_line(&scene->canvas);
    ts_buffer_add(line, "r ");
    ts_add_value(line, scene, one->r_body[side], TS_KIND_LENGTH);
    ts_buffer_add(line, " \xC3\x97 ");
    ts_add_value(line, scene, one->length[side], TS_KIND_LENGTH);
    add_words(strip, &words, width);
    if (!ts_measure_known(what->mass))
        return words;
    line = ts_canvas_line(&scene->canvas);
    ts_add_shown(line, scene, what->mass.value, TS_KIND_MASS);
    add_words(strip, &words, width);
    return words;
}

/* With the middle of the top edge at `top`. */
static void write_words(const ts_strip *strip, const body_words *words, ts_point top)
{
    for (size_t i = 0; i < words->count; i++) {
        const ts_area at =
            ts_text_area(&strip->scene->canvas, (ts_point){0, 0}, words->text[i], &words->how[i]);
        ts_write(&strip->scene->canvas, (ts_point){top.x, top.y - at.y}, words->text[i],
                 &words->how[i]);
        top.y += words->high[i];
    }
}

/* ---- where they stand ---------------------------------------------------------------------- */

static const double off_body = 10.0; /* px between a body and words outside of it */

static ts_area area_below(ts_point top, ts_point size)
{
    return (ts_area){top.x - 0.5 * size.x, top.y, size.x, size.y};
}

/* Free of all bodies, of the box, of words and symbols, and within the part of the sheet. */
static bool is_clear(const ts_strip *strip, ts_area area)
{
    const double head = 52.0, foot = ts_strip_point(strip, 0.0, strip->depth + strip->behind).y;
    const double face = ts_strip_point(strip, 0.0, 0.0).y;
    const double rear = ts_strip_point(strip, 0.0, strip->depth).y;
    if (area.x < strip->area.x || area.x + area.w > strip->area.x + strip->area.w ||
        area.y < strip->area.y + head || area.y + area.h > foot + 16.0 ||
        (area.y < rear && area.y + area.h > face))
        return false;
    for (size_t i = 0; i < strip->shaft_count; i++) {
        for (int side = 0; side < 2; side++) {
            const ts_area body = ts_strip_body(strip, &strip->shafts[i], side);
            if (body.w > 0.0 && ts_areas_meet(ts_area_inset(body, -4.0), area))
                return false;
        }
    }
    return ts_place_free(&strip->scene->canvas.places, ts_area_inset(area, -2.0));
}

/* In the outer part of the body, clear of the dimensions at the face and of the centre of mass. */
static bool write_inside(const ts_strip *strip, const ts_strip_shaft *one, int side, ts_area body)
{
    const ts_accessory *what =
        &strip->scene->drive->accessories[ts_strip_pad(strip, one, side)->accessory];
    const double mass =
        ts_measure_known(what->overhang) ? what->overhang.value * strip->px + 8.0 : 0.0;
    const double     room  = body.h - fmax(30.0, mass) - 4.0;
    const body_words words = words_of(strip, one, side, body.w - 6.0);
    if (words.size.y > room)
        return false;
    const double spare = fmin(10.0, 0.5 * (room - words.size.y));
    const double y =
        side == TS_FRONT ? body.y + 4.0 + spare : body.y + body.h - 4.0 - spare - words.size.y;
    write_words(strip, &words, (ts_point){body.x + 0.5 * body.w, y});
    return true;
}

/* Beyond the end of the body, step by step further out, as wide as there is room. */
static bool write_beyond(const ts_strip *strip, const ts_strip_shaft *one, int side, ts_area body)
{
    const double widths[] = {fmax(body.w, 110.0), body.w};
    for (int step = 0; step < 3; step++) {
        for (size_t i = 0; i < 2; i++) {
            const body_words words = words_of(strip, one, side, widths[i]);
            const double     away  = off_body + 12.0 * step;
            const ts_point   top   = {body.x + 0.5 * body.w, side == TS_FRONT
                                                                 ? body.y - away - words.size.y
                                                                 : body.y + body.h + away};
            if (!is_clear(strip, area_below(top, words.size)))
                continue;
            write_words(strip, &words, top);
            return true;
        }
    }
    return false;
}

/* Beside the outer end of the body, where its neighbour stands far enough off. */
static bool write_beside(const ts_strip *strip, const ts_strip_shaft *one, int side, ts_area body)
{
    const body_words words = words_of(strip, one, side, 110.0);
    const double     y     = side == TS_FRONT ? body.y : body.y + body.h - words.size.y;
    for (int way = -1; way <= 1; way += 2) {
        const ts_point top = {
            body.x + 0.5 * body.w + way * (0.5 * (body.w + words.size.x) + off_body), y};
        if (!is_clear(strip, area_below(top, words.size)))
            continue;
        write_words(strip, &words, top);
        return true;
    }
    return false;
}

/* Wherever there is room, with a line to the body. */
static void write_away(const ts_strip *strip, const ts_strip_shaft *one, int side, ts_area body)
{
    ts_canvas       *canvas = &strip->scene->canvas;
    const body_words words  = words_of(strip, one, side, 110.0);
    const ts_point   end    = {body.x + 0.5 * body.w, side == TS_FRONT ? body.y : body.y + body.h};
    ts_obstacles     obstacles = {.arena  = strip->scene->arena,
                                  .within = ts_area_inset(strip->area, 8.0)};
    for (size_t i = 0; i < strip->shaft_count; i++)
        for (int face = 0; face < 2; face++)
            ts_avoid_area(&obstacles,
                          ts_area_inset(ts_strip_body(strip, &strip->shafts[i], face), -4.0),
                          500.0);
    const ts_point corner = ts_strip_point(strip, strip->left, 0.0);
    const ts_point other  = ts_strip_point(strip, strip->right, strip->depth);
    ts_avoid_area(&obstacles, (ts_area){corner.x, corner.y, other.x - corner.x, other.y - corner.y},
                  500.0);
    ts_avoid_places(&obstacles, &canvas->places);
    const ts_area at =
        ts_place_near(&obstacles, end, words.size, (const double[]){20.0, 260.0}, NULL);
    const ts_point near = {fmin(fmax(end.x, at.x), at.x + at.w),
                           fmin(fmax(end.y, at.y), at.y + at.h)};
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
    ts_draw_line(canvas, end, near);
    write_words(strip, &words, (ts_point){at.x + 0.5 * at.w, at.y});
}

/* A cover, a hand-turning pad, an open one, or an accessory of unknown size: its name in words. */
static void write_bare_pad(const ts_strip *strip, const ts_strip_shaft *one, int side)
{
    ts_canvas         *canvas = &strip->scene->canvas;
    const ts_pad      *pad    = ts_strip_pad(strip, one, side);
    const ts_point     at  = ts_strip_point(strip, one->s, side == TS_FRONT ? 0.0 : strip->depth);
    const double       way = side == TS_FRONT ? -1.0 : 1.0, half = 14.0;
    const ts_area      symbol = {at.x - half, way < 0.0 ? at.y - 6.0 : at.y, 2.0 * half, 6.0};
    const ts_lettering how    = {.size   = TS_LOOK_TYPE_PX_TICK,
                                 .halo   = true,
                                 .anchor = TS_ANCHOR_MIDDLE,
                                 .colour = TS_COLOUR_INK2,
                                 .width  = 96.0,
                                 .lines  = 2};
    ts_use_pen(canvas, pad->use == TS_PAD_COVER ? TS_PEN_4 : TS_PEN_2, TS_COLOUR_INK);
    if (pad->use == TS_PAD_OPEN || pad->use == TS_PAD_ACCESSORY)
        ts_use_dash(canvas, TS_DASH_HIDDEN);
    ts_path_area(canvas, symbol);
    ts_stroke(canvas);
    ts_note_area(&canvas->places, TS_PLACE_SYMBOL, 0, symbol);
    ts_buffer *line = ts_canvas_line(canvas);
    ts_buffer_print(line, pad->use == TS_PAD_ACCESSORY ? "%s, size not known" : "%s", pad->name);
    ts_write(canvas, (ts_point){at.x, at.y + (way < 0.0 ? -12.0 : 19.0)},
             line->bytes ? line->bytes : "", &how);
}

/* Pads without a body first, for their words have one place only. */
void ts_strip_write_pads(const ts_strip *strip)
{
    for (int bodies = 0; bodies < 2; bodies++) {
        for (size_t i = 0; i < 2 * strip->shaft_count; i++) {
            const ts_strip_shaft *one  = &strip->shafts[i / 2];
            const int             side = (int)(i % 2);
            const ts_area         body = ts_strip_body(strip, one, side);
            if (!ts_strip_pad(strip, one, side) || (body.w > 0.0) != (bodies == 1))
                continue;
            if (bodies == 0)
                write_bare_pad(strip, one, side);
            else if (!write_inside(strip, one, side, body) &&
                     !write_beyond(strip, one, side, body) && !write_beside(strip, one, side, body))
                write_away(strip, one, side, body);
        }
    }
}
