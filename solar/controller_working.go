package solar

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the fit came about, step by step.
func (f Fit) Working() *working.Sheet {
	s := working.NewSheet("Array on a controller")
	c := f.Hookup.Controller
	f.Cold.steps(s)
	s.Given("V_limit", c.InputVoltage, "V", "the most that the input withstands")
	s.Test("cold string against the input", "V_cold <= V_limit", !units.Exceeds(f.Cold.Voltage, c.InputVoltage))
	f.Currents.steps(s)
	if limit, ok := c.InputCurrent.Get(); ok {
		s.Given("I_in_limit", limit, "A", "the most short-circuit current at the input")
		s.Test("short-circuit current against the input", "I_all <= I_in_limit", !units.Exceeds(f.Currents.ShortCircuit, limit))
	}
	f.outputSteps(s)
	return s
}

func (f Fit) outputSteps(s *working.Sheet) {
	h := f.Hookup
	s.Given("V_bank", h.Bank, "V", "bank while it is charged")
	s.Given("V_mp", h.Array.Panel.Vmp, "V", "voltage of a panel at maximum power")
	s.Formula("V_mp_string", f.Vmp, "V", "voltage of a string at maximum power", "n * V_mp")
	s.Test("string against the bank", "V_mp_string > V_bank", units.Exceeds(f.Vmp, h.Bank))
	if hot, ok := f.HotVmp.Get(); ok {
		s.Given("T_hot", h.Hottest, "°C", "hottest cells")
		s.Choose("voltage in the heat", "as many volts a kelvin as the open-circuit voltage", "datasheets seldom have a coefficient of their own for it", sameVolts)
		s.Formula("V_mp_hot", hot, "V", "voltage of a hot string at maximum power", "V_mp_string + β/100 * V_25 * (T_hot - T_test)")
		s.Test("hot string against the bank", "V_mp_hot > V_bank", units.Exceeds(hot, h.Bank))
	}
	s.Given("P_panel", h.Array.Panel.Power, "W", "nameplate power of a panel")
	s.Formula("P", f.Peak, "W", "nameplate power of the array", "n * m * P_panel")
	if h.Controller.Kind == PWM {
		s.Choose("controller", "PWM", "the panels are tied to the bank and give about their short-circuit current", tiedToBank)
	} else {
		s.Given("η", f.Efficiency, "%", "efficiency of the controller")
		s.Formula("I_offered", f.Offered, "A", "into the bank in full sun, not limited", "η/100 * P / V_bank")
	}
	limit, limited := h.Controller.Output.Get()
	if limited {
		s.Given("I_limit", limit, "A", "output limit of the controller")
	}
	bank := "I_offered"
	if h.Controller.Kind == PWM {
		bank = "I_all"
	}
	if limited && h.Controller.Kind == MPPT {
		bank = "I_bank"
		s.Formula(bank, f.Charging, "A", "into the bank in full sun", "min(I_offered, I_limit)")
	}
	s.Formula("P_bank", f.Power, "W", "into the bank in full sun, no more than the panels have", "min("+bank+" * V_bank, P)")
	const what = "required of conductors and fuse to the bank"
	switch {
	case h.Controller.Kind == PWM && limited:
		s.Formula("I_out", f.OutputRequired, "A", what+", no less than on the array's side", "max(I_required, k_continuous * max(I_all, I_limit))")
	case h.Controller.Kind == PWM:
		s.Formula("I_out", f.OutputRequired, "A", what+", as on the array's side", "k_continuous * k_continuous * I_all")
	case limited:
		s.Formula("I_out", f.OutputRequired, "A", what, "k_continuous * max("+bank+", I_limit)")
	default:
		s.Formula("I_out", f.OutputRequired, "A", what, "k_continuous * "+bank)
	}
}

var (
	inputLimit = working.Source{Title: "limits of the controller, as given", Provenance: working.Derived}
	aboveBank  = working.Source{Title: "a current flows into a bank only from a higher voltage", Provenance: working.Derived}
	tiedToBank = working.Source{Title: "a switching controller ties the panels to the bank", Provenance: working.Derived}
	sameVolts  = working.Source{Title: "a hot panel loses as many volts at its maximum power as with its circuit open", Provenance: working.CommonPractice}
	nearBank   = working.Source{Title: "fuse by the source that can burn the conductor", Provenance: working.CommonPractice}
)

