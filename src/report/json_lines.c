/* How are shafts on their bearings written as JSON? */
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

static void millimetres(ts_json *json, const char *key, double value)
{
    ts_json_key(json, key);
    if (isfinite(value))
        ts_json_number(json,
                       ts_json_shown(json, value, ts_unit_named(TS_TEXT("mm"), TS_KIND_LENGTH)));
    else
        ts_json_null(json);
}

static void sections(ts_json *json, const ts_line *line)
{
    ts_json_key(json, "sections");
    ts_json_array(json);
    for (int i = 0; i < line->section_count; i++) {
        const ts_beam_section *s = &line->sections[i];
        ts_json_object(json);
        millimetres(json, "length", s->x_2 - s->x_1);
        millimetres(json, "outside", s->d_o);
        millimetres(json, "bore", s->d_i);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void gear(ts_json *json, const ts_answer *answer, uint32_t l, int g)
{
    const ts_line_gear *seat = &answer->lines->lines[l].gears[g];
    ts_json_object(json);
    ts_json_node(json, answer, "address", seat->node);
    millimetres(json, "at", seat->x);
    ts_json_key(json, "conditions");
    ts_json_object(json);
    for (uint32_t c = 0; c < answer->drive->condition_count; c++) {
        const ts_line_gear_state *s       = &ts_line_at(answer->lines, l, c)->state[g];
        const part                parts[] = {
                           {"v", TS_KIND_LENGTH, hypot(s->v[0], s->v[1])},
                           {"slope", TS_KIND_ANGLE, hypot(s->theta[0], s->theta[1])},
        };
        ts_json_key(json, ts_answer_condition(answer, (int32_t)c));
        ts_json_object(json);
        parts_of(json, answer, (ts_subject){seat->node, (int32_t)c}, parts, 2);
        ts_json_end(json, '}');
    }
    ts_json_end(json, '}');
    ts_json_end(json, '}');
}

static void duties(ts_json *json, const ts_answer *answer, uint32_t l, int k)
{
    const ts_line_bearing *b = &answer->lines->lines[l].bearings[k];
    ts_json_key(json, "conditions");
    ts_json_object(json);
    for (uint32_t c = 0; c < answer->drive->condition_count; c++) {
        const ts_line_case   *one     = ts_line_at(answer->lines, l, c);
        const ts_duty_rating *duty    = &one->duty[k];
        const part            parts[] = {
                       {"F_r", TS_KIND_FORCE, one->reaction[k].F_r},
                       {"F_a", TS_KIND_FORCE, fabs(one->reaction[k].F[0])},
                       {"P", TS_KIND_FORCE, duty->P},
                       {"S_0", TS_KIND_NUMBER, duty->S_0},
                       {"kappa", TS_KIND_NUMBER, duty->kappa},
                       {"L_nmh", TS_KIND_TIME, duty->L_nmh},
        };
        ts_json_key(json, ts_answer_condition(answer, (int32_t)c));
        ts_json_object(json);
        parts_of(json, answer, (ts_subject){b->node, (int32_t)c}, parts,
                 sizeof parts / sizeof parts[0]);
        ts_json_end(json, '}');
    }
    ts_json_end(json, '}');
}

static void bearing(ts_json *json, const ts_answer *answer, uint32_t l, int k)
{
    const ts_line         *line    = &answer->lines->lines[l];
    const ts_line_bearing *b       = &line->bearings[k];
    const part             parts[] = {
                    {"C_r", TS_KIND_FORCE, b->ability.C_r},   {"C_0r", TS_KIND_FORCE, b->ability.C_0r},
                    {"k_r", TS_KIND_STIFFNESS, b->k_r},       {"L_10h", TS_KIND_TIME, b->rating.L_10h},
                    {"L_nmh", TS_KIND_TIME, b->rating.L_nmh}, {"S_0", TS_KIND_NUMBER, b->rating.S_0},
    };
    ts_json_object(json);
    ts_json_string_at(json, "place", b->place);
    ts_json_node(json, answer, "address", b->node);
    if (!b->there || b->fault != NULL || line->missing != NULL || line->fault != NULL) {
        ts_json_string_at(json, "because",
                          !b->there             ? "the file says that there is none"
                          : b->fault != NULL    ? b->fault
                          : line->fault != NULL ? line->fault
                                                : line->missing);
        ts_json_end(json, '}');
        return;
    }
    ts_json_string_at(json, "form", ts_bearing_form_name(b->bearing.form));
    ts_json_key(json, "rows");
    ts_json_integer(json, b->bearing.rows);
    if (b->series != NULL)
        ts_json_string_at(json, "series", b->series);
    millimetres(json, "bore", b->bearing.d);
    millimetres(json, "outside", b->bearing.D);
    millimetres(json, "width", b->width);
    millimetres(json, "at", b->x);
    ts_json_bool_at(json, "chosen", !b->given);
    ts_json_bool_at(json, "locates", b->locates);
    parts_of(json, answer, (ts_subject){b->node, TS_EVERY_CONDITION}, parts,
             sizeof parts / sizeof parts[0]);
    duties(json, answer, l, k);
    ts_json_end(json, '}');
}

/* Of another number than S_D: its own section. */
static void place_of(ts_json *json, const ts_answer *answer, const char *key,
                     const ts_line_notch *notch)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_node(json, answer, "weakest", notch->node);
    ts_json_string_at(json, "notch", ts_din_notch_name(notch->section.notch));
    millimetres(json, "at", notch->x);
    ts_json_end(json, '}');
}

/* What the outline holds at its weakest places. */
static void strength(ts_json *json, const ts_answer *answer, const ts_line *line)
{
    if (line->fault != NULL || line->missing != NULL || line->weakest_D < 0)
        return;
    const ts_line_notch *weak    = &line->notches[line->weakest_D];
    const part           parts[] = {
                  {"S_D", TS_KIND_NUMBER, weak->S_D},
                  {"S_K", TS_KIND_NUMBER, line->S_K},
                  {"S_F", TS_KIND_NUMBER, line->notches[line->weakest_F].S_F},
    };
    ts_json_key(json, "strength");
    ts_json_object(json);
    ts_json_string_at(json, "method", "DIN 743:2012");
    parts_of(json, answer, (ts_subject){line->node, TS_EVERY_CONDITION}, parts, 3);
    ts_json_number_at(json, "goodman", line->n_G);
    ts_json_node(json, answer, "weakest", weak->node);
    ts_json_string_at(json, "notch", ts_din_notch_name(weak->section.notch));
    millimetres(json, "at", weak->x);
    ts_json_string_at(json, "condition",
                      weak->at_D < 0 ? "all together" : ts_answer_condition(answer, weak->at_D));
    place_of(json, answer, "weakest_S_K", &line->notches[line->weakest_K]);
    place_of(json, answer, "weakest_S_F", &line->notches[line->weakest_F]);
    ts_json_end(json, '}');
}

static void one_line(ts_json *json, const ts_answer *answer, uint32_t l)
{
    const ts_line *line = &answer->lines->lines[l];
    ts_json_object(json);
    ts_json_string_at(json, "name", line->name);
    ts_json_node(json, answer, "address", line->node);
    ts_json_node(json, answer, "of", line->subject);
    ts_json_string_at(json, "kind", ts_line_kind_name(line->kind));
    if (line->fault != NULL || line->missing != NULL)
        ts_json_string_at(json, "because", line->fault != NULL ? line->fault : line->missing);
    sections(json, line);
    strength(json, answer, line);
    ts_json_key(json, "gears");
    ts_json_array(json);
    for (int g = 0; g < line->gear_count && line->fault == NULL && line->missing == NULL; g++)
        gear(json, answer, l, g);
    ts_json_end(json, ']');
    ts_json_key(json, "bearings");
    ts_json_array(json);
    for (int k = 0; k < line->bearing_count; k++)
        bearing(json, answer, l, k);
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

static void hours(ts_json *json, const char *key, double seconds)
{
    ts_json_key(json, key);
    if (isfinite(seconds))
        ts_json_number(json, seconds / 3600.0);
    else
        ts_json_null(json);
}

void ts_json_lines(ts_json *json, const ts_answer *answer)
{
    if (answer->lines == NULL)
        return;
    ts_json_key(json, "lines");
    ts_json_array(json);
    for (uint32_t l = 0; l < answer->lines->count; l++)
        one_line(json, answer, l);
    ts_json_end(json, ']');
    ts_json_key(json, "bearing_set");
    ts_json_object(json);
    hours(json, "life_of_drive", answer->lines->life);
    hours(json, "life_of_all", answer->lines->set_life);
    ts_json_string_at(json, "unit", "h");
    ts_json_end(json, '}');
}
