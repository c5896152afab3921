"""What does ISO 6336 say of a whole batch of meshes, in NumPy?

The chain of iso6336_plain.py with arrays in place of numbers: every mesh goes down every branch and
np.where picks its own; what depends on the class of a steel is taken from a table.  The rows are
those of drawn_meshes.py, one column after the other in memory.  Both searches go on until the last
mesh of the batch is found.
"""

from types import SimpleNamespace

import numpy as np
from numpy import cos, log, maximum, minimum, pi, sin, sqrt, tan, where

import drawn_meshes
import iso6336_plain as plain

GEAR_COUNT = len(drawn_meshes.GEAR)

B_1, B_2, F_ZCA = (np.array(table) for table in (plain.B_1, plain.B_2, plain.F_ZCA))
ENDS_EASED = np.array(plain.ENDS_EASED)

# By class of steel: carburised, induction hardened, nitrided (2), nitrocarburised, quenched, plain.
HARD = np.array([True, True, True, True, True, False, False])
Z_STATIC = np.array([1.6, 1.6, 1.3, 1.3, 1.1, 1.6, 1.6])
Y_STATIC = np.array([2.5, 2.5, 1.6, 1.6, 1.1, 2.5, 2.5])
SURFACE_SMOOTH = np.array([1.12, 1.12, 1.025, 1.025, 1.025, 1.12, 1.07])
SURFACE_MOST = np.array([1.674, 1.674, 4.299, 4.299, 4.299, 1.674, 5.306])
SURFACE_SLOPE = np.array([0.529, 0.529, 3.259, 3.259, 3.259, 0.529, 4.203])
SURFACE_POWER = np.array([0.1, 0.1, 0.005, 0.005, 0.005, 0.1, 0.01])
SIZE_START = np.array([1.05, 1.05, 1.05, 1.05, 1.05, 1.03, 1.03])
SIZE_SLOPE = np.array([0.01, 0.01, 0.01, 0.01, 0.01, 0.006, 0.006])
SIZE_LEAST = np.array([0.8, 0.8, 0.8, 0.8, 0.8, 0.85, 0.85])
STATIC_SLOPE = np.array([0.44, 0.44, 0.2, 0.2, 0.2, 0.0, 0.0])
STATIC_START = np.array([0.12, 0.12, 0.6, 0.6, 0.6, 0.0, 0.0])
SOFT_FACTOR = np.array([0.0, 0.0, 0.0, 0.0, 0.0, 0.82 * 300.0 ** 0.25, 0.93 * 200.0 ** 0.25])
MEAN = np.array([0.4, 0.4, 0.3, 0.3, 0.3, 0.3, 0.3])
MEAN_STATIC = np.array([0.6, 0.6, 0.3, 0.3, 0.3, 0.5, 0.5])
CONTACT_NODES = np.array([plain.CONTACT_PLAIN, plain.CONTACT_PITTING, plain.CONTACT_NITRIDED]).T
BENDING_NODES = np.array([plain.BENDING_SOFT, plain.BENDING_HARD]).T


def columns(rows):
    """The rows of drawn_meshes.py under the names of their fields; whole numbers as such."""
    names = [name for name, *_ in drawn_meshes.FIELDS]
    start = drawn_meshes.PAIR_FIELDS
    end = drawn_meshes.MESH_FIELDS

    def named(cells):
        out = SimpleNamespace(**{names[i]: rows[:, i] for i in cells})
        for name in ("kind", "accuracy", "year", "profile", "lead", "face"):
            if hasattr(out, name):
                setattr(out, name, getattr(out, name).astype(np.intp))
        for name in ("shot_peened", "pitting", "relief_matched"):
            if hasattr(out, name):
                setattr(out, name, getattr(out, name) > 0.0)
        return out

    teeth = named(range(start))
    mesh = named(range(end, drawn_meshes.LOAD_FIELDS))
    load = named(range(drawn_meshes.LOAD_FIELDS, drawn_meshes.SECOND_FIELDS))
    mesh.teeth = teeth
    mesh.gear = (named(range(start, start + GEAR_COUNT)), named(range(start + GEAR_COUNT, end)))
    mesh.second = named(range(len(names) - 2, len(names)))
    mesh.second.critical = mesh.second.critical > 0.0
    first, count = drawn_meshes.SECOND_FIELDS, len(drawn_meshes.SECOND_GEAR)
    mesh.second.gear = (named(range(first, first + count)),
                        named(range(first + count, first + 2 * count)))
    load.N_L = (load.N_L1, load.N_L2)
    load.R = (load.R_1, load.R_2)
    return mesh, load


