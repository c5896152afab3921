/* model/scalar_read.c: what does one value of the file say? */
#include "model/reading.h"

#include <limits.h>
#include <string.h>

/* ---- absent values -------------------------------------------------------------------------- */

/* What a value holds while it is absent or unknown: nothing that a computation accepts. */
static void set_nothing(const ts_target *target, ts_node node, ts_standing standing)
{
    switch (target->field->form) {
    case TS_FORM_MEASURE:
    case TS_FORM_CLOCK:
    case TS_FORM_SPOOL_SPEEDS:
    case TS_FORM_BY_CONDITION:
        *(ts_measure *)target->to = (ts_measure){NAN, node, standing};
        break;
    case TS_FORM_SPAN:
    case TS_FORM_SPAN_BY_CONDITION:
        *(ts_span *)target->to = (ts_span){NAN, NAN, node, standing};
        break;
    case TS_FORM_TALLY:
        *(ts_tally *)target->to = (ts_tally){INT64_MIN, node, standing};
        break;
    case TS_FORM_TEETH:
        ((ts_tally *)target->to)[0] = (ts_tally){INT64_MIN, node, standing};
        ((ts_tally *)target->to)[1] = (ts_tally){INT64_MIN, node, standing};
        break;
    case TS_FORM_TALLY_SPAN:
        *(ts_tally_span *)target->to = (ts_tally_span){INT64_MIN, INT64_MIN, node, standing};
        break;
    case TS_FORM_TALLY_SPANS:
        *(ts_tally_spans *)target->to = (ts_tally_spans){NULL, 0, node, standing};
        break;
    case TS_FORM_MEASURES:
        *(ts_measures *)target->to = (ts_measures){NULL, 0, node, standing};
        break;
    case TS_FORM_PICK:
        *(ts_pick *)target->to = (ts_pick){INT_MIN, node, standing};
        break;
    case TS_FORM_WORD:
        *(ts_word *)target->to = (ts_word){NULL, node, standing};
        break;
    case TS_FORM_DATE:
        *(ts_date *)target->to = (ts_date){INT32_MIN, node, standing};
        break;
    case TS_FORM_OVERLOAD:
        *(ts_overload *)target->to = (ts_overload){NAN, NAN, node, standing};
        break;
    case TS_FORM_PAD:
        *(ts_pad_end *)target->to = (ts_pad_end){TS_PAD_NONE, -1, node, standing};
        break;
    default:
        break; /* records and lists are zeroed memory already */
    }
}

void ts_set_absent(const ts_target *target)
{
    set_nothing(target, target->record, TS_ABSENT);
}

/* ---- long form ------------------------------------------------------------------------------ */

static bool is_long_form_key(ts_text key)
{
    for (size_t i = 0; i < 4; i++) {
        if (ts_text_is(key, ts_long_form_keys[i]))
            return true;
    }
    return false;
}

static const char *const confidence_expected = "low, medium or high";

static const ts_field date_field = {
    .key = "date", .form = TS_FORM_DATE, .example = "2026-05-01", .says = "Since when."};

/* The further keys of a long form: noted at the node, and looked at. */
static void note_long_form(ts_reading *reading, ts_node node, ts_node child)
{
    ts_node_place *nodes = reading->source->nodes;
    const ts_text  key   = nodes[child].key;
    if (nodes[child].form != TS_NODE_SCALAR || nodes[child].scalar.length == 0) {
        ts_complain(reading, &(ts_fault){.code = "wrong-form", .node = child, .at_key = true},
                    "`%.*s` needs a single value", (int)key.length, key.at);
    } else if (ts_text_is(key, "source")) {
        nodes[node].source = child;
    } else if (ts_text_is(key, "date")) {
        ts_date ignored;
        ts_read_scalar(reading, &(ts_target){&date_field, &ignored, node}, child);
        nodes[node].date = child;
    } else if (ts_text_is(key, "confidence")) {
        bool known = false;
        for (size_t i = 0; ts_confidences[i] != NULL; i++)
            known = known || ts_text_is(nodes[child].scalar, ts_confidences[i]);
        if (!known)
            ts_complain(
                reading,
                &(ts_fault){.code     = "not-a-choice",
                            .node     = child,
                            .expected = confidence_expected,
                            .nearest  = ts_text_nearest(nodes[child].scalar, ts_confidences, 3)},
                "`%.*s` is no confidence", (int)ts_quoted(nodes[child].scalar).length,
                nodes[child].scalar.at);
        nodes[node].confidence = child;
    }
}

