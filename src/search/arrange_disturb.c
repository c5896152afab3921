/* search/arrange_disturb.c: which problem is it with other loads, and with narrower bands? */
#include "search/arrange_disturb.h"

#include <math.h>

bool ts_arrange_disturb(const ts_arrange_problem *problem, const ts_arrange_problem *bands,
                        double factor, double narrower, ts_arena *arena, ts_arrange_problem *out)
{
    const size_t          n = problem->accessory_count, cs = problem->condition_count;
    ts_arrange_accessory *as    = TS_TAKE(arena, ts_arrange_accessory, n);
    double               *lists = TS_TAKE(arena, double, 3 * n * cs);
    if (as == NULL || lists == NULL)
        return false;
    for (size_t a = 0; a < n; a++) {
        const ts_arrange_accessory *from = &problem->accessories[a], *band = &bands->accessories[a];
        double                     *least = &lists[3 * a * cs], *most = least + cs;
        double                     *power = most + cs;
        as[a]                             = *from;
        for (size_t c = 0; c < cs; c++) {
            const double low = band->speed_least[c] > 0.0 ? band->speed_least[c] + narrower : 0.0;
            least[c]         = fmax(from->speed_least[c], low);
            most[c]          = fmin(from->speed_most[c], band->speed_most[c] - narrower);
            power[c]         = from->power[c] * factor;
        }
        as[a].speed_least = least;
        as[a].speed_most  = most;
        as[a].power       = power;
    }
    *out             = *problem;
    out->accessories = as;
    return true;
}
