/* Where does power become heat, what oil carries it away, and how warm does it get? */
#include "report/oil_grid.h"

#include "catalog/oil.h"
#include "report/check_page.h"

#include <math.h>

#define WIDE 1000000 /* columns of a page on which no sentence is broken */

/* ---- every condition ------------------------------------------------------------------------- */

enum {
    CONDITION,
    SPOOL,
    PADS,
    HEAT,
    LOST,
    FLOW,
    FEED,
    RISE,
    LEAVES,
    THICK,
    BALANCE,
    STATE_COLUMNS
};
static const char *const state_heads[STATE_COLUMNS] = {
    [CONDITION] = "condition", [SPOOL] = "from spool", [PADS] = "at pads",    [HEAT] = "heat",
    [LOST] = "lost",           [FLOW] = "oil",         [FEED] = "feed",       [RISE] = "rise",
    [LEAVES] = "leaves",       [THICK] = "nu",         [BALANCE] = "balance",
};

static void state_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const ts_heat_state *one   = ts_heat_state_at(s->oil->heat, 0, row, s->drive);
    const ts_heat_state *other = ts_heat_state_at(s->oil->heat, 1, row, s->drive);
    const double         most  = fmax(fabs(one->P_spool), fabs(one->P_pads));

    if (column == CONDITION)
        ts_buffer_add(text, s->answer->drive->conditions[row].name);
    else if (column == SPOOL)
        ts_oil_value(s, text, one->P_spool, TS_KIND_POWER, 4);
    else if (column == PADS)
        ts_oil_value(s, text, one->P_pads, TS_KIND_POWER, 4);
    else if (column == HEAT)
        ts_oil_both(s, text, one->heat, other->heat, TS_KIND_POWER, 3);
    else if (column == LOST && most > 0.0) {
        ts_buffer_fixed(text, 100.0 * one->heat / most, 1);
        ts_buffer_add(text, " %");
    } else if (column == FLOW)
        ts_oil_value(s, text, one->Q, TS_KIND_VOLUME_FLOW, 3);
    else if (column == FEED)
        ts_oil_value(s, text, one->theta_in, TS_KIND_TEMPERATURE, 3);
    else if (column == RISE && one->dry)
        ts_buffer_add(text, "no oil");
    else if ((column == RISE || column == LEAVES) && !one->settled && !one->dry)
        ts_buffer_add(text, TS_OIL_BOILS);
    else if (column == RISE)
        ts_oil_both(s, text, one->rise, other->rise, TS_KIND_TEMPERATURE_DIFFERENCE, 3);
    else if (column == LEAVES && !one->dry)
        ts_oil_value(s, text, one->theta_in + one->rise, TS_KIND_TEMPERATURE, 3);
    else if (column == LOST || column == LEAVES)
        ts_buffer_add(text, TS_OIL_NONE);
    else if (column == THICK)
        ts_oil_value(s, text, one->nu, TS_KIND_KINEMATIC_VISCOSITY, 3);
    else if (column == BALANCE)
        ts_buffer_add(text,
                      one->imbalance <= 1e-12 && other->imbalance <= 1e-12 ? "closes" : "OPEN");
}

static void print_states(ts_oil_sheet *s)
{
    const ts_oil_grid g = {state_heads, STATE_COLUMNS, s->oil->heat->motion->condition_count,
                           state_cell};
    ts_buffer         text;

    ts_buffer_open(&text, s->page->out->allocator);
    ts_buffer_print(
        &text,
        "The %s drive: power and heat %s, oil %s, its feed and return %s, nu %s; two methods",
        s->answer->drive->spools[s->answer->drive->drive[s->drive].spool].name,
        ts_oil_unit(s, TS_KIND_POWER), ts_oil_unit(s, TS_KIND_VOLUME_FLOW),
        ts_oil_unit(s, TS_KIND_TEMPERATURE), ts_oil_unit(s, TS_KIND_KINEMATIC_VISCOSITY));
    ts_oil_table(s, &text, &g);
}

/* ---- places ---------------------------------------------------------------------------------- */

typedef struct listed {
    uint32_t begin, end;
} listed;

