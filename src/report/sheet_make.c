/* What is there to say of one pad to the maker of its accessory? */
#include "report/sheet_report.h"

#include <math.h>
#include <stdarg.h>
#include <string.h>

const char *const ts_sheet_titles[TS_SHEET_PARTS] = {
    [TS_SHEET_TORQUES] = "Torques at the pad",
    [TS_SHEET_SPLINE]  = "Spline",
    [TS_SHEET_BODY]    = "Body and mass of the accessory",
    [TS_SHEET_PLACE]   = "Place of the pad",
};

typedef struct maker {
    const ts_answer    *answer;
    const ts_accessory *accessory;
    const ts_pad       *pad;
    ts_arena           *arena;
    ts_sheet           *out;
    bool                failed;
} maker;

static const char *worded(maker *m, const char *format, ...) __attribute__((format(printf, 2, 3)));

static const char *worded(maker *m, const char *format, ...)
{
    va_list   list;
    ts_buffer text;
    ts_buffer_open(&text, m->answer->allocator);
    va_start(list, format);
    ts_buffer_print_list(&text, format, list);
    va_end(list);
    const char *kept = text.failed ? NULL : ts_arena_copy(m->arena, text.bytes, text.length);
    m->failed        = m->failed || kept == NULL;
    ts_buffer_close(&text);
    return kept != NULL ? kept : "";
}

static const char *address_of(maker *m, ts_node node)
{
    ts_buffer text;
    ts_buffer_open(&text, m->answer->allocator);
    ts_source_address(m->answer->source, node, &text);
    const char *kept = text.failed ? NULL : ts_arena_copy(m->arena, text.bytes, text.length);
    m->failed        = m->failed || kept == NULL;
    ts_buffer_close(&text);
    return kept != NULL ? kept : "";
}

/* "12.5 N.m (110.6 lbf.in)" */
static const char *both(maker *m, double si, ts_kind kind)
{
    ts_buffer text;
    ts_buffer_open(&text, m->answer->allocator);
    ts_quantity_show(&text, si, ts_kind_shown(kind, TS_UNITS_METRIC), 4);
    ts_buffer_add(&text, " (");
    ts_quantity_show(&text, si, ts_kind_shown(kind, TS_UNITS_US), 4);
    ts_buffer_add(&text, ")");
    const char *kept = text.failed ? NULL : ts_arena_copy(m->arena, text.bytes, text.length);
    m->failed        = m->failed || kept == NULL;
    ts_buffer_close(&text);
    return kept != NULL ? kept : "";
}

static void word(maker *m, const char *label, const char *says)
{
    if (says != NULL && m->out->word_count < TS_SHEET_WORDS)
        m->out->words[m->out->word_count++] = (ts_sheet_word){label, says};
}

static void row(maker *m, ts_sheet_part part, ts_sheet_row one)
{
    if (m->out->row_count[part] < TS_SHEET_ROWS)
        m->out->rows[part][m->out->row_count[part]++] = one;
}

/* A value of the file. */
static void measure(maker *m, ts_sheet_part part, const char *what, ts_measure of, ts_kind kind)
{
    row(m, part,
        (ts_sheet_row){
            .what  = what,
            .si    = ts_measure_known(of) ? of.value : (double)NAN,
            .kind  = kind,
            .place = {of.node != 0 ? of.node : m->accessory->node, TS_EVERY_CONDITION, NULL}});
}

/* ---- what it is ------------------------------------------------------------------------------ */

static void identity(maker *m)
{
    static const char *const purposes[] = {"engine", "aircraft", "start"};
    const ts_accessory      *a          = m->accessory;
    const int                sense      = ts_pad_sense(m->answer->motion, m->pad);
    const ts_shaft          *shaft      = &m->answer->train->shafts[m->pad->shaft];

    word(m, "accessory", a->name);
    word(m, "for", ts_pick_known(a->purpose) ? purposes[a->purpose.value] : "not told");
    word(m, "serves", a->serves.text);
    word(m, "pad",
         worded(m, "%s of shaft %u of the %s box, %s",
                m->pad->face == TS_FRONT ? "front face" : "rear face", (unsigned)shaft->number,
                m->answer->drive->spools[shaft->spool].name, address_of(m, m->pad->node)));
    word(m, "pad and spline",
         a->spline.text != NULL ? a->spline.text : "not told: no public standard number");
    word(m, "turns",
         sense == 0  ? "not known, for that of its spool is not"
         : sense > 0 ? "counter-clockwise (ccw), seen by somebody who faces the pad"
                     : "clockwise (cw), seen by somebody who faces the pad");
    word(m, "neck", a->neck.node != 0 ? NULL : "none");
}

