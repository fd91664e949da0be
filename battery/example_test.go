package battery_test

import (
	"errors"
	"fmt"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
)

// pair is two lithium batteries side by side.
func pair() battery.Bank {
	return battery.Bank{
		Battery: battery.Battery{
			Chemistry:      battery.LithiumIronPhosphate,
			Capacity:       140 * units.AmpereHour,
			Voltage:        12.8 * units.Volt,
			Usable:         units.Some(90 * units.Percent),
			DischargeLimit: units.Some(100 * units.Ampere),
			ChargeLimit:    units.Some(75 * units.Ampere),
			Resistance:     units.Some(4 * units.Milliohm),
		},
		Series: 1, Parallel: 2,
		CellTemperature: units.Celsius(0),
		Charging:        battery.Charging{Compensation: units.Some(0 * units.Volt)},
	}
}

func ExampleAssemble() {
	bank, err := battery.Assemble(pair())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(bank.Voltage, bank.Capacity, bank.Energy, bank.Resistance)
	for _, f := range bank.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output:
	// 12.8 V 280 Ah 3.584 kWh 2 mΩ
	// caution lithium-too-cold-to-charge
}

// An error names the input, its value and what is allowed.
func ExampleAssemble_error() {
	bank := pair()
	bank.Battery.Voltage = 8 * units.Volt
	_, err := battery.Assemble(bank)
	fmt.Println(err)
	fmt.Println(errors.Is(err, units.ErrRange))
	// Output:
	// battery.Assemble: Voltage = 8 V, want 3 V to 3.4 V for each of 1, 4, 8, 12, 15 or 16 cells; give Cells if there is another number of them
	// true
}

func ExampleUsable() {
	lead := battery.Bank{
		Battery: battery.Battery{
			Chemistry: battery.Flooded,
			Capacity:  200 * units.AmpereHour,
			Voltage:   12 * units.Volt,
			Exponent:  units.Some(1.2 * units.One),
		},
		Series: 1, Parallel: 1,
	}
	for _, at := range []units.Opt[units.Current]{
		units.None[units.Current](), units.Some(10 * units.Ampere), units.Some(40 * units.Ampere),
	} {
		u, err := battery.Usable(lead, at)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("at %v: %.1f, %.0f\n", at, u.Charge, u.Energy)
	}
	// Output:
	// at not given: 100.0 Ah, 1200 Wh
	// at 10 A: 100.0 Ah, 1200 Wh
	// at 40 A: 75.8 Ah, 909 Wh
}

// A lead-acid profile left on after the change to lithium.
func ExampleCompensate() {
	bank := pair()
	bank.Charging = battery.Charging{
		Absorption:   units.Some(14.4 * units.Volt),
		Compensation: units.Some(-4 * units.Millivolt),
		Coldest:      units.Celsius(-10),
	}
	v, err := battery.Compensate(bank)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f of %.2f allowed\n", v.Voltage, v.Limit.Or(0))
	for _, f := range v.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output:
	// 15.24 V of 14.60 V allowed
	// danger compensation-on-lithium
}

func ExampleExponentFrom() {
	x, err := battery.ExponentFrom(
		battery.Rating{Capacity: 180 * units.AmpereHour, Over: 6 * units.Hour},
		battery.Rating{Capacity: 220 * units.AmpereHour, Over: 20 * units.Hour},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(units.Fixed(float64(x.Value), 3))
	// Output: 1.200
}

func ExampleDeliver() {
	d, err := battery.Deliver(battery.Discharge{
		Rating:   battery.Rating{Capacity: 100 * units.AmpereHour, Over: 20 * units.Hour},
		Exponent: 1.2 * units.One,
		Current:  10 * units.Ampere,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f in %.1f h\n", d.Charge, units.In(d.Time, units.Hour))
	// Output: 87 Ah in 8.7 h
}

// Half charged, behind 10 mΩ: the sag raises the current, and it trips.
func ExampleUnderLoad() {
	s, err := battery.UnderLoad(battery.Circuit{
		OpenCircuit: 12.2 * units.Volt,
		Internal:    10 * units.Milliohm,
		Draw:        battery.Draw{Power: units.Some(1800 * units.Watt)},
		CutOff:      units.Some(10.5 * units.Volt),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f at %.1f\n", s.Voltage, s.Current)
	fmt.Println(s.Findings()[0].Rule)
	// Output:
	// 10.48 V at 171.7 A
	// below-cut-off
}

func ExampleHoldUp() {
	e, err := battery.HoldUp(battery.Hold{
		Bank: pair(),
		Draw: battery.Draw{Power: units.Some(54.2 * units.Watt)},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f h, until the %v\n", units.In(e.Time, units.Hour), e.End)
	// Output: 59.5 h, until the depth
}

func ExampleCheckLimits() {
	l, err := battery.CheckLimits(battery.Demand{
		Bank:      pair(),
		Discharge: units.Some(156 * units.Ampere),
		Charge:    units.Some(45 * units.Ampere),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(l.Discharge, l.DischargeOneOut)
	for _, f := range l.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output:
	// 200 A 100 A
	// caution lithium-too-cold-to-charge
	// caution discharge-above-limit-one-out
	// note sharing-taken-as-equal
}

func ExampleFreezingPoint() {
	for _, state := range []units.Ratio{100 * units.Percent, 50 * units.Percent, 20 * units.Percent} {
		f, err := battery.FreezingPoint(state)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v charged: %.0f, or warmer: %v\n", state, f.Point, f.Warmer)
	}
	// Output:
	// 100 % charged: -71 °C, or warmer: false
	// 50 % charged: -35 °C, or warmer: false
	// 20 % charged: -17 °C, or warmer: true
}

func ExampleVentilate() {
	v, err := battery.Ventilate(battery.Bank{
		Battery: battery.Battery{
			Chemistry: battery.Flooded,
			Capacity:  225 * units.AmpereHour,
			Voltage:   6 * units.Volt,
		},
		Series: 2, Parallel: 2,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f of air, two openings of %.1f cm²\n", v.Flow, units.In(v.Opening, units.SquareCentimetre))
	// Output: 2.7 m³/h of air, two openings of 75.6 cm²
}

func ExampleChemistry_Figures() {
	f, err := battery.LithiumIronPhosphate.Figures()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f.ChargeLow.Value, f.ChargeLow.Source.Provenance)
	fmt.Println(f.PlanningDepth.Value, f.PlanningDepth.Source.Provenance)
	// Output:
	// 0 °C common practice
	// 80 % common practice
}

func ExampleChemistries() {
	for _, c := range battery.Chemistries() {
		fmt.Println(c, c.IsLead())
	}
	// Output:
	// flooded lead-acid true
	// AGM lead-acid true
	// gel lead-acid true
	// lithium iron phosphate false
}

func ExampleParseChemistry() {
	c, err := battery.ParseChemistry("LFP")
	fmt.Println(c, err)
	_, err = battery.ParseChemistry("lithium")
	fmt.Println(err)
	// Output:
	// lithium iron phosphate <nil>
	// parsing "lithium" as battery chemistry: want one of flooded lead-acid, AGM lead-acid, gel lead-acid or lithium iron phosphate
}
