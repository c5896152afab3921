"""What does ISO 6336 say of one external cylindrical mesh, in plain Python?

The chain of towershaft written for comparison, in the units of print (mm, N, N/mm2, um, rev/min,
kg/mm), after the second transcription that the tests keep in C (tests/rating/second_chain.c).  It
is cut where towershaft cuts it: geometry of the pair (ISO 21771), what of a mesh does not depend
on the load, and what does.  Nothing but the standard library is used.
"""

from dataclasses import dataclass
from math import acos, asin, atan, cbrt, cos, fabs, log, pi, sin, sqrt, tan

(CASE_HARDENED, INDUCTION_HARDENED, NITRIDED, THROUGH_NITRIDED, NITROCARBURISED,
 THROUGH_HARDENED, NORMALISED) = range(7)
YEAR_2019, YEAR_2006 = range(2)
FACE_GIVEN, FACE_MISALIGNED, FACE_PARTS = range(3)

DENSITY = 7.83e-6  # kg/mm3
TIP_HEIGHT, ROOT_HEIGHT = 1.0, 1.25  # of the rack, in modules

B_1 = (1.0, 1.0, 0.5, 0.1, 0.1, 0.7)  # by lead design
B_2 = (1.0, 0.5, 0.5, 1.0, 0.5, 0.7)
ENDS_EASED = (False, True, True, False, True, True)
F_ZCA = (1.2, 1.07, 1.0)  # by profile design


@dataclass(slots=True)
class Gear:
    kind: int           # one of the seven classes above
    sigma_Hlim: float   # N/mm2
    sigma_Flim: float   # N/mm2
    strength: float     # N/mm2  yield, of through-hardened and normalised steel
    HB: float
    E: float            # N/mm2
    shot_peened: bool
    pitting: bool
    Z_NTlong: float
    Y_NTlong: float
    accuracy: int
    f_pt: float         # um
    f_falpha: float     # um
    C_a: float          # um
    R_z: float          # um
    R_zF: float         # um
    t_g: float          # mm     0: no grinding notch
    rho_g: float        # mm
    s_pr: float         # mm


@dataclass(slots=True)
class Teeth:
    """What the geometry of a pair is solved from."""
    z_1: int
    z_2: int
    m_n: float      # mm
    alpha_n: float  # rad
    beta: float     # rad
    x_1: float
    x_2: float
    b_1: float      # mm
    b_2: float      # mm
    rho_fP: float   # of the rack, in modules


@dataclass(slots=True)
class Mesh:
    teeth: Teeth
    gear: tuple
    year: int
    nu_40: float    # mm2/s
    profile: int
    lead: int
    relief_matched: bool


@dataclass(slots=True)
class Load:
    T_1: float      # N.m
    omega_1: float  # rad/s
    K_A: float
    K_gamma: float
    face: int
    K_Hbeta: float
    F_betax: float  # um
    f_sh: float     # um
    f_ma: float     # um
    N_L: tuple
    R: tuple


# ---- geometry, ISO 21771 -------------------------------------------------------------------------

@dataclass(slots=True)
class Pair:
    alpha_t: float
    alpha_wt: float
    beta_b: float
    u: float
    d: tuple
    d_b: tuple
    d_a: tuple
    d_f: tuple
    eps_alpha: float
    eps_beta: float
    eps_gamma: float


def involute(angle):
    return tan(angle) - angle


def angle_of_involute(value):
    """Newton's rule; the start is the reversed series of the involute."""
    root = cbrt(3.0 * value)
    square = root * root
    angle = root * (1.0 - square * (2.0 / 15.0 - square * 9.0 / 175.0))
    while True:
        tangent = tan(angle)
        step = (tangent - angle - value) / (tangent * tangent)
        angle -= step
        if fabs(step) < 1e-9:
            return angle


