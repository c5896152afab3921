/* How is a quiz written as JSON, by docs/schema/brief.schema.json? */
#include "report/brief.h"

#include "report/json_quantity.h"

static void choices(ts_json *json, const ts_question *one)
{
    ts_json_key(json, "choices");
    ts_json_array(json);
    for (int i = 0; i < one->count; i++) {
        ts_json_object(json);
        ts_json_string_at(json, "says", one->choices[i].says);
        ts_json_bool_at(json, "right", i == one->right);
        if (one->choices[i].slip != NULL)
            ts_json_string_at(json, "slip", one->choices[i].slip);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

void ts_brief_json(const ts_answer *answer, const ts_quiz *quiz, ts_buffer *out)
{
    ts_json json;

    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_head(&json, answer);
    ts_json_key(&json, "questions");
    ts_json_array(&json);
    for (size_t i = 0; i < quiz->count; i++) {
        const ts_question *one = &quiz->questions[i];
        ts_json_object(&json);
        ts_json_string_at(&json, "asks", one->asks);
        choices(&json, one);
        ts_json_string_at(&json, "because", one->because);
        if (one->shaft != TS_NOWHERE)
            ts_json_node(&json, answer, "look_at", answer->train->shafts[one->shaft].node);
        ts_json_end(&json, '}');
    }
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
