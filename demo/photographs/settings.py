"""What one run renders: the shot, its state and size, read from the command line.

Importing this module empties Blender's scene, so it comes before every other import.
"""
import argparse
import random
import sys

import bpy

# shot: (view, state, reel, width, height, samples); in the order they are wanted
SHOTS = {
    'hero-found': ('hero', 'found', 'skerry-40', 1200, 900, 24),
    'hero-left': ('hero', 'left', 'skerry-40', 1200, 900, 24),
    'tail-found': ('tail', 'found', 'skerry-40', 1200, 900, 24),
    'tail-left': ('tail', 'left', 'skerry-40', 1200, 900, 24),
    'plating-worn': ('plating', 'found', 'skerry-40', 800, 600, 22),
    'grease-found': ('gears', 'found', 'skerry-40', 800, 600, 22),
    'gears-left': ('gears', 'left', 'skerry-40', 800, 600, 22),
    'drag-found': ('drag', 'found', 'skerry-40', 800, 600, 22),
    'drag-left': ('drag', 'left', 'skerry-40', 800, 600, 22),
    'knob': ('knob', 'left', 'skerry-40', 800, 600, 22),
    'part-pinion-old': ('part-pinion', 'found', 'skerry-40', 800, 600, 18),
    'part-pinion-new': ('part-pinion', 'left', 'skerry-40', 800, 600, 18),
    'part-washers-old': ('part-washers', 'found', 'skerry-40', 800, 600, 18),
    'part-washers-new': ('part-washers', 'left', 'skerry-40', 800, 600, 18),
    'part-spring-old': ('part-spring', 'found', 'skerry-40', 800, 600, 18),
    'part-spring-new': ('part-spring', 'left', 'skerry-40', 800, 600, 18),
    'part-tongue-new': ('part-tongue', 'left', 'skerry-40', 800, 600, 18),
    'part-screw-old': ('part-screw', 'found', 'skerry-40', 800, 600, 18),
    'part-screw-new': ('part-screw', 'left', 'skerry-40', 800, 600, 18),
    'part-lock-new': ('part-lock', 'left', 'skerry-40', 800, 600, 18),
    'tray': ('tray', 'found', 'skerry-40', 1200, 900, 24),
    'foot-found': ('foot', 'found', 'skerry-40', 1200, 900, 24),
    'dunlin-found': ('dunlin', 'found', 'dunlin-2', 1200, 900, 24),
    'dunlin-left': ('dunlin', 'left', 'dunlin-2', 1200, 900, 24),
    'sandling-found': ('fixed-spool', 'found', 'sandling-tern', 1200, 900, 24),
    'sandling-left': ('fixed-spool', 'left', 'sandling-tern', 1200, 900, 24),
    'sandling-cover': ('fixed-spool-cover', 'found', 'sandling-tern', 1200, 900, 24),
    'sandling-rotor': ('fixed-spool-rotor', 'found', 'sandling-tern', 800, 600, 22),
    'sandling-foot': ('fixed-spool-foot', 'found', 'sandling-tern', 800, 600, 22),
    'sandling-gears': ('fixed-spool-gears', 'found', 'sandling-tern', 800, 600, 22),
    'sandling-chrome': ('fixed-spool-chrome', 'found', 'sandling-tern', 800, 600, 22),
    'sandling-spools': ('fixed-spool-spools', 'left', 'sandling-tern', 800, 600, 22),
    'sandling-springs': ('fixed-spool-springs', 'left', 'sandling-tern', 800, 600, 18),
    'sandling-spring-new': ('fixed-spool-spring', 'left', 'sandling-tern', 800, 600, 18),
    'sandling-roller-old': ('fixed-spool-roller', 'found', 'sandling-tern', 800, 600, 18),
    'sandling-roller-new': ('fixed-spool-roller', 'left', 'sandling-tern', 800, 600, 18),
    'sandling-felt-old': ('fixed-spool-felts', 'found', 'sandling-tern', 800, 600, 18),
    'sandling-felt-new': ('fixed-spool-felts', 'left', 'sandling-tern', 800, 600, 18),
    'wharf-found': ('centrepin', 'found', 'wharfinger-5', 1200, 900, 24),
    'wharf-left': ('centrepin', 'left', 'wharfinger-5', 1200, 900, 24),
    'wharf-back': ('centrepin-back', 'found', 'wharfinger-5', 1200, 900, 24),
    'wharf-engraving': ('centrepin-engraving', 'found', 'wharfinger-5', 800, 600, 22),
    'wharf-knob': ('centrepin-knob', 'found', 'wharfinger-5', 800, 600, 22),
    'wharf-pin': ('centrepin-pin', 'found', 'wharfinger-5', 800, 600, 22),
    'wharf-check': ('centrepin-check', 'found', 'wharfinger-5', 800, 600, 22),
    'wharf-strap': ('centrepin-strap', 'found', 'wharfinger-5', 800, 600, 22),
    'wharf-screws': ('centrepin-screws', 'found', 'wharfinger-5', 800, 600, 22),
    'wharf-box': ('centrepin-box', 'found', 'wharfinger-5', 800, 600, 22),
}

_parser = argparse.ArgumentParser(description='Render one demo photograph.')
_parser.add_argument('--shot', choices=list(SHOTS), required=True)
_parser.add_argument('-o', '--out', required=True)
_parser.add_argument('--draft', action='store_true', help='480 pixels wide, 10 samples')
_parser.add_argument('--samples', type=int, help='override the samples per pixel')
_parser.add_argument('--scale', type=float, default=1., help='render at this share of the size, then enlarge')
_args = _parser.parse_args(sys.argv[sys.argv.index('--') + 1:])

SHOT, OUT = _args.shot, _args.out
VIEW, STATE, REEL, WIDTH, HEIGHT, SAMPLES = SHOTS[SHOT]
if _args.draft:
    WIDTH, HEIGHT, SAMPLES = 480, 360, 10
SAMPLES = _args.samples or SAMPLES
SCALE = _args.scale
WORN = STATE == 'found'
DUNLIN = REEL == 'dunlin-2'
RND = random.Random(40)          # one seed for both states: wear and turned slots stay put

bpy.ops.wm.read_factory_settings(use_empty=True)
