"""The sag in the middle of a simply supported beam under an even load, by the library indeterminatebeam.

Arguments: modulus of elasticity in N/mm2, second moment of area in mm4, span in mm, load in N/mm. Prints mm.
Leaves with 3 when a library is not there.
"""

import sys

try:
    from indeterminatebeam import Beam, DistributedLoadV, Support
except ImportError as missing:
    print(missing)
    sys.exit(3)

modulus, inertia, span, load = map(float, sys.argv[1:5])
beam = Beam(span, E=modulus, I=inertia)
beam.update_units("length", "mm")
beam.update_units("distributed", "N/mm")
beam.update_units("E", "MPa")
beam.update_units("I", "mm4")
beam.update_units("deflection", "mm")
beam.add_supports(Support(0, (1, 1, 0)), Support(span, (0, 1, 0)))
beam.add_loads(DistributedLoadV(-load, (0, span)))
beam.analyse()
print(float(beam.get_deflection(span / 2)))
