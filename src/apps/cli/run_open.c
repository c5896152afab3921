/* Who opens the workbench? */
#include "apps/cli/command.h"
#include "apps/serve/serve.h"

#include <stdio.h>
#include <stdlib.h>

static bool read_port(const arguments *given, unsigned *port)
{
    char       *rest;
    const char *text = given->value[OPTION_PORT];
    *port            = 0;
    if (text == NULL)
        return true;
    const long value = strtol(text, &rest, 10);
    if (rest != text && *rest == '\0' && value >= 0 && value <= 65535) {
        *port = (unsigned)value;
        return true;
    }
    fprintf(stderr, "towershaft open: --port needs a whole number from 0 to 65535, not %s\n", text);
    return false;
}

int run_open(const arguments *given)
{
    serve_options options = {.path    = given->operand[0],
                             .browser = given->value[OPTION_NO_BROWSER] == NULL};
    if (!read_port(given, &options.port))
        return EXIT_NOT_UNDERSTOOD;
    return serve_run(&options);
}
