/* search/crew.c: who takes the next item of work? */
#include "search/crew.h"

#include <pthread.h>
#include <stdatomic.h>

enum { WORKERS_MOST = 64 };

typedef struct shift {
    atomic_size_t next;
    size_t        count;
    ts_crew_work  work;
    void         *context;
} shift;

typedef struct hand {
    shift    *shift;
    size_t    number;
    pthread_t thread;
} hand;

static void *take_items(void *context)
{
    const hand *h = context;
    for (;;) {
        const size_t item = atomic_fetch_add(&h->shift->next, 1);
        if (item >= h->shift->count)
            return NULL;
        h->shift->work(h->shift->context, item, h->number);
    }
}

void ts_crew_run(size_t workers, size_t count, ts_crew_work work, void *context)
{
    shift  s = {.count = count, .work = work, .context = context};
    hand   hands[WORKERS_MOST];
    size_t started = 1;

    atomic_init(&s.next, 0);
    if (workers > WORKERS_MOST)
        workers = WORKERS_MOST;
    if (workers > count)
        workers = count;
    for (; started < workers; started++) {
        hands[started] = (hand){.shift = &s, .number = started};
        if (pthread_create(&hands[started].thread, NULL, take_items, &hands[started]) != 0)
            break;
    }
    hands[0] = (hand){.shift = &s, .number = 0};
    take_items(&hands[0]);
    for (size_t i = 1; i < started; i++)
        pthread_join(hands[i].thread, NULL);
}