def solve_pair(teeth):
    z_1, z_2, m_n = teeth.z_1, teeth.z_2, teeth.m_n
    x_1, x_2, beta = teeth.x_1, teeth.x_2, teeth.beta
    tan_n, cos_beta = tan(teeth.alpha_n), cos(beta)
    m_t = m_n / cos_beta
    alpha_t = atan(tan_n / cos_beta)
    cos_t = cos(alpha_t)
    alpha_wt = angle_of_involute(involute(alpha_t) + 2.0 * tan_n * (x_1 + x_2) / (z_1 + z_2))
    a = m_t * (z_1 + z_2) / 2.0
    a_w = a * cos_t / cos(alpha_wt)
    k = (a_w - a) / m_n - x_1 - x_2
    d_1, d_2 = z_1 * m_t, z_2 * m_t
    d_b1, d_b2 = d_1 * cos_t, d_2 * cos_t
    d_a1 = d_1 + 2.0 * m_n * (TIP_HEIGHT + x_1 + k)
    d_a2 = d_2 + 2.0 * m_n * (TIP_HEIGHT + x_2 + k)
    path = (0.5 * sqrt(d_a1 * d_a1 - d_b1 * d_b1) + 0.5 * sqrt(d_a2 * d_a2 - d_b2 * d_b2)
            - a_w * sin(alpha_wt))
    eps_alpha = path / (pi * m_t * cos_t)
    eps_beta = min(teeth.b_1, teeth.b_2) * sin(beta) / (pi * m_n)
    return Pair(
        alpha_t=alpha_t,
        alpha_wt=alpha_wt,
        beta_b=asin(sin(beta) * cos(teeth.alpha_n)),
        u=z_2 / z_1,
        d=(d_1, d_2),
        d_b=(d_b1, d_b2),
        d_a=(d_a1, d_a2),
        d_f=(d_1 - 2.0 * m_n * (ROOT_HEIGHT - x_1), d_2 - 2.0 * m_n * (ROOT_HEIGHT - x_2)),
        eps_alpha=eps_alpha,
        eps_beta=eps_beta,
        eps_gamma=eps_alpha + eps_beta,
    )


# ---- root ----------------------------------------------------------------------------------------

def tangent_angle(G, H, z_n):
    slope = 2.0 * G / z_n
    theta = pi / 6.0
    while True:
        t = tan(theta)
        step = (theta - slope * t + H) / (1.0 - slope * (1.0 + t * t))
        theta -= step
        if fabs(step) < 1e-9:
            return theta


def root_form(teeth, pair, i, s_pr):
    """Y_F of the whole load on one tooth, Y_S, q_s, z_n, eps_alphan."""
    m_n, alpha_n, rho = teeth.m_n, teeth.alpha_n, teeth.rho_fP
    z, x = (teeth.z_1, teeth.x_1) if i == 0 else (teeth.z_2, teeth.x_2)
    sin_n, cos_n, tan_n = sin(alpha_n), cos(alpha_n), tan(alpha_n)
    cos_b = cos(pair.beta_b)
    square = cos_b * cos_b
    z_n = z / (square * cos(teeth.beta))
    eps_alphan = pair.eps_alpha / square

    E = pi / 4.0 - ROOT_HEIGHT * tan_n + s_pr / (m_n * cos_n) - (1.0 - sin_n) * rho / cos_n
    G = rho - ROOT_HEIGHT + x
    H = 2.0 / z_n * (pi / 2.0 - E) - pi / 3.0
    theta = tangent_angle(G, H, z_n)
    c = cos(theta)
    arm = G / c - rho
    s_Fn = z_n * sin(pi / 3.0 - theta) + sqrt(3.0) * arm
    rho_F = rho + 2.0 * G * G / (c * (z_n * c * c - 2.0 * G))

    d_n = m_n * z_n
    d_bn = d_n * cos_n
    d_an = d_n + pair.d_a[i] - pair.d[i]
    along = 0.5 * sqrt(d_an * d_an - d_bn * d_bn) - pi * m_n * cos_n * (eps_alphan - 1.0)
    d_en = sqrt(4.0 * along * along + d_bn * d_bn)
    alpha_en = acos(d_bn / d_en)
    gamma_e = (pi / 2.0 + 2.0 * tan_n * x) / z_n + (tan_n - alpha_n) - involute(alpha_en)
    alpha_Fen = alpha_en - gamma_e
    h_Fe = 0.5 * ((cos(gamma_e) - sin(gamma_e) * tan(alpha_Fen)) * d_en / m_n
                  - z_n * cos(pi / 3.0 - theta) - arm)
    Y_F = 6.0 * h_Fe * cos(alpha_Fen) / (s_Fn * s_Fn * cos_n)
    L = s_Fn / h_Fe
    q_s = s_Fn / (2.0 * rho_F)
    return Y_F, (1.2 + 0.13 * L) * q_s ** (1.0 / (1.21 + 2.3 / L)), q_s, z_n, eps_alphan


