"""The reels and their parts. Axis along X: tail plate at -X, handle plate at +X, foot down (-Z)."""
from dataclasses import dataclass
import math
from math import cos, pi, radians, sin
import random

import bpy
import bmesh
import numpy as np
from mathutils import Matrix, Vector, noise as mnoise

from lettering import GRAVER, STAMP, FONT, mask_image, quad, raster, ring_tris, stroke, text_tris
from materials import M, ebonite, marked
from mesh import COL, add, box, circ, empty, fillet, flat, lathe, place, plate, rbox, thread, tube
from settings import DUNLIN, RND, WORN


@dataclass(frozen=True)
class Pattern:
    """What makes one reel another: half the width between plates, overall scale, and its fittings."""
    half_width: float
    scale: float
    star_drag: bool
    twin_knobs: bool
    line_radius: float


SKERRY = Pattern(half_width=2.35, scale=1.0, star_drag=True, twin_knobs=False, line_radius=1.95)
DUNLIN_NO_2 = Pattern(half_width=3.05, scale=.66, star_drag=False, twin_knobs=True, line_radius=1.72)
PATTERN = DUNLIN_NO_2 if DUNLIN else SKERRY

R = 3.70            # outer radius of the rims
HX = PATTERN.half_width  # half distance between plates
WRONG_SCREW = 5     # the plate screw that is a wood screw when found; the crack runs from it
PILLARS = [90 + 36 + 14, 90 - 36 - 14, -14, 194, -60, -120]   # degrees in the YZ plane
_screw = {}


def screw_mesh(r=.19, h=.11, mat='screw', slot=.055, shank=0.):
    """Domed slotted head pointing +X; slot cut by a boolean."""
    key = (r, h, mat, slot, shank)
    if key in _screw: return _screw[key]
    prof = [(0, h), (r * .55, h * .93), (r * .92, h * .62), (r, h * .3), (r, -.06)]
    if shank:
        prof += [(r * .48, -.06)]
        k = int(shank / .045)
        for i in range(k):
            prof += [(r * (.50 if i % 2 else .41), -.10 - i * .0225 * 2)]
        prof += [(r * .3, -.12 - shank), (0, -.12 - shank)]
    else: prof += [(0, -.06)]
    ob = lathe('screwM', prof, M[mat], r=.012, seg=40, nf=2)
    cut = add('cut', *box(.14, r * 3, slot), None, smooth=False); cut.location.x = h * .82
    md = ob.modifiers.new('b', 'BOOLEAN'); md.object = cut; md.operation = 'DIFFERENCE'; md.solver = 'EXACT'
    bm = bmesh.new(); bm.from_mesh(ob.data); bmesh.ops.remove_doubles(bm, verts=bm.verts, dist=1e-5)
    bmesh.ops.recalc_face_normals(bm, faces=bm.faces); bm.to_mesh(ob.data); bm.free()
    me = bpy.data.meshes.new_from_object(ob.evaluated_get(bpy.context.evaluated_depsgraph_get()))
    me.use_auto_smooth = True; me.auto_smooth_angle = radians(35)
    bpy.data.objects.remove(ob); bpy.data.objects.remove(cut)
    _screw[key] = me
    return me


def screw(loc, face=1, parent=None, turn=None, **kw):
    ob = bpy.data.objects.new('screw', screw_mesh(**kw)); COL.objects.link(ob)
    ob.location = loc
    t = RND.uniform(0, pi) if turn is None else radians(turn)
    ob.rotation_euler = (t, 0, 0 if face > 0 else pi)
    if parent: ob.parent = parent
    return ob


def star(r=1.75, th=.2, mat='nickel', n=5, parent=None):
    o = []
    for i in range(n * 40):
        a = 2 * pi * i / (n * 40)
        k = (.5 + .5 * cos(n * a))
        o.append(((.62 + (r - .62) * k ** 1.7) * cos(a), (.62 + (r - .62) * k ** 1.7) * sin(a)))
    return plate('star', o, th, M[mat], bevel=.07, holes=[circ(.27, 40)], seg=4, parent=parent)


def gear_outline(r, n, depth, worn=0.):
    """Tooth outline; worn: flanks eaten away on the driven side until the tips are hooked and sharp (0..1)."""
    o = []
    for i in range(n):
        w = worn * (.75 + .5 * mnoise.noise((i * 1.7, 3.1, 0)))
        for (f, rr) in ((.0, -1), (.22, -1), (.30, -.55), (.40, .55), (.46, 1), (.70, 1), (.76, .55), (.86, -.55), (.94, -1)):
            if f > .5 and f < .9: f -= w * (.26 if rr > .8 else .20 if rr > 0 else .10)
            if .3 < f < .5: f += w * .03
            if rr > .8: rr -= w * .55
            a = 2 * pi * (i + f) / n
            q = r + rr * depth / 2
            o.append((q * cos(a), q * sin(a)))
    return o


