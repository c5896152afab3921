/* rate/pair_limit.c: do tips, roots, overlap and clearance of a pair leave it fit to run? */
#include "rate/pair_parts.h"

#include "element/mating_limit.h"
#include "element/undercut_reach.h"

#define ISO_21771  "ISO 21771:2007"
#define TIP_LEAST  0.2 /* modules, as C2-pointed-tip of a drive */
#define BISECTIONS 60

/* One gear of the pair. */
typedef struct side {
    int         number; /* 1 or 2 */
    bool        internal;
    double      x, x_min, d, d_a, d_b, d_f, s_at, s_an, rho_Ff, clear_Ff, c;
    const char *d_a_symbol, *s_an_symbol, *x_symbol, *clear_symbol, *c_symbol, *undercut_symbol;
    const char *pointed, *thin, *undercut, *interference, *touches; /* rules */
} side;

static side side_of(const ts_cylindrical_pair *pair, int gear)
{
    if (gear == 0)
        return (side){.number          = 1,
                      .x               = pair->x_1,
                      .x_min           = pair->x_min1,
                      .d               = pair->d_1,
                      .d_a             = pair->d_a1,
                      .d_b             = pair->d_b1,
                      .d_f             = pair->d_f1,
                      .s_at            = pair->s_at1,
                      .s_an            = pair->s_an1,
                      .rho_Ff          = pair->rho_Ff1,
                      .clear_Ff        = pair->clear_Ff1,
                      .c               = pair->c_1,
                      .d_a_symbol      = "d_a1",
                      .s_an_symbol     = "s_an1",
                      .x_symbol        = "x_1",
                      .clear_symbol    = "clear_Ff1",
                      .c_symbol        = "c_1",
                      .undercut_symbol = "clear_u1",
                      .pointed         = "rate-pointed-tip-1",
                      .thin            = "rate-thin-tip-1",
                      .undercut        = "rate-undercut-1",
                      .interference    = "rate-interference-1",
                      .touches         = "rate-tip-clearance-1"};
    return (side){.number          = 2,
                  .internal        = pair->in.z_2 < 0,
                  .x               = pair->x_2,
                  .x_min           = pair->x_min2,
                  .d               = pair->d_2,
                  .d_a             = pair->d_a2,
                  .d_b             = pair->d_b2,
                  .d_f             = pair->d_f2,
                  .s_at            = pair->s_at2,
                  .s_an            = pair->s_an2,
                  .rho_Ff          = pair->rho_Ff2,
                  .clear_Ff        = pair->clear_Ff2,
                  .c               = pair->c_2,
                  .d_a_symbol      = "d_a2",
                  .s_an_symbol     = "s_an2",
                  .x_symbol        = "x_2",
                  .clear_symbol    = "clear_Ff2",
                  .c_symbol        = "c_2",
                  .undercut_symbol = "clear_u2",
                  .pointed         = "rate-pointed-tip-2",
                  .thin            = "rate-thin-tip-2",
                  .undercut        = "rate-undercut-2",
                  .interference    = "rate-interference-2",
                  .touches         = "rate-tip-clearance-2"};
}

/* "d_a1 of at most 54.8 mm"; an internal gear has its tips at the smaller diameters. */
static void say_tip(ts_rate_desk *desk, ts_finding *finding, const side *of, double d_a)
{
    if (!isfinite(d_a))
        return;
    ts_rate_remedy(desk, finding, "use a tip diameter %s of at %s %s", of->d_a_symbol,
                   of->internal ? "least" : "most",
                   ts_rate_shown_outward(desk, fabs(d_a), TS_KIND_LENGTH, of->internal ? +1 : -1));
}

/* ---- tips --------------------------------------------------------------------------------------
 */

/* The tip diameter at which the tooth is `least` thick in the normal section, between the reference
 * circle, where it is thicker, and the tip; NaN when it is thinner already there. */
static double tip_for_thickness(const ts_cylindrical_pair *pair, ts_gear_index index, double least)
{
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  gear;
    ts_cylindrical_pair_gear(pair, index, &frame, &gear);
    double thick = gear.d, thin = gear.d_a;

    for (int i = 0; i < BISECTIONS; i++) {
        const double d_y = (thick + thin) / 2.0;
        const double s_yn =
            ts_gear_thickness(&frame, &gear, d_y) * cos(atan(d_y / gear.d * frame.tan_beta));
        if (s_yn >= least)
            thick = d_y;
        else
            thin = d_y;
    }
    return thick / gear.d_b > 1.0 ? thick : (double)NAN;
}

