/* What happens when an accessory seizes? */
#include "apps/cli/session.h"
#include "towershaft/seize.h"

static ts_status seize(const session_asked *asked, int *exit_code)
{
    const arguments       *given   = asked->given;
    ts_verdict             verdict = TS_VERDICT_NOT_COMPUTABLE;
    const ts_seize_options what    = {.accessory = given->operand[1],
                                      .condition = given->value[OPTION_CONDITION],
                                      .ramp      = given->value[OPTION_RAMP],
                                      .neck_of   = given->value[OPTION_NECK_OF],
                                      .json      = asked->json};
    const ts_status        status =
        ts_seize_write(asked->study, &what, asked->page, &verdict, asked->sink);
    *exit_code = session_exit(verdict);
    return status;
}

int run_seize(const arguments *given)
{
    return session_answer(given, TS_WANT_DRIVE, seize);
}
