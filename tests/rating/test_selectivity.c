/* Does the right neck break first, whatever corner the world is in? */
#include "support/close.h"
#include "support/read_file.h"

#include "catalog/metal.h"
#include "rating/neck_life.h"
#include "study/study.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* A drive file with one piece of its text replaced; `old` NULL: as it stands. */
static ts_study *study_of(const char *path, const char *old, const char *new)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000};
    ts_study              *study   = NULL;
    char                  *text    = malloc(file.length + 1000);
    size_t                 length  = file.length;

    assert_non_null(text);
    memcpy(text, file.at, file.length);
    text[file.length] = '\0';
    if (old != NULL) {
        char *at = strstr(text, old);
        assert_non_null(at);
        memmove(at + strlen(new), at + strlen(old), length - (size_t)(at - text) - strlen(old));
        memcpy(at, new, strlen(new));
        length = length - strlen(old) + strlen(new);
    }
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, text, length, &options), TS_OK);
    free(text);
    free_file(file);
    return study;
}

/* As a part that may give way. */
static const ts_part_capacity *spline_of(const ts_study *study, const char *pad)
{
    for (size_t i = 0; i < study->select.parts.count; i++) {
        const ts_part_capacity *part = &study->select.parts.items[i];
        if (part->kind == TS_PART_SPLINE && strcmp(part->what, pad) == 0)
            return part;
    }
    fail_msg("there is no spline of %s", pad);
    return NULL;
}

static const ts_guard *guard_of(const ts_study *study, const char *pad)
{
    for (uint32_t p = 0; p < study->train.pad_count; p++)
        if (strcmp(study->train.pads[p].name, pad) == 0)
            return &study->select.guards[study->select.of_pad[p]];
    fail_msg("there is no %s", pad);
    return NULL;
}

/* ---- brute force ------------------------------------------------------------------------------
 */

/* One corner of the world. */
typedef struct corner {
    size_t condition;
    bool   others, lossy, strongest;
} corner;

/* N.m that one pad puts on a shaft nearer to the spool, mesh by mesh; NaN: it does not lie there.
 */
static double carried(const ts_study *study, uint32_t from, uint32_t to, double T, bool lossy)
{
    const ts_train *train = &study->train;
    uint32_t        s     = from;

    while (s != to) {
        if (train->shafts[s].mesh == TS_NOWHERE)
            return NAN;
        const ts_mesh *mesh = &train->meshes[train->shafts[s].mesh];
        const double   z_1  = (double)train->gears[mesh->driver].teeth.value;
        const double   z_2  = (double)train->gears[mesh->driven].teeth.value;

        T *= z_1 / z_2;
        if (lossy)
            T = T > 0.0 ? T / (1.0 - mesh->loss.value) : T * (1.0 - mesh->loss.value);
        s = mesh->driver_shaft;
    }
    return T;
}

/* What everything but `pad` puts on the shaft, never below nothing. */
static double others_on(const ts_study *study, uint32_t pad, uint32_t shaft, const corner *at)
{
    double sum = 0.0;

    for (uint32_t q = 0; q < study->train.pad_count; q++) {
        const ts_pad *other = &study->train.pads[q];
        const double  T     = study->power.pad[at->condition * study->train.pad_count + q].T;
        const double  here  = carried(study, other->shaft, shaft, T, at->lossy);

        if (q != pad && other->accessory >= 0 && !isnan(here))
            sum += here;
    }
    return fmax(sum, 0.0);
}

/* The torque at the pad that breaks the first part in this corner. */
static double first_to_go(const ts_study *study, uint32_t pad, const corner *at)
{
    double least = INFINITY;

    for (size_t i = 0; i < study->select.parts.count; i++) {
        const ts_part_capacity *part = &study->select.parts.items[i];
        const uint32_t          shaft =
            part->mesh == TS_NOWHERE ? part->shaft : study->train.meshes[part->mesh].driven_shaft;
        const double g = carried(study, study->train.pads[pad].shaft, shaft, 1.0, at->lossy);

        if (isnan(g) || isnan(part->T) || (part->of_pad && part->pad != pad))
            continue;
        const double L = at->others && !part->of_pad ? others_on(study, pad, shaft, at) : 0.0;
        least          = fmin(least, (part->T - L) / g);
    }
    return least;
}

/* Every corner of conditions, loads of the others and losses: the wall is the worst of them, and a
 * neck that the rule lets pass breaks first in all of them. */
