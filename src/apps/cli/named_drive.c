/* Which drive does a study file name? */
#include "apps/cli/named_drive.h"

#include "apps/cli/session.h"

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

ts_sampling *named_drive_study(const char *name, bool json, int *exit_code)
{
    ts_sampling *sampling = NULL;
    file_bytes   file;

    if (!file_read(name, &file, exit_code))
        return NULL;
    const ts_status status = ts_sampling_open(NULL, name, file.bytes, file.length, &sampling);
    file_forget(&file);
    if (status == TS_OK)
        return sampling;
    *exit_code = complain(sampling != NULL ? ts_sampling_messages(sampling) : NULL, status, json);
    ts_sampling_close(sampling);
    return NULL;
}

char *named_drive_path(const char *name, const ts_sampling *sampling)
{
    const char  *drive  = ts_sampling_drive(sampling);
    const char  *slash  = strrchr(name, '/');
    const size_t folder = slash != NULL && drive[0] != '/' ? (size_t)(slash - name) + 1 : 0;
    char        *path   = malloc(folder + strlen(drive) + 1);

    if (path != NULL) {
        memcpy(path, name, folder);
        strcpy(path + folder, drive);
    }
    return path;
}

bool named_drive_is(const char *name, const ts_sampling *sampling, const char *drive)
{
    struct stat named = {0}, given = {0};
    char       *path = named_drive_path(name, sampling);

    if (path == NULL) {
        (void)complain(NULL, TS_NO_MEMORY, false);
        return false;
    }
    const bool same =
        strcmp(drive, "-") == 0 || (stat(path, &named) == 0 && stat(drive, &given) == 0 &&
                                    named.st_dev == given.st_dev && named.st_ino == given.st_ino);
    if (!same)
        fprintf(stderr, "%s: this study is of the drive %s, not of %s\n", name, path, drive);
    free(path);
    return same;
}
