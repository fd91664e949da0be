package plan_test

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/examples/plan"
	"example.com/drawbar/inverter"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// leaves calls visit with every quantity and count of an input, which it may
// set, by its path in Go.
func leaves(v reflect.Value, path string, visit func(path string, v reflect.Value)) {
	if v.Kind() != reflect.Struct || isText(v) {
		visit(path, v)
		return
	}
	for i := range v.NumField() {
		if f := v.Type().Field(i); f.IsExported() {
			leaves(v.Field(i), path+"."+f.Name, visit)
		}
	}
}

// ask breaks every field of an input in turn, asks the calculator, and wants
// what it refuses told at a path that the description has: that of the part
// only for fields which no description states.
func ask[T any](t *testing.T, part string, input T, call func(T) error, of ...string) {
	t.Helper()
	if err := call(input); err != nil {
		t.Fatalf("%T: %v", input, err)
	}
	refused := 0
	count := 0
	leaves(reflect.ValueOf(&input).Elem(), "", func(string, reflect.Value) { count++ })
	for i := range count {
		for _, x := range []float64{math.NaN(), -1} {
			broken, at, name := input, 0, ""
			leaves(reflect.ValueOf(&broken).Elem(), "", func(path string, v reflect.Value) {
				if at == i && set(v, x) {
					name = path
				}
				at++
			})
			err := call(broken)
			if name == "" || err == nil {
				continue
			}
			refused++
			for _, p := range plan.Refused(part, err) {
				if !inSchema(p.Path) || p.Value == "" || p.Allowed == "" || p.Path == part && !slices.Contains(of, name[strings.LastIndexByte(name, '.')+1:]) {
					t.Errorf("%s, %T%s = %v: %v", part, input, name, x, p)
				}
			}
		}
	}
	if refused == 0 {
		t.Errorf("%T: nothing is refused", input)
	}
}

