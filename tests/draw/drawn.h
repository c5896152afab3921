/* A figure drawn for a test: its bytes, and what stands where on the sheet. */
#ifndef TESTS_DRAW_DRAWN_H
#define TESTS_DRAW_DRAWN_H

#include "draw/sample_drive.h"
#include "draw/scene.h"

typedef struct drawn {
    ts_arena       *arena;
    sample         *sample;
    ts_draw_options options;
    ts_scene        scene;
} drawn;

extern const ts_draw_options usual_options;

/* Opens the sample; change it, then call draw_it.  Stops the test when anything fails. */
void open_drawn(drawn *it, ts_figure figure);
void draw_it(drawn *it);
void close_drawn(drawn *it);

size_t          count_places(const drawn *it, ts_place_kind kind);
const ts_place *find_place(const drawn *it, ts_place_kind kind, uint32_t of);

/* The whole way through ts_draw; the caller closes the buffer. */
ts_buffer bytes_of(const sample *sample, const ts_draw_options *options);

#endif
