/* rate/gear_steel.c: which strengths does the steel of a gear have? */
#include "rate/gear_steel.h"

#include "catalog/hardness.h"

typedef struct steel_keys {
    const char *material, *class, *hardness, *sigma_Hlim, *sigma_Flim, *sigma_y, *HB, *E, *nu, *rho;
    const char *rule, *other;
} steel_keys;

static const steel_keys keys[2] = {
    {"material 1", "class 1", "hardness 1", "sigma_Hlim1", "sigma_Flim1", "sigma_y1", "HB_1", "E_1",
     "nu_1", "rho_1", "rate-range-hardness-1", "rate-hardening-1"},
    {"material 2", "class 2", "hardness 2", "sigma_Hlim2", "sigma_Flim2", "sigma_y2", "HB_2", "E_2",
     "nu_2", "rho_2", "rate-range-hardness-2", "rate-hardening-2"},
};

/* As given, else as the row of the catalogue has it; NaN when neither knows. */
static double given_or_row(ts_rate_desk *desk, const char *key, double row, const char *unit,
                           const char *source)
{
    const double given = ts_rate_take(desk, key);
    if (!isnan(given) || isnan(row) || desk->failed)
        return given;
    ts_workings_row(desk->workings, key, row, unit, source);
    return row;
}

/* Of steel without a row: those with which the standard gives Z_E = 189.8. */
static double given_or_steel(ts_rate_desk *desk, const char *key, double steel)
{
    return ts_rate_take_or(desk, key, steel, "steel, as in ISO 6336-2, clause 7 (from memory)");
}

void ts_rate_judge_hardness(ts_rate_desk *desk, const char *rule, double hardness,
                            const ts_gear_material *row, const ts_gear_strength *strength)
{
    const bool  soft    = hardness < strength->least && ts_gear_class_surface_hardened(row->class);
    ts_finding *finding = ts_rate_judge(desk, strength->within, rule, soft ? TS_REFUSE : TS_WARN);

    ts_rate_limit(finding, NULL, hardness,
                  hardness < strength->least ? strength->least : strength->most, TS_KIND_NUMBER);
    if (finding == NULL)
        return;
    finding->source = strength->source;
    if (!soft) {
        ts_rate_says(desk, finding, "a hardness of %s is outside %s to %s, where the line is valid",
                     ts_rate_shown(desk, hardness, TS_KIND_NUMBER),
                     ts_rate_shown(desk, strength->least, TS_KIND_NUMBER),
                     ts_rate_shown(desk, strength->most, TS_KIND_NUMBER));
        return;
    }
    ts_rate_says(desk, finding,
                 "a hardness of %s is less than the %s that grade %s asks for: sigma_Hlim = %s and "
                 "sigma_Flim = %s are not those of this steel",
                 ts_rate_shown(desk, hardness, TS_KIND_NUMBER),
                 ts_rate_shown(desk, strength->least, TS_KIND_NUMBER), row->grade,
                 ts_rate_shown(desk, strength->sigma_Hlim, TS_KIND_STRESS),
                 ts_rate_shown(desk, strength->sigma_Flim, TS_KIND_STRESS));
    ts_rate_remedy(desk, finding,
                   "choose a row of a lower grade, or give sigma_Hlim and sigma_Flim with their "
                   "source");
}

/* Both stress numbers of the row; what is given goes before it. */
static void take_strengths(ts_rate_desk *desk, int gear, ts_rated_steel *steel)
{
    const steel_keys *key = &keys[gear];
    const bool        both =
        ts_rate_is_given(desk, key->sigma_Hlim) && ts_rate_is_given(desk, key->sigma_Flim);
    ts_gear_strength strength;

    steel->sigma_Hlim = steel->sigma_Flim = NAN;
    if (steel->from_row && !both && !desk->failed) {
        /* The line of the table names the hardness hardness_1. */
        steel->hardness = given_or_row(desk, key->hardness, NAN, "1", NULL);
        if (isnan(steel->hardness)) {
            steel->hardness = steel->row.hardness;
            ts_workings_row(desk->workings, gear == 0 ? "hardness_1" : "hardness_2",
                            steel->hardness, "1", steel->row.source);
        }
        if (ts_gear_strength_of(&steel->row, steel->hardness, gear + 1, &strength,
                                desk->workings)) {
            steel->sigma_Hlim = strength.sigma_Hlim;
            steel->sigma_Flim = strength.sigma_Flim;
            ts_rate_judge_hardness(desk, key->rule, steel->hardness, &steel->row, &strength);
        }
    } else {
        steel->hardness = ts_rate_take(desk, key->hardness);
        if (isnan(steel->hardness) && steel->from_row)
            steel->hardness = steel->row.hardness;
    }
    if (ts_rate_is_given(desk, key->sigma_Hlim))
        steel->sigma_Hlim = ts_rate_take(desk, key->sigma_Hlim);
    if (ts_rate_is_given(desk, key->sigma_Flim))
        steel->sigma_Flim = ts_rate_take(desk, key->sigma_Flim);
}

