package battery_test

import (
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// leftOn is a lithium bank on a charger left as for lead-acid.
func leftOn() battery.Bank {
	b := one(battery.Battery{
		Chemistry: battery.LithiumIronPhosphate, Capacity: 100 * units.AmpereHour, Voltage: 12.8 * units.Volt,
		ChargeVoltage: units.Some(14.6 * units.Volt),
	})
	b.CellTemperature = units.Celsius(10)
	b.Charging = battery.Charging{
		Absorption: units.Some(14.4 * units.Volt), Compensation: units.Some(-4 * units.Millivolt), Coldest: units.Celsius(-10),
	}
	return b
}

// A lead-acid profile left on after the change to lithium. By hand:
// 14.40 V + 6 · (-4 mV) · (-10 - 25) = 15.24 V, 0.64 V above 14.60 V.
func TestTrapCompensationLeftOn(t *testing.T) {
	v := must[battery.Compensated](t)(battery.Compensate(leftOn()))
	printedAs(t, "voltage", v.Voltage, units.Volt, 2, "15.24")
	f := v.Findings()
	wantFindings(t, "left on", f, "danger compensation-on-lithium")
	wantNumber(t, f[0], "above the limit by", 0.64*units.Volt)
	wantNumber(t, f[0], "voltage there", 15.24*units.Volt)
	// 25 - 0.2 V / 24 mV.
	wantNumber(t, f[0], "above it when colder than", units.Celsius(25-0.2/0.024))

	wantFindings(t, "the bank", must[battery.Assembly](t)(battery.Assemble(leftOn())).Findings(), "danger compensation-on-lithium")
	b := leftOn()
	b.Charging.Compensation = units.Some(0 * units.Volt)
	v = must[battery.Compensated](t)(battery.Compensate(b))
	printedAs(t, "turned off", v.Voltage, units.Volt, 2, "14.40")
	wantFindings(t, "turned off", v.Findings())
}

func wantNumber(t *testing.T, f working.Finding, name string, want units.Value) {
	t.Helper()
	for _, n := range f.Numbers {
		if n.Name == name {
			if got, wanted := n.String(), (working.Number{Name: name, Value: want, Unit: n.Unit}).String(); got != wanted {
				t.Errorf("%s: %s, want %s", f.Rule, got, wanted)
			}
			return
		}
	}
	t.Errorf("%s has no number %q: %v", f.Rule, name, f.Numbers)
}

func TestChargingFindings(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*battery.Bank)
		want   []string
	}{
		// 14.4 V + 6 · 4 mV · (25 - T) is 14.6 V at 16.67 °C.
		{"just cold enough", func(b *battery.Bank) { b.Charging.Coldest = units.Celsius(16.66) }, []string{"danger compensation-on-lithium"}},
		{"not cold enough", func(b *battery.Bank) { b.Charging.Coldest = units.Celsius(16.67) }, []string{"caution compensation-on-lithium"}},
		{"exactly at the limit", func(b *battery.Bank) {
			b.Battery.ChargeVoltage = units.Some(15.24 * units.Volt)
		}, []string{"caution compensation-on-lithium"}},
		{"the limit of the chemistry", func(b *battery.Bank) {
			b.Battery.ChargeVoltage = units.None[units.Voltage]()
		}, []string{"danger compensation-on-lithium"}},
		{"the sensor is with the cells", func(b *battery.Bank) { b.Charging.Coldest = units.Temperature{} }, []string{"danger compensation-on-lithium"}},
		{"nobody knows how cold", func(b *battery.Bank) {
			b.Charging.Coldest, b.CellTemperature = units.Temperature{}, units.Temperature{}
		}, []string{"caution lithium-temperature-unknown", "caution compensation-on-lithium"}},
		{"nobody knows what is set", func(b *battery.Bank) {
			b.Charging.Absorption = units.None[units.Voltage]()
		}, []string{"caution compensation-on-lithium"}},
		{"not stated", func(b *battery.Bank) { b.Charging = battery.Charging{} }, []string{"note compensation-not-stated"}},
		{"set too high, off", func(b *battery.Bank) {
			b.Charging = off()
			b.Charging.Absorption = units.Some(14.7 * units.Volt)
		}, []string{"danger charge-voltage-above-limit"}},
		{"set to the limit by the chemistry, off", func(b *battery.Bank) {
			b.Charging, b.Battery.ChargeVoltage = off(), units.None[units.Voltage]()
			b.Charging.Absorption = units.Some(14.6 * units.Volt)
		}, nil},
		{"set above the limit of the chemistry, off", func(b *battery.Bank) {
			b.Charging, b.Battery.ChargeVoltage = off(), units.None[units.Voltage]()
			b.Charging.Absorption = units.Some(14.61 * units.Volt)
		}, []string{"danger charge-voltage-above-limit"}},
		{"two in series have twice the limit", func(b *battery.Bank) {
			b.Series, b.Charging = 2, off()
			b.Charging.Absorption = units.Some(29.2 * units.Volt)
		}, nil},
		{"lithium of 48 V, whose cells are a guess", func(b *battery.Bank) {
			b.Battery.Voltage, b.Battery.ChargeVoltage = 48, units.None[units.Voltage]()
			b.Charging.Absorption = units.Some(56.8 * units.Volt)
		}, []string{"caution compensation-on-lithium", "note cells-guessed"}},
		{"15 cells of it, given", func(b *battery.Bank) {
			b.Battery.Voltage, b.Battery.ChargeVoltage, b.Battery.Cells = 48, units.None[units.Voltage](), units.Some(15)
			b.Charging = off()
			b.Charging.Absorption = units.Some(56.8 * units.Volt)
		}, []string{"danger charge-voltage-above-limit"}},
		{"16 cells of it, given", func(b *battery.Bank) {
			b.Battery.Voltage, b.Battery.ChargeVoltage, b.Battery.Cells = 48, units.None[units.Voltage](), units.Some(16)
			b.Charging = off()
			b.Charging.Absorption = units.Some(56.8 * units.Volt)
		}, nil},
		{"lead, compensated", leadLeft(-4 * units.Millivolt), []string{"note hydrogen"}},
		{"lead, turned off", leadLeft(0), []string{"note hydrogen", "note lead-not-compensated"}},
		{"lead, not stated", func(b *battery.Bank) {
			leadLeft(0)(b)
			b.Charging = battery.Charging{}
		}, []string{"note hydrogen", "note compensation-not-stated"}},
		{"lead above the limit of its datasheet", func(b *battery.Bank) {
			leadLeft(-4 * units.Millivolt)(b)
			b.Battery.ChargeVoltage = units.Some(14.1 * units.Volt)
		}, []string{"note hydrogen", "danger charge-voltage-above-limit"}},
	} {
		b := leftOn()
		c.change(&b)
		wantFindings(t, c.what, must[battery.Assembly](t)(battery.Assemble(b)).Findings(), c.want...)
	}
}

