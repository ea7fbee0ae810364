"""The fixed-spool made of two. The spool's axis is X, front at +X; foot down (-Z), handle at -Y, side cover at +Y."""
import math
from math import cos, pi, radians, sin
import random

import bmesh
import bpy
import numpy as np
from mathutils import Matrix, Vector, noise as mnoise

import reel as r
from lettering import FONT, STAMP, mask_image, raster, ring_tris, text_tris
from materials import DUST, M, Nodes, felt, marked, plated, simple
from mesh import COL, add, box, circ, empty, fillet, lathe, plate, rbox, tube
from settings import WORN

GEARBOX = Vector((-1.35, 0, -.75))     # middle of the gear housing; the gear's axis runs along Y
HOUSING, HALF = 2.42, .86          # its radius and half its depth
FOOT = -5.12                       # underside of the foot
CUP = (2.25, 4.15, 3.12)           # the rotor's back wall, its front edge, its radius
HANDLE_TURN = 32                  # of the arm, from straight up


# ------------------------------------------------------------------ surfaces
def enamel(name, letters=None, cell=6.4, half=2.2):
    """Stoved hammered grey enamel, chipped to the metal at its edges; letters: a mask over +X, raised and rubbed bright."""
    g = Nodes(name); c = g.n('TexCoord', 3)
    big, n2 = g.noise(c, .8, 6., .62), g.noise(c, 7., 6., .7)
    wob = g.n('VectorMath', 0, {0: c, 1: g.n('VectorMath', 0, {0: g.n('TexNoise', 1, {'Vector': c, 'Scale': 3.4, 'Detail': 2.}), 1: (.16, .16, .16)}, operation='MULTIPLY')}, operation='ADD')
    cells = g.n('TexVoronoi', 0, {'Vector': wob, 'Scale': cell, 'Randomness': .95, 'Smoothness': .55}, feature='SMOOTH_F1')
    pan = g.step(cells, .16, .62)                 # 0 in the middle of a dimple, 1 on the web between
    col = g.mix(pan, (.148, .160, .166), (.088, .096, .102))
    col = g.mix(g.mul(g.step(big, .38, .66), .30), col, (.172, .180, .180))
    rough = g.plus(.20, g.mul(n2, .10)); metal = g.plus(.55, 0.)
    h = g.mul(pan, 1.)
    edge = g.step(g.n('NewGeometry', 7), .520, .600)
    ch = g.plus(g.mul(edge, .33), g.plus(g.mul(g.noise(c, 1.5, 7., .7, .3), .62), g.mul(g.noise(c, 8., 5., .7), .16)))
    chip = g.step(ch, .655, .680); lip = g.mul(g.step(ch, .628, .652), g.m('SUBTRACT', 1., chip))
    bare = g.mix(n2, (.30, .295, .285), (.50, .49, .475)) if WORN else g.mix(n2, (.42, .415, .40), (.58, .575, .56))
    col = g.mix(g.mul(lip, .7), col, (.045, .046, .046)); col = g.mix(chip, col, bare)
    rough = g.plus(rough, g.mul(chip, .18)); metal = g.maxi(metal, chip)
    nrm = None
    if letters:
        sx = g.t.nodes.new('ShaderNodeSeparateXYZ'); g.t.links.new(c, sx.inputs[0])
        tx = g.t.nodes.new('ShaderNodeTexImage'); tx.image = letters; tx.extension = 'CLIP'; tx.interpolation = 'Cubic'
        g.t.links.new(g.n('CombineXYZ', 0, {0: g.plus(g.mul(sx.outputs[1], .5 / half), .5), 1: g.plus(g.mul(sx.outputs[2], .5 / half), .5), 2: 0.}), tx.inputs[0])
        out = g.step(g.n('SeparateXYZ', 0, {0: g.n('TexCoord', 1)}), .6, .9)
        em = g.mul(g.step(tx.outputs[0], .30, .70), out)
        rub = g.mul(em, g.step(g.noise(c, 3.4, 6., .7), .30, .46, .35, 1.))
        col = g.mix(rub, col, (.50, .49, .465) if WORN else (.68, .67, .65)); rough = g.lerp(rub, rough, .30); metal = g.maxi(metal, rub)
        shade = g.mul(g.mul(g.step(tx.outputs[0], .03, .25), g.m('SUBTRACT', 1., em)), out)
        col = g.mix(g.mul(shade, .75 if WORN else .5), col, (.030, .028, .024))
        h = g.mul(h, g.m('SUBTRACT', 1., em)); nrm = g.bump(tx.outputs[0], .05, 1.)
    if WORN:
        cre = g.step(g.ao(.35), .95, .48)
        gr = g.mul(g.step(g.plus(cre, g.mul(n2, .55)), .55, 1.02), .85)
        col = g.mix(gr, col, (.052, .040, .026)); rough = g.lerp(gr, rough, .75); metal = g.mul(metal, g.m('SUBTRACT', 1., gr))
        film = g.step(g.noise(c, 1.7, 6., .66, .8), .44, .70)                     # smoke and hands
        col = g.mix(g.mul(film, .38), col, (.105, .078, .045)); rough = g.plus(rough, g.mul(film, .12))
        d = g.mul(g.mul(g.step(g.up(), .1, .95), g.step(g.plus(g.noise(c, 3., 7., .7), g.mul(g.noise(c, 48., 2.), .35)), .48, .96)), .45)
        col = g.mix(d, col, DUST); rough = g.lerp(d, rough, .95)
    hb = g.bump(g.m('SUBTRACT', g.mul(h, .9), g.mul(chip, 1.4)), .017, .8, nrm) if nrm is not None else g.bump(g.m('SUBTRACT', g.mul(h, .9), g.mul(chip, 1.4)), .017, .8)
    return g.bsdf(color=col, rough=rough, metal=metal, normal=hb, coat=.12 if WORN else .40, coatr=.22, flat=((.16, .17, .175), .32, .5))


