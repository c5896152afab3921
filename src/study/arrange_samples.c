/* Which of the answers holds most often when values are not what the file says?
 *
 * Every answer is a drive file of its own, and each is put under the same samples of one study:
 * sample number i has the same numbers for all of them, so that what differs is the arrangement.
 */
#include "study/arranging.h"
#include "study/sampling.h"

#include <string.h>

#define ROOM 16 /* samples of each thread between two looks at the clock */

/* How many samples have each finding. */
typedef struct tally {
    uint64_t *numbers, *hits;
    size_t    count, room;
} tally;

/* One answer while it is put under samples. */
typedef struct taken {
    ts_sampling       *sampling; /* NULL: its file could not be read */
    ts_sampling_block *block;
    ts_sampled_answer *told;
    double             sum; /* kg, with what wrap and servicing count as */
    tally              findings;
} taken;

typedef struct sampler {
    ts_arranging *a;
    taken         taken[TS_ARRANGE_ANSWERS];
    size_t        count, room;
    uint64_t     *ids;
} sampler;

/* ---- the study, before the search ------------------------------------------------------------ */

bool ts_arranging_read_samples(ts_arranging *a)
{
    const ts_sampling *asked = a->options->samples;

    if (asked == NULL || asked->file.method.value == TS_SAMPLING_RANDOM)
        return true;
    ts_study_say(a->study, "no-chance", "the samples of this study tell no chances",
                 "method: random, which draws every sample by itself", "random");
    return false;
}

/* ---- what is kept of a sample ---------------------------------------------------------------- */

static bool grow(ts_arena *arena, tally *of)
{
    const size_t room    = of->room > 0 ? 2 * of->room : 64;
    uint64_t    *numbers = TS_TAKE(arena, uint64_t, room);
    uint64_t    *hits    = TS_TAKE(arena, uint64_t, room);

    if (numbers == NULL || hits == NULL)
        return false;
    if (of->count > 0) {
        memcpy(numbers, of->numbers, of->count * sizeof *numbers);
        memcpy(hits, of->hits, of->count * sizeof *hits);
    }
    *of = (tally){numbers, hits, of->count, room};
    return true;
}

static bool count_one(ts_arena *arena, tally *of, uint64_t number)
{
    for (size_t i = 0; i < of->count; i++)
        if (of->numbers[i] == number) {
            of->hits[i]++;
            return true;
        }
    if (of->count == of->room && !grow(arena, of))
        return false;
    of->numbers[of->count] = number;
    of->hits[of->count++]  = 1;
    return true;
}

/* Which of the answers hold in a sample. */
typedef struct held {
    bool   by[TS_ARRANGE_ANSWERS];
    size_t lightest; /* of these; the number of answers: none */
} held;

static ts_status read_row(sampler *s, size_t index, held *out)
{
    *out = (held){.lightest = s->count};
    for (size_t k = 0; k < s->count; k++) {
        taken *of = &s->taken[k];
        if (of->sampling == NULL)
            continue;
        const ts_sampling_row row = ts_sampling_block_row(of->block, index);
        out->by[k]                = row.state == TS_SAMPLE_HOLDS;
        of->told->states[row.state]++;
        for (size_t i = 0; i < row.finding_count; i++)
            if (!count_one(s->a->arena, &of->findings, row.findings[i]))
                return TS_NO_MEMORY;
        if (out->by[k] && (out->lightest == s->count || of->sum < s->taken[out->lightest].sum))
            out->lightest = k;
    }
    return TS_OK;
}

static ts_status keep_row(sampler *s, size_t index)
{
    ts_sampled_answers *told = &s->a->robust.samples;
    held                now;
    const ts_status     status = read_row(s, index, &now);

    if (status != TS_OK)
        return status;
    told->count++;
    if (now.lightest == s->count)
        told->none++;
    else
        s->taken[now.lightest].told->lightest++;
    for (size_t k = 0; k < s->count; k++) {
        s->taken[k].told->gains += now.by[k] && !now.by[told->beside] ? 1 : 0;
        s->taken[k].told->loses += now.by[told->beside] && !now.by[k] ? 1 : 0;
    }
    return TS_OK;
}