static ts_node long_form_value(ts_reading *reading, const ts_field *field, ts_node node)
{
    ts_node_place *nodes = reading->source->nodes;
    ts_node        value = 0;
    for (ts_node child = nodes[node].first; child != 0; child = nodes[child].next) {
        const ts_text key = ts_quoted(nodes[child].key);
        const bool    own = is_long_form_key(nodes[child].key);
        if (!own && nodes[child].spoiled)
            continue; /* the end of a number that a comma cut */
        if (!own)
            ts_complain(reading,
                        &(ts_fault){.code     = "unknown-key",
                                    .node     = child,
                                    .at_key   = true,
                                    .expected = "one of value, source, date, confidence",
                                    .nearest  = ts_text_nearest(key, ts_long_form_keys, 4)},
                        "`%s` has one value, and `%.*s` is not a key of its long form", field->key,
                        (int)key.length, key.at);
        else if (ts_text_is(key, "value"))
            value = child;
        else
            note_long_form(reading, node, child);
    }
    if (value == 0)
        ts_complain(reading,
                    &(ts_fault){.code     = "missing-key",
                                .node     = node,
                                .at_key   = true,
                                .expected = ts_field_expected(reading, field)},
                    "the long form of `%s` has no `value`", field->key);
    return value;
}

bool ts_scalar_text(ts_reading *reading, const ts_field *field, ts_node node, ts_node *value,
                    ts_text *text)
{
    ts_node_place *nodes = reading->source->nodes;
    *value = nodes[node].form == TS_NODE_MAPPING ? long_form_value(reading, field, node) : node;
    if (*value == 0)
        return false;
    if (nodes[*value].form != TS_NODE_SCALAR) {
        ts_complain(reading,
                    &(ts_fault){.code     = "wrong-form",
                                .node     = *value,
                                .at_key   = true,
                                .expected = ts_field_expected(reading, field)},
                    "`%s` needs a single value", field->key);
        return false;
    }
    *text = nodes[*value].scalar;
    if (text->length == 0) {
        ts_complain(reading,
                    &(ts_fault){.code     = "no-value",
                                .node     = *value,
                                .at_key   = true,
                                .expected = ts_field_expected(reading, field)},
                    "`%s` has no value", field->key);
        return false;
    }
    nodes[node].scalar = *text;
    return true;
}

/* ---- forms ---------------------------------------------------------------------------------- */

static void complain_value(ts_reading *reading, const ts_target *target, const ts_written *written,
                           const char *code, const char *what)
{
    const ts_text text = ts_quoted(written->text);
    ts_complain(reading,
                &(ts_fault){.code     = code,
                            .node     = written->at,
                            .expected = ts_field_expected(reading, target->field)},
                "`%.*s` %s `%s`", (int)text.length, text.at, what, target->field->key);
}

static bool parse_tally(ts_text text, int64_t *value)
{
    if (text.length == 0 || text.length > 15)
        return false;
    int64_t sum = 0;
    for (size_t i = 0; i < text.length; i++) {
        if (text.at[i] < '0' || text.at[i] > '9')
            return false;
        sum = sum * 10 + (text.at[i] - '0');
    }
    *value = sum;
    return true;
}

/* Internal gears have negative tooth numbers; where nothing can be negative, a sign is a slip. */
static bool parse_signed_tally(ts_text text, const ts_range *range, int64_t *value)
{
    const bool minus = text.length > 0 && text.at[0] == '-' && range->least < 0.0;
    if (!parse_tally(minus ? (ts_text){text.at + 1, text.length - 1} : text, value))
        return false;
    *value = minus ? -*value : *value;
    return true;
}

