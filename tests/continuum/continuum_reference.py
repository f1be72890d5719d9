# SPDX-License-Identifier: MIT
"""An open-frame girder as a frame and as a plane-stress continuum: they must agree as the bars grow slender.

Usage: python3 continuum_reference.py <frame program>

The girder, its units and signs, and the three models of its joints are described in frame_side.cpp, whose program
solves it as a frame. Here its outline is filled with quadratic quadrilaterals in plane stress: no member, no joint, no
section is assumed. The chords are held fully where they are clamped; the tip force is spread evenly over the areas of
the two end joints, and the deflection is the mean over the same areas. A bar's moment is the stress times its lever arm
over a stretch around each quarter point; between joints nothing loads a bar, so that statics makes the moment linear
and both ends follow from the two stretches.

What to expect: bars lose their joints' size in the slender limit, so that every model's error must fall with the depth
and vanish at no depth. Centre lines are too soft (they bend inside the joints), rigid joints too stiff; with the shear
of the joint's panel most of the joint's give is there, and what is left is the root of each bar sinking into the joint.

Where bars meet, stresses are singular at the re-entrant corners (displacements go with r^0.544 at 270 degrees;
M. L. Williams, J. Appl. Mech. 19 (1952) 526, value from memory): cells shrink geometrically towards the joints' faces.
Halving all cells moves the deflections by 0.02 % (depth 1/10) to 0.05 % (depth 1/40).
"""
import csv
import subprocess
import sys

import getfem
import numpy
import scipy.sparse
import scipy.sparse.linalg

BAYS = 4
CLEAR = 1.0  # clear length of every bar [m]
THICKNESS = 0.01  # out of the plane [m]
E, POISSON = 210e9, 0.3  # Pa
FORCE = 1000.0  # on the two end joints together, along +y [N]
SLENDERNESS = (10, 20, 40, 80)  # clear length to depth
STRETCHES = ((0.2, 0.3), (0.7, 0.8))  # where a bar's moment is taken, in clear lengths


def graded(length, first, growth, largest):
    """Cell borders from 0 to `length`: cells of about `first` that grow by `growth` up to `largest`."""
    cells = [first]
    while sum(cells) < length:
        cells.append(min(cells[-1] * growth, largest))
    borders = numpy.concatenate(([0.0], numpy.cumsum(cells)))
    return borders * (length / borders[-1])


def even(start, end, longest):
    """Borders of the fewest equal cells from `start` to `end` that are not above `longest`."""
    return numpy.linspace(start, end, int(numpy.ceil((end - start) / longest - 1e-9)) + 1)


def mirrored(half):
    return numpy.concatenate((half, 2.0 * half[-1] - half[-2::-1]))


