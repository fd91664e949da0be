package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/examples/plan"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// TestContradictions: what is allowed by itself and not beside another field is
// one mistake, at a field that the description has, whoever finds it.
func TestContradictions(t *testing.T) {
	window := func(from, to string) (w loads.Window) {
		if w.From.UnmarshalText([]byte(from)) != nil || w.To.UnmarshalText([]byte(to)) != nil {
			t.Fatal(from, to)
		}
		return w
	}
	for _, c := range []struct {
		path, allowed string
		change        func(*plan.Rig)
	}{
		// Loads.
		{"loads[1]", "exactly one of power, current and apparent", func(r *plan.Rig) { r.Loads[1].Power = units.Some(84 * units.Watt) }},
		{"loads[1]", "exactly one of power, current and apparent", func(r *plan.Rig) { r.Loads[1].Current = units.None[units.Current]() }},
		{"loads[1].hours", "either hours, 0 h to 24 h, or windows", func(r *plan.Rig) { r.Loads[1].Windows = []loads.Window{window("18:30", "20:30")} }},
		{"loads[1].power_factor", "none on a direct-current bus", func(r *plan.Rig) { r.Loads[1].PowerFactor = units.Some(90 * units.Percent) }},
		{"loads[13].power_factor", "1 for a resistive load", func(r *plan.Rig) { r.Loads[13].PowerFactor = units.Some(90 * units.Percent) }},
		{"loads[1].apparent", "W or A on a direct-current bus", func(r *plan.Rig) {
			r.Loads[1].Current, r.Loads[1].Apparent = units.None[units.Current](), units.Some(84*units.VoltAmpere)
		}},
		{"loads[6].windows[1]", "apart from windows[0], 18:30 to 20:30", func(r *plan.Rig) {
			r.Loads[6].Windows = []loads.Window{window("18:30", "20:30"), window("20:00", "21:00")}
		}},
		{"loads[15].locked_rotor", "no less than the current of one when it runs, 12.2 A", func(r *plan.Rig) { r.Loads[15].LockedRotor = units.Some(2 * units.Ampere) }},
		// Bank and inverter.
		{"bank.charge_high", "0 °C to 80 °C", func(r *plan.Rig) { r.Bank.ChargeHigh = units.Celsius(-5) }},
		{"bank.voltage", "give cells if there is another number of them", func(r *plan.Rig) {
			r.Bank = plan.Bank{Chemistry: battery.AGM, Capacity: 100 * units.AmpereHour, Voltage: 7 * units.Volt}
		}},
		{"inverter.apparent", ">= 1.5 kVA", func(r *plan.Rig) { r.Inverter.Apparent = units.Some(1400 * units.VoltAmpere) }},
		{"inverter.surge", ">= 1.5 kVA", func(r *plan.Rig) { r.Inverter.Surge = units.Some(1400 * units.VoltAmpere) }},
		// Roof.
		{"roof.series", "panels a multiple of series", func(r *plan.Rig) { r.Roof.Series = 3 }},
		{"roof.maximum_power_voltage", "< 46.2 V", func(r *plan.Rig) { r.Roof.Vmp = 50 * units.Volt }},
		{"roof.power", "282.7 W at most (open_circuit_voltage times short_circuit_current)", func(r *plan.Rig) { r.Roof.Power = 400 * units.Watt }},
		{"roof.short_circuit_current", "5.729 A at least (power by maximum_power_voltage)", func(r *plan.Rig) { r.Roof.Isc = 5.5 * units.Ampere }},
		{"roof.sun.day_of_year", "1 to 366, with latitude", func(r *plan.Rig) { r.Roof.Sun.DayOfYear = 0 }},
		{"roof.coldest", "-40 °C to 25 °C", func(r *plan.Rig) {
			r.Roof.Coldest, r.Roof.Coefficient = units.Celsius(-60), units.None[units.PerKelvin]()
		}},
		// Circuits.
		{"circuits[0].device.distance", "0 m to 1.2192 m", func(r *plan.Rig) { r.Circuits[0].Device.Distance = units.Some(5 * units.Foot) }},
		{"circuits[1].usual", "no more than the greatest current", func(r *plan.Rig) { r.Circuits[1].Usual = units.Some(500 * units.Ampere) }},
	} {
		rig := demo(t)
		c.change(&rig)
		_, err := plan.Make(rig)
		p := onlyProblem(t, "a contradiction", c.path, err)
		if !inSchema(p.Path) || !strings.Contains(p.Allowed, c.allowed) {
			t.Errorf("%v, want %s", p, c.allowed)
		}
	}
}

// TestRowOfMotors: of several motors in a row one starts, and the others run.
func TestRowOfMotors(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		r.Loads[15].Count, r.Loads[15].Current, r.Loads[15].LockedRotor = 8, units.Some(0.5*units.Ampere), units.Some(3*units.Ampere)
	})
	if len(p.Loads) == 0 || p.Loads[15].Power != 8*0.5*120*0.95*units.Watt {
		t.Errorf("%+v", p.Loads)
	}
	// 3 A x 120 V of the one and 7 x 0.5 A x 120 V of the others.
	line := loads.Line{Name: "fans", Kind: loads.Motor, Bus: loads.Bus{Voltage: 120 * units.Volt}, Count: 8, Power: 456 * units.Watt, Apparent: 480 * units.VoltAmpere}
	if d := plan.DemandOf(line, units.Some(3*units.Ampere)); units.Compare(d.Start.Or(0), 780*units.VoltAmpere) != 0 {
		t.Errorf("they start with %v", d.Start)
	}
}
