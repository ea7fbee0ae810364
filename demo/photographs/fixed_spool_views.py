"""The shots of the fixed-spool made of two."""
from math import cos, pi, radians, sin

import bpy
from mathutils import Matrix, Vector

import fixed_spool as fs
import reel as r
from materials import M, simple, wood
from mesh import empty, flat, lathe, rbox
from props import card, ground, lint, ruler, window, world
from settings import WORN
from views import bench, felt_ground, look, on_grey


def build(view):
    fs.prepare()
    {'fixed-spool': hero, 'fixed-spool-cover': cover, 'fixed-spool-rotor': rotor, 'fixed-spool-foot': foot,
     'fixed-spool-gears': gears, 'fixed-spool-chrome': chrome, 'fixed-spool-spools': spools,
     'fixed-spool-springs': springs, 'fixed-spool-spring': spring, 'fixed-spool-roller': roller, 'fixed-spool-felts': felts}[view]()


def standing(turn):
    E = fs.whole(); E.location = (0, 0, -fs.FOOT + .05); E.rotation_euler.z = radians(turn); bench()
    return E


def light(side):
    """The window to the left of whoever looks from -Y (side 1) or from +Y (side -1)."""
    world(.30)
    window((-30 * side, -34 * side, 44), (0, 0, 4), power=62000)
    card((50 * side, -26 * side, 30), (46, 38), 9000, (0, 0, 4)); card((18 * side, 60 * side, 34), (50, 24), 15000, (0, 0, 4), (1, .97, .93))


def hero():
    standing(8); light(1)
    look((.45, -.6, 4.75), 36, 16, 15.6, 100, 15, focus=(3.2, -3.0, 4.4), roll=-.5)


def cover():
    standing(8); light(-1)
    look((-.75, .9, 4.35), 176, 12, 7.6, 100, 20, focus=(-1.2, 1.0, 4.4), roll=.6)


def rotor():
    standing(-20); light(1)
    look((4.4, -1.0, 5.4), 48, 26, 10.6, 100, 22, focus=(5.0, -3.0, 5.2))


def chrome():
    """The handle by itself, lying with its outer face up."""
    h = fs.handle(None, 0); h.rotation_mode = 'XYZ'; h.location = (1.9, -1.0, .30); h.rotation_euler = (0, radians(-90), radians(-24))
    on_grey((.30, -.25, .6), 4, 48, 5.0, f=60, focus=(0, -.2, .8))


def foot():
    """Upside down in a sandbag, a rule on a block at the foot's own height."""
    E = fs.whole(); E.rotation_euler = (radians(180), 0, 0); E.location = (0, 0, 4.6)
    bag = lathe('bag', [(0, 0), (6.5, .1), (7.6, .9), (7.4, 2.0), (5.6, 2.9), (3.2, 2.2), (0, 1.6)], simple('canvas', (.062, .070, .055), .92, noise=.3, scale=3., bump=.06), r=1.2, nf=8)
    bag.rotation_euler.y = radians(-90)
    ground(wood('bench', plank=17.))
    z = 4.6 - fs.FOOT
    block = rbox('block', (12.5, 3.0, z - .1), wood('block', (.18, .10, .045), (.42, .27, .14), stain=False), .08); block.location = (.2, -3.6, (z - .1) / 2)
    ru = ruler(10.); ru.location = (.1, -3.25, z - .03); ru.rotation_euler.z = radians(.8)
    world(.30); window((-46, 26, 44), (0, 0, 9), power=52000); card((46, -24, 50), (50, 40), 9000, (0, 0, 9))
    look((0, -.62, z), 1, 60, 8.5, 90, 26, focus=(0, -.4, z), roll=.4)


