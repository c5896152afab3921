/* In which order is a drive read, turned, loaded and judged? */
#include "study/study.h"

#include "model/reader.h"
#include "rating/line_capacity.h"
#include "rating/spline_capacity.h"
#include "study/twisting.h"

#include <math.h>
#include <string.h>

static ts_check_subject check_subject(const ts_study *study)
{
    return (ts_check_subject){
        .source       = &study->source,
        .drive        = &study->drive,
        .train        = &study->train,
        .motion       = &study->motion,
        .power        = &study->power,
        .mass         = &study->mass,
        .lines        = &study->lines,
        .teeth        = &study->teeth,
        .opinion      = &study->opinion,
        .select       = &study->select,
        .rubbing      = &study->rubbing,
        .splines      = &study->splines,
        .heat         = &study->heat,
        .floats       = &study->floats,
        .whirls       = &study->whirls,
        .webs         = &study->webs,
        .forced       = study->twist.forced,
        .forced_count = study->twist.count,
        .today        = study->options.today,
        .units        = study->options.us ? TS_UNITS_US : TS_UNITS_METRIC,
    };
}

/* Torsion: a body and a spring for every shaft, two of a radial one, and every pad; their shapes
 * are squares of that, twice for both states; a swing of each in every condition; lanes of shakes
 * for each body and spring. */
static size_t swaying_bytes(const ts_study *study)
{
    const size_t bodies = 2 * (size_t)study->train.shaft_count + study->train.pad_count + 2;
    const size_t once   = bodies * (256 + 5 * sizeof(ts_forced_lanes) +
                                  study->drive.condition_count * sizeof(ts_torque_swing)) +
                        8 * bodies * bodies * sizeof(double);

    return 2 * study->drive.drive_count * once + 64 * (size_t)study->train.mesh_count + 4096;
}

static ts_status prepare_swaying(ts_study *study)
{
    study->swaying_from = ts_arena_within(study->arena);
    study->swaying      = ts_arena_open(&study->swaying_from);
    if (study->swaying == NULL || !ts_arena_reserve(study->swaying, swaying_bytes(study)))
        return TS_NO_MEMORY;
    return TS_OK;
}

/* Masses, shafts with their bearings, take-offs and splines. */
static ts_status prepare_metal(ts_study *study)
{
    ts_arena       *arena  = study->arena;
    const ts_drive *drive  = &study->drive;
    ts_status       status = ts_mass_prepare(drive, &study->power, arena, &study->mass);
    if (status == TS_OK)
        status = ts_lines_prepare(drive, &study->power, &study->source,
                                  ts_stock_catalog(study->stock), arena, &study->lines);
    if (status == TS_OK)
        status = ts_floats_prepare(drive, &study->power, &study->lines, &study->source, arena,
                                   &study->floats);
    if (status == TS_OK)
        status = ts_splines_prepare(drive, &study->power, arena, &study->splines);
    return status;
}

/* Teeth to both standards, necks, and the order in which all that breaks. */
static ts_status prepare_strength(ts_study *study)
{
    ts_arena       *arena  = study->arena;
    const ts_drive *drive  = &study->drive;
    ts_status       status = ts_teeth_prepare(drive, &study->power, arena, &study->teeth);
    study->teeth.lines     = &study->lines;
    if (status == TS_OK)
        status = ts_opinion_prepare(drive, &study->teeth, arena, &study->opinion);
    if (status == TS_OK)
        status = ts_necks_prepare(drive, &study->train, arena, &study->necks);
    if (status == TS_OK)
        status = ts_select_prepare(drive, &study->teeth, &study->necks,
                                   ts_lines_capacity_count(&study->lines) + study->splines.count,
                                   arena, &study->select);
    if (status == TS_OK)
        status = ts_rubbing_prepare(drive, &study->teeth, arena, &study->rubbing);
    return status;
}

/* Heat, and what swings: torsion, shafts, gears across their planes. */
static ts_status prepare_response(ts_study *study)
{
    const ts_heat_from heat   = {&study->drive, &study->power, &study->lines, &study->splines,
                                 &study->rubbing};
    ts_status          status = ts_heat_prepare(&heat, &study->source, study->arena, &study->heat);
    if (status == TS_OK)
        status = prepare_swaying(study);
    if (status == TS_OK)
        status = ts_whirls_prepare(&study->drive, &study->lines, &study->mass, study->arena,
                                   &study->whirls);
    if (status == TS_OK)
        status = ts_webs_prepare(&study->drive, &study->motion, &study->mass, study->arena,
                                 &study->webs);
    return status;
}

