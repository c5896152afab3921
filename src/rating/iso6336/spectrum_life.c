/* rating/iso6336/spectrum_life.c: does the damage of all conditions add up to failure? */
#include "rating/iso6336/spectrum_life.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

bool ts_iso6336_rate_cases(const ts_iso6336_prepared *prepared, ts_iso6336_case *cases,
                           size_t count)
{
    bool all = true;

    for (size_t i = 0; i < count; i++)
        all = ts_iso6336_rate(prepared, &cases[i].load, &cases[i].rating, NULL) && all;
    return all;
}

/* ---- damage ---------------------------------------------------------------------------------- */

/* What wears a place: cases of one mesh, or a list that the caller has gathered. */
typedef struct wear_list {
    const ts_iso6336_case *cases; /* or NULL */
    ts_iso6336_place       place; /* of the cases */
    const ts_wear         *wears;
    size_t                 count;
} wear_list;

static wear_list wears_of_cases(const ts_iso6336_case *cases, size_t count, ts_iso6336_place place)
{
    return (wear_list){.cases = cases, .place = place, .count = count};
}

ts_wear ts_wear_of(double sigma, double cycles, const ts_life_curve *curve)
{
    return (ts_wear){sigma, cycles, curve, ts_life_depth_of(curve, sigma)};
}

/* False: this one does not load the place. */
static bool wear_of(const wear_list *list, size_t i, ts_wear *out)
{
    if (list->cases == NULL) {
        *out = list->wears[i];
        return !(out->sigma <= 0.0);
    }
    const ts_iso6336_case        *one     = &list->cases[i];
    const ts_iso6336_gear_rating *gear    = &one->rating.gear[list->place.gear];
    const bool                    contact = list->place.stress == TS_RATED_CONTACT;

    const double sigma = contact ? gear->sigma_H : gear->sigma_F;

    /* A missing rating must stay: its sigma is NaN and compares with nothing. */
    if (one->flank != list->place.flank || sigma <= 0.0)
        return false;
    *out = ts_wear_of(sigma, one->load.N_L[list->place.gear],
                      contact ? &gear->contact : &gear->bending);
    return true;
}

/* Sum of n/N, and of n/N times the exponent of its line: the slope of ln U over ln S. */
typedef struct damage {
    double U, steep;
} damage;

static damage damage_at(const wear_list *list, double S)
{
    const double ln_S = log(S);
    damage       sum  = {0.0, 0.0};
    ts_wear      w;

    for (size_t i = 0; i < list->count; i++) {
        if (!wear_of(list, i, &w))
            continue;
        const ts_borne borne = ts_life_curve_borne(w.curve, w.sigma, w.depth, S, ln_S);
        const double   part  = w.cycles / borne.N;

        sum.U += part;
        if (borne.slope > 0.0 && part > 0.0)
            sum.steep += part / borne.slope;
    }
    return sum;
}

double ts_iso6336_damage(const ts_iso6336_case *cases, size_t count, ts_iso6336_place place,
                         double S)
{
    const wear_list list = wears_of_cases(cases, count, place);

    return damage_at(&list, S).U;
}

double ts_wear_damage(const ts_wear *wears, size_t count, double S)
{
    const wear_list list = {.wears = wears, .count = count};

    return damage_at(&list, S).U;
}

double ts_iso6336_times(const ts_iso6336_case *cases, size_t count, ts_iso6336_place place,
                        double S_min)
{
    return 1.0 / ts_iso6336_damage(cases, count, place, S_min);
}

/* ---- safety ---------------------------------------------------------------------------------- */

/* Above this every tooth breaks at once; INFINITY when nothing loads the place, NaN when a rating
 * is missing. */
static double static_safety(const wear_list *list)
{
    double  S = INFINITY;
    ts_wear w;

    for (size_t i = 0; i < list->count; i++) {
        if (!wear_of(list, i, &w))
            continue;
        const double own = w.curve->sigma_stat / w.sigma;
        if (isnan(own))
            return NAN;
        S = fmin(S, own);
    }
    return S;
}

/* Newton's rule on ln U over ln S inside a shrinking bracket, from the damage `at_1` of the
 * stresses as they are.  U never falls as S grows, is convex between the corners of the lines, and
 * may jump at them (endurance): then the bracket closes on the jump from below, where U <= 1.
 * Whether even the static strength bears the cycles is asked when the rule first points beyond it.
 */
