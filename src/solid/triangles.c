/* solid/triangles.c: with which triangles does a part show its surface? */
#include "solid/triangles.h"

#include <math.h>
#include <string.h>

#define CREASE 0.7  /* rad: a sharper corner is an edge, a blunter one is round */
#define SLICE  0.09 /* rad of twist from one slice of teeth to the next         */

void ts_triangles_open(ts_triangles *out, const ts_allocator *allocator)
{
    *out = (ts_triangles){.corners = 0};
    for (int k = 0; k < 3; k++) {
        out->low[k]  = INFINITY;
        out->high[k] = -INFINITY;
    }
    ts_buffer_open(&out->places, allocator);
    ts_buffer_open(&out->normals, allocator);
    ts_buffer_open(&out->indices, allocator);
}

void ts_triangles_close(ts_triangles *out)
{
    ts_buffer_close(&out->places);
    ts_buffer_close(&out->normals);
    ts_buffer_close(&out->indices);
}

static void add_word(ts_buffer *out, uint32_t word)
{
    const char bytes[4] = {(char)(word & 255u), (char)(word >> 8 & 255u), (char)(word >> 16 & 255u),
                           (char)(word >> 24 & 255u)};
    ts_buffer_bytes(out, bytes, 4);
}

static void add_real(ts_buffer *out, float value)
{
    uint32_t bits;
    memcpy(&bits, &value, sizeof bits);
    add_word(out, bits);
}

uint32_t ts_add_corner(ts_triangles *out, ts_corner corner)
{
    const float place[3]  = {(float)corner.x, (float)corner.y, (float)corner.z};
    const float normal[3] = {(float)corner.nx, (float)corner.ny, (float)corner.nz};
    for (int k = 0; k < 3; k++) {
        out->low[k]  = fminf(out->low[k], place[k]);
        out->high[k] = fmaxf(out->high[k], place[k]);
        add_real(&out->places, place[k]);
        add_real(&out->normals, normal[k]);
    }
    return out->corners++;
}

void ts_add_triangle(ts_triangles *out, uint32_t a, uint32_t b, uint32_t c)
{
    add_word(&out->indices, a);
    add_word(&out->indices, b);
    add_word(&out->indices, c);
    out->index_count += 3;
}

void ts_add_quad(ts_triangles *out, uint32_t a, uint32_t b, uint32_t c, uint32_t d)
{
    ts_add_triangle(out, a, b, d);
    ts_add_triangle(out, a, d, c);
}

/* ---- surfaces of revolution ------------------------------------------------------------------ */

static uint32_t steps_round(double r, double chord_error)
{
    const double step  = 2.0 * acos(fmax(0.0, 1.0 - chord_error / fmax(r, chord_error)));
    const double steps = ceil(2.0 * M_PI / fmax(step, 1e-3));
    return (uint32_t)fmin(fmax(steps, 24.0), 360.0);
}

static double sense_of(const ts_section_point *p, size_t count)
{
    double twice = 0.0;
    for (size_t i = 0; i < count; i++) {
        const ts_section_point a = p[i], b = p[(i + 1) % count];
        twice += a.z * b.r - b.z * a.r;
    }
    return twice < 0.0 ? -1.0 : 1.0;
}

/* One edge of the section as a band.  With z right and r up, the outside of a section that runs
 * counter-clockwise lies to the right of its edges. */
static void add_band(ts_triangles *out, ts_section_point a, ts_section_point b, double chord_error)
{
    const double   length = hypot(b.z - a.z, b.r - a.r);
    const double   nz = (b.r - a.r) / length, nr = -(b.z - a.z) / length;
    const uint32_t steps   = steps_round(fmax(a.r, b.r), chord_error);
    uint32_t       last[2] = {0, 0};
    for (uint32_t i = 0; i <= steps; i++) {
        const double   angle = 2.0 * M_PI * (double)(i % steps) / (double)steps;
        const double   c = cos(angle), s = sin(angle);
        const uint32_t at[2] = {
            ts_add_corner(out, (ts_corner){a.r * c, a.r * s, a.z, nr * c, nr * s, nz}),
            ts_add_corner(out, (ts_corner){b.r * c, b.r * s, b.z, nr * c, nr * s, nz})};
        /* The way from a to b, turned about the axis, sees the outside on its right. */
        if (i > 0 && b.r > 0.0)
            ts_add_triangle(out, last[0], last[1], at[1]);
        if (i > 0 && a.r > 0.0)
            ts_add_triangle(out, last[0], at[1], at[0]);
        last[0] = at[0];
        last[1] = at[1];
    }
}