/* ---- in every condition ---------------------------------------------------------------------- */

static const char *state_of(const ts_pad_load *load)
{
    if (load->clutch_state == TS_CLUTCH_STATE_ENGAGED)
        return "drives through its clutch";
    if (load->clutch_state == TS_CLUTCH_STATE_OVERRUNNING)
        return "its clutch is overrun";
    if (load->standing == TS_ABSENT || load->standing == TS_UNKNOWN)
        return "no load is told";
    return load->T < 0.0 ? "drives" : NULL;
}

static double end_of(const ts_span *band, double end)
{
    return band->standing != TS_ABSENT && isfinite(end) ? end : (double)NAN;
}

static void condition(maker *m, size_t c, ts_sheet_row *out)
{
    const ts_train    *train = m->answer->train;
    const ts_pad_load *load  = &m->answer->power->pad[c * train->pad_count + m->out->pad];
    const ts_span     *band  = &m->accessory->speed[c];
    const ts_measure   oil   = ts_oil_feed(&m->answer->drive->oil, c);
    const ts_node      shaft = train->shafts[m->pad->shaft].node;
    const double       n     = m->answer->motion->speed[c * train->shaft_count + m->pad->shaft];
    const ts_kind      turns = TS_KIND_ROTATIONAL_SPEED;

    out[TS_SHEET_SPEED] = (ts_sheet_row){"speed", n, turns, {shaft, (int32_t)c, "n"}, NULL};
    out[TS_SHEET_LEAST] = (ts_sheet_row){
        "band from", end_of(band, band->low), turns, {m->accessory->node, (int32_t)c, NULL}, NULL};
    out[TS_SHEET_MOST] = (ts_sheet_row){
        "band to", end_of(band, band->high), turns, {m->accessory->node, (int32_t)c, NULL}, NULL};
    out[TS_SHEET_TORQUE] = (ts_sheet_row){"torque that the pad gives",
                                          load->T,
                                          TS_KIND_TORQUE,
                                          {m->pad->node, (int32_t)c, "T"},
                                          NULL};
    out[TS_SHEET_POWER]  = (ts_sheet_row){
         "power that the pad gives", load->P, TS_KIND_POWER, {m->pad->node, (int32_t)c, "P"}, NULL};
    out[TS_SHEET_OIL] = (ts_sheet_row){"oil of the box, where it is fed",
                                       ts_measure_known(oil) ? oil.value : (double)NAN,
                                       TS_KIND_TEMPERATURE,
                                       {oil.node, (int32_t)c, NULL},
                                       NULL};
    m->out->states[c] = state_of(load);
}

/* ---- torques --------------------------------------------------------------------------------- */

static void met(maker *m, const char *what, ts_met_torque T)
{
    const char *at = ts_answer_condition(m->answer, T.condition);
    if (at == NULL || T.T <= 0.0)
        return;
    row(m, TS_SHEET_TORQUES,
        (ts_sheet_row){
            what, T.T, TS_KIND_TORQUE, {m->pad->node, T.condition, "T"}, worded(m, "at %s", at)});
}

/* A starter with a curve drives hardest at one of its points, in no condition. */
static void drives(maker *m, const ts_guard *guard)
{
    const char *what = "highest with which it drives";

    if (guard->summit == 0)
        met(m, what, guard->start);
    else
        row(m, TS_SHEET_TORQUES,
            (ts_sheet_row){what,
                           guard->start.T,
                           TS_KIND_TORQUE,
                           {guard->summit, TS_EVERY_CONDITION, NULL},
                           "a point of its curve"});
}

static void overload(maker *m, const ts_guard *guard)
{
    ts_buffer text;
    if (guard->T_over <= 0.0)
        return;
    ts_buffer_open(&text, m->answer->allocator);
    ts_quantity_show(&text, guard->t_over, ts_kind_shown(TS_KIND_TIME, TS_UNITS_METRIC), 3);
    row(m, TS_SHEET_TORQUES,
        (ts_sheet_row){"overload",
                       guard->T_over,
                       TS_KIND_TORQUE,
                       {m->accessory->torque.node, TS_EVERY_CONDITION, NULL},
                       worded(m, "for %s", text.failed ? "a while" : text.bytes)});
    m->failed = m->failed || text.failed;
    ts_buffer_close(&text);
}

static void neck(maker *m, uint32_t item)
{
    const ts_drive_neck *neck  = &m->answer->select->necks->items[item];
    const ts_node        node  = m->accessory->neck.node;
    const char          *whose = neck->designed ? "computed of its diameter" : "as the file states";
    row(m, TS_SHEET_TORQUES,
        (ts_sheet_row){"neck breaks at least at",
                       neck->band.low,
                       TS_KIND_TORQUE,
                       {node, TS_EVERY_CONDITION, "T_break_least"},
                       whose});
    row(m, TS_SHEET_TORQUES,
        (ts_sheet_row){"neck breaks at most at",
                       neck->band.high,
                       TS_KIND_TORQUE,
                       {node, TS_EVERY_CONDITION, "T_break_most"},
                       whose});
}

