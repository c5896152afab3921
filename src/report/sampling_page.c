/* What becomes of a drive whose values vary, on a page? */
#include "report/sampling_report.h"

#include "report/register.h"

#include <math.h>
#include <string.h>

#define DIGITS      4
#define NUMBER      11  /* columns of a number */
#define DRIFT_MOST  4.0 /* standard errors between both halves before it is told */
#define MOVERS_MOST 4

/* ---- numbers --------------------------------------------------------------------------------- */

static void add_value(const ts_page *page, ts_buffer *out, double si, const ts_sampled_column *of)
{
    const ts_unit *unit = ts_unit_named_any(ts_text_of(of->unit));

    if (!isfinite(si))
        ts_buffer_add(out, "?");
    else if (of->margin)
        ts_page_short(out, 100.0 * si, DIGITS);
    else if (unit == NULL || strcmp(of->unit, "1") == 0)
        ts_page_short(out, si, DIGITS);
    else
        ts_page_short(out, ts_from_si(si, ts_kind_shown(unit->kind, page->units)), DIGITS);
}

/* Nothing behind a plain number. */
static const char *unit_shown(const ts_page *page, const ts_sampled_column *of)
{
    const ts_unit *unit = ts_unit_named_any(ts_text_of(of->unit));

    if (of->margin)
        return "%";
    if (unit == NULL || strcmp(of->unit, "1") == 0)
        return unit == NULL ? of->unit : "";
    return ts_kind_shown(unit->kind, page->units)->name;
}

static void number(ts_page *page, double si, const ts_sampled_column *of)
{
    ts_buffer made;

    ts_buffer_open(&made, page->out->allocator);
    add_value(page, &made, si, of);
    ts_page_right(page, (ts_text){made.bytes, made.length}, NUMBER);
    page->out->failed = page->out->failed || made.failed;
    ts_buffer_close(&made);
}

static void add_percent(ts_buffer *out, double share)
{
    ts_page_short(out, 100.0 * share, 3);
    ts_buffer_add(out, " %");
}

/* "3.8 % (2.8 to 5.2 %)" */
static void add_chance(ts_buffer *out, ts_chance of)
{
    add_percent(out, of.share);
    ts_buffer_add(out, " (");
    ts_page_short(out, 100.0 * of.low, 3);
    ts_buffer_add(out, " to ");
    add_percent(out, of.high);
    ts_buffer_add(out, ")");
}

static void sentence(ts_page *page, ts_buffer *made, int indent)
{
    ts_buffer_fill(page->out, ' ', (size_t)indent);
    ts_page_wrap_made(page, made, indent + 2, indent);
}

/* ---- tables ---------------------------------------------------------------------------------- */

static int name_width(const ts_page *page)
{
    return page->columns - 6 * NUMBER - 8;
}

/* A name that leaves no room for numbers stands on a line of its own. */
static void name(ts_page *page, const ts_sampled_column *of)
{
    const ts_text text = ts_text_of(of->name);

    if (ts_text_columns(text) >= (size_t)name_width(page)) {
        ts_page_spread(page, text, 2, 0);
        ts_page_line_end(page);
        ts_buffer_fill(page->out, ' ', (size_t)name_width(page));
    } else {
        ts_page_left(page, text, name_width(page));
    }
    ts_page_left(page, ts_text_of(unit_shown(page, of)), 8);
}

static void heads(ts_page *page, const char *what, const char *const *titles)
{
    ts_page_tone(page, TS_TONE_FAINT);
    ts_page_left(page, ts_text_of(what), name_width(page) + 8);
    for (int i = 0; i < 6; i++)
        ts_page_right(page, ts_text_of(titles[i]), NUMBER);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
}

static void varied(ts_page *page, const ts_sample_answer *answer)
{
    static const char *const titles[] = {"stands at", "mean", "deviation", "least", "half", "most"};

    ts_page_heading(page, "What varied");
    heads(page, "value", titles);
    for (size_t k = 0; k < answer->input_count; k++) {
        const ts_sampled_column *of = &answer->inputs[k];
        name(page, of);
        number(page, answer->asis[k], of);
        number(page, of->estimate.mean, of);
        number(page, of->estimate.deviation, of);
        number(page, of->estimate.least, of);
        number(page, of->estimate.quantile[2], of);
        number(page, of->estimate.most, of);
        ts_page_line_end(page);
    }
}

/* Does the number stay what it is in all samples? */
static bool is_still(const ts_sampled_column *of)
{
    return of->estimate.count > 0 &&
           !(of->estimate.most - of->estimate.least > 1e-9 * fabs(of->estimate.most));
}

