package harness

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// The sources of the comparison.
var (
	openstax = working.Source{Body: "OpenStax", Title: "College Physics", Place: "electromotive force: terminal voltage",
		Provenance: working.Read}
	kirchhoff = working.Source{Body: "OpenStax", Title: "College Physics", Place: "Kirchhoff's rules, two sources and three resistors",
		Provenance: working.Memory}
	kuphaldt = working.Source{Body: "T. R. Kuphaldt", Title: "Lessons In Electric Circuits, vol. I", Place: "batteries", Provenance: working.Read}
	// Not published: physics worked out in another way.
	quadratic = working.Source{Title: "physics, not print: the larger root of the quadratic", Provenance: working.Derived}
	oneLoop   = working.Source{Title: "physics, not print: the difference of voltages over the resistance of the loop", Provenance: working.Derived}
	ladder    = working.Source{Title: "physics, not print: the network of resistors, solved by itself", Provenance: working.Derived}
)

// numbersOf makes rows of one source.
func numbersOf(source working.Source, rows ...weave.Row) []weave.Row {
	for i := range rows {
		rows[i].Source = source
	}
	return rows
}

// number is what we and a source have for one thing.
func number(what string, ours units.Value, digits, unit string) weave.Row {
	return weave.Row{What: what, Ours: ours, Printed: units.MustPrinted(digits, unit)}
}

func quadraticByHand(p wire.Point) []weave.Row {
	return numbersOf(quadratic,
		number("voltage where it settles", p.Voltage, "10.483", "V"),
		number("current where it settles", p.Current, "171.7", "A"),
	)
}

func ladderByHand(f, ends *wire.Flow) []weave.Row {
	return numbersOf(ladder,
		number("battery 1, both leads at it", f.Shares[0].Current, "77.1", "A"),
		number("battery 2", f.Shares[1].Current, "52.5", "A"),
		number("battery 3", f.Shares[2].Current, "38.4", "A"),
		number("battery 4", f.Shares[3].Current, "32.0", "A"),
		number("battery 1, leads at opposite ends", ends.Shares[0].Current, "54.5", "A"),
		number("battery 2, leads at opposite ends", ends.Shares[1].Current, "45.5", "A"),
	)
}

func loopByHand(s wire.Share) []weave.Row {
	return numbersOf(oneLoop, number("current without any load", s.Idle, "45.0", "A"))
}

// printedCircuits compares with textbooks.
func printedCircuits() ([]weave.Row, error) {
	_, matched, err := solve(oneLoad(12*units.Volt, 500*units.Milliohm, 0, wire.Load{Resistance: units.Some(0.5 * units.Ohm)}))
	if err != nil {
		return nil, err
	}
	h, _, err := solve(oneLoad(12*units.Volt, 500*units.Milliohm, 0, wire.Load{}))
	if err != nil {
		return nil, err
	}
	most, err := h.MostPower("load", wire.Moment{})
	if err != nil {
		return nil, err
	}
	starter := wire.Load{Resistance: units.Some(0.05 * units.Ohm)}
	_, clean, err := solve(oneLoad(12*units.Volt, 10*units.Milliohm, 0, starter))
	if err != nil {
		return nil, err
	}
	_, corroded, err := solve(oneLoad(12*units.Volt, 10*units.Milliohm, 90*units.Milliohm, starter))
	if err != nil {
		return nil, err
	}
	_, cells, err := solve(row(5, wire.Battery{Voltage: 2 * units.Volt, Resistance: 0.2 * units.Ohm}, 0))
	if err != nil {
		return nil, err
	}
	two, err := twoSources()
	return append(two,
		append(numbersOf(openstax,
			number("12.0 V behind 0.500 Ω, load of 0.500 Ω: power", matched.Points[0].Power, "72.0", "W"),
			number("the most power that there is behind 0.500 Ω", most, "72.0", "W"),
			number("starter of 0.0500 Ω behind 0.0100 Ω: current", clean.Points[0].Current, "200", "A"),
			number("the same starter: power", clean.Points[0].Power, "2000", "W"),
			number("with 0.0900 Ω of corrosion: current", corroded.Points[0].Current, "80.0", "A"),
			number("with 0.0900 Ω of corrosion: voltage", corroded.Points[0].Voltage, "4.0", "V"),
			number("with 0.0900 Ω of corrosion: power", corroded.Points[0].Power, "320", "W"),
		), numbersOf(kuphaldt,
			number("five cells of 0.2 Ω side by side: resistance", cells.BankResistance, "0.04", "Ω"),
		)...)...), err
}

// oneLoad is a load on one bank over one cable.
func oneLoad(e units.Voltage, bank, cable units.Resistance, load wire.Load) wire.Network {
	return wire.Network{
		Batteries: oneBank(e, bank),
		Branches:  []wire.Branch{{Name: "load", Extra: cable, Load: load}},
	}
}

// twoSources is a textbook's circuit in which one source charges the other:
// 18 V behind 3.0 Ω and 45 V behind 2.0 Ω on 6.0 Ω.
func twoSources() ([]weave.Row, error) {
	_, f, err := solve(wire.Network{
		Batteries: []wire.Battery{
			{Name: "18 V", Voltage: 18 * units.Volt, Resistance: 3 * units.Ohm},
			{Name: "45 V", Voltage: 45 * units.Volt, Resistance: 2 * units.Ohm},
		},
		Links:    make([]wire.Link, 1),
		Branches: []wire.Branch{{Name: "load", Load: wire.Load{Resistance: units.Some(6 * units.Ohm)}}},
	})
	if err != nil {
		return nil, err
	}
	return numbersOf(kirchhoff,
		number("18 V and 45 V on 6 Ω: current of the load", f.Current, "4.75", "A"),
		number("18 V source, which is charged", f.Shares[0].Current, "-3.50", "A"),
		number("45 V source", f.Shares[1].Current, "8.25", "A"),
	), nil
}
