/* draw/typeset_lines.h: lines as they stand, in letters of one width. */
#ifndef TS_DRAW_TYPESET_LINES_H
#define TS_DRAW_TYPESET_LINES_H

#include "draw/paper.h"

void ts_set_lines(ts_setting *setting, const ts_block *block);
/* Gives the fonts back that were kept with the letters; NULL is nothing to do. */
void ts_letters_forget(ts_letters_kept *kept);

#endif