class Continuum:
    """The girder solved as a plane-stress continuum with bars of one depth [m]; cells halved `halvings` times."""

    def __init__(self, depth, halvings):
        self.depth, self.pitch = depth, CLEAR + depth
        self.regions = 1  # region 1 is the clamp
        self.make_mesh(halvings)
        x, y = self.centres.T
        tip_joints = self.region((x > BAYS * self.pitch - depth) & ((y < depth) | (y > self.pitch)))
        self.solve(tip_joints)
        self.deflection = self.integral('u(2)', tip_joints) / (2 * depth**2)
        self.moments = {}
        for bay in range(BAYS):
            for chord in range(2):
                moments = self.moments_of(0, bay * self.pitch, chord * self.pitch)
                self.moments[f'chord {chord + 1} bay {bay + 1}'] = moments
            self.moments[f'cross member {bay + 1}'] = self.moments_of(1, depth, bay * self.pitch + CLEAR)
        self.imbalance = self.root_imbalance()

    def make_mesh(self, halvings):
        d, pitch, s = self.depth, self.pitch, 0.5**halvings
        first, growth = 0.01 * d * s, 1.0 + 0.8 * s
        longest = min(0.05 * CLEAR, 2.0 * d) * s  # the library ties cells wrongly where one side is 500 times the other
        across = mirrored(graded(d / 2, first, growth, 0.15 * d * s))
        along = mirrored(numpy.concatenate((graded(0.2 * CLEAR, first, growth, longest),
                                            even(0.2 * CLEAR, 0.3 * CLEAR, longest)[1:],
                                            even(0.3 * CLEAR, 0.5 * CLEAR, longest)[1:])))
        xs = [numpy.zeros(1)]
        for bay in range(BAYS):
            xs += [bay * pitch + along[1:], bay * pitch + CLEAR + across[1:]]
        ys = [across, d + along[1:], pitch + across[1:]]
        self.mesh = getfem.Mesh('cartesian', numpy.concatenate(xs), numpy.concatenate(ys))
        self.cells = self.mesh.cvid()
        corners, start = self.mesh.pid_from_cvid(self.cells)
        points = self.mesh.pts()
        self.centres = numpy.array([points[:, corners[a:b]].mean(axis=1) for a, b in zip(start[:-1], start[1:])])
        x, y = self.centres.T
        hole = (x % pitch < CLEAR) & (y > d) & (y < pitch)
        self.mesh.del_convex(self.cells[hole])
        self.cells, self.centres = self.cells[~hole], self.centres[~hole]
        self.mesh.set_region(1, self.mesh.outer_faces_in_box([-0.001 * first, -d], [0.001 * first, pitch + 2 * d]))

    def region(self, chosen):
        self.regions += 1
        self.mesh.set_region(self.regions, numpy.vstack((self.cells[chosen], numpy.full(chosen.sum(), -1))))
        return self.regions

    def solve(self, loaded):
        motion = getfem.MeshFem(self.mesh, 2)
        motion.set_fem(getfem.Fem('FEM_QK(2,2)'))
        self.unknowns = motion.nbdof()
        self.rule = getfem.MeshIm(self.mesh, getfem.Integ('IM_GAUSS_PARALLELEPIPED(2,5)'))
        m = self.model = getfem.Model('real')
        m.add_fem_variable('u', motion)
        m.add_initialized_data('E', E)
        m.add_initialized_data('nu', POISSON)
        m.add_initialized_data('axis', 0.0)
        m.add_isotropic_linearized_elasticity_pstress_brick(self.rule, 'u', 'E', 'nu')
        m.add_initialized_data('weight', [0.0, FORCE / (THICKNESS * 2 * self.depth**2)])
        m.add_source_term_brick(self.rule, 'u', 'weight', loaded)
        m.assembly()
        stiffness, load = m.tangent_matrix(), m.rhs()
        free = numpy.setdiff1d(numpy.arange(motion.nbdof()), motion.basic_dof_on_region(1))
        columns, rows = stiffness.csc_ind()
        matrix = scipy.sparse.csc_matrix((stiffness.csc_val(), rows, columns), shape=(motion.nbdof(), motion.nbdof()))
        motions = numpy.zeros(motion.nbdof())
        held = matrix[free][:, free]
        factor = scipy.sparse.linalg.splu(held, 'MMD_AT_PLUS_A', diag_pivot_thresh=0.0, options={'SymmetricMode': True})
        for _ in range(3):  # the first solution and two corrections
            motions[free] += factor.solve(load[free] - held @ motions[free])
        self.model.set_variable('u', motions)

    def integral(self, expression, region):
        return getfem.asm_generic(self.rule, 0, expression, region, self.model)

    def couple(self, direction, axis, region, length):
        """Mean over `length` of the moment [Nm] of the stress along x (direction 0) or y (1) about a line `axis`."""
        self.model.set_variable('axis', axis)
        strain_and_arm = ('(Grad_u(1,1)+nu*Grad_u(2,2))*(X(2)-axis)', '(Grad_u(2,2)+nu*Grad_u(1,1))*(axis-X(1))')
        return self.integral('E/(1-sqr(nu))*' + strain_and_arm[direction], region) * THICKNESS / length

    def moments_of(self, direction, start, edge):
        """Moments at both ends of the bar that runs from `start` and lies between `edge` and edge + depth."""
        along, across = self.centres[:, direction] - start, self.centres[:, 1 - direction] - edge
        at = []
        for a, b in STRETCHES:
            inside = (along > a * CLEAR) & (along < b * CLEAR) & (across > 0) & (across < self.depth)
            at.append(self.couple(direction, edge + self.depth / 2, self.region(inside), (b - a) * CLEAR))
        return 1.5 * at[0] - 0.5 * at[1], 1.5 * at[1] - 0.5 * at[0]

    def root_imbalance(self):
        """Stress of both chords at the first quarter point against the tip force times its distance, relative."""
        x = self.centres[:, 0]
        a, b = STRETCHES[0]
        stretch = self.region((x > a * CLEAR) & (x < b * CLEAR))
        inside = self.couple(0, (self.pitch + self.depth) / 2, stretch, (b - a) * CLEAR)
        outside = -FORCE * (BAYS * self.pitch - self.depth / 2 - CLEAR * (a + b) / 2)
        return abs(inside / outside - 1)


