/* bench/measure_workings.c: what does it cost that every formula can explain itself? */
#include "base/arena.h"
#include "base/workings.h"
#include "bench.h"

#include <math.h>

static const ts_formula alpha_t_formula = {
    .symbol  = "alpha_t",
    .meaning = "transverse pressure angle",
    .unit    = "rad",
    .text    = "atan(tan(alpha_n)/cos(beta))",
    .source  = "ISO 21771:2007, clause 4",
};

enum { ANGLES = 64 };

/* The formula by itself; noinline keeps the compiler from computing it once for all angles. */
__attribute__((noinline)) static double plain(double alpha_n, double beta)
{
    return atan(tan(alpha_n) / cos(beta));
}

__attribute__((noinline)) static double with_step(ts_workings *workings, double alpha_n,
                                                  double beta)
{
    return TS_STEP(workings, alpha_t_formula, atan(tan(alpha_n) / cos(beta)), alpha_n, beta);
}

static void work_plain(void *context)
{
    double sum = 0.0;
    (void)context;
    for (int i = 0; i < ANGLES; i++)
        sum += plain(0.3 + 0.001 * i, 0.2);
    bench_keep(&sum);
}

static void work_silent(void *context)
{
    double sum = 0.0;
    for (int i = 0; i < ANGLES; i++)
        sum += with_step(context, 0.3 + 0.001 * i, 0.2);
    bench_keep(&sum);
}

static double silent_over_plain(void)
{
    return bench_ratio(work_silent, NULL, work_plain, NULL);
}

/* Opens a recorder for every run, so that its memory does not grow with the number of runs. */
static void work_recorded(void *context)
{
    ts_arena    *arena    = ts_arena_open(NULL);
    ts_workings *workings = arena == NULL ? NULL : ts_workings_open(arena);
    (void)context;
    work_silent(workings);
    ts_arena_close(arena);
}

static double recorded_step(void)
{
    return bench_seconds(work_recorded, NULL) / ANGLES;
}

static const bench_case cases[] = {
    {"workings-silent", "a formula that could explain itself, over the bare formula", "1", 1.25,
     silent_over_plain},
    {"workings-recorded", "one step noted, opening the recorder included", "s", INFINITY,
     recorded_step},
};

const bench_group measure_workings = {cases, sizeof cases / sizeof cases[0]};
