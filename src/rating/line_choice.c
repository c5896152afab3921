/* rating/line_choice.c: which bearing is the lightest that holds, or which one does the file tell?
 */
#include "rating/drive_lines_parts.h"

#include "rating/bearing/life_modification.h"
#include "rating/bearing/rolling_life.h"

#include <math.h>

typedef struct candidate {
    size_t       size;
    ts_line_make make;
    double       bulk;
} candidate;

#define CANDIDATES_MOST (TS_LINE_BORES_MOST * TS_LINE_SERIES * 3)

bool ts_line_fits_form(const ts_line_bearing *b, bool axial, ts_line_make make)
{
    if (b->seat->rows.standing == TS_GIVEN && make != TS_MAKE_ROLLER &&
        (b->seat->rows.value == 2) != (make == TS_MAKE_ANGULAR_PAIR))
        return false;
    if (b->seat->form.standing == TS_GIVEN) {
        switch (b->seat->form.value) {
        case TS_SEAT_DEEP_GROOVE:
            return make == TS_MAKE_DEEP_GROOVE;
        case TS_SEAT_ANGULAR_CONTACT:
            /* A single one cannot hold a shaft both ways. */
            return b->seat->rows.standing == TS_GIVEN
                       ? make == TS_MAKE_ANGULAR || make == TS_MAKE_ANGULAR_PAIR
                       : make == TS_MAKE_ANGULAR_PAIR;
        default:
            return make == TS_MAKE_ROLLER;
        }
    }
    if (make == TS_MAKE_ANGULAR)
        return false;
    /* Bevels ask for bearings that hardly give way, and push along the shaft both ways. */
    if (b->locates)
        return axial ? make == TS_MAKE_ANGULAR_PAIR : make != TS_MAKE_ROLLER;
    return axial ? make == TS_MAKE_ROLLER : make != TS_MAKE_ANGULAR_PAIR;
}

/* Bores that may be taken: that of the file, or the journal and what is a little wider. */
static void bore_range(const ts_lines_case *c, const ts_line *line, const ts_line_bearing *b,
                       double range[2])
{
    const ts_lines_catalog *catalog = c->lines->catalog;
    int                     wider   = 0;

    range[0] = range[1] = b->bearing.d;
    if (ts_measure_known(b->seat->bore))
        return;
    for (size_t i = 0; i < catalog->bore_count && wider < TS_LINE_BORES_MOST - 1; i++)
        if (catalog->bores[i] > range[0] + 1e-6 && catalog->bores[i] <= line->d_most) {
            range[1] = catalog->bores[i];
            wider++;
        }
}

/* Those of so many rows, the lightest first.  One that was given up for a wider layout is not taken
 * again: line_settle.c. */
static int list_rows(const ts_lines_case *c, const ts_line_bearing *b, const bool fits[TS_MAKES],
                     int rows, const double range[2], candidate *out)
{
    const ts_lines_catalog *catalog = c->lines->catalog;
    int                     count   = 0;

    for (size_t i = 0; i < catalog->size_count; i++) {
        const size_t           number = catalog->by_bulk[i];
        const ts_bearing_size *size   = &catalog->sizes[number];

        if (size->d < range[0] - 1e-6 || size->d > range[1] + 1e-6)
            continue;
        const double bulk = ts_line_bulk(size->d, size->D, size->B * rows);
        if (bulk < b->least_bulk * (1.0 - 1e-9) || catalog->series[number] < 0 ||
            (b->seat->series.standing == TS_GIVEN &&
             b->seat->series.value != catalog->series[number]))
            continue;
        for (int make = 0; make < TS_MAKES && count < CANDIDATES_MOST; make++)
            if (fits[make] && ts_line_rows_of((ts_line_make)make) == rows)
                out[count++] = (candidate){number, (ts_line_make)make, bulk};
    }
    return count;
}

