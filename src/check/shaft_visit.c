/* check/shaft_visit.c: what do the rules about the safety of a shaft ask alike? */
#include "check/shaft_visit.h"

#include "check/bearing_visit.h"

#include <math.h>

void ts_each_safety(ts_check *check, const ts_measure *limit, const char *name, const char *symbol,
                    void (*judge)(ts_check *check, const ts_line *line, double least))
{
    if (check->lines != NULL && check->lines->count > 0 &&
        !ts_limit_known(check, limit, name, symbol, TS_KIND_NUMBER))
        return;
    for (uint32_t l = 0; check->lines != NULL && l < check->lines->count; l++)
        if (ts_line_is_known(&check->lines->lines[l]))
            judge(check, &check->lines->lines[l], limit->value);
    ts_skip(check, "no shaft is loaded");
}

void ts_thicken(ts_check *check, ts_finding *finding, const ts_line_notch *notch, double S,
                double least)
{
    const double d = notch->section.d;

    ts_remedy(check, finding, "make it about %s thick there, where it is %s",
              ts_shown_outward(check, d * cbrt(least / S), TS_KIND_LENGTH, 1),
              ts_shown(check, d, TS_KIND_LENGTH));
}
