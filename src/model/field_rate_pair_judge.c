/* model/field_rate_pair_judge.c: which keys of a gear pair of a rate file contradict each other? */
#include "model/field_rate_pair.h"

static size_t count_given(const ts_measure *const *of, size_t count)
{
    size_t given = 0;
    for (size_t i = 0; i < count; i++)
        given += ts_rate_is_stated(*of[i]) ? 1 : 0;
    return given;
}

static const char *judge_shift(const ts_rate_pair *pair, const char **key, const char **expected)
{
    const bool x_1 = ts_rate_is_stated(pair->gear[0].x), x_2 = ts_rate_is_stated(pair->gear[1].x);
    const int  shift = pair->shift.value; /* of the choices above */
    *key             = "shift";
    *expected = "`rest to 2` with a_w and x_1, `rest to 1` with a_w and x_2, `equal sliding` "
                "with a_w alone, or `as given`";
    if (pair->shift.standing != TS_GIVEN)
        return NULL;
    if (shift != 0 && !ts_rate_is_stated(pair->a_w))
        return "without a centre distance no profile shift follows";
    if (shift == 0 && ts_rate_is_stated(pair->a_w) && !(x_1 && x_2))
        return "a centre distance leaves no shift as given that is not given";
    if ((shift == 1 && !x_2) || (shift == 2 && !x_1))
        return "the shift of the other gear is not given, so that the rest of it is not known";
    if ((shift == 1 && x_1) || (shift == 2 && x_2) || (shift == 3 && (x_1 || x_2)))
        return "a shift is given that is to follow";
    return NULL;
}

static const char *judge_tip(const ts_rate_pair *pair, const char **key, const char **expected)
{
    const bool d_a1 = ts_rate_is_stated(pair->gear[0].d_a),
               d_a2 = ts_rate_is_stated(pair->gear[1].d_a);
    const bool k    = ts_rate_is_stated(pair->gear[0].k) || ts_rate_is_stated(pair->gear[1].k);
    *key            = d_a1 ? "d_a1" : (d_a2 ? "d_a2" : "tip");
    *expected       = "both tip diameters, or `k_1` and `k_2`, or `tip: clearance kept`";
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

/* A spectrum brings torque, speed and time of its own. */
static const char *judge_spectrum(const ts_rate_pair *pair, const char **key, const char **expected)
{
    const struct {
        const char       *key;
        const ts_measure *of;
    } loads[] = {{"T_1", &pair->load.T_1},    {"F_t", &pair->load.F},
                 {"P", &pair->load.P},        {"n_1", &pair->load.n_1},
                 {"L_h", &pair->load.L_h},    {"N_L1", &pair->gear[0].N_L},
                 {"N_L2", &pair->gear[1].N_L}};

    if (pair->spectrum_count == 0)
        return NULL;
    *expected = "a `spectrum`, or one load of the pair";
    for (size_t i = 0; i < sizeof loads / sizeof loads[0]; i++) {
        *key = loads[i].key;
        if (ts_rate_is_stated(*loads[i].of))
            return "the load is given by the `spectrum` already";
    }
    *key      = "inverse";
    *expected = "times in the `spectrum`, which make up the life wanted";
    return ts_rate_is_stated(pair->inverse.L_h) ? "a life is wanted beside that of the `spectrum`"
                                                : NULL;
}

static const char *judge_load(const ts_rate_pair *pair, const char **key, const char **expected)
{
    const ts_measure *const loads[] = {&pair->load.T_1, &pair->load.F, &pair->load.P};
    const ts_measure *const faces[] = {&pair->K_Hbeta, &pair->F_betax, &pair->f_sh};
    const bool              cycles =
        ts_rate_is_stated(pair->gear[0].N_L) || ts_rate_is_stated(pair->gear[1].N_L);
    *key      = ts_rate_is_stated(pair->load.P) ? "P" : "F_t";
    *expected = "one of `T_1`, `F_t` and `P`";
    if (count_given(loads, 3) > 1)
        return "the load is given more than once";
    *key      = ts_rate_is_stated(pair->F_betax) ? "F_betax" : "K_Hbeta";
    *expected = "one of `K_Hbeta`, `F_betax`, and `f_sh` with `f_ma`";
    if (count_given(faces, 3) > 1)
        return "the face load is given more than once";
    *key      = "L_h";
    *expected = "`L_h`, or `N_L1` and `N_L2`";
    return cycles && ts_rate_is_stated(pair->load.L_h) ? "the life is given twice" : NULL;
}

const char *ts_rate_pair_judge(const void *record, const char **key, const char **expected)
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
    if (says == NULL)
        says = judge_spectrum(pair, key, expected);
    return says != NULL ? says : judge_load(pair, key, expected);
}
