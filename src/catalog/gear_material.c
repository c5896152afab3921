/* catalog/gear_material.c: which row of the tables belongs to a steel, and what does it say? */
#include "catalog/gear_material.h"

#include <math.h>
#include <string.h>

#define ISO_6336_5  "ISO 6336-5:2016, table 1 (line from memory)"
#define LINE_SOURCE "data/gear_strength.tsv, N/mm2 and hardness as printed; " ISO_6336_5

typedef struct material_row {
    const char *key, *class, *grade, *variant;
    double      hardness, core, yield, E, nu, rho;
    const char *source, *basis;
} material_row;

static const material_row materials[] = {
#include "gear_material.inc"
};

const char *const ts_gear_material_keys[] = {
#include "gear_material_key.inc"
    NULL,
};

typedef struct strength_row {
    const char *class, *grade, *variant, *quantity;
    double      A, B, least, most;
    const char *scale, *note;
} strength_row;

static const strength_row strengths[] = {
#include "gear_strength.inc"
};

#define MATERIAL_COUNT (sizeof materials / sizeof materials[0])
#define STRENGTH_COUNT (sizeof strengths / sizeof strengths[0])

static const char *const class_names[TS_GEAR_CLASS_COUNT] = {
    [TS_GEAR_CASE_HARDENED]      = "case-hardened",
    [TS_GEAR_INDUCTION_HARDENED] = "induction-hardened",
    [TS_GEAR_NITRIDED]           = "nitrided",
    [TS_GEAR_THROUGH_NITRIDED]   = "through-nitrided",
    [TS_GEAR_NITROCARBURISED]    = "nitrocarburised",
    [TS_GEAR_THROUGH_HARDENED]   = "through-hardened",
    [TS_GEAR_NORMALISED]         = "normalised",
};

const char *ts_gear_class_name(ts_gear_class class)
{
    return class_names[class];
}

bool ts_gear_class_named(ts_text name, ts_gear_class *class)
{
    for (int i = 0; i < TS_GEAR_CLASS_COUNT; i++) {
        if (!ts_text_is(name, class_names[i]))
            continue;
        *class = (ts_gear_class)i;
        return true;
    }
    return false;
}

bool ts_gear_class_surface_hardened(ts_gear_class class)
{
    return class != TS_GEAR_THROUGH_HARDENED && class != TS_GEAR_NORMALISED;
}

static ts_gear_material material_of(const material_row *row)
{
    ts_gear_material material = {
        .key      = row->key,
        .class    = TS_GEAR_CASE_HARDENED,
        .grade    = row->grade,
        .variant  = row->variant,
        .hardness = row->hardness,
        .core_HRC = row->core,
        .yield    = row->yield * 1e6,
        .E        = row->E * 1e9,
        .nu       = row->nu,
        .rho      = row->rho,
        .source   = row->source,
        .basis    = row->basis,
    };

    (void)ts_gear_class_named(ts_text_of(row->class), &material.class);
    return material;
}

size_t ts_gear_material_count(void)
{
    return MATERIAL_COUNT;
}

ts_gear_material ts_gear_material_at(size_t index)
{
    return material_of(&materials[index < MATERIAL_COUNT ? index : 0]);
}

bool ts_gear_material_named(ts_text key, ts_gear_material *material)
{
    for (size_t i = 0; i < MATERIAL_COUNT; i++) {
        if (!ts_text_is(key, materials[i].key))
            continue;
        *material = material_of(&materials[i]);
        return true;
    }
    return false;
}

const char *ts_gear_material_nearest(ts_text key)
{
    const char *keys[MATERIAL_COUNT];

    for (size_t i = 0; i < MATERIAL_COUNT; i++)
        keys[i] = materials[i].key;
    return ts_text_nearest(key, keys, MATERIAL_COUNT);
}

/* ---- allowable stress numbers ---------------------------------------------------------------- */

typedef struct line {
    double A, B;        /* N/mm2 per unit of hardness, N/mm2 */
    double least, most; /* of this line                      */
} line;

