/* rating/teeth_flank.c: what does each flank of a gear meet at most, and how far does that turn the
 * bending of its roots round? */
#include "rating/drive_teeth_parts.h"

#include <math.h>

static ts_flank_peak *peak_of(const ts_teeth_case *c, uint32_t gear, ts_flank flank)
{
    return &c->teeth->scratch->peaks[2 * gear + (flank == TS_FLANK_LEADING ? 0 : 1)];
}

static ts_flank other(ts_flank flank)
{
    return flank == TS_FLANK_LEADING ? TS_FLANK_TRAILING : TS_FLANK_LEADING;
}

static uint32_t gear_of(const ts_mesh *mesh, int side)
{
    return side == 0 ? mesh->driver : mesh->driven;
}

void ts_teeth_peaks(const ts_teeth_case *c)
{
    for (uint32_t g = 0; g < 2 * c->train->gear_count; g++)
        c->teeth->scratch->peaks[g] = (ts_flank_peak){0.0, 0, 0};
    for (uint32_t condition = 0; condition < c->drive->condition_count; condition++)
        for (uint32_t m = 0; m < c->train->mesh_count; m++) {
            const ts_mesh_case *one = ts_teeth_at(c, m, condition);
            const ts_mesh_load *load =
                &c->teeth->power->mesh[(size_t)condition * c->train->mesh_count + m];

            if (!one->loaded)
                continue;
            for (int side = 0; side < 2; side++) {
                ts_flank_peak *peak =
                    peak_of(c, gear_of(&c->train->meshes[m], side), load->flank[side]);

                if (one->w > peak->w)
                    *peak = (ts_flank_peak){one->w, m, condition};
            }
        }
}

/* The tooth is bent to one side by this load and to the other by the largest that its other flank
 * ever meets: in the same turn for an idler, at another time for a gear that starts the engine. */
double ts_teeth_stress_ratio(const ts_teeth_case *c, uint32_t m, uint32_t condition, int side)
{
    static const char *const names[2] = {"R_1", "R_2"};
    const ts_mesh_load *load = &c->teeth->power->mesh[(size_t)condition * c->train->mesh_count + m];
    const ts_subject    own  = ts_teeth_subject(c, m, (int32_t)condition);
    const double        w    = ts_teeth_at(c, m, condition)->w;
    const ts_flank_peak *back =
        peak_of(c, gear_of(&c->train->meshes[m], side), other(load->flank[side]));

    if (!(back->w > 0.0)) {
        ts_workings_assumed(c->workings, names[side], 0.0, "1",
                            "its teeth are loaded on one flank only");
        return 0.0;
    }
    const ts_subject lender = ts_teeth_subject(c, back->mesh, (int32_t)back->condition);
    const bool       more   = w >= back->w;

    ts_workings_borrow(c->workings, more ? "w_less" : "w_more", back->w, lender, "w");
    ts_workings_borrow(c->workings, more ? "w_more" : "w_less", w, own, "w");
    const double R =
        more ? ts_stress_ratio(w, back->w, c->workings) : ts_stress_ratio(back->w, w, c->workings);
    ts_workings_borrow(c->workings, names[side], R, own, "R");
    return R;
}

static const char *const shown_names[8] = {"S_H1",     "S_H2",     "S_F1",     "S_F2",
                                           "sigma_H1", "sigma_H2", "sigma_F1", "sigma_F2"};

void ts_teeth_lend(const ts_teeth_case *c, uint32_t m, uint32_t condition)
{
    const ts_iso6336_gear_rating *g        = ts_teeth_at(c, m, condition)->rating.gear;
    const double                  shown[8] = {g[0].S_H,     g[1].S_H,     g[0].S_F,     g[1].S_F,
                                              g[0].sigma_H, g[1].sigma_H, g[0].sigma_F, g[1].sigma_F};

    ts_workings_about(c->workings, c->train->meshes[m].node, (int32_t)condition);
    for (int i = 0; i < 8; i++)
        ts_workings_borrow(c->workings, shown_names[i], shown[i],
                           ts_teeth_subject(c, m, (int32_t)condition), shown_names[i]);
}