/* Every generic bearing of those bores, the lightest first; none is computed yet. */
static int list_candidates(const ts_lines_case *c, const ts_line *line, const ts_line_bearing *b,
                           candidate out[CANDIDATES_MOST])
{
    candidate  one[CANDIDATES_MOST], two[CANDIDATES_MOST];
    bool       fits[TS_MAKES];
    double     range[2];
    const bool axial = ts_line_has_axial(c, line);
    int        i = 0, j = 0, count = 0;

    for (int make = 0; make < TS_MAKES; make++)
        fits[make] = ts_line_fits_form(b, axial, (ts_line_make)make);
    bore_range(c, line, b, range);
    const int ones = list_rows(c, b, fits, 1, range, one);
    const int twos = fits[TS_MAKE_ANGULAR_PAIR] ? list_rows(c, b, fits, 2, range, two) : 0;
    while (count < CANDIDATES_MOST && (i < ones || j < twos))
        out[count++] = j == twos || (i < ones && one[i].bulk <= two[j].bulk) ? one[i++] : two[j++];
    return count;
}

static double limit_of(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : 0.0;
}

/* Rollers that carry next to nothing where most time is spent are no choice either. */
static bool rolls(const ts_lines_case *c, const ts_line_generic *one, const ts_bearing_duty *duty)
{
    return one->bearing.form != TS_BEARING_CYLINDRICAL_ROLLER ||
           duty->F_r >= 0.02 * one->ability.C_r * limit_of(c->drive->limits.bearing_slip);
}

/* The greatest equivalent static load of all duties; NaN where one is not known. */
static double worst_static(const ts_line_generic *one, const ts_bearing_duty *duties, int count)
{
    double most = 0.0;

    for (int i = 0; i < count; i++) {
        const double P_0 = ts_static_load(one->ability.still, duties[i].F_r, duties[i].F_a, NULL);
        if (isnan(P_0))
            return P_0;
        most = P_0 > most ? P_0 : most;
    }
    return most;
}

/* What was chosen: a number of the catalogue. */
typedef struct choice {
    bool         found;
    ts_line_make make;
    size_t       size;
} choice;

#define ROUNDS_KEPT 4 /* most lines settle in two */

static void take(const ts_line_generic **best, choice *taken, const ts_line_generic *one,
                 const candidate *from)
{
    *best  = one;
    *taken = (choice){true, from->make, from->size};
}

/* All generic bearings of a make have the same static factors, and so the same worst load. */
typedef struct static_loads {
    bool   known[TS_MAKES];
    double P_0[TS_MAKES];
} static_loads;

/* Dents are told without the law of life, and at once. */
static bool bears(const ts_lines_case *c, const ts_line_generic *one, ts_line_make make,
                  const ts_bearing_duty *duties, int count, static_loads *loads)
{
    const double least = limit_of(c->drive->limits.bearing_static_safety);

    if (!loads->known[make])
        loads->P_0[make] = worst_static(one, duties, count);
    loads->known[make] = true;
    const double P_0   = loads->P_0[make];
    return !isnan(P_0) && !(P_0 > 0.0 && !(one->ability.C_0r / P_0 >= least));
}

/* The conditions by what they wear at equal capacities, the hardest first: most bearings fail in
 * that one or in none. */
static void order_by_wear(const ts_bearing_duty *duties, int count, int order[TS_CONDITIONS_MOST])
{
    double wear[TS_CONDITIONS_MOST];

    for (int i = 0; i < count; i++) {
        const double F  = duties[i].F_r + duties[i].F_a;
        int          at = i;

        wear[i] = F * F * F * duties[i].n * duties[i].t;
        for (; at > 0 && wear[order[at - 1]] < wear[i]; at--)
            order[at] = order[at - 1];
        order[at] = i;
    }
}

/* Of those in which it turns; 0 when it never does. */
static int longest(const ts_bearing_duty *duties, int count)
{
    int at = -1;

    for (int i = 0; i < count; i++)
        if (duties[i].n > 0.0 && (at < 0 || duties[i].t > duties[at].t))
            at = i;
    return at < 0 ? 0 : at;
}

