/* What must a request look like before anything else reads it? */
#include "apps/serve/head_guard.h"

#include "apps/serve/launch_key.h"

#include <string.h>

typedef struct span {
    const char *at;
    size_t      length;
} span;

/* The header fields that are looked at; each may stand once. */
typedef struct fields {
    span   host, origin, cookie, content_type, content_length, site;
    size_t lines;
} fields;

static guard_answer refuse(int status, const char *says)
{
    return (guard_answer){.verdict = GUARD_REFUSE, .status = status, .says = says};
}

static bool is(span text, const char *what)
{
    return text.length == strlen(what) && memcmp(text.at, what, text.length) == 0;
}

static char lower(char byte)
{
    return byte >= 'A' && byte <= 'Z' ? (char)(byte - 'A' + 'a') : byte;
}

static bool is_named(span name, const char *what)
{
    if (name.length != strlen(what))
        return false;
    for (size_t i = 0; i < name.length; i++)
        if (lower(name.at[i]) != what[i])
            return false;
    return true;
}

/* token of RFC 9110, 5.6.2 */
static bool is_token(span text)
{
    static const char others[] = "!#$%&'*+-.^_`|~";
    for (size_t i = 0; i < text.length; i++) {
        const char byte = text.at[i];
        const bool good = (byte >= '0' && byte <= '9') || (byte >= 'a' && byte <= 'z') ||
                          (byte >= 'A' && byte <= 'Z') ||
                          (byte != '\0' && strchr(others, byte) != NULL);
        if (!good)
            return false;
    }
    return text.length > 0;
}

/* ---- the bytes of the head ------------------------------------------------------------------ */

/* The length of the head with its empty line; 0: not there yet.  Only printable ASCII and CR LF
 * together may stand in it: no NUL, no lone CR or LF, no tabulator, nothing from 0x7F on. */
static size_t head_length(const char *bytes, size_t length, bool *sound)
{
    size_t i = 0;
    *sound   = true;
    while (i < length) {
        const unsigned char byte = (unsigned char)bytes[i];
        if (byte == '\r' && i + 1 == length)
            return 0;
        if (byte == '\r' && bytes[i + 1] == '\n') {
            if (i >= 2 && bytes[i - 1] == '\n')
                return i + 2;
            i += 2;
        } else if (byte >= 0x20 && byte <= 0x7E) {
            i++;
        } else {
            *sound = false;
            return 0;
        }
    }
    return 0;
}

static span next_line(span *rest)
{
    const char *end  = memchr(rest->at, '\r', rest->length);
    const span  line = {rest->at, (size_t)(end - rest->at)};
    rest->at += line.length + 2;
    rest->length -= line.length + 2;
    return line;
}

/* Up to the next blank, which is taken too. */
static span next_word(span *rest)
{
    const char  *blank = memchr(rest->at, ' ', rest->length);
    const size_t size  = blank != NULL ? (size_t)(blank - rest->at) : rest->length;
    const span   word  = {rest->at, size};
    const size_t taken = blank != NULL ? size + 1 : size;
    rest->at += taken;
    rest->length -= taken;
    return word;
}

/* ---- header fields -------------------------------------------------------------------------- */

static span without_blanks(span text)
{
    while (text.length > 0 && text.at[0] == ' ') {
        text.at++;
        text.length--;
    }
    while (text.length > 0 && text.at[text.length - 1] == ' ')
        text.length--;
    return text;
}

static span *field_for(fields *all, span name)
{
    return is_named(name, "host")             ? &all->host
           : is_named(name, "origin")         ? &all->origin
           : is_named(name, "cookie")         ? &all->cookie
           : is_named(name, "content-type")   ? &all->content_type
           : is_named(name, "content-length") ? &all->content_length
           : is_named(name, "sec-fetch-site") ? &all->site
                                              : NULL;
}

/* Fields that would change where a request ends or what it is. */
static bool is_forbidden(span name)
{
    static const char *const names[] = {"transfer-encoding",
                                        "te",
                                        "trailer",
                                        "upgrade",
                                        "expect",
                                        "content-encoding",
                                        "x-http-method-override",
                                        "x-http-method",
                                        "x-method-override",
                                        "x-original-url",
                                        "x-rewrite-url"};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
        if (is_named(name, names[i]))
            return true;
    return false;
}

