package wire

import (
	"slices"
	"strconv"

	"example.com/drawbar/units"
)

// A ladder is a row of batteries in parallel with its links. With S[j] the
// current of all batteries up to j together, the loop of batteries j and j+1
// says
//
//	E[j] - E[j+1] = R[j]·(S[j]-S[j-1]) - R[j+1]·(S[j+1]-S[j])
//	                + plus[j]·(S[j] - I·[taken off at or before j])
//	                + minus[j]·(S[j] - I·[returned at or before j])
//
// with S of the whole row equal to I. The equations are linear, so the row is
// solved twice, for the voltages without I and for an I of 1 A without the
// voltages, and the answer for any I is a sum. Each has three diagonals.
type ladder struct {
	own, plus, minus []float64 // ohms of the batteries and of the links
	takeOff, back    int       // whose plus post, whose minus post
	pivots           []float64 // of the elimination
	upTo             []float64 // S for 1 A; the last is 1
	share            []float64 // of each battery for 1 A
	resistance       float64   // of the row, seen from where it is taken off
}

// prepareRow checks the batteries and solves their row for 1 A.
func (h *Harness) prepareRow(op string) error {
	n := len(h.net.Batteries)
	switch {
	case n == 0:
		return &NetworkError{Op: op, What: "bank", Cause: ErrNoBattery}
	case len(h.net.Links) != n-1:
		return &NetworkError{Op: op, What: strconv.Itoa(len(h.net.Links)) + " links for " + strconv.Itoa(n) + " batteries", Cause: ErrLinks}
	}
	l := &h.row
	for i, b := range h.net.Batteries {
		if err := b.check(op, i, n); err != nil {
			return err
		}
		l.own = append(l.own, float64(b.Resistance))
	}
	if err := h.nameRow(op); err != nil {
		return err
	}
	for i, link := range h.net.Links {
		plus, err := link.Plus.resistance(op, place{list: "Links", n: i, part: "Plus."})
		if err != nil {
			return err
		}
		minus, err := link.Minus.resistance(op, place{list: "Links", n: i, part: "Minus."})
		if err != nil {
			return err
		}
		l.plus, l.minus = append(l.plus, float64(plus)), append(l.minus, float64(minus))
	}
	if err := h.checkSpread(op); err != nil {
		return err
	}
	l.solveUnit()
	return nil
}

// widest is how far the resistances of a row may be apart. Currents beside a
// thousand times larger ones keep enough digits up to there; a battery or a
// link that hardly conducts is to be left out.
const widest = 1e6

// checkSpread reports a battery or a link whose resistance is too large for
// its row, and a row whose resistances no float64 holds together.
func (h *Harness) checkSpread(op string) error {
	l, total := &h.row, units.Resistance(0)
	limit := units.AtLeast[units.Resistance](0)
	if len(l.own) > 1 {
		limit = limit.AtMost(units.Resistance(widest * slices.Min(l.own)))
	}
	for i, b := range h.net.Batteries {
		if err := checkAt(limit, op, place{list: "Batteries", name: b.Name, n: i}, "Resistance", b.Resistance); err != nil {
			return err
		}
		total += b.Resistance
	}
	for i := range l.plus {
		plus, minus := units.Resistance(l.plus[i]), units.Resistance(l.minus[i])
		if err := checkAt(limit, op, place{list: "Links", n: i}, "Plus", plus); err != nil {
			return err
		}
		if err := checkAt(limit, op, place{list: "Links", n: i}, "Minus", minus); err != nil {
			return err
		}
		total += plus + minus
	}
	return units.AtLeast[units.Resistance](0).Check(op, "resistance of the bank", total)
}

// nameRow finds the batteries whose posts feed the harness.
func (h *Harness) nameRow(op string) error {
	index := make(map[string]int, len(h.net.Batteries))
	for i, b := range h.net.Batteries {
		if b.Name == "" && len(h.net.Batteries) > 1 {
			return &NetworkError{Op: op, What: "battery number " + strconv.Itoa(i+1), Cause: ErrUnnamed}
		}
		if _, twice := index[b.Name]; twice {
			return &NetworkError{Op: op, What: "battery", Name: b.Name, Cause: ErrDuplicate}
		}
		index[b.Name] = i
	}
	find := func(post, name string) (int, error) {
		i, ok := index[name]
		if !ok && name != "" {
			return 0, &NetworkError{Op: op, What: post + " take-off", Name: name, Cause: ErrUnknown}
		}
		return i, nil
	}
	var err error
	if h.row.takeOff, err = find("plus", h.net.Plus); err != nil {
		return err
	}
	h.row.back, err = find("minus", h.net.Minus)
	return err
}

