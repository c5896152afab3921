/* model/field_rate_bin.c: what does one bin of the spectrum of a gear pair say? */
#include "model/field_rate_parts.h"

static const char *const flanks[] = {"one", "other", NULL};

static const ts_field bin_fields[] = {
    {.key  = "T_1",
     .need = TS_REQUIRED,
     TS_RATE_MEASURE(TS_KIND_TORQUE),
     TS_AT(ts_rate_bin, T_1),
     .range   = TS_FROM(0.0, 1e8, "N.m"),
     .says    = "Torque of gear 1.",
     .example = "95 N.m"},
    {.key  = "n_1",
     .need = TS_REQUIRED,
     TS_RATE_MEASURE(TS_KIND_ROTATIONAL_SPEED),
     TS_AT(ts_rate_bin, n_1),
     .range   = TS_ABOVE(0.0, 20943.951023931954923, "rpm"), /* 200 000 rpm */
     .says    = "Speed of gear 1.",
     .example = "9000 rpm"},
    {.key  = "L_h",
     .need = TS_REQUIRED,
     TS_RATE_MEASURE(TS_KIND_TIME),
     TS_AT(ts_rate_bin, L_h),
     .range   = TS_ABOVE(0.0, 3.6e9, "h"),
     .says    = "Time under this load.",
     .example = "4000 h"},
    {.key = "K_A",
     TS_RATE_MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bin, K_A),
     .range   = TS_ABOVE(0.0, 10.0, "1"),
     .says    = "Application factor under this load; else that of the pair.",
     .example = "1.25"},
    {.key = "K_Hbeta",
     TS_RATE_MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bin, K_Hbeta),
     .range   = TS_FROM(1.0, 100.0, "1"),
     .says    = "Face load factor under this load; else that of the pair.",
     .example = "1.2"},
    {.key = "F_betax",
     TS_RATE_MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_bin, F_betax),
     .range   = TS_FROM(0.0, 0.01, "um"),
     .says    = "Misalignment of the mesh under this load; else that of the pair.",
     .example = "9 um"},
    {.key = "f_sh",
     TS_RATE_MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_bin, f_sh),
     .range = TS_FROM(0.0, 0.01, "um"),
     .says  = "Its part from the deflection of the shafts under this load; else that of the pair, "
              "which then stands for the greatest load and falls with it.",
     .example = "4 um"},
    {.key  = "flank",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_bin, flank),
     .choices = flanks,
     .preset  = {"one", "all loads are borne by the same flanks"},
     .says    = "Which flanks bear it: what wears one does not wear the other.",
     .example = "other"},
};

static const char *judge_bin(const void *record, const char **key, const char **expected)
{
    const ts_rate_bin *bin = record;
    const int stated = (bin->K_Hbeta.standing == TS_GIVEN) + (bin->F_betax.standing == TS_GIVEN) +
                       (bin->f_sh.standing == TS_GIVEN);
    *key      = bin->F_betax.standing == TS_GIVEN ? "F_betax" : "f_sh";
    *expected = "one of `K_Hbeta`, `F_betax` and `f_sh`";
    return stated > 1 ? "the face load of this bin is given more than once" : NULL;
}

const ts_record_table ts_table_rate_bin = {
    .id   = "rate_bin",
    .name = "a bin of a spectrum",
    .says = "One load of a gear pair, how fast and how long.",
    TS_TABLE(ts_rate_bin, bin_fields),
    .judge = judge_bin,
};
