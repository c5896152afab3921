/* check/rule/implausible_speed.c: does anything turn faster than such things are known to turn? */
#include "check/visit.h"

#define RPM        0.10471975511965977 /* rad/s, pi/30 */
#define SPOOL_MOST (60000.0 * RPM)
#define PAD_MOST   (30000.0 * RPM)

typedef struct fastest {
    double   speed;
    uint32_t condition;
} fastest;

/* A speed that is not known is the business of the speed bands, and beats nothing here. */
static fastest fastest_of(const ts_check *check, uint32_t shaft)
{
    fastest found = {0.0, 0};
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const double speed = ts_shaft_speed(check, shaft, c);
        if (speed > found.speed)
            found = (fastest){speed, c};
    }
    return found;
}

static void judge_speed(ts_check *check, ts_node node, uint32_t shaft, const char *name,
                        double most)
{
    const fastest found    = fastest_of(check, shaft);
    ts_question   question = ts_question_about(check, node, TS_EVERY_CONDITION);
    question.value         = found.speed;
    question.limit         = most;
    question.bound         = TS_AT_MOST;
    question.kind          = TS_KIND_ROTATIONAL_SPEED;
    ts_finding *finding    = ts_judge(check, &question);
    ts_says(check, finding, "%s turns at %s at %s, and more than %s is seldom true", name,
            finding != NULL ? ts_shown_apart(check, found.speed, most, question.kind) : "",
            ts_condition_name(check, (int32_t)found.condition),
            finding != NULL ? ts_shown(check, most, question.kind) : "");
}

static void run(ts_check *check)
{
    const ts_train *train = check->train;
    for (uint32_t i = 0; i < train->shaft_count; i++)
        if (train->shafts[i].kind == TS_SHAFT_SPOOL)
            judge_speed(check, train->shafts[i].node, i, train->shafts[i].name, SPOOL_MOST);
    for (uint32_t i = 0; i < train->pad_count; i++)
        judge_speed(check, train->pads[i].node, train->pads[i].shaft, train->pads[i].name,
                    PAD_MOST);
    ts_skip(check, "the drive has no shaft");
}

const ts_rule ts_rule_implausible_speed = {
    .id       = "A3-implausible-speed",
    .title    = "Implausible speed",
    .question = "Does every spool stay below 60,000 rpm, and every pad below 30,000 rpm?",
    .why      = "Faster machines of this kind are rare; a slip between rpm and rad/s, or a ratio "
                "upside down, is not.",
    .level    = TS_WARN,
    .source   = "common practice, no source",
    .hint     = "look at the speed of the spool, and at which gear drives which",
    .run      = run,
};
