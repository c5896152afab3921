/* How near do seizures bring the ways behind the necks to what they bear? */
#include "study/neck_seizures.h"

#include "study/seizing.h"
#include "study/twisting.h"

#include <math.h>

typedef struct survey {
    ts_study              *study;
    const ts_twist_answer *twist;
    ts_arena              *arena; /* of what is kept */
} survey;

static const char *kept_name(const survey *it, const ts_seize_answer *seize, size_t joint)
{
    const char *kept = NULL;
    ts_buffer   text;

    ts_buffer_open(&text, it->study->allocator);
    ts_seize_joint(&text, seize->twist, joint);
    if (!text.failed)
        kept = ts_arena_copy(it->arena, text.bytes, text.length);
    ts_buffer_close(&text);
    return kept;
}

/* With the neck as strong as it may be, the worst for what stands behind it. */
static ts_status keep_larger(const survey *it, const ts_seize_answer *seize, uint32_t condition,
                             ts_seizure_peak *peak)
{
    const ts_seize_run *run = &seize->runs[TS_SEIZE_STRONG];
    double              share;

    if (seize->because != NULL || !run->there || run->seizure.run.fault != TS_RUN_FINE)
        return TS_OK;
    const size_t joint = ts_seize_nearest(seize, run, &share);
    if (!(share > 0.0) || share <= peak->share)
        return TS_OK;
    *peak = (ts_seizure_peak){.share     = share,
                              .T         = fabs(ts_seize_peak(run, joint)),
                              .bears     = seize->walls[joint].T,
                              .part      = kept_name(it, seize, joint),
                              .condition = it->study->drive.conditions[condition].name};
    return peak->part != NULL ? TS_OK : TS_NO_MEMORY;
}

static ts_status seize_in(const survey *it, int32_t accessory, uint32_t condition,
                          ts_seizure_peak *peak)
{
    const ts_seize_options options = {.accessory = it->study->drive.accessories[accessory].name,
                                      .condition = it->study->drive.conditions[condition].name};
    ts_arena              *arena   = ts_arena_open(it->study->allocator);
    ts_seize_answer        seize;

    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_status status = ts_study_seize(it->study, &options, it->twist, arena, &seize);
    if (status == TS_OK)
        status = keep_larger(it, &seize, condition, peak);
    ts_arena_close(arena);
    return status;
}

ts_status ts_study_neck_seizures(ts_study *study, ts_arena *arena, const ts_seizure_peak **out)
{
    const ts_select *select = &study->select;
    ts_seizure_peak *peaks  = TS_TAKE(arena, ts_seizure_peak, select->count + 1);
    ts_twist_answer  twist;
    const survey     it     = {study, &twist, arena};
    ts_status        status = peaks != NULL ? ts_study_twist(study, arena, &twist) : TS_NO_MEMORY;

    *out = peaks;
    for (uint32_t g = 0; status == TS_OK && g < select->count; g++) {
        const ts_guard *guard = &select->guards[g];
        const int32_t who = guard->pad != TS_NOWHERE ? study->train.pads[guard->pad].accessory : -1;
        peaks[g]          = (ts_seizure_peak){.share = 0.0};
        if (guard->neck != TS_NOWHERE && who >= 0)
            for (uint32_t c = 0; status == TS_OK && c < study->drive.condition_count; c++)
                status = seize_in(&it, who, c, &peaks[g]);
        if (!(peaks[g].share > 0.0))
            peaks[g].share = (double)NAN;
    }
    return status;
}
