/* Draws a figure and keeps the canvas, so that a test can look at it. */
#include "draw/drawn.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>

const ts_draw_options usual_options = {
    .condition = SAMPLE_TAKE_OFF, .scale = 1.0, .caution = "Preliminary design aid."};

void open_drawn(drawn *it, ts_figure figure)
{
    it->arena = ts_arena_open(NULL);
    assert_non_null(it->arena);
    it->sample = sample_open(it->arena);
    assert_non_null(it->sample);
    it->options        = usual_options;
    it->options.figure = figure;
}

void draw_it(drawn *it)
{
    it->scene = ts_scene_of(&it->sample->subject, &it->options, it->arena);
    assert_int_equal(ts_canvas_open(&it->scene.canvas, &it->options, it->arena), TS_OK);
    assert_int_equal(ts_draw_figure(&it->scene), TS_OK);
    assert_false(ts_arena_failed(it->arena));
}

void close_drawn(drawn *it)
{
    ts_canvas_close(&it->scene.canvas);
    ts_arena_close(it->arena);
}

size_t count_places(const drawn *it, ts_place_kind kind)
{
    size_t count = 0;
    for (size_t i = 0; i < it->scene.canvas.places.count; i++)
        count += it->scene.canvas.places.items[i].kind == kind;
    return count;
}

const ts_place *find_place(const drawn *it, ts_place_kind kind, uint32_t of)
{
    for (size_t i = 0; i < it->scene.canvas.places.count; i++) {
        const ts_place *place = &it->scene.canvas.places.items[i];
        if (place->kind == kind && place->of == of)
            return place;
    }
    return NULL;
}

static int append(void *context, const char *bytes, size_t length)
{
    ts_buffer_bytes(context, bytes, length);
    return ((ts_buffer *)context)->failed;
}

ts_buffer bytes_of(const sample *from, const ts_draw_options *options)
{
    ts_buffer bytes;
    ts_buffer_open(&bytes, NULL);
    const ts_sink sink = {append, &bytes};
    assert_int_equal(ts_draw(&from->subject, options, &sink), TS_OK);
    assert_false(bytes.failed);
    return bytes;
}
