/* rating/drive_necks.c: between which torques does every neck of a drive break? */
#include "rating/drive_necks.h"

#include "base/normal_law.h"
#include "catalog/metal.h"
#include "element/notch_factor.h"
#include "motion/value_note.h"
#include "rating/shaft/din743.h"

#include <math.h>
#include <string.h>

static const ts_formula Ftu_mean_formula = {
    .symbol  = "Ftu_mean",
    .meaning = "mean tensile strength, of which the design minimum is the one that 99 % exceed",
    .unit    = "Pa",
    .text    = "Ftu_row/(1 - z_99*scatter)",
    .source  = "derived: the normal law; A values of MMPDS count small samples too and lie lower",
};
static const ts_formula Ftu_low_formula = {
    .symbol  = "Ftu",
    .meaning = "least tensile strength of a blank of that thickness",
    .unit    = "Pa",
    .text    = "K_1B*Ftu_row",
    .source  = "DIN 743-2:2012, 5.1 (from memory)",
};
static const ts_formula Ftu_most_formula = {
    .symbol  = "Ftu",
    .meaning = "greatest tensile strength",
    .unit    = "Pa",
    .text    = "Ftu_mean*(1 + 3*scatter)",
    .source  = "common practice, no source: three standard deviations",
};
static const ts_formula Ftu_least_formula = {
    .symbol  = "Ftu",
    .meaning = "least tensile strength",
    .unit    = "Pa",
    .text    = "K_1B*Ftu_mean*(1 - 3*scatter)",
    .source  = "common practice, no source: three standard deviations",
};
static const ts_formula warmth_formula = {
    .symbol  = "warmth",
    .meaning = "share of the strength at room temperature that is left",
    .unit    = "1",
    .text    = "1 - 3e-4*(theta - 293.15)",
    .source  = "from memory: low-alloy steels lose about 5 % up to 200 degC and gain in the cold",
};
static const ts_formula d_least_formula = {
    .symbol  = "d_o",
    .meaning = "least diameter",
    .unit    = "m",
    .text    = "d - tol",
    .source  = "derived",
};
static const ts_formula d_most_formula = {
    .symbol  = "d_o",
    .meaning = "greatest diameter",
    .unit    = "m",
    .text    = "d + tol",
    .source  = "derived",
};
#define ROUNDED "element/shear_neck.c: the step before it, with 1e-14 for its roundings"
static const ts_formula least_formula = {
    .symbol  = "T_break_least",
    .meaning = "least break torque",
    .unit    = "N.m",
    .text    = "T_low",
    .source  = ROUNDED,
};
static const ts_formula K_ts_formula = {
    .symbol  = "K_ts",
    .meaning = "notch factor of the neck in torsion",
    .unit    = "1",
    .text    = "K_t",
    .source  = "element/notch_factor.h: a groove under torsion",
};
static const ts_formula least_brittle_formula = {
    .symbol  = "T_break_least",
    .meaning = "least break torque",
    .unit    = "N.m",
    .text    = "T_brittle",
    .source  = ROUNDED,
};
static const ts_formula most_formula = {
    .symbol  = "T_break_most",
    .meaning = "greatest break torque",
    .unit    = "N.m",
    .text    = "T_high",
    .source  = ROUNDED,
};

/* ---- memory ---------------------------------------------------------------------------------- */

static const ts_neck *neck_of_pad(const ts_drive *drive, const ts_pad *pad)
{
    const ts_neck *neck = pad->accessory < 0 ? NULL : &drive->accessories[pad->accessory].neck;
    return neck != NULL && neck->node != 0 ? neck : NULL;
}

static const ts_neck *neck_of_shaft(const ts_drive *drive, const ts_shaft *shaft)
{
    const ts_neck *neck =
        shaft->kind == TS_SHAFT_TOWER ? &drive->drive[shaft->drive].tower_shaft.neck : NULL;
    return neck != NULL && neck->node != 0 ? neck : NULL;
}

static void list_necks(const ts_drive *drive, const ts_train *train, ts_necks *out)
{
    for (uint32_t p = 0; p < train->pad_count; p++) {
        const ts_neck *neck = neck_of_pad(drive, &train->pads[p]);

        out->of_pad[p] = neck == NULL ? TS_NOWHERE : out->count;
        if (neck != NULL)
            out->items[out->count++] = (ts_drive_neck){
                .neck = neck, .name = train->pads[p].name, .pad = p, .shaft = train->pads[p].shaft};
    }
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_neck *neck = neck_of_shaft(drive, &train->shafts[s]);

        out->of_shaft[s] = neck == NULL ? TS_NOWHERE : out->count;
        if (neck != NULL)
            out->items[out->count++] = (ts_drive_neck){
                .neck = neck, .name = train->shafts[s].name, .pad = TS_NOWHERE, .shaft = s};
    }
}

