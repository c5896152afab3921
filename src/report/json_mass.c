/* How are masses, inertia and the loads of mounts written as JSON? */
#include "report/answer_json.h"

#include <math.h>

static void number_in(ts_json *json, const char *key, double si, ts_kind kind)
{
    ts_json_key(json, key);
    if (isfinite(si))
        ts_json_number(json, ts_json_shown(json, si, ts_kind_shown(kind, TS_UNITS_METRIC)));
    else
        ts_json_null(json);
}

static void quantity(ts_json *json, const ts_answer *answer, const char *key, double si,
                     ts_kind kind, ts_json_place place)
{
    ts_json_key(json, key);
    ts_json_quantity(json, answer, si, kind, place);
}

/* The value with its address, and the ends of its band beside it. */
static void band(ts_json *json, const ts_answer *answer, const char *key, ts_band value,
                 ts_kind kind, ts_json_place place)
{
    ts_json_key(json, key);
    ts_json_object(json);
    quantity(json, answer, "value", value.value, kind, place);
    number_in(json, "least", value.low, kind);
    number_in(json, "most", value.high, kind);
    ts_json_end(json, '}');
}

static ts_json_place place_of(ts_node node, const char *symbol)
{
    return (ts_json_place){node, TS_EVERY_CONDITION, symbol};
}

/* ---- parts ------------------------------------------------------------------------------------
 */

static void part(ts_json *json, const ts_answer *answer, const ts_mass_part *one)
{
    const ts_spool_drive *drive = &answer->drive->drive[one->drive];
    ts_json_object(json);
    ts_json_string_at(json, "kind", ts_mass_kind_says(one->kind));
    ts_json_string_at(json, "name", one->name);
    ts_json_string_at(json, "spool", answer->drive->spools[drive->spool].name);
    ts_json_node(json, answer, "address", one->node);
    if (one->missing != NULL)
        ts_json_string_at(json, "because", one->missing);
    else
        band(json, answer, "m", one->m, TS_KIND_MASS, place_of(one->node, one->m_name));
    if (one->J_name != NULL && one->J_missing == NULL)
        band(json, answer, "J", one->J, TS_KIND_INERTIA, place_of(one->node, one->J_name));
    number_in(json, "x", one->x, TS_KIND_LENGTH);
    number_in(json, "y", one->y, TS_KIND_LENGTH);
    number_in(json, "z", one->z, TS_KIND_LENGTH);
    ts_json_end(json, '}');
}

/* ---- boxes ------------------------------------------------------------------------------------
 */

static void mount(ts_json *json, const ts_answer *answer, uint32_t d, int i)
{
    static const char *const rest[3] = {"R_mount1", "R_mount2", "R_mount3"};
    static const char *const most[3] = {"R_worst1", "R_worst2", "R_worst3"};
    static const char *const run[3]  = {"R_run1", "R_run2", "R_run3"};
    const ts_mount_load     *one     = &answer->mass->boxes[d].mounts[i];
    const ts_node            node    = answer->drive->drive[d].box.node;
    ts_json_object(json);
    number_in(json, "x", one->x, TS_KIND_LENGTH);
    number_in(json, "y", one->y, TS_KIND_LENGTH);
    number_in(json, "z", one->z, TS_KIND_LENGTH);
    quantity(json, answer, "at_rest", one->rest, TS_KIND_FORCE, place_of(node, rest[i]));
    if (one->most > 0.0) {
        quantity(json, answer, "most", one->most, TS_KIND_FORCE, place_of(node, most[i]));
        ts_json_string_at(json, "shaken", ts_shake_says(one->shake));
    }
    if (one->run_at != TS_EVERY_CONDITION && one->run > 0.0) {
        const ts_json_place at = {node, one->run_at, run[i]};
        quantity(json, answer, "running", one->run, TS_KIND_FORCE, at);
        ts_json_string_at(json, "running_at", ts_answer_condition(answer, one->run_at));
    }
    ts_json_end(json, '}');
}

