/* How is one file read and saved without losing anybody's bytes? */
#include "apps/serve/workspace.h"

#include <errno.h>
#include <fcntl.h>
#include <linux/openat2.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/syscall.h>
#include <unistd.h>

int workspace_open_file(const workspace *place, const char *name, int flags, mode_t mode)
{
    const struct open_how how = {.flags   = (unsigned)(flags | O_CLOEXEC),
                                 .mode    = (flags & O_CREAT) != 0 ? mode : 0,
                                 .resolve = RESOLVE_BENEATH | RESOLVE_NO_SYMLINKS};
    return (int)syscall(SYS_openat2, place->folder, name, &how, sizeof how);
}

static const char *split(workspace *place, char *whole)
{
    char *slash = strrchr(whole, '/');
    if (slash == NULL || strlen(slash + 1) > WORKSPACE_NAME_MOST)
        return "its name is too long";
    snprintf(place->name, sizeof place->name, "%s", slash + 1);
    snprintf(place->journal, sizeof place->journal, ".%s.towershaft-journal", place->name);
    snprintf(place->fresh, sizeof place->fresh, ".%s.towershaft-new", place->name);
    slash[slash == whole ? 1 : 0] = '\0';
    place->folder                 = open(whole, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    return place->folder >= 0 ? NULL : strerror(errno);
}

const char *workspace_open(workspace *place, const char *path)
{
    *place      = (workspace){.folder = -1, .writing = -1};
    char *whole = realpath(path, NULL);
    if (whole == NULL)
        return strerror(errno);
    const char *why = split(place, whole);
    free(whole);
    return why;
}

void workspace_close(workspace *place)
{
    workspace_forget(place);
    workspace_settle(place);
    if (place->folder >= 0)
        close(place->folder);
    place->folder = -1;
}

/* ---- reading -------------------------------------------------------------------------------- */

static const char *read_all(int file, growing *into)
{
    char block[16384];
    for (;;) {
        const ssize_t got = read(file, block, sizeof block);
        if (got < 0 && errno == EINTR)
            continue;
        if (got < 0)
            return strerror(errno);
        if (got == 0)
            return into->failed ? "out of memory" : NULL;
        growing_add(into, block, (size_t)got);
        if (into->length > WORKSPACE_FILE_MOST)
            return "it is larger than 4 MiB";
    }
}

static const char *read_named(const workspace *place, const char *name, growing *into,
                              struct stat *about)
{
    const int file = workspace_open_file(place, name, O_RDONLY | O_NONBLOCK, 0);
    if (file < 0)
        return strerror(errno);
    const char *why = NULL;
    if (fstat(file, about) != 0)
        why = strerror(errno);
    else if (!S_ISREG(about->st_mode))
        why = "it is no regular file";
    else
        why = read_all(file, into);
    close(file);
    return why;
}

const char *workspace_read(workspace *place, growing *into)
{
    struct stat about;
    growing_add(into, "", 0);
    const char *why = read_named(place, place->name, into, &about);
    if (why == NULL)
        place->seen = about;
    return why;
}

const char *workspace_read_other(const workspace *place, const char *name, growing *into)
{
    struct stat about;
    growing_add(into, "", 0);
    return read_named(place, name, into, &about);
}

bool workspace_touched(const workspace *place)
{
    struct stat now;
    if (fstatat(place->folder, place->name, &now, AT_SYMLINK_NOFOLLOW) != 0)
        return true;
    return now.st_ino != place->seen.st_ino || now.st_size != place->seen.st_size ||
           now.st_mtim.tv_sec != place->seen.st_mtim.tv_sec ||
           now.st_mtim.tv_nsec != place->seen.st_mtim.tv_nsec;
}

/* ---- saving --------------------------------------------------------------------------------- */

static bool write_all(int file, const char *bytes, size_t length)
{
    while (length > 0) {
        const ssize_t written = write(file, bytes, length);
        if (written < 0 && errno == EINTR)
            continue;
        if (written <= 0)
            return false;
        bytes += written;
        length -= (size_t)written;
    }
    return true;
}

bool workspace_begin(workspace *place, const char *bytes, size_t length)
{
    workspace_settle(place);
    workspace_forget(place);
    (void)unlinkat(place->folder, place->fresh, 0);
    place->writing =
        workspace_open_file(place, place->fresh, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW, 0600);
    if (place->writing < 0)
        return false;
    if (!write_all(place->writing, bytes, length) ||
        fchmod(place->writing, place->seen.st_mode & 07777) != 0)
        return false;
    (void)sync_file_range(place->writing, 0, 0, SYNC_FILE_RANGE_WRITE); /* only a beginning */
    return true;
}

static bool finish_fresh(workspace *place)
{
    const bool good = place->writing >= 0 && fsync(place->writing) == 0;
    const int  why  = errno;
    const bool shut = place->writing >= 0 && close(place->writing) == 0;
    place->writing  = -1;
    if (!good)
        errno = why;
    return good && shut;
}

void workspace_forget(workspace *place)
{
    if (place->writing < 0)
        return;
    close(place->writing);
    place->writing = -1;
    (void)unlinkat(place->folder, place->fresh, 0);
}

void workspace_settle(workspace *place)
{
    if (place->unsettled)
        (void)fsync(place->folder); /* some file systems cannot; the names stand all the same */
    place->unsettled = false;
}

static bool exchange(const workspace *place)
{
    return renameat2(place->folder, place->fresh, place->folder, place->name, RENAME_EXCHANGE) == 0;
}

/* Does the file hold these bytes?  WORKSPACE_NOT_SAVED with errno when it cannot be read. */
static workspace_saved reads(const workspace *place, const char *name, const char *bytes,
                             size_t length)
{
    growing         text = {0};
    struct stat     about;
    workspace_saved held = WORKSPACE_NOT_SAVED;
    if (read_named(place, name, &text, &about) == NULL)
        held = text.length == length && (length == 0 || memcmp(text.bytes, bytes, length) == 0)
                   ? WORKSPACE_SAVED
                   : WORKSPACE_CHANGED_OUTSIDE;
    const int why = errno;
    growing_forget(&text);
    errno = why;
    return held;
}

/* After the exchange the old file bears the fresh one's name. */
static workspace_saved keep_or_give_back(workspace *place, const char *before, size_t length)
{
    const workspace_saved held = reads(place, place->fresh, before, length);
    const int             why  = errno;
    if (held != WORKSPACE_SAVED)
        (void)exchange(place);
    errno = why;
    return held;
}

/* A file system without the exchange: looked at first, then replaced. */
static workspace_saved replace(workspace *place, const char *before, size_t length)
{
    const bool            there = faccessat(place->folder, place->name, F_OK, 0) == 0;
    const workspace_saved held =
        there ? reads(place, place->name, before, length) : WORKSPACE_SAVED;
    if (held != WORKSPACE_SAVED)
        return held;
    return renameat(place->folder, place->fresh, place->folder, place->name) == 0
               ? WORKSPACE_SAVED
               : WORKSPACE_NOT_SAVED;
}

static workspace_saved put(workspace *place, const char *before, size_t length)
{
    if (exchange(place))
        return keep_or_give_back(place, before, length);
    if (errno == EINVAL || errno == ENOSYS || errno == ENOENT)
        return replace(place, before, length);
    return WORKSPACE_NOT_SAVED;
}

workspace_saved workspace_save(workspace *place, const char *before, size_t before_length,
                               const char **why)
{
    workspace_saved saved = WORKSPACE_NOT_SAVED;
    if (finish_fresh(place))
        saved = put(place, before, before_length);
    if (saved == WORKSPACE_NOT_SAVED)
        *why = strerror(errno);
    (void)unlinkat(place->folder, place->fresh, 0);
    if (saved != WORKSPACE_SAVED)
        return saved;
    place->unsettled = true;
    (void)fstatat(place->folder, place->name, &place->seen, AT_SYMLINK_NOFOLLOW);
    return WORKSPACE_SAVED;
}
