"""What does AGMA 2101 say of one external cylindrical mesh, with I and J of AGMA 908, in plain Python?

The chain of towershaft (docs/method/agma2101.md) written for comparison, in the units of print (mm,
N, N/mm2, um, rad/s).  Gears, mesh and load are those of iso6336_plain.py, the geometry is its pair;
`Second` is what AGMA asks beside them.  Nothing but the standard library is used.
"""

from dataclasses import dataclass
from math import acos, asin, atan, cbrt, ceil, cos, exp, fmod, log, pi, sin, sqrt, tan

from iso6336_plain import (CASE_HARDENED, INDUCTION_HARDENED, NITRIDED, NITROCARBURISED,
                           ROOT_HEIGHT)

INCH = 25.4
POISSON = 0.3
# Mesh alignment of extra precision units, b in inches.
ALIGNMENT = (0.0380, 0.0102, -0.822e-4)

# Scale and fall of the lines below the knee.
CARBURISED = (6.1514, 0.1192)
NITRIDED_LINE = (3.517, 0.0817)
HARDENED = ((160.0, 2.3194, 0.0538), (250.0, 4.9404, 0.1045), (400.0, 9.4518, 0.148))
FLANK = (2.466, 0.056)
FLANK_NITRIDED = (1.249, 0.0138)
KNEE_Y, KNEE_Z = 3e6, 1e7
LEAST_Y, LEAST_Z = 1e3, 1e4

RELIABILITY = ((0.5, 0.70), (0.1, 0.85), (0.01, 1.00), (0.001, 1.25), (0.0001, 1.50))


@dataclass(slots=True)
class Gear:
    """Beside iso6336_plain.Gear."""
    sigma_HP: float  # N/mm2
    sigma_FP: float  # N/mm2
    delta_sn: float  # thinning, in modules
    t_R: float       # mm  rim; 0: solid


@dataclass(slots=True)
class Second:
    gear: tuple
    R: float         # reliability
    critical: bool


# ---- curvatures, AGMA 908, clauses 3 and 4 -------------------------------------------------------

@dataclass(slots=True)
class Curves:
    """Along the path of contact, mm."""
    rho_T: float
    rho_B1: float
    rho_D1: float
    g_alpha: float


def curves_of(teeth, pair):
    (d_a1, d_a2), (d_b1, d_b2) = pair.d_a, pair.d_b
    rho_T = 0.5 * (d_b1 + d_b2) * tan(pair.alpha_wt)
    rho_a1 = 0.5 * sqrt(d_a1 * d_a1 - d_b1 * d_b1)
    rho_a2 = 0.5 * sqrt(d_a2 * d_a2 - d_b2 * d_b2)
    p_bt = pi * d_b1 / teeth.z_1
    return Curves(rho_T, rho_a1 - p_bt, rho_T - rho_a2 + p_bt, rho_a1 + rho_a2 - rho_T)


def load_share(teeth, pair, b):
    """m_N of helical gears."""
    n_alpha, n_beta = fmod(pair.eps_alpha, 1.0), fmod(pair.eps_beta, 1.0)
    p_x = pi * teeth.m_n / sin(teeth.beta)
    less = n_beta * n_alpha if n_beta <= 1.0 - n_alpha else (1.0 - n_beta) * (1.0 - n_alpha)
    return b * cos(pair.beta_b) / (pair.eps_alpha * b - less * p_x)


def low_curvature(curves, p):
    """Of the pinion at its lowest point of single contact."""
    return curves.rho_B1 if p == 0 else curves.rho_T - curves.rho_D1


def mean_curvature(pair, p):
    d_a, mate, d_b = pair.d_a[p], pair.d_a[1 - p], pair.d_b[p]
    a_w = 0.5 * (pair.d_b[0] + pair.d_b[1]) / cos(pair.alpha_wt)
    r_m = 0.5 * (0.5 * d_a + a_w - 0.5 * mate)
    return sqrt(r_m * r_m - 0.25 * d_b * d_b)


@dataclass(slots=True)
class Contact:
    pinion: int
    C_psi: float
    m_N: float
    C_h: float
    K_psi: float
    Z_I: float
    d_P: float
    spur: bool
    cos_wn: float


