/* How long do a report, one with all workings, and a drawing take? */
#include "bench.h"

#include "study/study.h"
#include "towershaft/figure.h"
#include "towershaft/solids.h"

#include <fcntl.h>
#include <math.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>

/* The environment of a program started with none of ours: the answer depends on none of it. */
static char *const no_environment[] = {NULL};

/* ---- whole processes --------------------------------------------------------------------------
 */

static double seconds_of_children(void)
{
    struct rusage used;

    getrusage(RUSAGE_CHILDREN, &used);
    return (double)(used.ru_utime.tv_sec + used.ru_stime.tv_sec) +
           1e-6 * (double)(used.ru_utime.tv_usec + used.ru_stime.tv_usec);
}

static int up(const void *a, const void *b)
{
    const double p = *(const double *)a, q = *(const double *)b;
    return (p > q) - (p < q);
}

/* Processor seconds of a process from nothing, which others on the machine hardly lengthen: the
 * median of five. */
static double process(char *const *words)
{
    double                     sample[5];
    posix_spawn_file_actions_t quiet;

    posix_spawn_file_actions_init(&quiet);
    posix_spawn_file_actions_addopen(&quiet, 1, "/dev/null", O_WRONLY, 0);
    for (int i = 0; i < 5; i++) {
        const double before  = seconds_of_children();
        pid_t        child   = 0;
        int          outcome = -1;
        sample[i]            = NAN;
        if (posix_spawn(&child, words[0], &quiet, NULL, words, no_environment) == 0 &&
            waitpid(child, &outcome, 0) == child && outcome == 0)
            sample[i] = seconds_of_children() - before;
        if (isnan(sample[i])) {
            posix_spawn_file_actions_destroy(&quiet);
            return (double)NAN;
        }
    }
    posix_spawn_file_actions_destroy(&quiet);
    qsort(sample, 5, sizeof sample[0], up);
    return sample[2];
}

static double report(void)
{
    char *const words[] = {"build/release/towershaft",       "report", "examples/large.yaml", "-o",
                           "build/release/bench-report.pdf", NULL};
    return process(words);
}

static double report_with_workings(void)
{
    char *const words[] = {"build/release/towershaft",
                           "report",
                           "examples/large.yaml",
                           "--workings",
                           "all",
                           "-o",
                           "build/release/bench-report.pdf",
                           NULL};
    return process(words);
}

/* ---- drawings ---------------------------------------------------------------------------------
 */

typedef struct drawing {
    ts_study   *study;
    const char *figure; /* NULL: the bodies, as glTF */
    bool        failed;
} drawing;

static int forget(void *context, const char *bytes, size_t length)
{
    (void)context;
    (void)length;
    bench_keep(bytes);
    return 0;
}

static void draw(void *context)
{
    drawing                *it      = context;
    const ts_sink           sink    = {forget, NULL};
    const ts_figure_options options = {.figure = it->figure, .format = "pdf", .ground = "print"};
    const ts_status         status  = it->figure != NULL ? ts_study_draw(it->study, &options, &sink)
                                                         : ts_study_write_glb(it->study, &sink);

    it->failed = it->failed || status != TS_OK;
}

static ts_study *read_large(void)
{
    const ts_study_options options = {.today = 20000};
    static char            text[131072];
    ts_study              *study  = NULL;
    FILE                  *file   = fopen("examples/large.yaml", "rb");
    const size_t           length = file == NULL ? 0 : fread(text, 1, sizeof text, file);

    if (file != NULL)
        fclose(file);
    if (length == 0 || ts_study_open(NULL, &study) != TS_OK)
        return NULL;
    if (ts_study_read(study, "bench.yaml", text, length, &options) == TS_OK)
        return study;
    ts_study_close(study);
    return NULL;
}

/* The one that searches before it draws: it sizes all faces. */
static const char searching[] = "widths";

static double widths(void)
{
    drawing      it      = {.study = read_large(), .figure = searching};
    const double seconds = it.study == NULL ? (double)NAN : bench_seconds(draw, &it);

    ts_study_close(it.study);
    return it.failed ? (double)NAN : seconds;
}

/* Of a solved drive; what else a figure computes for itself (a start, modes) is counted. */
static double slowest_drawing(void)
{
    drawing it      = {.study = read_large()};
    double  slowest = it.study == NULL ? (double)NAN : 0.0;

    for (size_t i = 0; it.study != NULL && (it.figure = ts_figure_name(i)) != NULL; i++) {
        if (strcmp(it.figure, searching) == 0)
            continue;
        const double seconds = bench_seconds(draw, &it);
        slowest              = seconds > slowest ? seconds : slowest;
    }
    ts_study_close(it.study);
    return it.failed ? (double)NAN : slowest;
}

static double bodies(void)
{
    drawing      it      = {.study = read_large()};
    const double seconds = it.study == NULL ? (double)NAN : bench_seconds(draw, &it);

    ts_study_close(it.study);
    return it.failed ? (double)NAN : seconds;
}

static const bench_case cases[] = {
    {"report-large", "report of the large example as a whole process, processor time", "s", 1.0,
     report},
    {"report-workings", "the same with all workings", "s", 4.0, report_with_workings},
    {"drawing-slowest", "the slowest picture of the large example, once it is solved", "s", 0.1,
     slowest_drawing},
    {"drawing-widths", "the picture that sizes all faces of the drive first", "s", (double)INFINITY,
     widths},
    {"bodies-glb", "all bodies of the large example as glTF", "s", 0.1, bodies},
};

const bench_group measure_paper = {cases, sizeof cases / sizeof cases[0]};
