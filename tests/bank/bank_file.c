/* bank/bank_file.c: is this file a bank of cases, and how do they fare? */
#include "bank/bank_run.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

typedef struct reader {
    const char *path;
    FILE       *err;
    size_t      number; /* of the case, from 1 */
    const char *id;
} reader;

static bool refuse(const reader *r, const char *what, const char *name)
{
    fprintf(r->err, "%s: case %zu (%s): %s%s%s\n", r->path, r->number,
            r->id == NULL ? "without id" : r->id, what, name[0] == '\0' ? "" : ": ", name);
    return false;
}

static bool check_expected(const reader *r, const char *name, const json_t *field)
{
    const json_t *value   = json_object_get(field, "value");
    const json_t *tol_rel = json_object_get(field, "tol_rel");
    const json_t *tol_abs = json_object_get(field, "tol_abs");

    if (value == NULL)
        return refuse(r, "an expected value needs \"value\"", name);
    if (!json_is_number(tol_rel) || json_number_value(tol_rel) < 0.0)
        return refuse(r, "an expected value needs \"tol_rel\", a number from 0 up", name);
    if (tol_abs != NULL && (!json_is_number(tol_abs) || json_number_value(tol_abs) < 0.0))
        return refuse(r, "\"tol_abs\" must be a number from 0 up", name);
    if (json_object_get(field, "unit") != NULL && !json_is_string(json_object_get(field, "unit")))
        return refuse(r, "\"unit\" must be a string", name);
    return true;
}

static bool check_fields(const reader *r, const json_t *fields, bool expected)
{
    const char *name;
    json_t     *field;

    json_object_foreach((json_t *)fields, name, field)
    {
        if (!json_is_object(field))
            return refuse(r, "a value must be an object with \"value\" and \"unit\"", name);
        if (expected && !check_expected(r, name, field))
            return false;
        if (!expected && json_object_get(field, "value") == NULL)
            return refuse(r, "an input needs \"value\"", name);
    }
    return true;
}

static bool check_case(reader *r, const json_t *entry)
{
    static const char *const words[] = {"id", "binds", "source", "provenance"};

    r->id = json_string_value(json_object_get(entry, "id"));
    if (!json_is_object(entry))
        return refuse(r, "a case must be an object", "");
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++)
        if (!json_is_string(json_object_get(entry, words[i])))
            return refuse(r, "a case needs this as a string", words[i]);
    if (!json_is_object(json_object_get(entry, "inputs")))
        return refuse(r, "a case needs this as an object", "inputs");
    if (!json_is_object(json_object_get(entry, "expected")) ||
        json_object_size(json_object_get(entry, "expected")) == 0)
        return refuse(r, "a case needs this as an object with a value", "expected");
    return check_fields(r, json_object_get(entry, "inputs"), false) &&
           check_fields(r, json_object_get(entry, "expected"), true);
}

static void run_cases(const json_t *cases, FILE *out, ts_bank_count *count)
{
    for (size_t i = 0; i < json_array_size(cases); i++) {
        const json_t         *entry      = json_array_get(cases, i);
        const ts_bank_verdict verdict    = ts_bank_run_case(entry, out);
        const char           *provenance = json_string_value(json_object_get(entry, "provenance"));

        if (strcmp(provenance, "memory") == 0)
            count->memory[verdict]++;
        else
            count->published[verdict]++;
    }
}

bool ts_bank_run_file(const char *path, FILE *out, FILE *err, ts_bank_count *count)
{
    json_error_t fault;
    FILE        *file = fopen(path, "rb");

    if (file == NULL) {
        fprintf(err, "%s: %s\n", path, strerror(errno));
        return false;
    }
    json_t *bank = json_loadf(file, JSON_REJECT_DUPLICATES, &fault);
    fclose(file);
    if (bank == NULL) {
        fprintf(err, "%s:%d:%d: %s\n", path, fault.line, fault.column, fault.text);
        return false;
    }
    const json_t *cases = json_object_get(bank, "cases");
    reader        r     = {.path = path, .err = err};
    bool          sound = json_is_array(cases);

    if (!sound)
        fprintf(err, "%s: expected an object with a list \"cases\"\n", path);
    for (size_t i = 0; sound && i < json_array_size(cases); i++) {
        r.number = i + 1;
        sound    = check_case(&r, json_array_get(cases, i));
    }
    if (sound)
        run_cases(cases, out, count);
    json_decref(bank);
    return sound;
}
