package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Ventilation of lead-acid batteries: 24 m³ of air for each m³ of hydrogen,
// 0.42 litres of hydrogen for each Ah, a safety factor of 5 make 0.05 m³ an
// ampere-hour of gassing; openings of 28 cm² each for 1 m³/h.
// Source: EN 50272-3, which has the same constants as EN 50272-2 (IEC
// 62485-2), seen in an industry page. Provenance: read.
const (
	airPerCharge units.Ratio = 0.05 // m³/h a cell and ampere
	openingPerM3 units.Ratio = 28   // cm² for each m³/h
)

// rvOpening is the least opening, at top and bottom each.
// Source: NFPA 70-2008 article 552.10(D), park trailers. Provenance: read.
const rvOpening = 1100 * units.SquareMillimetre

var (
	airSource = working.Source{
		Body: "CENELEC", Title: "EN 50272-3, as an industry page prints it",
		Place: "Q = v q s n I C: 24 · 0.42e-3 · 5, rounded", Provenance: working.Read,
	}
	openingSource = working.Source{
		Body: "CENELEC", Title: "EN 50272-3, as an industry page prints it",
		Place: "A = 28 Q, air at 0.1 m/s or more", Provenance: working.Read,
	}
	rvOpeningSource = working.Source{
		Body: "NFPA", Title: "70", Edition: "2008", Place: "552.10(D), park trailers", Provenance: working.Read,
	}
)

// A Ventilation is the result of [Ventilate].
type Ventilation struct {
	Assembly Assembly         // the bank
	Gassing  units.Current    // of each ampere-hour of capacity
	Flow     units.VolumeFlow // of air
	ByFlow   units.Area       // each opening, for Flow
	Opening  units.Area       // each opening, the larger of ByFlow and the code's least
}

// Ventilate returns the air that the hydrogen of a lead bank needs, and the
// free area of each of two openings, one low and one high, that natural draft
// takes it through:
//
//	Q = 0.05 · n · I_gas · C / 1000 m³/h,  A = 28 · Q cm²
//
// n is the cells in series, C the ampere-hours of all strings, I_gas that of
// a charger above float (see Figures.Gassing). At least 1100 mm² each is
// asked for by the National Electrical Code for park trailers, and the larger
// governs: to meet one rule is not to meet the other.
//
// A bank that is not lead-acid gives a [*units.RangeError] for Chemistry;
// errors are otherwise those of [Assemble].
func Ventilate(b Bank) (Ventilation, error) {
	const op = "battery.Ventilate"
	a, err := b.assemble(op)
	if err != nil {
		return Ventilation{}, err
	}
	if !b.Battery.Chemistry.IsLead() {
		return Ventilation{}, &units.RangeError{Op: op, Field: "Chemistry", Value: b.Battery.Chemistry,
			Allowed: allowed("a lead-acid chemistry")}
	}
	return a.ventilate(), nil
}

// ventilate is Ventilate for a lead bank that is checked. An energy that a
// float64 holds leaves no room for a flow that it does not.
func (a Assembly) ventilate() Ventilation {
	v := Ventilation{Assembly: a, Gassing: a.Bank.Battery.Chemistry.figures().Gassing.Value}
	flow := float64(airPerCharge) * float64(a.Cells) * float64(v.Gassing) * units.In(a.Capacity, units.AmpereHour)
	v.Flow = units.Scale(units.CubicMetrePerHour, units.Ratio(flow))
	v.ByFlow = units.Scale(units.SquareCentimetre, openingPerM3*units.Ratio(flow))
	v.Opening = max(v.ByFlow, rvOpening)
	return v
}

// byCode reports whether the least opening of the code governs.
func (v Ventilation) byCode() bool { return units.Exceeds(rvOpening, v.ByFlow) }
