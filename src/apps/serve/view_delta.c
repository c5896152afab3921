/* How are two views compared without reading their numbers? */
#include "apps/serve/view_delta.h"

#include <string.h>

/* ---- walking over JSON that the library wrote ----------------------------------------------- */

static const char *skip_space(const char *at)
{
    while (*at == ' ' || *at == '\n' || *at == '\t' || *at == '\r')
        at++;
    return at;
}

static const char *skip_string(const char *at)
{
    for (at++; *at != '\0' && *at != '"'; at++)
        if (*at == '\\' && at[1] != '\0')
            at++;
    return *at == '"' ? at + 1 : at;
}

/* To the next byte that shapes a value; numbers, words, blanks and colons do not. */
static const char *skip_plain(const char *at)
{
    static const bool stops[256] = {['\0'] = true, ['"'] = true, ['{'] = true, ['}'] = true,
                                    ['['] = true,  [']'] = true, [','] = true};
    while (!stops[(unsigned char)*at])
        at++;
    return at;
}

/* Behind a value; a list or an object with all that is in it. */
static const char *skip_value(const char *at)
{
    for (size_t depth = 0;; at++) {
        at = skip_plain(at);
        while (*at == '"')
            at = skip_plain(skip_string(at));
        if (*at == '{' || *at == '[')
            depth++;
        else if (*at == '\0' || depth == 0) /* a comma, or what ends the list around it */
            return at;
        else if (*at != ',' && --depth == 0)
            return at + 1;
    }
}

/* ---- where everything stands ---------------------------------------------------------------- */

/* Bytes of a view, from the first of its text. */
typedef struct span {
    size_t at, length;
} span;

typedef struct member {
    span   key, value;
    size_t first, count; /* of a list: its items among all */
    bool   list;
} member;

static size_t member_count(const view_kept *of)
{
    return of->members.length / sizeof(member);
}

static member member_of(const view_kept *of, size_t index)
{
    member one;
    memcpy(&one, of->members.bytes + index * sizeof one, sizeof one);
    return one;
}

static span item_of(const view_kept *of, size_t index)
{
    span one;
    memcpy(&one, of->items.bytes + index * sizeof one, sizeof one);
    return one;
}

static bool same(const view_kept *a, span x, const view_kept *b, span y)
{
    return x.length == y.length &&
           memcmp(a->text.bytes + x.at, b->text.bytes + y.at, x.length) == 0;
}

/* The value that begins at `from`; `like` is one that stood at its place in another view, and where
 * its bytes stand again it ends with them. */
static span value_at(const view_kept *of, size_t from, const view_kept *other, const span *like)
{
    const char *at = of->text.bytes + from;
    if (like != NULL && like->length <= of->text.length - from &&
        memcmp(at, other->text.bytes + like->at, like->length) == 0) {
        const char *behind = skip_space(at + like->length);
        if (*behind == ',' || *behind == ']' || *behind == '}')
            return (span){from, like->length};
    }
    const char *to = skip_value(at);
    while (to > at && (to[-1] == ' ' || to[-1] == '\n'))
        to--;
    return (span){from, (size_t)(to - at)};
}

/* Items of the list whose bracket stands at one->value.at; `near` is the same member of `other`. */
static void index_list(view_kept *of, member *one, const view_kept *other, const member *near)
{
    const char *text = of->text.bytes, *at = skip_space(text + one->value.at + 1);
    one->list  = true;
    one->first = of->items.length / sizeof(span);
    for (one->count = 0; *at != ']' && *at != '\0'; one->count++) {
        const bool there = near != NULL && near->list && one->count < near->count;
        const span like  = there ? item_of(other, near->first + one->count) : (span){0, 0};
        const span item  = value_at(of, (size_t)(at - text), other, there ? &like : NULL);
        growing_add(&of->items, (const char *)&item, sizeof item);
        at = skip_space(text + item.at + item.length);
        if (*at == ',')
            at = skip_space(at + 1);
    }
    one->value.length = (size_t)(at - text) - one->value.at + (*at == ']');
}

/* Walks over a view once.  What reads as in `other` (NULL: none) is passed over at once. */
static bool index_view(view_kept *of, const view_kept *other)
{
    const char *text = of->text.bytes, *at = skip_space(text);
    at = skip_space(*at == '{' ? at + 1 : at);
    for (size_t i = 0; *at == '"'; i++) {
        const char  *end  = skip_string(at);
        const bool   any  = other != NULL && i < member_count(other);
        const member near = any ? member_of(other, i) : (member){.list = false};
        member       one  = {.key = {(size_t)(at - text), (size_t)(end - at)}};
        const bool   like = any && same(of, one.key, other, near.key);
        at                = skip_space(end);
        at                = skip_space(*at == ':' ? at + 1 : at);
        one.value.at      = (size_t)(at - text);
        if (*at == '[')
            index_list(of, &one, other, like ? &near : NULL);
        else
            one.value = value_at(of, one.value.at, other, like ? &near.value : NULL);
        growing_add(&of->members, (const char *)&one, sizeof one);
        at = skip_space(text + one.value.at + one.value.length);
        if (*at == ',')
            at = skip_space(at + 1);
    }
    return !of->members.failed && !of->items.failed;
}

