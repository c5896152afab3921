/* Why is nothing lighter, and of what is that a proof? */
#include "report/arrange_proof.h"

#include <math.h>

#define INDENT 4

typedef struct proof {
    const ts_arrange_told   *told;
    const ts_arrange_result *r;
    ts_page                 *page;
    size_t                   steps; /* of the argument, told so far */
} proof;

static void add_kg(const proof *p, double kg, ts_buffer *out)
{
    ts_arrange_kg(p->page, kg, out);
}

static void add_sum(const proof *p, double kg, ts_buffer *out)
{
    ts_arrange_sum(p->told, p->page, kg, out);
}

static void add_count(ts_buffer *out, size_t count, const char *one, const char *many)
{
    ts_buffer_print(out, "%zu %s", count, count == 1 ? one : many);
}

/* A step of the argument, numbered. */
static void open(proof *p, ts_buffer *text)
{
    ts_buffer_open(text, p->page->out->allocator);
    ts_buffer_print(text, "%zu  ", ++p->steps);
}

static void send(const proof *p, ts_buffer *text)
{
    ts_buffer_fill(p->page->out, ' ', INDENT);
    ts_page_wrap_made(p->page, text, INDENT + 3, INDENT);
}

/* ---- the claim ------------------------------------------------------------------------------- */

static void claim_proven(const proof *p, ts_buffer *text)
{
    const ts_arrange_result *r = p->r;
    ts_buffer_add(text, "Nothing under these demands is lighter than the first answer, ");
    add_sum(p, r->answers[0].mass, text);
    ts_buffer_add(text, " as it was searched");
    if (p->told->verdicts[0].widened > 0) {
        ts_buffer_add(text, " (faces that the whole drive asks for make it ");
        add_sum(p, p->told->verdicts[0].account.sum, text);
        ts_buffer_add(text, ")");
    }
    if (r->others_open) {
        ts_buffer_add(text,
                      ".  The others are the lightest of other orders that had been found when the "
                      "search for them was ended; lighter ones of other orders may exist, none "
                      "lighter than the first.");
        return;
    }
    if (!isfinite(r->bound)) {
        ts_buffer_add(text, "; no other order, faces or boxes meet the demands.");
        return;
    }
    ts_buffer_add(text, "; whatever is lighter than ");
    add_sum(p, r->bound, text);
    ts_buffer_add(text, " has the order, faces and boxes of one of the answers.");
}

static void claim_so_far(const proof *p, ts_buffer *text)
{
    const ts_arrange_result *r     = p->r;
    const double             bound = r->count > 0 ? fmin(r->bound, r->answers[0].mass) : r->bound;
    ts_buffer_add(text, r->end == TS_ARRANGE_STOPPED
                            ? "The search was ended before its proof."
                            : "Memory came to its limit before the proof.");
    if (!(isfinite(bound) && bound > 0.0)) {
        ts_buffer_add(text, r->count == 0 ? "  None was found yet, and no bound is known."
                                          : "  How much lighter one may be is not known.");
        return;
    }
    ts_buffer_add(text, "  No arrangement weighs less than ");
    add_sum(p, bound, text);
    if (r->count == 0) {
        ts_buffer_add(text, ", and none was found yet.");
        return;
    }
    ts_buffer_add(text, ": the first answer, ");
    add_sum(p, r->answers[0].mass, text);
    ts_buffer_add(text, ", is at most ");
    ts_page_short(text, 100.0 * (r->answers[0].mass / bound - 1.0), 2);
    ts_buffer_add(text, " % above the best.");
}

static void claim(proof *p)
{
    ts_buffer text;
    open(p, &text);
    if (p->r->end != TS_ARRANGE_PROVEN)
        claim_so_far(p, &text);
    else if (p->r->count > 0)
        claim_proven(p, &text);
    else
        ts_buffer_add(&text, "No arrangement meets every demand; all were looked at.");
    send(p, &text);
}