GEAR_R, GEAR_TEETH, GEAR_DEPTH = 1.74, 60, .155
PIN_R, PIN_TEETH = .42, 14


def main_gear(parent=None, mat='bronze'):
    e = parent or empty('maingear')
    plate('gearrim', gear_outline(GEAR_R, GEAR_TEETH, GEAR_DEPTH), .38, M[mat], bevel=.014, holes=[circ(1.36, 96)], seg=2, parent=e)
    plate('gearweb', circ(1.38, 96), .17, M[mat], bevel=.01, parent=e,
          holes=[circ(.33, 48)] + [circ(.16, 28, .82 * cos(a), .82 * sin(a)) for a in (0, pi / 2, pi, 1.5 * pi)])
    lathe('gearhub', [(.33, -.25), (.52, -.25), (.52, .42), (.33, .42)], M[mat], r=.03, closed=True, parent=e)
    return e


def pinion(parent=None, mat='brass', worn=False):
    """Fourteen teeth; worn where the main gear ran, whole at the far end."""
    e = parent or empty('pinion')
    n = 34 if worn else 2
    V, F = [], []
    for i in range(n):
        x = -.475 + .95 * i / (n - 1)
        # the run of the main gear, 6 mm of the 9.5, eased at its ends
        run = min(1., max(0., (x + .44) / .10)) * min(1., max(0., (.24 - x) / .12))
        w = (run * run * (3 - 2 * run) * (1.05 + .25 * mnoise.noise((x * 5, 1.3, 0)))) if worn else 0.
        ring = gear_outline(PIN_R, PIN_TEETH, .165, w)
        m = len(ring)
        V += [(x, y, z) for y, z in ring]
        if i: F += [((i - 1) * m + s, (i - 1) * m + (s + 1) % m, i * m + (s + 1) % m, i * m + s) for s in range(m)]
    for base, x in ((0, -.475), ((n - 1) * m, .475)):
        k = len(V); ph = [math.atan2(V[base + s][2], V[base + s][1]) for s in range(m)]
        V += [(x, .2 * cos(a), .2 * sin(a)) for a in ph]
        F += [(base + s, base + (s + 1) % m, k + (s + 1) % m, k + s) for s in range(m)]
    k0, k1 = n * m, (n + 1) * m
    F += [(k0 + s, k0 + (s + 1) % m, k1 + (s + 1) % m, k1 + s) for s in range(m)]
    body = add('pinteeth', V, F, M[mat], angle=38, parent=e)
    md = body.modifiers.new('b', 'BEVEL'); md.width = .012; md.segments = 2; md.limit_method = 'ANGLE'; md.angle_limit = radians(48); md.use_clamp_overlap = True
    lathe('pinneck', [(.2, .45), (.33, .45), (.33, .62), (.25, .66), (.25, .86), (.36, .90), (.36, 1.1), (.2, 1.1)],
          M[mat], r=.02, closed=True, parent=e, seg=64)
    return e


def handle(parent, mat='nickel'):
    """Crank arm along +Z in its own frame, knob at the end, counterweight opposite."""
    o = []
    L, C = 3.7, -1.75
    for i in range(60):        # knob end
        a = pi * i / 59; o.append((.36 * cos(a), L + .36 * sin(a)))
    o += [(-.30, L * .6), (-.38, .9)]
    for i in range(30):
        a = pi * .78 + pi * .44 * i / 29; o.append((.60 * cos(a), .60 * sin(a)))
    o += [(-.34, -.9)]
    for i in range(40):
        a = pi + pi * i / 39; o.append((.50 * cos(a), C + .50 * sin(a)))
    o += [(.34, -.9)]
    for i in range(30):
        a = -pi * .22 + pi * .44 * i / 29; o.append((.60 * cos(a), .60 * sin(a)))
    o += [(.38, .9), (.30, L * .6)]
    arm = plate('arm', fillet(o, .25, 5, True), .24, M[mat], bevel=.06, seg=4, parent=parent)
    cw = lathe('cweight', [(0, -.25), (.5, -.25), (.56, -.1), (.58, .18), (.50, .40), (.3, .5), (0, .54)], M[mat], r=.08, parent=parent)
    cw.location = (.10, 0, C)
    k = [(0, 0), (.30, 0), (.33, .10), (.33, .20), (.24, .27), (.27, .42), (.42, .74), (.555, 1.15), (.60, 1.58), (.595, 1.66), (.555, 1.68), (.555, 1.72), (.59, 1.74), (.55, 2.0), (.40, 2.25), (.20, 2.36), (0, 2.38)]
    kn = lathe('knob', k, M['teak'], r=.05, parent=parent, nf=5); kn.location = (.16, 0, L)
    fr = lathe('ferrule', [(.2, -.06), (.33, -.06), (.33, .16), (.27, .20), (.2, .2)], M[mat], r=.03, closed=True, parent=parent); fr.location = (.14, 0, L)
    s = screw((2.545, 0, L), 1, parent, r=.16, h=.05)
    rv = lathe('rivet', [(0, -.2), (.2, -.18), (.24, -.08), (.24, 0)], M[mat], r=.03, parent=parent); rv.location = (-.06, 0, L)
    nut = plate('nut', circ(.44, 6), .34, M[mat], bevel=.05, seg=3, parent=parent); nut.location = (.26, 0, 0)
    lathe('stud', [(0, .58), (.16, .57), (.22, .52), (.22, .1)], M['screw'], r=.02, parent=parent, seg=48)
    return arm