/* Number `row` of the known places of a site. */
static uint32_t place_at(const ts_heat *heat, listed of, uint32_t row)
{
    for (uint32_t p = of.begin; p < of.end; p++)
        if (heat->places[p].missing == NULL && row-- == 0)
            return p;
    return of.begin;
}

static uint32_t count_of(const ts_heat *heat, listed of)
{
    uint32_t count = 0;

    for (uint32_t p = of.begin; p < of.end; p++)
        count += heat->places[p].missing == NULL;
    return count;
}

static listed meshes_of(const ts_heat *heat)
{
    return (listed){0, heat->bearing_begin};
}

static listed bearings_of(const ts_heat *heat)
{
    return (listed){heat->bearing_begin, heat->pad_begin};
}

static listed pads_of(const ts_heat *heat)
{
    return (listed){heat->pad_begin, heat->place_count};
}

enum { MESH, M_HEAT, M_TEETH, M_WIND, M_OIL, M_LOST, M_STATED, M_STATE, MESH_COLUMNS };
static const char *const mesh_heads[MESH_COLUMNS] = {
    [MESH] = "mesh", [M_HEAT] = "heat", [M_TEETH] = "teeth",   [M_WIND] = "windage",
    [M_OIL] = "oil", [M_LOST] = "lost", [M_STATED] = "stated", [M_STATE] = "to state",
};

static void mesh_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const ts_heat       *heat  = s->oil->heat;
    const uint32_t       p     = place_at(heat, meshes_of(heat), row);
    const ts_heat_place *place = &heat->places[p];
    const ts_heat_case  *one   = ts_heat_at(heat, 0, s->oil->condition, p);
    const ts_heat_case  *other = ts_heat_at(heat, 1, s->oil->condition, p);
    const double        *P     = ts_heat_power_at(heat, 0, s->oil->condition, p);
    const double         most  = fmax(fabs(P[0]), fabs(P[1]));

    if (column == MESH)
        ts_buffer_add(text, place->name);
    else if (column == M_HEAT) {
        ts_oil_watts_by_both(s, text, one->sum, other->sum);
        ts_buffer_add(text, other->law_ended ? "*" : "");
    } else if (column == M_TEETH)
        ts_oil_watts(s, text, one->P[TS_HEAT_TEETH]);
    else if (column == M_WIND)
        ts_oil_watts(s, text, one->P[TS_HEAT_WINDAGE]);
    else if (column == M_OIL)
        ts_oil_watts(s, text, one->P[TS_HEAT_OIL]);
    else if (column == M_LOST && most > 0.0) {
        ts_buffer_fixed(text, 100.0 * one->sum / most, 2);
        ts_buffer_add(text, " %");
    } else if (column == M_LOST) {
        ts_buffer_add(text, TS_OIL_NONE);
    } else {
        const double share = column == M_STATED
                                 ? s->answer->train->meshes[p].loss.value
                                 : ts_heat_share_to_state(heat, s->oil->condition, p);
        if (isnan(share)) {
            ts_buffer_add(text, TS_OIL_NONE);
            return;
        }
        ts_buffer_fixed(text, 100.0 * share, 2);
        ts_buffer_add(text, " %");
    }
}

enum { BEARING, B_HEAT, B_OIL, B_LOAD, B_NEEDS, B_GETS, B_HOLE, BEARING_COLUMNS };
static const char *const bearing_heads[BEARING_COLUMNS] = {
    [BEARING] = "bearing", [B_HEAT] = "heat",     [B_OIL] = "its oil", [B_LOAD] = "its load",
    [B_NEEDS] = "needs",   [B_GETS] = "is given", [B_HOLE] = "hole",
};

