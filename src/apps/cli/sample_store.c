/* Where are finished samples kept, and which are missing? */
#include "apps/cli/sample_store.h"

#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define TEXT_MOST 65536 /* of one statement: 2 * 64 + rules columns of some 10 bytes */

struct sample_store {
    sqlite3           *base;
    sqlite3_stmt      *insert, *insert_finding;
    const char        *path;
    const ts_sampling *sampling;
    size_t             inputs, columns;
    unsigned char     *there; /* a bit a sample */
    uint64_t           count, due;
    uint64_t          *ids; /* of sample_store_found */
    uint64_t          *findings, *hits;
    size_t             finding_count, finding_room;
};

static bool fail(const sample_store *store, const char *doing)
{
    fprintf(stderr, "towershaft study: %s: %s: %s\n",
            store->path != NULL ? store->path : "samples in memory", doing,
            store->base != NULL ? sqlite3_errmsg(store->base) : "out of memory");
    return false;
}

static bool run(const sample_store *store, const char *statement)
{
    return sqlite3_exec(store->base, statement, NULL, NULL, NULL) == SQLITE_OK ||
           fail(store, "cannot be written");
}

static sqlite3_stmt *prepare(const sample_store *store, const char *text)
{
    sqlite3_stmt *made = NULL;

    if (sqlite3_prepare_v2(store->base, text, -1, &made, NULL) != SQLITE_OK)
        fail(store, "cannot be used");
    return made;
}

static bool bind_text(sqlite3_stmt *statement, int at, const char *text)
{
    return (text != NULL ? sqlite3_bind_text(statement, at, text, -1, SQLITE_TRANSIENT)
                         : sqlite3_bind_null(statement, at)) == SQLITE_OK;
}

/* ---- a new file ------------------------------------------------------------------------------ */

/* "in_3" or "out_1" of a column. */
static void column_name(const sample_store *store, size_t column, char name[24])
{
    if (column < store->inputs)
        snprintf(name, 24, "in_%zu", column + 1);
    else
        snprintf(name, 24, "out_%zu", column - store->inputs + 1);
}

/* The names of all columns, with `behind` each of them. */
static void add_columns(const sample_store *store, char *text, const char *behind)
{
    for (size_t k = 0; k < store->columns; k++) {
        char name[24];
        column_name(store, k, name);
        strcat(strcat(text, name), behind);
    }
}

static bool make_tables(const sample_store *store)
{
    char *text = malloc(TEXT_MOST);
    bool  made = false;

    if (text == NULL)
        return fail(store, "cannot be made");
    strcpy(text, "CREATE TABLE about (key TEXT PRIMARY KEY, value TEXT);"
                 "CREATE TABLE input (id INTEGER PRIMARY KEY, address TEXT, unit TEXT);"
                 "CREATE TABLE output (id INTEGER PRIMARY KEY, name TEXT, unit TEXT);"
                 "CREATE TABLE finding (id INTEGER PRIMARY KEY, rule TEXT, level TEXT, "
                 "address TEXT);"
                 "CREATE TABLE sample (id INTEGER PRIMARY KEY, ");
    add_columns(store, text, " REAL, ");
    strcat(text, "state TEXT NOT NULL, findings TEXT NOT NULL, says TEXT);");
    made = run(store, text);
    free(text);
    return made;
}

static bool put(const sample_store *store, sqlite3_stmt *into, sqlite3_int64 number,
                const char *one, const char *two)
{
    bool done = number > 0 ? sqlite3_bind_int64(into, 1, number) == SQLITE_OK : true;
    done      = done && bind_text(into, number > 0 ? 2 : 1, one);
    done      = done && bind_text(into, number > 0 ? 3 : 2, two);
    done      = done && sqlite3_step(into) == SQLITE_DONE;
    sqlite3_reset(into);
    return done || fail(store, "cannot be written");
}