/* Below the teeth the section ends at the roots. */
static ts_section_point rooted(const ts_part *part, ts_section_point p)
{
    const bool tip = part->teeth.shape.count > 0 && p.r > part->teeth.r_tip - 1e-9;
    return tip ? (ts_section_point){p.z, part->teeth.r_root} : p;
}

static void add_section(ts_triangles *out, const ts_part *part, double chord_error)
{
    const bool ccw = sense_of(part->section, part->section_count) > 0.0;
    for (size_t i = 0; i < part->section_count; i++) {
        const ts_section_point p = rooted(part, part->section[i]);
        const ts_section_point q = rooted(part, part->section[(i + 1) % part->section_count]);
        const bool toothed       = part->teeth.shape.count > 0 && p.r > part->teeth.r_root - 1e-9 &&
                             q.r > part->teeth.r_root - 1e-9;
        if (!toothed && (p.r > 0.0 || q.r > 0.0))
            add_band(out, ccw ? p : q, ccw ? q : p, chord_error);
    }
}

/* ---- walls along the axis -------------------------------------------------------------------- */

/* A closed outline, counter-clockwise round what is inside, drawn along the axis. */
typedef struct tube {
    const ts_outline_point *points;
    size_t                  count;
    double                  z_1, z_2, twist;
} tube;

static ts_outline_point unit_across(ts_outline_point a, ts_outline_point b)
{
    const double length = hypot(b.x - a.x, b.y - a.y);
    return (ts_outline_point){(b.y - a.y) / length, -(b.x - a.x) / length};
}

/* The normal of edge `edge` at its point `at`: round where the next edge bends little. */
static ts_outline_point normal_at(const tube *it, size_t edge, size_t at)
{
    const size_t           n = it->count, other = at == edge ? (edge + n - 1) % n : at;
    const ts_outline_point own  = unit_across(it->points[edge], it->points[(edge + 1) % n]);
    const ts_outline_point next = unit_across(it->points[other], it->points[(other + 1) % n]);
    const double           sum  = hypot(own.x + next.x, own.y + next.y);
    if (own.x * next.x + own.y * next.y < cos(CREASE) || !(sum > 1e-9))
        return own;
    return (ts_outline_point){(own.x + next.x) / sum, (own.y + next.y) / sum};
}

/* Where a point of the outline lies on a slice, with its normal: a flank that is twisted by k rad a
 * metre leans, since a step along z goes with a step k r across. */
static ts_corner on_slice(const tube *it, ts_outline_point p, ts_outline_point n, double share)
{
    const double turn = it->twist * (share - 0.5), c = cos(turn), s = sin(turn);
    const double k    = it->twist / (it->z_2 - it->z_1);
    const double lean = -k * (p.x * n.y - p.y * n.x), length = sqrt(1.0 + lean * lean);
    return (ts_corner){.x  = c * p.x - s * p.y,
                       .y  = s * p.x + c * p.y,
                       .z  = it->z_1 + share * (it->z_2 - it->z_1),
                       .nx = (c * n.x - s * n.y) / length,
                       .ny = (s * n.x + c * n.y) / length,
                       .nz = lean / length};
}

