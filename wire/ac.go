package wire

import (
	"math"

	"example.com/drawbar/units"
)

// An ACRun is a single-phase alternating-current circuit of two like
// conductors: hot and neutral at 120 V, or both hots at 240 V.
type ACRun struct {
	Current units.Current // of the load, root mean square, > 0
	OneWay  units.Length  // source to load, not there and back, > 0
	Line    ACConductor   // one of the two
	Source  units.Voltage // at the source end, root mean square, > 0
	// PowerFactor is that of the load, above 0, at most 1; not given means 1.
	PowerFactor units.Opt[units.Ratio]
	// Leading says that the current leads the voltage, as with a capacitor; a
	// motor lags. Some power supplies lead.
	Leading bool
	// Method chooses the drop that is judged: ACExact unless said otherwise.
	Method ACMethod
	// Parallel is how many equal conductors lie side by side in each direction,
	// 0 to 100; 0 means one.
	Parallel int
	// Allowed is the drop that is allowed, as a fraction of Source, 0 to 1,
	// neither included. Not given means that nothing is judged.
	Allowed units.Opt[units.Ratio]
}

// ACMethod says which of two drops of an alternating-current run is meant.
type ACMethod uint8

const (
	// ACExact is the difference of the voltages that a meter shows at both ends,
	// for a source of fixed voltage.
	ACExact ACMethod = iota
	// ACApproximate is current times effective impedance,
	// Ze = R·pf + X·sin φ, as NEC Chapter 9 Table 9 has it. It leaves out the part of
	// the drop that turns the voltage, and is too low by that.
	ACApproximate
)

// An AlternatingDrop is the result of [ACDrop].
type AlternatingDrop struct {
	Run        ACRun            // as used
	Impedance  Impedance        // of one conductor per length
	Loop       units.Length     // there and back
	Resistance units.Resistance // of the loop
	Reactance  units.Resistance // of the loop
	// SinPhi is the sine of the angle by which the current lags, negative if it
	// leads.
	SinPhi units.Ratio
	// Effective is the effective impedance of the loop, R·pf + X·sin φ.
	Effective   units.Resistance
	InPhase     units.Voltage // part of the drop along the voltage of the load: the approximate drop
	Quadrature  units.Voltage // part of the drop across it
	Phasor      units.Voltage // I·|Z|: both parts together. Not a difference that a meter shows
	Approximate units.Voltage // drop by ACApproximate
	Exact       units.Voltage // drop by ACExact
	Voltage     units.Voltage // the one that Run.Method chose; below 0 if a leading current raises the voltage
	AtLoad      units.Voltage // Source less Voltage; not above 0 if the load cannot run
	Fraction    units.Ratio   // Voltage over Source
	Heat        units.Power   // given off along the loop, I²R
}

// ACDrop returns the drop of a single-phase run of two conductors:
//
//	a = I·(R·pf + X·sin φ),  b = I·(X·pf - R·sin φ)
//	approximate:  ΔV = a
//	exact:        ΔV = V_source - (√(V_source² - b²) - a)
//
// with R and X of the loop. The power factor is that of the load at the
// voltage it gets. With pf 1 and little reactance the two agree to a part in ten
// thousand; they part where X is not small beside R.
//
// A field outside the range that [ACRun] and [ACConductor] state gives a
// [*units.RangeError] and the zero AlternatingDrop. So does, naming Current, a
// current whose quadrature drop is more than the source has, for which there is
// no exact drop, and a result that no float64 holds.
func ACDrop(r ACRun) (AlternatingDrop, error) { return acDrop("wire.ACDrop", r) }

func acDrop(op string, r ACRun) (AlternatingDrop, error) {
	if err := r.check(op); err != nil {
		return AlternatingDrop{}, err
	}
	z, err := acImpedance(op, r.Line)
	if err != nil {
		return AlternatingDrop{}, err
	}
	d := AlternatingDrop{Run: r, Impedance: z}
	d.parts()
	if err := d.compare(op); err != nil {
		return AlternatingDrop{}, err
	}
	return d, nil
}