def twin_handle(parent, mat='nickel'):
    """A balanced crank with a small composition knob at either end."""
    L, o = 2.15, []
    for s in (1, -1):
        for i in range(40):
            a = pi * i / 39 + (0 if s > 0 else pi); o.append((.30 * cos(a), s * L + .30 * sin(a)))
        for i in range(24):
            a = (pi * .72 + pi * .56 * i / 23) + (0 if s > 0 else pi); o.append((.50 * cos(a), .50 * sin(a)))
    plate('crank', fillet(o, .2, 5, True), .20, M[mat], bevel=.05, seg=4, parent=parent)
    for s in (1, -1):
        k = [(0, 0), (.20, 0), (.22, .12), (.19, .26), (.30, .52), (.43, .80), (.46, 1.02), (.40, 1.24), (.24, 1.34), (0, 1.36)]
        kn = lathe('knob', k, M['composition'], r=.07, parent=parent, nf=5); kn.location = (.16, 0, s * L)
        screw((1.515, 0, s * L), 1, parent, r=.13, h=.05, slot=.04)
        fr = lathe('ferrule', [(.12, -.06), (.26, -.06), (.26, .10), (.2, .16), (.12, .16)], M[mat], r=.03, closed=True, parent=parent); fr.location = (.12, 0, s * L)
    nut = plate('nut', circ(.36, 6), .30, M[mat], bevel=.05, seg=3, parent=parent); nut.location = (.24, 0, 0)
    lathe('stud', [(0, .50), (.13, .49), (.18, .45), (.18, .1)], M['screw'], r=.02, parent=parent, seg=48)


def line_on_spool(parent, r0=PATTERN.line_radius, turns=int(27 * HX / 2.35 * 2.35), w=2 * HX - .64):
    """Old line: a close-wound layer, a wandering second layer and a loose end."""
    rad = w / turns / 2
    loose = 1 if WORN else .25
    lathe('linebed', [(1.0, -w / 2), (r0 - rad * .8, -w / 2), (r0 - rad * .8, w / 2), (1.0, w / 2)], M['line'], r=.03, closed=True, parent=parent)
    for layer, (tn, rr, ph) in enumerate(((turns, r0, 0), (turns * .8, r0 + rad * 1.5, 1.), (11, r0 + rad * 2.9, 2.))):
        pts, N = [], int(tn * 40)
        for i in range(N):
            t = i / N; a = 2 * pi * tn * t + ph
            if layer == 0: x = -w / 2 + rad + (w - 2 * rad) * t
            else: x = (w / 2 - rad) * (1 if layer == 1 else .8) * (2 * t - 1) * (-1 if layer == 1 else 1)
            x += .035 * mnoise.noise((a * .22, layer * 7.3, 1.)) * (1 + 2 * layer) * loose
            q = rr + .018 * mnoise.noise((a * .5, layer * 3., 4.))
            pts.append((max(-w / 2 + rad, min(w / 2 - rad, x)), q * cos(a), q * sin(a)))
        tube('line%d' % layer, pts, rad * (1.0 if layer < 2 else .95), M['line'], parent=parent, res=2)


