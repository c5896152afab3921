/* apps/cli/atomic_save.h: a file is saved whole or not at all. */
#ifndef TS_APPS_CLI_ATOMIC_SAVE_H
#define TS_APPS_CLI_ATOMIC_SAVE_H

#include <stddef.h>

typedef enum atomic_saved {
    ATOMIC_SAVED,     /* and on the disk */
    ATOMIC_UNCHANGED, /* nothing has changed */
    ATOMIC_UNSURE,    /* the file is new and whole; its name may go when the power fails now */
    ATOMIC_PARTLY     /* a pipe or a device took some of it, or nothing */
} atomic_saved;

/* Temporary file beside the target, fsync, rename, fsync of the folder; a symlink is followed to
 * its target; the mode of an existing file is kept.  Unless it is saved, *why is a sentence of the
 * system's own. */
atomic_saved atomic_save(const char *path, const char *bytes, size_t length, const char **why);

#endif