static void torques(maker *m)
{
    const ts_select *select = m->answer->select;
    const uint32_t   at     = select != NULL ? select->of_pad[m->out->pad] : TS_NOWHERE;
    if (at == TS_NOWHERE)
        return;
    const ts_guard *guard = &select->guards[at];
    met(m, "highest that the pad gives", guard->run);
    drives(m, guard);
    overload(m, guard);
    row(m, TS_SHEET_TORQUES,
        (ts_sheet_row){"static, that its own drive holds",
                       guard->T_static,
                       TS_KIND_TORQUE,
                       {m->accessory->torque.node, TS_EVERY_CONDITION, NULL},
                       NULL});
    if (guard->neck != TS_NOWHERE)
        neck(m, guard->neck);
    if (guard->once.part != TS_NOWHERE)
        row(m, TS_SHEET_TORQUES,
            (ts_sheet_row){
                "that breaks something behind the pad",
                guard->once.T,
                TS_KIND_TORQUE,
                {m->pad->node, TS_EVERY_CONDITION, NULL},
                worded(m, "once; %s gives way first", select->parts.items[guard->once.part].what)});
}

/* ---- spline ---------------------------------------------------------------------------------- */

static const ts_drive_spline *spline_of(const maker *m)
{
    const ts_splines *all = m->answer->splines;
    for (uint32_t i = 0; all != NULL && i < all->count; i++)
        if (all->items[i].pad == m->out->pad)
            return &all->items[i];
    return NULL;
}

/* "the shear of its teeth, fatigue counted," without its article and its last comma. */
static const char *named(maker *m, const char *says)
{
    const size_t skip = strncmp(says, "the ", 4) == 0 ? 4 : 0, length = strlen(says);
    const size_t end = length > skip && says[length - 1] == ',' ? length - 1 : length;
    return worded(m, "%.*s", (int)(end - skip), says + skip);
}

static void spline(maker *m)
{
    const ts_drive_spline *s = spline_of(m);
    if (s == NULL || s->missing != NULL)
        return;
    row(m, TS_SHEET_SPLINE,
        (ts_sheet_row){"pitch diameter",
                       s->shape.D,
                       TS_KIND_LENGTH,
                       {s->node, TS_EVERY_CONDITION, "D"},
                       NULL});
    row(m, TS_SHEET_SPLINE,
        (ts_sheet_row){"engaged length",
                       s->L_e,
                       TS_KIND_LENGTH,
                       {s->node, TS_EVERY_CONDITION, "L_e"},
                       s->made ? "made up: the file does not say" : NULL});
    for (int i = 0; i < TS_SPLINE_STRESSES; i++) {
        const ts_spline_stress kind = (ts_spline_stress)i;
        const char            *at   = ts_answer_condition(m->answer, s->at[i]);
        if (!(s->most[i] >= 0.0))
            continue;
        row(m, TS_SHEET_SPLINE,
            (ts_sheet_row){
                named(m, ts_spline_stress_says(kind)),
                s->most[i],
                TS_KIND_STRESS,
                {at != NULL ? s->node : s->over, s->at[i], ts_spline_stress_symbol(kind)},
                worded(m, "at %s; hardened steel bears %s", at != NULL ? at : "overload",
                       both(m, ts_spline_stress_permitted(kind), TS_KIND_STRESS))});
    }
}

/* ---- body and place -------------------------------------------------------------------------- */

static void body(maker *m)
{
    const ts_accessory *a = m->accessory;
    measure(m, TS_SHEET_BODY, "radius of its body", a->body.radius, TS_KIND_LENGTH);
    measure(m, TS_SHEET_BODY, "length of its body", a->body.length, TS_KIND_LENGTH);
    measure(m, TS_SHEET_BODY, "mass", a->mass, TS_KIND_MASS);
    measure(m, TS_SHEET_BODY, "centre of mass from the pad face", a->overhang, TS_KIND_LENGTH);
    row(m, TS_SHEET_BODY,
        (ts_sheet_row){"moment of the overhang, at rest",
                       ts_overhung_moment(a),
                       TS_KIND_TORQUE,
                       {a->node, TS_EVERY_CONDITION, NULL},
                       "mass, 9.80665 m/s2, and the overhang"});
    measure(m, TS_SHEET_BODY, "moment of inertia at the pad", a->inertia, TS_KIND_INERTIA);
}