def star_head(E):
    """Handle-plate furniture of the star-drag reel."""
    lathe('cap_h', [(0, 1.42), (.3, 1.41), (.46, 1.34), (.5, 1.26), (.5, 1.1), (.56, 1.06), (.7, 1.02), (.74, .95), (.74, .9)], M['nickel'], r=.03, parent=E, seg=200, knurl=(48, .03, 1.1, 1.3, .45)).location = (HX, .0, .9)
    hy, hz = -.25, -.95                        # crank axis
    lathe('collar', [(0, 1.3), (.85, 1.3), (.9, 1.24), (.95, 1.05), (1.05, .98), (1.05, .9)], M['nickel'], r=.03, parent=E).location = (HX, hy, hz)
    for a in (25, 115, 200, 300):
        screw((HX + .965, hy + 1.38 * cos(radians(a)), hz + 1.38 * sin(radians(a))), 1, E, r=.135, h=.07, slot=.04)
    lv = [(-.16, -.3), (.16, -.3), (.13, 1.0), (.24, 1.5), (.12, 1.74), (-.12, 1.74), (-.24, 1.5), (-.13, 1.0)]
    b = plate('lever', fillet(lv, .12, 4, True), .13, M['nickel'], bevel=.04, parent=E); b.location = (HX + 1.04, 1.65, .55); b.rotation_euler.x = radians(-42)
    screw((HX + 1.12, 1.65, .55), 1, E, r=.2, h=.08)
    oil = lathe('oilcap', [(0, .16), (.1, .16), (.15, .12), (.15, 0)], M['brass'], r=.02, parent=E, seg=96, knurl=(20, .015, .01, .13, .1)); oil.location = (HX + .96, -1.7, 1.2)
    st = star(parent=E); st.location = (HX + 1.52, hy, hz); st.rotation_euler.x = radians(17)
    lathe('starhub', [(.2, 1.28), (.44, 1.28), (.44, 1.42), (.54, 1.46), (.54, 1.66), (.4, 1.72), (.2, 1.72)], M['nickel'], r=.03, closed=True, parent=E).location = (HX, hy, hz)
    H = empty('handle'); H.parent = E; H.location = (HX + 1.90, hy, hz); H.rotation_euler.x = radians(116)
    handle(H)


def plain_head(E):
    """Handle-plate furniture of the small reel: no drag, the crank on the spool's own axis."""
    lathe('collar', [(0, 1.3), (.62, 1.3), (.70, 1.24), (.74, 1.08), (.98, .99), (1.02, .9)], M['nickel'], r=.03, parent=E, seg=200, knurl=(48, .03, 1.09, 1.23, .6)).location = (HX, 0, 0)
    for a in (75, 195, 315):
        screw((HX + .975, 1.34 * cos(radians(a)), 1.34 * sin(radians(a))), 1, E, r=.12, h=.06, slot=.04)
    H = empty('handle'); H.parent = E; H.location = (HX + 1.46, 0, 0); H.rotation_euler.x = radians(127)
    twin_handle(H)


