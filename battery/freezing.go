package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A freezingRow is one row of the freezing table of lead-acid electrolyte.
type freezingRow struct {
	charge units.Ratio       // state of charge
	point  units.Temperature // as printed, in °F
}

// freezingTable: freezing point of the electrolyte against state of charge.
// Source: US Army TM 10-6140-200-14, table 1-1. Provenance: read. Full is
// specific gravity 1.280 here; other makers' full is not.
var freezingTable = [...]freezingRow{
	{25 * units.Percent, units.Fahrenheit(1)},
	{50 * units.Percent, units.Fahrenheit(-31)},
	{75 * units.Percent, units.Fahrenheit(-62)},
	{100 * units.Percent, units.Fahrenheit(-95)},
}

var freezingSource = working.Source{
	Body: "US Army", Title: "TM 10-6140-200-14", Place: "table 1-1", Provenance: working.Read,
}

// A Freezing is the result of [FreezingPoint].
type Freezing struct {
	StateOfCharge units.Ratio       // as used
	Point         units.Temperature // where the electrolyte freezes
	// Warmer says that the table ends above this state of charge: it freezes at
	// Point or warmer.
	Warmer bool
	// LowCharge and HighCharge are the rows around it, the same one twice if it
	// is on a row.
	LowCharge, HighCharge units.Ratio
	LowPoint, HighPoint   units.Temperature // of those rows
}

// FreezingPoint returns the temperature at which the electrolyte of a
// lead-acid battery freezes at a state of charge, 0 to 100 %, linear between
// the rows of the table. Below 25 % there is no row and nothing is
// extrapolated: Point is that of 25 %, and Warmer says that it freezes there
// or sooner. A battery that freezes bursts.
//
// A state of charge out of range or not finite gives a [*units.RangeError].
func FreezingPoint(state units.Ratio) (Freezing, error) {
	const op = "battery.FreezingPoint"
	if err := units.Between[units.Ratio](0, 1).Check(op, "state", state); err != nil {
		return Freezing{}, err
	}
	return freezingAt(state), nil
}

// freezingAt is FreezingPoint for a state that is checked.
func freezingAt(state units.Ratio) Freezing {
	lo, hi := freezingTable[0], freezingTable[0]
	for _, row := range freezingTable {
		side := units.Compare(row.charge, state)
		if side > 0 {
			hi = row
			break
		}
		lo, hi = row, row
		if side == 0 {
			break
		}
	}
	f := Freezing{
		StateOfCharge: state, Point: lo.point, LowCharge: lo.charge, HighCharge: hi.charge,
		LowPoint: lo.point, HighPoint: hi.point,
	}
	if units.Compare(state, freezingTable[0].charge) < 0 {
		f.Warmer, f.HighCharge, f.HighPoint = true, lo.charge, lo.point
	} else if lo != hi {
		part := (state - lo.charge) / (hi.charge - lo.charge)
		f.Point = lo.point.Add(units.TemperatureChange(float64(part) * float64(hi.point.Sub(lo.point))))
	}
	return f
}
