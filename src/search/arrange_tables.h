/* search/arrange_tables.h: what the search looks up, worked out once for a problem, a box, a pair.
 *
 * A *pair* is one choice of module and input teeth of one box.  A *set* is a bit mask of
 * accessories.  Widths are whole steps; STEPS_NONE stands for "no width will do".
 */
#ifndef TS_SEARCH_ARRANGE_TABLES_H
#define TS_SEARCH_ARRANGE_TABLES_H

#include "base/arena.h"
#include "search/arrange_problem.h"

#include <stdatomic.h>

#define TS_STEPS_NONE  ((uint32_t)60000)
#define TS_ANGLE_SLACK 1e-9  /* rad; angles and clearances may miss by this      */
#define TS_REACH_SLACK 1e-9  /* m; tips may come nearer to an axis by this    */
#define TS_SPEED_SLACK 1e-12 /* relative; bands may miss by this                 */
#define TS_STEP_SLACK  1e-9  /* steps of width; see ts_steps_of                  */
#define TS_POWER_NONE  1e-6  /* W; a smaller sum of powers loads no flank        */
#define TS_MASS_SLACK  1e-10 /* relative; masses nearer than this count as equal */

enum { TS_LOAD_AHEAD = 1, TS_LOAD_BACK = 2 };   /* bits: is a sum of powers ever > 0, ever < 0? */
enum { TS_SENSE_PLUS = 0, TS_SENSE_MINUS = 1 }; /* a shaft's sense as an index */
enum { TS_KEYS_MOST = TS_ARRANGE_ACCESSORIES + 2 };

/* What one shaft may carry: one accessory on one face, or two back to back. */
typedef struct ts_carry {
    uint32_t set;
    int8_t   on[2];  /* accessory on the front, on the rear; -1: none */
    uint8_t  senses; /* bit TS_SENSE_x: the shaft may turn so         */
    double   pad_mass;
} ts_carry;

/* Of one box, whatever its choice. */
typedef struct ts_box_tables {
    uint32_t  allowed; /* set of accessories that may sit here */
    uint32_t  left_only, right_only;
    ts_carry *carries;
    size_t    carry_count;
    /* Bodies fall into classes by radius, smallest first. */
    size_t  key_count;
    double  radius[TS_KEYS_MOST];
    double  half[TS_KEYS_MOST];                /* rad; separations are at least half + half */
    double  apart[TS_KEYS_MOST][TS_KEYS_MOST]; /* rad; infinite when two cannot share a face */
    uint8_t key[TS_ARRANGE_ACCESSORIES];
    int8_t  input_key[2]; /* of the fixed body at the input; -1: none */
    size_t  reach_most;   /* bodies of one face that a label may have to remember */
    /* Per face and set: the classes that may still come to this face, as bits. */
    uint32_t *open_keys[2];
    double    casing; /* kg per rad, with what wrap counts as */
    /* Does servicing count?  Per face and accessory: kg that it counts as for each that it is in
     * the way of; 0 where it may not stand. */
    bool   serviced;
    double lift[2][TS_ARRANGE_ACCESSORIES];
} ts_box_tables;

static inline uint32_t ts_set_size(uint32_t set)
{
    uint32_t size = 0;
    for (; set != 0; set &= set - 1)
        size++;
    return size;
}

/* What a shaft with these counts as for being in the way of so many on each face. */
static inline double ts_in_way(const ts_box_tables *box, const int8_t on[2], uint32_t fronts,
                               uint32_t rears)
{
    if (!box->serviced)
        return 0.0;
    return (on[0] >= 0 ? box->lift[0][on[0]] * (double)fronts : 0.0) +
           (on[1] >= 0 ? box->lift[1][on[1]] * (double)rears : 0.0);
}

/* Of one module. */
typedef struct ts_module_tables {
    double    m;
    uint16_t *steps_most; /* [z] what width over diameter allows */
    double   *gear_mass;  /* [z * (steps_top + 1) + steps]       */
    uint32_t  steps_top;
    /* Steps of width per newton when `proportional`, [inner reversed + 2 outer reversed],
     * [z_inner * stride + z_outer]; NULL otherwise. */
    double *unit_steps[4];
    double *unit_least[2]; /* [reversed][z]: the least of unit_steps over the partner's teeth */
} ts_module_tables;

typedef struct ts_arrange_tables {
    const ts_arrange_problem *problem;
    uint32_t                  all;    /* every accessory */
    size_t                    stride; /* z runs from 0 to stride - 1 */
    uint32_t                  steps_least;
    uint8_t                  *loads;   /* [set] TS_LOAD_ bits */
    uint8_t                  *coprime; /* [z * stride + z]; all 1 unless hunting */
    ts_box_tables             boxes[TS_ARRANGE_BOXES];
    ts_module_tables         *modules;
} ts_arrange_tables;

/* False without memory, or when a limit of the enumerations above is passed. */
bool ts_arrange_tables_make(ts_arrange_tables *tables, const ts_arrange_problem *problem,
                            ts_arena *arena);

