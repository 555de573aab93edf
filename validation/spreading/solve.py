"""Finite volumes for spreading resistance, written from Fourier's law alone.

A plate of thickness t and conductivity k is heated with uniform flux over a part of its top and cooled through a film h over its whole
bottom; its sides are insulated. Cells are graded so that source edges fall on faces. Two grids, the finer with twice the cells along each
axis; the answer is extrapolated with the second order that the scheme has, and the difference that the extrapolation makes is kept.

    python3 validation/spreading/solve.py > validation/spreading/reference.json

needs numpy and scipy. Lengths in metres, conductivity in W/(m K), film in W/(m2 K), results in K/W above ambient, for one watt.
"""

import json
import sys

import numpy as np
import scipy
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import splu


def faces(edges, counts):
    """Cell faces: between neighbouring edges a number of equal cells."""
    parts = [np.linspace(a, b, n + 1)[:-1] for a, b, n in zip(edges[:-1], edges[1:], counts)]
    return np.concatenate(parts + [[edges[-1]]])


def half_cell_flow(widths, areas, k):
    """Conductance between neighbours: harmonic mean of two half cells of the same material."""
    return k * areas / (0.5 * (widths[:-1] + widths[1:]))


def assemble(size, links, sinks):
    rows, cols, values = [], [], []
    diagonal = np.zeros(size)
    for i, j, g in links:
        np.add.at(diagonal, i, g)
        np.add.at(diagonal, j, g)
        rows += [i, j]
        cols += [j, i]
        values += [-g, -g]
    for i, g in sinks:
        np.add.at(diagonal, i, g)
    rows.append(np.arange(size))
    cols.append(np.arange(size))
    values.append(diagonal)
    return coo_matrix((np.concatenate(values), (np.concatenate(rows), np.concatenate(cols))), (size, size)).tocsc()


def solve_system(matrix, heat):
    factors = splu(matrix, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True})
    answer = factors.solve(heat)
    if np.linalg.norm(matrix @ answer - heat) > 1e-9 * np.linalg.norm(heat):
        raise RuntimeError("the linear system wasn't solved")
    return answer


def disc(case, refine):
    a, b, t, k, h = (case[name] for name in ("source_radius", "plate_radius", "thickness", "conductivity", "film"))
    r = faces([0, a, b], [40 * refine, 60 * refine])
    z = faces([0, t], [30 * refine])
    ring = np.pi * np.diff(r**2)
    dz = np.diff(z)
    nr, nz = len(ring), len(dz)
    index = np.arange(nr * nz).reshape(nr, nz)
    middle = 0.5 * (r[:-1] + r[1:])
    radial = 2 * np.pi * r[1:-1, None] * dz[None, :] * k / np.diff(middle)[:, None]
    axial = ring[:, None] * k / (0.5 * (dz[:-1] + dz[1:]))[None, :]
    links = [
        (index[:-1].ravel(), index[1:].ravel(), radial.ravel()),
        (index[:, :-1].ravel(), index[:, 1:].ravel(), axial.ravel()),
    ]
    sink = ring / (1 / h + 0.5 * dz[-1] / k)
    heated = r[1:] <= a * (1 + 1e-12)
    flux = np.where(heated, 1 / (np.pi * a * a), 0)
    heat = np.zeros(nr * nz)
    heat[index[:, 0]] = ring * flux
    temperature = solve_system(assemble(nr * nz, links, [(index[:, -1], sink)]), heat)
    top = temperature[index[:, 0]] + flux * 0.5 * dz[0] / k
    mean = float(np.sum((top * ring)[heated]) / np.sum(ring[heated]))
    # The first cells stand for their own middles; a parabola through two of them reaches the axis.
    r0, r1 = middle[0] ** 2, middle[1] ** 2
    return mean, float(top[0] - (top[1] - top[0]) * r0 / (r1 - r0))


def along(width, source, centre, refine, cells):
    low, high = centre - source / 2, centre + source / 2
    edges = [0, low, centre, high, width]
    return faces(edges, [c * refine for c in cells])


