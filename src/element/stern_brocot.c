/* element/stern_brocot.c: which pairs of whole numbers come nearest to a ratio? */
#include "element/stern_brocot.h"

#include <math.h>

ts_mediant_walk ts_mediant_begin(void)
{
    return (ts_mediant_walk){.low = {0, 1}, .high = {1, 0}, .here = {1, 1}, .ended = false};
}

/* `side`: +1 when the target lies above `here`, -1 below, 0 when it is `here`. */
static bool step(ts_mediant_walk *walk, int side)
{
    ts_rational next;

    if (walk->ended || side == 0) {
        walk->ended = true;
        return false;
    }
    if (side > 0)
        walk->low = walk->here;
    else
        walk->high = walk->here;
    if (__builtin_add_overflow(walk->low.over, walk->high.over, &next.over) ||
        __builtin_add_overflow(walk->low.under, walk->high.under, &next.under)) {
        walk->ended = true;
        return false;
    }
    walk->here = next;
    return true;
}

bool ts_mediant_step(ts_mediant_walk *walk, ts_rational target)
{
    const ts_rational quotient = ts_rational_over(target, walk->here);

    if (!ts_rational_valid(quotient)) {
        walk->ended = true;
        return false;
    }
    return step(walk, (quotient.over > quotient.under) - (quotient.over < quotient.under));
}

/* The comparison is exact as long as target*under is (53 bits), which holds for tooth numbers. */
bool ts_mediant_step_to(ts_mediant_walk *walk, double target)
{
    const double aim = target * (double)walk->here.under, here = (double)walk->here.over;

    return step(walk, (aim > here) - (aim < here));
}

static double miss(ts_rational ratio, double target)
{
    return fabs((double)ratio.over / (double)ratio.under - target);
}

ts_rational ts_nearest_ratio(double target, int over_most, int under_most)
{
    ts_mediant_walk walk = ts_mediant_begin();
    ts_rational     best = {0, 0};

    if (!(target > 0.0) || isinf(target) || over_most < 1 || under_most < 1)
        return best;
    do {
        if (walk.here.over > over_most || walk.here.under > under_most)
            break;
        if (best.under == 0 || miss(walk.here, target) < miss(best, target))
            best = walk.here;
    } while (ts_mediant_step_to(&walk, target));
    return best;
}
