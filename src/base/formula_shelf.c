/* base/formula_shelf.c: which formula texts were read before? */
#include "base/formula_shelf.h"

#ifndef TS_CHECKED

bool ts_formula_reread(const char *text, ts_formula_node *nodes, ts_formula_tree *tree,
                       ts_formula_fault *fault)
{
    return ts_formula_read(text, nodes, tree, fault);
}

bool ts_formula_rework(const char *text, const ts_input *inputs, size_t count, ts_rounded *out)
{
    (void)text, (void)inputs, (void)count, (void)out;
    return false;
}

#else

#include "base/formula_bound.h"

#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

/* Which inputs stand for the symbols of a text: the names of the inputs, each with its end, and
 * the input of each node. */
typedef struct binding {
    size_t   count;
    char    *names;
    uint16_t stands[];
} binding;

/* A text that was read without a fault; never changed and never freed once it stands.  Its binding
 * is of the names that came first. */
typedef struct volume {
    ts_formula_tree          tree;
    ts_formula_node         *nodes;
    _Atomic(const binding *) bound;
    char                     text[];
} volume;

#define PLACES 4096 /* a power of two, some times the number of texts in the program */
#define STEPS  8    /* places tried for a text                                       */

static _Atomic(volume *) shelf[PLACES];

/* Texts are literals, so their address finds them; the letters are compared all the same, for a
 * text made at run time may come to stand where another one was. */
static size_t place_of(const char *text)
{
    const uint64_t mixed = (uint64_t)(uintptr_t)text * UINT64_C(0x9E3779B97F4A7C15);

    return (size_t)(mixed >> 52);
}

static volume *copy_of(const ts_formula_tree *tree)
{
    const size_t head   = sizeof(volume) + strlen(tree->text) + 1;
    const size_t begin  = (head + sizeof(double) - 1) / sizeof(double) * sizeof(double);
    volume      *copied = malloc(begin + tree->count * sizeof *tree->nodes);

    if (copied == NULL)
        return NULL;
    strcpy(copied->text, tree->text);
    copied->nodes = (ts_formula_node *)(void *)((char *)copied + begin);
    memcpy(copied->nodes, tree->nodes, tree->count * sizeof *tree->nodes);
    copied->tree       = *tree;
    copied->tree.nodes = copied->nodes;
    copied->tree.text  = copied->text; /* the caller's own may be gone when it is bound */
    atomic_init(&copied->bound, NULL);
    return copied;
}

/* Another thread may have been faster; then its copy stands and ours goes. */
static void keep(size_t place, const ts_formula_tree *tree)
{
    volume *none = NULL, *copied = copy_of(tree);

    if (copied != NULL &&
        !atomic_compare_exchange_strong_explicit(&shelf[place], &none, copied, memory_order_release,
                                                 memory_order_relaxed))
        free(copied);
}

/* The volume of a text or NULL; then `place` is where it may be put, or PLACES. */
static volume *find(const char *text, size_t *place)
{
    const size_t first = place_of(text);

    for (size_t step = 0; step < STEPS; step++) {
        *place        = (first + step) % PLACES;
        volume *found = atomic_load_explicit(&shelf[*place], memory_order_acquire);
        if (found == NULL || strcmp(found->text, text) == 0)
            return found;
    }
    *place = PLACES;
    return NULL;
}

bool ts_formula_reread(const char *text, ts_formula_node *nodes, ts_formula_tree *tree,
                       ts_formula_fault *fault)
{
    size_t        place = PLACES;
    const volume *found = find(text, &place);

    if (found != NULL) {
        *tree      = found->tree;
        tree->text = text;
        return true;
    }
    if (!ts_formula_read(text, nodes, tree, fault))
        return false;
    if (place < PLACES)
        keep(place, tree);
    return true;
}

static bool same_names(const binding *bound, const ts_input *inputs, size_t count)
{
    const char *kept = bound->names;

    if (bound->count != count)
        return false;
    for (size_t i = 0; i < count; i++, kept++) {
        const char *name = inputs[i].name;
        while (*name != '\0' && *name == *kept)
            name++, kept++;
        if (*name != *kept)
            return false;
    }
    return true;
}

static binding *binding_to(const ts_formula_tree *tree, const ts_input *inputs, size_t count)
{
    size_t letters = 0;
    for (size_t i = 0; i < count; i++)
        letters += strlen(inputs[i].name) + 1;

    binding *bound = malloc(sizeof *bound + tree->count * sizeof *bound->stands + letters);
    if (bound == NULL || !ts_formula_bind(tree, inputs, count, bound->stands)) {
        free(bound);
        return NULL;
    }
    bound->count = count;
    bound->names = (char *)(bound->stands + tree->count);
    char *end    = bound->names;
    for (size_t i = 0; i < count; i++)
        end = (char *)memccpy(end, inputs[i].name, '\0', letters);
    return bound;
}

/* As with volumes, the binding of the thread that was first stands. */
static const binding *bind(volume *to, const ts_input *inputs, size_t count)
{
    const binding *standing = atomic_load_explicit(&to->bound, memory_order_acquire);
    if (standing != NULL)
        return standing;

    binding *bound = binding_to(&to->tree, inputs, count);
    if (bound == NULL)
        return NULL;
    if (atomic_compare_exchange_strong_explicit(&to->bound, &standing, bound, memory_order_acq_rel,
                                                memory_order_acquire))
        return bound;
    free(bound);
    return standing;
}

bool ts_formula_rework(const char *text, const ts_input *inputs, size_t count, ts_rounded *out)
{
    size_t  place = PLACES;
    volume *found = find(text, &place);
    if (found == NULL)
        return false;

    const binding *bound = bind(found, inputs, count);
    if (bound == NULL || !same_names(bound, inputs, count))
        return false;
    *out = ts_formula_work_out_bound(&found->tree, bound->stands, inputs);
    return true;
}

#endif
