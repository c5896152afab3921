/* support/spoil.h: is an answer refused when any one number of its question is none, or cannot be?
 *
 *   static const spoil_at all[] = {SPOIL(ts_ball_set, D_w, 0.0), SPOIL(ts_ball_set, f_c, -1.0)};
 *   spoil_each(&sound, sizeof sound, has_capacity, all, sizeof all / sizeof all[0]);
 */
#ifndef TS_SUPPORT_SPOIL_H
#define TS_SUPPORT_SPOIL_H

#include <stdbool.h>
#include <stddef.h>

/* A double of a record, and a value that it cannot have. */
typedef struct spoil_at {
    const char *name;
    size_t      offset;
    double      bad;
} spoil_at;

#define SPOIL(type, member, value)                                                                 \
    {                                                                                              \
#member, offsetof(type, member), (value)                                                   \
    }

typedef bool spoil_answers(const void *record);

/* The sound record is answered; with NaN or the bad value at any one place it is not. */
void spoil_each(const void *record, size_t size, spoil_answers *answers, const spoil_at *all,
                size_t count);

#endif
