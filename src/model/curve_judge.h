/* model/curve_judge.h: does a torque curve have one torque at every speed, and where is it highest?
 */
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

/* The point with the highest torque; NULL: none, or a torque that is not known. */
static inline const ts_torque_point *ts_curve_summit(const ts_torque_point *points, size_t count)
{
    const ts_torque_point *top = NULL;

    for (size_t i = 0; i < count; i++) {
        if (!ts_measure_known(points[i].torque))
            return NULL;
        if (top == NULL || points[i].torque.value > top->torque.value)
            top = &points[i];
    }
    return top;
}

static inline const char *ts_curve_falls(const char *key, const char **which, const char **expected)
{
    *which    = key;
    *expected = "points of rising speed";
    return "the speeds of its points do not rise";
}

#endif
