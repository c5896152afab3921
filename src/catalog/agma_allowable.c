/* catalog/agma_allowable.c: which line of the AGMA tables belongs to a steel, and what does it say?
 */
#include "catalog/agma_allowable.h"

#include "catalog/hardness.h"

#include <math.h>
#include <string.h>

#define SOURCE "ANSI/AGMA 2101-D04, clause 16, lines of 2001-D04 (from memory)"
#define PSI    6894.757293168361 /* Pa; 4.4482216152605/0.0254^2 */

typedef struct allowable_row {
    const char *treatment, *variant, *grade, *quantity;
    double      A, B, least, most;
    const char *scale, *note;
} allowable_row;

static const allowable_row rows[] = {
#include "agma_allowable.inc"
};
#define ROW_COUNT (sizeof rows / sizeof rows[0])

typedef struct treatment_key {
    const char *name, *variant;
    int         grade_most;
} treatment_key;

static const treatment_key keys[TS_AGMA_TREATMENT_COUNT] = {
    [TS_AGMA_THROUGH_HARDENED]          = {"through-hardened", "-", 2},
    [TS_AGMA_INDUCTION_TYPE_A]          = {"flame or induction hardened", "type A", 2},
    [TS_AGMA_INDUCTION_TYPE_B]          = {"flame or induction hardened", "type B", 2},
    [TS_AGMA_CARBURISED]                = {"carburised", "-", 3},
    [TS_AGMA_NITRIDED_THROUGH_HARDENED] = {"nitrided through-hardened", "-", 2},
    [TS_AGMA_NITRIDED_NITRALLOY]        = {"nitrided Nitralloy", "-", 2},
    [TS_AGMA_NITRIDED_CHROME]           = {"nitrided 2.5 % chrome", "-", 3},
};

const char *ts_agma_treatment_name(ts_agma_treatment treatment)
{
    return keys[treatment].name;
}

/* ---- superficial hardness -------------------------------------------------------------------- */

static const struct {
    double HRC, HR15N;
} superficial[] = {
    {40, 80.4}, {42, 81.5}, {44, 82.5}, {46, 83.5}, {48, 84.5}, {50, 85.5}, {52, 86.4}, {54, 87.4},
    {56, 88.3}, {58, 89.3}, {60, 90.2}, {62, 91.1}, {64, 91.8}, {66, 92.5}, {68, 93.2},
};
#define SUPERFICIAL_COUNT (sizeof superficial / sizeof superficial[0])

double ts_superficial_hardness(double HRC)
{
    for (size_t i = 1; i < SUPERFICIAL_COUNT; i++) {
        if (!(HRC >= superficial[i - 1].HRC && HRC <= superficial[i].HRC))
            continue;
        const double part =
            (HRC - superficial[i - 1].HRC) / (superficial[i].HRC - superficial[i - 1].HRC);
        return superficial[i - 1].HR15N + part * (superficial[i].HR15N - superficial[i - 1].HR15N);
    }
    return NAN;
}

/* ---- lines ----------------------------------------------------------------------------------- */

static double in_scale(const ts_agma_steel *steel, const char *scale)
{
    if (strcmp(scale, "core") == 0)
        return steel->core;
    return strcmp(scale, "HR15N") == 0 ? ts_superficial_hardness(steel->flank) : steel->flank;
}

typedef struct line {
    double A, B;        /* psi per unit of hardness, psi  */
    double least, most; /* of the whole line              */
    double hardness;    /* of the steel, in its scale     */
} line;

/* A line may come in pieces, in the order of hardness; the last that has begun holds. */
static bool find_line(const ts_agma_steel *steel, char quantity, line *found)
{
    const treatment_key *key = &keys[steel->treatment];
    bool                 any = false;

    for (size_t i = 0; i < ROW_COUNT; i++) {
        const allowable_row *row = &rows[i];

        if (row->quantity[0] != quantity || row->grade[0] != '0' + steel->grade ||
            strcmp(row->treatment, key->name) != 0 || strcmp(row->variant, key->variant) != 0)
            continue;
        const double least = row->least;
        found->hardness    = in_scale(steel, row->scale);
        found->most        = row->most;
        if (!any)
            found->least = least;
        if (!any || found->hardness >= least) {
            found->A = row->A;
            found->B = row->B;
        }
        any = true;
    }
    return any;
}

/* I follows a symbol that has a subscript, J one that has none. */
#define LINE_TEXT(Q, I)                                                                            \
    "(A_" Q I "*min(hardness_" Q I ", hardness_most" Q I ") + B_" Q I ")*6894.757293168361"
#define ALLOWABLE(I)                                                                               \
    {                                                                                              \
        {"sigma_HP" I, "allowable contact stress number", "Pa", LINE_TEXT("H", I), SOURCE},        \
            {"sigma_FP" I, "allowable bending stress number", "Pa", LINE_TEXT("F", I), SOURCE},    \
    }
static const ts_formula formulas[3][2] = {ALLOWABLE(""), ALLOWABLE("1"), ALLOWABLE("2")};

typedef struct line_names {
    const char *A, *B, *hardness, *most;
} line_names;

