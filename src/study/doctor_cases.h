/* study/doctor_cases.h: published values that every installation must reproduce. */
#ifndef TS_STUDY_DOCTOR_CASES_H
#define TS_STUDY_DOCTOR_CASES_H

#include <stddef.h>

typedef struct ts_doctor_case {
    const char *proves; /* a subject; those of one subject stand together */
    const char *says;   /* what is computed                            */
    const char *source; /* where the expected value is printed         */
    double      expected;
    double      tol_rel; /* half a unit of the last printed digit      */
    double (*compute)(void);
} ts_doctor_case;

/* Metal, oil and vibration; those of teeth and units stand before them. */
extern const ts_doctor_case ts_doctor_metal[];
extern const size_t         ts_doctor_metal_count;

size_t                ts_doctor_case_count(void);
const ts_doctor_case *ts_doctor_case_at(size_t index);

#endif
