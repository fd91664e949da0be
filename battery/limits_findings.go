package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Findings returns what needs attention, worst first: what the bank brings
// with it, a current above its limit with every string or with one out, and
// what could not be judged.
func (l Limits) Findings() []working.Finding {
	f := l.Assembly.Findings()
	f = append(f, l.dischargeFindings()...)
	f = append(f, l.chargeFindings()...)
	each := working.Number{Name: "capacity of a string", Value: l.Assembly.Bank.Battery.Capacity}
	switch {
	case l.Assembly.Bank.Parallel == 1:
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "one-string",
			Message: "There is one string: when its protection opens, everything goes dark and the sources lose the battery.",
			Numbers: []working.Number{each},
			Fix:     "Know what must not stop, and what then feeds it.",
			Source:  oneDropsOut,
		})
	case l.Assembly.Bank.Parallel > 1:
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "sharing-taken-as-equal",
			Message: "The strings are taken to share the current alike. With both cables on one end of a row of batteries the nearest one carries the most.",
			Numbers: []working.Number{each},
			Fix:     "Take plus from one end and minus from the other, or run equal cables to bus bars.",
			Source:  alikeSharing,
		})
	}
	working.Sort(f)
	return f
}

func (l Limits) dischargeFindings() []working.Finding {
	demand, ok := l.Demand.Discharge.Get()
	limit, limited := l.Discharge.Get()
	oneOut := l.DischargeOneOut.Or(0)
	current := working.Number{Name: "discharge", Value: demand}
	switch {
	case !ok:
		return []working.Finding{notDemanded("discharge")}
	case demand == 0:
		return nil
	case !limited:
		return []working.Finding{limitNotStated("discharge", current)}
	case units.Exceeds(demand, limit):
		return []working.Finding{{
			Severity: working.Caution, Rule: "discharge-above-limit",
			Message: "The discharge current is above the limit of the bank. Protection opens and everything on the bank goes dark; without protection it overheats.",
			Numbers: []working.Number{current, {Name: "limit", Value: limit}},
			Fix:     "Less load at once, or more strings.",
			Source:  energyPower,
		}}
	case l.Assembly.Bank.Parallel > 1 && units.Exceeds(demand, oneOut):
		return []working.Finding{{
			Severity: working.Caution, Rule: "discharge-above-limit-one-out",
			Message: "With one string out, the others cannot carry the discharge current: when one battery disconnects, the rest follow and everything goes dark.",
			Numbers: []working.Number{current, {Name: "limit with one out", Value: oneOut}},
			Fix:     "Less load at once, more strings, or know that it happens.",
			Source:  oneDropsOut,
		}}
	}
	return nil
}

func (l Limits) chargeFindings() []working.Finding {
	demand, ok := l.Demand.Charge.Get()
	limit, limited := l.Charge.Get()
	oneOut := l.ChargeOneOut.Or(0)
	current := working.Number{Name: "charge", Value: demand}
	switch {
	case !ok:
		return []working.Finding{notDemanded("charge")}
	case demand == 0:
		return nil
	case !limited:
		return []working.Finding{limitNotStated("charge", current)}
	case units.Exceeds(demand, limit):
		return []working.Finding{{
			Severity: working.Danger, Rule: "charge-above-limit",
			Message: "The sources together charge the bank above its limit. Cells overheat, or protection opens under charge and leaves the sources without a battery.",
			Numbers: []working.Number{current, {Name: "limit", Value: limit}},
			Fix:     "Set the chargers lower, or see that they cannot run together.",
			Source:  energyPower,
		}}
	case l.Assembly.Bank.Parallel > 1 && units.Exceeds(demand, oneOut):
		return []working.Finding{{
			Severity: working.Danger, Rule: "charge-above-limit-one-out",
			Message: "With one string out, the others are charged above their limit. Cells overheat, or protection opens under charge and leaves the sources without a battery.",
			Numbers: []working.Number{current, {Name: "limit with one out", Value: oneOut}},
			Fix:     "Set the chargers lower, or limit the current of each string by itself.",
			Source:  oneDropsOut,
		}}
	}
	return nil
}

func notDemanded(direction string) working.Finding {
	return working.Finding{
		Severity: working.Note, Rule: direction + "-not-demanded",
		Message: "No " + direction + " current was given, so it is not judged.",
		Numbers: []working.Number{{Name: direction}},
		Fix:     "Give the current of everything that can run together.",
		Source:  unknowns,
	}
}
