package battery_test

import (
	"errors"
	"math"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
)

// hold is an everyday question of which every field can be changed.
func hold() battery.Hold {
	b := lithium140()
	b.RatedOver, b.Exponent = units.Some(5*units.Hour), units.Some[units.Ratio](1.05)
	b.Aged, b.OpenCircuit = units.Some(90*units.Percent), units.Some(13.3*units.Volt)
	return battery.Hold{
		Bank: battery.Bank{
			Battery: b, Series: 2, Parallel: 2, CellTemperature: units.Celsius(20),
			Multiplier: units.Some[units.Ratio](1.1), Vent: units.Some(20 * units.SquareCentimetre),
			Charging: off(),
		},
		Draw:          battery.Draw{Power: units.Some(800 * units.Watt)},
		StateOfCharge: units.Some(80 * units.Percent),
		OpenCircuit:   units.Some(25.6 * units.Volt),
		Leads:         units.Some(1 * units.Milliohm),
		CutOff:        units.Some(21 * units.Volt),
	}
}

func asks[T comparable](f func(battery.Hold) (T, error)) func(battery.Hold) (bool, error) {
	return func(h battery.Hold) (bool, error) {
		var zero T
		v, err := f(h)
		return v == zero, err
	}
}

// questions are the calculators that take a bank; each reports whether its
// result is zero.
var questions = map[string]func(battery.Hold) (bool, error){
	"battery.HoldUp":   asks(battery.HoldUp),
	"battery.Assemble": asks(func(h battery.Hold) (battery.Assembly, error) { return battery.Assemble(h.Bank) }),
	"battery.Usable": asks(func(h battery.Hold) (battery.UsableCharge, error) {
		return battery.Usable(h.Bank, units.Some(30*units.Ampere))
	}),
	"battery.CheckLimits": asks(func(h battery.Hold) (battery.Limits, error) {
		return battery.CheckLimits(battery.Demand{Bank: h.Bank})
	}),
}

var (
	notFinite   = []float64{math.NaN(), math.Inf(1), math.Inf(-1)}
	notPositive = append([]float64{0, -1, math.Copysign(0, -1)}, notFinite...)
	negative    = append([]float64{-1, -1e-300}, notFinite...)
)