# ---- life ----------------------------------------------------------------------------------------

def life_nodes(N_0, N_1, N_2):
    """Cycles at the nodes, and ln(N_1/N_0), ln(N_2/N_1), ln(1e10/N_2)."""
    return N_0, N_1, N_2, log(N_1 / N_0), log(N_2 / N_1) if N_2 > N_1 else 1.0, log(1e10 / N_2)


CONTACT_NITRIDED = life_nodes(1e5, 2e6, 2e6)
CONTACT_PLAIN = life_nodes(1e5, 5e7, 5e7)
CONTACT_PITTING = life_nodes(6e5, 1e7, 1e9)
BENDING_HARD = life_nodes(1e3, 3e6, 3e6)
BENDING_SOFT = life_nodes(1e4, 3e6, 3e6)
MIDDLE = log(1.3) / log(1.6)


def limit_stress(nodes, s_0, s_1, s_2, fall, N_L):
    """From node to node; fall is ln(1/Z_NTlong)."""
    N_0, N_1, N_2, ln_01, ln_12, ln_long = nodes
    if N_L <= N_0:
        return s_0
    if N_L <= N_1:
        return s_1 * (N_1 / N_L) ** (log(s_0 / s_1) / ln_01)
    if N_L <= N_2:
        return s_2 * (N_2 / N_L) ** (log(s_1 / s_2) / ln_12)
    return s_2 * (N_2 / N_L) ** (fall / ln_long)


# ---- strength of a root --------------------------------------------------------------------------

def straight(xs, ys, at):
    if at <= xs[0]:
        return ys[0]
    for i in range(1, len(xs)):
        if at <= xs[i]:
            return ys[i - 1] + (ys[i] - ys[i - 1]) * (at - xs[i - 1]) / (xs[i] - xs[i - 1])
    return ys[-1]


def slip_layer(gear):
    if NITRIDED <= gear.kind <= NITROCARBURISED:
        return 0.1005
    if gear.kind <= INDUCTION_HARDENED:
        return 0.0030
    if gear.kind == THROUGH_HARDENED:
        return straight((500.0, 600.0, 800.0, 1000.0), (0.0281, 0.0194, 0.0064, 0.0014),
                        gear.strength)
    return straight((300.0, 400.0), (0.0833, 0.0445), gear.strength)


def root_surface(gear):
    R = min(gear.R_zF, 40.0)
    if NITRIDED <= gear.kind <= NITROCARBURISED:
        return 1.025 if R < 1.0 else 4.299 - 3.259 * (R + 1.0) ** 0.005
    if gear.kind == NORMALISED:
        return 1.07 if R < 1.0 else 5.306 - 4.203 * (R + 1.0) ** 0.01
    return 1.12 if R < 1.0 else 1.674 - 0.529 * (R + 1.0) ** 0.1


def root_size(gear, m_n):
    if gear.kind <= NITROCARBURISED:
        return 1.0 if m_n <= 5.0 else max(0.8, 1.05 - 0.01 * m_n)
    return 1.0 if m_n <= 5.0 else max(0.85, 1.03 - 0.006 * m_n)


def static_and_mean(gear, Y_S):
    """Y_deltarelT of the static limit, M, and M of the static limit."""
    if NITRIDED <= gear.kind <= NITROCARBURISED:
        return 0.2 * Y_S + 0.6, 0.3, 0.3
    if gear.kind <= INDUCTION_HARDENED:
        if gear.kind == INDUCTION_HARDENED or gear.shot_peened:
            return 0.44 * Y_S + 0.12, 0.4, 0.6
        return 0.44 * Y_S + 0.12, 0.8 - 0.15 * Y_S, 0.7
    if gear.kind == THROUGH_HARDENED:
        f = 0.82 * (300.0 / gear.strength) ** 0.25
    else:
        f = 0.93 * (200.0 / gear.strength) ** 0.25
    return (1.0 + f * (Y_S - 1.0)) / (1.0 + f), 0.3, 0.5