#define NAMES(I)                                                                                   \
    {                                                                                              \
        {"A_H" I, "B_H" I, "hardness_H" I, "hardness_mostH" I},                                    \
            {"A_F" I, "B_F" I, "hardness_F" I, "hardness_mostF" I},                                \
    }
static const line_names names[3][2] = {NAMES(""), NAMES("1"), NAMES("2")};

static double stress_on(const line *on, int gear, int quantity, ts_workings *workings)
{
    const line_names *name     = &names[gear][quantity];
    const double      stress   = (on->A * fmin(on->hardness, on->most) + on->B) * PSI;
    const ts_input    inputs[] = {
           {name->A, on->A}, {name->B, on->B}, {name->hardness, on->hardness}, {name->most, on->most}};

    ts_workings_row(workings, name->hardness, on->hardness, "1",
                    "hardness in the scale of AGMA's lines: HRC, HR15N of nitrided flanks, HBW of "
                    "through-hardened steel and of cores; ASTM E140 (from memory), approximate");
    ts_workings_row(workings, name->A, on->A, "1", SOURCE);
    ts_workings_row(workings, name->B, on->B, "1", SOURCE);
    ts_workings_row(workings, name->most, on->most, "1", SOURCE);
    return ts_step_list(workings, &formulas[gear][quantity], stress, inputs, 4);
}

static bool within(const line *on)
{
    return on->hardness >= on->least && on->hardness <= on->most;
}

bool ts_agma_allowable_of(const ts_agma_steel *steel, int gear, ts_agma_allowable *allowable,
                          ts_workings *workings)
{
    line contact = {.A = NAN}, root = {.A = NAN};

    if (gear < 0 || gear > 2 || steel->grade < 1 || steel->grade > 3)
        return false;
    if (!find_line(steel, 'H', &contact) || !(contact.hardness > 0.0))
        return false;
    const bool bends = find_line(steel, 'F', &root) && root.hardness > 0.0;
    *allowable       = (ts_agma_allowable){
              .sigma_HP = stress_on(&contact, gear, 0, workings),
              .sigma_FP = bends ? stress_on(&root, gear, 1, workings) : (double)NAN,
              .within   = within(&contact) && (!bends || within(&root)),
              .source   = SOURCE,
    };
    return true;
}

/* ---- from the ISO table ---------------------------------------------------------------------- */

static bool treatment_of(ts_gear_class class, ts_agma_treatment *treatment)
{
    switch (class) {
    case TS_GEAR_CASE_HARDENED:
        *treatment = TS_AGMA_CARBURISED;
        return true;
    case TS_GEAR_INDUCTION_HARDENED:
        *treatment = TS_AGMA_INDUCTION_TYPE_A;
        return true;
    case TS_GEAR_NITRIDED:
        *treatment = TS_AGMA_NITRIDED_NITRALLOY;
        return true;
    case TS_GEAR_THROUGH_NITRIDED:
        *treatment = TS_AGMA_NITRIDED_THROUGH_HARDENED;
        return true;
    case TS_GEAR_THROUGH_HARDENED:
    case TS_GEAR_NORMALISED:
        *treatment = TS_AGMA_THROUGH_HARDENED;
        return true;
    case TS_GEAR_NITROCARBURISED:
    case TS_GEAR_CLASS_COUNT:
        break;
    }
    return false;
}

static int grade_of(const char *grade, int most)
{
    const int wanted = strcmp(grade, "ML") == 0 ? 1 : strcmp(grade, "MQ") == 0 ? 2 : 3;

    return wanted < most ? wanted : most;
}

/* Softer than ASTM E140 goes (238 HV), the scales keep the ratio that they have there. */
static double brinell_of(double HV)
{
    const double HBW = ts_hardness_in(TS_HARDNESS_HBW, HV, TS_HARDNESS_HV);

    return isnan(HBW) && HV < 238.0 ? HV * 226.0 / 238.0 : HBW;
}

bool ts_agma_steel_of(const ts_gear_material *material, double hardness, ts_agma_steel *steel)
{
    ts_agma_steel found;

    if (!treatment_of(material->class, &found.treatment))
        return false;
    found.grade = grade_of(material->grade, keys[found.treatment].grade_most);
    found.core  = ts_hardness_in(TS_HARDNESS_HBW, material->core_HRC, TS_HARDNESS_HRC);
    /* Normalised steel is told in Brinell already. */
    if (material->class == TS_GEAR_NORMALISED)
        found.flank = hardness;
    else if (material->class == TS_GEAR_THROUGH_HARDENED)
        found.flank = brinell_of(hardness);
    else
        found.flank = ts_hardness_in(TS_HARDNESS_HRC, hardness, TS_HARDNESS_HV);
    *steel = found;
    return found.flank > 0.0;
}

bool ts_agma_allowable_of_row(const ts_gear_material *material, double hardness, int gear,
                              ts_agma_allowable *allowable, ts_workings *workings)
{
    ts_agma_steel steel;

    return ts_agma_steel_of(material, hardness, &steel) &&
           ts_agma_allowable_of(&steel, gear, allowable, workings);
}
