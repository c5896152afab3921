/* Which arrangement was found, and why is nothing lighter? */
#include "report/arrange_proof.h"
#include "report/short_list.h"

#include "report/register.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define INDENT 4

typedef struct table {
    const ts_arrange_told *told;
    ts_page               *page;
    const ts_arranged_box *box;
    size_t                 index; /* of the box */
} table;

/* ---- words ----------------------------------------------------------------------------------- */

static void line(ts_page *page, const char *text)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap(page, text, INDENT, INDENT);
}

static const char *accessory(const table *t, int8_t index)
{
    return index >= 0 ? t->told->problem->problem.accessories[index].name : "";
}

static void cell(ts_page *page, const char *text, int width, bool right)
{
    if (right)
        ts_page_right(page, ts_text_of(text), width);
    else
        ts_page_left(page, ts_text_of(text), width);
    ts_buffer_add(page->out, "  ");
}

static void cell_value(ts_page *page, double si, ts_kind kind, int width)
{
    ts_page_value(page, si, kind, 5, width);
    ts_buffer_add(page->out, "  ");
}

/* ---- one box --------------------------------------------------------------------------------- */

static void head(const table *t)
{
    char face[32], speed[32];
    snprintf(face, sizeof face, "face %s", ts_kind_shown(TS_KIND_LENGTH, t->page->units)->name);
    snprintf(speed, sizeof speed, "at most %s",
             ts_kind_shown(TS_KIND_ROTATIONAL_SPEED, t->page->units)->name);
    ts_page_tone(t->page, TS_TONE_FAINT);
    cell(t->page, "    place", 20, false);
    cell(t->page, "teeth", 5, true);
    cell(t->page, face, 8, true);
    cell(t->page, speed, 12, true);
    cell(t->page, "front", 20, false);
    ts_buffer_add(t->page->out, "rear");
    ts_page_tone(t->page, TS_TONE_PLAIN);
    ts_page_line_end(t->page);
}

static const ts_arrange_choice *choice_of(const table *t)
{
    return &t->told->problem->problem.boxes[t->index].choices[t->box->choice];
}

static double input_teeth(const table *t)
{
    return (double)choice_of(t)->z_in;
}

/* The second gear of the shaft above. */
static void step_row(const table *t, const ts_arranged_shaft *shaft)
{
    char           teeth[16];
    const uint32_t own = choice_of(t)->module;
    snprintf(teeth, sizeof teeth, "%u", (unsigned)shaft->z_step);
    cell(t->page, "      and its step", 20, false);
    cell(t->page, teeth, 5, true);
    cell_value(t->page, shaft->step_width, TS_KIND_LENGTH, 8);
    if (shaft->step_module != own) {
        ts_buffer_add(t->page->out, "module ");
        ts_page_value(t->page, t->told->problem->m_n[shaft->step_module], TS_KIND_LENGTH, 4, 0);
    }
    ts_page_line_end(t->page);
}

/* turns: teeth of a gear on the input that would turn the shaft's plane as fast. */
static void row(const table *t, const char *place, const ts_arranged_shaft *shaft, double turns)
{
    char teeth[16], where[40];
    snprintf(teeth, sizeof teeth, "%u", (unsigned)shaft->z);
    snprintf(where, sizeof where, "    %s", place);
    cell(t->page, where, 20, false);
    cell(t->page, teeth, 5, true);
    cell_value(t->page, shaft->width, TS_KIND_LENGTH, 8);
    ts_page_speed(t->page, ts_arranged_speed(t->told, choice_of(t)->speed, shaft->z, turns), 12);
    ts_buffer_add(t->page->out, "  ");
    const bool idler = shaft->front < 0 && shaft->rear < 0 && strcmp(place, "input") != 0;
    cell(t->page, idler ? "(idler)" : accessory(t, shaft->front), 20, false);
    ts_buffer_add(t->page->out, accessory(t, shaft->rear));
    ts_page_line_end(t->page);
    if (shaft->z_step > 0)
        step_row(t, shaft);
}

static void rows_of(const table *t, const ts_arranged_branch *branch, const char *name, bool out)
{
    for (uint32_t i = 0; i < branch->count; i++) {
        const uint32_t at    = out ? i : branch->count - 1 - i;
        double         turns = input_teeth(t);
        char           place[32];
        for (uint32_t k = 0; k < at; k++)
            if (branch->shafts[k].z_step > 0)
                turns *= (double)branch->shafts[k].z_step / (double)branch->shafts[k].z;
        snprintf(place, sizeof place, "%s %u", name, (unsigned)at + 1);
        row(t, place, &branch->shafts[at], turns);
    }
}

