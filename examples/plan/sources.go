package plan

import "example.com/drawbar/units/working"

// common is a fact of the trade.
func common(title string) working.Source {
	return working.Source{Title: title, Provenance: working.CommonPractice}
}

// physics is what can be derived.
func physics(title string) working.Source {
	return working.Source{Title: title, Provenance: working.Derived}
}
