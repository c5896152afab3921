/* model/field_rate_pair.c: what does a rate file say of a gear pair? */
#include "model/field_rate_parts.h"

#define OF_BOTH(name, member, ...) TS_RATE_OF_BOTH(ts_rate_pair, name, member, __VA_ARGS__)
#define MEASURE(of)                TS_RATE_MEASURE(of)

static const char *const racks[]  = {"A", "B", "C", "D", NULL};
static const char *const shifts[] = {"as given", "rest to 1", "rest to 2", "equal sliding", NULL};
static const char *const tips[]   = {"as given", "clearance kept", "diameters", NULL};
static const char *const leads[]  = {
     "straight", "crowned", "crowned well", "corrected", "corrected, crowned", "end relief", NULL};
static const char *const profiles[] = {"plain", "by experience", "by analysis", NULL};
/* In the order of ts_lubricant, with TS_LUBRICANT_COUNT names. */
static const char *const oils[]         = {"mineral oil",
                                           "polyalphaolefin",
                                           "polyglycol that water does not dissolve",
                                           "polyglycol that water dissolves",
                                           "traction fluid",
                                           "phosphate ester",
                                           "polyol ester",
                                           NULL};
static const char *const lubrications[] = {"jets", "dip", "submerged", NULL};
static const char *const drivers[]      = {"gear 1", "gear 2", NULL};
/* In the order of ts_flank_structure. */
static const char *const structures[] = {"through-hardened",
                                         "case-hardened, less than 10 % austenite",
                                         "case-hardened, 10 % to 20 % austenite",
                                         "case-hardened, 20 % to 30 % austenite",
                                         "nitrided",
                                         "phosphated",
                                         "copper-plated",
                                         "austenitic stainless",
                                         NULL};
static const char *const editions[]   = {"2019", "2006", NULL};

/* ---- defaults that depend on what is there ----------------------------------------------------
 */

#define ISO_53 "ISO 53:1998, table A.1, of the `rack` (from memory)"
#define ISO_53_ROUND                                                                               \
    "ISO 53:1998, table A.1, of the `rack`, or the full root round where that is smaller (from "   \
    "memory)"

static int rack_of(const void *record)
{
    const int rack = ((const ts_rate_pair *)record)->rack.value;
    return rack >= 0 && rack <= (int)TS_RACK_D ? rack : (int)TS_RACK_A;
}

static ts_preset dedendum_preset(const void *record)
{
    static const char *const of_rack[] = {"1.25", "1.25", "1.25", "1.4"};
    return (ts_preset){of_rack[rack_of(record)], ISO_53};
}

static ts_preset fillet_preset(const void *record)
{
    static const char *const of_rack[] = {"0.38", "0.3", "0.25", "0.39"};
    return (ts_preset){of_rack[rack_of(record)], ISO_53_ROUND};
}

static bool is_given(ts_measure measure)
{
    return measure.standing == TS_GIVEN;
}

/* With a centre distance a shift that is not given follows from it.  The sliding of internal gears
 * is not balanced by shifts: there the pinion stays as it is. */
static ts_preset shift_2_preset(const void *record)
{
    if (is_given(((const ts_rate_pair *)record)->a_w))
        return (ts_preset){NULL, NULL};
    return (ts_preset){"0", "no profile shift; common practice, no source"};
}

static bool is_internal(const ts_rate_pair *pair)
{
    return pair->gear[1].z.standing == TS_GIVEN && pair->gear[1].z.value < 0;
}

static ts_preset shift_1_preset(const void *record)
{
    if (is_internal(record))
        return (ts_preset){"0", "no profile shift; common practice, no source"};
    return shift_2_preset(record);
}

static ts_preset shift_preset(const void *record)
{
    const ts_rate_pair *pair = record;
    const bool          x_1 = is_given(pair->gear[0].x), x_2 = is_given(pair->gear[1].x);
    if (!is_given(pair->a_w))
        return (ts_preset){"as given", "the centre distance follows from the shifts"};
    if (x_1 && x_2)
        return (ts_preset){"as given", "centre distance and both shifts are given; what is left "
                                       "between the flanks is backlash"};
    if (x_1)
        return (ts_preset){"rest to 2", "x_2 is not given and follows from the centre distance"};
    if (x_2)
        return (ts_preset){"rest to 1", "x_1 is not given and follows from the centre distance"};
    if (is_internal(pair))
        return (ts_preset){"rest to 2",
                           "neither shift is given; the internal gear takes all of it; "
                           "common practice, no source"};
    return (ts_preset){"equal sliding", "neither shift is given; the greatest specific sliding is "
                                        "made equal; common practice, no source"};
}

