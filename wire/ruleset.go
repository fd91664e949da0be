package wire

import (
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A RuleSet is the body of rules that a circuit is held against. It is always
// an input, and a result names it; no function picks the kindest. The zero
// value is not given.
type RuleSet uint8

const (
	// RVLowVoltage is for the 12 V wiring of a recreational vehicle. Article
	// 551 leaves it to a low-voltage standard that was not at hand; what is
	// used is the table of NEC 552.10(E)(1) for park trailers, from memory, up
	// to 10 AWG. That table ends there: thicker single cables are held against
	// the free-air ampacity of 33 CFR 183.425, as is common practice.
	RVLowVoltage RuleSet = iota + 1
	// NEC2017 is Table 310.15(B)(16) of the National Electrical Code of 2017
	// (310.16 in later editions), whose copper values are those of 2011 on.
	NEC2017
	// Boat33CFR is 33 CFR 183.425 and 183.455 for circuits of boats below 50 V,
	// a free-air table. It is the wrong rule for a wire in the wall of a
	// vehicle.
	Boat33CFR
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
	}
	return "not given"
}

// MarshalText returns what String does, and empty text for the zero value.
func (r RuleSet) MarshalText() ([]byte, error) {
	if r == 0 {
		return []byte{}, nil
	}
	return []byte(r.String()), nil
}

// UnmarshalText reads what [ParseRuleSet] reads, with the same errors, which
// leave r alone.
func (r *RuleSet) UnmarshalText(text []byte) error {
	set, err := ParseRuleSet(string(text))
	if err == nil {
		*r = set
	}
	return err
}

// ParseRuleSet reads the name of a rule set as String gives it, in any letter
// case. Every error has concrete type [*units.ParseError].
func ParseRuleSet(s string) (RuleSet, error) {
	for set := RVLowVoltage; set <= Boat33CFR; set++ {
		if strings.EqualFold(set.String(), strings.TrimSpace(s)) {
			return set, nil
		}
	}
	return 0, &units.ParseError{Input: s, Want: "rule set",
		Reason: "want one of " + RVLowVoltage.String() + ", " + NEC2017.String() + ", " + Boat33CFR.String()}
}

// check returns a [*units.RangeError] if r is not a rule set.
func (r RuleSet) check(op string) error {
	if r >= RVLowVoltage && r <= Boat33CFR {
		return nil
	}
	return &units.RangeError{Op: op, Field: "Rules", Value: r, Allowed: ruleSets{}}
}

// ruleSets says in words which rule sets there are.
type ruleSets struct{}

// String names the rule sets.
func (ruleSets) String() string { return "RVLowVoltage, NEC2017 or Boat33CFR" }

var (
	nec31016 = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "Table 310.15(B)(16), copper, read through IRC 2018 Table E3705.1", Provenance: working.Read}
	necFine = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2011 and later",
		Place: "Table 310.15(B)(16), 18 and 16 AWG at 90 °C", Provenance: working.Memory}
	necAmbient = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "Table 310.15(B)(2)(a), 30 °C base, read as 310.15(B)(1) of 2020 through IRC 2021 Table E3705.2", Provenance: working.Read}
	necBundle = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "Table 310.15(B)(3)(a), read in the edition of 2014; later 310.15(C)(1)", Provenance: working.Read}
	necTerminals = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "110.14(C)", Provenance: working.Memory}
	necSmall = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017 to 2023",
		Place: "240.4(D), as public summaries give it", Provenance: working.Read}
	necNextUp = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "240.4(B)", Provenance: working.Memory}
	necRatings = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "240.6(A), from public statements of it", Provenance: working.Read}
	necContinuous = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "210.20(A), 215.3: 125 % of a load of three hours or more", Provenance: working.Memory}
	rvTable = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "Table 552.10(E)(1), park trailers, low voltage", Provenance: working.Memory}
	rvPlace = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2020",
		Place: "552.10(E)(4), as an article on it says: 18 in from the source", Provenance: working.Read}
	boatTable = working.Source{Body: "US Coast Guard", Title: "33 CFR", Edition: "2001",
		Place: "183.425 Table 5, free air", Provenance: working.Read}
	necConductor = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "210.19(A), 215.2(A): conductor of 125 % of a continuous load, before correction", Provenance: working.Memory}
	boatPlace = working.Source{Body: "US Coast Guard", Title: "33 CFR",
		Place: "183.455(b): 7 in from the source, 40 in if sheathed or enclosed", Provenance: working.Read}
	fuseSpeed  = working.Source{Title: "a device opens within seconds at several times its rating, at twice it in minutes", Provenance: working.CommonPractice}
	boatDevice = working.Source{Body: "US Coast Guard", Title: "33 CFR",
		Place: "183.455(c)(1): 150 % of Table 5 under 50 V", Provenance: working.Read}
	thickPractice = working.Source{Title: "single cables thicker than the RV table by the free-air table of 33 CFR 183.425",
		Provenance: working.CommonPractice}
)
