/* Which arrangement was found, and why is nothing lighter? */
#include "report/arrange_report.h"

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
    ts_arrange_kg(page, found->mass, &text);
    if (index > 0) {
        ts_buffer_add(&text, " (");
        ts_arrange_regret(told, page, found->mass, &text);
        ts_buffer_add(&text, ")");
    }
    ts_arrange_weighted_says(told, page, found, &text);
    ts_buffer_add(&text, "; ");
    ts_arrange_order(told, found, &text);
    if (told->verdicts[index].widened > 0) {
        ts_buffer_add(&text, ".  Faces of the whole drive ask for ");
        ts_arrange_kg(page, told->verdicts[index].mass - found->mass, &text);
        ts_buffer_add(&text, " more");
    }
    ts_buffer_add(&text, ".  By all rules: ");
    ts_arrange_verdict(&told->verdicts[index], &text);
    ts_page_wrap_made(page, &text, INDENT, 0);
    ts_arrange_changes_page(told, page, found, told->verdicts[index].mass);
}

/* ---- the proof ------------------------------------------------------------------------------- */

static void add_count(ts_buffer *out, size_t count, const char *one, const char *many)
{
    ts_buffer_print(out, "%zu %s", count, count == 1 ? one : many);
}

static void add_ways(ts_buffer *text, bool *any, size_t count, const char *one, const char *many)
{
    if (count == 0)
        return;
    ts_buffer_print(text, "%s%zu %s", *any ? ", " : "", count, count == 1 ? one : many);
    *any = true;
}

static void pairs(const ts_arrange_told *told, ts_page *page)
{
    size_t count[4] = {0};
    bool   any = false, chosen = false;
    for (size_t i = 0; i < told->result->pair_count; i++)
        count[told->result->pairs[i].end]++;
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    add_count(&text, told->result->pair_count, "way", "ways");
    ts_buffer_add(&text, " to drive a box (a module with a number of input teeth");
    for (size_t b = 0; b < told->problem->problem.box_count && !chosen; b++)
        chosen = told->problem->take_offs[b].count > 0;
    ts_buffer_print(&text, "%s): ", chosen ? ", bevels and a radial shaft" : "");
    add_ways(&text, &any, count[TS_PAIR_NO_WAY], "cannot meet every demand",
             "cannot meet every demand");
    add_ways(&text, &any, count[TS_PAIR_BY_BOUND], "weighs more by its bound alone",
             "weigh more by their bound alone");
    add_ways(&text, &any, count[TS_PAIR_SEARCHED], "was searched to the end",
             "were searched to the end");
    add_ways(&text, &any, count[TS_PAIR_OPEN], "is open", "are open");
    ts_buffer_add(&text,
                  ".  For each, a search that leaves demands out finds what nothing driven so "
                  "can weigh less than:");
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
    ts_ways_table(told, page);
}

static void labels(const ts_arrange_told *told, ts_page *page)
{
    const ts_arrange_result *r = told->result;
    const ts_label_count    *n = &r->labels;
    ts_buffer                text;
    if (n->made == 0)
        return;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text,
                    "Branches were built from their free ends inwards, one shaft at a time: %zu "
                    "beginnings.  Of these %zu were dropped because even the lightest way to go on "
                    "from them weighs no less than ",
                    (size_t)n->made, (size_t)n->cut_by_bound);
    if (r->count > 0 && isfinite(r->bound) && r->bound > 0.0)
        ts_arrange_kg(page, r->bound, &text);
    else
        ts_buffer_add(&text, "what was asked for, or is none at all");
    ts_buffer_print(&text,
                    ", and %zu because another with the same accessories and the same last gear is "
                    "no worse in mass, arc, face width and room, so that whatever could follow "
                    "them can follow it.  The other %zu were followed to the input and put "
                    "together in every way.  %zu pairs of teeth were rated for their widths.",
                    (size_t)n->cut_by_dominance, (size_t)n->kept, told->laws);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

