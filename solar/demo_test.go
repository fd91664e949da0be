package solar_test

import (
	"strings"
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// wantFixed compares at so many decimals of unit, as the number is written.
func wantFixed[Q units.Quantity](t *testing.T, what string, got, unit Q, decimals int, want string) {
	t.Helper()
	if s := units.Fixed(units.In(got, unit), decimals); s != want {
		t.Errorf("%s: %s, want %s", what, s, want)
	}
}

// TestDemoRoof: expected values of the invented demo, worked by hand with
// published formulas. Irradiation: monthly means of the TMY2 file 94846, read.
func TestDemoRoof(t *testing.T) {
	for _, c := range []struct {
		month       string
		irradiation float64 // kWh/m²
		want        string  // Wh
	}{
		{"March", 3.55, "1250"}, {"April", 4.801, "1690"}, {"May", 5.976, "2104"}, {"June", 6.294, "2215"},
		{"August", 5.161, "1817"}, {"September", 4.193, "1476"}, {"October", 3.037, "1069"}, {"November", 1.829, "644"},
	} {
		r := october()
		r.Irradiation = units.Irradiation(c.irradiation) * units.KilowattHourPerSquareMetre
		wantFixed(t, c.month, harvest(t, r).Energy, units.WattHour, 0, c.want)
	}
	// The quote's third panel: 660 W, factor 0.93 for warm cells, the typical
	// losses: 3.32 kWh in June.
	r := solar.PanelDay{Peak: 660 * units.Watt, Irradiation: 6.294 * units.KilowattHourPerSquareMetre, Losses: solar.TypicalLosses(),
		PowerCoefficient: units.Some(-0.36 * units.PercentPerKelvin), CellTemperature: units.Celsius(25 + 7/0.36)}
	h := harvest(t, r)
	wantFixed(t, "temperature factor", h.TemperatureFactor, units.One, 2, "0.93")
	wantFixed(t, "June with three panels", h.Energy, units.KilowattHour, 2, "3.32")
}

// TestDemoString: expected values of the invented demo, worked by hand with
// published formulas.
func TestDemoString(t *testing.T) {
	f := fit(t, demo())
	table, ok := f.Cold.ByTable.Get()
	if !ok || f.Cold.Governs != solar.ByCoefficient {
		t.Errorf("governs %v, by the table %v", f.Cold.Governs, f.Cold.ByTable)
	}
	wantFixed(t, "at 25 °C", f.Cold.Standard, units.Volt, 1, "92.4")
	wantFixed(t, "by coefficient", f.Cold.Voltage, units.Volt, 1, "104.6")
	wantFixed(t, "by the table", table, units.Volt, 1, "110.9")
	wantFixed(t, "factor of the table", f.Cold.TableFactor, units.One, 2, "1.20")
	wantFixed(t, "controller to bank", f.OutputRequired, units.Ampere, 1, "37.5")
	if f.Currents.Fusing != solar.FusingNotNeeded {
		t.Errorf("one string: %v", f.Currents.Fusing)
	}

	mended := demo()
	mended.Array.Series, mended.Array.Parallel = 1, 2
	f = fit(t, mended)
	wantFixed(t, "parallel", f.Cold.Voltage, units.Volt, 1, "52.3")
	wantFixed(t, "both strings", f.Currents.ShortCircuit, units.Ampere, 2, "12.24") // 2 x 6.12 A
	if has(f.Findings(), "string-above-controller") || f.Currents.Fusing != solar.FusingNotNeeded {
		t.Errorf("parallel: %v, findings %v", f.Currents.Fusing, f.Findings())
	}
	larger := demo()
	larger.Controller.InputVoltage = 150 * units.Volt
	if has(fit(t, larger).Findings(), "string-above-controller") {
		t.Error("a controller for 150 V is large enough")
	}
}

// TestQuotedString: the quote of the invented demo puts three panels in
// series on a controller for 150 V, or in parallel.
func TestQuotedString(t *testing.T) {
	h := demo()
	h.Array.Series, h.Controller.InputVoltage = 3, 150*units.Volt
	f := fit(t, h)
	table, _ := f.Cold.ByTable.Get()
	wantFixed(t, "at 25 °C", f.Cold.Standard, units.Volt, 1, "138.6")
	wantFixed(t, "by coefficient", f.Cold.Voltage, units.Volt, 1, "156.8")
	wantFixed(t, "by the table", table, units.Volt, 1, "166.3")
	if !has(f.Findings(), "string-above-controller") {
		t.Error("three in series are above 150 V")
	}
	h.Array.Series, h.Array.Parallel = 1, 3
	f = fit(t, h)
	wantFixed(t, "fed back", f.Currents.Backfeed, units.Ampere, 1, "15.3")
	if f.Currents.Fusing != solar.FusingNeeded || !has(f.Findings(), "fuse-each-string") || has(f.Findings(), "string-above-controller") {
		t.Errorf("three in parallel: %v, findings %v", f.Currents.Fusing, f.Findings())
	}
}

// TestTrapColdString: two panels in series into a 100 V controller are 89.20 V
// on the label and 107.04 V at −25 °C.
func TestTrapColdString(t *testing.T) {
	h := demo()
	h.Array.Panel.Voc, h.Array.Panel.VoltageCoefficient = 44.6*units.Volt, units.None[units.PerKelvin]()
	h.Coldest = units.Celsius(-25)
	f := fit(t, h)
	wantFixed(t, "cold", f.Cold.Voltage, units.Volt, 2, "107.04")
	wantFixed(t, "the wrong answer", f.Cold.Standard, units.Volt, 2, "89.20")
	if !has(f.Findings(), "string-above-controller") {
		t.Error("not found to be over")
	}
}

// TestTrapFlatDecember: 100 W flat on a roof at 36° N give 197 Wh a day in
// December, not the 418 Wh of an annual figure at latitude tilt. The factor
// for cold cells, 1.023, is that of a run over the hours of a typical year.
func TestTrapFlatDecember(t *testing.T) {
	r := solar.PanelDay{Peak: 100 * units.Watt, Irradiation: 2.243 * units.KilowattHourPerSquareMetre, Losses: solar.TypicalLosses(),
		PowerCoefficient: units.Some(-0.4 * units.PercentPerKelvin), CellTemperature: units.Celsius(19.25)}
	h := harvest(t, r)
	wantFixed(t, "temperature factor", h.TemperatureFactor, units.One, 3, "1.023")
	wantFixed(t, "December", h.Energy, units.WattHour, 0, "197")
	// What the wrong answer is made of: another plane, a year's mean.
	r.Irradiation, r.CellTemperature = 4.864*units.KilowattHourPerSquareMetre, units.Temperature{}
	wantFixed(t, "tilted, annual", harvest(t, r).Energy, units.WattHour, 0, "418")
}

// TestTrapPWM: a 60-cell panel of 276 W through a PWM controller gives a bank
// at 12.8 V 9.55 A and 122.2 W by the single-diode equation, not 21.58 A and
// 276.2 W. The short-circuit current stands in for it, within half a percent.
func TestTrapPWM(t *testing.T) {
	h := demo()
	h.Array = solar.Array{Series: 1, Parallel: 1, Panel: solar.Panel{
		Power: 276.21 * units.Watt, Voc: 37.957 * units.Volt, Vmp: 30.81 * units.Volt, Isc: 9.592 * units.Ampere}}
	h.Bank, h.Controller.Kind = 12.8*units.Volt, solar.PWM
	f := fit(t, h)
	for what, pair := range map[string][2]float64{
		"current": {units.In(f.Charging, units.Ampere), 9.549}, "power": {units.In(f.Power, units.Watt), 122.2},
	} {
		if off := pair[0]/pair[1] - 1; !(off >= 0 && off < 0.006) {
			t.Errorf("%s %v, want %v or a little more", what, pair[0], pair[1])
		}
	}
	if !has(f.Findings(), "panels-tied-to-bank") {
		t.Error("what is thrown away is not said")
	}
	h.Controller.Kind = solar.MPPT
	wantFixed(t, "the wrong answer, which is that of a converter without loss", fit(t, h).Charging, units.Ampere, 2, "21.58")
}

// TestTrapParallelFuses: three panels of 11 A in parallel feed 27.5 A into one
// that is shorted, not 13.75 A, and need fuses below a label of 20 A; two do
// not.
func TestTrapParallelFuses(t *testing.T) {
	for _, c := range []struct {
		parallel int
		back     string
		fusing   solar.Fusing
	}{{3, "27.50", solar.FusingNeeded}, {2, "13.75", solar.FusingNotNeeded}} {
		s := threeStrings()
		s.Array.Parallel, s.Array.Panel.Isc, s.Array.Panel.SeriesFuse = c.parallel, 11*units.Ampere, units.Some(20*units.Ampere)
		got, err := solar.Currents(s)
		if err != nil {
			t.Fatal(err)
		}
		wantFixed(t, "fed back", got.Backfeed, units.Ampere, 2, c.back)
		if got.Fusing != c.fusing {
			t.Errorf("%d in parallel: %v, want %v", c.parallel, got.Fusing, c.fusing)
		}
	}
}

// TestTrapFullBank: a bank that had 500 Wh taken overnight and gives 300 Wh in
// the sun takes 800 Wh, however much the panels could give. A harvest of
// 1600 Wh does not say that it is taken: it says that it could be had.
func TestTrapFullBank(t *testing.T) {
	h := harvest(t, solar.PanelDay{Peak: 400 * units.Watt, Irradiation: 4 * units.KilowattHourPerSquareMetre})
	wantFixed(t, "what could be had", h.Energy, units.WattHour, 0, "1600")
	if !has(h.Findings(), "harvest-not-accepted") {
		t.Error("it is not said that a full bank takes nothing")
	}
}

// TestTrapFuseEnd: the fuse between a controller for 30 A and its bank belongs
// by the bank, which feeds a fault with far more than 30 A.
func TestTrapFuseEnd(t *testing.T) {
	f := fit(t, demo())
	for _, x := range f.Findings() {
		if x.Rule == "fuse-by-the-bank" {
			if !strings.Contains(x.Fix, "by the bank") || x.Numbers[0].Value != units.Value(f.OutputRequired) {
				t.Errorf("%v", x)
			}
			return
		}
	}
	t.Error("not said")
}

// TestCurrentsByHand: 9.5 A · 1.25 · 1.25 and 3 · 6.1 A · 1.25 · 1.25.
func TestCurrentsByHand(t *testing.T) {
	for _, c := range []struct {
		isc               units.Current
		parallel          int
		maximum, required string
	}{{9.5 * units.Ampere, 1, "11.8750", "14.8438"}, {6.1 * units.Ampere, 3, "22.8750", "28.5938"}} {
		s := threeStrings()
		s.Array.Parallel, s.Array.Panel.Isc = c.parallel, c.isc
		got, err := solar.Currents(s)
		if err != nil {
			t.Fatal(err)
		}
		wantFixed(t, "maximum", got.Maximum, units.Ampere, 4, c.maximum)
		wantFixed(t, "required", got.Required, units.Ampere, 4, c.required)
	}
}
