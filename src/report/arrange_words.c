/* Which words does every account of arrangements use? */
#include "report/arrange_report.h"

#include <math.h>

void ts_arrange_kg(const ts_page *page, double kg, ts_buffer *out)
{
    ts_page_value_text(page, out, kg, TS_KIND_MASS, 5);
    ts_buffer_print(out, " %s", ts_kind_shown(TS_KIND_MASS, page->units)->name);
}

static const char *accessory(const ts_arrange_told *told, int8_t index)
{
    return index >= 0 ? told->problem->problem.accessories[index].name : "";
}

/* "generator + breather" */
static void add_shaft(const ts_arrange_told *told, ts_buffer *out, const ts_arranged_shaft *s)
{
    if (s->front < 0 && s->rear < 0) {
        ts_buffer_add(out, s->z_step > 0 ? "step" : "-");
        return;
    }
    ts_buffer_add(out, accessory(told, s->front));
    if (s->front >= 0 && s->rear >= 0)
        ts_buffer_add(out, " | ");
    ts_buffer_add(out, accessory(told, s->rear));
    if (s->z_step > 0)
        ts_buffer_add(out, " (step)");
}

/* One box from the clockwise end to the anticlockwise end, the input in brackets. */
static void add_order(const ts_arrange_told *told, const ts_arranged_box *box, size_t index,
                      ts_buffer *out)
{
    const ts_arranged_branch *b = box->branches;
    ts_buffer_print(out, "%s: ", told->problem->problem.boxes[index].name);
    for (uint32_t i = b[0].count; i-- > 0;) {
        add_shaft(told, out, &b[0].shafts[i]);
        ts_buffer_add(out, ", ");
    }
    ts_buffer_add(out, "[");
    add_shaft(told, out, &box->input);
    ts_buffer_add(out, "]");
    for (uint32_t i = 0; i < b[1].count; i++) {
        ts_buffer_add(out, ", ");
        add_shaft(told, out, &b[1].shafts[i]);
    }
}

void ts_arrange_order(const ts_arrange_told *told, const ts_arrangement *found, ts_buffer *out)
{
    bool any = false;
    for (size_t b = 0; b < told->problem->problem.box_count; b++) {
        if (!found->boxes[b].present)
            continue;
        ts_buffer_add(out, any ? "; " : "");
        add_order(told, &found->boxes[b], b, out);
        any = true;
    }
}

void ts_arrange_regret(const ts_arrange_told *told, const ts_page *page, double kg, ts_buffer *out)
{
    const double best = told->result->answers[0].mass;
    ts_buffer_add(out, "+");
    ts_arrange_kg(page, fmax(kg - best, 0.0), out);
    ts_buffer_add(out, ", ");
    ts_page_short(out, 100.0 * fmax(kg / best - 1.0, 0.0), 2);
    ts_buffer_add(out, " %");
}

void ts_arrange_verdict(const ts_arranged_verdict *v, ts_buffer *out)
{
    if (!v->read)
        ts_buffer_add(out, "could not be read again");
    else if (v->holds)
        ts_buffer_print(out, "holds, %zu warning%s", v->warnings, v->warnings == 1 ? "" : "s");
    else
        ts_buffer_print(out, "does not hold: %s%s%s",
                        v->first != NULL ? v->first : "not computable",
                        v->address != NULL ? ", at " : "", v->address != NULL ? v->address : "");
}

static uint32_t input_shaft(const ts_arrange_told *told, size_t box)
{
    const ts_train *train  = told->motion->train;
    const size_t    tapped = told->problem->tapped[box];
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].record == &told->drive->drive[tapped].box.input)
            return s;
    return 0;
}

double ts_arranged_speed(const ts_arrange_told *told, size_t box, uint32_t z, double turns)
{
    const uint32_t shaft = input_shaft(told, box);
    double         most  = 0.0;
    for (size_t c = 0; c < told->drive->condition_count; c++)
        most = fmax(most, told->motion->speed[c * told->motion->train->shaft_count + shaft]);
    return most * turns / (double)z;
}
