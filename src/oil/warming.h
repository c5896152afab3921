/* oil/warming.h: how does play between teeth change as a drive grows hot?
 *
 * Bodies    Every shaft with its gears is one body of one temperature, the casing another; the oil
 *           between them is as warm as half way between feed and return, and holds no heat itself.
 *
 * Heat      Of each condition by the first method of oil/drive_heat.h.  That of the teeth enters
 * the gears, half of it each; what else arises enters the oil at once.
 *
 * Casing    Takes heat from the oil through 200 W/(m2.K) of its developed area (ISO/TR 14179-2,
 * from memory) and gives it to air of a known temperature through 15 W/(m2.K) (the same); where no
 * air is told it gives off none, as in oil/drive_heat.h.
 *
 * Gears     Exchange heat with oil and mist through faces and rim, 400 W/(m2.K); the bands of play
 *           take in 200 and 1000 (common practice, no source): jets cool well, and gears in a dry
 *           corner do not.
 *
 * Metals    3 R over the atomic mass of the main metal: the law of Dulong and Petit.
 *
 * Play      By element/backlash_bounds.h at the temperatures of the moment: the mean of both shafts
 *           and the casing, over all that the makers may leave.
 *
 * Solution  Exact between two changes of condition: the bodies are linear and symmetric, so that
 *           each of their modes goes its own way.  The energies are added up beside it.
 *
 * Left out  Bevels, whose play moves with the spool (rating/drive_float.h); feed that warms up with
 *           the tank: it is as the file has it for the condition from the first moment.
 */
#ifndef TS_OIL_WARMING_H
#define TS_OIL_WARMING_H

#include "mass/mass.h"
#include "oil/drive_heat.h"

/* W/(m2.K), ISO/TR 14179-2, from memory */
#define TS_WARM_OIL_TO_METAL  200.0
#define TS_WARM_CASING_TO_AIR 15.0

typedef struct ts_warm_leg {
    uint32_t condition;
    double   duration; /* s, > 0 */
} ts_warm_leg;

typedef struct ts_warm_question {
    const ts_heat     *heat; /* solved, as all of these */
    const ts_mass     *mass;
    uint32_t           drive;
    const ts_warm_leg *legs;
    size_t             leg_count;
    double             soak;     /* K, of everything at the beginning                   */
    double             alpha[2]; /* 1/K, expansion of gears and casing where the file tells none */
    double             air;      /* K, round the casing; NaN: it gives off no heat      */
    size_t             samples; /* of every leg, >= 1, its end with them; closer at its beginning */
} ts_warm_question;

/* At one moment of the course, with gears that exchange heat as the casing does. */
typedef struct ts_warm_moment {
    double   t;           /* s                                     */
    uint32_t leg;         /* that it ends, or stands in            */
    double   oil, casing; /* K                                     */
    double   least, most; /* K, of the bodies of gears            */
} ts_warm_moment;

/* Play of one mesh, normal to the flanks, m: what it is at least and at most by its allowances and
 * by how well its gears exchange heat. */
typedef struct ts_warm_play {
    uint32_t    mesh;
    const char *missing;    /* NULL, or what the file lacks: a noun       */
    double     *low, *high; /* [moment]; NaN: the axes come too close, in
                               any of the bands                       */
    size_t least, most;     /* moments of the least `low` and the most `high` */
} ts_warm_play;

typedef struct ts_warm_course {
    const char     *missing; /* NULL, or what the file lacks for any of it: a noun */
    const char     *fault;   /* NULL, or what went wrong: a sentence's piece */
    const char     *lacks;   /* ... of which part; NULL: of the drive             */
    ts_warm_moment *moments;
    size_t          moment_count;
    ts_warm_play   *plays; /* of the cylindrical meshes of the drive */
    size_t          play_count;
    double          gears[2], apart[2];  /* K, of all meshes and moments: least and most of the
                                            gears' temperature and of the casing's above it */
    double heat, carried, given, stored; /* J, that arose, left with the oil, left to the air,
                                            is held at the end above the beginning          */
    double balance; /* 1, what of these does not add up, over the largest of them       */
} ts_warm_course;

/* Memory is taken from `arena`.  TS_NO_MEMORY; what cannot be computed is `missing`. */
ts_status ts_warm_follow(const ts_warm_question *question, ts_arena *arena, ts_warm_course *out);

#endif
