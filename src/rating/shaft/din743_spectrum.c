/* rating/shaft/din743_spectrum.c: how much does it help that a load is not met for ever? */
#include "rating/shaft/din743_spectrum.h"

#include "base/assert.h"

#include <math.h>

#define PART_4 "line of DIN 743-4:2012 (from memory)"

double ts_din_slope(ts_din_steel_kind kind, ts_din_part part)
{
    if (kind == TS_DIN_CASE_HARDENED || kind == TS_DIN_NITRIDED)
        return 10.0;
    return part == TS_DIN_T ? 8.0 : 5.0;
}

/* Of bending with pull, and of torsion. */
#define OF_BOTH(text, says)                                                                        \
    {                                                                                              \
        {"S_Kb", "safety of the spectrum of bending", "1", text, PART_4 says},                     \
            {"S_Kt", "safety of the spectrum of torsion", "1", text, PART_4 says},                 \
    }
static const ts_formula ever_formulas[2] =
    OF_BOTH("1/u_most", ": the worst step alone is met so often that it must be borne for ever");
static const ts_formula few_formulas[2] = OF_BOTH(
    "(N_D/N_least)^(1/q)/u_most", ": what is met less than 1e3 times counts as met so often");
static const ts_formula life_formulas[2] =
    OF_BOTH("sum(rise/R) - 1",
            "; consequent form of Miner's rule (Haibach, from memory), in place of the sum of DIN "
            "743-4: the damage rises with the rates of all steps above the fatigue limit that is "
            "left, until D_M");

/* The steps that harm, the worst first, and powers of their uses. */
typedef struct ladder {
    double u[TS_DIN_STEPS_MOST], n[TS_DIN_STEPS_MOST];
    double fall[TS_DIN_STEPS_MOST]; /* (u/u_1)^(q - 1)              */
    double rate[TS_DIN_STEPS_MOST]; /* n/N_D (u/u_1)^q, damage/D_M  */
    int    count;
} ladder;

static void put(ladder *to, double u, double n)
{
    int i = to->count++;

    for (; i > 0 && to->u[i - 1] < u; i--) {
        to->u[i] = to->u[i - 1];
        to->n[i] = to->n[i - 1];
    }
    to->u[i] = u;
    to->n[i] = n;
}

/* So many lives until the damage sum is full, all uses raised until the worst is x >= 1.  Where
 * `rise` is not NULL, of every part of the course its share and the rate then; returns the lives,
 * and into *parts how many there are. */
static double lives(const ladder *l, double x, double q, double *rise, double *rates, int *parts)
{
    const double lift = pow(x, q), left = pow(x, q - 1.0);
    double       sum = 0.0, rate = 0.0, d = 0.0;

    *parts = 0;
    for (int i = 0; i < l->count && d < 1.0; i++) {
        rate += l->rate[i] * lift;
        /* the next step begins to harm when so much of the sum is used */
        const double next = i + 1 < l->count ? fmax(0.0, 1.0 - l->fall[i + 1] * left) : 1.0;
        if (!(next > d))
            continue;
        sum += (next - d) / rate;
        if (rise != NULL) {
            rise[*parts]  = next - d;
            rates[*parts] = rate;
        }
        ++*parts;
        d = next;
    }
    return sum;
}

/* Where the lives fall to 1: their logarithm is nearly a straight line over that of x, so by false
 * position between both ends, the height of the end that stays being halved at every step. */
static double search(const ladder *l, double q, double most)
{
    int    parts;
    double low = 0.0, high = log(most);
    double at_low  = log(lives(l, 1.0, q, NULL, NULL, &parts));
    double at_high = log(lives(l, most, q, NULL, NULL, &parts));

    if (!(at_low > 0.0))
        return 1.0;
    if (!(at_high < 0.0))
        return most;
    double ln_x = low;
    for (int i = 0; i < 60 && high - low > 1e-15; i++) {
        ln_x            = (low * at_high - high * at_low) / (at_high - at_low);
        const double at = log(lives(l, exp(ln_x), q, NULL, NULL, &parts));
        if (fabs(at) < 1e-14)
            break;
        if (at > 0.0) {
            low    = ln_x;
            at_low = at;
            at_high /= 2.0;
        } else {
            high    = ln_x;
            at_high = at;
            at_low /= 2.0;
        }
    }
    return exp(ln_x);
}

