/* What stops when parts fail: is it what a simulation part by part gives, and what hands can
 * follow?
 *
 * Expected values are derived: reachability in a tree, and torque times speed alike along it.
 */
#include "effect/effect.h"
#include "study/study.h"
#include "support/close.h"
#include "support/random_train.h"
#include "support/read_file.h"
#include "support/solved_train.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* ---- a second simulation ----------------------------------------------------------------------
 * Parts are taken out of a list of edges one by one; strengths are powers at unit speed of the
 * spool.  It shares no line with src/effect.
 */

typedef struct simulation {
    const hand_train *h;
    const ts_effects *effects;
    bool              cut[HAND_SHAFTS]; /* the edge that drives the shaft */
    ts_goes           shaft[HAND_SHAFTS], pad[2 * HAND_SHAFTS];
    bool              wrecked[HAND_SPOOLS], dry[HAND_SHAFTS], tube_holds[HAND_SHAFTS];
    bool              chips, oil, stuck;
} simulation;

static double speed_of(const simulation *s, uint32_t k)
{
    return ts_rational_value(s->effects->motion->shafts[k].ratio);
}

static uint32_t parent(const simulation *s, uint32_t k)
{
    return s->h->shafts[k].mesh == TS_NOWHERE ? TS_NOWHERE
                                              : s->h->meshes[s->h->shafts[k].mesh].driver_shaft;
}

static bool reached(const simulation *s, uint32_t k)
{
    for (; k != TS_NOWHERE; k = parent(s, k))
        if (s->cut[k])
            return false;
    return true;
}

typedef struct breaker {
    double   low, high; /* W at unit speed of the spool; low NaN: not known */
    uint32_t cut;       /* TS_NOWHERE: the neck at the pad                   */
    bool     neck;
} breaker;

/* One breaker for every root, shaft and neck on the way; a mesh without a root that is known is one
 * of which nothing is known. */
static size_t list_breakers(const simulation *s, uint32_t k, breaker *list)
{
    const ts_part_capacities *parts = &s->effects->select->parts;
    const ts_necks           *necks = s->effects->select->necks;
    size_t                    count = 0;

    for (; parent(s, k) != TS_NOWHERE; k = parent(s, k)) {
        bool known = false;
        for (size_t i = 0; i < parts->count; i++) {
            const ts_part_capacity *part = &parts->items[i];
            const bool root = part->kind == TS_PART_ROOT && part->mesh == s->h->shafts[k].mesh;
            const bool tube = part->kind == TS_PART_SHAFT && part->shaft == k;
            if (!root && !tube)
                continue;
            known          = known || root;
            const double P = part->T * speed_of(s, k);
            list[count++]  = (breaker){P, P, k, false};
        }
        if (!known)
            list[count++] = (breaker){NAN, NAN, k, false};
        if (necks->of_shaft[k] != TS_NOWHERE && !s->tube_holds[k]) {
            const ts_neck_limits band = necks->items[necks->of_shaft[k]].band;
            list[count++] =
                (breaker){band.low * speed_of(s, k), band.high * speed_of(s, k), k, true};
        }
    }
    return count;
}

