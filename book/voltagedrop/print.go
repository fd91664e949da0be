package voltagedrop

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// The sources of the comparison.
var (
	faa = working.Source{Body: "FAA", Title: "AC 43.13-1B Change 1, Aircraft inspection and repair", Edition: "2001",
		Place: "chapter 11, wire selection", Provenance: working.Read}
	kuphaldt = working.Source{Body: "T. R. Kuphaldt", Title: "Lessons In Electric Circuits, vol. I",
		Place: "chapter 12", Provenance: working.Read}
	openstaxCollege = working.Source{Body: "OpenStax", Title: "College Physics", Place: "chapters 20 and 21", Provenance: working.Read}
	examLesson      = working.Source{Title: "public electrician exam lesson on voltage drop", Provenance: working.Read}
	abyc            = working.Source{Body: "ABYC", Title: "E-11, voltage drop formula, as a public page reprints it", Provenance: working.Read}
	nec8            = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "chapter 9 table 8, as a textbook prints it", Provenance: working.Read}
	floyd = working.Source{Title: "wire table after Floyd, Electric Circuit Fundamentals, 2nd ed., as a university page reproduces it",
		Provenance: working.Read}
	bs7671 = working.Source{Body: "BS", Title: "7671", Edition: "2018", Place: "table 4D5B, quoted by a public study article", Provenance: working.Read}
)

// An asked run and what print says of it.
type printed struct {
	what    string
	run     wire.Run
	show    func(wire.Drop) units.Value
	digits  string
	unit    string
	source  working.Source
	within  string
	why     string
	differs string
}

func volts(d wire.Drop) units.Value   { return d.Voltage }
func percent(d wire.Drop) units.Value { return d.Fraction }
func heat(d wire.Drop) units.Value    { return d.Heat }

// statedRun is a run of which print gives the resistance of the conductor.
func statedRun(i units.Current, stated units.ResistancePerLength, oneWay units.Length, v units.Voltage) wire.Run {
	return wire.Run{Current: i, OneWay: oneWay, Source: v, Conductor: wire.Conductor{Stated: units.Some(stated)}}
}

// printedExamples compares with published worked examples.
func printedExamples() ([]weave.Row, error) {
	exam := wire.Run{Current: 20 * units.Ampere, OneWay: 100 * units.Foot, Source: 120 * units.Volt,
		Conductor: wire.Conductor{Size: wire.AWG(8), Resistivity: units.Some(12.9 * units.OhmCircularMilPerFoot)}}
	fromCopper := exam
	fromCopper.Conductor = wire.Conductor{Size: wire.AWG(8)}
	var rows []weave.Row
	for _, p := range []printed{
		{what: "20 A over 53.5 ft there and 53.5 ft back, 0.44 Ω/kft", show: volts, digits: "0.942", unit: "V", source: faa,
			run: statedRun(20*units.Ampere, 0.44*units.OhmPerKilofoot, 53.5*units.Foot, 28*units.Volt)},
		{what: "20 A over 44 ft and back, 2.02 Ω/kft", show: volts, digits: "3.60", unit: "V", source: faa,
			within: "1.5 %", why: "read off a chart in the source",
			run: statedRun(20*units.Ampere, 2.02*units.OhmPerKilofoot, 44*units.Foot, 28*units.Volt)},
		{what: "20 A over 9.75 ft and back, 1.26 Ω/kft", show: volts, digits: "0.366", unit: "V", source: faa,
			differs: "misprint: the product of the numbers that the source prints is ours",
			run:     statedRun(20*units.Ampere, 1.26*units.OhmPerKilofoot, 9.75*units.Foot, 28*units.Volt)},
		{what: "cord of 0.0600 Ω, 5.00 A: drop", show: volts, digits: "0.300", unit: "V", source: openstaxCollege,
			run: statedRun(5*units.Ampere, 0.03*units.OhmPerMetre, 1*units.Metre, 120*units.Volt)},
		{what: "cord of 0.0600 Ω, 5.00 A: heat", show: heat, digits: "1.50", unit: "W", source: openstaxCollege,
			run: statedRun(5*units.Ampere, 0.03*units.OhmPerMetre, 1*units.Metre, 120*units.Volt)},
		{what: "8 AWG, 20 A, 100 ft one way, K 12.9: drop", show: volts, digits: "3.1", unit: "V", source: examLesson, run: exam},
		{what: "8 AWG, 20 A, 100 ft one way, K 12.9: part of 120 V", show: percent, digits: "2.6", unit: "%", source: examLesson, run: exam},
		{what: "the same from copper at 75 °C", show: volts, digits: "3.1", unit: "V", source: examLesson, run: fromCopper},
	} {
		d, err := wire.VoltageDrop(p.run)
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: p.what, Ours: p.show(d), Printed: units.MustPrinted(p.digits, p.unit), Source: p.source,
			Within: p.within, Why: p.why, Differs: p.differs})
	}
	sizes, err := printedSizes()
	return append(rows, sizes...), err
}

