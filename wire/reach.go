package wire

import "example.com/drawbar/units"

// A Reach is the result of [LongestRun].
type Reach struct {
	Run       Run           // as used, its OneWay the answer
	PerLength PerLength     // resistance of one conductor
	Voltage   units.Voltage // the drop that is allowed
	Loop      units.Length  // there and back
	OneWay    units.Length  // the longest run, source to load
}

// LongestRun returns the greatest one-way length that keeps the drop of r
// within r.Allowed, which must be given:
//
//	L = Allowed · Source / (2 · I · r)
//
// r.OneWay is not looked at. Errors are as for [VoltageDrop].
func LongestRun(r Run) (Reach, error) {
	const op = "wire.LongestRun"
	if err := r.check(op); err != nil {
		return Reach{}, err
	}
	p, err := resistance(op, r.Conductor)
	if err != nil {
		return Reach{}, err
	}
	r.Conductor = p.Conductor
	x := Reach{Run: r, PerLength: p}
	if x.Voltage, err = r.allowedVoltage(op); err != nil {
		return Reach{}, err
	}
	x.Loop = units.Length(float64(x.Voltage) / (float64(r.Current) * float64(p.At)))
	x.OneWay = x.Loop / 2
	x.Run.OneWay = x.OneWay
	if err := units.Above[units.Length](0).Check(op, "OneWay", x.OneWay); err != nil {
		return Reach{}, err
	}
	return x, nil
}
