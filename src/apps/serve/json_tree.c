/* What does the body of a request say? */
#include "apps/serve/json_tree.h"

#include "apps/serve/utf8.h"

#include <stdlib.h>
#include <string.h>

enum { LEVELS_MOST = 8, NODES_MOST = 4096 };

typedef struct reading {
    json_tree  *tree;
    const char *at, *end;
    char       *letter; /* where the next decoded byte goes */
    int         level;
} reading;

static bool read_value(reading *r, size_t node);

static void skip_blanks(reading *r)
{
    while (r->at < r->end && (*r->at == ' ' || *r->at == '\t' || *r->at == '\n' || *r->at == '\r'))
        r->at++;
}

static bool take(reading *r, char byte)
{
    skip_blanks(r);
    if (r->at == r->end || *r->at != byte)
        return false;
    r->at++;
    return true;
}

/* ---- strings -------------------------------------------------------------------------------- */

static bool read_unit(reading *r, unsigned *unit)
{
    *unit = 0;
    if (r->end - r->at < 4)
        return false;
    for (int i = 0; i < 4; i++) {
        const char byte = *r->at++;
        const int  one  = byte >= '0' && byte <= '9'   ? byte - '0'
                          : byte >= 'a' && byte <= 'f' ? byte - 'a' + 10
                          : byte >= 'A' && byte <= 'F' ? byte - 'A' + 10
                                                       : -1;
        if (one < 0)
            return false;
        *unit = *unit * 16 + (unsigned)one;
    }
    return true;
}

static void put_code(reading *r, unsigned code)
{
    if (code < 0x80) {
        *r->letter++ = (char)code;
    } else if (code < 0x800) {
        *r->letter++ = (char)(0xC0 | (code >> 6));
        *r->letter++ = (char)(0x80 | (code & 0x3F));
    } else if (code < 0x10000) {
        *r->letter++ = (char)(0xE0 | (code >> 12));
        *r->letter++ = (char)(0x80 | ((code >> 6) & 0x3F));
        *r->letter++ = (char)(0x80 | (code & 0x3F));
    } else {
        *r->letter++ = (char)(0xF0 | (code >> 18));
        *r->letter++ = (char)(0x80 | ((code >> 12) & 0x3F));
        *r->letter++ = (char)(0x80 | ((code >> 6) & 0x3F));
        *r->letter++ = (char)(0x80 | (code & 0x3F));
    }
}

/* Behind \u: never longer in UTF-8 than the escape was. */
static bool read_code(reading *r)
{
    unsigned high, low;
    if (!read_unit(r, &high) || high == 0 || (high >= 0xDC00 && high <= 0xDFFF))
        return false;
    if (high < 0xD800 || high > 0xDFFF) {
        put_code(r, high);
        return true;
    }
    if (r->end - r->at < 6 || r->at[0] != '\\' || r->at[1] != 'u')
        return false;
    r->at += 2;
    if (!read_unit(r, &low) || low < 0xDC00 || low > 0xDFFF)
        return false;
    put_code(r, 0x10000 + ((high - 0xD800) << 10) + (low - 0xDC00));
    return true;
}

static bool read_escape(reading *r)
{
    static const char from[] = "\"\\/bfnrt", to[] = "\"\\/\b\f\n\r\t";
    if (r->at == r->end)
        return false;
    const char byte = *r->at++;
    if (byte == 'u')
        return read_code(r);
    const char *found = byte != '\0' ? strchr(from, byte) : NULL;
    if (found == NULL)
        return false;
    *r->letter++ = to[found - from];
    return true;
}

static bool read_string(reading *r, const char **text, size_t *length)
{
    if (!take(r, '"'))
        return false;
    char *begin = r->letter;
    while (r->at < r->end && *r->at != '"') {
        const size_t size = utf8_length(r->at, (size_t)(r->end - r->at));
        if (size == 0 || (unsigned char)*r->at < 0x20)
            return false;
        if (*r->at == '\\') {
            r->at++;
            if (!read_escape(r))
                return false;
            continue;
        }
        memcpy(r->letter, r->at, size);
        r->letter += size;
        r->at += size;
    }
    if (r->at == r->end)
        return false;
    r->at++;
    *text        = begin;
    *length      = (size_t)(r->letter - begin);
    *r->letter++ = '\0';
    return true;
}

/* ---- values --------------------------------------------------------------------------------- */

static size_t new_node(reading *r)
{
    if (r->tree->count == NODES_MOST)
        return 0;
    r->tree->nodes[r->tree->count] = (json_node){0};
    return r->tree->count++;
}

