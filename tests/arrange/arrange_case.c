/* arrange/arrange_case.c: is this file a list of arrangement problems, and what do they say? */
#include "arrange/arrange_case.h"

#include <errno.h>
#include <math.h>
#include <stdarg.h>
#include <string.h>

#define PI 3.14159265358979323846

typedef struct reader {
    const char    *path;
    size_t         number; /* of the problem, from 1 */
    const char    *name;
    ts_arena      *arena;
    arrange_fault *fault;
    bool           failed;
    char           place[160]; /* of the object at hand: "boxes[0]" or "" */
    size_t         conditions;
} reader;

__attribute__((format(printf, 2, 3))) static void refuse(reader *r, const char *format, ...)
{
    char    says[320];
    va_list words;

    if (r->failed)
        return;
    r->failed = true;
    va_start(words, format);
    vsnprintf(says, sizeof says, format, words);
    va_end(words);
    snprintf(r->fault->says, sizeof r->fault->says, "%.120s: problem %zu (%.60s): %.300s", r->path,
             r->number, r->name != NULL ? r->name : "without a name", says);
}

static const json_t *field(reader *r, const json_t *object, const char *name)
{
    const json_t *found = json_object_get(object, name);
    if (found == NULL)
        refuse(r, "%s%s\"%s\" is missing", r->place, r->place[0] != '\0' ? ": " : "", name);
    return found;
}

static void refuse_field(reader *r, const char *name, const char *expected)
{
    refuse(r, "%s%s\"%s\": expected %s", r->place, r->place[0] != '\0' ? ": " : "", name, expected);
}

static double number_from(reader *r, const json_t *value, const char *name, double least,
                          double most, const char *expected)
{
    const double number = json_number_value(value);
    if (value == NULL)
        return least;
    if (!json_is_number(value) || !isfinite(number) || number < least || number > most) {
        refuse_field(r, name, expected);
        return least;
    }
    return number;
}

static double any_number(reader *r, const json_t *object, const char *name)
{
    return number_from(r, field(r, object, name), name, -1e12, 1e12, "a number");
}

static double not_negative(reader *r, const json_t *object, const char *name)
{
    return number_from(r, field(r, object, name), name, 0.0, 1e12, "a number from 0 up");
}

static double positive(reader *r, const json_t *object, const char *name)
{
    return number_from(r, field(r, object, name), name, 1e-12, 1e12, "a number above 0");
}

static uint32_t whole_from(reader *r, const json_t *value, const char *name, int least, int most)
{
    char expected[64];

    snprintf(expected, sizeof expected, "a whole number from %d to %d", least, most);
    const double number = number_from(r, value, name, least, most, expected);
    if (number != floor(number))
        refuse_field(r, name, expected);
    return (uint32_t)number;
}

static const json_t *list(reader *r, const json_t *object, const char *name, size_t least,
                          size_t most)
{
    const json_t *found = field(r, object, name);
    if (found == NULL)
        return NULL;
    if (!json_is_array(found) || json_array_size(found) < least || json_array_size(found) > most) {
        char expected[80];
        if (least == most)
            snprintf(expected, sizeof expected, "a list of %zu", least);
        else
            snprintf(expected, sizeof expected, "a list of %zu to %zu", least, most);
        refuse_field(r, name, expected);
        return NULL;
    }
    return found;
}

static const char *word(reader *r, const json_t *object, const char *name)
{
    const json_t *found = field(r, object, name);
    if (found != NULL && !json_is_string(found))
        refuse_field(r, name, "a word");
    return found != NULL && json_is_string(found) ? json_string_value(found) : "";
}

static const char *copy_word(reader *r, const json_t *object, const char *name)
{
    const char *found = word(r, object, name);
    const char *copy  = ts_arena_copy(r->arena, found, strlen(found));
    return copy != NULL ? copy : "";
}

/* The index of the word among those that will do. */
static int choose(reader *r, const char *name, const char *found, const char *const words[],
                  int count)
{
    char   expected[120] = "one of";
    size_t at            = strlen(expected);

    for (int i = 0; i < count; i++)
        if (strcmp(found, words[i]) == 0)
            return i;
    for (int i = 0; i < count && at < sizeof expected; i++)
        at += (size_t)snprintf(expected + at, sizeof expected - at, " \"%s\"", words[i]);
    refuse_field(r, name, expected);
    return 0;
}

static bool flag(reader *r, const json_t *object, const char *name)
{
    const json_t *found = field(r, object, name);
    if (found != NULL && !json_is_boolean(found))
        refuse_field(r, name, "true or false");
    return json_is_true(found);
}

static const json_t *object_in(reader *r, const json_t *object, const char *name)
{
    const json_t *found = field(r, object, name);
    if (found != NULL && !json_is_object(found))
        refuse_field(r, name, "an object");
    return found;
}

