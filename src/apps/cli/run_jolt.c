/* What happens when an accessory or the spool is jolted? */
#include "apps/cli/session.h"
#include "towershaft/seize.h"

static ts_status jolt(const session_asked *asked, int *exit_code)
{
    const arguments       *given   = asked->given;
    ts_verdict             verdict = TS_VERDICT_NOT_COMPUTABLE;
    const ts_seize_options what    = {.jolt      = given->operand[1],
                                      .accessory = given->operand_count > 2 ? given->operand[2] : NULL,
                                      .condition = given->value[OPTION_CONDITION],
                                      .ramp      = given->value[OPTION_RAMP],
                                      .json      = asked->json};
    const ts_status        status =
        ts_seize_write(asked->study, &what, asked->page, &verdict, asked->sink);
    *exit_code = session_exit(verdict);
    return status;
}

int run_jolt(const arguments *given)
{
    return session_answer(given, TS_WANT_DRIVE, jolt);
}
