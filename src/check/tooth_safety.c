/* check/tooth_safety.c: do the teeth of every mesh keep one of their two safeties? */
#include "check/tooth_safety.h"

#include "check/nearest_bevel.h"
#include "check/visit.h"

#define RESERVE(S, S_min)                                                                          \
    {                                                                                              \
        .symbol = "reserve_" S, .meaning = "reserve of the safety", .unit = "1",                   \
        .text = S "/" S_min " - 1", .source = "reserve = capacity / demand - 1"                    \
    }
static const ts_formula reserves[2][2] = {
    {RESERVE("S_H1", "S_Hmin"), RESERVE("S_H2", "S_Hmin")},
    {RESERVE("S_F1", "S_Fmin"), RESERVE("S_F2", "S_Fmin")},
};
static const char *const symbols[2][2] = {{"S_H1", "S_H2"}, {"S_F1", "S_F2"}};
static const char *const limits[2]     = {"S_Hmin", "S_Fmin"};

static const ts_mesh_case *case_of(const ts_check *check, uint32_t mesh, uint32_t condition)
{
    return &check->teeth->cases[(size_t)condition * check->train->mesh_count + mesh];
}

static double safety_of(const ts_mesh_case *one, ts_rated_stress stress, int gear)
{
    return stress == TS_RATED_CONTACT ? one->rating.gear[gear].S_H : one->rating.gear[gear].S_F;
}

bool ts_mesh_bears_each_condition(const ts_check *check, uint32_t mesh)
{
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_mesh_case *one = case_of(check, mesh, c);

        if (!one->loaded || one->missing != NULL || one->fault != NULL)
            continue;
        if (!(ts_iso6336_reserve(&one->rating, &one->load, NULL, NULL) >= 0.0))
            return false;
    }
    return true;
}

bool ts_mesh_is_rated(const ts_check *check, uint32_t mesh)
{
    bool loaded = false;

    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_mesh_case *one = case_of(check, mesh, c);

        if (one->loaded && (one->missing != NULL || one->fault != NULL))
            return false;
        loaded = loaded || one->loaded;
    }
    return loaded;
}

static bool is_loaded(const ts_check *check, uint32_t mesh)
{
    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        if (case_of(check, mesh, c)->loaded)
            return true;
    return false;
}

/* A rim of half a tooth height is the end of the standard; what else cannot be rated is said by the
 * rules of geometry, with its limit. */
static const char *remedy_of(ts_check *check, uint32_t m)
{
    const ts_mesh             *mesh = &check->train->meshes[m];
    const ts_cylindrical_pair *pair = &check->motion->meshes[m].pair;

    for (int g = 0; g < 2 && mesh->kind == TS_MESH_CYLINDRICAL; g++) {
        const uint32_t    gear  = g == 0 ? mesh->driver : mesh->driven;
        const double      d_a   = g == 0 ? pair->d_a1 : pair->d_a2;
        const double      least = (d_a - (g == 0 ? pair->d_f1 : pair->d_f2)) / 4.0;
        const ts_measure *rim   = &check->train->gears[gear].rim;

        if (ts_measure_known(*rim) && !(rim->value > least))
            return ts_phrase(check, "make the rim of %s thicker than %s where it is %s",
                             ts_gear_name(check, gear),
                             ts_shown_outward(check, least, TS_KIND_LENGTH, +1),
                             ts_shown_apart(check, rim->value, least, TS_KIND_LENGTH));
    }
    const char *remedy = mesh->kind == TS_MESH_BEVEL && check->motion->meshes[m].teeth_fault != NULL
                             ? ts_bevel_remedy(check, m, TS_BEVEL_FLAW_UNSOLVED)
                             : NULL;
    return remedy != NULL ? remedy : "change what the standard does not cover";
}

static void say_missing(ts_check *check, uint32_t mesh, int32_t condition, const char *missing,
                        const char *fault)
{
    const char *name = ts_mesh_name(check, mesh);
    ts_finding *finding =
        ts_not_computable(check, check->train->meshes[mesh].node, condition, "%s of %s",
                          missing != NULL ? missing : "a rating", name);
    if (finding == NULL || missing != NULL)
        return;
    ts_says(check, finding, "%s cannot be rated: %s", name, fault);
    ts_remedy(check, finding, "%s", remedy_of(check, mesh));
}

/* How long the drive stays in a condition is asked once, and not of every mesh. */
static void ask_for_times(ts_check *check)
{
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        bool loaded = false;

        for (uint32_t m = 0; m < check->train->mesh_count; m++)
            loaded = loaded || case_of(check, m, c)->loaded;
        if (!loaded || !isnan(ts_condition_seconds(&check->drive->conditions[c])))
            continue;
        ts_not_computable(check, check->drive->conditions[c].node, TS_EVERY_CONDITION,
                          "the time spent at %s (`hours` or `events`)",
                          ts_condition_name(check, (int32_t)c));
    }
}

