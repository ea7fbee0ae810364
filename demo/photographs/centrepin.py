"""The wharf centrepin of walnut and brass: its parts and their surfaces.

Axis along X: the back's outer face at -X, the drum's face with the knobs at +X, foot down (-Z).
Seen from behind, right is -Y; marks on the back are drawn in (right, up) and turned over when placed.
"""
import math
from math import cos, pi, radians, sin
import random

import bmesh
import bpy
import numpy as np

from lettering import FONT, GRAVER, STAMP, mask_image, raster, ring_tris, stroke, text_tris
from materials import M, Nodes
from mesh import COL, add, box, circ, empty, fillet, lathe, plate, rbox
from settings import VIEW, WORN

R = 6.35                # of back and drum
FACE = -2.40            # the back's outer face
INNER = -1.75           # the floor of the back's dish
FOOT = 7.62             # the axis above the bench, standing on the foot
ARM = 5.0               # how far the cross reaches
STRAP = (3.32, -4.25)   # its middle, and how it is turned
STRAP_TURN = 38.
KNOB_AT = 3.55


# ------------------------------------------------------------------ surfaces
def picture(g, image, u, v):
    """A mask image over u, v in 0..1."""
    t = g.t.nodes.new('ShaderNodeTexImage'); t.image = image; t.extension = 'CLIP'; t.interpolation = 'Cubic'
    g.t.links.new(g.n('CombineXYZ', 0, {0: u, 1: v, 2: 0.}), t.inputs[0])
    return t.outputs[0]


def apart(g):
    s = g.t.nodes.new('ShaderNodeSeparateXYZ'); g.t.links.new(g.n('TexCoord', 3), s.inputs[0])
    return s.outputs


SETTLED = .22 if VIEW in ('centrepin-engraving', 'centrepin-check', 'centrepin-pin') else 1.     # under the drum little gets in


def dusted(g, col, r, c, amount):
    """What has settled on whatever faces up; found only."""
    if not WORN: return col, r
    amount *= SETTLED
    d = g.mul(g.step(g.up(), -.15, .95), g.step(g.plus(g.noise(c, 2.8, 7., .7), g.mul(g.noise(c, 50., 2.), .38)), .44, .98))
    d = g.plus(g.mul(d, amount), g.mul(g.step(g.noise(c, 26., 3., .7), .63, .68), .25 * amount))
    return g.mix(d, col, (.36, .335, .30)), g.lerp(d, r, .95)


def walnut(name, cracks=None, shift=(0., 0., 0.), chalk=0., tone=1.):
    """Old walnut under thin crazed shellac; the grain runs along Z. cracks: (split, hairline) masks over the back."""
    g = Nodes(name); ax = apart(g)
    o = g.n('VectorMath', 0, {0: g.n('CombineXYZ', 0, {0: ax[2], 1: ax[1], 2: ax[0]}), 1: shift}, operation='ADD')
    warp = g.noise(o, .16, 4., .55, stretch=(.30, 1., 1.))
    ring = g.n('VectorMath', 0, {0: o, 1: g.n('CombineXYZ', 0, {1: g.mul(warp, 7.5), 2: g.mul(warp, 2.)})}, operation='ADD')
    bands = g.noise(ring, .85, 6., .58, stretch=(.05, 1., 1.))
    fine = g.noise(ring, 4.2, 4., .6, stretch=(.035, 1., 1.))
    fibre = g.noise(o, 15., 4., .7, stretch=(.045, 1.5, 1.))
    pores = g.step(g.noise(o, 17., 2., .5, stretch=(.06, 1.6, 1.)), .60, .69)
    f = g.plus(g.mul(g.step(bands, .30, .70), .60), g.plus(g.mul(fine, .30), g.mul(fibre, .22)))
    col = g.mix(f, (.018, .0086, .0042), (.112, .057, .025))
    col = g.mix(g.mul(g.step(bands, .56, .68), .78), col, (.0125, .0064, .004))          # the dark figure
    col = g.mix(g.mul(pores, .75), col, (.010, .006, .004))
    hands = g.noise(o, .55, 5., .62)
    edge = g.step(g.n('NewGeometry', 7), .505, .56)
    rub = g.step(g.plus(g.mul(edge, .42), g.mul(hands, .62)), .56, .86)
    col = g.mix(g.mul(rub, .38), col, (.135, .074, .035))                               # shellac gone, wood dry
    col = g.mix(1. - tone, col, (.010, .0055, .0035))
    craze = g.n('TexVoronoi', 0, {'Vector': o, 'Scale': 5.5, 'Randomness': 1.}, feature='DISTANCE_TO_EDGE')
    net = g.mul(g.step(craze, .030, .006), g.step(g.noise(o, .9, 4., .6), .40, .58))
    col = g.mix(g.mul(net, .35), col, (.050, .030, .017))
    cre = g.step(g.ao(.35), .92, .45)
    grime = g.mul(g.step(g.plus(cre, g.mul(fibre, .4)), .60, 1.05), .85)
    col = g.mix(grime, col, (.017, .011, .007))
    dents = g.step(g.noise(o, 2.6, 3., .5, .4), .69, .73)
    h = g.plus(g.mul(fibre, .35), g.plus(g.mul(pores, -1.0), g.plus(g.mul(net, -.35), g.mul(dents, -1.2))))
    r = g.plus(g.lerp(g.noise(o, 1.1, 6., .7), .26, .46), g.plus(g.mul(rub, .18), g.mul(grime, .2)))
    coat = g.mul(g.m('SUBTRACT', 1., rub), .20 if not WORN else .15)
    if chalk:                                # in the grain of the front, where a class stood
        ch = g.mul(g.mul(g.maxi(pores, g.mul(g.step(fibre, .60, .72), .55)), g.step(g.noise(o, .42, 5., .65), .50, .68)), chalk)
        col = g.mix(ch, col, (.50, .475, .43)); r = g.lerp(ch, r, .9)
    nrm = None
    if cracks:
        u, v = g.plus(g.mul(ax[1], -.5 / R), .5), g.plus(g.mul(ax[2], .5 / R), .5)
        behind = g.step(g.n('SeparateXYZ', 0, {0: g.n('TexCoord', 1)}), -.15, -.4)
        for image, depth, dark in ((cracks[0], .05, .97), (cracks[1], .018, .92)):
            k = g.mul(picture(g, image, u, v), behind)
            m = g.step(k, .12, .60)
            col = g.mix(g.mul(m, dark), col, (.004, .003, .0025)); r = g.lerp(m, r, .9)
            nrm = g.bump(g.mul(k, -1.), depth, .9, nrm) if nrm is not None else g.bump(g.mul(k, -1.), depth, .9)
    col, r = dusted(g, col, r, o, .42)
    return g.bsdf(color=col, rough=r, normal=g.bump(h, .010, .5, nrm) if nrm is not None else g.bump(h, .010, .5), spec=.36,
                  coat=coat, coatr=.30, flat=((.045, .024, .011), .4, 0.))


