"""The shots: what stands where, how it is lit, and where the camera is."""
import math
from math import cos, pi, radians, sin

import bpy
import numpy as np
from mathutils import Matrix, Vector

import reel as r
from lettering import mask_image, quad, raster, text_tris
from materials import M, Nodes, felt, plated, simple, wood
from mesh import add, circ, empty, fillet, flat, lathe, plate, rbox, tube
from props import backdrop, camera, card, cloth, ground, lint, nap, ruler, window, world
from settings import RND, WORN

FOOT_Z = 4.53       # axis height when standing on the foot


def bench():
    ground(wood('bench', plank=17.))
    backdrop()


def build(view):
    {'hero': hero, 'tail': tail, 'plating': plating, 'gears': gears, 'drag': drag, 'knob': knob, 'tray': tray, 'foot': foot,
     'dunlin': dunlin, 'part-pinion': part_pinion, 'part-washers': part_washers, 'part-spring': part_spring,
     'part-tongue': part_tongue, 'part-screw': part_screw, 'part-lock': part_lock}[view]()


def look(target, azimuth, elevation, width, focal=100, f=16., focus=None, roll=0.):
    """Frame `width` cm across at the target, seen from azimuth (0 = from -Y, 90 = from +X) and elevation."""
    d = width * focal / 36.; a, e = radians(azimuth), radians(elevation)
    t = Vector(target)
    camera(tuple(t + d * Vector((sin(a) * cos(e), -cos(a) * cos(e), sin(e)))), target, focal, f, focus, roll)


# ------------------------------------------------------------------ the whole reel
def standing(turn):
    E = r.reel(); E.location = (0, 0, FOOT_Z * E.scale.x); E.rotation_euler.z = radians(turn); bench()
    return E


def hero_light():
    world(.24)
    window((-44, 14, 44), (0, 0, 4), power=60000)
    card((55, -30, 34), (50, 40), 5000, (0, 0, 4)); card((40, 58, 30), (40, 22), 17000, (0, 0, 4), (1, .97, .93))


def hero():
    standing(-6); hero_light()
    camera((23.5, -31.5, 15.0), (.95, -.35, 3.75), 103, 13, focus=(3.2, -2.0, 4.6), roll=-.6)


def tail_light():
    world(.26)
    window((-34, -48, 40), (0, 0, 4), power=52000)
    card((-34, 46, 26), (40, 24), 9000, (0, 0, 4))


def tail():
    standing(4); tail_light()
    camera((-28.5, -9.5, 8.6), (-2.6, .0, 4.36), 97, 13, focus=(-2.95, -.4, 4.3), roll=.8)


def plating():
    standing(4); tail_light()
    look((-2.0, -2.0, 6.95), -50, 28, 5.4, 105, 26, focus=(-2.35, -2.4, 7.0), roll=2.)


def knob():
    standing(-6); hero_light()
    look((5.42, -4.22, 2.12), 30, 24, 4.5, 105, 26, focus=(5.9, -4.6, 2.3), roll=1.)


def dunlin():
    standing(-14); hero_light()
    camera((24.5, -27.5, 13.5), (.75, -.15, 2.70), 138, 15, focus=(2.2, -1.2, 3.0), roll=-.4)


def foot():
    """Upside down in a sandbag, a rule on a block at the foot's own height."""
    E = r.reel()
    E.rotation_euler = (radians(180), 0, radians(90)); E.location = (0, 0, 4.1)
    bag = lathe('bag', [(0, 0), (6.5, .1), (7.6, .9), (7.4, 2.0), (5.6, 2.7), (3.2, 1.5), (0, 1.0)], simple('canvas', (.062, .070, .055), .92, noise=.3, scale=3., bump=.06), r=1.2, nf=8)
    bag.rotation_euler.y = radians(-90)
    ground(wood('bench', plank=17.))
    block = rbox('block', (14.5, 3.0, 8.1), wood('block', (.18, .10, .045), (.42, .27, .14), stain=False), .08); block.location = (.6, -4.75, 4.05)
    ru = ruler(12.); ru.location = (.25, -4.45, 8.16); ru.rotation_euler.z = radians(1.2)
    world(.30)
    window((-46, 26, 44), (0, 0, 8), power=52000)
    card((46, -24, 50), (50, 40), 9000, (0, 0, 8))
    look((.05, -1.25, 8.3), 1, 62, 12.1, 90, 26, focus=(0, -1.2, 8.40), roll=.4)


