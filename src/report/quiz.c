/* report/quiz.c: what may be asked about a drive, and what is right? */
#include "report/quiz.h"

#include "report/effects_report.h"

#include <math.h>
#include <string.h>

#define QUESTIONS_MOST 24
#define OF_A_KIND      3 /* questions of one kind: more teach nothing new */

typedef struct asking {
    const ts_answer  *answer;
    const ts_effects *effects;
    ts_arena         *arena;
    ts_quiz          *quiz;
    ts_buffer         text;
    bool              failed;
} asking;

/* ---- putting together ------------------------------------------------------------------------ */

/* What stands in it->text, kept; the buffer is emptied. */
static const char *kept(asking *it)
{
    const char *copy =
        it->text.failed ? NULL : ts_arena_copy(it->arena, it->text.bytes, it->text.length);
    ts_buffer_clear(&it->text);
    it->failed = it->failed || copy == NULL;
    return copy != NULL ? copy : "";
}

static ts_question *ask(asking *it, uint32_t shaft)
{
    if (it->quiz->count < QUESTIONS_MOST)
        it->quiz->count++;
    ts_question *one = &it->quiz->questions[it->quiz->count - 1];
    *one             = (ts_question){.asks = kept(it), .shaft = shaft, .because = ""};
    return one;
}

/* A choice that says what another says already is left out. */
static void offer(asking *it, ts_question *one, const char *slip)
{
    const char *says = kept(it);

    for (int i = 0; i < one->count; i++)
        if (strcmp(one->choices[i].says, says) == 0)
            return;
    if (one->count < TS_CHOICES_MOST)
        one->choices[one->count++] = (ts_choice){says, slip};
}

static void offer_word(asking *it, ts_question *one, const char *says, const char *slip)
{
    ts_buffer_add(&it->text, says);
    offer(it, one, slip);
}

/* The right one was offered first; where it ends follows from the number of the question. */
static void settle(asking *it, ts_question *one)
{
    ts_choice all[TS_CHOICES_MOST];

    if (one->count < 2) { /* nothing to choose */
        it->quiz->count--;
        return;
    }
    const int turn = (int)((it->quiz->count * 7 + 3) % (size_t)one->count);
    for (int i = 0; i < one->count; i++)
        all[(i + turn) % one->count] = one->choices[i];
    memcpy(one->choices, all, sizeof one->choices);
    one->right = turn;
}

/* ---- the drive ------------------------------------------------------------------------------- */

static const char *sense_says(int sense)
{
    return sense > 0 ? "anticlockwise" : "clockwise";
}

static const ts_shaft *shaft_at(const asking *it, uint32_t k)
{
    return &it->answer->train->shafts[k];
}

static uint32_t driver_of(const asking *it, uint32_t k)
{
    const uint32_t mesh = shaft_at(it, k)->mesh;
    return mesh == TS_NOWHERE ? TS_NOWHERE : it->answer->train->meshes[mesh].driver_shaft;
}

/* Meshes of cylindrical gears between a box shaft and the input of its box. */
static int reversals_of(const asking *it, uint32_t k)
{
    int count = 0;

    for (uint32_t s = k; shaft_at(it, s)->mesh != TS_NOWHERE; s = driver_of(it, s)) {
        if (it->answer->train->meshes[shaft_at(it, s)->mesh].kind != TS_MESH_CYLINDRICAL)
            break;
        count++;
    }
    return count;
}

static uint32_t input_of(const asking *it, uint32_t k)
{
    uint32_t s = k;
    for (int i = reversals_of(it, k); i > 0; i--)
        s = driver_of(it, s);
    return s;
}

static bool is_asked_about(const ts_pad *pad)
{
    return pad->use == TS_PAD_ACCESSORY;
}

static const char *spool_of(const asking *it, uint32_t k)
{
    return it->answer->drive->spools[shaft_at(it, k)->spool].name;
}

static const char *face_says(const ts_pad *pad)
{
    return pad->face == TS_FRONT ? "front" : "rear";
}

/* ---- which way does a pad turn? -------------------------------------------------------------- */

