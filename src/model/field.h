/* model/field.h: what may stand in a drive file, one table a record.
 *
 * The generic reader, the messages, `set`, completions, the manual, the JSON Schema and the
 * TypeScript types all run from these tables.  A new field is one member of a struct in
 * model/drive.h and one entry in the table of that struct.
 */
#ifndef TS_MODEL_FIELD_H
#define TS_MODEL_FIELD_H

#include "quantity/quantity.h"

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

/* How a value is written, and which type of model/value.h or model/drive.h takes it. */
typedef enum ts_form {
    TS_FORM_MEASURE,          /* 34 N.m                   ts_measure */
    TS_FORM_CLOCK,            /* "6:30" or 195 deg        ts_measure, rad clockwise from behind */
    TS_FORM_SPAN,             /* 6600..7300 rpm           ts_span */
    TS_FORM_TALLY,            /* 52                       ts_tally */
    TS_FORM_TEETH,            /* [43, 46]                 ts_tally[2] */
    TS_FORM_TALLY_SPAN,       /* 17..90 or 43             ts_tally_span */
    TS_FORM_TALLY_SPANS,      /* one of these, or a list  ts_tally_spans */
    TS_FORM_MEASURES,         /* 2 mm, or a list          ts_measures */
    TS_FORM_PICK,             /* one word of `choices`    ts_pick */
    TS_FORM_WORD,             /* free text                ts_word */
    TS_FORM_DATE,             /* 2026-06-30               ts_date */
    TS_FORM_OVERLOAD,         /* 34 N.m for 5 s           ts_overload */
    TS_FORM_PAD,              /* an accessory, or a word  ts_pad_end */
    TS_FORM_RECORD,           /* {...}                      the struct itself */
    TS_FORM_LIST,             /* [{...}, ...]                 pointer and count */
    TS_FORM_ONE_OR_LIST,      /* {...} or [{...}, ...]          pointer and count */
    TS_FORM_NAMED,            /* {name: {...}, ...}           pointer and count; name, node first */
    TS_FORM_TAPPED,           /* {spool: {...}, ...}          pointer and count of ts_spool_drive */
    TS_FORM_SPOOL_SPEEDS,     /* every key of the record that is a spool: ts_measure * */
    TS_FORM_BY_CONDITION,     /* {condition: 13 kW, ...}    ts_measure *, one a condition */
    TS_FORM_SPAN_BY_CONDITION /* {condition: 1..2 rpm, always: ...}  ts_span * */
} ts_form;

typedef enum ts_need {
    TS_OPTIONAL,
    TS_STATED,  /* must stand in the file, and may be `unknown` */
    TS_REQUIRED /* must stand in the file with a value */
} ts_need;

/* Least and greatest value in SI; `unit` is what messages and the manual show them in ("1": a plain
 * number), and NULL where there is no range. */
typedef struct ts_range {
    double      least;
    double      most;
    bool        above; /* the least value itself is outside */
    const char *unit;
} ts_range;

#define TS_FROM(least, most, unit)                                                                 \
    {                                                                                              \
        (least), (most), false, (unit)                                                             \
    }
#define TS_ABOVE(least, most, unit)                                                                \
    {                                                                                              \
        (least), (most), true, (unit)                                                              \
    }

/* In which register the defaults of a record stand: the one that every answer shows, or that of the
 * commands which read it. */
typedef enum ts_apart {
    TS_APART_NOT,
    TS_APART_ARRANGE,
    TS_APART_START,
    TS_APART_SEIZE,
    TS_APART_JOLT,
    TS_APARTS
} ts_apart;

/* A default, as one would write it in the file, and why, with its source. */
typedef struct ts_preset {
    const char *value; /* NULL: none */
    const char *reason;
} ts_preset;

typedef struct ts_record_table ts_record_table;

typedef struct ts_field {
    const char            *key; /* as in the file; for ..._SPEEDS a word that describes the keys */
    ts_form                form;
    ts_need                need;
    ts_kind                kind;
    bool                   seen;         /* clock angle or sense as seen in the file's `sight` */
    bool                   closed;       /* a span that must have both of its ends */
    bool                   known;        /* `unknown` will not do, though the key may be left out */
    size_t                 offset;       /* of the value in the struct */
    size_t                 count_offset; /* lists: of their count */
    size_t                 most;         /* lists: how many at most */
    const ts_record_table *record;       /* of records and lists */
    const char *const     *choices;      /* NULL-terminated; the index is the value */
    ts_range               range;
    ts_preset              preset;
    /* Where the default depends on the record: given the record with all earlier fields filled in,
     * and called only when the key is absent.  `preset` then tells the manual what it does. */
    ts_preset (*preset_of)(const void *record);
    ts_apart apart;      /* a record whose defaults go to a register of their own, for only one
                            command reads it */
    const char *says;    /* a sentence for the manual */
    const char *example; /* of a good value */
} ts_field;

struct ts_record_table {
    const char     *id;   /* "tower_shaft", for schemas */
    const char     *name; /* "a tower shaft" */
    const char     *says;
    const ts_field *fields; /* in the order in which the manual shows them */
    size_t          field_count;
    size_t          size; /* of the struct */
    size_t          node_offset;
    /* What the fields cannot see one by one: returns NULL when the record is sound, else a
     * sentence, and in *field the key that it is about and in *expected what would be right. */
    const char *(*judge)(const void *record, const char **key, const char **expected);
};

