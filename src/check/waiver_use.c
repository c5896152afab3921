/* check/waiver_use.c: which findings does a waiver of the file cover? */
#include "check/waiver_use.h"

#include "check/desk.h"

#include <string.h>

const ts_waiver_use *ts_check_waiver_uses(const ts_check *check)
{
    return check->desk->waivers;
}

static ts_waiver_end end_of(const ts_waiver *waiver, int32_t today)
{
    if (waiver->until.standing == TS_ABSENT)
        return TS_WAIVER_ENDLESS;
    if (waiver->until.standing != TS_GIVEN || today == INT32_MIN)
        return TS_WAIVER_UNJUDGED;
    return waiver->until.day < today ? TS_WAIVER_ENDED : TS_WAIVER_RUNNING;
}

static int32_t condition_named(const ts_drive *drive, ts_text name)
{
    for (size_t i = 0; i < drive->condition_count; i++)
        if (ts_text_is(name, drive->conditions[i].name))
            return (int32_t)i;
    return -2;
}

/* Findings are shown as address@condition, so a waiver may say it that way too. */
static void read_address(const ts_check *check, ts_text at, ts_waiver_use *use)
{
    const char *sign = at.length > 0 ? memchr(at.at, '@', at.length) : NULL;
    use->condition   = TS_EVERY_CONDITION;
    if (sign != NULL) {
        const size_t  before = (size_t)(sign - at.at);
        const ts_text name   = {sign + 1, at.length - before - 1};
        use->condition       = condition_named(check->drive, name);
        at.length            = before;
        if (use->condition == -2)
            return;
    }
    use->object = ts_source_find(check->source, at, NULL);
}

static bool is_stated(const ts_word *word)
{
    return word->standing == TS_GIVEN && word->text != NULL && word->text[0] != '\0';
}

void ts_waivers_read(ts_check *check)
{
    for (size_t i = 0; i < check->drive->waived_count; i++) {
        const ts_waiver *waiver = &check->drive->waived[i];
        ts_waiver_use   *use    = &check->desk->waivers[i];
        *use                    = (ts_waiver_use){.condition = TS_EVERY_CONDITION};
        use->end                = end_of(waiver, check->today);
        if (is_stated(&waiver->at))
            read_address(check, ts_text_of(waiver->at.text), use);
        use->sound = use->object != 0 && is_stated(&waiver->rule) && is_stated(&waiver->why);
    }
}

static bool covers(const ts_waiver *waiver, const ts_waiver_use *use, const ts_finding *finding)
{
    return use->sound && finding->node == use->object &&
           (use->condition == TS_EVERY_CONDITION || use->condition == finding->condition) &&
           strcmp(waiver->rule.text, finding->rule) == 0;
}

static void apply(ts_waiver_use *use, const ts_waiver *waiver, ts_finding *finding)
{
    use->matched++;
    if (finding->state == TS_NOT_COMPUTABLE) {
        use->unjudged++;
        return;
    }
    if (use->end == TS_WAIVER_ENDED || finding->state == TS_WAIVED)
        return;
    finding->state  = TS_WAIVED;
    finding->waiver = waiver->node;
}

void ts_waivers_apply(ts_check *check)
{
    const ts_drive *drive = check->drive;
    ts_desk        *desk  = check->desk;
    for (size_t i = 0; i < drive->waived_count; i++)
        for (size_t j = 0; j < desk->finding_count; j++)
            if (covers(&drive->waived[i], &desk->waivers[i], &desk->findings[j]))
                apply(&desk->waivers[i], &drive->waived[i], &desk->findings[j]);
}
