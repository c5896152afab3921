/* report/fine.c: how are lengths and unbalances shown that are small? */
#include "report/fine.h"

/* NIST SP 811, Appendix B: exact inch; avoirdupois ounce, a sixteenth of 0.45359237 kg. */
#define INCH  0.0254
#define OUNCE (0.45359237 / 16.0)

double ts_fine_scale(ts_units units)
{
    return units == TS_UNITS_US ? 1e3 / INCH : 1e6;
}

const char *ts_fine_unit(ts_units units)
{
    return units == TS_UNITS_US ? "mil" : "um";
}

double ts_unbalance_scale(ts_units units)
{
    return units == TS_UNITS_US ? 1.0 / (OUNCE * INCH) : 1e6;
}

const char *ts_unbalance_unit(ts_units units)
{
    return units == TS_UNITS_US ? "oz.in" : "g.mm";
}
