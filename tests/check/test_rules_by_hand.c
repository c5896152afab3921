/* Rules against numbers worked out by hand, and the branches that one page cannot show. */
#include "page_snippet.h"

#include "check/desk.h"
#include "support/close.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define SPLINED_STUB                                                                               \
    " drive:\n"                                                                                    \
    "   hp:\n"                                                                                     \
    "     take-off:\n"                                                                             \
    "-      float: splined stub\n"                                                                 \
    "-      slide: -2..2 mm\n"                                                                     \
    "-      backlash: 0.2 mm\n"
#define REAR_BEVEL                                                                                 \
    "-      bevels: {teeth: [40, 41], module: 2.4 mm, spiral: 20 deg, hand: left, face: 15 mm, "   \
    "side: rear}\n"

static const ts_judgement *judgement_of(const ts_study *study, const char *rule,
                                        const char *address)
{
    const ts_node node = ts_source_find(&study->source, ts_text_of(address), NULL);
    assert_int_not_equal(node, 0);
    for (size_t i = 0; i < study->outcome.judgement_count; i++) {
        const ts_judgement *each = &study->outcome.judgements[i];
        if (each->node == node && strcmp(each->rule, rule) == 0)
            return each;
    }
    fail_msg("%s judged nothing at %s", rule, address);
    return NULL;
}

/* derived: tan(delta_1) = 40/41 and alpha_n = 20 deg, so 0.2 mm forward closes
 * 2*0.2*sin(44.292 deg)*sin(20 deg) = 0.09554 mm. */
static void fixed_bevel_loses_backlash_moving_forward(void **state)
{
    (void)state;
    ts_study           *study  = changed_study(SPLINED_STUB "+      float: fixed bevel\n"
                                                                       "+      backlash: 0.1 mm\n");
    const ts_judgement *judged = judgement_of(study, "F1-float-travel", "drive/hp/take-off");
    const double        delta  = atan2(40.0, 41.0);
    assert_close(judged->value, 2.0 * 0.2e-3 * sin(delta) * sin(atan(1.0) * 4.0 / 9.0), 1e-12);
    assert_close(judged->value, 0.09554e-3, 1e-3);
    assert_close(judged->margin, 0.1e-3 / judged->value - 1.0, 1e-12);
    assert_true(judged->passed);
    ts_study_close(study);
}

/* The gear on the other side closes with the 0.7 mm rearward: 3.5 times as much. */
static void fixed_bevel_on_the_front_side_closes_moving_rearward(void **state)
{
    (void)state;
    ts_study *study = changed_study(
        SPLINED_STUB "+      float: fixed bevel\n"
                     "+      backlash: 0.1 mm\n" REAR_BEVEL
                     "+      bevels: {teeth: [40, 41], module: 2.4 mm, spiral: 20 deg, "
                     "hand: left, face: 15 mm, side: front}\n");
    const ts_judgement *judged = judgement_of(study, "F1-float-travel", "drive/hp/take-off");
    assert_close(judged->value, 3.5 * 0.09554e-3, 1e-3);
    assert_false(judged->passed);
    ts_study_close(study);
}

static const char *said_of(const ts_study *study, const char *rule)
{
    for (size_t i = 0; i < study->outcome.finding_count; i++)
        if (strcmp(study->outcome.findings[i].rule, rule) == 0)
            return study->outcome.findings[i].says;
    return "";
}

/* -0.2..0.7 mm of travel: 0.2 mm are missing rearward, and 0.1 mm forward too. */
static void a_stub_too_short_at_both_ends_is_told_both(void **state)
{
    (void)state;
    static const struct {
        const char *slide, *says;
    } stubs[] = {
        {"-0.1..0.5 mm", "the spool moves 0.7 mm rearward, and the splined stub slides 0.5 mm that "
                         "way; it moves 0.2 mm forward too, where the stub slides 0.1 mm"},
        {"0..0.6 mm", "the spool moves 0.2 mm forward, and the splined stub slides 0 mm that way; "
                      "it moves 0.7 mm rearward too, where the stub slides 0.6 mm"},
        {"-0.2..0.5 mm",
         "the spool moves 0.7 mm rearward, and the splined stub slides 0.5 mm that way"},
        {"-0.2..0.7 mm", ""},
    };
    for (size_t i = 0; i < sizeof stubs / sizeof stubs[0]; i++) {
        char diff[400];
        (void)snprintf(diff, sizeof diff,
                       SPLINED_STUB "+      float: splined stub\n+      slide: %s\n"
                                    "+      backlash: 0.2 mm\n",
                       stubs[i].slide);
        ts_study *study = changed_study(diff);
        assert_string_equal(said_of(study, "F1-float-travel"), stubs[i].says);
        ts_study_close(study);
    }
}

