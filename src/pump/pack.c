/* pump/pack.c: how large is every element of a pump pack, and what does it do in every condition?
 */
#include "pump/drive_pumps_parts.h"
#include "pump/pump_element.h"

#include "motion/value_note.h"

#include <math.h>

#define TWO_PI 6.28318530717958647693

static const ts_formula Q_in_formula = {
    .symbol  = "Q_in",
    .meaning = "oil and air that the pressure element must take in",
    .unit    = "m3/s",
    .text    = "Q_full/(1 - air)",
    .source  = "derived: the air that the tank leaves in the oil",
};
static const ts_formula able_formula = {
    .symbol  = "Q_able",
    .meaning = "oil that the pressure element could give",
    .unit    = "m3/s",
    .text    = "(1 - air)*Q",
    .source  = "derived: the air that the tank leaves in the oil",
};
static const ts_formula slow_formula = {
    .symbol  = "Q_fed",
    .meaning = "oil that comes through the jets while the relief valve is shut",
    .unit    = "m3/s",
    .text    = "2*s*filling/(1 + sqrt(1 + 4*C_s*dp/(eta*n)*s^2*filling/Q_full^2))",
    .source  = "derived: Wilson's slip (from memory) against jets by the law of the orifice",
};
static const ts_formula s_formula = {
    .symbol  = "s",
    .meaning = "what the pressure element sweeps, without its air",
    .unit    = "m3/s",
    .text    = "(1 - air)*V_g*n/(2*pi)",
    .source  = "derived: volume a turn times turns",
};
static const ts_formula p_formula = {
    .symbol  = "p",
    .meaning = "pressure behind the pressure element",
    .unit    = "Pa",
    .text    = "dp*(Q_fed/Q_full)^2",
    .source  = "law of the orifice, jets as large as full flow asks for",
};
static const ts_formula sump_formula = {
    .symbol  = "Q",
    .meaning = "oil of the sump that comes to one of its elements",
    .unit    = "m3/s",
    .text    = "share*Q_fed/elements",
    .source  = "derived: all elements of a sump draw alike",
};
static const ts_formula P_formula = {
    .symbol  = "P_e",
    .meaning = "power of the element",
    .unit    = "W",
    .text    = "T_e*n",
    .source  = "derived: power is torque times speed",
};
static const ts_formula P_pack_formula = {
    .symbol  = "P_pack",
    .meaning = "power of all elements",
    .unit    = "W",
    .text    = "T_pack*n",
    .source  = "derived: power is torque times speed",
};
static const ts_formula v_a_formula = {
    .symbol  = "v_a",
    .meaning = "speed of the tips of the gears",
    .unit    = "m/s",
    .text    = "n*(m*z + 2*m)/2",
    .source  = "derived: speed times radius",
};

/* ---- what is known --------------------------------------------------------------------------- */

static bool all_known(const ts_pumps *told)
{
    const ts_measure of[] = {told->elsewhere, told->pressure,  told->back,           told->air,
                             told->filling,   told->scavenged, told->slip,           told->viscous,
                             told->friction,  told->module,    told->pressure_angle, told->plate,
                             told->cover};

    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++)
        if (!ts_measure_known(of[i]))
            return false;
    for (size_t i = 0; i < told->sump_count; i++) {
        const ts_sump *sump = &told->sumps[i];
        for (size_t k = 0; k < sump->element_count; k++)
            if (!ts_measure_known(sump->elements[k].rearward) ||
                !ts_measure_known(sump->elements[k].rightward) ||
                !ts_measure_known(sump->elements[k].above))
                return false;
        if (!ts_measure_known(sump->share) || !ts_measure_known(sump->ratio) ||
            !ts_measure_known(sump->length) || !ts_measure_known(sump->width) ||
            !ts_measure_known(sump->height) || !ts_measure_known(sump->depth))
            return false;
    }
    return told->teeth.standing == TS_GIVEN || told->teeth.standing == TS_ASSUMED;
}

