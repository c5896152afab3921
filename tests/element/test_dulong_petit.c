/* Is the heat capacity of a metal found by its density?
 *
 * Expected values are read from tables (J. P. Holman, Heat Transfer, table A-2, from memory): the
 * law of Dulong and Petit comes within 8 % of them.
 */
#include "element/dulong_petit.h"

#include "support/close.h"

static void metals_have_nearly_the_capacity_of_the_tables(void **state)
{
    (void)state;
    assert_close(ts_heat_capacity_of_metal(1740.0), 1024.0, 0.08); /* magnesium */
    assert_close(ts_heat_capacity_of_metal(2700.0), 900.0, 0.08);  /* aluminium */
    assert_close(ts_heat_capacity_of_metal(4510.0), 522.0, 0.08);  /* titanium  */
    assert_close(ts_heat_capacity_of_metal(7850.0), 465.0, 0.08);  /* steel     */
    assert_close(ts_heat_capacity_of_metal(8900.0), 444.0, 0.08);  /* nickel    */
}

/* The limits lie between the alloys: magnesium up to 2, aluminium to 3, titanium to 5 g/cm3. */
static void a_metal_ends_where_the_next_begins(void **state)
{
    (void)state;
    static const double limits[] = {2100.0, 3500.0, 5500.0};

    for (int i = 0; i < 3; i++) {
        const double below = ts_heat_capacity_of_metal(limits[i] * (1.0 - 1e-9));
        const double above = ts_heat_capacity_of_metal(limits[i]);

        assert_true(above < below);
        assert_same_double(ts_heat_capacity_of_metal(i == 0 ? 1000.0 : limits[i - 1]), below);
    }
    assert_nan(ts_heat_capacity_of_metal(0.0));
    assert_nan(ts_heat_capacity_of_metal((double)NAN));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(metals_have_nearly_the_capacity_of_the_tables),
        cmocka_unit_test(a_metal_ends_where_the_next_begins),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
