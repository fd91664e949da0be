package inverter

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Carry is what a bank carries once shore power drops, on average.
type Carry struct {
	AC         units.Power             // at the inverter's output, >= 0
	Efficiency units.Ratio             // > 0 to 100 %: 0.89 or 89 %, not 89
	Idle       units.Opt[units.Power]  // own draw of the inverter, >= 0; an explicit 0 W is data
	DC         units.Power             // loads on the bank itself, >= 0
	Loop       units.Power             // lost where the bank feeds its own charger, see [FeedLoops]; >= 0
	Usable     units.Opt[units.Energy] // that the bank gives, > 0
}

// A Carried is the result of [CarryTime].
type Carried struct {
	Carry    Carry                    // as used
	Inverter units.Power              // from the bank for AC and Idle
	Power    units.Power              // from the bank in all
	Time     units.Opt[units.Elapsed] // until Usable is gone; not given if that is not or nothing is drawn
}

// CarryTime returns what c draws from the bank on average and how long a usable
// energy lasts:
//
//	P = P_ac / η + P_idle + P_dc + P_loop
//	t = E_usable / P
//
// What a bank gives at that power, sag and limits included, is for package
// battery.
//
// A field outside the range that [Carry] states, or not finite, gives a
// [*units.RangeError]; so does a result that no float64 holds. The Carried is
// then the zero value.
func CarryTime(c Carry) (Carried, error) {
	const op = "inverter.CarryTime"
	if err := firstError(
		notNegative[units.Power]().Check(op, "AC", c.AC),
		shares().Check(op, "Efficiency", c.Efficiency),
		checkOpt(op, "Idle", c.Idle, notNegative[units.Power]()),
		notNegative[units.Power]().Check(op, "DC", c.DC),
		notNegative[units.Power]().Check(op, "Loop", c.Loop),
		checkOpt(op, "Usable", c.Usable, positive[units.Energy]()),
	); err != nil {
		return Carried{}, err
	}
	d := Carried{Carry: c, Inverter: input(c.AC, c.Efficiency) + c.Idle.Or(0)}
	d.Power = d.Inverter + c.DC + c.Loop
	if err := notNegative[units.Power]().Check(op, "Power", d.Power); err != nil {
		return Carried{}, err
	}
	if e, ok := c.Usable.Get(); ok && d.Power > 0 {
		d.Time = units.Some(e.Lasts(d.Power))
		if err := positive[units.Elapsed]().Check(op, "Time", d.Time.Or(0)); err != nil {
			return Carried{}, err
		}
	}
	return d, nil
}

// Working returns how the time came about, step by step.
func (c Carried) Working() *working.Sheet {
	s := working.NewSheet("What the bank carries once shore power drops")
	s.Given("P_ac", c.Carry.AC, "W", "average at the inverter's output")
	s.Given("η", c.Carry.Efficiency, "1", "efficiency")
	through := "P_ac / η"
	if idle, ok := c.Carry.Idle.Get(); ok {
		s.Given("P_idle", idle, "W", "own draw of the inverter")
		through += " + P_idle"
	} else {
		s.Choose("own draw", "not stated", "not counted; nothing is assumed in its place", working.Source{})
	}
	s.Formula("P_inv", c.Inverter, "W", "from the bank through the inverter", through)
	s.Given("P_dc", c.Carry.DC, "W", "average on the bank itself")
	s.Given("P_loop", c.Carry.Loop, "W", "lost where the bank feeds its own charger")
	s.Formula("P", c.Power, "W", "from the bank in all", "P_inv + P_dc + P_loop")
	if t, ok := c.Time.Get(); ok {
		s.Given("E_usable", c.Carry.Usable.Or(0), "Wh", "that the bank gives")
		s.Formula("t", t, "h", "until it is gone", "E_usable / P")
	}
	return s
}

// Findings returns what is missing or lost, and always that a change to the
// bank is silent.
func (c Carried) Findings() []working.Finding {
	var f []working.Finding
	if !c.Carry.Idle.IsSet() {
		f = append(f, idleNotStated(working.Number{Name: "without it", Value: c.Power}))
	}
	silent := working.Finding{
		Severity: working.Note, Rule: "silent-failover", Source: failoverHabit,
		Numbers: []working.Number{{Name: "from the bank", Value: c.Power}},
		Message: "When shore power drops and the inverter takes over, nobody is told; the first sign is what stops when the bank is empty.",
		Fix:     "Let something that the shore side does not feed send an alarm.",
	}
	if t, ok := c.Time.Get(); ok {
		silent.Numbers = append(silent.Numbers, working.Number{Name: "lasts", Value: t})
	}
	return append(f, silent)
}
