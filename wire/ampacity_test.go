package wire_test

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// roof is a conductor that corrections, bundling and terminals all reach.
func roof() wire.Installation {
	return wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(10), Insulation: wire.Insulation90,
		Ambient: units.Celsius(60), Conductors: 4}
}

func TestAmpacityCases(t *testing.T) {
	for _, c := range []struct {
		what    string
		x       wire.Installation
		want    units.Current
		governs wire.Governs
	}{
		// 40 A x 0.71 x 0.80, from the 90 °C column
		{"roof in summer", roof(), 22.72 * units.Ampere, wire.ByInsulation},
		{"the same at 30 °C, three of them", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(10), Insulation: wire.Insulation90},
			30 * units.Ampere, wire.ByTerminals},
		{"with terminals of 75 °C", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(10), Insulation: wire.Insulation90, Terminals: wire.Insulation75},
			35 * units.Ampere, wire.ByTerminals},
		{"thick wires have 75 °C terminals", wire.Installation{Rules: wire.NEC2017, Size: wire.Aught(1), Insulation: wire.Insulation90},
			150 * units.Ampere, wire.ByTerminals},
		{"1 AWG has 60 °C terminals", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(1), Insulation: wire.Insulation90},
			110 * units.Ampere, wire.ByTerminals},
		{"105 °C by the 90 °C column", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(6), Insulation: wire.Insulation105, Terminals: wire.Insulation105},
			75 * units.Ampere, wire.ByInsulation},
		{"16 AWG has no terminal column", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(16), Insulation: wire.Insulation90},
			18 * units.Ampere, wire.ByInsulation},
		{"41 together", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(10), Insulation: wire.Insulation90, Conductors: 41},
			14 * units.Ampere, wire.ByInsulation},
		{"cold air raises it to the terminals", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(8), Insulation: wire.Insulation60, Ambient: units.Celsius(-20)},
			40 * units.Ampere, wire.ByTerminals},
		{"RV, 12 V, thin", wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(12), Insulation: wire.Insulation105},
			20 * units.Ampere, wire.ByDeviceTable},
		{"RV, 12 V, thick", wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(1), Insulation: wire.Insulation105},
			245 * units.Ampere, wire.ByInsulation},
		{"boat, inverter cable", wire.Installation{Rules: wire.Boat33CFR, Size: wire.Aught(1), Insulation: wire.Insulation105},
			285 * units.Ampere, wire.ByInsulation},
	} {
		got, err := wire.Ampacity(c.x)
		if err != nil {
			t.Errorf("%s: %v", c.what, err)
			continue
		}
		if units.Compare(got.Current, c.want) != 0 || got.Governs != c.governs {
			t.Errorf("%s: %v by %v, want %v by %v", c.what, got.Current, got.Governs, c.want, c.governs)
		}
	}
}

func TestAmpacityRefuses(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(*wire.Installation)
	}{
		{"Rules", func(x *wire.Installation) { x.Rules = 0 }},
		{"Rules", func(x *wire.Installation) { x.Rules = 9 }},
		{"Size", func(x *wire.Installation) { x.Size = wire.Size{} }},
		{"Size", func(x *wire.Installation) { x.Size = wire.AWG(20) }},
		{"Size", func(x *wire.Installation) { x.Size = wire.Metric(6 * units.SquareMillimetre) }},
		{"Size", func(x *wire.Installation) { x.Size, x.Insulation = wire.AWG(16), wire.Insulation75 }},
		{"Size", func(x *wire.Installation) {
			x.Rules, x.Size, x.Ambient, x.Conductors = wire.Boat33CFR, wire.Kcmil(250), units.Celsius(30), 0
		}},
		{"Insulation", func(x *wire.Installation) { x.Insulation = 0 }},
		{"Insulation", func(x *wire.Installation) { x.Insulation = 9 }},
		{"Terminals", func(x *wire.Installation) { x.Terminals = 9 }},
		{"Conductors", func(x *wire.Installation) { x.Conductors = -1 }},
		{"Conductors", func(x *wire.Installation) { x.Conductors = 1001 }},
		{"Ambient", func(x *wire.Installation) { x.Ambient = units.Celsius(85.1) }},
		{"Ambient", func(x *wire.Installation) { x.Ambient = units.Celsius(math.NaN()) }},
		// 60 °C insulation has no factor at 60 °C
		{"Ambient", func(x *wire.Installation) { x.Insulation = wire.Insulation60 }},
		{"Ambient", func(x *wire.Installation) { x.Ambient = units.Celsius(-60.1) }},
		// tables without corrections refuse what they would have to ignore
		{"Conductors", func(x *wire.Installation) { x.Rules = wire.Boat33CFR }},
		{"Ambient", func(x *wire.Installation) { x.Rules, x.Conductors = wire.Boat33CFR, 3 }},
		{"Terminals", func(x *wire.Installation) { x.Rules, x.Terminals = wire.RVLowVoltage, wire.Insulation60 }},
	} {
		x := roof()
		c.spoil(&x)
		got, err := wire.Ampacity(x)
		wantRangeError(t, err, "wire.Ampacity", c.field)
		if got != (wire.CarryingCapacity{}) {
			t.Errorf("%s: result %+v, want the zero value", c.field, got)
		}
	}
}

