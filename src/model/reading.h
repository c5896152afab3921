/* model/reading.h: what the parts of the reader share while one file is read. */
#ifndef TS_MODEL_READING_H
#define TS_MODEL_READING_H

#include "base/arena.h"
#include "base/diagnostic.h"
#include "model/drive.h"
#include "model/field.h"
#include "model/name_index.h"
#include "model/rate_file.h"
#include "model/source.h"

#include <string.h>

#define TS_BOX_SHAFTS_MOST 10000 /* in the whole file */

/* The register of defaults while it grows. */
typedef struct ts_register {
    ts_assumption *items;
    size_t         count, room;
} ts_register;

typedef struct ts_reading {
    ts_source          *source;
    ts_arena           *arena;
    ts_diagnostics     *list;
    const ts_table_set *tables;             /* of the kind of file that is read */
    ts_register         assumed[TS_APARTS]; /* [ts_apart] */
    ts_apart            apart;              /* to which of them what is read just now goes */
    bool                no_memory;

    /* Of a drive file alone. */
    ts_drive     *drive;
    ts_name_index conditions;
    ts_name_index spools;
    ts_name_index accessories;
    bool          from_front; /* the file's sight */
    size_t        box_shafts; /* met so far */
} ts_reading;

/* ---- members, by the offsets of a table -------------------------------------------------------
 */

static inline void *ts_member(void *record, size_t offset)
{
    return (char *)record + offset;
}

/* Pointers of every type are kept through memcpy, for a void * may not alias them. */
static inline void ts_set_pointer(void *to, void *pointer)
{
    memcpy(to, &pointer, sizeof pointer);
}

static inline void *ts_get_pointer(const void *from)
{
    void *pointer;
    memcpy(&pointer, from, sizeof pointer);
    return pointer;
}

/* ---- messages (reading_complain.c) ------------------------------------------------------------
 */

typedef struct ts_fault {
    const char *code;
    ts_node     node;
    bool        at_key;   /* the message points at the key, not at the value */
    size_t      at;       /* bytes into a scalar where it is wrong */
    size_t      length;   /* bytes that are wrong; 0: all of it */
    const char *expected; /* NULL when nothing can be said */
    const char *nearest;
} ts_fault;

void ts_complain(ts_reading *reading, const ts_fault *fault, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* As much of a text as a message quotes. */
ts_text ts_quoted(ts_text text);

/* So many messages were made that no further one is kept: no need to word it well. */
bool ts_is_spent(const ts_reading *reading);

/* "a length above 0 mm and up to 5000 mm, such as 305 mm", in the arena; NULL without
 * memory, and when no further message is kept. */
const char *ts_field_expected(ts_reading *reading, const ts_field *field);

/* The nearest of the names, or NULL; very long lists are not searched. */
const char *ts_nearest_name(const ts_reading *reading, ts_text word, const ts_name_index *names);

/* Returns the field whose key was probably meant, or NULL. */
const ts_field *ts_complain_unknown_key(ts_reading *reading, const ts_record_table *table,
                                        ts_node node);

/* ---- one value (scalar_read.c, quantity_read.c) ---------------------------------------------- */

/* A field, where its value goes, and the record that it belongs to. */
typedef struct ts_target {
    const ts_field *field;
    void           *to;
    ts_node         record;
} ts_target;

/* Reads the value at `node` into target->to.  Errors become messages and leave it absent. */
void ts_read_scalar(ts_reading *reading, const ts_target *target, ts_node node);
/* The same for the text of a default, which is sound; it stands as assumed. */
void ts_read_preset(ts_reading *reading, const ts_target *target, const char *text);
/* Absent: NaN and the like, at the record. */
void ts_set_absent(const ts_target *target);

/* The text of a scalar, in short or long form, with its own node in *value; false with a message
 * when there is none.  An empty text is an error as well. */
bool ts_scalar_text(ts_reading *reading, const ts_field *field, ts_node node, ts_node *value,
                    ts_text *text);

/* The forms of quantity_read.c: true when `text` could be read. */
typedef struct ts_written {
    ts_text     text;
    ts_node     node; /* of the value; of the record for a default */
    ts_node     at;   /* of the scalar that messages point to */
    ts_standing standing;
} ts_written;

bool ts_read_measure(ts_reading *reading, const ts_target *target, const ts_written *written);
bool ts_read_clock(ts_reading *reading, const ts_target *target, const ts_written *written);
bool ts_read_span(ts_reading *reading, const ts_target *target, const ts_written *written);
bool ts_read_overload(ts_reading *reading, const ts_target *target, const ts_written *written);

/* Complains of a name that cannot stand in an address. */
void ts_judge_name(ts_reading *reading, ts_node node);

/* ---- records, lists and values by condition (record_read.c, condition_read.c) ---------------- */

/* The node has another form than its field: a scalar where a record is due ... */
void ts_complain_form(ts_reading *reading, const ts_field *field, ts_node node, const char *what);

/* Reads the mapping at `node` into `record` by its table. */
void ts_read_record(ts_reading *reading, const ts_record_table *table, ts_node node, void *record);
/* Reads the value of a list, of records by name, or of values by condition. */
void ts_read_list(ts_reading *reading, const ts_field *field, ts_node node, void *record);
void ts_read_named(ts_reading *reading, const ts_field *field, ts_node node, void *record);
void ts_read_by_condition(ts_reading *reading, const ts_target *target, ts_node node);
bool ts_read_spool_speed(ts_reading *reading, const ts_field *field, ts_node node, void *record);
/* Values by condition or spool, all of them absent. */
void ts_set_all_absent(ts_reading *reading, const ts_target *target);

/* Enters a default in the register; `key` may be a path below the record. */
void ts_assume(ts_reading *reading, ts_node record, const char *key, ts_preset preset);

/* ---- the whole rate file (rate_judge.c) -------------------------------------------------------
 */

/* Materials that the catalogue does not know. */
void ts_judge_rate(ts_reading *reading, const ts_rate_file *file);

/* ---- the whole drive (drive_judge.c, drive_complete.c) --------------------------------------- */

/* What no record sees by itself: spools without speeds, starters that drive nothing, ... */
void ts_judge_drive(ts_reading *reading);
/* Accessories and spools that the freedom to arrange names (arrange_judge.c). */
void ts_judge_arrange(ts_reading *reading);
/* Which spool is cranked, and power in conditions that are not named. */
void ts_complete_drive(ts_reading *reading);
/* The speeds of a start; part of the former. */
void ts_complete_start(ts_reading *reading);

#endif