/* Entries of the tables: where the member stands. */
#define TS_AT(type, member) .offset = offsetof(type, member)
#define TS_LIST_AT(type, member, len)                                                              \
    .offset = offsetof(type, member), .count_offset = offsetof(type, len)
#define TS_TABLE(type, table)                                                                      \
    .fields = (table), .field_count = sizeof(table) / sizeof((table)[0]), .size = sizeof(type),    \
    .node_offset = offsetof(type, node)

extern const ts_record_table ts_table_drive; /* the whole file */
extern const ts_record_table ts_table_condition;
extern const ts_record_table ts_table_spool;
extern const ts_record_table ts_table_accessory;
extern const ts_record_table ts_table_torque_limits;
extern const ts_record_table ts_table_body;
extern const ts_record_table ts_table_neck;
extern const ts_record_table ts_table_pumps;
extern const ts_record_table ts_table_sump;
extern const ts_record_table ts_table_scavenge;
extern const ts_record_table ts_table_attitude;
extern const ts_record_table ts_table_separator;
extern const ts_record_table ts_table_engine;
extern const ts_record_table ts_table_cowl_point;
extern const ts_record_table ts_table_keep_out;
extern const ts_record_table ts_table_spool_drive;
extern const ts_record_table ts_table_take_off;
extern const ts_record_table ts_table_bevel_gears; /* of a take-off */
extern const ts_record_table ts_table_tower_shaft;
extern const ts_record_table ts_table_box;
extern const ts_record_table ts_table_arc;
extern const ts_record_table ts_table_tooth_system;
extern const ts_record_table ts_table_temperatures;
extern const ts_record_table ts_table_box_input;
extern const ts_record_table ts_table_box_shaft;
extern const ts_record_table ts_table_step_gear;
extern const ts_record_table ts_table_bearing_seat;
extern const ts_record_table ts_table_shaft_section;
extern const ts_record_table ts_table_box_seats;  /* ts_two_seats: front, rear     */
extern const ts_record_table ts_table_stub_seats; /* ts_two_seats: gear, away      */
extern const ts_record_table ts_table_tower_seats;
extern const ts_record_table ts_table_oil;
extern const ts_record_table ts_table_method;
extern const ts_record_table ts_table_weighing;
extern const ts_record_table ts_table_mount;
extern const ts_record_table ts_table_limits;
extern const ts_record_table ts_table_torque_point;
extern const ts_record_table ts_table_start;
extern const ts_record_table ts_table_seizure;
extern const ts_record_table ts_table_jolt;
extern const ts_record_table ts_table_whirl;
extern const ts_record_table ts_table_arrange;
extern const ts_record_table ts_table_arrange_box;
extern const ts_record_table ts_table_arrange_bevels;
extern const ts_record_table ts_table_arrange_tower;
extern const ts_record_table ts_table_arrange_accessory;
extern const ts_record_table ts_table_arrange_mass;
extern const ts_record_table ts_table_arrange_weights;
extern const ts_record_table ts_table_assumption_line;
extern const ts_record_table ts_table_waiver;

/* Every table of the drive file once, in the order of the manual. */
extern const char *const            ts_cleannesses[];  /* in the order of ts_cleanness */
extern const char *const            ts_lubrications[]; /* in the order of ts_lubrication */
extern const char *const            ts_answers_yes[];  /* in the order of ts_answer_yes */
extern const ts_record_table *const ts_tables[];
extern const size_t                 ts_table_count;

extern const ts_record_table ts_table_rate; /* a whole rate file: model/rate_file.h */
extern const ts_record_table ts_table_rate_pair;
extern const ts_record_table ts_table_rate_inverse; /* of a gear pair */
extern const ts_record_table ts_table_rate_bin;     /* of its spectrum */
extern const ts_record_table ts_table_rate_bevels;
extern const ts_record_table ts_table_rate_tooth;
extern const ts_record_table ts_table_rate_tolerance;
extern const ts_record_table ts_table_rate_bearing;
extern const ts_record_table ts_table_rate_neck;
extern const ts_record_table ts_table_rate_spline;
extern const ts_record_table ts_table_rate_steel;

extern const ts_record_table ts_table_sampling; /* a whole study file: model/sampling_file.h */
extern const ts_record_table ts_table_sampling_vary;
extern const ts_record_table ts_table_sampling_tie;
extern const ts_record_table ts_table_sampling_watch;

/* The tables of one kind of file, the root first. */
typedef struct ts_table_set {
    const ts_record_table *const *tables;
    size_t                        count;
} ts_table_set;
extern const ts_table_set ts_drive_tables;
extern const ts_table_set ts_rate_tables;
extern const ts_table_set ts_sampling_tables;

#define TS_FIELDS_MOST 192 /* more than any table has */

/* The long form of any scalar: value, source, date, confidence. */
extern const char *const ts_long_form_keys[4];
extern const char *const ts_confidences[]; /* low, medium, high, NULL */
/* Words that name no condition, spool or accessory; NULL-terminated. */
extern const char *const ts_reserved_words[];

/* Is `unknown` a value of this field? */
bool ts_field_may_be_unknown(const ts_field *field);

const ts_field *ts_field_named(const ts_record_table *table, ts_text key); /* NULL: no such key */
/* A record of the set that has the key although `table` has not, or NULL. */
const ts_record_table *ts_table_with_key(const ts_table_set *set, ts_text key,
                                         const ts_record_table *table);

#endif
