package plan_test

import (
	"encoding/json"
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/battery"
	"example.com/drawbar/examples/plan"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// full is the demo with every field stated that it leaves out.
func full(t *testing.T) plan.Rig {
	t.Helper()
	r := demo(t)
	r.Buses[0].ThroughConverter = units.Some(95 * units.Percent)
	r.Loads[0].Count = 3
	r.Loads[12].Standby, r.Loads[12].Unattended = 2*units.Watt, true
	r.Loads[14] = plan.Load{Name: "grill", Bus: "backed", Kind: loads.Resistive, Apparent: units.Some(1200 * units.VoltAmpere),
		PowerFactor: units.Some(1 * units.One), Hours: units.Some(units.Scale(units.Hour, units.Ratio(1)/3))}
	r.Bank = plan.Bank{Chemistry: battery.AGM, Capacity: 100 * units.AmpereHour, Voltage: 6 * units.Volt, Series: 2, Parallel: 2,
		RatedOver: units.Some(20 * units.Hour), Usable: units.Some(units.Ratio(1) / 3), Aged: units.Some(80 * units.Percent),
		DischargeLimit: units.Some(100 * units.Ampere), ChargeLimit: units.Some(30 * units.Ampere), Resistance: units.Some(4 * units.Milliohm),
		OpenCircuit: units.Some(6.4 * units.Volt), Typical: units.Some(13 * units.Volt), ChargeLow: units.Celsius(-5), ChargeHigh: units.Fahrenheit(104),
		Cells: 3, ChargeVoltage: units.Some(7.35 * units.Volt), Absorption: units.Some(14.4 * units.Volt), Compensation: units.Some(-4 * units.Millivolt),
		Coldest: units.Celsius(-22), CellTemperature: units.Celsius(5), Vent: units.Some(50 * units.SquareCentimetre)}
	i, s := r.Inverter, r.Shore
	i.Apparent, i.Transfer, i.OffWhenIdle = units.Some(1500*units.VoltAmpere), inverter.TransferSwitch, true
	r.Converter.OpensInverting, s.Loaded, s.Receptacle = true, true, units.Some(50*units.Ampere)
	roof := r.Roof
	roof.Imp, roof.Hottest, roof.PowerCoefficient = units.Some(5.73*units.Ampere), units.Fahrenheit(150), units.Some(-0.36*units.PercentPerKelvin)
	roof.Cells, roof.StringFuse = units.Celsius(45), units.Some(15*units.Ampere)
	r.Generator.Transfer, r.Generator.Site = inverter.OneInlet, inverter.OpenAir
	r.Alarm, r.Places = &plan.Alarm{Bus: "dc", What: "a <text> & a call"}, []string{"closet"}
	r.Circuits[3].Loads, r.Circuits[3].Power = nil, units.Some(58*units.Watt)
	r.Circuits[9].Metal, r.Circuits[9].Terminals, r.Circuits[9].Ambient, r.Circuits[9].Bundled = wire.Aluminium, wire.Insulation75, units.Celsius(40), 5
	r.Circuits[8].Current = units.Some(27.1 * units.Ampere)
	r.Circuits[9].Continuous, r.Circuits[0].Device.Distance = true, units.Some(7*units.Inch)
	return r
}

// TestWrittenAndReadBack: a description that was made in Go is one in text. No
// field of any is lost, renamed or rounded.
func TestWrittenAndReadBack(t *testing.T) {
	all := rigs(t)
	all["full"] = full(t)
	state := map[string]bool{}
	for what, rig := range all {
		data, err := json.Marshal(rig)
		if err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		back, err := plan.Read(data)
		if err != nil {
			t.Errorf("%s: %v", what, err)
			continue
		}
		same := cmp.Exporter(func(reflect.Type) bool { return true })
		if diff := cmp.Diff(rig, back, same); diff != "" {
			t.Errorf("%s is another when it is read back (-was +is):\n%s", what, diff)
		}
		for _, path := range plan.Stated(rig) {
			state[path] = true
		}
	}
	for _, path := range plan.Fields() {
		if !state[path] {
			t.Errorf("no rig here states %s", path)
		}
	}
}

// TestNilIsWritten: what Make takes for an empty list is one in text.
func TestNilIsWritten(t *testing.T) {
	rig := demo(t)
	rig.Roof.Losses, rig.Bonds[1].With = nil, nil
	if _, err := plan.Make(rig); err != nil {
		t.Fatal(err)
	}
	data, err := json.Marshal(&rig)
	if err != nil {
		t.Fatal(err)
	}
	back, err := plan.Read(data)
	if err != nil || len(back.Roof.Losses) != 0 || len(back.Bonds[1].With) != 0 || rig.Roof.Losses != nil || rig.Bonds[1].With != nil {
		t.Errorf("%v, %+v, %+v", err, back.Roof, back.Bonds)
	}
	// Joined nowhere and not described are two things.
	for _, bonds := range [][]plan.Bond{nil, {}} {
		rig.Bonds = bonds
		data, _ := json.Marshal(rig)
		if back, err := plan.Read(data); err != nil || (back.Bonds == nil) != (bonds == nil) {
			t.Errorf("%#v is read back as %#v, %v", bonds, back.Bonds, err)
		}
	}
	// A rig that is nothing is refused for what it lacks, not for how.
	data, err = json.Marshal(plan.Rig{})
	if err == nil {
		_, err = plan.Read(data)
	}
	if err == nil {
		t.Error("nothing was written and read")
	}
}
