/* rating/drive_rubbing.h: do the flanks of a drive rub so hot that they scuff, and is the oil
 * between them thick enough?
 *
 * Methods   Scuffing by the flash temperature (ISO/TS 6336-20) and by the integral temperature
 *           (ISO/TS 6336-21; of bevels on the virtual cylindrical gears of their mean section).
 *           Micropitting by ISO/TS 6336-22, method B, which indicates and never governs; bevels
 *           have no such number.
 * Flanks    The gear that power enters drives: the driver of the mesh, or the other gear where
 *           power flows to the spool.  The flank that works is that of rating/drive_teeth.h, and so
 *           are loads and load factors.
 * Bulk      Temperatures of the teeth are estimated by each method itself.
 * Films     Are asked for apart, once: a film costs ten times a temperature.  Without
 *           `micropitting stage` no rule asks for them, and only who shows them computes them.
 * Workings  Of the oil about the record `oil`; of a mesh about the tooth number of the driven gear,
 *           as ISO 6336 and ISO 10300 have them, and lent to the mesh.  Inputs are found by name
 *           and value, so equal names of two methods do not hide each other's origin.
 */
#ifndef TS_RATING_DRIVE_RUBBING_H
#define TS_RATING_DRIVE_RUBBING_H

#include "element/oil_viscosity.h"
#include "rating/drive_teeth.h"
#include "rating/micropitting/micropitting.h"
#include "rating/scuffing/scuffing.h"

/* One mesh in one condition.  Read it where the mesh is loaded then (ts_mesh_case). */
typedef struct ts_scuffing_case {
    const char *missing;                  /* NULL, or what a rating lacks                    */
    int         driver;                   /* which gear of the mesh drives, 1 or 2           */
    double      theta_M, theta_Bmax, S_B; /* K, K, 1  flash temperature; bevels: NaN          */
    double      theta_Mint, theta_int, S_intS; /* K, K, 1  integral temperature                */
    const char *hot_spot; /* where it is hottest; bevels: NULL                */
    unsigned    remarks;  /* set of ts_scuffing_remark                       */
} ts_scuffing_case;

typedef struct ts_film_of_case {
    const char *missing;
    double      theta_M;             /* K                                               */
    double      lambda_GFmin, h_min; /* 1, m                                            */
    double      S_lambda;            /* 1  NaN: nothing is asked of this oil            */
    const char *where;               /* the film is least                               */
    unsigned    remarks;             /* set of ts_micropitting_remark                   */
} ts_film_of_case;

typedef struct ts_mesh_rubbing {
    const char     *missing; /* NULL, or what the file lacks for any of it: a noun               */
    ts_least_safety S_B, S_intS;  /* of all conditions; S_B of bevels: INFINITY, never asked  */
    ts_least_safety lambda_GFmin; /* least film: read it once films were asked for */
} ts_mesh_rubbing;

/* The oil of the drive; NaN: not known. */
typedef struct ts_rubbing_oil {
    const char  *missing; /* NULL, or what the file lacks                                  */
    ts_subject   subject; /* of its workings                                               */
    ts_lubricant kind;
    ts_film_law  law;
    double       X_L, S_FZG;
    double *theta_oil, *eta_oil; /* [condition] K, Pa.s                                          */
} ts_rubbing_oil;

typedef struct ts_rubbing {
    const ts_teeth   *teeth;
    double            S_Bmin, S_intSmin, S_lambdamin; /* NaN: not known                  */
    ts_rubbing_oil    oil;
    ts_mesh_rubbing  *mesh;   /* [mesh]                          */
    ts_scuffing_case *cases;  /* [condition * mesh_count + mesh] */
    bool              filmed; /* were films asked for?           */
    ts_film_of_case  *films;  /* the same; of bevels: `missing`  */
} ts_rubbing;

/* Memory for one drive; the teeth need only be prepared. */
ts_status ts_rubbing_prepare(const ts_drive *drive, const ts_teeth *teeth, ts_arena *arena,
                             ts_rubbing *out);

/* Scuffing of everything behind solved teeth, and films where a rule asks for them or the steps are
 * noted.  Allocates nothing. */
void ts_rubbing_solve(const ts_drive *drive, ts_rubbing *rubbing, ts_workings *workings);

/* The films of everything that was solved, unless they stand there already. */
void ts_rubbing_films(const ts_drive *drive, ts_rubbing *rubbing, ts_workings *workings);

/* Was this mesh loaded in this condition, and rated by its first standard?  Else there is nothing
 * to tell of rubbing either. */
static inline bool ts_rubbing_stands(const ts_rubbing *rubbing, uint32_t mesh, uint32_t condition)
{
    const uint32_t      count = rubbing->teeth->motion->train->mesh_count;
    const ts_mesh_case *one   = &rubbing->teeth->cases[(size_t)condition * count + mesh];

    return one->loaded && one->missing == NULL && one->fault == NULL;
}

#endif
