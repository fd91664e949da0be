package wire

import (
	"math"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A WarmRun is a direct-current run whose conductor temperature follows from
// its load.
type WarmRun struct {
	// Run without a temperature of its conductor, and without Current if Power is
	// given. Its conductor has a Size: neither Resistivity nor Stated.
	Run Run
	// Power, if given, is that of a load that takes the same power at any
	// voltage, as an inverter or a converter does; > 0. Its current rises as the
	// voltage falls.
	Power units.Opt[units.Power]
	// Ampacity of one conductor as it is laid: the current that warms it to Rated
	// in air of Base, > 0. It is that of a table, adjusted for bundling, but not
	// corrected for ambient temperature: Table times Bundle of a
	// [CarryingCapacity], whose Column has Rated.
	Ampacity units.Current
	// Rated is the conductor temperature that Ampacity belongs to, such as that of
	// the column of the table; above Base, at most 150 °C; needed.
	Rated units.Temperature
	// Base is the air that Ampacity belongs to, -40 °C to 150 °C; not given means
	// 30 °C, as NEC and IEC tables have it.
	Base units.Temperature
	// Ambient is the air round the conductor, -40 °C to 150 °C; not given means
	// Base.
	Ambient units.Temperature
}

// A WarmedDrop is the result of [WarmDrop].
type WarmedDrop struct {
	Run         WarmRun           // as used; Base and Ambient are filled in
	Temperature units.Temperature // of the conductor, in the end
	// BySquare is T_a + (T_r - T_b)·(I/I_z)², the rule of thumb, which takes the
	// heat as if the conductor were at Rated: too warm below the ampacity, too
	// cool above it.
	BySquare units.Temperature
	Rise     units.TemperatureChange // above Run.Ambient
	Steps    int                     // how many steps it took
	Drop     Drop                    // at Temperature
	// AtAmbient is the drop before the conductor has warmed.
	AtAmbient Drop
}

// The iteration ends when a step moves the temperature by less than unmoved,
// which is far less than a verdict sees, and gives up after mostSteps: it has
// no end where the heat grows faster than the air takes it.
const (
	unmoved   units.TemperatureChange = 1e-10
	mostSteps int                     = 1000
)

// WarmDrop returns the drop of a run at the temperature that its own current
// brings the conductor to:
//
//	T = T_a + (T_r - T_b) · (I/I_z)² · r(T)/r(T_r)
//
// where I_z is the ampacity of one conductor, which by its definition warms it
// from T_b to T_r, and I the current of one conductor. The heat of the conductor
// grows with its resistance r(T), and the current of a constant-power load with
// the drop, so the temperature is found by iteration from T_a, as the conductor
// itself warms; the result says in how many steps, and [WarmedDrop.Step]
// explains each. The rise is
// proportional to the heat, as in a steady state; the first minutes are cooler.
//
// A field outside the range that [WarmRun] states gives a [*units.RangeError]
// and the zero WarmedDrop. So does, naming Temperature, a conductor that would
// get hotter than 150 °C, and naming Power, a load that no voltage is left for.
func WarmDrop(w WarmRun) (WarmedDrop, error) {
	const op = "wire.WarmDrop"
	if err := w.check(op); err != nil {
		return WarmedDrop{}, err
	}
	w.Base = w.Base.Or(units.Celsius(30))
	w.Ambient = w.Ambient.Or(w.Base)
	if err := w.checkBase(op); err != nil {
		return WarmedDrop{}, err
	}
	result := WarmedDrop{Run: w}
	last, err := w.settle(op, &result.Steps)
	if err != nil {
		return WarmedDrop{}, err
	}
	result.Temperature, result.Rise = last.To, last.Rise
	square := float64(last.Load) * float64(last.Load)
	result.BySquare = w.Ambient.Add(units.TemperatureChange(square * float64(w.Rated.Sub(w.Base))))
	if result.Drop, err = w.dropWith(op, last.PerLength.warmedTo(last.To)); err != nil {
		return WarmedDrop{}, err
	}
	if result.AtAmbient, err = w.dropWith(op, last.PerLength.warmedTo(w.Ambient)); err != nil {
		return WarmedDrop{}, err
	}
	return result, nil
}

// settle repeats the step until it no longer moves the temperature, counting,
// and returns the last. From below, every step is warmer than the one before,
// and the first temperature that stays is the one that the conductor reaches.
func (w WarmRun) settle(op string, steps *int) (WarmStep, error) {
	rated, err := w.rated(op)
	if err != nil {
		return WarmStep{}, err
	}
	t := w.Ambient
	for {
		s, err := w.step(op, rated, t)
		if err != nil {
			return WarmStep{}, err
		}
		*steps++
		moved := s.To.Sub(t)
		t = s.To
		switch {
		case !metalTemperatures.Contains(t):
			return WarmStep{}, metalTemperatures.Check(op, "Temperature", t)
		case max(moved, -moved) < unmoved:
			return s, nil
		case *steps == mostSteps:
			return WarmStep{}, metalTemperatures.Check(op, "Temperature", units.Celsius(math.Inf(1)))
		}
	}
}

// step works one step of the iteration out.
func (w WarmRun) step(op string, rated PerLength, from units.Temperature) (WarmStep, error) {
	s := WarmStep{Run: w, From: from, Rated: rated, PerLength: rated.warmedTo(from)}
	var err error
	if s.Current, s.AtLoad, err = w.current(op, s.PerLength); err != nil {
		return WarmStep{}, err
	}
	load := float64(s.Current) / float64(w.Run.sideBySide()) / float64(w.Ampacity)
	s.Load = units.Ratio(load)
	heat := load * load * float64(s.PerLength.At) / float64(s.Rated.At)
	s.Rise = units.TemperatureChange(float64(w.Rated.Sub(w.Base)) * heat)
	s.To = w.Ambient.Add(s.Rise)
	return s, nil
}

// rated returns the resistance at Rated, from which every other follows.
func (w WarmRun) rated(op string) (PerLength, error) {
	c := w.Run.Conductor
	c.Temperature = w.Rated
	return resistance(op, c)
}

// warmedTo returns p at another temperature of the conductor, which is in
// range.
func (p PerLength) warmedTo(t units.Temperature) PerLength {
	p.Conductor.Temperature = t
	p.look()
	return p
}

// current returns the current of the load with a conductor of that resistance,
// and the voltage that is left for it.
func (w WarmRun) current(op string, p PerLength) (units.Current, units.Voltage, error) {
	loop := w.Run.loop(p.At, w.Run.wired(w.Run.OneWay))
	power, ok := w.Power.Get()
	if !ok {
		return w.Run.Current, units.Minus(w.Run.Source, w.Run.Current.Through(loop)), nil
	}
	v := float64(w.Run.Source)
	most := units.Power(v / float64(loop) * v / 4)
	left := 1 - float64(power)/float64(most)
	if !(left >= 0) || !(most > 0) {
		return 0, 0, &units.RangeError{Op: op, Field: "Power", Value: power, Allowed: units.Above[units.Power](0).AtMost(most)}
	}
	atLoad := units.Voltage(v / 2 * (1 + math.Sqrt(left)))
	return power.At(atLoad), atLoad, nil
}

// dropWith returns the drop with the conductor as warm as p is.
func (w WarmRun) dropWith(op string, p PerLength) (Drop, error) {
	r := w.Run
	var err error
	if r.Current, _, err = w.current(op, p); err != nil {
		return Drop{}, err
	}
	return r.drop(op, p)
}

// check reports the first field out of range, but for Base.
func (w WarmRun) check(op string) error {
	if power, ok := w.Power.Get(); ok {
		if err := units.Above[units.Power](0).Check(op, "Power", power); err != nil {
			return err
		}
		if w.Run.Current != 0 {
			return &units.RangeError{Op: op, Field: "Current", Value: w.Run.Current, Allowed: wording("not given beside Power")}
		}
	} else if err := units.Above[units.Current](0).Check(op, "Current", w.Run.Current); err != nil {
		return err
	}
	if err := w.Run.checkCircuit(op); err != nil {
		return err
	}
	if err := units.Above[units.Length](0).Check(op, "OneWay", w.Run.OneWay); err != nil {
		return err
	}
	c := w.Run.Conductor
	switch {
	case c.Temperature.IsSet():
		return &units.RangeError{Op: op, Field: "Temperature", Value: c.Temperature, Allowed: notGiven{}}
	case c.Stated.IsSet():
		return &units.RangeError{Op: op, Field: "Stated", Value: c.Stated, Allowed: notGiven{}}
	case c.Resistivity.IsSet():
		return &units.RangeError{Op: op, Field: "Resistivity", Value: c.Resistivity, Allowed: notGiven{}}
	}
	if err := c.check(op); err != nil {
		return err
	}
	return units.Above[units.Current](0).Check(op, "Ampacity", w.Ampacity)
}

// checkBase reports the first temperature out of range.
func (w WarmRun) checkBase(op string) error {
	if err := metalTemperatures.Check(op, "Base", w.Base); err != nil {
		return err
	}
	if err := metalTemperatures.Check(op, "Ambient", w.Ambient); err != nil {
		return err
	}
	if !w.Rated.IsSet() || w.Rated.Compare(w.Base) <= 0 || !metalTemperatures.Contains(w.Rated) {
		return &units.RangeError{Op: op, Field: "Rated", Value: w.Rated, Allowed: wording("above Base, at most 150 °C")}
	}
	return nil
}

// A WarmStep is one step of the iteration of [WarmDrop].
type WarmStep struct {
	Run       WarmRun                 // as used
	From      units.Temperature       // where the step begins
	Rated     PerLength               // resistance of one conductor at Run.Rated
	PerLength PerLength               // and at From
	AtLoad    units.Voltage           // voltage left for the load
	Current   units.Current           // of the load
	Load      units.Ratio             // current of one conductor over its ampacity
	Rise      units.TemperatureChange // above Run.Ambient
	To        units.Temperature       // where the step ends
}

// Step repeats step n of the iteration, 1 to Steps; ok is false for any other
// n.
func (d WarmedDrop) Step(n int) (s WarmStep, ok bool) {
	const op = "wire.WarmedDrop.Step"
	rated, err := d.Run.rated(op)
	if n < 1 || n > d.Steps || err != nil { // an error is of a result that was changed by hand
		return WarmStep{}, false
	}
	t := d.Run.Ambient
	for range n {
		next, err := d.Run.step(op, rated, t)
		if err != nil {
			return WarmStep{}, false
		}
		s, t = next, next.To
	}
	return s, true
}

var (
	riseSource = working.Source{Body: "Neher and McGrath",
		Title: "The calculation of the temperature rise and load capability of cable systems", Edition: "1957",
		Place: "a steady rise is in proportion to the heat, as IEC 60287 and BS 7671 Appendix 4 have it too", Provenance: working.Memory}
	ohmOfPower = working.Source{Title: "Ohm's law for a load of constant power", Provenance: working.Derived}
)
