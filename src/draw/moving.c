/* draw/moving.c: how does a drive turn? */
#include "draw/moving.h"

#include "base/markup.h"
#include "draw/face.h"
#include "draw/look.h"

#include <math.h>
#include <string.h>

#define WIDTH     1000.0 /* of the picture, in its own units                       */
#define FASTEST_S 5.0    /* for a turn of the fastest gear: teeth can be followed  */
#define MARGIN    0.05   /* m above and below, for names                           */
#define LETTER    9.0    /* width of a letter at most, on the whole                */
#define LINE      18.0   /* from one line of letters to the next                   */
#define GAP       0.004  /* m between a gear and a name                            */
#define CENTRE    0.03   /* m: a name nearer to the middle stands over its gear    */
#define FURTHEST  12     /* lines that a name may be moved out                     */

/* The names of what a shaft carries; edges in units from the axis of the engine, downwards. */
typedef struct name {
    uint32_t shaft;
    uint32_t lines;
    int      side; /* -1: it ends at x, 0: it stands over it, 1: it begins there */
    int      steps;
    bool     up;   /* away from the engine is upwards */
    double   x, y; /* m */
    double   left, right, top, bottom;
} name;

typedef struct moving {
    ts_face   *face;
    ts_scene  *scene;
    ts_buffer *out;
    double     scale;    /* units a metre */
    double     x_0, y_0; /* m, left and top */
    double     right, bottom;
    double     fastest; /* rad/s */
    name      *names;
    uint32_t   name_count;
} moving;

/* ---- small words ----------------------------------------------------------------------------- */

static void add(moving *it, const char *text)
{
    ts_buffer_add(it->out, text);
}

static void number(moving *it, double value, int decimals)
{
    ts_buffer_fixed(it->out, value, decimals);
}

static void point(moving *it, double x, double y)
{
    number(it, (x - it->x_0) * it->scale, 2);
    add(it, " ");
    number(it, (it->y_0 - y) * it->scale, 2);
}

static void length(moving *it, double metres)
{
    number(it, metres * it->scale, 2);
}

static void colour(moving *it, ts_colour which)
{
    static const char digits[] = "0123456789abcdef";
    const ts_rgb      rgb      = ts_look_rgb(it->scene->options->ground, which);
    const double      parts[3] = {rgb.red, rgb.green, rgb.blue};
    char              text[8]  = "#";

    for (int i = 0; i < 3; i++) {
        const int byte      = (int)lround(parts[i] * 255.0);
        text[1 + 2 * i]     = digits[byte / 16];
        text[1 + 2 * i + 1] = digits[byte % 16];
    }
    text[7] = '\0';
    add(it, text);
}

static bool is_drawn(const moving *it, uint32_t s)
{
    const ts_shaft_motion *motion = &it->scene->motion->shafts[s];
    return it->scene->train->shafts[s].kind == TS_SHAFT_BOX && motion->placed;
}

/* ---- what stands where ----------------------------------------------------------------------- */

static void widen(moving *it, double x, double y, double r)
{
    it->x_0    = fmin(it->x_0, x - r);
    it->right  = fmax(it->right, x + r);
    it->y_0    = fmax(it->y_0, y + r);
    it->bottom = fmin(it->bottom, y - r);
}

static double radius_of(const moving *it, uint32_t s)
{
    double r = 0.0;
    for (uint32_t g = 0; g < it->scene->train->gear_count; g++)
        if (it->scene->train->gears[g].shaft == s &&
            it->scene->train->gears[g].role != TS_GEAR_BEVEL)
            r = fmax(r, it->face->gears[g].r_tip);
    return r;
}

static double hub_radius(const moving *it)
{
    double r = 0.0;
    for (uint32_t g = 0; g < it->scene->train->gear_count; g++)
        if (it->scene->train->shafts[it->scene->train->gears[g].shaft].kind == TS_SHAFT_SPOOL)
            r = fmax(r, it->face->gears[g].r);
    return r;
}

