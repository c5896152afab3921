/* rating/spline_number.c: how many teeth of which pitch does a public standard number mean? */
#include "base/number.h"
#include "rating/drive_splines.h"

#include <string.h>

/* Reads a number and what must follow it. */
static bool take(ts_text *rest, double *value, const char *then)
{
    size_t       taken  = 0;
    const size_t length = strlen(then);

    if (ts_number_parse(*rest, value, &taken) != TS_NUMBER_FINE || taken + length > rest->length ||
        memcmp(rest->at + taken, then, length) != 0)
        return false;
    *rest = (ts_text){rest->at + taken + length, rest->length - taken - length};
    return true;
}

static bool is_whole(double value)
{
    return value >= 6.0 && value <= 1000.0 && value == (double)(int)value;
}

static bool read_inch(ts_text rest, ts_spline_number *out)
{
    double N = 0.0, P = 0.0, P_s = 0.0;

    if (!take(&rest, &N, "T ") || !take(&rest, &P, "/") || !take(&rest, &P_s, "") ||
        rest.length != 0 || !is_whole(N) || !(P >= 2.5 && P <= 128.0) || P_s != 2.0 * P)
        return false;
    *out = (ts_spline_number){.N = N, .P_d = P / 0.0254};
    return true;
}

static bool read_metric(ts_text rest, ts_spline_number *out)
{
    double N = 0.0, m = 0.0;

    if (!take(&rest, &N, "z ") || !take(&rest, &m, "m") || rest.length != 0 || !is_whole(N) ||
        !(m >= 0.25 && m <= 10.0))
        return false;
    *out = (ts_spline_number){.N = N, .m = 1e-3 * m};
    return true;
}

bool ts_spline_number_read(const char *text, ts_spline_number *out)
{
    static const char inch[] = "B92.1 ", metric[] = "ISO 4156 ";

    if (strcmp(text, "AS972") == 0) { /* 16 teeth of 20 a inch of diameter: public notes (read) */
        *out = (ts_spline_number){.N = 16.0, .P_d = 20.0 / 0.0254};
        return true;
    }
    if (strncmp(text, inch, sizeof inch - 1) == 0)
        return read_inch(ts_text_of(text + sizeof inch - 1), out);
    if (strncmp(text, metric, sizeof metric - 1) == 0)
        return read_metric(ts_text_of(text + sizeof metric - 1), out);
    return false;
}