static void box(ts_json *json, const ts_answer *answer, uint32_t d)
{
    const ts_box_mass *one  = &answer->mass->boxes[d];
    const ts_node      node = answer->drive->drive[d].box.node;
    ts_json_object(json);
    ts_json_string_at(json, "spool", answer->drive->spools[answer->drive->drive[d].spool].name);
    ts_json_node(json, answer, "address", node);
    band(json, answer, "installed", one->installed, TS_KIND_MASS, place_of(node, "m_box"));
    if (!isnan(one->x + one->y + one->z)) {
        quantity(json, answer, "x", one->x, TS_KIND_LENGTH, place_of(node, "x_box"));
        quantity(json, answer, "y", one->y, TS_KIND_LENGTH, place_of(node, "y_box"));
        quantity(json, answer, "z", one->z, TS_KIND_LENGTH, place_of(node, "z_box"));
        quantity(json, answer, "overhang", one->overhang, TS_KIND_LENGTH, place_of(node, "e_m"));
    }
    ts_json_key(json, "mounts_assumed");
    ts_json_bool(json, one->mounts_assumed);
    if (one->missing != NULL)
        ts_json_string_at(json, "because", one->missing);
    ts_json_key(json, "mounts");
    ts_json_array(json);
    for (int i = 0; i < 3 && one->missing == NULL; i++)
        mount(json, answer, d, i);
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

static void spool(ts_json *json, const ts_answer *answer, size_t s)
{
    const ts_spool_inertia *seen = &answer->mass->spools[s];
    const ts_node           node = answer->drive->spools[s].node;
    if (!(seen->cranked.value > 0.0))
        return;
    ts_json_object(json);
    ts_json_string_at(json, "spool", answer->drive->spools[s].name);
    band(json, answer, "running", seen->J, TS_KIND_INERTIA, place_of(node, "J_seen"));
    band(json, answer, "cranked", seen->cranked, TS_KIND_INERTIA, place_of(node, "J_cranked"));
    number_in(json, "own", seen->own, TS_KIND_INERTIA);
    ts_json_end(json, '}');
}

/* ---- all --------------------------------------------------------------------------------------
 */

static void totals(ts_json *json, const ts_answer *answer)
{
    const ts_mass *mass = answer->mass;
    band(json, answer, "drive", mass->metal, TS_KIND_MASS, place_of(0, "m_metal"));
    band(json, answer, "total", mass->total, TS_KIND_MASS, place_of(0, "m_total"));
    if (!isnan(mass->x + mass->y + mass->z)) {
        quantity(json, answer, "x", mass->x, TS_KIND_LENGTH, place_of(0, "x_m"));
        quantity(json, answer, "y", mass->y, TS_KIND_LENGTH, place_of(0, "y_m"));
        quantity(json, answer, "z", mass->z, TS_KIND_LENGTH, place_of(0, "z_m"));
    }
    ts_json_key(json, "missing");
    ts_json_integer(json, (int64_t)mass->missing);
}

void ts_json_mass(ts_json *json, const ts_answer *answer)
{
    const ts_mass *mass = answer->mass;
    if (mass == NULL || !(mass->total.value > 0.0))
        return;
    ts_json_key(json, "mass");
    ts_json_object(json);
    totals(json, answer);
    ts_json_key(json, "parts");
    ts_json_array(json);
    for (size_t i = 0; i < mass->part_count; i++)
        part(json, answer, &mass->parts[i]);
    ts_json_end(json, ']');
    ts_json_key(json, "boxes");
    ts_json_array(json);
    for (uint32_t d = 0; d < answer->drive->drive_count; d++)
        box(json, answer, d);
    ts_json_end(json, ']');
    ts_json_key(json, "inertia");
    ts_json_array(json);
    for (size_t s = 0; s < answer->drive->spool_count; s++)
        spool(json, answer, s);
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}
