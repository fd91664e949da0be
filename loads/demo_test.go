package loads_test

import (
	"testing"
	"time"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// demoBuses are those of the invented demo rig.
func demoBuses() []loads.Bus {
	return []loads.Bus{
		{Name: "dc", Kind: loads.Direct, Voltage: 12 * units.Volt},
		{Name: "backed", Kind: loads.Alternating, Voltage: 120 * units.Volt},
		{Name: "main", Kind: loads.Alternating, Voltage: 120 * units.Volt},
	}
}

// load returns one load given in watts and hours a day.
func load(name, bus string, kind loads.Kind, power units.Power, hours units.Elapsed) loads.Load {
	return loads.Load{
		Name: name, Bus: bus, Kind: kind, Count: 1,
		Rating: loads.Rating{Power: units.Some(power)}, Hours: units.Some(hours),
	}
}

// demoLoads are the loads of the invented demo rig on a count day in October,
// with the ratings in whatever way the page has them.
func demoLoads() []loads.Load {
	const h, w = units.Hour, units.Watt
	some := units.Some[units.Ratio]
	list := []loads.Load{
		load("lamps", "dc", loads.ConstantCurrent, 3.2*w, 4.5*h),
		load("water pump", "dc", loads.Motor, 0, 0.25*h),
		load("furnace blower", "dc", loads.Motor, 0, 3.5*h),
		load("gas and CO detector", "dc", loads.ConstantCurrent, 0, 24*h),
		load("compressor refrigerator", "dc", loads.ConstantPower, 48*w, 24*h),
		load("sample freezer", "dc", loads.ConstantPower, 60*w, 24*h),
		load("night-call recorder", "dc", loads.ConstantPower, 4.2*w, 0),
		load("vertical-looking radar", "dc", loads.ConstantPower, 38*w, 0),
		load("modem and antenna", "dc", loads.ConstantPower, 8*w, 24*h),
		load("roof vent fan", "dc", loads.Motor, 24*w, 2*h),
		load("USB and handheld-radio charging", "dc", loads.ConstantPower, 20*w, 3*h),
		load("laptops", "backed", loads.ConstantPower, 40*w, 4*h),
		load("data logger computer", "backed", loads.ConstantPower, 9*w, 24*h),
		load("coffee maker", "backed", loads.Resistive, 900*w, 0.15*h),
		load("microwave", "backed", loads.ConstantPower, 1450*w, 0.12*h),
		load("roof air conditioner", "main", loads.Motor, 1390*w, 0),
		load("water heater element", "main", loads.Resistive, 0, 0),
		load("portable heater", "main", loads.Resistive, 1500*w, 0),
	}
	list[0].Count, list[11].Count = 6, 2
	for i, amperes := range map[int]units.Current{1: 7, 2: 7.8, 3: 0.08, 16: 12} {
		list[i].Rating = loads.Rating{Current: units.Some(amperes)}
	}
	list[4].Duty, list[5].Duty = some(0.32), some(0.32)
	list[11].Rating.PowerFactor, list[12].Rating.PowerFactor = some(0.6), some(0.6)
	for i, window := range map[int]loads.Window{
		6: {From: loads.Clock{Hour: 18, Minute: 30}, To: loads.Clock{Hour: 5, Minute: 30}},
		7: {From: loads.Clock{Hour: 19, Minute: 30}, To: loads.Clock{Minute: 30}},
	} {
		list[i].Hours, list[i].Windows = units.None[units.Elapsed](), []loads.Window{window}
	}
	for _, i := range []int{3, 5, 6, 8, 12} {
		list[i].MustNotStop = true
	}
	return list
}

func demo(t testing.TB) loads.Ledger {
	t.Helper()
	ledger, err := loads.Audit(demoBuses(), demoLoads())
	if err != nil {
		t.Fatal(err)
	}
	return ledger
}

// rounds reports whether x is want to so many decimals.
func rounds(x float64, want string, decimals int) bool { return units.Fixed(x, decimals) == want }

// Expected values of the invented demo, worked by hand with published formulas.
func TestDemoLedger(t *testing.T) {
	ledger := demo(t)
	for i, want := range []string{
		"86", "21", "328", "23", "369", "461", "46", "190", "192", "48", "60", // dc
		"320", "216", "135", "174", "0", "0", "0",
	} {
		if got := units.In(ledger.Lines[i].Energy, units.WattHour); !rounds(got, want, 0) {
			t.Errorf("%s takes %v Wh a day, want %s", ledger.Lines[i].Name, got, want)
		}
	}
	total := func(bus string) loads.Total {
		v, ok := ledger.On(bus)
		if !ok {
			t.Fatalf("no bus %s", bus)
		}
		return v
	}
	dc, backed := total("dc"), total("backed")
	for what, c := range map[string]struct {
		got      float64
		want     string
		decimals int
	}{
		"Wh a day on dc":                     {units.In(dc.Energy, units.WattHour), "1824", 0},
		"A, all dc loads at once":            {units.In(dc.ConnectedCurrent, units.Ampere), "33.3", 1},
		"Wh a day on backed":                 {units.In(backed.Energy, units.WattHour), "845", 0},
		"Wh a day of the logger":             {units.In(backed.MustNotStop.Energy, units.WattHour), "216", 0},
		"VA of microwave, logger, 2 laptops": {units.In(backed.ConnectedApparent-900*units.VoltAmpere, units.VoltAmpere), "1598", 0},
		"W of the water heater":              {units.In(ledger.Lines[16].Power, units.Watt), "1440", 0},
		"A of the portable heater":           {units.In(ledger.Lines[17].Current, units.Ampere), "12.5", 1},
		"W of the pump":                      {units.In(ledger.Lines[1].Power, units.Watt), "84.0", 1},
		"W of the furnace blower":            {units.In(ledger.Lines[2].Power, units.Watt), "93.6", 1},
	} {
		if !rounds(c.got, c.want, c.decimals) {
			t.Errorf("%v %s, want %s", c.got, what, c.want)
		}
	}
	if dc.Lines != 11 || dc.MustNotStop.Lines != 4 || backed.Lines != 4 || backed.MustNotStop.Lines != 1 || total("main").Energy != 0 {
		t.Errorf("lines are on the wrong bus: %+v", ledger.Buses)
	}
}

// TestDemoDay adds the day up again from its series.
func TestDemoDay(t *testing.T) {
	ledger := demo(t)
	date := time.Date(2025, 10, 14, 9, 41, 7, 0, time.FixedZone("CDT", -5*3600))
	for _, step := range []time.Duration{time.Minute, 7*time.Minute + 12*time.Second, 15 * time.Minute, time.Hour, 5 * 24 * time.Minute, 24 * time.Hour} {
		for _, total := range ledger.Buses {
			day, err := ledger.Day(total.Bus.Name, date, step)
			if err != nil {
				t.Fatal(err)
			}
			if got := units.EnergyOf(day); units.Compare(got, total.Energy) != 0 {
				t.Errorf("%s in steps of %v: the day adds up to %v, want %v", total.Bus.Name, step, got, total.Energy)
			}
			if day.Start.Format(time.DateTime) != "2025-10-14 00:00:00" || day.End().Format(time.DateTime) != "2025-10-15 00:00:00" {
				t.Errorf("the day is %v", day.Span())
			}
		}
	}
	// At 20:00 the recorder (4.2 W) and the radar (38 W) run, at 06:00 neither.
	day, err := ledger.Day("dc", date, 30*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	night, morning := day.Values[40], day.Values[12]
	if units.Compare(night-morning, 42.2*units.Watt) != 0 {
		t.Errorf("the night takes %v more than the morning, want 42.2 W", night-morning)
	}
}