# ---- what does not depend on the load ------------------------------------------------------------

@dataclass(slots=True)
class GearPrepared:
    """Of one gear."""
    gear: Gear
    hard: bool
    Z_BD: float
    Z_W: float             # None: it depends on the speed
    Z_Wstat: float
    hardness: float        # (1.2 - (HB - 130)/1700) of such a gear
    roughness: float       # R_zH of such a gear at v nu_40 = 1500
    Y_F: float             # with f_eps
    Y_S: float             # with the grinding notch
    b_F: float
    contact_nodes: tuple
    contact_static: float
    contact_fall: float
    bending_nodes: tuple
    bending_static: float  # without Y_M
    bending_ref: float     # without Y_M
    bending_fall: float
    mean: float            # (1 - M)/(1 + M)
    mean_static: float


@dataclass(slots=True)
class Prepared:
    mesh: Mesh
    pair: Pair
    gear: tuple
    b: float
    c: float             # N/(mm um), at 100 N/mm and more
    c_share: float       # c_gamma_alpha/c
    m_red: float
    f_pb: float
    f_falpha: float
    C_a: float           # None: it does not count
    C_v: tuple
    Z_eps: float
    H_most: float
    F_most: float
    Z_nominal: float     # Z_H Z_E Z_eps Z_beta
    Z_LR: float
    C_Zv: float
    Y_common: float      # Y_beta Y_DT
    N_F: float


def stiffness(teeth, gear, z_n, first):
    """c' at 100 N/mm and more; `first` is the index of the pinion."""
    x_p, x_g = (teeth.x_1, teeth.x_2) if first == 0 else (teeth.x_2, teeth.x_1)
    z_p, z_g = (z_n[0], z_n[1]) if first == 0 else (z_n[1], z_n[0])
    q = (0.04723 + 0.15551 / z_p + 0.25791 / z_g - 0.00635 * x_p - 0.11654 * x_p / z_p
         - 0.00193 * x_g - 0.24188 * x_g / z_g + 0.00529 * x_p * x_p + 0.00182 * x_g * x_g)
    C_B = (1.0 + 0.5 * (1.2 - ROOT_HEIGHT)) * (1.0 - 0.02 * (20.0 - teeth.alpha_n * 180.0 / pi))
    E_1, E_2 = gear[0].E, gear[1].E
    return 0.8 / q * C_B * cos(teeth.beta) * (2.0 * E_1 * E_2 / (E_1 + E_2)) / 206000.0


def disc_mass(pair, i):
    d_m = (pair.d_a[i] + pair.d_f[i]) / 2.0
    ratio = d_m / pair.d_b[i]
    return pi / 8.0 * ratio * ratio * d_m * d_m * DENSITY


def dynamic_constants(eps_gamma):
    if eps_gamma > 2.0:
        C_2, C_3 = 0.57 / (eps_gamma - 0.3), 0.096 / (eps_gamma - 1.56)
        C_4, C_6 = (0.57 - 0.05 * eps_gamma) / (eps_gamma - 1.44), 0.12 / (eps_gamma - 1.74)
    else:
        C_2, C_3, C_4, C_6 = 0.34, 0.23, 0.90, 0.47
    if eps_gamma <= 1.5:
        C_7 = 0.75
    elif eps_gamma <= 2.5:
        C_7 = 0.125 * sin(pi * (eps_gamma - 2.0)) + 0.875
    else:
        C_7 = 1.0
    return 0.32, C_2, C_3, C_4, 0.47, C_6, C_7


def tip_relief(gear):
    if gear[0].accuracy >= 6 or gear[1].accuracy >= 6:
        return None
    C_a1, C_a2 = gear[0].C_a, gear[1].C_a
    if C_a1 > 0.0 and C_a2 > 0.0:
        return min(C_a1, C_a2)
    C_ay = 0.5 * sum((g.sigma_Hlim / 97.0 - 18.45) ** 2 / 18.0 + 1.5 for g in gear)
    return min(C_a1 + C_a2, C_ay) if C_a1 + C_a2 > 0.0 else C_ay


