/* What does every answer say about itself? */
#include "apps/serve/reply.h"

#include <stdlib.h>
#include <string.h>

static const struct {
    const char *name, *value;
} policy[] = {
    {"Cache-Control", "no-store"},
    {"X-Content-Type-Options", "nosniff"},
    {"X-Frame-Options", "DENY"},
    {"Referrer-Policy", "no-referrer"},
    {"Cross-Origin-Opener-Policy", "same-origin"},
    {"Cross-Origin-Resource-Policy", "same-origin"},
    {"Permissions-Policy", "camera=(), geolocation=(), microphone=(), payment=(), usb=()"},
    {"Content-Security-Policy",
     "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; "
     "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; "
     "require-trusted-types-for 'script'; trusted-types 'none'"},
    {"Connection", "close"},
};

#define COUNT (sizeof policy / sizeof policy[0])

void reply_add_policy(struct MHD_Response *response)
{
    for (size_t i = 0; i < COUNT; i++)
        (void)MHD_add_response_header(response, policy[i].name, policy[i].value);
}

void reply_policy_lines(growing *out)
{
    for (size_t i = 0; i < COUNT; i++) {
        growing_text(out, policy[i].name);
        growing_text(out, ": ");
        growing_text(out, policy[i].value);
        growing_text(out, "\r\n");
    }
}

enum MHD_Result reply_send(struct MHD_Connection *to, unsigned status, const char *kind,
                           growing *bytes)
{
    return reply_send_timed(to, status, kind, bytes, NULL);
}

enum MHD_Result reply_send_timed(struct MHD_Connection *to, unsigned status, const char *kind,
                                 growing *bytes, const char *timing)
{
    growing_add(bytes, "", 0);
    if (bytes->failed) {
        growing_forget(bytes);
        return MHD_NO;
    }
    struct MHD_Response *response =
        MHD_create_response_from_buffer(bytes->length, bytes->bytes, MHD_RESPMEM_MUST_FREE);
    if (response == NULL) {
        growing_forget(bytes);
        return MHD_NO;
    }
    *bytes = (growing){0};
    reply_add_policy(response);
    (void)MHD_add_response_header(response, "Content-Type", kind);
    if (timing != NULL)
        (void)MHD_add_response_header(response, "Server-Timing", timing);
    const enum MHD_Result sent = MHD_queue_response(to, status, response);
    MHD_destroy_response(response);
    return sent;
}

enum MHD_Result reply_say(struct MHD_Connection *to, unsigned status, const char *says)
{
    growing bytes = {0};
    growing_text(&bytes, "{\"says\": ");
    growing_string(&bytes, says, strlen(says));
    growing_text(&bytes, "}\n");
    return reply_send(to, status, "application/json", &bytes);
}
