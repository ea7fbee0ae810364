"""Surfaces: plated metal with its wear, hard rubber, wood, felt, fibre, cork and old grease."""
import math
from math import pi

import bpy

from settings import DUNLIN, WORN


class Nodes:
    """Small wrapper so that node graphs read like expressions."""
    def __init__(s, name):
        s.mat = bpy.data.materials.new(name); s.mat.use_nodes = True
        s.t = s.mat.node_tree; s.t.nodes.clear()
        s.out = s.t.nodes.new('ShaderNodeOutputMaterial')

    def n(s, typ, outp=0, _in=None, **props):
        nd = s.t.nodes.new('ShaderNode' + typ)
        for k, v in props.items(): setattr(nd, k, v)
        for k, v in (_in or {}).items(): s.set(nd.inputs[k], v)
        return nd.outputs[outp]

    def set(s, sock, v):
        if hasattr(v, 'links'): s.t.links.new(v, sock)
        else:
            if isinstance(v, (tuple, list)) and len(v) == 3 and sock.type == 'RGBA': v = (*v, 1)
            sock.default_value = v

    def m(s, op, a, b=0.0):
        return s.n('Math', 0, {0: a, 1: b}, operation=op)
    def mul(s, a, b): return s.m('MULTIPLY', a, b)
    def plus(s, a, b): return s.m('ADD', a, b)
    def maxi(s, a, b): return s.m('MAXIMUM', a, b)

    def step(s, v, a, b, lo=0.0, hi=1.0):
        return s.n('MapRange', 0, {0: v, 1: a, 2: b, 3: lo, 4: hi}, interpolation_type='SMOOTHSTEP')

    def mix(s, f, a, b):
        return s.n('MixRGB', 0, {0: f, 1: a, 2: b})

    def lerp(s, f, a, b):
        return s.n('MapRange', 0, {0: f, 1: 0.0, 2: 1.0, 3: a, 4: b})

    def coords(s, per_object=True):
        c = s.n('TexCoord', 3)
        if per_object:
            r = s.t.nodes.new('ShaderNodeObjectInfo').outputs['Random']
            c = s.n('VectorMath', 0, {0: c, 1: s.n('CombineXYZ', 0, {0: s.mul(r, 31.), 1: s.mul(r, 17.), 2: s.mul(r, 53.)})}, operation='ADD')
        return c

    def noise(s, c, scale, detail=6., rough=.6, dist=0., stretch=None):
        if stretch: c = s.n('VectorMath', 0, {0: c, 1: stretch}, operation='MULTIPLY')
        return s.n('TexNoise', 0, {'Vector': c, 'Scale': scale, 'Detail': detail, 'Roughness': rough, 'Distortion': dist})

    def up(s):
        return s.n('SeparateXYZ', 2, {0: s.n('NewGeometry', 1)})

    def ao(s, d=.3):
        return s.n('AmbientOcclusion', 1, {'Distance': d}, samples=1)

    def bump(s, h, dist, strength=1., normal=None):
        i = {'Height': h, 'Distance': dist, 'Strength': strength}
        if normal is not None: i['Normal'] = normal
        return s.n('Bump', 0, i)

    def bsdf(s, flat=None, **kw):
        names = dict(color='Base Color', rough='Roughness', metal='Metallic', normal='Normal', spec='Specular',
                     coat='Clearcoat', coatr='Clearcoat Roughness', trans='Transmission', sss='Subsurface',
                     sssr='Subsurface Radius', sssc='Subsurface Color', sheen='Sheen', ior='IOR', aniso='Anisotropic')
        b = s.n('BsdfPrincipled', 0, {names[k]: v for k, v in kw.items()})
        if flat:                             # bounced rays see a plain stand-in: halves the render time
            q = s.n('BsdfPrincipled', 0, {'Base Color': flat[0], 'Roughness': flat[1], 'Metallic': flat[2]})
            lp = s.t.nodes.new('ShaderNodeLightPath').outputs['Is Camera Ray']
            b = s.n('MixShader', 0, {0: lp, 1: q, 2: b})
        s.t.links.new(b, s.out.inputs[0]); return s.mat


DUST = (.30, .265, .215)


