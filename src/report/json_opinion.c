/* How is the second opinion on teeth written as JSON? */
#include "report/answer_json.h"

#include <math.h>

typedef struct part {
    const char *symbol;
    ts_kind     kind;
    double      value;
} part;

static void parts_of(ts_json *json, const ts_answer *answer, ts_subject about, const part *parts,
                     size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (!isfinite(parts[i].value))
            continue;
        ts_json_key(json, parts[i].symbol);
        ts_json_quantity(json, answer, parts[i].value, parts[i].kind,
                         (ts_json_place){about.object, about.condition, parts[i].symbol});
    }
}

static void remarks(ts_json *json, uint32_t remarks)
{
    ts_json_key(json, "remarks");
    ts_json_array(json);
    for (int i = 0; i < (int)TS_AGMA_REMARK_COUNT; i++)
        if ((remarks & TS_AGMA_REMARKED(i)) != 0)
            ts_json_string(json, ts_agma_remark_says((ts_agma_remark)i));
    ts_json_end(json, ']');
}

static void set_by(ts_json *json, const ts_answer *answer, uint32_t m)
{
    const ts_mesh_opinion *opinion = &answer->opinion->mesh[m];
    ts_json_key(json, "set_by");
    ts_json_object(json);
    ts_json_string_at(json, "condition", ts_answer_condition(answer, opinion->condition));
    ts_json_string_at(json, "stress", ts_rated_stress_says(opinion->stress));
    ts_json_string_at(json, "gear", ts_mesh_side_says(answer->train, m, opinion->gear));
    ts_json_end(json, '}');
}

static void number_about(ts_json *json, const ts_answer *answer, double value, ts_subject about,
                         const char *symbol)
{
    const part one = {symbol, TS_KIND_NUMBER, value};
    parts_of(json, answer, about, &one, 1);
}

/* Very accurate gears have one K_v at every speed. */
static void condition(ts_json *json, const ts_answer *answer, uint32_t m, uint32_t c)
{
    const size_t              at    = (size_t)c * answer->train->mesh_count + m;
    const ts_agma2101_rating *r     = &answer->opinion->cases[at];
    const ts_subject          about = {answer->opinion->mesh[m].subject, (int32_t)c};
    const ts_subject          every = {about.object, TS_EVERY_CONDITION};
    const bool                level = !isnan(answer->opinion->prepared[m].dynamic.K_v);
    const part                all[] = {
                       {"sigma_H1", TS_KIND_STRESS, r->gear[0].sigma_H},
                       {"sigma_H2", TS_KIND_STRESS, r->gear[1].sigma_H},
                       {"sigma_F1", TS_KIND_STRESS, r->gear[0].sigma_F},
                       {"sigma_F2", TS_KIND_STRESS, r->gear[1].sigma_F},
                       {"S_H1", TS_KIND_NUMBER, r->gear[0].S_H},
                       {"S_H2", TS_KIND_NUMBER, r->gear[1].S_H},
                       {"S_F1", TS_KIND_NUMBER, r->gear[0].S_F},
                       {"S_F2", TS_KIND_NUMBER, r->gear[1].S_F},
    };
    ts_json_key(json, ts_answer_condition(answer, (int32_t)c));
    ts_json_object(json);
    number_about(json, answer, r->K_v, level ? every : about, "K_v");
    number_about(json, answer, r->K_H, every, "K_H");
    parts_of(json, answer, about, all, sizeof all / sizeof all[0]);
    remarks(json, r->remarks);
    ts_json_end(json, '}');
}

/* Both standards where the first sees the least safety. */
static void gap(ts_json *json, const ts_answer *answer, ts_rated_stress stress,
                const ts_opinion_gap *gap)
{
    static const char *const names[TS_FACTORS] = {[TS_FACTOR_DYNAMIC]   = "dynamic",
                                                  [TS_FACTOR_FACE]      = "face",
                                                  [TS_FACTOR_SHARE]     = "share",
                                                  [TS_FACTOR_GEOMETRY]  = "geometry",
                                                  [TS_FACTOR_STRENGTH]  = "strength",
                                                  [TS_FACTOR_LIFE]      = "life",
                                                  [TS_FACTOR_HARDENING] = "hardening",
                                                  [TS_FACTOR_SURFACE]   = "surface",
                                                  [TS_FACTOR_RIM]       = "rim"};
    if (gap->condition < 0)
        return;
    ts_json_key(json, stress == TS_RATED_CONTACT ? "contact_over_iso" : "bending_over_iso");
    ts_json_object(json);
    ts_json_string_at(json, "condition", ts_answer_condition(answer, gap->condition));
    ts_json_key(json, "gear");
    ts_json_number(json, gap->gear + 1);
    ts_json_number_at(json, "ratio", gap->ratio);
    ts_json_key(json, "factors");
    ts_json_object(json);
    for (int f = 0; f < TS_FACTORS; f++)
        if (f != TS_FACTOR_RIM || stress == TS_RATED_BENDING)
            ts_json_number_at(json, names[f], gap->factor[f]);
    ts_json_end(json, '}');
    ts_json_end(json, '}');
}

void ts_json_bevel_opinion(ts_json *json, const ts_answer *answer, uint32_t m)
{
    const ts_mesh_opinion *opinion = &answer->opinion->mesh[m];
    if (opinion->contact.condition < 0 && opinion->bending.condition < 0)
        return;
    ts_json_key(json, "second_opinion");
    ts_json_object(json);
    ts_json_string_at(json, "method", "ANSI/AGMA 2003-C10");
    gap(json, answer, TS_RATED_CONTACT, &opinion->contact);
    gap(json, answer, TS_RATED_BENDING, &opinion->bending);
    ts_json_end(json, '}');
}

void ts_json_opinion(ts_json *json, const ts_answer *answer, uint32_t m)
{
    const ts_mesh_opinion *opinion = &answer->opinion->mesh[m];
    const part             least[] = {
                    {"S_H1", TS_KIND_NUMBER, opinion->S_H[0].S},
                    {"S_H2", TS_KIND_NUMBER, opinion->S_H[1].S},
                    {"S_F1", TS_KIND_NUMBER, opinion->S_F[0].S},
                    {"S_F2", TS_KIND_NUMBER, opinion->S_F[1].S},
    };
    ts_json_key(json, "second_opinion");
    ts_json_object(json);
    ts_json_string_at(json, "method", "ANSI/AGMA 2101-D04");
    if (opinion->missing != NULL)
        ts_json_string_at(json, "because", opinion->missing);
    parts_of(json, answer, (ts_subject){opinion->subject, TS_EVERY_CONDITION}, least, 4);
    ts_json_number_at(json, "margin", opinion->reserve);
    if (isfinite(opinion->reserve))
        set_by(json, answer, m);
    gap(json, answer, TS_RATED_CONTACT, &opinion->contact);
    gap(json, answer, TS_RATED_BENDING, &opinion->bending);
    ts_json_key(json, "conditions");
    ts_json_object(json);
    for (uint32_t c = 0; c < answer->drive->condition_count; c++)
        if (ts_opinion_stands(answer->opinion, m, c))
            condition(json, answer, m, c);
    ts_json_end(json, '}');
    ts_json_end(json, '}');
}
