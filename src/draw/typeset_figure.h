/* draw/typeset_figure.h: figures on pages of their own, turned where they are wider than high. */
#ifndef TS_DRAW_TYPESET_FIGURE_H
#define TS_DRAW_TYPESET_FIGURE_H

#include "draw/paper.h"

/* Sets the figure of a block; false when it cannot be drawn, and nothing was set. */
bool ts_set_figure(ts_setting *setting, const ts_block *block);

/* The page that a block wants: opens a new one where it is another than this. */
void ts_paper_suit(ts_setting *setting, const ts_block *block);

#endif
