/* How does the workbench run from its first line to its last? */
#include "apps/serve/serve.h"

#include "apps/serve/event_stream.h"
#include "apps/serve/front_door.h"
#include "apps/serve/handle.h"
#include "apps/serve/reply.h"

#include <errno.h>
#include <fcntl.h>
#include <malloc.h>
#include <signal.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/epoll.h>
#include <sys/signalfd.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { SERVE_GOOD = 0, SERVE_NOT_UNDERSTOOD = 2, SERVE_FAULT = 3 };

#define TICK_MS     250
#define LOOK_MS     1000  /* how often the file is looked at for other hands */
#define KEEP_MS     15000 /* how often a stream is tried */
#define STOPPING_MS 1500
#define LAST_MS     10 /* a turn of the end: nobody new is waited for */

/* What epoll tells besides listeners and knocks. */
enum { EVENT_HTTP = 1, EVENT_SIGNAL, EVENT_JOB, EVENT_SLOW };

extern char **environ;

typedef struct house {
    server     at;
    front_door door;
    int        epoll, signals;
    int64_t    looked, kept;
} house;

int64_t server_now(void)
{
    struct timespec now;
    (void)clock_gettime(CLOCK_MONOTONIC, &now);
    return (int64_t)now.tv_sec * 1000 + now.tv_nsec / 1000000;
}

/* ---- requests ------------------------------------------------------------------------------- */

typedef struct request {
    const route *where;
    growing      body;
} request;

static int socket_of(struct MHD_Connection *connection)
{
    const union MHD_ConnectionInfo *about =
        MHD_get_connection_info(connection, MHD_CONNECTION_INFO_CONNECTION_FD);
    return about != NULL ? about->connect_fd : -1;
}

static enum MHD_Result begin(const char *url, const char *method, void **context)
{
    bool         fits  = false;
    const route *where = route_find(method, strlen(method), url, strlen(url), &fits);
    request     *one   = calloc(1, sizeof *one);
    if (where == NULL || !fits || one == NULL) {
        free(one);
        return MHD_NO;
    }
    one->where = where;
    *context   = one;
    return MHD_YES;
}

static enum MHD_Result on_request(void *context, struct MHD_Connection *connection, const char *url,
                                  const char *method, const char *version, const char *data,
                                  size_t *size, void **of_request)
{
    house *all = context;
    (void)version;
    if (*of_request == NULL)
        return begin(url, method, of_request);
    request *one = *of_request;
    if (*size > 0) {
        growing_add(&one->body, data, *size);
        *size = 0;
        return one->body.failed || one->body.length > one->where->body_most ? MHD_NO : MHD_YES;
    }
    if (one->where->id == ROUTE_EVENTS) {
        front_door_stays(&all->door, socket_of(connection));
        return event_stream_open(&all->at, connection);
    }
    return one->where->body_most > 0 ? handle_change(&all->at, connection, one->where, &one->body)
                                     : handle_read(&all->at, connection, one->where, url);
}

static void on_end(void *context, struct MHD_Connection *connection, void **of_request,
                   enum MHD_RequestTerminationCode why)
{
    house *all = context;
    (void)why;
    slow_desk_left(&all->at.slow, connection);
    request *one = *of_request;
    if (one == NULL)
        return;
    growing_forget(&one->body);
    free(one);
    *of_request = NULL;
}

static void on_connection(void *context, struct MHD_Connection *connection, void **of_socket,
                          enum MHD_ConnectionNotificationCode what)
{
    house *all = context;
    (void)of_socket;
    if (what == MHD_CONNECTION_NOTIFY_CLOSED)
        front_door_left(&all->door, socket_of(connection));
}

static bool start_library(house *all)
{
    all->at.daemon = MHD_start_daemon(
        MHD_USE_EPOLL | MHD_USE_NO_LISTEN_SOCKET | MHD_ALLOW_SUSPEND_RESUME, 0, NULL, NULL,
        on_request, all, MHD_OPTION_NOTIFY_COMPLETED, on_end, all, MHD_OPTION_NOTIFY_CONNECTION,
        on_connection, all, MHD_OPTION_STRICT_FOR_CLIENT, 1, MHD_OPTION_CONNECTION_LIMIT,
        (unsigned)GUESTS_MOST, MHD_OPTION_CONNECTION_MEMORY_LIMIT, (size_t)32768, MHD_OPTION_END);
    const union MHD_DaemonInfo *about =
        all->at.daemon != NULL ? MHD_get_daemon_info(all->at.daemon, MHD_DAEMON_INFO_EPOLL_FD)
                               : NULL;
    struct epoll_event event = {.events = EPOLLIN, .data.u64 = EVENT_HTTP};
    return about != NULL && epoll_ctl(all->epoll, EPOLL_CTL_ADD, about->epoll_fd, &event) == 0;
}