static void judge_tip(ts_rate_desk *desk, const ts_cylindrical_pair *pair, const side *of)
{
    const ts_gear_index index   = of->number == 1 ? TS_GEAR_1 : TS_GEAR_2;
    const double        least   = TIP_LEAST * pair->in.m_n;
    ts_finding         *finding = ts_rate_judge(desk, of->s_at > 0.0, of->pointed, TS_REFUSE);

    if (finding != NULL) {
        ts_rate_limit(finding, of->s_an_symbol, of->s_an, 0.0, TS_KIND_LENGTH);
        finding->source = ISO_21771;
        ts_rate_says(desk, finding, "the teeth of gear %d end in a point below their tip circle",
                     of->number);
        say_tip(desk, finding, of, tip_for_thickness(pair, index, 0.0));
        return;
    }
    finding = ts_rate_judge(desk, of->s_an >= least, of->thin, TS_WARN);
    ts_rate_limit(finding, of->s_an_symbol, of->s_an, least, TS_KIND_LENGTH);
    ts_rate_says(desk, finding,
                 "the teeth of gear %d are %s thick at the tip, less than %s (0.2 m_n)", of->number,
                 ts_rate_shown(desk, of->s_an, TS_KIND_LENGTH),
                 ts_rate_shown(desk, least, TS_KIND_LENGTH));
    if (finding != NULL)
        say_tip(desk, finding, of, tip_for_thickness(pair, index, least));
}

/* ---- roots -------------------------------------------------------------------------------------
 */

static void judge_undercut(ts_rate_desk *desk, const side *of)
{
    if (isnan(of->x_min))
        return;
    ts_finding *finding = ts_rate_judge(desk, of->x >= of->x_min, of->undercut, TS_WARN);
    if (finding == NULL)
        return;
    ts_rate_limit(finding, of->x_symbol, of->x, of->x_min, TS_KIND_NUMBER);
    finding->source = ISO_21771;
    ts_rate_says(desk, finding,
                 "the teeth of gear %d are undercut: a profile shift of %s is below %s", of->number,
                 ts_rate_shown(desk, of->x, TS_KIND_NUMBER),
                 ts_rate_shown(desk, of->x_min, TS_KIND_NUMBER));
    ts_rate_remedy(desk, finding, "use %s of at least %s, or more teeth", of->x_symbol,
                   ts_rate_shown_outward(desk, of->x_min, TS_KIND_NUMBER, +1));
}

/* Undercut that ends below the first contact harms nothing but the root. */
static void judge_reach(ts_rate_desk *desk, const ts_cylindrical_pair *pair, const side *of,
                        const side *mate)
{
    const double room = ts_undercut_room(pair, of->number - 1, desk->workings);

    if (isnan(room))
        return;
    ts_finding *finding = ts_rate_judge(desk, room >= 0.0, of->interference, TS_REFUSE);
    if (finding == NULL)
        return;
    ts_rate_limit(finding, of->undercut_symbol, room, 0.0, TS_KIND_LENGTH);
    finding->source = "derived: where the trochoid crosses the involute";
    ts_rate_says(desk, finding,
                 "undercut takes away the flank of gear %d on which the tips of gear %d begin "
                 "contact: the involute is left whole %s further along the path of contact",
                 of->number, mate->number, ts_rate_shown(desk, -room, TS_KIND_LENGTH));
    ts_rate_remedy(desk, finding, "use %s of at least %s, or a tip diameter %s of at most %s",
                   of->x_symbol, ts_rate_shown_outward(desk, of->x_min, TS_KIND_NUMBER, +1),
                   mate->d_a_symbol,
                   ts_rate_shown_outward(desk, fabs(ts_undercut_tip_of_mate(pair, of->number - 1)),
                                         TS_KIND_LENGTH, -1));
}

