/* rate/pair_fault.c: why can two gears not be, and what is the nearest pair that can? */
#include "rate/pair_parts.h"

#define RULE "rate-no-geometry"

static const double pi = 3.14159265358979323846;

/* Frame of a pair that could not be solved; its inputs are in their ranges. */
static ts_cylindrical_frame frame_of(const ts_cylindrical_pair_input *in)
{
    ts_cylindrical_frame frame = {.m_n = in->m_n, .alpha_n = in->alpha_n, .beta = in->beta};

    ts_cylindrical_frame_solve(&frame, NULL);
    return frame;
}

/* ---- the centre distance -----------------------------------------------------------------------
 */

/* The base circles must leave room for a line of action between them. */
static void say_centre(ts_rate_desk *desk, const ts_cylindrical_pair_input *in, ts_finding *finding)
{
    const ts_cylindrical_frame frame = frame_of(in);
    const double limit = fabs(frame.m_t * (in->z_1 + in->z_2) / 2.0) * frame.cos_alpha_t;

    ts_rate_limit(finding, "a_w", fabs(in->a_w), limit, TS_KIND_LENGTH);
    ts_rate_says(desk, finding,
                 "no mesh at a centre distance of %s: the base circles leave room for a line of "
                 "action above %s",
                 ts_rate_shown(desk, fabs(in->a_w), TS_KIND_LENGTH),
                 ts_rate_shown(desk, limit, TS_KIND_LENGTH));
    ts_rate_remedy(desk, finding, "use a centre distance above %s",
                   ts_rate_shown_outward(desk, limit, TS_KIND_LENGTH, +1));
}

/* The involute function of the working angle must be positive. */
static void say_shifts(ts_rate_desk *desk, const ts_cylindrical_pair_input *in, ts_finding *finding)
{
    const ts_cylindrical_frame frame = frame_of(in);
    const double               sum = in->x_1 + in->x_2, teeth = in->z_1 + in->z_2;
    const double               limit   = -frame.inv_alpha_t * teeth / (2.0 * frame.tan_alpha_n);
    const bool                 outside = teeth > 0.0;

    ts_rate_limit(finding, "sum_x", sum, limit, TS_KIND_NUMBER);
    ts_rate_says(desk, finding,
                 "profile shifts that add to %s leave no centre distance: their sum must lie %s %s",
                 ts_rate_shown(desk, sum, TS_KIND_NUMBER), outside ? "above" : "below",
                 ts_rate_shown(desk, limit, TS_KIND_NUMBER));
    ts_rate_remedy(desk, finding, "use x_1 %s %s, or shift gear 2 by as much",
                   outside ? "above" : "below",
                   ts_rate_shown_outward(desk, limit - in->x_2, TS_KIND_NUMBER, outside ? +1 : -1));
}

/* ---- tips --------------------------------------------------------------------------------------
 */

/* The same pair with full tips, which tells its shifts. */
static bool solve_full(const ts_cylindrical_pair_input *in, ts_cylindrical_pair *full)
{
    ts_cylindrical_pair_input plain = *in;

    plain.tip = TS_TIP_GIVEN;
    plain.k_1 = plain.k_2     = 0.0;
    const ts_pair_fault fault = ts_cylindrical_pair_solve(&plain, full, NULL);
    return fault == TS_PAIR_FINE || fault == TS_PAIR_POINTED;
}

/* d_a - d_b of both gears as they were asked for, counted from the base circle outwards. */
static double tip_of(const ts_cylindrical_pair_input *in, const ts_cylindrical_pair *full, int gear)
{
    const double d_full  = gear == 0 ? full->d_a1 : full->d_a2;
    const double k_given = gear == 0 ? in->k_1 : in->k_2;
    const double k_kept  = full->y - full->x_1 - full->x_2;

    if (in->tip == TS_TIP_DIAMETERS)
        return gear == 0 ? in->d_a1 : in->d_a2;
    return d_full + 2.0 * in->m_n * (in->tip == TS_TIP_GIVEN ? k_given : k_kept);
}

/* The tips of gear i + 1 end inside its base circle. */
static void say_no_flank(ts_rate_desk *desk, ts_finding *finding, int i, double d_a, double d_b)
{
    ts_rate_limit(finding, i == 0 ? "d_a1" : "d_a2", d_a, d_b, TS_KIND_LENGTH);
    ts_rate_says(desk, finding,
                 "gear %d has no flank: its tip circle of %s lies inside its base circle of %s",
                 i + 1, ts_rate_shown(desk, fabs(d_a), TS_KIND_LENGTH),
                 ts_rate_shown(desk, fabs(d_b), TS_KIND_LENGTH));
}

/* Even full tips have no flank, as in a ring of few teeth: by how much must they be shorter there,
 * or longer outside?  d_a = d + 2 m_n (h_aP + x + k) is to reach d_b. */
