/* draw/scene.c: what turns how fast in the condition shown, and how is a number said? */
#include "draw/scene.h"

#include <math.h>
#include <string.h>

double ts_scene_speed_in(const ts_scene *scene, uint32_t shaft, uint32_t condition)
{
    return scene->motion->speed[(size_t)condition * scene->train->shaft_count + shaft];
}

double ts_scene_speed(const ts_scene *scene, uint32_t shaft)
{
    return ts_scene_speed_in(scene, shaft, scene->condition);
}

const ts_pad_load *ts_scene_pad_load(const ts_scene *scene, uint32_t pad)
{
    return &scene->power->pad[(size_t)scene->condition * scene->train->pad_count + pad];
}

const ts_mesh_load *ts_scene_mesh_load(const ts_scene *scene, uint32_t mesh)
{
    return &scene->power->mesh[(size_t)scene->condition * scene->train->mesh_count + mesh];
}

const ts_spool_load *ts_scene_spool_load(const ts_scene *scene, uint32_t spool)
{
    return &scene->power->spool[(size_t)scene->condition * scene->drive->spool_count + spool];
}

const char *ts_scene_kept(ts_scene *scene)
{
    const ts_buffer *line = &scene->canvas.line;
    const char *copy = line->bytes ? ts_arena_copy(scene->arena, line->bytes, line->length) : NULL;
    return copy ? copy : "";
}

/* Copies the digits of a plain number with a group mark before each three of five and more. */
static void add_grouped(ts_buffer *out, const char *digits, size_t length)
{
    const char  *point = memchr(digits, '.', length);
    const size_t whole = point ? (size_t)(point - digits) : length;
    for (size_t i = 0; i < length; i++) {
        if (i > 0 && i < whole && whole > 4 && (whole - i) % 3 == 0)
            ts_buffer_add(out, "\xC2\xA0");
        ts_buffer_bytes(out, digits + i, 1);
    }
}

void ts_add_number(ts_buffer *out, double value, int decimals)
{
    if (!isfinite(value)) {
        ts_buffer_add(out, "not known");
        return;
    }
    ts_buffer plain;
    ts_buffer_open(&plain, out->allocator);
    ts_buffer_fixed(&plain, fabs(value), decimals);
    const char *digits = plain.bytes ? plain.bytes : "";
    if (value < 0.0 && strspn(digits, "0.") < plain.length)
        ts_buffer_add(out, "\xE2\x88\x92");
    add_grouped(out, digits, plain.length);
    if (plain.failed)
        out->failed = true;
    ts_buffer_close(&plain);
}

const char *ts_scene_unit(const ts_scene *scene, ts_kind kind)
{
    const ts_unit *unit = ts_kind_shown(kind, scene->units);
    return unit ? unit->name : "";
}

double ts_scene_in_unit(const ts_scene *scene, double si, ts_kind kind)
{
    const ts_unit *unit = ts_kind_shown(kind, scene->units);
    return unit ? ts_from_si(si, unit) : si;
}

/* Three digits that mean something: 24 300 rpm, 73.7 kW, 4.5 kW, 0.20 kW, 12.4 mm, 0.512 in. */
static int decimals_of(double shown, ts_kind kind, ts_units units)
{
    const double size = fabs(shown);
    if (kind == TS_KIND_ROTATIONAL_SPEED)
        return size >= 99.95 || !(size > 0.0) ? 0 : 1;
    if (kind == TS_KIND_LENGTH && units == TS_UNITS_US)
        return 3;
    if (kind == TS_KIND_LENGTH)
        return fabs(size - round(size)) < 0.005 ? 0 : 1;
    if (!(size > 0.0) || size >= 99.95)
        return 0;
    return size >= 0.995 ? 1 : 2;
}

void ts_add_value(ts_buffer *out, const ts_scene *scene, double si, ts_kind kind)
{
    const double shown = ts_scene_in_unit(scene, si, kind);
    ts_add_number(out, shown, decimals_of(shown, kind, scene->units));
}

void ts_add_shown(ts_buffer *out, const ts_scene *scene, double si, ts_kind kind)
{
    ts_add_value(out, scene, si, kind);
    if (!isfinite(si))
        return;
    ts_buffer_add(out, "\xC2\xA0");
    ts_buffer_add(out, ts_scene_unit(scene, kind));
}

double ts_scene_dial(const ts_scene *scene, double clock)
{
    return scene->drive->sight.value == TS_FROM_FRONT ? -clock : clock;
}

const char *ts_scene_dial_says(const ts_scene *scene)
{
    return scene->drive->sight.value == TS_FROM_FRONT ? "clock as in the file: seen from the front"
                                                      : "clock as in the file: seen from behind";
}

const char *ts_sense_word(int sense)
{
    return sense > 0 ? "ccw" : sense < 0 ? "cw" : "?";
}
