/* Do two independent transcriptions of ISO 6336, in SI and in the units of print, agree? */
#include "rating/sample_mesh.h"
#include "rating/second_chain.h"
#include "support/close.h"

static void compare(const ts_cylindrical_pair_input *in, const ts_iso6336_mesh *mesh,
                    const ts_iso6336_load *load)
{
    const ts_cylindrical_pair pair = solved_pair(in);
    const ts_iso6336_rating   r    = rated(in, mesh, load);
    const second_rating       s    = second_chain(&pair, mesh, load);

    assert_close(r.c_gamma_alpha / 1e9, s.c_gamma_alpha, 1e-11);
    assert_close(r.N, s.N, 1e-11);
    assert_close(r.K_v, s.K_v, 1e-10);
    assert_close(r.K_Hbeta, s.K_Hbeta, 1e-10);
    assert_close(r.K_Fbeta, s.K_Fbeta, 1e-10);
    assert_close(r.K_Halpha, s.K_Halpha, 1e-10);
    assert_close(r.K_Falpha, s.K_Falpha, 1e-10);
    assert_close(r.sigma_H0 / 1e6, s.sigma_H0, 1e-11);
    for (int gear = 0; gear < 2; gear++) {
        const ts_iso6336_gear_rating *own = &r.gear[gear];
        const second_gear            *two = &s.gear[gear];

        assert_close(own->Z_W, two->Z_W, 1e-11);
        assert_close(own->sigma_H / 1e6, two->sigma_H, 1e-9);
        assert_close(own->sigma_HG / 1e6, two->sigma_HG, 1e-9);
        assert_close(own->sigma_F / 1e6, two->sigma_F, 1e-9);
        assert_close(own->sigma_FG / 1e6, two->sigma_FG, 1e-9);
        assert_close(own->S_H, two->S_H, 1e-9);
        assert_close(own->S_F, two->S_F, 1e-9);
    }
}

static void the_plain_example_agrees(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = sample_pair();
    const ts_iso6336_mesh           mesh = sample_mesh();
    const ts_iso6336_load           load = sample_load();

    compare(&in, &mesh, &load);
}

/* Every class, both years, all ranges of speed and life: the draw is told to have met them. */
static void two_thousand_drawn_meshes_agree(void **state)
{
    (void)state;
    uint64_t seed     = 6336;
    int      range[4] = {0}, year[2] = {0}, spur = 0, low = 0;

    for (int round = 0; round < 2000; round++) {
        const ts_cylindrical_pair_input in   = drawn_pair(&seed);
        const ts_iso6336_mesh           mesh = drawn_mesh(&seed);
        const ts_iso6336_load           load = drawn_load(&seed);
        const ts_iso6336_rating         r    = rated(&in, &mesh, &load);

        compare(&in, &mesh, &load);
        range[r.range]++;
        year[mesh.year]++;
        spur += in.beta <= 0.0;
        low += r.w_t < 100e3;
    }
    for (int i = 0; i < 4; i++)
        assert_in_range(range[i], 20, 2000);
    assert_in_range(year[0], 500, 1500);
    assert_in_range(spur, 300, 1500);
    assert_in_range(low, 50, 1900);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_plain_example_agrees),
        cmocka_unit_test(two_thousand_drawn_meshes_agree),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