static void no_corner_is_worse(const char *path)
{
    ts_study *study = study_of(path, NULL, NULL);

    for (uint32_t p = 0; p < study->train.pad_count; p++) {
        if (study->select.of_pad[p] == TS_NOWHERE)
            continue;
        const ts_guard *guard = &study->select.guards[study->select.of_pad[p]];
        double          least = INFINITY;

        for (size_t c = 0; c < study->drive.condition_count; c++)
            for (int bits = 0; bits < 8; bits++) {
                const corner at   = {c, (bits & 1) != 0, (bits & 2) != 0, (bits & 4) != 0};
                const double wall = first_to_go(study, p, &at);

                least = fmin(least, wall);
                if (guard->neck == TS_NOWHERE)
                    continue;
                const ts_neck_limits band = study->necks.items[guard->neck].band;
                if (band.high < guard->once.T)
                    assert_true((at.strongest ? band.high : band.low) < wall);
            }
        assert_close(guard->once.T, least, 2e-3); /* a start loses on its way the other way round */
        assert_true(guard->once.T <= least * (1.0 + 2e-3));
    }
    ts_study_close(study);
}

static void wall_is_the_worst_corner_of_small_drives(void **state)
{
    (void)state;
    no_corner_is_worse("examples/trainer.yaml");
    no_corner_is_worse("tests/check/base.yaml");
}

/* The way through the whole train and the walk from one pad agree. */
static void wall_is_the_least_of_the_parts_on_the_way(void **state)
{
    (void)state;
    ts_study       *study = study_of("examples/trainer.yaml", NULL, NULL);
    const ts_guard *guard = guard_of(study, "hydraulic pump");
    double          least = INFINITY;

    for (size_t i = 0; i < study->select.parts.count; i++) {
        const ts_wall wall = ts_select_wall_of(&study->select, guard, (uint32_t)i);
        uint32_t      way[64];
        const size_t  count = ts_select_upstream(&study->select, guard, way, 64);
        for (size_t k = 0; k < count; k++)
            if (way[k] == i)
                least = fmin(least, wall.T);
    }
    assert_close(guard->once.T, least, 0.0);
    ts_study_close(study);
}

/* The spline of a pad is loaded by that pad alone: a thin one is the wall of its own pad, with
 * nothing that others take, and changes no other wall. */
static void a_thin_spline_is_the_wall_of_its_own_pad(void **state)
{
    (void)state;
    ts_study *wide = study_of("examples/bizjet.yaml", NULL, NULL);
    ts_study *thin = study_of("examples/bizjet.yaml", "spline: AS972", "spline: B92.1 8T 32/64");
    const ts_guard *own = guard_of(thin, "hydraulic pump 2");

    assert_int_equal(thin->select.parts.items[own->once.part].kind, TS_PART_SPLINE);
    assert_close(own->once.T, spline_of(thin, "hydraulic pump 2")->T, 0.0);
    assert_close(own->once.g, 1.0, 0.0);
    assert_close(own->once.L, 0.0, 0.0);
    assert_true(own->once.T < guard_of(wide, "hydraulic pump 2")->once.T);
    for (uint32_t i = 0; i < wide->select.count; i++)
        if (wide->select.guards[i].pad != own->pad)
            assert_close(thin->select.guards[i].once.T, wide->select.guards[i].once.T, 0.0);
    ts_study_close(thin);
    ts_study_close(wide);
}

/* ---- teeth ----------------------------------------------------------------------------------- */

#define TOWER "outside: 22 mm, bore: 14 mm}"

/* derived: on its way as a generator its torque comes from the spool, through the tower shaft; what
 * that neck bears less what the others take there, referred to the pad by ratio and loss */
static void neck_further_in_is_a_wall_to_a_generator_that_also_starts(void **state)
{
    (void)state;
    ts_study *study =
        study_of("examples/trainer.yaml", TOWER,
                 "outside: 22 mm, bore: 14 mm, neck: {breaks: 25..28 N.m, why: it is to hold}}");
    const ts_guard         *guard = guard_of(study, "starter-generator");
    const ts_part_capacity *part  = &study->select.parts.items[guard->once.part];
    double                  least = INFINITY;

    assert_true(guard->start.T > guard->run.T);
    assert_int_equal(part->kind, TS_PART_NECK);
    for (uint32_t c = 0; c < study->drive.condition_count; c++) {
        const uint32_t s     = guard->shaft;
        const uint32_t tower = study->train.meshes[study->train.shafts[s].mesh].driver_shaft;
        const double   own   = study->power.pad[c * study->train.pad_count + guard->pad].T;
        const double   all   = study->power.T[c * study->train.shaft_count + tower];

        least = fmin(least, (25.0 - (all - own * guard->once.g)) / guard->once.g);
    }
    assert_close(guard->once.T, least, 1e-12);
    assert_true(guard->once.T < 41.0);
    assert_true(guard->once.T >= guard->lasting.T);
    ts_study_close(study);
}

