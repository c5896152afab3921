/* What is where? */
#include "apps/serve/asset.h"
#include "apps/serve/route.h"

#include <string.h>

#define EDIT_MOST ((size_t)64 * 1024)
#define TEXT_MOST                                                                                  \
    ((size_t)16 * 1024 * 1024) /* 4 MiB of file, each byte escaped at worst as six                 \
                                  would be more: such a file is refused here */

static const route routes[] = {
    {ROUTE_ENTER, "GET", "/", "key", 0, true},
    {ROUTE_STATE, "GET", "/api/state", NULL, 0, false},
    {ROUTE_ANSWER, "GET", "/api/answer", NULL, 0, false},
    {ROUTE_VIEW, "GET", "/api/view", "units|seen", 0, false},
    {ROUTE_PLACES, "GET", "/api/places", "accessory|units", 0, false},
    {ROUTE_WHY, "GET", "/api/why", "at|units", 0, false},
    {ROUTE_PICTURE, "GET", "/api/picture", "figure|condition|at|ground|units", 0, false},
    {ROUTE_COMPARE, "GET", "/api/compare", "from|units", 0, false},
    {ROUTE_SHEET, "GET", "/api/sheet", "accessory", 0, false},
    {ROUTE_PAST, "GET", "/api/past", NULL, 0, false},
    {ROUTE_PAST_VIEW, "GET", "/api/past/view", "from|units", 0, false},
    {ROUTE_EFFECTS, "GET", "/api/effects", NULL, 0, false},
    {ROUTE_BRIEF, "GET", "/api/brief", NULL, 0, false},
    {ROUTE_MOVING, "GET", "/api/moving", "condition|ground", 0, false},
    {ROUTE_START, "GET", "/api/start", "ambient|oil|to", 0, false},
    {ROUTE_SEIZE, "GET", "/api/seize", "accessory|condition|ramp|neck_of", 0, false},
    {ROUTE_WARM, "GET", "/api/warm", "soak|ambient|through", 0, false},
    {ROUTE_TWIST, "GET", "/api/twist", NULL, 0, false},
    {ROUTE_SOLIDS, "GET", "/api/solids", NULL, 0, false},
    {ROUTE_NOTATION, "GET", "/api/notation", NULL, 0, false},
    {ROUTE_EVENTS, "GET", "/api/events", NULL, 0, false},
    {ROUTE_ACT, "POST", "/api/act", NULL, EDIT_MOST, false},
    {ROUTE_UNDO, "POST", "/api/undo", NULL, EDIT_MOST, false},
    {ROUTE_REDO, "POST", "/api/redo", NULL, EDIT_MOST, false},
    {ROUTE_TEXT, "POST", "/api/text", NULL, TEXT_MOST, false},
    {ROUTE_TRY, "POST", "/api/try", NULL, TEXT_MOST, false},
    {ROUTE_ARRANGE, "POST", "/api/arrange", NULL, EDIT_MOST, false},
    {ROUTE_ARRANGE_VIEW, "GET", "/api/arrange/view", "answer|units", 0, false},
    {ROUTE_ARRANGE_STOP, "POST", "/api/arrange/stop", NULL, EDIT_MOST, false},
    {ROUTE_ARRANGE_TAKE, "POST", "/api/arrange/take", NULL, EDIT_MOST, false},
    {ROUTE_STOP, "POST", "/api/stop", NULL, EDIT_MOST, false},
};

#define COUNT (sizeof routes / sizeof routes[0])

static const route asset_route = {ROUTE_ASSET, "GET", "", NULL, 0, false};

const route *route_at(size_t index)
{
    return index < COUNT ? &routes[index] : NULL;
}

const route *route_find(const char *method, size_t method_length, const char *path,
                        size_t path_length, bool *method_fits)
{
    const route *found = NULL;
    for (size_t i = 0; i < COUNT && found == NULL; i++)
        if (strlen(routes[i].path) == path_length && memcmp(routes[i].path, path, path_length) == 0)
            found = &routes[i];
    if (found == NULL && asset_find(path, path_length) != NULL)
        found = &asset_route;
    *method_fits = found != NULL && strlen(found->method) == method_length &&
                   memcmp(found->method, method, method_length) == 0;
    return found;
}

bool route_takes(const route *at, const char *name, size_t length)
{
    const char *word = at->query;
    while (word != NULL && length > 0) {
        const size_t size = strcspn(word, "|");
        if (size == length && memcmp(word, name, length) == 0)
            return true;
        word = word[size] == '|' ? word + size + 1 : NULL;
    }
    return false;
}