def case(load, share):
    """The drawn load in one condition and on one flank."""
    torque, speed, cycles, swung = share
    return SimpleNamespace(
        T_1=load.T_1 * torque, omega_1=load.omega_1 * speed, K_A=load.K_A, K_gamma=load.K_gamma,
        face=load.face, K_Hbeta=load.K_Hbeta, F_betax=load.F_betax, f_sh=load.f_sh * torque,
        f_ma=load.f_ma, N_L=tuple(N * cycles for N in load.N_L),
        R=tuple(R * swung for R in load.R))


# ---- geometry, ISO 21771 -------------------------------------------------------------------------

def angle_of_involute(value):
    root = np.cbrt(3.0 * value)
    square = root * root
    angle = root * (1.0 - square * (2.0 / 15.0 - square * 9.0 / 175.0))
    while True:
        tangent = tan(angle)
        step = (tangent - angle - value) / (tangent * tangent)
        angle -= step
        if np.abs(step).max() < 1e-9:
            return angle


def solve_pair(teeth):
    t, p = teeth, SimpleNamespace()
    tan_n, cos_beta, sin_beta = tan(t.alpha_n), cos(t.beta), sin(t.beta)
    m_t = t.m_n / cos_beta
    p.alpha_t = np.arctan(tan_n / cos_beta)
    p.cos_t = cos(p.alpha_t)
    count = t.z_1 + t.z_2
    p.alpha_wt = angle_of_involute(tan(p.alpha_t) - p.alpha_t
                                   + 2.0 * tan_n * (t.x_1 + t.x_2) / count)
    a = m_t * count / 2.0
    a_w = a * p.cos_t / cos(p.alpha_wt)
    reach = plain.TIP_HEIGHT + (a_w - a) / t.m_n - t.x_1 - t.x_2
    p.d = t.z_1 * m_t, t.z_2 * m_t
    p.d_b = p.d[0] * p.cos_t, p.d[1] * p.cos_t
    module = 2.0 * t.m_n
    p.d_a = p.d[0] + module * (reach + t.x_1), p.d[1] + module * (reach + t.x_2)
    p.d_f = (p.d[0] - module * (plain.ROOT_HEIGHT - t.x_1),
             p.d[1] - module * (plain.ROOT_HEIGHT - t.x_2))
    path = (0.5 * (sqrt(p.d_a[0] ** 2 - p.d_b[0] ** 2) + sqrt(p.d_a[1] ** 2 - p.d_b[1] ** 2))
            - a_w * sin(p.alpha_wt))
    p.b = minimum(t.b_1, t.b_2)
    p.u = t.z_2 / t.z_1
    p.eps_alpha = path / (pi * m_t * p.cos_t)
    p.eps_beta = p.b * sin_beta / (pi * t.m_n)
    p.eps_gamma = p.eps_alpha + p.eps_beta
    p.sin_n, p.cos_n, p.tan_n, p.cos_beta = sin(t.alpha_n), cos(t.alpha_n), tan_n, cos_beta
    p.cos_b = sqrt(1.0 - (sin_beta * p.cos_n) ** 2)
    return p


# ---- root ----------------------------------------------------------------------------------------

def tangent_angle(G, H, z_n):
    slope = 2.0 * G / z_n
    theta = np.full_like(G, pi / 6.0)
    while True:
        t = tan(theta)
        step = (theta - slope * t + H) / (1.0 - slope * (1.0 + t * t))
        theta -= step
        if np.abs(step).max() < 1e-9:
            return theta