/* What a part bears once it bears no less than for a while; the start alone has another way. */
static void nothing_bears_longer_what_it_does_not_bear_once(void **state)
{
    static const char *const paths[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                        "examples/medium.yaml", "examples/large.yaml"};
    (void)state;
    for (size_t e = 0; e < sizeof paths / sizeof paths[0]; e++) {
        ts_study *study = study_of(paths[e], NULL, NULL);
        for (uint32_t i = 0; i < study->select.count; i++) {
            const ts_guard *guard    = &study->select.guards[i];
            const ts_wall  *walls[2] = {&guard->once, &guard->lasting};
            if (!guard->at_start && guard->lasting.part != TS_NOWHERE)
                assert_true(guard->once.T * (1.0 + 1e-12) >= guard->lasting.T);
            for (int k = 0; k < 2; k++)
                if (walls[k]->part != TS_NOWHERE)
                    assert_true(ts_wall_bears(walls[k]) <=
                                study->select.parts.items[walls[k]->part].T * (1.0 + 1e-12));
        }
        ts_study_close(study);
    }
}

/* The defining property: rated at that torque the least safety is 1. */
static void teeth_bear_their_torque_with_a_safety_of_one(void **state)
{
    (void)state;
    ts_study *study = study_of("examples/large.yaml", NULL, NULL);

    for (uint32_t m = 0; m < study->train.mesh_count; m++) {
        const ts_tooth_capacity *once = &study->select.teeth_once[m];
        ts_iso6336_rating        r;

        assert_null(once->missing);
        if (study->train.meshes[m].kind != TS_MESH_CYLINDRICAL)
            continue;
        assert_true(
            ts_iso6336_rate(&study->teeth.prepared[m], &once->load[TS_RATED_BENDING], &r, NULL));
        assert_close(fmin(r.gear[0].S_F, r.gear[1].S_F), 1.0, 1e-9);
        assert_true(
            ts_iso6336_rate(&study->teeth.prepared[m], &once->load[TS_RATED_CONTACT], &r, NULL));
        assert_close(fmin(r.gear[0].S_H, r.gear[1].S_H), 1.0, 1e-9);
    }
    ts_study_close(study);
}

/* A while wears more than once, and a longer while more than a short one. */
static void longer_overloads_are_borne_less(void **state)
{
    (void)state;
    ts_study       *study  = study_of("examples/bizjet.yaml", NULL, NULL);
    const ts_guard *guard  = guard_of(study, "fuel pump");
    double          before = guard->once.T;

    for (double seconds = 0.1; seconds < 1e8; seconds *= 10.0) {
        const ts_wall wall = ts_select_wall_for(&study->select, guard, seconds, false);
        assert_true(wall.T <= before * (1.0 + 1e-12) && wall.T > 0.0);
        before = wall.T;
    }
    assert_true(before < 0.6 * guard->once.T);
    ts_study_close(study);
}

/* The way through the train and the walk of one pad agree. */
static void overload_of_the_solve_is_that_of_the_walk(void **state)
{
    (void)state;
    ts_study *study = study_of("examples/large.yaml", NULL, NULL);

    for (uint32_t i = 0; i < study->select.count; i++) {
        const ts_guard *guard = &study->select.guards[i];
        if (!(guard->T_over > 0.0))
            continue;
        const ts_wall wall =
            ts_select_wall_for(&study->select, guard, guard->t_over, guard->at_start);
        assert_close(guard->lasting.T, wall.T, 1e-9);
        assert_int_equal(guard->lasting.part, wall.part);
    }
    ts_study_close(study);
}

/* ---- necks ----------------------------------------------------------------------------------- */

#define STATED "    neck: {breaks: 60..74 N.m}"
#define DESIGNED                                                                                   \
    "    neck: {diameter: 7.2 mm, tolerance: 0.02 mm, metal: low-alloy 160 ksi, bore: 2 mm}"

static const ts_drive_neck *designed_neck(const ts_study *study)
{
    return &study->necks.items[guard_of(study, "generator")->neck];
}

/* derived: pi/16 tau d^3 elastic at the weakest corner, pi/12 tau d^3 plastic at the strongest, by
 * MMPDS-01's 160 ksi and the defaults of the file; K = C + 273.15 */
static void band_of_a_designed_neck_by_hand(void **state)
{
    (void)state;
    ts_study            *study = study_of("tests/check/base.yaml", STATED, DESIGNED);
    const ts_neck_limits band  = designed_neck(study)->band;
    const double         pi = 3.14159265358979323846, ksi = 6894757.293168361, F = 160.0 * ksi;
    const double         weak = F * 0.58 * (1.0 - 3e-4 * 100.0);
    const double strong = F / (1.0 - 2.3263478740408408 * 0.03) * 1.09 * 0.62 * (1.0 + 3e-4 * 60.0);
    const double d_low = 7.18e-3, d_high = 7.22e-3, d_i = 2e-3;

    assert_close(band.low, pi / 16.0 * weak * (pow(d_low, 4) - pow(d_i, 4)) / d_low, 1e-12);
    assert_close(band.high, pi / 12.0 * strong * (pow(d_high, 3) - pow(d_i, 3)), 1e-12);
    ts_study_close(study);
}