// check reports the first number of b out of range; b is number i of n.
func (b Battery) check(op string, i, n int) error {
	at := place{list: "Batteries", name: b.Name, n: i}
	if err := checkAt(units.Above[units.Voltage](0), op, at, "Voltage", b.Voltage); err != nil {
		return err
	}
	allowed := units.AtLeast[units.Resistance](0)
	if n > 1 {
		allowed = units.Above[units.Resistance](0)
	}
	if err := checkAt(allowed, op, at, "Resistance", b.Resistance); err != nil {
		return err
	}
	if err := checkAt(units.Above[units.Current](0), op, at, "Limit", b.Limit.Or(1)); err != nil {
		return err
	}
	return checkAt(units.Above[units.Current](0), op, at, "ChargeLimit", b.ChargeLimit.Or(1))
}

// resistance checks l, which stands at a place, and returns its resistance.
func (l Lead) resistance(op string, at place) (units.Resistance, error) {
	if err := checkAt(units.AtLeast[units.Length](0), op, at, "Length", l.Length); err != nil {
		return 0, err
	}
	if err := checkAt(units.AtLeast[units.Resistance](0), op, at, "Extra", l.Extra); err != nil {
		return 0, err
	}
	total := l.Extra
	if l.Length > 0 {
		p, err := resistance(op, l.Conductor)
		if err != nil {
			return 0, at.about(err)
		}
		total += p.At.Over(l.Length)
	}
	return total, checkAt(units.AtLeast[units.Resistance](0), op, at, "resistance", total)
}

// solveUnit eliminates once and finds the shares of 1 A.
func (l *ladder) solveUnit() {
	n := len(l.own)
	l.pivots = make([]float64, n-1)
	// What is left of a pivot without the next battery is the row up to there
	// seen from its link: a link, and what lies behind it beside a battery. No
	// difference is taken, so no digits are lost.
	behind := l.own[0]
	for j := range l.pivots {
		if j > 0 {
			behind = beside(behind, l.own[j])
		}
		behind += l.plus[j] + l.minus[j]
		l.pivots[j] = behind + l.own[j+1]
	}
	l.upTo = make([]float64, n)
	for j := range l.pivots {
		if l.takeOff <= j {
			l.upTo[j] += l.plus[j]
		}
		if l.back <= j {
			l.upTo[j] += l.minus[j]
		}
	}
	l.upTo[n-1] = 1
	l.solve(l.upTo)
	l.share = make([]float64, n)
	for i := range l.share {
		l.share[i] = l.current(l.upTo, i)
	}
	// The heat of 1 A is the resistance, and a sum of squares.
	l.resistance = l.heat(l.upTo, 1)
}

// beside returns two resistances in parallel; the second is above 0.
func beside(a, b float64) float64 { return a / (a + b) * b }

// solve replaces the right sides in s by the sums of currents; the last of s
// is the current of the whole row, and stays.
func (l *ladder) solve(s []float64) {
	n := len(l.own)
	for j := 1; j < n-1; j++ {
		s[j] += l.own[j] / l.pivots[j-1] * s[j-1]
	}
	for j := n - 2; j >= 0; j-- {
		s[j] = (s[j] + l.own[j+1]*s[j+1]) / l.pivots[j]
	}
}

// idle puts the sums of the currents that flow between batteries of the given
// voltages, with no load, into s.
func (l *ladder) idle(s []float64, volts []units.Voltage) {
	for j := range l.pivots {
		s[j] = float64(volts[j] - volts[j+1])
	}
	s[len(s)-1] = 0
	l.solve(s)
}

// current returns that of battery i, from the sums s.
func (l *ladder) current(s []float64, i int) float64 {
	if i == 0 {
		return s[0]
	}
	return s[i] - s[i-1]
}

// linkPlus returns the current from plus post j to j+1, from the sums s and
// the current of the harness.
func (l *ladder) linkPlus(s []float64, total float64, j int) float64 {
	if l.takeOff <= j {
		return s[j] - total
	}
	return s[j]
}

// linkMinus returns the current from minus post j+1 to j.
func (l *ladder) linkMinus(s []float64, total float64, j int) float64 {
	if l.back <= j {
		return s[j] - total
	}
	return s[j]
}

// heat returns what the row turns into heat, batteries and links.
func (l *ladder) heat(s []float64, total float64) (watts float64) {
	for i, r := range l.own {
		amps := l.current(s, i)
		watts += amps * r * amps
	}
	for j := range l.pivots {
		amps := l.linkPlus(s, total, j)
		watts += amps * l.plus[j] * amps
		amps = l.linkMinus(s, total, j)
		watts += amps * l.minus[j] * amps
	}
	return watts
}

// openCircuit returns the voltage where the harness is taken off, with no
// load. A battery that carries a share of a current from there lends that
// share of its voltage to there: reciprocity.
func (l *ladder) openCircuit(volts []units.Voltage) (v float64) {
	for i, share := range l.share {
		v += share * float64(volts[i])
	}
	return v
}
