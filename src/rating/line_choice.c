/* rating/line_choice.c: which bearing is the lightest that holds, or which one does the file tell?
 */
#include "rating/drive_lines_parts.h"

#include <math.h>

static double mass_of(const ts_bearing_size *size, ts_line_make make)
{
    return (size->D * size->D - size->d * size->d) * size->B * ts_line_rows_of(make);
}

typedef struct candidate {
    size_t       size;
    ts_line_make make;
    double       mass;
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
static int list_bores(const ts_lines_case *c, const ts_line *line, const ts_line_bearing *b,
                      double bores[TS_LINE_BORES_MOST])
{
    const ts_lines_catalog *catalog = c->lines->catalog;
    int                     count   = 0;

    bores[count++] = b->bearing.d;
    if (ts_measure_known(b->seat->bore))
        return count;
    for (size_t i = 0; i < catalog->bore_count && count < TS_LINE_BORES_MOST; i++)
        if (catalog->bores[i] > b->bearing.d + 1e-6 && catalog->bores[i] <= line->d_most)
            bores[count++] = catalog->bores[i];
    return count;
}

static void enter(const ts_lines_case *c, size_t size, ts_line_make make, candidate *out,
                  int *count)
{
    const candidate made = {size, make, mass_of(&c->lines->catalog->sizes[size], make)};
    int             at   = (*count)++;

    for (; at > 0 && out[at - 1].mass > made.mass; at--)
        out[at] = out[at - 1];
    out[at] = made;
}

/* Every generic bearing of those bores, the lightest first; none is computed yet. */
static int list_candidates(const ts_lines_case *c, const ts_line *line, const ts_line_bearing *b,
                           candidate out[CANDIDATES_MOST])
{
    double     bores[TS_LINE_BORES_MOST];
    const bool axial      = ts_line_has_axial(c, line);
    const int  bore_count = list_bores(c, line, b, bores);
    int        count      = 0;

    for (int i = 0; i < bore_count; i++) {
        const size_t *sizes = ts_lines_sizes_at(c->lines->catalog, bores[i]);

        for (int s = 0; sizes != NULL && s < TS_LINE_SERIES; s++) {
            if (sizes[s] == c->lines->catalog->size_count ||
                (b->seat->series.standing == TS_GIVEN && b->seat->series.value != s))
                continue;
            for (int make = 0; make < TS_MAKES; make++)
                if (ts_line_fits_form(b, axial, (ts_line_make)make))
                    enter(c, sizes[s], (ts_line_make)make, out, &count);
        }
    }
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

/* The condition that wears most at equal capacities, which most bearings fail in or in none. */
static int hardest(const ts_bearing_duty *duties, int count)
{
    double most = -1.0;
    int    at   = 0;

    for (int i = 0; i < count; i++) {
        const double F    = duties[i].F_r + duties[i].F_a,
                     wear = F * F * F * duties[i].n * duties[i].t;
        if (wear > most) {
            most = wear;
            at   = i;
        }
    }
    return at;
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

/* Is the life too short even with the most that the law of modification grants? */
static bool fails_at_once(const ts_line_generic *one, const ts_bearing_duty *duty, double most)
{
    if (!(duty->nu > 0.0)) /* then no life is known */
        return false;
    const double L_10h = ts_bearing_basic_life(&one->bearing, &one->ability, duty);

    return duty->t > most * TS_A_ISO_MOST * L_10h * (1.0 + 1e-9);
}

/* The hardest condition first, and no further once the life is used up.  Where the file tells no
 * times, or not how thick the oil is, no life is asked for. */
static bool lasts(const ts_lines_case *c, const ts_line_generic *one, const ts_bearing_duty *duties,
                  int count, int hard, ts_duty_rating *ratings)
{
    const double want = limit_of(c->drive->limits.bearing_life), life = c->lines->life;
    double       used = 0.0;

    if (fails_at_once(one, &duties[hard], 1.0 / want))
        return false;
    ratings[hard] =
        ts_line_rate_duty(&one->bearing, &one->ability, &duties[hard], &c->lines->want, NULL);
    if (duties[hard].t / ratings[hard].L_nmh * want > 1.0)
        return false;
    for (int i = 0; i < count; i++) {
        if (i != hard)
            ratings[i] =
                ts_line_rate_duty(&one->bearing, &one->ability, &duties[i], &c->lines->want, NULL);
        used += duties[i].t / ratings[i].L_nmh;
        if (life / used < life * want)
            return false;
    }
    return true;
}

/* The lightest that holds, else the one that bears most.  Where the file tells no times, dents and
 * least load alone decide, and E7-bearing-life asks for the times. */
ts_line_chosen ts_line_choose_bearing(const ts_lines_case *c, const ts_line *line,
                                      ts_line_bearing *b, const ts_bearing_duty *duties, int count,
                                      ts_duty_rating *ratings)
{
    candidate              found[CANDIDATES_MOST];
    const int              most = list_candidates(c, line, b, found), hard = hardest(duties, count);
    const ts_bearing_duty *usual = &duties[longest(duties, count)];
    const bool             timed = !isnan(c->lines->life);
    const ts_line_generic *best = NULL, *idle = NULL;
    static_loads           loads  = {{false}, {0.0}};
    ts_line_chosen         chosen = TS_LINE_CHOSEN;

    for (int i = 0; i < most; i++) {
        const ts_line_make     make = found[i].make;
        const ts_line_generic *one  = ts_lines_generic(c->lines->catalog, found[i].size, make);
        if (!one->sound)
            continue;
        if (idle == NULL && (best == NULL || one->ability.C_r > best->ability.C_r))
            best = one; /* what bears most, should none hold */
        /* One that would idle too is no better than the lighter one. */
        const bool turns = rolls(c, one, usual);
        if ((idle != NULL && !turns) || !bears(c, one, make, duties, count, &loads) ||
            (timed && !lasts(c, one, duties, count, hard, ratings)))
            continue;
        if (turns) {
            best   = one;
            idle   = NULL;
            chosen = timed ? TS_LINE_RATED : TS_LINE_CHOSEN;
            break;
        }
        idle = one;
    }
    if (idle != NULL)
        best = idle;
    if (best == NULL)
        return TS_LINE_NONE;
    b->bearing = best->bearing;
    b->ability = best->ability;
    b->series  = best->series;
    return chosen;
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