/* What film and dirt leave at most to any bearing that may stand there, under the hardest duty:
 * both grow with the pitch diameter.  Balls, rollers. */
typedef struct film_bound {
    double film[2], e_C;
} film_bound;

static film_bound bound_of(const ts_lines_case *c, double D_most, const ts_bearing_duty *duty)
{
    const ts_dirt_room room = ts_dirt_room_of(D_most);
    film_bound         out  = {{(double)NAN, (double)NAN}, c->lines->want.e_C};

    if (!(duty->nu > 0.0 && duty->n > 0.0))
        return out;
    const double kappa = fmax(
        0.1, ts_viscosity_ratio(duty->nu, ts_reference_viscosity(duty->n, D_most, NULL), NULL));
    if (isnan(out.e_C))
        out.e_C = ts_contamination_in(&room, c->lines->want.cleanness, kappa, NULL);
    out.film[0] = ts_film_share(TS_ROLLING_BALLS, kappa);
    out.film[1] = ts_film_share(TS_ROLLING_ROLLERS, kappa);
    return out;
}

/* Is the life too short even so?  The branches of the law meet to a hundredth. */
static bool fails_at_once(const ts_lines_case *c, const ts_line_generic *one,
                          const ts_bearing_duty *duty, const film_bound *bound, double most)
{
    const bool               rollers = one->bearing.form == TS_BEARING_CYLINDRICAL_ROLLER;
    const ts_rolling_element element = rollers ? TS_ROLLING_ROLLERS : TS_ROLLING_BALLS;
    const double             P       = ts_bearing_duty_load(&one->bearing, &one->ability, duty);

    if (!(P > 0.0) || isnan(bound->film[0])) /* endless, or no life is known */
        return false;
    const double L_10h =
        ts_life_in_time(ts_basic_life(one->ability.C_r, P, one->ability.p, NULL), duty->n, NULL);
    const double granted = most * L_10h * ts_reliability_factor(c->lines->want.S, NULL) * 1.01;
    if (duty->t > granted * TS_A_ISO_MOST)
        return true;
    const double q = bound->e_C * one->ability.C_u / P;
    return duty->t > granted * ts_life_with_film(element, bound->film[rollers ? 1 : 0], q);
}

/* The most that the law of modification leaves of a life used up: a bound that needs no film. */
static double harm_at_most(const ts_lines_case *c, const ts_line_generic *one,
                           const ts_bearing_duty *duty)
{
    const double least = TS_A_ISO_LEAST * ts_reliability_factor(c->lines->want.S, NULL);

    return duty->nu > 0.0
               ? duty->t / (least * ts_bearing_basic_life(&one->bearing, &one->ability, duty))
               : (double)NAN;
}

static double harm_of(const ts_lines_case *c, const ts_line_generic *one,
                      const ts_bearing_duty *duty)
{
    return duty->t /
           ts_line_rate_duty(&one->bearing, &one->ability, duty, &c->lines->want, NULL).L_nmh;
}

/* The hardest conditions first, and no further once the life is used up, or cannot be any more.
 * Where the file tells no times, or not how thick the oil is, no life is asked for. */
static bool lasts(const ts_lines_case *c, const ts_line_generic *one, const ts_bearing_duty *duties,
                  const int *order, int count, const film_bound *bound)
{
    const double want = limit_of(c->drive->limits.bearing_life);
    double       most[TS_CONDITIONS_MOST], rest = 0.0;

    if (fails_at_once(c, one, &duties[order[0]], bound, 1.0 / want))
        return false;
    double used = harm_of(c, one, &duties[order[0]]);
    if (used * want > 1.0)
        return false;
    for (int i = 1; i < count; i++) {
        most[i] = harm_at_most(c, one, &duties[order[i]]);
        rest += most[i];
    }
    for (int i = 1; i < count && !((used + rest) * want <= 1.0); i++) {
        used += harm_of(c, one, &duties[order[i]]);
        rest -= most[i];
        if (used * want > 1.0)
            return false;
    }
    return true;
}