static const char *lacking(const ts_oil_units *units, const ts_pack *pack)
{
    const ts_train *train = units->motion->train;
    bool            lasts = false;

    if (pack->pad == TS_NOWHERE)
        return "the pad of the pump pack";
    if (!ts_measure_known(pack->told->flow))
        return "the flow of the pump pack";
    if (!all_known(pack->told))
        return "a value of the pump pack that the file calls unknown";
    for (size_t c = 0; c < units->drive->condition_count; c++) {
        const double n =
            units->motion->speed[c * train->shaft_count + train->pads[pack->pad].shaft];
        if (isnan(n))
            return "the speed of the pump pack";
        lasts = lasts || (ts_condition_lasts(&units->drive->conditions[c]) && n > 0.0);
    }
    return lasts ? NULL : "a condition that lasts (`hours`) in which the pump pack turns";
}

/* ---- elements -------------------------------------------------------------------------------- */

static void list_elements(ts_pack *pack)
{
    const ts_pumps *told = pack->told;

    pack->elements[0]   = (ts_pack_element){.name    = "pressure",
                                            .node    = told->node,
                                            .filling = told->filling,
                                            .dp      = told->pressure.value};
    pack->element_count = 1;
    for (size_t i = 0; i < told->sump_count; i++)
        for (size_t k = 0; k < told->sumps[i].element_count; k++) {
            const ts_scavenge *one                = &told->sumps[i].elements[k];
            pack->elements[pack->element_count++] = (ts_pack_element){.name    = one->name,
                                                                      .node    = one->node,
                                                                      .sump    = &told->sumps[i],
                                                                      .told    = one,
                                                                      .filling = told->scavenged,
                                                                      .dp      = told->back.value};
        }
}

typedef struct pack_desk {
    const ts_units_desk *desk;
    ts_pack             *pack;
    const ts_film_law   *law;
    ts_workings         *workings;
    double               area;
} pack_desk;

static void note_element(const pack_desk *d, const ts_pack_element *element)
{
    const ts_pumps *told  = d->pack->told;
    const ts_drive *drive = d->desk->units->drive;

    ts_workings_about(d->workings, element->node, TS_EVERY_CONDITION);
    TS_NOTE_MEASURE(d->workings, drive, "filling", element->filling, "1",
                    element->sump == NULL ? "filling" : "scavenge filling");
    TS_NOTE_MEASURE(d->workings, drive, "dp", element->sump == NULL ? told->pressure : told->back,
                    "Pa", element->sump == NULL ? "pressure" : "scavenge pressure");
    TS_NOTE_MEASURE(d->workings, drive, "C_s", told->slip, "1", "slip");
    TS_NOTE_MEASURE(d->workings, drive, "C_d", told->viscous, "1", "viscous drag");
    TS_NOTE_MEASURE(d->workings, drive, "C_f", told->friction, "1", "friction");
    if (element->sump == NULL) {
        TS_NOTE_MEASURE(d->workings, drive, "Q_full", told->flow, "m3/s", "flow");
        TS_NOTE_MEASURE(d->workings, drive, "air", told->air, "1", "air");
        return;
    }
    TS_NOTE_MEASURE(d->workings, drive, "share", element->sump->share, "1", "share");
    TS_NOTE_MEASURE(d->workings, drive, "ratio", element->sump->ratio, "1", "ratio");
    ts_workings_row(d->workings, "elements", (double)element->sump->element_count, "1",
                    "counted: scavenge elements of the sump");
    ts_units_lend_oil(d->desk, element->node, told->node, d->law);
}

/* The speed, oil and efficiency of an element in a row; about it from here on. */
typedef struct row_oil {
    double n, theta, eta, eta_v;
} row_oil;

static row_oil open_row(const pack_desk *d, const ts_pack_element *element, uint32_t row)
{
    const ts_oil_units *units = d->desk->units;
    const ts_pumps     *told  = d->pack->told;
    row_oil             out;

    if (row < units->drive->condition_count) {
        const ts_units_desk quiet = {units, d->workings};
        ts_workings_about(d->workings, element->node, (int32_t)row);
        out.n = ts_units_speed(&quiet, d->pack->pad, row);
        out.theta =
            element->sump == NULL ? ts_units_feed(&quiet, row) : ts_units_return(&quiet, row);
    } else { /* the windmill: nothing of it is noted */
        const uint32_t shaft = units->motion->train->pads[d->pack->pad].shaft;
        out.n = told->windmill.value * fabs(ts_rational_value(units->motion->shafts[shaft].ratio));
        out.theta = units->drive->oil.feed.value;
        if (element->sump != NULL)
            out.theta += units->drive->oil.rise.value;
    }
    out.eta   = ts_film_viscosity(d->law, out.theta, d->workings);
    out.eta_v = out.n > 0.0 ? ts_pump_volumetric(element->filling.value, told->slip.value,
                                                 element->dp, out.eta, out.n, d->workings)
                            : 0.0;
    return out;
}

