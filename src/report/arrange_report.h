/* report/arrange_report.h: what a search of arrangements found, for people and for programs. */
#ifndef TS_REPORT_ARRANGE_REPORT_H
#define TS_REPORT_ARRANGE_REPORT_H

#include "base/json_writer.h"
#include "report/page.h"
#include "sample/estimate.h"
#include "search/arrange_conflict.h"
#include "search/arrange_search.h"
#include "search/arrange_verify.h"
#include "search/drive_place.h"
#include "search/drive_present.h"
#include "search/drive_problem.h"
#include "towershaft/sampling.h"

typedef struct ts_refusal {
    const char *says, *address; /* NULL: none */
} ts_refusal;

/* What the rules say of one answer, which was put into the file and read again. */
typedef struct ts_arranged_verdict {
    bool               read; /* could it be read again? */
    bool               holds;
    ts_arrange_account account;            /* with the faces widened as the rating asks     */
    size_t             widened;            /* steps of face width added for that            */
    size_t             refusals, warnings; /* open */
    size_t             clashes; /* of these, bodies, gears and shafts in each other's way */
    const char        *first;   /* what the first open refusal says; NULL */
    const char        *address; /* where */
    ts_refusal between[TS_ARRANGE_BOXES]; /* the first of a bevel or radial shaft of that box */
} ts_arranged_verdict;

/* Why does somebody not stand somewhere? */
typedef struct ts_why_not {
    const char         *asked; /* as it was written */
    ts_drive_place      place;
    uint32_t            bars; /* what the file itself says against it: TS_BAR_ */
    ts_arrange_end      end;  /* of the search with it there */
    bool                fits;
    ts_arrangement      found; /* the lightest with it there */
    ts_arranged_verdict verdict;
    bool                explained; /* where nothing fits: is the conflict known? */
    ts_conflict         conflict;
} ts_why_not;

/* What becomes of the answers when loads and bands are not as demanded. */
enum { TS_ROBUST_CHANGES = 40 };

typedef struct ts_robust_answer {
    double less, as, more;       /* kg with the least, the demanded, the most loads; infinite: the
                                    teeth bear them at no width */
    double slack;                /* rad/s that every band may lose at each end */
    size_t accessory, condition; /* whose band is left first, and where */
} ts_robust_answer;

typedef struct ts_robust_change {
    double factor;   /* of the loads, from which on `to` is the lightest of the answers */
    size_t from, to; /* answers; the number of answers: none fits */
} ts_robust_change;

typedef struct ts_robust_corner {
    ts_arrange_end end;
    bool           fits;
    ts_arrangement found; /* the lightest of all there */
} ts_robust_corner;

/* An answer under the samples of a study. */
typedef struct ts_sampled_answer {
    const char *refusal;                  /* why the study does not fit its file; else NULL   */
    uint64_t    states[TS_SAMPLE_STATES]; /* samples of each                                  */
    ts_chance   hold;                     /* all that is not TS_SAMPLE_HOLDS does not         */
    uint64_t    lightest;     /* samples in which it is the lightest of the answers that hold     */
    uint64_t    gains, loses; /* in which it holds and the answer `beside` does not; and reverse */
    ts_chance   better;       /* gains among both                                             */
    double      luck;         /* chance of so many or more of the greater of both by a fair coin:
                                 Q. McNemar, Psychometrika 12 (1947) 153 (from memory), exactly */
    const char *rule, *address; /* what refuses it in most samples; NULL: nothing does        */
    uint64_t    hits;
} ts_sampled_answer;

/* All answers under the same samples. */
typedef struct ts_sampled_answers {
    const char        *study, *sha256; /* NULL: not asked */
    uint64_t           seed, due, count;
    uint64_t           none;          /* samples in which no answer holds */
    size_t             beside;        /* the answer that others are held against */
    ts_sampled_answer *answers;       /* [result->count] */
    size_t order[TS_ARRANGE_ANSWERS]; /* those that hold most often first, then the lightest */
} ts_sampled_answers;

typedef struct ts_robust {
    bool               asked;
    double             loads; /* share; 0: not asked   */
    double             bands; /* rad/s; 0: not asked   */
    ts_robust_answer   answers[TS_ARRANGE_ANSWERS];
    size_t             first; /* the lightest of the answers at the least loads */
    ts_robust_change   changes[TS_ROBUST_CHANGES];
    size_t             change_count;
    ts_robust_corner   corner_less, corner_more, corner_bands;
    ts_sampled_answers samples;
} ts_robust;