static void place(maker *m)
{
    const ts_shaft_motion *turn  = &m->answer->motion->shafts[m->pad->shaft];
    const ts_shaft        *shaft = &m->answer->train->shafts[m->pad->shaft];
    row(m, TS_SHEET_PLACE,
        (ts_sheet_row){"axis to the right of the engine axis",
                       turn->placed ? turn->x : (double)NAN,
                       TS_KIND_LENGTH,
                       {shaft->node, TS_EVERY_CONDITION, "X"},
                       "seen from behind"});
    row(m, TS_SHEET_PLACE,
        (ts_sheet_row){"axis above the engine axis",
                       turn->placed ? turn->y : (double)NAN,
                       TS_KIND_LENGTH,
                       {shaft->node, TS_EVERY_CONDITION, "Y"},
                       NULL});
    measure(m, TS_SHEET_PLACE, "between the pad faces of the box",
            m->answer->drive->drive[shaft->drive].box.depth, TS_KIND_LENGTH);
}

/* ---- what it rests on ------------------------------------------------------------------------ */

static bool is_at_or_below(const char *address, const char *place)
{
    const size_t length = strlen(place);
    return length > 0 && strncmp(address, place, length) == 0 &&
           (address[length] == '\0' || address[length] == '/');
}

/* Is that about the accessory or its pad, or about something of which either is a part? */
static bool concerns(maker *m, const char *address)
{
    const char *own[2] = {address_of(m, m->accessory->node), address_of(m, m->pad->node)};
    for (int i = 0; i < 2; i++)
        if (is_at_or_below(address, own[i]) || is_at_or_below(own[i], address))
            return true;
    return false;
}

static void assumptions(maker *m)
{
    const ts_drive *drive = m->answer->drive;
    ts_sheet_line  *list  = m->out->assumptions =
        TS_TAKE(m->arena, ts_sheet_line, drive->assumed_count + drive->assumption_count + 1);
    m->failed = m->failed || list == NULL;
    for (size_t i = 0; i < drive->assumed_count && !m->failed; i++) {
        const ts_assumption *one = &drive->assumed[i];
        if (is_at_or_below(address_of(m, one->node), address_of(m, m->accessory->node)))
            list[m->out->assumption_count++] = (ts_sheet_line){
                "assumed", worded(m, "%s = %s: %s", one->key, one->value, one->reason), one->node};
    }
    for (size_t i = 0; i < drive->assumption_count && !m->failed; i++) {
        const ts_assumption_line *one = &drive->assumptions[i];
        if (one->at.text == NULL || concerns(m, one->at.text))
            list[m->out->assumption_count++] = (ts_sheet_line){"stated", one->says.text, one->node};
    }
}

static void findings(maker *m)
{
    static const char *const levels[] = {
        [TS_REFUSE] = "refused", [TS_WARN] = "warning", [TS_NOTE] = "note"};
    const ts_check_outcome *all  = m->answer->outcome;
    ts_sheet_line          *list = m->out->findings =
        TS_TAKE(m->arena, ts_sheet_line, all->finding_count + 1);
    m->failed = m->failed || list == NULL;
    for (size_t i = 0; i < all->finding_count && !m->failed; i++) {
        const ts_finding *one = &all->findings[i];
        const char       *at  = address_of(m, one->node);
        if (is_at_or_below(at, address_of(m, m->accessory->node)) ||
            is_at_or_below(at, address_of(m, m->pad->node)))
            list[m->out->finding_count++] =
                (ts_sheet_line){one->state == TS_WAIVED           ? "waived"
                                : one->state == TS_NOT_COMPUTABLE ? "not computable"
                                                                  : levels[one->level],
                                one->says, one->node};
    }
}

bool ts_sheet_make(const ts_answer *answer, uint32_t pad, ts_arena *arena, ts_sheet *out)
{
    const size_t conditions = answer->drive->condition_count;
    maker        m          = {.answer = answer, .arena = arena, .out = out};
    *out                    = (ts_sheet){.answer = answer, .pad = pad};
    m.pad                   = &answer->train->pads[pad];
    m.accessory             = &answer->drive->accessories[m.pad->accessory];
    out->conditions         = ts_arena_take(arena, conditions, sizeof *out->conditions);
    out->states             = TS_TAKE(arena, const char *, conditions);
    if (out->conditions == NULL || out->states == NULL)
        return false;
    identity(&m);
    for (size_t c = 0; c < conditions; c++)
        condition(&m, c, out->conditions[c]);
    torques(&m);
    spline(&m);
    body(&m);
    place(&m);
    assumptions(&m);
    findings(&m);
    return !m.failed;
}