/* A list per condition, each times `scale`; not_zero asks for numbers above 0. */
static const double *per_condition(reader *r, const json_t *object, const char *name, double scale,
                                   bool not_zero)
{
    const json_t *found  = list(r, object, name, r->conditions, r->conditions);
    double       *values = TS_TAKE(r->arena, double, r->conditions);

    for (size_t c = 0; found != NULL && values != NULL && c < r->conditions; c++)
        values[c] = scale * number_from(r, json_array_get(found, c), name, not_zero ? 1e-12 : -1e12,
                                        1e12, not_zero ? "numbers above 0" : "numbers");
    return values;
}

static uint32_t faces_from(reader *r, const json_t *object, const char *name)
{
    static const char *const words[] = {"front", "rear"};
    const json_t            *found   = list(r, object, name, 0, 2);
    uint32_t                 faces   = 0;

    for (size_t i = 0; found != NULL && i < json_array_size(found); i++) {
        const char *face = json_string_value(json_array_get(found, i));
        faces |= 1u << choose(r, name, face != NULL ? face : "", words, 2);
    }
    return faces;
}

/* ---- accessories ------------------------------------------------------------------------------
 */

static uint32_t boxes_from(reader *r, const json_t *object, const ts_arrange_box *boxes,
                           size_t box_count)
{
    const json_t *found = list(r, object, "boxes", 0, 64);
    uint32_t      set   = 0;

    for (size_t i = 0; found != NULL && i < json_array_size(found); i++) {
        const char *name = json_string_value(json_array_get(found, i));
        size_t      b    = 0;
        while (b < box_count && (name == NULL || strcmp(boxes[b].name, name) != 0))
            b++;
        if (b < box_count)
            set |= 1u << b; /* a spool without a box cannot be chosen */
        else if (name == NULL)
            refuse_field(r, "boxes", "names of spools");
    }
    return set;
}

static void read_bands(reader *r, const json_t *object, ts_arrange_accessory *a)
{
    const json_t *found = list(r, object, "speed", r->conditions, r->conditions);
    double       *least = TS_TAKE(r->arena, double, r->conditions);
    double       *most  = TS_TAKE(r->arena, double, r->conditions);
    const double  scale = 2.0 * PI / 60.0;

    a->speed_least = least;
    a->speed_most  = most;
    for (size_t c = 0; found != NULL && least != NULL && most != NULL && c < r->conditions; c++) {
        const json_t *band = json_array_get(found, c);
        if (!json_is_array(band) || json_array_size(band) != 2) {
            refuse_field(r, "speed", "a pair of numbers for each condition");
            return;
        }
        least[c] = scale * number_from(r, json_array_get(band, 0), "speed", -1e12, 1e12, "numbers");
        most[c]  = scale * number_from(r, json_array_get(band, 1), "speed", -1e12, 1e12, "numbers");
    }
}

static void read_accessory(reader *r, const json_t *object, double pad, const ts_arrange_box *boxes,
                           size_t box_count, ts_arrange_accessory *a)
{
    static const char *const senses[] = {"either", "ccw", "cw"};
    static const char *const sides[]  = {"any", "left", "right"};
    static const int         sense[]  = {0, 1, -1};

    a->name        = copy_word(r, object, "name");
    a->boxes       = boxes_from(r, object, boxes, box_count);
    a->faces       = faces_from(r, object, "faces");
    a->sense       = sense[choose(r, "sense", word(r, object, "sense"), senses, 3)];
    a->side        = (ts_arrange_side)choose(r, "side", word(r, object, "side"), sides, 3);
    a->body_radius = 1e-3 * not_negative(r, object, "body_radius");
    a->pad_mass    = pad;
    a->power       = per_condition(r, object, "power", 1e3, false);
    read_bands(r, object, a);
}

/* ---- boxes ------------------------------------------------------------------------------------
 */

static uint32_t module_index(reader *r, arrange_case *c, double m)
{
    ts_arrange_problem *p = &c->problem;
    for (uint32_t i = 0; i < p->module_count; i++)
        if (c->model.modules[i] == m)
            return i;
    if (p->module_count == sizeof c->model.modules / sizeof c->model.modules[0]) {
        refuse_field(r, "modules", "no more than 16 different ones");
        return 0;
    }
    c->model.modules[p->module_count] = m;
    return (uint32_t)p->module_count++;
}

