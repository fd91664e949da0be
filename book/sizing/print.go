package sizing

import (
	"strconv"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// The sources of the comparison.
var (
	practices = working.Source{Title: "text quoting J. Wiles, Photovoltaic Power Systems and the National Electrical Code: Suggested Practices",
		Provenance: working.Read}
	wiles = working.Source{Body: "J. Wiles", Title: "Photovoltaic Power Systems and the National Electrical Code: Suggested Practices",
		Provenance: working.Memory}
	masters = working.Source{Body: "G. M. Masters", Title: "Renewable and Efficient Electric Power Systems", Place: "cabin battery",
		Provenance: working.Memory}
	wenham = working.Source{Body: "S. R. Wenham and others", Title: "Applied Photovoltaics", Place: "table 9.1", Provenance: working.Read}
	kosow  = working.Source{Body: "I. Kosow", Title: "Electric Machinery and Transformers", Place: "example 10.4", Provenance: working.Read}
	hours  = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "210.20 and 215.3, 125 % of a continuous load", Provenance: working.Derived}
	lockedRotor = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017 and 2023",
		Place: "Tables 430.248 and 430.251(A)", Provenance: working.Read}
	curve = working.Source{Body: "HTW Berlin", Title: "PerMod loss data of a generic battery converter, doi 10.5281/zenodo.6514527",
		Provenance: working.Derived}
)

// printedBatterySide compares with published currents and charges.
func printedBatterySide() ([]weave.Row, error) {
	var rows []weave.Row
	for _, p := range []struct {
		power              units.Power
		current, required  string
		source             working.Source
		corrected, whereof string
	}{
		{2500 * units.Watt, "134", "167", practices, "235", "the same, divided by 0.71 for air of 41 °C to 45 °C"},
		{4000 * units.Watt, "214", "267", wiles, "", ""},
	} {
		side, err := inverter.BatterySide(inverter.DCSide{
			Machine: inverter.Machine{Continuous: p.power, Efficiency: 85 * units.Percent, LowestVoltage: units.Some(22 * units.Volt)},
			Margin:  inverter.NECMargin,
		})
		if err != nil {
			return nil, err
		}
		what := p.power.String() + ", 85 %, 22 V: "
		rows = append(rows,
			weave.Row{What: what + "current", Ours: side.Current, Printed: units.MustPrinted(p.current, "A"), Source: p.source},
			weave.Row{What: what + "conductor with 125 %", Ours: side.Required, Printed: units.MustPrinted(p.required, "A"), Source: p.source})
		if p.corrected != "" {
			warm := units.Scale(side.Required, units.RatioOf(100*units.Percent, 71*units.Percent))
			rows = append(rows, weave.Row{What: p.whereof, Ours: warm, Printed: units.MustPrinted(p.corrected, "A"), Source: p.source})
		}
	}
	use, err := inverter.EnergyADay(inverter.Day{Energy: 3000 * units.WattHour, Efficiency: 85 * units.Percent,
		Idle: units.Some(0 * units.Watt), On: units.Some(24 * units.Hour), Voltage: units.Some(24 * units.Volt)})
	return append(rows,
		weave.Row{What: "3000 Wh a day, 85 %: energy", Ours: use.Energy, Printed: units.MustPrinted("3529", "Wh"), Source: masters},
		weave.Row{What: "3000 Wh a day, 85 %, 24 V: charge", Ours: use.Charge.Or(0), Printed: units.MustPrinted("147", "Ah"), Source: masters},
	), err
}

// houseLoads are the rated powers of the low-use house of a textbook.
func houseLoads() (demands []inverter.Demand) {
	for i, p := range []units.Power{
		11 * units.Watt, 100 * units.Watt, 650 * units.Watt, 600 * units.Watt, 11 * units.Watt, 500 * units.Watt, 500 * units.Watt,
		1800 * units.Watt, 15 * units.Watt, 300 * units.Watt, 15 * units.Watt, 25 * units.Watt, 100 * units.Watt, 60 * units.Watt,
		10 * units.Watt, 100 * units.Watt, 11 * units.Watt, 11 * units.Watt, 11 * units.Watt, 11 * units.Watt, 11 * units.Watt,
		200 * units.Watt,
	} {
		demands = append(demands, inverter.Demand{Name: "load " + strconv.Itoa(i+1), Power: p})
	}
	return demands
}

