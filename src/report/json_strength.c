/* How is the strength of teeth written as JSON? */
#include "report/answer_json.h"

#include "rating/iso6336/edition.h"

#include <math.h>

static const char *const flanks[] = {"none", "leading", "trailing"};

typedef struct part {
    const char *symbol;
    ts_kind     kind;
    double      value;
} part;

static void parts_of(ts_json *json, const ts_answer *answer, ts_subject about, const part *parts,
                     size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (isinf(parts[i].value) || isnan(parts[i].value))
            continue;
        ts_json_key(json, parts[i].symbol);
        ts_json_quantity(json, answer, parts[i].value, parts[i].kind,
                         (ts_json_place){about.object, about.condition, parts[i].symbol});
    }
}

static void remarks(ts_json *json, ts_remarks remarks)
{
    ts_json_key(json, "remarks");
    ts_json_array(json);
    for (int kind = 0; kind < TS_REMARK_COUNT; kind++)
        if (ts_remarks_have(remarks, (ts_remark_kind)kind))
            ts_json_string(json, ts_remark_text_of((ts_remark_kind)kind)->name);
    ts_json_end(json, ']');
}

static void bevel_remarks(ts_json *json, ts_bevel_remarks remarks)
{
    ts_json_key(json, "remarks");
    ts_json_array(json);
    for (int kind = 0; kind < (int)TS_BEVEL_REMARK_COUNT; kind++)
        if (ts_bevel_remarks_have(remarks, (ts_bevel_remark_kind)kind))
            ts_json_string(json, ts_bevel_remark_text_of((ts_bevel_remark_kind)kind)->name);
    ts_json_end(json, ']');
}

/* ---- bevels ---------------------------------------------------------------------------------- */

/* NULL: a cylindrical mesh. */
static const ts_bevels_mesh *bevels_of(const ts_answer *answer, uint32_t m)
{
    const ts_bevels *bevels = &answer->teeth->bevels;
    return bevels->number[m] == TS_NOWHERE ? NULL : &bevels->meshes[bevels->number[m]];
}

static const ts_bevels_case *bevels_case(const ts_answer *answer, uint32_t m, int32_t c)
{
    const ts_bevels *bevels = &answer->teeth->bevels;
    return &bevels->cases[(size_t)c * bevels->count + bevels->number[m]];
}

/* Of ANSI/AGMA 2003, where the file has its geometry factors. */
static void second_opinion(ts_json *json, const ts_answer *answer, uint32_t m, int32_t c)
{
    const ts_bevels_mesh *mesh = bevels_of(answer, m);
    if (mesh == NULL || !mesh->second_asked)
        return;
    const ts_agma2003_rating *r       = &bevels_case(answer, m, c)->second;
    const ts_subject          about   = {mesh->second_subject.object, c};
    const part                parts[] = {
                       {"K_v", TS_KIND_NUMBER, r->K_v},
                       {"sigma_H", TS_KIND_STRESS, r->sigma_H},
                       {"sigma_F1", TS_KIND_STRESS, r->gear[0].sigma_F},
                       {"sigma_F2", TS_KIND_STRESS, r->gear[1].sigma_F},
                       {"S_H1", TS_KIND_NUMBER, r->gear[0].S_H},
                       {"S_H2", TS_KIND_NUMBER, r->gear[1].S_H},
                       {"S_F1", TS_KIND_NUMBER, r->gear[0].S_F},
                       {"S_F2", TS_KIND_NUMBER, r->gear[1].S_F},
    };
    ts_json_key(json, "second_opinion");
    ts_json_object(json);
    ts_json_string_at(json, "method", "ANSI/AGMA 2003-C10");
    if (mesh->second_missing != NULL) {
        ts_json_string_at(json, "because", mesh->second_missing);
    } else {
        parts_of(json, answer, about, parts, sizeof parts / sizeof parts[0]);
        if (r->missing != NULL)
            ts_json_string_at(json, "because", r->missing);
    }
    ts_json_end(json, '}');
}

/* ---- one condition --------------------------------------------------------------------------- */

static void condition(ts_json *json, const ts_answer *answer, uint32_t m, const ts_mesh_case *one,
                      int32_t c)
{
    const ts_iso6336_rating      *r       = &one->rating;
    const ts_iso6336_gear_rating *g       = r->gear;
    const ts_subject              about   = {answer->teeth->strength[m].subject, c};
    const bool                    bevel   = bevels_of(answer, m) != NULL;
    const bool                    bent    = !bevel && one->load.face == TS_FACE_LOAD_PARTS;
    const part                    parts[] = {
                           {"N", TS_KIND_NUMBER, r->N},
                           {"K_v", TS_KIND_NUMBER, r->K_v},
                           {"f_sh", TS_KIND_LENGTH, bent ? one->load.f_sh : (double)NAN},
                           {"F_betax", TS_KIND_LENGTH, bevel ? (double)NAN : r->F_betax},
                           {"K_Hbeta", TS_KIND_NUMBER, bevel ? (double)NAN : r->K_Hbeta},
                           {"sigma_H1", TS_KIND_STRESS, g[0].sigma_H},
                           {"sigma_H2", TS_KIND_STRESS, g[1].sigma_H},
                           {"sigma_F1", TS_KIND_STRESS, g[0].sigma_F},
                           {"sigma_F2", TS_KIND_STRESS, g[1].sigma_F},
                           {"S_H1", TS_KIND_NUMBER, g[0].S_H},
                           {"S_H2", TS_KIND_NUMBER, g[1].S_H},
                           {"S_F1", TS_KIND_NUMBER, g[0].S_F},
                           {"S_F2", TS_KIND_NUMBER, g[1].S_F},
    };
    ts_json_key(json, ts_answer_condition(answer, c));
    ts_json_object(json);
    if (one->missing != NULL || one->fault != NULL) {
        ts_json_string_at(json, "because", one->missing != NULL ? one->missing : one->fault);
    } else {
        parts_of(json, answer, about, parts, sizeof parts / sizeof parts[0]);
        if (!bevel) {
            remarks(json, r->remarks);
        } else {
            bevel_remarks(json, bevels_case(answer, m, c)->rating.remarks);
            second_opinion(json, answer, m, c);
        }
    }
    ts_json_end(json, '}');
}

