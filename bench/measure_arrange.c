/* bench/measure_arrange.c: how long does the lightest arrangement take, with its proof?
 *
 * Five modules with fifteen input gears a box, both faces, up to two idlers in a row; invented
 * accessories of a fixed seed.  Two threads.
 */
#include "arrange/random_problem.h"
#include "bench.h"
#include "search/arrange_search.h"

#include <math.h>
#include <time.h>

typedef struct question {
    random_wish wish;
    uint64_t    seed;
} question;

static double now(void)
{
    struct timespec at;
    clock_gettime(CLOCK_MONOTONIC, &at);
    return (double)at.tv_sec + 1e-9 * (double)at.tv_nsec;
}

/* One run, for each takes long enough for the clock; NaN without a proof. */
static double seconds_of(const question *q, double *bytes)
{
    static random_problem        problem;
    static const ts_arrange_wish wish = {.workers = 2, .memory_most = (size_t)4 << 30};
    ts_arrange_result            result;

    random_problem_make(&problem, q->seed, &q->wish);
    const double begun = now();
    if (ts_arrange_search(&problem.problem, &wish, &result) != TS_OK)
        return (double)NAN;
    const double seconds = now() - begun;
    const bool   proven  = result.end == TS_ARRANGE_PROVEN && result.count > 0;
    if (bytes != NULL)
        *bytes = (double)result.most_bytes;
    ts_arrange_result_close(&result);
    return proven ? seconds : (double)NAN;
}

#define QUESTION(n, b, s)                                                                          \
    {                                                                                              \
        {.accessories = (n), .boxes = (b), .modules = 5, .z_in = 15}, (s)                          \
    }

static const question eight = QUESTION(8, 1, 4), ten = QUESTION(10, 1, 4),
                      twelve = QUESTION(12, 1, 4), fourteen = QUESTION(14, 1, 4),
                      sixteen = QUESTION(16, 1, 2), two_boxes = QUESTION(12, 2, 3);

static double seconds_of_eight(void)
{
    return seconds_of(&eight, NULL);
}

static double seconds_of_ten(void)
{
    return seconds_of(&ten, NULL);
}

static double seconds_of_twelve(void)
{
    return seconds_of(&twelve, NULL);
}

static double seconds_of_fourteen(void)
{
    return seconds_of(&fourteen, NULL);
}

static double seconds_of_sixteen(void)
{
    return seconds_of(&sixteen, NULL);
}

/* Four more accessories, from 10 to 14: by what factor does each lengthen the proof? */
static double growth_each(void)
{
    return pow(seconds_of(&fourteen, NULL) / seconds_of(&ten, NULL), 0.25);
}

static double seconds_of_two_boxes(void)
{
    return seconds_of(&two_boxes, NULL);
}

static double bytes_of_twelve(void)
{
    double bytes = (double)NAN;
    return isnan(seconds_of(&twelve, &bytes)) ? (double)NAN : bytes;
}

static const bench_case cases[] = {
    {"arrange-8", "lightest arrangement of 8 accessories, proven", "s", 0.5, seconds_of_eight},
    {"arrange-10", "the same of 10", "s", 1.5, seconds_of_ten},
    {"arrange-12", "the same of 12", "s", 6.0, seconds_of_twelve},
    {"arrange-14", "the same of 14", "s", 30.0, seconds_of_fourteen},
    {"arrange-16", "the same of 16", "s", 300.0, seconds_of_sixteen},
    {"arrange-growth", "longer by this factor with each accessory, 10 to 14", "", (double)INFINITY,
     growth_each},
    {"arrange-12-two-boxes", "12 accessories on two boxes", "s", 10.0, seconds_of_two_boxes},
    {"arrange-12-bytes", "memory in use at one time for 12", "bytes", 4.0 * 1073741824.0,
     bytes_of_twelve},
};

const bench_group measure_arrange = {cases, sizeof cases / sizeof cases[0]};
