/* Which demands cannot all hold, and by how much would each have to give? */
#include "report/arrange_report.h"

#include <math.h>

#define INDENT 4

/* What a demand asks, about which accessory or box; kinds in the order of ts_demand_kind. */
static const struct {
    const char *says;
    bool        of_accessory, of_box;
} words[] = {
    [TS_DEMAND_BAND]        = {"the speed band of", true, false},
    [TS_DEMAND_SENSE]       = {"the sense of", true, false},
    [TS_DEMAND_FACES]       = {"the face of", true, false},
    [TS_DEMAND_SIDE]        = {"the side of", true, false},
    [TS_DEMAND_BOXES]       = {"the spool of", true, false},
    [TS_DEMAND_BODY]        = {"the room for the body of", true, false},
    [TS_DEMAND_WRAP]        = {"the wrap of the box of", false, true},
    [TS_DEMAND_BRANCH]      = {"the arc of each side of the box of", false, true},
    [TS_DEMAND_INPUT_FACES] = {"the closed faces of the input of the box of", false, true},
    [TS_DEMAND_INPUT_BODY]  = {"the bodies at the input of the box of", false, true},
    [TS_DEMAND_GAP]         = {"the gap between bodies", false, false},
    [TS_DEMAND_HUNTING]     = {"that every mesh hunts", false, false},
    [TS_DEMAND_IDLERS]      = {"how many idlers may stand in a row", false, false},
    [TS_DEMAND_WIDTH]       = {"how wide a face may be over the diameter", false, false},
};

void ts_demand_says(const ts_arrange_told *told, const ts_demand *demand, ts_buffer *out)
{
    const ts_arrange_problem *p = &told->problem->problem;
    ts_buffer_add(out, words[demand->kind].says);
    if (words[demand->kind].of_accessory)
        ts_buffer_print(out, " %s", p->accessories[demand->index].name);
    if (words[demand->kind].of_box)
        ts_buffer_print(out, " %s", p->boxes[demand->index].name);
    if (demand->kind == TS_DEMAND_BAND)
        ts_buffer_print(out, " at %s", told->drive->conditions[demand->condition].name);
}

/* The kind of the number that a demand gives by; TS_KIND_COUNT: it has none. */
static ts_kind kind_of(ts_demand_kind kind)
{
    switch (kind) {
    case TS_DEMAND_BAND:
        return TS_KIND_ROTATIONAL_SPEED;
    case TS_DEMAND_WRAP:
    case TS_DEMAND_BRANCH:
        return TS_KIND_ANGLE;
    case TS_DEMAND_BODY:
    case TS_DEMAND_GAP:
        return TS_KIND_LENGTH;
    default:
        return TS_KIND_NUMBER;
    }
}

static void add_value(const ts_page *page, ts_buffer *out, double si, ts_kind kind)
{
    ts_page_value_text(page, out, si, kind, 5);
    if (kind != TS_KIND_NUMBER)
        ts_buffer_print(out, " %s", ts_kind_shown(kind, page->units)->name);
}

void ts_conflict_member_line(const ts_arrange_told *told, ts_page *page,
                             const ts_conflict_member *m)
{
    const ts_kind kind = kind_of(m->demand.kind);
    ts_buffer     text;
    ts_buffer_open(&text, page->out->allocator);
    ts_demand_says(told, &m->demand, &text);
    if (isfinite(m->from) && isfinite(m->to)) {
        const bool band = m->demand.kind == TS_DEMAND_BAND, more = m->to > m->from;
        ts_buffer_print(&text, ": it would have to %s ", band ? "reach" : "be");
        add_value(page, &text, fabs(m->to - m->from), kind);
        ts_buffer_print(&text, " %s, to ",
                        band   ? (more ? "higher" : "lower")
                        : more ? "more"
                               : "less");
        add_value(page, &text, m->to, kind);
        ts_buffer_add(&text, " from ");
        add_value(page, &text, m->from, kind);
        if (m->at_most)
            ts_buffer_add(&text, " (less may do)");
    } else {
        ts_buffer_add(&text, ": it fits without this demand");
    }
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT + 2, INDENT);
}

void ts_conflict_held(const ts_arrange_told *told, ts_page *page, const ts_conflict *c)
{
    ts_buffer text;
    if (!c->found || c->held_count == 0)
        return;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text,
                    "This is so with %zu other demand%s kept, for without %s there are too "
                    "many ways to search; whether %s needed is open: ",
                    c->held_count, c->held_count == 1 ? "" : "s",
                    c->held_count == 1 ? "it" : "them", c->held_count == 1 ? "it is" : "they are");
    for (size_t i = 0; i < c->held_count; i++) {
        ts_buffer_add(&text, i > 0 ? "; " : "");
        ts_demand_says(told, &c->held[i], &text);
    }
    ts_buffer_add(&text, ".");
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

void ts_conflict_list(const ts_arrange_told *told, ts_page *page)
{
    const ts_conflict *c = told->conflict;
    ts_buffer          text;
    if (told->result->count > 0 || told->result->end != TS_ARRANGE_PROVEN)
        return;
    ts_buffer_open(&text, page->out->allocator);
    if (c == NULL)
        ts_buffer_add(&text,
                      "Which demands conflict was not found out before time or memory ended.");
    else if (c->hopeless)
        ts_buffer_add(&text, "Nothing fits even without every demand that can be dropped: teeth, "
                             "modules or the engine casing leave no gear for some accessory.");
    else if (!c->found)
        ts_buffer_add(&text, "By speeds, senses and room alone something would fit: the teeth "
                             "nowhere bear their loads within the widths that they may have, or "
                             "have too little contact.");
    else if (c->count == 1)
        ts_buffer_print(
            &text,
            "One demand alone cannot be met%s; without it the rest can, by speeds, senses and room "
            "(%zu searches):",
            c->held_count == 0 ? ", whatever becomes of the others" : "", c->searches);
    else
        ts_buffer_print(
            &text,
            "These %zu demands cannot all hold%s; without any one of them the rest can, by speeds, "
            "senses and room (%zu searches):",
            c->count, c->held_count == 0 ? ", whatever becomes of the others" : "", c->searches);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
    for (size_t i = 0; c != NULL && c->found && i < c->count; i++)
        ts_conflict_member_line(told, page, &c->members[i]);
    if (c != NULL)
        ts_conflict_held(told, page, c);
}