def brown_brass(name, rub=.5, stamp=None, ring=None, half=3., face=-1, turned=.35, green=.12, brightness=1.):
    """Brass that nobody has polished: brown, greener in the corners, yellow where it has been touched.

    stamp: mask image of struck or cut letters over +-half (cm) of the Y-Z plane, seen along X from `face`;
    ring: mask of what has been worn bright there.
    """
    g = Nodes(name); c = g.coords(); ax = apart(g)
    n1, n2, n3 = g.noise(c, .75, 8., .64, .5), g.noise(c, 4.8, 6., .7), g.noise(c, 17., 4., .65)
    edge = g.step(g.n('NewGeometry', 7), .508, .58)
    tone = g.step(g.plus(g.mul(n1, .7), g.mul(n2, .3)), .34, .68)
    b = brightness
    col = g.mix(tone, (.120 * b, .074 * b, .034 * b), (.345 * b, .215 * b, .085 * b))
    col = g.mix(g.mul(g.step(n2, .54, .74), .45), col, (.190, .092, .038))              # redder clouds
    touched = g.step(g.plus(g.mul(edge, .45), g.plus(g.mul(n1, .62), g.mul(n3, .10))), .88 - .36 * rub, 1.02 - .32 * rub)
    rad = g.n('VectorMath', 1, {0: g.n('VectorMath', 0, {0: g.n('TexCoord', 3), 1: (0., 1., 1.)}, operation='MULTIPLY')}, operation='LENGTH')
    turn = g.n('TexNoise', 0, {'W': rad, 'Scale': 30., 'Detail': 3., 'Roughness': .75}, noise_dimensions='1D')
    nrm = None
    if stamp or ring:
        u, v = g.plus(g.mul(ax[1], face * .5 / half), .5), g.plus(g.mul(ax[2], .5 / half), .5)
        side = g.n('SeparateXYZ', 0, {0: g.n('TexCoord', 1)})
        toward = g.step(side, -.4, -.7) if face < 0 else g.step(side, .4, .7)
    if ring:
        worn = g.mul(g.mul(picture(g, ring, u, v), toward), g.step(g.plus(n2, g.mul(turn, .35)), .38, .72, .55, 1.))
        touched = g.maxi(touched, worn)
    col = g.mix(g.mul(touched, .85), col, (.62 * b, .425 * b, .165 * b))
    r = g.plus(g.lerp(g.plus(g.mul(n1, .5), g.mul(n3, .5)), .30, .56), g.mul(touched, -.13))
    metal = g.lerp(touched, .88, 1.)
    pits = g.mul(g.step(g.n('TexVoronoi', 0, {'Vector': c, 'Scale': 21., 'Randomness': 1.}), .34, .18), g.step(g.noise(c, 1.6, 4., .6), .50, .70))
    col = g.mix(g.mul(pits, .7), col, (.022, .014, .009))
    cre = g.step(g.ao(.30), .93, .45)
    gr = g.mul(g.step(g.plus(cre, g.mul(n2, .5)), .66, 1.08), .92)
    col = g.mix(gr, col, (.020, .014, .009)); r = g.lerp(gr, r, .70); metal = g.mul(metal, g.m('SUBTRACT', 1., g.mul(gr, .85)))
    if green:
        vm = g.step(g.plus(g.noise(c, 3.1, 8., .72), g.mul(cre, .20)), .80 - .14 * green, .90 - .10 * green)
        col = g.mix(g.mul(vm, .8), col, g.mix(n3, (.045, .120, .085), (.17, .29, .22))); r = g.lerp(vm, r, .9)
        metal = g.mul(metal, g.m('SUBTRACT', 1., vm))
    if stamp:
        e = g.mul(picture(g, stamp, u, v), toward)
        em = g.mul(g.step(e, .2, .75), .93)
        col = g.mix(em, col, (.013, .009, .006)); r = g.lerp(em, r, .75)
        nrm = g.bump(g.mul(e, -1.), .022, .9)
    h = g.plus(g.mul(turn, turned), g.plus(g.mul(pits, -1.2), g.plus(g.mul(n3, .25), g.mul(g.noise(c, 9., 3., .7, stretch=(1., 12., .8)), .22))))
    col, r = dusted(g, col, r, c, .30)
    return g.bsdf(color=col, rough=r, metal=metal, normal=g.bump(h, .006, .42, nrm) if nrm is not None else g.bump(h, .006, .42),
                  flat=((.19, .118, .050), .42, .85))


