/* check/rule/implausible_overhang.c: can the centre of mass lie where the file puts it? */
#include "check/visit.h"
#include "motion/value_note.h"

/* Shares of the body's length between which the centre of mass of anything solid lies. */
#define SHARE_LEAST 0.15
#define SHARE_MOST  0.85

static const ts_formula least_formula = {
    .symbol  = "overhang_least",
    .meaning = "least overhang that is believed without a question",
    .unit    = "m",
    .text    = "0.15*length",
    .source  = "common practice, no source",
};
static const ts_formula most_formula = {
    .symbol  = "overhang_most",
    .meaning = "greatest overhang that is believed without a question",
    .unit    = "m",
    .text    = "0.85*length",
    .source  = "common practice, no source",
};

static void judge_overhang(ts_check *check, const ts_accessory *accessory)
{
    const double overhang = accessory->overhang.value, length = accessory->body.length.value;
    const bool   short_of = overhang < 0.5 * length;
    ts_question  question = ts_question_about(check, accessory->node, TS_EVERY_CONDITION);
    ts_workings_about(check->workings, accessory->node, TS_EVERY_CONDITION);
    TS_NOTE_MEASURE(check->workings, check->drive, "length", accessory->body.length, "m", "length");
    question.value      = overhang;
    question.bound      = short_of ? TS_AT_LEAST : TS_AT_MOST;
    question.limit      = short_of
                              ? TS_STEP(check->workings, least_formula, SHARE_LEAST * length, length)
                              : TS_STEP(check->workings, most_formula, SHARE_MOST * length, length);
    question.kind       = TS_KIND_LENGTH;
    ts_finding *finding = ts_judge(check, &question);
    if (finding == NULL)
        return;
    /* Only to show the moment, which a reader can picture. */
    const double moment = ts_overhung_moment(accessory);
    ts_says(check, finding,
            "the centre of mass of %s stands %s from the pad, in a body %s long (overhang moment "
            "%s)",
            accessory->name, ts_shown(check, overhang, TS_KIND_LENGTH),
            ts_shown(check, length, TS_KIND_LENGTH), ts_shown(check, moment, TS_KIND_TORQUE));
    ts_remedy(check, finding, "ask for the overhang of %s; between %s and %s is believed",
              accessory->name, ts_shown(check, SHARE_LEAST * length, TS_KIND_LENGTH),
              ts_shown(check, SHARE_MOST * length, TS_KIND_LENGTH));
}

static void run(ts_check *check)
{
    for (size_t i = 0; i < check->drive->accessory_count; i++) {
        const ts_accessory *accessory = &check->drive->accessories[i];
        if (ts_measure_known(accessory->overhang) && ts_measure_known(accessory->body.length))
            judge_overhang(check, accessory);
    }
    ts_skip(check, "no accessory states both its overhang and the length of its body");
}

const ts_rule ts_rule_implausible_overhang = {
    .id       = "A3-implausible-overhang",
    .title    = "Implausible overhang",
    .question = "Does the centre of mass of every accessory lie inside its body?",
    .why      = "The overhang moment loads the pad flange; a slip of a decimal there is found at "
                "the first vibration test.",
    .level    = TS_WARN,
    .source   = "common practice, no source",
    .hint     = "ask the maker of the accessory for its centre of mass",
    .run      = run,
};
