"""Which meshes are rated by all three?  Drawn by a fixed rule, the same on every machine.

A mesh is a row of doubles in the units of print (FIELDS), so that a file of rows is all that the
three have to share; the rows of CASES say how the drawn load varies over conditions and flanks.
"""

import numpy as np

import agma2101_plain as second
import iso6336_plain as plain

# name, low, high; "int" counts from low to below high, "yes" is 1 for a share `low` of the rows,
# "some" is 0 for a share `low` of them, "power" is ten to the power.
GEAR = (
    ("kind", "int", 0, 7),
    ("sigma_Hlim", "", 500.0, 1600.0),
    ("sigma_Flim", "", 180.0, 520.0),
    ("strength", "", 280.0, 1100.0),
    ("HB", "", 120.0, 480.0),
    ("E", "", 190e3, 210e3),
    ("shot_peened", "yes", 0.5, 0.0),
    ("pitting", "yes", 0.25, 0.0),
    ("Z_NTlong", "", 0.85, 1.0),
    ("Y_NTlong", "", 0.85, 1.0),
    ("accuracy", "int", 3, 9),
    ("f_pt", "", 2.0, 40.0),
    ("f_falpha", "", 2.0, 40.0),
    ("C_a", "some", 0.5, 40.0),
    ("R_z", "", 0.8, 12.0),
    ("R_zF", "", 0.6, 45.0),
    ("t_g", "some", 0.8, 0.1),
    ("rho_g", "", 0.25, 0.35),
    ("s_pr", "some", 0.667, 0.02),
)
# What AGMA 2101 asks of a gear beside that.
SECOND_GEAR = (
    ("sigma_HP", "", 700.0, 1700.0),
    ("sigma_FP", "", 200.0, 520.0),
    ("delta_sn", "some", 0.3, 0.03),
    ("t_R", "some", 0.4, 12.0),
)
FIELDS = (
    ("z_1", "int", 20, 60),
    ("z_2", "int", 20, 120),
    ("m_n", "", 0.8, 8.0),
    ("alpha_n", "", 0.3142, 0.4363),
    ("beta", "some", 0.333, 0.576),
    ("x_1", "", 0.0, 0.5),
    ("x_2", "", 0.0, 0.5),
    ("b_1", "", 8.0, 80.0),
    ("b_2", "", 8.0, 80.0),
    ("rho_fP", "", 0.2, 0.31),
    *GEAR,
    *GEAR,
    ("year", "int", 0, 2),
    ("nu_40", "", 15.0, 400.0),
    ("profile", "int", 0, 3),
    ("lead", "int", 0, 6),
    ("relief_matched", "yes", 0.5, 0.0),
    ("T_1", "", 2.0, 800.0),
    ("omega_1", "", 1.0, 4000.0),
    ("K_A", "", 1.0, 1.5),
    ("K_gamma", "", 1.0, 1.2),
    ("face", "int", 0, 3),
    ("K_Hbeta", "", 1.0, 2.0),
    ("F_betax", "", 0.0, 60.0),
    ("f_sh", "", 0.0, 20.0),
    ("f_ma", "", 0.0, 40.0),
    ("N_L1", "power", 2.0, 11.0),
    ("N_L2", "power", 2.0, 11.0),
    ("R_1", "", -1.2, 0.0),
    ("R_2", "", -1.2, 0.0),
    *SECOND_GEAR,
    *SECOND_GEAR,
    ("R", "", 0.9, 0.9995),
    ("critical", "yes", 0.5, 0.0),
)
PAIR_FIELDS = 10
MESH_FIELDS = PAIR_FIELDS + 2 * len(GEAR)  # where the mesh begins; the load 5 further on
LOAD_FIELDS = MESH_FIELDS + 5
SECOND_FIELDS = LOAD_FIELDS + 13  # and of AGMA 2101 alone the rest

# Eight conditions, both flanks: shares of torque (and deflection), speed, cycles; of the ratio R.
CASES = np.array([(0.25 + 0.15 * condition, 0.3 + 0.1 * condition, 2.0 ** -condition, flank)
                  for condition in range(8) for flank in (1.0, 0.0)])


