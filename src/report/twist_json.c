/* How are torsional modes written as JSON, by docs/schema/twist.schema.json? */
#include "report/twist_report.h"

#include "report/json_quantity.h"
#include "report/swing_page.h"

#include <math.h>

/* Digits beyond these depend on the processor for which the linear algebra was built. */
#define DIGITS 9

static const double two_pi = 6.28318530717958647693;

static void rounded(ts_json *json, double value)
{
    if (!isfinite(value)) {
        ts_json_null(json);
        return;
    }
    if (fabs(value) < 1e-9)
        value = 0.0;
    const double ten = value == 0.0 ? 1.0 : pow(10.0, DIGITS - 1 - floor(log10(fabs(value))));
    ts_json_number(json, round(value * ten) / ten);
}

static void number(ts_json *json, const char *key, double value)
{
    ts_json_key(json, key);
    rounded(json, value);
}

static void list(ts_json *json, const char *key, const double *values, size_t length)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (size_t i = 0; i < length; i++)
        rounded(json, values[i]);
    ts_json_end(json, ']');
}

static void bodies(ts_json *json, const ts_answer *answer, const ts_drive_twist *twist)
{
    ts_json_key(json, "bodies");
    ts_json_array(json);
    for (size_t i = 0; i < twist->model.body_count; i++) {
        const ts_twist_part *part = &twist->parts[i];
        ts_json_object(json);
        ts_json_string_at(json, "name", part->name);
        ts_json_node(json, answer, "shaft", answer->train->shafts[part->shaft].node);
        number(json, "J", twist->model.bodies[i].J);
        number(json, "ratio", part->ratio);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void springs(ts_json *json, const ts_answer *answer, const ts_drive_twist *twist,
                    const ts_drive_forced *forced)
{
    static const char *const links[] = {
        [TS_LINK_SHAFT] = "shaft", [TS_LINK_MESH] = "mesh", [TS_LINK_PAD] = "pad"};
    ts_json_key(json, "springs");
    ts_json_array(json);
    for (size_t i = 0; i < twist->model.spring_count; i++) {
        const ts_twist_joint *joint = &twist->joints[i];
        ts_json_object(json);
        ts_json_string_at(json, "link", links[joint->link]);
        ts_json_count_at(json, "from", joint->from);
        ts_json_count_at(json, "to", joint->to);
        number(json, "k", joint->k_spool);
        ts_json_key(json, "assumed");
        ts_json_bool(json, joint->assumed);
        ts_swing_json(json, answer, forced, i);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void meeting(ts_json *json, const ts_answer *answer, const ts_drive_twist *twist,
                    size_t mode)
{
    const ts_twist_meeting met = ts_twist_meeting_of(twist, answer->power, mode);
    if (met.condition < 0)
        return;
    ts_json_key(json, "nearest");
    ts_json_object(json);
    ts_json_string_at(json, "condition", ts_answer_condition(answer, met.condition));
    if (met.shaft != TS_NOWHERE)
        ts_json_node(json, answer, "shaft", answer->train->shafts[met.shaft].node);
    else
        ts_json_node(json, answer, "mesh", answer->train->meshes[met.mesh].node);
    ts_json_key(json, "order");
    ts_json_integer(json, met.order);
    number(json, "off", met.off);
    ts_json_end(json, '}');
}

static void modes(ts_json *json, const ts_answer *answer, const ts_drive_twist *twist)
{
    const size_t n = twist->model.body_count, m = twist->model.spring_count;
    ts_json_key(json, "modes");
    ts_json_array(json);
    for (size_t i = 0; i < twist->modes.count; i++) {
        ts_json_object(json);
        number(json, "frequency", twist->modes.omega[i] / two_pi);
        list(json, "shape", &twist->modes.shape[i * n], n);
        list(json, "kinetic", &twist->modes.kinetic[i * n], n);
        list(json, "strain", &twist->modes.strain[i * m], m);
        if (i >= twist->modes.rigid)
            meeting(json, answer, twist, i);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void tree(ts_json *json, const ts_answer *answer, const ts_drive_twist *twist,
                 const ts_drive_forced *forced)
{
    ts_json_object(json);
    ts_json_string_at(json, "spool",
                      answer->drive->spools[answer->drive->drive[twist->drive].spool].name);
    ts_json_string_at(json, "state", twist->cranked ? "cranked" : "running");
    if (twist->missing != NULL) {
        ts_json_string_at(json, "because", twist->missing);
        ts_json_string_at(json, "of", twist->lacks);
    } else if (twist->fault != TS_TWIST_FINE) {
        ts_json_string_at(json, "because", ts_twist_fault_says(twist->fault));
    } else {
        ts_json_count_at(json, "left_out", twist->left_out);
        number(json, "residual", twist->modes.residual < 1e-9 ? 0.0 : twist->modes.residual);
        bodies(json, answer, twist);
        number(json, "mesh_damping", forced->mesh_damping);
        number(json, "shaft_damping", forced->shaft_damping);
        ts_json_count_at(json, "ripples_assumed", forced->ripples_assumed);
        springs(json, answer, twist, forced);
        modes(json, answer, twist);
    }
    ts_json_end(json, '}');
}

void ts_twist_json(const ts_twist_answer *twist, const ts_answer *answer, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_head(&json, answer);
    ts_json_key(&json, "trees");
    ts_json_array(&json);
    for (size_t i = 0; i < twist->count; i++)
        tree(&json, answer, &twist->items[i], &twist->forced[i]);
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