/* What it must take in, in this row. */
static double wanted(const pack_desk *d, const ts_pack_element *element, uint32_t row)
{
    const ts_pumps *told = d->pack->told;

    if (element->sump == NULL) {
        const double Q_full = told->flow.value, air = told->air.value;
        return TS_STEP(d->workings, Q_in_formula, Q_full / (1.0 - air), Q_full, air);
    }
    const double share = element->sump->share.value, Q_fed = d->pack->states[row].Q;
    const double elements = (double)element->sump->element_count;

    if (row < d->desk->units->drive->condition_count)
        ts_workings_borrow(d->workings, "Q_fed", Q_fed, (ts_subject){told->node, (int32_t)row},
                           "Q_fed");
    const double Q =
        TS_STEP(d->workings, sump_formula, share * Q_fed / elements, share, Q_fed, elements);
    return ts_scavenge_flow(Q, element->sump->ratio.value, d->workings);
}

static void size(const pack_desk *d, ts_pack_element *element)
{
    const ts_measure width = element->sump == NULL ? d->pack->told->width : element->told->width;
    const ts_drive  *drive = d->desk->units->drive;
    pack_desk        quiet = *d;
    double           most  = 0.0;

    quiet.workings = NULL;
    for (uint32_t c = 0; c < drive->condition_count; c++) {
        const row_oil oil = open_row(&quiet, element, c);
        if (!ts_condition_lasts(&drive->conditions[c]) || !(oil.n > 0.0))
            continue;
        const double V = ts_pump_displacement(wanted(&quiet, element, c), oil.n, oil.eta_v, NULL);
        if (!(oil.eta_v > 0.0) || V > most) {
            most              = oil.eta_v > 0.0 ? V : (double)INFINITY;
            element->sized_at = (int32_t)c;
        }
    }
    element->given = ts_measure_known(width);
    ts_workings_about(d->workings, element->node, TS_EVERY_CONDITION);
    if (element->given) {
        TS_NOTE_MEASURE(d->workings, drive, "b", width, "m", "width");
        element->b   = width.value;
        element->V_g = ts_pump_gear_displacement(element->b, d->area, d->workings);
        return;
    }
    if (isinf(most)) {
        element->V_g = element->b = (double)NAN;
        return;
    }
    const uint32_t at  = (uint32_t)element->sized_at;
    const row_oil  oil = open_row(d, element, at);
    const double   Q   = wanted(d, element, at);
    ts_workings_borrow(d->workings, "Q", Q, (ts_subject){element->node, element->sized_at},
                       element->sump == NULL ? "Q_in" : "Q_s");
    element->V_g = ts_pump_displacement(Q, oil.n, oil.eta_v, d->workings);
    ts_workings_about(d->workings, element->node, TS_EVERY_CONDITION);
    ts_workings_borrow(d->workings, "V_g", element->V_g,
                       (ts_subject){element->node, element->sized_at}, "V_g");
    element->b = ts_pump_gear_width(element->V_g, d->area, d->workings);
}

/* ---- a row ----------------------------------------------------------------------------------- */

static ts_pack_case *case_at(const ts_pack *pack, uint32_t row, uint32_t element)
{
    return &pack->cases[(size_t)row * TS_PACK_ELEMENTS + element];
}