static void ask_sense(asking *it, const ts_pad *pad)
{
    const int right    = ts_pad_sense(it->answer->motion, pad);
    const int count    = reversals_of(it, pad->shaft);
    const int input    = it->answer->motion->shafts[input_of(it, pad->shaft)].sense;
    const int backward = it->answer->motion->shafts[pad->shaft].sense;

    if (right == 0 || shaft_at(it, pad->shaft)->kind != TS_SHAFT_BOX)
        return;
    ts_buffer_print(&it->text,
                    "Seen from behind, the input gear of the box turns %s. The pad of %s is on "
                    "the %s face. Which way does it turn for somebody who faces it?",
                    sense_says(input), pad->name, face_says(pad));
    ts_question *one = ask(it, pad->shaft);
    offer_word(it, one, sense_says(right), NULL);
    offer_word(it, one, sense_says(-right),
               pad->face == TS_FRONT ? "who faces a front pad looks rearward: right and left change"
                                     : "one reversal was missed, or counted twice");
    ts_buffer_print(&it->text,
                    "%d mesh%s between the input and its shaft turn%s the sense round as often: "
                    "from behind it turns %s%s.",
                    count, count == 1 ? "" : "es", count == 1 ? "s" : "", sense_says(backward),
                    pad->face == TS_FRONT ? ", and who faces the front pad sees it the other way"
                                          : "");
    one->because = kept(it);
    settle(it, one);
}

/* ---- how fast? ------------------------------------------------------------------------------- */

static void offer_ratio(asking *it, ts_question *one, double ratio, const char *slip)
{
    if (!(ratio > 0.0))
        return;
    ts_buffer_significant(&it->text, ratio, 3);
    offer(it, one, slip);
}

/* The ratio with the teeth of its last mesh taken the wrong way round. */
static double last_turned_over(const asking *it, uint32_t k)
{
    const ts_mesh *mesh = &it->answer->train->meshes[shaft_at(it, k)->mesh];
    const double   z_1  = (double)it->answer->train->gears[mesh->driver].teeth.value;
    const double   z_2  = (double)it->answer->train->gears[mesh->driven].teeth.value;
    const double   r    = ts_rational_value(it->answer->motion->shafts[k].ratio);

    return r * (z_2 / z_1) * (z_2 / z_1);
}

static void ask_ratio(asking *it, const ts_pad *pad)
{
    const ts_motion  *motion = it->answer->motion;
    const uint32_t    k      = pad->shaft;
    const double      ratio  = ts_rational_value(motion->shafts[k].ratio);
    const uint32_t    input  = input_of(it, k);
    const ts_rational exact  = motion->shafts[k].ratio;

    if (shaft_at(it, k)->mesh == TS_NOWHERE || !ts_rational_valid(exact))
        return;
    ts_buffer_print(&it->text, "How often does the pad of %s turn while the %s spool turns once?",
                    pad->name, spool_of(it, k));
    ts_question *one = ask(it, k);
    offer_ratio(it, one, ratio, NULL);
    offer_ratio(it, one, 1.0 / ratio, "the ratio was turned over");
    offer_ratio(it, one, last_turned_over(it, k),
                "the teeth of the last mesh were taken the wrong way round");
    if (input != k)
        offer_ratio(it, one, ratio / ts_rational_value(motion->shafts[input].ratio),
                    "the two bevel pairs before the box were forgotten");
    ts_buffer_print(&it->text,
                    "Each mesh multiplies by driving teeth over driven teeth; all of them together "
                    "give ");
    ts_buffer_integer(&it->text, exact.over);
    ts_buffer_add(&it->text, "/");
    ts_buffer_integer(&it->text, exact.under);
    ts_buffer_add(&it->text, ".");
    one->because = kept(it);
    settle(it, one);
}

static void ask_faster(asking *it, const ts_pad *pad)
{
    const ts_rational exact = it->answer->motion->shafts[pad->shaft].ratio;
    const double      ratio = ts_rational_value(exact);
    const bool        same  = exact.over == exact.under;

    if (!(ratio > 0.0) || shaft_at(it, pad->shaft)->mesh == TS_NOWHERE)
        return;
    ts_buffer_print(&it->text, "Does the pad of %s turn faster or slower than the %s spool?",
                    pad->name, spool_of(it, pad->shaft));
    ts_question *one = ask(it, pad->shaft);
    offer_word(it, one, same ? "as fast" : ratio > 1.0 ? "faster" : "slower", NULL);
    offer_word(it, one, ratio > 1.0 ? "slower" : "faster", "a larger driven gear turns slower");
    offer_word(it, one, same ? "slower" : "as fast", "the teeth on the way do not cancel");
    ts_buffer_add(&it->text, "Follow the gears: where a small one drives a large one the speed "
                             "falls, and the other way round it rises.");
    one->because = kept(it);
    settle(it, one);
}

