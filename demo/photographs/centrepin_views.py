"""The shots of the wharf centrepin."""
from math import cos, radians, sin

import bpy
from mathutils import Matrix

import centrepin as cp
from materials import M, wood
from props import card, ground, lint, window, world
from views import bench, felt_ground, hero_light, look


def build(view):
    cp.prepare()
    {'centrepin': hero, 'centrepin-back': back, 'centrepin-engraving': engraving, 'centrepin-knob': knob, 'centrepin-pin': pin,
     'centrepin-check': check, 'centrepin-strap': strap, 'centrepin-screws': screws, 'centrepin-box': box}[view]()


def standing(turn):
    E = cp.whole(); E.location = (0, 0, cp.FOOT); E.rotation_euler.z = radians(turn); bench()
    return E


def hero():
    standing(-8); hero_light()
    card((48, -44, 30), (46, 40), 6500, (2, 0, 7), (.95, .97, 1.))
    look((.60, -.2, 7.15), 56, 13, 19.2, 100, 14, focus=(2.2, -1.8, 7.2), roll=-.5)


def back_light():
    """Raking, from the upper left, so that stamps and slots throw shadows."""
    world(.26)
    window((-40, 34, 46), (0, 0, 6), power=66000)
    card((-46, -40, 30), (46, 36), 9500, (-2, 0, 6), (.95, .97, 1.)); card((-34, 46, 26), (40, 24), 7000, (0, 0, 4))


def back():
    standing(6); back_light()
    look((-2.3, -.15, 7.10), -72, 9, 19.2, 97, 15, focus=(-2.5, -.6, 7.2), roll=.6)


def strap():
    standing(6); back_light()
    look((-2.2, -2.6, 3.95), -70, 14, 6.6, 105, 26, focus=(-2.4, -3.1, 3.7), roll=.8)


def screws():
    standing(6); back_light()
    look((-2.1, -3.45, 7.62), -70, 12, 5.0, 105, 26, focus=(-2.3, -3.6, 7.6), roll=-1.)


def knob():
    standing(-8); hero_light()
    a = radians(28)
    look((2.9, -3.55 * sin(a) - .3, cp.FOOT + 3.55 * cos(a) - .1), 34, 14, 5.6, 105, 24, focus=(3.2, -2.2, cp.FOOT + 3.2), roll=1.)


def laid(turn=0.):
    """The back on its outer face, the inside up."""
    felt_ground(count=90000, span=22)
    E = cp.opened()
    E.matrix_world = Matrix.Translation((0, 0, 2.62)) @ Matrix.Rotation(radians(turn), 4, 'Z') @ Matrix.Rotation(radians(-90), 4, 'Y')
    bpy.context.view_layer.update()
    return E


def felt_light():
    world(.24); window((-40, 30, 36), (0, 0, 0), power=60000); card((40, -30, 36), (50, 40), 8000, (0, 0, 0))


def engraving():
    laid(-90); felt_light()
    look((0, -.05, 1.0), 4, 62, 5.6, 105, 26, focus=(0, -.4, 1.06), roll=.6)


def check():
    laid(-90); felt_light()
    look((3.9, .1, 1.05), 14, 56, 3.9, 105, 26, focus=(3.8, 0, 1.1), roll=-.6)


def pin():
    """From low down, across the disc, the worn side to the light."""
    laid(-52); felt_light()
    look((0, 0, 2.45), -52, 5, 5.0, 105, 24, focus=(0, 0, 2.7), roll=.4)


def box():
    ground(wood('bench', plank=17.))
    b, lid = cp.married_box()
    b.rotation_euler.z = radians(-14); b.location = (-3.6, 1.6, .02)
    lid.matrix_world = Matrix.Translation((10.2, 9.6, 1.72)) @ Matrix.Rotation(radians(9), 4, 'Z') @ Matrix.Rotation(radians(180), 4, 'X')
    front, under = cp.folded_list()
    under.location = (7.9, -2.5, .04); under.rotation_euler.z = radians(13)
    front.location = (7.75, -2.65, .16); front.rotation_euler.z = radians(11)
    lint(12, 12, 8, M['lint'])
    world(.26); window((-44, 20, 42), (0, 0, 3), power=62000); card((50, -34, 40), (50, 40), 9000, (0, 0, 3))
    look((2.4, 1.0, 1.4), 4, 34, 28.5, 85, 18, focus=(-2.5, -4.0, 2.2), roll=-.5)