// parts fills in the drop along the voltage of the load and across it.
func (d *AlternatingDrop) parts() {
	r := &d.Run
	pf, z := unity(r.PowerFactor.Or(1)), d.Impedance
	r.PowerFactor, r.Parallel, r.Line = units.Some(pf), max(r.Parallel, 1), z.ACConductor
	d.Loop = 2 * r.OneWay
	d.Resistance = units.Scale(z.R.Over(d.Loop), units.Ratio(1/float64(r.Parallel)))
	d.Reactance = units.Scale(z.X.Over(d.Loop), units.Ratio(1/float64(r.Parallel)))
	d.SinPhi = sine(pf)
	if r.Leading {
		d.SinPhi = -d.SinPhi
	}
	d.Effective = units.Scale(d.Resistance, pf) + units.Scale(d.Reactance, d.SinPhi)
	d.InPhase = r.Current.Through(d.Effective)
	d.Quadrature = r.Current.Through(units.Scale(d.Reactance, pf) - units.Scale(d.Resistance, d.SinPhi))
	d.Phasor = units.Voltage(math.Hypot(float64(d.InPhase), float64(d.Quadrature)))
}

// compare fills in both drops and what follows from the chosen one.
func (d *AlternatingDrop) compare(op string) error {
	source, across := float64(d.Run.Source), float64(d.Quadrature)
	turned := units.Minus(source, math.Abs(across))
	if !(turned >= 0) {
		most := units.Current(source / math.Abs(across) * float64(d.Run.Current))
		return &units.RangeError{Op: op, Field: "Current", Value: d.Run.Current, Allowed: units.Above[units.Current](0).AtMost(most)}
	}
	// √(V² - b²) as √(V - |b|)·√(V + |b|) neither overflows nor cancels.
	along := math.Sqrt(turned) * math.Sqrt(source+math.Abs(across))
	d.Approximate = d.InPhase
	d.Exact = d.InPhase + units.Voltage(across/(source+along)*across) // V - √(V² - b²) = b²/(V + √(V² - b²))
	d.Voltage = d.Exact
	if d.Run.Method == ACApproximate {
		d.Voltage = d.Approximate
	}
	d.AtLoad = units.Minus(d.Run.Source, d.Voltage)
	d.Fraction = units.RatioOf(d.Voltage, d.Run.Source)
	d.Heat = d.Run.Current.Heating(d.Resistance)
	if err := (units.Bounds[units.Ratio]{}).Check(op, "Fraction", d.Fraction); err != nil {
		return err
	}
	return units.Above[units.Power](0).Check(op, "Heat", d.Heat)
}

// check reports the first field out of range, but for Line.
func (r ACRun) check(op string) error {
	if err := units.Above[units.Current](0).Check(op, "Current", r.Current); err != nil {
		return err
	}
	if err := units.Above[units.Length](0).Check(op, "OneWay", r.OneWay); err != nil {
		return err
	}
	if err := units.Above[units.Voltage](0).Check(op, "Source", r.Source); err != nil {
		return err
	}
	if pf, ok := r.PowerFactor.Get(); ok {
		if err := powerFactors().Check(op, "PowerFactor", pf); err != nil {
			return err
		}
	}
	switch {
	case r.Method > ACApproximate:
		return &units.RangeError{Op: op, Field: "Method", Value: r.Method, Allowed: wording("exact or approximate")}
	case r.Parallel < 0 || r.Parallel > mostParallel:
		return &units.RangeError{Op: op, Field: "Parallel", Value: r.Parallel, Allowed: parallelRange}
	}
	if allowed, ok := r.Allowed.Get(); ok {
		return allowedDrops().Check(op, "Allowed", allowed)
	}
	return nil
}

// unity returns pf, and exactly 1 where it settles to 1: beyond it there is no
// angle.
func unity(pf units.Ratio) units.Ratio {
	if units.Compare(pf, 1) == 0 {
		return 1
	}
	return pf
}

// sine returns the sine of the angle whose cosine is pf.
func sine(pf units.Ratio) units.Ratio {
	return units.Ratio(math.Sqrt(float64((1 - pf) * (1 + pf)))) // 1 - pf² would cancel
}

// powerFactors is the range of a power factor.
func powerFactors() units.Bounds[units.Ratio] { return units.Above[units.Ratio](0).AtMost(1) }