def root_form(teeth, p, i, s_pr):
    m_n, rho = teeth.m_n, teeth.rho_fP
    z, x = (teeth.z_1, teeth.x_1) if i == 0 else (teeth.z_2, teeth.x_2)
    square = p.cos_b * p.cos_b
    z_n = z / (square * p.cos_beta)
    eps_alphan = p.eps_alpha / square

    E = (pi / 4.0 - plain.ROOT_HEIGHT * p.tan_n
         + (s_pr / m_n - (1.0 - p.sin_n) * rho) / p.cos_n)
    G = rho - plain.ROOT_HEIGHT + x
    theta = tangent_angle(G, 2.0 / z_n * (pi / 2.0 - E) - pi / 3.0, z_n)
    c = cos(theta)
    arm = G / c - rho
    s_Fn = z_n * sin(pi / 3.0 - theta) + sqrt(3.0) * arm
    rho_F = rho + 2.0 * G * G / (c * (z_n * c * c - 2.0 * G))

    d_n = m_n * z_n
    d_bn = d_n * p.cos_n
    d_an = d_n + p.d_a[i] - p.d[i]
    along = 0.5 * sqrt(d_an * d_an - d_bn * d_bn) - pi * m_n * p.cos_n * (eps_alphan - 1.0)
    d_en = sqrt(4.0 * along * along + d_bn * d_bn)
    alpha_en = np.arccos(d_bn / d_en)
    gamma_e = ((pi / 2.0 + 2.0 * p.tan_n * x) / z_n + (p.tan_n - teeth.alpha_n)
               - (tan(alpha_en) - alpha_en))
    alpha_Fen = alpha_en - gamma_e
    h_Fe = 0.5 * ((cos(gamma_e) - sin(gamma_e) * tan(alpha_Fen)) * d_en / m_n
                  - z_n * cos(pi / 3.0 - theta) - arm)
    Y_F = 6.0 * h_Fe * cos(alpha_Fen) / (s_Fn * s_Fn * p.cos_n)
    L = s_Fn / h_Fe
    q_s = s_Fn / (2.0 * rho_F)
    return Y_F, (1.2 + 0.13 * L) * q_s ** (1.0 / (1.21 + 2.3 / L)), q_s, z_n, eps_alphan


# ---- what does not depend on the load ------------------------------------------------------------

def slip_layer(g):
    quenched = np.interp(g.strength, (500.0, 600.0, 800.0, 1000.0),
                         (0.0281, 0.0194, 0.0064, 0.0014))
    normalised = np.interp(g.strength, (300.0, 400.0), (0.0833, 0.0445))
    soft = where(g.kind == plain.THROUGH_HARDENED, quenched, normalised)
    return where(g.kind <= plain.INDUCTION_HARDENED, 0.0030, where(g.hard, 0.1005, soft))


def stiffness(mesh, p, z_n, swapped):
    t, (g_1, g_2) = mesh.teeth, mesh.gear
    x_p, x_g = where(swapped, t.x_2, t.x_1), where(swapped, t.x_1, t.x_2)
    z_p, z_g = where(swapped, z_n[1], z_n[0]), where(swapped, z_n[0], z_n[1])
    q = (0.04723 + (0.15551 - 0.11654 * x_p) / z_p + (0.25791 - 0.24188 * x_g) / z_g
         + (0.00529 * x_p - 0.00635) * x_p + (0.00182 * x_g - 0.00193) * x_g)
    C_B = ((1.0 + 0.5 * (1.2 - plain.ROOT_HEIGHT))
           * (1.0 - 0.02 * (20.0 - t.alpha_n * (180.0 / pi))))
    return (0.8 * 2.0 / 206000.0) * C_B * p.cos_beta * g_1.E * g_2.E / (q * (g_1.E + g_2.E))


def disc_mass(p, i):
    d_m = 0.5 * (p.d_a[i] + p.d_f[i])
    return (pi / 8.0 * plain.DENSITY) * (d_m * d_m / p.d_b[i]) ** 2


def dynamic_constants(eps):
    long = eps > 2.0
    return (where(long, 0.57 / (eps - 0.3), 0.34),
            where(long, 0.096 / (eps - 1.56), 0.23),
            where(long, (0.57 - 0.05 * eps) / (eps - 1.44), 0.90),
            where(long, 0.12 / (eps - 1.74), 0.47),
            where(eps <= 1.5, 0.75,
                  where(eps <= 2.5, 0.125 * sin(pi * (eps - 2.0)) + 0.875, 1.0)))


