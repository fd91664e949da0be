package plan_test

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// mistakesOf returns what is refused of a changed demo, as an owner reads it.
func mistakesOf(t *testing.T, change func(*plan.Rig)) (list []string) {
	t.Helper()
	rig := demo(t)
	change(&rig)
	_, err := plan.Make(rig)
	var mistakes *plan.DescriptionError
	if !errors.As(err, &mistakes) {
		t.Errorf("not refused: %v", err)
		return nil
	}
	for _, p := range mistakes.Problems {
		list = append(list, p.String())
	}
	return list
}

// TestTheCauseIsNamed: a mistake is told once, where it was made, in words of
// the description.
func TestTheCauseIsNamed(t *testing.T) {
	known := "one of lamps, water pump, furnace blower, gas and CO detector, compressor refrigerator, sample freezer, night-call recorder, " +
		"vertical-looking radar, modem and antenna, roof vent fan, USB and handheld radios, laptops, data logger, coffee maker, microwave, " +
		"water heater element, portable heater"
	for _, c := range []struct {
		what   string
		change func(*plan.Rig)
		want   []string
	}{
		{"a load of nothing alone on its circuit", func(r *plan.Rig) { r.Loads[5].Power = units.Some(0 * units.Watt) },
			[]string{`loads[5].power = "0 W", want more than nothing, since nothing else is on circuits[2], "C3"`}},
		{"the same by its current", func(r *plan.Rig) { r.Loads[1].Current = units.Some(0 * units.Ampere) },
			[]string{`loads[1].current = "0 A", want more than nothing, since nothing else is on circuits[5], "C6"`}},
		{"the same by volt-amperes", func(r *plan.Rig) {
			l := &r.Loads[15]
			l.Power, l.Current, l.LockedRotor = units.None[units.Power](), units.None[units.Current](), units.None[units.Current]()
			l.Apparent = units.Some(0 * units.VoltAmpere)
		}, []string{`loads[15].apparent = "0 VA", want more than nothing, since nothing else is on circuits[9], "C10"`}},
		{"a feeder of a bus with nothing on it", func(r *plan.Rig) {
			r.Buses = append(r.Buses, plan.Bus{Name: "spare", Kind: loads.Direct, Voltage: 12 * units.Volt})
			r.Circuits[4].To, r.Circuits[4].Loads, r.Circuits[4].Bus = "spare", nil, "spare"
		}, []string{`circuits[4].current is missing, want current or power: nothing draws on what it feeds`}},
		{"two ratings", func(r *plan.Rig) { r.Loads[1].Power = units.Some(84 * units.Watt) },
			[]string{`loads[1] = "84 W and 7 A", want exactly one of power, current and apparent`}},
		{"windows that meet", func(r *plan.Rig) {
			r.Loads[6].Windows = append(r.Loads[6].Windows, loads.Window{From: loads.Clock{Hour: 20}, To: loads.Clock{Hour: 23}})
		}, []string{`loads[6].windows[1] = "20:00 to 23:00", want apart from windows[0], 18:30 to 05:30`}},
		{"hours and windows", func(r *plan.Rig) { r.Loads[6].Hours = units.Some(11 * units.Hour) },
			[]string{`loads[6].hours = "11 h", want either hours, 0 h to 24 h, or windows`}},
		{"an hour too many", func(r *plan.Rig) { r.Loads[3].Hours = units.Some(25 * units.Hour) },
			[]string{`loads[3].hours = "25 h", want 0 h to 24 h`}},
		{"the same on the road", func(r *plan.Rig) { r.Tow.Hours = 25 * units.Hour },
			[]string{`tow.hours = "25 h", want 0 h to 24 h`}},
		{"a time below nothing", func(r *plan.Rig) { r.Loads[3].Hours = units.Some(-30 * units.Minute) },
			[]string{`loads[3].hours = "-30 min", want 0 h to 24 h`}},
		{"two circuits to one place", func(r *plan.Rig) { r.Circuits[4].To, r.Circuits[5].To = "furnace", "furnace" },
			[]string{`circuits[4].to = "furnace", want it listed in places, since 2 circuits end there`}},
		{"a name taken, and its own in use", func(r *plan.Rig) { r.Loads[15].Name = "lamps" },
			[]string{`loads[15].name = "lamps", want a name that is not taken`}},
		{"a name taken, and in use on its bus", func(r *plan.Rig) { r.Loads[15].Name, r.Circuits[9].Loads[0] = "lamps", "lamps" },
			[]string{`loads[15].name = "lamps", want a name that is not taken`}},
		{"a name taken, and another misspelt", func(r *plan.Rig) { r.Loads[15].Name, r.Circuits[4].Loads[0] = "lamps", "furnace blowr" },
			[]string{`loads[15].name = "lamps", want a name that is not taken`,
				`circuits[4].loads[0] = "furnace blowr", want ` + known + `; did you mean "furnace blower"?`}},
		{"a bus by a taken name, and its own in use", func(r *plan.Rig) { r.Buses[2].Name = "dc" },
			[]string{`buses[2].name = "dc", want a name that is not taken`}},
		{"a place by a taken name, and an end misspelt", func(r *plan.Rig) {
			r.Places = []string{"closet", "closet"}
			r.Circuits[4].From, r.Circuits[4].Device.At, r.Circuits[5].From = "bnak", "bnak", "cupboard"
		}, []string{`places[1] = "closet", want a name that is not taken`,
			`circuits[4].from = "bnak", want one of bank, inverter, converter, controller, roof, tow vehicle, tow charger, generator, shore, dc, dc panel, backed, backed panel, main, main panel, closet, closet, or a place that is listed in places; did you mean "bank"?`}},
	} {
		if got := mistakesOf(t, c.change); !slices.Equal(got, c.want) {
			t.Errorf("%s:\ngot  %s\nwant %s", c.what, fmt.Sprintf("%q", got), fmt.Sprintf("%q", c.want))
		}
	}
}
