/* How long does it take to follow a drive in time? */
#include "bench.h"

#include "study/seizing.h"
#include "study/starting.h"
#include "study/twisting.h"
#include "study/whirling.h"
#include "towershaft/seize.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

/* The large example, read and solved; NULL: it could not be. */
static ts_study *open_large(void)
{
    const ts_study_options options = {.today = 20000};
    ts_study              *study   = NULL;
    FILE                  *file    = fopen("examples/large.yaml", "rb");
    char                  *text    = calloc(1, 1 << 20);
    size_t                 length  = 0;
    if (file != NULL && text != NULL)
        length = fread(text, 1, 1 << 20, file);
    if (file != NULL)
        fclose(file);
    if (length == 0 || ts_study_open(NULL, &study) != TS_OK ||
        ts_study_read(study, "bench.yaml", text, length, &options) != TS_OK) {
        ts_study_close(study);
        study = NULL;
    }
    free(text);
    return study;
}

static bool begin(ts_study *study, bool grid)
{
    const ts_start_wish wish  = {(double)NAN, (double)NAN, 400, grid, TS_NOWHERE};
    ts_arena           *arena = ts_arena_open(NULL);
    ts_start_answer     start;
    const bool fine = arena != NULL && ts_study_start(study, &wish, arena, &start) == TS_OK &&
                      start.it->missing == NULL && start.it->run.outcome == TS_START_IDLE;
    ts_arena_close(arena);
    return fine;
}

static void one_start(void *study)
{
    bench_keep(begin(study, false) ? study : NULL);
}

static void whole_grid(void *study)
{
    bench_keep(begin(study, true) ? study : NULL);
}

static double seconds_of(void (*work)(void *), bool grid)
{
    ts_study *study   = open_large();
    double    seconds = (double)NAN;
    if (study != NULL && begin(study, grid))
        seconds = bench_seconds(work, study);
    ts_study_close(study);
    return seconds;
}

static double start_large(void)
{
    return seconds_of(one_start, false);
}

static double start_grid(void)
{
    return seconds_of(whole_grid, true);
}

/* ---- seizures ---------------------------------------------------------------------------------
 */

static int into_nothing(void *context, const char *bytes, size_t length)
{
    (void)context;
    bench_keep(bytes);
    return length < SIZE_MAX ? 0 : 1;
}

/* With the neck at both ends of its band and without it: three runs and the words. */
static bool seize(ts_study *study, const char *accessory, const char *condition)
{
    const ts_seize_options options = {.accessory = accessory, .condition = condition, .json = true};
    const ts_sink          sink    = {into_nothing, NULL};
    ts_verdict             verdict;
    return ts_seize_write(study, &options, NULL, &verdict, &sink) == TS_OK;
}

static void one_seizure(void *study)
{
    bench_keep(seize(study, "hydraulic pump 1", "take-off") ? study : NULL);
}

static double seizure_seconds(void (*work)(void *))
{
    ts_study *study   = open_large();
    double    seconds = (double)NAN;
    if (study != NULL && seize(study, "hydraulic pump 1", "take-off"))
        seconds = bench_seconds(work, study);
    ts_study_close(study);
    return seconds;
}

static double seize_one(void)
{
    return seizure_seconds(one_seizure);
}

/* Every accessory in every condition in which it turns. */
static void all_seizures(void *context)
{
    ts_study       *study = context;
    ts_arena       *arena = ts_arena_open(NULL);
    ts_twist_answer twist;
    size_t          runs = 0;
    if (arena != NULL && ts_study_twist(study, arena, &twist) == TS_OK)
        for (size_t a = 0; a < study->drive.accessory_count; a++)
            for (size_t c = 0; c < study->drive.condition_count; c++) {
                const ts_seize_options options = {.accessory = study->drive.accessories[a].name,
                                                  .condition = study->drive.conditions[c].name};
                ts_arena              *own     = ts_arena_open(NULL);
                ts_seize_answer        seize;
                if (own != NULL && ts_study_seize(study, &options, &twist, own, &seize) == TS_OK)
                    for (int k = 0; k < TS_SEIZE_RUNS; k++)
                        runs +=
                            seize.runs[k].there && seize.runs[k].seizure.run.fault == TS_RUN_FINE
                                ? 1
                                : 0;
                ts_arena_close(own);
            }
    ts_arena_close(arena);
    bench_keep(runs > 150 ? context : NULL);
}

static double seize_all(void)
{
    return seizure_seconds(all_seizures);
}

static void one_course(void *context)
{
    ts_study              *study = context;
    ts_arena              *arena = ts_arena_open(NULL);
    const ts_whirl_course *courses;
    const uint32_t         shaft = ts_whirls_nearest(&study->whirls);
    const bool             fine  = arena != NULL && shaft != UINT32_MAX &&
                      ts_study_course(study, TS_COURSE_SPEEDS, arena, &courses) == TS_OK &&
                      courses[shaft].speeds == 200;
    ts_arena_close(arena);
    bench_keep(fine ? context : NULL);
}

static double campbell(void)
{
    ts_study *study   = open_large();
    double    seconds = study != NULL ? bench_seconds(one_course, study) : (double)NAN;
    ts_study_close(study);
    return seconds;
}

typedef struct tree {
    const ts_twist_model *model;
    ts_arena             *arena;
} tree;

static void one_tree(void *context)
{
    tree          *it = context;
    ts_twist_modes modes;

    ts_arena_empty(it->arena);
    bench_keep(ts_twist_solve(it->model, it->arena, &modes) == TS_TWIST_FINE ? context : NULL);
}

/* Of the tree with the most bodies, 22. */
static double modes(void)
{
    ts_study       *study   = open_large();
    ts_arena       *arena   = ts_arena_open(NULL);
    tree            it      = {NULL, ts_arena_open(NULL)};
    double          seconds = (double)NAN;
    ts_twist_answer twist;
    if (study != NULL && arena != NULL && it.arena != NULL &&
        ts_study_twist(study, arena, &twist) == TS_OK)
        for (size_t i = 0; i < twist.count; i++)
            if (it.model == NULL || twist.items[i].model.body_count > it.model->body_count)
                it.model = &twist.items[i].model;
    if (it.model != NULL)
        seconds = bench_seconds(one_tree, &it);
    ts_arena_close(it.arena);
    ts_arena_close(arena);
    ts_study_close(study);
    return seconds;
}

static const bench_case cases[] = {
    {"start-large", "the large example from rest to idle", "s", 0.02, start_large},
    {"start-grid", "the same at 49 temperatures of air and oil", "s", 1.0, start_grid},
    {"seize-one", "a pump of the large example seizes: with its neck, strong and weak, and without",
     "s", 0.02, seize_one},
    {"campbell", "whirl of the radial shaft of it at 200 speeds, six lines, with its unbalance",
     "s", 0.05, campbell},
    {"modes",
     "torsional modes of its largest tree; a hundredth of what CalculiX takes for a smaller", "s",
     1.7e-3, modes},
    {"seize-all", "every accessory of it seizes in every condition, one core", "s", 2.0, seize_all},
};

const bench_group measure_motion = {cases, sizeof cases / sizeof cases[0]};
