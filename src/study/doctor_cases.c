/* Which published values must every installation reproduce?
 *
 * The inputs are those of the printed examples; the same functions serve the drive.  The whole bank
 * stands in tests/reference/ and runs with `make bank`.
 */
#include "study/doctor_cases.h"

#include "base/rational.h"
#include "element/bevel_force.h"
#include "element/bevel_pair.h"
#include "element/cylindrical_pair.h"
#include "element/helical_force.h"
#include "element/hunting.h"
#include "element/involute.h"
#include "element/mating_limit.h"
#include "element/measurement.h"
#include "element/stern_brocot.h"
#include "element/tooth_force.h"
#include "quantity/quantity.h"

#include <math.h>

#define DEGREE (3.14159265358979323846 / 180.0)

static double involute_20(void)
{
    return ts_inv(20.0 * DEGREE);
}

static ts_cylindrical_pair spur(int z_1, int z_2, double m_n, double x_1, double x_2)
{
    const ts_cylindrical_pair_input in = {
        .z_1     = z_1,
        .z_2     = z_2,
        .m_n     = m_n,
        .alpha_n = 20.0 * DEGREE,
        .x_1     = x_1,
        .x_2     = x_2,
        .shift   = TS_SHIFT_GIVEN,
        .tip     = TS_TIP_GIVEN,
        .rack    = ts_basic_rack_C,
    };
    ts_cylindrical_pair pair;
    return ts_cylindrical_pair_solve(&in, &pair, NULL) == TS_PAIR_FINE
               ? pair
               : (ts_cylindrical_pair){.a_w = NAN, .eps_alpha = NAN};
}

static double centre_of_shifted_pair(void)
{
    return spur(12, 24, 3e-3, 0.6, 0.36).a_w * 1e3;
}

static double contact_ratio(void)
{
    return spur(28, 44, 1e-3, 0.0, 0.0).eps_alpha;
}

static double least_teeth_at_ratio(void)
{
    return ts_teeth_least_at_ratio(1.0, 20.0 * DEGREE, 0.0, 3.0, NULL);
}

static double span(void)
{
    ts_cylindrical_frame frame = {.m_n = 3e-3, .alpha_n = 20.0 * DEGREE};
    ts_cylindrical_frame_solve(&frame, NULL);
    const ts_cylindrical_gear_input in = {.z = 24, .x = 0.4, .rack = ts_basic_rack_C};
    ts_cylindrical_gear             gear;
    ts_cylindrical_gear_solve(&frame, &in, TS_GEAR_ALONE, &gear, NULL);
    return ts_span_width(&frame, &gear, 4, NULL) * 1e3;
}

static double chord(void)
{
    ts_cylindrical_frame frame = {.m_n = 10e-3, .alpha_n = 20.0 * DEGREE};
    ts_cylindrical_frame_solve(&frame, NULL);
    const ts_cylindrical_gear_input in = {.z = 12, .x = 0.3, .rack = ts_basic_rack_C};
    ts_cylindrical_gear             gear;
    ts_cylindrical_gear_solve(&frame, &in, TS_GEAR_ALONE, &gear, NULL);
    return ts_chordal_thickness(&frame, &gear, 13e-3, NULL).s_c * 1e3;
}

/* Jindal 26-2: 5 kW at 1200 rpm through 25 teeth of normal module 4 mm, helix 20 degrees. */
static double helical_F_t(void)
{
    const double omega = 1200.0 * 2.0 * 180.0 * DEGREE / 60.0;
    const double d     = 25.0 * 4e-3 / cos(20.0 * DEGREE);
    return ts_tangential_force(ts_torque_of_power(5000.0, omega, NULL), d, NULL);
}

static double helical_F_a(void)
{
    return ts_helical_forces(helical_F_t(), 20.0 * DEGREE, 20.0 * DEGREE, NULL).F_a;
}

static double bevel_delta(void)
{
    const ts_bevel_pair_input in = {
        .z_1 = 30, .z_2 = 45, .m_et = 6e-3, .Sigma = 90.0 * DEGREE, .alpha_n = 20.0 * DEGREE};
    ts_bevel_pair pair;
    return ts_bevel_pair_solve(&in, &pair, NULL) == TS_BEVEL_FINE ? pair.delta_1 / DEGREE
                                                                  : (double)NAN;
}

