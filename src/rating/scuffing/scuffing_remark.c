/* rating/scuffing/scuffing_remark.c: where does a rating leave the range of its standard, and what
 * do surfaces stand?
 */
#include "rating/scuffing/scuffing.h"

#include <stddef.h>

#define ISO_20(what) "ISO/TS 6336-20:2017, " what " (from memory)"
#define ISO_21(what) "ISO/TS 6336-21:2017, " what " (from memory)"

typedef struct remark_text {
    ts_scuffing_remark remark;
    const char        *says, *clause;
} remark_text;

static const remark_text texts[TS_SCUFFING_REMARKS] = {
    {TS_SCUFFING_HIGH_RATIO,
     "the transverse contact ratio is 2 or more, for which the load sharing of spur gears has no "
     "formula; equal teeth are taken to share equally",
     ISO_20("load sharing factor")},
    {TS_SCUFFING_OVERLAP,
     "the transverse contact ratio is 3 or more, for which there is no contact ratio factor",
     ISO_21("contact ratio factor")},
    {TS_SCUFFING_PITCH_POINT,
     "the path of contact does not reach the pitch point, and the contact ratio factor does not "
     "hold",
     ISO_21("contact ratio factor")},
    {TS_SCUFFING_RELIEF_OVER,
     "the tip relief is larger than the deflection of the teeth, so that the path of contact is "
     "shorter than computed",
     ISO_20("load sharing factor")},
    {TS_SCUFFING_GRADE, "tip relief does not count for gears of class 7 and coarser",
     ISO_21("tip relief factor")},
    {TS_SCUFFING_SPEED_HELD,
     "the friction is that of 50 m/s, for it was not measured above that speed",
     ISO_21("mean coefficient of friction")},
    {TS_SCUFFING_LOAD_HELD,
     "the friction is that of 150 N/mm, for it was not measured below that load",
     ISO_21("mean coefficient of friction")},
    {TS_SCUFFING_STAGE, "the test A/8.3/90 has the load stages 1 to 12; the result extrapolates it",
     ISO_20("scuffing temperature")},
    {TS_SCUFFING_NO_LIMIT,
     "neither a load stage of the oil nor a scuffing temperature is given: there is no safety",
     ISO_20("scuffing temperature")},
    {TS_SCUFFING_NOTHING_RUBS, "without torque or without speed nothing is heated",
     "derived: no force or no sliding"},
};

static const remark_text *text_of(ts_scuffing_remark remark)
{
    for (size_t i = 0; i < TS_SCUFFING_REMARKS; i++)
        if (texts[i].remark == remark)
            return &texts[i];
    return NULL;
}

const char *ts_scuffing_remark_says(ts_scuffing_remark remark)
{
    const remark_text *text = text_of(remark);

    return text == NULL ? "" : text->says;
}

const char *ts_scuffing_remark_clause(ts_scuffing_remark remark)
{
    const remark_text *text = text_of(remark);

    return text == NULL ? "" : text->clause;
}

typedef struct structure_row {
    const char *name;
    double      X_W;
} structure_row;

/* ISO/TS 6336-20 and -21:2017, structural factor (from memory). */
static const structure_row structures[TS_STRUCTURE_COUNT] = {
    [TS_STRUCTURE_THROUGH_HARDENED] = {"through-hardened", 1.0},
    [TS_STRUCTURE_CASE_LOW]         = {"case-hardened, less than 10 % austenite", 1.15},
    [TS_STRUCTURE_CASE_USUAL]       = {"case-hardened, 10 % to 20 % austenite", 1.0},
    [TS_STRUCTURE_CASE_HIGH]        = {"case-hardened, 20 % to 30 % austenite", 0.85},
    [TS_STRUCTURE_NITRIDED]         = {"nitrided", 1.5},
    [TS_STRUCTURE_PHOSPHATED]       = {"phosphated", 1.25},
    [TS_STRUCTURE_COPPERED]         = {"copper-plated", 1.5},
    [TS_STRUCTURE_STAINLESS]        = {"austenitic stainless", 0.45},
};

double ts_structure_factor(ts_flank_structure structure)
{
    return structures[structure].X_W;
}

const char *ts_structure_name(ts_flank_structure structure)
{
    return structures[structure].name;
}

ts_flank_structure ts_usual_structure(ts_gear_class class)
{
    switch (class) {
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
    case TS_GEAR_NITROCARBURISED:
        return TS_STRUCTURE_NITRIDED;
    case TS_GEAR_THROUGH_HARDENED:
    case TS_GEAR_NORMALISED:
    case TS_GEAR_INDUCTION_HARDENED:
        return TS_STRUCTURE_THROUGH_HARDENED;
    default:
        return TS_STRUCTURE_CASE_USUAL;
    }
}
