package wire

import (
	"math"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Multiwire is a circuit, or a panel, with two hot conductors and one
// neutral.
type Multiwire struct {
	// Supply is how the hots stand to each other. It has to be given: a panel
	// made for opposite legs may be fed from one hot, and then nothing cancels.
	Supply   units.Opt[LegSupply]
	Currents units.Legs[units.Current] // in use at once, of one power factor, each >= 0
	// Device protects each hot, > 0. Not given: what else could flow is not
	// judged.
	Device units.Opt[units.Current]
	// Main is the device that feeds both hots where they are one, > 0. Not given:
	// nothing but Device holds their sum down.
	Main    units.Opt[units.Current]
	Neutral units.Opt[units.Current] // ampacity of the neutral, > 0; not given is a finding where it carries the sum
}

// A NeutralCurrent is the result of [SharedNeutral].
type NeutralCurrent struct {
	Circuit Multiwire                // as used
	Current units.Current            // in the neutral
	Most    units.Opt[units.Current] // that the devices let flow in it; not given if Device is not
}

// SharedNeutral returns the current in the neutral that two hots share:
//
//	I_n = sqrt(I_A² + I_B² + 2 · I_A · I_B · cos θ)
//
// the difference at 180°, the sum at 0°. No breaker is in a neutral, so with
// both hots on one leg it can carry twice what protects each of them, and
// nothing opens. Loads of different power factors leave a rest that this has
// not, and [LegDrop] has; harmonics, which small electronic supplies make, leave
// one that neither has.
//
// A field outside the range that [Multiwire] states, or not finite, gives a
// [*units.RangeError]; so does a result that no float64 holds. The
// NeutralCurrent is then the zero value.
func SharedNeutral(m Multiwire) (NeutralCurrent, error) {
	const op = "wire.SharedNeutral"
	if err := m.check(op); err != nil {
		return NeutralCurrent{}, err
	}
	n := NeutralCurrent{Circuit: m, Current: m.supply().neutral(m.Currents)}
	if device, ok := m.Device.Get(); ok {
		most := device // one leg alone, or two of three
		if m.supply() == OneHot {
			most = min(2*device, m.Main.Or(2*device))
		}
		n.Most = units.Some(most)
	}
	err := units.AtLeast[units.Current](0).Check(op, "Current", n.Current)
	if err == nil {
		err = checkStatedCurrent(op, "Most", n.Most)
	}
	if err != nil {
		return NeutralCurrent{}, err
	}
	return n, nil
}

// check reports the first field out of range.
func (m Multiwire) check(op string) error {
	supply, ok := m.Supply.Get()
	if !ok {
		return &units.RangeError{Op: op, Field: "Supply", Value: m.Supply, Allowed: suppliesThereAre}
	}
	if err := supply.check(op); err != nil {
		return err
	}
	if err := units.AtLeast[units.Current](0).Check(op, "Currents.A", m.Currents.A); err != nil {
		return err
	}
	if err := units.AtLeast[units.Current](0).Check(op, "Currents.B", m.Currents.B); err != nil {
		return err
	}
	if err := checkStatedCurrent(op, "Device", m.Device); err != nil {
		return err
	}
	if err := checkStatedCurrent(op, "Main", m.Main); err != nil {
		return err
	}
	return checkStatedCurrent(op, "Neutral", m.Neutral)
}

// checkStatedCurrent refuses a current that is stated and not above 0.
func checkStatedCurrent(op, field string, stated units.Opt[units.Current]) error {
	if i, ok := stated.Get(); ok {
		return units.Above[units.Current](0).Check(op, field, i)
	}
	return nil
}

// supply returns the supply that was given.
func (m Multiwire) supply() LegSupply { return m.Supply.Or(SplitPhase) }

// neutral is what comes back in the neutral of two currents in phase with their
// voltages.
func (s LegSupply) neutral(i units.Legs[units.Current]) units.Current {
	switch s {
	case NetworkLegs:
		larger := i.Larger()
		if larger == 0 {
			return 0
		}
		// In parts of the larger, so that no square is too large to hold.
		ratio := float64(min(i.A, i.B)) / float64(larger)
		return units.Scale(larger, units.Ratio(math.Sqrt(1+ratio*ratio-ratio)))
	case OneHot:
		return i.Total()
	}
	return i.Unbalance()
}

// Working returns how the current came about, step by step.
func (n NeutralCurrent) Working() *working.Sheet {
	c := n.Circuit
	s := working.NewSheet("Neutral of two hots, " + c.supply().String())
	s.Given("I_A", c.Currents.A, "A", "in one hot")
	s.Given("I_B", c.Currents.B, "A", "in the other")
	switch c.supply() {
	case NetworkLegs:
		s.Constant("θ", c.supply().Angle(), "deg", "between the two", legSource)
		s.Formula("I_n", n.Current, "A", "in the neutral", "sqrt(pow(I_A, 2) + pow(I_B, 2) + 2 * I_A * I_B * cos(θ * deg))")
	case OneHot:
		s.Formula("I_n", n.Current, "A", "in the neutral, both from one hot", "I_A + I_B")
	default:
		s.Formula("I_n", n.Current, "A", "in the neutral, 180° apart", "abs(I_A - I_B)")
	}
	n.mostSteps(s)
	if neutral, ok := c.Neutral.Get(); ok {
		s.Given("I_may", neutral, "A", "ampacity of the neutral")
		s.Test("in use", "I_n <= I_may", !units.Exceeds(n.Current, neutral))
		if most, ok := n.Most.Get(); ok {
			s.Test("that the devices let through", "I_most <= I_may", !units.Exceeds(most, neutral))
		}
	}
	return s
}

// mostSteps appends what the devices let through.
func (n NeutralCurrent) mostSteps(s *working.Sheet) {
	device, ok := n.Circuit.Device.Get()
	if !ok {
		return
	}
	s.Given("I_device", device, "A", "that protects each hot")
	formula := "I_device"
	if n.Circuit.supply() == OneHot {
		formula = "2 * I_device"
		if main, ok := n.Circuit.Main.Get(); ok {
			s.Given("I_main", main, "A", "that protects both together")
			formula = "min(2 * I_device, I_main)"
		}
	}
	s.Formula("I_most", n.Most.Or(0), "A", "that the devices let flow in the neutral", formula)
}

// sharedSource is what the code says of feeding both hots from one.
var sharedSource = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
	Place: "710.15(C), of a 120 V source on a 120/240 V panel", Provenance: working.Read}

