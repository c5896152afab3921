/* apps/cli/terminal.h: how wide is the page, does it take colour, and what day is it? */
#ifndef TS_APPS_CLI_TERMINAL_H
#define TS_APPS_CLI_TERMINAL_H

#include "apps/cli/command.h"

#include <stdint.h>

/* The columns of the terminal behind a stream; `otherwise` when there is none. */
int terminal_columns(int stream, int otherwise);

/* False, with a message, when an option makes no sense. */
bool page_options(const arguments *given, ts_page_options *out);
bool study_options(const arguments *given, ts_study_options *out);

#endif