static double spectrum_safety(const wear_list *list, damage at_1)
{
    double high = static_safety(list), low = 0.0, S = 1.0;
    bool   may_be_static = true;
    damage here          = at_1;

    if (!isfinite(high))
        return high;
    if (S >= high) {
        S    = high / 2.0;
        here = damage_at(list, S);
    }
    for (int round = 0; round < 200 && high - low > 4e-16 * high; round++) {
        if (here.U <= 1.0)
            low = S;
        else
            high = S;
        may_be_static = may_be_static && here.U <= 1.0;
        double next   = S * exp(-log(here.U) * here.U / here.steep);
        if (fabs(next - S) <= 2e-16 * S)
            return S;
        if (may_be_static && !(next < high)) {
            if (damage_at(list, high * (1.0 - 1e-15)).U <= 1.0)
                return high;
            may_be_static = false;
        }
        S    = next > low && next < high ? next : 0.5 * (low + high);
        here = damage_at(list, S);
    }
    return low;
}

static size_t worst_case(const wear_list *list, double S, double *share)
{
    const double below = S * (1.0 - 1e-15), ln_below = log(below); /* or rounding breaks a tooth */
    double       most = -1.0, all = 0.0;
    size_t       worst = 0;
    ts_wear      w;

    for (size_t i = 0; i < list->count; i++) {
        if (!wear_of(list, i, &w))
            continue;
        const double part =
            w.cycles / ts_life_curve_borne(w.curve, w.sigma, w.depth, below, ln_below).N;
        all += part;
        /* Where nothing is worn yet the most stressed case is the worst. */
        const double weight = part > 0.0 ? part : 1e-300 * w.sigma / w.curve->sigma_stat;
        if (weight > most) {
            most  = weight;
            worst = i;
        }
    }
    *share = all > 0.0 ? most / all : 0.0;
    return worst;
}

static const ts_formula S_equation = {
    .symbol  = "S",
    .meaning = "safety of the spectrum: all stresses times S use up the life",
    .unit    = "1",
    .text    = "U - 1",
    .source  = "ISO 6336-6:2019, clause 6 (from memory): Palmgren and Miner",
};

static ts_iso6336_life life_of(const wear_list *list, ts_workings *workings)
{
    const damage    at_1 = damage_at(list, 1.0);
    ts_iso6336_life life = {.U = at_1.U, .S = spectrum_safety(list, at_1)};

    if (!isfinite(life.S))
        return life;
    life.worst = worst_case(list, life.S, &life.share);
    if (workings != NULL) {
        const double   U        = damage_at(list, life.S * (1.0 - 1e-15)).U;
        const ts_input inputs[] = {{"U", U}};
        ts_search_note(workings, &S_equation, life.S, U - 1.0, inputs, 1);
    }
    return life;
}

ts_iso6336_life ts_iso6336_life_of(const ts_iso6336_case *cases, size_t count,
                                   ts_iso6336_place place, ts_workings *workings)
{
    const wear_list list = wears_of_cases(cases, count, place);

    return life_of(&list, workings);
}

ts_iso6336_life ts_wear_life(const ts_wear *wears, size_t count, ts_workings *workings)
{
    const wear_list list = {.wears = wears, .count = count};

    return life_of(&list, workings);
}

double ts_iso6336_spectrum_reserve(const ts_iso6336_case *cases, size_t count, double S_Hmin,
                                   double S_Fmin, ts_iso6336_place *where)
{
    double least = INFINITY;

    for (int i = 0; i < 8; i++) {
        const ts_iso6336_place place = {.flank  = i & 1,
                                        .gear   = (i >> 1) & 1,
                                        .stress = i < 4 ? TS_RATED_CONTACT : TS_RATED_BENDING};
        const double           S_min = place.stress == TS_RATED_CONTACT ? S_Hmin : S_Fmin;
        const wear_list        list  = wears_of_cases(cases, count, place);
        const double           ratio = spectrum_safety(&list, damage_at(&list, 1.0)) / S_min;

        if (isnan(ratio))
            return NAN;
        if (!(ratio < least))
            continue;
        least = ratio;
        if (where != NULL)
            *where = place;
    }
    return least - 1.0;
}

