/* Why does an accessory not stand where somebody asked? */
#include "report/arrange_report.h"

#include <math.h>

#define INDENT 4

static void send(ts_page *page, ts_buffer *text)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, text, INDENT, INDENT);
}

/* What the file itself says against the place. */
static void add_bars(const ts_arrange_told *told, const ts_why_not *w, ts_buffer *out)
{
    const char *spool =
        w->place.spool >= 0 ? told->drive->spools[w->place.spool].name : "the spool";
    const char *name = told->problem->problem.accessories[w->place.accessory].name;
    if ((w->bars & TS_BAR_START) != 0)
        ts_buffer_print(out,
                        "The engine or its start needs %s, and %s is not cranked: it would stand "
                        "still until the engine runs.  ",
                        name, spool);
    if ((w->bars & TS_BAR_BOX) != 0)
        ts_buffer_print(out, "The file (or what is kept) puts %s on another box.  ", name);
    if ((w->bars & TS_BAR_FACE) != 0)
        ts_buffer_print(out, "The file (or what is kept) puts %s on the other face.  ", name);
    if ((w->bars & TS_BAR_SIDE) != 0)
        ts_buffer_print(out, "The file (or what is kept) puts %s on another side.  ", name);
    if (w->bars != 0)
        ts_buffer_add(out, "With that let go: ");
}

/* Masses within 1e-10 count as equal, as in the search. */
static double regret(const ts_arrange_told *told, const ts_why_not *w)
{
    const double more = w->found.mass - told->result->answers[0].mass;
    return more > told->result->answers[0].mass * 1e-10 ? more : 0.0;
}

static void fits(const ts_arrange_told *told, ts_page *page, const ts_why_not *w)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    add_bars(told, w, &text);
    if (!(regret(told, w) > 0.0)) {
        ts_buffer_add(&text, w->bars != 0 ? "it would cost nothing" : "It costs nothing");
    } else {
        ts_buffer_add(&text, w->bars != 0 ? "it would cost " : "It costs ");
        ts_arrange_regret(told, page, w->found.mass, &text);
    }
    ts_buffer_add(&text, ".  The lightest with it there weighs ");
    ts_arrange_sum(told, page, w->found.mass, &text);
    ts_buffer_add(&text, w->end == TS_ARRANGE_PROVEN ? ": " : " (so far; not proven): ");
    ts_arrange_order(told, &w->found, &text);
    ts_buffer_add(&text, ".  By all rules: ");
    ts_arrange_verdict(&w->verdict, &text);
    send(page, &text);
}

static size_t others(const ts_why_not *w)
{
    size_t count = 0;
    for (size_t i = 0; i < w->conflict.count; i++)
        count += ts_drive_place_owns(&w->place, &w->conflict.members[i].demand) ? 0 : 1;
    return count;
}

static void fits_not(const ts_arrange_told *told, ts_page *page, const ts_why_not *w)
{
    const size_t count = others(w);
    ts_buffer    text;
    ts_buffer_open(&text, page->out->allocator);
    add_bars(told, w, &text);
    if (w->end != TS_ARRANGE_PROVEN)
        ts_buffer_add(&text, "the search ended before anything was found or ruled out.");
    else if (!w->explained)
        ts_buffer_add(&text, "No arrangement has it there; which demand forbids it was not found "
                             "out before time or memory ended.");
    else if (w->conflict.hopeless)
        ts_buffer_add(&text,
                      "No arrangement has it there, even without every demand that can be "
                      "dropped: the teeth, the modules or who shares the shaft leave no way.");
    else if (!w->conflict.found)
        ts_buffer_add(&text, "No arrangement has it there: by speeds, senses and room one would, "
                             "but its teeth nowhere bear their loads within the widths that they "
                             "may have.");
    else if (count == 0)
        ts_buffer_add(&text, "No arrangement has it there, whatever else is let go.");
    else
        ts_buffer_print(&text,
                        "No arrangement has it there.  %s%s; without %s it can be had, by speeds, "
                        "senses and room:",
                        count == 1 ? "One demand forbids it" : "These demands together forbid it",
                        w->conflict.held_count == 0 ? ", whatever becomes of all others" : "",
                        count == 1 ? "it" : "any one of them");
    send(page, &text);
    for (size_t i = 0; w->explained && w->conflict.found && i < w->conflict.count; i++)
        if (!ts_drive_place_owns(&w->place, &w->conflict.members[i].demand))
            ts_conflict_member_line(told, page, &w->conflict.members[i]);
    if (w->explained)
        ts_conflict_held(told, page, &w->conflict);
}

void ts_why_not_page(const ts_arrange_told *told, ts_page *page)
{
    for (size_t i = 0; i < told->why_not_count; i++) {
        const ts_why_not *w = &told->why_not[i];
        ts_buffer         text;
        ts_buffer_open(&text, page->out->allocator);
        ts_buffer_print(&text, "Why not %s?", w->asked);
        ts_page_heading(page, text.bytes);
        ts_buffer_close(&text);
        if (w->fits)
            fits(told, page, w);
        else
            fits_not(told, page, w);
    }
}

static void forbids(const ts_arrange_told *told, ts_json *json, const ts_why_not *w)
{
    static const struct {
        uint32_t    bar;
        const char *says;
    } bars[] = {
        {TS_BAR_START, "start"}, {TS_BAR_BOX, "box"}, {TS_BAR_FACE, "face"}, {TS_BAR_SIDE, "side"}};
    ts_json_key(json, "file_forbids");
    ts_json_array(json);
    for (size_t i = 0; i < sizeof bars / sizeof bars[0]; i++)
        if ((w->bars & bars[i].bar) != 0)
            ts_json_string(json, bars[i].says);
    ts_json_end(json, ']');
    ts_json_key(json, "conflict_known");
    ts_json_bool(json, !w->fits && w->explained);
    ts_json_key(json, "conflict");
    ts_json_array(json);
    for (size_t i = 0; !w->fits && w->explained && w->conflict.found && i < w->conflict.count; i++)
        if (!ts_drive_place_owns(&w->place, &w->conflict.members[i].demand))
            ts_conflict_member_json(json, told, &w->conflict.members[i]);
    ts_json_end(json, ']');
    ts_conflict_held_json(json, told, !w->fits && w->explained ? &w->conflict : NULL);
}

static void one_json(const ts_arrange_told *told, ts_json *json, const ts_why_not *w)
{
    ts_json_object(json);
    ts_json_key(json, "asked");
    ts_json_string(json, w->asked);
    ts_json_key(json, "fits");
    ts_json_bool(json, w->fits);
    ts_json_key(json, "proven");
    ts_json_bool(json, w->end == TS_ARRANGE_PROVEN);
    forbids(told, json, w);
    ts_json_key(json, "answer");
    if (w->fits) {
        ts_arranged_answer_json(json, told, &w->found, &w->verdict, regret(told, w));
    } else {
        ts_json_null(json);
    }
    ts_json_end(json, '}');
}

void ts_why_not_json(const ts_arrange_told *told, ts_json *json)
{
    ts_json_key(json, "why_not");
    ts_json_array(json);
    for (size_t i = 0; i < told->why_not_count; i++)
        one_json(told, json, &told->why_not[i]);
    ts_json_end(json, ']');
}