def nylon():
    """Old nylon gone milky, or new and clear."""
    if WORN: return simple('nylon', (.50, .475, .41), .42, noise=.16, scale=3., spec=.5)
    return simple('nylon', (.46, .52, .49), .16, noise=.08, scale=3., spec=.6, coat=.6, coatr=.10)


def chromed_nickel():
    """The handle's chrome, ragged at its border, over a warmer nickel with the first scratches in both."""
    g = Nodes('chromed'); c = g.n('TexCoord', 3)
    n1, n2 = g.noise(c, 1.5, 9., .62, .7), g.noise(c, 6., 6., .7)
    sx = g.t.nodes.new('ShaderNodeSeparateXYZ'); g.t.links.new(c, sx.inputs[0])
    edge = g.step(g.n('NewGeometry', 7), .515, .590)
    waist = g.step(g.m('ABSOLUTE', g.plus(sx.outputs[2], -2.25)), 1.25, .15)
    wm = g.plus(g.mul(waist, .30), g.plus(g.mul(edge, .24), g.plus(g.mul(n1, 1.05), g.mul(n2, .16))))
    worn, rim = g.step(wm, .850, .872), g.step(wm, .790, .855)
    scr = g.step(g.noise(c, 5., 3., .6, .2, stretch=(1., 9., .55)), .62, .70); scr2 = g.step(g.noise(c, 4., 3., .6, .2, stretch=(1., .9, 12.)), .64, .71)
    hair = g.maxi(scr, scr2)
    chrome = g.mix(n2, (.52, .555, .60), (.60, .63, .67)) if not WORN else g.mix(n2, (.40, .425, .46), (.52, .545, .58))
    nickel = g.mix(n2, (.40, .345, .265), (.52, .455, .36)) if not WORN else g.mix(n2, (.24, .20, .145), (.40, .34, .255))
    col = g.mix(worn, chrome, nickel)
    col = g.mix(g.mul(g.mul(rim, g.m('SUBTRACT', 1., worn)), .55), col, (.15, .145, .14))
    col = g.mix(g.mul(hair, .30), col, (.12, .11, .10))
    rough = g.plus(g.lerp(worn, .07 if not WORN else .13, .30), g.mul(hair, .15)); metal = g.plus(1., 0.)
    h = g.plus(g.mul(worn, -1.5), g.mul(hair, -.7))
    if WORN:
        gr = g.mul(g.step(g.plus(g.step(g.ao(.3), .94, .46), g.mul(n2, .5)), .60, 1.05), .9)
        col = g.mix(gr, col, (.036, .026, .016)); rough = g.lerp(gr, rough, .7); metal = g.m('SUBTRACT', 1., g.mul(gr, .9))
        d = g.mul(g.mul(g.step(g.up(), .1, .95), g.step(g.noise(c, 3.2, 7., .7), .50, .90)), .40)
        col = g.mix(d, col, DUST); rough = g.lerp(d, rough, .95)
    return g.bsdf(color=col, rough=rough, metal=metal, normal=g.bump(h, .006, .6), flat=((.50, .53, .57), .14, 1.))