/* The one with the least highest strength breaks; for sure when no other may come before it. */
static void jam(simulation *s, uint32_t k, const ts_drive_neck *neck, bool at_pad)
{
    breaker list[4 * HAND_SHAFTS];
    size_t  count = list_breakers(s, k, list), best = 0;
    bool    unknown = false;

    if (neck != NULL)
        list[count++] = (breaker){neck->band.low * speed_of(s, k), neck->band.high * speed_of(s, k),
                                  TS_NOWHERE, true};
    for (size_t i = 0; i < count; i++)
        unknown = unknown || isnan(list[i].low);
    if (unknown) { /* nothing of the meshes counts then: they break anywhere */
        s->wrecked[s->h->shafts[k].drive] = true;
        s->chips                          = true;
        if (!at_pad)
            s->cut[k] = true;
        breaker least = {INFINITY, INFINITY, TS_NOWHERE, false};
        for (size_t i = 0; i < count; i++)
            if (list[i].neck && list[i].high < least.high)
                least = list[i];
        uint32_t tube = k;
        while (parent(s, tube) != TS_NOWHERE && s->h->shafts[tube].kind != TS_SHAFT_TOWER)
            tube = parent(s, tube);
        if (!least.neck)
            s->cut[tube] = true;
        else if (least.cut != TS_NOWHERE)
            s->cut[least.cut] = true;
        return;
    }
    for (size_t i = 1; i < count; i++)
        if (list[i].high < list[best].high)
            best = i;
    bool sure = true;
    for (size_t i = 0; i < count; i++)
        if (list[best].neck && i != best && !(list[best].high < list[i].low))
            sure = false;
    if (list[best].cut != TS_NOWHERE)
        s->cut[list[best].cut] = true;
    if (sure && list[best].neck && list[best].cut == TS_NOWHERE)
        return;
    if (!at_pad)
        s->cut[k] = true;
    if (sure && list[best].neck)
        return;
    s->wrecked[s->h->shafts[k].drive] = true;
    s->chips                          = true;
}

static bool among(const ts_failure *failures, size_t count, ts_failure_mode mode, uint32_t at)
{
    for (size_t i = 0; i < count; i++)
        if (failures[i].mode == mode && failures[i].at == at)
            return true;
    return false;
}

static bool pad_lets_go(const simulation *s, const ts_failure *failures, size_t count, uint32_t p)
{
    const ts_accessory *accessory = &s->h->accessories[s->h->pads[p].accessory];

    return among(failures, count, TS_FAILS_NECK, p) || among(failures, count, TS_FAILS_SPLINE, p) ||
           among(failures, count, TS_FAILS_DISCONNECT, p) ||
           among(failures, count, TS_FAILS_CLUTCH_SLIPS, p) ||
           (accessory->clutch.value == TS_CLUTCH_OVERRUNNING &&
            !among(failures, count, TS_FAILS_CLUTCH_IN, p));
}

static void take_out(simulation *s, const ts_failure *one)
{
    switch (one->mode) {
    case TS_FAILS_TEETH:
        s->cut[s->h->meshes[one->at].driven_shaft] = true;
        s->chips                                   = true;
        break;
    case TS_FAILS_JET:
        s->dry[s->h->meshes[one->at].driven_shaft] = true;
        s->chips                                   = true;
        break;
    case TS_FAILS_BEARING:
        s->cut[one->at] = true;
        s->chips        = true;
        break;
    case TS_FAILS_SHAFT_JAM:
        s->chips = true;
        break;
    case TS_FAILS_SHEAR:
    case TS_FAILS_TUBE_SPLINE:
    case TS_FAILS_TUBE_NECK:
        s->cut[one->at] = true;
        break;
    case TS_FAILS_TUBE_HOLDS:
        s->tube_holds[one->at] = true;
        break;
    case TS_FAILS_LEAK:
        s->oil = true;
        break;
    case TS_FAILS_COVER:
        s->oil = s->oil || s->h->pads[one->at].use == TS_PAD_COVER;
        break;
    default:
        break;
    }
}

static void hold(simulation *s, const ts_failure *failures, size_t count, const ts_failure *one)
{
    if (one->mode == TS_FAILS_SHAFT_JAM && reached(s, one->at))
        jam(s, one->at, NULL, false);
    if (one->mode != TS_FAILS_SEIZURE)
        return;
    const uint32_t k = s->h->pads[one->at].shaft;
    if (!reached(s, k) || pad_lets_go(s, failures, count, one->at))
        return;
    const uint32_t n     = s->effects->select->necks->of_pad[one->at];
    const bool     holds = among(failures, count, TS_FAILS_NECK_HOLDS, one->at);
    jam(s, k, n == TS_NOWHERE || holds ? NULL : &s->effects->select->necks->items[n], true);
}

