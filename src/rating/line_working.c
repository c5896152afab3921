/* rating/line_working.c: by which steps did the numbers of a line come about? */
#include "rating/drive_lines_parts.h"

#include "motion/value_note.h"
#include "rating/bearing/dynamic_capacity.h"
#include "rating/bearing/rolling_life.h"
#include "rating/drive_teeth.h"

#include <math.h>

#define BALANCE "derived: balance of a shaft on two bearings that do not hold against tilting"

/* ---- loads ----------------------------------------------------------------------------------- */

static const ts_formula F_formulas[3] = {
    {"F_x", "load of all meshes of the gear along the shaft", "N", "sum(s*F)",
     "derived: parts of the tooth forces in the frame of the shaft"},
    {"F_y", "load of all meshes of the gear across the shaft, first plane", "N", "sum(s*F)",
     "derived: parts of the tooth forces in the frame of the shaft"},
    {"F_z", "load of all meshes of the gear across the shaft, second plane", "N", "sum(s*F)",
     "derived: parts of the tooth forces in the frame of the shaft"},
};
static const ts_formula M_formulas[3] = {
    {"T", "torque on the shaft at the gear", "N.m", "sum(s*T)", "derived: torques of its meshes"},
    {"M_y", "couple of the axial tooth forces, second plane", "N.m", "sum(a*F)",
     "derived: arm of the contact times axial force"},
    {"M_z", "couple of the axial tooth forces, first plane", "N.m", "sum(a*F)",
     "derived: arm of the contact times axial force"},
};

#define TERMS_MOST 48

typedef struct terms {
    ts_input at[TERMS_MOST];
    size_t   count;
} terms;

static void put(terms *list, const char *name, double value)
{
    if (list->count < TERMS_MOST)
        list->at[list->count++] = (ts_input){name, value};
}

/* A factor that follows from places and directions alone. */
static void put_factor(const ts_lines_case *c, terms *list, const char *name, double value,
                       const char *unit)
{
    ts_workings_row(c->workings, name, value, unit,
                    "derived: follows from where the axes stand and how the teeth face");
    put(list, name, value);
}

static void put_lent(const ts_lines_case *c, terms *list, const char *name, double value,
                     ts_subject lender, const char *symbol)
{
    ts_workings_borrow(c->workings, name, value, lender, symbol);
    put(list, name, value);
}

static const char *const force_names[3]  = {"F_x", "F_y", "F_z"};
static const char *const torque_names[2] = {"T_1", "T_2"};

/* Every mesh of the gear that is loaded: part `i` of force or moment. */
static void list_force(const ts_lines_case *c, const ts_line *line, uint32_t gear,
                       int32_t condition, const double direction[3], const char *factor,
                       double (*arm)(const double r[3]), terms *out)
{
    for (uint32_t m = 0; m < c->train->mesh_count; m++) {
        const ts_mesh      *mesh = &c->train->meshes[m];
        const ts_mesh_load *load =
            &c->lines->power->mesh[(size_t)condition * c->train->mesh_count + m];
        const int g    = mesh->driver == gear ? 0 : 1;
        double    r[3] = {0.0, 0.0, 0.0}, by = 1.0;

        if ((mesh->driver != gear && mesh->driven != gear) || load->flow == TS_FLOW_NONE)
            continue;
        if (arm != NULL) {
            ts_line_arm(c->lines, m, g, line, r);
            by = arm(r);
        }
        for (int i = 0; i < 3; i++) {
            const double s = (g == 0 ? -1.0 : 1.0) * direction[i] * by;
            if (!(fabs(s) > 0.0))
                continue;
            put_factor(c, out, factor, s, arm != NULL ? "m" : "1");
            put_lent(c, out, "F", load->force[i], (ts_subject){mesh->node, condition},
                     force_names[i]);
        }
    }
}

static void list_torque(const ts_lines_case *c, const ts_line *line, uint32_t gear,
                        int32_t condition, terms *out)
{
    for (uint32_t m = 0; m < c->train->mesh_count; m++) {
        const ts_mesh      *mesh = &c->train->meshes[m];
        const ts_mesh_load *load =
            &c->lines->power->mesh[(size_t)condition * c->train->mesh_count + m];
        const int g = mesh->driver == gear ? 0 : 1;

        if ((mesh->driver != gear && mesh->driven != gear) || load->flow == TS_FLOW_NONE)
            continue;
        put_factor(c, out, "s", g == 0 ? -line->sense : line->sense, "1");
        put_lent(c, out, "T", load->T[g], (ts_subject){mesh->node, condition}, torque_names[g]);
    }
}

