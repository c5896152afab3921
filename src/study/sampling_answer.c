/* What do the samples of a study tell? */
#include "study/sampling.h"

#include "report/sampling_report.h"
#include "study/figures.h"
#include "study/outlet.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* What is gathered while columns are read. */
typedef struct teller {
    ts_sampling             *sampling;
    const ts_sampling_found *found;
    ts_arena                *arena;
    ts_sample_answer         answer;
    ts_sampled_column       *columns; /* inputs, then outputs */
    double                  *read;    /* [count] one column                         */
    double                  *sorted;  /* [count] the same, in order                 */
    double                  *inputs;  /* [input_count][count] all varied values     */
    double                  *placed;  /* [input_count][count] their ranks           */
    double                  *ranks;   /* [4 * count]                                */
} teller;

static bool tells_ranks(const teller *t)
{
    return t->answer.design == TS_DESIGN_RANDOM || t->answer.design == TS_DESIGN_SWEEP;
}

static bool tells_shares(const teller *t)
{
    return t->answer.design == TS_DESIGN_SHARES;
}

static ts_status open_teller(teller *t)
{
    const size_t count   = (size_t)t->found->count + 1;
    const size_t inputs  = t->sampling->input_count;
    const size_t outputs = t->sampling->output_count;

    t->columns = TS_TAKE(t->arena, ts_sampled_column, inputs + outputs);
    t->read    = TS_TAKE(t->arena, double, count);
    t->sorted  = TS_TAKE(t->arena, double, count);
    t->inputs  = TS_TAKE(t->arena, double, inputs *count);
    t->placed  = TS_TAKE(t->arena, double, inputs *count);
    t->ranks   = TS_TAKE(t->arena, double, 4 * count);
    return ts_arena_failed(t->arena) ? TS_NO_MEMORY : TS_OK;
}

/* With bounds only where samples are independent of each other: those of lots share values, and a
 * grid is no sample. */
static ts_chance chance_of(const teller *t, uint64_t hits, uint64_t count)
{
    const double nan    = (double)NAN;
    ts_chance    chance = ts_chance_of(hits, count);

    if (t->answer.design != TS_DESIGN_RANDOM)
        chance.low = chance.high = nan;
    return chance;
}

/* How the values, in order, spread over even steps. */
static void fill_bars(const double *sorted, ts_sampled_column *column)
{
    const ts_estimate *of    = &column->estimate;
    const double       width = (of->most - of->least) / TS_SAMPLE_BARS;

    for (size_t i = 0; i < of->count; i++) {
        const double at = width > 0.0 ? floor((sorted[i] - of->least) / width) : 0.0;
        column->bars[at < TS_SAMPLE_BARS ? (size_t)at : TS_SAMPLE_BARS - 1]++;
    }
}

static bool read_column(teller *t, size_t index, double *values)
{
    const ts_sampling_column is     = ts_sampling_column_at(t->sampling, index);
    ts_sampled_column       *column = &t->columns[index];
    const size_t             count  = (size_t)t->found->count;

    if (!t->found->column(t->found->context, index, values))
        return false;
    *column = (ts_sampled_column){.name = is.name, .unit = is.unit};
    if (!is.input) {
        const ts_sampled_output *output = &t->sampling->outputs[index - t->sampling->input_count];
        column->margin                  = output->rule != NULL && !output->value;
    }
    memcpy(t->sorted, values, count * sizeof *values);
    ts_estimate_of(t->sorted, count, &column->estimate);
    column->below = chance_of(t, column->estimate.below, column->estimate.count);
    if (t->answer.design != TS_DESIGN_RANDOM)
        column->estimate.error = (double)NAN;
    fill_bars(t->sorted, column);
    return true;
}

/* ---- what moves what ------------------------------------------------------------------------- */

/* Values are put in order once, and not again for every number that is held against them. */
static void rank_inputs(teller *t)
{
    const size_t count = (size_t)t->found->count;

    for (size_t k = 0; k < t->sampling->input_count; k++) {
        memcpy(t->placed + k * count, t->inputs + k * count, count * sizeof *t->placed);
        ts_rank(t->placed + k * count, count, t->ranks);
    }
}