static void say_full_tip(ts_rate_desk *desk, const ts_cylindrical_pair_input *in,
                         ts_finding *finding)
{
    const ts_cylindrical_frame frame = frame_of(in);

    for (int i = 0; i < 2; i++) {
        const int    z    = i == 0 ? in->z_1 : in->z_2;
        const double x    = i == 0 ? in->x_1 : in->x_2;
        const double k    = in->tip != TS_TIP_GIVEN ? 0.0 : i == 0 ? in->k_1 : in->k_2;
        const double d    = z * frame.m_t;
        const double d_b  = d * frame.cos_alpha_t;
        const double d_a  = d + 2.0 * in->m_n * (in->rack.h_aPs + x + k);
        const double k_at = (d_b - d) / (2.0 * in->m_n) - in->rack.h_aPs - x;

        if (d_a / d_b >= 1.0)
            continue;
        say_no_flank(desk, finding, i, d_a, d_b);
        ts_rate_remedy(desk, finding, "use k_%d %s %s, or more teeth", i + 1,
                       z < 0 ? "below" : "above",
                       ts_rate_shown_outward(desk, k_at, TS_KIND_NUMBER, z < 0 ? -1 : +1));
        return;
    }
}

static void say_tip(ts_rate_desk *desk, const ts_cylindrical_pair_input *in, ts_finding *finding)
{
    ts_cylindrical_pair full;

    ts_rate_says(desk, finding, "%s", ts_pair_fault_says(TS_PAIR_NO_TIP));
    ts_rate_remedy(desk, finding, "use longer tips, or more teeth");
    if (!solve_full(in, &full)) {
        say_full_tip(desk, in, finding);
        return;
    }
    for (int i = 0; i < 2; i++) {
        const double d_a = tip_of(in, &full, i), d_b = i == 0 ? full.d_b1 : full.d_b2;

        if (d_a / d_b >= 1.0)
            continue;
        say_no_flank(desk, finding, i, d_a, d_b);
        ts_rate_remedy(desk, finding, "use a tip diameter d_a%d above %s", i + 1,
                       ts_rate_shown_outward(desk, fabs(d_b), TS_KIND_LENGTH, +1));
        return;
    }
}

/* ---- the rack ----------------------------------------------------------------------------------
 */

static void say_rack(ts_rate_desk *desk, const ts_cylindrical_pair_input *in, ts_finding *finding)
{
    const double most = ts_basic_rack_rho_most(&in->rack, in->alpha_n);
    const double deep = pi / (4.0 * tan(in->alpha_n)); /* where the flanks of the rack meet */

    finding->source = "derived: the space between the flanks of the rack";
    if (in->rack.h_fPs < deep && most >= 0.0) {
        ts_rate_limit(finding, "rho_fPs", in->rack.rho_fPs, most, TS_KIND_NUMBER);
        ts_rate_says(desk, finding,
                     "a fillet of %s modules does not fit between the flanks of the rack; the full "
                     "root round is %s",
                     ts_rate_shown(desk, in->rack.rho_fPs, TS_KIND_NUMBER),
                     ts_rate_shown(desk, most, TS_KIND_NUMBER));
        ts_rate_remedy(desk, finding, "use rho_fPs of at most %s",
                       ts_rate_shown_outward(desk, most, TS_KIND_NUMBER, -1));
        return;
    }
    ts_rate_limit(finding, "h_fPs", in->rack.h_fPs, deep, TS_KIND_NUMBER);
    ts_rate_says(desk, finding,
                 "the flanks of the rack meet %s modules below its pitch line, above a dedendum of "
                 "%s",
                 ts_rate_shown(desk, deep, TS_KIND_NUMBER),
                 ts_rate_shown(desk, in->rack.h_fPs, TS_KIND_NUMBER));
    ts_rate_remedy(desk, finding, "use h_fPs below %s, or a smaller pressure angle",
                   ts_rate_shown_outward(desk, deep, TS_KIND_NUMBER, -1));
}

void ts_rate_pair_fault(ts_rate_desk *desk, const ts_rated_pair *rated, ts_pair_fault fault)
{
    const ts_cylindrical_pair_input *in      = &rated->in;
    ts_finding                      *finding = ts_rate_judge(desk, false, RULE, TS_REFUSE);

    if (finding == NULL)
        return;
    finding->source = "ISO 21771:2007";
    ts_rate_says(desk, finding, "%s", ts_pair_fault_says(fault));
    if (fault == TS_PAIR_NO_CENTRE && fabs(in->a_w) > 0.0)
        say_centre(desk, in, finding);
    else if (fault == TS_PAIR_NO_CENTRE)
        say_shifts(desk, in, finding);
    else if (fault == TS_PAIR_NO_TIP)
        say_tip(desk, in, finding);
    else if (fault == TS_PAIR_NO_RACK)
        say_rack(desk, in, finding);
    else if (fault == TS_PAIR_NO_SPLIT)
        ts_rate_remedy(desk, finding, "give x_1 or x_2, or another centre distance");
    else
        ts_rate_remedy(
            desk, finding,
            "bring centre distance, tips and shifts within what a gear of this module can "
            "have");
}
