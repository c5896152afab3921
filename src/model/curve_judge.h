/* model/curve_judge.h: does a torque curve have one torque at every speed? */
#ifndef TS_MODEL_CURVE_JUDGE_H
#define TS_MODEL_CURVE_JUDGE_H

#include "model/drive.h"

/* Speeds that are not known are passed over. */
static inline bool ts_curve_rises(const ts_torque_point *points, size_t count)
{
    for (size_t i = 1; i < count; i++)
        if (points[i].speed.value <= points[i - 1].speed.value)
            return false;
    return true;
}

/* Does no known torque of it fall below 0? */
static inline bool ts_curve_takes(const ts_torque_point *points, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (points[i].torque.value < 0.0)
            return false;
    return true;
}

static inline const char *ts_curve_falls(const char *key, const char **which, const char **expected)
{
    *which    = key;
    *expected = "points of rising speed";
    return "the speeds of its points do not rise";
}

#endif
