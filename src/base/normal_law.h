/* base/normal_law.h: which share of a normal law lies below a place, and where does a share end? */
#ifndef TS_BASE_NORMAL_LAW_H
#define TS_BASE_NORMAL_LAW_H

/* Share below z standard deviations. */
double ts_normal_share(double z);

/* The z below which the share lies, 0 < share < 1, to a few roundings; NaN outside. */
double ts_normal_place(double share);

#endif
