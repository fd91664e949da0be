package unitstest_test

import (
	"math"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// table is an invented source.
var table = working.Source{Title: "an invented table", Provenance: working.CommonPractice}

// drop returns a sheet with nothing wrong: 20 A through a loop of 2 × 4.572 m
// at 3.28 mΩ/m.
func drop() *working.Sheet {
	const (
		current = 20 * units.Ampere
		oneWay  = 15 * units.Foot
		perM    = 3.28 * units.Milliohm
		loop    = 3.28e-3 * 2 * 4.572 * units.Ohm
		lost    = 20 * 3.28e-3 * 2 * 4.572 * units.Volt
	)
	s := working.NewSheet("Voltage drop")
	s.Given("I", current, "A", "current")                                            // step 1
	s.Given("L", oneWay, "m", "one-way length")                                      // 2
	s.LookUp("r", perM, "mΩ", "resistance of a metre", working.Lookup{Source: table, // 3
		Key: "10 AWG"})
	s.Constant("n", 2*units.One, "1", "there and back", table)       // 4
	s.Formula("R", loop, "Ω", "loop", "n * L * r/1000")              // 5
	s.Formula("ΔV", lost, "V", "drop", "I * R")                      // 6
	s.Given("V_max", 0.7*units.Volt, "V", "allowed")                 // 7
	s.Test("drop against what is allowed", "ΔV <= V_max", true)      // 8
	s.Choose("size", "10 AWG", "the smallest that is enough", table) // 9
	return s
}

func TestCheckSheetAccepts(t *testing.T) {
	for name, s := range map[string]*working.Sheet{
		"drop": drop(),
		"look-up alone": sheet(func(s *working.Sheet) {
			s.LookUp("r", 3.28*units.Milliohm, "mΩ", "resistance of a metre", working.Lookup{Source: table, Key: "10 AWG"})
		}),
		// 0.3 V is not three times 0.1 V to the last bit.
		"difference of equals": sheet(func(s *working.Sheet) {
			s.Given("V_a", 0.1*units.Volt, "V", "each of three")
			s.Given("V_b", 0.3*units.Volt, "V", "all three")
			s.Formula("ΔV", 0*units.Volt, "V", "difference", "3*V_a - V_b")
		}),
		"difference of settled equals": sheet(func(s *working.Sheet) {
			s.Given("V_a", 27*units.Volt, "V", "one")
			s.Given("V_b", 26.99999996*units.Volt, "V", "the other")
			s.Formula("ΔV", 0*units.Volt, "V", "difference", "V_a - V_b")
		}),
		// 22.1749999764 settles to 22.175, which rounds to 22.18.
		"a tie once settled": sheet(func(s *working.Sheet) {
			s.Given("V", 22.17499997641432*units.Volt, "V", "one")
			s.Formula("V_all", 22.17499997641432*units.Volt, "V", "all", "1 * V")
		}),
		"cancelled": sheet(func(s *working.Sheet) {
			a, b := 1.0000001234567891, 1.0000001
			s.Given("a", units.Ratio(a), "1", "")
			s.Given("b", units.Ratio(b), "1", "")
			s.Formula("d", units.Ratio((a-b)+1e-17), "1", "difference", "a - b")
		}),
		"percent": sheet(func(s *working.Sheet) {
			s.Given("η", 90*units.Percent, "%", "efficiency")
			s.Given("P", 100*units.Watt, "W", "load")
			s.Formula("P_in", units.Power(100/0.9), "W", "taken", "P / (η*pct)")
		}),
		"zero": sheet(func(s *working.Sheet) {
			s.Given("I", 0*units.Ampere, "A", "current")
			s.Formula("V", 0*units.Volt, "V", "drop", "2 * I")
		}),
		"temperature": sheet(func(s *working.Sheet) {
			s.Given("T", units.Celsius(25), "°C", "air")
			s.Given("ΔT", 40*units.Kelvin, "K", "rise")
			s.Formula("T_metal", units.Celsius(65), "°C", "metal", "T + ΔT")
		}),
	} {
		t.Run(name, func(t *testing.T) {
			record(t, func(tb testing.TB) { unitstest.CheckSheet(tb, s) }).expect(t, "")
		})
	}
}

func sheet(steps func(*working.Sheet)) *working.Sheet {
	s := working.NewSheet("Test")
	steps(s)
	return s
}

func TestCheckSheetRejects(t *testing.T) {
	for _, c := range []struct {
		name  string
		sheet *working.Sheet
		want  string // in the first failure
	}{
		{"no sheet", nil, "there is no sheet"},
		{"no title", working.NewSheet(" "), "no title"},
		{"empty", working.NewSheet("Empty"), "nothing is worked out"},
		{"only inputs", sheet(func(s *working.Sheet) { s.Given("I", 2*units.Ampere, "A", "") }), "nothing is worked out"},
		{"the result repeated", sheet(func(s *working.Sheet) {
			s.Given("I", 2*units.Ampere, "A", "")
			s.Formula("J", 2*units.Ampere, "A", "", "(I)")
		}), "nothing is worked out"},
		{"a number instead of a formula", sheet(func(s *working.Sheet) {
			s.Formula("J", 2*units.Ampere, "A", "", "4 / 2")
		}), "nothing is worked out"},
		{"nothing but an unreadable formula", sheet(func(s *working.Sheet) {
			s.Formula("J", 2*units.Ampere, "A", "", "2 ^ 1")
		}), ""},
		{"wrong value", sheet(func(s *working.Sheet) {
			s.Given("I", 2*units.Ampere, "A", "")
			s.Formula("J", 5*units.Ampere, "A", "", "2 * I")
		}), ""},
		{"unknown symbol", sheet(func(s *working.Sheet) { s.Formula("J", 5*units.Ampere, "A", "", "2 * I") }), ""},
		{"symbol of a later step", sheet(func(s *working.Sheet) {
			s.Formula("J", 4*units.Ampere, "A", "", "2 * I")
			s.Given("I", 2*units.Ampere, "A", "")
		}), ""},
		{"unit of another quantity", sheet(func(s *working.Sheet) { s.Given("I", 2*units.Ampere, "V", "") }), ""},
		{"NaN", sheet(func(s *working.Sheet) { s.Given("I", units.Current(math.NaN()), "A", "") }), ""},
		{"declared twice", sheet(func(s *working.Sheet) {
			s.Given("I", 2*units.Ampere, "A", "")
			s.Given("I", 2*units.Ampere, "A", "")
		}), ""},
		{"comparison the other way", sheet(func(s *working.Sheet) {
			s.Given("I", 2*units.Ampere, "A", "")
			s.Test("", "I > 3", true)
		}), ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := record(t, func(tb testing.TB) { unitstest.CheckSheet(tb, c.sheet) })
			if len(r.failures) == 0 || !strings.Contains(r.failures[0], c.want) {
				t.Errorf("failures %q, want %q in the first", r.failures, c.want)
			}
		})
	}
}

