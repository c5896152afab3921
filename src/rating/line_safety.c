/* rating/line_safety.c: where is a line stressed most, and does it hold there?  DIN 743, and
 * Goodman's line as a second opinion. */
#include "rating/drive_lines_parts.h"

#include "catalog/metal.h"
#include "catalog/shaft_undercut.h"
#include "rating/shaft/distortion_energy.h"

#include <math.h>

#define FILLET_LEAST 0.4e-3 /* m */
#define FILLET_MOST  1.0e-3
#define ROUGHNESS    4e-6  /* m   R_z of a ground seat: common practice, no source               */
#define TESTED       13e-3 /* m   the round of which the source of the steel tells the strength  */

/* ---- steel ----------------------------------------------------------------------------------- */

static ts_din_steel core_steel(ts_metal *metal)
{
    const bool there = ts_metal_named(TS_TEXT("9310 core"), metal);

    return (ts_din_steel){.kind      = TS_DIN_CASE_HARDENED,
                          .sigma_B   = there ? metal->Ftu : (double)NAN,
                          .sigma_S   = there ? metal->Fty : (double)NAN,
                          .d_B       = TESTED,
                          .sigma_zdW = (double)NAN,
                          .sigma_bW  = (double)NAN,
                          .tau_tW    = (double)NAN};
}

static void note_steel(const ts_lines_case *c, const ts_din_steel *steel, const ts_metal *metal)
{
    ts_workings_row(c->workings, "sigma_B", steel->sigma_B, "Pa", metal->source);
    ts_workings_row(c->workings, "sigma_S", steel->sigma_S, "Pa", metal->source);
    ts_workings_row(c->workings, "d_B", steel->d_B, "m", metal->source);
}

/* ---- where ----------------------------------------------------------------------------------- */

static void add_notch(ts_line *line, double x, const ts_din_section *section)
{
    ts_line_notch *notch;

    if (line->notch_count == TS_LINE_NOTCHES_MOST)
        return;
    notch  = &line->notches[line->notch_count];
    *notch = (ts_line_notch){.node    = line->notch_nodes[line->notch_count],
                             .x       = x,
                             .section = *section,
                             .S_D     = INFINITY,
                             .S_F     = INFINITY,
                             .at_D    = -1,
                             .at_F    = -1};
    line->notch_count++;
}

static ts_din_section plain(ts_din_notch_kind kind, double d, double d_i)
{
    return (ts_din_section){.notch        = kind,
                            .d            = d,
                            .d_i          = d_i,
                            .D            = (double)NAN,
                            .D_1          = (double)NAN,
                            .r            = (double)NAN,
                            .R_z          = ROUGHNESS,
                            .d_eff        = (double)NAN,
                            .K_V          = 1.0,
                            .beta         = {(double)NAN, (double)NAN, (double)NAN},
                            .mean_follows = true};
}

/* What the file cuts below the journal of a section; false: nothing.  Its sections are told one by
 * one, and those of the program have fillets. */
static bool cut_below(const ts_lines_case *c, const ts_line *line, int section, ts_undercut *cut)
{
    const ts_box_shaft *record = c->train->shafts[line->shaft].record;

    if (line->kind != TS_LINE_BOX || (size_t)section >= record->section_count ||
        record->sections[section].undercut.standing != TS_GIVEN)
        return false;
    *cut = ts_undercut_at((size_t)record->sections[section].undercut.value);
    return true;
}

static void add_shoulder(const ts_lines_case *c, ts_line *line, int second)
{
    const ts_beam_section *one = &line->sections[second - 1], *two = &line->sections[second];
    const ts_beam_section *thin    = one->d_o < two->d_o ? one : two;
    const double           wide    = fmax(one->d_o, two->d_o);
    ts_din_section         section = plain(TS_DIN_SHOULDER, thin->d_o, thin->d_i);
    ts_undercut            cut;

    section.D = wide;
    section.r = fmin(FILLET_MOST, fmax(FILLET_LEAST, (wide - thin->d_o) / 4.0));
    if (section.r > (wide - thin->d_o) / 2.0)
        section.r = (wide - thin->d_o) / 2.0;
    if (cut_below(c, line, thin == one ? second - 1 : second, &cut)) {
        section     = plain(TS_DIN_UNDERCUT, thin->d_o - 2.0 * cut.t_1, thin->d_i);
        section.D   = wide;
        section.D_1 = thin->d_o;
        section.r   = cut.r;
    }
    if (wide - thin->d_o > 1e-5)
        add_notch(line, one->x_2, &section);
}

