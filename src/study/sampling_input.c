/* Which values of a drive vary, and by which laws? */
#include "study/sampling.h"

#include <math.h>
#include <string.h>

/* What is asked of one line of `vary`. */
typedef struct line {
    ts_sampling            *sampling;
    const ts_sampling_vary *vary;
    ts_sampled_input       *input;
    double                  asis;
    bool                    sound;
} line;

static void say(line *at, const ts_word *word, const char *code, const char *says,
                const char *expected, const char *nearest)
{
    ts_sampling_say(
        at->sampling,
        &(ts_diagnostic){.code = code, .says = says, .expected = expected, .nearest = nearest},
        word->standing == TS_GIVEN ? word->node : at->vary->node);
    at->sound = false;
}

/* ---- the place ------------------------------------------------------------------------------- */

/* The child of `parent` that was probably meant, as an address in the arena; NULL: none is near. */
static const char *nearest_child(const line *at, ts_node parent)
{
    const ts_source *source = &at->sampling->nominal->source;
    ts_arena        *arena  = at->sampling->paper->arena;
    const char     **names  = TS_TAKE(arena, const char *, source->node_count + 1);
    size_t           count  = 0;

    for (ts_node n = 1; names != NULL && n <= source->node_count; n++) {
        ts_buffer made;
        if (source->nodes[n].parent != parent)
            continue;
        ts_buffer_open(&made, ts_arena_allocator(arena));
        ts_source_address(source, n, &made);
        if (!made.failed && made.length > 0)
            names[count] = ts_arena_copy(arena, made.bytes, made.length);
        count += names[count] != NULL ? 1 : 0;
        ts_buffer_close(&made);
    }
    return names != NULL ? ts_text_nearest(ts_text_of(at->vary->at.text), names, count) : NULL;
}

/* The kind and unit of a written value: the first kind as which it can be read.  Units of the same
 * name mean the same in every kind but for differences, which no law of one value mixes. */
static bool read_plain(ts_text text, ts_sampled_input *input, double *si)
{
    for (int kind = 0; kind < (int)TS_KIND_COUNT; kind++) {
        ts_quantity_fault fault;
        input->unit = NULL;
        if (!ts_quantity_parse(text, (ts_kind)kind, si, &input->unit, &fault))
            continue;
        input->kind = (ts_kind)kind;
        return true;
    }
    return false;
}

static bool find_place(line *at)
{
    const ts_source *source  = &at->sampling->nominal->source;
    const ts_text    address = ts_text_of(at->vary->at.text);
    ts_node          deepest = 0;
    const ts_node    node    = ts_source_find(source, address, &deepest);
    const ts_node    value   = node != 0 ? ts_source_value(source, node) : 0;

    if (node == 0)
        say(at, &at->vary->at, "unknown-address", "the drive has no value there",
            "the address of a value that stands in the drive file",
            nearest_child(at, deepest != 0 ? deepest : 1));
    else if (value == 0)
        say(at, &at->vary->at, "no-value", "this is a part, not a value",
            "the address of one value in it", nearest_child(at, node));
    else if (!read_plain(source->nodes[value].scalar, at->input, &at->asis))
        say(at, &at->vary->at, "no-number", "what stands there is not one number",
            "a value such as 13 kW; of a range or a word vary another value", NULL);
    if (!at->sound)
        return false;
    const ts_node_place *place = &source->nodes[value];
    at->input->name            = at->vary->at.text;
    at->input->start           = place->start;
    at->input->end             = place->end;
    at->input->node            = value;
    at->input->whole           = at->input->kind == TS_KIND_NUMBER &&
                       memchr(place->scalar.at, '.', place->scalar.length) == NULL &&
                       memchr(place->scalar.at, '%', place->scalar.length) == NULL;
    return true;
}

/* ---- the law --------------------------------------------------------------------------------- */

/* A quantity of the law, or a percentage of what stands in the drive. */
static double quantity(line *at, const ts_word *word, double otherwise)
{
    ts_quantity_fault fault = {0};
    double            si    = (double)NAN;

    if (word->standing != TS_GIVEN)
        return otherwise;
    const ts_text text  = ts_text_of(word->text);
    const bool    share = text.length > 0 && text.at[text.length - 1] == '%';
    if (!ts_quantity_parse(text, share ? TS_KIND_NUMBER : at->input->kind, &si, NULL, &fault)) {
        say(at, word, fault.code, fault.says, fault.expected, fault.nearest);
        return (double)NAN;
    }
    if (share && at->input->kind == TS_KIND_TEMPERATURE) {
        say(at, word, "share-of-temperature", "a temperature has no percentage",
            "a temperature such as 80 degC", NULL);
        return (double)NAN;
    }
    return share ? si * fabs(at->asis) : si;
}

/* A deviation of a temperature is a difference; all other kinds are their own. */
static double deviation(line *at)
{
    const ts_kind kind = at->input->kind;
    double        found;

    if (kind == TS_KIND_TEMPERATURE)
        at->input->kind = TS_KIND_TEMPERATURE_DIFFERENCE;
    found           = quantity(at, &at->vary->deviation, (double)NAN);
    at->input->kind = kind;
    return found;
}

