/* bank/bank_run.h: what the runner knows of a case, and how it judges it. */
#ifndef TS_BANK_RUN_H
#define TS_BANK_RUN_H

#include "bank/bank_case.h"

#include <jansson.h>
#include <setjmp.h>
#include <stdio.h>

/* How a binding read an input, and so how the runner nudges it. */
typedef enum ts_reading {
    TS_READ_NOT,
    TS_READ_REAL,  /* nudged by 1 %, or by 0.01 of its unit when it is 0 */
    TS_READ_WHOLE, /* nudged by +1                                       */
    TS_READ_SIGN   /* turned round                                       */
} ts_reading;

struct ts_case {
    const json_t *printed; /* inputs as they stand in the file                        */
    const json_t *inputs;  /* the same, perhaps with one of them nudged               */
    const json_t *expected;
    json_t       *computed; /* name -> number, list, or null where it was not a number */
    json_t       *readings; /* input -> ts_reading                                     */
    json_t       *dissents; /* name -> why the program differs from the case           */
    bool          no_memory;
    char          trouble[200]; /* empty, or why the inputs cannot be computed with     */
    jmp_buf       spoiled;      /* where ts_case_spoil goes                             */
    char          label[64];    /* room of ts_case_printed_at                           */
};

typedef enum ts_bank_verdict {
    TS_BANK_AGREES,
    TS_BANK_DIFFERS,
    TS_BANK_KNOWN, /* differs, as the bank's own recomputation does or for a reason of ours */
    TS_BANK_NOT_COVERED,
    TS_BANK_VERDICTS
} ts_bank_verdict;

typedef struct ts_bank_count {
    size_t published[TS_BANK_VERDICTS];
    size_t memory[TS_BANK_VERDICTS];
} ts_bank_count;

/* Runs one file and prints a line a case to `out`.  Returns false, with a message on `out_err`,
 * when the file cannot be read as a bank. */
bool ts_bank_run_file(const char *path, FILE *out, FILE *out_err, ts_bank_count *count);

/* One case of the file, whose shape was checked. */
ts_bank_verdict ts_bank_run_case(const json_t *entry, FILE *out);

const ts_binding *ts_binding_named(const char *binds); /* NULL: nothing is bound to it  */
const char       *ts_binding_twice(void);              /* a name bound twice, or NULL   */

/* Unit of the bank's spelling as the program spells it, and its kind; NULL when the whitelist has
 * no such unit of that kind. */
const ts_unit *ts_bank_unit(const char *spelling, ts_kind kind);

#endif