static ts_preset tip_preset(const void *record)
{
    const ts_rate_gear *gear = ((const ts_rate_pair *)record)->gear;
    if (is_given(gear[0].d_a) || is_given(gear[1].d_a))
        return (ts_preset){"diameters", "tip diameters are given"};
    return (ts_preset){"as given", "k_1 and k_2 say how far the tips are altered"};
}

/* ---- the table ---------------------------------------------------------------------------------
 */

static const ts_field pair_fields[] = {
    /* geometry */
    {.key  = "z_1",
     .form = TS_FORM_TALLY,
     .need = TS_REQUIRED,
     TS_AT(ts_rate_pair, gear[0].z),
     .range   = TS_FROM(1, 1e6, "1"),
     .says    = "Teeth of gear 1.",
     .example = "25"},
    {.key  = "z_2",
     .form = TS_FORM_TALLY,
     .need = TS_REQUIRED,
     TS_AT(ts_rate_pair, gear[1].z),
     .range   = TS_FROM(-1e6, 1e6, "1"),
     .says    = "Teeth of gear 2; negative when it is an internal gear, as in ISO 21771.",
     .example = "62"},
    {.key  = "m_n",
     .need = TS_REQUIRED,
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_pair, m_n),
     .range   = TS_FROM(1e-5, 0.1, "mm"),
     .says    = "Normal module.",
     .example = "2 mm"},
    {.key = "alpha_n",
     MEASURE(TS_KIND_ANGLE),
     TS_AT(ts_rate_pair, alpha_n),
     .range   = TS_FROM(0.08726646259971647 /* 5 deg */, 0.7853981633974483 /* 45 deg */, "deg"),
     .preset  = {"20 deg", "ISO 53:1998, standard basic rack"},
     .says    = "Normal pressure angle.",
     .example = "25 deg"},
    {.key = "beta",
     MEASURE(TS_KIND_ANGLE),
     TS_AT(ts_rate_pair, beta),
     .range   = TS_FROM(0.0, 1.0471975511965979 /* 60 deg */, "deg"),
     .preset  = {"0 deg", "spur gears; common practice, no source"},
     .says    = "Helix angle, without its hand.",
     .example = "15 deg"},
    {.key  = "b_1",
     .need = TS_REQUIRED,
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_pair, gear[0].b),
     .range   = TS_ABOVE(0.0, 5.0, "mm"),
     .says    = "Face width of gear 1.",
     .example = "22 mm"},
    {.key = "b_2",
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_pair, gear[1].b),
     .range   = TS_ABOVE(0.0, 5.0, "mm"),
     .says    = "Face width of gear 2; as gear 1 when it is left out.",
     .example = "20 mm"},
    {.key = "a_w",
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_pair, a_w),
     .range = TS_ABOVE(0.0, 100.0, "mm"),
     .says  = "Working centre distance, without a sign; it follows from the profile shifts when it "
              "is left out.",
     .example = "87.5 mm"},
    {.key = "x_1",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, gear[0].x),
     .range     = TS_FROM(-5.0, 5.0, "1"),
     .preset    = {"0", "no profile shift; with a centre distance it follows instead"},
     .preset_of = shift_1_preset,
     .says      = "Profile shift coefficient of gear 1, positive where teeth grow thicker.",
     .example   = "0.2"},
    {.key = "x_2",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, gear[1].x),
     .range     = TS_FROM(-5.0, 5.0, "1"),
     .preset    = {"0", "no profile shift; with a centre distance it follows instead"},
     .preset_of = shift_2_preset,
     .says      = "Profile shift coefficient of gear 2, positive where teeth grow thicker, also of "
                  "an internal gear.",
     .example   = "-0.1"},
    {.key  = "shift",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_pair, shift),
     .choices = shifts,
     .preset  = {"as given", "the shift that is not given follows; with neither, by equal sliding"},
     .preset_of = shift_preset,
     .says      = "Which profile shifts follow from the centre distance.",
     .example   = "equal sliding"},
    {.key  = "rack",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_pair, rack),
     .choices = racks,
     .preset  = {"A", "ISO 53:1998, profile for high torques"},
     .says    = "Basic rack profile of both gears by ISO 53.",
     .example = "D"},
    {.key = "h_aPs",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, h_aPs),
     .range   = TS_ABOVE(0.0, 3.0, "1"),
     .preset  = {"1", ISO_53},
     .says    = "Addendum of the rack in modules.",
     .example = "1"},
    {.key = "h_fPs",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, h_fPs),
     .range     = TS_ABOVE(0.0, 3.0, "1"),
     .preset    = {"1.25", ISO_53},
     .preset_of = dedendum_preset,
     .says      = "Dedendum of the rack in modules.",
     .example   = "1.4"},
    {.key = "rho_fPs",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, rho_fPs),
     .range     = TS_FROM(0.0, 2.0, "1"),
     .preset    = {"0.38", ISO_53_ROUND},
     .preset_of = fillet_preset,
     .says      = "Root fillet radius of the rack in modules.",
     .example   = "0.38"},
    OF_BOTH("k_", k, MEASURE(TS_KIND_NUMBER), .range = TS_FROM(-3.0, 3.0, "1"),
            .preset  = {"0", "the tips keep the full addendum of the rack, as in a drive file"},
            .says    = "Tip alteration coefficient, negative where tips are shortened.",
            .example = "-0.05"),
    OF_BOTH("d_a", d_a, MEASURE(TS_KIND_LENGTH), .range = TS_ABOVE(0.0, 100.0, "mm"),
            .says = "Tip diameter, without a sign; both or none.", .example = "54.8 mm"),
    {.key  = "tip",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_pair, tip),
     .choices   = tips,
     .preset    = {"as given", "k_1 and k_2 say how far the tips are altered"},
     .preset_of = tip_preset,
     .says    = "Where the tips end: by `k_1` and `k_2`, so that the tip clearance of the rack is "
                "kept, or by `d_a1` and `d_a2`.",
     .example = "clearance kept"},

    /* measurement and backlash */
    OF_BOTH("k_W", k_W, .form = TS_FORM_TALLY, .known = true, .range = TS_FROM(1, 1e6, "1"),
            .says    = "Teeth under the span; the nearest whole number to the best when left out.",
            .example = "4"),
    OF_BOTH("D_M", D_M, MEASURE(TS_KIND_LENGTH), .range = TS_ABOVE(0.0, 1.0, "mm"),
            .says    = "Diameter of the pins; 1.728 (internal gears: 1.68) modules when left out.",
            .example = "3.5 mm"),
    OF_BOTH("E_sns", E_sns, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(-0.01, 0.01, "mm"),
            .says = "Upper allowance of the normal tooth thickness, negative where it is thinner.",
            .example = "-0.04 mm"),
    OF_BOTH("E_sni", E_sni, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(-0.01, 0.01, "mm"),
            .says = "Lower allowance of the normal tooth thickness.", .example = "-0.07 mm"),
    {.key = "A_ae",
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_pair, A_ae),
     .range   = TS_FROM(-0.01, 0.01, "mm"),
     .preset  = {"0 mm", "backlash is told for the nominal centre distance"},
     .says    = "Upper deviation of the centre distance.",
     .example = "0.02 mm"},
    {.key = "A_ai",
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_pair, A_ai),
     .range   = TS_FROM(-0.01, 0.01, "mm"),
     .preset  = {"0 mm", "backlash is told for the nominal centre distance"},
     .says    = "Lower deviation of the centre distance.",
     .example = "-0.02 mm"},

    /* load */
    TS_RATE_LOAD_FIELDS(ts_rate_pair, "F_t"),
    OF_BOTH("R_", R, MEASURE(TS_KIND_NUMBER), .range = TS_FROM(-10.0, 1.0, "1"),
            .preset = {"0", "the teeth are loaded on one flank"},
            .says   = "Ratio of least to greatest root stress; -1.2 for an idler with equal loads.",
            .example = "-1.2"),
    {.key = "K_gamma",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, K_gamma),
     .range   = TS_ABOVE(0.0, 10.0, "1"),
     .preset  = {"1", "one load path; ISO 6336-1:2019, clause 4 (from memory)"},
     .says    = "Mesh load factor, for several load paths.",
     .example = "1.1"},
    {.key = "K_Hbeta",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, K_Hbeta),
     .range   = TS_FROM(1.0, 100.0, "1"),
     .says    = "Face load factor for contact, where it is known.",
     .example = "1.15"},
    {.key = "F_betax",
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_pair, F_betax),
     .range   = TS_FROM(0.0, 0.01, "um"),
     .says    = "Misalignment of the mesh before running in, from which `K_Hbeta` follows.",
     .example = "12 um"},
    {.key = "f_sh",
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_pair, f_sh),
     .range   = TS_FROM(0.0, 0.01, "um"),
     .says    = "Its part from the deflection of the shafts, with `f_ma` in place of `F_betax`.",
     .example = "6 um"},
    {.key = "f_ma",
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_pair, f_ma),
     .range   = TS_FROM(0.0, 0.01, "um"),
     .says    = "Its part from making.",
     .example = "8 um"},
    {.key  = "lead",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_pair, lead),
     .choices = leads,
     .preset  = {"straight", "no crowning or correction is spoken of"},
     .says    = "How the lead is made to suit, read with `f_sh` and `f_ma`.",
     .example = "crowned"},
    {.key  = "profile",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_pair, profile),
     .choices = profiles,
     .preset  = {"plain", "no profile modification is spoken of"},
     .says = "Who looked after the ends of contact: nobody, the maker's experience, or an analysis "
             "of the load (ISO 6336:2019, helical gears).",
     .example = "by analysis"},
    {.key  = "relief",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_pair, relief),
     .choices = ts_rate_answers,
     .preset  = {"no", "no tip relief is known to suit the load"},
     .says    = "Does the tip relief suit the load?",
     .example = "yes"},
    {.key  = "edition",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_pair, edition),
     .choices = editions,
     .preset  = {"2019", "ISO 6336:2019 is the valid edition"},
     .says    = "Year of ISO 6336.",
     .example = "2019"},

    /* material and make */
    TS_RATE_STEEL_FIELDS(ts_rate_pair),
    OF_BOTH("peened ", peened, .form = TS_FORM_PICK, .choices = ts_rate_answers,
            .preset = {"no", "no shot peening is spoken of"}, .says = "Is the root shot peened?",
            .example = "yes"),
    OF_BOTH("accuracy ", accuracy, .form = TS_FORM_TALLY, .known = true,
            .range = TS_FROM(1, 11, "1"), .says = "Flank tolerance class of ISO 1328-1:2013.",
            .example = "5"),
    OF_BOTH("f_pt", f_pt, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(0.0, 0.001, "um"),
            .says    = "Single pitch deviation; else the tolerance of its class.",
            .example = "6.5 um"),
    OF_BOTH("f_falpha", f_falpha, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(0.0, 0.001, "um"),
            .says = "Profile form deviation; else the tolerance of its class.", .example = "7 um"),
    OF_BOTH("C_a", C_a, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(0.0, 0.001, "um"),
            .preset = {"0 um", "no tip relief is spoken of"}, .says = "Tip relief.",
            .example = "25 um"),
    OF_BOTH("s_pr", s_pr, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(0.0, 0.01, "mm"),
            .preset = {"0 mm", "no protuberance is spoken of"},
            .says = "Residual undercut that a protuberance tool leaves.", .example = "0.05 mm"),
    OF_BOTH("t_g", t_g, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(0.0, 0.01, "mm"),
            .preset = {"0 mm", "no grinding notch is spoken of"},
            .says = "Depth of a grinding notch near the critical section.", .example = "0.1 mm"),
    OF_BOTH("rho_g", rho_g, MEASURE(TS_KIND_LENGTH), .range = TS_ABOVE(0.0, 0.1, "mm"),
            .says = "Radius of the grinding notch.", .example = "1 mm"),
    {.key   = "z_02",
     .form  = TS_FORM_TALLY,
     .known = true,
     TS_AT(ts_rate_pair, gear[1].z_0),
     .range = TS_FROM(1, 1e6, "1"),
     .says =
         "Teeth of the pinion cutter of an internal gear 2; without it the root is taken as cut "
         "by the rack.",
     .example = "20"},
    {.key = "x_02",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, gear[1].x_0),
     .range   = TS_FROM(-5.0, 5.0, "1"),
     .preset  = {"0", "a cutter without profile shift"},
     .says    = "Profile shift of that cutter.",
     .example = "0.1"},
    OF_BOTH("s_R", s_R, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(0.0, 5.0, "mm"),
            .preset = {"0 mm", "a solid gear"},
            .says = "Thickness of the rim below the roots; 0 for a solid gear.", .example = "6 mm"),
    OF_BOTH("b_s", b_s, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(0.0, 5.0, "mm"),
            .preset = {"0 mm", "the web is as wide as the rim"},
            .says = "Thickness of the web, read with a rim.", .example = "8 mm"),
    OF_BOTH("d_web", d_web, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(0.0, 100.0, "mm"),
            .preset = {"0 mm", "the web reaches to the axis"},
            .says = "Diameter of the bore of the web.", .example = "30 mm"),
    /* second opinion, ANSI/AGMA 2101 */
    OF_BOTH("sigma_HP", sigma_HP, MEASURE(TS_KIND_STRESS), .range = TS_ABOVE(0.0, 1e10, "MPa"),
            .says    = "Allowable contact stress number of ANSI/AGMA 2101; else from the material.",
            .example = "1550 MPa"),
    OF_BOTH("sigma_FP", sigma_FP, MEASURE(TS_KIND_STRESS), .range = TS_ABOVE(0.0, 1e10, "MPa"),
            .says    = "Allowable bending stress number of ANSI/AGMA 2101; else from the material.",
            .example = "450 MPa"),
    {.key = "A_v",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, A_v),
     .range   = TS_FROM(1.0, 20.0, "1"),
     .says    = "Transmission accuracy of ANSI/AGMA 2101; else from the single pitch deviations.",
     .example = "6"},
    {.key = "R",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, reliability),
     .range   = TS_FROM(0.5, 0.9999, "1"),
     .preset  = {"0.99", "fewer than one failure in a hundred; ANSI/AGMA 2101-D04, clause 18 (from "
                          "memory)"},
     .says    = "Reliability wanted by ANSI/AGMA 2101.",
     .example = "0.999"},

    /* scuffing and micropitting */
    {.key = "theta_oil",
     MEASURE(TS_KIND_TEMPERATURE),
     TS_AT(ts_rate_pair, theta_oil),
     .range   = TS_FROM(233.15, 573.15, "degC"),
     .says    = "Temperature of the oil that reaches the mesh; asks for scuffing and micropitting.",
     .example = "110 degC"},
    {.key = "nu_100",
     MEASURE(TS_KIND_KINEMATIC_VISCOSITY),
     TS_AT(ts_rate_pair, nu_100),
     .range   = TS_ABOVE(0.0, 0.01, "cSt"),
     .says    = "Viscosity of the oil at 100 degrees Celsius.",
     .example = "5.1 cSt"},
    {.key = "rho_15",
     MEASURE(TS_KIND_DENSITY),
     TS_AT(ts_rate_pair, rho_15),
     .range   = TS_FROM(500.0, 2000.0, "kg/m3"),
     .says    = "Density of the oil at 15 degrees Celsius.",
     .example = "995 kg/m3"},
    {.key  = "oil",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_pair, oil),
     .choices = oils,
     .preset  = {"polyol ester", "as in aircraft engines; common practice, no source"},
     .says    = "Kind of oil.",
     .example = "mineral oil"},
    {.key  = "lubrication",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_pair, lubrication),
     .choices = lubrications,
     .preset  = {"jets", "oil jets, as in engine gearboxes; common practice, no source"},
     .says    = "How the oil comes to the mesh.",
     .example = "jets"},
    {.key  = "driver",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_pair, driver),
     .choices = drivers,
     .preset  = {"gear 1", "gear 1 drives; no more than a start"},
     .says    = "Which gear drives.",
     .example = "gear 2"},
    {.key   = "mates",
     .form  = TS_FORM_TALLY,
     .known = true,
     TS_AT(ts_rate_pair, mates),
     .range   = TS_FROM(1, 20, "1"),
     .preset  = {"1", "a pair by itself"},
     .says    = "With how many gears the busier of the two meshes.",
     .example = "2"},
    {.key = "phi_E",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, phi_E),
     .range   = TS_FROM(0.0, 1.0, "1"),
     .preset  = {"0", "flanks as they were made, on the safe side"},
     .says    = "How far the flanks are run in, 1: wholly.",
     .example = "1"},
    {.key = "S_FZG",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, S_FZG),
     .range   = TS_ABOVE(0.0, 15.0, "1"),
     .says    = "Load stage at which the oil fails in the test A/8.3/90 of ISO 14635-1.",
     .example = "10"},
    {.key = "theta_S",
     MEASURE(TS_KIND_TEMPERATURE),
     TS_AT(ts_rate_pair, theta_S),
     .range   = TS_FROM(273.15, 1273.15, "degC"),
     .says    = "Scuffing temperature for the flash method, where it is known.",
     .example = "360 degC"},
    {.key = "theta_intS",
     MEASURE(TS_KIND_TEMPERATURE),
     TS_AT(ts_rate_pair, theta_intS),
     .range   = TS_FROM(273.15, 1273.15, "degC"),
     .says    = "Scuffing temperature for the integral method, where it is known.",
     .example = "330 degC"},
    OF_BOTH("Ra_", Ra, MEASURE(TS_KIND_LENGTH), .range = TS_ABOVE(0.0, 0.001, "um"),
            .says    = "Mean roughness of the flank; a sixth of `R_z` when left out.",
            .example = "0.4 um"),
    OF_BOTH("structure ", structure, .form = TS_FORM_PICK, .choices = structures,
            .says    = "Surface of the flank, for scuffing; else from how the steel is hardened.",
            .example = "phosphated"),
    {.key = "lambda_GFP",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_pair, lambda_GFP),
     .range   = TS_ABOVE(0.0, 100.0, "1"),
     .says    = "Specific film that the flanks need against micropitting, where it is known.",
     .example = "0.3"},
    {.key   = "SKS",
     .form  = TS_FORM_TALLY,
     .known = true,
     TS_AT(ts_rate_pair, SKS),
     .range   = TS_FROM(5, 10, "1"),
     .says    = "Stage at which the oil fails in the micropitting test of FVA 54/7, where "
                "`lambda_GFP` is not known.",
     .example = "10"},
    {.key = "theta_test",
     MEASURE(TS_KIND_TEMPERATURE),
     TS_AT(ts_rate_pair, theta_test),
     .range   = TS_FROM(323.15, 373.15, "degC"),
     .preset  = {"90 degC", "the usual temperature of the test FVA 54/7 (from memory)"},
     .says    = "Oil temperature of that test.",
     .example = "60 degC"},
};

