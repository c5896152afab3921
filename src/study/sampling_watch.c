/* Which numbers of every sample are watched? */
#include "study/sampling.h"

#include "check/rulebook.h"
#include "study/address.h"

#include <math.h>
#include <string.h>

static void say(ts_sampling *sampling, const ts_word *word, const char *code, const char *says,
                const char *expected, const char *nearest)
{
    ts_sampling_say(
        sampling,
        &(ts_diagnostic){.code = code, .says = says, .expected = expected, .nearest = nearest},
        word->node);
}

/* "margin of E1-pitting at drive/hp/box/clockwise/2 in take-off". */
static const char *name_of(ts_sampling *sampling, const ts_sampling_watch *watch)
{
    ts_buffer made;

    ts_buffer_open(&made, sampling->paper->allocator);
    ts_buffer_print(&made, "%s of %s", watch->value.standing == TS_GIVEN ? "value" : "margin",
                    watch->value.standing == TS_GIVEN ? watch->value.text : watch->margin.text);
    if (watch->at.standing == TS_GIVEN)
        ts_buffer_print(&made, " at %s", watch->at.text);
    if (watch->in.standing == TS_GIVEN)
        ts_buffer_print(&made, " in %s", watch->in.text);
    const char *name =
        made.failed ? NULL : ts_arena_copy(sampling->paper->arena, made.bytes, made.length);
    ts_buffer_close(&made);
    return name;
}

static bool lies_in(const ts_source *source, ts_node node, ts_node whole)
{
    while (node != 0 && node != whole)
        node = source->nodes[node].parent;
    return node == whole;
}

/* Of a judgement by the rule of the output. */
static bool is_meant(const ts_sampled_output *output, const ts_source *source,
                     const ts_judgement *one)
{
    return (output->node == 0 || lies_in(source, one->node, output->node)) &&
           (output->condition == TS_EVERY_CONDITION || one->condition == output->condition);
}

/* The value or margin with the least margin of one rule's judgements; NaN when there is none, or
 * when one of them could not be computed, for that might be less. */
static double least_of(const ts_sampled_output *output, const ts_source *source,
                       const ts_judgement *judgements, size_t count)
{
    const ts_judgement *least = NULL;

    for (size_t i = 0; i < count; i++) {
        const ts_judgement *one = &judgements[i];
        if (!is_meant(output, source, one))
            continue;
        if (isnan(one->margin) && !one->passed)
            return (double)NAN;
        if (!isnan(one->margin) && (least == NULL || one->margin < least->margin))
            least = one;
    }
    if (least == NULL)
        return (double)NAN;
    const double value = output->value ? least->value : least->margin;
    return isfinite(value) ? value : (double)NAN;
}

/* How many judgements from the first on are of the same rule; they stand rule by rule. */
static size_t run_of(const ts_judgement *judgements, size_t count)
{
    size_t run = 1;

    while (run < count && judgements[run].rule == judgements[0].rule)
        run++;
    return run;
}

void ts_sampled_values(const ts_sampling *sampling, ts_study *study, double *values)
{
    const ts_check_outcome *outcome = &study->outcome;

    for (size_t k = 0; k < sampling->output_count; k++) {
        const ts_sampled_output *output = &sampling->outputs[k];
        values[k] = output->rule != NULL ? (double)NAN : ts_study_number(study, output->number);
    }
    for (size_t i = 0, run; i < outcome->judgement_count; i += run) {
        const ts_judgement *first = &outcome->judgements[i];
        run                       = run_of(first, outcome->judgement_count - i);
        for (size_t k = 0; k < sampling->output_count; k++) {
            const ts_sampled_output *output = &sampling->outputs[k];
            if (output->rule != NULL && strcmp(first->rule, output->rule) == 0)
                values[k] = least_of(output, &study->source, first, run);
        }
    }
}

/* ---- what the file asks for ------------------------------------------------------------------ */

static bool find_rule(ts_sampling *sampling, const ts_word *word, ts_sampled_output *output)
{
    const char  *nearest;
    const size_t rule = ts_rulebook_find(ts_text_of(word->text), &nearest);

    if (rule == SIZE_MAX)
        say(sampling, word, "unknown-rule", "there is no such rule",
            "one that `towershaft rules` lists", nearest);
    else
        output->rule = ts_rulebook_rules()[rule]->id;
    return rule != SIZE_MAX;
}

static bool find_object(ts_sampling *sampling, const ts_word *word, ts_sampled_output *output)
{
    if (word->standing != TS_GIVEN)
        return true;
    output->node = ts_source_find(&sampling->nominal->source, ts_text_of(word->text), NULL);
    if (output->node == 0)
        say(sampling, word, "unknown-address", "the drive has nothing there",
            "the address of an object of which the rule speaks, as `check` writes it", NULL);
    return output->node != 0;
}

static bool find_condition(ts_sampling *sampling, const ts_word *word, ts_sampled_output *output)
{
    const ts_drive *drive = &sampling->nominal->drive;

    if (word->standing != TS_GIVEN)
        return true;
    output->condition = ts_address_condition(sampling->nominal, ts_text_of(word->text));
    if (output->condition >= 0)
        return true;
    const char **names = TS_TAKE(sampling->paper->arena, const char *, drive->condition_count);
    for (size_t c = 0; names != NULL && c < drive->condition_count; c++)
        names[c] = drive->conditions[c].name;
    say(sampling, word, "unknown-condition", "the drive has no such condition",
        "a condition of the drive",
        names != NULL ? ts_text_nearest(ts_text_of(word->text), names, drive->condition_count)
                      : NULL);
    return false;
}