// Findings returns what is wrong, missing or worth knowing, worst first: the
// string against the input, the numbers of the panel against each other, the
// currents against their limits, the string against the bank, what the kind of
// controller loses, the strings' fuses, and always where the fuse towards the
// bank belongs.
func (f Fit) Findings() []working.Finding {
	var list []working.Finding
	if x := f.Hookup.Controller.InputVoltage; units.Exceeds(f.Cold.Voltage, x) {
		list = append(list, f.aboveInput(x))
	}
	list = append(list, f.Hookup.Array.Panel.findings()...)
	list = append(list, f.currentFindings()...)
	list = append(list, f.lowFindings()...)
	list = append(list, f.outputFindings()...)
	list = append(list, f.Currents.Findings()...)
	list = append(list, f.Cold.Findings()...)
	list = append(list, working.Finding{
		Severity: working.Note, Rule: "fuse-by-the-bank", Source: nearBank,
		Message: "The conductor between controller and bank has two sources. A short in it is fed by the bank with far more than the controller gives.",
		Numbers: []working.Number{{Name: "required", Value: f.OutputRequired}},
		Fix:     "Put the fuse of that conductor by the bank; check conductor and fuse against the code that applies.",
	})
	working.Sort(list)
	return list
}

// aboveInput says that a string is above what the input withstands.
func (f Fit) aboveInput(limit units.Voltage) working.Finding {
	numbers := []working.Number{{Name: "on the coldest morning", Value: f.Cold.Voltage}, {Name: "limit", Value: limit},
		{Name: "at 25 °C", Value: f.Cold.Standard}}
	if v, ok := f.Cold.ByTable.Get(); ok && f.Cold.Governs == ByCoefficient {
		numbers = append(numbers, working.Number{Name: "by the table", Value: v})
	}
	source := necCold
	if f.Cold.Governs == ByTable {
		source = necColdTable
	}
	return working.Finding{
		Severity: working.Danger, Rule: "string-above-controller", Source: source, Numbers: numbers,
		Message: "The open-circuit voltage of a string is above what the controller's input withstands: it can fail, and burn, at a cold sunrise.",
		Fix:     "Put fewer panels in series, or use a controller for a higher voltage.",
	}
}

func (f Fit) currentFindings() []working.Finding {
	limit, ok := f.Hookup.Controller.InputCurrent.Get()
	array := working.Number{Name: "short-circuit current", Value: f.Currents.ShortCircuit}
	most := working.Number{Name: "limit", Value: limit}
	switch {
	case !ok:
		return []working.Finding{{
			Severity: working.Note, Rule: "input-current-not-stated", Source: inputLimit, Numbers: []working.Number{array},
			Message: "How much short-circuit current the controller's input withstands is not stated, so it is not judged.",
			Fix:     "Look for it in the datasheet.",
		}}
	case units.Exceeds(f.Currents.ShortCircuit, limit):
		return []working.Finding{{
			Severity: working.Caution, Rule: "input-current-above-limit", Source: inputLimit, Numbers: []working.Number{array, most},
			Message: "The short-circuit current of the array is above what the controller's input withstands.",
			Fix:     "Use fewer strings, or a controller for a higher current.",
		}}
	case units.Exceeds(f.Currents.Maximum, limit):
		return []working.Finding{{
			Severity: working.Note, Rule: "input-current-near-limit", Source: necCurrent,
			Numbers: []working.Number{array, {Name: "125 %", Value: f.Currents.Maximum}, most},
			Message: "In sun brighter than the rating the array can give more than the controller's input withstands.",
			Fix:     "Ask the maker whether the limit already has this margin.",
		}}
	}
	return nil
}