func TestEveryFieldIsChecked(t *testing.T) {
	for _, c := range []struct {
		field string
		bad   []float64
		spoil func(*battery.Hold, float64)
		only  string // the one calculator that looks at it; all if empty
	}{
		// Of a battery.
		{"Capacity", notPositive, func(h *battery.Hold, x float64) { h.Bank.Battery.Capacity = units.Charge(x) }, ""},
		{"Voltage", append([]float64{4, 8, 1e9, 1e-9}, notPositive...), func(h *battery.Hold, x float64) { h.Bank.Battery.Voltage = units.Voltage(x) }, ""},
		{"RatedOver", notPositive, func(h *battery.Hold, x float64) { h.Bank.Battery.RatedOver = units.Some(units.Elapsed(x)) }, ""},
		{"Exponent", append([]float64{0.99, 2.01}, notPositive...), func(h *battery.Hold, x float64) { h.Bank.Battery.Exponent = units.Some(units.Ratio(x)) }, ""},
		{"Usable", append([]float64{1.01, 90}, notPositive...), func(h *battery.Hold, x float64) { h.Bank.Battery.Usable = units.Some(units.Ratio(x)) }, ""},
		{"Aged", append([]float64{1.01, 90}, notPositive...), func(h *battery.Hold, x float64) { h.Bank.Battery.Aged = units.Some(units.Ratio(x)) }, ""},
		{"DischargeLimit", notPositive, func(h *battery.Hold, x float64) { h.Bank.Battery.DischargeLimit = units.Some(units.Current(x)) }, ""},
		{"ChargeLimit", notPositive, func(h *battery.Hold, x float64) { h.Bank.Battery.ChargeLimit = units.Some(units.Current(x)) }, ""},
		{"Resistance", notPositive, func(h *battery.Hold, x float64) { h.Bank.Battery.Resistance = units.Some(units.Resistance(x)) }, ""},
		{"OpenCircuit", notPositive, func(h *battery.Hold, x float64) { h.Bank.Battery.OpenCircuit = units.Some(units.Voltage(x)) }, ""},
		{"ChargeLow", append([]float64{-60.1, 80.1}, notFinite...), func(h *battery.Hold, x float64) { h.Bank.Battery.ChargeLow = units.Celsius(x) }, ""},
		{"ChargeHigh", append([]float64{-0.1, 80.1}, notFinite...), func(h *battery.Hold, x float64) { h.Bank.Battery.ChargeHigh = units.Celsius(x) }, ""},
		{"ChargeVoltage", append([]float64{3.65, 12.79, 19.21, 29.2}, notPositive...), func(h *battery.Hold, x float64) { h.Bank.Battery.ChargeVoltage = units.Some(units.Voltage(x)) }, ""},
		// Of a bank.
		{"CellTemperature", append([]float64{-60.1, 80.1, -300}, notFinite...), func(h *battery.Hold, x float64) { h.Bank.CellTemperature = units.Celsius(x) }, ""},
		{"Multiplier", append([]float64{0.99}, notPositive...), func(h *battery.Hold, x float64) { h.Bank.Multiplier = units.Some(units.Ratio(x)) }, ""},
		{"Vent", negative, func(h *battery.Hold, x float64) { h.Bank.Vent = units.Some(units.Area(x)) }, ""},
		{"Series", []float64{0, -1, 1001}, func(h *battery.Hold, x float64) { h.Bank.Series = int(x) }, ""},
		{"Parallel", []float64{0, -1, 1001}, func(h *battery.Hold, x float64) { h.Bank.Parallel = int(x) }, ""},
		{"Chemistry", []float64{0, 5, 255}, func(h *battery.Hold, x float64) { h.Bank.Battery.Chemistry = battery.Chemistry(x) }, ""},
		// Of a hold.
		{"StateOfCharge", append([]float64{1.01}, negative...), func(h *battery.Hold, x float64) { h.StateOfCharge = units.Some(units.Ratio(x)) }, "battery.HoldUp"},
		{"OpenCircuit", notPositive, func(h *battery.Hold, x float64) { h.OpenCircuit = units.Some(units.Voltage(x)) }, "battery.HoldUp"},
		{"Leads", negative, func(h *battery.Hold, x float64) { h.Leads = units.Some(units.Resistance(x)) }, "battery.HoldUp"},
		{"CutOff", notPositive, func(h *battery.Hold, x float64) { h.CutOff = units.Some(units.Voltage(x)) }, "battery.HoldUp"},
		{"Power", append([]float64{1e6}, notPositive...), func(h *battery.Hold, x float64) { h.Draw.Power = units.Some(units.Power(x)) }, "battery.HoldUp"},
		{"Current", append([]float64{1e6}, notPositive...), func(h *battery.Hold, x float64) { h.Draw = battery.Draw{Current: units.Some(units.Current(x))} }, "battery.HoldUp"},
		{"Resistance", negative, func(h *battery.Hold, x float64) {
			h.Draw = battery.Draw{Resistance: units.Some(units.Resistance(x))}
		}, "battery.HoldUp"},
		{"Draw", []float64{0}, func(h *battery.Hold, _ float64) { h.Draw = battery.Draw{} }, "battery.HoldUp"},
		{"Draw", []float64{1}, func(h *battery.Hold, x float64) { h.Draw.Current = units.Some(units.Current(x)) }, "battery.HoldUp"},
	} {
		for op, ask := range questions {
			if c.only != "" && op != c.only {
				continue
			}
			for _, x := range c.bad {
				h := hold()
				c.spoil(&h, x)
				isZero, err := ask(h)
				wantRangeError(t, err, op, c.field)
				if !isZero {
					t.Errorf("%s with %s = %v: the result is not zero", op, c.field, x)
				}
			}
		}
	}
	for op, ask := range questions {
		if _, err := ask(hold()); err != nil {
			t.Errorf("%s: the everyday question fails: %v", op, err)
		}
	}
}

