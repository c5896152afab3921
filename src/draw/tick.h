/* draw/tick.h: which multiples of a step stand on a scale? */
#ifndef TS_DRAW_TICK_H
#define TS_DRAW_TICK_H

/* Multiples of a step, from first * step on. */
typedef struct ts_ticks {
    double first, step;
    int    count;
} ts_ticks;

/* Those from `low` to `high`, counted and not added up, so that the last is as exact as the first.
 * None where a limit or the step is not finite or the step is not above 0; never more than 10,000,
 * which no picture could show. */
ts_ticks ts_ticks_within(double low, double high, double step);

/* The i-th, i < count. */
double ts_tick_at(ts_ticks ticks, int i);

/* The greatest e with 10^e <= value, of which a value just below a power of ten may have one more,
 * as log10 rounds; 0 where value is not finite or not above 0. */
int ts_decade_of(double value);

#endif
