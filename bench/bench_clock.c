/* bench/bench_clock.c: how long does something take, on a machine that does other things too? */
#include "bench.h"

#include <stdint.h>
#include <stdlib.h>
#include <time.h>

enum { TURNS = 15 };
#define SAMPLE_LEAST 2e-3 /* s; a hundred thousand times what the clock resolves */
#define CALLS_MOST   ((size_t)1 << 30)

static double now(clockid_t clock)
{
    struct timespec at;
    clock_gettime(clock, &at);
    return (double)at.tv_sec + 1e-9 * (double)at.tv_nsec;
}

static double sample(clockid_t clock, void (*work)(void *context), void *context, size_t calls)
{
    const double begun = now(clock);
    for (size_t i = 0; i < calls; i++)
        work(context);
    return (now(clock) - begun) / (double)calls;
}

static size_t calls_of_a_sample(clockid_t clock, void (*work)(void *context), void *context)
{
    size_t calls = 1;
    work(context);
    while (calls < CALLS_MOST && sample(clock, work, context, calls) * (double)calls < SAMPLE_LEAST)
        calls *= 2;
    return calls;
}

static int by_size(const void *a, const void *b)
{
    const double x = *(const double *)a;
    const double y = *(const double *)b;
    return (x > y) - (x < y);
}

static double median(double values[TURNS])
{
    qsort(values, TURNS, sizeof values[0], by_size);
    return values[TURNS / 2];
}

static double seconds_by(clockid_t clock, void (*work)(void *context), void *context)
{
    const size_t calls = calls_of_a_sample(clock, work, context);
    double       turns[TURNS];
    for (int i = 0; i < TURNS; i++)
        turns[i] = sample(clock, work, context, calls);
    return median(turns);
}

double bench_seconds(void (*work)(void *context), void *context)
{
    return seconds_by(CLOCK_PROCESS_CPUTIME_ID, work, context);
}

double bench_wall_seconds(void (*work)(void *context), void *context)
{
    return seconds_by(CLOCK_MONOTONIC, work, context);
}

double bench_ratio(void (*one)(void *context), void *one_context, void (*other)(void *context),
                   void *other_context)
{
    const clockid_t own         = CLOCK_PROCESS_CPUTIME_ID;
    const size_t    one_calls   = calls_of_a_sample(own, one, one_context);
    const size_t    other_calls = calls_of_a_sample(own, other, other_context);
    double          turns[TURNS];
    for (int i = 0; i < TURNS; i++) {
        const double over  = sample(own, one, one_context, one_calls);
        const double under = sample(own, other, other_context, other_calls);
        turns[i]           = over / under;
    }
    return median(turns);
}

static void *counted_resize(void *context, void *block, size_t size)
{
    bench_count *count = context;
    if (size == 0) {
        free(block);
        return NULL;
    }
    count->calls++;
    return realloc(block, size);
}

ts_allocator bench_counting_allocator(bench_count *count)
{
    count->calls = 0;
    return (ts_allocator){.resize = counted_resize, .context = count};
}
