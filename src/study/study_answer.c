/* What does a study hand to the rooms that write? */
#include "study/study.h"

ts_answer ts_study_answer(const ts_study *study)
{
    return (ts_answer){
        .source    = &study->source,
        .drive     = &study->drive,
        .train     = &study->train,
        .motion    = &study->motion,
        .power     = &study->power,
        .mass      = &study->mass,
        .lines     = &study->lines,
        .teeth     = &study->teeth,
        .opinion   = &study->opinion,
        .select    = &study->select,
        .rubbing   = &study->rubbing,
        .splines   = &study->splines,
        .floats    = &study->floats,
        .heat      = &study->heat,
        .outcome   = &study->outcome,
        .workings  = study->workings,
        .version   = ts_version(),
        .sha256    = ts_study_sha256(study),
        .caution   = ts_caution(),
        .allocator = study->allocator,
    };
}
