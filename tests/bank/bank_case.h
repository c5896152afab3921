/* bank/bank_case.h: one published case, as a binding sees it.
 *
 * A binding turns the inputs of a case into SI, calls the functions of the program, and hands back
 * what they computed.  It knows no formula of its own beyond the naming of symbols.
 *
 *   static void span_W(ts_case *c)
 *   {
 *       const double m_n = ts_case_given(c, "m_n", TS_KIND_LENGTH);
 *       ...
 *       ts_case_computed(c, "W", ts_span_width(&frame, &gear, k, NULL), TS_KIND_LENGTH);
 *   }
 *   static const ts_binding bindings[] = {{"span_W", span_W}};
 *   TS_BINDINGS(bindings);
 *
 * A file bind_<topic>.c beside this one is found by the build; there is no list of bindings.
 */
#ifndef TS_BANK_CASE_H
#define TS_BANK_CASE_H

#include "quantity/quantity.h"

#include <stdbool.h>
#include <stddef.h>

typedef struct ts_case ts_case;

typedef struct ts_binding {
    const char *binds; /* as in the case */
    void (*compute)(ts_case *c);
} ts_binding;

typedef struct ts_binding_table {
    const ts_binding *first;
    size_t            count;
} ts_binding_table;

/* Puts the file's table where the runner finds it: in an own section of the program, which the
 * linker fills from every file. */
#define TS_BINDINGS(t)                                                                             \
    static const ts_binding_table        bound_here = {(t), sizeof(t) / sizeof((t)[0])};           \
    static const ts_binding_table *const bound_at __attribute__((used, section("ts_bindings"))) =  \
        &bound_here

/* ---- inputs: in SI.  A missing or unfit one spoils the case, and NaN or 0 comes back ----------
 */

double ts_case_given(ts_case *c, const char *name, ts_kind kind);
/* The same, or `otherwise` (SI) when the case has no such input. */
double ts_case_given_or(ts_case *c, const char *name, ts_kind kind, double otherwise);
/* A size given as its reciprocal, such as a diametral pitch in 1/in: returns 1/m. */
double ts_case_per(ts_case *c, const char *name, ts_kind kind);
int    ts_case_whole(ts_case *c, const char *name);
/* +1 or -1 by the sign of the input; its nudge turns it round. */
int         ts_case_sign(ts_case *c, const char *name);
const char *ts_case_word(ts_case *c, const char *name);
bool        ts_case_gives(const ts_case *c, const char *name);

size_t ts_case_length(ts_case *c, const char *name); /* of a list input */
double ts_case_given_at(ts_case *c, const char *name, size_t index, ts_kind kind);
int    ts_case_whole_at(ts_case *c, const char *name, size_t index);
/* A number in a list of rows, unit as the binding knows it. */
double ts_case_cell(ts_case *c, const char *name, size_t row, size_t column);
/* A member of an input that is an object; all members share its unit. */
size_t      ts_case_member_count(ts_case *c, const char *name);
const char *ts_case_member_name(ts_case *c, const char *name, size_t index);
double      ts_case_member(ts_case *c, const char *name, const char *member, ts_kind kind);
/* An element as it is printed, never nudged, in its shortest form: "14.5"; for names of results. */
const char *ts_case_printed_at(ts_case *c, const char *name, size_t index);
/* The same of a whole number in a list of rows. */
int ts_case_printed_cell(ts_case *c, const char *name, size_t row, size_t column);

/* ---- results: in SI; names that the case does not expect are passed over -----------------------
 */

bool ts_case_expects(const ts_case *c, const char *name);
bool ts_case_expects_in(const ts_case *c, const char *name, const char *unit);
void ts_case_computed(ts_case *c, const char *name, double si, ts_kind kind);
/* The same with the name composed, "M_%s" and the like. */
void ts_case_computed_as(ts_case *c, double si, ts_kind kind, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
/* A whole number or a flag, as it is. */
void ts_case_counted(ts_case *c, const char *name, double count);
/* Adds one element to a list result. */
void ts_case_listed(ts_case *c, const char *name, double si, ts_kind kind);
void ts_case_listed_word(ts_case *c, const char *name, const char *word);

/* The program computes `name` otherwise than the case, on purpose.  `why`, a static sentence
 * without a full stop, is printed; if nothing else differs, the case counts as one whose difference
 * is known.  What was read in print is not argued with. */
void ts_case_dissents(ts_case *c, const char *name, const char *why);

/* The inputs cannot be computed with: leaves the binding, and the case is not covered. */
_Noreturn void ts_case_spoil(ts_case *c, const char *why, const char *what);

#endif
