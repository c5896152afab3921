/* Where does power become heat, and what oil carries it away? */
#include "apps/cli/session.h"
#include "towershaft/oil.h"

static ts_status oil(const session_asked *asked, int *exit_code)
{
    bool            computed = false;
    const ts_status status   = ts_oil_write(asked->study, asked->given->value[OPTION_CONDITION],
                                            asked->json, asked->page, &computed, asked->sink);
    *exit_code               = computed ? EXIT_HOLDS : EXIT_NOT_UNDERSTOOD;
    return status;
}

int run_oil(const arguments *given)
{
    return session_answer(given, TS_WANT_DRIVE, oil);
}