/* Companion of example 17.8: right hand, driving, convex flank loaded: towards the apex. */
static double bevel_F_a(void)
{
    return ts_bevel_forces(3978.8736, 14.5 * DEGREE, 30.0 * DEGREE, 36.86989765 * DEGREE, false,
                           NULL)
        .F_a;
}

static double best_ratio_over(void)
{
    return (double)ts_nearest_ratio(1.234, 100, 40).over;
}

static double hunting_engagements(void)
{
    return (double)ts_hunting_of(31, 64).meshes;
}

static double horsepower(void)
{
    double            si = NAN;
    const ts_unit    *unit;
    ts_quantity_fault fault;
    return ts_quantity_parse(TS_TEXT("1 hp"), TS_KIND_POWER, &si, &unit, &fault) ? si : (double)NAN;
}

static double pound_inch(void)
{
    double            si = NAN;
    const ts_unit    *unit;
    ts_quantity_fault fault;
    return ts_quantity_parse(TS_TEXT("1 lbf.in"), TS_KIND_TORQUE, &si, &unit, &fault) ? si
                                                                                      : (double)NAN;
}

static const ts_doctor_case cases[] = {
    {"geometry of teeth", "involute function of 20 deg",
     "Machinery's Handbook, table of involute functions (from memory)", 0.014904, 4e-5,
     involute_20},
    {"geometry of teeth", "working centre distance of 12/24 with x 0.6/0.36, mm",
     "Elements of Metric Gear Technology, profile-shifted spur pair (from memory)", 56.4999, 2e-6,
     centre_of_shifted_pair},
    {"geometry of teeth", "contact ratio of 28/44 at 20 deg",
     "Bevan, The Theory of Machines, chapter 10 example 6", 1.685, 3e-4, contact_ratio},
    {"geometry of teeth", "least teeth of a pinion at ratio 3",
     "Bevan, The Theory of Machines, chapter 10 example 4", 14.98, 1e-3, least_teeth_at_ratio},
    {"geometry of teeth", "span over 4 teeth, mm",
     "Elements of Metric Gear Technology, span of a spur gear (from memory)", 32.8266, 2e-6, span},
    {"geometry of teeth", "chordal thickness, mm", "Elements of Metric Gear Technology, table 10-1",
     17.8256, 4e-6, chord},
    {"geometry of teeth", "pitch angle of bevels 30/45, deg",
     "Jindal, Machine Design, example 27-3", 33.7, 6e-4, bevel_delta},
    {"forces of teeth", "tangential force of a helical gear, N",
     "Jindal, Machine Design, example 26-2", 747.78, 1e-5, helical_F_t},
    {"forces of teeth", "axial force of a helical gear, N", "Jindal, Machine Design, example 26-2",
     272.2, 2e-4, helical_F_a},
    {"forces of teeth", "axial force of a spiral bevel, N",
     "Scilab textbook companion 698, example 17.8", -1124.8, 3e-4, bevel_F_a},
    {"numbers of teeth", "best ratio to 1.234 under a denominator of 40: numerator",
     "Engineering Commons, article on the Stern-Brocot tree and gearing", 37.0, 0.0,
     best_ratio_over},
    {"numbers of teeth", "engagements until the same teeth of 31/64 meet",
     "derived: least common multiple", 1984.0, 0.0, hunting_engagements},
    {"units", "one horsepower, W", "NIST SP 811 (2008), appendix B (from memory)", 745.6999, 2e-7,
     horsepower},
    {"units", "one pound-force inch, N.m", "NIST SP 811 (2008), appendix B (from memory)",
     0.1129848, 3e-7, pound_inch},
};

enum { own_count = sizeof cases / sizeof cases[0] };

size_t ts_doctor_case_count(void)
{
    return own_count + ts_doctor_metal_count;
}

const ts_doctor_case *ts_doctor_case_at(size_t index)
{
    return index < own_count ? &cases[index] : &ts_doctor_metal[index - own_count];
}
