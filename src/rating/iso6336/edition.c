/* rating/iso6336/edition.c: which formulas belong to which year? */
#include "rating/iso6336/edition.h"

#include "rating/iso6336/root_stress.h"

static const ts_iso6336_edition editions[TS_ISO6336_YEARS] = {
    [TS_ISO6336_2019] = {.name                 = "ISO 6336:2019",
                         .ends                 = ts_single_contact_2019,
                         .load_share           = ts_load_share_2019,
                         .helix_bending        = ts_helix_factor_bending_2019,
                         .deep_tooth           = ts_deep_tooth_2019,
                         .rates_helix_ends     = true,
                         .has_mesh_load_factor = true},
    [TS_ISO6336_2006] = {.name                 = "ISO 6336:2006",
                         .ends                 = ts_single_contact_2006,
                         .load_share           = ts_load_share_2006,
                         .helix_bending        = ts_helix_factor_bending_2006,
                         .deep_tooth           = ts_deep_tooth_2006,
                         .rates_helix_ends     = false,
                         .has_mesh_load_factor = false},
};

const ts_iso6336_edition *ts_iso6336_edition_of(ts_iso6336_year year)
{
    return &editions[year];
}
