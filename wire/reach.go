package wire

import "example.com/drawbar/units"

// A Reach is the result of [LongestRun].
type Reach struct {
	Run       Run           // as used, its OneWay the answer
	PerLength PerLength     // resistance of one conductor
	Voltage   units.Voltage // the drop that is allowed
	Loop      units.Length  // of conductor: there and back, or there only if the chassis returns
	OneWay    units.Length  // the longest run, source to load
}

// LongestRun returns the greatest one-way length that keeps the drop of r
// within r.Allowed, which must be given:
//
//	L = Allowed · Source / (2 · I · r)
//
// and what chassis and contacts leave of it, divided among conductors in
// parallel. r.OneWay is not looked at. Errors are as for [VoltageDrop]; where
// chassis and contacts alone use up what is allowed, the error names OneWay.
func LongestRun(r Run) (Reach, error) { return longestRun("wire.LongestRun", r) }

func longestRun(op string, r Run) (Reach, error) {
	if err := r.check(op); err != nil {
		return Reach{}, err
	}
	p, err := resistance(op, r.Conductor)
	if err != nil {
		return Reach{}, err
	}
	r.Conductor, r.Parallel = p.Conductor, r.sideBySide()
	x := Reach{Run: r, PerLength: p}
	if x.Voltage, err = r.allowedVoltage(op); err != nil {
		return Reach{}, err
	}
	left := units.Minus(x.Voltage.Per(r.Current), r.fixed())
	x.Loop = units.Length(float64(left) * float64(r.sideBySide()) / float64(p.At))
	if x.OneWay = x.Loop; !r.Chassis.IsSet() {
		x.OneWay /= 2
	}
	x.Run.OneWay = x.OneWay
	if err := units.Above[units.Length](0).Check(op, "OneWay", x.OneWay); err != nil {
		return Reach{}, err
	}
	return x, nil
}
