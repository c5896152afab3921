/* rate/pair_backlash.c: how much play do the allowances leave between the flanks? */
#include "element/thickness_allowance.h"
#include "rate/pair_parts.h"

static const char *const asked[] = {"a_w", "x_1", "x_2", "j_wt", "j_bn", "eps_alpha", NULL};

static const ts_rated_section sections[2] = {
    {.title     = "Backlash at its least",
     .standard  = "ISO 21771:2007",
     .condition = TS_RATED_LEAST_BACKLASH,
     .asked     = asked},
    {.title     = "Backlash at its greatest",
     .standard  = "ISO 21771:2007",
     .condition = TS_RATED_MOST_BACKLASH,
     .asked     = asked},
};

double ts_rate_allowance(ts_rate_desk *desk, const char *key, const char *other)
{
    if (ts_rate_is_given(desk, other))
        return ts_rate_take_or(desk, key, ts_rate_take(desk, other),
                               "one allowance of this gear is given, and taken for both");
    return ts_rate_take_or(desk, key, 0.0, "no allowance of this gear is given");
}

/* Flanks that just touch are no clash; the rest is what rounding leaves of a zero. */
#define BACKLASH_NOISE 1e-9

/* Thick teeth on close axes, or thin ones on far axes; the axes of an internal pair the other way
 * about.  The tips stay where they are. */
static void solve_at(ts_rate_desk *desk, const ts_rated_pair *rated, bool most)
{
    const ts_cylindrical_pair *pair     = &rated->pair;
    const bool                 internal = pair->in.z_2 < 0;
    const char                *E_1 = most ? "E_sni1" : "E_sns1", *E_2 = most ? "E_sni2" : "E_sns2";
    const char                *A     = most != internal ? "A_ae" : "A_ai";
    const double               E_sn1 = ts_rate_allowance(desk, E_1, most ? "E_sns1" : "E_sni1");
    const double               E_sn2 = ts_rate_allowance(desk, E_2, most ? "E_sns2" : "E_sni2");
    const double               A_a   = ts_rate_take_signed(desk, A, pair->a_w < 0.0 ? -1.0 : 1.0);
    const ts_cylindrical_frame frame = {
        .m_n = pair->in.m_n, .alpha_n = pair->in.alpha_n, .beta = pair->in.beta};
    ts_cylindrical_pair_input in = pair->in;
    ts_cylindrical_pair       other;

    ts_rate_borrow(desk, "E_sn1", E_sn1, E_1);
    ts_rate_borrow(desk, "E_sn2", E_sn2, E_2);
    ts_rate_borrow(desk, "A_a", A_a, A);
    ts_rate_borrow(desk, "x_nominal1", pair->x_1, "x_1");
    ts_rate_borrow(desk, "x_nominal2", pair->x_2, "x_2");
    ts_rate_borrow(desk, "a_wnominal", pair->a_w, "a_w");
    if (desk->failed)
        return;
    in.x_1   = ts_generated_shift(pair->x_1, E_sn1, &frame, TS_GEAR_1, desk->workings);
    in.x_2   = ts_generated_shift(pair->x_2, E_sn2, &frame, TS_GEAR_2, desk->workings);
    in.a_w   = ts_deviated_centre(pair->a_w, A_a, desk->workings);
    in.shift = TS_SHIFT_GIVEN;
    in.tip   = TS_TIP_DIAMETERS;
    in.d_a1  = pair->d_a1;
    in.d_a2  = pair->d_a2;

    const ts_pair_fault fault   = ts_cylindrical_pair_solve(&in, &other, desk->workings);
    const bool          solved  = fault == TS_PAIR_FINE || fault == TS_PAIR_POINTED;
    ts_finding         *finding = ts_rate_judge(
                desk, solved && other.j_bn >= -BACKLASH_NOISE * pair->in.m_n, "rate-backlash", TS_REFUSE);
    if (finding == NULL)
        return;
    finding->source = "ISO 21771:2007";
    ts_rate_says(desk, finding, "%s",
                 solved ? "the allowances leave no backlash" : ts_pair_fault_says(fault));
    if (!solved)
        return;
    ts_rate_limit(finding, "j_bn", other.j_bn, 0.0, TS_KIND_LENGTH);
    ts_rate_remedy(
        desk, finding, "thin the teeth by another %s, both gears together",
        ts_rate_shown_outward(desk, -other.j_bn / cos(pair->in.alpha_n), TS_KIND_LENGTH, +1));
}

void ts_rate_pair_backlash(ts_rate_desk *desk, const ts_rated_pair *rated)
{
    static const char *const keys[] = {"E_sns1", "E_sns2", "E_sni1", "E_sni2", "A_ae", "A_ai"};
    bool                     given  = false;

    for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++)
        given = given || ts_rate_is_given(desk, keys[i]);
    for (int most = 0; most < 2 && given; most++) {
        ts_rate_open_section(desk, &sections[most]);
        solve_at(desk, rated, most == 1);
        (void)ts_rate_close_section(desk);
    }
}