def plated(name, wear=.5, base=(.60, .575, .54), under=(.70, .47, .19), rough=.16, pit=.5,
           verdigris=.5, dust=.5, brushed=None, grime=1., state=None,
           film=.45, rust=0., turned=.5, lobes=None, middle=False):
    """Plated or plain metal. The mask of lost plating is the same in both states.

    wear: share of plating gone where nothing else says so (0 = none).
    lobes: (degrees, half width, strength) round the part's own axis, where a hand bears on the crown of a ring.
    middle: worn along the middle of a pillar, where the thumb runs.
    """
    worn = WORN if state is None else state == 'worn'
    g = Nodes(name); c = g.coords()
    n1 = g.noise(c, .8, 9., .68, .4)
    n2 = g.noise(c, 4.5, 6., .72)
    edge = g.step(g.n('NewGeometry', 7), .512, .60)
    own = g.t.nodes.new('ShaderNodeSeparateXYZ'); g.t.links.new(g.n('TexCoord', 3), own.inputs[0])
    ang = g.m('ARCTAN2', own.outputs[2], own.outputs[1])
    rad = g.n('VectorMath', 1, {0: g.n('VectorMath', 0, {0: g.n('TexCoord', 3), 1: (0., 1., 1.)}, operation='MULTIPLY')}, operation='LENGTH')
    # rubbed along the turn: streaks in polar coordinates, and single scratches of bright metal
    polar = g.n('CombineXYZ', 0, {0: g.mul(ang, 1.4), 1: g.mul(own.outputs[0], 3.2), 2: g.mul(rad, 3.2)})
    streak = g.n('TexNoise', 0, {'Vector': polar, 'Scale': 2.1, 'Detail': 8., 'Roughness': .62, 'Distortion': .3})
    if lobes:
        field = 0.
        for (deg, half, strength) in lobes:
            lobe = g.step(g.m('COSINE', g.m('SUBTRACT', ang, deg * pi / 180)), math.cos(half * pi / 180), 1.0)
            field = g.maxi(field, g.mul(lobe, strength))
        crown = g.step(rad, 3.22, 3.60)
        bear = g.plus(g.mul(field, g.plus(.42, g.mul(crown, .60))), g.mul(crown, .12))
        wm = g.plus(g.plus(bear, g.mul(edge, .18)), g.plus(g.mul(g.plus(streak, -.5), .85), g.mul(g.plus(n1, -.5), .55)))
        wmask, thin = g.step(wm, .44, .54), g.step(wm, .24, .50)
    elif middle:
        ax = g.m('ABSOLUTE', own.outputs[0])
        bear = g.plus(g.step(ax, 1.9, .5, 0., .40), g.mul(g.step(ax, 2.02, 2.12), .12))
        wm = g.plus(bear, g.plus(g.mul(g.plus(n1, -.5), 1.5), g.mul(g.plus(streak, -.5), .55)))
        wmask, thin = g.step(wm, .38 - .2 * wear, .48 - .2 * wear), g.step(wm, .16 - .2 * wear, .45 - .2 * wear)
    elif wear > 0:
        wm = g.plus(g.mul(n1, .72), g.plus(g.mul(g.plus(streak, -.5), .5), g.plus(g.mul(n2, .12), g.mul(edge, .34))))
        thr = .98 - .40 * wear
        wmask, thin = g.step(wm, thr - .02, thr + .06), g.step(wm, thr - .16, thr + .03)
    else:
        wmask = thin = 0.0
    # pits: small isolated spots, clustered by a larger noise
    vo = g.n('TexVoronoi', 0, {'Vector': c, 'Scale': 15., 'Randomness': 1.})
    vo2 = g.n('TexVoronoi', 0, {'Vector': c, 'Scale': 37., 'Randomness': 1.})
    clus = g.step(g.noise(c, 1.9, 4., .6), .44, .68)
    pits = g.mul(g.maxi(g.step(vo, .36, .20), g.mul(g.step(vo2, .46, .26), .8)), g.mul(clus, pit))
    smudge = g.noise(c, 2.3, 5., .65, 1.2)
    scr = g.noise(c, 9., 3., .7, stretch=(1., 14., .9))
    scr2 = g.noise(c, 8., 3., .7, stretch=(13., 1., 2.))
    if worn:
        col = g.mix(smudge, tuple(x * .72 for x in base), tuple(x * y for x, y in zip(base, (.97, .90, .78))))
        ucol = g.mix(n2, tuple(x * y for x, y in zip(under, (.34, .30, .30))), tuple(x * .72 for x in under))
        r = g.lerp(smudge, rough + .08, rough + .34)
    else:
        col = g.mix(smudge, tuple(x * .93 for x in base), base)
        ucol = g.mix(n2, tuple(x * .82 for x in under), under)
        r = g.lerp(smudge, rough + .04, rough + .15)
    if not isinstance(thin, float):                                 # plating thins before it goes: a warm edge round every bare place
        col = g.mix(g.mul(thin, .38), col, tuple(.5 * (x + y) for x, y in zip(base, under)))
    col = g.mix(wmask, col, ucol)
    r = g.plus(r, g.mul(wmask, .10))
    metal = 1.0
    col = g.mix(g.mul(pits, .9 if worn else .42), col, (.035, .026, .02) if worn else (.16, .14, .115))
    r = g.plus(r, g.mul(pits, .35 if worn else .15))
    h = g.plus(g.mul(scr, .30), g.plus(g.mul(scr2, .25), g.plus(g.mul(pits, -1.6 if worn else -.8), g.mul(wmask, -.5))))
    # lathe marks: 1-D noise of the distance from the part's own axis
    turn = g.n('TexNoise', 0, {'W': rad, 'Scale': 26., 'Detail': 3., 'Roughness': .75}, noise_dimensions='1D')
    h = g.plus(h, g.mul(turn, turned))
    if worn and film > 0:                    # dried oil film, lifted along the lathe marks
        fm = g.mul(g.step(g.plus(g.noise(c, 1.4, 7., .66, .8), g.mul(turn, .22)), .52, .76), film)
        col = g.mix(fm, col, (.085, .048, .018)); r = g.lerp(fm, r, .42)
    if rust > 0:
        rm = g.mul(g.step(g.plus(g.noise(c, 2.6, 8., .74), g.mul(turn, .12)), .62, .74), rust if worn else rust * .25)
        col = g.mix(rm, col, (.10, .036, .014)); r = g.lerp(rm, r, .85)
    if brushed:
        h = g.plus(h, g.mul(g.noise(c, 18., 2., .5, stretch=brushed), .9))
    if worn:
        cre = g.step(g.ao(.32), .93, .45)
        gr = g.mul(g.step(g.plus(cre, g.mul(n2, .55)), .62, 1.05), .93 * grime)
        col = g.mix(gr, col, (.035, .024, .014)); r = g.lerp(gr, r, .62)
        metal = g.m('SUBTRACT', 1.0, g.mul(gr, .9))
        if verdigris > 0:
            vn = g.plus(g.noise(c, 2.7, 8., .72), g.plus(g.mul(cre, .16), g.mul(wmask, .06)))
            vm = g.step(vn, .77 - .17 * verdigris, .85 - .14 * verdigris)
            vcol = g.mix(g.noise(c, 22., 4.), (.05, .17, .13), (.24, .46, .37))
            col = g.mix(vm, col, vcol); r = g.lerp(vm, r, .93)
            metal = g.mul(metal, g.m('SUBTRACT', 1.0, vm))
            h = g.plus(h, g.mul(g.mul(vm, g.noise(c, 30., 4.)), 3.2))
        if dust > 0:
            d = g.mul(g.step(g.up(), .05, .95), g.step(g.plus(g.noise(c, 3.2, 7., .7), g.mul(g.noise(c, 45., 2.), .4)), .56, .96))
            d = g.mul(d, dust)
            col = g.mix(d, col, DUST); r = g.lerp(d, r, .95); metal = g.mul(metal, g.m('SUBTRACT', 1.0, d))
    k = .62 if worn else .9
    return g.bsdf(color=col, rough=r, metal=metal, normal=g.bump(h, .006, .50 if worn else .13),
                  flat=(tuple(x * k for x in base), rough + (.22 if worn else .04), .8 if worn else 1.))