/* The lightest arrangement within a wrap; of several boxes the largest wrap counts. */
typedef struct ts_front_point {
    double              limit; /* rad, that it was searched within */
    ts_arrange_end      end;
    ts_arrangement      found;
    ts_arrange_rule     rule; /* what other code says: TS_RULE_NONE */
    ts_arranged_verdict verdict;
} ts_front_point;

typedef struct ts_front {
    ts_front_point *points; /* from the lightest on, by falling wrap */
    size_t          count;
    double          nothing_below; /* rad: nothing fits within it; NaN: not found out */
} ts_front;

/* A take-off that was left out, for the rules refuse its own parts whatever stands on the box. */
typedef struct ts_struck {
    size_t      box;
    uint32_t    take_off;
    size_t      answers; /* that were judged with it; all of them are refused so */
    double      mass;    /* kg of the lightest of these */
    const char *says, *address;
} ts_struck;

typedef struct ts_arrange_told {
    const ts_drive            *drive;
    const ts_motion           *motion; /* of the file as it was: for the inputs' speeds */
    const ts_struck           *struck;
    size_t                     struck_count;
    const ts_drive_problem    *problem;
    const ts_arrange_result   *result;
    const ts_arranged_verdict *verdicts; /* [answer] */
    size_t                     chosen;   /* the first answer that holds; result->count: none does */
    size_t                     laws;     /* pairs of teeth that were rated */
    ts_certificate_check       certificate; /* by other code than the search */
    const ts_conflict
        *conflict;           /* where nothing fits; NULL: not asked, or ended before its answer */
    const char *const *kept; /* addresses */
    size_t             kept_count;
    const ts_present  *present;     /* what stands in the file; NULL: not looked at     */
    ts_arrange_rule   present_rule; /* the first demand that it does not meet, by room and speeds */
    const ts_why_not *why_not;
    size_t            why_not_count;
    const ts_front   *front;                /* NULL: not asked */
    const ts_robust  *robust;               /* NULL: not asked */
    const char       *added, *added_sha256; /* the file that joined, or NULL */
    const char       *caution, *version, *sha256;
} ts_arrange_told;

void ts_arrange_page(const ts_arrange_told *told, ts_page *page);
/* Which demands conflict, in plain words; nothing when none was found. */
void ts_conflict_list(const ts_arrange_told *told, ts_page *page);
/* Demands that were kept beside the members, where there are any. */
void ts_conflict_held(const ts_arrange_told *told, ts_page *page, const ts_conflict *conflict);
/* "the band of generator at ground idle"; the caller closes `out`. */
void ts_demand_says(const ts_arrange_told *told, const ts_demand *demand, ts_buffer *out);
/* "hp: fuel pump, [starter], breather" of every box that is there. */
void ts_arrange_order(const ts_arrange_told *told, const ts_arrangement *found, ts_buffer *out);
void ts_arrange_verdict(const ts_arranged_verdict *verdict, ts_buffer *out);
void ts_arrange_kg(const ts_page *page, double kg, ts_buffer *out);
/* Does anything count beside mass? */
bool ts_arrange_is_weighted(const ts_arrange_told *told);
/* "10.9 kg", or "11.9 kg in sum" where something counts beside mass. */
void ts_arrange_sum(const ts_arrange_told *told, const ts_page *page, double kg, ts_buffer *out);
/* What an arrangement weighed as it was searched, before its faces were widened. */
ts_arrange_account ts_arrange_searched(const ts_arrange_told *told, const ts_arrangement *found);
/* "Beside its mass 80.1 deg of wrap count as 0.70 kg, and 7.0 kg to be lowered out of the way count
 * as 0.35 kg: together 11.9 kg in sum.": nothing where nothing counts beside mass. */
void ts_arrange_weighted_says(const ts_arrange_told *told, const ts_page *page,
                              const ts_arrange_account *account, ts_buffer *out);
/* "+0.33 kg, 3.2 %" over the lightest, in sum. */
void ts_arrange_regret(const ts_arrange_told *told, const ts_page *page, double kg, ts_buffer *out);
void ts_conflict_member_line(const ts_arrange_told *told, ts_page *page,
                             const ts_conflict_member *member);