static void watched(ts_page *page, const ts_sample_answer *answer)
{
    static const char *const titles[] = {"mean", "deviation", "5 %", "half", "95 %", "below 0"};
    size_t                   still    = 0;

    ts_page_heading(page, answer->design == TS_DESIGN_RANDOM || answer->shares != NULL
                              ? "What was watched"
                              : "What was watched (means and shares are over the steps)");
    heads(page, "number", titles);
    for (size_t k = 0; k < answer->output_count; k++) {
        const ts_sampled_column *of = &answer->outputs[k];
        if (is_still(of) && !page->all) {
            still++;
            continue;
        }
        ts_buffer share;
        ts_buffer_open(&share, page->out->allocator);
        name(page, of);
        number(page, of->estimate.mean, of);
        number(page, of->estimate.deviation, of);
        number(page, of->estimate.quantile[1], of);
        number(page, of->estimate.quantile[2], of);
        number(page, of->estimate.quantile[3], of);
        if (of->margin && of->estimate.count > 0)
            add_percent(&share, (double)of->estimate.below / (double)of->estimate.count);
        ts_page_right(page, (ts_text){share.bytes, share.length}, NUMBER);
        page->out->failed = page->out->failed || share.failed;
        ts_buffer_close(&share);
        ts_page_line_end(page);
    }
    if (still > 0) {
        ts_buffer_print(page->out, "%zu number%s stayed as %s; --all shows %s.\n", still,
                        still == 1 ? "" : "s", still == 1 ? "it is" : "they are",
                        still == 1 ? "it" : "them");
    }
}

/* ---- what moves what ------------------------------------------------------------------------- */

/* How much input `k` moves the output, for the order; what it is depends on the method. */
static double weight(const ts_sample_answer *answer, size_t at)
{
    double found = 0.0;

    if (answer->shares != NULL)
        found = answer->shares[at].whole > 2.0 * answer->shares[at].whole_error
                    ? answer->shares[at].whole
                    : 0.0;
    else if (answer->travels != NULL)
        found = answer->travels[at].most - answer->travels[at].least;
    else if (answer->ranks != NULL && /* beyond three standard errors of none */
             (answer->design != TS_DESIGN_RANDOM ||
              fabs(answer->ranks[at]) * sqrt((double)answer->count) > 3.0))
        found = fabs(answer->ranks[at]);
    return isfinite(found) ? found : 0.0;
}

static void add_mover(const ts_page *page, const ts_sample_answer *answer, size_t output, size_t k,
                      ts_buffer *made)
{
    const size_t             at = output * answer->input_count + k;
    const ts_sampled_column *of = &answer->outputs[output];

    ts_buffer_print(made, "%s ", answer->inputs[k].name);
    if (answer->shares != NULL) {
        add_percent(made, answer->shares[at].alone);
        ts_buffer_add(made, " alone, ");
        add_percent(made, answer->shares[at].whole);
        ts_buffer_add(made, " with others (standard errors ");
        add_percent(made, answer->shares[at].alone_error);
        ts_buffer_add(made, " and ");
        add_percent(made, answer->shares[at].whole_error);
        ts_buffer_add(made, ")");
    } else if (answer->travels != NULL) {
        add_value(page, made, answer->travels[at].least, of);
        ts_buffer_add(made, " to ");
        add_value(page, made, answer->travels[at].most, of);
        ts_buffer_print(made, "%s%s", *unit_shown(page, of) != '\0' ? " " : "",
                        unit_shown(page, of));
    } else {
        ts_buffer_add(made, answer->ranks[at] < 0.0 ? "-" : "+");
        ts_buffer_fixed(made, fabs(answer->ranks[at]), 2);
    }
}

/* The strongest that is weaker than the one before, or comes behind it in the file. */
static size_t next_mover(const ts_sample_answer *answer, size_t output, const bool *told)
{
    size_t best = SIZE_MAX;

    for (size_t k = 0; k < answer->input_count; k++) {
        const size_t at = output * answer->input_count + k;
        if (!told[k] && weight(answer, at) > 0.0 &&
            (best == SIZE_MAX ||
             weight(answer, at) > weight(answer, output * answer->input_count + best)))
            best = k;
    }
    return best;
}

