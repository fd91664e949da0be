package solar_test

import (
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

func TestSheetDaySun(t *testing.T) {
	for _, latitude := range []float64{90, 89.999, 66.6, 64, 41.8, 0, -22.9, -70, -90} {
		for _, day := range []int{1, 80, 172, 246, 366} {
			unitstest.CheckSheet(t, sunOn(t, latitude, day).Working())
		}
	}
}

func TestSheetDayHarvest(t *testing.T) {
	unitstest.CheckSheet(t, harvest(t, warm()).Working())
	unitstest.CheckSheet(t, harvest(t, october()).Working())
	r := warm()
	r.Losses = solar.TypicalLosses()
	unitstest.CheckSheet(t, harvest(t, r).Working())
	r.Losses, r.Irradiation = solar.Losses{}, 0
	unitstest.CheckSheet(t, harvest(t, r).Working())
}

func TestSheetCellHeat(t *testing.T) {
	for _, g := range []units.Irradiance{0, 333.3 * units.WattPerSquareMetre, 1000 * units.WattPerSquareMetre} {
		x := noon()
		x.Irradiance = g
		h, err := solar.CellTemperature(x)
		if err != nil {
			t.Fatal(err)
		}
		unitstest.CheckSheet(t, h.Working())
	}
}

func TestSheetColdOpen(t *testing.T) {
	for _, c := range []float64{25, 10, -22, -40} {
		s := summer()
		s.Coldest = units.Celsius(c)
		for range 2 {
			o, err := solar.ColdVoltage(s)
			if err != nil {
				t.Fatal(err)
			}
			unitstest.CheckSheet(t, o.Working())
			s.Panel.VoltageCoefficient = units.Some(-0.283 * units.PercentPerKelvin)
		}
	}
}

func TestSheetCircuitCurrents(t *testing.T) {
	for parallel := 1; parallel <= 4; parallel++ {
		for _, label := range []units.Opt[units.Current]{units.None[units.Current](), units.Some(15 * units.Ampere)} {
			for _, fuse := range []units.Opt[units.Current]{units.None[units.Current](), units.Some(8 * units.Ampere), units.Some(20 * units.Ampere)} {
				s := threeStrings()
				s.Array.Parallel, s.Array.Panel.SeriesFuse, s.StringFuse = parallel, label, fuse
				c, err := solar.Currents(s)
				if err != nil {
					t.Fatal(err)
				}
				unitstest.CheckSheet(t, c.Working())
			}
		}
	}
}

func TestSheetFit(t *testing.T) {
	for name, change := range map[string]func(*solar.Hookup){
		"demo":          func(*solar.Hookup) {},
		"efficiency":    func(h *solar.Hookup) { h.Controller.Efficiency = units.Some(96.5 * units.Percent) },
		"no limit":      func(h *solar.Hookup) { h.Controller.Output = units.None[units.Current]() },
		"input current": func(h *solar.Hookup) { h.Controller.InputCurrent = units.Some(6 * units.Ampere) },
		"PWM":           func(h *solar.Hookup) { h.Controller.Kind = solar.PWM },
		"PWM, no limit": func(h *solar.Hookup) {
			h.Controller.Kind, h.Controller.Output = solar.PWM, units.None[units.Current]()
		},
		"low string": func(h *solar.Hookup) { h.Bank = 100 * units.Volt },
		"table":      func(h *solar.Hookup) { h.Array.Panel.VoltageCoefficient = units.None[units.PerKelvin]() },
	} {
		t.Run(name, func(t *testing.T) {
			h := demo()
			change(&h)
			unitstest.CheckSheet(t, fit(t, h).Working())
		})
	}
}
