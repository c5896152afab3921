/* What becomes of a drive whose values vary? */
#include "apps/cli/named_drive.h"
#include "apps/cli/option_value.h"
#include "apps/cli/picture_wish.h"
#include "apps/cli/sample_store.h"
#include "apps/cli/session.h"
#include "apps/cli/study_team.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define BLOCK_FIRST 4 /* samples on each thread before the first are kept */
#define BLOCK_MOST  512
#define BLOCK_TIME  0.25 /* s; blocks grow until they take so long */

/* ---- the two files --------------------------------------------------------------------------- */

static ts_status take_drive(ts_sampling *sampling, const char *study, const arguments *given,
                            int *exit_code)
{
    ts_study_options options;
    file_bytes       file;
    char            *path = named_drive_path(study, sampling);

    if (path == NULL)
        return TS_NO_MEMORY;
    if (!study_options(given, &options) || !file_read(path, &file, exit_code)) {
        free(path);
        return TS_NO_OUTPUT; /* said already */
    }
    const ts_status status = ts_sampling_take(sampling, path, file.bytes, file.length, &options);
    file_forget(&file);
    free(path);
    return status;
}

/* A study with its drive; NULL with a message and the exit code. */
static ts_sampling *open_sampling(const arguments *given, int *exit_code)
{
    const char  *name     = given->operand[0];
    ts_sampling *sampling = named_drive_study(name, given->value[OPTION_JSON] != NULL, exit_code);

    if (sampling == NULL)
        return NULL;
    *exit_code             = EXIT_NOT_UNDERSTOOD;
    const ts_status status = take_drive(sampling, name, given, exit_code);
    if (status == TS_OK)
        return sampling;
    if (status != TS_NO_OUTPUT)
        *exit_code =
            complain(ts_sampling_messages(sampling), status, given->value[OPTION_JSON] != NULL);
    ts_sampling_close(sampling);
    return NULL;
}

/* ---- samples --------------------------------------------------------------------------------- */

/* Samples are shared out in lots of this many, so that neighbours of a sobol study stay together.
 */
#define LOT 4

typedef struct runner {
    const rank_team   *team;  /* NULL: alone */
    sample_store      *store; /* of rank 0 alone */
    ts_sampling_block *block;
    ts_sampling_row   *rows;
    uint64_t          *ids;
    unsigned char     *there;      /* a bit a sample that was there when it began */
    size_t             room, size; /* samples of the largest block, and of the next */
    size_t             columns;
    uint64_t           due, first;  /* there when it began */
    uint64_t           cursor, met; /* the next sample, and how many were missing before it */
    double             begin, end, told;
    bool               shown, terminal;
} runner;

static int rank_of(const runner *r)
{
    return r->team != NULL ? r->team->rank : 0;
}

/* The next samples that are missing and fall to this rank. */
static size_t next_ids(runner *r)
{
    const uint64_t ranks = r->team != NULL ? (uint64_t)r->team->count : 1;
    size_t         count = 0;

    for (; count < r->size && r->cursor < r->due; r->cursor++) {
        if ((r->there[r->cursor / 8] >> r->cursor % 8 & 1u) != 0)
            continue;
        if (r->met++ / LOT % ranks == (uint64_t)rank_of(r))
            r->ids[count++] = r->cursor;
    }
    return count;
}

static void show(runner *r, bool last)
{
    const double at = clock_now();

    if (!r->shown || (!last && at - r->told < (r->terminal ? 0.1 : 1.0)))
        return;
    const uint64_t done = sample_store_count(r->store);
    const double   rate = (double)(done - r->first) / (at - r->begin + 1e-9);
    r->told             = at;
    fprintf(stderr, "%s%llu of %llu samples, %.0f a second", r->terminal ? "\r\x1b[K" : "",
            (unsigned long long)done, (unsigned long long)r->due, rate);
    if (done < r->due && rate > 0.0)
        fprintf(stderr, ", %.0f s to go", (double)(r->due - done) / rate);
    fputs(r->terminal && !last ? "" : "\n", stderr);
    fflush(stderr);
}

/* At rank 0: keeps what other ranks have sent; *left counts those that are not done.  False with a
 * message. */