def single_contact(mesh, pair):
    """Z_B and Z_D."""
    step_1, step_2 = 2.0 * pi / mesh.teeth.z_1, 2.0 * pi / mesh.teeth.z_2
    t_1 = sqrt((pair.d_a[0] / pair.d_b[0]) ** 2 - 1.0)
    t_2 = sqrt((pair.d_a[1] / pair.d_b[1]) ** 2 - 1.0)
    rest, at_pitch = pair.eps_alpha - 1.0, tan(pair.alpha_wt)
    M_1 = at_pitch / sqrt((t_1 - step_1) * (t_2 - rest * step_2))
    M_2 = at_pitch / sqrt((t_2 - step_2) * (t_1 - rest * step_1))
    eps_beta = min(1.0, pair.eps_beta)
    ends = sqrt(F_ZCA[mesh.profile]) if mesh.year == YEAR_2019 and eps_beta > 0.0 else 1.0
    return (max(1.0, M_1 - eps_beta * (M_1 - ends)), max(1.0, M_2 - eps_beta * (M_2 - ends)))


def bending_share(mesh, pair, eps_alphan):
    """f_eps and Y_beta Y_DT."""
    eps_beta, beta = pair.eps_beta, mesh.teeth.beta
    Y_beta = 1.0 - min(1.0, eps_beta) * min(30.0, beta * 180.0 / pi) / 120.0
    if mesh.year == YEAR_2006:
        fine = mesh.gear[0].accuracy <= 4 and mesh.gear[1].accuracy <= 4
        if fine and eps_alphan > 2.05:
            return 1.0, Y_beta * (2.366 - 0.666 * eps_alphan if eps_alphan <= 2.5 else 0.7)
        return 1.0, Y_beta
    Y_beta /= cos(beta) ** 3
    if eps_beta <= 0.0:
        return (1.0 if eps_alphan < 2.0 else 0.7), Y_beta
    if eps_beta >= 1.0:
        return 1.0 / sqrt(eps_alphan), Y_beta
    alone = 1.0 - eps_beta if eps_alphan < 2.0 else (1.0 - eps_beta) / 2.0
    return sqrt(alone + eps_beta / eps_alphan), Y_beta


def work_hardening(mesh, pair, i, first, rho_red):
    """Z_W (None: by the speed), its static value, and for the speed hardness and roughness."""
    own, mate = mesh.gear[i], mesh.gear[1 - i]
    own_hard, mate_hard = own.kind <= NITROCARBURISED, mate.kind <= NITROCARBURISED
    if own_hard:
        return 1.0, 1.0, 0.0, 0.0
    if mate_hard:
        above = min(470.0, max(130.0, own.HB)) - 130.0
        roughness = (mate.R_z * (10.0 / rho_red) ** 0.33 * (mate.R_z / own.R_z) ** 0.66)
        return None, 1.05 - above / 6800.0, 1.2 - above / 1700.0, roughness
    ratio = mate.HB / own.HB
    if i == first or ratio < 1.2:
        return 1.0, 1.0, 0.0, 0.0
    u = max(pair.u, 1.0 / pair.u)
    return (1.0 + (0.00898 * min(ratio, 1.7) - 0.00829) * (min(u, 20.0) - 1.0), 1.0, 0.0, 0.0)


