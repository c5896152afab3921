/* apps/serve/json_tree.h: the body of a request as a small tree (RFC 8259, strictly). */
#ifndef TS_APPS_SERVE_JSON_TREE_H
#define TS_APPS_SERVE_JSON_TREE_H

#include <stdbool.h>
#include <stddef.h>

typedef enum json_kind {
    JSON_NULL,
    JSON_FALSE,
    JSON_TRUE,
    JSON_NUMBER,
    JSON_STRING,
    JSON_ARRAY,
    JSON_OBJECT
} json_kind;

typedef struct json_node {
    json_kind   kind;
    const char *key;         /* in an object; ends with NUL         */
    const char *text;        /* JSON_STRING; ends with NUL          */
    size_t      length;      /* of text                             */
    double      number;      /* JSON_NUMBER: a whole one only       */
    size_t      first, next; /* index of a node; 0: none       */
} json_node;

typedef struct json_tree {
    json_node *nodes; /* [0] is the whole */
    size_t     count;
    char      *letters;
} json_tree;

/* False for anything but one JSON value: also for a key that stands twice, a number that is not
 * whole or above 2^53, a string with a NUL, bytes that are not UTF-8, more than 8 levels or 4096
 * values. */
bool json_tree_read(json_tree *tree, const char *bytes, size_t length);
void json_tree_forget(json_tree *tree);

/* NULL: there is none, or it is of another kind. */
const json_node *json_tree_item(const json_tree *tree, const json_node *of, const char *key,
                                json_kind kind);
const json_node *json_tree_first(const json_tree *tree, const json_node *of);
const json_node *json_tree_next(const json_tree *tree, const json_node *one);

#endif
