package loads_test

import (
	"errors"
	"fmt"
	"time"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// cabinBuses and cabinLoads are an invented camper: a refrigerator and a lamp
// at 12 V, a laptop behind the inverter.
func cabinBuses() []loads.Bus {
	return []loads.Bus{
		{Name: "dc", Kind: loads.Direct, Voltage: 12 * units.Volt},
		{Name: "ac", Kind: loads.Alternating, Voltage: 120 * units.Volt},
	}
}

func cabinLoads() []loads.Load {
	return []loads.Load{
		{
			Name: "refrigerator", Bus: "dc", Kind: loads.ConstantPower, Count: 1,
			Rating:      loads.Rating{Current: units.Some(4 * units.Ampere)},
			Duty:        units.Some(32 * units.Percent),
			Hours:       units.Some(24 * units.Hour),
			MustNotStop: true,
		},
		{
			Name: "lamp", Bus: "dc", Kind: loads.ConstantCurrent, Count: 2,
			Rating:  loads.Rating{Power: units.Some(3.2 * units.Watt)},
			Windows: []loads.Window{{From: loads.Clock{Hour: 18, Minute: 30}, To: loads.Clock{Hour: 23}}},
		},
		{
			Name: "laptop", Bus: "ac", Kind: loads.ConstantPower, Count: 1,
			Rating: loads.Rating{Power: units.Some(40 * units.Watt), PowerFactor: units.Some(60 * units.Percent)},
			Hours:  units.Some(4 * units.Hour),
		},
	}
}

func ExampleAudit() {
	ledger, err := loads.Audit(cabinBuses(), cabinLoads())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, line := range ledger.Lines {
		fmt.Printf("%-12s %6.1f %9.1f a day\n", line.Name, line.Power, line.Energy)
	}
	for _, total := range ledger.Buses {
		fmt.Printf("%s: %.0f a day, mean %.1f, at once %.1f; must not stop %.0f\n",
			total.Bus.Name, total.Energy, total.Average, total.ConnectedCurrent, total.MustNotStop.Energy)
	}
	// Output:
	// refrigerator 48.0 W  368.6 Wh a day
	// lamp          6.4 W   28.8 Wh a day
	// laptop       40.0 W  160.0 Wh a day
	// dc: 397 Wh a day, mean 16.6 W, at once 4.5 A; must not stop 369 Wh
	// ac: 160 Wh a day, mean 6.7 W, at once 0.6 A; must not stop 0 Wh
}

// Every mistake is reported, each with the load it is in.
func ExampleAudit_errors() {
	list := cabinLoads()
	list[0].Duty = units.Some(3200 * units.Percent)
	list[2].Bus = "roof"
	_, err := loads.Audit(cabinBuses(), list)
	fmt.Println(err)
	fmt.Println(errors.Is(err, units.ErrRange))
	// Output:
	// load 0 "refrigerator": loads.Audit: Duty = 3200 %, want 0 % to 100 %
	// load 2 "laptop": loads.Audit: Bus = roof, want one of dc, ac
	// true
}

func ExampleEntryError() {
	_, err := loads.Audit(cabinBuses(), []loads.Load{{Name: "lamp", Bus: "dc"}})
	var entry *loads.EntryError
	if errors.As(err, &entry) {
		fmt.Println(entry.Entry, entry.Index, entry.Name)
	}
	// Output: load 0 lamp
}

func ExampleLedger_Day() {
	ledger, err := loads.Audit(cabinBuses(), cabinLoads())
	if err != nil {
		fmt.Println(err)
		return
	}
	day, err := ledger.Day("dc", time.Date(2025, 10, 14, 0, 0, 0, 0, time.UTC), time.Hour)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, hour := range []int{12, 18, 19} {
		fmt.Printf("%02d:00 %.2f\n", hour, day.Values[hour])
	}
	fmt.Printf("%.1f\n", units.EnergyOf(day))
	// Output:
	// 12:00 15.36 W
	// 18:00 18.56 W
	// 19:00 21.76 W
	// 397.4 Wh
}

func ExampleLedger_On() {
	ledger, err := loads.Audit(cabinBuses(), cabinLoads())
	if err != nil {
		fmt.Println(err)
		return
	}
	total, ok := ledger.On("ac")
	fmt.Println(total.Energy, total.ConnectedApparent, ok)
	// Output: 160 Wh 66.6667 VA true
}

func ExampleLedger_Working() {
	ledger, err := loads.Audit(cabinBuses(), cabinLoads())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(ledger.Working("dc").Text())
	// Output:
	// A day of all loads on dc
	// ========================
	//
	// Given
	//   V_bus = 12 V     voltage of the bus
	//   P_1   = 48 W     refrigerator, running
	//   t_1   = 7.68 h   refrigerator, running a day
	//   P_2   = 6.4 W    lamp, running
	//   t_2   = 4.5 h    lamp, running a day
	//
	// refrigerator, a day
	//   E_1 = P_1 · t_1
	//       = 48 · 7.68
	//       = 368.6 Wh
	//   with P_1 in W; t_1 in h
	//
	// lamp, a day
	//   E_2 = P_2 · t_2
	//       = 6.4 · 4.5
	//       = 28.8 Wh
	//   with P_2 in W; t_2 in h
	//
	// all loads, a day
	//   E = E_1 + E_2
	//     = 368.64 + 28.8
	//     = 397.4 Wh
	//   with E_1, E_2 in Wh
	//
	// mean over 24 hours
	//   P_mean = E / 24
	//          = 397.44 / 24
	//          = 16.56 W
	//   with E in Wh
	//
	// charge a day at the voltage of the bus
	//   Q = E / V_bus
	//     = 397.44 / 12
	//     = 33.12 Ah
	//   with E in Wh; V_bus in V
	//
	// everything connected at once
	//   P = P_1 + P_2
	//     = 48 + 6.4
	//     = 54.4 W
	//   with P_1, P_2 in W
	//
	// everything connected at once
	//   I = P / V_bus
	//     = 54.4 / 12
	//     = 4.533 A
	//   with P in W; V_bus in V
	//
	// must not stop, a day
	//   E_must = E_1
	//          = 368.64
	//          = 368.6 Wh
	//   with E_1 in Wh
	//
	// must not stop, mean over 24 hours
	//   P_must = E_must / 24
	//          = 368.64 / 24
	//          = 15.36 W
	//   with E_must in Wh
	//
	// must not stop, all running
	//   P_must_on = P_1
	//             = 48
	//             = 48 W
	//   with P_1 in W
}

func ExampleLedger_Findings() {
	ledger, err := loads.Audit(cabinBuses(), cabinLoads())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range ledger.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output: note hours-are-estimates
}

func ExampleTake() {
	line, err := loads.Take(cabinBuses()[0], cabinLoads()[0])
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v for %v a day: %.0f\n", line.Power, line.Running, line.Energy)
	// Ampere-hours are those of a direct-current bus.
	charge, ok := line.Charge.Get()
	fmt.Printf("%.1f %v\n", charge, ok)
	// Output:
	// 48 W for 7.68 h a day: 369 Wh
	// 30.7 Ah true
}

func ExampleLine_At() {
	pump, err := loads.Take(cabinBuses()[0], loads.Load{
		Name: "pump", Bus: "dc", Kind: loads.Motor, Count: 1,
		Rating: loads.Rating{Current: units.Some(7 * units.Ampere)},
		Hours:  units.Some(15 * units.Minute),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	draw, err := pump.At(10.8 * units.Volt)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f at %v, %.2f at %v\n", pump.Current, pump.Bus.Voltage, draw.Current, draw.Voltage)
	// Output: 7.00 A at 12 V, 7.78 A at 10.8 V
}

func ExampleLine_Working() {
	line, err := loads.Take(cabinBuses()[1], cabinLoads()[2])
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(line.Working().Text())
	// Output:
	// A day of laptop on ac
	// =====================
	//
	// Given
	//   PF      = 0.6     power factor
	//   P_rated = 40 W    power of one, running, by its rating
	//   V_bus   = 120 V   voltage of the bus
	//   n       = 1       how many
	//
	// all of them, running
	//   P = n · P_rated
	//     = 1 · 40
	//     = 40 W
	//   with P_rated in W
	//
	// apparent power
	//   S = P / PF
	//     = 40 / 0.6
	//     = 66.67 VA
	//   with P in W
	//
	// current while running
	//   I = S / V_bus
	//     = 66.6667 / 120
	//     = 0.5556 A
	//   with S in VA; V_bus in V
	//
	// Given
	//   t = 4 h   in use a day
	//   d = 1     duty: part of that time in which it runs
	//
	// running a day
	//   t_run = t · d
	//         = 4 · 1
	//         = 4 h
	//   with t in h
	//
	// energy a day
	//   E = P · t_run
	//     = 40 · 4
	//     = 160 Wh
	//   with P in W; t_run in h
	//
	// mean over 24 hours
	//   P_mean = E / 24
	//          = 160 / 24
	//          = 6.667 W
	//   with E in Wh
}

func ExampleHeatingDuty() {
	c, err := loads.HeatingDuty(loads.Heating{
		LossPerKelvin: 130 * units.Watt,
		Inside:        units.Celsius(18),
		Outside:       units.Celsius(-7),
		Input:         30 * units.KiloBtuITPerHour,
		Efficiency:    78 * units.Percent,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("duty %.1f, %v a day\n", c.Duty, c.Running)
	// Output: duty 47.4 %, 11.3738 h a day
}

func ExampleParseClock() {
	from, err := loads.ParseClock("18:30")
	if err != nil {
		fmt.Println(err)
		return
	}
	w := loads.Window{From: from, To: loads.Clock{Hour: 5, Minute: 30}}
	fmt.Println(w, w.Length())
	_, err = loads.ParseClock("6 pm")
	fmt.Println(err)
	// Output:
	// 18:30 to 05:30 11 h
	// parsing "6 pm" as a time of day: want 00:00 to 24:00
}