static void no_sample_leaves_the_band(void **state)
{
    (void)state;
    enum { SAMPLES = 100000 };
    ts_study            *study = study_of("tests/check/base.yaml", STATED, DESIGNED);
    const ts_drive_neck *neck  = designed_neck(study);
    double              *T     = malloc(2 * SAMPLES * sizeof *T);
    double               low = INFINITY, high = 0.0;

    assert_non_null(T);
    ts_drive_neck_draw(neck, 7, 0, SAMPLES, T);
    for (size_t i = 0; i < SAMPLES; i++) {
        assert_true(T[i] >= neck->band.low && T[i] <= neck->band.high);
        low  = fmin(low, T[i]);
        high = fmax(high, T[i]);
    }
    assert_true(low < 1.15 * neck->band.low && high > 0.88 * neck->band.high);
    /* the same torques in three shares of the work */
    ts_drive_neck_draw(neck, 7, 0, 10, T + SAMPLES);
    ts_drive_neck_draw(neck, 7, 10, 60000, T + SAMPLES + 10);
    ts_drive_neck_draw(neck, 7, 60010, SAMPLES - 60010, T + SAMPLES + 60010);
    assert_memory_equal(T, T + SAMPLES, SAMPLES * sizeof *T);
    free(T);
    ts_study_close(study);
}

/* derived: the first-order chance against the share of drawn necks that a torque breaks */
static void chance_agrees_with_drawn_necks(void **state)
{
    (void)state;
    enum { SAMPLES = 100000 };
    ts_study       *study = study_of("tests/check/base.yaml", STATED, DESIGNED);
    const ts_guard *guard = guard_of(study, "generator");
    double         *T     = malloc(SAMPLES * sizeof *T);
    ts_neck_life    life;
    double          sum = 0.0, square = 0.0;

    assert_non_null(T);
    ts_neck_life_of(&study->select, guard, &life, NULL);
    assert_null(life.missing);
    ts_drive_neck_draw(designed_neck(study), 3, 0, SAMPLES, T);
    for (size_t i = 0; i < SAMPLES; i++) {
        sum += T[i];
        square += T[i] * T[i];
    }
    const double mean = sum / SAMPLES, spread = sqrt(square / SAMPLES - mean * mean);
    assert_close(life.make.T_mid, mean, 0.005);
    assert_close(life.make.cov, spread / mean, 0.05);
    const double d = ts_neck_life_balance(&life);
    assert_close(ts_neck_chance_of(&life.make, &life.duty, d, NULL).early,
                 ts_neck_chance_of(&life.make, &life.duty, d, NULL).late, 1e-6);
    free(T);
    ts_study_close(study);
}

/* DIN 743-2, K_1 of a steel that hardens through: 1 - 0.26 lg(d_eff/16 mm). */
static void thick_blanks_are_weaker(void **state)
{
    (void)state;
    ts_study *thin = study_of("tests/check/base.yaml", STATED, "    neck: {diameter: 7.2 mm}");
    ts_study *thick =
        study_of("tests/check/base.yaml", STATED, "    neck: {diameter: 7.2 mm, blank: 48 mm}");
    ts_study *told =
        study_of("tests/check/base.yaml", STATED,
                 "    neck: {diameter: 7.2 mm, blank: 48 mm, strength: 1000..1200 MPa}");
    ts_study *plain = study_of("tests/check/base.yaml", STATED,
                               "    neck: {diameter: 7.2 mm, strength: 1000..1200 MPa}");

    assert_close(designed_neck(thick)->band.low,
                 designed_neck(thin)->band.low * (1.0 - 0.26 * log10(3.0)), 1e-12);
    assert_close(designed_neck(thick)->band.high, designed_neck(thin)->band.high, 1e-12);
    assert_close(designed_neck(told)->band.low, designed_neck(plain)->band.low, 1e-12);
    ts_study_close(thin);
    ts_study_close(thick);
    ts_study_close(told);
    ts_study_close(plain);
}

/* Hz */
static double turn_rate(const ts_study *study, uint32_t condition, uint32_t shaft)
{
    return fabs(study->motion.speed[(size_t)condition * study->train.shaft_count + shaft]) /
           (2.0 * 3.14159265358979323846);
}

/* Torsional vibration: in every condition the amplitude is what the forced torsion of its tree
 * says, a greater ripple of the file, and never more than the torque itself; each lasts as long as
 * the condition at the rate of that swing.  Without it the ripple alone remains, once a turn. */
