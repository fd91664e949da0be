package wire

import (
	"strings"

	"example.com/drawbar/units"
)

// A RuleSet is the body of rules that a circuit is held against. It is always
// an input, and a result names it; no function picks the kindest. Where
// editions differ, the edition is part of the name. The zero value is not
// given.
type RuleSet uint8

const (
	// RVLowVoltage is for the 12 V wiring of a recreational vehicle. Article
	// 551 leaves it to a low-voltage standard that was not at hand; what is
	// used is the table of NEC 552.10(E)(1) for park trailers, from memory, up
	// to 10 AWG. That table ends there: thicker single cables are held against
	// the free-air ampacity of 33 CFR 183.425, as is common practice.
	RVLowVoltage RuleSet = iota + 1
	// NEC2017 is Table 310.15(B)(16) of the National Electrical Code of 2017
	// (310.16 in later editions), whose values are those of 2011 on.
	NEC2017
	// Boat33CFR is 33 CFR 183.425 and 183.455 for boats, a free-air table: for
	// circuits below 50 V unless Installation.System says otherwise. It is the
	// wrong rule for a wire in the wall of a vehicle.
	Boat33CFR
	// NEC2008 is Table 310.16 of the National Electrical Code as it stood from
	// the 1990s to 2008. It is for judging what was built by it: 14 and 12 AWG
	// with 60 °C insulation had 20 and 25 A, which 2011 took back.
	NEC2008
	// NEC2023 is the National Electrical Code of 2023: the ampacities of 2011,
	// and 10 A a rating of circuit breakers too.
	NEC2023
)

// String returns the name of the rule set.
func (r RuleSet) String() string {
	switch r {
	case RVLowVoltage:
		return "RV low voltage"
	case NEC2017:
		return "NEC 2017"
	case Boat33CFR:
		return "33 CFR 183"
	case NEC2008:
		return "NEC 2008"
	case NEC2023:
		return "NEC 2023"
	}
	return "not given"
}

// isNEC reports whether r is an edition of the National Electrical Code.
func (r RuleSet) isNEC() bool { return r == NEC2017 || r == NEC2008 || r == NEC2023 }

// MarshalText returns what String does, and empty text for the zero value.
func (r RuleSet) MarshalText() ([]byte, error) {
	if r == 0 {
		return []byte{}, nil
	}
	return []byte(r.String()), nil
}

// UnmarshalText reads what [ParseRuleSet] reads, with the same errors, which
// leave r alone; empty text is the zero value.
func (r *RuleSet) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*r = 0
		return nil
	}
	set, err := ParseRuleSet(string(text))
	if err == nil {
		*r = set
	}
	return err
}

// ParseRuleSet reads the name of a rule set as String gives it, in any letter
// case. Every error has concrete type [*units.ParseError].
func ParseRuleSet(s string) (RuleSet, error) {
	for set := RVLowVoltage; set <= NEC2023; set++ {
		if strings.EqualFold(set.String(), strings.TrimSpace(s)) {
			return set, nil
		}
	}
	names := make([]string, 0, NEC2023)
	for set := RVLowVoltage; set <= NEC2023; set++ {
		names = append(names, set.String())
	}
	return 0, &units.ParseError{Input: s, Want: "rule set", Reason: "want one of " + strings.Join(names, ", ")}
}

// check returns a [*units.RangeError] if r is not a rule set.
func (r RuleSet) check(op string) error {
	if r >= RVLowVoltage && r <= NEC2023 {
		return nil
	}
	return &units.RangeError{Op: op, Field: "Rules", Value: r, Allowed: allowedText("RVLowVoltage, NEC2008, NEC2017, NEC2023 or Boat33CFR")}
}

// allowedText is what is allowed, in words.
type allowedText string

// String returns the words.
func (a allowedText) String() string { return string(a) }