ts_status ts_necks_prepare(const ts_drive *drive, const ts_train *train, ts_arena *arena,
                           ts_necks *out)
{
    const size_t most = (size_t)train->pad_count + drive->drive_count;

    *out = (ts_necks){.items    = TS_TAKE(arena, ts_drive_neck, most + 1),
                      .of_pad   = TS_TAKE(arena, uint32_t, (size_t)train->pad_count + 1),
                      .of_shaft = TS_TAKE(arena, uint32_t, (size_t)train->shaft_count + 1)};
    if (out->items == NULL || out->of_pad == NULL || out->of_shaft == NULL)
        return TS_NO_MEMORY;
    list_necks(drive, train, out);
    return TS_OK;
}

/* ---- what it is made of ---------------------------------------------------------------------- */

static ts_spread between(double low, double high)
{
    return (ts_spread){.law = TS_SPREAD_UNIFORM, .low = low, .high = high};
}

/* As thick as the blank, else as the shank, else as the neck itself. */
static const ts_measure *blank_of(const ts_neck *neck)
{
    return ts_measure_known(neck->blank)   ? &neck->blank
           : ts_measure_known(neck->shank) ? &neck->shank
                                           : &neck->diameter;
}

/* Rounds of 16 mm are tested of steels that harden through; those of the core of a case-hardened
 * one were 13 mm thick (data/metal.tsv). */
static double size_of_blank(const ts_neck *neck, const ts_metal *metal, ts_workings *workings)
{
    const bool         core  = strcmp(metal->key, "9310 core") == 0;
    const ts_din_steel steel = {.kind = core ? TS_DIN_CASE_HARDENED : TS_DIN_TEMPERED,
                                .d_B  = core ? 13e-3 : 16e-3};

    return ts_din_size_of_blank(&steel, blank_of(neck)->value, workings);
}

/* A normal law about the mean of a metal, cut off at what is sold and three deviations above.  A
 * thick blank is weaker; it may yet be as strong as a thin one. */
static ts_spread strength_of_metal(const ts_neck *neck, const ts_metal *metal)
{
    const double scatter = neck->scatter.value, Ftu_row = metal->Ftu;
    const double K_1B  = size_of_blank(neck, metal, NULL);
    const bool   least = strcmp(metal->basis, "typical") != 0;
    const double mean  = least ? Ftu_row / (1.0 - ts_normal_place(0.99) * scatter) : Ftu_row;

    return (ts_spread){.law   = TS_SPREAD_NORMAL,
                       .low   = K_1B * (least ? Ftu_row : mean * (1.0 - 3.0 * scatter)),
                       .high  = mean * (1.0 + 3.0 * scatter),
                       .mean  = K_1B * mean,
                       .sigma = K_1B * mean * scatter};
}

static double warmth_at(double theta)
{
    return 1.0 - 3e-4 * (theta - 293.15);
}

/* What the file says is unknown leaves no band. */
static const char *unknown_of(const ts_neck *neck)
{
    if (neck->strength.standing == TS_UNKNOWN)
        return "the strength";
    if (neck->shear_ratio.standing == TS_UNKNOWN)
        return "the shear ratio";
    if (neck->yielding.standing == TS_UNKNOWN)
        return "the yielding";
    if (neck->temperature.standing == TS_UNKNOWN)
        return "the temperature";
    if (!ts_pick_known(neck->metal))
        return "the metal";
    return ts_pick_known(neck->breaking) ? NULL : "the way of breaking";
}