typedef _Atomic(uint64_t) ts_told_width;

typedef struct ts_window {
    uint16_t least, most; /* teeth; empty when least > most */
} ts_window;

/* Of one pair, or of a plane that a step shaft drives there: all gears of a plane have one
 * pitch-line velocity and one module. */
typedef struct ts_pair_tables {
    const ts_arrange_tables *tables;
    const ts_box_tables     *box;
    const ts_module_tables  *module;
    const ts_arrange_box    *frame;
    uint32_t                 box_index, choice;
    uint32_t                 z_in, take_off;
    uint32_t                 module_index;
    uint32_t                 z_first, z_second; /* of a step shaft that drives it; 0: the input */
    uint32_t                 z_nearest;         /* the smallest second gear that drives it */
    double                   turns; /* teeth of a gear on the input that would turn it as fast */
    uint8_t                  input_sense;                    /* as an index */
    ts_window                window[TS_ARRANGE_ACCESSORIES]; /* on a branch */
    uint32_t                 input_fits; /* accessories whose speed the input shaft meets */
    uint32_t                 z_smallest; /* of any gear */
    double                  *angle; /* [z_i + z_j] between the axes, rad; infinite: too large */
    double                  *share; /* [z] angle[z_i + z_j] >= share[z_i] + share[z_j] */
    double *force; /* [set] the largest |force| on the mesh outboard of which the set sits */
    /* [(2 * set + reversed) * stride + z] steps that a gear needs at least for the mesh of that
     * set, whatever its mate; NULL when proportional (unit_least says it), or not asked. */
    uint16_t *least_steps;
    double   *forces; /* [set * conditions + c], signed, N; NULL when proportional */
    /* What the model said before, a direct-mapped memory: set, teeth and flanks in the high bits,
     * the steps in the low ones; 0: nothing yet.  NULL when proportional. */
    ts_told_width *told;
    uint32_t       told_shift;
    /* Of the plane of the input: planes that step shafts drive, and these, plane by plane. */
    struct ts_pair_tables *planes;
    size_t                 plane_count;
    struct ts_plane_step  *steps;
    size_t                 step_count;
} ts_pair_tables;

/* One step shaft. */
typedef struct ts_plane_step {
    uint32_t plane; /* that it drives, from 1; planes[plane - 1] */
    uint16_t z, z_step;
} ts_plane_step;

/* The plane of that number; 0 is that of the input. */
static inline const ts_pair_tables *ts_plane_of(const ts_pair_tables *pair, uint32_t plane)
{
    return plane == 0 ? pair : &pair->planes[plane - 1];
}

/* least: is the model to be asked what gears need at least?  It may take its time. */
bool ts_pair_tables_make(ts_pair_tables *pair, const ts_arrange_tables *tables, uint32_t box,
                         uint32_t choice, bool least, ts_arena *arena);

/* Fills in `least_steps` by what the model says (arrange_least.c). */
bool ts_plane_ask_least(ts_pair_tables *plane, ts_arena *arena);

/* Whole steps of width that a mesh needs which carries everything in `set`. */
uint32_t ts_pair_steps(const ts_pair_tables *pair, uint32_t set, uint32_t z_inner, uint32_t z_outer,
                       bool reversed_inner, bool reversed_outer);

/* `width` / step, rounded up; a width that is above a whole step by rounding alone is that step. */
static inline uint32_t ts_steps_of(double steps)
{
    if (!(steps < (double)TS_STEPS_NONE))
        return TS_STEPS_NONE;
    const double   less  = steps - TS_STEP_SLACK;
    const uint32_t whole = less > 0.0 ? (uint32_t)less : 0;
    return (double)whole < less ? whole + 1 : whole;
}

/* Whole steps of width that a gear needs at least for the mesh that carries everything in `set`. */
static inline uint32_t ts_pair_least(const ts_pair_tables *pair, uint32_t set, uint32_t z,
                                     bool reversed)
{
    if (pair->least_steps != NULL)
        return pair->least_steps[(2 * (size_t)set + (reversed ? 1 : 0)) * pair->tables->stride + z];
    const double *unit = pair->module->unit_least[reversed ? 1 : 0];
    return unit != NULL ? ts_steps_of(pair->force[set] * unit[z]) : 0;
}

/* Is a gear loaded on both flanks, with `outer` beyond its outboard mesh and `inner` beyond its
 * inboard one?  It is the inner gear of the one and the outer gear of the other. */
static inline bool ts_is_reversed(const ts_arrange_tables *t, uint32_t outer, uint32_t inner)
{
    const uint8_t o = t->loads[outer], i = t->loads[inner];
    const bool    leading  = (o & TS_LOAD_AHEAD) != 0 || (i & TS_LOAD_BACK) != 0;
    const bool    trailing = (o & TS_LOAD_BACK) != 0 || (i & TS_LOAD_AHEAD) != 0;
    return leading && trailing;
}

#endif
