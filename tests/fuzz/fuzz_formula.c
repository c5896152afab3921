/* Can a formula text break its reader, its evaluator or its typesetter?
 *
 * The first byte chooses how many inputs are given, the rest is the text.  What is read twice must
 * give the same; a text that is refused must say where; what is shown must be UTF-8.
 */
#include "base/formula.h"
#include "base/formula_typeset.h"
#include "base/text.h"

#include <stdlib.h>
#include <string.h>

static const ts_input shelf[] = {{"a", 3.0},  {"b", -0.5}, {"x_1", 1e-9}, {"P", 1.0},
                                 {"P", -2.0}, {"n", 1e12}, {"n", 0.0},    {"alpha_wt", 0.38}};

static void require(int condition)
{
    if (!condition)
        abort();
}

static void evaluate(const char *text, size_t count)
{
    double      value[2] = {0.0, 0.0};
    const char *fault    = NULL;
    size_t      at       = 0;
    const bool  fine     = ts_formula_evaluate(text, shelf, count, &value[0], &fault, &at);
    require(fine == (fault == NULL));
    require(fine || at <= strlen(text));
    require(fine == ts_formula_evaluate(text, shelf, count, &value[1], &fault, &at));
    require(memcmp(&value[0], &value[1], sizeof value[0]) == 0);
}

static void prove(const char *text, size_t count)
{
    const ts_formula formula = {"y", "anything", "1", text, "derived: nothing"};
    ts_buffer        says;
    ts_buffer_open(&says, NULL);
    require(ts_formula_disagrees(&formula, 0.123456789, shelf, count, &says) ==
            ts_formula_disagrees(&formula, 0.123456789, shelf, count, NULL));
    ts_buffer_close(&says);
}

static void typeset(const char *text, size_t count)
{
    const bool well_formed = ts_text_utf8_length(ts_text_of(text)) == strlen(text);
    ts_buffer  out;
    ts_buffer_open(&out, NULL);
    const bool read = ts_formula_typeset(&out, text);
    require(ts_formula_typeset_numbers(&out, text, shelf, count, 6) == read);
    require(!out.failed);
    if (read || well_formed)
        require(ts_text_utf8_length((ts_text){out.bytes, out.length}) == out.length);
    ts_buffer_close(&out);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (size == 0)
        return 0;
    const size_t count = data[0] % (sizeof shelf / sizeof shelf[0] + 1);
    char        *text  = malloc(size);
    if (text == NULL)
        return 0;
    memcpy(text, data + 1, size - 1);
    text[size - 1] = '\0';
    evaluate(text, count);
    prove(text, count);
    typeset(text, count);
    free(text);
    return 0;
}