// What a sheet itself would not record, or not see.
func TestCheckStepsRejects(t *testing.T) {
	const r, n, lost, test = 2, 3, 5, 7 // indices of steps of drop
	for _, c := range []struct {
		name   string
		change func(s []working.Step)
		want   string
	}{
		{"nothing", func([]working.Step) {}, ""},
		// Values.
		{"value off by 2e-9", func(s []working.Step) { s[lost].Value *= 1 + 2e-9 }, "step 6 (formula ΔV): I * R gives"},
		{"formula without a factor", func(s []working.Step) { s[lost].Formula = "I + R" }, "I + R gives"},
		{"formula unreadable", func(s []working.Step) { s[lost].Formula = "I ^ R" }, "formula"},
		{"symbol unknown", func(s []working.Step) { s[lost].Formula = "I * R * Z / Z" }, "Z has no value"},
		{"symbol of its own step", func(s []working.Step) { s[lost].Formula = "ΔV * 1" }, "ΔV has no value"},
		{"value infinite", func(s []working.Step) { s[6].Value = math.Inf(1) }, "the value is +Inf"},
		// Print.
		{"wrong last digit", func(s []working.Step) { s[lost].Printed = "0.5997" }, "printed as 0.5997, the value is 0.5998"},
		{"other number", func(s []working.Step) { s[lost].Printed = "5.998" }, "printed as 5.998"},
		{"no number", func(s []working.Step) { s[lost].Printed = "?" }, `"?" is no number`},
		{"resolution too coarse for the digits", func(s []working.Step) { s[lost].Resolution = 0.001 }, "digits beyond its resolution"},
		{"resolution finer than the rounding", func(s []working.Step) { s[lost].Resolution = 1e-5 }, "printed as 0.5998"},
		{"no resolution", func(s []working.Step) { s[lost].Resolution = 0 }, "the resolution of 0.5998 is 0"},
		{"negative resolution", func(s []working.Step) { s[lost].Resolution = -1e-4 }, "the resolution of 0.5998 is -0.0001"},
		// Operands.
		{"operand missing", func(s []working.Step) { s[lost].Operands = s[lost].Operands[:1] }, "on the operands as printed: "},
		{"operand no number", func(s []working.Step) { s[lost].Operands[0].Printed = "" }, `operand I: "" is no number`},
		{"operand not as declared", func(s []working.Step) { s[lost].Operands[0].Value = 20.0000001 }, "operand I is 20.0000001 A, declared as 20 A"},
		{"operand in another unit", func(s []working.Step) { s[lost].Operands[0].Unit = "mA" }, "operand I is 20 mA, declared as 20 A"},
		{"operand without guard digits", func(s []working.Step) { s[lost].Operands[1].Printed = "0.03" }, "operand R is printed as 0.03, too few digits"},
		// Comparisons.
		{"comparison the other way", func(s []working.Step) { s[test].Holds = false }, "ΔV <= V_max: holds is true, and the step says false"},
		{"nothing compared", func(s []working.Step) { s[test].Formula = "ΔV" }, "nothing is compared"},
		// Declarations.
		{"declared again", func(s []working.Step) { s[6].Name = "I" }, "declared again"},
		{"constant without source", func(s []working.Step) { s[n].Source = working.Source{} }, "step 4 (constant n): no source"},
		{"look-up without source", func(s []working.Step) { s[r].Source = working.Source{} }, "step 3 (look-up r): no source"},
	} {
		t.Run(c.name, func(t *testing.T) {
			steps := drop().Steps()
			c.change(steps)
			got := record(t, func(tb testing.TB) { unitstest.CheckSteps(tb, "Voltage drop", steps) })
			if c.want == "" {
				got.expect(t, "")
				return
			}
			if len(got.failures) == 0 || !strings.Contains(got.failures[0], c.want) {
				t.Errorf("failures %q, want %q in the first", got.failures, c.want)
			}
		})
	}
}

// Two digits more than the result has are not enough where operands cancel.
func TestCheckStepsRejectsLostDigits(t *testing.T) {
	s := sheet(func(s *working.Sheet) {
		s.Given("a", 1000.001*units.Volt, "V", "")
		s.Given("b", 1000*units.Volt, "V", "")
		s.Formula("d", units.Minus(1000.001*units.Volt, 1000*units.Volt), "V", "", "a - b")
	})
	steps := s.Steps()
	record(t, func(tb testing.TB) { unitstest.CheckSteps(tb, "Test", steps) }).expect(t, "")
	steps[2].Operands[0].Printed = "1000.002"
	record(t, func(tb testing.TB) { unitstest.CheckSteps(tb, "Test", steps) }).
		expect(t, "a - b on the operands as printed gives 0.00199999999995270")
}
