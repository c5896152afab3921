/* How long does a sample of a study take, and do two threads take half as long as one? */
#include "bench.h"

#include "study/sampling.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define STUDY "examples/studies/bizjet-loads.yaml"
#define DRIVE "examples/bizjet.yaml"
#define LOT   64

typedef struct text {
    char  *bytes;
    size_t length;
} text;

static text load(const char *path)
{
    text  of   = {malloc(1 << 20), 0};
    FILE *file = fopen(path, "rb");

    if (file != NULL && of.bytes != NULL)
        of.length = fread(of.bytes, 1, 1 << 20, file);
    if (file != NULL)
        fclose(file);
    return of;
}

static ts_sampling *open_study(void)
{
    const ts_study_options options  = {.today = 20000};
    const text             study    = load(STUDY);
    const text             drive    = load(DRIVE);
    ts_sampling           *sampling = NULL;

    if (ts_sampling_open(NULL, STUDY, study.bytes, study.length, &sampling) != TS_OK ||
        ts_sampling_take(sampling, DRIVE, drive.bytes, drive.length, &options) != TS_OK) {
        ts_sampling_close(sampling);
        sampling = NULL;
    }
    free(study.bytes);
    free(drive.bytes);
    return sampling;
}

/* ---- a lot of samples ------------------------------------------------------------------------ */

typedef struct lot {
    ts_sampling_block *block;
    uint64_t           next;
} lot;

/* Always others, so that nothing is known but what a study knows. */
static void work_lot(void *context)
{
    lot     *of = context;
    uint64_t ids[LOT];

    for (size_t i = 0; i < LOT; i++)
        ids[i] = of->next++ % 2000;
    bench_keep(of);
    if (ts_sampling_block_run(of->block, ids, LOT) != TS_OK)
        abort();
}

static double with_threads(ts_sampling *sampling, size_t threads,
                           double (*clock)(void (*)(void *), void *))
{
    lot    of      = {NULL, 0};
    double seconds = (double)NAN;

    if (sampling != NULL && ts_sampling_block_open(sampling, LOT, threads, &of.block) == TS_OK)
        seconds = clock(work_lot, &of);
    ts_sampling_block_close(of.block);
    return seconds;
}

static double sample_of_bizjet(void)
{
    ts_sampling *sampling = open_study();
    const double seconds  = with_threads(sampling, 1, bench_seconds);

    ts_sampling_close(sampling);
    return seconds / LOT;
}

static double two_threads(void)
{
    ts_sampling *sampling = open_study();
    const double one      = with_threads(sampling, 1, bench_wall_seconds);
    const double two      = with_threads(sampling, 2, bench_wall_seconds);

    ts_sampling_close(sampling);
    return 2.0 * two / one;
}

/* ---- the same sample by itself --------------------------------------------------------------- */

typedef struct cold {
    ts_sampling *sampling;
    ts_study    *study;
    uint64_t     next;
} cold;

static void work_cold(void *context)
{
    const ts_study_options options = {.today = 20000};
    cold                  *of      = context;
    double                 values[TS_SAMPLE_INPUTS_MOST];
    ts_buffer              made;

    ts_buffer_open(&made, of->study->allocator);
    ts_design_row(&of->sampling->design, of->next++ % 2000, values);
    ts_sampling_splice(of->sampling, values, &made);
    if (ts_study_read(of->study, DRIVE, made.bytes, made.length, &options) != TS_OK)
        abort();
    ts_buffer_close(&made);
}

static double cold_of_bizjet(void)
{
    cold   of      = {open_study(), NULL, 0};
    double seconds = (double)NAN;

    if (of.sampling != NULL && ts_study_open(NULL, &of.study) == TS_OK)
        seconds = bench_seconds(work_cold, &of);
    ts_study_close(of.study);
    ts_sampling_close(of.sampling);
    return seconds;
}

static const bench_case cases[] = {
    {"study-sample", "a sample of the business jet's loads, all rules: 1e6 on two cores in 120 s",
     "s", 0.24e-3, sample_of_bizjet},
    {"study-cold", "  the same sample as a drive file by itself", "s", INFINITY, cold_of_bizjet},
    {"study-threads", "a study on two threads, over half of its time on one (wall)", "1",
     1.0 / 0.95, two_threads},
};

const bench_group measure_study = {cases, sizeof cases / sizeof cases[0]};