def rectangle(case, refine):
    t, k, h = (case[name] for name in ("thickness", "conductivity", "film"))
    centred = case["centre_x"] == case["width"] / 2 and case["centre_y"] == case["depth"] / 2
    if centred:
        x = faces([0, case["source_width"] / 2, case["width"] / 2], [14 * refine, 14 * refine])
        y = faces([0, case["source_depth"] / 2, case["depth"] / 2], [14 * refine, 14 * refine])
        share = 0.25
    else:
        x = along(case["width"], case["source_width"], case["centre_x"], refine, (9, 7, 7, 14))
        y = along(case["depth"], case["source_depth"], case["centre_y"], refine, (8, 7, 7, 10))
        share = 1.0
    z = faces([0, t], [7 * refine])
    dx, dy, dz = np.diff(x), np.diff(y), np.diff(z)
    nx, ny, nz = len(dx), len(dy), len(dz)
    index = np.arange(nx * ny * nz).reshape(nx, ny, nz)
    gx = k * dy[None, :, None] * dz[None, None, :] / (0.5 * (dx[:-1] + dx[1:]))[:, None, None]
    gy = k * dx[:, None, None] * dz[None, None, :] / (0.5 * (dy[:-1] + dy[1:]))[None, :, None]
    gz = k * dx[:, None, None] * dy[None, :, None] / (0.5 * (dz[:-1] + dz[1:]))[None, None, :]
    links = [
        (index[:-1].ravel(), index[1:].ravel(), gx.ravel()),
        (index[:, :-1].ravel(), index[:, 1:].ravel(), gy.ravel()),
        (index[:, :, :-1].ravel(), index[:, :, 1:].ravel(), gz.ravel()),
    ]
    area = dx[:, None] * dy[None, :]
    sinks = [(index[:, :, -1].ravel(), (area / (1 / h + 0.5 * dz[-1] / k)).ravel())]
    mx, my = 0.5 * (x[:-1] + x[1:]), 0.5 * (y[:-1] + y[1:])
    cx, cy = (0, 0) if centred else (case["centre_x"], case["centre_y"])
    heated = (np.abs(mx - cx) < case["source_width"] / 2)[:, None] & (np.abs(my - cy) < case["source_depth"] / 2)[None, :]
    flux = np.where(heated, 1 / (case["source_width"] * case["source_depth"]), 0)
    heat = np.zeros(nx * ny * nz)
    heat[index[:, :, 0].ravel()] = (area * flux).ravel()
    temperature = solve_system(assemble(nx * ny * nz, links, sinks), heat)
    top = temperature[index[:, :, 0]] + flux * 0.5 * dz[0] / k
    mean = float(np.sum((top * area)[heated]) / np.sum(area[heated]))
    assert abs(np.sum(heat) - share) < 1e-12
    i, j = int(np.searchsorted(mx, cx)), int(np.searchsorted(my, cy))
    if centred:
        # Even in x and y: parabolas through the cells nearest the middle.
        slope_x = (top[1, 0] - top[0, 0]) * mx[0] ** 2 / (mx[1] ** 2 - mx[0] ** 2)
        slope_y = (top[0, 1] - top[0, 0]) * my[0] ** 2 / (my[1] ** 2 - my[0] ** 2)
        return mean, float(top[0, 0] - slope_x - slope_y)
    return mean, float(np.mean(top[i - 1 : i + 1, j - 1 : j + 1]))


def square(plate, source, thickness, k, h):
    return rect(plate, plate, source, source, thickness, k, h)


def rect(width, depth, source_width, source_depth, thickness, k, h, centre=None):
    x, y = centre or (width / 2, depth / 2)
    return {
        "shape": "rectangle",
        "width": width,
        "depth": depth,
        "source_width": source_width,
        "source_depth": source_depth,
        "centre_x": x,
        "centre_y": y,
        "thickness": thickness,
        "conductivity": k,
        "film": h,
    }


def round_plate(plate_radius, source_radius, thickness, k, h):
    return {
        "shape": "disc",
        "plate_radius": plate_radius,
        "source_radius": source_radius,
        "thickness": thickness,
        "conductivity": k,
        "film": h,
    }


cases = [
    square(60e-3, 15e-3, 2e-3, 390, 2000),
    square(60e-3, 15e-3, 5e-3, 390, 2000),
    square(60e-3, 30e-3, 2e-3, 390, 2000),
    square(40e-3, 12e-3, 3e-3, 200, 1000),
    square(100e-3, 10e-3, 1e-3, 390, 500),
    square(100e-3, 25e-3, 1.3e-3, 200, 100),
    rect(80e-3, 50e-3, 16e-3, 12e-3, 2e-3, 390, 1500),
    rect(80e-3, 50e-3, 16e-3, 12e-3, 2e-3, 390, 1500, (20e-3, 20e-3)),
    round_plate(30e-3, 8e-3, 2e-3, 390, 2000),
    round_plate(30e-3, 8e-3, 20e-3, 390, 2000),
    round_plate(50e-3, 5e-3, 1e-3, 200, 200),
    round_plate(20e-3, 14e-3, 3e-3, 150, 5000),
]

solver = {"disc": disc, "rectangle": rectangle}
answers = []
for case in cases:
    coarse = solver[case["shape"]](case, 1)
    fine = solver[case["shape"]](case, 2)
    mean, centre = ((4 * f - c) / 3 for c, f in zip(coarse, fine))
    answers.append(
        {
            **case,
            "mean": mean,
            "centre": centre,
            "mean_moved_by": abs(mean - fine[0]),
            "centre_moved_by": abs(centre - fine[1]),
        }
    )
    print(case, mean, centre, file=sys.stderr)

json.dump(
    {
        "made": "validation/spreading/solve.py, finite volumes on two grids, extrapolated",
        "with": f"Python {sys.version.split()[0]}, numpy {np.__version__}, scipy {scipy.__version__}",
        "units": "m, W/(m K), W/(m2 K); mean, centre and the moves of extrapolation in K/W above ambient",
        "cases": answers,
    },
    sys.stdout,
    indent=1,
)
print()