/* ---- what the fields cannot see one by one -----------------------------------------------------
 */

static size_t count_given(const ts_measure *const *of, size_t count)
{
    size_t given = 0;
    for (size_t i = 0; i < count; i++)
        given += is_given(*of[i]) ? 1 : 0;
    return given;
}

static const char *judge_shift(const ts_rate_pair *pair, const char **key, const char **expected)
{
    const bool x_1 = is_given(pair->gear[0].x), x_2 = is_given(pair->gear[1].x);
    const int  shift = pair->shift.value; /* of the choices above */
    *key             = "shift";
    *expected = "`rest to 2` with a_w and x_1, `rest to 1` with a_w and x_2, `equal sliding` "
                "with a_w alone, or `as given`";
    if (pair->shift.standing != TS_GIVEN)
        return NULL;
    if (shift != 0 && !is_given(pair->a_w))
        return "without a centre distance no profile shift follows";
    if (shift == 0 && is_given(pair->a_w) && !(x_1 && x_2))
        return "a centre distance leaves no shift as given that is not given";
    if ((shift == 1 && !x_2) || (shift == 2 && !x_1))
        return "the shift of the other gear is not given, so that the rest of it is not known";
    if ((shift == 1 && x_1) || (shift == 2 && x_2) || (shift == 3 && (x_1 || x_2)))
        return "a shift is given that is to follow";
    return NULL;
}

