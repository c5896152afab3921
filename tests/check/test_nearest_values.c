/* Does the nearest valid value that a finding names close it, and is it the nearest?  Each is typed
 * into the drive of the pages, and then once more a little short of it.
 */
#include "page_snippet.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define GEARS "-      gears: {module: 2 mm, pressure angle: 25 deg, helix angle: 0 deg}\n"
#define WITH  GEARS "+      gears: {module: 2 mm, pressure angle: 25 deg, "
#define BEVELS                                                                                     \
    "-      bevels: {teeth: [25, 38], module: 2 mm, spiral: 12 deg, hand: right, face: 10 mm, "    \
    "side: rear}\n+      bevels: {teeth: [25, 38], module: 2 mm, hand: right, side: rear, "
#define PUMP "-        - {teeth: 57, face: 10 mm, rear: hydraulic pump 2}\n"

/* What fails, the words before the number, and what it is typed into. */
typedef struct remedy {
    const char *rule, *fails, *words, *mended;
    double      back; /* added to the number: on the failing side again */
} remedy;

static const remedy remedies[] = {
    {"C2-pointed-tip", WITH "addendum: 1.35, dedendum: 1.55}\n", "an addendum of at most ",
     WITH "addendum: %.6g, dedendum: 1.55}\n", 0.002},
    {"C2-root-interference", WITH "addendum: 1.25}\n", "an addendum of at most ",
     WITH "addendum: %.6g}\n", 0.002},
    {"C1-contact-ratio", WITH "addendum: 0.7}\n", "an addendum of at least ",
     WITH "addendum: %.6g}\n", -0.002},
    {"C1-bevel-contact-ratio",
     BEVELS "spiral: 12 deg, face: 10 mm, addendum: 0.65, dedendum: 0.85}\n",
     "a spiral of at least ",
     BEVELS "spiral: %.6g deg, face: 10 mm, addendum: 0.65, dedendum: 0.85}\n", -0.05},
    {"C1-bevel-contact-ratio",
     BEVELS "spiral: 12 deg, face: 10 mm, addendum: 0.65, dedendum: 0.85}\n", "a face of at least ",
     BEVELS "spiral: 12 deg, face: %.6g mm, addendum: 0.65, dedendum: 0.85}\n", -0.05},
    {"C2-bevel-thin-toe",
     BEVELS "spiral: 12 deg, face: 10 mm, profile shift: 0.95, thickness shift: -0.15}\n",
     "a profile shift of at most ",
     BEVELS "spiral: 12 deg, face: 10 mm, profile shift: %.6g, thickness shift: -0.15}\n", 0.002},
    {"C2-bore-within-root",
     PUMP "+        - {teeth: 57, face: 10 mm, rim: 58 mm, rear: hydraulic pump 2}\n",
     "make the rim ",
     PUMP "+        - {teeth: 57, face: 10 mm, rim: %.6g mm, rear: hydraulic pump 2}\n", 0.05},
    {"C6-mesh-solvable", WITH "dedendum: 1.7}\n", "use a dedendum below ", WITH "dedendum: %.6g}\n",
     0.002},
};

static size_t typed(const remedy *r, double number)
{
    char diff[700];

    snprintf(diff, sizeof diff, r->mended, number);
    ts_study    *study = changed_study(diff);
    const size_t count = findings_of(study, r->rule);
    ts_study_close(study);
    return count;
}

static void nearest_values_close_their_findings_and_nothing_nearer_does(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof remedies / sizeof remedies[0]; i++) {
        const remedy     *r       = &remedies[i];
        ts_study         *study   = changed_study(r->fails);
        const ts_finding *finding = first_finding_of(study, r->rule);
        assert_non_null(finding);
        const char *at = strstr(finding->remedy, r->words);
        if (at == NULL)
            fail_msg("%s: `%s` has no `%s`", r->rule, finding->remedy, r->words);
        const double number = strtod(at + strlen(r->words), NULL);
        ts_study_close(study);
        if (typed(r, number) != 0)
            fail_msg("%s still speaks at %g", r->rule, number);
        if (typed(r, number + r->back) == 0)
            fail_msg("%s is silent at %g already", r->rule, number + r->back);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nearest_values_close_their_findings_and_nothing_nearer_does),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