static void wide_spur_bears_the_whole_travel(void **state)
{
    (void)state;
    ts_study           *study  = changed_study(SPLINED_STUB "+      float: wide spur\n"
                                                                       "+      overlap: 0.8 mm\n");
    const ts_judgement *judged = judgement_of(study, "F1-float-travel", "drive/hp/take-off");
    assert_close(judged->value, 0.9e-3, 1e-12);
    assert_close(judged->limit, 0.8e-3, 1e-12);
    assert_false(judged->passed);
    /* A wide spur stands off the engine axis, so the length of the shaft is not asked. */
    assert_int_equal(outcome_of(study, "D7-tower-shaft-reach")->judged, 1);
    ts_study_close(study);
}

static void float_scheme_without_its_numbers_is_not_computable(void **state)
{
    (void)state;
    const char *const schemes[] = {"+      float: fixed bevel\n", "+      float: splined stub\n",
                                   "+      float: wide spur\n", "+      backlash: 0.2 mm\n"};
    const char *const lacks[]   = {"the backlash of the take-off bevels",
                                   "the slide of the splined stub", "the overlap of the wide spur",
                                   "how the bevels float (`float`)"};
    for (size_t i = 0; i < 4; i++) {
        char diff[512];
        (void)snprintf(diff, sizeof diff, "%s%s", SPLINED_STUB, schemes[i]);
        ts_study         *study   = changed_study(diff);
        const ts_finding *finding = first_finding_of(study, "F1-float-travel");
        assert_non_null(finding);
        assert_int_equal(finding->state, TS_NOT_COMPUTABLE);
        assert_non_null(strstr(finding->says, lacks[i]));
        ts_study_close(study);
    }
}

/* derived: F_a = F_t/cos(beta)*(tan(alpha)*sin(delta) - sin(beta)*cos(delta)) is nothing at
 * sin(beta) = tan(alpha)*tan(delta); with 40/41 teeth and 20 deg that is 20.80 deg for the smaller
 * pitch angle, and 20.7 deg is the next tenth below it that a page can print. */
static void spiral_below_the_proposal_pulls_nothing_in(void **state)
{
    (void)state;
    ts_study *study =
        changed_study(REAR_BEVEL "+      bevels: {teeth: [40, 41], module: 2.4 mm, spiral: 35 "
                                 "deg, hand: left, face: 15 mm, side: rear}\n");
    const char *remedy = first_finding_of(study, "E8-bevel-thrust-sense")->remedy;
    const char *most   = strstr(remedy, "at most ");
    assert_non_null(most);
    char         diff[512];
    const double proposed = strtod(most + 8, NULL);
    assert_true(proposed < 20.80 && proposed > 20.5);
    (void)snprintf(diff, sizeof diff,
                   REAR_BEVEL "+      bevels: {teeth: [40, 41], module: 2.4 mm, spiral: %.1f deg, "
                              "hand: left, face: 15 mm, side: rear}\n",
                   proposed);
    ts_study_close(study);
    study = changed_study(diff);
    assert_int_equal(findings_of(study, "E8-bevel-thrust-sense"), 0);
    ts_study_close(study);
}

/* derived: the axes are a centre distance apart, whatever the arc:
 * 2 mm*(81 + 55)/2 = 136 mm against 62 + 58 + 5 = 125 mm. */