static bool fill_about(const sample_store *store)
{
    sqlite3_stmt *about  = prepare(store, "INSERT INTO about VALUES (?, ?)");
    sqlite3_stmt *input  = prepare(store, "INSERT INTO input VALUES (?, ?, ?)");
    sqlite3_stmt *output = prepare(store, "INSERT INTO output VALUES (?, ?, ?)");
    bool          done   = about != NULL && input != NULL && output != NULL;

    for (size_t i = 0; done; i++) {
        const ts_sampling_fact fact = ts_sampling_fact_at(store->sampling, i);
        if (fact.key == NULL)
            break;
        done = put(store, about, 0, fact.key, fact.value);
    }
    for (size_t k = 0; done && k < store->columns; k++) {
        const ts_sampling_column column = ts_sampling_column_at(store->sampling, k);
        const size_t             number = column.input ? k : k - store->inputs;
        done = put(store, column.input ? input : output, (sqlite3_int64)number + 1, column.name,
                   column.unit);
    }
    sqlite3_finalize(about);
    sqlite3_finalize(input);
    sqlite3_finalize(output);
    return done;
}

static bool make_new(const sample_store *store)
{
    return run(store, "BEGIN IMMEDIATE") && make_tables(store) && fill_about(store) &&
           run(store, "COMMIT");
}

/* ---- a file that is there -------------------------------------------------------------------- */

/* One text; false without a row or when it is longer than that. */
static bool one_text(const sample_store *store, const char *question, char *answer, size_t room)
{
    sqlite3_stmt *asked = NULL;
    bool          found = false;

    if (sqlite3_prepare_v2(store->base, question, -1, &asked, NULL) == SQLITE_OK &&
        sqlite3_step(asked) == SQLITE_ROW) {
        const unsigned char *text = sqlite3_column_text(asked, 0);
        found = text != NULL && snprintf(answer, room, "%s", (const char *)text) < (int)room;
    }
    sqlite3_finalize(asked);
    return found;
}

static bool is_this_study(const sample_store *store, int *exit_code)
{
    char identity[80];

    *exit_code = EXIT_NOT_UNDERSTOOD;
    if (!one_text(store, "SELECT value FROM about WHERE key = 'identity'", identity,
                  sizeof identity)) {
        fprintf(stderr, "towershaft study: %s: the file holds something else than samples\n",
                store->path);
        return false;
    }
    if (strcmp(identity, ts_sampling_identity(store->sampling)) == 0)
        return true;
    fprintf(stderr,
            "towershaft study: %s: the file holds the samples of another study, drive, version or "
            "day; expected a new name, or the same files and --today as before\n",
            store->path);
    return false;
}

static bool mark_there(sample_store *store)
{
    sqlite3_stmt *rows = prepare(store, "SELECT id FROM sample");
    int           step = SQLITE_ERROR;

    while (rows != NULL && (step = sqlite3_step(rows)) == SQLITE_ROW) {
        const uint64_t id = (uint64_t)sqlite3_column_int64(rows, 0);
        if (id >= store->due)
            continue;
        store->there[id / 8] |= (unsigned char)(1u << id % 8);
        store->count++;
    }
    sqlite3_finalize(rows);
    return step == SQLITE_DONE || fail(store, "cannot be read");
}

static bool prepare_inserts(sample_store *store)
{
    char *text = malloc(TEXT_MOST);

    if (text == NULL)
        return fail(store, "cannot be used");
    strcpy(text, "INSERT INTO sample VALUES (?, ");
    for (size_t k = 0; k < store->columns; k++)
        strcat(text, "?, ");
    strcat(text, "?, ?, ?)");
    store->insert = prepare(store, text);
    free(text);
    store->insert_finding = prepare(store, "INSERT OR IGNORE INTO finding VALUES (?, ?, ?, ?)");
    return store->insert != NULL && store->insert_finding != NULL;
}

/* Is there nothing in it yet?  Asked with the file locked, so that of two that begin at once one
 * waits for the other. */
static bool open_base(sample_store *store, int *exit_code)
{
    const char *path = store->path != NULL ? store->path : ":memory:";
    char        count[24];

    if (sqlite3_open_v2(path, &store->base, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL) !=
        SQLITE_OK)
        return fail(store, "cannot be opened");
    sqlite3_busy_timeout(store->base, 5000);
    if (!run(store, "PRAGMA synchronous = FULL; PRAGMA locking_mode = EXCLUSIVE") ||
        !run(store, "BEGIN IMMEDIATE; COMMIT"))
        return false;
    if (!one_text(store, "SELECT count(*) FROM sqlite_master", count, sizeof count))
        return fail(store, "cannot be read");
    if (strcmp(count, "0") == 0)
        return make_new(store);
    return is_this_study(store, exit_code);
}

