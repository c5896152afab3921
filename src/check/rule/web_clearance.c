/* check/rule/web_clearance.c: do the teeth stay clear of the waves that run round their gear? */
#include "check/visit.h"

/* Of all time; what is only passed is left out; common practice, no source. */
static const double time_spent = 0.05;

static const ts_formula teeth_formula = {
    .symbol  = "f_teeth",
    .meaning = "frequency with which the teeth load the gear",
    .unit    = "Hz",
    .text    = "z*N",
    .source  = "derived: z teeth a turn",
};
static const ts_formula wave_formulas[2] = {
    {"f_wave", "frequency of a wave that runs backward, seen from the housing", "Hz", "f_web - n*N",
     "derived: f cos(n theta) turned with the gear"},
    {"f_wave", "frequency of a wave that runs forward, seen from the housing", "Hz", "f_web + n*N",
     "derived: f cos(n theta) turned with the gear"},
};
static const ts_formula gap_formula = {
    .symbol  = "web_gap",
    .meaning = "how far the teeth stay from the nearest wave of their gear",
    .unit    = "1",
    .text    = "abs(f_teeth/f_wave - 1)",
    .source  = "derived: z N = f +- n N is the resonance",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_web_gap",
    .meaning = "reserve of the distance from waves of the gear",
    .unit    = "1",
    .text    = "web_gap/web_clearance - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* A wave, and the condition in which the teeth are as near to it as they are for the time asked. */
typedef struct meeting {
    ts_web_wave wave;
    int32_t     condition;
} meeting;

static double seconds_of_all(const ts_check *check)
{
    double sum = 0.0;

    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const double t = ts_condition_seconds(&check->drive->conditions[c]);
        sum += t > 0.0 ? t : 0.0;
    }
    return sum;
}

/* Of all time that is told.  How long is not known may be long. */
static double share_of(const ts_check *check, double all, uint32_t condition)
{
    const double t = ts_condition_seconds(&check->drive->conditions[condition]);

    return isnan(t) || !(all > 0.0) ? 1.0 : t / all;
}

/* The share of time in which the teeth are as near to this wave, or nearer. */
static double share_within(const ts_check *check, double all, uint32_t item, int index, double gap)
{
    double sum = 0.0;

    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_web_wave wave = ts_web_wave_at(check->webs, item, c, index, 1);
        if (wave.k > 0 && fabs(wave.gap) <= gap)
            sum += share_of(check, all, c);
    }
    return sum;
}

/* The nearest that the teeth are to one and the same wave for `time_spent`, summed over all
 * conditions: a condition that is told in pieces changes nothing.  Sums round. */
static meeting nearest_of(const ts_check *check, uint32_t item)
{
    const double all   = seconds_of_all(check);
    const int    waves = ts_web_wave_count(&check->webs->items[item]);
    meeting      out   = {.condition = TS_EVERY_CONDITION};

    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        for (int w = 0; w < waves; w++) {
            const ts_web_wave wave = ts_web_wave_at(check->webs, item, c, w, 1);
            const double      gap  = fabs(wave.gap);
            if (wave.k == 0 || (out.wave.k > 0 && gap >= fabs(out.wave.gap)))
                continue;
            if (share_within(check, all, item, w, gap) >= time_spent * (1.0 - 1e-9))
                out = (meeting){wave, (int32_t)c};
        }
    return out;
}

static double gap_of(ts_check *check, const ts_web_item *item, const ts_web_wave *wave)
{
    ts_workings *workings = check->workings;
    const double f_web = item->f[wave->n], z = item->z, n = wave->n, N = wave->N;

    ts_workings_assumed(workings, "f_web", f_web, "Hz",
                        "of the gear as a plate with so many nodal diameters "
                        "(docs/method/whirl.md)");
    ts_workings_given(workings, "z", z, "1", check->train->gears[item->gear].teeth.node);
    ts_workings_assumed(workings, "n", n, "1", "nodal diameters");
    ts_workings_assumed(workings, "N", N, "Hz", "turns of the gear in a second");
    const double f_teeth = TS_STEP(workings, teeth_formula, z * N, z, N);
    const double f_wave  = wave->sense > 0
                               ? TS_STEP(workings, wave_formulas[1], f_web + n * N, f_web, n, N)
                               : TS_STEP(workings, wave_formulas[0], f_web - n * N, f_web, n, N);
    return TS_STEP(workings, gap_formula, fabs(f_teeth / f_wave - 1.0), f_teeth, f_wave);
}