static void neighbouring_bodies_stand_a_centre_distance_apart(void **state)
{
    (void)state;
    ts_study           *study = changed_study(" towershaft: 1\n");
    const ts_judgement *judged =
        judgement_of(study, "D2-body-clash", "drive/hp/box/anticlockwise/3/rear");
    assert_close(judged->value, 0.136, 1e-12);
    assert_close(judged->limit, 0.125, 1e-12);
    assert_close(judged->margin, 0.136 / 0.125 - 1.0, 1e-12);
    ts_study_close(study);
}

/* derived: the angle between neighbours on a circle is 2*asin(a/(2*R)); a_w = 87, 79, 89, 109, 136
 * mm on 330 mm. */
static void wrap_is_the_sum_of_the_angles_between_neighbours(void **state)
{
    (void)state;
    ts_study    *study = changed_study(" towershaft: 1\n");
    const double a_w[] = {0.087, 0.079, 0.089, 0.109, 0.136};
    double       wrap  = 0.0;
    for (size_t i = 0; i < sizeof a_w / sizeof a_w[0]; i++)
        wrap += 2.0 * asin(a_w[i] / 0.66);
    assert_close(judgement_of(study, "D1-wrap-limit", "drive/hp/box")->value, wrap, 1e-12);
    ts_study_close(study);
}

/* derived: x_min = 0 at z = 2*h/sin(25 deg)^2 with h = 1.25 - 0.25*(1 - sin(25 deg)): 12.381. */
static void undercut_limit_is_exact(void **state)
{
    (void)state;
    ts_study    *study = changed_study(" towershaft: 1\n");
    const double sine  = sin(atan(1.0) * 5.0 / 9.0);
    const double z_min = 2.0 * (1.25 - 0.25 * (1.0 - sine)) / (sine * sine);
    assert_close(judgement_of(study, "C2-undercut", "drive/hp/box/input")->limit, z_min, 1e-12);
    assert_close(z_min, 12.38, 1e-3);
    ts_study_close(study);
}

/* 56/24 shares 8, and the nearest hunting pair 55/24 is 1.8 % off (derived: 55/56 = 0.9821); where
 * 55 would meet another 55, it is 25/56, 4 % off (derived: 24/25 = 0.96). */
static void hunting_pair_of_56_and_24_is_55_and_24(void **state)
{
    (void)state;
    ts_study *study = changed_study(
        "-        - {teeth: 46, face: 12 mm, step: {teeth: 28, face: 14 mm}}\n"
        "-        - {teeth: 81, face: 14 mm, rear: hydraulic pump 1}\n"
        "-        - {teeth: 55, face: 10 mm, front: fuel pump, rear: oil pump pack}\n"
        "+        - {teeth: 46, face: 12 mm, step: {teeth: 24, face: 14 mm}}\n"
        "+        - {teeth: 56, face: 14 mm, rear: hydraulic pump 1}\n"
        "+        - {teeth: 55, face: 10 mm, front: fuel pump, rear: oil pump pack}\n");
    const ts_finding *finding = first_finding_of(study, "C2-hunting-tooth");
    assert_string_equal(finding->remedy, "the nearest hunting pair is 25/56, 4.0 % off in ratio");
    assert_non_null(strstr(finding->says, "24/56 shares 8"));
    ts_study_close(study);
    /* With 53 teeth beyond it, 55 hunts there too. */
    study = changed_study(
        "-        - {teeth: 46, face: 12 mm, step: {teeth: 28, face: 14 mm}}\n"
        "-        - {teeth: 81, face: 14 mm, rear: hydraulic pump 1}\n"
        "-        - {teeth: 55, face: 10 mm, front: fuel pump, rear: oil pump pack}\n"
        "+        - {teeth: 46, face: 12 mm, step: {teeth: 24, face: 14 mm}}\n"
        "+        - {teeth: 56, face: 14 mm, rear: hydraulic pump 1}\n"
        "+        - {teeth: 53, face: 10 mm, front: fuel pump, rear: oil pump pack}\n");
    assert_string_equal(first_finding_of(study, "C2-hunting-tooth")->remedy,
                        "the nearest hunting pair is 24/55, 1.8 % off in ratio");
    ts_study_close(study);
}

#define GENERATOR_BAND                                                                             \
    "-    speed: {crank: ..17900 rpm, light-off: ..17900 rpm, always: 9600..17900 rpm}\n"

