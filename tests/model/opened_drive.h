/* model/opened_drive.h: a file read into a model, for tests; everything goes with one close. */
#ifndef TS_MODEL_OPENED_DRIVE_H
#define TS_MODEL_OPENED_DRIVE_H

#include "model/reader.h"
#include "model/train.h"

typedef struct opened_drive {
    ts_arena       *arena;
    ts_text         bytes;
    ts_diagnostics *list;
    ts_source       source;
    ts_drive        drive;
    ts_status       status;
} opened_drive;

#define SAMPLE "tests/model/sample.yaml"

/* Reads bytes, which are copied. */
void open_bytes(opened_drive *opened, ts_text bytes);
/* tests/model/sample.yaml; it must be sound. */
void open_sample(opened_drive *opened);
/* The sample with the first `old` in it replaced by `new`; it must contain `old`. */
void open_variant(opened_drive *opened, const char *old, const char *new);
/* The sample with one line added at its end. */
void open_extended(opened_drive *opened, const char *line);
void close_drive(opened_drive *opened);

/* The first message with this code; the test fails without one, and says what there was. */
const ts_diagnostic *message_of(const opened_drive *opened, const char *code);

/* The node of an address; the test fails when there is none. */
ts_node node_at(const opened_drive *opened, const char *address);

#endif
