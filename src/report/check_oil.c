/* How much does the drive lose, how warm is its oil where it is warmest, and do the rules about
 * it hold?  In a few lines: `towershaft oil` tells every place. */
#include "report/check_page.h"
#include "report/check_sections.h"
#include "report/json_quantity.h"

#include <math.h>

static bool is_oil_rule(const char *id)
{
    return id[0] == 'J';
}

/* The condition in which a drive loses most by the first method; TS_NOWHERE: it never does. */
static uint32_t hottest(const ts_heat *heat, uint32_t d)
{
    uint32_t at = TS_NOWHERE;

    for (uint32_t c = 0; c < heat->motion->condition_count; c++) {
        const double P = ts_heat_state_at(heat, 0, c, d)->heat;
        if (P > 0.0 && (at == TS_NOWHERE || P > ts_heat_state_at(heat, 0, at, d)->heat))
            at = c;
    }
    return at;
}

static double share_lost(const ts_heat_state *state)
{
    const double most = fmax(fabs(state->P_spool), fabs(state->P_pads));

    return most > 0.0 ? state->heat / most : (double)NAN;
}

static const char *spool_of(const ts_answer *answer, uint32_t d)
{
    return answer->drive->spools[answer->drive->drive[d].spool].name;
}

/* ---- for a terminal -------------------------------------------------------------------------- */

typedef struct teller {
    const ts_answer *answer;
    ts_page         *page;
    ts_buffer       *says;
} teller;

static void add_value(const teller *t, double si, ts_kind kind)
{
    ts_page_value_text(t->page, t->says, si, kind, 3);
    ts_buffer_print(t->says, " %s", ts_kind_shown(kind, t->page->units)->name);
}

static void add_share(const teller *t, const ts_heat_state *state)
{
    const double share = share_lost(state);

    if (isnan(share))
        return;
    ts_buffer_add(t->says, ", ");
    ts_buffer_fixed(t->says, 100.0 * share, 1);
    ts_buffer_add(t->says, " %");
}

static void add_losses(const teller *t, uint32_t d)
{
    const ts_heat *heat = t->answer->heat;
    const uint32_t c    = hottest(heat, d);

    if (c == TS_NOWHERE) {
        ts_buffer_add(t->says, "loses nothing");
        return;
    }
    ts_buffer_add(t->says, "loses ");
    add_value(t, ts_heat_state_at(heat, 0, c, d)->heat, TS_KIND_POWER);
    add_share(t, ts_heat_state_at(heat, 0, c, d));
    ts_buffer_print(t->says, " at %s (by the second method ", t->answer->drive->conditions[c].name);
    add_value(t, ts_heat_state_at(heat, 1, c, d)->heat, TS_KIND_POWER);
    add_share(t, ts_heat_state_at(heat, 1, c, d));
    ts_buffer_add(t->says, "), with ");
    add_value(t, ts_heat_state_at(heat, 0, c, d)->Q, TS_KIND_VOLUME_FLOW);
    ts_buffer_add(t->says, " of oil");
}

static void add_worst(const teller *t, const char *before, const ts_heat_worst *worst, ts_kind kind,
                      ts_measure most)
{
    if (worst->condition < 0)
        return;
    ts_buffer_add(t->says, before);
    add_value(t, worst->value, kind);
    ts_buffer_print(t->says, " at %s", t->answer->drive->conditions[worst->condition].name);
    if (!ts_measure_known(most))
        return;
    ts_buffer_add(t->says, " (at most ");
    add_value(t, most.value, kind);
    ts_buffer_add(t->says, ")");
}

