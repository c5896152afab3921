/* bank/bind_gear.c: published cases about one cylindrical gear by itself. */
#include "bank/bank_case.h"
#include "element/cylindrical_gear.h"
#include "element/involute.h"
#include "element/measurement.h"

#include <math.h>

/* Cases name the module m or m_n, the angle alpha or alpha_n, and leave out a helix angle of 0. */
static void read_frame(ts_case *c, ts_cylindrical_frame *frame)
{
    const char *module = ts_case_gives(c, "m_n") ? "m_n" : "m";
    const char *angle  = ts_case_gives(c, "alpha_n") ? "alpha_n" : "alpha";

    *frame = (ts_cylindrical_frame){
        .m_n     = ts_case_given(c, module, TS_KIND_LENGTH),
        .alpha_n = ts_case_given(c, angle, TS_KIND_ANGLE),
        .beta    = ts_case_given_or(c, "beta", TS_KIND_ANGLE, 0.0),
    };
    if (!ts_cylindrical_frame_sound(frame))
        ts_case_spoil(c, "are out of range", "module or angles");
    ts_cylindrical_frame_solve(frame, NULL);
}

static void solve_gear(ts_case *c, const ts_cylindrical_frame *frame, int z, double x,
                       ts_cylindrical_gear *gear)
{
    const ts_cylindrical_gear_input in = {
        .z = z, .x = x, .rack = ts_basic_rack_fitted(&ts_basic_rack_A, frame->alpha_n)};

    if (!ts_cylindrical_gear_sound(frame, &in))
        ts_case_spoil(c, "are out of range", "teeth, profile shift or rack");
    ts_cylindrical_gear_solve(frame, &in, TS_GEAR_ALONE, gear, NULL);
}

static void read_gear(ts_case *c, ts_cylindrical_frame *frame, ts_cylindrical_gear *gear)
{
    read_frame(c, frame);
    solve_gear(c, frame, ts_case_whole(c, "z"), ts_case_given_or(c, "x", TS_KIND_NUMBER, 0.0),
               gear);
}

static void involute_table(ts_case *c)
{
    for (size_t i = 0; i < ts_case_length(c, "angles"); i++) {
        const double alpha = ts_case_given_at(c, "angles", i, TS_KIND_ANGLE);

        ts_case_computed_as(c, ts_inv(alpha), TS_KIND_ANGLE, "inv_%s",
                            ts_case_printed_at(c, "angles", i));
    }
}

static void tooth_chord(ts_case *c)
{
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  gear;

    read_gear(c, &frame, &gear);
    const double         h_a   = ts_case_given(c, "h_a", TS_KIND_LENGTH);
    const ts_tooth_chord chord = ts_chordal_thickness(&frame, &gear, h_a, NULL);
    ts_case_computed(c, "s_n", chord.s_n, TS_KIND_LENGTH);
    ts_case_computed(c, "z_v", chord.z_v, TS_KIND_NUMBER);
    ts_case_computed(c, "theta_v", chord.theta_v, TS_KIND_ANGLE);
    ts_case_computed(c, "s_chord", chord.s_c, TS_KIND_LENGTH);
    ts_case_computed(c, "h_chord", chord.h_c, TS_KIND_LENGTH);
}

static void top_land(ts_case *c)
{
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  gear;

    read_gear(c, &frame, &gear);
    ts_case_computed(c, "d_b", gear.d_b, TS_KIND_LENGTH);
    ts_case_computed(c, "d_a", gear.d_a, TS_KIND_LENGTH);
    ts_case_computed(c, "alpha_a", gear.alpha_at, TS_KIND_ANGLE);
    ts_case_computed(c, "inv_alpha_a", ts_inv(gear.alpha_at), TS_KIND_ANGLE);
    ts_case_computed(c, "half_angle", gear.s_at / gear.d_a, TS_KIND_ANGLE);
    ts_case_computed(c, "s_a", gear.s_at, TS_KIND_LENGTH);
}

static void span_W(ts_case *c)
{
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  gear;
    const int            k = ts_case_whole(c, "k");

    read_gear(c, &frame, &gear);
    if (k < 1)
        ts_case_spoil(c, "is out of range", "k");
    ts_case_computed(c, "W", ts_span_width(&frame, &gear, k, NULL), TS_KIND_LENGTH);
    ts_case_computed(c, "k_theory", ts_span_teeth(&frame, &gear, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "alpha_t", frame.alpha_t, TS_KIND_ANGLE);
}

/* sign -1: internal gears, whose teeth and shifts are negative by ISO 21771. */
static void measure_pins(ts_case *c, int sign)
{
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  gear;

    read_frame(c, &frame);
    const double D_M = ts_case_given(c, "d_p", TS_KIND_LENGTH);
    const double x   = ts_case_given_or(c, "x", TS_KIND_NUMBER, 0.0);
    for (size_t i = 0; i < ts_case_length(c, "z_list"); i++) {
        const int z = ts_case_whole_at(c, "z_list", i);

        solve_gear(c, &frame, sign * z, sign * x, &gear);
        ts_case_computed_as(c, ts_over_pins(&frame, &gear, D_M, NULL), TS_KIND_LENGTH, "M_%s",
                            ts_case_printed_at(c, "z_list", i));
    }
}

static void over_pins_ext(ts_case *c)
{
    measure_pins(c, 1);
}

static void between_pins_int(ts_case *c)
{
    measure_pins(c, -1);
}

static void undercut(ts_case *c)
{
    const double         alpha_n = ts_case_given(c, "alpha", TS_KIND_ANGLE);
    const double         beta    = ts_case_given_or(c, "beta", TS_KIND_ANGLE, 0.0);
    ts_basic_rack        rack    = {.h_aPs   = 1.0,
                                    .h_fPs   = ts_case_given(c, "h_fP", TS_KIND_NUMBER),
                                    .rho_fPs = ts_case_given(c, "rho_fP", TS_KIND_NUMBER)};
    ts_cylindrical_frame frame   = {.m_n = 1.0, .alpha_n = alpha_n, .beta = beta};

    if (!ts_cylindrical_frame_sound(&frame) || !ts_basic_rack_possible(&rack, alpha_n))
        ts_case_spoil(c, "cannot exist", "the rack");
    ts_cylindrical_frame_solve(&frame, NULL);
    ts_case_computed(c, "z_min", ts_gear_z_min(&rack, alpha_n, beta, NULL), TS_KIND_NUMBER);
    for (size_t i = 0; i < ts_case_length(c, "z_list"); i++) {
        const ts_cylindrical_gear_input in = {.z = ts_case_whole_at(c, "z_list", i), .rack = rack};
        ts_cylindrical_gear             gear;

        if (in.z < 1)
            ts_case_spoil(c, "is out of range", "z_list");
        ts_cylindrical_gear_solve(&frame, &in, TS_GEAR_ALONE, &gear, NULL);
        ts_case_computed_as(c, gear.x_min, TS_KIND_NUMBER, "x_min_%s",
                            ts_case_printed_at(c, "z_list", i));
    }
}

static const ts_binding bindings[] = {
    {"involute_table", involute_table},
    {"tooth_chord", tooth_chord},
    {"top_land", top_land},
    {"span_W", span_W},
    {"over_pins_ext", over_pins_ext},
    {"between_pins_int", between_pins_int},
    {"undercut", undercut},
};
TS_BINDINGS(bindings);