// TestWhatCalculatorsRefuse asks every calculator as a plan does.
func TestWhatCalculatorsRefuse(t *testing.T) {
	// What no description states, or only one that says how the bank is charged.
	notStated := []string{"Exponent", "Multiplier", "Reference", "ChargeVoltage", "Absorption", "Compensation", "Coldest"}
	bank := battery.Bank{Battery: battery.Battery{Chemistry: battery.LithiumIronPhosphate, Capacity: 140 * units.AmpereHour, Voltage: 12.8 * units.Volt}, Series: 1, Parallel: 2}
	ask(t, "bank", bank, func(b battery.Bank) error { _, err := battery.Assemble(b); return err }, notStated...)
	ask(t, "bank", battery.Hold{Bank: bank, Draw: battery.Draw{Power: units.Some(60 * units.Watt)}},
		func(h battery.Hold) error { _, err := battery.HoldUp(h); return err },
		append(notStated, "Current", "Resistance", "StateOfCharge", "Leads")...)
	ask(t, "bank", battery.Demand{Bank: bank}, func(d battery.Demand) error { _, err := battery.CheckLimits(d); return err },
		append(notStated, "Charge")...)

	machine := inverter.Machine{Continuous: 1500 * units.Watt, Efficiency: 89 * units.Percent, LowestVoltage: units.Some(10.8 * units.Volt)}
	ask(t, "inverter", inverter.DCSide{Machine: machine, Margin: inverter.NECMargin},
		func(s inverter.DCSide) error { _, err := inverter.BatterySide(s); return err }, "Margin")
	ask(t, "inverter", inverter.Day{Energy: units.KilowattHour, Efficiency: 89 * units.Percent},
		func(d inverter.Day) error { _, err := inverter.EnergyADay(d); return err }, "On", "Longest")
	ask(t, "inverter", inverter.Carry{AC: 100 * units.Watt, Efficiency: 89 * units.Percent},
		func(c inverter.Carry) error { _, err := inverter.CarryTime(c); return err }, "Usable")
	ask(t, "inverter", inverter.Demand{Name: "lamp", Power: 100 * units.Watt}, func(d inverter.Demand) error {
		_, err := inverter.Check(machine, []inverter.Demand{d})
		return err
	}, "StartFor")
	ask(t, "inverter", inverter.Passage{}, func(p inverter.Passage) error { _, err := inverter.PassThrough(p); return err })
	ask(t, "converter", inverter.Charger{Current: 45 * units.Ampere, Voltage: 14.4 * units.Volt, Efficiency: 87 * units.Percent, PowerFactor: units.One, Supply: 120 * units.Volt},
		func(c inverter.Charger) error { _, err := inverter.ChargerDraw(c); return err })
	ask(t, "loads[3]", inverter.Motor{LockedRotor: 63 * units.Ampere, Voltage: 120 * units.Volt},
		func(m inverter.Motor) error { _, err := inverter.Starting(m); return err }, "SoftStart")

	array := solar.Array{Series: 2, Parallel: 1, Panel: solar.Panel{Power: 220 * units.Watt, Voc: 46.2 * units.Volt, Vmp: 38.4 * units.Volt, Isc: 6.12 * units.Ampere}}
	ask(t, "roof", solar.Hookup{Rules: solar.NEC2017, Array: array, Coldest: units.Celsius(-22), Bank: 12.8 * units.Volt,
		Controller: solar.Controller{Kind: solar.MPPT, InputVoltage: 100 * units.Volt}},
		func(h solar.Hookup) error { _, err := solar.FitController(h); return err },
		"Imp", "Hottest", "InputCurrent", "Efficiency")
	ask(t, "roof", solar.DayAt{Latitude: 41.8 * units.Degree, OfYear: 288}, func(d solar.DayAt) error { _, err := solar.SunOn(d); return err })
	ask(t, "roof", solar.PanelDay{Peak: 440 * units.Watt, Irradiation: 3 * units.KilowattHourPerSquareMetre, PowerCoefficient: units.Some(-0.4 * units.PercentPerKelvin)},
		func(d solar.PanelDay) error { _, err := solar.DailyHarvest(d); return err })

	wired := wire.Conductor{Size: wire.AWG(12)}
	run := wire.Run{Current: 15 * units.Ampere, OneWay: 10 * units.Foot, Conductor: wired, Source: 12 * units.Volt}
	drop := func(r wire.Run) error { _, err := wire.VoltageDrop(r); return err }
	ask(t, "circuits[2]", run, drop, "Stated", "Resistivity", "Temperature", "Chassis", "Contacts")
	ask(t, "shore", run, drop, "Stated", "Resistivity", "Temperature", "Allowed", "Chassis", "Contacts", "Parallel")
	ask(t, "circuits[2]", wire.Circuit{Installation: wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(12), Insulation: wire.Insulation105}, Load: 10 * units.Ampere},
		func(c wire.Circuit) error { _, err := wire.Protect(c); return err }, "Conductors", "Ambient", "Terminals", "System", "Opens")
	ask(t, "circuits[2]", battery.Circuit{OpenCircuit: 12.8 * units.Volt, Draw: battery.Draw{Power: units.Some(60 * units.Watt)}},
		func(c battery.Circuit) error { _, err := battery.UnderLoad(c); return err }, "Current", "Resistance", "CutOff")
	ask(t, "circuits[6]", solar.Strings{Rules: solar.NEC2017, Array: array}, func(s solar.Strings) error { _, err := solar.Currents(s); return err }, "Imp")
}

// TestErrorsOfOtherKinds: several at once are told each, and one that is not
// about a range is told as it is.
func TestErrorsOfOtherKinds(t *testing.T) {
	bank := func(v units.Charge) error {
		_, err := battery.Assemble(battery.Bank{Battery: battery.Battery{Chemistry: battery.AGM, Capacity: v, Voltage: 12 * units.Volt}, Series: 1, Parallel: 1})
		return err
	}
	moon := errors.New("no moon tonight")
	list := plan.Refused("bank", errors.Join(bank(-1*units.AmpereHour), moon, bank(-1*units.AmpereHour)))
	want := []plan.Problem{{Path: "bank.capacity", Value: `"-1 Ah"`, Allowed: "> 0 Ah"}, {Path: "bank", Value: "refused", Allowed: "another: no moon tonight"}}
	if !slices.Equal(list, want) {
		t.Errorf("got %v, want %v", list, want)
	}
	if list := plan.Refused("bank", nil); list != nil {
		t.Errorf("nothing is wrong, and told: %v", list)
	}
}