/* What the remedy proposes, written into the file, closes the finding. */
static void proposed_band_closes_the_finding(void **state)
{
    (void)state;
    ts_study *study = changed_study(
        GENERATOR_BAND
        "+    speed: {crank: ..17900 rpm, light-off: ..17900 rpm, always: 9800..17900 rpm}\n");
    assert_int_equal(findings_of(study, "B2-speed-band"), 1);
    const char *remedy = strstr(first_finding_of(study, "B2-speed-band")->remedy, "down to ");
    assert_non_null(remedy);
    char diff[512];
    (void)snprintf(diff, sizeof diff,
                   GENERATOR_BAND "+    speed: {crank: ..17900 rpm, light-off: ..17900 rpm, "
                                  "always: %d..17900 rpm}\n",
                   (int)strtol(remedy + 8, NULL, 10));
    ts_study_close(study);
    study = changed_study(diff);
    assert_int_equal(findings_of(study, "B2-speed-band"), 0);
    ts_study_close(study);
}

static void speed_margin_is_wanted_inside_the_band(void **state)
{
    (void)state;
    ts_study         *study   = changed_study("   wrap: 110 deg\n"
                                                        "+  speed margin: 2 %\n");
    const ts_finding *finding = first_finding_of(study, "B2-speed-band");
    assert_non_null(finding);
    assert_true(finding->margin > 0.0 && finding->margin < 0.02);
    assert_non_null(strstr(finding->says, "inside its band"));
    ts_study_close(study);
}

/* A spool at rest gives no ratio: the least speed there is out of reach for any teeth. */
static void spool_at_rest_leaves_no_ratio(void **state)
{
    (void)state;
    ts_study *study = changed_study(
        "-    speed: {crank: ..5000 rpm, light-off: ..5000 rpm, always: 1500..5000 rpm}\n"
        "+    speed: {crank: 10..5000 rpm, light-off: ..5000 rpm, always: 1500..5000 rpm}\n");
    const ts_finding *finding = first_finding_of(study, "B3-ratio-window");
    assert_non_null(finding);
    assert_int_equal(finding->state, TS_OPEN);
    assert_non_null(strstr(finding->says, "stands still at crank"));
    assert_nan(finding->limit);
    ts_study_close(study);
}

static void helical_gears_have_their_own_tooth_limit(void **state)
{
    (void)state;
    ts_study *study = changed_study(
        "-      gears: {module: 2 mm, pressure angle: 25 deg, helix angle: 0 deg}\n"
        "+      gears: {module: 2 mm, pressure angle: 25 deg, helix angle: 15 deg}\n");
    const double alpha = atan(1.0) * 5.0 / 9.0, beta = atan(1.0) / 3.0;
    const double sine = sin(atan(tan(alpha) / cos(beta)));
    /* derived: 2*cos(beta)/sin(alpha_t)^2, the next whole number above */
    assert_close(judgement_of(study, "C2-tooth-limit", "drive/lp/box/input")->limit,
                 ceil(2.0 * cos(beta) / (sine * sine)), 0.0);
    ts_study_close(study);
}

static void engine_need_with_a_reasoned_neck_is_let_pass(void **state)
{
    (void)state;
    const char *const before = "     overhang: 84 mm\n+    neck: ";
    char              diff[512];
    (void)snprintf(diff, sizeof diff, "%s{breaks: 60..70 N.m}\n", before);
    ts_study *study = changed_study(diff);
    assert_int_equal(findings_of(study, "G3-neck-presence"), 1);
    ts_study_close(study);
    (void)snprintf(diff, sizeof diff, "%s{breaks: 60..70 N.m, why: asked for by its maker}\n",
                   before);
    study = changed_study(diff);
    assert_int_equal(findings_of(study, "G3-neck-presence"), 0);
    ts_study_close(study);
}

