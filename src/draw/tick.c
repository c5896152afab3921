/* draw/tick.c: which multiples of a step stand on a scale? */
#include "draw/tick.h"

#include <math.h>

#define MOST 10000.0

ts_ticks ts_ticks_within(double low, double high, double step)
{
    if (!isfinite(low) || !isfinite(high) || !isfinite(step) || !(step > 0.0))
        return (ts_ticks){.step = 1.0};
    const double first = ceil(low / step), last = floor(high / step);
    return (ts_ticks){first, step, last < first ? 0 : (int)fmin(last - first + 1.0, MOST)};
}

double ts_tick_at(ts_ticks ticks, int i)
{
    return (ticks.first + i) * ticks.step;
}

int ts_decade_of(double value)
{
    return isfinite(value) && value > 0.0 ? (int)floor(log10(value)) : 0;
}
