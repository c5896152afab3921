/* search/arrange_rest.h: what must at least be paid beyond a label, whatever the order?
 *
 * The relaxation: shafts beyond the label carry sets as they must, with the loads that follow from
 * the sets, with alternating senses and the idlers that these ask for; but each gear takes the
 * teeth that are best for it alone, meshes find the best partner, and arc is charged as a share
 * (1 - lambda) for gears and lambda for bodies, half from each face.  Every arrangement pays at
 * least this, for any lambda from 0 to 1.  See docs/method/arrange.md.
 */
#ifndef TS_SEARCH_ARRANGE_REST_H
#define TS_SEARCH_ARRANGE_REST_H

#include "search/arrange_label.h"

enum { TS_REST_TABLES = 6 }; /* mass with lambda 0, 1/2, 1; arc of this box alike */

typedef struct ts_rest_table {
    double   metal; /* 1: masses count; 0: arc alone */
    double   arc;   /* cost of one rad               */
    double   lambda;
    double **inward; /* [plane][2 * set + sense of the last shaft] beyond a label's last gear */
    double  *ended;  /* [set] beyond the mesh with the input: input, other branch, other boxes */
    double  *branch; /* [set] a whole branch up to its last gear, next to the input            */
    double   root;   /* of the whole problem with this pair */
} ts_rest_table;

typedef struct ts_rest {
    const ts_pair_tables *pair;
    double               *first, *second; /* [set] the two largest `half` among what is missing */
    bool                  no_way; /* some table says that nothing fits; the others are not made */
    ts_rest_table         tables[TS_REST_TABLES];
} ts_rest;

/* others[set]: the least mass at which other boxes can carry exactly that set; NULL: no other box,
 * or, when the problem has several, only what ts_rest_lower_sets needs.
 * Takes its memory from `arena`; false without. */
bool ts_rest_make(ts_rest *rest, const ts_pair_tables *pair, const double *others, ts_arena *arena);

/* No arrangement with this pair weighs less; infinite when none exists. */
double ts_rest_root(const ts_rest *rest);

/* exact[set], at least: the mass of this box alone when it carries exactly that set.  Each entry is
 * lowered to the bound of this pair where that is less. */
bool ts_rest_lower_sets(const ts_rest *rest, double *exact, ts_arena *arena);

/* A bound for every arrangement that goes on from `l`, of that plane and set, not yet joined to the
 * input;
 * `last` is the mass of its last gear at the least width that it may have. */
double ts_rest_bound(const ts_rest *rest, uint32_t plane, uint32_t set, const ts_label *l,
                     double last);

/* The same for one that is joined to the input. */
double ts_rest_ended_bound(const ts_rest *rest, uint32_t set, const ts_label *l);

/* Not above either of them, and quicker: what bodies take is left out. */
double ts_rest_glance(const ts_rest *rest, uint32_t plane, uint32_t set, const ts_label *l,
                      double last);
double ts_rest_ended_glance(const ts_rest *rest, uint32_t set, const ts_label *l);

#endif
