/* check/rule/start_path_length.c: how many meshes carry the start besides the bevels? */
#include "check/visit.h"

static void judge_pad(ts_check *check, const ts_pad *pad, const ts_accessory *starter, double most)
{
    ts_question question = ts_question_about(check, pad->node, TS_EVERY_CONDITION);
    question.value       = (double)ts_meshes_to_input(check->train, pad->shaft);
    question.limit       = most;
    question.bound       = TS_AT_MOST;
    question.kind        = TS_KIND_NUMBER;
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the start passes %d cylindrical %s between %s and the box input, where at most %s %s "
            "wanted",
            (int)question.value, question.value > 1.0 ? "meshes" : "mesh", starter->name,
            ts_shown(check, most, TS_KIND_NUMBER), most > 1.0 || most < 1.0 ? "are" : "is");
    ts_remedy(check, finding, "move %s nearer to the box input, by %d at least", starter->name,
              (int)ceil(question.value - most));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.start_path_meshes;
    if (!ts_limit_known(check, limit, "start path meshes", "start_path_meshes_most",
                        TS_KIND_NUMBER))
        return;
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        const ts_pad       *pad       = &check->train->pads[i];
        const ts_accessory *accessory = ts_accessory_at(check, pad);
        if (accessory != NULL && ts_accessory_starts(check, accessory))
            judge_pad(check, pad, accessory, limit->value);
    }
    ts_skip(check, "no accessory on a pad starts the engine");
}

const ts_rule ts_rule_start_path_length = {
    .id       = "B4-start-path-length",
    .title    = "Length of the start path",
    .question = "Is the starter close to the box input?",
    .why      = "Every gear between starter and input is sized by the start, not by its running "
                "load, and on both flanks.",
    .level    = TS_WARN,
    .source   = "common practice, no source",
    .hint     = "move the starter nearer to the box input",
    .run      = run,
};