static void movers(ts_page *page, const ts_sample_answer *answer)
{
    ts_page_heading(page, answer->shares != NULL    ? "Which share of the variance is whose"
                          : answer->travels != NULL ? "How far each value moves it alone"
                                                    : "What goes with what (rank correlation)");
    for (size_t o = 0; o < answer->output_count; o++) {
        bool      told[TS_SAMPLE_INPUTS_MOST] = {false};
        ts_buffer made;
        if (is_still(&answer->outputs[o]))
            continue;
        ts_buffer_open(&made, page->out->allocator);
        ts_buffer_print(&made, "%s: ", answer->outputs[o].name);
        size_t count = 0;
        for (size_t k; count < MOVERS_MOST && (k = next_mover(answer, o, told)) != SIZE_MAX;
             count++) {
            ts_buffer_add(&made, count > 0 ? "; " : "");
            add_mover(page, answer, o, k, &made);
            told[k] = true;
        }
        ts_buffer_add(&made, count == 0 ? "nothing beyond chance" : "");
        sentence(page, &made, 0);
    }
}

/* ---- chances --------------------------------------------------------------------------------- */

static bool tells_chances(const ts_sample_answer *answer)
{
    return answer->design == TS_DESIGN_RANDOM; /* rows of other designs depend on each other */
}

static void counts(ts_page *page, const ts_sample_answer *answer)
{
    ts_buffer made;

    ts_buffer_open(&made, page->out->allocator);
    ts_buffer_print(&made, "%zu of %zu samples (%s, seed %zu): %zu hold, %zu do not, ",
                    (size_t)answer->count, (size_t)answer->due, answer->method,
                    (size_t)answer->seed, (size_t)answer->holds, (size_t)answer->fails);
    ts_buffer_print(&made, "%zu cannot be computed, %zu are refused as drive files.",
                    (size_t)answer->unknown, (size_t)answer->refused);
    if (tells_chances(answer) && answer->count > 0) {
        ts_buffer_add(&made, " The chance to hold is ");
        add_chance(&made, answer->hold);
        ts_buffer_add(&made, "; bounds are 95 % sure.");
    }
    if (answer->count < answer->due)
        ts_buffer_add(&made, " NOT ALL SAMPLES ARE THERE: what follows is of those that are.");
    sentence(page, &made, 0);
}

static void findings(ts_page *page, const ts_sample_answer *answer)
{
    ts_page_heading(page, "Findings, and how often they are open");
    if (answer->finding_count == 0)
        ts_buffer_add(page->out, "None, in any sample.\n");
    for (size_t i = 0; i < answer->finding_count; i++) {
        const ts_sampled_chance *one = &answer->findings[i];
        ts_buffer                made;
        ts_buffer_open(&made, page->out->allocator);
        if (tells_chances(answer))
            add_chance(&made, one->chance);
        else
            ts_buffer_print(&made, "%zu of %zu", (size_t)one->hits, (size_t)answer->count);
        ts_buffer_print(&made, "  %s %s: %s", one->level, one->rule, one->address);
        sentence(page, &made, 0);
    }
}

/* Both halves of a settled study have the same mean, but for chance. */
static void settled(ts_page *page, const ts_sample_answer *answer)
{
    for (size_t o = 0; tells_chances(answer) && o < answer->output_count; o++) {
        const ts_estimate *of    = &answer->outputs[o].estimate;
        const double       apart = fabs(of->half[0] - of->half[1]);
        ts_buffer          made;
        if (!(apart > DRIFT_MOST * 2.0 * of->error) || is_still(&answer->outputs[o]))
            continue;
        ts_buffer_open(&made, page->out->allocator);
        ts_buffer_print(&made,
                        "%s has not settled: the means of both halves of its samples differ by "
                        "more than chance explains.",
                        answer->outputs[o].name);
        sentence(page, &made, 0);
    }
}

static void head_lines(const ts_sampling_head *head, const ts_sample_answer *answer, ts_page *page)
{
    ts_buffer made;

    ts_page_tone(page, TS_TONE_STRONG);
    ts_page_spread(page, ts_text_of(answer->title), 2, 0);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
    ts_buffer_open(&made, page->out->allocator);
    ts_buffer_print(&made, "%s   SHA-256 %.*s   of %s   SHA-256 %.*s   towershaft %s", head->study,
                    12, head->study_hash, head->drive, 12, head->drive_hash, head->version);
    sentence(page, &made, 0);
    ts_page_wrap(page, head->caution, 0, 0);
}

void ts_sampling_page(const ts_sampling_head *head, const ts_sample_answer *answer, ts_page *page)
{
    head_lines(head, answer, page);
    ts_page_heading(page, "Samples");
    counts(page, answer);
    settled(page, answer);
    varied(page, answer);
    watched(page, answer);
    if (answer->ranks != NULL || answer->shares != NULL || answer->travels != NULL)
        movers(page, answer);
    findings(page, answer);
    if (head->assumed_count > 0) {
        ts_page_heading(page, "Taken for granted");
        ts_register_page(page, head->assumed, head->assumed_count);
    }
}