def tusk(name, white, honey, seed):
    """What looks like ivory: cream, browner to one side, age lines along the length, faint crossed lines at the end."""
    g = Nodes(name); o = g.n('TexCoord', 3); ax = apart(g)
    n = g.noise(o, .9, 5., .6)
    side = g.step(g.plus(g.mul(ax[2], .55), g.plus(g.mul(ax[1], .30), g.mul(n, .9))), .05, .95)
    col = g.mix(side, honey, white)
    # the grain: nested cones seen as long soft lines
    long = g.noise(o, 5.5, 3., .5, stretch=(.10, 1., 1.))
    col = g.mix(g.mul(g.step(long, .50, .64), .22), col, tuple(x * .72 for x in honey))
    # crossed lines at the end grain
    ang = g.m('ARCTAN2', ax[2], ax[1])
    rad = g.n('VectorMath', 1, {0: g.n('VectorMath', 0, {0: o, 1: (0., 1., 1.)}, operation='MULTIPLY')}, operation='LENGTH')
    a = g.m('SINE', g.plus(g.mul(ang, 16.), g.mul(rad, 52.)), 0.); b = g.m('SINE', g.plus(g.mul(ang, -16.), g.mul(rad, 52.)), 0.)
    end = g.step(g.n('SeparateXYZ', 0, {0: g.n('TexCoord', 1)}), .55, .9)
    col = g.mix(g.mul(g.mul(g.maxi(g.step(a, .55, .95), g.step(b, .55, .95)), end), .20), col, tuple(x * .6 for x in honey))
    # age lines: fine, dark, lengthwise, and only here and there
    w = g.n('VectorMath', 0, {0: o, 1: (seed, 0., 0.)}, operation='ADD')
    v = g.noise(w, 7.5, 2., .45, .25, stretch=(.055, 1., 1.))
    line = g.mul(g.step(g.m('ABSOLUTE', g.m('SUBTRACT', v, .5)), .010, .002), g.step(g.noise(w, 1.1, 3., .6), .44, .60))
    col = g.mix(g.mul(line, .85), col, (.085, .042, .016))
    cre = g.step(g.ao(.16), .90, .40)
    col = g.mix(g.mul(cre, .75), col, (.090, .045, .018))
    rub = g.noise(o, 2.2, 5., .65)
    col, r = dusted(g, col, g.lerp(rub, .20, .36), o, .22)
    return g.bsdf(color=col, rough=r, sss=.16, sssr=(.28, .17, .08), sssc=col, spec=.5, coat=.15, coatr=.18,
                  normal=g.bump(g.plus(g.mul(line, -1.), g.mul(rub, .12)), .008, .5), flat=((.52, .42, .26), .3, 0.))


def old_steel(name, rust=.35, blue=0.):
    g = Nodes(name); c = g.coords()
    n, n2 = g.noise(c, 2.0, 7., .68), g.noise(c, 9., 5., .7)
    col = g.mix(n, (.155, .150, .145), (.335, .33, .32))
    if blue: col = g.mix(blue, col, (.035, .045, .085))
    rm = g.mul(g.step(g.noise(c, 3.2, 8., .74), .56, .72), rust)
    col = g.mix(rm, col, (.105, .042, .018)); r = g.lerp(rm, g.lerp(n2, .24, .40), .85)
    edge = g.step(g.n('NewGeometry', 7), .52, .60)
    col = g.mix(g.mul(edge, .5), col, (.47, .46, .45))
    col, r = dusted(g, col, r, c, .15)
    return g.bsdf(color=col, rough=r, metal=g.m('SUBTRACT', 1., g.mul(rm, .9)), flat=((.27, .265, .26), .35, .9),
                  normal=g.bump(g.plus(g.mul(n2, .4), g.mul(rm, 1.)), .006, .4))


