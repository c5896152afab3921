/* apps/serve/stopwatch.h: ms of a clock that never goes back, with its fractions. */
#ifndef TS_APPS_SERVE_STOPWATCH_H
#define TS_APPS_SERVE_STOPWATCH_H

#include <time.h>

static inline double stopwatch_ms(void)
{
    struct timespec now;

    (void)clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}

#endif