sample_store *sample_store_open(const char *path, const ts_sampling *sampling, int *exit_code)
{
    sample_store *store = calloc(1, sizeof *store);

    *exit_code = EXIT_FAULT;
    if (store == NULL)
        return NULL;
    store->path     = path;
    store->sampling = sampling;
    store->due      = ts_sampling_count(sampling);
    store->columns  = ts_sampling_columns(sampling);
    while (store->inputs < store->columns && ts_sampling_column_at(sampling, store->inputs).input)
        store->inputs++;
    store->there = calloc(sample_map_length(store->due), 1);
    if (store->there != NULL && open_base(store, exit_code) && mark_there(store) &&
        prepare_inserts(store))
        return store;
    if (store->there == NULL)
        fail(store, "cannot be used");
    sample_store_close(store);
    return NULL;
}

void sample_store_close(sample_store *store)
{
    if (store == NULL)
        return;
    sqlite3_finalize(store->insert);
    sqlite3_finalize(store->insert_finding);
    sqlite3_close(store->base);
    free(store->there);
    free(store->ids);
    free(store->findings);
    free(store->hits);
    free(store);
}

uint64_t sample_store_count(const sample_store *store)
{
    return store->count;
}

const unsigned char *sample_store_map(const sample_store *store)
{
    return store->there;
}

size_t sample_map_length(uint64_t due)
{
    return (size_t)(due / 8 + 1);
}

/* ---- samples in ------------------------------------------------------------------------------ */

static bool keep_finding(sample_store *store, uint64_t number)
{
    const ts_sampling_finding of = ts_sampling_finding_of(store->sampling, number);
    sqlite3_stmt             *to = store->insert_finding;

    const bool done = sqlite3_bind_int64(to, 1, (sqlite3_int64)number) == SQLITE_OK &&
                      bind_text(to, 2, of.rule) && bind_text(to, 3, of.level) &&
                      bind_text(to, 4, of.address) && sqlite3_step(to) == SQLITE_DONE;
    sqlite3_reset(to);
    return done;
}

/* "1048579 5242891", and each of them in its own table. */
static char *findings_text(sample_store *store, const ts_sampling_row *row)
{
    char  *text = malloc(row->finding_count * 24 + 1);
    size_t at   = 0;

    if (text == NULL)
        return NULL;
    text[0] = '\0';
    for (size_t i = 0; i < row->finding_count; i++) {
        at += (size_t)snprintf(text + at, 24, "%s%llu", i > 0 ? " " : "",
                               (unsigned long long)row->findings[i]);
        if (!keep_finding(store, row->findings[i])) {
            free(text);
            return NULL;
        }
    }
    return text;
}

static bool keep_row(sample_store *store, const ts_sampling_row *row)
{
    sqlite3_stmt *to   = store->insert;
    int           at   = 1;
    char         *text = findings_text(store, row);
    bool done = text != NULL && sqlite3_bind_int64(to, at++, (sqlite3_int64)row->id) == SQLITE_OK;

    for (size_t k = 0; done && k < store->columns; k++) /* a NaN is kept as NULL */
        done = sqlite3_bind_double(to, at++, row->values[k]) == SQLITE_OK;
    done = done && bind_text(to, at, ts_sampling_state_name(row->state)) &&
           bind_text(to, at + 1, text) && bind_text(to, at + 2, row->says) &&
           sqlite3_step(to) == SQLITE_DONE;
    sqlite3_reset(to);
    free(text);
    return done;
}

bool sample_store_keep(sample_store *store, const ts_sampling_row *rows, size_t count)
{
    bool done = run(store, "BEGIN IMMEDIATE");

    for (size_t i = 0; done && i < count; i++)
        done = keep_row(store, &rows[i]) || fail(store, "cannot be written");
    done = done && run(store, "COMMIT");
    for (size_t i = 0; done && i < count; i++) {
        const uint64_t id = rows[i].id;
        store->there[id / 8] |= (unsigned char)(1u << id % 8);
        store->count++;
    }
    if (!done)
        (void)sqlite3_exec(store->base, "ROLLBACK", NULL, NULL, NULL);
    return done;
}

