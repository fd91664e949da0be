package usable

import (
	"example.com/drawbar/battery"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// The sources of the comparison.
var (
	kuphaldt = working.Source{Body: "T. R. Kuphaldt", Title: "Lessons In Electric Circuits, vol. I",
		Place: "chapter Batteries and power systems", Provenance: working.Read}
	openstax = working.Source{Body: "OpenStax", Title: "College Physics", Place: "electromotive force: terminal voltage",
		Provenance: working.Read}
	ordnance = working.Source{Body: "US Army Ordnance", Title: "subcourse OS 010", Place: "par. 14", Provenance: working.Read}
	navy10   = working.Source{Body: "US Navy", Title: "NAVEDTRA 14344", Place: "lead-acid batteries", Provenance: working.Read}
	navyTest = working.Source{Body: "US Navy", Title: "NAVEDTRA 14113", Place: "capacity test", Provenance: working.Read}
	nrel     = working.Source{Body: "NREL", Title: "TP-6A20-64641, test battery of its capacity model",
		Place: "60 Ah over 1 h, 93 Ah over 10 h, 100 Ah over 20 h", Provenance: working.Read}
	larminie = working.Source{Body: "Larminie and Lowry", Title: "Electric Vehicle Technology Explained",
		Place: "Peukert's law", Provenance: working.Memory}
	encyclopedia = working.Source{Title: "encyclopedia article on Peukert's law", Provenance: working.Memory}
	bareForm     = working.Source{Title: "public pages that put a 20 h capacity into t = C/I^k", Provenance: working.CommonPractice}
	masters      = working.Source{Body: "G. Masters", Title: "Renewable and Efficient Electric Power Systems",
		Place: "battery bank of a cabin", Provenance: working.Memory}
	bothAdded = working.Source{Title: "public page on a bank of eight 6 V batteries", Provenance: working.CommonPractice}
	army      = working.Source{Body: "US Army", Title: "TM 10-6140-200-14", Place: "table 1-1", Provenance: working.Read}
	nec       = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2008", Place: "552.10(D), park trailers",
		Provenance: working.Read}
)

func charge(v battery.Delivery) units.Value { return v.Charge }
func hours(v battery.Delivery) units.Value  { return v.Time }
func rated(v battery.Delivery) units.Value  { return v.Rated }

// printedDischarges compares with published discharges at a steady current.
func printedDischarges() ([]weave.Row, error) {
	rating := func(c units.Charge, over units.Elapsed) battery.Rating {
		return battery.Rating{Capacity: c, Over: over}
	}
	hundred := rating(100*units.AmpereHour, 20*units.Hour)
	k := 1.2 * units.One
	var rows []weave.Row
	for _, p := range []struct {
		what         string
		rating       battery.Rating
		current      units.Current
		show         func(battery.Delivery) units.Value
		digits, unit string
		source       working.Source
		differs      string
	}{
		{"70 Ah over 20 h, at 3.5 A", rating(70*units.AmpereHour, 20*units.Hour), 3.5 * units.Ampere, hours, "20", "h", kuphaldt, ""},
		{"100 Ah over 20 h: its rated current", hundred, 5 * units.Ampere, rated, "5", "A", ordnance, ""},
		{"100 Ah over 10 h, at 10 A", rating(100*units.AmpereHour, 10*units.Hour), 10 * units.Ampere, charge, "100", "Ah", navy10, ""},
		{"100 Ah over 20 h, k = 1.2, at 10 A: charge", hundred, 10 * units.Ampere, charge, "87", "Ah", encyclopedia, ""},
		{"100 Ah over 20 h, k = 1.2, at 10 A: time", hundred, 10 * units.Ampere, hours, "8.7", "h", encyclopedia, ""},
		{"40 Ah over 5 h, k = 1.2, at 40 A: charge", rating(40*units.AmpereHour, 5*units.Hour), 40 * units.Ampere, charge, "29", "Ah", larminie, ""},
		{"40 Ah over 5 h, k = 1.2, at 40 A: time", rating(40*units.AmpereHour, 5*units.Hour), 40 * units.Ampere, hours, "0.725", "h", larminie, ""},
		{"100 Ah over 20 h, k = 1.2, at 5 A", hundred, 5 * units.Ampere, hours, "14.5", "h", bareForm,
			"the bare form wants the capacity at 1 A; 100 Ah rated over 20 h lasts 20 h at 5 A by definition"},
	} {
		v, err := battery.Deliver(battery.Discharge{Rating: p.rating, Exponent: k, Current: p.current})
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: p.what, Ours: p.show(v), Printed: units.MustPrinted(p.digits, p.unit),
			Source: p.source, Differs: p.differs})
	}
	thirds, err := printedThirds()
	return append(rows, thirds...), err
}

