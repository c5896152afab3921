/* apps/cli/atomic_save.h: a file is saved whole or not at all. */
#ifndef TS_APPS_CLI_ATOMIC_SAVE_H
#define TS_APPS_CLI_ATOMIC_SAVE_H

#include <stdbool.h>
#include <stddef.h>

/* Temporary file beside the target, fsync, rename, fsync of the folder; a symlink is followed to
 * its target; the mode of an existing file is kept.  On failure nothing has changed and *why is a
 * sentence (static, or the system's own). */
bool atomic_save(const char *path, const char *bytes, size_t length, const char **why);

#endif