// printedSizes compares with published selections of a size.
func printedSizes() ([]weave.Row, error) {
	line, err := wire.SmallestSize(wire.Run{
		Current: 25 * units.Ampere, OneWay: 2300 * units.Foot, Source: 230 * units.Volt,
		Conductor: wire.Conductor{Resistivity: units.Some(10.09 * units.OhmCircularMilPerFoot)},
		Allowed:   units.Some(units.RatioOf(10*units.Volt, 230*units.Volt)),
	}, wire.Gauges())
	if err != nil {
		return nil, err
	}
	boat, err := wire.SmallestSize(wire.Run{
		Current: 10 * units.Ampere, OneWay: 10.5 * units.Foot, Source: 12 * units.Volt,
		Conductor: wire.Conductor{Resistivity: units.Some(10.75 * units.OhmCircularMilPerFoot)},
		Allowed:   units.Some(3 * units.Percent),
	}, wire.Gauges())
	return []weave.Row{
		{What: "25 A, 2300 ft each way, 10 V: least area", Ours: line.MinArea, Printed: units.MustPrinted("116035", "cmil"), Source: kuphaldt},
		{What: "25 A, 2300 ft each way, 10 V: size", OursText: line.Run.Conductor.Size.String(), PrintedText: "2/0 AWG", Source: kuphaldt},
		{What: "10 A, 21 ft there and back, 3 % of 12 V: size", OursText: boat.Run.Conductor.Size.String(), PrintedText: "12 AWG", Source: abyc},
	}, err
}

// printedTables compares the resistance of conductors with published tables.
func printedTables() ([]weave.Row, error) {
	solid := func(n int) wire.Conductor {
		return wire.Conductor{Size: wire.AWG(n), Strand: wire.Solid, Temperature: units.Celsius(20)}
	}
	var rows []weave.Row
	for _, p := range []struct {
		conductor   wire.Conductor
		digits      string
		source      working.Source
		within, why string
	}{
		{solid(18), "6.385", floyd, "", ""},
		{solid(10), "0.9989", floyd, "", ""},
		{solid(0), "0.09827", floyd, "", ""},
		{wire.Conductor{Size: wire.AWG(14)}, "3.14", nec8, "0.6 %", "the table has its own strands and rounding"},
		{wire.Conductor{Size: wire.AWG(10)}, "1.24", nec8, "", ""},
		{wire.Conductor{Size: wire.Aught(4)}, "0.0608", nec8, "", ""},
		{wire.Conductor{Size: wire.Kcmil(500)}, "0.0258", nec8, "0.6 %", "the table has its own strands and rounding"},
	} {
		r, err := wire.Resistance(p.conductor)
		if err != nil {
			return nil, err
		}
		what := p.conductor.Size.String() + " " + r.Conductor.Strand.String() + ", " + r.Conductor.Temperature.String()
		rows = append(rows, weave.Row{What: what, Ours: r.At, Printed: units.MustPrinted(p.digits, "Ω/kft"), Source: p.source,
			Within: p.within, Why: p.why})
	}
	metric, err := wire.Resistance(wire.Conductor{Size: wire.Metric(2.5 * units.SquareMillimetre), Temperature: units.Celsius(70)})
	return append(rows, weave.Row{What: "2.5 mm², 70 °C, both conductors for each metre", Ours: 2 * metric.At,
		Printed: units.MustPrinted("18", "mΩ/m"), Source: bs7671}), err
}