def tip_relief(g_1, g_2):
    C_ay = (((g_1.sigma_Hlim / 97.0 - 18.45) ** 2 + (g_2.sigma_Hlim / 97.0 - 18.45) ** 2) / 36.0
            + 1.5)
    both, either = minimum(g_1.C_a, g_2.C_a), g_1.C_a + g_2.C_a
    return where(both > 0.0, both, where(either > 0.0, minimum(either, C_ay), C_ay))


def single_contact(mesh, p):
    t = mesh.teeth
    step_1, step_2 = 2.0 * pi / t.z_1, 2.0 * pi / t.z_2
    t_1 = sqrt((p.d_a[0] / p.d_b[0]) ** 2 - 1.0)
    t_2 = sqrt((p.d_a[1] / p.d_b[1]) ** 2 - 1.0)
    rest = p.eps_alpha - 1.0
    M_1 = p.tan_wt / sqrt((t_1 - step_1) * (t_2 - rest * step_2))
    M_2 = p.tan_wt / sqrt((t_2 - step_2) * (t_1 - rest * step_1))
    share = minimum(1.0, p.eps_beta)
    ends = where((mesh.year == plain.YEAR_2019) & (share > 0.0), sqrt(F_ZCA)[mesh.profile], 1.0)
    return maximum(1.0, M_1 - share * (M_1 - ends)), maximum(1.0, M_2 - share * (M_2 - ends))


def bending_share(mesh, p, eps_alphan):
    g_1, g_2 = mesh.gear
    old = mesh.year == plain.YEAR_2006
    share = minimum(1.0, p.eps_beta)
    Y_beta = 1.0 - share * minimum(30.0, mesh.teeth.beta * (180.0 / pi)) / 120.0
    deep = where(eps_alphan <= 2.05, 1.0,
                 where(eps_alphan <= 2.5, 2.366 - 0.666 * eps_alphan, 0.7))
    fine = maximum(g_1.accuracy, g_2.accuracy) <= 4
    alone = where(eps_alphan < 2.0, 1.0 - share, (1.0 - share) / 2.0)
    f_eps = where(share > 0.0, sqrt(alone + share / eps_alphan), where(eps_alphan < 2.0, 1.0, 0.7))
    return (where(old, 1.0, f_eps),
            where(old, where(fine, Y_beta * deep, Y_beta), Y_beta / p.cos_beta ** 3))


def work_hardening(mesh, p, i, swapped):
    """Whether Z_W follows from the speed, Z_W where not, static Z_W, hardness, roughness."""
    own, mate = mesh.gear[i], mesh.gear[1 - i]
    by_speed = ~own.hard & mate.hard
    above = minimum(470.0, maximum(130.0, own.HB)) - 130.0
    roughness = mate.R_z * (10.0 / p.rho_red) ** 0.33 * (mate.R_z / own.R_z) ** 0.66
    wheel = ~swapped if i == 1 else swapped
    ratio = mate.HB / own.HB
    u = maximum(p.u, 1.0 / p.u)
    through = 1.0 + (0.00898 * minimum(ratio, 1.7) - 0.00829) * (minimum(u, 20.0) - 1.0)
    Z_W = where(wheel & ~own.hard & ~mate.hard & (ratio >= 1.2), through, 1.0)
    return (by_speed, Z_W, where(by_speed, 1.05 - above / 6800.0, 1.0), 1.2 - above / 1700.0,
            roughness)


