package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

var (
	coreSource = working.Source{Body: "IEE", Title: "BS 7671, Requirements for electrical installations",
		Place: "Tables 43.1 and 54.2 to 54.4, as public articles quote them", Provenance: working.Read}
	coreFormula = working.Source{Body: "IEC", Title: "60364-5-54, Low-voltage electrical installations",
		Place: "annex A, constants of the factor k", Provenance: working.Memory}
)

// Working returns how the short circuit was held against the conductor, step
// by step.
func (w Withstand) Working() *working.Sheet {
	s := working.NewSheet("Heat of a short circuit in " + w.ShortTime.Size.String() + " " + w.ShortTime.Metal.String())
	s.Given("I", w.ShortTime.Current, "A", "fault current in the conductor")
	w.steps(s, "I")
	return s
}

// steps appends the steps from the current named.
func (w Withstand) steps(s *working.Sheet, current string) {
	x := w.ShortTime
	if x.Core != 0 && x.Metal == Copper {
		s.LookUp("k", w.K, "1", "factor of the conductor, in A·√s/mm²", working.Lookup{Source: coreSource,
			Key: x.Core.String(), Row: x.Initial.String() + " to " + x.Final.String()})
	} else {
		k, zero := x.Metal.adiabatic()
		s.Given("T_initial", x.Initial, "°C", "metal before the fault")
		s.Given("T_final", x.Final, "°C", "metal after it, at most")
		s.Constant("k_metal", units.Ratio(k), "1", "constant of "+x.Metal.String()+", in A·√s/mm²", coreFormula)
		s.Constant("beta", units.Ratio(zero), "1", "how far below 0 °C its resistance would vanish", coreFormula)
		s.Formula("k", w.K, "1", "factor of the conductor, in A·√s/mm²",
			"k_metal * sqrt(ln((beta + T_final) / (beta + T_initial)))")
	}
	s.Given("S", w.Area, "mm²", "metal cross-section")
	s.Formula("W_bears", w.Bears, "A²s", "what the conductor bears", "pow(k * S, 2)")
	if longest, ok := w.Longest.Get(); ok {
		s.Formula("t_longest", longest, "s", "how long it bears the fault", "W_bears / pow("+current+", 2)")
	} else {
		s.Choose("how long it bears the fault", "more than 5 s", "the method ends there", coreSource)
	}
	if t, ok := x.Time.Get(); ok {
		s.Given("t", t, "s", "how long the fault lasts")
		s.Formula("W_let", w.Let, "A²s", "what is let through", "pow("+current+", 2) * t")
		s.Formula("S_min", w.MinArea, "mm²", "least cross-section that bears it", "sqrt(W_let) / k")
		s.Test("heat against what the conductor bears", "W_let <= W_bears", !units.Exceeds(w.Let, w.Bears))
	}
}

// Findings returns whether the conductor is damaged, and what the method
// leaves out.
func (w Withstand) Findings() []working.Finding {
	if units.Exceeds(w.Let, w.Bears) {
		return []working.Finding{w.damage()}
	}
	numbers := []working.Number{{Name: "bears", Value: w.Bears}}
	if w.ShortTime.Time.IsSet() {
		numbers = append(numbers, working.Number{Name: "let through", Value: w.Let})
	}
	return []working.Finding{{
		Severity: working.Note, Rule: "adiabatic-method", Source: coreFormula, Numbers: numbers,
		Message: "All heat is taken to stay in the metal for the time of the fault. Joints and terminals fail before the conductor does.",
		Fix:     "Take the time from the curve of the device at the smallest fault, not from its rating.",
	}}
}

// damage says that the insulation is destroyed before the device opens.
func (w Withstand) damage() working.Finding {
	f := working.Finding{
		Severity: working.Danger, Rule: "withstand-exceeded", Source: coreFormula,
		Numbers: []working.Number{{Name: "let through", Value: w.Let}, {Name: "bears", Value: w.Bears},
			{Name: "least cross-section", Value: w.MinArea}},
		Message: "The short circuit lasts longer than the insulation bears: it is destroyed, and may burn, before the device opens.",
		Fix:     "Use a faster or smaller device, or a larger conductor.",
	}
	if w.ShortTime.Core != 0 {
		f.Source = coreSource
	}
	return f
}
