/* rate/tooth_element.c: how is one gear of a rate file measured? */
#include "rate/gear_measure.h"

static const char *const asked[] = {"m_t", "alpha_t", "beta_b", "d",   "d_b",
                                    "d_a", "d_f",     "s_an",   "h_a", NULL};

static const ts_rated_section section = {
    .title     = "Geometry",
    .standard  = "ISO 21771:2007",
    .condition = TS_EVERY_CONDITION,
    .asked     = asked,
};

static const ts_formula h_a_formula = {
    .symbol  = "h_a",
    .meaning = "addendum",
    .unit    = "m",
    .text    = "(d_a - d)/2",
    .source  = "ISO 21771:2007",
};

#define FILLET_A 0.38 /* ISO 53:1998, basic rack profile A */

/* A gear that has no flank cannot be measured. */
static bool judge_flank(ts_rate_desk *desk, const ts_cylindrical_gear *gear)
{
    const bool  flank   = !isnan(gear->rho_a);
    ts_finding *finding = ts_rate_judge(desk, flank, "rate-no-geometry", TS_REFUSE);

    ts_rate_limit(finding, "d_a", gear->d_a, gear->d_b, TS_KIND_LENGTH);
    ts_rate_says(desk, finding,
                 "the gear has no flank: its tip circle of %s lies inside its base circle of %s",
                 ts_rate_shown(desk, fabs(gear->d_a), TS_KIND_LENGTH),
                 ts_rate_shown(desk, fabs(gear->d_b), TS_KIND_LENGTH));
    ts_rate_remedy(desk, finding, "use k of at least %s, or more teeth",
                   ts_rate_shown_outward(
                       desk, gear->in.k + (gear->d_b - gear->d_a) / (gear->d / gear->in.z) / 2.0,
                       TS_KIND_NUMBER, +1));
    return flank;
}

/* What the rack has eaten away is missing where a span or a pin would touch. */
static void judge_undercut(ts_rate_desk *desk, const ts_cylindrical_gear *gear)
{
    if (isnan(gear->x_min))
        return;
    ts_finding *finding = ts_rate_judge(desk, gear->in.x >= gear->x_min, "rate-undercut", TS_WARN);
    if (finding == NULL)
        return;
    ts_rate_limit(finding, "x", gear->in.x, gear->x_min, TS_KIND_NUMBER);
    finding->source = "ISO 21771:2007";
    ts_rate_says(desk, finding, "the teeth are undercut: a profile shift of %s is below %s",
                 ts_rate_shown(desk, gear->in.x, TS_KIND_NUMBER),
                 ts_rate_shown(desk, gear->x_min, TS_KIND_NUMBER));
    ts_rate_remedy(desk, finding, "use x of at least %s, or more teeth",
                   ts_rate_shown_outward(desk, gear->x_min, TS_KIND_NUMBER, +1));
}

static bool solve(ts_rate_desk *desk, ts_rated_gear *of)
{
    ts_cylindrical_frame     *frame = &of->frame;
    ts_cylindrical_gear_input in;

    ts_rate_open_section(desk, &section);
    frame->m_n      = ts_rate_take(desk, "m_n");
    frame->alpha_n  = ts_rate_take(desk, "alpha_n");
    frame->beta     = ts_rate_take(desk, "beta");
    in.z            = ts_rate_take_whole(desk, "z");
    in.x            = ts_rate_take(desk, "x");
    in.k            = ts_rate_take(desk, "k");
    in.rack.h_aPs   = ts_rate_take(desk, "h_aPs");
    in.rack.h_fPs   = ts_rate_take(desk, "h_fPs");
    in.rack.rho_fPs = FILLET_A;
    if (desk->failed)
        return false;
    in.rack.rho_fPs = fmax(0.0, ts_basic_rack_fitted(&in.rack, frame->alpha_n).rho_fPs);
    ts_rate_assume(desk, "rho_fPs", in.rack.rho_fPs, TS_KIND_NUMBER,
                   "that of ISO 53, profile A, or the full root round; of what is told only "
                   "undercut depends on it");
    bool        solved  = ts_cylindrical_gear_sound(frame, &in);
    ts_finding *finding = ts_rate_judge(desk, solved, "rate-no-rack", TS_REFUSE);
    ts_rate_limit(finding, "h_fPs", in.rack.h_fPs,
                  0.25 * 3.14159265358979323846 / tan(frame->alpha_n), TS_KIND_NUMBER);
    ts_rate_says(desk, finding, "the flanks of the rack meet above its root line");
    if (finding != NULL)
        ts_rate_remedy(desk, finding, "use h_fPs below %s, or a smaller pressure angle",
                       ts_rate_shown_outward(desk, finding->limit, TS_KIND_NUMBER, -1));
    if (solved) {
        ts_cylindrical_frame_solve(frame, desk->workings);
        ts_cylindrical_gear_solve(frame, &in, TS_GEAR_ALONE, &of->gear, desk->workings);
        judge_undercut(desk, &of->gear);
        solved           = judge_flank(desk, &of->gear);
        const double d_a = of->gear.d_a, d = of->gear.d;
        of->h_a = TS_STEP(desk->workings, h_a_formula, (d_a - d) / 2.0, d_a, d);
    }
    (void)ts_rate_close_section(desk);
    return solved;
}

void ts_rate_tooth_element(ts_rate_desk *desk, const ts_rate_tooth *given)
{
    ts_rated_gear of = {.k_W     = "k_W",
                        .D_M     = "D_M",
                        .E_sns   = "E_sns",
                        .E_sni   = "E_sni",
                        .b       = NAN,
                        .nominal = TS_EVERY_CONDITION,
                        .upper   = TS_RATED_UPPER,
                        .lower   = TS_RATED_LOWER};

    ts_rate_open_element(desk, "tooth measurement", &ts_table_rate_tooth, given);
    if (!desk->failed && solve(desk, &of))
        ts_rate_gear_measures(desk, &of);
    ts_rate_close_element(desk);
}