/* Splines inside of the ends of a shaft, outside of those of a tube. */
static void add_splines(const ts_lines_case *c, uint32_t number)
{
    ts_line *line = &c->lines->lines[number];

    for (int end = 0; end < 2; end++) {
        const ts_beam_section *s    = &line->sections[end == 0 ? 0 : line->section_count - 1];
        double                 most = 0.0;
        for (uint32_t i = 0; i < c->drive->condition_count; i++)
            most = fmax(most, fabs(ts_line_case_at(c, number, i)->pad[end]));
        if (!(most > 0.0))
            continue;
        const ts_din_section section = plain(TS_DIN_INVOLUTE_SPLINE, s->d_o, s->d_i);
        add_notch(line, end == 0 ? s->x_1 : s->x_2, &section);
    }
}

/* ---- what is carried there --------------------------------------------------------------------
 */

typedef ts_line_cut carried;

/* Balance of all that stands before x; in plane 0 the couple is M_z, in plane 1 it is -M_y. */
ts_line_cut ts_line_cut_at(const ts_line *line, const ts_line_case *one, double x)
{
    carried out = {{0.0, 0.0}, 0.0, -one->pad[0], 0.0};

    if (!(x > 0.0)) /* at the front end the spline itself */
        return out;
    for (int g = 0; g < line->gear_count; g++) {
        const ts_line_gear_load *load = &one->load[g];
        if (!(line->gears[g].x < x))
            continue;
        out.M[0] += load->F[1] * (x - line->gears[g].x) - load->M[2];
        out.M[1] += load->F[2] * (x - line->gears[g].x) + load->M[1];
        out.T -= load->M[0];
        out.N -= load->F[0];
    }
    for (int k = 0; k < line->bearing_count && line->kind != TS_LINE_TUBE; k++) {
        const ts_line_reaction *r = &one->reaction[k];
        if (!(line->bearings[k].x < x))
            continue;
        out.M[0] += r->F[1] * (x - line->bearings[k].x);
        out.M[1] += r->F[2] * (x - line->bearings[k].x);
        out.N -= r->F[0];
    }
    out.M_b = sqrt(out.M[0] * out.M[0] + out.M[1] * out.M[1]);
    return out;
}

/* ---- safety ---------------------------------------------------------------------------------- */

/* The shaft turns under bending that stands still; torque and axial load stand still in it. */
ts_din_stress ts_line_stress_of(const ts_din_section *s, double M, double T, double N,
                                ts_workings *workings)
{
    const double  sigma_b  = ts_nominal_bending(M, s->d, s->d_i, workings);
    const double  tau_t    = ts_nominal_torsion(T, s->d, s->d_i, workings);
    const double  sigma_zd = ts_nominal_axial(N, s->d, s->d_i, workings);
    ts_din_stress out      = {
             .a = {0.0, sigma_b, 0.0}, .m = {sigma_zd, 0.0, tau_t}, .most = {sigma_zd, sigma_b, tau_t}};
    return out;
}

static bool same_section(const ts_din_section *a, const ts_din_section *b)
{
    return a->notch == b->notch && !(fabs(a->d - b->d) > 1e-9) && !(fabs(a->d_i - b->d_i) > 1e-9) &&
           !(fabs(a->D - b->D) > 1e-9) && !(fabs(a->D_1 - b->D_1) > 1e-9) &&
           !(fabs(a->r - b->r) > 1e-9);
}

