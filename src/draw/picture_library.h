/* draw/picture_library.h: which libraries draw, and which font do they really find? */
#ifndef TS_DRAW_PICTURE_LIBRARY_H
#define TS_DRAW_PICTURE_LIBRARY_H

#include <stdbool.h>
#include <stddef.h>

const char *ts_cairo_version(void);
const char *ts_pango_version(void);

/* The family that sets the text of pictures, as far as it fits; true when it is the one of the
 * look.  Pango takes another face without a word when that one is not installed. */
bool ts_picture_font(char *family, size_t room);

#endif
