package protection

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// The sources of the comparison.
var (
	examFactors = working.Source{Title: "public electrician exam lesson on correction factors", Provenance: working.Read}
	examDevices = working.Source{Title: "public licence exam lesson on overcurrent devices", Provenance: working.Read}
	question84  = working.Source{Title: "trade magazine, code question and answer 84", Provenance: working.Read}
	partXVII    = working.Source{Title: "trade magazine, Sizing Conductors, part XVII", Provenance: working.Read}
	fourInPipe  = working.Source{Title: "practitioner forum thread on adjustment, inputs and product as written", Provenance: working.Read}
	linsley     = working.Source{Body: "T. Linsley", Title: "Basic Electrical Installation Work", Place: "pp. 250-251", Provenance: working.Read}
	necOld      = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "1990s to 2008",
		Place: "Table 310.16, as a public reprint has it", Provenance: working.Read}
	necNew = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "Table 310.15(B)(16), read through IRC 2018 Table E3705.1", Provenance: working.Read}
	necAir = working.Source{Body: "ICC", Title: "International Residential Code", Edition: "2021",
		Place: "Table E3705.2, correction for ambient temperature", Provenance: working.Read}
	necDevice = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017 to 2023",
		Place: "240.4(D), as public summaries give it", Provenance: working.Read}
	boat    = working.Source{Body: "US Coast Guard", Title: "33 CFR", Edition: "2001", Place: "183.425 Table 5", Provenance: working.Read}
	freeAir = working.Source{Body: "T. R. Kuphaldt", Title: "Lessons In Electric Circuits, vol. V", Place: "ampacity of copper in free air at 30 °C",
		Provenance: working.Read}
	aircraft = working.Source{Body: "FAA", Title: "AC 43.13-1B, Aircraft inspection and repair", Edition: "1998",
		Place: "table 11-3, breaker and fuse by wire size", Provenance: working.Read}
)

// necWire is a conductor of the NEC whose terminals do not limit it.
func necWire(size wire.Size, class wire.Insulation) wire.Installation {
	return wire.Installation{Rules: wire.NEC2017, Size: size, Insulation: class, Terminals: wire.Insulation105}
}

// A printedWire is a conductor and what print says of it.
type printedWire struct {
	what    string
	x       wire.Installation
	show    func(wire.Protection) units.Value
	digits  string
	unit    string
	source  working.Source
	differs string
}

func ampacity(p wire.Protection) units.Value  { return p.Capacity.Current }
func limit(p wire.Protection) units.Value     { return p.Limit }
func below(p wire.Protection) units.Value     { return p.Below }
func airFactor(p wire.Protection) units.Value { return p.Capacity.Ambient }

// rowsOf holds each wire against what print says.
func rowsOf(printed []printedWire) (rows []weave.Row, err error) {
	for _, p := range printed {
		circuit, err := wire.Protect(wire.Circuit{Installation: p.x, Load: 1 * units.Ampere})
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: p.what, Ours: p.show(circuit), Printed: units.MustPrinted(p.digits, p.unit),
			Source: p.source, Differs: p.differs})
	}
	return rows, nil
}

