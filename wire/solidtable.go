package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Resistance of solid annealed copper at 20 °C by gauge, 4/0 first. The
// odd gauges are in it.
// Source: wire table after Floyd, Electric Circuit Fundamentals, 2nd ed., as a
// university page reproduces it; a second public table agrees. Provenance:
// read. That NBS Handbook 100, Copper Wire Tables (1966), has the same values
// is from memory: only its front matter could be opened.
var solidCopper20 = [...]ohmsPerKilofoot{
	0.04901, // 4/0
	0.06180, // 3/0
	0.07793, // 2/0
	0.09827, // 1/0
	0.1239,  // 1
	0.1563,  // 2
	0.1970,  // 3
	0.2485,  // 4
	0.3133,  // 5
	0.3951,  // 6
	0.4982,  // 7
	0.6282,  // 8
	0.7921,  // 9
	0.9989,  // 10
	1.260,   // 11
	1.588,   // 12
	2.003,   // 13
	2.525,   // 14
	3.184,   // 15
	4.016,   // 16
	5.064,   // 17
	6.385,   // 18
	8.051,   // 19
	10.15,   // 20
}

var solidTableSource = working.Source{
	Title: "wire table after Floyd, Electric Circuit Fundamentals", Edition: "2nd ed.",
	Place:      "solid copper at 20 °C, as a university page reproduces it; NBS Handbook 100 has the same values, from memory",
	Provenance: working.Read,
}

// solidResistance returns what the table of solid copper has for s at 20 °C;
// 0 if s is not in it.
func solidResistance(s Size) units.ResistancePerLength {
	n, isGauge := s.Gauge()
	row := n - thickestGauge
	if !isGauge || row >= len(solidCopper20) {
		return 0
	}
	return solidCopper20[row].perLength()
}
