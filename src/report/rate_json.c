/* How are the elements of a rate file written as JSON? */
#include "report/rate_report.h"

#include "report/answer_json.h"

#include <math.h>

/* ---- numbers -----------------------------------------------------------------------------------
 */

static void value_and_unit(ts_json *json, const ts_note *note)
{
    const ts_rated_number number = ts_rated_number_of(note, TS_UNITS_METRIC, false);
    ts_json_key(json, "value");
    if (!isfinite(number.value))
        ts_json_null(json);
    else
        ts_json_number(json, number.of != NULL ? ts_json_shown(json, note->value, number.of)
                                               : number.value);
    if (!isfinite(number.value))
        ts_json_string_at(json, "because",
                          isnan(number.value) ? "it cannot be computed; see the findings"
                                              : "it has no finite value");
    ts_json_string_at(json, "unit", number.unit);
    ts_json_string_at(json, "symbol", note->symbol);
}

static void address(ts_json *json, const ts_answer *answer, const ts_note *note)
{
    ts_buffer made;
    ts_buffer_open(&made, answer->allocator);
    ts_json_address(answer,
                    (ts_json_place){note->subject.object, note->subject.condition, note->symbol},
                    &made);
    ts_json_key(json, "address");
    ts_json_made(json, &made);
    ts_buffer_close(&made);
}

static void result(ts_json *json, const ts_answer *answer, const ts_rated_section *section,
                   const ts_note *note)
{
    ts_json_object(json);
    value_and_unit(json, note);
    ts_json_string_at(json, "meaning", ts_rated_meaning(note));
    address(json, answer, note);
    ts_json_string_at(json, "source", ts_rated_source(note));
    ts_json_key(json, "asked");
    ts_json_bool(json, ts_rated_is_asked(section, note->symbol));
    ts_json_end(json, '}');
}

/* ---- inputs ------------------------------------------------------------------------------------
 */

static void given(ts_json *json, const ts_answer *answer, const ts_rated_element *element)
{
    ts_json_key(json, "given");
    ts_json_array(json);
    for (size_t i = element->from; i < element->to; i++) {
        if (!ts_rated_is_input(answer->workings, element, i, TS_NOTE_GIVEN))
            continue;
        const ts_note *note   = ts_workings_at(answer->workings, i);
        const ts_node  source = answer->source->nodes[note->node].source;
        ts_json_object(json);
        value_and_unit(json, note);
        address(json, answer, note);
        ts_json_key(json, "source");
        ts_json_text(json, source != 0 ? answer->source->nodes[source].scalar
                                       : TS_TEXT("given in the file"));
        ts_json_key(json, "line");
        ts_json_integer(json, answer->source->nodes[note->node].line);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void assumed(ts_json *json, const ts_answer *answer, const ts_rated_element *element)
{
    ts_json_key(json, "assumptions");
    ts_json_array(json);
    for (size_t i = element->from; i < element->to; i++) {
        if (!ts_rated_is_input(answer->workings, element, i, TS_NOTE_ASSUMED))
            continue;
        const ts_note *note = ts_workings_at(answer->workings, i);
        ts_json_object(json);
        value_and_unit(json, note);
        address(json, answer, note);
        ts_json_string_at(json, "source", note->source);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_key(json, "choices");
    ts_json_array(json);
    for (size_t i = 0; i < element->choice_count; i++) {
        ts_json_object(json);
        ts_json_string_at(json, "key", element->choices[i].key);
        ts_json_string_at(json, "value", element->choices[i].value);
        ts_json_string_at(json, "reason", element->choices[i].why);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void facts_and_lacks(ts_json *json, const ts_rated_element *element)
{
    ts_json_key(json, "facts");
    ts_json_array(json);
    for (size_t i = 0; i < element->fact_count; i++) {
        ts_json_object(json);
        ts_json_string_at(json, "name", element->facts[i].name);
        ts_json_string_at(json, "says", element->facts[i].says);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_key(json, "missing");
    ts_json_array(json);
    for (size_t i = 0; i < element->lack_count; i++) {
        const ts_rated_lack *lack = &element->lacks[i];
        ts_json_object(json);
        ts_json_string_at(json, "key", lack->key);
        ts_json_string_at(json, "says", lack->says);
        ts_json_string_at(json, "example", lack->example);
        ts_json_string_at(json, "standard", lack->standard);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

/* ---- elements ----------------------------------------------------------------------------------
 */

static void section(ts_json *json, const ts_answer *answer, const ts_rated_section *from)
{
    ts_json_object(json);
    ts_json_string_at(json, "title", from->title);
    ts_json_string_at(json, "standard", from->standard);
    ts_json_string_at(json, "condition", ts_answer_condition(answer, from->condition));
    ts_json_key(json, "results");
    ts_json_array(json);
    for (size_t i = from->from; i < from->to; i++) {
        if (ts_rated_is_result(answer->workings, from, i))
            result(json, answer, from, ts_workings_at(answer->workings, i));
    }
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

static void element(ts_json *json, const ts_answer *answer, const ts_rated_element *from)
{
    ts_json_object(json);
    ts_json_string_at(json, "kind", from->kind);
    ts_json_string_at(json, "name", from->name);
    ts_json_node(json, answer, "address", from->node);
    ts_json_key(json, "line");
    ts_json_integer(json, answer->source->nodes[from->node].key_line);
    given(json, answer, from);
    assumed(json, answer, from);
    facts_and_lacks(json, from);
    ts_json_key(json, "sections");
    ts_json_array(json);
    for (size_t i = 0; i < from->section_count; i++)
        section(json, answer, &from->sections[i]);
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

/* ---- the answer --------------------------------------------------------------------------------
 */

static void head(ts_json *json, const ts_rated *rated, const ts_answer *answer)
{
    static const char *const verdicts[] = {"holds", "does not hold", "not computable"};
    ts_buffer                says;
    ts_json_head(json, answer);
    ts_json_string_at(json, "verdict", verdicts[rated->outcome.verdict]);
    ts_buffer_open(&says, answer->allocator);
    ts_rated_verdict(rated, &says);
    ts_json_key(json, "says");
    ts_json_made(json, &says);
    ts_buffer_close(&says);
    ts_json_string_at(json, "title", answer->drive->title.text);
    ts_json_string_at(json, "revision", answer->drive->revision.text);
    ts_json_key(json, "counts");
    ts_json_object(json);
    ts_json_count_at(json, "judgements", rated->outcome.judgement_count);
    ts_json_count_at(json, "passed", rated->outcome.passed);
    ts_json_count_at(json, "refuse", rated->outcome.open[TS_REFUSE]);
    ts_json_count_at(json, "warn", rated->outcome.open[TS_WARN]);
    ts_json_count_at(json, "note", rated->outcome.open[TS_NOTE]);
    ts_json_count_at(json, "not_computable", rated->outcome.not_computable);
    ts_json_end(json, '}');
}

void ts_rate_json(const ts_rated *rated, const ts_answer *answer, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    head(&json, rated, answer);
    ts_json_key(&json, "elements");
    ts_json_array(&json);
    for (size_t i = 0; i < rated->element_count; i++)
        element(&json, answer, &rated->elements[i]);
    ts_json_end(&json, ']');
    ts_json_findings(&json, answer);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
