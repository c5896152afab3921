/* Between which torques do the necks break, and how likely too early or too late? */
#include "report/necks_report.h"

#include "report/check_page.h"

#include <math.h>

#define INDENT 4

typedef struct teller {
    const ts_answer *answer;
    ts_page         *page;
    ts_buffer        text;
} teller;

static void show(teller *t, double si, ts_kind kind)
{
    if (isfinite(si))
        ts_quantity_show(&t->text, si, ts_kind_shown(kind, t->page->units), 4);
    else
        ts_buffer_add(&t->text, "not known");
}

static void sentence(teller *t)
{
    const char *said   = t->text.failed ? "" : t->text.bytes;
    const int   behind = said[0] == ' ' ? 2 : 0; /* the name it is about */

    ts_buffer_fill(t->page->out, ' ', (size_t)behind);
    ts_page_wrap(t->page, said + behind, INDENT, behind);
    ts_buffer_clear(&t->text);
}

static void band(teller *t, const ts_neck_survey *survey)
{
    const ts_drive_neck *of = survey->neck;

    ts_buffer_print(&t->text, "%s: ", of->name);
    if (of->designed) {
        ts_buffer_add(&t->text, "a neck of ");
        show(t, of->neck->diameter.value, TS_KIND_LENGTH);
        ts_buffer_add(&t->text, ", which breaks at ");
    } else {
        ts_buffer_add(&t->text, "a band that the file states, ");
    }
    if (of->missing == NULL) {
        show(t, of->band.low, TS_KIND_TORQUE);
        ts_buffer_add(&t->text, " to ");
        show(t, of->band.high, TS_KIND_TORQUE);
        ts_buffer_add(&t->text, of->designed ? ", guaranteed" : "");
    } else {
        ts_buffer_add(&t->text, "torques that are not known");
    }
    ts_buffer_add(&t->text, "; it must pass ");
    show(t, survey->guard->legit.T, TS_KIND_TORQUE);
    ts_buffer_add(&t->text, " and its way bears ");
    show(t, survey->guard->once.T, TS_KIND_TORQUE);
    sentence(t);
    if (of->missing == NULL)
        return;
    ts_buffer_print(&t->text, "  its band is not known, for want of %s", of->missing);
    sentence(t);
}

static void samples(teller *t, const ts_neck_sampled *s)
{
    ts_buffer_print(&t->text, "  %zu drawn necks break at ", s->count);
    show(t, s->least, TS_KIND_TORQUE);
    ts_buffer_add(&t->text, " to ");
    show(t, s->most, TS_KIND_TORQUE);
    ts_buffer_add(&t->text, ", mean ");
    show(t, s->mean, TS_KIND_TORQUE);
    ts_buffer_add(&t->text, ", standard deviation ");
    show(t, s->deviation, TS_KIND_TORQUE);
    if (s->outside == 0)
        ts_buffer_add(&t->text, "; all of them inside of the guaranteed band");
    else
        ts_buffer_print(&t->text, "; %zu OUTSIDE OF THE GUARANTEED BAND", s->outside);
    sentence(t);
    for (int q = 0; q < TS_NECK_QUANTILES; q++) {
        ts_buffer_add(&t->text, q == 0 ? "  " : ", ");
        ts_page_short(&t->text, 100.0 * ts_neck_shares[q], 4);
        ts_buffer_add(&t->text, q == 0 ? " % of them below " : " % below ");
        show(t, s->quantile[q], TS_KIND_TORQUE);
    }
    sentence(t);
}

/* One chance by the laws, and how many of the samples. */
static void chance(teller *t, const char *what, double law, size_t drawn, size_t count)
{
    ts_buffer_print(&t->text, "%s ", what);
    ts_page_short(&t->text, law, 3);
    ts_buffer_print(&t->text, " (%zu of %zu)", drawn, count);
}

