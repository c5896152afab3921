/* rate/pair_overlap.c: do the next teeth take over before the last let go, and if not, what would
 * do?
 */
#include "rate/pair_parts.h"

#define ISO_21771  "ISO 21771:2007"
#define BISECTIONS 60

/* Does the pair overlap, with both tips longer by so many modules? */
static bool overlaps(const ts_cylindrical_pair *pair, double grown)
{
    ts_cylindrical_pair_input in = pair->in;
    ts_cylindrical_pair       other;

    in.tip = TS_TIP_GIVEN;
    in.k_1 = pair->k_1 + grown;
    in.k_2 = pair->k_2 + grown;
    return ts_cylindrical_pair_solve(&in, &other, NULL) == TS_PAIR_FINE && other.eps_alpha >= 1.0;
}

/* By how much both tips would have to grow, in modules.  NaN: by more than two, or to a point; what
 * is long enough may be pointed, so that it is looked for in steps. */
static double longer_tips(const ts_cylindrical_pair *pair)
{
    double enough = 0.0;

    while (enough < 2.0 && !overlaps(pair, enough))
        enough += 0.05;
    if (!(enough < 2.0))
        return NAN;
    double short_of = enough - 0.05;
    for (int i = 0; i < BISECTIONS; i++) {
        const double grown = (short_of + enough) / 2.0;
        if (overlaps(pair, grown))
            enough = grown;
        else
            short_of = grown;
    }
    return enough;
}

/* The contact ratio of the same gears at another centre distance; NaN: none. */
static double overlap_at(const ts_cylindrical_pair *pair, double a_w)
{
    ts_cylindrical_pair_input in = pair->in;
    ts_cylindrical_pair       other;

    in.a_w                    = a_w;
    const ts_pair_fault fault = ts_cylindrical_pair_solve(&in, &other, NULL);
    return fault == TS_PAIR_FINE || fault == TS_PAIR_POINTED ? other.eps_alpha : (double)NAN;
}

/* The farthest axes at which the teeth, as they are, overlap enough; NaN where the axes are not too
 * far apart, or follow from the teeth. */
static double nearer_axes(const ts_cylindrical_pair *pair)
{
    ts_cylindrical_pair_input in = pair->in;
    ts_cylindrical_pair       free_pair;

    in.a_w = 0.0;
    if (!(pair->in.a_w > 0.0) || pair->in.shift != TS_SHIFT_GIVEN ||
        ts_cylindrical_pair_solve(&in, &free_pair, NULL) != TS_PAIR_FINE ||
        !(free_pair.eps_alpha >= 1.0))
        return NAN;
    double near = free_pair.a_w, far = pair->a_w;
    for (int i = 0; i < BISECTIONS && near < far; i++) {
        const double a_w = (near + far) / 2.0;
        if (overlap_at(pair, a_w) >= 1.0)
            near = a_w;
        else
            far = a_w;
    }
    return near < pair->a_w ? near : (double)NAN;
}

/* Tips that pass each other in the open have no contact ratio that is worth a number. */
static bool say_apart(ts_rate_desk *desk, ts_finding *finding, const ts_cylindrical_pair *pair)
{
    const double reach = (pair->d_a1 + pair->d_a2) / 2.0;

    if (pair->in.z_2 < 0 || !(pair->a_w >= reach))
        return false;
    ts_rate_limit(finding, "a_w", pair->a_w, reach, TS_KIND_LENGTH);
    finding->margin = reach / pair->a_w - 1.0;
    ts_rate_says(
        desk, finding,
        "at a centre distance of %s the tips of both gears pass %s apart: they never touch",
        ts_rate_shown(desk, pair->a_w, TS_KIND_LENGTH),
        ts_rate_shown(desk, pair->a_w - reach, TS_KIND_LENGTH));
    return true;
}

void ts_rate_pair_overlap(ts_rate_desk *desk, const ts_cylindrical_pair *pair)
{
    ts_finding *finding =
        ts_rate_judge(desk, pair->eps_alpha >= 1.0, "rate-contact-ratio", TS_REFUSE);
    if (finding == NULL)
        return;
    const double nearer = nearer_axes(pair), grown = isnan(nearer) ? longer_tips(pair) : nearer;
    finding->source = ISO_21771;
    if (!say_apart(desk, finding, pair)) {
        ts_rate_limit(finding, "eps_alpha", pair->eps_alpha, 1.0, TS_KIND_NUMBER);
        finding->margin = pair->eps_alpha - 1.0;
        ts_rate_says(desk, finding,
                     "the transverse contact ratio is %s: a pair of teeth lets go before the next "
                     "has taken over",
                     ts_rate_shown(desk, pair->eps_alpha, TS_KIND_NUMBER));
    }
    if (!isnan(nearer))
        ts_rate_remedy(desk, finding, "use a centre distance of at most %s, or longer tips",
                       ts_rate_shown_outward(desk, nearer, TS_KIND_LENGTH, -1));
    else if (isnan(grown))
        ts_rate_remedy(desk, finding,
                       "use more teeth, a smaller pressure angle or less profile shift");
    else
        ts_rate_remedy(
            desk, finding,
            "lengthen the tips to k_1 = %s and k_2 = %s, or use more teeth, a smaller pressure "
            "angle or less profile shift",
            ts_rate_shown_outward(desk, pair->k_1 + grown, TS_KIND_NUMBER, +1),
            ts_rate_shown_outward(desk, pair->k_2 + grown, TS_KIND_NUMBER, +1));
}
