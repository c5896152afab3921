/* How are drives that grow hot written as JSON, by docs/schema/warm.schema.json? */
#include "report/warm_report.h"

#include "report/json_quantity.h"

#include <math.h>

static void legs(ts_json *json, const ts_warm_answer *warm, const ts_answer *answer)
{
    ts_json_key(json, "legs");
    ts_json_array(json);
    for (size_t l = 0; l < warm->leg_count; l++) {
        ts_json_object(json);
        ts_json_string_at(json, "condition",
                          answer->drive->conditions[warm->legs[l].condition].name);
        ts_json_rounded_at(json, "duration", warm->legs[l].duration);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_bool_at(json, "legs_assumed", warm->legs_assumed);
}

static void span(ts_json *json, const char *key, const double of[2])
{
    ts_json_key(json, key);
    ts_json_array(json);
    ts_json_rounded(json, of[0]);
    ts_json_rounded(json, of[1]);
    ts_json_end(json, ']');
}

typedef double (*part_of_moment)(const ts_warm_moment *moment);

static double time_of(const ts_warm_moment *moment)
{
    return moment->t;
}

static double oil_of(const ts_warm_moment *moment)
{
    return moment->oil;
}

static double casing_of(const ts_warm_moment *moment)
{
    return moment->casing;
}

static double least_of(const ts_warm_moment *moment)
{
    return moment->least;
}

static double most_of(const ts_warm_moment *moment)
{
    return moment->most;
}

static void course(ts_json *json, const ts_warm_course *it)
{
    static const struct {
        const char    *key;
        part_of_moment of;
    } columns[] = {{"t", time_of},
                   {"oil", oil_of},
                   {"casing", casing_of},
                   {"gears_least", least_of},
                   {"gears_most", most_of}};

    for (size_t c = 0; c < sizeof columns / sizeof columns[0]; c++) {
        ts_json_key(json, columns[c].key);
        ts_json_array(json);
        for (size_t i = 0; i < it->moment_count; i++)
            ts_json_rounded(json, columns[c].of(&it->moments[i]));
        ts_json_end(json, ']');
    }
}

static void band(ts_json *json, const char *key, const double *values, size_t count)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (size_t i = 0; i < count; i++)
        ts_json_rounded(json, values[i]);
    ts_json_end(json, ']');
}

static void plays(ts_json *json, const ts_warm_course *it, const ts_answer *answer)
{
    ts_json_key(json, "plays");
    ts_json_array(json);
    for (size_t p = 0; p < it->play_count; p++) {
        const ts_warm_play *play = &it->plays[p];
        const ts_mesh      *mesh = &answer->train->meshes[play->mesh];
        ts_json_object(json);
        ts_json_string_at(json, "driver", answer->train->shafts[mesh->driver_shaft].name);
        ts_json_string_at(json, "driven", answer->train->shafts[mesh->driven_shaft].name);
        if (play->missing != NULL) {
            ts_json_string_at(json, "missing", play->missing);
        } else {
            ts_json_rounded_at(json, "least", play->low[play->least]);
            ts_json_rounded_at(json, "least_at", it->moments[play->least].t);
            ts_json_rounded_at(json, "most", play->high[play->most]);
            ts_json_rounded_at(json, "most_at", it->moments[play->most].t);
            band(json, "low", play->low, it->moment_count);
            band(json, "high", play->high, it->moment_count);
        }
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void energy(ts_json *json, const ts_warm_course *it)
{
    ts_json_key(json, "energy");
    ts_json_object(json);
    ts_json_rounded_at(json, "heat", it->heat);
    ts_json_rounded_at(json, "oil", it->carried);
    ts_json_rounded_at(json, "air", it->given);
    ts_json_rounded_at(json, "metal", it->stored);
    ts_json_rounded_at(json, "balance", it->balance < 1e-10 ? 0.0 : it->balance);
    ts_json_end(json, '}');
}

static void one_drive(ts_json *json, const ts_warm_answer *warm, const ts_answer *answer,
                      uint32_t drive)
{
    const ts_warm_course *it = &warm->courses[drive];

    ts_json_object(json);
    ts_json_string_at(json, "of", answer->drive->spools[answer->drive->drive[drive].spool].name);
    if (it->fault != NULL) {
        ts_json_string_at(json, "fault", it->fault);
    } else if (it->missing != NULL) {
        ts_json_string_at(json, "missing", it->missing);
        if (it->lacks != NULL)
            ts_json_string_at(json, "lacks", it->lacks);
    } else {
        if (it->play_count > 0) {
            span(json, "gears", it->gears);
            span(json, "casing_above_gears", it->apart);
            ts_json_bool_at(json, "within", ts_warm_is_within(warm, answer, drive));
        }
        course(json, it);
        plays(json, it, answer);
        energy(json, it);
    }
    ts_json_end(json, '}');
}

void ts_warm_json(const ts_warm_answer *warm, const ts_answer *answer, ts_buffer *out)
{
    ts_json json;

    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_head(&json, answer);
    ts_json_rounded_at(&json, "soak", warm->soak);
    ts_json_bool_at(&json, "soak_assumed", warm->soak_assumed);
    ts_json_rounded_at(&json, "ambient", warm->air);
    legs(&json, warm, answer);
    span(&json, "expansion", warm->alpha);
    ts_json_bool_at(&json, "expansion_assumed", warm->alpha_assumed);
    ts_json_key(&json, "drives");
    ts_json_array(&json);
    for (uint32_t d = 0; d < answer->drive->drive_count; d++)
        one_drive(&json, warm, answer, d);
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