def prepare():
    M['enamel'] = enamel('enamel')
    M['chrome'] = plated('chrome', wear=.22, base=(.56, .585, .62), under=(.30, .30, .31), rough=.07, pit=.45, verdigris=0., dust=.30, film=.18, turned=.18, rust=0.)
    M['wire'] = plated('wire', wear=.15, base=(.55, .575, .61), under=(.26, .25, .24), rough=.09, pit=.4, verdigris=0., dust=.15, film=.12, turned=0., rust=.12)
    M['chromed'] = chromed_nickel()
    M['acetal'] = simple('acetal', (.030, .032, .035), .46 if WORN else .34, noise=.25, scale=2.2, spec=.5)
    M['alloy'] = plated('alloy', wear=0., base=(.43, .435, .435), rough=.30, pit=.15, verdigris=0., dust=.1, film=.25, turned=.9)
    M['roller'] = plated('rollerchrome', wear=.12, base=(.50, .525, .56), under=(.62, .41, .16), rough=.12, pit=.08, verdigris=0., dust=.10, film=.25, turned=.35)
    M['cream'] = simple('cream', (.37, .285, .145) if WORN else (.50, .40, .225), .36 if WORN else .22, noise=.10, scale=1.6, spec=.5, coat=.25, coatr=.2)
    M['nylon'] = nylon()
    M['blue steel'] = plated('bluesteel', wear=0., base=(.30, .305, .32), rough=.22, pit=.1, verdigris=0., dust=0., film=.1, turned=0.)
    M['stainless'] = plated('stainless', wear=0., base=(.58, .58, .575), rough=.14, pit=0., verdigris=0., dust=0., state='left', turned=.25)
    M['felt'] = felt('old felt', (.016, .013, .010), (.048, .038, .026)) if WORN else felt('new felt', (.30, .295, .275), (.44, .435, .41))
    M['sawn'] = plated('sawn', wear=0., base=(.62, .41, .16), rough=.30, pit=.2, verdigris=.1, dust=.1, film=.5, turned=1.4)


# ------------------------------------------------------------------ body
def solid(name, parts, mat, parent, voxel=.036, rounds=10):
    """One casting out of closed solids: joined, remeshed, and eased where they meet."""
    bm = bmesh.new()
    for ob in parts:
        me = ob.data.copy(); me.transform(ob.matrix_basis); bm.from_mesh(me); bpy.data.objects.remove(ob)
    me = bpy.data.meshes.new(name); bm.to_mesh(me); bm.free()
    ob = bpy.data.objects.new(name, me); COL.objects.link(ob)
    md = ob.modifiers.new('v', 'REMESH'); md.mode = 'VOXEL'; md.voxel_size = voxel; md.use_smooth_shade = True
    md = ob.modifiers.new('s', 'SMOOTH'); md.factor = .5; md.iterations = rounds
    done = bpy.data.meshes.new_from_object(ob.evaluated_get(bpy.context.evaluated_depsgraph_get()))
    ob.modifiers.clear(); ob.data = done; done.materials.clear(); done.materials.append(mat)
    done.polygons.foreach_set('use_smooth', [True] * len(done.polygons))
    ob.parent = parent
    return ob


