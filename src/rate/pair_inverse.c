/* rate/pair_inverse.c: what does a pair of a rate file ask the other way round? */
#include "rate/inverse_question.h"

void ts_rate_pair_inverse(ts_rate_desk *desk, ts_rated_pair *rated)
{
    const ts_rate_inverse *given   = &rated->given->inverse;
    ts_rated_inverse       inverse = {.desk = desk, .rated = rated, .given = given};

    if (given->node == 0 || desk->failed)
        return;
    if (given->load.value == (int)TS_YES)
        ts_inverse_load(&inverse);
    if (given->life.value == (int)TS_YES)
        ts_inverse_life(&inverse);
    if (given->width.value == (int)TS_YES)
        ts_inverse_width(&inverse);
}
