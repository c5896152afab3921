/* How many single failures bring each effect about?  In a few lines: `towershaft effects` tells
 * every one of them, with the way that proves it. */
#include "report/check_page.h"
#include "report/check_sections.h"
#include "report/effects_report.h"
#include "report/json_quantity.h"

typedef struct tally {
    uint32_t sure, doubt;
} tally;

static tally count(const ts_effects *effects, const ts_effect *effect)
{
    tally out = {0, 0};

    for (uint32_t i = 0; i < effects->failure_count; i++) {
        const ts_goes goes = ts_effect_of(effects, effect, &effects->outcomes[i]);
        out.sure += goes == TS_STOPS;
        out.doubt += goes == TS_IN_DOUBT;
    }
    return out;
}

void ts_check_effects(const ts_answer *answer, ts_page *page)
{
    const ts_effects *effects = answer->effects;
    ts_buffer         says;

    if (effects == NULL || effects->failure_count == 0)
        return;
    ts_page_heading(page, "What stops when one part fails (towershaft effects tells every failure, "
                          "its way, and which pairs do)");
    ts_buffer_open(&says, answer->allocator);
    ts_buffer_print(&says, "of %u single failures", effects->failure_count);
    for (uint32_t e = 0; e < effects->effect_count; e++) {
        const tally n = count(effects, &effects->effects[e]);
        ts_buffer_add(&says, e == 0 ? ": " : "; ");
        ts_effects_effect(&effects->effects[e], &says);
        ts_buffer_print(&says, " for sure after %u", n.sure);
        if (n.doubt > 0)
            ts_buffer_print(&says, " and perhaps after %u", n.doubt);
    }
    ts_page_wrap_made(page, &says, 2, 0);
}

void ts_json_check_effects(ts_json *json, const ts_answer *answer)
{
    const ts_effects *effects = answer->effects;

    if (effects == NULL)
        return;
    ts_json_key(json, "effects");
    ts_json_object(json);
    ts_json_integer_at(json, "failures", effects->failure_count);
    ts_json_key(json, "causes");
    ts_json_array(json);
    for (uint32_t e = 0; e < effects->effect_count; e++) {
        const tally n = count(effects, &effects->effects[e]);
        ts_buffer   name;
        ts_buffer_open(&name, answer->allocator);
        ts_effects_effect(&effects->effects[e], &name);
        ts_json_object(json);
        ts_json_key(json, "effect");
        ts_json_made(json, &name);
        ts_buffer_close(&name);
        ts_json_integer_at(json, "sure", n.sure);
        ts_json_integer_at(json, "in_doubt", n.doubt);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}
