/* search/arrange_search.h: the lightest arrangement, with the proof that none is lighter.
 *
 * The method and why it is exact: docs/method/arrange.md.
 */
#ifndef TS_SEARCH_ARRANGE_SEARCH_H
#define TS_SEARCH_ARRANGE_SEARCH_H

#include "search/arrange_branch.h"
#include "towershaft/status.h"

enum { TS_ARRANGE_ANSWERS = 16 };

typedef struct ts_arrange_wish {
    const ts_allocator *allocator;   /* NULL: the C library's; calls to it never overlap        */
    size_t              memory_most; /* bytes at one time; 0: no limit                          */
    size_t              workers;     /* threads; 0 is 1                                         */
    uint32_t            answers;     /* how many that differ in order, face or box; 0 is 1      */
    uint64_t labels_most; /* 0, or: more than so many in the exact search of one choice end it as
                             if it were stopped, for any number of threads alike */
    bool any;             /* whether something fits is all; nothing is light, bound 0 */
    /* NULL or: asked often, from one thread; true ends the search with what is there. */
    bool (*stop)(void *context);
    void *context;
    /* NULL or: told before each choice of a box is searched, from the thread of the caller: the
     * lightest so far (infinite: none), what nothing is lighter than, kg, and how many choices of
     * how many are closed. */
    void (*progress)(void *context, double found, double bound, size_t done, size_t count);
} ts_arrange_wish;

typedef enum ts_pair_end {
    TS_PAIR_OPEN,     /* not reached                                                     */
    TS_PAIR_NO_WAY,   /* its bound is infinite: some demand cannot be met by this pair   */
    TS_PAIR_BY_BOUND, /* its bound is no lower than the answer                           */
    TS_PAIR_SEARCHED  /* every label that could lead to something lighter was looked at  */
} ts_pair_end;

/* What was done with one choice of one box. */
typedef struct ts_pair_record {
    uint32_t       box, choice;
    double         bound; /* kg; no arrangement with it is lighter; infinite: there is none */
    double         found; /* lightest of the answers that are driven so; infinite: none     */
    ts_pair_end    end;
    ts_label_count labels;
} ts_pair_record;

typedef enum ts_arrange_end {
    TS_ARRANGE_PROVEN,   /* nothing lighter exists, or nothing at all               */
    TS_ARRANGE_STOPPED,  /* `stop` said so                                          */
    TS_ARRANGE_NO_MEMORY /* the limit was met, or memory ran out                    */
} ts_arrange_end;

typedef struct ts_arrange_result {
    ts_arrange_end  end;
    size_t          count; /* of answers, lightest first; 0: none found */
    ts_arrangement *answers;
    bool   others_open;    /* proven is the first alone; the rest are the lightest so far    */
    double bound;          /* no arrangement is lighter; infinite: none exists             */
    ts_pair_record *pairs; /* in the order of the search                                   */
    size_t          pair_count;
    ts_label_count  labels;       /* of all exact searches                                        */
    ts_join_tally   joins;        /* of branches of all exact searches                            */
    ts_label_count  first_labels; /* of the narrow searches that found something to begin with */
    double          first;        /* the lightest that these found; infinite: none                */
    size_t          most_bytes;   /* that were in use at one time                            */
    ts_arena       *arena;        /* owns the lists above */
} ts_arrange_result;

/* TS_NOT_UNDERSTOOD when a limit of arrange_problem.h is passed; TS_NO_MEMORY when not even a start
 * could be made.  Otherwise TS_OK, and the result is to be closed. */
ts_status ts_arrange_search(const ts_arrange_problem *problem, const ts_arrange_wish *wish,
                            ts_arrange_result *result);
void      ts_arrange_result_close(ts_arrange_result *result);

/* Tells each way of driving the lightest answer that is driven so. */
void ts_arrange_result_tell_ways(ts_arrange_result *result);

/* Adds to the one answer of a proven search others, of other shapes, that a search found that was
 * ended early, up to so many in all.  False without memory. */
bool ts_arrange_result_add(ts_arrange_result *proven, const ts_arrange_result *so_far,
                           size_t answers);

/* The same, but where several answers take more than `labels_at_first` labels of one choice, which
 * is many times the work of one, the lightest is proven by itself first; then all are searched for,
 * and if that is ended early, the first stands proven beside the others found so far. */
ts_status ts_arrange_search_in_turns(const ts_arrange_problem *problem, const ts_arrange_wish *wish,
                                     uint64_t labels_at_first, ts_arrange_result *result);

/* How many arrangements meet every demand, all of them, whatever they weigh.  For small problems:
 * time and memory grow with the answer. */
ts_status ts_arrange_count(const ts_arrange_problem *problem, const ts_arrange_wish *wish,
                           uint64_t *count);

#endif