static void simulate(simulation *s, const ts_failure *failures, size_t count)
{
    const hand_train *h = s->h;

    for (size_t i = 0; i < count; i++)
        take_out(s, &failures[i]);
    for (uint32_t k = 0; k < h->train.shaft_count; k++) /* the nearest to the spool first */
        for (size_t i = 0; i < count; i++) {
            const ts_failure *one = &failures[i];
            const uint32_t    at  = one->mode == TS_FAILS_SHAFT_JAM ? one->at
                                    : one->mode == TS_FAILS_SEIZURE ? h->pads[one->at].shaft
                                                                    : TS_NOWHERE;
            if (at == k)
                hold(s, failures, count, one);
        }
    for (uint32_t k = 0; k < h->train.shaft_count; k++) {
        bool doubt = h->shafts[k].kind != TS_SHAFT_SPOOL && s->wrecked[h->shafts[k].drive];
        for (uint32_t up = k; up != TS_NOWHERE; up = parent(s, up))
            doubt = doubt || s->dry[up];
        s->shaft[k] = !reached(s, k) ? TS_STOPS : doubt ? TS_IN_DOUBT : TS_GOES_ON;
    }
    for (uint32_t p = 0; p < h->train.pad_count; p++) {
        s->pad[p] = s->shaft[h->pads[p].shaft];
        for (size_t i = 0; i < count; i++)
            if (ts_failing_of(failures[i].mode) == TS_FAILING_PAD && failures[i].at == p &&
                failures[i].mode != TS_FAILS_NECK_HOLDS && failures[i].mode != TS_FAILS_LEAK &&
                failures[i].mode != TS_FAILS_COVER && failures[i].mode != TS_FAILS_CLUTCH_IN)
                s->pad[p] = TS_STOPS;
        s->stuck =
            s->stuck || (among(failures, count, TS_FAILS_CLUTCH_IN, p) && s->pad[p] != TS_STOPS);
    }
}

/* ---- random drives --------------------------------------------------------------------------- */

typedef struct random_drive {
    hand_train       h;
    solved_train     solved;
    ts_part_capacity items[3 * HAND_SHAFTS];
    ts_drive_neck    neck_items[3 * HAND_SHAFTS];
    uint32_t         of_pad[2 * HAND_SHAFTS], of_shaft[HAND_SHAFTS];
    ts_necks         necks;
    ts_select        select;
    ts_effects       effects;
    ts_outcome       outcome;
} random_drive;

static void random_neck(random_drive *d, random_source *source, uint32_t pad, uint32_t shaft)
{
    const double low = random_real(source, 20.0, 3000.0);

    d->neck_items[d->necks.count] =
        (ts_drive_neck){.pad = pad, .shaft = shaft, .band = {low, 1.2 * low}};
    *(pad == TS_NOWHERE ? &d->of_shaft[shaft] : &d->of_pad[pad]) = d->necks.count++;
}

