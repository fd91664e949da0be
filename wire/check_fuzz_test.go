package wire_test

import (
	"errors"
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// printedIn returns x as somebody would print it, not given if it cannot be.
func printedIn(x float64, unit string) units.Printed {
	p, err := units.NewPrinted(units.Significant(x, 3), unit)
	if err != nil {
		return units.Printed{}
	}
	return p
}

func FuzzCheck(f *testing.F) {
	f.Add(uint8(1), 14, uint8(4), uint8(0), 20.0, 15.0, 2.0, 20.0, 0.0, 12.0, uint16(0x3ff))
	f.Add(uint8(2), 12, uint8(3), uint8(0), 50.0, 15.0, 2.5, 20.0, 7.0, 120.0, uint16(0x7ff))
	f.Add(uint8(3), -3, uint8(7), uint8(2), 5.0, 200.0, 0.1, 250.0, 60.0, 13.0, uint16(0xfff))
	f.Add(uint8(4+32+16), 10, uint8(5+128), uint8(16), 15.0, 20.0, 1.0, 30.0, 45.0, 12.0, uint16(0x3df))
	f.Add(uint8(1+64), 2, uint8(5+32), uint8(0), 15.0, 5.0, 1.0, 200.0, 0.0, 13.2, uint16(0x3ff))
	f.Add(uint8(9), 99, uint8(9), uint8(9), math.NaN(), math.Inf(1), -1.0, 0.0, 1e300, -1.0, uint16(0xffff))
	f.Fuzz(func(t *testing.T, set uint8, gauge int, insulation, metal uint8, feet, amperes, percent, device, inches, volts float64, flags uint16) {
		is := func(bit int) bool { return flags>>bit&1 != 0 }
		q := wire.Quote{Rules: wire.RuleSet(set & 15), Size: wire.AWG(gauge), Insulation: wire.Insulation(insulation & 15), Continuous: is(11),
			Alternating: is(10), DeviceElsewhere: is(12), LengthIs: wire.LengthBasis(flags >> 13)}
		q.Enclosed, q.OnBatteryPost, q.Thermoset, q.EngineSpace = insulation&16 > 0, insulation&32 > 0, insulation&64 > 0, insulation&128 > 0
		q.Conductors, q.Parallel = int(metal>>2&7), int(metal>>5)
		if set&16 > 0 {
			q.Chassis, q.Contacts = units.Some(units.Resistance(percent/1000)), units.Some(units.Resistance(inches/1000))
		}
		if set&32 > 0 {
			q.Opens, q.Ambient = units.Some(units.Elapsed(percent)), units.Celsius(inches)
		}
		if set&64 > 0 && gauge > 0 {
			q.Size = wire.Metric(units.Area(gauge) * units.SquareMillimetre)
		}
		for i, put := range []func(){
			func() { q.Metal = units.Some(wire.Metal(metal & 3)) },
			func() { q.Length = printedIn(feet, "ft") },
			func() { q.Current = printedIn(amperes, "A") },
			func() { q.Percent, q.Drop = printedIn(percent, "%"), printedIn(percent, "V") },
			func() { q.Device, q.Interrupting = printedIn(device, "A"), printedIn(100*device, "A") },
			func() { q.FromSource = printedIn(inches, "in") },
			func() { q.Voltage = units.Some(units.Voltage(volts)) },
			func() { q.PowerFactor, q.Ampacity = units.Some(units.Ratio(percent/3)), printedIn(device, "A") },
			func() { q.Fault = units.Some(wire.FaultSource{Voltage: units.Voltage(volts), Resistance: 0.003}) },
			func() { q.Allowed = units.Some(units.Ratio(percent / 100)) },
		} {
			if is(i) {
				put()
			}
		}
		c, err := wire.Check(q)
		if err != nil {
			if !errors.Is(err, units.ErrRange) || c != (wire.Checked{}) {
				t.Fatalf("%v, %+v", err, c)
			}
			return
		}
		checkChecked(t, c)
	})
}

// checkChecked wants what holds of every result.
func checkChecked(t *testing.T, c wire.Checked) {
	t.Helper()
	if err := c.Working().Err(); err != nil {
		t.Fatal(err)
	}
	dangerous := false
	for _, f := range c.Findings() {
		dangerous = dangerous || f.Severity == working.Danger
		if f.Message == "" || f.Fix == "" || len(f.Numbers) == 0 || f.Source == (working.Source{}) {
			t.Fatalf("incomplete finding %+v", f)
		}
	}
	if dangerous != (c.Verdict() == working.Unsafe) {
		t.Fatalf("%v with %v", c.Verdict(), c.Findings())
	}
	agreed := c.Verdict() == working.Agree || c.Verdict() == working.AgreeConservative
	for _, l := range c.Lines() {
		if l.Rule == "" || l.String() == "" || agreed && (l.Verdict == working.Disagree || l.Verdict == working.NotStated) {
			t.Fatalf("%v of %v", l, c.Verdict())
		}
	}
	if c.Verdict() == working.NotStated && len(c.Questions()) == 0 {
		t.Fatalf("nothing to ask, and not stated: %v", c.Lines())
	}
}

// TestCheckZero: an empty or hand-made result has methods that do not panic.
func TestCheckZero(t *testing.T) {
	for _, c := range []wire.Checked{{}, {Quote: wire.Quote{Current: stated("2 V"), Drop: stated("2 A")}, Voltage: 1, Protection: wire.Protection{Limit: 3}}} {
		_, _, _, _ = c.Lines(), c.Verdict(), c.Questions(), c.Working().Text()
	}
}
