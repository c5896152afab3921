/* rate/pair_measure.c: what should an inspector find on the gears of a pair? */
#include "rate/gear_measure.h"
#include "rate/pair_parts.h"

static const ts_formula h_a_formulas[2] = {
    {"h_a", "addendum of gear 1", "m", "(d_a1 - d_1)/2", "ISO 21771:2007"},
    {"h_a", "addendum of gear 2", "m", "(d_a2 - d_2)/2", "ISO 21771:2007"},
};

/* The measures know one gear, without an index. */
static void borrow(ts_rate_desk *desk, const ts_rated_gear *of)
{
    const ts_cylindrical_gear *gear         = &of->gear;
    const bool                 first        = of->number == 1;
    const ts_input             inputs[2][2] = {{{"d_a1", gear->d_a}, {"d_1", gear->d}},
                                               {{"d_a2", gear->d_a}, {"d_2", gear->d}}};

    ts_rate_borrow(desk, "z", gear->in.z, first ? "z_1" : "z_2");
    ts_rate_borrow(desk, "x", gear->in.x, first ? "x_1" : "x_2");
    ts_rate_borrow(desk, "d", gear->d, first ? "d_1" : "d_2");
    ts_rate_borrow(desk, "d_b", gear->d_b, first ? "d_b1" : "d_b2");
    if (!desk->failed)
        (void)ts_step_list(desk->workings, &h_a_formulas[first ? 0 : 1],
                           (gear->d_a - gear->d) / 2.0, inputs[first ? 0 : 1], 2);
}

void ts_rate_pair_measures(ts_rate_desk *desk, const ts_rated_pair *rated)
{
    ts_rated_gear first  = {.k_W     = "k_W1",
                            .D_M     = "D_M1",
                            .E_sns   = "E_sns1",
                            .E_sni   = "E_sni1",
                            .b       = rated->in.b_1,
                            .nominal = TS_RATED_GEAR_1,
                            .upper   = TS_RATED_GEAR_1_UPPER,
                            .lower   = TS_RATED_GEAR_1_LOWER,
                            .number  = 1,
                            .borrow  = borrow};
    ts_rated_gear second = {.k_W     = "k_W2",
                            .D_M     = "D_M2",
                            .E_sns   = "E_sns2",
                            .E_sni   = "E_sni2",
                            .b       = rated->in.b_2,
                            .nominal = TS_RATED_GEAR_2,
                            .upper   = TS_RATED_GEAR_2_UPPER,
                            .lower   = TS_RATED_GEAR_2_LOWER,
                            .number  = 2,
                            .borrow  = borrow};

    ts_cylindrical_pair_gear(&rated->pair, TS_GEAR_1, &first.frame, &first.gear);
    ts_cylindrical_pair_gear(&rated->pair, TS_GEAR_2, &second.frame, &second.gear);
    first.h_a  = (first.gear.d_a - first.gear.d) / 2.0;
    second.h_a = (second.gear.d_a - second.gear.d) / 2.0;
    ts_rate_gear_measures(desk, &first);
    ts_rate_gear_measures(desk, &second);
}
