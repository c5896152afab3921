/* Can any text break the reading of quantities, and does what is accepted survive being written?
 *
 * The first byte chooses the kind, the rest is the text.
 */
#include "quantity/quantity.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static void require(bool condition)
{
    if (!condition)
        abort();
}

static bool same(double a, double b)
{
    return memcmp(&a, &b, sizeof a) == 0;
}

static void check_fault(const ts_quantity_fault *fault, ts_text text)
{
    require(fault->code != NULL && fault->code[0] != '\0');
    require(memchr(fault->says, '\0', sizeof fault->says) != NULL && fault->says[0] != '\0');
    require(memchr(fault->expected, '\0', sizeof fault->expected) != NULL);
    require(ts_text_utf8_length(ts_text_of(fault->says)) == strlen(fault->says));
    require(ts_text_utf8_length(ts_text_of(fault->expected)) == strlen(fault->expected));
    require(fault->length >= 1 && fault->at <= text.length);
    require(fault->at + fault->length <= text.length + 1);
}

static void check_one(ts_text text, ts_kind kind, ts_buffer *out)
{
    double            si = 0.0, back = 0.0;
    const ts_unit    *unit = NULL;
    ts_quantity_fault fault;
    if (!ts_quantity_parse(text, kind, &si, &unit, &fault)) {
        check_fault(&fault, text);
        return;
    }
    require(isfinite(si) && unit->kind == kind);
    ts_buffer_clear(out);
    ts_quantity_print(out, si, unit);
    require(ts_quantity_parse((ts_text){out->bytes, out->length}, kind, &back, &unit, &fault));
    require(same(si, back));
}

static void check_range(ts_text text, ts_kind kind, ts_buffer *out)
{
    double            low = 0.0, high = 0.0, low_back = 0.0, high_back = 0.0;
    const ts_unit    *unit = NULL;
    ts_quantity_fault fault;
    if (!ts_quantity_parse_range(text, kind, &low, &high, &unit, &fault)) {
        check_fault(&fault, text);
        return;
    }
    require(low <= high && (isfinite(low) || isfinite(high)) && unit->kind == kind);
    ts_buffer_clear(out);
    ts_quantity_print_range(out, low, high, unit);
    require(ts_quantity_parse_range((ts_text){out->bytes, out->length}, kind, &low_back, &high_back,
                                    &unit, &fault));
    require(same(low, low_back) && same(high, high_back));
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (size == 0)
        return 0;
    /* A copy of just this size, so that a byte read past the end is noticed. */
    char *bytes = malloc(size);
    if (bytes == NULL)
        return 0;
    memcpy(bytes, data + 1, size - 1);
    const ts_text text = {bytes, size - 1};
    const ts_kind kind = (ts_kind)(data[0] % TS_KIND_COUNT);
    ts_buffer     out;
    ts_buffer_open(&out, NULL);
    check_one(text, kind, &out);
    check_range(text, kind, &out);
    ts_buffer_close(&out);
    free(bytes);
    return 0;
}
