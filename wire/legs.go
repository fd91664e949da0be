package wire

import (
	"math"

	"example.com/drawbar/units"
)

// LegSupply is how the two legs of a supply stand to each other, which decides
// what their shared neutral carries. The zero value is [SplitPhase].
type LegSupply uint8

const (
	// SplitPhase is 120/240 V: the legs are opposite, and the neutral carries
	// their difference.
	SplitPhase LegSupply = iota
	// NetworkLegs is two legs of 120/208 V: a third of a turn apart, leg B ahead
	// of leg A. The neutral of equal legs carries as much as a leg. For the
	// other order swap the legs.
	NetworkLegs
	// OneHot is both legs on one hot, as an adapter to a 30 A or 15 A receptacle
	// makes them: hot and neutral carry the sum.
	OneHot
)

// suppliesThereAre is what a supply of two legs may be.
const suppliesThereAre = wording("SplitPhase, NetworkLegs or OneHot")

// check refuses a supply that is not one of those there are.
func (s LegSupply) check(op string) error {
	if s > OneHot {
		return &units.RangeError{Op: op, Field: "Supply", Value: s, Allowed: suppliesThereAre}
	}
	return nil
}

// Angle returns the angle between the voltages of the two hots: 180°, 120° or
// 0°; 0° if s is not defined.
func (s LegSupply) Angle() units.Angle {
	switch s {
	case SplitPhase:
		return 180 * units.Degree
	case NetworkLegs:
		return 120 * units.Degree
	}
	return 0
}

// A LegRun is a feeder of two hot legs and the neutral that they share.
type LegRun struct {
	// Currents of the loads from leg to neutral, root mean square, each >= 0,
	// not both 0. A 240 V load is in both legs.
	Currents units.Legs[units.Current]
	// PowerFactors, lagging, above 0, at most 1; 0 means not given, which is 1.
	// The angle is counted from the voltage of the source, not from that of the
	// load as by [ACDrop], so that a lagging load can drop more than is found.
	PowerFactors units.Legs[units.Ratio]
	Supply       LegSupply     // SplitPhase unless said otherwise
	OneWay       units.Length  // source to load, not there and back, > 0
	Line         ACConductor   // one of the hots
	Neutral      ACConductor   // without Size and Stated: like Line
	Source       units.Voltage // leg to neutral at the source end, > 0
	// Allowed is the drop that is allowed on each leg, as a fraction of Source, 0
	// to 1, neither included. Not given means that nothing is judged.
	Allowed units.Opt[units.Ratio]
}

// A LegVoltages is the result of [LegDrop].
type LegVoltages struct {
	Run     LegRun    // as used
	Line    Impedance // of one hot per length
	Neutral Impedance // of the neutral per length
	// Resistance and reactance of one hot and of the neutral, one way.
	LineR, LineX, NeutralR, NeutralX units.Resistance

	InNeutral units.Current             // what the shared neutral carries
	InLine    units.Current             // what the more loaded hot carries; with OneHot what the one carries
	AtLoad    units.Legs[units.Voltage] // leg to neutral at the load
	Drop      units.Legs[units.Voltage] // Source less AtLoad; below 0 where the leg rises
	Fraction  units.Legs[units.Ratio]   // Drop over Source
	LineLine  units.Voltage             // from leg to leg at the load; 0 with OneHot
	Heat      units.Power               // given off along all conductors
}

// LegDrop returns the voltages at the far end of a feeder of two legs that share
// a neutral, by adding phasors:
//
//	I_N = I_A + I_B
//	V_A = E_A - Z_line·I_A - Z_neutral·I_N, and V_B likewise
//
// with impedances one way. Balanced opposite legs leave the neutral without
// current, and each drops over one conductor only; the lighter leg of an
// unbalanced pair may rise above the source. An open neutral is another matter:
// see [OpenNeutral]; what the devices let flow in the neutral is [SharedNeutral].
//
// A field outside the range that [LegRun] and [ACConductor] state gives a
// [*units.RangeError] and the zero LegVoltages, and so does a result that no
// float64 holds.
func LegDrop(r LegRun) (LegVoltages, error) {
	const op = "wire.LegDrop"
	if err := r.check(op); err != nil {
		return LegVoltages{}, err
	}
	if r.Neutral.isLikeLine() {
		r.Neutral = r.Line
	}
	line, err := acImpedance(op, r.Line)
	if err != nil {
		return LegVoltages{}, err
	}
	neutral, err := acImpedance(op, r.Neutral)
	if err != nil {
		return LegVoltages{}, err
	}
	r.Line, r.Neutral = line.ACConductor, neutral.ACConductor
	r.PowerFactors = units.Legs[units.Ratio]{A: notZero(r.PowerFactors.A), B: notZero(r.PowerFactors.B)}
	v := LegVoltages{Run: r, Line: line, Neutral: neutral,
		LineR: line.R.Over(r.OneWay), LineX: line.X.Over(r.OneWay),
		NeutralR: neutral.R.Over(r.OneWay), NeutralX: neutral.X.Over(r.OneWay)}
	err = v.solve(op)
	return v, err
}

// isLikeLine reports whether a neutral was left out.
func (a ACConductor) isLikeLine() bool {
	return !a.Conductor.Size.IsValid() && !a.Conductor.Stated.IsSet()
}

