/* draw/margin_chart.h: every reserve in every condition, one scale for all. */
#ifndef TS_DRAW_MARGIN_CHART_H
#define TS_DRAW_MARGIN_CHART_H

#include "draw/scene.h"

ts_status ts_draw_margins(ts_scene *scene);

/* ---- between the parts of the figure ---- */

/* From the one that is shown last to the one that is shown first when several objects share a cell.
 */
typedef enum ts_margin_state {
    TS_MARGIN_ABSENT,  /* the rule asks nothing in this condition                      */
    TS_MARGIN_HOLDS,   /* it holds, and nothing is demanded that a reserve could be of */
    TS_MARGIN_RESERVE, /* a reserve of 0 or more                                       */
    TS_MARGIN_UNKNOWN, /* not computable                                               */
    TS_MARGIN_SHORT,   /* a reserve below what is wanted, mostly a negative one        */
    TS_MARGIN_FAILS    /* it does not hold, and there is no number                     */
} ts_margin_state;

typedef struct ts_margin_cell {
    ts_margin_state     state;
    double              margin;    /* capacity / demand - 1; NaN in the states without a number */
    ts_node             node;      /* what it is about                                           */
    const ts_finding   *finding;   /* about the same; NULL: none                                 */
    const ts_judgement *judgement; /* NULL: absent                                            */
} ts_margin_cell;

typedef struct ts_margin_row {
    const char     *rule;
    const char     *title;
    ts_node         node;    /* 0: the worst of many objects; else the one that the row is about */
    bool            teeth;   /* of a mesh: strength of its teeth */
    ts_margin_cell *cells;   /* [condition]                                                      */
    int32_t         least;   /* the condition that governs; -1: none has a number                */
    size_t          objects; /* how many things the rule judged                                  */
} ts_margin_row;

typedef struct ts_margin_rows {
    ts_margin_row *items;
    size_t         count;
    size_t         steady; /* rules that judge without a condition, left out */
} ts_margin_rows;

/* Rows of the judgements that have a condition, in the order of the rules. */
ts_status ts_margin_gather(ts_scene *scene, ts_margin_rows *out);

void ts_margin_draw_cell(ts_scene *scene, const ts_margin_cell *cell, bool governs, ts_area area);
/* x of a reserve in a cell, held between the ends of its scale. */
double ts_margin_x(ts_area area, double margin);

/* The ends of the scale. */
#define TS_MARGIN_LEAST (-0.2)
#define TS_MARGIN_MOST  0.6

#endif
