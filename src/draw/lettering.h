/* draw/lettering.h: texts that fit where they stand, whatever they hold. */
#ifndef TS_DRAW_LETTERING_H
#define TS_DRAW_LETTERING_H

#include "draw/canvas.h"

typedef enum ts_anchor { TS_ANCHOR_LEFT, TS_ANCHOR_MIDDLE, TS_ANCHOR_RIGHT } ts_anchor;

typedef struct ts_lettering {
    double    size; /* px; 0: TS_LOOK_TYPE_PX_BODY                                            */
    bool      bold;
    bool      italic;  /* quantity symbols only                                                  */
    bool      halo;    /* paper under the letters, where they stand on lines          */
    bool      upright; /* reads upwards: turned a quarter to the left                            */
    ts_anchor anchor;
    ts_colour colour; /* an ink                                                                 */
    double    width;  /* px that the text may take; 0: as much as it wants                      */
    int       lines;  /* most lines; 0 means 1                                                  */
} ts_lettering;

/* Writes `text` with the baseline of its first line at `at`, and notes the place.  A text that does
 * not fit is set smaller down to the least size, then on more lines, then cut with an ellipsis.
 * Returns the area it takes (from the ascent of the first line to the descent of the last). */
ts_area ts_write(ts_canvas *canvas, ts_point at, const char *text, const ts_lettering *how);
/* The same area without writing. */
ts_area ts_text_area(ts_canvas *canvas, ts_point at, const char *text, const ts_lettering *how);

/* A quantity symbol as ISO 80000-1 has it (from memory): italic, with an upright subscript that may
 * be NULL.  Returns where it ends on the right. */
double ts_write_symbol(ts_canvas *canvas, ts_point at, const char *symbol, const char *subscript,
                       ts_colour colour);

/* Appends a text with what could disturb its line taken out: bytes that are no UTF-8, control and
 * direction marks become U+FFFD, line ends blanks. */
void ts_add_clean(ts_buffer *out, const char *text);

/* The family that really sets the text: "B612", or what stands in for it. */
const char *ts_letters_family(ts_canvas *canvas);

#endif
