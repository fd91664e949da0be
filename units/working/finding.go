package working

import (
	"fmt"
	"slices"
	"strings"

	"example.com/drawbar/units"
)

// Every chapter, plan and quote check that touches wiring, gas or fuel ends
// with these sentences, so that nobody takes arithmetic for an inspection.
const (
	// DeferToCode says who decides.
	DeferToCode = "These numbers are arithmetic on what was put in, not an inspection. " +
		"The codes in force where the vehicle stands, and those who enforce them, decide; " +
		"have a licensed electrician check the work before it is energised."
	// DeferOnVerdict says what a verdict is worth.
	DeferOnVerdict = "A verdict compares one stated number with one computed number, and says which check it passed. " +
		"It says nothing about workmanship, about parts that were not named, or about anything that was not checked."
)

// A Severity is how much a [Finding] matters.
type Severity uint8

// The severities, least first.
const (
	Note    Severity = iota // worth knowing
	Caution                 // will not work as meant, or not for long
	Danger                  // can injure, kill, burn or poison
)

var severityWords = []string{"note", "caution", "danger"}

// String returns "note", "caution" or "danger".
func (s Severity) String() string { return wordFor(severityWords, uint8(s), "Severity") }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (s Severity) MarshalText() ([]byte, error) {
	return marshalWord(severityWords, uint8(s), "Severity")
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError].
func (s *Severity) UnmarshalText(text []byte) error {
	i, err := unmarshalWord(severityWords, text, "a severity")
	if err == nil {
		*s = Severity(i)
	}
	return err
}

// A Finding is what a reader of a result has to know before acting on it.
// Findings follow from the result alone: there is no way to turn one off.
type Finding struct {
	Severity Severity // how much it matters
	Rule     string   // a stable name for programs, such as "drop-above-limit"
	Message  string   // what is wrong, in plain words
	Numbers  []Number // those that decide
	Fix      string   // what to do about it; empty if nothing general can be said
	Source   Source   // of the rule; zero if it is arithmetic
}

// A Number is a value with its name, such as "fuse".
type Number struct {
	Name  string      // in words
	Value units.Value // nil: not given
	Unit  string      // to show Value in, such as "h" or "1" for a count; empty: one that suits its size
}

// numberDigits is how many significant digits a finding shows; the working
// has more.
const numberDigits = 4

// String returns the number as "fuse 60 A".
func (n Number) String() string {
	value := "not given"
	if n.Value != nil {
		value = fmt.Sprintf("%.*v", numberDigits, n.Value)
		if x, unit, err := units.Measure(n.Value, n.Unit); n.Unit != "" && err == nil {
			value = strings.TrimSuffix(units.Significant(x, numberDigits)+" "+unit, " 1")
		}
	}
	return strings.TrimSpace(oneLine(n.Name) + " " + value)
}

// String returns the finding in one paragraph: "danger: the fuse is larger
// than the conductor may carry (fuse 60 A, limit 30 A). Fit a 30 A fuse.
// Rule fuse-above-conductor; NFPA, 70, 2023, 240.4."
func (f Finding) String() string {
	var b strings.Builder
	b.WriteString(f.Severity.String())
	b.WriteString(": ")
	message := strings.TrimRight(oneLine(f.Message), ".")
	if message == "" {
		message = "no message"
	}
	b.WriteString(message)
	if len(f.Numbers) > 0 {
		numbers := make([]string, len(f.Numbers))
		for i, n := range f.Numbers {
			numbers[i] = n.String()
		}
		b.WriteString(" (" + strings.Join(numbers, ", ") + ")")
	}
	b.WriteString(".")
	if fix := strings.TrimRight(oneLine(f.Fix), "."); fix != "" {
		b.WriteString(" " + fix + ".")
	}
	rule, source := oneLine(f.Rule), f.Source.String()
	switch {
	case rule != "" && source != "":
		b.WriteString(" Rule " + rule + "; " + source + ".")
	case rule != "":
		b.WriteString(" Rule " + rule + ".")
	case source != "":
		b.WriteString(" Source: " + source + ".")
	}
	return b.String()
}

// Worst returns the highest severity among f; ok is false if f is empty.
func Worst(f []Finding) (worst Severity, ok bool) {
	for _, g := range f {
		worst = max(worst, g.Severity)
	}
	return worst, len(f) > 0
}

// Sort sorts f in place, the worst first; findings of one severity keep their
// order.
func Sort(f []Finding) {
	slices.SortStableFunc(f, func(a, b Finding) int { return int(b.Severity) - int(a.Severity) })
}
