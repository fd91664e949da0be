package battery

import (
	"math"

	"example.com/drawbar/units"
)

// A Rating is one row of a datasheet: the charge that a full battery gives
// when a steady current empties it in the time Over.
type Rating struct {
	Capacity units.Charge  // > 0
	Over     units.Elapsed // > 0
}

// Current returns the steady current of the rating.
func (r Rating) Current() units.Current { return r.Capacity.In(r.Over) }

// An Exponent is the result of [ExponentFrom].
type Exponent struct {
	A, B               Rating        // as used
	CurrentA, CurrentB units.Current // that empty the battery in A.Over and B.Over
	Value              units.Ratio   // k
}

// ExponentFrom returns the exponent of Peukert's law through two ratings of
// one battery, in either order:
//
//	k = ln(H_A / H_B) / ln(I_B / I_A),  I = C / H
//
// It holds between the two currents and little beyond them: three ratings of
// one battery seldom give one exponent. A value below 1, which would mean that
// haste gives more, or above 2, which no battery shows, is a result with a
// finding; [Deliver] refuses it.
//
// A rating that is not above 0 and finite gives a [*units.RangeError], and so
// do two ratings of the same current, and two of which the one with the
// greater current lasts as long or longer.
func ExponentFrom(a, b Rating) (Exponent, error) {
	const op = "battery.ExponentFrom"
	for _, r := range [...]struct {
		rating         Rating
		capacity, over string
	}{{a, "A.Capacity", "A.Over"}, {b, "B.Capacity", "B.Over"}} {
		if err := r.rating.check(op, r.capacity, r.over); err != nil {
			return Exponent{}, err
		}
	}
	x := Exponent{A: a, B: b, CurrentA: a.Current(), CurrentB: b.Current()}
	if units.Compare(x.CurrentA, x.CurrentB) == 0 {
		return Exponent{}, &units.RangeError{Op: op, Field: "B", Value: x.CurrentB,
			Allowed: allowed("a rating at another current than A")}
	}
	k := math.Log(float64(a.Over)/float64(b.Over)) / math.Log(float64(x.CurrentB)/float64(x.CurrentA))
	x.Value = units.Ratio(k)
	if !units.Above[units.Ratio](0).Contains(x.Value) {
		return Exponent{}, &units.RangeError{Op: op, Field: "Exponent", Value: k,
			Allowed: allowed("> 0: the rating with the greater current lasts shorter")}
	}
	return x, nil
}

// check reports a field out of range, or a current that no float64 holds.
func (r Rating) check(op, capacity, over string) error {
	if err := units.Above[units.Charge](0).Check(op, capacity, r.Capacity); err != nil {
		return err
	}
	if err := units.Above[units.Elapsed](0).Check(op, over, r.Over); err != nil {
		return err
	}
	return units.Above[units.Current](0).Check(op, capacity, r.Current())
}

// A Discharge is a full battery or bank emptied at a steady current.
type Discharge struct {
	Rating   Rating        // of the whole
	Exponent units.Ratio   // Peukert's, 1 to 2
	Current  units.Current // steady, of the whole, > 0
}

// A Delivery is the result of [Deliver].
type Delivery struct {
	Discharge Discharge     // as used
	Rated     units.Current // the current that the rating belongs to
	Law       units.Ratio   // what Peukert's law makes of the capacity
	Factor    units.Ratio   // the part of the capacity counted on, at most 1
	Charge    units.Charge  // delivered until empty
	Time      units.Elapsed // until empty
}

// Deliver returns the charge that comes out at d.Current, by Peukert's law in
// its rated-hours form:
//
//	C(I) = C · (C / (I·H))^(k-1),  t = C(I) / I
//
// Below the rated current the law promises more than the rating. That is not
// counted on: Factor stops at 1, and Law keeps what the law says.
//
// The law is for one steady current and one temperature. Charge that a high
// current leaves behind is still there for a lower one, so the law must not be
// summed over a varying load. For lithium it means little.
//
// A field out of the range that [Discharge] states, or not finite, gives a
// [*units.RangeError]; so does a result that no float64 holds.
func Deliver(d Discharge) (Delivery, error) { return d.deliver("battery.Deliver") }

func (d Discharge) deliver(op string) (Delivery, error) {
	if err := d.Rating.check(op, "Capacity", "Over"); err != nil {
		return Delivery{}, err
	}
	if err := checkExponent(op, d.Exponent); err != nil {
		return Delivery{}, err
	}
	if err := units.Above[units.Current](0).Check(op, "Current", d.Current); err != nil {
		return Delivery{}, err
	}
	v := Delivery{Discharge: d, Rated: d.Rating.Current()}
	v.Law = units.Ratio(math.Pow(float64(v.Rated)/float64(d.Current), float64(d.Exponent)-1))
	v.Factor = min(v.Law, 1)
	v.Charge = units.Scale(d.Rating.Capacity, v.Factor)
	v.Time = v.Charge.Lasts(d.Current)
	if err := units.Above[units.Ratio](0).Check(op, "Law", v.Law); err != nil {
		return Delivery{}, err
	}
	if err := units.Above[units.Elapsed](0).Check(op, "Time", v.Time); err != nil {
		return Delivery{}, err
	}
	return v, nil
}

// capped reports whether the law promises more than is counted on.
func (v Delivery) capped() bool { return units.Exceeds(v.Law, 1) }