/* What a gap is, and what to do about it. */
static void gap(proof *p)
{
    const ts_arrange_result *r = p->r;
    ts_buffer                text;
    if (r->end == TS_ARRANGE_PROVEN)
        return;
    open(p, &text);
    if (r->count > 0)
        ts_buffer_add(&text,
                      "This gap is what is not known yet, and no fault of the answers: each meets "
                      "every demand, and each was judged by all rules.  Perhaps the first is the "
                      "lightest already; perhaps something lighter is among what was not looked "
                      "at, which the gap bounds.  ");
    ts_buffer_print(&text,
                    "To %s, %s, or take freedom away: in `arrange` fewer `modules` or "
                    "`input teeth`, a shorter list of `idler teeth`, `idlers: 1`, `steps: 0`, a "
                    "`face` or `side` for whatever has its place already; or --keep what is "
                    "settled.  What is left is proven sooner, and is proven for these narrower "
                    "demands.",
                    r->count > 0 ? "narrow it" : "come further",
                    r->end == TS_ARRANGE_STOPPED ? "let the search run longer (--within, --threads)"
                                                 : "give the search more memory (--memory)");
    send(p, &text);
}

/* ---- what it is made of ---------------------------------------------------------------------- */

static void add_part(const proof *p, ts_buffer *text, bool *any, double kg, size_t count,
                     const char *one, const char *many)
{
    if (count == 0)
        return;
    ts_buffer_add(text, *any ? ", " : " ");
    add_kg(p, kg, text);
    ts_buffer_add(text, " for ");
    add_count(text, count, one, many);
    *any = true;
}

static void add_angle(const proof *p, double angle, ts_buffer *text)
{
    ts_page_value_text(p->page, text, angle, TS_KIND_ANGLE, 4);
    ts_buffer_print(text, " %s", ts_kind_shown(TS_KIND_ANGLE, p->page->units)->name);
}

static size_t boxes_in(const proof *p, const ts_arrangement *found)
{
    size_t count = 0;
    for (size_t b = 0; b < p->told->problem->problem.box_count; b++)
        count += found->boxes[b].present ? 1 : 0;
    return count;
}

static void parts(proof *p)
{
    ts_buffer text;
    bool      any = false;
    if (p->r->count == 0)
        return;
    const ts_arrangement    *found = &p->r->answers[0];
    const ts_arrange_account a     = ts_arrange_searched(p->told, found);
    open(p, &text);
    ts_buffer_add(&text, "Of the ");
    add_kg(p, a.mass, &text);
    ts_buffer_add(&text, " that it weighs, ");
    add_kg(p, a.boxes, &text);
    ts_buffer_add(&text, boxes_in(p, found) == 1
                             ? " are of the box with its input shaft and "
                             : " are of the boxes with their input shafts and ");
    add_kg(p, a.pads, &text);
    ts_buffer_add(&text, " of ");
    add_count(&text, a.pad_count, "pad", "pads");
    ts_buffer_add(&text, ", in whatever order they stand.  The rest is what can be saved on:");
    add_part(p, &text, &any, a.shafts, a.shaft_count, "shaft beside the input",
             "shafts beside the input");
    add_part(p, &text, &any, a.idlers, a.idler_count, "idler", "idlers");
    add_part(p, &text, &any, a.gears, a.gear_count, "gear", "gears");
    add_part(p, &text, &any, a.steps, a.step_count, "step of a shaft", "steps of shafts");
    ts_buffer_add(&text, any ? ", " : " ");
    add_kg(p, a.casing, &text);
    ts_buffer_add(&text, " for ");
    add_angle(p, a.wrap, &text);
    ts_buffer_add(&text, " of casing.");
    ts_arrange_weighted_says(p->told, p->page, &a, &text);
    send(p, &text);
}

/* ---- the ways -------------------------------------------------------------------------------- */

static void add_ways(ts_buffer *text, bool *any, size_t count, const char *one, const char *many)
{
    if (count == 0)
        return;
    ts_buffer_print(text, "%s%zu %s", *any ? ", " : "", count, count == 1 ? one : many);
    *any = true;
}

static bool take_offs_are_chosen(const proof *p)
{
    bool chosen = false;
    for (size_t b = 0; b < p->told->problem->problem.box_count && !chosen; b++)
        chosen = p->told->problem->take_offs[b].count > 0;
    return chosen;
}

