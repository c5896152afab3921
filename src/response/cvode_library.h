/* response/cvode_library.h: SUNDIALS CVODE, opened for equations with roots.  For src/response
 * alone.
 *
 * Method    Adams of variable order and step, solved by fixed points: nothing here is stiff beyond
 *           what its events are, and no matrix is needed.
 */
#ifndef TS_RESPONSE_CVODE_LIBRARY_H
#define TS_RESPONSE_CVODE_LIBRARY_H

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <stdbool.h>
#include <stddef.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

typedef struct ts_cvode_question {
    size_t   size;      /* of the state                                        */
    double  *y;         /* [size] state, in and out                            */
    double  *weights;   /* [size] absolute tolerances                     */
    double   tolerance; /* relative                                       */
    double   until;     /* s                                              */
    int      root_count;
    CVRhsFn  slope;
    CVRootFn roots;
    void    *context; /* of both                                          */
} ts_cvode_question;

typedef struct ts_cvode {
    SUNContext         context;
    N_Vector           state, tolerances;
    SUNNonlinearSolver solver;
    void              *cvode;
} ts_cvode;

/* False without memory; to be closed in either case. */
bool ts_cvode_open(ts_cvode *it, const ts_cvode_question *question);
void ts_cvode_close(ts_cvode *it);

#endif
