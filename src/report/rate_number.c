/* Which notes are results, and in which units are they told? */
#include "report/rate_report.h"

#include <math.h>
#include <string.h>

/* Units of formulas that no file may use, so that data/unit.tsv has no row for them. */
typedef struct composed_unit {
    const char *si;
    const char *shown[2]; /* by ts_units */
    double      factor[2];
} composed_unit;

#define LBF  4.4482216152605 /* N: 0.45359237 * 9.80665, exact */
#define INCH 0.0254          /* m, exact */

/* sqrt(psi) is (LBF/INCH^2)^(1/2) sqrt(Pa), about 83.03. */

static const composed_unit composed[] = {
    {"N/m", {"N/mm", "lbf/in"}, {1e-3, INCH / LBF}},
    {"sqrt(Pa)", {"sqrt(MPa)", "sqrt(psi)"}, {1e-3, 0.012043161450807227}},
};

static const ts_unit *unit_of(const ts_note *note)
{
    const char *name = note->formula != NULL ? note->formula->unit : note->unit;
    return ts_unit_named_any(ts_text_of(name));
}

static const char *unit_name(const ts_note *note)
{
    const char *name = note->formula != NULL ? note->formula->unit : note->unit;
    return name != NULL ? name : "1";
}

/* Of a flash temperature, which is counted from the bulk, not from a zero of its own. */
static bool is_difference(const ts_note *note)
{
    return strcmp(unit_name(note), TS_UNIT_DIFFERENCE) == 0;
}

/* Lives are spoken of in hours. */
#define LONG_TIME 3600.0 /* s */

/* Deviations read better in um. */
#define FINE_LENGTH 1e-4

ts_rated_number ts_rated_number_of(const ts_note *note, ts_units units, bool fine)
{
    const char *name = unit_name(note);
    for (size_t i = 0; i < sizeof composed / sizeof composed[0]; i++) {
        const double factor = composed[i].factor[units];
        if (strcmp(composed[i].si, name) == 0)
            return (ts_rated_number){note->value * factor, composed[i].shown[units], factor, NULL};
    }
    if (is_difference(note))
        return (ts_rated_number){note->value, "K", 1.0, NULL};
    const ts_unit *si = unit_of(note);
    if (si == NULL || si != ts_kind_si(si->kind))
        return (ts_rated_number){note->value, name, 1.0, NULL};
    const bool small = fine && si->kind == TS_KIND_LENGTH && units == TS_UNITS_METRIC &&
                       fabs(note->value) < FINE_LENGTH && fabs(note->value) > 0.0;
    const ts_unit *shown =
        small ? ts_unit_named(TS_TEXT("um"), TS_KIND_LENGTH) : ts_kind_shown(si->kind, units);
    if (fine && si->kind == TS_KIND_TIME && fabs(note->value) >= LONG_TIME)
        shown = ts_unit_named(TS_TEXT("h"), TS_KIND_TIME);
    return (ts_rated_number){ts_from_si(note->value, shown), shown->name, 1.0, shown};
}

/* Of a value that was computed again, the last is the one that its address finds. */
static bool is_last(const ts_workings *workings, size_t index)
{
    const ts_note *note = ts_workings_at(workings, index);
    return ts_workings_find(workings, note->subject, note->symbol) == index;
}

bool ts_rated_is_result(const ts_workings *workings, const ts_rated_section *section, size_t index)
{
    const ts_note *note = ts_workings_at(workings, index);
    const bool     told =
        note->kind == TS_NOTE_STEP || note->kind == TS_NOTE_SEARCHED || note->kind == TS_NOTE_ROW;
    return told && note->subject.condition == section->condition && is_last(workings, index);
}

bool ts_rated_is_asked(const ts_rated_section *section, const char *symbol)
{
    if (section->asked == NULL)
        return true;
    for (size_t i = 0; section->asked[i] != NULL; i++) {
        if (strcmp(section->asked[i], symbol) == 0)
            return true;
    }
    return false;
}

bool ts_rated_is_input(const ts_workings *workings, const ts_rated_element *element, size_t index,
                       ts_note_kind kind)
{
    const ts_note *note = ts_workings_at(workings, index);
    return note->kind == kind && note->subject.object == element->node && is_last(workings, index);
}

