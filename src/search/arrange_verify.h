/* search/arrange_verify.h: does an answer hold, and does its certificate, when other code looks?
 *
 * Shares no code with the search beyond the problem's own words: an arrangement is laid out and
 * judged from scratch.
 */
#ifndef TS_SEARCH_ARRANGE_VERIFY_H
#define TS_SEARCH_ARRANGE_VERIFY_H

#include "search/arrange_search.h"

enum { TS_ARRANGE_ROW = 2 * TS_ARRANGE_SHAFTS + 1 }; /* most shafts of a box */

typedef enum ts_arrange_rule {
    TS_RULE_NONE,      /* every rule holds                                            */
    TS_RULE_PLACED,    /* an accessory is placed twice, or nowhere, or on a wrong box */
    TS_RULE_FACE,      /* a face is not open to it                                    */
    TS_RULE_SIDE,      /* a side is not                                               */
    TS_RULE_SENSE,     /* a pad turns the wrong way                                   */
    TS_RULE_SPEED,     /* a pad is outside of its band                                */
    TS_RULE_TEETH,     /* teeth that no gear may have there                           */
    TS_RULE_HUNTING,   /* a mesh repeats too soon                                     */
    TS_RULE_IDLERS,    /* too many in a row, or one at a free end                     */
    TS_RULE_STEP,      /* a second gear of a shaft where none may be, or another one  */
    TS_RULE_ARC,       /* a branch or the whole is too long                           */
    TS_RULE_CLEARANCE, /* two bodies meet                                             */
    TS_RULE_WIDTH,     /* a gear is narrower than it must be, or wider than it may be */
    TS_RULE_MASS       /* the mass is not what it is said to be                       */
} ts_arrange_rule;

/* The first rule that the arrangement breaks. */
ts_arrange_rule ts_arrange_verify(const ts_arrange_problem *problem, const ts_arrangement *a);
/* What it weighs, part by part, and what is counted beside mass, whether it holds or not. */
typedef struct ts_arrange_account {
    double boxes;   /* kg, of boxes that are there and of what their take-offs bring    */
    double pads;    /* kg, of all pads                                                  */
    double shafts;  /* kg, of shafts with accessories, inputs apart                     */
    double idlers;  /* kg, of shafts without                                            */
    double steps;   /* kg that second gears bring with them beside themselves           */
    double gears;   /* kg */
    double casing;  /* kg, of all arc */
    double mass;    /* kg, all of the above                                             */
    double wrap;    /* rad, of all boxes */
    double lowered; /* kg that must be lowered, summed over all accessories, before each can be */
    double for_wrap, for_servicing; /* kg that the weights make of these two */
    double sum;                     /* kg, what the search makes least: mass and both of these */
    size_t pad_count, shaft_count, idler_count, step_count, gear_count;
} ts_arrange_account;
ts_arrange_account ts_arrange_account_of(const ts_arrange_problem *problem,
                                         const ts_arrangement     *a);
/* The same with gears as light as its `mass` says, where faces were widened since. */
ts_arrange_account ts_arrange_account_as_found(const ts_arrange_problem *problem,
                                               const ts_arrangement     *a);
/* Where the shafts of a box that is there stand, rad from its input, negative on the left: the
 * input, the left branch outwards, the right branch outwards.  How many; 0: it cannot be laid out.
 */
size_t ts_arrange_angles(const ts_arrange_problem *problem, const ts_arrangement *a, uint32_t box,
                         double angles[TS_ARRANGE_ROW]);
/* rad between the outermost axes of that box. */
double ts_arrange_wrap(const ts_arrange_problem *problem, const ts_arrangement *a, uint32_t box);
/* Gives every gear the least width, in whole steps, that its meshes need, teeth and places staying;
 * the mass then, kg, or infinity where no width will do. */
double ts_arrange_refit(const ts_arrange_problem *problem, ts_arrangement *a);

/* How much narrower every band may become at each end, rad/s, until the first pad leaves its own,
 * and whose that is in which condition. */
double ts_arrange_slack(const ts_arrange_problem *problem, const ts_arrangement *a,
                        size_t *accessory, size_t *condition);

/* "turns the wrong way", for sentences. */
const char *ts_arrange_rule_says(ts_arrange_rule rule);

/* What became of a certificate. */
typedef struct ts_certificate_check {
    ts_arrange_rule answer;  /* what the lightest answer breaks; TS_RULE_NONE: nothing */
    size_t          missing; /* choices that it does not account for, or more than once   */
    size_t not_closed;       /* choices whose end does not follow from their bound, the mass of the
                                answer and the count of labels, in a search that claims proof */
} ts_certificate_check;

/* Does the proof hang together: is every choice of every box accounted for, is each closed for a
 * reason that holds, and does the answer weigh what it must?  The bounds themselves are taken as
 * they stand. */
ts_certificate_check ts_arrange_check_certificate(const ts_arrange_problem *problem,
                                                  const ts_arrange_result  *result);

#endif