// leadLeft puts an AGM bank, with openings that are large enough, in the place
// of the lithium one.
func leadLeft(c units.Voltage) func(*battery.Bank) {
	return func(b *battery.Bank) {
		b.Battery = battery.Battery{Chemistry: battery.AGM, Capacity: 100 * units.AmpereHour, Voltage: 12 * units.Volt}
		b.Vent, b.Charging.Compensation = units.Some(50*units.SquareCentimetre), units.Some(c)
	}
}

// What a charger counts: worked by hand, six for each 12 V.
func TestCellsThatTheChargerCounts(t *testing.T) {
	for _, c := range []struct {
		kind    battery.Chemistry
		voltage units.Voltage
		series  int
		given   units.Opt[int]
		want    int
	}{
		{battery.LithiumIronPhosphate, 12.8, 1, units.None[int](), 6},
		{battery.LithiumIronPhosphate, 12, 1, units.None[int](), 6},
		{battery.LithiumIronPhosphate, 3.2, 1, units.None[int](), 6},
		{battery.LithiumIronPhosphate, 12.8, 2, units.None[int](), 12},
		{battery.LithiumIronPhosphate, 36, 1, units.None[int](), 18},
		{battery.LithiumIronPhosphate, 48, 1, units.None[int](), 24},
		{battery.LithiumIronPhosphate, 51.2, 1, units.None[int](), 24},
		{battery.LithiumIronPhosphate, 12.8, 1, units.Some(4), 4},
		{battery.Flooded, 6, 2, units.None[int](), 6},
		{battery.Flooded, 2, 1, units.None[int](), 1},
	} {
		b := one(battery.Battery{Chemistry: c.kind, Capacity: 100 * units.AmpereHour, Voltage: c.voltage})
		b.Series = c.series
		b.Charging = battery.Charging{
			Absorption: units.Some(units.Scale(c.voltage, 1.2*units.Ratio(c.series))), Compensation: units.Some(-3 * units.Millivolt),
			Cells: c.given, Reference: units.Celsius(20), Coldest: units.Celsius(0),
		}
		v := must[battery.Compensated](t)(battery.Compensate(b))
		if v.Cells != c.want {
			t.Errorf("%v of %v, %d in series: %d cells, want %d", c.kind, c.voltage, c.series, v.Cells, c.want)
		}
		// 3 mV for each of 20 K below the reference that was given.
		if rise := v.Voltage - v.Absorption; units.Compare(rise, units.Scale(60*units.Millivolt, units.Ratio(c.want))) != 0 {
			t.Errorf("%v of %v: rises by %v", c.kind, c.voltage, rise)
		}
	}
}