def crack_masks():
    """The old split at the strap and the younger hairline beside it, seen from behind."""
    w, px = 2 * R, 90
    rr = random.Random(7)

    def wander(u, v0, v1, amp, n):
        x, pts = u, []
        for i in range(n + 1):
            pts.append((x, v0 + (v1 - v0) * i / n)); x += rr.uniform(-amp, amp) + (u - x) * .08
        return pts
    split = stroke(wander(STRAP[0], -5.6, -3.05, .022, 36), .085, .012)
    hair = stroke(wander(2.32, -3.62, -1.22, .014, 44), .026, .010)
    return mask_image('split', raster(split, w, w, px, 1)), mask_image('hairline', raster(hair, w, w, px, 0))


def cross_stamp():
    t = list(text_tris('L. THACKWAY & DAUGHTER', .27, (1.52, 'top'), font=STAMP, space=1.06))
    t += list(text_tris('11 TALLY WHARF \u00b7 WENDLEMOUTH', .27, (1.75, 'bottom'), font=STAMP, space=1.03))
    t += list(text_tris('WHARFINGER', .30, at=(0, 3.35), font=FONT, space=1.04))
    t += list(text_tris('No. 5', .34, at=(-3.30, -.12), font=FONT))
    t += list(text_tris('R', .27, at=(2.38, -.10), font=STAMP)) + list(text_tris('d', .20, at=(2.59, -.03), font=STAMP))
    t += list(text_tris('N', .27, at=(2.87, -.10), font=STAMP)) + list(text_tris('o', .20, at=(3.08, -.03), font=STAMP))
    x = 3.38
    for i, ch in enumerate('253914'):
        t += list(text_tris(ch, .28, at=(x, -.10 + (.012, -.010, .008, .0, -.012, -.02)[i]), font=STAMP, turn=(.02, -.03, .01, .0, .03, -.02)[i])); x += .235
    return mask_image('cross', raster(t, 10.4, 10.4, 150, 1))


def disc_masks():
    letters = list(text_tris('JABEZ COYLE \u00b7 WATERMAN \u00b7 1871', .345, (1.44, 'bottom'), font=GRAVER, space=1.10))
    letters += ring_tris(1.66, 1.675) + ring_tris(1.70, 1.712)
    return mask_image('engraved', raster(letters, 4., 4., 240, 1)), mask_image('worn', raster(ring_tris(1.02, 1.40), 4., 4., 60, 5))


def prepare():
    split, hair = crack_masks()
    M['walnut back'] = walnut('walnutback', cracks=(split, hair), shift=(3.1, .7, 2.), tone=.55)
    M['walnut drum'] = walnut('walnutdrum', shift=(11., 2.2, 5.), chalk=.55)
    M['cross'] = brown_brass('crossbrass', rub=.20, stamp=cross_stamp(), half=5.2, turned=.15)
    letters, worn = disc_masks()
    M['disc'] = brown_brass('discbrass', rub=.12, stamp=letters, ring=worn, half=2., face=1, turned=.8, green=.02)
    M['old brass'] = brown_brass('oldbrass', rub=.42)
    M['foot brass'] = brown_brass('footbrass', rub=.40, green=.22)
    M['screw brass'] = brown_brass('screwbrass', rub=.34, turned=.6, green=.1)
    M['strap'] = brown_brass('strapbrass', rub=.10, green=.10, brightness=1.15)
    M['copper'] = brown_brass('coppernail', rub=.15, green=.20, brightness=.8)
    M['tusk a'] = tusk('tuska', (.70, .58, .38), (.42, .255, .105), 0.)
    M['tusk b'] = tusk('tuskb', (.76, .68, .52), (.60, .46, .26), 9.)
    M['pin'] = old_steel('pinsteel', .22)
    M['blued'] = old_steel('blued', .30, .75)


# ------------------------------------------------------------------ parts
def hand_screw(loc, parent, r=.20, face=-1, off=0., turn=0., slot=.050, mat='screw brass', proud=.018):
    """A countersunk head with a slot sawn by eye: off the middle by `off` of its radius."""
    ob = lathe('handscrew', [(0, proud), (r * .62, proud * .95), (r * .95, proud * .45), (r, -.01), (r * .8, -.12), (0, -.12)], M[mat], r=.008, seg=48, nf=2)
    cut = add('cut', *box(.10, r * 3, slot), None, smooth=False); cut.location = (proud + .012, 0, off * r)
    md = ob.modifiers.new('b', 'BOOLEAN'); md.object = cut; md.operation = 'DIFFERENCE'; md.solver = 'EXACT'
    bm = bmesh.new(); bm.from_mesh(ob.data); bmesh.ops.remove_doubles(bm, verts=bm.verts, dist=1e-5)
    bmesh.ops.recalc_face_normals(bm, faces=bm.faces); bm.to_mesh(ob.data); bm.free()
    me = bpy.data.meshes.new_from_object(ob.evaluated_get(bpy.context.evaluated_depsgraph_get()))
    me.use_auto_smooth = True; me.auto_smooth_angle = radians(35)
    bpy.data.objects.remove(ob); bpy.data.objects.remove(cut)
    ob = bpy.data.objects.new('handscrew', me); COL.objects.link(ob)
    ob.location = loc; ob.rotation_euler = (radians(turn), 0, 0 if face > 0 else pi); ob.parent = parent
    return ob


