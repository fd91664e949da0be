package solar

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// What a datasheet has as a rule. Source: common practice.
const (
	datasheetTolerance units.Ratio = 0.05 // of the power against Vmp · Imp
	leastFill          units.Ratio = 0.55 // of the power against Voc · Isc
	mostFill           units.Ratio = 0.88
)

var (
	usualPanels = working.Source{Title: "what the datasheets of panels have as a rule", Provenance: working.CommonPractice}
	usualCells  = working.Source{Title: "temperature coefficient of the open-circuit voltage of nearly all panels",
		Place: "-0.5 %/K to -0.2 %/K", Provenance: working.CommonPractice}
)

// findings returns what is odd, though not impossible, about the numbers of a
// panel. All but Imp must be given.
func (p Panel) findings() (list []working.Finding) {
	power := working.Number{Name: "power", Value: p.Power}
	if imp, ok := p.Imp.Get(); ok {
		product := imp.At(p.Vmp)
		if off := units.Minus(p.Power, product); units.Exceeds(max(off, -off), units.Scale(p.Power, datasheetTolerance)) {
			list = append(list, working.Finding{
				Severity: working.Caution, Rule: "power-not-vmp-imp", Source: usualPanels,
				Numbers: []working.Number{power, {Name: "Vmp times Imp", Value: product}},
				Message: "The power of the panel differs by more than 5 % from its voltage times its current at maximum power: one of the three is not of this panel.",
				Fix:     "Read all three from one datasheet, at standard test conditions.",
			})
		}
	}
	fill := units.RatioOf(p.Power, p.Isc.At(p.Voc))
	if !units.Between(leastFill, mostFill).Contains(fill) {
		list = append(list, working.Finding{
			Severity: working.Caution, Rule: "fill-factor-unusual", Source: usualPanels,
			Numbers: []working.Number{power, {Name: "Voc times Isc", Value: p.Isc.At(p.Voc)}, {Name: "fill factor", Value: fill, Unit: "%"}},
			Message: "The power of the panel is not the 55 % to 88 % of its open-circuit voltage times its short-circuit current that cells have: one of the three is not of this panel.",
			Fix:     "Read all three from one datasheet, at standard test conditions.",
		})
	}
	return list
}

// coefficientFindings returns that a coefficient is one that few panels have.
func (o ColdOpen) coefficientFindings() []working.Finding {
	beta, ok := o.String.Panel.VoltageCoefficient.Get()
	if !ok || usualCoefficients().Contains(beta) {
		return nil
	}
	numbers := []working.Number{{Name: "coefficient", Value: beta, Unit: "%/K"}, {Name: "cold string", Value: o.Voltage}}
	if v, ok := o.ByTable.Get(); ok {
		numbers = append(numbers, working.Number{Name: "by the table", Value: v})
	}
	return []working.Finding{{
		Severity: working.Caution, Rule: "coefficient-unusual", Source: usualCells, Numbers: numbers,
		Message: "The voltage coefficient is not what panels have, -0.5 %/K to -0.2 %/K, and the cold voltage rests on it.",
		Fix:     "Read the coefficient of the open-circuit voltage in %/K again; one in V/K is to be divided by the voltage, and that of the power is another.",
	}}
}
