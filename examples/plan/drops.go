package plan

import (
	"slices"
	"strings"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// isAboutDrop reports whether a rule is one of those that ask whether enough
// voltage reaches the end of a circuit. One larger conductor mends all of
// them, so that a reader gets them together.
func isAboutDrop(rule string) bool { return slices.Contains(chain(), rule) }

// chain returns those rules in the order in which one follows from another.
func chain() []string {
	return []string{"drop-above-allowed", "path-drop-above-allowed", "below-cut-out"}
}

// dropItem tells all that is found of the drop of one circuit.
func (p Plan) dropItem(part string) item {
	var found []Finding
	for _, rule := range chain() {
		for _, f := range p.Findings {
			if f.Part == part && f.Rule == rule {
				found = append(found, f)
			}
		}
	}
	if len(found) == 1 {
		return found[0].item()
	}
	i := item{parts: []string{part}, mark: found[0].mark(), text: "Too little voltage reaches the end."}
	var rules []string
	for _, f := range found {
		i.more = append(i.more, f.Message+" Numbers: "+joined(f.Numbers)+".")
		rules = append(rules, "Rule: "+f.Rule+"; "+f.Source.String()+".")
	}
	i.more = append(i.more, "Mend: "+found[0].Mend)
	i.more = append(i.more, rules...)
	return i
}

// An end is what a circuit has to bring to its loads.
type end struct {
	circuit Circuit
	run     wire.Run      // as found
	feeder  CircuitLine   // before it, or the zero line
	power   units.Power   // of the loads that keep theirs; 0 if none is named
	cutOut  units.Voltage // below which the first of them stops; 0 if none says
	who     string        // that one
}

// brought is what a size brings there.
type brought struct {
	drop wire.Drop
	sag  battery.Sag // zero without loads
	path units.Ratio
}

// endOf returns what a circuit has to bring to its loads.
func (m *maker) endOf(c Circuit, run wire.Run, feeder CircuitLine) end {
	e := end{circuit: c, run: run, feeder: feeder}
	bus, _ := m.bus(c.Bus)
	if !m.isDirect(c.Bus) || m.ahead(c) {
		return e // at the end of the one is the converter
	}
	for _, name := range c.Loads {
		e.power += m.loadCurrent(name).At(bus.Voltage)
		if at, ok := m.load(name).CutOut.Get(); ok && at > e.cutOut {
			e.cutOut, e.who = at, name
		}
	}
	return e
}

// supplied is the loads at an end behind the resistance of their circuit, fed
// from the nominal voltage of the bank, or of the converter between, less what the feeders usually lose.
func (m *maker) supplied(e end, r units.Resistance) battery.Circuit {
	from := m.assembly.Voltage
	if bus, _ := m.bus(e.circuit.Bus); bus.ThroughConverter.IsSet() {
		from = bus.Voltage
	}
	return battery.Circuit{OpenCircuit: from - e.feeder.Drop, Internal: r, Draw: battery.Draw{Power: units.Some(e.power)}}
}

// with works out what a size brings; not ok if a calculator refuses it, as it
// does where the load cannot run at all.
func (m *maker) with(e end, size wire.Size) (b brought, ok bool) {
	e.run.Conductor.Size = size
	drop, err := wire.VoltageDrop(e.run)
	if err != nil {
		return b, false
	}
	b.drop, b.path = drop, drop.Fraction+e.feeder.Path
	if e.power == 0 {
		return b, true
	}
	b.sag, err = battery.UnderLoad(m.supplied(e, drop.Resistance))
	return b, err == nil
}

// enough reports whether what a size brings mends every finding about the drop.
func (m *maker) enough(e end, b brought) bool {
	branch, path := m.rig.Rules.BranchDrop, m.rig.Rules.PathDrop
	if allowed, ok := branch.Get(); ok && units.Exceeds(b.drop.Fraction, allowed) {
		return false
	}
	if allowed, ok := path.Get(); ok && e.circuit.Feeder != "" && units.Exceeds(b.path, allowed) {
		return false
	}
	return e.cutOut == 0 || !units.Exceeds(e.cutOut, b.sag.Voltage)
}

// oneMend puts the same mend into all findings about the drop of a circuit:
// the smallest size that is enough for all of them.
func (m *maker) oneMend(e end, found []working.Finding) {
	if !slices.ContainsFunc(found, func(f working.Finding) bool { return isAboutDrop(f.Rule) }) {
		return
	}
	mend := m.largerSize(e)
	for i := range found {
		if isAboutDrop(found[i].Rule) {
			found[i].Fix = mend
		}
	}
}

// largerSize says which size is enough, and what it brings.
func (m *maker) largerSize(e end) string {
	list := wire.Gauges()
	if e.circuit.Size.IsMetric() {
		list = wire.MetricSizes()
	}
	for _, size := range list {
		if size.Compare(e.circuit.Size) <= 0 {
			continue
		}
		b, ok := m.with(e, size)
		if !ok || !m.enough(e, b) {
			continue
		}
		m.sheetOn(e.circuit.Name, "mended", b.drop.Working())
		brings := []string{in(b.drop.Fraction, "%", 2) + " in this run"}
		if e.circuit.Feeder != "" {
			m.sheetOn(e.circuit.Name, "mended", pathSheet(b.drop.Fraction, e.feeder.Path, b.path))
			brings = append(brings, in(b.path, "%", 2)+" with what feeds it")
		}
		if e.power > 0 {
			m.sheetOn(e.circuit.Name, "mended", b.sag.Working())
			brings = append(brings, in(b.sag.Voltage, "V", 4)+" at the load")
		}
		return "Use " + size.String() + " or larger, or a shorter run. " + size.String() + " leaves " + strings.Join(brings, ", ") + "."
	}
	return "No size of this run alone is enough: use a shorter run, and a larger size in what feeds it."
}

// pathSheet is how the part lost along a path comes about.
func pathSheet(branch, feeder, path units.Ratio) *working.Sheet {
	s := working.NewSheet("Drop with the feeders")
	s.Given("δ", branch, "%", "of this circuit, as a part of the bus voltage")
	s.Given("δ_feeder", feeder, "%", "of what feeds it, with all before that")
	s.Formula("δ_path", path, "%", "along the path from the source", "δ + δ_feeder")
	return s
}