def ebonite(name, engrave=None, R=3.2, face=-1, crack=None, marbled=False):
    """Hard rubber faded to olive-brown; found: bloom, dust, scuffs. engrave, crack: mask images over the face."""
    g = Nodes(name); c = g.coords(); o = g.n('TexCoord', 3)
    n1, n2 = g.noise(c, .9, 7., .6), g.noise(c, 6., 7., .7)
    scr = g.noise(c, 6., 2., .6, .15, stretch=(1., 9., .45)); scr2 = g.noise(c, 5., 2., .6, .15, stretch=(1., .6, 10.))
    fine = g.mul(g.maxi(g.step(scr, .62, .70), g.step(scr2, .63, .71)), g.step(g.noise(c, .8, 3.), .40, .62))
    if WORN:
        col = g.mix(g.step(n1, .35, .66), (.016, .013, .011), (.050, .040, .025))
        r = g.lerp(g.noise(c, 2.2, 5., .7, 1.5), .22, .50)
    else:
        col = g.mix(g.step(n1, .35, .66), (.017, .0135, .009), (.034, .026, .0145))
        r = g.lerp(g.noise(c, 2.2, 5., .7, 1.5), .16, .30)
    if marbled:                              # two rubbers milled together
        ve = g.noise(c, 1.6, 5., .55, 3.2); vein = g.maxi(g.step(ve, .47, .52), 0.)
        red = g.mix(vein, (.185, .018, .012), (.012, .007, .006)) if not WORN else g.mix(vein, (.150, .030, .019), (.028, .019, .014))
        col = g.mix(.9, col, red)
    col = g.mix(g.mul(fine, .5 if WORN else .14), col, (.14, .12, .10))
    h = g.plus(g.mul(n2, .25), g.mul(fine, -.8))
    if WORN:
        cre = g.step(g.ao(.30), .95, .5)
        gr = g.mul(g.step(g.plus(cre, g.mul(n2, .5)), .55, 1.05), .85)
        col = g.mix(gr, col, (.075, .056, .034)); r = g.lerp(gr, r, .8)
        d = g.mul(g.step(g.up(), -.25, .95), g.step(g.plus(g.noise(c, 2.6, 7., .7), g.mul(g.noise(c, 55., 2.), .35)), .40, .95))
        d = g.plus(g.mul(d, .50), g.mul(g.step(g.noise(c, 24., 3., .7), .60, .66), .32))
        col = g.mix(d, col, DUST); r = g.lerp(d, r, .95)
    nrm = None
    if engrave:
        sx = g.t.nodes.new('ShaderNodeSeparateXYZ'); g.t.links.new(o, sx.inputs[0])
        u = g.plus(g.mul(sx.outputs[1], face / (2 * R)), .5); v = g.plus(g.mul(sx.outputs[2], 1 / (2 * R)), .5)
        tex = g.t.nodes.new('ShaderNodeTexImage'); tex.image = engrave; tex.extension = 'CLIP'; tex.interpolation = 'Cubic'
        g.t.links.new(g.n('CombineXYZ', 0, {0: u, 1: v, 2: 0.}), tex.inputs[0])
        e = tex.outputs[0]
        em = g.step(e, .25, .75)
        # filler paint: mostly kept, chipped by noise; same chips in both states
        keep = g.step(g.plus(g.noise(c, 5.5, 6., .7), g.mul(g.noise(c, 1.2, 2.), .4)), .50, .60)
        pc = g.mix(g.noise(c, 9., 6., .7), (.30, .22, .11), (.50, .42, .27)) if WORN else \
            g.mix(g.noise(c, 9., 6., .7), (.60, .54, .40), (.70, .65, .52))
        fill = g.mix(keep, (.075, .055, .035) if WORN else (.012, .011, .010), pc)
        col = g.mix(em, col, fill); r = g.lerp(em, r, .62)
        nrm = g.bump(g.mul(e, -1.), .028, 1.0)
        if crack:
            tx = g.t.nodes.new('ShaderNodeTexImage'); tx.image = crack; tx.extension = 'CLIP'; tx.interpolation = 'Cubic'
            g.t.links.new(g.n('CombineXYZ', 0, {0: u, 1: v, 2: 0.}), tx.inputs[0])
            cm = g.step(tx.outputs[0], .10, .55)
            col = g.mix(g.mul(cm, .97), col, (.004, .003, .0025) if WORN else (.003, .0025, .002))
            lip = g.mul(g.step(tx.outputs[0], .02, .10), g.m('SUBTRACT', 1., cm))
            col = g.mix(g.mul(lip, .65), col, (.20, .165, .115)); r = g.lerp(cm, r, .9)
            nrm = g.bump(g.mul(tx.outputs[0], -1.), .02, .9, nrm)
    nb = g.bump(h, .004, .45, nrm) if nrm is not None else g.bump(h, .004, .45)
    return g.bsdf(color=col, rough=r, normal=nb, spec=.5, flat=((.035, .029, .022) if WORN else (.022, .017, .011), .35, 0.))


