/* search/arrange_layout.h: where do the shafts of an arrangement stand, and what do they bear?
 *
 * What judges an answer and what refits it to other loads both read it; the search does not.
 */
#ifndef TS_SEARCH_ARRANGE_LAYOUT_H
#define TS_SEARCH_ARRANGE_LAYOUT_H

#include "search/arrange_verify.h"

#define TS_LAYOUT_SLACK 1e-9 /* rad, and relative */

enum { TS_LAYOUT_CONDITIONS = 64 }; /* most of them */

typedef struct ts_laid_shaft {
    int32_t  front, rear;
    uint32_t z;
    double   width;
    uint32_t z_step; /* teeth of its second gear, which meshes outwards; 0: it has none */
    double   step_width;
    uint32_t module;     /* of its gear that meshes inwards          */
    uint32_t out_module; /* of the one that meshes outwards          */
    uint32_t step;       /* row of the step shaft inwards of it; 0: none */
    int      depth;      /* meshes from the input */
    int      way;        /* -1 left, 0 input, +1 right */
    double   angle;      /* from the input, left negative */
    uint32_t outboard;   /* accessories here and beyond; at the input: none */
} ts_laid_shaft;

typedef struct ts_layout {
    const ts_arrange_problem *p;
    const ts_arrange_box     *frame;
    const ts_arrange_choice  *choice;
    uint32_t                  box;
    size_t                    count;
    ts_laid_shaft row[TS_ARRANGE_ROW]; /* the input, then left outwards, then right outwards */
} ts_layout;

/* One box as it is written.  False: it has too many shafts, conditions or meshes that cannot be. */
bool ts_layout_make(ts_layout *l, const ts_arrange_problem *p, uint32_t box,
                    const ts_arranged_box *b);
/* The same where box and choice are set: the rule that forbids to lay it out. */
ts_arrange_rule ts_layout_fill(ts_layout *l, const ts_arranged_box *b);

/* Accessories on that shaft, as bits. */
uint32_t ts_laid_set(const ts_laid_shaft *s);
/* The shaft that drives row i, which is not the input. */
ts_laid_shaft *ts_laid_inner(ts_layout *l, size_t i);
/* Of its gear that meshes outwards. */
uint32_t ts_laid_outer_teeth(const ts_laid_shaft *s);
/* Teeth of a gear on the input shaft that would turn this one's mesh inwards as fast. */
double ts_laid_turns(const ts_layout *l, const ts_laid_shaft *s);
/* m, the width that the mesh inwards of row `outer` needs; infinite: none will do. */
double ts_laid_need(const ts_layout *l, size_t outer);
bool   ts_laid_width_is_allowed(const ts_layout *l, uint32_t module, uint32_t z, double width);
/* Adds this box to what others have. */
void ts_layout_account(const ts_layout *l, ts_arrange_account *sum);

#endif
