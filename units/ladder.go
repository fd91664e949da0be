package units

import (
	"fmt"
	"iter"
	"math"
	"strconv"
)

// A Ladder is an ascending list of standard values: the ratings that fuses
// are sold in, the rows that a table is printed for. T is a quantity, made
// with [NewLadder], or [Temperature], made with [NewTemperatureLadder].
//
// Every look-up compares settled values, so that 15.000000000000002 A stays on
// the 15 A step and 15.0004 A does not. A Ladder cannot be changed and is safe
// for concurrent use; look-ups allocate nothing. The zero Ladder has no steps,
// and every look-up in it is a [*RangeError].
//
// Bands, such as the ambient bands 26-30 °C and 31-35 °C of an ampacity table,
// are a ladder of their upper ends: [Ladder.NextRow] is the row of the band.
// So a temperature between two bands, 30.4 °C, is in the upper one.
type Ladder[T rung] struct {
	name  string
	steps []T
	keys  []float64 // the steps as numbers
	key   func(T) float64

	upToTop, fromBottom, within checker[T]
}

// A rung is any [Quantity] or a [Temperature].
type rung interface{ kind() *kind }

// A checker is [Bounds] or [TemperatureBounds].
type checker[T rung] interface {
	Check(op, field string, x T) error
}

// NewLadder returns a ladder with the steps given, lowest first. The name
// says in errors what is looked up, such as "standard rating". No steps, a
// step that is not finite or one that is not above the step before, settled,
// is a [*RangeError].
func NewLadder[Q Quantity](name string, steps ...Q) (Ladder[Q], error) {
	l, err := newLadder("units.NewLadder", name, steps, func(q Q) float64 { return float64(q) })
	if err == nil {
		low, high := steps[0], steps[len(steps)-1]
		l.upToTop, l.fromBottom, l.within = Bounds[Q]{}.AtMost(high), AtLeast(low), Between(low, high)
	}
	return l, err
}

// NewTemperatureLadder is [NewLadder] for temperatures, each of which must be
// given.
func NewTemperatureLadder(name string, steps ...Temperature) (Ladder[Temperature], error) {
	l, err := newLadder("units.NewTemperatureLadder", name, steps, Temperature.reading)
	if err == nil {
		low, high := steps[0], steps[len(steps)-1]
		l.upToTop, l.fromBottom, l.within = TemperatureBounds{High: high}, TemperatureBounds{Low: low}, TemperatureBounds{low, high}
	}
	return l, err
}

// reading returns t in degrees Celsius, NaN if t was not given.
func (t Temperature) reading() float64 {
	if !t.set {
		return math.NaN()
	}
	return t.celsius
}

// MustLadder is [NewLadder] for the literals of tables; it panics on an
// error.
func MustLadder[Q Quantity](name string, steps ...Q) Ladder[Q] {
	l, err := NewLadder(name, steps...)
	if err != nil {
		panic(err)
	}
	return l
}

// MustTemperatureLadder is [NewTemperatureLadder] for the literals of tables;
// it panics on an error.
func MustTemperatureLadder(name string, steps ...Temperature) Ladder[Temperature] {
	l, err := NewTemperatureLadder(name, steps...)
	if err != nil {
		panic(err)
	}
	return l
}

// newLadder returns a ladder that lacks its checkers, for op.
func newLadder[T rung](op, name string, steps []T, key func(T) float64) (Ladder[T], error) {
	l := Ladder[T]{name: name, key: key}
	if len(steps) == 0 {
		return Ladder[T]{}, &RangeError{Op: op, Field: name, Value: l, Allowed: wording("one step or more")}
	}
	for i, step := range steps {
		x, field := key(step), name+", step "+strconv.Itoa(i+1)
		switch {
		case !finite(x):
			return Ladder[T]{}, &RangeError{Op: op, Field: field, Value: step, Allowed: wording("finite")}
		case i > 0 && Compare(l.keys[i-1], x) >= 0:
			return Ladder[T]{}, &RangeError{Op: op, Field: field, Value: step, Allowed: wording(fmt.Sprint("above ", steps[i-1]))}
		}
		l.steps, l.keys = append(l.steps, step), append(l.keys, x)
	}
	return l, nil
}

