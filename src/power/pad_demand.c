/* power/pad_demand.c: what torque does the accessory on a pad take or give? */
#include "motion/value_note.h"
#include "power/power_parts.h"

#include <math.h>

static const ts_formula T_formula = {
    .symbol  = "T",
    .meaning = "torque that the accessory takes from its pad",
    .unit    = "N.m",
    .text    = "P/n",
    .source  = "derived: power is torque times speed",
};
static const ts_formula T_driving_formula = {
    .symbol  = "T",
    .meaning = "torque that the accessory takes from its pad, negative when it drives",
    .unit    = "N.m",
    .text    = "-T_drives",
    .source  = "derived: what drives is counted negative",
};
static const ts_formula P_driving_formula = {
    .symbol  = "P",
    .meaning = "power that the accessory takes from its pad, negative when it drives",
    .unit    = "W",
    .text    = "T*n",
    .source  = "derived: power is torque times speed",
};

/* Takes nothing, and says why. */
static ts_pad_load nothing(const ts_power_case *c, ts_standing standing, const char *why)
{
    ts_workings_assumed(c->workings, "T", 0.0, "N.m", why);
    ts_workings_assumed(c->workings, "P", 0.0, "W", why);
    return (ts_pad_load){.standing = standing};
}

static ts_pad_load drive(const ts_power_case *c, const ts_measure *drives, double n)
{
    const double T_drives = drives->value;

    TS_NOTE_MEASURE(c->workings, c->drive, "T_drives", *drives, "N.m", "drives");
    const double T = TS_STEP(c->workings, T_driving_formula, -T_drives, T_drives);

    return (ts_pad_load){
        .T        = T,
        .P        = TS_STEP(c->workings, P_driving_formula, T * n, T, n),
        .standing = drives->standing,
    };
}

static ts_pad_load absorb(const ts_power_case *c, const ts_measure *power, double n)
{
    if (power->standing == TS_ABSENT)
        return nothing(c, TS_ABSENT, "the file states no power for this accessory; taken as 0");
    if (power->standing == TS_UNKNOWN)
        return nothing(c, TS_UNKNOWN, "the power is unknown; taken as 0");
    if (!(n > 0.0))
        return power->value > 0.0
                   ? nothing(c, TS_UNKNOWN,
                             "power is wanted at a pad that stands still; the torque cannot be "
                             "computed and is taken as 0")
                   : nothing(c, power->standing, "the pad stands still and takes nothing");
    const double P = power->value;

    /* What is assumed of the power stands in the register under the name of the condition. */
    TS_NOTE_MEASURE(c->workings, c->drive, "P", *power, "W",
                    c->drive->conditions[c->condition].name);
    return (ts_pad_load){
        .T        = TS_STEP(c->workings, T_formula, P / n, P, n),
        .P        = P,
        .standing = power->standing,
    };
}

/* What the pumps or the separator of the accessory ask for; false: they are none, or not known. */
static bool absorb_oil_unit(const ts_power_case *c, int32_t accessory, double n, ts_pad_load *out)
{
    const ts_pack     *pack     = ts_pack_of(&c->power->units, accessory);
    const ts_breather *breather = ts_breather_of(&c->power->units, accessory);
    const bool         pumps    = pack != NULL && pack->missing == NULL;

    if (!pumps && (breather == NULL || breather->missing != NULL))
        return false;
    const ts_node node = pumps ? pack->told->node : breather->told->node;
    const double  P    = pumps ? pack->states[c->condition].P : breather->cases[c->condition].P;
    if (!isfinite(P))
        return false;
    if (!(n > 0.0)) {
        *out = nothing(c, TS_GIVEN, "the pad stands still and takes nothing");
        return true;
    }
    ts_workings_borrow(c->workings, "P", P, ts_in_condition(c, node), pumps ? "P_pack" : "P_e");
    *out = (ts_pad_load){
        .T = TS_STEP(c->workings, T_formula, P / n, P, n), .P = P, .standing = TS_GIVEN};
    return true;
}

/* While it drives, what the file says of its power is not taken.  An overrunning clutch passes
 * nothing back into the accessory, so an assumed power is no load; one that stands in the file for
 * this condition is the drag of the clutch. */
static ts_pad_load load_of(const ts_power_case *c, const ts_accessory *accessory, double n)
{
    const ts_measure *drives = &accessory->drives[c->condition];
    const ts_measure *power  = &accessory->power[c->condition];
    const bool        clutched =
        accessory->clutch.value == TS_CLUTCH_OVERRUNNING &&
        (accessory->clutch.standing == TS_GIVEN || accessory->clutch.standing == TS_ASSUMED);
    ts_pad_load load = {0};

    if (isnan(n))
        return nothing(c, TS_UNKNOWN, "the speed of the spool is unknown; taken as 0");
    if (drives->standing == TS_UNKNOWN)
        return nothing(c, TS_UNKNOWN, "the torque with which it drives is unknown; taken as 0");
    if (ts_measure_known(*drives) && drives->value > 0.0) {
        load              = drive(c, drives, n);
        load.clutch_state = clutched ? TS_CLUTCH_STATE_ENGAGED : TS_CLUTCH_STATE_NONE;
        return load;
    }
    if (power->standing == TS_ABSENT &&
        absorb_oil_unit(c, (int32_t)(accessory - c->drive->accessories), n, &load))
        return load;
    if (clutched && power->standing != TS_GIVEN)
        load = nothing(c, accessory->clutch.standing,
                       "the clutch overruns: the rotor stands still and takes nothing");
    else
        load = absorb(c, power, n);
    load.clutch_state = clutched ? TS_CLUTCH_STATE_OVERRUNNING : TS_CLUTCH_STATE_NONE;
    return load;
}

void ts_power_pads(const ts_power_case *c)
{
    for (uint32_t p = 0; p < c->train->pad_count; p++) {
        const ts_pad *pad = &c->train->pads[p];
        const double  n   = c->speed[pad->shaft];

        c->pad[p] = (ts_pad_load){.standing = TS_GIVEN};
        if (pad->use != TS_PAD_ACCESSORY)
            continue;
        ts_workings_about(c->workings, pad->node, (int32_t)c->condition);
        ts_workings_borrow(c->workings, "n", n,
                           ts_in_condition(c, c->train->shafts[pad->shaft].node), "n");
        c->pad[p] = load_of(c, &c->drive->accessories[pad->accessory], n);
    }
}