def turned(name, prof, mat, axis, loc=(0, 0, 0), parent=None, **kw):
    """A lathe about X ('x'), or its +X turned to +Y ('y') or to -Y ('-y')."""
    ob = lathe(name, prof, mat, parent=parent, **kw)
    ob.rotation_euler.z = {'x': 0, 'y': pi / 2, '-y': -pi / 2}[axis]; ob.location = loc
    return ob


def slab(name, outline, half, mat):
    """A closed solid: an outline in (X, Z), `half` to either side along Y; half may depend on z."""
    n = len(outline); V = []
    for s in (-1, 1):
        V += [(x, s * (half(z) if callable(half) else half), z) for x, z in outline]
    F = [tuple(range(n)), tuple(range(2 * n - 1, n - 1, -1))]
    F += [(i, (i + 1) % n, n + (i + 1) % n, n + i) for i in range(n)]
    return add(name, V, F, mat)


def body(parent, open_side=False):
    """Gear housing, nose and stem: the casting of 1952."""
    m = M['enamel']; g = GEARBOX
    parts = [turned('housing', [(0, -HALF), (2.22, -HALF), (HOUSING, -HALF + .25), (HOUSING, HALF - .06), (2.36, HALF), (0, HALF)], m, 'y', g, r=.05, seg=96)]
    parts.append(turned('nose', [(0, -.2), (.84, -.2), (.86, .90), (1.26, 1.45), (1.26, 1.75), (1.60, 1.95), (1.62, 2.16), (0, 2.16)], m, 'x', r=.08, seg=80))
    parts.append(turned('boss', [(0, 0), (.95, 0), (.86, 1.35), (.62, 1.42), (0, 1.42)], m, '-y', g, r=.06, seg=72))
    out = fillet([(-2.55, -2.3), (-1.45, -3.1), (-1.0, -4.0), (-1.45, -4.70), (-1.60, -4.92), (1.50, -4.92), (1.32, -4.66), (.72, -4.0), (.62, -3.1), (.55, -2.0), (-1.0, -1.6)], .35, 6, True)
    parts.append(slab('stem', out, lambda z: .52 + .06 * max(0., -3.2 - z) if z < -3.2 else .52, m))
    ob = solid('body', parts, m, parent)
    if open_side:
        cut = turned('cut', [(0, -.55), (2.10, -.55), (2.10, HALF + .5), (0, HALF + .5)], None, 'y', g, r=.03, seg=128)
        md = ob.modifiers.new('o', 'BOOLEAN'); md.object = cut; md.operation = 'DIFFERENCE'; md.solver = 'EXACT'; cut.hide_render = True; cut.parent = parent
    return ob


def letters():
    t = list(text_tris('VELLACOTT OF MARRAMOUTH', .30, (1.47, 'top'), font=FONT))
    t += list(text_tris('REGD. DESIGN 911207', .29, (1.69, 'bottom'), font=FONT))
    t += list(text_tris('SANDLING', .54, at=(0, .26), font=FONT)) + list(text_tris('TERN', .54, at=(0, -.42), font=FONT))
    t += list(text_tris('MADE IN ENGLAND', .21, at=(0, -.84), font=FONT))
    t += ring_tris(1.92, 1.955)
    return t


def side_cover(parent=None):
    im = mask_image('cover letters', raster(letters(), 4.4, 4.4, 330, 2))
    e = empty('cover'); e.parent = parent; e.location = GEARBOX + Vector((0, HALF, 0)); e.rotation_euler.z = pi / 2
    lathe('sidecover', [(q, .17 - .012 * q * q) for q in np.linspace(0, 2., 26)] + [(2.12, .11), (2.30, .05), (2.33, -.03), (0, -.03)], enamel('cover enamel', im, cell=8.2), r=.04, parent=e, seg=180)
    for i, a in enumerate((45, 135, 225, 315)):
        r.screw((.115, 2.06 * cos(radians(a)), 2.06 * sin(radians(a))), 1, e, r=.15, h=.085, slot=.045, turn=(20, 75, 130, 160)[i])
    return e