static void random_strength(random_drive *d, uint64_t seed)
{
    random_source source = {seed ^ 0x5EEDu};
    const size_t  holes  = random_between(&source, 0, 9) == 0 ? 1 : 0; /* some are not known */

    d->necks              = (ts_necks){d->neck_items, 0, d->of_pad, d->of_shaft};
    d->select             = (ts_select){.drive = &d->h.drive, .necks = &d->necks};
    d->select.parts.items = d->items;
    for (uint32_t k = 0; k < d->h.train.shaft_count; k++) /* before the roots: no order counts */
        if (d->h.shafts[k].kind != TS_SHAFT_SPOOL && random_between(&source, 0, 2) == 0)
            d->items[d->select.parts.count++] =
                (ts_part_capacity){.kind  = TS_PART_SHAFT,
                                   .shaft = k,
                                   .mesh  = TS_NOWHERE,
                                   .T     = random_real(&source, 100.0, 4000.0),
                                   .what  = "shaft"};
    for (uint32_t m = 0; m < d->h.train.mesh_count; m++) {
        const double T = random_real(&source, 100.0, 4000.0);
        if (holes && random_between(&source, 0, 5) == 0)
            continue;
        d->items[d->select.parts.count++] = (ts_part_capacity){
            .kind = TS_PART_ROOT, .shaft = TS_NOWHERE, .mesh = m, .T = T, .what = "gear"};
    }
    for (uint32_t p = 0; p < d->h.train.pad_count; p++) {
        d->of_pad[p] = TS_NOWHERE;
        if (d->h.pads[p].accessory >= 0 && random_between(&source, 0, 1) == 0)
            random_neck(d, &source, p, d->h.pads[p].shaft);
    }
    for (uint32_t k = 0; k < d->h.train.shaft_count; k++) {
        d->of_shaft[k] = TS_NOWHERE;
        if (d->h.shafts[k].kind == TS_SHAFT_TOWER && random_between(&source, 0, 2) == 0)
            random_neck(d, &source, TS_NOWHERE, k);
    }
}

static random_drive *open_random(uint64_t seed)
{
    random_drive *d = calloc(1, sizeof *d);

    assert_non_null(d);
    random_train(&d->h, seed, 14);
    solved_open(&d->solved, &d->h);
    solved_solve(&d->solved, &d->h, NULL);
    random_strength(d, seed);
    assert_int_equal(ts_effects_prepare(&d->h.drive, &d->solved.motion, &d->select, d->solved.arena,
                                        &d->effects),
                     TS_OK);
    assert_int_equal(ts_outcome_take(&d->h.train, d->solved.arena, &d->outcome), TS_OK);
    return d;
}

static void close_random(random_drive *d)
{
    solved_close(&d->solved);
    free(d);
}

static void compare(random_drive *d, const ts_failure *failures, size_t count)
{
    simulation *s = calloc(1, sizeof *s);

    assert_non_null(s);
    s->h       = &d->h;
    s->effects = &d->effects;
    simulate(s, failures, count);
    ts_outcome_solve(&d->effects, failures, count, &d->outcome);
    for (uint32_t k = 0; k < d->h.train.shaft_count; k++)
        assert_int_equal(d->outcome.shafts[k].goes, s->shaft[k]);
    for (uint32_t p = 0; p < d->h.train.pad_count; p++)
        assert_int_equal(d->outcome.pads[p].goes, s->pad[p]);
    assert_int_equal(d->outcome.chips, s->chips);
    assert_int_equal(d->outcome.oil_lost, s->oil);
    assert_int_equal(d->outcome.stuck_in, s->stuck);
    free(s);
}

static void a_simulation_part_by_part_gives_the_same_on_a_thousand_random_drives(void **state)
{
    (void)state;
    size_t jams = 0;

    for (uint64_t seed = 1; seed <= 1000; seed++) {
        random_drive *d      = open_random(seed);
        random_source source = {seed};

        for (uint32_t i = 0; i < d->effects.failure_count; i++) {
            compare(d, &d->effects.failures[i], 1);
            jams += d->outcome.breakage_count;
        }
        for (int i = 0; i < 40 && d->effects.failure_count > 0; i++) {
            const int        last    = (int)d->effects.failure_count - 1;
            const ts_failure both[2] = {d->effects.failures[random_between(&source, 0, last)],
                                        d->effects.failures[random_between(&source, 0, last)]};
            compare(d, both, 2);
        }
        close_random(d);
    }
    assert_true(jams > 1000);
}

/* ---- causes ---------------------------------------------------------------------------------- */

static bool is_listed(const ts_causes *causes, uint32_t i, uint32_t k)
{
    for (size_t c = 0; c < causes->count; c++)
        if (causes->items[c].first == i && causes->items[c].second == k)
            return true;
    return false;
}

