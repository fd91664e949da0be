package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

func FuzzCordAmpacity(f *testing.F) {
	f.Add(uint8(0), 10, 2, uint8(0), 30.0, 24.0, 30.0, uint8(1))
	f.Add(uint8(2), -3, 1, uint8(3), 45.0, 200.0, 0.0, uint8(2))
	f.Add(uint8(1), 99, -1, uint8(9), math.NaN(), math.Inf(1), -1.0, uint8(7))
	f.Fuzz(func(t *testing.T, kind uint8, gauge, conductors int, rating uint8, celsius, load, device float64, flags uint8) {
		x := wire.Cord{Type: wire.CordType(kind), Size: wire.AWG(gauge), Conductors: conductors, Rating: wire.Insulation(rating),
			Load: units.Current(load), Coiled: flags&4 != 0}
		if flags&1 != 0 {
			x.Device = units.Some(units.Current(device))
		}
		if flags&2 != 0 {
			x.Ambient = units.Celsius(celsius)
		}
		c, err := wire.CordAmpacity(x)
		checkOutcome(t, err, float64(c.Current), float64(c.Table))
		_ = c.Working().Text()
		if err == nil && units.Exceeds(x.Load, c.Current) != has(c.Findings(), "cord-above-table") {
			t.Fatalf("%v on %v: found %v", x.Load, c.Current, c.Findings())
		}
	})
}

func FuzzAdiabatic(f *testing.F) {
	f.Add(16, uint8(0), uint8(1), 0.0, 0.0, 86.4, 3.0, uint8(0))
	f.Add(-3, uint8(1), uint8(0), 70.0, 160.0, 5000.0, 0.1, uint8(3))
	f.Add(99, uint8(9), uint8(9), math.NaN(), math.Inf(1), 1e300, 1e-300, uint8(3))
	f.Fuzz(func(t *testing.T, gauge int, metal, core uint8, initial, final, current, seconds float64, flags uint8) {
		x := wire.ShortTime{Size: wire.AWG(gauge), Metal: wire.Metal(metal), Core: wire.Core(core), Current: units.Current(current)}
		if flags&1 != 0 {
			x.Initial, x.Final = units.Celsius(initial), units.Celsius(final)
		}
		if flags&2 != 0 {
			x.Time = units.Some(units.Elapsed(seconds))
		}
		w, err := wire.Adiabatic(x)
		checkOutcome(t, err, float64(w.K), float64(w.Bears))
		if longest, ok := w.Longest.Get(); ok && (!(longest > 0) || units.Exceeds(longest, 5*units.Second)) {
			t.Fatalf("it bears it for %v", longest)
		}
		_ = w.Working().Text()
		if err == nil && len(w.Findings()) == 0 {
			t.Fatal("no findings")
		}
	})
}

func FuzzFreeAir(f *testing.F) {
	f.Add(6, 90.0, 30.0, 0.0015, 0.9, uint8(0))
	f.Add(20, 60.0, -20.0, 0.0001, 0.0, uint8(7))
	f.Add(99, math.NaN(), math.Inf(1), -1.0, 2.0, uint8(7))
	f.Fuzz(func(t *testing.T, gauge int, metal, ambient, thickness, emissivity float64, flags uint8) {
		x := wire.FreeAirCable{Size: wire.AWG(gauge), Metal: units.Celsius(metal)}
		if flags&1 != 0 {
			x.Ambient = units.Celsius(ambient)
		}
		if flags&2 != 0 {
			x.Thickness = units.Some(units.Length(thickness))
		}
		if flags&4 != 0 {
			x.Emissivity = units.Some(units.Ratio(emissivity))
		}
		b, err := wire.FreeAir(x)
		checkOutcome(t, err, float64(b.Current), float64(b.Loss), float64(b.Nusselt))
		_ = b.Working().Text()
	})
}

func FuzzWeakestPart(f *testing.F) {
	f.Add(216.5, 300.0, 330.0, 100.0, "switch", uint8(3))
	f.Add(math.NaN(), -1.0, 0.0, math.Inf(1), "", uint8(0))
	f.Fuzz(func(t *testing.T, load, device, first, second float64, name string, flags uint8) {
		parts := []wire.Part{{Name: "cable", Rating: units.Current(first)}, {Name: name, Rating: units.Current(second)}}
		stated := units.None[units.Current]()
		if flags&1 != 0 {
			stated = units.Some(units.Current(device))
		}
		p, err := wire.WeakestPart(units.Current(load), stated, parts[:min(int(flags>>1), 2)])
		checkOutcome(t, err, float64(p.Weak.Rating))
		_ = p.Working().Text()
		_ = p.Findings()
	})
}

// FuzzInstallation feeds what FuzzAmpacity does not: metals, voltages, engine
// spaces and conductors in parallel, under every rule set.
func FuzzInstallation(f *testing.F) {
	f.Add(uint8(3), 10, uint8(4), uint8(0), 120.0, 3, 0, uint8(3))
	f.Add(uint8(5), -2, uint8(3), uint8(1), 12.0, 0, 3, uint8(0))
	f.Add(uint8(4), 14, uint8(1), uint8(9), math.NaN(), -1, 101, uint8(7))
	f.Fuzz(func(t *testing.T, rules uint8, gauge int, insulation, metal uint8, system float64, conductors, parallel int, flags uint8) {
		x := wire.Installation{Rules: wire.RuleSet(rules), Size: wire.AWG(gauge), Insulation: wire.Insulation(insulation), Metal: wire.Metal(metal),
			Conductors: conductors, Parallel: parallel, EngineSpace: flags&2 != 0}
		if flags&1 != 0 {
			x.System = units.Some(units.Voltage(system))
		}
		c, err := wire.Ampacity(x)
		checkOutcome(t, err, float64(c.Current), float64(c.Corrected), float64(c.Counted))
		_ = c.Working().Text()
		_ = c.Findings()
		if err != nil {
			return
		}
		p, err := wire.Protect(wire.Circuit{Installation: x, Load: 1 * units.Ampere, OneWay: 3 * units.Metre,
			Fault: units.Some(wire.FaultSource{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm}), Opens: units.Some(1 * units.Second)})
		checkOutcome(t, err, float64(p.Limit), float64(p.AtEnd.Current))
		if err == nil && (units.Exceeds(p.Below, c.Current) || units.Exceeds(p.Below, p.Limit)) {
			t.Fatalf("%v is above %v or %v", p.Below, c.Current, p.Limit)
		}
		_ = p.Working().Text()
	})
}
