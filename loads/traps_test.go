package loads_test

import (
	"testing"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// A mistake that people make, as numbers: the right answer, which the package
// must give, and the wrong one, which it must not. Digits are those that the
// answers are known to.
type mistake struct {
	what         string
	got          float64
	right, wrong string
	decimals     int
}

func (m mistake) check(t *testing.T) {
	t.Helper()
	switch got := units.Fixed(m.got, m.decimals); {
	case got == m.wrong:
		t.Errorf("%s: %s, which is the wrong answer", m.what, got)
	case got != m.right:
		t.Errorf("%s: %s, want %s", m.what, got, m.right)
	}
}

// one returns the ledger of a single load.
func one(t *testing.T, b loads.Bus, l loads.Load) loads.Ledger {
	t.Helper()
	l.Bus = b.Name
	ledger, err := loads.Audit([]loads.Bus{b}, []loads.Load{l})
	if err != nil {
		t.Fatal(err)
	}
	return ledger
}

var mains = loads.Bus{Name: "mains", Kind: loads.Alternating, Voltage: 120 * units.Volt}

// Ampere-hours at 120 V are not those of a bank, so there are none.
func TestEnergyCrossesAndChargeDoesNot(t *testing.T) {
	ledger := one(t, mains, load("kettle", "", loads.Resistive, 1200*units.Watt, 0.5*units.Hour))
	if q, ok := ledger.Buses[0].Charge.Get(); ok {
		t.Errorf("a bus of 120 V has a charge of %v", q)
	}
	if q, ok := ledger.Lines[0].Charge.Get(); ok {
		t.Errorf("a line at 120 V has a charge of %v", q)
	}
}

// A furnace of 30 kBtu/h and 78 % in a trailer that loses 130 W/K, 25 K warmer
// than outside, runs its 8 A blower 11.37 h a day: 91 Ah. A worksheet has 4 h.
func TestFurnaceFollowsTheWeather(t *testing.T) {
	c, err := loads.HeatingDuty(loads.Heating{
		LossPerKelvin: 130 * units.Watt,
		Inside:        units.Celsius(18),
		Outside:       units.Celsius(-7),
		Input:         30 * units.KiloBtuITPerHour,
		Efficiency:    0.78,
	})
	if err != nil {
		t.Fatal(err)
	}
	blower := load("blower", "", loads.Motor, 0, c.Running)
	blower.Rating = loads.Rating{Current: units.Some(8 * units.Ampere)}
	ledger := one(t, loads.Bus{Name: "dc", Kind: loads.Direct, Voltage: 12 * units.Volt}, blower)
	for _, m := range []mistake{
		{"duty", float64(c.Duty), "0.474", "0.370", 3}, // wrong: the input taken for the heat
		{"hours a day", units.In(c.Running, units.Hour), "11.37", "4.00", 2},
		{"Ah a day", units.In(ledger.Buses[0].Charge.Or(0), units.AmpereHour), "91.0", "32.0", 1},
	} {
		m.check(t)
	}
}

// A microwave oven marked with 1000 W of cooking power takes 1538 W at 65 %.
func TestCookingPowerIsOutput(t *testing.T) {
	oven := load("microwave", "", loads.ConstantPower, 0, 0.2*units.Hour)
	oven.Rating = loads.Rating{Output: units.Some(1000 * units.Watt), Efficiency: units.Some(65 * units.Percent)}
	line := one(t, mains, oven).Lines[0]
	mistake{"W from the plug", units.In(line.Power, units.Watt), "1538", "1000", 0}.check(t)
}

// At 104 V a 1500 W heater takes less current, a 1500 W air conditioner and a
// 600 W converter more: 31.03 A in all, not the 26.00 A of three resistances,
// nor the 30 A of the nameplates, nor the 34.62 A of three constant powers.
func TestEachLoadHasItsKind(t *testing.T) {
	var amperes units.Current
	for _, l := range []loads.Load{
		load("heater", "", loads.Resistive, 1500*units.Watt, units.Hour),
		load("air conditioner", "", loads.Motor, 1500*units.Watt, units.Hour),
		load("converter", "", loads.ConstantPower, 600*units.Watt, units.Hour),
	} {
		l.Rating.PowerFactor = units.Some(units.One)
		d, err := one(t, mains, l).Lines[0].At(104 * units.Volt)
		if err != nil {
			t.Fatal(err)
		}
		amperes += d.Current
	}
	mistake{"A at 104 V", units.In(amperes, units.Ampere), "31.03", "26.00", 2}.check(t)
}

// 900 W at a power factor of 0.62 are 1452 VA.
func TestVoltAmperesAreNotWatts(t *testing.T) {
	l := load("appliance", "", loads.ConstantPower, 900*units.Watt, units.Hour)
	l.Rating.PowerFactor = units.Some[units.Ratio](0.62)
	mistake{"VA", units.In(one(t, mains, l).Lines[0].Apparent, units.VoltAmpere), "1452", "900", 0}.check(t)
}

// A 1500 W heater for 120 V on 240 V makes 6000 W, and that is a danger.
func TestTwiceTheVoltage(t *testing.T) {
	line := one(t, mains, load("heater", "", loads.Resistive, 1500*units.Watt, units.Hour)).Lines[0]
	d, err := line.At(240 * units.Volt)
	if err != nil {
		t.Fatal(err)
	}
	mistake{"W at 240 V", units.In(d.Power, units.Watt), "6000", "1500", 0}.check(t)
	if !has(d.Findings(), "voltage-far-from-nameplate") {
		t.Error("240 V on 120 V goes unsaid")
	}
}

// A refrigerator's 12 V element of 17.2 A and 1.5 A of other loads take
// 112.2 Ah in a drive of six hours; a charge line of 9 A brings 54 Ah.
func TestDrivingDoesNotCharge(t *testing.T) {
	bus := loads.Bus{Name: "dc", Kind: loads.Direct, Voltage: 12 * units.Volt}
	element := load("element", "dc", loads.Resistive, 0, 6*units.Hour)
	element.Rating = loads.Rating{Current: units.Some(17.2 * units.Ampere)}
	other := load("other", "dc", loads.ConstantCurrent, 0, 6*units.Hour)
	other.Rating = loads.Rating{Current: units.Some(1.5 * units.Ampere)}
	ledger, err := loads.Audit([]loads.Bus{bus}, []loads.Load{element, other})
	if err != nil {
		t.Fatal(err)
	}
	brought := (9 * units.Ampere).For(6 * units.Hour)
	net := brought - ledger.Buses[0].Charge.Or(0)
	mistake{"Ah into the bank", units.In(net, units.AmpereHour), "-58.2", "54.0", 1}.check(t)
}