def reel():
    """Whole reel, axis at the origin of an empty."""
    E = empty('reel')
    marks = mask_image('marks', raster(tail_marks(), 6.4, 6.4, 300, 2))
    if DUNLIN:
        tail = ebonite('marbled', marbled=True)
        head = ebonite('marbled head', marks, 3.2, 1, marbled=True)
    else:
        split = mask_image('split', raster(crack_marks(), 6.4, 6.4, 300, 1))
        tail, head = ebonite('tail rubber', marks, 3.2, -1, crack=split), M['ebonite']
    mark_foot = foot_metal()
    # --- tail plate
    lathe('tailplate', [(0, -HX - .58), (1.2, -HX - .57), (2.9, -HX - .52), (3.12, -HX - .47), (3.30, -HX - .30), (3.30, -HX), (0, -HX)], tail, r=.05, parent=E, seg=180)
    lathe('tailrim', [(3.02, -HX - .52), (3.22, -HX - .55), (3.50, -HX - .50), (R, -HX - .30), (R, -HX + .06), (R - .16, -HX + .12), (3.1, -HX + .12), (3.1, -HX - .2)], M['rimworn'], r=.07, closed=True, parent=E, seg=200, nf=6)
    # --- handle plate (deeper: it houses the gears)
    lathe('headplate', [(0, HX + .98), (1.3, HX + .97), (2.75, HX + .92), (3.0, HX + .84), (3.22, HX + .60), (3.30, HX + .40), (3.30, HX), (0, HX)], head, r=.06, parent=E, seg=180)
    lathe('headrim', [(3.12, HX + .62), (3.30, HX + .66), (3.52, HX + .60), (R, HX + .40), (R, HX - .06), (R - .16, HX - .12), (3.1, HX - .12), (3.1, HX + .3)], M['headrim'], r=.07, closed=True, parent=E, seg=200, nf=6)
    # --- pillars and their screws
    for i, d in enumerate(PILLARS):
        y, z = 3.30 * cos(radians(d)), 3.30 * sin(radians(d))
        p = lathe('pillar%d' % i, [(.10, -HX), (.24, -HX), (.24, -HX + .2), (.175, -HX + .3), (.175, HX - .3), (.24, HX - .2), (.24, HX), (.10, HX)], M['pillar'], r=.05, parent=E, seg=48)
        p.location = (0, y, z)
        y, z = y * 1.012, z * 1.012
        if i == WRONG_SCREW and WORN and not DUNLIN:     # a wood screw, bigger and standing proud
            screw((-HX - .545, y, z), -1, E, turn=62, r=.235, h=.135, slot=.070, mat='woodscrew')
        else:
            screw((-HX - .545, y, z), -1, E, r=.155, h=.075, slot=.045)
        screw((HX + .645, y, z), 1, E, r=.155, h=.075, slot=.045)
    # --- tail plate furniture: bearing cap, click slider, small screws
    lathe('cap_t', [(0, -1.08), (.35, -1.07), (.58, -1.0), (.66, -.92), (.66, -.72), (.72, -.68), (.86, -.64), (.92, -.56), (.92, -.5)][::-1], M['nickel'], r=.03, parent=E, seg=240, knurl=(60, .035, -.95, -.70, .6)).location.x = -HX
    sl = [(.42 * cos(a) + (.22 if cos(a) > 0 else -.22), .22 * sin(a)) for a in np.linspace(0, 2 * pi, 48, endpoint=False)]
    b = plate('clickbase', sl, .07, M['nickel'], bevel=.02, parent=E); b.location = (-HX - .59, 1.28, -.95); b.rotation_euler.x = radians(-38)
    b = lathe('clickbtn', [(0, -.3), (.1, -.29), (.17, -.22), (.17, 0)], M['nickel'], r=.04, parent=E, seg=96, knurl=(24, .02, -.24, -.02, .15)); b.location = (-HX - .60, 1.42, -1.05)
    (plain_head if DUNLIN else star_head)(E)
    # --- spool
    for s in (-1, 1):
        q = HX - .15
        lathe('flange%d' % s, [(.3, s * (q - .12)), (2.6, s * (q - .12)), (2.85, s * (q - .16)), (3.02, s * (q - .16)), (3.05, s * (q - .10)), (3.02, s * (q - .03)), (2.9, s * q), (.3, s * q)], M['spool'], r=.035, parent=E, seg=180)
    lathe('arbor', [(1.05, -HX + .25), (1.05, HX - .25)], M['spool'], r=0, parent=E)
    line_on_spool(E)
    # --- foot: saddle on the two lower pillars, neck, and a tapered blade along Y
    V, F, nu, nv = [], [], 40, 14
    for i in range(nu + 1):
        a = radians(-90 - 40 + 80 * i / nu)
        for j in range(nv + 1):
            x = (-1 + 2 * j / nv) * (1.35 - .25 * (abs(i - nu / 2) / (nu / 2)) ** 2)
            V.append((x, 3.54 * cos(a), 3.54 * sin(a)))
    for i in range(nu):
        for j in range(nv):
            q = i * (nv + 1) + j; F.append((q, q + 1, q + nv + 2, q + nv + 1))
    sd = add('saddle', V, F, M['frame'], parent=E)
    md = sd.modifiers.new('s', 'SOLIDIFY'); md.thickness = .16; md.offset = 0
    md = sd.modifiers.new('b', 'BEVEL'); md.width = .05; md.segments = 3
    nk = rbox('neck', (1.7, 2.3, .62), M['frame'], .12, E); nk.location = (0, 0, -3.86)
    V, F, nu, nv = [], [], 128, 20
    for i in range(nu + 1):
        y = -4.7 + 9.4 * i / nu; t = abs(y) / 4.7
        wd = (1.02 - .30 * t ** 1.5) * math.sqrt(max(0.0, 1 - max(0, (t - .88) / .12) ** 2) + 1e-3)
        for j in range(nv + 1):
            u = -1 + 2 * j / nv
            V.append((u * wd, y, -4.26 + .10 * t ** 2 - .17 * u * u * (wd / 1.0) ** 2))
    for i in range(nu):
        for j in range(nv):
            q = i * (nv + 1) + j; F.append((q, q + 1, q + nv + 2, q + nv + 1))
    ft = add('foot', V, F, mark_foot, angle=60, parent=E)
    md = ft.modifiers.new('s', 'SOLIDIFY'); md.thickness = .20; md.offset = 0
    md = ft.modifiers.new('b', 'BEVEL'); md.width = .05; md.segments = 3
    for y in (-.75, .75):
        s = bpy.data.objects.new('footscrew', screw_mesh(r=.26, h=.05, mat='screw', slot=.07)); COL.objects.link(s)
        s.parent = E; s.location = (0, y, -4.365); s.rotation_euler = (0, radians(90), radians(RND.uniform(0, 180)))
    E.scale = (PATTERN.scale,) * 3
    return E


def tail_marks():
    """The maker's lettering, moulded and filled with paint."""
    t = []
    if DUNLIN:
        t += list(text_tris('OCKLEY & SONS \u00b7 TERNWICK', .44, (2.34, 'top')))
        t += list(text_tris('DUNLIN', .52, (2.68, 'bottom')))
        t += list(text_tris('No. 2', .44, (1.62, 'top')))
    else:
        t += list(text_tris('HARROWAY REEL WORKS \u00b7 PORT ELLERY', .35, (2.42, 'top')))
        t += list(text_tris('PAT. 2,185,170', .30, (2.70, 'bottom')))
        t += list(text_tris('SKERRY', .52, at=(0, 1.36)))
        t += list(text_tris('No. 40', .44, at=(0, -1.72)))
    t += ring_tris(2.900, 2.925) + ring_tris(2.845, 2.857)
    for s in (-1, 1):                         # small lozenges between the two arcs
        a = radians(-90 + s * (52 if DUNLIN else 60))
        cx, cy = 2.55 * cos(a), 2.55 * sin(a)
        t += [np.array([(cx - .1, cy), (cx, cy - .14), (cx + .1, cy)]), np.array([(cx - .1, cy), (cx, cy + .14), (cx + .1, cy)])]
    return t


