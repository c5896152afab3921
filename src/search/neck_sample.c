/* search/neck_sample.c: how do a million necks of one design break? */
#include "search/neck_sample.h"

#include "base/counter_random.h"
#include "base/normal_law.h"
#include "search/crew.h"

#include <math.h>

const double ts_neck_shares[TS_NECK_QUANTILES] = {0.001, 0.01, 0.1, 0.5, 0.9, 0.99, 0.999};

#define CHUNK        4096
#define DRAW_OF_LIFE 4 /* element/shear_neck.c takes draws 0 to 3 */

/* What one chunk counts and adds. */
typedef struct part {
    size_t outside, static_early, fatigue_early, early, late;
    double least, most, sum, squares; /* squares: of what lies from the middle of the band */
} part;

typedef struct drawing {
    const ts_neck_survey *survey;
    const ts_neck_wish   *wish;
    double               *T; /* [count] */
    part                 *parts;
    double                middle; /* N.m, from which sums are counted */
} drawing;

/* ---- samples --------------------------------------------------------------------------------- */

/* The lognormal strength of that sample against the amplitude that does the same harm. */
static bool tires(const drawing *d, uint64_t place)
{
    const ts_neck_life *life = &d->survey->life;
    double              u[2];

    ts_random_pair(d->wish->seed, place, DRAW_OF_LIFE, u);
    const double z = ts_normal_place(u[0]);
    return life->chance.T_equivalent >= life->make.T_W * exp(life->make.s_ln * z);
}

static void count_one(const drawing *d, uint64_t place, double T, part *to)
{
    const ts_neck_survey *survey = d->survey;
    const double          from   = T - d->middle;

    to->outside += !(T >= survey->neck->band.low && T <= survey->neck->band.high);
    to->least = fmin(to->least, T);
    to->most  = fmax(to->most, T);
    to->sum += from;
    to->squares += from * from;
    if (survey->life.missing != NULL)
        return;
    const bool at_once = T < survey->life.duty.T_legit, tired = tires(d, place);
    to->static_early += at_once;
    to->fatigue_early += tired;
    to->early += at_once || tired;
    to->late += T > survey->life.duty.T_capacity;
}

static void draw_chunk(void *context, size_t chunk, size_t worker)
{
    const drawing *d     = context;
    const size_t   first = chunk * CHUNK, rest = d->wish->count - first;
    const size_t   count = rest < CHUNK ? rest : CHUNK;
    part           to    = {.least = (double)INFINITY, .most = -(double)INFINITY};

    (void)worker;
    ts_drive_neck_draw(d->survey->neck, d->wish->seed, first, count, d->T + first);
    for (size_t i = 0; i < count; i++)
        count_one(d, first + i, d->T[first + i], &to);
    d->parts[chunk] = to;
}

/* ---- quantiles ------------------------------------------------------------------------------- */

/* Moves the values so that the one of `rank` stands at its place, the smaller before it: Hoare's
 * selection, the middle as the pivot. */
static double select_rank(double *T, size_t count, size_t rank)
{
    size_t low = 0, high = count - 1;

    while (low < high) {
        const double pivot = T[low + (high - low) / 2];
        size_t       i = low, j = high;

        for (;;) {
            while (T[i] < pivot)
                i++;
            while (T[j] > pivot)
                j--;
            if (i >= j)
                break;
            const double held = T[i];
            T[i++]            = T[j];
            T[j--]            = held;
        }
        if (rank <= j)
            high = j;
        else
            low = j + 1;
    }
    return T[rank];
}

static void take_quantiles(const drawing *d, ts_neck_sampled *out)
{
    const size_t count = d->wish->count;

    for (int q = 0; q < TS_NECK_QUANTILES; q++) {
        const double rank = ceil(ts_neck_shares[q] * (double)count - 1e-9);
        out->quantile[q] =
            select_rank(d->T, count, rank < 1.0 ? 0 : (size_t)fmin(rank, (double)count) - 1);
    }
}

/* ---- all ------------------------------------------------------------------------------------- */

static void add_up(const drawing *d, size_t chunks, ts_neck_sampled *out)
{
    const double n   = (double)d->wish->count;
    double       sum = 0.0, squares = 0.0;

    *out = (ts_neck_sampled){
        .count = d->wish->count, .least = (double)INFINITY, .most = -(double)INFINITY};
    for (size_t c = 0; c < chunks; c++) {
        const part *p = &d->parts[c];

        out->outside += p->outside;
        out->static_early += p->static_early;
        out->fatigue_early += p->fatigue_early;
        out->early += p->early;
        out->late += p->late;
        out->least = fmin(out->least, p->least);
        out->most  = fmax(out->most, p->most);
        sum += p->sum;
        squares += p->squares;
    }
    out->mean      = d->middle + sum / n;
    out->deviation = sqrt(fmax(0.0, squares / n - sum / n * (sum / n)));
}

static void draw(drawing *d, ts_neck_survey *survey)
{
    const size_t chunks = (d->wish->count + CHUNK - 1) / CHUNK;

    d->survey       = survey;
    d->middle       = (survey->neck->band.low + survey->neck->band.high) / 2.0;
    survey->sampled = true;
    ts_crew_run(d->wish->threads, chunks, draw_chunk, d);
    add_up(d, chunks, &survey->samples);
    take_quantiles(d, &survey->samples);
}

/* The duty points into the life, which stays where it is from here on. */
static void begin(const ts_select *select, const ts_guard *guard, ts_neck_survey *survey)
{
    *survey = (ts_neck_survey){.guard = guard, .neck = &select->necks->items[guard->neck]};
    ts_neck_life_of(select, guard, &survey->life, NULL);
    survey->balance = ts_neck_life_balance(&survey->life);
}

ts_status ts_survey_necks(const ts_select *select, const ts_neck_wish *wish, ts_arena *arena,
                          ts_neck_survey **surveys, size_t *count)
{
    drawing d = {.wish  = wish,
                 .T     = TS_TAKE(arena, double, wish->count),
                 .parts = TS_TAKE(arena, part, wish->count / CHUNK + 1)};

    *count   = 0;
    *surveys = TS_TAKE(arena, ts_neck_survey, (size_t)select->count + 1);
    if (d.T == NULL || d.parts == NULL || *surveys == NULL)
        return TS_NO_MEMORY;
    for (uint32_t g = 0; g < select->count; g++) {
        const ts_guard *guard = &select->guards[g];
        if (guard->neck == TS_NOWHERE)
            continue;
        ts_neck_survey *survey = &(*surveys)[(*count)++];
        begin(select, guard, survey);
        if (survey->neck->designed && survey->neck->missing == NULL)
            draw(&d, survey);
    }
    return TS_OK;
}