/* The lightest that holds, else the one that bears most.  Where the file tells no times, dents and
 * least load alone decide, and E7-bearing-life asks for the times. */
static choice choose(const ts_lines_case *c, const ts_line *line, const ts_line_bearing *b,
                     const ts_bearing_duty *duties, int count)
{
    candidate              found[CANDIDATES_MOST];
    const int              most  = list_candidates(c, line, b, found);
    const ts_bearing_duty *usual = &duties[longest(duties, count)];
    const bool             timed = !isnan(c->lines->life);
    const ts_line_generic *best = NULL, *idle = NULL;
    choice                 taken = {.found = false}, idling = {.found = false};
    static_loads           loads  = {{false}, {0.0}};
    double                 D_most = 0.0;
    int                    order[TS_CONDITIONS_MOST];

    order_by_wear(duties, count, order);
    for (int i = 0; i < most; i++) {
        const ts_bearing_size *size = &c->lines->catalog->sizes[found[i].size];
        D_most                      = fmax(D_most, (size->d + size->D) / 2.0);
    }
    const film_bound bound = bound_of(c, D_most, &duties[order[0]]);

    for (int i = 0; i < most; i++) {
        const ts_line_make     make = found[i].make;
        const ts_line_generic *one  = ts_lines_generic(c->lines->catalog, found[i].size, make);
        if (!one->sound)
            continue;
        if (idle == NULL && (best == NULL || one->ability.C_r > best->ability.C_r))
            take(&best, &taken, one, &found[i]); /* what bears most, should none hold */
        /* One that would idle too is no better than the lighter one. */
        const bool turns = rolls(c, one, usual);
        if ((idle != NULL && !turns) || !bears(c, one, make, duties, count, &loads) ||
            (timed && !lasts(c, one, duties, order, count, &bound)))
            continue;
        if (turns) {
            take(&best, &taken, one, &found[i]);
            idle = NULL;
            break;
        }
        take(&idle, &idling, one, &found[i]);
    }
    return idle != NULL ? idling : taken;
}

void ts_line_ask_want(const ts_lines_case *c)
{
    const ts_bearing_want *want      = &c->lines->want;
    const double           numbers[] = {want->S, want->e_C};
    const int              cleanness = (int)want->cleanness;

    ts_memo_ask(c->lines->memo, numbers, sizeof numbers);
    ts_memo_ask(c->lines->memo, &cleanness, sizeof cleanness);
}

/* All that choose() reads of the drive. */
static void ask(const ts_lines_case *c, const ts_line *line, const ts_line_bearing *b,
                const ts_bearing_duty *duties, int count)
{
    const ts_bearing_seat *seat      = b->seat;
    const ts_limits       *limits    = &c->drive->limits;
    const double           numbers[] = {b->bearing.d,
                                        b->least_bulk,
                                        line->d_most,
                                        limit_of(limits->bearing_slip),
                                        limit_of(limits->bearing_static_safety),
                                        limit_of(limits->bearing_life)};
    const int64_t          words[]   = {
                   ts_measure_known(seat->bore), seat->rows.standing, (int64_t)seat->rows.value,
                   seat->form.standing,          seat->form.value,    seat->series.standing,
                   seat->series.value,           b->locates,          ts_line_has_axial(c, line),
                   isnan(c->lines->life)};

    ts_memo_ask(c->lines->memo, numbers, sizeof numbers);
    ts_memo_ask(c->lines->memo, words, sizeof words);
    ts_line_ask_want(c);
    ts_memo_ask(c->lines->memo, duties, (size_t)count * sizeof *duties); /* doubles alone */
}

