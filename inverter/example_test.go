package inverter_test

import (
	"errors"
	"fmt"
	"strings"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

func ExampleCheck() {
	headroom, err := inverter.Check(inverter.Machine{
		Continuous:   1500 * units.Watt,
		ContinuousVA: units.Some(1500 * units.VoltAmpere),
		Efficiency:   89 * units.Percent,
	}, []inverter.Demand{
		{Name: "microwave", Power: 1400 * units.Watt, Kind: inverter.SteadyLoad, PowerFactor: units.Some(100 * units.Percent)},
		{Name: "laptops", Power: 80 * units.Watt, Kind: inverter.SteadyLoad, PowerFactor: units.Some(60 * units.Percent)},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("left:", headroom.PowerLeft, "and", headroom.ApparentLeft)
	for _, f := range headroom.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output:
	// left: 20 W and -33.3333 VA
	// caution inverter-overload-va
}

// An efficiency that lost its percent sign is refused by name.
func ExampleCheck_error() {
	_, err := inverter.Check(inverter.Machine{
		Continuous: 1500 * units.Watt,
		Efficiency: 89 * 100 * units.Percent,
	}, nil)
	fmt.Println(err)
	fmt.Println(errors.Is(err, units.ErrRange))
	// Output:
	// inverter.Check: Efficiency = 8900 %, want > 0 % and <= 100 %
	// true
}

func ExampleBatterySide() {
	side, err := inverter.BatterySide(inverter.DCSide{
		Machine: inverter.Machine{
			Continuous:    1500 * units.Watt,
			Efficiency:    89 * units.Percent,
			LowestVoltage: units.Some(10.8 * units.Volt),
		},
		Margin: inverter.NECMargin,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3v drawn, %.3v required\n", side.Current, side.Required)
	// Output: 156 A drawn, 195 A required
}

func ExampleDCCurrent_Working() {
	side, err := inverter.BatterySide(inverter.DCSide{
		Machine: inverter.Machine{
			Continuous:    1500 * units.Watt,
			Efficiency:    89 * units.Percent,
			LowestVoltage: units.Some(10.8 * units.Volt),
		},
		Margin: inverter.NECMargin,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(side.Working().Text())
	// Output:
	// Inverter: battery side
	// ======================
	//
	// Given
	//   P_rated  = 1500 W   that the machine gives for hours
	//   η        = 0.89     efficiency at that output
	//   V_lowest = 10.8 V   where it cuts off
	//
	// Choice: voltage
	//   the lowest
	//       the current is greatest there
	//       NFPA, 70, National Electrical Code, 2017, 690.8(A)(4), 706.20(A)(3)
	//
	// drawn from the bank
	//   P_dc = P_rated / η
	//        = 1500 / 0.89
	//        = 1685 W
	//   with P_rated in W
	//
	// drawn from the bank
	//   I_dc = P_dc / V_lowest
	//        = 1685.39 / 10.8
	//        = 156.1 A
	//   with P_dc in W; V_lowest in V
	//
	// Constant
	//   k = 1.25   margin of conductor and device
	//       NFPA, 70, National Electrical Code, 2017, 690.8(B)(1), 706.21(B)
	//
	// that conductor and device must be rated for
	//   I_req = k · I_dc
	//         = 1.25 · 156.055
	//         = 195.1 A
	//   with I_dc in A
}

func ExampleEnergyADay() {
	use, err := inverter.EnergyADay(inverter.Day{
		Energy:     240 * units.WattHour,
		Efficiency: 90 * units.Percent,
		Idle:       units.Some(22 * units.Watt),
		On:         units.Some(24 * units.Hour),
		Voltage:    units.Some(12.8 * units.Volt),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	charge, _ := use.Charge.Get()
	fmt.Printf("%.3v for the loads, %.3v for the inverter itself, %.3v in all\n", use.Loads, use.Idle, charge)
	// Output: 267 Wh for the loads, 528 Wh for the inverter itself, 62.1 Ah in all
}

func ExampleCarryTime() {
	hold, err := inverter.CarryTime(inverter.Carry{
		AC:         110 * units.Watt,
		Efficiency: 90 * units.Percent,
		Idle:       units.Some(20 * units.Watt),
		DC:         35 * units.Watt,
		Usable:     units.Some(2048 * units.WattHour),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	hours, _ := hold.Time.Get()
	fmt.Printf("%.4v, %.1f hours\n", hold.Power, units.In(hours, units.Hour))
	// Output: 177.2 W, 11.6 hours
}

func ExampleChargerDraw() {
	use, err := inverter.ChargerDraw(inverter.Charger{
		Current:     60 * units.Ampere,
		Voltage:     14.4 * units.Volt,
		Efficiency:  88 * units.Percent,
		PowerFactor: 98 * units.Percent,
		Supply:      120 * units.Volt,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4v from the supply\n", use.Current)
	// Output: 8.349 A from the supply
}

func ExampleStarting() {
	start, err := inverter.Starting(inverter.Motor{
		LockedRotor: 63 * units.Ampere,
		Voltage:     120 * units.Volt,
		SoftStart:   units.Some(40 * units.Percent),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f\n", start.Apparent)
	// Output: 3024 VA
}

func ExampleSets() {
	resistive := units.Some(100 * units.Percent)
	overload, err := inverter.Sets(inverter.Limit{
		Name:    "the 30 A service",
		Current: units.Some(30 * units.Ampere),
		Voltage: 120 * units.Volt,
		Share:   units.Some(inverter.ContinuousShare),
	}, []inverter.Demand{
		{Name: "air conditioner", Power: 1390 * units.Watt, PowerFactor: units.Some(95 * units.Percent)},
		{Name: "water heater", Power: 1440 * units.Watt, PowerFactor: resistive},
		{Name: "portable heater", Power: 1500 * units.Watt, PowerFactor: resistive},
		{Name: "coffee maker", Power: 900 * units.Watt, PowerFactor: resistive},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, set := range overload.Sets {
		fmt.Printf("%.1f: %s\n", set.Current, strings.Join(overload.Names(set.Members), ", "))
	}
	// Output:
	// 24.2 A: air conditioner, water heater
	// 24.7 A: air conditioner, portable heater
	// 24.5 A: water heater, portable heater
}

func ExampleMachine_Limit() {
	m := inverter.Machine{Continuous: 1500 * units.Watt, Efficiency: 89 * units.Percent}
	overload, err := inverter.Sets(m.Limit(), []inverter.Demand{
		{Name: "microwave", Power: 1450 * units.Watt},
		{Name: "kettle", Power: 1200 * units.Watt},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(overload.Findings()[0].Message)
	// Output: microwave and kettle together are more than the inverter carries.
}

func ExampleCanRun() {
	r, err := inverter.CanRun(inverter.Limit{Name: "the inverter", Power: units.Some(2000 * units.Watt)}, []inverter.Demand{
		{Name: "microwave", Power: 1250 * units.Watt},
		{Name: "kettle", Power: 1000 * units.Watt},
		{Name: "left heating pad", Power: 60 * units.Watt},
		{Name: "right heating pad", Power: 60 * units.Watt},
		{Name: "toaster", Power: 650 * units.Watt},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range r.Sets {
		fmt.Println(s.Power, r.Names(s.Members))
	}
	// Output:
	// 1.77 kW [kettle left heating pad right heating pad toaster]
	// 1.37 kW [microwave left heating pad right heating pad]
	// 1.96 kW [microwave any 1 of left heating pad, right heating pad toaster]
}

func ExampleMembers_All() {
	members := inverter.Members(0b101)
	for i := range members.All() {
		fmt.Println(i)
	}
	fmt.Println(members.Len(), members.Has(1))
	// Output:
	// 0
	// 2
	// 2 false
}

func ExampleBonding() {
	counts, err := inverter.Bonding([]inverter.Source{{Name: "shore", Earthed: true}, {Name: "inverter"}, {Name: "generator"}}, []inverter.Bond{
		{Name: "campground service", With: []string{"shore"}},
		{Name: "inverter relay", With: []string{"inverter"}},
		{Name: "screw left in the main panel"}, // with every source
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range counts {
		f := c.Findings()[0]
		fmt.Println(c.Source.Name, c.Bonds, f.Severity, f.Rule)
	}
	// Output:
	// shore 2 danger several-neutral-bonds
	// inverter 2 danger several-neutral-bonds
	// generator 1 note one-neutral-bond
}

func ExampleBondPlace() {
	counts, err := inverter.Bonding([]inverter.Source{{Name: "shore", Earthed: true}, {Name: "inverter"}}, []inverter.Bond{
		{Name: "campground service", With: []string{"shore"}},
		{Name: "inverter relay", With: []string{"inverter"}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, place := range counts[0].Places {
		fmt.Println(place.Name, place.Closed)
	}
	// Output:
	// campground service true
	// inverter relay false
}

func ExampleHop() {
	loops, err := inverter.FeedLoops([]string{"bank"}, []inverter.Feed{
		{Name: "inverter", From: "bank", To: "panel", Efficiency: 90 * units.Percent},
		{Name: "converter", From: "panel", To: "bank", Efficiency: 80 * units.Percent, Most: units.Some(360 * units.Watt)},
	}, "bank")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, hop := range loops[0].Hops {
		fmt.Printf("%s: %.0f in, %.0f out\n", hop.Name, hop.In, hop.Out)
	}
	// Output:
	// inverter: 500 W in, 450 W out
	// converter: 450 W in, 360 W out
}

func ExampleFeedLoops() {
	loops, err := inverter.FeedLoops([]string{"shore", "bank"}, []inverter.Feed{
		{Name: "pass-through", From: "shore", To: "backed panel", With: []string{"shore"}, Efficiency: 100 * units.Percent},
		{Name: "inverter", From: "bank", To: "backed panel", With: []string{"bank"}, Efficiency: 89 * units.Percent},
		{Name: "converter", From: "backed panel", To: "bank", Efficiency: 87 * units.Percent, Most: units.Some(594 * units.Watt)},
	}, "bank")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range loops {
		fmt.Println("with", l.Source, "active:", l.Path())
		fmt.Printf("%.0f drawn, %.0f back, %.0f lost\n", l.Drawn, l.Back, l.Lost)
	}
	// Output:
	// with bank active: bank - inverter - backed panel - converter - bank
	// 767 W drawn, 594 W back, 173 W lost
}

func ExampleParallelNeutral() {
	share, err := inverter.ParallelNeutral(inverter.NeutralReturn{
		Current: 20 * units.Ampere,
		Neutral: 40 * units.Milliohm,
		Ground:  60 * units.Milliohm,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(share.Ground, "in the ground wire")
	// Output: 8 A in the ground wire
}

func ExampleFaultToFrame() {
	path, err := inverter.FaultToFrame(inverter.FrameFault{
		Voltage: 120 * units.Volt,
		Earth:   units.Some(25 * units.Ohm),
		Device:  units.Some(20 * units.Ampere),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(path.Current, path.CanOpen)
	fmt.Println(path.Findings()[0].Message)
	// Output:
	// 4.8 A false
	// The only path from the frame to neutral is soil: the device does not open in time if at all, and the frame stays live.
}

func ExamplePassThrough() {
	check, err := inverter.PassThrough(inverter.Passage{
		Relay:  units.Some(15 * units.Ampere),
		Feeder: units.Some(20 * units.Ampere),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	f := check.Findings()[0]
	fmt.Println("greatest device", check.MaxDevice)
	fmt.Println(f.Severity, f.Rule)
	// Output:
	// greatest device 15 A
	// danger relay-below-device
}
