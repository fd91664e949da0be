package loads_test

import (
	"math"
	"testing"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// backed is a total of 240 Wh a day, 60 Wh of which must not stop.
func backed(t *testing.T) loads.Total {
	t.Helper()
	must := load("logger", "mains", loads.Resistive, 2.5*units.Watt, 24*units.Hour)
	must.MustNotStop = true
	ledger, err := loads.Audit([]loads.Bus{mains}, []loads.Load{must, load("kettle", "mains", loads.Resistive, 900*units.Watt, 0.2*units.Hour)})
	if err != nil {
		t.Fatal(err)
	}
	return ledger.Buses[0]
}

func link() loads.Link {
	return loads.Link{Efficiency: 0.9, Idle: units.Some(22 * units.Watt), Bank: 12 * units.Volt}
}

func TestLinkIsChecked(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(*loads.Total, *loads.Link, float64)
		also  []float64
	}{
		{"Efficiency", func(_ *loads.Total, l *loads.Link, x float64) { l.Efficiency = units.Ratio(x) }, []float64{0, 89}},
		{"Idle", func(_ *loads.Total, l *loads.Link, x float64) { l.Idle = units.Some(units.Power(x)) }, nil},
		{"On", func(_ *loads.Total, l *loads.Link, x float64) { l.On = units.Some(units.Elapsed(x)) }, []float64{86401}},
		{"Bank", func(_ *loads.Total, l *loads.Link, x float64) { l.Bank = units.Voltage(x) }, []float64{0}},
		{"Total.Energy", func(v *loads.Total, _ *loads.Link, x float64) { v.Energy = units.Energy(x) }, nil},
		{"Total.MustNotStop.Energy", func(v *loads.Total, _ *loads.Link, x float64) { v.MustNotStop.Energy = units.Energy(x) }, nil},
	} {
		for _, x := range append(c.also, notNumbers...) {
			v, l := backed(t), link()
			c.spoil(&v, &l, x)
			got, err := loads.FromBank(v, l)
			wantRangeError(t, err, "loads.FromBank", c.field)
			if n := len(rangeErrors(err)); n != 1 || got != (loads.BankSide{}) {
				t.Errorf("%s = %v: %d errors and %+v", c.field, x, n, got)
			}
		}
	}
	for field, spoil := range map[string]func(*loads.Total, *loads.Link){
		"Energy":      func(v *loads.Total, _ *loads.Link) { v.Energy = math.MaxFloat64 },
		"MustNotStop": func(v *loads.Total, _ *loads.Link) { v.MustNotStop.Energy = math.MaxFloat64 },
		"Charge":      func(_ *loads.Total, l *loads.Link) { l.Bank = 1e-305 },
	} {
		v, l := backed(t), link()
		spoil(&v, &l)
		got, err := loads.FromBank(v, l)
		wantRangeError(t, err, "loads.FromBank", field)
		if got != (loads.BankSide{}) {
			t.Errorf("%s too large: a result %+v", field, got)
		}
	}
}

func TestBankSideLaws(t *testing.T) {
	base := fromBank(t, backed(t), link())
	changed := func(change func(*loads.Link)) loads.BankSide {
		l := link()
		change(&l)
		return fromBank(t, backed(t), l)
	}
	same := func(a, b units.Energy) bool { return units.Compare(a, b) == 0 }
	for law, holds := range map[string]func() bool{
		"on all day is what is not given": func() bool {
			v := changed(func(l *loads.Link) { l.On = units.Some(24 * units.Hour) })
			return base.On == 24*units.Hour && v.Energy == base.Energy
		},
		"an hour less is an hour of idle less": func() bool {
			v := changed(func(l *loads.Link) { l.On = units.Some(23 * units.Hour) })
			return same(base.Energy-v.Energy, 22*units.WattHour)
		},
		"a perfect link without idle draw changes nothing": func() bool {
			v := changed(func(l *loads.Link) { l.Efficiency, l.Idle = 1, units.Some(0*units.Watt) })
			return same(v.Energy, base.Total.Energy) && same(v.MustNotStop, base.Total.MustNotStop.Energy)
		},
		"the parts are the whole": func() bool {
			return same(base.Loads+base.Idle, base.Energy) && same(base.Charge.At(12*units.Volt), base.Energy)
		},
		"a worse efficiency never takes less": func() bool {
			last := units.Energy(0)
			for eta := 1.0; eta > 0.05; eta -= 0.05 {
				v := changed(func(l *loads.Link) { l.Efficiency = units.Ratio(eta) })
				if !(v.Energy > last) {
					return false
				}
				last = v.Energy
			}
			return true
		},
		"what must not stop has all of the idle draw": func() bool {
			return same(base.MustNotStop, 594.666666666667*units.WattHour) // 60/0.9 + 22*24
		},
		"without such loads there is none of it": func() bool {
			v := backed(t)
			v.MustNotStop = loads.Share{}
			return fromBank(t, v, link()).MustNotStop == 0
		},
	} {
		if !holds() {
			t.Errorf("not so: %s", law)
		}
	}
}
