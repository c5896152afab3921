/* model/field_sampling.c: what may stand in a study file? */
#include "model/field.h"
#include "model/sampling_file.h"

#include <string.h>

/* In the order of ts_law, sample/law.h. */
static const char *const laws[] = {"normal", "log-normal", "uniform", "triangle", "whole", NULL};
/* In the order of ts_sampling_method. */
static const char *const methods[] = {"random", "one at a time", "sweep", "sobol", NULL};

static const ts_field vary_fields[] = {
    {.key  = "at",
     .form = TS_FORM_WORD,
     .need = TS_REQUIRED,
     TS_AT(ts_sampling_vary, at),
     .says    = "Address of one value that stands in the drive file.",
     .example = "accessories/fuel pump/power/take-off"},
    {.key  = "law",
     .form = TS_FORM_PICK,
     .need = TS_REQUIRED,
     TS_AT(ts_sampling_vary, law),
     .choices = laws,
     .says    = "How it is distributed; `whole` numbers are all as likely.",
     .example = "normal"},
    {.key   = "mean",
     .form  = TS_FORM_WORD,
     .known = true,
     TS_AT(ts_sampling_vary, mean),
     .says    = "Mean of a normal or log-normal law, before it is cut; left out: the value that "
                "stands in the drive.",
     .example = "13 kW"},
    {.key   = "deviation",
     .form  = TS_FORM_WORD,
     .known = true,
     TS_AT(ts_sampling_vary, deviation),
     .says = "Standard deviation of a normal or log-normal law; a percentage is one of the value "
             "that stands in the drive.",
     .example = "5 %"},
    {.key   = "least",
     .form  = TS_FORM_WORD,
     .known = true,
     TS_AT(ts_sampling_vary, least),
     .says    = "Nothing below this is drawn; the end of a uniform or triangular law.",
     .example = "90 %"},
    {.key   = "most",
     .form  = TS_FORM_WORD,
     .known = true,
     TS_AT(ts_sampling_vary, most),
     .says    = "Nothing above this is drawn.",
     .example = "14.5 kW"},
    {.key   = "mode",
     .form  = TS_FORM_WORD,
     .known = true,
     TS_AT(ts_sampling_vary, mode),
     .says    = "Where a triangular law is highest; left out: the value that stands in the drive.",
     .example = "13 kW"},
    {.key   = "steps",
     .form  = TS_FORM_TALLY,
     .known = true,
     TS_AT(ts_sampling_vary, steps),
     .range   = TS_FROM(2, 1000, "1"),
     .preset  = {"5", "enough to see a bend"},
     .says    = "How many values one at a time and a sweep give it.",
     .example = "9"},
};

const ts_record_table ts_table_sampling_vary = {
    .id   = "vary",
    .name = "a value that varies",
    .says = "One value of the drive and its distribution.",
    TS_TABLE(ts_sampling_vary, vary_fields),
};

static const ts_field tie_fields[] = {
    {.key  = "of",
     .form = TS_FORM_WORD,
     .need = TS_REQUIRED,
     TS_AT(ts_sampling_tie, of),
     .says    = "One address of `vary`.",
     .example = "accessories/fuel pump/power/take-off"},
    {.key  = "with",
     .form = TS_FORM_WORD,
     .need = TS_REQUIRED,
     TS_AT(ts_sampling_tie, with),
     .says    = "Another.",
     .example = "accessories/fuel pump/power/climb"},
    {.key  = "r",
     .form = TS_FORM_MEASURE,
     .need = TS_REQUIRED,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_sampling_tie, r),
     .range   = TS_FROM(-0.999, 0.999, "1"),
     .says    = "Correlation of their normal scores, from near -1 (opposite) to near 1 (together).",
     .example = "0.9"},
};

const ts_record_table ts_table_sampling_tie = {
    .id   = "correlated",
    .name = "two values that go together",
    .says = "Their ranks follow each other as those of two normal values with that correlation.",
    TS_TABLE(ts_sampling_tie, tie_fields),
};

static const ts_field watch_fields[] = {
    {.key  = "margin",
     .form = TS_FORM_WORD,
     TS_AT(ts_sampling_watch, margin),
     .known   = true,
     .says    = "A rule: the least margin that it finds.",
     .example = "E1-tooth-root"},
    {.key  = "value",
     .form = TS_FORM_WORD,
     TS_AT(ts_sampling_watch, value),
     .known   = true,
     .says    = "A rule: the value that it judges where its margin is least.",
     .example = "D6-mount-reaction"},
    {.key  = "number",
     .form = TS_FORM_WORD,
     TS_AT(ts_sampling_watch, number),
     .known   = true,
     .says    = "Any number that `why` knows, by its address; every sample then keeps its workings "
                "and takes longer.",
     .example = ":m_metal"},
    {.key  = "at",
     .form = TS_FORM_WORD,
     TS_AT(ts_sampling_watch, at),
     .known   = true,
     .says    = "Of the rule only what it says of the object at this address, or of a part of it.",
     .example = "drive/hp/box/clockwise/2"},
    {.key  = "in",
     .form = TS_FORM_WORD,
     TS_AT(ts_sampling_watch, in),
     .known   = true,
     .says    = "And only in this condition.",
     .example = "take-off"},
};

