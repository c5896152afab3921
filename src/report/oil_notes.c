/* report/oil_notes.c: how are the tables of the oil read, and from which source is each number? */
#include "report/oil_grid.h"

#include <math.h>

#define APART_MOST 3.0 /* times, beyond which the page says why two methods lie apart */

/* ---- below a table --------------------------------------------------------------------------- */

void ts_oil_note(const ts_oil_sheet *s, const char *words)
{
    if (s->chapter == NULL)
        ts_page_wrap(s->page, words, 2, 0);
    else
        ts_manuscript_text(s->chapter->manuscript, TS_BLOCK_FAINT, words);
}

void ts_oil_note_made(const ts_oil_sheet *s, ts_buffer *made)
{
    if (!made->failed)
        ts_oil_note(s, made->bytes);
    s->page->out->failed = s->page->out->failed || made->failed;
    ts_buffer_close(made);
}

static bool any_ended(const ts_oil_sheet *s)
{
    for (uint32_t p = 0; p < s->oil->heat->bearing_begin; p++)
        if (ts_heat_at(s->oil->heat, 1, s->oil->condition, p)->law_ended)
            return true;
    return false;
}

static bool any_dips(const ts_heat *heat)
{
    for (uint32_t p = 0; p < heat->bearing_begin; p++)
        if (heat->places[p].dips)
            return true;
    return false;
}

/* W of all bearings by one method in the condition that is told of. */
static double of_bearings(const ts_oil_sheet *s, int method)
{
    const ts_heat *heat = s->oil->heat;
    double         sum  = 0.0;

    for (uint32_t p = heat->bearing_begin; p < heat->pad_begin; p++)
        sum += ts_heat_at(heat, method, s->oil->condition, p)->sum;
    return sum;
}

static bool any_boils(const ts_oil_sheet *s)
{
    const ts_heat *heat = s->oil->heat;

    for (uint32_t c = 0; c < heat->motion->condition_count; c++)
        for (uint32_t d = 0; d < s->answer->drive->drive_count; d++) {
            const ts_heat_state *one = ts_heat_state_at(heat, 0, c, d);
            if (!one->settled && !one->dry)
                return true;
        }
    return false;
}

void ts_oil_states_note(const ts_oil_sheet *s)
{
    ts_oil_note(s, "From spool and at pads count negative where accessories drive the spool. Two "
                   "values with a stroke are those of the first and the second method, single ones "
                   "of the first. Lost: heat over the larger power, \xC2\xB7 where none flows. nu: "
                   "viscosity half way between feed and return. Balance: closes where spool, pads "
                   "and heat add up to 1e-12 of the largest power, by both methods.");
    if (any_boils(s))
        ts_oil_note(
            s, "Boils: so little oil would have to warm by more than 400 K, and none stays oil "
               "there; J5-oil-rise names the flow that would do.");
}

void ts_oil_meshes_note(const ts_oil_sheet *s)
{
    ts_oil_note(s,
                "Lost: heat of the mesh over the power that enters it, \xC2\xB7 where none does; "
                "stated: `loss` of the file, with which the ratings count, and which bears "
                "bearings and seals behind the mesh too; to state: the share of its power that "
                "is lost in the mesh and on the shaft that it drives, the larger of both methods, "
                "\xC2\xB7 where no power goes on.");
    if (any_ended(s))
        ts_oil_note(s, "* The second method has no friction for so little load at this speed; that "
                       "of the first stands in.");
}

void ts_oil_bearings_note(const ts_oil_sheet *s)
{
    const double one = of_bearings(s, 0), other = of_bearings(s, 1);
    ts_buffer    text;

    ts_oil_note(s, "Needs: what keeps the oil of this place within its rise, with the seal and "
                   "spline beside it; holes are no smaller than `least jet`.");
    if (!(one > APART_MOST * other) || !(other > 0.0))
        return;
    ts_buffer_open(&text, s->answer->allocator);
    ts_buffer_add(&text, "Both methods lie ");
    ts_buffer_fixed(&text, one / other, 1);
    ts_buffer_add(&text,
                  " times apart over all bearings: the one coefficient of friction of the second "
                  "leaves out the oil that a fast bearing displaces, and f_0 of the first is that "
                  "of bearings which jets feed fully. What is true lies between, nearer to the "
                  "first; flows and temperatures are those of the method that finds more.");
    ts_oil_note_made(s, &text);
}

void ts_oil_pads_note(const ts_oil_sheet *s)
{
    ts_oil_note(s, "Comes through: \xC2\xB7 where the pad takes nothing, or where power flows "
                   "towards it on one part of its way and from it on another.");
}

void ts_oil_jets_note(const ts_oil_sheet *s)
{
    ts_buffer text;

    ts_buffer_open(&text, s->answer->allocator);
    ts_buffer_add(&text, "All jets with ");
    ts_oil_value(s, &text, s->answer->drive->oil.jet_pressure.value, TS_KIND_STRESS, 3);
    ts_buffer_print(&text, " %s over their holes, across a gap of ",
                    ts_oil_unit(s, TS_KIND_STRESS));
    ts_oil_value(s, &text, s->answer->drive->oil.jet_gap.value, TS_KIND_LENGTH, 3);
    ts_buffer_print(&text,
                    " %s, at full flow. Side: where the teeth come into mesh (entering) or leave "
                    "it. Depth: how deep the jet comes before the next flank is there. No flow "
                    "does: throwing the oil off alone would warm it by more than is allowed.",
                    ts_oil_unit(s, TS_KIND_LENGTH));
    ts_oil_note_made(s, &text);
    if (any_dips(s->oil->heat))
        ts_oil_note(s, "Dips: the teeth fetch their oil themselves, so there is no hole.");
}

