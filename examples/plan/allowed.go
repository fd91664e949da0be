package plan

import "strings"

// allowedInWords returns what a calculator allows, which names its own inputs,
// in the words of the description.
func allowedInWords(allowed string) string {
	return strings.NewReplacer(
		"exactly one of Power, Current, Apparent and Output", "exactly one of power, current and apparent",
		"either Hours, 0 h to 24 h, or Windows", "either hours, 0 h to 24 h, or windows",
		"apart from Windows[", "apart from windows[",
		"(Voc times Isc)", "(open_circuit_voltage times short_circuit_current)",
		"(Power by Vmp)", "(power by maximum_power_voltage)",
		"; give Cells if", "; give cells if",
	).Replace(allowed)
}
