package plan

import "strings"

// allowedInWords returns what a calculator allows, which names its own inputs,
// in the words of the description.
func allowedInWords(allowed string) string {
	return strings.NewReplacer(
		"exactly one of power, current, apparent power and output", "exactly one of power, current and apparent",
		"(Voc times Isc)", "(open_circuit_voltage times short_circuit_current)",
		"(Power by Vmp)", "(power by maximum_power_voltage)",
		"; give Cells if", "; give cells if",
	).Replace(allowed)
}