def contact_of(teeth, pair, curves, b):
    same = teeth.z_1 == teeth.z_2
    p = 1 if (curves.rho_T - curves.rho_D1 < curves.rho_B1 if same
              else teeth.z_2 < teeth.z_1) else 0
    beta, rho_T = teeth.beta, curves.rho_T
    spur, helical = beta <= 0.0, beta > 0.0 and pair.eps_beta > 1.0
    cos_wt = cos(pair.alpha_wt)
    C_psi = m_N = C_h = K_psi = 1.0
    if helical:
        share = atan(tan(beta) * sin(teeth.alpha_n)) * 1.8 / pi  # of 100 degrees
        C_h = 1.0 / (1.0 - sqrt(share * (1.0 - share)))
        K_psi = cos(atan(tan(pair.beta_b) / cos_wt)) * cos(beta)
        m_N = load_share(teeth, pair, b)
        rho = mean_curvature(pair, p)
    else:
        rho = low_curvature(curves, p)
        if not spur:
            rho_m = mean_curvature(pair, p)
            p_bn = pi * teeth.m_n * cos(teeth.alpha_n)
            part = (rho_m * (rho_T - rho_m) * curves.g_alpha
                    / (rho * (rho_T - rho) * p_bn))
            C_psi = sqrt(1.0 - pair.eps_beta * (1.0 - part))
    d_P = pair.d_b[p] / cos_wt
    Z_I = cos_wt * C_psi * C_psi / ((1.0 / rho + 1.0 / (rho_T - rho)) * d_P * m_N)
    cos_wn = cos(asin(cos(pair.beta_b) * sin(pair.alpha_wt)))
    return Contact(p, C_psi, m_N, C_h, K_psi, Z_I, d_P, spur, cos_wn)


# ---- root, AGMA 908, clause 5 --------------------------------------------------------------------

def fillet_at(r_n, h_S, rho_a0, lean, r_nL, theta):
    """nu, xi, eta, what is missed of the parabola, and its slope."""
    c, s = cos(theta), sin(theta)
    turn = h_S / r_n * s / c + lean
    nu = theta + turn
    sin_nu, cos_nu = sin(nu), cos(nu)
    reach = h_S / c + rho_a0
    xi = r_n * sin(turn) - reach * sin_nu
    eta = r_n * cos(turn) - reach * cos_nu
    arm = r_nL - eta
    speed = h_S / (r_n * c * c)
    along = h_S / c * speed + (1.0 + speed) * rho_a0
    slope = -along * sin_nu * cos_nu - (1.0 + speed) * (2.0 * arm * sin_nu + xi * cos_nu)
    return nu, xi, eta, 2.0 * arm * cos_nu - xi * sin_nu, slope


def find_theta(r_n, h_S, rho_a0, lean, r_nL):
    """Newton's rule between two bounds."""
    low, high, theta = 0.0, pi / 2.0, 0.9
    if h_S < 0.0:
        high = acos(sqrt(-h_S / r_n))
        theta = min(theta, 0.5 * high)
    while high - low > 1e-15:
        nu, _, _, miss, slope = fillet_at(r_n, h_S, rho_a0, lean, r_nL, theta)
        following = theta - miss / slope
        on_tooth = nu < pi / 2.0
        if on_tooth and abs(following - theta) <= 1e-9:
            return following
        if not on_tooth or miss < 0.0:
            high = theta
        else:
            low = theta
        theta = following if on_tooth and low < following < high else 0.5 * (low + high)
    return theta


def geometry_factor(teeth, pair, curves, contact, i, delta_sn):
    """Y_J."""
    m_n, alpha_n, rho_a0 = teeth.m_n, teeth.alpha_n, teeth.rho_fP
    z, x = (teeth.z_1, teeth.x_1) if i == 0 else (teeth.z_2, teeth.x_2)
    tan_n, cos_n = tan(alpha_n), cos(alpha_n)
    z_n = z / cos(teeth.beta) ** 3
    r_n = 0.5 * z_n
    r_bn = r_n * cos_n
    if contact.spur and pair.eps_alpha < 2.0:
        rho_W = curves.rho_D1 if i == 0 else curves.rho_T - curves.rho_B1
        t_W = rho_W / (m_n * r_bn)
    else:
        tip = (r_n + 0.5 * (pair.d_a[i] - pair.d[i]) / m_n) / r_bn
        t_W = sqrt(tip * tip - 1.0)
    s_n = pi / 2.0 + 2.0 * x * tan_n
    alpha_nL = t_W - (tan_n - alpha_n) - s_n / z_n
    r_nL = r_bn / cos(alpha_nL)

    h_S = ROOT_HEIGHT - (x - delta_sn / (2.0 * tan_n)) - rho_a0
    l_S = pi / 4.0 + (ROOT_HEIGHT - rho_a0) * tan_n + rho_a0 / cos_n
    rho_F = rho_a0 + h_S * h_S / (r_n + h_S)
    theta = find_theta(r_n, h_S, rho_a0, l_S / r_n, r_nL)
    _, xi, eta, _, _ = fillet_at(r_n, h_S, rho_a0, l_S / r_n, r_nL, theta)
    s_F, h_F = 2.0 * xi, r_nL - eta

    K_f = (0.331 - 0.436 * alpha_n
           + (s_F / rho_F) ** (0.324 - 0.492 * alpha_n) * (s_F / h_F) ** (0.261 + 0.545 * alpha_n))
    lever = 6.0 * h_F / (s_F * s_F * contact.C_h) - tan(alpha_nL) / s_F
    Y = contact.K_psi * contact.cos_wn / (cos(alpha_nL) * lever)
    return Y * contact.C_psi / (K_f * contact.m_N)


