/* study/digest.c: which bytes does a study stand for? */
#include "base/sha256.h"
#include "study/study.h"

const char *ts_study_sha256(const ts_study *study)
{
    if (study->sha256 == NULL) /* nothing was read */
        return "";
    if (study->sha256[0] == '\0')
        ts_sha256(study->bytes, study->sha256);
    return study->sha256;
}
