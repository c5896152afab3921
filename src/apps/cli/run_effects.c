/* What stops when a part fails? */
#include "apps/cli/arguments.h"
#include "apps/cli/session.h"
#include "towershaft/effects.h"

int run_effects(const arguments *given)
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
    collector                told;
    const ts_sink            sink = collector_sink(&told);
    const ts_effects_options what = {given->operand_count > 1 ? given->operand[1] : NULL,
                                     given->value[OPTION_CONDITION]};
    const ts_status status = ts_effects_write(study, &what, json, &page, &sink);
    code = status == TS_OK ? output_deliver(given, &told) : complain(study, status, json);
    collector_forget(&told);
    ts_study_close(study);
    return code;
}