def crack_marks():
    """A hairline, 9 mm, from under the ring at the wrong screw inward. Mirrored: the tail is read from -X."""
    a = radians(PILLARS[WRONG_SCREW]); rr = random.Random(12); pts = []
    for i in range(28):
        d = .98 * i / 27                       # the first .8 mm lies under the ring
        q = 3.10 - d * .93
        side = -.26 * d * d + .05 * sin(5.2 * d) + rr.uniform(-.010, .010)
        y, z = q * cos(a) - side * sin(a), q * sin(a) + side * cos(a)
        pts.append((-y, z))
    return stroke(pts, .034, .013)


def foot_metal():
    """The foot's metal with what is stamped and engraved underneath; none on the small reel."""
    if DUNLIN: return M['footm']
    half = (4.7, 1.05)
    stamp = list(text_tris('MADE IN U.S.A.', .37, at=(-2.55, -.28), font=STAMP, space=1.15))
    stamp += list(text_tris('H 4417', .44, at=(2.6, -.28), font=STAMP, space=1.25))
    graved = list(text_tris('A. MERROW \u00b7 FERRY LANDING \u00b7 1948', .47, at=(0, .38), font=GRAVER, space=1.10))
    for y in (.30, .80):                       # the graver's two fine rules, above and below
        graved += quad(-3.45, y - .007, 3.45, y + .007) if y > .5 else []
    im = [mask_image(n, raster(t, 2 * half[0], 2 * half[1], 240, b)) for n, t, b in (('stamp', stamp, 2), ('graved', graved, 1))]
    return marked('marked foot', im[0], im[1], half, wear=.35, pit=.7, verdigris=.45, dust=.15, film=.40)


def shanked(head, length, pitch, depth, core, mat, head_r, head_h, slot):
    """A loose screw, head toward +X: slotted head and a cut thread."""
    e = empty(head)
    ob = bpy.data.objects.new('head', screw_mesh(r=head_r, h=head_h, mat=mat, slot=slot)); COL.objects.link(ob); ob.parent = e
    plain = .08
    lathe('neck', [(core(0.) + depth, -.02), (core(0.) + depth, -.06 - plain), (0, -.07 - plain)], M[mat], r=0, parent=e, seg=48)
    th = thread('thread', length, pitch, depth, core, M[mat], parent=e); th.location.x = -.06 - plain
    return e


def wood_screw():
    return shanked('woodscrew', 1.15, .125, .042, lambda x: .085 if x < .55 else max(.004, .085 - .078 * ((x - .55) / .6) ** 1.3), 'woodscrew', .235, .135, .070)


def plate_screw():
    return shanked('platescrew', .72, .042, .017, lambda x: .075, 'newscrew', .155, .075, .045)


def lock_screw():
    e = empty('lockscrew')
    ob = lathe('cheese', [(0, .13), (.145, .13), (.155, .11), (.155, -.02), (0, -.02)], M['newscrew'], r=.012, seg=96, nf=3)
    cut = add('cut', *box(.11, 1., .042), None, smooth=False); cut.location.x = .13
    md = ob.modifiers.new('b', 'BOOLEAN'); md.object = cut; md.operation = 'DIFFERENCE'; md.solver = 'EXACT'
    bm = bmesh.new(); bm.from_mesh(ob.data); bmesh.ops.remove_doubles(bm, verts=bm.verts, dist=1e-5)
    bmesh.ops.recalc_face_normals(bm, faces=bm.faces); bm.to_mesh(ob.data); bm.free()
    me = bpy.data.meshes.new_from_object(ob.evaluated_get(bpy.context.evaluated_depsgraph_get()))
    me.use_auto_smooth = True; me.auto_smooth_angle = radians(35)
    ob.modifiers.clear(); ob.data = me; ob.parent = e; bpy.data.objects.remove(cut)
    th = thread('thread', .40, .040, .016, lambda x: .068, M['newscrew'], parent=e); th.location.x = -.02
    return e