def wood(name, dark=(.075, .034, .014), light=(.27, .145, .065), rough=.5, plank=0., stain=True):
    g = Nodes(name); o = g.n('TexCoord', 3)
    sx = g.t.nodes.new('ShaderNodeSeparateXYZ'); g.t.links.new(o, sx.inputs[0])
    off = 0.
    if plank:
        idx = g.m('FLOOR', g.mul(sx.outputs[1], 1 / plank))
        off = g.n('TexWhiteNoise', 0, {'W': idx}, noise_dimensions='1D')
        o = g.n('VectorMath', 0, {0: o, 1: g.n('CombineXYZ', 0, {0: g.mul(off, 80.), 1: g.mul(off, 23.), 2: g.mul(off, 11.)})}, operation='ADD')
    warp = g.noise(o, .12, 3., .5, stretch=(.22, 1., 1.))
    ringc = g.n('VectorMath', 0, {0: o, 1: g.n('CombineXYZ', 0, {1: g.mul(warp, 9.)})}, operation='ADD')
    rings = g.noise(ringc, 1.25, 5., .55, stretch=(.035, 1., 1.))
    fib = g.noise(o, 9., 4., .7, stretch=(.05, 1.6, 1.))
    pores = g.step(g.noise(o, 13., 2., .5, stretch=(.07, 1.5, 1.)), .62, .70)
    f = g.plus(g.mul(g.step(rings, .32, .68), .75), g.mul(fib, .3))
    col = g.mix(f, dark, light)
    if plank: col = g.mix(g.mul(off, .45), col, tuple(x * .55 for x in light))
    col = g.mix(g.mul(pores, .7), col, tuple(x * .35 for x in dark))
    h = g.plus(g.mul(fib, .5), g.mul(pores, -1.2))
    st = g.step(g.noise(g.n('TexCoord', 3), .16, 6., .65), .50, .68)
    if stain:
        col = g.mix(g.mul(st, .55), col, (.035, .02, .011))
        sc = g.step(g.noise(g.n('TexCoord', 3), 2.4, 2., .5, .6, stretch=(.08, 2., 1.)), .70, .73)
        col = g.mix(g.mul(sc, .35), col, (.42, .30, .18)); h = g.plus(h, g.mul(sc, -1.5))
    r = g.plus(g.lerp(g.noise(g.n('TexCoord', 3), .5, 5., .7), rough - .1, rough + .18), g.mul(pores, .2))
    if plank:
        fr = g.m('FRACT', g.mul(sx.outputs[1], 1 / plank))
        gap = g.maxi(g.step(fr, .006, .001), g.step(fr, .994, .999))
        col = g.mix(gap, col, (.006, .004, .003)); h = g.plus(h, g.mul(gap, -12.))
    return g.bsdf(color=col, rough=r, normal=g.bump(h, .02, .6), spec=.4, flat=(tuple(.55 * a + .45 * b for a, b in zip(dark, light)), rough, 0.))