def cross_outline():
    """Four arms, splayed at their ends, from a round middle."""
    pts = []
    for k in range(4):
        a = k * pi / 2
        def at(u, v): return (u * cos(a) - v * sin(a), u * sin(a) + v * cos(a))
        pts += [at(1.72, -.98), at(2.5, -.80), at(3.6, -.90), at(4.3, -1.15), at(ARM - .22, -1.45), at(ARM - .05, -1.40)]
        pts += [at(ARM + .12, -.7), at(ARM + .17, 0), at(ARM + .12, .7)]
        pts += [at(ARM - .05, 1.40), at(ARM - .22, 1.45), at(4.3, 1.15), at(3.6, .90), at(2.5, .80), at(1.72, .98)]
        b = a + pi / 4
        pts += [(2.02 * cos(b - .14), 2.02 * sin(b - .14)), (2.05 * cos(b), 2.05 * sin(b)), (2.02 * cos(b + .14), 2.02 * sin(b + .14))]
    return fillet(pts, .12, 4, True)


CROSS_SCREWS = [(4.55, .92), (4.55, -.92), (.92, 4.55), (-.92, 4.55), (-4.55, .92), (-4.55, -.92), (-.92, -4.28), (.92, -4.28)]
SLOTS = [(.02, 24), (.30, 71), (-.08, 132), (.05, 8), (-.34, 96), (.10, 158), (.28, 47), (-.04, 115)]     # off the middle, turned


def back(parent):
    prof = [(0, FACE), (5.75, FACE), (6.05, FACE + .05), (6.30, FACE + .22), (R, FACE + .42), (R, -1.62), (6.26, -1.52), (5.95, -1.52), (5.85, INNER), (0, INNER)]
    lathe('back', prof, M['walnut back'], r=.07, seg=256, parent=parent)
    o = [(-u, v) for u, v in cross_outline()]
    plate('cross', o, .10, M['cross'], bevel=.018, seg=2, parent=parent).location.x = FACE - .005
    for (u, v), (off, turn) in zip(CROSS_SCREWS, SLOTS):
        hand_screw((FACE - .055, -u, v), parent, off=off, turn=turn)
    for k in range(3):                       # the rivets of the disc, and the pin's own end
        a = radians(90 + 120 * k)
        rv = lathe('rivet', [(0, .012), (.10, .010), (.13, -.01), (.13, -.05), (0, -.05)], M['screw brass'], r=.01, seg=32, parent=parent)
        rv.location = (FACE - .058, .78 * cos(a), .78 * sin(a)); rv.rotation_euler.z = pi
    pe = lathe('pinend', [(0, .045), (.16, .04), (.25, .01), (.27, -.05), (0, -.05)], M['pin'], r=.02, seg=48, parent=parent)
    pe.location.x = FACE - .055; pe.rotation_euler.z = pi
    strap(parent); check_outside(parent)


def strap(parent):
    e = empty('strap'); e.parent = parent
    a = radians(STRAP_TURN)
    # in the back's own frame: u right, v up, seen from behind
    o = fillet([(-1.55, -.45), (1.55, -.45), (1.55, .45), (-1.55, .45)], .10, 3, True)
    turned = [(-(STRAP[0] + p * cos(a) - q * sin(a)), STRAP[1] + p * sin(a) + q * cos(a)) for p, q in o]
    plate('strap', turned, .09, M['strap'], bevel=.012, seg=2, parent=e).location.x = FACE - .012
    for p, q, t in ((-1.18, .10, 8), (-.62, -.12, 40), (.58, .12, -14), (1.16, -.08, 27)):
        n = rbox('nail', (.075, .26, .26), M['copper'], .028, parent=e)
        n.location = (FACE - .075, -(STRAP[0] + p * cos(a) - q * sin(a)), STRAP[1] + p * sin(a) + q * cos(a)); n.rotation_euler.x = radians(t)
    return e


def check_outside(parent):
    """A milled button in its slot, between the left and the lower arm."""
    sl = plate('slot', fillet([(2.55, -3.42), (2.85, -3.42), (2.85, -2.42), (2.55, -2.42)], .14, 4, True), .02, M['dark'], bevel=.004, parent=parent)
    sl.location.x = FACE - .002
    b = lathe('button', [(0, .30), (.20, .29), (.30, .22), (.31, .10), (.22, .04), (.22, -.05), (0, -.05)], M['old brass'], r=.03, seg=160, knurl=(28, .02, .09, .24, .27), parent=parent)
    b.location = (FACE, 2.70, -2.72); b.rotation_euler.z = pi


