/* apps/serve/past.h: the drive as it was, or as it stands in another file, to be set beside this
 * one.
 *
 * Where from  `opened`: when the server began; `act:12`: after twelve acts of the journal;
 * `git:ID`: in a commit; `file:NAME`: another drive file of the folder, whose name is only compared
 * with what is there.
 */
#ifndef TS_APPS_SERVE_PAST_H
#define TS_APPS_SERVE_PAST_H

#include "apps/serve/sitting.h"

/* {"acts": [...], "git": [...], "files": [...]} */
void past_list(const sitting *here, growing *out);
/* NULL, and a study that was read, or why there is none; messages of a study that could not be read
 * stand in it. */
const char *past_study(const sitting *here, const char *from, ts_study **study);

#endif