def foot(parent):
    """The nickelled blade under the stem, stamped on its underside; in its own frame it lies along Y."""
    half = (3.4, .85)
    t = list(text_tris('QUAY WORKS', .33, at=(-2.05, .10), font=STAMP, space=1.1)) + list(text_tris('MARRAMOUTH', .33, at=(-2.05, -.40), font=STAMP, space=1.08))
    t += list(text_tris('V 23817', .44, at=(2.05, -.16), font=STAMP, space=1.2))
    im = mask_image('stamp', raster(t, 2 * half[0], 2 * half[1], 260, 2)); none = mask_image('none', np.zeros((8, 8), np.float32))
    mat = marked('sandling foot', im, none, half, wear=.52, pit=.6, verdigris=.35, dust=.15, film=.40)
    e = empty('foot'); e.parent = parent; e.rotation_euler.z = -pi / 2
    V, F, nu, nv = [], [], 120, 18
    for i in range(nu + 1):
        y = -3.4 + 6.8 * i / nu; q = abs(y) / 3.4
        wd = (.86 - .22 * q ** 1.6) * math.sqrt(max(0., 1 - max(0, (q - .86) / .14) ** 2) + 1e-3)
        for j in range(nv + 1):
            u = -1 + 2 * j / nv
            V.append((u * wd, y, FOOT + .10 + .12 * q ** 2 - .10 * u * u * wd))
    for i in range(nu):
        for j in range(nv):
            q = i * (nv + 1) + j; F.append((q, q + 1, q + nv + 2, q + nv + 1))
    ft = add('blade', V, F, mat, angle=60, parent=e)
    md = ft.modifiers.new('s', 'SOLIDIFY'); md.thickness = .20; md.offset = 0
    md = ft.modifiers.new('b', 'BEVEL'); md.width = .045; md.segments = 3
    for y in (-.62, .62):                     # peened flush, no slot
        pe = lathe('peened', [(0, .055), (.12, .05), (.20, .02), (.21, -.05)], M['steel'], r=.03, parent=e, seg=40); pe.location = (0, y, FOOT + .01); pe.rotation_euler.y = radians(90)
    return e


def lever(parent):
    """The anti-reverse lever under the nose."""
    lv = fillet([(-.13, -.2), (.13, -.2), (.11, .55), (.20, .78), (0, .92), (-.20, .78), (-.11, .55)], .08, 4, True)
    b = plate('arlever', lv, .12, M['nickel'], bevel=.03, parent=parent); b.location = (-3.30, 0, -2.15); b.rotation_euler = (radians(128), 0, radians(90))
    return b


# ------------------------------------------------------------------ handle
def bar(name, path, width, thick, mat, parent):
    """A flat bar swept along a path in (X, Z): `width` a function of the share of its length, along Y."""
    pts = [Vector((p[0], 0, p[1])) for p in path]
    V, F = [], []
    for i, p in enumerate(pts):
        d = (pts[min(i + 1, len(pts) - 1)] - pts[max(i - 1, 0)]).normalized(); n = Vector((d.z, 0, -d.x)) * thick / 2
        w = width(i / (len(pts) - 1)) / 2
        V += [p + n + Vector((0, w, 0)), p + n - Vector((0, w, 0)), p - n - Vector((0, w, 0)), p - n + Vector((0, w, 0))]
    for i in range(len(pts) - 1):
        F += [(4 * i + k, 4 * i + (k + 1) % 4, 4 * i + 4 + (k + 1) % 4, 4 * i + 4 + k) for k in range(4)]
    F += [(0, 1, 2, 3), tuple(4 * (len(pts) - 1) + k for k in (3, 2, 1, 0))]
    ob = add(name, [tuple(v) for v in V], F, mat, angle=40, parent=parent)
    md = ob.modifiers.new('b', 'BEVEL'); md.width = .055; md.segments = 4; md.limit_method = 'ANGLE'; md.angle_limit = radians(50)
    return ob


def arm_path():
    flat = fillet([(0, .0), (0, 1.15), (.62, 2.05), (.62, 4.55)], .55, 10)
    n = 12; out = []
    for a, b in zip(flat, flat[1:]):
        out += [(a[0] + (b[0] - a[0]) * k / n, a[1] + (b[1] - a[1]) * k / n) for k in range(n)]
    return out + [flat[-1]]


