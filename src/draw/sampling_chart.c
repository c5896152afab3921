/* draw/sampling_chart.c: how likely is what, and what moves each number? */
#include "draw/sampling_chart.h"

#include "draw/chart_key.h"
#include "draw/lettering.h"
#include "draw/sheet.h"

#include <math.h>
#include <string.h>

enum { ROWS_MOST = 6, CHANCES_MOST = 8, MOVERS_MOST = 5 };

/* px */
static const double title = 58.0, chance_high = 20.0, row_high = 196.0, row_head = 40.0,
                    row_foot = 34.0, mover_wide = 210.0, gap = 34.0;

static const char key_words[] =
    "Upper bars: in how many samples a finding is open; the line is where the chance of "
    "random samples lies, 95 % sure. Below, left: how the samples of a number spread; hatched is "
    "below 0, where it does not "
    "hold. Middle: what moves it, the strongest first. Right: samples over the value that moves it "
    "most.";

typedef struct chart {
    ts_scene               *scene;
    const ts_sample_answer *answer;
    size_t                  rows[ROWS_MOST]; /* outputs */
    size_t                  count, chances;
} chart;

/* ---- which rows ------------------------------------------------------------------------------ */

static bool is_still(const ts_sampled_column *of)
{
    return !(of->estimate.most - of->estimate.least > 1e-9 * fabs(of->estimate.most));
}

/* Numbers of another kind first, as they were asked for; then margins that sometimes hold and
 * sometimes do not, those that always do, the least first, and those that never do. */
static double rank_of(const ts_sampled_column *of)
{
    const ts_estimate *e = &of->estimate;

    if (!of->margin)
        return (double)-INFINITY;
    if (e->below > 0 && e->below < e->count)
        return -(double)e->below / (double)e->count;
    return e->below > 0 ? (double)INFINITY : fmax(e->quantile[1], 0.0);
}

static void choose_rows(chart *it)
{
    for (size_t o = 0; o < it->answer->output_count; o++) {
        const ts_sampled_column *of = &it->answer->outputs[o];
        size_t                   at = it->count;
        if (of->estimate.count < 2 || is_still(of))
            continue;
        while (at > 0 && rank_of(&it->answer->outputs[it->rows[at - 1]]) > rank_of(of))
            at--;
        if (at == ROWS_MOST)
            continue;
        const size_t last = it->count < ROWS_MOST ? it->count++ : ROWS_MOST - 1;
        memmove(it->rows + at + 1, it->rows + at, (last - at) * sizeof it->rows[0]);
        it->rows[at] = o;
    }
    it->chances =
        it->answer->finding_count < CHANCES_MOST ? it->answer->finding_count : (size_t)CHANCES_MOST;
}

/* ---- numbers --------------------------------------------------------------------------------- */

static double shown(const chart *it, const ts_sampled_column *of, double si)
{
    const ts_unit *unit = ts_unit_named_any(ts_text_of(of->unit));

    if (of->margin)
        return 100.0 * si;
    return unit != NULL ? ts_scene_in_unit(it->scene, si, unit->kind) : si;
}

static const char *unit_of(const chart *it, const ts_sampled_column *of)
{
    const ts_unit *unit = ts_unit_named_any(ts_text_of(of->unit));

    if (of->margin)
        return "%";
    return unit == NULL || unit->kind == TS_KIND_NUMBER ? "" : ts_scene_unit(it->scene, unit->kind);
}

/* Digits that tell both ends of an axis apart. */
static void add_digits(ts_buffer *line, double value, double span)
{
    const int digits = span > 0.0 ? (int)fmax(0.0, fmin(6.0, 2.0 - floor(log10(span)))) : 0;

    ts_add_number(line, value, digits > 0 ? digits - 1 : 0);
}

static void write_small(const chart *it, ts_point at, ts_anchor anchor, double width)
{
    const ts_lettering how = {
        .size = TS_LOOK_TYPE_PX_TICK, .anchor = anchor, .colour = TS_COLOUR_INK2, .width = width};
    ts_write(&it->scene->canvas, at, ts_scene_kept(it->scene), &how);
}

/* ---- chances --------------------------------------------------------------------------------- */

