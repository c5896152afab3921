"""What does AGMA 2101 say of a whole batch of meshes, with I and J of AGMA 908, in NumPy?

The chain of agma2101_plain.py with arrays in place of numbers, as iso6336_numpy.py does it: every
mesh goes down every branch, and the search for the critical section goes on until the last mesh of
the batch is found.  The geometry is the pair of iso6336_numpy.py.
"""

from types import SimpleNamespace

import numpy as np
from numpy import cos, log, maximum, minimum, pi, sin, sqrt, tan, where

import agma2101_plain as plain
import iso6336_plain
from iso6336_numpy import HARD

# By class of steel: carburised, induction hardened, nitrided (2), nitrocarburised, quenched, plain.
Y_SCALE = np.array([plain.CARBURISED[0]] * 2 + [plain.NITRIDED_LINE[0]] * 3 + [0.0] * 2)
Y_FALL = np.array([plain.CARBURISED[1]] * 2 + [plain.NITRIDED_LINE[1]] * 3 + [0.0] * 2)
Z_SCALE, Z_FALL = (np.array([flank] * 2 + [nitrided] * 3 + [flank] * 2)
                   for flank, nitrided in zip(plain.FLANK, plain.FLANK_NITRIDED))
HARDNESS, SCALE, FALL = (np.array(column) for column in zip(*plain.HARDENED))
# By rising reliability: logarithm of the failures, Y_Z.
FAILURES, Y_Z = (np.array(column) for column in zip(*plain.RELIABILITY))


# ---- curvatures ----------------------------------------------------------------------------------

def load_share(teeth, p, b):
    n_alpha, n_beta = np.modf(p.eps_alpha)[0], np.modf(p.eps_beta)[0]
    less = where(n_beta <= 1.0 - n_alpha, n_beta * n_alpha, (1.0 - n_beta) * (1.0 - n_alpha))
    return b * p.cos_b / (p.eps_alpha * b - less * (pi * teeth.m_n / sin(teeth.beta)))


def contact_of(teeth, p):
    """Adds what the mesh is; `path` are rho_T, rho_B1, rho_D1."""
    o = SimpleNamespace()
    cos_wt = cos(p.alpha_wt)
    base = p.d_b[0] + p.d_b[1]
    rho_T = 0.5 * base * tan(p.alpha_wt)
    rho_a1 = 0.5 * sqrt(p.d_a[0] ** 2 - p.d_b[0] ** 2)
    rho_a2 = 0.5 * sqrt(p.d_a[1] ** 2 - p.d_b[1] ** 2)
    p_bt = pi * p.d_b[0] / teeth.z_1
    rho_B1, rho_D1 = rho_a1 - p_bt, rho_T - rho_a2 + p_bt
    second = where(teeth.z_1 == teeth.z_2, rho_T - rho_D1 < rho_B1, teeth.z_2 < teeth.z_1)
    o.spur, o.helical = teeth.beta <= 0.0, (teeth.beta > 0.0) & (p.eps_beta > 1.0)

    low = where(second, rho_T - rho_D1, rho_B1)
    d_b = where(second, p.d_b[1], p.d_b[0])
    over = where(second, p.d_a[1] - p.d_a[0], p.d_a[0] - p.d_a[1])
    r_m = 0.25 * over + 0.25 * base / cos_wt
    mean = sqrt(r_m * r_m - 0.25 * d_b * d_b)
    share = np.arctan(p.tan_beta * p.sin_n) * (1.8 / pi)  # of 100 degrees
    o.C_h = where(o.helical, 1.0 / (1.0 - sqrt(share * (1.0 - share))), 1.0)
    sin_b = sqrt(1.0 - p.cos_b * p.cos_b)
    cos_w = cos_wt / sqrt(cos_wt * cos_wt + (sin_b / p.cos_b) ** 2)
    o.K_psi = where(o.helical, cos_w * p.cos_beta, 1.0)
    with np.errstate(divide="ignore", invalid="ignore"):  # spur gears have no axial pitch
        o.m_N = where(o.helical, load_share(teeth, p, p.b), 1.0)
    part = (mean * (rho_T - mean) * (rho_a1 + rho_a2 - rho_T)
            / (low * (rho_T - low) * (pi * teeth.m_n * p.cos_n)))
    C_psi_2 = where(o.spur | o.helical, 1.0, 1.0 - p.eps_beta * (1.0 - part))
    rho = where(o.helical, mean, low)
    o.C_psi = sqrt(C_psi_2)
    o.d_P = d_b / cos_wt
    o.Z_I = cos_wt * C_psi_2 * rho * (rho_T - rho) / (rho_T * o.d_P * o.m_N)
    o.cos_wn = sqrt(1.0 - (p.cos_b * sin(p.alpha_wt)) ** 2)
    o.second = second
    o.rho_W = rho_D1, rho_T - rho_B1
    return o


# ---- root ----------------------------------------------------------------------------------------