/* The tip of the mate may reach to the end of the involute, where the rack has begun its fillet. */
static void judge_interference(ts_rate_desk *desk, const ts_cylindrical_pair *pair, const side *of,
                               const side *mate)
{
    if (of->rho_Ff < 0.0) {
        judge_reach(desk, pair, of, mate);
        return;
    }
    if (isnan(of->clear_Ff))
        return;
    ts_finding *finding = ts_rate_judge(desk, of->clear_Ff >= 0.0, of->interference, TS_REFUSE);
    if (finding == NULL)
        return;
    const double rho_a = pair->rho_T - of->rho_Ff;
    const double d_a   = copysign(sqrt(mate->d_b * mate->d_b + 4.0 * (rho_a * rho_a)), mate->d_b);
    ts_rate_limit(finding, of->clear_symbol, of->clear_Ff, 0.0, TS_KIND_LENGTH);
    finding->source = ISO_21771;
    ts_rate_says(desk, finding,
                 "the tips of gear %d reach the fillets of gear %d: contact would begin %s before "
                 "the involute does, along the path of contact",
                 mate->number, of->number, ts_rate_shown(desk, -of->clear_Ff, TS_KIND_LENGTH));
    if (rho_a > 0.0 || mate->internal)
        say_tip(desk, finding, mate, d_a);
}

static void judge_clearance(ts_rate_desk *desk, const ts_cylindrical_pair *pair, const side *of,
                            const side *mate)
{
    ts_finding *finding = ts_rate_judge(desk, of->c > 0.0, of->touches, TS_REFUSE);
    if (finding == NULL)
        return;
    ts_rate_limit(finding, of->c_symbol, of->c, 0.0, TS_KIND_LENGTH);
    finding->source = ISO_21771;
    ts_rate_says(desk, finding, "the tips of gear %d reach %s into the roots of gear %d",
                 of->number, ts_rate_shown(desk, -of->c, TS_KIND_LENGTH), mate->number);
    say_tip(desk, finding, of, 2.0 * pair->a_w - mate->d_f);
}

/* ---- the mesh ----------------------------------------------------------------------------------
 */

/* Flanks that just touch are no clash; the rest is what rounding leaves of a zero. */
#define BACKLASH_NOISE 1e-9

static void judge_clash(ts_rate_desk *desk, const ts_cylindrical_pair *pair)
{
    ts_finding *finding =
        ts_rate_judge(desk, pair->j_bn >= -BACKLASH_NOISE * pair->in.m_n, "rate-clash", TS_REFUSE);
    ts_cylindrical_pair_input in = pair->in;
    ts_cylindrical_pair       free_pair;
    if (finding == NULL)
        return;
    in.a_w                    = 0.0;
    const ts_pair_fault fault = ts_cylindrical_pair_solve(&in, &free_pair, NULL);
    const bool          out   = pair->a_w > 0.0;
    finding->source           = ISO_21771;
    ts_rate_limit(finding, "j_bn", pair->j_bn, 0.0, TS_KIND_LENGTH);
    ts_rate_says(desk, finding,
                 "at a centre distance of %s the teeth are %s too thick for each other, along the "
                 "normal",
                 ts_rate_shown(desk, fabs(pair->a_w), TS_KIND_LENGTH),
                 ts_rate_shown(desk, -pair->j_bn, TS_KIND_LENGTH));
    if (fault == TS_PAIR_FINE || fault == TS_PAIR_POINTED)
        ts_rate_remedy(
            desk, finding,
            "use a centre distance of at %s %s, or profile shifts that add to at most %s",
            out ? "least" : "most",
            ts_rate_shown_outward(desk, fabs(free_pair.a_w), TS_KIND_LENGTH, out ? +1 : -1),
            ts_rate_shown_outward(desk, pair->sum_x, TS_KIND_NUMBER, -1));
}

/* Do the tips pass each other, shorter by so many modules? */
static bool passes(const ts_cylindrical_pair *pair, double cut)
{
    ts_cylindrical_pair_input in = pair->in;
    ts_cylindrical_pair       other;

    in.tip = TS_TIP_GIVEN;
    in.k_1 = pair->k_1 - cut;
    in.k_2 = pair->k_2 - cut;
    return ts_cylindrical_pair_solve(&in, &other, NULL) == TS_PAIR_FINE &&
           ts_tips_passing_room(&other, NULL) >= 0.0;
}

/* By how much both tips would have to be shorter, in modules.  NaN: by more than is left of them.
 */