// Next returns the smallest step that is not below x: the rating that
// carries x. An x above the top step, or not finite, is a [*RangeError] whose
// Allowed is "<= top".
func (l Ladder[T]) Next(x T) (T, error) { return l.step(l.nextRow("units.Ladder.Next", x)) }

// NextRow returns the index of [Ladder.Next], with the same errors.
func (l Ladder[T]) NextRow(x T) (int, error) { return l.nextRow("units.Ladder.NextRow", x) }

// Prev returns the largest step that is not above x. An x below the bottom
// step, or not finite, is a [*RangeError] whose Allowed is ">= bottom".
func (l Ladder[T]) Prev(x T) (T, error) { return l.step(l.prevRow("units.Ladder.Prev", x)) }

// PrevRow returns the index of [Ladder.Prev], with the same errors.
func (l Ladder[T]) PrevRow(x T) (int, error) { return l.prevRow("units.Ladder.PrevRow", x) }

// Bracket returns the indices of the two rows between which x lies; they are
// the same if x is on a row. An x below the bottom step or above the top, or
// not finite, is a [*RangeError] whose Allowed is "bottom to top".
func (l Ladder[T]) Bracket(x T) (lo, hi int, err error) {
	if err := l.check("units.Ladder.Bracket", l.within, x); err != nil {
		return 0, 0, err
	}
	hi, on := l.search(l.key(x))
	if on {
		return hi, hi, nil
	}
	return hi - 1, hi, nil
}

// step returns the step in row i unless err says that there is none.
func (l Ladder[T]) step(i int, err error) (T, error) {
	if err != nil {
		var none T
		return none, err
	}
	return l.steps[i], nil
}

func (l Ladder[T]) nextRow(op string, x T) (int, error) {
	if err := l.check(op, l.upToTop, x); err != nil {
		return 0, err
	}
	i, _ := l.search(l.key(x))
	return i, nil
}

func (l Ladder[T]) prevRow(op string, x T) (int, error) {
	if err := l.check(op, l.fromBottom, x); err != nil {
		return 0, err
	}
	i, on := l.search(l.key(x))
	if !on {
		i--
	}
	return i, nil
}

func (l Ladder[T]) check(op string, c checker[T], x T) error {
	if len(l.steps) == 0 {
		return &RangeError{Op: op, Field: "x", Value: x, Allowed: l}
	}
	return c.Check(op, l.name, x)
}

// search returns the index of the first step not below x, and whether x is
// on it.
func (l Ladder[T]) search(x float64) (i int, on bool) {
	lo, hi := 0, len(l.keys)
	for lo < hi {
		mid := int(uint(lo+hi) / 2)
		key := l.keys[mid]
		if key == x { // a step itself needs no settling
			return mid, true
		}
		switch c := Compare(key, x); {
		case c == 0:
			return mid, true
		case c < 0:
			lo = mid + 1
		default:
			hi = mid
		}
	}
	return lo, false
}

// Name returns what the ladder is of.
func (l Ladder[T]) Name() string { return l.name }

// Len returns how many steps there are.
func (l Ladder[T]) Len() int { return len(l.steps) }

// At returns step i, lowest first from 0, and whether there is one.
func (l Ladder[T]) At(i int) (T, bool) {
	if i < 0 || i >= len(l.steps) {
		var none T
		return none, false
	}
	return l.steps[i], true
}

// All ranges over the rows and their steps, lowest first.
func (l Ladder[T]) All() iter.Seq2[int, T] {
	return func(yield func(int, T) bool) {
		for i, step := range l.steps {
			if !yield(i, step) {
				return
			}
		}
	}
}

// String returns "standard rating: 15 A to 6 kA in 37 steps".
func (l Ladder[T]) String() string {
	if len(l.steps) == 0 {
		return "no steps"
	}
	return fmt.Sprintf("%s: %v to %v in %d steps", l.name, l.steps[0], l.steps[len(l.steps)-1], len(l.steps))
}
