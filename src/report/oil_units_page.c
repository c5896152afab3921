/* report/oil_units_page.c: what is told of pump packs and breathers? */
#include "report/oil_grid.h"

#include "pump/windmill.h"

#include <math.h>

#define CM3   1e-6
#define INCH3 1.6387064e-5
#define DOT   "\xC2\xB7"

static const ts_pack *pack_of(const ts_oil_sheet *s)
{
    return &s->oil->heat->power->units.packs[s->unit];
}

static const ts_breather *breather_of(const ts_oil_sheet *s)
{
    return &s->oil->heat->power->units.breathers[s->unit];
}

static bool is_windmill(const ts_oil_sheet *s, uint32_t row)
{
    return row >= s->answer->drive->condition_count;
}

static const char *row_name(const ts_oil_sheet *s, uint32_t row)
{
    return is_windmill(s, row) ? "(windmill)" : s->answer->drive->conditions[row].name;
}

/* The slowest and the fastest condition that lasts. */
static uint32_t end_of(const ts_oil_sheet *s, bool fastest)
{
    const ts_pack *pack = pack_of(s);
    uint32_t       at   = TS_NOWHERE;

    for (uint32_t c = 0; c < s->answer->drive->condition_count; c++) {
        const double n = pack->states[c].n;
        if (!ts_condition_lasts(&s->answer->drive->conditions[c]) || !(n > 0.0))
            continue;
        if (at == TS_NOWHERE || (fastest ? n > pack->states[at].n : n < pack->states[at].n))
            at = c;
    }
    return at == TS_NOWHERE ? 0 : at;
}

/* A sentence onto the page, or into the chapter; closes it. */
static void put_words(const ts_oil_sheet *s, ts_buffer *text)
{
    if (s->chapter == NULL) {
        ts_page_wrap_made(s->page, text, 0, 0);
        return;
    }
    if (!text->failed)
        ts_manuscript_text(s->chapter->manuscript, TS_BLOCK_PLAIN, text->bytes);
    s->chapter->manuscript->failed = s->chapter->manuscript->failed || text->failed;
    ts_buffer_close(text);
}

static void percent(ts_buffer *text, double share, int digits)
{
    if (isfinite(share)) {
        ts_buffer_fixed(text, 100.0 * share, digits);
        ts_buffer_add(text, " %");
    } else
        ts_buffer_add(text, DOT);
}

static void number(ts_buffer *text, double value, int digits)
{
    if (isfinite(value))
        ts_buffer_significant(text, value, digits);
    else
        ts_buffer_add(text, DOT);
}

static double volume(const ts_oil_sheet *s)
{
    return s->page->units == TS_UNITS_METRIC ? CM3 : INCH3;
}

/* ---- elements -------------------------------------------------------------------------------- */

enum { ELEMENT, SUMP, V_G, WIDTH, SIZED, ETA_V, SLOW, FAST, TORQUE, PLUG, ELEMENT_COLUMNS };
static const char *const element_heads[ELEMENT_COLUMNS] = {
    [ELEMENT] = "element", [SUMP] = "draws from", [V_G] = "a turn", [WIDTH] = "width",
    [SIZED] = "sized at",  [ETA_V] = "eta_v",     [SLOW] = "idle",  [FAST] = "fast",
    [TORQUE] = "torque",   [PLUG] = "plug",
};

static const ts_pack_case *case_of(const ts_pack *pack, uint32_t row, uint32_t element)
{
    return &pack->cases[(size_t)row * TS_PACK_ELEMENTS + element];
}

static void reserve(const ts_pack *pack, uint32_t row, uint32_t element, ts_buffer *text)
{
    const ts_pack_case *one = case_of(pack, row, element);

    percent(text, one->need > 0.0 ? one->able / one->need : (double)NAN, 0);
}

static void element_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const ts_pack         *pack = pack_of(s);
    const ts_pack_element *one  = &pack->elements[row];
    const uint32_t         slow = end_of(s, false), fast = end_of(s, true);

    if (column == ELEMENT)
        ts_buffer_add(text, one->name);
    else if (column == SUMP)
        ts_buffer_add(text, one->sump == NULL ? "tank" : one->sump->name);
    else if (column == V_G)
        number(text, one->V_g / volume(s), 3);
    else if (column == WIDTH && isfinite(one->b))
        ts_oil_value(s, text, one->b, TS_KIND_LENGTH, 3);
    else if (column == SIZED)
        ts_buffer_add(text, one->given ? "(told)" : row_name(s, (uint32_t)one->sized_at));
    else if (column == ETA_V) {
        percent(text, case_of(pack, slow, row)->eta_v, 0);
        ts_buffer_add(text, " / ");
        percent(text, case_of(pack, fast, row)->eta_v, 0);
    } else if (column == SLOW)
        reserve(pack, slow, row, text);
    else if (column == FAST)
        reserve(pack, fast, row, text);
    else if (column == TORQUE)
        ts_oil_value(s, text, case_of(pack, fast, row)->T, TS_KIND_TORQUE, 3);
    else if (column == PLUG && one->told != NULL)
        ts_buffer_add(text, !ts_pick_known(one->told->chip_plug)   ? "not told"
                            : one->told->chip_plug.value == TS_YES ? "yes"
                                                                   : "none");
}