// Findings returns that the neutral is overloaded or can be, or that this is
// not known where it carries the sum.
func (n NeutralCurrent) Findings() []working.Finding {
	numbers := []working.Number{{Name: "in the neutral", Value: n.Current}}
	most, hasMost := n.Most.Get()
	if hasMost {
		numbers = append(numbers, working.Number{Name: "devices let through", Value: most})
	}
	neutral, stated := n.Circuit.Neutral.Get()
	if stated {
		numbers = append(numbers, working.Number{Name: "neutral", Value: neutral})
	}
	f := working.Finding{Severity: working.Danger, Source: sharedSource, Numbers: numbers}
	switch {
	case stated && units.Exceeds(n.Current, neutral):
		f.Rule = "neutral-overloaded"
		f.Message = "The shared neutral carries more than it may, and no breaker is in it: it overheats and nothing opens."
	case stated && hasMost && units.Exceeds(most, neutral):
		f.Rule = "neutral-can-be-overloaded"
		f.Message = "The devices of the two hots let more flow in the shared neutral than it may carry, and no breaker is in it."
	case n.Circuit.supply() == OneHot && !(stated && hasMost):
		f.Rule = "neutral-carries-the-sum"
		f.Message = "Both hots are one, so their shared neutral carries the sum of both, and it is not stated that neutral and devices are made for that."
	default:
		return nil
	}
	f.Fix = "Give each hot a neutral of its own, or feed only one of them; a licensed electrician does it."
	return []working.Finding{f}
}
