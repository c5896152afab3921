/* What does the program know of its own notation? */
#include "towershaft/starting_file.h"

#include <string.h>

typedef struct embedded_file {
    const char          *name, *says;
    const unsigned char *bytes;
    size_t               length;
} embedded_file;

#include "notation_files.inc"

#define COUNT (sizeof embedded_files / sizeof embedded_files[0])

const char *ts_notation_name(size_t index)
{
    return index < COUNT ? embedded_files[index].name : NULL;
}

const char *ts_notation_says(size_t index)
{
    return index < COUNT ? embedded_files[index].says : NULL;
}

ts_status ts_notation_write(const char *name, const ts_sink *sink)
{
    for (size_t i = 0; i < COUNT; i++)
        if (strcmp(embedded_files[i].name, name) == 0)
            return sink->write(sink->context, (const char *)embedded_files[i].bytes,
                               embedded_files[i].length) == 0
                       ? TS_OK
                       : TS_NO_OUTPUT;
    return TS_NOT_UNDERSTOOD;
}
