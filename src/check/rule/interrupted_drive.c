/* check/rule/interrupted_drive.c: can a spool move so far that its take-off lets go? */
#include "check/visit.h"

/* "fuel pump, oil pump pack and 2 more" of the tree: those that the engine needs come first. */
static const char *who_stops(ts_check *check, uint32_t drive)
{
    const char *names = NULL;
    for (int round = 0; round < 2; round++)
        for (uint32_t p = 0; p < check->train->pad_count; p++) {
            const ts_pad *pad = &check->train->pads[p];
            if (pad->accessory < 0 || check->train->shafts[pad->shaft].drive != drive)
                continue;
            const bool needed =
                check->drive->accessories[pad->accessory].purpose.value == TS_FOR_ENGINE;
            if (needed != (round == 0))
                continue;
            names = names == NULL ? pad->name : ts_phrase(check, "%s, %s", names, pad->name);
        }
    return names != NULL ? names : "all that it drives";
}

static const char *who_bears(ts_check *check, const ts_drive_float *item)
{
    const char *names = NULL;
    for (int i = 0; i < TS_FLOAT_SCHEMES; i++) {
        const ts_float_option *o = &item->options[i];
        if (o->chosen || o->made || !(ts_float_reserve(item, o) >= 0.0))
            continue;
        names = ts_phrase(check, "%s%s%s", names != NULL ? names : "", names != NULL ? " or " : "",
                          ts_float_scheme_name((ts_float_scheme)i));
    }
    return names;
}

static const char *how(const ts_float_option *option, const ts_drive_float *item)
{
    if (option == &item->options[TS_FLOAT_FIXED_BEVEL])
        return "the teeth of the bevels part";
    if (option == &item->options[TS_FLOAT_SPLINED_STUB])
        return "the spline of the stub leaves its hub";
    return "the spur runs off its mate";
}

static void say(ts_check *check, ts_finding *finding, const ts_drive_float *item, int end)
{
    const ts_float_option *option = ts_float_chosen(item);
    const ts_spool        *spool  = &check->drive->spools[check->drive->drive[item->drive].spool];
    const bool             starts = spool->cranked.value == TS_YES;
    const char            *others = who_bears(check, item);
    ts_says(
        check, finding,
        "the %s spool moves %s %s, and at %s %s: the drive is interrupted, and these stand still "
        "while it turns: %s%s",
        spool->name, ts_shown(check, fabs(item->s[end]), TS_KIND_LENGTH),
        end == 0 ? "forward" : "rearward",
        ts_shown(check, fabs(option->apart[end]), TS_KIND_LENGTH), how(option, item),
        who_stops(check, item->drive), starts ? "; no starter turns the engine any more" : "");
    if (others != NULL)
        ts_remedy(check, finding, "a %s would bear this travel", others);
    else
        ts_remedy(check, finding,
                  "none of the three schemes, as the file has them, bears this "
                  "travel: engage more, or hold the spool closer");
}

static void judge(ts_check *check, const ts_drive_float *item)
{
    const ts_take_off     *take_off = &check->drive->drive[item->drive].take_off;
    const ts_float_option *option   = ts_float_chosen(item);
    if (item->missing != NULL || option == NULL) {
        ts_not_computable(check, take_off->node, TS_EVERY_CONDITION, "%s",
                          item->missing != NULL ? item->missing : "how the bevels float (`float`)");
        return;
    }
    const double forward = -item->s[0] + option->apart[0], rearward = item->s[1] - option->apart[1];
    const int    end      = forward > rearward ? 0 : 1;
    ts_question  question = ts_question_about(check, take_off->node, TS_EVERY_CONDITION);
    question.value        = fmax(0.0, end == 0 ? -item->s[0] : item->s[1]);
    question.limit        = fabs(option->apart[end]);
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_LENGTH;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        say(check, finding, item, end);
}

static void run(ts_check *check)
{
    for (uint32_t d = 0; check->floats != NULL && d < check->floats->count; d++)
        judge(check, &check->floats->items[d]);
    ts_skip(check, "no spool is tapped");
}

const ts_rule ts_rule_interrupted_drive = {
    .id       = "F1-interrupted-drive",
    .title    = "Interrupted drive",
    .question = "Does every take-off hold together at both ends of the travel of its spool?",
    .why      = "A take-off that lets go takes fuel, oil and control with it, and nothing can turn "
                "the engine any more.",
    .level    = TS_REFUSE,
    .source   = "derived: lengths that are engaged, docs/method/float.md",
    .hint     = "engage more, or use a scheme that bears more movement",
    .run      = run,
};
