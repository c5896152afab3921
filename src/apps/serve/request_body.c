/* apps/serve/request_body.c: what does a request say? */
#include "apps/serve/request_body.h"

#include <stdbool.h>
#include <string.h>

#define LEVELS_MOST 8
#define VALUES_MOST 4096

/* Before the tree is built, so that nothing recurses deeper or takes more.  Bytes that are no JSON
 * may pass: the reader refuses them. */
static bool is_small(const char *bytes, size_t length)
{
    size_t level = 0, values = 1;
    bool   quoted = false;

    for (size_t i = 0; i < length && level <= LEVELS_MOST && values <= VALUES_MOST; i++) {
        const char c = bytes[i];

        if (quoted && c == '\\')
            i++;
        else if (c == '"')
            quoted = !quoted;
        else if (!quoted && (c == '[' || c == '{'))
            level++;
        else if (!quoted && (c == ']' || c == '}') && level > 0)
            level--;
        else if (!quoted && c == ',')
            values++;
    }
    return level <= LEVELS_MOST && values <= VALUES_MOST;
}

/* No value of a request has a fraction; what has one was not meant for this server. */
static bool is_whole(const json_t *value)
{
    const char   *key;
    const json_t *item;
    size_t        index;

    if (json_is_real(value))
        return false;
    json_array_foreach(value, index, item)
    {
        if (!is_whole(item))
            return false;
    }
    json_object_foreach((json_t *)value, key, item)
    {
        if (!is_whole(item))
            return false;
    }
    return true;
}

json_t *request_body_read(const char *bytes, size_t length)
{
    if (!is_small(bytes, length))
        return NULL;
    json_t *whole = json_loadb(bytes, length, JSON_REJECT_DUPLICATES, NULL);
    if (json_is_object(whole) && is_whole(whole))
        return whole;
    json_decref(whole);
    return NULL;
}

const json_t *request_body_item(const json_t *of, const char *key, json_type type)
{
    const json_t *item = json_object_get(of, key);

    return item != NULL && json_typeof(item) == type ? item : NULL;
}
