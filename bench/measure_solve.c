/* How long does a drive take from its text to its findings, and what does that cost? */
#include "bench.h"

#include "base/buffer.h"
#include "effect/effect.h"
#include "model/reader.h"
#include "rating/line_capacity.h"
#include "study/study.h"
#include "study/twisting.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct drive_text {
    char  *bytes;
    size_t length;
} drive_text;

static drive_text load(const char *path)
{
    drive_text text = {NULL, 0};
    FILE      *file = fopen(path, "rb");
    if (file == NULL)
        return text;
    fseek(file, 0, SEEK_END);
    const long size = ftell(file);
    rewind(file);
    text.bytes = size > 0 ? malloc((size_t)size) : NULL;
    if (text.bytes != NULL)
        text.length = fread(text.bytes, 1, (size_t)size, file);
    fclose(file);
    return text;
}

static ts_status whole(const drive_text *text, const ts_allocator *allocator)
{
    const ts_study_options options = {.today = 20000};
    ts_study              *study   = NULL;
    ts_status              status  = ts_study_open(allocator, &study);
    if (status == TS_OK)
        status = ts_study_read(study, "bench.yaml", text->bytes, text->length, &options);
    bench_keep(study);
    ts_study_close(study);
    return status;
}

static void read_to_findings(void *context)
{
    whole(context, NULL);
}

static double solve_large(void)
{
    drive_text   text = load("examples/large.yaml");
    const double seconds =
        whole(&text, NULL) == TS_OK ? bench_seconds(read_to_findings, &text) : (double)NAN;
    free(text.bytes);
    return seconds;
}

/* ---- its parts -------------------------------------------------------------------------------
 *
 * Each is computed again and again on one solved study, so that what it stands on is there.
 */

static void work_build(void *context)
{
    const drive_text *text  = context;
    ts_study         *study = NULL;

    if (ts_study_open(NULL, &study) == TS_OK &&
        ts_study_begin(study, "bench.yaml", text->bytes, text->length) == TS_OK)
        (void)ts_study_build(study);
    bench_keep(study);
    ts_study_close(study);
}

static void work_teeth(void *context)
{
    ts_study *study = context;

    ts_teeth_solve(&study->drive, &study->teeth, NULL);
    ts_opinion_solve(&study->drive, &study->opinion, NULL);
    ts_rubbing_solve(&study->drive, &study->rubbing, NULL);
    bench_keep(study);
}

static void work_lines(void *context)
{
    ts_study *study = context;

    ts_lines_solve(&study->drive, &study->lines, NULL);
    bench_keep(study);
}

static void work_ends(void *context)
{
    ts_study *study = context;

    ts_floats_solve(&study->drive, &study->floats, NULL);
    ts_splines_solve(&study->drive, &study->splines, NULL);
    ts_necks_solve(&study->drive, &study->necks, NULL);
    bench_keep(study);
}

static void work_select(void *context)
{
    ts_study *study = context;

    ts_select_gather(&study->select, NULL);
    ts_lines_capacities(&study->lines, &study->select.parts, NULL);
    ts_select_solve(&study->select, NULL);
    bench_keep(study);
}

static void work_mass(void *context)
{
    ts_study *study = context;

    ts_mass_solve(&study->drive, &study->mass, NULL);
    bench_keep(study);
}

/* ---- what the metal and the oil ask for before they are solved ---------------------------------
 *
 * Lists, tables and memory of their own, laid out anew in one block that is taken over and over, as
 * the arena of a study takes what the study before it gave back.
 */

enum { BLOCK = 16 * 1024 * 1024 };

typedef struct one_block {
    char  *bytes;
    size_t used;
} one_block;

static one_block block;

static void *take_of_block(void *context, void *old, size_t size)
{
    one_block *from = context;
    (void)old; /* an arena never grows a piece, and the block is given back as a whole */
    if (size == 0 || from->bytes == NULL || size > BLOCK - from->used)
        return NULL;
    void *piece = from->bytes + from->used;
    from->used += (size + 15) / 16 * 16;
    return piece;
}

static ts_arena *open_block(void)
{
    const ts_allocator allocator = {take_of_block, &block};

    if (block.bytes == NULL)
        block.bytes = malloc(BLOCK);
    block.used = 0;
    return ts_arena_open(&allocator);
}