/* Asked of a soft gear alone. */
static void take_brinell(ts_rate_desk *desk, int gear, ts_rated_steel *steel)
{
    const bool soft = !ts_gear_class_surface_hardened(steel->class);

    steel->HB = ts_rate_take(desk, keys[gear].HB);
    if (!soft || !isnan(steel->HB) || isnan(steel->hardness) || desk->failed)
        return;
    steel->HB = steel->class == TS_GEAR_NORMALISED
                    ? steel->hardness
                    : ts_hardness_in(TS_HARDNESS_HBW, steel->hardness, TS_HARDNESS_HV);
    if (!isnan(steel->HB))
        ts_workings_row(desk->workings, keys[gear].HB, steel->HB, "1",
                        "the hardness in Brinell, ASTM E140, table 1 (from memory), approximate");
}

/* Strengths of one way of hardening and life lines of another are those of no steel. */
static void judge_hardening(ts_rate_desk *desk, int gear, const ts_rated_steel *steel,
                            ts_gear_class written)
{
    const bool  same    = !steel->from_row || steel->row.class == written;
    ts_finding *finding = ts_rate_judge(desk, same, keys[gear].other, TS_REFUSE);

    ts_rate_says(desk, finding, "gear %d is %s by `%s` and %s by its material", gear + 1,
                 ts_gear_class_name(written), keys[gear].class,
                 ts_gear_class_name(steel->row.class));
    ts_rate_remedy(desk, finding, "leave `%s` out, or choose another material", keys[gear].class);
}

void ts_rate_gear_steel(ts_rate_desk *desk, int gear, ts_rated_steel *steel)
{
    const steel_keys *key  = &keys[gear];
    const char       *word = ts_rate_word(desk, key->material);
    const int class = ts_rate_is_given(desk, key->class) ? ts_rate_choose(desk, key->class) : -1;

    *steel          = (ts_rated_steel){.class = TS_GEAR_CASE_HARDENED};
    steel->from_row = word != NULL && ts_gear_material_named(ts_text_of(word), &steel->row);
    if (steel->from_row)
        steel->class = steel->row.class;
    if (class >= 0) {
        judge_hardening(desk, gear, steel, (ts_gear_class) class);
        steel->class = (ts_gear_class) class;
    }
    steel->classed = steel->from_row || class >= 0;
    take_strengths(desk, gear, steel);
    const char *source = steel->from_row ? steel->row.source : NULL;
    steel->yield       = given_or_row(desk, key->sigma_y,
                                steel->from_row ? steel->row.yield : (double)NAN, "Pa", source);
    take_brinell(desk, gear, steel);
    if (steel->from_row) {
        steel->E   = given_or_row(desk, key->E, steel->row.E, "Pa", source);
        steel->nu  = given_or_row(desk, key->nu, steel->row.nu, "1", source);
        steel->rho = given_or_row(desk, key->rho, steel->row.rho, "kg/m3", source);
    } else {
        steel->E   = given_or_steel(desk, key->E, 206e9);
        steel->nu  = given_or_steel(desk, key->nu, 0.3);
        steel->rho = given_or_steel(desk, key->rho, 7830.0);
    }
}

void ts_rate_need_steel(ts_rate_desk *desk, int gear, const ts_rated_steel *steel)
{
    if (!steel->classed || isnan(steel->sigma_Hlim) || isnan(steel->sigma_Flim))
        ts_rate_lack(desk, keys[gear].material);
    else if (!ts_gear_class_surface_hardened(steel->class) && isnan(steel->yield))
        ts_rate_lack(desk, keys[gear].sigma_y);
}