static void power_at_a_standstill_is_refused(void **state)
{
    (void)state;
    ts_study *study = changed_study("-    power: {crank: 0 kW, light-off: 0.05 kW, ground idle: "
                                    "2.5 kW, take-off: 10 kW, red line: 10 kW}\n"
                                    "+    power: {crank: 1 kW, light-off: 0.05 kW, ground idle: "
                                    "2.5 kW, take-off: 10 kW, red line: 10 kW}\n");
    const ts_finding *finding = first_finding_of(study, "A2-power-known");
    assert_non_null(finding);
    assert_int_equal(finding->state, TS_OPEN);
    assert_int_equal(finding->condition, 0);
    ts_study_close(study);
}

/* The losses of a box whose only accessory takes nothing are infinitely more than it is rated with:
 * the worst there is, and no pass. */
static void meshes_rated_with_no_power_do_not_cover_their_losses(void **state)
{
    (void)state;
    ts_study *study = changed_study("-    power: {crank: 0 kW, light-off: 0.05 kW, ground idle: "
                                    "2.5 kW, take-off: 10 kW, red line: 10 kW}\n"
                                    "+    power: {crank: 0 kW, light-off: 0 kW, ground idle: "
                                    "0 kW, take-off: 0 kW, red line: 0 kW}\n");
    size_t    found = 0;
    for (size_t i = 0; i < study->outcome.finding_count; i++) {
        const ts_finding *finding = &study->outcome.findings[i];
        if (strcmp(finding->rule, "J1-losses-covered") != 0)
            continue;
        found++;
        assert_non_null(strstr(finding->says, "rated with no power at all"));
        assert_non_null(strstr(finding->remedy, "a `loss` is a share"));
        assert_true(finding->value > 0.0);
        assert_close_abs(finding->limit, 0.0, 0.0);
        assert_close(finding->margin, -1.0, 1e-15);
    }
    assert_int_equal(found, 3); /* the bevels of the spool, those of the box, and its one mesh */
    ts_study_close(study);
}

/* derived: the wind is as fast as the teeth in the middle of the face, at 24600 rpm on a radius of
 * 40*2.4 mm/2 - 15 mm/2*sin(atan(40/41)); the jet is as fast as sqrt(2*p/rho) of 3 bar. */
static void jet_and_wind_are_told_apart(void **state)
{
    (void)state;
    ts_study   *study = changed_study(" sight: from behind\n+oil: {jet gap: 25 mm}\n");
    const char *says  = first_finding_of(study, "J2-jet-drift")->says;
    const char *jet = strstr(says, "runs at "), *wind = strstr(says, "through wind of ");
    assert_non_null(jet);
    assert_non_null(wind);
    const double r = 40.0 * 2.4e-3 / 2.0 - 15e-3 / 2.0 * sin(atan2(40.0, 41.0));
    assert_close(strtod(wind + strlen("through wind of "), NULL),
                 24600.0 * atan(1.0) * 4.0 / 30.0 * r, 1e-3);
    const double v = strtod(jet + strlen("runs at "), NULL);
    assert_true(v > sqrt(2.0 * 3e5 / 1010.0) && v < sqrt(2.0 * 3e5 / 900.0));
    ts_study_close(study);
}