static double arm_y(const double r[3])
{
    return r[2];
}

static double arm_z(const double r[3])
{
    return -r[1];
}

static void finish(const ts_lines_case *c, const ts_formula *formula, double result,
                   const terms *list)
{
    if (list->count > 0)
        (void)ts_step_list(c->workings, formula, result, list->at, list->count);
    else
        ts_workings_row(c->workings, formula->symbol, 0.0, formula->unit,
                        "derived: no mesh of the gear is loaded");
}

static void note_gear_load(const ts_lines_case *c, const ts_line *line, int g, int32_t condition,
                           const ts_line_gear_load *load)
{
    const uint32_t gear         = line->gears[g].gear;
    const double  *direction[3] = {line->axis, line->across, line->up};

    for (int i = 0; i < 3; i++) {
        terms list = {.count = 0};
        list_force(c, line, gear, condition, direction[i], "s", NULL, &list);
        finish(c, &F_formulas[i], load->F[i], &list);
    }
    terms torque = {.count = 0}, second = {.count = 0}, first = {.count = 0};
    list_torque(c, line, gear, condition, &torque);
    finish(c, &M_formulas[0], load->M[0], &torque);
    list_force(c, line, gear, condition, line->axis, "a", arm_y, &second);
    finish(c, &M_formulas[1], load->M[1], &second);
    list_force(c, line, gear, condition, line->axis, "a", arm_z, &first);
    finish(c, &M_formulas[2], load->M[2], &first);
}

/* ---- reactions ------------------------------------------------------------------------------- */

static const ts_formula R_formulas[2] = {
    {"F_y", "reaction of the bearing, first plane", "N", "-(sum(a*F) + sum(M))/span", BALANCE},
    {"F_z", "reaction of the bearing, second plane", "N", "-(sum(a*F) - sum(M))/span", BALANCE},
};
static const ts_formula F_r_formula         = {"F_r", "radial load", "N", "sqrt(F_y^2 + F_z^2)",
                                               "derived: both planes together"};
static const ts_formula F_a_formula         = {"F_a", "axial load", "N", "abs(sum(F))",
                                               "derived: one bearing holds the shaft along its axis"};
static const ts_formula F_unbalance_formula = {
    "F_r", "radial load by what balancing leaves of the tube", "N", "m_tube/2*v_unbalance*omega",
    "ISO 21940-11, grade G 6.3 (from memory); half of the tube"};

static void note_reaction(const ts_lines_case *c, const ts_line *line, int k, int32_t condition,
                          const ts_line_case *one)
{
    const double other = line->bearings[1 - k].x;

    for (int plane = 0; plane < 2; plane++) {
        terms list = {.count = 0};
        for (int g = 0; g < line->gear_count; g++) {
            const ts_subject lender = {line->gears[g].node, condition};
            const double     a      = line->gears[g].x - other;

            ts_workings_row(c->workings, "a", a, "m",
                            "derived: arm of the gear about the other bearing, by the shape");
            put(&list, "a", a);
            put_lent(c, &list, "F", one->load[g].F[1 + plane], lender, force_names[1 + plane]);
            put_lent(c, &list, "M", one->load[g].M[2 - plane], lender, plane == 0 ? "M_z" : "M_y");
        }
        ts_workings_row(c->workings, "span", line->bearings[k].x - other, "m",
                        "derived: from the other bearing to this one, by the shape");
        put(&list, "span", line->bearings[k].x - other);
        (void)ts_step_list(c->workings, &R_formulas[plane], one->reaction[k].F[1 + plane], list.at,
                           list.count);
    }
    const double F_y = one->reaction[k].F[1], F_z = one->reaction[k].F[2];
    (void)TS_STEP(c->workings, F_r_formula, one->reaction[k].F_r, F_y, F_z);
    if (!line->bearings[k].locates) {
        ts_workings_assumed(c->workings, "F_a", 0.0, "N", "it lets the shaft slide along its axis");
        return;
    }
    terms axial = {.count = 0};
    for (int g = 0; g < line->gear_count; g++)
        put_lent(c, &axial, "F", one->load[g].F[0], (ts_subject){line->gears[g].node, condition},
                 "F_x");
    (void)ts_step_list(c->workings, &F_a_formula, fabs(one->reaction[k].F[0]), axial.at,
                       axial.count);
}