// notZero returns a power factor as used.
func notZero(pf units.Ratio) units.Ratio {
	if pf == 0 {
		return 1
	}
	return unity(pf)
}

// solve fills in the voltages. On an error v is the zero value.
func (v *LegVoltages) solve(op string) error {
	p := v.phasors()
	v.InNeutral = units.Current(math.Hypot(p.nx, p.ny))
	v.InLine = v.Run.Currents.Larger()
	hots := v.Run.Currents.A.Heating(v.LineR) + v.Run.Currents.B.Heating(v.LineR)
	if v.Run.Supply == OneHot {
		v.InLine = v.InNeutral
		hots = v.InNeutral.Heating(v.LineR)
	}
	v.Heat = hots + v.InNeutral.Heating(v.NeutralR)
	v.AtLoad = units.Legs[units.Voltage]{A: units.Voltage(math.Hypot(p.vax, p.vay)), B: units.Voltage(math.Hypot(p.vbx, p.vby))}
	v.LineLine = units.Voltage(math.Hypot(units.Minus(p.vax, p.vbx), units.Minus(p.vay, p.vby)))
	e := v.Run.Source
	v.Drop = units.Legs[units.Voltage]{A: units.Minus(e, v.AtLoad.A), B: units.Minus(e, v.AtLoad.B)}
	v.Fraction = units.Legs[units.Ratio]{A: units.RatioOf(v.Drop.A, e), B: units.RatioOf(v.Drop.B, e)}
	err := units.Above[units.Power](0).Check(op, "Heat", v.Heat)
	if err == nil {
		err = (units.Bounds[units.Ratio]{}).Check(op, "Fraction", v.Fraction.Larger())
	}
	if err == nil {
		err = (units.Bounds[units.Voltage]{}).Check(op, "LineLine", v.LineLine)
	}
	if err != nil {
		*v = LegVoltages{}
	}
	return err
}

// legPhasors are the currents in amperes and the voltages at the load in volts,
// each along the voltage of leg A at the source and across it.
type legPhasors struct {
	cos, sin           float64 // of the angle of leg B
	ax, ay, bx, by     float64 // currents of the legs
	nx, ny             float64 // of the neutral
	vax, vay, vbx, vby float64
}

// phasors adds the currents and takes the drops from the source.
func (v LegVoltages) phasors() (p legPhasors) {
	r := v.Run
	switch r.Supply {
	case NetworkLegs:
		p.cos, p.sin = -0.5, math.Sqrt(3)/2
	case OneHot:
		p.cos, p.sin = 1, 0
	default:
		p.cos, p.sin = -1, 0
	}
	a, b := float64(r.Currents.A), float64(r.Currents.B)
	along, across := b*float64(r.PowerFactors.B), -b*float64(sine(r.PowerFactors.B))
	p.ax, p.ay = a*float64(r.PowerFactors.A), -a*float64(sine(r.PowerFactors.A))
	p.bx, p.by = p.cos*along-p.sin*across, p.sin*along+p.cos*across
	p.nx, p.ny = units.Minus(p.ax, -p.bx), units.Minus(p.ay, -p.by)
	hx, hy, gx, gy := p.ax, p.ay, p.bx, p.by // in the hots
	if r.Supply == OneHot {
		hx, hy, gx, gy = p.nx, p.ny, p.nx, p.ny
	}
	e, lr, lx, nr, nx := float64(r.Source), float64(v.LineR), float64(v.LineX), float64(v.NeutralR), float64(v.NeutralX)
	inX, inY := nr*p.nx-nx*p.ny, nr*p.ny+nx*p.nx
	p.vax, p.vay = e-(lr*hx-lx*hy)-inX, -(lr*hy+lx*hx)-inY
	p.vbx, p.vby = e*p.cos-(lr*gx-lx*gy)-inX, e*p.sin-(lr*gy+lx*gx)-inY
	return p
}

// check reports the first field out of range, but for the conductors.
func (r LegRun) check(op string) error {
	if err := checkLeg(op, "Currents.A", "PowerFactors.A", r.Currents.A, r.PowerFactors.A); err != nil {
		return err
	}
	if err := checkLeg(op, "Currents.B", "PowerFactors.B", r.Currents.B, r.PowerFactors.B); err != nil {
		return err
	}
	if err := units.Above[units.Current](0).Check(op, "Currents", r.Currents.Larger()); err != nil {
		return err
	}
	if err := r.Supply.check(op); err != nil {
		return err
	}
	if err := units.Above[units.Length](0).Check(op, "OneWay", r.OneWay); err != nil {
		return err
	}
	if err := units.Above[units.Voltage](0).Check(op, "Source", r.Source); err != nil {
		return err
	}
	if allowed, ok := r.Allowed.Get(); ok {
		return allowedDrops().Check(op, "Allowed", allowed)
	}
	return nil
}

// checkLeg reports the first field of one leg out of range.
func checkLeg(op, currents, factors string, i units.Current, pf units.Ratio) error {
	if err := units.AtLeast[units.Current](0).Check(op, currents, i); err != nil {
		return err
	}
	if pf == 0 {
		return nil
	}
	return powerFactors().Check(op, factors, pf)
}
