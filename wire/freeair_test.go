package wire_test

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

func hanging() wire.FreeAirCable {
	return wire.FreeAirCable{Size: wire.AWG(6), Metal: units.Celsius(90)}
}

func mustBalance(t testing.TB, x wire.FreeAirCable) wire.HeatBalance {
	t.Helper()
	b, err := wire.FreeAir(x)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestFreeAirBalances: what passes the insulation leaves the surface, and the
// copper makes as much, at every corner of the range.
func TestFreeAirBalances(t *testing.T) {
	for _, size := range append(wire.Gauges(), wire.MetricSizes()...) {
		for _, metal := range []float64{-39, 30.5, 60, 75, 90, 150} {
			for _, air := range []float64{-60, 30, 100} {
				x := wire.FreeAirCable{Size: size, Metal: units.Celsius(metal), Ambient: units.Celsius(air)}
				if metal <= air {
					continue
				}
				b := mustBalance(t, x)
				heat := float64(b.Current) * float64(b.Current) * float64(b.PerLength)
				if off := math.Abs(float64(b.Through)/float64(b.Loss) - 1); off > 1e-9 || math.Abs(heat/float64(b.Loss)-1) > 1e-9 {
					t.Errorf("%v, %v in %v: passes %v, leaves %v, is made %v", size, metal, air, b.Through, b.Loss, heat)
				}
				if s := b.Surface; s.Compare(x.Ambient) <= 0 || s.Compare(x.Metal) >= 0 {
					t.Errorf("%v, %v in %v: surface %v", size, metal, air, s)
				}
			}
		}
	}
}

// TestFreeAirBand holds every cell of the table of free air to the band that
// [wire.FreeAir] promises, and all from 14 AWG up to a closer one: below, the
// source says that it estimated most cells.
func TestFreeAirBand(t *testing.T) {
	least, most := math.Inf(1), math.Inf(-1)
	for _, size := range wire.Gauges() {
		for _, metal := range []float64{60, 75, 90} {
			printed, ok := secondCopy(t, "wire_free_air.csv", "FREE")[fmt.Sprintf("FREE-%s-%v", rowName(size), metal)]
			if !ok {
				continue
			}
			amperes, err := strconv.ParseFloat(printed.Digits(), 64)
			if err != nil {
				t.Fatal(err)
			}
			b := mustBalance(t, wire.FreeAirCable{Size: size, Metal: units.Celsius(metal)})
			off := float64(b.Current)/amperes - 1
			least, most = min(least, off), max(most, off)
			if highest := map[bool]float64{true: 0.14, false: 0.21}[size.Compare(wire.AWG(14)) >= 0]; off < -0.05 || off > highest {
				t.Errorf("%v at %v °C: %v against %v A, %+.1f %%", size, metal, b.Current, amperes, 100*off)
			}
		}
	}
	t.Logf("from %+.1f %% to %+.1f %% of the table", 100*least, 100*most)
	if !(least < 0 && most > 0.15) {
		t.Errorf("from %v to %v: the table was not read", least, most)
	}
}

func TestFreeAirLaws(t *testing.T) {
	base := mustBalance(t, hanging()).Current
	for what, c := range map[string]struct {
		change func(*wire.FreeAirCable)
		more   bool
	}{
		"hotter copper":      {func(x *wire.FreeAirCable) { x.Metal = units.Celsius(91) }, true},
		"warmer air":         {func(x *wire.FreeAirCable) { x.Ambient = units.Celsius(31) }, false},
		"a larger size":      {func(x *wire.FreeAirCable) { x.Size = wire.AWG(4) }, true},
		"a blacker surface":  {func(x *wire.FreeAirCable) { x.Emissivity = units.Some(units.Ratio(0.95)) }, true},
		"a shining surface":  {func(x *wire.FreeAirCable) { x.Emissivity = units.Some(units.Ratio(0)) }, false},
		"a thin film of it":  {func(x *wire.FreeAirCable) { x.Thickness = units.Some(0.1 * units.Millimetre) }, false},
		"more of insulation": {func(x *wire.FreeAirCable) { x.Thickness = units.Some(3 * units.Millimetre) }, true},
	} {
		x := hanging()
		c.change(&x)
		if got := mustBalance(t, x).Current; units.Exceeds(got, base) != c.more {
			t.Errorf("%s: %v after %v", what, got, base)
		}
	}
}

// TestFreeAirFollowsTheRoot: the rule that ambient factors are made by, the root
// of the rise, comes out of the balance within 4 % from 30 to 50 °C air: least well
// at 60 °C, where convection between close temperatures is weakest.
func TestFreeAirFollowsTheRoot(t *testing.T) {
	for _, metal := range []float64{60, 75, 90, 105} {
		x := hanging()
		x.Metal = units.Celsius(metal)
		at30 := mustBalance(t, x).Current
		x.Ambient = units.Celsius(50)
		ratio := float64(units.RatioOf(mustBalance(t, x).Current, at30))
		root := math.Sqrt((metal - 50) / (metal - 30))
		if math.Abs(ratio/root-1) > 0.04 {
			t.Errorf("%v °C: %v of it in 50 °C air, the root is %v", metal, ratio, root)
		}
	}
}

func TestFreeAirRefuses(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(*wire.FreeAirCable)
	}{
		{"Size", func(x *wire.FreeAirCable) { x.Size = wire.Size{} }},
		{"Metal", func(x *wire.FreeAirCable) { x.Metal = units.Temperature{} }},
		{"Metal", func(x *wire.FreeAirCable) { x.Metal = units.Celsius(150.1) }},
		{"Metal", func(x *wire.FreeAirCable) { x.Metal = units.Celsius(30) }},
		{"Ambient", func(x *wire.FreeAirCable) { x.Ambient = units.Celsius(-60.1) }},
		{"Ambient", func(x *wire.FreeAirCable) { x.Ambient = units.Celsius(100.1) }},
		{"Ambient", func(x *wire.FreeAirCable) { x.Ambient = units.Celsius(math.NaN()) }},
		{"Thickness", func(x *wire.FreeAirCable) { x.Thickness = units.Some(0 * units.Millimetre) }},
		{"Thickness", func(x *wire.FreeAirCable) { x.Thickness = units.Some(20.1 * units.Millimetre) }},
		{"Emissivity", func(x *wire.FreeAirCable) { x.Emissivity = units.Some(units.Ratio(-0.01)) }},
		{"Emissivity", func(x *wire.FreeAirCable) { x.Emissivity = units.Some(units.Ratio(1.01)) }},
		{"Emissivity", func(x *wire.FreeAirCable) { x.Emissivity = units.Some(units.Ratio(math.NaN())) }},
	} {
		x := hanging()
		c.spoil(&x)
		b, err := wire.FreeAir(x)
		wantRangeError(t, err, "wire.FreeAir", c.field)
		if b != (wire.HeatBalance{}) {
			t.Errorf("%s: result %+v, want the zero value", c.field, b)
		}
	}
	found := mustBalance(t, hanging()).Findings()
	saysAll(t, found)
	if len(found) != 1 || !hasSeverity(found, "free-air-physics", working.Note) {
		t.Errorf("found %v", found)
	}
}
