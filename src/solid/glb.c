/* solid/glb.c: how does a viewer get the bodies of a drive? */
#include "solid/glb.h"

#include "base/json_writer.h"
#include "solid/triangles.h"

#include <math.h>
#include <string.h>

enum { REAL = 5126, WORD = 5125, CORNERS = 34962, INDICES = 34963 }; /* names of the format */

/* Where the surface of one shape lies in the binary chunk. */
typedef struct shape {
    size_t        start, places, normals, indices; /* bytes */
    uint32_t      corners, index_count;
    float         low[3], high[3];
    ts_solid_kind kind;
} shape;

typedef struct job {
    const ts_solids *solids;
    ts_arena        *arena;
    shape           *shapes;
    size_t           shape_count;
    size_t          *shape_of; /* [part] */
    ts_buffer        bytes;    /* the binary chunk */
    ts_buffer        words;
} job;

static bool is_shape(const job *all, const shape *one, const ts_triangles *t, ts_solid_kind kind)
{
    const char *at = all->bytes.bytes + one->start;
    return one->kind == kind && one->places == t->places.length &&
           one->indices == t->indices.length && memcmp(at, t->places.bytes, one->places) == 0 &&
           memcmp(at + one->places, t->normals.bytes, one->normals) == 0 &&
           memcmp(at + one->places + one->normals, t->indices.bytes, one->indices) == 0;
}

static size_t find_shape(job *all, const ts_triangles *t, ts_solid_kind kind)
{
    for (size_t i = 0; i < all->shape_count; i++)
        if (is_shape(all, &all->shapes[i], t, kind))
            return i;
    shape *one = &all->shapes[all->shape_count];
    *one       = (shape){.start       = all->bytes.length,
                         .places      = t->places.length,
                         .normals     = t->normals.length,
                         .indices     = t->indices.length,
                         .corners     = t->corners,
                         .index_count = t->index_count,
                         .kind        = kind};
    memcpy(one->low, t->low, sizeof one->low);
    memcpy(one->high, t->high, sizeof one->high);
    ts_buffer_bytes(&all->bytes, t->places.bytes, t->places.length);
    ts_buffer_bytes(&all->bytes, t->normals.bytes, t->normals.length);
    ts_buffer_bytes(&all->bytes, t->indices.bytes, t->indices.length);
    return all->shape_count++;
}

static ts_status gather(job *all)
{
    ts_status status = TS_OK;
    for (size_t i = 0; status == TS_OK && i < all->solids->part_count; i++) {
        const ts_part *part = &all->solids->parts[i];
        ts_triangles   surface;
        ts_triangles_open(&surface, all->bytes.allocator);
        status = ts_triangles_of(part, TS_GLB_CHORD_ERROR, all->arena, &surface);
        if (status == TS_OK)
            all->shape_of[i] = find_shape(all, &surface, part->kind);
        ts_triangles_close(&surface);
    }
    return all->bytes.failed ? TS_NO_MEMORY : status;
}

/* ---- the JSON chunk -------------------------------------------------------------------------- */

typedef struct paint {
    double red, green, blue, alpha, metal, rough;
} paint;

/* Steel, dark steel, light alloy seen through, painted bodies; for the eye alone. */
static const paint paints[TS_SOLID_KINDS] = {
    [TS_SOLID_GEAR]   = {0.62, 0.66, 0.71, 1.0, 0.8, 0.35},
    [TS_SOLID_BEVEL]  = {0.55, 0.58, 0.64, 1.0, 0.8, 0.4},
    [TS_SOLID_SHAFT]  = {0.42, 0.45, 0.50, 1.0, 0.8, 0.45},
    [TS_SOLID_TOWER]  = {0.42, 0.45, 0.50, 1.0, 0.8, 0.45},
    [TS_SOLID_CASING] = {0.78, 0.80, 0.76, 0.22, 0.1, 0.8},
    [TS_SOLID_BODY]   = {0.36, 0.47, 0.58, 0.55, 0.1, 0.7},
};