/* Equal shoulders are equally able. */
static bool prepare(ts_line *line, int n, const ts_din_steel *steel)
{
    ts_line_notch *notch = &line->notches[n];

    for (int i = 0; i < n; i++)
        if (same_section(&line->notches[i].section, &notch->section)) {
            notch->ability = line->notches[i].ability;
            return true;
        }
    return ts_din_prepare(steel, &notch->section, &notch->ability, NULL) == TS_DIN_FINE;
}

typedef struct rated_case {
    double M, T, N;
} rated_case;

static void take(ts_line_notch *notch, const ts_din_safety *safety, int32_t condition)
{
    if (!(safety->S_D >= notch->S_D)) {
        notch->S_D  = safety->S_D;
        notch->at_D = condition;
    }
    if (!(safety->S_F >= notch->S_F)) {
        notch->S_F  = safety->S_F;
        notch->at_F = condition;
    }
}

/* What another condition outdoes in every part need not be rated. */
static bool is_outdone(const rated_case *all, uint32_t count, uint32_t i)
{
    for (uint32_t k = 0; k < count; k++)
        if (k != i && all[k].M >= all[i].M && all[k].T >= all[i].T && all[k].N >= all[i].N &&
            (all[k].M > all[i].M || all[k].T > all[i].T || all[k].N > all[i].N || k < i))
            return true;
    return false;
}

static void rate(const ts_lines_case *c, uint32_t number, ts_line_notch *notch)
{
    const ts_line *line = &c->lines->lines[number];
    rated_case     all[TS_CONDITIONS_MOST];
    uint32_t       count = 0;
    double         low = 0.0, high = 0.0, most = 0.0;

    for (uint32_t i = 0; i < c->drive->condition_count; i++) {
        const carried here = ts_line_cut_at(line, ts_line_case_at(c, number, i), notch->x);

        all[count++] = (rated_case){here.M_b, fabs(here.T), fabs(here.N)};
        low          = fmin(low, here.T);
        high         = fmax(high, here.T);
        most         = fmax(most, here.M_b);
        notch->M     = most;
        notch->T     = fmax(notch->T, fabs(here.T));
    }
    for (uint32_t i = 0; i < count; i++) {
        if (is_outdone(all, count, i))
            continue;
        const ts_din_stress stress =
            ts_line_stress_of(&notch->section, all[i].M, all[i].T, all[i].N, NULL);
        const ts_din_safety safety = ts_din_rate(&notch->section, &notch->ability, &stress, NULL);
        take(notch, &safety, (int32_t)i);
    }
    notch->T_a          = (high - low) / 2.0;
    notch->T_m          = fabs(high + low) / 2.0;
    ts_din_stress swing = ts_line_stress_of(&notch->section, most, notch->T_m, 0.0, NULL);
    swing.a[TS_DIN_T] = ts_nominal_torsion(notch->T_a, notch->section.d, notch->section.d_i, NULL);
    swing.most[TS_DIN_T]       = swing.m[TS_DIN_T] + swing.a[TS_DIN_T];
    notch->swing               = swing;
    const ts_din_safety safety = ts_din_rate(&notch->section, &notch->ability, &swing, NULL);
    if (!(safety.S_D >= notch->S_D)) {
        notch->S_D  = safety.S_D;
        notch->at_D = TS_EVERY_CONDITION;
    }
}

/* ---- second opinion ---------------------------------------------------------------------------
 */

/* Goodman's line at the weakest notch, with its fatigue notch factors; a bored shaft as the solid
 * one of equal bending strength.  The greatest torque as a steady one, and the swing that DIN 743
 * is asked about: the lesser of both. */
