/* What varies in the drive of a study, what goes together, and how many samples are there? */
#include "study/sampling.h"

#include "base/sha256.h"
#include "model/tree_read.h"
#include "sample/correlation.h"

#include <math.h>
#include <string.h>

/* ---- what goes together ---------------------------------------------------------------------- */

/* Which input an address of `correlated` is; SIZE_MAX with a message when it is none. */
static size_t input_named(ts_sampling *sampling, const ts_word *word)
{
    const char *names[TS_SAMPLE_INPUTS_MOST];

    for (size_t i = 0; i < sampling->input_count; i++) {
        names[i] = sampling->inputs[i].name;
        if (strcmp(names[i], word->text) == 0)
            return i;
    }
    ts_sampling_say(sampling,
                    &(ts_diagnostic){.code     = "not-varied",
                                     .says     = "this does not vary",
                                     .expected = "an address of `vary`",
                                     .nearest  = ts_text_nearest(ts_text_of(word->text), names,
                                                                 sampling->input_count)},
                    word->node);
    return SIZE_MAX;
}

static bool fill_matrix(ts_sampling *sampling, double *r)
{
    const size_t count = sampling->input_count;
    bool         sound = true;

    for (size_t i = 0; i < count; i++)
        r[i * count + i] = 1.0;
    for (size_t t = 0; t < sampling->file.tie_count; t++) {
        const ts_sampling_tie *tie = &sampling->file.ties[t];
        const size_t a = input_named(sampling, &tie->of), b = input_named(sampling, &tie->with);
        if (a != SIZE_MAX && a == b)
            ts_sampling_say(sampling,
                            &(ts_diagnostic){.code     = "same-value",
                                             .says     = "a value goes together with itself",
                                             .expected = "two different addresses of `vary`"},
                            tie->with.node);
        const bool pair = a != SIZE_MAX && b != SIZE_MAX && a != b;
        if (pair && fabs(r[a * count + b]) > 0.0)
            ts_sampling_say(sampling,
                            &(ts_diagnostic){.code = "tied-twice",
                                             .says = "these two are told to go together already",
                                             .expected = "each pair once, with an r that is not 0"},
                            tie->with.node);
        sound = sound && pair && !(fabs(r[a * count + b]) > 0.0);
        if (!sound)
            continue;
        r[a * count + b] = tie->r.value;
        r[b * count + a] = tie->r.value;
    }
    return sound;
}

static ts_status find_ties(ts_sampling *sampling)
{
    const size_t count = sampling->input_count;
    const bool   drawn = sampling->file.method.value == TS_SAMPLING_RANDOM;

    if (sampling->file.tie_count == 0)
        return TS_OK;
    double *r    = TS_TAKE(sampling->paper->arena, double, count *count);
    double *root = TS_TAKE(sampling->paper->arena, double, count *count);
    if (r == NULL || root == NULL)
        return TS_NO_MEMORY;
    if (!fill_matrix(sampling, r))
        return TS_NOT_UNDERSTOOD;
    const char *says = NULL;
    if (!drawn)
        says = "only random samples can go together; this method moves each value by itself";
    else if (!ts_correlation_root(r, count, root))
        says = "no values can go together so: the matrix is not positive definite";
    if (says != NULL) {
        const char *expected = !drawn ? "method: random, or no `correlated`"
                                      : "correlations nearer to 0, or those between all of them";
        ts_sampling_say(
            sampling,
            &(ts_diagnostic){.code = "impossible-correlation", .says = says, .expected = expected},
            sampling->file.ties[0].node);
        return TS_NOT_UNDERSTOOD;
    }
    sampling->design.root = root;
    return TS_OK;
}

/* ---- the design ------------------------------------------------------------------------------ */

static const char *number_text(ts_arena *arena, uint64_t number)
{
    ts_buffer made;

    ts_buffer_open(&made, ts_arena_allocator(arena));
    ts_buffer_integer(&made, (int64_t)number);
    const char *kept = made.failed ? NULL : ts_arena_copy(arena, made.bytes, made.length);
    ts_buffer_close(&made);
    return kept;
}

static void identify(ts_sampling *sampling)
{
    ts_buffer of;

    ts_buffer_open(&of, sampling->paper->allocator);
    ts_buffer_print(&of, "%s %s %s %d", ts_version(), ts_study_sha256(sampling->paper),
                    ts_study_sha256(sampling->nominal), (int)sampling->paper->options.today);
    if (!of.failed)
        ts_sha256((ts_text){of.bytes, of.length}, sampling->identity);
    ts_buffer_close(&of);
}

static ts_status lay_design(ts_sampling *sampling)
{
    static const char *const methods[] = {"random", "one at a time", "sweep", "sobol"};
    const ts_sampling_file  *file      = &sampling->file;

    sampling->design.method  = (ts_design_method)file->method.value;
    sampling->design.samples = (uint64_t)file->samples.value;
    sampling->design.seed    = (uint64_t)file->seed.value;
    sampling->design.laws    = sampling->laws;
    sampling->design.asis    = sampling->asis;
    sampling->design.steps   = sampling->steps;
    sampling->design.count   = sampling->input_count;
    sampling->method         = methods[file->method.value];
    sampling->samples        = number_text(sampling->paper->arena, ts_sampling_count(sampling));
    sampling->seed           = number_text(sampling->paper->arena, sampling->design.seed);
    identify(sampling);
    if (sampling->samples == NULL || sampling->seed == NULL || sampling->identity[0] == '\0')
        return TS_NO_MEMORY;
    if (ts_design_rows(&sampling->design) <= 1000000000)
        return TS_OK;
    ts_sampling_say(sampling,
                    &(ts_diagnostic){.code     = "too-many-samples",
                                     .says     = "these are more than 1000000000 samples",
                                     .expected = "fewer samples, or fewer steps of fewer values"},
                    file->vary[0].node);
    return TS_NOT_UNDERSTOOD;
}

/* The nodes of the drive once more: reading its values has decoded and marked those of `nominal`.
 */
static ts_status take_tree(ts_sampling *sampling)
{
    ts_study       *nominal = sampling->nominal;
    ts_diagnostics *list =
        ts_diagnostics_open(sampling->paper->arena, nominal->name, nominal->bytes);

    return list != NULL ? ts_read_tree(nominal->bytes, nominal->name, sampling->paper->arena, list,
                                       &sampling->tree)
                        : TS_NO_MEMORY;
}

ts_status ts_sampling_take(ts_sampling *sampling, const char *name, const char *bytes,
                           size_t length, const ts_study_options *options)
{
    ts_study_options whole = *options;

    whole.file               = TS_WANT_DRIVE;
    whole.workings           = true;
    sampling->paper->options = whole;
    ts_status status         = ts_study_open(&sampling->paper->own, &sampling->nominal);
    if (status == TS_OK)
        status = ts_study_read(sampling->nominal, name, bytes, length, &whole);
    if (status == TS_OK)
        status = take_tree(sampling);
    if (status == TS_OK)
        status = ts_sampling_find_inputs(sampling);
    if (status == TS_OK)
        status = ts_sampling_find_outputs(sampling);
    if (status == TS_OK)
        status = find_ties(sampling);
    return status == TS_OK ? lay_design(sampling) : status;
}