func TestLargestBank(t *testing.T) {
	b := demoBank()
	b.Series, b.Parallel = 1000, 1000
	a := must[battery.Assembly](t)(battery.Assemble(b))
	if a.Batteries != 1000000 || a.Cells != 4000 {
		t.Errorf("%d batteries, %d cells in series", a.Batteries, a.Cells)
	}
}

// A given zero is allowed where it can be meant, and is not a missing value.
func TestGivenZeros(t *testing.T) {
	h := hold()
	h.Leads, h.StateOfCharge = units.Some[units.Resistance](0), units.Some[units.Ratio](0)
	h.Bank.Multiplier = units.Some[units.Ratio](1) // the least there is
	h.Bank.Vent, h.Bank.CellTemperature = units.Some[units.Area](0), units.Celsius(0)
	if e := must[battery.Endurance](t)(battery.HoldUp(h)); e.Hold != h || e.StateOfCharge != 0 || e.Time != 0 {
		t.Errorf("got %+v", e)
	}
	l := must[battery.Limits](t)(battery.CheckLimits(battery.Demand{Bank: demoBank(), Discharge: units.Some[units.Current](0), Charge: units.Some[units.Current](0)}))
	if l.DischargeEach != units.Some[units.Current](0) || l.ChargeEach != units.Some[units.Current](0) {
		t.Errorf("got %+v", l)
	}
}

func TestDemandsAndRatingsAreChecked(t *testing.T) {
	for _, x := range negative {
		_, err := battery.CheckLimits(battery.Demand{Bank: demoBank(), Discharge: units.Some(units.Current(x))})
		wantRangeError(t, err, "battery.CheckLimits", "Discharge")
		_, err = battery.CheckLimits(battery.Demand{Bank: demoBank(), Charge: units.Some(units.Current(x))})
		wantRangeError(t, err, "battery.CheckLimits", "Charge")
	}
	good := battery.Rating{Capacity: 100 * units.AmpereHour, Over: 20 * units.Hour}
	for _, x := range notPositive {
		for field, r := range map[string]battery.Rating{
			"Capacity": {Capacity: units.Charge(x), Over: good.Over}, "Over": {Capacity: good.Capacity, Over: units.Elapsed(x)},
		} {
			_, err := battery.ExponentFrom(r, good)
			wantRangeError(t, err, "battery.ExponentFrom", "A."+field)
			_, err = battery.ExponentFrom(good, r)
			wantRangeError(t, err, "battery.ExponentFrom", "B."+field)
			_, err = battery.Deliver(battery.Discharge{Rating: r, Exponent: 1.2, Current: 5})
			wantRangeError(t, err, "battery.Deliver", field)
		}
		_, err := battery.Deliver(battery.Discharge{Rating: good, Exponent: 1.2, Current: units.Current(x)})
		wantRangeError(t, err, "battery.Deliver", "Current")
		_, err = battery.Usable(demoBank(), units.Some(units.Current(x)))
		wantRangeError(t, err, "battery.Usable", "Current")
		_, err = battery.UnderLoad(battery.Circuit{OpenCircuit: units.Voltage(x), Draw: battery.Draw{Power: units.Some(units.Watt)}})
		wantRangeError(t, err, "battery.UnderLoad", "OpenCircuit")
	}
	// Two ratings that make no exponent.
	_, err := battery.ExponentFrom(good, battery.Rating{Capacity: 50 * units.AmpereHour, Over: 10 * units.Hour})
	wantRangeError(t, err, "battery.ExponentFrom", "B")
	_, err = battery.ExponentFrom(good, battery.Rating{Capacity: 50 * units.AmpereHour, Over: 40 * units.Hour})
	if err != nil {
		t.Errorf("an exponent below 1 is a result: %v", err)
	}
	_, err = battery.ExponentFrom(good, battery.Rating{Capacity: 500 * units.AmpereHour, Over: 40 * units.Hour})
	wantRangeError(t, err, "battery.ExponentFrom", "Exponent")
}