static const char *read_field(fields *all, span line)
{
    const char *colon = memchr(line.at, ':', line.length);
    if (colon == NULL)
        return "a header line has no colon";
    const span name = {line.at, (size_t)(colon - line.at)};
    if (!is_token(name))
        return "the name of a header field is not a token";
    if (is_forbidden(name))
        return "a header field stands here that this server takes from nobody";
    span *place = field_for(all, name);
    if (place == NULL)
        return NULL;
    if (place->at != NULL)
        return "a header field stands twice";
    *place = without_blanks((span){colon + 1, line.length - name.length - 1});
    return NULL;
}

static const char *read_fields(fields *all, span rest)
{
    while (rest.length > 2) {
        const char *wrong = read_field(all, next_line(&rest));
        if (wrong != NULL)
            return wrong;
        if (++all->lines > HEAD_LINES_MOST)
            return "there are more header lines than a browser writes";
    }
    return NULL;
}

/* ---- the request line ----------------------------------------------------------------------- */

static int hex(char byte)
{
    return byte >= '0' && byte <= '9'   ? byte - '0'
           : byte >= 'A' && byte <= 'F' ? byte - 'A' + 10
           : byte >= 'a' && byte <= 'f' ? byte - 'a' + 10
                                        : -1;
}

static bool is_plain(char byte)
{
    return (byte >= '0' && byte <= '9') || (byte >= 'a' && byte <= 'z') ||
           (byte >= 'A' && byte <= 'Z') || (byte != '\0' && strchr("-._~", byte) != NULL);
}

/* Query: name=value pairs with & between them; escapes of two digits, none of a control byte. */
static bool is_query(const route *at, span query)
{
    bool   in_value = false;
    size_t from     = 0;
    for (size_t i = 0; i <= query.length; i++) {
        const char byte = i < query.length ? query.at[i] : '&';
        if (byte == '&') {
            if (!in_value)
                return false;
            in_value = false;
            from     = i + 1;
        } else if (byte == '=' && !in_value) {
            if (!route_takes(at, query.at + from, i - from))
                return false;
            in_value = true;
        } else if (byte == '%' && in_value && i + 2 < query.length) {
            const int high = hex(query.at[i + 1]), low = hex(query.at[i + 2]);
            if (high < 0 || low < 0 || high * 16 + low < 0x20 || high * 16 + low == 0x7F)
                return false;
            i += 2;
        } else if (!is_plain(byte) && !(in_value && strchr("/:@*,!'()+", byte) != NULL)) {
            return false;
        }
    }
    return true;
}

static bool is_path(span path)
{
    if (path.length == 0 || path.at[0] != '/')
        return false;
    for (size_t i = 0; i < path.length; i++)
        if (path.at[i] != '/' && !is_plain(path.at[i]))
            return false;
    return true;
}

/* ---- who asks? ------------------------------------------------------------------------------ */

/* One of the pairs of the cookie line is ours. */
static bool has_cookie(span cookies, const char *wanted)
{
    const size_t length = strlen(wanted);
    bool         found  = false;
    while (cookies.length > 0) {
        const char  *end  = memchr(cookies.at, ';', cookies.length);
        const size_t size = end != NULL ? (size_t)(end - cookies.at) : cookies.length;
        const span   one  = without_blanks((span){cookies.at, size});
        if (one.length == length && launch_key_equal(one.at, wanted, length))
            found = true;
        cookies.at += end != NULL ? size + 1 : size;
        cookies.length -= end != NULL ? size + 1 : size;
    }
    return found;
}

static guard_answer judge_asker(const guard_house *house, const route *at, bool asked,
                                const fields *all)
{
    const bool post = at->body_most > 0;
    if (all->origin.at != NULL && !is(all->origin, house->origin))
        return refuse(403, "the request comes from a page of another origin");
    if (post && all->origin.at == NULL)
        return refuse(403, "a request that changes something names its origin");
    if (all->site.at != NULL && !is(all->site, "same-origin") && (post || !is(all->site, "none")))
        return refuse(403, "the request comes from another site");
    const bool entering = at->open && asked;
    if (!entering && (all->cookie.at == NULL || !has_cookie(all->cookie, house->cookie)))
        return refuse(401, "this address opens only through the link that towershaft open printed");
    return (guard_answer){.verdict = GUARD_PASS, .route = at, .query = asked};
}

