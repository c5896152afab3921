/* draw/places.h: points and areas of a sheet, and what stands where on it.
 *
 * The note of places is what marks keep clear of, what zones are read from, and what the tests
 * judge: no two texts may meet, no leader may cross another.
 */
#ifndef TS_DRAW_PLACES_H
#define TS_DRAW_PLACES_H

#include "base/arena.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct ts_point {
    double x, y;
} ts_point;

typedef struct ts_area {
    double x, y, w, h;
} ts_area;

typedef enum ts_place_kind {
    TS_PLACE_TEXT,   /* letters; `text` is what they say                    */
    TS_PLACE_SYMBOL, /* a mark that no words may cover                      */
    TS_PLACE_NUMBER, /* the circle with a shaft's number; `of` is the shaft */
    TS_PLACE_CELL,   /* a shaft's cell of the rail; `of` is the shaft       */
    TS_PLACE_TAG,    /* marks of findings; `of` is the first finding        */
    TS_PLACE_LEADER, /* one straight piece from a to b; `of` is the shaft   */
    TS_PLACE_RIBBON, /* one ribbon, drawn from a to b with the flow; `of` is the mesh or pad  */
    TS_PLACE_ROW,    /* a row of a chart; `of` is the pad, or its number    */
    TS_PLACE_WALL,   /* a piece of the cowl line, from a to b               */
    TS_PLACE_HOUR    /* an hour of the dial; `of` is the hour, its text is noted as well */
} ts_place_kind;

typedef struct ts_place {
    ts_place_kind kind;
    uint32_t      of;
    ts_area       area;
    ts_point      a, b; /* TS_PLACE_LEADER, _RIBBON, _WALL       */
    bool          cut;  /* TS_PLACE_TEXT: it ends in an ellipsis */
    const char   *text; /* TS_PLACE_TEXT                         */
} ts_place;

typedef struct ts_places {
    ts_arena *arena;
    ts_place *items;
    size_t    count, room;
} ts_places;

/* Notes a place; does nothing without memory, which the arena remembers. */
void ts_note_place(ts_places *places, const ts_place *place);
void ts_note_area(ts_places *places, ts_place_kind kind, uint32_t of, ts_area area);
void ts_note_line(ts_places *places, ts_place_kind kind, uint32_t of, ts_point a, ts_point b);

/* Do words, numbers and symbols leave this area free? */
bool ts_place_free(const ts_places *places, ts_area area);

ts_area ts_area_inset(ts_area area, double by); /* negative: grown */
bool    ts_areas_meet(ts_area a, ts_area b);
bool    ts_area_holds(ts_area outer, ts_area inner);
bool    ts_line_meets_area(ts_point a, ts_point b, ts_area area);
/* Do the two pieces have a point in common that is not an end of both? */
bool   ts_lines_cross(ts_point a, ts_point b, ts_point c, ts_point d);
double ts_distance(ts_point a, ts_point b);
/* How far a point lies outside of an area; 0 inside. */
double   ts_area_distance(ts_area area, ts_point at);
ts_point ts_polar(ts_point centre, double radius, double angle); /* y downwards */

#endif