# ---- strength ------------------------------------------------------------------------------------

def is_hard(gear):
    return gear.kind <= NITROCARBURISED


def is_nitrided(gear):
    return NITRIDED <= gear.kind <= NITROCARBURISED


def bending_line(gear):
    if gear.kind in (CASE_HARDENED, INDUCTION_HARDENED):
        return CARBURISED
    if is_nitrided(gear):
        return NITRIDED_LINE
    a, b = HARDENED[0:2] if gear.HB <= HARDENED[1][0] else HARDENED[1:3]
    t = max(0.0, min(1.0, (gear.HB - a[0]) / (b[0] - a[0])))
    return exp(log(a[1]) + t * (log(b[1]) - log(a[1]))), a[2] + t * (b[2] - a[2])


def rim_factor(t_R, h_t):
    return 1.0 if t_R <= 0.0 or t_R >= 1.2 * h_t else 1.6 * log(2.242 * h_t / t_R)


def hardness_ratio(pinion, wheel, m_G):
    """Z_W of the wheel."""
    if is_hard(wheel):
        return 1.0
    if is_hard(pinion):
        B_W = 0.00075 * exp(-0.0112 * pinion.R_z / 6.0 / 0.0254)
        return 1.0 + B_W * max(0.0, 450.0 - max(180.0, wheel.HB))
    ratio = pinion.HB / wheel.HB
    A_W = 0.0 if ratio < 1.2 else 0.00698 if ratio > 1.7 else 0.00898 * ratio - 0.00829
    return 1.0 + A_W * (min(20.0, m_G) - 1.0)


def accuracy_of(f_pt, m_n, d_T):
    d_part = 0.003 * d_T + 5.2 if d_T <= 400.0 else 0.12 * sqrt(d_T) + 4.0
    return ceil(log(f_pt / (0.3 * m_n + d_part)) / 0.3466 + 5.0)


def reliability_factor(R):
    fails = 1.0 - R
    i = 1
    while i + 1 < len(RELIABILITY) and fails < RELIABILITY[i][0]:
        i += 1
    (P_low, Y_low), (P_high, Y_high) = RELIABILITY[i - 1], RELIABILITY[i]
    return Y_low + (Y_high - Y_low) * log(fails / P_low) / log(P_high / P_low)


def face_load(b, d_P):
    """K_H of an extra precision box between bearings."""
    inches = b / INCH
    K_Hpf = max(0.05, b / (10.0 * d_P))
    if inches <= 1.0:
        K_Hpf -= 0.025
    elif inches <= 17.0:
        K_Hpf += 0.0125 * inches - 0.0375
    else:
        K_Hpf += 0.0207 * inches - 0.1109 - 0.000228 * inches * inches
    A, B, C = ALIGNMENT
    return 1.0 + K_Hpf + A + (B + C * inches) * inches


# ---- what does not depend on the load ------------------------------------------------------------

@dataclass(slots=True)
class GearPrepared:
    Y_J: float
    contact: float  # sigma_HP Z_W/Y_Z
    bending: float  # sigma_FP/Y_Z
    root: float     # K_B/(b m_t Y_J)
    Y_line: tuple
    Z_line: tuple


