"""From light to file: the render itself, then denoising, lens and sensor, and the JPEG."""
import math
import os
import tempfile
import time

import bpy
import numpy as np

from settings import HEIGHT, SAMPLES, SCALE, SHOT, WIDTH, WORN

SC = bpy.context.scene
EXPOSURE = 1.0
QUALITY = 89


def nlm(img, alb, nor, h=.20, rad=5, pr=1, nw=.06):
    """Joint non-local means in log space, guided by albedo and normal passes."""
    L = np.log1p(img * 4.); out = np.zeros_like(L); ws = np.zeros(L.shape[:2], np.float32)
    def boxf(a):
        s = a.copy()
        for ax in (0, 1):
            b = s.copy()
            for k in range(1, pr + 1): b += np.roll(s, k, ax) + np.roll(s, -k, ax)
            s = b / (2 * pr + 1)
        return s
    for dy in range(-rad, rad + 1):
        for dx in range(-rad, rad + 1):
            S = np.roll(L, (dy, dx), (0, 1))
            d = boxf(((L - S) ** 2).mean(2)) / (h * h * .5)
            d += ((alb - np.roll(alb, (dy, dx), (0, 1))) ** 2).sum(2) / .0022
            d += ((nor - np.roll(nor, (dy, dx), (0, 1))) ** 2).sum(2) / nw
            w = np.exp(-np.minimum(d, 30)) * math.exp(-(dx * dx + dy * dy) / (2 * (rad * .6) ** 2))
            out += S * w[..., None]; ws += w
    return np.expm1(out / ws[..., None]) / 4.


def enlarge(a, w, h):
    """Catmull-Rom resampling to w x h, for pictures rendered small and finished at full size."""
    for ax, n in ((0, h), (1, w)):
        m = a.shape[ax]; x = (np.arange(n) + .5) * m / n - .5; i = np.floor(x).astype(int); t = (x - i).astype(np.float32)
        k = (-.5 * t + t ** 2 - .5 * t ** 3, 1 - 2.5 * t ** 2 + 1.5 * t ** 3, .5 * t + 2 * t ** 2 - 1.5 * t ** 3, -.5 * t ** 2 + .5 * t ** 3)
        shape = [1, 1, 1]; shape[ax] = n
        a = sum(k[j].reshape(shape) * np.take(a, np.clip(i + j - 1, 0, m - 1), ax) for j in range(4))
    return np.maximum(a, 0).astype(np.float32)


def blur(a, s):
    """Separable gaussian, numpy only."""
    k = np.exp(-np.arange(-3 * s, 3 * s + 1) ** 2 / (2. * s * s)); k /= k.sum()
    for ax in (0, 1):
        p = np.pad(a, [(3 * s, 3 * s) if i == ax else (0, 0) for i in range(3)], mode='edge')
        a = sum(w * np.take(p, range(i, i + a.shape[ax]), ax) for i, w in enumerate(k))
    return a.astype(np.float32)


