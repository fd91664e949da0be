package inverter

import (
	"iter"
	"math/bits"

	"example.com/drawbar/units"
)

// ContinuousShare is the part of a rating that loads of three hours or more
// may take: the inverse of the 125 % of NEC 2017, 210.20 and 215.3.
const ContinuousShare = 80 * units.Percent

// A Limit is what a source, a service or a machine can carry. At least one of
// Power, Apparent and Current is given.
type Limit struct {
	Name     string                         // as in a sentence, such as "the 30 A service"; not empty
	Power    units.Opt[units.Power]         // > 0
	Apparent units.Opt[units.ApparentPower] // > 0
	Current  units.Opt[units.Current]       // > 0, at Voltage
	Voltage  units.Voltage                  // > 0 if Current is given
	// Share is the part of each limit that may be used, > 0 to 100 %, such as
	// [ContinuousShare] for what runs for hours. All of it if not given.
	Share units.Opt[units.Ratio]
	// Passes are demands that reach the source through something that carries
	// less than it does, such as the device before an inverter.
	Passes Members
	// Through is what that carries, > 0, at Voltage, which is needed with it. A
	// Share is of it as well.
	Through units.Opt[units.Current]
}

// Members are demands of a list: bit i is demand i. Of demands that differ in
// nothing but their names the first stand for any as many of them.
type Members uint32

// Len returns how many there are.
func (m Members) Len() int { return bits.OnesCount32(uint32(m)) }

// Has reports whether demand i is one of them.
func (m Members) Has(i int) bool { return i >= 0 && i < 32 && m&(1<<i) != 0 }

// All yields the indexes, lowest first.
func (m Members) All() iter.Seq[int] {
	return func(yield func(int) bool) {
		for rest := uint32(m); rest != 0; rest &= rest - 1 {
			if !yield(bits.TrailingZeros32(rest)) {
				return
			}
		}
	}
}

// A Set is demands that run together.
type Set struct {
	Members  Members             // which demands
	Power    units.Power         // together
	Apparent units.ApparentPower // together, added plainly
	Current  units.Current       // Apparent at the limit's voltage; 0 if that is not given
	Through  units.Current       // of those that Limit.Passes names; 0 if Limit.Through is not given
	// Which limits they exceed.
	OverPower, OverApparent, OverCurrent, OverThrough bool
}

// check reports the first field of l out of range.
func (l Limit) check(op string) error {
	if !l.Power.IsSet() && !l.Apparent.IsSet() && !l.Current.IsSet() {
		return &units.RangeError{Op: op, Field: "Limit", Value: "nothing", Allowed: allowed("at least one of Power, Apparent and Current given")}
	}
	err := firstError(
		checkName(op, "Name", l.Name),
		checkOpt(op, "Power", l.Power, positive[units.Power]()),
		checkOpt(op, "Apparent", l.Apparent, positive[units.ApparentPower]()),
		checkOpt(op, "Current", l.Current, positive[units.Current]()),
		checkOpt(op, "Share", l.Share, shares()),
		checkOpt(op, "Through", l.Through, positive[units.Current]()),
	)
	if err == nil && (l.Current.IsSet() || l.Through.IsSet()) {
		err = positive[units.Voltage]().Check(op, "Voltage", l.Voltage)
	}
	return err
}

// sum adds members up and holds them against the limit.
func (l Limit) sum(demands []Demand, members Members) Set {
	s := Set{Members: members}
	for i := range members.All() {
		if i < len(demands) {
			s.Power += demands[i].Power
			s.Apparent += demands[i].apparent()
		}
	}
	share := l.Share.Or(1)
	if most, ok := l.Power.Get(); ok {
		s.OverPower = units.Exceeds(s.Power, units.Scale(most, share))
	}
	if most, ok := l.Apparent.Get(); ok {
		s.OverApparent = units.Exceeds(s.Apparent, units.Scale(most, share))
	}
	if most, ok := l.Current.Get(); ok {
		s.Current = s.Apparent.At(l.Voltage)
		s.OverCurrent = units.Exceeds(s.Current, units.Scale(most, share))
	}
	if most, ok := l.Through.Get(); ok {
		var passing units.ApparentPower
		for i := range (members & l.Passes).All() {
			if i < len(demands) {
				passing += demands[i].apparent()
			}
		}
		s.Through = passing.At(l.Voltage)
		s.OverThrough = units.Exceeds(s.Through, units.Scale(most, share))
	}
	return s
}

// alike reports whether demands i and j differ in nothing that a set counts.
func (l Limit) alike(demands []Demand, i, j int) bool {
	a, b := demands[i], demands[j]
	return a.Power == b.Power && a.apparent() == b.apparent() && (!l.Through.IsSet() || l.Passes.Has(i) == l.Passes.Has(j))
}

// exceeds reports whether s is too much.
func (s Set) exceeds() bool { return s.OverPower || s.OverApparent || s.OverCurrent || s.OverThrough }

// finite refuses sums that no float64 holds.
func (s Set) finite(op string) error {
	return firstError(
		notNegative[units.Power]().Check(op, "Power", s.Power),
		notNegative[units.ApparentPower]().Check(op, "Apparent", s.Apparent),
		notNegative[units.Current]().Check(op, "Current", s.Current),
		notNegative[units.Current]().Check(op, "Through", s.Through),
	)
}