/* Words of a table differ early; a call for each of them would cost more than the comparison. */
static bool is_word(const char *a, const char *b)
{
    for (; *a == *b; a++, b++)
        if (*a == '\0')
            return true;
    return false;
}

/* Some lines come in two pieces that meet; the whole range is widened piece by piece. */
static bool find_line(const ts_gear_material *material, char quantity, double hardness, line *found,
                      ts_gear_strength *range)
{
    const char *class = class_names[material->class];
    double least = INFINITY, most = -INFINITY;
    bool   any = false;

    for (size_t i = 0; i < STRENGTH_COUNT; i++) {
        const strength_row *row = &strengths[i];

        if (row->quantity[0] != quantity || !is_word(row->grade, material->grade) ||
            !is_word(row->class, class) || !is_word(row->variant, material->variant))
            continue;
        const line here = {row->A, row->B, row->least, row->most};
        if (!any || hardness >= here.least)
            *found = here;
        any   = true;
        least = fmin(least, here.least);
        most  = fmax(most, here.most);
    }
    range->least = fmax(range->least, least);
    range->most  = fmin(range->most, most);
    return any;
}

/* I follows a symbol that has a subscript, J one that has none. */
#define LINE_TEXT(A, B, J, I) "(" A I "*min(hardness" J ", hardness_most" I ") + " B I ")*1e6"
#define STRENGTH_FORMULAS(J, I)                                                                    \
    {                                                                                              \
        {"sigma_Hlim" I, "allowable stress number (contact)", "Pa", LINE_TEXT("A_H", "B_H", J, I), \
         ISO_6336_5},                                                                              \
            {"sigma_Flim" I, "allowable stress number (bending)", "Pa",                            \
             LINE_TEXT("A_F", "B_F", J, I), ISO_6336_5},                                           \
    }
static const ts_formula formulas[3][2] = {
    STRENGTH_FORMULAS("", ""),
    STRENGTH_FORMULAS("_1", "1"),
    STRENGTH_FORMULAS("_2", "2"),
};

typedef struct line_names {
    const char *A, *B, *hardness, *most;
} line_names;

#define LINE_NAMES(J, I)                                                                           \
    {                                                                                              \
        {"A_H" I, "B_H" I, "hardness" J, "hardness_most" I},                                       \
            {"A_F" I, "B_F" I, "hardness" J, "hardness_most" I},                                   \
    }
static const line_names names[3][2] = {
    LINE_NAMES("", ""),
    LINE_NAMES("_1", "1"),
    LINE_NAMES("_2", "2"),
};

static double strength_on(const line *on, double hardness, int gear, int quantity,
                          ts_workings *workings)
{
    const line_names *name     = &names[gear][quantity];
    const double      stress   = (on->A * fmin(hardness, on->most) + on->B) * 1e6;
    const ts_input    inputs[] = {
           {name->A, on->A}, {name->B, on->B}, {name->hardness, hardness}, {name->most, on->most}};

    ts_workings_row(workings, name->A, on->A, "1", LINE_SOURCE);
    ts_workings_row(workings, name->B, on->B, "1", LINE_SOURCE);
    ts_workings_row(workings, name->most, on->most, "1", LINE_SOURCE);
    return ts_step_list(workings, &formulas[gear][quantity], stress, inputs, 4);
}

bool ts_gear_strength_of(const ts_gear_material *material, double hardness, int gear,
                         ts_gear_strength *strength, ts_workings *workings)
{
    ts_gear_strength found = {.least = -INFINITY, .most = INFINITY, .source = ISO_6336_5};
    line             contact, root;

    if (!(hardness > 0.0) || !isfinite(hardness) || gear < 0 || gear > 2)
        return false;
    if (!find_line(material, 'H', hardness, &contact, &found) ||
        !find_line(material, 'F', hardness, &root, &found))
        return false;
    found.within     = hardness >= found.least && hardness <= found.most;
    found.sigma_Hlim = strength_on(&contact, hardness, gear, 0, workings);
    found.sigma_Flim = strength_on(&root, hardness, gear, 1, workings);
    *strength        = found;
    return true;
}
