/* bench/measure_origin.c: what do proving a formula and asking where its inputs come from cost? */
#include "base/arena.h"
#include "base/workings.h"
#include "bench.h"

#include <math.h>

static const ts_formula Z_H_formula = {
    .symbol  = "Z_H",
    .meaning = "zone factor",
    .unit    = "1",
    .text    = "sqrt(2*cos(beta_b)*cos(alpha_wt) / (cos(alpha_t)^2*sin(alpha_wt)))",
    .source  = "ISO 6336-2:2019, clause 6 (from memory)",
};

static void work_prove(void *context)
{
    const ts_input inputs[] = {{"alpha_t", 0.35}, {"alpha_wt", 0.38}, {"beta_b", 0.20}};
    const double   Z_H      = sqrt(2.0 * cos(0.20) * cos(0.38) / sin(0.38)) / cos(0.35);
    const bool     differs  = ts_formula_disagrees(&Z_H_formula, Z_H, inputs, 3, NULL);
    (void)context;
    bench_keep(&differs);
}

static double one_proof(void)
{
    return bench_seconds(work_prove, NULL);
}

/* Each object is given two numbers and computes a third of them, in four conditions. */
static void note_steps(ts_workings *workings, size_t steps)
{
    static const ts_formula F_t_formula = {
        .symbol  = "F_t",
        .meaning = "tangential force",
        .unit    = "N",
        .text    = "2*T/d",
        .source  = "derived: definition of torque",
    };
    for (size_t i = 0; i < steps; i++) {
        const double T = 10.0 + (double)i, d = 0.05;
        ts_workings_about(workings, (uint32_t)(i / 4), (int32_t)(i % 4));
        ts_workings_given(workings, "T", T, "N.m", 1);
        ts_workings_given(workings, "d", d, "m", 2);
        const double F_t = TS_STEP(workings, F_t_formula, 2.0 * T / d, T, d);
        bench_keep(&F_t);
    }
}

/* Notes `steps` steps and asks for the origin of every input, the index being built on the way. */
static void work_origins(void *context)
{
    const size_t steps    = *(const size_t *)context;
    ts_arena    *arena    = ts_arena_open(NULL);
    ts_workings *workings = arena == NULL ? NULL : ts_workings_open(arena);
    if (workings == NULL)
        return;
    note_steps(workings, steps);
    size_t found = 0;
    for (size_t i = 0; i < ts_workings_count(workings); i++) {
        const ts_note *note = ts_workings_at(workings, i);
        for (uint32_t n = 0; n < note->input_count; n++)
            found += ts_origin(workings, i, note->inputs[n].name, note->inputs[n].value);
    }
    bench_keep(&found);
    ts_arena_close(arena);
}

static double one_origin(void)
{
    size_t steps = 16000;
    return bench_seconds(work_origins, &steps) / (2.0 * (double)steps);
}

static double ten_times_the_notes(void)
{
    size_t many = 16000, few = 1600;
    return bench_ratio(work_origins, &many, work_origins, &few) / 10.0;
}

static const bench_case cases[] = {
    {"formula-proved", "one formula text read, worked out and held against the code", "s", INFINITY,
     one_proof},
    {"origin-found", "one input of 16,000 noted steps traced, noting and indexing included", "s",
     INFINITY, one_origin},
    {"origins-scale", "tracing 48,000 notes over ten times tracing 4,800", "1", 3.0,
     ten_times_the_notes},
};

const bench_group measure_origin = {cases, sizeof cases / sizeof cases[0]};
