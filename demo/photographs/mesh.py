"""Meshes turned, cut and drawn out: every solid in the pictures starts here.

Lengths are centimetres (1 Blender unit = 1 cm); turned parts have their axis along X.
"""
import math
from math import sin, cos, pi, radians

import bmesh
import bpy
from mathutils import Matrix, Vector

import settings  # noqa: F401  (empties the scene before anything is linked)

COL = bpy.context.scene.collection


def add(name, verts, faces, mat, smooth=True, angle=32, parent=None):
    me = bpy.data.meshes.new(name)
    me.from_pydata(verts, [], faces)
    me.validate()
    bm = bmesh.new(); bm.from_mesh(me)
    bmesh.ops.recalc_face_normals(bm, faces=bm.faces)
    bm.to_mesh(me); bm.free()
    if smooth:
        me.polygons.foreach_set('use_smooth', [True] * len(me.polygons))
        me.use_auto_smooth = True
        me.auto_smooth_angle = radians(angle)
    ob = bpy.data.objects.new(name, me)
    COL.objects.link(ob)
    if mat: me.materials.append(mat)
    if parent: ob.parent = parent
    return ob


def fillet(pts, r, n=4, closed=False):
    """Round the corners of a 2-D polyline."""
    pts = [Vector((p[0], p[1])) for p in pts]
    out, N = [], len(pts)
    for i, p in enumerate(pts):
        if not closed and i in (0, N - 1):
            out.append(tuple(p)); continue
        a, b = pts[i - 1] - p, pts[(i + 1) % N] - p
        rr = min(r, a.length * .45, b.length * .45)
        if rr < 1e-5: out.append(tuple(p)); continue
        p0, p1 = p + a.normalized() * rr, p + b.normalized() * rr
        for k in range(n + 1):
            t = k / n
            q = p0 * (1 - t) ** 2 + p * 2 * t * (1 - t) + p1 * t * t
            out.append((q.x, q.y))
    return out


def lathe(name, prof, mat, r=.04, seg=128, knurl=None, closed=False, parent=None, nf=4):
    """Turn a profile of (radius, x) about the X axis. knurl=(count, depth, x0, x1, rmin)."""
    pr = fillet(prof, r, nf, closed)
    # split long spans so noise and knurls have vertices to work on
    V, F = [], []
    for (rad, x) in pr:
        for s in range(seg):
            a = 2 * pi * s / seg
            q = rad
            if knurl and knurl[2] <= x <= knurl[3] and rad > knurl[4]:
                q = rad - knurl[1] * (.5 - .5 * cos(knurl[0] * a)) ** 1.0
            V.append((x, q * cos(a), q * sin(a)))
    n = len(pr)
    for i in range(n if closed else n - 1):
        j = (i + 1) % n
        for s in range(seg):
            t = (s + 1) % seg
            F.append((i * seg + s, i * seg + t, j * seg + t, j * seg + s))
    return add(name, V, F, mat, parent=parent)


def plate(name, outline, th, mat, bevel=.03, holes=(), seg=3, parent=None):
    """Extrude a 2-D outline (Y,Z) with optional holes along X, bevelled."""
    cu = bpy.data.curves.new(name, 'CURVE')
    cu.dimensions = '2D'; cu.fill_mode = 'BOTH'
    cu.extrude = max(th / 2 - bevel, .001); cu.bevel_depth = bevel; cu.bevel_resolution = seg
    cu.offset = -bevel
    for loop in [outline] + list(holes):
        sp = cu.splines.new('POLY'); sp.points.add(len(loop) - 1)
        for p, q in zip(sp.points, loop): p.co = (q[0], q[1], 0, 1)
        sp.use_cyclic_u = True
    tmp = bpy.data.objects.new(name, cu); COL.objects.link(tmp)
    dg = bpy.context.evaluated_depsgraph_get()
    me = bpy.data.meshes.new_from_object(tmp.evaluated_get(dg))
    bpy.data.objects.remove(tmp)
    # (u,v,w) -> (x=w, y=u, z=v)
    me.transform(Matrix(((0, 0, 1, 0), (1, 0, 0, 0), (0, 1, 0, 0), (0, 0, 0, 1))))
    bm = bmesh.new(); bm.from_mesh(me)
    bmesh.ops.remove_doubles(bm, verts=bm.verts, dist=1e-4)
    bmesh.ops.recalc_face_normals(bm, faces=bm.faces)
    bm.to_mesh(me); bm.free()
    me.polygons.foreach_set('use_smooth', [True] * len(me.polygons))
    me.use_auto_smooth = True; me.auto_smooth_angle = radians(35)
    me.materials.clear(); me.materials.append(mat)
    ob = bpy.data.objects.new(name, me); COL.objects.link(ob)
    md = ob.modifiers.new('wn', 'WEIGHTED_NORMAL'); md.weight = 100; md.keep_sharp = True
    if parent: ob.parent = parent
    return ob