static const char *judge_tip(const ts_rate_pair *pair, const char **key, const char **expected)
{
    const bool d_a1 = is_given(pair->gear[0].d_a), d_a2 = is_given(pair->gear[1].d_a);
    const bool k = is_given(pair->gear[0].k) || is_given(pair->gear[1].k);
    *key         = d_a1 ? "d_a1" : (d_a2 ? "d_a2" : "tip");
    *expected    = "both tip diameters, or `k_1` and `k_2`, or `tip: clearance kept`";
    if (d_a1 != d_a2)
        return "only one tip diameter is given";
    if (d_a1 && k)
        return "the tips are given twice, by diameters and by coefficients";
    if (pair->tip.value == 2 && !d_a1)
        return "the tip diameters are not given";
    if (pair->tip.value < 2 && d_a1)
        return "tip diameters are given that `tip` does not read";
    return pair->tip.value == 1 && k ? "tip coefficients are given that are to follow" : NULL;
}

static bool is_above(ts_measure lower, ts_measure upper)
{
    return ts_measure_known(lower) && ts_measure_known(upper) && lower.value > upper.value;
}

static const char *judge_allowances(const ts_rate_pair *pair, const char **key,
                                    const char **expected)
{
    *expected = "a lower limit that is not above the upper one";
    *key      = "A_ai";
    if (is_above(pair->A_ai, pair->A_ae))
        return "the lower deviation of the centre distance lies above the upper one";
    *key = is_above(pair->gear[0].E_sni, pair->gear[0].E_sns) ? "E_sni1" : "E_sni2";
    if (is_above(pair->gear[0].E_sni, pair->gear[0].E_sns) ||
        is_above(pair->gear[1].E_sni, pair->gear[1].E_sns))
        return "the lower allowance lies above the upper one";
    return NULL;
}