def frame_answers(program, depth):
    """{model: (deflection, {bar: (moment at the start, at the end)})}"""
    numbers = (CLEAR, depth, THICKNESS, E, POISSON, FORCE)
    command = [program, str(BAYS), *map(repr, numbers)]
    printed = subprocess.run(command, check=True, stdout=subprocess.PIPE, text=True).stdout
    answers = {}
    for model, kind, bar, _, value in csv.reader(printed.splitlines()):
        if kind == 'deflection':
            answers[model] = (float(value), {})
        else:
            answers[model][1].setdefault(bar, []).append(float(value))
    return answers


def errors(answer, continuum):
    """Percent: of the deflection, signed; of the worst bar end's moment against that end's own."""
    deflection, moments = answer
    if moments.keys() != continuum.moments.keys():
        raise SystemExit('the two sides do not name the same bars')
    worst = max(abs(m / c - 1) for bar in moments for m, c in zip(moments[bar], continuum.moments[bar], strict=True))
    return 100 * (deflection / continuum.deflection - 1), 100 * worst


def errors_of_all(program, continuum):
    """{model: (error of the deflection, error of the moments)} against one continuum."""
    return {model: errors(answer, continuum) for model, answer in frame_answers(program, continuum.depth).items()}


def falls(series):
    return all(abs(b) < abs(a) for a, b in zip(series[:-1], series[1:]))


def at_no_depth(series):
    """The last three errors, at depths 4, 2 and 1, carried on to depth 0 along a parabola."""
    return (series[-3] - 6 * series[-2] + 8 * series[-1]) / 3


def main():
    program = sys.argv[1]
    getfem.util_trace_level(0)
    found, imbalance = {}, 0.0  # found[model] = [(deflection, moments) per slenderness]
    print('errors against the continuum in percent:  tip deflection, worst bar-end moment')
    for slenderness in SLENDERNESS:
        continuum = Continuum(CLEAR / slenderness, 0)
        imbalance = max(imbalance, continuum.imbalance)
        print(f'depth 1/{slenderness} ({continuum.unknowns} unknowns, deflection {continuum.deflection:.6g} m)')
        for model, pair in errors_of_all(program, continuum).items():
            found.setdefault(model, []).append(pair)
            print(f'  {model:15} {pair[0]:+9.3f} {pair[1]:9.3f}')
    i = SLENDERNESS.index(40)
    finer = errors_of_all(program, Continuum(CLEAR / 40, 1))
    print('depth 1/40, cells halved')
    for model, pair in finer.items():
        print(f'  {model:15} {pair[0]:+9.3f} {pair[1]:9.3f}')

    series = {model: list(zip(*pairs)) for model, pairs in found.items()}  # [deflections, moments]
    checks = []
    for model in ('centre lines', 'stiff joints', 'sheared joints'):
        checks.append((f'{model}: both errors fall at every step', all(map(falls, series[model]))))
    checks.append(('centre lines: both errors end below 2 %', max(map(abs, found['centre lines'][-1])) < 2))
    checks.append(('sheared joints: both errors are below 2 % at 1/40',
                   max(map(abs, found['sheared joints'][i])) < 2))
    limits = [at_no_depth(deflections) for deflections, _ in series.values()]
    checks.append(('carried on to no depth, deflections agree in 0.2 %: ' + ', '.join(f'{x:+.3f} %' for x in limits),
                   max(map(abs, limits)) < 0.2))
    checks.append(('halving the cells changes no error by a tenth of it',
                   all(abs(b - a) < 0.1 * abs(a) for m in found for a, b in zip(found[m][i], finer[m]))))
    checks.append((f'stresses at the root carry the load within 0.1 %: {100 * imbalance:.4f} %', imbalance < 1e-3))
    for text, good in checks:
        print('passed' if good else 'FAILED', text)
    failed = sum(not good for _, good in checks)
    print(f'{len(checks) - failed} passed, {failed} failed')
    return 1 if failed else 0


if __name__ == '__main__':
    sys.exit(main())
