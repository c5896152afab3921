/* How is the engine started? */
#include "apps/cli/session.h"
#include "towershaft/start.h"

static ts_status start(const session_asked *asked, int *exit_code)
{
    const arguments       *given   = asked->given;
    ts_verdict             verdict = TS_VERDICT_NOT_COMPUTABLE;
    const ts_start_options what    = {.ambient = given->value[OPTION_AMBIENT],
                                      .oil     = given->value[OPTION_OIL_TEMPERATURE],
                                      .grid    = given->value[OPTION_GRID] != NULL,
                                      .json    = asked->json,
                                      .to      = given->value[OPTION_TO]};
    const ts_status        status =
        ts_start_write(asked->study, &what, asked->page, &verdict, asked->sink);
    *exit_code = session_exit(verdict);
    return status;
}

int run_start(const arguments *given)
{
    return session_answer(given, TS_WANT_DRIVE, start);
}