static void bearing_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const ts_heat      *heat  = s->oil->heat;
    const uint32_t      p     = place_at(heat, bearings_of(heat), row);
    const ts_heat_case *one   = ts_heat_at(heat, 0, s->oil->condition, p);
    const ts_heat_case *other = ts_heat_at(heat, 1, s->oil->condition, p);

    if (column == BEARING)
        ts_buffer_add(text, heat->places[p].name);
    else if (column == B_HEAT)
        ts_oil_watts_by_both(s, text, one->sum, other->sum);
    else if (column == B_OIL)
        ts_oil_watts(s, text, one->P[TS_HEAT_BEARING_OIL]);
    else if (column == B_LOAD)
        ts_oil_watts(s, text, one->P[TS_HEAT_BEARING_LOAD]);
    else if (column == B_NEEDS)
        ts_oil_value(s, text, heat->jets[p].need, TS_KIND_VOLUME_FLOW, 3);
    else if (column == B_GETS)
        ts_oil_value(s, text, heat->jets[p].Q, TS_KIND_VOLUME_FLOW, 3);
    else if (column == B_HOLE && heat->jets[p].count > 0)
        ts_oil_value(s, text, heat->jets[p].d, TS_KIND_LENGTH, 3);
    else
        ts_buffer_add(text, TS_OIL_NONE);
}

enum { PAD, P_HEAT, P_SEAL, P_SPLINE, P_SHARE, PAD_COLUMNS };
static const char *const pad_heads[PAD_COLUMNS] = {
    [PAD] = "pad",         [P_HEAT] = "heat",           [P_SEAL] = "seal",
    [P_SPLINE] = "spline", [P_SHARE] = "comes through",
};

static void pad_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const ts_heat      *heat  = s->oil->heat;
    const uint32_t      p     = place_at(heat, pads_of(heat), row);
    const ts_heat_case *one   = ts_heat_at(heat, 0, s->oil->condition, p);
    const ts_heat_case *other = ts_heat_at(heat, 1, s->oil->condition, p);
    const double        share =
        heat->share[s->oil->condition * s->answer->train->pad_count + heat->places[p].pad];

    if (column == PAD)
        ts_buffer_add(text, s->answer->train->pads[heat->places[p].pad].name);
    else if (column == P_HEAT)
        ts_oil_watts_by_both(s, text, one->sum, other->sum);
    else if (column == P_SEAL)
        ts_oil_watts(s, text, one->P[TS_HEAT_SEAL]);
    else if (column == P_SPLINE)
        ts_oil_watts(s, text, one->P[TS_HEAT_SPLINE]);
    else if (column == P_SHARE && !isnan(share)) {
        ts_buffer_fixed(text, 100.0 * share, 1);
        ts_buffer_add(text, " %");
    } else if (column == P_SHARE)
        ts_buffer_add(text, TS_OIL_NONE);
}

enum { JET, J_NEED, J_GETS, J_HOLES, J_SPEED, J_TEETH, J_SIDE, J_DEPTH, J_DRIFT, JET_COLUMNS };
static const char *const jet_heads[JET_COLUMNS] = {
    [JET] = "mesh",      [J_NEED] = "needs",  [J_GETS] = "is given",
    [J_HOLES] = "holes", [J_SPEED] = "jet",   [J_TEETH] = "teeth",
    [J_SIDE] = "side",   [J_DEPTH] = "depth", [J_DRIFT] = "drift",
};

static void jet_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const ts_heat     *heat = s->oil->heat;
    const uint32_t     p    = place_at(heat, meshes_of(heat), row);
    const ts_heat_jet *jet  = &heat->jets[p];

    if (column == JET)
        ts_buffer_add(text, heat->places[p].name);
    else if (column == J_NEED && isinf(jet->need))
        ts_buffer_add(text, "no flow does");
    else if (column == J_NEED)
        ts_oil_value(s, text, jet->need, TS_KIND_VOLUME_FLOW, 3);
    else if (jet->count == 0)
        ts_buffer_add(text, column == J_GETS ? "dips" : TS_OIL_NONE);
    else if (column == J_GETS)
        ts_oil_value(s, text, jet->Q, TS_KIND_VOLUME_FLOW, 3);
    else if (column == J_HOLES) {
        ts_buffer_print(text, "%d of ", jet->count);
        ts_oil_value(s, text, jet->d, TS_KIND_LENGTH, 3);
    } else if (column == J_SPEED)
        ts_oil_value(s, text, jet->v, TS_KIND_VELOCITY, 3);
    else if (column == J_TEETH)
        ts_oil_value(s, text, jet->v_t, TS_KIND_VELOCITY, 3);
    else if (column == J_SIDE)
        ts_buffer_add(text, ts_jet_side_says(jet->side));
    else if (column == J_DEPTH) {
        ts_oil_value(s, text, jet->depth, TS_KIND_LENGTH, 3);
        ts_buffer_add(text, " of ");
        ts_oil_value(s, text, jet->h, TS_KIND_LENGTH, 3);
    } else
        ts_oil_value(s, text, jet->drift, TS_KIND_LENGTH, 2);
}

