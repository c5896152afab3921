/* What does a study say of losses, heat and oil? */
#include "study/oiling.h"
#include "study/figures.h"
#include "study/outlet.h"
#include "study/study.h"

#include "report/oil_report.h"
#include "towershaft/oil.h"

#include <math.h>

/* That with the most heat, of all drives together. */
static uint32_t hottest(const ts_study *study)
{
    const ts_heat *heat = &study->heat;
    uint32_t       at   = 0;
    double         most = -1.0;

    for (uint32_t c = 0; c < study->drive.condition_count; c++) {
        double sum = 0.0;
        for (uint32_t d = 0; d < study->drive.drive_count; d++)
            sum += ts_heat_state_at(heat, 0, c, d)->heat;
        if (sum > most) {
            most = sum;
            at   = c;
        }
    }
    return at;
}

/* The first condition in which an accessory drives; -1: none. */
static int32_t crank_of(const ts_study *study)
{
    for (uint32_t c = 0; c < study->drive.condition_count; c++)
        for (uint32_t p = 0; p < study->train.pad_count; p++)
            if (study->power.pad[(size_t)c * study->train.pad_count + p].P < 0.0)
                return (int32_t)c;
    return -1;
}

static double speed_of(const ts_study *study, uint32_t spool, int32_t condition)
{
    const uint32_t shafts = study->train.shaft_count;

    for (uint32_t s = 0; s < shafts; s++)
        if (study->train.shafts[s].kind == TS_SHAFT_SPOOL && study->train.shafts[s].spool == spool)
            return study->motion.speed[(size_t)condition * shafts + s];
    return (double)NAN;
}

static void ask_drag(const ts_study *study, ts_oil_answer *out)
{
    static const double colds[TS_OIL_COLDS] = {-40.0, -20.0, 0.0, 20.0, 50.0, 80.0};

    out->crank = crank_of(study);
    for (uint32_t i = 0; i < study->drive.spool_count; i++)
        if (study->drive.spools[i].cranked.standing == TS_GIVEN &&
            study->drive.spools[i].cranked.value == TS_YES)
            out->cranked = i;
    for (int i = 0; i < TS_OIL_COLDS && out->crank >= 0; i++) {
        out->cold[i] = 273.15 + colds[i];
        out->drag[i] = ts_heat_drag_at(&study->heat, out->cranked,
                                       speed_of(study, out->cranked, out->crank), out->cold[i]);
    }
}

ts_status ts_study_ask_oil(ts_study *study, int32_t condition, ts_arena *arena, ts_oil_answer *out)
{
    static const double more[TS_OIL_FEEDS] = {-20.0, 0.0, 20.0};
    const size_t        count              = study->drive.drive_count * TS_OIL_FEEDS;
    ts_heat_state      *feeds              = TS_TAKE(arena, ts_heat_state, count + 1);

    if (feeds == NULL)
        return TS_NO_MEMORY;
    *out = (ts_oil_answer){.heat = &study->heat, .feeds = feeds, .crank = -1};
    if (study->heat.missing != NULL)
        return TS_OK;
    out->condition = condition >= 0 ? (uint32_t)condition : hottest(study);
    for (uint32_t i = 0; i < count; i++)
        feeds[i] = ts_heat_with_feed(&study->heat, i / TS_OIL_FEEDS, out->condition,
                                     more[i % TS_OIL_FEEDS]);
    ask_drag(study, out);
    return TS_OK;
}

typedef struct wish {
    const char *condition;
    bool        json;
} wish;

static ts_status tell(ts_telling *it, void *about)
{
    const wish   *what = about;
    int32_t       condition;
    ts_oil_answer oil;

    if (!ts_study_choose_condition(it->study, what->condition, &condition))
        return ts_study_refused(it->study);
    const ts_status status = ts_study_ask_oil(it->study, condition, it->arena, &oil);
    if (status == TS_OK && what->json)
        ts_oil_json(&oil, &it->answer, it->page.out);
    else if (status == TS_OK)
        ts_oil_page(&oil, &it->answer, &it->page);
    return status;
}

ts_status ts_oil_write(ts_study *study, const char *condition, bool json,
                       const ts_page_options *options, bool *computed, const ts_sink *sink)
{
    wish            what   = {condition, json};
    const ts_status status = ts_outlet_tell(study, options, tell, &what, sink);

    *computed = status == TS_OK && study->heat.missing == NULL;
    return status;
}
