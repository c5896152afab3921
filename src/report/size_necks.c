/* Which diameters of necks did sizing choose, and what asked for them?  JSON by
 * docs/schema/size-necks.schema.json. */
#include "report/size_report.h"

#include "report/check_page.h"
#include "report/json_quantity.h"
#include "report/verdict_sentence.h"

#include <math.h>

#define INDENT 4

typedef struct teller {
    const ts_neck_plan *plan;
    const ts_answer    *answer;
    ts_page            *page;
    ts_buffer           text;
} teller;

static const ts_guard *guard_of(const ts_answer *answer, const ts_neck_choice *choice)
{
    return &answer->select->guards[choice->guard];
}

static const char *name_of(const ts_answer *answer, const ts_neck_choice *choice)
{
    return answer->select->necks->items[guard_of(answer, choice)->neck].name;
}

static void show(teller *t, double si, ts_kind kind)
{
    if (isnan(si))
        ts_buffer_add(&t->text, "not known");
    else
        ts_quantity_show(&t->text, si, ts_kind_shown(kind, t->page->units), 4);
}

static void chance(teller *t, double P)
{
    ts_page_short(&t->text, P, 2);
}

static void sentence(teller *t)
{
    const char *said   = t->text.failed ? "" : t->text.bytes;
    const int   behind = said[0] == ' ' ? 2 : 0; /* the name it is about */

    ts_buffer_fill(t->page->out, ' ', (size_t)behind);
    ts_page_wrap(t->page, said + behind, INDENT, behind);
    ts_buffer_clear(&t->text);
}

/* "9.5 mm: breaks at 180 N.m to 250 N.m, too early 1e-5, too late 2e-3" */
static void at(teller *t, const char *when, const ts_neck_at *it)
{
    ts_buffer_print(&t->text, "  %s ", when);
    show(t, it->d, TS_KIND_LENGTH);
    ts_buffer_add(&t->text, ": breaks at ");
    show(t, it->band.low, TS_KIND_TORQUE);
    ts_buffer_add(&t->text, " to ");
    show(t, it->band.high, TS_KIND_TORQUE);
    ts_buffer_add(&t->text, "; chance of too early ");
    chance(t, it->chance.early);
    ts_buffer_add(&t->text, ", of too late ");
    chance(t, it->chance.late);
    sentence(t);
}

static void reason(teller *t, const ts_neck_choice *choice)
{
    const double needs = choice->after.band.high / choice->after.band.low;

    ts_buffer_add(&t->text, "  ");
    switch (choice->need) {
    case TS_NECK_BALANCED:
        ts_buffer_add(&t->text, "set by the balance of both chances, at ");
        show(t, choice->balance, TS_KIND_LENGTH);
        break;
    case TS_NECK_BY_LOAD:
        ts_buffer_add(&t->text, "set by what it must pass: it may not break below ");
        show(t, choice->T_least, TS_KIND_TORQUE);
        break;
    case TS_NECK_BY_WAY:
        ts_buffer_add(&t->text, "set by what its way bears: it must break below ");
        show(t, choice->T_most, TS_KIND_TORQUE);
        break;
    case TS_NECK_BY_SHAPE:
        ts_buffer_add(&t->text, "set by its bore, the shaft beside it, or what is known of its "
                                "notch; both chances balance at ");
        show(t, choice->balance, TS_KIND_LENGTH);
        break;
    default:
        ts_buffer_add(&t->text, "NO DIAMETER HOLDS: it may break from ");
        show(t, choice->T_least, TS_KIND_TORQUE);
        ts_buffer_add(&t->text, " to ");
        show(t, choice->T_most, TS_KIND_TORQUE);
        ts_buffer_add(&t->text, ", a room of 1 to ");
        ts_page_short(&t->text, choice->T_most / choice->T_least, 3);
        ts_buffer_add(&t->text, ", and its band is 1 to ");
        ts_page_short(&t->text, needs, 3);
        ts_buffer_add(&t->text, " wide, or its chance is above the one that is allowed; the "
                                "nearest is the balance");
    }
    sentence(t);
}