static void conditions(ts_json *json, const ts_answer *answer, uint32_t m)
{
    ts_json_key(json, "conditions");
    ts_json_object(json);
    for (size_t c = 0; c < answer->drive->condition_count; c++) {
        const ts_mesh_case *one = &answer->teeth->cases[c * answer->train->mesh_count + m];
        if (one->loaded)
            condition(json, answer, m, one, (int32_t)c);
    }
    ts_json_end(json, '}');
}

/* ---- the life -------------------------------------------------------------------------------- */

static void set_by(ts_json *json, const ts_answer *answer, uint32_t m)
{
    const ts_mesh_strength *strength = &answer->teeth->strength[m];
    const ts_flank_life    *life     = &strength->life;
    ts_json_key(json, "set_by");
    ts_json_object(json);
    ts_json_string_at(json, "condition", ts_answer_condition(answer, life->condition));
    ts_json_string_at(json, "stress", ts_rated_stress_says(strength->stress));
    ts_json_string_at(json, "gear", ts_mesh_side_says(answer->train, m, strength->gear));
    ts_json_string_at(json, "flank", flanks[strength->flank]);
    ts_json_number_at(json, "share", life->share);
    ts_json_end(json, '}');
}

/* A gear between two meshes has one safety in both of them: those that another mesh wears more, as
 * the page marks them by a star, with the mesh that does. */
static void worn_elsewhere(ts_json *json, const ts_answer *answer, uint32_t m, const part parts[4])
{
    const ts_mesh_strength *s = &answer->teeth->strength[m];
    const uint32_t by[4]      = {s->worn_by[0][TS_RATED_CONTACT], s->worn_by[1][TS_RATED_CONTACT],
                                 s->worn_by[0][TS_RATED_BENDING], s->worn_by[1][TS_RATED_BENDING]};
    bool           any        = false;

    for (int i = 0; i < 4; i++) {
        if (!isfinite(parts[i].value) || by[i] == m)
            continue;
        if (!any) {
            ts_json_key(json, "worn_elsewhere");
            ts_json_object(json);
        }
        any = true;
        ts_json_node(json, answer, parts[i].symbol, answer->train->meshes[by[i]].node);
    }
    if (any)
        ts_json_end(json, '}');
}

void ts_json_strength(ts_json *json, const ts_answer *answer, uint32_t m)
{
    if (answer->teeth == NULL)
        return;
    const ts_mesh_strength *strength = &answer->teeth->strength[m];
    const ts_bevels_mesh   *bevels   = bevels_of(answer, m);
    const ts_iso6336_year   year =
        answer->drive->method.teeth.value == TS_TEETH_ISO_2006 ? TS_ISO6336_2006 : TS_ISO6336_2019;
    const part parts[] = {
        {"S_H1", TS_KIND_NUMBER, strength->S_H[0]},
        {"S_H2", TS_KIND_NUMBER, strength->S_H[1]},
        {"S_F1", TS_KIND_NUMBER, strength->S_F[0]},
        {"S_F2", TS_KIND_NUMBER, strength->S_F[1]},
    };
    ts_json_key(json, "strength");
    ts_json_object(json);
    ts_json_string_at(json, "method",
                      bevels != NULL ? "ISO 10300:2014, method B1"
                                     : ts_iso6336_edition_of(year)->name);
    parts_of(json, answer, (ts_subject){answer->train->meshes[m].node, TS_EVERY_CONDITION}, parts,
             4);
    worn_elsewhere(json, answer, m, parts);
    ts_json_number_at(json, "margin", strength->reserve);
    ts_json_number_at(json, "lives", strength->times);
    if (isfinite(strength->reserve))
        set_by(json, answer, m);
    if (bevels != NULL)
        bevel_remarks(json, bevels->prepared.remarks);
    else
        remarks(json, answer->teeth->prepared[m].remarks);
    conditions(json, answer, m);
    if (answer->opinion != NULL)
        (bevels == NULL ? ts_json_opinion : ts_json_bevel_opinion)(json, answer, m);
    if (answer->rubbing != NULL)
        ts_json_rubbing(json, answer, m);
    ts_json_end(json, '}');
}
