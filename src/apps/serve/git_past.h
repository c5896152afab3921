/* apps/serve/git_past.h: what does git know of the file?
 *
 * Asks the program git with fixed words and no shell, in the folder of the file, only commands that
 * run nothing else (no pager, hook, filter, signature or network), with a deadline.  Where the
 * folder is no work tree, or there is no git, there is nothing.
 */
#ifndef TS_APPS_SERVE_GIT_PAST_H
#define TS_APPS_SERVE_GIT_PAST_H

#include "apps/serve/workspace.h"

#define GIT_ID_MOST 64 /* hexadecimal digits of a commit */

/* Is it the name of a commit: 40 to 64 digits and nothing else. */
bool git_past_is_id(const char *text);
/* The last 50 commits that changed the file, each a line "id date subject"; false: there are none.
 */
bool git_past_list(const workspace *place, growing *lines);
/* The file as it was in a commit. */
bool git_past_text(const workspace *place, const char *id, growing *text);

#endif
