package solar

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A RuleSet is the body of rules that a string is held against. It is always
// an input, and a result names it. The zero value is not given.
type RuleSet uint8

// NEC2017 is Article 690 of the National Electrical Code of 2017: the cold
// voltage by 690.7(A), currents by 690.8 and string fuses by 690.9(A). Table
// 690.7(A) was Table 690.7 up to the edition of 2014.
const NEC2017 RuleSet = 1

// String returns "NEC 2017", or "not given".
func (r RuleSet) String() string {
	if r == NEC2017 {
		return "NEC 2017"
	}
	return "not given"
}

// check returns a [*units.RangeError] if r is not a rule set.
func (r RuleSet) check(op string) error {
	if r == NEC2017 {
		return nil
	}
	return &units.RangeError{Op: op, Field: "Rules", Value: r, Allowed: allowed("NEC2017")}
}

// allowed says in words what an input may be, where no bounds do.
type allowed string

// String returns the words.
func (a allowed) String() string { return string(a) }

var (
	necCold = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "690.7(A): the maker's coefficient, and the table only where there is none", Provenance: working.Memory}
	necColdTable = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "Table 690.7(A), crystalline silicon, read in a public transcription", Provenance: working.Read}
	necCurrent = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "690.8(A)(1): 125 % of the short-circuit current", Provenance: working.Memory}
	necContinuous = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "690.8(B) and 690.9(B): another 125 % for conductors and fuses", Provenance: working.Memory}
	necStrings = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "690.9(A): currents from parallel strings", Provenance: working.Memory}
)
