/* What stops when a part fails? */
#include "apps/cli/picture_wish.h"
#include "apps/cli/session.h"
#include "towershaft/effects.h"

static ts_status effects(const session_asked *asked, int *exit_code)
{
    const arguments         *given = asked->given;
    const ts_effects_options what  = {
         .part      = given->operand_count > 1 ? given->operand[1] : NULL,
         .condition = given->value[OPTION_CONDITION],
         .format    = asked->json ? NULL : paper_ending(given->value[OPTION_OUTPUT]),
         .paper     = given->value[OPTION_PAPER],
    };
    (void)exit_code; /* an effect is told, not judged */
    return ts_effects_write(asked->study, &what, asked->json, asked->page, asked->sink);
}

int run_effects(const arguments *given)
{
    return session_answer(given, TS_WANT_DRIVE, effects);
}
