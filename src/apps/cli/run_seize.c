/* What happens when an accessory seizes? */
#include "apps/cli/arguments.h"
#include "apps/cli/session.h"
#include "towershaft/seize.h"

int run_seize(const arguments *given)
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
    collector              told;
    const ts_sink          sink     = collector_sink(&told);
    bool                   computed = false;
    const ts_seize_options what     = {.accessory = given->operand[1],
                                       .condition = given->value[OPTION_CONDITION],
                                       .ramp      = given->value[OPTION_RAMP],
                                       .neck_of   = given->value[OPTION_NECK_OF],
                                       .json      = json};
    const ts_status        status   = ts_seize_write(study, &what, &page, &computed, &sink);
    code = status == TS_OK ? output_deliver(given, &told) : complain(study, status, json);
    if (code == EXIT_HOLDS && !computed)
        code = EXIT_DOES_NOT_HOLD;
    collector_forget(&told);
    ts_study_close(study);
    return code;
}