func TestCircuitIsChecked(t *testing.T) {
	for _, x := range negative {
		_, err := battery.UnderLoad(battery.Circuit{
			OpenCircuit: 12, Internal: units.Resistance(x), Draw: battery.Draw{Power: units.Some(units.Watt)},
		})
		wantRangeError(t, err, "battery.UnderLoad", "Internal")
	}
	// A short circuit of a source without resistance has no current.
	_, err := battery.UnderLoad(battery.Circuit{OpenCircuit: 12, Draw: battery.Draw{Resistance: units.Some[units.Resistance](0)}})
	wantRangeError(t, err, "battery.UnderLoad", "Resistance")
	// The most there is, and a little more.
	c := battery.Circuit{OpenCircuit: 12, Internal: 0.5, Draw: battery.Draw{Power: units.Some(72 * units.Watt)}}
	if s, err := battery.UnderLoad(c); err != nil || s.Voltage != 6 {
		t.Errorf("at the most power: %v, %v", s.Voltage, err)
	}
	c.Draw.Power = units.Some(72.001 * units.Watt)
	_, err = battery.UnderLoad(c)
	wantRangeError(t, err, "battery.UnderLoad", "Power")
	var e *units.RangeError
	if errors.As(err, &e) && e.Allowed.String() != "> 0 W and <= 72 W" {
		t.Errorf("allowed is %v", e.Allowed)
	}
	c.Draw = battery.Draw{Current: units.Some(24 * units.Ampere)}
	if s, err := battery.UnderLoad(c); err != nil || s.Voltage != 0 {
		t.Errorf("at the most current: %v, %v", s.Voltage, err)
	}
}

