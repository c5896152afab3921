/* apps/cli/session.h: a study with a file in it, as most commands begin. */
#ifndef TS_APPS_CLI_SESSION_H
#define TS_APPS_CLI_SESSION_H

#include "apps/cli/files.h"
#include "apps/cli/terminal.h"

/* Opens a study and reads `path` into it.  On failure says why, closes all, and returns NULL with
 * the exit code. */
ts_study *session_open(const char *path, const ts_study_options *options, bool json,
                       int *exit_code);

/* 0 when the drive holds, 1 when it does not, 2 when what decides cannot be computed. */
int session_verdict(const ts_study *study);

#endif