def felt(name, a=(.105, .108, .112), b=(.175, .175, .172)):
    g = Nodes(name); o = g.n('TexCoord', 3)
    n1, n2 = g.noise(o, 1.1, 6., .7), g.noise(o, 16., 5., .75, 1.5)
    n3 = g.noise(o, 34., 3., .7, 2.5)
    col = g.mix(g.plus(g.mul(n1, .4), g.mul(n2, .7)), a, b)
    lint = g.step(g.noise(o, 20., 2., .5, 3.), .72, .77)
    col = g.mix(g.mul(lint, .5), col, (.36, .35, .33))
    stain = g.step(g.noise(o, .22, 5., .6), .56, .70)
    col = g.mix(g.mul(stain, .45), col, (.055, .048, .040))
    h = g.plus(g.mul(n2, .6), g.plus(g.mul(n3, .9), g.mul(n1, .6)))
    return g.bsdf(color=col, rough=.97, spec=.08, sheen=.6, normal=g.bump(h, .10, 1.), flat=(tuple(.5 * (x + y) for x, y in zip(a, b)), .97, 0.))


def simple(name, color, rough=.5, metal=0., noise=.0, scale=5., bump=.0, **kw):
    g = Nodes(name); c = g.coords()
    n = g.noise(c, scale, 7., .68)
    col = g.mix(n, tuple(x * (1 - noise) for x in color), tuple(min(1, x * (1 + noise)) for x in color)) if noise else color
    k = dict(color=col, rough=g.lerp(n, rough * .8, min(1., rough * 1.25)), metal=metal, **kw)
    if bump: k['normal'] = g.bump(g.noise(c, scale * 3, 6., .7), bump, .8)
    k['flat'] = (color, rough, metal)
    return g.bsdf(**k)


