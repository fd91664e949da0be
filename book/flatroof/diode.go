package flatroof

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// shortIsMore is why the current through a PWM controller is not that of the
// cell equation.
const shortIsMore = "the short-circuit current is an upper bound"

// printedSwitch compares both controllers of the example with the cell
// equation.
func printedSwitch(pwm, mppt solar.Fit) []weave.Row {
	return []weave.Row{
		{What: "current through PWM", Ours: pwm.Charging, Printed: units.MustPrinted("9.5494", "A"), Source: singleDiode,
			Within: "1 %", Why: shortIsMore},
		{What: "power through PWM", Ours: pwm.Power, Printed: units.MustPrinted("122.23", "W"), Source: singleDiode,
			Within: "1 %", Why: shortIsMore},
		{What: "power through MPPT", Ours: mppt.Power, Printed: units.MustPrinted("265.16", "W"), Source: singleDiode},
	}
}

// printedPWM compares with the cell equation for a panel of 36 cells, at 25 °C
// and at 60 °C, and one of 60 cells.
func printedPWM() ([]weave.Row, error) {
	cool := solar.Panel{Power: 100.01 * units.Watt, Voc: 22.266 * units.Volt, Vmp: 18.32 * units.Volt, Isc: 5.8929 * units.Ampere}
	hot := solar.Panel{Power: 85.49 * units.Watt, Voc: 19.664 * units.Volt, Vmp: 15.67 * units.Volt, Isc: 5.9728 * units.Ampere}
	large := solar.Panel{Power: 276.21 * units.Watt, Voc: 37.957 * units.Volt, Vmp: 30.81 * units.Volt, Isc: 9.592 * units.Ampere}
	var rows []weave.Row
	for _, p := range []struct {
		what           string
		panel          solar.Panel
		bank           units.Voltage
		digits, within string
	}{
		{"36 cells at 25 °C, bank at 12.0 V", cool, 12 * units.Volt, "5.8124", "2 %"},
		{"36 cells at 25 °C, bank at 14.4 V", cool, 14.4 * units.Volt, "5.79", "2 %"},
		{"36 cells at 60 °C, bank at 12.0 V", hot, 12 * units.Volt, "5.8754", "2 %"},
		{"36 cells at 60 °C, bank at 14.4 V", hot, 14.4 * units.Volt, "5.7357", "4.5 %"},
		{"60 cells at 25 °C, bank at 14.4 V", large, 14.4 * units.Volt, "9.544", "1 %"},
	} {
		fit, err := solar.FitController(solar.Hookup{
			Rules:      solar.NEC2017,
			Array:      solar.Array{Panel: p.panel, Series: 1, Parallel: 1},
			Coldest:    units.Celsius(25),
			Controller: solar.Controller{Kind: solar.PWM, InputVoltage: 100 * units.Volt},
			Bank:       p.bank,
		})
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: p.what, Ours: fit.Charging, Printed: units.MustPrinted(p.digits, "A"), Source: singleDiode,
			Within: p.within, Why: shortIsMore})
	}
	return rows, nil
}
