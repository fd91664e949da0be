package wire_test

import (
	"math"
	"testing"
	"time"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// steady is a conductor of a constant current.
func steady(i units.Current) wire.WarmRun {
	w := inverterRun()
	w.Power, w.Run.Current = units.None[units.Power](), i
	return w
}

func TestWarmLaws(t *testing.T) {
	warm := func(w wire.WarmRun) wire.WarmedDrop { return must[wire.WarmedDrop](t)(wire.WarmDrop(w)) }
	laws(t, map[string]func() bool{
		"the ampacity warms to the rating, by definition": func() bool {
			w := steady(285 * units.Ampere)
			w.Ambient = units.Temperature{}
			d := warm(w)
			return math.Abs(float64(d.Temperature.Sub(units.Celsius(105)))) < 1e-9 && math.Abs(float64(d.BySquare.Sub(d.Temperature))) < 1e-9
		},
		"below it the rule of thumb is too warm, above it too cool": func() bool {
			cool, hot := steady(200*units.Ampere), steady(300*units.Ampere)
			cool.Ambient, hot.Ambient = units.Temperature{}, units.Temperature{}
			a, b := warm(cool), warm(hot)
			return a.BySquare.Compare(a.Temperature) > 0 && b.BySquare.Compare(b.Temperature) < 0
		},
		"each ampere warms": func() bool {
			last := units.Celsius(40)
			for i := units.Current(10); i < 320; i += 10 {
				d := warm(steady(i))
				if d.Temperature.Compare(last) <= 0 || !(d.Drop.Voltage > d.AtAmbient.Voltage) {
					return false
				}
				last = d.Temperature
			}
			return true
		},
		"the drop is that of a run at the temperature": func() bool {
			d := warm(steady(200 * units.Ampere))
			r := d.Run.Run
			r.Conductor.Temperature = d.Temperature
			return must[wire.Drop](t)(wire.VoltageDrop(r)) == d.Drop
		},
		"a load of constant power gets its power": func() bool {
			d := warm(inverterRun())
			return equal(d.Drop.Run.Current.At(d.Drop.AtLoad), 2000*units.Watt)
		},
		"and takes more current than at the voltage of the source": func() bool {
			return warm(inverterRun()).Drop.Run.Current > (2000 * units.Watt).At(12.8*units.Volt)
		},
		"two side by side with twice the current are as warm": func() bool {
			one, two := steady(200*units.Ampere), steady(400*units.Ampere)
			two.Run.Parallel = 2
			return equal(warm(one).Rise, warm(two).Rise)
		},
		"the air not said is that of the table": func() bool {
			w := steady(200 * units.Ampere)
			w.Ambient = units.Temperature{}
			d := warm(w)
			return d.Run.Ambient == units.Celsius(30) && d.Run.Base == units.Celsius(30)
		},
		"the steps end where the result is": func() bool {
			d := warm(inverterRun())
			last, ok := d.Step(d.Steps)
			first, alsoOk := d.Step(1)
			return ok && alsoOk && last.To == d.Temperature && first.From == d.Run.Ambient && d.Steps > 3
		},
		"there is no other step": func() bool {
			d := warm(inverterRun())
			_, before := d.Step(0)
			_, after := d.Step(d.Steps + 1)
			spoilt := d
			spoilt.Run.Run.Conductor = wire.Conductor{}
			_, changed := spoilt.Step(1)
			return !before && !after && !changed
		},
	})
}

// warmTwin solves T = T_a + (T_r - T_b) λ² (1 + α(T - 20))/(1 + α(T_r - 20)), which
// is linear in T for copper at a constant current.
func warmTwin(ambient, base, rated, load float64) float64 {
	const alpha = 0.00393
	k := (rated - base) * load * load / (1 + alpha*(rated-20))
	return (ambient + k*(1-20*alpha)) / (1 - k*alpha)
}

func TestWarmAgainstClosedForm(t *testing.T) {
	for _, i := range []units.Current{20, 100, 200, 285, 320} {
		d := must[wire.WarmedDrop](t)(wire.WarmDrop(steady(i)))
		want := warmTwin(40, 30, 105, float64(i)/285)
		if math.Abs(d.Temperature.Celsius()-want) > 1e-8 {
			t.Errorf("%v: %v, in closed form %v °C", i, d.Temperature, want)
		}
	}
}

// TestWarmPowerAgainstBisection finds the temperature of a conductor that feeds
// a constant power by bisection on the balance of heat.
func TestWarmPowerAgainstBisection(t *testing.T) {
	for _, watts := range []units.Power{500, 1500, 2500} {
		w := inverterRun()
		w.Power = units.Some(watts)
		d := must[wire.WarmedDrop](t)(wire.WarmDrop(w))
		excess := func(celsius float64) float64 {
			r := w.Run
			r.Conductor.Temperature = units.Celsius(celsius)
			r.Current = 1 * units.Ampere
			loop := float64(must[wire.Drop](t)(wire.VoltageDrop(r)).Resistance)
			v := (12.8 + math.Sqrt(12.8*12.8-4*loop*float64(watts))) / 2
			load := float64(watts) / v / 285
			return 40 + 75*load*load*(1+0.00393*(celsius-20))/(1+0.00393*85) - celsius
		}
		low, high := 40.0, 150.0
		for range 100 {
			if mid := (low + high) / 2; excess(mid) > 0 {
				low = mid
			} else {
				high = mid
			}
		}
		if math.Abs(d.Temperature.Celsius()-low) > 1e-8 {
			t.Errorf("%v: %v, by bisection %v °C", watts, d.Temperature, low)
		}
	}
}

func TestEnergyLaws(t *testing.T) {
	loss := func(values ...units.Current) wire.Loss {
		return must[wire.Loss](t)(wire.EnergyLost(lamp(), hourly(values...)))
	}
	laws(t, map[string]func() bool{
		"one step is the heat of its drop": func() bool {
			d := must[wire.Drop](t)(wire.VoltageDrop(lamp()))
			x := loss(20)
			return equal(x.Lost, d.Heat.For(1*units.Hour)) && equal(x.ADay, d.Heat.For(24*units.Hour)) && equal(x.Fraction, d.Fraction) &&
				equal(x.PeakDrop, d.Fraction)
		},
		"twice the current loses four times as much": func() bool { return equal(loss(20, 10).Lost, 4*loss(10, 5).Lost) },
		"a load of one mean loses least when it is steady": func() bool {
			return loss(10, 10).Lost < loss(11, 9).Lost && loss(11, 9).Lost < loss(20, 0).Lost
		},
		"the order of the steps does not matter": func() bool {
			a, b := loss(1, 2, 3), loss(3, 1, 2)
			return equal(a.Lost, b.Lost) && a.Peak == 2 && b.Peak == 0 && a.Run.Current == 3 && loss(3, 1, 3).Peak == 0
		},
		"what the source gave is what was lost and what was left": func() bool {
			x := loss(20, 5, 0)
			return equal(x.FromSource, x.Lost+x.ToLoad)
		},
		"nothing drawn is nothing lost": func() bool {
			x := loss(0, 0)
			return x.Lost == 0 && x.Fraction == 0 && x.ADay == 0 && x.Steps == 2 && equal(x.Time, 2*units.Hour)
		},
		"the steps add up": func() bool {
			load := hourly[units.Power](30, 120, 0, 240)
			var sum units.Energy
			for i := range load.Values {
				sum += must[wire.LossStep](t)(wire.EnergyLostIn(lamp(), load, i)).Lost
			}
			return equal(sum, must[wire.Loss](t)(wire.EnergyLost(lamp(), load)).Lost)
		},
		"a load in powers gets them": func() bool {
			x := must[wire.Loss](t)(wire.EnergyLost(lamp(), hourly[units.Power](100, 200)))
			return equal(x.ToLoad, 300*units.WattHour)
		},
		"r.Current is not looked at": func() bool {
			r := lamp()
			r.Current = -1
			return must[wire.Loss](t)(wire.EnergyLost(r, hourly[units.Current](20, 5))) == loss(20, 5)
		},
	})
	// A load in minutes against its mean of an hour: the mean hides loss.
	minutes := units.Series[units.Current]{Start: time.Unix(0, 0).UTC(), Step: time.Minute, Values: make([]units.Current, 60)}
	for i := range 20 {
		minutes.Values[i] = 30 * units.Ampere
	}
	fine := must[wire.Loss](t)(wire.EnergyLost(lamp(), minutes))
	if coarse := loss(10); !equal(fine.FromSource, coarse.FromSource) || !equal(fine.Lost, 3*coarse.Lost) {
		t.Errorf("a third of the hour at 30 A loses %v, an hour at 10 A %v", fine.Lost, coarse.Lost)
	}
}

func TestJointLaws(t *testing.T) {
	measure := func(change func(*wire.JointReading)) wire.Joint {
		r := terminal()
		change(&r)
		return must[wire.Joint](t)(wire.MeasureJoint(r))
	}
	base := measure(func(*wire.JointReading) {})
	laws(t, map[string]func() bool{
		"0.45 V at 30 A are 15 mΩ and 13.5 W": func() bool {
			return equal(base.Resistance, 15*units.Milliohm) && equal(base.Heat, 13.5*units.Watt) && equal(base.AtTwice, 54*units.Watt)
		},
		"only the difference counts": func() bool {
			return equal(measure(func(r *wire.JointReading) { r.Before, r.After = 0.45*units.Volt, 0 }).Resistance, base.Resistance)
		},
		"wire between the probes is not the joint": func() bool {
			j := measure(func(r *wire.JointReading) { r.Between = units.Some(5 * units.Milliohm) })
			return equal(j.Resistance, 10*units.Milliohm) && equal(j.Wire, 0.15*units.Volt) && j.Lost == base.Lost
		},
		"all of it wire leaves a joint of nothing": func() bool {
			j := measure(func(r *wire.JointReading) { r.Between = units.Some(15 * units.Milliohm) })
			return j.Resistance == 0 && j.Heat == 0
		},
		"10 mV at 30 A are a third of a milliohm of doubt": func() bool {
			j := measure(func(r *wire.JointReading) { r.Resolution = units.Some(10 * units.Millivolt) })
			return equal(j.Doubt, 10*units.Milliohm/30)
		},
		"the same joint put into a run makes the same heat": func() bool {
			r := lamp()
			r.Current = 30 * units.Ampere
			without := must[wire.Drop](t)(wire.VoltageDrop(r))
			r.Contacts = units.Some(base.Resistance)
			return equal(must[wire.Drop](t)(wire.VoltageDrop(r)).Heat-without.Heat, base.Heat)
		},
	})
}
