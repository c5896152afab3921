/* apps/cli/named_drive.h: a study file, and the drive that it names. */
#ifndef TS_APPS_CLI_NAMED_DRIVE_H
#define TS_APPS_CLI_NAMED_DRIVE_H

#include "apps/cli/arguments.h"
#include "apps/cli/files.h"
#include "towershaft/towershaft.h"

/* A study whose drive was not taken yet; NULL with a message and the exit code. */
ts_sampling *named_drive_study(const char *name, bool json, int *exit_code);

/* The path of its drive, which it names from its own folder; free() it.  NULL: no memory. */
char *named_drive_path(const char *name, const ts_sampling *sampling);

/* Is `drive` the file that the study names?  False with a message.  What is read from standard
 * input cannot be told, and is taken. */
bool named_drive_is(const char *name, const ts_sampling *sampling, const char *drive);

#endif
