"""A part drawn to scale as SVG: pure functions of its sections, features and hardness.

`part_drawing.drawn` is the way in; `marks` is what it is told of hardness and heat, `look` how
large and in which colours. Nothing here knows a workshop, a steel or a page.
"""