static void draw_chance(const chart *it, const ts_sampled_chance *one, ts_area area)
{
    ts_canvas         *canvas = &it->scene->canvas;
    const double       label = 0.5 * area.w, wide = area.w - label - 110.0;
    const double       middle = area.y + 0.5 * area.h, left = area.x + label;
    const bool         refuse = strcmp(one->level, "refuse") == 0;
    const ts_lettering name   = {
          .size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK, .width = label - 14.0};

    ts_buffer *line = ts_canvas_line(canvas);
    ts_buffer_print(line, "%s %s  ", one->level, one->rule);
    ts_add_clean(line, one->address);
    ts_write(canvas, (ts_point){area.x, middle + 4.0}, ts_scene_kept(it->scene), &name);
    ts_path_area(canvas, (ts_area){left, middle - 5.0, wide * one->chance.share, 10.0});
    ts_fill(canvas, refuse ? TS_COLOUR_ST_REFUSE : TS_COLOUR_ST_WARN);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_path_area(canvas, (ts_area){left, middle - 5.0, wide, 10.0});
    ts_stroke(canvas);
    const bool drawn = it->answer->design == TS_DESIGN_RANDOM;
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    if (drawn)
        ts_draw_line(canvas, (ts_point){left + wide * one->chance.low, middle},
                     (ts_point){left + wide * one->chance.high, middle});
    line = ts_canvas_line(canvas);
    add_digits(line, 100.0 * one->chance.share, 100.0 * one->chance.share);
    ts_buffer_add(line, " %");
    write_small(it, (ts_point){area.x + area.w, middle + 4.0}, TS_ANCHOR_RIGHT, 0.0);
}

/* ---- one number ------------------------------------------------------------------------------ */