def develop(out):
    """Render the scene and write it as a JPEG to `out`."""
    w, h = round(WIDTH * SCALE), round(HEIGHT * SCALE)
    r = SC.render; r.engine = 'CYCLES'; r.resolution_x, r.resolution_y, r.resolution_percentage = w, h, 100
    c = SC.cycles; c.device = 'CPU'; c.samples = SAMPLES; c.use_adaptive_sampling = True; c.adaptive_threshold = .04; c.adaptive_min_samples = 10
    c.use_denoising = False; c.max_bounces = 4; c.diffuse_bounces = 1; c.glossy_bounces = 3; c.transmission_bounces = 2
    c.sample_clamp_indirect = 2.5; c.sample_clamp_direct = 14.; c.caustics_reflective = c.caustics_refractive = False; c.blur_glossy = .6
    c.seed = 40; r.threads_mode = 'AUTO'; c.filter_width = 1.6
    vl = SC.view_layers[0]; vl.cycles.denoising_store_passes = True
    SC.view_settings.view_transform = 'Filmic'; SC.view_settings.look = 'Medium High Contrast'
    SC.view_settings.exposure = EXPOSURE
    tmp = tempfile.mkdtemp(prefix='photograph-')
    SC.use_nodes = True; t = SC.node_tree; t.nodes.clear()
    rl = t.nodes.new('CompositorNodeRLayers'); fo = t.nodes.new('CompositorNodeOutputFile'); fo.base_path = tmp
    fo.format.file_format = 'OPEN_EXR'; fo.format.color_depth = '32'; fo.file_slots.clear()
    co = t.nodes.new('CompositorNodeComposite'); t.links.new(rl.outputs['Image'], co.inputs[0])
    for nm, src in (('img', 'Image'), ('alb', 'Denoising Albedo'), ('nor', 'Denoising Normal')):
        fo.file_slots.new(nm); t.links.new(rl.outputs[src], fo.inputs[nm])
    t1 = time.time(); bpy.ops.render.render(); t2 = time.time()

    def load(nm):
        f = [x for x in os.listdir(tmp) if x.startswith(nm)][0]
        im = bpy.data.images.load(os.path.join(tmp, f)); im.colorspace_settings.name = 'Non-Color'
        a = np.empty(w * h * 4, np.float32); im.pixels.foreach_get(a); return a.reshape(h, w, 4)[..., :3]
    img, alb, nor = load('img'), load('alb'), load('nor')
    img = np.nan_to_num(img).clip(0, 60)
    # fireflies: hold each pixel to the third brightest of its neighbours
    lum = img.mean(2)
    nb = np.sort(np.stack([np.roll(lum, (dy, dx), (0, 1)) for dy in (-1, 0, 1) for dx in (-1, 0, 1) if dy or dx]), 0)[-3]
    img *= np.minimum(1, 1.2 * (nb + .02) / (lum + 1e-4))[..., None]
    nor = blur(nor, 1)
    keep = .15 if WORN else .10
    img = (1 - keep) * nlm(img, alb, nor, h=.21 if WORN else .32, nw=.06 if WORN else .12) + keep * img
    w, h = WIDTH, HEIGHT
    if SCALE != 1: img = np.expm1(enlarge(np.log1p(img * 4), w, h)) / 4
    # in-camera sharpening, done on the log image so highlights do not ring
    lg = np.log1p(img * 4); img = np.expm1(np.maximum(lg + .40 * (lg - blur(lg, 1)), 0)) / 4
    # lens and sensor: faint bloom, vignette, luminance-dependent grain
    img = img * .975 + .025 * blur(np.minimum(img, 12), max(2, w // 130))
    Y, X = np.mgrid[0:h, 0:w].astype(np.float32); q = ((X - w / 2) ** 2 + (Y - h / 2) ** 2) / ((w / 2) ** 2 + (h / 2) ** 2)
    img *= (1 - .26 * q ** 1.2)[..., None]
    rs = np.random.default_rng(9)
    gr = rs.normal(0, 1, (h, w, 1)) * .8 + rs.normal(0, 1, (h, w, 3)) * .45
    gr = (gr + .5 * np.roll(gr, 1, 0) + .5 * np.roll(gr, 1, 1)) / 1.22
    img = np.maximum(img + gr * .012 * np.sqrt(img + .0015), 0)
    img *= np.array([1.02, 1.0, .965], np.float32)          # a slightly warm white balance
    res = bpy.data.images.new('res', w, h, float_buffer=True)
    px = np.ones((h, w, 4), np.float32); px[..., :3] = img; res.pixels.foreach_set(px.ravel()); res.update()
    r.image_settings.file_format = 'JPEG'; r.image_settings.quality = QUALITY
    res.save_render(os.path.abspath(out), scene=SC)
    for f in os.listdir(tmp): os.remove(os.path.join(tmp, f))
    os.rmdir(tmp)
    print('%s: %.0f s rendering, %.0f s finishing' % (SHOT, t2 - t1, time.time() - t2))