static void print_elements(const ts_oil_sheet *s)
{
    const ts_pack    *pack = pack_of(s);
    const ts_oil_grid g    = {element_heads, ELEMENT_COLUMNS, pack->element_count, element_cell};
    ts_buffer         text;

    ts_buffer_open(&text, s->answer->allocator);
    ts_buffer_print(&text, "Pumps of %s: gears of %d teeth, tips ",
                    s->answer->drive->accessories[pack->accessory].name,
                    (int)pack->told->teeth.value);
    ts_oil_value(s, &text, pack->d_a, TS_KIND_LENGTH, 3);
    ts_buffer_print(&text, " %s across and ", ts_oil_unit(s, TS_KIND_LENGTH));
    ts_oil_value(s, &text, pack->v_a, TS_KIND_VELOCITY, 3);
    ts_buffer_print(&text, " %s at %s, pack ", ts_oil_unit(s, TS_KIND_VELOCITY),
                    s->answer->drive->conditions[pack->fastest].name);
    ts_oil_value(s, &text, pack->length, TS_KIND_LENGTH, 3);
    ts_buffer_print(&text,
                    " %s long; %s a turn, volumetric efficiency and what each moves over what it "
                    "must at %s / %s, torque %s at %s",
                    ts_oil_unit(s, TS_KIND_LENGTH), volume(s) > CM3 ? "in3" : "cm3",
                    row_name(s, end_of(s, false)), row_name(s, end_of(s, true)),
                    ts_oil_unit(s, TS_KIND_TORQUE), row_name(s, end_of(s, true)));
    ts_oil_table(s, &text, &g);
}

/* ---- conditions ------------------------------------------------------------------------------ */

enum { ROW, SPEED, OIL, PRESSURE, FED, SPARE, P_TORQUE, P_POWER, P_STATED, PACK_COLUMNS };
static const char *const pack_heads[PACK_COLUMNS] = {
    [ROW] = "condition",   [SPEED] = "speed",   [OIL] = "oil",
    [PRESSURE] = "behind", [FED] = "fed",       [SPARE] = "over valve",
    [P_TORQUE] = "torque", [P_POWER] = "power", [P_STATED] = "stated",
};

static void pack_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const ts_pack       *pack = pack_of(s);
    const ts_pack_state *one  = &pack->states[row];

    if (column == ROW)
        ts_buffer_add(text, row_name(s, row));
    else if (column == SPEED)
        ts_page_speed_text(s->page, text, one->n);
    else if (column == OIL)
        ts_oil_value(s, text, one->theta, TS_KIND_TEMPERATURE, 3);
    else if (column == PRESSURE)
        ts_buffer_fixed(text,
                        one->p / (s->page->units == TS_UNITS_METRIC ? 1e5 : 6894.757293168361),
                        s->page->units == TS_UNITS_METRIC ? 2 : 1);
    else if (column == FED)
        ts_oil_value(s, text, one->Q, TS_KIND_VOLUME_FLOW, 3);
    else if (column == SPARE)
        ts_oil_value(s, text, one->spare, TS_KIND_VOLUME_FLOW, 3);
    else if (column == P_TORQUE)
        ts_oil_value(s, text, one->T, TS_KIND_TORQUE, 3);
    else if (column == P_POWER)
        ts_oil_value(s, text, one->P, TS_KIND_POWER, 3);
    else if (column == P_STATED && !is_windmill(s, row)) {
        const ts_measure told = s->answer->drive->accessories[pack->accessory].power[row];
        if (ts_measure_known(told))
            ts_oil_value(s, text, told.value, TS_KIND_POWER, 3);
        else
            ts_buffer_add(text, "as computed");
    }
}

static void add_spool_speed(const ts_oil_sheet *s, const ts_pack *pack, double share,
                            ts_buffer *text)
{
    ts_oil_value(s, text, ts_pack_spool_speed(&s->oil->heat->power->units, pack, share),
                 TS_KIND_ROTATIONAL_SPEED, 3);
    ts_buffer_print(text, " %s", ts_oil_unit(s, TS_KIND_ROTATIONAL_SPEED));
}