static void feed(const pack_desk *d, const row_oil *oil, ts_pack_state *out)
{
    const ts_pack_element *element = &d->pack->elements[0];
    const double           Q_full = d->pack->told->flow.value, air = d->pack->told->air.value;
    const double           C_s = d->pack->told->slip.value, filling = element->filling.value;
    const double           dp = element->dp, V_g = element->V_g, n = oil->n, eta = oil->eta;
    const double           Q    = fmax(ts_pump_flow(V_g, n, oil->eta_v, d->workings), 0.0);
    const double           able = TS_STEP(d->workings, able_formula, (1.0 - air) * Q, air, Q);

    *out = (ts_pack_state){.n = n, .theta = oil->theta, .p = dp, .Q = Q_full};
    if (able >= Q_full) {
        out->spare = able - Q_full;
        ts_workings_borrow(d->workings, "Q_fed", Q_full,
                           (ts_subject){element->node, TS_EVERY_CONDITION}, "Q_full");
        return;
    }
    const double s = TS_STEP(d->workings, s_formula, (1.0 - air) * V_g * n / TWO_PI, air, V_g, n);
    const double Q_fed = TS_STEP(
        d->workings, slow_formula,
        2.0 * s * filling /
            (1.0 + sqrt(1.0 + 4.0 * C_s * dp / (eta * n) * s * s * filling / (Q_full * Q_full))),
        s, filling, C_s, dp, eta, n, Q_full);
    out->Q = Q_fed;
    out->p = TS_STEP(d->workings, p_formula, dp * (Q_fed / Q_full) * (Q_fed / Q_full), dp, Q_fed,
                     Q_full);
}

static void solve_pressure(const pack_desk *d, uint32_t row)
{
    ts_pack_case  *one   = case_at(d->pack, row, 0);
    ts_pack_state *state = &d->pack->states[row];
    const row_oil  oil   = open_row(d, &d->pack->elements[0], row);

    *one   = (ts_pack_case){.eta_v = oil.eta_v, .need = d->pack->told->flow.value};
    *state = (ts_pack_state){.theta = oil.theta};
    if (!(oil.n > 0.0))
        return;
    feed(d, &oil, state);
    one->able = state->Q + state->spare;
}

static void drag(const pack_desk *d, uint32_t row, uint32_t e, const row_oil *oil)
{
    const ts_pack_element *element = &d->pack->elements[e];
    ts_pack_case          *one     = case_at(d->pack, row, e);
    const ts_pump_drag     of      = {.V_g = element->V_g,
                                      .dp  = e == 0 ? d->pack->states[row].p : element->dp,
                                      .eta = oil->eta,
                                      .n   = oil->n,
                                      .C_d = d->pack->told->viscous.value,
                                      .C_f = d->pack->told->friction.value};

    if (e == 0 && of.dp < element->dp && row < d->desk->units->drive->condition_count)
        ts_workings_borrow(d->workings, "dp", of.dp, (ts_subject){element->node, (int32_t)row},
                           "p");
    const double T_e = ts_pump_torque(&of, d->workings), n = oil->n;
    one->T = T_e;
    one->P = TS_STEP(d->workings, P_formula, T_e * n, T_e, n);
}

static void solve_element(const pack_desk *d, uint32_t row, uint32_t e)
{
    const ts_pack_element *element = &d->pack->elements[e];
    ts_pack_case          *one     = case_at(d->pack, row, e);
    const row_oil          oil     = open_row(d, element, row);

    if (e > 0)
        *one = (ts_pack_case){.eta_v = oil.eta_v, .need = wanted(d, element, row)};
    if (!(oil.n > 0.0))
        return;
    if (e > 0)
        one->able = fmax(ts_pump_flow(element->V_g, oil.n, oil.eta_v, d->workings), 0.0);
    drag(d, row, e, &oil);
}

static const char *const terms[TS_PACK_ELEMENTS]         = {"T_1", "T_2", "T_3", "T_4",
                                                            "T_5", "T_6", "T_7", "T_8"};
static const ts_formula  pack_formulas[TS_PACK_ELEMENTS] = {
#define OF(text_)                                                                                  \
    {                                                                                              \
        .symbol = "T_pack", .meaning = "torque of all elements", .unit = "N.m", .text = (text_),   \
        .source = "derived: they stand on one shaft"                                               \
    }
    OF("T_1"),
    OF("T_1 + T_2"),
    OF("T_1 + T_2 + T_3"),
    OF("T_1 + T_2 + T_3 + T_4"),
    OF("T_1 + T_2 + T_3 + T_4 + T_5"),
    OF("T_1 + T_2 + T_3 + T_4 + T_5 + T_6"),
    OF("T_1 + T_2 + T_3 + T_4 + T_5 + T_6 + T_7"),
    OF("T_1 + T_2 + T_3 + T_4 + T_5 + T_6 + T_7 + T_8"),
#undef OF
};