static void draw_frame(const chart *it, ts_area area)
{
    ts_use_pen(&it->scene->canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_path_area(&it->scene->canvas, area);
    ts_stroke(&it->scene->canvas);
}

/* Both ends of an axis under it, and its unit between them. */
static void write_ends(const chart *it, ts_area area, const ts_sampled_column *of)
{
    ts_canvas   *canvas = &it->scene->canvas;
    const double low = shown(it, of, of->estimate.least), high = shown(it, of, of->estimate.most);
    const double y = area.y + area.h + 14.0;

    add_digits(ts_canvas_line(canvas), low, high - low);
    write_small(it, (ts_point){area.x, y}, TS_ANCHOR_LEFT, 0.0);
    add_digits(ts_canvas_line(canvas), high, high - low);
    write_small(it, (ts_point){area.x + area.w, y}, TS_ANCHOR_RIGHT, 0.0);
    ts_buffer_add(ts_canvas_line(canvas), unit_of(it, of));
    write_small(it, (ts_point){area.x + 0.5 * area.w, y}, TS_ANCHOR_MIDDLE, 0.0);
}

/* What lies below 0, hatched up to the limit. */
static void draw_limit(const chart *it, const ts_estimate *e, ts_area area)
{
    ts_canvas   *canvas = &it->scene->canvas;
    const double share  = e->most > 0.0 ? -e->least / (e->most - e->least) : 1.0;
    const double x      = area.x + area.w * share;

    ts_path_area(canvas, (ts_area){area.x, area.y, area.w * share, area.h});
    ts_hatch(canvas, TS_COLOUR_RULE);
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    if (share < 1.0)
        ts_draw_line(canvas, (ts_point){x, area.y - 4.0}, (ts_point){x, area.y + area.h});
}

static void draw_spread(const chart *it, const ts_sampled_column *of, ts_area area)
{
    ts_canvas   *canvas = &it->scene->canvas;
    const double width  = area.w / TS_SAMPLE_BARS;
    uint64_t     most   = 1;

    for (int b = 0; b < TS_SAMPLE_BARS; b++)
        most = of->bars[b] > most ? of->bars[b] : most;
    if (of->margin && of->estimate.least < 0.0)
        draw_limit(it, &of->estimate, area);
    for (int b = 0; b < TS_SAMPLE_BARS; b++) {
        const double high = (area.h - 6.0) * (double)of->bars[b] / (double)most;
        ts_path_area(
            canvas, (ts_area){area.x + b * width + 0.5, area.y + area.h - high, width - 1.0, high});
        ts_fill(canvas, TS_COLOUR_POWER);
    }
    draw_frame(it, area);
    write_ends(it, area, of);
}

/* From where to where, -1 .. 1, input `k` moves the number, whatever the method tells. */
static void bar_of(const chart *it, size_t output, size_t k, double *from, double *to)
{
    const ts_sample_answer *answer = it->answer;
    const ts_estimate      *of     = &answer->outputs[output].estimate;
    const size_t            at     = output * answer->input_count + k;

    *from = 0.0;
    *to   = 0.0;
    if (answer->ranks != NULL && isfinite(answer->ranks[at])) {
        *to = answer->ranks[at];
    } else if (answer->shares != NULL && isfinite(answer->shares[at].whole)) {
        *to = fmin(fmax(answer->shares[at].whole, 0.0), 1.0);
    } else if (answer->travels != NULL && isfinite(answer->travels[at].least)) {
        const double nominal = answer->nominal[output];
        const double reach   = fmax(of->most - nominal, nominal - of->least);
        *from                = reach > 0.0 ? (answer->travels[at].least - nominal) / reach : 0.0;
        *to                  = reach > 0.0 ? (answer->travels[at].most - nominal) / reach : 0.0;
    }
}

static double strength(const chart *it, size_t output, size_t k)
{
    double from, to;

    bar_of(it, output, k, &from, &to);
    return fabs(to - from);
}

static void draw_mover(const chart *it, size_t output, size_t k, ts_area area)
{
    ts_canvas   *canvas = &it->scene->canvas;
    const bool   both   = it->answer->shares == NULL;
    const double left = area.x + mover_wide, wide = area.w - mover_wide;
    const double zero = both ? left + 0.5 * wide : left, unit = both ? 0.5 * wide : wide;
    const double middle = area.y + 0.5 * area.h;
    double       from, to;

    bar_of(it, output, k, &from, &to);
    ts_add_clean(ts_canvas_line(canvas), it->answer->inputs[k].name);
    write_small(it, (ts_point){left - 8.0, middle + 4.0}, TS_ANCHOR_RIGHT, mover_wide - 10.0);
    ts_path_area(canvas, (ts_area){zero + unit * fmin(from, to), middle - 6.0,
                                   unit * fabs(to - from), 12.0});
    ts_fill(canvas, TS_COLOUR_INK3);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
    ts_draw_line(canvas, (ts_point){zero, area.y}, (ts_point){zero, area.y + area.h});
}

static void draw_movers(const chart *it, size_t output, ts_area area)
{
    const size_t inputs                      = it->answer->input_count;
    const size_t rows                        = inputs < MOVERS_MOST ? inputs : (size_t)MOVERS_MOST;
    const double high                        = area.h / (double)(rows > 0 ? rows : 1);
    bool         told[TS_SAMPLE_INPUTS_MOST] = {false};

    for (size_t r = 0; r < rows; r++) {
        size_t best = SIZE_MAX;
        for (size_t k = 0; k < inputs; k++)
            if (!told[k] &&
                (best == SIZE_MAX || strength(it, output, k) > strength(it, output, best)))
                best = k;
        told[best] = true;
        draw_mover(it, output, best, (ts_area){area.x, area.y + high * (double)r, area.w, high});
    }
    ts_buffer_add(ts_canvas_line(&it->scene->canvas),
                  it->answer->ranks != NULL    ? "rank correlation, \xE2\x88\x92"
                                                 "1 to 1"
                  : it->answer->shares != NULL ? "share of the variance, with others, 0 to 1"
                                               : "alone, from what stands in the drive");
    write_small(it, (ts_point){area.x + area.w, area.y + area.h + 14.0}, TS_ANCHOR_RIGHT,
                area.w - 4.0);
}

static void draw_points(const chart *it, size_t output, ts_area area)
{
    const ts_sampled_points *points = &it->answer->points[output];
    const ts_estimate       *y      = &it->answer->outputs[output].estimate;

    draw_frame(it, area);
    if (points->input == SIZE_MAX)
        return;
    const ts_sampled_column *across = &it->answer->inputs[points->input];
    const ts_estimate       *x      = &across->estimate;
    for (size_t i = 0; i < points->count; i++) {
        const ts_point at = {area.x + area.w * (points->x[i] - x->least) / (x->most - x->least),
                             area.y + area.h * (y->most - points->y[i]) / (y->most - y->least)};
        ts_draw_dot(&it->scene->canvas, at, 1.4, TS_COLOUR_INK2);
    }
    write_ends(it, area, across);
    ts_buffer *line = ts_canvas_line(&it->scene->canvas);
    ts_buffer_add(line, "over ");
    ts_add_clean(line, across->name);
    write_small(it, (ts_point){area.x + area.w, area.y - 7.0}, TS_ANCHOR_RIGHT, area.w);
}

static void write_name(const chart *it, const ts_sampled_column *of, ts_point at, double width)
{
    ts_scene          *scene = it->scene;
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    const ts_lettering name  = {.bold = true, .colour = TS_COLOUR_INK, .width = width};

    ts_add_clean(line, of->name);
    if (of->margin) {
        ts_buffer_add(line, ", below 0 in ");
        ts_add_number(line, 100.0 * (double)of->estimate.below / (double)of->estimate.count, 1);
        ts_buffer_add(line, " % of the samples");
    }
    if (of->estimate.missing > 0)
        ts_buffer_print(line, ", not computable in %zu", of->estimate.missing);
    ts_write(&scene->canvas, at, ts_scene_kept(scene), &name);
}

static void draw_row(const chart *it, size_t row, double top)
{
    ts_scene                *scene  = it->scene;
    const size_t             output = it->rows[row];
    const ts_sampled_column *of     = &it->answer->outputs[output];
    const ts_area            field  = {scene->field.x + 12.0, top, scene->field.w - 24.0, row_high};
    const double             high = row_high - row_head - row_foot, y = top + row_head;
    const double             spread = 0.3 * field.w, dots = 0.22 * field.w;

    write_name(it, of, (ts_point){field.x, top + 24.0}, field.w - dots - gap);
    draw_spread(it, of, (ts_area){field.x, y, spread, high});
    draw_movers(it, output,
                (ts_area){field.x + spread + gap, y, field.w - spread - dots - 2.0 * gap, high});
    draw_points(it, output, (ts_area){field.x + field.w - dots, y, dots, high});
    ts_note_area(&scene->canvas.places, TS_PLACE_ROW, (uint32_t)row, field);
}

static void write_title(const chart *it)
{
    ts_scene               *scene = it->scene;
    const ts_sample_answer *a     = it->answer;
    const ts_lettering      lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                     .bold   = true,
                                     .colour = TS_COLOUR_INK,
                                     .width  = scene->field.w - 24.0};
    ts_buffer              *line  = ts_canvas_line(&scene->canvas);

    ts_buffer_print(line, "%zu of %zu samples, %s: %zu hold", (size_t)a->count, (size_t)a->due,
                    a->method, (size_t)a->holds);
    if (a->unknown + a->refused > 0)
        ts_buffer_print(line, ", %zu cannot be computed", (size_t)(a->unknown + a->refused));
    ts_write(&scene->canvas, (ts_point){scene->field.x + 12.0, scene->field.y + 24.0},
             ts_scene_kept(scene), &lead);
}

ts_status ts_draw_samples(ts_scene *scene)
{
    chart it = {.scene = scene, .answer = scene->subject->samples};

    choose_rows(&it);
    const double key    = ts_chart_key_height(scene, key_words);
    const double bars   = (double)it.chances * chance_high + (it.chances > 0 ? 16.0 : 0.0);
    const double wanted = title + bars + (double)it.count * row_high + key + 16.0;
    const double high   = ts_sheet_height(scene, wanted);
    ts_sheet_divide(scene, high);
    const ts_status status = ts_canvas_sheet(&scene->canvas, high, scene->subject->title);
    if (status != TS_OK)
        return status;
    write_title(&it);
    const double top = scene->field.y + title;
    for (size_t i = 0; i < it.chances; i++)
        draw_chance(&it, &it.answer->findings[i],
                    (ts_area){scene->field.x + 12.0, top + (double)i * chance_high,
                              scene->field.w - 24.0, chance_high});
    for (size_t i = 0; i < it.count; i++)
        draw_row(&it, i, top + bars + (double)i * row_high);
    ts_chart_key_write(scene, key_words, key);
    ts_sheet_draw(scene, "Samples", "chances, spread, what moves what");
    return TS_OK;
}