static double shorter_tips(const ts_cylindrical_pair *pair)
{
    double enough = 0.0;

    while (enough < 1.0 && !passes(pair, enough))
        enough += 0.05;
    if (!(enough < 1.0))
        return NAN;
    double short_of = enough - 0.05;
    for (int i = 0; i < BISECTIONS; i++) {
        const double cut = (short_of + enough) / 2.0;
        if (passes(pair, cut))
            enough = cut;
        else
            short_of = cut;
    }
    return enough;
}

/* Of an internal pair with nearly as many teeth: where the tip circles cross, far from the line of
 * action, the tips of both gears pass each other. */
static void judge_passing(ts_rate_desk *desk, const ts_cylindrical_pair *pair)
{
    if (pair->in.z_2 > 0)
        return;
    const double room    = ts_tips_passing_room(pair, desk->workings);
    ts_finding  *finding = ts_rate_judge(desk, room >= 0.0, "rate-passing-tips", TS_REFUSE);
    if (finding == NULL)
        return;
    const double cut = shorter_tips(pair);
    finding->source  = "derived: both tips on their way to where the tip circles cross";
    ts_rate_limit(finding, "room_tips", room, 0.0, TS_KIND_LENGTH);
    ts_rate_says(desk, finding,
                 "the tips of gear 1 run %s into those of gear 2 where they pass beside the mesh",
                 ts_rate_shown(desk, -room, TS_KIND_LENGTH));
    if (isnan(cut))
        ts_rate_remedy(desk, finding,
                       "use a greater difference of teeth or a larger pressure angle");
    else
        ts_rate_remedy(desk, finding,
                       "shorten the tips to k_1 = %s and k_2 = %s, or use a greater difference of "
                       "teeth or a larger pressure angle",
                       ts_rate_shown_outward(desk, pair->k_1 - cut, TS_KIND_NUMBER, -1),
                       ts_rate_shown_outward(desk, pair->k_2 - cut, TS_KIND_NUMBER, -1));
}

#define SHIFT_MOST 2.0 /* modules, as `shift` of a drive: no tooth has so much */

/* Shifts that follow from a centre distance may follow from one that is a slip of the pen. */
static bool judge_shifts(ts_rate_desk *desk, const ts_cylindrical_pair *pair)
{
    const bool derived = fabs(pair->in.a_w) > 0.0 && pair->in.shift != TS_SHIFT_GIVEN;
    const bool usual   = fabs(pair->x_1) <= SHIFT_MOST && fabs(pair->x_2) <= SHIFT_MOST;
    if (!derived)
        return true;
    ts_finding *finding = ts_rate_judge(desk, usual, "rate-no-geometry", TS_REFUSE);
    if (finding == NULL)
        return true;
    ts_rate_limit(finding, "a_w", fabs(pair->a_w), fabs(pair->a), TS_KIND_LENGTH);
    ts_rate_says(desk, finding,
                 "a centre distance of %s asks for profile shifts of x_1 = %s and x_2 = %s, which "
                 "no teeth have (2 at most)",
                 ts_rate_shown(desk, fabs(pair->a_w), TS_KIND_LENGTH),
                 ts_rate_shown(desk, pair->x_1, TS_KIND_NUMBER),
                 ts_rate_shown(desk, pair->x_2, TS_KIND_NUMBER));
    ts_rate_remedy(desk, finding,
                   "use a centre distance near %s, that without profile shift, or other tooth "
                   "numbers",
                   ts_rate_shown(desk, fabs(pair->a), TS_KIND_LENGTH));
    return false;
}

void ts_rate_pair_limits(ts_rate_desk *desk, const ts_rated_pair *rated)
{
    const ts_cylindrical_pair *pair  = &rated->pair;
    const side                 first = side_of(pair, 0), second = side_of(pair, 1);

    if (!judge_shifts(desk, pair))
        return;
    judge_tip(desk, pair, &first);
    judge_tip(desk, pair, &second);
    judge_undercut(desk, &first);
    judge_undercut(desk, &second);
    judge_interference(desk, pair, &first, &second);
    judge_interference(desk, pair, &second, &first);
    judge_clearance(desk, pair, &first, &second);
    judge_clearance(desk, pair, &second, &first);
    ts_rate_pair_overlap(desk, pair);
    judge_clash(desk, pair);
    judge_passing(desk, pair);
}
