/* How are findings written for a build server that reads SARIF? */
#include "report/build_server.h"

#include "base/json_writer.h"
#include "check/rulebook.h"
#include "report/json_quantity.h"

static void message(ts_json *json, const char *key, const char *text)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_string_at(json, "text", text);
    ts_json_end(json, '}');
}

/* SARIF 2.1.0, 3.27.10 */
static const char *level_of(ts_level level, ts_state state)
{
    static const char *const levels[] = {"error", "warning", "note"};
    return state == TS_NOT_COMPUTABLE && level == TS_REFUSE ? "error" : levels[level];
}

static void driver(ts_json *json, const ts_answer *answer)
{
    ts_json_key(json, "tool");
    ts_json_object(json);
    ts_json_key(json, "driver");
    ts_json_object(json);
    ts_json_string_at(json, "name", "towershaft");
    ts_json_string_at(json, "version", answer->version);
    message(json, "fullDescription", answer->caution);
    ts_json_key(json, "rules");
    ts_json_array(json);
    const ts_rule *const *rules = ts_rulebook_rules();
    for (size_t i = 0; i < ts_rulebook_count(); i++) {
        ts_json_object(json);
        ts_json_string_at(json, "id", rules[i]->id);
        message(json, "shortDescription", rules[i]->title);
        message(json, "fullDescription", rules[i]->question);
        message(json, "help", rules[i]->why);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_end(json, '}');
    ts_json_end(json, '}');
}

static void location(ts_json *json, const ts_answer *answer, ts_node node)
{
    const ts_node_place *place = &answer->source->nodes[node];
    ts_json_key(json, "locations");
    ts_json_array(json);
    ts_json_object(json);
    ts_json_key(json, "physicalLocation");
    ts_json_object(json);
    ts_json_key(json, "artifactLocation");
    ts_json_object(json);
    ts_json_string_at(json, "uri", answer->source->name);
    ts_json_end(json, '}');
    if (place->line > 0) {
        ts_json_key(json, "region");
        ts_json_object(json);
        ts_json_key(json, "startLine");
        ts_json_integer(json, place->line);
        ts_json_key(json, "startColumn");
        ts_json_integer(json, place->column);
        ts_json_end(json, '}');
    }
    ts_json_end(json, '}');
    ts_json_key(json, "logicalLocations");
    ts_json_array(json);
    ts_json_object(json);
    ts_json_node(json, answer, "fullyQualifiedName", node);
    ts_json_end(json, '}');
    ts_json_end(json, ']');
    ts_json_end(json, '}');
    ts_json_end(json, ']');
}

static void suppression(ts_json *json, const ts_answer *answer, const ts_finding *finding)
{
    if (finding->state != TS_WAIVED)
        return;
    const char *why = "";
    for (size_t i = 0; i < answer->drive->waived_count; i++)
        if (answer->drive->waived[i].node == finding->waiver)
            why = answer->drive->waived[i].why.text;
    ts_json_key(json, "suppressions");
    ts_json_array(json);
    ts_json_object(json);
    ts_json_string_at(json, "kind", "inSource");
    ts_json_string_at(json, "justification", why);
    ts_json_end(json, '}');
    ts_json_end(json, ']');
}

static void result(ts_json *json, const ts_answer *answer, const ts_finding *finding)
{
    ts_json_object(json);
    ts_json_string_at(json, "ruleId", finding->rule);
    ts_json_string_at(json, "level", level_of(finding->level, finding->state));
    message(json, "message", finding->says);
    location(json, answer, finding->node);
    ts_json_key(json, "partialFingerprints");
    ts_json_object(json);
    ts_json_string_at(json, "towershaft/v1", finding->fingerprint);
    ts_json_end(json, '}');
    suppression(json, answer, finding);
    ts_json_end(json, '}');
}

void ts_sarif(const ts_answer *answer, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_string_at(&json, "$schema", "https://json.schemastore.org/sarif-2.1.0.json");
    ts_json_string_at(&json, "version", "2.1.0");
    ts_json_key(&json, "runs");
    ts_json_array(&json);
    ts_json_object(&json);
    driver(&json, answer);
    ts_json_key(&json, "results");
    ts_json_array(&json);
    for (size_t i = 0; i < answer->outcome->finding_count; i++)
        result(&json, answer, &answer->outcome->findings[i]);
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