static void prepare_metal(const ts_study *study)
{
    ts_arena  *arena  = open_block();
    ts_source  source = study->source;
    ts_mass    mass;
    ts_lines   lines;
    ts_floats  floats;
    ts_splines splines;
    ts_necks   necks;
    ts_select  select;

    if (arena == NULL)
        return;
    (void)ts_mass_prepare(&study->drive, &study->power, arena, &mass);
    (void)ts_lines_prepare(&study->drive, &study->power, &source, NULL, arena, &lines);
    (void)ts_floats_prepare(&study->drive, &study->power, &lines, &source, arena, &floats);
    (void)ts_splines_prepare(&study->drive, &study->power, arena, &splines);
    (void)ts_necks_prepare(&study->drive, &study->train, arena, &necks);
    (void)ts_select_prepare(&study->drive, &study->teeth, &necks,
                            ts_lines_capacity_count(&lines) + splines.count, arena, &select);
    bench_keep(&select);
}

static void prepare_heat(const ts_study *study)
{
    ts_arena          *arena  = open_block();
    ts_source          source = study->source;
    const ts_heat_from from   = {&study->drive, &study->power, &study->lines, &study->splines,
                                 &study->rubbing};
    ts_heat            heat;

    if (arena == NULL)
        return;
    (void)ts_heat_prepare(&from, &source, arena, &heat);
    bench_keep(&heat);
}

/* The metal beside the teeth: shafts, bearings, splines, float, necks, their order of breaking,
 * masses. */
static void work_metal(void *context)
{
    prepare_metal(context);
    work_lines(context);
    work_ends(context);
    work_select(context);
    work_mass(context);
}

/* The large example, and a study that has solved it: NULL where it cannot be read. */
typedef struct large {
    drive_text text;
    ts_study  *study;
} large;

static large open_large(void)
{
    const ts_study_options options = {.today = 20000};
    large                  l       = {.text = load("examples/large.yaml")};

    if (l.text.bytes != NULL && ts_study_open(NULL, &l.study) == TS_OK &&
        ts_study_read(l.study, "bench.yaml", l.text.bytes, l.text.length, &options) == TS_OK)
        return l;
    ts_study_close(l.study);
    l.study = NULL;
    return l;
}

static void close_large(large *l)
{
    ts_study_close(l->study);
    free(l->text.bytes);
}

static void work_heat(void *context)
{
    ts_study *study = context;

    prepare_heat(study);
    ts_oil_units_solve(&study->power.units, NULL);
    ts_heat_solve(&study->heat, NULL);
    bench_keep(study);
}

static void work_torsion(void *context)
{
    ts_study *study = context;

    ts_arena_empty(study->swaying);
    (void)ts_study_twist(study, study->swaying, &study->twist);
    bench_keep(study);
}

static void work_whirl(void *context)
{
    ts_study *study = context;
    ts_arena *arena = open_block();
    ts_whirls whirls;

    if (arena == NULL)
        return;
    (void)ts_whirls_prepare(&study->drive, &study->lines, &study->mass, arena, &whirls);
    ts_whirls_solve(&study->whirls, NULL);
    bench_keep(&whirls);
}

static void work_webs(void *context)
{
    ts_study *study = context;

    ts_webs_solve(&study->webs, false);
    bench_keep(study);
}

static void work_all_but_teeth(void *context)
{
    work_metal(context);
    work_heat(context);
    work_torsion(context);
    work_whirl(context);
    work_webs(context);
}

static double part_seconds(void (*part)(void *context))
{
    large        l       = open_large();
    const double seconds = l.study != NULL ? bench_seconds(part, l.study) : (double)NAN;

    close_large(&l);
    return seconds;
}

static double build_large(void)
{
    large        l       = open_large();
    const double seconds = l.study != NULL ? bench_seconds(work_build, &l.text) : (double)NAN;

    close_large(&l);
    return seconds;
}

static double teeth_large(void)
{
    return part_seconds(work_teeth);
}

static double lines_large(void)
{
    return part_seconds(work_lines);
}

static double ends_large(void)
{
    return part_seconds(work_ends);
}

static double select_large(void)
{
    return part_seconds(work_select);
}

static double mass_large(void)
{
    return part_seconds(work_mass);
}

static double metal_large(void)
{
    return part_seconds(work_metal);
}

static double heat_large(void)
{
    return part_seconds(work_heat);
}

static double torsion_large(void)
{
    return part_seconds(work_torsion);
}

static double whirl_large(void)
{
    return part_seconds(work_whirl);
}

static double webs_large(void)
{
    return part_seconds(work_webs);
}

/* From text to findings, the rating of every mesh to all standards in it, without the metal beside
 * the teeth, without losses, oil and what swings: what share they have is measured in turns,
 * and taken off. */