static bool find_member(const view_kept *in, const char *key, size_t length, size_t beside,
                        member *out)
{
    for (size_t k = 0, count = member_count(in); k < count; k++) {
        *out = member_of(in, (beside + k) % count); /* views are written in one order */
        if (out->key.length == length && memcmp(in->text.bytes + out->key.at, key, length) == 0)
            return true;
    }
    return false;
}

/* ---- the difference ------------------------------------------------------------------------- */

static void add_span(growing *into, const view_kept *of, span one)
{
    growing_add(into, of->text.bytes + one.at, one.length);
}

static void add_key(growing *into, const view_kept *of, span key)
{
    if (into->length > 0)
        growing_text(into, ", ");
    add_span(into, of, key);
    growing_text(into, ": ");
}

/* Items that differ, of two lists of one length. */
static void add_parts(growing *parts, const view_kept *before, const member *old,
                      const view_kept *now, const member *one)
{
    bool any = false;
    add_key(parts, now, one->key);
    growing_text(parts, "{");
    for (size_t i = 0; i < one->count; i++) {
        const span item = item_of(now, one->first + i);
        if (same(before, item_of(before, old->first + i), now, item))
            continue;
        growing_text(parts, any ? ", \"" : "\"");
        growing_number(parts, (long long)i);
        growing_text(parts, "\": ");
        add_span(parts, now, item);
        any = true;
    }
    growing_text(parts, "}");
}

static bool write_delta(const view_kept *before, const view_kept *now, growing *out)
{
    growing whole = {0}, parts = {0};
    for (size_t i = 0; i < member_count(now); i++) {
        const member one = member_of(now, i);
        member       old;
        const bool   there =
            find_member(before, now->text.bytes + one.key.at, one.key.length, i, &old);
        if (there && same(before, old.value, now, one.value))
            continue;
        if (there && old.list && one.list && old.count == one.count) {
            add_parts(&parts, before, &old, now, &one);
            continue;
        }
        add_key(&whole, now, one.key);
        add_span(&whole, now, one.value);
    }
    growing_text(out, "{\"seen\": \"");
    growing_text(out, before->sha);
    growing_text(out, "\", \"whole\": {");
    growing_add(out, whole.length > 0 ? whole.bytes : "", whole.length);
    growing_text(out, "}, \"parts\": {");
    growing_add(out, parts.length > 0 ? parts.bytes : "", parts.length);
    growing_text(out, "}}\n");
    const bool good = !whole.failed && !parts.failed && !out->failed;
    growing_forget(&whole);
    growing_forget(&parts);
    return good;
}

/* ---- what is kept --------------------------------------------------------------------------- */

static void forget(view_kept *one)
{
    growing_forget(&one->text);
    growing_forget(&one->members);
    growing_forget(&one->items);
    one->sha[0] = '\0';
}

static bool read_sha(view_kept *view)
{
    static const char word[] = "\"sha256\"";
    member            found;
    if (!find_member(view, word, sizeof word - 1, 0, &found) ||
        found.value.length != VIEW_SHA_DIGITS + 2)
        return false;
    memcpy(view->sha, view->text.bytes + found.value.at + 1, VIEW_SHA_DIGITS);
    view->sha[VIEW_SHA_DIGITS] = '\0';
    return true;
}

/* `now` is taken over. */
static void keep(view_shelf *shelf, view_kept *now)
{
    size_t place = 0;
    while (place < VIEWS_KEPT - 1 && strcmp(shelf->kept[place].sha, now->sha) != 0)
        place++;
    forget(&shelf->kept[place]);
    for (; place > 0; place--)
        shelf->kept[place] = shelf->kept[place - 1];
    shelf->kept[0] = *now;
}

static const view_kept *find_seen(const view_shelf *shelf, const char *seen)
{
    for (size_t i = 0; i < VIEWS_KEPT && seen != NULL && seen[0] != '\0'; i++)
        if (strcmp(shelf->kept[i].sha, seen) == 0)
            return &shelf->kept[i];
    return NULL;
}

void view_delta_answer(view_shelf *shelf, const char *seen, growing *fresh, growing *out)
{
    const view_kept *before = find_seen(shelf, seen);
    view_kept        now    = {.text = *fresh};
    const bool       sound  = fresh->length > 0 && index_view(&now, before) && read_sha(&now);
    *fresh                  = (growing){0};
    if (!sound) {
        *out     = now.text;
        now.text = (growing){0};
        forget(&now);
        return;
    }
    if (before == NULL || !write_delta(before, &now, out)) {
        growing_forget(out);
        growing_add(out, now.text.bytes, now.text.length);
    }
    keep(shelf, &now);
}

void view_delta_forget(view_shelf *shelf)
{
    for (size_t i = 0; i < VIEWS_KEPT; i++)
        forget(&shelf->kept[i]);
}