def handle(parent, turn=HANDLE_TURN):
    """Arm along +Z in its own frame, outward is +X."""
    e = empty('handle'); e.parent = parent; e.location = GEARBOX + Vector((0, -2.42, 0))
    e.rotation_mode = 'QUATERNION'
    e.rotation_quaternion = (Matrix.Rotation(radians(-90), 4, 'Z') @ Matrix.Rotation(radians(turn), 4, 'X')).to_quaternion()
    bar('arm', arm_path(), lambda t: .80 - .34 * min(1., max(0., (t - .05) / .45)) + .10 * max(0., (t - .75) / .25), .22, M['chromed'], e)
    lathe('armboss', [(0, -.16), (.62, -.16), (.66, -.08), (.66, .16), (.58, .24), (0, .24)], M['chromed'], r=.04, parent=e, seg=96)
    r.screw((.25, 0, 0), 1, e, turn=58, r=.46, h=.16, slot=.085, mat='nickel')
    k = [(0, 0), (.26, 0), (.30, .08), (.30, .20), (.25, .28), (.36, .50), (.60, .95), (.72, 1.45), (.74, 1.50), (.70, 1.54), (.75, 1.58), (.76, 1.66), (.72, 1.70), (.76, 1.74), (.74, 1.95), (.60, 2.30), (.34, 2.52), (0, 2.56)]
    kn = lathe('knob', k, M['cream'], r=.05, parent=e, nf=5); kn.location = (.74, 0, 4.42)
    fe = lathe('ferrule', [(.1, -.04), (.30, -.04), (.30, .10), (.24, .14), (.1, .14)], M['chromed'], r=.02, closed=True, parent=e, seg=64); fe.location = (.70, 0, 4.42)
    rv = lathe('rivet', [(0, -.12), (.15, -.10), (.20, 0)], M['nickel'], r=.03, parent=e, seg=48); rv.location = (.52, 0, 4.42)
    return e


# ------------------------------------------------------------------ the later front
def spool(parent, mat='acetal', deep=True, line=True):
    """In its own frame: the back at x = 0, the lip in front."""
    L = 2.75
    if deep:
        prof = [(.42, .30), (.42, 0), (2.60, 0), (2.72, .10), (2.72, .95), (2.60, 1.02), (1.72, 1.02), (1.66, 1.10), (1.66, 2.32), (1.74, 2.40), (2.40, 2.44), (2.58, 2.52), (2.60, 2.62), (2.52, 2.72), (2.20, L), (1.75, L - .04), (1.62, L - .30), (1.35, L - .36), (.42, L - .36)]
    else:
        prof = [(.42, .30), (.42, 0), (2.45, 0), (2.56, .10), (2.56, .72), (2.44, .78), (2.05, .80), (2.0, .86), (2.0, 2.10), (2.05, 2.18), (2.42, 2.22), (2.55, 2.28), (2.56, 2.36), (2.48, 2.44), (1.85, 2.46), (1.78, 2.20), (1.55, 2.10), (.42, 2.10)]
    lathe('spool', prof, M[mat], r=.045, parent=parent, seg=200, closed=True)
    if line: line_on(parent, 1.14, 2.30, 2.30 if WORN else 2.38, .020 if WORN else .016)
    return parent


def line_on(parent, x0, x1, r0, rad):
    loose = 1. if WORN else .35
    lathe('linebed', [(1.6, x0), (r0 - rad * .7, x0), (r0 - rad * .7, x1), (1.6, x1)], M['nylon'], r=.02, closed=True, parent=parent)
    w = x1 - x0; turns = int(w / (2.3 * rad))
    for layer, (tn, rr, ph) in enumerate(((turns, r0, 0.), (turns * .55, r0 + rad * 1.4, 1.), (6, r0 + rad * 2.6, 2.))):
        pts, N = [], int(tn * 36)
        for i in range(N):
            t = i / N; a = 2 * pi * tn * t + ph
            x = x0 + rad + (w - 2 * rad) * (t if layer == 0 else .5 + (.5 if layer == 1 else .36) * sin(2 * pi * t * (3 if layer == 1 else 1.5)))
            x += .05 * loose * (1 + layer) * mnoise.noise((a * .21, layer * 7.3, 1.))
            q = rr + .02 * loose * mnoise.noise((a * .5, layer * 3., 4.))
            pts.append((max(x0 + rad, min(x1 - rad, x)), q * cos(a), q * sin(a)))
        tube('nylon%d' % layer, pts, rad, M['nylon'], parent=parent, res=2)