func TestCompensateIsChecked(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(*battery.Bank)
	}{
		{"Absorption", func(b *battery.Bank) { b.Charging.Absorption = units.None[units.Voltage]() }},
		{"Compensation", func(b *battery.Bank) { b.Charging.Compensation = units.None[units.Voltage]() }},
		{"Coldest", func(b *battery.Bank) {
			b.Charging.Coldest, b.CellTemperature = units.Temperature{}, units.Temperature{}
		}},
		{"Absorption", func(b *battery.Bank) { b.Charging.Absorption = units.Some(2.4 * units.Volt) }}, // of one cell
		{"Absorption", func(b *battery.Bank) { b.Charging.Absorption = units.Some(12.79 * units.Volt) }},
		{"Absorption", func(b *battery.Bank) { b.Charging.Absorption = units.Some(19.21 * units.Volt) }},
		{"Compensation", func(b *battery.Bank) { b.Charging.Compensation = units.Some(4 * units.Millivolt) }},
		{"Compensation", func(b *battery.Bank) { b.Charging.Compensation = units.Some(-10.1 * units.Millivolt) }},
		{"Compensation", func(b *battery.Bank) { b.Charging.Compensation = units.Some(-24 * units.Millivolt) }}, // of six cells
		{"Charging.Cells", func(b *battery.Bank) { b.Charging.Cells = units.Some(0) }},
		{"Charging.Cells", func(b *battery.Bank) { b.Charging.Cells = units.Some(1000001) }},
		{"Reference", func(b *battery.Bank) { b.Charging.Reference = units.Celsius(80.1) }},
		{"Coldest", func(b *battery.Bank) { b.Charging.Coldest = units.Celsius(-60.1) }},
		{"Series", func(b *battery.Bank) { b.Series = 0 }},
		{"Voltage", func(b *battery.Bank) { // 64 cells · 7.8125 mV · 30 K is all that is set
			b.Charging.Absorption, b.Charging.Cells, b.Charging.Coldest = units.Some(15*units.Volt), units.Some(64), units.Celsius(55)
			b.Charging.Compensation = units.Some(-7.8125 * units.Millivolt)
		}},
		{"Voltage", func(b *battery.Bank) { // 1000 cells · 10 mV · 40 K is more than is set
			b.Charging.Cells, b.Charging.Coldest = units.Some(1000), units.Celsius(65)
			b.Charging.Compensation = units.Some(-10 * units.Millivolt)
		}},
	} {
		b := leftOn()
		c.spoil(&b)
		v, err := battery.Compensate(b)
		wantRangeError(t, err, "battery.Compensate", c.field)
		if v != (battery.Compensated{}) {
			t.Errorf("a bad %s: the result is not zero", c.field)
		}
	}
	for _, cells := range []int{1, 1e6} {
		b := leftOn()
		b.Charging.Cells, b.Charging.Coldest = units.Some(cells), units.Celsius(25)
		if v := must[battery.Compensated](t)(battery.Compensate(b)); v.Voltage != 14.4 || v.Cells != cells {
			t.Errorf("at the reference: %+v", v)
		}
	}
	for _, at := range []units.Voltage{12.8, 19.2} { // both ends are allowed
		b := leftOn()
		b.Charging.Absorption = units.Some(at)
		if _, err := battery.Compensate(b); err != nil {
			t.Error(err)
		}
	}
}

func TestSheetCompensated(t *testing.T) {
	given := leftOn()
	given.Charging.Cells, given.Charging.Reference = units.Some(4), units.Celsius(20)
	lead := leftOn()
	leadLeft(-5 * units.Millivolt)(&lead)
	atLimit := leftOn()
	atLimit.Battery.ChargeVoltage = units.Some(15.24 * units.Volt)
	for name, b := range map[string]battery.Bank{"lithium": leftOn(), "at its limit": atLimit, "all given": given, "lead": lead} {
		t.Run(name, func(t *testing.T) {
			unitstest.CheckSheet(t, must[battery.Compensated](t)(battery.Compensate(b)).Working())
		})
	}
}

// Laws of the correction.
func TestCompensationLaws(t *testing.T) {
	at := func(c float64, slope units.Voltage) units.Voltage {
		b := leftOn()
		b.Charging.Coldest, b.Charging.Compensation = units.Celsius(c), units.Some(slope)
		return must[battery.Compensated](t)(battery.Compensate(b)).Voltage
	}
	for law, holds := range map[string]bool{
		"at the reference nothing is corrected":         at(25, -4*units.Millivolt) == 14.4,
		"colder is higher":                              at(-20, -4*units.Millivolt) > at(-10, -4*units.Millivolt),
		"warmer than the reference is lower":            at(40, -4*units.Millivolt) < 14.4,
		"twice the slope is twice the rise":             units.Compare(at(-10, -8*units.Millivolt)-14.4, 2*(at(-10, -4*units.Millivolt)-14.4)) == 0,
		"as much below the reference as above balances": units.Compare(at(5, -4*units.Millivolt)+at(45, -4*units.Millivolt), 28.8) == 0,
	} {
		if !holds {
			t.Errorf("not so: %s", law)
		}
	}
}