static size_t longest_name(const moving *it)
{
    size_t most = 0;

    for (uint32_t p = 0; p < it->scene->train->pad_count; p++)
        if (it->scene->train->pads[p].accessory >= 0)
            most = strlen(it->scene->train->pads[p].name) > most
                       ? strlen(it->scene->train->pads[p].name)
                       : most;
    return most;
}

static bool measure(moving *it)
{
    const ts_train *train = it->scene->train;

    it->x_0 = it->bottom = INFINITY;
    it->y_0 = it->right = -INFINITY;
    widen(it, 0.0, 0.0, hub_radius(it));
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_shaft_motion *motion = &it->scene->motion->shafts[s];
        const double           n      = ts_scene_speed(it->scene, s);
        if (!is_drawn(it, s))
            continue;
        widen(it, motion->x, motion->y, radius_of(it, s));
        if (isfinite(n))
            it->fastest = fmax(it->fastest, n);
    }
    const double beside = fmin(0.3, LETTER * (1.0 + (double)longest_name(it)) / WIDTH);
    const double width  = (it->right - it->x_0) / (1.0 - 2.0 * beside);
    it->x_0 -= beside * width;
    it->y_0 += MARGIN;
    it->bottom -= MARGIN;
    it->scale = WIDTH / width;
    return it->fastest > 0.0 && isfinite(it->scale) && it->scale > 0.0;
}

/* ---- what turns ------------------------------------------------------------------------------ */

/* " class="turn" style="..."": about the origin of its group, as fast as the shaft. */
static void turning(moving *it, uint32_t s)
{
    const double n     = ts_scene_speed(it->scene, s);
    const int    sense = it->scene->motion->shafts[s].sense;

    if (!(n > 0.0) || sense == 0)
        return;
    add(it, " class=\"turn\" style=\"animation-duration:");
    number(it, FASTEST_S * it->fastest / n, 9);
    add(it, sense > 0 ? "s;animation-direction:reverse\"" : "s\"");
}

static void outline(moving *it, const ts_face_gear *gear)
{
    const size_t           size   = ts_gear_outline_size(&gear->shape);
    const ts_outline_point origin = {0.0, 0.0};

    if (gear->shape.count == 0) {
        add(it, "<circle r=\"");
        length(it, gear->r_tip);
        add(it, "\"/>");
        return;
    }
    add(it, "<path d=\"");
    for (size_t i = 0; i < size; i++) {
        const ts_outline_point p = ts_gear_outline_at(&gear->shape, i, gear->phase, origin);
        add(it, i == 0 ? "M" : "L");
        length(it, p.x);
        add(it, " ");
        length(it, -p.y);
    }
    add(it, "Z\"/>");
}

/* A spoke shows that it turns, also where no teeth are drawn. */
static void spoke(moving *it, double r)
{
    add(it, "<line class=\"spoke\" x1=\"0\" y1=\"0\" x2=\"0\" y2=\"");
    length(it, -0.8 * r);
    add(it, "\"/><circle class=\"axle\" r=\"");
    length(it, 0.12 * r);
    add(it, "\"/>");
}

static void begin_at(moving *it, double x, double y)
{
    add(it, "<g transform=\"translate(");
    point(it, x, y);
    add(it, ")\">");
}

static void gear(moving *it, uint32_t g)
{
    const ts_gear         *one    = &it->scene->train->gears[g];
    const ts_shaft_motion *motion = &it->scene->motion->shafts[one->shaft];

    begin_at(it, motion->x, motion->y);
    add(it, motion->sense > 0 ? "<g class=\"ccw\"><g" : "<g class=\"cw\"><g");
    turning(it, one->shaft);
    add(it, ">");
    outline(it, &it->face->gears[g]);
    spoke(it, it->face->gears[g].r);
    add(it, "</g></g></g>\n");
}

