/* apps/cli/picture_wish.h: what the options say of a picture. */
#ifndef TS_APPS_CLI_PICTURE_WISH_H
#define TS_APPS_CLI_PICTURE_WISH_H

#include "apps/cli/arguments.h"
#include "towershaft/towershaft.h"

/* "svg" of "out/face.svg"; NULL when the name has no ending. */
const char *picture_ending(const char *path);
/* "pdf" or "html" where the name ends so; else, and of no name, NULL. */
const char *paper_ending(const char *path);
/* False, with a sentence, for a word that is no choice; the format stays NULL without --format. */
bool picture_wish(const arguments *given, ts_figure_options *out);
/* The same of --picture FILE, whose ending says the format; a format of NULL: no picture is asked
 * for.  False with a message that begins with the name of the command. */
bool picture_beside(const arguments *given, const char *command, ts_figure_options *out);

#endif