/* Where a sample lacks the number, the others have other ranks: these are then found anew. */
static void find_ranks(teller *t, const ts_sampled_column *column, const double *output,
                       double *ranks)
{
    const size_t count = (size_t)t->found->count;
    const bool   whole = column->estimate.missing == 0;

    if (whole) {
        memcpy(t->ranks, output, count * sizeof *output);
        ts_rank(t->ranks, count, t->ranks + 2 * count);
    }
    for (size_t k = 0; k < t->sampling->input_count; k++)
        ranks[k] = whole ? ts_correlation_of_ranks(t->placed + k * count, t->ranks, count)
                         : ts_rank_correlation(t->inputs + k * count, output, count, t->ranks);
}

/* Complete lots only, packed to the front of `sorted`, which is free by now. */
static size_t find_shares(teller *t, const double *output, ts_variance_share *shares)
{
    const uint64_t blocks = t->sampling->input_count + 2;
    size_t         lots   = 0;

    for (size_t i = 0; i < t->found->count;) {
        const uint64_t first = t->found->ids[i];
        const bool     whole = first % blocks == 0 && i + blocks <= t->found->count &&
                           t->found->ids[i + blocks - 1] == first + blocks - 1;
        if (whole)
            memcpy(t->sorted + lots++ * blocks, output + i, blocks * sizeof *output);
        i += whole ? (size_t)blocks : 1;
    }
    return ts_variance_shares(t->sorted, lots, t->sampling->input_count, shares);
}

static void find_travels(teller *t, const double *output, ts_sampled_travel *travels,
                         double *nominal)
{
    const double nan   = (double)NAN;
    const size_t count = (size_t)t->found->count;

    *nominal = nan;
    for (size_t k = 0; k < t->sampling->input_count; k++)
        travels[k] = (ts_sampled_travel){nan, nan, nan, nan};
    for (size_t i = 0; i < count; i++) {
        unsigned     step;
        const size_t k = ts_design_moves(&t->sampling->design, t->found->ids[i], &step);
        if (t->found->ids[i] == 0)
            *nominal = output[i];
        if (k == SIZE_MAX || isnan(output[i]))
            continue;
        ts_sampled_travel *travel = &travels[k];
        const double       value  = t->inputs[k * count + i];
        if (isnan(travel->least) || output[i] < travel->least) {
            travel->least = output[i];
            travel->from  = value;
        }
        if (isnan(travel->most) || output[i] > travel->most) {
            travel->most = output[i];
            travel->to   = value;
        }
    }
}

/* The value that goes with the number most closely, or moves it furthest alone. */
static size_t strongest(const teller *t, const double *ranks, const ts_sampled_travel *travels)
{
    const bool travel = !tells_ranks(t) && !tells_shares(t);
    double     best   = 0.0;
    size_t     found  = SIZE_MAX;

    for (size_t k = 0; k < t->sampling->input_count; k++) {
        const double is = travel ? travels[k].most - travels[k].least : fabs(ranks[k]);
        if (is > best) {
            best  = is;
            found = k;
        }
    }
    return found;
}

/* Is the sample one of those that belong into a picture over that value? */
static bool is_point(const teller *t, size_t input, size_t i, const double *output)
{
    unsigned step;

    if (isnan(output[i]) || input == SIZE_MAX)
        return false;
    if (t->answer.design != TS_DESIGN_ONE_AT_A_TIME || t->found->ids[i] == 0)
        return true;
    return ts_design_moves(&t->sampling->design, t->found->ids[i], &step) == input;
}

static void pick_points(const teller *t, const double *output, ts_sampled_points *points)
{
    const size_t count = (size_t)t->found->count;
    const bool   alone = t->answer.design == TS_DESIGN_ONE_AT_A_TIME;
    const size_t step  = alone ? 1 : count / TS_SAMPLE_POINTS + 1; /* a grid is in order */

    for (size_t i = 0; i < count && points->count < TS_SAMPLE_POINTS; i += step) {
        if (!is_point(t, points->input, i, output))
            continue;
        points->x[points->count]   = t->inputs[points->input * count + i];
        points->y[points->count++] = output[i];
    }
}

