package plan_test

import (
	"errors"
	"fmt"

	"example.com/drawbar/battery"
	"example.com/drawbar/examples/plan"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// van is a small invented rig, described in Go instead of JSON.
func van() plan.Rig {
	return plan.Rig{
		Name: "van", Day: "a summer day",
		Rules: plan.Rules{Direct: wire.RVLowVoltage, Alternating: wire.NEC2017, BranchDrop: units.Some(3 * units.Percent)},
		Buses: []plan.Bus{
			{Name: "dc", Kind: loads.Direct, Voltage: 12 * units.Volt},
			{Name: "outlets", Kind: loads.Alternating, Voltage: 120 * units.Volt, Behind: "inverter"},
		},
		Loads: []plan.Load{
			{Name: "refrigerator", Bus: "dc", Kind: loads.ConstantPower, Power: units.Some(45 * units.Watt),
				Duty: units.Some(40 * units.Percent), Hours: units.Some(24 * units.Hour), MustNotStop: true},
			{Name: "kettle", Bus: "outlets", Kind: loads.Resistive, Power: units.Some(950 * units.Watt), Hours: units.Some(0.25 * units.Hour)},
		},
		Bank: plan.Bank{Chemistry: battery.LithiumIronPhosphate, Capacity: 100 * units.AmpereHour, Voltage: 12.8 * units.Volt,
			Usable: units.Some(90 * units.Percent)},
		Inverter: &plan.Inverter{Continuous: 1000 * units.Watt, Efficiency: 90 * units.Percent, Idle: units.Some(8 * units.Watt),
			CutOff: 10.8 * units.Volt, PassRelay: units.Some(20 * units.Ampere), PassDevice: units.Some(15 * units.Ampere)},
		Converter: &plan.Converter{Bus: "outlets", Current: 50 * units.Ampere, Voltage: 14.2 * units.Volt, Efficiency: 85 * units.Percent,
			PowerFactor: 95 * units.Percent, OpensInverting: true},
		Shore: &plan.Shore{Service: 15 * units.Ampere, Voltage: 120 * units.Volt},
		Roof: &plan.Roof{Panels: 1, Series: 1, Power: 200 * units.Watt, Voc: 24 * units.Volt, Vmp: 20 * units.Volt, Isc: 10.5 * units.Ampere,
			Coefficient: units.Some(-0.28 * units.PercentPerKelvin), Coldest: units.Celsius(-10),
			Controller: plan.Controller{InputLimit: 50 * units.Volt, OutputLimit: 20 * units.Ampere},
			Sun:        plan.Sun{Irradiation: 5 * units.KilowattHourPerSquareMetre},
			Losses:     []plan.Loss{{Name: "all together", Lost: 20 * units.Percent}}},
		Tow: &plan.Tow{Current: 15 * units.Ampere, Voltage: 14.2 * units.Volt, Efficiency: 90 * units.Percent, Input: 12 * units.Volt,
			Hours: 2 * units.Hour},
		Generator: &plan.Generator{Continuous: 900 * units.Watt},
		Bonds:     []plan.Bond{{At: "pedestal", With: []string{"shore"}}, {At: "inverter relay", With: []string{"inverter"}}},
		Circuits: []plan.Circuit{{Name: "F1", From: "bank", To: "refrigerator", Bus: "dc", Length: 8 * units.Foot, Size: wire.AWG(14),
			Insulation: wire.Insulation105, Loads: []string{"refrigerator"}, Device: &plan.Device{Rating: 20 * units.Ampere, At: "bank"}}},
		Alarm: &plan.Alarm{Bus: "dc", What: "message"},
	}
}

func ExampleMake() {
	var p plan.Plan
	p, err := plan.Make(van())
	if err != nil {
		fmt.Println(err)
		return
	}
	var use plan.Use = p.Use
	var bank plan.BankLine = p.Bank
	var sun *plan.SunLine = p.Sun
	fmt.Printf("%.0f a day, %.0f of sun, %.0f usable\n", use.Energy, sun.Harvest, bank.Usable)
	for _, f := range p.Findings {
		var finding plan.Finding = f
		if finding.Severity == working.Danger {
			fmt.Println(finding.Part, finding.Rule, finding.Numbers[:2])
		}
	}
	// Output:
	// 888 Wh a day, 800 Wh of sun, 1152 Wh usable
	// F1 device-above-limit [device 20 A limit by RV low voltage 15 A]
}

// The parts of a plan are plain values.
func ExamplePlan() {
	p, err := plan.Make(van())
	if err != nil {
		fmt.Println(err)
		return
	}
	var load plan.LoadLine = p.Loads[0]
	var bus plan.BusLine = p.Buses[1]
	var source plan.SourceLine = p.Sources[0]
	var inverter *plan.InverterLine = p.Inverter
	var circuit plan.CircuitLine = p.Circuits[0]
	var set plan.SetLine = p.Sets[0]
	var alike []plan.Choice = set.Any
	var device plan.DeviceLine = circuit.Device
	var check plan.Check = circuit.Checks[1]
	var table plan.Source = circuit.Table
	var controller plan.ControllerLine = p.Sun.Controller
	var sheet plan.PartSheet = p.Working()[0]
	fmt.Println(load.Name, load.Energy, "-", bus.Name, bus.Energy, "-", source.Name, source.Continuous)
	fmt.Printf("%.3v, %v %.2v, %v %v\n", inverter.Current, circuit.Name, circuit.Fraction, set.Loads, alike)
	fmt.Println(device, "-", check.Name, check.Found, "against", check.Limit, "-", check.Verdict, "-", table.Place)
	fmt.Println(controller.Kind, controller.InputLimit, "-", sheet.Part, "-", sheet.Sheet.Title())
	// Output:
	// refrigerator 432 Wh - outlets 237.5 Wh - shore 1.44 kW
	// 103 A, F1 1.6 %, [kettle converter] []
	// 20 A at bank - device 20 A against 15 A - unsafe - Table 552.10(E)(1), park trailers, low voltage
	// MPPT 50 V - refrigerator - refrigerator: A day of refrigerator on dc
}

// Every mistake is reported, with its path, its value and what is allowed.
func ExampleRead() {
	_, err := plan.Read([]byte(`{
		"name": "van", "day": "any",
		"rules": {"direct": "RV low voltage", "alternating": "NEC 2017"},
		"buses": [{"name": "dc", "kind": "direct", "voltage": "12 W"}],
		"loads": [{"name": "lamp", "bus": "dc", "kind": "lamp", "power": "10 W", "hours": "5 h"}],
		"bank": {"chemistry": "AGM", "capacity": "100 Ah"}
	}`))
	var mistakes *plan.DescriptionError
	if errors.As(err, &mistakes) {
		for _, m := range mistakes.Problems {
			var problem plan.Problem = m
			fmt.Println(problem.Path)
		}
	}
	// Output:
	// buses[0].voltage
	// loads[0].kind
	// bank.voltage
}
