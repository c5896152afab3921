/* check/rule/bearing_life.c: does every bearing last as long as the drive? */
#include "check/bearing_visit.h"
#include "check/oil_told.h"

#define NEEDS ((unsigned)(TS_NEEDS_FEED | TS_NEEDS_VISCOSITY | TS_NEEDS_BEARING_RISE))

static const ts_formula ratio_formula = {
    .symbol  = "lives",
    .meaning = "modified life of the bearing over the life of the drive",
    .unit    = "1",
    .text    = "L_nmh/t_drive",
    .source  = "derived: how often the whole life is borne",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_lives",
    .meaning = "reserve of the life of the bearing",
    .unit    = "1",
    .text    = "lives/lives_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, const ts_bearing_at *at, double least)
{
    const ts_line_bearing *b     = at->bearing;
    const double           L_nmh = b->rating.L_nmh, t_drive = check->lines->life;

    if (isnan(t_drive) || (isnan(L_nmh) && ts_oil_lacks(check, NEEDS)))
        return; /* asked once below */
    ts_workings_about(check->workings, b->node, TS_EVERY_CONDITION);
    ts_workings_assumed(check->workings, "t_drive", t_drive, "s",
                        "the sum of `hours`, or `events` times `lasts`, of all conditions");
    ts_question question  = ts_question_about(check, b->node, TS_EVERY_CONDITION);
    question.level        = ts_bearing_level(question.level, b);
    question.value        = isfinite(L_nmh)
                                ? TS_STEP(check->workings, ratio_formula, L_nmh / t_drive, L_nmh, t_drive)
                                : L_nmh;
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "lives";
    question.limit_symbol = "lives_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "%s lasts %s h, less than %s h; most is used up at %s",
            ts_bearing_name(check, at),
            ts_shown_apart(check, L_nmh / 3600.0, least * t_drive / 3600.0, TS_KIND_NUMBER),
            ts_shown(check, least * t_drive / 3600.0, TS_KIND_NUMBER),
            ts_condition_name(check, b->rating.worst_life));
    ts_remedy(check, finding, "%s",
              ts_bearing_remedy(check, at, pow(least * t_drive / L_nmh, 1.0 / b->ability.p)));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.bearing_life;
    if (check->lines == NULL || check->lines->count == 0) {
        ts_skip(check, "no shaft turns in bearings of its own");
        return;
    }
    if (!ts_limit_known(check, limit, "bearing life", "lives_least", TS_KIND_NUMBER))
        return;
    if (isnan(check->lines->life))
        ts_not_computable(check, check->drive->node, TS_EVERY_CONDITION,
                          "the time spent in every condition (`hours` or `events`)");
    (void)ts_oil_is_told(check, NEEDS, NULL);
    ts_each_bearing(check, limit->value, judge);
    ts_skip(check, "no bearing could be rated");
}

const ts_rule ts_rule_bearing_life = {
    .id       = "E7-bearing-life",
    .title    = "Life of the bearings",
    .question = "Does every bearing last as long as the drive, in all conditions together?",
    .why =
        "A box that must be opened for a bearing is a box that is opened; starts and cruise wear "
        "it alike, and a thin film shortens what the load leaves.",
    .level  = TS_REFUSE,
    .source = "ISO 281:2007, clause 9 (from memory); the least life: common practice, no source",
    .hint   = "take a larger bearing or a pair, or a wider span",
    .run    = run,
};