static const char *make_neck(ts_drive_neck *out)
{
    const ts_neck *neck = out->neck;
    if (unknown_of(neck) != NULL)
        return unknown_of(neck);
    const ts_metal metal = ts_metal_at((size_t)neck->metal.value);
    const double   d = neck->diameter.value, tol = neck->tolerance.value;
    const bool     notched = ts_measure_known(neck->shank) && ts_measure_known(neck->notch_radius);

    out->K_ts = notched ? ts_groove_torsion_factor(TS_GROOVE_PILKEY, neck->shank.value, d,
                                                   neck->notch_radius.value, NULL)
                        : 1.0;
    if (!(out->K_ts >= 1.0))
        return "a notch factor: `shank` and `notch radius` lie outside of Peterson's charts";
    if (neck->strength.standing != TS_GIVEN && !(metal.Ftu > 0.0))
        return "a tensile strength: the table of metals has none of this one";
    out->made = (ts_shear_neck){
        .d        = between(d - tol, d + tol),
        .d_i      = between(neck->bore.value, neck->bore.value),
        .Ftu      = neck->strength.standing == TS_GIVEN
                        ? between(neck->strength.low, neck->strength.high)
                        : strength_of_metal(neck, &metal),
        .ratio    = between(neck->shear_ratio.low, neck->shear_ratio.high),
        .warmth   = between(warmth_at(neck->temperature.high), warmth_at(neck->temperature.low)),
        .yielding = between(neck->yielding.low, neck->yielding.high),
        .K_ts     = out->K_ts,
        .brittle  = neck->breaking.value == TS_NECK_BRITTLE,
    };
    return NULL;
}

/* ---- workings -------------------------------------------------------------------------------- */

static void note_end(ts_workings *workings, const ts_drive *drive, const char *symbol,
                     const ts_span *span, double value, const char *unit, const char *key)
{
    ts_note_value(workings, drive,
                  &(ts_value_note){symbol, value, unit, key, span->standing, span->node});
}

static void note_strength(ts_workings *workings, const ts_drive *drive, const ts_neck *neck,
                          const ts_shear_neck *made, bool low)
{
    const double scatter = neck->scatter.value;

    if (neck->strength.standing == TS_GIVEN) {
        note_end(workings, drive, "Ftu", &neck->strength, low ? made->Ftu.low : made->Ftu.high,
                 "Pa", "strength");
        return;
    }
    const ts_metal metal   = ts_metal_at((size_t)neck->metal.value);
    const double   Ftu_row = metal.Ftu, z_99 = ts_normal_place(0.99);
    const bool     least = strcmp(metal.basis, "typical") != 0;
    double         K_1B  = 1.0;

    if (low) {
        const ts_measure *blank = blank_of(neck);
        ts_note_value(workings, drive,
                      &(ts_value_note){"d_eff", blank->value, "m",
                                       blank == &neck->blank   ? "blank"
                                       : blank == &neck->shank ? "shank"
                                                               : "diameter",
                                       blank->standing, blank->node});
        K_1B = size_of_blank(neck, &metal, workings);
    }
    if (low && least) {
        ts_workings_row(workings, "Ftu_row", Ftu_row, "Pa", metal.source);
        (void)TS_STEP(workings, Ftu_low_formula, made->Ftu.low, K_1B, Ftu_row);
        return;
    }
    const double Ftu_mean = least ? Ftu_row / (1.0 - z_99 * scatter) : Ftu_row;
    TS_NOTE_MEASURE(workings, drive, "scatter", neck->scatter, "1", "scatter");
    if (least) {
        ts_workings_row(workings, "Ftu_row", Ftu_row, "Pa", metal.source);
        ts_workings_row(workings, "z_99", z_99, "1", "normal law: 99 % lie above the mean less it");
        (void)TS_STEP(workings, Ftu_mean_formula, Ftu_mean, Ftu_row, z_99, scatter);
    } else {
        ts_workings_row(workings, "Ftu_mean", Ftu_mean, "Pa", metal.source);
    }
    if (low)
        (void)TS_STEP(workings, Ftu_least_formula, made->Ftu.low, K_1B, Ftu_mean, scatter);
    else
        (void)TS_STEP(workings, Ftu_most_formula, made->Ftu.high, Ftu_mean, scatter);
}

/* The inputs of one end of the band, before it is computed. */
static void note_corner(ts_workings *workings, const ts_drive *drive, const ts_drive_neck *of,
                        bool low)
{
    const ts_neck *neck = of->neck;
    const double   d = neck->diameter.value, tol = neck->tolerance.value;
    const double   theta  = low ? neck->temperature.high : neck->temperature.low;
    const double   warmth = low ? of->made.warmth.low : of->made.warmth.high;

    note_strength(workings, drive, neck, &of->made, low);
    TS_NOTE_MEASURE(workings, drive, "d", neck->diameter, "m", "diameter");
    TS_NOTE_MEASURE(workings, drive, "tol", neck->tolerance, "m", "tolerance");
    TS_NOTE_MEASURE(workings, drive, "d_i", neck->bore, "m", "bore");
    note_end(workings, drive, "ratio", &neck->shear_ratio,
             low ? neck->shear_ratio.low : neck->shear_ratio.high, "1", "shear ratio");
    note_end(workings, drive, "theta", &neck->temperature, theta, "K", "temperature");
    (void)TS_STEP(workings, warmth_formula, warmth, theta);
    note_end(workings, drive, low ? "y_low" : "y_high", &neck->yielding,
             low ? neck->yielding.low : neck->yielding.high, "1", "yielding");
    if (low)
        (void)TS_STEP(workings, d_least_formula, of->made.d.low, d, tol);
    else
        (void)TS_STEP(workings, d_most_formula, of->made.d.high, d, tol);
}

