/* towershaft/starting_file.h: commented drive files to begin with, and what the notation allows. */
#ifndef TOWERSHAFT_STARTING_FILE_H
#define TOWERSHAFT_STARTING_FILE_H

#include "towershaft/status.h"

/* "trainer", "bizjet", "medium", "large", then NULL. */
TS_API const char *ts_starting_file_name(size_t index);
/* The file with its title set to `title`.  TS_NOT_UNDERSTOOD for an unknown name. */
TS_API ts_status ts_starting_file_write(const char *like, const char *title, const ts_sink *sink);

/* What the program knows of its own notation: "drive.schema.json", "drive.d.ts", "drive-file.md",
 * "check.schema.json", ...; NULL after the last. */
TS_API const char *ts_notation_name(size_t index);
TS_API const char *ts_notation_says(size_t index);
TS_API ts_status   ts_notation_write(const char *name, const ts_sink *sink);

#endif
