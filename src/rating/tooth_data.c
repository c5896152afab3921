/* rating/tooth_data.c: what should stand on the data sheet of every cylindrical gear? */
#include "rating/tooth_data.h"

#include "element/measurement.h"
#include "element/thickness_allowance.h"

#include <math.h>

#define PIN 1.728 /* m_n; common practice, no source */

/* The first solved mesh in which a gear stands, and which of the two it is there. */
static uint32_t mesh_of(const ts_motion *motion, uint32_t gear, ts_gear_index *index)
{
    for (uint32_t m = 0; m < motion->train->mesh_count; m++) {
        const ts_mesh *mesh = &motion->train->meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL || !motion->meshes[m].solved)
            continue;
        if (mesh->driver != gear && mesh->driven != gear)
            continue;
        *index = mesh->driver == gear ? TS_GEAR_1 : TS_GEAR_2;
        return m;
    }
    return TS_NOWHERE;
}

static double known(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : (double)NAN;
}

/* With the teeth that one allowance leaves. */
static void measure(ts_tooth_datum *one, int which)
{
    ts_cylindrical_gear thinned = one->nominal;
    if (isnan(one->E_sn[which])) {
        one->W_k[which] = one->M_dR[which] = one->s_c[which] = (double)NAN;
        return;
    }
    thinned.in.x =
        ts_generated_shift(one->nominal.in.x, one->E_sn[which], &one->frame, TS_GEAR_ALONE, NULL);
    one->W_k[which] = one->k > 0 ? ts_span_width(&one->frame, &thinned, one->k, NULL) : (double)NAN;
    one->M_dR[which] = ts_over_pins(&one->frame, &thinned, one->D_M, NULL);
    one->s_c[which] =
        ts_chordal_thickness(&one->frame, &thinned, 0.5 * (thinned.d_a - thinned.d), NULL).s_c;
}

static void tolerances(ts_tooth_datum *one, const ts_gear *gear)
{
    const ts_tally *told = &gear->system->accuracy;
    const bool      is   = told->standing == TS_GIVEN || told->standing == TS_ASSUMED;
    one->class           = is ? (int)told->value : 0;
    one->tolerance       = ts_tooth_tolerance_2013(&(ts_tolerance_input){.m_n   = one->frame.m_n,
                                                                         .d     = one->nominal.d,
                                                                         .b     = known(gear->face),
                                                                         .beta  = one->frame.beta,
                                                                         .class = one->class},
                                                   NULL);
}

static void solve(const ts_motion *motion, ts_tooth_datum *one, ts_gear_index index)
{
    const ts_gear *gear = &motion->train->gears[one->gear];
    const ts_span *E    = &gear->system->thickness;
    const bool     told = E->standing == TS_GIVEN || E->standing == TS_ASSUMED;
    ts_cylindrical_pair_gear(&motion->meshes[one->mesh].pair, index, &one->frame, &one->nominal);
    one->E_sn[TS_ALLOWED_UPPER] = told ? E->high : (double)NAN;
    one->E_sn[TS_ALLOWED_LOWER] = told ? E->low : (double)NAN;
    const double teeth          = ts_span_teeth(&one->frame, &one->nominal, NULL);
    const double height         = 0.5 * (one->nominal.d_a - one->nominal.d);
    one->k   = isfinite(teeth) && one->nominal.in.z > 0 ? (int)fmax(1.0, floor(teeth + 0.5)) : 0;
    one->D_M = PIN * one->frame.m_n;
    const ts_tooth_chord chord = ts_chordal_thickness(&one->frame, &one->nominal, height, NULL);
    one->s_n                   = chord.s_n;
    one->h_c                   = chord.h_c;
    measure(one, TS_ALLOWED_UPPER);
    measure(one, TS_ALLOWED_LOWER);
    /* A span across helical teeth leaves a narrow face; unknown widths are not held against it. */
    one->span_fits = !(one->W_k[TS_ALLOWED_UPPER] * sin(one->frame.beta_b) > known(gear->face));
    tolerances(one, gear);
}

ts_status ts_tooth_data_solve(const ts_motion *motion, ts_arena *arena, ts_tooth_data *out)
{
    *out = (ts_tooth_data){.items = TS_TAKE(arena, ts_tooth_datum, motion->train->gear_count + 1)};
    if (out->items == NULL)
        return TS_NO_MEMORY;
    for (uint32_t g = 0; g < motion->train->gear_count; g++) {
        ts_gear_index  index = TS_GEAR_1;
        const uint32_t mesh =
            motion->train->gears[g].role == TS_GEAR_BEVEL ? TS_NOWHERE : mesh_of(motion, g, &index);
        if (mesh == TS_NOWHERE)
            continue;
        ts_tooth_datum *one = &out->items[out->count++];
        *one                = (ts_tooth_datum){.gear = g, .mesh = mesh};
        solve(motion, one, index);
    }
    return TS_OK;
}