static const char *shape_of(ts_check *check, const ts_web_item *item)
{
    if (item->bevel)
        return "taken as a disc as thick as its cone is long";
    return ts_phrase(check, "its web %s thick", ts_shown(check, item->plate.h, TS_KIND_LENGTH));
}

static void say(ts_check *check, ts_finding *finding, const ts_web_item *item, const meeting *at)
{
    const ts_web_wave *wave = &at->wave;
    const char        *way  = wave->n == 0      ? "the shape without nodal diameters"
                              : wave->sense > 0 ? "the wave that runs forward"
                                                : "the wave that runs backward";

    ts_says(check, finding, "at %s the teeth of %s meet it at %s, %s from %s of %s%s (%s)",
            ts_condition_name(check, at->condition), ts_gear_name(check, item->gear),
            ts_shown(check, wave->excitation, TS_KIND_FREQUENCY),
            ts_shown_percent(check, fabs(wave->gap)), way,
            ts_shown(check, wave->frequency, TS_KIND_FREQUENCY),
            wave->n == 0   ? ""
            : wave->n == 1 ? " with 1 nodal diameter"
                           : ts_phrase(check, " with %d nodal diameters", wave->n),
            shape_of(check, item));
}

/* Both gears of a bevel pair stand in one record: the one that is nearer to a wave is asked. */
static bool is_nearer_mate(const ts_check *check, uint32_t index, double gap)
{
    for (uint32_t i = 0; i < check->webs->count; i++) {
        if (i == index || check->webs->items[i].node != check->webs->items[index].node)
            continue;
        const meeting mate = nearest_of(check, i);
        if (mate.wave.k > 0 &&
            (fabs(mate.wave.gap) < gap || (fabs(mate.wave.gap) == gap && i < index)))
            return false;
    }
    return true;
}

static void judge(ts_check *check, uint32_t index, double clearance)
{
    const ts_web_item *item = &check->webs->items[index];
    const meeting      at   = nearest_of(check, index);

    if (at.wave.k == 0 || (item->bevel && !is_nearer_mate(check, index, fabs(at.wave.gap))))
        return;
    ts_workings_about(check->workings, item->node, TS_EVERY_CONDITION);
    ts_question question  = ts_question_about(check, item->node, TS_EVERY_CONDITION);
    question.value        = gap_of(check, item, &at.wave);
    question.limit        = clearance;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "web_gap";
    question.limit_symbol = "web_clearance";
    question.reserve      = &reserve_formula;
    if (item->bevel)
        question.level = TS_NOTE;
    ts_finding *finding = ts_judge(check, &question);
    if (finding != NULL)
        say(check, finding, item, &at);
}

/* A solid cylindrical gear is stiff, and hardly pushed across its plane: only `whirl` shows it. */
static bool has_web(const ts_web_item *item)
{
    return item->count > 0 && (item->light || item->bevel);
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.web_clearance;

    if (check->webs != NULL &&
        !ts_limit_known(check, limit, "web clearance", "web_clearance", TS_KIND_NUMBER))
        return;
    for (uint32_t i = 0; check->webs != NULL && i < check->webs->count; i++) {
        const ts_web_item *item = &check->webs->items[i];
        if (item->told && item->missing != NULL)
            ts_not_computable(check, item->node, TS_EVERY_CONDITION, "%s of %s", item->missing,
                              ts_gear_name(check, item->gear));
        else if (has_web(item))
            judge(check, i, limit->value);
    }
    ts_skip(check,
            check->webs == NULL
                ? "gears were not swung across their planes"
                : "no gear tells a `rim` on a web, and no bevel gear that turns has a geometry");
}

const ts_rule ts_rule_web_clearance = {
    .id    = "F4-web-clearance",
    .title = "Waves in the webs",
    .question =
        "Do the teeth stay clear of the waves that run round the webs, where time is spent?",
    .why    = "A web that is shaken with the frequency of a wave that runs round it swings until "
              "it cracks; the load stands still, the gear turns, so every shape is met twice.",
    .level  = TS_WARN,
    .source = "z N = f +- n N: derived; 10 to 15 % where time is spent: common practice, no "
              "source; plates after R. Mindlin, J. Applied Mechanics 18 (1951), 31 (from memory)",
    .hint   = "make the web thicker or thinner, choose other tooth numbers, or damp the rim and "
              "prove it; `whirl` shows all of them",
    .run    = run,
};
