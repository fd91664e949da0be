package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// The sources of the findings below.
var (
	steadyOnly = working.Source{
		Body: "Doerffel and Sharkh", Title: "A critical review of using the Peukert equation, J. Power Sources", Edition: "2006",
		Place: "abstract: not valid unless current and temperature are constant", Provenance: working.Read,
	}
	haste = practice("a battery emptied faster does not give more")
)

// Findings returns what to know before using the exponent, worst first.
func (x Exponent) Findings() []working.Finding {
	numbers := []working.Number{{Name: "current A", Value: x.CurrentA}, {Name: "current B", Value: x.CurrentB}}
	var f []working.Finding
	if units.Compare(x.Value, 1) < 0 {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "exponent-below-one",
			Message: "The exponent is " + plain(x.Value) + ". One below 1 says that more current gives more charge. The ratings contradict each other, or the batteries were not equally full.",
			Numbers: numbers,
			Fix:     "Check both rows; use 1 rather than this.",
			Source:  haste,
		})
	}
	if units.Exceeds(x.Value, 2) {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "exponent-above-two",
			Message: "The exponent is " + plain(x.Value) + ". One above 2 is beyond every published range. The ratings are not of one battery, or one of them is misread.",
			Numbers: numbers,
			Fix:     "Check both rows, and the units of their times.",
			Source:  leadExponents,
		})
	}
	return append(f, working.Finding{
		Severity: working.Note, Rule: "exponent-from-two-ratings",
		Message: "Two ratings fix an exponent between their currents, here " + plain(x.Value) + ". Another pair of the same datasheet may give another.",
		Numbers: numbers,
		Fix:     "Take the two ratings on either side of the current that matters.",
		Source:  peukert,
	})
}

// plain returns an exponent as a number: a finding would show a ratio in
// percent.
func plain(k units.Ratio) string { return units.Significant(float64(k), 4) }

// Findings returns what to know before counting on the charge, worst first.
func (v Delivery) Findings() []working.Finding {
	var f []working.Finding
	if units.Exceeds(v.Discharge.Exponent, 1) {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "peukert-steady-current",
			Message: "Peukert's law is for one steady current and one temperature. Charge that a high current leaves behind is still there for a lower one, so it must not be summed over a varying load. Its usual accuracy is about 10 %.",
			Numbers: []working.Number{{Name: "current", Value: v.Discharge.Current}, {Name: "part of the capacity", Value: v.Factor}},
			Fix:     "Use the mean current of the load for a long run, and the highest one to be careful.",
			Source:  steadyOnly,
		})
	}
	if v.capped() {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "below-rated-current",
			Message: "Below the rated current the law promises more than the rating. The rating is counted on and no more.",
			Numbers: []working.Number{{Name: "current", Value: v.Discharge.Current}, {Name: "rated current", Value: v.Rated}, {Name: "by the law", Value: v.Law}},
			Fix:     "A rating for a longer time, if the datasheet has one, says what there is.",
			Source:  peukert,
		})
	}
	return f
}

// Findings returns what needs attention, worst first: what the bank brings
// with it, and which of the figures are defaults.
func (u UsableCharge) Findings() []working.Finding {
	return u.findings(1 - u.Assembly.Depth)
}

// findings are those of a bank that comes down to the state of charge lowest.
func (u UsableCharge) findings(lowest units.Ratio) []working.Finding {
	f := u.Assembly.findings(lowest)
	f = append(f, u.depthFindings()...)
	f = append(f, u.coldFindings()...)
	if u.Current.IsSet() {
		f = append(f, u.rateFindings()...)
	} else if u.Assembly.Bank.Battery.Chemistry.IsLead() {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "rate-not-given",
			Message: "No current was given, so the capacity is taken as marked. A lead-acid bank gives less, the more current it has to give.",
			Numbers: []working.Number{{Name: "capacity as marked", Value: u.Assembly.Capacity}, {Name: "over", Value: u.Assembly.RatedOver}},
			Fix:     "Give the current of the load.",
			Source:  peukert,
		})
	}
	working.Sort(f)
	return f
}

// ratedAt is the lowest temperature that capacities are marked for, 20 to 25 °C:
// common practice.
var ratedAt = units.Celsius(20)

// coldFindings says when cells are known to be cold and the capacity is taken
// as marked all the same.
func (u UsableCharge) coldFindings() []working.Finding {
	bank := u.Assembly.Bank
	if t := bank.CellTemperature; !t.IsSet() || t.Compare(ratedAt) >= 0 || bank.Multiplier.IsSet() {
		return nil
	}
	f := working.Finding{
		Severity: working.Note, Rule: "cold-not-counted",
		Message: "The cells are colder than capacities are marked for, and no multiplier is given: the capacity is taken as marked, and there is less.",
		Numbers: []working.Number{{Name: "cells", Value: bank.CellTemperature}, {Name: "marked at", Value: ratedAt}, {Name: "taken as available", Value: u.Available}},
		Fix:     "Give Multiplier from the table or the datasheet for this temperature.",
		Source:  practice("a cold battery gives less than its marked capacity"),
	}
	if bank.CellTemperature.Compare(lithiumAdvised) <= 0 {
		f.Severity = working.Caution
	}
	return []working.Finding{f}
}

// depthFindings says where the depth comes from and whether it is too deep.
func (u UsableCharge) depthFindings() []working.Finding {
	one, figures := u.Assembly.Bank.Battery, u.Assembly.figures()
	depth := working.Number{Name: "depth", Value: u.Assembly.Depth}
	if !one.Usable.IsSet() {
		return []working.Finding{{
			Severity: working.Note, Rule: "depth-is-a-default",
			Message: "The depth is that usual for the chemistry: no datasheet was given.",
			Numbers: []working.Number{depth},
			Fix:     "Give Usable from the datasheet.",
			Source:  figures.PlanningDepth.Source,
		}}
	}
	if hard := figures.HardDepth; units.Exceeds(u.Assembly.Depth, hard.Value) {
		return []working.Finding{{
			Severity: working.Caution, Rule: "depth-beyond-practice",
			Message: "The depth is beyond what this chemistry takes without harm.",
			Numbers: []working.Number{depth, {Name: "at most", Value: hard.Value}},
			Fix:     "Plan with less depth, or a larger bank.",
			Source:  hard.Source,
		}}
	}
	return nil
}

// rateFindings says what the current does, and by which exponent.
func (u UsableCharge) rateFindings() []working.Finding {
	f := u.Delivery.Findings()
	figures := u.Assembly.figures()
	if u.Assembly.Bank.Battery.Exponent.IsSet() || !units.Exceeds(u.Delivery.Discharge.Current, u.Delivery.Rated) {
		return f
	}
	return append(f, working.Finding{
		Severity: working.Note, Rule: "exponent-is-a-default",
		Message: "The current is above the rated one, and Peukert's exponent, " + plain(u.Assembly.Exponent) +
			", is that usual for the chemistry. Published ones go from " + plain(figures.ExponentLow.Value) + " to " +
			plain(figures.ExponentHigh.Value) + "; it differs by maker and grows with age.",
		Numbers: []working.Number{{Name: "current", Value: u.Delivery.Discharge.Current}, {Name: "part of the capacity", Value: u.Factor}},
		Fix:     "Work the exponent out from two ratings of the datasheet with ExponentFrom.",
		Source:  figures.Exponent.Source,
	})
}