static void write_materials(ts_json *json)
{
    ts_json_key(json, "materials");
    ts_json_array(json);
    for (int k = 0; k < TS_SOLID_KINDS; k++) {
        const paint *p        = &paints[k];
        const double colour[] = {p->red, p->green, p->blue, p->alpha};
        ts_json_object(json);
        ts_json_string_at(json, "name", ts_solid_kind_says((ts_solid_kind)k));
        ts_json_key(json, "pbrMetallicRoughness");
        ts_json_object(json);
        ts_json_key(json, "baseColorFactor");
        ts_json_array(json);
        for (int i = 0; i < 4; i++)
            ts_json_number(json, colour[i]);
        ts_json_end(json, ']');
        ts_json_number_at(json, "metallicFactor", p->metal);
        ts_json_number_at(json, "roughnessFactor", p->rough);
        ts_json_end(json, '}');
        if (p->alpha < 1.0)
            ts_json_string_at(json, "alphaMode", "BLEND");
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void write_view(ts_json *json, size_t start, size_t length, int target)
{
    ts_json_object(json);
    ts_json_integer_at(json, "buffer", 0);
    ts_json_count_at(json, "byteOffset", start);
    ts_json_count_at(json, "byteLength", length);
    ts_json_integer_at(json, "target", target);
    ts_json_end(json, '}');
}

static void write_views(ts_json *json, const job *all)
{
    ts_json_key(json, "bufferViews");
    ts_json_array(json);
    for (size_t i = 0; i < all->shape_count; i++) {
        const shape *one = &all->shapes[i];
        write_view(json, one->start, one->places, CORNERS);
        write_view(json, one->start + one->places, one->normals, CORNERS);
        write_view(json, one->start + one->places + one->normals, one->indices, INDICES);
    }
    ts_json_end(json, ']');
}

static void write_bound(ts_json *json, const char *key, const float v[3])
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (int k = 0; k < 3; k++)
        ts_json_number(json, (double)v[k]);
    ts_json_end(json, ']');
}

static void write_accessors(ts_json *json, const job *all)
{
    ts_json_key(json, "accessors");
    ts_json_array(json);
    for (size_t i = 0; i < 3 * all->shape_count; i++) {
        const shape *one   = &all->shapes[i / 3];
        const bool   index = i % 3 == 2;
        ts_json_object(json);
        ts_json_count_at(json, "bufferView", i);
        ts_json_integer_at(json, "componentType", index ? WORD : REAL);
        ts_json_count_at(json, "count", index ? one->index_count : one->corners);
        ts_json_string_at(json, "type", index ? "SCALAR" : "VEC3");
        if (i % 3 == 0) {
            write_bound(json, "min", one->low);
            write_bound(json, "max", one->high);
        }
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void write_meshes(ts_json *json, const job *all)
{
    ts_json_key(json, "meshes");
    ts_json_array(json);
    for (size_t i = 0; i < all->shape_count; i++) {
        ts_json_object(json);
        ts_json_key(json, "primitives");
        ts_json_array(json);
        ts_json_object(json);
        ts_json_key(json, "attributes");
        ts_json_object(json);
        ts_json_count_at(json, "POSITION", 3 * i);
        ts_json_count_at(json, "NORMAL", 3 * i + 1);
        ts_json_end(json, '}');
        ts_json_count_at(json, "indices", 3 * i + 2);
        ts_json_integer_at(json, "material", (int64_t)all->shapes[i].kind);
        ts_json_end(json, '}');
        ts_json_end(json, ']');
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

/* derived: the unit quaternion of a rotation matrix, its largest part first so that nothing is
 * lost by subtraction; columns right, up, axis. */
static void turn_of(const ts_part *part, double q[4])
{
    const double *x = part->right, *z = part->axis;
    const double  y[3]          = {z[1] * x[2] - z[2] * x[1], z[2] * x[0] - z[0] * x[2],
                                   z[0] * x[1] - z[1] * x[0]};
    const double  square[4]     = {1.0 + x[0] - y[1] - z[2], 1.0 - x[0] + y[1] - z[2],
                                   1.0 - x[0] - y[1] + z[2], 1.0 + x[0] + y[1] + z[2]};
    const double  product[4][4] = {
         {square[0], x[1] + y[0], z[0] + x[2], y[2] - z[1]},
         {x[1] + y[0], square[1], y[2] + z[1], z[0] - x[2]},
         {z[0] + x[2], y[2] + z[1], square[2], x[1] - y[0]},
         {y[2] - z[1], z[0] - x[2], x[1] - y[0], square[3]},
    };
    int most = 0;
    for (int k = 1; k < 4; k++)
        most = square[k] > square[most] ? k : most;
    for (int k = 0; k < 4; k++)
        q[k] = product[most][k] / (2.0 * sqrt(square[most]));
}

static void write_node(ts_json *json, job *all, size_t i)
{
    const ts_part *part = &all->solids->parts[i];
    double         q[4];
    ts_buffer_clear(&all->words);
    ts_buffer_print(&all->words, "%s: %s", part->name != NULL ? part->name : "",
                    ts_solid_kind_says(part->kind));
    turn_of(part, q);
    ts_json_object(json);
    ts_json_string_at(json, "name", all->words.bytes);
    ts_json_count_at(json, "mesh", all->shape_of[i]);
    ts_json_key(json, "translation");
    ts_json_array(json);
    for (int k = 0; k < 3; k++)
        ts_json_number(json, part->origin[k]);
    ts_json_end(json, ']');
    ts_json_key(json, "rotation");
    ts_json_array(json);
    for (int k = 0; k < 4; k++)
        ts_json_number(json, q[k]);
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

static void write_nodes(ts_json *json, job *all)
{
    ts_json_key(json, "nodes");
    ts_json_array(json);
    for (size_t i = 0; i < all->solids->part_count; i++)
        write_node(json, all, i);
    ts_json_end(json, ']');
    ts_json_integer_at(json, "scene", 0);
    ts_json_key(json, "scenes");
    ts_json_array(json);
    ts_json_object(json);
    if (all->solids->part_count > 0) {
        ts_json_key(json, "nodes");
        ts_json_array(json);
        for (size_t i = 0; i < all->solids->part_count; i++)
            ts_json_integer(json, (int64_t)i);
        ts_json_end(json, ']');
    }
    ts_json_end(json, '}');
    ts_json_end(json, ']');
}

static void write_document(job *all, const char *generator, const char *caution, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, true);
    ts_json_object(&json);
    ts_json_key(&json, "asset");
    ts_json_object(&json);
    ts_json_string_at(&json, "version", "2.0");
    ts_json_string_at(&json, "generator", generator);
    ts_json_string_at(&json, "copyright", caution);
    ts_json_end(&json, '}');
    if (all->shape_count > 0) {
        ts_json_key(&json, "buffers");
        ts_json_array(&json);
        ts_json_object(&json);
        ts_json_count_at(&json, "byteLength", all->bytes.length);
        ts_json_end(&json, '}');
        ts_json_end(&json, ']');
        write_views(&json, all);
        write_accessors(&json, all);
        write_meshes(&json, all);
        write_materials(&json);
    }
    write_nodes(&json, all);
    ts_json_end(&json, '}');
}

/* ---- the container --------------------------------------------------------------------------- */

static void add_word(ts_buffer *out, size_t word)
{
    const char bytes[4] = {(char)(word & 255u), (char)(word >> 8 & 255u), (char)(word >> 16 & 255u),
                           (char)(word >> 24 & 255u)};
    ts_buffer_bytes(out, bytes, 4);
}

static void add_chunk(ts_buffer *out, const char *kind, const ts_buffer *content)
{
    add_word(out, content->length);
    ts_buffer_bytes(out, kind, 4);
    ts_buffer_bytes(out, content->bytes, content->length);
}

ts_status ts_glb_write(const ts_solids *solids, const char *generator, const char *caution,
                       ts_arena *arena, ts_buffer *out)
{
    const size_t count = solids->part_count;
    job          all   = {.solids   = solids,
                          .arena    = arena,
                          .shapes   = TS_TAKE(arena, shape, count),
                          .shape_of = TS_TAKE(arena, size_t, count)};
    ts_buffer    document;
    ts_buffer_open(&all.bytes, out->allocator);
    ts_buffer_open(&all.words, out->allocator);
    ts_buffer_open(&document, out->allocator);
    ts_status status = all.shapes != NULL && all.shape_of != NULL ? gather(&all) : TS_NO_MEMORY;
    if (status == TS_OK) {
        write_document(&all, generator, caution, &document);
        ts_buffer_fill(&document, ' ', (4 - document.length % 4) % 4);
        ts_buffer_bytes(out, "glTF", 4);
        add_word(out, 2);
        add_word(out, 12 + 8 + document.length + (all.bytes.length > 0 ? 8 + all.bytes.length : 0));
        add_chunk(out, "JSON", &document);
        if (all.bytes.length > 0)
            add_chunk(out, "BIN\0", &all.bytes);
        if (all.bytes.failed || all.words.failed || document.failed || out->failed)
            status = TS_NO_MEMORY;
    }
    ts_buffer_close(&all.bytes);
    ts_buffer_close(&all.words);
    ts_buffer_close(&document);
    return status;
}
