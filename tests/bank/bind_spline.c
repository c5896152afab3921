/* bank/bind_spline.c: published cases about involute splines. */
#include "bank/bank_case.h"
#include "element/involute_spline.h"
#include "rating/spline/spline_stress.h"

static ts_spline read_spline(ts_case *c)
{
    ts_spline spline;

    if (!ts_spline_b921(ts_case_whole(c, "N"), ts_case_per(c, "P", TS_KIND_LENGTH),
                        ts_case_given(c, "phiD", TS_KIND_ANGLE), TS_SPLINE_FILLET_ROOT, &spline,
                        NULL))
        ts_case_spoil(c, "are out of range", "N, P or phiD");
    return spline;
}

static void geometry(ts_case *c)
{
    const ts_spline s = read_spline(c);

    ts_case_computed(c, "D", s.D, TS_KIND_LENGTH);
    ts_case_computed(c, "Db", s.D_b, TS_KIND_LENGTH);
    ts_case_computed(c, "sv", s.s_v, TS_KIND_LENGTH);
    ts_case_computed(c, "Dri", s.D_ri, TS_KIND_LENGTH);
    ts_case_computed(c, "Do", s.D_o, TS_KIND_LENGTH);
    ts_case_computed(c, "Di", s.D_i, TS_KIND_LENGTH);
    ts_case_computed(c, "Dre", s.D_re, TS_KIND_LENGTH);
    ts_case_computed(c, "DFi", s.D_Fi, TS_KIND_LENGTH);
    ts_case_computed(c, "DFe", s.D_Fe, TS_KIND_LENGTH);
}

static void between_pins(ts_case *c)
{
    const ts_spline s = read_spline(c);

    ts_case_computed(c, "Mi",
                     ts_spline_between_pins(&s, ts_case_given(c, "s", TS_KIND_LENGTH),
                                            ts_case_given(c, "di", TS_KIND_LENGTH), NULL),
                     TS_KIND_LENGTH);
}

static void factors(ts_case *c)
{
    const double cycles = ts_case_given(c, "cycles", TS_KIND_NUMBER);

    ts_case_computed(c, "Kf", ts_spline_fatigue_factor(cycles, false, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "Kw", ts_spline_wear_factor(ts_case_given(c, "revs", TS_KIND_NUMBER), NULL),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "Km",
                     ts_spline_misalignment_factor(ts_case_given(c, "face", TS_KIND_LENGTH),
                                                   ts_case_given(c, "misal", TS_KIND_NUMBER), NULL),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "Ka_pump", ts_spline_application_factor(TS_SPLINE_LIGHT_SHOCK, NULL),
                     TS_KIND_NUMBER);
}

static void stresses(ts_case *c)
{
    const ts_spline_load load = {
        .T    = ts_case_given(c, "T", TS_KIND_TORQUE),
        .N    = ts_case_whole(c, "N"),
        .D    = ts_case_given(c, "D", TS_KIND_LENGTH),
        .D_re = ts_case_given(c, "Dre", TS_KIND_LENGTH),
        .D_h  = ts_case_given(c, "Dh", TS_KIND_LENGTH),
        .L_e  = ts_case_given(c, "Le", TS_KIND_LENGTH),
        .t    = ts_case_given(c, "t", TS_KIND_LENGTH),
        .h    = ts_case_given(c, "h", TS_KIND_LENGTH),
        .K_a  = ts_case_given(c, "Ka", TS_KIND_NUMBER),
        .K_m  = ts_case_given(c, "Km", TS_KIND_NUMBER),
        .K_f  = ts_case_given(c, "Kf", TS_KIND_NUMBER),
        .K_w  = ts_case_given(c, "Kw", TS_KIND_NUMBER),
    };

    ts_case_computed(c, "Ss_root", ts_spline_root_shear(&load, NULL), TS_KIND_STRESS);
    ts_case_computed(c, "Ss_pitch", ts_spline_pitch_shear(&load, NULL), TS_KIND_STRESS);
    ts_case_computed(c, "Sc_flexible", ts_spline_pressure_flexible(&load, NULL), TS_KIND_STRESS);
    ts_case_computed(c, "Sc_fixed", ts_spline_pressure_fixed(&load, NULL), TS_KIND_STRESS);
}

static const ts_binding bindings[] = {
    {"spl-b921-36t-16-32", geometry},    {"spl-16t-20-pitch", geometry},
    {"spl-b921-36t-pins", between_pins}, {"spl-dudley-factors", factors},
    {"spl-dudley-stress", stresses},
};
TS_BINDINGS(bindings);
