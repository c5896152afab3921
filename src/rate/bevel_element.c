/* rate/bevel_element.c: how do two bevel gears of a rate file sit together? */
#include "element/bevel_pair.h"
#include "rate/rate_desk.h"

static const ts_rated_section section = {
    .title     = "Pitch cones",
    .standard  = "ISO 23509:2016",
    .condition = TS_EVERY_CONDITION,
};

/* Which limit a pair without cones has passed. */
static void say_fault(ts_rate_desk *desk, const ts_bevel_pair_input *in, ts_bevel_fault fault)
{
    ts_finding  *finding = ts_rate_judge(desk, false, "rate-no-geometry", TS_REFUSE);
    const double u       = (double)in->z_2 / in->z_1;

    if (finding == NULL)
        return;
    finding->source = "ISO 23509:2016";
    ts_rate_says(desk, finding, "%s", ts_bevel_fault_says(fault));
    if (fault == TS_BEVEL_TOO_WIDE) {
        const double delta_1 = ts_bevel_pitch_angle_1(in->Sigma, u, NULL);
        const double R_e     = in->z_1 * in->m_et / (2.0 * sin(delta_1));
        ts_rate_limit(finding, "b", in->b, R_e, TS_KIND_LENGTH);
        ts_rate_says(desk, finding, "a face of %s reaches the apex, which is %s from the outer end",
                     ts_rate_shown(desk, in->b, TS_KIND_LENGTH),
                     ts_rate_shown(desk, R_e, TS_KIND_LENGTH));
        ts_rate_todo(desk, finding,
                     "use b below %s; a third of it is the most that is usual (common practice, no "
                     "source)",
                     ts_rate_shown_outward(desk, R_e, TS_KIND_LENGTH, -1));
    } else if (fault == TS_BEVEL_NO_CONE) {
        /* The flat cone belongs to the larger gear: cos(Sigma) = -1/u or -u. */
        const double limit = acos(-fmin(u, 1.0 / u));
        ts_rate_limit(finding, "Sigma", in->Sigma, limit, TS_KIND_ANGLE);
        ts_rate_says(
            desk, finding,
            "at a shaft angle of %s and this ratio one pitch cone is flat or turned inside "
            "out; it is a cone below %s",
            ts_rate_shown(desk, in->Sigma, TS_KIND_ANGLE),
            ts_rate_shown(desk, limit, TS_KIND_ANGLE));
        ts_rate_todo(desk, finding, "use Sigma below %s, or a ratio nearer to 1",
                     ts_rate_shown_outward(desk, limit, TS_KIND_ANGLE, -1));
    }
}

/* Wider faces than these carry their load on one end. */
static void judge_width(ts_rate_desk *desk, const ts_bevel_pair *pair)
{
    ts_finding *finding =
        ts_rate_judge(desk, pair->b_over_R_e <= 1.0 / 3.0, "rate-wide-face", TS_WARN);

    ts_rate_limit(finding, "b_over_R_e", pair->b_over_R_e, 1.0 / 3.0, TS_KIND_NUMBER);
    ts_rate_says(desk, finding, "the face is %s of the outer cone distance, where a third is usual",
                 ts_rate_shown(desk, pair->b_over_R_e, TS_KIND_NUMBER));
    ts_rate_todo(desk, finding, "use b of at most %s",
                 ts_rate_shown_outward(desk, pair->R_e / 3.0, TS_KIND_LENGTH, -1));
}

void ts_rate_bevel_element(ts_rate_desk *desk, const ts_rate_bevels *given)
{
    ts_rate_open_element(desk, "bevel pair", &ts_table_rate_bevels, given);
    ts_rate_open_section(desk, &section);
    const ts_bevel_pair_input in = {.z_1     = (int)ts_rate_take(desk, "z_1"),
                                    .z_2     = (int)ts_rate_take(desk, "z_2"),
                                    .m_et    = ts_rate_take(desk, "m_et"),
                                    .Sigma   = ts_rate_take(desk, "Sigma"),
                                    .alpha_n = ts_rate_take(desk, "alpha_n"),
                                    .beta_m  = ts_rate_take(desk, "beta_m"),
                                    .b       = ts_rate_take(desk, "b")};
    ts_bevel_pair             pair;

    if (!desk->failed) {
        const ts_bevel_fault fault = ts_bevel_pair_solve(&in, &pair, desk->workings);
        if (fault == TS_BEVEL_FINE)
            judge_width(desk, &pair);
        else
            say_fault(desk, &in, fault);
    }
    (void)ts_rate_close_section(desk);
    ts_rate_close_element(desk);
}