def gears():
    """The body on its handle side, the cover off."""
    felt_ground(count=90000, span=18)
    E = empty('laid'); fs.body(E, open_side=True)
    E.matrix_world = Matrix.Translation((0, 0, 1.6)) @ Matrix.Rotation(radians(8), 4, 'Z') @ Matrix.Rotation(radians(90), 4, 'X')
    fs.foot(E); bpy.context.view_layer.update()
    g = fs.main_gear(); m = E.matrix_world @ Matrix.Translation(fs.GEARBOX + Vector((0, .0, 0))) @ Matrix.Rotation(radians(90), 4, 'Z') @ Matrix.Rotation(radians(17), 4, 'X')
    g.matrix_world = m
    small = lathe('crank', [(0, .30), (.30, .29), (.34, .24), (.34, -.1), (0, -.1)], M['brass'], r=.02, seg=64)
    small.matrix_world = m @ Matrix.Translation((.18, .98, .30))
    for a in (45, 135, 225, 315):
        h = lathe('hole', [(0, .02), (.085, .02), (.11, .03), (.13, .0)], M['dark'], r=.01, seg=32)
        h.matrix_world = E.matrix_world @ Matrix.Translation(fs.GEARBOX + Vector((0, fs.HALF - .01, 0))) @ Matrix.Rotation(radians(90), 4, 'Z') @ Matrix.Translation((0, 2.25 * cos(radians(a)), 2.25 * sin(radians(a))))
    bpy.context.view_layer.update()
    r.gear_grease(m, amount=1.05)
    lint(14, 6, 6, M['lint'])
    world(.24); window((-40, 30, 36), (0, 0, 0), power=60000); card((40, -30, 36), (50, 40), 8000, (0, 0, 0))
    look((-.45, .35, 2.1), 8, 56, 8.4, 100, 24, focus=(0, -.3, 2.4), roll=.7)


def spools():
    felt_ground(count=120000, span=20)
    for (x, deep, turn, tilt) in ((-2.95, True, 24, 0), (2.9, False, -30, 0)):
        e = empty('spool'); e.parent = None
        fs.spool(e, 'acetal' if deep else 'alloy', deep, line=False)
        if deep: fs.drag_knob(e).location.x = 2.38
        e.matrix_world = Matrix.Translation((x, .3, .06)) @ Matrix.Rotation(radians(turn), 4, 'Z') @ Matrix.Rotation(radians(-90), 4, 'Y')
    ru = ruler(12.); ru.location = (0, -3.75, .12); ru.rotation_euler.z = radians(-1.6)
    world(.26); window((-42, 34, 40), (0, 0, 0), power=52000); card((40, -34, 40), (50, 40), 9000, (0, 0, 0)); card((6, 46, 30), (44, 16), 3000, (0, 0, 0), (1, .97, .93))
    look((0, -.5, 1.0), -3, 34, 12.4, 90, 20, focus=(0, -1.6, 1.4), roll=-.5)


def springs():
    a, b = fs.bail_spring(True)
    a.location = (-1.30, .62, .01); a.rotation_euler = (0, 0, radians(16))
    b.location = (-.22, .30, .045); b.rotation_euler = (0, 0, radians(-62))
    c, = fs.bail_spring(); c.location = (.92, .62, .01); c.rotation_euler = (0, 0, radians(24))
    on_grey((0, .02, .08), 0, 56, 4.5)


def spring():
    a, = fs.bail_spring(); a.location = (-.12, .42, .01); a.rotation_euler = (0, 0, radians(24))
    on_grey((.12, -.02, .08), 0, 56, 3.4)


def felts():
    for i, (x, y, z, turn, tilt) in enumerate(((-1.42, .30, .115, 10, 0), (1.30, .55, .115, 200, 0), (.10, -.72, .27, 75, 4))):
        flat(fs.felt_washer(i), x, y, z, turn, tilt)
    on_grey((-.05, .02, .1), 0, 56, 6.4)


def roller():
    m = M['roller'] if WORN else M['stainless']
    e = empty('roller')
    lathe('roller', fs.roller_profile(WORN), m, r=.015, closed=True, parent=e, seg=160)
    if WORN: lathe('groove', [(.300, -.045), (.282, -.02), (.2805, 0.), (.282, .02), (.300, .045)], M['sawn'], r=0, parent=e, seg=160)
    e.rotation_euler = (.6, 0, radians(-28)); e.location = (0, 0, .335)
    on_grey((0, .02, .27), 6, 34, 1.65, f=130)