static bool read_tally(ts_reading *reading, const ts_target *target, const ts_written *written)
{
    const ts_range *range = &target->field->range;
    int64_t         value;
    if (!parse_signed_tally(written->text, range, &value)) {
        complain_value(reading, target, written, "not-a-whole-number",
                       "is not a whole number, as is due for");
        return false;
    }
    if (range->unit != NULL && ((double)value < range->least || (double)value > range->most)) {
        complain_value(reading, target, written, "out-of-range", "is out of range for");
        return false;
    }
    *(ts_tally *)target->to = (ts_tally){value, written->node, written->standing};
    return true;
}

/* Where `..` stands in a text, or its length. */
static size_t find_dots(ts_text text)
{
    for (size_t i = 0; i + 1 < text.length; i++) {
        if (text.at[i] == '.' && text.at[i + 1] == '.')
            return i;
    }
    return text.length;
}

/* 31..47, or 43 for both ends. */
static bool read_tally_span(ts_reading *reading, const ts_target *target, const ts_written *written)
{
    const ts_range *range = &target->field->range;
    const ts_text   text  = written->text;
    const size_t    dots  = find_dots(text);
    const ts_text   low   = {text.at, dots};
    const ts_text   high =
        dots < text.length ? (ts_text){text.at + dots + 2, text.length - dots - 2} : low;
    int64_t from, to;
    if (!parse_tally(low, &from) || !parse_tally(high, &to) || from > to) {
        complain_value(reading, target, written, "not-a-whole-number",
                       "is neither a whole number nor a range of them, as is due for");
        return false;
    }
    if (range->unit != NULL && ((double)from < range->least || (double)to > range->most)) {
        complain_value(reading, target, written, "out-of-range", "is out of range for");
        return false;
    }
    *(ts_tally_span *)target->to = (ts_tally_span){from, to, written->node, written->standing};
    return true;
}

static size_t choice_count(const ts_field *field)
{
    size_t count = 0;
    while (field->choices[count] != NULL)
        count++;
    return count;
}

/* cw and ccw change places when the same shaft is seen from the other side. */
static int as_seen_from_behind(const ts_reading *reading, const ts_field *field, int pick)
{
    if (!field->seen || !reading->from_front || pick == TS_EITHER)
        return pick;
    return pick == TS_CW ? TS_CCW : TS_CW;
}

static bool read_pick(ts_reading *reading, const ts_target *target, const ts_written *written)
{
    const ts_field *field = target->field;
    const size_t    count = choice_count(field);
    for (size_t i = 0; i < count; i++) {
        if (ts_text_is(written->text, field->choices[i])) {
            const int pick         = as_seen_from_behind(reading, field, (int)i);
            *(ts_pick *)target->to = (ts_pick){pick, written->node, written->standing};
            return true;
        }
    }
    const ts_text text = ts_quoted(written->text);
    ts_complain(reading,
                &(ts_fault){.code     = "not-a-choice",
                            .node     = written->at,
                            .expected = ts_field_expected(reading, field),
                            .nearest  = ts_text_nearest(text, field->choices, count)},
                "`%.*s` is no choice for `%s`", (int)text.length, text.at, field->key);
    return false;
}

static bool read_word(ts_reading *reading, const ts_target *target, const ts_written *written)
{
    const char *copy = ts_arena_copy(reading->arena, written->text.at, written->text.length);
    if (copy == NULL) {
        reading->no_memory = true;
        return false;
    }
    *(ts_word *)target->to = (ts_word){copy, written->node, written->standing};
    return true;
}

