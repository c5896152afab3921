/* catalog/agma2003_allowable.c: which line belongs to a bevel gear steel, and what does it say? */
#include "catalog/agma2003_allowable.h"

#include <math.h>
#include <string.h>

#define NUMBERS "ANSI/AGMA 2003-C10, allowable stress numbers (from memory)"
#define PSI     6894.757293168361 /* Pa; 4.4482216152605/0.0254^2 */

typedef struct allowable_row {
    const char *treatment, *grade, *quantity;
    double      A, B, least, most; /* of a flat line: A, least, most NAN */
} allowable_row;

static const allowable_row rows[] = {
#include "agma2003_allowable.inc"
};
#define ROW_COUNT (sizeof rows / sizeof rows[0])

static const char *const treatments[TS_AGMA2003_STEEL_COUNT] = {
    [TS_AGMA2003_THROUGH_HARDENED] = "through-hardened", [TS_AGMA2003_CARBURISED] = "carburised"};

#define LINE_TEXT(Q, I) "(A_" Q I "*HB_" I " + B_" Q I ")*6894.757293168361"
#define LINES(I)                                                                                   \
    {                                                                                              \
        {"sigma_Hlim" I, "allowable contact stress number", "Pa", LINE_TEXT("H", I), NUMBERS},     \
            {"sigma_Flim" I, "allowable bending stress number", "Pa", LINE_TEXT("F", I), NUMBERS}, \
    }
static const ts_formula formulas[2][2] = {LINES("1"), LINES("2")};

typedef struct line_names {
    const char *A, *B, *HB;
} line_names;
static const line_names names[2][2] = {
    {{"A_H1", "B_H1", "HB_1"}, {"A_F1", "B_F1", "HB_1"}},
    {{"A_H2", "B_H2", "HB_2"}, {"A_F2", "B_F2", "HB_2"}},
};

/* Does the number hold for every hardness? */
static bool is_flat(const allowable_row *row)
{
    return isnan(row->least);
}

static const allowable_row *find_row(ts_agma2003_steel steel, int grade, char quantity)
{
    for (size_t i = 0; i < ROW_COUNT; i++)
        if (rows[i].quantity[0] == quantity && rows[i].grade[0] == '0' + grade &&
            strcmp(rows[i].treatment, treatments[steel]) == 0)
            return &rows[i];
    return NULL;
}

static double stress_of(const allowable_row *row, double HB, int gear, int quantity,
                        ts_workings *workings)
{
    const line_names *name = &names[gear][quantity];
    const double      A = row->A, B = row->B;
    const ts_input    inputs[] = {{name->A, A}, {name->HB, HB}, {name->B, B}};

    if (is_flat(row)) {
        ts_workings_row(workings, formulas[gear][quantity].symbol, B * PSI, "Pa", NUMBERS);
        return B * PSI;
    }
    if (!(HB > 0.0 && HB < 1e4))
        return NAN;
    ts_workings_row(workings, name->A, A, "1", NUMBERS);
    ts_workings_row(workings, name->B, B, "1", NUMBERS);
    return ts_step_list(workings, &formulas[gear][quantity], (A * HB + B) * PSI, inputs, 3);
}

static bool within(const allowable_row *row, double HB)
{
    return is_flat(row) || (HB >= row->least && HB <= row->most);
}

ts_agma2003_allowable ts_agma2003_allowable_of(ts_agma2003_steel steel, int grade, double HB,
                                               int gear, ts_workings *workings)
{
    const allowable_row *contact = find_row(steel, grade, 'H'), *root = find_row(steel, grade, 'F');

    if (contact == NULL || root == NULL || gear < 0 || gear > 1)
        return (ts_agma2003_allowable){NAN, NAN, false};
    return (ts_agma2003_allowable){.sigma_Hlim = stress_of(contact, HB, gear, 0, workings),
                                   .sigma_Flim = stress_of(root, HB, gear, 1, workings),
                                   .within     = within(contact, HB) && within(root, HB)};
}

ts_agma2003_allowable ts_agma2003_allowable_of_row(const ts_gear_material *row, double HB, int gear,
                                                   ts_workings *workings)
{
    const bool carburised = row->class == TS_GEAR_CASE_HARDENED;
    const int  grade      = row->grade[1] == 'L' ? 1 : row->grade[1] == 'E' ? 3 : 2;

    if (ts_gear_class_surface_hardened(row->class) && !carburised)
        return (ts_agma2003_allowable){NAN, NAN, false};
    if (carburised)
        return ts_agma2003_allowable_of(TS_AGMA2003_CARBURISED, grade, HB, gear, workings);
    return ts_agma2003_allowable_of(TS_AGMA2003_THROUGH_HARDENED, grade < 2 ? grade : 2, HB, gear,
                                    workings);
}