static void gears(moving *it)
{
    const ts_train *train = it->scene->train;
    int             last  = 0;

    for (uint32_t g = 0; g < train->gear_count; g++)
        last = it->face->gears[g].plane > last ? it->face->gears[g].plane : last;
    for (int plane = last; plane >= 0; plane--)
        for (uint32_t g = 0; g < train->gear_count; g++)
            if (train->gears[g].role != TS_GEAR_BEVEL && it->face->gears[g].plane == plane &&
                is_drawn(it, train->gears[g].shaft))
                gear(it, g);
}

/* The spools stand behind each other; the innermost is drawn last. */
static void spools(moving *it)
{
    const ts_train *train = it->scene->train;
    double          share = 1.0;

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        if (train->shafts[s].kind != TS_SHAFT_SPOOL)
            continue;
        const double r = hub_radius(it) * share;
        begin_at(it, 0.0, 0.0);
        add(it,
            it->scene->motion->shafts[s].sense > 0 ? "<g class=\"ccw\"><g" : "<g class=\"cw\"><g");
        turning(it, s);
        add(it, "><circle r=\"");
        length(it, r);
        add(it, "\"/>");
        spoke(it, r);
        add(it, "</g></g></g>\n");
        share *= 0.6;
    }
}

/* ---- what flows ------------------------------------------------------------------------------ */

/* A ribbon from one axis to the next; the strokes run the way the power goes. */
static void flow(moving *it, double x_1, double y_1, double x_2, double y_2, double T)
{
    if (isnan(T) || !(fabs(T) > 0.0))
        return;
    const double from[2] = {T > 0.0 ? x_1 : x_2, T > 0.0 ? y_1 : y_2};
    const double to[2]   = {T > 0.0 ? x_2 : x_1, T > 0.0 ? y_2 : y_1};
    add(it, T > 0.0 ? "<path class=\"flow\" d=\"M" : "<path class=\"flow back\" d=\"M");
    point(it, from[0], from[1]);
    add(it, "L");
    point(it, 0.5 * (from[0] + to[0]), 0.5 * (from[1] + to[1]));
    add(it, "L");
    point(it, to[0], to[1]);
    add(it, "\"/>\n");
}

static double torque_of(const moving *it, uint32_t s)
{
    return it->scene->power->T[(size_t)it->scene->condition * it->scene->train->shaft_count + s];
}

static void flows(moving *it)
{
    const ts_train *train = it->scene->train;

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_shaft_motion *here = &it->scene->motion->shafts[s];
        if (!is_drawn(it, s) || train->shafts[s].mesh == TS_NOWHERE)
            continue;
        const uint32_t         d     = train->meshes[train->shafts[s].mesh].driver_shaft;
        const ts_shaft_motion *there = &it->scene->motion->shafts[d];
        if (train->shafts[d].kind == TS_SHAFT_TOWER)
            flow(it, 0.0, 0.0, here->x, here->y, torque_of(it, s));
        else if (is_drawn(it, d))
            flow(it, there->x, there->y, here->x, here->y, torque_of(it, s));
    }
}

/* ---- names ----------------------------------------------------------------------------------- */

static uint32_t lines_of(const moving *it, uint32_t s, size_t *longest)
{
    const ts_train *train = it->scene->train;
    uint32_t        count = 0;

    *longest = 0;
    for (int face = TS_FRONT; face <= TS_REAR; face++) {
        const uint32_t p = train->shafts[s].pad[face];
        if (p == TS_NOWHERE || train->pads[p].accessory < 0)
            continue;
        *longest = strlen(train->pads[p].name) > *longest ? strlen(train->pads[p].name) : *longest;
        count++;
    }
    return count;
}