def old_grease():
    """Mineral grease dried to a brown varnish: glossy where thick, dull and dusty where thin."""
    g = Nodes('grease'); c = g.coords(False)
    n, n2 = g.noise(c, 2.2, 7., .62), g.noise(c, 9., 6., .7)
    col = g.mix(g.step(n, .34, .66), (.020, .0085, .003), (.135, .058, .010))
    col = g.mix(g.mul(g.step(n2, .57, .70), .7), col, (.012, .008, .005))
    fl = g.step(g.noise(c, 42., 2., .6), .68, .74)
    col = g.mix(g.mul(fl, .7), col, (.10, .085, .06))
    return g.bsdf(color=col, rough=g.lerp(n2, .40, .78), spec=.20, sss=.10, sssr=(.10, .04, .012), sssc=col, coat=.04, coatr=.4,
                  normal=g.bump(g.plus(g.mul(n2, .8), g.mul(g.noise(c, 30., 4.), .25)), .03, .7), flat=((.09, .042, .012), .4, 0.))


def fresh_grease():
    g = Nodes('freshgrease'); c = g.coords(False)
    n = g.noise(c, 4., 5., .6)
    return g.bsdf(color=g.mix(n, (.20, .12, .035), (.34, .22, .07)), rough=.16, spec=.5, trans=.35, ior=1.48,
                  normal=g.bump(n, .03, .5), flat=((.26, .16, .05), .2, 0.))


def teak():
    """The handrail's old teak, oiled and a little darkened; grain along X. Found: hand-black in the pores."""
    g = Nodes('teak'); o = g.n('TexCoord', 3)
    o = g.n('VectorMath', 0, {0: o, 1: (0., .55, .8)}, operation='ADD')     # cut off the heart
    warp = g.noise(o, .5, 3., .5, stretch=(.3, 1., 1.))
    ringc = g.n('VectorMath', 0, {0: o, 1: g.n('CombineXYZ', 0, {1: g.mul(warp, 1.1), 2: g.mul(warp, .6)})}, operation='ADD')
    rings = g.n('TexWave', 1, {'Vector': g.n('VectorMath', 0, {0: ringc, 1: (.10, 1., 1.)}, operation='MULTIPLY'), 'Scale': 1.9,
                               'Distortion': 2.2, 'Detail': 3., 'Detail Scale': 1.4}, wave_type='RINGS', rings_direction='X', wave_profile='SAW')
    fib = g.noise(o, 22., 4., .7, stretch=(.045, 1.3, 1.))
    pores = g.step(g.noise(o, 34., 2., .5, stretch=(.05, 1.2, 1.)), .60, .68)
    f = g.plus(g.mul(g.step(rings, .05, .95), .62), g.mul(fib, .45))
    col = g.mix(f, (.115, .047, .015), (.30, .145, .050)) if not WORN else g.mix(f, (.070, .032, .013), (.185, .098, .042))
    col = g.mix(g.mul(pores, .8), col, (.022, .010, .004))
    n = g.noise(o, 1.4, 6., .65)
    col = g.mix(g.mul(g.step(n, .48, .72), .45), col, (.045, .022, .010))
    h = g.plus(g.mul(fib, .4), g.mul(pores, -1.2))
    r = g.plus(g.lerp(n, .26, .42) if not WORN else g.lerp(n, .40, .66), g.mul(pores, .2))
    if WORN:
        d = g.mul(g.step(g.up(), -.1, .95), g.step(g.plus(g.noise(o, 3.2, 7., .7), g.mul(g.noise(o, 55., 2.), .35)), .46, .98))
        col = g.mix(g.mul(d, .45), col, DUST)
    return g.bsdf(color=col, rough=r, normal=g.bump(h, .010, .55), spec=.45, coat=0. if WORN else .22, coatr=.28,
                  flat=((.16, .075, .027), .4, 0.))