def numbers(seed, shape):
    """Doubles in [0, 1): the counter hash splitmix64 (Steele, Lea, Flood 2014), 53 bits of it."""
    with np.errstate(over="ignore"):
        count = np.arange(1, shape[0] * shape[1] + 1, dtype=np.uint64)
        z = np.uint64(seed) + count * np.uint64(0x9E3779B97F4A7C15)
        z = (z ^ (z >> np.uint64(30))) * np.uint64(0xBF58476D1CE4E5B9)
        z = (z ^ (z >> np.uint64(27))) * np.uint64(0x94D049BB133111EB)
        z ^= z >> np.uint64(31)
    return ((z >> np.uint64(11)).astype(float) / 2.0 ** 53).reshape(shape)


def draw(count, seed=6336):
    """`count` rows of FIELDS, one column after the other in memory."""
    rows = np.empty((count, len(FIELDS)), order="F")
    share = numbers(seed, (len(FIELDS), count))
    for column, (_, kind, low, high) in enumerate(FIELDS):
        x = share[column]
        if kind == "int":
            drawn = np.floor(low + (high - low) * x)
        elif kind == "yes":
            drawn = np.where(x < low, 1.0, 0.0)
        elif kind == "some":
            drawn = np.where(x < low, 0.0, high * (0.2 + 0.8 * (x - low) / (1.0 - low)))
        elif kind == "power":
            drawn = 10.0 ** (low + (high - low) * x)
        else:
            drawn = low + (high - low) * x
        rows[:, column] = drawn
    return rows


def write(path, rows):
    """Counts of meshes, fields and cases; the cases; the rows: for rate_batch.c."""
    with open(path, "wb") as file:
        np.array([rows.shape[0], rows.shape[1], CASES.shape[0]], dtype=np.int64).tofile(file)
        CASES.tofile(file)
        np.ascontiguousarray(rows).tofile(file)


# ---- rows as plain objects -----------------------------------------------------------------------

def plain_gear(cells):
    numbers_of = dict(zip((name for name, *_ in GEAR), cells))
    for name in ("kind", "accuracy"):
        numbers_of[name] = int(numbers_of[name])
    for name in ("shot_peened", "pitting"):
        numbers_of[name] = numbers_of[name] > 0.0
    return plain.Gear(**numbers_of)


def plain_mesh(row):
    """Teeth and mesh, and the drawn load."""
    cells = row.tolist()
    teeth = plain.Teeth(int(cells[0]), int(cells[1]), *cells[2:PAIR_FIELDS])
    gears = tuple(plain_gear(cells[PAIR_FIELDS + i * len(GEAR):][:len(GEAR)]) for i in (0, 1))
    year, nu_40, profile, lead, matched = cells[MESH_FIELDS:LOAD_FIELDS]
    mesh = plain.Mesh(teeth, gears, int(year), nu_40, int(profile), int(lead), matched > 0.0)
    T, omega, K_A, K_gamma, face, K_Hbeta, F_betax, f_sh, f_ma, N_1, N_2, R_1, R_2 = (
        cells[LOAD_FIELDS:SECOND_FIELDS])
    return mesh, plain.Load(T, omega, K_A, K_gamma, int(face), K_Hbeta, F_betax, f_sh, f_ma,
                            (N_1, N_2), (R_1, R_2))


def plain_second(row):
    """What AGMA 2101 asks beside the mesh."""
    cells = row[SECOND_FIELDS:].tolist()
    gears = tuple(second.Gear(*cells[i * len(SECOND_GEAR):][:len(SECOND_GEAR)]) for i in (0, 1))
    return second.Second(gears, cells[-2], cells[-1] > 0.0)


def plain_cases(load):
    """The drawn load in every condition and on both flanks."""
    return [plain.Load(load.T_1 * torque, load.omega_1 * speed, load.K_A, load.K_gamma, load.face,
                       load.K_Hbeta, load.F_betax, load.f_sh * torque, load.f_ma,
                       (load.N_L[0] * cycles, load.N_L[1] * cycles),
                       (load.R[0] * swung, load.R[1] * swung))
            for torque, speed, cycles, swung in CASES.tolist()]