// printedSums compares with published sums and currents.
func printedSums() ([]weave.Row, error) {
	machine := inverter.Machine{Continuous: 5000 * units.Watt, Efficiency: 90 * units.Percent}
	house, err := inverter.Check(machine, houseLoads())
	if err != nil {
		return nil, err
	}
	motor, err := inverter.Sets(inverter.Limit{Name: "the circuit", Current: units.Some(15 * units.Ampere), Voltage: 115 * units.Volt},
		[]inverter.Demand{{Name: "motor", Power: 400 * units.Watt, PowerFactor: units.Some(65.01 * units.Percent)}})
	if err != nil {
		return nil, err
	}
	whole := units.RatioOf(100*units.Percent, inverter.ContinuousShare)
	return []weave.Row{
		{What: "all 22 loads of a small house at once", Ours: house.Power, Printed: units.MustPrinted("5052", "W"), Source: wenham},
		{What: "motor of 400 W, power factor 0.6501, 115 V", Ours: motor.Together.Current, Printed: units.MustPrinted("5.35", "A"), Source: kosow},
		{What: "24 A for hours, as a device", Ours: units.Scale(24*units.Ampere, whole), Printed: units.MustPrinted("30", "A"), Source: hours},
		{What: "40 A for hours, as a device", Ours: units.Scale(40*units.Ampere, whole), Printed: units.MustPrinted("50", "A"), Source: hours},
	}, nil
}

// printedMotors compares six times the full-load current with the table of
// locked-rotor currents.
func printedMotors() ([]weave.Row, error) {
	var rows []weave.Row
	for _, p := range []struct {
		size    string
		full    units.Current
		locked  string
		differs string
	}{
		{"1/2 hp", 9.8 * units.Ampere, "58.8", ""},
		{"1 hp", 16 * units.Ampere, "96", ""},
		{"2 hp", 24 * units.Ampere, "144", ""},
		{"10 hp", 100 * units.Ampere, "1000", "in all likelihood a misprint, in both editions: every other cell of its column is six times the full-load current"},
	} {
		start, err := inverter.Starting(inverter.Motor{LockedRotor: units.Scale(p.full, 600*units.Percent), Voltage: 115 * units.Volt})
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: p.size + ", six times " + p.full.String(), Ours: start.Current,
			Printed: units.MustPrinted(p.locked, "A"), Source: lockedRotor, Differs: p.differs})
	}
	return rows, nil
}

// printedCurve compares the input of a 2000 W inverter by one efficiency and
// own use with that by a published loss curve.
func printedCurve() ([]weave.Row, error) {
	const twice = "one efficiency beside own use; part of it is counted twice, and we come out high"
	var rows []weave.Row
	for _, p := range []struct {
		out     units.Power
		idle    units.Opt[units.Power]
		in      string
		differs string
	}{
		{50 * units.Watt, units.None[units.Power](), "88.49", "own use left out, which at a small load is nearly all"},
		{50 * units.Watt, units.Some(38.62 * units.Watt), "88.49", twice},
		{200 * units.Watt, units.Some(38.62 * units.Watt), "238.66", twice},
		{1000 * units.Watt, units.Some(38.62 * units.Watt), "1053.8", twice},
	} {
		hold, err := inverter.CarryTime(inverter.Carry{AC: p.out, Efficiency: 95 * units.Percent, Idle: p.idle})
		if err != nil {
			return nil, err
		}
		with := ", own use counted"
		if !p.idle.IsSet() {
			with = ", efficiency alone"
		}
		rows = append(rows, weave.Row{What: p.out.String() + " out of 2000 W" + with, Ours: hold.Power,
			Printed: units.MustPrinted(p.in, "W"), Source: curve, Differs: p.differs})
	}
	return rows, nil
}