# ------------------------------------------------------------------ gears and drag
def felt_ground(colour=(.15, .15, .148), wrinkle=.18, count=150000, span=24):
    ground(wood('bench', plank=17.), -.3)
    cl = cloth(felt('felt'), wrinkle=wrinkle)
    pad = add('napped', [(-span / 2, -span / 2, .022), (span / 2, -span / 2, .022), (span / 2, span / 2, .022), (-span / 2, span / 2, .022)], [(0, 1, 2, 3)], cl.data.materials[0], smooth=False)
    nap(pad, count, color=colour)
    return cl


def gears():
    felt_ground(count=110000, span=15)
    e = r.main_gear(); m1 = Matrix.Translation((0, 0, .34)) @ Matrix.Rotation(radians(5), 4, 'X') @ Matrix.Rotation(radians(-90), 4, 'Y')
    e.matrix_world = m1
    p = r.pinion(worn=WORN); p.location = (2.25, -1.25, .50); p.rotation_euler = (radians(20), 0, radians(146))
    bpy.context.view_layer.update()
    if WORN:
        r.gear_grease(m1, amount=1.15)
        r.pinion_grease(p.matrix_world.copy())
        r.grease_strings([((1.62, -.62, .50), (1.95, -.95, .62)), ((1.50, -.86, .42), (1.86, -1.18, .50))])
        lint(24, 6, 6, M['lint'])
    world(.24); window((-40, 30, 36), (0, 0, 0), power=60000); card((40, -30, 36), (50, 40), 8000, (0, 0, 0))
    look((.50, -.36, .25), 8, 38, 5.7, 100, 24, focus=(.3, -.9, .5), roll=.7)


def drag():
    felt_ground(count=170000, span=22)
    z = .04; d = Vector((1, .22, 0)).normalized()

    def at(s, k=0.): return (d.x * s - d.y * k, d.y * s + d.x * k)
    ru = ruler(12.); ru.location = (.3, -2.95, .12); ru.rotation_euler.z = radians(11)
    seq = [('c', .12, 0), ('steel', .09, 2), ('c', .12, 0), ('steel', .09, 1), ('c', .12, 0), ('steel', .09, 2)]
    s, nth = -4.65, 0
    for i, (kind, th, ears) in enumerate(seq):
        if kind == 'steel':
            w = r.washer(1.15, .36, th, 'steel', ears=2 if ears == 2 else 0, key=ears == 1)
        elif WORN:
            w = r.cork_washer(1.15, .38, th + .04, 3 + nth, (0, .09, 0)[nth]); nth += 1
        else:
            w = r.washer(1.15, .36, th, 'redfibre wet')
        x, y = at(s, (.16, -.12)[i % 2]); flat(w, x, y, z + th / 2 + .03, RND.uniform(0, 360), RND.uniform(-1.0, 1.0))
        if kind == 'c' and WORN: r.crumbs([(x + .3, y - 1.0, .7, 26), (x + 1.0, y + .5, .4, 10)], seed=i)
        s += 1.86 if i else 1.98
    if WORN: lint(30, 9, 7, M['lint'])
    world(.26); window((-42, 34, 40), (0, 0, 0), power=62000); card((40, -34, 40), (50, 40), 9000, (0, 0, 0))
    card((6, 46, 30), (44, 16), 8000, (0, 0, 0), (1, .97, .93))
    look((.0, -1.05, .1), -6, 52, 12.4, 80, 18, focus=(-.2, -.6, .2), roll=-.8)


# ------------------------------------------------------------------ the tray
PLACES = (4, 3)      # columns, rows


