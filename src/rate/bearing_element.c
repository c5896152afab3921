/* rate/bearing_element.c: how long does a bearing of a rate file last? */
#include "rate/rate_desk.h"
#include "rating/bearing/bearing_rate.h"
#include "rating/bearing/dynamic_capacity.h"

static const char *const asked[] = {"C_r",   "C_0r", "P",    "P_0",   "L_10",  "L_10h",
                                    "kappa", "e_C",  "a_1",  "a_ISO", "L_nmh", "F_rmin",
                                    "S_0",   "n_dm", "D_pw", "D_w",   "Z",     NULL};

static const ts_rated_section section = {
    .title     = "Life and static safety",
    .standard  = "ISO 281:2007, ISO 76:2006",
    .condition = TS_EVERY_CONDITION,
    .asked     = asked,
};

#define GENERIC "data/bearing_inside.tsv: generic inside of the series; common practice, no source"

/* What the file gives, or the row of the series; without both it is lacking. */
static double own_or_row(ts_rate_desk *desk, const char *key, bool row, double of_row,
                         const char *unit, const char *source)
{
    if (ts_rate_is_given(desk, key))
        return ts_rate_take(desk, key);
    if (!row)
        return ts_rate_need(desk, key);
    if (!desk->failed)
        ts_workings_row(desk->workings, key, of_row, unit, source);
    return of_row;
}

static ts_bearing take_bearing(ts_rate_desk *desk)
{
    static const char *const names[] = {"19", "10", "02", "03"};
    const int                series  = ts_rate_choose(desk, "series");
    ts_bearing_size          size    = {.series = "", .D = NAN};
    ts_bearing_inside        row     = {.Z = 0, .D_w = NAN, .L_we = NAN, .D_pw = NAN};
    ts_bearing               bearing = {.form = (ts_bearing_form)ts_rate_choose(desk, "form")};

    bearing.d = ts_rate_take(desk, "d");
    const bool sized =
        series >= 0 && ts_bearing_size_of(ts_text_of(names[series]), bearing.d, &size);
    const bool known = sized && ts_bearing_inside_of(bearing.form, &size, &row);

    if (series >= 0 && !known)
        ts_rate_cannot(desk, "the inside",
                       "no generic bearing of that form, series and bore is "
                       "in the table; give D, Z and D_w");
    bearing.rows  = ts_rate_take_whole(desk, "rows");
    bearing.alpha = ts_rate_take(desk, "alpha");
    bearing.D     = own_or_row(desk, "D", sized, size.D, "m", "data/bearing_size.tsv: ISO 15:2017");
    const double Z      = own_or_row(desk, "Z", known, row.Z, "1", GENERIC);
    bearing.inside.Z    = isnan(Z) ? 0 : (int)Z;
    bearing.inside.D_w  = own_or_row(desk, "D_w", known, row.D_w, "m", GENERIC);
    bearing.inside.D_pw = own_or_row(desk, "D_pw", true, (bearing.d + bearing.D) / 2.0, "m",
                                     "halfway between bore and outside");
    bearing.inside.f_i  = ts_rate_take(desk, "f_i");
    bearing.inside.f_e  = ts_rate_take(desk, "f_e");
    bearing.inside.L_we = NAN;
    if (bearing.form == TS_BEARING_CYLINDRICAL_ROLLER)
        bearing.inside.L_we = own_or_row(desk, "L_we", known, row.L_we, "m", GENERIC);
    bearing.C_r  = ts_rate_take(desk, "C_r");
    bearing.C_0r = ts_rate_take(desk, "C_0r");
    return bearing;
}

static void note_constants(ts_rate_desk *desk, const ts_bearing *bearing)
{
    const bool roller = bearing->form == TS_BEARING_CYLINDRICAL_ROLLER;

    ts_rate_borrow(desk, "i", bearing->rows, "rows");
    if (desk->failed)
        return;
    ts_workings_row(desk->workings, "p", roller ? 10.0 / 3.0 : 3.0, "1",
                    "ISO 281:2007, exponent of life (from memory)");
    ts_workings_row(desk->workings, "b_m", roller ? TS_ROLLER_RATING : TS_BALL_RATING, "1",
                    "ISO 281:2007, tables 1 and 6 (from memory)");
    if (!roller) {
        ts_workings_row(desk->workings, "level", TS_BALL_LEVEL, "1",
                        "fitted to ISO 281:2007, table 2: docs/method/bearings.md");
        return;
    }
    ts_workings_row(desk->workings, "D_we", bearing->inside.D_w, "m", "D_w");
}

