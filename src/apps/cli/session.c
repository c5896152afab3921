/* How does a command get its drive? */
#include "apps/cli/session.h"

ts_study *session_open(const char *path, const ts_study_options *options, bool json, int *exit_code)
{
    file_bytes file;
    if (!file_read(path, &file, exit_code))
        return NULL;
    ts_study *study  = NULL;
    ts_status status = ts_study_open(NULL, &study);
    if (status == TS_OK)
        status = ts_study_read(study, path, file.bytes, file.length, options);
    file_forget(&file);
    if (status == TS_OK)
        return study;
    *exit_code = complain(study, status, json);
    ts_study_close(study);
    return NULL;
}

int session_verdict(const ts_study *study)
{
    static const int codes[] = {
        [TS_HOLDS]                  = EXIT_HOLDS,
        [TS_DOES_NOT_HOLD]          = EXIT_DOES_NOT_HOLD,
        [TS_VERDICT_NOT_COMPUTABLE] = EXIT_NOT_UNDERSTOOD,
    };
    return codes[ts_study_verdict(study)];
}
