/* response/cvode_library.c: SUNDIALS CVODE, opened for equations with roots. */
#include "response/cvode_library.h"

/* Its messages would go to stderr; the code that it returns says the same. */
static void hush(int code, const char *module, const char *function, char *says, void *context)
{
    (void)code, (void)module, (void)function, (void)says, (void)context;
}

bool ts_cvode_open(ts_cvode *it, const ts_cvode_question *question)
{
    const sunindextype size = (sunindextype)question->size;

    *it = (ts_cvode){.cvode = NULL};
    if (SUNContext_Create(NULL, &it->context) != 0)
        return false;
    it->state      = N_VMake_Serial(size, question->y, it->context);
    it->tolerances = N_VMake_Serial(size, question->weights, it->context);
    if (it->state == NULL || it->tolerances == NULL)
        return false;
    it->solver = SUNNonlinSol_FixedPoint(it->state, 0, it->context);
    it->cvode  = CVodeCreate(CV_ADAMS, it->context);
    return it->solver != NULL && it->cvode != NULL &&
           CVodeSetErrHandlerFn(it->cvode, hush, NULL) == CV_SUCCESS &&
           CVodeInit(it->cvode, question->slope, 0.0, it->state) == CV_SUCCESS &&
           CVodeSVtolerances(it->cvode, question->tolerance, it->tolerances) == CV_SUCCESS &&
           CVodeSetUserData(it->cvode, question->context) == CV_SUCCESS &&
           CVodeSetNonlinearSolver(it->cvode, it->solver) == CV_SUCCESS &&
           CVodeRootInit(it->cvode, question->root_count, question->roots) == CV_SUCCESS &&
           CVodeSetNoInactiveRootWarn(it->cvode) == CV_SUCCESS &&
           CVodeSetStopTime(it->cvode, question->until) == CV_SUCCESS;
}

void ts_cvode_close(ts_cvode *it)
{
    if (it->cvode != NULL)
        CVodeFree(&it->cvode);
    if (it->solver != NULL)
        (void)SUNNonlinSolFree(it->solver);
    if (it->state != NULL)
        N_VDestroy(it->state);
    if (it->tolerances != NULL)
        N_VDestroy(it->tolerances);
    if (it->context != NULL)
        (void)SUNContext_Free(&it->context);
}
