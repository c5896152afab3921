/* What kind of place turns how much power into heat? */
#include "report/oil_grid.h"

#include <math.h>

typedef struct share_row {
    const char  *name;
    ts_heat_kind kinds[2]; /* TS_HEAT_KINDS: none */
} share_row;

/* The second method has one coefficient for all of a bearing, so that it stands in one row. */
static const share_row rows[] = {
    {"teeth, sliding and rolling", {TS_HEAT_TEETH, TS_HEAT_KINDS}},
    {"windage of gears", {TS_HEAT_WINDAGE, TS_HEAT_KINDS}},
    {"oil churned or thrown off", {TS_HEAT_OIL, TS_HEAT_KINDS}},
    {"bearings, oil and load", {TS_HEAT_BEARING_OIL, TS_HEAT_BEARING_LOAD}},
    {"seals of pads", {TS_HEAT_SEAL, TS_HEAT_KINDS}},
    {"splines of pads", {TS_HEAT_SPLINE, TS_HEAT_KINDS}},
};
enum { SHARE_ROWS = sizeof rows / sizeof rows[0] };

enum { WHERE, HEAT, SHARE_1, SHARE_2, SHARE_COLUMNS };
static const char *const heads[SHARE_COLUMNS] = {
    [WHERE] = "where", [HEAT] = "heat", [SHARE_1] = "first method", [SHARE_2] = "second"};

static double lost_in(const ts_oil_sheet *s, const share_row *row, int method)
{
    const ts_heat *heat = s->oil->heat;
    double         sum  = 0.0;

    for (uint32_t p = 0; p < heat->place_count; p++)
        for (int k = 0; k < 2; k++)
            if (heat->places[p].missing == NULL && heat->places[p].drive == s->drive &&
                row->kinds[k] != TS_HEAT_KINDS)
                sum += ts_heat_at(heat, method, s->oil->condition, p)->P[row->kinds[k]];
    return sum;
}

static void cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const int            method = column == SHARE_2 ? 1 : 0;
    const ts_heat_state *state =
        ts_heat_state_at(s->oil->heat, method, s->oil->condition, s->drive);
    const double most = fmax(fabs(state->P_spool), fabs(state->P_pads));

    if (column == WHERE)
        ts_buffer_add(text, rows[row].name);
    else if (column == HEAT)
        ts_oil_watts_by_both(s, text, lost_in(s, &rows[row], 0), lost_in(s, &rows[row], 1));
    else if (most > 0.0) {
        ts_buffer_fixed(text, 100.0 * lost_in(s, &rows[row], method) / most, 2);
        ts_buffer_add(text, " %");
    } else
        ts_buffer_add(text, TS_OIL_NONE);
}

/* ---- what the cooler takes --------------------------------------------------------------------
 */

/* W of all drives, and W that the packs put into their oil. */
static void add_up(const ts_oil_sheet *s, uint32_t condition, double *drives, double *packs)
{
    const ts_heat      *heat  = s->oil->heat;
    const ts_oil_units *units = &heat->power->units;

    *drives = *packs = 0.0;
    for (uint32_t d = 0; d < s->answer->drive->drive_count; d++)
        *drives += ts_heat_state_at(heat, 0, condition, d)->heat;
    for (uint32_t i = 0; i < units->pack_count; i++)
        if (units->packs[i].missing == NULL && units->packs[i].states[condition].P > 0.0)
            *packs += units->packs[i].states[condition].P;
}

static void tell_cooler(const ts_oil_sheet *s)
{
    double    most = -1.0, drives, packs;
    uint32_t  at   = 0;
    ts_buffer text;

    for (uint32_t c = 0; c < s->oil->heat->motion->condition_count; c++) {
        add_up(s, c, &drives, &packs);
        if (drives + packs > most) {
            most = drives + packs;
            at   = c;
        }
    }
    add_up(s, at, &drives, &packs);
    ts_buffer_open(&text, s->answer->allocator);
    ts_buffer_add(&text, "For the cooler, first method: ");
    ts_oil_value(s, &text, drives, TS_KIND_POWER, 3);
    ts_buffer_print(&text, " %s from all drives", ts_oil_unit(s, TS_KIND_POWER));
    if (packs > 0.0) {
        ts_buffer_add(&text, " and ");
        ts_oil_value(s, &text, packs, TS_KIND_POWER, 3);
        ts_buffer_print(&text,
                        " %s that the pumps put into their oil, which warms tank and lines and is "
                        "not in the temperatures above",
                        ts_oil_unit(s, TS_KIND_POWER));
    }
    ts_buffer_print(&text,
                    ", most at %s; what the bearings of the engine and its air give the oil comes "
                    "on top.",
                    s->answer->drive->conditions[at].name);
    ts_oil_note_made(s, &text);
}

/* ---- the whole --------------------------------------------------------------------------------
 */

void ts_oil_shares(ts_oil_sheet *s)
{
    const ts_oil_grid g = {heads, SHARE_COLUMNS, SHARE_ROWS, cell};

    for (s->drive = 0; s->drive < s->answer->drive->drive_count; s->drive++) {
        ts_buffer text;
        ts_buffer_open(&text, s->page->out->allocator);
        ts_buffer_print(
            &text,
            "What the %s drive loses at %s, %s by two methods, and its share of the larger power",
            s->answer->drive->spools[s->answer->drive->drive[s->drive].spool].name,
            s->answer->drive->conditions[s->oil->condition].name, ts_oil_watt(s));
        ts_oil_table(s, &text, &g);
    }
    tell_cooler(s);
    ts_oil_note(s,
                "Bearings: the first method is Palmgren's law with the f_0 of bearings that jets "
                "fill; one that is fed sparingly and drains well takes half of it (f_0 of an "
                "oil bath, Harris, from memory), and the second knows their load alone. Gears "
                "are taken without a shroud, which saves a third to two thirds of their windage "
                "(from memory); seals as rubbing ones, where fast pads have face or labyrinth "
                "seals. So the first method is the side to size oil by, and no estimate of the "
                "least.");
}