/* What became of a certificate that was read back. */
typedef struct ts_reverified {
    const char *const *reasons; /* why it does not hold; none: it holds */
    size_t             count;
    size_t             answers, ways; /* that were looked at */
    uint64_t           labels;
    bool               proven; /* does it claim proof? */
    double             mass;   /* kg of the first answer; NaN: none */
    size_t             struck; /* take-offs that were left out */
    const char        *caution, *version, *sha256, *certificate;
} ts_reverified;
void ts_reverified_page(const ts_reverified *told, ts_page *page);
void ts_reverified_json(const ts_reverified *told, ts_buffer *out);

double ts_arrangement_wrap(const ts_arrange_told *told, const ts_arrangement *found);
void   ts_front_page(const ts_arrange_told *told, ts_page *page);
void   ts_front_json(const ts_arrange_told *told, ts_json *json);
void   ts_robust_page(const ts_arrange_told *told, ts_page *page);
void   ts_robust_json(const ts_arrange_told *told, ts_json *json);
void   ts_sampled_answers_page(const ts_arrange_told *told, ts_page *page);
void   ts_sampled_answers_json(const ts_arrange_told *told, ts_json *json);
void   ts_why_not_page(const ts_arrange_told *told, ts_page *page);
void   ts_why_not_json(const ts_arrange_told *told, ts_json *json);
void   ts_arranged_boxes_json(ts_json *json, const ts_arrange_told *told,
                              const ts_arrangement *found);
void   ts_arranged_verdict_json(ts_json *json, const ts_arranged_verdict *verdict);
/* An arrangement with its masses, its verdict and what it changes; regret: kg in sum. */
void ts_arranged_answer_json(ts_json *json, const ts_arrange_told *told,
                             const ts_arrangement *found, const ts_arranged_verdict *verdict,
                             double regret);
void ts_conflict_member_json(ts_json *json, const ts_arrange_told *told,
                             const ts_conflict_member *member);

/* NULL: none. */
void ts_conflict_held_json(ts_json *json, const ts_arrange_told *told, const ts_conflict *conflict);
void ts_arrange_json(const ts_arrange_told *told, ts_buffer *out);

/* What an answer changes against what stands in the file, a sentence a line without its full stop;
 * how many.  None where nothing stands there, or something that the search has no words for.
 * `weighs`: kg, with its faces as the whole drive asks. */
size_t ts_arrange_changes(const ts_arrange_told *told, const ts_page *page,
                          const ts_arrangement *found, double weighs, ts_buffer *out);
void   ts_arrange_changes_page(const ts_arrange_told *told, ts_page *page,
                               const ts_arrangement *found, double weighs);
void   ts_arrange_changes_json(const ts_arrange_told *told, ts_json *json,
                               const ts_arrangement *found, double weighs);
/* Every way to drive a box with its bound and its end, those of the least bounds first. */
void ts_ways_table(const ts_arrange_told *told, ts_page *page);
/* What stands in the file, and whether it meets the demands. */
void ts_present_page(const ts_arrange_told *told, ts_page *page);

/* Highest speed of a gear in any condition, rad/s; input: of the box input, per condition; turns:
 * teeth of a gear on the input shaft that would turn its plane as fast. */
double ts_arranged_speed(const ts_arrange_told *told, const double *input, uint32_t z,
                         double turns);

/* What stands between a spool and its box in an arrangement. */
typedef struct ts_bevels_taken {
    uint32_t teeth[2];
    double   module, face; /* m */
} ts_bevels_taken;

typedef struct ts_take_off_taken {
    ts_bevels_taken spool, box;
    double          outside, bore; /* m, of the radial shaft */
    double          more;          /* kg, than what stands there */
} ts_take_off_taken;

/* False where `arrange` has nothing to choose from there. */
bool ts_arrange_take_off(const ts_arrange_told *told, size_t box, uint32_t index,
                         ts_take_off_taken *out);
/* "bevels 34/37 of 2 mm at the spool and 27/61 of 1.75 mm at the box, radial shaft of 22 mm" */
void ts_arrange_take_off_says(const ts_page *page, const ts_take_off_taken *t, ts_buffer *out);
/* The key `take_off`; null where there is nothing to choose from. */
void ts_arrange_take_off_json(ts_json *json, const ts_arrange_told *told, size_t box,
                              uint32_t index);

#endif
