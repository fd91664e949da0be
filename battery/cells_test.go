package battery_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// What people write for the voltage of a battery, and the cells that it has:
// common practice. 0 is refused.
func TestCellsFromVoltage(t *testing.T) {
	for _, c := range []struct {
		kind    battery.Chemistry
		voltage string
		cells   int
		guessed bool
	}{
		// Lead-acid: the label, and full at rest.
		{battery.Flooded, "2 V", 1, false}, {battery.Flooded, "4 V", 2, false}, {battery.Flooded, "6 V", 3, false},
		{battery.Flooded, "8 V", 4, false}, {battery.Flooded, "12 V", 6, false}, {battery.Flooded, "12.6 V", 6, false},
		{battery.Flooded, "12.8 V", 6, false}, {battery.AGM, "12.8 V", 6, false}, {battery.Gel, "12.1 V", 6, false},
		{battery.Flooded, "24 V", 12, false}, {battery.AGM, "36 V", 18, false}, {battery.Flooded, "48 V", 24, false},
		// The ends of the band, 1.9 V and 2.15 V a cell, and beyond them.
		{battery.Flooded, "11.4 V", 6, false}, {battery.Flooded, "12.9 V", 6, false},
		{battery.Flooded, "11.39 V", 0, false}, {battery.Flooded, "12.91 V", 0, false},
		// Charging, not nominal; counts that are not made.
		{battery.Flooded, "13 V", 0, false}, {battery.Flooded, "13.5 V", 0, false}, {battery.Flooded, "14.4 V", 0, false},
		{battery.Flooded, "10 V", 0, false}, {battery.AGM, "16 V", 0, false}, {battery.Flooded, "3.2 V", 0, false},
		// Lithium: rounded names and real ones.
		{battery.LithiumIronPhosphate, "3.2 V", 1, false}, {battery.LithiumIronPhosphate, "12 V", 4, false},
		{battery.LithiumIronPhosphate, "12.8 V", 4, false}, {battery.LithiumIronPhosphate, "13.3 V", 4, false},
		{battery.LithiumIronPhosphate, "24 V", 8, false}, {battery.LithiumIronPhosphate, "25.6 V", 8, false},
		{battery.LithiumIronPhosphate, "36 V", 12, false}, {battery.LithiumIronPhosphate, "38.4 V", 12, false},
		{battery.LithiumIronPhosphate, "51.2 V", 16, false},
		// 15 cells of 3.2 V or 16 of 3 V: the nearer to nominal, and said so.
		{battery.LithiumIronPhosphate, "48 V", 15, true}, {battery.LithiumIronPhosphate, "51 V", 16, true},
		{battery.LithiumIronPhosphate, "49.5 V", 15, true}, {battery.LithiumIronPhosphate, "49.6 V", 16, true},
		{battery.LithiumIronPhosphate, "11.99 V", 0, false}, {battery.LithiumIronPhosphate, "13.61 V", 0, false},
		{battery.LithiumIronPhosphate, "6.4 V", 0, false}, {battery.LithiumIronPhosphate, "14.4 V", 0, false},
	} {
		b := one(battery.Battery{Chemistry: c.kind, Capacity: 100 * units.AmpereHour, Voltage: units.MustParse[units.Voltage](c.voltage)})
		b.CellTemperature, b.Charging = units.Celsius(20), off()
		a, err := battery.Assemble(b)
		if c.cells == 0 {
			wantRangeError(t, err, "battery.Assemble", "Voltage")
			// The message names the voltage, and the way out.
			if err != nil && !(strings.Contains(err.Error(), "Voltage = "+c.voltage) && strings.Contains(err.Error(), "give Cells")) {
				t.Errorf("%v of %s: %v", c.kind, c.voltage, err)
			}
			continue
		}
		if err != nil || a.Cells != c.cells {
			t.Errorf("%v of %s: %d cells, %v; want %d", c.kind, c.voltage, a.Cells, err, c.cells)
			continue
		}
		if c.guessed {
			wantRule(t, a.Findings(), "cells-guessed", working.Note)
		} else {
			wantNoRule(t, a.Findings(), "cells-guessed")
		}
	}
}

// As near to 15 cells as to 16, the fewer are taken, and the finding says so.
func TestCellsHalfWay(t *testing.T) {
	// V/15 - 3.2 = 3.2 - V/16.
	a := must[battery.Assembly](t)(battery.Assemble(one(battery.Battery{
		Chemistry: battery.LithiumIronPhosphate, Capacity: 100 * units.AmpereHour, Voltage: 6.4 * 15 * 16 / 31 * units.Volt,
	})))
	if a.Cells != 15 {
		t.Errorf("%d cells, want 15", a.Cells)
	}
	for _, f := range a.Findings() {
		if f.Rule == "cells-guessed" {
			wantNumber(t, f, "cells taken", 15*units.One)
			wantNumber(t, f, "it may have", 16*units.One)
		}
	}
}

// A number that is given beats the guess, and the voltage must be possible
// for it.
func TestCellsGiven(t *testing.T) {
	for _, c := range []struct {
		kind    battery.Chemistry
		voltage units.Voltage
		cells   int
		field   string // refused for it
	}{
		{battery.Flooded, 10, 5, ""},
		{battery.Flooded, 13.5, 6, ""},
		{battery.LithiumIronPhosphate, 48, 16, ""},
		{battery.LithiumIronPhosphate, 36, 11, ""},
		{battery.Flooded, 2000, 1000, ""},
		{battery.Flooded, 2, 1, ""},
		{battery.Flooded, 12, 7, ""}, // 1.714 V a cell: empty under load
		{battery.Flooded, 12, 8, "Voltage"},
		{battery.Flooded, 12, 4, "Voltage"},
		{battery.LithiumIronPhosphate, 12.8, 6, "Voltage"}, // counted as lead-acid
		{battery.LithiumIronPhosphate, 12.8, 3, "Voltage"},
		{battery.Flooded, 12, 0, "Cells"}, // a given zero is not a missing one
		{battery.Flooded, 12, -6, "Cells"},
		{battery.Flooded, 2002, 1001, "Cells"},
	} {
		b := one(battery.Battery{Chemistry: c.kind, Capacity: 100 * units.AmpereHour, Voltage: c.voltage, Cells: units.Some(c.cells)})
		b.Series = 2
		a, err := battery.Assemble(b)
		if c.field != "" {
			wantRangeError(t, err, "battery.Assemble", c.field)
			continue
		}
		if err != nil || a.Cells != 2*c.cells {
			t.Errorf("%v of %v with %d cells, two in series: %d, %v", c.kind, c.voltage, c.cells, a.Cells, err)
		}
		wantNoRule(t, a.Findings(), "cells-guessed")
	}
}

// An exponent is a plain number to its reader, and so in its error.
func TestExponentIsRefusedAsANumber(t *testing.T) {
	_, err := battery.Deliver(battery.Discharge{Rating: battery.Rating{Capacity: 100 * units.AmpereHour, Over: units.Hour}, Exponent: 2.5, Current: 1})
	var e *units.RangeError
	if !errors.As(err, &e) || e.Error() != "battery.Deliver: Exponent = 2.5, want 1 to 2" {
		t.Errorf("got %v", err)
	}
}
