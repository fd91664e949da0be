package battery

import (
	"strconv"
	"strings"

	"example.com/drawbar/units"
)

// A Chemistry is what a battery stores charge in. The zero value is none:
// every calculator that needs one refuses it, since no default is harmless.
type Chemistry uint8

const (
	// Flooded is lead-acid with liquid electrolyte and vents.
	Flooded Chemistry = iota + 1
	// AGM is valve-regulated lead-acid with the electrolyte in glass mat.
	AGM
	// Gel is valve-regulated lead-acid with gelled electrolyte.
	Gel
	// LithiumIronPhosphate is LiFePO4 with its protection electronics.
	LithiumIronPhosphate
)

// Chemistries returns the chemistries that there are figures for. The slice
// is the caller's.
func Chemistries() []Chemistry {
	return []Chemistry{Flooded, AGM, Gel, LithiumIronPhosphate}
}

// String returns "flooded lead-acid", "AGM lead-acid", "gel lead-acid" or
// "lithium iron phosphate"; "not given" for the zero value.
func (c Chemistry) String() string {
	switch c {
	case 0:
		return "not given"
	case Flooded:
		return "flooded lead-acid"
	case AGM:
		return "AGM lead-acid"
	case Gel:
		return "gel lead-acid"
	case LithiumIronPhosphate:
		return "lithium iron phosphate"
	}
	return "Chemistry(" + strconv.Itoa(int(c)) + ")"
}

// IsLead reports whether c is one of the lead-acid chemistries, which give
// off hydrogen when they are charged.
func (c Chemistry) IsLead() bool { return c == Flooded || c == AGM || c == Gel }

// IsLithium reports whether c is a lithium chemistry, which must not be
// charged cold.
func (c Chemistry) IsLithium() bool { return c == LithiumIronPhosphate }

// ParseChemistry reads what [Chemistry.String] returns, and "flooded", "AGM",
// "gel", "LiFePO4" and "LFP", in any letter case. Plain "lithium" and plain
// "lead-acid" are refused: each is a family whose members differ. Every error
// has concrete type [*units.ParseError].
func ParseChemistry(s string) (Chemistry, error) {
	text := strings.ToLower(strings.Join(strings.Fields(s), " "))
	switch text {
	case "flooded":
		return Flooded, nil
	case "agm":
		return AGM, nil
	case "gel":
		return Gel, nil
	case "lifepo4", "lfp":
		return LithiumIronPhosphate, nil
	}
	for _, c := range Chemistries() {
		if strings.ToLower(c.String()) == text {
			return c, nil
		}
	}
	return 0, &units.ParseError{Input: s, Want: "battery chemistry", Reason: "want one of " + known.String()}
}

// MarshalText returns what String does. A chemistry that there is not, the
// zero value among them, is a [*units.RangeError].
func (c Chemistry) MarshalText() ([]byte, error) {
	if err := c.check("battery.Chemistry.MarshalText"); err != nil {
		return nil, err
	}
	return []byte(c.String()), nil
}

// UnmarshalText reads what [ParseChemistry] reads, with the same errors.
func (c *Chemistry) UnmarshalText(text []byte) error {
	parsed, err := ParseChemistry(string(text))
	if err == nil {
		*c = parsed
	}
	return err
}

// known is what a chemistry may be.
const known allowed = "flooded lead-acid, AGM lead-acid, gel lead-acid or lithium iron phosphate"

func (c Chemistry) check(op string) error {
	if c.IsLead() || c.IsLithium() {
		return nil
	}
	return &units.RangeError{Op: op, Field: "Chemistry", Value: c, Allowed: known}
}

// allowed says in words what an input may be, where no bounds do.
type allowed string

// String returns the words.
func (a allowed) String() string { return string(a) }