static void note_notch(ts_workings *workings, const ts_drive *drive, const ts_drive_neck *of)
{
    const ts_neck *neck = of->neck;

    if (!ts_measure_known(neck->shank) || !ts_measure_known(neck->notch_radius)) {
        ts_workings_assumed(workings, "K_ts", 1.0, "1", "no notch is told");
        return;
    }
    TS_NOTE_MEASURE(workings, drive, "D", neck->shank, "m", "shank");
    TS_NOTE_MEASURE(workings, drive, "r", neck->notch_radius, "m", "notch radius");
    const double K_t =
        ts_groove_torsion_factor(TS_GROOVE_PILKEY, neck->shank.value, neck->diameter.value,
                                 neck->notch_radius.value, workings);
    (void)TS_STEP(workings, K_ts_formula, K_t, K_t);
}

/* The last step of the element before its roundings are covered. */
static double noted(const ts_workings *workings, ts_subject about, const char *symbol, double T)
{
    const size_t at = workings == NULL ? SIZE_MAX : ts_workings_find(workings, about, symbol);
    return at == SIZE_MAX ? T : ts_workings_at(workings, at)->value;
}

static void compute_band(const ts_drive *drive, ts_drive_neck *of, ts_workings *workings)
{
    const ts_subject about = {of->neck->node, TS_EVERY_CONDITION};

    ts_workings_about(workings, about.object, about.condition);
    if (workings != NULL) {
        note_corner(workings, drive, of, true);
        note_notch(workings, drive, of);
    }
    of->band.low = ts_neck_least(&of->made, workings);
    if (of->made.brittle) {
        const double T_brittle = noted(workings, about, "T_brittle", of->band.low);
        (void)TS_STEP(workings, least_brittle_formula, of->band.low, T_brittle);
    } else {
        const double T_low = noted(workings, about, "T_low", of->band.low);
        (void)TS_STEP(workings, least_formula, of->band.low, T_low);
    }
    if (workings != NULL)
        note_corner(workings, drive, of, false);
    of->band.high       = ts_neck_most(&of->made, workings);
    const double T_high = noted(workings, about, "T_high", of->band.high);
    (void)TS_STEP(workings, most_formula, of->band.high, T_high);
}

static void state_band(ts_drive_neck *of, ts_workings *workings)
{
    const ts_span *breaks = &of->neck->breaks;

    of->band = of->stated;
    if (breaks->standing != TS_GIVEN) {
        of->missing = "the break band";
        return;
    }
    ts_workings_about(workings, of->neck->node, TS_EVERY_CONDITION);
    ts_workings_given(workings, "T_break_least", breaks->low, "N.m", breaks->node);
    ts_workings_given(workings, "T_break_most", breaks->high, "N.m", breaks->node);
}

void ts_necks_solve(const ts_drive *drive, ts_necks *necks, ts_workings *workings)
{
    for (uint32_t i = 0; i < necks->count; i++) {
        ts_drive_neck *of = &necks->items[i];

        of->stated   = of->neck->breaks.standing == TS_GIVEN
                           ? (ts_neck_limits){of->neck->breaks.low, of->neck->breaks.high}
                           : (ts_neck_limits){(double)NAN, (double)NAN};
        of->designed = of->neck->diameter.standing == TS_GIVEN;
        of->K_ts     = 1.0;
        if (!of->designed) {
            state_band(of, workings);
            continue;
        }
        of->band    = (ts_neck_limits){(double)NAN, (double)NAN};
        of->missing = make_neck(of);
        if (of->missing == NULL)
            compute_band(drive, of, workings);
    }
}

void ts_drive_neck_draw(const ts_drive_neck *neck, uint64_t seed, uint64_t first, size_t count,
                        double *T)
{
    if (neck->designed && neck->missing == NULL) {
        ts_neck_sample(&neck->made, seed, first, count, T);
        return;
    }
    for (size_t i = 0; i < count; i++)
        T[i] = (double)NAN;
}
