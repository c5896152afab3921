/* support/solved_file.h: a drive file, read and solved. */
#ifndef TS_SUPPORT_SOLVED_FILE_H
#define TS_SUPPORT_SOLVED_FILE_H

#include "model/source.h"
#include "power/power.h"

#include <stdbool.h>

typedef struct solved_file {
    ts_arena       *arena;
    ts_diagnostics *list;
    ts_workings    *workings; /* NULL unless asked for */
    ts_source       source;
    ts_drive        drive;
    ts_train        train;
    ts_motion       motion;
    ts_power        power;
    ts_status       status; /* of the first step that failed, or TS_OK */
} solved_file;

/* `text` must live until the file is closed. */
void solved_file_open(solved_file *file, ts_text text, bool with_workings);
void solved_file_close(solved_file *file);

/* The shaft at an address; the test fails when there is none. */
uint32_t solved_file_shaft(const solved_file *file, const char *address);

#endif