def cork():
    """Bench-cut cork gone dry: dark lenticels, oil-stained, crumbling."""
    g = Nodes('cork'); c = g.coords()
    c = g.n('VectorMath', 0, {0: c, 1: g.n('VectorMath', 0, {0: g.n('TexNoise', 1, {'Vector': c, 'Scale': 14., 'Detail': 4.}), 1: (.16, .16, .16)}, operation='MULTIPLY')}, operation='ADD')
    gran = g.n('TexVoronoi', 1, {'Vector': c, 'Scale': 9., 'Randomness': 1.})
    cell = g.n('TexVoronoi', 0, {'Vector': c, 'Scale': 9., 'Randomness': 1.})
    n, n2 = g.noise(c, 1.6, 6., .65), g.noise(c, 20., 5., .7)
    tone = g.n('SeparateXYZ', 0, {0: gran})
    col = g.mix(tone, (.120, .066, .030), (.235, .138, .066))
    col = g.mix(g.mul(g.step(n2, .50, .72), .55), col, (.075, .036, .015))
    holes = g.step(g.noise(c, 10., 3., .6, 1.), .60, .66)
    col = g.mix(g.mul(holes, .9), col, (.018, .010, .006))
    col = g.mix(g.mul(g.step(n, .42, .68), .7), col, (.038, .023, .013))
    h = g.plus(g.mul(g.step(cell, .0, .5), .6), g.plus(g.mul(n2, .7), g.mul(holes, -1.8)))
    return g.bsdf(color=col, rough=.88, spec=.12, normal=g.bump(h, .05, 1.), flat=((.19, .105, .045), .9, 0.))


def red_fibre(greased):
    """Vulcanised red fibre, faintly laminated; greased: a wet sheen that pools."""
    g = Nodes('redfibre'); c = g.coords()
    n, n2 = g.noise(c, 1.5, 6., .65), g.noise(c, 16., 5., .7, stretch=(1., 1., .35))
    col = g.mix(n, (.135, .016, .009), (.215, .029, .015))
    col = g.mix(g.mul(g.step(n2, .46, .70), .5), col, (.080, .009, .006))
    h = g.plus(n2, g.mul(g.noise(c, 40., 3., .6), .5))
    film = g.step(g.noise(c, 2.1, 5., .6, .6), .36, .60) if greased else 0.
    return g.bsdf(color=col, rough=g.lerp(film, .58, .26), spec=.45, normal=g.bump(h, .012, .5),
                  coat=film, coatr=.16, flat=((.24, .03, .015), .4, 0.))


def cord(name, a, b):
    """Braided line: a fine bead along the cord, soiled in long patches."""
    g = Nodes(name); c = g.coords(False)
    n, n2 = g.noise(c, .9, 6., .68), g.noise(c, 26., 3., .7)
    col = g.mix(g.step(n, .3, .7), a, b)
    col = g.mix(g.mul(g.step(n2, .42, .66), .4), col, tuple(x * .55 for x in a))
    h = g.plus(g.n('TexVoronoi', 0, {'Vector': c, 'Scale': 34., 'Randomness': .4}), g.mul(n2, .5))
    return g.bsdf(color=col, rough=.75, sheen=.3, spec=.2, normal=g.bump(h, .02, .8), flat=(tuple(.5 * (x + y) for x, y in zip(a, b)), .7, 0.))


def marked(name, stamp, graved, half, centre=(0., 0.), **kw):
    """Plated metal whose underside (seen along -Z) carries stamped and graver-cut marks.

    stamp, graved: mask images over `half` = (half width along Y, half width along X), cm, about centre (y, x).
    """
    mat = plated(name, **kw); t = mat.node_tree
    g = Nodes.__new__(Nodes); g.mat, g.t = mat, t
    g.out = [n for n in t.nodes if n.type == 'OUTPUT_MATERIAL'][0]
    pb = [n for n in t.nodes if n.type == 'BSDF_PRINCIPLED' and n.inputs['Normal'].is_linked][0]
    o = t.nodes.new('ShaderNodeSeparateXYZ'); t.links.new(g.n('TexCoord', 3), o.inputs[0])
    u = g.plus(g.mul(g.plus(o.outputs[1], -centre[0]), .5 / half[0]), .5)
    v = g.plus(g.mul(g.plus(o.outputs[0], -centre[1]), .5 / half[1]), .5)
    under = g.step(g.n('SeparateXYZ', 2, {0: g.n('TexCoord', 1)}), -.2, -.5)      # the lower face alone
    col, nrm = pb.inputs['Base Color'].links[0].from_socket, pb.inputs['Normal'].links[0].from_socket
    for im, depth, ink, soft in ((stamp, .030, .86, .0), (graved, .018, .90, .0)):
        tx = t.nodes.new('ShaderNodeTexImage'); tx.image = im; tx.extension = 'CLIP'; tx.interpolation = 'Cubic'
        t.links.new(g.n('CombineXYZ', 0, {0: u, 1: v, 2: 0.}), tx.inputs[0])
        nrm = g.bump(g.mul(g.mul(tx.outputs[0], under), -1.), depth, .9, nrm)
        em = g.mul(g.mul(g.step(tx.outputs[0], .2, .8), under), ink)
        col = g.mix(em, col, (.030, .024, .017))
    t.links.new(col, pb.inputs['Base Color']); t.links.new(nrm, pb.inputs['Normal'])
    return mat


