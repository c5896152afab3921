/* solid/bodies_json.c: how are the bodies of a drive told as JSON? */
#include "solid/bodies_json.h"

#include <math.h>

static void write_vector(ts_json *json, const char *key, const double v[3])
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (int k = 0; k < 3; k++)
        ts_json_number(json, v[k]);
    ts_json_end(json, ']');
}

static void write_pair(ts_json *json, double a, double b)
{
    ts_json_array(json);
    ts_json_number(json, a);
    ts_json_number(json, b);
    ts_json_end(json, ']');
}

static void write_point_at(ts_json *json, const char *key, ts_outline_point p)
{
    ts_json_key(json, key);
    write_pair(json, p.x, p.y);
}

static void write_teeth(ts_json *json, const ts_part_teeth *teeth)
{
    ts_json_key(json, "teeth");
    ts_json_object(json);
    ts_json_integer_at(json, "count", teeth->z);
    ts_json_number_at(json, "from", teeth->z_1);
    ts_json_number_at(json, "to", teeth->z_2);
    ts_json_number_at(json, "twist", teeth->twist);
    ts_json_number_at(json, "phase", teeth->phase);
    ts_json_number_at(json, "root", teeth->r_root);
    ts_json_number_at(json, "tip", teeth->r_tip);
    ts_json_string_at(json, "fault", teeth->fault);
    ts_json_key(json, "half");
    ts_json_array(json);
    for (size_t i = 0; i < teeth->shape.count; i++)
        write_pair(json, teeth->shape.points[i].x, teeth->shape.points[i].y);
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

static void write_loops(ts_json *json, const char *key, const ts_wall_line *wall)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (size_t i = 0; i < wall->count; i++) {
        const ts_wall_piece *one = &wall->pieces[i];
        if (one->opens && i > 0)
            ts_json_end(json, ']');
        if (one->opens)
            ts_json_array(json);
        ts_json_object(json);
        write_point_at(json, "a", one->a);
        write_point_at(json, "b", one->b);
        if (one->r > 0.0) {
            write_point_at(json, "centre", one->at);
            ts_json_number_at(json, "radius", one->r);
            ts_json_number_at(json, "start", one->from);
            ts_json_number_at(json, "turn", one->to - one->from);
        }
        ts_json_end(json, '}');
    }
    if (wall->count > 0)
        ts_json_end(json, ']');
    ts_json_end(json, ']');
}

static void write_casing(ts_json *json, const ts_part *part)
{
    ts_json_key(json, "casing");
    ts_json_object(json);
    ts_json_number_at(json, "from", part->z_1);
    ts_json_number_at(json, "to", part->z_2);
    ts_json_number_at(json, "floor", part->floor);
    write_loops(json, "outside", &part->outside);
    write_loops(json, "inside", &part->inside);
    ts_json_end(json, '}');
}

static void write_section(ts_json *json, const ts_part *part)
{
    ts_json_key(json, "section");
    ts_json_array(json);
    for (size_t i = 0; i < part->section_count; i++)
        write_pair(json, part->section[i].z, part->section[i].r);
    ts_json_end(json, ']');
}

static void write_part(ts_json *json, const ts_solids *solids, const ts_source *source,
                       const ts_part *part, ts_buffer *words)
{
    const ts_motion *motion = solids->motion;

    ts_json_object(json);
    ts_json_string_at(json, "kind", ts_solid_kind_says(part->kind));
    ts_json_string_at(json, "name", part->name);
    ts_buffer_clear(words);
    ts_source_address(source, part->node, words);
    ts_json_string_at(json, "at", words->bytes);
    ts_json_integer_at(json, "shaft", part->shaft == TS_NOWHERE ? -1 : (int64_t)part->shaft);
    ts_json_integer_at(json, "gear", part->gear == TS_NOWHERE ? -1 : (int64_t)part->gear);
    ts_json_integer_at(json, "sense",
                       part->shaft == TS_NOWHERE ? 0 : motion->shafts[part->shaft].sense);
    write_vector(json, "origin", part->origin);
    write_vector(json, "axis", part->axis);
    write_vector(json, "right", part->right);
    ts_json_number_at(json, "volume", part->V);
    ts_json_number_at(json, "mass", part->m);
    ts_json_number_at(json, "density", part->rho);
    if (part->section_count > 0)
        write_section(json, part);
    if (part->teeth.z != 0)
        write_teeth(json, &part->teeth);
    if (part->outside.count > 0)
        write_casing(json, part);
    ts_json_end(json, '}');
}

void ts_solids_write(const ts_solids *solids, const ts_source *source, const char *version,
                     const char *caution, ts_json *json)
{
    ts_buffer words;

    ts_buffer_open(&words, json->out->allocator);
    ts_json_object(json);
    ts_json_string_at(json, "version", version);
    ts_json_string_at(json, "caution", caution);
    ts_json_string_at(json, "units", "m, kg, rad");
    ts_json_string_at(json, "title", solids->drive->title.text);
    ts_json_string_at(json, "revision", solids->drive->revision.text);
    ts_json_key(json, "parts");
    ts_json_array(json);
    for (size_t i = 0; i < solids->part_count; i++)
        write_part(json, solids, source, &solids->parts[i], &words);
    ts_json_end(json, ']');
    ts_json_key(json, "missing");
    ts_json_array(json);
    for (size_t i = 0; i < solids->gap_count; i++) {
        ts_json_object(json);
        ts_json_string_at(json, "kind", ts_solid_kind_says(solids->gaps[i].kind));
        ts_json_string_at(json, "name", solids->gaps[i].name);
        ts_json_string_at(json, "missing", solids->gaps[i].missing);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_end(json, '}');
    if (words.failed)
        json->out->failed = true;
    ts_buffer_close(&words);
}
