package wire

import "example.com/drawbar/units"

// DeviceKind is what an overcurrent device is. The zero value is [AnyDevice].
type DeviceKind uint8

const (
	// AnyDevice is a fuse or a breaker, as yet undecided: of the NEC's ratings
	// those that are sold as either, and 10 A.
	AnyDevice DeviceKind = iota
	// Fuse is a fuse.
	Fuse
	// Breaker is an inverse-time circuit breaker.
	Breaker
)

// A standardRating is a rating in amperes, and whether only fuses have it.
type standardRating struct {
	rating   units.Current
	fuseOnly bool
}

// Standard ratings of fuses and inverse-time circuit breakers, in amperes.
// Source: NEC 240.6(A), 2017, read in public statements of it. 10 A is a
// rating of breakers too from the edition of 2023 on.
var standardRatings = [...]standardRating{
	{1, true}, {3, true}, {6, true}, {10, true},
	{15, false}, {20, false}, {25, false}, {30, false}, {35, false}, {40, false}, {45, false}, {50, false},
	{60, false}, {70, false}, {80, false}, {90, false}, {100, false}, {110, false}, {125, false}, {150, false},
	{175, false}, {200, false}, {225, false}, {250, false}, {300, false}, {350, false}, {400, false}, {450, false},
	{500, false}, {600, false}, {601, true}, {700, false}, {800, false}, {1000, false}, {1200, false},
	{1600, false}, {2000, false}, {2500, false}, {3000, false}, {4000, false}, {5000, false}, {6000, false},
}

// breaker10 is the rating that breakers have from the edition of 2023 on.
const breaker10 units.Current = 10

// Ratings that blade and bolted fuses for vehicles are sold in, in amperes.
// Source: common practice.
var vehicleRatings = [...]units.Current{
	1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 90, 100, 125, 150, 175, 200, 225, 250, 300, 350, 400, 500,
}

// Ratings returns the ratings that the rule set's devices are sold in: those
// of NEC 240.6(A) for [AnyDevice], or for direct current in vehicles and boats
// those of common practice.
func Ratings(r RuleSet) (units.Ladder[units.Current], error) {
	return ladderOf("wire.Ratings", r, AnyDevice)
}

// RatingsOf returns the ratings of one kind of device: NEC 240.6(A) has fuses
// of 1, 3, 6 and 601 A and no such breakers, and 10 A breakers only from
// NEC2023 on. For vehicles and boats the list is that of fuses, whatever the
// kind; [Protect] goes by that of NEC2017 for boats at 50 V and more. A rule set or a kind that there is not is a [*units.RangeError].
func RatingsOf(r RuleSet, k DeviceKind) (units.Ladder[units.Current], error) {
	if err := k.check("wire.RatingsOf", "Kind"); err != nil {
		return units.Ladder[units.Current]{}, err
	}
	return ladderOf("wire.RatingsOf", r, k)
}

func ladderOf(op string, r RuleSet, k DeviceKind) (units.Ladder[units.Current], error) {
	if err := r.check(op); err != nil {
		return units.Ladder[units.Current]{}, err
	}
	var list []units.Current
	for i := range r.ratingCount() {
		if rating, ok := r.rating(i, k); ok {
			list = append(list, rating)
		}
	}
	return units.NewLadder("standard rating", list...)
}

// ratingCount is how many ratings there are to ask for.
func (r RuleSet) ratingCount() int {
	if r.isNEC() {
		return len(standardRatings)
	}
	return len(vehicleRatings)
}

// rating returns rating i, and whether devices of the kind have it.
func (r RuleSet) rating(i int, k DeviceKind) (rating units.Current, ok bool) {
	if !r.isNEC() {
		return vehicleRatings[i], true
	}
	s := standardRatings[i]
	switch {
	case !s.fuseOnly || k == Fuse:
		return s.rating, true
	case s.rating == breaker10:
		return s.rating, k == AnyDevice || r == NEC2023
	}
	return s.rating, false
}

// ratings returns the rule set whose ratings devices of x have: at 50 V and more
// a boat has those of the NEC, not the fuses of vehicles. Common practice: 33
// CFR 183.455(c)(2) names no list.
func (x Installation) ratings() RuleSet {
	if x.Rules == Boat33CFR && x.isHigh() {
		return NEC2017
	}
	return x.Rules
}

// listed returns the rating of the devices that NEC 240.4(D) provides for 18 and
// 16 AWG, where it is the limit; else 0. 240.6(A) need not have it.
func (p Protection) listed() units.Current {
	x := p.Circuit.Installation
	if _, small := limitOf(necSmallContinuous[:], x.Size, x.Metal); small && x.Rules.isNEC() && p.Rule == LimitSmallConductor {
		return p.Limit
	}
	return 0
}

// smallest returns the smallest rating that carries what is needed, 0 if there
// is none or nothing is.
func (p Protection) smallest() units.Current {
	if p.Circuit.Load == 0 {
		return 0
	}
	next, listed := nextRating(p.Circuit.Installation.ratings(), p.Circuit.Kind, p.Needed), p.listed()
	if !units.Exceeds(p.Needed, listed) && (next == 0 || units.Exceeds(next, listed)) {
		return listed
	}
	return next
}

// ratingWithin returns the greatest rating not above i, 0 if there is none.
func (p Protection) ratingWithin(i units.Current) units.Current {
	below, listed := ratingBelow(p.Circuit.Installation.ratings(), p.Circuit.Kind, i), p.listed()
	if !units.Exceeds(listed, i) {
		return max(below, listed)
	}
	return below
}

// nextRating returns the smallest rating not below i, 0 if there is none.
func nextRating(r RuleSet, k DeviceKind, i units.Current) units.Current {
	for at := range r.ratingCount() {
		if rating, ok := r.rating(at, k); ok && !units.Exceeds(i, rating) {
			return rating
		}
	}
	return 0
}

// ratingBelow returns the greatest rating not above i, 0 if there is none.
func ratingBelow(r RuleSet, k DeviceKind, i units.Current) (below units.Current) {
	for at := range r.ratingCount() {
		rating, ok := r.rating(at, k)
		if ok && units.Exceeds(rating, i) {
			break
		}
		if ok {
			below = rating
		}
	}
	return below
}

func (k DeviceKind) check(op, field string) error {
	if k <= Breaker {
		return nil
	}
	return &units.RangeError{Op: op, Field: field, Value: k, Allowed: allowedText("any device, fuse or breaker")}
}