def foot(parent):
    w = .98
    leg = rbox('leg', (.26, 2 * w, 2.2), M['foot brass'], .07, parent=parent); leg.location = (FACE - .13, 0, -6.25)
    shelf = rbox('shelf', (2.75, 2 * w, .26), M['foot brass'], .07, parent=parent); shelf.location = (FACE + 1.10, 0, -7.24)
    V, F, n, m = [], [], 60, 14
    for i in range(n + 1):
        t = -1 + 2 * i / n
        half = .98 * (1 - .30 * abs(t) ** 2.2) * math.sqrt(max(0., 1 - abs(t) ** 14))
        thick = .30 * (1 - .62 * abs(t) ** 1.6)
        for j in range(m):
            a = 2 * pi * j / m
            x, z = math.copysign(abs(cos(a)) ** .55, cos(a)) * half, math.copysign(abs(sin(a)) ** .7, sin(a)) * thick / 2
            V.append((x, t * 4.6, z - .10 * (x / .98) ** 2 + thick / 2 * .6))
        if i: F += [((i - 1) * m + s, (i - 1) * m + (s + 1) % m, i * m + (s + 1) % m, i * m + s) for s in range(m)]
    F += [tuple(range(m)), tuple(n * m + s for s in range(m))]
    f = add('foot', V, F, M['foot brass'], angle=40, parent=parent); f.location = (FACE + 1.45, 0, -7.50)
    for k, (y, z) in enumerate(((.52, -5.55), (-.52, -5.55), (.52, -6.02), (-.52, -6.02))):
        if k == 3: hand_screw((FACE - .265, y, z), parent, r=.19, off=0., turn=18, slot=.040, proud=.055)
        else: hand_screw((FACE - .262, y, z), parent, r=.17, off=(.2, -.1, .25)[k], turn=(66, 140, 12)[k])
    return f


def drum(parent):
    prof = [(0, 1.62), (1.45, 1.62), (1.62, 1.70), (1.95, 1.78), (2.15, 1.74), (2.25, 1.80), (4.75, 1.80), (4.90, 1.72), (5.20, 1.72), (5.32, 1.80), (5.85, 1.93), (6.18, 1.89),
            (R, 1.66), (R, 1.42), (6.22, 1.22), (3.05, 1.18), (3.0, 1.10), (3.0, -.64), (3.05, -.72), (6.22, -.76), (R, -.95), (R, -1.22), (6.22, -1.42), (2.9, -1.42), (2.8, -1.34), (0, -1.34)]
    lathe('drum', prof, M['walnut drum'], r=.06, seg=256, parent=parent)
    boss(parent)
    for s, which in ((1, 'a'), (-1, 'b')):
        knob(parent, s, which)


def boss(parent):
    lathe('boss', [(.34, 1.80), (1.10, 1.80), (1.22, 1.76), (1.30, 1.66), (1.30, 1.58), (.34, 1.58)], M['old brass'], r=.035, seg=160, closed=True, parent=parent)
    pe = lathe('pinend', [(0, 1.80), (.22, 1.79), (.30, 1.72), (.30, 1.5), (0, 1.5)], M['pin'], r=.03, seg=64, parent=parent)
    pe.location.x = -.02
    la = plate('latch', fillet([(-.26, -.62), (.26, -.62), (.34, .10), (.34, 1.02), (.22, 1.16), (-.22, 1.16), (-.34, 1.02), (-.34, .10)], .10, 4, True), .11, M['old brass'],
               bevel=.03, holes=[circ(.335, 48)], parent=parent)
    la.location.x = 1.855; la.rotation_euler.x = radians(-38)
    e = empty('thumb'); e.parent = parent; e.rotation_euler.x = radians(-38)
    for k in range(5):
        b = rbox('ridge', (.055, .44, .055), M['old brass'], .02, parent=e, seg=2); b.location = (1.925, 0, .62 + k * .095)
    for t in (100, 220, 340):
        hand_screw((1.80, .92 * cos(radians(t)), .92 * sin(radians(t))), parent, r=.11, face=1, off=.1, turn=t, slot=.034)


KNOB = [(0, 0), (.33, 0), (.36, .06), (.36, .14), (.26, .25), (.245, .36), (.33, .42), (.345, .47), (.33, .52), (.27, .56), (.33, .60), (.345, .65), (.33, .70), (.27, .76),
        (.36, .98), (.53, 1.36), (.625, 1.74), (.625, 2.0), (.55, 2.24), (.38, 2.42), (.18, 2.49), (0, 2.50)]


def knob(parent, s, which):
    ov = [(.52 * cos(t), s * KNOB_AT + 1.0 * sin(t)) for t in np.linspace(0, 2 * pi, 72, endpoint=False)]
    plate('knobplate', ov, .07, M['old brass'], bevel=.018, seg=2, parent=parent).location.x = 1.81
    for d in (-.74, .74):
        hand_screw((1.85, 0, s * KNOB_AT + d), parent, r=.105, face=1, off=.2 * s, turn=50 * d + 20 * s, slot=.034)
    prof = KNOB if which == 'a' else [(q, x + (.02 if .55 < x < 1. else 0.)) for q, x in KNOB]
    k = lathe('knob', prof, M['tusk ' + which], r=.035, parent=parent, nf=4, seg=160); k.location = (1.88, 0, s * KNOB_AT)
    k.rotation_euler.x = radians(40 if which == 'a' else 200)
    c = lathe('collar', [(.16, 0), (.30, 0), (.30, .05), (.24, .09), (.16, .09)], M['old brass'], r=.015, seg=64, closed=True, parent=parent); c.location = (1.82, 0, s * KNOB_AT)
    rv = lathe('rivet', [(0, .06), (.09, .05), (.13, .0), (.13, -.05), (0, -.05)], M['pin'], r=.02, seg=32, parent=parent); rv.location = (1.88 + 2.50, 0, s * KNOB_AT)


