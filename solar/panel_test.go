package solar_test

import (
	"strings"
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// TestPanelHeldTogether: what is just possible is taken, and a field that is
// left out holds nothing against the others.
func TestPanelHeldTogether(t *testing.T) {
	for what, change := range map[string]func(*solar.Panel){
		"as the datasheet has it":        func(*solar.Panel) {},
		"Vmp just below Voc":             func(p *solar.Panel) { p.Vmp = 46.1 * units.Volt },
		"Isc just Power by Vmp":          func(p *solar.Panel) { p.Isc = units.Current(220 / 38.4) },
		"Isc a bit of noise below that":  func(p *solar.Panel) { p.Isc = units.Current(220 / 38.4 * (1 - 1e-12)) },
		"Imp just below Isc":             func(p *solar.Panel) { p.Imp = units.Some(6.11 * units.Ampere) },
		"a coefficient at its low end":   func(p *solar.Panel) { p.VoltageCoefficient = units.Some(-1 * units.PercentPerKelvin) },
		"a coefficient at its high end":  func(p *solar.Panel) { p.VoltageCoefficient = units.Some(-0.1 * units.PercentPerKelvin) },
		"no Vmp, and Power Voc by Isc":   func(p *solar.Panel) { p.Vmp, p.Power = 0, 282.744*units.Watt },
		"no Voc, and Vmp above what was": func(p *solar.Panel) { p.Voc, p.Vmp = 0, 50*units.Volt },
		"no Isc, and much power":         func(p *solar.Panel) { p.Isc, p.Power, p.Imp = 0, 600*units.Watt, units.Some(20*units.Ampere) },
		"no Power, and a small Isc":      func(p *solar.Panel) { p.Power, p.Isc = 0, 1*units.Ampere },
	} {
		h := demo()
		change(&h.Array.Panel)
		p := h.Array.Panel
		if p.Voc > 0 {
			if _, err := solar.ColdVoltage(solar.ColdString{Rules: h.Rules, Panel: p, Series: 2, Coldest: h.Coldest}); err != nil {
				t.Errorf("%s: %v", what, err)
			}
		}
		if p.Isc > 0 {
			if _, err := solar.Currents(solar.Strings{Rules: h.Rules, Array: h.Array}); err != nil {
				t.Errorf("%s: %v", what, err)
			}
		}
		if p.Voc > 0 && p.Isc > 0 && p.Vmp > 0 && p.Power > 0 {
			if _, err := solar.FitController(h); err != nil {
				t.Errorf("%s: %v", what, err)
			}
		}
	}
}

// TestPanelErrorsSayNumbers: an error has the number that the others make, as
// worked by hand: 46.2 V · 6.12 A and 220 W / 38.4 V.
func TestPanelErrorsSayNumbers(t *testing.T) {
	for want, change := range map[string]func(*solar.Panel){
		"solar.FitController: Power = 300 W, want 282.7 W at most (Voc times Isc)": func(p *solar.Panel) { p.Power = 300 * units.Watt },
		"solar.FitController: Isc = 5 A, want 5.729 A at least (Power by Vmp)":     func(p *solar.Panel) { p.Isc = 5 * units.Ampere },
		"solar.FitController: Vmp = 46.2 V, want > 0 V and < 46.2 V":               func(p *solar.Panel) { p.Vmp = 46.2 * units.Volt },
		"solar.FitController: Imp = 6.12 A, want > 0 A and < 6.12 A":               func(p *solar.Panel) { p.Imp = units.Some(6.12 * units.Ampere) },
		"solar.FitController: VoltageCoefficient = -0.0028 %/K, want -1 %/K to -0.1 %/K": func(p *solar.Panel) {
			p.VoltageCoefficient = units.Some(-0.0028 * units.PercentPerKelvin)
		},
	} {
		h := demo()
		change(&h.Array.Panel)
		if _, err := solar.FitController(h); err == nil || err.Error() != want {
			t.Errorf("%v, want %s", err, want)
		}
	}
}

// TestOddPanels takes each oddity out again: 38.4 V · 5.73 A are 220.0 W, and
// 220 W of 282.7 W a fill factor of 78 %.
func TestOddPanels(t *testing.T) {
	for _, c := range []struct {
		what, rule string
		found      bool
		change     func(*solar.Panel)
	}{
		{"Imp as the datasheet has it", "power-not-vmp-imp", false, func(p *solar.Panel) { p.Imp = units.Some(5.73 * units.Ampere) }},
		{"no Imp", "power-not-vmp-imp", false, func(*solar.Panel) {}},
		{"Imp 4.9 % low", "power-not-vmp-imp", false, func(p *solar.Panel) { p.Imp = units.Some(5.729167 * 0.951 * units.Ampere) }},
		{"Imp 5.1 % low", "power-not-vmp-imp", true, func(p *solar.Panel) { p.Imp = units.Some(5.729167 * 0.949 * units.Ampere) }},
		{"Imp 4.9 % high", "power-not-vmp-imp", false, func(p *solar.Panel) { p.Imp = units.Some(5.729167 * 1.049 * units.Ampere) }},
		{"Imp 5.1 % high", "power-not-vmp-imp", true, func(p *solar.Panel) { p.Imp = units.Some(5.729167 * 1.051 * units.Ampere) }},
		{"fill factor of 78 %", "fill-factor-unusual", false, func(*solar.Panel) {}},
		{"fill factor of 56 %", "fill-factor-unusual", false, func(p *solar.Panel) { p.Power = 158.4 * units.Watt }},
		{"fill factor of 54 %", "fill-factor-unusual", true, func(p *solar.Panel) { p.Power = 152.7 * units.Watt }},
		{"fill factor of 87 %", "fill-factor-unusual", false, func(p *solar.Panel) { p.Power, p.Vmp = 246*units.Watt, 44*units.Volt }},
		{"fill factor of 89 %", "fill-factor-unusual", true, func(p *solar.Panel) { p.Power, p.Vmp = 251.7*units.Watt, 44*units.Volt }},
		{"coefficient of -0.28 %/K", "coefficient-unusual", false, func(*solar.Panel) {}},
		{"none", "coefficient-unusual", false, func(p *solar.Panel) { p.VoltageCoefficient = units.None[units.PerKelvin]() }},
		{"coefficient of -0.2 %/K", "coefficient-unusual", false, func(p *solar.Panel) { p.VoltageCoefficient = units.Some(-0.2 * units.PercentPerKelvin) }},
		{"coefficient of -0.19 %/K", "coefficient-unusual", true, func(p *solar.Panel) { p.VoltageCoefficient = units.Some(-0.19 * units.PercentPerKelvin) }},
		{"coefficient of -0.5 %/K", "coefficient-unusual", false, func(p *solar.Panel) { p.VoltageCoefficient = units.Some(-0.5 * units.PercentPerKelvin) }},
		{"coefficient of -0.51 %/K", "coefficient-unusual", true, func(p *solar.Panel) { p.VoltageCoefficient = units.Some(-0.51 * units.PercentPerKelvin) }},
	} {
		h := demo()
		c.change(&h.Array.Panel)
		if got := has(fit(t, h).Findings(), c.rule); got != c.found {
			t.Errorf("%s: %s found: %v", c.what, c.rule, got)
		}
	}
}

// TestCoefficientBesideTheTable: an odd coefficient is shown with what the
// table has, 92.4 V · 1.20.
func TestCoefficientBesideTheTable(t *testing.T) {
	h := demo()
	h.Array.Panel.VoltageCoefficient = units.Some(-0.12 * units.PercentPerKelvin)
	for _, f := range fit(t, h).Findings() {
		if f.Rule != "coefficient-unusual" {
			continue
		}
		text := f.String()
		for _, want := range []string{"coefficient -0.12 %/K", "cold string 97.61 V", "by the table 110.9 V"} { // 92.4 V · (1 + 0.0012 · 47)
			if !strings.Contains(text, want) {
				t.Errorf("%q does not have %q", text, want)
			}
		}
		return
	}
	t.Error("not found")
}

// TestHotString, by hand: 2 · (38.4 V − 0.28 % · 46.2 V · 45) = 65.16 V, and
// panels of 18 V and 22 V with −0.3 %/K: 18 − 0.066 · 50 = 14.7 V at 75 °C and
// 18 − 0.066 · 55 = 14.37 V at 80 °C, for a bank that is charged at 14.4 V.
func TestHotString(t *testing.T) {
	hot, ok := fit(t, demo()).HotVmp.Get()
	if !ok {
		t.Fatal("not judged")
	}
	wantFixed(t, "hot string", hot, units.Volt, 2, "65.16")
	for _, c := range []struct {
		cells float64
		volts string
		low   bool
	}{{25, "18.00", false}, {75, "14.70", false}, {80, "14.37", true}, {120, "11.73", true}} {
		h := demo()
		h.Array = solar.Array{Series: 1, Parallel: 2, Panel: solar.Panel{Power: 100 * units.Watt, Voc: 22 * units.Volt, Vmp: 18 * units.Volt,
			Isc: 5.9 * units.Ampere, VoltageCoefficient: units.Some(-0.3 * units.PercentPerKelvin)}}
		h.Bank, h.Hottest = 14.4*units.Volt, units.Celsius(c.cells)
		f := fit(t, h)
		hot, _ := f.HotVmp.Get()
		wantFixed(t, "hot panel", hot, units.Volt, 2, c.volts)
		if has(f.Findings(), "hot-string-below-bank") != c.low || has(f.Findings(), "hottest-not-stated") {
			t.Errorf("cells at %v °C: %v", c.cells, f.Findings())
		}
		h.Array.Series = 2 // the mend
		if has(fit(t, h).Findings(), "hot-string-below-bank") {
			t.Errorf("cells at %v °C, two in series: still found", c.cells)
		}
	}
}

// TestTinyPanelHeldTogether: the numbers of a panel below one are held against
// each other as others are: 0.5 V · 0.03 A = 15 mW, 12 mW / 0.4 V = 30 mA.
func TestTinyPanelHeldTogether(t *testing.T) {
	const op = "solar.Currents"
	for field, p := range map[string]solar.Panel{
		"Vmp":   {Voc: 0.5 * units.Volt, Vmp: 0.6 * units.Volt, Isc: 0.03 * units.Ampere},
		"Power": {Power: 0.016 * units.Watt, Voc: 0.5 * units.Volt, Isc: 0.03 * units.Ampere},
		"Isc":   {Power: 0.0125 * units.Watt, Vmp: 0.4 * units.Volt, Isc: 0.03 * units.Ampere},
		"Imp":   {Isc: 0.03 * units.Ampere, Imp: units.Some(0.04 * units.Ampere)},
	} {
		s := threeStrings()
		s.Array.Panel = p
		wantRefused(t, field, outcomeOf(solar.Currents(s)), op, field)
	}
}

// TestHarvestSaysWhatItCounts: a coefficient without a cell temperature, or the
// other way round, is not counted, and the typical list is called that.
func TestHarvestSaysWhatItCounts(t *testing.T) {
	alone := warm()
	alone.CellTemperature = units.Temperature{}
	other := warm()
	other.PowerCoefficient = units.None[units.PerKelvin]()
	for _, d := range []solar.PanelDay{alone, other} {
		if !has(harvest(t, d).Findings(), "temperature-not-counted") {
			t.Errorf("%+v: not said", d)
		}
	}
	typical := warm()
	typical.Losses = solar.TypicalLosses()
	for d, want := range map[solar.PanelDay]bool{warm(): false, typical: true} {
		if got := strings.Contains(harvest(t, d).Working().Text(), "typical list"); got != want {
			t.Errorf("typical list named: %v, want %v", got, want)
		}
	}
}