static bool read_word(reading *r, json_node *node)
{
    static const struct {
        const char *word;
        json_kind   kind;
    } words[] = {{"null", JSON_NULL}, {"false", JSON_FALSE}, {"true", JSON_TRUE}};
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        const size_t length = strlen(words[i].word);
        if ((size_t)(r->end - r->at) >= length && memcmp(r->at, words[i].word, length) == 0) {
            r->at += length;
            node->kind = words[i].kind;
            return true;
        }
    }
    return false;
}

static bool read_number(reading *r, json_node *node)
{
    const bool negative = *r->at == '-';
    double     value    = 0.0;
    size_t     digits   = 0;
    r->at += negative;
    const bool zero = r->at < r->end && *r->at == '0';
    while (r->at < r->end && *r->at >= '0' && *r->at <= '9') {
        value = value * 10.0 + (*r->at++ - '0');
        digits++;
    }
    if (digits == 0 || (zero && digits > 1) || value > 9007199254740992.0)
        return false;
    if (r->at < r->end && (*r->at == '.' || *r->at == 'e' || *r->at == 'E'))
        return false;
    node->kind   = JSON_NUMBER;
    node->number = negative ? -value : value;
    return true;
}

static bool has_key(const json_tree *tree, size_t object, const char *key)
{
    for (size_t i = tree->nodes[object].first; i != 0; i = tree->nodes[i].next)
        if (strcmp(tree->nodes[i].key, key) == 0)
            return true;
    return false;
}

static bool read_items(reading *r, size_t parent, char end)
{
    size_t last = 0;
    if (take(r, end))
        return true;
    do {
        const char *key    = NULL;
        size_t      length = 0;
        if (end == '}' && (!read_string(r, &key, &length) || strlen(key) != length ||
                           has_key(r->tree, parent, key) || !take(r, ':')))
            return false;
        const size_t item = new_node(r);
        if (item == 0 || !read_value(r, item))
            return false;
        r->tree->nodes[item].key = key;
        if (last == 0)
            r->tree->nodes[parent].first = item;
        else
            r->tree->nodes[last].next = item;
        last = item;
    } while (take(r, ','));
    return take(r, end);
}

static bool read_value(reading *r, size_t node)
{
    skip_blanks(r);
    if (r->at == r->end || r->level == LEVELS_MOST)
        return false;
    json_node *out = &r->tree->nodes[node];
    switch (*r->at) {
    case '"':
        out->kind = JSON_STRING;
        return read_string(r, &out->text, &out->length);
    case '{':
    case '[': {
        const char end = *r->at++ == '{' ? '}' : ']';
        out->kind      = end == '}' ? JSON_OBJECT : JSON_ARRAY;
        r->level++;
        const bool good = read_items(r, node, end);
        r->level--;
        return good;
    }
    default:
        if (*r->at == '-' || (*r->at >= '0' && *r->at <= '9'))
            return read_number(r, out);
        return read_word(r, out);
    }
}

bool json_tree_read(json_tree *tree, const char *bytes, size_t length)
{
    *tree         = (json_tree){0};
    tree->nodes   = calloc(NODES_MOST, sizeof *tree->nodes);
    tree->letters = malloc(length + 1); /* a string and its NUL are no longer than in quotes */
    reading r     = {.tree = tree, .at = bytes, .end = bytes + length, .letter = tree->letters};
    bool    good  = tree->nodes != NULL && tree->letters != NULL;
    if (good)
        (void)new_node(&r);
    good = good && read_value(&r, 0);
    skip_blanks(&r);
    if (good && r.at == r.end)
        return true;
    json_tree_forget(tree);
    return false;
}

void json_tree_forget(json_tree *tree)
{
    free(tree->nodes);
    free(tree->letters);
    *tree = (json_tree){0};
}

const json_node *json_tree_item(const json_tree *tree, const json_node *of, const char *key,
                                json_kind kind)
{
    if (of->kind != JSON_OBJECT)
        return NULL;
    for (size_t i = of->first; i != 0; i = tree->nodes[i].next)
        if (strcmp(tree->nodes[i].key, key) == 0)
            return tree->nodes[i].kind == kind ? &tree->nodes[i] : NULL;
    return NULL;
}

const json_node *json_tree_first(const json_tree *tree, const json_node *of)
{
    return of->first != 0 ? &tree->nodes[of->first] : NULL;
}

const json_node *json_tree_next(const json_tree *tree, const json_node *one)
{
    return one->next != 0 ? &tree->nodes[one->next] : NULL;
}