/* What belongs to another law is a slip, not to be passed over. */
static void refuse(line *at, const ts_word *word, const char *says)
{
    if (word->standing == TS_GIVEN)
        say(at, word, "other-law", says, "the keys of its law alone (docs/study-file.md)", NULL);
}

static void read_law(line *at, ts_sample_law *law)
{
    const ts_sampling_vary *vary = at->vary;
    const ts_law            kind = (ts_law)vary->law.value;
    const bool              bell = kind == TS_LAW_NORMAL || kind == TS_LAW_LOG_NORMAL;

    *law = (ts_sample_law){.law = kind};
    if (!bell) {
        refuse(at, &vary->mean, "this law has no mean of its own");
        refuse(at, &vary->deviation, "this law has no deviation of its own");
    }
    if (kind != TS_LAW_TRIANGLE)
        refuse(at, &vary->mode, "only a triangle has a mode");
    law->least     = quantity(at, &vary->least, (double)-INFINITY);
    law->most      = quantity(at, &vary->most, (double)INFINITY);
    law->mean      = bell ? quantity(at, &vary->mean, at->asis) : 0.0;
    law->deviation = bell ? deviation(at) : 0.0;
    law->mode      = kind == TS_LAW_TRIANGLE ? quantity(at, &vary->mode, at->asis) : 0.0;
    if (bell && vary->deviation.standing != TS_GIVEN)
        say(at, &vary->at, "missing-deviation", "this law has no deviation",
            "deviation: with a quantity, or a percentage of what stands in the drive", NULL);
    const char *fault = at->sound ? ts_law_fault(law) : NULL;
    if (fault != NULL)
        say(at, &vary->at, "impossible-law", fault,
            bell ? "mean (or what stands in the drive) and deviation; least below most"
                 : "least below most; a mode between them, and whole ends of whole numbers",
            NULL);
    if (at->sound && at->input->whole && kind != TS_LAW_WHOLE)
        say(at, &vary->at, "whole-number", "a whole number stands there, and this law draws others",
            "law: whole, with least and most; or write the value of the drive with a point", NULL);
}

/* ---- all of them ----------------------------------------------------------------------------- */

static ts_status order_inputs(ts_sampling *sampling)
{
    uint32_t *order = TS_TAKE(sampling->paper->arena, uint32_t, sampling->input_count);

    if (order == NULL)
        return TS_NO_MEMORY;
    for (uint32_t i = 0; i < sampling->input_count; i++) {
        uint32_t k = i;
        for (; k > 0 && sampling->inputs[order[k - 1]].start > sampling->inputs[i].start; k--)
            order[k] = order[k - 1];
        order[k] = i;
    }
    sampling->by_place = order;
    for (size_t i = 1; i < sampling->input_count; i++) {
        if (sampling->inputs[order[i]].start != sampling->inputs[order[i - 1]].start)
            continue;
        ts_sampling_say(sampling,
                        &(ts_diagnostic){.code     = "varied-twice",
                                         .says     = "this value varies already",
                                         .expected = "each value once"},
                        sampling->file.vary[order[i]].at.node);
        return TS_NOT_UNDERSTOOD;
    }
    return TS_OK;
}

ts_status ts_sampling_find_inputs(ts_sampling *sampling)
{
    ts_arena    *arena = sampling->paper->arena;
    const size_t count = sampling->file.vary_count;
    bool         sound = true;

    sampling->inputs      = TS_TAKE(arena, ts_sampled_input, count);
    sampling->laws        = TS_TAKE(arena, ts_sample_law, count);
    sampling->asis        = TS_TAKE(arena, double, count);
    sampling->steps       = TS_TAKE(arena, unsigned, count);
    sampling->input_count = count;
    if (ts_arena_failed(arena))
        return TS_NO_MEMORY;
    for (size_t i = 0; i < count; i++) {
        line at = {sampling, &sampling->file.vary[i], &sampling->inputs[i], (double)NAN, true};
        if (find_place(&at))
            read_law(&at, &sampling->laws[i]);
        sampling->asis[i]  = at.asis;
        sampling->steps[i] = (unsigned)at.vary->steps.value;
        sound              = sound && at.sound;
    }
    if (ts_arena_failed(arena))
        return TS_NO_MEMORY;
    return sound ? order_inputs(sampling) : TS_NOT_UNDERSTOOD;
}

void ts_sampling_print_value(const ts_sampling *sampling, size_t input, double value,
                             ts_buffer *out)
{
    const ts_unit *unit = sampling->inputs[input].unit;

    if (unit == NULL || strcmp(unit->name, "1") == 0)
        ts_buffer_number(out, value);
    else
        ts_quantity_print(out, value, unit);
}

void ts_sampling_splice(const ts_sampling *sampling, const double *values, ts_buffer *out)
{
    const ts_text bytes = sampling->nominal->bytes;
    size_t        from  = 0;

    for (size_t i = 0; i < sampling->input_count; i++) {
        const uint32_t          k     = sampling->by_place[i];
        const ts_sampled_input *input = &sampling->inputs[k];
        ts_buffer_bytes(out, bytes.at + from, input->start - from);
        ts_sampling_print_value(sampling, k, values[k], out);
        from = input->end;
    }
    ts_buffer_bytes(out, bytes.at + from, bytes.length - from);
}