/* A limit that nobody knows is asked once by every rule that needs it, and nothing passes by it. */
static void unknown_limits_are_not_computable(void **state)
{
    (void)state;
    const struct {
        const char *key;
        const char *rule;
    } limits[] = {
        {"contact ratio", "C1-contact-ratio"},
        {"face to diameter", "C2-face-to-diameter"},
        {"face to diameter overhung", "C2-face-to-diameter"},
        {"body gap", "D2-body-clash"},
        {"body gap", "D2-box-clash"},
        {"body gap", "D2-keep-out"},
        {"body gap", "D2-casing-clearance"},
        {"body gap", "D2-cowl-line"},
        {"gear gap", "D2-gear-clash"},
        {"gear gap", "D2-shaft-clash"},
        {"wrap", "D1-wrap-limit"},
        {"start path meshes", "B4-start-path-length"},
        {"pitch line velocity", "J2-pitch-line-velocity"},
        {"radial shaft speed", "F2-radial-shaft-speed"},
        {"neck factor", "G1-neck-above-load"},
        {"neck factor", "G1-start-path-neck"},
        {"neck factor", "G2-neck-below-upstream"},
        {"speed margin", "B2-speed-band"},
        {"contact safety", "E1-tooth-contact"},
        {"bending safety", "E1-tooth-bending"},
        {"bending safety", "E3-tooth-life"},
        {"time at resonance", "E1-resonance"},
        {"time with parting flanks", "F5-torsional-interference"},
        {"whirl margin", "F2-shaft-whirl"},
        {"web clearance", "F4-web-clearance"},
        {"standards apart", "E1-standards-differ"},
        {"rim to tooth height", "E1-thin-rim"},
        {"backlash", "E10-backlash"},
    };
    for (size_t i = 0; i < sizeof limits / sizeof limits[0]; i++) {
        char diff[320];
        (void)snprintf(diff, sizeof diff,
                       " limits:\n-  wrap: 110 deg\n-  bearing slip: 0.001\n"
                       "-  standards apart: 10000 %%\n"
                       "-  time at resonance: 100 %%\n-  time with parting flanks: 100 %%\n"
                       "-  web clearance: 0 %%\n-  pitch line velocity: 120 m/s\n"
                       "+  %s: unknown\n",
                       limits[i].key);
        ts_study              *study   = changed_study(diff);
        const ts_rule_outcome *outcome = outcome_of(study, limits[i].rule);
        const ts_finding      *finding = first_finding_of(study, limits[i].rule);
        assert_int_equal(outcome->passed, 0);
        assert_non_null(finding);
        assert_int_equal(finding->state, TS_NOT_COMPUTABLE);
        ts_study_close(study);
    }
}

/* ---- webs ------------------------------------------------------------------------------------ */

#define PUMP_GEAR "drive/hp/box/anticlockwise/2"
#define PUMP_SHAFT                                                                                 \
    "@@\n"                                                                                         \
    "-        - {teeth: 81, face: 14 mm, rear: hydraulic pump 1}\n"                                \
    "+        - {teeth: 81, face: 14 mm, rim: 6 mm, web: 8 mm, rear: hydraulic pump 1}\n"
#define WEB_LIMIT "@@\n-  web clearance: 0 %\n+  web clearance: 1.2 %\n"
#define TAKE_OFF  "-  take-off:    {hp: 24300 rpm, lp: 11800 rpm, hours: 900 h}\n"

static void web_that_lacks_data_is_not_computable(void **state)
{
    (void)state;
    static const char *const gears[][2] = {
        {"rim: 6 mm, web: 8 mm, material: unknown", "the material of hydraulic pump 1"},
        {"rim: 6 mm, web: unknown", "the web of hydraulic pump 1"},
        {"rim: unknown", "the rim of hydraulic pump 1"},
    };
    for (size_t i = 0; i < sizeof gears / sizeof gears[0]; i++) {
        char diff[400];
        (void)snprintf(diff, sizeof diff,
                       "-        - {teeth: 81, face: 14 mm, rear: hydraulic pump 1}\n"
                       "+        - {teeth: 81, face: 14 mm, %s, rear: hydraulic pump 1}\n",
                       gears[i][0]);
        ts_study         *study   = changed_study(diff);
        const ts_finding *finding = first_finding_of(study, "F4-web-clearance");
        assert_non_null(finding);
        assert_int_equal(finding->state, TS_NOT_COMPUTABLE);
        assert_non_null(strstr(finding->says, gears[i][1]));
        assert_false(judgement_of(study, "F4-web-clearance", PUMP_GEAR)->passed);
        ts_study_close(study);
    }
}

/* The value judged for the pump's gear, with the take-off told in so many pieces that no one of
 * them is a twentieth of all time, beside so many hours of it at a speed that meets nothing. */
static double gap_with_take_off_in(int pieces, double hours)
{
    char   text[6000];
    size_t length = 0;
    length += (size_t)snprintf(text, sizeof text, TAKE_OFF);
    for (int i = 0; i < pieces; i++)
        length +=
            (size_t)snprintf(text + length, sizeof text - length,
                             "+  take-off%s%.*s: {hp: 24300 rpm, lp: 11800 rpm, hours: %g h}\n",
                             i > 0 ? " " : "", i, "abcdefghijklmnopqrstuvwxyz", hours / pieces);
    (void)snprintf(text + length, sizeof text - length, "%s", PUMP_SHAFT WEB_LIMIT);
    ts_study    *study = changed_study(text);
    const double value = judgement_of(study, "F4-web-clearance", PUMP_GEAR)->value;
    ts_study_close(study);
    return value;
}

