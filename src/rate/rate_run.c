/* rate/rate_run.c: what comes out of a rate file, element by element? */
#include "check/finding_order.h"
#include "rate/rate_desk.h"

static const char *const condition_names[TS_RATED_CONDITION_COUNT] = {
    [TS_RATED_GEAR_1]         = "gear 1",
    [TS_RATED_GEAR_2]         = "gear 2",
    [TS_RATED_UPPER]          = "upper",
    [TS_RATED_LOWER]          = "lower",
    [TS_RATED_GEAR_1_UPPER]   = "gear 1 upper",
    [TS_RATED_GEAR_2_UPPER]   = "gear 2 upper",
    [TS_RATED_GEAR_1_LOWER]   = "gear 1 lower",
    [TS_RATED_GEAR_2_LOWER]   = "gear 2 lower",
    [TS_RATED_LEAST_BACKLASH] = "least backlash",
    [TS_RATED_MOST_BACKLASH]  = "most backlash",
    [TS_RATED_ISO_6336]       = "ISO 6336",
    [TS_RATED_AGMA_2101]      = "AGMA 2101",
    [TS_RATED_SPECTRUM]       = "spectrum",
    [TS_RATED_WORST_BIN]      = "worst bin",
    [TS_RATED_ALLOWABLE_LOAD] = "allowable load",
    [TS_RATED_LIFE]           = "life",
    [TS_RATED_LEAST_WIDTH]    = "least width",
    [TS_RATED_SCUFFING]       = "scuffing",
    [TS_RATED_MICROPITTING]   = "micropitting",
    [TS_RATED_ISO_10300]      = "ISO 10300",
    [TS_RATED_AGMA_2003]      = "AGMA 2003",
    [TS_RATED_WEAKEST]        = "weakest",
    [TS_RATED_STRONGEST]      = "strongest",
};

static void name_conditions(ts_rate_desk *desk)
{
    ts_condition *conditions = TS_TAKE(desk->arena, ts_condition, TS_RATED_CONDITION_COUNT);
    desk->failed             = desk->failed || conditions == NULL;
    for (int c = 0; conditions != NULL && c < TS_RATED_CONDITION_COUNT; c++)
        conditions[c].name = condition_names[c];
    desk->rated->conditions = conditions;
}

static void rate_elements(ts_rate_desk *desk)
{
    const ts_rate_file *file = desk->file;
    for (size_t i = 0; i < file->pair_count; i++)
        ts_rate_pair_element(desk, &file->pairs[i]);
    for (size_t i = 0; i < file->bevel_count; i++)
        ts_rate_bevel_element(desk, &file->bevels[i]);
    for (size_t i = 0; i < file->tooth_count; i++)
        ts_rate_tooth_element(desk, &file->teeth[i]);
    for (size_t i = 0; i < file->tolerance_count; i++)
        ts_rate_tolerance_element(desk, &file->tolerances[i]);
    for (size_t i = 0; i < file->steel_count; i++)
        ts_rate_steel_element(desk, &file->steels[i]);
    for (size_t i = 0; i < file->bearing_count; i++)
        ts_rate_bearing_element(desk, &file->bearings[i]);
    for (size_t i = 0; i < file->neck_count; i++)
        ts_rate_neck_element(desk, &file->necks[i]);
    for (size_t i = 0; i < file->spline_count; i++)
        ts_rate_spline_element(desk, &file->splines[i]);
}

static void count_findings(ts_check_outcome *outcome)
{
    bool undecided   = false;
    outcome->verdict = TS_HOLDS;
    for (size_t i = 0; i < outcome->finding_count; i++) {
        const ts_finding *finding = &outcome->findings[i];
        outcome->not_computable += finding->state == TS_NOT_COMPUTABLE ? 1 : 0;
        undecided =
            undecided || (finding->state == TS_NOT_COMPUTABLE && finding->level == TS_REFUSE);
        outcome->open[finding->level] += finding->state == TS_OPEN ? 1 : 0;
    }
    if (outcome->open[TS_REFUSE] > 0)
        outcome->verdict = TS_DOES_NOT_HOLD;
    else if (undecided)
        outcome->verdict = TS_VERDICT_NOT_COMPUTABLE;
}

static void sign_findings(ts_rate_desk *desk)
{
    const ts_check_outcome *outcome = &desk->rated->outcome;
    const ts_drive          names   = {.conditions      = desk->rated->conditions,
                                       .condition_count = TS_RATED_CONDITION_COUNT};
    ts_buffer               scratch;
    ts_buffer_open(&scratch, ts_arena_allocator(desk->arena));
    for (size_t i = 0; i < outcome->finding_count && !desk->failed; i++)
        desk->failed =
            !ts_finding_sign(&outcome->findings[i], desk->file->source, &names, &scratch);
    ts_buffer_close(&scratch);
}

ts_status ts_rate_run(const ts_rate_file *file, ts_units units, ts_arena *arena,
                      ts_workings *workings, ts_rated *rated)
{
    ts_rate_desk desk = {
        .file = file, .arena = arena, .workings = workings, .rated = rated, .units = units};
    *rated = (ts_rated){0};
    name_conditions(&desk);
    rate_elements(&desk);
    sign_findings(&desk);
    if (desk.failed || ts_arena_failed(arena) || !ts_workings_complete(workings))
        return TS_NO_MEMORY;
    ts_findings_sort(rated->outcome.findings, rated->outcome.finding_count, file->source);
    count_findings(&rated->outcome);
    return TS_OK;
}