static void read_choices(reader *r, const json_t *object, arrange_case *c, ts_arrange_box *box)
{
    const json_t      *modules = list(r, object, "modules", 0, 64);
    const json_t      *teeth   = list(r, object, "z_in", 0, 400);
    const double      *speed   = per_condition(r, object, "n_in", 2.0 * PI / 60.0, true);
    const size_t       ms = json_array_size(modules), zs = json_array_size(teeth);
    ts_arrange_choice *choices = TS_TAKE(r->arena, ts_arrange_choice, ms * zs);

    for (size_t i = 0; choices != NULL && i < ms; i++) {
        const double   m = 1e-3 * number_from(r, json_array_get(modules, i), "modules", 1e-6, 1e3,
                                              "numbers above 0");
        const uint32_t module = module_index(r, c, m);
        for (size_t k = 0; k < zs; k++)
            choices[i * zs + k] = (ts_arrange_choice){
                .module = module,
                .z_in   = whole_from(r, json_array_get(teeth, k), "z_in", 1, TS_ARRANGE_TEETH),
                .speed  = speed};
    }
    box->choices      = choices;
    box->choice_count = (uint32_t)(ms * zs);
}

static void read_box(reader *r, const json_t *object, const json_t *masses, arrange_case *c,
                     ts_arrange_box *box)
{
    const double  sense = any_number(r, object, "input_sense");
    const json_t *body  = object_in(r, object, "input_body");

    if (sense != 1.0 && sense != -1.0)
        refuse_field(r, "input_sense", "1 or -1");
    box->name          = copy_word(r, object, "spool");
    box->input_sense   = sense > 0.0 ? 1 : -1;
    box->radius        = 1e-3 * positive(r, object, "R_box");
    box->wrap_most     = PI / 180.0 * not_negative(r, object, "wrap_max");
    box->side_most     = PI / 180.0 * not_negative(r, object, "side_max");
    box->input_faces   = faces_from(r, object, "input_faces");
    box->input_body[0] = 1e-3 * not_negative(r, body, "front");
    box->input_body[1] = 1e-3 * not_negative(r, body, "rear");
    box->mass          = not_negative(r, object, "box_kg") + not_negative(r, masses, "shaft");
    box->shaft_mass    = not_negative(r, masses, "shaft");
    box->idler_mass    = not_negative(r, masses, "idler");
    box->casing        = 1e3 * not_negative(r, masses, "casing");
    read_choices(r, object, c, box);
}

/* ---- problems ---------------------------------------------------------------------------------
 */

static void read_rating(reader *r, const json_t *instance, const json_t *masses, arrange_case *c)
{
    const json_t       *rating = object_in(r, instance, "rating");
    ts_arrange_problem *p      = &c->problem;

    c->model.K_bend        = 1e-6 * not_negative(r, rating, "K_bend");
    c->model.K_cont        = 1e-6 * not_negative(r, rating, "K_cont");
    c->model.Y0            = any_number(r, rating, "Y0");
    c->model.Y1            = any_number(r, rating, "Y1");
    c->model.reversed_rate = positive(r, rating, "reversed");
    c->model.density       = 1e9 * not_negative(r, masses, "gear");
    p->width_step          = 1e-3 * positive(r, rating, "width_step");
    p->width_least         = 1e-3 * not_negative(r, rating, "width_min");
    p->width_over_diameter = not_negative(r, rating, "width_over_d");
    if (p->width_least / p->width_step > 50000.0)
        refuse_field(r, "width_step", "no less than a 50000th of width_min");
    if (c->model.reversed_rate > 1.0)
        refuse_field(r, "reversed", "no more than 1");
}

static void read_idlers(reader *r, const json_t *instance, ts_arrange_problem *p)
{
    const json_t *found = list(r, instance, "idler_teeth", 0, 400);
    uint32_t     *teeth = TS_TAKE(r->arena, uint32_t, json_array_size(found));

    for (size_t i = 0; teeth != NULL && i < json_array_size(found); i++)
        teeth[i] = whole_from(r, json_array_get(found, i), "idler_teeth", 1, TS_ARRANGE_TEETH);
    p->idler_teeth       = teeth;
    p->idler_teeth_count = json_array_size(found);
    p->idlers_in_row = whole_from(r, field(r, instance, "max_idlers_in_row"), "max_idlers_in_row",
                                  0, TS_ARRANGE_IDLERS);
}