/* Does the name stand on an earlier one, or on the gear of another shaft? */
static bool stands_on(const moving *it, const name *one)
{
    for (const name *other = it->names; other < one; other++)
        if (one->left < other->right && other->left < one->right && one->top < other->bottom &&
            other->top < one->bottom)
            return true;
    for (uint32_t s = 0; s < it->scene->train->shaft_count; s++) {
        const ts_shaft_motion *at = &it->scene->motion->shafts[s];
        if (s == one->shaft || !is_drawn(it, s))
            continue;
        const double x = at->x * it->scale, y = -at->y * it->scale;
        const double across = x - fmin(fmax(x, one->left), one->right);
        const double down   = y - fmin(fmax(y, one->top), one->bottom);
        if (hypot(across, down) < radius_of(it, s) * it->scale)
            return true;
    }
    return false;
}

static void lay_name(const moving *it, name *one, double x, double y, size_t longest)
{
    const double wide = LETTER * (double)longest;
    const double high = LINE * one->lines;

    one->x      = x;
    one->y      = y;
    one->left   = one->side == 0  ? x * it->scale - 0.5 * wide
                  : one->side < 0 ? x * it->scale - wide
                                  : x * it->scale;
    one->right  = one->left + wide;
    one->top    = -y * it->scale + (one->up ? -high - LETTER : LINE - LETTER - 4.0);
    one->bottom = one->top + high;
}

/* Outside of the gears of the shaft; where that is taken, line by line further out. */
static void place_name(moving *it, uint32_t s)
{
    const ts_shaft_motion *at   = &it->scene->motion->shafts[s];
    const double           from = hypot(at->x, at->y);
    const double           away = 1.0 + (from > 0.0 ? (radius_of(it, s) + GAP) / from : 0.0);
    const double           x    = at->x * away;
    name                  *one  = &it->names[it->name_count];
    size_t                 longest;

    *one       = (name){.shaft = s, .up = at->y > 0.0};
    one->lines = lines_of(it, s, &longest);
    one->side  = fabs(x) < CENTRE ? 0 : x < 0.0 ? -1 : 1;
    if (one->lines == 0)
        return;
    for (one->steps = 0; one->steps < FURTHEST; one->steps++) {
        const double further = LINE * one->steps / it->scale;
        lay_name(it, one, x, at->y * away + (one->up ? further : -further), longest);
        if (!stands_on(it, one))
            break;
    }
    it->y_0    = fmax(it->y_0, (LETTER - one->top) / it->scale);
    it->bottom = fmin(it->bottom, -(one->bottom + LETTER) / it->scale);
    it->name_count++;
}

static bool place_names(moving *it, ts_arena *arena)
{
    it->names = TS_TAKE(arena, name, it->scene->train->shaft_count);
    if (it->names == NULL)
        return false;
    for (uint32_t s = 0; s < it->scene->train->shaft_count; s++)
        if (is_drawn(it, s))
            place_name(it, s);
    return true;
}

/* What had to go further out is led back to its gear. */
static void leader(moving *it, const name *one)
{
    const ts_shaft_motion *at  = &it->scene->motion->shafts[one->shaft];
    const double           r   = radius_of(it, one->shaft);
    const double           end = one->y + (one->up ? -0.2 : 0.2) * LINE / it->scale;

    add(it, "<path class=\"leader\" d=\"M");
    point(it, at->x, at->y + (one->up ? r : -r));
    add(it, "L");
    point(it, one->side == 0 ? at->x : one->x, end);
    add(it, "\"/>\n");
}

/* What stands on the front and on the rear of a shaft, one below the other. */
static void write_name(moving *it, const name *one)
{
    const ts_train *train = it->scene->train;
    int             line  = one->up ? -1 : 1;

    if (one->steps > 1)
        leader(it, one);
    for (int face = TS_FRONT; face <= TS_REAR; face++) {
        const uint32_t p = train->shafts[one->shaft].pad[face];
        if (p == TS_NOWHERE || train->pads[p].accessory < 0)
            continue;
        add(it, "<text transform=\"translate(");
        point(it, one->x, one->y);
        add(it, one->side == 0  ? ")\" text-anchor=\"middle\""
                : one->side < 0 ? ")\" text-anchor=\"end\""
                                : ")\"");
        add(it, " dy=\"");
        number(it, line * LINE, 0);
        add(it, "\">");
        ts_markup_text(it->out, train->pads[p].name);
        add(it, "</text>\n");
        line += one->up ? -1 : 1;
    }
}

