/* How are findings written as JSON? */
#include "report/answer_json.h"
#include "report/page.h"

#include <math.h>

static void number(ts_json *json, const char *key, double value)
{
    ts_json_key(json, key);
    if (isfinite(value))
        ts_json_number(json, value);
    else
        ts_json_null(json);
}

static void string(ts_json *json, const char *key, const char *value)
{
    ts_json_key(json, key);
    ts_json_string(json, value);
}

static void finding(ts_json *json, const ts_answer *answer, const ts_finding *finding)
{
    const ts_node_place *place = &answer->source->nodes[finding->node];
    ts_json_object(json);
    string(json, "rule", finding->rule);
    string(json, "level", ts_level_name(finding->level));
    string(json, "state", ts_state_name(finding->state));
    ts_json_node(json, answer, "address", finding->node);
    string(json, "condition", ts_answer_condition(answer, finding->condition));
    string(json, "file", answer->source->name);
    ts_json_key(json, "line");
    ts_json_integer(json, place->line);
    ts_json_key(json, "column");
    ts_json_integer(json, place->column);
    string(json, "says", finding->says);
    string(json, "remedy", finding->remedy);
    string(json, "symbol", finding->symbol);
    number(json, "value", finding->value);
    number(json, "limit", finding->limit);
    number(json, "margin", finding->margin);
    string(json, "unit", finding->unit);
    string(json, "source", finding->source);
    string(json, "fingerprint", finding->fingerprint);
    if (finding->waiver != 0)
        ts_json_node(json, answer, "waiver", finding->waiver);
    ts_json_end(json, '}');
}

void ts_json_findings(ts_json *json, const ts_answer *answer)
{
    ts_json_key(json, "findings");
    ts_json_array(json);
    for (size_t i = 0; i < answer->outcome->finding_count; i++)
        finding(json, answer, &answer->outcome->findings[i]);
    ts_json_end(json, ']');
}
