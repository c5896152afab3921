/* What stops when any one part fails, and which one or two failures may cause what? */
#include "report/effects_report.h"

#include "report/check_page.h"

enum { PART = 46, MODE = 21, PAIRS_MOST = 12 };

static const char marks[] = {[TS_GOES_ON] = '.', [TS_IN_DOUBT] = '?', [TS_STOPS] = 'x'};

/* ---- the matrix ------------------------------------------------------------------------------ */

static void legend(const ts_effects *effects, ts_page *page)
{
    const ts_train *train = effects->motion->train;
    ts_buffer       text;
    int             number = 0;

    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_add(&text, "x stops, ? in doubt, . goes on as before. Pads:");
    for (uint32_t p = 0; p < train->pad_count; p++) {
        if (train->pads[p].accessory < 0)
            continue;
        ts_buffer_print(&text, "%s %c %s", number == 0 ? "" : ",", 'A' + number,
                        train->pads[p].name);
        number++;
    }
    ts_buffer_add(&text,
                  ". In doubt: still driven, but behind a mesh without oil, or on a drive in whose "
                  "box the pieces lie of what broke. What is beyond a part that fails, or that "
                  "breaks for it, stops; all else goes on as fast and the same way. With the name "
                  "of a part the way to every pad is printed, with speeds, and what is seen.");
    ts_page_wrap_made(page, &text, 0, 0);
}

/* Returns how many. */
static int add_marks(const ts_effects *effects, const ts_outcome *outcome, ts_buffer *out)
{
    const ts_train *train = effects->motion->train;
    int             count = 0;

    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory >= 0) {
            ts_buffer_print(out, "%c", marks[outcome->pads[p].goes]);
            count++;
        }
    return count;
}

static void header(const ts_effects *effects, ts_page *page)
{
    const ts_train *train  = effects->motion->train;
    int             number = 0;

    ts_page_left(page, TS_TEXT("part"), PART);
    ts_page_left(page, TS_TEXT("failure"), MODE);
    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory >= 0)
            ts_buffer_print(page->out, "%c", 'A' + number++);
    ts_buffer_add(page->out, "  effect");
    ts_page_line_end(page);
}

static void row(const ts_effects *effects, uint32_t i, ts_page *page)
{
    const ts_failure failure = effects->failures[i];
    const bool       first   = i == 0 || effects->failures[i - 1].at != failure.at ||
                       ts_failing_of(effects->failures[i - 1].mode) != ts_failing_of(failure.mode);
    ts_buffer text;

    ts_buffer_open(&text, page->out->allocator);
    if (first)
        ts_effects_part(effects, ts_failing_of(failure.mode), failure.at, &text);
    ts_page_left(page, (ts_text){text.bytes, text.length}, PART - 1);
    ts_buffer_add(page->out, " ");
    ts_page_left(page, ts_text_of(ts_failure_name(failure.mode)), MODE);
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);

    const int used = PART + MODE + add_marks(effects, &effects->outcomes[i], page->out) + 2;
    ts_buffer_add(page->out, "  ");
    ts_buffer_open(&text, page->out->allocator);
    ts_effects_brief(effects, &effects->outcomes[i], &text);
    for (uint32_t k = 0; k < effects->outcomes[i].breakage_count; k++) {
        ts_buffer_add(&text, "; ");
        (void)ts_effects_breaks(effects, &effects->outcomes[i].breakages[k], &text);
    }
    ts_page_wrap_made(page, &text, used, used);
}

/* ---- causes ---------------------------------------------------------------------------------- */

static void add_failure(const ts_effects *effects, uint32_t i, ts_buffer *out)
{
    ts_effects_part(effects, ts_failing_of(effects->failures[i].mode), effects->failures[i].at,
                    out);
    ts_buffer_print(out, " %s", ts_failure_name(effects->failures[i].mode));
}

static void pairs(const ts_effects *effects, const ts_causes *causes, ts_page *page)
{
    const size_t count = causes->count - causes->singles;
    const size_t shown = page->all || count <= PAIRS_MOST ? count : PAIRS_MOST;
    ts_buffer    text;

    for (size_t i = 0; i < shown; i++) {
        const ts_cause cause = causes->items[causes->singles + i];
        ts_buffer_open(&text, page->out->allocator);
        add_failure(effects, cause.first, &text);
        ts_buffer_add(&text, " + ");
        add_failure(effects, cause.second, &text);
        ts_buffer_add(page->out, "    ");
        ts_page_wrap_made(page, &text, 6, 4);
    }
    if (shown < count)
        ts_buffer_print(page->out, "    and %zu further pairs (--all)\n", count - shown);
}

/* Singles of one part stand together: "generator: seized, neck broken". */
static void singles(const ts_effects *effects, const ts_causes *causes, ts_buffer *text)
{
    for (size_t i = 0; i < causes->singles; i++) {
        const ts_failure one = effects->failures[causes->items[i].first];
        if (i > 0) {
            const ts_failure before = effects->failures[causes->items[i - 1].first];
            if (before.at == one.at && ts_failing_of(before.mode) == ts_failing_of(one.mode)) {
                ts_buffer_print(text, ", %s", ts_failure_name(one.mode));
                continue;
            }
            ts_buffer_add(text, "; ");
        }
        ts_effects_part(effects, ts_failing_of(one.mode), one.at, text);
        ts_buffer_print(text, ": %s", ts_failure_name(one.mode));
    }
}

static void causes_of(const ts_effects *effects, uint32_t e, ts_page *page)
{
    const ts_causes *causes = &effects->causes[e];
    ts_buffer        text;

    const size_t pair_count = causes->count - causes->singles;

    ts_buffer_add(page->out, "  ");
    ts_buffer_open(&text, page->out->allocator);
    ts_effects_effect(&effects->effects[e], &text);
    ts_buffer_print(&text, " by %zu single failure%s and %zu pair%s", causes->singles,
                    causes->singles == 1 ? "" : "s", pair_count, pair_count == 1 ? "" : "s");
    if (causes->singles > 0)
        ts_buffer_add(&text, ": ");
    singles(effects, causes, &text);
    ts_page_wrap_made(page, &text, 4, 2);
    pairs(effects, causes, page);
}

void ts_effects_page(const ts_effects *effects, const ts_answer *answer, ts_page *page)
{
    ts_answer_title(answer, page);
    ts_page_heading(page, "What stops when one part fails");
    legend(effects, page);
    header(effects, page);
    for (uint32_t i = 0; i < effects->failure_count; i++)
        row(effects, i, page);
    ts_page_heading(page, "What may cause it: all single failures, all pairs of which neither does "
                          "alone; a doubt counts as a stop");
    for (uint32_t e = 0; e < effects->effect_count; e++)
        causes_of(effects, e, page);
    ts_effects_lacks_page(effects, page);
    ts_effects_blind_page(effects, page);
    ts_evidence_page(answer, page);
}
