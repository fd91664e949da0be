package wire

import (
	"math"
	"strconv"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Loss is the result of [EnergyLost].
type Loss struct {
	Run        Run              // as used; its Current is that of the step with the most
	PerLength  PerLength        // resistance of one conductor
	Resistance units.Resistance // of the loop
	Steps      int              // how many steps the load has
	Time       units.Elapsed    // that they cover
	Peak       int              // step with the greatest current
	PeakDrop   units.Ratio      // drop in it, over Source
	Mean       units.Current    // mean of the currents of the steps
	RMS        units.Current    // root of the mean of their squares
	Lost       units.Energy     // as heat along the loop
	FromSource units.Energy     // what the source gave
	ToLoad     units.Energy     // what was left of it for the load
	Fraction   units.Ratio      // Lost over FromSource; 0 if it gave nothing
	ADay       units.Energy     // Lost, for 24 hours at that rate
}

// CurrentOrPower is what a load over time is a series of.
type CurrentOrPower interface {
	units.Current | units.Power
	units.Quantity
}

// EnergyLost returns the energy that the conductors of r take over a load:
//
//	E = Σ I² · R_loop · Δt
//
// The load is a series of currents, or of powers at the load; a power draws the
// current that it needs at the voltage that the drop leaves it. Current goes in
// with its square: steady 10 A for a day lose a third of what 30 A lose in 8
// hours, with the same charge. So the means over long steps hide loss: a load
// that switches within a step loses more, and never less.
//
// r.Current is not looked at. Values are 0 to the most that the loop can carry:
// a power beyond that has no voltage left, and a current loses more than the
// source has. One that is not gives a [*units.RangeError] that names
// "load.Values[37]"; so does a load without values, and what [VoltageDrop]
// refuses. A series that is not usable is the error of [units.Series.Check].
// The Loss is then the zero value. Nothing is allocated.
func EnergyLost[Q CurrentOrPower](r Run, load units.Series[Q]) (Loss, error) {
	const op = "wire.EnergyLost"
	loop, p, err := lossLoop(op, r, load)
	if err != nil {
		return Loss{}, err
	}
	r.Conductor, r.Parallel = p.Conductor, r.sideBySide()
	x := Loss{Run: r, PerLength: p, Resistance: loop, Steps: load.Len(), Time: units.Scale(units.ElapsedOf(load.Step), units.Ratio(load.Len()))}
	draw := drawing[Q](loop, r.Source)
	var sum, squares, most float64
	for i, q := range load.Values {
		current, ok := draw.current(float64(q))
		if !ok {
			return Loss{}, draw.refuse(op, i, q)
		}
		sum += current
		squares += current * current
		if i == 0 || current > most {
			x.Peak, most = i, current
		}
	}
	n := float64(load.Len())
	x.Mean, x.RMS = units.Current(sum/n), units.Current(math.Sqrt(squares/n))
	x.Run.Current = units.Current(most)
	x.PeakDrop = units.RatioOf(x.Run.Current.Through(loop), r.Source)
	x.Lost = x.RMS.Heating(loop).For(x.Time)
	x.FromSource = x.Mean.At(r.Source).For(x.Time)
	x.ToLoad = units.Minus(x.FromSource, x.Lost)
	if x.FromSource > 0 {
		x.Fraction = units.RatioOf(x.Lost, x.FromSource)
	}
	x.ADay = x.RMS.Heating(loop).For(day)
	if err := (units.Bounds[units.Energy]{}).Check(op, "FromSource", x.FromSource); err != nil {
		return Loss{}, err
	}
	if err := (units.Bounds[units.Energy]{}).Check(op, "ADay", x.ADay); err != nil {
		return Loss{}, err
	}
	return x, nil
}

// day is what a loss is told for.
const day = 24 * units.Hour

// lossLoop checks r and load and returns the resistance of the loop.
func lossLoop[Q CurrentOrPower](op string, r Run, load units.Series[Q]) (units.Resistance, PerLength, error) {
	if err := load.Check(op, "load"); err != nil {
		return 0, PerLength{}, err
	}
	if load.Len() == 0 {
		return 0, PerLength{}, &units.RangeError{Op: op, Field: "load", Value: emptyList, Allowed: wording("one step at least")}
	}
	if err := r.checkCircuit(op); err != nil {
		return 0, PerLength{}, err
	}
	if err := units.Above[units.Length](0).Check(op, "OneWay", r.OneWay); err != nil {
		return 0, PerLength{}, err
	}
	p, err := resistance(op, r.Conductor)
	if err != nil {
		return 0, PerLength{}, err
	}
	return r.loop(p.At, r.wired(r.OneWay)), p, nil
}

// A drawer turns a value of a load into the current that it draws.
type drawer[Q CurrentOrPower] struct {
	isPower bool
	source  float64 // volts
	most    float64 // that the loop can feed
}

// drawing returns the drawer for loads behind a loop.
func drawing[Q CurrentOrPower](loop units.Resistance, source units.Voltage) drawer[Q] {
	d := drawer[Q]{source: float64(source)}
	d.most = d.source / float64(loop)
	var q Q
	if _, d.isPower = any(q).(units.Power); d.isPower {
		d.most *= d.source / 4
	}
	d.most = min(d.most, math.MaxFloat64)
	return d
}

// current returns the current of one value, and whether it can flow.
func (d drawer[Q]) current(x float64) (amperes float64, ok bool) {
	switch {
	case !(0 <= x && x <= d.most):
		return 0, false
	case !d.isPower:
		return x, true
	}
	return x / (d.source / 2 * (1 + math.Sqrt(1-x/d.most))), true
}

// refuse returns the error of a value that cannot be, as [units.CheckSeries]
// names it.
func (d drawer[Q]) refuse(op string, i int, q Q) error {
	return &units.RangeError{Op: op, Field: "load.Values[" + strconv.Itoa(i) + "]", Value: q, Allowed: units.Between(0, Q(d.most))}
}

// A LossStep is one step of a load, as [EnergyLostIn] explains it.
type LossStep struct {
	Run        Run                    // as used, with the current of the step
	PerLength  PerLength              // resistance of one conductor
	Resistance units.Resistance       // of the loop
	Index      int                    // of the step
	Time       units.Elapsed          // length of the step
	Power      units.Opt[units.Power] // at the load, if the load is a series of powers
	Drop       units.Voltage          // lost in the loop
	Lost       units.Energy           // in the step
}

// EnergyLostIn explains step i of what [EnergyLost] adds up, with its errors. An
// i that the load does not have is a [*units.RangeError].
func EnergyLostIn[Q CurrentOrPower](r Run, load units.Series[Q], i int) (LossStep, error) {
	const op = "wire.EnergyLostIn"
	loop, p, err := lossLoop(op, r, load)
	if err != nil {
		return LossStep{}, err
	}
	if i < 0 || i >= load.Len() {
		return LossStep{}, &units.RangeError{Op: op, Field: "i", Value: i, Allowed: wording("a step of the load, counted from 0")}
	}
	draw := drawing[Q](loop, r.Source)
	current, ok := draw.current(float64(load.Values[i]))
	if !ok {
		return LossStep{}, draw.refuse(op, i, load.Values[i])
	}
	r.Conductor, r.Parallel, r.Current = p.Conductor, r.sideBySide(), units.Current(current)
	x := LossStep{Run: r, PerLength: p, Resistance: loop, Index: i, Time: units.ElapsedOf(load.Step)}
	if draw.isPower {
		x.Power = units.Some(units.Power(load.Values[i]))
	}
	x.Drop = r.Current.Through(loop)
	x.Lost = r.Current.Heating(loop).For(x.Time)
	if err := (units.Bounds[units.Energy]{}).Check(op, "Lost", x.Lost); err != nil {
		return LossStep{}, err
	}
	return x, nil
}

// lossSource is the rule behind the sum.
var lossSource = working.Source{Title: "Joule's law, step by step", Provenance: working.Derived}