/* ---- the loop ------------------------------------------------------------------------------- */

static void on_event(house *all, uint64_t which)
{
    struct signalfd_siginfo about;
    switch (which) {
    case EVENT_HTTP:
        break;
    case EVENT_SIGNAL:
        if (read(all->signals, &about, sizeof about) == (ssize_t)sizeof about)
            all->at.stopping = true;
        break;
    case EVENT_JOB:
        arrange_job_collect(&all->at.job);
        handle_tell(&all->at);
        break;
    case EVENT_SLOW:
        slow_desk_collect(&all->at.slow);
        break;
    default:
        front_door_event(&all->door, which);
    }
}

static int wait_ms(house *all)
{
    const int              most   = all->at.stopping ? LAST_MS : TICK_MS;
    MHD_UNSIGNED_LONG_LONG wanted = TICK_MS;
    if (MHD_get_timeout(all->at.daemon, &wanted) == MHD_YES && wanted < (unsigned)most)
        return (int)wanted;
    return most;
}

static bool turn(house *all)
{
    struct epoll_event events[64];
    const int          count = epoll_wait(all->epoll, events, 64, wait_ms(all));
    if (count < 0 && errno != EINTR)
        return false;
    for (int i = 0; i < count; i++)
        on_event(all, events[i].data.u64);
    return MHD_run(all->at.daemon) == MHD_YES;
}

static void tick(house *all)
{
    const int64_t now = server_now();
    workspace_settle(&all->at.here.place); /* whoever asked has the answer */
    front_door_sweep(&all->door);
    if (now - all->looked >= LOOK_MS) {
        all->looked = now;
        if (sitting_look_outside(&all->at.here))
            handle_tell(&all->at);
    }
    if (now - all->kept >= KEEP_MS) {
        all->kept = now;
        event_stream_keep(&all->at);
    }
}

static bool streams_left(const server *at)
{
    for (size_t i = 0; i < STREAMS_MOST; i++)
        if (at->streams[i] != NULL)
            return true;
    return false;
}

/* Streams end first, for the library must not be stopped while one sleeps. */
static void end_streams(house *all)
{
    const int64_t until = server_now() + STOPPING_MS;
    slow_desk_end(&all->at.slow);
    while ((streams_left(&all->at) || slow_desk_waits(&all->at.slow)) && server_now() < until) {
        event_stream_end(&all->at);
        if (!turn(all))
            return;
    }
}

static int serve(house *all)
{
    bool good = true;
    while (!all->at.stopping && good) {
        good = turn(all);
        tick(all);
    }
    /* One more turn, so that who asked for the end is answered. */
    (void)turn(all);
    end_streams(all);
    return good ? SERVE_GOOD : SERVE_FAULT;
}

/* ---- the beginning -------------------------------------------------------------------------- */

static bool catch_signals(house *all)
{
    sigset_t set;
    sigemptyset(&set);
    sigaddset(&set, SIGINT);
    sigaddset(&set, SIGTERM);
    sigaddset(&set, SIGHUP);
    (void)signal(SIGPIPE, SIG_IGN);
    if (sigprocmask(SIG_BLOCK, &set, NULL) != 0)
        return false;
    all->signals             = signalfd(-1, &set, SFD_CLOEXEC | SFD_NONBLOCK);
    struct epoll_event event = {.events = EPOLLIN, .data.u64 = EVENT_SIGNAL};
    return all->signals >= 0 && epoll_ctl(all->epoll, EPOLL_CTL_ADD, all->signals, &event) == 0;
}

static void name_house(server *at, unsigned port)
{
    static const char *const addresses[DOORS_MOST] = {"127.0.0.1", "[::1]"};
    for (int i = 0; i < DOORS_MOST; i++) {
        snprintf(at->words[i][0], sizeof at->words[i][0], "%s:%u", addresses[i], port);
        snprintf(at->words[i][1], sizeof at->words[i][1], "http://%s:%u", addresses[i], port);
        snprintf(at->words[i][2], sizeof at->words[i][2], "towershaft-%u=%s", port,
                 at->session.text);
        at->house[i] = (guard_house){at->words[i][0], at->words[i][1], at->words[i][2]};
    }
}

