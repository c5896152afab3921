/* How much does every spool give or take, and do the balances close? */
#include "report/check_page.h"

#include <math.h>

#define LABEL_WIDTH 34
#define LEAST_WIDTH 13

typedef double (*spool_number)(const ts_spool_load *load);

static double taken(const ts_spool_load *load)
{
    return load->P;
}
static double pads(const ts_spool_load *load)
{
    return load->P_pads + load->P_driving;
}
static double driving(const ts_spool_load *load)
{
    return load->P_driving;
}
static double lost(const ts_spool_load *load)
{
    return load->P_lost;
}

static const struct {
    const char  *label;
    spool_number number;
} rows[] = {
    {"  taken from the spool (-: given to it)", taken},
    {"  absorbed at its pads", pads},
    {"  put in by what drives", driving},
    {"  lost in its meshes", lost},
};

static int block_of(const ts_page *page, int count)
{
    int fit = (page->columns - LABEL_WIDTH - 6) / LEAST_WIDTH;
    fit     = fit < 1 ? 1 : (fit > count ? count : fit);
    return (count + (count + fit - 1) / fit - 1) / ((count + fit - 1) / fit);
}

static void spool_rows(const ts_answer *answer, ts_page *page, uint32_t spool, int from, int to)
{
    ts_buffer_print(page->out, "%s spool\n", answer->drive->spools[spool].name);
    for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++) {
        ts_page_left(page, ts_text_of(rows[r].label), LABEL_WIDTH + 6);
        for (int c = from; c < to; c++) {
            const ts_spool_load *load =
                &answer->power->spool[(size_t)c * answer->drive->spool_count + spool];
            ts_page_value(page, rows[r].number(load), TS_KIND_POWER, 4, LEAST_WIDTH);
        }
        ts_page_line_end(page);
    }
}

static bool tapped(const ts_answer *answer, uint32_t spool)
{
    for (size_t d = 0; d < answer->drive->drive_count; d++)
        if (answer->drive->drive[d].spool == (int32_t)spool)
            return true;
    return false;
}

static void block(const ts_answer *answer, ts_page *page, int from, int to)
{
    ts_page_tone(page, TS_TONE_FAINT);
    ts_page_left(page, TS_TEXT(""), LABEL_WIDTH + 6);
    for (int c = from; c < to; c++) {
        ts_buffer_add(page->out, " ");
        ts_page_right(page, ts_text_of(answer->drive->conditions[c].name), LEAST_WIDTH - 1);
    }
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
    for (uint32_t s = 0; s < answer->drive->spool_count; s++)
        if (tapped(answer, s))
            spool_rows(answer, page, s, from, to);
}

/* The largest residuals of power and torque over all conditions. */
static void balances(const ts_answer *answer, ts_page *page)
{
    double       power = 0.0, torque = 0.0;
    const size_t spools = answer->drive->condition_count * answer->drive->spool_count;
    const size_t shafts = answer->drive->condition_count * answer->train->shaft_count;
    for (size_t i = 0; i < spools; i++)
        power = fmax(power, answer->power->spool[i].imbalance);
    for (size_t i = 0; i < shafts; i++)
        torque = fmax(torque, fabs(answer->power->shaft_imbalance[i]));
    ts_buffer says;
    ts_buffer_open(&says, page->out->allocator);
    ts_buffer_add(&says, "Balances: taken = absorbed - put in + lost, to ");
    ts_buffer_significant(&says, power, 2);
    ts_buffer_add(&says, "; torques on every shaft, to ");
    ts_buffer_significant(&says, torque, 2);
    ts_buffer_add(&says, " (relative; allowed 1e-12).");
    ts_page_wrap_made(page, &says, 2, 0);
}

void ts_power_table(const ts_answer *answer, ts_page *page)
{
    const int count = (int)answer->drive->condition_count, each = block_of(page, count);
    ts_page_heading(page, page->units == TS_UNITS_US ? "Power, hp" : "Power, kW");
    for (int from = 0; from < count; from += each)
        block(answer, page, from, from + each < count ? from + each : count);
    balances(answer, page);
}
