package working_test

import (
	"errors"
	"fmt"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// The chapter on direct current of any physics book: a 12 V source, 5 mΩ in
// its way.
func ExampleSheet() {
	s := working.NewSheet("Fault at the battery")
	s.Given("V", 12*units.Volt, "V", "open circuit")
	s.Given("R", 5*units.Milliohm, "mΩ", "battery and cable")
	s.Formula("I", (12 * units.Volt).Across(5*units.Milliohm), "A", "Fault current", "1000 * V / R")
	fmt.Println(s.Text())
	fmt.Println(s.Err())
	// Output:
	// Fault at the battery
	// ====================
	//
	// Given
	//   V = 12 V   open circuit
	//   R = 5 mΩ   battery and cable
	//
	// Fault current
	//   I = 1000 · V / R
	//     = 1000 · 12 / 5
	//     = 2400 A
	//   with V in V; R in mΩ
	// <nil>
}

func ExampleNewSheet() {
	s := working.NewSheet("Fault at the battery")
	fmt.Println(s.Title(), len(s.Steps()))
	// Output: Fault at the battery 0
}

// short is the sheet of the examples below.
func short() *working.Sheet {
	s := working.NewSheet("Heat in a lead")
	s.Given("I", 10*units.Ampere, "A", "current")
	s.Given("R", 20*units.Milliohm, "mΩ", "both conductors")
	s.Formula("P", (10 * units.Ampere).Heating(20*units.Milliohm), "W", "Heat", "pow(I, 2) * R / 1000")
	return s
}

func ExampleSheet_Title() {
	fmt.Println(short().Title())
	// Output: Heat in a lead
}

func ExampleSheet_Text() {
	fmt.Println(short().Text())
	// Output:
	// Heat in a lead
	// ==============
	//
	// Given
	//   I = 10 A    current
	//   R = 20 mΩ   both conductors
	//
	// Heat
	//   P = I² · R / 1000
	//     = 10² · 20 / 1000
	//     = 2 W
	//   with I in A; R in mΩ
}

func ExampleSheet_Markdown() {
	fmt.Println(short().Markdown())
	// Output:
	// **Heat in a lead**
	//
	// ```text
	// Given
	//   I = 10 A    current
	//   R = 20 mΩ   both conductors
	//
	// Heat
	//   P = I² · R / 1000
	//     = 10² · 20 / 1000
	//     = 2 W
	//   with I in A; R in mΩ
	// ```
	//
	// ```math
	// \begin{aligned}
	// P & = \frac{{I}^{2} \cdot R}{1000} \\
	// & = \frac{{10}^{2} \cdot 20}{1000} \\
	// & = 2\,\mathrm{W}
	// \end{aligned}
	// ```
}

func ExampleSheet_HTML() {
	s := working.NewSheet("Choice of a fuse")
	s.Choose("Fuse", "10 A", "the next rating above 8 A", working.Source{Title: "Ratings", Provenance: working.Memory})
	fmt.Print(s.HTML())
	// Output:
	// <figure class="working">
	// <figcaption>Choice of a fuse</figcaption>
	// <ol>
	// <li class="choice">
	// <p class="what">Fuse</p>
	// <p class="chosen">10 A</p>
	// <p class="why">the next rating above 8 A</p>
	// <p class="source">Ratings (from memory)</p>
	// </li>
	// </ol>
	// </figure>
}

func ExampleSheet_LaTeX() {
	fmt.Println(short().LaTeX(0))
	// Output: I = 10\,\mathrm{A}
}

func ExampleSheet_MathML() {
	s := short()
	fmt.Println(s.MathML(2) == s.Steps()[2].MathML())
	// Output: true
}

func ExampleSheet_Steps() {
	for _, st := range short().Steps() {
		fmt.Println(st.Kind, st.Name, st.Printed, st.Unit)
		for _, o := range st.Operands {
			fmt.Println("  with", o.Name, o.Printed, o.Unit)
		}
	}
	// Output:
	// given I 10 A
	// given R 20 mΩ
	// formula P 2 W
	//   with I 10 A
	//   with R 20 mΩ
}

func ExampleSheet_Err() {
	s := working.NewSheet("Heat in a lead")
	s.Given("I", 10*units.Ampere, "A", "current")
	s.Formula("P", 100*units.Watt, "W", "Heat", "I^2")
	fmt.Println(s.Err())
	// Output:
	// working "Heat in a lead", step 2 (P): formula "I^2", at "^2": ^ is not a power; write pow(x, y)
}

func ExampleStepError() {
	s := working.NewSheet("Heat in a lead")
	s.Given("I", 10*units.Ampere, "V", "current")
	var mistake *working.StepError
	if errors.As(s.Err(), &mistake) {
		fmt.Println(mistake.Step, mistake.Name, errors.Is(mistake, units.ErrSyntax))
	}
	// Output: 1 I true
}

func ExampleSheet_Given() {
	s := working.NewSheet("")
	s.Given("T", units.Fahrenheit(77), "°C", "air")
	fmt.Println(s.Text())
	// Output:
	// Given
	//   T = 25 °C   air
}

func ExampleSheet_Constant() {
	s := working.NewSheet("")
	s.Constant("η", 85*units.Percent, "%", "charging", working.Source{Provenance: working.CommonPractice})
	fmt.Println(s.Text())
	// Output:
	// Constant
	//   η = 85 %   charging
	//       common practice
}

func ExampleSheet_LookUp() {
	s := working.NewSheet("")
	s.LookUp("k", 0.94*units.One, "1", "correction", working.Lookup{
		Source:  working.Source{Body: "Invented Press", Title: "Handbook of Wire", Place: "table 2", Provenance: working.Read},
		Key:     "33 °C",
		Between: "30 °C and 35 °C",
	})
	fmt.Println(s.Text())
	// Output:
	// Looked up
	//   k = 0.94   correction
	//       Invented Press, Handbook of Wire, table 2; for 33 °C, between 30 °C and
	//       35 °C
}

func ExampleSheet_Formula() {
	s := working.NewSheet("")
	s.Given("θ", 30*units.Degree, "°", "tilt")
	s.Formula("k", 0.5*units.One, "1", "Part of the beam", "sin(θ * deg)")
	fmt.Println(s.Text())
	// Output:
	// Given
	//   θ = 30°   tilt
	//
	// Part of the beam
	//   k = sin(θ · 1°)
	//     = sin(30°)
	//     = 0.5
	//   with θ in °
}

func ExampleSheet_Choose() {
	s := working.NewSheet("")
	s.Choose("Conductor", "8 AWG", "drop governs, heat would allow 10 AWG", working.Source{})
	fmt.Println(s.Text())
	// Output:
	// Choice: Conductor
	//   8 AWG
	//       drop governs, heat would allow 10 AWG
}

func ExampleSheet_Test() {
	s := working.NewSheet("")
	s.Given("I_load", 18.75*units.Ampere, "A", "continuous")
	s.Given("I_limit", 16*units.Ampere, "A", "80 % of the breaker")
	s.Test("Load against the limit", "I_load <= I_limit", false)
	fmt.Println(s.Text())
	// Output:
	// Given
	//   I_load  = 18.75 A   continuous
	//   I_limit = 16 A      80 % of the breaker
	//
	// Test: Load against the limit
	//   I_load ≤ I_limit
	//   18.75 ≤ 16 does not hold
	//   with I_load, I_limit in A
}

func ExampleStep_LaTeX() {
	fmt.Println(short().Steps()[2].LaTeX())
	// Output:
	// \begin{aligned}
	// P & = \frac{{I}^{2} \cdot R}{1000} \\
	// & = \frac{{10}^{2} \cdot 20}{1000} \\
	// & = 2\,\mathrm{W}
	// \end{aligned}
}

func ExampleStep_MathML() {
	fmt.Println(working.Step{Name: "k_1", Printed: "0.5", Unit: "1"}.MathML())
	// Output: <math display="block"><mtable displaystyle="true"><mtr><mtd style="text-align:right"><msub><mi>k</mi><mn>1</mn></msub></mtd><mtd><mo>=</mo></mtd><mtd style="text-align:left"><mrow><mn>0.5</mn></mrow></mtd></mtr></mtable></math>
}

func ExampleKind() {
	fmt.Println(working.GivenStep, working.LookUpStep)
	// Output: given look-up
}

func ExampleLookup() {
	fmt.Println(working.Lookup{Key: "22 A", Row: "25 A"})
	// Output: for 22 A, row 25 A
}

func ExampleSource() {
	fmt.Println(working.Source{Body: "Invented Council", Title: "Wiring rules", Edition: "2020", Place: "4.2", Provenance: working.Memory})
	// Output: Invented Council, Wiring rules, 2020, 4.2 (from memory)
}

func ExampleProvenance() {
	var p working.Provenance
	fmt.Println(p.UnmarshalText([]byte("common practice")), p)
	// Output: <nil> common practice
}

func ExampleFinding() {
	fmt.Println(working.Finding{
		Severity: working.Danger,
		Rule:     "fuse-above-conductor",
		Message:  "the fuse is larger than the conductor may carry",
		Numbers:  []working.Number{{Name: "fuse", Value: 60 * units.Ampere}, {Name: "limit", Value: 30 * units.Ampere}},
		Fix:      "Fit a fuse of 30 A or less",
		Source:   working.Source{Body: "Invented Council", Title: "Wiring rules", Provenance: working.Read},
	})
	// Output: danger: the fuse is larger than the conductor may carry (fuse 60 A, limit 30 A). Fit a fuse of 30 A or less. Rule fuse-above-conductor; Invented Council, Wiring rules.
}

func ExampleNumber() {
	fmt.Println(working.Number{Name: "fuse", Value: 60 * units.Ampere})
	// Output: fuse 60 A
}

func ExampleSeverity() {
	fmt.Println(working.Danger > working.Caution, working.Caution)
	// Output: true caution
}

func ExampleWorst() {
	fmt.Println(working.Worst([]working.Finding{{Severity: working.Note}, {Severity: working.Caution}}))
	fmt.Println(working.Worst(nil))
	// Output:
	// caution true
	// note false
}

func ExampleSort() {
	f := []working.Finding{{Rule: "dim"}, {Severity: working.Danger, Rule: "fire"}, {Rule: "loud"}}
	working.Sort(f)
	for _, g := range f {
		fmt.Println(g.Severity, g.Rule)
	}
	// Output:
	// danger fire
	// note dim
	// note loud
}

func ExampleClaim_Judge() {
	quoted, _ := units.ParsePrinted("2.0 %")
	j, err := working.Claim{
		What:     "voltage drop at the pump",
		Stated:   quoted,
		Computed: 4.684 * units.Percent,
		SafeSide: working.Higher, // who expects a larger drop takes a thicker wire
	}.Judge()
	fmt.Println(j, err)
	// Output: disagree: stated 2.0 %, computed 4.684 %, 57 % low; rule: 5 % (common practice) <nil>
}

func ExampleJudgement() {
	quoted, _ := units.ParsePrinted("60 A")
	j, _ := working.Claim{
		What:     "fuse of the inverter cable",
		Stated:   quoted,
		Computed: 30 * units.Ampere,
		SafeSide: working.Lower,
		Findings: []working.Finding{{Severity: working.Danger, Rule: "fuse-above-conductor"}},
	}.Judge()
	fmt.Println(j.Verdict)
	fmt.Println(j)
	// Output:
	// unsafe
	// unsafe by rule fuse-above-conductor: stated 60 A, computed 30 A, 100 % high; rule: 5 % (common practice)
}

func ExampleVerdict() {
	fmt.Println(working.NotStated, "/", working.AgreeConservative)
	// Output: not stated / agree, conservative
}

func ExampleSide() {
	fmt.Println(working.Neither, working.Higher, working.Lower)
	// Output: neither higher lower
}
