/* How is a file saved whole or not at all? */
#include "apps/cli/atomic_save.h"

#include <errno.h>
#include <fcntl.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define LINKS_MOST 40 /* as many as Linux follows itself (path_resolution(7)) */

/* What the link `path` points to, as a path from here; NULL with errno when it cannot be told. */
static char *link_target(const char *path)
{
    char          target[4096];
    const ssize_t length = readlink(path, target, sizeof target - 1);
    if (length < 0)
        return NULL;
    target[length]     = '\0';
    const char  *slash = target[0] == '/' ? NULL : strrchr(path, '/');
    const size_t head  = slash != NULL ? (size_t)(slash - path) + 1 : 0;
    char        *whole = malloc(head + (size_t)length + 1);
    if (whole == NULL)
        return NULL;
    memcpy(whole, path, head);
    memcpy(whole + head, target, (size_t)length + 1);
    return whole;
}

/* The path behind all links; it need not exist.  To be freed; NULL with errno on failure. */
static char *behind_links(const char *path)
{
    char *now = strdup(path);
    for (int i = 0; now != NULL; i++) {
        struct stat about;
        if (lstat(now, &about) != 0)
            return now;
        if (!S_ISLNK(about.st_mode))
            return now;
        char *next = i < LINKS_MOST ? link_target(now) : NULL;
        if (i >= LINKS_MOST)
            errno = ELOOP;
        free(now);
        now = next;
    }
    return NULL;
}

/* The mode of the file that is there, or what a new file gets under the user's mask. */
static mode_t mode_for(const char *path)
{
    struct stat about;
    if (stat(path, &about) == 0)
        return about.st_mode & 07777;
    const mode_t mask = umask(0);
    umask(mask);
    return 0666 & ~mask;
}

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

/* Fills the temporary file and puts it on the disk; closes it in any case. */
static bool fill(int file, mode_t mode, const char *bytes, size_t length)
{
    bool good = write_all(file, bytes, length) && fchmod(file, mode) == 0 && fsync(file) == 0;
    int  why  = errno;
    if (close(file) != 0 && good) {
        good = false;
        why  = errno;
    }
    errno = why;
    return good;
}

/* The rename itself is on the disk only when its folder is. */
static bool sync_folder(const char *path)
{
    const char *slash  = strrchr(path, '/');
    char       *folder = slash == NULL   ? strdup(".")
                         : slash == path ? strdup("/")
                                         : strndup(path, (size_t)(slash - path));
    if (folder == NULL)
        return false;
    const int handle = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    free(folder);
    /* Some file systems cannot sync a folder and say EINVAL; the rename stands all the same. */
    const bool good = handle >= 0 && (fsync(handle) == 0 || errno == EINVAL);
    const int  why  = errno;
    if (handle >= 0)
        close(handle);
    errno = why;
    return good;
}

/* A rename would replace even a file that its owner has closed against writing. */
static bool may_replace(const char *path)
{
    return access(path, F_OK) != 0 || access(path, W_OK) == 0;
}

static atomic_saved save_beside(const char *path, const char *bytes, size_t length)
{
    if (!may_replace(path))
        return ATOMIC_UNCHANGED;
    const size_t room      = strlen(path) + sizeof ".XXXXXX";
    char        *temporary = malloc(room);
    if (temporary == NULL)
        return ATOMIC_UNCHANGED;
    snprintf(temporary, room, "%s.XXXXXX", path);
    const int file = mkstemp(temporary);
    bool      good = file >= 0;
    if (good) {
        good = fill(file, mode_for(path), bytes, length) && rename(temporary, path) == 0;
        if (!good) {
            const int why = errno;
            unlink(temporary);
            errno = why;
        }
    }
    free(temporary);
    if (!good)
        return ATOMIC_UNCHANGED;
    return sync_folder(path) ? ATOMIC_SAVED : ATOMIC_UNSURE;
}

/* A device or a pipe (/dev/stdout, /dev/null) cannot be replaced by a rename. */
static bool is_special(const char *path)
{
    struct stat about;
    return stat(path, &about) == 0 && !S_ISREG(about.st_mode) && !S_ISDIR(about.st_mode);
}

static atomic_saved write_special(const char *path, const char *bytes, size_t length)
{
    const int file = open(path, O_WRONLY | O_CLOEXEC);
    if (file < 0)
        return ATOMIC_UNCHANGED;
    const bool good = write_all(file, bytes, length);
    const int  why  = errno;
    const bool shut = close(file) == 0;
    if (!good)
        errno = why;
    return good && shut ? ATOMIC_SAVED : ATOMIC_PARTLY;
}

atomic_saved atomic_save(const char *path, const char *bytes, size_t length, const char **why)
{
    atomic_saved saved = ATOMIC_UNCHANGED;
    if (is_special(path)) {
        saved = write_special(path, bytes, length);
    } else {
        char *target = behind_links(path);
        if (target != NULL)
            saved = save_beside(target, bytes, length);
        const int reason = errno;
        free(target);
        errno = reason;
    }
    if (saved != ATOMIC_SAVED)
        *why = strerror(errno);
    return saved;
}