static ts_status tell_columns(teller *t)
{
    const size_t       inputs = t->sampling->input_count, outputs = t->sampling->output_count;
    const size_t       count   = (size_t)t->found->count;
    double            *ranks   = TS_TAKE(t->arena, double, inputs *outputs + 1);
    ts_variance_share *shares  = TS_TAKE(t->arena, ts_variance_share, inputs * outputs + 1);
    ts_sampled_travel *travels = TS_TAKE(t->arena, ts_sampled_travel, inputs * outputs + 1);
    double            *nominal = TS_TAKE(t->arena, double, outputs + 1);
    size_t            *lots    = TS_TAKE(t->arena, size_t, outputs + 1);
    ts_sampled_points *points  = TS_TAKE(t->arena, ts_sampled_points, outputs + 1);

    if (ts_arena_failed(t->arena))
        return TS_NO_MEMORY;
    for (size_t k = 0; k < inputs; k++)
        if (!read_column(t, k, t->inputs + k * count))
            return TS_NO_OUTPUT;
    if (tells_ranks(t) || tells_shares(t))
        rank_inputs(t);
    for (size_t o = 0; o < outputs; o++) {
        if (!read_column(t, inputs + o, t->read))
            return TS_NO_OUTPUT;
        if (tells_ranks(t) || tells_shares(t))
            find_ranks(t, &t->columns[inputs + o], t->read, ranks + o * inputs);
        else
            find_travels(t, t->read, travels + o * inputs, nominal + o);
        if (tells_shares(t))
            lots[o] = find_shares(t, t->read, shares + o * inputs);
        points[o].input = strongest(t, ranks + o * inputs, travels + o * inputs);
        pick_points(t, t->read, &points[o]);
    }
    t->answer.points  = points;
    t->answer.inputs  = t->columns;
    t->answer.outputs = t->columns + inputs;
    if (tells_ranks(t)) {
        t->answer.ranks = ranks;
    } else if (tells_shares(t)) {
        t->answer.shares     = shares;
        t->answer.share_lots = lots;
    } else {
        t->answer.travels = travels;
        t->answer.nominal = nominal;
    }
    return TS_OK;
}

/* ---- findings -------------------------------------------------------------------------------- */

static int by_hits(const void *a, const void *b)
{
    const ts_sampled_chance *x = a, *y = b;

    if (x->hits != y->hits)
        return x->hits < y->hits ? 1 : -1;
    const int rule = strcmp(x->rule, y->rule);
    return rule != 0 ? rule : strcmp(x->address, y->address);
}

static ts_status tell_findings(teller *t)
{
    const size_t       count    = t->found->finding_count;
    ts_sampled_chance *findings = TS_TAKE(t->arena, ts_sampled_chance, count + 1);

    for (size_t i = 0; findings != NULL && i < count; i++) {
        const ts_sampling_finding of = ts_sampling_finding_of(t->sampling, t->found->findings[i]);
        findings[i] =
            (ts_sampled_chance){.rule    = of.rule,
                                .level   = of.level,
                                .address = ts_arena_copy(t->arena, of.address, strlen(of.address)),
                                .hits    = t->found->hits[i],
                                .chance  = chance_of(t, t->found->hits[i], t->found->count)};
    }
    if (ts_arena_failed(t->arena))
        return TS_NO_MEMORY;
    qsort(findings, count, sizeof *findings, by_hits);
    t->answer.findings      = findings;
    t->answer.finding_count = count;
    return TS_OK;
}

/* ---- the whole ------------------------------------------------------------------------------- */

static ts_status tell(teller *t)
{
    const ts_sampling       *sampling = t->sampling;
    const ts_sampling_found *found    = t->found;

    t->answer = (ts_sample_answer){
        .title        = sampling->file.title.text,
        .method       = sampling->method,
        .design       = sampling->design.method,
        .seed         = sampling->design.seed,
        .due          = ts_sampling_count(sampling),
        .count        = found->count,
        .holds        = found->states[TS_SAMPLE_HOLDS],
        .fails        = found->states[TS_SAMPLE_DOES_NOT_HOLD],
        .unknown      = found->states[TS_SAMPLE_NOT_COMPUTABLE],
        .refused      = found->states[TS_SAMPLE_NOT_UNDERSTOOD],
        .laws         = sampling->laws,
        .asis         = sampling->asis,
        .input_count  = sampling->input_count,
        .output_count = sampling->output_count,
    };
    t->answer.hold   = chance_of(t, found->states[TS_SAMPLE_HOLDS], found->count);
    ts_status status = open_teller(t);
    if (status == TS_OK)
        status = tell_columns(t);
    return status == TS_OK ? tell_findings(t) : status;
}

/* Is this default one that the method of the study uses? */
static bool is_used(const ts_sampling *sampling, const char *key)
{
    const bool steps = sampling->design.method == TS_DESIGN_ONE_AT_A_TIME ||
                       sampling->design.method == TS_DESIGN_SWEEP;

    if (strcmp(key, "steps") == 0)
        return steps;
    return !steps || (strcmp(key, "samples") != 0 && strcmp(key, "seed") != 0);
}