static void necks_tire_by_the_swings_of_their_torque(void **state)
{
    (void)state;
    static const char *const necks[] = {"    inertia: 0.002 kg.m2\n    neck: {diameter: 7.2 mm}",
                                        "    inertia: 0.002 kg.m2\n    ripple order: 3\n"
                                        "    neck: {diameter: 7.2 mm, ripple: 30 %}"};

    for (int n = 0; n < 2; n++) {
        ts_study       *study = study_of("tests/check/base.yaml", STATED, necks[n]);
        const ts_guard *guard = guard_of(study, "generator");
        const ts_train *train = &study->train;
        const uint32_t  pad   = guard->pad;
        double          least = 1.0;
        ts_neck_life    life;
        int             swings = 0, by_ripple = 0;

        ts_neck_life_of(&study->select, guard, &life, NULL);
        assert_null(life.missing);
        for (int i = 0; i < life.duty.cycle_count; i++) {
            if (life.condition[i] == TS_EVERY_CONDITION)
                continue;
            const uint32_t         c     = (uint32_t)life.condition[i];
            const double           T     = study->power.pad[c * train->pad_count + pad].T;
            const ts_torque_swing *swing = ts_forced_at_accessory(
                study->twist.forced, study->twist.count, c, train->pads[pad].accessory);
            assert_non_null(swing);
            assert_close(life.cycles[i].T_m, fabs(T), 1e-14);
            const bool told = n == 1 && 0.3 * T > swing->swing;
            assert_close(life.cycles[i].T_a, fmin(told ? 0.3 * T : swing->swing, fabs(T)), 1e-14);
            const double rate = told ? 3.0 * turn_rate(study, c, guard->shaft) : swing->rate;
            assert_close(life.cycles[i].cycles,
                         rate * ts_condition_seconds(&study->drive.conditions[c]), 1e-14);
            assert_true(swing->rate > 0.0 && swing->sum >= swing->swing * (1.0 - 1e-14));
            by_ripple += told;
            least = fmin(least, life.cycles[i].T_a / fabs(T));
            swings++;
        }
        assert_true(swings >= 3);
        assert_true(by_ripple == 0 || n == 1);
        assert_true(n == 0 || least >= 0.3 - 1e-12);
        study->select.forced = NULL;
        ts_neck_life calm;
        ts_neck_life_of(&study->select, guard, &calm, NULL);
        for (int i = 0; i < calm.duty.cycle_count; i++)
            if (calm.condition[i] != TS_EVERY_CONDITION)
                assert_close(calm.cycles[i].T_a, (n == 1 ? 0.3 : 0.05) * calm.cycles[i].T_m, 1e-14);
        ts_study_close(study);
    }
}

static ts_neck_make made_of(const char *neck)
{
    ts_study    *study = study_of("tests/check/base.yaml", STATED, neck);
    ts_neck_life life;

    ts_neck_life_of(&study->select, guard_of(study, "generator"), &life, NULL);
    assert_null(life.missing);
    ts_study_close(study);
    return life.make;
}

/* Shigley, chapter 6: 0.9 of the tensile strength at 1e3 cycles, half of it but no more than 700
 * MPa at 1e6 over notch, size and surface; 0.577 of both in torsion.  By hand at the means. */
static void fatigue_lines_pass_through_both_their_points(void **state)
{
    (void)state;
    static const struct {
        const char *neck;
        double      F, K_f; /* MPa; notch that is felt, 0: of Peterson's chart */
    } lines[] = {
        {"    neck: {diameter: 7 mm, strength: 1000..1200 MPa}", 1100.0, 1.0},
        {"    neck: {diameter: 7 mm, strength: 1000..1200 MPa, shank: 10 mm, notch radius: 1 mm}",
         1100.0, 0.0},
        {"    neck: {diameter: 7 mm, strength: 1600..1700 MPa}", 1650.0, 1.0},
        {"    neck: {diameter: 7 mm, strength: 1600..1700 MPa, shank: 10 mm, notch radius: 1 mm}",
         1650.0, 0.0},
    };
    const double W_p = 3.14159265358979323846 / 16.0 * pow(7e-3, 3), warmth = 1.0 - 3e-4 * 20.0;

    for (int i = 0; i < 4; i++) {
        const ts_neck_make make = made_of(lines[i].neck);
        const double       S_e  = fmin(lines[i].F / 2.0, 700.0) * 1e6 * 0.577 * warmth * W_p;
        const double       few  = 0.9 * lines[i].F * 1e6 * 0.577 * warmth * W_p;
        const double       K    = make.K_f + 1.0 / make.K_F - 1.0; /* K_2 is 1 up to 7.5 mm */

        assert_true(lines[i].K_f > 0.0 ? make.K_f == 1.0 : make.K_f > 1.2);
        assert_true(make.K_F < 0.99);
        assert_close(make.T_W, S_e / K, 1e-12);
        assert_close(make.T_W * pow(1e3, 1.0 / make.k), few, 1e-12);
    }
}