static bool keep_sent(runner *r, bool wait, int *left)
{
    ts_sampling_row *rows;
    void            *bytes;
    size_t           length, count;

    while (*left > 0 && r->team->take(wait, &bytes, &length)) {
        const bool sound = study_team_rows(bytes, length, r->columns, &rows, &count);
        const bool kept  = sound && (count == 0 || sample_store_keep(r->store, rows, count));
        *left -= length == 0 ? 1 : 0; /* nothing: this rank is done */
        free(rows);
        free(bytes);
        if (!kept)
            return false;
        show(r, false);
    }
    if (wait && *left > 0)
        (void)complain(NULL, TS_NO_MEMORY, false);
    return !wait || *left == 0;
}

/* Keeps the last block, or sends it to who does. */
static bool keep_block(runner *r, size_t count)
{
    if (rank_of(r) > 0)
        return study_team_send(r->team, r->block, count, r->columns);
    for (size_t i = 0; i < count; i++)
        r->rows[i] = ts_sampling_block_row(r->block, i);
    return sample_store_keep(r->store, r->rows, count);
}

/* Computes all that is missing, or what fits the time; false with a message. */
static bool run_all(runner *r)
{
    int    left = r->team != NULL && rank_of(r) == 0 ? r->team->count - 1 : 0;
    size_t count;

    while (!interrupt_came() && clock_now() < r->end && (count = next_ids(r)) > 0) {
        const double begin = clock_now();
        if (ts_sampling_block_run(r->block, r->ids, count) != TS_OK) {
            (void)complain(NULL, TS_NO_MEMORY, false);
            return false;
        }
        if (!keep_block(r, count) || !keep_sent(r, false, &left))
            return false;
        if (clock_now() - begin < 0.5 * BLOCK_TIME && 2 * r->size <= r->room)
            r->size *= 2;
        show(r, false);
    }
    if (rank_of(r) > 0)
        return r->team->send(NULL, 0);
    if (!keep_sent(r, true, &left))
        return false;
    show(r, true);
    return true;
}

static bool open_runner(const arguments *given, const ts_sampling *sampling, runner *r)
{
    const long        processors = sysconf(_SC_NPROCESSORS_ONLN);
    size_t            threads    = processors > 0 && r->team == NULL ? (size_t)processors : 1;
    double            seconds    = OPTION_TIME_MOST;
    ts_figure_options figure;

    if (!picture_beside(given, "study", &figure) ||
        !option_count(given, "study", OPTION_THREADS, 64, &threads) ||
        !option_time(given, "study", &seconds))
        return false;
    r->terminal = isatty(STDERR_FILENO) != 0;
    r->shown    = (r->terminal || given->value[OPTION_PROGRESS] != NULL) && rank_of(r) == 0;
    r->columns  = ts_sampling_columns(sampling);
    r->due      = ts_sampling_count(sampling);
    r->room     = BLOCK_MOST * threads;
    r->size     = BLOCK_FIRST * threads;
    r->begin    = clock_now();
    r->end      = r->begin + seconds;
    r->told     = r->begin;
    r->ids      = malloc(r->room * sizeof *r->ids);
    r->rows     = malloc(r->room * sizeof *r->rows);
    r->there    = malloc(sample_map_length(r->due));
    if (r->ids != NULL && r->rows != NULL && r->there != NULL &&
        ts_sampling_block_open(sampling, r->room, threads, &r->block) == TS_OK)
        return true;
    (void)complain(NULL, TS_NO_MEMORY, false);
    return false;
}

/* ---- answers --------------------------------------------------------------------------------- */

static int draw(const arguments *given, ts_sampling *sampling, const ts_sampling_found *found)
{
    const char       *path = given->value[OPTION_PICTURE];
    ts_figure_options figure;
    collector         picture;
    const ts_sink     sink = collector_sink(&picture);

    if (path == NULL)
        return EXIT_HOLDS;
    if (!picture_beside(given, "study", &figure))
        return EXIT_NOT_UNDERSTOOD;
    const ts_status status = ts_sampling_draw(sampling, found, &figure, &sink);
    const int       code   = status == TS_OK ? file_save(path, picture.bytes, picture.length)
                                             : complain(ts_sampling_messages(sampling), status, false);
    collector_forget(&picture);
    return code;
}