/* The desktop is asked, by its own word for it; nothing of the request goes through a shell. */
static void open_browser(const char *address)
{
    char                       word[] = "xdg-open", *words[] = {word, NULL, NULL};
    char                      *copy = strdup(address);
    pid_t                      child;
    sigset_t                   none;
    posix_spawnattr_t          how;
    posix_spawn_file_actions_t files;
    words[1] = copy;
    if (copy == NULL)
        return;
    sigemptyset(&none);
    posix_spawnattr_init(&how);
    posix_spawn_file_actions_init(&files);
    posix_spawnattr_setsigmask(&how, &none);
    posix_spawnattr_setflags(&how, POSIX_SPAWN_SETSIGMASK);
    posix_spawn_file_actions_addopen(&files, 1, "/dev/null", O_WRONLY, 0);
    posix_spawn_file_actions_addopen(&files, 2, "/dev/null", O_WRONLY, 0);
    if (posix_spawnp(&child, word, &files, &how, words, environ) != 0)
        fprintf(stderr, "towershaft open: this desktop opens no browser; follow the link\n");
    posix_spawn_file_actions_destroy(&files);
    posix_spawnattr_destroy(&how);
    free(copy);
}

static void greet(const house *all, const serve_options *options)
{
    char address[256];
    snprintf(address, sizeof address, "%s/?key=%s", all->at.house[0].origin, all->at.launch.text);
    printf("towershaft: %s\n%s\nThe link opens once.  Ctrl-C ends.\n", options->path, address);
    (void)fflush(stdout);
    if (options->browser)
        open_browser(address);
}

static const char *start(house *all, unsigned *port)
{
    if (!launch_key_make(&all->at.launch) || !launch_key_make(&all->at.session))
        return "the machine gives no random numbers";
    all->epoll = epoll_create1(EPOLL_CLOEXEC);
    if (all->epoll < 0 || !catch_signals(all) || !arrange_job_open(&all->at.job))
        return strerror(errno);
    struct epoll_event event = {.events = EPOLLIN, .data.u64 = EVENT_JOB};
    if (epoll_ctl(all->epoll, EPOLL_CTL_ADD, all->at.job.bell, &event) != 0)
        return strerror(errno);
    if (!slow_desk_open(&all->at.slow))
        return strerror(errno);
    event.data.u64 = EVENT_SLOW;
    if (epoll_ctl(all->epoll, EPOLL_CTL_ADD, all->at.slow.bell, &event) != 0)
        return strerror(errno);
    if (!start_library(all))
        return "the HTTP library does not start";
    const char *why = front_door_open(&all->door, &all->at, all->epoll, port);
    if (why == NULL)
        name_house(&all->at, *port);
    return why;
}

/* The house is given back, unless a search still works in it. */
static void end(house *all)
{
    if (all->at.daemon != NULL)
        MHD_stop_daemon(all->at.daemon);
    front_door_close(&all->door);
    const bool empty = arrange_job_close(&all->at.job);
    slow_desk_close(&all->at.slow);
    view_delta_forget(&all->at.shelf[0]);
    view_delta_forget(&all->at.shelf[1]);
    sitting_close(&all->at.here);
    if (all->signals >= 0)
        close(all->signals);
    if (all->epoll >= 0)
        close(all->epoll);
    if (empty)
        free(all);
}

/* A study of a large drive is some megabytes, closed and opened with every act: what one gives back
 * is kept for the next, and not asked of the system again page by page. */
static void keep_memory(void)
{
#ifdef M_TRIM_THRESHOLD
    (void)mallopt(M_MMAP_THRESHOLD, 16 << 20);
    (void)mallopt(M_TRIM_THRESHOLD, 16 << 20);
#endif
}

int serve_run(const serve_options *options)
{
    keep_memory();
    house *all = calloc(1, sizeof *all);
    if (all == NULL) {
        fprintf(stderr, "towershaft open: out of memory\n");
        return SERVE_FAULT;
    }
    all->epoll = all->signals = -1;
    all->at.job.bell = all->at.slow.bell = -1;
    all->door.listener[0] = all->door.listener[1] = -1;
    const char *why                               = sitting_open(&all->at.here, options->path);
    int         code;
    if (why != NULL) {
        fprintf(stderr, "towershaft open: %s: %s\n", options->path, why);
        code = SERVE_NOT_UNDERSTOOD;
    } else {
        unsigned port = options->port;
        why           = start(all, &port);
        if (why != NULL) {
            fprintf(stderr, "towershaft open: %s\n", why);
            code = SERVE_NOT_UNDERSTOOD;
        } else {
            greet(all, options);
            code = serve(all);
        }
    }
    end(all);
    return code;
}
