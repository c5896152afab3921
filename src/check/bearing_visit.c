/* check/bearing_visit.c: which bearings are there to be judged, and what are they called? */
#include "check/bearing_visit.h"

void ts_each_bearing(ts_check *check, double limit,
                     void (*judge)(ts_check *check, const ts_bearing_at *at, double limit))
{
    for (uint32_t l = 0; check->lines != NULL && l < check->lines->count; l++) {
        const ts_line *line = &check->lines->lines[l];
        for (int k = 0; k < line->bearing_count && ts_line_is_known(line); k++) {
            const ts_bearing_at at = {line, &line->bearings[k], l, k};
            if (at.bearing->there && at.bearing->fault == NULL)
                judge(check, &at, limit);
        }
    }
}

const char *ts_bearing_name(ts_check *check, const ts_bearing_at *at)
{
    const ts_line_bearing *b = at->bearing;
    return ts_phrase(
        check, "the %s bearing of %s (%s%s%s, %s x %s%s)", b->place, at->line->name,
        ts_bearing_form_name(b->bearing.form), b->series != NULL ? " " : "",
        b->series != NULL ? b->series : "", ts_shown(check, b->bearing.d, TS_KIND_LENGTH),
        ts_shown(check, b->bearing.D, TS_KIND_LENGTH), b->bearing.rows > 1 ? ", two rows" : "");
}

ts_level ts_bearing_level(ts_level level, const ts_line_bearing *bearing)
{
    return level == TS_REFUSE && !bearing->given ? TS_WARN : level;
}

const char *ts_bearing_remedy(ts_check *check, const ts_bearing_at *at, double more)
{
    return ts_phrase(check,
                     "choose one whose capacity is about %s, where it is %s, or let `towershaft "
                     "size --choose bearings` find it",
                     ts_shown_outward(check, at->bearing->ability.C_r * more, TS_KIND_FORCE, 1),
                     ts_shown(check, at->bearing->ability.C_r, TS_KIND_FORCE));
}
