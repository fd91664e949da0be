package solar

import (
	"fmt"
	"iter"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Loss is one named cause that takes a fraction of a harvest.
type Loss struct {
	Name     string      // such as "soiling", not empty
	Fraction units.Ratio // of what would come without it, 0 % to 100 %
}

// MaxLosses is how many losses a list may have.
const MaxLosses = 16

// Losses is a list of losses that act one after the other, so that they
// multiply: ten of 10 % take 65 %, not everything. It is made by [NewLosses],
// cannot be changed and is comparable. The zero value is no losses at all.
type Losses struct {
	list [MaxLosses]Loss
	n    int
}

// Typical losses of a fixed array, in the order of the report.
// Source: Dobos (2014), NREL/TP-6A20-62641, read in the source of an
// open-source photovoltaic modelling library. They are for a house; a flat
// roof under trees loses more to shade and dirt, and wiring in a vehicle has
// its own answer. Those of 0 % belong to the list.
var typicalLosses = Losses{n: 10, list: [MaxLosses]Loss{
	{"soiling", 2 * units.Percent},
	{"shading", 3 * units.Percent},
	{"snow", 0},
	{"mismatch", 2 * units.Percent},
	{"wiring", 2 * units.Percent},
	{"connections", 0.5 * units.Percent},
	{"light-induced degradation", 1.5 * units.Percent},
	{"nameplate rating", 1 * units.Percent},
	{"age", 0},
	{"availability", 3 * units.Percent},
}}

var dobosLosses = working.Source{Body: "NREL", Title: "TP-6A20-62641 (Dobos)", Edition: "2014",
	Place: "system losses, as an open-source modelling library has them", Provenance: working.Read}

// TypicalLosses returns the ten losses of NREL/TP-6A20-62641 (Dobos 2014),
// from soiling to availability, which take 14.08 % together.
func TypicalLosses() Losses { return typicalLosses }

// NewLosses returns the list of the losses given, which may be none. More
// than [MaxLosses] of them, a name that is empty or there twice, or a fraction
// outside of 0 % to 100 % is a [*units.RangeError] that says which.
func NewLosses(losses ...Loss) (Losses, error) {
	const op = "solar.NewLosses"
	var l Losses
	if len(losses) > MaxLosses {
		return Losses{}, &units.RangeError{Op: op, Field: "losses", Value: len(losses), Allowed: allowed(fmt.Sprintf("%d losses at most", MaxLosses))}
	}
	for i, x := range losses {
		if x.Name == "" || l.has(x.Name) {
			return Losses{}, &units.RangeError{Op: op, Field: fmt.Sprintf("losses[%d].Name", i), Value: fmt.Sprintf("%q", x.Name),
				Allowed: allowed("a name, each once")}
		}
		if bounds := units.Between[units.Ratio](0, 1); !bounds.Contains(x.Fraction) {
			return Losses{}, &units.RangeError{Op: op, Field: fmt.Sprintf("losses[%d].Fraction (%s)", i, x.Name),
				Value: x.Fraction, Allowed: bounds}
		}
		l.list[l.n] = x
		l.n++
	}
	return l, nil
}

func (l Losses) has(name string) bool {
	for _, x := range l.list[:l.n] {
		if x.Name == name {
			return true
		}
	}
	return false
}

// Len returns how many losses there are.
func (l Losses) Len() int { return l.n }

// All ranges over the losses in their order.
func (l Losses) All() iter.Seq2[int, Loss] {
	return func(yield func(int, Loss) bool) {
		for i, x := range l.list[:l.n] {
			if !yield(i, x) {
				return
			}
		}
	}
}

// Kept returns what the losses leave: the product of 1 − L over all of them,
// and 1 if there are none.
func (l Losses) Kept() units.Ratio {
	kept := units.Ratio(1)
	for i := range l.n {
		kept *= units.Minus(1, l.list[i].Fraction)
	}
	return kept
}

// Lost returns what the losses take together: 1 − Kept.
func (l Losses) Lost() units.Ratio { return units.Minus(1, l.Kept()) }