func TestResultTooLargeOrSmall(t *testing.T) {
	for _, c := range []struct {
		field string
		call  func() error
	}{
		{"Energy", func() error {
			b := demoBank()
			b.Battery.Capacity = 1e308
			_, err := battery.Assemble(b)
			return err
		}},
		{"Resistance", func() error {
			b := demoBank()
			b.Series, b.Battery.Resistance = 1000, units.Some[units.Resistance](1e308)
			_, err := battery.Assemble(b)
			return err
		}},
		{"Resistance", func() error { // shared until nothing is left
			b := demoBank()
			b.Battery.Resistance = units.Some[units.Resistance](5e-324)
			_, err := battery.Assemble(b)
			return err
		}},
		{"OpenCircuit", func() error {
			b := demoBank()
			b.Series, b.Battery.OpenCircuit = 1000, units.Some[units.Voltage](1e308)
			_, err := battery.Assemble(b)
			return err
		}},
		{"Energy", func() error {
			b := demoBank()
			b.Battery.Capacity, b.Battery.Aged = 1e-300, units.Some[units.Ratio](1e-30)
			_, err := battery.Usable(b, units.None[units.Current]())
			return err
		}},
		{"DischargeLimit", func() error {
			b := demoBank()
			b.Battery.DischargeLimit = units.Some[units.Current](1e308)
			_, err := battery.CheckLimits(battery.Demand{Bank: b})
			return err
		}},
		{"ChargeLimit", func() error {
			b := demoBank()
			b.Battery.ChargeLimit = units.Some[units.Current](1e308)
			_, err := battery.CheckLimits(battery.Demand{Bank: b})
			return err
		}},
		{"MostPower", func() error {
			b := demoBank()
			b.Parallel, b.Battery.DischargeLimit, b.Battery.Resistance = 1, units.Some[units.Current](1e308), units.None[units.Resistance]()
			_, err := battery.HoldUp(battery.Hold{Bank: b, Draw: battery.Draw{Power: units.Some(units.Watt)}})
			return err
		}},
		{"DischargeLimit", func() error { // of the whole bank, with a resistance that bounds the power
			b := demoBank()
			b.Battery.DischargeLimit = units.Some[units.Current](1e308)
			_, err := battery.HoldUp(battery.Hold{Bank: b, Draw: battery.Draw{Power: units.Some(units.Watt)}})
			return err
		}},
		{"DischargeLimit", func() error {
			b := demoBank()
			b.Battery.DischargeLimit, b.Battery.Resistance = units.Some[units.Current](1e308), units.None[units.Resistance]()
			_, err := battery.HoldUp(battery.Hold{Bank: b, Draw: battery.Draw{Power: units.Some(units.Watt)}})
			return err
		}},
		{"Energy", func() error { // of the usable charge
			b := demoBank()
			b.Battery.Capacity, b.Battery.Aged = 1e-300, units.Some[units.Ratio](1e-30)
			_, err := battery.HoldUp(battery.Hold{Bank: b, Draw: battery.Draw{Current: units.Some(units.Ampere)}})
			return err
		}},
		{"Energy", func() error { // of the load
			_, err := battery.HoldUp(battery.Hold{Bank: demoBank(), OpenCircuit: units.Some[units.Voltage](1e305),
				Draw: battery.Draw{Current: units.Some(units.Ampere)}})
			return err
		}},
		{"Time", func() error {
			b := demoBank()
			b.Battery.Capacity = 1e300
			_, err := battery.HoldUp(battery.Hold{Bank: b, Draw: battery.Draw{Resistance: units.Some[units.Resistance](1e10)}})
			return err
		}},
		{"Law", func() error {
			_, err := battery.Deliver(battery.Discharge{Rating: battery.Rating{Capacity: 1e200, Over: 1}, Exponent: 2, Current: 1e-200})
			return err
		}},
		{"Time", func() error {
			_, err := battery.Deliver(battery.Discharge{Rating: battery.Rating{Capacity: 1e200, Over: 1}, Exponent: 1, Current: 1e-200})
			return err
		}},
		{"Capacity", func() error {
			_, err := battery.Deliver(battery.Discharge{Rating: battery.Rating{Capacity: 1e200, Over: 1e-200}, Exponent: 1, Current: 1})
			return err
		}},
		{"Current", func() error {
			_, err := battery.UnderLoad(battery.Circuit{OpenCircuit: 1e300, Draw: battery.Draw{Resistance: units.Some[units.Resistance](1e-300)}})
			return err
		}},
		{"Lost", func() error {
			_, err := battery.UnderLoad(battery.Circuit{OpenCircuit: 1e300, Internal: 1e200, Draw: battery.Draw{Resistance: units.Some[units.Resistance](1e-300)}})
			return err
		}},
		{"Power", func() error {
			_, err := battery.UnderLoad(battery.Circuit{OpenCircuit: 1e200, Draw: battery.Draw{Resistance: units.Some[units.Resistance](1)}})
			return err
		}},
	} {
		err := c.call()
		var e *units.RangeError
		if !errors.As(err, &e) || e.Field != c.field {
			t.Errorf("%s: %v, want a *units.RangeError for it", c.field, err)
		}
	}
}

func TestFreezingAndVentilationAreChecked(t *testing.T) {
	for _, x := range append([]float64{1.01}, negative...) {
		f, err := battery.FreezingPoint(units.Ratio(x))
		wantRangeError(t, err, "battery.FreezingPoint", "state")
		if f != (battery.Freezing{}) {
			t.Errorf("FreezingPoint(%v) = %+v", x, f)
		}
	}
	_, err := battery.Ventilate(demoBank())
	wantRangeError(t, err, "battery.Ventilate", "Chemistry")
	b := demoBank()
	b.Series = 0
	_, err = battery.Ventilate(b)
	wantRangeError(t, err, "battery.Ventilate", "Series")
}
