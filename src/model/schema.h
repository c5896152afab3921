/* model/schema.h: the notation of the drive file, for editors, for programs and for people.
 *
 * All three run from the field tables (model/field.h) and are committed as docs/schema/ and
 * docs/drive-file.md; a test compares.
 */
#ifndef TS_MODEL_SCHEMA_H
#define TS_MODEL_SCHEMA_H

#include "base/buffer.h"
#include "model/field.h"

/* JSON Schema, draft 2020-12: docs/schema/drive.schema.json.  It knows forms, units, choices and
 * keys; ranges and cross-references are the reader's. */
void ts_schema_write_json(ts_buffer *out);

/* The same of the rate file: docs/schema/rate-file.schema.json. */
void ts_schema_write_rate_json(ts_buffer *out);

/* TypeScript types of a file that was loaded as YAML: docs/schema/drive.d.ts. */
void ts_schema_write_types(ts_buffer *out);

/* The manual, Markdown: docs/drive-file.md. */
void ts_schema_write_manual(ts_buffer *out);

/* The manual of the rate file: docs/rate-file.md. */
void ts_schema_write_rate_manual(ts_buffer *out);

/* The same two of the study file: docs/study-file.md, docs/schema/study-file.schema.json. */
void ts_schema_write_sampling_manual(ts_buffer *out);
void ts_schema_write_sampling_json(ts_buffer *out);

/* What could stand below an address, one a line, for completion: the keys of a record, and the
 * choices of a value.  `address` is a path whose names and numbers need not exist: "drive/hp/box"
 * lists arc, bevels, gears ...; unknown paths list nothing. */
void ts_schema_write_completions(ts_text address, ts_buffer *out);

#endif
