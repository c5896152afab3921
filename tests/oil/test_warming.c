/* Do gears, casing and oil grow hot as their heat says, and does play follow? */
#include "support/close.h"
#include "support/read_file.h"

#include "element/dulong_petit.h"
#include "oil/warming.h"
#include "study/study.h"

static const double pi = 3.14159265358979323846;

typedef struct warmed {
    ts_study      *study;
    ts_arena      *arena;
    ts_warm_course course;
} warmed;

static void warm(const char *path, const ts_warm_leg *legs, size_t count, double soak, double air,
                 size_t samples, warmed *it)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000};
    assert_int_equal(ts_study_open(NULL, &it->study), TS_OK);
    assert_int_equal(ts_study_read(it->study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
    it->arena                       = ts_arena_open(NULL);
    const ts_warm_question question = {.heat      = &it->study->heat,
                                       .mass      = &it->study->mass,
                                       .legs      = legs,
                                       .leg_count = count,
                                       .soak      = soak,
                                       .alpha     = {11.5e-6, 26e-6},
                                       .air       = air,
                                       .samples   = samples};
    assert_int_equal(ts_warm_follow(&question, it->arena, &it->course), TS_OK);
    assert_null(it->course.missing);
}

static void cool(warmed *it)
{
    ts_arena_close(it->arena);
    ts_study_close(it->study);
}

/* ---- a second route ---------------------------------------------------------------------------
 */

/* The same bodies laid again, and stepped with Runge and Kutta's fourth order. */
typedef struct again {
    uint32_t shaft[64];
    double   C[65], G[65], q[65], T[65];
    size_t   n; /* without the casing, which is the last */
    double   K, theta_in, rest, G_air, air;
} again;

static size_t place_of(again *it, uint32_t shaft)
{
    for (size_t i = 0; i < it->n; i++)
        if (it->shaft[i] == shaft)
            return i;
    it->shaft[it->n] = shaft;
    return it->n++;
}

static void lay_again(const ts_study *study, uint32_t c, double air, again *it)
{
    const ts_heat       *heat  = &study->heat;
    const ts_train      *train = &study->train;
    const ts_heat_state *state = ts_heat_state_at(heat, 0, c, 0);
    double               teeth = 0.0;

    *it = (again){.air = air, .theta_in = state->theta_in, .K = state->heat / state->rise};
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        if (train->shafts[train->meshes[m].driven_shaft].drive != 0)
            continue;
        const double P = ts_heat_at(heat, 0, c, m)->P[TS_HEAT_TEETH];
        it->q[place_of(it, train->meshes[m].driver_shaft)] += P / 2.0;
        it->q[place_of(it, train->meshes[m].driven_shaft)] += P / 2.0;
        teeth += P;
        for (int g = 0; g < heat->places[m].gear_count; g++) {
            const ts_heat_gear *gear = &heat->places[m].gears[g];
            it->G[place_of(it, gear->shaft)] +=
                400.0 * (2.0 * pi * gear->R * gear->R + 2.0 * pi * gear->R * gear->F);
        }
    }
    for (size_t i = 0; i < study->mass.part_count; i++) {
        const ts_mass_part *part = &study->mass.parts[i];
        const double        C    = part->m.value * ts_heat_capacity_of_metal(part->rho);
        if (part->kind == TS_MASS_CASING && part->drive == 0) {
            const double wall =
                study->drive.mass.casing_wall.value * (1.0 + study->drive.mass.casing_extra.value);
            it->C[it->n] = C;
            it->G[it->n] = 200.0 * part->m.value / part->rho / wall;
        }
        for (size_t k = 0; k < it->n; k++)
            if (part->shaft == it->shaft[k] && part->kind <= TS_MASS_TOWER &&
                part->kind != TS_MASS_BEARINGS)
                it->C[k] += C;
    }
    it->G_air = isnan(air) ? 0.0 : it->G[it->n] * 15.0 / 200.0;
    it->rest  = state->heat - teeth;
}

static double oil_of(const again *it, const double *T)
{
    double top = it->rest + 2.0 * it->K * it->theta_in, below = 2.0 * it->K;
    for (size_t i = 0; i <= it->n; i++) {
        top += it->G[i] * T[i];
        below += it->G[i];
    }
    return top / below;
}

static void slope(const again *it, const double *T, double *dT)
{
    const double oil = oil_of(it, T);
    for (size_t i = 0; i <= it->n; i++) {
        const double air = i == it->n && it->G_air > 0.0 ? it->G_air * (T[i] - it->air) : 0.0;
        dT[i]            = (it->q[i] - it->G[i] * (T[i] - oil) - air) / it->C[i];
    }
}