def prepare_gear(mesh, p, i, swapped, form, f_eps, Z_BD):
    g, t, o = mesh.gear[i], mesh.teeth, SimpleNamespace()
    Y_F, Y_S, q_s, _, _ = form
    o.Z_BD = Z_BD
    o.by_speed, o.Z_W, Z_Wstat, o.hardness, o.roughness = work_hardening(mesh, p, i, swapped)
    o.Y_F = Y_F * f_eps
    o.Y_S = where(g.t_g > 0.0, 1.3 * Y_S / (1.3 - 0.6 * sqrt(g.t_g / g.rho_g)), Y_S)
    b_own = t.b_1 if i == 0 else t.b_2
    o.b_F = where(ENDS_EASED[mesh.lead], p.b, minimum(b_own, p.b + 2.0 * t.m_n))

    nitrided = (g.kind >= plain.NITRIDED) & (g.kind <= plain.NITROCARBURISED)
    o.pitting = g.pitting & ~nitrided
    o.contact_nodes = CONTACT_NODES[:, where(nitrided, 2, where(g.pitting, 1, 0))]
    o.contact_static = g.sigma_Hlim * Z_Wstat * Z_STATIC[g.kind]
    o.contact_fall = -log(g.Z_NTlong) / o.contact_nodes[5]

    rho_p = slip_layer(g)
    Y_delta = (1.0 + sqrt(rho_p * 0.2 * (1.0 + 2.0 * q_s))) / (1.0 + sqrt(rho_p * 1.2))
    f = SOFT_FACTOR[g.kind] * g.strength ** -0.25
    Y_deltastat = where(g.hard, STATIC_SLOPE[g.kind] * Y_S + STATIC_START[g.kind],
                        (1.0 + f * (Y_S - 1.0)) / (1.0 + f))
    R = minimum(g.R_zF, 40.0)
    surface = where(R < 1.0, SURFACE_SMOOTH[g.kind],
                    SURFACE_MOST[g.kind]
                    - SURFACE_SLOPE[g.kind] * (R + 1.0) ** SURFACE_POWER[g.kind])
    size = minimum(1.0, maximum(SIZE_LEAST[g.kind],
                                SIZE_START[g.kind] - SIZE_SLOPE[g.kind] * t.m_n))
    plain_case = (g.kind == plain.CASE_HARDENED) & ~g.shot_peened
    M = where(plain_case, 0.8 - 0.15 * Y_S, MEAN[g.kind])
    M_stat = where(plain_case, 0.7, MEAN_STATIC[g.kind])
    o.bending_nodes = BENDING_NODES[:, g.hard.astype(np.intp)]
    o.bending_static = 2.0 * g.sigma_Flim * Y_deltastat * Y_STATIC[g.kind]
    o.bending_ref = 2.0 * g.sigma_Flim * Y_delta * surface * size
    o.bending_fall = -log(g.Y_NTlong) / o.bending_nodes[5]
    o.mean, o.mean_static = (1.0 - M) / (1.0 + M), (1.0 - M_stat) / (1.0 + M_stat)
    return o


def prepare_film(mesh, p, o):
    g_1, g_2 = mesh.gear
    soft = minimum(g_1.sigma_Hlim, g_2.sigma_Hlim)
    C_ZL = minimum(0.91, maximum(0.83, soft / 4375.0 + 0.6357))
    C_ZR = minimum(0.15, maximum(0.08, 0.32 - 0.0002 * soft))
    R_z10 = (g_1.R_z + g_2.R_z) * 0.5 * np.cbrt(10.0 / p.rho_red)
    o.Z_LR = ((C_ZL + 4.0 * (1.0 - C_ZL) / (1.2 + 134.0 / mesh.nu_40) ** 2)
              * (3.0 / R_z10) ** C_ZR)
    o.C_Zv = minimum(0.93, maximum(0.85, soft / 4375.0 + 0.6557))


