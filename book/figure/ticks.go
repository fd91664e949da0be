package figure

import (
	"math"
	"slices"
	"strings"

	"example.com/drawbar/units"
)

// A tick is a marked place along an axis, from 0 to 1.
type tick struct {
	at   float64
	text string // empty for a place between those with a number
}

// numbered returns the ticks with a number, which come first.
func numbered(ticks []tick) []tick {
	for i, t := range ticks {
		if t.text == "" {
			return ticks[:i]
		}
	}
	return ticks
}

// A run is how long an axis is on the page and which way it lies.
type run struct {
	length int
	level  bool // left to right
}

// most returns how many numbers are wanted along the run at most.
func (r run) most() float64 {
	if r.level {
		return 10
	}
	return 8
}

// fits reports whether the numbers at the ticks are clear of each other.
func (r run) fits(ticks []tick) bool {
	const gap, line = 16 * px, 24 * px
	for i := 1; i < len(ticks); i++ {
		between := along(ticks[i].at-ticks[i-1].at, r.length)
		need := line
		if r.level {
			need = gap + (textWidth(ticks[i].text, tickSize)+textWidth(ticks[i-1].text, tickSize))/2
		}
		if between < need {
			return false
		}
	}
	return true
}

// ticks returns the places to mark along an axis drawn along r, numbered ones
// in rising order and then those between.
func (a Axis) ticks(r run) []tick {
	if !a.Log {
		return a.linearTicks(r)
	}
	// An axis with two numbers can be read, one with three easily.
	for least := 3; ; least-- {
		for _, s := range [...]struct {
			mantissas string
			every     int // decades
		}{{"125", 1}, {"1", 1}, {"1", 2}, {"1", 4}, {everyMantissa, 1}} {
			if t := a.logTicks(s.mantissas, s.every); len(t) >= least && r.fits(t) {
				return append(t, a.between(r, t)...)
			}
		}
		if t := a.linearTicks(r); len(t) >= least {
			return t
		}
	}
}

// linearTicks returns the multiples of the finest step of the series 1, 2, 5,
// 10, 20 ... that fit r.
func (a Axis) linearTicks(r run) []tick {
	low, high := units.Settle(a.Min), units.Settle(a.Max)
	for e := int(math.Floor(math.Log10((high - low) / r.most()))); ; e++ {
		for _, m := range [...]int{1, 2, 5} {
			t := a.multiples(low, high, m, e)
			if float64(len(t)) <= r.most()+1 && r.fits(t) {
				return t
			}
		}
	}
}

// multiples returns a tick at each multiple of m·10^e on the axis.
func (a Axis) multiples(low, high float64, m, e int) []tick {
	step := power(float64(m), e)
	first := math.Ceil(units.Settle(low / step))
	last := math.Floor(units.Settle(high / step))
	var t []tick
	for k := first; k <= last; k++ {
		x := power(k*float64(m), e)
		t = append(t, tick{a.scale().at(x), number(x, max(0, -e))})
	}
	return t
}

// everyMantissa are the first digits of the whole multiples of a decade.
const everyMantissa = "123456789"

// logTicks returns a tick at each of the mantissas, which are digits, in the
// decades on the axis whose exponent is a multiple of every.
func (a Axis) logTicks(mantissas string, every int) []tick {
	low, high := units.Settle(a.Min), units.Settle(a.Max)
	var t []tick
	for e := int(math.Floor(math.Log10(low))); power(1, e) <= high; e++ {
		if e%every != 0 {
			continue
		}
		for _, m := range mantissas {
			if x := power(float64(m-'0'), e); low <= x && x <= high {
				t = append(t, tick{a.scale().at(x), number(x, max(0, -e))})
			}
		}
	}
	return t
}

// between returns a tick without a number at each whole mantissa that has
// none, where the decades are wide enough for that.
func (a Axis) between(r run, numbered []tick) []tick {
	const narrow = 60 * px // eight more lines do not fit in it
	if float64(r.length)/a.scale().length < narrow {
		return nil
	}
	var t []tick
	for _, m := range a.logTicks(everyMantissa, 1) {
		if !slices.Contains(numbered, m) {
			t = append(t, tick{at: m.at})
		}
	}
	return t
}

// power returns m·10^e, rounded once: both factors are exact.
func power(m float64, e int) float64 {
	if e < 0 {
		return m / math.Pow10(-e)
	}
	return m * math.Pow10(e)
}

// number returns x with so many decimals as it stands beside a tick: a minus
// sign, and digits in threes from five on.
// Source: NIST SP 811 (2008), section 10.5.3. Provenance: memory.
func number(x float64, decimals int) string {
	s, negative := strings.CutPrefix(units.Fixed(x, decimals), "-")
	whole, part, _ := strings.Cut(s, ".")
	var b strings.Builder
	if negative {
		b.WriteString("−")
	}
	for i, c := range whole {
		if i > 0 && len(whole) > 4 && (len(whole)-i)%3 == 0 {
			b.WriteRune(thinSpace)
		}
		b.WriteRune(c)
	}
	if part != "" {
		b.WriteString("." + part)
	}
	return b.String()
}