def tray():
    ground(wood('bench', plank=17.), -.35)
    tm = plated('traysteel', wear=0., base=(.46, .46, .455), rough=.34, pit=.2, verdigris=0., dust=.10, grime=.4, film=.10, turned=.1)
    V, F, n = [], [], 200
    rings = [(0.02, 0), (.5, 0), (.9, 0), (.955, .02), (.985, .12), (.998, .35), (1.0, .9), (1.006, 1.28), (1.02, 1.36), (1.045, 1.38), (1.07, 1.36), (1.078, 1.30), (1.07, 1.25)]
    for (k, z) in rings:
        for s in range(n):
            a = 2 * pi * s / n; e = 2 / 7.
            V.append((13.0 * k * math.copysign(abs(cos(a)) ** e, cos(a)), 9.6 * k * math.copysign(abs(sin(a)) ** e, sin(a)), z))
    for i in range(len(rings) - 1):
        for s in range(n): F.append((i * n + s, i * n + (s + 1) % n, (i + 1) * n + (s + 1) % n, (i + 1) * n + s))
    F.append(tuple(range(n)))
    add('tray', V, F, tm, angle=50).location.z = -.3
    w, h, z = 23.2, 16.6, -.26
    cw, ch = w / PLACES[0], 4.55
    top = h / 2
    lines, spot = [], {}
    for i in range(1, PLACES[0]):
        lines += quad(-w / 2 + i * cw - .03, top - 3 * ch, -w / 2 + i * cw + .03, top - .25)
    for j in range(1, PLACES[1] + 1):
        lines += quad(-w / 2 + .25, top - j * ch - .03, w / 2 - .25, top - j * ch + .03)
    for j in range(PLACES[1]):
        for i in range(PLACES[0]):
            k = j * PLACES[0] + i + 1
            x, y = -w / 2 + i * cw, top - j * ch
            lines += list(text_tris(str(k), .95, at=(x + .75, y - 1.15)))
            spot[k] = (x + cw / 2 + .25, y - ch / 2)
    im = mask_image('places', raster(lines, w, h, 90, 1))
    mat = felt('liner', (.070, .078, .070), (.125, .135, .120))
    g = Nodes.__new__(Nodes); g.mat, g.t = mat, mat.node_tree
    pb = [q for q in g.t.nodes if q.type == 'BSDF_PRINCIPLED' and q.inputs['Normal'].is_linked][0]
    o = g.t.nodes.new('ShaderNodeSeparateXYZ'); g.t.links.new(g.n('TexCoord', 3), o.inputs[0])
    tx = g.t.nodes.new('ShaderNodeTexImage'); tx.image = im; tx.extension = 'CLIP'
    g.t.links.new(g.n('CombineXYZ', 0, {0: g.plus(g.mul(o.outputs[0], 1 / w), .5), 1: g.plus(g.mul(o.outputs[1], 1 / h), .5), 2: 0.}), tx.inputs[0])
    chalk = g.mul(g.step(tx.outputs[0], .25, .75), g.step(g.noise(g.n('TexCoord', 3), 7., 5., .7), .30, .46, .55, .92))
    g.t.links.new(g.mix(chalk, pb.inputs['Base Color'].links[0].from_socket, (.56, .55, .50)), pb.inputs['Base Color'])
    add('liner', [(-w / 2, -h / 2, -.27), (w / 2, -h / 2, -.27), (w / 2, h / 2, -.27), (-w / 2, h / 2, -.27)], [(0, 1, 2, 3)], mat, smooth=False)
    tray_parts(spot, z)
    ru = ruler(12.); ru.location = (-4.6, -6.95, z + .06); ru.rotation_euler.z = radians(.8)
    world(.26); window((-50, 26, 44), (0, 0, 0), power=62000); card((45, -30, 45), (50, 40), 10000, (0, 0, 0))
    camera((.6, -20, 41), (-.25, -.45, 0), 66, 14, focus=(0, -.2, .2), roll=.7)


