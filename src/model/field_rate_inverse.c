/* model/field_rate_inverse.c: what does a gear pair of a rate file ask the other way round? */
#include "model/field_rate_pair.h"

#define ALL_THREE "where `inverse` stands it asks for all that is not refused"

#define QUESTION(name, member, what)                                                               \
    {                                                                                              \
        .key = (name), .form = TS_FORM_PICK, TS_AT(ts_rate_inverse, member),                       \
        .choices = ts_rate_answers, .preset = {"yes", ALL_THREE}, .says = (what), .example = "no"  \
    }

static const ts_field inverse_fields[] = {
    QUESTION("load", load,
             "Asks for the torque and the power that the teeth bear for the life wanted."),
    QUESTION("life", life, "Asks how long the teeth bear the load, gear by gear."),
    QUESTION("width", width, "Asks for the least common face width under the load."),
    TS_RATE_ONE(ts_rate_inverse, "L_h", L_h, TS_RATE_MEASURE(TS_KIND_TIME),
                .range   = TS_ABOVE(0.0, 3.6e9, "h"),
                .says    = "Life wanted, for load and width; else that of the pair.",
                .example = "12000 h"),
    TS_RATE_ONE(ts_rate_inverse, "S_Hmin", S_Hmin, TS_RATE_MEASURE(TS_KIND_NUMBER),
                .range = TS_ABOVE(0.0, 10.0, "1"),
                .says = "Safety wanted against pitting; else that of the pair.", .example = "1.2"),
    TS_RATE_ONE(ts_rate_inverse, "S_Fmin", S_Fmin, TS_RATE_MEASURE(TS_KIND_NUMBER),
                .range = TS_ABOVE(0.0, 10.0, "1"),
                .says = "Safety wanted against breakage; else that of the pair.", .example = "1.5"),
    TS_RATE_ONE(ts_rate_inverse, "b_low", b_low, TS_RATE_MEASURE(TS_KIND_LENGTH),
                .range   = TS_ABOVE(0.0, 5.0, "mm"),
                .says    = "Least common face width that is tried; a module when it is left out.",
                .example = "8 mm"),
    TS_RATE_ONE(ts_rate_inverse, "b_high", b_high, TS_RATE_MEASURE(TS_KIND_LENGTH),
                .range   = TS_ABOVE(0.0, 5.0, "mm"),
                .says    = "Greatest common face width that is tried; twice the reference diameter "
                           "of gear 1 when it is left out.",
                .example = "40 mm"),
};

static const char *judge_inverse(const void *record, const char **key, const char **expected)
{
    const ts_rate_inverse *of = record;

    *key      = "b_high";
    *expected = "a greatest width that is not below `b_low`";
    if (ts_rate_is_stated(of->b_low) && ts_rate_is_stated(of->b_high) &&
        of->b_high.value < of->b_low.value)
        return "the widths to be tried end before they begin";
    *key      = "load";
    *expected = "`yes` for one of `load`, `life` and `width`, or no `inverse`";
    if (of->load.value != (int)TS_YES && of->life.value != (int)TS_YES &&
        of->width.value != (int)TS_YES)
        return "all three questions are refused, so that nothing is asked";
    return NULL;
}

const ts_record_table ts_table_rate_inverse = {
    .id   = "rate_inverse",
    .name = "an inverse",
    .says = "What a gear pair asks the other way round, by ISO 6336: which torque, which life and "
            "which face width have the safeties wanted. Each answer is rated anew, so that all "
            "of its factors are told behind its name: `T_1@allowable load`, `L_h@life`, "
            "`b@least width`.",
    TS_TABLE(ts_rate_inverse, inverse_fields),
    .judge = judge_inverse,
};