// A third is a rating that is foretold from two others of the same battery.
type third struct {
	what         string
	a, b, wanted battery.Rating
	digits       string

	within, why, differs string
}

// thirds are those of the three ratings of one battery.
func thirds() []third {
	one := battery.Rating{Capacity: 60 * units.AmpereHour, Over: 1 * units.Hour}
	ten := battery.Rating{Capacity: 93 * units.AmpereHour, Over: 10 * units.Hour}
	twenty := battery.Rating{Capacity: 100 * units.AmpereHour, Over: 20 * units.Hour}
	return []third{
		{"10 h rating from those of 1 h and 20 h", one, twenty, ten, "93",
			"6 %", "one exponent does not fit three ratings; this one lies between the two, and the law is good to about a tenth", ""},
		{"1 h rating from those of 10 h and 20 h", ten, twenty, one, "60",
			"", "", "the exponent of two slow ratings does not hold at twelve times the rated current"},
		{"20 h rating from those of 1 h and 10 h", one, ten, twenty, "100",
			"", "", "below the rated current no more than the rating is counted on, here that of 10 h"},
	}
}

func (t third) foretell() (units.Charge, error) {
	x, err := battery.ExponentFrom(t.a, t.b)
	if err != nil {
		return 0, err
	}
	v, err := battery.Deliver(battery.Discharge{Rating: x.B, Exponent: x.Value, Current: t.wanted.Current()})
	return v.Charge, err
}

func printedThirds() ([]weave.Row, error) {
	var rows []weave.Row
	for _, t := range thirds() {
		ours, err := t.foretell()
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: t.what, Ours: ours, Printed: units.MustPrinted(t.digits, "Ah"), Source: nrel,
			Within: t.within, Why: t.why, Differs: t.differs})
	}
	return rows, nil
}

// solveThirds says by what part the first two are off.
func solveThirds(*weave.Inputs) (weave.Answer, error) {
	all := thirds()
	between, err := all[0].foretell()
	if err != nil {
		return weave.Answer{}, err
	}
	beyond, err := all[1].foretell()
	off := func(c units.Charge, t third) units.Ratio {
		return units.RatioOf(max(c, t.wanted.Capacity)-min(c, t.wanted.Capacity), t.wanted.Capacity)
	}
	return weave.Answer{Values: []weave.Value{
		weave.Show("between", off(between, all[0]), "%", 2),
		weave.Show("beyond", off(beyond, all[1]), "%", 2),
	}}, err
}

func volts(s battery.Sag) units.Value   { return s.Voltage }
func current(s battery.Sag) units.Value { return s.Current }

// printedCircuits compares with published loads on a source with a
// resistance. Where print has a resistive load, the power that it prints is
// put in: the voltage must come back.
func printedCircuits() ([]weave.Row, error) {
	byPower := func(p units.Power) battery.Draw { return battery.Draw{Power: units.Some(p)} }
	byOhms := func(r units.Resistance) battery.Draw { return battery.Draw{Resistance: units.Some(r)} }
	var rows []weave.Row
	for _, p := range []struct {
		what         string
		open         units.Voltage
		internal     units.Resistance
		draw         battery.Draw
		show         func(battery.Sag) units.Value
		digits, unit string
		source       working.Source
	}{
		{"12.0 V behind 0.100 Ω, 200 W: voltage", 12 * units.Volt, 0.1 * units.Ohm, byPower(200 * units.Watt), volts, "10.0", "V", openstax},
		{"12.0 V behind 0.100 Ω, 200 W: current", 12 * units.Volt, 0.1 * units.Ohm, byPower(200 * units.Watt), current, "20.0", "A", openstax},
		{"12.0 V behind 0.500 Ω, 72.0 W, the most there is", 12 * units.Volt, 0.5 * units.Ohm, byPower(72 * units.Watt), volts, "6.0", "V", openstax},
		{"starter, 12.0 V behind 0.0100 Ω, 2000 W: voltage", 12 * units.Volt, 0.01 * units.Ohm, byPower(2000 * units.Watt), volts, "10.0", "V", openstax},
		{"starter, 12.0 V behind 0.0100 Ω, 2000 W: current", 12 * units.Volt, 0.01 * units.Ohm, byPower(2000 * units.Watt), current, "200", "A", openstax},
		{"the same 0.0500 Ω starter behind 0.0900 Ω of corrosion more", 12 * units.Volt, 0.1 * units.Ohm, byOhms(0.05 * units.Ohm), current, "80.0", "A", openstax},
		{"10 V behind 0.2 Ω, 1 Ω", 10 * units.Volt, 0.2 * units.Ohm, byOhms(1 * units.Ohm), current, "8.333", "A", kuphaldt},
		{"10 V behind 0.2 Ω, short circuit", 10 * units.Volt, 0.2 * units.Ohm, byOhms(0 * units.Ohm), current, "50", "A", kuphaldt},
	} {
		s, err := battery.UnderLoad(battery.Circuit{OpenCircuit: p.open, Internal: p.internal, Draw: p.draw})
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: p.what, Ours: p.show(s), Printed: units.MustPrinted(p.digits, p.unit), Source: p.source})
	}
	return rows, nil
}

