/* How are the parts of an arrangement written as JSON? */
#include "report/arrange_report.h"

#include <math.h>

static void string(ts_json *json, const char *key, const char *value)
{
    ts_json_key(json, key);
    if (value != NULL)
        ts_json_string(json, value);
    else
        ts_json_null(json);
}

static const char *accessory(const ts_arrange_told *told, int8_t index)
{
    return index >= 0 ? told->problem->problem.accessories[index].name : NULL;
}

static void shaft(ts_json *json, const ts_arrange_told *told, const ts_arranged_shaft *s)
{
    ts_json_object(json);
    ts_json_count_at(json, "teeth", s->z);
    ts_json_number_at(json, "face", s->width);
    string(json, "front", accessory(told, s->front));
    string(json, "rear", accessory(told, s->rear));
    ts_json_key(json, "step");
    if (s->z_step > 0) {
        ts_json_object(json);
        ts_json_count_at(json, "teeth", s->z_step);
        ts_json_number_at(json, "face", s->step_width);
        ts_json_number_at(json, "module", told->problem->m_n[s->step_module]);
        ts_json_end(json, '}');
    } else {
        ts_json_null(json);
    }
    ts_json_end(json, '}');
}

static void branch(ts_json *json, const ts_arrange_told *told, const char *key,
                   const ts_arranged_branch *b)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (uint32_t i = 0; i < b->count; i++)
        shaft(json, told, &b->shafts[i]);
    ts_json_end(json, ']');
}

static void box(ts_json *json, const ts_arrange_told *told, size_t index, const ts_arranged_box *b)
{
    const ts_arrange_box    *frame  = &told->problem->problem.boxes[index];
    const ts_arrange_choice *choice = &frame->choices[b->choice];
    ts_json_object(json);
    string(json, "spool", frame->name);
    ts_json_number_at(json, "module", told->problem->m_n[choice->module]);
    ts_arrange_take_off_json(json, told, index, choice->take_off);
    ts_json_number_at(json, "wrap", b->wrap);
    ts_json_key(json, "input");
    shaft(json, told, &b->input);
    branch(json, told, "clockwise", &b->branches[0]);
    branch(json, told, "anticlockwise", &b->branches[1]);
    ts_json_end(json, '}');
}

void ts_arranged_boxes_json(ts_json *json, const ts_arrange_told *told, const ts_arrangement *found)
{
    ts_json_key(json, "boxes");
    ts_json_array(json);
    for (size_t b = 0; b < told->problem->problem.box_count; b++)
        if (found->boxes[b].present)
            box(json, told, b, &found->boxes[b]);
    ts_json_end(json, ']');
}

void ts_arranged_verdict_json(ts_json *json, const ts_arranged_verdict *v)
{
    string(json, "verdict", !v->read ? "not computable" : v->holds ? "holds" : "does not hold");
    ts_json_count_at(json, "refusals", v->refusals);
    ts_json_count_at(json, "warnings", v->warnings);
    ts_json_count_at(json, "clashes", v->clashes);
    string(json, "first_refusal", v->first);
    string(json, "at", v->address);
}

static void parts(ts_json *json, const ts_arrange_account *a)
{
    ts_json_key(json, "parts");
    ts_json_object(json);
    ts_json_number_at(json, "boxes", a->boxes);
    ts_json_number_at(json, "pads", a->pads);
    ts_json_number_at(json, "shafts", a->shafts);
    ts_json_number_at(json, "idlers", a->idlers);
    ts_json_number_at(json, "steps", a->steps);
    ts_json_number_at(json, "gears", a->gears);
    ts_json_number_at(json, "casing", a->casing);
    ts_json_end(json, '}');
}

void ts_arranged_answer_json(ts_json *json, const ts_arrange_told *told,
                             const ts_arrangement *found, const ts_arranged_verdict *verdict,
                             double regret)
{
    const ts_arrange_account a = ts_arrange_searched(told, found);
    ts_json_object(json);
    ts_json_number_at(json, "mass", a.mass);
    parts(json, &a);
    ts_json_number_at(json, "mass_widened", verdict->account.mass);
    ts_json_count_at(json, "widened_steps", verdict->widened);
    ts_json_number_at(json, "wrap", a.wrap);
    ts_json_number_at(json, "wrap_counts", a.for_wrap);
    ts_json_number_at(json, "lowered", a.lowered);
    ts_json_number_at(json, "lowered_counts", a.for_servicing);
    ts_json_number_at(json, "sum", a.sum);
    ts_json_number_at(json, "regret", regret);
    ts_json_count_at(json, "idlers", a.idler_count);
    ts_json_count_at(json, "steps", a.step_count);
    ts_arranged_verdict_json(json, verdict);
    ts_arrange_changes_json(told, json, found, verdict->account.mass);
    ts_arranged_boxes_json(json, told, found);
    ts_json_end(json, '}');
}

void ts_conflict_member_json(ts_json *json, const ts_arrange_told *told,
                             const ts_conflict_member *m)
{
    ts_buffer text;
    ts_buffer_open(&text, json->out->allocator);
    ts_demand_says(told, &m->demand, &text);
    ts_json_object(json);
    ts_json_key(json, "demand");
    ts_json_text(json, (ts_text){text.bytes, text.length});
    ts_json_number_at(json, "from", m->from);
    ts_json_number_at(json, "to", m->to);
    ts_json_key(json, "at_most");
    ts_json_bool(json, m->at_most);
    ts_json_end(json, '}');
    json->out->failed = json->out->failed || text.failed;
    ts_buffer_close(&text);
}

void ts_conflict_held_json(ts_json *json, const ts_arrange_told *told, const ts_conflict *c)
{
    ts_json_key(json, "conflict_held");
    ts_json_array(json);
    for (size_t i = 0; c != NULL && c->found && i < c->held_count; i++) {
        ts_buffer text;
        ts_buffer_open(&text, json->out->allocator);
        ts_demand_says(told, &c->held[i], &text);
        ts_json_text(json, (ts_text){text.bytes, text.length});
        json->out->failed = json->out->failed || text.failed;
        ts_buffer_close(&text);
    }
    ts_json_end(json, ']');
}
