package plan

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// setLine returns a set with the limit that it exceeds, or keeps by the least.
func setLine(on string, l inverter.Limit, rule string, demands []inverter.Demand, s inverter.Set) SetLine {
	line := SetLine{On: on, Rule: rule + "together", Loads: []string{}, Any: []Choice{}, sum: s.Apparent}
	line.members(l, demands, s.Members)
	if l.Share.IsSet() {
		line.Rule = rule + "for-hours"
	}
	share := l.Share.Or(units.One)
	over := s.OverPower || s.OverApparent || s.OverCurrent || s.OverThrough
	var sum, limit units.Value
	nearest := -units.One
	hold := func(isOver bool, used units.Ratio, v, most units.Value) {
		if over == isOver && units.Exceeds(used, nearest) {
			sum, limit, nearest = v, most, used
		}
	}
	if i, ok := l.Current.Get(); ok {
		i = units.Scale(i, share)
		hold(s.OverCurrent, units.RatioOf(s.Current, i), s.Current, i)
	}
	if a, ok := l.Apparent.Get(); ok {
		a = units.Scale(a, share)
		hold(s.OverApparent, units.RatioOf(s.Apparent, a), s.Apparent, a)
	}
	if p, ok := l.Power.Get(); ok {
		p = units.Scale(p, share)
		hold(s.OverPower, units.RatioOf(s.Power, p), s.Power, p)
	}
	if i, ok := l.Through.Get(); ok {
		i = units.Scale(i, share)
		hold(s.OverThrough, units.RatioOf(s.Through, i), s.Through, i)
	}
	line.Numbers = numbersOf([]working.Number{{Name: "together", Value: sum}, {Name: "limit", Value: limit}})
	return line
}

// members puts the loads of a set into l: by name, or how many of those that
// a set does not tell apart, of which the set stands for any choice.
func (l *SetLine) members(limit inverter.Limit, demands []inverter.Demand, in inverter.Members) {
	for i := range in.All() {
		var all []string
		first, wanted := true, 0
		for j, d := range demands {
			if !alikeOn(limit, demands, i, j) {
				continue
			}
			all = append(all, d.Name)
			if in.Has(j) {
				first = first && j >= i
				wanted++
			}
		}
		switch {
		case wanted == len(all):
			l.Loads = append(l.Loads, demands[i].Name)
		case first:
			l.Any = append(l.Any, Choice{Count: wanted, Of: all})
		}
	}
}

// alikeOn reports whether sets on a limit count two demands alike.
func alikeOn(l inverter.Limit, demands []inverter.Demand, i, j int) bool {
	a, b := demands[i], demands[j]
	return a.Power == b.Power && a.Apparent.Or(a.Power.Apparent(units.One)) == b.Apparent.Or(b.Power.Apparent(units.One)) &&
		(!l.Through.IsSet() || l.Passes.Has(i) == l.Passes.Has(j))
}

// terms returns the loads of a set and its choices, as text.
func (l SetLine) terms() []string {
	list := slices.Clone(l.Loads)
	for _, c := range l.Any {
		list = append(list, c.String())
	}
	return list
}

// String returns "any 2 of (kettle, heater, grill)".
func (c Choice) String() string {
	return "any " + strconv.Itoa(c.Count) + " of (" + strings.Join(c.Of, ", ") + ")"
}

// mostRows is how many rows a text has for one limit. JSON has every set.
const mostRows = 20

// setSection lists what is too much together, sets that differ in loads which
// stand for each other in one row.
func (p Plan) setSection() section {
	s := section{title: "Not together", head: []string{"on", "these together are too much", "from", "limit"},
		text: []string{"A row holds for any choice from its lists, and with more loads on top. " + p.outsideOfRows() +
			" \"For hours\" is too much only for three hours or longer; it counts loads that run so long on this day, or have no hours on it."}}
	s.rows = rowsOf(grouped(p.Sets), func(g group) SetLine { return g.least })
	return s
}

// runSection lists what can run together.
func (p Plan) runSection() section {
	s := section{title: "Together", head: []string{"on", "these can run together", "up to", "limit"},
		text: []string{"A row holds for any choice from its lists, and for any part of it. Starts of motors are not in it, nor how long the bank lasts."}}
	if p.Use.Loop > 0 {
		s.text = append(s.text, "The converter starts by itself, and as found the inverter feeds it: until the loop is mended, count only on the rows of the inverter that have the converter.")
	}
	s.rows = rowsOf(grouped(p.Runs), func(g group) SetLine { return g.most })
	return s
}

// rowsOf lays groups out, so many for each limit, with the numbers of one set
// of each.
func rowsOf(groups []group, of func(group) SetLine) (rows []row) {
	count := map[string]int{}
	for _, g := range groups {
		r := g.row(of(g))
		if count[r.cells[0]]++; count[r.cells[0]] <= mostRows {
			rows = append(rows, r)
		}
	}
	for _, on := range slices.Sorted(maps.Keys(count)) {
		if more := count[on] - mostRows; more > 0 {
			rows = append(rows, row{nil, []string{on, "and " + strconv.Itoa(more) + " more rows, all in JSON", "", ""}})
		}
	}
	return rows
}

