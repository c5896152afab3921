/* bank/bank_run.c: does the program compute what was published, and does every input matter? */
#include "bank/bank_run.h"

#include "base/number.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* The linker sets these around the section that TS_BINDINGS fills. */
extern const ts_binding_table *const __start_ts_bindings[];
extern const ts_binding_table *const __stop_ts_bindings[];

static const ts_binding *next_named(const char *binds, const ts_binding *after)
{
    bool passed = after == NULL;

    for (const ts_binding_table *const *table = __start_ts_bindings; table < __stop_ts_bindings;
         table++) {
        for (size_t i = 0; i < (*table)->count; i++) {
            const ts_binding *binding = &(*table)->first[i];

            if (passed && strcmp(binding->binds, binds) == 0)
                return binding;
            passed = passed || binding == after;
        }
    }
    return NULL;
}

const ts_binding *ts_binding_named(const char *binds)
{
    return next_named(binds, NULL);
}

const char *ts_binding_twice(void)
{
    for (const ts_binding_table *const *table = __start_ts_bindings; table < __stop_ts_bindings;
         table++)
        for (size_t i = 0; i < (*table)->count; i++)
            if (next_named((*table)->first[i].binds, &(*table)->first[i]) != NULL)
                return (*table)->first[i].binds;
    return NULL;
}

/* ---- comparing ------------------------------------------------------------------------------- */

/* rel is of the printed value, or of 1 in its unit where 0 is printed; abs is in its unit.  The
 * wider of the two holds: a source that prints two decimals is no nearer than that. */
typedef struct tolerance {
    double rel, abs;
} tolerance;

static tolerance tolerance_of(const json_t *field)
{
    return (tolerance){json_number_value(json_object_get(field, "tol_rel")),
                       json_number_value(json_object_get(field, "tol_abs"))};
}

static bool number_agrees(double computed, double printed, tolerance tol)
{
    const double scale = printed < 0.0 || printed > 0.0 ? fabs(printed) : 1.0;

    return fabs(computed - printed) <= fmax(tol.rel * scale, tol.abs);
}

static bool value_agrees(const json_t *computed, const json_t *printed, tolerance tol)
{
    if (json_is_number(printed))
        return json_is_number(computed) &&
               number_agrees(json_number_value(computed), json_number_value(printed), tol);
    if (json_is_string(printed))
        return json_is_string(computed) && json_equal(computed, printed);
    if (!json_is_array(printed) || json_array_size(computed) != json_array_size(printed))
        return false;
    for (size_t i = 0; i < json_array_size(printed); i++)
        if (!value_agrees(json_array_get(computed, i), json_array_get(printed, i), tol))
            return false;
    return true;
}

/* Rounding of a factor that cancels is no movement. */
static bool value_moved(const json_t *before, const json_t *after)
{
    return !value_agrees(after, before, (tolerance){.rel = 1e-10}) &&
           !(json_is_null(before) && json_is_null(after));
}

/* ---- printing -------------------------------------------------------------------------------- */

static void print_value(FILE *out, const json_t *value)
{
    char text[TS_NUMBER_ROOM];

    if (json_is_array(value)) {
        fputc('[', out);
        for (size_t i = 0; i < json_array_size(value); i++) {
            fputs(i == 0 ? "" : ", ", out);
            print_value(out, json_array_get(value, i));
        }
        fputc(']', out);
    } else if (json_is_number(value)) {
        ts_number_print(text, json_number_value(value));
        fputs(text, out);
    } else {
        fputs(json_is_string(value) ? json_string_value(value) : "no number", out);
    }
}

static const char *text_of(const json_t *entry, const char *key)
{
    const char *text = json_string_value(json_object_get(entry, key));

    return text == NULL ? "" : text;
}

static void print_difference(FILE *out, const char *name, const json_t *field,
                             const json_t *computed)
{
    const json_t   *printed = json_object_get(field, "value");
    const tolerance tol     = tolerance_of(field);
    char            text[TS_NUMBER_ROOM];

    fprintf(out, "             %s: ", name);
    print_value(out, computed);
    fputs(" computed, ", out);
    print_value(out, printed);
    fprintf(out, " %s published", text_of(field, "unit"));
    ts_number_print(text, tol.abs > 0.0 ? tol.abs : tol.rel);
    fprintf(out, ", tolerance %s%s", text, tol.abs > 0.0 ? " in that unit" : "");
    if (json_is_number(printed) && json_is_number(computed)) {
        const double off = json_number_value(computed) / json_number_value(printed) - 1.0;

        if (isfinite(off))
            fprintf(out, ", off by %.2g", off);
    }
    fputc('\n', out);
}