/* ---- all samples ----------------------------------------------------------------------------- */

static ts_status run_block(sampler *s, size_t count)
{
    ts_status status = TS_OK;

    for (size_t k = 0; status == TS_OK && k < s->count; k++)
        if (s->taken[k].sampling != NULL)
            status = ts_sampling_block_run(s->taken[k].block, s->ids, count);
    for (size_t i = 0; status == TS_OK && i < count; i++)
        status = keep_row(s, i);
    return status;
}

/* A block counts for all answers or for none, so that an end in between leaves the same samples to
 * each of them. */
static ts_status run_all(sampler *s)
{
    const ts_arrange_options *options = s->a->options;
    ts_sampled_answers       *told    = &s->a->robust.samples;
    ts_status                 status  = TS_OK;

    while (status == TS_OK && told->count < told->due) {
        if (options->stop != NULL && options->stop(options->context))
            return TS_OK;
        const uint64_t left  = told->due - told->count;
        const size_t   count = left < s->room ? (size_t)left : s->room;
        for (size_t i = 0; i < count; i++)
            s->ids[i] = told->count + i;
        status = run_block(s, count);
        if (status == TS_OK && options->sampled != NULL)
            options->sampled(options->context, told->count, told->due);
    }
    return status;
}

/* ---- the answers under it -------------------------------------------------------------------- */

/* What was told of the first thing that is wrong. */
static ts_status refuse(const sampler *s, taken *of)
{
    const ts_study *messages = ts_sampling_messages(of->sampling);
    ts_buffer       says;

    ts_buffer_open(&says, s->a->study->allocator);
    if (ts_study_message_count(messages) > 0) {
        const ts_message first = ts_study_message(messages, 0);
        ts_buffer_print(&says, "%s, line %u: %s", messages->name, first.line, first.says);
    }
    of->told->refusal =
        ts_arena_copy(s->a->arena, says.failed ? "" : says.bytes, says.failed ? 0 : says.length);
    ts_buffer_close(&says);
    ts_sampling_close(of->sampling);
    of->sampling = NULL;
    return of->told->refusal != NULL ? TS_OK : TS_NO_MEMORY;
}

static ts_status open_one(sampler *s, size_t index)
{
    ts_arranging     *a       = s->a;
    const ts_study   *paper   = a->options->samples->paper;
    const ts_text     text    = a->texts[index];
    ts_study_options  options = a->study->options;
    taken            *of      = &s->taken[index];
    ts_sampled_answer nothing = {.refusal = "its file cannot be read"};

    of->told = &a->robust.samples.answers[index];
    of->sum  = a->verdicts[index].account.sum;
    if (!a->verdicts[index].read) {
        *of->told = nothing;
        return TS_OK;
    }
    ts_status status = ts_sampling_open(&a->shared, paper->name, paper->bytes.at,
                                        paper->bytes.length, &of->sampling);
    if (status == TS_OK)
        status = ts_sampling_take(of->sampling, a->study->name, text.at, text.length, &options);
    if (status == TS_NOT_UNDERSTOOD)
        return refuse(s, of);
    if (status == TS_OK)
        status = ts_sampling_block_open(of->sampling, s->room, s->a->options->workers, &of->block);
    a->robust.samples.due = status == TS_OK ? ts_sampling_count(of->sampling) : 0;
    return status;
}

static ts_status open_all(sampler *s)
{
    ts_status status = TS_OK;

    s->ids = TS_TAKE(s->a->arena, uint64_t, s->room);
    if (s->ids == NULL)
        return TS_NO_MEMORY;
    for (size_t k = 0; status == TS_OK && k < s->count; k++)
        status = open_one(s, k);
    return status;
}

