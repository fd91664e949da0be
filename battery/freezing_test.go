package battery_test

import (
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// drained is a flooded battery with a small drain at -20 °C, planned to half.
func drained(state, usable units.Ratio) battery.Hold {
	b := one(battery.Battery{
		Chemistry: battery.Flooded, Capacity: 100 * units.AmpereHour, Voltage: 12 * units.Volt, Usable: units.Some(usable),
	})
	b.CellTemperature, b.Charging = units.Celsius(-20), battery.Charging{Compensation: units.Some(-4 * units.Millivolt)}
	return battery.Hold{Bank: b, Draw: battery.Draw{Current: units.Some(0.4 * units.Ampere)}, StateOfCharge: units.Some(state)}
}

// On a row there is one row and nothing in between; beside it there are two.
func TestFreezingRows(t *testing.T) {
	for state, want := range map[units.Ratio][2]units.Ratio{
		0.1: {0.25, 0.25}, 0.25: {0.25, 0.25}, 0.4: {0.25, 0.5}, 0.5: {0.5, 0.5}, 0.75: {0.75, 0.75}, 0.8: {0.75, 1}, 1: {1, 1},
		0.5 * (1 + 1e-12): {0.5, 0.5}, 0.5 * (1 - 1e-12): {0.5, 0.5},
	} {
		f := must[battery.Freezing](t)(battery.FreezingPoint(state))
		if got := [2]units.Ratio{f.LowCharge, f.HighCharge}; got != want {
			t.Errorf("FreezingPoint(%v): between %v, want %v", float64(state), got, want)
		}
	}
}

// What freezes is judged at the lowest charge that the bank gets to: where it
// begins or where it is taken. By the table 25 % freezes at -17.2 °C, 50 % at
// -35 °C.
func TestFreezingAtTheLowestCharge(t *testing.T) {
	for _, c := range []struct {
		what          string
		state, usable units.Ratio
		cells         float64
		want          string
	}{
		// 90 Ah less 0.4 A for 7 days: 22.8 % of 100 Ah. It freezes above -17.2 °C.
		{"begins at what the drain left", 0.228, 0.5, -20, "danger lead-freezes"},
		{"the drain may take it there", 0.9, 1 - 0.228, -20, "danger lead-freezes"},
		{"flat", 0, 0.5, -20, "danger lead-freezes"},
		{"begins at a quarter, just cold enough", 0.25, 0.5, -17.3, "danger lead-freezes"},
		{"begins at a quarter, not cold enough", 0.25, 0.5, -17.1, "note lead-freezes-if-flat"},
		{"begins below the table, milder cold", 0.228, 0.5, -17.1, "caution lead-may-freeze"},
		{"begins below the table, at freezing", 0.1, 0.5, 0, "caution lead-may-freeze"},
		{"full, planned to half", 1, 0.5, -20, "caution lead-freezes-if-flat"},
		{"full, planned to half, at -35 °C", 1, 0.5, -35.1, "danger lead-freezes"},
		{"planned deeper than where it begins", 0.6, 0.75, -17.3, "danger lead-freezes"},
	} {
		h := drained(c.state, c.usable)
		h.Bank.CellTemperature = units.Celsius(c.cells)
		e := must[battery.Endurance](t)(battery.HoldUp(h))
		found := ""
		for _, f := range e.Findings() {
			switch f.Rule {
			case "lead-freezes", "lead-may-freeze", "lead-freezes-if-flat":
				found += f.Severity.String() + " " + f.Rule
				wantNumber(t, f, "lowest state of charge", min(c.state, 1-c.usable))
			}
		}
		if found != c.want {
			t.Errorf("%s: %q, want %q", c.what, found, c.want)
		}
	}
	// To the degree of the table: what freezes there is frozen there.
	for _, c := range []struct {
		cells units.Temperature
		rule  string
		worst working.Severity
	}{
		{units.Fahrenheit(-31), "lead-freezes", working.Danger},
		{units.Fahrenheit(1), "lead-freezes-if-flat", working.Caution},
		{units.Fahrenheit(32), "lead-freezes-if-flat", working.Note},
	} {
		h := drained(0.9, 0.5)
		h.Bank.CellTemperature = c.cells
		wantRule(t, must[battery.Endurance](t)(battery.HoldUp(h)).Findings(), c.rule, c.worst)
	}
	// Asked without a state, the bank is judged as it is planned.
	b := drained(0.228, 0.5).Bank
	wantRule(t, must[battery.Assembly](t)(battery.Assemble(b)).Findings(), "lead-freezes-if-flat", working.Caution)
	wantNoRule(t, must[battery.Assembly](t)(battery.Assemble(b)).Findings(), "lead-freezes")
}