/* Laws of steel are not those of magnesium, however strong the file says that it is. */
static void necks_of_light_metals_have_no_chances(void **state)
{
    (void)state;
    static const char *const light[] = {
        "    neck: {diameter: 7 mm, metal: ze41a-t5}",
        "    neck: {diameter: 7 mm, metal: a357-t61}",
        "    neck: {diameter: 7 mm, metal: we43-t6, strength: 1000..1200 MPa}"};

    for (int i = 0; i < 3; i++) {
        ts_study    *study = study_of("tests/check/base.yaml", STATED, light[i]);
        ts_neck_life life;

        ts_neck_life_of(&study->select, guard_of(study, "generator"), &life, NULL);
        assert_non_null(life.missing);
        assert_non_null(strstr(life.missing, "steel"));
        assert_true(isnan(life.chance.early));
        ts_study_close(study);
    }
    for (size_t i = 0; i < ts_metal_count(); i++) {
        const ts_metal metal = ts_metal_at(i);
        const bool     cast  = strstr(metal.key, "-t") != NULL; /* tempers of cast light alloys */
        assert_true(ts_metal_is_steel(&metal) == !cast);
    }
}

/* Of a drive that swings by nothing a told ripple is all, at its own rate; what one source swings
 * is its amplitude, what many do is bounded by Rayleigh's law: by numbers that are put in. */
static void told_ripples_and_many_sources_have_their_rates_and_sizes(void **state)
{
    (void)state;
    ts_study       *study = study_of("tests/check/base.yaml", STATED,
                                     "    inertia: 0.002 kg.m2\n    ripple order: 3\n"
                                           "    neck: {diameter: 7.2 mm, ripple: 10 %}");
    const ts_guard *guard = guard_of(study, "generator");
    const uint32_t  pads  = study->train.pad_count;
    const struct {
        double swing, sum, rate, expected; /* of the mean torque */
    } cases[] = {
        {0.0, 0.0, 0.0, 0.1}, {0.02, 0.03, 1e4, 0.1}, {0.2, 0.2, 5e3, 0.2}, {0.15, 1e3, 5e3, 0.15}};

    for (int i = 0; i < 4; i++) {
        ts_neck_life life;
        int          seen = 0;

        for (uint32_t c = 0; c < study->drive.condition_count; c++) {
            ts_torque_swing *swing = (ts_torque_swing *)ts_forced_at_accessory(
                study->twist.forced, study->twist.count, c,
                study->train.pads[guard->pad].accessory);
            const double T = study->power.pad[(size_t)c * pads + guard->pad].T;
            if (swing == NULL)
                continue;
            swing->swing = cases[i].swing * T;
            swing->sum   = cases[i].sum * T;
            swing->rate  = cases[i].rate;
        }
        ts_neck_life_of(&study->select, guard, &life, NULL);
        const double part = cases[i].expected;
        /* of one source alone the bound is the chance itself; of many it is more */
        assert_true(i == 3 ? life.early_most > life.chance.early
                           : life.early_most == life.chance.early);
        for (int k = 0; k < life.duty.cycle_count; k++) {
            if (life.condition[k] == TS_EVERY_CONDITION)
                continue;
            const uint32_t c    = (uint32_t)life.condition[k];
            const double   rate = i < 2 ? 3.0 * turn_rate(study, c, guard->shaft) : cases[i].rate;
            assert_close(life.cycles[k].T_a, part * life.cycles[k].T_m, 1e-12);
            assert_close(life.cycles[k].cycles,
                         rate * ts_condition_seconds(&study->drive.conditions[c]), 1e-12);
            seen++;
        }
        assert_true(seen >= 3);
    }
    ts_study_close(study);
}

static void colder_and_thicker_necks_are_stronger(void **state)
{
    (void)state;
    ts_study *cold = study_of("tests/check/base.yaml", STATED,
                              "    neck: {diameter: 7.2 mm, temperature: -50..-40 degC}");
    ts_study *hot  = study_of("tests/check/base.yaml", STATED,
                              "    neck: {diameter: 7.2 mm, temperature: 100..120 degC}");
    ts_study *wide = study_of("tests/check/base.yaml", STATED,
                              "    neck: {diameter: 7.3 mm, temperature: 100..120 degC}");

    assert_true(designed_neck(cold)->band.high > designed_neck(hot)->band.high);
    assert_true(designed_neck(wide)->band.low > designed_neck(hot)->band.low);
    ts_study_close(cold);
    ts_study_close(hot);
    ts_study_close(wide);
}

/* A brittle neck feels its notch: its least torque is lower by Peterson's factor. */
static void only_a_brittle_neck_feels_its_notch(void **state)
{
    (void)state;
    ts_study            *tough   = study_of("tests/check/base.yaml", STATED,
                                            "    neck: {diameter: 7.2 mm, shank: 10 mm, notch radius: 1 mm}");
    ts_study            *brittle = study_of("tests/check/base.yaml", STATED,
                                            "    neck: {diameter: 7.2 mm, shank: 10 mm, notch radius: 1 mm, "
                                                       "breaking: brittle}");
    const ts_drive_neck *a = designed_neck(tough), *b = designed_neck(brittle);

    assert_true(a->K_ts > 1.3 && a->K_ts < 1.5);
    assert_close(b->band.low, a->band.low / a->K_ts, 1e-12);
    assert_close(b->band.high, a->band.high, 1e-12);
    ts_study_close(tough);
    ts_study_close(brittle);
}

