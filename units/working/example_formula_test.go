package working_test

import (
	"errors"
	"fmt"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

func ExampleParseFormula() {
	f, err := working.ParseFormula("R_20 * (1 + α*(T - 20))")
	fmt.Println(f, err)
	fmt.Println(f.Text())
	_, err = working.ParseFormula("5% of V")
	fmt.Println(err)
	// Output:
	// R_20 * (1 + α * (T - 20)) <nil>
	// R_20 · (1 + α · (T - 20))
	// formula "5% of V", at "% of V": % is not per cent; write x * pct
}

func ExampleFormulaError() {
	_, err := working.Evaluate("V / R", map[string]float64{"V": 12, "R": 0})
	var fe *working.FormulaError
	if errors.As(err, &fe) {
		fmt.Println(fe.Offset, fe.Reason, errors.Is(err, units.ErrRange))
	}
	// Output: 2 division by zero true
}

func ExampleFormula_String() {
	f, _ := working.ParseFormula("((I)*(R))/1000")
	fmt.Println(f)
	// Output: I * R / 1000
}

func ExampleFormula_Text() {
	f, _ := working.ParseFormula("a - -b / pow(c, 2)")
	fmt.Println(f.Text())
	// Output: a - (-b / c²)
}

func ExampleFormula_LaTeX() {
	f, _ := working.ParseFormula("ΔV / V_source / pct")
	fmt.Println(f.LaTeX())
	// Output: \frac{\frac{\Delta V}{V_{\mathrm{source}}}}{1\,\%}
}

func ExampleFormula_MathML() {
	f, _ := working.ParseFormula("I * R_20")
	fmt.Println(f.MathML())
	// Output: <math display="block"><mrow><mi>I</mi><mo>⋅</mo><msub><mi>R</mi><mn>20</mn></msub></mrow></math>
}

func ExampleFormula_Names() {
	f, _ := working.ParseFormula("R_20 * (1 + α*(T - 20))")
	fmt.Println(f.Names())
	// Output: [R_20 α T]
}

func ExampleFormula_IsComparison() {
	f, _ := working.ParseFormula("I_load <= I_limit")
	fmt.Println(f.IsComparison())
	// Output: true
}

func ExampleFormula_Evaluate() {
	f, _ := working.ParseFormula("sqrt(pow(R, 2) + pow(X, 2))")
	fmt.Println(f.Evaluate(map[string]float64{"R": 3, "X": 4}))
	// Output: 5 <nil>
}

func ExampleFormula_Holds() {
	f, _ := working.ParseFormula("I <= 15")
	fmt.Println(f.Holds(map[string]float64{"I": 15.000000000000002}))
	fmt.Println(f.Holds(map[string]float64{"I": 15.0004}))
	// Output:
	// true <nil>
	// false <nil>
}

func ExampleEvaluate() {
	fmt.Println(working.Evaluate("I * R / 1000", map[string]float64{"I": 20, "R": 25}))
	// Output: 0.5 <nil>
}

func ExampleHolds() {
	fmt.Println(working.Holds("2*I > 30", map[string]float64{"I": 20}))
	// Output: true <nil>
}
