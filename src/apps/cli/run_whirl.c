/* At which speeds do the shafts whirl? */
#include "apps/cli/session.h"

static ts_status whirl(const session_asked *asked, int *exit_code)
{
    bool            computed = false;
    const ts_status status =
        ts_whirl_write(asked->study, asked->json, asked->page, &computed, asked->sink);
    *exit_code = computed ? EXIT_HOLDS : EXIT_NOT_UNDERSTOOD;
    return status;
}

int run_whirl(const arguments *given)
{
    return session_answer(given, TS_WANT_DRIVE, whirl);
}
