/* How is the answer of a study written as JSON, by docs/schema/study.schema.json? */
#include "report/sampling_report.h"

#include "report/register.h"

#include <math.h>

static void input_file(ts_json *json, const char *key, const char *path, const char *hash)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_string_at(json, "path", path);
    ts_json_string_at(json, "sha256", hash);
    ts_json_end(json, '}');
}

static void chance(ts_json *json, const char *key, ts_chance of)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_number_at(json, "share", of.share);
    ts_json_number_at(json, "low", of.low);
    ts_json_number_at(json, "high", of.high);
    ts_json_end(json, '}');
}

static void estimate(ts_json *json, const ts_sampled_column *column)
{
    const ts_estimate *of = &column->estimate;

    ts_json_string_at(json, "name", column->name);
    ts_json_string_at(json, "unit", column->unit);
    ts_json_count_at(json, "count", of->count);
    ts_json_count_at(json, "missing", of->missing);
    ts_json_number_at(json, "mean", of->mean);
    ts_json_number_at(json, "deviation", of->deviation);
    ts_json_number_at(json, "error", of->error);
    ts_json_number_at(json, "first_half", of->half[0]);
    ts_json_number_at(json, "second_half", of->half[1]);
    ts_json_number_at(json, "least", of->least);
    ts_json_number_at(json, "most", of->most);
    ts_json_key(json, "quantiles");
    ts_json_array(json);
    for (int q = 0; q < TS_ESTIMATE_QUANTILES; q++) {
        ts_json_object(json);
        ts_json_number_at(json, "share", ts_estimate_shares[q]);
        ts_json_number_at(json, "value", of->quantile[q]);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_key(json, "bars");
    ts_json_array(json);
    for (int b = 0; b < TS_SAMPLE_BARS; b++)
        ts_json_integer(json, (int64_t)column->bars[b]);
    ts_json_end(json, ']');
}

/* What moves one watched number, value by value. */
static void movers(ts_json *json, const ts_sample_answer *answer, size_t output)
{
    ts_json_key(json, "moved_by");
    ts_json_array(json);
    for (size_t k = 0; k < answer->input_count; k++) {
        const size_t at = output * answer->input_count + k;
        ts_json_object(json);
        ts_json_string_at(json, "name", answer->inputs[k].name);
        if (answer->ranks != NULL)
            ts_json_number_at(json, "rank_correlation", answer->ranks[at]);
        if (answer->shares != NULL) {
            ts_json_number_at(json, "share_alone", answer->shares[at].alone);
            ts_json_number_at(json, "share_alone_error", answer->shares[at].alone_error);
            ts_json_number_at(json, "share_with_others", answer->shares[at].whole);
            ts_json_number_at(json, "share_with_others_error", answer->shares[at].whole_error);
        }
        if (answer->travels != NULL) {
            ts_json_number_at(json, "least", answer->travels[at].least);
            ts_json_number_at(json, "most", answer->travels[at].most);
            ts_json_number_at(json, "value_at_least", answer->travels[at].from);
            ts_json_number_at(json, "value_at_most", answer->travels[at].to);
        }
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void columns(ts_json *json, const ts_sample_answer *answer)
{
    ts_json_key(json, "varied");
    ts_json_array(json);
    for (size_t k = 0; k < answer->input_count; k++) {
        ts_json_object(json);
        estimate(json, &answer->inputs[k]);
        ts_json_number_at(json, "stands_at", answer->asis[k]);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_key(json, "watched");
    ts_json_array(json);
    for (size_t k = 0; k < answer->output_count; k++) {
        ts_json_object(json);
        estimate(json, &answer->outputs[k]);
        if (answer->outputs[k].margin)
            chance(json, "below_0", answer->outputs[k].below);
        if (answer->travels != NULL)
            ts_json_number_at(json, "stands_at", answer->nominal[k]);
        if (answer->shares != NULL)
            ts_json_count_at(json, "complete_lots", answer->share_lots[k]);
        movers(json, answer, k);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void findings(ts_json *json, const ts_sample_answer *answer)
{
    ts_json_key(json, "findings");
    ts_json_array(json);
    for (size_t i = 0; i < answer->finding_count; i++) {
        const ts_sampled_chance *one = &answer->findings[i];
        ts_json_object(json);
        ts_json_string_at(json, "rule", one->rule);
        ts_json_string_at(json, "level", one->level);
        ts_json_string_at(json, "address", one->address);
        ts_json_count_at(json, "samples", one->hits);
        chance(json, "chance", one->chance);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

void ts_sampling_json(const ts_sampling_head *head, const ts_sample_answer *answer, ts_buffer *out)
{
    ts_json json;

    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_string_at(&json, "tool", "towershaft");
    ts_json_string_at(&json, "version", head->version);
    ts_json_string_at(&json, "caution", head->caution);
    ts_json_string_at(&json, "title", answer->title);
    input_file(&json, "input", head->study, head->study_hash);
    input_file(&json, "drive", head->drive, head->drive_hash);
    ts_json_string_at(&json, "method", answer->method);
    ts_json_count_at(&json, "seed", answer->seed);
    ts_json_count_at(&json, "samples_due", answer->due);
    ts_json_count_at(&json, "samples", answer->count);
    ts_json_count_at(&json, "hold", answer->holds);
    ts_json_count_at(&json, "do_not_hold", answer->fails);
    ts_json_count_at(&json, "not_computable", answer->unknown);
    ts_json_count_at(&json, "not_understood", answer->refused);
    chance(&json, "chance_to_hold", answer->hold);
    columns(&json, answer);
    findings(&json, answer);
    ts_register_json(&json, head->assumed, head->assumed_count);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