def disc(parent):
    lathe('disc', [(.3, -1.56), (1.78, -1.56), (1.90, -1.60), (1.92, INNER - .02), (.3, INNER - .02)], M['disc'], r=.03, seg=200, closed=True, parent=parent)


def pin(parent):
    """A quarter of an inch thick; worn flat on its lower side where the outer bush has run."""
    V, F, n, seg, L = [], [], 90, 96, 3.25
    for i in range(n + 1):
        x = L * i / n
        rad = .3175 if x < L - .12 else .3175 - (x - L + .12) * .9
        if x < .30: rad += .16 * (1 - x / .30) ** 2
        if 2.62 < x < 2.78: rad -= .045                       # the latch's groove
        run = min(1., max(0., (x - 1.42) / .05)) * min(1., max(0., (2.34 - x) / .05))
        for s in range(seg):
            a = 2 * pi * s / seg
            q = rad - run * .034 * max(0., -sin(a)) ** .7
            V.append((x - 1.58, q * cos(a), q * sin(a)))
        if i: F += [((i - 1) * seg + s, (i - 1) * seg + (s + 1) % seg, i * seg + (s + 1) % seg, i * seg + s) for s in range(seg)]
    F.append(tuple(n * seg + s for s in range(seg)))
    return add('pin', V, F, M['pin'], angle=40, parent=parent)


def check_inside(parent):
    """Pawl on its post and the leaf that stands a little off it, on the floor of the dish."""
    e = empty('check'); e.parent = parent; e.location = (INNER, 0, 0)
    pw = plate('pawl', fillet([(-.62, -.14), (.10, -.20), (.62, -.04), (.66, .06), (.10, .20), (-.62, .16)], .06, 3, True), .16, M['blued'], bevel=.025, holes=[circ(.085, 32, -.36, .0)], parent=e)
    pw.location = (.14, 3.32, 1.05); pw.rotation_euler.x = radians(206)
    post = lathe('post', [(0, .30), (.07, .29), (.14, .24), (.14, .22), (.08, .21), (.08, 0), (0, 0)], M['screw brass'], r=.012, seg=48, parent=e)
    post.location = (0, 3.32 - .36 * cos(radians(206)), 1.05 - .36 * sin(radians(206)))
    leaf, th = [], .022
    for i in range(41):                      # bent near its screw, then straight: it barely bears on the pawl
        t = i / 40.; bend = .20 * max(0., 1 - abs(t - .24) / .14)
        leaf.append((4.62 - 1.62 * t, -.62 + 1.02 * t + .22 * sin(pi * t) - bend * .35))
    V, F = [], []
    for i, (y, z) in enumerate(leaf):
        j = min(i + 1, 40); k = max(i - 1, 0)
        d = math.hypot(leaf[j][0] - leaf[k][0], leaf[j][1] - leaf[k][1])
        ny, nz = -(leaf[j][1] - leaf[k][1]) / d, (leaf[j][0] - leaf[k][0]) / d
        for x, s in ((.03, -1), (.30, -1), (.30, 1), (.03, 1)): V.append((x, y + s * ny * th, z + s * nz * th))
        if i: F += [((i - 1) * 4 + s, (i - 1) * 4 + (s + 1) % 4, i * 4 + (s + 1) % 4, i * 4 + s) for s in range(4)]
    F += [(0, 1, 2, 3), tuple(40 * 4 + s for s in range(4))]
    add('leaf', V, F, M['blued'], angle=30, parent=e)
    bl = rbox('block', (.30, .62, .42), M['old brass'], .03, parent=e); bl.location = (.15, 4.66, -.86); bl.rotation_euler.x = radians(-32)
    hand_screw((.305, 4.66, -.86), e, r=.14, face=1, off=.22, turn=64, slot=.038)
    return e


def whole(drum_turn=28.):
    E = empty('wharfinger')
    back(E); foot(E)
    D = empty('drum'); D.parent = E; D.rotation_euler.x = radians(drum_turn); drum(D)
    return E


def opened():
    """The back alone, its pin and disc, the drum drawn off."""
    E = empty('wharfinger back')
    back(E); foot(E); disc(E); pin(E); check_inside(E)
    return E


# ------------------------------------------------------------------ the married box
def card_board(name, base, worn=.5):
    g = Nodes(name); c = g.coords(False)
    n, n2 = g.noise(c, .7, 7., .65), g.noise(c, 14., 4., .7)
    col = g.mix(n, tuple(x * .74 for x in base), base)
    edge = g.step(g.plus(g.step(g.n('NewGeometry', 7), .51, .57), g.mul(n2, .35)), .62, 1.0)
    col = g.mix(g.mul(edge, worn), col, (.40, .33, .235))
    stain = g.step(g.noise(c, .34, 5., .6), .56, .68)
    col = g.mix(g.mul(stain, .40), col, tuple(x * .45 for x in base))
    return g.bsdf(color=col, rough=.85, spec=.2, normal=g.bump(g.plus(n2, g.mul(g.noise(c, 40., 3.), .5)), .006, .5), flat=(base, .85, 0.))