static void ways(proof *p)
{
    size_t    count[4] = {0};
    bool      any      = false;
    ts_buffer text;
    for (size_t i = 0; i < p->r->pair_count; i++)
        count[p->r->pairs[i].end]++;
    open(p, &text);
    ts_buffer_print(&text,
                    "Every arrangement drives each of its boxes in one of %zu way%s (a module with "
                    "a number of input teeth%s): ",
                    p->r->pair_count, p->r->pair_count == 1 ? "" : "s",
                    take_offs_are_chosen(p) ? ", bevels and a radial shaft" : "");
    add_ways(&text, &any, count[TS_PAIR_NO_WAY], "cannot meet every demand",
             "cannot meet every demand");
    add_ways(&text, &any, count[TS_PAIR_BY_BOUND], "weighs more by its bound alone",
             "weigh more by their bound alone");
    add_ways(&text, &any, count[TS_PAIR_SEARCHED], "was searched to the end",
             "were searched to the end");
    add_ways(&text, &any, count[TS_PAIR_OPEN], "is open", "are open");
    ts_buffer_add(&text,
                  ".  For each, a search over sets of accessories alone finds a mass that nothing "
                  "driven so can be below, for it asks less than the demands: every gear has the "
                  "teeth, and every mesh the mate, that are best for it by itself, loads are "
                  "rounded down, and bodies share out the arc on average.");
    send(p, &text);
    ts_ways_table(p->told, p->page);
}

/* ---- what was searched ----------------------------------------------------------------------- */

static void beginning(proof *p)
{
    const ts_arrange_result *r = p->r;
    ts_buffer                text;
    if (r->first_labels.made == 0)
        return;
    open(p, &text);
    ts_buffer_print(&text,
                    "To begin with, narrow searches followed only the most promising of %zu "
                    "beginnings.  They prove nothing; they give the search that follows a mass to "
                    "stay below: ",
                    (size_t)r->first_labels.made);
    if (isfinite(r->first)) {
        add_sum(p, r->first, &text);
        ts_buffer_add(&text, " at best.");
    } else {
        ts_buffer_add(&text, "here they found none.");
    }
    send(p, &text);
}

static void dropped(const proof *p, ts_buffer *text)
{
    const ts_label_count *n = &p->r->labels;
    ts_buffer_print(text,
                    "Branches were built from their free ends inwards, one shaft at a time, with "
                    "every number of teeth that speeds, senses and room allow: %zu beginnings%s.  "
                    "One is dropped for two reasons only.  %zu: what it weighs and the least that "
                    "must still follow come to no less than ",
                    (size_t)n->made, p->r->end == TS_ARRANGE_PROVEN ? "" : " so far",
                    (size_t)n->cut_by_bound);
    if (p->r->end == TS_ARRANGE_PROVEN && isfinite(p->r->bound) && p->r->bound > 0.0)
        add_sum(p, p->r->bound, text);
    else
        ts_buffer_add(text, p->r->count > 0 && p->r->end != TS_ARRANGE_PROVEN
                                ? "what had been found by then"
                                : "what was asked for, or nothing can follow");
    ts_buffer_print(text,
                    ".  %zu: another that carries the same accessories to the same last gear, of "
                    "the same order (or of other orders as many as answers were asked for), is no "
                    "worse in mass, arc, face width and room, so that whatever could follow this "
                    "one can follow that one.  ",
                    (size_t)n->cut_by_dominance);
}

static void beginnings(proof *p)
{
    const ts_label_count *n      = &p->r->labels;
    const bool            proven = p->r->end == TS_ARRANGE_PROVEN;
    ts_buffer             text;
    if (n->made == 0)
        return;
    open(p, &text);
    dropped(p, &text);
    if (proven)
        ts_buffer_print(&text,
                        "The other %zu were led to the input and put together there, in pairs and "
                        "alone: %zu times light enough, %zu of these within the wrap and with no "
                        "two bodies in each other's way.  The lightest of these, one of each "
                        "order, and of what the narrow searches found are the answers.",
                        (size_t)n->kept, (size_t)p->r->joins.light, (size_t)p->r->joins.fitting);
    else
        ts_buffer_print(&text, "The other %zu are still to be followed or put together.",
                        (size_t)n->kept);
    ts_buffer_print(&text, "  %zu pairs of teeth were rated for their widths.", p->told->laws);
    send(p, &text);
}