static void add_tube(ts_triangles *out, const tube *it)
{
    const uint32_t slices = 1 + (uint32_t)ceil(fabs(it->twist) / SLICE);
    const uint32_t steps  = fabs(it->twist) > 0.0 ? slices : 1;
    for (size_t i = 0; i < it->count; i++) {
        const size_t           next = (i + 1) % it->count;
        const ts_outline_point n = normal_at(it, i, i), m = normal_at(it, i, next);
        uint32_t               last[2] = {0, 0};
        for (uint32_t k = 0; k <= steps; k++) {
            const double   share = (double)k / (double)steps;
            const uint32_t at[2] = {ts_add_corner(out, on_slice(it, it->points[i], n, share)),
                                    ts_add_corner(out, on_slice(it, it->points[next], m, share))};
            if (k > 0)
                ts_add_quad(out, last[0], last[1], at[0], at[1]);
            last[0] = at[0];
            last[1] = at[1];
        }
    }
}

/* ---- teeth ----------------------------------------------------------------------------------- */

/* From the root circle to the outline, at both ends of the face. */
static void add_tooth_ends(ts_triangles *out, const tube *it, double r_root)
{
    for (int end = 0; it->count > 0 && end < 2; end++) {
        const double nz       = end == 0 ? -1.0 : 1.0;
        uint32_t     first[2] = {0, 0}, last[2] = {0, 0};
        bool         rises = false;
        for (size_t i = 0; i <= it->count; i++) {
            const ts_outline_point p    = it->points[i % it->count];
            const double           far  = hypot(p.x, p.y);
            const ts_outline_point q    = {p.x * r_root / far, p.y * r_root / far};
            const ts_outline_point none = {0.0, 0.0};
            ts_corner              a    = on_slice(it, q, none, (double)end),
                      b                 = on_slice(it, p, none, (double)end);
            a.nz = b.nz          = nz;
            const bool     whole = i == it->count;
            const uint32_t at[2] = {whole ? first[0] : ts_add_corner(out, a),
                                    whole ? first[1] : ts_add_corner(out, b)};
            if (i == 0) {
                first[0] = at[0];
                first[1] = at[1];
            } else if (!(far - r_root > 1e-9) && !rises) {
                /* along the root circle there is nothing between the two */
            } else if (end == 1) {
                ts_add_triangle(out, last[0], last[1], at[1]);
                ts_add_triangle(out, last[0], at[1], at[0]);
            } else {
                ts_add_triangle(out, last[1], last[0], at[1]);
                ts_add_triangle(out, at[1], last[0], at[0]);
            }
            last[0] = at[0];
            last[1] = at[1];
            rises   = far - r_root > 1e-9;
        }
    }
}

static ts_status add_teeth(ts_triangles *out, const ts_part_teeth *teeth, ts_arena *arena)
{
    const size_t      count  = ts_gear_outline_size(&teeth->shape);
    ts_outline_point *points = TS_TAKE(arena, ts_outline_point, count);
    tube it = {.points = points, .z_1 = teeth->z_1, .z_2 = teeth->z_2, .twist = teeth->twist};
    if (points == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < count; i++) {
        const ts_outline_point p =
            ts_gear_outline_at(&teeth->shape, i, teeth->phase, (ts_outline_point){0.0, 0.0});
        if (it.count == 0 ||
            hypot(p.x - points[it.count - 1].x, p.y - points[it.count - 1].y) > 1e-9)
            points[it.count++] = p;
    }
    while (it.count > 1 &&
           hypot(points[it.count - 1].x - points[0].x, points[it.count - 1].y - points[0].y) < 1e-9)
        it.count--;
    add_tube(out, &it);
    add_tooth_ends(out, &it, teeth->r_root);
    return TS_OK;
}

/* ---- casings --------------------------------------------------------------------------------- */

static size_t points_of(const ts_wall_piece *piece, double chord_error)
{
    const double turn = fabs(piece->to - piece->from);
    return !(piece->r > 0.0)
               ? 1
               : (size_t)ceil(turn / (2.0 * M_PI) * steps_round(piece->r, chord_error));
}

static ts_outline_point point_of(const ts_wall_piece *piece, size_t i, size_t count)
{
    const double angle = piece->from + (piece->to - piece->from) * (double)i / (double)count;
    if (i == 0)
        return piece->a;
    return (ts_outline_point){piece->at.x + piece->r * cos(angle),
                              piece->at.y + piece->r * sin(angle)};
}