def dog_spring(broken):
    """A hairpin spring: two legs from a three-turn coil. Broken: the coil has parted in its second turn."""
    r, gap, turns, n = .24, .062, 3.25, 150
    coil = [(r * cos(2 * pi * turns * i / n), r * sin(2 * pi * turns * i / n), .05 + gap * turns * i / n) for i in range(n + 1)]
    legs = [(r, -1.55 + .05 * i, .05) for i in range(31)]
    a = 2 * pi * turns; t = Vector((-sin(a), cos(a), 0)); p = Vector(coil[-1])
    out = [tuple(p + t * .05 * i) for i in range(1, 27)]
    end = Vector(out[-1]); side = Vector((t.y, -t.x, 0))
    out += [tuple(end + side * .16 * (1 - cos(b)) + t * .16 * sin(b)) for b in np.linspace(.2, pi * .8, 12)]
    whole = legs + coil + out; k = len(legs) + int(n * .52)
    mat = M['steel']
    if not broken:
        return [tube('dogspring', whole, .032, mat, res=5)]
    return [tube('dogspring a', whole[:k], .032, mat, res=5), tube('dogspring b', whole[k + 2:], .032, mat, res=5)]


def click_tongue():
    """The bench's own tongue: filed from sheet, one rivet hole, a blunt nose."""
    o = [(-.34, -.62), (.34, -.62), (.36, -.1), (.22, .22), (.15, .70), (.09, .86), (-.09, .86), (-.15, .70), (-.22, .22), (-.36, -.1)]
    return plate('tongue', fillet(o, .10, 5, True), .12, M['tongue'], bevel=.018, holes=[circ(.13, 40, 0, -.30)], seg=3)


def washer(r1, r0, th, mat, ears=0, key=False):
    o = circ(r1, 96)
    if ears:
        o = []
        for i in range(240):
            a = 2 * pi * i / 240
            e = min(1., max(0., max(0, cos(ears * a)) ** 12 - .12) * 2.2); e = e * e * (3 - 2 * e)
            o.append(((r1 + .25 * e) * cos(a), (r1 + .25 * e) * sin(a)))
    hole = circ(r0, 64)
    if key:
        hole = [(max(-r0 * .68, min(r0 * .68, y)), z) for y, z in hole]
    return plate('washer', o, th, M[mat], bevel=min(.018, th * .3), holes=[hole], seg=2)


