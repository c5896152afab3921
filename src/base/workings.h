/* base/workings.h: a shown number is the computed number.
 *
 * Every formula stands once: symbol, text and source beside the code that computes it.  The step
 * notes its inputs when a recorder is given and costs next to nothing when it is NULL.  In checked
 * builds (TS_CHECKED) the text itself is parsed and evaluated on the inputs named in the step,
 * whether or not a recorder is given, and a difference above 1e-12 relative aborts.
 *
 *   static const ts_formula F_t_formula = {
 *       .symbol = "F_t", .meaning = "tangential force at the reference circle", .unit = "N",
 *       .text = "2*T/d", .source = "ISO 6336-1:2019, clause 5",
 *   };
 *   const double F_t = TS_STEP(workings, F_t_formula, 2.0 * T / d, T, d);
 *
 * The inputs are plain variables whose names are the symbols of the text: no members, no elements,
 * no expressions, for a text cannot name those.  Every input passed must be used by the text, and
 * every symbol of the text must be passed.  Angles are in radians.
 * Text grammar (base/formula.h): + - * / ^ ( ) numbers, pi, sqrt sin cos tan asin acos atan atan2
 * inv exp ln abs min max; inv(x) = tan(x) - x; -2^2 is -4 and 2^3^2 is 2^9; sum(P) adds every input
 * that is called P in this step, sum(n*t) every product of the first, second ... n and t (see
 * ts_step_list); a symbol that ends in p or s is a prime or a star (words of the standards).
 *
 * Agreement: |text - result| <= 1e-12 |result| + 4 E, where E bounds, to first order, what rounding
 * to double may do to the text on these inputs (base/formula.h, ts_rounded).  E matters only where
 * terms cancel: there two honest orders of adding differ by more than 1e-12 of the small rest.  A
 * NaN agrees with nothing; an infinity with itself.
 *
 * Where an input came from is found by name and value: see ts_origin.  Names, units, sources and
 * formulas are kept as pointers, not copied: they must live as long as the workings.  Inputs are
 * copied.
 */
#ifndef TS_BASE_WORKINGS_H
#define TS_BASE_WORKINGS_H

#include "base/arena.h"
#include "base/buffer.h"
#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct ts_formula {
    const char *symbol;  /* the standard's symbol in ASCII: "sigma_H"                     */
    const char *meaning; /* "contact stress"                                              */
    const char *unit;    /* the SI unit it is computed in, as in data/unit.tsv; "1": none */
    const char *text;    /* the right-hand side                                           */
    const char *source;  /* standard and clause, or "common practice, no source", ...       */
} ts_formula;

/* What a value is about: an object of the drive (its node in the file, 0: the whole drive) and a
 * condition (its index, TS_EVERY_CONDITION: it does not vary). */
typedef struct ts_subject {
    uint32_t object;
    int32_t  condition;
} ts_subject;
#define TS_EVERY_CONDITION (-1)

typedef struct ts_input {
    const char *name;
    double      value;
} ts_input;

typedef enum ts_note_kind {
    TS_NOTE_STEP,     /* a formula was computed                                              */
    TS_NOTE_GIVEN,    /* the value stands in the file, at `node`                             */
    TS_NOTE_ASSUMED,  /* the file does not say; `source` says what is assumed and why        */
    TS_NOTE_ROW,      /* read from a table: `source` names table, row and source             */
    TS_NOTE_SEARCHED, /* found by iteration: `formula` is the equation solved, `residual`    */
    TS_NOTE_BORROWED  /* the value called `symbol` here is `lender_symbol` of another subject */
} ts_note_kind;

typedef struct ts_note {
    ts_note_kind      kind;
    ts_subject        subject;
    const char       *symbol;
    double            value;
    const ts_formula *formula; /* STEP, SEARCHED                          */
    const ts_input   *inputs;  /* STEP, SEARCHED: input_count of them     */
    uint32_t          input_count;
    uint32_t          node;          /* GIVEN: where in the file; else 0  */
    const char       *unit;          /* GIVEN, ASSUMED, ROW: SI unit name */
    const char       *source;        /* ASSUMED, ROW                      */
    double            residual;      /* SEARCHED                          */
    ts_subject        lender;        /* BORROWED                          */
    const char       *lender_symbol; /* BORROWED                          */
} ts_note;

