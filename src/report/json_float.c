/* How is the float of the take-offs written as JSON? */
#include "report/answer_json.h"

#include <math.h>

static void length(ts_json *json, const char *key, double si)
{
    if (key != NULL)
        ts_json_key(json, key);
    if (isfinite(si))
        ts_json_number(json, ts_json_shown(json, si, ts_unit_named(TS_TEXT("mm"), TS_KIND_LENGTH)));
    else
        ts_json_null(json);
}

static void lengths(ts_json *json, const char *key, const double si[2])
{
    ts_json_key(json, key);
    ts_json_array(json);
    length(json, NULL, si[0]);
    length(json, NULL, si[1]);
    ts_json_end(json, ']');
}

static void quantity(ts_json *json, const ts_answer *answer, const char *key, double si,
                     ts_kind kind, const ts_json_place *place)
{
    ts_json_key(json, key);
    ts_json_quantity(json, answer, si, kind, *place);
}

static void option(ts_json *json, const ts_answer *answer, const ts_float_option *o, int scheme)
{
    const bool          rides = scheme == TS_FLOAT_FIXED_BEVEL, spur = scheme == TS_FLOAT_WIDE_SPUR;
    const ts_json_place play[2] = {{o->node, TS_EVERY_CONDITION, "j_least"},
                                   {o->node, TS_EVERY_CONDITION, "j_most"}};
    const ts_json_place eps     = {o->node, TS_EVERY_CONDITION, "eps_least"};
    const ts_json_place push    = {o->node, TS_EVERY_CONDITION, rides ? "F_a" : "F_thrust"};
    const ts_json_place across  = {o->node, TS_EVERY_CONDITION, spur ? "F_across" : "F_r"};
    const ts_json_place more    = {o->node, TS_EVERY_CONDITION, "m_more"};

    ts_json_object(json);
    ts_json_key(json, "scheme");
    ts_json_string(json, ts_float_scheme_name((ts_float_scheme)scheme));
    ts_json_key(json, "chosen");
    ts_json_bool(json, o->chosen);
    ts_json_key(json, "made_up");
    ts_json_bool(json, o->made);
    quantity(json, answer, "backlash_least", o->j[0], TS_KIND_LENGTH, &play[0]);
    quantity(json, answer, "backlash_most", o->j[1], TS_KIND_LENGTH, &play[1]);
    lengths(json, "backlash_change", o->dj);
    lengths(json, "contact_shift", o->shift);
    length(json, "common_face", o->b_left);
    quantity(json, answer, "contact_ratio", o->eps, TS_KIND_NUMBER, &eps);
    length(json, "slide_left", o->left);
    length(json, "engaged", o->engaged);
    quantity(json, answer, "push", o->F_a, TS_KIND_FORCE, &push);
    quantity(json, answer, "across", o->F_r, TS_KIND_FORCE, &across);
    quantity(json, answer, "more_mass", o->m, TS_KIND_MASS, &more);
    ts_json_key(json, "more_parts");
    ts_json_integer(json, o->parts);
    ts_json_key(json, "more_meshes");
    ts_json_integer(json, o->meshes);
    length(json, "radial_borne", o->r_stop);
    lengths(json, "works", o->stop);
    ts_json_key(json, "stops_forward");
    ts_json_string(json, ts_float_cause_says(o->cause[0]));
    ts_json_key(json, "stops_rearward");
    ts_json_string(json, ts_float_cause_says(o->cause[1]));
    lengths(json, "interrupted", o->apart);
    ts_json_end(json, '}');
}

void ts_json_float(ts_json *json, const ts_answer *answer)
{
    ts_json_key(json, "float");
    ts_json_array(json);
    for (uint32_t d = 0; answer->floats != NULL && d < answer->floats->count; d++) {
        const ts_drive_float *item = &answer->floats->items[d];
        const ts_spool_drive *of   = &answer->drive->drive[item->drive];

        ts_json_object(json);
        ts_json_key(json, "spool");
        ts_json_string(json, answer->drive->spools[of->spool].name);
        ts_json_node(json, answer, "at", of->take_off.node);
        ts_json_key(json, "unit");
        ts_json_string(json, "mm");
        if (item->missing != NULL) {
            ts_json_key(json, "missing");
            ts_json_string(json, item->missing);
        } else {
            lengths(json, "axial_travel", item->s);
            length(json, "radial_travel", item->r);
            ts_json_key(json, "schemes");
            ts_json_array(json);
            for (int i = 0; i < TS_FLOAT_SCHEMES; i++)
                option(json, answer, &item->options[i], i);
            ts_json_end(json, ']');
        }
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}