def cork_washer(r1, r0, th, seed, gone=0.):
    """A cork washer with bitten edges; gone: the share of its round that has broken away."""
    def edge(r, a, k):
        bite = max(0., mnoise.noise((cos(a) * 2.1 + seed * 7, sin(a) * 2.1, k)) - .12) * .55
        crumb = .030 * mnoise.noise((cos(a) * 9 + seed, sin(a) * 9, k)) + .016 * mnoise.noise((cos(a) * 28, sin(a) * 28 + seed, k))
        return r + (-bite if k < 1 else bite * .12) + crumb * .7
    n = 220
    if gone:
        a0, a1 = gone * pi, 2 * pi - gone * pi
        outer = [(edge(r1, a, 0.) * cos(a), edge(r1, a, 0.) * sin(a)) for a in np.linspace(a0, a1, n)]
        inner = [(edge(r0, a, 1.) * cos(a), edge(r0, a, 1.) * sin(a)) for a in np.linspace(a1 - .10, a0 + .14, n // 2)]
        def ragged(p, q):
            return [(p[0] + (q[0] - p[0]) * t + .06 * mnoise.noise((t * 7, seed * 3, p[0])), p[1] + (q[1] - p[1]) * t + .06 * mnoise.noise((t * 7, p[1], seed))) for t in np.linspace(.06, .94, 14)]
        o = outer + ragged(outer[-1], inner[0]) + inner + ragged(inner[-1], outer[0]); holes = []
    else:
        o = [(edge(r1, a, 0.) * cos(a), edge(r1, a, 0.) * sin(a)) for a in np.linspace(0, 2 * pi, n, endpoint=False)]
        holes = [[(edge(r0, a, 1.) * cos(a), edge(r0, a, 1.) * sin(a)) for a in np.linspace(0, 2 * pi, n // 2, endpoint=False)]]
    return plate('corkwasher', o, th, M['cork'], bevel=.0015, holes=holes, seg=1)


def crumbs(spots, seed=5):
    """Bits of cork: (x, y, spread, count)."""
    rr = random.Random(seed)
    for (x, y, spread, count) in spots:
        for _ in range(count):
            r = rr.choice((rr.uniform(.012, .03), rr.uniform(.03, .07), rr.uniform(.015, .04)))
            bm = bmesh.new(); bmesh.ops.create_icosphere(bm, subdivisions=2, radius=r)
            for v in bm.verts: v.co *= 1 + .7 * mnoise.noise(v.co * (1.2 / r) + Vector((rr.random() * 0, seed, x)))
            me = bpy.data.meshes.new('crumb'); bm.to_mesh(me); bm.free(); me.materials.append(M['cork'])
            ob = bpy.data.objects.new('crumb', me); COL.objects.link(ob)
            a, d = rr.uniform(0, 6.28), spread * abs(rr.gauss(0, .6))
            ob.location = (x + d * cos(a), y + d * sin(a), r * .7); ob.rotation_euler = [rr.uniform(0, 6) for _ in range(3)]


def spring(L=1.6, r=.22, n=8, wire=.028, mat='steel'):
    pts = [(L * i / (n * 24), r * cos(2 * pi * i / 24), r * sin(2 * pi * i / 24)) for i in range(n * 24 + 1)]
    return tube('spring', pts, wire, M[mat])


# ------------------------------------------------------------------ grease
def _gear_face(q):
    """Height of the main gear's upper face at radius q."""
    if q < .53: return .42
    if q < 1.36: return .085
    return .19


def gear_grease(world, mat='grease', amount=1.0, seed=0.):
    """Grease as a skin over the gear's face and a fill between its teeth; it shows where it stands above the metal.

    world: the gear's matrix. amount: about 1 for a neglected gear, under .5 for a fresh film.
    """
    na, V, F = 360, [], []
    radii = list(np.linspace(.535, 1.355, 46)) + list(np.linspace(1.365, GEAR_R - GEAR_DEPTH / 2 + .03, 16))
    for q in radii:
        for s in range(na):
            a = 2 * pi * s / na
            p = Vector((q * cos(a), q * sin(a), seed))
            # drag marks: noise drawn out along the turn
            drag = mnoise.noise((a * 1.1, q * 7.5, seed + 3)) * .5 + mnoise.noise((a * 2.6, q * 16, seed + 9)) * .28
            body = mnoise.fractal(p * 1.7, .8, 2.2, 4) + .25 * mnoise.fractal(p * 6., .8, 2.2, 3)
            corner = math.exp(-((q - 1.355) / .075) ** 2) if q < 1.36 else 0.
            corner += math.exp(-((q - .535) / .07) ** 2)
            h = (body * .8 + .9 * drag - .30 + .85 * amount) * .045 * amount + corner * .10 * amount * (.6 + body)
            if q > 1.36: h = (body * .9 + 1.2 * drag - .62 + .25 * amount) * .034 * amount + .05 * amount * math.exp(-((q - 1.36) / .03) ** 2) * (.4 + body)
            base = _gear_face(q)
            V.append((base + max(-.01, min(h, .15)), q * cos(a), q * sin(a)))
    nr = len(radii)
    for i in range(nr - 1):
        if radii[i] < 1.36 < radii[i + 1]: continue
        for s in range(na):
            t = (s + 1) % na; F.append((i * na + s, i * na + t, (i + 1) * na + t, (i + 1) * na + s))
    skin = add('grease', V, F, M[mat], angle=180); skin.matrix_world = world
    V, F, nx, na = [], [], 9, 720
    for i in range(nx + 1):
        x = -.186 + .372 * i / nx
        for s in range(na):
            a = 2 * pi * s / na
            f = mnoise.noise((cos(a) * 2.6, sin(a) * 2.6, 7 + seed)) + .5 * mnoise.noise((cos(a) * 9, sin(a) * 9, x * 4)) + .3 * mnoise.noise((a * 19, x * 9, seed))
            end = min(1., (1 - abs(2. * i / nx - 1)) * 3.4)
            q = GEAR_R - GEAR_DEPTH / 2 - .03 + max(0., f + .12 + .25 * amount) * .125 * amount * end
            V.append((x, min(q, GEAR_R + .05) * cos(a), min(q, GEAR_R + .05) * sin(a)))
    for i in range(nx):
        for s in range(na):
            t = (s + 1) % na; F.append((i * na + s, i * na + t, (i + 1) * na + t, (i + 1) * na + s))
    fill = add('toothgrease', V, F, M[mat], angle=180); fill.matrix_world = world


def pinion_grease(world):
    V, F, nx, na = [], [], 40, 168
    for i in range(nx + 1):
        x = -.47 + .92 * i / nx
        for s in range(na):
            a = 2 * pi * s / na
            f = mnoise.noise((cos(a) * 1.4, sin(a) * 1.4, x * 2.2)) + .5 * mnoise.noise((cos(a) * 5, sin(a) * 5, x * 5))
            q = PIN_R - .11 + max(0., f + .28) * .13 * min(1., (1 - abs(2. * i / nx - 1)) * 6)
            V.append((x, q * cos(a), q * sin(a)))
    for i in range(nx):
        for s in range(na):
            t = (s + 1) % na; F.append((i * na + s, i * na + t, (i + 1) * na + t, (i + 1) * na + s))
    add('piniongrease', V, F, M['grease'], angle=180).matrix_world = world


def grease_strings(ends, seed=2):
    """Threads of old grease drawn between two points, sagging a little."""
    rr = random.Random(seed)
    for (p, q) in ends:
        p, q = Vector(p), Vector(q); sag = rr.uniform(.03, .12)
        pts = [tuple(p.lerp(q, t) - Vector((0, 0, sag * 4 * t * (1 - t)))) for t in np.linspace(0, 1, 18)]
        tube('string', pts, rr.uniform(.012, .020), M['grease'], taper=lambda t: .35 + 1.9 * abs(2 * t - 1) ** 2.5)