static const char *judge_watch(const void *record, const char **key, const char **expected)
{
    const ts_sampling_watch *watch = record;
    const int asked = (watch->margin.standing == TS_GIVEN) + (watch->value.standing == TS_GIVEN) +
                      (watch->number.standing == TS_GIVEN);
    *key      = "margin";
    *expected = "one of margin, value, number";
    if (asked != 1)
        return asked == 0 ? "nothing is watched" : "one line watches one number";
    *key      = "number";
    *expected = "its object and condition in the address itself, as drive/hp/box:m or "
                "...:n@take-off";
    if (watch->number.standing == TS_GIVEN &&
        (watch->at.standing == TS_GIVEN || watch->in.standing == TS_GIVEN))
        return "at and in belong to a rule";
    return NULL;
}

const ts_record_table ts_table_sampling_watch = {
    .id   = "watch",
    .name = "a number that is watched",
    .says = "One number that is kept of every sample.",
    TS_TABLE(ts_sampling_watch, watch_fields),
    .judge = judge_watch,
};

static const ts_field file_fields[] = {
    {.key  = "towershaft study",
     .form = TS_FORM_TALLY,
     .need = TS_REQUIRED,
     TS_AT(ts_sampling_file, version),
     .range   = TS_FROM(1, 1, "1"),
     .says    = "The version of this notation.",
     .example = "1"},
    {.key  = "title",
     .form = TS_FORM_WORD,
     .need = TS_REQUIRED,
     TS_AT(ts_sampling_file, title),
     .says    = "What the study is called on every page.",
     .example = "How sure are the necks?"},
    {.key  = "drive",
     .form = TS_FORM_WORD,
     .need = TS_REQUIRED,
     TS_AT(ts_sampling_file, drive),
     .says    = "The drive file, from the folder of this file.",
     .example = "../bizjet.yaml"},
    {.key  = "method",
     .form = TS_FORM_PICK,
     TS_AT(ts_sampling_file, method),
     .choices = methods,
     .preset  = {"random", "chances and correlations at once"},
     .says    = "`random` draws all values at once; `one at a time` leaves all others as they "
                "stand; a `sweep` takes every combination of steps; `sobol` tells which share of "
                "the variance each value is responsible for.",
     .example = "sobol"},
    {.key   = "samples",
     .form  = TS_FORM_TALLY,
     .known = true,
     TS_AT(ts_sampling_file, samples),
     .range   = TS_FROM(1, 1000000000, "1"),
     .preset  = {"1000", "a chance of one half is then known to 3 %"},
     .says    = "How many random samples; of `sobol`, how many of each of its values + 2 lots.",
     .example = "100000"},
    {.key   = "seed",
     .form  = TS_FORM_TALLY,
     .known = true,
     TS_AT(ts_sampling_file, seed),
     .range   = TS_FROM(0, 4294967295.0, "1"),
     .preset  = {"1", "any number will do"},
     .says    = "Another seed draws other samples; the same draws the same, on any machine.",
     .example = "7"},
    {.key  = "vary",
     .form = TS_FORM_LIST,
     .need = TS_REQUIRED,
     TS_LIST_AT(ts_sampling_file, vary, vary_count),
     .most    = 64,
     .record  = &ts_table_sampling_vary,
     .says    = "The values that vary.",
     .example = "[{at: accessories/fuel pump/mass, law: uniform, least: 5 kg, most: 6 kg}]"},
    {.key  = "correlated",
     .form = TS_FORM_LIST,
     TS_LIST_AT(ts_sampling_file, ties, tie_count),
     .most    = 2000,
     .record  = &ts_table_sampling_tie,
     .says    = "Those of them that go together; any others are independent.",
     .example = "[{of: accessories/pump/mass, with: accessories/pump/overhang, r: 0.8}]"},
    {.key  = "watch",
     .form = TS_FORM_LIST,
     TS_LIST_AT(ts_sampling_file, watch, watch_count),
     .most    = 64,
     .record  = &ts_table_sampling_watch,
     .says    = "What is kept of each sample, beside its verdict and its findings; left out: the "
                "least margin of every rule that judges this drive.",
     .example = "[{margin: E1-tooth-root}, {number: ':m_metal'}]"},
};

static const char *judge_file(const void *record, const char **key, const char **expected)
{
    const ts_sampling_file *file = record;
    *key                         = "vary";
    *expected                    = "at least one value, such as {at: accessories/fuel pump/mass, "
                                   "law: uniform, least: 5 kg, most: 6 kg}";
    return file->vary_count > 0 ? NULL : "nothing varies";
}

const ts_record_table ts_table_sampling = {
    .id   = "study",
    .name = "a study file",
    .says = "One document that says which values of a drive vary, how, and what is watched.",
    TS_TABLE(ts_sampling_file, file_fields),
    .judge = judge_file,
};