// row lays a group out, with the numbers of one of its sets.
func (g group) row(set SetLine) row {
	on := set.On
	switch {
	case strings.HasSuffix(set.Rule, "for-hours"):
		on += ", for hours"
	case strings.HasSuffix(set.Rule, "to-start"):
		on += ", to start"
	}
	return row{[]string{"together on " + set.On}, []string{on, g.String(), valueOf(set.Numbers, "together"), valueOf(set.Numbers, "limit")}}
}

// outsideOfRows says what is known of sets that are in no row.
func (p Plan) outsideOfRows() string {
	if slices.ContainsFunc(p.Findings, func(f Finding) bool { return f.Rule == "sets-of-the-largest" || f.Rule == "sets-cut-short" }) {
		return "Of a set that is in no row nothing is said, for loads or sets were left out."
	}
	return "A set that is in no row is within the limits by what it takes while it runs; a start is looked at only of one motor by itself, whose locked-rotor current and whose source's surge are given."
}

// A group is sets that are alike: so many of each of some classes of loads.
type group struct {
	least  SetLine // the one that comes to least
	most   SetLine // the one that comes to most
	counts []int   // how many of each class
	class  [][]string
}

// String returns "any 2 of a, b, c + d".
func (g group) String() string {
	var terms []string
	for i, n := range g.counts {
		switch of := g.class[i]; {
		case n == 0:
		case n == len(of):
			terms = append(terms, strings.Join(of, " + "))
		default:
			terms = append(terms, "any "+strconv.Itoa(n)+" of ("+strings.Join(of, ", ")+")")
		}
	}
	return strings.Join(terms, " + ")
}

// grouped puts sets of one source, rule and limit together that have as many members
// of each class of loads. Two loads are of one class if each set of the list
// with one of them has its like with the other, so that a row says neither
// more nor less than its sets.
func grouped(sets []SetLine) (groups []group) {
	for len(sets) > 0 {
		same := func(s SetLine) bool {
			return s.On == sets[0].On && s.Rule == sets[0].Rule && valueOf(s.Numbers, "limit") == valueOf(sets[0].Numbers, "limit")
		}
		var these, others []SetLine
		for _, s := range sets {
			if same(s) {
				these = append(these, s)
			} else {
				others = append(others, s)
			}
		}
		groups = append(groups, groupedOf(these)...)
		sets = others
	}
	return groups
}

// groupedOf is grouped for sets of one source, rule and limit.
func groupedOf(sets []SetLine) (groups []group) {
	class := classes(sets)
	index := map[string]int{}
	for _, s := range sets {
		counts := make([]int, len(class))
		for i, of := range class {
			for _, l := range s.terms() {
				if slices.Contains(of, l) {
					counts[i]++
				}
			}
		}
		key := ""
		for _, n := range counts {
			key += strconv.Itoa(n) + " "
		}
		if i, ok := index[key]; !ok {
			index[key] = len(groups)
			groups = append(groups, group{s, s, counts, class})
		} else if s.sum < groups[i].least.sum {
			groups[i].least = s
		} else if s.sum > groups[i].most.sum {
			groups[i].most = s
		}
	}
	return groups
}

// classes returns the loads of sets, those together that stand for each other.
func classes(sets []SetLine) (class [][]string) {
	there := map[string]bool{}
	for _, s := range sets {
		there[keyOf(s.terms())] = true
	}
	for _, s := range sets {
		for _, l := range s.terms() {
			if slices.ContainsFunc(class, func(of []string) bool { return slices.Contains(of, l) }) {
				continue
			}
			if i := slices.IndexFunc(class, func(of []string) bool { return alike(sets, there, of[0], l) }); i >= 0 {
				class[i] = append(class[i], l)
			} else {
				class = append(class, []string{l})
			}
		}
	}
	return class
}

// alike reports whether each set with one of two loads is there with the other
// in its place.
func alike(sets []SetLine, there map[string]bool, a, b string) bool {
	for _, s := range sets {
		swapped := s.terms()
		hasA, hasB := slices.Contains(swapped, a), slices.Contains(swapped, b)
		if hasA == hasB {
			continue
		}
		for i, l := range swapped {
			switch l {
			case a:
				swapped[i] = b
			case b:
				swapped[i] = a
			}
		}
		if !there[keyOf(swapped)] {
			return false
		}
	}
	return true
}

// keyOf returns the same text for the same loads in any order.
func keyOf(loads []string) string {
	sorted := slices.Sorted(slices.Values(loads))
	return strings.Join(sorted, "\n")
}