static void step(again *it, double h)
{
    double k[4][65], T[65];
    slope(it, it->T, k[0]);
    for (int s = 1; s < 4; s++) {
        for (size_t i = 0; i <= it->n; i++)
            T[i] = it->T[i] + (s == 3 ? h : h / 2.0) * k[s - 1][i];
        slope(it, T, k[s]);
    }
    for (size_t i = 0; i <= it->n; i++)
        it->T[i] += h / 6.0 * (k[0][i] + 2.0 * k[1][i] + 2.0 * k[2][i] + k[3][i]);
}

static void two_legs_come_out_the_same_stepped_by_runge_and_kutta(void **state)
{
    (void)state;
    static const double airs[] = {(double)NAN, 230.0};
    for (int a = 0; a < 2; a++) {
        const ts_warm_leg legs[] = {{2, 120.0}, {3, 300.0}};
        warmed            it;
        warm("examples/bizjet.yaml", legs, 2, 233.15, airs[a], 5, &it);
        double T[65], t = 0.0;
        for (size_t l = 0; l < 2; l++) {
            again                 other;
            const ts_warm_moment *end = &it.course.moments[5 * (l + 1)];
            lay_again(it.study, legs[l].condition, airs[a], &other);
            for (size_t i = 0; i <= other.n; i++)
                other.T[i] = l == 0 ? 233.15 : T[i];
            for (int n = 0; n < 4000; n++)
                step(&other, legs[l].duration / 4000.0);
            t += legs[l].duration;
            double least = (double)INFINITY, most = 0.0;
            for (size_t i = 0; i < other.n; i++) {
                least = fmin(least, other.T[i]);
                most  = fmax(most, other.T[i]);
            }
            assert_close(end->t, t, 1e-12);
            assert_close(end->casing, other.T[other.n], 1e-9);
            assert_close(end->least, least, 1e-9);
            assert_close(end->most, most, 1e-9);
            assert_close(end->oil, oil_of(&other, other.T), 1e-9);
            for (size_t i = 0; i <= other.n; i++)
                T[i] = other.T[i];
        }
        assert_true(it.course.balance < 1e-10);
        cool(&it);
    }
}

/* ---- limits -----------------------------------------------------------------------------------
 */

static void all_settles_where_the_oil_does(void **state)
{
    (void)state;
    const ts_warm_leg leg = {5, 1e5};
    warmed            it;
    warm("examples/large.yaml", &leg, 1, 288.15, (double)NAN, 3, &it);
    const ts_warm_moment *end = &it.course.moments[3];
    /* No heat leaves through the casing: it is as warm as the oil, and the oil as without metal. */
    assert_close(end->oil, ts_heat_state_at(&it.study->heat, 0, 5, 0)->theta, 1e-3);
    assert_close(end->casing, end->oil, 1e-9);
    assert_true(end->least >= end->oil);
    cool(&it);
}

static void play_begins_with_that_of_a_cold_soak(void **state)
{
    (void)state;
    const ts_warm_leg leg = {3, 60.0};
    warmed            it;
    warm("examples/trainer.yaml", &leg, 1, TS_TEMPERATURE_BUILT, (double)NAN, 4, &it);
    assert_true(it.course.play_count > 2);
    for (size_t p = 0; p < it.course.play_count; p++) {
        const ts_warm_play *play  = &it.course.plays[p];
        const ts_backlash  *built = &it.study->motion.meshes[play->mesh].backlash;
        assert_close(play->low[0], built->j_bn[TS_BACKLASH_MIN], 1e-9);
        assert_close(play->high[0], built->j_bn[TS_BACKLASH_MAX], 1e-9);
        for (size_t i = 0; i < it.course.moment_count; i++)
            assert_true(play->low[play->least] <= play->low[i] &&
                        play->high[play->most] >= play->high[i]);
    }
    cool(&it);
}

/* Handbook values at 20 degC, J/(kg.K): within what the law claims. */
static void metals_hold_what_handbooks_have_within_eight_percent(void **state)
{
    (void)state;
    assert_close(ts_heat_capacity_of_metal(1740.0), 1023.0, 0.08); /* magnesium */
    assert_close(ts_heat_capacity_of_metal(2700.0), 897.0, 0.08);  /* aluminium */
    assert_close(ts_heat_capacity_of_metal(4500.0), 523.0, 0.08);  /* titanium  */
    assert_close(ts_heat_capacity_of_metal(7850.0), 449.0, 0.08);  /* iron; all four from memory */
    assert_true(isnan(ts_heat_capacity_of_metal(0.0)));
    assert_true(isnan(ts_heat_capacity_of_metal((double)NAN)));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(two_legs_come_out_the_same_stepped_by_runge_and_kutta),
        cmocka_unit_test(all_settles_where_the_oil_does),
        cmocka_unit_test(play_begins_with_that_of_a_cold_soak),
        cmocka_unit_test(metals_hold_what_handbooks_have_within_eight_percent),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
