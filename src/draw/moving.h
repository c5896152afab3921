/* draw/moving.h: the face of a drive that turns, as one SVG that needs nothing else.
 *
 * Every gear turns at its true ratio and the right way; ribbons run the way the power goes in the
 * condition shown.  No numbers.  What asks for less motion gets a picture that stands still.
 */
#ifndef TS_DRAW_MOVING_H
#define TS_DRAW_MOVING_H

#include "draw/figure.h"

#include "base/buffer.h"

/* Appends the picture, seen from behind.  Of the options: ground, condition, allocator.  TS_OK,
 * TS_NO_MEMORY, or TS_NOT_UNDERSTOOD where nothing turns in that condition. */
ts_status ts_draw_moving(const ts_drawing_subject *subject, const ts_draw_options *options,
                         ts_buffer *out);

#endif
