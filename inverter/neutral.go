package inverter

import (
	"math"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Phasing is how the two hot conductors of a panel or of a multiwire circuit
// stand to each other. The zero value is not given.
type Phasing uint8

// The phasings.
const (
	SplitPhase Phasing = iota + 1 // opposed, 120/240 V: the neutral carries the difference
	TwoOfThree                    // two legs of three, 208Y/120 V: the neutral carries about as much as a leg
	OneHot                        // both from one hot: an adapter, or an inverter of 120 V on both; the neutral carries the sum
)

var phasingWords = [...]string{"not given", "split phase", "two of three", "one hot"}

// String returns "split phase", "two of three", "one hot" or "not given"; a
// value that is not defined prints its number.
func (p Phasing) String() string { return word(phasingWords[:], "Phasing", uint8(p)) }

// check refuses a phasing that is not one of those there are.
func (p Phasing) check(op string) error {
	if p == 0 || int(p) >= len(phasingWords) {
		return &units.RangeError{Op: op, Field: "Phasing", Value: p, Allowed: allowed(oneOf(phasingWords[1:]))}
	}
	return nil
}

// Angle returns the angle between the voltages of the two hot conductors: 180°,
// 120° or 0°; 0° if p is not defined.
func (p Phasing) Angle() units.Angle {
	switch p {
	case SplitPhase:
		return 180 * units.Degree
	case TwoOfThree:
		return 120 * units.Degree
	}
	return 0
}

// A Multiwire is a circuit, or a panel, with two hot conductors and one
// neutral.
type Multiwire struct {
	Phasing Phasing                   // one of those there are
	Current units.Legs[units.Current] // in use at once, of one power factor, each >= 0
	// Device protects each hot, > 0. Not given: what else could flow is not
	// judged.
	Device units.Opt[units.Current]
	// Supply is the device that feeds both hots where they are one, > 0. Not
	// given: nothing but Device holds their sum down.
	Supply  units.Opt[units.Current]
	Neutral units.Opt[units.Current] // ampacity of the neutral, > 0; not given is a finding
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
// not; so do harmonics, which small electronic supplies make.
//
// A field outside the range that [Multiwire] states, or not finite, gives a
// [*units.RangeError]; so does a result that no float64 holds. The
// NeutralCurrent is then the zero value.
func SharedNeutral(m Multiwire) (NeutralCurrent, error) {
	const op = "inverter.SharedNeutral"
	if err := firstError(
		m.Phasing.check(op),
		notNegative[units.Current]().Check(op, "Current.A", m.Current.A),
		notNegative[units.Current]().Check(op, "Current.B", m.Current.B),
		checkOpt(op, "Device", m.Device, positive[units.Current]()),
		checkOpt(op, "Supply", m.Supply, positive[units.Current]()),
		checkOpt(op, "Neutral", m.Neutral, positive[units.Current]()),
	); err != nil {
		return NeutralCurrent{}, err
	}
	n := NeutralCurrent{Circuit: m, Current: m.Phasing.returns(m.Current)}
	if device, ok := m.Device.Get(); ok {
		most := device // one leg alone, or two of three
		if m.Phasing == OneHot {
			most = min(2*device, m.Supply.Or(2*device))
		}
		n.Most = units.Some(most)
	}
	if err := firstError(
		notNegative[units.Current]().Check(op, "Current", n.Current),
		checkOpt(op, "Most", n.Most, positive[units.Current]()),
	); err != nil {
		return NeutralCurrent{}, err
	}
	return n, nil
}

// returns is what comes back in the neutral of two currents in phase with
// their voltages.
func (p Phasing) returns(i units.Legs[units.Current]) units.Current {
	switch p {
	case SplitPhase:
		return i.Unbalance()
	case OneHot:
		return i.Total()
	}
	larger := i.Larger()
	if larger == 0 {
		return 0
	}
	// In parts of the larger, so that no square is too large to hold.
	ratio := float64(min(i.A, i.B)) / float64(larger)
	return units.Scale(larger, units.Ratio(math.Sqrt(1+ratio*ratio-ratio)))
}

// Working returns how the current came about, step by step.
func (n NeutralCurrent) Working() *working.Sheet {
	c := n.Circuit
	s := working.NewSheet("Neutral of two hots, " + c.Phasing.String())
	s.Given("I_A", c.Current.A, "A", "in one hot")
	s.Given("I_B", c.Current.B, "A", "in the other")
	switch c.Phasing {
	case SplitPhase:
		s.Formula("I_n", n.Current, "A", "in the neutral, 180° apart", "abs(I_A - I_B)")
	case OneHot:
		s.Formula("I_n", n.Current, "A", "in the neutral, both from one hot", "I_A + I_B")
	default:
		s.Given("θ", c.Phasing.Angle(), "deg", "between the two")
		s.Formula("I_n", n.Current, "A", "in the neutral", "sqrt(pow(I_A, 2) + pow(I_B, 2) + 2 * I_A * I_B * cos(θ * deg))")
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
	supply, hasSupply := n.Circuit.Supply.Get()
	formula := "I_device"
	if n.Circuit.Phasing == OneHot {
		formula = "2 * I_device"
		if hasSupply {
			s.Given("I_supply", supply, "A", "that protects both together")
			formula = "min(2 * I_device, I_supply)"
		}
	}
	s.Formula("I_most", n.Most.Or(0), "A", "that the devices let flow in the neutral", formula)
}

// Findings returns that the neutral is overloaded or can be, or that this is
// not known where it carries the sum.
func (n NeutralCurrent) Findings() []working.Finding {
	c := n.Circuit
	numbers := []working.Number{{Name: "in the neutral", Value: n.Current}}
	if most, ok := n.Most.Get(); ok {
		numbers = append(numbers, working.Number{Name: "devices let through", Value: most})
	}
	neutral, stated := c.Neutral.Get()
	if stated {
		numbers = append(numbers, working.Number{Name: "neutral", Value: neutral})
	}
	most, hasMost := n.Most.Get()
	f := working.Finding{Severity: working.Danger, Source: necMultiwire, Numbers: numbers}
	switch {
	case stated && units.Exceeds(n.Current, neutral):
		f.Rule = "neutral-overloaded"
		f.Message = "The shared neutral carries more than it may, and no breaker is in it: it overheats and nothing opens."
	case stated && hasMost && units.Exceeds(most, neutral):
		f.Rule = "neutral-can-be-overloaded"
		f.Message = "The devices of the two hots let more flow in the shared neutral than it may carry, and no breaker is in it."
	case c.Phasing == OneHot && !(stated && hasMost):
		f.Rule = "neutral-carries-the-sum"
		f.Message = "Both hots are one, so their shared neutral carries the sum of both, and it is not stated that neutral and devices are made for that."
	default:
		return nil
	}
	f.Fix = "Give each hot a neutral of its own, or feed only one of them; a licensed electrician does it."
	return []working.Finding{f}
}
