/* support/read_file.c: a whole file, for tests; a test without its file fails. */
#include "support/read_file.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

#include <cmocka.h>

static ts_text read_all(FILE *file)
{
    size_t room   = 1 << 16;
    size_t length = 0;
    char  *bytes  = malloc(room);
    while (bytes != NULL) {
        length += fread(bytes + length, 1, room - length - 1, file);
        if (length < room - 1)
            break;
        room *= 2;
        char *larger = realloc(bytes, room);
        if (larger == NULL)
            free(bytes);
        bytes = larger;
    }
    if (bytes != NULL)
        bytes[length] = '\0';
    return (ts_text){bytes, length};
}

ts_text read_file(const char *path)
{
    FILE *file = fopen(path, "rb");
    if (file == NULL)
        fail_msg("%s cannot be opened", path);
    const ts_text bytes = read_all(file);
    const int     wrong = ferror(file);
    fclose(file);
    if (bytes.at == NULL || wrong)
        fail_msg("%s cannot be read", path);
    return bytes;
}

void free_file(ts_text bytes)
{
    free((void *)(uintptr_t)bytes.at); /* the cast drops const: read_file gave it away */
}
