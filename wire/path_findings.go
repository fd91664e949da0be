package wire

import (
	"math"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

var (
	parallelRule = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "310.10(G), earlier 310.10(H): conductors in parallel from 1/0 AWG up", Provenance: working.Memory}
	chassisRule = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2008",
		Place: "552.10(B), low-voltage wiring may return through the chassis", Provenance: working.Read}
)

// pathFindings returns what the way of the current asks for, whatever the
// drop: heat in each conductor, conductors in parallel, and the chassis.
func (r Run) pathFindings() []working.Finding {
	f := []working.Finding{r.Conductor.heat(r.each())}
	if r.sideBySide() > 1 {
		f = append(f, r.parallelFinding())
	}
	if chassis, ok := r.Chassis.Get(); ok {
		f = append(f, working.Finding{
			Severity: working.Caution,
			Rule:     "chassis-return",
			Message: "The current returns through the chassis. Rust, paint and loose bolts raise that resistance with the years, " +
				"and a poor path sends the current through hitch, brakes and shields instead.",
			Numbers: []working.Number{{Name: "resistance of the path", Value: chassis}},
			Fix:     "Run a return conductor, or measure the path under load again each season. Never return 120 V or 230 V this way.",
			Source:  chassisRule,
		})
	}
	return f
}

// heat says whether c bears a current. The tables are of copper: another metal
// is as warm with as much less current as the root of its conductivity says,
// and is held against them with the current that warms copper as much.
func (c Conductor) heat(i units.Current) working.Finding {
	if c.Metal == Copper {
		return heatFinding(i, c.Size)
	}
	t := c.Temperature.Or(WarmCopper())
	inCopper := units.Scale(i, units.Ratio(math.Sqrt(float64(units.RatioOf(c.Metal.resistivity(t), Copper.resistivity(t))))))
	f := heatFinding(inCopper, c.Size)
	f.Numbers[0].Value = i
	f.Numbers = append(f.Numbers, working.Number{Name: "as warm as copper with", Value: inCopper})
	return f
}

// parallelFinding says what happens to conductors in parallel when one opens.
func (r Run) parallelFinding() working.Finding {
	left := units.Current(float64(r.Current) / float64(r.sideBySide()-1))
	f := working.Finding{
		Severity: working.Note,
		Rule:     "conductors-in-parallel",
		Message: "Conductors in parallel share the current only while they are of one length, size and metal and every joint is good. " +
			"When one opens, the others carry it all and no device notices.",
		Numbers: []working.Number{{Name: "in each", Value: r.each()}, {Name: "in each when one has opened", Value: left}},
		Fix:     "Use one larger conductor, or protect each by a device of its own.",
		Source:  parallelRule,
	}
	s := r.Conductor.Size
	if s.IsValid() && s.Compare(Aught(1)) < 0 {
		f.Severity, f.Rule = working.Caution, "parallel-below-1/0"
		if r.Conductor.heat(left).Severity > working.Note {
			f.Severity = working.Danger
		}
		f.Message = "Conductors thinner than 1/0 AWG are in parallel, which the code does not allow for power. " + f.Message
	}
	return f
}
