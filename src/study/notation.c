/* What does the program know of its own notation, and of its answers? */
#include "towershaft/starting_file.h"

#include "base/buffer.h"
#include "model/schema.h"

#include <string.h>

/* Printed from the field tables that the reader runs from. */
static const struct {
    const char *name, *says;
    void (*write)(ts_buffer *out);
} printed[] = {
    {"drive-file.md", "The manual of the drive file", ts_schema_write_manual},
    {"drive.schema.json", "JSON Schema of the drive file", ts_schema_write_json},
    {"drive.d.ts", "TypeScript types of the drive file", ts_schema_write_types},
    {"rate-file.md", "The manual of the rate file", ts_schema_write_rate_manual},
    {"rate-file.schema.json", "JSON Schema of the rate file", ts_schema_write_rate_json},
    {"study-file.md", "The manual of the study file", ts_schema_write_sampling_manual},
    {"study-file.schema.json", "JSON Schema of the study file", ts_schema_write_sampling_json},
};
#define PRINTED (sizeof printed / sizeof printed[0])

/* The schemas of the answers, docs/schema/. */
typedef struct embedded_file {
    const char          *name, *says;
    const unsigned char *bytes;
    size_t               length;
} embedded_file;

#include "answer_schemas.inc"

#define EMBEDDED (sizeof embedded_files / sizeof embedded_files[0])

const char *ts_notation_name(size_t index)
{
    if (index < PRINTED)
        return printed[index].name;
    return index < PRINTED + EMBEDDED ? embedded_files[index - PRINTED].name : NULL;
}

const char *ts_notation_says(size_t index)
{
    if (index < PRINTED)
        return printed[index].says;
    return index < PRINTED + EMBEDDED ? embedded_files[index - PRINTED].says : NULL;
}

static ts_status write_printed(size_t index, const ts_sink *sink)
{
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    printed[index].write(&out);
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

ts_status ts_notation_write(const char *name, const ts_sink *sink)
{
    for (size_t i = 0; i < PRINTED; i++)
        if (strcmp(printed[i].name, name) == 0)
            return write_printed(i, sink);
    for (size_t i = 0; i < EMBEDDED; i++)
        if (strcmp(embedded_files[i].name, name) == 0)
            return sink->write(sink->context, (const char *)embedded_files[i].bytes,
                               embedded_files[i].length) == 0
                       ? TS_OK
                       : TS_NO_OUTPUT;
    return TS_NOT_UNDERSTOOD;
}
