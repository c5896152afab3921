/* catalog/metal.c: how stiff, heavy and strong is a metal of shafts, necks, bearings and casings?
 */
#include "catalog/metal.h"

#include "quantity/quantity.h"

#include <math.h>

typedef struct metal_row {
    const char *key;
    double      E, G, nu, rho, cte;
    const char *unit;
    double      Ftu, Fty, Fsu;
    const char *basis, *source;
} metal_row;

static const metal_row metals[] = {
#include "metal.inc"
};

#define METAL_COUNT (sizeof metals / sizeof metals[0])

const char *const ts_metal_keys[] = {
#include "metal_key.inc"
    NULL,
};

size_t ts_metal_count(void)
{
    return METAL_COUNT;
}

ts_metal ts_metal_at(size_t index)
{
    const metal_row *row  = &metals[index];
    const double     unit = ts_to_si(1.0, ts_unit_named(ts_text_of(row->unit), TS_KIND_STRESS));

    return (ts_metal){
        .key    = row->key,
        .E      = row->E * 1e9,
        .G      = row->G * 1e9,
        .nu     = row->nu,
        .rho    = row->rho * 1e3,
        .cte    = row->cte * 1e-6,
        .Ftu    = row->Ftu * unit,
        .Fty    = row->Fty * unit,
        .Fsu    = row->Fsu * unit,
        .basis  = row->basis,
        .source = row->source,
    };
}

bool ts_metal_named(ts_text key, ts_metal *metal)
{
    for (size_t i = 0; i < METAL_COUNT; i++) {
        if (!ts_text_is(key, metals[i].key))
            continue;
        *metal = ts_metal_at(i);
        return true;
    }
    return false;
}

const char *ts_metal_nearest(ts_text key)
{
    const char *keys[METAL_COUNT];

    for (size_t i = 0; i < METAL_COUNT; i++)
        keys[i] = metals[i].key;
    return ts_text_nearest(key, keys, METAL_COUNT);
}

bool ts_metal_is_steel(const ts_metal *metal)
{
    return metal->E > 180e9 && metal->rho > 7600.0 && metal->rho < 8100.0;
}

double ts_shear_modulus(double E, double nu)
{
    return E / (2.0 * (1.0 + nu));
}