/* A row of a table says its source, and its symbol what it is. */
static const char *const row_meanings[][2] = {
    {"hardness", "hardness of the flank, HV (normalised steel: HBW)"},
    {"hardness_HRC", "the same, HRC"},
    {"core_HRC", "hardness of the core, HRC"},
    {"E", "modulus of elasticity"},
    {"nu", "Poisson's ratio"},
    {"rho", "density"},
    {"sigma_y", "yield stress"},
    {"A_v", "transmission accuracy, rounded up"},
    {"f_eps", "load sharing factor (bending)"},
    {"Y_DT", "deep tooth factor"},
    {"Z_W1", "work hardening (AGMA: hardness ratio) factor of gear 1"},
    {"Z_W2", "work hardening (AGMA: hardness ratio) factor of gear 2"},
    {"Y_RrelT1", "relative surface factor of gear 1"},
    {"Y_RrelT2", "relative surface factor of gear 2"},
    {"Y_B1", "rim factor (bending) of gear 1"},
    {"Y_B2", "rim factor (bending) of gear 2"},
    {"theta_flm", "flash temperature, mean over the path of contact"},
    {"K_B1", "rim thickness factor of gear 1"},
    {"K_B2", "rim thickness factor of gear 2"},
    {"lambda_GFmin", "least specific film along the path of contact"},
    {"lambda_GFT", "least specific film of the test gears"},
    {"reserve", "the least of S_H/S_Hmin and S_F/S_Fmin, less 1, rated anew"},
    {"U_H1", "damage of the spectrum, pitting of gear 1"},
    {"U_H2", "damage of the spectrum, pitting of gear 2"},
    {"U_F1", "damage of the spectrum, breakage of gear 1"},
    {"U_F2", "damage of the spectrum, breakage of gear 2"},
    {"U_SH1", "the same with all stresses times S_H1"},
    {"U_SH2", "the same with all stresses times S_H2"},
    {"U_SF1", "the same with all stresses times S_F1"},
    {"U_SF2", "the same with all stresses times S_F2"},
    {"U_wH1", "the same with all stresses times the safety wanted (pitting of gear 1)"},
    {"U_wH2", "the same with all stresses times the safety wanted (pitting of gear 2)"},
    {"U_wF1", "the same with all stresses times the safety wanted (breakage of gear 1)"},
    {"U_wF2", "the same with all stresses times the safety wanted (breakage of gear 2)"},
    {"N_LH1", "cycles of gear 1 at which its limit stress is used up (contact)"},
    {"N_LH2", "cycles of gear 2 at which its limit stress is used up (contact)"},
    {"N_LF1", "cycles of gear 1 at which its limit stress is used up (bending)"},
    {"N_LF2", "cycles of gear 2 at which its limit stress is used up (bending)"},
};

const char *ts_rated_meaning(const ts_note *note)
{
    if (note->formula != NULL && note->formula->meaning != NULL)
        return note->formula->meaning;
    for (size_t i = 0; i < sizeof row_meanings / sizeof row_meanings[0]; i++) {
        if (strcmp(row_meanings[i][0], note->symbol) == 0)
            return row_meanings[i][1];
    }
    return "from a table";
}

const char *ts_rated_source(const ts_note *note)
{
    const char *source = note->formula != NULL ? note->formula->source : note->source;
    return source != NULL ? source : "no source";
}

static void plural(ts_buffer *out, size_t count, const char *one, const char *many)
{
    ts_buffer_print(out, "%zu %s", count, count == 1 ? one : many);
}

void ts_rated_verdict(const ts_rated *rated, ts_buffer *out)
{
    static const char *const words[2][3] = {
        {"The element holds: ", "The element does not hold: ", "The element is not computable: "},
        {"The elements hold: ", "Not every element holds: ", "Not every element is computable: "}};
    const ts_check_outcome *outcome = &rated->outcome;
    ts_buffer_add(out, words[rated->element_count == 1 ? 0 : 1][outcome->verdict]);
    plural(out, outcome->open[TS_REFUSE], "refusal", "refusals");
    ts_buffer_add(out, ", ");
    plural(out, outcome->open[TS_WARN], "warning", "warnings");
    ts_buffer_add(out, ", ");
    plural(out, outcome->open[TS_NOTE], "note", "notes");
    ts_buffer_print(out, "; %zu not computable. ", outcome->not_computable);
    plural(out, rated->element_count, "element", "elements");
    ts_buffer_add(out, ", ");
    plural(out, outcome->judgement_count, "judgement", "judgements");
    ts_buffer_print(out, ", %zu passed.", outcome->passed);
}
