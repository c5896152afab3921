/* bank/bind_start.c: cases about starts from rest. */
#include "bank/bank_case.h"
#include "response/rigid_start.h"

#include <math.h>

static double number(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_NUMBER);
}

/* A spool with a constant drag, and a starter behind a mesh with losses. */
typedef struct rig {
    double         w[2], T_starter[2], T_drag[2], T_gas[2];
    ts_start_shaft shafts[2];
    ts_start_pad   pad;
    ts_start_spool spool;
    ts_rigid_start start;
} rig;

static void lay(ts_case *c, rig *it)
{
    const double T_0 = ts_case_given(c, "T0", TS_KIND_TORQUE);
    const double T_d = ts_case_given(c, "T_drag", TS_KIND_TORQUE);

    *it       = (rig){.w         = {0.0, ts_case_given(c, "w_free", TS_KIND_ROTATIONAL_SPEED)},
                      .T_starter = {T_0, 0.0},
                      .T_drag    = {T_d, T_d},
                      .T_gas     = {-T_d, -T_d},
                      .shafts    = {{.driver = TS_NO_DRIVER,
                                     .ratio  = 1.0,
                                     .J      = ts_case_given(c, "J_spool", TS_KIND_INERTIA)},
                                    {.ratio = number(c, "ratio"), .loss = 1.0 - number(c, "eta")}}};
    it->pad   = (ts_start_pad){.shaft   = 1,
                               .starter = true,
                               .drive   = {it->w, it->T_starter, 2},
                               .J       = ts_case_given(c, "J_starter", TS_KIND_INERTIA)};
    it->spool = (ts_start_spool){.cranked = true,
                                 .unlit   = {it->w, it->T_drag, 2},
                                 .lit     = {it->w, it->T_gas, 2},
                                 .idle    = ts_case_given(c, "w1", TS_KIND_ROTATIONAL_SPEED)};
    it->start = (ts_rigid_start){.shafts      = it->shafts,
                                 .shaft_count = 2,
                                 .pads        = &it->pad,
                                 .pad_count   = 1,
                                 .spools      = &it->spool,
                                 .spool_count = 1,
                                 .theta       = 1.0,
                                 .delta       = 1.0,
                                 .light_off   = it->spool.idle / 2.0,
                                 .cut_out     = 1e9,
                                 .until       = 1e4,
                                 .tolerance   = 1e-12};
}

static void through_ratio(ts_case *c)
{
    rig          it;
    ts_start_run run;
    ts_arena    *arena = ts_arena_open(NULL);

    lay(c, &it);
    ts_rigid_start_run(&it.start, arena, &run);
    if (run.outcome == TS_START_IDLE)
        ts_case_computed(c, "t", run.t, TS_KIND_TIME);
    it.spool.idle *= 10.0; /* where it hangs: all but still gaining */
    it.start.least = 1e-9;
    it.start.until = 1e6;
    ts_rigid_start_run(&it.start, arena, &run);
    if (run.outcome == TS_START_HUNG)
        ts_case_computed(c, "hang_up_speed", run.w[0], TS_KIND_ROTATIONAL_SPEED);
    ts_arena_close(arena);
}

static const ts_binding bindings[] = {{"trn-start-through-gear-ratio", through_ratio}};
TS_BINDINGS(bindings);
