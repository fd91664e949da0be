package wire_test

import (
	"fmt"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// tableCells returns what the table of the rule set has of a metal, by size and
// class.
func tableCells(prefix string, rules wire.RuleSet, metal wire.Metal) (cells []cell) {
	for _, size := range wire.Gauges() {
		for n := wire.Insulation60; n <= wire.Insulation90; n++ {
			c, err := wire.Ampacity(wire.Installation{Rules: rules, Size: size, Insulation: n, Metal: metal})
			if err != nil {
				continue // a blank of the table
			}
			cells = append(cells, cell{fmt.Sprintf("%s-%s-%v", prefix, rowName(size), n.Temperature().Celsius()), float64(c.Table)})
		}
	}
	return cells
}

func TestEditionTablesGuardEveryDigit(t *testing.T) {
	guardEveryDigit(t, tableCells("A310", wire.NEC2017, wire.Aluminium), secondCopy(t, "wire_ampacity.csv", "A310"))
	guardEveryDigit(t, tableCells("O310", wire.NEC2008, wire.Copper), secondCopy(t, "wire_ampacity.csv", "O310"))
	guardEveryDigit(t, tableCells("OA310", wire.NEC2008, wire.CopperClad), secondCopy(t, "wire_ampacity.csv", "OA310"))
	// The edition of 2023 has the table of 2017, cell by cell.
	for _, metal := range []wire.Metal{wire.Copper, wire.Aluminium} {
		old, now := tableCells("", wire.NEC2017, metal), tableCells("", wire.NEC2023, metal)
		if len(old) == 0 || len(old) != len(now) {
			t.Fatalf("%v: %d and %d cells", metal, len(old), len(now))
		}
		for i := range old {
			if old[i] != now[i] {
				t.Errorf("%v: %v in 2017, %v in 2023", metal, old[i], now[i])
			}
		}
	}
}

func TestFactorTablesGuardEveryDigit(t *testing.T) {
	var ambient, engine, boat, nec []cell
	for _, top := range []float64{25, 30, 35, 40, 45, 50, 55, 60, 70, 80} {
		for n := wire.Insulation60; n <= wire.Insulation90; n++ {
			if f := wire.AmbientFactor(wire.NEC2008, n, units.Celsius(top)); f > 0 {
				ambient = append(ambient, cell{fmt.Sprintf("OAMB-%v-%v", top, n.Temperature().Celsius()), float64(f)})
			}
		}
	}
	guardEveryDigit(t, ambient, secondCopy(t, "wire_ampacity.csv", "OAMB"))
	for n := wire.Insulation60; n <= wire.Insulation200; n++ {
		c := mustCarry(t, wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(10), Insulation: n, EngineSpace: true})
		engine = append(engine, cell{fmt.Sprintf("ENG-%v", n.Temperature().Celsius()), float64(c.Ambient)})
	}
	guardEveryDigit(t, engine, secondCopy(t, "wire_ampacity.csv", "ENG"))
	for _, n := range []int{3, 4, 6, 7, 24, 25, 60} {
		c := mustCarry(t, wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(10), Insulation: wire.Insulation90, Conductors: n,
			System: units.Some(120 * units.Volt)})
		boat = append(boat, cell{fmt.Sprintf("BBN-%d", n), float64(c.Bundle)})
	}
	guardEveryDigit(t, boat, secondCopy(t, "wire_ampacity.csv", "BBN"))
	for _, n := range []int{4, 6, 7, 9, 10, 20, 21, 30, 31, 40, 41, 1000} {
		c := mustCarry(t, wire.Installation{Rules: wire.NEC2023, Size: wire.AWG(10), Insulation: wire.Insulation90, Conductors: n})
		nec = append(nec, cell{fmt.Sprintf("NBF-%d", n), units.In(c.Bundle, units.Percent)})
	}
	guardEveryDigit(t, nec, secondCopy(t, "wire_ampacity.csv", "NBF"))
}

// hoursAtMost returns what 240.4(D) lets a size carry for hours, as the finding
// names it.
func hoursAtMost(t *testing.T, size wire.Size) float64 {
	t.Helper()
	p := mustProtect(t, wire.Circuit{Load: 9 * units.Ampere, Continuous: true,
		Installation: wire.Installation{Rules: wire.NEC2017, Size: size, Insulation: wire.Insulation90}})
	for _, f := range p.Findings() {
		if f.Rule == "small-conductor-continuous" {
			return float64(f.Numbers[1].Value.(units.Current))
		}
	}
	t.Fatalf("%v carries 9 A for hours", size)
	return 0
}

func TestLimitTablesGuardEveryDigit(t *testing.T) {
	var limits, hours []cell
	for _, n := range []int{12, 10} {
		p := mustProtect(t, wire.Circuit{Load: 1 * units.Ampere,
			Installation: wire.Installation{Rules: wire.NEC2023, Size: wire.AWG(n), Insulation: wire.Insulation90, Metal: wire.Aluminium}})
		limits = append(limits, cell{fmt.Sprintf("DA240-%d", n), float64(p.Limit)})
	}
	guardEveryDigit(t, limits, secondCopy(t, "wire_ampacity.csv", "DA240"))
	for _, n := range []int{18, 16} {
		hours = append(hours, cell{fmt.Sprintf("C240-%d", n), hoursAtMost(t, wire.AWG(n))})
	}
	guardEveryDigit(t, hours, secondCopy(t, "wire_ampacity.csv", "C240"))
}