const char *ts_flank_words(const ts_check *check, uint32_t mesh, int32_t condition)
{
    const ts_mesh_load *load = ts_load_of(check, mesh, (uint32_t)condition);

    return load->flow == TS_FLOW_INWARD ? ", other flank" : "";
}

/* Bevels cannot be widened for long: beyond a limit their inner ends carry nothing.  A module makes
 * the force smaller and the root thicker at once: contact goes with 1/m, bending with 1/m^2. */
static const char *larger_bevels(ts_check *check, uint32_t mesh, bool touch, double short_of,
                                 double wider)
{
    const ts_bevel_pair *pair = &check->motion->meshes[mesh].bevel;
    const double         more = touch ? short_of : sqrt(short_of);

    if (wider <= ts_bevel_face_most(pair))
        return ts_phrase(check, "make the face about %s where it is %s",
                         ts_shown_outward(check, wider, TS_KIND_LENGTH, 1),
                         ts_shown(check, pair->in.b, TS_KIND_LENGTH));
    return ts_phrase(check, "make the module about %s where it is %s",
                     ts_shown_outward(check, pair->in.m_et * more, TS_KIND_LENGTH, 1),
                     ts_shown(check, pair->in.m_et, TS_KIND_LENGTH));
}

/* Contact stress goes with 1/sqrt(b), bending with 1/b, as long as K_Hbeta stays: a first guess. */
const char *ts_wider_face(ts_check *check, uint32_t mesh, ts_rated_stress stress, double short_of)
{
    if (check->train->meshes[mesh].kind == TS_MESH_BEVEL) {
        const bool   touch = stress == TS_RATED_CONTACT;
        const double width = touch ? short_of * short_of : short_of;
        return larger_bevels(check, mesh, touch, short_of,
                             check->motion->meshes[mesh].bevel.in.b * width);
    }
    const double b    = check->teeth->prepared[mesh].b;
    const double more = stress == TS_RATED_CONTACT ? short_of * short_of : short_of;

    return ts_phrase(check, "make the common face about %s where it is %s",
                     ts_shown_outward(check, b * more, TS_KIND_LENGTH, 1),
                     ts_shown(check, b, TS_KIND_LENGTH));
}

static void judge(ts_check *check, uint32_t mesh, uint32_t c, ts_rated_stress stress)
{
    const ts_mesh_case *one   = case_of(check, mesh, c);
    const bool          touch = stress == TS_RATED_CONTACT;
    const double        least = touch ? check->teeth->S_Hmin : check->teeth->S_Fmin;

    if (isnan(ts_condition_seconds(&check->drive->conditions[c])))
        return;
    if (one->missing != NULL || one->fault != NULL) {
        say_missing(check, mesh, (int32_t)c, one->missing, one->fault);
        return;
    }
    const int   gear      = safety_of(one, stress, 1) < safety_of(one, stress, 0) ? 1 : 0;
    ts_question question  = ts_question_about(check, check->train->meshes[mesh].node, (int32_t)c);
    question.value        = safety_of(one, stress, gear);
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = symbols[touch ? 0 : 1][gear];
    question.limit_symbol = limits[touch ? 0 : 1];
    question.reserve      = &reserves[touch ? 0 : 1][gear];
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "at %s the safety of %s against %s is %s, less than %s; the %s sets it%s",
            ts_condition_name(check, (int32_t)c), ts_mesh_name(check, mesh),
            touch ? "pitting" : "breakage of a tooth",
            ts_shown_apart(check, question.value, least, TS_KIND_NUMBER),
            ts_shown(check, least, TS_KIND_NUMBER), ts_mesh_side_says(check->train, mesh, gear),
            ts_flank_words(check, mesh, (int32_t)c));
    ts_remedy(check, finding, "%s", ts_wider_face(check, mesh, stress, least / question.value));
}

static void judge_mesh(ts_check *check, uint32_t mesh, ts_rated_stress stress)
{
    const ts_mesh_strength *strength = &check->teeth->strength[mesh];

    if (strength->missing != NULL || strength->fault != NULL) {
        say_missing(check, mesh, TS_EVERY_CONDITION, strength->missing, strength->fault);
        return;
    }
    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        if (case_of(check, mesh, c)->loaded)
            judge(check, mesh, c, stress);
}

/* A mesh without a geometry is the business of C6-mesh-solvable. */
void ts_judge_tooth_safety(ts_check *check, ts_rated_stress stress)
{
    const bool        touch = stress == TS_RATED_CONTACT;
    const ts_measure *limit =
        touch ? &check->drive->limits.contact_safety : &check->drive->limits.bending_safety;

    if (check->teeth != NULL) {
        if (!ts_limit_known(check, limit, touch ? "contact safety" : "bending safety",
                            limits[touch ? 0 : 1], TS_KIND_NUMBER))
            return;
        ask_for_times(check);
        for (uint32_t m = 0; m < check->train->mesh_count; m++)
            if (check->motion->meshes[m].solved && is_loaded(check, m))
                judge_mesh(check, m, stress);
    }
    ts_skip(check, "no mesh is loaded");
}
