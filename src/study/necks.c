/* What does a study say of its necks? */
#include "study/neck_seizures.h"
#include "study/outlet.h"
#include "study/study.h"

#include "report/necks_report.h"
#include "towershaft/necks.h"

#include <math.h>

static bool is_in_range(ts_study *study, const ts_neck_wish *wish)
{
    if (wish->count <= TS_NECK_SAMPLES_MOST && wish->threads <= 64)
        return true;
    ts_study_say(study, "out-of-range", "that many samples or threads are not drawn",
                 "1 to 20000000 samples on 1 to 64 threads", NULL);
    return false;
}

static bool all_known(const ts_necks_answer *necks)
{
    for (size_t i = 0; i < necks->count; i++) {
        const ts_neck_survey *one = &necks->items[i];
        if (one->neck->missing != NULL || (one->neck->designed && one->life.missing != NULL))
            return false;
        if (one->sampled && one->samples.outside > 0)
            return false;
    }
    return true;
}

typedef struct necks_wish {
    ts_neck_wish wish;
    bool         json, seizures, computed;
} necks_wish;

static ts_status tell(ts_telling *it, void *about)
{
    necks_wish     *what  = about;
    ts_necks_answer necks = {.seed = what->wish.seed};
    ts_neck_survey *surveys;

    if (!is_in_range(it->study, &what->wish))
        return TS_NOT_UNDERSTOOD;
    const ts_status status =
        ts_survey_necks(&it->study->select, &what->wish, it->arena, &surveys, &necks.count);
    if (status != TS_OK)
        return status;
    necks.items  = surveys;
    necks.guards = it->study->select.guards;
    if (what->seizures && ts_study_neck_seizures(it->study, it->arena, &necks.peaks) != TS_OK)
        return TS_NO_MEMORY;
    if (what->json)
        ts_necks_json(&necks, &it->answer, it->page.out);
    else
        ts_necks_page(&necks, &it->answer, &it->page);
    what->computed = all_known(&necks);
    return TS_OK;
}

ts_status ts_necks_write(ts_study *study, const ts_necks_options *options,
                         const ts_page_options *shown, bool *computed, const ts_sink *sink)
{
    necks_wish what = {
        .wish     = {.count   = options->samples > 0 ? options->samples : TS_NECK_SAMPLES_USUAL,
                     .threads = options->threads > 0 ? options->threads : 2,
                     .seed    = options->seed},
        .json     = options->json,
        .seizures = options->seizures};

    *computed              = false;
    const ts_status status = ts_outlet_tell(study, shown, tell, &what, sink);
    *computed              = status == TS_OK && what.computed;
    return status;
}

ts_neck_view ts_study_neck(const ts_study *study, size_t index)
{
    const double nan  = (double)NAN;
    ts_neck_view view = {NULL, false, nan, nan, nan, nan, nan, nan, nan, nan};
    size_t       at   = 0;

    for (uint32_t g = 0; study->solved && g < study->select.count; g++) {
        const ts_guard *guard = &study->select.guards[g];
        if (guard->neck == TS_NOWHERE || at++ != index)
            continue;
        const ts_drive_neck *of = &study->necks.items[guard->neck];
        ts_neck_life         life;
        ts_neck_life_of(&study->select, guard, &life, NULL);
        view = (ts_neck_view){.of           = of->name,
                              .designed     = of->designed,
                              .diameter     = of->designed ? of->neck->diameter.value : nan,
                              .breaks_least = of->band.low,
                              .breaks_most  = of->band.high,
                              .must_pass    = guard->legit.T,
                              .way_bears    = guard->once.T,
                              .early        = life.chance.early,
                              .late         = life.chance.late,
                              .balance      = ts_neck_life_balance(&life)};
    }
    return view;
}