/* The one that would be written, where it takes samples; else the first that does. */
static size_t find_beside(const sampler *s)
{
    const size_t chosen = s->a->chosen;

    if (chosen < s->count && s->taken[chosen].sampling != NULL)
        return chosen;
    for (size_t k = 0; k < s->count; k++)
        if (s->taken[k].sampling != NULL)
            return k;
    return 0;
}

static void close_all(sampler *s)
{
    for (size_t k = 0; k < s->count; k++) {
        ts_sampling_block_close(s->taken[k].block);
        ts_sampling_close(s->taken[k].sampling);
    }
}

/* ---- what they tell -------------------------------------------------------------------------- */

/* What refuses an answer in most of the samples. */
static ts_status find_worst(const sampler *s, const taken *of)
{
    uint64_t most = 0;

    for (size_t i = 0; i < of->findings.count; i++) {
        const ts_sampling_finding what =
            ts_sampling_finding_of(of->sampling, of->findings.numbers[i]);
        if (of->findings.hits[i] <= most || strcmp(what.level, "refuse") != 0)
            continue;
        most              = of->findings.hits[i];
        of->told->rule    = what.rule;
        of->told->address = ts_arena_copy(s->a->arena, what.address, strlen(what.address));
        of->told->hits    = most;
        if (of->told->address == NULL)
            return TS_NO_MEMORY;
    }
    return TS_OK;
}

/* Those that hold in more samples first, of these the lightest; those that have none, last. */
static bool comes_before(const sampler *s, size_t a, size_t b)
{
    const taken   *x = &s->taken[a], *y = &s->taken[b];
    const uint64_t at = x->told->states[TS_SAMPLE_HOLDS], with = y->told->states[TS_SAMPLE_HOLDS];

    if ((x->sampling == NULL) != (y->sampling == NULL))
        return x->sampling != NULL;
    if (at != with)
        return at > with;
    return x->sum < y->sum;
}

static void put_in_order(sampler *s)
{
    size_t *order = s->a->robust.samples.order;

    for (size_t i = 0; i < s->count; i++) {
        size_t k = i;
        for (; k > 0 && comes_before(s, i, order[k - 1]); k--)
            order[k] = order[k - 1];
        order[k] = i;
    }
}

static ts_status sum_up(sampler *s)
{
    ts_sampled_answers *told   = &s->a->robust.samples;
    ts_status           status = TS_OK;

    put_in_order(s);
    for (size_t k = 0; status == TS_OK && k < s->count; k++) {
        ts_sampled_answer *of = s->taken[k].told;
        if (s->taken[k].sampling == NULL)
            continue;
        of->hold   = ts_chance_of(of->states[TS_SAMPLE_HOLDS], told->count);
        of->better = ts_chance_of(of->gains, of->gains + of->loses);
        of->luck =
            ts_coin_tail(of->gains > of->loses ? of->gains : of->loses, of->gains + of->loses);
        status = find_worst(s, &s->taken[k]);
    }
    return status;
}

ts_status ts_arranging_find_samples(ts_arranging *a)
{
    const ts_sampling *asked   = a->options->samples;
    const size_t       threads = a->options->workers > 0 ? a->options->workers : 1;
    sampler            s       = {.a = a, .count = a->result.count, .room = ROOM * threads};

    if (asked == NULL || s.count == 0)
        return TS_OK;
    a->robust.asked           = true;
    a->robust.samples.study   = asked->paper->name;
    a->robust.samples.sha256  = ts_study_sha256(asked->paper);
    a->robust.samples.seed    = (uint64_t)asked->file.seed.value;
    a->robust.samples.answers = TS_TAKE(a->arena, ts_sampled_answer, s.count);
    if (a->robust.samples.answers == NULL)
        return TS_NO_MEMORY;
    ts_status status         = open_all(&s);
    a->robust.samples.beside = find_beside(&s);
    if (status == TS_OK)
        status = run_all(&s);
    if (status == TS_OK)
        status = sum_up(&s);
    close_all(&s);
    return status;
}
