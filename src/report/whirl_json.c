/* How are critical speeds written as JSON, by docs/schema/whirl.schema.json? */
#include "report/whirl_report.h"

#include "report/json_quantity.h"

#include <math.h>

enum { STEP = 10 }; /* every so many speeds of the course */

static void number(ts_json *json, const char *key, double value)
{
    ts_json_key(json, key);
    if (isfinite(value))
        ts_json_number(json, value);
    else
        ts_json_null(json);
}

static void list(ts_json *json, const char *key, const double *values, int count, int step)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (int i = 0; i < count; i += step)
        if (isfinite(values[i]))
            ts_json_number(json, values[i]);
        else
            ts_json_null(json);
    ts_json_end(json, ']');
}

static void modes(ts_json *json, const char *key, const ts_whirl_course *course,
                  const double *lines)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (int m = 0; m < TS_CAMPBELL_MODES; m++) {
        ts_json_array(json);
        for (int i = 0; i < course->speeds; i += STEP)
            ts_json_number(json, lines[m * course->speeds + i]);
        ts_json_end(json, ']');
    }
    ts_json_end(json, ']');
}

static void bearings(ts_json *json, const ts_whirl_item *item)
{
    ts_json_key(json, "bearings");
    ts_json_array(json);
    for (int k = 0; k < item->rotor.bearing_count; k++) {
        ts_json_object(json);
        ts_json_string_at(json, "place", item->bearing_names[k]);
        number(json, "x", item->bearings[k].x);
        number(json, "stiffness", item->bearings[k].k_r);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void unbalance(ts_json *json, const ts_whirl_course *course)
{
    ts_json_key(json, "unbalance");
    ts_json_object(json);
    number(json, "U", course->U);
    number(json, "swing", course->top_swing);
    number(json, "at", course->top_x);
    number(json, "load", course->top_load);
    ts_json_string_at(json, "bearing", course->item->bearing_names[course->loaded]);
    list(json, "swings", course->swing, course->speeds, STEP);
    list(json, "loads", course->load, course->speeds, STEP);
    ts_json_end(json, '}');
}

static void map(ts_json *json, const ts_whirl_course *course)
{
    ts_json_key(json, "map");
    ts_json_object(json);
    list(json, "outside", course->outside, course->diameters, 1);
    ts_json_key(json, "longest");
    ts_json_array(json);
    for (int p = 0; p < TS_MAP_PLACES; p++) {
        ts_json_object(json);
        number(json, "mid_bearing", ts_map_places[p]);
        list(json, "length", &course->longest[p * course->diameters], course->diameters, 1);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

static void shaft(ts_json *json, const ts_answer *answer, const ts_whirl_item *item,
                  const ts_whirl_course *course)
{
    ts_json_object(json);
    ts_json_string_at(json, "name", item->name);
    ts_json_node(json, answer, "at", item->node);
    ts_json_string_at(json, "kind", item->radial ? "radial" : "shaft");
    if (item->missing != NULL || item->fault != NULL) {
        ts_json_string_at(json, "because", item->missing != NULL ? item->missing : item->fault);
    } else if (course->speeds > 0) {
        number(json, "highest", item->top);
        list(json, "forward", course->criticals[1], TS_CAMPBELL_MODES, 1);
        list(json, "backward", course->criticals[0], TS_CAMPBELL_MODES, 1);
        number(json, "ratio", item->forward / item->top);
        number(json, "length", item->length);
        bearings(json, item);
        list(json, "speeds", course->Omega, course->speeds, STEP);
        modes(json, "forward_whirl", course, course->forward);
        modes(json, "backward_whirl", course, course->backward);
        list(json, "x", course->x, course->nodes, 1);
        list(json, "shape", course->shapes, course->nodes, 1);
        unbalance(json, course);
        if (course->diameters > 0)
            map(json, course);
    }
    ts_json_end(json, '}');
}

void ts_whirl_json(const ts_whirl_answer *whirl, const ts_answer *answer, ts_buffer *out)
{
    const ts_drive *drive = whirl->whirls->drive;
    ts_json         json;

    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_head(&json, answer);
    number(&json, "margin", drive->limits.whirl_margin.value);
    number(&json, "grade", drive->whirl.grade.value);
    number(&json, "bearing_loss", drive->whirl.bearing_loss.value);
    number(&json, "spline_stiffness", drive->whirl.spline_stiffness.value);
    ts_json_key(&json, "shafts");
    ts_json_array(&json);
    for (uint32_t i = 0; i < whirl->whirls->count; i++)
        shaft(&json, answer, &whirl->whirls->items[i], &whirl->courses[i]);
    ts_json_end(&json, ']');
    ts_web_json(whirl->webs, answer, &json);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
