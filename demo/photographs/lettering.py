"""Lettering and ruled marks: text objects triangulated, bent round arcs and rasterised to masks."""
from math import cos, pi, sin
import os

import bpy
import numpy as np

from mesh import COL

_URW = '/usr/share/fonts/opentype/urw-base35/'
_DEJAVU = '/usr/share/fonts/truetype/dejavu/'


def _font(name, fallback):
    path = _URW + name
    return path if os.path.exists(path) else _DEJAVU + fallback


FONT = _font('C059-Bold.otf', 'DejaVuSerif-Bold.ttf')
GRAVER = _font('C059-BdIta.otf', 'DejaVuSerif-BoldItalic.ttf')
STAMP = _DEJAVU + 'DejaVuSans-Bold.ttf'


def text_tris(s, size, bend=None, at=(0, 0), align='CENTER', font=FONT, space=1.12, turn=0.):
    """Triangles of a string, flat or bent round a circle: bend=(radius, 'top'|'bottom')."""
    cu = bpy.data.curves.new('t', 'FONT')
    cu.body, cu.size, cu.align_x = s, size, align
    cu.font = bpy.data.fonts.load(font, check_existing=True)
    cu.space_character = space
    ob = bpy.data.objects.new('t', cu); COL.objects.link(ob)
    me = ob.evaluated_get(bpy.context.evaluated_depsgraph_get()).to_mesh()
    me.calc_loop_triangles()
    P = np.array([v.co[:2] for v in me.vertices]).reshape(-1, 2)
    T = np.array([t.vertices[:] for t in me.loop_triangles]).reshape(-1, 3)
    bpy.data.objects.remove(ob)
    if bend:
        R, where = bend
        if where == 'top':
            a = pi / 2 - P[:, 0] / R; rr = R + P[:, 1]
        else:
            a = -pi / 2 + P[:, 0] / R; rr = R - P[:, 1]
        P = np.stack([rr * np.cos(a), rr * np.sin(a)], 1)
    if turn:
        P = P @ np.array([[cos(turn), sin(turn)], [-sin(turn), cos(turn)]])
    return (P + np.array(at))[T]


def raster(tris, w, h, px, blur=1):
    """Fill triangles (cm, centred) into a mask image; 3x supersampled."""
    ss = 3
    W, H = int(w * px) * ss, int(h * px) * ss
    img = np.zeros((H, W), np.float32)
    for t in tris:
        q = np.empty((3, 2)); q[:, 0] = (t[:, 0] + w / 2) * px * ss; q[:, 1] = (t[:, 1] + h / 2) * px * ss
        x0, y0 = np.floor(q.min(0)).astype(int); x1, y1 = np.ceil(q.max(0)).astype(int) + 1
        x0, y0 = max(x0, 0), max(y0, 0); x1, y1 = min(x1, W), min(y1, H)
        if x1 <= x0 or y1 <= y0: continue
        X, Y = np.meshgrid(np.arange(x0, x1) + .5, np.arange(y0, y1) + .5)
        d = []
        for i in range(3):
            a, b = q[i], q[(i + 1) % 3]
            d.append((b[0] - a[0]) * (Y - a[1]) - (b[1] - a[1]) * (X - a[0]))
        ins = ((d[0] >= 0) & (d[1] >= 0) & (d[2] >= 0)) | ((d[0] <= 0) & (d[1] <= 0) & (d[2] <= 0))
        img[y0:y1, x0:x1][ins] = 1
    img = img.reshape(H // ss, ss, W // ss, ss).mean((1, 3))
    for _ in range(blur):
        img = (img + np.roll(img, 1, 0) + np.roll(img, -1, 0) + np.roll(img, 1, 1) + np.roll(img, -1, 1)) / 5
    return img


def mask_image(name, arr):
    h, w = arr.shape
    im = bpy.data.images.new(name, w, h, float_buffer=True)
    im.colorspace_settings.name = 'Non-Color'
    px = np.ones((h, w, 4), np.float32); px[..., :3] = arr[..., None]
    im.pixels.foreach_set(px.ravel()); im.pack()
    return im


def quad(x0, y0, x1, y1):
    return [np.array([(x0, y0), (x1, y0), (x1, y1)]), np.array([(x0, y0), (x1, y1), (x0, y1)])]


def ring_tris(r0, r1, n=240):
    out = []
    for i in range(n):
        a, b = 2 * pi * i / n, 2 * pi * (i + 1) / n
        p = [(r0 * cos(a), r0 * sin(a)), (r1 * cos(a), r1 * sin(a)), (r1 * cos(b), r1 * sin(b)), (r0 * cos(b), r0 * sin(b))]
        out += [np.array([p[0], p[1], p[2]]), np.array([p[0], p[2], p[3]])]
    return out




def stroke(pts, w0, w1):
    """Triangles of a polyline that tapers from width w0 to w1."""
    out, n = [], len(pts) - 1
    for i in range(n):
        a, b = np.array(pts[i]), np.array(pts[i + 1])
        d = (b - a) / (np.linalg.norm(b - a) + 1e-9); p = np.array([-d[1], d[0]])
        u, v = (w0 + (w1 - w0) * i / n) / 2, (w0 + (w1 - w0) * (i + 1) / n) / 2
        a0, a1, b0, b1 = a - p * u, a + p * u, b - p * v, b + p * v
        out += [np.array([a0, b0, b1]), np.array([a0, b1, a1])]
    return out
