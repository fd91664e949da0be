package loads_test

import (
	"testing"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

// rated are loads of each way to rate one, on each kind of bus.
func rated() map[string]loads.Line {
	lines := map[string]loads.Line{}
	for _, b := range []loads.Bus{battery, mains} {
		for _, k := range []loads.Kind{loads.Resistive, loads.ConstantPower, loads.Motor, loads.ConstantCurrent} {
			for what, r := range map[string]loads.Rating{
				"W":   {Power: units.Some(93.6 * units.Watt)},
				"A":   {Current: units.Some(7.8 * units.Ampere)},
				"out": {Output: units.Some(950 * units.Watt), Efficiency: units.Some(65 * units.Percent)},
				"VA":  {Apparent: units.Some(66.6667 * units.VoltAmpere)},
				"0 W": {Power: units.Some(0 * units.Watt)},
			} {
				if b.Kind == loads.Direct && what == "VA" {
					continue
				}
				for _, standby := range []units.Power{0, 1.3 * units.Watt} {
					l := load("load", b.Name, k, 0, 3.3333*units.Hour)
					l.Rating, l.Standby, l.Count = r, standby, 3
					l.Duty = units.Some(0.32 * units.One)
					l.Rating.Voltage = units.Some(b.Voltage)
					name := b.Name + " " + k.String() + " " + what + " standby " + standby.String()
					lines[name] = must(loads.Take(b, l))
					l.Rating.Voltage = units.Some(units.Scale(b.Voltage, 1.0667))
					lines[name+" another voltage"] = must(loads.Take(b, l))
					if b.Kind == loads.Alternating && k != loads.Resistive {
						l.Rating.PowerFactor = units.Some(62 * units.Percent)
						lines[name+" power factor"] = must(loads.Take(b, l))
					}
				}
			}
		}
	}
	return lines
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func TestSheetLine(t *testing.T) {
	for name, v := range rated() {
		t.Run(name, func(t *testing.T) { unitstest.CheckSheet(t, v.Working()) })
	}
	for _, v := range demo(t).Lines {
		t.Run(v.Name, func(t *testing.T) { unitstest.CheckSheet(t, v.Working()) })
	}
}

func TestSheetDraw(t *testing.T) {
	for name, v := range rated() {
		t.Run(name, func(t *testing.T) {
			d, err := v.At(units.Scale(v.Bus.Voltage, 0.8667))
			if err != nil {
				t.Fatal(err)
			}
			unitstest.CheckSheet(t, d.Working())
		})
	}
}

func TestSheetLedger(t *testing.T) {
	list := demoLoads()
	list[9].Standby, list[14].Standby = 0.4*units.Watt, 2.5*units.Watt
	for name, loadList := range map[string][]loads.Load{"demo": demoLoads(), "standby": list} {
		ledger, err := loads.Audit(demoBuses(), loadList)
		if err != nil {
			t.Fatal(err)
		}
		for _, bus := range demoBuses() {
			t.Run(name+" "+bus.Name, func(t *testing.T) { unitstest.CheckSheet(t, ledger.Working(bus.Name)) })
		}
	}
	empty, err := loads.Audit([]loads.Bus{battery}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if s := empty.Working("dc"); s.Err() != nil || len(s.Steps()) != 2 {
		t.Errorf("a bus without loads has the working\n%s", s.Text())
	}
}

func TestSheetCycling(t *testing.T) {
	for _, celsius := range []float64{-70, -60, -7, 0, 20, 31} {
		h := cabin()
		h.Outside = units.Celsius(celsius)
		t.Run(h.Outside.String(), func(t *testing.T) {
			c, err := loads.HeatingDuty(h)
			if err != nil {
				t.Fatal(err)
			}
			unitstest.CheckSheet(t, c.Working())
		})
	}
}
