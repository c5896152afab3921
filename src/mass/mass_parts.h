/* mass/mass_parts.h: what the files of the mass room share. */
#ifndef TS_MASS_MASS_PARTS_H
#define TS_MASS_MASS_PARTS_H

#include "mass/mass.h"

#include "catalog/metal.h"

/* What a shaft is taken to be, and what its bearings are.  Whoever knows better sections fills this
 * in instead of ts_mass_generate_shaft. */
struct ts_mass_shape {
    ts_beam_section section; /* tube from x_1 to x_2                                        */
    const ts_mass_outline *outline;   /* NULL: the section is all                              */
    double                 d_journal; /* m, in its bearings                                    */
    double                 r_tip; /* m, of its largest gear; NaN: not known                      */
    int         bearings;         /* how many                                                    */
    const char *missing;          /* NULL, or what the shaft lacks                               */
    bool        assumed;
};

typedef struct ts_mass_job {
    const ts_drive  *drive;
    const ts_train  *train;
    const ts_motion *motion;
    const ts_power  *power;
    ts_mass         *mass;
    ts_workings     *workings;
} ts_mass_job;

static inline ts_band ts_band_of(double low, double value, double high)
{
    return (ts_band){low, value, high};
}
static inline ts_band ts_band_sum(ts_band a, ts_band b)
{
    return (ts_band){a.low + b.low, a.value + b.value, a.high + b.high};
}
static inline ts_band ts_band_times(ts_band a, double factor)
{
    return (ts_band){a.low * factor, a.value * factor, a.high * factor};
}

/* Notes that `name` of the node `about` is what `lender` calls `theirs`; what a node lends to
 * itself under the same name is there already. */
void ts_mass_borrow(const ts_mass_job *job, ts_node about, ts_input what, ts_node lender,
                    const char *theirs);

/* The metal that a pick of `mass` names. */
ts_metal ts_mass_metal(const char *const *keys, ts_pick pick);

/* Shapes of all shafts, from the torques they bear and the file. */
void ts_mass_generate_shafts(const ts_mass_job *job);

/* Each fills the part's band, inertia and what is missing; place and names stand there already. */
void ts_mass_of_gear(const ts_mass_job *job, uint32_t gear, ts_mass_part *part);
void ts_mass_of_bevel(const ts_mass_job *job, uint32_t mesh, int side, ts_mass_part *part);
void ts_mass_of_shaft(const ts_mass_job *job, uint32_t shaft, ts_mass_part *part);
void ts_mass_of_bearings(const ts_mass_job *job, uint32_t shaft, ts_mass_part *part);
/* Its centre and the ends of its mounts too. */
void ts_mass_of_casing(const ts_mass_job *job, uint32_t drive, ts_mass_part *part);
void ts_mass_of_accessory(const ts_mass_job *job, uint32_t pad, ts_mass_part *part);

void ts_mass_sums(const ts_mass_job *job);
void ts_mass_mounts(const ts_mass_job *job, uint32_t drive);
void ts_mass_seen(const ts_mass_job *job);

#endif
