/* How does the drive swing in torsion? */
#include "apps/cli/session.h"

static ts_status twist(const session_asked *asked, int *exit_code)
{
    bool            computed = false;
    const ts_status status =
        ts_twist_write(asked->study, asked->json, asked->page, &computed, asked->sink);
    *exit_code = computed ? EXIT_HOLDS : EXIT_NOT_UNDERSTOOD;
    return status;
}

int run_twist(const arguments *given)
{
    return session_answer(given, TS_WANT_DRIVE, twist);
}