func TestRatingsGuardEveryDigit(t *testing.T) {
	for _, list := range []struct {
		prefix string
		rules  wire.RuleSet
		kind   wire.DeviceKind
	}{{"RF17", wire.NEC2017, wire.Fuse}, {"RB17", wire.NEC2008, wire.Breaker}, {"RB23", wire.NEC2023, wire.Breaker}, {"RF17", wire.NEC2023, wire.Fuse}} {
		ladder, err := wire.RatingsOf(list.rules, list.kind)
		if err != nil {
			t.Fatal(err)
		}
		var cells []cell
		for _, rating := range ladder.All() {
			cells = append(cells, cell{fmt.Sprintf("%s-%v", list.prefix, float64(rating)), float64(rating)})
		}
		copied := secondCopy(t, "wire_ratings.csv", list.prefix)
		// An id names its own value, so a cell that is wrong has none.
		for _, c := range cells {
			if _, ok := copied[c.id]; !ok {
				t.Errorf("%v, %v: %v A is not in the second copy", list.rules, list.kind, c.value)
			}
		}
		guardEveryDigit(t, cells, copied)
	}
}

func TestCordTablesGuardEveryDigit(t *testing.T) {
	var first, second, bundle []cell
	for n := 20; n >= 2; n-- {
		for letter, x := range map[string]wire.Cord{
			"A": {Conductors: 3}, "B": {Conductors: 2}, "H": {Type: wire.HeaterCord, Conductors: 2},
		} {
			x.Size, x.Load = wire.AWG(n), 1*units.Ampere
			if c, err := wire.CordAmpacity(x); err == nil {
				first = append(first, cell{fmt.Sprintf("CORD1-%d-%s", n, letter), float64(c.Table)})
			}
		}
	}
	guardEveryDigit(t, first, secondCopy(t, "wire_cord.csv", "CORD1"))
	for _, size := range wire.Gauges() {
		for n := wire.Insulation60; n <= wire.Insulation90; n++ {
			for i, letter := range []string{"D", "E", "F"} {
				c, err := wire.CordAmpacity(wire.Cord{Type: wire.PortableCable, Size: size, Rating: n, Conductors: i + 1, Load: 1 * units.Ampere})
				if err == nil {
					second = append(second, cell{fmt.Sprintf("CORD2-%s-%v-%s", rowName(size), n.Temperature().Celsius(), letter), float64(c.Table)})
				}
			}
		}
	}
	guardEveryDigit(t, second, secondCopy(t, "wire_cord.csv", "CORD2"))
	for _, n := range []int{4, 6, 7, 9, 10, 20, 21, 30, 31, 40, 41, 60} {
		c, err := wire.CordAmpacity(wire.Cord{Size: wire.AWG(10), Conductors: n, Load: 1 * units.Ampere})
		if err != nil {
			t.Fatal(err)
		}
		bundle = append(bundle, cell{fmt.Sprintf("CORD3-%d", n), units.In(c.Bundle, units.Percent)})
	}
	guardEveryDigit(t, bundle, secondCopy(t, "wire_cord.csv", "CORD3"))
}

func TestCoreTableGuardsEveryDigit(t *testing.T) {
	var k, initial, final []cell
	rows := []int{1, 3, 5, 6, 7, 8, 9, 10} // of the published list, which has two above 300 mm²
	for i, n := range rows {
		w, err := wire.Adiabatic(wire.ShortTime{Size: wire.AWG(10), Core: wire.CorePVC70 + wire.Core(i), Current: 1 * units.Kiloampere})
		if err != nil {
			t.Fatal(err)
		}
		k = append(k, cell{fmt.Sprintf("K-%d", n), float64(w.K)})
		initial = append(initial, cell{fmt.Sprintf("KI-%d", n), w.ShortTime.Initial.Celsius()})
		final = append(final, cell{fmt.Sprintf("KE-%d", n), w.ShortTime.Final.Celsius()})
	}
	guardEveryDigit(t, k, secondCopy(t, "wire_fault.csv", "K"))
	guardEveryDigit(t, initial, secondCopy(t, "wire_fault.csv", "KI"))
	guardEveryDigit(t, final, secondCopy(t, "wire_fault.csv", "KE"))
}

func TestThicknessGuardsEveryDigit(t *testing.T) {
	var cells []cell
	for _, size := range []wire.Size{wire.AWG(10), wire.AWG(8), wire.AWG(2), wire.Aught(4), wire.Kcmil(500)} {
		b, err := wire.FreeAir(wire.FreeAirCable{Size: size, Metal: units.Celsius(75)})
		if err != nil {
			t.Fatal(err)
		}
		cells = append(cells, cell{"THK-" + rowName(size), units.In(b.Cable.Thickness.Or(0), units.Millimetre)})
	}
	guardEveryDigit(t, cells, secondCopy(t, "wire_free_air.csv", "THK"))
}

func mustCarry(t testing.TB, x wire.Installation) wire.CarryingCapacity {
	t.Helper()
	c, err := wire.Ampacity(x)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func mustProtect(t testing.TB, c wire.Circuit) wire.Protection {
	t.Helper()
	p, err := wire.Protect(c)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