def fillet_at(f, theta):
    c = cos(theta)
    ratio = f.h_S / f.r_n
    turn = ratio * tan(theta) + f.lean
    nu = theta + turn
    sin_nu, cos_nu = sin(nu), cos(nu)
    reach = f.h_S / c + f.rho_a0
    xi = f.r_n * sin(turn) - reach * sin_nu
    arm = f.r_nL - f.r_n * cos(turn) + reach * cos_nu
    speed = ratio / (c * c)
    along = f.h_S / c * speed + (1.0 + speed) * f.rho_a0
    slope = -along * sin_nu * cos_nu - (1.0 + speed) * (2.0 * arm * sin_nu + xi * cos_nu)
    return nu, xi, arm, 2.0 * arm * cos_nu - xi * sin_nu, slope


def find_theta(f):
    """Newton's rule between two bounds."""
    sinks = f.h_S < 0.0
    high = where(sinks, np.arccos(sqrt(maximum(-f.h_S, 0.0) / f.r_n)), pi / 2.0)
    low = np.zeros_like(high)
    theta = where(sinks, minimum(0.9, 0.5 * high), 0.9)
    while True:
        nu, _, _, miss, slope = fillet_at(f, theta)
        following = theta - miss / slope
        on_tooth = nu < pi / 2.0
        if (on_tooth & (np.abs(following - theta) <= 1e-9)).all():
            return following
        past = ~on_tooth | (miss < 0.0)
        high, low = where(past, theta, high), where(past, low, theta)
        inside = on_tooth & (following >= low) & (following <= high)
        theta = where(inside, following, 0.5 * (low + high))


def geometry_factor(teeth, p, o, i, delta_sn):
    """Y_J."""
    m_n, alpha_n = teeth.m_n, teeth.alpha_n
    z, x = (teeth.z_1, teeth.x_1) if i == 0 else (teeth.z_2, teeth.x_2)
    f = SimpleNamespace(rho_a0=teeth.rho_fP)
    z_n = z / p.cos_beta ** 3
    f.r_n = 0.5 * z_n
    r_bn = f.r_n * p.cos_n
    tip = (f.r_n + 0.5 * (p.d_a[i] - p.d[i]) / m_n) / r_bn
    t_W = where(o.spur & (p.eps_alpha < 2.0), o.rho_W[i] / (m_n * r_bn), sqrt(tip * tip - 1.0))
    alpha_nL = t_W - (p.tan_n - alpha_n) - (pi / 2.0 + 2.0 * x * p.tan_n) / z_n
    f.r_nL = r_bn / cos(alpha_nL)

    below = iso6336_plain.ROOT_HEIGHT - f.rho_a0
    f.h_S = below - x + delta_sn / (2.0 * p.tan_n)
    f.lean = (pi / 4.0 + below * p.tan_n + f.rho_a0 / p.cos_n) / f.r_n
    _, xi, h_F, _, _ = fillet_at(f, find_theta(f))
    s_F = 2.0 * xi
    rho_F = f.rho_a0 + f.h_S * f.h_S / (f.r_n + f.h_S)

    K_f = (0.331 - 0.436 * alpha_n
           + (s_F / rho_F) ** (0.324 - 0.492 * alpha_n) * (s_F / h_F) ** (0.261 + 0.545 * alpha_n))
    lever = 6.0 * h_F / (s_F * s_F * o.C_h) - tan(alpha_nL) / s_F
    return o.K_psi * o.cos_wn * o.C_psi / (cos(alpha_nL) * lever * K_f * o.m_N)


# ---- strength ------------------------------------------------------------------------------------

def bending_line(g):
    """Scale and fall; between lines of through-hardened steel straight in the logarithm."""
    fall = np.interp(g.HB, HARDNESS, FALL)
    scale = np.exp(np.interp(g.HB, HARDNESS, log(SCALE)))
    return where(g.hard, Y_SCALE[g.kind], scale), where(g.hard, Y_FALL[g.kind], fall)


def hardness_ratio(pinion, wheel, m_G):
    B_W = 0.00075 * np.exp(-0.0112 / 6.0 / 0.0254 * pinion.R_z)
    under_hard = 1.0 + B_W * maximum(0.0, 450.0 - maximum(180.0, wheel.HB))
    ratio = pinion.HB / wheel.HB
    A_W = where(ratio < 1.2, 0.0, where(ratio > 1.7, 0.00698, 0.00898 * ratio - 0.00829))
    both_soft = 1.0 + A_W * (minimum(20.0, m_G) - 1.0)
    return where(wheel.hard, 1.0, where(pinion.hard, under_hard, both_soft))


def accuracy_of(f_pt, m_n, d_T):
    d_part = where(d_T <= 400.0, 0.003 * d_T + 5.2, 0.12 * sqrt(d_T) + 4.0)
    return np.ceil(log(f_pt / (0.3 * m_n + d_part)) / 0.3466 + 5.0)


def reliability_factor(R):
    """Straight over the logarithm of the failures, which np.interp wants rising."""
    return np.interp(-log(1.0 - R), -log(FAILURES), Y_Z)


