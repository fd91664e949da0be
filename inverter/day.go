package inverter

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Day is what runs through an inverter in a day.
type Day struct {
	Energy     units.Energy           // at the inverter's output, >= 0
	Efficiency units.Ratio            // > 0 to 100 %: 0.89 or 89 %, not 89
	Idle       units.Opt[units.Power] // own draw whenever on, >= 0; an explicit 0 W is data
	// On is how long it is on a day, loads or not, 0 to 24 h, more than 0 h if
	// there is Energy, and not below Longest. Not given: 24 h, for it sleeps
	// only where somebody switches it off.
	On units.Opt[units.Elapsed]
	// Longest is how long a day that load is in use which is in use the
	// longest, thermostat or not, 0 to 24 h. Not given: On is not held against
	// the loads.
	Longest units.Opt[units.Elapsed]
	Voltage units.Opt[units.Voltage] // of the bank, for the charge, > 0
}

// A DayUse is the result of [EnergyADay].
type DayUse struct {
	Day    Day                     // as given
	On     units.Elapsed           // as used
	Loads  units.Energy            // what the loads take from the bank
	Idle   units.Energy            // what the machine itself takes; 0 if Day.Idle is not given
	Energy units.Energy            // both
	Charge units.Opt[units.Charge] // Energy at Day.Voltage; not given if that is not
}

// EnergyADay returns what d takes from the bank:
//
//	E_dc = E_ac / η + P_idle · t_on
//	Q    = E_dc / V
//
// Own use counts for every hour that the machine is on, not only while a load
// runs, and no load runs while it is off. Energy crosses a change of voltage, charge does not: amperes at 120 V
// times hours are no ampere-hours of the bank.
//
// A field outside the range that [Day] states, or not finite, gives a
// [*units.RangeError]; so does a result that no float64 holds. The DayUse is
// then the zero value.
func EnergyADay(d Day) (DayUse, error) {
	const op = "inverter.EnergyADay"
	if err := firstError(
		notNegative[units.Energy]().Check(op, "Energy", d.Energy),
		shares().Check(op, "Efficiency", d.Efficiency),
		checkOpt(op, "Idle", d.Idle, notNegative[units.Power]()),
		checkOpt(op, "Longest", d.Longest, units.Between(0, wholeDay)),
		checkOpt(op, "On", d.On, d.hoursOn()),
		checkOpt(op, "Voltage", d.Voltage, positive[units.Voltage]()),
	); err != nil {
		return DayUse{}, err
	}
	u := DayUse{Day: d, On: d.On.Or(wholeDay), Loads: input(d.Energy, d.Efficiency)}
	u.Idle = d.Idle.Or(0).For(u.On)
	u.Energy = u.Loads + u.Idle
	if err := notNegative[units.Energy]().Check(op, "Energy", u.Energy); err != nil {
		return DayUse{}, err
	}
	if v, ok := d.Voltage.Get(); ok {
		u.Charge = units.Some(u.Energy.At(v))
		if err := notNegative[units.Charge]().Check(op, "Charge", u.Charge.Or(0)); err != nil {
			return DayUse{}, err
		}
	}
	return u, nil
}

// wholeDay is how long a machine is on that nobody switches off.
const wholeDay = 24 * units.Hour

// hoursOn is the range of On: a load needs it on for as long as it is in use.
func (d Day) hoursOn() units.Bounds[units.Elapsed] {
	if longest := d.Longest.Or(0); longest > 0 || d.Energy == 0 {
		return units.Between(longest, wholeDay)
	}
	return positive[units.Elapsed]().AtMost(wholeDay)
}

// Working returns how the energy came about, step by step.
func (u DayUse) Working() *working.Sheet {
	s := working.NewSheet("Inverter: energy a day")
	s.Given("E_ac", u.Day.Energy, "Wh", "that the loads use")
	s.Given("η", u.Day.Efficiency, "1", "efficiency")
	s.Formula("E_loads", u.Loads, "Wh", "that they take from the bank", "E_ac / η")
	total := "E_loads"
	if idle, ok := u.Day.Idle.Get(); ok {
		s.Given("P_idle", idle, "W", "own draw whenever on")
		on := "how long it is on"
		if !u.Day.On.IsSet() {
			on += ", not stated: all day"
		}
		s.Given("t_on", u.On, "h", on)
		if longest, ok := u.Day.Longest.Get(); ok {
			s.Given("t_use", longest, "h", "how long that load is in use which is so the longest")
			s.Test("on while a load is in use", "t_use <= t_on", !units.Exceeds(longest, u.On))
		}
		s.Formula("E_idle", u.Idle, "Wh", "that the inverter itself takes", "P_idle * t_on")
		total += " + E_idle"
	} else {
		s.Choose("own draw", "not stated", "not counted; nothing is assumed in its place", working.Source{})
	}
	s.Formula("E_dc", u.Energy, "Wh", "from the bank in all", total)
	if v, ok := u.Day.Voltage.Get(); ok {
		s.Given("V", v, "V", "of the bank")
		s.Formula("Q", u.Charge.Or(0), "Ah", "from the bank in all", "E_dc / V")
	}
	return s
}

// Findings returns that own use is not stated, or that it outweighs the loads.
func (u DayUse) Findings() []working.Finding {
	if !u.Day.Idle.IsSet() {
		return []working.Finding{idleNotStated(working.Number{Name: "without it", Value: u.Energy})}
	}
	if units.Exceeds(u.Idle, u.Loads) {
		return []working.Finding{{
			Severity: working.Note, Rule: "idle-outweighs-loads", Source: idleHabit,
			Numbers: []working.Number{{Name: "own use", Value: u.Idle}, {Name: "loads", Value: u.Loads}},
			Message: "The inverter itself takes more from the bank in a day than the loads on it.",
			Fix:     "Switch it off between uses, take a smaller one, or run what keeps it on from direct current.",
		}}
	}
	return nil
}

// idleNotStated says that the machine's own draw is missing.
func idleNotStated(without working.Number) working.Finding {
	return working.Finding{
		Severity: working.Caution, Rule: "idle-not-stated", Source: idleHabit, Numbers: []working.Number{without},
		Message: "The inverter's own draw is not stated and not counted. On all day it can outweigh the loads.",
		Fix:     "Give Idle from the datasheet or a measurement; 0 W if there is none.",
	}
}