/* Exhaustive: every pair once more, by the simulation that the test above holds to. */
static void causes_are_all_that_an_exhaustive_search_finds_and_no_other(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 6; seed++) {
        random_drive *d = open_random(seed);
        ts_effects   *e = &d->effects;

        assert_int_equal(
            ts_effects_solve(&d->h.drive, &d->solved.motion, &d->select, d->solved.arena, e),
            TS_OK);
        for (uint32_t n = 0; n < e->effect_count; n++) {
            size_t found = 0;
            for (uint32_t i = 0; i < e->failure_count; i++) {
                const bool first = ts_effect_of(e, &e->effects[n], &e->outcomes[i]) != TS_GOES_ON;
                assert_int_equal(is_listed(&e->causes[n], i, TS_NOWHERE), first);
                found += first;
                for (uint32_t k = i + 1; k < e->failure_count; k++) {
                    const ts_failure both[2] = {e->failures[k], e->failures[i]};
                    ts_outcome_solve(e, both, 2, &d->outcome);
                    const bool pair =
                        !first && ts_effect_of(e, &e->effects[n], &e->outcomes[k]) == TS_GOES_ON &&
                        ts_effect_of(e, &e->effects[n], &d->outcome) != TS_GOES_ON;
                    found += pair;
                    if (pair)
                        assert_true(is_listed(&e->causes[n], i, k));
                }
            }
            assert_int_equal(e->causes[n].count, found);
        }
        close_random(d);
    }
}

/* ---- an example ------------------------------------------------------------------------------ */

static ts_study *study_of(const char *path)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000};
    ts_study              *study   = NULL;

    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
    return study;
}

static uint32_t pad_named(const ts_study *study, const char *name)
{
    for (uint32_t p = 0; p < study->train.pad_count; p++)
        if (strcmp(study->train.pads[p].name, name) == 0)
            return p;
    fail_msg("there is no pad called %s", name);
    return TS_NOWHERE;
}

typedef struct example {
    ts_study  *study;
    ts_effects effects;
    ts_outcome outcome;
} example;

static example open_example(const char *path)
{
    example e = {.study = study_of(path)};

    assert_int_equal(ts_effects_prepare(&e.study->drive, &e.study->motion, &e.study->select,
                                        e.study->arena, &e.effects),
                     TS_OK);
    assert_int_equal(ts_outcome_take(&e.study->train, e.study->arena, &e.outcome), TS_OK);
    return e;
}

static void a_seized_generator_breaks_its_neck_and_stops_alone(void **state)
{
    (void)state;
    example          e   = open_example("examples/bizjet.yaml");
    const uint32_t   p   = pad_named(e.study, "generator");
    const ts_failure one = {TS_FAILS_SEIZURE, p};

    ts_outcome_solve(&e.effects, &one, 1, &e.outcome);
    for (uint32_t i = 0; i < e.study->train.pad_count; i++)
        assert_int_equal(e.outcome.pads[i].goes, i == p ? TS_STOPS : TS_GOES_ON);
    assert_int_equal(e.outcome.breakage_count, 1);
    assert_int_equal(e.outcome.breakages[0].pad, p);
    assert_true(e.outcome.breakages[0].meant);
    assert_close(e.outcome.breakages[0].T, 74.0, 1e-12); /* the file: 60..74 N.m */
    assert_true(e.outcome.start_possible);
    ts_study_close(e.study);
}

