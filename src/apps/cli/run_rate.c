/* Do the elements of a rate file hold, each by itself? */
#include "apps/cli/session.h"

/* What an element lacks cannot be computed, and that is the file's fault: exit code 2. */
static ts_status rate(const session_asked *asked, int *exit_code)
{
    const ts_status status = ts_rate_write(asked->study, asked->json, asked->page, asked->sink);
    if (status == TS_OK)
        *exit_code = session_verdict(asked->study);
    return status;
}

int run_rate(const arguments *given)
{
    return session_answer(given, TS_WANT_RATE, rate);
}