typedef struct ts_workings ts_workings;

/* A recorder that keeps its notes in `arena`; NULL without memory.  Notes that do not fit are
 * dropped and ts_workings_complete turns false. */
ts_workings *ts_workings_open(ts_arena *arena);
bool         ts_workings_complete(const ts_workings *workings);

/* The unit of a note that is a difference of temperatures, not a temperature; shown as K. */
#define TS_UNIT_DIFFERENCE "K apart"

/* All notes from here on are about this subject.  Does nothing when workings is NULL; so do all
 * the calls below. */
void ts_workings_about(ts_workings *workings, uint32_t object, int32_t condition);

void ts_workings_given(ts_workings *workings, const char *symbol, double value, const char *unit,
                       uint32_t node);
void ts_workings_assumed(ts_workings *workings, const char *symbol, double value, const char *unit,
                         const char *why);
void ts_workings_row(ts_workings *workings, const char *symbol, double value, const char *unit,
                     const char *table_row_source);
/* From here on `symbol` of the current subject means `lender_symbol` of `lender`. */
void ts_workings_borrow(ts_workings *workings, const char *symbol, double value, ts_subject lender,
                        const char *lender_symbol);

size_t         ts_workings_count(const ts_workings *workings);
const ts_note *ts_workings_at(const ts_workings *workings, size_t index);

/* The note that gives `value` to `name` inside note number `index`: the latest earlier note of the
 * same subject with that symbol and a bit-equal value; else of the same object in every condition;
 * else of the whole drive.  A BORROWED note is followed to its lender (whose note may also come
 * later).  Returns the note's index or SIZE_MAX when the input has no origin.  The first question
 * after a note builds an index in the arena; without memory for it the notes are searched. */
size_t ts_origin(const ts_workings *workings, size_t index, const char *name, double value);

/* The latest note about a subject with that symbol, or SIZE_MAX. */
size_t ts_workings_find(const ts_workings *workings, ts_subject subject, const char *symbol);

/* Where a BORROWED note leads: its lender's note, through any further lenders.  SIZE_MAX when the
 * lender never notes that value, when borrowing runs in a circle, or for any other kind of note. */
size_t ts_borrow_origin(const ts_workings *workings, size_t index);

/* Behind TS_STEP and ts_step_list.  Prove aborts when the text disagrees. */
__attribute__((cold)) void ts_step_note(ts_workings *workings, const ts_formula *formula,
                                        double result, const ts_input *inputs, size_t count);
void ts_step_prove(const ts_formula *formula, double result, const ts_input *inputs, size_t count);

/* Does the text disagree with the code, or leave out or add an input?  The reason is appended to
 * `says` when that is not NULL.  For the tests that show that a slip is caught. */
bool ts_formula_disagrees(const ts_formula *formula, double result, const ts_input *inputs,
                          size_t count, ts_buffer *says);

/* A value found by iteration.  `equation->symbol` is the unknown, `equation->text` is what vanishes
 * at the solution, `residual` its value there, and the inputs are all symbols of the text, the
 * unknown among them.  Checked builds prove the residual. */
void ts_search_note(ts_workings *workings, const ts_formula *equation, double found,
                    double residual, const ts_input *inputs, size_t count);

#define TS_STEP_IS_NOTED(workings) __builtin_expect((workings) != NULL, 0)

/* A step whose inputs stand in an array (sums over a varying number of parts; at least one part,
 * for a sum of nothing is a different formula).  The array may be NULL where nothing is noted. */
static inline double ts_step_list(ts_workings *workings, const ts_formula *formula, double result,
                                  const ts_input *inputs, size_t count)
{
#ifdef TS_CHECKED
    ts_step_prove(formula, result, inputs, count);
#endif
    if (TS_STEP_IS_NOTED(workings))
        ts_step_note(workings, formula, result, inputs, count);
    return result;
}

/* TS_STEP(workings, formula, result, a, b, ...): up to 16 inputs; expands each to {"a", a}. */
#include "base/workings_step.h"

/* ---- formula text ------------------------------------------------------------------------- */

/* Evaluates a formula text.  Returns false and sets *fault to a static sentence and *at to the
 * byte when it cannot be parsed or names an input that is not given. */
bool ts_formula_evaluate(const char *text, const ts_input *inputs, size_t count, double *value,
                         const char **fault, size_t *at);

#endif
