/* rate/tolerance_element.c: how far may the flanks of a gear of a rate file deviate? */
#include "element/tooth_tolerance.h"
#include "rate/rate_desk.h"

#define YEARS 3

static const ts_formula d_formula = {
    .symbol  = "d",
    .meaning = "reference diameter",
    .unit    = "m",
    .text    = "abs(z)*m_n/cos(beta)",
    .source  = "ISO 21771:2007",
};

static const char *const asked_2013[] = {"d",         "f_pT",     "F_pT",     "f_HalphaT",
                                         "f_falphaT", "F_alphaT", "f_HbetaT", "f_fbetaT",
                                         "F_betaT",   "F_rT",     NULL};
static const char *const asked_1995[] = {"d",        "f_pt",    "F_p",     "f_Halpha",
                                         "f_falpha", "F_alpha", "f_Hbeta", "f_fbeta",
                                         "F_beta",   "F_r",     NULL};
static const char *const asked_1997[] = {"F_ipp", "f_ipp", NULL};

static const ts_rated_section sections[YEARS] = {
    [TS_TOLERANCE_2013] = {.title     = "Flank tolerances",
                           .standard  = "ISO 1328-1:2013",
                           .condition = TS_EVERY_CONDITION,
                           .asked     = asked_2013},
    [TS_TOLERANCE_1995] = {.title     = "Flank tolerances",
                           .standard  = "ISO 1328-1:1995",
                           .condition = TS_EVERY_CONDITION,
                           .asked     = asked_1995},
    [TS_RADIAL_1997]    = {.title     = "Radial composite tolerances",
                           .standard  = "ISO 1328-2:1997",
                           .condition = TS_EVERY_CONDITION,
                           .asked     = asked_1997},
};

static const char *const rules[YEARS][TS_TOLERANCE_REMARKS] = {
    {"rate-range-class", "rate-range-module", "rate-range-diameter", "rate-range-width",
     "rate-range-teeth", "rate-range-helix"},
    {"rate-range-class", "rate-range-module", "rate-range-diameter", "rate-range-width",
     "rate-range-teeth", "rate-range-helix"},
    {"rate-range-radial-class", "rate-range-radial-module", "rate-range-radial-diameter",
     "rate-range-radial-width", "rate-range-radial-teeth", "rate-range-radial-helix"},
};

/* 1995 and 1997 know no value outside of their ranges, and no edition knows one for a class that it
 * lacks. */
static void say_remarks(ts_rate_desk *desk, unsigned remarks, ts_tolerance_year year)
{
    for (int i = 0; i < TS_TOLERANCE_REMARKS; i++) {
        const ts_tolerance_remark remark  = (ts_tolerance_remark)(1 << i);
        const bool                here    = (remarks & (unsigned)remark) != 0;
        const bool                lacking = remark == TS_TOLERANCE_CLASS;
        ts_finding               *finding =
            ts_rate_judge(desk, !here, rules[year][i], lacking ? TS_REFUSE : TS_WARN);
        if (finding == NULL)
            continue;
        finding->source = ts_tolerance_remark_clause(remark, year);
        ts_rate_says(desk, finding, "%s", ts_tolerance_remark_says(remark, year));
    }
}

static ts_tolerance_input take_inputs(ts_rate_desk *desk)
{
    ts_tolerance_input in  = {.m_n   = ts_rate_take(desk, "m_n"),
                              .beta  = ts_rate_take(desk, "beta"),
                              .b     = ts_rate_take(desk, "b"),
                              .d     = ts_rate_take(desk, "d"),
                              .class = ts_rate_take_whole(desk, "class")};
    const double       m_n = in.m_n, beta = in.beta, z = ts_rate_take(desk, "z");

    ts_rate_borrow(desk, "A", in.class, "class");
    if (isnan(in.d) && !desk->failed)
        in.d = TS_STEP(desk->workings, d_formula, fabs(z) * m_n / cos(beta), z, m_n, beta);
    return in;
}

static void rate_year(ts_rate_desk *desk, ts_tolerance_year year)
{
    ts_rate_open_section(desk, &sections[year]);
    const ts_tolerance_input in      = take_inputs(desk);
    unsigned                 remarks = 0;
    if (desk->failed)
        return;
    switch (year) {
    case TS_TOLERANCE_2013:
        remarks = ts_tooth_tolerance_2013(&in, desk->workings).remarks;
        break;
    case TS_TOLERANCE_1995:
        remarks = ts_tooth_tolerance_1995(&in, desk->workings).remarks;
        break;
    case TS_RADIAL_1997:
        remarks = ts_radial_tolerance_1997(&in, desk->workings).remarks;
        break;
    }
    /* Without a face width nobody asks for the helix. */
    if (isnan(in.b))
        remarks &= ~(unsigned)TS_TOLERANCE_WIDTH;
    say_remarks(desk, remarks, year);
    (void)ts_rate_close_section(desk);
}

void ts_rate_tolerance_element(ts_rate_desk *desk, const ts_rate_tolerance *given)
{
    ts_rate_open_element(desk, "tolerance", &ts_table_rate_tolerance, given);
    const bool old = ts_rate_choose(desk, "edition") == 1;

    rate_year(desk, old ? TS_TOLERANCE_1995 : TS_TOLERANCE_2013);
    if (old)
        rate_year(desk, TS_RADIAL_1997);
    ts_rate_close_element(desk);
}
