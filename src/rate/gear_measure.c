/* rate/gear_measure.c: which sizes should an inspector find on a gear of a rate file? */
#include "rate/gear_measure.h"

#include "element/thickness_allowance.h"

#define ISO_21771 "ISO 21771:2007"

static const char *const asked[] = {"x",   "s_n",  "k",   "W_k", "D_M",
                                    "d_K", "M_dR", "s_c", "h_c", NULL};

/* ---- span --------------------------------------------------------------------------------------
 */

/* Teeth under the span: as given, or the whole number nearest to the best. */
static int span_teeth(ts_rate_desk *desk, const ts_rated_gear *of)
{
    const double given = ts_rate_take(desk, of->k_W);
    const double exact = ts_span_teeth(&of->frame, &of->gear, desk->workings);
    if (desk->failed || (isnan(given) && isnan(exact)))
        return 0;
    const double nearest = fmax(1.0, floor(exact + 0.5));
    if (!isnan(given))
        ts_rate_borrow(desk, "k", given, of->k_W);
    else
        ts_workings_assumed(desk->workings, "k", nearest, "1",
                            "the whole number of teeth nearest to k_W");
    return (int)(isnan(given) ? nearest : given);
}

/* Where the span touches the flanks (derived: half of its transverse length is the base tangent).
 */
static void judge_span(ts_rate_desk *desk, const ts_rated_gear *of, int k, double W_k)
{
    const double tangent = W_k * cos(of->frame.beta_b);
    const double d_W     = sqrt(of->gear.d_b * of->gear.d_b + tangent * tangent);
    const double least   = isnan(of->gear.d_Ff) ? of->gear.d_b : of->gear.d_Ff;
    const bool   touches = d_W <= of->gear.d_a && d_W >= least;
    ts_finding  *finding = ts_rate_judge(desk, touches, "rate-span", TS_WARN);

    ts_rate_limit(finding, "W_k", W_k, NAN, TS_KIND_LENGTH);
    ts_rate_says(desk, finding,
                 "a span over %d teeth touches at the diameter %s, where the flanks reach from %s "
                 "to %s",
                 k, ts_rate_shown(desk, d_W, TS_KIND_LENGTH),
                 ts_rate_shown(desk, least, TS_KIND_LENGTH),
                 ts_rate_shown(desk, of->gear.d_a, TS_KIND_LENGTH));
    ts_rate_remedy(desk, finding, "span %s teeth", d_W > of->gear.d_a ? "fewer" : "more");
    if (isnan(of->b) || !(of->frame.beta > 0.0))
        return;
    const double wide = W_k * sin(of->frame.beta_b);
    finding           = ts_rate_judge(desk, of->b >= wide, "rate-span-width", TS_WARN);
    ts_rate_limit(finding, "b", of->b, wide, TS_KIND_LENGTH);
    ts_rate_says(desk, finding,
                 "a face of %s is too narrow for a span over %d helical teeth, which needs %s",
                 ts_rate_shown(desk, of->b, TS_KIND_LENGTH), k,
                 ts_rate_shown(desk, wide, TS_KIND_LENGTH));
    ts_rate_remedy(desk, finding, "measure over pins, or over fewer teeth");
}

/* ---- pins --------------------------------------------------------------------------------------
 */

#define PIN_OUTSIDE 1.728
#define PIN_INSIDE  1.68

static double pin_of(ts_rate_desk *desk, const ts_rated_gear *of)
{
    const bool   inside = of->gear.in.z < 0;
    const double given  = ts_rate_take(desk, of->D_M);
    const double usual  = (inside ? PIN_INSIDE : PIN_OUTSIDE) * of->frame.m_n;

    if (!isnan(given)) {
        ts_rate_borrow(desk, "D_M", given, of->D_M);
        return given;
    }
    if (!desk->failed)
        ts_workings_assumed(desk->workings, "D_M", usual, "m",
                            inside ? "1.68 m_n for an internal gear; common practice, no source"
                                   : "1.728 m_n; common practice, no source");
    return usual;
}