/* The weakest root between pad and spool, told at the pad, by the speeds of any condition. */
static void the_torque_of_the_next_part_is_power_over_speed(void **state)
{
    (void)state;
    example          e     = open_example("examples/bizjet.yaml");
    const ts_train  *train = &e.study->train;
    const uint32_t   p     = pad_named(e.study, "generator");
    const ts_failure one   = {TS_FAILS_SEIZURE, p};
    double           least = INFINITY;

    ts_outcome_solve(&e.effects, &one, 1, &e.outcome);
    for (uint32_t k = train->pads[p].shaft; train->shafts[k].mesh != TS_NOWHERE;
         k          = train->meshes[train->shafts[k].mesh].driver_shaft)
        for (size_t i = 0; i < e.study->select.parts.count; i++) {
                     const ts_part_capacity *part = &e.study->select.parts.items[i];
                     if (part->kind == TS_PART_ROOT && part->mesh == train->shafts[k].mesh)
                least =
                    fmin(least,
                                  part->T * e.study->motion.speed[3 * train->shaft_count + k] /
                                      e.study->motion.speed[3 * train->shaft_count + train->pads[p].shaft]);
        }
    assert_true(e.outcome.breakages[0].T_next <= least * (1.0 + 1e-12));
    assert_true(isfinite(least));
    ts_study_close(e.study);
}

static void a_neck_that_would_not_break_is_seen_only_with_a_second_failure(void **state)
{
    (void)state;
    example          e       = open_example("examples/bizjet.yaml");
    const uint32_t   p       = pad_named(e.study, "generator");
    const ts_failure both[2] = {{TS_FAILS_NECK_HOLDS, p}, {TS_FAILS_SEIZURE, p}};

    ts_outcome_solve(&e.effects, both, 1, &e.outcome);
    for (uint32_t i = 0; i < e.study->train.pad_count; i++)
        assert_int_equal(e.outcome.pads[i].goes, TS_GOES_ON);
    ts_outcome_solve(&e.effects, both, 2, &e.outcome);
    assert_int_not_equal(e.outcome.pads[pad_named(e.study, "fuel pump")].goes, TS_GOES_ON);
    assert_int_equal(e.outcome.pads[pad_named(e.study, "hydraulic pump 2")].goes, TS_GOES_ON);
    ts_study_close(e.study);
}

static void a_seized_starter_stops_only_the_next_start(void **state)
{
    (void)state;
    example          e   = open_example("examples/bizjet.yaml");
    const uint32_t   p   = pad_named(e.study, "starter");
    const ts_failure one = {TS_FAILS_SEIZURE, p};

    ts_outcome_solve(&e.effects, &one, 1, &e.outcome);
    for (uint32_t i = 0; i < e.study->train.pad_count; i++)
        assert_int_equal(e.outcome.pads[i].goes, i == p ? TS_STOPS : TS_GOES_ON);
    assert_int_equal(e.outcome.breakage_count, 0);
    assert_false(e.outcome.start_possible);
    ts_study_close(e.study);
}

static void a_sheared_radial_shaft_stops_its_spool_s_pads_and_no_other(void **state)
{
    (void)state;
    example e = open_example("examples/bizjet.yaml");

    for (uint32_t k = 0; k < e.study->train.shaft_count; k++) {
        if (e.study->train.shafts[k].kind != TS_SHAFT_TOWER)
            continue;
        const ts_failure one = {TS_FAILS_SHEAR, k};
        ts_outcome_solve(&e.effects, &one, 1, &e.outcome);
        for (uint32_t p = 0; p < e.study->train.pad_count; p++) {
            const ts_shaft *shaft = &e.study->train.shafts[e.study->train.pads[p].shaft];
            assert_int_equal(e.outcome.pads[p].goes, shaft->drive == e.study->train.shafts[k].drive
                                                         ? TS_STOPS
                                                         : TS_GOES_ON);
        }
    }
    ts_study_close(e.study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_simulation_part_by_part_gives_the_same_on_a_thousand_random_drives),
        cmocka_unit_test(causes_are_all_that_an_exhaustive_search_finds_and_no_other),
        cmocka_unit_test(a_seized_generator_breaks_its_neck_and_stops_alone),
        cmocka_unit_test(the_torque_of_the_next_part_is_power_over_speed),
        cmocka_unit_test(a_neck_that_would_not_break_is_seen_only_with_a_second_failure),
        cmocka_unit_test(a_seized_starter_stops_only_the_next_start),
        cmocka_unit_test(a_sheared_radial_shaft_stops_its_spool_s_pads_and_no_other),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
