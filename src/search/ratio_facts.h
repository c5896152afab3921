/* search/ratio_facts.h: which tooth numbers give a ratio, all of them, and why no others do.
 *
 * Ratio     turns of the driver for one turn of the driven wheel: z_2/z_1 of a pair.
 * Trains    pair     z_1 drives z_2; the sense is reversed.
 *           idler    z_1 drives an idler z_2, that drives z_3; ratio z_3/z_1, sense kept.
 *           cluster  z_1 drives z_2, on whose shaft z_3 drives z_4; ratio z_2*z_4/(z_1*z_3),
 *                    sense kept.  Two meshes in the other order are another train: the shaft
 *                    between them has another speed.
 * Exact     Everything here is compared in whole numbers; `error` alone is a double, for people.
 */
#ifndef TS_SEARCH_RATIO_FACTS_H
#define TS_SEARCH_RATIO_FACTS_H

#include "base/rational.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum {
    TS_RATIO_TEETH   = 400, /* most teeth of a gear                              */
    TS_RATIO_CLUSTER = 160, /* most different tooth numbers of a cluster's range */
    TS_RATIO_ROOM    = 64,  /* longest list of the best                          */
    TS_RATIO_NEARER  = 12   /* nearer ratios that are kept                       */
};

typedef enum ts_ratio_train { TS_RATIO_PAIR, TS_RATIO_IDLER, TS_RATIO_TWO } ts_ratio_train;

/* A pair with a fixed centre distance: the profile shifts that it asks for. */
typedef struct ts_ratio_centre {
    double a_w, m_n, alpha; /* m, m, rad; a_w 0: free */
    double x_least, x_most; /* of x_1 + x_2 */
} ts_ratio_centre;

typedef struct ts_ratio_wish {
    ts_rational     wanted, low, high; /* low <= wanted <= high; terms up to 1e9 (wanted), 1e16 */
    int             z_least, z_most;
    ts_ratio_train  train;
    bool            sharing; /* lists take trains whose meshes share a divisor too */
    ts_ratio_centre centre;  /* of a pair */
    size_t          room;    /* 1 to TS_RATIO_ROOM */
} ts_ratio_wish;

typedef struct ts_ratio_teeth {
    int      z[4];   /* as many as the train has */
    int      shared; /* the largest divisor that a mesh shares; 1: every mesh hunts */
    int64_t  miss;   /* |over*wanted.under - wanted.over*under|, with over/under the ratio */
    int64_t  under;  /* miss/under orders trains by closeness */
    double   error;  /* ratio/wanted - 1 */
    int64_t  weight; /* sum of z squared: mass at one module and face, less a factor */
    uint32_t idlers; /* how many idlers hunt with both; 0: no idler train */
} ts_ratio_teeth;

typedef struct ts_ratio_list {
    ts_ratio_teeth items[TS_RATIO_ROOM];
    size_t         count;
} ts_ratio_list;

typedef struct ts_ratio_facts {
    uint64_t       looked_at;       /* ratios that were compared: pairs, or products of pairs */
    uint64_t       inside, hunting; /* within low..high: all trains; those whose meshes all hunt */
    uint64_t       too_far;         /* hunting pairs within, whose shifts the centre forbids */
    ts_ratio_list  closest, lightest; /* within low..high */
    bool           has_nearest;
    ts_ratio_teeth nearest; /* of all hunting trains of the range, inside low..high or not */
    /* Ratios in lowest terms, none above z_most, nearer than `nearest`; none is a hunting pair of
     * the range.  Of pairs only, simplest first. */
    ts_rational nearer[TS_RATIO_NEARER];
    uint64_t    nearer_count;
} ts_ratio_facts;

/* Called with every train of the lists' kind within low..high, in the order of z; false stops. */
typedef bool (*ts_ratio_visit)(void *context, const ts_ratio_teeth *teeth);

void ts_ratio_find(const ts_ratio_wish *wish, ts_ratio_facts *facts, ts_ratio_visit visit,
                   void *context);

/* -1, 0, 1 as a/b is below, at, above c/d; all positive; exact without a wider type. */
int ts_ratio_compare(int64_t a, int64_t b, int64_t c, int64_t d);

/* x_1 + x_2 of spur teeth that closes the mesh at the centre distance; NaN: none does.
 * ISO 21771:2007, working pressure angle and sum of profile shifts. */
double ts_ratio_shift(const ts_ratio_centre *centre, int z_1, int z_2);

/* The hunting pair nearest to the ratio among those with that driver (or, other, that driven
 * wheel); z 0 when there is none. */
int ts_ratio_nearest_wheel(ts_rational wanted, int kept, bool kept_drives, int z_least, int z_most);

#endif