/* ---- in a tower shaft ------------------------------------------------------------------------ */

/* What may pass a neck in the tower shaft, by a slow sum over conditions and pads, mesh by mesh. */
static void tower_of(const char *overload)
{
    ts_study *study =
        study_of("examples/traps/medium_start_neck.yaml", "overload: 680 N.m for 2 s", overload);
    const ts_train *train = &study->train;
    uint32_t        tower = 0;
    double          run = 0.0, start = 0.0, plain = 0.0;

    while (study->select.of_shaft[tower] == TS_NOWHERE)
        tower++;
    for (size_t c = 0; c < study->drive.condition_count; c++) {
        const double all = study->power.T[c * train->shaft_count + tower];

        plain = fmax(plain, all);
        start = fmax(start, -all);
        for (uint32_t p = 0; p < train->pad_count && all > 0.0; p++) {
            const int32_t who = train->pads[p].accessory;
            const double  own = study->power.pad[c * train->pad_count + p].T;
            if (who < 0 || own < 0.0 || strcmp(train->pads[p].name, "starter") == 0)
                continue;
            const double over = study->drive.accessories[who].torque.overload.torque;
            const double more = carried(study, train->pads[p].shaft, tower, over - own, true);
            if (over > own && !isnan(more))
                run = fmax(run, all + more);
        }
    }
    for (uint32_t p = 0; p < train->pad_count; p++) {
        const int32_t who = train->pads[p].accessory;
        if (who < 0 || strcmp(train->pads[p].name, "starter") != 0)
            continue;
        double top = study->drive.accessories[who].torque.overload.torque;
        for (size_t i = 0; i < study->drive.accessories[who].curve_count; i++)
            top = fmax(top, study->drive.accessories[who].curve[i].torque.value);
        start = fmax(start, -carried(study, train->pads[p].shaft, tower, -top, true));
    }
    const ts_guard *guard = &study->select.guards[study->select.of_shaft[tower]];
    assert_true(run > 1.01 * plain);
    assert_close(guard->run.T, run, 1e-12);
    assert_close(guard->start.T, start, 1e-12);
    assert_int_not_equal(guard->run_by, TS_NOWHERE);
    assert_string_equal(train->pads[guard->start_by].name, "starter");
    assert_string_not_equal(train->pads[guard->run_by].name, "starter");
    ts_study_close(study);
}

/* The curve of its starter begins at 660 N.m, and drives 620 N.m when it cranks: no overload of it
 * is absorbed, be it above, between or below. */
static void tower_necks_pass_overloads_and_the_top_of_the_start(void **state)
{
    (void)state;
    tower_of("overload: 680 N.m for 2 s");
    tower_of("overload: 650 N.m for 2 s");
    tower_of("overload: 600 N.m for 2 s");
}

/* How often the torque goes through the range from -inwards to outwards. */
static double turns(const ts_neck_life *life, double inwards, double outwards)
{
    double n = 0.0;

    for (int i = 0; i < life->duty.cycle_count; i++)
        if (life->condition[i] == TS_EVERY_CONDITION &&
            fabs(life->cycles[i].T_a - (outwards + inwards) / 2.0) < 1e-9 &&
            fabs(life->cycles[i].T_m - fabs(outwards - inwards) / 2.0) < 1e-9)
            n += life->cycles[i].cycles;
    return n;
}

#define TOWER_NECK "neck: {breaks: 260..320 N.m, why:"

/* The start goes one way and the flight the other: one cycle from the one to the other.  So many
 * overloads a start, each with all else that passes then, beside it. */
static void tower_necks_tire_by_turns_and_overloads(void **state)
{
    (void)state;
    static const struct {
        const char *neck;
        double      more; /* overloads from nothing, a start */
        double      once; /* in the course of a start */
    } necks[] = {{"neck: {diameter: 16 mm, why:", 0.0, 1.0},
                 {"neck: {diameter: 16 mm, overloads: 5, why:", 4.0, 1.0},
                 {"neck: {diameter: 16 mm, overloads: 0.25, why:", 0.0, 0.25},
                 {"neck: {diameter: 16 mm, overloads: 0, why:", 0.0, 0.0}};

    for (int i = 0; i < 4; i++) {
        ts_study *study =
            study_of("examples/traps/medium_start_neck.yaml", TOWER_NECK, necks[i].neck);
        const ts_train *train = &study->train;
        uint32_t        tower = 0;
        double          run = 0.0, crank = 0.0;
        ts_neck_life    life;

        while (study->select.of_shaft[tower] == TS_NOWHERE)
            tower++;
        const ts_guard *guard = &study->select.guards[study->select.of_shaft[tower]];
        for (size_t c = 0; c < study->drive.condition_count; c++) {
            run   = fmax(run, study->power.T[c * train->shaft_count + tower]);
            crank = fmax(crank, -study->power.T[c * train->shaft_count + tower]);
        }
        const uint32_t starter = guard_of(study, "starter")->pad;
        const double   top     = -carried(study, train->pads[starter].shaft, tower, -660.0, true);
        ts_neck_life_of(&study->select, guard, &life, NULL);
        assert_null(life.missing);
        assert_true(top > crank && guard->run.T > run && guard->start.T > top);
        assert_close(turns(&life, top, run), 30000.0, 0.0);
        assert_close(turns(&life, guard->start.T, guard->run.T), 30000.0 * necks[i].once, 0.0);
        assert_close(turns(&life, 0.0, guard->run.T), 30000.0 * necks[i].more, 0.0);
        assert_close(turns(&life, 0.0, run) + turns(&life, top, 0.0), 0.0, 0.0);
        ts_study_close(study);
    }
}