static void note_unbalance(const ts_lines_case *c, const ts_line *line, const ts_line_case *one)
{
    const double m_tube = ts_line_tube_mass(line), v_unbalance = TS_LINE_UNBALANCE;
    const double omega = fabs(one->omega);

    ts_workings_row(c->workings, "m_tube", m_tube, "kg", "derived: its cylinder of steel");
    ts_workings_assumed(c->workings, "v_unbalance", v_unbalance, "m/s",
                        "ISO 21940-11, grade G 6.3 (from memory)");
    (void)TS_STEP(c->workings, F_unbalance_formula, m_tube / 2.0 * v_unbalance * omega, m_tube,
                  v_unbalance, omega);
    ts_workings_assumed(c->workings, "F_a", 0.0, "N", "nothing pushes the tube along its axis");
}

/* ---- bearings -------------------------------------------------------------------------------- */

#define GENERIC "data/bearing_inside.tsv: generic inside of the series; common practice, no source"
#define ROLLERS "cylindrical rollers: only the radial load counts, ISO 281:2007, 7 (from memory)"
#define CHOSEN  "the lightest of the table that holds, or as the file says"

static void note_inside(const ts_lines_case *c, const ts_line_bearing *b)
{
    const ts_bearing_inside *in     = &b->bearing.inside;
    const bool               roller = b->bearing.form == TS_BEARING_CYLINDRICAL_ROLLER;
    ts_workings             *w      = c->workings;

    ts_workings_row(w, "d", b->bearing.d, "m", CHOSEN "; data/bearing_size.tsv");
    ts_workings_row(w, "D", b->bearing.D, "m", CHOSEN "; data/bearing_size.tsv");
    ts_workings_row(w, "i", b->bearing.rows, "1", CHOSEN);
    ts_workings_row(w, "alpha", b->bearing.alpha, "rad", CHOSEN);
    ts_workings_row(w, "Z", in->Z, "1", GENERIC);
    ts_workings_row(w, "D_w", in->D_w, "m", GENERIC);
    ts_workings_row(w, "D_pw", in->D_pw, "m", "halfway between bore and outside");
    ts_workings_row(w, "p", b->ability.p, "1", "ISO 281:2007, exponent of life (from memory)");
    ts_workings_row(w, "b_m", roller ? TS_ROLLER_RATING : TS_BALL_RATING, "1",
                    "ISO 281:2007, tables 1 and 6 (from memory)");
    const ts_static_factors still = ts_bearing_static_factors(&b->bearing);
    ts_workings_row(w, "X_0", still.X_0, "1", "ISO 76:2006, table 2 (from memory)");
    ts_workings_row(w, "Y_0", still.Y_0, "1", "ISO 76:2006, table 2 (from memory)");
    ts_workings_row(w, "S", c->lines->want.S, "1", "reliability of the rating life, ISO 281:2007");
    if (roller) {
        ts_workings_row(w, "D_we", in->D_w, "m", GENERIC);
        ts_workings_row(w, "L_we", in->L_we, "m", GENERIC);
        ts_workings_row(w, "X_1", 1.0, "1", ROLLERS);
        ts_workings_row(w, "Y_1", 0.0, "1", ROLLERS);
        return;
    }
    ts_workings_row(w, "f_i", in->f_i, "1", GENERIC);
    ts_workings_row(w, "f_e", in->f_e, "1", GENERIC);
    ts_workings_row(w, "level", TS_BALL_LEVEL, "1",
                    "fitted to ISO 281:2007, table 2: docs/method/bearings.md");
}

static const ts_formula t_formula     = {"t", "time spent in the condition", "s", "events*t_event",
                                         "derived: events times how long each lasts"};
static const ts_formula least_formula = {
    "L_nmh", "modified rating life in time, without a film", "s", "a_least*L_10h",
    "ISO 281:2007 ends at kappa 0.1; the least of its a_ISO stands below it"};
static const ts_formula harm_formula = {"harm", "share of the modified life that is used up", "1",
                                        "t/L_nmh", "derived: Palmgren and Miner"};
static const ts_formula harm_10_formula = {"harm_10", "share of the basic life that is used up",
                                           "1", "t/L_10h", "derived: Palmgren and Miner"};
static const ts_formula life_formula    = {"L_nmh", "modified rating life in all conditions", "s",
                                           "sum(t)/sum(harm)", "derived: Palmgren and Miner"};