static void judge_life(ts_rate_desk *desk, const ts_duty_rating *rating, double L_h)
{
    const bool   modified = !isnan(rating->kappa);
    const double L        = modified ? rating->L_nmh : rating->L_10h;
    ts_finding  *finding  = ts_rate_judge(desk, L >= L_h, "rate-bearing-life", TS_REFUSE);

    if (finding == NULL)
        return;
    ts_rate_limit(finding, modified ? "L_nmh" : "L_10h", L, L_h, TS_KIND_TIME);
    if (isnan(L)) {
        finding->state = TS_NOT_COMPUTABLE;
        ts_rate_says(desk, finding,
                     "the modified life cannot be computed: the viscosity ratio is "
                     "below 0.1");
        return;
    }
    finding->margin = L / L_h - 1.0;
    ts_rate_says(desk, finding, "the bearing lasts %s hours, less than %s",
                 ts_rate_shown(desk, L / 3600.0, TS_KIND_NUMBER),
                 ts_rate_shown(desk, L_h / 3600.0, TS_KIND_NUMBER));
    ts_rate_remedy(desk, finding, "take a larger bearing or a pair, or lower the load");
}

static void judge_rest(ts_rate_desk *desk, const ts_duty_rating *rating,
                       const ts_bearing_ability *ability, double n)
{
    const double least = ts_rate_take(desk, "S_0min");
    ts_finding  *finding =
        ts_rate_judge(desk, rating->S_0 >= least, "rate-static-safety", TS_REFUSE);

    ts_rate_limit(finding, "S_0", rating->S_0, least, TS_KIND_NUMBER);
    ts_rate_says(desk, finding, "the static safety is %s, less than %s",
                 ts_rate_shown(desk, rating->S_0, TS_KIND_NUMBER),
                 ts_rate_shown(desk, least, TS_KIND_NUMBER));
    finding = ts_rate_judge(desk, !rating->outside_life_law, "rate-range-bearing-load", TS_WARN);
    ts_rate_limit(finding, "P", rating->P, ability->C_r / 2.0, TS_KIND_FORCE);
    ts_rate_says(desk, finding,
                 "the load %s is above half of the capacity, where the law of life "
                 "ends",
                 ts_rate_shown(desk, rating->P, TS_KIND_FORCE));
    finding =
        ts_rate_judge(desk, !(n > 0.0) || rating->P >= rating->F_rmin, "rate-least-load", TS_WARN);
    ts_rate_limit(finding, "P", rating->P, rating->F_rmin, TS_KIND_FORCE);
    ts_rate_says(desk, finding,
                 "the load %s is below the least load %s; the rolling elements may "
                 "slip",
                 ts_rate_shown(desk, rating->P, TS_KIND_FORCE),
                 ts_rate_shown(desk, rating->F_rmin, TS_KIND_FORCE));
    if (!rating->within)
        ts_rate_remark(desk, "axial-load",
                       "the axial load is beyond the last row of the table of load factors; the "
                       "row's factors are used",
                       "ISO 281:2007, table 3 (from memory)", TS_WARN);
}

static void rate(ts_rate_desk *desk, const ts_bearing *bearing)
{
    const ts_bearing_duty duty = {.F_r = ts_rate_take(desk, "F_r"),
                                  .F_a = ts_rate_take(desk, "F_a"),
                                  .n   = ts_rate_take(desk, "n"),
                                  .nu  = ts_rate_take(desk, "nu")};
    const ts_bearing_want want = {.S         = ts_rate_take(desk, "S"),
                                  .e_C       = ts_rate_take(desk, "e_C"),
                                  .cleanness = (ts_cleanness)ts_rate_choose(desk, "cleanness")};
    const double          L_h  = ts_rate_take(desk, "L_h");
    ts_bearing_ability    ability;

    if (desk->failed || ts_rate_lacks(desk))
        return;
    note_constants(desk, bearing);
    const ts_bearing_fault fault = ts_bearing_prepare(bearing, &ability, desk->workings);
    if (fault != TS_BEARING_FINE) {
        ts_rate_cannot(desk, "the capacity", ts_bearing_fault_says(fault));
        return;
    }
    const ts_duty_rating rating =
        ts_bearing_duty_rate(bearing, &ability, &duty, &want, desk->workings);
    judge_rest(desk, &rating, &ability, duty.n);
    if (!isnan(L_h) && duty.n > 0.0)
        judge_life(desk, &rating, L_h);
}

void ts_rate_bearing_element(ts_rate_desk *desk, const ts_rate_bearing *given)
{
    ts_rate_open_element(desk, "bearing", &ts_table_rate_bearing, given);
    ts_rate_open_section(desk, &section);
    const ts_bearing bearing = take_bearing(desk);

    if (!desk->failed)
        rate(desk, &bearing);
    (void)ts_rate_close_section(desk);
    ts_rate_close_element(desk);
}