/* Counter-clockwise round the largest loop, clockwise round holes. */
static void turn_loop(ts_outline_point *points, size_t count, bool hole)
{
    double twice = 0.0;
    for (size_t i = 0; i < count; i++)
        twice += points[i].x * points[(i + 1) % count].y - points[(i + 1) % count].x * points[i].y;
    if ((twice > 0.0) != hole)
        return;
    for (size_t i = 0; i < count / 2; i++) {
        const ts_outline_point p = points[i];
        points[i]                = points[count - 1 - i];
        points[count - 1 - i]    = p;
    }
}

static double loop_area(const ts_outline_point *points, size_t count)
{
    double twice = 0.0;
    for (size_t i = 0; i < count; i++)
        twice += points[i].x * points[(i + 1) % count].y - points[(i + 1) % count].x * points[i].y;
    return 0.5 * fabs(twice);
}

static void add_floors(ts_triangles *out, const ts_part *part, const ts_outline_point *points,
                       size_t count, const uint32_t *corners, size_t made)
{
    for (int end = 0; end < 2; end++) {
        const double   nz = end == 0 ? -1.0 : 1.0, z = end == 0 ? part->z_1 : part->z_2;
        const uint32_t first = out->corners;
        for (size_t i = 0; i < count; i++)
            (void)ts_add_corner(out, (ts_corner){points[i].x, points[i].y, z, 0.0, 0.0, nz});
        for (size_t t = 0; t < made; t++) {
            const uint32_t *c = corners + 3 * t;
            ts_add_triangle(out, first + c[0], first + c[end == 0 ? 2 : 1],
                            first + c[end == 0 ? 1 : 2]);
        }
    }
}

static ts_status add_casing(ts_triangles *out, const ts_part *part, double chord_error,
                            ts_arena *arena)
{
    const ts_wall_line *wall  = &part->outside;
    size_t              total = 0, loops = 0, used = 0, outer = 0;
    uint32_t           *corners = NULL;
    for (size_t i = 0; i < wall->count; i++) {
        total += points_of(&wall->pieces[i], chord_error);
        loops += wall->pieces[i].opens;
    }
    ts_outline_point *points = TS_TAKE(arena, ts_outline_point, total);
    size_t           *sizes  = TS_TAKE(arena, size_t, loops);
    if (points == NULL || sizes == NULL)
        return TS_NO_MEMORY;
    loops = 0;
    for (size_t i = 0; i < wall->count; i++) {
        const size_t count = points_of(&wall->pieces[i], chord_error);
        loops += wall->pieces[i].opens;
        for (size_t k = 0; k < count; k++)
            points[used++] = point_of(&wall->pieces[i], k, count);
        sizes[loops - 1] += count;
    }
    double most = 0.0;
    for (size_t l = 0, start = 0; l < loops; start += sizes[l++]) {
        const double area = loop_area(points + start, sizes[l]);
        outer             = area > most ? l : outer;
        most              = fmax(most, area);
    }
    for (size_t l = 0, start = 0; l < loops; start += sizes[l++]) {
        turn_loop(points + start, sizes[l], l != outer);
        add_tube(out, &(tube){points + start, sizes[l], part->z_1, part->z_2, 0.0});
    }
    const size_t made = ts_cut_region(points, sizes, loops, arena, &corners);
    if (made == SIZE_MAX)
        return TS_NO_MEMORY;
    add_floors(out, part, points, used, corners, made);
    return TS_OK;
}

ts_status ts_triangles_of(const ts_part *part, double chord_error, ts_arena *arena,
                          ts_triangles *out)
{
    ts_status status = TS_OK;
    if (part->section_count > 0)
        add_section(out, part, chord_error);
    if (part->teeth.shape.count > 0)
        status = add_teeth(out, &part->teeth, arena);
    if (part->outside.count > 0)
        status = add_casing(out, part, chord_error, arena);
    if (out->places.failed || out->normals.failed || out->indices.failed)
        status = TS_NO_MEMORY;
    return status;
}