static const char *const verdict_word[TS_BANK_VERDICTS] = {
    [TS_BANK_AGREES]      = "agrees",
    [TS_BANK_DIFFERS]     = "differs",
    [TS_BANK_KNOWN]       = "differs",
    [TS_BANK_NOT_COVERED] = "not covered",
};

static void print_case(FILE *out, const json_t *entry, ts_bank_verdict verdict, const char *why)
{
    fprintf(out, "%-11s  %s", verdict_word[verdict], text_of(entry, "id"));
    if (why[0] != '\0')
        fprintf(out, " (%s)", why);
    fprintf(out, "  [%s: %s]\n", text_of(entry, "provenance"), text_of(entry, "source"));
}

/* ---- running --------------------------------------------------------------------------------- */

static bool compute(const ts_binding *binding, ts_case *c)
{
    c->trouble[0] = '\0';
    c->computed   = json_object();
    if (c->computed == NULL)
        return false;
    if (setjmp(c->spoiled) == 0)
        binding->compute(c);
    return !c->no_memory;
}

static json_t *nudged_number(const json_t *value, ts_reading reading)
{
    const double number = json_number_value(value);

    if (reading == TS_READ_WHOLE)
        return json_integer((json_int_t)number + 1);
    if (reading == TS_READ_SIGN)
        return json_real(-number);
    return json_real(number < 0.0 || number > 0.0 ? number * 1.01 : 0.01);
}

/* Every number in `value`; in a list of rows only the column `column`, where a whole number (as the
 * file has it) is nudged as one. */
static void nudge_inside(json_t *holder, json_t *value, ts_reading reading, size_t column)
{
    size_t      index;
    const char *key;
    json_t     *part;

    json_array_foreach(value, index, part)
    {
        json_t *cell = json_array_get(part, column);

        if (json_is_number(part))
            json_array_set_new(value, index, nudged_number(part, reading));
        else if (json_is_number(cell))
            json_array_set_new(
                part, column,
                nudged_number(cell, json_is_integer(cell) ? TS_READ_WHOLE : TS_READ_REAL));
    }
    if (json_is_object(value)) {
        json_object_foreach(value, key, part)
        {
            if (json_is_number(part))
                json_object_set_new(value, key, nudged_number(part, reading));
        }
    }
    if (json_is_number(value))
        json_object_set_new(holder, "value", nudged_number(value, reading));
}

static bool anything_moved(const json_t *expected, const json_t *before, const json_t *after)
{
    const char *name;
    json_t     *field;

    json_object_foreach((json_t *)expected, name, field)
    {
        if (value_moved(json_object_get(before, name), json_object_get(after, name)))
            return true;
    }
    return false;
}

/* Does some expected value move when this input (this column of it) is nudged? */
static bool matters(const ts_binding *binding, const ts_case *base, const char *name, size_t column)
{
    const json_int_t reading = json_integer_value(json_object_get(base->readings, name));
    json_t          *inputs  = json_deep_copy(base->printed);
    json_t          *field   = json_object_get(inputs, name);
    ts_case nudged = {.printed = base->printed, .inputs = inputs, .expected = base->expected};

    nudge_inside(field, json_object_get(field, "value"), (ts_reading)reading, column);
    const bool moved = compute(binding, &nudged) &&
                       anything_moved(base->expected, base->computed, nudged.computed);
    json_decref(nudged.computed);
    json_decref(inputs);
    return moved;
}

/* How many columns the rows of a list have; 1 for everything else. */
static size_t columns_of(const json_t *value)
{
    const size_t columns = json_array_size(json_array_get(value, 0));

    return columns == 0 ? 1 : columns;
}

static bool holds_numbers(const json_t *value)
{
    const char *key;
    json_t     *part;

    if (json_is_array(value))
        return holds_numbers(json_array_get(value, 0));
    json_object_foreach((json_t *)value, key, part)
    {
        if (json_is_number(part))
            return true;
    }
    return json_is_number(value);
}

static void report_idle_inputs(const ts_binding *binding, const ts_case *base, FILE *out)
{
    const char *name;
    json_t     *field;

    json_object_foreach((json_t *)base->printed, name, field)
    {
        const json_t *value   = json_object_get(field, "value");
        const size_t  columns = columns_of(value);

        if (!holds_numbers(value))
            continue;
        for (size_t column = 0; column < columns; column++) {
            if (matters(binding, base, name, column))
                continue;
            fprintf(out, "             input %s", name);
            if (columns > 1)
                fprintf(out, ", column %zu,", column + 1);
            fputs(" moves no expected value when it is nudged\n", out);
        }
    }
}

