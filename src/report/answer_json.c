/* How is the answer written as JSON? */
#include "report/answer_json.h"

#include "report/check_sections.h"

#include "report/verdict_sentence.h"

static void head(ts_json *json, const ts_answer *answer)
{
    static const char *const verdicts[] = {"holds", "does not hold", "not computable"};
    ts_json_head(json, answer);
    ts_json_string_at(json, "verdict", verdicts[answer->outcome->verdict]);
    ts_buffer says;
    ts_buffer_open(&says, answer->allocator);
    ts_verdict_sentence(answer->outcome, &says);
    ts_json_key(json, "says");
    ts_json_made(json, &says);
    ts_buffer_close(&says);
    ts_json_string_at(json, "title", answer->drive->title.text);
    ts_json_string_at(json, "revision", answer->drive->revision.text);
}

static void counts(ts_json *json, const ts_check_outcome *outcome)
{
    ts_json_key(json, "counts");
    ts_json_object(json);
    ts_json_count_at(json, "judgements", outcome->judgement_count);
    ts_json_count_at(json, "passed", outcome->passed);
    ts_json_count_at(json, "refuse", outcome->open[TS_REFUSE]);
    ts_json_count_at(json, "warn", outcome->open[TS_WARN]);
    ts_json_count_at(json, "note", outcome->open[TS_NOTE]);
    ts_json_count_at(json, "waived", outcome->waived);
    ts_json_count_at(json, "not_computable", outcome->not_computable);
    ts_json_count_at(json, "rules_run", outcome->rules_run);
    ts_json_count_at(json, "rules_skipped", outcome->rules_skipped);
    ts_json_end(json, '}');
}

static void conditions(ts_json *json, const ts_answer *answer)
{
    ts_json_key(json, "conditions");
    ts_json_array(json);
    for (size_t c = 0; c < answer->drive->condition_count; c++) {
        const ts_condition *condition = &answer->drive->conditions[c];
        ts_json_object(json);
        ts_json_string_at(json, "name", condition->name);
        if (condition->events.standing == TS_GIVEN) {
            ts_json_key(json, "events");
            ts_json_integer(json, condition->events.value);
        }
        if (ts_measure_known(condition->hours)) {
            ts_json_key(json, "hours");
            ts_json_number(json, condition->hours.value / 3600.0);
        }
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void assumptions(ts_json *json, const ts_answer *answer)
{
    ts_json_key(json, "assumptions");
    ts_json_array(json);
    for (size_t i = 0; i < answer->drive->assumed_count; i++) {
        const ts_assumption *assumed = &answer->drive->assumed[i];
        ts_json_object(json);
        ts_json_node(json, answer, "at", assumed->node);
        ts_json_string_at(json, "key", assumed->key);
        ts_json_string_at(json, "value", assumed->value);
        ts_json_string_at(json, "reason", assumed->reason);
        ts_json_end(json, '}');
    }
    for (size_t i = 0; i < answer->drive->assumption_count; i++) {
        const ts_assumption_line *line = &answer->drive->assumptions[i];
        ts_json_object(json);
        ts_json_string_at(json, "at", line->at.text);
        ts_json_string_at(json, "says", line->says.text);
        ts_json_string_at(json, "source", line->source.text);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

void ts_answer_json(const ts_answer *answer, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    head(&json, answer);
    counts(&json, answer->outcome);
    conditions(&json, answer);
    ts_json_turning(&json, answer);
    ts_json_carrying(&json, answer);
    ts_json_mass(&json, answer);
    ts_json_lines(&json, answer);
    ts_json_splines(&json, answer);
    ts_json_float(&json, answer);
    ts_json_selectivity(&json, answer);
    ts_json_check_oil(&json, answer);
    ts_json_check_effects(&json, answer);
    assumptions(&json, answer);
    ts_json_findings(&json, answer);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
