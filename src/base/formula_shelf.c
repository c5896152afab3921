/* base/formula_shelf.c: which formula texts were read before? */
#include "base/formula_shelf.h"

#ifndef TS_CHECKED

bool ts_formula_reread(const char *text, ts_formula_node *nodes, ts_formula_tree *tree,
                       ts_formula_fault *fault)
{
    return ts_formula_read(text, nodes, tree, fault);
}

#else

#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

/* A text that was read without a fault; never changed and never freed once it stands. */
typedef struct volume {
    ts_formula_tree  tree;
    ts_formula_node *nodes;
    char             text[];
} volume;

#define PLACES 4096 /* a power of two, some times the number of texts in the program */
#define STEPS  8    /* places tried for a text                                       */

static _Atomic(const volume *) shelf[PLACES];

/* Texts are literals, so their address finds them; the letters are compared all the same, for a
 * text made at run time may come to stand where another one was. */
static size_t place_of(const char *text)
{
    const uint64_t mixed = (uint64_t)(uintptr_t)text * UINT64_C(0x9E3779B97F4A7C15);

    return (size_t)(mixed >> 52);
}

static const volume *copy_of(const ts_formula_tree *tree)
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
    return copied;
}

/* Another thread may have been faster; then its copy stands and ours goes. */
static void keep(size_t place, const ts_formula_tree *tree)
{
    const volume *none = NULL, *copied = copy_of(tree);

    if (copied != NULL &&
        !atomic_compare_exchange_strong_explicit(&shelf[place], &none, copied, memory_order_release,
                                                 memory_order_relaxed))
        free((void *)copied);
}

bool ts_formula_reread(const char *text, ts_formula_node *nodes, ts_formula_tree *tree,
                       ts_formula_fault *fault)
{
    const size_t first = place_of(text);
    size_t       step  = 0;

    for (; step < STEPS; step++) {
        const volume *found =
            atomic_load_explicit(&shelf[(first + step) % PLACES], memory_order_acquire);
        if (found == NULL)
            break;
        if (strcmp(found->text, text) != 0)
            continue;
        *tree      = found->tree;
        tree->text = text;
        return true;
    }
    if (!ts_formula_read(text, nodes, tree, fault))
        return false;
    if (step < STEPS)
        keep((first + step) % PLACES, tree);
    return true;
}

#endif