def circ(r, n=64, cy=0, cz=0, ph=0):
    return [(cy + r * cos(ph + 2 * pi * i / n), cz + r * sin(ph + 2 * pi * i / n)) for i in range(n)]


def tube(name, pts, rad, mat, parent=None, cyclic=False, res=3, taper=None):
    cu = bpy.data.curves.new(name, 'CURVE')
    cu.dimensions = '3D'; cu.bevel_depth = rad; cu.bevel_resolution = res; cu.use_fill_caps = True
    sp = cu.splines.new('POLY'); sp.points.add(len(pts) - 1)
    for i, (p, q) in enumerate(zip(sp.points, pts)):
        p.co = (q[0], q[1], q[2], 1)
        if taper: p.radius = taper(i / (len(pts) - 1))
    sp.use_cyclic_u = cyclic; sp.use_smooth = True
    ob = bpy.data.objects.new(name, cu); COL.objects.link(ob)
    cu.materials.append(mat)
    if parent: ob.parent = parent
    return ob


def place(ob, loc=(0, 0, 0), rot=(0, 0, 0), scale=None):
    ob.location = loc; ob.rotation_euler = [radians(a) for a in rot]
    if scale: ob.scale = (scale,) * 3
    return ob


def empty(name):
    e = bpy.data.objects.new(name, None); COL.objects.link(e); return e




def box(x, y, z):
    """Vertices and faces of a box of the given edges, centred."""
    x, y, z = x / 2, y / 2, z / 2
    v = [(a, b, c) for a in (-x, x) for b in (-y, y) for c in (-z, z)]
    return v, [(0, 1, 3, 2), (4, 6, 7, 5), (0, 4, 5, 1), (2, 3, 7, 6), (0, 2, 6, 4), (1, 5, 7, 3)]


def rbox(name, dims, mat, bevel=.06, parent=None, seg=4):
    ob = add(name, *box(*dims), mat, smooth=True, angle=40)
    md = ob.modifiers.new('bv', 'BEVEL'); md.width = bevel; md.segments = seg; md.limit_method = 'NONE'
    if parent: ob.parent = parent
    return ob


def thread(name, length, pitch, depth, core, mat, parent=None, seg=40):
    """A screw thread along -X from x = 0. core: function of the distance from the head to the core radius."""
    V, F, n = [], [], int(length / pitch * 16)
    for i in range(n + 1):
        x = length * i / n
        for s in range(seg):
            f = (x / pitch - s / seg) % 1.
            ridge = max(0., 1 - abs(f - .5) / .32)
            q = core(x) + depth * ridge * min(1., (length - x) / (1.5 * pitch), x / (.6 * pitch))
            a = 2 * pi * s / seg
            V.append((-x, q * cos(a), q * sin(a)))
    for i in range(n):
        for s in range(seg):
            t = (s + 1) % seg
            F.append((i * seg + s, i * seg + t, (i + 1) * seg + t, (i + 1) * seg + s))
    F.append(tuple(n * seg + s for s in range(seg)))
    return add(name, V, F, mat, angle=50, parent=parent)


def flat(ob, x, y, z=0., turn=0., tilt=0.):
    """Lay an X-axis part flat: its axis to +Z."""
    ob.rotation_mode = 'XYZ'
    ob.matrix_world = (Matrix.Translation((x, y, z)) @ Matrix.Rotation(radians(turn), 4, 'Z')
                       @ Matrix.Rotation(radians(tilt), 4, 'X') @ Matrix.Rotation(radians(-90), 4, 'Y'))
    return ob
