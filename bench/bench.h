/* bench/bench.h: what is measured, and how is it said?
 *
 * A file bench/measure_<name>.c holds a table of cases and defines
 *
 *   const bench_group measure_<name> = {cases, sizeof cases / sizeof cases[0]};
 *
 * and that is all: the build finds it by its name.  Times of one machine say little to the owner of
 * another, so a case is a ratio or a count wherever it can be.
 */
#ifndef TS_BENCH_BENCH_H
#define TS_BENCH_BENCH_H

#include "towershaft/status.h"

#include <stddef.h>

typedef struct bench_case {
    const char *name;    /* "solve-large"                                         */
    const char *meaning; /* one line for people                                   */
    const char *unit;    /* "s", "1" for a ratio, "calls"                         */
    double      most;    /* the limit; INFINITY where the figure is only reported */
    /* Gives the figure; a NaN says that it could not be measured, and fails. */
    double (*measure)(void);
} bench_case;

typedef struct bench_group {
    const bench_case *cases;
    size_t            count;
} bench_group;

/* The groups that the build found. */
#define BENCH_GROUP(name) extern const bench_group name;
#include "bench_groups.inc"
#undef BENCH_GROUP

/* Processor seconds of one call of `work`, which others on the machine hardly lengthen: the median
 * of 15 samples, each long enough for the clock (the calls of a sample are doubled until it takes
 * 2 ms).  `work` is called once before. */
double bench_seconds(void (*work)(void *context), void *context);
/* The same as a clock on the wall sees it, for work that waits for another process. */
double bench_wall_seconds(void (*work)(void *context), void *context);

/* The ratio of two works, measured in turns so that a machine that slows down slows both: the
 * median over 15 turns of the seconds of `one` over the seconds of `other`. */
double bench_ratio(void (*one)(void *context), void *one_context, void (*other)(void *context),
                   void *other_context);

/* The C library's memory, with every request counted from here on. */
typedef struct bench_count {
    size_t calls; /* requests for memory, also those that grow a block */
} bench_count;
ts_allocator bench_counting_allocator(bench_count *count);

/* Keeps the compiler from leaving out work whose result nobody reads. */
static inline void bench_keep(const void *result)
{
    __asm__ volatile("" : : "g"(result) : "memory");
}

#endif