static void print_places(const ts_oil_sheet *s)
{
    const ts_heat    *heat     = s->oil->heat;
    const char       *at       = s->answer->drive->conditions[s->oil->condition].name;
    const ts_oil_grid tables[] = {
        {mesh_heads, MESH_COLUMNS, count_of(heat, meshes_of(heat)), mesh_cell},
        {bearing_heads, BEARING_COLUMNS, count_of(heat, bearings_of(heat)), bearing_cell},
        {pad_heads, PAD_COLUMNS, count_of(heat, pads_of(heat)), pad_cell},
        {jet_heads, JET_COLUMNS, count_of(heat, meshes_of(heat)), jet_cell},
    };
    void (*const notes[])(const ts_oil_sheet *) = {ts_oil_meshes_note, ts_oil_bearings_note,
                                                   ts_oil_pads_note, ts_oil_jets_note};
    for (size_t i = 0; i < sizeof tables / sizeof tables[0]; i++) {
        ts_buffer text;
        if (tables[i].rows == 0)
            continue;
        ts_buffer_open(&text, s->page->out->allocator);
        if (i == 0)
            ts_buffer_print(&text,
                            "Meshes at %s: heat %s by two methods, its parts by the first, the "
                            "share of the power that is lost, the share that the ratings count "
                            "with, and the one that bears all losses by the worse method",
                            at, ts_oil_watt(s));
        else if (i == 1)
            ts_buffer_print(&text,
                            "Bearings at %s: heat %s by two methods, its parts by the first; "
                            "oil %s, hole %s",
                            at, ts_oil_watt(s), ts_oil_unit(s, TS_KIND_VOLUME_FLOW),
                            ts_oil_unit(s, TS_KIND_LENGTH));
        else if (i == 2)
            ts_buffer_print(&text,
                            "Pads at %s: heat %s of seal and spline by two methods, and the "
                            "share of the power at the spool that comes through",
                            at, ts_oil_watt(s));
        else
            ts_buffer_print(&text,
                            "Jets of the meshes, where the teeth are fastest: oil %s, speed of jet "
                            "and teeth %s, depth in the tooth space and drift by the wind %s",
                            ts_oil_unit(s, TS_KIND_VOLUME_FLOW), ts_oil_unit(s, TS_KIND_VELOCITY),
                            ts_oil_unit(s, TS_KIND_LENGTH));
        ts_oil_table(s, &text, &tables[i]);
        notes[i](s);
    }
}

/* ---- every place in every condition ---------------------------------------------------------- */

/* As many conditions as a table is wide, from s->unit on. */
#define CONDITIONS_A_TABLE (TS_OIL_COLUMNS - 1)

static void all_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const ts_heat *heat = s->oil->heat;
    const uint32_t p    = place_at(heat, (listed){0, heat->place_count}, row);

    if (column == 0)
        ts_buffer_add(text, heat->places[p].name);
    else
        ts_oil_watts(s, text, ts_heat_at(heat, 0, s->unit + (uint32_t)column - 1, p)->sum);
}