static double by_goodman(const ts_line_notch *notch, const ts_din_steel *steel, ts_workings *w)
{
    const double     k      = notch->section.d_i / notch->section.d;
    const double     d      = notch->section.d * cbrt(1.0 - k * k * k * k);
    ts_shaft_moments steady = {.M_a  = notch->M,
                               .T_m  = notch->T,
                               .K_f  = fmax(notch->ability.beta[TS_DIN_B], 1.0),
                               .K_fs = fmax(notch->ability.beta[TS_DIN_T], 1.0)};
    ts_shaft_moments swing  = steady;

    swing.T_a                        = notch->T_a;
    swing.T_m                        = notch->T_m;
    const double            k_a      = ts_surface_factor(steel->sigma_B, w);
    const double            k_b      = ts_size_factor(d, w);
    const ts_shaft_strength strength = {.S_e  = ts_endurance_limit(steel->sigma_B, k_a, k_b, w),
                                        .S_ut = steel->sigma_B,
                                        .S_y  = steel->sigma_S};
    return fmin(
        ts_shaft_safety(TS_MEAN_GOODMAN, ts_shaft_equivalent_of(&steady, w), &strength, d, w),
        ts_shaft_safety(TS_MEAN_GOODMAN, ts_shaft_equivalent_of(&swing, w), &strength, d, w));
}

/* ---- workings -------------------------------------------------------------------------------- */

#define CUT "derived: balance of all that stands before the section"
static const ts_formula M_formulas[2] = {
    {"M_1", "bending moment in the section, first plane", "N.m", "sum(a*F) - sum(C)", CUT},
    {"M_2", "bending moment in the section, second plane", "N.m", "sum(a*F) + sum(C)", CUT},
};
static const ts_formula M_formula = {"M", "bending moment in the section", "N.m",
                                     "sqrt(M_1^2 + M_2^2)", "derived: both planes together"};
static const ts_formula T_formula = {"T", "torque in the section", "N.m", "abs(sum(T))", CUT};

typedef struct list {
    ts_input in[4 * (TS_LINE_GEARS_MOST + TS_LINE_BEARINGS_MOST) + 2];
    size_t   count;
} list;

static void lend(const ts_lines_case *c, list *to, const char *name, double value,
                 ts_subject lender, const char *symbol)
{
    ts_workings_borrow(c->workings, name, value, lender, symbol);
    to->in[to->count++] = (ts_input){name, value};
}

static void note_moment(const ts_lines_case *c, const ts_line *line, const ts_line_case *one,
                        int32_t condition, double x, int plane, double M)
{
    static const char *const forces[2] = {"F_y", "F_z"};
    list                     all       = {.count = 0};

    for (int g = 0; g < line->gear_count; g++) {
        const ts_subject lender = {line->gears[g].node, condition};
        if (!(line->gears[g].x < x))
            continue;
        ts_workings_row(c->workings, "a", x - line->gears[g].x, "m",
                        "derived: arm of the gear about the section, by the shape");
        all.in[all.count++] = (ts_input){"a", x - line->gears[g].x};
        lend(c, &all, "F", one->load[g].F[1 + plane], lender, forces[plane]);
        lend(c, &all, "C", one->load[g].M[2 - plane], lender, plane == 0 ? "M_z" : "M_y");
    }
    if (all.count == 0) { /* a spline end, or a journal before the gears */
        ts_workings_row(c->workings, "C", 0.0, "N.m", "derived: no gear stands before the section");
        all.in[all.count++] = (ts_input){"C", 0.0};
    }
    for (int k = 0; k < line->bearing_count && line->kind != TS_LINE_TUBE; k++) {
        if (!(line->bearings[k].x < x))
            continue;
        ts_workings_row(c->workings, "a", x - line->bearings[k].x, "m",
                        "derived: arm of the bearing about the section, by the shape");
        all.in[all.count++] = (ts_input){"a", x - line->bearings[k].x};
        lend(c, &all, "F", one->reaction[k].F[1 + plane],
             (ts_subject){line->bearings[k].node, condition}, forces[plane]);
    }
    if (all.count > 1)
        (void)ts_step_list(c->workings, &M_formulas[plane], M, all.in, all.count);
    else
        ts_workings_row(c->workings, M_formulas[plane].symbol, 0.0, "N.m",
                        "derived: nothing bends the shaft there");
}

static void note_torque(const ts_lines_case *c, const ts_line *line, const ts_line_case *one,
                        int32_t condition, double x, double T)
{
    list all = {.count = 0};

    ts_workings_row(c->workings, "T", one->pad[0], "N.m",
                    "derived: torque at the front (inner) end, of its pad or spline");
    all.in[all.count++] = (ts_input){"T", one->pad[0]};
    for (int g = 0; g < line->gear_count && x > 0.0; g++)
        if (line->gears[g].x < x)
            lend(c, &all, "T", one->load[g].M[0], (ts_subject){line->gears[g].node, condition},
                 "T");
    (void)ts_step_list(c->workings, &T_formula, T, all.in, all.count);
}

