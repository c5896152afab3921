/* element/tooth_tolerance.c: which range of its standard does a tolerance leave? */
#include "element/tooth_tolerance.h"

#include <stddef.h>

typedef struct remark_text {
    ts_tolerance_remark remark;
    const char         *says[3]; /* by ts_tolerance_year; NULL: the edition has no such limit */
} remark_text;

static const remark_text texts[TS_TOLERANCE_REMARKS] = {
    {TS_TOLERANCE_CLASS,
     {"flank classes go from 1 to 11", "accuracy grades go from 0 to 12",
      "accuracy grades of radial composite deviations go from 4 to 12"}},
    {TS_TOLERANCE_MODULE,
     {"the formulas are for modules from 0.5 mm to 70 mm",
      "there are no tolerances for modules below 0.5 mm and above 70 mm",
      "there are no tolerances for modules below 0.2 mm and above 10 mm"}},
    {TS_TOLERANCE_DIAMETER,
     {"the formulas are for reference diameters from 5 mm to 15 m",
      "there are no tolerances for reference diameters below 5 mm and above 10 m",
      "there are no tolerances for reference diameters below 5 mm and above 1 m"}},
    {TS_TOLERANCE_WIDTH,
     {"the formulas are for face widths from 4 mm to 1.2 m",
      "there are no helix tolerances for face widths below 4 mm and above 1 m", NULL}},
    {TS_TOLERANCE_TEETH, {"the formulas are for 5 to 1000 teeth", NULL, NULL}},
    {TS_TOLERANCE_HELIX, {"the formulas are for helix angles up to 45 degrees", NULL, NULL}},
};

const char *ts_tolerance_remark_says(ts_tolerance_remark remark, ts_tolerance_year year)
{
    for (size_t i = 0; i < TS_TOLERANCE_REMARKS; i++)
        if (texts[i].remark == remark && texts[i].says[year] != NULL)
            return texts[i].says[year];
    return "";
}

const char *ts_tolerance_remark_clause(ts_tolerance_remark remark, ts_tolerance_year year)
{
    static const char *const clause[] = {
        [TS_TOLERANCE_2013] = "ISO 1328-1:2013, clause 1 and 5.2 (from memory)",
        [TS_TOLERANCE_1995] = "ISO 1328-1:1995, clause 1 and 5.1 (from memory)",
        [TS_RADIAL_1997]    = "ISO 1328-2:1997, clause 1 and 5.1 (from memory)",
    };

    return ts_tolerance_remark_says(remark, year)[0] == '\0' ? "" : clause[year];
}
