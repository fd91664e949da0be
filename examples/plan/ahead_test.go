package plan_test

import (
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// stepped makes the bank one of 25.6 V, with the 12 V bus behind a converter.
func stepped(r *plan.Rig) {
	r.Bank.Series, r.Bank.Typical = 2, units.Some(26.4*units.Volt)
	r.Inverter.CutOff, r.Converter.Voltage, r.Tow.Voltage = 21.6*units.Volt, 28.8*units.Volt, 28.8*units.Volt
	r.Roof.Controller.InputLimit = 150 * units.Volt
	r.Buses[0].ThroughConverter = units.Some(80 * units.Percent)
	r.Circuits[1].Usual = units.None[units.Current]()
}

// TestRunAheadOfAConverter has the voltage, the current and the shorts of the
// bank: 400 W at once on the 12 V bus take 400 W / 0.8 / 25.6 V = 19.5 A.
func TestRunAheadOfAConverter(t *testing.T) {
	p := planOf(t, stepped)
	feed := p.Circuits[1]
	if ok, err := units.MustPrinted("19.53", "A").Agrees(feed.Current); !ok || err != nil {
		t.Errorf("ahead of the converter %v", feed.Current)
	}
	// 7 ft of 6 AWG there and back, 0.491 Ω/kft, lose 134 mV of 25.6 V.
	if ok, err := units.MustPrinted("0.52", "%").Agrees(feed.Fraction); !ok || err != nil {
		t.Errorf("lost ahead of the converter: %v of the voltage", feed.Fraction)
	}
	for _, i := range []int{2, 3, 4, 5} {
		if c := p.Circuits[i]; units.Compare(c.Path, c.Fraction) != 0 || c.Fault.IsSet() {
			t.Errorf("%s behind the converter: %v along the path, of it %v, and a short of %v", c.Name, c.Path, c.Fraction, c.Fault)
		}
	}
	for _, s := range p.Working() {
		unitstest.CheckSheet(t, s.Sheet)
	}
	// Two in series, two rows: 26.6 V on 4 mΩ drive 6.65 kA at the bank.
	burst := func(a units.Current) plan.Plan {
		return planOf(t, and(stepped, breaking(1, a), func(r *plan.Rig) { r.Circuits[1].Device.Distance = units.Some(0 * units.Inch) }))
	}
	if sev, ok := found(burst(6600), "C2", "interrupting-too-low"); !ok || sev != working.Danger {
		t.Errorf("6600 A against 6650 A: %v, %v", ok, sev)
	}
	if _, ok := found(burst(6700), "C2", "interrupting-too-low"); ok {
		t.Error("6700 A against 6650 A: false alarm")
	}
	// 512 W at 25.6 V.
	power := planOf(t, and(stepped, func(r *plan.Rig) { r.Circuits[1].Power = units.Some(512 * units.Watt) }))
	if got := power.Circuits[1].Current; units.Compare(got, 20*units.Ampere) != 0 {
		t.Errorf("512 W stated: %v, want 20 A", got)
	}
	// A load that is named on that run hangs behind the converter as well:
	// 84 W / 0.8 / 25.6 V.
	named := planOf(t, and(stepped, func(r *plan.Rig) {
		c := r.Circuits[5]
		c.Name, c.From, c.Feeder, c.Device = "X1", "bank", "", &plan.Device{Rating: 15 * units.Ampere, At: "bank"}
		c.To = "pump's converter"
		r.Circuits = append(r.Circuits, c)
	}))
	if c := named.Circuits[10]; !c.Fault.IsSet() || c.AtLoad != 0 {
		t.Errorf("a load ahead of the converter: %+v", c)
	} else if ok, err := units.MustPrinted("4.10", "A").Agrees(c.Current); !ok || err != nil {
		t.Errorf("a load ahead of the converter: %v", c.Current)
	}
}
