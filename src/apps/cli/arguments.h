/* apps/cli/arguments.h: the words of the command line, sorted into operands and options. */
#ifndef TS_APPS_CLI_ARGUMENTS_H
#define TS_APPS_CLI_ARGUMENTS_H

#include "apps/cli/command.h"

/* Returns true, or says on stderr what is wrong, with the nearest known word. */
bool arguments_read(const command_row *command, int count, char **words, arguments *out);

/* One of `allowed` ("metric|us") or false with a message. */
bool arguments_choice(const arguments *given, option_id option, const char **chosen);

const command_row *command_named(const char *name);
/* Nearest command name or NULL. */
const char *command_nearest(const char *name);

#endif