/* Each round of layout and choice asks for itself: line_settle.c. */
static choice choose_once(const ts_lines_case *c, uint32_t number, int k,
                          const ts_bearing_duty *duties, int count)
{
    const ts_line         *line = &c->lines->lines[number];
    const ts_line_bearing *b    = &line->bearings[k];
    bool                   known;

    if (line->rounds >= ROUNDS_KEPT)
        return choose(c, line, b, duties, count);
    ask(c, line, b, duties, count);
    const size_t place =
        ((size_t)number * TS_LINE_BEARINGS_MOST + (size_t)k) * ROUNDS_KEPT + (size_t)line->rounds;
    choice *kept = ts_memo_answer(c->lines->memo, TS_MEMO_BEARING, place, sizeof *kept, &known);
    if (known)
        return *kept;
    const choice taken = choose(c, line, b, duties, count);
    if (kept != NULL)
        *kept = taken;
    return taken;
}

bool ts_line_choose_bearing(const ts_lines_case *c, uint32_t number, int k,
                            const ts_bearing_duty *duties, int count)
{
    if (count < 1) /* nothing is asked of it */
        return false;
    ts_line_bearing *b     = &c->lines->lines[number].bearings[k];
    const choice     taken = choose_once(c, number, k, duties, count);

    if (!taken.found)
        return false;
    const ts_line_generic *one = ts_lines_generic(c->lines->catalog, taken.size, taken.make);
    b->bearing                 = one->bearing;
    b->ability                 = one->ability;
    b->series                  = one->series;
    return true;
}

/* ---- a bearing of one's own -------------------------------------------------------------------
 */

static double own_or(ts_measure own, double otherwise)
{
    return ts_measure_known(own) ? own.value : otherwise;
}

bool ts_line_is_own(const ts_bearing_seat *seat)
{
    return ts_measure_known(seat->outside) || ts_measure_known(seat->ball) ||
           ts_measure_known(seat->length) || seat->elements.standing == TS_GIVEN ||
           ts_measure_known(seat->capacity) || ts_measure_known(seat->static_capacity) ||
           ts_measure_known(seat->angle);
}

/* What was chosen or taken from its series, with the file's own numbers over it. */
void ts_line_overlay_own(ts_line_bearing *b)
{
    const ts_bearing_seat *seat = b->seat;
    ts_bearing            *own  = &b->bearing;

    if (seat->form.standing == TS_GIVEN)
        own->form = (ts_bearing_form)seat->form.value;
    own->D           = own_or(seat->outside, own->D);
    own->alpha       = own_or(seat->angle, own->alpha);
    own->inside.D_w  = own_or(seat->ball, own->inside.D_w);
    own->inside.L_we = own_or(seat->length, own->inside.L_we);
    own->inside.D_pw = ts_measure_known(seat->outside) ? (own->d + own->D) / 2.0 : own->inside.D_pw;
    if (seat->elements.standing == TS_GIVEN)
        own->inside.Z = (int)seat->elements.value;
    own->C_r                     = own_or(seat->capacity, own->C_r);
    own->C_0r                    = own_or(seat->static_capacity, own->C_0r);
    const ts_bearing_fault fault = ts_bearing_prepare(own, &b->ability, NULL);
    b->fault                     = fault == TS_BEARING_FINE ? NULL : ts_bearing_fault_says(fault);
}

/* Without a generic one of that form and bore the file must tell the whole inside. */
void ts_line_begin_own(ts_line_bearing *b)
{
    const ts_bearing_seat *seat = b->seat;

    b->bearing =
        (ts_bearing){.form   = seat->form.standing == TS_GIVEN ? (ts_bearing_form)seat->form.value
                                                               : TS_BEARING_DEEP_GROOVE,
                     .rows   = seat->rows.standing == TS_GIVEN ? (int)seat->rows.value : 1,
                     .d      = b->bearing.d,
                     .D      = (double)NAN,
                     .inside = {.D_w  = (double)NAN,
                                .L_we = (double)NAN,
                                .D_pw = (double)NAN,
                                .f_i  = 0.52,
                                .f_e  = 0.52},
                     .C_r    = (double)NAN,
                     .C_0r   = (double)NAN};
}
