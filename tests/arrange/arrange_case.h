/* arrange/arrange_case.h: a problem in closed form with its proven answer, read from JSON.
 *
 * The format is said in tests/reference/arrange.md.
 */
#ifndef TS_ARRANGE_ARRANGE_CASE_H
#define TS_ARRANGE_ARRANGE_CASE_H

#include "arrange/closed_model.h"
#include "base/arena.h"

#include <jansson.h>
#include <stdio.h>

typedef struct arrange_case {
    const char        *name;
    ts_arrange_problem problem;
    closed_model       model;
    bool               has_answer; /* what follows is set */
    bool               feasible;
    bool               has_count;
    uint64_t           count;
    double             mass;
} arrange_case;

/* What could not be read, as one line. */
typedef struct arrange_fault {
    char says[512];
} arrange_fault;

/* All problems of a file, {"problems": [{"instance": ..., "answer": ...}]}; memory from `arena`.
 * NULL when the file is none, with the fault said. */
arrange_case *arrange_cases_read(const char *path, ts_arena *arena, size_t *count,
                                 arrange_fault *fault);

#endif