static const ts_formula life_10_formula = {"L_10h", "basic rating life in all conditions", "s",
                                           "sum(t)/sum(harm_10)", "derived: Palmgren and Miner"};

static double note_time(const ts_lines_case *c, const ts_condition *condition)
{
    const double t = ts_condition_seconds(condition);

    if (isnan(t))
        return t;
    if (ts_measure_known(condition->hours)) {
        TS_NOTE_MEASURE(c->workings, c->drive, "t", condition->hours, "s", "hours");
        return t;
    }
    const double events = (double)condition->events.value, t_event = condition->lasts.value;
    ts_workings_given(c->workings, "events", events, "1", condition->events.node);
    TS_NOTE_MEASURE(c->workings, c->drive, "t_event", condition->lasts, "s", "lasts");
    return TS_STEP(c->workings, t_formula, t, events, t_event);
}

static void note_duty(const ts_lines_case *c, const ts_line *line, int k, int32_t condition,
                      const ts_line_case *one)
{
    const ts_line_bearing *b     = &line->bearings[k];
    const ts_duty_rating  *duty  = &one->duty[k];
    const double           omega = fabs(one->omega);
    const ts_subject       own   = {b->node, TS_EVERY_CONDITION};

    ts_workings_borrow(c->workings, "n", omega,
                       (ts_subject){c->train->shafts[line->shaft].node, condition}, "n");
    ts_workings_borrow(c->workings, "omega", omega,
                       (ts_subject){c->train->shafts[line->shaft].node, condition}, "n");
    const double t = note_time(c, &c->drive->conditions[condition]);
    if (line->kind == TS_LINE_TUBE)
        note_unbalance(c, line, one);
    else
        note_reaction(c, line, k, condition, one);
    ts_workings_borrow(c->workings, "C", b->ability.C_r, own, "C_r");
    ts_workings_borrow(c->workings, "nu", c->lines->nu[condition],
                       (ts_subject){c->lines->oil_node, condition}, "nu");
    ts_line_rate_again(c, b, (uint32_t)condition, omega, &one->reaction[k]);
    const double L_nmh = duty->L_nmh, L_10h = duty->L_10h;
    if (duty->kappa < 0.1) {
        const double a_least = 0.1;
        ts_workings_row(c->workings, "a_least", a_least, "1", "ISO 281:2007, 9.3 (from memory)");
        (void)TS_STEP(c->workings, least_formula, a_least * L_10h, a_least, L_10h);
    }
    if (isnan(t) || isnan(L_nmh))
        return;
    if (isinf(L_nmh)) {
        ts_workings_assumed(c->workings, "harm", 0.0, "1", "no load, no harm");
        ts_workings_assumed(c->workings, "harm_10", 0.0, "1", "no load, no harm");
        return;
    }
    (void)TS_STEP(c->workings, harm_formula, t / L_nmh, t, L_nmh);
    (void)TS_STEP(c->workings, harm_10_formula, t / L_10h, t, L_10h);
}

static const ts_formula Q_formula         = {"Q_max", "load of the most loaded element", "N",
                                             "5*F_ref/(i*Z*cos(alpha))",
                                             "R. Stribeck's rule, as in ISO 76 (from memory)"};
static const ts_formula give_ball_formula = {
    "delta_r", "radial give at that load", "m",
    "1e-3*4.36e-4*(Q_max^2/(1000*D_w))^(1/3)/cos(alpha)",
    "A. Palmgren, Ball and Roller Bearing Engineering (from memory)"};
static const ts_formula give_roller_formula = {
    "delta_r", "radial give at that load", "m", "1e-3*7.68e-5*Q_max^0.9/(1000*L_we)^0.8",
    "A. Palmgren, Ball and Roller Bearing Engineering (from memory)"};
static const ts_formula k_r_formula = {"k_r", "radial stiffness at that load, taken as linear",
                                       "N/m", "F_ref/delta_r", "derived: load over give"};