def prepare(p, mesh):
    t, (g_1, g_2), o = mesh.teeth, mesh.gear, SimpleNamespace()
    for g in mesh.gear:
        g.hard = HARD[g.kind]
    p.tan_wt = tan(p.alpha_wt)
    p.rho_red = 0.5 * p.tan_wt * p.d_b[0] * p.d_b[1] / (p.d_b[0] + p.d_b[1])
    forms = root_form(t, p, 0, g_1.s_pr), root_form(t, p, 1, g_2.s_pr)
    f_eps, o.Y_common = bending_share(mesh, p, forms[0][4])
    swapped = (t.z_2 < t.z_1) | ((t.z_2 == t.z_1) & (t.x_2 > t.x_1))
    prepare_film(mesh, p, o)
    ends = single_contact(mesh, p)
    o.gear = tuple(prepare_gear(mesh, p, i, swapped, forms[i], f_eps, ends[i]) for i in (0, 1))

    o.mesh, o.pair, o.b = mesh, p, p.b
    o.c = stiffness(mesh, p, (forms[0][3], forms[1][3]), swapped)
    o.c_share = 0.75 * p.eps_alpha + 0.25
    m_1, m_2 = disc_mass(p, 0), disc_mass(p, 1)
    o.m_red = m_1 * m_2 / (m_1 + m_2)
    o.f_pb = maximum(g_1.f_pt, g_2.f_pt) * p.cos_t
    o.f_falpha = maximum(g_1.f_falpha, g_2.f_falpha)
    o.fine = maximum(g_1.accuracy, g_2.accuracy) < 6
    o.C_a = tip_relief(g_1, g_2)
    o.C_v = dynamic_constants(p.eps_gamma)
    share = minimum(1.0, p.eps_beta)
    Z_eps = sqrt(maximum(0.0, 4.0 - p.eps_alpha) / 3.0 * (1.0 - share) + share / p.eps_alpha)
    o.H_most = p.eps_gamma / (p.eps_alpha * Z_eps * Z_eps)
    o.F_most = p.eps_gamma / (0.25 * p.eps_alpha + 0.75)
    yields = (1.0 - 0.3 * 0.3) / g_1.E + (1.0 - 0.3 * 0.3) / g_2.E
    o.Z_nominal = Z_eps * sqrt(2.0 * p.cos_b / (p.cos_t * p.cos_t * p.tan_wt
                                                * (pi * yields) * p.cos_beta))
    slender = maximum(3.0, 2.0 * minimum(t.b_1 / (p.d_a[0] - p.d_f[0]),
                                         t.b_2 / (p.d_a[1] - p.d_f[1])))
    o.N_F = 1.0 / (1.0 + (1.0 + 1.0 / slender) / slender)
    return o


# ---- what does -----------------------------------------------------------------------------------

def run_in(g, v, deviation, factor):
    hard = minimum(0.075 * factor * deviation, 3.0 * factor)
    y = minimum(deviation, 160.0 * factor * deviation / g.sigma_Hlim)
    most = where(v > 10.0, 6400.0 * factor, where(v > 5.0, 12800.0 * factor, np.inf))
    return where(g.hard, hard, minimum(y, most / g.sigma_Hlim))


def run_in_pair(gear, v, deviation, factor):
    return 0.5 * (run_in(gear[0], v, deviation, factor) + run_in(gear[1], v, deviation, factor))


def dynamic_factor(N, N_S, C_v, B_p, B_f, B_k):
    C_2, C_3, C_4, C_6, C_7 = C_v
    below = 0.32 * B_p + C_2 * B_f
    resonance = below + C_4 * B_k + 1.0
    above = 0.47 * B_p + C_6 * B_f + C_7
    return where(N <= N_S, N * (below + C_3 * B_k) + 1.0,
                 where(N <= 1.15, resonance,
                       above + (resonance - above) * maximum(0.0, 1.5 - N) / 0.35))


def face_factor(mesh, load, v, F_m, c_gamma_beta):
    parts = maximum(1.33 * B_1[mesh.lead] * load.f_sh + B_2[mesh.lead] * load.f_ma, 0.005 * F_m)
    F = where(load.face == plain.FACE_PARTS, parts, load.F_betax)
    F = F - run_in_pair(mesh.gear, v, F, 2.0)
    gap = F * c_gamma_beta / (2.0 * F_m)
    return where(load.face == plain.FACE_GIVEN, load.K_Hbeta,
                 where(gap >= 1.0, 2.0 * sqrt(gap), 1.0 + gap))


def limit_stress(nodes, s_0, s_1, s_2, fall, N_L):
    """One line of the three is picked before the only power."""
    N_0, N_1, N_2, ln_01, ln_12, _ = nodes
    early = N_L <= N_1
    slope = where(early, log(s_0 / s_1) / ln_01, where(N_L <= N_2, log(s_1 / s_2) / ln_12, fall))
    on_line = where(early, s_1, s_2) * (where(early, N_1, N_2) / N_L) ** slope
    return where(N_L <= N_0, s_0, on_line)


