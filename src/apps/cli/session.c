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

int session_answer(const arguments *given, ts_file_wanted file, session_question *question)
{
    ts_page_options  page;
    ts_study_options options;
    const bool       json = given->value[OPTION_JSON] != NULL;
    if (!page_options(given, &page) || !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    int code         = EXIT_FAULT;
    options.file     = file;
    options.workings = file == TS_WANT_RATE && options.workings;
    ts_study *study  = session_open(given->operand[0], &options, json, &code);
    if (study == NULL)
        return code;
    collector           told;
    const ts_sink       sink   = collector_sink(&told);
    const session_asked asked  = {study, given, &page, &sink, json};
    int                 heard  = EXIT_HOLDS;
    const ts_status     status = question(&asked, &heard);
    code = status == TS_OK ? output_deliver(given, &told) : complain(study, status, json);
    collector_forget(&told);
    ts_study_close(study);
    return code == EXIT_HOLDS ? heard : code;
}

int session_verdict(const ts_study *study)
{
    return session_exit(ts_study_verdict(study));
}

int session_exit(ts_verdict verdict)
{
    static const int codes[] = {
        [TS_HOLDS]                  = EXIT_HOLDS,
        [TS_DOES_NOT_HOLD]          = EXIT_DOES_NOT_HOLD,
        [TS_VERDICT_NOT_COMPUTABLE] = EXIT_NOT_UNDERSTOOD,
    };
    return codes[verdict];
}
