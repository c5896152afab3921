/* model/field_whirl.c: what does the file say of whirling shafts? */
#include "model/drive.h"
#include "model/field.h"

static const ts_field whirl_fields[] = {
    {.key  = "spline stiffness",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_TORSIONAL_STIFFNESS,
     TS_AT(ts_whirling, spline_stiffness),
     .range   = TS_FROM(0.0, 1e6, "N.m/rad"),
     .preset  = {"0 N.m/rad", "a crowned spline tilts freely, which whirls earliest; common "
                               "practice, no source"},
     .says    = "Stiffness against tilting of either spline of a radial shaft.",
     .example = "500 N.m/rad"},
    {.key  = "bearing loss",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_whirling, bearing_loss),
     .range   = TS_FROM(0.0, 1.0, "%"),
     .preset  = {"4 %", "rolling bearings without a squeeze film; common practice, no source"},
     .says    = "Loss factor of the bearings: damping of their stiffness.",
     .example = "4 %"},
    {.key  = "balance grade",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_whirling, grade),
     .range   = TS_ABOVE(0.0, 100.0, "1"),
     .preset  = {"2.5", "G 2.5, gas turbines; ISO 21940-11:2016, table 1 (from memory)"},
     .says    = "Balance quality grade G of ISO 21940-11 to which each shaft is balanced, in mm/s.",
     .example = "2.5"},
};

const ts_record_table ts_table_whirl = {
    .id   = "whirl",
    .name = "the whirl",
    .says = "What is taken where critical speeds and unbalance of the shafts are computed.",
    TS_TABLE(ts_whirling, whirl_fields),
};
