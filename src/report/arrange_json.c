/* How is a search of arrangements written as JSON, by docs/schema/arrange.schema.json? */
#include "report/arrange_report.h"

#include "report/register.h"

#include <math.h>

static void string(ts_json *json, const char *key, const char *value)
{
    ts_json_key(json, key);
    if (value != NULL)
        ts_json_string(json, value);
    else
        ts_json_null(json);
}

static void answers(ts_json *json, const ts_arrange_told *told)
{
    const ts_arrange_result *r = told->result;
    ts_json_key(json, "answers");
    ts_json_array(json);
    for (size_t i = 0; i < r->count; i++) {
        ts_arranged_answer_json(json, told, &r->answers[i], &told->verdicts[i],
                                r->answers[i].mass - r->answers[0].mass);
    }
    ts_json_end(json, ']');
}

static void struck(ts_json *json, const ts_arrange_told *told)
{
    ts_json_key(json, "struck");
    ts_json_array(json);
    for (size_t i = 0; i < told->struck_count; i++) {
        const ts_struck *one = &told->struck[i];
        ts_json_object(json);
        string(json, "spool", told->problem->problem.boxes[one->box].name);
        ts_arrange_take_off_json(json, told, one->box, one->take_off);
        ts_json_count_at(json, "answers", one->answers);
        ts_json_number_at(json, "mass", one->mass);
        string(json, "says", one->says);
        string(json, "at", one->address);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void pair(ts_json *json, const ts_arrange_told *told, const ts_pair_record *p)
{
    static const char *const ends[] = {[TS_PAIR_OPEN]     = "open",
                                       [TS_PAIR_NO_WAY]   = "cannot meet every demand",
                                       [TS_PAIR_BY_BOUND] = "by bound",
                                       [TS_PAIR_SEARCHED] = "searched"};
    const ts_arrange_box    *frame  = &told->problem->problem.boxes[p->box];
    const ts_arrange_choice *choice = &frame->choices[p->choice];
    ts_json_object(json);
    string(json, "spool", frame->name);
    ts_json_number_at(json, "module", told->problem->m_n[choice->module]);
    ts_json_count_at(json, "input_teeth", choice->z_in);
    ts_json_count_at(json, "take_off", choice->take_off);
    string(json, "end", ends[p->end]);
    ts_json_number_at(json, "bound", p->bound);
    ts_json_number_at(json, "found", p->found);
    ts_json_count_at(json, "made", p->labels.made);
    ts_json_count_at(json, "cut_by_bound", p->labels.cut_by_bound);
    ts_json_count_at(json, "cut_by_dominance", p->labels.cut_by_dominance);
    ts_json_count_at(json, "kept", p->labels.kept);
    ts_json_end(json, '}');
}

static void certificate(ts_json *json, const ts_arrange_told *told)
{
    static const char *const ends[] = {[TS_ARRANGE_PROVEN]    = "proven",
                                       [TS_ARRANGE_STOPPED]   = "stopped",
                                       [TS_ARRANGE_NO_MEMORY] = "memory limit"};
    const ts_arrange_result *r      = told->result;
    ts_json_key(json, "certificate");
    ts_json_object(json);
    string(json, "end", ends[r->end]);
    ts_json_number_at(json, "bound", r->bound);
    ts_json_key(json, "others_open");
    ts_json_bool(json, r->others_open);
    ts_json_count_at(json, "made", r->labels.made);
    ts_json_count_at(json, "cut_by_bound", r->labels.cut_by_bound);
    ts_json_count_at(json, "cut_by_dominance", r->labels.cut_by_dominance);
    ts_json_count_at(json, "kept", r->labels.kept);
    ts_json_count_at(json, "joined", r->joins.light);
    ts_json_count_at(json, "fitting", r->joins.fitting);
    ts_json_count_at(json, "first_made", r->first_labels.made);
    ts_json_number_at(json, "first_found", r->first);
    ts_json_count_at(json, "tooth_pairs_rated", told->laws);
    ts_json_key(json, "verified");
    ts_json_bool(json, told->certificate.answer == TS_RULE_NONE && told->certificate.missing == 0 &&
                           told->certificate.not_closed == 0);
    ts_json_key(json, "pairs");
    ts_json_array(json);
    for (size_t i = 0; i < r->pair_count; i++)
        pair(json, told, &r->pairs[i]);
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

static void conflict(ts_json *json, const ts_arrange_told *told)
{
    const ts_conflict *c     = told->conflict;
    const bool         asked = told->result->count == 0 && told->result->end == TS_ARRANGE_PROVEN;
    ts_json_key(json, "conflict_known");
    ts_json_bool(json, asked && c != NULL);
    ts_json_key(json, "conflict");
    ts_json_array(json);
    for (size_t i = 0; c != NULL && c->found && i < c->count; i++)
        ts_conflict_member_json(json, told, &c->members[i]);
    ts_json_end(json, ']');
    ts_conflict_held_json(json, told, asked ? c : NULL);
}

void ts_arrange_json(const ts_arrange_told *told, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    string(&json, "tool", "towershaft");
    string(&json, "version", told->version);
    string(&json, "caution", told->caution);
    string(&json, "sha256", told->sha256);
    string(&json, "added", told->added);
    string(&json, "added_sha256", told->added_sha256);
    ts_json_key(&json, "kept");
    ts_json_array(&json);
    for (size_t i = 0; i < told->kept_count; i++)
        ts_json_string(&json, told->kept[i]);
    ts_json_end(&json, ']');
    string(&json, "title", told->drive->title.text);
    ts_json_key(&json, "chosen");
    if (told->chosen < told->result->count)
        ts_json_integer(&json, (int64_t)told->chosen);
    else
        ts_json_null(&json);
    answers(&json, told);
    struck(&json, told);
    certificate(&json, told);
    conflict(&json, told);
    ts_front_json(told, &json);
    ts_robust_json(told, &json);
    ts_why_not_json(told, &json);
    ts_register_json(&json, told->drive->arrange_assumed, told->drive->arrange_assumed_count);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