// lowFindings looks at whether a string charges the bank, and how far that is
// judged.
func (f Fit) lowFindings() []working.Finding {
	h := f.Hookup
	standard, bank := working.Number{Name: "string at 25 °C", Value: f.Vmp}, working.Number{Name: "bank", Value: h.Bank}
	hot, judged := f.HotVmp.Get()
	switch {
	case !units.Exceeds(f.Vmp, h.Bank):
		return []working.Finding{{
			Severity: working.Caution, Rule: "string-below-bank", Source: aboveBank,
			Numbers: []working.Number{{Name: "string at maximum power", Value: f.Vmp}, bank},
			Message: "A string at its maximum power is not above the voltage of the bank: it charges little or nothing, and the currents here are too high.",
			Fix:     "Put more panels in series.",
		}}
	case judged && !units.Exceeds(hot, h.Bank):
		return []working.Finding{{
			Severity: working.Caution, Rule: "hot-string-below-bank", Source: sameVolts,
			Numbers: []working.Number{{Name: "hot string at maximum power", Value: hot}, {Name: "cells", Value: h.Hottest}, standard, bank},
			Message: "A string with hot cells is not above the voltage of the bank at its maximum power: in the heat it charges little or nothing.",
			Fix:     "Put more panels in series, if the coldest morning allows it.",
		}}
	case judged:
		return nil
	case h.Hottest.IsSet():
		return []working.Finding{{
			Severity: working.Note, Rule: "hot-string-not-judged", Source: sameVolts,
			Numbers: []working.Number{standard, bank, {Name: "cells", Value: h.Hottest}},
			Message: "Whether a string charges the bank is judged with cells at 25 °C only: the voltage coefficient is not given. Hot cells have less voltage.",
			Fix:     "Give VoltageCoefficient from the datasheet.",
		}}
	}
	return []working.Finding{{
		Severity: working.Note, Rule: "hottest-not-stated", Source: sameVolts,
		Numbers: []working.Number{standard, bank},
		Message: "Whether a string charges the bank is judged with cells at 25 °C only: how hot they get is not stated. Hot cells have less voltage.",
		Fix:     "State the temperature of the cells in full sun on the hottest day.",
	}}
}

func (f Fit) outputFindings() (list []working.Finding) {
	c := f.Hookup.Controller
	bank := working.Number{Name: "bank", Value: f.Hookup.Bank}
	offered := f.Offered
	if c.Kind == PWM {
		offered = f.Currents.Maximum
	}
	limit, ok := c.Output.Get()
	if !ok {
		list = append(list, working.Finding{
			Severity: working.Caution, Rule: "output-limit-not-stated", Source: inputLimit,
			Numbers: []working.Number{{Name: "offered", Value: offered}, bank},
			Message: "The output limit of the controller is not stated: whether it carries the array, and what its conductor must carry at most, is not judged.",
			Fix:     "Look for it in the datasheet, and size conductor and fuse to the bank for it.",
		})
	} else if units.Exceeds(offered, limit) {
		list = append(list, f.overOutput(offered, limit))
	}
	if c.Kind == PWM && units.Exceeds(f.Peak, f.Power) {
		list = append(list, working.Finding{
			Severity: working.Note, Rule: "panels-tied-to-bank", Source: tiedToBank,
			Numbers: []working.Number{{Name: "nameplate", Value: f.Peak}, {Name: "into the bank", Value: f.Power}, bank},
			Message: "A PWM controller passes the panels' current at the voltage of the bank; their voltage above it is lost. Watts divided by the bank's volts is not the current.",
			Fix:     "For panels whose voltage is far above the bank's, use an MPPT controller.",
		})
	}
	return list
}

// overOutput says that the array offers more than the controller passes on.
func (f Fit) overOutput(offered, limit units.Current) working.Finding {
	numbers := []working.Number{{Name: "offered", Value: offered}, {Name: "limit", Value: limit}}
	if f.Hookup.Controller.Kind == PWM {
		return working.Finding{
			Severity: working.Caution, Rule: "current-above-controller", Source: inputLimit, Numbers: numbers,
			Message: "The array gives more current than the controller may carry, and a PWM controller does not convert the excess away.",
			Fix:     "Use fewer strings, or a controller for a higher current.",
		}
	}
	return working.Finding{
		Severity: working.Note, Rule: "output-clipped", Source: inputLimit, Numbers: numbers,
		Message: "In full sun the array offers more than the controller passes on; the excess is lost in the best hours.",
		Fix:     "Nothing, if the hours of full sun are few; else a larger controller.",
	}
}