/* That of the trainer drives, and is an overload's generator later on. */
static void starter_generators_turn_about(void **state)
{
    (void)state;
    ts_study       *study = study_of("examples/trainer.yaml", "neck: {breaks: 60..74 N.m}",
                                     "neck: {diameter: 7.6 mm, overloads: 2}");
    const ts_guard *guard = guard_of(study, "starter-generator");
    ts_neck_life    life;
    double          n = 0.0;

    ts_neck_life_of(&study->select, guard, &life, NULL);
    assert_null(life.missing);
    for (size_t c = 0; c < study->drive.condition_count; c++)
        if (study->drive.conditions[c].events.standing == TS_GIVEN)
            n = fmax(n, (double)study->drive.conditions[c].events.value);
    assert_true(n > 0.0 && guard->run.T > 5.0 && guard->T_over > guard->run.T);
    assert_close(turns(&life, 47.0, guard->run.T), n, 0.0);
    assert_close(turns(&life, 47.0, 14.0), n, 0.0);
    assert_close(turns(&life, 0.0, 14.0), n, 0.0);
    assert_close(turns(&life, 47.0, 0.0) + turns(&life, 0.0, guard->run.T), 0.0, 0.0);
    ts_study_close(study);
}

/* ---- swapped --------------------------------------------------------------------------------- */

static void swapped_necks_are_told_by_what_they_do(void **state)
{
    (void)state;
    ts_study       *study     = study_of("tests/check/base.yaml", NULL, NULL);
    const ts_guard *starter   = guard_of(study, "starter");
    const ts_guard *generator = guard_of(study, "generator");
    const ts_guard *pump_1    = guard_of(study, "hydraulic pump 1");
    const ts_guard *pump_2    = guard_of(study, "hydraulic pump 2");

    /* 60 N.m under the start of 240 N.m; 390 N.m where the way bears 342 N.m */
    assert_int_equal(ts_select_swapped(&study->select, starter, generator).verdict, TS_SWAP_EARLY);
    assert_int_equal(ts_select_swapped(&study->select, pump_2, starter).verdict, TS_SWAP_LATE);
    assert_int_equal(ts_select_swapped(&study->select, pump_2, pump_1).verdict, TS_SWAP_HOLDS);
    assert_false(ts_select_swapped(&study->select, pump_2, starter).fits); /* other splines */
    assert_true(ts_select_swapped(&study->select, pump_2, pump_1).fits);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(wall_is_the_worst_corner_of_small_drives),
        cmocka_unit_test(wall_is_the_least_of_the_parts_on_the_way),
        cmocka_unit_test(a_thin_spline_is_the_wall_of_its_own_pad),
        cmocka_unit_test(neck_further_in_is_a_wall_to_a_generator_that_also_starts),
        cmocka_unit_test(nothing_bears_longer_what_it_does_not_bear_once),
        cmocka_unit_test(teeth_bear_their_torque_with_a_safety_of_one),
        cmocka_unit_test(longer_overloads_are_borne_less),
        cmocka_unit_test(overload_of_the_solve_is_that_of_the_walk),
        cmocka_unit_test(band_of_a_designed_neck_by_hand),
        cmocka_unit_test(no_sample_leaves_the_band),
        cmocka_unit_test(chance_agrees_with_drawn_necks),
        cmocka_unit_test(colder_and_thicker_necks_are_stronger),
        cmocka_unit_test(thick_blanks_are_weaker),
        cmocka_unit_test(necks_tire_by_the_swings_of_their_torque),
        cmocka_unit_test(fatigue_lines_pass_through_both_their_points),
        cmocka_unit_test(necks_of_light_metals_have_no_chances),
        cmocka_unit_test(told_ripples_and_many_sources_have_their_rates_and_sizes),
        cmocka_unit_test(only_a_brittle_neck_feels_its_notch),
        cmocka_unit_test(tower_necks_pass_overloads_and_the_top_of_the_start),
        cmocka_unit_test(tower_necks_tire_by_turns_and_overloads),
        cmocka_unit_test(starter_generators_turn_about),
        cmocka_unit_test(swapped_necks_are_told_by_what_they_do),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