static const char *judge_load(const ts_rate_pair *pair, const char **key, const char **expected)
{
    const ts_measure *const loads[] = {&pair->load.T_1, &pair->load.F, &pair->load.P};
    const ts_measure *const faces[] = {&pair->K_Hbeta, &pair->F_betax, &pair->f_sh};
    const bool              cycles  = is_given(pair->gear[0].N_L) || is_given(pair->gear[1].N_L);
    *key                            = is_given(pair->load.P) ? "P" : "F_t";
    *expected                       = "one of `T_1`, `F_t` and `P`";
    if (count_given(loads, 3) > 1)
        return "the load is given more than once";
    *key      = is_given(pair->F_betax) ? "F_betax" : "K_Hbeta";
    *expected = "one of `K_Hbeta`, `F_betax`, and `f_sh` with `f_ma`";
    if (count_given(faces, 3) > 1)
        return "the face load is given more than once";
    *key      = "L_h";
    *expected = "`L_h`, or `N_L1` and `N_L2`";
    return cycles && is_given(pair->load.L_h) ? "the life is given twice" : NULL;
}

static const char *judge_pair(const void *record, const char **key, const char **expected)
{
    const ts_rate_pair *pair = record;
    const int64_t       z_1 = pair->gear[0].z.value, z_2 = pair->gear[1].z.value;
    *key            = "z_2";
    const bool both = pair->gear[0].z.standing == TS_GIVEN;
    if (pair->gear[1].z.standing == TS_GIVEN && (z_2 == 0 || (both && z_2 == -z_1))) {
        *expected = "another number of teeth than 0 and -z_1";
        return z_2 == 0 ? "a gear has teeth" : "an internal gear has more teeth than its pinion";
    }
    const char *says = judge_shift(pair, key, expected);
    if (says == NULL)
        says = judge_tip(pair, key, expected);
    if (says == NULL)
        says = judge_allowances(pair, key, expected);
    return says != NULL ? says : judge_load(pair, key, expected);
}

const ts_record_table ts_table_rate_pair = {
    .id   = "rate_pair",
    .name = "a gear pair",
    .says =
        "Two cylindrical gears in mesh.  Geometry is that of ISO 21771:2007, with its signs; load "
        "capacity is told when `T_1`, `F_t` or `P` is given.",
    TS_TABLE(ts_rate_pair, pair_fields),
    .judge = judge_pair,
};
