/* What does the maker of an accessory need to know of its pad? */
#include "apps/cli/picture_wish.h"
#include "apps/cli/session.h"
#include "towershaft/sheet.h"

static int deliver(const arguments *given, ts_study *study, ts_study *old)
{
    const ts_sheet_options what = {.accessory = given->operand[1],
                                   .format    = given->value[OPTION_JSON] != NULL
                                                    ? "json"
                                                    : paper_ending(given->value[OPTION_OUTPUT]),
                                   .paper     = given->value[OPTION_PAPER],
                                   .against   = old};
    ts_page_options        page;
    collector              told;
    const ts_sink          sink = collector_sink(&told);
    const bool             json = given->value[OPTION_JSON] != NULL;
    if (!page_options(given, &page))
        return EXIT_NOT_UNDERSTOOD;
    const ts_status status = ts_sheet_write_to(study, &what, &page, &sink);
    const int code = status == TS_OK ? output_deliver(given, &told) : complain(study, status, json);
    collector_forget(&told);
    return code;
}

int run_sheet(const arguments *given)
{
    const char      *against = given->value[OPTION_AGAINST];
    const bool       json    = given->value[OPTION_JSON] != NULL;
    int              code    = EXIT_FAULT;
    ts_study        *old     = NULL;
    ts_page_options  page;
    ts_study_options options;
    if (!page_options(given, &page) || !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    options.file     = TS_WANT_DRIVE;
    options.workings = false;
    if (against != NULL)
        old = session_open(against, &options, json, &code);
    if (against != NULL && old == NULL)
        return code;
    ts_study *study = session_open(given->operand[0], &options, json, &code);
    if (study != NULL)
        code = deliver(given, study, old);
    ts_study_close(study);
    ts_study_close(old);
    return code;
}
