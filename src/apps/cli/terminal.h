/* apps/cli/terminal.h: how wide is the page, does it take colour, and what day is it? */
#ifndef TS_APPS_CLI_TERMINAL_H
#define TS_APPS_CLI_TERMINAL_H

#include "apps/cli/command.h"

#include <stdint.h>

/* The columns of the terminal behind a stream; `otherwise` when there is none. */
int terminal_columns(int stream, int otherwise);

/* Prints a text of paragraphs that begin after `indent` blanks, the first of them behind what
 * stands on the line already, at most `columns` wide.  A line that begins with a blank, such as an
 * example, stands as it is; any other goes on with the line before it. */
void print_paragraphs(const char *text, int indent, int columns);

/* False, with a message, when an option makes no sense. */
bool page_options(const arguments *given, ts_page_options *out);
bool study_options(const arguments *given, ts_study_options *out);

#endif