static void judge_pin(ts_rate_desk *desk, const ts_rated_gear *of, double D_M, double M_dR)
{
    ts_finding *finding = ts_rate_judge(desk, !isnan(M_dR), "rate-pin", TS_WARN);

    ts_rate_limit(finding, "D_M", D_M, NAN, TS_KIND_LENGTH);
    ts_rate_says(desk, finding, "a pin of %s does not touch both flanks of a space",
                 ts_rate_shown(desk, D_M, TS_KIND_LENGTH));
    ts_rate_remedy(desk, finding, "use a pin of about %s",
                   ts_rate_shown(desk, 1.7 * of->frame.m_n, TS_KIND_LENGTH));
}

/* ---- sections ----------------------------------------------------------------------------------
 */

/* What the open section calls d, k_W ... is known. */
static void measure(ts_rate_desk *desk, const ts_rated_gear *of, int k, double D_M, bool judged)
{
    const ts_cylindrical_frame *frame    = &of->frame;
    const ts_cylindrical_gear  *gear     = &of->gear;
    ts_workings                *workings = desk->workings;

    if (k > 0) {
        const double W_k = ts_span_width(frame, gear, k, workings);
        if (judged)
            judge_span(desk, of, k, W_k);
    }
    const double M_dR = ts_over_pins(frame, gear, D_M, workings);
    if (judged)
        judge_pin(desk, of, D_M, M_dR);
    if (gear->in.z > 0)
        (void)ts_chordal_thickness(frame, gear, of->h_a, workings);
}

/* The same gear with the teeth that an allowance leaves. */
static void measure_at(ts_rate_desk *desk, const ts_rated_gear *of, const char *key, int k,
                       double D_M)
{
    static const char *const titles[3][2] = {
        {"Measurement at the upper allowance", "Measurement at the lower allowance"},
        {"Measurement of gear 1 at the upper allowance",
         "Measurement of gear 1 at the lower allowance"},
        {"Measurement of gear 2 at the upper allowance",
         "Measurement of gear 2 at the lower allowance"}};
    const bool             lower   = key == of->E_sni;
    ts_rated_gear          thinned = *of;
    const ts_rated_section section = {.title     = titles[of->number][lower ? 1 : 0],
                                      .standard  = ISO_21771,
                                      .condition = lower ? of->lower : of->upper,
                                      .asked     = asked};
    if (!ts_rate_is_given(desk, key))
        return;
    ts_rate_open_section(desk, &section);
    const double E_sn = ts_rate_take(desk, key), x = of->gear.in.x;
    if (of->borrow != NULL)
        of->borrow(desk, of);
    ts_rate_borrow(desk, "E_sn", E_sn, key);
    ts_rate_borrow(desk, "x_nominal", x, of->number == 0 ? "x" : (of->number == 1 ? "x_1" : "x_2"));
    if (!desk->failed) {
        thinned.gear.in.x = ts_generated_shift(x, E_sn, &of->frame, TS_GEAR_ALONE, desk->workings);
        const ts_subject nominal = {desk->element->node, of->nominal};
        if (k > 0)
            ts_workings_borrow(desk->workings, "k", k, nominal, "k");
        ts_workings_borrow(desk->workings, "D_M", D_M, nominal, "D_M");
        measure(desk, &thinned, k, D_M, false);
    }
    (void)ts_rate_close_section(desk);
}

void ts_rate_gear_measures(ts_rate_desk *desk, const ts_rated_gear *of)
{
    static const char *const titles[3] = {"Measurement", "Measurement of gear 1",
                                          "Measurement of gear 2"};
    const ts_rated_section   section   = {.title     = titles[of->number],
                                          .standard  = ISO_21771,
                                          .condition = of->nominal,
                                          .asked     = asked};
    ts_rate_open_section(desk, &section);
    if (of->borrow != NULL)
        of->borrow(desk, of);
    const int    k   = of->gear.in.z > 0 ? span_teeth(desk, of) : 0;
    const double D_M = pin_of(desk, of);
    if (!desk->failed)
        measure(desk, of, k, D_M, true);
    (void)ts_rate_close_section(desk);
    measure_at(desk, of, of->E_sns, k, D_M);
    measure_at(desk, of, of->E_sni, k, D_M);
}