/* ---- samples out ----------------------------------------------------------------------------- */

static bool read_column(void *context, size_t column, double *values)
{
    const sample_store *store = context;
    char                name[24], text[96];
    uint64_t            count = 0;
    int                 step  = SQLITE_ERROR;

    column_name(store, column, name);
    snprintf(text, sizeof text, "SELECT %s FROM sample ORDER BY id", name);
    sqlite3_stmt *rows = prepare(store, text);
    while (rows != NULL && (step = sqlite3_step(rows)) == SQLITE_ROW && count < store->count) {
        const bool there = sqlite3_column_type(rows, 0) != SQLITE_NULL;
        values[count++]  = there ? sqlite3_column_double(rows, 0) : (double)__builtin_nan("");
    }
    sqlite3_finalize(rows);
    return (step == SQLITE_DONE && count == store->count) || fail(store, "cannot be read");
}

/* Counts one finding, in the order of their numbers. */
static bool count_finding(sample_store *store, uint64_t number)
{
    size_t at = store->finding_count;

    while (at > 0 && store->findings[at - 1] > number)
        at--;
    if (at > 0 && store->findings[at - 1] == number) {
        store->hits[at - 1]++;
        return true;
    }
    if (store->finding_count == store->finding_room) {
        const size_t room  = store->finding_room * 2 + 64;
        uint64_t    *wider = realloc(store->findings, room * sizeof *wider);
        store->findings    = wider != NULL ? wider : store->findings;
        uint64_t *more     = wider != NULL ? realloc(store->hits, room * sizeof *more) : NULL;
        store->hits        = more != NULL ? more : store->hits;
        if (wider == NULL || more == NULL)
            return false;
        store->finding_room = room;
    }
    const size_t behind = (store->finding_count++ - at) * sizeof(uint64_t);
    memmove(store->findings + at + 1, store->findings + at, behind);
    memmove(store->hits + at + 1, store->hits + at, behind);
    store->findings[at] = number;
    store->hits[at]     = 1;
    return true;
}

static bool count_findings(sample_store *store, const char *text)
{
    char *rest = NULL;

    for (const char *at = text; at != NULL && *at != '\0'; at = rest) {
        const unsigned long long number = strtoull(at, &rest, 10);
        if (rest == at)
            break;
        if (!count_finding(store, number))
            return false;
    }
    return true;
}

static void count_state(ts_sampling_found *found, const char *state)
{
    for (int s = 0; s < TS_SAMPLE_STATES; s++)
        if (strcmp(ts_sampling_state_name((ts_sampling_state)s), state) == 0)
            found->states[s]++;
}

bool sample_store_found(sample_store *store, ts_sampling_found *found)
{
    sqlite3_stmt *rows  = prepare(store, "SELECT id, state, findings FROM sample ORDER BY id");
    uint64_t      count = 0;
    int           step  = SQLITE_ERROR;

    *found     = (ts_sampling_found){.count = store->count, .context = store};
    store->ids = malloc(((size_t)store->count + 1) * sizeof *store->ids);
    while (rows != NULL && store->ids != NULL && (step = sqlite3_step(rows)) == SQLITE_ROW &&
           count < store->count) {
        const char *state    = (const char *)sqlite3_column_text(rows, 1);
        const char *findings = (const char *)sqlite3_column_text(rows, 2);
        store->ids[count++]  = (uint64_t)sqlite3_column_int64(rows, 0);
        count_state(found, state != NULL ? state : "");
        if (!count_findings(store, findings))
            break;
    }
    sqlite3_finalize(rows);
    if (step != SQLITE_DONE || count != store->count)
        return fail(store, "cannot be read");
    found->ids           = store->ids;
    found->column        = read_column;
    found->findings      = store->findings;
    found->hits          = store->hits;
    found->finding_count = store->finding_count;
    return true;
}