static void tell(teller *t, const ts_neck_choice *choice)
{
    ts_buffer_print(&t->text, "%s", name_of(t->answer, choice));
    if (choice->need == TS_NECK_KEPT) {
        ts_buffer_print(&t->text, ": kept, for want of %s", choice->why);
        sentence(t);
        return;
    }
    sentence(t);
    at(t, "before", &choice->before);
    at(t, "after ", &choice->after);
    reason(t, choice);
}

void ts_size_necks_page(const ts_neck_plan *plan, double step, const ts_answer *answer,
                        ts_page *page)
{
    teller t = {.plan = plan, .answer = answer, .page = page};

    ts_buffer_open(&t.text, page->out->allocator);
    ts_sized_title(answer, page);
    ts_buffer_add(&t.text, "Diameters of necks, in steps of ");
    ts_page_short(&t.text, ts_from_si(step, ts_kind_shown(TS_KIND_LENGTH, page->units)), 5);
    ts_buffer_print(&t.text, " %s", ts_kind_shown(TS_KIND_LENGTH, page->units)->name);
    if (!t.text.failed)
        ts_page_heading(page, t.text.bytes);
    ts_buffer_clear(&t.text);
    for (size_t i = 0; i < plan->count; i++)
        tell(&t, &plan->choices[i]);
    if (plan->sized == 0) {
        ts_buffer_add(&t.text, "No neck of this drive is designed: give one a `diameter` in place "
                               "of the band that it `breaks` in.");
        sentence(&t);
    }
    ts_buffer_add(page->out, "\n");
    ts_buffer_add(&t.text, "With these diameters: ");
    ts_verdict_sentence(answer->outcome, &t.text);
    sentence(&t);
    page->out->failed = page->out->failed || t.text.failed;
    ts_buffer_close(&t.text);
}

/* ---- JSON ------------------------------------------------------------------------------------ */

static void json_at(ts_json *json, const char *key, const ts_neck_at *it)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_number_at(json, "diameter", it->d);
    ts_json_number_at(json, "breaks_least", it->band.low);
    ts_json_number_at(json, "breaks_most", it->band.high);
    ts_json_number_at(json, "early", it->chance.early);
    ts_json_number_at(json, "late", it->chance.late);
    ts_json_end(json, '}');
}

static void json_choice(ts_json *json, const ts_answer *answer, const ts_neck_choice *choice)
{
    static const char *const needs[] = {
        [TS_NECK_KEPT] = "kept",  [TS_NECK_BALANCED] = "balance", [TS_NECK_BY_LOAD] = "load",
        [TS_NECK_BY_WAY] = "way", [TS_NECK_BY_SHAPE] = "shape",   [TS_NECK_NONE] = "none holds",
    };
    const ts_neck_choice *c = choice;

    ts_json_object(json);
    ts_json_node(json, answer, "address",
                 answer->select->necks->items[guard_of(answer, c)->neck].neck->node);
    ts_json_string_at(json, "of", name_of(answer, c));
    ts_json_string_at(json, "set_by", needs[c->need]);
    if (c->need == TS_NECK_KEPT) {
        ts_json_string_at(json, "missing", c->why);
    } else {
        ts_json_number_at(json, "least_allowed", c->T_least);
        ts_json_number_at(json, "most_allowed", c->T_most);
        ts_json_number_at(json, "balance", c->balance);
        json_at(json, "before", &c->before);
        json_at(json, "after", &c->after);
    }
    ts_json_end(json, '}');
}

void ts_size_necks_json(const ts_neck_plan *plan, double step, const ts_answer *answer,
                        ts_buffer *out)
{
    ts_json json;

    ts_size_json_head(&json, answer, plan->fits, out);
    ts_json_number_at(&json, "step", step);
    ts_json_count_at(&json, "trials", plan->trials);
    ts_json_key(&json, "necks");
    ts_json_array(&json);
    for (size_t i = 0; i < plan->count; i++)
        json_choice(&json, answer, &plan->choices[i]);
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