static int answer(const arguments *given, ts_sampling *sampling, sample_store *store)
{
    ts_sampling_found found;
    ts_page_options   page;
    collector         told;
    const ts_sink     sink = collector_sink(&told);
    int               code = EXIT_FAULT;

    if (!page_options(given, &page))
        return EXIT_NOT_UNDERSTOOD;
    if (!sample_store_found(store, &found))
        return EXIT_FAULT;
    const bool      json   = given->value[OPTION_JSON] != NULL;
    const ts_status status = ts_sampling_write(sampling, &found, json, &page, &sink);
    if (status == TS_OK)
        code = output_send(&told);
    else if (status == TS_NO_MEMORY)
        code = complain(NULL, status, false);
    collector_forget(&told);
    if (code == EXIT_HOLDS)
        code = draw(given, sampling, &found);
    if (code != EXIT_HOLDS)
        return code;
    if (found.count < ts_sampling_count(sampling))
        return EXIT_DOES_NOT_HOLD;
    const uint64_t lost =
        found.states[TS_SAMPLE_NOT_UNDERSTOOD] + found.states[TS_SAMPLE_NOT_COMPUTABLE];
    return lost > 0 ? EXIT_NOT_UNDERSTOOD : EXIT_HOLDS;
}

/* Rank 0 opens the store and tells all what is there; false when it could not. */
static bool open_store(const arguments *given, const ts_sampling *sampling, runner *r, int *code)
{
    const size_t length = sample_map_length(r->due);
    char         sound  = 1;

    if (rank_of(r) == 0) {
        r->store = sample_store_open(given->value[OPTION_OUTPUT], sampling, code);
        sound    = r->store != NULL ? 1 : 0;
    }
    if (sound && r->store != NULL)
        memcpy(r->there, sample_store_map(r->store), length);
    if (r->team != NULL)
        r->team->tell(&sound, 1);
    if (sound && r->team != NULL)
        r->team->tell(r->there, length);
    if (r->store != NULL)
        r->first = sample_store_count(r->store);
    return sound != 0;
}

static int compute(const arguments *given, ts_sampling *sampling, const rank_team *team)
{
    runner r    = {.team = team};
    int    code = EXIT_NOT_UNDERSTOOD;

    const bool open = open_runner(given, sampling, &r);
    if (!open && team != NULL) /* the others would wait for it */
        team->quit(code);
    if (open && open_store(given, sampling, &r, &code)) {
        interrupt_keep();
        code = run_all(&r) ? EXIT_HOLDS : EXIT_FAULT;
        if (code == EXIT_FAULT && team != NULL)
            team->quit(EXIT_FAULT);
        if (code == EXIT_HOLDS && r.store != NULL)
            code = answer(given, sampling, r.store);
    }
    sample_store_close(r.store);
    ts_sampling_block_close(r.block);
    free(r.ids);
    free(r.rows);
    free(r.there);
    return code;
}

/* The drive file of one sample, as the table counts them. */
static int write_sample(const arguments *given, ts_sampling *sampling)
{
    const char              *text = given->value[OPTION_SAMPLE];
    char                    *rest;
    collector                told;
    const ts_sink            sink  = collector_sink(&told);
    const unsigned long long id    = strtoull(text, &rest, 10);
    const unsigned long long count = ts_sampling_count(sampling);
    const bool               plain = text[0] >= '0' && text[0] <= '9' && *rest == '\0';

    if (!plain || id >= count) {
        fprintf(stderr,
                "towershaft study: --sample needs the id of a sample from 0 to %llu, not %s\n",
                count - 1, text);
        return EXIT_NOT_UNDERSTOOD;
    }
    const ts_status status = ts_sampling_write_drive(sampling, id, &sink);
    const int code = status == TS_OK ? output_deliver(given, &told) : complain(NULL, status, false);
    collector_forget(&told);
    return code;
}

int run_study(const arguments *given)
{
    const rank_team *team  = NULL;
    int              code  = EXIT_NOT_UNDERSTOOD;
    size_t           ranks = 0;

    if (!option_count(given, "study", OPTION_SLURM, 100000, &ranks))
        return code;
    ts_sampling *sampling = open_sampling(given, &code);
    if (sampling == NULL)
        return code;
    if (ranks > 0)
        code = study_slurm(given, ranks);
    else if (given->value[OPTION_SAMPLE] != NULL)
        code = write_sample(given, sampling);
    else if (study_team_join(&team))
        code = compute(given, sampling, team);
    else
        code = EXIT_FAULT;
    ts_sampling_close(sampling);
    if (team != NULL)
        team->leave();
    return code;
}