static void print_all_places(ts_oil_sheet *s)
{
    const ts_heat *heat       = s->oil->heat;
    const uint32_t conditions = heat->motion->condition_count;

    for (s->unit = 0; s->unit < conditions; s->unit += CONDITIONS_A_TABLE) {
        const char    *heads[TS_OIL_COLUMNS] = {"place"};
        const uint32_t here =
            conditions - s->unit < CONDITIONS_A_TABLE ? conditions - s->unit : CONDITIONS_A_TABLE;
        const ts_oil_grid g = {heads, (int)here + 1, count_of(heat, (listed){0, heat->place_count}),
                               all_cell};
        ts_buffer         text;

        for (uint32_t i = 0; i < here; i++)
            heads[i + 1] = s->answer->drive->conditions[s->unit + i].name;
        ts_buffer_open(&text, s->page->out->allocator);
        ts_buffer_print(&text, "Heat %s of every place in every condition, first method",
                        ts_oil_watt(s));
        ts_oil_table(s, &text, &g);
    }
}

/* ---- other feeds, cold oil ------------------------------------------------------------------- */

enum { F_DRIVE, F_FEED, F_HEAT, F_RISE, F_LEAVES, FEED_COLUMNS };
static const char *const feed_heads[FEED_COLUMNS] = {
    [F_DRIVE] = "drive", [F_FEED] = "feed",     [F_HEAT] = "heat",
    [F_RISE] = "rise",   [F_LEAVES] = "leaves",
};

static void feed_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const ts_heat_state *one = &s->oil->feeds[row];
    const uint32_t       d   = row / TS_OIL_FEEDS;

    if (column == F_DRIVE)
        ts_buffer_add(text, s->answer->drive->spools[s->answer->drive->drive[d].spool].name);
    else if (column == F_FEED)
        ts_oil_value(s, text, one->theta_in, TS_KIND_TEMPERATURE, 3);
    else if (column == F_HEAT)
        ts_oil_value(s, text, one->heat, TS_KIND_POWER, 3);
    else if (column == F_RISE)
        ts_oil_value(s, text, one->rise, TS_KIND_TEMPERATURE_DIFFERENCE, 3);
    else
        ts_oil_value(s, text, one->theta_in + one->rise, TS_KIND_TEMPERATURE, 3);
}

static void print_feeds(const ts_oil_sheet *s)
{
    const ts_oil_grid g = {feed_heads, FEED_COLUMNS,
                           (uint32_t)s->answer->drive->drive_count * TS_OIL_FEEDS, feed_cell};
    ts_buffer         text;

    ts_buffer_open(&text, s->page->out->allocator);
    ts_buffer_print(&text,
                    "With colder and warmer feed at %s, the same holes, first method: %s, %s",
                    s->answer->drive->conditions[s->oil->condition].name,
                    ts_oil_unit(s, TS_KIND_TEMPERATURE), ts_oil_unit(s, TS_KIND_POWER));
    ts_oil_table(s, &text, &g);
}

static void drag_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    /* The double nearest to 273.15 K is 2e-14 K off 0 degC, which nobody wants to read. */
    if (column == 0 && s->page->units == TS_UNITS_METRIC)
        ts_buffer_fixed(text, s->oil->cold[row] - 273.15, 1);
    else if (column == 0)
        ts_oil_value(s, text, s->oil->cold[row], TS_KIND_TEMPERATURE, 3);
    else
        ts_oil_value(s, text, s->oil->drag[row], TS_KIND_TORQUE, 3);
}

static void print_drag(const ts_oil_sheet *s)
{
    static const char *const heads[] = {"oil", "drag"};
    const ts_oil_grid        g       = {heads, 2, TS_OIL_COLDS, drag_cell};
    ts_buffer                text;

    if (s->oil->crank < 0)
        return;
    ts_buffer_open(&text, s->page->out->allocator);
    ts_buffer_print(
        &text,
        "Drag of the %s drive at its spool at %s (the first condition in which an accessory "
        "drives), oil of %s: %s, without what loads add",
        s->answer->drive->spools[s->oil->cranked].name,
        s->answer->drive->conditions[s->oil->crank].name, ts_oil_unit(s, TS_KIND_TEMPERATURE),
        ts_oil_unit(s, TS_KIND_TORQUE));
    ts_oil_table(s, &text, &g);
    ts_oil_drag_note(s);
}

/* ---- the page -------------------------------------------------------------------------------- */