def face_load(b, d_P):
    inches = b / plain.INCH
    A, B, C = plain.ALIGNMENT
    more = where(inches <= 1.0, -0.025,
                 where(inches <= 17.0, 0.0125 * inches - 0.0375,
                       (0.0207 - 0.000228 * inches) * inches - 0.1109))
    return 1.0 + maximum(0.05, b / (10.0 * d_P)) + more + A + (B + C * inches) * inches


# ---- what does not depend on the load, and what does ---------------------------------------------

def prepare_gear(mesh, p, o, i, Y_z):
    g, own, t = mesh.gear[i], SimpleNamespace(), mesh.teeth
    second = mesh.second.gear[i]
    own.Y_J = geometry_factor(t, p, o, i, second.delta_sn)
    h_t = 0.5 * (p.d_a[i] - p.d_f[i])
    thin = (second.t_R > 0.0) & (second.t_R < 1.2 * h_t)
    K_B = where(thin, 1.6 * log(2.242 * h_t / where(thin, second.t_R, h_t)), 1.0)
    is_wheel = o.second if i == 0 else ~o.second
    Z_W = where(is_wheel, hardness_ratio(mesh.gear[1 - i], g, maximum(p.u, 1.0 / p.u)), 1.0)
    own.contact = second.sigma_HP * Z_W / Y_z
    own.bending = second.sigma_FP / Y_z
    own.root = K_B * p.cos_beta / (p.b * t.m_n * own.Y_J)
    own.Y_scale, own.Y_fall = bending_line(g)
    own.Z_scale, own.Z_fall = Z_SCALE[g.kind], Z_FALL[g.kind]
    return own


def prepare(p, mesh):
    t, (g_1, g_2), o = mesh.teeth, mesh.gear, SimpleNamespace()
    for g in mesh.gear:
        g.hard = HARD[g.kind]
    p.tan_beta = tan(t.beta)
    contact = contact_of(t, p)
    Y_z = reliability_factor(mesh.second.R)
    o.gear = tuple(prepare_gear(mesh, p, contact, i, Y_z) for i in (0, 1))
    o.critical = mesh.second.critical
    o.d_w1 = p.d_b[0] / cos(p.alpha_wt)
    o.Z_I = contact.Z_I
    o.K_H = face_load(p.b, contact.d_P)
    yields = (1.0 - plain.POISSON * plain.POISSON) * (1.0 / g_1.E + 1.0 / g_2.E)
    o.contact = sqrt(1.0 / (pi * yields * contact.d_P * p.b * contact.Z_I))
    A_v = maximum(accuracy_of(g_1.f_pt, t.m_n, p.d[0] - 2.0 * t.m_n),
                  accuracy_of(g_2.f_pt, t.m_n, p.d[1] - 2.0 * t.m_n))
    o.curved = A_v >= 6.0
    o.B_v = 0.25 * np.cbrt(A_v - 5.0) ** 2
    o.C_v = 50.0 + 56.0 * (1.0 - o.B_v)
    return o


def rate_gear(own, critical, force, sigma_H, n_L, R):
    """One line is picked before the only power of each factor."""
    early_Z, early_Y = n_L <= plain.KNEE_Z, n_L <= plain.KNEE_Y
    scale = where(early_Z, own.Z_scale, where(critical, 2.466, 1.4488))
    fall = where(early_Z, own.Z_fall, where(critical, 0.056, 0.023))
    Z_N = scale * maximum(plain.LEAST_Z, n_L) ** -fall
    scale = where(early_Y, own.Y_scale, where(critical, 1.6831, 1.3558))
    fall = where(early_Y, own.Y_fall, where(critical, 0.0323, 0.0178))
    Y_N = scale * maximum(plain.LEAST_Y, n_L) ** -fall
    Y_M = 1.0 / (1.0 + minimum(1.0, maximum(0.0, R * (-1.0 / 1.2))) * (0.6 / 1.4))
    sigma_F = force * own.root
    return sigma_F, Z_N, Y_N, own.contact * Z_N / sigma_H, own.bending * Y_N * Y_M / sigma_F


def rate(p, load):
    """The factors of the mesh, then those of each gear, in the order of plain.Rating."""
    v = load.omega_1 * p.d_w1 / 2000.0
    K_v = where(p.curved, (1.0 + sqrt(v / 0.00508) / p.C_v) ** p.B_v, 1.11)
    force = 2000.0 * load.T_1 / p.d_w1 * load.K_A * load.K_gamma * K_v * p.K_H
    sigma_H = p.contact * sqrt(force)
    return ((p.Z_I, K_v, p.K_H, p.gear[0].Y_J, p.gear[1].Y_J, sigma_H)
            + rate_gear(p.gear[0], p.critical, force, sigma_H, load.N_L[0], load.R[0])
            + rate_gear(p.gear[1], p.critical, force, sigma_H, load.N_L[1], load.R[1]))
