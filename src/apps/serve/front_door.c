/* How does a connection come in? */
#include "apps/serve/front_door.h"

#include "apps/serve/reply.h"

#include <arpa/inet.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/epoll.h>
#include <sys/socket.h>
#include <unistd.h>

/* ---- listening ------------------------------------------------------------------------------ */

static int listen_on(const struct sockaddr *address, socklen_t length)
{
    const int yes = 1;
    const int one =
        socket(address->sa_family, SOCK_STREAM | SOCK_NONBLOCK | SOCK_CLOEXEC, IPPROTO_TCP);
    if (one < 0)
        return -1;
    (void)setsockopt(one, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
    if (address->sa_family == AF_INET6)
        (void)setsockopt(one, IPPROTO_IPV6, IPV6_V6ONLY, &yes, sizeof yes);
    if (bind(one, address, length) == 0 && listen(one, 512) == 0)
        return one;
    const int why = errno;
    close(one);
    errno = why;
    return -1;
}

static int listen_four(unsigned port)
{
    const struct sockaddr_in address = {.sin_family      = AF_INET,
                                        .sin_port        = htons((uint16_t)port),
                                        .sin_addr.s_addr = htonl(INADDR_LOOPBACK)};
    return listen_on((const struct sockaddr *)&address, sizeof address);
}

static int listen_six(unsigned port)
{
    const struct sockaddr_in6 address = {.sin6_family = AF_INET6,
                                         .sin6_port   = htons((uint16_t)port),
                                         .sin6_addr   = IN6ADDR_LOOPBACK_INIT};
    return listen_on((const struct sockaddr *)&address, sizeof address);
}

static unsigned port_of(int listener)
{
    struct sockaddr_in address = {0};
    socklen_t          length  = sizeof address;
    if (getsockname(listener, (struct sockaddr *)&address, &length) != 0)
        return 0;
    return ntohs(address.sin_port);
}

static bool watch(const front_door *door, int socket, uint32_t events, uint64_t which)
{
    struct epoll_event event = {.events = events, .data.u64 = which};
    return epoll_ctl(door->epoll, EPOLL_CTL_ADD, socket, &event) == 0;
}

const char *front_door_open(front_door *door, server *at, int epoll, unsigned *port)
{
    *door = (front_door){.at = at, .epoll = epoll, .listener = {-1, -1}};
    for (size_t i = 0; i < KNOCKS_MOST; i++)
        door->knocks[i].socket = -1;
    for (size_t i = 0; i < GUESTS_MOST; i++)
        door->guests[i].socket = -1;
    door->listener[0] = listen_four(*port);
    if (door->listener[0] < 0)
        return strerror(errno);
    *port             = port_of(door->listener[0]);
    door->listener[1] = listen_six(*port); /* a machine without ::1 has one door */
    for (int i = 0; i < DOORS_MOST; i++)
        if (door->listener[i] >= 0 &&
            !watch(door, door->listener[i], EPOLLIN, FRONT_DOOR_LISTENER | (uint64_t)i))
            return strerror(errno);
    return NULL;
}

/* ---- knocks --------------------------------------------------------------------------------- */

static void turn_away(knock *one)
{
    close(one->socket);
    one->socket = -1;
}

/* A free place, or that of the one who has stood there longest. */
static size_t place_for(front_door *door)
{
    size_t oldest = 0;
    for (size_t i = 0; i < KNOCKS_MOST; i++) {
        if (door->knocks[i].socket < 0)
            return i;
        if (door->knocks[i].since < door->knocks[oldest].since)
            oldest = i;
    }
    turn_away(&door->knocks[oldest]);
    return oldest;
}

static void write_refusal(growing *out, int status, const char *says)
{
    growing body = {0};
    growing_text(&body, "{\"says\": ");
    growing_string(&body, says, strlen(says));
    growing_text(&body, "}\n");
    growing_text(out, "HTTP/1.1 ");
    growing_number(out, status);
    growing_text(out, " ");
    const char *phrase = MHD_get_reason_phrase_for((unsigned)status);
    growing_text(out, phrase != NULL ? phrase : "Refused");
    growing_text(out, "\r\nContent-Type: application/json\r\nContent-Length: ");
    growing_number(out, (long long)body.length);
    growing_text(out, "\r\n");
    reply_policy_lines(out);
    growing_text(out, "\r\n");
    if (!body.failed)
        growing_add(out, body.bytes, body.length);
    growing_forget(&body);
}

/* The refusal fits into any send buffer; who does not read it is let go soon after. */
static void refuse(knock *one, int status, const char *says)
{
    growing answer = {0};
    write_refusal(&answer, status, says);
    if (!answer.failed)
        (void)!send(one->socket, answer.bytes, answer.length, MSG_NOSIGNAL | MSG_DONTWAIT);
    growing_forget(&answer);
    (void)shutdown(one->socket, SHUT_WR);
    one->refused = true;
    one->until   = server_now() + FAREWELL_MS;
}

static guest *guest_place(front_door *door)
{
    for (size_t i = 0; i < GUESTS_MOST; i++)
        if (door->guests[i].socket < 0)
            return &door->guests[i];
    return NULL;
}

static void let_in(front_door *door, knock *one)
{
    guest *place = guest_place(door);
    if (place == NULL) {
        refuse(one, 503, "there are too many requests at once");
        return;
    }
    struct sockaddr_storage address;
    socklen_t               length = sizeof address;
    if (getpeername(one->socket, (struct sockaddr *)&address, &length) != 0) {
        turn_away(one);
        return;
    }
    (void)epoll_ctl(door->epoll, EPOLL_CTL_DEL, one->socket, NULL);
    *place           = (guest){one->socket, one->since + GUEST_MS};
    one->socket      = -1;
    const int socket = place->socket;
    /* When it fails, the library has closed the socket. */
    if (MHD_add_connection(door->at->daemon, socket, (struct sockaddr *)&address, length) !=
        MHD_YES)
        front_door_left(door, socket);
}

static void throw_away(knock *one)
{
    char block[4096];
    for (int i = 0; i < 64; i++) {
        const ssize_t got = recv(one->socket, block, sizeof block, MSG_DONTWAIT);
        if (got > 0 || (got < 0 && errno == EINTR))
            continue;
        if (got == 0 || (errno != EAGAIN && errno != EWOULDBLOCK))
            turn_away(one);
        return;
    }
    turn_away(one);
}

static void look(front_door *door, knock *one)
{
    char          block[HEAD_MOST];
    const ssize_t got = recv(one->socket, block, sizeof block, MSG_PEEK | MSG_DONTWAIT);
    if (got == 0 || (got < 0 && errno != EAGAIN && errno != EWOULDBLOCK && errno != EINTR)) {
        turn_away(one);
        return;
    }
    if (got < 0)
        return;
    const guard_answer answer = head_guard_judge(&door->at->house[one->door], block, (size_t)got);
    if (answer.verdict == GUARD_PASS)
        let_in(door, one);
    else if (answer.verdict == GUARD_REFUSE) {
        refuse(one, answer.status, answer.says);
        throw_away(one);
    }
}

static void accept_all(front_door *door, int which)
{
    for (int i = 0; i < 64; i++) {
        const int socket = accept4(door->listener[which], NULL, NULL, SOCK_NONBLOCK | SOCK_CLOEXEC);
        if (socket < 0)
            return;
        const size_t  place = place_for(door);
        const int64_t now   = server_now();
        door->knocks[place] =
            (knock){.socket = socket, .door = which, .since = now, .until = now + KNOCK_MS};
        /* Each new byte tells once, for what was peeked at stays in the socket. */
        if (!watch(door, socket, EPOLLIN | EPOLLRDHUP | EPOLLET, FRONT_DOOR_KNOCK | place))
            turn_away(&door->knocks[place]);
    }
}

void front_door_event(front_door *door, uint64_t which)
{
    const uint32_t index = (uint32_t)which;
    if ((which & FRONT_DOOR_LISTENER) != 0) {
        accept_all(door, (int)index);
        return;
    }
    knock *one = &door->knocks[index];
    if (one->socket < 0)
        return;
    if (one->refused)
        throw_away(one);
    else
        look(door, one);
}

/* ---- time ----------------------------------------------------------------------------------- */

void front_door_sweep(front_door *door)
{
    const int64_t now = server_now();
    for (size_t i = 0; i < KNOCKS_MOST; i++) {
        knock *one = &door->knocks[i];
        if (one->socket < 0 || now < one->until)
            continue;
        if (one->refused)
            turn_away(one);
        else
            refuse(one, 408, "the head of the request took too long");
    }
    /* The library sees the end of its socket and closes it. */
    for (size_t i = 0; i < GUESTS_MOST; i++)
        if (door->guests[i].socket >= 0 && now >= door->guests[i].until)
            (void)shutdown(door->guests[i].socket, SHUT_RDWR);
}

static guest *guest_at(front_door *door, int socket)
{
    for (size_t i = 0; i < GUESTS_MOST; i++)
        if (door->guests[i].socket == socket)
            return &door->guests[i];
    return NULL;
}

void front_door_left(front_door *door, int socket)
{
    guest *one = guest_at(door, socket);
    if (one != NULL)
        one->socket = -1;
}

void front_door_stays(front_door *door, int socket)
{
    guest *one = guest_at(door, socket);
    if (one != NULL)
        one->until = INT64_MAX;
}

void front_door_close(front_door *door)
{
    for (int i = 0; i < DOORS_MOST; i++)
        if (door->listener[i] >= 0)
            close(door->listener[i]);
    for (size_t i = 0; i < KNOCKS_MOST; i++)
        if (door->knocks[i].socket >= 0)
            turn_away(&door->knocks[i]);
}