def drag_knob(parent):
    e = empty('dragknob'); e.parent = parent
    lathe('drag', [(0, .92), (.30, .90), (.42, .80), (.86, .76), (1.02, .66), (1.06, .50), (1.06, .14), (1.0, .04), (0, .0)], M['acetal'], r=.05, parent=e, seg=240, knurl=(30, .07, .10, .62, .95))
    lathe('dragpin', [(0, 1.02), (.12, 1.01), (.17, .95), (.17, .70)], M['chrome'], r=.02, parent=e, seg=48)
    return e


def around(angle):
    """Frame at `angle` round X: local X outward, local Y to the front."""
    o = Vector((0, cos(angle), sin(angle))); f = Vector((1, 0, 0)); t = o.cross(f)
    return Matrix(((o.x, f.x, t.x), (o.y, f.y, t.y), (o.z, f.z, t.z))).to_4x4()


def rotor(parent, turn=0., bail=0., roller=True):
    """The 350's rotor with its bail. turn: about X; bail: how far it is opened, degrees."""
    e = empty('rotor'); e.parent = parent; e.rotation_euler.x = radians(turn)
    b, f, R = CUP
    lathe('cup', [(.5, b), (1.7, b), (2.55, b + .10), (2.98, b + .42), (R, b + .80), (R, f - .10), (R - .04, f), (R - .16, f), (R - .22, f - .10), (R - .22, b + .8), (2.4, b + .34), (.5, b + .25)], M['chrome'], r=.07, closed=True, parent=e, seg=220, nf=6)
    for i, a in enumerate((0., pi)):
        F = around(a)
        lug = fillet([(-.95, -.52), (.48, -.52), (.70, -.30), (.70, .30), (.48, .52), (-.95, .52), (-1.1, .3), (-1.1, -.3)], .22, 6, True)
        lg = plate('lug', lug, .34, M['chrome'], bevel=.09, seg=5, parent=e); lg.matrix_basis = Matrix.Translation(F @ Vector((R + .06, f - .55, 0))) @ F
        A = Matrix.Translation(F @ Vector((R + .34, f - .42, 0))) @ F @ Matrix.Rotation(radians(bail * (1 if i else -1)), 4, 'X')
        L = 2.35
        o = [(.48 * cos(q), .48 * sin(q)) for q in np.linspace(pi / 2, 1.5 * pi, 24)] + [(.9, -.34), (L - .3, -.24)]
        o += [(L + .26 * cos(q), .26 * sin(q)) for q in np.linspace(-pi / 2, pi / 2, 18)] + [(.9, .34)]
        ar = plate('bailarm', fillet(o, .1, 3, True), .20, M['chrome'], bevel=.055, seg=4, parent=e); ar.matrix_basis = A
        s = r.screw((0, 0, 0), 1, e, r=.24, h=.08, slot=.055, turn=30 + 80 * i, mat='chrome'); s.matrix_basis = A @ Matrix.Translation((.12, 0, 0)) @ Matrix.Rotation(radians(30 + 80 * i), 4, 'X')
    # the wire, from arm to arm round the front
    x0, rw, pts = f - .42 + 2.35, R + .34, []
    for q in np.linspace(0, pi, 90):
        k = sin(q) ** .8
        pts.append((x0 + .62 * k, rw * cos(q), (rw * .98) * sin(q)))
    tube('bail', pts, .085, M['wire'], parent=e, res=6)
    rl = lathe('roller', roller_profile(), M['chrome'], r=.02, parent=e, seg=72); rl.matrix_basis = Matrix.Translation((x0 + .04, rw - .06, .34)) @ Matrix.Rotation(radians(90), 4, 'Y') @ Matrix.Scale(.9, 4)
    lathe('rollercap', [(0, .10), (.20, .09), (.24, 0), (.24, -.10)], M['chrome'], r=.03, parent=e, seg=48).matrix_basis = Matrix.Translation((x0 + .04, rw - .06, .74)) @ Matrix.Rotation(radians(-90), 4, 'Y')
    return e