static double teeth_alone_large(void)
{
    large  l       = open_large();
    double seconds = (double)NAN;

    if (l.study != NULL)
        seconds = bench_seconds(read_to_findings, &l.text) *
                  (1.0 - bench_ratio(work_all_but_teeth, l.study, read_to_findings, &l.text));
    close_large(&l);
    return seconds;
}

/* The same measured directly: no more is solved than what teeth ask for, and the rules that need
 * more say nothing. */
static void meshes_only(void *context)
{
    const drive_text *text  = context;
    ts_study         *study = NULL;
    ts_check_outcome  outcome;

    if (ts_study_open(NULL, &study) == TS_OK &&
        ts_study_begin(study, "bench.yaml", text->bytes, text->length) == TS_OK &&
        ts_study_build(study) == TS_OK &&
        ts_motion_solve(&study->drive, &study->motion, study->diagnostics, NULL) == TS_OK &&
        ts_power_solve(&study->drive, &study->power, NULL) == TS_OK) {
        const ts_check_subject subject = {.source  = &study->source,
                                          .drive   = &study->drive,
                                          .train   = &study->train,
                                          .motion  = &study->motion,
                                          .power   = &study->power,
                                          .teeth   = &study->teeth,
                                          .opinion = &study->opinion,
                                          .rubbing = &study->rubbing,
                                          .today   = 20000};
        work_teeth(study);
        if (ts_check_prepare(&subject, study->arena, &outcome) == TS_OK)
            (void)ts_check_run(&subject, study->arena, NULL, &outcome);
    }
    bench_keep(study);
    ts_study_close(study);
}

static double meshes_large(void)
{
    large        l       = open_large();
    const double seconds = l.study != NULL ? bench_seconds(meshes_only, &l.text) : (double)NAN;

    close_large(&l);
    return seconds;
}

/* What stops for each failure, without causes; and with every single and double cause. */
typedef struct effects_case {
    ts_study *study;
    bool      causes;
} effects_case;

static void tell_effects(void *context)
{
    const effects_case *c     = context;
    ts_arena           *arena = ts_arena_open(NULL);
    ts_effects          effects;
    if (c->causes) {
        ts_effects_solve(&c->study->drive, &c->study->motion, &c->study->select, arena, &effects);
    } else {
        ts_effects_prepare(&c->study->drive, &c->study->motion, &c->study->select, arena, &effects);
        ts_effects_each(&effects, arena);
    }
    bench_keep(&effects);
    ts_arena_close(arena);
}

static double effects_seconds(bool causes)
{
    const ts_study_options options = {.today = 20000};
    drive_text             text    = load("examples/large.yaml");
    effects_case           c       = {NULL, causes};
    double                 seconds = (double)NAN;
    if (ts_study_open(NULL, &c.study) == TS_OK &&
        ts_study_read(c.study, "bench.yaml", text.bytes, text.length, &options) == TS_OK)
        seconds = bench_seconds(tell_effects, &c);
    ts_study_close(c.study);
    free(text.bytes);
    return seconds;
}

static double effects_matrix(void)
{
    return effects_seconds(false);
}

static double effects_causes(void)
{
    return effects_seconds(true);
}

/* Requests for memory between the built model and the findings. */
static double solve_calls(void)
{
    drive_text  text = load("examples/large.yaml");
    bench_count count;
    ts_study    study;
    memset(&study, 0, sizeof study);
    study.own       = bench_counting_allocator(&count);
    study.allocator = &study.own;
    double calls    = NAN;
    if (ts_study_begin(&study, "bench.yaml", text.bytes, text.length) == TS_OK &&
        ts_study_build(&study) == TS_OK) {
        const size_t before = count.calls;
        if (ts_study_solve(&study) == TS_OK)
            calls = (double)(count.calls - before);
    }
    ts_arena_close(study.arena);
    free(text.bytes);
    return calls;
}

