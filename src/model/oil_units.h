/* model/oil_units.h: what a file says of two units that the oil runs through: the pump pack and the
 * separator of the breather.  Both hang on the pad of their accessory.
 *
 * Places in a sump are told from its front wall rearward, from its middle to the right (as seen
 * from behind) and from its floor upward.
 */
#ifndef TS_MODEL_OIL_UNITS_H
#define TS_MODEL_OIL_UNITS_H

#include "model/value.h"

#define TS_SCAVENGE_MOST 7 /* scavenge elements of a pack */

typedef struct ts_scavenge { /* one element and its pick-up */
    const char *name;
    ts_node     node;
    ts_measure  rearward, rightward, above; /* m, of the pick-up */
    ts_measure  width;                      /* m, of its gears; TS_ABSENT: it is sized */
    ts_pick     chip_plug;                  /* ts_answer_yes, in its line; TS_ABSENT: not told */
} ts_scavenge;

typedef struct ts_sump {
    const char  *name;
    ts_node      node;
    ts_measure   share;                 /* 1, of all oil, that comes back to it */
    ts_measure   ratio;                 /* 1, oil and air to be taken over the oil */
    ts_measure   length, width, height; /* m, of a box in the axes of the engine */
    ts_measure   depth;                 /* m, of the oil that lies in it, level */
    ts_scavenge *elements;              /* key `scavenge` */
    size_t       element_count;
} ts_sump;

typedef struct ts_attitude {
    const char *name;
    ts_node     node;
    ts_measure  pitch, roll; /* rad, nose up, right side down, of what the oil feels */
} ts_attitude;

typedef struct ts_pumps { /* key `pumps`; node 0: it is no pump pack */
    ts_node      node;
    ts_measure   flow;               /* m3/s, full flow behind the pressure element */
    ts_measure   elsewhere;          /* m3/s of it that goes to the bearings of the spools */
    ts_measure   pressure;           /* Pa, that the relief valve holds behind it */
    ts_measure   back;               /* Pa, key `scavenge pressure` */
    ts_measure   air;                /* 1, share of air in what the pressure element takes in */
    ts_measure   filling, scavenged; /* 1, keys `filling`, `scavenge filling` */
    ts_measure   slip, viscous, friction; /* 1, C_s, C_d, C_f of Wilson */
    ts_tally     teeth;                   /* of each gear of each element */
    ts_measure   module, pressure_angle;  /* m, rad */
    ts_measure   width;                   /* m, of the pressure element; TS_ABSENT: it is sized */
    ts_measure   plate;                   /* m, between elements */
    ts_measure   tip_speed;               /* m/s, at most */
    ts_measure   cover;                   /* m of oil over a pick-up, at least */
    ts_measure   windmill;                /* rad/s of its spool; TS_ABSENT: not told */
    ts_sump     *sumps;
    size_t       sump_count;
    ts_attitude *attitudes;
    size_t       attitude_count;
} ts_pumps;

typedef struct ts_separator { /* key `separator`; node 0: it is no breather */
    ts_node     node;
    ts_measure  air;           /* m3/s that it lets out */
    ts_measure *air_at;        /* the same, one a condition; TS_ABSENT: as `air` */
    ts_measure  radius, bore;  /* m: where the air enters, radius; of the hollow shaft, diameter */
    ts_measure  length;        /* m, of the rotor */
    ts_measure  chamber;       /* Pa absolute, before it */
    ts_measure  droplet, drop; /* m, Pa: the smallest drop to be thrown out, the most pressure */
} ts_separator;

#endif