/* ---- the body ------------------------------------------------------------------------------- */

/* Digits alone, no sign, no leading zero, at most 8 of them. */
static bool read_length(span text, size_t *value)
{
    *value = 0;
    if (text.length == 0 || text.length > 8 || (text.length > 1 && text.at[0] == '0'))
        return false;
    for (size_t i = 0; i < text.length; i++) {
        if (text.at[i] < '0' || text.at[i] > '9')
            return false;
        *value = *value * 10 + (size_t)(text.at[i] - '0');
    }
    return true;
}

static guard_answer judge_body(guard_answer so_far, const fields *all)
{
    const route *at = so_far.route;
    if (all->content_length.at != NULL && !read_length(all->content_length, &so_far.body))
        return refuse(400, "the length of the body is not a plain number");
    if (at->body_most == 0) {
        return all->content_length.at != NULL || all->content_type.at != NULL
                   ? refuse(400, "a request that only reads has no body")
                   : so_far;
    }
    if (all->content_length.at == NULL)
        return refuse(411, "a body needs its length");
    if (!is(all->content_type, "application/json"))
        return refuse(415, "a body is JSON, and says so");
    if (so_far.body == 0)
        return refuse(400, "the body is empty");
    if (so_far.body > at->body_most)
        return refuse(413, "the body is longer than this request may bring");
    return so_far;
}

/* ---- all of it ------------------------------------------------------------------------------ */

static guard_answer judge_target(span method, span target)
{
    const char  *mark = memchr(target.at, '?', target.length);
    const size_t size = mark != NULL ? (size_t)(mark - target.at) : target.length;
    const span   path = {target.at, size};
    if (target.length > HEAD_TARGET_MOST)
        return refuse(414, "the address is longer than any that this server has");
    if (!is_path(path))
        return refuse(400, "the address is not a plain path of this server");
    bool         fits = false;
    const route *at   = route_find(method.at, method.length, path.at, path.length, &fits);
    if (at == NULL)
        return refuse(404, "there is nothing at this address");
    if (!fits)
        return refuse(405, "this address does not take that method");
    const bool query = mark != NULL;
    if (query && (at->query == NULL || !is_query(at, (span){mark + 1, target.length - size - 1})))
        return refuse(400, "what stands behind the question mark is not known here");
    return (guard_answer){.verdict = GUARD_PASS, .route = at, .query = query};
}

static guard_answer judge_line(span line)
{
    const span method = next_word(&line), target = next_word(&line), version = line;
    if (!is_token(method) || target.length == 0)
        return refuse(400, "the first line is not a request");
    if (!is(version, "HTTP/1.1"))
        return refuse(505, "this server speaks HTTP/1.1 only");
    if (!is(method, "GET") && !is(method, "POST"))
        return refuse(405, "this server knows GET and POST");
    return judge_target(method, target);
}

guard_answer head_guard_judge(const guard_house *house, const char *bytes, size_t length)
{
    bool         sound;
    const size_t head = head_length(bytes, length < HEAD_MOST ? length : HEAD_MOST, &sound);
    if (!sound)
        return refuse(400, "a byte stands in the head that does not belong there");
    if (head == 0 && length >= HEAD_MOST)
        return refuse(431, "the head is longer than a browser writes");
    if (head == 0)
        return (guard_answer){.verdict = GUARD_MORE};
    span         rest   = {bytes, head};
    const span   line   = next_line(&rest);
    guard_answer answer = judge_line(line);
    fields       all    = {0};
    const char  *wrong  = read_fields(&all, rest);
    if (wrong != NULL)
        return refuse(400, wrong);
    /* Who is meant comes before what is wanted, so that a stranger learns nothing of the routes. */
    if (all.host.at == NULL)
        return refuse(400, "the request names no host");
    if (!is(all.host, house->host))
        return refuse(421, "this server answers to the address that it printed, and to no other");
    if (answer.verdict == GUARD_PASS)
        answer = judge_asker(house, answer.route, answer.query, &all);
    if (answer.verdict == GUARD_PASS)
        answer = judge_body(answer, &all);
    if (answer.verdict == GUARD_PASS && length > head + answer.body)
        return refuse(400, "more bytes follow than the request has");
    answer.head = head;
    return answer;
}
