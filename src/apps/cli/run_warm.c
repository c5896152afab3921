/* How does play change as the drive grows hot? */
#include "apps/cli/session.h"
#include "towershaft/warm.h"

static ts_status warm(const session_asked *asked, int *exit_code)
{
    const arguments      *given   = asked->given;
    ts_verdict            verdict = TS_VERDICT_NOT_COMPUTABLE;
    const ts_warm_options what    = {.through = given->value[OPTION_THROUGH],
                                     .soak    = given->value[OPTION_SOAK],
                                     .ambient = given->value[OPTION_AMBIENT],
                                     .json    = asked->json};
    const ts_status status = ts_warm_write(asked->study, &what, asked->page, &verdict, asked->sink);
    *exit_code             = session_exit(verdict);
    return status;
}

int run_warm(const arguments *given)
{
    return session_answer(given, TS_WANT_DRIVE, warm);
}
