package loads

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Heating is a room that loses heat to the outside and a furnace that makes
// up for it. It tells how long the blower runs, which is what empties a bank on
// a cold night: a furnace burns gas, but its blower does not.
type Heating struct {
	LossPerKelvin units.Power       // lost for each kelvin between inside and outside, > 0
	Inside        units.Temperature // as the thermostat has it
	Outside       units.Temperature // mean of the time in question
	Input         units.Power       // burnt while it runs, > 0
	Efficiency    units.Ratio       // heat into the room over Input, > 0, <= 1
}

// A Cycling is the result of [HeatingDuty].
type Cycling struct {
	Heating Heating       // as given
	Loss    units.Power   // of heat; 0 where it is no colder outside
	Output  units.Power   // heat into the room while it runs
	Needed  units.Ratio   // Loss over Output; above 1 the room gets cold
	Duty    units.Ratio   // part of the time it runs: Needed, and 1 where that is above 1
	Running units.Elapsed // of 24 hours
}

// HeatingDuty returns what part of the time a furnace runs:
//
//	duty = UA · (T_in − T_out) / (input · η)
//
// with UA the LossPerKelvin. Sun, people, cooking and the heat that a cold
// room takes to get warm are not in it. Temperatures that are not given, a
// field outside the range that [Heating] states and a result that no float64
// holds are each a [*units.RangeError]; the Cycling is then the zero value.
func HeatingDuty(h Heating) (Cycling, error) {
	const op = "loads.HeatingDuty"
	var f faults
	f.add(units.Above[units.Power](0).Check(op, "LossPerKelvin", h.LossPerKelvin))
	f.add(units.TemperatureBounds{}.Check(op, "Inside", h.Inside))
	f.add(units.TemperatureBounds{}.Check(op, "Outside", h.Outside))
	f.add(units.Above[units.Power](0).Check(op, "Input", h.Input))
	f.add(upToOne().Check(op, "Efficiency", h.Efficiency))
	if err := f.join(); err != nil {
		return Cycling{}, err
	}
	c := Cycling{Heating: h, Output: units.Scale(h.Input, h.Efficiency)}
	colder := max(0, units.In(h.Inside.Sub(h.Outside), units.Kelvin))
	c.Loss = units.Scale(h.LossPerKelvin, units.Ratio(colder))
	c.Needed = units.RatioOf(c.Loss, c.Output)
	c.Duty = min(c.Needed, 1)
	c.Running = units.Scale(day, c.Duty)
	if err := units.AtLeast[units.Ratio](0).Check(op, "Needed", c.Needed); err != nil {
		return Cycling{}, err
	}
	return c, nil
}

// Working returns how the duty came about, step by step.
func (c Cycling) Working() *working.Sheet {
	h := c.Heating
	s := working.NewSheet("How long a furnace runs")
	s.Given("UA", h.LossPerKelvin, "W", "heat lost for each kelvin of difference")
	s.Given("T_in", h.Inside, "°C", "inside")
	s.Given("T_out", h.Outside, "°C", "outside")
	s.Given("P_in", h.Input, "W", "burnt while it runs")
	s.Given("η", h.Efficiency, "1", "heat into the room over that")
	s.Formula("P_loss", c.Loss, "W", "heat lost", "UA * max(0, T_in - T_out)")
	s.Formula("P_out", c.Output, "W", "heat into the room while it runs", "P_in * η")
	s.Formula("d_needed", c.Needed, "1", "part of the time it would have to run", "P_loss / P_out")
	s.Formula("d", c.Duty, "1", "part of the time it runs", "min(1, d_needed)")
	s.Formula("t_run", c.Running, "h", "running, of 24 hours", "24 * d")
	return s
}

// Findings returns a caution where the furnace cannot keep up.
func (c Cycling) Findings() []working.Finding {
	if !units.Exceeds(c.Needed, 1) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Caution,
		Rule:     "heating-cannot-keep-up",
		Message:  "The furnace runs all the time and the room still gets colder; water in it can freeze.",
		Numbers:  []working.Number{{Name: "heat lost", Value: c.Loss}, {Name: "heat made", Value: c.Output}},
		Fix:      "Insulate, heat in another way as well, or drain the water.",
		Source:   working.Source{Title: "heat lost against heat made", Provenance: working.Derived},
	}}
}