def prepare_gear(mesh, pair, i, first, rho_red, form, f_eps, Z_BD):
    g, teeth = mesh.gear[i], mesh.teeth
    Y_F, Y_S, q_s, _, _ = form
    hard, nitrided = g.kind <= NITROCARBURISED, NITRIDED <= g.kind <= NITROCARBURISED
    Z_W, Z_Wstat, hardness, roughness = work_hardening(mesh, pair, i, first, rho_red)

    soft_nitride = g.kind == NITROCARBURISED
    Z_NT = 1.1 if soft_nitride else 1.3 if nitrided else 1.6
    Y_NT = 1.1 if soft_nitride else 1.6 if nitrided else 2.5
    rho_p = slip_layer(g)
    Y_delta = (1.0 + sqrt(rho_p * 0.2 * (1.0 + 2.0 * q_s))) / (1.0 + sqrt(rho_p * 1.2))
    Y_deltastat, M, M_stat = static_and_mean(g, Y_S)
    b = min(teeth.b_1, teeth.b_2)
    b_own = teeth.b_1 if i == 0 else teeth.b_2
    return GearPrepared(
        gear=g,
        hard=hard,
        Z_BD=Z_BD,
        Z_W=Z_W,
        Z_Wstat=Z_Wstat,
        hardness=hardness,
        roughness=roughness,
        Y_F=Y_F * f_eps,
        Y_S=1.3 * Y_S / (1.3 - 0.6 * sqrt(g.t_g / g.rho_g)) if g.t_g > 0.0 else Y_S,
        b_F=b if ENDS_EASED[mesh.lead] else min(b_own, b + 2.0 * teeth.m_n),
        contact_nodes=(CONTACT_NITRIDED if nitrided else
                       CONTACT_PITTING if g.pitting else CONTACT_PLAIN),
        contact_static=g.sigma_Hlim * Z_Wstat * Z_NT,
        contact_fall=-log(g.Z_NTlong),
        bending_nodes=BENDING_HARD if hard else BENDING_SOFT,
        bending_static=2.0 * g.sigma_Flim * Y_deltastat * Y_NT,
        bending_ref=2.0 * g.sigma_Flim * Y_delta * root_surface(g) * root_size(g, teeth.m_n),
        bending_fall=-log(g.Y_NTlong),
        mean=(1.0 - M) / (1.0 + M),
        mean_static=(1.0 - M_stat) / (1.0 + M_stat),
    )


def oil_film(mesh, rho_red):
    """Z_L Z_R, and C_Zv."""
    g_1, g_2 = mesh.gear
    soft = min(g_1.sigma_Hlim, g_2.sigma_Hlim)
    C_ZL = min(0.91, max(0.83, soft / 4375.0 + 0.6357))
    C_ZR = min(0.15, max(0.08, 0.32 - 0.0002 * soft))
    R_z10 = (g_1.R_z + g_2.R_z) / 2.0 * cbrt(10.0 / rho_red)
    Z_L = C_ZL + 4.0 * (1.0 - C_ZL) / (1.2 + 134.0 / mesh.nu_40) ** 2
    return Z_L * (3.0 / R_z10) ** C_ZR, min(0.93, max(0.85, soft / 4375.0 + 0.6557))


def nominal_factors(mesh, pair, Z_eps):
    """Z_H Z_E Z_eps Z_beta."""
    yields = sum((1.0 - 0.3 * 0.3) / g.E for g in mesh.gear)
    cos_t = cos(pair.alpha_t)
    Z_H = sqrt(2.0 * cos(pair.beta_b) * cos(pair.alpha_wt) / (cos_t * cos_t * sin(pair.alpha_wt)))
    return Z_H * sqrt(1.0 / (pi * yields)) * Z_eps / sqrt(cos(mesh.teeth.beta))