static void note_stiffness(const ts_lines_case *c, const ts_line_bearing *b)
{
    if (ts_measure_known(b->seat->stiffness)) {
        TS_NOTE_MEASURE(c->workings, c->drive, "k_r", b->seat->stiffness, "N/m", "stiffness");
        return;
    }
    const double F_ref = b->F_ref, Z = b->bearing.inside.Z, i = b->bearing.rows;
    const double alpha = b->bearing.alpha, D_w = b->bearing.inside.D_w;
    const double L_we  = b->bearing.inside.L_we;
    const double Q_max = 5.0 * F_ref / (i * Z * cos(alpha)), delta_r = F_ref / b->k_r;

    ts_workings_row(c->workings, "F_ref", F_ref, "N",
                    "derived: the greatest radial load of all conditions, at least C_0r/100");
    (void)TS_STEP(c->workings, Q_formula, Q_max, F_ref, i, Z, alpha);
    if (b->bearing.form == TS_BEARING_CYLINDRICAL_ROLLER)
        (void)TS_STEP(c->workings, give_roller_formula, delta_r, Q_max, L_we);
    else
        (void)TS_STEP(c->workings, give_ball_formula, delta_r, Q_max, D_w, alpha);
    (void)TS_STEP(c->workings, k_r_formula, b->k_r, F_ref, delta_r);
}

/* The whole life from what each condition uses up; what the worst condition says of the rest. */
static void note_life(const ts_lines_case *c, uint32_t number, const ts_line_bearing *b, int k)
{
    terms all = {.count = 0}, basic = {.count = 0};

    for (uint32_t i = 0; i < c->drive->condition_count && !isnan(b->rating.L_nmh); i++) {
        const ts_duty_rating *duty   = &ts_line_case_at(c, number, i)->duty[k];
        const ts_subject      lender = {b->node, (int32_t)i};
        const double          t      = ts_condition_seconds(&c->drive->conditions[i]);

        put_lent(c, &all, "t", t, lender, "t");
        put(&basic, "t", t);
        put_lent(c, &all, "harm", isinf(duty->L_nmh) ? 0.0 : t / duty->L_nmh, lender, "harm");
        put_lent(c, &basic, "harm_10", isinf(duty->L_10h) ? 0.0 : t / duty->L_10h, lender,
                 "harm_10");
    }
    if (isfinite(b->rating.L_nmh) && all.count > 0 && all.count < TERMS_MOST) {
        (void)ts_step_list(c->workings, &life_formula, b->rating.L_nmh, all.at, all.count);
        (void)ts_step_list(c->workings, &life_10_formula, b->rating.L_10h, basic.at, basic.count);
    }
    if (b->rating.worst_static >= 0)
        ts_workings_borrow(c->workings, "S_0", b->rating.S_0,
                           (ts_subject){b->node, b->rating.worst_static}, "S_0");
}

static void note_bearing(const ts_lines_case *c, uint32_t number, int k)
{
    const ts_line         *line = &c->lines->lines[number];
    const ts_line_bearing *b    = &line->bearings[k];
    ts_bearing_ability     ability;

    if (!b->there || b->fault != NULL)
        return;
    ts_workings_about(c->workings, b->node, TS_EVERY_CONDITION);
    note_inside(c, b);
    (void)ts_bearing_prepare(&b->bearing, &ability, c->workings);
    if (ts_measure_known(b->seat->capacity))
        TS_NOTE_MEASURE(c->workings, c->drive, "C_r", b->seat->capacity, "N", "capacity");
    if (ts_measure_known(b->seat->static_capacity))
        TS_NOTE_MEASURE(c->workings, c->drive, "C_0r", b->seat->static_capacity, "N",
                        "static capacity");
    ts_workings_row(c->workings, "share",
                    b->bearing.form == TS_BEARING_CYLINDRICAL_ROLLER ? 0.02 : 0.01, "1",
                    "common practice, no source");
    note_stiffness(c, b);
    (void)ts_line_load_to_follow(c, line, b, c->workings);
    for (uint32_t i = 0; i < c->drive->condition_count; i++) {
        ts_workings_about(c->workings, b->node, (int32_t)i);
        note_duty(c, line, k, (int32_t)i, ts_line_case_at(c, number, i));
    }
    ts_workings_about(c->workings, b->node, TS_EVERY_CONDITION);
    note_life(c, number, b, k);
}

/* ---- the bent line ----------------------------------------------------------------------------
 */

#define BEAM                                                                                       \
    "part of one gear's load in the bent line: Timoshenko beam of the sections of this shaft on "  \
    "its bearings (docs/method/shafts.md)"

