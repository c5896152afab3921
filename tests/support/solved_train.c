/* support/solved_train.c: what do motion and power say of a hand-built drive? */
#include "support/solved_train.h"

#include "support/close.h"

void solved_open(solved_train *solved, const hand_train *h)
{
    solved->arena = ts_arena_open(NULL);
    assert_non_null(solved->arena);
    solved->list = ts_diagnostics_open(solved->arena, "drive.yaml", TS_TEXT(""));
    assert_non_null(solved->list);
    assert_int_equal(ts_motion_prepare(&h->drive, &h->train, solved->arena, &solved->motion),
                     TS_OK);
    assert_int_equal(ts_power_prepare(&h->drive, &solved->motion, solved->arena, &solved->power),
                     TS_OK);
}

void solved_solve(solved_train *solved, const hand_train *h, ts_workings *workings)
{
    solved->status = ts_motion_solve(&h->drive, &solved->motion, solved->list, workings);
    if (solved->status == TS_OK)
        assert_int_equal(ts_power_solve(&h->drive, &solved->power, workings), TS_OK);
}

void solved_usual(solved_train *solved, const hand_train *h)
{
    solved_open(solved, h);
    solved_solve(solved, h, NULL);
    assert_int_equal(solved->status, TS_OK);
    assert_int_equal(ts_diagnostics_count(solved->list), 0);
}

void solved_close(solved_train *solved)
{
    ts_arena_close(solved->arena);
}
