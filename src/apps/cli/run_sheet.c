/* What does the maker of an accessory need to know of its pad? */
#include "apps/cli/session.h"
#include "towershaft/sheet.h"

#include <string.h>

/* "pdf" or "html" where the name of the file ends so, "json" where that is asked for. */
static const char *format_of(const arguments *given)
{
    static const char *const endings[] = {"pdf", "html"};
    const char              *path      = given->value[OPTION_OUTPUT];
    const size_t             length    = path != NULL ? strlen(path) : 0;
    if (given->value[OPTION_JSON] != NULL)
        return "json";
    for (size_t i = 0; i < sizeof endings / sizeof endings[0]; i++) {
        const size_t ending = strlen(endings[i]);
        if (length > ending + 1 && path[length - ending - 1] == '.' &&
            strcmp(path + length - ending, endings[i]) == 0)
            return endings[i];
    }
    return NULL;
}

static ts_status sheet(const session_asked *asked, int *exit_code)
{
    const ts_sheet_options what = {.accessory = asked->given->operand[1],
                                   .format    = format_of(asked->given),
                                   .paper     = asked->given->value[OPTION_PAPER]};
    (void)exit_code;
    return ts_sheet_write_to(asked->study, &what, asked->page, asked->sink);
}

int run_sheet(const arguments *given)
{
    return session_answer(given, TS_WANT_DRIVE, sheet);
}
