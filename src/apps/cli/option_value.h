/* apps/cli/option_value.h: options that take a whole number or a time; when one should stop. */
#ifndef TS_APPS_CLI_OPTION_VALUE_H
#define TS_APPS_CLI_OPTION_VALUE_H

#include "apps/cli/command.h"

/* A whole number from 1 to `most` into *out, which stays as it is without the option.  False with a
 * message that begins with the name of the command. */
bool option_count(const arguments *given, const char *command, option_id option, long most,
                  size_t *out);

/* "30", "30 s" or "5 min" of --within, in seconds; likewise. */
#define OPTION_TIME_MOST 1e6 /* s */
bool option_time(const arguments *given, const char *command, double *seconds);

/* A clock that only goes forward, s. */
double clock_now(void);

/* From now on an interrupt of the terminal is kept instead of ending the program. */
void interrupt_keep(void);
bool interrupt_came(void);

#endif