// TestAmbientFactors holds the table to the physics behind it: heat goes with
// the square of the current and with the rise in temperature. The printed
// factors are the root to two decimals, within 1.6 % at the top of a band.
func TestAmbientFactors(t *testing.T) {
	for _, n := range []wire.Insulation{wire.Insulation60, wire.Insulation75, wire.Insulation90} {
		rated, last := n.Temperature().Celsius(), math.Inf(1)
		for top := 10.0; top <= 85; top += 5 {
			factor := float64(wire.AmbientFactor(wire.NEC2017, n, units.Celsius(top)))
			if top >= rated {
				if factor != 0 {
					t.Errorf("%v at %v °C has factor %v, want none", n, top, factor)
				}
				continue
			}
			want := math.Sqrt((rated - top) / (rated - 30))
			if off := math.Abs(factor/want - 1); off > 0.016 || factor >= last {
				t.Errorf("%v at %v °C: factor %v after %v, the root is %.3f", n, top, factor, last, want)
			}
			last = factor
			// Bands are closed above; what lies between two is in the upper one.
			if just := float64(wire.AmbientFactor(wire.NEC2017, n, units.Celsius(top+0.4))); top+5 < rated && just >= factor {
				t.Errorf("%v at %v °C: factor %v, want that of the next band", n, top+0.4, just)
			}
		}
	}
}

// TestAmpacityTablesRise: each larger size and each warmer class carries more.
func TestAmpacityTablesRise(t *testing.T) {
	for _, r := range []wire.RuleSet{wire.NEC2017, wire.Boat33CFR} {
		for n := wire.Insulation60; n <= wire.Insulation105; n++ {
			last := units.Current(0)
			for _, size := range wire.Gauges() {
				c, err := wire.Ampacity(wire.Installation{Rules: r, Size: size, Insulation: n})
				if err != nil {
					continue // not in this table
				}
				if c.Table <= last {
					t.Errorf("%v, %v: %v has %v after %v", r, n, size, c.Table, last)
				}
				last = c.Table
				cooler, err := wire.Ampacity(wire.Installation{Rules: r, Size: size, Insulation: n - 1})
				if err == nil && cooler.Table > c.Table {
					t.Errorf("%v %v: %v carries more at %v than at %v", r, size, cooler.Table, n-1, n)
				}
			}
			if last == 0 {
				t.Errorf("%v, %v: no size is in the table", r, n)
			}
		}
	}
}

func TestInsulation(t *testing.T) {
	for n := wire.Insulation60; n <= wire.Insulation200; n++ {
		if got, ok := wire.InsulationOf(n.Temperature()); !ok || got != n {
			t.Errorf("InsulationOf(%v) = %v, %v", n.Temperature(), got, ok)
		}
	}
	for _, at := range []units.Temperature{{}, units.Celsius(0), units.Celsius(85)} {
		if n, ok := wire.InsulationOf(at); ok {
			t.Errorf("InsulationOf(%v) = %v", at, n)
		}
	}
	if s := wire.Insulation(0).String() + ", " + wire.Insulation75.String(); s != "not given, 75 °C" {
		t.Errorf("got %q", s)
	}
	for r, want := range map[wire.RuleSet]string{0: "not given", wire.NEC2017: "NEC 2017", wire.RVLowVoltage: "RV low voltage", wire.Boat33CFR: "33 CFR 183",
		wire.NEC2008: "NEC 2008", wire.NEC2023: "NEC 2023"} {
		if r.String() != want {
			t.Errorf("%d: %q, want %q", uint8(r), r, want)
		}
	}
}

func TestInsulationAndRuleSetText(t *testing.T) {
	for n := wire.Insulation60; n <= wire.Insulation200; n++ {
		text, err := n.MarshalText()
		var back wire.Insulation
		if err != nil || back.UnmarshalText(text) != nil || back != n {
			t.Errorf("%v: text %q reads back as %v", n, text, back)
		}
	}
	for r := wire.RVLowVoltage; r <= wire.NEC2023; r++ {
		text, err := r.MarshalText()
		var back wire.RuleSet
		if err != nil || back.UnmarshalText(bytes.ToUpper(text)) != nil || back != r {
			t.Errorf("%v: text %q reads back as %v", r, text, back)
		}
	}
	n, r := wire.Insulation90, wire.NEC2017
	var parse *units.ParseError
	for _, text := range []string{"", "85 °C", "warm"} {
		if class, err := wire.ParseInsulation(text); err == nil || class != 0 {
			t.Errorf("%q is %v, %v", text, class, err)
		}
		if text == "" { // no text is what a field that is not given is written as
			continue
		}
		if err := n.UnmarshalText([]byte(text)); !errors.As(err, &parse) || n != wire.Insulation90 {
			t.Errorf("insulation %q: %v, %v", text, n, err)
		}
		if err := r.UnmarshalText([]byte(text)); !errors.As(err, &parse) || r != wire.NEC2017 {
			t.Errorf("rule set %q: %v, %v", text, r, err)
		}
	}
	if text, err := wire.Insulation(0).MarshalText(); err != nil || len(text) != 0 {
		t.Errorf("no insulation has text %q, %v", text, err)
	}
	if text, err := wire.RuleSet(0).MarshalText(); err != nil || len(text) != 0 {
		t.Errorf("no rule set has text %q, %v", text, err)
	}
}

func ExampleParseRuleSet() {
	fmt.Println(wire.ParseRuleSet("rv low voltage"))
	// Output: RV low voltage <nil>
}

func ExampleParseInsulation() {
	fmt.Println(wire.ParseInsulation("221 °F"))
	// Output: 105 °C <nil>
}
