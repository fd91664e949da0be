package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// shoreCord is a 30 A cord, 10/3: two of its three conductors carry current.
func shoreCord() wire.Cord {
	return wire.Cord{Size: wire.AWG(10), Conductors: 2, Load: 24 * units.Ampere, Device: units.Some(30 * units.Ampere)}
}

func mustCord(t testing.TB, x wire.Cord) wire.CordCapacity {
	t.Helper()
	c, err := wire.CordAmpacity(x)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestCordCases(t *testing.T) {
	for _, c := range []struct {
		what  string
		x     wire.Cord
		want  units.Current
		place string
	}{
		{"30 A cord", shoreCord(), 30, "Table 400.5(A)(1)"},
		// 45 A x 0.80, from the column of three
		{"6 AWG, four carry", wire.Cord{Size: wire.AWG(6), Conductors: 4, Load: 1}, 36, "Table 400.5(A)(1)"},
		// 30 A x 0.82 (60 °C, 40 °C air)
		{"in the sun", wire.Cord{Size: wire.AWG(10), Conductors: 2, Load: 1, Rating: wire.Insulation60, Ambient: units.Celsius(40)}, 24.6, "Table 400.5(A)(1)"},
		{"heater cord", wire.Cord{Type: wire.HeaterCord, Size: wire.AWG(14), Conductors: 2, Load: 1}, 20, "Table 400.5(A)(1)"},
		{"heater cord, three carry", wire.Cord{Type: wire.HeaterCord, Size: wire.AWG(14), Conductors: 3, Load: 1}, 20, "Table 400.5(A)(1)"},
		{"portable, single", wire.Cord{Type: wire.PortableCable, Size: wire.Aught(4), Conductors: 1, Load: 1, Rating: wire.Insulation90}, 405, "Table 400.5(A)(2)"},
		// 65 A x 0.80
		{"portable, five carry", wire.Cord{Type: wire.PortableCable, Size: wire.AWG(8), Conductors: 5, Load: 1, Rating: wire.Insulation90}, 52, "Table 400.5(A)(2)"},
	} {
		got := mustCord(t, c.x)
		if units.Compare(got.Current, c.want) != 0 || got.Rule().Place != c.place {
			t.Errorf("%s: %v by %s, want %v by %s", c.what, got.Current, got.Rule().Place, c.want, c.place)
		}
	}
}

func TestCordRefuses(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(*wire.Cord)
	}{
		{"Type", func(x *wire.Cord) { x.Type = 3 }},
		{"Size", func(x *wire.Cord) { x.Size = wire.Size{} }},
		{"Size", func(x *wire.Cord) { x.Size = wire.AWG(21) }},
		{"Size", func(x *wire.Cord) { x.Size = wire.AWG(1) }},
		{"Size", func(x *wire.Cord) { x.Size = wire.Metric(6 * units.SquareMillimetre) }},
		{"Size", func(x *wire.Cord) { x.Size, x.Conductors = wire.AWG(20), 3 }},
		{"Size", func(x *wire.Cord) { x.Type, x.Size = wire.HeaterCord, wire.AWG(8) }},
		{"Size", func(x *wire.Cord) {
			x.Type, x.Rating, x.Size, x.Conductors = wire.PortableCable, wire.Insulation75, wire.AWG(10), 1
		}},
		{"Size", func(x *wire.Cord) { x.Type, x.Rating, x.Size = wire.PortableCable, wire.Insulation75, wire.AWG(14) }},
		{"Conductors", func(x *wire.Cord) { x.Conductors = 1 }},
		{"Conductors", func(x *wire.Cord) { x.Conductors = 1001 }},
		{"Conductors", func(x *wire.Cord) { x.Type, x.Rating, x.Conductors = wire.PortableCable, wire.Insulation75, 0 }},
		{"Rating", func(x *wire.Cord) { x.Type = wire.PortableCable }},
		{"Rating", func(x *wire.Cord) { x.Rating = wire.Insulation105 }},
		{"Rating", func(x *wire.Cord) { x.Ambient = units.Celsius(40) }},
		{"Ambient", func(x *wire.Cord) { x.Rating, x.Ambient = wire.Insulation60, units.Celsius(56) }},
		{"Ambient", func(x *wire.Cord) { x.Rating, x.Ambient = wire.Insulation60, units.Celsius(-61) }},
	} {
		x := shoreCord()
		c.spoil(&x)
		got, err := wire.CordAmpacity(x)
		wantRangeError(t, err, "wire.CordAmpacity", c.field)
		if got != (wire.CordCapacity{}) {
			t.Errorf("%s: result %+v, want the zero value", c.field, got)
		}
	}
	for _, v := range bad {
		x := shoreCord()
		x.Load = units.Current(v)
		_, err := wire.CordAmpacity(x)
		wantRangeError(t, err, "wire.CordAmpacity", "Load")
		x = shoreCord()
		x.Device = units.Some(units.Current(v))
		_, err = wire.CordAmpacity(x)
		wantRangeError(t, err, "wire.CordAmpacity", "Device")
	}
}

// TestCordFindings: each comes with its cause and goes with it.
func TestCordFindings(t *testing.T) {
	if found := mustCord(t, shoreCord()).Findings(); len(found) != 0 {
		t.Errorf("a cord in order: found %v", found)
	}
	for _, c := range []struct {
		rule     string
		severity working.Severity
		seed     func(*wire.Cord)
	}{
		{"cord-above-table", working.Danger, func(x *wire.Cord) { x.Load = 30.01 * units.Ampere }},
		{"cord-device-not-stated", working.Note, func(x *wire.Cord) { x.Device = units.None[units.Current]() }},
		{"cord-behind-larger-device", working.Caution, func(x *wire.Cord) { x.Device = units.Some(30.01 * units.Ampere) }},
		{"cord-coiled", working.Caution, func(x *wire.Cord) { x.Coiled = true }},
	} {
		x := shoreCord()
		c.seed(&x)
		found := mustCord(t, x).Findings()
		saysAll(t, found)
		if len(found) != 1 || !hasSeverity(found, c.rule, c.severity) {
			t.Errorf("seeded %s: found %v", c.rule, found)
		}
	}
	full := shoreCord()
	full.Load = 30 * units.Ampere
	if found := mustCord(t, full).Findings(); len(found) != 0 {
		t.Errorf("at its ampacity: found %v", found)
	}
}
