"""What a cut's force along the mandrel does to the seat."""

TIGHTENS, LOOSENS, NEITHER = "tightens", "loosens", "neither"