static ts_file_places places_of(ts_study *study)
{
    return (ts_file_places){study->name, study->arena, study->diagnostics, &study->source};
}

static ts_status build(ts_study *study, ts_status status, const ts_model *model)
{
    study->told    = study->source;
    study->drive   = model->drive;
    study->rate    = model->rate;
    study->is_rate = model->is_rate;
    if (model->is_rate)
        return status;
    if (status == TS_OK)
        status = ts_train_build(&study->drive, study->arena, study->diagnostics, &study->train);
    if (status == TS_OK)
        status = ts_motion_prepare(&study->drive, &study->train, study->arena, &study->motion);
    if (status == TS_OK)
        status = ts_power_prepare(&study->drive, &study->motion, study->arena, &study->power);
    if (status == TS_OK)
        status = prepare_metal(study);
    if (status == TS_OK)
        status = prepare_strength(study);
    if (status == TS_OK)
        status = prepare_response(study);
    if (status != TS_OK)
        return status;
    study->lines.memo              = ts_stock_memo(study->stock);
    study->whirls.memo             = study->lines.memo;
    study->webs.memo               = study->lines.memo;
    const ts_check_subject subject = check_subject(study);
    return ts_check_prepare(&subject, study->arena, &study->outcome);
}

/* Text to model to flat train, and the memory of all that follows. */
ts_status ts_study_build(ts_study *study)
{
    const ts_file_places places = places_of(study);
    ts_model             model;
    const ts_status      status = ts_read_file_near(study->bytes, ts_stock_tree(study->stock),
                                                    study->options.file, &places, &model);

    return build(study, status, &model);
}

/* The thinner of both bearing bores; the seat where there is no bearing. */
static double journal_of(const ts_line *line)
{
    double least = line->d_seat;
    for (int i = 0; i < line->bearing_count; i++)
        if (line->bearings[i].there && line->bearings[i].bearing.d > line->d_bore)
            least = fmin(least, line->bearings[i].bearing.d);
    return least;
}

/* False: the inside of one of them is not known. */
static bool lend_bearings(const ts_line *line, ts_mass_outline *outline)
{
    for (int k = 0; k < line->bearing_count; k++) {
        const ts_line_bearing *b = &line->bearings[k];

        if (!b->there)
            continue;
        if (line->missing != NULL || b->fault != NULL || !(b->bearing.inside.D_w > 0.0) ||
            !(b->bearing.D > b->bearing.d) || outline->bearing_count == TS_MASS_BEARINGS_MOST)
            return false;
        outline->bearings[outline->bearing_count++] = (ts_mass_bearing){
            .rows   = b->bearing.rows,
            .size   = {b->series, b->bearing.d, b->bearing.D, b->width / b->bearing.rows},
            .inside = b->bearing.inside};
    }
    return true;
}

/* Shafts and bearings are weighed as they are laid; those of a radial shaft and of its gearshafts
 * together, and all of a shaft as generic ones where one of them is not known.  The shaft of a
 * take-off's bevel belongs to the comparison of its three schemes. */
static void lend_outlines(ts_study *study)
{
    ts_mass_outline *outlines = study->mass.outlines;

    for (uint32_t i = 0; i < study->train.shaft_count; i++)
        outlines[i] = (ts_mass_outline){0};
    for (uint32_t i = 0; i < study->lines.count; i++) {
        const ts_line *line = &study->lines.lines[i];
        if (line->kind != TS_LINE_BOX || line->missing != NULL || line->section_count == 0)
            continue;
        outlines[line->shaft] = (ts_mass_outline){.sections  = line->sections,
                                                  .count     = line->section_count,
                                                  .d_seat    = line->d_seat,
                                                  .d_journal = journal_of(line),
                                                  .d_bore    = line->d_bore};
    }
    for (uint32_t s = 0; s < study->train.shaft_count; s++) {
        bool all = true;
        for (uint32_t i = 0; i < study->lines.count; i++)
            if (study->lines.lines[i].shaft == s && study->lines.lines[i].kind != TS_LINE_STUB)
                all = all && lend_bearings(&study->lines.lines[i], &outlines[s]);
        outlines[s].bearing_count = all ? outlines[s].bearing_count : 0;
    }
}

