package wire

import (
	"slices"
	"strconv"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the voltage at one branch came about, by its place in
// Network.Branches: every feeder on the way from the bank, and in the end the
// current that the load there takes at that voltage. After a collapse, it is
// what the way there could feed at most. A place that there is none of gives a
// sheet without steps.
func (f *Flow) Working(branch int) *working.Sheet {
	s := working.NewSheet("Voltage at branch " + strconv.Quote(f.nameOf(branch)))
	if f.nameOf(branch) == "" {
		return s
	}
	s.Given("E_bank", f.OpenCircuit, "V", "voltage of the bank without load, where the harness is taken off")
	s.Given("R_bank", f.BankResistance, "mΩ", "resistance of the bank seen from there, links included")
	path := f.path(branch)
	if c, ok := f.Collapse.Get(); ok {
		f.collapseSteps(s, path, c)
		return s
	}
	if len(f.Points) != len(f.harness.names) {
		return s
	}
	s.Given("I_0", f.Current, "A", "current of the whole harness, found by iteration in "+strconv.Itoa(f.Rounds)+" rounds")
	s.Formula("V_0", f.Voltage, "V", "voltage of the bank with load", "E_bank - I_0*R_bank/1000")
	for k, i := range path {
		f.feederSteps(s, i, k+1)
	}
	last := strconv.Itoa(len(path))
	p := f.Points[branch]
	s.Formula("ΔV", f.Voltage-p.Voltage, "V", "lost between the bank and "+strconv.Quote(p.Name), "V_0 - V_"+last)
	f.loadSteps(s, p, last)
	if lowest, ok := f.harness.net.Branches[branch].Lowest.Get(); ok {
		s.Given("V_lowest", lowest, "V", "lowest voltage that is allowed there")
		s.Test("voltage against what is allowed", "V_"+last+" >= V_lowest", !units.Exceeds(lowest, p.Voltage))
	}
	return s
}

// path returns the branches from the bank to one of them.
func (f *Flow) path(branch int) []int {
	var path []int
	for i, ok := branch, true; ok; i, ok = f.harness.index[f.harness.net.Branches[i].Parent] {
		path = append(path, i)
	}
	slices.Reverse(path)
	return path
}

// resistanceSteps appends how the resistance of a feeder came about.
func (f *Flow) resistanceSteps(s *working.Sheet, branch int, n string) {
	b, way := f.harness.net.Branches[branch], f.harness.feeders[branch]
	name := strconv.Quote(b.Name)
	const what = "resistance of the feeder, there and back"
	if b.OneWay == 0 {
		s.Given("R_"+n, way.loop, "mΩ", what+", to "+name+": joints and the like, no conductor")
		return
	}
	s.Given("r_"+n, way.perLength.At, "mΩ/m", "resistance of one conductor of the feeder to "+name+", "+way.perLength.name())
	s.Given("L_"+n, b.OneWay, "m", "its one-way length")
	formula := "r_" + n + " * 2*L_" + n
	if back, ok := b.Return.Get(); ok {
		s.Given("R_back"+n, back, "mΩ", "resistance of its way back")
		formula = "r_" + n + "*L_" + n + " + R_back" + n
	}
	if b.Extra > 0 {
		s.Given("R_joints"+n, b.Extra, "mΩ", "resistance of its fuses, switches and joints")
		formula += " + R_joints" + n
	}
	s.Formula("R_"+n, way.loop, "mΩ", what, formula)
}

// feederSteps appends the drop in feeder n of the way.
func (f *Flow) feederSteps(s *working.Sheet, branch, n int) {
	p, k, above := f.Points[branch], strconv.Itoa(n), strconv.Itoa(n-1)
	f.resistanceSteps(s, branch, k)
	s.Given("I_"+k, p.Current, "A", "current of all that is fed through it, found by iteration")
	s.Formula("ΔV_"+k, p.Drop, "V", "voltage lost in it", "I_"+k+" * R_"+k+"/1000")
	s.Formula("V_"+k, p.Voltage, "V", "voltage at "+strconv.Quote(p.Name), "V_"+above+" - ΔV_"+k)
	if limit, ok := f.harness.net.Branches[branch].Limit.Get(); ok {
		s.Given("I_limit"+k, limit, "A", "limit of the feeder")
		s.Test("current against the limit", "I_"+k+" <= I_limit"+k, !units.Exceeds(p.Current, limit))
	}
}

// loadSteps appends what the load takes at its voltage, which must come to the
// current that the drop was worked out with.
func (f *Flow) loadSteps(s *working.Sheet, p Point, last string) {
	s.Given("I_beyond", p.Current-p.Drawn, "A", "current of what is fed from here")
	formula := "I_beyond"
	if p.Load.Current > 0 {
		s.Given("I_load", p.Load.Current, "A", "constant-current load")
		formula += " + I_load"
	}
	if p.Load.Power > 0 {
		s.Given("P_load", p.Load.Power, "W", "constant-power load")
		formula += " + P_load/V_" + last
	}
	if r, ok := p.Load.Resistance.Get(); ok {
		s.Given("R_load", r, "Ω", "constant-resistance load")
		formula += " + V_" + last + "/R_load"
	}
	s.Formula("I_taken", p.Current, "A", "taken at this voltage, the same as flows in the feeder", formula)
}

// collapseSteps appends what the way could feed with nothing else on it, and
// what a search found with the other loads.
func (f *Flow) collapseSteps(s *working.Sheet, path []int, c Collapse) {
	total, sum := f.BankResistance, "R_bank"
	for k, i := range path {
		n := strconv.Itoa(k + 1)
		f.resistanceSteps(s, i, n)
		total += f.harness.feeders[i].loop
		sum += " + R_" + n
	}
	s.Formula("R_way", total, "mΩ", "resistance of the whole way", sum)
	if total > 0 {
		bound := f.OpenCircuit.Across(total).At(f.OpenCircuit) / 4
		s.Formula("P_bound", bound, "W", "most power that the way could feed with nothing else on it, at half of the voltage",
			"1000 * pow(E_bank, 2) / (4*R_way)")
	}
	branch := path[len(path)-1]
	if asked := f.loads[branch].Power; asked > 0 {
		s.Given("P_load", asked, "W", "constant-power load there")
		if most, ok := c.Most.Get(); ok && branch == c.Branch {
			s.Given("P_most", most, "W", "most power with all other loads as they are, found by a search")
			s.Test("asked against the most", "P_load <= P_most", !units.Exceeds(asked, most))
		}
	}
	s.Given("k", c.Scale, "%", "part of all constant currents and powers together that could be fed, found by a search")
}

// ShareWorking returns how the current of one battery came about, by its place
// in Network.Batteries: the way from its posts to where the harness is taken
// off, which must lead to the same voltage from every battery. A place that
// there is none of, and a collapse, give a sheet without steps.
func (f *Flow) ShareWorking(battery int) *working.Sheet {
	if f == nil || f.harness == nil || battery < 0 || battery >= min(len(f.Shares), len(f.upTo)) {
		return working.NewSheet("Share of a battery that there is none of")
	}
	share, row := f.Shares[battery], &f.harness.row
	s := working.NewSheet("Share of battery number " + strconv.Itoa(battery+1) + " of the row")
	s.Given("E", share.Battery.Voltage, "V", "its open-circuit voltage")
	s.Given("R", share.Battery.Resistance, "mΩ", "its resistance, with the leads of its own")
	s.Given("I_0", share.Idle, "A", "current that it gives without any load, from the equations of the row")
	s.Given("I", share.Current, "A", "current that it gives, from the equations of the row")
	s.Formula("V_own", share.Terminal, "V", "voltage at its own posts", "E - I*R/1000")
	end := "V_own"
	end += linkSteps(s, "p", "plus", battery, row.takeOff, row.plus, func(j int) float64 { return row.linkPlus(f.upTo, float64(f.Current), j) })
	end += linkSteps(s, "m", "minus", battery, row.back, row.minus, func(j int) float64 { return row.linkMinus(f.upTo, float64(f.Current), j) })
	s.Formula("V_bank", f.Voltage, "V", "voltage where the harness is taken off, the same by way of every battery", end)
	if f.Current > 0 {
		s.Given("I_all", f.Current, "A", "current of the harness")
		s.Given("n", units.Ratio(len(f.Shares)), "1", "number of batteries")
		equal := units.Scale(f.Current, units.Ratio(1/float64(len(f.Shares))))
		s.Formula("I_equal", equal, "A", "equal share", "I_all / n")
		s.Formula("x", share.Fraction, "%", "part of the whole that it carries", "100 * I / I_all")
		s.Constant("k_share", 1+unequalShare, "1", "by how much it may exceed an equal share", shareRule)
		s.Test("current against the share", "I <= k_share * I_equal", !units.Exceeds(share.Current, units.Scale(equal, 1+unequalShare)))
	}
	return s
}

// linkSteps appends the drops in the links from one battery to another, and
// returns what they add to the formula of the voltage.
func linkSteps(s *working.Sheet, letter, post string, from, to int, resistances []float64, amps func(j int) float64) (formula string) {
	for j := min(from, to); j < max(from, to); j++ {
		n := letter + strconv.Itoa(j+1)
		i, r := units.Current(amps(j)), units.Resistance(resistances[j])
		towards := "towards the last battery"
		// Down the way to the take-off voltage is lost; a current the other way
		// counts against it.
		sign := " - "
		if from > to {
			sign = " + "
		}
		s.Given("R_"+n, r, "mΩ", post+" lead of link number "+strconv.Itoa(j+1))
		if post == "minus" {
			towards = "towards the first battery"
		}
		s.Given("I_"+n, i, "A", "current in it, counted "+towards)
		s.Formula("ΔV_"+n, i.Through(r), "V", "voltage across it", "I_"+n+" * R_"+n+"/1000")
		formula += sign + "ΔV_" + n
	}
	return formula
}