static void add_up(const pack_desk *d, uint32_t row)
{
    const ts_pack *pack = d->pack;
    ts_pack_state *out  = &pack->states[row];
    const bool     told = row < d->desk->units->drive->condition_count;
    ts_input       inputs[TS_PACK_ELEMENTS];
    double         T_pack = 0.0;
    const double   n      = out->n;

    if (told)
        ts_workings_about(d->workings, pack->told->node, (int32_t)row);
    for (uint32_t e = 0; e < pack->element_count; e++) {
        const double T = case_at(pack, row, e)->T;
        inputs[e]      = (ts_input){terms[e], T};
        T_pack += T;
        if (told)
            ts_workings_borrow(d->workings, terms[e], T,
                               (ts_subject){pack->elements[e].node, (int32_t)row}, "T_e");
    }
    if (!(n > 0.0))
        return;
    out->T = ts_step_list(d->workings, &pack_formulas[pack->element_count - 1], T_pack, inputs,
                          pack->element_count);
    out->P = TS_STEP(d->workings, P_pack_formula, T_pack * n, T_pack, n);
}

/* ---- the pack -------------------------------------------------------------------------------- */

static void find_fastest(const pack_desk *d)
{
    const ts_pumps *told = d->pack->told;
    const double    m = told->module.value, z = (double)told->teeth.value;
    uint32_t        at = 0;

    for (uint32_t c = 1; c < d->desk->units->drive->condition_count; c++)
        if (d->pack->states[c].n > d->pack->states[at].n)
            at = c;
    d->pack->fastest = (int32_t)at;
    d->pack->d_a     = m * z + 2.0 * m;
    const double n   = d->pack->states[at].n;
    ts_workings_about(d->workings, told->node, (int32_t)at);
    d->pack->v_a = TS_STEP(d->workings, v_a_formula, n * (m * z + 2.0 * m) / 2.0, n, m, z);
}

static void measure(ts_pack *pack)
{
    pack->length = (double)(pack->element_count + 1) * pack->told->plate.value;
    for (uint32_t e = 0; e < pack->element_count; e++)
        pack->length += pack->elements[e].b;
}

static double gears(const pack_desk *d)
{
    const ts_pumps *told  = d->pack->told;
    const ts_drive *drive = d->desk->units->drive;
    const double    z     = (double)told->teeth.value;

    ts_workings_about(d->workings, told->node, TS_EVERY_CONDITION);
    ts_note_value(d->workings, drive,
                  &(ts_value_note){"z", z, "1", "teeth", told->teeth.standing, told->teeth.node});
    TS_NOTE_MEASURE(d->workings, drive, "m", told->module, "m", "module");
    TS_NOTE_MEASURE(d->workings, drive, "alpha", told->pressure_angle, "rad", "pressure angle");
    return ts_pump_gear_area(z, told->module.value, told->pressure_angle.value, d->workings);
}

static void lend_area(const pack_desk *d, ts_node about)
{
    if (about == d->pack->told->node)
        return;
    ts_workings_about(d->workings, about, TS_EVERY_CONDITION);
    ts_workings_borrow(d->workings, "area", d->area,
                       (ts_subject){d->pack->told->node, TS_EVERY_CONDITION}, "area");
}

void ts_pack_solve(const ts_units_desk *desk, ts_pack *pack)
{
    ts_film_law law;
    pack_desk   d = {desk, pack, &law, desk->workings, 0.0};

    pack->missing = lacking(desk->units, pack);
    if (pack->missing == NULL)
        pack->missing = ts_units_oil(desk, pack->told->node, &law);
    if (pack->missing != NULL)
        return;
    list_elements(pack);
    d.area = gears(&d);
    for (uint32_t e = 0; e < pack->element_count; e++) {
        note_element(&d, &pack->elements[e]);
        lend_area(&d, pack->elements[e].node);
        size(&d, &pack->elements[e]);
        for (uint32_t row = 0; e == 0 && row < pack->rows; row++) {
            pack_desk one = d;
            one.workings  = row < desk->units->drive->condition_count ? d.workings : NULL;
            solve_pressure(&one, row);
        }
    }
    for (uint32_t row = 0; row < pack->rows; row++) {
        pack_desk one = d;
        one.workings  = row < desk->units->drive->condition_count ? d.workings : NULL;
        for (uint32_t e = 0; e < pack->element_count; e++)
            solve_element(&one, row, e);
        add_up(&one, row);
    }
    find_fastest(&d);
    measure(pack);
    ts_pack_attitudes_solve(pack, desk->units->drive);
}