static void print_oil(const ts_oil_sheet *s)
{
    const ts_oil *oil = &s->answer->drive->oil;
    ts_buffer     text;

    ts_buffer_open(&text, s->page->out->allocator);
    ts_buffer_print(&text, "Oil %s, ", ts_oil_keys[oil->specification.value]);
    ts_oil_value(s, &text, s->oil->heat->Q, TS_KIND_VOLUME_FLOW, 4);
    ts_buffer_print(&text, " %s %s in all, full from ", ts_oil_unit(s, TS_KIND_VOLUME_FLOW),
                    ts_measure_known(oil->flow) ? "given" : "sized here");
    ts_page_speed_text(s->page, &text, s->oil->heat->n_full);
    ts_buffer_print(&text, " %s of the spool on, in proportion to it below; ",
                    ts_oil_unit(s, TS_KIND_ROTATIONAL_SPEED));
    ts_oil_value(s, &text, oil->rise.value, TS_KIND_TEMPERATURE_DIFFERENCE, 3);
    ts_buffer_print(&text, " %s allowed, at most ", ts_oil_unit(s, TS_KIND_TEMPERATURE_DIFFERENCE));
    ts_oil_value(s, &text, oil->hottest.value, TS_KIND_TEMPERATURE, 3);
    ts_buffer_print(&text,
                    " %s.  Methods: ISO/TR 14179-2, Palmgren, Anderson and Loewenthal's "
                    "windage / Anderson and Loewenthal's teeth, ISO/TR 14179-1, Dawson; "
                    "constants from memory.  All heat is taken to go into the oil.",
                    ts_oil_unit(s, TS_KIND_TEMPERATURE));
    if (s->oil->heat->skipped > 0)
        ts_buffer_print(&text, "  %u bearings are not known and left out.",
                        (unsigned)s->oil->heat->skipped);
    ts_page_wrap_made(s->page, &text, 0, 0);
}

void ts_oil_page(const ts_oil_answer *oil, const ts_answer *answer, ts_page *page)
{
    ts_oil_sheet s = {.oil = oil, .answer = answer, .page = page};

    ts_answer_title(answer, page);
    if (oil->heat->missing != NULL) {
        ts_buffer text;
        ts_buffer_open(&text, page->out->allocator);
        ts_buffer_print(&text, "Not computable: %s is not known.", oil->heat->missing);
        ts_page_wrap_made(page, &text, 0, 0);
        ts_oil_units_tables(&s);
        return;
    }
    print_oil(&s);
    for (s.drive = 0; s.drive < answer->drive->drive_count; s.drive++)
        print_states(&s);
    ts_oil_states_note(&s);
    ts_oil_shares(&s);
    print_places(&s);
    print_feeds(&s);
    print_drag(&s);
    if (page->all)
        print_all_places(&s);
    ts_oil_units_tables(&s);
    ts_oil_sources(&s);
    ts_oil_assumptions_page(answer, page);
}

/* ---- the same in a report -------------------------------------------------------------------- */

void ts_chapter_heat(ts_chapter *chapter, const ts_oil_answer *oil)
{
    ts_page      page = chapter->page;
    ts_oil_sheet s    = {.oil = oil, .answer = chapter->answer, .page = &page, .chapter = chapter};

    ts_manuscript_heading(chapter->manuscript, 1, "Oil and heat");
    if (oil->heat->missing != NULL) {
        ts_buffer_print(&chapter->cell, "Not computable: %s is not known.", oil->heat->missing);
        if (!chapter->cell.failed)
            ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
        ts_buffer_clear(&chapter->cell);
        return;
    }
    page.columns = WIDE;
    print_oil(&s);
    if (!chapter->cell.failed)
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
    for (s.drive = 0; s.drive < chapter->answer->drive->drive_count; s.drive++)
        print_states(&s);
    ts_oil_states_note(&s);
    ts_oil_shares(&s);
    print_places(&s);
    print_feeds(&s);
    print_drag(&s);
    print_all_places(&s);
    ts_oil_units_tables(&s);
    ts_oil_sources(&s);
    ts_oil_assumptions_cells(chapter);
    ts_manuscript_figure(chapter->manuscript, "heat", NULL,
                         "Where power becomes heat, in the condition with most power.");
}