/* What is expected and was not computed, as a list of names. */
static size_t list_uncovered(const ts_case *c, char *why, size_t room)
{
    const char *name;
    json_t     *field;
    size_t      missing = 0, length = 0;

    why[0] = '\0';
    json_object_foreach((json_t *)c->expected, name, field)
    {
        if (json_object_get(c->computed, name) != NULL)
            continue;
        missing++;
        if (length + strlen(name) + 3 < room)
            length += (size_t)snprintf(why + length, room - length, "%s%s",
                                       missing == 1 ? "" : ", ", name);
    }
    return missing;
}

static ts_bank_verdict judge(const json_t *entry, const ts_case *c, char *why, size_t room)
{
    const json_t *agreed = json_object_get(entry, "agrees");
    const char   *name;
    json_t       *field;
    bool          same = true;
    /* Is every difference one that the binding gave its reason for? */
    bool        argued  = strcmp(text_of(entry, "provenance"), "read") != 0;
    const char *dissent = NULL;
    char        uncovered[160];

    if (c->trouble[0] != '\0') {
        snprintf(why, room, "%s", c->trouble);
        return TS_BANK_NOT_COVERED;
    }
    if (list_uncovered(c, uncovered, sizeof uncovered) > 0) {
        snprintf(why, room, "nothing computes %s", uncovered);
        return TS_BANK_NOT_COVERED;
    }
    json_object_foreach((json_t *)c->expected, name, field)
    {
        const json_t *printed  = json_object_get(field, "value");
        const json_t *computed = json_object_get(c->computed, name);

        if (value_agrees(computed, printed, tolerance_of(field)))
            continue;
        same    = false;
        dissent = argued ? json_string_value(json_object_get(c->dissents, name)) : NULL;
        argued  = dissent != NULL;
    }
    if (!same && argued) {
        snprintf(why, room, "known: %.300s", dissent);
        return TS_BANK_KNOWN;
    }
    if (!json_is_false(agreed))
        return same ? TS_BANK_AGREES : TS_BANK_DIFFERS;
    if (same) {
        snprintf(why, room, "as printed, but the bank's own recomputation is not");
        return TS_BANK_DIFFERS;
    }
    snprintf(why, room, "known: %.300s", text_of(entry, "notes"));
    return TS_BANK_KNOWN;
}

static void print_differences(const ts_case *c, FILE *out)
{
    const char *name;
    json_t     *field;

    json_object_foreach((json_t *)c->expected, name, field)
    {
        const json_t *computed = json_object_get(c->computed, name);

        if (!value_agrees(computed, json_object_get(field, "value"), tolerance_of(field)))
            print_difference(out, name, field, computed);
    }
}

static ts_bank_verdict run_bound(const json_t *entry, const ts_binding *binding, FILE *out)
{
    ts_case c = {
        .printed  = json_object_get(entry, "inputs"),
        .inputs   = json_object_get(entry, "inputs"),
        .expected = json_object_get(entry, "expected"),
        .readings = json_object(),
        .dissents = json_object(),
    };
    char            why[400] = "";
    ts_bank_verdict verdict  = TS_BANK_NOT_COVERED;

    if (c.readings == NULL || c.dissents == NULL || !compute(binding, &c))
        snprintf(why, sizeof why, "no memory");
    else
        verdict = judge(entry, &c, why, sizeof why);
    print_case(out, entry, verdict, why);
    if (verdict == TS_BANK_DIFFERS || verdict == TS_BANK_KNOWN)
        print_differences(&c, out);
    /* Of a case that differs nothing is known, least of all what moves it. */
    if (verdict == TS_BANK_AGREES || verdict == TS_BANK_KNOWN)
        report_idle_inputs(binding, &c, out);
    json_decref(c.computed);
    json_decref(c.readings);
    json_decref(c.dissents);
    return verdict;
}

ts_bank_verdict ts_bank_run_case(const json_t *entry, FILE *out)
{
    const char       *binds   = text_of(entry, "binds");
    const ts_binding *binding = ts_binding_named(binds);
    char              why[200];

    if (binding != NULL)
        return run_bound(entry, binding, out);
    snprintf(why, sizeof why, "nothing is bound to %.150s", binds);
    print_case(out, entry, TS_BANK_NOT_COVERED, why);
    return TS_BANK_NOT_COVERED;
}