/* The unit of what the rule judges; NULL when it judges nothing there that has a number. */
static const char *unit_of_rule(const ts_sampling *sampling, const ts_sampled_output *output)
{
    const ts_check_outcome *outcome = &sampling->nominal->outcome;

    for (size_t i = 0; i < outcome->judgement_count; i++)
        if (strcmp(outcome->judgements[i].rule, output->rule) == 0 &&
            is_meant(output, &sampling->nominal->source, &outcome->judgements[i]) &&
            !isnan(outcome->judgements[i].margin))
            return !output->value                        ? "1"
                   : outcome->judgements[i].unit != NULL ? outcome->judgements[i].unit
                                                         : "1";
    return NULL;
}

/* Where this rule does find a number, as an address in the arena; NULL: nowhere. */
static const char *judged_place(const ts_sampling *sampling, const char *rule)
{
    const ts_study *study = sampling->nominal;
    const char     *found = NULL;

    for (size_t i = 0; i < study->outcome.judgement_count && found == NULL; i++) {
        const ts_judgement *one = &study->outcome.judgements[i];
        ts_buffer           made;
        if (strcmp(one->rule, rule) != 0 || isnan(one->margin))
            continue;
        ts_buffer_open(&made, sampling->paper->allocator);
        ts_source_address(&study->source, one->node, &made);
        if (!made.failed && made.length > 0)
            found = ts_arena_copy(sampling->paper->arena, made.bytes, made.length);
        ts_buffer_close(&made);
    }
    return found;
}

static bool watch_rule(ts_sampling *sampling, const ts_sampling_watch *watch,
                       ts_sampled_output *output)
{
    const bool     value = watch->value.standing == TS_GIVEN;
    const ts_word *word  = value ? &watch->value : &watch->margin;

    *output = (ts_sampled_output){.value = value, .condition = TS_EVERY_CONDITION};
    if (!find_rule(sampling, word, output) || !find_object(sampling, &watch->at, output) ||
        !find_condition(sampling, &watch->in, output))
        return false;
    output->name = name_of(sampling, watch);
    output->unit = unit_of_rule(sampling, output);
    if (output->unit == NULL)
        say(sampling, word, "nothing-judged", "the rule finds no number there in this drive",
            watch->at.standing == TS_GIVEN || watch->in.standing == TS_GIVEN
                ? "an object and a condition that the rule judges, or neither"
                : "a rule that judges this drive, as `check --all` lists them",
            judged_place(sampling, output->rule));
    return output->name != NULL && output->unit != NULL;
}

static bool watch_number(ts_sampling *sampling, const ts_word *word, ts_sampled_output *output)
{
    ts_study        *study   = sampling->nominal;
    const ts_address address = ts_address_split(word->text);
    const size_t     before  = ts_study_message_count(study);
    bool             whole   = false;
    const ts_node    node    = ts_address_node(study, address.path, &whole);
    const size_t     note =
        node != 0 || whole ? ts_address_note(study, address, node) : (size_t)SIZE_MAX;

    if (note == SIZE_MAX) {
        const size_t     said = ts_study_message_count(study);
        const ts_message why =
            said > before ? ts_study_message(study, said - 1) : (ts_message){.nearest = NULL};
        say(sampling, word, "unknown-number",
            why.says != NULL ? why.says : "there is no such number",
            why.expected != NULL ? why.expected
                                 : "an address as `towershaft why` takes it, with its condition",
            why.nearest);
        return false;
    }
    const ts_note *of   = ts_workings_at(study->workings, note);
    const char    *unit = of->formula != NULL ? of->formula->unit : of->unit;
    *output             = (ts_sampled_output){.name      = word->text,
                                              .number    = word->text,
                                              .unit      = unit != NULL ? unit : "",
                                              .condition = TS_EVERY_CONDITION};
    sampling->workings  = true;
    return true;
}

/* ---- what is watched unasked ----------------------------------------------------------------- */

static ts_status watch_every_rule(ts_sampling *sampling)
{
    const size_t count = ts_rulebook_count();
    sampling->outputs  = TS_TAKE(sampling->paper->arena, ts_sampled_output, count);

    for (size_t r = 0; sampling->outputs != NULL && r < count; r++) {
        const char             *id    = ts_rulebook_rules()[r]->id;
        ts_sampled_output       one   = {.rule = id, .unit = "1", .condition = TS_EVERY_CONDITION};
        const ts_sampling_watch watch = {.margin = {.text = id, .standing = TS_GIVEN}};
        if (unit_of_rule(sampling, &one) == NULL)
            continue;
        one.name = name_of(sampling, &watch);
        if (one.name == NULL)
            return TS_NO_MEMORY;
        sampling->outputs[sampling->output_count++] = one;
    }
    return sampling->outputs != NULL ? TS_OK : TS_NO_MEMORY;
}

ts_status ts_sampling_find_outputs(ts_sampling *sampling)
{
    const size_t count = sampling->file.watch_count;
    bool         sound = true;

    if (count == 0)
        return watch_every_rule(sampling);
    sampling->outputs = TS_TAKE(sampling->paper->arena, ts_sampled_output, count);
    if (sampling->outputs == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < count; i++) {
        const ts_sampling_watch *watch = &sampling->file.watch[i];
        const bool               found = watch->number.standing == TS_GIVEN
                                             ? watch_number(sampling, &watch->number, &sampling->outputs[i])
                                             : watch_rule(sampling, watch, &sampling->outputs[i]);
        sound                          = sound && found;
    }
    sampling->output_count = count;
    if (ts_arena_failed(sampling->paper->arena))
        return TS_NO_MEMORY;
    return sound ? TS_OK : TS_NOT_UNDERSTOOD;
}