/* ---- which way does the power go? ------------------------------------------------------------ */

static void ask_power(asking *it, size_t c, uint32_t tower)
{
    const ts_power *power = it->answer->power;
    const ts_train *train = it->answer->train;
    const double    T     = power->T[c * train->shaft_count + tower];
    const char     *out   = "from the spool to the gearbox";
    const char     *in    = "from the gearbox to the spool";

    if (isnan(T) || !(fabs(T) > 0.0))
        return;
    ts_buffer_print(&it->text, "Which way does power pass the %s at %s?", train->shafts[tower].name,
                    it->answer->drive->conditions[c].name);
    ts_question *one = ask(it, tower);
    offer_word(it, one, T > 0.0 ? out : in, NULL);
    offer_word(it, one, T > 0.0 ? in : out,
               T > 0.0 ? "only a start sends power inwards"
                       : "a starter drives here, and what the others take is less");
    offer_word(it, one, "none passes", "something is driven or drives in that condition");
    ts_buffer_add(&it->text,
                  T > 0.0 ? "The spool drives all that hangs on the box."
                          : "What drives on the box turns the spool; the same teeth bear on their "
                            "other flanks.");
    one->because = kept(it);
    settle(it, one);
}

static void ask_powers(asking *it)
{
    const ts_train *train  = it->answer->train;
    const ts_power *power  = it->answer->power;
    int             inward = 0, outward = 0;

    for (uint32_t k = 0; k < train->shaft_count; k++) {
        if (train->shafts[k].kind != TS_SHAFT_TOWER)
            continue;
        for (size_t c = 0; c < it->answer->drive->condition_count; c++) {
            const double T    = power->T[c * train->shaft_count + k];
            int         *seen = T < 0.0 ? &inward : &outward;
            if (isnan(T) || !(fabs(T) > 0.0) || *seen > 0)
                continue;
            (*seen)++;
            ask_power(it, c, k);
        }
    }
}

/* ---- idlers ---------------------------------------------------------------------------------- */

/* Do the gears on one shaft differ in their teeth? */
static bool is_stepped(const asking *it, uint32_t k)
{
    int64_t teeth = 0;
    for (uint32_t g = 0; g < it->answer->train->gear_count; g++) {
        const ts_gear *gear = &it->answer->train->gears[g];
        if (gear->shaft != k || gear->role == TS_GEAR_BEVEL)
            continue;
        if (teeth != 0 && gear->teeth.value != teeth)
            return true;
        teeth = gear->teeth.value;
    }
    return false;
}

static bool is_idler(const asking *it, uint32_t k)
{
    const ts_shaft *shaft = shaft_at(it, k);
    return shaft->kind == TS_SHAFT_BOX && shaft->pad[TS_FRONT] == TS_NOWHERE &&
           shaft->pad[TS_REAR] == TS_NOWHERE && reversals_of(it, k) > 0;
}

static void ask_idler(asking *it, uint32_t k)
{
    const bool stepped = is_stepped(it, k);

    ts_buffer_print(&it->text, "What does %s do to what comes after it?", shaft_at(it, k)->name);
    ts_question *one = ask(it, k);
    offer_word(it, one,
               stepped ? "it turns the sense round and changes the speed"
                       : "it turns the sense round and leaves the speed as if the neighbours met",
               NULL);
    offer_word(it, one,
               stepped ? "it turns the sense round and leaves the speed as if the neighbours met"
                       : "it turns the sense round and changes the speed",
               stepped ? "it carries two gears of different size"
                       : "its teeth drive and are driven: they cancel in the ratio");
    offer_word(it, one, "it leaves the sense and the speed",
               "every mesh of outside teeth turns the sense round");
    ts_buffer_add(&it->text, stepped ? "Two gears on one shaft: the ratio is changed between them."
                                     : "One gear meets both neighbours: it makes room between them "
                                       "and reverses, no more.");
    one->because = kept(it);
    settle(it, one);
}

/* ---- what breaks, what stops? ---------------------------------------------------------------- */

static const ts_outcome *seizure_of(const asking *it, uint32_t pad)
{
    for (uint32_t i = 0; i < it->effects->failure_count; i++)
        if (it->effects->failures[i].mode == TS_FAILS_SEIZURE && it->effects->failures[i].at == pad)
            return &it->effects->outcomes[i];
    return NULL;
}

