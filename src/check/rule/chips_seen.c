/* check/rule/chips_seen.c: does the metal of every gear come by a chip plug? */
#include "check/visit.h"
#include "effect/effect.h"

static uint32_t meshes_of(const ts_check *check, uint32_t number, bool take_off)
{
    uint32_t count = 0;

    for (uint32_t m = 0; m < check->train->mesh_count; m++) {
        const ts_failure  teeth = {TS_FAILS_TEETH, m};
        const ts_chip_way way   = ts_chip_way_of(check->drive, check->train, teeth);
        count += way.drive == number && way.take_off == take_off;
    }
    return count;
}

static void judge(ts_check *check, uint32_t number, bool take_off)
{
    const ts_spool_drive *one   = &check->drive->drive[number];
    const ts_chip_way     way   = ts_chip_way_from(check->drive, number, take_off);
    const uint32_t        count = meshes_of(check, number, take_off);
    const char           *spool = check->drive->spools[one->spool].name;
    const char           *place = take_off ? "take-off" : "box";

    if (count == 0)
        return;
    ts_finding *finding = ts_judge_fact(check, take_off ? one->take_off.node : one->box.node,
                                        TS_EVERY_CONDITION, way.plug == TS_PLUG_THERE);
    const char *teeth =
        count == 1 ? "chips of its teeth" : ts_phrase(check, "chips of its %d meshes", (int)count);
    if (way.plug == TS_PLUG_SOME) {
        ts_says(check, finding,
                "not every scavenge line of %s, to which the %s %s drains, has a plug: the %s may "
                "pass unseen",
                way.sump->name, spool, place, teeth);
        ts_remedy(check, finding, "put a `chip plug` into each line of that sump");
        return;
    }
    ts_says(check, finding,
            way.plug == TS_PLUG_NONE
                ? "no chip plug stands where the oil of the %s %s goes: the %s "
                  "are seen nowhere"
                : "nothing tells of a chip plug where the oil of the %s %s "
                  "goes: the %s count as unseen",
            spool, place, teeth);
    ts_remedy(check, finding,
              "say `chip plug: yes`, or which sump of the oil pump pack it `drains to`");
}

static void run(ts_check *check)
{
    for (uint32_t d = 0; d < check->drive->drive_count; d++) {
        judge(check, d, true);
        judge(check, d, false);
    }
    ts_skip(check, "the drive has no mesh");
}

const ts_rule ts_rule_chips_seen = {
    .id       = "H3-chips-seen",
    .title    = "Chips seen",
    .question = "Does the metal of every gear come by a chip plug?",
    .why = "A tooth that wears or breaks is first told by its chips; where they pass no plug, the "
           "next sign is what stops.",
    .level  = TS_WARN,
    .source = "common practice, no source: every scavenge line with its plug",
    .hint   = "put a chip plug where the oil collects",
    .run    = run,
};
