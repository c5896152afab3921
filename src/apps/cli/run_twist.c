/* How does the drive swing in torsion? */
#include "apps/cli/arguments.h"
#include "apps/cli/session.h"

int run_twist(const arguments *given)
{
    ts_page_options  page;
    ts_study_options options;
    const bool       json = given->value[OPTION_JSON] != NULL;
    if (!page_options(given, &page) || !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    int code         = EXIT_FAULT;
    options.workings = false;
    ts_study *study  = session_open(given->operand[0], &options, json, &code);
    if (study == NULL)
        return code;
    collector       told;
    const ts_sink   sink     = collector_sink(&told);
    bool            computed = false;
    const ts_status status   = ts_twist_write(study, json, &page, &computed, &sink);
    code = status == TS_OK ? output_deliver(given, &told) : complain(study, status, json);
    if (code == EXIT_HOLDS && !computed)
        code = EXIT_DOES_NOT_HOLD;
    collector_forget(&told);
    ts_study_close(study);
    return code;
}