def prepare(pair, mesh):
    teeth, gear = mesh.teeth, mesh.gear
    eps_alpha, eps_beta, eps_gamma = pair.eps_alpha, pair.eps_beta, pair.eps_gamma
    forms = (root_form(teeth, pair, 0, gear[0].s_pr), root_form(teeth, pair, 1, gear[1].s_pr))
    f_eps, Y_common = bending_share(mesh, pair, forms[0][4])
    first = 1 if (teeth.z_2, -teeth.x_2) < (teeth.z_1, -teeth.x_1) else 0
    rho_red = 0.5 * tan(pair.alpha_wt) * pair.d_b[0] * pair.d_b[1] / (pair.d_b[0] + pair.d_b[1])
    Z_LR, C_Zv = oil_film(mesh, rho_red)
    ends = single_contact(mesh, pair)
    if eps_beta >= 1.0:
        Z_eps = sqrt(1.0 / eps_alpha)
    else:
        Z_eps = sqrt((4.0 - eps_alpha) / 3.0 * (1.0 - eps_beta) + eps_beta / eps_alpha)
    m_1, m_2 = disc_mass(pair, 0), disc_mass(pair, 1)
    slender = max(3.0, min(2.0 * teeth.b_1 / (pair.d_a[0] - pair.d_f[0]),
                           2.0 * teeth.b_2 / (pair.d_a[1] - pair.d_f[1])))
    return Prepared(
        mesh=mesh,
        pair=pair,
        gear=(prepare_gear(mesh, pair, 0, first, rho_red, forms[0], f_eps, ends[0]),
              prepare_gear(mesh, pair, 1, first, rho_red, forms[1], f_eps, ends[1])),
        b=min(teeth.b_1, teeth.b_2),
        c=stiffness(teeth, gear, (forms[0][3], forms[1][3]), first),
        c_share=0.75 * eps_alpha + 0.25,
        m_red=m_1 * m_2 / (m_1 + m_2),
        f_pb=max(gear[0].f_pt, gear[1].f_pt) * cos(pair.alpha_t),
        f_falpha=max(gear[0].f_falpha, gear[1].f_falpha),
        C_a=tip_relief(gear),
        C_v=dynamic_constants(eps_gamma),
        Z_eps=Z_eps,
        H_most=eps_gamma / (eps_alpha * Z_eps * Z_eps),
        F_most=eps_gamma / (0.25 * eps_alpha + 0.75),
        Z_nominal=nominal_factors(mesh, pair, Z_eps),
        Z_LR=Z_LR,
        C_Zv=C_Zv,
        Y_common=Y_common,
        N_F=1.0 / (1.0 + 1.0 / slender + 1.0 / (slender * slender)),
    )


# ---- what does -----------------------------------------------------------------------------------

@dataclass(slots=True)
class GearRating:
    Y_F: float
    Y_S: float
    Z_W: float
    sigma_H: float
    sigma_HG: float
    S_H: float
    sigma_F: float
    sigma_FG: float
    S_F: float


@dataclass(slots=True)
class Rating:
    c_gamma_alpha: float
    N: float
    K_v: float
    K_Hbeta: float
    K_Fbeta: float
    K_Halpha: float
    K_Falpha: float
    sigma_H0: float
    gear: tuple


def run_in(own, v, deviation, factor):
    """um; 1 for pitch and profile, 2 for the lead."""
    if own.hard:
        return min(0.075 * factor * deviation, 3.0 * factor)
    sigma = own.gear.sigma_Hlim
    y = min(deviation, 160.0 * factor * deviation / sigma)
    if v > 10.0:
        return min(y, 6400.0 * factor / sigma)
    if v > 5.0:
        return min(y, 12800.0 * factor / sigma)
    return y


def run_in_pair(gear, v, deviation, factor):
    return 0.5 * (run_in(gear[0], v, deviation, factor) + run_in(gear[1], v, deviation, factor))


def dynamic_factor(N, N_S, C, B_p, B_f, B_k):
    if N <= N_S:
        return N * (C[0] * B_p + C[1] * B_f + C[2] * B_k) + 1.0
    if N <= 1.15:
        return C[0] * B_p + C[1] * B_f + C[3] * B_k + 1.0
    above = C[4] * B_p + C[5] * B_f + C[6]
    if N >= 1.5:
        return above
    resonance = C[0] * B_p + C[1] * B_f + C[3] * B_k + 1.0
    return above + (resonance - above) * (1.5 - N) / 0.35


def face_factor(p, load, v, F_m, c_gamma_beta):
    if load.face == FACE_GIVEN:
        return load.K_Hbeta
    F = load.F_betax
    if load.face == FACE_PARTS:
        lead = p.mesh.lead
        F = max(1.33 * B_1[lead] * load.f_sh + B_2[lead] * load.f_ma, 0.005 * F_m)
    F -= run_in_pair(p.gear, v, F, 2.0)
    gap = F * c_gamma_beta / (2.0 * F_m)
    return 2.0 * sqrt(gap) if gap >= 1.0 else 1.0 + gap


