/* How are two views compared without reading their numbers? */
#include "apps/serve/view_delta.h"

#include <stdlib.h>
#include <string.h>

typedef struct range {
    const char *at;
    size_t      length;
} range;

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

static range value_at(const char **at)
{
    const char *from = skip_space(*at), *to = skip_value(from);
    *at = to;
    while (to > from && (to[-1] == ' ' || to[-1] == '\n'))
        to--;
    return (range){from, (size_t)(to - from)};
}

/* The next member of an object whose brace, or whose last member, lies before *at. */
static bool next_member(const char **at, range *key, range *value)
{
    const char *here = skip_space(*at);
    if (*here == ',')
        here = skip_space(here + 1);
    if (*here != '"')
        return false;
    const char *end = skip_string(here);
    *key            = (range){here, (size_t)(end - here)};
    here            = skip_space(end);
    if (*here != ':')
        return false;
    here++;
    *value = value_at(&here);
    *at    = here;
    return true;
}

static bool next_item(const char **at, range *item)
{
    const char *here = skip_space(*at);
    if (*here == ',')
        here = skip_space(here + 1);
    if (*here == ']' || *here == '\0')
        return false;
    *item = value_at(&here);
    *at   = here;
    return true;
}

static bool same(range a, range b)
{
    return a.length == b.length && memcmp(a.at, b.at, a.length) == 0;
}

static bool find_member(const growing *in, range key, range *value)
{
    const char *at = skip_space(in->bytes) + 1;
    range       other;
    while (next_member(&at, &other, value))
        if (same(other, key))
            return true;
    return false;
}

/* ---- the difference ------------------------------------------------------------------------- */

static size_t count_items(range list)
{
    const char *at = list.at + 1;
    range       item;
    size_t      count = 0;
    while (next_item(&at, &item))
        count++;
    return count;
}

static void add_key(growing *into, range key)
{
    if (into->length > 0)
        growing_text(into, ", ");
    growing_add(into, key.at, key.length);
    growing_text(into, ": ");
}

/* Items that differ, of two lists of one length. */
static void add_parts(growing *parts, range key, range before, range after)
{
    const char *x = before.at + 1, *y = after.at + 1;
    range       a, b;
    bool        any = false;
    add_key(parts, key);
    growing_text(parts, "{");
    for (long long i = 0; next_item(&x, &a) && next_item(&y, &b); i++) {
        if (same(a, b))
            continue;
        growing_text(parts, any ? ", \"" : "\"");
        growing_number(parts, i);
        growing_text(parts, "\": ");
        growing_add(parts, b.at, b.length);
        any = true;
    }
    growing_text(parts, "}");
}

static bool write_delta(const view_kept *before, const growing *fresh, growing *out)
{
    growing     whole = {0}, parts = {0};
    const char *at = skip_space(fresh->bytes) + 1, *beside = skip_space(before->text.bytes) + 1;
    range       key, value, other, old;
    while (next_member(&at, &key, &value)) {
        /* Views are written in one order: what is looked for is nearly always the next. */
        const bool there = (next_member(&beside, &other, &old) && same(other, key)) ||
                           find_member(&before->text, key, &old);
        if (there && same(old, value))
            continue;
        if (there && *old.at == '[' && *value.at == '[' && count_items(old) == count_items(value)) {
            add_parts(&parts, key, old, value);
            continue;
        }
        add_key(&whole, key);
        growing_add(&whole, value.at, value.length);
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

static void read_sha(const growing *view, char *sha)
{
    static const char word[] = "\"sha256\"";
    range             value;
    sha[0] = '\0';
    if (view->length > 0 && find_member(view, (range){word, sizeof word - 1}, &value) &&
        value.length == VIEW_SHA_DIGITS + 2) {
        memcpy(sha, value.at + 1, VIEW_SHA_DIGITS);
        sha[VIEW_SHA_DIGITS] = '\0';
    }
}

static void keep(view_shelf *shelf, const growing *fresh)
{
    view_kept now = {.sha = ""};
    read_sha(fresh, now.sha);
    if (now.sha[0] == '\0')
        return;
    size_t place = 0;
    while (place < VIEWS_KEPT - 1 && strcmp(shelf->kept[place].sha, now.sha) != 0)
        place++;
    growing_add(&now.text, fresh->bytes, fresh->length);
    if (now.text.failed) {
        growing_forget(&now.text);
        return;
    }
    growing_forget(&shelf->kept[place].text);
    for (; place > 0; place--)
        shelf->kept[place] = shelf->kept[place - 1];
    shelf->kept[0] = now;
}

void view_delta_answer(view_shelf *shelf, const char *seen, growing *fresh, growing *out)
{
    bool done = false;
    for (size_t i = 0; i < VIEWS_KEPT && seen != NULL && seen[0] != '\0' && !done; i++)
        if (strcmp(shelf->kept[i].sha, seen) == 0) {
            done = write_delta(&shelf->kept[i], fresh, out);
            if (!done)
                growing_forget(out);
            break;
        }
    keep(shelf, fresh);
    if (done)
        growing_forget(fresh);
    else
        *out = *fresh;
}

void view_delta_forget(view_shelf *shelf)
{
    for (size_t i = 0; i < VIEWS_KEPT; i++)
        growing_forget(&shelf->kept[i].text);
    *shelf = (view_shelf){0};
}
