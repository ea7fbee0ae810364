"""Things that lie round the work: rule, cloth, lint, tray, window, cards, camera."""
import math
from math import cos, pi, radians, sin
import random

import bpy
from mathutils import Matrix, Vector, noise as mnoise

from lettering import FONT, mask_image, quad, raster, text_tris
from materials import Nodes, felt, plated, simple, wood
from mesh import COL, add, lathe, rbox, tube

SC = bpy.context.scene


def ruler(length=15.):
    t = []
    for i in range(int(length * 10) + 1):
        L = .75 if i % 10 == 0 else .5 if i % 5 == 0 else .32
        x = -length / 2 + i * .1
        t += quad(x - .010, .95 - L, x + .010, .95)
    for i in range(1, int(length)):
        t += list(text_tris(str(i), .42, at=(-length / 2 + i, -.22), font=FONT))
    t += list(text_tris('cm', .3, at=(-length / 2 + .5, -.75)))
    im = mask_image('ruler', raster(t, length + .6, 2.0, 110, 0))
    g = Nodes('rulermat'); o = g.n('TexCoord', 3); c = o
    n = g.noise(c, 2., 7., .65)
    col = g.mix(n, (.34, .33, .31), (.52, .51, .49))
    sx = g.t.nodes.new('ShaderNodeSeparateXYZ'); g.t.links.new(o, sx.inputs[0])
    tex = g.t.nodes.new('ShaderNodeTexImage'); tex.image = im; tex.extension = 'CLIP'
    g.t.links.new(g.n('CombineXYZ', 0, {0: g.plus(g.mul(sx.outputs[0], 1 / (length + .6)), .5), 1: g.plus(g.mul(sx.outputs[1], 1 / 2.0), .5)}), tex.inputs[0])
    rust = g.step(g.noise(c, 1.7, 8., .7), .60, .70)
    col = g.mix(g.mul(rust, .7), col, (.12, .06, .03))
    ink = g.mul(g.step(tex.outputs[0], .2, .7), g.step(g.noise(c, 6., 6., .7), .22, .40))
    col = g.mix(ink, col, (.015, .014, .013))
    m = g.bsdf(color=col, rough=g.lerp(n, .28, .5), metal=g.m('SUBTRACT', 1., ink), normal=g.bump(g.noise(c, 20., 2., .5, stretch=(.1, 8., 1.)), .01, .4))
    return rbox('ruler', (length + .6, 2.0, .1), m, .03)


def ground(mat, z=0., size=240):
    s = size / 2
    return add('ground', [(-s, -s, z), (s, -s, z), (s, s, z), (-s, s, z)], [(0, 1, 2, 3)], mat, smooth=False)


def cloth(mat, w=60, h=60, z=.02, wrinkle=.25, loc=(0, 0)):
    V, F, n = [], [], 160
    for i in range(n + 1):
        for j in range(n + 1):
            x, y = -w / 2 + w * i / n, -h / 2 + h * j / n
            d = max(0, math.hypot(x, y) - 7) / 14
            q = mnoise.noise((x * .09 + y * .03, y * .06, 3.)) + .5 * mnoise.noise((x * .2 - y * .12, y * .17, 8.))
            V.append((x + loc[0], y + loc[1], z + wrinkle * max(0, q) * min(1, d) * 2.2))
    for i in range(n):
        for j in range(n):
            q = i * (n + 1) + j; F.append((q, q + n + 1, q + n + 2, q + 1))
    return add('cloth', V, F, mat, angle=180)


def nap(ob, count, length=.055, color=(.15, .15, .148)):
    """Short felt fibres over a mesh, lying every way; count per whole surface."""
    g = Nodes('fibre'); h = g.t.nodes.new('ShaderNodeHairInfo').outputs['Random']
    col = g.mix(h, tuple(x * .6 for x in color), tuple(min(1., x * 1.75) for x in color))
    b = g.n('BsdfDiffuse', 0, {'Color': col}); g.t.links.new(b, g.out.inputs[0])
    ob.data.materials.append(g.mat)
    md = ob.modifiers.new('nap', 'PARTICLE_SYSTEM'); p = md.particle_system.settings
    p.type = 'HAIR'; p.count = count; p.hair_length = length; p.hair_step = 3; p.emit_from = 'FACE'; p.use_even_distribution = True
    p.brownian_factor = .045; p.factor_random = .035; p.normal_factor = .012; p.tangent_factor = .0
    p.material = len(ob.data.materials); p.root_radius = .0045; p.tip_radius = .0025; p.radius_scale = 1.
    p.render_step = 3; p.display_step = 2
    md.particle_system.seed = 4


def lint(n, w, h, mat, z=.03, seed=3):
    """Short stray fibres lying about: cheap, and very photographic."""
    rr = random.Random(seed)
    for i in range(n):
        x, y, a = rr.uniform(-w, w), rr.uniform(-h, h), rr.uniform(0, 6.28)
        L = rr.uniform(.3, 1.1); k = rr.uniform(-2.5, 2.5)
        pts = []
        for s in range(10):
            pts.append((x, y, z + rr.uniform(0, .02)))
            x += L / 10 * cos(a); y += L / 10 * sin(a); a += k / 10
        tube('lint', pts, .006, mat, res=1)


