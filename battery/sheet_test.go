package battery_test

import (
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// banks are one of each way to know a bank.
func banks() map[string]battery.Bank {
	aged := lead()
	aged.Battery.Aged, aged.Multiplier = units.Some(80*units.Percent), units.Some[units.Ratio](1.19)
	return map[string]battery.Bank{
		"full datasheet": hold().Bank,
		"demo":           demoBank(),
		"lead":           lead(),
		"aged and cold":  aged,
		"defaults":       one(battery.Battery{Chemistry: battery.AGM, Capacity: 95 * units.AmpereHour, Voltage: 12 * units.Volt}),
	}
}

func TestSheetAssembly(t *testing.T) {
	for name, b := range banks() {
		t.Run(name, func(t *testing.T) {
			unitstest.CheckSheet(t, must[battery.Assembly](t)(battery.Assemble(b)).Working())
		})
	}
}

func TestSheetUsableCharge(t *testing.T) {
	for name, b := range banks() {
		for _, at := range []units.Opt[units.Current]{units.None[units.Current](), units.Some(1.7 * units.Ampere), units.Some(63 * units.Ampere)} {
			t.Run(name+" "+at.String(), func(t *testing.T) {
				unitstest.CheckSheet(t, must[battery.UsableCharge](t)(battery.Usable(b, at)).Working())
			})
		}
	}
}

func TestSheetExponent(t *testing.T) {
	unitstest.CheckSheet(t, must[battery.Exponent](t)(battery.ExponentFrom(
		battery.Rating{Capacity: 180 * units.AmpereHour, Over: 6 * units.Hour},
		battery.Rating{Capacity: 220 * units.AmpereHour, Over: 20 * units.Hour},
	)).Working())
}

func TestSheetDelivery(t *testing.T) {
	for _, i := range []units.Current{3, 5, 37.3} {
		unitstest.CheckSheet(t, must[battery.Delivery](t)(battery.Deliver(battery.Discharge{
			Rating:   battery.Rating{Capacity: 100 * units.AmpereHour, Over: 20 * units.Hour},
			Exponent: 1.2, Current: i,
		})).Working())
	}
}

func TestSheetSag(t *testing.T) {
	for name, d := range map[string]battery.Draw{
		"power":      {Power: units.Some(1733 * units.Watt)},
		"current":    {Current: units.Some(147.5 * units.Ampere)},
		"resistance": {Resistance: units.Some(83 * units.Milliohm)},
		"short":      {Resistance: units.Some[units.Resistance](0)},
	} {
		t.Run(name, func(t *testing.T) {
			for _, cut := range []units.Opt[units.Voltage]{units.None[units.Voltage](), units.Some(10.5 * units.Volt)} {
				unitstest.CheckSheet(t, must[battery.Sag](t)(battery.UnderLoad(battery.Circuit{
					OpenCircuit: 12.2 * units.Volt, Internal: 10 * units.Milliohm, Draw: d, CutOff: cut,
				})).Working())
			}
		})
	}
}

func TestSheetEndurance(t *testing.T) {
	for name, b := range banks() {
		for what, change := range map[string]func(*battery.Hold){
			"power":        func(*battery.Hold) {},
			"leads":        func(h *battery.Hold) { h.Leads = units.Some(3 * units.Milliohm) },
			"current":      func(h *battery.Hold) { h.Draw = battery.Draw{Current: units.Some(11 * units.Ampere)} },
			"resistance":   func(h *battery.Hold) { h.Draw = battery.Draw{Resistance: units.Some(2 * units.Ohm)} },
			"part charged": func(h *battery.Hold) { h.StateOfCharge = units.Some(73 * units.Percent) },
			"flat":         func(h *battery.Hold) { h.StateOfCharge = units.Some(5 * units.Percent) },
			"cut off": func(h *battery.Hold) {
				h.OpenCircuit, h.CutOff = units.Some(11.9*units.Volt), units.Some(11.9*units.Volt)
			},
			"above a limit": func(h *battery.Hold) { h.Bank.Battery.DischargeLimit = units.Some(units.Ampere) },
		} {
			t.Run(name+", "+what, func(t *testing.T) {
				h := battery.Hold{Bank: b, Draw: battery.Draw{Power: units.Some(130 * units.Watt)}}
				change(&h)
				unitstest.CheckSheet(t, must[battery.Endurance](t)(battery.HoldUp(h)).Working())
			})
		}
	}
}

func TestSheetLimits(t *testing.T) {
	for name, b := range banks() {
		for _, parallel := range []int{1, 2, 3} {
			b.Parallel = parallel
			b.Battery.ChargeLimit = units.Some(49.7 * units.Ampere)
			t.Run(name, func(t *testing.T) {
				unitstest.CheckSheet(t, must[battery.Limits](t)(battery.CheckLimits(battery.Demand{
					Bank: b, Discharge: units.Some(156.05 * units.Ampere), Charge: units.Some(95 * units.Ampere),
				})).Working())
			})
		}
	}
}

func TestSheetFreezing(t *testing.T) {
	for _, s := range []units.Ratio{0, 0.228, 0.25, 0.333, 0.5, 0.9, 1} {
		unitstest.CheckSheet(t, must[battery.Freezing](t)(battery.FreezingPoint(s)).Working())
	}
}

func TestSheetVentilation(t *testing.T) {
	for _, name := range []string{"lead", "defaults"} {
		unitstest.CheckSheet(t, must[battery.Ventilation](t)(battery.Ventilate(banks()[name])).Working())
	}
}

// TestZeroResultsDoNotPanic asks empty results to explain themselves.
func TestZeroResultsDoNotPanic(t *testing.T) {
	for _, r := range []interface {
		Working() *working.Sheet
		Findings() []working.Finding
	}{
		battery.Assembly{}, battery.UsableCharge{}, battery.Exponent{}, battery.Delivery{}, battery.Sag{},
		battery.Endurance{}, battery.Limits{}, battery.Compensated{}, battery.Freezing{}, battery.Ventilation{},
		battery.Endurance{End: 9}, battery.Freezing{Warmer: true},
		battery.Assembly{Bank: battery.Bank{Battery: battery.Battery{Chemistry: 77}}},
	} {
		if r.Working().Text() == "" {
			t.Errorf("%T has no text", r)
		}
		for _, f := range r.Findings() {
			if f.String() == "" {
				t.Errorf("%T has an empty finding", r)
			}
		}
	}
}