static bool is_leap(int64_t year)
{
    return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

static int64_t days_of_month(int64_t year, int64_t month)
{
    static const int64_t days[12] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return month == 2 && is_leap(year) ? 29 : days[month - 1];
}

/* Days from 1970-01-01 to the same day of the Gregorian calendar (derived: 365 a year, and the leap
 * days of the years before). */
static int64_t days_since_1970(int64_t year, int64_t month, int64_t day)
{
    const int64_t before = year - 1;
    int64_t       days   = 365 * (year - 1970) + (before / 4 - before / 100 + before / 400) - 477;
    for (int64_t m = 1; m < month; m++)
        days += days_of_month(year, m);
    return days + day - 1;
}

static bool parse_date(ts_text text, int32_t *day)
{
    int64_t y, m, d;
    if (text.length != 10 || text.at[4] != '-' || text.at[7] != '-')
        return false;
    if (!parse_tally((ts_text){text.at, 4}, &y) || !parse_tally((ts_text){text.at + 5, 2}, &m) ||
        !parse_tally((ts_text){text.at + 8, 2}, &d))
        return false;
    if (y < 1900 || m < 1 || m > 12 || d < 1 || d > days_of_month(y, m))
        return false;
    *day = (int32_t)days_since_1970(y, m, d);
    return true;
}

static bool read_date(ts_reading *reading, const ts_target *target, const ts_written *written)
{
    int32_t day;
    if (!parse_date(written->text, &day)) {
        complain_value(reading, target, written, "not-a-date", "is no day of the calendar for");
        return false;
    }
    *(ts_date *)target->to = (ts_date){day, written->node, written->standing};
    return true;
}

static ts_pad_use pad_word(ts_text text)
{
    if (ts_text_is(text, "cover"))
        return TS_PAD_COVER;
    if (ts_text_is(text, "hand turning"))
        return TS_PAD_HAND;
    return ts_text_is(text, "open") ? TS_PAD_OPEN : TS_PAD_ACCESSORY;
}

static bool read_pad(ts_reading *reading, const ts_target *target, const ts_written *written)
{
    const ts_pad_use use = pad_word(written->text);
    const int32_t    accessory =
        use == TS_PAD_ACCESSORY ? ts_name_index_find(&reading->accessories, written->text) : -1;
    if (use == TS_PAD_ACCESSORY && accessory < 0) {
        if (ts_names_are_missing(&reading->accessories))
            return false;
        const ts_text text = ts_quoted(written->text);
        ts_complain(
            reading,
            &(ts_fault){.code     = "unknown-accessory",
                        .node     = written->at,
                        .expected = "an accessory of the file, cover, hand turning or open",
                        .nearest  = ts_nearest_name(reading, written->text, &reading->accessories)},
            "no accessory is called `%.*s`", (int)text.length, text.at);
        return false;
    }
    *(ts_pad_end *)target->to = (ts_pad_end){use, accessory, written->node, written->standing};
    return true;
}

static bool read_form(ts_reading *reading, const ts_target *target, const ts_written *written)
{
    switch (target->field->form) {
    case TS_FORM_MEASURE:
    case TS_FORM_SPOOL_SPEEDS:
    case TS_FORM_BY_CONDITION:
        return ts_read_measure(reading, target, written);
    case TS_FORM_CLOCK:
        return ts_read_clock(reading, target, written);
    case TS_FORM_SPAN:
    case TS_FORM_SPAN_BY_CONDITION:
        return ts_read_span(reading, target, written);
    case TS_FORM_TALLY:
        return read_tally(reading, target, written);
    case TS_FORM_TALLY_SPAN:
        return read_tally_span(reading, target, written);
    case TS_FORM_PICK:
        return read_pick(reading, target, written);
    case TS_FORM_WORD:
        return read_word(reading, target, written);
    case TS_FORM_DATE:
        return read_date(reading, target, written);
    case TS_FORM_OVERLOAD:
        return ts_read_overload(reading, target, written);
    default:
        return read_pad(reading, target, written);
    }
}

static void read_one(ts_reading *reading, const ts_target *target, ts_node node)
{
    ts_written written = {.node = node, .standing = TS_GIVEN};
    ts_set_absent(target);
    if (!ts_scalar_text(reading, target->field, node, &written.at, &written.text))
        return;
    if (reading->source->nodes[written.at].spoiled)
        return;
    if (!ts_text_is(written.text, "unknown")) {
        (void)read_form(reading, target, &written);
        return;
    }
    if (target->field->need == TS_REQUIRED)
        complain_value(reading, target, &written, "must-be-known",
                       "will not do, for nothing can be computed without");
    else if (!ts_field_may_be_unknown(target->field))
        complain_value(reading, target, &written, "must-be-known",
                       "will not do; what is assumed without the key is in the manual, under");
    else
        set_nothing(target, node, TS_UNKNOWN);
}

/* [43, 46]: each may be in long form. */
static void read_teeth(ts_reading *reading, const ts_target *target, ts_node node)
{
    const ts_node_place *nodes  = reading->source->nodes;
    const ts_node        first  = nodes[node].form == TS_NODE_SEQUENCE ? nodes[node].first : 0;
    const ts_node        second = first != 0 ? nodes[first].next : 0;
    ts_set_absent(target);
    if (second == 0 || nodes[second].next != 0) {
        ts_complain(reading,
                    &(ts_fault){.code     = "wrong-form",
                                .node     = node,
                                .at_key   = true,
                                .expected = ts_field_expected(reading, target->field)},
                    "`%s` needs a list of two values", target->field->key);
        return;
    }
    ts_field each   = *target->field;
    each.form       = TS_FORM_TALLY;
    each.example    = "43";
    ts_tally *tally = target->to;
    read_one(reading, &(ts_target){&each, &tally[0], target->record}, first);
    read_one(reading, &(ts_target){&each, &tally[1], target->record}, second);
}

/* ---- several values to choose from ------------------------------------------------------------
 */

/* How one of several is written. */
static ts_field one_of(const ts_field *several)
{
    ts_field each = *several;
    each.form     = several->form == TS_FORM_MEASURES ? TS_FORM_MEASURE : TS_FORM_TALLY_SPAN;
    return each;
}

static size_t size_of_one(const ts_field *several)
{
    return several->form == TS_FORM_MEASURES ? sizeof(ts_measure) : sizeof(ts_tally_span);
}

static bool is_several(const ts_field *field)
{
    return field->form == TS_FORM_MEASURES || field->form == TS_FORM_TALLY_SPANS;
}

static void take_several(const ts_target *target, const void *items, size_t count, ts_node node,
                         ts_standing standing)
{
    if (target->field->form == TS_FORM_MEASURES)
        *(ts_measures *)target->to = (ts_measures){items, count, node, standing};
    else
        *(ts_tally_spans *)target->to = (ts_tally_spans){items, count, node, standing};
}

/* One value, or a list of at least one and at most field->most of them. */
static void read_several(ts_reading *reading, const ts_target *target, ts_node node)
{
    const ts_node_place *nodes = reading->source->nodes;
    const bool           list  = nodes[node].form == TS_NODE_SEQUENCE;
    const ts_field       each  = one_of(target->field);
    const size_t         size  = size_of_one(target->field);
    size_t               count = list ? 0 : 1;
    for (ts_node child = list ? nodes[node].first : 0; child != 0; child = nodes[child].next)
        count++;
    ts_set_absent(target);
    if (count == 0 || count > target->field->most) {
        ts_complain(reading,
                    &(ts_fault){.code     = "wrong-form",
                                .node     = node,
                                .at_key   = true,
                                .expected = ts_field_expected(reading, target->field)},
                    "`%s` holds %zu values, and takes from 1 to %zu", target->field->key, count,
                    target->field->most);
        return;
    }
    char *items = ts_arena_take(reading->arena, count, size);
    if (items == NULL) {
        reading->no_memory = true;
        return;
    }
    ts_node child = list ? nodes[node].first : node;
    for (size_t i = 0; i < count; i++, child = nodes[child].next)
        read_one(reading, &(ts_target){&each, items + i * size, target->record}, child);
    take_several(target, items, count, node, TS_GIVEN);
}

void ts_read_scalar(ts_reading *reading, const ts_target *target, ts_node node)
{
    if (target->field->form == TS_FORM_TEETH)
        read_teeth(reading, target, node);
    else if (is_several(target->field))
        read_several(reading, target, node);
    else
        read_one(reading, target, node);
}

/* The default of several values is one value. */
static void read_several_preset(ts_reading *reading, const ts_target *target, const char *text)
{
    const ts_field each = one_of(target->field);
    void          *item = ts_arena_take(reading->arena, 1, size_of_one(target->field));
    if (item == NULL) {
        reading->no_memory = true;
        return;
    }
    ts_read_preset(reading, &(ts_target){&each, item, target->record}, text);
    take_several(target, item, 1, target->record, TS_ASSUMED);
}

void ts_read_preset(ts_reading *reading, const ts_target *target, const char *text)
{
    if (is_several(target->field)) {
        read_several_preset(reading, target, text);
        return;
    }
    const ts_written written = {.text     = ts_text_of(text),
                                .node     = target->record,
                                .at       = target->record,
                                .standing = TS_ASSUMED};
    ts_set_absent(target);
    (void)read_form(reading, target, &written);
}
