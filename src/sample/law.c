/* How is one value distributed? */
#include "sample/law.h"

#include "base/normal_law.h"

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#define STEP_OUTSIDE 0.05 /* of a law without ends, outside of its outermost steps */

static bool has_ends(const ts_sample_law *law)
{
    return isfinite(law->least) && isfinite(law->most);
}

/* The normal law behind a log-normal one: mean and deviation of the logarithm, from those of the
 * value (by the moments of exp(N), exact). */
static void logarithms(const ts_sample_law *law, double *mean, double *deviation)
{
    const double spread = law->deviation / law->mean;

    *deviation = sqrt(log1p(spread * spread));
    *mean      = log(law->mean) - 0.5 * *deviation * *deviation;
}

const char *ts_law_fault(const ts_sample_law *law)
{
    const bool bell = law->law == TS_LAW_NORMAL || law->law == TS_LAW_LOG_NORMAL;

    if (isnan(law->least) || isnan(law->most) || !(law->least < law->most))
        return "the least value is not below the most";
    if (bell && !(law->deviation > 0.0))
        return "the deviation is not above 0";
    if (bell && !isfinite(law->mean))
        return "there is no mean";
    if (law->law == TS_LAW_LOG_NORMAL && !(law->mean > 0.0))
        return "the mean of a log-normal law is not above 0";
    if (law->law == TS_LAW_LOG_NORMAL && !(law->most > 0.0))
        return "nothing of a log-normal law lies at or below 0";
    if (!bell && !has_ends(law))
        return "the law has no two ends";
    if (law->law == TS_LAW_TRIANGLE && !(law->mode >= law->least && law->mode <= law->most))
        return "the mode lies outside of the ends";
    if (law->law == TS_LAW_WHOLE &&
        (law->least != floor(law->least) || law->most != floor(law->most)))
        return "the ends are not whole";
    return NULL;
}

/* The share of a whole law between `low` and `high` standard places.  Far out in the upper tail
 * shares run into 1 and lose all digits, so that is mirrored. */
static double cut_normal(double low, double high, double share)
{
    if (low > 0.0)
        return -cut_normal(-high, -low, 1.0 - share);
    const double below = isfinite(low) ? ts_normal_share(low) : 0.0;
    const double whole = isfinite(high) ? ts_normal_share(high) : 1.0;

    return fmin(fmax(ts_normal_place(below + share * (whole - below)), low), high);
}

/* Places of a bell whose logarithm or value is normal. */
static double bell_place(const ts_sample_law *law, double share)
{
    const bool logs = law->law == TS_LAW_LOG_NORMAL;
    double     mean = law->mean, deviation = law->deviation, low = law->least, high = law->most;

    if (logs) {
        logarithms(law, &mean, &deviation);
        low  = low > 0.0 ? log(low) : (double)-INFINITY;
        high = log(high);
    }
    if (share <= 0.0)
        return logs && !isfinite(low) ? 0.0 : law->least;
    if (share >= 1.0)
        return law->most;
    const double z = cut_normal((low - mean) / deviation, (high - mean) / deviation, share);
    const double x = mean + deviation * z;
    return fmin(fmax(logs ? exp(x) : x, law->least), law->most);
}

static double triangle_place(const ts_sample_law *law, double share)
{
    const double width = law->most - law->least, up = law->mode - law->least;
    const double down = law->most - law->mode;

    return share * width <= up ? law->least + sqrt(share * width * up)
                               : law->most - sqrt((1.0 - share) * width * down);
}

double ts_law_place(const ts_sample_law *law, double share)
{
    switch (law->law) {
    case TS_LAW_NORMAL:
    case TS_LAW_LOG_NORMAL:
        return bell_place(law, share);
    case TS_LAW_TRIANGLE:
        return triangle_place(law, share);
    case TS_LAW_WHOLE:
        return fmin(law->least + floor(share * (law->most - law->least + 1.0)), law->most);
    case TS_LAW_UNIFORM:
    case TS_LAW_COUNT:
        break;
    }
    return share >= 1.0 ? law->most : law->least + share * (law->most - law->least);
}

double ts_law_step_share(const ts_sample_law *law, unsigned step, unsigned steps)
{
    const double outside = has_ends(law) ? 0.0 : STEP_OUTSIDE;

    return outside + (1.0 - 2.0 * outside) * (double)step / (double)(steps - 1);
}