/* Down to which speed of the spool it feeds, while air alone turns it. */
static void say_slowest(const ts_oil_sheet *s, const ts_pack *pack)
{
    ts_buffer text;

    if (isnan(ts_pack_spool_speed(&s->oil->heat->power->units, pack, 1.0)))
        return;
    ts_buffer_open(&text, s->answer->allocator);
    ts_buffer_add(&text, "With oil as it is fed the jets have all of their pressure down to ");
    add_spool_speed(s, pack, 1.0, &text);
    ts_buffer_add(&text, " of the spool, half of it, and 71 % of the flow, down to ");
    add_spool_speed(s, pack, 0.5, &text);
    ts_buffer_add(&text, ", a tenth, and 32 % of the flow, down to ");
    add_spool_speed(s, pack, 0.1, &text);
    ts_buffer_add(&text, ".");
    put_words(s, &text);
}

static void print_rows(const ts_oil_sheet *s)
{
    const ts_pack    *pack = pack_of(s);
    const ts_oil_grid g    = {pack_heads, PACK_COLUMNS, pack->rows, pack_cell};
    ts_buffer         text;

    ts_buffer_open(&text, s->answer->allocator);
    ts_buffer_print(&text,
                    "What %s gives and takes: speed %s, oil %s, pressure %s, flow %s, torque %s, "
                    "power %s%s",
                    s->answer->drive->accessories[pack->accessory].name,
                    ts_oil_unit(s, TS_KIND_ROTATIONAL_SPEED), ts_oil_unit(s, TS_KIND_TEMPERATURE),
                    s->page->units == TS_UNITS_METRIC ? "bar" : "psi",
                    ts_oil_unit(s, TS_KIND_VOLUME_FLOW), ts_oil_unit(s, TS_KIND_TORQUE),
                    ts_oil_unit(s, TS_KIND_POWER),
                    pack->rows > s->answer->drive->condition_count
                        ? ""
                        : "; nothing is told of the windmill, for the file has no `windmill`");
    ts_oil_table(s, &text, &g);
    say_slowest(s, pack);
}

/* ---- attitudes ------------------------------------------------------------------------------- */

enum { ATTITUDE, PITCH, ROLL, A_SUMP, DRAW, DRY, TAKES, ATTITUDE_COLUMNS };
static const char *const attitude_heads[ATTITUDE_COLUMNS] = {
    [ATTITUDE] = "attitude", [PITCH] = "pitch", [ROLL] = "roll",  [A_SUMP] = "sump",
    [DRAW] = "draw",         [DRY] = "do not",  [TAKES] = "take",
};

static void list_dips(const ts_oil_sheet *s, const ts_sump *sump, const ts_pack_dip *dips,
                      bool covered, ts_buffer *text)
{
    const ts_pack *pack  = pack_of(s);
    bool           first = true;

    for (uint32_t e = 1; e < pack->element_count; e++) {
        if (pack->elements[e].sump != sump || dips[e].covered != covered)
            continue;
        ts_buffer_print(text, "%s%s ", first ? "" : ", ", pack->elements[e].name);
        ts_oil_value(s, text, dips[e].cover, TS_KIND_LENGTH, 2);
        first = false;
    }
    if (first)
        ts_buffer_add(text, "none");
}

static void attitude_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const ts_pack     *pack  = pack_of(s);
    const uint32_t     sumps = (uint32_t)pack->told->sump_count;
    const uint32_t     a = row / sumps, i = row % sumps;
    const ts_attitude *told = a > 0 ? &pack->told->attitudes[a - 1] : NULL;
    const ts_pack_dip *dips = &pack->dips[(size_t)a * TS_PACK_ELEMENTS];
    const ts_sump     *sump = &pack->told->sumps[i];

    if (column == ATTITUDE)
        ts_buffer_add(text, told == NULL ? "(level)" : told->name);
    else if (column == PITCH)
        ts_oil_value(s, text, told == NULL ? 0.0 : told->pitch.value, TS_KIND_ANGLE, 3);
    else if (column == ROLL)
        ts_oil_value(s, text, told == NULL ? 0.0 : told->roll.value, TS_KIND_ANGLE, 3);
    else if (column == A_SUMP)
        ts_buffer_add(text, sump->name);
    else if (column == DRAW || column == DRY)
        list_dips(s, sump, dips, column == DRAW, text);
    else
        percent(text, pack->taken[(size_t)a * sumps + i], 0);
}

static void print_attitudes(const ts_oil_sheet *s)
{
    const ts_pack    *pack = pack_of(s);
    const ts_oil_grid g    = {attitude_heads, ATTITUDE_COLUMNS,
                              ts_pack_attitudes(pack) * (uint32_t)pack->told->sump_count,
                              attitude_cell};
    ts_buffer         text;

    ts_buffer_open(&text, s->answer->allocator);
    ts_buffer_print(&text,
                    "Attitudes of %s, %s: which pick-ups draw, with %s of oil over each (negative: "
                    "dry), and what they take over the oil that comes, where least",
                    s->answer->drive->accessories[pack->accessory].name,
                    ts_oil_unit(s, TS_KIND_ANGLE), ts_oil_unit(s, TS_KIND_LENGTH));
    ts_oil_table(s, &text, &g);
}