def grey_card():
    g = Nodes('greycard'); o = g.n('TexCoord', 3)
    n = g.noise(o, .22, 4., .6)
    col = g.mix(n, (.215, .215, .212), (.245, .245, .242))
    return g.bsdf(color=col, rough=.8, spec=.15, normal=g.bump(g.noise(o, 26., 4., .7), .01, .35), flat=((.23, .23, .228), .8, 0.))


M = {}

# where the right hand and the left palm have borne on the tail ring, in degrees of the YZ plane
PALM = ((108, 50, .72), (165, 34, .66), (22, 26, .50))


def prepare():
    """Make every material the views ask for by name."""
    M['nickel'] = plated('nickel', wear=.50, pit=.6, verdigris=.55, dust=.45)
    M['headrim'] = plated('headrim', pit=.6, verdigris=.55, dust=.45, lobes=((128, 30, .46), (50, 20, .40)))
    M['rimworn'] = plated('rimworn', pit=.7, verdigris=.5, dust=.4, lobes=PALM)
    M['footm'] = plated('footm', wear=.40, pit=.8, verdigris=.6, dust=.2, film=.45)
    M['pillar'] = plated('pillar', wear=.5, pit=.7, verdigris=.55, dust=.4, middle=True)
    M['frame'] = plated('frame', wear=.35, pit=.8, verdigris=.6, dust=.4)
    M['spool'] = plated('spool', wear=.25, base=(.55, .53, .50), rough=.26, pit=.6, verdigris=.4, dust=.4)
    M['screw'] = plated('screw', wear=.45, rough=.2, pit=.5, verdigris=.4, dust=.2, grime=1.)
    M['woodscrew'] = plated('woodscrew', wear=0., base=(.21, .20, .19), rough=.36, pit=.9, verdigris=0., dust=.2, film=.5, rust=1., state='found')
    M['brass'] = plated('brass', film=.75, wear=0., base=(.72, .47, .17), under=(.7, .47, .19), rough=.20, pit=.35, verdigris=.3, dust=.3)
    M['bronze'] = plated('bronze', film=.85, wear=0., base=(.68, .38, .17), rough=.24, pit=.25, verdigris=.2, dust=.2)
    M['steel'] = plated('steel', wear=0., base=(.36, .355, .35), rough=.24, pit=.5, verdigris=0., dust=.15, film=.6, rust=.7, turned=1.2)
    M['newscrew'] = plated('newscrew', wear=0., base=(.60, .575, .54), rough=.16, pit=0., verdigris=0., dust=0., state='left')
    M['tongue'] = plated('tongue', wear=0., base=(.56, .52, .43), rough=.26, pit=0., verdigris=0., dust=0., state='left', brushed=(1., 14., .3))
    M['ebonite'] = ebonite('ebonite')
    M['teak'] = teak()
    M['cork'] = cork()
    M['redfibre'] = red_fibre(False)
    M['redfibre wet'] = red_fibre(True)
    M['line'] = cord('line', (.24, .155, .060), (.40, .285, .125)) if WORN else cord('line', (.60, .565, .44), (.76, .72, .59))
    if DUNLIN:                               # silk, not linen
        M['line'] = cord('silk', (.050, .050, .030), (.115, .105, .060)) if WORN else cord('silk', (.028, .062, .040), (.060, .115, .075))
    M['lint'] = simple('lintm', (.36, .34, .30), .9)
    M['grease'] = old_grease()
    M['fresh grease'] = fresh_grease()
    M['composition'] = simple('composition', (.30, .245, .15) if WORN else (.46, .40, .27), .45 if WORN else .28, noise=.3, scale=2., spec=.5)
    M['grey'] = grey_card()
    M['dark'] = simple('dark', (.012, .011, .010), .8)