static const ts_formula v_plane_formulas[2] = {
    {"v_y", "deflection at the gear, first plane", "m", "sum(v)", "derived: sum over all gears"},
    {"v_z", "deflection at the gear, second plane", "m", "sum(v)", "derived: sum over all gears"},
};
static const ts_formula theta_plane_formulas[2] = {
    {"theta_y", "slope at the gear, first plane", "rad", "sum(theta)",
     "derived: sum over all gears"},
    {"theta_z", "slope at the gear, second plane", "rad", "sum(theta)",
     "derived: sum over all gears"},
};
static const ts_formula dv_formulas[2] = {
    {"dv_y", "by how much more the rear end of the face gives way than the front end, first plane",
     "m", "sum(dv)", "derived: sum over all gears"},
    {"dv_z", "by how much more the rear end of the face gives way than the front end, second plane",
     "m", "sum(dv)", "derived: sum over all gears"},
};
static const ts_formula v_formula     = {"v", "deflection at the gear", "m", "sqrt(v_y^2 + v_z^2)",
                                         "derived: both planes together"};
static const ts_formula slope_formula = {"slope", "slope at the gear", "rad",
                                         "sqrt(theta_y^2 + theta_z^2)",
                                         "derived: both planes together"};

static void note_bent(const ts_lines_case *c, const ts_line *line, const ts_line_bent *bent, int at,
                      const ts_line_case *one)
{
    const ts_line_gear_state *state = &one->state[at];

    for (int plane = 0; plane < 2; plane++) {
        terms v = {.count = 0}, theta = {.count = 0}, dv = {.count = 0};
        for (int g = 0; g < line->gear_count; g++) {
            const double F       = one->load[g].F[1 + plane];
            const double M       = plane == 0 ? one->load[g].M[2] : -one->load[g].M[1];
            const double v_g     = F * bent->force[g].v[at] + M * bent->couple[g].v[at];
            const double theta_g = F * bent->force[g].theta[at] + M * bent->couple[g].theta[at];
            const double dv_g    = F * bent->force[g].dv[at] + M * bent->couple[g].dv[at];

            ts_workings_row(c->workings, "v", v_g, "m", BEAM);
            ts_workings_row(c->workings, "theta", theta_g, "rad", BEAM);
            put(&v, "v", v_g);
            put(&theta, "theta", theta_g);
            ts_workings_row(c->workings, "dv", dv_g, "m", BEAM);
            put(&dv, "dv", dv_g);
        }
        (void)ts_step_list(c->workings, &v_plane_formulas[plane], state->v[plane], v.at, v.count);
        (void)ts_step_list(c->workings, &theta_plane_formulas[plane], state->theta[plane], theta.at,
                           theta.count);
        (void)ts_step_list(c->workings, &dv_formulas[plane], state->dv[plane], dv.at, dv.count);
    }
    const double v_y = state->v[0], v_z = state->v[1];
    const double theta_y = state->theta[0], theta_z = state->theta[1];
    /* As all who show them compute them, to the last bit. */
    (void)TS_STEP(c->workings, v_formula, hypot(v_y, v_z), v_y, v_z);
    (void)TS_STEP(c->workings, slope_formula, hypot(theta_y, theta_z), theta_y, theta_z);
}

void ts_line_note_bent(const ts_lines_case *c, uint32_t number, const ts_line_bent *bent)
{
    const ts_line *line = &c->lines->lines[number];

    for (uint32_t i = 0; i < c->drive->condition_count; i++)
        for (int g = 0; g < line->gear_count; g++) {
            ts_workings_about(c->workings, line->gears[g].node, (int32_t)i);
            note_bent(c, line, bent, g, ts_line_case_at(c, number, i));
        }
}

/* ---- the line -------------------------------------------------------------------------------- */

void ts_line_note(const ts_lines_case *c, uint32_t number)
{
    const ts_line *line = &c->lines->lines[number];

    for (int g = 0; g < line->gear_count; g++) {
        ts_workings_about(c->workings, line->gears[g].node, TS_EVERY_CONDITION);
        ts_workings_row(c->workings, "x", line->gears[g].x, "m",
                        "derived: its middle from the front (inner) end, by the shape");
        ts_workings_row(c->workings, "b", line->gears[g].width, "m",
                        "derived: face of the gear along the shaft");
        ts_workings_row(
            c->workings, "k_twist", line->gears[g].k_twist, "N.m/rad",
            "derived: torsional stiffness of its body from end to end of the face, by the "
            "shape");
        for (uint32_t i = 0; i < c->drive->condition_count; i++) {
            ts_workings_about(c->workings, line->gears[g].node, (int32_t)i);
            note_gear_load(c, line, g, (int32_t)i, &ts_line_case_at(c, number, i)->load[g]);
        }
    }
    for (int k = 0; k < line->bearing_count; k++)
        note_bearing(c, number, k);
}
