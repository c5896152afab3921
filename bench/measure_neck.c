/* How long do a million drawn necks take? */
#include "bench.h"

#include "search/neck_sample.h"
#include "study/study.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

static void draw_a_million(void *context)
{
    const ts_neck_wish wish  = {1000000, 2, 1};
    const ts_study    *study = context;
    ts_arena          *arena = ts_arena_open(NULL);
    ts_neck_survey    *surveys;
    size_t             count;

    if (arena != NULL && ts_survey_necks(&study->select, &wish, arena, &surveys, &count) == TS_OK)
        bench_keep(surveys);
    ts_arena_close(arena);
}

/* The one designed neck of the trainer: break torque and fatigue of each, quantiles of all. */
static double seconds_of_a_million(void)
{
    const ts_study_options options = {.today = 20000};
    static char            text[65536];
    ts_study              *study   = NULL;
    double                 seconds = (double)NAN;
    FILE                  *file    = fopen("examples/trainer.yaml", "rb");
    const size_t           length  = file == NULL ? 0 : fread(text, 1, sizeof text, file);

    if (file != NULL)
        fclose(file);
    if (length > 0 && ts_study_open(NULL, &study) == TS_OK &&
        ts_study_read(study, "bench.yaml", text, length, &options) == TS_OK)
        seconds = bench_seconds(draw_a_million, study);
    ts_study_close(study);
    return seconds;
}

static const bench_case cases[] = {
    {"neck-million", "a million drawn necks with their quantiles, two threads", "s", 1.0,
     seconds_of_a_million},
};

const bench_group measure_neck = {cases, sizeof cases / sizeof cases[0]};