def rate_gear(p, load, i, v, film, sigma_H, sigma_F):
    own, g = p.gear[i], p.mesh.gear[i]
    R_zH = minimum(16.0, maximum(3.0, own.roughness / (v * p.mesh.nu_40 / 1500.0) ** 0.33))
    Z_W = where(own.by_speed, own.hardness * (3.0 / R_zH) ** 0.15, own.Z_W)
    sigma_H = sigma_H * own.Z_BD
    sigma_F = sigma_F * own.Y_F * own.Y_S / own.b_F

    ref = g.sigma_Hlim * film * Z_W
    static = maximum(own.contact_static, ref)
    middle = where(own.pitting, ref * (static / ref) ** plain.MIDDLE, ref)
    sigma_HG = limit_stress(own.contact_nodes, static, middle, ref, own.contact_fall, load.N_L[i])
    ref = own.bending_ref / (1.0 - load.R[i] * own.mean)
    static = maximum(own.bending_static / (1.0 - load.R[i] * own.mean_static), ref)
    sigma_FG = limit_stress(own.bending_nodes, static, ref, ref, own.bending_fall, load.N_L[i])
    return (own.Y_F, own.Y_S, Z_W, sigma_H, sigma_HG, sigma_HG / sigma_H, sigma_F, sigma_FG,
            sigma_FG / sigma_F)


def rate(p, load):
    """The factors of the mesh, then those of each gear, in the order of plain.Rating."""
    pair, mesh, teeth = p.pair, p.mesh, p.mesh.teeth
    d_1 = pair.d[0]
    F_t = 2000.0 * load.T_1 / d_1
    v = load.omega_1 * d_1 / 2000.0
    outside = load.K_A * load.K_gamma
    w = F_t * outside / p.b

    part = minimum(1.0, w / 100.0)
    root = sqrt(part)
    c = p.c * sqrt(root)
    c_gamma_alpha = c * p.c_share
    N = load.omega_1 * teeth.z_1 / (1000.0 * sqrt(c_gamma_alpha / p.m_red))
    f_pb = p.f_pb - run_in_pair(mesh.gear, v, p.f_pb, 1.0)
    f_falpha = p.f_falpha - run_in_pair(mesh.gear, v, p.f_falpha, 1.0)
    soft = c / w
    B_k = where(p.fine, np.abs(1.0 - soft * p.C_a), 1.0)
    K_v = dynamic_factor(N, 0.5 + 0.35 * root, p.C_v, soft * f_pb, soft * f_falpha, B_k)

    F_m = w * K_v
    K_Hbeta = face_factor(mesh, load, v, F_m, 0.85 * c_gamma_alpha)
    K_Fbeta = K_Hbeta ** p.N_F
    q = c_gamma_alpha * where(mesh.relief_matched, 0.5 * f_pb, f_pb) / (F_m * K_Hbeta)
    eps = pair.eps_gamma
    K_alpha = where(eps <= 2.0, eps / 2.0 * (0.9 + 0.4 * q),
                    0.9 + 0.4 * sqrt(2.0 * (eps - 1.0) / eps) * q)
    K_Halpha = maximum(1.0, minimum(K_alpha, p.H_most))
    K_Falpha = maximum(1.0, minimum(K_alpha, p.F_most))

    sigma_H0 = p.Z_nominal * sqrt(F_t / (d_1 * p.b) * (pair.u + 1.0) / pair.u)
    film = p.Z_LR * (p.C_Zv + 2.0 * (1.0 - p.C_Zv) / sqrt(0.8 + 32.0 / v))
    sigma_H = sigma_H0 * sqrt(outside * K_v * K_Hbeta * K_Halpha)
    sigma_F = F_t / teeth.m_n * p.Y_common * outside * K_v * K_Fbeta * K_Falpha
    return ((c_gamma_alpha, N, K_v, K_Hbeta, K_Fbeta, K_Halpha, K_Falpha, sigma_H0)
            + rate_gear(p, load, 0, v, film, sigma_H, sigma_F)
            + rate_gear(p, load, 1, v, film, sigma_H, sigma_F))