static bool has_own_neck(const asking *it, uint32_t pad)
{
    return it->effects->select->necks->of_pad[pad] != TS_NOWHERE;
}

/* Any other pad with a neck, the nearest in number. */
static uint32_t other_neck(const asking *it, uint32_t pad)
{
    const uint32_t count = it->answer->train->pad_count;
    for (uint32_t i = 1; i < count; i++)
        if (has_own_neck(it, (pad + i) % count))
            return (pad + i) % count;
    return TS_NOWHERE;
}

static void ask_breaks(asking *it, uint32_t p, const ts_outcome *outcome)
{
    const ts_train    *train = it->answer->train;
    const char        *name  = train->pads[p].name;
    const ts_breakage *first = &outcome->breakages[0];
    const uint32_t     other = other_neck(it, p);

    ts_buffer_print(&it->text, "The %s seizes while the engine runs. What lets go?", name);
    ts_question *one = ask(it, train->pads[p].shaft);
    ts_effects_breaks(it->effects, first, &it->text);
    offer(it, one, NULL);
    ts_buffer_print(&it->text, "the neck of %s breaks", name);
    offer(it, one, has_own_neck(it, p) ? "something weaker stands behind it" : "it has no neck");
    if (other != TS_NOWHERE) {
        ts_buffer_print(&it->text, "the neck of %s breaks", train->pads[other].name);
        offer(it, one, "it does not lie between what seizes and the spool");
    }
    offer_word(it, one, "the spool stops with it",
               "a spool has far more inertia than a drive bears");
    ts_buffer_add(&it->text,
                  first->meant
                      ? "Of the necks, teeth and shafts on the way to the spool it bears the least."
                      : "Nothing that is meant to break stands between, so the weakest "
                        "part does.");
    one->because = kept(it);
    settle(it, one);
}

static void list_stopped(asking *it, const ts_outcome *outcome)
{
    const ts_train *train = it->answer->train;
    int             count = 0;

    for (uint32_t p = 0; p < train->pad_count; p++) {
        if (outcome->pads[p].goes == TS_GOES_ON || !is_asked_about(&train->pads[p]))
            continue;
        ts_buffer_print(&it->text, "%s%s", count++ > 0 ? ", " : "", train->pads[p].name);
    }
    if (count == 0)
        ts_buffer_add(&it->text, "nothing else");
}

static void ask_stops(asking *it, uint32_t p, const ts_outcome *outcome)
{
    const ts_train *train = it->answer->train;
    const uint32_t  drive = train->shafts[train->pads[p].shaft].drive;
    int             count = 0;

    ts_buffer_print(&it->text, "The %s seizes while the engine runs. What stops, or is in doubt?",
                    train->pads[p].name);
    ts_question *one = ask(it, train->pads[p].shaft);
    list_stopped(it, outcome);
    offer(it, one, NULL);
    offer_word(it, one, train->pads[p].name, "what broke left its pieces in the gearbox");
    for (uint32_t q = 0; q < train->pad_count; q++)
        if (is_asked_about(&train->pads[q]) && train->shafts[train->pads[q].shaft].drive == drive)
            ts_buffer_print(&it->text, "%s%s", count++ > 0 ? ", " : "", train->pads[q].name);
    offer(it, one, "its neck lets it go, and the rest of the box turns on");
    offer_word(it, one, "nothing", "what has seized does not turn");
    ts_buffer_add(&it->text, outcome->breakages[0].meant
                                 ? "The neck parts it from the box, which turns on."
                                 : "What broke was not made to: the box is no longer sure.");
    one->because = kept(it);
    settle(it, one);
}

/* ---- which teeth meet again? ----------------------------------------------------------------- */

static void offer_turns(asking *it, ts_question *one, int64_t turns, const char *slip)
{
    ts_buffer_print(&it->text, "after ");
    ts_buffer_integer(&it->text, turns);
    ts_buffer_print(&it->text, " turn%s", turns == 1 ? "" : "s");
    offer(it, one, slip);
}

