package loads

import (
	"strconv"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

var (
	unityAssumed = working.Source{Title: "a power factor that nobody states is taken as 1, so that watts and volt-amperes are the same number", Provenance: working.CommonPractice}
	unityOfHeat  = working.Source{Title: "current and voltage of a resistance are in phase", Provenance: working.Definition}
	kindOfLoad   = working.Source{Title: "Ohm's law for a resistance; a regulated supply and a running motor keep their power", Provenance: working.CommonPractice}
)

// Working returns how the line came about, step by step.
func (v Line) Working() *working.Sheet {
	s := working.NewSheet("A day of " + v.Name + " on " + v.Bus.Name)
	v.ratingSteps(s)
	s.Given("V_bus", v.Bus.Voltage, "V", "voltage of the bus")
	each := v.kindSteps(s)
	s.Given("n", units.Ratio(v.Count), "1", "how many")
	s.Formula("P", v.Power, "W", "all of them, running", "n * "+each)
	if v.Bus.Kind == Alternating {
		s.Formula("S", v.Apparent, "VA", "apparent power", "P / PF")
		s.Formula("I", v.Current, "A", "current while running", "S / V_bus")
	} else {
		s.Formula("I", v.Current, "A", "current while running", "P / V_bus")
	}
	v.daySteps(s)
	return s
}

// daySteps appends the energy of the day.
func (v Line) daySteps(s *working.Sheet) {
	hours := "in use a day"
	if v.Schedule != "" {
		hours = "in use a day, " + v.Schedule
	}
	s.Given("t", v.Hours, "h", hours)
	s.Given("d", v.Duty, "1", "duty: part of that time in which it runs")
	s.Formula("t_run", v.Running, "h", "running a day", "t * d")
	if v.StandbyEach > 0 {
		s.Given("P_standby", v.StandbyEach, "W", "one, while it does not run")
		s.Formula("E_run", v.RunEnergy, "Wh", "a day, while running", "P * t_run")
		s.Formula("E_standby", v.StandbyEnergy, "Wh", "a day, while not", "n * P_standby * (24 - t_run)")
		s.Formula("E", v.Energy, "Wh", "energy a day", "E_run + E_standby")
	} else {
		s.Formula("E", v.Energy, "Wh", "energy a day", "P * t_run")
	}
	s.Formula("P_mean", v.Average, "W", "mean over 24 hours", "E / 24")
	if charge, ok := v.Charge.Get(); ok {
		s.Formula("Q", charge, "Ah", "charge a day at the voltage of the bus", "E / V_bus")
	}
}

// ratingSteps appends what one of them takes by its rating, as P_rated, and
// its power factor.
func (v Line) ratingSteps(s *working.Sheet) {
	r := v.Rating
	if v.Bus.Kind == Alternating {
		v.powerFactorStep(s)
	}
	const watts = "power of one, running, by its rating"
	switch {
	case r.Output.IsSet():
		s.Given("P_out", r.Output.Or(0), "W", "what one gives off in use")
		s.Given("η", r.Efficiency.Or(0), "1", "of that, over what it takes")
		s.Formula("P_rated", v.Rated, "W", watts, "P_out / η")
		return
	case r.Current.IsSet():
		s.Given("I_rated", r.Current.Or(0), "A", "current of one, by its rating")
		s.Given("V_rated", v.RatedVoltage, "V", "voltage of that rating")
		if v.Bus.Kind != Alternating {
			s.Formula("P_rated", v.Rated, "W", watts, "I_rated * V_rated")
			return
		}
		s.Formula("S_rated", v.RatedApparent, "VA", "apparent power of one", "I_rated * V_rated")
	case r.Apparent.IsSet():
		s.Given("S_rated", v.RatedApparent, "VA", "apparent power of one, by its rating")
	default:
		s.Given("P_rated", v.Rated, "W", watts)
		return
	}
	s.Formula("P_rated", v.Rated, "W", watts, "S_rated * PF")
}

func (v Line) powerFactorStep(s *working.Sheet) {
	switch {
	case v.PowerFactorAssumed:
		s.Constant("PF", v.PowerFactor, "1", "power factor, not stated", unityAssumed)
	case v.Kind == Resistive:
		s.Constant("PF", v.PowerFactor, "1", "power factor of a resistive load", unityOfHeat)
	default:
		s.Given("PF", v.PowerFactor, "1", "power factor")
	}
}

// kindSteps appends what one takes at the voltage of the bus and returns the
// symbol.
func (v Line) kindSteps(s *working.Sheet) string {
	if units.Compare(v.RatedVoltage, v.Bus.Voltage) == 0 {
		return "P_rated"
	}
	if !v.Rating.Current.IsSet() {
		s.Given("V_rated", v.RatedVoltage, "V", "voltage of the rating")
	}
	const what = "power of one, running, at the voltage of the bus"
	switch v.Kind {
	case Resistive:
		s.Formula("P_each", v.Each, "W", what, "P_rated * pow(V_bus / V_rated, 2)")
	case ConstantCurrent:
		s.Formula("P_each", v.Each, "W", what, "P_rated * V_bus / V_rated")
	default:
		s.Choose("power at the voltage of the bus", "that of the rating", "the load is of the kind "+v.Kind.String(), kindOfLoad)
		return "P_rated"
	}
	return "P_each"
}

// Working returns how the draw came about from the line, whose own working is
// [Line.Working].
func (d Draw) Working() *working.Sheet {
	s := working.NewSheet(d.Line.Name + " at another voltage")
	s.Given("P_bus", d.Line.Power, "W", "all of them, running, at the voltage of the bus")
	s.Given("V_bus", d.Line.Bus.Voltage, "V", "voltage of the bus")
	s.Given("V", d.Voltage, "V", "voltage there is")
	const what = "power at that voltage"
	power := "P"
	switch d.Line.Kind {
	case Resistive:
		s.Formula(power, d.Power, "W", what, "P_bus * pow(V / V_bus, 2)")
	case ConstantCurrent:
		s.Formula(power, d.Power, "W", what, "P_bus * V / V_bus")
	default:
		s.Choose(what, "that at the voltage of the bus", "the load is of the kind "+d.Line.Kind.String(), kindOfLoad)
		power = "P_bus"
	}
	if d.Line.Bus.Kind == Alternating {
		s.Given("PF", d.Line.PowerFactor, "1", "power factor, as if it did not change")
		s.Formula("S", d.Apparent, "VA", "apparent power", power+" / PF")
		s.Formula("I", d.Current, "A", "current", "S / V")
	} else {
		s.Formula("I", d.Current, "A", "current", power+" / V")
	}
	return s
}

// A nameplate's voltage this far from the real one is no longer a matter of
// a weak or a strong supply.
const (
	nearLow  = 75 * units.Percent
	nearHigh = 125 * units.Percent
)

// Findings returns what needs attention about the line, worst first: a
// nameplate for another voltage than the bus has, a power factor that was not
// stated, a standby power above the running one.
func (v Line) Findings() []working.Finding {
	f := voltageFindings(v, v.Bus.Voltage)
	if units.Exceeds(v.StandbyEach, v.Each) {
		f = append(f, working.Finding{
			Severity: working.Caution,
			Rule:     "standby-above-running",
			Message:  "Standby power of " + strconv.Quote(v.Name) + " is above its running power; one of the two is wrong.",
			Numbers:  []working.Number{{Name: "standby", Value: v.StandbyEach}, {Name: "running", Value: v.Each}},
			Fix:      "Measure both, or check the units they were given in.",
			Source:   working.Source{Title: "a load takes more in use than out of use", Provenance: working.CommonPractice},
		})
	}
	if v.PowerFactorAssumed {
		message := ", so its volt-amperes are counted as its watts and may be more."
		if v.Rating.Current.IsSet() || v.Rating.Apparent.IsSet() {
			message = ", so its watts are counted as its volt-amperes and may be fewer; its energy is the most there can be."
		}
		f = append(f, working.Finding{
			Severity: working.Note,
			Rule:     "power-factor-not-stated",
			Message:  "No power factor is stated for " + strconv.Quote(v.Name) + message,
			Numbers:  []working.Number{{Name: "apparent power", Value: v.Apparent}, {Name: "power", Value: v.Power}},
			Fix:      "State the power factor, or the amperes beside the watts of its nameplate; 0.6 is usual for a small supply.",
			Source:   unityAssumed,
		})
	}
	return f
}

// Findings returns what needs attention about the draw: a voltage far from
// that of the nameplate.
func (d Draw) Findings() []working.Finding { return voltageFindings(d.Line, d.Voltage) }

// voltageFindings compares a voltage with that of the nameplate.
func voltageFindings(v Line, u units.Voltage) []working.Finding {
	ratio := units.RatioOf(u, v.RatedVoltage)
	if !units.Exceeds(ratio, nearHigh) && !units.Exceeds(nearLow, ratio) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Danger,
		Rule:     "voltage-far-from-nameplate",
		Message:  strconv.Quote(v.Name) + " is made for another voltage: it can burn or fail, and what it takes is not what is worked out here.",
		Numbers:  []working.Number{{Name: "voltage", Value: u}, {Name: "nameplate", Value: v.RatedVoltage}},
		Fix:      "Measure the voltage before anything is plugged in, and connect the load only where its nameplate fits.",
		Source:   working.Source{Title: "a nameplate's voltage within a quarter up or down is taken for the same supply", Provenance: working.CommonPractice},
	}}
}