/* ---- what it stands on ----------------------------------------------------------------------- */

/* Not the first answer is the one: how far may it be from the lightest that holds? */
static void tell_gap(const proof *p, ts_buffer *text)
{
    const ts_arrange_told   *told  = p->told;
    const ts_arrange_result *r     = p->r;
    const double             bound = fmin(r->bound, r->answers[0].mass);
    const double             shown = told->verdicts[told->chosen].account.sum;
    size_t                   fall  = 0;

    for (size_t i = 0; i < r->count; i++)
        fall += told->verdicts[i].holds ? 0 : 1;
    if (fall == 0)
        ts_buffer_add(text, "  All of these answers hold; the one shown at the top is the lightest "
                            "with the faces that the whole drive asks for.");
    else
        ts_buffer_print(text,
                        "  Of these %zu answers %zu %s; the one shown at the top is the lightest "
                        "of the others.",
                        r->count, fall, fall == 1 ? "does not" : "do not");
    if (!(bound > 0.0))
        return;
    ts_buffer_add(text, "  Nothing weighs less than ");
    add_sum(p, bound, text);
    ts_buffer_add(text, " by the demands of the search, so the one shown is at most ");
    ts_page_short(text, 100.0 * (shown / bound - 1.0), 2);
    ts_buffer_add(text, " % above the lightest that holds by all rules; that it is the lightest is "
                        "not proven.");
}

/* What the proof is not about. */
static void judged_after(proof *p)
{
    const ts_arrange_told   *told = p->told;
    const ts_arrange_result *r    = p->r;
    ts_buffer                text;
    if (r->count == 0)
        return;
    open(p, &text);
    ts_buffer_add(
        &text, "The cowl, keep-outs, losses in meshes, shafts, bearings and bevels are no part of "
               "the search: every answer was judged by all rules afterwards, and one that does "
               "not hold has the finding beside it.");
    if (told->chosen == r->count)
        ts_buffer_add(&text,
                      "  None of these answers holds; whether another one does is not proven.");
    else if (told->chosen > 0)
        tell_gap(p, &text);
    send(p, &text);
}

static void verified(proof *p)
{
    const ts_certificate_check *c = &p->told->certificate;
    ts_buffer                   text;
    if (p->r->end != TS_ARRANGE_PROVEN)
        return;
    open(p, &text);
    if (c->answer == TS_RULE_NONE && c->missing == 0 && c->not_closed == 0)
        ts_buffer_add(&text,
                      p->r->count > 0
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
    send(p, &text);
}

/* Bevels and radial shafts that were left out on the way. */
static void struck(const proof *p)
{
    const ts_arrange_told *told = p->told;
    ts_page               *page = p->page;
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
        add_sum(p, one->mass, &text);
        ts_buffer_print(&text,
                        "), the rules refuse these parts themselves: %s, at %s.  What follows is "
                        "about the others.",
                        one->says, one->address);
        ts_buffer_fill(page->out, ' ', INDENT);
        ts_page_wrap_made(page, &text, INDENT, INDENT);
    }
}

void ts_arrange_proof(const ts_arrange_told *told, ts_page *page)
{
    const ts_arrange_result *r = told->result;
    proof                    p = {.told = told, .r = r, .page = page};
    ts_page_heading(page, r->end != TS_ARRANGE_PROVEN ? "What is known so far"
                          : r->count > 0              ? "Why nothing is lighter"
                                                      : "Why nothing fits");
    struck(&p);
    ts_conflict_list(told, page);
    claim(&p);
    gap(&p);
    parts(&p);
    ways(&p);
    beginning(&p);
    beginnings(&p);
    verified(&p);
    judged_after(&p);
}
