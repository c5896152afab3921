/* With which files does one begin, and what does the notation allow? */
#include "towershaft/starting_file.h"

#include "base/buffer.h"
#include "model/edit.h"
#include "study/study.h"

#include <string.h>

typedef struct embedded_file {
    const char          *name, *says;
    const unsigned char *bytes;
    size_t               length;
} embedded_file;

#include "starting_files.inc"

/* In the order in which a newcomer should meet them. */
static const char *const names[] = {"trainer", "bizjet", "medium", "large"};

const char *ts_starting_file_name(size_t index)
{
    return index < sizeof names / sizeof names[0] ? names[index] : NULL;
}

/* "trainer" stands in trainer.yaml. */
static const embedded_file *starting_file(const char *like)
{
    for (size_t i = 0; i < sizeof embedded_files / sizeof embedded_files[0]; i++) {
        const size_t length = strlen(like);
        if (strncmp(embedded_files[i].name, like, length) == 0 &&
            strcmp(embedded_files[i].name + length, ".yaml") == 0)
            return &embedded_files[i];
    }
    return NULL;
}

ts_status ts_starting_file_write(const char *like, const char *title, const ts_sink *sink)
{
    const embedded_file *from = starting_file(like);
    if (from == NULL)
        return TS_NOT_UNDERSTOOD;
    ts_study *study  = NULL;
    ts_status status = ts_study_open(NULL, &study);
    if (status == TS_OK)
        status = ts_study_set_bytes(study, from->name, (const char *)from->bytes, from->length,
                                    "title", title, sink);
    ts_study_close(study);
    return status;
}
