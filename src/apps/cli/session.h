/* apps/cli/session.h: a study with a file in it, as most commands begin. */
#ifndef TS_APPS_CLI_SESSION_H
#define TS_APPS_CLI_SESSION_H

#include "apps/cli/arguments.h"
#include "apps/cli/files.h"
#include "apps/cli/terminal.h"

/* Opens a study and reads `path` into it.  On failure says why, closes all, and returns NULL with
 * the exit code. */
ts_study *session_open(const char *path, const ts_study_options *options, bool json,
                       int *exit_code);

/* What a command asks of a study that has its file: writes the answer to `sink`, and where the
 * answer itself is one that people must hear of, sets *exit_code, which is 0 before. */
typedef struct session_asked {
    ts_study              *study;
    const arguments       *given;
    const ts_page_options *page;
    const ts_sink         *sink;
    bool                   json;
} session_asked;
typedef ts_status session_question(const session_asked *asked, int *exit_code);

/* Reads the file of the first operand, asks, and delivers the answer: the exit code. */
int session_answer(const arguments *given, ts_file_wanted file, session_question *question);

/* 0 when the drive holds, 1 when it does not, 2 when what decides cannot be computed. */
int session_verdict(const ts_study *study);
/* The same of any verdict. */
int session_exit(ts_verdict verdict);

#endif
