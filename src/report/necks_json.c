/* How are bands, samples and chances of necks written as JSON, by docs/schema/necks.schema.json? */
#include "report/necks_report.h"

#include "report/json_quantity.h"

#include <math.h>

static void samples(ts_json *json, const ts_neck_survey *survey)
{
    const ts_neck_sampled *s     = &survey->samples;
    const double           count = (double)s->count;

    ts_json_key(json, "samples");
    ts_json_object(json);
    ts_json_count_at(json, "count", s->count);
    ts_json_count_at(json, "outside", s->outside);
    ts_json_number_at(json, "least", s->least);
    ts_json_number_at(json, "most", s->most);
    ts_json_number_at(json, "mean", s->mean);
    ts_json_number_at(json, "deviation", s->deviation);
    ts_json_key(json, "quantiles");
    ts_json_array(json);
    for (int q = 0; q < TS_NECK_QUANTILES; q++) {
        ts_json_object(json);
        ts_json_number_at(json, "share", ts_neck_shares[q]);
        ts_json_number_at(json, "torque", s->quantile[q]);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    if (survey->life.missing == NULL) {
        ts_json_number_at(json, "early", (double)s->early / count);
        ts_json_number_at(json, "early_at_once", (double)s->static_early / count);
        ts_json_number_at(json, "early_by_fatigue", (double)s->fatigue_early / count);
        ts_json_number_at(json, "late", (double)s->late / count);
    }
    ts_json_end(json, '}');
}

static void chances(ts_json *json, const ts_neck_survey *survey)
{
    const ts_neck_chance *chance = &survey->life.chance;

    ts_json_key(json, "chances");
    ts_json_object(json);
    ts_json_number_at(json, "early", chance->early);
    ts_json_number_at(json, "early_at_once", chance->static_early);
    ts_json_number_at(json, "early_by_fatigue", chance->fatigue_early);
    ts_json_number_at(json, "early_most", survey->life.early_most);
    ts_json_number_at(json, "late", chance->late);
    ts_json_number_at(json, "balance", survey->balance);
    ts_json_end(json, '}');
}

/* What tires it: swings of a condition, or events. */
static void cycles(ts_json *json, const ts_answer *answer, const ts_neck_life *life)
{
    ts_json_key(json, "cycles");
    ts_json_array(json);
    for (int i = 0; i < life->duty.cycle_count; i++) {
        const char *condition = ts_answer_condition(answer, life->condition[i]);

        ts_json_object(json);
        if (condition != NULL)
            ts_json_string_at(json, "condition", condition);
        ts_json_number_at(json, "n", life->cycles[i].cycles);
        ts_json_number_at(json, "T_a", life->cycles[i].T_a);
        ts_json_number_at(json, "T_m", life->cycles[i].T_m);
        ts_json_number_at(json, "harm",
                          ts_neck_harm_share(&life->make, &life->duty, &life->chance, i));
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void seized(ts_json *json, const ts_seizure_peak *peak)
{
    if (peak == NULL)
        return;
    ts_json_key(json, "seized");
    ts_json_object(json);
    ts_json_string_at(json, "condition", peak->condition);
    ts_json_string_at(json, "part", peak->part);
    ts_json_rounded_at(json, "T", peak->T);
    ts_json_rounded_at(json, "bears", peak->bears);
    ts_json_rounded_at(json, "share", peak->share);
    ts_json_end(json, '}');
}

static void neck(ts_json *json, const ts_answer *answer, const ts_necks_answer *necks, size_t item)
{
    const ts_neck_survey *survey = &necks->items[item];

    const ts_drive_neck *of = survey->neck;

    ts_json_object(json);
    ts_json_node(json, answer, "address", of->neck->node);
    ts_json_string_at(json, "of", of->name);
    ts_json_bool_at(json, "designed", of->designed);
    if (of->designed)
        ts_json_number_at(json, "diameter", of->neck->diameter.value);
    ts_json_number_at(json, "breaks_least", of->band.low);
    ts_json_number_at(json, "breaks_most", of->band.high);
    ts_json_number_at(json, "must_pass", survey->guard->legit.T);
    ts_json_number_at(json, "way_bears", survey->guard->once.T);
    seized(json, ts_necks_peak(necks, item));
    if (of->missing != NULL)
        ts_json_string_at(json, "missing", of->missing);
    if (survey->sampled)
        samples(json, survey);
    if (survey->life.missing == NULL) {
        chances(json, survey);
        cycles(json, answer, &survey->life);
    } else {
        ts_json_string_at(json, "no_chances", survey->life.missing);
    }
    ts_json_end(json, '}');
}

void ts_necks_json(const ts_necks_answer *necks, const ts_answer *answer, ts_buffer *out)
{
    ts_json json;

    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_head(&json, answer);
    ts_json_count_at(&json, "seed", necks->seed);
    ts_json_key(&json, "necks");
    ts_json_array(&json);
    for (size_t i = 0; i < necks->count; i++)
        neck(&json, answer, necks, i);
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