static void ask_hunting(asking *it, uint32_t m)
{
    const ts_train *train = it->answer->train;
    const ts_mesh  *mesh  = &train->meshes[m];
    const int64_t   z_1   = train->gears[mesh->driver].teeth.value;
    const int64_t   z_2   = train->gears[mesh->driven].teeth.value;
    const int64_t   gcd   = it->answer->motion->meshes[m].gcd;

    if (gcd < 1)
        return;
    ts_buffer_print(&it->text, "%s has ", train->shafts[mesh->driver_shaft].name);
    ts_buffer_integer(&it->text, z_1);
    ts_buffer_print(&it->text, " teeth and drives the ");
    ts_buffer_integer(&it->text, z_2);
    ts_buffer_print(&it->text,
                    " of %s. When do the same two teeth meet again, in turns of the "
                    "first?",
                    train->shafts[mesh->driven_shaft].name);
    ts_question *one = ask(it, mesh->driven_shaft);
    offer_turns(it, one, z_2 / gcd, NULL);
    offer_turns(it, one, z_1 / gcd, "that counts the turns of the other gear");
    offer_turns(it, one, z_1 * z_2 / gcd, "that counts teeth, not turns");
    offer_turns(it, one, 1, "only if the one has a whole multiple of the teeth of the other");
    ts_buffer_print(&it->text, gcd == 1 ? "They have no common divisor: every tooth meets every "
                                          "other, and wear is spread."
                                        : "Their greatest common divisor is shared out first; what "
                                          "is left of the driven teeth is the number of turns.");
    one->because = kept(it);
    settle(it, one);
}

/* ---- the whole ------------------------------------------------------------------------------- */

/* Of the pads of accessories: the first, the last and what lies between, OF_A_KIND at most. */
static uint32_t pick_pads(const asking *it, uint32_t picked[OF_A_KIND])
{
    const ts_train *train = it->answer->train;
    uint32_t        all = 0, count = 0, seen = 0;

    for (uint32_t p = 0; p < train->pad_count; p++)
        all += is_asked_about(&train->pads[p]) ? 1 : 0;
    for (uint32_t p = 0; p < train->pad_count && count < OF_A_KIND; p++) {
        if (!is_asked_about(&train->pads[p]))
            continue;
        if (seen * (OF_A_KIND - 1) >= count * (all > 1 ? all - 1 : 1))
            picked[count++] = p;
        seen++;
    }
    return count;
}

/* Is it known which part breaks, and does it bear less than every other one may? */
static bool is_certain(const ts_breakage *first)
{
    return (first->meant || first->part != TS_NOWHERE) && isfinite(first->T) &&
           first->T < first->T_next;
}

static void ask_seizures(asking *it)
{
    int with = 0, without = 0;

    for (uint32_t p = 0; p < it->answer->train->pad_count; p++) {
        const ts_outcome *outcome = seizure_of(it, p);
        int              *seen    = has_own_neck(it, p) ? &with : &without;

        if (outcome == NULL || outcome->breakage_count == 0 || *seen > 0 ||
            !is_certain(&outcome->breakages[0]))
            continue;
        (*seen)++;
        ask_breaks(it, p, outcome);
        ask_stops(it, p, outcome);
    }
}

static void ask_all(asking *it, bool numbers)
{
    const ts_train *train = it->answer->train;
    uint32_t        pads[OF_A_KIND];
    const uint32_t  count = pick_pads(it, pads);
    int             seen  = 0;

    for (uint32_t i = 0; i < count; i++)
        ask_sense(it, &train->pads[pads[i]]);
    for (uint32_t i = 0; i < count; i++)
        (numbers ? ask_ratio : ask_faster)(it, &train->pads[pads[i]]);
    ask_powers(it);
    for (uint32_t k = 0; k < train->shaft_count && seen < 2; k++)
        if (is_idler(it, k)) {
            seen++;
            ask_idler(it, k);
        }
    ask_seizures(it);
    for (uint32_t m = 0, asked = 0; numbers && m < train->mesh_count && asked < 2; m++)
        if (train->meshes[m].kind == TS_MESH_CYLINDRICAL) {
            asked++;
            ask_hunting(it, m);
        }
}

ts_status ts_quiz_make(const ts_answer *answer, const ts_effects *effects, bool numbers,
                       ts_arena *arena, ts_quiz *out)
{
    asking it = {.answer = answer, .effects = effects, .arena = arena, .quiz = out};

    *out = (ts_quiz){.questions = TS_TAKE(arena, ts_question, QUESTIONS_MOST)};
    if (out->questions == NULL)
        return TS_NO_MEMORY;
    ts_buffer_open(&it.text, answer->allocator);
    ask_all(&it, numbers);
    const bool failed = it.failed || it.text.failed;
    ts_buffer_close(&it.text);
    return failed ? TS_NO_MEMORY : TS_OK;
}
