/* How is the answer written as JSON? */
#include "report/answer_json.h"

#include "report/check_page.h"

#include <math.h>

void ts_json_address(const ts_answer *answer, ts_json_place place, ts_buffer *out)
{
    ts_source_address(answer->source, place.node, out);
    ts_buffer_print(out, ":%s", place.symbol);
    if (place.condition >= 0)
        ts_buffer_print(out, "@%s", ts_answer_condition(answer, place.condition));
}

/* A string that is made in pieces. */
static void made_string(ts_json *json, const ts_buffer *made)
{
    json->out->failed = json->out->failed || made->failed;
    ts_json_text(json, (ts_text){made->bytes != NULL ? made->bytes : "", made->length});
}

void ts_json_node(ts_json *json, const ts_answer *answer, const char *key, ts_node node)
{
    ts_buffer address;
    ts_buffer_open(&address, answer->allocator);
    ts_source_address(answer->source, node, &address);
    ts_json_key(json, key);
    made_string(json, &address);
    ts_buffer_close(&address);
}

static const char *source_of(const ts_answer *answer, ts_json_place place)
{
    if (answer->workings == NULL)
        return NULL;
    const ts_subject subject = {place.node, place.condition};
    const size_t     found   = ts_workings_find(answer->workings, subject, place.symbol);
    if (found == SIZE_MAX)
        return NULL;
    const ts_note *note = ts_workings_at(answer->workings, found);
    return note->formula != NULL ? note->formula->source : note->source;
}

void ts_json_quantity(ts_json *json, const ts_answer *answer, double si, ts_kind kind,
                      ts_json_place place)
{
    const ts_unit *unit = ts_kind_shown(kind, TS_UNITS_METRIC);
    ts_buffer      address;
    ts_buffer_open(&address, answer->allocator);
    ts_json_address(answer, place, &address);
    ts_json_object(json);
    ts_json_key(json, "value");
    if (isfinite(si))
        ts_json_number(json, ts_from_si(si, unit));
    else
        ts_json_null(json);
    if (!isfinite(si)) {
        ts_json_key(json, "because");
        ts_json_string(json, "the file does not give what it needs; see the findings");
    }
    ts_json_key(json, "unit");
    ts_json_string(json, unit->name);
    ts_json_key(json, "symbol");
    ts_json_string(json, place.symbol);
    ts_json_key(json, "address");
    made_string(json, &address);
    const char *source = source_of(answer, place);
    if (source != NULL) {
        ts_json_key(json, "source");
        ts_json_string(json, source);
    }
    ts_json_end(json, '}');
    ts_buffer_close(&address);
}

static void string_field(ts_json *json, const char *key, const char *value)
{
    ts_json_key(json, key);
    ts_json_string(json, value);
}

static void count_field(ts_json *json, const char *key, size_t value)
{
    ts_json_key(json, key);
    ts_json_integer(json, (int64_t)value);
}

static void head(ts_json *json, const ts_answer *answer)
{
    static const char *const verdicts[] = {"holds", "does not hold", "not computable"};
    string_field(json, "tool", "towershaft");
    string_field(json, "version", answer->version);
    string_field(json, "caution", answer->caution);
    ts_json_key(json, "input");
    ts_json_object(json);
    string_field(json, "path", answer->source->name);
    string_field(json, "sha256", answer->sha256);
    ts_json_end(json, '}');
    string_field(json, "verdict", verdicts[answer->outcome->verdict]);
    ts_buffer says;
    ts_buffer_open(&says, answer->allocator);
    ts_verdict_sentence(answer->outcome, &says);
    ts_json_key(json, "says");
    made_string(json, &says);
    ts_buffer_close(&says);
    string_field(json, "title", answer->drive->title.text);
    string_field(json, "revision", answer->drive->revision.text);
}

static void counts(ts_json *json, const ts_check_outcome *outcome)
{
    ts_json_key(json, "counts");
    ts_json_object(json);
    count_field(json, "judgements", outcome->judgement_count);
    count_field(json, "passed", outcome->passed);
    count_field(json, "refuse", outcome->open[TS_REFUSE]);
    count_field(json, "warn", outcome->open[TS_WARN]);
    count_field(json, "note", outcome->open[TS_NOTE]);
    count_field(json, "waived", outcome->waived);
    count_field(json, "not_computable", outcome->not_computable);
    count_field(json, "rules_run", outcome->rules_run);
    count_field(json, "rules_skipped", outcome->rules_skipped);
    ts_json_end(json, '}');
}

static void conditions(ts_json *json, const ts_answer *answer)
{
    ts_json_key(json, "conditions");
    ts_json_array(json);
    for (size_t c = 0; c < answer->drive->condition_count; c++) {
        const ts_condition *condition = &answer->drive->conditions[c];
        ts_json_object(json);
        string_field(json, "name", condition->name);
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
        string_field(json, "key", assumed->key);
        string_field(json, "value", assumed->value);
        string_field(json, "reason", assumed->reason);
        ts_json_end(json, '}');
    }
    for (size_t i = 0; i < answer->drive->assumption_count; i++) {
        const ts_assumption_line *line = &answer->drive->assumptions[i];
        ts_json_object(json);
        string_field(json, "at", line->at.text);
        string_field(json, "says", line->says.text);
        string_field(json, "source", line->source.text);
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
    assumptions(&json, answer);
    ts_json_findings(&json, answer);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