/* Amplitudes, means and greatest values under the names of DIN 743. */
static void note_parts(const ts_lines_case *c, ts_subject own)
{
    static const char *const names[9] = {"sigma_zda",   "sigma_ba",   "tau_ta",
                                         "sigma_zdm",   "sigma_bm",   "tau_tm",
                                         "sigma_zdmax", "sigma_bmax", "tau_tmax"};
    static const char *const from[9]  = {NULL,    "sigma_b",  NULL,      "sigma_zd", NULL,
                                         "tau_t", "sigma_zd", "sigma_b", "tau_t"};

    for (int i = 0; i < 9; i++) {
        const size_t found =
            from[i] != NULL ? ts_workings_find(c->workings, own, from[i]) : SIZE_MAX;
        if (found != SIZE_MAX)
            ts_workings_borrow(c->workings, names[i], ts_workings_at(c->workings, found)->value,
                               own, from[i]);
        else
            ts_workings_row(
                c->workings, names[i], 0.0, "Pa",
                "derived: bending goes round with the shaft, torque and axial load do not");
    }
}

/* The swing of the torque between standstill and all conditions, with the greatest bending. */
static void note_swing(const ts_lines_case *c, const ts_line_notch *notch)
{
    static const char *const why =
        "derived: the swing of the torque over all conditions and standstill, with "
        "the greatest bending";
    const ts_din_stress *s = &notch->swing;

    ts_workings_row(c->workings, "sigma_zda", s->a[TS_DIN_ZD], "Pa", why);
    ts_workings_row(c->workings, "sigma_ba", s->a[TS_DIN_B], "Pa", why);
    ts_workings_row(c->workings, "tau_ta", s->a[TS_DIN_T], "Pa", why);
    ts_workings_row(c->workings, "sigma_zdm", s->m[TS_DIN_ZD], "Pa", why);
    ts_workings_row(c->workings, "sigma_bm", s->m[TS_DIN_B], "Pa", why);
    ts_workings_row(c->workings, "tau_tm", s->m[TS_DIN_T], "Pa", why);
    ts_workings_row(c->workings, "sigma_zdmax", s->most[TS_DIN_ZD], "Pa", why);
    ts_workings_row(c->workings, "sigma_bmax", s->most[TS_DIN_B], "Pa", why);
    ts_workings_row(c->workings, "tau_tmax", s->most[TS_DIN_T], "Pa", why);
    (void)ts_din_rate(&notch->section, &notch->ability, s, c->workings);
}

