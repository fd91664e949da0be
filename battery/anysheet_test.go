package battery_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// workable is a result that explains itself.
type workable interface{ Working() *working.Sheet }

// A dice throws legal inputs, the same ones every time.
type dice struct{ *rand.Rand }

// log throws a number between low and high, every decade alike.
func (d dice) log(low, high float64) float64 {
	return low * math.Exp(d.Float64()*math.Log(high/low))
}

// closeTo throws a number that is x, or misses it by a part from 1e-15 to 1e-3.
func (d dice) closeTo(x float64) float64 {
	switch d.IntN(4) {
	case 0:
		return x
	case 1:
		return x * (1 + d.log(1e-15, 1e-3))
	}
	return x * (1 - d.log(1e-15, 1e-3))
}

func maybe[T any](d dice, v T) units.Opt[T] {
	if d.IntN(2) == 0 {
		return units.None[T]()
	}
	return units.Some(v)
}

func (d dice) bank() battery.Bank {
	kinds := battery.Chemistries()
	b := battery.Bank{Battery: battery.Battery{Chemistry: kinds[d.IntN(len(kinds))]}, Series: 1 + d.IntN(4), Parallel: 1 + d.IntN(6)}
	one := &b.Battery
	one.Voltage = units.Voltage([]float64{12, 12.6, 12.8, 24, 48}[d.IntN(5)])
	if one.Voltage == 12.6 && one.Chemistry.IsLithium() {
		one.Voltage = 51.2
	}
	one.Capacity = units.Charge(d.log(3600, 3.6e7))
	one.RatedOver, one.Exponent = maybe(d, units.Elapsed(d.log(3600, 360000))), maybe(d, units.Ratio(1+d.Float64()))
	one.Usable, one.Aged = maybe(d, units.Ratio(0.01+0.99*d.Float64())), maybe(d, units.Ratio(0.01+0.99*d.Float64()))
	one.DischargeLimit, one.ChargeLimit = maybe(d, units.Current(d.log(1, 1000))), maybe(d, units.Current(d.log(1, 1000)))
	one.Resistance, one.OpenCircuit = maybe(d, units.Resistance(d.log(1e-4, 0.1))), maybe(d, units.Scale(one.Voltage, units.Ratio(0.95+0.15*d.Float64())))
	b.Multiplier = maybe(d, units.Ratio(1+d.Float64()))
	b.CellTemperature = units.Celsius(-40 + 90*d.Float64())
	b.Charging = battery.Charging{
		Absorption:   units.Some(units.Scale(one.Voltage, units.Ratio(b.Series)*units.Ratio(1+0.3*d.Float64()))),
		Compensation: units.Some(units.Voltage(-0.01 * d.Float64())),
		Cells:        maybe(d, 1+d.IntN(48)),
		Coldest:      units.Celsius(d.closeTo(25)),
	}
	return b
}

// draw throws a load on a source, often as much as it can give.
func (d dice) draw(v units.Voltage, r units.Resistance) battery.Draw {
	high := 1e5
	if r > 0 {
		high = float64(v) * float64(v) / (4 * float64(r))
	}
	x := d.log(high/1e5, high)
	switch d.IntN(5) {
	case 0:
		return battery.Draw{Power: units.Some(units.Power(min(d.closeTo(high), high)))}
	case 1:
		return battery.Draw{Power: units.Some(units.Power(x))}
	case 2:
		return battery.Draw{Current: units.Some(units.Current(x / float64(v)))}
	case 3: // 4P/V is all the current there is
		return battery.Draw{Current: units.Some(units.Current(min(d.closeTo(4*high/float64(v)), 4*high/float64(v))))}
	}
	return battery.Draw{Resistance: units.Some(units.Resistance(float64(v) * float64(v) / x))}
}

// TestAnySheetCanBeFollowed throws legal inputs, most of all those that make
// operands cancel, and has every working checked.
func TestAnySheetCanBeFollowed(t *testing.T) {
	d := dice{rand.New(rand.NewPCG(1, 2))}
	for i := range 400 {
		b := d.bank()
		a := must[battery.Assembly](t)(battery.Assemble(b))
		sheets := map[string]workable{"assembly": a}
		add := func(name string, w workable, err error) {
			if err != nil {
				t.Errorf("throw %d, %s of %+v: %v", i, name, b, err)
				return
			}
			sheets[name] = w
		}
		rated := a.Capacity.In(a.RatedOver)
		u, err := battery.Usable(b, maybe(d, units.Current(d.closeTo(float64(rated)))))
		add("usable", u, err)
		h := battery.Hold{Bank: b, Leads: maybe(d, units.Resistance(d.log(1e-4, 0.1)))}
		h.StateOfCharge = units.Some(units.Ratio(min(max(d.closeTo(float64(1-a.Depth)), 0), 1)))
		if d.IntN(2) == 0 {
			h.StateOfCharge = units.Some(units.Ratio(d.Float64()))
		}
		h.Draw = d.draw(a.Voltage, a.Resistance.Or(0)+h.Leads.Or(0))
		h.CutOff = maybe(d, units.Voltage(d.closeTo(float64(a.Voltage)*0.9)))
		e, err := battery.HoldUp(h)
		add("endurance", e, err)
		add("sag", e.Sag, err)
		l, err := battery.CheckLimits(battery.Demand{Bank: b, Discharge: maybe(d, units.Current(d.closeTo(float64(a.Batteries)*100))), Charge: maybe(d, units.Current(d.log(1, 500)))})
		add("limits", l, err)
		c, err := battery.Compensate(b)
		add("compensated", c, err)
		f, err := battery.FreezingPoint(units.Ratio(min(d.closeTo(0.25*float64(d.IntN(5))), 1)))
		add("freezing", f, err)
		if b.Battery.Chemistry.IsLead() {
			v, err := battery.Ventilate(b)
			add("ventilation", v, err)
		}
		r := battery.Rating{Capacity: a.Capacity, Over: a.RatedOver}
		v, err := battery.Deliver(battery.Discharge{Rating: r, Exponent: a.Exponent, Current: units.Current(d.closeTo(float64(rated)))})
		add("delivery", v, err)
		// Half to all of the charge in a tenth to half of the time.
		x, err := battery.ExponentFrom(r, battery.Rating{
			Capacity: units.Scale(r.Capacity, units.Ratio(0.5+0.5*d.Float64())), Over: units.Elapsed(float64(r.Over) * (0.1 + 0.4*d.Float64()))})
		if err == nil {
			add("exponent", x, err)
		}
		for name, w := range sheets {
			checkFinite(t, w)
			t.Run(fmt.Sprintf("%d %s", i, name), func(t *testing.T) { unitstest.CheckSheet(t, w.Working()) })
		}
		if t.Failed() {
			t.FailNow()
		}
	}
}