static void claim(const ts_arrange_told *told, ts_page *page)
{
    const ts_arrange_result *r     = told->result;
    const double             bound = r->count > 0 ? fmin(r->bound, r->answers[0].mass) : r->bound;
    ts_buffer                text;
    ts_buffer_open(&text, page->out->allocator);
    if (r->end == TS_ARRANGE_PROVEN && r->count > 0) {
        ts_buffer_add(&text, "Nothing under these demands is lighter than the first answer, ");
        ts_arrange_kg(page, r->answers[0].mass, &text);
        ts_buffer_add(&text, " as it was searched");
        if (told->verdicts[0].widened > 0) {
            ts_buffer_add(&text, " (faces that the whole drive asks for make it ");
            ts_arrange_kg(page, told->verdicts[0].mass, &text);
            ts_buffer_add(&text, ")");
        }
        if (isfinite(r->bound)) {
            ts_buffer_add(&text, "; whatever is lighter than ");
            ts_arrange_kg(page, r->bound, &text);
            ts_buffer_add(&text, " has the order, faces and boxes of one of the answers.");
        } else {
            ts_buffer_add(&text, "; no other order, faces or boxes meet the demands.");
        }
    } else if (r->end == TS_ARRANGE_PROVEN) {
        ts_buffer_add(&text, "No arrangement meets every demand; all were looked at.");
    } else {
        ts_buffer_add(&text, r->end == TS_ARRANGE_STOPPED
                                 ? "The search was ended before its proof."
                                 : "Memory came to its limit before the proof.");
        if (isfinite(bound) && bound > 0.0) {
            ts_buffer_add(&text, "  No arrangement weighs less than ");
            ts_arrange_kg(page, bound, &text);
        }
        if (r->count > 0 && bound > 0.0) {
            ts_buffer_add(&text, ": the first answer is at most ");
            ts_page_short(&text, 100.0 * (r->answers[0].mass / bound - 1.0), 2);
            ts_buffer_add(&text, " % above the best.");
        } else if (isfinite(bound) && bound > 0.0) {
            ts_buffer_add(&text, ", and none was found yet.");
        } else if (r->count == 0) {
            ts_buffer_add(&text, "  None was found yet, and no bound is known.");
        }
    }
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

/* Not the first answer is the one: how far may it be from the lightest that holds? */
static void tell_gap(const ts_arrange_told *told, const ts_page *page, ts_buffer *text)
{
    const ts_arrange_result *r     = told->result;
    const double             bound = fmin(r->bound, r->answers[0].mass);
    const double             shown = told->verdicts[told->chosen].mass;
    size_t                   fall  = 0;

    for (size_t i = 0; i < r->count; i++)
        fall += told->verdicts[i].holds ? 0 : 1;
    ts_buffer_print(text, "  Of these %zu answers %zu %s; the one shown at the top is the lightest",
                    r->count, fall, fall == 1 ? "does not" : "do not");
    ts_buffer_add(text, " of the others.");
    if (!(bound > 0.0))
        return;
    ts_buffer_add(text, "  Nothing weighs less than ");
    ts_arrange_kg(page, bound, text);
    ts_buffer_add(text, " by the demands of the search, so the one shown is at most ");
    ts_page_short(text, 100.0 * (shown / bound - 1.0), 2);
    ts_buffer_add(text, " % above the lightest that holds by all rules; that it is the lightest is "
                        "not proven.");
}

/* What the proof is not about. */
static void judged_after(const ts_arrange_told *told, ts_page *page)
{
    const ts_arrange_result *r = told->result;
    ts_buffer                text;
    if (r->count == 0)
        return;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_add(
        &text, "The cowl, keep-outs, losses in meshes, shafts, bearings and bevels are no part of "
               "the search: every answer was judged by all rules afterwards, and one that does "
               "not hold has the finding beside it.");
    if (told->chosen == r->count)
        ts_buffer_add(&text,
                      "  None of these answers holds; whether another one does is not proven.");
    else if (told->chosen > 0)
        tell_gap(told, page, &text);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

/* Bevels and radial shafts that were left out on the way. */
static void struck(const ts_arrange_told *told, ts_page *page)
{
    for (size_t i = 0; i < told->struck_count; i++) {
        const ts_struck  *one = &told->struck[i];
        ts_take_off_taken taken;
        ts_buffer         text;
        if (!ts_arrange_take_off(told, one->box, one->take_off, &taken))
            continue;
        ts_buffer_open(&text, page->out->allocator);
        ts_buffer_add(&text, "Left out: ");
        ts_arrange_take_off_says(page, &taken, &text);
        ts_buffer_print(&text,
                        ".  Whatever was best on the %s box with them (%zu arrangement%s, the "
                        "lightest of ",
                        told->problem->problem.boxes[one->box].name, one->answers,
                        one->answers == 1 ? "" : "s");
        ts_arrange_kg(page, one->mass, &text);
        ts_buffer_print(&text,
                        "), the rules refuse these parts themselves: %s, at %s.  What follows is "
                        "about the others.",
                        one->says, one->address);
        ts_buffer_fill(page->out, ' ', INDENT);
        ts_page_wrap_made(page, &text, INDENT, INDENT);
    }
}

static void verified(const ts_arrange_told *told, ts_page *page)
{
    const ts_certificate_check *c = &told->certificate;
    ts_buffer                   text;
    ts_buffer_open(&text, page->out->allocator);
    if (c->answer == TS_RULE_NONE && c->missing == 0 && c->not_closed == 0)
        ts_buffer_add(&text,
                      told->result->count > 0
                          ? "Other code than the search laid the answer out again, weighed "
                            "it, and found every way accounted for; the bounds it took as "
                            "they stand (docs/method/arrange.md tells why they are bounds).  "
                            "Written with --json, this can be held against the file at any "
                            "time: arrange FILE --verify."
                          : "Other code than the search found every way accounted for; the "
                            "bounds it took as they stand.");
    else
        ts_buffer_print(&text,
                        "Other code than the search does NOT agree: %s; %zu ways are missing, %zu "
                        "are not closed.  Do not rely on this answer.",
                        ts_arrange_rule_says(c->answer), c->missing, c->not_closed);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

static void assumptions(const ts_arrange_told *told, ts_page *page)
{
    const ts_drive *drive = told->drive;
    ts_page_heading(page, "Assumptions of the search (what `arrange` in the file does not say)");
    ts_register_page(page, drive->arrange_assumed, drive->arrange_assumed_count);
    line(page, "Masses are those of gears, shafts, pads, casing and what comes with a box; "
               "accessories weigh the same wherever they stand and are not counted.  Mesh losses, "
               "the cowl and keep-outs are left to the rules.");
    if (told->problem->problem.wrap_weight + told->problem->problem.servicing_weight > 0.0)
        line(page,
             "By `weights` wrap or servicing counts too: every mass above is the sum, what is "
             "proven is proven of the sum, and \"lightest\" means the least sum; each answer "
             "says how much of it is no mass.  What is in the way of an accessory is taken to "
             "be whatever stands on its face nearer to the input, as though the input hung "
             "lowest.");
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
        ts_buffer_add(&text, told->chosen == 0         ? "The lightest, "
                             : told->chosen < r->count ? "The lightest that holds by all rules, "
                                                       : "The lightest, which does not hold, ");
        ts_arrange_kg(page, told->verdicts[shown].mass, &text);
        if (told->problem->problem.wrap_weight + told->problem->problem.servicing_weight > 0.0)
            ts_buffer_add(&text, " with what counts beside mass");
        ts_page_heading(page, text.bytes);
        ts_buffer_close(&text);
        boxes_of(told, page, &r->answers[shown]);
        ts_page_heading(page, "Lightest first, all different in order, face or box");
        ts_present_page(told, page);
        for (size_t i = 0; i < r->count; i++)
            answer(told, page, i);
    }
    ts_page_heading(page, r->end != TS_ARRANGE_PROVEN ? "What is known so far"
                          : r->count > 0              ? "Why nothing is lighter"
                                                      : "Why nothing fits");
    struck(told, page);
    ts_conflict_list(told, page);
    claim(told, page);
    pairs(told, page);
    labels(told, page);
    if (r->end == TS_ARRANGE_PROVEN)
        verified(told, page);
    judged_after(told, page);
    ts_front_page(told, page);
    ts_robust_page(told, page);
    ts_why_not_page(told, page);
    assumptions(told, page);
}