/* derived: the same time at the same speed; 900 h of 5100 h in 24 pieces of 0.7 % each. */
static void time_told_in_pieces_is_the_same_time(void **state)
{
    (void)state;
    const double once = gap_with_take_off_in(1, 900.0);
    assert_true(once < 0.012);
    assert_close(gap_with_take_off_in(24, 900.0), once, 1e-15);
    assert_true(gap_with_take_off_in(24, 9.0) > 0.012);
}

/* How long is not known may be long. */
static void time_that_is_not_known_counts(void **state)
{
    (void)state;
    ts_study *study = changed_study(
        TAKE_OFF
        "+  take-off:    {hp: 24300 rpm, lp: 11800 rpm, hours: unknown}\n" PUMP_SHAFT WEB_LIMIT);
    assert_true(judgement_of(study, "F4-web-clearance", PUMP_GEAR)->value < 0.012);
    ts_study_close(study);
}

/* The one rule that no file can make speak: its numbers are spoilt behind the program's back. */
static void lost_power_is_a_fault_of_the_program(void **state)
{
    (void)state;
    ts_study *study                 = changed_study(" towershaft: 1\n");
    study->power.spool[0].imbalance = 2e-12;
    const ts_check_subject subject  = {.source = &study->source,
                                       .drive  = &study->drive,
                                       .train  = &study->train,
                                       .motion = &study->motion,
                                       .power  = &study->power,
                                       .teeth  = &study->teeth,
                                       .today  = PAGE_DAY};
    assert_int_equal(ts_check_run(&subject, study->arena, NULL, &study->outcome), TS_OK);
    assert_int_equal(study->outcome.finding_count, 1);
    assert_string_equal(study->outcome.findings[0].rule, "M2-power-balance");
    assert_int_equal(study->outcome.verdict, TS_DOES_NOT_HOLD);
    study->power.spool[0].imbalance = NAN;
    assert_int_equal(ts_check_run(&subject, study->arena, NULL, &study->outcome), TS_OK);
    assert_int_equal(study->outcome.verdict, TS_VERDICT_NOT_COMPUTABLE);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(fixed_bevel_loses_backlash_moving_forward),
        cmocka_unit_test(fixed_bevel_on_the_front_side_closes_moving_rearward),
        cmocka_unit_test(a_stub_too_short_at_both_ends_is_told_both),
        cmocka_unit_test(wide_spur_bears_the_whole_travel),
        cmocka_unit_test(float_scheme_without_its_numbers_is_not_computable),
        cmocka_unit_test(spiral_below_the_proposal_pulls_nothing_in),
        cmocka_unit_test(neighbouring_bodies_stand_a_centre_distance_apart),
        cmocka_unit_test(wrap_is_the_sum_of_the_angles_between_neighbours),
        cmocka_unit_test(undercut_limit_is_exact),
        cmocka_unit_test(hunting_pair_of_56_and_24_is_55_and_24),
        cmocka_unit_test(proposed_band_closes_the_finding),
        cmocka_unit_test(speed_margin_is_wanted_inside_the_band),
        cmocka_unit_test(spool_at_rest_leaves_no_ratio),
        cmocka_unit_test(helical_gears_have_their_own_tooth_limit),
        cmocka_unit_test(engine_need_with_a_reasoned_neck_is_let_pass),
        cmocka_unit_test(power_at_a_standstill_is_refused),
        cmocka_unit_test(meshes_rated_with_no_power_do_not_cover_their_losses),
        cmocka_unit_test(jet_and_wind_are_told_apart),
        cmocka_unit_test(unknown_limits_are_not_computable),
        cmocka_unit_test(web_that_lacks_data_is_not_computable),
        cmocka_unit_test(time_told_in_pieces_is_the_same_time),
        cmocka_unit_test(time_that_is_not_known_counts),
        cmocka_unit_test(lost_power_is_a_fault_of_the_program),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