def tray_parts(spot, z):
    """Twelve places in the order the parts came off."""
    def at(k, dx=0., dy=0.): return spot[k][0] + dx, spot[k][1] + dy

    def laid(mesh, k, dx, dy, spread=14):
        o = bpy.data.objects.new('scr', mesh); bpy.context.scene.collection.objects.link(o)
        x, y = at(k, dx, dy); o.location = (x, y, z + .17); o.rotation_euler = (RND.uniform(0, 6), radians(-5), radians(90 + RND.uniform(-spread, spread)))
    # 1 handle nut and its post, 2 star, 3 spacer and spring washer
    n = plate('nut', circ(.44, 6), .34, M['nickel'], bevel=.05, holes=[circ(.22, 40)]); flat(n, *at(1, -.9, -.2), z + .17, 14)
    b = lathe('post', [(0, -1.2), (.55, -1.2), (.55, -1.05), (.30, -1.0), (.30, .3), (.22, .35), (.22, 1.3), (0, 1.3)], M['steel'], r=.02, seg=64)
    b.location = (*at(1, 1.1, -.1), z + .55); b.rotation_euler.z = radians(62)
    flat(r.star(), *at(2, .3, -.2), z + .1, 21)
    flat(lathe('spacer', [(.36, 0), (.6, 0), (.6, .55), (.36, .55)], M['brass'], r=.03, closed=True), *at(3, -.8, .1), z + .01)
    flat(lathe('cupped', [(.33, .16), (.8, .0), (.83, .06), (.36, .22)], M['steel'], r=.01, closed=True), *at(3, 1.1, -.5), z + .01)
    # 4 the handle-plate screws
    for i in range(4): laid(r.screw_mesh(r=.19, h=.1, mat='screw', shank=.8), 4, -1.3 + .95 * i, .1)
    # 5 drag: metal washers, 6 drag: cork, 7 main gear, 8 pinion and yoke
    flat(r.washer(1.0, .36, .09, 'steel', ears=2), *at(5, -1.0, .1), z + .06, 30); flat(r.washer(1.0, .36, .09, 'steel', key=True), *at(5, .55, -.55), z + .15, 80, 4)
    flat(r.washer(1.0, .36, .09, 'steel', ears=2), *at(5, 1.55, .7), z + .20, 5, -3)
    for i, (dx, dy, gone) in enumerate(((-1.25, -.1, 0), (.35, .45, .09), (1.55, -.75, 0))):
        flat(r.cork_washer(.98, .38, .15, 3 + i, gone), *at(6, dx, dy), z + .10, 40 * i)
    flat(r.main_gear(), *at(7, .1, -.1), z + .25, 12)
    bpy.context.view_layer.update()
    x, y = at(7, .1, -.1)
    r.gear_grease(Matrix.Translation((x, y, z + .25)) @ Matrix.Rotation(radians(12), 4, 'Z') @ Matrix.Rotation(radians(-90), 4, 'Y'), amount=.9)
    p = r.pinion(worn=True); p.location = (*at(8, -1.2, -.1), z + .48); p.rotation_euler = (radians(20), 0, radians(50))
    yo = [(-1.5, -.25), (-1.5, .55), (-1.1, .62), (-.62, .55)]
    yo += [(.62 * cos(a), .30 + .52 * sin(a)) for a in np.linspace(pi, 2 * pi, 20)][1:-1]
    yo += [(.62, .55), (1.1, .62), (1.5, .55), (1.5, -.25), (.9, -.75), (-.9, -.75)]
    flat(plate('yoke', fillet(yo, .14, 3, True), .2, M['brass'], bevel=.03, holes=[circ(.13, 24, -1.25, .15), circ(.13, 24, 1.25, .15)]), *at(8, .95, -.1), z + .10, 100)
    # 9 bridge, 10 dog and its spring in two pieces, 11 tail-plate screws (one of them wrong), 12 bearing caps
    br = plate('bridge', fillet([(-1.7, -1.35), (1.7, -1.35), (1.9, .2), (1.1, 1.5), (-1.1, 1.5), (-1.9, .2)], .5, 6, True), .17, M['brass'], bevel=.025,
               holes=[circ(.5, 48, .2, -.2), circ(.14, 24, -1.35, -1.0), circ(.14, 24, 1.35, -1.0), circ(.14, 24, .9, 1.15), circ(.14, 24, -.9, 1.15), circ(.22, 24, -.85, .35)])
    flat(br, *at(9, .45, -.05), z + .09, -8)
    dog = plate('dog', fillet([(-.5, -.3), (.2, -.4), (.8, .3), (.5, .5), (.1, .15), (-.45, .3)], .12, 4, True), .16, M['steel'], bevel=.02, holes=[circ(.12, 24, -.2, -.05)])
    flat(dog, *at(10, -1.0, .1), z + .08, 30)
    a, b = r.dog_spring(True)
    a.location = (*at(10, .6, .9), z + .04); a.rotation_euler.z = radians(20); b.location = (*at(10, 1.2, -.5), z + .0); b.rotation_euler.z = radians(70)
    for i in range(5): laid(r.screw_mesh(r=.155, h=.075, mat='screw', slot=.045, shank=.55), 11, -1.7 + .75 * i, .1)
    w = r.wood_screw(); w.location = (*at(11, 2.0, .4), z + .235); w.rotation_euler = (.4, radians(-9.5), radians(84))
    c = lathe('cap', [(0, .5), (.35, .49), (.6, .42), (.66, .34), (.66, .1), (.72, .06), (.72, 0), (.5, 0), (.5, .3), (0, .3)], M['nickel'], r=.03, seg=240, knurl=(60, .035, .1, .36, .6)); flat(c, *at(12, -.7, -.1), z + .01)
    c = lathe('cap', [(0, .42), (.3, .41), (.46, .36), (.5, .3), (.5, .1), (.56, .06), (.56, 0), (.4, 0), (.4, .25), (0, .25)], M['nickel'], r=.03, seg=200, knurl=(48, .03, .1, .31, .45)); flat(c, *at(12, 1.1, -.5), z + .01)
    lint(26, 10, 7, M['lint'], z + .02)


