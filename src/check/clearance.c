/* check/clearance.c: which bodies and gears must keep clear of something? */
#include "check/clearance.h"

#include "check/envelope.h"
#include "check/visit.h"

static const ts_formula radius_formula = {
    .symbol  = "r",
    .meaning = "radius of the tip circle",
    .unit    = "m",
    .text    = "d_a/2",
    .source  = "ISO 21771:2007 (definition of the tip diameter)",
};

void ts_each_circle(ts_check *check, void (*judge)(ts_check *check, const ts_circle *circle))
{
    const ts_train *train = check->train;
    for (uint32_t i = 0; i < train->pad_count; i++) {
        const ts_pad *pad = &train->pads[i];
        ts_circle circle  = {.node = pad->node, .shaft = pad->shaft, .pad = i, .gear = TS_NOWHERE};
        if (ts_accessory_at(check, pad) != NULL && check->motion->shafts[pad->shaft].placed &&
            ts_body_radius(ts_accessory_at(check, pad), &circle.r))
            judge(check, &circle);
    }
    for (uint32_t i = 0; i < train->gear_count; i++) {
        const ts_gear *gear   = &train->gears[i];
        ts_circle      circle = {.node  = gear->node,
                                 .shaft = gear->shaft,
                                 .r     = check->envelope->tip[i],
                                 .pad   = TS_NOWHERE,
                                 .gear  = i};
        if (!isnan(circle.r) && check->motion->shafts[gear->shaft].placed)
            judge(check, &circle);
    }
}

const char *ts_circle_name(ts_check *check, const ts_circle *circle)
{
    if (circle->pad != TS_NOWHERE)
        return ts_phrase(check, "the body of %s", check->train->pads[circle->pad].name);
    return ts_phrase(check, "the gear of %s", ts_gear_name(check, circle->gear));
}

void ts_note_circle(const ts_check *check, const ts_circle *circle)
{
    if (check->workings == NULL)
        return;
    if (circle->pad != TS_NOWHERE) {
        const ts_measure R = ts_accessory_at(check, &check->train->pads[circle->pad])->body.radius;
        ts_workings_given(check->workings, "r", R.value, "m", R.node);
        return;
    }
    static const char *const names[2] = {"d_a1", "d_a2"};
    ts_gear_geometry         geometry;
    if (!ts_gear_geometry_of(check, circle->gear, &geometry))
        return;
    const double d_a = geometry.d_a;
    ts_borrow_of_gear(check, circle->node, &geometry, (ts_input){"d_a", d_a}, names);
    (void)TS_STEP(check->workings, radius_formula, d_a / 2.0, d_a);
}
