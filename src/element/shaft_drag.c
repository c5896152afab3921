/* element/shaft_drag.c: what do seals, air and the oil at its teeth ask of a shaft that turns? */
#include "element/shaft_drag.h"

#include <math.h>

double ts_shaft_drag_of(const ts_shaft_drag *drag, ts_drag_kind kind, double n)
{
    switch (kind) {
    case TS_DRAG_SEAL:
        return drag->seal;
    case TS_DRAG_AIR:
        return drag->wind * pow(n, 1.8);
    case TS_DRAG_TEETH:
        return drag->thrown * n * fmin(n, drag->full) + drag->churn * exp(drag->rate * n);
    case TS_DRAG_KINDS:
        break;
    }
    return (double)NAN;
}

double ts_shaft_drag_at(const ts_shaft_drag *drag, double n)
{
    double T = 0.0;

    for (int kind = 0; kind < TS_DRAG_KINDS; kind++)
        T += ts_shaft_drag_of(drag, (ts_drag_kind)kind, n);
    return T;
}