/* The weakest notch alone opens to formulas; the others stand in the answer. */
static void note_notch(const ts_lines_case *c, uint32_t number, int n, const ts_din_steel *steel,
                       const ts_metal *metal)
{
    const ts_line        *line  = &c->lines->lines[number];
    const ts_line_notch  *notch = &line->notches[n];
    const ts_din_section *s     = &notch->section;
    ts_din_ability        ability;

    ts_workings_about(c->workings, notch->node, TS_EVERY_CONDITION);
    note_steel(c, steel, metal);
    ts_workings_row(c->workings, "d", s->d, "m", "derived: by the shape");
    ts_workings_row(c->workings, "d_i", s->d_i, "m", "derived: by the shape");
    ts_workings_assumed(c->workings, "R_z", s->R_z, "m",
                        "a ground seat; common practice, no source");
    ts_workings_assumed(c->workings, "K_V", s->K_V, "1", "no strengthened surface");
    if (s->notch == TS_DIN_SHOULDER) {
        ts_workings_row(c->workings, "D", s->D, "m", "derived: by the shape");
        ts_workings_assumed(c->workings, "r", s->r, "m",
                            "a quarter of the step, 0.4 to 1 mm; common practice, no source");
    }
    if (s->notch == TS_DIN_UNDERCUT) {
        ts_workings_row(c->workings, "D", s->D, "m", "derived: by the shape");
        ts_workings_row(c->workings, "D_1", s->D_1, "m", "derived: by the shape");
        ts_workings_row(c->workings, "r", s->r, "m", "DIN 509:2006, table 1 (from memory)");
    }
    (void)ts_din_prepare(steel, s, &ability, c->workings);
    for (uint32_t i = 0; i < c->drive->condition_count; i++) {
        const ts_line_case *one  = ts_line_case_at(c, number, i);
        const carried       here = ts_line_cut_at(line, one, notch->x);
        const double        M_1 = here.M[0], M_2 = here.M[1], N = fabs(here.N);

        ts_workings_about(c->workings, notch->node, (int32_t)i);
        note_moment(c, line, one, (int32_t)i, notch->x, 0, M_1);
        note_moment(c, line, one, (int32_t)i, notch->x, 1, M_2);
        (void)TS_STEP(c->workings, M_formula, here.M_b, M_1, M_2);
        note_torque(c, line, one, (int32_t)i, notch->x, fabs(here.T));
        ts_workings_row(c->workings, "N", N, "N",
                        "derived: axial loads of gears and bearings before the section");
        const ts_din_stress stress = ts_line_stress_of(s, here.M_b, fabs(here.T), N, c->workings);
        note_parts(c, (ts_subject){notch->node, (int32_t)i});
        (void)ts_din_rate(s, &notch->ability, &stress, c->workings);
    }
    ts_workings_about(c->workings, notch->node, TS_EVERY_CONDITION);
    note_swing(c, notch);
}

void ts_line_note_notch(const ts_lines_case *c, uint32_t number, int notch)
{
    ts_metal           metal;
    const ts_din_steel steel = core_steel(&metal);

    note_notch(c, number, notch, &steel, &metal);
}

/* The least of all notches and conditions is that of the line. */
static void note_line(const ts_lines_case *c, const ts_line *line)
{
    const ts_line_notch *D = &line->notches[line->weakest_D], *F = &line->notches[line->weakest_F];

    ts_workings_about(c->workings, line->node, TS_EVERY_CONDITION);
    ts_workings_borrow(c->workings, "S_D", D->S_D, (ts_subject){D->node, D->at_D}, "S_D");
    ts_workings_borrow(c->workings, "S_F", F->S_F, (ts_subject){F->node, F->at_F}, "S_F");
}

/* ---- the line -------------------------------------------------------------------------------- */

static int weakest(const ts_line *line, bool fatigue)
{
    int    found = -1;
    double least = INFINITY;

    for (int i = 0; i < line->notch_count; i++) {
        const double S = fatigue ? line->notches[i].S_D : line->notches[i].S_F;
        if (isnan(S)) /* not known, so the least is not */
            return i;
        if (S < least || found < 0) {
            least = S;
            found = i;
        }
    }
    return found;
}

void ts_line_hold(const ts_lines_case *c, uint32_t number)
{
    ts_line           *line = &c->lines->lines[number];
    ts_metal           metal;
    const ts_din_steel steel = core_steel(&metal);

    line->notch_count = 0;
    for (int i = 1; i < line->section_count; i++)
        add_shoulder(c, line, i);
    add_splines(c, number);
    for (int i = 0; i < line->notch_count; i++) {
        if (prepare(line, i, &steel))
            rate(c, number, &line->notches[i]);
        else
            line->notches[i].S_D = line->notches[i].S_F = (double)NAN;
    }
    line->weakest_D = weakest(line, true);
    line->weakest_F = weakest(line, false);
    line->n_G = line->S_K = (double)NAN;
    if (line->weakest_D < 0)
        return;
    line->n_G = by_goodman(&line->notches[line->weakest_D], &steel, NULL);
    if (c->workings != NULL) {
        note_notch(c, number, line->weakest_D, &steel, &metal);
        if (line->weakest_F != line->weakest_D)
            note_notch(c, number, line->weakest_F, &steel, &metal);
        note_line(c, line);
    }
}
