package wire

import "example.com/drawbar/units"

// Standard ratings of fuses and circuit breakers, in amperes, of both kinds
// and so without 1, 3, 6 and 601 A, which only fuses have. 10 A is a rating of
// fuses before 2023 and of both from then on; low-voltage blade fuses have had
// it always.
// Source: NEC 240.6(A), 2017, read in public statements of it.
var standardRatings = [...]units.Current{
	10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250,
	300, 350, 400, 450, 500, 600, 700, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000, 5000, 6000,
}

// Ratings that blade and bolted fuses for vehicles are sold in, in amperes.
// Source: common practice.
var vehicleRatings = [...]units.Current{
	1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 90, 100, 125, 150, 175, 200, 225, 250, 300, 350, 400, 500,
}

// Ratings returns the ratings that the rule set's devices are sold in: those
// of NEC 240.6(A), or for direct current in vehicles and boats those of common
// practice.
func Ratings(r RuleSet) (units.Ladder[units.Current], error) {
	if err := r.check("wire.Ratings"); err != nil {
		return units.Ladder[units.Current]{}, err
	}
	return units.NewLadder("standard rating", ratings(r)...)
}

func ratings(r RuleSet) []units.Current {
	if r == NEC2017 {
		return standardRatings[:]
	}
	return vehicleRatings[:]
}

// nextRating returns the smallest rating not below i, 0 if there is none.
func nextRating(r RuleSet, i units.Current) units.Current {
	for _, rating := range ratings(r) {
		if !units.Exceeds(i, rating) {
			return rating
		}
	}
	return 0
}

// ratingBelow returns the greatest rating not above i, 0 if there is none.
func ratingBelow(r RuleSet, i units.Current) (below units.Current) {
	for _, rating := range ratings(r) {
		if units.Exceeds(rating, i) {
			break
		}
		below = rating
	}
	return below
}
