/* One seizure of the large example, for another integrator to be set beside.
 *
 *     towershaft-train-runs FILE ACCESSORY CONDITION
 *
 * Writes JSON: of every run the train as it was followed, to the last bit, its events, its end, and
 * the processor seconds that it took (median of 15), to several tolerances.
 */
#include "study/seizing.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { TURNS = 15, TOLERANCES = 4 };

static const double tolerances[TOLERANCES] = {1e-4, 1e-7, 1e-10, 1e-13};

static double now(void)
{
    struct timespec at;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
    return (double)at.tv_sec + 1e-9 * (double)at.tv_nsec;
}

static int by_size(const void *a, const void *b)
{
    const double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static void number(const char *key, double value, const char *after)
{
    if (isfinite(value))
        printf("\"%s\": %.17g%s", key, value, after);
    else
        printf("\"%s\": null%s", key, after);
}

static void write_train(const ts_elastic_train *train)
{
    printf("\"stops\": %d, ", train->stops == TS_NO_BODY ? -1 : (int)train->stops);
    number("until", train->until, ", \"bodies\": [");
    for (uint32_t i = 0; i < train->body_count; i++) {
        const ts_turning_body *b = &train->bodies[i];
        printf("%s{", i > 0 ? ", " : "");
        number("J", b->J, ", ");
        number("speed", b->speed, ", ");
        number("torque", b->torque, ", ");
        number("slope", b->slope, ", ");
        number("q", b->q, ", ");
        number("v", b->v, "}");
    }
    printf("], \"bonds\": [");
    for (uint32_t i = 0; i < train->bond_count; i++) {
        const ts_bond *b = &train->bonds[i];
        printf("%s{\"kind\": %d, \"a\": %u, \"b\": %u, ", i > 0 ? ", " : "", (int)b->kind, b->a,
               b->b);
        number("g_a", b->g_a, ", ");
        number("g_b", b->g_b, ", ");
        number("k", b->k, ", ");
        number("c", b->c, ", ");
        number("gap", b->gap, ", ");
        number("breaks", b->breaks, "}");
    }
    printf("], \"runs\": [");
}

/* Followed to one tolerance, with the seconds of the middle turn. */
static void write_run(ts_elastic_train train, double tolerance)
{
    double       seconds[TURNS];
    ts_train_run run;
    ts_arena    *arena = NULL;

    train.tolerance = tolerance;
    for (int i = 0; i < TURNS; i++) {
        ts_arena_close(arena);
        arena              = ts_arena_open(NULL);
        const double begun = now();
        ts_elastic_train_run(&train, arena, &run);
        seconds[i] = now() - begun;
    }
    qsort(seconds, TURNS, sizeof seconds[0], by_size);
    printf("{");
    number("tolerance", tolerance, ", ");
    number("seconds", seconds[TURNS / 2], ", ");
    number("balance", run.energy.balance, ", ");
    printf("\"steps\": %zu, \"happened\": %zu, \"events\": [", run.steps, run.happened);
    for (size_t i = 0; i < run.event_count; i++) {
        printf("%s{\"what\": %d, \"bond\": %d, ", i > 0 ? ", " : "", (int)run.events[i].what,
               run.events[i].bond == TS_NO_BODY ? -1 : (int)run.events[i].bond);
        number("t", run.events[i].t, "}");
    }
    printf("], \"v\": [");
    for (uint32_t i = 0; i < train.body_count; i++)
        printf("%s%.17g", i > 0 ? ", " : "", run.v[i]);
    printf("]}");
    ts_arena_close(arena);
}

static ts_study *open_file(const char *path)
{
    const ts_study_options options = {.today = 20000};
    ts_study              *study   = NULL;
    FILE                  *file    = fopen(path, "rb");
    char                  *text    = calloc(1, 1 << 20);
    const size_t length = file != NULL && text != NULL ? fread(text, 1, 1 << 20, file) : 0;

    if (file != NULL)
        fclose(file);
    if (length == 0 || ts_study_open(NULL, &study) != TS_OK ||
        ts_study_read(study, path, text, length, &options) != TS_OK) {
        ts_study_close(study);
        study = NULL;
    }
    free(text);
    return study;
}

int main(int count, char **words)
{
    ts_study       *study = count == 4 ? open_file(words[1]) : NULL;
    ts_arena       *arena = ts_arena_open(NULL);
    ts_seize_answer seize;
    bool            any = false;

    if (study == NULL || arena == NULL)
        return 2;
    const ts_seize_options options = {.accessory = words[2], .condition = words[3]};
    if (ts_study_seize(study, &options, NULL, arena, &seize) != TS_OK || seize.because != NULL)
        return 2;
    printf("[");
    for (int k = 0; k < TS_SEIZE_RUNS; k++) {
        if (!seize.runs[k].there)
            continue;
        printf("%s{\"run\": \"%s\", ", any ? ",\n" : "", ts_seize_run_word(&seize, k));
        write_train(&seize.runs[k].seizure.train);
        for (int i = 0; i < TOLERANCES; i++) {
            printf("%s", i > 0 ? ", " : "");
            write_run(seize.runs[k].seizure.train, tolerances[i]);
        }
        printf("]}");
        any = true;
    }
    printf("]\n");
    ts_arena_close(arena);
    ts_study_close(study);
    return 0;
}