/* A drive with one branch of `shafts` idlers on a circle wide enough to take them. */
static drive_text synthetic(int shafts)
{
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    ts_buffer_add(&out,
                  "towershaft: 1\ntitle: a long branch\nconditions:\n"
                  "  crank: {hp: 2600 rpm, events: 1000}\n"
                  "  take-off: {hp: 24300 rpm, hours: 900 h}\n"
                  "spools:\n  hp: {turns: ccw, cranked: yes}\n"
                  "accessories:\n  starter: {for: start, turns: either, drives: {crank: 9 N.m}, "
                  "power: {take-off: 0 kW}}\n"
                  "drive:\n  hp:\n"
                  "    take-off: {float: fixed bevel, bevels: {teeth: [43, 46], module: 2.4 mm, "
                  "spiral: 35 deg, face: 16 mm}}\n"
                  "    tower shaft: {clock: \"6:00\", length: 305 mm, outside: 26 mm}\n"
                  "    box:\n      arc: {radius: 9000 mm, clock: \"6:00\"}\n"
                  "      bevels: {teeth: [37, 41], module: 2.5 mm, spiral: 35 deg, face: 18 mm}\n"
                  "      gears: {module: 0.5 mm, pressure angle: 25 deg}\n"
                  "      input: {teeth: 28, face: 12 mm, rear: starter}\n      clockwise:\n");
    for (int i = 0; i < shafts; i++)
        ts_buffer_print(&out, "        - {teeth: %d, face: 6 mm}\n", i % 2 == 0 ? 27 : 26);
    return (drive_text){out.bytes, out.length};
}

/* Text to model and flat train, nothing more. */
static ts_status read_only(const drive_text *text)
{
    ts_study study;
    memset(&study, 0, sizeof study);
    study.own        = ts_allocator_standard;
    study.allocator  = &study.own;
    ts_status status = ts_study_begin(&study, "bench.yaml", text->bytes, text->length);
    if (status == TS_OK)
        status = ts_read_drive(study.bytes, study.name, study.arena, study.diagnostics,
                               &study.source, &study.drive);
    if (status == TS_OK)
        status = ts_train_build(&study.drive, study.arena, study.diagnostics, &study.train);
    bench_keep(&study);
    ts_arena_close(study.arena);
    return status;
}

static void reading(void *context)
{
    read_only(context);
}

static double growth_of(void (*work)(void *context))
{
    drive_text few = synthetic(200), many = synthetic(2000);
    double     growth = NAN;
    if (whole(&few, NULL) == TS_OK && whole(&many, NULL) == TS_OK)
        growth = bench_ratio(work, &many, work, &few) / 10.0;
    free(few.bytes);
    free(many.bytes);
    return growth;
}

/* Ten times the shafts, over ten times the time of a tenth of them: 1 is linear. */
static double reading_grows(void)
{
    return growth_of(reading);
}

static double solving_grows(void)
{
    return growth_of(read_to_findings);
}

static const bench_case cases[] = {
    {"solve-large", "the large example, from text to findings, one core", "s", 4.5e-3, solve_large},
    {"solve-large-teeth", "of that text, model, power, every mesh rated, and findings", "s", 1e-3,
     teeth_alone_large},
    {"solve-large-meshes", "  that measured directly: every mesh rated, and the rules of teeth",
     "s", 1e-3, meshes_large},
    {"solve-large-metal", "of that shafts, bearings, splines, float, necks and masses", "s", 1e-3,
     metal_large},
    {"solve-large-heat", "of that losses, heat, oil and its pumps", "s", 0.5e-3, heat_large},
    {"solve-large-torsion", "of that modes of every tree, and how they are shaken", "s", 1e-3,
     torsion_large},
    {"solve-large-whirl", "of that the first criticals of every shaft", "s", 1e-3, whirl_large},
    {"solve-large-webs", "of that webs across their planes", "s", 0.5e-3, webs_large},
    {"part-build", "  its text to the model, and the memory of all that follows", "s", INFINITY,
     build_large},
    {"part-teeth", "  teeth to both standards, scuffing and films", "s", INFINITY, teeth_large},
    {"part-lines", "  shafts and bearings, all conditions", "s", 0.5e-3, lines_large},
    {"part-ends", "  float, splines of the pads, necks", "s", INFINITY, ends_large},
    {"part-select", "  which part breaks first, once and in overloads", "s", INFINITY,
     select_large},
    {"part-mass", "  masses, inertias and mounts", "s", INFINITY, mass_large},
    {"effects-matrix", "what stops for every failure of the large example", "s", 5e-3,
     effects_matrix},
    {"effects-causes", "and every single and double cause of every effect", "s", 100e-3,
     effects_causes},
    {"solve-calls", "requests for memory after the model is built", "calls", 0.0, solve_calls},
    {"read-linear", "reading 2,000 shafts over ten times reading 200", "1", 1.3, reading_grows},
    {"solve-growth", "the same from text to findings", "1", INFINITY, solving_grows},
};

const bench_group measure_solve = {cases, sizeof cases / sizeof cases[0]};