void ts_oil_drag_note(const ts_oil_sheet *s)
{
    ts_oil_note(s,
                "Below about 0 degC the law of viscosity, drawn through 40 and 100 degC, makes "
                "ester oils up to 70 % too thick (at -40 degC; from memory, no source), and this "
                "drag with it; `start` has its own bearing factor and follows the run up.");
}

/* ---- sources --------------------------------------------------------------------------------- */

typedef struct number_source {
    const char *number, *symbol, *source;
} number_source;

#define MEMORY " (from memory)"
static const number_source sources[] = {
    {"heat of teeth, first", "P_VZP = P_a mu_mz H_v, W",
     "ISO/TR 14179-2:2001; H_v after Ohlendorf; mu_mz held at 150 N/mm and 50 m/s" MEMORY},
    {"heat of teeth, second", "P_S + eps_alpha P_R, W",
     "Anderson and Loewenthal, NASA TP-1622; friction of Benedict and Kelley" MEMORY},
    {"windage, first", "P_WA, W", "Anderson and Loewenthal" MEMORY},
    {"windage, second", "P_WD, W", "Dawson 1984, no casing near" MEMORY},
    {"oil of teeth that jets feed", "P_thrown = rho Q v_t^2, W", "derived: oil thrown off at v_t"},
    {"oil of teeth that dip", "P_churn = M_churn n, W",
     "first: ISO/TR 14179-2:2001, hydraulic loss" MEMORY "; second: derived, oil carried round"},
    {"oil of bearings, first", "P_V0 = M_0 n, M_0 by f_0 (nu n)^(2/3) d_m^3, W",
     "Palmgren; f_0 by Harris" MEMORY},
    {"load of bearings, first", "P_V1 = M_1 n, M_1 = f_1 P_1 d_m, W",
     "Palmgren; f_1 by Harris" MEMORY},
    {"heat of bearings, second", "P_mu = mu P_1 d/2 n, W", "ISO/TR 14179-1:2001" MEMORY},
    {"seals", "P_VD, W", "first: ISO/TR 14179-2:2001; second: ISO/TR 14179-1:2001" MEMORY},
    {"splines", "P_spline = k_spline |P|, W", "derived: friction of a tilted spline, twice a turn"},
    {"rise", "dtheta = P/(rho Q c), K", "derived: conservation of energy"},
    {"needs", "Q = P/(rho (c dtheta - v_t^2)), m3/s", "derived: conservation of energy"},
    {"nu", "nu, m2/s", "ASTM D341 (Walther) through 40 and 100 degC" MEMORY},
    {"density, heat capacity", "rho, c",
     "ISO/TS 6336-22:2018" MEMORY "; 2.5 J/(kg.K) a kelvin: common practice, no source"},
    {"jet", "v_jet = sqrt(2 dp/rho), m/s", "derived: Bernoulli"},
    {"holes", "d_jet = sqrt(4 Q/(pi C_d v_jet)), m",
     "law of the orifice" MEMORY "; C_d 0.7: 0.62 to 0.88 measured" MEMORY},
    {"depth", "(pi m_n/2 + 2 m_n tan alpha)/(v_t/v_jet + tan alpha), m",
     "derived: rack model; the radial jet of Akin, Mross and Townsend 1975" MEMORY},
    {"drift", "rho_air u^2/(pi rho d_jet) (gap/v_jet)^2, m",
     "derived: a round jet across the wind, drag coefficient 1"},
    {"side", "by v_t", "common practice, no source"},
    {"a turn", "V_g = 2 pi b (r_a^2 - r_w^2 - p_b^2/12), m3", "derived"},
    {"eta_v and torque of pumps", "filling - C_s dp/(eta n); V_g/(2 pi) (dp (1 + C_f) + C_d eta n)",
     "Wilson" MEMORY},
    {"oil over pick-ups", "m", "derived: the volume of the level sump stays in it"},
    {"drop that passes", "d_cut = sqrt(9 mu Q/(pi L (rho_oil - rho_air)))/(n r), m",
     "derived: drag of Stokes against the swirl"},
};
#define SOURCE_COUNT (sizeof sources / sizeof sources[0])

static void source_cell(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text)
{
    (void)s;
    ts_buffer_add(text, column == 0   ? sources[row].number
                        : column == 1 ? sources[row].symbol
                                      : sources[row].source);
}

void ts_oil_sources(const ts_oil_sheet *s)
{
    static const char *const heads[] = {"number", "symbol", "source"};
    static const ts_oil_grid grid    = {heads, 3, (uint32_t)SOURCE_COUNT, source_cell};
    static const char        title[] = "Where each number comes from (`why` shows its steps: "
                                       "address of the part, then /heat:P_heat@CONDITION)";
    ts_buffer                text;

    ts_buffer_open(&text, s->answer->allocator);
    ts_buffer_add(&text, title);
    if (s->chapter != NULL) {
        ts_oil_table(s, &text, &grid);
        return;
    }
    ts_buffer_close(&text);
    ts_page_heading(s->page, title);
    for (size_t i = 0; i < SOURCE_COUNT; i++) {
        ts_buffer_open(&text, s->page->out->allocator);
        ts_buffer_print(&text, "%s: %s: %s", sources[i].number, sources[i].symbol,
                        sources[i].source);
        ts_buffer_add(s->page->out, "  ");
        ts_page_wrap_made(s->page, &text, 4, 2);
    }
}

void ts_oil_sources_json(ts_json *json)
{
    ts_json_key(json, "sources");
    ts_json_array(json);
    for (size_t i = 0; i < SOURCE_COUNT; i++) {
        ts_json_object(json);
        ts_json_string_at(json, "number", sources[i].number);
        ts_json_string_at(json, "symbol", sources[i].symbol);
        ts_json_string_at(json, "source", sources[i].source);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}