/* ---- breathers ------------------------------------------------------------------------------- */

enum { B_ROW, B_SPEED, B_AIR, B_CUT, B_RE, B_DROP, B_TORQUE, B_POWER, B_STATED, BREATHER_COLUMNS };
static const char *const breather_heads[BREATHER_COLUMNS] = {
    [B_ROW] = "condition", [B_SPEED] = "speed", [B_AIR] = "air",
    [B_CUT] = "passes",    [B_RE] = "Re",       [B_DROP] = "drop",
    [B_TORQUE] = "torque", [B_POWER] = "power", [B_STATED] = "stated",
};

/* A breather takes little: three digits of W, or of the unit that is shown for power. */
static void few_watts(const ts_oil_sheet *s, ts_buffer *text, double P)
{
    if (s->page->units == TS_UNITS_METRIC)
        number(text, P, 3);
    else
        ts_oil_value(s, text, P, TS_KIND_POWER, 3);
}

static void breather_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    const ts_breather      *breather = breather_of(s);
    const ts_breather_case *one      = &breather->cases[row];

    if (column == B_ROW)
        ts_buffer_add(text, row_name(s, row));
    else if (column == B_SPEED)
        ts_page_speed_text(s->page, text, one->n);
    else if (column == B_AIR)
        ts_oil_value(s, text, one->Q, TS_KIND_VOLUME_FLOW, 3);
    else if (column == B_CUT && isinf(one->d_cut))
        ts_buffer_add(text, "all");
    else if (column == B_CUT)
        number(text, one->d_cut * 1e6, 3);
    else if (column == B_RE)
        number(text, one->Re, 2);
    else if (column == B_DROP)
        number(text, one->dp / (s->page->units == TS_UNITS_METRIC ? 1e5 : 6894.757293168361), 3);
    else if (column == B_TORQUE)
        ts_oil_value(s, text, one->T, TS_KIND_TORQUE, 3);
    else if (column == B_POWER)
        few_watts(s, text, one->P);
    else {
        const ts_measure told = s->answer->drive->accessories[breather->accessory].power[row];
        if (ts_measure_known(told))
            few_watts(s, text, told.value);
        else
            ts_buffer_add(text, "as computed");
    }
}

static void print_breather(const ts_oil_sheet *s)
{
    const ts_breather *breather = breather_of(s);
    const ts_oil_grid  g        = {breather_heads, BREATHER_COLUMNS,
                                   (uint32_t)s->answer->drive->condition_count, breather_cell};
    ts_buffer          text;

    ts_buffer_open(&text, s->answer->allocator);
    ts_buffer_print(
        &text,
        "Separator of %s: the largest drop that passes um (in both systems), its Reynolds number "
        "(Stokes' "
        "law holds to about 1), pressure drop %s, air %s, speed %s, torque %s, power %s: what "
        "gives the "
        "air its swirl, and what the file states and the ratings count with",
        s->answer->drive->accessories[breather->accessory].name,
        s->page->units == TS_UNITS_METRIC ? "bar" : "psi", ts_oil_unit(s, TS_KIND_VOLUME_FLOW),
        ts_oil_unit(s, TS_KIND_ROTATIONAL_SPEED), ts_oil_unit(s, TS_KIND_TORQUE), ts_oil_watt(s));
    ts_oil_table(s, &text, &g);
}

/* ---- all ------------------------------------------------------------------------------------- */

static void say_missing(const ts_oil_sheet *s, int32_t accessory, const char *missing)
{
    ts_buffer text;

    ts_buffer_open(&text, s->answer->allocator);
    ts_buffer_print(&text, "Not computable of %s: %s is not known.",
                    s->answer->drive->accessories[accessory].name, missing);
    put_words(s, &text);
}

void ts_oil_units_tables(ts_oil_sheet *s)
{
    const ts_oil_units *units = &s->oil->heat->power->units;

    for (s->unit = 0; s->unit < units->pack_count; s->unit++) {
        if (pack_of(s)->missing != NULL) {
            say_missing(s, pack_of(s)->accessory, pack_of(s)->missing);
            continue;
        }
        print_elements(s);
        print_rows(s);
        print_attitudes(s);
    }
    for (s->unit = 0; s->unit < units->breather_count; s->unit++)
        if (breather_of(s)->missing != NULL)
            say_missing(s, breather_of(s)->accessory, breather_of(s)->missing);
        else
            print_breather(s);
}