def printed(name, image, w, h, paper=(.60, .525, .385)):
    """Paper with an ink mask over its X-Y plane, foxed."""
    g = Nodes(name); ax = apart(g); c = g.coords(False)
    n = g.noise(c, .8, 6., .6)
    col = g.mix(n, tuple(x * .84 for x in paper), paper)
    fox = g.step(g.noise(c, 2.6, 3., .5), .66, .72)
    col = g.mix(g.mul(fox, .45), col, (.28, .165, .07))
    e = picture(g, image, g.plus(g.mul(ax[0], 1 / w), .5), g.plus(g.mul(ax[1], 1 / h), .5))
    ink = g.mul(g.step(e, .25, .7), g.step(g.noise(c, 12., 5., .7), .22, .42, .45, .92))
    col = g.mix(ink, col, (.030, .024, .020))
    return g.bsdf(color=col, rough=.82, spec=.2, normal=g.bump(g.noise(c, 26., 4.), .005, .5), flat=(paper, .85, 0.))


def sheet(name, w, h, mat, bow=.0, nx=24, ny=24):
    V = [(-w / 2 + w * i / nx, -h / 2 + h * j / ny, bow * (1 - (2 * j / ny - 1) ** 2)) for j in range(ny + 1) for i in range(nx + 1)]
    F = [(j * (nx + 1) + i, j * (nx + 1) + i + 1, (j + 1) * (nx + 1) + i + 1, (j + 1) * (nx + 1) + i) for j in range(ny) for i in range(nx)]
    return add(name, V, F, mat, angle=180)


def tray_of_card(name, w, d, h, mat, th=.16):
    e = empty(name)
    rbox('floor', (w, d, th), mat, .05, parent=e).location = (0, 0, th / 2)
    for x in (-1, 1): rbox('wall', (th, d, h), mat, .05, parent=e).location = (x * (w - th) / 2, 0, h / 2)
    for y in (-1, 1): rbox('wall', (w, th, h), mat, .05, parent=e).location = (0, y * (d - th) / 2, h / 2)
    return e


def married_box():
    board = card_board('board', (.150, .098, .058))
    b = tray_of_card('box', 11.8, 11.8, 4.2, board)
    lid = tray_of_card('lid', 12.3, 12.3, 1.7, card_board('lidboard', (.135, .088, .054), .6))
    w, h = 8.6, 2.5
    t = list(text_tris('L. THACKWAY & DAUGHTER', .50, at=(0, .58), font=FONT, space=1.03)) + list(text_tris('2 CUSTOMS STEPS \u00b7 WENDLEMOUTH', .30, at=(0, .10), font=FONT, space=1.05))
    t += list(text_tris('WHARFINGER', .52, at=(-1.0, -.78), font=FONT, space=1.06)) + list(text_tris('No. 4', .52, at=(2.35, -.78), font=FONT))
    for y in (1.08, -1.10): t += stroke([(-4.1, y), (4.1, y)], .035, .035)
    for x in (4.1, -4.1): t += stroke([(x, -1.10), (x, 1.08)], .035, .035)
    lab = sheet('label', w, h, printed('labelpaper', mask_image('label', raster(t, w, h, 110, 1)), w, h, (.56, .47, .325)))
    lab.parent = b; lab.rotation_euler = (radians(90), 0, 0); lab.location = (0, -5.91, 2.15)
    return b, lid


LIST = ('Reels in walnut and brass, of our own make.', 'WHARFINGER, with latch, Nos. 3 to 6', 'The same, with check', 'LANDING, plain, no check, Nos. 3 to 5',
        'Knobs in bone, ivory or horn, to order.', 'Old reels put in order. Screws matched.')


def folded_list():
    w, h = 10.4, 15.2
    t = list(text_tris('L. THACKWAY & DAUGHTER', .62, at=(0, 5.9), font=FONT, space=1.03)) + list(text_tris('2 CUSTOMS STEPS \u00b7 WENDLEMOUTH', .34, at=(0, 5.25), font=FONT))
    t += list(text_tris('LIST FOR 1907', .66, at=(0, 4.0), font=FONT, space=1.15)) + stroke([(-2.4, 3.55), (2.4, 3.55)], .04, .04)
    for i, s in enumerate(LIST):
        t += list(text_tris(s, .34, at=(-4.5, 2.6 - i * 1.05), align='LEFT', font=FONT, space=1.0)) + stroke([(-4.5, 2.42 - i * 1.05), (4.5, 2.42 - i * 1.05)], .012, .012)
    m = printed('listpaper', mask_image('list', raster(t, w, h, 90, 1)), w, h)
    front = sheet('front', w, h, m, .22)
    under = sheet('under', w, h, printed('listpaper2', mask_image('none', np.zeros((8, 8), np.float32)), w, h, (.53, .455, .325)), .05)
    return front, under