# ------------------------------------------------------------------ single parts
def on_grey(target, azimuth, elevation, width, f=45, focus=None):
    ground(M['grey'], 0.); world(.34)
    window((-30, 26, 34), (0, 0, 0), power=36000); card((34, -26, 34), (40, 34), 9000, (0, 0, 0))
    look(target, azimuth, elevation, width, 100, f, focus)


def part_pinion():
    p = r.pinion(worn=WORN); p.rotation_euler = (radians(24), 0, radians(152)); p.location = (.28, -.1, .505)
    bpy.context.view_layer.update()
    if WORN: p.location.z = .495
    on_grey((0, .04, .36), 6, 36, 2.55)


def part_washers():
    for i, (x, y, gone, turn) in enumerate(((-1.35, .35, 0, 10), (1.15, .62, .09, 205), (.22, -.75, 0, 80))):
        z = .10 if i < 2 else .21
        ob = r.cork_washer(1.15, .38, .16, 3 + i, gone) if WORN else r.washer(1.15, .36, .13, 'redfibre')
        flat(ob, x, y, z, turn, (0, 0, 3.)[i])
    if WORN: r.crumbs([(-.9, -1.0, .8, 40), (1.6, -.6, .7, 40), (0, .9, .8, 24)])
    on_grey((-.05, .05, .1), 0, 58, 5.7)


def part_spring():
    if WORN:
        a, b = r.dog_spring(True)
        a.location = (-.42, .38, .035); a.rotation_euler = (0, 0, radians(62))
        b.location = (.15, -.34, -.02); b.rotation_euler = (radians(3), 0, radians(28))
        on_grey((-.10, .08, .05), 0, 56, 3.5)
    else:
        a, = r.dog_spring(False); a.location = (-.02, .42, .035); a.rotation_euler = (0, 0, radians(38))
        on_grey((.05, -.02, .05), 0, 56, 3.3)


def part_tongue():
    flat(r.click_tongue(), 0, 0, .07, -58, 0)
    on_grey((.07, -.02, .06), 8, 52, 2.0)


def part_screw():
    ob = r.wood_screw() if WORN else r.plate_screw()
    if WORN:                                 # lying on its head and its point
        ob.rotation_euler = (.5, radians(-9.5), radians(-38)); ob.location = (.44, -.30, .235)
        on_grey((-.03, .03, .12), 14, 40, 1.9, f=130)
    else:
        ob.rotation_euler = (.5, radians(-4.3), radians(-38)); ob.location = (.30, -.19, .155)
        on_grey((.01, .04, .09), 14, 40, 1.35, f=150)


def part_lock():
    ob = r.lock_screw(); ob.rotation_euler = (.9, radians(-9.5), radians(-38)); ob.location = (.13, -.09, .157)
    on_grey((.03, .0, .10), 14, 42, .88, f=170)