// printedExamples compares with published worked examples.
func printedExamples() ([]weave.Row, error) {
	attic := necWire(wire.AWG(10), wire.Insulation90)
	attic.Ambient = units.Fahrenheit(120)
	four := attic
	four.Conductors = 4
	nine := necWire(wire.AWG(12), wire.Insulation90)
	nine.Conductors = 9
	pipe := nine
	pipe.Conductors = 4
	rows, err := rowsOf([]printedWire{
		{"10 AWG, 90 °C, air at 120 °F", attic, ampacity, "32.8", "A", examFactors, ""},
		{"the same, four conductors as the lesson states", four, ampacity, "32.8", "A", examFactors,
			"a slip in the lesson: it states four conductors and leaves out the factor for them"},
		{"nine of 12 AWG, 90 °C, in a raceway", nine, ampacity, "21", "A", question84, ""},
		{"the same, greatest device", nine, limit, "20", "A", question84, ""},
		{"four of 12 AWG, 90 °C, in a raceway", pipe, ampacity, "24", "A", fourInPipe, ""},
		{"10 AWG, 75 °C: ampacity", necWire(wire.AWG(10), wire.Insulation75), ampacity, "35", "A", examDevices, ""},
		{"10 AWG, 75 °C: greatest device", necWire(wire.AWG(10), wire.Insulation75), limit, "30", "A", examDevices, ""},
		{"500 kcmil, 75 °C: ampacity", necWire(wire.Kcmil(500), wire.Insulation75), ampacity, "380", "A", partXVII, ""},
		{"500 kcmil, 75 °C: device not above it", necWire(wire.Kcmil(500), wire.Insulation75), below, "350", "A", partXVII, ""},
	})
	if err != nil {
		return nil, err
	}
	f, err := wire.ShortCircuit(wire.FaultSource{Voltage: 230 * units.Volt, Resistance: 1.15 * units.Ohm}, wire.Conductor{}, 0)
	return append(rows, weave.Row{What: "fault current, 230 V over a loop of 1.15 Ω", Ours: f.Current,
		Printed: units.MustPrinted("200", "A"), Source: linsley}), err
}

// printedTables compares with tables of ampacity and of devices.
func printedTables() ([]weave.Row, error) {
	hot := necWire(wire.AWG(10), wire.Insulation75)
	hot.Ambient = units.Celsius(50)
	boatWire := func(n int, class wire.Insulation) wire.Installation {
		return wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(n), Insulation: class}
	}
	return rowsOf([]printedWire{
		{"NEC, 14 AWG, 60 °C", necWire(wire.AWG(14), wire.Insulation60), ampacity, "15", "A", necNew, ""},
		{"NEC, 14 AWG, 60 °C, old edition", necWire(wire.AWG(14), wire.Insulation60), ampacity, "20", "A", necOld,
			"the edition: 14 and 12 AWG at 60 °C were lowered in 2011"},
		{"NEC, 1 AWG, 90 °C", necWire(wire.AWG(1), wire.Insulation90), ampacity, "145", "A", necNew, ""},
		{"NEC, factor for air at 50 °C, 75 °C insulation", hot, airFactor, "0.75", "", necAir, ""},
		{"NEC, 18 AWG, greatest device", necWire(wire.AWG(18), wire.Insulation90), limit, "7", "A", necDevice, ""},
		{"boat, 12 AWG, 105 °C", boatWire(12, wire.Insulation105), ampacity, "45", "A", boat, ""},
		{"boat, 6 AWG, 60 °C, in a textbook's free air", boatWire(6, wire.Insulation60), ampacity, "80", "A", freeAir, ""},
		{"boat, 2 AWG, 75 °C, in a textbook's free air", boatWire(2, wire.Insulation75), ampacity, "170", "A", freeAir, ""},
		{"boat, 12 AWG, 60 °C, in a textbook's free air", boatWire(12, wire.Insulation60), ampacity, "30", "A", freeAir,
			"two free-air tables: at 60 and 75 °C they are alike from 6 AWG up, and the boat's is the lower for thinner wires"},
	})
}

// printedFuses compares the limits of the RV table, which are from memory,
// with the fuses of another trade that builds light.
func printedFuses() ([]weave.Row, error) {
	rv := func(n int) wire.Installation {
		return wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(n), Insulation: wire.Insulation105}
	}
	const ours = "the RV table is stricter for wires this thin"
	return rowsOf([]printedWire{
		{"fuse for 18 AWG", rv(18), limit, "10", "A", aircraft, ours},
		{"fuse for 16 AWG", rv(16), limit, "10", "A", aircraft, ours},
		{"fuse for 14 AWG", rv(14), limit, "15", "A", aircraft, ""},
		{"fuse for 12 AWG", rv(12), limit, "20", "A", aircraft, ""},
		{"fuse for 10 AWG", rv(10), limit, "30", "A", aircraft, ""},
		{"fuse for 8 AWG", rv(8), limit, "50", "A", aircraft,
			"ours is the free-air value of 105 °C cable; an aircraft's wires are bundled"},
	})
}
