package loads_test

import (
	"math"
	"testing"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

func cabin() loads.Heating {
	return loads.Heating{
		LossPerKelvin: 100 * units.Watt,
		Inside:        units.Celsius(20),
		Outside:       units.Celsius(0),
		Input:         10 * units.Kilowatt,
		Efficiency:    0.8,
	}
}

func TestHeatingIsChecked(t *testing.T) {
	for field, spoil := range map[string]func(*loads.Heating, float64){
		"LossPerKelvin": func(h *loads.Heating, x float64) { h.LossPerKelvin = units.Power(x) },
		"Inside":        func(h *loads.Heating, x float64) { h.Inside = units.Celsius(math.Inf(1) * x) },
		"Outside":       func(h *loads.Heating, x float64) { h.Outside = units.Celsius(math.Inf(1) * x) },
		"Input":         func(h *loads.Heating, x float64) { h.Input = units.Power(x) },
		"Efficiency":    func(h *loads.Heating, x float64) { h.Efficiency = units.Ratio(x) },
	} {
		for _, x := range append(notNumbers, 0) {
			h := cabin()
			spoil(&h, x)
			got, err := loads.HeatingDuty(h)
			wantRangeError(t, err, "loads.HeatingDuty", field)
			if n := len(rangeErrors(err)); n != 1 || got != (loads.Cycling{}) {
				t.Errorf("%s of %v: %d errors and %+v", field, x, n, got)
			}
		}
	}
	h := cabin()
	h.Inside, h.Efficiency = units.Temperature{}, 1.01
	_, err := loads.HeatingDuty(h)
	wantRangeError(t, err, "loads.HeatingDuty", "Inside")
	wantRangeError(t, err, "loads.HeatingDuty", "Efficiency")
	h = cabin()
	h.LossPerKelvin, h.Input = math.MaxFloat64, 1e-300
	_, err = loads.HeatingDuty(h)
	wantRangeError(t, err, "loads.HeatingDuty", "Needed")
}

func TestHeatingLaws(t *testing.T) {
	outside := func(celsius float64) loads.Cycling {
		h := cabin()
		h.Outside = units.Celsius(celsius)
		c, err := loads.HeatingDuty(h)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	// 100 W/K over 20 K of 8 kW.
	if c := outside(0); units.Compare(c.Duty, 0.25) != 0 || units.Compare(c.Running, 6*units.Hour) != 0 || len(c.Findings()) != 0 {
		t.Errorf("20 K: %+v, want a duty of 0.25", c)
	}
	if c := outside(25); c.Duty != 0 || c.Loss != 0 {
		t.Errorf("warm outside: %+v, want no heat", c)
	}
	if c := outside(-60); units.Compare(c.Duty, 1) != 0 || has(c.Findings(), "heating-cannot-keep-up") {
		t.Errorf("80 K, which 8 kW just hold: %+v, %v", c, c.Findings())
	}
	c := outside(-70)
	if c.Duty != 1 || units.Compare(c.Needed, 1.125) != 0 || units.Compare(c.Running, 24*units.Hour) != 0 {
		t.Errorf("90 K: %+v, want 1.125 needed and a duty of 1", c)
	}
	if got := rules(t, c.Findings()); len(got) != 1 || got[0] != "heating-cannot-keep-up" {
		t.Errorf("90 K: findings %v", got)
	}
}
