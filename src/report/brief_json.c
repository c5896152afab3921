/* How are a hand-out and its quiz written as JSON, by docs/schema/brief.schema.json? */
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

/* What a chapter says in sentences; its tables and pictures stay on paper. */
static void say(ts_json *json, const ts_block *block)
{
    ts_json_key(json, "says");
    ts_json_array(json);
    for (; block != NULL && block->kind != TS_BLOCK_HEADING; block = block->next)
        if (block->kind == TS_BLOCK_TEXT)
            ts_json_string(json, block->text);
    ts_json_end(json, ']');
}

static void steps(ts_json *json, const ts_manuscript *manuscript)
{
    ts_json_key(json, "steps");
    ts_json_array(json);
    for (const ts_block *one = manuscript->first; one != NULL; one = one->next) {
        if (one->kind != TS_BLOCK_HEADING || one->fresh) /* the questions begin a page */
            continue;
        ts_json_object(json);
        ts_json_string_at(json, "title", one->text);
        say(json, one->next);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

void ts_brief_json(const ts_answer *answer, const ts_manuscript *manuscript, const ts_quiz *quiz,
                   ts_buffer *out)
{
    ts_json json;

    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_head(&json, answer);
    steps(&json, manuscript);
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
