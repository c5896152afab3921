/* arrange/brute.h: every arrangement of a small problem, one after the other, by plain recursion.
 *
 * Shares no code with src/search: it builds outwards from the input, and judges each whole
 * arrangement from scratch by the rules of tests/reference/arrange.md.
 */
#ifndef TS_ARRANGE_BRUTE_H
#define TS_ARRANGE_BRUTE_H

#include "search/arrange_problem.h"

typedef struct brute_answer {
    uint64_t       count; /* arrangements that meet every rule          */
    uint64_t       tried; /* whole arrangements that were judged        */
    double         mass;  /* the least of them; infinite when there is none */
    ts_arrangement best;
    bool           gave_up; /* more than `most` shafts would have to be put somewhere */
} brute_answer;

void brute_solve(const ts_arrange_problem *problem, uint64_t most, brute_answer *answer);

/* The mass of one whole arrangement; infinite when it breaks a rule. */
double brute_mass(const ts_arrange_problem *problem, const ts_arrangement *a);

#endif