def contact_limit(own, film, Z_W, N_L):
    ref = own.gear.sigma_Hlim * film * Z_W
    static = max(own.contact_static, ref)
    nodes = own.contact_nodes
    middle = ref * (static / ref) ** MIDDLE if nodes is CONTACT_PITTING else ref
    return limit_stress(nodes, static, middle, ref, own.contact_fall, N_L)


def bending_limit(own, R, N_L):
    ref = own.bending_ref / (1.0 - R * own.mean)
    static = max(own.bending_static / (1.0 - R * own.mean_static), ref)
    return limit_stress(own.bending_nodes, static, ref, ref, own.bending_fall, N_L)


def rate_gear(p, load, i, v, film, sigma_H, sigma_F):
    own = p.gear[i]
    Z_W = own.Z_W
    if Z_W is None:
        R_zH = own.roughness / (v * p.mesh.nu_40 / 1500.0) ** 0.33
        Z_W = own.hardness * (3.0 / min(16.0, max(3.0, R_zH))) ** 0.15
    sigma_H *= own.Z_BD
    sigma_F *= own.Y_F * own.Y_S / own.b_F
    sigma_HG = contact_limit(own, film, Z_W, load.N_L[i])
    sigma_FG = bending_limit(own, load.R[i], load.N_L[i])
    return GearRating(own.Y_F, own.Y_S, Z_W, sigma_H, sigma_HG, sigma_HG / sigma_H, sigma_F,
                      sigma_FG, sigma_FG / sigma_F)


def rate(p, load):
    pair, mesh, teeth = p.pair, p.mesh, p.mesh.teeth
    d_1, u = pair.d[0], pair.u
    F_t = 2000.0 * load.T_1 / d_1
    v = load.omega_1 * d_1 / 2000.0
    outside = load.K_A * load.K_gamma
    w = F_t * outside / p.b

    c = p.c * (w / 100.0) ** 0.25 if w < 100.0 else p.c
    c_gamma_alpha = c * p.c_share
    n_E1 = 30000.0 / (pi * teeth.z_1) * sqrt(c_gamma_alpha / p.m_red)
    N = load.omega_1 * 30.0 / pi / n_E1
    N_S = 0.85 if w >= 100.0 else 0.5 + 0.35 * sqrt(w / 100.0)
    f_pb = p.f_pb - run_in_pair(p.gear, v, p.f_pb, 1.0)
    f_falpha = p.f_falpha - run_in_pair(p.gear, v, p.f_falpha, 1.0)
    B_k = 1.0 if p.C_a is None else fabs(1.0 - c * p.C_a / w)
    K_v = dynamic_factor(N, N_S, p.C_v, c * f_pb / w, c * f_falpha / w, B_k)

    F_m = w * K_v
    K_Hbeta = face_factor(p, load, v, F_m, 0.85 * c_gamma_alpha)
    K_Fbeta = K_Hbeta ** p.N_F
    q = c_gamma_alpha * (0.5 * f_pb if mesh.relief_matched else f_pb) / (F_m * K_Hbeta)
    eps_gamma = pair.eps_gamma
    if eps_gamma <= 2.0:
        K_alpha = eps_gamma / 2.0 * (0.9 + 0.4 * q)
    else:
        K_alpha = 0.9 + 0.4 * sqrt(2.0 * (eps_gamma - 1.0) / eps_gamma) * q
    K_Halpha = max(1.0, min(K_alpha, p.H_most))
    K_Falpha = max(1.0, min(K_alpha, p.F_most))

    sigma_H0 = p.Z_nominal * sqrt(F_t / (d_1 * p.b) * (u + 1.0) / u)
    film = p.Z_LR * (p.C_Zv + 2.0 * (1.0 - p.C_Zv) / sqrt(0.8 + 32.0 / v))
    sigma_H = sigma_H0 * sqrt(outside * K_v * K_Hbeta * K_Halpha)
    sigma_F = F_t / teeth.m_n * p.Y_common * outside * K_v * K_Fbeta * K_Falpha
    return Rating(c_gamma_alpha, N, K_v, K_Hbeta, K_Fbeta, K_Halpha, K_Falpha, sigma_H0,
                  (rate_gear(p, load, 0, v, film, sigma_H, sigma_F),
                   rate_gear(p, load, 1, v, film, sigma_H, sigma_F)))
