/* rating/micropitting/film_limit.c: how thin may the film become? */
#include "rating/micropitting/micropitting_parts.h"

#include <math.h>

#define ISO_22(what) "ISO/TS 6336-22:2018, " what " (from memory)"

static const ts_formula lambda_GFP_formula = {
    .symbol  = "lambda_GFP",
    .meaning = "specific film that the flanks need",
    .unit    = "1",
    .text    = "1.4*W_W*lambda_GFT",
    .source  = ISO_22("permissible specific lubricant film thickness"),
};

static void prepare_limit(ts_micropitting_prepared *p, ts_workings *workings)
{
    const ts_micropitting_mesh *mesh = &p->mesh;
    const double                W_W  = fmin(mesh->gear[0].W_W, mesh->gear[1].W_W);

    p->lambda_GFP = NAN;
    if (mesh->lambda_GFP > 1e-9 && mesh->lambda_GFP < 1e6) {
        p->lambda_GFP = mesh->lambda_GFP;
        return;
    }
    const double lambda_GFT =
        ts_test_gear_film(&mesh->oil, mesh->X_L, mesh->SKS, mesh->theta_test, workings);
    if (isnan(lambda_GFT)) {
        p->remarks |= TS_MICROPITTING_NO_LIMIT;
        return;
    }
    ts_workings_row(workings, "lambda_GFT", lambda_GFT, "1", "least film of the test gears");
    ts_workings_row(workings, "W_W", W_W, "1", "material factor, the smaller of both gears");
    p->lambda_GFP = TS_STEP(workings, lambda_GFP_formula, 1.4 * W_W * lambda_GFT, W_W, lambda_GFT);
}

bool ts_micropitting_prepare(const ts_cylindrical_pair *pair, const ts_micropitting_mesh *mesh,
                             ts_micropitting_prepared *prepared, ts_workings *workings)
{
    if (!ts_micropitting_prepare_mesh(pair, mesh, prepared, workings))
        return false;
    prepare_limit(prepared, workings);
    return true;
}

double ts_film_material_factor(ts_gear_class class, double hardness)
{
    switch (class) {
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
    case TS_GEAR_NITROCARBURISED:
        return hardness >= 850.0 ? 1.5 : 1.0;
    case TS_GEAR_INDUCTION_HARDENED:
        return 0.65;
    case TS_GEAR_THROUGH_HARDENED:
    case TS_GEAR_NORMALISED:
        return 0.5;
    default:
        return 1.0;
    }
}