static void read_lists(reader *r, const json_t *instance, const json_t *masses, arrange_case *c)
{
    const json_t         *accessories = list(r, instance, "accessories", 1, TS_ARRANGE_ACCESSORIES);
    const json_t         *boxes       = list(r, instance, "boxes", 1, TS_ARRANGE_BOXES);
    const double          pad         = not_negative(r, masses, "pad");
    const size_t          box_count = json_array_size(boxes), count = json_array_size(accessories);
    ts_arrange_box       *all_boxes = TS_TAKE(r->arena, ts_arrange_box, box_count);
    ts_arrange_accessory *all       = TS_TAKE(r->arena, ts_arrange_accessory, count);

    if (all_boxes == NULL || all == NULL)
        return;
    for (size_t i = 0; i < box_count; i++) {
        snprintf(r->place, sizeof r->place, "boxes[%zu]", i);
        read_box(r, json_array_get(boxes, i), masses, c, &all_boxes[i]);
    }
    for (size_t i = 0; i < count; i++) {
        snprintf(r->place, sizeof r->place, "accessories[%zu]", i);
        read_accessory(r, json_array_get(accessories, i), pad, all_boxes, box_count, &all[i]);
    }
    r->place[0]                = '\0';
    c->problem.accessories     = all;
    c->problem.accessory_count = count;
    c->problem.boxes           = all_boxes;
    c->problem.box_count       = box_count;
}

static void read_instance(reader *r, const json_t *instance, arrange_case *c)
{
    static const char *const clearances[] = {"sector", "chord"};
    ts_arrange_problem      *p            = &c->problem;

    if (json_is_string(json_object_get(instance, "name")))
        r->name = c->name = copy_word(r, instance, "name");
    r->conditions      = json_array_size(list(r, instance, "conditions", 1, 64));
    p->condition_count = r->conditions;
    p->clearance =
        (ts_arrange_clearance)choose(r, "clearance", word(r, instance, "clearance"), clearances, 2);
    p->gap     = 1e-3 * not_negative(r, instance, "gap_mm");
    p->z_least = whole_from(r, field(r, instance, "z_min"), "z_min", 1, TS_ARRANGE_TEETH);
    p->z_most  = whole_from(r, field(r, instance, "z_max"), "z_max", 1, TS_ARRANGE_TEETH);
    p->hunting = flag(r, instance, "hunting");
    read_idlers(r, instance, p);
    const json_t *masses = object_in(r, instance, "mass");
    if (r->failed)
        return;
    read_rating(r, instance, masses, c);
    read_lists(r, instance, masses, c);
    p->modules = c->model.modules;
    p->model   = closed_model_of(&c->model);
    if (ts_arena_failed(r->arena))
        refuse(r, "no memory");
}

static void read_answer(reader *r, const json_t *answer, arrange_case *c)
{
    c->has_answer = answer != NULL;
    if (answer == NULL)
        return;
    snprintf(r->place, sizeof r->place, "answer");
    c->feasible         = flag(r, answer, "feasible");
    c->mass             = c->feasible ? any_number(r, answer, "mass") : 0.0;
    const json_t *count = json_object_get(answer, "count");
    c->has_count        = count != NULL;
    if (count != NULL && (!json_is_integer(count) || json_integer_value(count) < 0))
        refuse_field(r, "count", "a whole number from 0 up");
    c->count    = count != NULL ? (uint64_t)json_integer_value(count) : 0;
    r->place[0] = '\0';
}

static arrange_case *read_all(reader *r, const json_t *root, size_t *count)
{
    const json_t *problems = json_object_get(root, "problems");
    *count                 = json_array_size(problems);
    if (!json_is_array(problems)) {
        snprintf(r->fault->says, sizeof r->fault->says,
                 "%.400s: expected an object with a list \"problems\"", r->path);
        return NULL;
    }
    arrange_case *cases = TS_TAKE(r->arena, arrange_case, *count);
    for (size_t i = 0; cases != NULL && i < *count && !r->failed; i++) {
        const json_t *entry    = json_array_get(problems, i);
        const json_t *instance = json_object_get(entry, "instance");
        r->number              = i + 1;
        r->name                = NULL;
        r->place[0]            = '\0';
        cases[i].name          = "without a name";
        if (!json_is_object(instance))
            refuse(r, "expected an object \"instance\"");
        else
            read_instance(r, instance, &cases[i]);
        if (!r->failed)
            read_answer(r, json_object_get(entry, "answer"), &cases[i]);
    }
    return r->failed ? NULL : cases;
}

arrange_case *arrange_cases_read(const char *path, ts_arena *arena, size_t *count,
                                 arrange_fault *fault)
{
    json_error_t broken;
    reader       r    = {.path = path, .arena = arena, .fault = fault};
    FILE        *file = fopen(path, "rb");

    if (file == NULL) {
        snprintf(fault->says, sizeof fault->says, "%.400s: %s", path, strerror(errno));
        return NULL;
    }
    json_t *root = json_loadf(file, JSON_REJECT_DUPLICATES, &broken);
    fclose(file);
    if (root == NULL) {
        snprintf(fault->says, sizeof fault->says, "%.240s:%d:%d: %s", path, broken.line,
                 broken.column, broken.text);
        return NULL;
    }
    arrange_case *cases = read_all(&r, root, count);
    json_decref(root);
    return cases;
}