@dataclass(slots=True)
class Prepared:
    gear: tuple
    critical: bool
    d_w1: float
    Z_I: float
    K_H: float
    contact: float  # Z_E sqrt(1/(d_P b Z_I))
    B_v: float      # 0: K_v is 1.11
    C_v: float


def prepare(pair, mesh, second):
    teeth, gear = mesh.teeth, mesh.gear
    b, m_t = min(teeth.b_1, teeth.b_2), teeth.m_n / cos(teeth.beta)
    curves = curves_of(teeth, pair)
    contact = contact_of(teeth, pair, curves, b)
    p = contact.pinion
    Y_Z = reliability_factor(second.R)
    Z_W = [1.0, 1.0]
    Z_W[1 - p] = hardness_ratio(gear[p], gear[1 - p], max(pair.u, 1.0 / pair.u))
    prepared = []
    for i in (0, 1):
        own = second.gear[i]
        Y_J = geometry_factor(teeth, pair, curves, contact, i, own.delta_sn)
        K_B = rim_factor(own.t_R, 0.5 * (pair.d_a[i] - pair.d_f[i]))
        prepared.append(GearPrepared(
            Y_J, own.sigma_HP * Z_W[i] / Y_Z, own.sigma_FP / Y_Z, K_B / (b * m_t * Y_J),
            bending_line(gear[i]), FLANK_NITRIDED if is_nitrided(gear[i]) else FLANK))

    A_v = max(accuracy_of(gear[i].f_pt, teeth.m_n, pair.d[i] - 2.0 * teeth.m_n) for i in (0, 1))
    B_v = 0.25 * cbrt(A_v - 5.0) ** 2 if A_v >= 6 else 0.0
    yields = (1.0 - POISSON * POISSON) * (1.0 / gear[0].E + 1.0 / gear[1].E)
    return Prepared(
        gear=tuple(prepared),
        critical=second.critical,
        d_w1=pair.d_b[0] / cos(pair.alpha_wt),
        Z_I=contact.Z_I,
        K_H=face_load(b, contact.d_P),
        contact=sqrt(1.0 / (pi * yields * contact.d_P * b * contact.Z_I)),
        B_v=B_v,
        C_v=50.0 + 56.0 * (1.0 - B_v),
    )


# ---- what does -----------------------------------------------------------------------------------

@dataclass(slots=True)
class GearRating:
    sigma_F: float
    Z_N: float
    Y_N: float
    S_H: float
    S_F: float


@dataclass(slots=True)
class Rating:
    Z_I: float
    K_v: float
    K_H: float
    Y_J1: float
    Y_J2: float
    sigma_H: float
    gear: tuple


def cycle_factors(own, critical, n_L):
    """Z_N and Y_N."""
    if n_L <= KNEE_Z:
        scale, fall = own.Z_line
        Z_N = scale * max(LEAST_Z, n_L) ** -fall
    else:
        Z_N = 2.466 * n_L ** -0.056 if critical else 1.4488 * n_L ** -0.023
    if n_L <= KNEE_Y:
        scale, fall = own.Y_line
        Y_N = scale * max(LEAST_Y, n_L) ** -fall
    else:
        Y_N = 1.6831 * n_L ** -0.0323 if critical else 1.3558 * n_L ** -0.0178
    return Z_N, Y_N


def rate_gear(own, critical, force, sigma_H, n_L, R):
    Z_N, Y_N = cycle_factors(own, critical, n_L)
    q = min(1.0, max(0.0, -R / 1.2))
    Y_M = 1.0 / (1.0 + q * (1.0 - 0.4) / (1.0 + 0.4))
    sigma_F = force * own.root
    return GearRating(sigma_F, Z_N, Y_N, own.contact * Z_N / sigma_H,
                      own.bending * Y_N * Y_M / sigma_F)


def rate(p, load):
    v = load.omega_1 * p.d_w1 / 2000.0
    if p.B_v > 0.0:
        K_v = ((p.C_v + sqrt(v / 0.00508)) / p.C_v) ** p.B_v
    else:
        K_v = 1.11
    force = 2000.0 * load.T_1 / p.d_w1 * load.K_A * load.K_gamma * K_v * p.K_H
    sigma_H = p.contact * sqrt(force)
    return Rating(p.Z_I, K_v, p.K_H, p.gear[0].Y_J, p.gear[1].Y_J, sigma_H,
                  tuple(rate_gear(p.gear[i], p.critical, force, sigma_H, load.N_L[i], load.R[i])
                        for i in (0, 1)))
