/* Is every row of the oils whole, and does it say what the standards' own tables say? */
#include "catalog/oil.h"
#include "element/contact_friction.h"
#include "quantity/quantity.h"
#include "rating/scuffing/flash_agma925.h"
#include "support/close.h"

#include <string.h>

static double cell(const char *text, ts_kind kind)
{
    double value = NAN;

    if (!ts_quantity_parse(ts_text_of(text), kind, &value, NULL, NULL))
        fail_msg("%s is not a quantity of its kind", text);
    return value;
}

static void every_row_is_an_oil_that_a_drive_file_could_describe(void **state)
{
    (void)state;
    assert_true(ts_oil_count() >= 11);
    for (size_t i = 0; i < ts_oil_count(); i++) {
        const ts_oil_row *row  = ts_oil_at(i);
        bool              kind = false;
        for (int k = 0; k < (int)TS_LUBRICANT_COUNT; k++)
            kind = kind || strcmp(row->kind, ts_lubricant_name((ts_lubricant)k)) == 0;
        assert_true(kind);
        assert_string_equal(ts_oil_keys[i], row->key);
        assert_ptr_equal(ts_oil_named(ts_text_of(row->key)), row);
        const double nu_40  = cell(row->nu_40, TS_KIND_KINEMATIC_VISCOSITY);
        const double nu_100 = cell(row->nu_100, TS_KIND_KINEMATIC_VISCOSITY);
        const double rho_15 = cell(row->rho_15, TS_KIND_DENSITY);
        assert_true(nu_40 > nu_100 && nu_100 > 2e-6);
        assert_true(rho_15 > 800.0 && rho_15 < 1100.0);
        assert_true(cell(row->theta_S, TS_KIND_TEMPERATURE) > 353.15);
        assert_true(strlen(row->source) > 10 && strlen(row->limit_source) > 10);
    }
    assert_null(ts_oil_keys[ts_oil_count()]);
    assert_null(ts_oil_named(TS_TEXT("goose fat")));
}

/* AGMA 925-A03, mean scuffing temperatures (from memory), which another room holds as numbers. */
static void scuffing_temperatures_are_those_of_the_other_room(void **state)
{
    static const struct {
        const char      *key;
        ts_aerospace_oil oil;
    } same[]                           = {{"MIL-PRF-23699", TS_AEROSPACE_MIL_23699},
                                          {"MIL-PRF-7808 grade 3", TS_AEROSPACE_MIL_7808},
                                          {"DOD-PRF-85734", TS_AEROSPACE_DOD_85734}};
    static const char *const mineral[] = {"mineral ISO VG 32", "mineral ISO VG 46",
                                          "mineral ISO VG 68", "mineral ISO VG 100"};
    (void)state;
    for (size_t i = 0; i < sizeof same / sizeof same[0]; i++)
        assert_close(cell(ts_oil_named(ts_text_of(same[i].key))->theta_S, TS_KIND_TEMPERATURE),
                     ts_aerospace_limit(same[i].oil), 1e-12);
    for (size_t i = 0; i < sizeof mineral / sizeof mineral[0]; i++) {
        const ts_oil_row *row   = ts_oil_named(ts_text_of(mineral[i]));
        const double      nu_40 = cell(row->nu_40, TS_KIND_KINEMATIC_VISCOSITY);
        /* printed to the degree */
        assert_true(fabs(cell(row->theta_S, TS_KIND_TEMPERATURE) -
                         ts_mineral_limit(nu_40, false, NULL)) < 0.5);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_row_is_an_oil_that_a_drive_file_could_describe),
        cmocka_unit_test(scuffing_temperatures_are_those_of_the_other_room),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
