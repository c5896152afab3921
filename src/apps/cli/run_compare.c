/* What changed between two drives? */
#include "apps/cli/session.h"

int run_compare(const arguments *given)
{
    ts_page_options  page;
    ts_study_options options;
    if (!page_options(given, &page) || !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    const bool json   = given->value[OPTION_JSON] != NULL;
    int        code   = EXIT_FAULT;
    ts_study  *before = session_open(given->operand[0], &options, json, &code);
    if (before == NULL)
        return code;
    ts_study *after = session_open(given->operand[1], &options, json, &code);
    if (after != NULL) {
        collector       collected;
        const ts_sink   sink   = collector_sink(&collected);
        const ts_status status = ts_compare_write(before, after, json, &page, &sink);
        code = status == TS_OK ? output_deliver(given, &collected) : complain(after, status, json);
        collector_forget(&collected);
    }
    ts_study_close(after);
    ts_study_close(before);
    return code;
}
