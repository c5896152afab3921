/* check/rule/neck_presence.c: has every service accessory a neck, and nothing that the engine
 * needs? */
#include "check/visit.h"

static bool has_reason(const ts_neck *neck)
{
    return neck->why.standing == TS_GIVEN && neck->why.text != NULL && neck->why.text[0] != '\0';
}

static void judge_engine(ts_check *check, const ts_accessory *accessory)
{
    const bool    has   = accessory->neck.node != 0;
    const ts_node about = has ? accessory->neck.node : accessory->node;
    ts_finding   *finding =
        ts_judge_fact(check, about, TS_EVERY_CONDITION, !has || has_reason(&accessory->neck));
    ts_says(check, finding,
            "the engine cannot run without %s, and yet it has a neck that may break",
            accessory->name);
    ts_remedy(check, finding, "take the neck out, or state the reason for it with `why`");
}

static void judge_service(ts_check *check, const ts_accessory *accessory)
{
    ts_finding *finding =
        ts_judge_fact(check, accessory->node, TS_EVERY_CONDITION, accessory->neck.node != 0);
    ts_says(check, finding, "%s serves the aircraft and has no neck: if it seizes, the gears strip",
            accessory->name);
    ts_remedy(check, finding, "give it a neck with a break band");
}

static bool carries_engine_needs(const ts_check *check, uint32_t drive)
{
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        const ts_accessory *accessory = ts_accessory_at(check, &check->train->pads[i]);
        if (accessory != NULL && accessory->purpose.value == TS_FOR_ENGINE &&
            check->train->shafts[check->train->pads[i].shaft].drive == drive)
            return true;
    }
    return false;
}

/* A neck in the radial shaft cuts off everything beyond it. */
static void judge_tower(ts_check *check, uint32_t drive)
{
    const ts_neck *neck = &check->drive->drive[drive].tower_shaft.neck;
    if (neck->node == 0)
        return;
    ts_finding *finding = ts_judge_fact(check, neck->node, TS_EVERY_CONDITION,
                                        has_reason(neck) || !carries_engine_needs(check, drive));
    ts_says(check, finding,
            "the radial shaft drives what the engine cannot run without, and has a neck that may "
            "break");
    ts_remedy(check, finding, "take the neck out, or state the reason for it with `why`");
}

static void run(ts_check *check)
{
    for (size_t i = 0; i < check->drive->accessory_count; i++) {
        const ts_accessory *accessory = &check->drive->accessories[i];
        if (accessory->purpose.value == TS_FOR_ENGINE)
            judge_engine(check, accessory);
        else if (accessory->purpose.value == TS_FOR_AIRCRAFT)
            judge_service(check, accessory);
    }
    for (size_t i = 0; i < check->drive->drive_count; i++)
        judge_tower(check, (uint32_t)i);
    ts_skip(check, "no accessory is for the engine or the aircraft");
}

const ts_rule ts_rule_neck_presence = {
    .id       = "G3-neck-presence",
    .title    = "Necks where they belong",
    .question = "Has every service accessory a neck, and nothing that the engine needs to run?",
    .why    = "A seized service accessory must break its own neck and nothing else; a neck in the "
              "fuel pump's drive is a way to lose the engine.",
    .level  = TS_REFUSE,
    .source = "common practice, no source",
    .hint   = "put a neck into every service accessory, and into nothing that the engine needs",
    .run    = run,
};
