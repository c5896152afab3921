/* How do open pages learn what has changed? */
#include "apps/serve/event_stream.h"

#include "apps/serve/reply.h"

#include <stdlib.h>
#include <string.h>

#define WAITING_MOST ((size_t)64 * 1024) /* a page that is so far behind is let go */

struct event_stream {
    server                *at;
    struct MHD_Connection *to;
    growing                waiting;
    size_t                 sent;
    bool                   asleep, ending;
    uint64_t               age;
};

static void wake(event_stream *one)
{
    if (!one->asleep)
        return;
    one->asleep = false;
    MHD_resume_connection(one->to);
}

/* What is there; without anything the connection sleeps until there is. */
static ssize_t give(void *context, uint64_t position, char *into, size_t room)
{
    (void)position;
    event_stream *one  = context;
    const size_t  left = one->waiting.length - one->sent;
    if (left == 0 && one->ending)
        return MHD_CONTENT_READER_END_OF_STREAM;
    if (left == 0) {
        one->asleep = true;
        MHD_suspend_connection(one->to);
        return 0;
    }
    const size_t size = left < room ? left : room;
    memcpy(into, one->waiting.bytes + one->sent, size);
    one->sent += size;
    if (one->sent == one->waiting.length)
        one->sent = one->waiting.length = 0;
    return (ssize_t)size;
}

static void forget(void *context)
{
    event_stream *one = context;
    for (size_t i = 0; i < STREAMS_MOST; i++)
        if (one->at->streams[i] == one)
            one->at->streams[i] = NULL;
    growing_forget(&one->waiting);
    free(one);
}

static void end_one(event_stream *one)
{
    one->ending         = true;
    one->waiting.length = one->sent = 0;
    wake(one);
}

/* A free place, or that of the oldest, which ends. */
static size_t place_for(server *at)
{
    size_t oldest = 0;
    for (size_t i = 0; i < STREAMS_MOST; i++) {
        if (at->streams[i] == NULL)
            return i;
        if (at->streams[i]->age < at->streams[oldest]->age)
            oldest = i;
    }
    end_one(at->streams[oldest]);
    at->streams[oldest] = NULL;
    return oldest;
}

enum MHD_Result event_stream_open(server *at, struct MHD_Connection *to)
{
    event_stream *one = calloc(1, sizeof *one);
    if (one == NULL)
        return MHD_NO;
    one->at  = at;
    one->to  = to;
    one->age = ++at->stream_age;
    growing_text(&one->waiting, "retry: 1000\n\n");
    struct MHD_Response *response =
        MHD_create_response_from_callback(MHD_SIZE_UNKNOWN, 4096, give, one, forget);
    if (response == NULL) {
        free(one);
        return MHD_NO;
    }
    at->streams[place_for(at)] = one;
    reply_add_policy(response);
    (void)MHD_add_response_header(response, "Content-Type", "text/event-stream");
    const enum MHD_Result sent = MHD_queue_response(to, MHD_HTTP_OK, response);
    MHD_destroy_response(response);
    return sent;
}

static void add(event_stream *one, const char *before, const char *data)
{
    if (one->waiting.length - one->sent > WAITING_MOST) {
        end_one(one);
        return;
    }
    growing_text(&one->waiting, before);
    growing_text(&one->waiting, data);
    growing_text(&one->waiting, "\n\n");
    wake(one);
}

void event_stream_tell(server *at, const char *data)
{
    for (size_t i = 0; i < STREAMS_MOST; i++)
        if (at->streams[i] != NULL)
            add(at->streams[i], "data: ", data);
}

void event_stream_keep(server *at)
{
    for (size_t i = 0; i < STREAMS_MOST; i++)
        if (at->streams[i] != NULL)
            add(at->streams[i], ":", "");
}

void event_stream_end(server *at)
{
    for (size_t i = 0; i < STREAMS_MOST; i++)
        if (at->streams[i] != NULL)
            end_one(at->streams[i]);
}
