/* Where does a number come from? */
#include "apps/cli/session.h"

int run_why(const arguments *given)
{
    ts_page_options  page;
    ts_study_options options;
    if (!page_options(given, &page) || !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    options.workings = true;
    options.file     = TS_WANT_EITHER;
    const bool json  = given->value[OPTION_JSON] != NULL;
    int        code  = EXIT_FAULT;
    ts_study  *study = session_open(given->operand[0], &options, json, &code);
    if (study == NULL)
        return code;
    collector       collected;
    const ts_sink   sink    = collector_sink(&collected);
    const char     *address = given->operand_count > 1 ? given->operand[1] : "";
    const ts_status status  = ts_study_write_why(study, address, json, &page, &sink);
    code = status == TS_OK ? output_deliver(given, &collected) : complain(study, status, json);
    collector_forget(&collected);
    ts_study_close(study);
    return code;
}