/* What tires it most. */
static void fatigue(teller *t, const ts_neck_life *life)
{
    if (life->worst < 0)
        return;
    const ts_neck_cycles *c  = &life->cycles[life->worst];
    const int32_t         in = life->condition[life->worst];

    ts_buffer_add(&t->text, "  ");
    ts_page_short(&t->text,
                  100.0 * ts_neck_harm_share(&life->make, &life->duty, &life->chance, life->worst),
                  3);
    ts_buffer_add(&t->text, " % of the fatigue comes from ");
    ts_page_short(&t->text, c->cycles, 3);
    if (in == TS_EVERY_CONDITION)
        ts_buffer_add(&t->text, " starts, overloads or events, ");
    else
        ts_buffer_print(&t->text, " swings of the torque at %s, ",
                        ts_answer_condition(t->answer, in));
    show(t, c->T_a, TS_KIND_TORQUE);
    ts_buffer_add(&t->text, " about ");
    show(t, c->T_m, TS_KIND_TORQUE);
    sentence(t);
}

static void chances(teller *t, const ts_neck_survey *survey)
{
    const ts_neck_sampled *s = &survey->samples;
    const ts_neck_chance  *c = &survey->life.chance;

    if (survey->life.missing != NULL) {
        ts_buffer_print(&t->text, "  no chances, for want of %s", survey->life.missing);
        sentence(t);
        return;
    }
    chance(t, "  chance of breaking too early", c->early, s->early, s->count);
    chance(t, ", at once", c->static_early, s->static_early, s->count);
    chance(t, ", by fatigue", c->fatigue_early, s->fatigue_early, s->count);
    chance(t, "; too late", c->late, s->late, s->count);
    sentence(t);
    ts_buffer_add(&t->text, "  too early with a chance of at most ");
    ts_page_short(&t->text, survey->life.early_most, 3);
    ts_buffer_add(&t->text,
                  " where all that shakes it now and then swings together (Rayleigh's law)");
    sentence(t);
    fatigue(t, &survey->life);
    ts_buffer_add(&t->text, "  both are as likely at ");
    show(t, survey->balance, TS_KIND_LENGTH);
    sentence(t);
}

const ts_seizure_peak *ts_necks_peak(const ts_necks_answer *necks, size_t item)
{
    const ts_seizure_peak *peak =
        necks->peaks != NULL ? &necks->peaks[necks->items[item].guard - necks->guards] : NULL;

    return peak != NULL && peak->share > 0.0 ? peak : NULL;
}

static void seized(teller *t, const ts_seizure_peak *peak)
{
    if (peak == NULL)
        return;
    ts_buffer_print(&t->text, "  seized at once at %s, its neck as strong as it may be: %s sees ",
                    peak->condition, peak->part);
    show(t, peak->T, TS_KIND_TORQUE);
    ts_buffer_add(&t->text, ", ");
    ts_buffer_fixed(&t->text, 100.0 * peak->share, 1);
    ts_buffer_add(&t->text, " % of the ");
    show(t, peak->bears, TS_KIND_TORQUE);
    ts_buffer_add(&t->text, " that it bears once; nothing comes nearer in any condition");
    sentence(t);
}

void ts_necks_page(const ts_necks_answer *necks, const ts_answer *answer, ts_page *page)
{
    teller t     = {.answer = answer, .page = page};
    size_t drawn = 0, designed = 0;

    ts_buffer_open(&t.text, page->out->allocator);
    ts_answer_title(answer, page);
    ts_page_heading(page, "Necks: the band that is guaranteed, necks drawn from it, and chances");
    for (size_t i = 0; i < necks->count; i++) {
        band(&t, &necks->items[i]);
        seized(&t, ts_necks_peak(necks, i));
        designed += necks->items[i].neck->designed;
        if (!necks->items[i].sampled)
            continue;
        drawn++;
        samples(&t, &necks->items[i].samples);
        chances(&t, &necks->items[i]);
    }
    if (necks->count == 0)
        ts_buffer_add(&t.text, "This drive has no neck.");
    else if (designed == 0)
        ts_buffer_add(&t.text, "No neck of this drive is designed: give one a `diameter` in place "
                               "of the band that it `breaks` in, and it is computed.");
    else if (drawn > 0)
        ts_buffer_print(&t.text,
                        "Chances by their laws, with the drawn necks that do it behind them; the "
                        "laws are normal and lognormal to first order (docs/method/necks.md). "
                        "Seed %zu; the same for any number of threads.",
                        (size_t)necks->seed);
    ts_buffer_add(page->out, "\n");
    sentence(&t);
    page->out->failed = page->out->failed || t.text.failed;
    ts_buffer_close(&t.text);
}