/* ---- load ------------------------------------------------------------------------------------ */

typedef struct scaled {
    const ts_iso6336_prepared *prepared;
    ts_iso6336_case           *cases;
    size_t                     count;
    double                     S_Hmin, S_Fmin;
} scaled;

/* Multiplies what the cases carry by `by` and tells the logarithm of the least safety over its
 * minimum. */
static double rescale(const scaled *s, double by)
{
    for (size_t i = 0; i < s->count; i++) {
        s->cases[i].load.T_1 *= by;
        s->cases[i].load.f_sh *= by;
    }
    if (!ts_iso6336_rate_cases(s->prepared, s->cases, s->count))
        return NAN;
    return log1p(ts_iso6336_spectrum_reserve(s->cases, s->count, s->S_Hmin, s->S_Fmin, NULL));
}

static const ts_formula factor_equation = {
    .symbol  = "load_factor",
    .meaning = "factor on all torques that leaves no reserve",
    .unit    = "1",
    .text    = "S/S_min - 1",
    .source  = "ISO 6336-6:2019, clause 6 (from memory), solved for the load",
};

/* Stress goes with a power of the load between a half and one, so ln S over ln load is nearly
 * straight: false position with halving of the stale end (Illinois) in both logarithms. */
double ts_iso6336_load_factor(const ts_iso6336_prepared *prepared, ts_iso6336_case *cases,
                              size_t count, double S_Hmin, double S_Fmin, ts_workings *workings)
{
    const scaled s  = {prepared, cases, count, S_Hmin, S_Fmin};
    double       at = 0.0, a = 0.0, f_a = rescale(&s, 1.0), b = 0.0, f_b = f_a;

    if (!isfinite(f_a))
        return NAN;
    while (f_a < 0.0 || f_b > 0.0) { /* f falls with the load: widen until it changes sign */
        const double to = f_a < 0.0 ? a - 1.0 : b + 1.0;
        const double f  = rescale(&s, exp(to - at));

        at = to;
        if (isnan(f) || fabs(to) > 60.0)
            return NAN;
        if (f_a < 0.0) {
            b = a, f_b = f_a, a = to, f_a = f;
        } else {
            a = b, f_a = f_b, b = to, f_b = f;
        }
    }
    double side = 0.0, f = f_a;
    for (int round = 0; round < 80 && b - a > 1e-13; round++) {
        double to = f_a - f_b > 0.0 ? (a * -f_b + b * f_a) / (f_a - f_b) : a;

        if (!(to > a && to < b))
            to = 0.5 * (a + b);
        f  = rescale(&s, exp(to - at));
        at = to;
        if (isnan(f))
            return NAN;
        if (f >= 0.0) {
            a = to, f_a = f;
            f_b *= side > 0.0 ? 0.5 : 1.0;
            side = 1.0;
        } else {
            b = to, f_b = f;
            f_a *= side < 0.0 ? 0.5 : 1.0;
            side = -1.0;
        }
        if (fabs(f) < 1e-13)
            break;
    }
    if (workings != NULL) {
        const double   S = exp(f), S_min = 1.0;
        const ts_input inputs[] = {{"S", S}, {"S_min", S_min}};
        ts_search_note(workings, &factor_equation, exp(at), S / S_min - 1.0, inputs, 2);
    }
    return exp(at);
}

double ts_equivalent_load(const ts_load_bin *bins, size_t count, double p)
{
    double worn = 0.0, cycles = 0.0, most = 0.0;

    for (size_t i = 0; i < count; i++)
        most = fmax(most, bins[i].T);
    if (!(most > 0.0))
        return most;
    for (size_t i = 0; i < count; i++) {
        worn += bins[i].n * pow(bins[i].T / most, p);
        cycles += bins[i].n;
    }
    return most * pow(worn / cycles, 1.0 / p);
}

static const ts_formula N_L_formula = {
    .symbol  = "N_L",
    .meaning = "load cycles",
    .unit    = "1",
    .text    = "omega/(2*pi)*t*meshes",
    .source  = ISO_6336_2 "11.2" RECALLED,
};

double ts_load_cycles(double omega, double seconds, double meshes, ts_workings *workings)
{
    const double t = seconds;

    return TS_STEP(workings, N_L_formula, omega / (2.0 * pi) * t * meshes, omega, t, meshes);
}
