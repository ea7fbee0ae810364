"""Render one of the demo's photographs.

    blender -b -P scene.py -- --shot hero-found -o hero-found.jpg [--draft]

Meshes, lettering, wear, light and grain are all made here; see README.md.
"""
import os
import sys

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
sys.dont_write_bytecode = True

import settings  # noqa: E402  (empties the scene: first)
import materials  # noqa: E402
import views  # noqa: E402
import fixed_spool_views  # noqa: E402
import centrepin_views  # noqa: E402
import darkroom  # noqa: E402

materials.prepare()
{'sandling-tern': fixed_spool_views, 'wharfinger-5': centrepin_views}.get(settings.REEL, views).build(settings.VIEW)
darkroom.develop(settings.OUT)