static void note_course(const ladder *l, const ts_din_spectrum *how, double x, double S_K,
                        ts_workings *w)
{
    double       rise[TS_DIN_STEPS_MOST], rates[TS_DIN_STEPS_MOST];
    ts_input     in[2 * TS_DIN_STEPS_MOST];
    int          parts;
    size_t       count = 0;
    const double z     = lives(l, x, how->q, rise, rates, &parts);

    for (int i = 0; i < parts; i++) {
        ts_workings_row(w, "rise", rise[i], "1",
                        "derived: share of the damage sum while so many steps harm");
        ts_workings_row(w, "R", rates[i], "1",
                        "derived: damage a life of all steps that harm then, over D_M: sum of "
                        "n/N_D (S_K u)^q/D_M");
        in[count++] = (ts_input){"rise", rise[i]};
        in[count++] = (ts_input){"R", rates[i]};
    }
    ts_search_note(w, &life_formulas[how->part == TS_DIN_T], S_K, z - 1.0, in, count);
}

static void note_constants(double q, double u_most, ts_workings *w)
{
    ts_workings_row(w, "q", q, "1", "slope of the line; " PART_4);
    ts_workings_row(w, "N_D", TS_DIN_KNEE, "1", "knee of the line; " PART_4);
    ts_workings_row(w, "N_least", TS_DIN_LEAST_LIFE, "1", "least cycles of the line; " PART_4);
    ts_workings_row(w, "u_most", u_most, "1", "derived: use of the worst step, the greatest 1/S_D");
}

/* Every step that harms; false where one is not known. */
static bool climb(ladder *l, const ts_din_step *steps, int count, double q, double full)
{
    TS_ASSERT(count <= TS_DIN_STEPS_MOST);
    for (int i = 0; i < count; i++) {
        if (isnan(steps[i].u) || isnan(steps[i].n))
            return false;
        if (steps[i].u > 0.0 && steps[i].n > 0.0)
            put(l, steps[i].u, steps[i].n);
    }
    for (int i = 0; i < l->count && l->n[0] < full; i++) {
        const double share = l->u[i] / l->u[0];
        l->fall[i]         = pow(share, q - 1.0);
        l->rate[i]         = l->n[i] / full * l->fall[i] * share;
    }
    return true;
}

double ts_din_spectrum_safety(const ts_din_step *steps, int count, const ts_din_spectrum *how,
                              ts_workings *workings)
{
    const double q = how->q, full = how->D_M * TS_DIN_KNEE;
    ladder       l = {.count = 0};
    int          parts;

    if (!climb(&l, steps, count, q, full))
        return NAN;
    const bool torsion = how->part == TS_DIN_T;
    if (l.count == 0) {
        ts_workings_row(workings, ever_formulas[torsion].symbol, INFINITY, "1",
                        "derived: no step harms");
        return INFINITY;
    }
    const double u_most = l.u[0], N_D = TS_DIN_KNEE, N_least = TS_DIN_LEAST_LIFE;
    const double most = pow(N_D / N_least, 1.0 / q);
    if (workings != NULL)
        note_constants(q, u_most, workings);
    if (l.n[0] >= full || lives(&l, 1.0, q, NULL, NULL, &parts) <= 1.0)
        return TS_STEP(workings, ever_formulas[torsion], 1.0 / u_most, u_most);
    if (lives(&l, most, q, NULL, NULL, &parts) >= 1.0)
        return TS_STEP(workings, few_formulas[torsion], most / u_most, N_D, N_least, q, u_most);
    const double x = search(&l, q, most), S_K = x / u_most;
    if (workings != NULL)
        note_course(&l, how, x, S_K, workings);
    return S_K;
}
