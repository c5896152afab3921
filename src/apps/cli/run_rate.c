/* Do the elements of a rate file hold, each by itself? */
#include "apps/cli/session.h"

/* What an element lacks cannot be computed, and that is the file's fault. */
static int verdict(const ts_study *study)
{
    switch (ts_study_verdict(study)) {
    case TS_HOLDS:
        return EXIT_HOLDS;
    case TS_DOES_NOT_HOLD:
        return EXIT_DOES_NOT_HOLD;
    case TS_VERDICT_NOT_COMPUTABLE:
        break;
    }
    return EXIT_NOT_UNDERSTOOD;
}

int run_rate(const arguments *given)
{
    ts_page_options  page;
    ts_study_options options;
    const bool       json = given->value[OPTION_JSON] != NULL;
    if (!page_options(given, &page) || !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    int code        = EXIT_FAULT;
    options.file    = TS_WANT_RATE;
    ts_study *study = session_open(given->operand[0], &options, json, &code);
    if (study == NULL)
        return code;
    collector       collected;
    const ts_sink   sink   = collector_sink(&collected);
    const ts_status status = ts_rate_write(study, json, &page, &sink);
    code = status == TS_OK ? output_deliver(given, &collected) : complain(study, status, json);
    if (code == EXIT_HOLDS)
        code = verdict(study);
    collector_forget(&collected);
    ts_study_close(study);
    return code;
}
