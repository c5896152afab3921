/* Which seizure of a study is drawn, and what does its picture need? */
#include "study/figures.h"
#include "study/seizing.h"
#include "study/study.h"

#include "draw/drawn_seizure.h"
#include "report/seize_report.h"

#include <math.h>

enum { SAMPLES = 2000 };

/* The accessory with a neck whose continuous torque is highest; NULL: none has one. */
static const char *usual(const ts_study *study)
{
    const char *name = NULL;
    double      most = 0.0;

    for (uint32_t p = 0; p < study->train.pad_count; p++) {
        const int32_t  who   = study->train.pads[p].accessory;
        const uint32_t guard = study->select.of_pad[p];
        if (who < 0 || study->necks.of_pad[p] == TS_NOWHERE || guard == TS_NOWHERE ||
            !(study->select.guards[guard].run.T > most))
            continue;
        most = study->select.guards[guard].run.T;
        name = study->drive.accessories[who].name;
    }
    return name;
}

static ts_status take_run(const ts_seize_answer *seize, int which, ts_arena *arena,
                          ts_drawn_seizure *out)
{
    const ts_seize_run   *from  = &seize->runs[which];
    const ts_train_trace *trace = &from->seizure.run.trace;

    if (!from->there || out->run_count == TS_DRAWN_RUNS)
        return TS_OK;
    double *ms = TS_TAKE(arena, double, trace->count + 1);
    if (ms == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < trace->count; i++)
        ms[i] = 1e3 * trace->t[i];
    out->runs[out->run_count++] =
        (ts_drawn_run){ts_seize_run_word(seize, which), &from->seizure.run, ms};
    return TS_OK;
}

static ts_status take_walls(const ts_seize_answer *seize, ts_arena *arena, ts_drawn_seizure *out)
{
    double *bears = TS_TAKE(arena, double, seize->twist->model.spring_count + 1);

    if (bears == NULL)
        return TS_NO_MEMORY;
    for (size_t j = 0; j < seize->twist->model.spring_count; j++)
        bears[j] = seize->walls[j].T;
    out->bears = bears;
    return TS_OK;
}

ts_status ts_study_drawn_seizure(ts_study *study, const char *accessory, const char *condition,
                                 ts_drawn_seizure *out)
{
    const ts_seize_options options = {.accessory = accessory != NULL ? accessory : usual(study),
                                      .condition = condition,
                                      .samples   = SAMPLES};
    ts_seize_answer       *seize   = TS_TAKE(study->asked, ts_seize_answer, 1);

    *out = (ts_drawn_seizure){.accessory = NULL};
    if (seize == NULL)
        return TS_NO_MEMORY;
    if (options.accessory == NULL)
        return TS_OK;
    ts_status status = ts_study_seize(study, &options, NULL, study->asked, seize);
    if (status != TS_OK)
        return status;
    out->accessory = study->drive.accessories[seize->accessory].name;
    out->condition = study->drive.conditions[seize->condition].name;
    out->because   = seize->because;
    out->twist     = seize->twist;
    if (seize->because != NULL)
        return TS_OK;
    status = take_walls(seize, study->asked, out);
    if (status == TS_OK)
        status = take_run(seize, TS_SEIZE_STRONG, study->asked, out);
    return status == TS_OK ? take_run(seize, TS_SEIZE_BARE, study->asked, out) : status;
}