// printedBanks compares with published banks and lead-acid tables.
func printedBanks() ([]weave.Row, error) {
	const twice = "series adds volts only; the page multiplied by all eight batteries"
	eight, err := battery.Assemble(battery.Bank{
		Battery: battery.Battery{Chemistry: battery.Flooded, Capacity: 350 * units.AmpereHour, Voltage: 6 * units.Volt},
		Series:  4, Parallel: 2,
	})
	if err != nil {
		return nil, err
	}
	cells, err := battery.Assemble(battery.Bank{
		Battery: battery.Battery{Chemistry: battery.Flooded, Capacity: 100 * units.AmpereHour, Voltage: 2 * units.Volt,
			Resistance: units.Some(0.2 * units.Ohm)},
		Series: 1, Parallel: 5,
	})
	if err != nil {
		return nil, err
	}
	cabin := single(battery.Battery{Chemistry: battery.Flooded, Capacity: 871 * units.AmpereHour, Voltage: 24 * units.Volt,
		Usable: units.Some(80 * units.Percent)})
	cabin.Multiplier = units.Some(units.RatioOf(1*units.One, 97*units.Percent)) // the book divides by its factor
	use, err := battery.Usable(cabin, units.None[units.Current]())
	if err != nil {
		return nil, err
	}
	rows := []weave.Row{
		{What: "five cells of 0.2 Ω side by side", Ours: cells.Resistance.Or(0), Printed: units.MustPrinted("0.04", "Ω"), Source: kuphaldt},
		{What: "eight of 350 Ah, four in series, two strings: charge", Ours: eight.Capacity, Printed: units.MustPrinted("2800", "Ah"), Source: bothAdded, Differs: twice},
		{What: "eight of 350 Ah, four in series, two strings: energy", Ours: eight.Energy, Printed: units.MustPrinted("67200", "Wh"), Source: bothAdded, Differs: twice},
		{What: "871 Ah, 80 % of it, cold and rate leave 0.97", Ours: use.Charge, Printed: units.MustPrinted("676", "Ah"), Source: masters},
	}
	lead, err := printedLead()
	return append(rows, lead...), err
}

// printedLead compares what is of lead-acid alone.
func printedLead() ([]weave.Row, error) {
	old := single(battery.Battery{Chemistry: battery.Flooded, Capacity: 100 * units.AmpereHour, Voltage: 12 * units.Volt,
		RatedOver: units.Some(10 * units.Hour), Aged: units.Some(70 * units.Percent), Usable: units.Some(100 * units.Percent)})
	test, err := battery.HoldUp(battery.Hold{Bank: old, Draw: battery.Draw{Current: units.Some(10 * units.Ampere)}})
	if err != nil {
		return nil, err
	}
	rows := []weave.Row{{What: "10 h battery with 70 % left, tested at the 10 h current", Ours: test.Time,
		Printed: units.MustPrinted("7", "h"), Source: navyTest}}
	for _, p := range []struct {
		what   string
		state  units.Ratio
		digits string
	}{
		{"freezes when full", 100 * units.Percent, "-70.6"},
		{"freezes with three quarters left", 75 * units.Percent, "-52.2"},
		{"freezes with half left", 50 * units.Percent, "-35.0"},
		{"freezes with a quarter left", 25 * units.Percent, "-17.2"},
	} {
		f, err := battery.FreezingPoint(p.state)
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: p.what, Ours: f.Point, Printed: units.MustPrinted(p.digits, "°C"), Source: army})
	}
	sealed, err := battery.Ventilate(single(battery.Battery{Chemistry: battery.AGM, Capacity: 100 * units.AmpereHour, Voltage: 12 * units.Volt}))
	return append(rows, weave.Row{What: "each opening for one sealed battery of 100 Ah: the least that the code allows", Ours: sealed.Opening,
		Printed: units.MustPrinted("1100", "mm²"), Source: nec}), err
}