static void box_line(const table *t)
{
    const ts_arrange_problem *p      = &t->told->problem->problem;
    const ts_arrange_choice  *choice = choice_of(t);
    ts_take_off_taken         taken;
    ts_buffer                 text;
    ts_buffer_open(&text, t->page->out->allocator);
    ts_buffer_print(&text, "%s box: module ", p->boxes[t->index].name);
    ts_page_value_text(t->page, &text, t->told->problem->m_n[choice->module], TS_KIND_LENGTH, 5);
    ts_buffer_print(&text, " %s, wrap ", ts_kind_shown(TS_KIND_LENGTH, t->page->units)->name);
    ts_page_value_text(t->page, &text, t->box->wrap, TS_KIND_ANGLE, 4);
    ts_buffer_add(&text, " of ");
    ts_page_value_text(t->page, &text, p->boxes[t->index].wrap_most, TS_KIND_ANGLE, 4);
    ts_buffer_print(&text, " %s", ts_kind_shown(TS_KIND_ANGLE, t->page->units)->name);
    if (ts_arrange_take_off(t->told, t->index, choice->take_off, &taken)) {
        ts_buffer_add(&text, "; ");
        ts_arrange_take_off_says(t->page, &taken, &text);
    }
    ts_page_tone(t->page, TS_TONE_STRONG);
    ts_page_wrap_made(t->page, &text, 0, 0);
    ts_page_tone(t->page, TS_TONE_PLAIN);
}

static void boxes_of(const ts_arrange_told *told, ts_page *page, const ts_arrangement *found)
{
    for (size_t b = 0; b < told->problem->problem.box_count; b++) {
        const table t = {told, page, &found->boxes[b], b};
        if (!t.box->present) {
            ts_buffer_print(page->out, "%s box: carries nothing\n",
                            told->problem->problem.boxes[b].name);
            continue;
        }
        box_line(&t);
        head(&t);
        rows_of(&t, &t.box->branches[0], "clockwise", false);
        row(&t, "input", &t.box->input, input_teeth(&t));
        rows_of(&t, &t.box->branches[1], "anticlockwise", true);
    }
}

/* ---- the answers ----------------------------------------------------------------------------- */

static void answer(const ts_arrange_told *told, ts_page *page, size_t index)
{
    const ts_arrangement *found = &told->result->answers[index];
    ts_buffer             text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "%zu  ", index + 1);
    ts_arrange_kg(page, ts_arrange_searched(told, found).mass, &text);
    ts_buffer_add(&text, "; ");
    ts_arrange_order(told, found, &text);
    if (told->verdicts[index].widened > 0) {
        ts_buffer_add(&text, ".  Faces of the whole drive ask for ");
        ts_arrange_kg(page, told->verdicts[index].account.sum - found->mass, &text);
        ts_buffer_add(&text, " more");
    }
    ts_buffer_add(&text, ".  By all rules: ");
    ts_arrange_verdict(&told->verdicts[index], &text);
    ts_page_wrap_made(page, &text, INDENT, 0);
    ts_arrange_changes_page(told, page, found, told->verdicts[index].account.mass);
}

/* ---- the page ------------------------------------------------------------------------------- */

static void assumptions(const ts_arrange_told *told, ts_page *page)
{
    const ts_drive *drive = told->drive;
    ts_page_heading(page, "Assumptions of the search (what `arrange` in the file does not say)");
    ts_register_page(page, drive->arrange_assumed, drive->arrange_assumed_count);
    line(page, "Masses are those of gears, shafts, pads, casing and what comes with a box; "
               "accessories weigh the same wherever they stand and are not counted.  Mesh losses, "
               "the cowl and keep-outs are left to the rules.");
    if (ts_arrange_is_weighted(told))
        line(page,
             "By `weights` wrap or servicing counts too: \"in sum\" is mass and what these two "
             "count as, what is proven is proven of the sum, and \"lightest\" means the least sum; "
             "everything else is mass.  What is in the way of an accessory is taken to be whatever "
             "stands on its face nearer to the input, as though the input hung lowest.");
}

static void headline(const ts_arrange_told *told, const ts_page *page,
                     const ts_arrange_account *shown, ts_buffer *text)
{
    const bool weighted = ts_arrange_is_weighted(told);
    ts_buffer_add(text, weighted ? "The least in sum, " : "The lightest, ");
    if (told->chosen == told->result->count)
        ts_buffer_add(text, "which does not hold, ");
    else if (told->chosen > 0)
        ts_buffer_add(text, "of those that hold by all rules, ");
    ts_arrange_kg(page, weighted ? shown->sum : shown->mass, text);
    if (!weighted)
        return;
    ts_buffer_add(text, ", of which ");
    ts_arrange_kg(page, shown->mass, text);
    ts_buffer_add(text, " are mass");
}

void ts_arrange_page(const ts_arrange_told *told, ts_page *page)
{
    const ts_arrange_result *r = told->result;
    ts_buffer_print(page->out, "Arrangement of %s\n", told->drive->title.text);
    ts_page_wrap(page, told->caution, 0, 0);
    if (r->count > 0) {
        const size_t shown = told->chosen < r->count ? told->chosen : 0;
        ts_buffer    text;
        ts_buffer_open(&text, page->out->allocator);
        headline(told, page, &told->verdicts[shown].account, &text);
        ts_page_heading(page, text.bytes);
        ts_buffer_close(&text);
        boxes_of(told, page, &r->answers[shown]);
        ts_page_heading(page, ts_arrange_is_weighted(told)
                                  ? "Least sum first, all different in order, face or box"
                                  : "Lightest first, all different in order, face or box");
        ts_short_list(told, page);
        ts_present_page(told, page);
        for (size_t i = 0; i < r->count; i++)
            answer(told, page, i);
    }
    ts_arrange_proof(told, page);
    ts_front_page(told, page);
    ts_robust_page(told, page);
    ts_why_not_page(told, page);
    assumptions(told, page);
}