/* `steps` of every value that varies has the same default. */
static bool is_kept(const ts_assumption *kept, size_t count, const char *key)
{
    for (size_t i = 0; i < count; i++)
        if (strcmp(kept[i].key, key) == 0)
            return true;
    return false;
}

/* The defaults of the file, and what a law takes from the drive as it stands. */
static ts_status gather_assumed(const ts_sampling *sampling, ts_arena *arena,
                                ts_sampling_head *head)
{
    const ts_sampling_file *file = &sampling->file;
    ts_assumption          *kept =
        TS_TAKE(arena, ts_assumption, file->assumed_count + sampling->input_count + 1);
    size_t count = 0;

    if (kept == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < file->assumed_count; i++)
        if (is_used(sampling, file->assumed[i].key) && !is_kept(kept, count, file->assumed[i].key))
            kept[count++] = file->assumed[i];
    for (size_t k = 0; k < sampling->input_count; k++) {
        const ts_sampling_vary *vary = &file->vary[k];
        const ts_law            law  = sampling->laws[k].law;
        const bool              bell = law == TS_LAW_NORMAL || law == TS_LAW_LOG_NORMAL;
        const bool              mean = bell && vary->mean.standing != TS_GIVEN;
        if (!mean && !(law == TS_LAW_TRIANGLE && vary->mode.standing != TS_GIVEN))
            continue;
        kept[count++] = (ts_assumption){.node   = vary->node,
                                        .key    = mean ? "mean" : "mode",
                                        .value  = "what stands in the drive",
                                        .reason = sampling->inputs[k].name};
    }
    head->assumed       = kept;
    head->assumed_count = count;
    return TS_OK;
}

ts_status ts_sampling_write(ts_sampling *sampling, const ts_sampling_found *found, bool json,
                            const ts_page_options *options, const ts_sink *sink)
{
    teller           t    = {.sampling = sampling, .found = found};
    ts_sampling_head head = {.version    = ts_version(),
                             .caution    = ts_caution(),
                             .study      = sampling->paper->name,
                             .study_hash = ts_study_sha256(sampling->paper),
                             .drive      = sampling->nominal->name,
                             .drive_hash = ts_study_sha256(sampling->nominal)};
    ts_buffer        out;

    t.arena = ts_arena_open(sampling->paper->allocator);
    if (t.arena == NULL)
        return TS_NO_MEMORY;
    ts_buffer_open(&out, sampling->paper->allocator);
    ts_page   page   = ts_outlet_page(options, &out);
    ts_status status = tell(&t);
    if (status == TS_OK)
        status = gather_assumed(sampling, t.arena, &head);
    if (status == TS_OK && json)
        ts_sampling_json(&head, &t.answer, &out);
    else if (status == TS_OK)
        ts_sampling_page(&head, &t.answer, &page);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    ts_arena_close(t.arena);
    return status;
}

ts_status ts_sampling_draw(ts_sampling *sampling, const ts_sampling_found *found,
                           const ts_figure_options *options, const ts_sink *sink)
{
    teller             t       = {.sampling = sampling, .found = found};
    ts_study          *nominal = sampling->nominal;
    ts_drawing_subject subject = ts_study_subject(nominal, NULL);
    ts_draw_options    drawn;

    if (!ts_study_ask(nominal, TS_WANT_DRIVE) || !ts_study_figure(nominal, options, &drawn) ||
        !ts_study_has_font(nominal))
        return TS_NOT_UNDERSTOOD;
    if (drawn.format == TS_PICTURE_DXF) {
        ts_study_say(nominal, "no-true-size", "samples have no true size, and a DXF wants one",
                     "svg, pdf, png", NULL);
        return TS_NOT_UNDERSTOOD;
    }
    t.arena = ts_arena_open(sampling->paper->allocator);
    if (t.arena == NULL)
        return TS_NO_MEMORY;
    ts_status status = tell(&t);
    ts_buffer verdict;
    ts_buffer_open(&verdict, sampling->paper->allocator);
    ts_buffer_print(&verdict, "%zu of %zu samples hold", (size_t)t.answer.holds,
                    (size_t)t.answer.count);
    subject.verdict       = verdict.failed ? "" : verdict.bytes;
    subject.samples       = &t.answer;
    subject.title         = sampling->file.title.text;
    subject.finding_count = 0;
    drawn.figure          = TS_FIGURE_SAMPLES;
    if (status == TS_OK)
        status = verdict.failed ? TS_NO_MEMORY : ts_draw(&subject, &drawn, sink);
    ts_buffer_close(&verdict);
    ts_arena_close(t.arena);
    return status;
}
