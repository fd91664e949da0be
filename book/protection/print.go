package protection

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// The sources of the comparison.
var (
	examDevices = working.Source{Title: "public licence exam lesson on overcurrent devices", Provenance: working.Read}
	question84  = working.Source{Title: "trade magazine, code question and answer 84", Provenance: working.Read}
	partXVII    = working.Source{Title: "trade magazine, Sizing Conductors, part XVII", Provenance: working.Read}
	linsley     = working.Source{Body: "T. Linsley", Title: "Basic Electrical Installation Work", Place: "pp. 250-251", Provenance: working.Read}
	necDevice   = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017 to 2023",
		Place: "240.4(D), as public summaries give it", Provenance: working.Read}
	factors = working.Source{Body: "IEE", Title: "BS 7671, Requirements for electrical installations",
		Place: "Tables 43.1 and 54.2 to 54.4, as public articles quote them", Provenance: working.Read}
	icea = working.Source{Body: "ICEA", Title: "P-32-382, short-circuit characteristics of insulated cable", Edition: "2007",
		Place: "as a cable specification sheet quotes it", Provenance: working.Read}
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

func limit(p wire.Protection) units.Value { return p.Limit }
func below(p wire.Protection) units.Value { return p.Below }

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
	nine := necWire(wire.AWG(12), wire.Insulation90)
	nine.Conductors = 9
	rows, err := rowsOf([]printedWire{
		{"nine of 12 AWG, 90 °C, in a raceway: device", nine, limit, "20", "A", question84, ""},
		{"10 AWG, 75 °C: greatest device", necWire(wire.AWG(10), wire.Insulation75), limit, "30", "A", examDevices, ""},
		{"500 kcmil, 75 °C: device not above 380 A", necWire(wire.Kcmil(500), wire.Insulation75), below, "350", "A", partXVII, ""},
	})
	if err != nil {
		return nil, err
	}
	f, err := wire.ShortCircuit(wire.FaultSource{Voltage: 230 * units.Volt, Resistance: 1.15 * units.Ohm}, wire.Conductor{}, 0)
	if err != nil {
		return nil, err
	}
	w, err := wire.Adiabatic(wire.ShortTime{Size: wire.Metric(1.5 * units.SquareMillimetre), Core: wire.CorePVC70, Current: f.Current,
		Time: units.Some(0.4 * units.Second)})
	return append(rows,
		weave.Row{What: "fault current, 230 V over a loop of 1.15 Ω", Ours: f.Current, Printed: units.MustPrinted("200", "A"), Source: linsley},
		weave.Row{What: "least area for it, opened in 0.4 s", Ours: w.MinArea, Printed: units.MustPrinted("1.10", "mm²"), Source: linsley},
	), err
}

// printedLimits compares with limits of the code.
func printedLimits() ([]weave.Row, error) {
	return rowsOf([]printedWire{
		{"NEC, 18 AWG, greatest device", necWire(wire.AWG(18), wire.Insulation90), limit, "7", "A", necDevice, ""},
		{"NEC, 16 AWG, greatest device", necWire(wire.AWG(16), wire.Insulation90), limit, "10", "A", necDevice, ""},
		{"NEC, 14 AWG, greatest device", necWire(wire.AWG(14), wire.Insulation90), limit, "15", "A", necDevice, ""},
		{"NEC, 12 AWG, greatest device", necWire(wire.AWG(12), wire.Insulation90), limit, "20", "A", necDevice, ""},
		{"NEC, 10 AWG, greatest device", necWire(wire.AWG(10), wire.Insulation90), limit, "30", "A", necDevice, ""},
	})
}

// printedFactors compares k by its formula with tables, and with a standard
// that counts in circular mils.
func printedFactors() (rows []weave.Row, err error) {
	for _, p := range []struct {
		what           string
		initial, final float64 // in °C
		digits         string
	}{
		{"70 °C to 160 °C, thermoplastic core", 70, 160, "115"}, {"70 °C to 140 °C, the same above 300 mm²", 70, 140, "103"},
		{"90 °C to 160 °C, thermoplastic core of 90 °C", 90, 160, "100"}, {"90 °C to 250 °C, cross-linked core", 90, 250, "143"},
		{"60 °C to 200 °C, rubber", 60, 200, "141"}, {"180 °C to 350 °C, silicone", 180, 350, "132"},
		{"30 °C to 160 °C, separate conductor", 30, 160, "143"}, {"30 °C to 250 °C, separate, thermosetting", 30, 250, "176"},
	} {
		w, err := factorOf(p.initial, p.final)
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: "k, " + p.what, Ours: w.K, Printed: units.MustPrinted(p.digits, ""), Source: factors})
	}
	for _, p := range []struct {
		initial, final float64
		digits         string
	}{{90, 250, "0.07195"}, {105, 250, "0.06773"}} {
		w, err := factorOf(p.initial, p.final)
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{
			What: "A·√s per circular mil, " + units.Celsius(p.initial).String() + " to " + units.Celsius(p.final).String(),
			Ours: w.K * units.RatioOf(units.CircularMil, units.SquareMillimetre), Printed: units.MustPrinted(p.digits, ""), Source: icea,
			Within: "1 %", Why: "it counts with 0.0297 and 234, a part in a hundred below the constants of the IEC",
		})
	}
	return rows, nil
}

// factorOf works k out by the formula.
func factorOf(initial, final float64) (wire.Withstand, error) {
	return wire.Adiabatic(wire.ShortTime{Size: wire.AWG(10), Initial: units.Celsius(initial), Final: units.Celsius(final), Current: 1 * units.Kiloampere})
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
