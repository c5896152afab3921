/* How do bytes come in and go out? */
#include "apps/cli/files.h"

#include "apps/cli/atomic_save.h"
#include "apps/cli/terminal.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* One byte more than the reader takes, so that it, not the door, refuses what is too long. */
#define READ_MOST ((size_t)4 * 1024 * 1024 + 1)

static bool read_all(FILE *file, file_bytes *out)
{
    size_t room = 1 << 16;
    out->bytes  = malloc(room);
    out->length = 0;
    while (out->bytes != NULL) {
        out->length += fread(out->bytes + out->length, 1, room - out->length, file);
        if (out->length < room || room > READ_MOST)
            return ferror(file) == 0;
        room *= 2;
        char *grown = realloc(out->bytes, room);
        if (grown == NULL)
            break;
        out->bytes = grown;
    }
    errno = ENOMEM;
    return false;
}

bool file_read(const char *path, file_bytes *out, int *exit_code)
{
    const bool standard = strcmp(path, "-") == 0;
    *out                = (file_bytes){NULL, 0};
    FILE *file          = standard ? stdin : fopen(path, "rb");
    if (file != NULL && read_all(file, out)) {
        if (!standard)
            fclose(file);
        return true;
    }
    const int why = errno;
    fprintf(stderr, "towershaft: %s: %s\n", path, strerror(why));
    *exit_code = why == ENOMEM ? EXIT_FAULT : EXIT_NOT_UNDERSTOOD;
    if (file != NULL && !standard)
        fclose(file);
    file_forget(out);
    return false;
}

void file_forget(file_bytes *file)
{
    free(file->bytes);
    *file = (file_bytes){NULL, 0};
}

static int collect(void *context, const char *bytes, size_t length)
{
    collector *into = context;
    if (length > into->room - into->length) {
        size_t room = into->room == 0 ? 1 << 16 : into->room;
        while (room - into->length < length)
            room *= 2;
        char *grown = realloc(into->bytes, room);
        if (grown == NULL)
            return -1;
        into->bytes = grown;
        into->room  = room;
    }
    if (length > 0)
        memcpy(into->bytes + into->length, bytes, length);
    into->length += length;
    return 0;
}

ts_sink collector_sink(collector *into)
{
    *into = (collector){NULL, 0, 0};
    return (ts_sink){collect, into};
}

void collector_forget(collector *into)
{
    free(into->bytes);
    *into = (collector){NULL, 0, 0};
}

int file_save(const char *path, const char *bytes, size_t length)
{
    static const char *const became[] = {
        [ATOMIC_SAVED]     = "",
        [ATOMIC_UNCHANGED] = "nothing was changed",
        [ATOMIC_UNSURE]    = "the file is written, and may be lost if the power fails now",
        [ATOMIC_PARTLY]    = "not all of it was written",
    };
    const char        *why   = NULL;
    const atomic_saved saved = atomic_save(path, bytes, length, &why);
    if (saved == ATOMIC_SAVED)
        return EXIT_HOLDS;
    fprintf(stderr, "towershaft: %s: %s; %s\n", path, why, became[saved]);
    return EXIT_FAULT;
}

int output_send(const collector *from)
{
    const bool sent =
        from->length == 0 || fwrite(from->bytes, 1, from->length, stdout) == from->length;
    if (sent && fflush(stdout) == 0)
        return EXIT_HOLDS;
    fprintf(stderr, "towershaft: standard output: %s\n", strerror(errno));
    return EXIT_FAULT;
}

int output_deliver(const arguments *given, const collector *from)
{
    if (given->value[OPTION_OUTPUT] != NULL)
        return file_save(given->value[OPTION_OUTPUT], from->bytes, from->length);
    return output_send(from);
}

int output_end(int code)
{
    if (code == EXIT_FAULT)
        return code;
    const bool lost = ferror(stdout) != 0;
    if (fflush(stdout) != 0)
        fprintf(stderr, "towershaft: standard output: %s\n", strerror(errno));
    else if (lost)
        fprintf(stderr, "towershaft: standard output: not all of it could be written\n");
    else
        return code;
    return EXIT_FAULT;
}

static int to_stream(void *context, const char *bytes, size_t length)
{
    return fwrite(bytes, 1, length, context) == length ? 0 : -1;
}

int complain(const ts_study *study, ts_status status, bool json)
{
    if (status == TS_NO_MEMORY) {
        fprintf(stderr, "towershaft: out of memory; nothing was written\n");
        return EXIT_FAULT;
    }
    if (status == TS_NO_OUTPUT) {
        fprintf(stderr, "towershaft: the output could not be written\n");
        return EXIT_FAULT;
    }
    ts_status told = ts_study_write_messages(study, false, terminal_columns(STDERR_FILENO, 0),
                                             &(ts_sink){to_stream, stderr});
    if (json && told != TS_NO_MEMORY)
        told = ts_study_write_messages(study, true, 0, &(ts_sink){to_stream, stdout});
    if (told != TS_NO_MEMORY)
        return EXIT_NOT_UNDERSTOOD;
    fprintf(stderr, "towershaft: out of memory; what was not understood could not be said\n");
    return EXIT_FAULT;
}

const char *file_ending(const char *path)
{
    if (path == NULL)
        return NULL;
    const char *slash = strrchr(path, '/');
    const char *dot   = strrchr(slash != NULL ? slash : path, '.');
    return dot != NULL && dot[1] != '\0' ? dot + 1 : NULL;
}