static void names(moving *it)
{
    for (uint32_t n = 0; n < it->name_count; n++)
        write_name(it, &it->names[n]);
}

/* ---- the whole ------------------------------------------------------------------------------- */

static void rule(moving *it, const char *before, ts_colour which, const char *after)
{
    add(it, before);
    colour(it, which);
    add(it, after);
}

static void style(moving *it)
{
    rule(it, "<style>svg{background:", TS_COLOUR_PAPER,
         "}text{font:16px B612,Verdana,'DejaVu Sans',sans-serif;fill:");
    colour(it, TS_COLOUR_INK);
    rule(it, ";stroke:", TS_COLOUR_PAPER, ";stroke-width:4;paint-order:stroke}");
    rule(it, "path,circle{stroke:", TS_COLOUR_INK, ";stroke-width:1}");
    rule(it, ".cw path,.cw circle{fill:", TS_COLOUR_GEAR_CW, "}");
    rule(it, ".ccw path,.ccw circle{fill:", TS_COLOUR_GEAR_CCW, "}");
    rule(it, ".spoke{stroke:", TS_COLOUR_INK3, ";stroke-width:2}");
    rule(it, ".leader{fill:none;stroke:", TS_COLOUR_INK2, ";stroke-width:1}");
    rule(it, ".axle{stroke:", TS_COLOUR_INK3, "}");
    rule(it, ".flow{fill:none;stroke:", TS_COLOUR_POWER,
         ";stroke-width:7;stroke-opacity:.75;stroke-dasharray:14 "
         "10;marker-mid:url(#way);animation:run 1s linear "
         "infinite}");
    rule(it, ".back{stroke:", TS_COLOUR_BACK, ";stroke-dasharray:6 6}");
    add(it, ".turn{animation:turn 1s linear infinite}@keyframes turn{to{transform:rotate(360deg)}}"
            "@keyframes run{to{stroke-dashoffset:-24}}@media (prefers-reduced-motion:reduce){"
            ".turn,.flow{animation:none}}</style>\n");
}

static void write(moving *it)
{
    add(it, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ");
    number(it, WIDTH, 0);
    add(it, " ");
    number(it, (it->y_0 - it->bottom) * it->scale, 2);
    add(it, "\" width=\"1000\">\n<title>");
    ts_markup_text(it->out, it->scene->drive->conditions[it->scene->condition].name);
    add(it, ": the drive turns, seen from behind</title>\n");
    style(it);
    add(it, "<defs><marker id=\"way\" markerWidth=\"4\" markerHeight=\"4\" refX=\"1.5\" refY=\"2\" "
            "orient=\"auto\"><path d=\"M0 0L4 2L0 4Z\" style=\"fill:context-stroke;stroke:none\"/>"
            "</marker></defs>\n");
    spools(it);
    gears(it);
    flows(it);
    names(it);
    add(it, "</svg>\n");
}

ts_status ts_draw_moving(const ts_drawing_subject *subject, const ts_draw_options *options,
                         ts_buffer *out)
{
    ts_arena *arena = ts_arena_open(options->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_scene  scene  = ts_scene_of(subject, options, arena);
    ts_face   face   = {.scene = &scene, .px = WIDTH};
    moving    it     = {.face = &face, .scene = &scene, .out = out};
    ts_status status = ts_face_measure(&face);
    if (status == TS_OK && (!measure(&it) || !place_names(&it, arena)))
        status = ts_arena_failed(arena) ? TS_NO_MEMORY : TS_NOT_UNDERSTOOD;
    if (status == TS_OK) {
        face.px = it.scale;
        ts_face_trace_gears(&face);
        write(&it);
        if (ts_arena_failed(arena) || out->failed)
            status = TS_NO_MEMORY;
    }
    ts_arena_close(arena);
    return status;
}
