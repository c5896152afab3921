/* draw/look.c: what does a colour, a pen or a dash measure on this ground? */
#include "draw/look.h"

static const ts_rgb rgb_of[TS_GROUND_COUNT][TS_COLOUR_COUNT] = {TS_LOOK_COLOUR_ROWS};

static const double pen_px[TS_PEN_COUNT] = {
    TS_LOOK_PEN_SCREEN_PX_P1, TS_LOOK_PEN_SCREEN_PX_P2, TS_LOOK_PEN_SCREEN_PX_P3,
    TS_LOOK_PEN_SCREEN_PX_P4, TS_LOOK_PEN_SCREEN_PX_P5,
};

static const double pen_mm[TS_PEN_COUNT] = {
    TS_LOOK_PEN_PRINT_MM_P1, TS_LOOK_PEN_PRINT_MM_P2, TS_LOOK_PEN_PRINT_MM_P3,
    TS_LOOK_PEN_PRINT_MM_P4, TS_LOOK_PEN_PRINT_MM_P5,
};

static const double hidden[]  = {TS_LOOK_PEN_DASH_MM_HIDDEN};
static const double chain[]   = {TS_LOOK_PEN_DASH_MM_CHAIN};
static const double phantom[] = {TS_LOOK_PEN_DASH_MM_PHANTOM};

ts_rgb ts_look_rgb(ts_ground ground, ts_colour colour)
{
    return rgb_of[ground][colour];
}

double ts_look_pen(ts_ground ground, ts_pen pen, double mm)
{
    if (ground == TS_GROUND_PRINT)
        return pen_mm[pen] * mm;
    return ground == TS_GROUND_CONTRAST ? pen_px[pen] * TS_LOOK_PEN_CONTRAST_SCALE : pen_px[pen];
}

const double *ts_look_dash(ts_dash dash, int *count)
{
    switch (dash) {
    case TS_DASH_HIDDEN:
        *count = (int)(sizeof hidden / sizeof *hidden);
        return hidden;
    case TS_DASH_CHAIN:
        *count = (int)(sizeof chain / sizeof *chain);
        return chain;
    case TS_DASH_PHANTOM:
        *count = (int)(sizeof phantom / sizeof *phantom);
        return phantom;
    case TS_DASH_NONE:
        break;
    }
    *count = 0;
    return NULL;
}
