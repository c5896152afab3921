/* Which take-offs do the rules refuse by their own parts, whatever stands on the box? */
#include "study/arranging.h"

#include <string.h>

/* Is that among the parts between the spool and the gears of its box? */
static bool is_between(const ts_arranging *a, size_t box, ts_text address)
{
    static const char *const parts[] = {"/take-off", "/tower shaft", "/box/bevels"};
    const ts_text            head    = TS_TEXT("drive/");
    const ts_text            spool   = ts_text_of(a->problem.problem.boxes[box].name);
    const size_t             from    = head.length + spool.length;
    if (address.length < from || memcmp(address.at, head.at, head.length) != 0 ||
        memcmp(address.at + head.length, spool.at, spool.length) != 0)
        return false;
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
        const size_t length = strlen(parts[i]);
        if (address.length >= from + length && memcmp(address.at + from, parts[i], length) == 0 &&
            (address.length == from + length || address.at[from + length] == '/'))
            return true;
    }
    return false;
}

void ts_arranging_note_refusal(const ts_arranging *a, const char *says, const char *address,
                               ts_arranged_verdict *out)
{
    for (size_t b = 0; b < a->problem.problem.box_count; b++)
        if (out->between[b].says == NULL && is_between(a, b, ts_text_of(address)))
            out->between[b] = (ts_refusal){says, address};
}

/* ---- leaving out ----------------------------------------------------------------------------- */

static void leave_out_of(ts_drive_problem *problem, size_t box, uint32_t take_off)
{
    ts_arrange_box    *frame = (ts_arrange_box *)&problem->problem.boxes[box];
    ts_arrange_choice *all   = (ts_arrange_choice *)frame->choices; /* made by us, in our arena */
    uint32_t           kept  = 0;
    for (uint32_t i = 0; i < frame->choice_count; i++)
        if (all[i].take_off != take_off)
            all[kept++] = all[i];
    frame->choice_count = kept;
}

bool ts_arranging_leave_out(ts_arranging *a, const ts_struck *one)
{
    const ts_arrange_box *frame  = &a->problem.problem.boxes[one->box];
    bool                  others = false, there = false;
    for (uint32_t i = 0; i < frame->choice_count; i++) {
        others = others || frame->choices[i].take_off != one->take_off;
        there  = there || frame->choices[i].take_off == one->take_off;
    }
    if (!others || !there || a->struck_count == STRUCK_MOST)
        return false;
    leave_out_of(&a->problem, one->box, one->take_off);
    leave_out_of(&a->loose, one->box, one->take_off);
    a->struck[a->struck_count++] = *one;
    return true;
}

/* ---- which ----------------------------------------------------------------------------------- */

static uint32_t take_off_of(const ts_arranging *a, size_t answer, size_t box)
{
    const ts_arranged_box *found = &a->result.answers[answer].boxes[box];
    return found->present ? a->problem.problem.boxes[box].choices[found->choice].take_off
                          : UINT32_MAX;
}

/* Every answer with the take-off that this one has is refused by its parts. */
static bool is_refused(const ts_arranging *a, const ts_arranged_verdict *verdicts, size_t answer,
                       size_t box, ts_struck *out)
{
    const uint32_t take_off = take_off_of(a, answer, box);
    *out                    = (ts_struck){.box      = box,
                                          .take_off = take_off,
                                          .mass     = a->result.answers[answer].mass,
                                          .says     = verdicts[answer].between[box].says,
                                          .address  = verdicts[answer].between[box].address};
    for (size_t i = 0; i < a->result.count; i++) {
        if (take_off_of(a, i, box) != take_off)
            continue;
        if (verdicts[i].between[box].says == NULL)
            return false;
        out->answers++;
    }
    return take_off != UINT32_MAX;
}

bool ts_arranging_strike(ts_arranging *a, const ts_arranged_verdict *verdicts)
{
    ts_struck list[STRUCK_MOST];
    size_t    count = 0, done = 0;
    /* All are found before any is left out, which renumbers the choices. */
    for (size_t i = 0; i < a->result.count; i++)
        for (size_t b = 0; b < a->problem.problem.box_count; b++)
            if (a->problem.take_offs[b].count > 1 && count < STRUCK_MOST &&
                is_refused(a, verdicts, i, b, &list[count]))
                count++;
    for (size_t i = 0; i < count; i++)
        done += ts_arranging_leave_out(a, &list[i]) ? 1 : 0;
    return done > 0;
}