static void add_rules(const teller *t)
{
    const ts_check_outcome *outcome = t->answer->outcome;
    size_t                  count   = 0;

    ts_buffer_add(t->says, "rules of the oil (J): ");
    for (size_t i = 0; i < outcome->finding_count; i++) {
        const ts_finding *one = &outcome->findings[i];
        if (!is_oil_rule(one->rule))
            continue;
        ts_buffer_print(t->says, "%s%s %s", count++ > 0 ? ", " : "", one->rule,
                        ts_state_name(one->state));
    }
    if (count == 0)
        ts_buffer_add(t->says, "all that apply hold");
}

void ts_check_oil(const ts_answer *answer, ts_page *page)
{
    const ts_heat *heat = answer->heat;
    ts_buffer      says;
    const teller   t = {answer, page, &says};

    if (heat == NULL || answer->drive->drive_count == 0)
        return;
    ts_page_heading(page, "Oil and heat where they are worst, the larger of two methods where one "
                          "is told (towershaft oil tells every place)");
    for (uint32_t d = 0; d < answer->drive->drive_count && heat->missing == NULL; d++) {
        ts_buffer_open(&says, answer->allocator);
        ts_buffer_print(&says, "%s drive: ", spool_of(answer, d));
        add_losses(&t, d);
        add_worst(&t, "; it warms by ", &heat->rises[d], TS_KIND_TEMPERATURE_DIFFERENCE,
                  answer->drive->oil.rise);
        add_worst(&t, " and leaves with ", &heat->leavings[d], TS_KIND_TEMPERATURE,
                  answer->drive->oil.hottest);
        ts_page_wrap_made(page, &says, 2, 0);
    }
    ts_buffer_open(&says, answer->allocator);
    if (heat->missing != NULL)
        ts_buffer_print(&says, "not computed, for %s is not known; ", heat->missing);
    add_rules(&t);
    ts_page_wrap_made(page, &says, 2, 0);
}

/* ---- JSON ------------------------------------------------------------------------------------ */

static void both(ts_json *json, const char *key, double one, double other)
{
    ts_json_key(json, key);
    ts_json_array(json);
    ts_json_rounded(json, one);
    ts_json_rounded(json, other);
    ts_json_end(json, ']');
}

static void worst(ts_json *json, const ts_answer *answer, const char *key,
                  const ts_heat_worst *what, ts_measure most)
{
    if (what->condition < 0)
        return;
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_rounded_at(json, "value", what->value);
    ts_json_rounded_at(json, "limit", ts_measure_known(most) ? most.value : (double)NAN);
    ts_json_string_at(json, "condition", answer->drive->conditions[what->condition].name);
    ts_json_end(json, '}');
}

static void drive_of(ts_json *json, const ts_answer *answer, uint32_t d)
{
    const ts_heat *heat = answer->heat;
    const uint32_t c    = hottest(heat, d);

    ts_json_object(json);
    ts_json_string_at(json, "spool", spool_of(answer, d));
    if (c != TS_NOWHERE) {
        const ts_heat_state *one   = ts_heat_state_at(heat, 0, c, d);
        const ts_heat_state *other = ts_heat_state_at(heat, 1, c, d);
        ts_json_string_at(json, "condition", answer->drive->conditions[c].name);
        both(json, "heat", one->heat, other->heat);
        both(json, "lost", share_lost(one), share_lost(other));
        ts_json_rounded_at(json, "flow", one->Q);
    }
    worst(json, answer, "rise", &heat->rises[d], answer->drive->oil.rise);
    worst(json, answer, "leaves", &heat->leavings[d], answer->drive->oil.hottest);
    ts_json_end(json, '}');
}

void ts_json_check_oil(ts_json *json, const ts_answer *answer)
{
    if (answer->heat == NULL)
        return;
    ts_json_key(json, "oil");
    ts_json_object(json);
    if (answer->heat->missing != NULL)
        ts_json_string_at(json, "missing", answer->heat->missing);
    ts_json_key(json, "drives");
    ts_json_array(json);
    for (uint32_t d = 0; d < answer->drive->drive_count && answer->heat->missing == NULL; d++)
        drive_of(json, answer, d);
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}