def backdrop():
    """Out-of-focus workshop behind the bench."""
    wl = simple('wall', (.16, .165, .14), .9, noise=.25, scale=.08)
    add('wall', [(-160, 75, -10), (160, 75, -10), (160, 75, 120), (-160, 75, 120)], [(0, 1, 2, 3)], wl, smooth=False)
    br = simple('bgbrass', (.55, .36, .13), .35, metal=1.)
    gl = simple('bgglass', (.10, .055, .02), .12)
    wd = simple('bgwood', (.28, .12, .04), .45, noise=.2)
    tin = simple('bgtin', (.24, .06, .045), .4, noise=.2)
    def up(ob, x, y):
        ob.location = (x, y, 0); ob.rotation_euler.y = radians(-90); return ob
    up(lathe('bottle', [(0, 0), (2.2, 0), (2.3, .4), (2.3, 6), (1.6, 7.5), (.8, 8.2), (.8, 10), (1, 10.1), (1, 10.6), (0, 10.6)], gl, r=.4), -17, 33)
    up(lathe('oiler', [(0, 0), (2.6, 0), (2.6, .6), (2.3, 3.2), (.7, 4.6), (.35, 5.4), (.16, 12), (0, 12)], br, r=.4), 14, 36)
    up(lathe('tin', [(0, 0), (3.2, 0), (3.2, 4.6), (3.35, 4.7), (3.35, 5.4), (0, 5.5)], tin, r=.15), -29, 40)
    h = lathe('driver', [(0, 0), (.9, .1), (1.25, 1.), (1.1, 3.), (1.3, 6), (.9, 8), (.5, 8.6), (.35, 8.7), (.3, 16), (0, 16)], wd, r=.2); h.location = (-2, 24, 1.3); h.rotation_euler.z = radians(24)
    rb = rbox('crate', (30, 6, 13), wood('crate', rough=.7), .4); rb.location = (40, 52, 6.5)


def window(loc, target=(0, 0, 3), cols=2, rows=3, pane=(17, 17), gap=2.6, power=9000, color=(.93, .97, 1.)):
    """A sash window: separate area-light panes, so that reflections show glazing bars."""
    d = (Vector(target) - Vector(loc)).normalized(); q = d.to_track_quat('-Z', 'Y')
    for i in range(cols):
        for j in range(rows):
            li = bpy.data.lights.new('pane', 'AREA'); li.shape = 'RECTANGLE'
            li.size, li.size_y = pane; li.energy = power / (cols * rows); li.color = color
            ob = bpy.data.objects.new('pane', li); COL.objects.link(ob)
            off = Vector(((i - (cols - 1) / 2) * (pane[0] + gap), (j - (rows - 1) / 2) * (pane[1] + gap), 0))
            ob.location = Vector(loc) + q @ off; ob.rotation_euler = q.to_euler()


def card(loc, size, power, target=(0, 0, 3), color=(1, .93, .84)):
    li = bpy.data.lights.new('card', 'AREA'); li.shape = 'RECTANGLE'; li.size, li.size_y = size
    li.energy = power; li.color = color
    ob = bpy.data.objects.new('card', li); COL.objects.link(ob); ob.location = loc
    ob.rotation_euler = (Vector(target) - Vector(loc)).to_track_quat('-Z', 'Y').to_euler()


def world(strength=.35):
    w = bpy.data.worlds.new('w'); SC.world = w; w.use_nodes = True; t = w.node_tree
    tc = t.nodes.new('ShaderNodeTexCoord'); nz = t.nodes.new('ShaderNodeTexNoise')
    nz.inputs['Scale'].default_value = 2.2; nz.inputs['Detail'].default_value = 1.5
    rp = t.nodes.new('ShaderNodeValToRGB')
    rp.color_ramp.elements[0].position = .38; rp.color_ramp.elements[0].color = (.05, .045, .04, 1)
    rp.color_ramp.elements[1].position = .66; rp.color_ramp.elements[1].color = (.62, .58, .52, 1)
    t.links.new(tc.outputs[0], nz.inputs[0]); t.links.new(nz.outputs[0], rp.inputs[0])
    bg = t.nodes['Background']; t.links.new(rp.outputs[0], bg.inputs[0]); bg.inputs[1].default_value = strength


def camera(loc, target, focal=85, f=11., focus=None, roll=0):
    c = bpy.data.cameras.new('cam'); ob = bpy.data.objects.new('cam', c); COL.objects.link(ob); SC.camera = ob
    c.lens = focal; c.sensor_width = 36; c.clip_start = .5; c.clip_end = 1000
    ob.location = loc
    d = Vector(target) - Vector(loc)
    ob.rotation_euler = (d.to_track_quat('-Z', 'Y').to_matrix() @ Matrix.Rotation(radians(roll), 3, 'Z')).to_euler()
    c.dof.use_dof = True; c.dof.focus_distance = (Vector(focus or target) - Vector(loc)).dot(d.normalized())
    c.dof.aperture_fstop = f / 100.; c.dof.aperture_blades = 9
    return ob


