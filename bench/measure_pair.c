/* bench/measure_pair.c: how long does the geometry of one gear pair take, and its outline? */
#include "base/arena.h"
#include "bench.h"
#include "element/cylindrical_pair.h"
#include "element/tooth_outline.h"

#include <math.h>

/* Another profile shift each time, so that nothing can be remembered. */
typedef struct series {
    ts_cylindrical_pair_input in;
    ts_cylindrical_pair       pair;
} series;

static series helical_pair(void)
{
    return (series){.in = {.z_1     = 27,
                           .z_2     = 58,
                           .m_n     = 2e-3,
                           .alpha_n = 0.39,
                           .beta    = 0.3,
                           .b_1     = 18e-3,
                           .b_2     = 16e-3,
                           .x_2     = 0.1,
                           .tip     = TS_TIP_CLEARANCE,
                           .rack    = {1.0, 1.25, 0.3}}};
}

static void solve(void *context)
{
    series *s = context;

    s->in.x_1 = fmod(s->in.x_1 + 1e-4, 0.4);
    ts_cylindrical_pair_solve(&s->in, &s->pair, NULL);
    bench_keep(&s->pair);
}

static double seconds_of_a_pair(void)
{
    series s = helical_pair();

    return bench_seconds(solve, &s);
}

static void trace(void *context)
{
    series              *s     = context;
    ts_arena            *arena = ts_arena_open(NULL);
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  gear;
    ts_tooth_shape       shape;

    ts_cylindrical_pair_gear(&s->pair, TS_GEAR_1, &frame, &gear);
    ts_tooth_outline(&frame, &gear, TS_OUTLINE_CHORD_ERROR, arena, &shape);
    bench_keep(&shape);
    ts_arena_close(arena);
}

static double pairs_in_the_time_of_an_outline(void)
{
    series s = helical_pair();

    solve(&s);
    return bench_ratio(trace, &s, solve, &s);
}

static const bench_case cases[] = {
    {"pair-solve", "geometry of one helical pair, without workings", "s", 2e-6, seconds_of_a_pair},
    {"tooth-outline", "outline of one tooth to 1 um, over the geometry of a pair", "1",
     (double)INFINITY, pairs_in_the_time_of_an_outline},
};

const bench_group measure_pair = {cases, sizeof cases / sizeof cases[0]};
