/* model/field_rate_pair_preset.c: what is taken where a gear pair of a rate file leaves a key out
 * and other keys decide? */
#include "model/field_rate_pair.h"

static int rack_of(const void *record)
{
    const int rack = ((const ts_rate_pair *)record)->rack.value;
    return rack >= 0 && rack <= (int)TS_RACK_D ? rack : (int)TS_RACK_A;
}

ts_preset ts_rate_dedendum_preset(const void *record)
{
    static const char *const of_rack[] = {"1.25", "1.25", "1.25", "1.4"};
    return (ts_preset){of_rack[rack_of(record)], TS_RATE_ISO_53};
}

ts_preset ts_rate_fillet_preset(const void *record)
{
    static const char *const of_rack[] = {"0.38", "0.3", "0.25", "0.39"};
    return (ts_preset){of_rack[rack_of(record)], TS_RATE_ISO_53_ROUND};
}

/* With a centre distance a shift that is not given follows from it.  The sliding of internal gears
 * is not balanced by shifts: there the pinion stays as it is. */
ts_preset ts_rate_shift_2_preset(const void *record)
{
    if (ts_rate_is_stated(((const ts_rate_pair *)record)->a_w))
        return (ts_preset){NULL, NULL};
    return (ts_preset){"0", "no profile shift; common practice, no source"};
}

static bool is_internal(const ts_rate_pair *pair)
{
    return pair->gear[1].z.standing == TS_GIVEN && pair->gear[1].z.value < 0;
}

ts_preset ts_rate_shift_1_preset(const void *record)
{
    if (is_internal(record))
        return (ts_preset){"0", "no profile shift; common practice, no source"};
    return ts_rate_shift_2_preset(record);
}

ts_preset ts_rate_shift_preset(const void *record)
{
    const ts_rate_pair *pair = record;
    const bool x_1 = ts_rate_is_stated(pair->gear[0].x), x_2 = ts_rate_is_stated(pair->gear[1].x);
    if (!ts_rate_is_stated(pair->a_w))
        return (ts_preset){"as given", "the centre distance follows from the shifts"};
    if (x_1 && x_2)
        return (ts_preset){"as given", "centre distance and both shifts are given; what is left "
                                       "between the flanks is backlash"};
    if (x_1)
        return (ts_preset){"rest to 2", "x_2 is not given and follows from the centre distance"};
    if (x_2)
        return (ts_preset){"rest to 1", "x_1 is not given and follows from the centre distance"};
    if (is_internal(pair))
        return (ts_preset){"rest to 2",
                           "neither shift is given; the internal gear takes all of it; "
                           "common practice, no source"};
    return (ts_preset){"equal sliding", "neither shift is given; the greatest specific sliding is "
                                        "made equal; common practice, no source"};
}

ts_preset ts_rate_tip_preset(const void *record)
{
    const ts_rate_gear *gear = ((const ts_rate_pair *)record)->gear;
    if (ts_rate_is_stated(gear[0].d_a) || ts_rate_is_stated(gear[1].d_a))
        return (ts_preset){"diameters", "tip diameters are given"};
    return (ts_preset){"as given", "k_1 and k_2 say how far the tips are altered"};
}
