/* apps/serve/workspace.h: the one file that is worked on, and what stands beside it.
 *
 * The folder is opened once; from then on every file is opened beneath it (openat2 with
 * RESOLVE_BENEATH and RESOLVE_NO_SYMLINKS), by a name that was made here or read from the folder.
 * No name ever comes from a request.
 */
#ifndef TS_APPS_SERVE_WORKSPACE_H
#define TS_APPS_SERVE_WORKSPACE_H

#include "apps/serve/growing.h"

#include <stdbool.h>
#include <sys/stat.h>
#include <sys/types.h>

#define WORKSPACE_NAME_MOST 200
#define WORKSPACE_FILE_MOST ((size_t)4 * 1024 * 1024)

typedef struct workspace {
    int         folder;
    char        name[WORKSPACE_NAME_MOST + 1];
    char        journal[WORKSPACE_NAME_MOST + 32];
    char        fresh[WORKSPACE_NAME_MOST + 32]; /* what is written before it takes the name */
    struct stat seen;                            /* of the file as it was last read or saved */
    int         writing;                         /* the fresh file while it is written; else -1 */
    bool        unsettled; /* the names have changed in memory, and not surely on the disk */
} workspace;

/* NULL, or why the file cannot be worked on. */
const char *workspace_open(workspace *place, const char *path);
void        workspace_close(workspace *place);

/* A file beneath the folder; -1 with errno. */
int workspace_open_file(const workspace *place, const char *name, int flags, mode_t mode);

/* The bytes of the file; NULL, or why they cannot be read. */
const char *workspace_read(workspace *place, growing *into);

/* The bytes of another file of the folder, by a name that was read from the folder. */
const char *workspace_read_other(const workspace *place, const char *name, growing *into);

/* Has the file another date, size or number than when it was last read or saved?  Asks for its
 * properties only. */
bool workspace_touched(const workspace *place);

typedef enum workspace_saved {
    WORKSPACE_SAVED,
    WORKSPACE_CHANGED_OUTSIDE, /* another hand wrote it: it stands as that hand left it */
    WORKSPACE_NOT_SAVED        /* the disk refused; the file stands as it was           */
} workspace_saved;

/* Writes `bytes` beside the file and lets the disk begin with them; false with errno.  Until
 * workspace_save the file itself is not touched, and workspace_forget takes it back. */
bool workspace_begin(workspace *place, const char *bytes, size_t length);
void workspace_forget(workspace *place);

/* Puts what was begun in the place of the file, which is expected to read `before`: whole or not at
 * all, its bytes on the disk.  The two change names in one step (renameat2), and only then is it
 * looked at what was there; when that is not `before`, they change back. */
workspace_saved workspace_save(workspace *place, const char *before, size_t before_length,
                               const char **why);

/* Waits until the disk has the names too.  Until then a loss of power leaves the file as it was,
 * whole; called when the page has its answer, and before the next file is begun. */
void workspace_settle(workspace *place);

#endif
