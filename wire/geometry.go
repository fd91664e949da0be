package wire

import (
	"math"

	"example.com/drawbar/units"
)

// American wire gauge is a geometric progression between two exact
// diameters, 0.005 inch for 36 AWG and 0.46 inch for 4/0, 39 steps apart, so
// that their ratio is 92 and a step is its 39th root.
// Source: ASTM B258-02, as quoted in an encyclopaedia article. Provenance: read.
const (
	gauge36Diameter = 0.005 * 0.0254 // metres
	gaugeRatio      = 92.0
	gaugeSteps      = 39.0
	gaugeOrigin     = 36
)

// Diameter returns the diameter of s as one solid round wire:
//
//	d = 0.005 in · 92^((36 - n)/39)
//
// for a gauge, and that of a circle of the nominal area otherwise. A stranded
// conductor is thicker over its strands. It is 0 for a Size that is not
// valid.
func (s Size) Diameter() units.Length {
	if s.system == gauge {
		return units.Length(gauge36Diameter * math.Pow(gaugeRatio, float64(gaugeOrigin-s.n)/gaugeSteps))
	}
	return units.Length(math.Sqrt(float64(s.Area()) * 4 / math.Pi))
}

// Area returns the metal cross-section of s: that of the round wire for a
// gauge, exact for kcmil. For a metric size it is the nominal area, which is
// a name: IEC 60228 limits the resistance, and a 50 mm² conductor may hold
// 45 mm² of copper. It is 0 for a Size that is not valid.
func (s Size) Area() units.Area {
	switch s.system {
	case gauge:
		d := float64(s.Diameter())
		return units.Area(math.Pi / 4 * d * d)
	case kcmil:
		return units.Area(s.n) * units.KilocircularMil
	case metric:
		return units.Area(s.n) / 100 * units.SquareMillimetre
	}
	return 0
}