def roller_profile(grooved=False):
    g = [(.325, -.06), (.285, -.025), (.278, 0.), (.285, .025), (.325, .06)] if grooved else []
    return [(.15, -.35), (.30, -.35), (.335, -.30), (.325, -.2)] + g + [(.325, .2), (.335, .30), (.30, .35), (.15, .35)]


def front(parent, turn=28.):
    rotor(parent, turn)
    s = empty('spoolat'); s.parent = parent; s.location.x = 3.05; s.rotation_euler.x = radians(11)
    spool(s)
    k = drag_knob(s); k.location.x = 2.38
    lathe('shaft', [(0, 4.0), (.2, 4.0), (.2, 1.5), (0, 1.5)], M['steel'], r=.02, parent=parent, seg=48)


def whole():
    E = empty('sandling')
    body(E); side_cover(E); foot(E); lever(E); handle(E); front(E)
    return E


# ------------------------------------------------------------------ gears and loose parts
def main_gear(parent=None):
    e = parent or empty('gear61')
    plate('rim', r.gear_outline(r.GEAR_R, 61, r.GEAR_DEPTH), .38, M['bronze'], bevel=.014, holes=[circ(1.36, 96)], seg=2, parent=e)
    plate('web', circ(1.38, 96), .17, M['bronze'], bevel=.01, parent=e, holes=[circ(.20, 48)] + [circ(.15, 28, .84 * cos(a), .84 * sin(a)) for a in (.4, .4 + 2 * pi / 3, .4 + 4 * pi / 3)])
    lathe('hub', [(.20, -.25), (.52, -.25), (.52, .42), (.20, .42)], M['bronze'], r=.03, closed=True, parent=e)
    return e


def bail_spring(broken=False):
    """A torsion spring of 0.8 mm wire: four and a half turns and two legs; broken: the short leg parted at the coil."""
    q, gap, turns, n = .30, .084, 4.5, 200
    coil = [(q * cos(2 * pi * turns * i / n), q * sin(2 * pi * turns * i / n), .04 + gap * turns * i / n) for i in range(n + 1)]
    long_leg = [(q, -1.55 + .05 * i, .04) for i in range(31)]
    hook = [(q - .14 * (1 - cos(b)), -1.55 - .14 * sin(b), .04) for b in np.linspace(pi * .75, 0.05, 10)]
    a = 2 * pi * turns; t = Vector((-sin(a), cos(a), 0)); p = Vector(coil[-1])
    short = [tuple(p + t * .05 * i) for i in range(1, 17)]; end = Vector(short[-1])
    side = Vector((t.y, -t.x, 0)); short += [tuple(end + side * .15 * (1 - cos(b)) + t * .15 * sin(b)) for b in np.linspace(.2, pi * .55, 9)]
    m = M['blue steel'] if not broken else M['steel']
    if not broken: return [tube('bailspring', hook + long_leg + coil + short, .042, m, res=5)]
    return [tube('longer half', hook + long_leg + coil[:-6], .042, m, res=5), tube('broken leg', [tuple(Vector(v) - p) for v in coil[-4:] + short], .042, m, res=5)]


def felt_washer(seed):
    """A punched felt ring; old, its edge is ragged."""
    def edge(q, a, k):
        return q + (.050 if WORN else .012) * mnoise.noise((cos(a) * 2.6 + seed * 5, sin(a) * 2.6, k)) + .008 * mnoise.noise((cos(a) * 17, sin(a) * 17 + seed, k))
    a = np.linspace(0, 2 * pi, 260, endpoint=False)
    o, h = ([(edge(q, b, k) * cos(b), edge(q, b, k) * sin(b)) for b in a] for q, k in ((1.34, 0.), (.41, 3.)))
    return plate('felt', o, .15 if WORN else .20, M['felt'], bevel=.03, holes=[h], seg=2)
