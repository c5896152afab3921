/* How are findings written as JSON? */
#include "report/answer_json.h"
#include "report/page.h"

#include <math.h>

static void finding(ts_json *json, const ts_answer *answer, const ts_finding *finding)
{
    const ts_node_place *place = &answer->source->nodes[finding->node];
    ts_json_object(json);
    ts_json_string_at(json, "rule", finding->rule);
    ts_json_string_at(json, "level", ts_level_name(finding->level));
    ts_json_string_at(json, "state", ts_state_name(finding->state));
    ts_json_node(json, answer, "address", finding->node);
    ts_json_string_at(json, "condition", ts_answer_condition(answer, finding->condition));
    ts_json_string_at(json, "file", answer->source->name);
    ts_json_key(json, "line");
    ts_json_integer(json, place->line);
    ts_json_key(json, "column");
    ts_json_integer(json, place->column);
    ts_json_string_at(json, "says", finding->says);
    ts_json_string_at(json, "remedy", finding->remedy);
    ts_json_string_at(json, "symbol", finding->symbol);
    ts_json_number_at(json, "value", finding->value);
    ts_json_number_at(json, "limit", finding->limit);
    ts_json_number_at(json, "margin", finding->margin);
    ts_json_string_at(json, "unit", finding->unit);
    ts_json_string_at(json, "source", finding->source);
    ts_json_string_at(json, "fingerprint", finding->fingerprint);
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
