/* Between which torques do the necks break, and how likely too early or too late? */
#include "apps/cli/option_value.h"
#include "apps/cli/session.h"
#include "towershaft/necks.h"

static ts_status necks(const session_asked *asked, int *exit_code)
{
    bool             computed = false;
    ts_necks_options what     = {.json     = asked->json,
                                 .seizures = asked->given->value[OPTION_SEIZURES] != NULL};

    if (!option_count(asked->given, "necks", OPTION_SAMPLES, 20000000, &what.samples) ||
        !option_count(asked->given, "necks", OPTION_THREADS, 64, &what.threads)) {
        *exit_code = EXIT_NOT_UNDERSTOOD;
        return TS_OK;
    }
    const ts_status status =
        ts_necks_write(asked->study, &what, asked->page, &computed, asked->sink);
    *exit_code = computed ? EXIT_HOLDS : EXIT_NOT_UNDERSTOOD;
    return status;
}

int run_necks(const arguments *given)
{
    return session_answer(given, TS_WANT_DRIVE, necks);
}
