/* element/hunting.c: which teeth meet, and which pair nearby lets every tooth meet every other? */
#include "element/hunting.h"

#include "base/assert.h"

#include <stdlib.h>

static const ts_formula f_hunt_formula = {
    .symbol  = "f_hunt",
    .meaning = "frequency at which the same two teeth meet",
    .unit    = "Hz",
    .text    = "n_1*g/z_2",
    .source  = "derived: one meeting of the two teeth in lcm(z_1, z_2) engagements",
};

ts_hunting ts_hunting_of(int z_1, int z_2)
{
    TS_ASSERT(z_1 > 0 && z_2 > 0);
    const int g = (int)ts_gcd((uint64_t)z_1, (uint64_t)z_2);

    return (ts_hunting){
        .gcd        = g,
        .hunts      = g == 1,
        .turns_1    = z_2 / g,
        .turns_2    = z_1 / g,
        .meshes     = (int64_t)z_1 * (z_2 / g),
        .meets_1    = z_2 / g,
        .meets_2    = z_1 / g,
        .assemblies = g,
        .share      = (double)g / ((double)z_1 * (double)z_2),
    };
}

bool ts_teeth_meet(int z_1, int z_2, int i_1, int i_2)
{
    const int g = (int)ts_gcd((uint64_t)z_1, (uint64_t)z_2);

    return (i_1 - i_2) % g == 0;
}

double ts_hunting_frequency(double n_1, int teeth_1, int teeth_2, ts_workings *workings)
{
    const double g = (double)ts_gcd((uint64_t)teeth_1, (uint64_t)teeth_2), z_2 = teeth_2;

    return TS_STEP(workings, f_hunt_formula, n_1 * g / z_2, n_1, g, z_2);
}

static int64_t size_of(int64_t value)
{
    return value < 0 ? -value : value;
}

/* |a| against |b|, exactly: cross products of tooth-number ratios fit 64 bits by far, and where
 * they would not, the correctly rounded values decide. */
static int compare_sizes(ts_rational a, ts_rational b)
{
    int64_t left, right;

    if (__builtin_mul_overflow(size_of(a.over), b.under, &left) ||
        __builtin_mul_overflow(size_of(b.over), a.under, &right)) {
        const double x = ts_rational_value(a), y = ts_rational_value(b);
        const double p = x < 0.0 ? -x : x, q = y < 0.0 ? -y : y;
        return (p > q) - (p < q);
    }
    return (left > right) - (left < right);
}

static int compare_pairs(const ts_tooth_pair *a, const ts_tooth_pair *b)
{
    const int by_error = compare_sizes(a->error, b->error);

    if (by_error != 0)
        return by_error;
    if (a->change != b->change)
        return a->change - b->change;
    return a->z_1 != b->z_1 ? a->z_1 - b->z_1 : a->z_2 - b->z_2;
}

/* Keeps the best `room` of all that are offered, in order. */
static void offer(ts_tooth_pair *out, size_t *kept, size_t room, const ts_tooth_pair *pair)
{
    size_t place = *kept;

    while (place > 0 && compare_pairs(pair, &out[place - 1]) < 0)
        place--;
    if (place >= room)
        return;
    if (*kept < room)
        ++*kept;
    for (size_t i = *kept - 1; i > place; i--)
        out[i] = out[i - 1];
    out[place] = *pair;
}

size_t ts_hunting_pairs(int z_1, int z_2, int reach, int least, ts_tooth_pair *out, size_t room)
{
    size_t found = 0, kept = 0;
    TS_ASSERT(z_1 > 0 && z_2 > 0 && reach >= 0);

    for (int a = z_1 - reach; a <= z_1 + reach; a++) {
        for (int b = z_2 - reach; b <= z_2 + reach; b++) {
            if (a < least || b < least || a < 1 || b < 1 || ts_gcd((uint64_t)a, (uint64_t)b) != 1)
                continue;
            const int64_t       under = (int64_t)z_2 * a;
            const ts_tooth_pair pair  = {
                 .z_1    = a,
                 .z_2    = b,
                 .error  = ts_rational_of((int64_t)b * z_1 - under, under),
                 .change = abs(a - z_1) + abs(b - z_2),
            };
            found++;
            offer(out, &kept, room, &pair);
        }
    }
    return found;
}