ts_status ts_study_solve(ts_study *study)
{
    ts_status status =
        ts_motion_solve(&study->drive, &study->motion, study->diagnostics, study->workings);
    if (status == TS_OK)
        status = ts_power_solve(&study->drive, &study->power, study->workings);
    if (status != TS_OK)
        return status;
    ts_lines_solve(&study->drive, &study->lines, study->workings);
    ts_floats_solve(&study->drive, &study->floats, study->workings);
    ts_splines_solve(&study->drive, &study->splines, study->workings);
    lend_outlines(study);
    ts_mass_solve(&study->drive, &study->mass, study->workings);
    ts_teeth_solve(&study->drive, &study->teeth, study->workings);
    ts_opinion_solve(&study->drive, &study->opinion, study->workings);
    ts_necks_solve(&study->drive, &study->necks, study->workings);
    ts_select_gather(&study->select, study->workings);
    ts_lines_capacities(&study->lines, &study->select.parts, study->workings);
    ts_splines_capacities(&study->drive, &study->splines, &study->select.parts, study->workings);
    ts_select_solve(&study->select, study->workings);
    ts_rubbing_solve(&study->drive, &study->rubbing, study->workings);
    ts_heat_solve(&study->heat, study->workings);
    ts_whirls_solve(&study->whirls, study->workings);
    study->select.forced = NULL;
    ts_webs_solve(&study->webs, false);
    ts_arena_empty(study->swaying);
    status = ts_study_twist(study, study->swaying, &study->twist);
    if (status != TS_OK)
        return status;
    study->select.forced           = study->twist.forced;
    study->select.forced_count     = study->twist.count;
    const ts_check_subject subject = check_subject(study);
    return ts_check_run(&subject, study->arena, study->workings, &study->outcome);
}

static bool take_options(ts_study *study, const ts_study_options *options)
{
    study->options = options != NULL ? *options : (ts_study_options){.today = INT32_MIN};
    if (study->options.workings)
        study->workings = ts_workings_open(study->arena);
    return !study->options.workings || study->workings != NULL;
}

/* What was built, solved. */
static ts_status answer(ts_study *study, ts_status status)
{
    if (status == TS_OK)
        status = study->is_rate ? ts_study_rate(study) : ts_study_solve(study);
    if (status == TS_OK && study->workings != NULL && !ts_workings_complete(study->workings))
        status = TS_NO_MEMORY;
    study->solved = status == TS_OK && !study->is_rate;
    return status;
}

ts_status ts_study_read(ts_study *study, const char *name, const char *bytes, size_t length,
                        const ts_study_options *options)
{
    ts_status status = ts_study_begin(study, name, bytes, length);
    if (status != TS_OK)
        return status;
    if (!take_options(study, options))
        return TS_NO_MEMORY;
    status         = answer(study, ts_study_build(study));
    study->is_text = status == TS_OK;
    if (study->is_text)
        ts_stock_lend_tree(study->stock, &study->told);
    return status;
}

/* The tree of a text that was read before, which reading its values may still change. */
static bool copy_nodes(ts_study *study, const ts_source *nodes)
{
    const size_t count = (size_t)nodes->node_count + 1;

    study->source       = *nodes;
    study->source.nodes = TS_TAKE(study->arena, ts_node_place, count);
    if (study->source.nodes != NULL)
        memcpy(study->source.nodes, nodes->nodes, count * sizeof *nodes->nodes);
    return study->source.nodes != NULL;
}

ts_status ts_study_read_nodes(ts_study *study, const char *name, const ts_source *nodes,
                              const ts_study_options *options)
{
    ts_model model;

    const ts_status begun = ts_study_begin_again(study, name, nodes->bytes);

    if (begun != TS_OK)
        return begun;
    if (!copy_nodes(study, nodes) || !take_options(study, options))
        return TS_NO_MEMORY;
    const ts_file_places places = places_of(study);
    const ts_status      status = ts_read_nodes(study->options.file, &places, &model);
    return answer(study, build(study, status, &model));
}

ts_verdict ts_study_verdict(const ts_study *study)
{
    return study->solved || study->rated ? study->outcome.verdict : TS_VERDICT_NOT_COMPUTABLE;
}
